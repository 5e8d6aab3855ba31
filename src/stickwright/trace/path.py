"""The seven measures of the path of an aimed movement."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem

__all__ = ["PathAccuracy", "path_accuracy"]


class PathAccuracy(NamedTuple):
    """The seven measures of one path.

    Parameters
    ----------
    target_reentries : int
        Entries into the target after the first.
    task_axis_crossings : int
        Times the path crosses the straight line from start to target.
    movement_direction_changes : int
        Reversals across that line.
    orthogonal_direction_changes : int
        Reversals along it: backing up.
    movement_variability : float
        Standard deviation of the distance from the line.
    movement_error : float
        Mean distance from the line.
    movement_offset : float
        Mean signed distance; plus is left of travel.
    """

    target_reentries: int
    task_axis_crossings: int
    movement_direction_changes: int
    orthogonal_direction_changes: int
    movement_variability: float
    movement_error: float
    movement_offset: float


def path_accuracy(
    path: ArrayLike, start: ArrayLike, target: ArrayLike, target_width: float, hysteresis: float = 0.0
) -> PathAccuracy:
    """The seven measures of one path, on axes along and across the way from start to target.

    Parameters
    ----------
    path : array, shape (n, 2)
        All samples, the first included; x right, y forward.
    start : array, shape (2,)
        Where the straight way begins.
    target : array, shape (2,)
        Centre of the target, a circle.
    target_width : float
        Its diameter.
    hysteresis : float, default 0.0
        Jitter that does not count, in the unit of the path: a crossing counts once the path is this far on the
        other side, a reversal once it has gone back twice this. 0 counts every one.

    Returns
    -------
    PathAccuracy
        Counts, and lengths in the unit of the path.

    Raises
    ------
    BadInput
        Fewer than two samples, empty cells, start on the target, a width of 0 or less, a negative hysteresis.

    Notes
    -----
    Source: [mackenzie-2001]; the thresholds follow the authors' published code (5 px to each side for crossings,
    10 px for reversals). A sample exactly on the line is on neither side.

    Examples
    --------
    >>> told = path_accuracy([[0, 0], [40, 5], [80, -3], [112, 1], [99, 0]], [0, 0], [100, 0], 20.0)
    >>> told.task_axis_crossings, told.orthogonal_direction_changes, told.movement_error
    (2, 1, 1.8)
    """
    samples = np.asarray(path, dtype=np.float64)
    begin, centre = np.asarray(start, dtype=np.float64), np.asarray(target, dtype=np.float64)
    problems = []
    if samples.ndim != 2 or samples.shape[0] < 2 or samples.shape[1] != 2:
        problems.append(
            Problem("path", message(Signals.shape, shape=samples.shape), message(Signals.expected, what="path_shape"))
        )
    elif not np.isfinite(samples).all():
        problems.append(
            Problem("path", message(Signals.found, what="empty_cell"), message(Signals.expected, what="numbers"))
        )
    if begin.shape != (2,) or centre.shape != (2,) or not np.hypot(*(centre - begin)) > 0:
        problems.append(
            Problem(
                message(Signals.step, what="start_target"),
                f"{begin.tolist()}, {centre.tolist()}",
                message(Signals.expected, what="two_places"),
            )
        )
    if not target_width > 0:
        problems.append(Problem("target_width", str(target_width), message(Signals.expected, what="width_above_0")))
    if not hysteresis >= 0:
        problems.append(Problem("hysteresis", str(hysteresis), message(Signals.expected, what="zero_or_more")))
    if problems:
        raise BadInput(problems)
    forward = (centre - begin) / np.hypot(*(centre - begin))
    along = (samples - begin) @ forward
    across = (samples - begin) @ np.array([-forward[1], forward[0]])
    inside = np.hypot(*(samples - centre).T) <= target_width / 2
    entries = int(inside[0]) + int((inside[1:] & ~inside[:-1]).sum())
    return PathAccuracy(
        target_reentries=max(0, entries - 1),
        task_axis_crossings=_changes_of_side(across, hysteresis),
        movement_direction_changes=_reversals(across, 2 * hysteresis),
        orthogonal_direction_changes=_reversals(along, 2 * hysteresis),
        movement_variability=float(across.std(ddof=1)),
        movement_error=float(np.abs(across).mean()),
        movement_offset=float(across.mean()),
    )


def _changes_of_side(values: NDArray[np.float64], least: float) -> int:
    """Sign changes between samples that are more than `least` from 0."""
    sides = np.sign(values[np.abs(values) > least])
    return int((sides[1:] != sides[:-1]).sum())


def _reversals(values: NDArray[np.float64], least: float) -> int:
    """Turning points after which the values go back by more than `least`."""
    steps = np.diff(values)
    going = np.sign(steps[steps != 0])
    turns = int((going[1:] != going[:-1]).sum())
    if least == 0 or turns == 0:
        return turns
    moved = np.concatenate([[True], steps != 0])
    kept = values[moved]
    corners = np.concatenate([[0], np.flatnonzero(going[1:] != going[:-1]) + 1, [kept.size - 1]])
    count, direction = 0, 0
    low = high = float(kept[0])
    for value in kept[corners].tolist():
        low, high = min(low, value), max(high, value)
        if direction >= 0 and value < high - least:
            count, direction, low, high = count + (direction > 0), -1, value, value
        elif direction <= 0 and value > low + least:
            count, direction, low, high = count + (direction < 0), 1, value, value
        elif direction > 0:
            low = high
        elif direction < 0:
            high = low
    return count
