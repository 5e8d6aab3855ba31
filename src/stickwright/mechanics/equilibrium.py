"""Where the push needed meets the push available: the centre of every fit.

Needed to hold out at angle theta, pushing out: (M + kappa*theta)/h with M = preload + friction moment.
Available at travel x = h*sin(theta): F*(1 - (x/d)^p), a straight fall-off (p = 1) unless readings along
the reach say otherwise.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

__all__ = ["best_lever_ratio", "crossing_angle", "lever_moments", "linear_share"]

Array = NDArray[np.float64]


def lever_moments(
    start_force_n: float, full_force_n: float, travel_m: float, contact_height_m: float
) -> tuple[float, float, float]:
    """Start moment, stiffness and stop angle of a stick from the figures at its contact point.

    Parameters
    ----------
    start_force_n, full_force_n : float
        Pushing out, at the centre and at the stop (friction included).
    travel_m, contact_height_m : float
        Travel of the contact point from centre to stop, and its height above the pivot.

    Returns
    -------
    tuple of float
        Preload plus friction moment (N m), stiffness (N m/rad), stop angle (rad).

    Notes
    -----
    Source: equilibrium of moments [hibbeler-statics]; travel = h sin(theta).

    Examples
    --------
    >>> [round(float(x), 6) for x in lever_moments(0.409091, 0.805757, 0.009297602, 0.022)]
    [0.009, 0.02, 0.436332]
    """
    stop = math.asin(min(1.0, travel_m / contact_height_m))
    return (
        start_force_n * contact_height_m,
        (full_force_n - start_force_n) * contact_height_m / stop,
        stop,
    )


def crossing_angle(
    force_n: Array | float,
    reach_m: Array | float,
    start_moment_nm: Array | float,
    stiffness_nm_per_rad: Array | float,
    height_m: Array | float,
    stop_rad: Array | float,
    *,
    fall_off: float = 1.0,
) -> Array:
    """Angle at which the player's push equals the push needed, between the centre and the stop.

    Parameters
    ----------
    force_n, reach_m : float or array
        Comfortable force at the centre and comfortable free reach; shapes broadcast.
    start_moment_nm, stiffness_nm_per_rad, height_m, stop_rad : float or array
        The lever, height with topper and extension.
    fall_off : float, default 1
        Power p of the fall-off of force along the reach (1: straight, assumed unless measured).

    Returns
    -------
    array
        Radian: 0 when the stick does not start, the stop angle when it is reached.

    Notes
    -----
    Source: design of this project: balance of push needed and available; Newton's method, bracketed.

    Examples
    --------
    >>> theta = crossing_angle(0.9, 0.012, 0.009, 0.020, 0.022, math.radians(25))
    >>> round(math.degrees(theta.item()), 6)
    11.034924
    """
    given = (force_n, reach_m, start_moment_nm, stiffness_nm_per_rad, height_m, stop_rad)
    f, d, m, k, h, stop = np.broadcast_arrays(*(np.asarray(one, dtype=float) for one in given))

    def lack(theta: Array) -> Array:
        with np.errstate(invalid="ignore", over="ignore"):
            way = np.clip(h * np.sin(theta) / d, 0.0, None)
        left = 1.0 - (way if straight else way**fall_off)
        missing: Array = (m + k * theta) / h - f * left
        return missing

    def bend(theta: Array) -> Array:
        slope: Array = fall_off * np.clip(h * np.sin(theta) / d, 1e-300, None) ** (fall_off - 1)
        return slope

    straight = fall_off == 1.0
    starts = f * h > m
    stops = starts & (lack(stop) <= 0)
    result: Array = np.where(stops, stop, 0.0)
    between = starts & ~stops  # only there is anything to be solved
    f, d, m, k, h, high = (one[between] for one in (f, d, m, k, h, stop))
    low, theta = np.zeros(f.shape), 0.5 * high
    for _ in range(60):
        value = lack(theta)
        high = np.where(value > 0, theta, high)
        low = np.where(value <= 0, theta, low)
        rise = k / h + f * h * np.cos(theta) / d * (1.0 if straight else bend(theta))
        with np.errstate(divide="ignore", invalid="ignore"):
            step = theta - value / rise
        inside = (step >= low) & (step <= high)
        new = np.where(inside, step, 0.5 * (low + high))
        if np.all(np.abs(new - theta) < 1e-13):
            break
        theta = new
    result[between] = theta
    return result


def linear_share(
    force_n: Array | float, reach_m: Array | float, start_force_n: float, full_force_n: float, travel_m: float
) -> Array:
    """Share of the travel reached, small angles: x* = (F - Fs)/(F/d + ks), clipped to the travel.

    Parameters
    ----------
    force_n, reach_m : float or array
        Comfortable force at the centre and free reach.
    start_force_n, full_force_n, travel_m : float
        The stick at its contact point.
    """
    f, d = np.asarray(force_n, dtype=float), np.asarray(reach_m, dtype=float)
    stiffness = (full_force_n - start_force_n) / travel_m
    share: Array = np.clip((f - start_force_n) / (f / d + stiffness) / travel_m, 0.0, 1.0)
    return share


def best_lever_ratio(
    force_n: Array | float, reach_m: Array | float, start_force_n: float, full_force_n: float, travel_m: float
) -> Array:
    """Lever ratio that brings the stick furthest in one direction, in closed form.

    With the contact height multiplied by L, forces divide by L, travel multiplies by L. The share reached,
    r(L) = (F L - Fs)/(a L^2 + b) with a = F T/d and b = Ff - Fs, is largest at
    L* = Fs/F + sqrt((Fs/F)^2 + b/a).

    Parameters
    ----------
    force_n, reach_m : float or array
        Comfortable force at the centre and free reach.
    start_force_n, full_force_n, travel_m : float
        The bare stick at its contact point.

    Returns
    -------
    array
        Above 1: lengthen. Below 1: reach, not force, limits; shorten.

    Notes
    -----
    Source: derivative of r(L) set to zero; small angles, straight fall-off (assumed).

    Examples
    --------
    >>> round(float(best_lever_ratio(0.26, 0.005, 0.16, 0.35, 0.0065)), 3)
    1.585
    """
    f, d = np.asarray(force_n, dtype=float), np.asarray(reach_m, dtype=float)
    ratio = start_force_n / f
    best: Array = ratio + np.sqrt(ratio**2 + (full_force_n - start_force_n) / (f * travel_m / d))
    return best
