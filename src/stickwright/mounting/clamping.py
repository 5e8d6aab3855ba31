"""Whether a clamp has the room that it takes: along the tube or edge, and behind the edge."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.arm_reasons import ArmReasons, Line
from stickwright.codes.message import Message, Name, message
from stickwright.model.kit import Mount
from stickwright.model.room import Edge, Tube

__all__ = ["clear_of_ends", "too_little_room"]


def too_little_room(mount: Mount, thing: Tube | Edge) -> Message | None:
    """Why the clamp of a mount does not go on here, and how much room is missing; None when it does, or nobody measured it.

    Parameters
    ----------
    mount : Mount
        Its `clamp_width_m` is taken along the tube or edge, its `jaw_depth_m` in from the edge.
    thing : Tube or Edge

    Examples
    --------
    >>> tube = Tube(name="stub", from_m=(0, 0, 0), to_m=(0, 0.06, 0), diameter_m=0.025)
    >>> too_little_room(Mount(name="arm", kind="friction arm", clamp_width_m=0.08), tube).text
    'no_room'
    """
    name, held = Name(mount.name), Name(thing.name)
    free = math.dist(thing.from_m, thing.to_m)
    width = mount.clamp_width_m
    if width is not None and free < width - 1e-9:
        kind: Line = "tube" if isinstance(thing, Tube) else "edge"
        return message(ArmReasons.no_room, line=kind, holder=held, mount=name, free_m=free, needs_m=width)
    jaw = mount.jaw_depth_m
    if isinstance(thing, Edge) and jaw is not None and thing.depth_m is not None and thing.depth_m < jaw - 1e-9:
        return message(ArmReasons.no_depth, holder=held, mount=name, free_m=thing.depth_m, needs_m=jaw)
    return None


def clear_of_ends(mount: Mount, along_m: NDArray[np.float64]) -> NDArray[np.bool_]:
    """At which places along a tube or edge the whole clamp is on it.

    Parameters
    ----------
    mount : Mount
    along_m : array, shape (n,)
        From one end, 0, to the other, in order.

    Returns
    -------
    array of bool, shape (n,)
        Where the clamp just goes on between two places, the one nearest to the middle.
    """
    half = (mount.clamp_width_m or 0.0) / 2
    whole: NDArray[np.bool_] = (along_m >= half - 1e-9) & (along_m <= along_m[-1] - half + 1e-9)
    if not whole.any():
        whole[int(np.argmin(abs(along_m - along_m[-1] / 2)))] = True
    return whole
