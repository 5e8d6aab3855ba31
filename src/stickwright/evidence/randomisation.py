"""Could chance have made the difference: the order that was drawn against every order that could have been."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.evidence import Evidence
from stickwright.codes.message import message
from stickwright.evidence.designs import Design, Orders

__all__ = ["RandomisationTest", "randomisation_test"]

Array = NDArray[np.float64]

MOST_EXACT = 2_000_000
"""Up to so many orders all are looked at; beyond, a sample by lot."""
DRAWS = 99_999
"""Of such a sample."""
_AT_ONCE = 65_536
_ALIKE = 1e-9
"""Of the spread: differences as near as that are one, told apart by rounding alone."""


@dataclass(frozen=True)
class RandomisationTest:
    """What the order drawn shows beside all others.

    Parameters
    ----------
    difference : Estimate
        Mean of B less mean of A, in the measure's unit; the interval holds every difference that the test would not turn down.
    p : float
        Share of the orders with a difference at least as large, the drawn one included: never 0.
    orders : int
        How many were looked at.
    exact : bool
        Whether those are all there are.
    smallest_p : float
        The least that this design could have shown.
    """

    difference: Estimate
    p: float
    orders: int
    exact: bool
    smallest_p: float


def randomisation_test(
    values: Sequence[float] | Array,
    drawn: Sequence[bool] | NDArray[np.bool_],
    design: Design,
    *,
    two_sided: bool = True,
    level: float = 0.95,
    seed: int = 0,
) -> RandomisationTest:
    """Test of no difference between A and B, and the interval of the difference, by the design's own orders.

    Parameters
    ----------
    values : array, shape (trials,)
        One measure a trial, in the order of time; NaN where a trial was missed, which counts in no order.
    drawn : sequence of bool, shape (trials,)
        True where B was played.
    design : Design
        By which it was drawn.
    two_sided : bool, default True
        Otherwise only more of B counts.
    level : float, default 0.95
        Of the interval.
    seed : int, default 0
        Of the sample, where the orders are too many to count.

    Notes
    -----
    Statistic: the difference of the means, orders in which a set-up has no trial left out. [edgington-onghena-2007]; a sample's p
    counts the drawn order too: (1 + as large) / (1 + sampled). The interval inverts the test for a shift of all trials of B; unbounded
    where the design's smallest p lies above 1 - level: no such trial can tell.

    Examples
    --------
    >>> from stickwright.evidence.designs import Alternating
    >>> b = [False, True, False, True, False, True, True, False]
    >>> found = randomisation_test([4, 7, 5, 8, 3, 6, 9, 5], b, Alternating(4, 4), two_sided=False)
    >>> round(found.p, 7), found.orders, found.difference.value
    (0.0142857, 70, 3.25)
    """
    value = np.asarray(values, dtype=np.float64)
    order = np.asarray(drawn, dtype=np.bool_)
    known = np.isfinite(value)
    exact = design.count() <= MOST_EXACT
    observed, own_share = (float(one[0]) for one in _differences(value, known, order[None, :], order))
    blocks = _all(design) if exact else _sampled(design, np.random.default_rng(seed))
    pairs = [_differences(value, known, block, order) for block in blocks]
    differences, shares = (np.concatenate(column) for column in zip(*pairs, strict=True))
    kept = np.isfinite(differences)
    differences, shares = differences[kept], shares[kept]
    if not exact:
        differences, shares = np.append(differences, observed), np.append(shares, own_share)
    slack = _ALIKE * float(np.ptp(value[known]) or 1.0)
    p = _p_at(0.0, differences, shares, observed, two_sided, slack)
    least = 1 / len(differences)
    if two_sided:
        least *= int(np.count_nonzero(np.abs(np.abs(shares) - 1) < _ALIKE))
    ends = _interval(differences, shares, observed, 1 - level, slack)
    if ends is None:
        estimate = Estimate.unbounded(
            observed, message(Evidence.too_few_orders, smallest_share=min(1.0, least)), n=int(known.sum())
        )
    else:
        estimate = Estimate(observed, *ends, n=int(known.sum()))
    return RandomisationTest(estimate, p, len(differences), exact, min(1.0, least))


def _all(design: Design) -> Iterator[Orders]:
    orders = design.orders()
    while block := list(itertools.islice(orders, _AT_ONCE)):
        yield np.array(block, dtype=np.bool_)


def _sampled(design: Design, rng: np.random.Generator) -> Iterator[Orders]:
    for first in range(0, DRAWS, _AT_ONCE):
        yield design.drawn(rng, min(_AT_ONCE, DRAWS - first))


def _differences(
    value: Array, known: NDArray[np.bool_], orders: Orders, drawn: NDArray[np.bool_]
) -> tuple[Array, Array]:
    """Mean of B less mean of A by each order, of the values and of the drawn order itself: the second is how much of a shift of the drawn
    B trials shows by that order."""
    is_b = orders[:, known].astype(np.float64)
    of_b = is_b.sum(axis=1)
    of_a = known.sum() - of_b
    out = []
    with np.errstate(divide="ignore", invalid="ignore"):
        for column in (value[known], drawn[known].astype(np.float64)):
            in_b = is_b @ column
            out.append(np.asarray(in_b / of_b - (column.sum() - in_b) / of_a))
    return out[0], out[1]


def _p_at(shift: float, differences: Array, shares: Array, observed: float, two_sided: bool, slack: float) -> float:
    """Chance beforehand of what was seen, were B truly greater by the shift."""
    left, here = differences - shift * shares, observed - shift
    as_large = np.abs(left) >= abs(here) - slack if two_sided else left >= here - slack
    return float(np.mean(as_large))


def _interval(
    differences: Array, shares: Array, observed: float, alpha: float, slack: float
) -> tuple[float, float] | None:
    """Both ends of the shifts that a two-sided test at alpha keeps; None where it keeps all."""
    ends = []
    for sign in (-1.0, 1.0):
        step = max(abs(observed), float(np.std(differences)), slack) or 1.0
        inner, outer = observed, observed + sign * step
        while _p_at(outer, differences, shares, observed, True, slack) > alpha:
            inner, step = outer, 2 * step
            outer = observed + sign * step
            if step > 1e9 * (abs(observed) + float(np.std(differences)) + slack):
                return None
        for _ in range(60):
            middle = (inner + outer) / 2
            if _p_at(middle, differences, shares, observed, True, slack) > alpha:
                inner = middle
            else:
                outer = middle
        ends.append((inner + outer) / 2)
    return ends[0], ends[1]
