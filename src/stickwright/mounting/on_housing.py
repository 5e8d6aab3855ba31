"""A flat face of a device's housing as a place for a switch, once it is chosen what holds that device."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from stickwright.model.kit import HousingFlat, Kit
from stickwright.model.mounting import SiteMount
from stickwright.model.room import Room, Surface
from stickwright.mounting.asked import holder_of
from stickwright.mounting.frames import turned
from stickwright.mounting.statics import Pushes

__all__ = ["LEVEL_RAD", "both_pushes", "flat_name", "flat_of", "flats_of", "with_flats"]

LEVEL_RAD = math.radians(5)
"""How far a flat may be off level and still carry a switch as a table does: common practice, no source."""


def flat_name(device: str) -> str:
    """What the flat of a device is called as a surface.

    Examples
    --------
    >>> flat_name("dew")
    'flat of dew'
    """
    return f"flat of {device}"


def flat_of(kit: Kit, device: str) -> HousingFlat | None:
    """The flat of a stick's or a controller's housing; None where it has none."""
    flats = {one.name: one.flat for one in kit.stick} | {one.name: one.flat for one in kit.controller if one.flat}
    return flats.get(device)


def flats_of(mounts: Sequence[SiteMount], room: Room, kit: Kit) -> dict[str, Surface]:
    """Each flat where its device now stands, by the site of that device.

    Returns
    -------
    dict
        Level flats alone. Of one whose device is turned, the largest part that lies straight to the room's axes whatever the turn.
    """
    out = {}
    for mount in mounts:
        flat = flat_of(kit, mount.device) if mount.kind != "switch" else None
        pose, choice = mount.pose, mount.choice
        if flat is None or pose is None or choice is None or abs(pose.tilt_rad) > LEVEL_RAD:
            continue
        middle = np.asarray(pose.base_m) + turned(pose.turn_rad, pose.tilt_rad) @ np.asarray(flat.at_m)
        straight = abs(math.sin(pose.turn_rad)) < math.sin(LEVEL_RAD) and math.cos(pose.turn_rad) > 0
        width, depth = flat.size_m if straight else (min(flat.size_m) / math.sqrt(2),) * 2
        on = holder_of(room, choice.on)
        out[mount.site] = Surface(
            name=flat_name(mount.device), kind="table",
            corner_m=(float(middle[0] - width / 2), float(middle[1] - depth / 2), float(middle[2])),
            size_m=(width, depth), fastened=True, moves_with=on.moves_with if on is not None else "room",
        )  # fmt: skip
    return out


def with_flats(room: Room, flats: Sequence[Surface]) -> Room:
    """The room with flats among its surfaces."""
    return room.model_copy(update={"surface": (*room.surface, *flats)})


def both_pushes(device: Pushes, press: Pushes, contact_height_m: float, press_height_m: float) -> Pushes:
    """The push on the device that loads what holds it as much as that push and the press on the switch together.

    Parameters
    ----------
    device, press : Pushes
    contact_height_m : float
        Of the device's contact point above the underside of its base.
    press_height_m : float
        How far the press is from the middle of that underside.

    Notes
    -----
    Moments about the base add up, F_device h_contact + F_press h_press, and so do the forces: the press counts as one at the contact
    point, enlarged where its lever is longer, never made smaller. Both are taken in the same direction (to the safe side).

    Examples
    --------
    >>> both_pushes(Pushes(2.0, 5.0), Pushes(1.5, 0.0), 0.050, 0.075)
    Pushes(working_n=4.25, involuntary_n=7.25)
    """
    lever = max(1.0, press_height_m / contact_height_m) if contact_height_m > 0 else 1.0
    involuntary = max(device.involuntary_n + lever * press.working_n, device.working_n + lever * press.involuntary_n)
    shaken = device.involuntary_n > 0 or press.involuntary_n > 0
    return Pushes(device.working_n + lever * press.working_n, involuntary if shaken else 0.0)
