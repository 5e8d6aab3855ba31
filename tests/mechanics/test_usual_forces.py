"""Resting and involuntary force: what was read, and how far what stands in for it may be off."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from stickwright.mechanics.default_values import Steadiness
from stickwright.mechanics.usual_forces import USUAL_CROSSING_HZ, USUAL_FACTORS, involuntary_force, resting_force
from stickwright.model.parts import USUAL_FACTOR
from stickwright.model.player import Site


def site(**more: object) -> Site:
    return Site.model_validate({"name": "here", "part": "fingertip", **more})


@pytest.mark.parametrize("force_n", [[0.02], [0.010, 0.011, 0.012], [0.02, 0.05, 0.03, 0.04]])
def test_the_interval_of_a_resting_force_is_even_in_the_logarithm(force_n: list[float]) -> None:
    """A force is above 0: so many times smaller as larger; and the draws the sites are judged on have that interval, too."""
    told, drawn = resting_force(site(rest=[{"force_n": force_n}]), np.random.default_rng(4), 40_000, [])
    assert told.value == pytest.approx(np.mean(force_n))
    assert 0 < told.low < told.value < told.high
    assert told.low * told.high == pytest.approx(told.value**2, rel=1e-9)
    low, high = np.quantile(drawn, (0.025, 0.975))
    assert (low, high) == (pytest.approx(told.low, rel=0.05), pytest.approx(told.high, rel=0.05))


def test_a_usual_figure_may_be_off_by_its_factor_either_way() -> None:
    """Of what nobody measured, 95 of 100 draws lie within so many times the usual figure; the nine factors are the middles of nine equal
    parts of that range, by scipy's normal quantiles."""
    sigma, crossing, shaken, crossed = involuntary_force(site(), np.random.default_rng(5), 40_000, [], Steadiness())
    assert np.quantile(shaken, (0.025, 0.975)) == pytest.approx(
        [sigma.value / USUAL_FACTOR, sigma.value * USUAL_FACTOR], rel=0.05
    )
    assert (sigma.low, sigma.high) == pytest.approx((sigma.value / USUAL_FACTOR, sigma.value * USUAL_FACTOR))
    assert (crossing.low, crossing.value, crossing.high) == pytest.approx((0.75, USUAL_CROSSING_HZ, 3.0))
    assert np.quantile(crossed, (0.025, 0.975)) == pytest.approx([0.75, 3.0], rel=0.05)
    resting, weights = resting_force(site(), np.random.default_rng(6), 40_000, [])
    assert np.quantile(weights, (0.025, 0.975)) == pytest.approx(
        [resting.value / USUAL_FACTOR, resting.value * USUAL_FACTOR], rel=0.05
    )
    parts = stats.norm.ppf((np.arange(9) + 0.5) / 9) * math.log(USUAL_FACTOR) / stats.norm.ppf(0.975)
    assert pytest.approx(np.exp(parts), rel=1e-3) == USUAL_FACTORS
