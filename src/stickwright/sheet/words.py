"""What a practitioner reads in the terminal: short lines, units, intervals, findings; 80 columns."""

from __future__ import annotations

import textwrap
from typing import get_args

from stickwright.catalogue import say
from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.message import Message, Name, message
from stickwright.codes.sheets import Level, Sheets
from stickwright.codes.stick_settings import StickSettings
from stickwright.mechanics.bench_doubt import ALLOWED_FOR
from stickwright.model.bench import BenchResult
from stickwright.model.plan import Caution, Fit, Plan, SitePlan, direction_words
from stickwright.model.recorded import Finding, HoldReport, TableReport, TraceReport
from stickwright.model.response import Tuning
from stickwright.model.turns import base_stood
from stickwright.sheet import tables
from stickwright.sheet.ability_words import readings_behind
from stickwright.sheet.aiming_words import known, pointing_lines, smoothness_lines, tap_lines
from stickwright.sheet.device_words import crosswise_step, holding_steps, mode_steps, order_words, setting_step
from stickwright.sheet.games_words import all_placements, common_headlines, games_blocks
from stickwright.sheet.merged import merged_assumptions, merged_findings
from stickwright.sheet.mount_words import mount_blocks
from stickwright.sheet.printed import (
    centre_words,
    clause,
    percent,
    plain,
    sentence,
    share,
    shown,
    sided,
    wrapped,
)
from stickwright.sheet.sharing_lines import sharing_blocks
from stickwright.sheet.sharing_words import asked_first
from stickwright.sheet.tell import tell
from stickwright.sheet.tremor_words import axis_words, band_words, in_own_unit, tremor_size, usual_tremor
from stickwright.sheet.tuned import (
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
from stickwright.sheet.what_if import what_if_words
from stickwright.units import chance_words

__all__ = ["bench_words", "plan_words", "table_words", "trace_words"]

WIDTH = 80
_STICK_NUMBERS = ("effort", "hold", "false input", "session", "dead zone")
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
    head = [f"Player {plan.player}", f"made {plan.made_on}" if plan.made_on else "", f"stickwright {plan.version}"]
    parts = [
        ", ".join(part for part in head if part),
        wrapped([*common_headlines(plan), *asked_first(plan.sharing), say(plan.sentence)], WIDTH),
    ]
    if plan.wishes.what_if:
        parts.insert(0, wrapped([what_if_words(plan.wishes)], WIDTH))
    parts += games_blocks(plan, WIDTH)
    parts += sharing_blocks(plan, WIDTH)
    parts += [_site(plan, site) for site in plan.sites]
    parts += mount_blocks(plan, WIDTH)
    told_devices = [step(fit) for fit in _fits_in_use(plan) for step in (setting_step, crosswise_step)]
    told_devices = [*told_devices, *holding_steps(plan), *mode_steps(plan)]
    if any(told_devices):
        parts.append(_block("Settings and modes of devices", [line for line in told_devices if line]))
    parts.append(_block("Next reading", [say(plan.next_reading.sentence)]))
    shared = plan.sharing
    left = [_caution(caution) for caution in plan.cautions if caution not in _placed(plan)]
    told = {caution.text for caution in plan.cautions}
    left += [_caution(caution) for caution in (shared.cautions if shared else ()) if caution.text not in told]
    if left:
        parts.append(_block("Cautions", list(dict.fromkeys(left))))
    taken = (
        *plan.assumptions,
        *(shared.assumptions if shared else ()),
        *(plan.together.assumptions if plan.together else ()),
    )
    assumed = merged_assumptions(taken, [site.name for site in plan.sites])
    if assumed:
        lines = [
            f"{say(one.what)}: {say(one.value)} ({say(one.why)}). Replace by: {clause(one.replace_by)}."
            for one in assumed
        ]
        parts.append(_block("Assumed, not measured", lines))
    noticed = dict.fromkeys(
        (*plan.findings, *_shared_findings(plan), *(plan.together.findings if plan.together else ()))
    )
    if noticed:
        parts.append(_block("Findings", _findings(tuple(noticed))))
    parts.append(wrapped([f"{plan.draws} draws, seed {plan.seed}; intervals are 95 %."], WIDTH))
    return "\n\n".join(part for part in parts if part) + "\n"


def _fits_in_use(plan: Plan) -> list[Fit]:
    """Every stick that the plan uses, as it is to be set up."""
    if plan.sharing is None:
        return [site.choice for site in plan.sites if site.choice is not None]
    fits = [one.fit for one in all_placements(plan) if one.fit is not None]
    return list({(fit.site, fit.label): fit for fit in fits}.values()) if plan.layouts else fits


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
        parts.append(_block("Findings", _findings(_once(report))))
    blocks = {
        "Rest": _rest(report, unit),
        "Reach": _reach(report, unit),
        "Direction": _bias(report),
        "Tremor": _tremor(report),
        "Sudden movements": _bursts(report),
        "Holds": [_hold(hold, report) for hold in report.holds],
        "Aiming": pointing_lines(report.pointing, report.unit) if report.pointing else [],
        "Following": _tracking(report),
        "Smoothness": smoothness_lines(report.smoothness) if report.smoothness else [],
    }
    parts += [_block(name, lines) for name, lines in blocks.items() if lines]
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
    what = "aimed movements" if report.kind == "trials" else "presses"
    parts = [wrapped([f"{report.name}: table of {what}, {report.rows} rows"], WIDTH)]
    if report.findings:
        parts.append(_block("Findings", _findings(report.findings)))
    if report.pointing is not None:
        parts.append(_block("Aiming", pointing_lines(report.pointing, "")))
    if report.taps is not None:
        parts.append(_block("Presses", tap_lines(report.taps)))
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
    parts.append(_block("At the contact point, all directions", [*lines, _returns(result)]))
    if result.directions:
        parts.append(_block("By direction", [
            f"{direction_words(line.direction_rad) if line.direction_rad is not None else 'all'}: "
            f"start {shown(line.start_force_n, 'n')}, full {shown(line.full_force_n, 'n')}"
            for line in result.directions
        ]))  # fmt: skip
    used = sum(one.used for one in result.readings)
    parts.append(wrapped([f"{used} of {len(result.readings)} readings used; scatter of one reading "
                          f"{share(result.scatter_share)} of the middle force. {say(ALLOWED_FOR)}"], WIDTH))  # fmt: skip
    if result.findings:
        parts.append(_block("Findings", _findings(result.findings)))
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
    text = (
        f"No rest was asked, and where the centre lies is not known in {report.unit}: rest, reach and a turned stick cannot "
        "be told. Record 10 s of rest."
    )
    return (*(one for one in report.findings if one not in missing), Finding("note", "no_centre", text))


def _shared_findings(plan: Plan) -> tuple[Finding, ...]:
    """What was noticed in sharing out and wiring."""
    if plan.sharing is None:
        return ()
    wiring = plan.sharing.wiring
    return (*plan.sharing.findings, *(wiring.findings if wiring is not None else ()))


def _caution(caution: Caution) -> str:
    return f"CAUTION ({caution.about}): {say(caution.text)}"


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
    parts = [f"{'-' * WIDTH}\n{textwrap.fill(f'{site.name} ({site.part}), for {site.demand.action}', WIDTH)}"]
    parts.append(wrapped([*said, *beside["site"]], WIDTH))
    parts.append(_block("Ability: comfortable force and free reach", [*_ability(site), *beside["ability"]]))
    parts.append(f"Sticks ranked ({site.tried} set-ups computed)\n{_ranked(site.fits)}")
    if site.fits:
        parts.append(wrapped([tables.BEST_NOTE], WIDTH, "  ", "  "))
    if site.to_order is not None:
        parts.append(wrapped([order_words(site.to_order)], WIDTH, "  ", "  "))
    if beside["sticks"]:
        parts.append(wrapped(beside["sticks"], WIDTH, "  ", "    "))
    findings = (*site.findings, *site.capability.findings)
    if findings:
        parts.append(_block("Findings", _findings(findings)))
    parts += [_block(tell(StickSettings.tuning_of, setup=setup_of(one)), _tuning(site, one)) for one in site.tunings]
    if site.choice is not None and tuning_of_choice(site) is None and unrecorded_basis(site.choice):
        parts.append(
            _block(tell(StickSettings.settings_of, stick=Name(site.choice.full_name)), [unrecorded_basis(site.choice)])
        )
    if site.recordings:
        parts.append(_block("Recordings", _recordings(site)))
    return "\n\n".join(part for part in parts if part)


def _ability(site: SitePlan) -> list[str]:
    lines = [f"{row[0]}: {row[1]}, {row[2]}; force readings: {row[3]}" for row in tables.capability_polar(site).rows]
    able = site.capability
    lines.append(tables.day_note(able))
    lines.append(readings_behind(able))
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
            lines.append(wrapped([f"{rank}. {fit.label}: {clause(fit.limit)}"], WIDTH, "  ", "     "))
            continue
        numbers = (
            f"predicted: {direction_words(fit.weakest_rad)} {percent(fit.weakest_share)}, effort {tables.effort_words(fit)}, "
            f"false input {shown(fit.false_per_min, 'a_minute')} at dead zone {share(fit.dead_zone_share)}, "
            f"{shown(fit.bits, '')} bits, best or as good {chance_words(fit.probability_best)}"
        )
        lines.append(wrapped([f"{rank}. {fit.label}: {fit.verdict_words}"], WIDTH, "  ", "     "))
        lines.append(wrapped([numbers, tables.limiting_sentence(fit)], WIDTH, "     ", "     "))
        if rank == 1:
            lines.append(wrapped([sentence(fit.lever_note or "")], WIDTH, "     ", "     "))
    return "\n".join(line for line in lines if line) or "  None was computed."


def _recordings(site: SitePlan) -> list[str]:
    """What each recording needs looked at; what several share once; those with nothing in one line."""
    told = merged_findings((report.name, finding) for report in site.recordings for finding in report.findings)
    lines = [
        f"{', '.join(names)}. {tell(Sheets.finding, level=one.level, text=one.text)}"
        for level in _LEVELS
        for names, one in told
        if one.level == level
    ]
    quiet = [report.name for report in site.recordings if not report.findings]
    return [*lines, f"{', '.join(quiet)}: nothing unusual." if quiet else ""]


def _tuning(site: SitePlan, tuning: Tuning) -> list[str]:
    if tuning.faults:
        others = tuple(one for one in tuning.findings if one not in tuning.faults)
        return [no_settings(tuning), *_findings(others)]
    return [
        tuned_elsewhere(site.choice, tuning),
        *(f"{name}: {setting}" for name, setting in tables.tuning_numbers(tuning).rows),
        f"{set_for(tuning)} {lost(tuning)}",
        typed_basis(tuning),
        dead_zones(site.choice, tuning),
        *_findings(tuning.findings),
    ]


def _rest(report: TraceReport, unit: str) -> list[str]:
    rest = report.rest
    if rest is None:
        return []
    centre = f"centre: {centre_words(rest.offset_x, rest.offset_y, unit)}"
    if rest.noise_rms.value is None and rest.noise_rms.why == rest.drift_per_min.why:
        if rest.offset_x.why == rest.offset_y.why == rest.noise_rms.why:
            return [centre, "noise and drift: not known, for the same reason"]
        return [centre, f"noise and drift: {shown(rest.noise_rms, unit)}"]
    of_what = "of full output" if report.unit == "share" else f"in {report.unit}"
    lines = [
        centre,
        f"noise, rms (typical size) per axis, {of_what}: {known('within a rest', rest.noise_rms, unit)}",
        known("drift of the centre", rest.drift_per_min, unit, "a minute"),
    ]
    if rest.return_scatter is not None:
        lines[1] += (
            f"; {known('between rests', rest.return_scatter, unit)} (how far the centre changes from one to the next)"
        )
    if rest.pooled_rms is not None:
        lines[1] += f"; {known('all rests pooled', rest.pooled_rms, unit)}"
    return lines


def _reach(report: TraceReport, unit: str) -> list[str]:
    """Reach by direction; directions without one together, under their reason."""
    reach = report.reach
    if reach is None:
        return []
    lines, missing = [], dict[str, list[str]]()
    for phi, one in zip(reach.direction_rad, reach.reach, strict=True):
        if one.value is None:
            missing.setdefault(shown(one, unit), []).append(direction_words(phi))
        else:
            lines.append(f"{direction_words(phi)}: {shown(one, unit)}")
    lines += [f"{', '.join(ways)}: {said}" for said, ways in missing.items()]
    least = f"least {direction_words(reach.weakest_rad)}"
    return [*lines, f"{least}; {known('covered area', reach.area_share, 'percent', 'of the disc')}"]


def _bias(report: TraceReport) -> list[str]:
    bias = report.bias
    if bias is None:
        return []
    turned = sided(bias.error_rotation_rad, "deg", "anticlockwise", "clockwise")
    lines = [
        f"comes out turned by {turned} from what was asked; the pushes agree by {bias.resultant_length:.2f} of 1",
        known("movement across the asked direction:", bias.cross_talk, "percent", "of that along it"),
    ]
    if bias.mirrored:
        lines.append("mirrored: one axis runs backwards")
    if bias.quarter_turns:
        stood = base_stood(bias.quarter_turns)
        lines.append(f"the base stood {stood.how}, its own forward {stood.faces}: turn it {stood.cure}")
    return lines


def _tremor(report: TraceReport) -> list[str]:
    """The sentence; every size with its band and unit; the direction; the zero-crossing frequency."""
    tremor = report.tremor
    if tremor is None:
        return []
    lines = [tremor.sentence]
    if tremor.band_rms.value is not None:
        lines.append(f"rms (typical size), violent stretches included, all axes together: {tremor_size(report)}")
    if tremor.axis_share is not None:
        where = "the peak" if tremor.peak_hz else f"{band_words(tremor.band_hz)}"
        lines.append(
            f"strongest along one line, {axis_words(tremor.axis)}: {share(tremor.axis_share)} of the power of {where}"
        )
    lines.append(
        f"{known('zero-crossing frequency', tremor.crossing_hz, 'hz')}"
        f"{'' if tremor.crossing_hz.value is None else f', from {band_words(tremor.crossing_band_hz)}'}"
    )
    return [*lines, usual_tremor(report.unit)]


def _bursts(report: TraceReport) -> list[str]:
    bursts = report.bursts
    if bursts is None:
        return []
    if not bursts.count:
        return [f"none seen; {shown(bursts.per_min, 'a_minute')}"]
    # How many, how often and how large is among the findings.
    largest = f"; {clause(bursts.peak.why)}" if bursts.peak.why else ""
    return [f"each lasting {shown(bursts.duration_s, 's')}{largest}"]


def _hold(hold: HoldReport, report: TraceReport) -> str:
    return (
        f"{direction_words(hold.direction_rad)}: {in_own_unit(hold.level, report)} for {plain(hold.duration_s, 's')}, scatter "
        f"{in_own_unit(hold.sd, report)}, {known('changing by', hold.slope_per_s, 'percent', 'of it a second')}"
    )


def _tracking(report: TraceReport) -> list[str]:
    tracking = report.tracking
    if tracking is None:
        return []
    return [
        f"error, rms (typical size) {in_own_unit(tracking.rms_error, report)}; "
        f"with the lag taken off {in_own_unit(tracking.error_without_lag, report)}",
        f"{known('gain', tracking.gain, '')}; {known('late by', tracking.lag_s, 's')}",
    ]
