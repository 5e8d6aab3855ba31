"""A device on an arm or gooseneck that is clamped to a tube or an edge."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.to_measure import ToMeasure
from stickwright.model.kit import Fastener, Kit, Mount
from stickwright.model.mounting import ArmPose, Check, MountFit, Pose
from stickwright.model.room import Room
from stickwright.mounting.asked import (
    MountRequest,
    dimensions,
    holder_of,
    margin,
    reach_of,
    stronger_first,
    unmeasured_words,
    verdict_of,
)
from stickwright.mounting.base_stability import Foot, foot_checks
from stickwright.mounting.carried import UNMEASURED_BASE_M, head_of
from stickwright.mounting.change import ArmChange, smallest_change
from stickwright.mounting.compliance import TipShares, droop_m, droop_rad, ringing_hz, tip_shares
from stickwright.mounting.frames import tilts_with_seat, turned
from stickwright.mounting.held import HeldDevice
from stickwright.mounting.neck_load import neck_checks, neck_sag
from stickwright.mounting.rules import broken_rules
from stickwright.mounting.statics import (
    Pushes,
    ReleaseWindow,
    Weight,
    arm_weights,
    joint_checks,
    release_check,
    release_window,
    weight_moment_nm,
)
from stickwright.mounting.support_stability import clamp_checks
from stickwright.mounting.unmeasured import (
    Reading,
    Unmeasured,
    give_reading,
    judged,
    of_device,
    of_fastener,
    of_mount,
    reading_of,
)

__all__ = ["Hung", "cannot", "hung", "on_arm", "plate_for"]

LOOP_M = 0.15
"""Of cable that the joints of an arm need to move: common practice, no source."""
PLATE_KG = (0.05, 1.0)
"""Of a plate under several switches that nobody weighed: common practice, no source."""
TILTS = 5
"""Tilts of the seat that are looked at, from least to most."""


@dataclass(frozen=True)
class Hung:
    """An arm with what it carries, and all figures that it is judged by.

    Parameters
    ----------
    held : HeldDevice
    mount : Mount
    way : ArmPose
    pose : Pose
    pushes : Pushes
    tilts_rad : tuple of float
        Of the seat, at which it is looked at.
    tube_way : tuple of 3 floats or None
        Direction of a tube that its clamp could turn on.
    fastener : Fastener, optional
        Between the device and its plate.
    coupling : Mount, optional
        What lets go on purpose.
    release_limit_n : float, optional
        At the contact point, as the clinic agreed.
    by_face : bool, default False
    plate : Mount, optional
        Under several devices side by side.
    plate_kg : float or None, default 0.0
        Of that plate; None where nobody weighed it, or has one.
    """

    held: HeldDevice
    mount: Mount
    way: ArmPose
    pose: Pose
    pushes: Pushes
    tilts_rad: tuple[float, ...]
    tube_way: tuple[float, float, float] | None
    fastener: Fastener | None = None
    coupling: Mount | None = None
    release_limit_n: float | None = None
    by_face: bool = False
    plate: Mount | None = None
    plate_kg: float | None = 0.0

    @property
    def weights(self) -> tuple[Weight, ...]:
        """Masses of the arm and of the device, each where it hangs."""
        carried = self.held.whole_kg + (self.plate_kg or 0.0)
        return arm_weights(self.way.points_m, self.mount.mass_kg or 0.0, self.pose.base_m, carried)

    @property
    def contacts_m(self) -> tuple[tuple[float, float, float], ...]:
        """Where it is pushed: at the device, or at the outermost two of several side by side."""
        aside = (self.held.pieces - 1) / 2 * (self.held.base_m or UNMEASURED_BASE_M)[1]
        right = turned(self.pose.turn_rad, self.pose.tilt_rad)[:, 0]
        ends = dict.fromkeys((aside, -aside))
        return tuple(
            (float(x), float(y), float(z)) for x, y, z in (np.asarray(self.pose.contact_m) + end * right for end in ends)
        )  # fmt: skip

    @property
    def foot(self) -> Foot | None:
        """How the device sits on its plate."""
        if self.fastener is None:
            return None
        base = self.held.base_m[:2] if self.held.base_m else UNMEASURED_BASE_M
        return Foot(base, reach_of(self.held), self.held.mass_kg or 0.0, fastener=self.fastener)

    def window(self) -> ReleaseWindow | None:
        """Between what limits an arm at the face lets go, at its clamp."""
        if not self.by_face:
            return None
        clamp = self.way.points_m[0]
        reach = math.dist(clamp, self.pose.contact_m)
        if reach <= 0:
            return None
        weight = max(float(np.linalg.norm(weight_moment_nm(clamp, self.weights, tilt))) for tilt in self.tilts_rad)
        return release_window(weight, self.pushes.working_n, reach, self.release_limit_n)

    def released(self) -> Check | None:
        """Whether its coupling can be set so that it carries its load and still lets go in time."""
        window = self.window()
        if window is None or self.coupling is None:
            return None
        return release_check(window, self.coupling.release_n)

    def checks(self) -> tuple[Check, ...]:
        """What must hold."""
        foot, released = self.foot, self.released()
        worst: dict[tuple[str, str], Check] = {}
        for one in (check for contact in self.contacts_m for check in self._carrying(contact)):
            before = worst.setdefault((one.what, one.push), one)
            if one.times < before.times:
                worst[one.what, one.push] = one
        return (
            *worst.values(),
            *(foot_checks(foot, self.pushes) if foot is not None else ()),
            *((released,) if released is not None else ()),
        )  # fmt: skip

    def _carrying(self, contact_m: tuple[float, float, float]) -> tuple[Check, ...]:
        """Joints and clamp, pushed at one place."""
        lets_go = self.coupling is not None
        of_joints = neck_checks if self.mount.kind == "gooseneck" else joint_checks
        checks = of_joints(
            self.way.points_m, self.mount.holding_nm, self.pushes, self.weights, contact_m=contact_m,
            tilts_rad=self.tilts_rad, lets_go=lets_go,
        )  # fmt: skip
        if self.tube_way is None:
            return checks
        slips = self.mount.holding_nm[0] if self.mount.holding_nm else None
        turns = clamp_checks(
            self.way.points_m[0], self.tube_way, contact_m, self.pushes, self.weights, slips,
            tilts_rad=self.tilts_rad, lets_go=lets_go,
        )  # fmt: skip
        return (*checks, *turns)

    def readings(self) -> tuple[Reading, ...]:
        """All rules that it keeps or breaks."""
        return (*(reading_of(one) for one in self.checks()), *give_reading(self.held, self.mount))

    def unmeasured(self) -> list[Unmeasured[Hung]]:
        """Figures that nobody measured."""

        def with_device(change: Callable[[HeldDevice], HeldDevice]) -> Callable[[Hung], Hung]:
            return lambda one: replace(one, held=change(one.held))

        def with_mount(change: Callable[[Mount], Mount]) -> Callable[[Hung], Hung]:
            return lambda one: replace(one, mount=change(one.mount))

        def with_fastener(change: Callable[[Fastener], Fastener]) -> Callable[[Hung], Hung]:
            return lambda one: one if one.fastener is None else replace(one, fastener=change(one.fastener))

        joints = 1 if self.mount.kind == "gooseneck" else len(self.way.points_m)
        return [
            *of_device(self.held, with_device, heavy=False),
            *of_mount(self.mount, joints, with_mount),
            *of_fastener(self.fastener, with_fastener),
            *self._of_plate(),
        ]

    def _of_plate(self) -> list[Unmeasured[Hung]]:
        if self.plate_kg is not None:
            return []
        long, short = sorted((self.held.outline_m or UNMEASURED_BASE_M)[:2], reverse=True)
        measure = (
            message(ToMeasure.weigh, thing=Name(self.plate.name))
            if self.plate is not None
            else message(ToMeasure.plate, long_m=long, short_m=short)
        )
        light, heavy = PLATE_KG
        return [Unmeasured(measure, lambda one: replace(one, plate_kg=light), lambda one: replace(one, plate_kg=heavy))]


def plate_for(held: HeldDevice, kit: Kit) -> Mount | None:
    """The smallest plate of the kit that takes all devices side by side; None for one device, or where none is large enough."""
    if held.pieces < 2:
        return None
    wanted = sorted((held.outline_m or (0.0, 0.0))[:2])
    found = [
        (one.size_m[0] * one.size_m[1], place, one)
        for place, one in enumerate(kit.mount)
        if one.kind == "plate" and one.in_stock and one.size_m is not None
        and all(has >= needs for has, needs in zip(sorted(one.size_m), wanted, strict=True))
    ]  # fmt: skip
    return min(found, default=(0.0, 0, None), key=lambda each: each[:2])[2]


def hung(asked: MountRequest, mount: Mount, way: ArmPose) -> Hung:
    """An arm in its place, with the strongest fastener of the kit and, by the face, with a coupling that lets go: one of which
    somebody measured at what force.
    """
    coupling = next((one for one in _couplings(asked.kit) if one.release_n is not None), None)
    plate = plate_for(asked.held, asked.kit)
    plate_kg = 0.0 if asked.held.pieces < 2 else plate.mass_kg if plate is not None else None
    return Hung(
        held=asked.held,
        mount=mount,
        way=way,
        pose=asked.pose,
        pushes=asked.pushes,
        tilts_rad=_tilts(asked.room, way.clamp),
        tube_way=_tube_way(asked.room, way.clamp),
        fastener=next(iter(stronger_first(asked.kit)), None),
        coupling=coupling if asked.by_face else None,
        release_limit_n=asked.site.release_limit_n,
        by_face=asked.by_face,
        plate=plate,
        plate_kg=plate_kg,
    )


def _couplings(kit: Kit) -> list[Mount]:
    return [one for one in kit.mount if one.kind == "breakaway coupling" and one.in_stock]


def on_arm(asked: MountRequest, mount: Mount, way: ArmPose) -> MountFit:
    """On an arm or gooseneck clamped to a tube or an edge."""
    held, one = asked.held, hung(asked, mount, way)
    found = judged(one, one.unmeasured(), by_face=asked.by_face)
    fastener, window, released = one.fastener, one.window(), one.released()
    on = holder_of(asked.room, way.clamp)
    refused = () if on is None else broken_rules(
        asked.site, mount, on, asked.room, contact_m=asked.pose.contact_m, site_moves_with=asked.moves_with,
        tolerance_m=asked.pose.may_be_off_m, thing=held.kind, breakaway=one.coupling is not None, release=window,
        unmeasured=next((each.name for each in _couplings(asked.kit)), None),
    )  # fmt: skip
    give = mount.give_n_per_m if mount.give_n_per_m is not None else math.inf
    shares = tip_shares(mount.links_m, bends=mount.kind == "gooseneck")
    sunk, leans = _sag(one, give, shares)
    used = one.coupling if released is not None else None
    return MountFit(
        mount=mount.name, kind=mount.kind, on=way.clamp, fastener=fastener.name if fastener else None,
        patch_m=(held.base_m[0], held.base_m[1]) if held.base_m and fastener else None, arm=way, checks=found.checks,
        margin=margin(found.checks), give_n_per_m=give, lost_share=held.lost_share(give), droop_m=sunk, droop_rad=leans,
        ringing_hz=ringing_hz(give, _swinging_kg(held, mount, shares)) if math.isfinite(give) else math.nan,
        parts=(held.named, Name(mount.name), *(Name(part.name) for part in (one.plate, fastener, used) if part is not None)),
        take_off_s=None, plate=one.plate.name if one.plate is not None else None,
        verdict=verdict_of(found, refused), fails=found.fails, refused=refused,
        change=smallest_change(
            one.checks(), foot=one.foot, pushes=asked.pushes, arm=ArmChange(math.dist(way.points_m[0], asked.pose.contact_m)),
            fasteners=[each for each in asked.kit.fastener if each.in_stock],
        ) if found.fails else None, dimensions=dimensions(asked.room, asked.pose, "seat" if on is None else on.moves_with, way),
        cable_m=_length(way.points_m) + head_of(mount) + LOOP_M, cable_slack_m=LOOP_M,
        assumed=(*_assumed(mount, held, fastener), *_side_by_side(one), *unmeasured_words(held), *way.assumed),
        lever_m=(reach_of(held), 0.0), openings=fastener.openings if fastener else None,
        coupling=used.name if used is not None else None,
        release_nm=(released.loads, released.limit) if released is not None else None,
        release_n=_released_n(released, window), release_agreed=window is not None and window.limit_n is not None,
        doubts=() if found.fails else (*found.doubts, *asked.tilt_warnings(on), *way.doubts),
    )  # fmt: skip


def _sag(one: Hung, give: float, shares: TipShares) -> tuple[float, float]:
    """How far its end sinks and turns; 0 where its give was not measured."""
    if not math.isfinite(give):
        return 0.0, 0.0
    if one.mount.kind == "gooseneck":
        sags = (neck_sag(one.way.points_m, give, one.weights, tilt) for tilt in one.tilts_rad)
        worst = max(sags, key=lambda sag: sag.droop_m)
        return worst.droop_m, worst.droop_rad
    sunk = droop_m(one.held.whole_kg + shares.sinks * (one.mount.mass_kg or 0.0), give)
    return sunk, droop_rad(sunk, sum(one.mount.links_m) or 1e-9) if sunk else 0.0


def _released_n(released: Check | None, window: ReleaseWindow | None) -> tuple[float, float | None] | None:
    """The ends of a release at the contact point: of what it must carry in play the push alone, and the push that frees it at most."""
    if released is None or window is None:
        return None
    most = None if released.limit is None else window.force_n(released.limit)[0]
    return window.force_n(released.loads)[0], most


def _swinging_kg(held: HeldDevice, mount: Mount, shares: TipShares) -> float | None:
    """The device and what counts of the arm's own mass; None when one of them was not weighed."""
    if not held.whole_kg or mount.mass_kg is None:
        return None
    return held.whole_kg + shares.swings * mount.mass_kg


def _assumed(mount: Mount, held: HeldDevice, fastener: Fastener | None) -> tuple[Message, ...]:
    out, name, device = [], Name(mount.name), Name(held.device)
    if mount.give_n_per_m is None:
        out.append(message(MountAssumed.flex, mount=name))
    if mount.mass_kg is None:
        out.append(message(MountAssumed.mount_weight, mount=name))
    if fastener is None:
        out.append(message(MountAssumed.screwed, device=device, mount=name))
    if held.kind == "switch":
        out.append(message(MountAssumed.facing, device=device))
    return tuple(out)


def _side_by_side(one: Hung) -> tuple[Message, ...]:
    """Where several devices are on their plate, and what plate it is."""
    held = one.held
    if held.pieces < 2:
        return ()
    wide = (held.base_m or UNMEASURED_BASE_M)[1]
    plate, weighed = None if one.plate is None else Name(one.plate.name), one.plate_kg is not None
    return (
        message(MountAssumed.side_by_side, pieces=held.pieces, plate=plate, weighed=weighed, apart_m=wide),
    )  # fmt: skip


def _tilts(room: Room, clamp: str) -> tuple[float, ...]:
    """Tilts at which what is clamped there is looked at."""
    on = holder_of(room, clamp)
    if on is None or not tilts_with_seat(on.moves_with):
        return (0.0,)
    return tuple(float(tilt) for tilt in np.linspace(room.tilt_from_rad, room.tilt_to_rad, TILTS))


def _tube_way(room: Room, clamp: str) -> tuple[float, float, float] | None:
    """Direction of the tube that a clamp could turn on; an edge holds it by two jaws, and where both ends of a tube were
    told as one point the first joint, which is checked about every axis, stands for it."""
    tube = next((one for one in room.tube if one.name == clamp), None)
    if tube is None:
        return None
    x, y, z = (end - start for start, end in zip(tube.from_m, tube.to_m, strict=True))
    return (x, y, z) if math.hypot(x, y, z) > 0 else None


def _length(points: Sequence[tuple[float, float, float]]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(points))


def cannot(mount: Mount, why: Message) -> MountFit:
    """An arm that does not reach from anywhere."""
    return MountFit(
        mount=mount.name, kind=mount.kind, on="", fastener=None, patch_m=None, arm=None, checks=(), margin=0.0,
        give_n_per_m=math.inf, lost_share=0.0, droop_m=0.0, droop_rad=0.0, ringing_hz=math.nan, parts=(Name(mount.name),),
        take_off_s=None, verdict="does_not_hold", fails=(why,), refused=(), change=None, dimensions=(), cable_m=None,
    )  # fmt: skip
