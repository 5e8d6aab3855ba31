"""The words and figures of the technical pages: the answer first, then what it rests on.

Each caution is handed out together with the number it belongs to, so that the template cannot part them.
"""

from __future__ import annotations

import math
from typing import Any

from stickwright.model.plan import Capability, Caution, Fit, NextReading, Plan, SitePlan, direction_words
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.response import Tuning
from stickwright.sheet import tables
from stickwright.sheet.family import cautions_for, main_site, tuning_of_choice
from stickwright.sheet.figures_ability import capability_polar
from stickwright.sheet.figures_fit import force_travel, ranking, reach_polygon
from stickwright.sheet.figures_tuning import curve, tuning_before_after
from stickwright.sheet.paper import width_mm
from stickwright.sheet.printed import ASSUMED, percent, plain, sentence, share, shown

__all__ = ["technical_pages"]

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
        "assumptions": [[one.what, one.value, one.why, one.replace_by] for one in plan.assumptions],
        "findings": _findings(plan.findings),
        "colophon": _colophon(plan),
    }
    if not plan.sites:
        return ends | {"planned": False, "cautions": [caution.text for caution in plan.cautions]}
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
        "more_tunings": [_line_of_tuning(one) for one in site.tunings if one is not tuned],
        "recordings": _recordings(site),
        "others": [_other_site(plan, other) for other in others],
    }


def _cautions(plan: Plan, site: SitePlan, keys: tuple[str, ...]) -> list[str]:
    return [caution.text for caution in cautions_for(plan, site, keys)]


def _elsewhere(plan: Plan, site: SitePlan) -> list[str]:
    """Cautions about no number of the other blocks: about the site itself, and any new key."""
    taken = {key for keys in _BESIDE.values() for key in keys}
    return [caution.text for caution in cautions_for(plan, site) if caution.about not in taken]


def _findings(findings: tuple[Finding, ...]) -> list[list[str]]:
    words = {"note": "Noted", "query": "Please check", "fault": "Limits what can be said"}
    return [[words[finding.level], finding.text] for finding in findings]


def _figure(svg: str, table: tables.Table, caption: str) -> dict[str, Any]:
    return {"svg": svg, "alt": table.alt, "caption": caption, "width_mm": width_mm(svg)}


def _answer(plan: Plan, site: SitePlan) -> dict[str, Any]:
    first = site.choice or (site.fits[0] if site.fits else None)
    second = next((fit for fit in site.fits if fit is not first and fit != first), None)
    return {
        "site": site.name,
        "headline": f"{first.label} at the {site.name}: {first.verdict}." if first else "No set-up was computed.",
        "sentences": list(dict.fromkeys((plan.sentence, site.sentence))),
        "second": _second(site, second),
        "numbers": _numbers(first) if first else [],
        "named": "Chosen set-up" if site.choice is not None else "Nearest set-up (does not fit)",
        "demand": _demand(site),
        "site_cautions": _elsewhere(plan, site),
        "cautions": _cautions(plan, site, _BESIDE["chosen"]),
        "findings": _findings(site.findings),
    }


def _second(site: SitePlan, second: Fit | None) -> str:
    """The second best with its reason, unless the answer has named it already."""
    if second is None or second.label in site.sentence:
        return ""
    return f"{second.label} ({second.verdict}). {tables.limiting_sentence(second)}"


def _numbers(fit: Fit) -> list[list[str]]:
    """The set-up's own numbers, one line each."""
    length = "" if fit.kind == "touch" else f"contact point {plain(fit.contact_height_m, 'mm')} above the pivot, "
    rows = [
        ["set-up", fit.label],
        ["size", f"{length}travel {plain(fit.travel_m, 'mm')} each way{_mass(fit)}"],
        ["force", f"{plain(fit.start_force_n, 'n')} to start, {plain(fit.full_force_n, 'n')} at the stop"],
        ["effort", f"{percent(fit.effort_share)} of comfortable force in use; ranked against "
                   f"{share(fit.duty_effort_limit)} for this share of time in use"],
        ["hold", _hold(fit)],
        ["false input", f"{shown(fit.false_per_min, 'a_minute')} with a dead zone of {share(fit.dead_zone_share)}"],
        ["at rest", _at_rest(fit)],
    ]  # fmt: skip
    if fit.lever_note:
        rows.append(["longer lever", fit.lever_note.rstrip(".")])
    if fit.current_a is not None or fit.plug:
        current = f", {plain(fit.current_a, 'ma')}" if fit.current_a is not None else ""
        rows.append(["plug", f"{fit.plug or 'not written down'}{current}"])
    return rows


def _hold(fit: Fit) -> str:
    """How long it can be held, and by which curve or reading when there is one."""
    known = math.isfinite(fit.hold_s.value) and fit.hold_model
    return f"{shown(fit.hold_s, 's')}; from {fit.hold_model}" if known else shown(fit.hold_s, "s")


def _mass(fit: Fit) -> str:
    base = ""
    if fit.base_m is not None:
        sides = [plain(side, "mm").removesuffix(" mm") for side in fit.base_m]
        base = f", base {' × '.join(sides)} mm"
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
        f"Asked of it: {demand.action}, in use {share(demand.duty_share)} of the time, usually at "
        f"{share(demand.usual_level_share)} of the reach{hold}; false "
        f"input at most {demand.false_input_limit_per_min:g} a minute."
    )


def _ability(plan: Plan, site: SitePlan) -> dict[str, Any]:
    able = site.capability
    table, reached = tables.capability_polar(site), tables.reach_polygon(site)
    return {
        "figures": [
            _figure(capability_polar(site), table, ""),
            _figure(reach_polygon(site), reached, ""),
        ],
        "columns": [*table.columns[:4], *(f"throw on {rank}" for rank in range(1, len(reached.columns)))],
        "rows": [[*row[:4], *_reached(reached, row[0])] for row in table.rows],
        "beside": _beside_ability(able),
        "cautions": _cautions(plan, site, _BESIDE["ability"]),
        "findings": _findings(able.findings),
    }


def _reached(reached: tables.Table, direction: str) -> tuple[str, ...]:
    """Share of the throw reached in one direction, on the best set-up and the second."""
    return next((row[1:] for row in reached.rows if row[0] == direction), ("",) * (len(reached.columns) - 1))


def _beside_ability(able: Capability) -> list[list[str]]:
    rows = [
        ["rest force", f"{shown(able.rest_force_n, 'n')}{_way(able.rest_direction_rad)}"],
        ["involuntary force", shown(able.involuntary_force_n, "n")],
        ["its frequency", shown(able.crossing_hz, "hz")],
        ["limb stiffness", shown(able.limb_stiffness_n_per_m, "n_per_mm")],
        ["scatter of a steady push", percent(able.force_noise_share)],
        ["scatter of a force reading", percent(able.force_scatter_share)],
    ]
    if able.tiring_share is not None:
        rows.append(["force lost, first to last", percent(able.tiring_share)])
    return rows


def _crossing(site: SitePlan) -> dict[str, Any]:
    table = tables.force_travel(site)
    caption = (
        "Thick line: force the player has, falling with reach. Thin lines: force each stick needs, up to its stop. "
        "Where they meet (filled mark, with its 95 % interval) is how far that stick gets. Numbers are ranks."
    )
    return _figure(force_travel(site), table, caption)


def _ranking(plan: Plan, site: SitePlan) -> dict[str, Any]:
    table = tables.ranking(site)
    keys = _BESIDE["ranking"]
    return {
        "columns": ["", *table.columns[2:7]],
        "fitting": sum(fit.verdict != "does not fit" for fit in site.fits),
        "rows": [_ranked(rank, row, fit) for rank, (row, fit) in enumerate(zip(table.rows, site.fits, strict=True), 1)],
        "figure": _figure(ranking(site), table, "Control in bits with 95 % interval; hatched: does not fit."),
        "cautions": _cautions(plan, site, keys),
        "tried": f"{site.tried} set-ups of stick, topper, extension and tilt were computed; shown is the best of each "
        "stick.",
        "alternatives": [_line_of_fit(fit) for fit in site.alternatives[:3]],
        "extension": _extension(site),
    }


def _ranked(rank: int, row: tuple[str, ...], fit: Fit) -> dict[str, Any]:
    """One stick of the ranked table: its name and verdict, its numbers, what limits it (long and short)."""
    return {
        "rank": rank,
        "name": row[0],
        "verdict": row[1],
        "numbers": list(row[2:7]),
        "limit": row[7],
        "short": sentence(fit.fails[0] if fit.fails else fit.limit),
    }


def _line_of_fit(fit: Fit) -> str:
    helps = f"; {fit.help}" if fit.help else ""
    return (
        f"{fit.label}: {fit.verdict}, {direction_words(fit.weakest_rad)} {percent(fit.weakest_share)}, "
        f"{shown(fit.bits, '')} bits, false input {shown(fit.false_per_min, 'a_minute')}{helps}"
    )


def _extension(site: SitePlan) -> str:
    parts = [
        f"{words} {plain(extra_m, 'mm') if extra_m > 0 else plain(-extra_m, 'mm') + ' shorter'}"
        + (" longer" if extra_m > 0 else "")
        for words, _, extra_m in site.best_extension
    ]
    return f"Best lever length for reach alone: {'; '.join(parts)}." if parts else ""


def _next_reading(reading: NextReading) -> dict[str, Any]:
    heading = "Enough is measured" if reading.enough else "Next reading worth the effort"
    chance = f"Chance that the choice is right: {share(reading.chance_now)} now"
    if not reading.enough:
        chance += f", {share(reading.chance_then)} expected after it"
    ranked = [f"{what}{_way(phi)}, {site}: {share(chance_then)}" for site, phi, what, chance_then in reading.ranked[:3]]
    return {"heading": heading, "sentence": reading.sentence, "chance": f"{chance}.", "ranked": ranked}


def _way(direction_rad: float | None) -> str:
    known = direction_rad is not None and math.isfinite(direction_rad)
    return f" {direction_words(direction_rad)}" if known and direction_rad is not None else ""


def _tuning(plan: Plan, site: SitePlan, tuning: Tuning | None) -> dict[str, Any]:
    cautions = _cautions(plan, site, _BESIDE["tuning"])
    if tuning is None:
        why = "No recording was made on this set-up, so there is nothing to tune from: record rest, rim and following."
        return {"why": why, "cautions": cautions}
    numbers = tables.tuning_numbers(tuning)
    shown_table = tables.tuning_before_after(tuning)
    return {
        "why": "",
        "heading": f"Tuning of {tuning.stick}",
        "from": f"From {', '.join(tuning.recordings)}. In this order:",
        "rows": [list(row) for row in numbers.rows],
        "range": [list(row) for row in tables.tuning_range(tuning).rows],
        "type": _to_type(tuning),
        "lost": _lost(tuning),
        "figures": [
            _figure(tuning_before_after(tuning), shown_table, f"The player's own {tuning.shown_recording}."),
            _figure(curve(tuning), tables.curve(tuning), ""),
        ],
        "curve_in": ["deflection", *(share(value) for value in _ten(tuning.curve_in))],
        "curve_out": ["output", *(share(value) for value in _ten(tuning.curve_out))],
        "sentences": list(tuning.sentences),
        "findings": _findings(tuning.findings),
        "cautions": cautions,
    }


def _ten(values: tuple[float, ...]) -> tuple[float, ...]:
    """At most eleven points of a curve, both ends among them."""
    if len(values) <= 11:
        return values
    last = len(values) - 1
    return tuple(values[round(step * last / 10)] for step in range(11))


def _to_type(tuning: Tuning) -> str:
    simple = tuning.simple
    return (
        f"What to type in the game: dead zone {simple.dead_zone_percent:.0f} %, sensitivity "
        f"{simple.sensitivity_percent:.0f} %."
    )


def _lost(tuning: Tuning) -> str:
    """What the game's two numbers cannot do, and how to undo them."""
    simple = tuning.simple
    return (
        f"{sentence(simple.lost)} Differs from the full response by {share(simple.rms_difference)} of full output on "
        "average. To undo: dead zone as before, sensitivity 100 %."
    ).strip()


def _line_of_tuning(tuning: Tuning) -> str:
    simple = tuning.simple
    return (
        f"{tuning.stick}: dead zone {percent(tuning.dead_zone)}, rotation {shown(tuning.rotation_rad, 'deg')}; in "
        f"the game {simple.dead_zone_percent:.0f} % and {simple.sensitivity_percent:.0f} %."
    )


def _recordings(site: SitePlan) -> dict[str, Any]:
    """Each recording with what to look at; notes that several recordings share stand once, with their names."""
    if not site.recordings:
        why = "No recording was made at this site: rest, reach and tremor on the stick are not known from a trace."
        return {"why": why, "reports": [], "notes": []}
    names: dict[str, list[str]] = {}
    for report in site.recordings:
        for finding in report.findings:
            if finding.level == "note":
                names.setdefault(finding.text, []).append(report.name)
    notes = [f"{', '.join(dict.fromkeys(of))}: {text}" for text, of in names.items()]
    return {"why": "", "reports": [_report(report) for report in site.recordings], "notes": notes}


def _report(report: TraceReport) -> dict[str, Any]:
    head = f"{report.name}: {report.task}, {plain(report.duration_s, 's')} at {plain(report.rate_hz, 'hz')}"
    on = f" on {report.stick}" if report.stick else ""
    telling = tuple(finding for finding in report.findings if finding.level != "note")
    return {"name": report.name, "head": f"{head}{on}", "facts": _facts(report), "findings": _findings(telling)}


def _facts(report: TraceReport) -> str:
    """What one recording told, in one line."""
    unit = "percent" if report.unit == "share" else ""
    parts = []
    if report.reach is not None:
        parts.append(
            f"least reach {direction_words(report.reach.weakest_rad)}, area {percent(report.reach.area_share)}"
        )
    if report.tremor is not None:
        parts.append(report.tremor.sentence.rstrip("."))
    if report.bursts is not None and report.bursts.count:
        parts.append(f"{report.bursts.count} sudden movements, highest {shown(report.bursts.peak, unit)}")
    if report.tracking is not None:
        parts.append(f"follows {shown(report.tracking.lag_s, 's')} late")
    if report.pointing is not None:
        parts.append(f"aims at {shown(report.pointing.throughput_bit_per_s, '')} bit/s")
    return "; ".join(parts)


def _other_site(plan: Plan, site: SitePlan) -> dict[str, Any]:
    cautions = [caution for caution in cautions_for(plan, site) if caution.site == site.name]
    best = site.fits[0] if site.fits else None
    listed = site.fits[1:2] if site.choice is not None else site.fits[:2]
    lines = [_line_of_fit(fit) for fit in listed]
    numbers = _numbers(site.choice) if site.choice is not None else []
    return {
        "name": site.name,
        "sentence": site.sentence,
        "demand": _demand(site),
        "ability": f"Weakest {direction_words(site.capability.weakest_rad)}.",
        "lines": lines,
        "numbers": numbers,
        "limit": tables.limiting_sentence(best) if best is not None else "",
        "cautions": [_named(caution) for caution in cautions],
        "findings": _findings((*site.findings, *site.capability.findings)),
    }


def _named(caution: Caution) -> str:
    return f"{caution.about.capitalize()}: {caution.text}"


def _colophon(plan: Plan) -> str:
    visit = f" Visit {plan.visit}." if plan.visit else ""
    return (
        f"Made {plan.made_on or 'on a date not given'} by stickwright {plan.version} from case {plan.case}.{visit} "
        f"{plan.draws} draws, seed {plan.seed}. Intervals are 95 %. A number nobody measured is marked {ASSUMED}. "
        "The numbers are about set-ups. Not a medical device: local rules, the seating clinic and the treating team "
        "come first."
    )
