"""One device that is to be put up, and what every way to do it shares: where, in what room, against which pushes."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.kit import Fastener, Kit, Mount
from stickwright.model.mounting import ArmPose, Check, Dimension, MountDoubt, Pose
from stickwright.model.player import Site
from stickwright.model.room import Edge, KeepOut, MovesWith, Room, Surface, Tube
from stickwright.mounting.carried import UNMEASURED_BASE_M
from stickwright.mounting.clearance import boxes_seen_from, clearances_m
from stickwright.mounting.frames import tilts_with_seat, turned
from stickwright.mounting.held import HeldDevice
from stickwright.mounting.rules import BY_THE_FACE, tilt_warnings
from stickwright.mounting.statics import Pushes
from stickwright.mounting.unmeasured import JudgedMount

__all__ = [
    "MountRequest", "dimensions", "entered", "holder_of", "margin", "reach_of", "stronger_first", "unmeasured_words", "verdict_of",
]  # fmt: skip


Point = tuple[float, float, float]


@dataclass(frozen=True)
class MountRequest:
    """One device that is to be put up.

    Parameters
    ----------
    site : Site
    held : HeldDevice
    pose : Pose
        Where it must be.
    room : Room
    kit : Kit
    pushes : Pushes
    moves_with : {"seat", "base", "room"}
        What the site moves with.
    """

    site: Site
    held: HeldDevice
    pose: Pose
    room: Room
    kit: Kit
    pushes: Pushes
    moves_with: MovesWith

    @property
    def by_face(self) -> bool:
        """Whether a wrong guess hurts somebody."""
        return self.site.part in BY_THE_FACE

    def tilt_warnings(self, on: Tube | Edge | Surface | None) -> tuple[MountDoubt, ...]:
        """Whether it is to be confirmed that what holds it stays with the site as the seat tilts."""
        if on is None or self.by_face:
            return ()
        return tilt_warnings(
            self.site, on, self.room, contact_m=self.pose.contact_m, site_moves_with=self.moves_with, tolerance_m=self.pose.may_be_off_m
        )  # fmt: skip


def verdict_of(judged: JudgedMount, refused: Sequence[Message]) -> Literal["refused", "does_not_hold", "holds"]:
    """'refused' for a hard rule of safety, 'does_not_hold', or 'holds'; what is to be confirmed holds."""
    return "refused" if refused else "does_not_hold" if judged.fails else "holds"


def holder_of(room: Room, name: str) -> Tube | Edge | Surface | None:
    """The tube, edge or surface of this name."""
    things: list[Tube | Edge | Surface] = [*room.tube, *room.edge, *room.surface]
    return next((one for one in things if one.name == name), None)


def entered(asked: MountRequest) -> tuple[KeepOut, ...]:
    """Boxes that the base stands in anywhere in the tilt range; of a base that nobody measured, its middle."""
    room, pose = asked.room, asked.pose
    if not room.keep_out:
        return ()
    length, width, height = asked.held.outline_m or (0.0, 0.0, 0.0)
    feet = np.array([(x, y, 0.0) for x in (-width / 2, 0.0, width / 2) for y in (-length / 2, 0.0, length / 2)])
    frame = turned(pose.turn_rad, pose.tilt_rad)
    low, high = (np.asarray(pose.base_m) + (feet + np.array([0.0, 0.0, up])) @ frame.T for up in (0.0, height))
    found, names = clearances_m(low, high, boxes_seen_from(room, tilts_with_seat(asked.moves_with)))
    inside = {name for name, near in zip(names, found.min(axis=0), strict=True) if near <= 0}
    return tuple(box for box in room.keep_out if box.name in inside)


def margin(checks: Sequence[Check]) -> float:
    """Smallest of all factors over their wanted ones; 0 where something is not known that is wanted."""
    known = [check for check in checks if check.wanted > 0 and not (check.factor is None and not check.unloaded)]
    # what lets go on purpose holds though its factor is below the wanted one
    judged = [check for check in known if not (check.holds and check.times < check.wanted * (1 - 1e-9))]
    unknown = any((check.factor is None and not check.unloaded) and not check.holds for check in checks)
    return 0.0 if unknown else min((check.times / check.wanted for check in judged), default=math.inf)


def reach_of(held: HeldDevice) -> float:
    """Contact point above the underside of the base."""
    return held.contact_height_m + (held.pivot_m or 0.0)


def stronger_first(kit: Kit) -> list[Fastener]:
    """Fasteners in stock whose tension was read, the strongest first; then those of a label that nobody read."""
    known = [one for one in kit.fastener if one.in_stock and one.tension_pa is not None]
    return sorted(known, key=lambda one: -(one.tension_pa or 0.0))


def unmeasured_words(held: HeldDevice) -> tuple[Message, ...]:
    """What stands in for figures of the device that nobody took."""
    device, (long, short) = Name(held.device), UNMEASURED_BASE_M
    base = () if held.base_m else (message(MountAssumed.base, device=device, long_m=long, short_m=short),)
    weight = () if held.mass_kg is not None else (message(MountAssumed.weight, device=device),)
    return (*base, *weight, *held.assumed)


def dimensions(room: Room, pose: Pose, moves_with: str, way: ArmPose | None = None) -> tuple[Dimension, ...]:
    """From the nearest landmark that moves with the holder: sideways, forward and up to the middle of the base, and to the clamp.

    Parameters
    ----------
    room : Room
    pose : Pose
    moves_with : {"seat", "base", "room"}
        Of the holder.
    way : ArmPose, optional
    """
    near = [mark for mark in room.landmark if mark.moves_with == moves_with] or list(room.landmark)
    if not near:
        return ()
    out: list[Dimension] = []
    ends: list[tuple[Literal["base", "clamp"], Point]] = [("base", pose.base_m)]
    if way is not None:
        ends.append(("clamp", way.points_m[0]))
    for to, point in ends:
        mark = min(near, key=lambda one: math.dist(one.at_m, point))
        for axis, (plus, minus) in enumerate((("right", "left"), ("forward", "back"), ("up", "down"))):
            off = point[axis] - mark.at_m[axis]
            out.append(Dimension(mark.name, to, plus if off >= 0 else minus, abs(off)))  # type: ignore[arg-type]
    return tuple(out)


def lacks_give(mount: Mount) -> tuple[Message, ...]:
    """That nobody measured how far a stand gives."""
    return () if mount.give_n_per_m is not None else (message(MountAssumed.flex, mount=Name(mount.name)),)
