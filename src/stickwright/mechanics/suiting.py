"""Whether the size and the strength of a set-up suit the part that works it.

A plain mismatch of the dimensions themselves is a reason to refuse; a size near the edge, or a stick much weaker than the part, is
to be tried.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.fit_reasons import FitReasons
from stickwright.codes.message import Message, Name, message
from stickwright.codes.sites import Part
from stickwright.mechanics.setups import SetupArrays
from stickwright.mechanics.unread import Rule
from stickwright.model.parts import PLAIN, SIZES, USUAL_WIDTH_M

__all__ = ["SLIGHT_SHARE", "Unsuited", "face_size_m", "outside", "unsuited", "unsuited_setups"]

Array = NDArray[np.float64]
SLIGHT_SHARE = 0.05
"""Force at the stop over the part's comfortable force, below which a stick may be thrown to its stop or break (common practice)."""


class Unsuited(NamedTuple):
    """What of a set-up does not suit a part."""

    rule: Rule
    text: Message
    plain: bool
    """A mismatch of the dimensions themselves, not a matter of trying."""


def face_size_m(face_m: tuple[float, ...]) -> float:
    """Across a face: its diameter, or the side of a square as large as a strip; NaN when not known.

    Examples
    --------
    >>> face_size_m((0.020, 0.080))
    0.04
    """
    return math.prod(face_m) ** (1 / len(face_m)) if face_m else math.nan


def outside(value: float, least: float, most: float) -> tuple[bool, bool]:
    """Whether a size lies outside its range, and whether plainly.

    Parameters
    ----------
    value, least, most : float

    Examples
    --------
    >>> outside(0.014, 0.035, 1.0), outside(0.030, 0.035, 1.0), outside(0.060, 0.006, 0.035)
    ((True, True), (True, False), (True, True))
    """
    return value < least or value > most, value < PLAIN * least or PLAIN * value > most


def unsuited(part: Part, setups: SetupArrays, place: int, least_force_n: float) -> tuple[Unsuited, ...]:
    """What of a set-up does not suit a part; a topper that nobody measured is judged by the usual width of its form, and never plainly.

    Parameters
    ----------
    part : str
    setups : SetupArrays
    place : int
    least_force_n : float
        The part's comfortable force in the weakest direction that the game needs.
    """
    out = []
    size = SIZES[part]
    height = float(setups.height_m[place])
    if not setups.touch[place]:
        off, plain = outside(height, size.height_m, math.inf)
        if off:
            low = message(FitReasons.too_low, part=part, height_m=height, usual_m=size.height_m)
            out.append(Unsuited("size", low, plain))
    topper = setups.kit.topper[setups.topper[place]] if setups.topper[place] >= 0 else None
    if topper is not None:
        width = USUAL_WIDTH_M[topper.form] if topper.width_m is None else topper.width_m
        off, plain = outside(width, *size.topper_m)
        if off:
            text = message(
                FitReasons.topper_size, part=part, topper=Name(topper.name), width_m=width,
                usual_of=topper.form if topper.width_m is None else None, low_m=size.topper_m[0], high_m=size.topper_m[1],
            )  # fmt: skip
            out.append(Unsuited("size", text, plain and topper.width_m is not None))
    full = float(setups.full_force_n[place])
    if not setups.touch[place] and full < SLIGHT_SHARE * least_force_n:
        text = message(FitReasons.too_delicate, part=part, comfortable_n=least_force_n, full_n=full)
        out.append(Unsuited("strength", text, False))
    return tuple(out)


def unsuited_setups(
    part: Part, setups: SetupArrays, least_force_n: float
) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """Which set-ups plainly do not suit a part, and which are to be tried.

    Parameters
    ----------
    part : str
    setups : SetupArrays
    least_force_n : float
        As for `unsuited`.

    Returns
    -------
    pair of array of bool, shape (s,)
    """
    told = [unsuited(part, setups, place, least_force_n) for place in range(len(setups))]
    return np.array([any(one.plain for one in each) for each in told]), np.array([bool(each) for each in told])
