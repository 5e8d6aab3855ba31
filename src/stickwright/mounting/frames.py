"""What tilts with the seat and what stays: rotations, and how far the two part company.

Positions are told in the body frame with the seat level. What moves with the seat turns about the tilt axis (left to right,
through the pivot); what moves with the base or the room stays.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.room import MovesWith, Room

__all__ = ["pivot_of", "relative_shift_m", "rotation", "tilt_steps_rad", "tilted", "tilts_with_seat", "turned"]

Array = NDArray[np.float64]
TILT_STEP_RAD = math.radians(3.0)


def rotation(axis: Literal["right", "forward", "up"], angle_rad: float) -> Array:
    """Rotation about one axis of a frame: anticlockwise, seen from where the axis points to.

    Returns
    -------
    array, shape (3, 3)

    Examples
    --------
    >>> print((rotation("up", math.radians(90)) @ [1, 0, 0]).round(3))
    [0. 1. 0.]
    """
    along = ("right", "forward", "up").index(axis)
    first, second = (along + 1) % 3, (along + 2) % 3
    out = np.eye(3)
    out[first, first] = out[second, second] = math.cos(angle_rad)
    out[second, first] = math.sin(angle_rad)
    out[first, second] = -out[second, first]
    return out


def tilted(points: Array | Sequence[float], tilt_rad: float, pivot_m: Sequence[float]) -> Array:
    """Where points of the seat are once the seat is tilted.

    A turn about the axis from left to right through the pivot: what is in front of it rises, what is above it goes back.

    Parameters
    ----------
    points : array, shape (..., 3)
        In metres, with the seat level.
    tilt_rad : float
        Positive is back.
    pivot_m : sequence of 3 floats
        A point of the axis.

    Returns
    -------
    array, shape (..., 3)

    Notes
    -----
    Source: rotation about a fixed axis [craig-2005].

    Examples
    --------
    >>> print(tilted([0.2, 0.5, 0.0], math.radians(90), (0.0, 0.0, 0.0)).round(3))
    [0.2 0.  0.5]
    """
    given = np.asarray(points, dtype=np.float64)
    pivot = np.asarray(pivot_m, dtype=np.float64)
    cos, sin = math.cos(tilt_rad), math.sin(tilt_rad)
    forward, up = given[..., 1] - pivot[1], given[..., 2] - pivot[2]
    return np.stack([given[..., 0], pivot[1] + forward * cos - up * sin, pivot[2] + forward * sin + up * cos], axis=-1)


def turned(turn_rad: float, tilt_rad: float) -> Array:
    """Rotation of a base: first tilted towards the player, then turned, seen from above.

    Parameters
    ----------
    turn_rad : float
        Anticlockwise seen from above.
    tilt_rad : float
        Of the base towards the player.

    Returns
    -------
    array, shape (3, 3)
        Columns: where the base's right, forward and up point.

    Examples
    --------
    >>> print((turned(0.0, math.radians(30)) @ [0, 0, 1]).round(3))
    [ 0.    -0.5    0.866]
    """
    return np.asarray(rotation("up", turn_rad) @ rotation("right", tilt_rad), dtype=np.float64)


def relative_shift_m(point_m: Array | Sequence[float], pivot_m: Sequence[float], tilt_change_rad: float) -> float:
    """How far a point of the seat moves, seen from what does not tilt, when the tilt changes.

    The chord 2 R sin(change/2), R the distance from the tilt axis in the plane of the tilt.

    Parameters
    ----------
    point_m : sequence of 3 floats
        With the seat level.
    pivot_m : sequence of 3 floats
        A point of the tilt axis.
    tilt_change_rad : float
        From the least tilt to the most.

    Returns
    -------
    float
        In metre, 0 or more.

    Notes
    -----
    Source: chord of a circle [hibbeler-statics].

    Examples
    --------
    >>> round(1000 * relative_shift_m((0.1, 0.0, 0.9), (0.0, 0.0, 0.0), math.radians(25)))
    390
    """
    radius = math.hypot(float(point_m[1]) - pivot_m[1], float(point_m[2]) - pivot_m[2])
    return 2.0 * radius * abs(math.sin(tilt_change_rad / 2.0))


def pivot_of(room: Room) -> tuple[tuple[float, float, float], Message | None]:
    """The tilt axis of a room, and what was assumed for it.

    Returns
    -------
    tuple of (point, Message or None)
        A point of the axis; the assumption in words when the chair tilts and the pivot was not measured.
    """
    if room.tilt_pivot_m is not None:
        return room.tilt_pivot_m, None
    if room.tilt_from_rad == room.tilt_to_rad == 0.0:
        return (0.0, 0.0, 0.0), None
    return (0.0, 0.0, 0.0), message(MountAssumed.pivot)


def tilt_steps_rad(room: Room, step_rad: float = TILT_STEP_RAD) -> Array:
    """Tilts at which a set-up is looked at, from the least used in play to the most.

    Parameters
    ----------
    room : Room
    step_rad : float
        At most so far apart.

    Returns
    -------
    array, shape (n,)
        One tilt when the chair stays as it is.
    """
    low, high = sorted((room.tilt_from_rad, room.tilt_to_rad))
    steps = math.ceil((high - low) / step_rad - 1e-9)
    return np.linspace(low, high, steps + 1) if steps > 0 else np.array([low])


def tilts_with_seat(moves_with: MovesWith) -> bool:
    """Whether a thing tilts; what stands on the chair's undercarriage or in the room does not."""
    return moves_with == "seat"
