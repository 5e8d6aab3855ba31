"""Where the hand left the stick although something was asked: the stick's own movement, not the player's."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import message
from stickwright.codes.resting import Resting
from stickwright.model.recorded import Finding, RestReport
from stickwright.model.recording import Recording
from stickwright.trace.recording import Cleaned, cleaned
from stickwright.trace.rest import rest_report
from stickwright.trace.sensing import runs

__all__ = ["LOOKED_AT", "centre_of", "let_go", "while_held"]

LOOKED_AT = ("follow", "hold", "push")
NEAR = 0.05  # of full output: so near to the rest centre the stick may be at home
STILL = 0.01  # of full output: the mean of a tenth of a second moves no more than this to the next
BLOCK_S = 0.1
LEAST_S = 0.4  # so long at home before it counts as let go
AWAY = 0.15  # of full output: what was asked lies farther than this from the centre
FROM = 0.10  # of full output: a stick that is let go comes from as far out at least
SPRUNG_S = 0.3  # a stick that is let go is home within this; a hand that leads it there takes longer
BACK_S = 1.0  # at most so long the way back to what is asked may take


def let_go(clean: Cleaned, centre: tuple[float, float] | None) -> tuple[NDArray[np.bool_], list[Finding]]:
    """The samples while nobody held the stick, way home and way back included.

    Parameters
    ----------
    clean : Cleaned
        Usable samples.
    centre : (float, float) or None
        Rest centre; None where it is not known, and nothing can then be told.

    Returns
    -------
    array of bool, shape (n,)
        True where the stick was let go while following, holding or pushing was asked.
    list of Finding
        How often and how long, when it was.

    Notes
    -----
    Rule: within 5 % of full output of the rest centre, and still (0.1 s to the next by less than 1 %), for 0.4 s or more, while the
    target lay over 15 % away for half of that time at least; and come there within 0.3 s from over 10 % out, as a spring
    comes home and a hand seldom does. In following, also from the beginning, before the hand was put on. The way there and,
    but for pushes, the way back, at most 1 s, count with it. A player who pushes and moves nothing looks the same: the sentence says so.
    Waiting before a push or a hold is reaction, and is not let go. Common practice, no source.

    Examples
    --------
    >>> times_s = np.arange(400) / 100
    >>> xy = np.zeros((400, 2))
    >>> xy[:200, 0] = 0.5
    >>> cue_xy = np.tile([0.5, 0.0], (400, 1))
    >>> gone, (finding,) = let_go(cleaned(Recording("h.csv", times_s, xy, task="hold", cue_xy=cue_xy))[0], (0.0, 0.0))
    >>> int(gone.sum()), finding.about
    (200, 'let_go')
    """
    gone = np.zeros(len(clean.times_s), dtype=np.bool_)
    if centre is None or clean.cue_xy is None or clean.unit_is_foreign or not all(clean.recorded):
        return gone, []
    times = 0
    pieces = [(word, *piece) for word in LOOKED_AT for piece in clean.pieces(clean.asked(word))]
    for asked, start, stop in pieces:
        found = _let_go(clean, start, stop, np.asarray(centre), asked=asked)
        for first, last in found:
            gone[first:last] = True
        times += len(found)
    if not times:
        return gone, []
    seconds = float(gone.sum()) * clean.step_s
    share = gone.sum() / max(int(clean.asked(*LOOKED_AT).sum()), 1)
    text = message(Resting.let_go, times=times, away_s=seconds)
    return gone, [Finding("query" if share > 0.1 else "note", "let_go", text)]


def while_held(recording: Recording) -> tuple[Recording, list[Finding]]:
    """A recording without the samples while nobody held the stick: their cells are empty.

    Returns
    -------
    Recording
        The same one when the stick was never let go.
    list of Finding
        As `let_go`.
    """
    clean, _ = cleaned(recording)
    rest, _ = rest_report(clean)
    gone, found = let_go(clean, centre_of(rest, clean))
    if not gone.any():
        return recording, []
    nearest = np.searchsorted((clean.times_s[1:] + clean.times_s[:-1]) / 2, recording.times_s)
    return replace(recording, xy=np.where(gone[nearest][:, None], math.nan, recording.xy)), found


def centre_of(rest: RestReport | None, clean: Cleaned) -> tuple[float, float] | None:
    """Rest centre; zero output where no rest was seen, and unknown where the unit has no zero either."""
    if rest is None:
        return None if clean.unit_is_foreign else (0.0, 0.0)
    values = [offset.value if offset.value is not None else 0.0 for offset in (rest.offset_x, rest.offset_y)]
    return (values[0], values[1])


def _let_go(clean: Cleaned, start: int, stop: int, centre: NDArray[np.float64], *, asked: str) -> list[tuple[int, int]]:
    block = max(1, round(BLOCK_S / clean.step_s))
    if clean.cue_xy is None or stop - start < 3 * block:
        return []
    radius = np.hypot(*(clean.xy[start:stop] - centre).T)
    wanted = np.hypot(*(clean.cue_xy[start:stop] - centre).T)
    at_home = (radius <= max(NEAR * clean.scale, 2.5 * clean.step)) & _still(clean, start, stop, block)
    found = []
    for first, last in runs(at_home).tolist():
        if (last - first) * clean.step_s < LEAST_S:
            continue
        if np.mean(np.nan_to_num(wanted[first:last]) > AWAY * clean.scale) < 0.5:
            continue
        before = max(0, first - round(SPRUNG_S / clean.step_s))
        sprung = bool((radius[before:first] > FROM * clean.scale).any())
        if not sprung and not (asked == "follow" and first <= block):
            continue
        # A push begins at the centre: what leaves it is the push itself.
        back = last if asked == "push" else _back(clean, start, stop, last)
        found.append((start + _left(radius, before, first), start + back))
    return [(a, b) for a, b in _apart(found) if b > a]


def _still(clean: Cleaned, start: int, stop: int, block: int) -> NDArray[np.bool_]:
    """Samples within two blocks of 0.1 s whose means hardly differ."""
    sums = np.concatenate((np.zeros((1, 2)), np.cumsum(clean.xy[start:stop], axis=0)))
    means = (sums[block:] - sums[:-block]) / block
    slow = np.hypot(*(means[block:] - means[:-block]).T) <= max(STILL * clean.scale, 1.5 * clean.step)
    still = np.zeros(stop - start, dtype=np.bool_)
    for first, last in runs(slow).tolist():
        still[first : last + 2 * block - 1] = True
    return still


def _left(radius: NDArray[np.float64], before: int, first: int) -> int:
    """Where the way home begins: after the last sample that lies about as far out as any on the way there."""
    if first <= before:
        return first
    way = radius[before:first]
    return before + int(np.flatnonzero(way >= 0.95 * way.max())[-1]) + 1


def _back(clean: Cleaned, start: int, stop: int, last: int) -> int:
    """Where the way back ends: the first sample at which the stick comes no nearer to what is asked, at most 1 s on."""
    limit = min(stop - start, last + round(BACK_S / clean.step_s))
    if clean.cue_xy is None or last >= limit:
        return min(last, stop - start)
    error = np.hypot(*(clean.xy[start + last : start + limit] - clean.cue_xy[start + last : start + limit]).T)
    return last + int(np.nanargmin(error)) if np.isfinite(error).any() else last


def _apart(found: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Without overlaps: the way back of one ends where the next begins."""
    ends = [min(b, after) for (_, b), (after, _) in pairwise(found)]
    return [(a, b) for (a, _), b in zip(found, [*ends, *(found[-1][1:] if found else ())], strict=True)]
