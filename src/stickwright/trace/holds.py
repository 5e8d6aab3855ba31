"""A kept deflection: how level, how steady, and whether it sinks."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import message
from stickwright.codes.movements import Movements
from stickwright.model.recorded import Finding, HoldReport
from stickwright.trace.recording import Cleaned
from stickwright.trace.rest import effective_count

__all__ = ["hold_reports"]

REACHING_S = 1.0
"""Least that is left out of the start of a cued hold: time to react and to get there; common practice."""

NEAR = 0.05
"""Of its own extent: who comes as near to where the hold is level has arrived. (Judgement.)"""
SETTLES_S = 0.5  # the last of the way
LEVEL_S = 1.0
"""The highest second of a hold is its level: nobody has reached it before, and who tires sinks from it."""

LEAST_HOLD_S = 2.0
"""A shorter hold says nothing about tiring."""

_NOTHING_HELD = message(Movements.nothing_held)


def hold_reports(
    clean: Cleaned, *, keep: NDArray[np.bool_] | None = None
) -> tuple[tuple[HoldReport, ...], list[Finding]]:  # fmt: skip
    """Level, steadiness and fatigue of each cued hold.

    Parameters
    ----------
    clean : Cleaned
        Usable samples.
    keep : array of bool, shape (n,), or None
        False where involuntary bursts are left out.

    Returns
    -------
    tuple of HoldReport
        One per cued hold, in order; a gap or a new target starts a new one.
    list of Finding
        Holds that sink, and holds too short to be told.

    Notes
    -----
    The level is the output along the cued direction (along the produced one where none was cued). Straight line by
    least squares; its error is widened by n over the independent readings that the residuals are worth
    [bayley-hammersley-1946], so that slow sway is not taken for tiring.
    """
    reports: list[HoldReport] = []
    short_ones = 0
    for start, stop in clean.asked_pieces("hold"):
        first = start + _arrives(clean, start, stop)
        if stop - first < 10 or clean.times_s[stop - 1] - clean.times_s[first] < LEAST_HOLD_S:
            short_ones += 1
            continue
        reports.append(_hold(clean, first, stop, keep))
    findings = [_sinking(report, clean) for report in reports if report.slope_per_s.upper < 0]
    if short_ones:
        text = message(Movements.short_holds, holds=short_ones, least_s=REACHING_S + LEAST_HOLD_S)
        findings.append(Finding("note", "short_hold", text))
    return tuple(reports), findings


def _arrives(clean: Cleaned, start: int, stop: int) -> int:
    """Samples until the hold is reached: a slow way there must not pass for a change of what is held.

    Half a second after the mean of a quarter of a second first comes within a twentieth of the highest second of the
    hold, and at least a second from the start.
    """
    times_s = clean.times_s[start:stop]
    least = int(np.searchsorted(times_s, times_s[0] + REACHING_S))
    if stop - start - least < 10:
        return least
    step_s = float(times_s[-1] - times_s[0]) / (stop - start - 1)
    toward = _toward(clean, start, clean.xy[start + least : stop].mean(axis=0))
    along = clean.xy[start:stop] @ (toward / math.hypot(*toward))
    second, quarter = (min(stop - start, max(1, round(span_s / step_s))) for span_s in (LEVEL_S, LEVEL_S / 4))
    level = float(_means(along, second).max())
    reached = np.flatnonzero(_means(along, quarter) >= (1 - NEAR) * level)
    settles = round(SETTLES_S / step_s)
    return max(least, min(int(reached[0]) + settles, stop - start)) if reached.size and level > 0 else least


def _means(values: NDArray[np.float64], many: int) -> NDArray[np.float64]:
    return np.asarray(np.convolve(values, np.full(many, 1 / many), "valid"))


def _toward(clean: Cleaned, start: int, middle: NDArray[np.float64]) -> NDArray[np.float64]:
    """The cued direction; the produced one where none was cued."""
    if clean.cue_xy is not None and np.isfinite(clean.cue_xy[start]).all() and np.any(clean.cue_xy[start] != 0):
        return np.asarray(clean.cue_xy[start])
    return middle if np.any(middle != 0) else np.array([1.0, 0.0])


def _hold(clean: Cleaned, start: int, stop: int, keep: NDArray[np.bool_] | None) -> HoldReport:
    used = slice(start, stop) if keep is None else start + np.flatnonzero(keep[start:stop])
    times_s, xy = clean.times_s[used], clean.xy[used]
    toward = _toward(clean, start, xy.mean(axis=0))
    along = xy @ (toward / math.hypot(*toward))
    held_s = float(clean.times_s[stop - 1] - clean.times_s[start])
    level, sd, slope = _line(times_s, along, clean.step)
    return HoldReport(math.atan2(toward[1], toward[0]) % (2 * math.pi), level, sd, slope, held_s)


def _line(
    times_s: NDArray[np.float64], along: NDArray[np.float64], step: float
) -> tuple[Estimate, Estimate, Estimate]:  # fmt: skip
    """Mean level, sd about the line, slope as a share of the level a second."""
    from scipy.stats import chi2, t

    n = len(along)
    centred = times_s - times_s.mean()
    power = float(centred @ centred)
    level = float(along.mean())
    slope = float(centred @ along) / power
    still = float(np.ptp(along)) == 0  # what rounding leaves of a value that never changes is no slow sway
    left = np.zeros(n) if still else along - level - slope * centred
    worth = effective_count(left)
    degrees = worth - 2
    variance = float(left @ left) / n
    sd = math.sqrt(variance)
    if degrees < 1 or (variance == 0 and step == 0):
        why = (
            message(Intervals.never_changes, where="hold")
            if variance == 0
            else message(Intervals.slow_sway, what="hold")
        )
        few = max(1, round(worth))
        sinking = Estimate.unbounded(slope / level, why, n=few) if level else Estimate.missing(_NOTHING_HELD, n=few)
        return Estimate.unbounded(level, why, n=few), Estimate.unbounded(sd, why, n=few), sinking
    variance *= worth / degrees
    grain = step**2 / 12
    quantile = float(t.ppf(0.975, degrees))
    half = quantile * math.sqrt(variance / worth + grain)
    half_slope = quantile * math.sqrt(variance * n / worth / power + grain / power)
    count = max(1, round(worth))
    narrow, wide = (math.sqrt(variance * degrees / float(chi2.ppf(q, degrees))) for q in (0.975, 0.025))
    if level:
        low, high = sorted(((slope - half_slope) / level, (slope + half_slope) / level))
        sinking = Estimate(slope / level, low, high, n=count)
    else:
        sinking = Estimate.missing(_NOTHING_HELD, n=count)
    return (
        Estimate(level, level - half, level + half, n=count),
        Estimate(math.sqrt(variance), narrow, wide, n=count),
        sinking,
    )


def _sinking(report: HoldReport, clean: Cleaned) -> Finding:
    slope = report.slope_per_s
    lost = -slope.number * report.duration_s
    text = message(
        Movements.tiring_hold,
        direction_rad=report.direction_rad,
        level=clean.output(report.level.number),
        loss_per_s=-slope.number,
        low_per_s=-slope.upper,
        high_per_s=-slope.lower,
        lost_share=lost,
        held_s=report.duration_s,
    )
    return Finding("query" if lost > 0.1 else "note", "tiring_hold", text)
