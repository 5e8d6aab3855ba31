"""A device on a floor stand."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from stickwright.codes.message import Name, message
from stickwright.codes.to_measure import ToMeasure
from stickwright.model.kit import Mount
from stickwright.model.mounting import MountFit
from stickwright.model.room import Material
from stickwright.mounting.asked import (
    MountRequest,
    dimensions,
    entered,
    lacks_give,
    margin,
    unmeasured_words,
    verdict_of,
)
from stickwright.mounting.change import Stand, stand_change
from stickwright.mounting.friction import friction_range
from stickwright.mounting.held import HeldDevice
from stickwright.mounting.rules import broken_rules
from stickwright.mounting.statics import Pushes
from stickwright.mounting.support_stability import stand_checks
from stickwright.mounting.unmeasured import Reading, Unmeasured, give_reading, judged, of_device, of_mount, reading_of

__all__ = ["Stood", "on_stand"]


@dataclass(frozen=True)
class Stood:
    """A stand on a floor, with all figures that it is judged by.

    Parameters
    ----------
    held : HeldDevice
    mount : Mount
    height_m : float
        Contact point above the floor.
    floor : str or None
        What the floor is of.
    pushes : Pushes
    """

    held: HeldDevice
    mount: Mount
    height_m: float
    floor: Material | None
    pushes: Pushes

    def readings(self) -> tuple[Reading, ...]:
        """All rules that it keeps or breaks."""
        checks = stand_checks(self.mount, self.pushes, self.height_m, self.held.whole_kg, floor=self.floor)
        return (*(reading_of(check) for check in checks), *give_reading(self.held, self.mount))

    def unmeasured(self) -> list[Unmeasured[Stood]]:
        """Figures that nobody measured."""

        def with_device(change: Callable[[HeldDevice], HeldDevice]) -> Callable[[Stood], Stood]:
            return lambda one: replace(one, held=change(one.held))

        def with_mount(change: Callable[[Mount], Mount]) -> Callable[[Stood], Stood]:
            return lambda one: replace(one, mount=change(one.mount))

        out: list[Unmeasured[Stood]] = of_device(self.held, with_device, heavy=True)[: int(self.held.mass_kg is None)]
        out += of_mount(self.mount, 0, with_mount)
        if self.mount.friction is None:
            low, high = friction_range(self.floor)
            out.append(
                Unmeasured(
                    message(ToMeasure.friction_under, thing=Name(self.mount.name)),
                    with_mount(lambda one: one.model_copy(update={"friction": high})),
                    with_mount(lambda one: one.model_copy(update={"friction": low})),
                )
            )
        return out


def on_stand(asked: MountRequest, mount: Mount) -> list[MountFit]:
    """On a floor stand, over each floor that lies below."""
    held, pose, room = asked.held, asked.pose, asked.room
    out = []
    give = mount.give_n_per_m if mount.give_n_per_m is not None else math.inf
    for floor in room.surface:
        height = pose.contact_m[2] - floor.corner_m[2]
        if floor.kind != "floor" or height <= 0:
            continue
        one = Stood(held, mount, height, floor.material, asked.pushes)
        found = judged(one, one.unmeasured(), by_face=asked.by_face)
        refused = broken_rules(
            asked.site, mount, floor, room, contact_m=pose.contact_m, site_moves_with=asked.moves_with, tolerance_m=pose.may_be_off_m,
            thing=held.kind, entered=entered(asked),
        )  # fmt: skip
        change = stand_change(Stand(mount, height, held.whole_kg, floor.material), asked.pushes, asked.kit.fastener)
        out.append(
            MountFit(
                mount=mount.name, kind=mount.kind, on=floor.name, fastener=None, patch_m=None, arm=None, checks=found.checks,
                margin=margin(found.checks), give_n_per_m=give, lost_share=held.lost_share(give), droop_m=0.0, droop_rad=0.0,
                ringing_hz=math.nan, parts=(held.named, Name(mount.name)), take_off_s=None,
                verdict=verdict_of(found, refused), fails=found.fails, refused=refused,
                change=change if found.fails else None,
                dimensions=dimensions(room, pose, floor.moves_with), cable_m=None,
                assumed=(*lacks_give(mount), *unmeasured_words(held)),
                doubts=() if found.fails else (*found.doubts, *asked.tilt_warnings(floor)),
            )
        )  # fmt: skip
    return out
