"""How often a device really reports, from a loop that looks oftener: by the runs of equal values."""

from __future__ import annotations

import math
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.live_warnings import LiveWarnings
from stickwright.codes.message import Message, message
from stickwright.trace.stamps import mean_rate_hz, stretches

__all__ = ["FEWEST_CHANGES", "rate_text", "report_rate"]

FEWEST_CHANGES = 30
"""Fewer changes of value than this tell no rate. (Judgement.)"""

_LONGEST = 4  # Reports in a row that repeat the value: beyond that the stick stood still.


def report_rate(times_s: ArrayLike, values: ArrayLike) -> Estimate:
    """Reports a second of a device, while it moves.

    Parameters
    ----------
    times_s : array, shape (n,)
        When the values were looked at, seconds, rising.
    values : array, shape (n,) or (n, k)
        The values then.

    Returns
    -------
    Estimate
        Hertz. Where the device reports as often as it is looked at, or oftener, only "at least" can be known:
        the upper end is infinite. NaN when the stick hardly moved.

    Notes
    -----
    Times between changes are whole numbers of report intervals, each read to one look. The interval is fitted by
    least squares through the origin to those numbers; a stretch of ten neighbours counts as one reading for its interval.

    Assumed: the device sends at even intervals, and most reports differ while it moves.

    Examples
    --------
    >>> looks = np.arange(4000) * 0.001
    >>> rate = report_rate(looks, np.sin(7.0 * np.floor(looks / 0.008)))
    >>> round(rate.value)
    125
    """
    times = np.asarray(times_s, dtype=np.float64)
    table = np.asarray(values, dtype=np.float64).reshape(len(times), -1)
    if len(times) < 2:
        return Estimate(math.nan, math.nan, math.nan, n=0, why=_why("nothing-recorded"))
    changed = np.flatnonzero((table[1:] != table[:-1]).any(axis=1)) + 1
    if len(changed) < FEWEST_CHANGES:
        return Estimate(math.nan, math.nan, math.nan, n=len(changed), why=_why("hardly-moved"))
    stepping = stretches(times, table)
    look_s = 1.0 / mean_rate_hz(stepping) if stepping else math.inf
    between_s = np.diff(times[changed])
    base_s = float(np.quantile(between_s, 0.25))
    if base_s < 1.5 * look_s:
        seen = 1.0 / look_s
        return Estimate(seen, seen, math.inf, n=len(between_s), why=_why("as-often-as-looked"))
    interval_s, counts, used_s = _fitted(between_s, base_s)
    off = _spread(used_s - counts * interval_s)
    half_s = 1.96 * off / math.sqrt(len(counts)) / float(np.mean(counts))
    low, high = 1.0 / (interval_s + half_s), 1.0 / max(interval_s - half_s, look_s)
    return Estimate(1.0 / interval_s, low, high, n=len(counts))


def _why(reason: Literal["nothing-recorded", "hardly-moved", "as-often-as-looked"]) -> Message:
    return message(LiveWarnings.rate_reason, reason=reason)


def _fitted(
    between_s: NDArray[np.float64], base_s: float
) -> tuple[float, NDArray[np.float64], NDArray[np.float64]]:  # fmt: skip
    """Report interval, and how many of them each time between changes holds; long stillness left out."""
    interval_s, counts, used = base_s, np.ones(0), between_s
    for _ in range(3):
        counts = np.maximum(np.round(between_s / interval_s), 1.0)
        moving = counts <= _LONGEST
        counts, used = counts[moving], between_s[moving]
        interval_s = float(used.sum() / counts.sum())
    return interval_s, counts, used


def _spread(off_s: NDArray[np.float64]) -> float:
    """Standard deviation of one time between changes, by sums over ten: neighbours share a look, their errors cancel."""
    many = len(off_s) // 10
    if many < 3:
        return float(np.std(off_s, ddof=1))
    sums = off_s[: 10 * many].reshape(many, 10).sum(axis=1)
    return float(np.std(sums, ddof=1)) / math.sqrt(10.0)


def rate_text(rate: Estimate) -> Message:
    """The rate, to be said.

    Parameters
    ----------
    rate : Estimate
        As `report_rate` gives it.

    Examples
    --------
    >>> rate_text(Estimate(125.0, 124.0, 126.0, n=400)).param("trusted_hz")
    50.0
    """
    if rate.value is None:
        why = rate.why or message(LiveWarnings.rate_reason, reason="nothing-recorded")
        return message(LiveWarnings.rate_unknown, why=why)
    if rate.endless:
        return message(LiveWarnings.rate_at_least, rate_hz=rate.value)
    trusted_hz = 0.4 * rate.value  # tremor above 0.4 of the rate is not trusted, as `stickwright.trace.tremor`
    return message(LiveWarnings.rate, rate_hz=rate.value, low_hz=rate.lower, high_hz=rate.upper, trusted_hz=trusted_hz)
