"""An arm of links between a clamp and a plate: which points it reaches, and how its joints then stand.

Two links: a ball at the clamp, a hinge at the elbow, a ball under the plate. The elbow can lie anywhere on a circle about
the line from clamp to end: the swivel says where. A gooseneck or a single link has no joint angles.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.joint_settings import JointSettings
from stickwright.codes.message import message
from stickwright.codes.mount_problems import MountProblems
from stickwright.errors import BadInput, Problem
from stickwright.model.kit import Mount
from stickwright.model.mounting import Joint
from stickwright.mounting.frames import rotation

__all__ = [
    "MOST_STRAIGHT_SHARE", "JointAngles", "forward", "inverse", "joint_angles", "joints_in_words", "least_m", "reaches",
    "too_short_m", "with_straight_joints",
]  # fmt: skip

Array = NDArray[np.float64]
Point = tuple[float, float, float]

MOST_STRAIGHT_SHARE = 0.9
"""An arm straighter than this has no adjustment left."""
VERTICAL = 1e-9
"""Share of a line's length that is level, below which it counts as upright."""


@dataclass(frozen=True)
class JointAngles:
    """How the joints of an arm of two links stand."""

    azimuth_rad: float
    """Of the lower link, anticlockwise from the player's right, seen from above."""
    elevation_rad: float
    """Of the lower link above level."""
    roll_rad: float
    """Of the elbow's hinge about the lower link: 0 when the arm bends level, to its left."""
    bend_rad: float
    """At the elbow: 0 is straight."""


def reaches(distance_m: float | Array, links_m: Sequence[float]) -> NDArray[np.bool_]:
    """Whether the end of an arm can be so far from its clamp.

    Two links: not nearer than the difference of the links, not further than 0.9 of their sum. One link or a gooseneck: up
    to 0.9 of its length.

    Parameters
    ----------
    distance_m : float or array
        From clamp to end.
    links_m : sequence of 1 or 2 floats
        From the clamp.

    Returns
    -------
    array of bool

    Notes
    -----
    Source: workspace of a planar arm of two links [craig-2005]; a tenth kept from straight is fitters' practice
    [fitting-practice].

    Examples
    --------
    >>> reaches(np.array([0.01, 0.20, 0.24]), (0.14, 0.12)).tolist()
    [False, True, False]
    """
    distance = np.asarray(distance_m, dtype=np.float64)
    return (distance >= least_m(links_m)) & (distance <= MOST_STRAIGHT_SHARE * sum(links_m))


def least_m(links_m: Sequence[float]) -> float:
    """Least distance from clamp to end: the difference of two links; none for one.

    Parameters
    ----------
    links_m : sequence of 1 or 2 floats
    """
    return abs(links_m[0] - links_m[1]) if len(links_m) == 2 else 0.0


def too_short_m(distance_m: float, links_m: Sequence[float]) -> float:
    """How much longer an arm would have to be, to end so far from its clamp with a tenth of its length to spare.

    Parameters
    ----------
    distance_m : float
        From clamp to end.
    links_m : sequence of floats
        From the clamp.

    Returns
    -------
    float
        In metre; 0 when it is long enough.

    Examples
    --------
    >>> round(1000 * too_short_m(0.2646, (0.14, 0.12)))
    34
    """
    return max(0.0, distance_m / MOST_STRAIGHT_SHARE - sum(links_m))


def upright_frame(along: Array) -> tuple[Array, Array]:
    """Two directions across each line: the first as far up as it can be (forward for an upright line), the second a quarter
    turn further about the line: to the left of one who looks along it."""
    up = np.zeros_like(along)
    up[..., 2] = 1.0
    first = up - along[..., 2:3] * along
    length = np.linalg.norm(first, axis=-1, keepdims=True)
    ahead = np.zeros_like(along)
    ahead[..., 1] = 1.0
    ahead = ahead - along[..., 1:2] * along
    first = np.where(length > VERTICAL, first, ahead)
    first = first / np.linalg.norm(first, axis=-1, keepdims=True)
    return first, np.cross(along, first)


def elbows(clamp_m: Array, end_m: Array, links_m: Sequence[float], swivel_rad: Array) -> Array:
    """Elbow points for arrays of clamps, ends and swivels that are known to be reached; shapes broadcast."""
    upper, lower = links_m[1], links_m[0]
    span = end_m - clamp_m
    distance = np.linalg.norm(span, axis=-1, keepdims=True)
    along = span / distance
    first, second = upright_frame(along)
    foot = (lower**2 - upper**2 + distance**2) / (2.0 * distance)
    radius = np.sqrt(np.maximum(lower**2 - foot**2, 0.0))
    swivel = np.asarray(swivel_rad, dtype=np.float64)[..., None]
    out: Array = clamp_m + foot * along + radius * (np.cos(swivel) * first + np.sin(swivel) * second)
    return out


def inverse(
    clamp_m: Sequence[float], end_m: Sequence[float], links_m: Sequence[float], swivel_rad: float = 0.0
) -> tuple[Point, Point, Point]:
    """Clamp, elbow and end of an arm of two links that is to end at a point.

    Cosine rule in the triangle of the two links; the triangle is turned about the line from clamp to end by the swivel.

    Parameters
    ----------
    clamp_m, end_m : sequence of 3 floats
        Where the arm begins and is to end.
    links_m : sequence of 2 floats
        Lower link, upper link.
    swivel_rad : float, default 0.0
        0: elbow above the line (in front of an upright one); a quarter turn: elbow to the left, looking from clamp to end;
        half a turn: below.

    Returns
    -------
    tuple of 3 points

    Raises
    ------
    BadInput
        The arm is too short, or cannot fold so far, or has not two links.

    Notes
    -----
    Source: inverse kinematics of two links by the cosine rule, and arms with more joints than needed (elbow circle)
    [craig-2005].

    Examples
    --------
    >>> clamp, elbow, end = inverse((0, 0, 0), (0.2, 0, 0), (0.12, 0.16))
    >>> [round(1000 * value) for value in elbow]
    [72, 0, 96]
    """
    if len(links_m) != 2:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="arm"),
                message(MountProblems.links, count=len(links_m)),
                message(MountProblems.links, count=2),
            )
        )
    start, end = np.asarray(clamp_m, dtype=np.float64), np.asarray(end_m, dtype=np.float64)
    distance = float(np.linalg.norm(end - start))
    long, near = sum(links_m), least_m(links_m)
    if distance > long:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="arm"),
                message(MountProblems.apart, distance_m=distance),
                message(MountProblems.at_most, length_m=long),
                message(MountProblems.too_short, missing_m=too_short_m(distance, links_m)),
            )
        )
    if distance < near or distance == 0.0:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="arm"),
                message(MountProblems.apart, distance_m=distance),
                message(MountProblems.at_least, near_m=near or None),
                message(MountProblems.further),
            )
        )
    elbow = elbows(start, end, links_m, np.asarray(swivel_rad))
    return _point(start), _point(elbow), _point(end)


def _point(values: Array) -> Point:
    return float(values[0]), float(values[1]), float(values[2])


def joint_angles(points_m: Sequence[Sequence[float]]) -> JointAngles:
    """Angles of the joints of an arm whose clamp, elbow and end are known.

    Parameters
    ----------
    points_m : sequence of 3 points
        Clamp, elbow, end, in metres.

    Returns
    -------
    JointAngles
        An arm that stands upright counts as pointing right; a straight one has roll 0.

    Examples
    --------
    >>> found = joint_angles(((0, 0, 0), (0, 0.1, 0), (-0.1, 0.1, 0)))
    >>> round(math.degrees(found.azimuth_rad)), round(math.degrees(found.bend_rad)), round(found.roll_rad, 9)
    (90, 90, 0.0)
    """
    clamp, elbow, end = (np.asarray(point, dtype=np.float64) for point in points_m)
    lower, upper = elbow - clamp, end - elbow
    level = math.hypot(lower[0], lower[1])
    azimuth = math.atan2(lower[1], lower[0]) if level > VERTICAL * float(np.linalg.norm(lower)) else 0.0
    elevation = math.atan2(lower[2], level)
    along, left, up = _link_frame(azimuth, elevation).T
    across, over = float(upper @ left), float(upper @ up)
    bend = math.atan2(math.hypot(across, over), float(upper @ along))
    return JointAngles(azimuth, elevation, math.atan2(over, across) if bend > 0.0 else 0.0, bend)


def _link_frame(azimuth_rad: float, elevation_rad: float) -> Array:
    """Columns: along a link, level to its left, and up across it."""
    return np.asarray(rotation("up", azimuth_rad) @ rotation("forward", -elevation_rad), dtype=np.float64)


def forward(clamp_m: Sequence[float], links_m: Sequence[float], angles: JointAngles) -> tuple[Point, Point, Point]:
    """Clamp, elbow and end of an arm of two links whose joints are set.

    Parameters
    ----------
    clamp_m : sequence of 3 floats
        Where it begins.
    links_m : sequence of 2 floats
        Lower link, upper link.
    angles : JointAngles

    Returns
    -------
    tuple of 3 points

    Notes
    -----
    Source: products of rotations along a chain of links [craig-2005].

    Examples
    --------
    >>> points = inverse((0.1, 0.2, 0.3), (0.2, 0.35, 0.32), (0.14, 0.12), 2.0)
    >>> again = forward((0.1, 0.2, 0.3), (0.14, 0.12), joint_angles(points))
    >>> bool(np.allclose(points, again, atol=1e-9))
    True
    """
    frame = _link_frame(angles.azimuth_rad, angles.elevation_rad)
    start = np.asarray(clamp_m, dtype=np.float64)
    elbow = start + links_m[0] * frame[:, 0]
    aside = math.cos(angles.roll_rad) * frame[:, 1] + math.sin(angles.roll_rad) * frame[:, 2]
    end = elbow + links_m[1] * (math.cos(angles.bend_rad) * frame[:, 0] + math.sin(angles.bend_rad) * aside)
    return _point(start), _point(elbow), _point(end)


def joints_in_words(
    points_m: Sequence[Sequence[float]], turn_rad: float = 0.0, tilt_rad: float = 0.0
) -> tuple[Joint, ...]:
    """The joints of an arm of two links, each with its angle and a sentence to set it by.

    Parameters
    ----------
    points_m : sequence of 3 points
        Clamp, elbow, end.
    turn_rad, tilt_rad : float
        Of the plate at its end: anticlockwise seen from above, and towards the player.

    Returns
    -------
    tuple of Joint

    Examples
    --------
    >>> [joint.name for joint in joints_in_words(((0, 0, 0), (0.1, 0.0, 0.1), (0.2, 0.0, 0.0)))]
    ['lower_link', 'elbow', 'plate']
    """
    angles = joint_angles(points_m)
    _, elbow, end = (np.asarray(point, dtype=np.float64) for point in points_m)
    upper = end - elbow
    azimuth, elevation = math.atan2(upper[1], upper[0]), math.atan2(upper[2], math.hypot(upper[0], upper[1]))
    lower = message(JointSettings.lower_link, azimuth_rad=angles.azimuth_rad, elevation_rad=angles.elevation_rad)
    bent = message(JointSettings.elbow, bend_rad=angles.bend_rad, azimuth_rad=azimuth, elevation_rad=elevation)
    return (
        Joint("lower_link", angles.elevation_rad, lower),
        Joint("elbow", angles.bend_rad, bent),
        plate_joint(turn_rad, tilt_rad),
    )


def plate_joint(turn_rad: float, tilt_rad: float) -> Joint:
    """The ball under the plate, set by how the plate lies."""
    words = message(JointSettings.plate, azimuth_rad=turn_rad + math.pi / 2, tilt_rad=tilt_rad)
    return Joint("plate", tilt_rad, words)


def with_straight_joints(arm: Array, mount: Mount, links: tuple[float, ...]) -> tuple[Point, ...]:
    """All joints of an arm, those that are kept straight too.

    Parameters
    ----------
    arm : array, shape (2 or 3, 3)
        Clamp, elbow and end.
    mount : Mount
    links : tuple of 1 or 2 floats
        As they are grouped.
    """
    if len(links) == 1:
        points = list(arm)
    else:
        reached = np.cumsum(mount.links_m)
        lower = [arm[0] + (arm[1] - arm[0]) * (way / links[0]) for way in reached if way < links[0] - 1e-9]
        upper = [
            arm[1] + (arm[2] - arm[1]) * ((way - links[0]) / links[1]) for way in reached[:-1] if way > links[0] + 1e-9
        ]
        points = [arm[0], *lower, arm[1], *upper, arm[2]]
    return tuple((float(p[0]), float(p[1]), float(p[2])) for p in points)
