"""Where the stick comes home to, on one axis, with an interval that knows the steps of the output.

Three things make that place uncertain: noise, which is not independent from sample to sample; the output's
steps, which are the same error in every sample while the stick lies still; and another place after each release.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import message

__all__ = ["effective_count", "home", "step_of_levels"]

Array = NDArray[np.float64]

FINE = 0.6
"""Scatter at rest, in steps, from which the mean is free of the steps: rounding then moves it by less than 1/500 of a
step [widrow-kollar-2008]."""

UNKNOWN_PLACE = 0.475
"""Anywhere in a step with equal chance: this far to either side of its middle lie 95 of 100."""

_STRAY = 1e-4  # chance that a sample is a stray one, which must not decide where the others lie
_LEVELS_JUDGED = 40
_MIDDLE_FROM = 6  # with so many rests the median, which one rest gone wrong does not move


def effective_count(values: NDArray[np.float64]) -> float:
    """How many independent readings a series is worth.

    Parameters
    ----------
    values : array, shape (n,)
        Evenly spaced samples of one quantity.

    Returns
    -------
    float
        Between 1 and n: the smaller of two counts, from the correlation of neighbours and from the scatter
        of block means.

    Notes
    -----
    n (1 - r) / (1 + r) with r the correlation of neighbours [bayley-hammersley-1946] is right for noise that forgets
    at an even pace; slow sway beside fast noise fools it, and there the scatter of up to 16 block means
    says how little is known [alexopoulos-1995].

    Examples
    --------
    >>> round(effective_count(np.tile([1.0, -1.0], 50)))
    100
    """
    n = len(values)
    centred = values - values.mean()
    power = float(centred @ centred)
    if n < 3 or power <= 1e-24 * float(values @ values):  # one level: what is left is the rounding of its mean
        return float(max(n, 1))
    neighbour = min(max(float(centred[1:] @ centred[:-1]) / power, 0.0), 1.0 - 1.0 / n)
    count = n * (1 - neighbour) / (1 + neighbour)
    blocks = min(16, n // 4)
    if blocks >= 4:
        length = n // blocks
        means = centred[: blocks * length].reshape(blocks, length).mean(axis=1)
        scatter = float(means.var(ddof=1))
        if scatter > 0:
            count = min(count, blocks * (power / n) / scatter)
    return float(min(max(count, 1.0), n))


def step_of_levels(*axes: Array) -> float:
    """Step of an output of which a few levels only were seen; 0 when none shows.

    Parameters
    ----------
    *axes : array, shape (n,)
        Samples of each axis; both are taken to have the same step.

    Returns
    -------
    float
        The smallest distance between levels, where ten samples or more share a level on average.

    Examples
    --------
    >>> step_of_levels(np.tile([0.25, 0.5, 0.5], 20), np.full(60, 0.75)), step_of_levels(np.arange(60.0))
    (0.25, 0.0)
    """
    gaps = []
    for values in axes:
        levels = np.unique(values)
        if 2 <= len(levels) <= min(_LEVELS_JUDGED, len(values) / 10):
            gaps.append(float(np.diff(levels).min()))
    return min(gaps, default=0.0)


def home(rests: Sequence[Array], step: float) -> Estimate:
    """The place the stick comes home to, from the samples of each rest.

    Parameters
    ----------
    rests : sequence of array, shape (n,)
        Samples of one axis, one array for each release.
    step : float
        Step of the output, 0 when it is finer than the noise shows.

    Returns
    -------
    Estimate
        One rest: its mean; up to five: the mean of their centres; more: the median of the centres. Interval
        from the noise (one rest), or from how the centres scatter, never narrower than the steps allow.

    Notes
    -----
    One rest: t interval on its independent readings. Several: t interval between the centres; from six on, between the order
    statistics of the centres [hettmansperger-sheather-1986]. Where the scatter within a rest is below 0.6 of a step the mean is no
    longer the centre: the place is then found from how many samples fall on each level, over all amounts of Gaussian
    noise that fit (prior 1/sd, as the t interval has). A rest on one level alone may lie anywhere in that step.

    Examples
    --------
    >>> home([np.full(100, 0.5)], step=0.1)
    Estimate(value=0.5, low=0.4525, high=0.5475, level=0.95, n=1, assumed=None, why=None, endless=False)
    """
    if len(rests) == 1:
        return _one_rest(rests[0], step)
    centres = np.array([each.mean() for each in rests])
    k = len(rests)
    unsure, hidden, shared = _left_by_steps(rests, centres, step)
    if k >= _MIDDLE_FROM:
        value = float(np.median(centres)) if shared is None else shared
        low, high = _middle_ends(centres)
        return Estimate(value, min(low, value - hidden), max(high, value + hidden), n=k)
    from scipy.special import stdtrit

    value = float(centres.mean()) if shared is None else shared
    # Equal centres are equal to within what rounding leaves of a mean, not without end.
    finest = step / min(len(each) for each in rests)
    scatter = max(math.hypot(float(centres.std(ddof=1)), unsure), finest)
    half = max(float(stdtrit(k - 1, 0.975)) * scatter / math.sqrt(k), hidden)
    if half == 0:
        return Estimate.unbounded(value, message(Intervals.never_changes, where="rests"), n=k)
    return Estimate(value, value - half, value + half, n=k)


def _left_by_steps(rests: Sequence[Array], centres: Array, step: float) -> tuple[float, float, float | None]:
    """What the steps hide: sd for one centre, half width for all together; the place, when all lie in one step."""
    within = math.sqrt(float(np.average([each.var() for each in rests], weights=[len(each) for each in rests])))
    if not within < FINE * step:
        return 0.0, 0.0, None
    worth = np.array([effective_count(each) for each in rests])
    alone = [_in_steps(each, step, float(count))[3] for each, count in zip(rests, worth, strict=True)]
    # The noise of a centre shows in the scatter of the centres; only what the steps add to it is counted here.
    unsure = math.sqrt(max(0.0, float(np.mean(np.square(alone) - within**2 / worth))))
    if float(np.ptp(centres)) >= step:
        return unsure, min(UNKNOWN_PLACE * step, 1.645 * unsure), None
    value, low, high, _ = _in_steps(np.concatenate(rests), step, float(worth.sum()))
    noise = 1.96 * within / math.sqrt(float(worth.sum()))
    return unsure, math.sqrt(max(0.0, max(value - low, high - value) ** 2 - noise**2)), value


def _middle_ends(centres: Array) -> tuple[float, float]:
    """95 % interval of a median of six or more, between the order statistics [hettmansperger-sheather-1986]."""
    from scipy.special import bdtr

    ordered, n = np.sort(centres), len(centres)
    within = 1 - 2 * np.array([float(bdtr(d - 1, n, 0.5)) for d in range(1, n // 2 + 1)])
    d = int(np.count_nonzero(within >= 0.95))  # the pair d-th from either end holds 95 % or more, the next less
    spare = (within[d - 1] - 0.95) / (within[d - 1] - (within[d] if d < len(within) else 0.0))
    inwards = (n - d) * spare / (d + (n - 2 * d) * spare)
    low = ordered[d - 1] + inwards * (ordered[d] - ordered[d - 1])
    high = ordered[n - d] - inwards * (ordered[n - d] - ordered[n - d - 1])
    return float(low), float(high)


def _one_rest(values: Array, step: float) -> Estimate:
    from scipy.special import stdtrit

    value, worth = float(values.mean()), effective_count(values)
    n = max(1, round(worth))
    if float(values.std()) < FINE * step:
        value, low, high, _ = _in_steps(values, step, worth)
        return Estimate(value, low, high, n=n if low < high and np.ptp(values) > 0 else 1)
    if float(np.ptp(values)) == 0:
        return Estimate.unbounded(value, message(Intervals.never_changes, where="rest"), n=1)
    if worth < 2:
        return Estimate.unbounded(value, message(Intervals.slow_sway, what="rest"), n=1)
    half = float(stdtrit(worth - 1, 0.975)) * math.sqrt(float(values.var()) / (worth - 1))
    return Estimate(value, value - half, value + half, n=n)


def _in_steps(values: Array, step: float, worth: float) -> tuple[float, float, float, float]:
    """Mean, ends of 95 % and sd of the place within the steps, from the number of samples on each level."""
    from scipy.special import ndtr

    levels, counts = np.unique(values, return_counts=True)
    base = float(levels[int(np.argmax(counts))])
    at = np.round((levels - base) / step)
    if len(at) == 1:
        half = UNKNOWN_PLACE * step
        return base, base - half, base + half, step / math.sqrt(12)
    share = counts / counts.sum()
    middle, spread = float(share @ at), math.sqrt(float(share @ (at - share @ at) ** 2))
    place = middle + np.linspace(-0.75, 0.75, 401)
    noise = np.geomspace(0.01, max(1.0, 2 * spread), 24)
    edge = (at[None, None, :] - place[:, None, None]) / noise[None, :, None]
    half_step = 0.5 / noise[None, :, None]
    chance = np.maximum(ndtr(edge + half_step) - ndtr(edge - half_step), 0.0)
    logs = worth * (np.log((1 - _STRAY) * chance + _STRAY / len(at)) @ share)
    density = np.exp(logs - logs.max()).sum(axis=1)
    density /= density.sum()
    below = np.cumsum(density) - density / 2
    low, high = (float(np.interp(q, below, place)) for q in (0.025, 0.975))
    mean = float(density @ place)
    sd = math.sqrt(float(density @ (place - mean) ** 2))
    return base + step * mean, base + step * low, base + step * high, step * sd
