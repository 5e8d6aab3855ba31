"""What a practitioner reads in the terminal: short lines, units, intervals, findings; 80 columns."""

from __future__ import annotations

import textwrap

from stickwright.model.bench import BenchResult
from stickwright.model.plan import Caution, Fit, Plan, SitePlan, direction_words
from stickwright.model.recorded import Finding, HoldReport, TraceReport
from stickwright.model.response import Tuning
from stickwright.sheet import tables
from stickwright.sheet.printed import percent, plain, sentence, share, shown, wrapped

__all__ = ["bench_words", "plan_words", "trace_words"]

WIDTH = 80
_STICK_NUMBERS = ("effort", "hold", "false input", "session", "dead zone")
_LEVELS = {"note": "Noted", "query": "Please check", "fault": "Limits what can be said"}

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
    head = [f"Player {plan.player}", f"made {plan.made_on}" if plan.made_on else "", f"stickwright {plan.version}"]
    parts = [", ".join(part for part in head if part), wrapped([plan.sentence], WIDTH)]
    parts += [_site(plan, site) for site in plan.sites]
    chance = f"Chance that the choice is right: {share(plan.next_reading.chance_now)}."
    parts.append(_block("Next reading", [plan.next_reading.sentence, chance if plan.sites else ""]))
    left = [_caution(caution) for caution in plan.cautions if caution not in _placed(plan)]
    if left:
        parts.append(_block("Cautions", left))
    if plan.assumptions:
        parts.append(
            _block("Assumed, not measured", [f"{a.what}: {a.value} ({a.why}). Replace by: {a.replace_by}."
                                             for a in plan.assumptions])
        )  # fmt: skip
    if plan.findings:
        parts.append(_block("Findings", _findings(plan.findings)))
    parts.append(wrapped([f"{plan.draws} draws, seed {plan.seed}; intervals are 95 %."], WIDTH))
    return "\n\n".join(part for part in parts if part) + "\n"


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
    unit = "percent" if report.unit == "share" else "foreign"
    head = (
        f"{report.name}: {report.task}, {plain(report.duration_s, 's')}, {report.samples} samples at "
        f"{plain(report.rate_hz, 'hz')}"
    )
    if report.unit != "share":
        head += f", in {report.unit}"
    parts = [wrapped([head], WIDTH)]
    if report.findings:
        parts.append(_block("Findings", _findings(report.findings)))
    blocks = {
        "Rest": _rest(report, unit),
        "Reach": _reach(report, unit),
        "Direction": _bias(report),
        "Tremor": _tremor(report, unit),
        "Sudden movements": _bursts(report, unit),
        "Holds": [_hold(hold, unit) for hold in report.holds],
        "Aiming": _pointing(report),
        "Following": _tracking(report, unit),
        "Smoothness": _smoothness(report),
    }
    parts += [_block(name, lines) for name, lines in blocks.items() if lines]
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
    lines = [f"{name}: {value}" for name, value in tables.bench(result).rows]
    parts = [wrapped([f"Bench of {result.name}{f', {result.benched}' if result.benched else ''}"], WIDTH)]
    parts.append(_block("At the contact point, all directions", [*lines, sentence(result.returns)]))
    if result.directions:
        parts.append(_block("By direction", [
            f"{direction_words(line.direction_rad) if line.direction_rad is not None else 'all'}: "
            f"start {shown(line.start_force_n, 'n')}, full {shown(line.full_force_n, 'n')}"
            for line in result.directions
        ]))  # fmt: skip
    used = sum(one.used for one in result.readings)
    parts.append(wrapped([f"{used} of {len(result.readings)} readings used; scatter of one reading "
                          f"{share(result.scatter_share)} of the middle force."], WIDTH))  # fmt: skip
    if result.findings:
        parts.append(_block("Findings", _findings(result.findings)))
    return "\n\n".join(parts) + "\n"


def _block(title: str, lines: list[str]) -> str:
    """A title, and indented lines under it."""
    return f"{title}\n" + wrapped(lines, WIDTH, "  ", "    ")


def _findings(findings: tuple[Finding, ...]) -> list[str]:
    return [f"{_LEVELS[finding.level]}: {finding.text}" for finding in findings]


def _caution(caution: Caution) -> str:
    return f"CAUTION ({caution.about}): {caution.text}"


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
    said = [site.sentence] if site.sentence != plan.sentence else []
    parts = [f"{'-' * WIDTH}\n{textwrap.fill(f'{site.name} ({site.part}), for {site.demand.action}', WIDTH)}"]
    parts.append(wrapped([*said, *beside["site"]], WIDTH))
    parts.append(_block("Ability: comfortable force and free reach", [*_ability(site), *beside["ability"]]))
    parts.append(f"Sticks ranked ({site.tried} set-ups computed)\n{_ranked(site.fits)}")
    if beside["sticks"]:
        parts.append(wrapped(beside["sticks"], WIDTH, "  ", "    "))
    findings = (*site.findings, *site.capability.findings)
    if findings:
        parts.append(_block("Findings", _findings(findings)))
    parts += [_block(f"Tuning of {tuning.stick}", _tuning(tuning)) for tuning in site.tunings]
    parts += [
        _block(f"Recording {report.name} ({report.task})", _findings(report.findings) or ["Nothing unusual."])
        for report in site.recordings
    ]
    return "\n\n".join(part for part in parts if part)


def _ability(site: SitePlan) -> list[str]:
    lines = [f"{row[0]}: {row[1]}, {row[2]}; {row[3]}" for row in tables.capability_polar(site).rows]
    able = site.capability
    lines.append(f"rest force {shown(able.rest_force_n, 'n')}; involuntary {shown(able.involuntary_force_n, 'n')}")
    lines.append(f"limb stiffness {shown(able.limb_stiffness_n_per_m, 'n_per_mm')}")
    if able.tiring_share is not None:
        lines.append(f"force lost, first to last reading: {percent(able.tiring_share)}")
    return lines


def _ranked(fits: tuple[Fit, ...]) -> str:
    """Every stick: verdict, numbers, what limits it; those far down in a line each."""
    lines = []
    for rank, fit in enumerate(fits, start=1):
        if rank > _TOLD_IN_FULL and fit.verdict == "does not fit":
            lines.append(wrapped([f"{rank}. {fit.label}: {fit.limit}"], WIDTH, "  ", "     "))
            continue
        numbers = (
            f"{direction_words(fit.weakest_rad)} {percent(fit.weakest_share)}, effort {percent(fit.effort_share)}, "
            f"false input {shown(fit.false_per_min, 'a_minute')} at dead zone {share(fit.dead_zone_share)}, "
            f"{shown(fit.bits, '')} bits, chance best {share(fit.probability_best)}"
        )
        lines.append(wrapped([f"{rank}. {fit.label}: {fit.verdict}"], WIDTH, "  ", "     "))
        lines.append(wrapped([numbers, tables.limiting_sentence(fit)], WIDTH, "     ", "     "))
        if rank == 1:
            lines.append(wrapped([sentence(fit.lever_note)], WIDTH, "     ", "     "))
    return "\n".join(line for line in lines if line) or "  None was computed."


def _tuning(tuning: Tuning) -> list[str]:
    simple = tuning.simple
    return [
        *(f"{name}: {setting}" for name, setting in tables.tuning_numbers(tuning).rows),
        *(f"{way}: reached {reached}, multiplied by {gain}" for way, reached, gain in tables.tuning_range(tuning).rows),
        f"In the game: dead zone {simple.dead_zone_percent:.0f} %, sensitivity {simple.sensitivity_percent:.0f} %. "
        f"{simple.lost}",
        *_findings(tuning.findings),
    ]


def _rest(report: TraceReport, unit: str) -> list[str]:
    rest = report.rest
    if rest is None:
        return []
    lines = [
        f"centre: right {shown(rest.offset_x, unit)}, forward {shown(rest.offset_y, unit)}",
        f"noise {shown(rest.noise_rms, unit)} rms per axis; drift {shown(rest.drift_per_min, unit)} a minute",
    ]
    if rest.return_scatter is not None:
        lines.append(f"comes home to within {shown(rest.return_scatter, unit)}")
    return lines


def _reach(report: TraceReport, unit: str) -> list[str]:
    reach = report.reach
    if reach is None:
        return []
    lines = [
        f"{direction_words(phi)}: {shown(one, unit)}" for phi, one in zip(reach.direction_rad, reach.reach, strict=True)
    ]
    return [*lines, f"least {direction_words(reach.weakest_rad)}; area {percent(reach.area_share)} of the disc"]


def _bias(report: TraceReport) -> list[str]:
    bias = report.bias
    if bias is None:
        return []
    lines = [
        f"produced minus cued: {shown(bias.rotation_rad, 'deg')}, anticlockwise is plus; agreement "
        f"{bias.resultant_length:.2f} of 1",
        f"across the cued direction: {percent(bias.cross_talk)} of the movement along it",
    ]
    if bias.mirrored:
        lines.append("mirrored: one axis runs backwards")
    if bias.quarter_turns:
        lines.append(f"turned by {bias.quarter_turns} quarter(s) anticlockwise")
    return lines


def _tremor(report: TraceReport, unit: str) -> list[str]:
    tremor = report.tremor
    if tremor is None:
        return []
    lines = [tremor.sentence, f"movement {shown(tremor.rms, unit)} rms, {shown(tremor.crossing_hz, 'hz')} crossings"]
    if tremor.stands_out:
        lines.insert(1, f"peak at {shown(tremor.frequency_hz, 'hz')}, {percent(tremor.share)} of the band's power")
    return lines


def _bursts(report: TraceReport, unit: str) -> list[str]:
    bursts = report.bursts
    if bursts is None:
        return []
    if not bursts.count:
        return ["none"]
    return [
        f"{bursts.count}, that is {shown(bursts.per_min, 'a_minute')}; highest {shown(bursts.peak, unit)}, lasting "
        f"{shown(bursts.duration_s, 's')}"
    ]


def _hold(hold: HoldReport, unit: str) -> str:
    return (
        f"{direction_words(hold.direction_rad)}: {shown(hold.level, unit)} for {plain(hold.duration_s, 's')}, scatter "
        f"{shown(hold.sd, unit)}, change {percent(hold.slope_per_s)} a second"
    )


def _pointing(report: TraceReport) -> list[str]:
    pointing = report.pointing
    if pointing is None:
        return []
    return [
        f"{pointing.movements} movements: {shown(pointing.throughput_bit_per_s, '')} bit/s, "
        f"missed {percent(pointing.error_rate)}",
        *(f"{name}: {shown(value, 'foreign')}" for name, value in pointing.path_measures),
        *(f"left out: {reason}" for reason in pointing.left_out),
    ]


def _tracking(report: TraceReport, unit: str) -> list[str]:
    tracking = report.tracking
    if tracking is None:
        return []
    return [
        f"error {shown(tracking.rms_error, unit)} rms",
        f"error with the lag taken off {shown(tracking.error_without_lag, unit)}",
        f"gain {shown(tracking.gain, '')}, {shown(tracking.lag_s, 's')} late",
    ]


def _smoothness(report: TraceReport) -> list[str]:
    smooth = report.smoothness
    if smooth is None:
        return []
    return [
        f"{smooth.movements} movements: spectral arc length {shown(smooth.spectral_arc_length, '')}, log jerk "
        f"{shown(smooth.log_dimensionless_jerk, '')}"
    ]
