"""Time stamps as they arrive: uneven, with gaps, with empty cells.

Nothing is interpolated across a gap: a recording is cut into stretches without one, and each
stretch is worked on alone.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.errors import BadInput, Problem

__all__ = ["GAP_S", "Stretch", "checked_columns", "checked_times", "even", "stretches", "thinned"]

GAP_S = 0.25
"""A step longer than this is a gap: a stick that sends nothing for so long may have been unplugged."""


@dataclass(frozen=True, eq=False)
class Stretch:
    """A part of a recording without a gap or an empty cell.

    Parameters
    ----------
    times_s : array, shape (n,)
        Stamps, rising.
    values : array, shape (n, c)
        The columns at those stamps.
    """

    times_s: NDArray[np.float64]
    values: NDArray[np.float64]


def checked_times(times_s: ArrayLike) -> NDArray[np.float64]:
    """Stamps as an array that never runs backwards.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.

    Returns
    -------
    array, shape (n,)
        The same, float64.

    Raises
    ------
    BadInput
        Empty, not one column, a stamp that is not a number, or a clock that runs backwards.
    """
    times = np.asarray(times_s, dtype=np.float64)
    if times.ndim != 1 or times.size == 0:
        raise BadInput(Problem("times_s", f"shape {times.shape}", "one column of at least one time stamp"))
    if not np.isfinite(times).all():
        row = int(np.flatnonzero(~np.isfinite(times))[0])
        raise BadInput(Problem(f"times_s, row {row + 1}", str(times[row]), "a number of seconds"))
    back = np.flatnonzero(np.diff(times) < 0)
    if back.size:
        row = int(back[0]) + 1
        raise BadInput(
            Problem(
                f"times_s, row {row + 1}",
                f"{times[row]:.6g} s after {times[row - 1]:.6g} s",
                "time stamps that rise",
                "Use the time within the recording, not the clock of the day.",
            )
        )
    return times


def checked_columns(name: str, values: ArrayLike, rows: int, columns: int | None = 2) -> NDArray[np.float64]:
    """Columns that belong to the stamps, as an array.

    Parameters
    ----------
    name : str
        What they are called, for the sentence.
    values : array, shape (rows, columns)
        Numbers; NaN where a cell was empty.
    rows : int
        How many stamps there are.
    columns : int or None, default 2
        How many columns are needed; None for any number from one.

    Returns
    -------
    array, shape (rows, columns)
        The same, float64.

    Raises
    ------
    BadInput
        Another shape.
    """
    array = np.asarray(values, dtype=np.float64)
    if array.ndim == 1 and columns is None:
        array = array[:, None]
    fits = array.ndim == 2 and array.shape[0] == rows and array.shape[1] >= 1
    if not fits or (columns is not None and array.shape[1] != columns):
        wanted = f"({rows}, {columns})" if columns is not None else f"({rows}, 1 or more)"
        raise BadInput(Problem(name, f"shape {array.shape}", f"shape {wanted}, one row for each time stamp"))
    return array


def stretches(times_s: NDArray[np.float64], values: NDArray[np.float64], gap_s: float = GAP_S) -> list[Stretch]:
    """The parts of a recording between gaps and empty cells.

    A stamp that repeats the one before it is left out: nothing can be learned from no time.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, never falling.
    values : array, shape (n, c)
        Columns; a row with NaN is empty.
    gap_s : float, default 0.25
        A step longer than this (and longer than three usual steps) is a gap.

    Returns
    -------
    list of Stretch
        In order, each of at least two samples.

    Examples
    --------
    >>> import numpy as np
    >>> times = np.array([0.0, 0.01, 0.02, 1.0, 1.01])
    >>> [part.times_s.size for part in stretches(times, np.zeros((5, 2)))]
    [3, 2]
    """
    kept = np.asarray(np.isfinite(values).all(axis=1))
    kept[1:] &= np.diff(times_s) > 0
    times, rows = times_s[kept], values[kept]
    if times.size < 2:
        return []
    steps = np.diff(times)
    cuts = np.flatnonzero(steps > max(gap_s, 3 * float(np.median(steps)))) + 1
    edges = [0, *cuts.tolist(), times.size]
    return [Stretch(times[a:b], rows[a:b]) for a, b in pairwise(edges) if b - a >= 2]


def even(stretch: Stretch, rate_hz: float) -> NDArray[np.float64]:
    """A stretch at an even rate, by straight lines between its samples.

    Parameters
    ----------
    stretch : Stretch
        A part without a gap.
    rate_hz : float
        Samples a second wanted.

    Returns
    -------
    array, shape (m, c)
        The columns at ``times_s[0] + k / rate_hz``.
    """
    first, last = stretch.times_s[0], stretch.times_s[-1]
    grid = first + np.arange(int((last - first) * rate_hz + 1e-6) + 1) / rate_hz
    if grid.size == stretch.times_s.size and np.abs(grid - stretch.times_s).max() < 1e-3 / rate_hz:
        return stretch.values
    columns = [np.interp(grid, stretch.times_s, column) for column in stretch.values.T]
    return np.column_stack(columns)


def thinned(stretch: Stretch, rate_hz: float) -> Stretch:
    """A stretch with the samples of each interval averaged, stamps too.

    Parameters
    ----------
    stretch : Stretch
        A part without a gap.
    rate_hz : float
        Intervals a second.

    Returns
    -------
    Stretch
        One sample for each interval that held any.

    Examples
    --------
    >>> import numpy as np
    >>> times = np.array([0.0, 0.002, 0.004, 0.012, 0.014])
    >>> thinned(Stretch(times, times[:, None]), 100.0).times_s.round(4).tolist()
    [0.002, 0.013]
    """
    bins = ((stretch.times_s - stretch.times_s[0]) * rate_hz).astype(np.intp)
    starts = np.flatnonzero(np.diff(bins, prepend=-1))
    counts = np.diff(np.append(starts, bins.size))
    return Stretch(
        np.add.reduceat(stretch.times_s, starts) / counts,
        np.add.reduceat(stretch.values, starts, axis=0) / counts[:, None],
    )
