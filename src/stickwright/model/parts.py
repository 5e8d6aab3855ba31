"""Body parts: usual bands of comfortable force and travel, usual steadiness, resting force and landing scatter.

From memory and common practice [fitting-practice], to catch a typing error and to stand in, marked as assumed,
where nothing was measured. They are not norms, and a player's own reading always wins; none of them refuses anything.
"""

from __future__ import annotations

from typing import NamedTuple

from stickwright.codes.stand_ins import Form

__all__ = [
    "COMFORT", "HAND_PARTS", "NEEDS_CLEARANCE", "PLAIN", "SIZES", "SUITED_FORMS", "USUAL", "USUAL_FACTOR",
    "USUAL_FORMS", "USUAL_WIDTH_M", "Comfort", "Size", "UsualFigures",
]  # fmt: skip


HAND_PARTS = frozenset({"fingertip", "thumb", "hand"})
"""Parts of a hand, which holds what they work."""


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


class UsualFigures(NamedTuple):
    """What stands in for an unaffected part where nobody measured it."""

    steady_n: float
    """Involuntary force, rms per axis, of a part that touches a stick and hardly pushes; at rest on a switch a third of it."""
    rest_n: float
    """Of its weight what pushes a stick sideways, supported."""
    weight_n: float
    """Of its weight what lies on a switch, supported."""
    landing_m: float
    """Where presses land: rms about the middle, per axis."""


USUAL: dict[str, UsualFigures] = {
    "fingertip": UsualFigures(0.01, 0.02, 0.03, 0.0015),
    "thumb": UsualFigures(0.01, 0.02, 0.03, 0.0015),
    "hand": UsualFigures(0.10, 0.30, 1.0, 0.010),
    "forearm": UsualFigures(0.12, 0.30, 2.0, 0.012),
    "elbow": UsualFigures(0.15, 0.30, 2.0, 0.015),
    "shoulder": UsualFigures(0.20, 0.30, 1.0, 0.015),
    "chin": UsualFigures(0.05, 0.05, 0.20, 0.004),
    "lip": UsualFigures(0.01, 0.01, 0.02, 0.0015),
    "cheek": UsualFigures(0.01, 0.02, 0.02, 0.003),
    "tongue": UsualFigures(0.01, 0.01, 0.02, 0.0015),
    "head": UsualFigures(0.10, 0.20, 0.50, 0.010),
    "knee": UsualFigures(0.30, 0.50, 1.0, 0.015),
    "thigh": UsualFigures(0.30, 0.50, 1.0, 0.020),
    "trunk": UsualFigures(0.50, 1.0, 2.0, 0.020),
    "foot": UsualFigures(0.15, 0.50, 0.50, 0.009),
    "toe": UsualFigures(0.05, 0.10, 0.20, 0.005),
}
"""Common practice, no source: newton and metre.

That steadiness does not grow with ability has a source: error of a kept force grows in proportion to the force used (the
noise of a push, which is counted besides) from a considerable error at no force at all [sutton-sykes-1967]. A fingertip's
scatter is that of touching a screen [bi-2013].
"""
USUAL_FACTOR = 3.0
"""A usual figure holds to within so many times either way (common practice): the 95 % interval that goes with it."""

NEEDS_CLEARANCE = frozenset({"chin", "lip", "cheek", "tongue", "head"})
"""Sites that are used only if the treating team has agreed."""

_FOR_FINGERS: frozenset[Form] = frozenset({"dish", "ball", "peg", "foam"})
_FOR_GRIPS: frozenset[Form] = frozenset({"ball", "peg", "bar", "foam"})
_FOR_LIMBS: frozenset[Form] = frozenset({"ball", "bar", "cup", "foam"})
_FOR_FACES: frozenset[Form] = frozenset({"cup", "foam"})
SUITED_FORMS: dict[str, frozenset[Form]] = {
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

_FORMS_FOR_LIMBS = ("cup", "foam", "bar", "ball")
USUAL_FORMS: dict[str, tuple[str, ...]] = {
    "fingertip": ("dish", "ball", "foam", "peg"),
    "thumb": ("dish", "ball", "foam", "peg"),
    "hand": ("ball", "bar", "foam", "peg"),
    "toe": ("dish", "cup", "foam", "bar", "ball", "peg"),
    **dict.fromkeys(("chin", "lip", "cheek", "tongue", "head"), ("cup", "foam")),
    **dict.fromkeys(("forearm", "elbow", "shoulder", "knee", "thigh", "trunk", "foot"), _FORMS_FOR_LIMBS),
}
"""The same in the order in which they are tried where the player's file names none, so that a bare shaft does not win a tie:
common practice, no source."""


USUAL_WIDTH_M: dict[str, float] = {
    "dish": 0.020, "ball": 0.035, "peg": 0.010, "bar": 0.090, "cup": 0.045, "foam": 0.035,
}  # fmt: skip
"""Width of a topper of each form where nobody measured it: common practice, no source. It refuses nothing."""


class Size(NamedTuple):
    """What of a device a part can work, in metre."""

    height_m: float
    """Contact point of a stick above its pivot, with all that stands on it, at least."""
    topper_m: tuple[float, float]
    """Width of what it touches, least and most."""
    face_m: float
    """Across a switch, at least: its diameter, or the side of a square as large as its face."""


_LIMB_SIZE = Size(0.035, (0.030, 0.150), 0.040)
_LEG_SIZE = Size(0.040, (0.030, 0.150), 0.050)
SIZES: dict[str, Size] = {
    "fingertip": Size(0.0, (0.006, 0.035), 0.008),
    "thumb": Size(0.0, (0.008, 0.035), 0.010),
    "hand": Size(0.030, (0.025, 0.110), 0.035),
    "forearm": Size(0.030, (0.030, 0.150), 0.040),
    "elbow": _LIMB_SIZE,
    "shoulder": _LIMB_SIZE,
    "chin": Size(0.0, (0.015, 0.070), 0.012),
    "lip": Size(0.0, (0.005, 0.025), 0.006),
    "cheek": Size(0.0, (0.008, 0.050), 0.008),
    "tongue": Size(0.0, (0.004, 0.018), 0.005),
    "head": Size(0.025, (0.030, 0.150), 0.035),
    "knee": _LEG_SIZE,
    "thigh": _LEG_SIZE,
    "trunk": _LEG_SIZE,
    "foot": Size(0.035, (0.030, 0.150), 0.040),
    "toe": Size(0.012, (0.010, 0.060), 0.015),
}
"""Common practice, no source. What lies outside is to be tried; what lies outside by more than `PLAIN` is a plain mismatch."""
PLAIN = 0.6
"""Under so much of the least, or the most under so much of it: no matter of trying (common practice)."""
