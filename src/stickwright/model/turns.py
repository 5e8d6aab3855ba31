"""The sense of a turn, for every module: plus is anticlockwise, seen from above.

Three angles of one cause, never mixed:

- the error is measured: direction produced minus direction asked (`error_rotation_rad`);
- the output is put right by turning it the other way (`output_rotation_rad`, minus the error);
- the base stood turned by minus the error, so it is turned back by the error, in the same sense.

A base that stands a quarter turn anticlockwise takes the player's forward for its own right: every push comes out a quarter
turn clockwise of what was asked.
"""

from __future__ import annotations

import math

from stickwright.codes.bases import Stood
from stickwright.codes.estimate import Estimate

__all__ = ["STOOD", "opposite", "quarters_of", "rotated"]

QUARTER_RAD = math.pi / 2
NEAR_RAD = math.radians(20)
"""Within this of a quarter or half turn it is one; a base is seldom put on 20 degrees askew unseen: common practice, no source."""


STOOD: dict[int, Stood] = {1: "clockwise", 2: "half", 3: "anticlockwise"}
"""How the base stood, by the quarter turns, anticlockwise, by which the output came out turned: see `quarters_of`."""


def rotated(x: float, y: float, angle_rad: float) -> tuple[float, float]:
    """A point turned about the origin, plus anticlockwise.

    Parameters
    ----------
    x, y : float
        In any unit; the answer is in the same.
    angle_rad : float

    Examples
    --------
    >>> rotated(1.0, 0.0, math.pi / 2)[1]
    1.0
    """
    cosine, sine = math.cos(angle_rad), math.sin(angle_rad)
    return x * cosine - y * sine, x * sine + y * cosine


def opposite(rotation_rad: Estimate) -> Estimate:
    """The error's correction, or the error that a correction answers: the same angle the other way, its interval with it.

    Parameters
    ----------
    rotation_rad : Estimate
        An `error_rotation_rad` or an `output_rotation_rad`.

    Examples
    --------
    >>> turned = opposite(Estimate(0.2, 0.1, 0.4, n=8))
    >>> turned.value, turned.low, turned.high
    (-0.2, -0.4, -0.1)
    """
    one = rotation_rad
    # 0.0 - x, not -x: a turn of nothing stays plus nought on every page and in every file.
    return Estimate(
        value=0.0 - one.number,
        low=0.0 - one.upper,
        high=0.0 - one.lower,
        level=one.level,
        n=one.n,
        assumed=one.assumed,
        why=one.why,
    )


def quarters_of(error_rad: float) -> int:
    """Quarter turns, anticlockwise, by which the output came out turned; 0 when it is near none.

    Parameters
    ----------
    error_rad : float
        Direction produced minus direction asked.

    Examples
    --------
    >>> [quarters_of(math.radians(degrees)) for degrees in (13, 88, -93, 178, -178, 45)]
    [0, 1, 3, 2, 2, 0]
    """
    quarters = round(error_rad / QUARTER_RAD)
    return quarters % 4 if abs(error_rad - quarters * QUARTER_RAD) <= NEAR_RAD else 0
