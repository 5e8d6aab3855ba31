"""Filters made of second-order sections by scipy, run forward only: Butterworth low-pass and notch."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.tuning.series import checked_positive, checked_series, even_grid

__all__ = ["butterworth", "notch"]

Array = NDArray[np.float64]


def _through_sections(xy: ArrayLike, times_s: ArrayLike, sections_at: Callable[[float], Array]) -> Array:
    """Second-order sections run forward over an even grid and read off at the time stamps."""
    from scipy.signal import sosfilt, sosfilt_zi

    values, times = checked_series(xy, times_s)
    whole = np.isfinite(values).all(axis=1)
    if np.count_nonzero(whole) < 2:
        out = values.copy()
        out[~whole] = np.nan
        return out
    even, grid_s, rate_hz = even_grid(values, times)
    sections = sections_at(rate_hz)
    start = sosfilt_zi(sections)
    out = np.empty_like(values)
    for axis in range(2):
        line, _ = sosfilt(sections, even[:, axis], zi=start * even[0, axis])
        out[:, axis] = np.interp(times, grid_s, line)
    out[~whole] = np.nan
    return out


def _below_half_rate(name: str, frequency_hz: float, rate_hz: float) -> None:
    if frequency_hz >= 0.5 * rate_hz:
        raise BadInput(
            Problem(
                name,
                f"{frequency_hz:g} Hz",
                message(Signals.below_half_rate, limit_hz=0.5 * rate_hz),
                message(Signals.remedy, what="higher_rate"),
            )
        )


def butterworth(xy: ArrayLike, times_s: ArrayLike, cutoff_hz: float, order: int = 2) -> Array:
    """Butterworth low-pass, run forward only, as a live stick needs it.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Samples, share of full output; NaN where empty.
    times_s : array, shape (n,)
        Time stamps in seconds, never backwards. Uneven ones are read on an even grid at the mean rate.
    cutoff_hz : float
        Cut-off (half power), hertz, above 0 and below half the rate.
    order : int, default 2
        Order of the filter, 1 to 8.

    Returns
    -------
    array, shape (n, 2)
        Filtered samples, started as if the first had been held for ever.

    Raises
    ------
    BadInput
        Time that runs backwards, a cut-off outside its range, or other shapes.

    Notes
    -----
    Source: scipy.signal.butter [scipy-2020]. Order 2 delays slow movement by sqrt(2) / (2 pi cutoff).

    Examples
    --------
    >>> times_s = np.arange(50) * 0.01
    >>> step_xy = np.column_stack([(times_s > 0.1) * 1.0, 0.0 * times_s])
    >>> round(float(butterworth(step_xy, times_s, cutoff_hz=5.0)[-1, 0]), 2)
    1.0
    """
    from scipy.signal import butter

    checked_positive(cutoff_hz=cutoff_hz)
    if not 1 <= order <= 8:
        raise BadInput(Problem("order", str(order), "1 to 8"))

    def sections(rate_hz: float) -> Array:
        _below_half_rate("cutoff_hz", cutoff_hz, rate_hz)
        return np.asarray(butter(order, cutoff_hz, fs=rate_hz, output="sos"), dtype=np.float64)

    return _through_sections(xy, times_s, sections)


def notch(xy: ArrayLike, times_s: ArrayLike, frequency_hz: float, quality: float = 2.5) -> Array:
    """Notch at a tremor's frequency, run forward only.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Samples, share of full output; NaN where empty.
    times_s : array, shape (n,)
        Time stamps in seconds, never backwards. Uneven ones are read on an even grid at the mean rate.
    frequency_hz : float
        Centre of the notch, hertz, above 0 and below half the rate.
    quality : float, default 2.5
        Centre divided by width between the half-power points.

    Returns
    -------
    array, shape (n, 2)
        Filtered samples, started as if the first had been held for ever.

    Raises
    ------
    BadInput
        Time that runs backwards, a frequency outside its range, or other shapes.

    Notes
    -----
    Source: scipy.signal.iirnotch [scipy-2020]. Delays slow movement by 1 / (2 pi frequency quality).

    Examples
    --------
    >>> times_s = np.arange(400) * 0.01
    >>> shake = np.sin(2 * np.pi * 5.0 * times_s)
    >>> left = notch(np.column_stack([shake, shake]), times_s, frequency_hz=5.0)
    >>> bool(np.abs(left[300:]).max() < 0.001)
    True
    """
    from scipy.signal import iirnotch

    checked_positive(frequency_hz=frequency_hz, quality=quality)

    def sections(rate_hz: float) -> Array:
        _below_half_rate("frequency_hz", frequency_hz, rate_hz)
        b, a = iirnotch(frequency_hz, quality, fs=rate_hz)
        return np.concatenate([b, a])[None, :]

    return _through_sections(xy, times_s, sections)
