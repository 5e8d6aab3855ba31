"""Where the base of a device must be, and how it must be turned, so that the contact point lies where the part rests."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.mount_problems import MountProblems
from stickwright.codes.places import Places
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.mounting import Pose
from stickwright.model.player import Site
from stickwright.model.recorded import Finding
from stickwright.model.room import MovesWith, Place, Room
from stickwright.mounting.frames import turned
from stickwright.mounting.tape import TapePoint, taped_point
from stickwright.mounting.usual_places import usual_place

__all__ = ["TOLERANCE_RAD", "Placed", "place_of", "placed", "pose_of", "tolerance_m", "whole_turn_rad"]

Array = NDArray[np.float64]
Point = tuple[float, float, float]

LOST_SHARE = 0.1
TOLERANCE_RAD = math.acos(1.0 - LOST_SHARE)
"""Turned by so much, a push counts only for its cosine in the direction meant: a tenth of it is lost."""


@dataclass(frozen=True)
class Placed:
    """Where a site's contact point is, how it is turned and what it moves with; what was assumed and noticed."""

    at_m: Point
    """The contact point while the part rests."""
    forward_rad: float
    """Where the part's own forward points, anticlockwise from straight ahead, seen from above."""
    slope_rad: float | None
    """Of the plane it moves in, towards the player; None when nobody said."""
    moves_with: MovesWith
    assumed: tuple[Message, ...] = ()
    findings: tuple[Finding, ...] = ()


def place_of(site: Site, room: Room) -> Place | None:
    """The place that the room's file gives for a site; None when it gives none."""
    return next((place for place in room.place if place.site == site.name), None)


def placed(site: Site, room: Room) -> Placed | None:
    """Where a site's contact point is: measured, from tape distances, or where such a part usually rests.

    Returns
    -------
    Placed or None
        None when the place was not measured and nothing sensible can be said of it.

    Raises
    ------
    BadInput
        Tape distances from landmarks that the room does not name, or that cannot meet.
    """
    place = place_of(site, room)
    usual = usual_place(site, room)
    if place is not None and place.at_m is not None:
        return _as_measured(place, place.at_m, site)
    if place is not None and place.tape:
        return _as_taped(place, site, room, usual.at_m if usual else None)
    if usual is None:
        return None
    slope = site.movement_tilt_rad if place is None or place.slope_rad is None else place.slope_rad
    return Placed(
        usual.at_m, place.forward_rad if place else 0.0, slope, place.moves_with if place else "seat", usual.assumed
    )


def _as_measured(place: Place, at_m: Point, site: Site) -> Placed:
    slope = site.movement_tilt_rad if place.slope_rad is None else place.slope_rad
    return Placed(at_m, place.forward_rad, slope, place.moves_with)


def _as_taped(place: Place, site: Site, room: Room, usual_m: Point | None) -> Placed:
    where = ("room.toml", f"place '{site.name}'")
    known = {landmark.name: landmark for landmark in room.landmark}
    lost = [tape.landmark for tape in place.tape if tape.landmark not in known]
    if lost:
        raise BadInput(
            Problem(
                where,
                message(MountProblems.landmark, name=Name(name)),
                message(MountProblems.known_landmark),
                did_you_mean(name, known),
            )
            for name in lost
        )
    tapes = [TapePoint(tape.landmark, known[tape.landmark].at_m, tape.distance_m) for tape in place.tape]
    found = taped_point(tapes, where)
    findings = list(found.findings)
    astray = [Name(tape.landmark) for tape in place.tape if known[tape.landmark].moves_with != place.moves_with]
    if astray and (room.tilt_from_rad or room.tilt_to_rad):
        told = message(Places.seat_level, site=Name(site.name), moves_with=place.moves_with, landmarks=tuple(astray))
        findings.append(Finding("query", "tape", told))
    at_m = found.points_m[0]
    assumed: tuple[Message, ...] = ()
    if len(found.points_m) == 2:
        at_m = _nearer(found.points_m, usual_m)
        by: Literal["upper", "usual"] = "upper" if usual_m is None else "usual"
        assumed = (message(MountAssumed.tape, site=Name(site.name), by=by),)
    slope = site.movement_tilt_rad if place.slope_rad is None else place.slope_rad
    return Placed(at_m, place.forward_rad, slope, place.moves_with, assumed, tuple(findings))


def _nearer(points_m: Sequence[Point], usual_m: Point | None) -> Point:
    """Of two mirror answers, the one nearer to where such a part usually is, or the upper one."""
    if usual_m is None:
        return points_m[0]
    return min(points_m, key=lambda point: math.dist(point, usual_m))


def pose_of(
    site: Site,
    where: Placed,
    *,
    base_height_m: float | None,
    contact_height_m: float,
    tilt_rad: float = 0.0,
    own_slope_rad: float = 0.0,
    direction_rad: Array | Sequence[float] = (),
    reach_m: Array | Sequence[float] = (),
    recorded_turn: Estimate | None = None,
) -> Pose:
    """Where the base of a device must be so that its contact point lies where the part rests.

    The base is set so that its underside lies below the contact point by the height of base and lever, along the tilted and
    turned axis of the lever: base = contact - R(turn, tilt) [0, 0, h].

    Parameters
    ----------
    site : Site
    where : Placed
        Where the part rests and how it is turned.
    base_height_m : float or None
        Of the device's base, underside to pivot; None when not known: taken as 0 and marked.
    contact_height_m : float
        Of the contact point above the pivot, with topper and extension.
    tilt_rad : float, default 0.0
        Of the base towards the player.
    own_slope_rad : float, default 0.0
        Of the lever against its base, towards the player.
    direction_rad, reach_m : array, shape (k,)
        The player's comfortable reach in each direction measured.
    recorded_turn : Estimate, optional
        How far recordings say that the base is to be turned from where it stood, anticlockwise.

    Returns
    -------
    Pose
        Turned by what the place says and what the recordings say.

    Notes
    -----
    Assumed where a recorded turn is given, and told: the stick stood turned as the place says when it was recorded. A base that
    stood at s under a player whose own forward points to p brings pushes out turned by p - s, and s + (p - s) = p.
    Source: rigid displacement [craig-2005]. Tolerances: see `tolerance_m`, and `TOLERANCE_RAD`, arccos 0.9: a push that is
    turned by this angle counts 0.9 in the direction meant.

    Examples
    --------
    >>> site = Site(name="chin", part="chin")
    >>> pose = pose_of(site, Placed((0.0, 0.2, 0.6), 0.0, None, "seat"), base_height_m=0.03, contact_height_m=0.02,
    ...                tilt_rad=math.radians(30), direction_rad=[0, 1.57, 3.14, 4.71], reach_m=[0.014, 0.010, 0.013, 0.006])
    >>> print(np.round(pose.base_m, 4).tolist(), round(1000 * pose.tolerance_m, 2))
    [0.0, 0.225, 0.5567] 0.54
    """
    assumed = list(where.assumed)
    height = base_height_m
    if height is None:
        height = 0.0
        assumed.append(message(MountAssumed.base_height, site=Name(site.name)))
    turn_rad = whole_turn_rad(where.forward_rad, recorded_turn)
    below = turned(turn_rad, tilt_rad) @ np.array([0.0, 0.0, height])
    lever = turned(turn_rad, tilt_rad + own_slope_rad) @ np.array([0.0, 0.0, contact_height_m])
    base = np.asarray(where.at_m) - below - lever
    return Pose(
        site=site.name,
        contact_m=where.at_m,
        base_m=(float(base[0]), float(base[1]), float(base[2])),
        turn_rad=turn_rad,
        tilt_rad=tilt_rad,
        tolerance_m=tolerance_m(direction_rad, reach_m),
        tolerance_rad=TOLERANCE_RAD,
        assumed=tuple(assumed),
        turn_words=None if recorded_turn is None else _turn_words(site, where.forward_rad, recorded_turn),
    )


def whole_turn_rad(forward_rad: float, recorded: Estimate | None) -> float:
    """Turn of the base: the place's and the recordings', from above minus half a turn to half a turn.

    Parameters
    ----------
    forward_rad : float
        Where the place says that the part's own forward points.
    recorded : Estimate or None
        How far the base is to be turned from there.

    Examples
    --------
    >>> round(math.degrees(whole_turn_rad(math.radians(10), Estimate(*(math.radians(turn) for turn in (13, 10, 16))))))
    23
    """
    if recorded is None:
        return forward_rad
    turn = math.remainder(forward_rad + recorded.number, 2 * math.pi)
    return math.pi if turn == -math.pi else turn


def _turn_words(site: Site, forward_rad: float, recorded: Estimate) -> Message:
    """Both parts of the turn, what is taken for granted, and what to do so that neither is counted twice."""
    low, high = sorted(abs(end) for end in (recorded.lower, recorded.upper))
    return message(
        Places.turn, site=Name(site.name), place_rad=None if abs(math.degrees(forward_rad)) < 0.5 else forward_rad,
        recorded_rad=recorded.number, low_rad=low, high_rad=high, total_rad=whole_turn_rad(forward_rad, recorded),
        found_on=recorded.assumed,
    )  # fmt: skip


def tolerance_m(direction_rad: Array | Sequence[float], reach_m: Array | Sequence[float]) -> float:
    """Smallest displacement of the device that costs a tenth of the reach in some measured direction.

    Where the part can go is taken as the polygon through the measured reaches. With the device displaced, what is left in a
    direction is the way from its new centre to the edge of that polygon; all directions of displacement are tried.

    Parameters
    ----------
    direction_rad : array, shape (k,)
    reach_m : array, shape (k,)
        Comfortable reach from the part's rest.

    Returns
    -------
    float
        In metre: a tenth of the shortest reach, or a little less where its neighbours are short too. With fewer than three
        directions, or directions that leave half a turn open, a tenth of the shortest reach. NaN without any.

    Notes
    -----
    Assumed: reach changes straight from one measured direction to the next.

    Examples
    --------
    >>> round(tolerance_m([0.0], [0.010]), 4), round(tolerance_m(np.arange(4) * math.pi / 2, [0.01] * 4), 6)
    (0.001, 0.000707)
    """
    order = np.argsort(np.mod(np.asarray(direction_rad, dtype=np.float64), 2 * math.pi), kind="stable")
    angle = np.mod(np.asarray(direction_rad, dtype=np.float64), 2 * math.pi)[order]
    reach = np.asarray(reach_m, dtype=np.float64)[order]
    if len(reach) == 0:
        return math.nan
    shortest = LOST_SHARE * float(reach.min())
    gaps = np.diff(np.append(angle, angle[0] + 2 * math.pi))
    if len(reach) < 3 or float(gaps.max()) >= math.pi - 1e-9 or shortest <= 0.0:
        return max(shortest, 0.0)
    return _polygon_tolerance_m(np.stack([reach * np.cos(angle), reach * np.sin(angle)], axis=1), reach)


def _polygon_tolerance_m(corners: Array, reach: Array) -> float:
    """Halving between nothing and a tenth of the shortest reach, over displacements all round (every two degrees)."""
    aside = np.radians(np.arange(0.0, 360.0, 2.0))
    aside = np.concatenate([aside, np.arctan2(corners[:, 1], corners[:, 0]), _square_to_edges(corners)])
    unit = np.stack([np.cos(aside), np.sin(aside)], axis=1)
    low, high = 0.0, LOST_SHARE * float(reach.min())
    for _ in range(40):
        middle = 0.5 * (low + high)
        kept = _left(middle * unit, corners, reach)
        if bool(np.all(kept >= (1.0 - LOST_SHARE) * reach[None, :] - 1e-15)):
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def _square_to_edges(corners: Array) -> Array:
    edge = np.roll(corners, -1, axis=0) - corners
    return np.arctan2(-edge[:, 0], edge[:, 1])


def _left(centres: Array, corners: Array, reach: Array) -> Array:
    """Way from each displaced centre to the edge of the polygon, in the direction of each corner; shape (centres, corners)."""
    heading = corners / reach[:, None]
    edge = np.roll(corners, -1, axis=0) - corners
    start = corners[None, :, :] - centres[:, None, :]  # centre, edge
    turning = heading[:, None, 0] * edge[None, :, 1] - heading[:, None, 1] * edge[None, :, 0]  # direction, edge
    across = start[..., 0] * edge[None, :, 1] - start[..., 1] * edge[None, :, 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        way = across[:, None, :] / turning[None, :, :]
        hit = (
            start[:, None, :, 0] * heading[None, :, None, 1] - start[:, None, :, 1] * heading[None, :, None, 0]
        ) / turning[None, :, :]
    valid = (way > 0.0) & (hit >= -1e-12) & (hit <= 1.0 + 1e-12) & (np.abs(turning)[None] > 1e-15)
    left: Array = np.min(np.where(valid, way, np.inf), axis=2)
    return left
