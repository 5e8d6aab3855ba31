"""The stick left alone: where it rests, how much it trembles, and where it returns to.

Samples of one rest are not independent of each other, and the centres of several rests are not the
same: real sticks return to a different place after each release. Both are kept apart here, so
that an interval is never narrower than what was seen.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.cleaning import Axis
from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import Message, message
from stickwright.codes.resting import Resting
from stickwright.model.recorded import Finding, RestReport
from stickwright.trace.recording import Cleaned
from stickwright.trace.release import LEAST_REST_S, settled, unsettled_finding
from stickwright.trace.return_to_centre import effective_count, home
from stickwright.trace.sensing import runs

__all__ = ["effective_count", "one_release", "rest_report", "rest_stretches"]

_AXES: tuple[Axis, Axis] = ("x", "y")

NEAR_CENTRE = 0.25
"""Without a cue a stretch counts as rest only this near to zero output, as a share of full output."""


def one_release(rests: int) -> list[Finding]:
    """That one rest tells nothing of the way home; nothing when there were several.

    Parameters
    ----------
    rests : int
        How many rests there were.

    Returns
    -------
    list of Finding
        At most one note.

    Examples
    --------
    >>> one_release(1)[0].about, one_release(3)
    ('one_release', [])
    """
    if rests != 1:
        return []
    return [Finding("note", "one_release", message(Resting.one_release))]


def rest_stretches(
    times_s: NDArray[np.float64],
    xy: NDArray[np.float64],
    *,
    asked: NDArray[np.bool_] | None = None,
    scale: float = 1.0,
    step: float = 0.0,
) -> list[tuple[int, int]]:
    """Stretches during which the stick was left alone.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, without a gap.
    xy : array, shape (n, 2)
        Output.
    asked : array of bool, shape (n,), or None
        Where rest was asked; None finds rest by stillness about zero output.
    scale : float, default 1.0
        Full output.
    step : float, default 0.0
        Step of the output.

    Returns
    -------
    list of (start, stop)
        Sample numbers.

    Notes
    -----
    A cued rest begins where it has settled, see `stickwright.trace.release.settled`. By stillness:
    blocks of 0.1 s that spread over no more than a few steps,
    each within three quarters of that of the one before, for 0.4 s or more, within a quarter of full output.

    Examples
    --------
    >>> times_s = np.arange(300) / 100
    >>> xy = np.zeros((300, 2))
    >>> xy[100:150, 0] = np.sin(np.arange(50) / 5)
    >>> rest_stretches(times_s, xy)
    [(0, 100), (150, 300)]
    """
    if len(times_s) < 2:
        return []
    step_s = (times_s[-1] - times_s[0]) / (len(times_s) - 1)
    if asked is not None:
        spans = [(a, b) for a, b in runs(asked).tolist()]
        return [span for span in settled(times_s, xy, spans, scale=scale, step=step) if span is not None]
    found = _still_stretches(xy, max(3, round(0.1 / step_s)), scale, step)
    return [(a, b) for a, b in found if b - a >= 3 and times_s[b - 1] - times_s[a] >= LEAST_REST_S]


def _still_stretches(xy: NDArray[np.float64], block: int, scale: float, step: float) -> list[tuple[int, int]]:
    count = len(xy) // block
    if count < 2:
        return []
    blocks = xy[: count * block].reshape(count, block, 2)
    means, spread = blocks.mean(axis=1), np.ptp(blocks, axis=1).max(axis=1)
    near = np.abs(means).max(axis=1) < NEAR_CENTRE * scale
    if not near.any():
        return []
    # A trembling hand is never as still as an empty stick: what counts as still follows the calmest fifth.
    least = max(2.5 * step, 0.02 * scale)
    calm = float(np.clip(2 * np.quantile(spread[near], 0.2), least, max(least, 0.08 * scale)))
    still = near & (spread <= calm)
    leap = np.abs(np.diff(means, axis=0)).max(axis=1) > max(0.75 * calm, 1.5 * step)
    together = still[1:] & still[:-1] & ~leap
    return [(int(a) * block, (int(b) + 1) * block) for a, b in runs(together).tolist()]


class _Rests(NamedTuple):
    """One row per stretch of rest."""

    start_s: NDArray[np.float64]
    stop_s: NDArray[np.float64]
    centre: NDArray[np.float64]
    variance: NDArray[np.float64]
    worth: NDArray[np.float64]
    spans: list[tuple[int, int]]
    samples: list[NDArray[np.float64]]

    def only(self, keep: NDArray[np.bool_]) -> _Rests:
        """The rests of a mask."""
        return _Rests(
            start_s=self.start_s[keep],
            stop_s=self.stop_s[keep],
            centre=self.centre[keep],
            variance=self.variance[keep],
            worth=self.worth[keep],
            spans=[span for span, kept in zip(self.spans, keep, strict=True) if kept],
            samples=[rest for rest, kept in zip(self.samples, keep, strict=True) if kept],
        )


def _zeroed(rests: _Rests, clean: Cleaned) -> Message:
    """Why a rest that other software has set to zero tells nothing: exactly zero throughout only where it is."""
    at_rest = np.concatenate(rests.samples)[:, [axis for axis in (0, 1) if clean.recorded[axis]]]
    share = float(np.mean((at_rest == 0).all(axis=1)))
    if share == 1.0:
        return message(Resting.zero_throughout, live=bool((clean.xy != 0).any()))
    if share == 0.0:
        return message(Resting.fixed)
    return message(Resting.partly_zero, zero_share=min(99, math.floor(100 * share)) / 100)


def rest_report(
    clean: Cleaned, *, keep: NDArray[np.bool_] | None = None
) -> tuple[RestReport | None, list[Finding]]:  # fmt: skip
    """Offset, noise, drift and return of the stick at rest.

    Parameters
    ----------
    clean : Cleaned
        Usable samples.
    keep : array of bool, shape (n,), or None
        False where involuntary bursts are left out.

    Returns
    -------
    RestReport or None
        None when no rest was found, with a finding why.
    list of Finding
        Return scatter, lean at start-up, drift, offset.

    Notes
    -----
    Offset: see `stickwright.trace.return_to_centre.home`. Noise: pooled within
    rests, chi-square interval on the independent readings. Return scatter: a one-way analysis of variance of the rests,
    each worth its independent readings, at the 1 % level.
    """
    cued = bool(clean.asked("rest").any())
    if not cued and clean.unit_is_foreign:
        return None, [Finding("note", "no_rest", message(Resting.own_unit))]
    if not cued and not all(clean.recorded):
        there: Axis = "x" if clean.recorded[0] else "y"
        return None, [Finding("query", "no_rest", message(Resting.one_axis, recorded=there))]
    clean = clean.with_step_of_levels()
    spans, unsettled = _spans(clean, cued)
    rests = _rests(clean, spans, keep)
    if rests is None:
        return None, unsettled or [Finding("note", "no_rest", message(Resting.no_rest, least_s=LEAST_REST_S))]
    findings = [*unsettled, *_leaned_on(rests, clean, cued)]
    if not cued:
        rests, said = _released_only(rests, clean)
        findings += said
    offsets = [_offset(rests, axis, clean) if clean.recorded[axis] else _unrecorded(axis) for axis in (0, 1)]
    scatter, said = _return_scatter(rests, clean)
    findings += said + ([] if clean.rest_cleaned else one_release(len(rests.spans)))
    noise = _noise(rests, clean)
    drift, said = _drift(rests, clean)
    findings += said + _offset_finding(offsets, clean)
    table = tuple(
        (float(a), float(b), float(x), float(y))
        for a, b, (x, y) in zip(rests.start_s, rests.stop_s, rests.centre, strict=True)
    )
    return RestReport(
        offset_x=offsets[0],
        offset_y=offsets[1],
        noise_rms=noise,
        drift_per_min=drift,
        rests=table,
        return_scatter=scatter,
        pooled_rms=_pooled(rests, clean),
    ), findings


def _unrecorded(axis: int) -> Estimate:
    return Estimate.missing(message(Resting.not_recorded, axis=_AXES[axis]), n=0)


def _spans(clean: Cleaned, cued: bool) -> tuple[list[tuple[int, int]], list[Finding]]:
    """Samples of each rest, and what is said of rests that never settled."""
    if cued:
        wanted = clean.pieces(clean.asked("rest"))
        found = settled(clean.times_s, clean.xy, wanted, scale=clean.scale, step=clean.step)
        spans = [span for span in found if span is not None]
        return spans, unsettled_finding(len(wanted) - len(spans), len(wanted))
    # While aiming, holding or following, a still stick is where it was asked to be, not at rest.
    where = clean.pieces(clean.asked("play", "push", ""))
    spans = [
        (first + a, first + b)
        for first, last in where
        for a, b in rest_stretches(
            clean.times_s[first:last], clean.xy[first:last], scale=clean.scale, step=clean.step
        )
    ]  # fmt: skip
    return spans, []


def _rests(clean: Cleaned, found: list[tuple[int, int]], keep: NDArray[np.bool_] | None) -> _Rests | None:
    rows, spans, samples = [], [], []
    for start, stop in found:
        values = clean.xy[start:stop] if keep is None else clean.xy[start:stop][keep[start:stop]]
        if len(values) < 3:
            continue
        worth = [effective_count(values[:, axis]) for axis in (0, 1)]
        rows.append((clean.times_s[start], clean.times_s[stop - 1], values.mean(axis=0), values.var(axis=0), worth))
        spans.append((start, stop))
        samples.append(values)
    if not rows:
        return None
    starts, stops, centres, variances, worths = zip(*rows, strict=True)
    return _Rests(
        start_s=np.array(starts),
        stop_s=np.array(stops),
        centre=np.array(centres),
        variance=np.array(variances),
        worth=np.array(worths),
        spans=spans,
        samples=samples,
    )


def _leaned_on(rests: _Rests, clean: Cleaned, cued: bool) -> list[Finding]:
    """First centre far from zero, later ones elsewhere: leaned on when it was plugged in, or slipped.

    Where zero may not be the centre (pixels of a screen) only rests are held against rests.
    """
    scale = clean.scale
    first, rest = rests.centre[0], rests.centre[1:]
    far = not _zero_may_be_centre(clean) or float(np.hypot(*first)) > 0.1 * scale
    if far and len(rest):
        moved = np.hypot(*(rest - first).T) > 0.1 * scale
        agree = float(np.median(np.hypot(*(rest - np.median(rest, axis=0)).T))) < 0.05 * scale
        if moved.mean() > 0.5 and agree:
            x, y = (clean.output(one) for one in first)
            at_s = float(rests.start_s[1:][moved][0])
            return [Finding("fault", "leaned_on", message(Resting.leaned_on_first, x=x, y=y, later_s=at_s))]
    centre = np.median(rests.centre, axis=0)
    if cued and _zero_may_be_centre(clean) and float(np.hypot(*centre)) > 0.1 * scale:
        x, y = (clean.output(one) for one in centre)
        return [Finding("query", "leaned_on", message(Resting.leaned_on, x=x, y=y))]
    return []


def _zero_may_be_centre(clean: Cleaned) -> bool:
    """In shares of full output it is; in a unit of its own where the stick went to both sides of it on each axis."""
    axes = clean.xy[:, list(clean.recorded)]
    return not clean.unit_is_foreign or bool(((axes.min(axis=0) < 0) & (axes.max(axis=0) > 0)).all())


def _released_only(rests: _Rests, clean: Cleaned) -> tuple[_Rests, list[Finding]]:
    """Without a cue, a quiet stretch away from the others is a small push that was held, not a rest."""
    limit = 0.1 * clean.scale
    away = np.abs(rests.centre - np.median(rests.centre, axis=0)).max(axis=1) > limit
    if not away.any() or away.mean() > 0.3:
        return rests, []
    text = message(Resting.held_near_centre, held=int(away.sum()), stretches=len(away), apart=clean.output(limit))
    return rests.only(~away), [Finding("note", "held_near_centre", text)]


def _offset(rests: _Rests, axis: int, clean: Cleaned) -> Estimate:
    if clean.rest_cleaned:
        centres = rests.centre[:, axis]
        return Estimate.unbounded(float(np.median(centres)), _zeroed(rests, clean), n=len(centres))
    return home([each[:, axis] for each in rests.samples], clean.step)


def _sd_estimate(variance: float, degrees: float, n: int) -> Estimate:
    """A standard deviation with its chi-square interval."""
    from scipy.stats import chi2

    value = math.sqrt(variance)
    if degrees < 1:
        return Estimate.unbounded(value, message(Intervals.few_readings, what="rest"), n=n)
    low, high = (math.sqrt(variance * degrees / float(chi2.ppf(q, degrees))) for q in (0.975, 0.025))
    return Estimate(value, low, high, n=n)


def _noise(rests: _Rests, clean: Cleaned) -> Estimate:
    axes = [axis for axis in (0, 1) if clean.recorded[axis]]
    if clean.rest_cleaned:
        return Estimate.missing(_zeroed(rests, clean), n=0)
    worth = rests.worth[:, axes]
    samples = np.array([b - a for a, b in rests.spans], dtype=np.float64)[:, None]
    variance = float((rests.variance[:, axes] * samples).sum() / (samples.sum() * len(axes)))
    if variance == 0 and clean.step == 0:
        return Estimate.unbounded(0.0, message(Intervals.never_changes, where="rest"), n=0)
    noise = _sd_estimate(variance, float((worth - 1).sum()), max(1, round(float(worth.sum()))))
    hidden = clean.step / math.sqrt(12)  # a tremble below one step does not show
    return noise if noise.upper >= hidden or not noise.has_interval else replace(noise, high=hidden)


def _pooled(rests: _Rests, clean: Cleaned) -> Estimate | None:
    """Rms per axis of a sample of any rest about the common centre: noise within the rests and scatter between them together.

    The square is a sum of two variances, each with its chi-square limits: the interval of such a sum [graybill-wang-1980].
    """
    k = len(rests.spans)
    if k < 2 or clean.rest_cleaned:
        return None
    axes = [axis for axis in (0, 1) if clean.recorded[axis]]
    samples = np.array([len(each) for each in rests.samples], dtype=np.float64)[:, None]
    worth = rests.worth[:, axes]
    within = float((rests.variance[:, axes] * samples).sum() / (samples.sum() * len(axes)))
    spare = max(float((worth - 1).sum()), 1.0)
    within *= float(worth.sum()) / spare  # a short rest's own centre takes up part of its noise
    within *= 1.0 - float((1.0 / worth).mean())  # the rest of it is in the scatter of the centres already
    between = float(rests.centre[:, axes].var(axis=0, ddof=1).mean())
    if within + between == 0 and clean.step == 0:
        return Estimate.unbounded(0.0, message(Intervals.never_changes, where="rest"), n=0)
    return _sum_estimate(((between, (k - 1) * len(axes)), (within, spare)), k)


def _sum_estimate(parts: tuple[tuple[float, float], ...], n: int) -> Estimate:
    """Root of a sum of variances, each with its degrees of freedom."""
    from scipy.stats import chi2

    square = sum(variance for variance, _ in parts)
    ends = [
        math.sqrt(sum((variance * (degrees / float(chi2.ppf(q, degrees)) - 1)) ** 2 for variance, degrees in parts))
        for q in (0.975, 0.025)
    ]
    return Estimate(math.sqrt(square), math.sqrt(max(0.0, square - ends[0])), math.sqrt(square + ends[1]), n=n)


def _return_scatter(rests: _Rests, clean: Cleaned) -> tuple[Estimate | None, list[Finding]]:
    """Sd of the centre from rest to rest, and whether that is more than the noise within the rests explains."""
    from scipy.stats import f

    k = len(rests.centre)
    axes = [axis for axis in (0, 1) if clean.recorded[axis]]
    if k < 3 or clean.rest_cleaned:
        return None, []
    centres = rests.centre[:, axes]
    degrees = (k - 1) * len(axes)
    scatter = _sd_estimate(float(centres.var(axis=0, ddof=1).mean()), degrees, k)
    # One stick, one noise: variance and memory are pooled over the rests, which are too short to tell their own.
    length = np.array([b - a for a, b in rests.spans], dtype=np.float64)
    worth = length[:, None] * (rests.worth[:, axes].sum(axis=0) / length.sum())
    spare = np.maximum(worth.sum(axis=0) - k, 1.0)
    variance = (length[:, None] * rests.variance[:, axes]).sum(axis=0) / length.sum() * worth.sum(axis=0) / spare
    error = variance / worth + clean.step**2 / 12
    weight = 1 / np.maximum(error, (1e-6 * clean.scale) ** 2)
    pooled = (weight * centres).sum(axis=0) / weight.sum(axis=0)
    excess = float((weight * (centres - pooled) ** 2).sum()) / degrees
    if excess <= float(f.ppf(0.99, degrees, float(spare.sum()))) or scatter.number < 0.002 * clean.scale:
        return scatter, []
    widest = float(np.hypot(*(rests.centre - np.median(rests.centre, axis=0)).T).max())
    text = message(Resting.return_scatter, scatter=clean.output(scatter.number), rests=k, farthest=clean.output(widest))
    return scatter, [Finding("note", "return_scatter", text)]


def _drift(rests: _Rests, clean: Cleaned) -> tuple[Estimate, list[Finding]]:
    """Speed at which the centre wanders, from pieces of a second in long rests or from one rest to the next."""
    from scipy.stats import t

    if clean.rest_cleaned:
        return Estimate.missing(_zeroed(rests, clean), n=0), []
    points = _drift_points(rests, clean)
    if points is None:
        return Estimate.missing(message(Resting.no_drift), n=0), []
    minutes, centres, degrees, within = points
    axes = [axis for axis in (0, 1) if clean.recorded[axis]]
    power = float((minutes**2).sum())
    slope = (minutes[:, None] * centres[:, axes]).sum(axis=0) / power
    left = centres[:, axes] - minutes[:, None] * slope
    inflation = np.array([len(left) / effective_count(left[:, i]) for i in range(len(axes))])
    se = np.sqrt((left**2).sum(axis=0) / degrees * inflation / power)
    length = float(np.hypot(*slope)) if len(axes) == 2 else abs(float(slope[0]))
    along = slope / length if length else np.ones(len(axes)) / math.sqrt(len(axes))
    half = float(t.ppf(0.975, max(1.0, degrees / float(inflation.max())))) * float(np.sqrt((along**2 * se**2).sum()))
    certain = bool(np.any(np.abs(slope) > float(t.ppf(1 - 0.025 / len(axes), degrees)) * se))
    # The length of a vector is never negative: without a direction in which it is certain, its lower end is 0.
    drift = Estimate(length, max(0.0, length - half) if certain else 0.0, length + half, n=len(minutes))
    if drift.lower <= 0 or drift.lower * float(np.ptp(clean.times_s)) / 60 < 0.01 * clean.scale:
        return drift, []
    size, low, high = (clean.output(one) for one in (drift.number, drift.lower, drift.upper))
    text = message(Resting.drift, drift=size, low=low, high=high, within=within)
    return drift, [Finding("query", "drift", text)]


def _drift_points(
    rests: _Rests, clean: Cleaned
) -> tuple[NDArray[np.float64], NDArray[np.float64], int, bool] | None:  # fmt: skip
    """Times in minutes and centres, each about its mean; degrees of freedom; whether from within rests."""
    long = [(a, b) for a, b in rests.spans if clean.times_s[b - 1] - clean.times_s[a] >= 10.0]
    if long:
        minutes, centres = [], []
        for a, b in long:
            size = max(1, round(1.0 / clean.step_s))
            count = (b - a) // size
            at = clean.times_s[a : a + count * size].reshape(count, size).mean(axis=1) / 60
            middle = np.median(clean.xy[a : a + count * size].reshape(count, size, 2), axis=1)
            minutes.append(at - at.mean())
            centres.append(middle - middle.mean(axis=0))
        points = np.concatenate(minutes)
        return points, np.concatenate(centres), len(points) - len(long) - 1, True
    k = len(rests.centre)
    if k < 4 or rests.start_s[-1] - rests.start_s[0] < 30.0:
        return None
    at = (rests.start_s + rests.stop_s) / 120
    return at - at.mean(), rests.centre - rests.centre.mean(axis=0), k - 2, False


def _offset_finding(offsets: list[Estimate], clean: Cleaned) -> list[Finding]:
    sure = [abs(e.number) > 0.02 * clean.scale and e.has_interval and e.lower * e.upper > 0 for e in offsets]
    if not any(sure) or clean.rest_cleaned or not _zero_may_be_centre(clean):
        return []
    axes = tuple(
        message(
            Resting.axis_offset,
            axis=axis,
            offset=clean.output(offset.number),
            low=clean.output(offset.lower),
            high=clean.output(offset.upper),
        )
        for axis, offset, off in zip(_AXES, offsets, sure, strict=True)
        if off
    )
    return [Finding("note", "offset", message(Resting.offset, axes=axes))]
