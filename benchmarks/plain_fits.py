"""Every fit as a straightforward Python loop: the same formulas, one number at a time.

The peer of the compiled, chunked version in `benchmarks/all_fits.py`, and its independent check in the tests.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy.special import i0e

from stickwright.mechanics.setups import SetupArrays
from stickwright.mechanics.site_inputs import Rules, SiteInputs


@dataclass(frozen=True)
class PlainFit:
    """Draws of one set-up at one site."""

    weighted_bits: list[float]
    weakest: list[float]
    most_effort: list[float]
    false_rate: list[float]
    utility: list[float]


def crossing(force: float, reach: float, m: float, k: float, h: float, stop: float) -> float:
    """Angle where push needed meets push available (straight fall-off), by bisection."""

    def lack(theta: float) -> float:
        return (m + k * theta) / h - force * (1.0 - h * math.sin(theta) / reach)

    if force <= m / h:
        return 0.0
    if lack(stop) <= 0.0:
        return stop
    low, high = 0.0, stop
    theta = 0.5 * stop
    for _ in range(100):
        value = lack(theta)
        if value > 0.0:
            high = theta
        else:
            low = theta
        new = theta - value / (k / h + force * h * math.cos(theta) / reach)
        if not low < new < high:
            new = 0.5 * (low + high)
        if abs(new - theta) < 1e-15:
            break
        theta = new
    return theta


def plain_fit(place: int, zone: float, setups: SetupArrays, site: SiteInputs, rules: Rules) -> PlainFit:
    """One set-up at one site, every draw and direction in turn."""
    m, k = float(setups.start_moment_nm[place]), float(setups.stiffness_nm_per_rad[place])
    h, stop = float(setups.height_m[place]), float(setups.stop_rad[place])
    travel = h * math.sin(stop)
    start, full = m / h, (m + k * stop) / h
    plane, weight, needed = site.plane[setups.slope[place]].tolist(), site.weight.tolist(), site.needed.tolist()
    forces, reaches = site.force_n.tolist(), site.reach_m.tolist()  # plain numbers: quicker in a loop than numpy's
    involuntary, limb = site.involuntary_n.tolist(), site.limb_n_per_m.tolist()
    out = PlainFit([], [], [], [], [])
    for i in range(len(forces)):
        total, weakest, shortest, most = 0.0, math.inf, math.inf, 0.0
        for j in range(len(weight)):
            force, reach = forces[i][j] * plane[j], reaches[i][j] * plane[j]
            theta = crossing(force, reach, m, k, h, stop)
            x, used = h * math.sin(theta), (m + k * theta) / h
            effort = (m + k * site.level_share * theta) / h / force
            sigma = math.hypot(involuntary[i], site.noise_share * used) / (k / h**2 + limb[i])
            usable = max(0.0, x - zone * travel)
            total += weight[j] * math.log2(1.0 + usable / (4.133 * sigma))
            if needed[j]:
                weakest, shortest, most = min(weakest, theta / stop), min(shortest, x), max(most, effort)
        rate = false_rate(start + zone * (full - start), site, i)
        plain = math.log2(rules.weakest_share / max(weakest, 1e-3))
        widened = max(
            math.log2(rules.widened_share / max(weakest, 1e-3)), math.log2(rules.widened_travel_m / max(shortest, 1e-5))
        )
        short = max(0.0, min(plain, widened)) + max(0.0, math.log2(most / rules.effort_share))
        short += min(9.0, max(0.0, math.log2(max(rate, 1e-300) / site.false_limit_per_min)))
        out.weighted_bits.append(total)
        out.weakest.append(weakest)
        out.most_effort.append(most)
        out.false_rate.append(rate)
        out.utility.append(total if short <= 0 else 0.1 * total - 1.0 - short)
    return out


def false_rate(threshold: float, site: SiteInputs, i: int) -> float:
    """False inputs a minute in one draw."""
    s, rest = site.involuntary_n[i], site.rest_n[i]
    if threshold - rest < s:
        return 1e6
    u, m = threshold / s, rest / s
    rate = 60 * math.sqrt(2 * math.pi) * site.crossing_hz[i] * u * math.exp(-0.5 * (u - m) ** 2) * float(i0e(u * m))
    peaks = site.spasm_peak_n
    if site.spasm_per_min and len(peaks) == 1:
        rate += site.spasm_per_min * min(1.0, max(0.0, 1.0 - threshold / peaks[0]))
    elif site.spasm_per_min and peaks:
        rate += site.spasm_per_min * sum(peak > threshold for peak in peaks) / len(peaks)
    return rate


def random_site(rng: np.random.Generator, draws: int, setups: SetupArrays) -> SiteInputs:
    """A plausible invented site, for timing and for the comparison."""
    force = np.exp(rng.normal(0.0, 0.8)) * np.exp(
        0.2 * rng.standard_normal((1, 8)) + 0.1 * rng.standard_normal((draws, 8))
    )
    reach = 0.012 * np.exp(0.2 * rng.standard_normal((1, 8)) + 0.1 * rng.standard_normal((draws, 8)))
    weight = rng.dirichlet(np.full(8, 3.0))
    middle = float(np.median(force))
    return SiteInputs(
        force_n=force, reach_m=reach, weight=weight, needed=weight >= 0.0625,
        plane=np.ones((len(setups.slopes_rad), 8)), level_share=float(rng.uniform(0.5, 1.0)),
        rest_n=0.02 * middle * np.exp(0.1 * rng.standard_normal(draws)),
        involuntary_n=0.03 * middle * np.exp(0.1 * rng.standard_normal(draws)),
        crossing_hz=np.full(draws, 1.5), limb_n_per_m=0.7 * middle / 0.012 * np.exp(0.2 * rng.standard_normal(draws)),
        noise_share=0.05, fall_off=1.0, spasm_per_min=0.0, spasm_peak_n=(), false_limit_per_min=1.0,
    )  # fmt: skip
