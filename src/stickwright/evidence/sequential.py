"""Looking before the end without fooling oneself: limits that keep the chance of a false alarm."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray

__all__ = ["always_valid_half_width", "boundaries", "chance_of_crossing", "spending_boundaries"]

Array = NDArray[np.float64]
Kind = Literal["constant", "falling"]
_NODES = 200
_FAR = 9.0


def boundaries(looks: int, kind: Kind = "falling", alpha: float = 0.05) -> Array:
    """How large |z| must be at each of equally spaced looks to stop.

    Parameters
    ----------
    looks : int
        At most so many, the last at the planned end.
    kind : {"falling", "constant"}
        Hard to stop early, nearly the usual limit at the end [obrien-fleming-1979]; or the same at each look [pocock-1977].
    alpha : float, default 0.05
        Chance of stopping at any of them by chance, both sides.

    Returns
    -------
    array, shape (looks,)

    Examples
    --------
    >>> boundaries(4).round(4).tolist()
    [4.0486, 2.8628, 2.3375, 2.0243]
    """
    from scipy.optimize import brentq

    share = np.arange(1, looks + 1) / looks
    shape = np.ones(looks) if kind == "constant" else 1 / np.sqrt(share)
    size = brentq(
        lambda one: chance_of_crossing(tuple((one * shape).tolist()), tuple(share.tolist()))[-1] - alpha,
        1.0,
        6.0,
        xtol=1e-9,
    )
    return np.asarray(size * shape)


def spending_boundaries(share: Sequence[float], alpha: float = 0.05) -> Array:
    """The same for looks at any shares of the planned trials, by the chance that may be spent until then.

    Parameters
    ----------
    share : sequence of float
        Of the planned trials at each look, rising, the last at most 1.
    alpha : float, default 0.05
        Both sides.

    Notes
    -----
    Each side spends 2 - 2 Phi(z / sqrt(share)) of its half, z that of a quarter of alpha [lan-demets-1983]: alike to the falling limits.

    Examples
    --------
    >>> spending_boundaries([0.25, 0.5, 0.75, 1.0]).round(3).tolist()
    [4.333, 2.963, 2.359, 2.014]
    """
    from scipy.optimize import brentq
    from scipy.stats import norm

    spent = [2 * (2 - 2 * float(norm.cdf(float(norm.ppf(1 - alpha / 4)) / math.sqrt(one)))) for one in share]
    found: list[float] = []
    for look, target in enumerate(spent):
        until = tuple(share[: look + 1])

        def over(limit: float, until: tuple[float, ...] = until, target: float = target) -> float:
            return chance_of_crossing((*found, limit), until)[-1] - target

        found.append(float(brentq(over, 0.5, 12.0, xtol=1e-10)))
    return np.array(found)


@cache
def chance_of_crossing(limits: tuple[float, ...], share: tuple[float, ...]) -> tuple[float, ...]:
    """Chance of having crossed either limit by each look, without any difference.

    Parameters
    ----------
    limits, share : tuple of float
        |z| that stops, and the share of the planned trials, at each look.

    Notes
    -----
    The distribution of what has not crossed yet, carried from look to look by Gauss and Legendre's rule [armitage-1969].

    Examples
    --------
    >>> [round(one, 6) for one in chance_of_crossing((1.96, 1.96), (0.5, 1.0))]
    [0.049996, 0.083111]
    """
    from scipy.stats import norm

    nodes, weights = np.polynomial.legendre.leggauss(_NODES)
    inside: list[float] = []
    at, density, before = np.zeros(1), np.ones(1), 0.0
    for limit, now in zip(limits, share, strict=True):
        wide = min(limit, _FAR) * math.sqrt(now)  # in units of the score, whose variance is the share
        step = math.sqrt(now - before)
        here = wide * nodes
        inside.append(float((density * (norm.cdf((wide - at) / step) - norm.cdf((-wide - at) / step))).sum()))
        density = wide * weights * (norm.pdf((here[:, None] - at[None, :]) / step) / step @ density)
        at, before = here, now
    return tuple(1 - one for one in inside)


def always_valid_half_width(n: int, sd: float, *, alpha: float = 0.05, rho: float = 10.0) -> float:
    """Half width about the mean of n trials that holds at every n at once, so that one may stop whenever it is clear.

    Parameters
    ----------
    n : int
        Trials so far.
    sd : float
        Of one trial, known or an upper limit; half the range for a measure between limits.
    alpha : float, default 0.05
        Chance that it ever fails.
    rho : float, default 10
        Trials about which it is narrowest.

    Notes
    -----
    Normal mixture [robbins-1970] [howard-2021]. Wider than the interval for an n set beforehand.

    Examples
    --------
    >>> round(always_valid_half_width(100, 1.0), 6)
    0.303781
    """
    return sd / n * math.sqrt((n + rho) * math.log((n + rho) / (rho * alpha**2)))
