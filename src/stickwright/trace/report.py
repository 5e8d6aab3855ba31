"""All that one recording can tell, given what was asked in it.

What a recording cannot tell is None, and a finding says why. Parts whose effort grows faster than
the length, or that need many copies of the samples, get one stretch of a few minutes, chosen by rule.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.cleaning import Axis
from stickwright.codes.matters import Matter
from stickwright.codes.message import message
from stickwright.codes.problems import Problems
from stickwright.codes.trace_notes import Part, TraceNotes
from stickwright.errors import BadInput
from stickwright.model.recorded import (
    Finding,
    PointingReport,
    SmoothnessReport,
    TraceReport,
    TrackingReport,
    TremorReport,
)  # fmt: skip
from stickwright.model.recording import Recording
from stickwright.trace.aimed import pointing_report
from stickwright.trace.bias import bias_report
from stickwright.trace.bursts import burst_report
from stickwright.trace.holds import hold_reports
from stickwright.trace.let_go import centre_of, let_go
from stickwright.trace.reach import reach_report
from stickwright.trace.recording import Cleaned, cleaned
from stickwright.trace.rest import rest_report
from stickwright.trace.sensing import CUES, cue_code, runs
from stickwright.trace.smoothness import smoothness_report
from stickwright.trace.tracking import tracking_report
from stickwright.trace.tremor import tremor_report

__all__ = ["trace_report"]

LONGEST_S = 180.0
"""Longest stretch handed to spectra, aimed movements, following and smoothness: three minutes hold hundreds of
movements and a tremor many times over, and keep one hour's recording within memory."""

_LEAST_MOVEMENT = 0.05  # of full output: what moves less is rest or tremor, no movement to be smooth; common practice

_NOT_TOLD: dict[Part, Matter] = {
    "tremor": "no_tremor",
    "smoothness": "no_smoothness",
    "pointing": "no_pointing",
    "tracking": "no_tracking",
}
_FROM_A_PART: dict[Part, Matter] = {
    "tremor": "tremor_from_a_part",
    "smoothness": "smoothness_from_a_part",
    "pointing": "pointing_from_a_part",
    "tracking": "tracking_from_a_part",
}
_Report = TypeVar("_Report")


def trace_report(recording: Recording, rng: np.random.Generator | None = None) -> TraceReport:
    """Everything one recording tells, with findings for what it cannot.

    Parameters
    ----------
    recording : Recording
        As read.
    rng : numpy.random.Generator or None
        For the block bootstrap of reach; None takes a fixed seed, so that a report can be repeated.

    Returns
    -------
    TraceReport
        Parts that cannot be told are None.

    Raises
    ------
    BadInput
        The recording cannot be used at all: see `stickwright.trace.recording.cleaned`.

    Notes
    -----
    Time grows in proportion to the length; spectra, aimed movements, following and smoothness see the longest
    stretch without a gap, at most three minutes of it, and a finding says which.

    Examples
    --------
    >>> rng = np.random.default_rng(4)
    >>> times_s = np.arange(0, 20, 0.01)
    >>> noise = rng.normal(0.03, 0.004, (2000, 2))
    >>> report = trace_report(Recording("rest.csv", times_s, noise, task="rest"), rng)
    >>> abs(report.rest.offset_x.value - 0.03) < 0.002, report.reach is None
    (True, True)
    """
    clean, noticed = cleaned(recording)
    findings = [*noticed, *_third_axis(clean)]
    gone, said = let_go(clean, centre_of(rest_report(clean)[0], clean))
    findings += said
    bursts, keep, said = burst_report(clean, gone)
    findings += said
    rest, said = rest_report(clean, keep=keep)
    findings += said
    centre = centre_of(rest, clean)
    keep &= ~gone
    held_xy = np.where(gone[:, None], math.nan, clean.xy)
    reach, said = reach_report(clean, centre=centre, keep=keep, rng=rng)
    findings += said
    bias, said = bias_report(clean, centre=centre, keep=keep)
    findings += said
    holds, said = hold_reports(clean, keep=keep)
    findings += said
    if clean.asked("play").any() and centre is not None:
        findings += _play_findings(clean, centre)
    return TraceReport(
        name=recording.name,
        task=_task(recording, clean),
        unit=recording.unit,
        samples=len(recording.times_s),
        duration_s=float(recording.times_s[-1] - recording.times_s[0]),
        rate_hz=1.0 / clean.step_s,
        site=recording.site,
        stick=recording.stick,
        rest=rest,
        reach=reach,
        bias=bias,
        bursts=bursts,
        holds=holds,
        tremor=_tremor(clean, held_xy, findings),
        smoothness=_smoothness(clean, held_xy, findings),
        pointing=_pointing(clean, recording.cue_width, findings),
        tracking=_tracking(clean, held_xy, findings),
        findings=tuple(findings),
    )


def _third_axis(clean: Cleaned) -> list[Finding]:
    """That a third axis was read, and for what."""
    if clean.z is None:
        return []
    axes: tuple[Axis, Axis] = ("x", "y")
    flat = tuple(axis for axis, there in zip(axes, clean.recorded, strict=True) if there)
    return [Finding("note", "third_axis", message(TraceNotes.third_axis, flat=flat))]


def _task(recording: Recording, clean: Cleaned) -> str:
    """The task's word; with a cue column the words that were asked, in their usual order."""
    if recording.cue is None:
        return recording.task
    present = set(clean.cue.tolist())
    return ", ".join(word for word in CUES if word and cue_code(word) in present) or recording.task


def _longest(clean: Cleaned, words: tuple[str, ...]) -> tuple[int, int] | None:
    """Longest stretch that asked for one of these words, at most three minutes; the first of equals."""
    pieces = clean.pieces(clean.asked(*words))
    if not pieces:
        return None
    start, stop = max(pieces, key=lambda piece: clean.times_s[piece[1] - 1] - clean.times_s[piece[0]])
    last = int(np.searchsorted(clean.times_s[start:stop], clean.times_s[start] + LONGEST_S, side="right"))
    return start, start + last


def _attempted(
    what: Part, clean: Cleaned, words: tuple[str, ...], findings: list[Finding], work: Callable[[int, int], _Report]
) -> _Report | None:
    """One part from the longest fitting stretch; too little of it becomes a finding with the part's own reason."""
    stretch = _longest(clean, words)
    if stretch is None:
        return None
    start, stop = stretch
    try:
        result = work(start, stop)
    except BadInput as problem:
        why = message(Problems.sentences, parts=tuple(each.without_place for each in problem.problems))
        findings.append(Finding("note", _NOT_TOLD[what], message(TraceNotes.unknown, part=what, why=why)))
        return None
    asked_s = sum(float(clean.times_s[b - 1] - clean.times_s[a]) for a, b in clean.pieces(clean.asked(*words)))
    used_s = float(clean.times_s[stop - 1] - clean.times_s[start])
    if used_s < 0.9 * asked_s:
        text = message(
            TraceNotes.from_a_part,
            part=what,
            start_s=float(clean.times_s[start]),
            stop_s=float(clean.times_s[stop - 1]),
            longest_s=LONGEST_S,
            asked_s=asked_s,
        )
        findings.append(Finding("note", _FROM_A_PART[what], text))
    return result


def _tremor(clean: Cleaned, held_xy: NDArray[np.float64], findings: list[Finding]) -> TremorReport | None:
    """From the stillest task there is: still, hold, rest, then following, then play."""
    for words in (("still",), ("hold",), ("rest",), ("follow",), ("aim",), ("rim", "push", "play", "")):
        stretch = _longest(clean, words)
        if stretch is not None and clean.times_s[stretch[1] - 1] - clean.times_s[stretch[0]] >= 5.0:
            break
    else:
        findings.append(Finding("note", "no_tremor", message(TraceNotes.no_still_stretch)))
        return None
    still = words[0] in ("still", "hold", "rest")
    if words == ("rest",) and clean.rest_cleaned:
        findings.append(Finding("note", "no_tremor", message(TraceNotes.tremor_zeroed)))
        return None
    columns = held_xy[:, list(clean.recorded)]
    if clean.z is not None:
        columns = np.column_stack([columns, clean.z])
    result = _attempted(
        "tremor",
        clean,
        words,
        findings,
        lambda start, stop: tremor_report(clean.times_s[start:stop], columns[start:stop], still=still, step=clean.step),
    )
    if result is not None and result.axis:
        result = replace(result, axis=_by_axis(result.axis, clean))
    if result is not None and not still:
        findings.append(Finding("note", "tremor_while_moving", message(TraceNotes.tremor_while_moving)))
    return result


def _by_axis(direction: tuple[float, ...], clean: Cleaned) -> tuple[float, ...]:
    """Parts along x, y and, where there is one, z; 0 along an axis that was not recorded."""
    there = (*clean.recorded, *(() if clean.z is None else (True,)))
    parts = iter(direction)
    return tuple(next(parts) if recorded else 0.0 for recorded in there)


def _smoothness(clean: Cleaned, held_xy: NDArray[np.float64], findings: list[Finding]) -> SmoothnessReport | None:
    if clean.stroke is not None:
        return smoothness_report(clean.times_s, clean.xy, stroke=clean.stroke)
    words = next((w for w in (("aim",), ("push",), ("play",)) if clean.asked(*w).any()), None)
    if words is None:
        return None
    return _attempted(
        "smoothness",
        clean,
        words,
        findings,
        lambda start, stop: smoothness_report(
            clean.times_s[start:stop],
            held_xy[start:stop],
            least_extent=0.0 if clean.unit_is_foreign else _LEAST_MOVEMENT * clean.scale,
        ),
    )


def _pointing(clean: Cleaned, cue_width: float | None, findings: list[Finding]) -> PointingReport | None:
    if not clean.asked("aim").any():
        return None
    cue_xy = clean.cue_xy
    if cue_xy is None or cue_width is None:
        text = message(TraceNotes.targets_unknown, missing="places" if cue_xy is None else "widths")
        findings.append(Finding("query", "no_pointing", text))
        return None
    return _attempted(
        "pointing",
        clean,
        ("aim",),
        findings,
        lambda start, stop: pointing_report(
            clean.times_s[start:stop],
            clean.xy[start:stop],
            cue_xy[start:stop],
            cue_width,
            selected=None if clean.selected is None else clean.selected[start:stop],
        ),
    )


def _tracking(clean: Cleaned, held_xy: NDArray[np.float64], findings: list[Finding]) -> TrackingReport | None:
    if not clean.asked("follow").any():
        return None
    cue_xy = clean.cue_xy
    if cue_xy is None:
        findings.append(Finding("query", "no_tracking", message(TraceNotes.target_unknown)))
        return None
    return _attempted(
        "tracking",
        clean,
        ("follow",),
        findings,
        lambda start, stop: tracking_report(clean.times_s[start:stop], held_xy[start:stop], cue_xy[start:stop]),
    )


def _play_findings(clean: Cleaned, centre: tuple[float, float]) -> list[Finding]:
    """What is asked of free play: at full travel how long, how many flicks, does it spring past its centre."""
    pieces = clean.pieces(clean.asked("play"))
    full, longest, flicks, played_s = 0, 0.0, 0, 0.0
    samples = 0
    past: list[float] = []
    for start, stop in pieces:
        if stop - start < 3:
            continue
        times_s = clean.times_s[start:stop]
        xy = clean.xy[start:stop] - centre
        radius = np.hypot(xy[:, 0], xy[:, 1])
        played_s += float(times_s[-1] - times_s[0])
        samples += len(radius)
        at_edge = radius >= 0.95 * clean.scale
        full += int(np.count_nonzero(at_edge))
        longest = max(
            longest, max((float(times_s[b - 1] - times_s[a]) for a, b in runs(at_edge).tolist()), default=0.0)
        )
        away = runs(radius > 0.35 * clean.scale)
        quick = times_s[np.minimum(away[:, 1], len(radius) - 1)] - times_s[away[:, 0]] < 0.2
        if len(away):
            peaks = np.maximum.reduceat(radius, away[:, 0])
            flicks += int(np.count_nonzero(quick & (peaks > 0.8 * clean.scale)))
        past += _spring_back(times_s, xy, radius, clean.scale)
    if played_s < 1.0:
        return []
    text = message(
        TraceNotes.play,
        played_s=played_s,
        full_share=full / samples,
        longest_s=longest,
        flicks=flicks,
        flicks_per_min=60 * flicks / played_s,
    )
    found = [Finding("note", "play", text)]
    if len(past) >= 5 and not clean.rest_cleaned:
        beyond = np.array(past)
        text = message(
            TraceNotes.spring_back,
            releases=len(past),
            past=clean.output(float(np.median(beyond))),
            one_in_ten=clean.output(float(np.quantile(beyond, 0.9))),
        )
        found.append(Finding("note", "spring_back", text))
    return found


def _spring_back(
    times_s: NDArray[np.float64], xy: NDArray[np.float64], radius: NDArray[np.float64], scale: float
) -> list[float]:
    """Farthest movement past the centre within 0.15 s of each release from beyond half travel in under 0.1 s."""
    inner = radius < 0.2 * scale
    arrivals = np.flatnonzero(inner[1:] & ~inner[:-1]) + 1
    past = []
    for at in arrivals.tolist():
        before = int(np.searchsorted(times_s, times_s[at] - 0.1))
        from_where = before + int(np.argmax(radius[before : at + 1]))
        if radius[from_where] < 0.5 * scale:
            continue
        after = int(np.searchsorted(times_s, times_s[at] + 0.15))
        away = -(xy[at:after] @ (xy[from_where] / radius[from_where]))
        if len(away) and float(radius[at:after].max()) < 0.5 * scale:  # otherwise pushed the other way, not sprung
            past.append(max(0.0, float(away.max())))
    return past
