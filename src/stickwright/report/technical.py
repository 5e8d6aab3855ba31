"""The words and figures of the technical pages: the answer first, then what it rests on.

Each caution is handed out together with the number it belongs to, so that the template cannot part them.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, get_args

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.sheets import Level, Sheets
from stickwright.codes.technical_pages import Figure, TechnicalPages
from stickwright.model.fit import Fit
from stickwright.model.plan import Capability, NextReading, Plan, SitePlan
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.response import Tuning
from stickwright.report import tables
from stickwright.report.ability_words import ability_lines, readings_behind, smoothed_note
from stickwright.report.between_games import games_settings
from stickwright.report.device_words import order_words
from stickwright.report.family import as_shared, cautions_for, further_set_up, main_site, on_page_one, pose_at, wire_of
from stickwright.report.figures_ability import capability_polar
from stickwright.report.figures_fit import force_travel, ranking, reach_polygon
from stickwright.report.merged import all_assumptions, merged_findings
from stickwright.report.paper import width_mm
from stickwright.report.printed import ASSUMED, clause, percent, plain, sentence, shown
from stickwright.report.sharing_words import asked_first
from stickwright.report.tell import named, tell
from stickwright.report.tremor_words import axis_words, tremor_size
from stickwright.report.tuned import gain_basis, line_of_tuning, tuning_of_choice, tuning_part, unrecorded_basis

__all__ = ["technical_pages"]

_LONG_HOLD_S = 180.0  # from there minutes say more
_BESIDE = {
    "chosen": ("effort", "hold", "session"),
    "ability": ("force",),
    "ranking": ("false_input",),
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
            [say(cell) for cell in (one.what, one.value, one.why, one.replace_by)] for one in all_assumptions(plan)
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


def _cautions(plan: Plan, site: SitePlan, keys: tuple[str, ...]) -> list[str]:
    return [say(caution.text) for caution in cautions_for(plan, site, keys)]


def _elsewhere(plan: Plan, site: SitePlan) -> list[str]:
    """Cautions about no number of the other blocks, unless page one has them: about the site, and any new key."""
    taken = {key for keys in _BESIDE.values() for key in keys}
    before = on_page_one(plan)
    return [say(one.text) for one in cautions_for(plan, site) if one.about not in taken and one not in before]


def _findings(findings: Iterable[Finding]) -> list[list[str]]:
    """What limits first, then what is to be checked, then notes; each kind in one run."""
    told: dict[Level, list[str]] = {level: [] for level in get_args(Level)}
    for finding in findings:
        told[finding.level].append(say(finding.text))
    return [[tell(Sheets.level, level=level), " ".join(texts)] for level, texts in told.items() if texts]


def _figure(svg: str, table: tables.FigureTable, caption: str) -> dict[str, Any]:
    return {"svg": svg, "alt": table.alt, "caption": caption, "width_mm": width_mm(svg)}


def _answer(plan: Plan, site: SitePlan) -> dict[str, Any]:
    first = site.choice or (site.fits[0] if site.fits else None)
    second = next((fit for fit in site.fits if fit is not first and fit != first), None)
    label = message(TechnicalPages.chosen, fits=site.choice is not None)
    return {
        "site": site.name,
        "headline": tell(
            TechnicalPages.headline, setup=first.named, site=Name(site.name), verdict=tables.verdict_of(first)
        )
        if first
        else tell(TechnicalPages.none_computed),
        "sentences": [
            *asked_first(plan.sharing),
            *(_after_headline(text) for text in dict.fromkeys((plan.sentence, site.sentence))),
        ],
        "second": _second(site, second),
        "numbers": _numbers(first, site) if first else [],
        "named": tell(TechnicalPages.labelled, label=label, setup=first.named) if first else say(label),
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
    return tell(
        TechnicalPages.second, setup=second.named, verdict=tables.verdict_of(second), limit=tables.limiting_sentence(second)
    )  # fmt: skip


def _numbers(fit: Fit, site: SitePlan) -> list[list[str]]:
    """The set-up's own numbers beside what the game asks of it, one line each."""
    rows: list[tuple[Figure, str]] = [
        ("demand", say(_demand(site))),
        ("size", _size(fit)),
        (
            "force",
            tell(TechnicalPages.force, start=plain(fit.start_force_n, "n"), full=plain(fit.full_force_n, "n")),
        ),
        (
            "effort",
            tell(
                TechnicalPages.effort,
                effort=tables.effort_words(fit),
                all_of_it=fit.effort_share.number > 1,
                limit_share=fit.duty_effort_limit,
            ),
        ),
        ("hold", _hold(fit)),
        (
            "unintended",
            tell(
                TechnicalPages.unintended,
                rate=shown(fit.false_per_min, "a_minute"),
                dead_zone_share=fit.dead_zone_share,
            ),
        ),
        (
            "rest",
            tell(
                TechnicalPages.at_rest,
                deflected_share=max(0.0, fit.rest_deflection_share),
                stays_share=max(0.0, fit.returns_share),
            ),
        ),
    ]
    if fit.lever_note:
        rows.append(("extension", clause(fit.lever_note)))
    return [[tell(TechnicalPages.figure, figure=figure), told] for figure, told in rows]


def _size(fit: Fit) -> str:
    return tell(
        TechnicalPages.size,
        contact=None if fit.kind == "touch" else plain(fit.contact_height_m, "mm"),
        travel=plain(fit.travel_m, "mm"),
        base_m=tuple(fit.base_m) if fit.base_m is not None else (),
        crosswise=fit.crosswise,
        mass=plain(fit.mass_kg, "g") if fit.mass_kg is not None else None,
        plug=named(fit.plug),
        current=plain(fit.current_a, "ma") if fit.current_a is not None else None,
    )


def _hold(fit: Fit) -> str:
    """How long it can be held, and by which curve or reading when there is one."""
    told = shown(fit.hold_s, "min" if fit.hold_s.number >= _LONG_HOLD_S else "s")
    if fit.hold_s.value is None or fit.hold_model is None:
        return told
    return tell(TechnicalPages.hold, hold=told, model=fit.hold_model)


def _demand(site: SitePlan) -> Message:
    demand = site.demand
    return message(
        TechnicalPages.demand,
        action=named(demand.action),
        duty_share=demand.duty_share,
        level_share=demand.usual_level_share,
        hold=plain(demand.longest_hold_s, "s") if demand.longest_hold_s is not None else None,
        limit_per_min=demand.false_input_limit_per_min,
    )


def _ability(plan: Plan, site: SitePlan) -> dict[str, Any]:
    able = site.capability
    table, reached = tables.capability_polar(site), tables.reach_polygon(site)
    return {
        "figures": [
            _figure(capability_polar(site), table, tables.day_note(able)),
            _figure(reach_polygon(site), reached, ""),
        ],
        "columns": [
            *table.columns[:4],
            *(tell(TechnicalPages.predicted_reach, rank=rank) for rank in range(1, len(reached.columns))),
        ],
        "rows": [[*row[:4], *_reached(reached, row[0])] for row in table.rows],
        "read": readings_behind(able),
        "smoothed": smoothed_note() if readings_behind(able) else "",
        "beside": _beside_ability(able),
        "cautions": _cautions(plan, site, _BESIDE["ability"]),
        "findings": _findings(able.findings),
    }


def _reached(reached: tables.FigureTable, direction: str) -> tuple[str, ...]:
    """Share of travel reached in one direction, on the best set-up and the second."""
    return next((row[1:] for row in reached.rows if row[0] == direction), ("",) * (len(reached.columns) - 1))


def _beside_ability(able: Capability) -> list[list[str]]:
    rows: list[tuple[Figure, str]] = [
        ("involuntary_force", shown(able.involuntary_force_n, "n")),
        ("crossing", shown(able.crossing_hz, "hz")),
        ("stiffness", shown(able.limb_stiffness_n_per_m, "n_per_mm")),
        ("push_scatter", percent(able.force_noise_share)),
        ("reading_scatter", percent(able.force_scatter_share)),
    ]
    if able.tiring_share is not None:
        rows.append(("force_lost", percent(able.tiring_share)))
    rest = tell(TechnicalPages.resting_force, direction_rad=able.rest_direction_rad)
    told = [[tell(TechnicalPages.figure, figure=figure), value] for figure, value in rows]
    return [[rest, shown(able.rest_force_n, "n")], *told]


def _crossing(site: SitePlan) -> dict[str, Any]:
    table = tables.force_travel(site)
    return _figure(force_travel(site), table, tell(TechnicalPages.crossing_caption))


def _ranking(plan: Plan, site: SitePlan) -> dict[str, Any]:
    table = tables.ranking(site)
    keys = _BESIDE["ranking"]
    return {
        "columns": ["", *table.columns[2:7]],
        "fitting": sum(fit.verdict != "does not fit" for fit in site.fits),
        "rows": [_ranked(rank, row, fit) for rank, (row, fit) in enumerate(zip(table.rows, site.fits, strict=True), 1)],
        "figure": _figure(ranking(site), table, tell(TechnicalPages.ranking_caption)),
        "cautions": _cautions(plan, site, keys),
        "best_note": tables.best_note(),
        "tried": tell(TechnicalPages.tried, setups=site.tried),
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
    return tell(
        TechnicalPages.fit_line,
        setup=fit.named,
        verdict=tables.verdict_of(fit),
        weakest_rad=fit.weakest_rad,
        weakest=percent(fit.weakest_share),
        bits=shown(fit.bits, ""),
        rate=shown(fit.false_per_min, "a_minute"),
        helps=fit.help or None,
    )


def _extension(site: SitePlan) -> str:
    parts = tuple(
        message(TechnicalPages.extension, direction_rad=phi, length_m=abs(extra_m), longer=extra_m > 0)
        for phi, _, extra_m in site.best_extension
    )
    return tell(TechnicalPages.extensions, parts=parts) if parts else ""


def _next_reading(reading: NextReading) -> dict[str, Any]:
    """What to read next; its chance once, in the sentence or after it."""
    heading = tell(TechnicalPages.enough, enough=reading.enough)
    ranked = [
        tell(TechnicalPages.reading, what=what, direction_rad=phi, site=Name(site), chance_share=chance)
        for site, phi, what, chance in reading.ranked[:3]
    ]
    return {
        "heading": heading,
        "sentence": sentence(reading.sentence),
        "ranked": [] if reading.enough else ranked,
    }


def _tuning(plan: Plan, site: SitePlan, tuning: Tuning | None) -> dict[str, Any]:
    cautions = _cautions(plan, site, _BESIDE["tuning"])
    if tuning is None:
        why = tell(TechnicalPages.no_tuning)
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
    return {"type": tell(TechnicalPages.numbers_of, game=Name(plan.game or ""))}


def _recordings(site: SitePlan) -> dict[str, Any]:
    """What to look at in the recordings, findings that several share once, and those with nothing to check."""
    if not site.recordings:
        why = tell(TechnicalPages.no_recording)
        return {"why": why, "told": [], "quiet": [], "facts": [], "notes": []}
    told = merged_findings((report.name, finding) for report in site.recordings for finding in report.findings)
    by_level = {
        level: [
            [", ".join(names), tell(Sheets.level, level=level), say(one.text)]
            for names, one in told
            if one.level == level
        ]
        for level in get_args(Level)
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
    return tell(
        TechnicalPages.recording,
        recording=Name(report.name),
        task=Name(report.task),
        time_s=report.duration_s,
        rate_hz=report.rate_hz,
        stick=named(report.stick),
    )


def _facts(report: TraceReport) -> str:
    """What one recording told, in one line."""
    parts: list[Message] = []
    if report.reach is not None:
        weakest_rad = float(report.reach.weakest_rad)
        parts.append(
            message(TechnicalPages.least_reach, direction_rad=weakest_rad, area=percent(report.reach.area_share))
        )
    if report.tremor is not None:
        size = None if report.tremor.band_rms.value is None else tremor_size(report)
        axis = axis_words(report.tremor.axis) if len(report.tremor.axis) == 3 else None
        parts.append(message(TechnicalPages.tremor, told=report.tremor.sentence, size=size, axis=axis))
    if report.tracking is not None:
        parts.append(message(TechnicalPages.late, lag=shown(report.tracking.lag_s, "s")))
    if report.pointing is not None:
        throughput = shown(report.pointing.throughput_bit_per_s, "")
        parts.append(message(TechnicalPages.throughput, throughput=throughput))
    return tell(TechnicalPages.facts, facts=tuple(parts)) if parts else ""


def _other_site(plan: Plan, site: SitePlan, *, spare: bool) -> dict[str, Any]:
    """A further site; one that could have a stick and gets none in the sharing says so."""
    unused = tell(TechnicalPages.unused) if spare and site.choice is None else ""
    best = site.fits[0] if site.fits else None
    listed = site.fits[1:2] if site.choice is not None else site.fits[:2]
    told = set(_cautions(plan, main_site(plan), ("effort", "hold", "force", "false_input", "dead zone")))
    own = [caution for caution in plan.cautions if caution.site == site.name and say(caution.text) not in told]
    return {
        "name": site.name,
        "headline": tell(TechnicalPages.site_headline, setup=site.choice.named, verdict=tables.verdict_of(site.choice))
        if site.choice is not None
        else unused,
        "set_up": further_set_up(site, wire_of(plan, site), pose_at(plan, site)),
        "sentence": _after_headline(site.sentence),
        "demand": tell(TechnicalPages.asks, demand=_demand(site), weakest_rad=site.capability.weakest_rad),
        "ability": ability_lines(site.capability),
        "lines": [_line_of_fit(fit) for fit in listed],
        "numbers": _numbers(site.choice, site) if site.choice is not None else [],
        "settings": gain_basis(site.choice) if site.choice is not None and tuning_of_choice(site) is None else "",
        "limit": tables.limiting_sentence(best) if best is not None and not _names(site, best) else "",
        "cautions": [say(caution.text) for caution in own],
        "findings": _findings((*site.findings, *site.capability.findings)),
    }


def _colophon(plan: Plan) -> str:
    return tell(
        TechnicalPages.made,
        made_on=named(plan.made_on),
        version=Name(plan.version),
        case=Name(plan.case),
        visit=named(plan.visit),
        simulations=plan.draws,
        seed=plan.seed,
        mark=ASSUMED,
    )
