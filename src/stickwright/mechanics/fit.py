"""How well every set-up fits a site, on every draw of the readings.

One set-up in one direction: where push needed meets push available; what the player can output there;
how steady that is; in bits. Over directions: weakest, weighted bits, effort. Beside them the false input.
Set-ups are worked in chunks, so that memory stays bounded however many there are.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.mechanics.fit_kernel import (
    ALWAYS,
    FAR_SD,
    KernelFigures,
    KernelResults,
    KernelSetups,
    KernelSite,
    fit_kernel,
    fit_kernel_alone,
)
from stickwright.mechanics.setups import SetupArrays
from stickwright.mechanics.site_inputs import Rules, SiteInputs, favourable
from stickwright.mechanics.unread import doubted_utility

__all__ = [
    "ALWAYS", "DEAD_ZONES", "Detail", "Evaluated", "detail", "evaluate", "false_per_min",
    "spasms_above_per_min",
]  # fmt: skip

Array = NDArray[np.float64]

DEAD_ZONES = np.arange(0, 9) * 0.05
"""Inner dead zones tried, share of the throw; above 40 % little of the stick is left (assumed)."""
_BY_DIRECTION, _BY_DRAW = 3, 6
"""Arrays of `KernelResults` that have a place for each direction, and the others."""
CELLS = 256_000
"""Set-ups times draws worked at a time."""
WORTH_ALL_CORES = 10_000
"""Set-ups times draws from which on all cores are woken."""
CERTAINTY = 0.7
"""Share of the draws of resting force, and of involuntary force, that a dead zone is chosen to stand (assumed)."""


@dataclass(frozen=True, eq=False)
class Evaluated:
    """All set-ups at one site.

    Parameters
    ----------
    dead_zone : array, shape (s,)
        Smallest that keeps false input within the limit, else the largest.
    reach_share, effort, bits : array, shape (s, k)
        Best single figures.
    weighted_bits, weakest, most_effort, false_rate : array, shape (s,)
        Best single figures.
    shortfall : array, shape (s,)
        0 when every rule is kept by what was read, whatever the assumed figures are; else how far off in doublings.
    assumed_shortfall : array, shape (s,)
        The same at the assumed figures.
    utility : array, shape (s,)
        Of the best single figures: weighted bits when all rules are kept, fewer when one is broken at assumed figures only,
        below -1 when one is broken by what was read.
    mean_utility, admissible : array, shape (s,)
        Over the draws.
    stick_utility : array, shape (sticks, draws)
        Best utility any set-up of the stick has in that draw.
    """

    dead_zone: Array
    reach_share: Array
    effort: Array
    bits: Array
    weighted_bits: Array
    weakest: Array
    most_effort: Array
    false_rate: Array
    shortfall: Array
    assumed_shortfall: Array
    utility: Array
    mean_utility: Array
    admissible: Array
    stick_utility: Array


@dataclass(frozen=True, eq=False)
class Detail:
    """Draws of a few set-ups.

    Parameters
    ----------
    reach_share, effort, bits : array, shape (s, draws, k)
        As in `Evaluated`.
    weighted_bits, weakest, most_effort, false_rate, utility : array, shape (s, draws)
        As in `Evaluated`.
    """

    reach_share: Array
    effort: Array
    bits: Array
    weighted_bits: Array
    weakest: Array
    most_effort: Array
    false_rate: Array
    utility: Array


def false_per_min(threshold_n: Array, rest_n: Array, involuntary_n: Array, crossing_hz: Array) -> Array:
    """Times a minute that involuntary force about a resting force leaves the circle of the threshold.

    Parameters
    ----------
    threshold_n : array
        Force at the edge of the dead zone: start force + z (full - start).
    rest_n : array
        Length of the resting force.
    involuntary_n : array
        Rms per axis.
    crossing_hz : array
        Zero-crossing frequency, upward crossings a second.

    Returns
    -------
    array
        Crossings a minute; 1e6, 'always on', where the threshold lies within one sd of the resting force.

    Notes
    -----
    Source: envelope crossings of a two-dimensional Gaussian [rice-1944], with a constant added:
    sqrt(2 pi) f0 (U/s) exp(-(U^2 + m^2)/(2 s^2)) I0(U m/s^2) a second. Assumed: Gaussian, the same in all directions.

    Examples
    --------
    >>> round(float(false_per_min(np.array(0.24), np.array(0.0), np.array(0.07), np.array(1.2))), 1)
    1.7
    """
    from scipy.special import i0e

    with np.errstate(divide="ignore", invalid="ignore"):
        u, m = np.broadcast_arrays(threshold_n / involuntary_n, rest_n / involuntary_n)
        rate = np.zeros(u.shape)
        near = np.abs(u - m) < FAR_SD
        u, m = u[near], m[near]
        often = np.broadcast_to(crossing_hz, rate.shape)[near]
        rate[near] = 60 * math.sqrt(2 * math.pi) * often * u * np.exp(-0.5 * (u - m) ** 2) * i0e(u * m)
    always = (threshold_n - rest_n) < involuntary_n
    still = involuntary_n <= 0
    result: Array = np.where(still, np.where(threshold_n > rest_n, 0.0, ALWAYS), np.where(always, ALWAYS, rate))
    return result


def spasms_above_per_min(threshold_n: Array, per_min: float, peak_n: tuple[float, ...]) -> Array:
    """Spasms a minute that pass the threshold.

    Parameters
    ----------
    threshold_n : array
        Force at the edge of the dead zone.
    per_min : float
        Spasms a minute.
    peak_n : tuple of float
        Peaks read; a single one is the highest seen, and peaks are then taken as even from 0 up to it (assumed).
    """
    if per_min <= 0 or not peak_n:
        return np.zeros(np.shape(threshold_n))
    if len(peak_n) == 1:
        share = np.clip(1.0 - threshold_n / peak_n[0], 0.0, 1.0) if peak_n[0] > 0 else np.zeros(np.shape(threshold_n))
    else:
        peaks = np.sort(np.asarray(peak_n))
        share = 1.0 - np.searchsorted(peaks, threshold_n, side="right") / len(peaks)
    above: Array = per_min * share
    return above


def _scale(setups: SetupArrays, site: SiteInputs) -> Array:
    """Factor on each stick's forces in each draw."""
    if site.stick_scale is not None:
        return site.stick_scale
    return np.ones((len(setups.kit.stick), len(site.rest_n)))


def _false_rate(setups: SetupArrays, site: SiteInputs, zone: Array, draw: slice) -> Array:
    """Crossings and spasms a minute, shape (s, draws)."""
    scale = _scale(setups, site)[setups.stick, draw]
    start, full = setups.start_force_n[:, None] * scale, setups.full_force_n[:, None] * scale
    threshold = start + zone[:, None] * (full - start)
    rate = false_per_min(
        threshold, site.rest_n[None, draw], site.involuntary_n[None, draw], site.crossing_hz[None, draw]
    )
    rate = rate + spasms_above_per_min(threshold, site.spasm_per_min, site.spasm_peak_n)
    lifted: Array = np.where(setups.touch[:, None], 0.0, rate)  # a lifted finger gives no input
    return lifted


def _chosen_zone(setups: SetupArrays, site: SiteInputs) -> Array:
    """The smallest dead zone that keeps false input within the limit with some certainty, else at the best
    figures, else the largest; never smaller than where the stick stays by friction."""
    doubtful = replace(
        site,
        rest_n=np.quantile(site.rest_n, [CERTAINTY]),
        involuntary_n=np.quantile(site.involuntary_n, [CERTAINTY]),
        crossing_hz=np.quantile(site.crossing_hz, [CERTAINTY]),
    )
    home = DEAD_ZONES[None, :] >= setups.home_share[:, None]
    keeps = [
        np.stack(
            [_false_rate(setups, here, np.full(len(setups), zone), slice(0, 1))[:, 0] for zone in DEAD_ZONES], axis=1
        )
        <= site.false_limit_per_min
        for here in (doubtful, site)
    ]
    last = len(DEAD_ZONES) - 1
    certain, likely = ((kept & home) for kept in keeps)
    first = np.where(
        certain.any(axis=1), certain.argmax(axis=1), np.where(likely.any(axis=1), likely.argmax(axis=1), last)
    )
    chosen: Array = DEAD_ZONES[first].astype(np.float64)
    return chosen


def _run(setups: SetupArrays, site: SiteInputs, zone: Array, rules: Rules, *, full: bool) -> KernelResults:
    number, draws, directions = len(setups), *site.force_n.shape
    shape = (number, draws if full else 1, directions)
    out = KernelResults(
        *(np.empty(shape) for _ in range(_BY_DIRECTION)), *(np.empty((number, draws)) for _ in range(_BY_DRAW))
    )
    rules = site.rules(rules)
    kernel = fit_kernel if number * draws >= WORTH_ALL_CORES else fit_kernel_alone
    kernel(
        KernelSetups(
            start_moment_nm=setups.start_moment_nm, stiffness_nm_per_rad=setups.stiffness_nm_per_rad,
            height_m=setups.height_m, stop_rad=setups.stop_rad, travel_m=setups.travel_m, touch=setups.touch,
            slope=setups.slope, stick=setups.stick, stick_scale=_scale(setups, site), zone=zone,
            static=np.zeros(number) if site.static is None else site.static,
        ),
        KernelSite(
            force_n=site.force_n, reach_m=site.reach_m, weight=site.weight, needed=site.needed, plane=site.plane,
            involuntary_n=site.involuntary_n, limb_n_per_m=site.limb_n_per_m, rest_n=site.rest_n,
            crossing_hz=site.crossing_hz, spasm_peak_n=np.asarray(site.spasm_peak_n, dtype=np.float64),
        ),
        KernelFigures(
            level_share=float(site.level_share), noise_share=float(site.noise_share), fall_off=float(site.fall_off),
            spasm_per_min=float(site.spasm_per_min), false_limit_per_min=float(site.false_limit_per_min),
            weakest_share=float(rules.weakest_share), widened_share=float(rules.widened_share),
            widened_travel_m=float(rules.widened_travel_m), effort_share=float(rules.effort_share),
        ),
        out, full,
    )  # fmt: skip
    return out


def _judged(
    setups: SetupArrays, site: SiteInputs, zone: Array, rules: Rules, bits: Array, shortfall: Array
) -> tuple[Array, Array, Array]:
    """Shortfall by what was read, shortfall at the assumed figures, utility; each of shape (s, draws)."""
    doubt = np.zeros(len(setups)) if site.static_doubt is None else site.static_doubt
    read, assumed = shortfall, shortfall + doubt[:, None]
    off = np.flatnonzero((shortfall > 0).any(axis=1))
    better = [
        _run(setups.take(off), one.at(off), zone[off], rules, full=False).shortfall
        for one in (favourable(site) if len(off) else ())
    ]
    if better:
        read = shortfall.copy()
        read[off] = np.minimum.reduce([shortfall[off], *better])
    kept = np.where(assumed <= 0, bits, doubted_utility(bits, assumed))
    utility: Array = np.where(read <= 0, kept, 0.1 * bits - 1.0 - shortfall)
    return read, assumed, utility


def evaluate(
    setups: SetupArrays, site: SiteInputs, rules: Rules | None = None, *, chunk: int | None = None
) -> Evaluated:
    """Every set-up at one site, all draws.

    Parameters
    ----------
    setups : SetupArrays
        What could be built.
    site : SiteInputs
        Ability and demand as numbers; ``static`` has one entry a set-up.
    rules : Rules, optional
        Limits of practice.
    chunk : int, optional
        Set-ups worked at a time; `CELLS` over the draws when not given, so that memory stays about 20 MB.

    Returns
    -------
    Evaluated
    """
    rules = rules or Rules()
    sticks, draws = len(setups.kit.stick), site.force_n.shape[0]
    chunk = chunk or max(1, CELLS // draws)
    parts: list[tuple[Array, ...]] = []
    stick_utility = np.full((sticks, draws), -math.inf)
    for start in range(0, len(setups), chunk):
        places = np.arange(start, min(start + chunk, len(setups)))
        some = setups.take(places)
        here = site.at(places)
        zone = _chosen_zone(some, here)
        reach, effort, bits, weighted, weakest, most, short, _, rate = _run(some, here, zone, rules, full=False)
        short, assumed, utility = _judged(some, here, zone, rules, weighted, short)
        parts.append(
            (
                zone, reach[:, 0], effort[:, 0], bits[:, 0], weighted[:, 0].copy(), weakest[:, 0].copy(), most[:, 0].copy(),
                rate[:, 0].copy(), short[:, 0].copy(), assumed[:, 0].copy(), utility[:, 0].copy(), utility.mean(axis=1),
                (short <= 0).mean(axis=1),
            )
        )  # fmt: skip
        for stick in np.unique(some.stick):
            best_there = utility[some.stick == stick].max(axis=0)
            np.maximum(stick_utility[stick], best_there, out=stick_utility[stick])
    columns = (np.concatenate(column) for column in zip(*parts, strict=True))
    return Evaluated(*columns, stick_utility)  # type: ignore[call-arg]


def detail(setups: SetupArrays, site: SiteInputs, zone: Array, rules: Rules | None = None) -> Detail:
    """All draws of a few set-ups, for their intervals.

    Parameters
    ----------
    setups : SetupArrays
        Those to be reported.
    site : SiteInputs
        As for `evaluate`, ``static`` with one entry for each of them.
    zone : array, shape (s,)
        Dead zones chosen.
    rules : Rules, optional
        Limits of practice.
    """
    rules = rules or Rules()
    reach, effort, bits, weighted, weakest, most, short, _, rate = _run(setups, site, zone, rules, full=True)
    _, _, utility = _judged(setups, site, zone, rules, weighted, short)
    return Detail(
        reach_share=reach,
        effort=effort,
        bits=bits,
        weighted_bits=weighted,
        weakest=weakest,
        most_effort=most,
        false_rate=rate,
        utility=utility,
    )
