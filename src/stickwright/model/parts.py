"""Body parts: usual bands of comfortable force and travel.

From memory and common practice [fitting-practice], to catch a typing error and to stand in, marked as assumed,
where nothing was measured. They are not norms, and a player's own reading always wins.
"""

from __future__ import annotations

from typing import NamedTuple

__all__ = ["COMFORT", "NEEDS_CLEARANCE", "SUITED_FORMS", "Comfort"]


class Comfort(NamedTuple):
    """Usual band of one part."""

    force_low_n: float
    force_high_n: float
    travel_low_m: float
    travel_high_m: float


_FINGER = Comfort(0.1, 5.0, 0.003, 0.025)
_ARM = Comfort(3.0, 40.0, 0.020, 0.120)
_LEG = Comfort(5.0, 60.0, 0.020, 0.100)
_FOOT = Comfort(1.0, 30.0, 0.010, 0.060)
_FACE = Comfort(0.05, 1.0, 0.002, 0.008)

COMFORT: dict[str, Comfort] = {
    "fingertip": _FINGER,
    "thumb": Comfort(0.2, 8.0, 0.004, 0.020),
    "hand": Comfort(2.0, 40.0, 0.030, 0.150),
    "forearm": _ARM,
    "elbow": _ARM,
    "shoulder": _ARM,
    "chin": Comfort(0.5, 6.0, 0.005, 0.020),
    "lip": _FACE,
    "cheek": _FACE,
    "tongue": _FACE,
    "head": Comfort(2.0, 20.0, 0.010, 0.050),
    "knee": _LEG,
    "thigh": _LEG,
    "trunk": _LEG,
    "foot": _FOOT,
    "toe": _FOOT,
}
"""Common practice, no source: force in newton, travel in metre."""

NEEDS_CLEARANCE = frozenset({"chin", "lip", "cheek", "tongue", "head"})
"""Sites that are used only with the treating team's word."""

_FOR_FINGERS = frozenset({"dish", "ball", "peg", "foam"})
_FOR_GRIPS = frozenset({"ball", "peg", "bar", "foam"})
_FOR_LIMBS = frozenset({"ball", "bar", "cup", "foam"})
_FOR_FACES = frozenset({"cup", "foam"})
SUITED_FORMS: dict[str, frozenset[str]] = {
    "fingertip": _FOR_FINGERS,
    "thumb": _FOR_FINGERS,
    "hand": _FOR_GRIPS,
    "forearm": _FOR_LIMBS,
    "elbow": _FOR_LIMBS,
    "shoulder": _FOR_LIMBS,
    "chin": _FOR_FACES,
    "lip": _FOR_FACES,
    "cheek": _FOR_FACES,
    "tongue": _FOR_FACES,
    "head": _FOR_FACES,
    "knee": _FOR_LIMBS,
    "thigh": _FOR_LIMBS,
    "trunk": _FOR_LIMBS,
    "foot": _FOR_LIMBS,
    "toe": _FOR_FINGERS | _FOR_LIMBS,
}
"""Forms of topper offered to a part when the player's file names none: common practice, no source [fitting-practice]."""
