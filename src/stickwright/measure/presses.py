"""Presses of a switch: how many a second, how evenly, how long held, how far from a beat."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import LiveFigures, Reason
from stickwright.codes.message import message
from stickwright.measure.lines import Line
from stickwright.measure.steps import RECORDED_COLUMNS, Task, cue_code

__all__ = ["press_lines", "press_rate", "press_times"]

Array = NDArray[np.float64]
BOUNCE_S = 0.03
"""Two presses closer than this are one press of a bouncing switch. (Common practice.)"""

WANTED_SHARE = 0.10
TIME, CUE, CONFIRM = (RECORDED_COLUMNS.index(name) for name in ("time_s", "cue", "confirm"))


def press_times(times_s: ArrayLike, down: ArrayLike) -> tuple[Array, Array]:
    """When a switch went down, and for how long.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    down : array, shape (n,)
        Above 0.5 while it is pressed.

    Returns
    -------
    (array, array)
        Seconds of each press, and how long it was held (NaN for one not let go). What bounces within 0.03 s is one press.

    Examples
    --------
    >>> press_times([0.0, 0.1, 0.2, 0.3, 0.4], [0, 1, 1, 0, 0])[0].tolist()
    [0.1]
    """
    times, pressed = np.asarray(times_s, dtype=np.float64), np.asarray(down, dtype=np.float64) > 0.5
    edges = np.diff(pressed.astype(np.int8), prepend=np.int8(pressed[0]) if pressed.size else np.int8(0))
    downs, ups = times[edges == 1], times[edges == -1]
    held: list[float] = []
    starts: list[float] = []
    for start in downs.tolist():
        later = ups[ups > start]
        end = float(later[0]) if later.size else math.nan
        if starts and (start - starts[-1] < BOUNCE_S or start - (starts[-1] + held[-1]) < BOUNCE_S):
            held[-1] = end - starts[-1]
            continue
        starts.append(start)
        held.append(end - start)
    return np.array(starts), np.array(held)


def press_rate(presses_s: ArrayLike) -> Estimate:
    """Presses a second, from the times between them.

    Parameters
    ----------
    presses_s : array, shape (n,)
        Times of the presses of one round.

    Returns
    -------
    Estimate
        One over the mean time between presses; the interval from the t interval of that mean.

    Examples
    --------
    >>> press_rate([0.0, 0.5, 1.0, 1.4, 2.0]).value
    2.0
    """
    between = np.diff(np.asarray(presses_s, dtype=np.float64))
    return _rate_of(between)


def _rate_of(between: Array) -> Estimate:
    from scipy.special import stdtrit

    n = between.size
    if n == 0:
        return Estimate.missing(message(LiveFigures.reason, reason="one-press"))
    mean = float(between.mean())
    if n < 3:
        return Estimate.unbounded(1 / mean, message(LiveFigures.few_presses, presses=n + 1), n=n)
    half = float(stdtrit(n - 1, 0.975)) * float(between.std(ddof=1)) / math.sqrt(n)
    if half == 0:
        return Estimate.unbounded(1 / mean, message(LiveFigures.reason, reason="alike"), n=n)
    slowest = 1 / (mean + half)
    return Estimate(1 / mean, slowest, 1 / (mean - half) if half < mean else math.inf, n=n)


def _mean(values: Array, few: Reason) -> Estimate:
    from scipy.special import stdtrit

    known = values[np.isfinite(values)]
    n = known.size
    if n < 3:
        return Estimate.unbounded(float(known.mean()) if n else math.nan, message(LiveFigures.reason, reason=few), n=n)
    half = float(stdtrit(n - 1, 0.975)) * float(known.std(ddof=1)) / math.sqrt(n)
    return Estimate(float(known.mean()), float(known.mean()) - half, float(known.mean()) + half, n=n)


def press_lines(task: Task, rows: Array) -> tuple[Line, ...]:
    """Rate, evenness and release of free presses; distance from the beat.

    Parameters
    ----------
    task : Task
        That was run.
    rows : array, shape (n, 11)
        Columns `RECORDED_COLUMNS`.

    Notes
    -----
    A round is a stretch with 'press' asked; the beat's round is the one that is longer than the free ones, as it is in
    `tasks.press_task`. Distances from the beat are to the nearest beat, plus is late.
    """
    asked = rows[:, CUE] == cue_code("press")
    edges = np.flatnonzero(np.diff(np.concatenate([[False], asked, [False]]).astype(np.int8))).reshape(-1, 2)
    free = [step for step in task.steps if not math.isfinite(step.beat_s)]
    beats = [step for step in task.steps if math.isfinite(step.beat_s)]
    between: list[Array] = []
    held: list[Array] = []
    late: list[Array] = []
    for number, (a, b) in enumerate(edges.tolist()):
        presses, lengths = press_times(rows[a:b, TIME], rows[a:b, CONFIRM])
        held.append(lengths)
        if number < len(free) or not beats:
            between.append(np.diff(presses))
        else:
            beat_s = beats[0].beat_s
            into = presses - rows[a, TIME]
            late.append(into - beat_s * np.round(into / beat_s))
    every = np.concatenate(between) if between else np.empty(0)
    lengths = np.concatenate(held) if held else np.empty(0)
    if not every.size and not lengths.size:
        return ()
    rate = _rate_of(every)
    lines = [
        Line(
            message(LiveFigures.press_rate), rate, WANTED_SHARE * abs(rate.number), "presses", steps=(0,),
            unit="per-s", better="more", most=1,
        ),
        Line(message(LiveFigures.press_held), _mean(lengths, "few-released"), unit="s", better="less"),
    ]  # fmt: skip
    if late:
        behind = _mean(np.concatenate(late), "few-on-the-beat")
        lines.append(Line(message(LiveFigures.behind_beat), behind, unit="s"))
    return tuple(lines)
