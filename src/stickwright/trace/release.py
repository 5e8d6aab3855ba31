"""Where a rest that was asked for really begins: the hand needs time to let go, and the stick to come back.

A rest begins once the output lies about as near to where it ends up, and moves about as little, as it does
from then on. One that never gets there is no rest and counts for nothing.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import message
from stickwright.codes.resting import Resting
from stickwright.model.recorded import Finding

__all__ = ["LEAST_REST_S", "settled", "unsettled_finding"]

LEAST_REST_S = 0.4
"""A shorter quiet stretch is a pause in a movement, not a rest."""

SETTLE_S = 0.5
"""Least that is left out of the start of a rest of 1.5 s or more: time to react and let go; common practice."""

BLOCK_S = 0.1  # the movement from one such block to the next is the speed that is judged
OVER_S = 3.0  # a release is over by then; later wandering is the rest's own
STAYS_S = 0.2  # so long within the limits before it counts as settled
LONG_S = 1.5  # from here on the second half of a rest shows by itself what is usual in it
LEAST_LIMIT, MOST_LIMIT = 0.02, 0.10  # of full output: what counts as still at least; at most where no long rest tells
PUSHED = 0.25  # of full output beyond the limit: at the end of a rest, the next push that came early
HELD, LEAST_OTHERS = 0.25, 3  # so far (of full output) from the middle one of three rests or more it is still held
MARGIN, USUAL = 2.0, 0.75  # times the distance within which three samples of four of the end of the rest lie


def settled(
    times_s: NDArray[np.float64],
    xy: NDArray[np.float64],
    asked: Sequence[tuple[int, int]],
    *,
    scale: float = 1.0,
    step: float = 0.0,
) -> list[tuple[int, int] | None]:
    """The settled part of each rest that was asked for.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    xy : array, shape (n, 2)
        Output, finite.
    asked : sequence of (start, stop)
        Samples of each stretch in which rest was asked, without a gap; all of one recording, so that long rests can
        tell for the short ones how much this player moves at rest.
    scale : float, default 1.0
        Full output.
    step : float, default 0.0
        Step of the output.

    Returns
    -------
    list of (start, stop) or None
        Sample numbers, one for each stretch; None where the output never settled for 0.4 s.

    Notes
    -----
    Where it ends up: the median of the second half, at most from 3 to 6 s (of a rest under 1.5 s: of its last 0.4 s).
    Limit of the distance from there: twice what three samples of four keep to in that part, 2 % of full output at
    least; limit of the speed, between blocks of 0.1 s, likewise. A rest under 1.5 s is held to the limits of the middle
    one of the long rests, to its end; where there is none, to 10 % of full output. A push that comes before the rest is over is cut
    off its end. A later rest that lies more than 25 % of full output from the middle of three or more is still held.
    Common practice, no source.

    Examples
    --------
    >>> times_s = np.arange(400) / 100
    >>> xy = np.zeros((400, 2))
    >>> xy[:80, 0] = np.clip(1 - np.arange(80) / 80, 0, 1)
    >>> settled(times_s, xy, [(0, 400), (0, 85)])
    [(79, 400), None]
    """
    ends = [_end_of(times_s, xy, start, stop, step) for start, stop in asked]
    lasts = [0.0 if stop - start < 3 else float(times_s[stop - 1] - times_s[start]) for start, stop in asked]
    floor = np.array([max(LEAST_LIMIT * scale, 2.5 * step), max(LEAST_LIMIT / 2 * scale, 1.5 * step)])
    own = [np.maximum(floor, end[1]) for end in ends]
    long = [limits for limits, lasts_s in zip(own, lasts, strict=True) if lasts_s >= LONG_S]
    most = np.median(long, axis=0) if long else np.maximum(floor, MOST_LIMIT * scale * np.array([1.0, 0.5]))
    found: list[tuple[int, int] | None] = []
    for (start, stop), lasts_s, (centre, _), limits in zip(asked, lasts, ends, own, strict=True):
        if lasts_s < LEAST_REST_S:
            found.append(None)
            continue
        is_long = lasts_s >= LONG_S
        limits = limits if is_long else np.minimum(limits, most)
        away = xy[start:stop] - centre
        begins = _begins(times_s[start:stop], away, limits, to_the_end=not is_long)
        if begins is None:
            found.append(None)
            continue
        least_s = times_s[start] + (SETTLE_S if is_long else 0.0)
        first = max(start + begins, int(np.searchsorted(times_s[:stop], least_s - 1e-9)))
        last = start + int(np.flatnonzero(np.hypot(*away.T) <= limits[0] + PUSHED * scale)[-1]) + 1
        rests = last - first >= 3 and times_s[last - 1] - times_s[first] >= LEAST_REST_S
        found.append((first, last) if rests else None)
    return _let_go(xy, found, scale)


def _let_go(
    xy: NDArray[np.float64], found: list[tuple[int, int] | None], scale: float
) -> list[tuple[int, int] | None]:  # fmt: skip
    """Without those that lie far from the others, still held. The first stays: a stick leaned on when it was plugged in."""
    centres = {k: np.median(xy[span[0] : span[1]], axis=0) for k, span in enumerate(found) if span is not None}
    if len(centres) < LEAST_OTHERS:
        return found
    usual = np.median(list(centres.values()), axis=0)
    held = {k for k, centre in centres.items() if float(np.hypot(*(centre - usual))) > HELD * scale} - {min(centres)}
    return [None if k in held else span for k, span in enumerate(found)]


def _end_of(
    times_s: NDArray[np.float64], xy: NDArray[np.float64], start: int, stop: int, step: float
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Where a stretch ends up; the distances and the speeds that are usual there."""
    if stop - start < 3:
        return np.zeros(2), np.zeros(2)
    lasts_s = float(times_s[stop - 1] - times_s[start])
    from_s = times_s[start] + (min(lasts_s / 2, OVER_S) if lasts_s >= LONG_S else lasts_s - LEAST_REST_S)
    first, last = np.searchsorted(times_s[start:stop], [from_s - 1e-9, times_s[start] + 2 * OVER_S])
    end = xy[start + first : start + last]
    centre = np.median(end, axis=0)
    away, moved = np.hypot(*(end - centre).T), _speeds(end, _block(times_s[start:stop]))
    usual = [float(np.quantile(each, USUAL)) if len(each) else 0.0 for each in (away, moved)]
    return centre, MARGIN * np.array(usual) + step / 2


def _block(times_s: NDArray[np.float64]) -> int:
    return max(1, round(BLOCK_S * (len(times_s) - 1) / float(times_s[-1] - times_s[0])))


def _speeds(xy: NDArray[np.float64], block: int) -> NDArray[np.float64]:
    """How far the mean of the next 0.1 s lies from that of the 0.1 s before, at each sample between them."""
    sums = np.concatenate((np.zeros((1, 2)), np.cumsum(xy, axis=0)))
    means = (sums[block:] - sums[:-block]) / block
    return np.asarray(np.hypot(*(means[block:] - means[:-block]).T))


def _begins(
    times_s: NDArray[np.float64], away: NDArray[np.float64], limits: NDArray[np.float64], *, to_the_end: bool
) -> int | None:
    """The first moment that is near and slow, and stays so for 0.2 s (near to the end); None when there is none."""
    speed = _speeds(away, _block(times_s))
    if not len(speed):
        return None
    near: NDArray[np.bool_] = np.hypot(*away.T) <= limits[0]
    calm = near.copy()
    calm[: len(speed)] &= speed <= limits[1]  # of what comes next; the last blocks have none
    for first in np.flatnonzero(calm & ~np.concatenate(([False], calm[:-1]))).tolist():
        stays = int(np.searchsorted(times_s, times_s[first] + STAYS_S))
        if stays <= len(calm) and calm[first:stays].mean() >= 0.9 and (not to_the_end or near[first:].mean() >= 0.9):
            return int(first)
    return None


def unsettled_finding(unsettled: int, asked: int) -> list[Finding]:
    """That some rests, or all, never settled.

    Parameters
    ----------
    unsettled : int
        How many never did.
    asked : int
        Of how many that were asked for.

    Returns
    -------
    list of Finding
        None when all did; a fault when none did.

    Examples
    --------
    >>> [one.level for count in (0, 2, 3) for one in unsettled_finding(count, 3)]
    ['query', 'fault']
    """
    if not unsettled:
        return []
    text = message(Resting.unsettled, unsettled=unsettled, asked=asked)
    return [Finding("query" if unsettled < asked else "fault", "unsettled_rest", text)]
