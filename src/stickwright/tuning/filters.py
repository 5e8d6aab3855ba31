"""Filters that a live stick can pass through: what comes out depends on the past alone.

Rules of all of them:

- the first sample passes unchanged, so that switching on does not jump;
- a sample with an empty cell stays empty and the filter goes on from the one before it, as if that
  stretch of time had been one longer step: nothing is invented across a gap;
- each axis is filtered alone, so turning the stick turns a linear filter's output with it, and the
  1-euro filter's nearly;
- a filter makes the game late. The lag at slow movement is stated beside each.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numba import njit
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.filters import FilterKind
from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.tuning.sections import butterworth, notch
from stickwright.tuning.series import checked_positive, checked_series

__all__ = [
    "NO_FILTER",
    "Filter",
    "butterworth",
    "filtered",
    "low_pass",
    "low_pass_alpha",
    "low_pass_cutoff_hz",
    "low_pass_lag_s",
    "low_pass_left",
    "notch",
    "one_euro",
]

Array = NDArray[np.float64]

# Multiplying and adding in one rounding is allowed, nothing that would change how NaN or order behave.
_FAST = {"contract", "nsz"}


@dataclass(frozen=True)
class Filter:
    """One filter with its numbers.

    Parameters
    ----------
    kind : {"none", "low-pass", "butterworth", "1-euro", "notch"}
        Which filter.
    cutoff_hz : float
        Cut-off of a low-pass, smallest cut-off of the 1-euro filter, centre of the notch.
    beta : float
        1-euro filter only: cut-off added for each full output a second of speed, in hertz.
    quality : float
        Notch only: centre frequency divided by width.
    """

    kind: FilterKind = "none"
    cutoff_hz: float = math.nan
    beta: float = 0.0
    quality: float = 2.5

    @property
    def settings(self) -> tuple[tuple[str, float], ...]:
        """The numbers that this kind uses, by name."""
        if self.kind == "none":
            return ()
        if self.kind == "1-euro":
            return (("min_cutoff_hz", self.cutoff_hz), ("beta", self.beta), ("derivative_cutoff_hz", 1.0))
        if self.kind == "notch":
            return (("frequency_hz", self.cutoff_hz), ("quality", self.quality))
        if self.kind == "butterworth":
            return (("cutoff_hz", self.cutoff_hz), ("order", 2.0))
        return (("cutoff_hz", self.cutoff_hz),)


NO_FILTER = Filter()


@njit(cache=True, nogil=True, fastmath=_FAST, error_model="numpy")  # type: ignore[untyped-decorator]
def _one_euro_kernel(xy: Array, times_s: Array, min_cutoff_hz: float, beta: float, tau_s: float, out: Array) -> None:
    # Per axis, with e = x - (filtered value before), w = 2 pi dt, and the smoothing share alpha = wf/(1 + wf):
    #   speed = speed_before + (e/dt - speed_before) dt/(tau + dt),   filtered = x - e/(1 + w f),
    #   f = min_cutoff + beta |speed|.
    # That is the paper's filter with the divisions by dt cancelled; e of the next sample hangs on one
    # division only, which is what the speed of a recursive filter is made of.
    for axis in range(2):
        started = False
        before = 0.0
        speed = 0.0
        time_s = 0.0
        for i in range(xy.shape[0]):
            x = xy[i, axis]
            if not (np.isfinite(xy[i, 0]) and np.isfinite(xy[i, 1])):
                out[i, axis] = np.nan
                continue
            if not started:
                before = x
                started = True
            else:
                dt = times_s[i] - time_s
                share = 1.0 / (tau_s + dt)
                e = x - before
                speed = tau_s * share * speed + share * e
                w = 2.0 * math.pi * dt
                before = x - e / (1.0 + w * (min_cutoff_hz + beta * abs(speed)))
            time_s = times_s[i]
            out[i, axis] = before


def one_euro(
    xy: ArrayLike, times_s: ArrayLike, min_cutoff_hz: float, beta: float, derivative_cutoff_hz: float = 1.0
) -> Array:
    """The 1-euro filter: smooth while slow, quick while fast.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Samples, share of full output; NaN where empty.
    times_s : array, shape (n,)
        Time stamps in seconds, even or uneven, never backwards.
    min_cutoff_hz : float
        Cut-off at rest, hertz, above 0.
    beta : float
        Cut-off added for each full output a second of speed, hertz, 0 or more.
    derivative_cutoff_hz : float, default 1.0
        Cut-off of the speed's own low-pass, hertz, above 0.

    Returns
    -------
    array, shape (n, 2)
        Filtered samples; the first as it came.

    Raises
    ------
    BadInput
        Time that runs backwards, a cut-off of 0 or less, a negative `beta`, or other shapes.

    Notes
    -----
    Source: the 1-euro filter [casiez-2012], each axis alone, speed 0 at the first sample, speed from the
    filtered value before. A repeated time stamp changes nothing but the speed (the limit of a short step).
    Lag at rest 1 / (2 pi `min_cutoff_hz`), less in movement.

    Examples
    --------
    >>> xy = [(0.00, 0.0), (0.01, 0.0), (-0.01, 0.0), (0.02, 0.0)]
    >>> one_euro(xy, [0.01, 0.02, 0.03, 0.04], min_cutoff_hz=1.0, beta=0.5)[:, 0].round(6)
    array([ 0.000e+00,  6.080e-04, -2.200e-05,  1.224e-03])
    """
    values, times = checked_series(xy, times_s)
    checked_positive(min_cutoff_hz=min_cutoff_hz, derivative_cutoff_hz=derivative_cutoff_hz)
    if not (math.isfinite(beta) and beta >= 0.0):
        raise BadInput(Problem("beta", f"{beta:g}", message(Signals.expected, what="zero_or_more")))
    out = np.empty_like(values)
    _one_euro_kernel(values, times, min_cutoff_hz, beta, 1.0 / (2.0 * math.pi * derivative_cutoff_hz), out)
    return out


def low_pass_alpha(cutoff_hz: float, step_s: float) -> float:
    """Weight of the new sample in a first-order low-pass.

    Parameters
    ----------
    cutoff_hz : float
        Cut-off, hertz.
    step_s : float
        Time since the sample before, seconds.

    Returns
    -------
    float
        1 - exp(-2 pi cutoff step), 0 to 1.

    Notes
    -----
    Source: the exact answer of the continuous filter to a held sample [oppenheim-signals]; the often used
    1 / (1 + tau/dt) misses its own cut-off by 12 % when the cut-off is a twentieth of the rate.

    Examples
    --------
    >>> round(low_pass_alpha(5.0, 0.01), 9)
    0.269597309
    """
    return -math.expm1(-2.0 * math.pi * cutoff_hz * step_s)


@njit(cache=True, nogil=True, fastmath=_FAST, error_model="numpy")  # type: ignore[untyped-decorator]
def _low_pass_kernel(xy: Array, times_s: Array, rate_rad_per_s: float, out: Array) -> None:
    started = False
    x_before = 0.0
    y_before = 0.0
    time_s = 0.0
    for i in range(xy.shape[0]):
        x = xy[i, 0]
        y = xy[i, 1]
        if not (np.isfinite(x) and np.isfinite(y)):
            out[i, 0] = np.nan
            out[i, 1] = np.nan
            continue
        if started:
            kept = math.exp(-rate_rad_per_s * (times_s[i] - time_s))
            x_before = x + kept * (x_before - x)
            y_before = y + kept * (y_before - y)
        else:
            x_before = x
            y_before = y
            started = True
        time_s = times_s[i]
        out[i, 0] = x_before
        out[i, 1] = y_before


def low_pass(xy: ArrayLike, times_s: ArrayLike, cutoff_hz: float) -> Array:
    """First-order low-pass (exponential smoothing) that keeps its cut-off at any spacing of samples.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Samples, share of full output; NaN where empty.
    times_s : array, shape (n,)
        Time stamps in seconds, even or uneven, never backwards.
    cutoff_hz : float
        Cut-off, hertz, above 0.

    Returns
    -------
    array, shape (n, 2)
        Filtered samples; the first as it came.

    Raises
    ------
    BadInput
        Time that runs backwards, a cut-off of 0 or less, or other shapes.

    Notes
    -----
    Source: `low_pass_alpha` [oppenheim-signals]. Lag as in `low_pass_lag_s`.

    Examples
    --------
    >>> low_pass([(0.0, 0.0), (1.0, 0.0), (1.0, 0.0)], [0.00, 0.01, 0.02], cutoff_hz=5.0)[:, 0].round(4)
    array([0.    , 0.2696, 0.4665])
    """
    values, times = checked_series(xy, times_s)
    checked_positive(cutoff_hz=cutoff_hz)
    out = np.empty_like(values)
    _low_pass_kernel(values, times, 2.0 * math.pi * cutoff_hz, out)
    return out


def low_pass_lag_s(cutoff_hz: float, step_s: float = 0.0) -> float:
    """By how much a first-order low-pass delays slow movement.

    Parameters
    ----------
    cutoff_hz : float
        Cut-off, hertz.
    step_s : float, default 0.0
        Spacing of the samples, seconds; 0 for the continuous filter.

    Returns
    -------
    float
        Seconds: (1 - alpha) / alpha samples, or 1 / (2 pi cutoff) for the continuous filter.

    Notes
    -----
    Source: group delay at frequency 0 [oppenheim-signals].

    Examples
    --------
    >>> round(low_pass_lag_s(5.0), 4), round(low_pass_lag_s(5.0, 0.01), 4)
    (0.0318, 0.0271)
    """
    checked_positive(cutoff_hz=cutoff_hz)
    if step_s <= 0.0:
        return 1.0 / (2.0 * math.pi * cutoff_hz)
    alpha = low_pass_alpha(cutoff_hz, step_s)
    return step_s * (1.0 - alpha) / alpha


def low_pass_cutoff_hz(lag_s: float) -> float:
    """Cut-off of the first-order low-pass that delays slow movement by `lag_s`.

    Parameters
    ----------
    lag_s : float
        Lag, seconds, above 0.

    Returns
    -------
    float
        1 / (2 pi lag), hertz.

    Notes
    -----
    Source: as in `low_pass_lag_s` [oppenheim-signals].

    Examples
    --------
    >>> round(low_pass_cutoff_hz(0.06), 2)
    2.65
    """
    checked_positive(lag_s=lag_s)
    return 1.0 / (2.0 * math.pi * lag_s)


def low_pass_left(frequency_hz: float, lag_s: float) -> float:
    """Share of a tremor that a first-order low-pass with this lag leaves.

    Parameters
    ----------
    frequency_hz : float
        Frequency of the tremor, hertz.
    lag_s : float
        Lag of the filter at slow movement, seconds.

    Returns
    -------
    float
        1 / sqrt(1 + (2 pi f lag)^2), 0 to 1.

    Notes
    -----
    Source: gain of a first-order low-pass [oppenheim-signals].

    Examples
    --------
    >>> [round(low_pass_left(frequency_hz, 0.060), 2) for frequency_hz in (3.4, 5.6, 8.0)]
    [0.62, 0.43, 0.31]
    """
    return 1.0 / math.hypot(1.0, 2.0 * math.pi * frequency_hz * lag_s)


def filtered(xy: ArrayLike, times_s: ArrayLike, by: Filter) -> Array:
    """The samples through any of the filters.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Samples, share of full output; NaN where empty.
    times_s : array, shape (n,)
        Time stamps in seconds, never backwards.
    by : Filter
        Which filter, with its numbers.

    Returns
    -------
    array, shape (n, 2)
        Filtered samples.

    Raises
    ------
    BadInput
        As the filter named raises.

    Examples
    --------
    >>> filtered([(0.1, 0.2)], [0.0], NO_FILTER)
    array([[0.1, 0.2]])
    """
    if by.kind == "1-euro":
        return one_euro(xy, times_s, by.cutoff_hz, by.beta)
    if by.kind == "low-pass":
        return low_pass(xy, times_s, by.cutoff_hz)
    if by.kind == "butterworth":
        return butterworth(xy, times_s, by.cutoff_hz)
    if by.kind == "notch":
        return notch(xy, times_s, by.cutoff_hz, by.quality)
    return checked_series(xy, times_s)[0].copy()
