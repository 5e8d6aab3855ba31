"""What tables tell: aimed movements, one a row, and presses."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.aiming import Aiming
from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import Finding, TableReport
from stickwright.model.recording import Taps, Trials
from stickwright.trace.pointing import throughput_report
from stickwright.trace.tapping import tap_report

__all__ = ["taps_report", "trials_report"]

SLOWEST_S, FASTEST_S = 60.0, 0.05
"""A usual movement outside these is timed in another unit."""

LEAST_SERIAL = 0.5
"""From this share of rows that begin at the target before, on, the movements follow one another."""


def trials_report(trials: Trials, *, rng: np.random.Generator | None = None) -> TableReport:
    """Throughput, errors and movement time of a table.

    Parameters
    ----------
    trials : Trials
        As read.
    rng : numpy Generator or None
        For the interval; None for a generator seeded with 0.

    Returns
    -------
    TableReport
        Rows are named as a spreadsheet counts them. Where most rows begin at the target of the row before, the starts
        are read as targets, not as where the movement really began, and each distance is corrected [soukoreff-2004].

    Raises
    ------
    BadInput
        Fewer than two rows.

    Examples
    --------
    >>> rng = np.random.default_rng(2)
    >>> targets = np.tile([[100.0, 0.0]], (20, 1))
    >>> selections = targets + rng.normal(0, 3, (20, 2))
    >>> nothing = Trials("a.csv", np.zeros((20, 2)), targets, selections, np.full(20, 0.8), None, None, np.arange(20) + 2)
    >>> trials_report(nothing).pointing.movements
    20
    """
    n = len(trials.times_s)
    if n < 2:
        raise BadInput(
            Problem(
                trials.name,
                message(Signals.count, count=n, of="rows"),
                message(Signals.expected, what="two_movements"),
                message(Signals.remedy, what="only"),
            )
        )
    findings = [Finding("note", "reading", note) for note in trials.notes]
    usual = float(np.nanmedian(trials.times_s)) if np.isfinite(trials.times_s).any() else np.nan
    if usual > SLOWEST_S or usual < FASTEST_S:
        text = message(Aiming.movement_unit, time_s=usual)
        findings.append(Finding("query", "unit", text))
    report = throughput_report(
        trials.start_xy, trials.target_xy, trials.selection_xy, trials.times_s, trials.width,
        _begins_at_target_before(trials), hits=trials.hit, rows=trials.row, rng=rng,
    )  # fmt: skip
    if report.movements < 0.8 * n:
        text = message(Aiming.rows_lost, lost=n - report.movements, rows=n)
        findings.append(Finding("query", "left_out", text))
    return TableReport(trials.name, "trials", n, tuple(findings), pointing=report)


def _begins_at_target_before(trials: Trials) -> NDArray[np.bool_]:
    follows = np.zeros(len(trials.times_s), dtype=np.bool_)
    follows[1:] = (trials.start_xy[1:] == trials.target_xy[:-1]).all(axis=1)
    return follows if follows[1:].mean() >= LEAST_SERIAL else np.zeros_like(follows)


def taps_report(taps: Taps) -> TableReport:
    """Rate, evenness and slowing of a table of presses.

    Parameters
    ----------
    taps : Taps
        As read.

    Returns
    -------
    TableReport
        See `stickwright.trace.tapping.tap_report`.

    Raises
    ------
    BadInput
        As `tap_report`, with the table's name.

    Examples
    --------
    >>> taps_report(Taps("b.csv", np.array([0.0, 0.2, 0.41, 0.6, 0.82, 1.0]))).taps.presses
    6
    """
    try:
        report = tap_report(taps.down_s, taps.up_s)
    except BadInput as problem:
        raise problem.inside(taps.name) from problem
    findings = [Finding("note", "reading", note) for note in taps.notes]
    if not 0.1 < report.rate_hz.number < 20.0:
        text = message(Aiming.press_unit, rate_hz=report.rate_hz.number)
        findings.append(Finding("query", "unit", text))
    return TableReport(taps.name, "taps", len(taps.down_s), tuple(findings), taps=report)
