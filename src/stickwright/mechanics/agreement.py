"""Do gauge and stick agree? What the readings predict on the tried stick against what was recorded on it."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.agreements import Agreements, RecordedTask
from stickwright.codes.message import Message, Name, Text, message
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
    *,
    setup: Text,
    task: RecordedTask,
    recording: str,
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
    setup : Text
        The set-up that was tried.
    task : {"push", "rim"}
        What was recorded.
    recording : str
        Its name.

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
        return Finding("note", "gauge_against_stick", message(Agreements.not_compared, setup=setup))

    def told(angles: Array, from_rad: Array, share: Array) -> Array:
        return np.interp(np.mod(angles, math.tau), np.mod(from_rad, math.tau), share, period=math.tau)

    towards, predicted = direction_rad[near], predicted_share[near]
    found = told(towards, there, reached)
    apart = predicted - found
    mirrored = told(math.pi - towards, direction_rad, predicted_share) - found
    off, off_mirrored = (float(np.sqrt(np.mean(d**2))) for d in (apart, mirrored))
    worst, weakest = int(np.argmax(np.abs(apart))), int(np.argmin(predicted))

    def compared(k: int) -> Message:
        return message(
            Agreements.compared, direction_rad=float(towards[k]), predicted_share=float(predicted[k]),
            recorded_share=float(found[k]), task=task, recording=Name(recording),
        )  # fmt: skip

    if off > 0.15 and off_mirrored < 0.6 * off:
        mirror = message(Agreements.mirrored, setup=setup, worst=compared(worst))
        return Finding("query", "mirrored_readings", mirror)
    if abs(apart[worst]) > APART:
        less = bool(apart[worst] > 0)
        text = message(Agreements.apart, setup=setup, worst=compared(worst), less_recorded=less)
        return Finding("query", "gauge_against_stick", text)
    text = message(
        Agreements.agree,
        setup=setup,
        difference_share=float(abs(apart[worst])),
        worst=compared(worst),
        weakest=None if weakest == worst else compared(weakest),
        left_out=int((~near).sum()),
    )
    return Finding("note", "gauge_against_stick", text)
