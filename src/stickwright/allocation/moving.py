"""How long a part takes from one switch to the next, and how far apart two switches must stand."""

from __future__ import annotations

import math
from typing import NamedTuple

from stickwright.codes.asked import Asked
from stickwright.codes.message import Message, message
from stickwright.codes.presses import Presses
from stickwright.errors import BadInput, Problem
from stickwright.model.player import Press
from stickwright.trace.pointing import index_of_difficulty

__all__ = [
    "CATCHES_95_SDS", "USUAL_INTERCEPT_S", "USUAL_SLOPE_S_PER_BIT", "MovingLine", "difficulty_bits", "line_of",
    "movement_time_s", "spacing_m",
]  # fmt: skip

USUAL_INTERCEPT_S = 0.0277
USUAL_SLOPE_S_PER_BIT = 0.1115
"""Fitts' tapping with a 1 oz stylus [fitts-1954], refitted by the Shannon form [mackenzie-1992]: least squares over the
16 means of his table. Healthy adults' hands, so the least time it can take: it ranks places for switches and does not predict a
player, and what even they could not do is refused."""
CATCHES_95_SDS = 4.9
"""Diameter, in rms landing errors per axis, that catches 95 of 100 presses: 2 sqrt(2 ln 20) = 4.895."""


class MovingLine(NamedTuple):
    """Line of movement time over difficulty: the player's own, or a usual one, marked."""

    intercept_s: float
    slope_s_per_bit: float
    """Second for each bit of difficulty."""
    assumed: Message | None
    """Why it stands in; None for the player's own."""


def difficulty_bits(distance_m: float, width_m: float) -> float:
    """Difficulty of moving on to a switch, Shannon form: log2(distance / width + 1).

    Parameters
    ----------
    distance_m : float
        Between the centres, 0 or more.
    width_m : float
        Of the switch aimed at, along the way; above 0.

    Raises
    ------
    BadInput
        A negative distance, or a width of 0 or less.

    Notes
    -----
    Source: [mackenzie-1992], [iso-9241-411]; the same as `stickwright.trace.pointing.index_of_difficulty`.

    Examples
    --------
    >>> difficulty_bits(0.300, 0.020)
    4.0
    """
    return index_of_difficulty(distance_m, width_m)


def movement_time_s(distance_m: float, width_m: float, *, intercept_s: float, slope_s_per_bit: float) -> float:
    """Time from one switch to the next: intercept + slope x difficulty, never below 0.

    Parameters
    ----------
    distance_m, width_m : float
        As for `difficulty_bits`.
    intercept_s, slope_s_per_bit : float
        Line of `line_of`. A fitted intercept may be below 0.

    Examples
    --------
    >>> round(movement_time_s(0.060, 0.020, intercept_s=0.1, slope_s_per_bit=0.2), 3)
    0.5
    """
    return max(0.0, intercept_s + slope_s_per_bit * difficulty_bits(distance_m, width_m))


def line_of(press: Press | None) -> MovingLine:
    """The player's own line, or the usual one where it, or half of it, is missing.

    Parameters
    ----------
    press : Press or None
        What the player can press there.

    Notes
    -----
    The usual line comes from healthy adults' hands [fitts-1954], [mackenzie-1992].

    Examples
    --------
    >>> line_of(Press(move_intercept_s=0.2, move_slope_s_per_bit=0.4))[:2]
    (0.2, 0.4)
    """
    if press is not None and press.move_slope_s_per_bit is not None:
        if press.move_intercept_s is not None:
            return MovingLine(press.move_intercept_s, press.move_slope_s_per_bit, None)
        return MovingLine(
            USUAL_INTERCEPT_S, press.move_slope_s_per_bit,
            message(Presses.intercept_usual),
        )  # fmt: skip
    return MovingLine(
        USUAL_INTERCEPT_S, USUAL_SLOPE_S_PER_BIT,
        message(Presses.line_usual),
    )  # fmt: skip


def spacing_m(face_a_m: float, face_b_m: float, landing_m: float | None) -> float:
    """Distance of the centres of two switches at one part.

    The larger face, so that they do not overlap, and `CATCHES_95_SDS` times the landing scatter, so that one spasm does
    not hit both.

    Parameters
    ----------
    face_a_m, face_b_m : float
        Widths of the faces along the line between them, 0 or more.
    landing_m : float or None
        Rms per axis; None when it was not taken.

    Raises
    ------
    BadInput
        A width or a scatter below 0, or not a number.

    Examples
    --------
    >>> round(spacing_m(0.045, 0.045, 0.028), 4)
    0.1372
    """
    lengths = (face_a_m, face_b_m, 0.0 if landing_m is None else landing_m)
    wrong = [one for one in lengths if not (math.isfinite(one) and one >= 0)]
    if wrong:
        raise BadInput(Problem(message(Asked.face_size), str(one), message(Asked.length)) for one in wrong)
    return max(face_a_m, face_b_m, CATCHES_95_SDS * lengths[2])
