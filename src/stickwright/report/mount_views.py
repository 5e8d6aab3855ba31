"""Two views of a room: from above with forward up the page, and from the player's right with forward to the right."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright.codes.mount_poses import End
from stickwright.model.mounting import Dimension, SiteMount
from stickwright.model.room import Room
from stickwright.report.mount_shapes import DrawnBody, Point, dimension_ends

__all__ = ["DimensionLine", "Spot", "Way", "bounds", "clipped_polygon", "dimension_lines", "flat", "hatch", "hull"]

Way = Literal["above", "right"]
Spot = tuple[float, float]
_LEAST_M = 0.002  # nearer than that two points are one on paper; the table has it


def flat(point: Point, view: Way) -> Spot:
    """A point as a view shows it: to the right on paper, up on paper; metre.

    Parameters
    ----------
    point : tuple of float
        In the body frame.
    view : {"above", "right"}
        From where it is seen.

    Examples
    --------
    >>> flat((0.1, 0.2, 0.3), "above"), flat((0.1, 0.2, 0.3), "right")
    ((0.1, 0.2), (0.2, 0.3))
    """
    return (point[0], point[1]) if view == "above" else (point[1], point[2])


def hull(spots: Iterable[Spot]) -> list[Spot]:
    """The outline of a convex body from its corners, anticlockwise.

    Parameters
    ----------
    spots : iterable of tuple of float
        Corners as a view shows them.

    Examples
    --------
    >>> hull([(0, 0), (1, 0), (0.5, 0.5), (1, 1), (0, 1)])
    [(0, 0), (1, 0), (1, 1), (0, 1)]
    """
    told = sorted(set(spots))

    def half(points: Sequence[Spot]) -> list[Spot]:
        out: list[Spot] = []
        for x, y in points:
            while len(out) > 1:
                (ax, ay), (bx, by) = out[-2], out[-1]
                if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 1e-12:
                    break
                out.pop()
            out.append((x, y))
        return out

    if len(told) < 3:
        return told
    lower, upper = half(told), half(told[::-1])
    return [*lower[:-1], *upper[:-1]]


def clipped_polygon(spots: Sequence[Spot], low: Spot, high: Spot) -> list[Spot]:
    """What of a convex outline lies in a window.

    Parameters
    ----------
    spots : sequence of tuple of float
        The outline.
    low, high : tuple of float
        Corners of the window.

    Examples
    --------
    >>> clipped_polygon([(0, 0), (4, 0), (4, 4), (0, 4)], (1, 1), (2, 3))
    [(1.0, 3.0), (1.0, 1.0), (2.0, 1.0), (2.0, 3.0)]
    """
    out = list(spots)
    for axis, limit, sign in ((0, low[0], 1), (0, high[0], -1), (1, low[1], 1), (1, high[1], -1)):
        kept: list[Spot] = []
        for start, end in zip(out[-1:] + out[:-1], out, strict=True):
            a, b = sign * (start[axis] - limit), sign * (end[axis] - limit)
            if (a < 0) != (b < 0):
                share = a / (a - b)
                kept.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
            if b >= 0:
                kept.append((float(end[0]), float(end[1])))
        out = kept
    return out


def hatch(spots: Sequence[Spot], apart: float) -> list[tuple[Spot, Spot]]:
    """Lines at 45 degrees that fill a convex outline; lines of all outlines fall together.

    Parameters
    ----------
    spots : sequence of tuple of float
        The outline.
    apart : float
        Between the lines, measured along an axis; above 0.

    Examples
    --------
    >>> hatch([(0, 0), (2, 0), (2, 2), (0, 2)], 2.0)
    [((0.0, 2.0), (2.0, 0.0))]
    """
    sums = [x + y for x, y in spots]
    if len(spots) < 3:
        return []
    lines = []
    for number in range(math.floor(min(sums) / apart) + 1, math.ceil(max(sums) / apart)):
        level, cuts = number * apart, []
        for (ax, ay), (bx, by) in zip(spots, [*spots[1:], spots[0]], strict=True):
            a, b = ax + ay - level, bx + by - level
            if (a < 0) != (b < 0):
                share = a / (a - b)
                cuts.append((float(ax + share * (bx - ax)), float(ay + share * (by - ay))))
        if len(cuts) == 2 and cuts[0] != cuts[1]:
            first, last = sorted(cuts)
            lines.append((first, last))
    return lines


@dataclass(frozen=True)
class DimensionLine:
    """A distance as one view shows it.

    Parameters
    ----------
    start, end : tuple of float
        The landmark, and the point of the mount, in the view; metre.
    upright : bool
        Whether it is measured up the paper.
    distance_m : float
        What is written on it.
    to : {"base", "clamp"}
        Which point of the mount.
    """

    start: Spot
    end: Spot
    upright: bool
    distance_m: float
    to: End


def dimension_lines(mount: SiteMount, room: Room, view: Way) -> list[DimensionLine]:
    """The distances that a view shows: from above those along the floor, from the side those of height.

    Parameters
    ----------
    mount : SiteMount
        Its chosen mount's dimensions are drawn.
    room : Room
        With the landmarks.
    view : {"above", "right"}
        From where it is seen.
    """
    told: tuple[Dimension, ...] = mount.choice.dimensions if mount.choice is not None else ()
    lines = []
    for one in told:
        ends = dimension_ends(mount, room, one)
        if ends is None or one.distance_m < _LEAST_M or (ends[2] == 2) != (view == "right"):
            continue
        start, end, axis = ends
        lines.append(DimensionLine(flat(start, view), flat(end, view), axis != 0, one.distance_m, one.to))
    return lines


def bounds(shapes: Iterable[DrawnBody], view: Way) -> tuple[Spot, Spot]:
    """Least and most of all points of some bodies."""
    spots = [flat(point, view) for shape in shapes for point in shape.points]
    columns, rows = zip(*spots, strict=True)
    return (min(columns), min(rows)), (max(columns), max(rows))
