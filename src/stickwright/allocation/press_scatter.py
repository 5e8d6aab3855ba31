"""How far the rate of unintended presses may lie above the best single figure, by the scatter of what was read or assumed."""

from __future__ import annotations

import functools
import math
from collections.abc import Sequence
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from stickwright.mechanics import capability as cap
from stickwright.mechanics.fit import ALWAYS, spasms_above_per_min
from stickwright.model.parts import USUAL_FACTOR
from stickwright.model.player import Site

__all__ = ["TYPED_FACTORS", "USUAL_SPREAD", "most_crossings_per_min", "most_spasms_per_min", "repeat_factors"]

Array = NDArray[np.float64]
_NODES = tuple((place + 0.5) / 60 for place in range(60))
"""Middles of sixty equally likely parts."""
_NORMAL = np.array([NormalDist().inv_cdf(node) for node in _NODES])
USUAL_SPREAD: tuple[float, ...] = tuple(np.exp(math.log(USUAL_FACTOR) / 1.96 * _NORMAL).tolist())
"""Times a usual figure of a part."""
TYPED_FACTORS: tuple[float, ...] = tuple(np.exp(0.10 * _NORMAL).tolist())
"""Times an rms that was given as one figure: a tenth either way, as where a stick is judged."""


def repeat_factors(values: Sequence[float]) -> tuple[float, ...]:
    """Times the mean of readings, at the middles of sixty equally likely parts of its distribution.

    Parameters
    ----------
    values : sequence of float
        Repeats of one reading, one or more.

    Notes
    -----
    As for the resting force on a stick: the scatter is the readings' own, moderated by the assumed one with its few degrees of
    freedom [smyth-2004]; Student's t.

    Examples
    --------
    >>> factors = repeat_factors((0.10, 0.11, 0.09))
    >>> factors[0] < 0.9 < 1.1 < factors[-1]
    True
    """
    data = np.asarray(values, dtype=np.float64)
    middle = float(data.mean())
    if middle <= 0:
        return (1.0,)
    df, prior = len(data) - 1, cap.ASSUMED_SCATTER_DF
    own = df * float((data / middle).var(ddof=min(df, 1)))
    scatter = math.sqrt((prior * cap.ASSUMED_SCATTER**2 + own) / (prior + df))
    factors: list[float] = np.exp(scatter / math.sqrt(len(data)) * _student(prior + df)).tolist()
    return tuple(factors)


@functools.cache
def _student(df: float) -> Array:
    from scipy import stats

    values: Array = stats.t.ppf(_NODES, df)
    return values


def most_crossings_per_min(
    threshold_n: float, rest_n: Sequence[float], involuntary_n: Sequence[float], crossing_hz: float
) -> float:
    """Rate of unintended presses that is passed in 2.5 % of all pairs of resting force and involuntary force.

    Parameters
    ----------
    threshold_n : float
        Operating force.
    rest_n, involuntary_n : sequence of float
        Equally likely figures of each; independent.
    crossing_hz : float

    Notes
    -----
    For each pair the rate of `stickwright.allocation.pressed.crossings_per_min` [rice-1944].
    """
    above = threshold_n - np.asarray(rest_n)[:, None]
    shaken = np.asarray(involuntary_n)[None, :]
    sds = above / np.where(shaken > 0, shaken, 1.0)
    rate = 60 * crossing_hz * np.exp(-0.5 * sds * sds)
    rate = np.where(sds < 1, ALWAYS, rate)
    rate = np.where(shaken > 0, rate, np.where(above > 0, 0.0, ALWAYS))
    return float(np.quantile(rate, 0.975))


def most_spasms_per_min(
    site: Site, force_n: float, player_spasms_per_s: float | None, *, proximity: bool
) -> float | None:
    """Spasms a minute in which a part may press: all of them where it was not tried, unless all that were read are weaker.

    Parameters
    ----------
    site : Site
    force_n : float
        To operate what is pressed.
    player_spasms_per_s : float or None
        Rate of the player's spasms, for a site that has none of its own.
    proximity : bool
        Whether no force is needed.

    Returns
    -------
    float or None
        None with spasms that nobody counted.
    """
    tried = None if site.press is None else site.press.fires_with_spasm_share
    rate = player_spasms_per_s if site.spasm is None else site.spasm.rate_per_s
    if tried is not None:
        return None if rate is None else 60 * rate * tried
    if site.spasm is not None and len(site.spasm.peak_n) > 1 and not proximity:
        return float(spasms_above_per_min(np.array(force_n), 60 * site.spasm.rate_per_s, site.spasm.peak_n))
    return 60 * (rate or 0.0)
