"""Following a moving target: how far off, how late, how large."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import TrackingReport
from stickwright.trace.intervals import jackknife, left_one_out
from stickwright.trace.stamps import Stretch, checked_columns, checked_times, even, mean_rate_hz, stretches

__all__ = ["lag_s", "tracking_report"]

MOST_AHEAD_S, MOST_BEHIND_S = 0.5, 1.0
"""Searched for the lag: a player can run ahead of a target that repeats, seldom trails it by more than a second."""

AS_GOOD = 0.98  # of the best correlation: a target that repeats fits again one turn later, so the nearest to 0 is taken
LEAST_S = 3.0
BLOCK_S = (1.5, 30.0)
BLOCKS = 12  # aimed at; blocks of a short recording are not cut below 1.5 s, of a long one not above 30 s


class _Correlated(NamedTuple):
    """Sums over blocks, by lag; rows are blocks."""

    lags_s: NDArray[np.float64]
    product: NDArray[np.float64]
    cued: NDArray[np.float64]
    produced: NDArray[np.float64]

    def lag_without(self) -> list[float]:
        rest = (left_one_out(each) for each in (self.product, self.cued, self.produced))
        return [_best_lag(self.lags_s, *each) for each in zip(*rest, strict=True)]

    def lag(self) -> float:
        return _best_lag(self.lags_s, self.product.sum(0), self.cued.sum(0), self.produced.sum(0))


def lag_s(times_s: ArrayLike, xy: ArrayLike, cue_xy: ArrayLike) -> float:
    """How far the player is behind the target.

    The shift in time at which produced and cued movement are most alike: correlation over both axes, from 0.5 s
    ahead to 1 s behind, with a parabola through the best three lags. A target that repeats fits again a
    turn later: of peaks that fit almost equally well (98 %) the one nearest to 0 is taken.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, possibly uneven; gaps over 0.25 s are never bridged.
    xy : array, shape (n, 2)
        Where the player was; NaN where a cell was empty.
    cue_xy : array, shape (n, 2)
        Where the target was; NaN where nothing was asked.

    Returns
    -------
    float
        Seconds; plus is behind.

    Raises
    ------
    BadInput
        Shapes that do not fit, no target, a target or a player that stands still, or less than 3 s without a gap.

    Notes
    -----
    Source: [bendat-2010], time delay by cross-correlation. Assumed: the same lag throughout.

    Examples
    --------
    >>> import numpy as np
    >>> t = np.arange(1000) / 100
    >>> def place(t):
    ...     return np.column_stack([np.sin(2 * t) + np.sin(4.4 * t), np.cos(3.1 * t)])
    >>> round(lag_s(t, place(t - 0.18), place(t)), 3)
    0.18
    """
    return _correlated(*_followed(times_s, xy, cue_xy)).lag()


def tracking_report(times_s: ArrayLike, xy: ArrayLike, cue_xy: ArrayLike) -> TrackingReport:
    """Error, gain and lag of following a moving target, with intervals.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, possibly uneven; gaps over 0.25 s are never bridged.
    xy : array, shape (n, 2)
        Where the player was; NaN where a cell was empty. What comes before the first movement is left out: it
        is waiting, not following.
    cue_xy : array, shape (n, 2)
        Where the target was; NaN where nothing was asked.

    Returns
    -------
    TrackingReport
        `rms_error` of the distance from the target; `gain`, produced over cued movement (slope of the regression
        over both axes at the lag found, each axis about its mean); `lag_s` as in `lag_s`; `error_without_lag`,
        rms distance from where the target was one lag ago. Intervals from leaving out one of about twelve
        blocks of time at a time, blocks of 1.5 to 30 s.

    Raises
    ------
    BadInput
        As for `lag_s`.

    Notes
    -----
    Source: [bendat-2010], [tukey-1958]. The gain of a noisy player is not biased by their noise: the cue is exact.

    Examples
    --------
    >>> import numpy as np
    >>> t = np.arange(3000) / 100
    >>> def place(t):
    ...     return np.column_stack([np.sin(2 * t) + np.sin(4.4 * t), np.cos(3.1 * t)])
    >>> report = tracking_report(t, 0.8 * place(t - 0.2), place(t))
    >>> round(report.gain.value, 3), round(report.lag_s.value, 3)
    (0.8, 0.2)
    """
    parts, step_s = _followed(times_s, xy, cue_xy)
    correlated = _correlated(parts, step_s)
    lag = correlated.lag()
    lag_estimate = jackknife(lag, correlated.lag_without())
    sums = _block_sums(parts, lag)
    whole, without = sums.sum(axis=0), left_one_out(sums)

    def told(column: int, count: int) -> Estimate:
        value = math.sqrt(whole[column] / whole[count])
        return jackknife(value, np.sqrt(without[:, column] / without[:, count]), positive=True)

    gain = jackknife(_slope(whole), [_slope(each) for each in without])
    return TrackingReport(told(0, 1), gain, lag_estimate, told(2, 3))


def _followed(times_s: ArrayLike, xy: ArrayLike, cue_xy: ArrayLike) -> tuple[list[Stretch], float]:
    """Stretches with produced and cued place side by side, and the usual step."""
    times = checked_times(times_s)
    both = np.column_stack(
        [checked_columns("xy", xy, times.size), checked_columns("cue_xy", cue_xy, times.size)]
    )  # fmt: skip
    if not np.isfinite(both[:, 2:]).all(axis=1).any():
        raise BadInput(
            Problem(
                "cue_xy",
                message(Signals.found, what="no_target"),
                message(Signals.expected, what="target_place"),
                message(Signals.remedy, what="guided_task"),
            )
        )
    parts = stretches(times, both)
    if parts:
        parts[0] = _from_first_movement(parts[0])
    parts = [part for part in parts if part.times_s.size > 8 and part.times_s[-1] - part.times_s[0] >= LEAST_S]
    if not parts:
        raise BadInput(
            Problem(
                "times_s",
                message(Signals.found, what="no_long_stretch"),
                message(Signals.followed_least, least_s=LEAST_S),
            )
        )
    spread = [max(float(np.ptp(part.values[:, k])) for part in parts) for k in range(4)]
    if max(spread[2:]) == 0:
        raise BadInput(
            Problem(
                "cue_xy",
                message(Signals.found, what="still_target"),
                message(Signals.expected, what="moving_target"),
                message(Signals.remedy, what="pointing"),
            )
        )
    if max(spread[:2]) == 0:
        raise BadInput(
            Problem(
                "xy",
                message(Signals.found, what="same_place"),
                message(Signals.expected, what="movement"),
                message(Signals.remedy, what="stick_live"),
            )
        )
    return parts, 1 / mean_rate_hz(parts)


def _from_first_movement(part: Stretch) -> Stretch:
    moved = np.flatnonzero((part.values[:, :2] != part.values[0, :2]).any(axis=1))
    # One still sample is only the beginning of the recording.
    first = int(moved[0]) if moved.size and moved[0] > 1 else 0
    return Stretch(part.times_s[first:], part.values[first:])


def _block_length(parts: list[Stretch]) -> float:
    whole_s = sum(float(part.times_s[-1] - part.times_s[0]) for part in parts)
    return min(BLOCK_S[1], max(BLOCK_S[0], whole_s / BLOCKS))


def _correlated(parts: list[Stretch], step_s: float) -> _Correlated:
    """Products and squares of produced and cued movement by lag, block by block.

    In each block the produced movement is compared with all of the cue from 1 s before it to 0.5 s after, so
    that every lag is judged on the same samples.
    """
    from scipy.signal import correlate

    shortest = min(part.times_s[-1] - part.times_s[0] for part in parts)
    # A short stretch leaves less room: never more than a third of it is given up for the search.
    scale = min(1.0, shortest / 3 / (MOST_AHEAD_S + MOST_BEHIND_S))
    behind, ahead = round(MOST_BEHIND_S * scale / step_s), round(MOST_AHEAD_S * scale / step_s)
    length = round(_block_length(parts) / step_s)
    evened = [even(part, 1 / step_s) for part in parts]
    middle = np.average([each.mean(axis=0) for each in evened], axis=0, weights=[each.shape[0] for each in evened])
    rows: list[tuple[NDArray[np.float64], NDArray[np.float64], float]] = []
    for each in evened:
        usable = each.shape[0] - ahead - behind
        edges = np.linspace(behind, behind + usable, max(1, round(usable / length)) + 1).round().astype(int)
        for start, stop in pairwise(edges.tolist()):
            produced = each[start:stop, :2] - middle[:2]
            cued = each[start - behind : stop + ahead, 2:] - middle[2:]
            product = np.zeros(behind + ahead + 1)
            for k in range(2):
                product += correlate(cued[:, k], produced[:, k], mode="valid", method="fft")
            squares = np.concatenate([[0.0], np.cumsum((cued**2).sum(axis=1))])
            energy = squares[stop - start :] - squares[: behind + ahead + 1]
            rows.append((product, energy, float((produced**2).sum())))
    lags = (behind - np.arange(behind + ahead + 1)) * step_s
    return _Correlated(
        lags[::-1],
        np.array([row[0][::-1] for row in rows]),
        np.array([row[1][::-1] for row in rows]),
        np.array([row[2] for row in rows]),
    )


def _best_lag(
    lags_s: NDArray[np.float64], product: NDArray[np.float64], cued: NDArray[np.float64], produced: float
) -> float:
    with np.errstate(divide="ignore", invalid="ignore"):
        alike = np.nan_to_num(product / np.sqrt(cued * produced))
    inner = alike[1:-1]
    tops = np.flatnonzero((inner >= alike[:-2]) & (inner >= alike[2:])) + 1
    if tops.size == 0:
        return float(lags_s[int(np.argmax(alike))])
    good = tops[alike[tops] >= AS_GOOD * alike[tops].max()]
    top = int(good[np.argmin(np.abs(lags_s[good]))])
    bend = alike[top - 1] - 2 * alike[top] + alike[top + 1]
    shift = 0.5 * (alike[top - 1] - alike[top + 1]) / bend if bend < 0 else 0.0
    return float(lags_s[top] + shift * (lags_s[1] - lags_s[0]))


def _block_sums(parts: list[Stretch], lag: float) -> NDArray[np.float64]:
    """For each block: squared error, its count, the same with the lag taken out, and sums for the regression.

    Worked at the stamps as they are; only the cue, which is smooth, is read between them.
    """
    length_s = _block_length(parts)
    rows = []
    for part in parts:
        times = part.times_s
        blocks = max(1, round((times[-1] - times[0]) / length_s))
        edges = np.searchsorted(times, np.linspace(times[0], times[-1], blocks + 1))
        edges[-1] = times.size
        for a, b in pairwise(edges.tolist()):
            then, made, cued = times[a:b] - lag, part.values[a:b, :2], part.values[a:b, 2:]
            known = (then >= times[0]) & (then <= times[-1])
            shown = np.column_stack([np.interp(then[known], times, column) for column in part.values[:, 2:].T])
            later = made[known]
            rows.append([
                ((made - cued) ** 2).sum(), b - a, ((later - shown) ** 2).sum(), known.sum(),
                *shown.sum(axis=0), *later.sum(axis=0), (shown * later).sum(), (shown**2).sum(),
            ])  # fmt: skip
    return np.array(rows, dtype=np.float64)


def _slope(sums: NDArray[np.float64]) -> float:
    """Slope of produced on cued over both axes, each about its own mean, from the sums of `_block_sums`."""
    count, shown, made, product, square = sums[3], sums[4:6], sums[6:8], sums[8], sums[9]
    return float((product - (shown * made).sum() / count) / (square - (shown**2).sum() / count))
