"""Whether a clamp has the room that it takes: along the tube or edge, and behind the edge."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.model.kit import Mount
from stickwright.model.room import Edge, Tube
from stickwright.units import spoken

__all__ = ["clear_of_ends", "too_little_room"]


def too_little_room(mount: Mount, thing: Tube | Edge) -> str:
    """Why the clamp of a mount does not go on here, and by how many millimetres; empty when it does, or nobody measured it.

    Parameters
    ----------
    mount : Mount
        Its `clamp_width_m` is taken along the tube or edge, its `jaw_depth_m` in from the edge.
    thing : Tube or Edge

    Examples
    --------
    >>> tube = Tube(name="stub", from_m=(0, 0, 0), to_m=(0, 0.06, 0), diameter_m=0.025)
    >>> too_little_room(Mount(name="arm", kind="friction arm", clamp_width_m=0.08), tube)
    "Tube 'stub' is free for 60 mm, the clamp of 'arm' takes 80 mm of it: 20 mm too little."
    """
    kind = "Tube" if isinstance(thing, Tube) else "Edge"
    free = math.dist(thing.from_m, thing.to_m)
    width = mount.clamp_width_m
    if width is not None and free < width - 1e-9:
        return (
            f"{kind} '{thing.name}' is free for {spoken(free, 'mm')}, the clamp of '{mount.name}' takes {spoken(width, 'mm')} of it: "
            f"{spoken(width - free, 'mm')} too little."
        )
    jaw = mount.jaw_depth_m
    if isinstance(thing, Edge) and jaw is not None and thing.depth_m is not None and thing.depth_m < jaw - 1e-9:
        return (
            f"Edge '{thing.name}' has {spoken(thing.depth_m, 'mm')} behind it, the jaw of '{mount.name}' reaches {spoken(jaw, 'mm')} in: "
            f"{spoken(jaw - thing.depth_m, 'mm')} too little."
        )
    return ""


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
