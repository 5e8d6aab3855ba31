"""From bench readings to a lever: preload, stiffness and friction, each with its interval.

``F h = preload + s * friction + stiffness * angle``, s = +1 pushing outwards and -1 letting back.
From outward readings alone preload and friction cannot be told apart, only their sum; the result
then says so. Bad readings are found and named, not averaged in.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.bench_notes import BenchNotes, Number
from stickwright.codes.estimate import Estimate
from stickwright.codes.matters import Matter
from stickwright.codes.message import Message, Text, message
from stickwright.mechanics.bench_readings import (
    GaugeScatter,
    LeverReadings,
    QueriedReading,
    checked_readings,
    coarse_gauge_findings,
    queried_readings,
)  # fmt: skip
from stickwright.mechanics.bench_warnings import CoefficientSpread, bench_doubt, drift_findings
from stickwright.mechanics.robust_fit import RobustFit
from stickwright.mechanics.sprung_lever import Lever
from stickwright.mechanics.straightness import WiderFit, bend_findings, fitted
from stickwright.model.recorded import Finding

__all__ = ["Lever", "LeverFit", "fit_lever"]

Array = NDArray[np.float64]

_NEGATIVE: dict[Number, Matter] = {
    "preload": "negative_preload",
    "friction": "negative_friction",
    "stiffness": "negative_stiffness",
}


@dataclass(frozen=True)
class LeverFit(Lever):
    """A lever estimated from bench readings: a `Lever` with intervals and findings.

    Parameters
    ----------
    intervals : mapping of str to Estimate
        ``preload_nm``, ``stiffness_nm_per_rad``, ``friction_nm``, ``preload_and_friction_nm``,
        ``start_force_n`` and ``full_force_n`` (pushing outwards, at ``length_m``),
        ``friction_force_n``, ``residual_angle_rad``.
    findings : tuple of Finding
        What was noticed.
    queried : tuple of QueriedReading
        Readings left out, with what they should have been.
    scatter_share : float
        Scatter of one reading as a share of the middle force; NaN without degrees of freedom.
    both_ways : bool
        Whether preload and friction could be told apart.
    level : float
        Coverage of the intervals.

    Notes
    -----
    The plain numbers never are negative, so that they make a lever: where the readings alone would
    give a negative preload, stiffness or friction, the number is 0, the others are fitted to that,
    and a finding says what the readings gave.
    """

    intervals: Mapping[str, Estimate] = field(default_factory=dict, kw_only=True)
    findings: tuple[Finding, ...] = field(default=(), kw_only=True)
    queried: tuple[QueriedReading, ...] = field(default=(), kw_only=True)
    scatter_share: float = field(default=math.nan, kw_only=True)
    both_ways: bool = field(default=False, kw_only=True)
    level: float = field(default=0.95, kw_only=True)

    @property
    def lever(self) -> Lever:
        """The lever alone."""
        return Lever(self.preload_nm, self.stiffness_nm_per_rad, self.friction_nm, self.length_m, self.max_angle_rad)

    @property
    def residual_angle_rad(self) -> float:
        """Angle (rad) down to which it comes home by itself; NaN when friction is not known."""
        return self.intervals["residual_angle_rad"].number

    @property
    def returns(self) -> Message:
        """Whether it returns to centre, or what it leaves."""
        residual = self.intervals["residual_angle_rad"]
        if residual.value is None:
            return message(BenchNotes.returns_unknown, why=residual.why or "")
        share, most = residual.number / self.max_angle_rad, residual.upper / self.max_angle_rad
        if share > 0:
            told = most >= share
            return message(
                BenchNotes.returns_not,
                stays_share=share,
                low_share=residual.lower / self.max_angle_rad if told else None,
                high_share=most if told else None,
            )
        return message(BenchNotes.returns_perhaps, most_share=most) if most > 0 else message(BenchNotes.returns)


def fit_lever(
    height_m: ArrayLike,
    force_n: ArrayLike,
    angle_rad: ArrayLike,
    outward: ArrayLike | None = None,
    *,
    max_angle_rad: float | None = None,
    length_m: float | None = None,
    gauge_step_n: float | None = None,
    level: float = 0.95,
) -> LeverFit:
    """The lever that bench readings describe, with intervals and what was noticed.

    Parameters
    ----------
    height_m : float or array, shape (n,)
        Contact point above the pivot, m, one for all readings or one for each.
    force_n : array, shape (n,)
        Force square to the stick, N, three or more readings. A reading of 0 while letting back
        means that the stick stayed; it is noted and left out.
    angle_rad : array, shape (n,)
        Deflection from the centre, rad, 0 or more, at two angles or more.
    outward : array of bool, shape (n,), optional
        True pushing outwards, False letting back. All outwards when not given.
    max_angle_rad : float, optional
        The stop, rad. When not given the largest angle read is taken, and a finding says so.
    length_m : float, optional
        Height, m, at which forces are stated: the lowest read when not given.
    gauge_step_n : float, optional
        Smallest step of the gauge, N.
    level : float, default 0.95
        Coverage of the intervals.

    Returns
    -------
    LeverFit
        Usable as a `Lever`; ``.intervals`` holds the estimates, ``.findings`` the remarks.

    Raises
    ------
    BadInput
        Fewer than three readings, all at one angle, a negative or missing number, a number in the
        wrong unit: every problem with the number of its reading, counted from 1.

    Notes
    -----
    Weighted least squares. The scatter of a gauge held by hand is taken to be a constant part and a
    part in proportion to the force, sd = s * hypot(F, c), s estimated, c = 0.6 of the middle force
    (more with a coarse gauge): the intervals then very nearly hold for scatter of either kind. Up to three
    readings, one in four at most, are left out when the others contradict them (see `robust_fit`).
    Intervals by Student's t, so that three readings give a wide one; never below a scatter of 0.5 %,
    which no gauge held by hand betters (common practice). They allow for a curved spring, drift, and a gauge
    held off square (see `bench_doubt`); preload and stiffness are those of the line from the force at the centre
    to the force at the stop. The residual angle is a ratio: Fieller's
    interval [fieller-1954]. Numbers of 0 or more by non-negative least squares [lawson-hanson-1974].

    Examples
    --------
    >>> fit = fit_lever(0.022, [0.41, 0.56, 0.73, 0.64, 0.48, 0.32], [0.0, 0.1745, 0.3491, 0.3491, 0.1745, 0.0],
    ...                 [True, True, True, False, False, False], max_angle_rad=0.3491)
    >>> round(fit.preload_nm, 4), round(fit.friction_nm, 4), fit.returns.text
    (0.008, 0.001, 'returns')
    >>> fit.intervals["preload_nm"].has_interval
    True
    """
    readings, findings = checked_readings(
        height_m, force_n, angle_rad, outward, max_angle_rad=max_angle_rad, length_m=length_m, gauge_step_n=gauge_step_n
    )
    return lever_of(readings, findings, level)


def lever_of(
    readings: LeverReadings,
    findings: tuple[Finding, ...],
    level: float,
    judged: WiderFit | None = None,
    direction_rad: Array | None = None,
) -> LeverFit:
    """The lever of readings that were checked already.

    Parameters
    ----------
    readings : LeverReadings
        The readings.
    findings : tuple of Finding
        What was noticed while checking.
    level : float
        Coverage of the intervals.
    judged : WiderFit, optional
        Where the readings were judged with a wider model (one line for each direction).
    direction_rad : array, shape (n,), optional
        Direction of each reading, when all are known: the intervals then allow for directions that read apart.
    """
    scatter = GaugeScatter.of(readings)
    design = lever_design(readings)
    kept = None if judged is None else judged.fit.kept
    fit = fitted(design, readings, scatter, kept)
    judged = judged or WiderFit(design, fit)
    queried = queried_readings(readings, judged.fit, level)
    one_line = direction_rad is None and readings.both_ways
    doubt = bench_doubt(design, readings, scatter, fit, direction_rad, out_and_back_once=one_line)
    if doubt is not None:
        fit = replace(fit, coefficients=doubt.coefficients)
    numbers, contradictions = _never_negative(design, readings, fit)
    findings += (
        *_one_way_findings(readings), *(query.finding for query in queried), *contradictions,
        *bend_findings(judged, readings, scatter), *drift_findings(doubt), *coarse_gauge_findings(readings),
    )  # fmt: skip
    intervals = _intervals(readings, fit, doubt, numbers, level)
    friction_nm = numbers[1] if readings.both_ways else 0.0
    result = LeverFit(
        numbers[0], numbers[-1], friction_nm, readings.length_m, readings.max_angle_rad,
        intervals=intervals, findings=findings, queried=queried, scatter_share=scatter.share(judged.fit),
        both_ways=readings.both_ways, level=level,
    )  # fmt: skip
    if intervals["residual_angle_rad"].number > 0:
        note = Finding("note", "not_self_centring", message(BenchNotes.leaves_off_centre, returns=result.returns))
        return replace(result, findings=(*findings, note))
    return result


def lever_design(readings: LeverReadings) -> Array:
    """One row a reading: preload, friction (only when read both ways) and stiffness."""
    ones = np.ones(len(readings.angle_rad))
    if not readings.both_ways:
        return np.column_stack([ones, readings.angle_rad])
    return np.column_stack([ones, readings.way, readings.angle_rad])


def _never_negative(design: Array, readings: LeverReadings, fit: RobustFit) -> tuple[list[float], tuple[Finding, ...]]:
    """The coefficients with none below 0, and what was said by those that wanted to be."""
    free = [float(value) for value in fit.coefficients]
    if min(free) >= 0:
        return free, ()
    from scipy.optimize import nnls

    weight = 1 / fit.unit[fit.kept]
    bounded, _ = nnls(design[fit.kept] * weight[:, None], readings.moment_nm[fit.kept] * weight)
    names: tuple[Number, ...] = ("preload", "friction", "stiffness") if readings.both_ways else ("preload", "stiffness")
    findings = []
    for index, name in enumerate(names):
        if free[index] >= 0:
            continue
        _, _, high = fit.combination(np.eye(len(free))[index], 0.95)
        findings.append(_negative_finding(name, free[index], sure=high < 0))
    return [float(value) for value in bounded], tuple(findings)


def _negative_finding(number: Number, value: float, *, sure: bool) -> Finding:
    stiffness = number == "stiffness"
    text = message(
        BenchNotes.negative,
        number=number,
        moment_nm=None if stiffness else value,
        stiffness_nm_per_rad=value if stiffness else None,
        sure=sure,
    )
    return Finding("query" if sure or stiffness else "note", _NEGATIVE[number], text)


def _one_way_findings(readings: LeverReadings) -> tuple[Finding, ...]:
    if readings.both_ways:
        return ()
    if readings.only_back:
        return (Finding("fault", "no_outward_readings", message(BenchNotes.only_back)),)
    return (Finding("note", "friction_not_known", message(BenchNotes.only_out)),)


def _intervals(
    readings: LeverReadings, fit: RobustFit, doubt: CoefficientSpread | None, numbers: list[float], level: float
) -> dict[str, Estimate]:
    """All estimates of a fit, by the name of the number."""
    n, width = int(fit.kept.sum()), len(numbers)
    unit, values = np.eye(width), np.array(numbers)

    def estimate(weights: Array, assumed: Text | None = None) -> Estimate:
        return bounded_below(doubt, weights, float(weights @ values), level, n, assumed)

    total = unit[0] + unit[1] if readings.both_ways else unit[0]
    found = {
        "preload_nm": estimate(unit[0]),
        "stiffness_nm_per_rad": estimate(unit[-1]),
        "preload_and_friction_nm": estimate(total),
        "start_force_n": estimate(total / readings.length_m),
        "full_force_n": estimate((total + readings.max_angle_rad * unit[-1]) / readings.length_m),
    }
    if readings.both_ways:
        found["friction_nm"] = estimate(unit[1])
        found["friction_force_n"] = estimate(unit[1] / readings.length_m)
        found["residual_angle_rad"] = _residual(fit, doubt, values, readings.max_angle_rad, level, n)
        return found
    why = message(BenchNotes.why_only_back) if readings.only_back else message(BenchNotes.why_only_out)
    assumed = message(BenchNotes.friction_as_none)
    found["preload_nm"] = estimate(total, assumed)
    for name in ("friction_nm", "friction_force_n"):
        found[name] = Estimate.unbounded(0.0, why, n=0, assumed=assumed)
    found["residual_angle_rad"] = Estimate.missing(why, n=0)
    if readings.only_back:
        for name in ("preload_and_friction_nm", "start_force_n", "full_force_n"):
            found[name] = Estimate.unbounded(found[name].number, why, n=n, assumed=assumed)
    return found


def bounded_below(
    doubt: CoefficientSpread | None, weights: Array, value: float, level: float, n: int, assumed: Text | None
) -> Estimate:
    """An estimate of a number that cannot be negative.

    Parameters
    ----------
    doubt : CoefficientSpread or None
        What the readings tell of the coefficients; None without a degree of freedom.
    weights : array, shape (p,)
        The number as a weighted sum of the coefficients.
    value : float
        The number itself, 0 or more.
    level : float
        Coverage of the interval.
    n : int
        Readings behind it.
    assumed : Text or None
        What was assumed.
    """
    if doubt is None:
        why = message(BenchNotes.few_readings, readings=n, unknowns=len(weights))
        return Estimate.unbounded(value, why, n=n, assumed=assumed)
    low, high = doubt.interval(weights, level)
    return Estimate(value, min(max(0.0, low), value), max(high, value), level, n, assumed)


def _residual(
    fit: RobustFit, doubt: CoefficientSpread | None, values: Array, max_angle_rad: float, level: float, n: int
) -> Estimate:
    """Where the stick stays by itself: (friction - preload)/stiffness, between 0 and the stop."""
    excess, stiffness = float(values[1] - values[0]), float(values[2])
    if stiffness > 0:
        value = min(max(0.0, excess / stiffness), max_angle_rad)
    else:
        value = max_angle_rad if excess > 0 else 0.0
    if fit.combination(np.array([0.0, 1.0, 0.0]), level)[2] < 0:
        return Estimate.missing(message(BenchNotes.swapped), n=n)
    if doubt is None:
        return Estimate.unbounded(value, message(BenchNotes.too_few), n=n)
    above, below = np.array([-1.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0])
    a, b = float(above @ fit.coefficients), float(below @ fit.coefficients)
    cov = doubt.covariance * fit.quantile(level) ** 2
    v_aa, v_bb, v_ab = float(above @ cov @ above), float(cov[2, 2]), float(above @ cov @ below)
    if b <= 0 or b * b <= v_bb:  # the stiffness may be 0: the ratio has no bound
        if a + math.sqrt(v_aa) <= 0:
            return Estimate(value, 0.0, max(0.0, value), level, n)
        return Estimate.unbounded(value, message(BenchNotes.no_stiffness), n=n)
    middle, root = a * b - v_ab, math.sqrt(max(0.0, (a * b - v_ab) ** 2 - (b * b - v_bb) * (a * a - v_aa)))
    ends = [(middle + sign * root) / (b * b - v_bb) for sign in (-1, 1)]
    low, high = (min(max(0.0, end), max_angle_rad) for end in ends)
    return Estimate(value, min(low, value), max(high, value), level, n)
