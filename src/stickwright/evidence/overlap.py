"""How far the trials of B lie above those of A, pair by pair, whatever the measure's scale."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.evidence import Evidence
from stickwright.codes.message import message

__all__ = ["Overlap", "baseline_corrected", "nap", "overlap"]

Array = NDArray[np.float64]

_Z = 1.959964


@dataclass(frozen=True)
class Overlap:
    """Pairs of a trial of A with one of B.

    Parameters
    ----------
    nap : Estimate
        Nonoverlap of all pairs: share in which B is better, ties one half; 0.5 is no difference.
    tau : float
        The same from -1 to 1.
    tau_u : float
        Tau less the trend within A, over the pairs of A with B; may pass 1.
    trend_a : float
        Kendall's S of A over its own pairs: -1 to 1, above 0 where A was getting better by itself.
    """

    nap: Estimate
    tau: float
    tau_u: float
    trend_a: float


def nap(a: Sequence[float] | Array, b: Sequence[float] | Array, *, less_is_better: bool = False) -> Estimate:
    """Nonoverlap of all pairs with its 95% interval.

    Parameters
    ----------
    a, b : array, shape (n,), (m,)
        The measure in the trials of each set-up; missed trials left out.
    less_is_better : bool, default False
        For times and errors.

    Notes
    -----
    [parker-vannest-2009]. Interval: the shares whose spread under an exponential model holds the one seen [newcombe-2006] (method 5);
    trials are taken as independent, which those of one player are only nearly. With fewer than three trials of either it is unbounded.

    Examples
    --------
    >>> round(nap([20, 20, 26, 25, 22, 23], [28, 25, 24, 27, 30, 30, 29]).value, 4)
    0.9167
    """
    above = _signs(a, b, less_is_better)
    share = float(np.mean((above + 1) / 2)) if above.size else math.nan
    if min(above.shape) < 3:
        why = message(Evidence.few_trials, least=3) if above.size else message(Evidence.no_trials)
        return Estimate.unbounded(share, why, n=above.size) if above.size else Estimate.missing(why, n=0)
    return Estimate(share, _end(share, above.shape, -1), _end(share, above.shape, 1), n=above.size)


def overlap(a: Sequence[float] | Array, b: Sequence[float] | Array, *, less_is_better: bool = False) -> Overlap | None:
    """Nonoverlap and Tau-U; None where a set-up has no trial.

    Parameters
    ----------
    a, b : array, shape (n,), (m,)
        In the order of time, missed trials left out.
    less_is_better : bool, default False
        For times and errors.

    Notes
    -----
    Tau-U is S of A with B less S of A, over the number of A-B pairs [parker-2011]; other programs divide by all pairs used.

    Examples
    --------
    >>> found = overlap([3, 3, 4, 5], [4, 5, 6, 7, 7])
    >>> found.tau, round(found.tau_u, 3)
    (0.8, 0.55)
    """
    above = _signs(a, b, less_is_better)
    if not above.size:
        return None
    within = _signs(a, a, less_is_better)[np.triu_indices(len(a), 1)]
    s_ab, s_a = float(above.sum()), float(within.sum())
    return Overlap(
        nap(a, b, less_is_better=less_is_better),
        s_ab / above.size,
        (s_ab - s_a) / above.size,
        s_a / within.size if within.size else 0.0,
    )


def baseline_corrected(a: Sequence[float] | Array, b: Sequence[float] | Array) -> tuple[Array, Array]:
    """Both as they lie about the trend of A, carried on into B.

    Parameters
    ----------
    a, b : array, shape (n,), (m,)
        In the order of time, three or more of A.

    Notes
    -----
    Theil and Sen's line through A against the trial's number [tarlow-2017]. A short A has an unsure trend, and carried far it decides:
    say both figures.

    Examples
    --------
    >>> [part.tolist() for part in baseline_corrected([1, 2, 3, 4, 5], [6, 7, 8])]
    [[0.0, 0.0, 0.0, 0.0, 0.0], [0.0, 0.0, 0.0]]
    """
    from scipy.stats import theilslopes

    before, after = np.asarray(a, dtype=np.float64), np.asarray(b, dtype=np.float64)
    number = np.arange(1.0, len(before) + len(after) + 1)
    slope = float(theilslopes(before, number[: len(before)]).slope)
    level = float(np.median(before - slope * number[: len(before)]))
    apart = np.concatenate([before, after]) - level - slope * number
    return apart[: len(before)], apart[len(before) :]


def _signs(a: Sequence[float] | Array, b: Sequence[float] | Array, less_is_better: bool) -> Array:
    """1 where the second is better, 0 where alike, -1 where worse, shape (n, m)."""
    first, second = np.asarray(a, dtype=np.float64), np.asarray(b, dtype=np.float64)
    return np.sign(second[None, :] - first[:, None]) * (-1.0 if less_is_better else 1.0)


def _end(share: float, pairs: tuple[int, ...], side: int) -> float:
    """The share furthest to that side whose spread still reaches the one seen."""
    from scipy.optimize import brentq

    m, n = pairs
    middle = (m + n) / 2 - 1

    def beyond(true: float) -> float:
        spread = 1 + middle * (1 - true) / (2 - true) + middle * true / (1 + true)
        return abs(share - true) - _Z * math.sqrt(max(0.0, true * (1 - true)) * spread / (m * n))

    limit = 1.0 if side > 0 else 0.0
    if share == limit:
        return limit
    return float(
        brentq(beyond, share + side * 1e-12, limit)
    )  # at 0 and at 1 there is no spread: a root beside the one sought
