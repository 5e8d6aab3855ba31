"""How smooth the movements are: spectral arc length and log dimensionless jerk."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.aiming import Aiming
from stickwright.codes.estimate import Estimate
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import Message, message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import SmoothnessReport
from stickwright.trace.intervals import median_estimate
from stickwright.trace.stamps import Stretch, checked_columns, checked_times, even, mean_rate_hz, stretches

__all__ = ["log_dimensionless_jerk", "smoothness_report", "spectral_arc_length"]

PAD_LEVEL = 4
ONSET_SHARE = 0.1  # of the recording's peak speed: below it nothing counts as movement
PEAK_QUANTILE = 0.995  # of speed: one jerk does not set the scale for all
EDGE_SHARE = 0.01  # of the movement's own peak: its ends; most of the jerk of a smooth movement lies there
EDGE_S = 1.0  # no further than this beyond the onset
LEAST_S, MOST_S = 0.1, 10.0
LEAST_SAMPLES = 8
LEAST_RATE_HZ = 20.0  # below it a movement of half a second has too few samples for its jerk; common practice
MOVING_SHARE = 0.9  # who moves for more of the time hardly stops: drawing, following, or noise alone
LOW_PASS_HZ = 20.0  # twice the highest frequency that the spectral arc length looks at


def spectral_arc_length(speed: ArrayLike, rate_hz: float, cutoff_hz: float = 10.0, threshold: float = 0.05) -> float:
    """Spectral arc length of one movement: 0 or less, nearer 0 is smoother.

    Length of the curve of the speed's normalised magnitude spectrum, from 0 to the last frequency at which
    it reaches `threshold`, at most `cutoff_hz`.

    Parameters
    ----------
    speed : array, shape (n,)
        Speed of one movement, 0 or more, any unit, even samples, from standstill to standstill.
    rate_hz : float
        Samples a second.
    cutoff_hz : float, default 10.0
        Highest frequency looked at.
    threshold : float, default 0.05
        Share of the largest magnitude, 0 to 1.

    Returns
    -------
    float
        Dimensionless, 0 or less.

    Raises
    ------
    BadInput
        Fewer than three samples, a value that is not a number, or no movement.

    Notes
    -----
    Source: [balasubramanian-2015], with the cut-off of the authors' published code; the paper's text is often quoted
    with 20 Hz. The value of a smooth movement is the same for both, that of a tremulous one is not.

    Examples
    --------
    >>> import numpy as np
    >>> t = np.arange(-1, 1, 0.01)
    >>> round(spectral_arc_length(np.exp(-5 * t**2), 100.0), 5)
    -1.41403
    """
    values = _checked_speed(speed, rate_hz)
    if not 0 < cutoff_hz < math.inf or not 0 <= threshold < 1:
        found = f"cutoff_hz {cutoff_hz}, threshold {threshold}"
        raise BadInput(Problem("spectral_arc_length", found, message(Signals.expected, what="cutoff_and_threshold")))
    padded = int(2 ** (math.ceil(math.log2(values.size)) + PAD_LEVEL))
    magnitude = np.abs(np.fft.rfft(values, padded))
    magnitude /= magnitude.max()
    frequency_hz = np.arange(magnitude.size) * rate_hz / padded
    magnitude = magnitude[frequency_hz <= cutoff_hz]
    above = np.flatnonzero(magnitude >= threshold)
    kept = magnitude[above[0] : above[-1] + 1]
    if kept.size < 2:
        return 0.0
    return -float(np.sqrt((1 / (kept.size - 1)) ** 2 + np.diff(kept) ** 2).sum())


def log_dimensionless_jerk(speed: ArrayLike, rate_hz: float) -> float:
    """Log dimensionless jerk of one movement: nearer 0 is smoother.

    -ln(T^3/v^2 times the integral of the squared second derivative of the speed), v the peak speed and T the
    duration, in the authors' discrete form (T = n / rate, second differences): for a minimum-jerk movement
    it comes to -5.30 at 100 Hz and to -5.32 only as the rate grows.

    Parameters
    ----------
    speed : array, shape (n,)
        Speed of one movement, 0 or more, any unit, even samples, from standstill to standstill.
    rate_hz : float
        Samples a second.

    Returns
    -------
    float
        Dimensionless.

    Raises
    ------
    BadInput
        Fewer than three samples, a value that is not a number, no movement, or a speed that never changes its slope.

    Notes
    -----
    Source: [balasubramanian-2015]. Another measure divides by the amplitude [hogan-2009]: do not compare.

    Examples
    --------
    >>> import numpy as np
    >>> t = np.arange(-1, 1, 0.01)
    >>> round(log_dimensionless_jerk(np.exp(-5 * t**2), 100.0), 5)
    -5.81636
    """
    values = _checked_speed(speed, rate_hz)
    jerk = np.diff(values, 2) * rate_hz**2
    squared = float((jerk**2).sum()) / rate_hz
    if squared <= 0:
        raise BadInput(
            Problem(
                "speed",
                message(Signals.found, what="straight_line"),
                message(Signals.expected, what="movement_that_stops"),
            )
        )
    return -math.log(squared * (values.size / rate_hz) ** 3 / float(values.max()) ** 2)


def smoothness_report(
    times_s: ArrayLike, xy: ArrayLike, *, stroke: ArrayLike | None = None, least_extent: float = 0.0
) -> SmoothnessReport:  # fmt: skip
    """Smoothness of the movements in a recording, or of whole strokes: middle and interval over those found.

    A movement is a stretch in which the speed stays above 10 % of the recording's peak speed (99.5th percentile),
    widened to where it falls below 1 % of the movement's own peak or rises again; 0.1 to 10 s and at least 8 samples
    long. A stroke is taken as it is, from pen down to pen up. Speed is taken after a low-pass at 20 Hz (or 0.4 of the
    rate, when lower), forwards and backwards, which shifts nothing in time.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds, possibly uneven; steps over 0.25 s are gaps and never bridged.
    xy : array, shape (n, 2)
        Positions, any unit; NaN where a cell was empty.
    stroke : array of int, shape (n,), or None
        Number of the stroke that each sample belongs to, below 0 between strokes; None where nothing was drawn.
    least_extent : float, default 0.0
        What does not get this far from where it began is no movement, in the unit of `xy`.

    Returns
    -------
    SmoothnessReport
        `movements` counts those used; with none, both figures are NaN with the reason: nothing moved, it hardly ever
        stopped, or fewer than 20 samples a second.

    Raises
    ------
    BadInput
        Shapes that do not fit, or a clock that runs backwards.

    Notes
    -----
    Source: [balasubramanian-2015]. Assumed: movements are aimed, one at a time. The value of a stroke depends on what
    was drawn: compare the same drawing only.

    Examples
    --------
    >>> import numpy as np
    >>> s = np.clip(np.arange(800) / 100 % 1.6, 0, 1)
    >>> there = 10 * s**3 - 15 * s**4 + 6 * s**5
    >>> back = np.arange(800) // 160 % 2 == 1
    >>> x = np.where(back, 1 - there, there)
    >>> report = smoothness_report(np.arange(800) / 100, np.column_stack([x, 0 * x]))
    >>> report.movements, round(report.spectral_arc_length.value, 1)
    (5, -1.4)
    """
    times = checked_times(times_s)
    values = checked_columns("xy", xy, times.size)
    parts = stretches(times, values)
    if not parts:
        return _none(message(Intervals.no_movement))
    rate_hz = mean_rate_hz(parts)
    if rate_hz < LEAST_RATE_HZ:
        return _none(message(Aiming.few_samples, rate_hz=rate_hz, least_hz=LEAST_RATE_HZ))
    if stroke is not None:
        speeds = list(_strokes(times, values, np.asarray(stroke), rate_hz))
        why = message(Aiming.no_stroke)
    else:
        speeds, why = _movements(parts, rate_hz, least_extent)
    if not speeds:
        return _none(why)
    arcs = [spectral_arc_length(speed, rate_hz) for speed in speeds]
    jerks = [log_dimensionless_jerk(speed, rate_hz) for speed in speeds]
    return SmoothnessReport(len(arcs), median_estimate(arcs), median_estimate(jerks), strokes=stroke is not None)


def _none(why: Message) -> SmoothnessReport:
    none = Estimate.missing(why, n=0)
    return SmoothnessReport(0, none, none)


def _strokes(
    times_s: NDArray[np.float64], xy: NDArray[np.float64], stroke: NDArray[np.int64], rate_hz: float
) -> Iterator[NDArray[np.float64]]:
    """Speed of each whole stroke that moves."""
    for number in np.unique(stroke[stroke >= 0]).tolist():
        rows = stroke == number
        parts = stretches(times_s[rows], xy[rows])
        whole = sum(part.times_s.size for part in parts) >= 0.9 * int(rows.sum())
        if len(parts) != 1 or not whole:
            continue
        speed = _speed(even(parts[0], rate_hz), rate_hz)
        if speed.size >= 4 * LEAST_SAMPLES and speed.max() > 0:
            yield speed


def _movements(
    parts: list[Stretch], rate_hz: float, least_extent: float
) -> tuple[list[NDArray[np.float64]], Message]:  # fmt: skip
    """Speeds of single movements; why there is none."""
    places = [even(part, rate_hz) for part in parts]
    speeds = [_speed(place, rate_hz) for place in places]
    every = np.concatenate(speeds)
    peak = float(np.quantile(every, PEAK_QUANTILE))
    if peak <= 0:
        return [], message(Intervals.no_movement)
    moving = float(np.mean(every >= ONSET_SHARE * peak))
    if moving > MOVING_SHARE:
        return [], message(Aiming.always_moving, moving_share=moving)
    found = []
    for place, speed in zip(places, speeds, strict=True):
        for first, last in _spans(speed, ONSET_SHARE * peak, rate_hz):
            away = np.hypot(*(place[first:last] - place[first]).T)
            if float(away.max()) > least_extent:
                found.append(speed[first:last])
    return found, message(Intervals.no_movement)


def _spans(speed: NDArray[np.float64], onset: float, rate_hz: float) -> Iterator[tuple[int, int]]:
    """First sample and end of each whole movement."""
    fast = np.concatenate([[False], speed >= onset, [False]])
    edges = np.flatnonzero(np.diff(fast.astype(np.int8)))
    done = 0
    for start, end in edges.reshape(-1, 2):
        if start < done or end - start < LEAST_S / 2 * rate_hz:
            continue
        first, done = _ends(speed, int(start), int(end), round(EDGE_S * rate_hz))
        # A movement that a gap cuts off has no standstill at that end.
        whole = first > 0 and done < speed.size
        if whole and max(LEAST_S * rate_hz, LEAST_SAMPLES) <= done - first <= MOST_S * rate_hz:
            yield first, done


def _ends(speed: NDArray[np.float64], start: int, end: int, most: int) -> tuple[int, int]:
    """Where a movement falls below its own threshold on either side; or rests, slower than which it never gets."""
    least = EDGE_SHARE * float(speed[start:end].max())
    before = speed[max(0, start - most) : start][::-1]
    after = speed[end : end + most]
    return start - _steps_down(before, least), end + _steps_down(after, least)


def _steps_down(outwards: NDArray[np.float64], least: float) -> int:
    """Samples until the speed is below `least`, or rises again."""
    stop = outwards < least
    stop[1:] |= np.diff(outwards) > 0
    return int(np.argmax(stop)) if stop.any() else outwards.size


def _speed(values: NDArray[np.float64], rate_hz: float) -> NDArray[np.float64]:
    from scipy.signal import butter, sosfiltfilt

    if values.shape[0] < LEAST_SAMPLES * 4:
        return np.zeros(values.shape[0])
    low_pass = butter(2, min(LOW_PASS_HZ, 0.4 * rate_hz), fs=rate_hz, output="sos")
    squared = np.zeros(values.shape[0])
    for column in values.T:
        squared += np.gradient(sosfiltfilt(low_pass, column)) ** 2
    return np.asarray(np.sqrt(squared) * rate_hz)


def _checked_speed(speed: ArrayLike, rate_hz: float) -> NDArray[np.float64]:
    values = np.asarray(speed, dtype=np.float64)
    if values.ndim != 1 or values.size < 3:
        raise BadInput(
            Problem(
                "speed", message(Signals.shape, shape=values.shape), message(Signals.expected, what="three_samples")
            )
        )
    if not (math.isfinite(rate_hz) and rate_hz > 0):
        raise BadInput(Problem("rate_hz", str(rate_hz), message(Signals.expected, what="rate")))
    if not np.isfinite(values).all() or values.min() < 0:
        raise BadInput(
            Problem(
                "speed",
                message(Signals.found, what="empty_or_negative"),
                message(Signals.expected, what="numbers_or_0"),
            )
        )
    if values.max() == 0:
        raise BadInput(
            Problem(
                "speed",
                message(Signals.found, what="no_movement"),
                message(Signals.expected, what="movement_that_stops"),
            )
        )
    return values
