"""Bench readings: checked before they are fitted, and told by their number when something is wrong.

Readings are counted from 1, as on the paper they were written on.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright import units
from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, message
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem
from stickwright.mechanics.robust_fit import RobustFit
from stickwright.model.recorded import Finding

__all__ = [
    "GaugeScatter", "LeverReadings", "QueriedReading", "checked_column", "checked_readings", "coarse_gauge_findings",
    "queried_readings",
]  # fmt: skip

Array = NDArray[np.float64]

_LEAST_ANGLE_RAD = 0.01  # about half a degree: readings nearer than this are at one angle
# Constant part of a gauge's scatter, as a share of the middle force. With 0.6 the 95 % intervals cover 92 to 98 % when
# the scatter is in proportion to the force and 90 to 97 % when it is constant; 0.25 gives 93 to 97 and 87 to 97.
_CONSTANT_SHARE = 0.6
_HAND_SHARE = 0.05  # usual scatter of a gauge held by hand, against which a gauge's step is weighed
_BEST_HAND_SHARE = 0.005  # nobody reads a force by hand better than this (common practice)
_COARSE_STEPS = 10  # a force of fewer gauge steps than this is not well read (practice)


@dataclass(frozen=True)
class LeverReadings:
    """Readings of one stick, checked; arrays of one length, in the order taken.

    Parameters
    ----------
    height_m, force_n, angle_rad : array, shape (n,)
        As read: m, N, rad.
    outward : array of bool, shape (n,)
        True pushing outwards, False letting back.
    number : array of int, shape (n,)
        Number of each reading as it was given, counted from 1.
    length_m : float
        Height at which forces are stated, m.
    max_angle_rad : float
        The stop, rad.
    gauge_step_n : float
        Step of the gauge, N; 0 when not known.
    """

    height_m: Array
    force_n: Array
    angle_rad: Array
    outward: NDArray[np.bool_]
    number: NDArray[np.int64]
    length_m: float
    max_angle_rad: float
    gauge_step_n: float

    @property
    def moment_nm(self) -> Array:
        """Moment about the pivot at each reading, N m."""
        return self.force_n * self.height_m

    @property
    def way(self) -> Array:
        """+1 pushing outwards, -1 letting back."""
        return np.where(self.outward, 1.0, -1.0)

    @property
    def both_ways(self) -> bool:
        """Whether preload and friction can be told apart."""
        return bool(self.outward.any() and not self.outward.all())

    @property
    def only_back(self) -> bool:
        return not self.outward.any()


@dataclass(frozen=True)
class GaugeScatter:
    """How the scatter of a reading grows with its force: sd in proportion to hypot(force, constant).

    Parameters
    ----------
    middle_force_n : float
        Median of the forces read, N.
    constant_n : float
        Force at which the constant part of the scatter equals the proportional part, N.
    floor : float
        Smallest scatter believed, as a share.
    usual : float
        Scatter that a gauge held by hand usually has, as a share.
    moment_unit_nm : callable
        Unit of scatter of each reading's moment, N m, from the moment expected.
    """

    middle_force_n: float
    constant_n: float
    floor: float
    usual: float
    moment_unit_nm: Callable[[Array], Array]

    @classmethod
    def of(cls, readings: LeverReadings) -> GaugeScatter:
        """The scatter to expect of these readings' gauge."""
        middle = float(np.median(readings.force_n))
        step = readings.gauge_step_n / math.sqrt(12)  # sd of rounding
        constant = math.hypot(_CONSTANT_SHARE * middle, step / _HAND_SHARE)
        floor = max(_BEST_HAND_SHARE, step / math.hypot(middle, constant))
        height = readings.height_m

        def unit(moment_nm: Array) -> Array:
            return height * np.hypot(moment_nm / height, constant)

        return cls(middle, constant, floor, max(_HAND_SHARE, floor), unit)

    def share(self, fit: RobustFit) -> float:
        """Scatter of one reading as a share of the middle force."""
        return fit.scatter * math.hypot(self.middle_force_n, self.constant_n) / self.middle_force_n


@dataclass(frozen=True)
class QueriedReading:
    """A reading that the others contradict.

    Parameters
    ----------
    number : int
        Which reading, counted from 1 in the order given.
    force_n : float
        What was read, N.
    expected_n : Estimate
        What it should have been, N, with the interval in which one more reading would lie.
    finding : Finding
        The same in a sentence.
    """

    number: int
    force_n: float
    expected_n: Estimate
    finding: Finding


def queried_readings(readings: LeverReadings, fit: RobustFit, level: float) -> tuple[QueriedReading, ...]:
    """The readings left out of a fit of moments, each with the force it should have been.

    Parameters
    ----------
    readings : LeverReadings
        What was fitted.
    fit : RobustFit
        The fit of their moments.
    level : float
        Coverage of the interval of the expected reading.
    """
    found = []
    n = int(fit.kept.sum())
    for index in np.flatnonzero(~fit.kept):
        height = float(readings.height_m[index])
        value, low, high = (max(0.0, moment / height) for moment in fit.expected(int(index), level))
        text = message(
            BenchNotes.out_of_line, number=int(readings.number[index]), force_n=float(readings.force_n[index]),
            angle_rad=float(readings.angle_rad[index]), outward=bool(readings.outward[index]), expected_n=value, low_n=low,
            high_n=high,
        )  # fmt: skip
        expected = Estimate(value, low, high, level, n)
        query = Finding("query", "reading_out_of_line", text)
        found.append(QueriedReading(int(readings.number[index]), float(readings.force_n[index]), expected, query))
    return tuple(found)


def coarse_gauge_findings(readings: LeverReadings) -> tuple[Finding, ...]:
    """Whether the gauge's step is coarse for the forces read.

    Parameters
    ----------
    readings : LeverReadings
        Forces in newton, with the gauge's step.
    """
    step, least = readings.gauge_step_n, float(np.min(readings.force_n))
    if step <= 0 or least >= _COARSE_STEPS * step:
        return ()
    text = message(BenchNotes.coarse_gauge, step_n=step, least_n=least, steps=_COARSE_STEPS)
    return (Finding("query", "coarse_gauge", text),)


def checked_column(
    values: ArrayLike, name: str, n: int | None, low: float, high: float, remedy: Text
) -> tuple[Array, list[Problem]]:
    """A column of readings as an array, and every number in it that cannot be right.

    Parameters
    ----------
    values : float or array, shape (n,)
        As given; one number stands for all readings.
    name : str
        Field with its unit ending, for the sentence.
    n : int or None
        How many readings there are; None to take it from `values`.
    low, high : float
        What is accepted, SI.
    remedy : Message or str
        What to do about a number outside.
    """
    try:
        column = np.atleast_1d(np.asarray(values, dtype=np.float64)).ravel()
    except (TypeError, ValueError):
        return np.empty(0), [
            Problem(name, repr(values)[:60], message(StickProblems.expected, what="number_each"), remedy)
        ]
    if n is not None and len(column) == 1:
        column = np.full(n, column[0])
    if n is not None and len(column) != n:
        return column, [
            Problem(
                name,
                message(StickProblems.count, count=len(column), of="numbers"),
                message(StickProblems.one_each, readings=n),
            )
        ]
    unit = units.QUANTITIES[found.name].unit(units.ending_of(name)).label if (found := units.quantity_of(name)) else ""
    problems = []
    for index, value in enumerate(column):
        if not low <= value <= high:
            shown = "nothing" if math.isnan(value) else f"{value:.4g} {unit}".strip()
            expected = f"{low:.4g} to {high:.4g} {unit}".strip()
            problems.append(Problem((message(StickProblems.reading, number=index + 1), name), shown, expected, remedy))
    return column, problems


def checked_readings(
    height_m: ArrayLike,
    force_n: ArrayLike,
    angle_rad: ArrayLike,
    outward: ArrayLike | None,
    *,
    max_angle_rad: float | None,
    length_m: float | None,
    gauge_step_n: float | None,
) -> tuple[LeverReadings, tuple[Finding, ...]]:
    """Readings that can be fitted, and what was noticed while checking; every problem at once.

    Parameters
    ----------
    height_m, force_n, angle_rad, outward, max_angle_rad, length_m, gauge_step_n
        As in `fit_lever`.

    Raises
    ------
    BadInput
        As in `fit_lever`.
    """
    force, problems = checked_column(force_n, "force_n", None, 0.0, 100.0, _FORCE_REMEDY)
    n = len(force)
    angle, wrong = checked_column(angle_rad, "angle_rad", n, 0.0, math.pi / 2, _ANGLE_REMEDY)
    problems += wrong
    height, wrong = checked_column(height_m, "height_m", n, 0.002, 0.5, _LENGTH_REMEDY)
    problems += wrong if np.ndim(height_m) else wrong[:1]
    way, wrong = _ways(outward, n)
    problems += wrong
    if n < 3 and not problems:
        what = message(StickProblems.count, count=n, of="readings")
        problems.append(
            Problem(
                message(StickProblems.step, what="bench_readings"),
                what,
                message(StickProblems.expected, what="three"),
                _TAKE_MORE,
            )
        )
    for name, value, high in (("max_angle_rad", max_angle_rad, math.pi / 2), ("length_m", length_m, 0.5)):
        if value is not None and not 0 < value <= high:
            problems.append(Problem(name, f"{value:.4g}", message(StickProblems.up_to, most_factor=high)))
    if gauge_step_n is not None and not 0 <= gauge_step_n <= 50:
        problems.append(Problem("gauge_step_n", f"{gauge_step_n:.4g} N", "0 to 50 N", ""))
    if problems:
        raise BadInput(problems)
    stop, findings = _stop(angle, max_angle_rad)
    stayed = ~way & (force == 0)
    findings += _stayed_findings(angle, stayed)
    zero = np.flatnonzero(way & (force == 0))
    if zero.size:
        raise BadInput(
            Problem(
                (message(StickProblems.reading, number=int(i) + 1), "force_n"),
                "0 N",
                message(StickProblems.expected, what="above_0_n"),
                _ZERO_REMEDY,
            )
            for i in zero
        )
    used = ~stayed
    stated, more = _stated_length(height[used], length_m)
    readings = LeverReadings(
        height_m=height[used],
        force_n=force[used],
        angle_rad=angle[used],
        outward=way[used],
        number=(np.flatnonzero(used) + 1).astype(np.int64),
        length_m=stated,
        max_angle_rad=stop,
        gauge_step_n=gauge_step_n or 0.0,
    )
    _refuse_unfittable(readings)
    if outward is None:
        more += (Finding("note", "way_not_written", message(BenchNotes.way_not_written)),)
    return readings, (*findings, *more)


_FORCE_REMEDY = message(StickProblems.remedy, what="force_column")
_ANGLE_REMEDY = message(StickProblems.remedy, what="angle_column")
_LENGTH_REMEDY = message(StickProblems.remedy, what="height_column")
_TAKE_MORE = message(StickProblems.remedy, what="take_more")
_ZERO_REMEDY = message(StickProblems.remedy, what="zero_force")


def _ways(outward: ArrayLike | None, n: int) -> tuple[NDArray[np.bool_], list[Problem]]:
    if outward is None:
        return np.ones(n, dtype=bool), []
    given = np.atleast_1d(np.asarray(outward)).ravel()
    if len(given) == 1:
        given = np.repeat(given, n)
    if len(given) != n:
        return np.ones(n, dtype=bool), [
            Problem(
                "outward",
                message(StickProblems.count, count=len(given), of="entries"),
                message(StickProblems.one_each, readings=n),
            )
        ]
    problems = [
        Problem(
            (message(StickProblems.reading, number=i + 1), "outward"),
            repr(value),
            message(StickProblems.expected, what="way"),
            "",
        )
        for i, value in enumerate(given.tolist())
        if value not in (True, False)
    ]
    return np.array([value is True or value == 1 for value in given.tolist()], dtype=bool), problems


def _stop(angle: Array, max_angle_rad: float | None) -> tuple[float, tuple[Finding, ...]]:
    """The angle of the stop, and a remark when nobody wrote it."""
    largest = float(angle.max())
    if max_angle_rad is None:
        text = message(BenchNotes.stop_not_recorded, largest_rad=largest)
        return largest, (Finding("note", "stop_not_recorded", text),)
    if largest > max_angle_rad + math.radians(1):
        index = int(angle.argmax())
        raise BadInput(
            Problem(
                (message(StickProblems.reading, number=index + 1), "angle_rad"), message(StickProblems.angle, angle_rad=largest),
                message(StickProblems.at_most_stop, stop_rad=max_angle_rad), message(StickProblems.remedy, what="measure_stop"),
            )
        )  # fmt: skip
    return float(max_angle_rad), ()


def _stayed_findings(angle: Array, stayed: NDArray[np.bool_]) -> tuple[Finding, ...]:
    if not stayed.any():
        return ()
    text = message(BenchNotes.stays, angle_rad=float(angle[stayed].max()))
    return (Finding("query", "stays_by_itself", text),)


def _stated_length(height: Array, length_m: float | None) -> tuple[float, tuple[Finding, ...]]:
    """Height at which forces are stated."""
    if length_m is not None:
        return float(length_m), ()
    lowest = float(height.min()) if height.size else math.nan
    if height.size and float(np.ptp(height)) > 1e-6:
        text = message(BenchNotes.several_heights, height_m=lowest)
        return lowest, (Finding("note", "several_heights", text),)
    return lowest, ()


def _refuse_unfittable(readings: LeverReadings) -> None:
    n = len(readings.force_n)
    if n < 3:
        raise BadInput(
            Problem(
                message(StickProblems.step, what="bench_readings"),
                message(StickProblems.count, count=n, of="with_force"),
                message(StickProblems.expected, what="three"),
                _TAKE_MORE,
            )
        )
    columns = [np.ones(n), readings.angle_rad]
    if readings.both_ways:
        columns.append(readings.way)
    one_angle = float(np.ptp(readings.angle_rad)) < _LEAST_ANGLE_RAD
    spread = np.column_stack(columns)
    if one_angle or np.linalg.matrix_rank(spread, tol=_LEAST_ANGLE_RAD / 4) < spread.shape[1]:
        angle_rad = float(readings.angle_rad[0])
        found = (
            message(StickProblems.all_at, angle_rad=angle_rad)
            if one_angle
            else message(StickProblems.found, what="two_ways")
        )
        raise BadInput(
            Problem(
                message(StickProblems.step, what="bench_readings"),
                found,
                message(StickProblems.expected, what="two_angles"),
                _TAKE_MORE,
            )
        )
