"""Balloons about a view: which number stands where, so that leaders are short, cover little and never cross."""

from __future__ import annotations

import itertools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linear_sum_assignment

__all__ = ["BALLOON_MM", "RING_MM", "Leader", "crosses", "leaders", "slots"]

Spot = tuple[float, float]
Array = NDArray[np.float64]
BALLOON_MM, RING_MM, _APART_MM = 3.0, 10.0, 7.6
"""Radius of a balloon, how far its middle stands off the view, and how far apart two are."""
_OVER, _LEVEL, _CUT, _BESIDE = (
    3.0,
    8.0,
    12.0,
    40.0,
)  # price of a leader over other parts, nearly level, cutting a line, touching a balloon
_NEARLY_RAD = math.radians(6.0)
_STEPS = 10


@dataclass(frozen=True)
class Leader:
    """From a balloon to what it numbers.

    Parameters
    ----------
    number : int
        In the balloon.
    slot : tuple of float
        Its middle; millimetre of paper.
    anchor : tuple of float
        Where the leader ends.
    """

    number: int
    slot: Spot
    anchor: Spot


def slots(low: Spot, high: Spot, least: int) -> list[Spot]:
    """Places for balloons above a view and at its right, as many as are wanted: the rows go on past the corner where they must.

    Parameters
    ----------
    low, high : tuple of float
        Left top and right bottom corner of what is drawn; millimetre, downwards.
    least : int
        So many at least.
    """
    (left, top), (right, bottom) = low, high
    up, across = top - RING_MM, right + RING_MM
    columns = max(1, int((right - left) / _APART_MM) + 1)
    rows = max(1, int((bottom - top) / _APART_MM) + 1)
    while columns + rows < least:
        columns, rows = columns + 1, rows + 1
    beside = (right - left - (columns - 1) * _APART_MM) / 2
    below = (bottom - top - (rows - 1) * _APART_MM) / 2
    above = [(left + beside + _APART_MM * place, up) for place in range(columns)]
    return [*above, *((across, top + below + _APART_MM * place) for place in range(rows))]


def crosses(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    """Whether two stretches have a point in common inside both.

    Examples
    --------
    >>> crosses((0, 0), (2, 2), (0, 2), (2, 0)), crosses((0, 0), (1, 1), (0, 2), (2, 0.5))
    (True, False)
    """

    def side(p: Spot, q: Spot, r: Spot) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def leaders(
    anchors: Mapping[int, Sequence[Spot]], places: Sequence[Spot], outlines: Mapping[int, Sequence[Sequence[Spot]]],
    lines: Sequence[tuple[Spot, Spot]] = (),
) -> list[Leader]:  # fmt: skip
    """A place for each number: the least sum of prices, then no two leaders crossed.

    Parameters
    ----------
    anchors : dict
        For each number, points of its part where a leader may end.
    places : sequence of tuple of float
        Where balloons may stand; at least as many as there are numbers.
    outlines : dict
        For each number, convex outlines of its part.
    lines : sequence of tuple
        Thin lines that leaders should not cut.

    Returns
    -------
    list of Leader
        By number.
    """
    numbers = sorted(anchors)
    if not numbers:
        return []
    prices, nearest = np.zeros((len(numbers), len(places))), {}
    at = np.asarray(places, dtype=np.float64)
    for row, number in enumerate(numbers):
        ends = np.asarray(anchors[number], dtype=np.float64)
        others = [one for other, told in outlines.items() if other != number for one in told]
        told = _prices(ends, at, others, lines)
        best = told.argmin(axis=0)
        prices[row] = told.min(axis=0)
        nearest[number] = [tuple(float(one) for one in ends[place]) for place in best]
    rows, columns = linear_sum_assignment(np.round(prices, 6))
    out = [
        Leader(numbers[row], places[column], nearest[numbers[row]][column])
        for row, column in zip(rows, columns, strict=True)
    ]
    return _uncrossed(out)


def _prices(ends: Array, at: Array, others: Sequence[Sequence[Spot]], lines: Sequence[tuple[Spot, Spot]]) -> Array:
    """Of each anchor with each place."""
    gap = at[None, :, :] - ends[:, None, :]
    length = np.hypot(gap[..., 0], gap[..., 1])
    turn = np.abs(np.arctan2(gap[..., 1], gap[..., 0])) % (math.pi / 2)
    level = np.minimum(turn, math.pi / 2 - turn) < _NEARLY_RAD
    shares = (np.arange(_STEPS) + 0.5) / _STEPS
    points = ends[:, None, None, :] + shares[:, None] * gap[:, :, None, :]
    over = np.zeros(length.shape)
    for outline in others:
        over += _inside(points, np.asarray(outline, dtype=np.float64)).mean(axis=2)
    price = length + _OVER * length * np.minimum(over, 2.0) + _LEVEL * level
    for start, end in lines:
        price += _CUT * _cut(ends, at, np.asarray(start), np.asarray(end))
    for other in at:
        along = np.clip(((other - ends[:, None, :]) * gap).sum(axis=2) / np.maximum(length, 1e-9) ** 2, 0.0, 1.0)
        off = ends[:, None, :] + along[..., None] * gap - other
        near = np.hypot(off[..., 0], off[..., 1]) < BALLOON_MM + 0.6
        price += _BESIDE * (near & (np.hypot(*(at - other).T)[None, :] > 0.1))
    return np.asarray(price)


def _inside(points: Array, outline: Array) -> NDArray[np.bool_]:
    """Whether points lie in a convex outline, whichever way round it runs."""
    if len(outline) < 3:
        return np.zeros(points.shape[:-1], dtype=bool)
    after = np.roll(outline, -1, axis=0)
    way = after - outline
    sides = way[:, 0] * (points[..., None, 1] - outline[:, 1]) - way[:, 1] * (points[..., None, 0] - outline[:, 0])
    return np.asarray((sides > 0).all(axis=-1) | (sides < 0).all(axis=-1))


def _cut(ends: Array, at: Array, start: Array, end: Array) -> NDArray[np.bool_]:
    def side(p: Array, q: Array, r: Array) -> Array:
        return np.asarray(
            (q[..., 0] - p[..., 0]) * (r[..., 1] - p[..., 1]) - (q[..., 1] - p[..., 1]) * (r[..., 0] - p[..., 0])
        )

    a, b = ends[:, None, :], at[None, :, :]
    return np.asarray((side(a, b, start) * side(a, b, end) < 0) & (side(start, end, a) * side(start, end, b) < 0))


def _uncrossed(told: list[Leader]) -> list[Leader]:
    """While two leaders cross, they swap their places: each swap makes the sum of lengths shorter, so it ends."""
    while True:
        pair = next(
            (
                (one, other)
                for one, other in itertools.combinations(range(len(told)), 2)
                if crosses(told[one].slot, told[one].anchor, told[other].slot, told[other].anchor)
            ),
            None,
        )
        if pair is None:
            return told
        one, other = pair
        told[one], told[other] = (
            Leader(told[one].number, told[other].slot, told[one].anchor),
            Leader(told[other].number, told[one].slot, told[other].anchor),
        )
