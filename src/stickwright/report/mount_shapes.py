"""What stands in the room, as simple bodies with names: of these the drawing, the workshop's file and the scene are made.

Body frame of the room, metre. The player is schematic, from two heights where they were taken, never as a measurement.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from stickwright.catalogue import say
from stickwright.codes.joint_settings import JointSettings
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.codes.mount_poses import LineEnd
from stickwright.model.fit import Fit
from stickwright.model.mounting import Dimension, Pose, SiteMount
from stickwright.model.plan import Plan
from stickwright.model.room import Edge, KeepOut, Room, Tube
from stickwright.mounting.frames import pivot_of, tilted, turned
from stickwright.report.body import part_named, side_named

__all__ = [
    "NO_BASE_M",
    "DrawnBody",
    "Layer",
    "base_of",
    "dimension_ends",
    "end_of",
    "forward_of",
    "mount_shapes",
    "plain_words",
    "room_shapes",
    "tilted_shapes",
]  # fmt: skip

Point = tuple[float, float, float]
Layer = Literal["BODY", "SEAT", "TUBES", "EDGES", "SURFACES", "KEEP_OUT", "LANDMARKS", "MOUNT", "STICK", "CABLE"]

NO_BASE_M = (0.060, 0.060, 0.030)  # drawn dashed when nobody measured the base
_LEVEL_RAD = math.radians(0.5)
_APART_M = 0.001
_LINK_M, _SHEET_M = 0.018, 0.018  # an arm's link and a table top, where nobody says how thick they are
_JOINT_M, _JAWS_M, _CONTACT_M = (
    0.024,
    0.018,
    0.014,
)  # a joint, what a clamp adds about its tube, the end of a stick: signs
_PATCH_M, _PLATE_M = 0.003, 0.004  # how thick a fastener and a plate are drawn
_CHIN_M, _FLOOR_M, _ARMREST_M = 0.66, 0.45, 0.22  # of the sign, where nobody took them
_CRANKED = ("fingertip", "thumb", "hand", "forearm", "elbow")
"""Parts to which the sign's forearm reaches out."""


def plain_words(text: Text) -> str:
    """The words as they are drawn: with plain spaces, since type is set where lines are broken."""
    return say(text).replace("\N{NO-BREAK SPACE}", " ")


@dataclass(frozen=True)
class DrawnBody:
    """One body.

    Parameters
    ----------
    layer : str
        What it is.
    name : str
        What is written at it; empty for a part of something that has a name.
    form : {"solid", "bar", "path", "dot"}
        Convex body of eight corners, round bar between two points, line through points, single point.
    points : tuple
        Metre; the corners of a solid count left before right, back before front, low before high.
    thick_m : float
        Of a bar, or of a path that is a body.
    note : str
        What else there is to say of it.
    sure : bool
        Whether its size was measured.
    barred : bool
        Whether nothing may be clamped to it.
    typed : str
        Its name in the room's file.
    role : {"", "contact", "floor", "clamp", "plate", "back"}
        What other figures ask for: the contact point, the floor, the clamp, the arm's plate, what the player's back lies against.
    tilt_rad : float
        At which tilt of the seat it is shown.
    axis : tuple of float
        Of a clamp: along which tube or edge it grips; metre, any length.
    """

    layer: Layer
    name: str
    form: Literal["solid", "bar", "path", "dot"]
    points: tuple[Point, ...]
    thick_m: float = 0.0
    note: str = ""
    sure: bool = True
    barred: bool = False
    typed: str = ""
    role: Literal["", "contact", "floor", "clamp", "plate", "back"] = ""
    tilt_rad: float = 0.0
    axis: Point = (0.0, 0.0, 0.0)


def base_of(plan: Plan, mount: SiteMount) -> tuple[float, float, float] | None:
    """Length, width and height of the base that stands there; None when nobody measured it.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    mount : SiteMount
        One of its mounts.
    """
    if mount.base_m is not None:
        return mount.base_m
    chosen = [site.choice for site in plan.sites if site.name == mount.site and site.choice is not None]
    others = [one for site in plan.sites for one in site.fits if site.name == mount.site]
    placed = [
        one.fit for one in (plan.sharing.placements if plan.sharing else ()) if one.site == mount.site and one.fit
    ]
    fits: Sequence[Fit] = [*placed, *chosen, *others]
    return next(
        (one.stands_m for one in fits if mount.device in (one.stick, say(one.named)) and one.base_m is not None), None
    )


def end_of(first_m: Point, last_m: Point) -> LineEnd:
    """Which end the first of two points is, told by the way it lies furthest.

    Examples
    --------
    >>> end_of((0.27, 0.40, 0.18), (0.27, 0.05, 0.18))
    'front'
    """
    ways: tuple[tuple[LineEnd, LineEnd], ...] = (("right", "left"), ("front", "back"), ("upper", "lower"))
    apart = [a - b for a, b in zip(first_m, last_m, strict=True)]
    at = max(range(3), key=lambda axis: abs(apart[axis]))
    return ways[at][0 if apart[at] > 0 else 1]


def forward_of(pose: Pose) -> tuple[Point, Point, Point]:
    """The base's own right, forward and up, as unit vectors; a base that slopes to the player has its far edge raised.

    Parameters
    ----------
    pose : Pose
        How it is turned.
    """
    right, forward, up = ((x, y, z) for x, y, z in turned(pose.turn_rad, pose.tilt_rad).T.tolist())
    return right, forward, up


def _moved(start: Point, *steps: tuple[Point, float]) -> Point:
    x, y, z = (start[axis] + sum(way[axis] * far for way, far in steps) for axis in range(3))
    return x, y, z


def _box(low: Point, high: Point) -> tuple[Point, ...]:
    return tuple((x, y, z) for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2]))


# --- the room -------------------------------------------------------------------------------------------------------------


def room_shapes(room: Room, site: str = "", contact_m: Point | None = None) -> tuple[DrawnBody, ...]:
    """The player as a sign, the seat, and all that was measured about them.

    Parameters
    ----------
    room : Room
        As measured.
    site : str, default ""
        The part that plays: an arm reaches to it.
    contact_m : tuple of float, optional
        Where it touches.
    """
    return (*_sitting(room), *_body(room, site, contact_m), *_measured(room))


def tilted_shapes(room: Room) -> tuple[DrawnBody, ...]:
    """The seat, and what must stay free about it, at the end of the tilts used in play that is further from level.

    Parameters
    ----------
    room : Room
        With its tilts and pivot.

    Returns
    -------
    tuple of DrawnBody
        With that tilt; none when the seat is only used level.
    """
    tilt = max(room.tilt_from_rad, room.tilt_to_rad, key=abs)
    if abs(tilt) < _LEVEL_RAD:
        return ()
    pivot, _ = pivot_of(room)
    moves = {box.name for box in room.keep_out if box.moves_with == "seat"}
    level = [*_sitting(room), *(_kept_free(box) for box in room.keep_out)]
    return tuple(
        replace(
            one,
            points=tuple((float(x), float(y), float(z)) for x, y, z in tilted(np.array(one.points), tilt, pivot)),
            tilt_rad=tilt,
        )
        for one in level
        if one.layer == "SEAT" or one.typed in moves
    )


def _sitting(room: Room) -> Iterator[DrawnBody]:
    if room.posture == "bed":
        yield _seat(MountDrawings.mattress, (-0.45, -0.35, -0.12), (0.45, 1.30, 0.0), "back")
    elif room.posture != "floor":
        yield _seat(MountDrawings.seat, (-0.21, 0.0, -0.06), (0.21, 0.42, 0.0))
        yield _seat(MountDrawings.backrest, (-0.20, -0.06, 0.0), (0.20, 0.0, 0.50), "back")


def _seat(text: Callable[..., str], low: Point, high: Point, role: Literal["", "back"] = "") -> DrawnBody:
    return DrawnBody("SEAT", say(message(text)), "solid", _box(low, high), sure=False, role=role)


def _body(room: Room, site: str, contact_m: Point | None) -> Iterator[DrawnBody]:
    chin = room.seat_to_chin_m or _CHIN_M
    floor = -(room.seat_to_floor_m or _FLOOR_M)
    elbow = (room.seat_to_armrest_m or _ARMREST_M) + 0.045
    shoulder = chin - 0.11

    def limb(*points: Point, thick: float) -> DrawnBody:
        return DrawnBody("BODY", "", "bar", points, thick, sure=False)

    yield limb((0.0, 0.11, 0.13), (0.0, 0.11, shoulder - 0.06), thick=0.22)
    yield limb((-0.15, 0.11, shoulder), (0.15, 0.11, shoulder), thick=0.10)
    yield limb((0.0, 0.115, chin), (0.0, 0.115, chin + 0.09), thick=0.10)
    yield limb((0.0, 0.13, chin + 0.07), (0.0, 0.12, chin + 0.13), thick=0.17)
    straight = room.posture in ("bed", "floor")
    for side in (-1, 1):
        knee = (side * 0.11, 0.47, 0.075)
        yield limb((side * 0.09, 0.12, 0.075), knee, thick=0.14)
        ankle = (side * 0.11, 0.88, 0.06) if straight else (side * 0.11, 0.49, floor + 0.09)
        toe = (side * 0.12, 0.90, 0.14) if straight else (side * 0.12, 0.62, floor + 0.04)
        yield limb(knee, ankle, thick=0.10)
        yield limb(ankle, toe, thick=0.07)
        joint = (side * 0.235, 0.08, elbow)
        yield limb((side * 0.18, 0.11, shoulder - 0.01), joint, thick=0.085)
        yield limb(joint, _hand(joint, side, site, contact_m), thick=0.065)


def _hand(elbow: Point, side: int, site: str, contact_m: Point | None) -> Point:
    """Where the sign's forearm ends: at the contact point when it is this arm that plays."""
    plays = part_named(site) in _CRANKED and side_named(site) == ("left" if side < 0 else "right")
    if not plays or contact_m is None:
        return side * 0.20, 0.31, elbow[2]
    far = math.dist(elbow, contact_m)
    share = min(1.0, max(0.1, far - 0.03) / far) if far else 0.0
    x, y, z = (a + share * (b - a) for a, b in zip(elbow, contact_m, strict=True))
    return x, y, z


def _measured(room: Room) -> Iterator[DrawnBody]:
    for tube in room.tube:
        barred = bool(tube.not_for_clamps)
        note = message(MountDrawings.no_clamp) if barred else _thick(tube.diameter_m)
        ends = (tube.from_m, tube.to_m)
        yield DrawnBody(
            "TUBES", tube.name, "bar", ends, tube.diameter_m, plain_words(note), barred=barred, typed=tube.name
        )
    for edge in room.edge:
        ends, size = (edge.from_m, edge.to_m), plain_words(_thick(edge.thickness_m))
        yield DrawnBody("EDGES", edge.name, "bar", ends, edge.thickness_m, size, typed=edge.name)
    for top in room.surface:
        (x, y, z), (wide, deep) = top.corner_m, top.size_m
        corners = _box((x, y, z - _SHEET_M), (x + wide, y + deep, z))
        ground = top.kind == "floor"
        what = message(MountDrawings.floor) if ground else message(MountDrawings.fastened) if top.fastened else ""
        role: Literal["floor", ""] = "floor" if ground else ""
        yield DrawnBody("SURFACES", top.name, "solid", corners, note=say(what), typed=top.name, role=role)
    for box in room.keep_out:
        yield _kept_free(box)
    for mark in room.landmark:
        yield DrawnBody("LANDMARKS", mark.name, "dot", (mark.at_m,), typed=mark.name)


def _thick(thick_m: float) -> Message:
    return message(MountDrawings.thick, thick_m=thick_m)


def _kept_free(box: KeepOut) -> DrawnBody:
    """A box that nothing may enter, its corners in order."""
    low, high = (tuple(pick(a, b) for a, b in zip(box.low_m, box.high_m, strict=True)) for pick in (min, max))
    name = say(message(MountDrawings.keep_free, name=Name(box.name), kind=box.kind))
    corners = _box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    return DrawnBody("KEEP_OUT", name, "solid", corners, typed=box.name)


# --- what holds the stick ---------------------------------------------------------------------------------------------------


def mount_shapes(
    mount: SiteMount, room: Room, base_m: tuple[float, float, float] | None = None
) -> tuple[DrawnBody, ...]:
    """Clamp, links, joints, fastener, cable, and the stick that they hold.

    Parameters
    ----------
    mount : SiteMount
        The mount with its place; without a choice, the place alone.
    room : Room
        As measured.
    base_m : tuple of float, optional
        Length, width and height of the stick's base.
    """
    return (*_links(mount, room), *_cable(mount, room), *_stick(mount, base_m))


def _links(mount: SiteMount, room: Room) -> Iterator[DrawnBody]:
    arm = mount.choice.arm if mount.choice is not None else None
    if mount.choice is None or arm is None or not arm.points_m:
        return
    if mount.choice.kind == "gooseneck":
        yield DrawnBody("MOUNT", "", "path", arm.points_m, _LINK_M, sure=False)
    else:
        for start, end in zip(arm.points_m, arm.points_m[1:], strict=False):
            yield DrawnBody("MOUNT", "", "bar", (start, end), _LINK_M, sure=False)
        base = mount.pose.base_m if mount.pose is not None else arm.points_m[-1]
        if math.dist(arm.points_m[-1], base) > _APART_M:  # the neck of the ball and the plate
            yield DrawnBody("MOUNT", "", "bar", (arm.points_m[-1], base), _LINK_M / 2, sure=False, role="plate")
    clamp = say(message(MountDrawings.clamp_of, mount=Name(mount.choice.mount)))
    lines: tuple[Tube | Edge, ...] = (*room.tube, *room.edge)
    line = next((one for one in lines if one.name == arm.clamp), None)
    axis = _moved(line.to_m, (line.from_m, -1.0)) if line is not None else (0.0, 0.0, 0.0)
    thick = getattr(line, "diameter_m", 0.0) or getattr(line, "thickness_m", 0.0)
    yield DrawnBody("MOUNT", clamp, "dot", (arm.points_m[0],), thick + _JAWS_M, role="clamp", axis=axis)
    for at, joint in zip(_joint_points(arm.points_m, len(arm.joints)), arm.joints, strict=True):
        name = say(message(JointSettings.named, joint=joint.name))
        yield DrawnBody("MOUNT", name, "dot", (at,), _JOINT_M, note=say(joint.words))


def _joint_points(points_m: tuple[Point, ...], joints: int) -> Iterator[Point]:
    """Joint by joint from the clamp. Of three, one is at each end and one where the arm bends: where its way turns most, or, of a
    curve that turns all along, its middle. Of others, one point after the other."""
    if joints == 3 and len(points_m) > 3:
        turns = [_turn(*three) for three in zip(points_m, points_m[1:], points_m[2:], strict=False)]
        middle = len(points_m) // 2 if len(points_m) > 5 else 1 + turns.index(max(turns))
        yield from (points_m[0], points_m[middle], points_m[-1])
        return
    for number in range(joints):
        yield points_m[-1 if joints == 1 else min(number, len(points_m) - 1)]


def _turn(before: Point, at: Point, after: Point) -> float:
    """How much a way turns at a point, in radian."""
    first, second = ([b - a for a, b in zip(*pair, strict=True)] for pair in ((before, at), (at, after)))
    size = math.hypot(*first) * math.hypot(*second)
    along = sum(a * b for a, b in zip(first, second, strict=True))
    return math.acos(max(-1.0, min(1.0, along / size))) if size else 0.0


def _cable(mount: SiteMount, room: Room) -> Iterator[DrawnBody]:
    """Along the arm to its clamp; on a tray or table the shortest way to its edge."""
    if mount.choice is None or mount.pose is None:
        return
    arm, base = mount.choice.arm, mount.pose.base_m
    told = mount.choice.cable_m
    name = say(message(MountDrawings.cable))
    note = plain_words(message(MountDrawings.cable_to_foot, length_m=told))
    if arm is not None and arm.points_m:
        yield DrawnBody("CABLE", name, "path", (base, *reversed(arm.points_m)), note=note)
        return
    top = next((one for one in room.surface if one.name == mount.choice.on), None)
    if top is not None:
        (x, y, z), (wide, deep) = top.corner_m, top.size_m
        exits = ((x, base[1], z), (x + wide, base[1], z), (base[0], y + deep, z))  # never over the near edge: the lap
        yield DrawnBody("CABLE", name, "path", (base, min(exits, key=lambda at: math.dist(at, base))), note=note)


def _stick(mount: SiteMount, base_m: tuple[float, float, float] | None) -> Iterator[DrawnBody]:
    pose = mount.pose
    if pose is None:
        return
    right, forward, up = forward_of(pose)
    length, width, height = base_m or NO_BASE_M
    corners = tuple(
        _moved(pose.base_m, (right, side * width / 2), (forward, near * length / 2), (up, above * height))
        for side in (-1, 1) for near in (-1, 1) for above in (0, 1)
    )  # fmt: skip
    note = say(message(MountDrawings.base_unmeasured)) if base_m is None else ""
    yield DrawnBody("STICK", mount.device, "solid", corners, note=note, sure=base_m is not None)
    if mount.choice is not None and mount.choice.patch_m is not None:
        long, wide = mount.choice.patch_m

        def sheet(low: float, high: float) -> tuple[Point, ...]:
            return tuple(
                _moved(pose.base_m, (right, side * wide / 2), (forward, near * long / 2), (up, at))
                for side in (-1, 1) for near in (-1, 1) for at in (low, high)
            )  # fmt: skip

        fastener = Name(mount.choice.fastener) if mount.choice.fastener else None
        under = say(message(MountDrawings.under_base, fastener=fastener))
        yield DrawnBody("MOUNT", under, "solid", sheet(-_PATCH_M, 0.0))
        if mount.choice.arm is not None:
            plate = sheet(-_PATCH_M - _PLATE_M, -_PATCH_M)
            yield DrawnBody("MOUNT", "", "solid", plate, sure=False, role="plate")
    top = _moved(pose.base_m, (up, height))
    if math.dist(top, pose.contact_m) > 0.002:
        yield DrawnBody("STICK", "", "bar", (top, pose.contact_m), 0.008, sure=False)
    yield DrawnBody("STICK", say(message(MountDrawings.contact)), "dot", (pose.contact_m,), _CONTACT_M, role="contact")


# --- distances ----------------------------------------------------------------------------------------------------------------

_WAYS = {"right": (0, 1), "left": (0, -1), "forward": (1, 1), "back": (1, -1), "up": (2, 1), "down": (2, -1)}


def dimension_ends(mount: SiteMount, room: Room, one: Dimension) -> tuple[Point, Point, int] | None:
    """Where a distance starts, the point that it tells, and its axis; None when the room has no such landmark.

    Parameters
    ----------
    mount : SiteMount
        The mount that it belongs to.
    room : Room
        With its landmarks.
    one : Dimension
        A distance along one axis.
    """
    start = next((mark.at_m for mark in room.landmark if mark.name == one.landmark), None)
    if start is None:
        return None
    axis, sign = _WAYS[one.along]
    told = _target(mount, one.to) or start
    end = [told[0], told[1], told[2]]
    end[axis] = start[axis] + sign * one.distance_m
    return start, (end[0], end[1], end[2]), axis


def _target(mount: SiteMount, to: Literal["base", "clamp"]) -> Point | None:
    """The point of the mount that a distance is taken to."""
    arm = mount.choice.arm if mount.choice is not None else None
    if to == "clamp" and arm is not None and arm.points_m:
        return arm.points_m[0]
    return mount.pose.base_m if mount.pose is not None else None
