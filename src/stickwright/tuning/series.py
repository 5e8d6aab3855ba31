"""What every filter asks of a series: samples in rows, time that does not run backwards, an even grid where needed."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.trace.stamps import Stretch, even, mean_rate_hz, on_grid, stretches

__all__ = ["checked_positive", "checked_series", "even_grid"]

Array = NDArray[np.float64]
_PIECE = 1 << 14


def checked_series(xy: ArrayLike, times_s: ArrayLike) -> tuple[Array, Array]:
    """Samples and time stamps as contiguous arrays; refuses what no filter can take.

    Parameters
    ----------
    xy : array, shape (n, 2)
    times_s : array, shape (n,)
        Seconds, not running backwards.
    """
    values = np.ascontiguousarray(xy, dtype=np.float64)
    times = np.ascontiguousarray(times_s, dtype=np.float64)
    problems = []
    if values.ndim != 2 or values.shape[1] != 2:
        problems.append(
            Problem(
                message(Signals.step, what="samples"),
                message(Signals.shape, shape=values.shape),
                message(Signals.expected, what="xy_rows"),
            )
        )
    if times.ndim != 1 or len(times) != len(values):
        problems.append(
            Problem(
                message(Signals.step, what="stamps"), f"{times.size}", message(Signals.one_each, samples=len(values))
            )
        )
    elif len(times) and not (_forwards(times) and math.isfinite(times[0]) and math.isfinite(times[-1])):
        problems.append(_clock_problem(times))
    if problems:
        raise BadInput(problems)
    return values, times


def _forwards(times: Array) -> bool:
    """Whether no time is before the one before it; an empty one is neither before nor after, and fails."""
    # In pieces that stay in the processor's cache: for long streams this costs a fifth of one comparison over all.
    before, after = times[:-1], times[1:]
    pieces = range(0, len(before), _PIECE)
    return all(bool((after[first : first + _PIECE] >= before[first : first + _PIECE]).all()) for first in pieces)


def _clock_problem(times: Array) -> Problem:
    if not np.isfinite(times).all():
        return Problem(
            message(Signals.step, what="stamps"),
            message(Signals.found, what="empty_or_infinite"),
            message(Signals.expected, what="seconds_each"),
        )
    first = int(np.argmax(np.diff(times) < 0.0)) + 2
    return Problem(
        (message(Signals.step, what="stamps"), message(Signals.sample, number=first)),
        message(Signals.backwards, now_s=float(times[first - 1]), before_s=float(times[first - 2])),
        message(Signals.expected, what="time_onwards"),
        message(Signals.remedy, what="split_recording"),
    )


def checked_positive(**named: float) -> None:
    """Refuses numbers that are not above 0, all at once.

    Parameters
    ----------
    **named : float
        Each under the name that the refusal gives it.
    """
    problems = [
        Problem(name, f"{value:g}", message(Signals.expected, what="above_0"))
        for name, value in named.items()
        if not (math.isfinite(value) and value > 0.0)
    ]
    if problems:
        raise BadInput(problems)


def even_grid(values: Array, times: Array) -> tuple[Array, Array, float]:
    """Samples on an even grid at the mean rate, gaps and empty cells bridged by straight lines or the last sample.

    Parameters
    ----------
    values : array, shape (n, k)
    times : array, shape (n,)
        Seconds, not running backwards; rounding is taken out where they fit an even grid within it.

    Returns
    -------
    array, shape (m, k)
        Samples, band-limited between the stamps as `stickwright.trace.stamps.even` has them.
    array, shape (m,)
        Their times, seconds.
    float
        Samples a second: those inside the stretches without a gap over the time that these take.
    """
    grid_times = on_grid(times)
    parts = stretches(grid_times, np.zeros((len(times), 1)))
    if not parts:
        raise BadInput(
            Problem(
                message(Signals.step, what="stamps"),
                message(Signals.found, what="no_time_between"),
                message(Signals.expected, what="moving_stamps"),
                message(Signals.remedy, what="time_in_seconds"),
            )
        )
    rate_hz = mean_rate_hz(parts)
    if (grid_times[-1] - grid_times[0]) * rate_hz > 100 * len(times):
        raise BadInput(
            Problem(
                message(Signals.step, what="stamps"),
                message(Signals.apart, samples=len(times), span_s=float(times[-1] - times[0]), interval_s=1 / rate_hz),
                message(Signals.expected, what="one_stretch"),
                message(Signals.remedy, what="split_at_gap"),
            )
        )
    whole = np.isfinite(values).all(axis=1)
    if not whole.all():
        held = np.maximum.accumulate(np.where(whole, np.arange(len(values)), -1))
        values = values[np.where(held >= 0, held, int(np.argmax(whole)))]
    moves_on = np.diff(grid_times, prepend=-np.inf) > 0
    on_even = even(Stretch(grid_times[moves_on], values[moves_on]), rate_hz)
    return on_even, grid_times[0] + np.arange(len(on_even)) / rate_hz, rate_hz
