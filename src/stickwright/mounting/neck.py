"""A gooseneck: a curve of fixed length from its clamp to the base, which it meets square from below.

It has no links. It is taken to be bent as people bend it: two even bends, with straight stretches between them where it has
little to spare, before and after them where it has more. How tight the bends are decides whether it can be done.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.joint_settings import JointSettings
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.mount_problems import MountProblems
from stickwright.errors import BadInput, Problem
from stickwright.model.kit import Mount
from stickwright.model.mounting import Joint

__all__ = ["ASSUMED_LEAST_BEND_M", "PIECES", "Necks", "bent_necks", "least_bend_m", "neck_joints", "neck_points"]

Array = NDArray[np.float64]
Point = tuple[float, float, float]

ASSUMED_LEAST_BEND_M = 0.060
"""Radius below which a neck of usual thickness is not bent, where its papers do not tell: common practice, no source."""
PIECES = 24
"""Straight pieces that stand for the curve when it is drawn and kept clear of things."""
_HALVINGS = 60
_FAR = 50.0
"""Times the neck's length: bends that would begin further off are half circles to all that can be measured."""
_EXACT_M = 1e-7


@dataclass(frozen=True)
class Necks:
    """Curves of one length: straight, a bend, straight, a bend, straight.

    Parameters
    ----------
    foot_m, foot_way, end_m, end_way : array, shape (n, 3)
        Points, and directions of somebody who walks from foot to end.
    between_way : array, shape (n, 3)
        Direction between the two bends.
    straight_m : array, shape (n, 3)
        Straight stretches: at the foot, between the bends, at the end.
    bend_rad, bend_m : array, shape (n, 2)
        By how much each bend turns, and how long it is; both 0 and NaN where no neck of this length can be bent so.
    """

    foot_m: Array
    foot_way: Array
    end_m: Array
    end_way: Array
    between_way: Array
    straight_m: Array
    bend_rad: Array
    bend_m: Array

    @property
    def radius_m(self) -> Array:
        """Of the tighter bend, shape (n,); infinity for a straight neck, 0 for one that cannot be bent so."""
        with np.errstate(divide="ignore", invalid="ignore"):
            each = np.where(self.bend_rad > _STRAIGHT_RAD, self.bend_m / self.bend_rad, np.inf)
        out: Array = np.where(np.isnan(self.bend_m).any(axis=1), 0.0, each.min(axis=1))
        return out

    def some(self, which: NDArray[np.intp]) -> Necks:
        """A few of them.

        Parameters
        ----------
        which : array of int
        """
        return Necks(
            foot_m=self.foot_m[which],
            foot_way=self.foot_way[which],
            end_m=self.end_m[which],
            end_way=self.end_way[which],
            between_way=self.between_way[which],
            straight_m=self.straight_m[which],
            bend_rad=self.bend_rad[which],
            bend_m=self.bend_m[which],
        )

    def at(self, along_m: Array) -> Array:
        """Points of each neck so far along it.

        Parameters
        ----------
        along_m : array, shape (k,)
            From the foot, at most the length.

        Returns
        -------
        array, shape (n, k, 3)
        """
        way = np.broadcast_to(np.asarray(along_m, dtype=np.float64), (len(self.foot_m), len(along_m)))
        out = np.broadcast_to(self.foot_m[:, None], (*way.shape, 3)).copy()
        stretches = (
            (self.straight_m[:, 0], self.foot_way, self.foot_way), (self.bend_m[:, 0], self.foot_way, self.between_way),
            (self.straight_m[:, 1], self.between_way, self.between_way), (self.bend_m[:, 1], self.between_way, self.end_way),
            (self.straight_m[:, 2], self.end_way, self.end_way),
        )  # fmt: skip
        done = np.zeros(len(self.foot_m))
        for length, begins, ends in stretches:
            here = np.clip(way - done[:, None], 0.0, length[:, None])
            out += _bent(here, length, begins, ends)
            done = done + length
        return out


_STRAIGHT_RAD = 1e-7


def _bent(along: Array, length: Array, begins: Array, ends: Array) -> Array:
    """How far one comes along an even bend between two directions; shape (n, k, 3)."""
    angle = _angle(begins, ends)
    aside = ends - np.einsum("nx,nx->n", ends, begins)[:, None] * begins
    size = np.linalg.norm(aside, axis=1)
    aside = aside / np.where(size > 0, size, 1.0)[:, None]
    curved = angle > _STRAIGHT_RAD
    radius = np.where(curved, length / np.where(curved, angle, 1.0), 1.0)
    turned = along / np.where(radius > 0, radius, 1.0)[:, None]
    ahead = np.where(curved[:, None], radius[:, None] * np.sin(turned), along)
    off = np.where(curved[:, None], radius[:, None] * (1.0 - np.cos(turned)), 0.0)
    out: Array = ahead[..., None] * begins[:, None] + off[..., None] * aside[:, None]
    return out


def _angle(first: Array, second: Array) -> Array:
    out: Array = np.arctan2(np.linalg.norm(np.cross(first, second), axis=1), np.einsum("nx,nx->n", first, second))
    return out


def least_bend_m(mount: Mount) -> tuple[float, Message | None]:
    """The radius that a neck may be bent to, and what was assumed for it.

    Examples
    --------
    >>> least_bend_m(Mount(name="neck", kind="gooseneck", least_bend_mm=80))
    (0.08, None)
    """
    if mount.least_bend_m is not None:
        return mount.least_bend_m, None
    taken = message(MountAssumed.neck_bend, mount=Name(mount.name), radius_m=ASSUMED_LEAST_BEND_M)
    return ASSUMED_LEAST_BEND_M, taken


def bent_necks(foot_m: Array, foot_way: Array, end_m: Array, end_way: Array, length_m: float, share: Array) -> Necks:
    """Necks of one length between points, with the direction at each end.

    Two points, as far along the direction at the foot as back along the direction at the end, make a path of three straight
    legs; its two corners are rounded by even bends that reach from corner to end. The further off the corners, the wider the
    bends and the longer the neck, until the bends meet. What is then still to spare stays straight at the ends. Length is 0
    more than the way at first and grows beyond any bound, without a jump: halving finds where it is the neck's own.

    Parameters
    ----------
    foot_m, foot_way, end_m, end_way : array, shape (n, 3)
        Points in metre, unit directions of somebody who walks from foot to end.
    length_m : float
        Longer than each way from foot to end.
    share : array, shape (n,)
        Of what is to spare, how much stays straight at the foot.

    Returns
    -------
    Necks
        Their radius is 0 where two bends of less than half a turn each cannot take up the length.

    Raises
    ------
    BadInput
        A neck that is not longer than the way.

    Notes
    -----
    Source: two arcs with a common tangent between two points and directions [bolton-1975]. Assumed: a neck stays as it is
    bent.

    Examples
    --------
    By hand: two bends by 90 degrees of radius 100 mm lead 200 mm ahead and 200 mm up, and are 314 mm long:

    >>> up = np.array([[0.0, 0.0, 1.0]])
    >>> neck = bent_necks(np.zeros((1, 3)), up, np.array([[0.0, 0.2, 0.2]]), up, 0.1 * math.pi, np.ones(1))
    >>> neck.radius_m.round(4).tolist(), np.degrees(neck.bend_rad).round(1).tolist()
    ([0.1], [[90.0, 90.0]])
    """
    chord = end_m - foot_m
    longest = float(np.linalg.norm(chord, axis=1).max(initial=0.0))
    if not length_m > longest:
        raise BadInput(
            Problem(
                message(MountProblems.part, part="gooseneck"),
                message(MountProblems.length, length_m=length_m),
                message(MountProblems.longer, distance_m=longest),
            )
        )
    none = np.zeros(len(chord))
    meet = _meeting(chord, foot_way, end_way, length_m)
    spare = _length(chord, foot_way, end_way, meet, none) < length_m
    low, high = none, np.where(spare, length_m, meet)
    both = share[:, None] * foot_way + (1.0 - share)[:, None] * end_way
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        left = np.where(spare, middle, 0.0)
        rest = chord - left[:, None] * both
        corner = np.where(spare, _meeting(rest, foot_way, end_way, length_m), middle)
        long = _length(rest, foot_way, end_way, corner, left) > length_m
        low, high = np.where(long, low, middle), np.where(long, middle, high)
    left = np.where(spare, low, 0.0)
    rest = chord - left[:, None] * both
    corner = np.where(spare, _meeting(rest, foot_way, end_way, length_m), low)
    leg = rest - corner[:, None] * (foot_way + end_way)
    size = np.linalg.norm(leg, axis=1)
    between = leg / np.where(size > 0, size, 1.0)[:, None]
    angles = np.stack([_angle(foot_way, between), _angle(between, end_way)], axis=1)
    bends = np.stack([_rounded(corner, angles[:, 0]), _rounded(corner, angles[:, 1])], axis=1)
    straight = np.stack([left * share, np.maximum(size - 2.0 * corner, 0.0), left * (1.0 - share)], axis=1)
    fits = np.abs(straight.sum(axis=1) + bends.sum(axis=1) - length_m) < _EXACT_M
    bends = np.where(fits[:, None], bends, np.nan)
    return Necks(
        foot_m=foot_m,
        foot_way=foot_way,
        end_m=end_m,
        end_way=end_way,
        between_way=between,
        straight_m=straight,
        bend_rad=angles,
        bend_m=bends,
    )


def _meeting(chord: Array, foot_way: Array, end_way: Array, length_m: float) -> Array:
    """How far off the corners are when the two bends meet: the middle leg is twice that, t^2 (2 d.e - 2) - 2 t v.(d + e) + v.v = 0."""
    whole = np.einsum("nx,nx->n", chord, chord)
    along = np.einsum("nx,nx->n", chord, foot_way + end_way)
    apart = np.maximum(2.0 - 2.0 * np.einsum("nx,nx->n", foot_way, end_way), 0.0)
    under = np.sqrt(along**2 + apart * whole)
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):  # whichever form takes no difference of likes
        root = np.where(along > 0, whole / (along + under), (under - along) / apart)
    far = _FAR * length_m
    return np.where(np.isfinite(root), np.minimum(root, far), far)


def _rounded(corner: Array, angle: Array) -> Array:
    """Length of an even bend that reaches so far from its corner on both sides."""
    curved = angle > _STRAIGHT_RAD
    half = 0.5 * np.where(curved, angle, 1.0)
    out: Array = np.where(curved, corner * angle / np.tan(half), 2.0 * corner)
    return out


def _length(rest: Array, foot_way: Array, end_way: Array, corner: Array, left: Array) -> Array:
    leg = rest - corner[:, None] * (foot_way + end_way)
    size = np.linalg.norm(leg, axis=1)
    bends = _rounded(corner, _angle(foot_way, leg)) + _rounded(corner, _angle(leg, end_way))
    out: Array = left + bends + np.maximum(size - 2.0 * corner, 0.0)
    return out


def neck_points(neck: Necks) -> tuple[Point, ...]:
    """One neck as points, equally far apart along it.

    Parameters
    ----------
    neck : Necks
        Of one.
    """
    length = float(neck.straight_m.sum() + neck.bend_m.sum())
    return tuple(_point(point) for point in neck.at(np.linspace(0.0, length, PIECES + 1))[0])


def neck_joints(neck: Necks, plate: Joint) -> tuple[Joint, ...]:
    """How to bend a neck: its foot, its middle, its plate.

    Parameters
    ----------
    neck : Necks
        Of one.
    plate : Joint
        The plate at its end.

    Returns
    -------
    tuple of 3 Joint
    """
    foot, between = (_direction(way[0]) for way in (neck.foot_way, neck.between_way))
    bends = [
        (None, None) if angle <= math.radians(0.5) else (angle, long / angle)
        for angle, long in zip(neck.bend_rad[0].tolist(), neck.bend_m[0].tolist(), strict=True)
    ]
    before, within, after = (size if size >= 0.0005 else None for size in neck.straight_m[0].tolist())
    points = neck_points(neck)
    right, ahead, up = (b - a for a, b in zip(points[0], points[PIECES // 2], strict=True))
    leaves = message(
        JointSettings.foot,
        azimuth_rad=foot[0], elevation_rad=foot[1], straight_m=before, bend_rad=bends[0][0], radius_m=bends[0][1],
    )  # fmt: skip
    runs = message(
        JointSettings.middle, azimuth_rad=between[0], elevation_rad=between[1], straight_m=within, bend_rad=bends[1][0],
        radius_m=bends[1][1], after_m=after, right_m=right, forward_m=ahead, up_m=up,
    )  # fmt: skip
    return (Joint("foot", foot[1], leaves), Joint("middle", between[1], runs), plate)


def _direction(way: Array) -> tuple[float, float]:
    return math.atan2(way[1], way[0]), math.atan2(way[2], math.hypot(way[0], way[1]))


def _point(values: Array) -> Point:
    return float(values[0]), float(values[1]), float(values[2])
