"""Whether a gooseneck holds what pulls at it, and how far it sinks."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.model.mounting import Check
from stickwright.mounting.statics import Pushes, Weight, joint_checks, joint_moment_nm
from stickwright.units import STANDARD_GRAVITY

__all__ = ["Sag", "neck_checks", "neck_sag"]

Array = NDArray[np.float64]
Point = tuple[float, float, float]
_GAUSS = ((0.5 - math.sqrt(0.15), 5 / 18), (0.5, 8 / 18), (0.5 + math.sqrt(0.15), 5 / 18))
"""Three places of each piece and their weights: exact for what grows with up to the fifth power."""


def neck_checks(
    points_m: Sequence[Sequence[float]], holding_nm: Sequence[float], pushes: Pushes, weights: Sequence[Weight], *,
    contact_m: Sequence[float], tilts_rad: Sequence[float], lets_go: bool,
) -> tuple[Check, ...]:  # fmt: skip
    """A neck where it is bent hardest: at its foot, and further up when it bows out so far that more pulls there.

    Parameters
    ----------
    points_m : sequence of points
        Along it from the clamp.
    holding_nm : sequence of floats
        Bending moment that it holds; none when not known.
    pushes : Pushes
    weights : sequence of (point, kg)
        As `arm_weights` gives them for these points.
    contact_m : sequence of 3 floats
        Where the push acts.
    tilts_rad : sequence of floats
        Of the seat, when the neck tilts with it.
    lets_go : bool
        Whether it may give way to a spasm on purpose.

    Returns
    -------
    tuple of Check
        Each kind of push at the foot, then where more pulls, if anywhere.

    Notes
    -----
    Source: bending moment along a beam, as the moment of all beyond the section [hibbeler-mechanics].
    """
    force = max(pushes.counted(), key=lambda one: one[1])[1]
    mass, middle = _beyond(weights)
    loads = [
        max(joint_moment_nm(point, contact_m, force, [(middle[at], mass[at])], tilt) for tilt in tilts_rad)
        for at, point in enumerate(points_m[:-1])
    ]
    worst = int(np.argmax(loads))
    out: list[Check] = []
    for at, name in ((0, "neck_foot"), (worst, "neck_bow")):
        if at or not out:
            out += joint_checks(
                [points_m[at]], holding_nm[:1], pushes, weights[at:], contact_m=contact_m, tilts_rad=tilts_rad,
                lets_go=lets_go, names=(name,),
            )  # fmt: skip
    return tuple(out)


@dataclass(frozen=True)
class Sag:
    """What a neck gives under weight.

    Parameters
    ----------
    moved_m : tuple of 3 floats
        Of its end.
    turned_rad : tuple of 3 floats
        Of its end, about each axis.
    """

    moved_m: Point
    turned_rad: Point

    @property
    def droop_m(self) -> float:
        """How far the end goes, whichever way."""
        return math.hypot(*self.moved_m)

    @property
    def droop_rad(self) -> float:
        """How far the end turns, about whichever axis."""
        return math.hypot(*self.turned_rad)


def neck_sag(
    points_m: Sequence[Sequence[float]], give_n_per_m: float, weights: Sequence[Weight], tilt_rad: float = 0.0
) -> Sag:
    """How far a bent neck sinks under what it carries and its own weight.

    The give was measured on the neck held out straight, as of a level tube: so it bends as one of E I = k L^3/3. Each piece of the
    bent neck turns by M ds/(E I), and carries its end along.

    Parameters
    ----------
    points_m : sequence of points
        Along it from the clamp.
    give_n_per_m : float
        Stiffness at its end, held out straight.
    weights : sequence of (point, kg)
        As `arm_weights` gives them for these points: one for each piece, then what the end carries.
    tilt_rad : float, default 0.0
        Of the seat, when the neck tilts with it.

    Returns
    -------
    Sag

    Notes
    -----
    Source: deflection by unit loads along a bent beam, F L^3/(3 E I) for a straight one [hibbeler-mechanics]. Assumed: it
    twists as easily as it bends, and sinks little against its length.

    Examples
    --------
    A kilogram at the end of a straight neck of 0.12 N/mm sinks by 9.80665/0.12 mm:

    >>> from stickwright.mounting.statics import arm_weights
    >>> straight = np.linspace((0.0, 0.0, 0.0), (0.0, 0.3, 0.0), 25)
    >>> sag = neck_sag(straight, 120.0, arm_weights(straight, 0.0, (0.0, 0.3, 0.0), 1.0))
    >>> round(1000 * sag.droop_m, 1), round(9.80665 / 0.12, 1)
    (81.7, 81.7)
    """
    points = np.asarray(points_m, dtype=np.float64)
    way = np.diff(points, axis=0)
    pieces = np.linalg.norm(way, axis=1)
    stiffness = give_n_per_m * pieces.sum() ** 3 / 3.0
    pull = STANDARD_GRAVITY * np.array([0.0, -math.sin(tilt_rad), -math.cos(tilt_rad)])
    mass, middle = _beyond(weights)
    own = np.array([one for _, one in weights[: len(pieces)]])
    moved, turned = np.zeros(3), np.zeros(3)
    for share, part in _GAUSS:
        at = points[:-1] + share * way
        carried = mass[1:, None] * (middle[1:] - at) + 0.5 * (1 - share) ** 2 * own[:, None] * way
        little = np.cross(carried, pull) * (part * pieces / stiffness)[:, None]
        turned += little.sum(axis=0)
        moved += np.cross(little, points[-1] - at).sum(axis=0)
    return Sag(
        (float(moved[0]), float(moved[1]), float(moved[2])), (float(turned[0]), float(turned[1]), float(turned[2]))
    )


def _beyond(weights: Sequence[Weight]) -> tuple[Array, Array]:
    """Of each weight and all after it: the mass, and its middle."""
    each = np.array([one for _, one in weights])
    places = np.array([place for place, _ in weights], dtype=np.float64)
    mass = np.cumsum(each[::-1])[::-1]
    total = np.cumsum((each[:, None] * places)[::-1], axis=0)[::-1]
    return mass, np.where(mass[:, None] > 0, total / np.where(mass > 0, mass, 1.0)[:, None], places)
