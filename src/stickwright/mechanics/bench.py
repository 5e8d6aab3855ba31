"""The bench of a stick: from gauge readings to the line of numbers in the kit list.

All directions are judged together, one line for each direction and one friction for all, so that
they share one scatter: a reading out of line is found even where a direction has only three. The
directions are then compared, and pooled.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.mechanics.bench_positions import directions, positions
from stickwright.mechanics.bench_readings import GaugeScatter, LeverReadings, checked_readings
from stickwright.mechanics.bench_warnings import CoefficientSpread, bench_doubt
from stickwright.mechanics.lever import LeverFit, bounded_below, lever_design, lever_of
from stickwright.mechanics.output_gain import output_gain
from stickwright.mechanics.robust_fit import RobustFit
from stickwright.mechanics.straightness import WiderFit, fitted
from stickwright.model.bench import BenchLine, BenchReading, BenchResult
from stickwright.model.recorded import Finding

__all__ = ["bench_stick", "to_stick_fields", "wear_findings"]

Array = NDArray[np.float64]

_UNEQUAL_P = 0.01
_UNEQUAL_SHARE = 0.10  # of start or full force: a smaller difference changes no choice (judgement)
_WORN_SHARE = 0.20  # loss of start force at which a stick is retired or re-tuned (common practice)


def bench_stick(
    force_n: ArrayLike,
    *,
    name: str,
    height_m: ArrayLike,
    angle_rad: ArrayLike | None = None,
    travel_m: ArrayLike | None = None,
    output_share: ArrayLike | None = None,
    direction_rad: ArrayLike | None = None,
    outward: ArrayLike | None = None,
    max_angle_rad: float | None = None,
    max_travel_m: float | None = None,
    length_m: float | None = None,
    gauge_step_n: float | None = None,
    benched: str = "",
    level: float = 0.95,
) -> BenchResult:
    """What the readings of one stick say of it, over all directions and in each.

    Parameters
    ----------
    force_n : array, shape (n,)
        Force square to the stick, N, three or more readings.
    name : str
        The stick's name, for the kit list.
    height_m : float or array, shape (n,)
        Contact point above the pivot, m.
    angle_rad : array, shape (n,), optional
        Deflection, rad; or `travel_m`; or, without either, `output_share` stands for it.
    travel_m : array, shape (n,), optional
        Travel of the contact point along the movement plane, m.
    output_share : array, shape (n,), optional
        Output read at the same time, 0 to 1, without sign; NaN where it was not read.
    direction_rad : float or array, shape (n,), optional
        0 right, 90 degrees forward; NaN or None when it was not written.
    outward : array of bool, shape (n,), optional
        True pushing outwards, False letting back; all outwards when not given.
    max_angle_rad, max_travel_m : float, optional
        The stop, rad, or the travel to it, m, at the stated height. One of them is needed when the
        output stands for the angle.
    length_m : float, optional
        Height, m, at which forces are stated: the lowest read when not given.
    gauge_step_n : float, optional
        Smallest step of the gauge, N.
    benched : str, default ""
        Date of the bench, YYYY-MM-DD.
    level : float, default 0.95
        Coverage of the intervals.

    Returns
    -------
    BenchResult
        With the readings, for a figure, and the findings.

    Raises
    ------
    BadInput
        As `fit_lever`; besides, no position given, a travel longer than the stick, an output outside
        0 to 1, or an output that stands for the angle without the stop.

    Notes
    -----
    Directions are called unequal when separate lines fit the readings better than chance (F test,
    p < 0.01) and start or full force differs by a tenth or more; the pooled intervals then span the
    directions. Assumed: one friction for all directions; where the output stands for the angle,
    output in proportion to it and full at the stop. Model and intervals: see `fit_lever`.

    Examples
    --------
    >>> result = bench_stick([0.41, 0.57, 0.73, 0.63, 0.48, 0.32], name="ash", height_m=0.022,
    ...                      travel_m=[0.0, 0.00382, 0.00752, 0.00752, 0.00382, 0.0],
    ...                      outward=[True] * 3 + [False] * 3, max_travel_m=0.00752)
    >>> round(result.pooled.start_force_n.value, 2), round(result.friction_force_n.value, 2), result.returns.text
    (0.41, 0.05, 'returns')
    """
    angle, output, stop, position_findings = positions(
        force_n, height_m, angle_rad=angle_rad, travel_m=travel_m, output_share=output_share, max_angle_rad=max_angle_rad,
        max_travel_m=max_travel_m, length_m=length_m,
    )  # fmt: skip
    direction = directions(direction_rad, len(angle))
    readings, findings = checked_readings(
        height_m, force_n, angle, outward, max_angle_rad=stop, length_m=length_m, gauge_step_n=gauge_step_n
    )
    judged, codes = _by_direction(readings, direction[readings.number - 1])
    read = direction[readings.number - 1]
    fit = lever_of(readings, (*position_findings, *findings), level, judged, None if judged is None else read)
    lines, unequal, compared = _lines(readings, judged, codes, fit, level)
    friction = fit.intervals["friction_nm"]
    gain, gain_findings = output_gain(angle, output, fit.max_angle_rad, level) if not position_findings else (None, ())
    return BenchResult(
        name=name,
        height_m=fit.length_m,
        max_angle_rad=fit.max_angle_rad,
        travel_m=Estimate.unbounded(fit.travel(fit.max_angle_rad), message(BenchNotes.stop_read_once)),
        pooled=_pooled(fit, lines if unequal else (), friction),
        directions=lines,
        unequal=unequal,
        friction_force_n=_per_length(friction, fit.length_m),
        residual_share=_share_of(fit.intervals["residual_angle_rad"], fit.max_angle_rad),
        returns=fit.returns,
        scatter_share=fit.scatter_share,
        output=gain,
        readings=_told(force_n, height_m, outward, readings, fit, angle=angle, output=output, direction=direction),
        findings=(*fit.findings, *compared, *gain_findings),
        benched=benched,
        level=level,
    )


def to_stick_fields(result: BenchResult) -> dict[str, object]:
    """The kit-list fields that the bench fills, SI, by the field names of `model.kit.Stick`.

    Parameters
    ----------
    result : BenchResult
        A benched stick.

    Returns
    -------
    dict
        Names to numbers, pairs of numbers for intervals. A number that the bench could not tell
        (friction from one-way readings, an interval without scatter to judge by) is not in it.

    Examples
    --------
    >>> result = bench_stick([0.41, 0.57, 0.73], name="ash", height_m=0.022, angle_rad=[0.0, 0.1745, 0.3491])
    >>> fields = to_stick_fields(result)
    >>> fields["name"], round(fields["start_force_n"], 2), "friction_force_n" in fields
    ('ash', 0.41, False)
    """
    fields: dict[str, object] = {
        "name": result.name,
        "contact_height_m": result.height_m,
        "travel_m": result.travel_m.value,
    }
    for field, estimate in (
        ("start_force", result.pooled.start_force_n),
        ("full_force", result.pooled.full_force_n),
        ("friction_force", result.friction_force_n),
    ):
        if estimate.assumed is None or field != "friction_force":
            fields[f"{field}_n"] = estimate.value
        if estimate.has_interval:
            fields[f"{field}_interval_n"] = (estimate.low, estimate.high)
    if result.output is not None and result.output.full_output_share.value is not None:
        fields["full_output_share"] = min(1.0, max(0.05, result.output.full_output_share.value))
    if result.benched:
        fields["benched"] = result.benched
    return fields


def wear_findings(now: BenchResult, before_start_force_n: float, before_height_m: float) -> tuple[Finding, ...]:
    """Whether the centring spring has tired since the last bench.

    Parameters
    ----------
    now : BenchResult
        The stick as benched today.
    before_start_force_n : float
        Start force at the last bench, N.
    before_height_m : float
        Height of the contact point above the pivot at which it is stated; the force is taken to today's height by the lever.

    Returns
    -------
    tuple of Finding
        One query when the start force has fallen by more than a fifth (common practice), else none.
    """
    start = now.pooled.start_force_n
    before_n = before_start_force_n * before_height_m / now.height_m
    loss = 1 - start.number / before_n
    if loss <= _WORN_SHARE:
        return ()
    sure = bool(start.has_interval and start.upper < before_n)
    text = message(BenchNotes.worn_spring, loss_share=loss, sure=sure, before_n=before_n, now_n=start.number)
    return (Finding("query", "worn_spring", text),)


def _by_direction(readings: LeverReadings, direction: Array) -> tuple[WiderFit | None, Array]:
    """One line for each direction and one friction for all, when the readings carry that."""
    codes = np.unique(direction[np.isfinite(direction)])
    if len(codes) < 2 or not np.isfinite(direction).all():
        return None, codes
    member = (direction[:, None] == codes[None, :]).astype(np.float64)
    columns = [member, member * readings.angle_rad[:, None]]
    if readings.both_ways:
        columns.append(readings.way[:, None])
    design = np.hstack(columns)
    n, p = design.shape
    if n - p < 2 or np.linalg.matrix_rank(design, tol=1e-3) < p:
        return None, codes
    scatter = GaugeScatter.of(readings)
    return WiderFit(design, fitted(design, readings, scatter, narrower=lever_design(readings))), codes


def _lines(
    readings: LeverReadings, judged: WiderFit | None, codes: Array, pooled: LeverFit, level: float
) -> tuple[tuple[BenchLine, ...], bool, tuple[Finding, ...]]:
    """Each direction's line, whether they differ, and the remark on it."""
    doubt = None if judged is None else bench_doubt(judged.design, readings, GaugeScatter.of(readings), judged.fit)
    if judged is None or doubt is None:
        if len(codes) < 2:
            return (), False, ()
        return (), False, (Finding("note", "directions_not_compared", message(BenchNotes.directions_not_compared)),)
    lines = tuple(_line(readings, doubt, codes, index, pooled, level) for index in range(len(codes)))
    if not _differ(readings, judged.fit):
        return lines, False, ()
    start, full = (_extremes(lines, name) for name in ("start_force_n", "full_force_n"))
    if max(high / max(low, 1e-9) for _, low, _, high in (start, full)) < 1 + _UNEQUAL_SHARE:
        return lines, False, ()
    text = message(
        BenchNotes.unequal_directions, start_low_rad=start[0], start_low_n=start[1], start_high_rad=start[2],
        start_high_n=start[3], full_low_rad=full[0], full_low_n=full[1], full_high_rad=full[2], full_high_n=full[3],
    )  # fmt: skip
    return lines, True, (Finding("query", "unequal_directions", text),)


def _line(
    readings: LeverReadings, doubt: CoefficientSpread, codes: Array, index: int, pooled: LeverFit, level: float
) -> BenchLine:
    width = doubt.means.shape[1]
    unit = np.eye(width)
    out = unit[-1] if readings.both_ways else np.zeros(width)
    base, slope = unit[index], unit[len(codes) + index]

    def estimate(weights: Array) -> Estimate:
        value = max(0.0, float(weights @ doubt.coefficients))
        return bounded_below(doubt, weights, value, level, doubt.readings, None)

    start, full = base + out, base + out + readings.max_angle_rad * slope
    preload = estimate(base)
    if not readings.both_ways:
        preload = replace(preload, assumed=pooled.intervals["preload_nm"].assumed)
    return BenchLine(
        float(codes[index]), preload, estimate(slope), pooled.intervals["friction_nm"],
        estimate(start / readings.length_m), estimate(full / readings.length_m),
    )  # fmt: skip


def _differ(readings: LeverReadings, separate: RobustFit) -> bool:
    """Whether separate lines fit the readings better than chance would have it."""
    from scipy.special import fdtrc

    scatter = GaugeScatter.of(readings)
    together = fitted(lever_design(readings), readings, scatter, separate.kept)
    more = len(separate.coefficients) - len(together.coefficients)
    left = max(separate.residual_sum, separate.degrees_of_freedom * scatter.floor**2)
    gain = max(0.0, together.residual_sum - separate.residual_sum)
    ratio = (gain / more) / (left / separate.degrees_of_freedom)
    return bool(fdtrc(more, separate.degrees_of_freedom, ratio) < _UNEQUAL_P)


def _extremes(lines: tuple[BenchLine, ...], name: str) -> tuple[float, float, float, float]:
    """Where a force is least and most: direction, force, direction, force."""
    ordered = sorted(lines, key=lambda line: float(getattr(line, name).number))
    (low, high) = ordered[0], ordered[-1]
    return (
        low.direction_rad or 0.0, getattr(low, name).number, high.direction_rad or 0.0, getattr(high, name).number,
    )  # fmt: skip


def _per_length(moment: Estimate, length_m: float) -> Estimate:
    return replace(moment, value=moment.number / length_m, low=moment.lower / length_m, high=moment.upper / length_m)


def _pooled(fit: LeverFit, spanning: tuple[BenchLine, ...], friction: Estimate) -> BenchLine:
    """One line for all directions; its intervals span the lines given."""

    def spanned(name: str) -> Estimate:
        estimate = fit.intervals[name]
        others = [getattr(line, name) for line in spanning if getattr(line, name).has_interval]
        if not others or not estimate.has_interval:
            return estimate
        low, high = min(other.number for other in others), max(other.number for other in others)
        return replace(estimate, low=min(estimate.lower, low), high=max(estimate.upper, high))

    return BenchLine(
        None, spanned("preload_nm"), spanned("stiffness_nm_per_rad"), friction,
        spanned("start_force_n"), spanned("full_force_n"),
    )  # fmt: skip


def _share_of(angle: Estimate, max_angle_rad: float) -> Estimate:
    return replace(
        angle, value=angle.number / max_angle_rad, low=angle.lower / max_angle_rad, high=angle.upper / max_angle_rad
    )


def _told(
    force_n: ArrayLike,
    height_m: ArrayLike,
    outward: ArrayLike | None,
    readings: LeverReadings,
    fit: LeverFit,
    *,
    angle: Array,
    output: Array,
    direction: Array,
) -> tuple[BenchReading, ...]:
    """Every reading as given, and whether it was used: a figure draws these."""
    n = len(angle)
    force = np.ravel(np.asarray(force_n, dtype=np.float64))
    height = np.broadcast_to(np.ravel(np.asarray(height_m, dtype=np.float64)), (n,))
    out = np.ones(n, dtype=bool) if outward is None else np.broadcast_to(np.ravel(np.asarray(outward, bool)), (n,))
    queried = {query.number: query.expected_n for query in fit.queried}
    fitted_numbers = set(readings.number.tolist())
    return tuple(
        BenchReading(
            number=i + 1,
            direction_rad=None if math.isnan(direction[i]) else float(direction[i]),
            angle_rad=float(angle[i]),
            force_n=float(force[i]),
            outward=bool(out[i]),
            height_m=float(height[i]),
            output_share=None if math.isnan(output[i]) else float(output[i]),
            used=i + 1 in fitted_numbers and i + 1 not in queried,
            expected_n=queried.get(i + 1),
        )
        for i in range(n)
    )
