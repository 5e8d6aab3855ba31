"""What a practitioner reads in the terminal: short lines, units, intervals, findings; 80 columns."""

from __future__ import annotations

import textwrap
from typing import Literal, get_args

from stickwright.catalogue import say
from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.reports import Heading, Reports
from stickwright.codes.setups import Setups
from stickwright.codes.sheets import Level, Sheets
from stickwright.codes.sites import Part
from stickwright.codes.stick_settings import StickSettings
from stickwright.codes.traces import Heading as TraceHeading
from stickwright.codes.traces import Traces
from stickwright.mechanics.bench_warnings import ALLOWED_FOR
from stickwright.model.bench import BenchResult
from stickwright.model.fit import Caution, Fit
from stickwright.model.plan import Plan, SitePlan
from stickwright.model.recorded import Finding, HoldReport, TableReport, TraceReport
from stickwright.model.response import Tuning
from stickwright.report import tables
from stickwright.report.ability_words import readings_behind
from stickwright.report.aiming_words import pointing_lines, smoothness_lines, tap_lines
from stickwright.report.device_words import order_words
from stickwright.report.games_words import common_headlines, games_blocks
from stickwright.report.gather import device_steps, report_of, shared_findings
from stickwright.report.merged import merged_findings
from stickwright.report.mount_words import mount_blocks
from stickwright.report.printed import (
    centre_words,
    sentence,
    wrapped,
)
from stickwright.report.sharing_lines import sharing_blocks
from stickwright.report.sharing_words import asked_first
from stickwright.report.tell import named, names, tell
from stickwright.report.to_terminal import cell_text
from stickwright.report.tremor_words import axis_words, tremor_size
from stickwright.report.tuned import (
    dead_zones,
    lost,
    no_settings,
    set_for,
    setup_of,
    tuned_elsewhere,
    tuning_of_choice,
    typed_basis,
    unrecorded_basis,
)
from stickwright.report.view import Cell
from stickwright.trace.usual import usual_tremor

__all__ = ["bench_words", "plan_words", "table_words", "trace_words"]

WIDTH = 80
_STICK_NUMBERS = ("effort", "hold", "false_input", "session", "dead zone")
_LEVELS: tuple[Level, ...] = get_args(Level)
"""In the order in which they are told."""

_TOLD_IN_FULL = 5
"""Sticks told with all figures, fitting or not; further down only what rules them out."""


def plan_words(plan: Plan) -> str:
    """The plan as plain text: answer, numbers with their cautions, ranked sticks, next reading, assumptions.

    Parameters
    ----------
    plan : Plan
        A finished plan.

    Returns
    -------
    str
        Lines of at most 80 columns.
    """
    report = report_of(plan)
    parts = [
        say(report.head),
        wrapped([*common_headlines(plan), *asked_first(plan.sharing), say(plan.sentence)], WIDTH),
    ]
    if report.what_if is not None:
        parts.insert(0, wrapped([say(report.what_if)], WIDTH))
    parts += games_blocks(plan, WIDTH)
    parts += sharing_blocks(plan, report, WIDTH)
    parts += [_site(plan, site) for site in plan.sites]
    parts += mount_blocks(plan, WIDTH)
    if steps := device_steps(plan):
        parts.append(_block(_head("devices"), [say(one) for one in steps]))
    parts.append(_block(_head("next"), [say(plan.next_reading.sentence)]))
    shared = plan.sharing
    left = [_caution(caution) for caution in plan.cautions if caution not in _placed(plan)]
    told = {caution.text for caution in plan.cautions}
    left += [_caution(caution) for caution in (shared.cautions if shared else ()) if caution.text not in told]
    if left:
        parts.append(_block(_head("cautions"), list(dict.fromkeys(left))))
    for table in report.tables("assumed"):
        parts.append(_block(say(table.caption), [_assumption(row) for row in table.rows]))
    noticed = dict.fromkeys(
        (*plan.findings, *shared_findings(plan), *(plan.together.findings if plan.together else ()))
    )
    if noticed:
        parts.append(_block(_head("findings"), _findings(tuple(noticed))))
    parts.append(wrapped([tell(Reports.simulations, count=plan.draws, seed=plan.seed)], WIDTH))
    return "\n\n".join(part for part in parts if part) + "\n"


def _assumption(row: tuple[Cell, ...]) -> str:
    """One row of what is assumed, as a sentence."""
    what, value, why, confirm = (cell_text(cell) for cell in row)
    return tell(Reports.assumption, what=what, value=value, why=why, confirm=confirm)


def trace_words(report: TraceReport) -> str:
    """What one recording told, as plain text.

    Parameters
    ----------
    report : TraceReport
        A finished report.

    Returns
    -------
    str
        Lines of at most 80 columns; shares of full output as per cent.
    """
    unit = None if report.unit == "share" else Name(report.unit)
    head = tell(
        Traces.recording, recording=Name(report.name), task=Name(report.task), time_s=report.duration_s,
        samples=report.samples, rate_hz=report.rate_hz, unit=unit,
    )  # fmt: skip
    parts = [wrapped([head], WIDTH)]
    if report.findings:
        parts.append(_block(_part("findings"), _findings(_once(report))))
    blocks: dict[TraceHeading, list[str]] = {
        "rest": _rest(report, unit),
        "reach": _reach(report, unit),
        "direction": _bias(report),
        "tremor": _tremor(report),
        "bursts": _bursts(report),
        "holds": [_hold(hold, unit) for hold in report.holds],
        "aiming": pointing_lines(report.pointing, report.unit) if report.pointing else [],
        "following": _tracking(report, unit),
        "smoothness": smoothness_lines(report.smoothness) if report.smoothness else [],
    }
    parts += [_block(_part(name), lines) for name, lines in blocks.items() if lines]
    return "\n\n".join(parts) + "\n"


def table_words(report: TableReport) -> str:
    """What a table of movements or presses told, as plain text.

    Parameters
    ----------
    report : TableReport
        A finished report.

    Returns
    -------
    str
        Lines of at most 80 columns.
    """
    kind: Literal["trials", "taps"] = "trials" if report.kind == "trials" else "taps"
    parts = [wrapped([tell(Traces.table, table=Name(report.name), kind=kind, rows=report.rows)], WIDTH)]
    if report.findings:
        parts.append(_block(_part("findings"), _findings(report.findings)))
    if report.pointing is not None:
        parts.append(_block(_part("aiming"), pointing_lines(report.pointing, "")))
    if report.taps is not None:
        parts.append(_block(_part("presses"), tap_lines(report.taps)))
    return "\n\n".join(parts) + "\n"


def bench_words(result: BenchResult) -> str:
    """A benched stick as plain text.

    Parameters
    ----------
    result : BenchResult
        A finished bench.

    Returns
    -------
    str
        Lines of at most 80 columns.
    """
    lines = [tell(Traces.figure, what=name, told=value) for name, value in tables.bench(result).rows]
    parts = [wrapped([tell(Traces.bench, stick=Name(result.name), benched_on=named(result.benched))], WIDTH)]
    parts.append(_block(_part("contact_point"), [*lines, _returns(result)]))
    if result.directions:
        told = [
            tell(
                Traces.bench_direction,
                direction_rad=line.direction_rad,
                start=line.start_force_n,
                full=line.full_force_n,
            )
            for line in result.directions
        ]
        parts.append(_block(_part("by_direction"), told))
    used = tell(
        Traces.readings_used, used=sum(one.used for one in result.readings), readings=len(result.readings),
        scatter_share=result.scatter_share, allowed=ALLOWED_FOR,
    )  # fmt: skip
    parts.append(wrapped([used], WIDTH))
    if result.findings:
        parts.append(_block(_part("findings"), _findings(result.findings)))
    return "\n\n".join(parts) + "\n"


def _returns(result: BenchResult) -> str:
    """Whether it comes home, unless a finding tells it with its advice; a reason that stands at the friction once."""
    if any(
        isinstance(one.text, Message) and one.text.code == "BenchNotes.leaves_off_centre" for one in result.findings
    ):
        return ""
    why = result.friction_force_n.why
    unknown = message(BenchNotes.returns_unknown, why=why or "")
    return sentence(message(BenchNotes.returns_see_friction) if why and result.returns == unknown else result.returns)


def _block(title: str, lines: list[str]) -> str:
    """A title, and indented lines under it."""
    return f"{title}\n" + wrapped(lines, WIDTH, "  ", "    ")


def _findings(findings: tuple[Finding, ...]) -> list[str]:
    """What limits first, notes last."""
    return [
        tell(Sheets.finding, level=one.level, text=one.text)
        for one in sorted(findings, key=lambda one: _LEVELS.index(one.level))
    ]


_CENTRE_MISSING = ("no_rest", "no_reach", "direction_not_told")


def _once(report: TraceReport) -> tuple[Finding, ...]:
    """Findings; what three of them say of a unit without a known centre in one."""
    missing = [one for one in report.findings if one.about in _CENTRE_MISSING and one.level == "note"]
    if report.unit == "share" or report.rest is not None or len(missing) < len(_CENTRE_MISSING):
        return report.findings
    text = message(Traces.no_centre, unit=Name(report.unit))
    return (*(one for one in report.findings if one not in missing), Finding("note", "no_centre", text))


def _caution(caution: Caution) -> str:
    return tell(Reports.caution, text=caution.text)


def _placed(plan: Plan) -> tuple[Caution, ...]:
    """Cautions that stand beside a site's numbers already."""
    names = {site.name for site in plan.sites}
    return tuple(caution for caution in plan.cautions if caution.site in names or (caution.site is None and plan.sites))


def _site(plan: Plan, site: SitePlan) -> str:
    """One site: the answer, ability and ranked sticks, each with the cautions that belong to it."""
    first = site is plan.sites[0]
    own = [one for one in plan.cautions if one.site == site.name or (first and one.site is None)]
    beside = {
        "ability": [_caution(one) for one in own if one.about == "force"],
        "sticks": [_caution(one) for one in own if one.about in _STICK_NUMBERS],
        "site": [_caution(one) for one in own if one.about not in ("force", *_STICK_NUMBERS)],
    }
    said = [say(site.sentence)] if site.sentence != plan.sentence else []
    part: Part | None = next((one for one in get_args(Part) if one == site.part), None)
    head = tell(Reports.site, site=Name(site.name), part=part, action=named(site.demand.action))
    parts = [f"{'-' * WIDTH}\n{textwrap.fill(head, WIDTH)}"]
    parts.append(wrapped([*said, *beside["site"]], WIDTH))
    parts.append(_block(_head("ability"), [*_ability(site), *beside["ability"]]))
    parts.append(f"{tell(Reports.ranked_heading, setups=site.tried)}\n{_ranked(site.fits)}")
    if site.fits:
        parts.append(wrapped([tables.best_note()], WIDTH, "  ", "  "))
    if site.to_order is not None:
        parts.append(wrapped([order_words(site.to_order)], WIDTH, "  ", "  "))
    if beside["sticks"]:
        parts.append(wrapped(beside["sticks"], WIDTH, "  ", "    "))
    findings = (*site.findings, *site.capability.findings)
    if findings:
        parts.append(_block(_head("findings"), _findings(findings)))
    parts += [_block(tell(StickSettings.tuning_of, setup=setup_of(one)), _tuning(site, one)) for one in site.tunings]
    if site.choice is not None and tuning_of_choice(site) is None and unrecorded_basis(site.choice):
        parts.append(
            _block(tell(StickSettings.settings_of, stick=Name(site.choice.full_name)), [unrecorded_basis(site.choice)])
        )
    if site.recordings:
        parts.append(_block(_head("recordings"), _recordings(site)))
    return "\n\n".join(part for part in parts if part)


def _ability(site: SitePlan) -> list[str]:
    lines = [
        tell(Reports.ability, direction=row[0], force=row[1], reach=row[2], readings=row[3])
        for row in tables.capability_polar(site).rows
    ]
    able = site.capability
    lines.append(tables.day_note(able))
    lines.append(readings_behind(able))
    lines.append(tell(Reports.resting, rest=able.rest_force_n, involuntary=able.involuntary_force_n))
    lines.append(tell(Reports.stiffness, stiffness=able.limb_stiffness_n_per_m))
    if able.tiring_share is not None:
        lines.append(tell(Reports.lost, lost=able.tiring_share))
    return lines


def _ranked(fits: tuple[Fit, ...]) -> str:
    """Every stick: verdict, numbers, what limits it; those far down in a line each."""
    lines = []
    for rank, fit in enumerate(fits, start=1):
        if rank > _TOLD_IN_FULL and fit.verdict == "does not fit":
            lines.append(
                wrapped([tell(Reports.ranked_low, rank=rank, setup=fit.named, limit=fit.limit)], WIDTH, "  ", "     ")
            )
            continue
        numbers = tell(
            Reports.figures, direction_rad=fit.weakest_rad, weakest=fit.weakest_share, effort=tables.effort_words(fit),
            unintended=message(Setups.unintended, rate=fit.false_per_min), dead_zone_share=fit.dead_zone_share, bits=fit.bits,
            best_share=fit.probability_best,
        )  # fmt: skip
        confirm = bool(fit.doubts) and fit.verdict != "does not fit"
        ranked = tell(Reports.ranked, rank=rank, setup=fit.named, verdict=fit.verdict, confirm=confirm)
        lines.append(wrapped([ranked], WIDTH, "  ", "     "))
        lines.append(wrapped([numbers, tables.limiting_sentence(fit)], WIDTH, "     ", "     "))
        if rank == 1:
            lines.append(wrapped([sentence(fit.lever_note or "")], WIDTH, "     ", "     "))
    return "\n".join(line for line in lines if line) or f"  {tell(Reports.none_computed)}"


def _recordings(site: SitePlan) -> list[str]:
    """What each recording needs looked at; what several share once; those with nothing in one line."""
    told = merged_findings((report.name, finding) for report in site.recordings for finding in report.findings)
    lines = [
        tell(
            Reports.told_of,
            recordings=names(recordings),
            finding=message(Sheets.finding, level=one.level, text=one.text),
        )
        for level in _LEVELS
        for recordings, one in told
        if one.level == level
    ]
    quiet = [report.name for report in site.recordings if not report.findings]
    return [*lines, tell(Reports.quiet, recordings=names(quiet)) if quiet else ""]


def _tuning(site: SitePlan, tuning: Tuning) -> list[str]:
    if tuning.faults:
        others = tuple(one for one in tuning.findings if one not in tuning.faults)
        return [no_settings(tuning), *_findings(others)]
    return [
        tuned_elsewhere(site.choice, tuning),
        *(tell(Reports.setting, step=name, told=setting) for name, setting in tables.tuning_numbers(tuning).rows),
        f"{set_for(tuning)} {lost(tuning)}",
        typed_basis(tuning),
        dead_zones(site.choice, tuning),
        *_findings(tuning.findings),
    ]


def _head(part: Heading) -> str:
    return tell(Reports.heading, part=part)


def _part(part: TraceHeading) -> str:
    return tell(Traces.heading, part=part)


def _rest(report: TraceReport, unit: Name | None) -> list[str]:
    rest = report.rest
    if rest is None:
        return []
    own = "percent" if unit is None else "foreign"
    centre = tell(Traces.centre, told=centre_words(rest.offset_x, rest.offset_y, own))
    if rest.noise_rms.value is None and rest.noise_rms.why == rest.drift_per_min.why:
        if rest.offset_x.why == rest.offset_y.why == rest.noise_rms.why:
            return [centre, tell(Traces.noise_unknown)]
        return [centre, tell(Traces.noise_and_drift, value=rest.noise_rms, unit=unit)]
    noise = tell(
        Traces.noise, within=rest.noise_rms, between=rest.return_scatter, pooled=rest.pooled_rms, unit=unit
    )  # fmt: skip
    return [centre, noise, tell(Traces.drift, drift=rest.drift_per_min, unit=unit)]


def _reach(report: TraceReport, unit: Name | None) -> list[str]:
    """Reach by direction; directions without one together, under their reason."""
    reach = report.reach
    if reach is None:
        return []
    lines, missing = [], dict[Text | None, list[float]]()
    for phi, one in zip(reach.direction_rad, reach.reach, strict=True):
        if one.value is None:
            missing.setdefault(one.why, []).append(float(phi))
        else:
            lines.append(tell(Traces.reach, direction_rad=float(phi), reach=one, unit=unit))
    lines += [tell(Traces.reach_unknown, directions_rad=tuple(ways), why=why) for why, ways in missing.items()]
    return [*lines, tell(Traces.least_reach, direction_rad=float(reach.weakest_rad), area=reach.area_share)]


def _bias(report: TraceReport) -> list[str]:
    bias = report.bias
    if bias is None:
        return []
    lines = [
        tell(Traces.rotation, turn=bias.error_rotation_rad, resultant_share=bias.resultant_length),
        tell(Traces.cross_talk, cross_talk=bias.cross_talk),
    ]
    if bias.mirrored:
        lines.append(tell(Traces.mirrored))
    turns: Literal[1, 2, 3] | None = next((one for one in (1, 2, 3) if bias.quarter_turns % 4 == one), None)
    if turns is not None:
        lines.append(tell(Traces.base_stood, quarter_turns=turns))
    return lines


def _tremor(report: TraceReport) -> list[str]:
    """The sentence; every size with its band and unit; the direction; the zero-crossing frequency."""
    tremor = report.tremor
    if tremor is None:
        return []
    lines = [say(tremor.sentence)]
    if tremor.band_rms.value is not None:
        lines.append(tell(Traces.tremor_size, told=tremor_size(report)))
    if tremor.axis_share is not None:
        low_hz, high_hz = (None, None) if tremor.peak_hz else tremor.band_hz
        axis = axis_words(tremor.axis)
        lines.append(tell(Traces.tremor_line, axis=axis, power_share=tremor.axis_share, low_hz=low_hz, high_hz=high_hz))
    low_hz, high_hz = tremor.crossing_band_hz
    lines.append(tell(Traces.crossing, frequency=tremor.crossing_hz, low_hz=low_hz, high_hz=high_hz))
    return [*lines, say(usual_tremor(report.unit))]


def _bursts(report: TraceReport) -> list[str]:
    bursts = report.bursts
    if bursts is None:
        return []
    if not bursts.count:
        return [tell(Traces.no_bursts, rate=bursts.per_min)]
    # How many, how often and how large is among the findings.
    return [tell(Traces.bursts, length=bursts.duration_s, why=bursts.peak.why or None)]


def _hold(hold: HoldReport, unit: Name | None) -> str:
    return tell(
        Traces.hold, direction_rad=float(hold.direction_rad), level=hold.level, time_s=hold.duration_s, scatter=hold.sd,
        slope=hold.slope_per_s, unit=unit,
    )  # fmt: skip


def _tracking(report: TraceReport, unit: Name | None) -> list[str]:
    tracking = report.tracking
    if tracking is None:
        return []
    return [
        tell(Traces.following, error=tracking.rms_error, without_lag=tracking.error_without_lag, unit=unit),
        tell(Traces.following_gain, gain=tracking.gain, lag=tracking.lag_s),
    ]
