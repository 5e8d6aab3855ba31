"""Force without a gauge: the benched sticks are the gauge.

How far the player got on two or three sticks of known force brackets force and reach; what shook
how much on two sticks of different stiffness tells the limb's own stiffness.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.message import message
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem
from stickwright.mechanics.equilibrium import crossing_angle, lever_moments
from stickwright.model.parts import Comfort

__all__ = ["SHARE_SD", "Bracket", "StickResult", "TriedStick", "bracket", "limb_stiffness"]

Array = NDArray[np.float64]

SHARE_SD = 0.06
"""Scatter of the share of the throw reached, from one push to the next: assumed, more when repeats say so."""
ONCE_SCATTER = 0.10
"""Scatter of a tremor figure that was recorded once: assumed."""


@dataclass(frozen=True)
class TriedStick:
    """A benched stick as it was tried: figures at the contact point with what was on it."""

    start_force_n: float
    full_force_n: float
    travel_m: float
    height_m: float

    @property
    def stiffness_n_per_m(self) -> float:
        return (self.full_force_n - self.start_force_n) / self.travel_m


@dataclass(frozen=True)
class StickResult:
    """How far the player got on one benched stick in one direction.

    Parameters
    ----------
    start_force_n, full_force_n, travel_m, height_m : float
        The stick as it was tried, at the contact point.
    reached_share : tuple of float
        Shares of the throw; 1 is the stop, which only says 'at least'.
    """

    start_force_n: float
    full_force_n: float
    travel_m: float
    height_m: float
    reached_share: tuple[float, ...]


@dataclass(frozen=True, eq=False)
class Bracket:
    """What the sticks say of force and reach in one direction, together.

    Parameters
    ----------
    force_n, reach_m : array, shape (g,), (h,)
        The grid, evenly spaced in the logarithm.
    weight : array, shape (g, h)
        Probability of each pair, adding up to 1.
    """

    force_n: Array
    reach_m: Array
    weight: Array

    def draws(self, rng: np.random.Generator, n: int) -> tuple[Array, Array]:
        """Pairs of force and reach, shapes (n,), jittered within a grid cell."""
        picked = rng.choice(self.weight.size, size=n, p=self.weight.ravel())
        rows, columns = np.unravel_index(picked, self.weight.shape)
        step_f = math.log(self.force_n[1] / self.force_n[0])
        step_d = math.log(self.reach_m[1] / self.reach_m[0])
        force = self.force_n[rows] * np.exp(step_f * (rng.random(n) - 0.5))
        reach = self.reach_m[columns] * np.exp(step_d * (rng.random(n) - 0.5))
        return force, reach

    def estimates(self, n: int) -> tuple[Estimate, Estimate]:
        """Force and reach with 95 % intervals; `n` is the number of results behind them."""
        out = []
        for values, weight in ((self.force_n, self.weight.sum(axis=1)), (self.reach_m, self.weight.sum(axis=0))):
            total = np.cumsum(weight)
            low, middle, high = (float(np.interp(share, total, values)) for share in (0.025, 0.5, 0.975))
            out.append(Estimate(middle, low, high, 0.95, n, assumed=message(EstimateNotes.bracketed)))
        return out[0], out[1]

    def log_moments(self) -> tuple[float, float, float, float]:
        """Mean and sd of the log force, mean and sd of the log reach."""
        out: list[float] = []
        for values, weight in ((self.force_n, self.weight.sum(axis=1)), (self.reach_m, self.weight.sum(axis=0))):
            logs = np.log(values)
            mean = float((weight * logs).sum())
            out += [mean, math.sqrt(max(float((weight * (logs - mean) ** 2).sum()), 1e-12))]
        return out[0], out[1], out[2], out[3]


def bracket(
    results: Sequence[StickResult],
    comfort: Comfort,
    *,
    force_n: Sequence[float] = (),
    reach_m: Sequence[float] = (),
    scatter: float = 0.15,
    gauge_step_n: float = 0.0,
) -> Bracket:
    """Force and reach in one direction from how far the player got on benched sticks.

    A result short of the stop puts force and reach on a curve; a result at the stop only says that they
    are at least so large. Two sticks of different force cross. The part's usual band, five times wider
    either way, is all that is known beforehand.

    Parameters
    ----------
    results : sequence of StickResult
        At least one.
    comfort : Comfort
        Usual band of the body part.
    force_n, reach_m : sequence of float
        Gauge and tape readings of the same direction, when there are any.
    scatter : float
        Relative scatter of a gauge or tape reading.
    gauge_step_n : float
        Step of the gauge, newton: adds its rounding.

    Returns
    -------
    Bracket
        Joint distribution of the two.

    Raises
    ------
    BadInput
        No result given.

    Notes
    -----
    Source: Bayes' rule on a grid with the crossing model of `crossing_angle`. Assumed: scatter of a reached share
    `SHARE_SD`, straight fall-off of force along the reach.
    """
    if not any(result.reached_share for result in results):
        raise BadInput(
            Problem(
                "on_stick",
                message(StickProblems.found, what="no_share"),
                message(StickProblems.expected, what="reached"),
            )
        )
    force = np.geomspace(comfort.force_low_n / 5, comfort.force_high_n * 5, 161)
    reach = np.geomspace(comfort.travel_low_m / 5, comfort.travel_high_m * 5, 121)
    log_weight = _prior(force, comfort.force_low_n, comfort.force_high_n)[:, None] + _prior(
        reach, comfort.travel_low_m, comfort.travel_high_m
    )
    for result in results:
        log_weight = log_weight + _share_likelihood(result, force, reach)
    for values, readings, axis in ((force, force_n, 0), (reach, reach_m, 1)):
        for reading in readings:
            step = gauge_step_n if axis == 0 else 0.0  # the tape has no newton steps
            rounding = step / math.sqrt(12) / max(reading, step, 1e-9)
            floor = max(reading, step / 2, 1e-6)
            log = -0.5 * np.log(values / floor) ** 2 / (scatter**2 + rounding**2)
            log_weight = log_weight + (log[:, None] if axis == 0 else log[None, :])
    weight = np.exp(log_weight - log_weight.max())
    return Bracket(force, reach, weight / weight.sum())


def _prior(values: Array, low: float, high: float) -> Array:
    """Flat in the logarithm over the usual band, falling away outside it."""
    outside = np.maximum(np.log(low / values), 0.0) + np.maximum(np.log(values / high), 0.0)
    prior: Array = -0.5 * (outside / 0.8) ** 2
    return prior


def _share_likelihood(result: StickResult, force: Array, reach: Array) -> Array:
    from scipy import stats

    moment, stiffness, stop = lever_moments(result.start_force_n, result.full_force_n, result.travel_m, result.height_m)
    told = crossing_angle(force[:, None], reach[None, :], moment, stiffness, result.height_m, stop) / stop
    shares = np.asarray(result.reached_share)
    sd = max(SHARE_SD, float(shares.std(ddof=1)) if len(shares) > 2 else 0.0)
    log = np.zeros(told.shape)
    for share in shares:
        if share >= 0.995:  # the stop: what lies beyond cannot be seen
            log += np.where(told >= 1.0, 0.0, stats.norm.logsf((1.0 - told) / sd))
        elif share <= 0.005:  # did not start: what is missing cannot be seen either
            log += np.where(told <= 0.0, 0.0, stats.norm.logsf(told / sd))
        else:
            log += -0.5 * ((told - share) / sd) ** 2
    return log


def limb_stiffness(
    tremor_m: Sequence[Sequence[float]], stick_stiffness_n_per_m: Sequence[float], rng: np.random.Generator
) -> Estimate:
    """The limb's own stiffness from the same tremor on two sticks of different stiffness.

    Below about 3 Hz the same involuntary force moves each stick by force/(stick + limb), so
    kl = (s2 k2 - s1 k1)/(s1 - s2).

    Parameters
    ----------
    tremor_m : two sequences of float
        Rms movement of the contact point on each stick, repeats.
    stick_stiffness_n_per_m : two floats
        Stiffness at the contact point.
    rng : numpy Generator
        For the interval.

    Returns
    -------
    Estimate
        N/m; indicative, as inertia matters above 3 Hz.

    Raises
    ------
    BadInput
        The two movements cannot be told apart, or the answer is not a stiffness.

    Notes
    -----
    Source: springs side by side; parametric bootstrap with a scatter pooled over both, 10 % when neither was
    repeated (assumed).
    """
    first, second = (np.asarray(values, dtype=float) for values in tremor_m)
    k1, k2 = stick_stiffness_n_per_m
    df = len(first) + len(second) - 2
    squares = sum(float(((np.log(v) - np.log(v).mean()) ** 2).sum()) for v in (first, second))
    scatter = math.sqrt(squares / df) if df > 0 else ONCE_SCATTER
    stretch = np.sqrt(df / rng.chisquare(df, 4000)) if df > 0 else np.ones(4000)
    s1, s2 = (
        np.exp(np.log(v).mean() + scatter * stretch * rng.standard_normal(4000) / math.sqrt(len(v)))
        for v in (first, second)
    )
    apart = np.log(s1 / s2)
    low, high = np.quantile(apart, (0.025, 0.975))
    m1, m2 = math.exp(np.log(first).mean()), math.exp(np.log(second).mean())
    alike = bool(low <= 0 <= high)
    found = message(StickProblems.movements, first_m=m1, second_m=m2, first_n_per_m=k1, second_n_per_m=k2, alike=alike)
    if alike:
        raise BadInput(
            Problem(
                message(StickProblems.step, what="limb_stiffness"),
                found,
                message(StickProblems.expected, what="less_movement"),
                message(StickProblems.remedy, what="sticks_apart"),
            )
        )
    stiffness = (s2 * k2 - s1 * k1) / (s1 - s2)
    middle = (m2 * k2 - m1 * k1) / (m1 - m2)
    if middle <= 0:
        raise BadInput(
            Problem(
                message(StickProblems.step, what="limb_stiffness"),
                found,
                message(StickProblems.expected, what="falls_less"),
                message(StickProblems.remedy, what="same_posture"),
            )
        )
    kept = stiffness[stiffness > 0]
    ends = np.quantile(kept, (0.025, 0.975))
    return Estimate(float(middle), float(ends[0]), float(ends[1]), 0.95, len(first) + len(second),
                    assumed=message(EstimateNotes.tremor_on_two, repeated=df > 0, scatter_share=ONCE_SCATTER))  # fmt: skip
