"""The way of a cable before it comes to where it is tied: along an arm, and to a hub of which only the place is known."""

from __future__ import annotations

from collections.abc import Sequence

from stickwright.model.mounting import SiteMount
from stickwright.model.room import Room
from stickwright.model.sharing import HeldWay

__all__ = ["along_axes_m", "held_ways"]

Point = tuple[float, float, float]


def held_ways(mounts: Sequence[SiteMount], room: Room) -> tuple[HeldWay, ...]:
    """For every device that something holds, the way of its cable along it, and from there to the hub where the room tells.

    Parameters
    ----------
    mounts : sequence of SiteMount
        Without a choice nothing is said of the device.
    room : Room
        Its `hub_at_m` is with the seat level, as every other point.

    Notes
    -----
    Assumed: a cable is tied along the axes of the room, not across it, so right, forward and up are added up.
    """
    out = []
    for mount in mounts:
        choice = mount.choice
        if choice is None or mount.pose is None:
            continue
        start = choice.arm.points_m[0] if choice.arm is not None else mount.pose.base_m
        along = choice.cable_m or 0.0
        floor = next((one for one in room.surface if one.name == choice.on), None)
        if choice.kind == "floor stand" and floor is not None:  # down the stand: it is tied from the foot on
            top, start = start[2], (start[0], start[1], floor.corner_m[2])
            along = max(along, top - start[2])
        to_hub = along_axes_m(start, room.hub_at_m) if room.hub_at_m is not None else None
        out.append(HeldWay(mount.site, mount.device, along, choice.mount, to_hub, choice.cable_slack_m))
    return tuple(out)


def along_axes_m(start_m: Point, end_m: Point) -> float:
    """Way from one point to another along the axes of the room.

    Parameters
    ----------
    start_m, end_m : tuple of 3 floats

    Examples
    --------
    >>> round(along_axes_m((0.26, 0.39, 0.21), (0.0, -0.05, -0.25)), 2)
    1.16
    """
    return sum(abs(end - start) for start, end in zip(start_m, end_m, strict=True))
