"""The samples of each rest, and those of them that count as independent: what a dead zone is worked out from."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.trace.release import settled
from stickwright.trace.rest import rest_stretches
from stickwright.trace.return_to_centre import effective_count
from stickwright.trace.sensing import runs
from stickwright.trace.stamps import on_grid

__all__ = ["RestSamples", "independent", "rest_samples", "rests_of"]


def rest_samples(
    times_s: NDArray[np.float64], xy: NDArray[np.float64], cue: NDArray[np.str_] | None = None
) -> NDArray[np.float64]:
    """Rest samples far enough apart to count as independent, for a dead zone.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    xy : array, shape (n, 2)
        Output; rows with NaN are left out.
    cue : array of str, shape (n,), or None
        What was asked; without 'rest' in it rest is found by stillness.

    Returns
    -------
    array, shape (k, 2)
        Every m-th sample of each rest, m its length over the number of independent readings it is worth, rounded. Empty
        when there is no rest.

    Notes
    -----
    Independent within a rest. Where the stick comes home to a different place after each release, only as many
    places were seen as there were releases: `rest_report` says so.

    Examples
    --------
    >>> rng = np.random.default_rng(1)
    >>> times_s = np.arange(2000) / 100
    >>> slow = np.cumsum(rng.normal(0, 0.001, (2000, 2)), axis=0)
    >>> len(rest_samples(times_s, slow, np.full(2000, "rest"))) < 60
    True
    """
    return independent(rests_of(times_s, xy, cue).samples)


def independent(rests: Sequence[NDArray[np.float64]]) -> NDArray[np.float64]:
    """Samples of each rest that are far enough apart to count as independent.

    Parameters
    ----------
    rests : sequence of array, shape (n, 2)
        As `rests_of` gives them.

    Returns
    -------
    array, shape (k, 2)
        As `rest_samples`.

    Examples
    --------
    >>> len(independent([np.tile([[0.1, 0.0], [0.0, 0.1]], (20, 1))])), independent([]).shape
    (40, (0, 2))
    """
    kept = []
    for rest in rests:
        worth = min(effective_count(rest[:, 0]), effective_count(rest[:, 1]))
        kept.append(rest[:: max(1, round(len(rest) / worth))])
    return np.concatenate(kept) if kept else np.empty((0, 2))


class RestSamples(NamedTuple):
    """What was found of rest.

    Parameters
    ----------
    samples : list of array, shape (k, 2)
        One for each release; a gap parts two.
    asked : int
        How many rests were asked for; 0 when they were found by stillness.
    unsettled : int
        How many of those never settled and are not among the samples.
    """

    samples: list[NDArray[np.float64]]
    asked: int
    unsettled: int


def rests_of(times_s: NDArray[np.float64], xy: NDArray[np.float64], cue: NDArray[np.str_] | None = None) -> RestSamples:
    """The samples of each rest.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    xy : array, shape (n, 2)
        Output; rows with NaN are left out.
    cue : array of str, shape (n,), or None
        What was asked; without 'rest' in it rest is found by stillness.

    Returns
    -------
    RestSamples
        Their samples, and how many never settled.

    Examples
    --------
    >>> cue = np.repeat(["rest", "push", "rest"], 100)
    >>> found = rests_of(np.arange(300) / 100, np.zeros((300, 2)), cue)
    >>> [len(rest) for rest in found.samples], found.asked, found.unsettled
    ([100, 100], 2, 0)
    """
    usable = np.isfinite(xy).all(axis=1) & np.isfinite(times_s)
    times_s, xy = on_grid(times_s[usable]), xy[usable]
    asked = None if cue is None else cue[usable] == "rest"
    if len(times_s) < 2:
        return RestSamples([], 0, 0)
    edges = np.flatnonzero(np.diff(times_s) > max(0.25, 3 * float(np.median(np.diff(times_s))))) + 1
    pieces = list(pairwise([0, *edges.tolist(), len(times_s)]))
    if asked is None or not asked.any():
        spans = [(a + c, a + d) for a, b in pieces for c, d in rest_stretches(times_s[a:b], xy[a:b])]
        return RestSamples([xy[a:b] for a, b in spans], 0, 0)
    wanted = [(a + c, a + d) for a, b in pieces for c, d in runs(asked[a:b]).tolist()]
    found = [span for span in settled(times_s, xy, wanted) if span is not None]
    return RestSamples([xy[a:b] for a, b in found], len(wanted), len(wanted) - len(found))
