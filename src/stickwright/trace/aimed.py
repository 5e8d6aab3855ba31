"""Aimed movements in a recording whose cue jumps from target to target.

The clock starts when the cue jumps. It stops at the selection when there is one (a button, an event); otherwise
where the player enters the target to stay, and the stay itself is not counted.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.aiming import Aiming, Without
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import PointingReport
from stickwright.trace.intervals import mean_count_estimate, median_estimate
from stickwright.trace.path import PathAccuracy, path_accuracy
from stickwright.trace.pointing import AimedMovements, along, error_rate, sequences, throughput_estimate
from stickwright.trace.stamps import GAP_S, checked_columns, checked_times

__all__ = ["pointing_report"]

SETTLED_S = 0.2
"""So long without leaving the target counts as having chosen it."""

LEAST_CUE_S = 0.3
"""A cue that never stays this long is followed, not aimed at."""

EARLIEST_S = 0.1
"""A press sooner after the jump belongs to the target before: nobody reacts so fast; common practice."""

SELECTED_SHARE = 0.5
"""From this share of targets with a press on, targets were chosen by pressing."""

COUNTS = ("target_reentries", "task_axis_crossings", "movement_direction_changes", "orthogonal_direction_changes")


class _Movement(NamedTuple):
    """From the jump of the cue to the end of the movement, as sample numbers; where it ended and how long it took."""

    first: int
    last: int
    selection: NDArray[np.float64]
    duration_s: float


def pointing_report(
    times_s: ArrayLike,
    xy: ArrayLike,
    cue_xy: ArrayLike,
    cue_width: float,
    *,
    selected: ArrayLike | None = None,
    hysteresis: float | None = None,
    rng: np.random.Generator | None = None,
) -> PointingReport:
    """Aimed movements in a recording whose cue jumps from target to target.

    A movement begins where the player is when the cue jumps. With selections it ends at the first press after that (from
    0.1 s on), and its selection is the place at that moment. Without, it ends when the player has stayed in the
    target for 0.2 s: its path and its time run from the jump to the entry into that stay, its selection is the mean
    place during those 0.2 s, and who never stays is taken at the last sample before the next jump, with all the time
    there was. The time to notice the jump is part of it. A selection outside the target is an error.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    xy : array, shape (n, 2)
        Where the player was; NaN where a cell was empty.
    cue_xy : array, shape (n, 2)
        Centre of the target asked for; NaN where nothing was asked.
    cue_width : float
        Diameter of the targets, in the unit of `xy`.
    selected : array of bool, shape (n,), or None
        Where a button was down or an event happened; used when at least half of the targets have a press.
    hysteresis : float or None
        For `path_accuracy`; None for one twentieth of the target's width.
    rng : numpy Generator or None
        For the interval of the throughput; None for a generator seeded with 0.

    Returns
    -------
    PointingReport
        Throughput and error rate as in `throughput_report`; of the path measures the counts are means over the
        movements, the lengths are medians, with the hysteresis named. `left_out` names the movement by its number and time.

    Raises
    ------
    BadInput
        Shapes that do not fit, a width of 0 or less, no cue, or a cue that moves all the time.

    Notes
    -----
    Source: [soukoreff-2004], [iso-9241-411], [mackenzie-2001]. The starts are where the player really was, so no serial
    term is added.

    Examples
    --------
    >>> import numpy as np
    >>> rng = np.random.default_rng(3)
    >>> t = np.arange(3000) / 100
    >>> cue = np.where(np.arange(3000) // 150 % 2 == 0, -0.5, 0.5)
    >>> place = np.convolve(cue, np.full(40, 1 / 40))[:3000] + np.repeat(rng.normal(0, 0.02, 20), 150)
    >>> report = pointing_report(t, np.column_stack([place, 0 * t]), np.column_stack([cue, 0 * t]), 0.2)
    >>> report.movements, report.error_rate.value, report.ended_by
    (19, 0.0, 'dwell')
    """
    times = checked_times(times_s)
    places = checked_columns("xy", xy, times.size)
    cues = checked_columns("cue_xy", cue_xy, times.size)
    if not (math.isfinite(cue_width) and cue_width > 0):
        raise BadInput(Problem("cue_width", str(cue_width), message(Signals.expected, what="width_above_0")))
    jitter = cue_width / 20 if hysteresis is None else hysteresis
    asked = list(_asked(times, cues))
    presses = _presses(times, asked, selected)
    found: list[_Movement] = []
    left_out: list[Text] = []
    for number, (a, b) in enumerate(asked, start=1):
        movement: _Movement | Without = "before-start"
        press = None if presses is None else presses[number - 1]
        if presses is not None and press is None:
            movement = "no-selection"
        elif a > 0:
            movement = _movement(times, places, cues[a], cue_width, (a, b), press)
        if isinstance(movement, str):
            left_out.append(message(Aiming.movement_out, number=number, at_s=float(times[a]), why=movement))
        else:
            found.append(movement)
    starts, targets, selections = (
        np.array(each).reshape(-1, 2)
        for each in ([places[m.first] for m in found], [cues[m.first] for m in found], [m.selection for m in found])
    )
    distance, error, missed = along(starts, targets, selections)
    group = sequences(distance, np.full(distance.size, cue_width))
    used = AimedMovements(distance, error, np.array([m.duration_s for m in found]), group)
    measures = [
        path_accuracy(places[m.first : m.last + 1], places[m.first], cues[m.first], cue_width, jitter) for m in found
    ]
    return PointingReport(
        len(found), throughput_estimate(used, rng), error_rate(missed <= cue_width / 2, ""), _path(measures, jitter),
        tuple(left_out), ended_by="dwell" if presses is None else "selection",
        movement_time_s=median_estimate([m.duration_s for m in found]),
    )  # fmt: skip


def _path(measures: list[PathAccuracy], jitter: float) -> tuple[tuple[str, Estimate], ...]:
    """Each path measure by name: counts as means, lengths as medians."""
    assumed = message(Aiming.jitter, jitter_factor=jitter) if jitter > 0 else None
    return tuple(
        (
            name,
            (mean_count_estimate if name in COUNTS else median_estimate)(
                [getattr(each, name) for each in measures], assumed=assumed
            ),
        )
        for name in PathAccuracy._fields
    )


def _presses(
    times_s: NDArray[np.float64], asked: list[tuple[int, int]], selected: ArrayLike | None
) -> list[int | None] | None:  # fmt: skip
    """The sample of the first press for each target, None where there was none; None when targets were not pressed."""
    if selected is None:
        return None
    down = np.asarray(selected, dtype=np.bool_)
    if down.shape != times_s.shape:
        raise BadInput(
            Problem(
                "selected",
                message(Signals.shape, shape=down.shape),
                message(Signals.shape_for_times, shape=times_s.shape, or_more=False),
            )
        )
    edges = np.flatnonzero(down & ~np.concatenate([[False], down[:-1]]))
    presses: list[int | None] = []
    for a, b in asked:
        # The press and the jump that it brings may share a sample; a press just after the jump is the one before.
        own = edges[(edges <= min(b, times_s.size - 1)) & (times_s[edges] >= times_s[a] + EARLIEST_S)]
        presses.append(int(own[0]) if own.size else None)
    pressed = sum(press is not None for press in presses)
    return presses if pressed >= SELECTED_SHARE * len(asked) else None


def _asked(times_s: NDArray[np.float64], cues: NDArray[np.float64]) -> Iterator[tuple[int, int]]:
    """First sample and end of each stretch with one target."""
    known: NDArray[np.bool_] = np.asarray(np.isfinite(cues).all(axis=1))
    if not known.any():
        raise BadInput(
            Problem(
                "cue_xy",
                message(Signals.found, what="no_target"),
                message(Signals.expected, what="place_asked"),
                message(Signals.remedy, what="guided_task"),
            )
        )
    moved = np.ones(times_s.size, dtype=np.bool_)
    moved[1:] = (known[1:] != known[:-1]) | (known[1:] & (cues[1:] != cues[:-1]).any(axis=1))
    starts = np.flatnonzero(moved)
    ends = np.append(starts[1:], times_s.size)
    asked = known[starts]
    stay_s = times_s[np.minimum(ends, times_s.size - 1)] - times_s[starts]
    if float(np.median(stay_s[asked])) < LEAST_CUE_S:
        raise BadInput(
            Problem(
                "cue_xy", message(Signals.target_stays, time_s=float(np.median(stay_s[asked]))),
                message(Signals.targets_stay, least_s=LEAST_CUE_S),
                message(Signals.remedy, what="tracking"),
            )
        )  # fmt: skip
    yield from zip(starts[asked].tolist(), ends[asked].tolist(), strict=True)


def _movement(
    times_s: NDArray[np.float64],
    places: NDArray[np.float64],
    target: NDArray[np.float64],
    width: float,
    span: tuple[int, int],
    press: int | None,
) -> _Movement | Without:
    """One movement; or why it is left out."""
    a, b = span
    stop = b if press is None else press + 1
    here, way = times_s[a:stop], places[a:stop]
    if here.size < 3:
        return "too-few-samples"
    if not np.isfinite(way).all() or float(np.diff(here).max()) > GAP_S:
        return "break"
    distance = np.hypot(*(target - way[0]))
    if distance <= width / 2:
        return "began-inside"
    inside: NDArray[np.bool_] = np.asarray(np.hypot(*(way - target).T) <= width / 2)
    if press is None:
        last, selection, duration_s = _selection(here, way, inside)
    else:
        last, selection, duration_s = here.size - 1, way[-1], float(here[-1] - here[0])
    if float(np.hypot(*(way - way[0]).T).max()) < min(width / 2, distance / 10):
        return "no-movement"
    if np.hypot(*(selection - target)) > np.hypot(*(selection - way[0])):
        return "nearer-start"
    return _Movement(a, a + last, selection, duration_s)


def _selection(
    times_s: NDArray[np.float64], places: NDArray[np.float64], inside: NDArray[np.bool_]
) -> tuple[int, NDArray[np.float64], float]:
    edges = np.flatnonzero(np.diff(np.concatenate([[False], inside, [False]]).astype(np.int8)))
    for entry, out in edges.reshape(-1, 2):
        stay = int(np.searchsorted(times_s, times_s[entry] + SETTLED_S - 1e-9))
        if stay < out:
            return int(entry), places[entry : stay + 1].mean(axis=0), float(times_s[entry] - times_s[0])
    return times_s.size - 1, places[-1], float(times_s[-1] - times_s[0])
