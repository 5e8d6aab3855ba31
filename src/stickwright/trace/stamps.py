"""Time stamps as they arrive: rounded, uneven, with gaps, with empty cells.

Nothing is interpolated across a gap: a recording is cut into stretches without one, and each
stretch is worked on alone. Stamps that fit an even grid within their own rounding stand for that
grid: the rounding of a clock is no movement of the sampling.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem

__all__ = [
    "GAP_S", "Stretch", "checked_columns", "checked_times", "even", "mean_rate_hz", "on_grid", "rounding_s",
    "stretches", "thinned",
]  # fmt: skip

GAP_S = 0.25
"""A step longer than this is a gap: a stick that sends nothing for so long may have been unplugged."""

_FINEST_S = 1e-9  # finer rounding than this is floating-point noise
_WITHIN = 0.55  # of the rounding to either side; half of it, and a little for the error of the line through the stamps
_LEAST_ON_GRID = 8  # fewer stamps fit any grid
_NOTHING = 1e-3  # of a step: so little off an even grid changes no figure
_COARSE = 0.8  # of a step; stamps that count nearly whole steps are not rounded by that alone
_OFTEN = 0.05  # a clock that is too coarse leaves out or repeats more steps than this
_MOST_PARTS = 10  # in few stamps the two nearest steps may be some roundings apart
_PASSES = 3  # of correcting a spline by what it misses at the samples
_HOLE = 3.0  # steps; a longer hole is crossed by a straight line, a curve would swing out


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
        raise BadInput(
            Problem("times_s", message(Signals.shape, shape=times.shape), message(Signals.expected, what="one_stamp"))
        )
    if not np.isfinite(times).all():
        row = int(np.flatnonzero(~np.isfinite(times))[0])
        raise BadInput(
            Problem(
                ("times_s", message(FilePlaces.row, number=row + 1)),
                str(times[row]),
                message(Signals.expected, what="number_of_seconds"),
            )
        )
    back = np.flatnonzero(np.diff(times) < 0)
    if back.size:
        row = int(back[0]) + 1
        raise BadInput(
            Problem(
                ("times_s", message(FilePlaces.row, number=row + 1)),
                message(Signals.backwards, now_s=float(times[row]), before_s=float(times[row - 1])),
                message(Signals.expected, what="rising_stamps"),
                message(Signals.remedy, what="recording_time"),
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
        wanted = message(Signals.shape_for_times, shape=(rows, columns or 1), or_more=columns is None)
        raise BadInput(Problem(name, message(Signals.shape, shape=array.shape), wanted))
    return array


def rounding_s(times_s: NDArray[np.float64]) -> float:
    """To how much the stamps are rounded, told from the stamps themselves.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, never falling, in whatever unit they were written.

    Returns
    -------
    float
        The largest time of which every step is a whole multiple; 0 when none shows, or all steps are alike.

    Examples
    --------
    >>> import numpy as np
    >>> round(rounding_s(np.round(np.arange(100) / 60, 3)), 9), rounding_s(np.arange(100) * 0.125)
    (0.001, 0.0)
    """
    if times_s.size < 3:
        return 0.0
    finest_s = max(_FINEST_S, 8 * float(np.spacing(np.abs(times_s).max())))
    ordered = np.sort(np.diff(times_s))
    apart = np.diff(ordered)
    apart = apart[apart > 2 * finest_s]
    if not apart.size:
        return 0.0
    smallest_s = float(apart.min())
    # The mean of all that are about as far apart as the two nearest: floating point blurs a single difference.
    nearest_s = float(apart[apart < 1.5 * smallest_s].mean())
    for parts in range(1, _MOST_PARTS + 1):
        unit_s = nearest_s / parts
        whole = np.round(ordered / unit_s)
        if bool((np.abs(ordered - whole * unit_s) <= 0.02 * unit_s + whole * finest_s).all()):
            return unit_s
    return 0.0


def on_grid(times_s: NDArray[np.float64]) -> NDArray[np.float64]:
    """The stamps of an even grid, where the stamps given fit one within their rounding; otherwise the same stamps.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, never falling. A step longer than `GAP_S` (and three usual ones) is a gap; the parts between
        gaps are each fitted alone.

    Returns
    -------
    array, shape (n,)
        Seconds, never falling. A clock so coarse that stamps repeat is put right too.

    Notes
    -----
    Line of least squares through stamp against number, or the line whose farthest stamp is nearest; it is the grid when no
    stamp lies more than half its rounding from it. Where samples are missing, the number of each is told from its step; a
    rounding of more than two fifths of a step leaves that open, and then only stamps without a missing sample are put right.

    Examples
    --------
    >>> import numpy as np
    >>> true_s = np.arange(600) / 60
    >>> bool(np.abs(on_grid(np.round(true_s, 3)) - true_s).max() < 1e-5)
    True
    """
    if times_s.size < _LEAST_ON_GRID:
        return times_s
    parts = [times_s[a:b] for a, b in _between_gaps(times_s)]
    return np.concatenate([_on_one_grid(part) for part in parts])


def _between_gaps(times_s: NDArray[np.float64], gap_s: float = GAP_S) -> list[tuple[int, int]]:
    steps = np.diff(times_s)
    forwards = steps[steps > 0]
    usual = float(np.median(forwards)) if forwards.size else 0.0
    cuts = np.flatnonzero(steps > max(gap_s, 3 * usual)) + 1
    return list(pairwise([0, *cuts.tolist(), times_s.size]))


def _on_one_grid(times_s: NDArray[np.float64]) -> NDArray[np.float64]:
    n = times_s.size
    steps = np.diff(times_s)
    again = int(np.count_nonzero(steps == 0))
    if n - again < _LEAST_ON_GRID:
        return times_s
    rounding = rounding_s(times_s)
    usual = float(np.median(steps))
    whole_steps = rounding > _COARSE * float(steps.mean())
    if whole_steps and float(np.mean(np.abs(steps - rounding) > 0.5 * rounding)) < _OFTEN:
        return times_s  # the sampling's own step, now and then missing or twice, rather than a coarse clock
    numbers = [np.arange(n, dtype=np.float64)]
    if 0 < rounding < 0.4 * usual:
        numbers.append(np.concatenate(([0.0], np.cumsum(np.maximum(np.round(steps / usual), 1.0)))))
    for number in numbers:
        centred = number - number.mean()
        step = float(centred @ (times_s - times_s.mean())) / float(centred @ centred)
        grid = times_s.mean() + step * centred
        # Cut off instead of rounded, all stamps lie to one side; only their spread about the line tells.
        off = float(np.ptp(times_s - grid))
        if off <= _NOTHING * step:
            return times_s
        if off <= 2 * _WITHIN * rounding:
            return np.asarray(grid)
        slim = _slimmest(centred, times_s, step, rounding)
        if float(np.ptp(times_s - slim)) <= 2 * _WITHIN * rounding:
            return slim
    return times_s


def _slimmest(
    centred: NDArray[np.float64], times_s: NDArray[np.float64], step: float, rounding: float
) -> NDArray[np.float64]:
    """The line with the least farthest stamp: least squares leans where a slow drift against the rounding makes one late step.

    The width of the strip that holds all stamps is convex in its slope.
    """
    from scipy.optimize import minimize_scalar  # only here: the app comes up without it

    reach = 2 * rounding / float(np.ptp(centred))
    found = minimize_scalar(
        lambda slope: float(np.ptp(times_s - slope * centred)),
        bounds=(step - reach, step + reach),
        method="bounded",
        options={"xatol": 1e-6 * reach},
    )
    rest = times_s - found.x * centred
    return np.asarray(found.x * centred + (float(rest.max()) + float(rest.min())) / 2)


def mean_rate_hz(parts: list[Stretch]) -> float:
    """Samples a second inside the stretches: steps over the time that they take.

    Parameters
    ----------
    parts : list of Stretch
        At least one.

    Returns
    -------
    float
        The mean rate; a median step would miss it by its rounding.

    Examples
    --------
    >>> import numpy as np
    >>> round(mean_rate_hz(stretches(np.round(np.arange(600) / 60, 3), np.zeros((600, 1)))), 3)
    60.0
    """
    steps = sum(part.times_s.size - 1 for part in parts)
    return steps / sum(float(part.times_s[-1] - part.times_s[0]) for part in parts)


def stretches(times_s: NDArray[np.float64], values: NDArray[np.float64], gap_s: float = GAP_S) -> list[Stretch]:
    """The parts of a recording between gaps, rows with an empty cell left out.

    Stamps that fit an even grid within their rounding are put on it; a stamp that still repeats the one before it is
    left out: nothing can be learned from no time.

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
    times = on_grid(times_s)
    kept = np.asarray(np.isfinite(values).all(axis=1))
    kept[1:] &= np.diff(times) > 0
    times, rows = times[kept], values[kept]
    if times.size < 2:
        return []
    return [Stretch(times[a:b], rows[a:b]) for a, b in _between_gaps(times, gap_s) if b - a >= 2]


def even(stretch: Stretch, rate_hz: float) -> NDArray[np.float64]:
    """A stretch at an even rate: its own samples where they are even, otherwise band-limited between them.

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

    Notes
    -----
    A cubic spline through the samples, read at the even rate, then corrected three times by what the even samples
    miss at the stamps: the iteration for band-limited signals from uneven samples [marvasti-2001]. Up to a quarter of
    the rate it keeps the size to 2 %; straight lines lose a tenth to a fifth there. Samples closer than a quarter of the usual
    step are averaged first, and across more than three steps without a sample goes a straight line: a curve
    would swing out there.

    Examples
    --------
    >>> import numpy as np
    >>> even(Stretch(np.array([0.0, 0.1, 0.21, 0.3, 0.4]), np.array([[0.0], [1.0], [2.1], [3.0], [4.0]])), 10).round(6).T
    array([[0., 1., 2., 3., 4.]])
    """
    first, last = stretch.times_s[0], stretch.times_s[-1]
    grid = first + np.arange(int((last - first) * rate_hz + 1e-6) + 1) / rate_hz
    if grid.size == stretch.times_s.size and np.abs(grid - stretch.times_s).max() < _NOTHING / rate_hz:
        return stretch.values
    usual = float(last - first) / (stretch.times_s.size - 1)
    if float(np.diff(stretch.times_s).min()) < 0.25 * usual:
        stretch = thinned(stretch, 1 / usual)
    if stretch.times_s.size < 4 or grid.size < 4:
        return _straight(grid, stretch.times_s, stretch.values)
    found = _curved(grid, stretch.times_s, stretch.values)
    if rate_hz >= 0.9 / usual:  # on a coarser grid what is missed is what the grid cannot hold
        for _ in range(_PASSES):
            missed = stretch.values - _curved(stretch.times_s, grid, found)
            found += _curved(grid, stretch.times_s, missed)
    place = np.clip(np.searchsorted(stretch.times_s, grid) - 1, 0, stretch.times_s.size - 2)
    hole = np.diff(stretch.times_s)[place] > _HOLE * usual
    return np.where(hole[:, None], _straight(grid, stretch.times_s, stretch.values), found)


def _straight(
    at: NDArray[np.float64], times_s: NDArray[np.float64], values: NDArray[np.float64]
) -> NDArray[np.float64]:  # fmt: skip
    return np.column_stack([np.interp(at, times_s, column) for column in values.T])


def _curved(
    at: NDArray[np.float64], times_s: NDArray[np.float64], values: NDArray[np.float64]
) -> NDArray[np.float64]:  # fmt: skip
    """Cubic spline, kept at the first and the last sample beyond them."""
    from scipy.interpolate import CubicSpline

    return np.asarray(CubicSpline(times_s, values)(np.clip(at, times_s[0], times_s[-1])))


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
