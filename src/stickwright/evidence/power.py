"""How many trials show which difference, from the player's own spread."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.evidence.designs import Design

__all__ = ["chance_to_show", "false_alarm_share"]

Array = NDArray[np.float64]
_ORDERS = 4_000
_ALIKE = 1e-9


def chance_to_show(
    design: Design,
    difference: float,
    sd: float,
    *,
    alpha: float = 0.05,
    neighbours: float = 0.0,
    practice: float = 0.0,
    studies: int = 2000,
    seed: int = 0,
) -> Estimate:
    """In how many of such trials a true difference would be shown by the randomisation test.

    Parameters
    ----------
    design : Design
    difference : float
        True mean of B less A, in the measure's unit.
    sd : float
        Of one trial about its set-up's mean, same unit.
    alpha : float, default 0.05
        Two-sided.
    neighbours : float, default 0
        Correlation of a trial's error with the one before.
    practice : float, default 0
        Change of the measure from the first trial to the last by practice alone, same unit, falling off with the logarithm of the number.
    studies : int, default 2000
        Simulated.
    seed : int, default 0

    Returns
    -------
    Estimate
        A share, with the interval of the simulation.

    Examples
    --------
    >>> from stickwright.evidence.designs import Alternating
    >>> found = chance_to_show(Alternating(3, 3), 10.0, 1.0, studies=200)
    >>> found.value  # three of each can never reach 5%
    0.0
    """
    rng = np.random.default_rng(seed)
    drawn = design.drawn(rng, studies)
    errors = rng.normal(0, sd, (studies, design.trials))
    for trial in range(1, design.trials):
        errors[:, trial] = neighbours * errors[:, trial - 1] + np.sqrt(1 - neighbours**2) * errors[:, trial]
    course = np.log(np.arange(1.0, design.trials + 1))
    values = errors + difference * drawn + practice * course / (course[-1] or 1.0)
    shown = _p_values(design, values, drawn, rng) <= alpha + _ALIKE
    count = int(shown.sum())
    low, high = _wilson(count, studies)
    return Estimate(count / studies, low, high, n=studies)


def false_alarm_share(
    design: Design, *, alpha: float = 0.05, neighbours: float = 0.0, studies: int = 2000, seed: int = 0
) -> Estimate:
    """The same without any difference: at most alpha for any design that was truly drawn by lot.

    Parameters
    ----------
    design, alpha, neighbours, studies, seed
        As in `chance_to_show`.

    Examples
    --------
    >>> from stickwright.evidence.designs import Pairs
    >>> false_alarm_share(Pairs(6), studies=400).value < 0.08
    True
    """
    return chance_to_show(design, 0.0, 1.0, alpha=alpha, neighbours=neighbours, studies=studies, seed=seed)


def _p_values(design: Design, values: Array, drawn: NDArray[np.bool_], rng: np.random.Generator) -> Array:
    """Two-sided p of each study; all orders where they are few, else one sample for all."""
    exact = design.count() <= _ORDERS
    orders = np.array(list(design.orders()) if exact else design.drawn(rng, _ORDERS), dtype=np.float64)
    slack = _ALIKE * np.ptp(values, axis=1)
    seen = np.abs(_mean_difference(values, drawn.astype(np.float64)))
    in_b = values @ orders.T
    of_b = orders.sum(axis=1)
    others = np.abs(in_b / of_b - (values.sum(axis=1)[:, None] - in_b) / (design.trials - of_b))
    as_large = (others >= (seen - slack)[:, None]).sum(axis=1)
    return np.asarray(as_large / len(orders) if exact else (as_large + 1) / (len(orders) + 1))


def _mean_difference(values: Array, is_b: Array) -> Array:
    in_b, of_b = (values * is_b).sum(axis=1), is_b.sum(axis=1)
    return np.asarray(in_b / of_b - (values.sum(axis=1) - in_b) / (values.shape[1] - of_b))


def _wilson(count: int, of: int) -> Sequence[float]:
    from scipy.stats import binomtest

    ends = binomtest(count, of).proportion_ci(method="wilson")
    return float(ends.low), float(ends.high)
