"""One effect size of several players who each tried A and then B."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.evidence import Evidence
from stickwright.codes.message import message

__all__ = ["BetweenPlayers", "between_players", "small_sample_factor"]

Array = NDArray[np.float64]


@dataclass(frozen=True)
class BetweenPlayers:
    """Difference of B from A in units of the spread among and within players.

    Parameters
    ----------
    size : Estimate
        Corrected for few players, with its interval.
    difference : float
        Mean change, in the measure's unit.
    within_sd, between_sd : float
        Of one trial about its player's mean, and of players about each other.
    degrees : float
        Of freedom of the spread.
    """

    size: Estimate
    difference: float
    within_sd: float
    between_sd: float
    degrees: float


def small_sample_factor(degrees: float) -> float:
    """What an effect size is too large by with few degrees of freedom [hedges-1981].

    Parameters
    ----------
    degrees : float
        Above 1/4.

    Examples
    --------
    >>> round(small_sample_factor(164.492271), 6)
    0.995434
    """
    return 1 - 3 / (4 * degrees - 1)


def between_players(players: Sequence[tuple[Sequence[float], Sequence[float]]]) -> BetweenPlayers | None:
    """The effect size that a study of groups would have found.

    Parameters
    ----------
    players : sequence of (a, b)
        The measure in each player's trials, missed ones left out; two or more of each.

    Returns
    -------
    BetweenPlayers or None
        None with fewer than three players, too few trials, or no spread at all.

    Notes
    -----
    Players at random about a common mean, one change for all, trials independent: components by analysis of variance, degrees of the
    total spread by Satterthwaite, corrected as in [hedges-2012]. One player has no such figure. Trials that lean on their neighbours
    make the interval too narrow.

    Examples
    --------
    >>> found = between_players([([3, 4, 3, 5], [7, 8, 7, 9]), ([5, 6, 6, 5], [9, 9, 10, 8]), ([2, 3, 2, 3], [5, 7, 6, 6])])
    >>> round(found.size.value, 6), round(found.degrees, 6)
    (1.605155, 3.010318)
    """
    from scipy.optimize import brentq
    from scipy.stats import nct

    if len(players) < 3 or min(min(len(a), len(b)) for a, b in players) < 2:
        return None
    value = np.concatenate([np.asarray([*a, *b], dtype=np.float64) for a, b in players])
    is_b = np.concatenate([np.r_[np.zeros(len(a)), np.ones(len(b))] for a, b in players])
    who = np.repeat(np.arange(len(players)), [len(a) + len(b) for a, b in players])
    counts = np.bincount(who).astype(np.float64)
    centred_b = is_b - (np.bincount(who, is_b) / counts)[who]
    centred = value - (np.bincount(who, value) / counts)[who]
    across = float(centred_b @ centred_b)
    change = float(centred_b @ centred) / across
    left = centred - change * centred_b
    m, n = len(players), len(value)
    within = float(left @ left) / (n - m - 1)
    means = np.bincount(who, value - change * is_b) / counts
    usual = (n - float((counts**2).sum()) / n) / (m - 1)
    among = float((counts * (means - np.average(means, weights=counts)) ** 2).sum()) / (m - 1)
    between = max(0.0, (among - within) / usual)
    total = between + within
    if total <= 0:
        return None
    spread_of_total = 2 * (among / usual) ** 2 / (m - 1) + 2 * (within * (1 - 1 / usual)) ** 2 / (n - m - 1)
    degrees = 2 * total**2 / spread_of_total
    size = change / math.sqrt(total)
    factor = small_sample_factor(degrees)
    theta = math.sqrt(within / across / total)
    seen = size / theta

    def end(chance: float) -> float:
        return theta * float(brentq(lambda one: float(nct.cdf(seen, degrees, one)) - chance, seen - 40, seen + 40))

    try:
        low, high = end(0.975), end(0.025)
        estimate = Estimate(factor * size, factor * low, factor * high, n=n)
    except ValueError:  # the search leaves what the distribution can be worked out for
        estimate = Estimate.unbounded(factor * size, message(Evidence.too_few_players), n=n)
    return BetweenPlayers(estimate, change, math.sqrt(within), math.sqrt(between), degrees)
