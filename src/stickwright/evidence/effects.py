"""How much better: difference, ratio, and what of it is practice."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.evidence import Evidence
from stickwright.codes.message import Message, message

__all__ = ["Learning", "PracticeFit", "learning_curve", "mean_difference", "ratio_of_means", "with_practice"]

Array = NDArray[np.float64]


def mean_difference(a: Sequence[float] | Array, b: Sequence[float] | Array) -> Estimate:
    """Mean of B less mean of A in the measure's unit, trials taken as independent.

    Parameters
    ----------
    a, b : array, shape (n,), (m,)
        Missed trials left out.

    Notes
    -----
    Spreads may differ [welch-1947]. The interval of `stickwright.evidence.randomisation` asks less of the trials.

    Examples
    --------
    >>> found = mean_difference([4, 5, 3, 6], [8, 7, 9, 8])
    >>> found.value, round(found.low, 2), round(found.high, 2)
    (3.5, 1.54, 5.46)
    """
    from scipy.stats import t

    first, second = np.asarray(a, dtype=np.float64), np.asarray(b, dtype=np.float64)
    if not len(first) or not len(second):
        return Estimate.missing(message(Evidence.no_trials), n=0)
    count, apart = len(first) + len(second), float(second.mean() - first.mean())
    if min(len(first), len(second)) < 2:
        return Estimate.unbounded(apart, message(Evidence.few_trials, least=2), n=count)
    parts = [float(one.var(ddof=1)) / len(one) for one in (first, second)]
    if sum(parts) == 0:
        return Estimate.unbounded(apart, message(Evidence.no_variation), n=count)
    degrees = sum(parts) ** 2 / sum(part**2 / (len(one) - 1) for part, one in zip(parts, (first, second), strict=True))
    half = float(t.ppf(0.975, degrees)) * math.sqrt(sum(parts))
    return Estimate(apart, apart - half, apart + half, n=count)


def ratio_of_means(a: Sequence[float] | Array, b: Sequence[float] | Array) -> Estimate:
    """Mean of B over mean of A, for measures above zero.

    Parameters
    ----------
    a, b : array, shape (n,), (m,)
        Missed trials left out.

    Notes
    -----
    The log response ratio with its correction for few trials [pustejovsky-2018], carried back from the logarithm. The interval takes t
    with Welch's degrees for the normal, as there are few trials.

    Examples
    --------
    >>> found = ratio_of_means([10, 11, 9, 10], [8, 8.5, 7.5, 8])
    >>> round(found.value, 3)
    0.8
    """
    from scipy.stats import t

    first, second = np.asarray(a, dtype=np.float64), np.asarray(b, dtype=np.float64)
    count = len(first) + len(second)
    if not len(first) or not len(second):
        return Estimate.missing(message(Evidence.no_trials), n=0)
    if min(first.min(), second.min()) < 0 or min(first.mean(), second.mean()) <= 0:
        return Estimate.missing(message(Evidence.ratio_above_0), n=count)
    plain = math.log(second.mean() / first.mean())
    if min(len(first), len(second)) < 2:
        return Estimate.unbounded(math.exp(plain), message(Evidence.few_trials, least=2), n=count)
    parts = [float(one.var(ddof=1)) / (len(one) * float(one.mean()) ** 2) for one in (first, second)]
    if sum(parts) == 0:
        return Estimate.unbounded(math.exp(plain), message(Evidence.no_variation), n=count)
    ratio = plain + parts[1] / 2 - parts[0] / 2
    degrees = sum(parts) ** 2 / sum(part**2 / (len(one) - 1) for part, one in zip(parts, (first, second), strict=True))
    half = float(t.ppf(0.975, degrees)) * math.sqrt(sum(parts))
    return Estimate(math.exp(ratio), math.exp(ratio - half), math.exp(ratio + half), n=count)


@dataclass(frozen=True)
class PracticeFit:
    """The set-up's effect with practice taken out.

    Parameters
    ----------
    ratio : Estimate
        B over A at the same amount of practice.
    plain_ratio : float
        Geometric mean of B over that of A, practice not looked at.
    practice_share : float or None
        Of the plain change in the logarithm, the share that practice explains; None where the plain change is too small to part.
    exponent : Estimate
        Of the power law: below 0 where the measure falls with practice (a time that gets shorter).
    neighbours : float
        How alike the errors of neighbouring trials are: correlation, -1 to 1. Beyond 0.4 the interval is too narrow, and says so.
    notes : tuple of Message
        What limits the claim.
    """

    ratio: Estimate
    plain_ratio: float
    practice_share: float | None
    exponent: Estimate
    neighbours: float
    notes: tuple[Message, ...] = ()


def with_practice(values: Sequence[float] | Array, is_b: Sequence[bool] | NDArray[np.bool_]) -> PracticeFit | None:
    """Least squares of the log measure on the log of the trial's number and the set-up.

    Parameters
    ----------
    values : array, shape (trials,)
        Above zero, in the order of time; NaN where a trial was missed, which is no practice either.
    is_b : sequence of bool, shape (trials,)
        True where B was played.

    Returns
    -------
    PracticeFit or None
        None with fewer than six trials, fewer than two of either, or a figure that is not above zero.

    Notes
    -----
    Power law of practice, y = b N^-c [newell-rosenbloom-1981], one exponent for both set-ups. What was learnt on one counts for the other
    in full: where a set-up asks for a skill of its own, that is carry-over, which an order by lot spreads over both.

    Examples
    --------
    >>> import numpy as np
    >>> trial = np.arange(1, 9)
    >>> b = np.array([False, True, True, False, True, False, False, True])
    >>> found = with_practice(10 * trial**-0.3 * np.where(b, 0.8, 1.0) * np.exp(0.01 * np.cos(trial)), b)
    >>> round(found.ratio.value, 2), round(found.exponent.value, 2)
    (0.79, -0.3)
    """
    from scipy.stats import t

    value, second = np.asarray(values, dtype=np.float64), np.asarray(is_b, dtype=np.bool_)
    known = np.isfinite(value)
    value, second = value[known], second[known]
    n = len(value)
    if n < 6 or min(int(second.sum()), n - int(second.sum())) < 2 or float(value.min()) <= 0:
        return None
    design = np.column_stack([np.ones(n), np.log(np.arange(1.0, n + 1)), second])
    log = np.log(value)
    solved, _, rank, _ = np.linalg.lstsq(design, log, rcond=None)
    if rank < 3:
        return None
    errors = log - design @ solved
    variance = float(errors @ errors) / (n - 3)
    spread = np.sqrt(variance * np.diag(np.linalg.inv(design.T @ design)))
    half = float(t.ppf(0.975, n - 3)) * spread
    ratio, exponent = float(solved[2]), float(solved[1])
    if variance == 0:
        known_ratio = Estimate.unbounded(math.exp(ratio), message(Evidence.no_variation), n=n)
        known_exponent = Estimate.unbounded(exponent, message(Evidence.no_variation), n=n)
    else:
        known_ratio = Estimate(math.exp(ratio), math.exp(ratio - half[2]), math.exp(ratio + half[2]), n=n)
        known_exponent = Estimate(exponent, exponent - half[1], exponent + half[1], n=n)
    plain = float(log[second].mean() - log[~second].mean())
    neighbours = float(errors[1:] @ errors[:-1] / (errors @ errors)) if variance > 0 else 0.0
    notes = (message(Evidence.neighbours_alike, correlation_factor=neighbours),) if neighbours > _ALIKE else ()
    told = abs(plain) > 2 * float(np.sqrt(variance / n)) and plain != 0
    return PracticeFit(
        known_ratio, math.exp(plain), (plain - ratio) / plain if told else None, known_exponent, neighbours, notes
    )


_ALIKE = 0.4


@dataclass(frozen=True)
class Learning:
    """The course of one measure with practice.

    Parameters
    ----------
    kind : str
        ``"power"`` or ``"exponential"``, whichever leaves less.
    at_last, to_come : float
        The curve at the last trial, and where it ends up by this curve; the latter is badly known with fewer than 20 trials.
    change_per_doubling : Estimate
        Of the measure when practice doubles, as a ratio, from the power law; 1 is no more learning.
    still_improving : bool or None
        Whether that interval lies on one side of 1; None where it is not known.
    """

    kind: str
    at_last: float
    to_come: float
    change_per_doubling: Estimate
    still_improving: bool | None


def learning_curve(values: Sequence[float] | Array) -> Learning | None:
    """A power law and an exponential with an end, by least squares.

    Parameters
    ----------
    values : array, shape (trials,)
        Above zero, in the order of time, missed trials left out.

    Returns
    -------
    Learning or None
        None with fewer than six trials or a figure that is not above zero.

    Notes
    -----
    y = a + b N^-c and y = a + b exp(-c (N - 1)), b of any sign [newell-rosenbloom-1981] [heathcote-2000]. Whether it still improves is read
    from the second half alone, on logarithms.

    Examples
    --------
    >>> found = learning_curve([10.2, 8.1, 7.2, 6.5, 6.2, 5.8, 5.6, 5.3])
    >>> found.kind, round(found.to_come, 1)
    ('power', 1.4)
    """
    from scipy.stats import t

    value = np.asarray(values, dtype=np.float64)
    n = len(value)
    if n < 6 or float(value.min()) <= 0:
        return None
    number = np.arange(1.0, n + 1)
    shapes = {"power": lambda c: number**-c, "exponential": lambda c: np.exp(-c * (number - 1))}
    fits = {kind: _least(value, shape) for kind, shape in shapes.items()}
    kind = min(fits, key=lambda one: fits[one][0])
    _, end, size, rate = fits[kind]
    late = slice(n // 2 - 1, None)
    x, y = np.log(number[late]), np.log(value[late])
    slope, level = np.polyfit(x, y, 1)
    left = y - level - slope * x
    spread = math.sqrt(float(left @ left) / (len(x) - 2) / float(((x - x.mean()) ** 2).sum()))
    half = float(t.ppf(0.975, len(x) - 2)) * spread
    ends = [2.0 ** float(slope + side * half) for side in (-1, 0, 1)]
    if spread == 0:
        change = Estimate.unbounded(ends[1], message(Evidence.no_variation), n=len(x))
        improving = None
    else:
        change = Estimate(ends[1], ends[0], ends[2], n=len(x))
        improving = not ends[0] <= 1 <= ends[2]
    return Learning(kind, float(end + size * shapes[kind](rate)[-1]), float(end), change, improving)


def _least(value: Array, shape: object) -> tuple[float, float, float, float]:
    """Sum of squares left, end, size and rate of the best curve: the rate is searched, the rest is linear."""
    from scipy.optimize import minimize_scalar

    def left(log_rate: float) -> tuple[float, Array, float]:
        rate = math.exp(log_rate)
        design = np.column_stack([np.ones(len(value)), shape(rate)])  # type: ignore[operator]
        solved, _, _, _ = np.linalg.lstsq(design, value, rcond=None)
        apart = value - design @ solved
        return float(apart @ apart), solved, rate

    tried = np.linspace(math.log(0.02), math.log(5.0), 60)
    best = int(np.argmin([left(one)[0] for one in tried]))
    low, high = tried[max(0, best - 1)], tried[min(len(tried) - 1, best + 1)]
    found = minimize_scalar(lambda one: left(one)[0], bounds=(low, high), method="bounded", options={"xatol": 1e-10})
    squares, solved, rate = left(float(found.x))
    return squares, float(solved[0]), float(solved[1]), rate
