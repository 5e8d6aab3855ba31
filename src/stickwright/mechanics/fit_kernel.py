"""The compiled heart of the fits: every set-up, every draw, every direction.

Held equal to a plain Python loop over the same formulas by the tests, and timed against it in benchmarks/.
"""

from __future__ import annotations

import math
from types import FunctionType
from typing import NamedTuple

import numpy as np
from numba import njit, prange
from numpy.polynomial import chebyshev
from numpy.typing import NDArray
from scipy.special import i0e

from stickwright.model.effective_width import EFFECTIVE_WIDTHS

__all__ = [
    "ALWAYS", "FAR_SD", "KernelFigures", "KernelResults", "KernelSetups", "KernelSite", "fit_kernel", "fit_kernel_alone",
    "scaled_bessel",
]  # fmt: skip

Array = NDArray[np.float64]

FAR_SD = 12.0
"""Beyond so many sd a crossing comes less than once in a million years: taken as never."""
ALWAYS = 1e6
"""False inputs a minute that stand for 'always on'."""
_FAST = {"contract", "reassoc", "arcp", "nsz"}
"""Freedoms that change no more than the last digit; not-a-number and infinity keep their meaning."""
# The scaled Bessel function I0, by Chebyshev series made from scipy's own, so that compiled code can call it.
_NEAR = chebyshev.chebinterpolate(lambda t: i0e(4.0 * (t + 1.0)), 32)  # for 0 to 8
_FAR = chebyshev.chebinterpolate(lambda t: np.sqrt(16.0 / (t + 1.0)) * i0e(16.0 / (t + 1.0)), 28)  # from 8 on


def _series(first: int) -> tuple[float, ...]:
    """Coefficients of the sine (first 1) or cosine (first 0) in the square of the angle, to 1e-15 at 90 degrees."""
    return tuple((-1) ** n / math.factorial(2 * n + first) for n in range(10))


_S0, _S1, _S2, _S3, _S4, _S5, _S6, _S7, _S8, _S9 = _series(1)
_C0, _C1, _C2, _C3, _C4, _C5, _C6, _C7, _C8, _C9 = _series(0)


@njit(cache=True, inline="always", error_model="numpy", fastmath=_FAST)
def _sine(x: float) -> float:  # pragma: no cover
    """By its series, for 0 to 90 degrees: quicker than the library's, which must serve every angle."""
    y = x * x
    z = y * y
    low = (_S0 + _S1 * y) + z * (_S2 + _S3 * y) + z * z * (_S4 + _S5 * y)
    return x * (low + z * z * z * ((_S6 + _S7 * y) + z * (_S8 + _S9 * y)))


@njit(cache=True, inline="always", error_model="numpy", fastmath=_FAST)
def _cosine(x: float) -> float:  # pragma: no cover
    """By its series, for 0 to 90 degrees."""
    y = x * x
    z = y * y
    low = (_C0 + _C1 * y) + z * (_C2 + _C3 * y) + z * z * (_C4 + _C5 * y)
    return low + z * z * z * ((_C6 + _C7 * y) + z * (_C8 + _C9 * y))


@njit(cache=True, inline="always", error_model="numpy", fastmath=_FAST)
def _straight(push: float, a: float, m: float, k: float) -> float:  # pragma: no cover
    """Angle where m + k theta + a sin(theta) = push; compiled twin of `crossing.crossing_angle` for a straight fall-off.

    One Newton step with the first terms of the series, then Halley's method on the sine itself, which cubes the error.
    """
    theta = (push - m) / (k + a)
    y = theta * theta
    sine = theta * (1.0 + y * (_S1 + y * (_S2 + y * _S3)))
    theta -= (m + k * theta - push + a * sine) / (k + a * (1.0 + y * (_C1 + y * _C2)))
    theta = min(theta, 1.5707963267948966)
    for _ in range(8):
        sine = a * _sine(theta)
        value, rise = m + k * theta - push + sine, k + a * _cosine(theta)
        step = 2.0 * value * rise / (2.0 * rise * rise + value * sine)
        theta -= step
        if abs(step) < 1e-4:  # the next step would be below 1e-11
            break
    return theta


@njit(cache=True, error_model="numpy", fastmath=_FAST)
def _bent(
    force: float, reach: float, lever: tuple[float, float, float, float], power: float
) -> float:  # pragma: no cover
    """The same for a bent fall-off, by Newton's method kept between bounds; `lever` is m, k, h and the stop."""
    m, k, h, stop = lever
    low, high = 0.0, stop
    theta = 0.5 * stop
    for _ in range(80):
        way = h * math.sin(theta) / reach
        value = m + k * theta - force * h * (1.0 - way**power)
        if value > 0.0:
            high = theta
        else:
            low = theta
        rise = k + force * h * power * max(way, 1e-300) ** (power - 1.0) * h * math.cos(theta) / reach
        new = theta - value / rise
        if not low < new < high:
            new = 0.5 * (low + high)
        if abs(new - theta) < 1e-15:
            break
        theta = new
    return theta


@njit(cache=True, error_model="numpy", fastmath=_FAST)
def scaled_bessel(x: float) -> float:  # pragma: no cover
    """exp(-x) I0(x) for x of 0 or more."""
    near = x <= 8.0
    t = 0.25 * x - 1.0 if near else 16.0 / x - 1.0
    series = _NEAR if near else _FAR
    double = 2.0 * t
    ahead, further = 0.0, 0.0
    for n in range(len(series) - 1, 0, -1):
        ahead, further = double * ahead - further + series[n], ahead
    value: float = t * ahead - further + series[0]
    return value if near else value / math.sqrt(x)


@njit(cache=True, error_model="numpy", fastmath=_FAST)
def _crossings_per_min(edge: float, rest: float, sigma: float, hz: float) -> float:  # pragma: no cover
    """Compiled twin of `fit.false_per_min`."""
    if sigma <= 0.0:
        return 0.0 if edge > rest else ALWAYS
    beyond = (edge - rest) / sigma
    if beyond < 1.0:
        return ALWAYS
    if beyond >= FAR_SD:
        return 0.0
    u = edge / sigma
    scaled = scaled_bessel(u * rest / sigma)
    rate: float = 60.0 * math.sqrt(2.0 * math.pi) * hz * u * math.exp(-0.5 * beyond * beyond) * scaled
    return rate


class KernelSetups(NamedTuple):
    """Set-ups as the kernel takes them, each an array with one entry a set-up but `stick_scale`, shape (sticks, draws)."""

    start_moment_nm: Array
    stiffness_nm_per_rad: Array
    height_m: Array
    stop_rad: Array
    travel_m: Array
    touch: NDArray[np.bool_]
    slope: NDArray[np.int64]
    stick: NDArray[np.int64]
    stick_scale: Array
    """Factor on a stick's forces in each draw."""
    zone: Array
    """Dead zone as share of travel."""
    static: Array
    """What is missed in every draw alike, in doublings, added to the shortfall."""


class KernelSite(NamedTuple):
    """A site as the kernel takes it: arrays as in `SiteInputs`."""

    force_n: Array
    reach_m: Array
    weight: Array
    """How much the game asks of each direction, shares that add up to one."""
    needed: NDArray[np.bool_]
    plane: Array
    """Share of force and range that lies in the stick's plane at each slope."""
    involuntary_n: Array
    limb_n_per_m: Array
    rest_n: Array
    crossing_hz: Array
    spasm_peak_n: Array


class KernelFigures(NamedTuple):
    """What is one figure at a site: of the player, the game and the rules."""

    level_share: float
    noise_share: float
    fall_off: float
    """How much less is pushed at the end of the range than at its start, as exponent."""
    spasm_per_min: float
    false_limit_per_min: float
    weakest_share: float
    widened_share: float
    widened_travel_m: float
    effort_share: float


class KernelResults(NamedTuple):
    """What the kernel fills: three arrays by set-up, draw and direction, six by set-up and draw."""

    reach_share: Array
    effort: Array
    """Share of the comfortable force that the direction asks for."""
    bits: Array
    """Information a second of the direction."""
    weighted_bits: Array
    weakest: Array
    """Least reach of all directions, share of travel."""
    most_effort: Array
    """Largest effort of all directions, share of comfortable force."""
    shortfall: Array
    """How far the rules are missed, in doublings; 0 where they are kept."""
    utility: Array
    """What the rank counts on, bits."""
    false_rate: Array
    """Unintended activations, one minute."""


def _kernel(setups_in, site, figures, out, full):  # type: ignore[no-untyped-def]  # pragma: no cover - compiled; held equal to a plain loop by the tests
    """Fill the out arrays: by set-up, draw and direction (draw 0 only unless `full`), and by set-up and draw."""
    m, k, h, stop, travel, touch, slope, stick, stick_scale, zone, static = setups_in
    force, reach, weight, needed, plane, sigma, limb, rest, crossing_hz, spasm_peaks = site
    level, noise, power, spasm_per_min, false_limit, weakest_rule, widened_rule, travel_rule, effort_rule = figures
    reach_out, effort_out, bits_out, weighted_out, weakest_out, most_out, short_out, utility_out, rate_out = out
    setups, draws, directions = len(m), force.shape[0], force.shape[1]
    inverse_force, inverse_reach, inverse_plane = 1.0 / force, 1.0 / reach, 1.0 / plane
    for s in prange(setups):
        h_s, stop_s, travel_s = h[s], stop[s], travel[s]
        inverse_h, inverse_stop = 1.0 / h_s, 1.0 / stop_s
        dead = zone[s] * travel_s
        for i in range(draws):
            # what the bench leaves open of the stick's own forces differs from draw to draw
            scale = stick_scale[stick[s], i]
            m_s, k_s = m[s] * scale, k[s] * scale
            stiffness = 0.0 if touch[s] else k_s * inverse_h * inverse_h
            start, at_stop, level_k = m_s * inverse_h, (m_s + k_s * stop_s) * inverse_h, level * k_s
            low_share, low_travel, most, total = 1e9, 1e9, 0.0, 0.0
            wobble = sigma[i] * sigma[i]
            give = (stiffness + limb[i]) / EFFECTIVE_WIDTHS
            for j in range(directions):
                in_plane = plane[slope[s], j]
                f, d = force[i, j] * in_plane, reach[i, j] * in_plane
                off = inverse_plane[slope[s], j]
                steeper, shorter = inverse_force[i, j] * off, inverse_reach[i, j] * off
                if touch[s]:
                    x = min(max(d * (1.0 - start * steeper), 0.0), travel_s)
                    share, used, effort = x / travel_s, start, start * steeper
                else:
                    left = travel_s * shorter
                    if f <= start:
                        theta = 0.0
                    elif left < 1.0 and f * (1.0 - (left if power == 1.0 else left**power)) >= at_stop:
                        theta = stop_s
                    elif power == 1.0:
                        theta = min(max(_straight(f * h_s, h_s * h_s * f * shorter, m_s, k_s), 0.0), stop_s)
                    else:
                        theta = _bent(f, d, (m_s, k_s, h_s, stop_s), power)
                    x = travel_s if theta == stop_s else h_s * _sine(theta)
                    share = theta * inverse_stop
                    used = (m_s + k_s * theta) * inverse_h
                    effort = (m_s + level_k * theta) * inverse_h * steeper
                usable = x - dead
                bits = 0.0
                if usable > 0.0:
                    unsteady = noise * used
                    bits = math.log2(1.0 + usable * give / math.sqrt(wobble + unsteady * unsteady))
                total += weight[j] * bits
                if needed[j]:
                    low_share = min(low_share, share)
                    low_travel = min(low_travel, x)
                    most = max(most, effort)
                if full or i == 0:
                    reach_out[s, i, j] = share
                    effort_out[s, i, j] = effort
                    bits_out[s, i, j] = bits
            plain = math.log2(weakest_rule / max(low_share, 1e-3))
            widened = max(
                math.log2(widened_rule / max(low_share, 1e-3)), math.log2(travel_rule / max(low_travel, 1e-5))
            )
            short = max(0.0, min(plain, widened)) + max(0.0, math.log2(most / effort_rule)) + static[s]
            rate = 0.0
            if not touch[s]:  # a lifted finger gives no input
                edge = start + zone[s] * (at_stop - start)
                rate = _crossings_per_min(edge, rest[i], sigma[i], crossing_hz[i])
                above = 0
                for peak in spasm_peaks:
                    above += peak > edge
                if len(spasm_peaks) == 1 and spasm_peaks[0] > 0.0:
                    rate += spasm_per_min * min(max(1.0 - edge / spasm_peaks[0], 0.0), 1.0)
                elif len(spasm_peaks) > 1:
                    rate += spasm_per_min * above / len(spasm_peaks)
            if rate > false_limit:
                short += min(math.log2(rate / false_limit), 9.0)
            rate_out[s, i] = rate
            weighted_out[s, i] = total
            weakest_out[s, i] = low_share
            most_out[s, i] = most
            short_out[s, i] = short
            utility_out[s, i] = total if short <= 0.0 else 0.1 * total - 1.0 - short


fit_kernel = njit(cache=True, parallel=True, nogil=True, error_model="numpy", fastmath=_FAST)(_kernel)
"""All cores: for the many."""
_alone = FunctionType(_kernel.__code__, globals(), "_alone")
_alone.__qualname__ = "_alone"  # the cache on disk goes by this name: under one name each would load the other's code
fit_kernel_alone = njit(cache=True, nogil=True, error_model="numpy", fastmath=_FAST)(_alone)
"""One core: for a few set-ups, where waking the others takes longer than the work."""
