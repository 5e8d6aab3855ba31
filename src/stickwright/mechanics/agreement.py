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


def agreement(
    direction_rad: Array, predicted_share: Array, recorded: ReachReport, error_rotation_rad: float, name: str
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

    Returns
    -------
    Finding
        A note when they agree; a query when they lie apart, or when the recording looks like the prediction's
        mirror image (left and right swapped at the gauge or at the stick). Directions without a recorded reach are left
        out, and a note says so when none is left.
    """
    order = np.argsort(direction_rad)
    every = np.array([estimate.value for estimate in recorded.reach])
    known = np.isfinite(every)
    if not known.any() or not math.isfinite(error_rotation_rad):
        return Finding(
            "note", "gauge against stick",
            f"Readings and recording on {name} could not be compared: the recording tells no reach in any direction.",
        )  # fmt: skip
    there = np.array(recorded.direction_rad)[known] - error_rotation_rad
    reached = every[known]

    def told(angles: Array) -> Array:
        return np.interp(np.mod(angles, 2 * math.pi), direction_rad[order], predicted_share[order], period=2 * math.pi)

    apart = told(there) - np.minimum(reached, 1.0)
    mirrored = told(math.pi - there) - np.minimum(reached, 1.0)
    off, off_mirrored = (float(np.sqrt(np.mean(d**2))) for d in (apart, mirrored))
    worst = int(np.argmax(np.abs(apart)))
    where = direction_words(float(there[worst]) % (2 * math.pi))
    figures = f"{100 * reached[worst]:.0f} % recorded, {100 * told(there)[worst]:.0f} % predicted {where}"
    if off > 0.15 and off_mirrored < 0.6 * off:
        return Finding(
            "query",
            "mirrored readings",
            f"What was recorded on {name} is the mirror image of what the readings predict ({figures}): were left and right "
            "swapped at the gauge, or is an axis of the stick turned round?",
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
            f"Readings and recording disagree on {name}: {figures} ({cause}). Read that direction once more.",
        )
    return Finding(
        "note",
        "gauge against stick",
        f"Readings and recording agree on {name}: the largest difference is {100 * abs(apart[worst]):.0f} % of the throw "
        f"({figures}){_left_out(int((~known).sum()))}.",
    )


def _left_out(count: int) -> str:
    if not count:
        return ""
    return f"; {count} direction{'' if count == 1 else 's'} without a recorded reach not compared"
