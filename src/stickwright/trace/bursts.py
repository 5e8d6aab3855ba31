"""Sudden involuntary movements, found where stillness or a known path was asked.

In free play a flick and a jerk look alike: there nothing is called involuntary.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.codes.movements import Movements
from stickwright.model.recorded import BurstReport, Finding
from stickwright.trace.intervals import median_estimate
from stickwright.trace.recording import Cleaned
from stickwright.trace.sensing import runs

__all__ = ["burst_report", "counts_per_min"]

OUTLYING_SD = 4.0
"""Robust sd beyond which displacement or speed is a burst: common practice."""

LEAST_S = 0.05
"""Shorter outliers are one odd sample, not a movement: common practice."""

JOIN_S = 0.10
"""Two outliers closer than this are one burst: out and back."""

SETTLE_S = 0.5
"""Start of a cued stretch that is left out: time to react and let go; common practice."""

WINDOW_S = 5.0
"""Centre and speed are compared within so long: longer than any burst expected, shorter than drift."""


def counts_per_min(count: int, minutes: float) -> Estimate:
    """A rate a minute with its exact Poisson interval.

    Parameters
    ----------
    count : int
        Events seen.
    minutes : float
        Time watched.

    Returns
    -------
    Estimate
        95 % interval; with no event seen its lower end is 0.

    Notes
    -----
    Source: [garwood-1936]: half the chi-square quantiles of 2k and 2k + 2 degrees of freedom. Assumed: events come
    independently of each other; bunched ones make the interval too narrow.

    Examples
    --------
    >>> rate = counts_per_min(10, 1.0)
    >>> round(rate.low, 3), round(rate.high, 3)
    (4.795, 18.39)
    """
    from scipy.stats import chi2

    low = float(chi2.ppf(0.025, 2 * count)) / 2 if count else 0.0
    high = float(chi2.ppf(0.975, 2 * count + 2)) / 2
    return Estimate(count / minutes, low / minutes, high / minutes, n=count)


def burst_report(
    clean: Cleaned, gone: NDArray[np.bool_] | None = None
) -> tuple[BurstReport | None, NDArray[np.bool_], list[Finding]]:
    """Involuntary bursts, and a mask that leaves them out.

    Parameters
    ----------
    clean : Cleaned
        Usable samples.
    gone : array of bool, shape (n,), or None
        Where nobody held the stick, see `stickwright.trace.let_go.let_go`: not looked at.

    Returns
    -------
    BurstReport or None
        None where nothing tells involuntary from voluntary, with a finding why.
    array of bool, shape (n,)
        True where the movement is kept for the voluntary estimates.
    list of Finding
        What was found, or why nothing can be.

    Notes
    -----
    Asked to rest, keep still or hold: outliers beyond 4 robust sd of the displacement from the centre of 5 s, or of
    the speed, for more than 50 ms. Following a target: both the error and its speed must be outliers. Robust
    sd: 1.4826 times the median of absolute deviations [hampel-1974], never below one step of the output.
    """
    kept = np.ones(len(clean.times_s), dtype=np.bool_)
    clean = clean.with_step_of_levels()
    held = kept if gone is None else ~gone
    quiet = clean.asked("rest", "still", "hold")
    following = clean.asked("follow") if clean.cue_xy is not None else np.zeros_like(quiet)
    if not quiet.any() and not following.any():
        text = message(Movements.bursts_may_be_meant)
        return None, kept, [Finding("note", "bursts_not_told", text)]
    found: list[tuple[int, int, float]] = []
    watched_s = 0.0
    pieces = [
        (a + c, a + d, False)
        for word in ("rest", "still", "hold")
        for a, b in clean.asked_pieces(word)
        for c, d in runs(held[a:b]).tolist()
    ]
    pieces += [(a, b, True) for a, b in clean.pieces(following & held)]
    for first, stop, is_path in pieces:
        start = first + min(round(SETTLE_S / clean.step_s), (stop - first) // 3)
        if stop - start < 5 or clean.times_s[stop - 1] - clean.times_s[start] < 1.0:
            continue
        watched_s += float(clean.times_s[stop - 1] - clean.times_s[start])
        found += _bursts(clean, start, stop, is_path)
    if watched_s < 1.0:
        text = message(Movements.too_short_for_bursts)
        return None, kept, [Finding("note", "bursts_not_told", text)]
    for start, stop, _ in found:
        kept[start:stop] = False
    report = _report(clean, sorted(found), watched_s / 60)
    findings = []
    if report.count:
        text = message(
            Movements.bursts,
            count=report.count,
            watched_s=watched_s,
            rate=report.per_min,
            peak=clean.output(report.peak.number),
            following=bool(following.any()),
        )
        findings.append(Finding("query", "bursts", text))
    return report, kept, findings


def _bursts(clean: Cleaned, start: int, stop: int, is_path: bool) -> list[tuple[int, int, float]]:
    """Start, stop and peak displacement of each burst in one piece."""
    xy = clean.xy[start:stop]
    if is_path and clean.cue_xy is not None:
        xy = xy - clean.cue_xy[start:stop]
        if not np.isfinite(xy).all():
            return []
    window = max(5, round(WINDOW_S / clean.step_s))
    lag = max(1, round(0.02 / clean.step_s))
    away = xy - _window_medians(xy, window)
    speed = np.zeros_like(xy)
    speed[lag:] = xy[lag:] - xy[:-lag]
    floor = max(clean.step, 1e-6 * clean.scale)
    far, fast = _outlying(away, floor), _outlying(speed, floor)
    odd = (far & _widened(fast, clean.step_s)) if is_path else (far | fast)
    if not is_path and not odd.all():
        odd[: int(np.argmin(odd))] = False  # still on the way to where it was asked: slow, not involuntary
    size = np.hypot(away[:, 0], away[:, 1])
    times_s = clean.times_s[start:stop]
    joined = _joined(runs(odd), times_s)
    # The outliers themselves must last: two odd samples of plain noise near each other are no movement.
    return [
        (start + a, start + b, float(size[a:b].max()))
        for a, b in joined
        if np.count_nonzero(odd[a:b]) * clean.step_s > LEAST_S
    ]


def _window_medians(xy: NDArray[np.float64], window: int) -> NDArray[np.float64]:
    """Slow centre: medians of windows, joined by straight lines that go on to both ends; one median for a short piece.

    Beyond the middle of the first and the last window the line goes on as steeply as it runs inside that window, or to the
    next one where that is less: a drift does not end there, and one movement near the end must not steer it.
    """
    count = len(xy) // window
    if count < 2:
        return np.asarray(np.median(xy, axis=0, keepdims=True))
    starts = np.arange(count) * window
    if len(xy) - count * window >= window // 2:
        starts = np.append(starts, len(xy) - window)  # what is left over at the end is looked at too
    pieces = [xy[first : first + window] for first in starts.tolist()]
    medians = np.array([np.median(piece, axis=0) for piece in pieces])
    at = starts + (window - 1) / 2
    between = np.diff(medians, axis=0) / np.diff(at)[:, None]
    slopes = [_lesser(_median_slope(pieces[end]), between[end]) for end in (0, -1)]
    ends = (medians[0] - slopes[0] * at[0], medians[-1] + slopes[1] * (len(xy) - 1 - at[-1]))
    knots = np.concatenate(([0.0], at, [len(xy) - 1.0]))
    heights = np.vstack((ends[0], medians, ends[1]))
    return np.column_stack([np.interp(np.arange(len(xy)), knots, heights[:, axis]) for axis in (0, 1)])


def _median_slope(piece: NDArray[np.float64]) -> NDArray[np.float64]:
    """How fast each axis drifts, a sample: between the medians of the two halves."""
    half = len(piece) // 2
    return np.asarray((np.median(piece[half:], axis=0) - np.median(piece[:half], axis=0)) / (len(piece) / 2))


def _lesser(first: NDArray[np.float64], second: NDArray[np.float64]) -> NDArray[np.float64]:
    """The smaller of two slopes on each axis; none where they point apart."""
    return np.where(first * second > 0, np.where(np.abs(first) < np.abs(second), first, second), 0.0)


def _outlying(values: NDArray[np.float64], floor: float) -> NDArray[np.bool_]:
    """Beyond 4 robust sd on either axis."""
    middle = np.median(values, axis=0)
    robust_sd = np.maximum(1.4826 * np.median(np.abs(values - middle), axis=0), floor)
    return np.asarray((np.abs(values - middle) > OUTLYING_SD * robust_sd).any(axis=1))


def _widened(mask: NDArray[np.bool_], step_s: float) -> NDArray[np.bool_]:
    """The mask and 0.2 s about it."""
    reach = max(1, round(0.2 / step_s))
    near = np.convolve(mask.astype(np.float64), np.ones(2 * reach + 1), mode="same") if mask.any() else mask
    return np.asarray(near > 0.5)


def _joined(found: NDArray[np.int64], times_s: NDArray[np.float64]) -> list[tuple[int, int]]:
    """Runs closer than 0.1 s as one."""
    joined: list[tuple[int, int]] = []
    for a, b in found.tolist():
        if joined and times_s[a] - times_s[joined[-1][1] - 1] < JOIN_S:
            joined[-1] = (joined[-1][0], b)
        else:
            joined.append((a, b))
    return joined


def _report(clean: Cleaned, found: list[tuple[int, int, float]], minutes: float) -> BurstReport:
    rate = counts_per_min(len(found), minutes)
    if not found:
        none = Estimate.missing(message(Movements.no_burst), n=0)
        return BurstReport(0, rate, none, none, ())
    peaks = [peak for _, _, peak in found]
    durations = [float(clean.times_s[b - 1] - clean.times_s[a]) + clean.step_s for a, b, _ in found]
    why = message(Movements.largest_seen, count=len(peaks))
    return BurstReport(
        len(found),
        rate,
        Estimate.unbounded(max(peaks), why, n=len(peaks)),
        median_estimate(durations),
        tuple(float(clean.times_s[a]) for a, _, _ in found),
    )
