"""Where the stick stood at each bench reading: from an angle, a travel or the output."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.message import message
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem
from stickwright.mechanics.bench_readings import checked_column
from stickwright.model.recorded import Finding

__all__ = ["directions", "positions"]

Array = NDArray[np.float64]


def positions(
    force_n: ArrayLike,
    height_m: ArrayLike,
    *,
    angle_rad: ArrayLike | None,
    travel_m: ArrayLike | None,
    output_share: ArrayLike | None,
    max_angle_rad: float | None,
    max_travel_m: float | None,
    length_m: float | None,
) -> tuple[Array, Array, float | None, tuple[Finding, ...]]:
    """Angle and output of each reading, and the stop; a finding when the output stands for the angle.

    Parameters
    ----------
    force_n, height_m, angle_rad, travel_m, output_share, max_angle_rad, max_travel_m, length_m
        As in `bench_stick`.

    Raises
    ------
    BadInput
        No position given, a travel longer than the stick, an output outside 0 to 1.
    """
    n = int(np.size(np.asarray(force_n)))
    height, problems = checked_column(
        height_m, "height_m", n, 0.002, 0.5, message(StickProblems.remedy, what="height_in_mm")
    )
    output = np.full(n, math.nan)
    if output_share is not None:
        output, wrong = _output(output_share, n)
        problems += wrong
    stop = max_angle_rad
    stated = length_m if length_m is not None else float(np.min(height)) if height.size else math.nan
    if not problems and stop is None and max_travel_m is not None:
        stop, wrong = _asin(np.array([max_travel_m]), np.array([stated]), "max_travel_m")
        problems += wrong
    if problems:
        raise BadInput(problems)
    findings: tuple[Finding, ...] = ()
    if angle_rad is not None:
        angle, problems = checked_column(
            angle_rad, "angle_rad", n, 0.0, math.pi / 2, message(StickProblems.remedy, what="angle_in_deg")
        )
    elif travel_m is not None:
        travel, problems = checked_column(
            travel_m, "travel_m", n, 0.0, 0.3, message(StickProblems.remedy, what="travel_in_mm")
        )
        if not problems:
            angle, problems = _asin_column(travel, height, "travel_m")
    elif output_share is not None and stop is not None and np.isfinite(output).all():
        angle = np.minimum(output, 1.0) * stop
        findings = (Finding("query", "output_for_angle", message(BenchNotes.output_for_angle)),)
    else:
        problems = [_NO_POSITION]
    if problems:
        raise BadInput(problems)
    return angle, output, stop, findings


_NO_POSITION = Problem(
    message(StickProblems.step, what="bench_readings"),
    message(StickProblems.found, what="no_position"),
    message(StickProblems.expected, what="position"),
    message(StickProblems.remedy, what="read_position"),
)


def _output(output_share: ArrayLike, n: int) -> tuple[Array, list[Problem]]:
    column = np.atleast_1d(np.asarray(output_share, dtype=np.float64)).ravel()
    missing = np.isnan(column)
    remedy = message(StickProblems.remedy, what="output_share")
    checked, problems = checked_column(np.where(missing, 0.0, column), "output_share", n, 0.0, 1.001, remedy)
    if len(checked) == len(missing):
        checked = np.where(missing, math.nan, checked)
    return checked, problems


def _asin(travel: Array, height: Array, name: str) -> tuple[float, list[Problem]]:
    angles, problems = _asin_column(travel, height, name)
    return float(angles[0]), [Problem(name, problem.found, problem.expected, problem.remedy) for problem in problems]


def _asin_column(travel: Array, height: Array, name: str) -> tuple[Array, list[Problem]]:
    """Angle from travel: travel is height times sine."""
    share = travel / height
    problems = [
        Problem(
            (message(StickProblems.reading, number=int(i) + 1), name),
            message(StickProblems.travel, travel_m=float(travel[i])),
            message(StickProblems.below_height, height_m=float(height[i])),
            message(StickProblems.remedy, what="height_from_pivot"),
        )
        for i in np.flatnonzero(~((share >= 0) & (share < 1)))
    ]
    return np.arcsin(np.clip(share, 0.0, 1.0)), problems


def directions(direction_rad: ArrayLike | None, n: int) -> Array:
    """Direction of each reading within a turn, rad; NaN where it was not written.

    Parameters
    ----------
    direction_rad : float or array, shape (n,), or None
        As given.
    n : int
        How many readings there are.

    Raises
    ------
    BadInput
        A direction of more than a turn: degrees, likely.
    """
    if direction_rad is None:
        return np.full(n, math.nan)
    given = np.asarray([math.nan if value is None else value for value in np.ravel(np.asarray(direction_rad))], float)
    if given.size == 1:
        given = np.full(n, given[0])
    if given.size != n:
        raise BadInput(
            Problem(
                "direction_rad",
                message(StickProblems.count, count=given.size, of="numbers"),
                message(StickProblems.one_each, readings=n),
            )
        )
    wrong = np.abs(given) > 2 * math.pi + 1e-4
    if wrong.any():
        raise BadInput(
            Problem(
                (message(StickProblems.reading, number=int(i) + 1), "direction_rad"),
                f"{given[i]:.4g} rad",
                message(StickProblems.expected, what="turn"),
                message(StickProblems.remedy, what="direction_column"),
            )
            for i in np.flatnonzero(wrong)
        )
    return np.mod(np.round(given, 4), round(2 * math.pi, 4))
