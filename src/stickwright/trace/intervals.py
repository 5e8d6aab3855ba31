"""Intervals for what is told from parts of one recording: left-one-out parts, and medians."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import Text, message

__all__ = ["jackknife", "left_one_out", "mean_count_estimate", "median_estimate"]

LEAST_PARTS = 4


def left_one_out(sums: NDArray[np.float64]) -> NDArray[np.float64]:
    """Totals with each part left out in turn.

    Parameters
    ----------
    sums : array, shape (parts, ...)
        Sums over each part.

    Returns
    -------
    array, shape (parts, ...)
        Row k is the total of all parts but the k-th.
    """
    return np.asarray(sums.sum(axis=0, keepdims=True) - sums)


def jackknife(value: float, without: ArrayLike, *, positive: bool = False, least_half_width: float = 0.0) -> Estimate:
    """A value with the 95 % interval from leaving out one part at a time.

    Parameters
    ----------
    value : float
        Result from all parts.
    without : array, shape (parts,)
        Results with each part left out.
    positive : bool, default False
        Work in logarithms: the value cannot be 0 or less.
    least_half_width : float, default 0.0
        Systematic error of the method, in the unit of the value: the interval is never narrower.

    Returns
    -------
    Estimate
        Interval from the t distribution with parts - 1 degrees of freedom; none below four parts.

    Notes
    -----
    Source: [tukey-1958]. Assumed: parts are independent of each other, which holds when a part is much
    longer than the memory of the movement.

    Examples
    --------
    >>> jackknife(2.0, [1.9, 2.1, 2.0, 2.0, 2.0]).n
    5
    """
    from scipy.stats import t

    parts = np.asarray(without, dtype=np.float64)
    n = parts.size
    if n < LEAST_PARTS:
        return Estimate.unbounded(value, message(Intervals.too_short), n=n)
    if not (np.isfinite(parts).all() and math.isfinite(value)) or (positive and (value <= 0 or parts.min() <= 0)):
        return Estimate.unbounded(value, message(Intervals.parts_disagree), n=n)
    used = np.log(parts) if positive else parts
    error = math.sqrt((n - 1) / n * float(((used - used.mean()) ** 2).sum()))
    half = float(t.ppf(0.975, n - 1)) * error
    low, high = (value * math.exp(-half), value * math.exp(half)) if positive else (value - half, value + half)
    return Estimate(value, min(low, value - least_half_width), max(high, value + least_half_width), n=n)


def median_estimate(values: ArrayLike, *, assumed: Text | None = None) -> Estimate:
    """The median with the 95 % interval of its order statistics.

    Parameters
    ----------
    values : array, shape (n,)
        One figure for each movement.
    assumed : Message, str or None
        Passed on to the estimate.

    Returns
    -------
    Estimate
        Free of any assumption on the distribution; fewer than six figures give no interval.

    Notes
    -----
    Source: [conover-1999], the sign-test interval of a quantile.

    Examples
    --------
    >>> median_estimate([3.0, 1.0, 2.0, 5.0, 4.0, 6.0, 7.0])
    Estimate(value=4.0, low=1.0, high=7.0, level=0.95, n=7, assumed=None, why=None, endless=False)
    """
    from scipy.stats import quantile_test

    known = np.asarray(values, dtype=np.float64)
    known = known[np.isfinite(known)]
    if known.size == 0:
        return Estimate.missing(message(Intervals.no_movement), n=0, assumed=assumed)
    middle = float(np.median(known))
    ends = quantile_test(known, q=middle, p=0.5).confidence_interval(confidence_level=0.95)
    if not (math.isfinite(ends.low) and math.isfinite(ends.high)):
        why = message(Intervals.few_movements, movements=known.size, least=6)
        return Estimate.unbounded(middle, why, n=known.size, assumed=assumed)
    return Estimate(middle, float(ends.low), float(ends.high), n=known.size, assumed=assumed)


def mean_count_estimate(counts: ArrayLike, *, assumed: Text | None = None) -> Estimate:
    """The mean of counts with a 95 % interval, also where nearly all are 0.

    Parameters
    ----------
    counts : array, shape (n,)
        One count for each movement.
    assumed : Message, str or None
        Passed on to the estimate.

    Returns
    -------
    Estimate
        Exact Poisson limits of the total, widened by the root of variance over mean where the counts scatter more.

    Notes
    -----
    Source: [garwood-1936] for the limits; the widening by the dispersion, as in quasi-Poisson regression, is common practice.

    Examples
    --------
    >>> found = mean_count_estimate([0, 0, 0, 0, 0, 0, 0, 0, 0, 0])
    >>> found.value, found.low, round(found.high, 3)
    (0.0, 0.0, 0.369)
    """
    from scipy.stats import chi2

    known = np.asarray(counts, dtype=np.float64)
    known = known[np.isfinite(known)]
    n = known.size
    if n == 0:
        return Estimate.missing(message(Intervals.no_movement), n=0, assumed=assumed)
    total, mean = float(known.sum()), float(known.mean())
    wider = math.sqrt(max(1.0, float(known.var(ddof=1)) / mean)) if n > 1 and mean > 0 else 1.0
    low = float(chi2.ppf(0.025, 2 * total)) / 2 / n if total > 0 else 0.0
    high = float(chi2.ppf(0.975, 2 * total + 2)) / 2 / n
    return Estimate(mean, max(0.0, mean - wider * (mean - low)), mean + wider * (high - mean), n=n, assumed=assumed)
