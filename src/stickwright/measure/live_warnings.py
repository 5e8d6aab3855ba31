"""What looks wrong while it can still be put right: the wrong stick, one that sleeps, a turned or mirrored one, exact limits."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.live_warnings import LiveWarnings
from stickwright.codes.message import message
from stickwright.measure.steps import Task, cue_code
from stickwright.model.recorded import Finding
from stickwright.trace.bias import bias_report
from stickwright.trace.recording import Cleaned

__all__ = ["live_warnings"]

Array = NDArray[np.float64]

STILL_S = 2.0
"""So long without any change while movement is asked: the stick is asleep, or another one is moved; common practice."""

MOVES = 0.2
"""A stick that covers so much of its output is being moved; one that covers a quarter of that is not. (Judgement.)"""

_MOVING_TASKS = tuple(float(cue_code(word)) for word in ("rim", "push", "aim", "follow", "play"))
_TOLD_LIVE = {
    "nothing_moves", "one_axis", "unplugged", "frozen", "empty_cells", "dead_zone", "rest_cleaned", "clipping",
    "slow_sampling", "same_time_twice",
}  # fmt: skip


def live_warnings(task: Task, rows: Array, read: tuple[Cleaned, tuple[Finding, ...]] | None) -> tuple[Finding, ...]:
    """Doubts about what has come in so far, the most urgent first.

    Parameters
    ----------
    task : Task
        That runs.
    rows : array, shape (n, 11)
        Columns `RECORDED_COLUMNS`.
    read : (Cleaned, tuple of Finding) or None
        As `stickwright.trace.recording.cleaned` gives them; None where they cannot be had yet.

    Returns
    -------
    tuple of Finding
        Each with what to do.
    """
    rows = rows[np.isfinite(rows[:, 0])]
    found = _stands_still(task, rows) + _two_sticks(rows) if len(rows) else []
    if read is not None:
        clean, noticed = read
        told = {each.about for each in found}
        found += [
            each for each in noticed if each.about in _TOLD_LIVE and not ({"stands_still", "other_stick"} & told)
        ]  # fmt: skip
        if clean.asked("push").any():
            found += [each for each in bias_report(clean)[1] if each.level != "note"]
    return tuple(found)


def _asked_to_move(rows: Array) -> NDArray[np.bool_]:
    return np.isin(rows[:, 6], _MOVING_TASKS)


def _stands_still(task: Task, rows: Array) -> list[Finding]:
    """The last seconds bring the same value over and over while movement is asked."""
    now_s = float(rows[-1, 0])
    tail = rows[rows[:, 0] > now_s - STILL_S - 1e-9]
    if task.name == "press" or not _asked_to_move(tail).all() or now_s - tail[0, 0] < 0.9 * STILL_S or len(tail) < 3:
        return []
    spans = np.ptp(tail[:, [1, 2]], axis=0)
    if not (spans == 0).all():
        return []
    other = np.ptp(tail[:, 7:9], axis=0)
    if np.nanmax(other, initial=0.0) > MOVES:
        return []  # said as the other stick
    away = float(np.hypot(*tail[-1, 1:3])) > 0.95
    if away:
        return []  # at the stop nothing changes, and that is what was asked for
    return [Finding("query", "stands_still", message(LiveWarnings.stands_still, time_s=STILL_S))]


def _two_sticks(rows: Array) -> list[Finding]:
    """A second stick is there: is it the one that is moved, or does somebody move both?"""
    asked = rows[_asked_to_move(rows)]
    second = asked[np.isfinite(asked[:, 7]) & np.isfinite(asked[:, 8])]
    if len(second) < 10 or float(second[-1, 0] - second[0, 0]) < STILL_S:
        return []
    first_span, second_span = (float(np.ptp(second[:, columns], axis=0).max()) for columns in ([1, 2], [7, 8]))
    if second_span > MOVES and first_span < MOVES / 4:
        return [Finding("fault", "other_stick", message(LiveWarnings.other_stick))]
    if second_span > MOVES and first_span > MOVES:
        return [Finding("query", "both_sticks", message(LiveWarnings.both_sticks))]
    return []
