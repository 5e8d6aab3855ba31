"""How much a kept position wanders, and how that grows with the push: what fits need of steadiness."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import message
from stickwright.trace.intervals import jackknife
from stickwright.trace.stamps import checked_columns, checked_times, stretches

__all__ = ["BLOCK_S", "growing_noise", "unsteadiness"]

Array = NDArray[np.float64]

BLOCK_S = 5.0
"""Wander slower than this is drift or a new posture, not unsteadiness: assumed."""


def unsteadiness(times_s: ArrayLike, xy: ArrayLike) -> Estimate:
    """Rms of a kept position per axis, about the mean of each block of `BLOCK_S`.

    Sway and tremor are both in it, unlike the rms about a tremor peak alone.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, increasing.
    xy : array, shape (n, 2)
        Output while the player keeps still; NaN rows are left out.

    Returns
    -------
    Estimate
        In the unit of `xy`; the interval leaves out one block at a time [tukey-1958], none below four blocks.
        NaN with a `why` when no block is full.

    Examples
    --------
    >>> times_s = np.arange(3000) / 100
    >>> shake = 0.02 * np.sqrt(2) * np.sin(2 * np.pi * 3 * times_s)
    >>> round(unsteadiness(times_s, np.column_stack([shake, shake])).value, 4)
    0.02
    """
    times = checked_times(times_s)
    values = checked_columns("xy", xy, len(times))
    squares = []
    for stretch in stretches(times, values):
        lasts = stretch.times_s[-1] - stretch.times_s[0]
        if lasts < 0.8 * BLOCK_S:
            continue
        edges = np.linspace(stretch.times_s[0], stretch.times_s[-1], max(1, round(lasts / BLOCK_S)) + 1)
        for start, stop in pairwise(np.searchsorted(stretch.times_s, edges)):
            block = stretch.values[start:stop]
            if len(block) >= 10:
                squares.append(np.mean(np.var(block, axis=0)))
    if not squares:
        return Estimate.missing(message(Intervals.no_block, block_s=BLOCK_S), n=0)
    each = np.array(squares)
    total = each.sum()
    without = np.sqrt((total - each) / (len(each) - 1)) if len(each) > 1 else np.zeros(0)
    return jackknife(float(np.sqrt(each.mean())), without, positive=True)


def growing_noise(push_n: ArrayLike, sd_n: ArrayLike) -> tuple[Estimate, Estimate]:
    """Unsteadiness split in a part that is always there and one that grows with the push.

    The variance of kept pushes is taken as ``always^2 + (share * push)^2``, neither below zero.

    Parameters
    ----------
    push_n : array, shape (k,)
        Push of each hold, newton.
    sd_n : array, shape (k,)
        Scatter of each hold, newton.

    Returns
    -------
    tuple of Estimate
        The part always there (N) and the share of the push; intervals leave out one hold at a time
        [tukey-1958]. NaN with a `why` from fewer than three holds or pushes that are all alike.

    Notes
    -----
    Source: noise growing with force [jones-2002]; least squares with no negative part
    (scipy.optimize.nnls).

    Examples
    --------
    >>> push = np.array([0.5, 1.0, 1.5, 2.0])
    >>> always, share = growing_noise(push, np.hypot(0.02, 0.05 * push))
    >>> round(always.value, 4), round(share.value, 4)
    (0.02, 0.05)
    """
    push, sd = np.asarray(push_n, dtype=float), np.asarray(sd_n, dtype=float)
    if len(push) < 3 or push.max() < 1.5 * push.min():
        why = message(Intervals.three_holds)
        return Estimate.missing(why, n=len(push)), Estimate.missing(why, n=len(push))
    always, share = _split(push, sd)
    left = [_split(np.delete(push, k), np.delete(sd, k)) for k in range(len(push))]
    return (
        jackknife(always, np.array([one[0] for one in left])),
        jackknife(share, np.array([one[1] for one in left])),
    )


def _split(push: Array, sd: Array) -> tuple[float, float]:
    from scipy.optimize import nnls

    weight = 1.0 / sd**2  # the error of a variance grows with it
    parts, _ = nnls(np.column_stack([weight, weight * push**2]), weight * sd**2)
    return float(np.sqrt(parts[0])), float(np.sqrt(parts[1]))
