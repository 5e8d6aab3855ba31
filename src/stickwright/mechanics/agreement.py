"""Do gauge and stick agree? What the readings predict on the tried stick against what was recorded on it."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.model.plan import direction_words
from stickwright.model.recorded import Finding, ReachReport

__all__ = ["agreement"]

Array = NDArray[np.float64]

APART = 0.20
"""Difference of the share reached, predicted less recorded, that is asked about: common practice, no source."""
NEAR_RAD = math.radians(30)
"""How far from a reading's direction the nearest recorded one may lie: judgement."""


def agreement(
    direction_rad: Array,
    predicted_share: Array,
    recorded: ReachReport,
    error_rotation_rad: float,
    name: str,
    recorded_in: str = "the recording",
) -> Finding:
    """Compare the reach that gauge and tape predict on a stick with the reach recorded on it.

    Parameters
    ----------
    direction_rad, predicted_share : array, shape (k,)
        The polygon predicted from the readings.
    recorded : ReachReport
        The polygon recorded.
    error_rotation_rad : float
        By how much the recording is turned, anticlockwise; it is turned back first.
    name : str
        The set-up, for the sentence.
    recorded_in : str
        What was recorded, for the sentence: 'full pushes, push.csv'.

    Returns
    -------
    Finding
        A note when they agree; a query when they lie apart, or when the recording looks like the prediction's
        mirror image (left and right swapped at the gauge or at the stick). Directions without a recorded reach are left out and
        counted, and a note says so when none is left.

    Notes
    -----
    Both are compared in the directions of the readings: a recorded direction stands in for one of them up to 30 degrees
    away, read off the recorded polygon; what was not recorded is not compared.
    """
    reached = np.array([min(estimate.number, 1.0) for estimate in recorded.reach])
    there = (
        np.array(recorded.direction_rad) - error_rotation_rad
    )  # NaN where the turn is not known: nothing is compared
    known = np.isfinite(reached) & np.isfinite(there)
    there, reached = there[known], reached[known]
    near = np.array(
        [any(abs(math.remainder(phi - one, math.tau)) <= NEAR_RAD for one in there) for phi in direction_rad]
    )
    if not near.any():
        return Finding(
            "note", "gauge against stick",
            f"Readings and recording on {name} could not be compared: the recording tells no reach in any direction.",
        )  # fmt: skip

    def told(angles: Array, from_rad: Array, share: Array) -> Array:
        return np.interp(np.mod(angles, math.tau), np.mod(from_rad, math.tau), share, period=math.tau)

    towards, predicted = direction_rad[near], predicted_share[near]
    found = told(towards, there, reached)
    apart = predicted - found
    mirrored = told(math.pi - towards, direction_rad, predicted_share) - found
    off, off_mirrored = (float(np.sqrt(np.mean(d**2))) for d in (apart, mirrored))
    worst, weakest = int(np.argmax(np.abs(apart))), int(np.argmin(predicted))

    def figures(k: int) -> str:
        return (
            f"{direction_words(float(towards[k]))} {100 * predicted[k]:.0f} % predicted from the readings, "
            f"{100 * found[k]:.0f} % recorded in {recorded_in}"
        )

    if off > 0.15 and off_mirrored < 0.6 * off:
        return Finding(
            "query",
            "mirrored readings",
            f"What was recorded on {name} is the mirror image of what the readings predict ({figures(worst)}): were left and "
            "right swapped at the gauge, or is an axis of the stick turned round?",
        )
    if abs(apart[worst]) > APART:
        cause = (
            "the gauge was pushed harder than play, or the stick is heavier than benched"
            if apart[worst] > 0
            else "the gauge slipped or was read too low, or the stick is lighter than benched"
        )
        return Finding(
            "query",
            "gauge against stick",
            f"Readings and recording disagree on {name}: {figures(worst)} ({cause}). Read that direction once more.",
        )
    also = "" if weakest == worst else f" Weakest as predicted: {figures(weakest)}."
    return Finding(
        "note",
        "gauge against stick",
        f"Readings and recording agree on {name}: the largest difference is {100 * abs(apart[worst]):.0f} % of the travel, "
        f"{figures(worst)}{_left_out(int((~near).sum()))}.{also}",
    )


def _left_out(count: int) -> str:
    if not count:
        return ""
    return f"; {count} direction{'' if count == 1 else 's'} without a recorded reach not compared"
