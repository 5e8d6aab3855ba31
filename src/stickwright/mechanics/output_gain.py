"""Output against throw: dead travel at the centre, and where the output is full."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.bench_notes import BenchNotes
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.mechanics.robust_fit import RobustFit, robust_fit
from stickwright.model.bench import OutputGain
from stickwright.model.recorded import Finding

__all__ = ["output_gain"]

Array = NDArray[np.float64]

_RISING = (0.02, 0.98)  # output between these follows the stick; outside it may be cut off


def output_gain(
    angle: Array, output: Array, max_angle_rad: float, level: float
) -> tuple[OutputGain | None, tuple[Finding, ...]]:
    """Where along the throw the output begins and where it is full.

    Parameters
    ----------
    angle : array, shape (n,)
        Deflection of each reading, rad.
    output : array, shape (n,)
        Output there, 0 to 1; NaN where it was not read.
    max_angle_rad : float
        The stop, rad.
    level : float
        Coverage of the intervals.

    Returns
    -------
    OutputGain or None, tuple of Finding
        None when the output was not read, or at too few places.

    Notes
    -----
    The throw is fitted to the output, straight, over the readings at which the output was between
    nothing and full. Assumed: a straight output in between.
    """
    if not np.isfinite(output).any():
        return None, ()
    share = angle / max_angle_rad
    rising = np.isfinite(output) & (output > _RISING[0]) & (output < _RISING[1])
    if rising.sum() < 2 or float(np.ptp(output[rising])) < 0.1:
        return None, (Finding("note", "output_not_known", message(BenchNotes.output_unknown)),)
    design = np.column_stack([np.ones(int(rising.sum())), output[rising]])
    fit = robust_fit(design, share[rising], np.ones_like, floor=0.005, usual=0.02)
    full = _along(fit, np.array([1.0, 1.0]), level)
    dead = _along(fit, np.array([1.0, 0.0]), level)
    return OutputGain(full, dead), _gain_findings(full, dead)


def _along(fit: RobustFit, weights: Array, level: float) -> Estimate:
    value, low, high = fit.combination(weights, level)
    n = int(fit.kept.sum())
    value = max(0.0, value)
    if fit.degrees_of_freedom < 1:
        return Estimate.unbounded(value, message(BenchNotes.two_outputs), n=n)
    return Estimate(value, min(max(0.0, low), value), max(high, value), level, n)


def _gain_findings(full: Estimate, dead: Estimate) -> tuple[Finding, ...]:
    findings = []
    if full.number < 0.9:
        text = message(BenchNotes.full_early, at_share=full.number)
        findings.append(Finding("note", "full_early", text))
    if full.number > 1.05:
        text = message(BenchNotes.output_short, output_share=1 / full.number)
        findings.append(Finding("note", "output_short_of_full", text))
    if dead.number > 0.05:
        text = message(BenchNotes.dead_centre, dead_share=dead.number)
        findings.append(Finding("note", "dead_centre", text))
    return tuple(findings)
