"""A kept deflection: how level, how steady, and whether it sinks."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.model.estimate import Estimate
from stickwright.model.recorded import Finding, HoldReport
from stickwright.trace.recording import Cleaned
from stickwright.trace.rest import effective_count
from stickwright.trace.sensing import short

__all__ = ["hold_reports"]

REACHING_S = 1.0
"""Start of a cued hold that is left out: time to react and to get there; common practice."""

LEAST_HOLD_S = 2.0
"""A shorter hold says nothing about tiring."""


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
        first = start + int(np.searchsorted(clean.times_s[start:stop], clean.times_s[start] + REACHING_S))
        if stop - first < 10 or clean.times_s[stop - 1] - clean.times_s[first] < LEAST_HOLD_S:
            short_ones += 1
            continue
        reports.append(_hold(clean, first, stop, keep))
    findings = [_sinking(report) for report in reports if report.slope_per_s.high < 0]
    if short_ones:
        text = f"{short_ones} holds last less than {REACHING_S + LEAST_HOLD_S:.0f} s: too short to tell, left out."
        findings.append(Finding("note", "short hold", text))
    return tuple(reports), findings


def _hold(clean: Cleaned, start: int, stop: int, keep: NDArray[np.bool_] | None) -> HoldReport:
    used = slice(start, stop) if keep is None else start + np.flatnonzero(keep[start:stop])
    times_s, xy = clean.times_s[used], clean.xy[used]
    middle = xy.mean(axis=0)
    if clean.cue_xy is not None and np.isfinite(clean.cue_xy[start]).all() and np.any(clean.cue_xy[start] != 0):
        toward = clean.cue_xy[start]
    else:
        toward = middle if np.any(middle != 0) else np.array([1.0, 0.0])
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
    left = along - level - slope * centred
    worth = effective_count(left)
    degrees = worth - 2
    variance = float(left @ left) / n
    sd = math.sqrt(variance)
    if degrees < 1 or (variance == 0 and step == 0):
        why = "The value never changes." if variance == 0 else "The hold sways too slowly for an interval: hold longer."
        none = [Estimate.unbounded(value, why, n=max(1, round(worth))) for value in (level, sd, slope / level)]
        return none[0], none[1], none[2]
    variance *= worth / degrees
    grain = step**2 / 12
    quantile = float(t.ppf(0.975, degrees))
    half = quantile * math.sqrt(variance / worth + grain)
    half_slope = quantile * math.sqrt(variance * n / worth / power + grain / power)
    count = max(1, round(worth))
    narrow, wide = (math.sqrt(variance * degrees / float(chi2.ppf(q, degrees))) for q in (0.975, 0.025))
    low, high = sorted(((slope - half_slope) / level, (slope + half_slope) / level)) if level else (math.nan, math.nan)
    sinking = (
        Estimate(slope / level, low, high, n=count)
        if level
        else Estimate.unbounded(math.nan, "The level is 0: nothing was held.", n=count)
    )
    return (
        Estimate(level, level - half, level + half, n=count),
        Estimate(math.sqrt(variance), narrow, wide, n=count),
        sinking,
    )


def _sinking(report: HoldReport) -> Finding:
    slope = report.slope_per_s
    lost = -slope.value * report.duration_s
    text = (
        f"The hold toward {math.degrees(report.direction_rad):.0f}° at {short(report.level.value)} sinks by "
        f"{-100 * slope.value:.1f} % of its level a second ({-100 * slope.high:.1f} to {-100 * slope.low:.1f} %), "
        f"{100 * lost:.0f} % over its "
        f"{report.duration_s:.0f} s: it tires; plan shorter holds or a lighter stick."
    )
    return Finding("query" if lost > 0.1 else "note", "tiring hold", text)
