"""How far links and bases stay from boxes that nothing may enter, exactly for each tilt and over a whole range of tilts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.model.room import KeepOut, Room
from stickwright.mounting.frames import pivot_of, tilt_steps_rad, tilted, tilts_with_seat

__all__ = ["Boxes", "boxes_seen_from", "clearances_m", "segment_box_m"]

Array = NDArray[np.float64]
TILT_STEP_RAD = np.pi / 180
ROUNDING_M = 1e-9
"""So that what is surely far enough still is once the slack has been taken off again."""


def segment_box_m(start_m: Array, end_m: Array, low_m: Array, high_m: Array) -> Array:
    """Shortest distance between each segment and each box.

    Along a segment the squared distance to a box is convex; its slope rises in straight pieces that break where the segment
    crosses a plane of a face. The piece in which the slope changes its sign gives the nearest point without any search.

    Parameters
    ----------
    start_m, end_m : array, shape (n, 3)
        Ends of the segments, in metres.
    low_m, high_m : array, shape (k, 3)
        Corners of the boxes, their sides along the axes.

    Returns
    -------
    array, shape (n, k)
        0 where a segment touches or enters a box.

    Examples
    --------
    >>> start, end = np.array([[-1.0, 0.5, 1.3]]), np.array([[2.0, 0.5, 1.3]])
    >>> print(segment_box_m(start, end, np.zeros((1, 3)), np.ones((1, 3))).round(9))
    [[0.3]]
    """
    way = end_m - start_m
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):  # hardly any way along an axis is none
        to_low = (low_m[None] - start_m[:, None]) / way[:, None]
        to_high = (high_m[None] - start_m[:, None]) / way[:, None]
    ends = np.broadcast_to(np.array([0.0, 1.0]), (*to_low.shape[:2], 2))
    breaks = np.concatenate([ends, to_low, to_high], axis=2)
    breaks = np.sort(np.clip(np.nan_to_num(breaks, nan=0.0, posinf=1.0, neginf=0.0), 0.0, 1.0), axis=2)
    slope = np.zeros_like(breaks)
    for axis in range(3):
        at = start_m[:, None, None, axis] + breaks * way[:, None, None, axis]
        slope += (at - np.clip(at, low_m[None, :, None, axis], high_m[None, :, None, axis])) * way[:, None, None, axis]
    falling = np.sum(slope[:, :, 1:] < 0.0, axis=2)[
        ..., None
    ]  # the slope is monotone: so many breaks lie before the nearest point
    before, after = (
        np.take_along_axis(slope, falling, 2)[..., 0],
        np.take_along_axis(slope, np.minimum(falling + 1, 7), 2)[..., 0],
    )
    left, right = (
        np.take_along_axis(breaks, falling, 2)[..., 0],
        np.take_along_axis(breaks, np.minimum(falling + 1, 7), 2)[..., 0],
    )
    rise = after - before
    share = np.clip(np.where(rise > 0.0, -before / np.where(rise > 0.0, rise, 1.0), 0.0), 0.0, 1.0)
    nearest = start_m[:, None] + (left + share * (right - left))[..., None] * way[:, None]
    off = nearest - np.clip(nearest, low_m[None], high_m[None])
    return np.asarray(np.sqrt(np.einsum("nkx,nkx->nk", off, off)), dtype=np.float64)


@dataclass(frozen=True)
class Boxes:
    """Keep-outs as one thing that holds still sees them.

    Parameters
    ----------
    names : tuple of str
        Of the keep-outs.
    low_m, high_m : array, shape (k, 3)
        Corners, each in its own frame.
    tilts_rad : array, shape (t,)
        Turns that bring a point into the frame of the boxes; a single 0 for those that move with it.
    pivot_m : tuple of 3 floats
        Of the tilt axis.
    step_rad : float
        Between two of the turns; 0 when there is but one.
    """

    names: tuple[str, ...]
    low_m: Array
    high_m: Array
    tilts_rad: Array
    pivot_m: tuple[float, float, float]
    step_rad: float


def boxes_seen_from(room: Room, seat: bool) -> tuple[Boxes, ...]:
    """Keep-outs of a room as seen from what moves with the seat, or from what does not.

    Parameters
    ----------
    room : Room
    seat : bool
        Whether the one who looks tilts with the seat.

    Returns
    -------
    tuple of Boxes
        Those that move alike, and those that the tilt carries past.
    """
    pivot, _ = pivot_of(room)
    tilts = tilt_steps_rad(room, TILT_STEP_RAD)
    step = float(tilts[1] - tilts[0]) if len(tilts) > 1 else 0.0
    alike = [box for box in room.keep_out if tilts_with_seat(box.moves_with) is seat]
    other = [box for box in room.keep_out if tilts_with_seat(box.moves_with) is not seat]
    groups = ((alike, np.zeros(1), 0.0), (other, tilts if seat else -tilts, step))
    return tuple(_boxes(some, turns, pivot, apart) for some, turns, apart in groups if some)


def _boxes(some: Sequence[KeepOut], turns: Array, pivot: tuple[float, float, float], step: float) -> Boxes:
    corners = np.array([[box.low_m, box.high_m] for box in some], dtype=np.float64)
    return Boxes(tuple(box.name for box in some), corners.min(axis=1), corners.max(axis=1), turns, pivot, step)


def clearances_m(
    start_m: Array, end_m: Array, boxes: Sequence[Boxes], enough_m: float = np.inf
) -> tuple[Array, tuple[str, ...]]:
    """Clearance of each segment from each keep-out, over all tilts.

    Between two tilts that are looked at, a point moves on by its distance from the axis times the angle between them; half
    of that is taken off, so that nothing comes nearer in between.

    Parameters
    ----------
    start_m, end_m : array, shape (n, 3)
        Ends of the segments.
    boxes : sequence of Boxes
        As seen from what the segments move with.
    enough_m : float, default infinity
        Distances that are surely larger are given as this one, without being worked out.

    Returns
    -------
    tuple of (array, shape (n, k); names of the k keep-outs)
        In metre.
    """
    columns: list[Array] = []
    names: list[str] = []
    for group in boxes:
        axis = np.asarray(group.pivot_m)[1:]
        radius = np.maximum(np.hypot(*(start_m[:, 1:] - axis).T), np.hypot(*(end_m[:, 1:] - axis).T))
        between = 0.5 * group.step_rad * radius[:, None]
        ample = enough_m + float(between.max(initial=0.0)) + ROUNDING_M
        start = np.concatenate([tilted(start_m, float(turn), group.pivot_m) for turn in group.tilts_rad])
        end = np.concatenate([tilted(end_m, float(turn), group.pivot_m) for turn in group.tilts_rad])
        each = _distances(start, end, group, ample).reshape(len(group.tilts_rad), len(start_m), len(group.names))
        found = each.min(axis=0)
        found = np.clip(found - between, 0.0, enough_m)
        columns.append(found)
        names.extend(group.names)
    joined = np.concatenate(columns, axis=1) if columns else np.empty((len(start_m), 0))
    return joined, tuple(names)


def _distances(start: Array, end: Array, group: Boxes, enough_m: float) -> Array:
    """Distances to each box; the exact ones only where the middle of a segment is not further off than could matter."""
    if not np.isfinite(enough_m):
        return segment_box_m(start, end, group.low_m, group.high_m)
    middle, half = 0.5 * (start + end), 0.5 * np.linalg.norm(end - start, axis=1)
    found = np.full((len(start), len(group.names)), enough_m)
    off = middle[:, None] - np.clip(middle[:, None], group.low_m, group.high_m)
    near = np.einsum("nkx,nkx->nk", off, off) < (half[:, None] + enough_m) ** 2
    for box in range(len(group.names)):
        some = np.flatnonzero(near[:, box])
        if len(some):
            one = slice(box, box + 1)
            exact = segment_box_m(start[some], end[some], group.low_m[one], group.high_m[one])[:, 0]
            found[some, box] = np.minimum(exact, enough_m)
    return found
