"""The course of a figure over visits, where it will be, and when it passes a limit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.evidence import Evidence
from stickwright.codes.message import message

__all__ = ["Level", "Trend", "crossing_days", "level_at_last", "trend_over_days"]

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Trend:
    """A straight line through the logarithm of a figure.

    Parameters
    ----------
    per_year : Estimate
        Ratio of the figure after a year to before; 1 is no change.
    now : float
        By the line at the last visit.
    visits : int
        Days with a figure.
    p : float or None
        Chance of such a trend where there is none, exact for few visits; None with fewer than three.
    """

    per_year: Estimate
    now: float
    visits: int
    p: float | None


def trend_over_days(days: Sequence[float] | Array, values: Sequence[float] | Array) -> Trend | None:
    """Median of the slopes between all pairs of visits, on the logarithm.

    Parameters
    ----------
    days : array, shape (visits,)
        Since any day, in any order; of visits on one day the geometric mean counts.
    values : array, shape (visits,)
        Above zero.

    Returns
    -------
    Trend or None
        None with fewer than two days. With two the interval is unbounded: they cannot tell a trend from the day's scatter.

    Notes
    -----
    [sen-1968] with the interval by Kendall's S; five visits cannot show a trend at the 5% level unless all ten pairs agree.

    Examples
    --------
    >>> found = trend_over_days([0, 90, 180, 270, 365], [2.0, 1.9, 1.7, 1.65, 1.5])
    >>> round(found.per_year.value, 2), round(found.p, 3)
    (0.75, 0.017)
    """
    from scipy.stats import kendalltau, theilslopes

    day, log = _by_day(days, values)
    if len(day) < 2:
        return None
    slope, _, low, high = theilslopes(log, day)
    year = [math.exp(min(one * 365.25, 700.0)) for one in (float(low), float(slope), float(high))]
    now = math.exp(float(np.median(log - slope * day) + slope * day[-1]))
    if len(day) < 3 or not math.isfinite(year[0]) or not math.isfinite(year[2]):
        return Trend(
            Estimate.unbounded(year[1], message(Evidence.few_visits, least=3), n=len(day)), now, len(day), None
        )
    return Trend(
        Estimate(year[1], min(year[:2]), max(year[1:]), n=len(day)), now, len(day), float(kendalltau(day, log).pvalue)
    )


@dataclass(frozen=True)
class Level:
    """Where a wandering figure stands.

    Parameters
    ----------
    level, variance : float
        At the last visit, after it was read.
    log_likelihood : float
        Of all figures.
    """

    level: float
    variance: float
    log_likelihood: float

    def ahead(self, steps: int, noise_variance: float, step_variance: float) -> tuple[float, float]:
        """The next figure but so many and its variance."""
        return self.level, self.variance + steps * step_variance + noise_variance


def level_at_last(values: Sequence[float] | Array, noise_variance: float, step_variance: float) -> Level:
    """A level that wanders from visit to visit, read with noise.

    Parameters
    ----------
    values : array, shape (visits,)
        In the order of time, evenly spaced; NaN where one was missed.
    noise_variance : float
        Of one reading about the level, above zero.
    step_variance : float
        Of the level from one visit to the next.

    Notes
    -----
    Local level model by Kalman's filter, started at the first figure [durbin-koopman-2012].

    Examples
    --------
    >>> round(level_at_last([5.0, 5.4, 4.9, 5.6, 6.1, 5.8], 0.16, 0.04).level, 6)
    5.686931
    """
    series = np.asarray(values, dtype=np.float64)
    (known,) = np.nonzero(np.isfinite(series))
    first = int(known[0])
    level, variance, likelihood = float(series[first]), noise_variance, 0.0
    for value in series[first + 1 :].tolist():
        variance += step_variance
        if not math.isfinite(value):
            continue
        spread = variance + noise_variance
        apart, gain = value - level, variance / spread
        likelihood -= 0.5 * (math.log(2 * math.pi * spread) + apart**2 / spread)
        level, variance = level + gain * apart, variance * (1 - gain)
    return Level(level, variance, likelihood)


def crossing_days(trend: Trend, limit: float) -> Estimate:
    """Days from the last visit until the line passes a limit.

    Parameters
    ----------
    trend : Trend
    limit : float
        In the figure's unit, above zero.

    Returns
    -------
    Estimate
        Lower end: the earliest by the interval of the trend; no upper end where the trend may be none. Missing where the line does not
        go towards the limit.

    Examples
    --------
    >>> found = trend_over_days([0, 90, 180, 270, 365], [2.0, 1.9, 1.7, 1.65, 1.5])
    >>> round(crossing_days(found, 1.2).value)
    285
    """
    way = math.log(limit / trend.now)
    if way == 0:
        return Estimate.unbounded(0.0, message(Evidence.at_the_limit), n=trend.visits)

    def days(per_year: float) -> float:
        daily = math.log(per_year) / 365.25
        return way / daily if daily != 0 and way / daily > 0 else math.inf

    value = days(trend.per_year.number)
    if not math.isfinite(value):
        return Estimate.missing(message(Evidence.not_towards), n=trend.visits)
    if not trend.per_year.has_interval:
        return Estimate.unbounded(value, message(Evidence.few_visits, least=3), n=trend.visits)
    ends = sorted(days(one) for one in (trend.per_year.lower, trend.per_year.upper))
    return Estimate(value, min(value, ends[0]), max(value, ends[1]), n=trend.visits)


def _by_day(days: Sequence[float] | Array, values: Sequence[float] | Array) -> tuple[Array, Array]:
    """Days in order, each once, with the mean logarithm of its figures."""
    day, value = np.asarray(days, dtype=np.float64), np.asarray(values, dtype=np.float64)
    kept = np.isfinite(day) & np.isfinite(value) & (value > 0)
    each, place = np.unique(day[kept], return_inverse=True)
    return each, np.bincount(place, np.log(value[kept]), len(each)) / np.maximum(
        1, np.bincount(place, minlength=len(each))
    )
