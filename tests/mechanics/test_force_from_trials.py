"""Sticks as gauges: force and reach bracketed, the limb's stiffness from two tremors."""

from __future__ import annotations

import math

import numpy as np
import pytest
from numpy.typing import NDArray

from said import place, said
from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.mechanics.force_from_trials import SHARE_SD, Bracket, StickResult, bracket, limb_stiffness
from stickwright.model.parts import COMFORT

FINGER = COMFORT["fingertip"]
STICKS = {
    "ash": (0.48, 1.05, 0.0065, 0.016),
    "cedar": (0.16, 0.35, 0.0065, 0.016),
    "dew": (0.025, 0.11, 0.009, 0.045),
}
"""Start N, full N, travel m, height m: a standard, a third-force and a hyper-light stick (invented)."""


def reached_share(stick: str, force_n: float, reach_m: float) -> float:
    """How far a player gets, by halving the angle between push needed and push there is: apart from the package."""
    start, full, travel, height = STICKS[stick]
    stop = math.asin(travel / height)
    low, high = 0.0, stop
    for _ in range(60):
        angle = 0.5 * (low + high)
        needed = start + (full - start) * angle / stop
        available = force_n * (1 - height * math.sin(angle) / reach_m)
        low, high = (angle, high) if available >= needed else (low, angle)
    return low / stop


def tried(stick: str, *shares: float) -> StickResult:
    return StickResult(*STICKS[stick], reached_share=shares)


def pushes(stick: str, force_n: float, reach_m: float, rng: np.random.Generator, n: int = 2) -> StickResult:
    """What is written down: the share reached, scattered from push to push, never below 0 or beyond the stop."""
    truth = reached_share(stick, force_n, reach_m)
    return tried(stick, *np.clip(truth + SHARE_SD * rng.standard_normal(n), 0.0, 1.0).tolist())


def held(estimate: Estimate, truth: float) -> bool:
    return estimate.low <= truth <= estimate.high


def widths(found: Bracket) -> tuple[float, float]:
    force, reach = found.estimates(1)
    return force.high / force.low, reach.high / reach.low


def some_finger(rng: np.random.Generator) -> tuple[float, float]:
    """Anybody from the usual band of a fingertip, evenly in the logarithm, as the band is meant."""
    force = math.exp(rng.uniform(math.log(FINGER.force_low_n), math.log(FINGER.force_high_n)))
    return force, math.exp(rng.uniform(math.log(FINGER.travel_low_m), math.log(FINGER.travel_high_m)))


@pytest.mark.parametrize("names", [("ash", "cedar"), ("ash", "cedar", "dew")])
def test_intervals_hold_the_truth(names: tuple[str, ...]) -> None:
    """Two or three sticks, two pushes each: of 300 simulated fingers the 95 % interval holds the true force, and the
    true reach, in 92 to 98 of 100."""
    rng = np.random.default_rng(len(names))
    force, reach = [], []
    for _ in range(300):
        true_force, true_reach = some_finger(rng)
        found = bracket([pushes(name, true_force, true_reach, rng) for name in names], FINGER)
        told_force, told_reach = found.estimates(2 * len(names))
        force.append(held(told_force, true_force))
        reach.append(held(told_reach, true_reach))
    assert 0.92 <= np.mean(force) <= 0.98
    assert 0.92 <= np.mean(reach) <= 0.98


def test_one_stick_alone_stays_wide_and_a_second_crosses_it() -> None:
    """One stick puts force and reach on a curve and cannot tell a strong short push from a weak long one; a second of
    another force crosses the curve."""
    truth = (0.9, 0.012)
    one = [tried("ash", reached_share("ash", *truth))]
    two = [*one, tried("cedar", reached_share("cedar", *truth))]
    firm = StickResult(0.7, 2.4, 0.0065, 0.016, (0.02,))
    alone, both = bracket(one, FINGER), bracket([*two, firm], FINGER)
    assert widths(alone)[0] > 2 * widths(both)[0]
    assert widths(alone)[0] > 2
    for told, true in zip(both.estimates(3), truth, strict=True):
        assert held(told, true)


def test_the_stop_only_says_at_least() -> None:
    """At the stop of ash, 0.48 N to start and 1.05 N at 6.5 mm: more force and reach than that, no upper end."""
    force, reach = bracket([tried("ash", 1.0, 1.0, 1.0)], FINGER).estimates(3)
    assert force.low > 1.05 * 0.9
    assert force.high > FINGER.force_high_n * 0.8
    assert reach.low > 0.0065 * 0.9
    assert reach.high > FINGER.travel_high_m * 0.8


def test_not_started_only_says_at_most() -> None:
    """Ash did not start: less force than 0.48 N, no lower end, and nothing told of the reach."""
    started = bracket([tried("ash", 0.0, 0.0, 0.0)], FINGER)
    force, reach = started.estimates(3)
    assert force.high < 0.48 * 1.25
    assert force.low < FINGER.force_low_n * 1.2
    assert reach.low < FINGER.travel_low_m * 1.5
    assert reach.high > FINGER.travel_high_m * 0.7


def test_every_bracket_says_that_no_gauge_was_used() -> None:
    """A bracketed figure must not look measured."""
    for estimate in bracket([tried("cedar", 0.6)], FINGER).estimates(1):
        assert estimate.assumed is not None
        assert estimate.assumed == message(EstimateNotes.bracketed)
        assert estimate.n == 1


def test_a_gauge_reading_of_the_same_direction_is_used_with_its_rounding() -> None:
    """Gauge and tape narrow the bracket; a gauge with coarse steps narrows it less."""
    results = [tried("ash", reached_share("ash", 0.9, 0.012))]
    fine = bracket(results, FINGER, force_n=[0.88, 0.93], reach_m=[0.012])
    coarse = bracket(results, FINGER, force_n=[0.88, 0.93], reach_m=[0.012], gauge_step_n=1.5)
    alone = bracket(results, FINGER)
    assert widths(fine)[0] < widths(coarse)[0] < widths(alone)[0]
    assert held(fine.estimates(3)[0], 0.9)


def test_draws_have_the_spread_of_the_estimates() -> None:
    """What the fits use and what people read is the same knowledge."""
    found = bracket([tried("ash", 0.3), tried("cedar", 0.9)], FINGER)
    for drawn, estimate in zip(found.draws(np.random.default_rng(4), 20000), found.estimates(2), strict=True):
        low, middle, high = np.quantile(drawn, (0.025, 0.5, 0.975))
        assert low == pytest.approx(estimate.low, rel=0.06)
        assert middle == pytest.approx(estimate.value, rel=0.06)
        assert high == pytest.approx(estimate.high, rel=0.06)


def test_draws_fill_their_cell_evenly() -> None:
    """All weight on one pair of the grid: draws lie from half a step below it to half a step above, in the logarithm, with the mean on it
    and the sd of an even spread, a step over the root of 12."""
    weight = np.zeros((3, 3))
    weight[1, 1] = 1.0
    only = Bracket(np.array([0.1, 0.2, 0.4]), np.array([0.001, 0.003, 0.009]), weight)
    drawn = only.draws(np.random.default_rng(3), 40_000)
    for values, at, step in zip(drawn, (0.2, 0.003), (math.log(2), math.log(3)), strict=True):
        off = np.log(values / at) / step
        assert off.mean() == pytest.approx(0.0, abs=0.01)
        assert off.std() == pytest.approx(1 / math.sqrt(12), rel=0.02)
        assert np.abs(off).max() <= 0.5 + 1e-9


def test_no_share_is_refused() -> None:
    """A stick that was tried without a note of how far tells nothing."""
    with pytest.raises(BadInput, match="how far the player got on at least one measured stick") as refused:
        bracket([tried("ash")], FINGER)
    assert place(refused.value.problems[0]) == "on_stick"


SOFT, STIFF = 9.4, 87.7
"""Stiffness of dew and ash at the contact point, N/m."""


def shaken(limb: float, rng: np.random.Generator, n: int = 3) -> list[NDArray[np.float64]]:
    """The same 0.02 N of involuntary force on two sticks: springs side by side, 5 % scatter of an rms figure."""
    return [0.02 / (stick + limb) * np.exp(0.05 * rng.standard_normal(n)) for stick in (SOFT, STIFF)]


@pytest.mark.parametrize("limb", [10.0, 50.0, 150.0])
def test_limb_stiffness_is_recovered(limb: float) -> None:
    """Of 300 simulated pairs of tremor figures, three repeats each, the 95 % interval of the limb's stiffness holds
    the true one in 92 to 98 of 100; few pairs are refused."""
    rng = np.random.default_rng(int(limb))
    kept = []
    refused = 0
    for _ in range(300):
        try:
            kept.append(held(limb_stiffness(shaken(limb, rng), (SOFT, STIFF), rng), limb))
        except BadInput:
            refused += 1
    assert refused <= 6
    assert 0.92 <= np.mean(kept) <= 0.985


def test_limb_stiffness_by_hand() -> None:
    """0.5 mm on 10 N/m and 0.3 mm on 50 N/m: (0.3 * 50 - 0.5 * 10)/(0.5 - 0.3) = 50 N/m."""
    found = limb_stiffness([[5e-4, 5e-4], [3e-4, 3e-4]], (10.0, 50.0), np.random.default_rng(1))
    assert found.value == pytest.approx(50.0, rel=1e-9)
    assert found.assumed is not None
    assert found.assumed == message(EstimateNotes.tremor_on_two, repeated=True, scatter_share=0.10)


def test_limb_stiffness_from_one_recording_each_says_that_its_scatter_is_assumed() -> None:
    """One figure a stick: the interval rests on an assumed scatter of 10 %, and is there all the same."""
    found = limb_stiffness([[5e-4], [2e-4]], (10.0, 50.0), np.random.default_rng(1))
    assert found.low < found.value < found.high
    assert found.assumed is not None
    assert found.assumed == message(EstimateNotes.tremor_on_two, repeated=False, scatter_share=0.10)


def test_movements_that_cannot_be_told_apart_are_refused() -> None:
    """0.50 and 0.49 mm: the difference lies within its own interval."""
    with pytest.raises(BadInput, match="cannot be told apart") as refused:
        limb_stiffness([[5.0e-4, 5.4e-4], [4.9e-4, 4.6e-4]], (10.0, 50.0), np.random.default_rng(1))
    (problem,) = refused.value.problems
    assert "0.52 mm and 0.47 mm on sticks of 0.01 N/mm and 0.05 N/mm" in said(problem.found)
    assert "clearly less movement on the stiffer stick" in said(problem.expected)
    assert "Repeat both" in said(problem.remedy)


def test_more_movement_on_the_stiffer_stick_is_refused() -> None:
    """More movement on the stiffer stick, or less than any limb could leave, is not a stiffness: another posture."""
    for soft, stiff in ((3e-4, 5e-4), (5e-4, 0.5e-4)):
        with pytest.raises(BadInput, match="Repeat them in the same posture"):
            limb_stiffness([[soft, soft * 1.01], [stiff, stiff * 1.01]], (10.0, 50.0), np.random.default_rng(1))
