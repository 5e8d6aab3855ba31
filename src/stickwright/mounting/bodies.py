"""What an arm may not pass through, beside keep-outs and what it carries: trays, tables, the floor, tubes, the parts at other sites.

Rules of this file: a link stays half its thickness away from all of them, over the whole range of tilts, as it does from what it
carries. Of what its clamp sits on, the length that the clamp takes is left out; beyond that the link keeps clear of it too.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.arm_reasons import ArmReasons
from stickwright.codes.message import Message, Name, message
from stickwright.errors import BadInput
from stickwright.model.player import Site
from stickwright.model.room import Edge, MovesWith, Room, Surface, Tube
from stickwright.mounting.carried import ASIDE_M, PART_M
from stickwright.mounting.clearance import TILT_STEP_RAD, Boxes, clearances_m
from stickwright.mounting.frames import pivot_of, tilt_steps_rad, tilted, tilts_with_seat
from stickwright.mounting.pose import placed
from stickwright.mounting.ranking import HALF_ARM_M

__all__ = ["BOARD_M", "CLAMP_M", "Bodies", "Rods", "bodies_of", "segments_apart_m", "unmeasured_boards"]

Array = NDArray[np.float64]
CLAMP_M = 0.050
"""Along the first link from the middle of what its clamp sits on: the clamp itself. Common practice, no source."""
BOARD_M = 0.020
"""Thickness of a tray or table that has no edge with one: common practice, no source."""
GROUND_M = (10.0, 1.0)
"""How far a floor goes on to each side, and down."""
_TOUCHES_M = 0.010
_ROUNDING_M = 1e-9


@dataclass(frozen=True)
class Rods:
    """Tubes and edges, as one thing that holds still sees them.

    Parameters
    ----------
    from_m, to_m : array, shape (k, 3)
    radius_m : array, shape (k,)
    tilts_rad, pivot_m, step_rad
        As of `Boxes`.
    """

    from_m: Array
    to_m: Array
    radius_m: Array
    tilts_rad: Array
    pivot_m: tuple[float, float, float]
    step_rad: float


def segments_apart_m(start_m: Array, end_m: Array, from_m: Array, to_m: Array) -> Array:
    """Shortest distance between each segment and each rod's middle line.

    The nearest points of two lines, cut back to the segments one after the other.

    Parameters
    ----------
    start_m, end_m : array, shape (n, 3)
    from_m, to_m : array, shape (k, 3)

    Returns
    -------
    array, shape (n, k)

    Examples
    --------
    >>> one = np.array([[0.0, 0.0, 0.0]]), np.array([[1.0, 0.0, 0.0]])
    >>> other = np.array([[0.5, -1.0, 0.3]]), np.array([[0.5, 1.0, 0.3]])
    >>> print(segments_apart_m(*one, *other).round(9))
    [[0.3]]
    """
    way, rod = (end_m - start_m)[:, None], (to_m - from_m)[None]
    off = start_m[:, None] - from_m[None]
    a, e = np.maximum((way * way).sum(-1), 1e-18), np.maximum((rod * rod).sum(-1), 1e-18)
    b, c, f = (way * rod).sum(-1), (way * off).sum(-1), (rod * off).sum(-1)
    spread = a * e - b * b
    skew = spread > 1e-12 * a * e
    s = np.where(skew, np.clip((b * f - c * e) / np.where(skew, spread, 1.0), 0.0, 1.0), 0.0)
    t = np.clip((b * s + f) / e, 0.0, 1.0)
    s = np.clip((b * t - c) / a, 0.0, 1.0)
    gap = off + s[..., None] * way - t[..., None] * rod
    return np.asarray(np.sqrt((gap * gap).sum(-1)), dtype=np.float64)


class BodyGroup(NamedTuple):
    """Bodies that move alike, and what each of them is."""

    bodies: Boxes | Rods
    what: tuple[Message, ...]


@dataclass(frozen=True)
class Bodies:
    """All that stands about, as seen from what one clamp moves with.

    Parameters
    ----------
    others : tuple of BodyGroup
        That the clamp does not sit on.
    own : tuple of BodyGroup
        That it sits on.
    """

    others: tuple[BodyGroup, ...] = ()
    own: tuple[BodyGroup, ...] = ()

    def met_by(
        self, points_m: Array, half_m: float = HALF_ARM_M, skipped: int | None = None
    ) -> tuple[NDArray[np.intp], tuple[Message, ...]]:
        """What each arm runs through.

        Parameters
        ----------
        points_m : array, shape (n, k, 3)
            Each from its clamp to its end.
        half_m : float, default 0.01
            Half the thickness.
        skipped : int, optional
            So many pieces from the clamp belong to it, where an arm is told in short ones; cut off the first link when None.

        Returns
        -------
        tuple of (array of int, shape (n,); names)
            The first of the bodies that it is too near to; -1 where it is clear of all.
        """
        met = np.full(len(points_m), -1, dtype=np.intp)
        names: list[Message] = []
        beyond = _beyond_clamp(points_m) if skipped is None else points_m[:, skipped:]
        for group, points in (*((one, points_m) for one in self.others), *((one, beyond) for one in self.own)):
            names.extend(group.what)
            open_ = np.flatnonzero(met < 0)
            if len(open_):
                near = _too_near(points[open_], group.bodies, half_m)
                hit = near.any(axis=1)
                met[open_[hit]] = len(names) - len(group.what) + near[hit].argmax(axis=1)
        return met, tuple(names)


def _beyond_clamp(points_m: Array) -> Array:
    """With the clamp's own length cut off the first link; at its far end where the link is no longer than that."""
    way = points_m[:, 1] - points_m[:, 0]
    length = np.linalg.norm(way, axis=1)
    share = np.minimum(1.0, CLAMP_M / np.maximum(length, 1e-12))
    out = points_m.copy()
    out[:, 0] += share[:, None] * way
    return out


def _too_near(points: Array, group: Boxes | Rods, half_m: float) -> NDArray[np.bool_]:
    """Of each arm and body, whether any piece is nearer than half the arm's thickness at any tilt; shape (n, k)."""
    count, joints = points.shape[:2]
    start, end = points[:, :-1].reshape(-1, 3), points[:, 1:].reshape(-1, 3)
    if isinstance(group, Boxes):
        found = clearances_m(start, end, (group,), half_m)[0] - half_m
    else:
        found = _rod_clearances_m(start, end, group) - half_m
    return np.asarray((found < -_ROUNDING_M).reshape(count, joints - 1, -1).any(axis=1))


def _rod_clearances_m(start: Array, end: Array, rods: Rods) -> Array:
    """Clearance of each segment from the surface of each rod, over all tilts; half the way between two tilts is taken off."""
    axis = np.asarray(rods.pivot_m)[1:]
    radius = np.maximum(np.hypot(*(start[:, 1:] - axis).T), np.hypot(*(end[:, 1:] - axis).T))
    least = np.full((len(start), len(rods.radius_m)), np.inf)
    for turn in rods.tilts_rad:
        one, other = (tilted(points, float(turn), rods.pivot_m) for points in (start, end))
        least = np.minimum(least, segments_apart_m(one, other, rods.from_m, rods.to_m))
    return np.asarray(least - rods.radius_m - 0.5 * rods.step_rad * radius[:, None], dtype=np.float64)


# --- of a room --------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Thing:
    """A body before it is seen from anywhere: a box by its corners, or a rod by its ends and radius."""

    what: Message
    moves_with: MovesWith
    low_m: tuple[float, float, float]
    high_m: tuple[float, float, float]
    radius_m: float | None = None
    of: str = ""


def bodies_of(room: Room, site: str, holder: Tube | Edge) -> Bodies:
    """Bodies of a room as seen from what a clamp sits on.

    Parameters
    ----------
    room : Room
    site : str
        Whose device is held: the part there is the device's own.
    holder : Tube or Edge
        Where the clamp sits.
    """
    seat = tilts_with_seat(holder.moves_with)
    things = [*_boards(room), *_rods(room), *_parts(room, site)]
    own = [one for one in things if _sits_on(holder, one)]
    others = [one for one in things if one not in own]
    return Bodies(_groups(others, room, seat), _groups(own, room, seat))


def _boards(room: Room) -> list[_Thing]:
    """Trays and tables from their top down; floors all round."""
    out = []
    for one in room.surface:
        x, y, z = one.corner_m
        wide, deep = one.size_m
        what = message(ArmReasons.surface, surface=Name(one.name))
        if one.kind == "floor":
            far, down = GROUND_M
            out.append(_Thing(what, one.moves_with, (x - far, y - far, z - down), (x + far, y + far, z), of=one.name))
        else:
            thick = max((edge.thickness_m for edge in room.edge if _along_board(edge, one)), default=BOARD_M)
            out.append(_Thing(what, one.moves_with, (x, y, z - thick), (x + wide, y + deep, z), of=one.name))
    return out


def unmeasured_boards(room: Room) -> tuple[str, ...]:
    """Names of trays and tables whose thickness nobody measured, at an edge."""
    return tuple(
        one.name for one in room.surface if one.kind != "floor" and not any(_along_board(edge, one) for edge in room.edge)
    )  # fmt: skip


def _along_board(edge: Edge, board: Surface) -> bool:
    """Whether an edge is one of a board's."""
    (x, y, z), (wide, deep) = board.corner_m, board.size_m
    return edge.moves_with == board.moves_with and all(
        abs(point[2] - z) <= edge.thickness_m + _TOUCHES_M
        and x - _TOUCHES_M <= point[0] <= x + wide + _TOUCHES_M
        and y - _TOUCHES_M <= point[1] <= y + deep + _TOUCHES_M
        for point in (edge.from_m, edge.to_m)
    )


def _rods(room: Room) -> list[_Thing]:
    """Tubes; and edges of boards that nobody described."""
    out = [
        _Thing(
            message(ArmReasons.tube, tube=Name(one.name)),
            one.moves_with,
            one.from_m,
            one.to_m,
            one.diameter_m / 2,
            one.name,
        )
        for one in room.tube
    ]
    bare = [one for one in room.edge if not any(_along_board(one, board) for board in room.surface)]
    return out + [
        _Thing(message(ArmReasons.edge, edge=Name(one.name)), one.moves_with, one.from_m, one.to_m, one.thickness_m / 2, one.name)
        for one in bare
    ]  # fmt: skip


def _parts(room: Room, site: str) -> list[_Thing]:
    """Where parts rest at other sites; a place whose tape leads nowhere is told of at its own site."""
    out = []
    for one in room.place:
        if one.site == site or (one.at_m is None and not one.tape):
            continue
        try:
            where = placed(Site(name=one.site, part="hand"), room)
        except BadInput:
            continue
        if where is not None:
            x, y, z = where.at_m
            low, high = (x - ASIDE_M, y - ASIDE_M, z - ASIDE_M), (x + ASIDE_M, y + ASIDE_M, z + PART_M)
            out.append(_Thing(message(ArmReasons.other_site, site=Name(one.site)), one.moves_with, low, high))
    return out


def _sits_on(holder: Tube | Edge, thing: _Thing) -> bool:
    if thing.radius_m is not None:
        return thing.of == holder.name
    if not isinstance(holder, Edge) or not thing.of or thing.moves_with != holder.moves_with:
        return False
    return all(
        low - holder.thickness_m - _TOUCHES_M <= at <= high + holder.thickness_m + _TOUCHES_M
        for point in (holder.from_m, holder.to_m)
        for low, at, high in zip(thing.low_m, point, thing.high_m, strict=True)
    )


def _groups(things: Sequence[_Thing], room: Room, seat: bool) -> tuple[BodyGroup, ...]:
    """Boxes and rods, those that move alike apart from those that the tilt carries past."""
    pivot, _ = pivot_of(room)
    tilts = tilt_steps_rad(room, TILT_STEP_RAD)
    step = float(tilts[1] - tilts[0]) if len(tilts) > 1 else 0.0
    out: list[BodyGroup] = []
    for alike in (True, False):
        some = [one for one in things if (tilts_with_seat(one.moves_with) is seat) is alike]
        turns, apart = (np.zeros(1), 0.0) if alike else (tilts if seat else -tilts, step)
        boxes = [one for one in some if one.radius_m is None]
        rods = [one for one in some if one.radius_m is not None]
        if boxes:
            low, high = (np.array([getattr(box, end) for box in boxes]) for end in ("low_m", "high_m"))
            found = Boxes(tuple(box.of for box in boxes), low, high, turns, pivot, apart)
            out.append(BodyGroup(found, tuple(box.what for box in boxes)))
        if rods:
            start, end = (np.array([getattr(one, end) for one in rods]) for end in ("low_m", "high_m"))
            radius = np.array([one.radius_m or 0.0 for one in rods])
            found_rods = Rods(start, end, radius, turns, pivot, apart)
            out.append(BodyGroup(found_rods, tuple(one.what for one in rods)))
    return tuple(out)
