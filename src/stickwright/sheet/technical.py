"""The words and figures of the technical pages: the answer first, then what it rests on.

Each caution is handed out together with the number it belongs to, so that the template cannot part them.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from stickwright.catalogue import say
from stickwright.codes.message import Message, Text
from stickwright.model.plan import Assumption, Capability, Fit, NextReading, Plan, SitePlan, direction_words
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.response import Tuning
from stickwright.sheet import tables
from stickwright.sheet.ability_words import SMOOTHED, ability_lines, readings_behind
from stickwright.sheet.between_games import games_settings
from stickwright.sheet.device_words import order_words
from stickwright.sheet.family import as_shared, cautions_for, further_set_up, main_site, on_page_one, pose_at, wire_of
from stickwright.sheet.figures_ability import capability_polar
from stickwright.sheet.figures_fit import force_travel, ranking, reach_polygon
from stickwright.sheet.merged import merged_assumptions, merged_findings
from stickwright.sheet.paper import width_mm
from stickwright.sheet.printed import ASSUMED, clause, percent, plain, sentence, share, shown
from stickwright.sheet.sharing_words import asked_first
from stickwright.sheet.tremor_words import axis_words, tremor_size
from stickwright.sheet.tuned import gain_basis, line_of_tuning, tuning_of_choice, tuning_part, unrecorded_basis
from stickwright.units import chance_words

__all__ = ["technical_pages"]

_LONG_HOLD_S = 180.0  # from there minutes say more
_BESIDE = {
    "chosen": ("effort", "hold", "session"),
    "ability": ("force",),
    "ranking": ("false input",),
    "tuning": ("dead zone",),
}
"""Which cautions stand beside which block; any other stands beside the answer."""


def technical_pages(plan: Plan) -> dict[str, Any]:
    """Everything printed after page one.

    Parameters
    ----------
    plan : Plan
        A finished plan.

    Returns
    -------
    dict
        Texts, tables and figures in the order of the page, for the template.
    """
    ends = {
        "next": _next_reading(plan.next_reading),
        "assumptions": [
            [say(cell) for cell in (one.what, one.value, one.why, one.replace_by)]
            for one in merged_assumptions(
                (*plan.assumptions, *_shared_assumptions(plan)), [site.name for site in plan.sites]
            )
        ],
        "findings": _findings(plan.findings),
        "colophon": _colophon(plan),
    }
    could = {site.name for site in plan.sites if site.choice is not None}
    plan = as_shared(plan)
    if not plan.sites:
        return ends | {"planned": False, "cautions": [say(caution.text) for caution in plan.cautions]}
    site = main_site(plan)
    others = [other for other in plan.sites if other is not site]
    tuned = tuning_of_choice(site) or (site.tunings[0] if site.tunings else None)
    return ends | {
        "planned": True,
        "answer": _answer(plan, site),
        "ability": _ability(plan, site),
        "crossing": _crossing(site),
        "ranking": _ranking(plan, site),
        "tuning": _tuning(plan, site, tuned),
        "more_tunings": [line_of_tuning(one) for one in site.tunings if one is not tuned],
        "recordings": _recordings(site),
        "others": [_other_site(plan, other, spare=other.name in could) for other in others],
    }


def _shared_assumptions(plan: Plan) -> tuple[Assumption, ...]:
    return plan.sharing.assumptions if plan.sharing is not None else ()


def _cautions(plan: Plan, site: SitePlan, keys: tuple[str, ...]) -> list[str]:
    return [say(caution.text) for caution in cautions_for(plan, site, keys)]


def _elsewhere(plan: Plan, site: SitePlan) -> list[str]:
    """Cautions about no number of the other blocks, unless page one has them: about the site, and any new key."""
    taken = {key for keys in _BESIDE.values() for key in keys}
    before = on_page_one(plan)
    return [say(one.text) for one in cautions_for(plan, site) if one.about not in taken and one not in before]


def _findings(findings: Iterable[Finding]) -> list[list[str]]:
    """What limits first, then what is to be checked, then notes; each kind in one run."""
    words = {"fault": "Limits what can be said", "query": "Please check", "note": "Noted"}
    told: dict[str, list[str]] = {level: [] for level in words}
    for finding in findings:
        told[finding.level].append(say(finding.text))
    return [[words[level], " ".join(texts)] for level, texts in told.items() if texts]


def _figure(svg: str, table: tables.Table, caption: str) -> dict[str, Any]:
    return {"svg": svg, "alt": table.alt, "caption": caption, "width_mm": width_mm(svg)}


def _answer(plan: Plan, site: SitePlan) -> dict[str, Any]:
    first = site.choice or (site.fits[0] if site.fits else None)
    second = next((fit for fit in site.fits if fit is not first and fit != first), None)
    named = "Chosen set-up" if site.choice is not None else "Nearest set-up (does not fit)"
    return {
        "site": site.name,
        "headline": f"{first.label} at the {site.name}: {first.verdict_words}." if first else "No set-up was computed.",
        "sentences": [
            *asked_first(plan.sharing),
            *(_after_headline(text) for text in dict.fromkeys((plan.sentence, site.sentence))),
        ],
        "second": _second(site, second),
        "numbers": _numbers(first, site) if first else [],
        "named": f"{named}: {first.label}" if first else named,
        "site_cautions": _elsewhere(plan, site),
        "cautions": [one for one in _cautions(plan, site, _BESIDE["chosen"]) if one not in _first_page_texts(plan)],
        "findings": _findings(site.findings),
    }


def _first_page_texts(plan: Plan) -> set[str]:
    return {say(one.text) for one in on_page_one(plan) if one.about == "session"}


def _after_headline(text: Text) -> str:
    """The answer without the set-up and site that the headline has just named."""
    if isinstance(text, Message) and text.code == "Setups.chosen":
        named = ("setup", "site")
        text = Message("Setups.beside_headline", tuple(one for one in text.params if one[0] not in named))
    return say(text)


def _names(site: SitePlan, fit: Fit) -> bool:
    """Whether the site's answer speaks of that set-up."""
    answer = site.sentence
    return isinstance(answer, Message) and fit.named in answer.parts()


def _second(site: SitePlan, second: Fit | None) -> str:
    """The second best with its reason, unless the answer has named it already."""
    if second is None or _names(site, second):
        return ""
    return f"{second.label} ({second.verdict_words}). {tables.limiting_sentence(second)}"


def _numbers(fit: Fit, site: SitePlan) -> list[list[str]]:
    """The set-up's own numbers beside what the game asks of it, one line each."""
    length = "" if fit.kind == "touch" else f"contact point {plain(fit.contact_height_m, 'mm')} above the pivot, "
    of_force = "all of the comfortable force" if fit.effort_share.number > 1 else "of comfortable force in use"
    rows = [
        ["game asks", _demand(site)],
        ["size", f"{length}travel {plain(fit.travel_m, 'mm')} each way{_mass(fit)}{_plugged(fit)}"],
        ["force", f"{plain(fit.start_force_n, 'n')} to start, {plain(fit.full_force_n, 'n')} at the stop"],
        ["predicted effort", f"{tables.effort_words(fit).removesuffix(' all')} {of_force}; tiring is "
                   f"counted against {share(fit.duty_effort_limit)} for this share of time in use"],
        ["predicted hold", _hold(fit)],
        ["predicted false input", f"{shown(fit.false_per_min, 'a_minute')} with a dead zone of {share(fit.dead_zone_share)}"],
        ["predicted at rest", _at_rest(fit)],
    ]  # fmt: skip
    if fit.lever_note:
        rows.append(["extension", clause(fit.lever_note)])
    return rows


def _plugged(fit: Fit) -> str:
    current = f", {plain(fit.current_a, 'ma')}" if fit.current_a is not None else ""
    return f"; plug {fit.plug}{current}" if fit.plug else f"; draws{current[1:]}" if current else ""


def _hold(fit: Fit) -> str:
    """How long it can be held, and by which curve or reading when there is one."""
    said = shown(fit.hold_s, "min" if fit.hold_s.number >= _LONG_HOLD_S else "s")
    return said if fit.hold_s.value is None or fit.hold_model is None else f"{said}: {say(fit.hold_model)}"


def _mass(fit: Fit) -> str:
    base = ""
    if fit.base_m is not None:
        sides = [plain(side, "mm").removesuffix(" mm") for side in fit.base_m]
        base = f", base {' × '.join(sides)} mm{', standing crosswise' if fit.crosswise else ''}"
    return base + (f", {plain(fit.mass_kg, 'g')}" if fit.mass_kg is not None else "")


def _at_rest(fit: Fit) -> str:
    resting = (
        f"the limb's rest force keeps it {share(fit.rest_deflection_share)} deflected"
        if fit.rest_deflection_share > 0
        else "the limb's rest force does not move it"
    )
    stays = (
        f"; let go, it stays up to {share(fit.returns_share)} off centre"
        if fit.returns_share > 0
        else "; let go, it comes home"
    )
    return resting + stays


def _demand(site: SitePlan) -> str:
    demand = site.demand
    hold = f", longest hold {plain(demand.longest_hold_s, 's')}" if demand.longest_hold_s is not None else ""
    return (
        f"{demand.action}, {share(demand.duty_share)} of the time at {share(demand.usual_level_share)} of the "
        f"reach{hold}; false input at most {demand.false_input_limit_per_min:g} a minute"
    )


def _ability(plan: Plan, site: SitePlan) -> dict[str, Any]:
    able = site.capability
    table, reached = tables.capability_polar(site), tables.reach_polygon(site)
    return {
        "figures": [
            _figure(capability_polar(site), table, tables.day_note(able)),
            _figure(reach_polygon(site), reached, ""),
        ],
        "columns": [*table.columns[:4], *(f"predicted throw on {rank}" for rank in range(1, len(reached.columns)))],
        "rows": [[*row[:4], *_reached(reached, row[0])] for row in table.rows],
        "read": readings_behind(able),
        "smoothed": SMOOTHED if readings_behind(able) else "",
        "beside": _beside_ability(able),
        "cautions": _cautions(plan, site, _BESIDE["ability"]),
        "findings": _findings(able.findings),
    }


def _reached(reached: tables.Table, direction: str) -> tuple[str, ...]:
    """Share of the throw reached in one direction, on the best set-up and the second."""
    return next((row[1:] for row in reached.rows if row[0] == direction), ("",) * (len(reached.columns) - 1))


def _beside_ability(able: Capability) -> list[list[str]]:
    rows = [
        [f"rest force{_way(able.rest_direction_rad)}", shown(able.rest_force_n, "n")],
        ["involuntary force", shown(able.involuntary_force_n, "n")],
        ["its zero-crossing frequency", shown(able.crossing_hz, "hz")],
        ["limb stiffness", shown(able.limb_stiffness_n_per_m, "n_per_mm")],
        ["scatter of a steady push", percent(able.force_noise_share)],
        ["scatter of a force reading", percent(able.force_scatter_share)],
    ]
    if able.tiring_share is not None:
        rows.append(["force lost, first to last", percent(able.tiring_share)])
    return rows


def _crossing(site: SitePlan) -> dict[str, Any]:
    table = tables.force_travel(site)
    caption = "Where the lines meet is how far that stick gets, at most to its stop. Numbers are ranks."
    return _figure(force_travel(site), table, caption)


def _ranking(plan: Plan, site: SitePlan) -> dict[str, Any]:
    table = tables.ranking(site)
    keys = _BESIDE["ranking"]
    return {
        "columns": ["", *table.columns[2:7]],
        "fitting": sum(fit.verdict != "does not fit" for fit in site.fits),
        "rows": [_ranked(rank, row, fit) for rank, (row, fit) in enumerate(zip(table.rows, site.fits, strict=True), 1)],
        "figure": _figure(ranking(site), table, "Predicted control in bits with 95 % interval; hatched: does not fit."),
        "cautions": _cautions(plan, site, keys),
        "best_note": tables.best_note(),
        "tried": f"{site.tried} set-ups of stick, topper, extension and tilt were computed; shown is the best of each "
        "stick.",
        "alternatives": [_line_of_fit(fit) for fit in site.alternatives[:3]],
        "extension": _extension(site),
        "order": order_words(site.to_order) if site.to_order is not None else "",
    }


def _ranked(rank: int, row: tuple[str, ...], fit: Fit) -> dict[str, Any]:
    """One stick of the ranked table: its name and verdict, its numbers, what limits it (long and short)."""
    return {
        "rank": rank,
        "name": row[0],
        "verdict": row[1],
        "stick": fit.stick,
        "numbers": list(row[2:7]),
        "limit": row[7],
        "short": sentence(fit.fails[0] if fit.fails else fit.limit),
    }


def _line_of_fit(fit: Fit) -> str:
    helps = f"; {clause(fit.help)}" if fit.help else ""
    return (
        f"{fit.label}: {fit.verdict_words}; predicted {direction_words(fit.weakest_rad)} {percent(fit.weakest_share)}, "
        f"{shown(fit.bits, '')} bits, false input {shown(fit.false_per_min, 'a_minute')}{helps}"
    )


def _extension(site: SitePlan) -> str:
    parts = [
        f"{direction_words(phi)} {plain(extra_m, 'mm') if extra_m > 0 else plain(-extra_m, 'mm') + ' shorter'}"
        + (" longer" if extra_m > 0 else "")
        for phi, _, extra_m in site.best_extension
    ]
    return f"Best lever length for reach alone: {'; '.join(parts)}." if parts else ""


def _next_reading(reading: NextReading) -> dict[str, Any]:
    """What to read next; its chance once, in the sentence or after it."""
    heading = "Enough is measured for this choice" if reading.enough else "Next reading worth the effort"
    ranked = [
        f"{what}{_way(phi)}, {site}: {chance_words(chance_then)}" for site, phi, what, chance_then in reading.ranked[:3]
    ]
    return {
        "heading": heading,
        "sentence": sentence(reading.sentence),
        "ranked": [] if reading.enough else ranked,
    }


def _way(direction_rad: float | None) -> str:
    return "" if direction_rad is None else f" {direction_words(direction_rad)}"


def _tuning(plan: Plan, site: SitePlan, tuning: Tuning | None) -> dict[str, Any]:
    cautions = _cautions(plan, site, _BESIDE["tuning"])
    if tuning is None:
        why = "No recording was made on this set-up, so there is nothing to tune from: record rest, rim and following."
        why = f"{why} {unrecorded_basis(site.choice)}".strip() if site.choice is not None else why
        return {"why": why, "cautions": cautions}
    return tuning_part(site.choice, tuning) | {
        "cautions": cautions,
        "findings": _findings(tuning.findings),
        **_for_all_games(plan),
    }


def _for_all_games(plan: Plan) -> dict[str, Any]:
    """With several games the numbers to type stand in their own table; here are those of the first game, by its name."""
    if games_settings(plan) is None:
        return {}
    return {"type": f"What to type is in the table Settings in each game; the numbers here are for {plan.game}."}


def _recordings(site: SitePlan) -> dict[str, Any]:
    """What to look at in the recordings, findings that several share once, and those with nothing to check."""
    if not site.recordings:
        why = "No recording was made at this site: rest, reach and tremor on the stick are not known from a trace."
        return {"why": why, "told": [], "quiet": [], "facts": [], "notes": []}
    told = merged_findings((report.name, finding) for report in site.recordings for finding in report.findings)
    words = {"query": "please check", "fault": "limits what can be said", "note": "noted"}
    by_level = {
        level: [[", ".join(names), words[level], say(one.text)] for names, one in told if one.level == level]
        for level in words
    }
    loud = {report.name for report in site.recordings if any(one.level != "note" for one in report.findings)}
    return {
        "why": "",
        "told": [*by_level["fault"], *by_level["query"]],
        "quiet": [report.name for report in site.recordings if report.name not in loud],
        "facts": [[_head(report), _facts(report)] for report in site.recordings],
        "notes": by_level["note"],
    }


def _head(report: TraceReport) -> str:
    on = f" on {report.stick}" if report.stick else ""
    return f"{report.name}: {report.task}, {plain(report.duration_s, 's')} at {plain(report.rate_hz, 'hz')}{on}"


def _facts(report: TraceReport) -> str:
    """What one recording told, in one line."""
    parts = []
    if report.reach is not None:
        parts.append(
            f"least reach {direction_words(report.reach.weakest_rad)}, area {percent(report.reach.area_share)}"
        )
    if report.tremor is not None:
        size = "" if report.tremor.band_rms.value is None else f", rms {tremor_size(report)}"
        three = len(report.tremor.axis) == 3
        line = f", strongest along {axis_words(report.tremor.axis)} of the three axes that were read" if three else ""
        parts.append(clause(say(report.tremor.sentence)) + size + line)
    if report.tracking is not None:
        parts.append(f"follows {shown(report.tracking.lag_s, 's')} late")
    if report.pointing is not None:
        parts.append(f"aims at {shown(report.pointing.throughput_bit_per_s, '')} bit/s")
    return "; ".join(parts)


def _other_site(plan: Plan, site: SitePlan, *, spare: bool) -> dict[str, Any]:
    """A further site; one that could have a stick and gets none in the sharing says so."""
    unused = "a stick fits, and none is put here in this plan" if spare and site.choice is None else ""
    best = site.fits[0] if site.fits else None
    listed = site.fits[1:2] if site.choice is not None else site.fits[:2]
    told = set(_cautions(plan, main_site(plan), ("effort", "hold", "force", "false input", "dead zone")))
    own = [caution for caution in plan.cautions if caution.site == site.name and say(caution.text) not in told]
    return {
        "name": site.name,
        "headline": f"{site.choice.label}, {site.choice.verdict_words}" if site.choice is not None else unused,
        "set_up": further_set_up(site, wire_of(plan, site), pose_at(plan, site)),
        "sentence": _after_headline(site.sentence),
        "demand": f"The game asks {_demand(site)}. Weakest {direction_words(site.capability.weakest_rad)}.",
        "ability": ability_lines(site.capability),
        "lines": [_line_of_fit(fit) for fit in listed],
        "numbers": [row for row in _numbers(site.choice, site) if row[0] != "longer lever"]
        if site.choice is not None
        else [],
        "settings": gain_basis(site.choice) if site.choice is not None and tuning_of_choice(site) is None else "",
        "limit": tables.limiting_sentence(best) if best is not None and not _names(site, best) else "",
        "cautions": [say(caution.text) for caution in own],
        "findings": _findings((*site.findings, *site.capability.findings)),
    }


def _colophon(plan: Plan) -> str:
    visit = f" Visit {plan.visit}." if plan.visit else ""
    return (
        f"Made {plan.made_on or 'on a date not given'} by stickwright {plan.version} from case {plan.case}.{visit} "
        f"{plan.draws} draws, seed {plan.seed}. Intervals are 95 %. A number nobody measured is marked {ASSUMED}. "
        "The numbers are about set-ups. Not a medical device: local rules, the seating clinic and the treating team "
        "come first."
    )
