"""Whether readings contradict a straight spring, or a friction that is alike at all angles."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.message import message
from stickwright.mechanics.bench_readings import GaugeScatter, LeverReadings
from stickwright.mechanics.robust_fit import RobustFit, robust_fit
from stickwright.model.recorded import Finding

__all__ = ["WiderFit", "bend_findings", "fitted"]

Array = NDArray[np.float64]

_SURPRISE = 0.01  # p below which a bent spring or uneven friction is believed
_MATERIAL_SHARE = 0.03  # of the middle force: a bend smaller than this changes no decision


@dataclass(frozen=True)
class WiderFit:
    """A wider model of the same readings, which says which of them belong, and whether they bend.

    Parameters
    ----------
    design : array, shape (n, p)
        One row a reading.
    fit : RobustFit
        The fit of the readings' moments to it.
    """

    design: Array
    fit: RobustFit


def fitted(
    design: Array, readings: LeverReadings, scatter: GaugeScatter, kept: NDArray[np.bool_] | None = None,
    narrower: Array | None = None,
) -> RobustFit:  # fmt: skip
    """The readings' moments fitted to a design, with the scatter of their gauge.

    Parameters
    ----------
    design : array, shape (n, p)
        One row a reading.
    readings : LeverReadings
        The readings.
    scatter : GaugeScatter
        How they scatter.
    kept : array of bool, shape (n,), optional
        Which readings to use; found when not given.
    narrower : array, shape (n, q), optional
        A narrower design, which decides where this one cannot tell which reading is out of line.
    """
    return robust_fit(
        design, readings.moment_nm, scatter.moment_unit_nm, floor=scatter.floor, usual=scatter.usual, kept=kept,
        narrower=narrower,
    )  # fmt: skip


def bend_findings(judged: WiderFit, readings: LeverReadings, scatter: GaugeScatter) -> tuple[Finding, ...]:
    """Whether the readings contradict a straight spring, or friction that is alike at all angles.

    Parameters
    ----------
    judged : WiderFit
        The readings and what was fitted to them.
    readings : LeverReadings
        The same readings.
    scatter : GaugeScatter
        How they scatter.

    Returns
    -------
    tuple of Finding
        Only what is beyond chance (F test of one more term, p < 0.01) and large enough to matter.
    """
    angle = readings.angle_rad
    findings = []
    bent = _wider(judged, angle**2, readings, scatter)
    if bent is not None:
        apart = float(np.max(np.abs((bent.fitted - judged.fit.fitted) / readings.height_m)[judged.fit.kept]))
        text = message(BenchNotes.curved_spring, stiffer=bool(bent.coefficients[-1] > 0), misses_n=apart)
        findings.append(Finding("query", "curved_spring", text))
    uneven = _wider(judged, readings.way * angle, readings, scatter) if readings.both_ways else None
    if uneven is not None:
        column = next(i for i in range(judged.design.shape[1]) if np.array_equal(judged.design[:, i], readings.way))
        centre = float(uneven.coefficients[column])
        stop = centre + float(uneven.coefficients[-1]) * readings.max_angle_rad
        there, here = (max(0.0, moment / readings.length_m) for moment in (centre, stop))
        text = message(BenchNotes.uneven_friction, centre_n=there, full_n=here)
        findings.append(Finding("query", "uneven_friction", text))
    return tuple(findings)


def _wider(judged: WiderFit, column: Array, readings: LeverReadings, scatter: GaugeScatter) -> RobustFit | None:
    """The fit with one more term, when the term is beyond chance and large enough to matter."""
    fit, wider = judged.fit, np.column_stack([judged.design, column])
    freedom = int(fit.kept.sum()) - wider.shape[1]
    if freedom < 2 or np.linalg.matrix_rank(wider[fit.kept]) < wider.shape[1]:
        return None
    from scipy.special import fdtrc

    more = fitted(wider, readings, scatter, fit.kept)
    left = max(more.residual_sum, freedom * scatter.floor**2)
    if fdtrc(1, freedom, max(0.0, fit.residual_sum - more.residual_sum) / (left / freedom)) > _SURPRISE:
        return None
    apart = (more.fitted - fit.fitted)[fit.kept] / readings.height_m[fit.kept]
    return more if float(np.max(np.abs(apart))) > _MATERIAL_SHARE * scatter.middle_force_n else None
