"""The whole response of a tuned stick, sample by sample.

Order: centre, rotation, range per direction, dead zone, curve, filter, outer limit. Each step left
alone changes nothing, so a response with nothing set returns what came in. The response is continuous
but for the inner jump, which is there to leap over a dead zone inside the game.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numba import njit
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.message import message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.tuning.filters import NO_FILTER, Filter, filtered
from stickwright.tuning.series import checked_positive, checked_series

__all__ = ["Response", "gain_towards", "placed", "respond", "shaped", "shaped_one_euro"]

Array = NDArray[np.float64]
_FAST = {"contract", "nsz"}


@dataclass(frozen=True)
class Response:
    """Settings of the response, in the order in which they act; the defaults leave the stick as it is.

    Parameters
    ----------
    centre_xy : tuple of float
        Output at rest, share of full output; taken off.
    output_rotation_rad : float
        Added to the direction, anticlockwise.
    direction_rad, gain : tuple of float
        Directions after rotation and the multiplier there; smooth and periodic between. Empty: 1 all round.
    dead_zone : float
        Radius inside which the output is 0, share of full output, 0 to below 1.
    inner_jump : float
        Output just outside the dead zone, 0 to below 1.
    curve_ratio : float
        Growth of the scatter along the range divided by the scatter at the centre (b/a); 0 is straight.
    filter : Filter
        What smooths the output.
    outer_limit : float
        Largest output; infinite for none.
    """

    centre_xy: tuple[float, float] = (0.0, 0.0)
    output_rotation_rad: float = 0.0
    direction_rad: tuple[float, ...] = ()
    gain: tuple[float, ...] = ()
    dead_zone: float = 0.0
    inner_jump: float = 0.0
    curve_ratio: float = 0.0
    filter: Filter = NO_FILTER
    outer_limit: float = math.inf

    def __post_init__(self) -> None:
        _refuse_bad_shape(self.dead_zone, self.inner_jump, self.curve_ratio, self.outer_limit)
        if len(self.direction_rad) != len(self.gain):
            found = message(Signals.gains, gains=len(self.gain), directions=len(self.direction_rad))
            raise BadInput(Problem("gain", found, message(Signals.expected, what="one_each_direction")))


def _refuse_bad_shape(dead_zone: float, inner_jump: float, curve_ratio: float, outer_limit: float) -> None:
    problems = [
        Problem(name, f"{value:g}", message(Signals.expected, what="share_below_1"))
        for name, value in (("dead_zone", dead_zone), ("inner_jump", inner_jump))
        if not 0.0 <= value < 1.0
    ]
    if not (math.isfinite(curve_ratio) and curve_ratio >= 0.0):
        problems.append(Problem("curve_ratio", f"{curve_ratio:g}", message(Signals.expected, what="straight_or_more")))
    if not outer_limit > 0.0:
        problems.append(Problem("outer_limit", f"{outer_limit:g}", message(Signals.expected, what="share_above_0")))
    if problems:
        raise BadInput(problems)


def gain_towards(towards_rad: ArrayLike, direction_rad: ArrayLike, gain: ArrayLike) -> Array:
    """Multiplier in any direction, from those at some directions.

    Parameters
    ----------
    towards_rad : array, shape (n,)
        Directions asked for, radians.
    direction_rad : array, shape (k,)
        Directions at which the multiplier is known, radians, no two the same.
    gain : array, shape (k,)
        The multiplier there, dimensionless.

    Returns
    -------
    array, shape (n,)
        Smooth (no kinks), periodic, never beyond the neighbours' values.

    Raises
    ------
    BadInput
        Two equal directions.

    Notes
    -----
    Source: monotone piecewise cubic interpolation [fritsch-carlson-1980], as in scipy [scipy-2020], over
    three turns of the circle.

    Examples
    --------
    >>> ahead = np.pi / 2
    >>> gain_towards([0.0, ahead, 5 * ahead, np.pi / 4], [0.0, ahead, 2 * ahead, 3 * ahead], [1.0, 2.0, 1.0, 1.0])
    array([1. , 2. , 2. , 1.5])
    """
    from scipy.interpolate import PchipInterpolator

    towards = np.mod(np.asarray(towards_rad, dtype=np.float64), 2.0 * math.pi)
    known = np.mod(np.asarray(direction_rad, dtype=np.float64), 2.0 * math.pi)
    values = np.asarray(gain, dtype=np.float64)
    if len(known) == 0:
        return np.ones_like(towards)
    order = np.argsort(known)
    known, values = known[order], values[order]
    if len(known) > 1 and float(np.diff(known).min()) < 1e-9:
        raise BadInput(
            Problem(
                "direction_rad",
                message(Signals.found, what="direction_twice"),
                message(Signals.expected, what="direction_once"),
            )
        )
    knots = np.concatenate([known - 2.0 * math.pi, known, known + 2.0 * math.pi])
    return np.asarray(PchipInterpolator(knots, np.tile(values, 3))(towards), dtype=np.float64)


def placed(xy: ArrayLike, settings: Response) -> Array:
    """Samples after the steps that know no past: centre, rotation and range.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Output as the stick gives it, share of full output.
    settings : Response
        The response.

    Returns
    -------
    array, shape (n, 2)
        Where the player put the stick within the player's own range.

    Examples
    --------
    >>> placed([(0.1, 0.0)], Response(output_rotation_rad=np.pi / 2)).round(3)
    array([[0. , 0.1]])
    """
    values = np.asarray(xy, dtype=np.float64) - np.asarray(settings.centre_xy)
    if settings.output_rotation_rad != 0.0:
        cos, sin = math.cos(settings.output_rotation_rad), math.sin(settings.output_rotation_rad)
        values = values @ np.array([[cos, sin], [-sin, cos]])
    if settings.gain:
        towards = np.nan_to_num(np.arctan2(values[:, 1], values[:, 0]))
        values = values * gain_towards(towards, settings.direction_rad, settings.gain)[:, None]
    return np.ascontiguousarray(values)


class _CurveNumbers(NamedTuple):
    """Dead zone and curve as the kernels take them: floats all, so that each kernel is compiled once."""

    dead_zone: float
    per_u: float
    jump: float
    rest: float
    """(1 - jump)/ln(1 + ratio)."""
    ratio: float
    end: float
    """Slope with which the curve goes on beyond 1."""


class _EuroNumbers(NamedTuple):
    """The 1-euro filter as the kernel takes it."""

    min_cutoff_hz: float
    beta: float
    tau_s: float


@njit(cache=True, nogil=True, fastmath=_FAST, error_model="numpy", inline="always")  # type: ignore[untyped-decorator]
def _stretch(square: float, curve: _CurveNumbers) -> float:
    # By what the sample is multiplied: output length over its own length. The logarithm is worked out beyond
    # the dead zone only.
    r = math.sqrt(square)
    u = (r - curve.dead_zone) * curve.per_u
    if u > 1.0:
        return (1.0 + curve.end * (u - 1.0)) / r
    if curve.ratio > 0.0:
        return (curve.jump + curve.rest * math.log(1.0 + curve.ratio * u)) / r
    return (curve.jump + curve.rest * u) / r


def _curve_numbers(dead_zone: float, inner_jump: float, curve_ratio: float) -> _CurveNumbers:
    """Of a dead zone, jump and curve; a ratio too small to bend anything is straight."""
    ratio = curve_ratio if curve_ratio > 1e-9 else 0.0
    rest, end = 1.0 - inner_jump, 1.0 - inner_jump
    if ratio > 0.0:
        rest /= math.log1p(ratio)
        end = rest * ratio / (1.0 + ratio)
    return _CurveNumbers(float(dead_zone), 1.0 / (1.0 - dead_zone), float(inner_jump), rest, ratio, end)


@njit(cache=True, nogil=True, fastmath=_FAST, error_model="numpy")  # type: ignore[untyped-decorator]
def _shape_kernel(xy: Array, curve: _CurveNumbers, out: Array) -> None:
    inside = curve.dead_zone * curve.dead_zone
    for i in range(xy.shape[0]):
        x = xy[i, 0]
        y = xy[i, 1]
        square = x * x + y * y
        times = 0.0
        if not square <= inside:
            times = _stretch(square, curve)
        out[i, 0] = x * times
        out[i, 1] = y * times


@njit(cache=True, nogil=True, fastmath=_FAST, error_model="numpy")  # type: ignore[untyped-decorator]
def _shape_one_euro_kernel(
    xy: Array, times_s: Array, curve: _CurveNumbers, euro: _EuroNumbers, outer_limit: float, out: Array
) -> None:
    # Dead zone, curve, 1-euro filter and outer limit in one pass over the stream. The filter is written so that
    # one sample waits for the one before through a single division (`lag_x`, `lag_y`: how far the filtered value
    # trails the sample); all the rest, the curve above all, is worked out ahead while the processor waits.
    min_cutoff_hz, beta, tau_s = euro
    inside = curve.dead_zone * curve.dead_zone
    limit_square = outer_limit * outer_limit
    started = False
    x_before = y_before = speed_x = speed_y = lag_x = lag_y = time_s = 0.0
    for i in range(xy.shape[0]):
        x = xy[i, 0]
        y = xy[i, 1]
        square = x * x + y * y
        if not square < np.inf:
            out[i, 0] = np.nan
            out[i, 1] = np.nan
            continue
        if square <= inside:
            x = 0.0
            y = 0.0
        else:
            times = _stretch(square, curve)
            x *= times
            y *= times
        if started:
            dt = times_s[i] - time_s
            share = 1.0 / (tau_s + dt)
            kept = tau_s * share
            w = 2.0 * math.pi * dt
            e_x = (x - x_before) + lag_x
            e_y = (y - y_before) + lag_y
            speed_x = kept * speed_x + share * e_x
            speed_y = kept * speed_y + share * e_y
            at_rest = 1.0 + w * min_cutoff_hz
            lag_x = e_x / (at_rest + (w * beta) * abs(speed_x))
            lag_y = e_y / (at_rest + (w * beta) * abs(speed_y))
        started = True
        x_before = x
        y_before = y
        time_s = times_s[i]
        x -= lag_x
        y -= lag_y
        square = x * x + y * y
        if square > limit_square:
            times = outer_limit / math.sqrt(square)
            x *= times
            y *= times
        out[i, 0] = x
        out[i, 1] = y


def shaped(xy: ArrayLike, dead_zone: float = 0.0, inner_jump: float = 0.0, curve_ratio: float = 0.0) -> Array:
    """Samples through the radial dead zone and the curve.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Samples about the centre, share of full output.
    dead_zone, inner_jump, curve_ratio : float, default 0.0
        As in `Response`.

    Returns
    -------
    array, shape (n, 2)
        Same direction, new length: 0 inside the dead zone, from `inner_jump` to 1 between its edge and 1,
        and beyond 1 along the curve's last slope.

    Raises
    ------
    BadInput
        A setting outside its range.

    Notes
    -----
    Source: equal precision along the range, `stickwright.tuning.curve`. Assumed: a round dead zone.

    Examples
    --------
    >>> shaped([(0.05, 0.0), (0.10, 0.0), (0.55, 0.0), (1.00, 0.0)], dead_zone=0.10)[:, 0].round(3)
    array([0. , 0. , 0.5, 1. ])
    """
    _refuse_bad_shape(dead_zone, inner_jump, curve_ratio, 1.0)
    values = np.ascontiguousarray(xy, dtype=np.float64)
    out = np.empty_like(values)
    _shape_kernel(values, _curve_numbers(dead_zone, inner_jump, curve_ratio), out)
    return out


def shaped_one_euro(
    xy: ArrayLike,
    times_s: ArrayLike,
    min_cutoff_hz: float,
    beta: float,
    derivative_cutoff_hz: float = 1.0,
    *,
    dead_zone: float = 0.0,
    inner_jump: float = 0.0,
    curve_ratio: float = 0.0,
    outer_limit: float = 1.0,
) -> Array:
    """Dead zone, curve, 1-euro filter and outer limit in one pass, for long or live streams.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Samples about the centre, share of full output; NaN where empty.
    times_s : array, shape (n,)
        Time stamps in seconds, even or uneven, never backwards.
    min_cutoff_hz, beta, derivative_cutoff_hz : float
        As in `stickwright.tuning.filters.one_euro`.
    dead_zone, inner_jump, curve_ratio, outer_limit : float
        As in `Response`.

    Returns
    -------
    array, shape (n, 2)
        The same, to rounding, as `shaped`, then `one_euro`, then the limit on the radius.

    Raises
    ------
    BadInput
        As the steps raise one by one.

    Notes
    -----
    Source: the 1-euro filter [casiez-2012], each axis alone.

    Examples
    --------
    >>> shaped_one_euro([(0.0, 0.0), (1.0, 0.0)], [0.00, 0.01], min_cutoff_hz=1.0, beta=0.0).round(3)
    array([[0.   , 0.   ],
           [0.059, 0.   ]])
    """
    values, times = checked_series(xy, times_s)
    _refuse_bad_shape(dead_zone, inner_jump, curve_ratio, outer_limit)
    checked_positive(min_cutoff_hz=min_cutoff_hz, derivative_cutoff_hz=derivative_cutoff_hz)
    if not (math.isfinite(beta) and beta >= 0.0):
        raise BadInput(Problem("beta", f"{beta:g}", message(Signals.expected, what="zero_or_more")))
    curve = _curve_numbers(dead_zone, inner_jump, curve_ratio)
    euro = _EuroNumbers(float(min_cutoff_hz), float(beta), 1.0 / (2.0 * math.pi * derivative_cutoff_hz))
    out = np.empty_like(values)
    _shape_one_euro_kernel(values, times, curve, euro, float(outer_limit), out)
    return out


def _limited(xy: Array, outer_limit: float) -> Array:
    """Samples drawn back onto the limit where they lie outside it."""
    length = np.hypot(xy[:, 0], xy[:, 1])
    outside = length > outer_limit
    if not outside.any():
        return xy
    out = xy.copy()
    out[outside] *= (outer_limit / length[outside])[:, None]
    return out


def respond(xy: ArrayLike, times_s: ArrayLike, settings: Response) -> Array:
    """What the game gets, from what the stick gives.

    Parameters
    ----------
    xy : array, shape (n, 2)
        Output as the stick gives it, share of full output; NaN where empty.
    times_s : array, shape (n,)
        Time stamps in seconds, even or uneven, never backwards.
    settings : Response
        The response.

    Returns
    -------
    array, shape (n, 2)
        Output after centre, rotation, range, dead zone, curve, filter and outer limit.

    Raises
    ------
    BadInput
        Time that runs backwards, or other shapes.

    Notes
    -----
    Source: order of steps and each step's own source, see the module.

    Examples
    --------
    >>> settings = Response(centre_xy=(0.1, 0.0), dead_zone=0.1, outer_limit=1.0)
    >>> respond([(0.12, 0.0), (0.65, 0.0)], [0.00, 0.01], settings).round(3)
    array([[0. , 0. ],
           [0.5, 0. ]])
    """
    values, times = checked_series(xy, times_s)
    values = placed(values, settings)
    zone, jump, ratio = settings.dead_zone, settings.inner_jump, settings.curve_ratio
    by = settings.filter
    if by.kind == "1-euro":
        return shaped_one_euro(
            values, times, by.cutoff_hz, by.beta, dead_zone=zone, inner_jump=jump, curve_ratio=ratio,
            outer_limit=settings.outer_limit,
        )  # fmt: skip
    if zone or jump or ratio:
        values = shaped(values, zone, jump, ratio)
    return _limited(filtered(values, times, by), settings.outer_limit)
