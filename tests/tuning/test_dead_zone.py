"""The dead zone: tolerance limit, correlation, and what is said when rest is too short."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays
from scipy.signal import lfilter
from scipy.stats import binom

from said import place, said
from stickwright.codes.message import message
from stickwright.codes.tunings import Tunings
from stickwright.errors import BadInput
from stickwright.model.recording import Recording
from stickwright.tuning.dead_zone import (
    dead_zone,
    dead_zone_estimate,
    effective_samples,
    largest_rank,
    smallest_sample,
)
from stickwright.tuning.pipeline import tune

shares = st.floats(0.5, 0.99)
rests = arrays(np.float64, st.tuples(st.integers(60, 150), st.just(2)), elements=st.floats(-0.2, 0.2))


def slow_noise(n, rho, rng):
    """A first-order autoregressive series with unit variance."""
    white = np.vstack([rng.normal(size=2), math.sqrt(1 - rho**2) * rng.normal(size=(n - 1, 2))])
    return lfilter([1.0], [1.0, -rho], white, axis=0)


@given(coverage=shares, confidence=shares, rank=st.integers(1, 8))
def test_smallest_sample_is_the_smallest(coverage, confidence, rank):
    """Law, by the binomial table: enough at this size, not enough with one sample fewer."""
    n = smallest_sample(coverage, confidence, rank)
    assert binom.sf(rank - 1, n, 1 - coverage) >= confidence - 1e-12
    if n > rank:
        assert binom.sf(rank - 1, n - 1, 1 - coverage) < confidence + 1e-12


@given(n=st.integers(1, 400), coverage=shares, confidence=shares)
def test_largest_rank_by_counting(n, coverage, confidence):
    """Law: the rank is the number of samples from the top that would each be enough, counted one by one."""
    enough = [rank for rank in range(1, n + 1) if binom.sf(rank - 1, n, 1 - coverage) >= confidence]
    assert largest_rank(n, coverage, confidence) == len(enough)


@given(rest_xy=rests, angle_rad=st.floats(-math.pi, math.pi), factor=st.floats(0.1, 10.0))
def test_dead_zone_turns_and_grows_with_rest(rest_xy, angle_rad, factor):
    """Law: turning rest changes nothing, twice the noise needs twice the dead zone."""
    turn = np.array([[math.cos(angle_rad), -math.sin(angle_rad)], [math.sin(angle_rad), math.cos(angle_rad)]])
    assert dead_zone(factor * rest_xy @ turn.T) == pytest.approx(factor * dead_zone(rest_xy), abs=1e-12)


def test_dead_zone_covers_rest_as_often_as_promised():
    """By simulation: of 600 rests of 100 samples, the radius covers 95 % of that noise in at least about 95 %."""
    rng = np.random.default_rng(7)
    radii = np.array([dead_zone(rng.normal(0, 0.01, (100, 2))) for _ in range(600)])
    covered = 1 - np.exp(-(radii**2) / (2 * 0.01**2))  # Rayleigh distribution of the distance
    assert np.mean(covered >= 0.95) > 0.95 - 3 * math.sqrt(0.95 * 0.05 / 600)
    assert np.mean(covered >= 0.95) < 0.995  # not simply the largest sample, which would always be enough


def test_too_few_samples_are_refused_with_the_number_needed():
    """58 samples cannot support 95 % at 95 %: the sentence says 59."""
    with pytest.raises(BadInput) as refusal:
        dead_zone(np.zeros((58, 2)))
    assert "found 58 independent samples, expected at least 59" in str(refusal.value)
    assert "Record a longer rest" in str(refusal.value)


def test_percent_for_share_is_refused():
    """95 typed for 0.95: both wrong shares are named at once."""
    with pytest.raises(BadInput) as refusal:
        dead_zone(np.zeros((100, 2)), coverage=95, confidence=95)
    assert [place(problem) for problem in refusal.value.problems] == ["coverage", "confidence"]
    assert "Write 95% as 0.95" in str(refusal.value)


def test_empty_cells_do_not_count():
    """Rows with an empty cell are no rest samples."""
    rest_xy = np.random.default_rng(1).normal(0, 0.01, (80, 2))
    holes = np.insert(rest_xy, 10, np.nan, axis=0)
    assert dead_zone(holes) == dead_zone(rest_xy)


@pytest.mark.parametrize("rho", [0.5, 0.9])
def test_effective_samples_of_a_slow_series(rho):
    """An autoregressive rest is worth n (1 - rho) / (1 + rho) samples, and about as many are left to the dead zone."""
    xy = slow_noise(20000, rho, np.random.default_rng(3))
    expected = 20000 * (1 - rho) / (1 + rho)
    assert effective_samples(xy) == pytest.approx(expected, rel=0.1)
    assert 0.7 * expected < dead_zone_estimate([xy])[0].n < 1.05 * expected


def test_white_noise_is_not_thinned():
    """Samples that are independent already are all kept."""
    xy = np.random.default_rng(5).normal(size=(500, 2))
    assert dead_zone_estimate([xy])[0].n == 500


@pytest.mark.parametrize(("rho", "n", "rests"), [(0.6, 1500, 1), (0.9, 4000, 1), (0.9, 2000, 3)])
def test_estimate_holds_the_true_radius(rho, n, rests):
    """By simulation on slow noise: the interval holds the true 95 % radius (Rayleigh) as often as it says, on each side."""
    rng = np.random.default_rng(11)
    true = math.sqrt(-2 * math.log(0.05))
    below, above = [], []
    for _ in range(200):
        estimate, findings = dead_zone_estimate([slow_noise(n, rho, rng) for _ in range(rests)])
        assert findings == ()
        below.append(true < estimate.low)
        above.append(true > estimate.high)
    assert estimate.level == 0.9
    most = 0.05 + 3 * math.sqrt(0.05 * 0.95 / 200)
    assert np.mean(below) < most
    assert np.mean(above) < most
    assert np.mean(below) + np.mean(above) > 0.01, "an interval that always holds is too wide"


def test_a_tuning_thins_its_rest_once():
    """Through the whole tuning: three slow rests, home a little elsewhere each, are worth n (1 - rho) / (1 + rho) samples."""
    rng = np.random.default_rng(4)
    rho, n = 0.9, 3000
    expected = 3 * n * (1 - rho) / (1 + rho)
    rest_xy = np.concatenate([0.004 * slow_noise(n, rho, rng) + home for home in ([0, 0], [0.03, 0], [0, 0.03])])
    times_s = np.concatenate([np.arange(n) / 100 + 40 * number for number in range(3)])
    recordings = [Recording("rest.csv", times_s, rest_xy, task="rest", site="thumb", stick="hazel")]
    found = tune(recordings, site="thumb", stick="hazel").dead_zone
    assert 0.7 * expected < found.n < 1.05 * expected


def test_of_five_samples_the_ends_hold_the_middle():
    """By hand: the middle distance is between the nearest and the farthest of five unless all five lie on one side of it, each of
    which has a chance of 1 in 32, less than 5 %; of four, 1 in 16 is too much."""
    xy = np.column_stack([[0.01, 0.02, 0.03, 0.04, 0.05], np.zeros(5)])
    five, _ = dead_zone_estimate([xy[[2, 0, 4, 1, 3]]], coverage=0.5, confidence=0.95)
    assert (five.low, five.value, five.high) == pytest.approx((0.01, 0.05, 0.05))
    four, _ = dead_zone_estimate([xy[[2, 0, 3, 1]]], coverage=0.5, confidence=0.95)
    assert four.why == message(Tunings.why_short_rest, samples=4, needed=5, coverage_share=0.5, confidence_share=0.95)


def test_short_rest_sets_no_dead_zone_and_says_what_was_seen():
    """Two seconds of slow rest: none is set; the reason, the largest distance and the length needed are told."""
    xy = 0.01 * slow_noise(200, 0.95, np.random.default_rng(2))
    estimate, (finding,) = dead_zone_estimate([xy])
    assert (estimate.value, estimate.n, estimate.assumed) == (0.0, 0, message(Tunings.assumed_no_zone))
    assert not estimate.has_interval
    assert "59 are needed for 95% of rest at 95% confidence" in said(estimate.why)
    assert (finding.level, finding.about) == ("fault", "short_rest")
    assert finding.text.text == "short_rest"
    assert finding.text.param("largest_share") == pytest.approx(np.hypot(*xy.T).max())
    assert finding.text.param("longer_factor") == pytest.approx(59 / estimate.why.param("samples"))


def test_frozen_rest_is_queried():
    """A rest that never moves was cleaned before it came here."""
    estimate, (finding,) = dead_zone_estimate([np.full((500, 2), 0.03)])
    assert estimate.value == pytest.approx(math.hypot(0.03, 0.03))
    assert (finding.level, finding.about) == ("query", "frozen_rest")


def test_no_rest_is_refused():
    """Nothing to estimate from: the sentence asks for a recording."""
    with pytest.raises(BadInput, match="Record 20 s of rest"):
        dead_zone_estimate([np.empty((0, 2))])


def test_wrong_shape_is_refused():
    """One column is not x and y."""
    with pytest.raises(BadInput, match="one row of x and y for each sample"):
        dead_zone(np.zeros(100))
