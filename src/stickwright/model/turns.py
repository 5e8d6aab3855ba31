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
from typing import NamedTuple

from stickwright.model.estimate import Estimate

__all__ = ["BaseStood", "base_stood", "opposite", "quarters_of", "sense"]

QUARTER_RAD = math.pi / 2
NEAR_RAD = math.radians(20)
"""Within this of a quarter or half turn it is one; a base is seldom put on 20 degrees askew unseen: common practice, no source."""


class BaseStood(NamedTuple):
    """How a base stood when every push came out a quarter or half turn round, and what cures it; clauses."""

    how: str
    faces: str
    """Where its own forward pointed."""
    cure: str


_STOOD = {
    1: BaseStood("a quarter turn clockwise", "to the player's right", "a quarter turn anticlockwise"),
    2: BaseStood("half a turn round", "toward the player", "half a turn"),
    3: BaseStood("a quarter turn anticlockwise", "to the player's left", "a quarter turn clockwise"),
}
"""By the quarter turns, anticlockwise, by which the output came out turned."""


def sense(angle_rad: float) -> str:
    """Which way an angle turns, seen from above.

    Parameters
    ----------
    angle_rad : float
        Plus is anticlockwise.

    Examples
    --------
    >>> sense(0.2), sense(-0.2)
    ('anticlockwise', 'clockwise')
    """
    return "anticlockwise" if angle_rad > 0 else "clockwise"


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
    return Estimate(0.0 - one.number, 0.0 - one.upper, 0.0 - one.lower, one.level, one.n, one.assumed, one.why)


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


def base_stood(quarters: int) -> BaseStood:
    """How the base of a stick stood whose output came out turned by quarter turns.

    Parameters
    ----------
    quarters : int
        1, 2 or 3, anticlockwise, as `quarters_of` counts them.

    Examples
    --------
    >>> base_stood(quarters_of(math.radians(-90)))[:2]
    ('a quarter turn anticlockwise', "to the player's left")
    """
    return _STOOD[quarters]
