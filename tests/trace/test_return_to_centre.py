"""Where the stick comes home to: noise, steps, and another place after each release."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import norm, ttest_1samp

from stickwright.codes.intervals import Intervals
from stickwright.codes.message import message
from stickwright.trace.return_to_centre import home, step_of_levels

EIGHT_BITS = 2 / 2**8


def rounded(values: np.ndarray, step: float) -> np.ndarray:
    return np.round(values / step) * step


def test_one_level_may_lie_anywhere_in_its_step():
    """A rest on one level of a known step: the place is uniform in the step, of which the middle 95 in 100 is told."""
    found = home([np.full(500, 3 * EIGHT_BITS)], EIGHT_BITS)
    assert found.low == pytest.approx(2.525 * EIGHT_BITS, rel=1e-12)
    assert found.high == pytest.approx(3.475 * EIGHT_BITS, rel=1e-12)


def test_without_a_step_a_still_value_tells_nothing():
    """One value throughout and no step known: no interval, and the reason."""
    assert home([np.full(500, 0.1)], 0.0).why == message(Intervals.never_changes, where="rest")
    several = home([np.full(50, 0.1)] * 3, 0.0)
    assert several.why == message(Intervals.never_changes, where="rests")


@pytest.mark.parametrize("noise_steps", [0.25, 0.4, 0.6, 1.5])
def test_one_rest_in_coarse_steps(noise_steps: float):
    """White noise of a quarter of a step to one and a half, centre anywhere: of 300 rests of 400 samples the interval
    holds the true centre in 92 to 98 of 100. A quarter of a step hides how much noise there is: then up to all."""
    rng = np.random.default_rng(21)
    inside = []
    for _ in range(300):
        centre = rng.uniform(-0.06, 0.06)
        values = rounded(centre + rng.normal(0, noise_steps * EIGHT_BITS, 400), EIGHT_BITS)
        found = home([values], EIGHT_BITS)
        inside.append(found.low <= centre <= found.high)
    assert 0.92 <= np.mean(inside) <= (0.98 if noise_steps > 0.3 else 1.0)


def test_levels_tell_the_place_between_them():
    """Noise of 0.3 steps about 0.2 steps above a level: the shares on three levels are those of a Gaussian (by scipy),
    and the place comes back to a fiftieth of a step, where the mean of the levels is off by more."""
    at = np.arange(-3, 4)
    share = norm.cdf(at + 0.5, 0.2, 0.3) - norm.cdf(at - 0.5, 0.2, 0.3)
    values = np.repeat(at * EIGHT_BITS, np.round(share * 20_000).astype(int))
    found = home([np.random.default_rng(3).permutation(values)], EIGHT_BITS)
    assert found.value / EIGHT_BITS == pytest.approx(0.2, abs=0.02)
    assert abs(values.mean() / EIGHT_BITS - 0.2) > 0.025


def test_a_few_releases_go_by_their_centres():
    """Three rests in fine steps: Student's interval of the three centres, as scipy gives it."""
    rng = np.random.default_rng(5)
    rests = [place + rng.normal(0, 0.001, 100) for place in (0.01, 0.03, 0.015)]
    found = home(rests, 0.0)
    ends = ttest_1samp([rest.mean() for rest in rests], 0.0).confidence_interval(0.95)
    assert (found.low, found.high) == pytest.approx((ends.low, ends.high), rel=1e-12)


def test_many_releases_go_by_the_middle():
    """Hettmansperger & Sheather 1986 (from memory), eight values, by hand: the pairs first and second from either end
    hold the median with 1 - 2/256 and 1 - 18/256; the share 0.675 of the way in coverage is 7 * 0.675/(1 + 6 * 0.675)
    = 0.93564 of the way in place. One rest leaned on (1.0) does not move the ends."""
    places = [0.0, 0.01, 0.02, 0.03, 0.05, 0.06, 0.07, 1.0]
    found = home([place + np.tile([-1e-4, 1e-4], 20) for place in places], 0.0)
    assert found.value == pytest.approx(0.04, abs=1e-12)
    assert found.low == pytest.approx(0.0093564, abs=5e-8)
    assert found.high == pytest.approx(0.07 + 0.93 * (1 - 0.93564), abs=5e-6)


def test_releases_within_one_step_stay_uncertain():
    """Four rests all on one level: nothing tells where in the step they lie, nor that they lie at one place."""
    found = home([np.full(60, 0.0)] * 4, EIGHT_BITS)
    assert found.low <= -0.45 * EIGHT_BITS
    assert found.high >= 0.45 * EIGHT_BITS


def test_step_of_few_levels():
    """Three levels of one axis tell the step for both; noise without levels, or one level, tells none."""
    rng = np.random.default_rng(7)
    x = rounded(rng.normal(0.0123, 0.004, 600), EIGHT_BITS)
    assert step_of_levels(x, np.full(600, 0.5)) == pytest.approx(EIGHT_BITS, rel=1e-12)
    assert step_of_levels(rng.normal(0, 0.01, 600), np.full(600, 0.5)) == 0.0


@pytest.mark.parametrize("many", [1, 3, 7])
@pytest.mark.parametrize("noise_steps", [0.0, 0.3])
def test_another_centre_by_whole_steps_is_told_alike(many: int, noise_steps: float):
    """Law: rests that all lie 40 steps to the left or to the right give the same interval, moved by as much."""
    rng = np.random.default_rng(8)
    noise = [rounded(0.2 * EIGHT_BITS + rng.normal(0, noise_steps * EIGHT_BITS, 200), EIGHT_BITS) for _ in range(many)]
    here = home(noise, EIGHT_BITS)
    assert 0 < here.high - here.low < 2 * EIGHT_BITS
    for moved in (-40 * EIGHT_BITS, 40 * EIGHT_BITS):
        there = home([each + moved for each in noise], EIGHT_BITS)
        found = (there.value - moved, there.low - moved, there.high - moved)
        assert found == pytest.approx((here.value, here.low, here.high), abs=1e-6)
