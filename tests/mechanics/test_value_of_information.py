"""Which reading decides, and when it is enough: made-up choices whose answer is plain."""

from __future__ import annotations

import math
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from stickwright.mechanics.ability import ability
from stickwright.mechanics.value_of_information import Candidate, chance_after, chance_now, right_choice
from stickwright.model.player import Site
from stickwright.planning.next_reading import _candidates

Array = NDArray[np.float64]


def candidate(log_draws: Array, what: str = "force", sd: float = 0.09, direction_rad: float = math.pi / 2) -> Candidate:
    return Candidate("here", what, direction_rad, log_draws, sd)


def made_up(draws: int = 1000, spread: float = 0.4, seed: int = 1) -> tuple[NDArray[np.bool_], list[Candidate]]:
    """Light stick right where forward force is under 1 N, firm stick where it is over; nothing else matters."""
    rng = np.random.default_rng(seed)
    forward, back, reach = spread * rng.standard_normal((3, draws))
    right = np.vstack([forward < 0, forward >= 0])
    return right, [candidate(back), candidate(forward), candidate(reach, "reach")]


def test_the_deciding_direction_comes_first_and_the_chance_rises() -> None:
    """The reading that parts two sticks ranks first. Expected chance by hand: with prior sd s and reading sd e it is
    1/2 + atan(s/e)/pi, the sign of a normal told by a noisy reading of it (from the bivariate normal orthant)."""
    right, candidates = made_up()
    told = chance_after(right, candidates, np.random.default_rng(2))
    assert max(told, key=lambda place: told[place]) == 1
    assert told[1] == pytest.approx(0.5 + math.atan(0.4 / 0.09) / math.pi, abs=0.04)
    assert told[1] - chance_now(right) > 0.3


def test_a_reading_of_something_irrelevant_gains_about_nothing() -> None:
    """Back and reach decide nothing: under two hundredths."""
    right, candidates = made_up()
    now = chance_now(right)
    told = chance_after(right, candidates, np.random.default_rng(2))
    for place in (0, 2):
        assert told[place] - now < 0.02


def test_a_coarser_reading_tells_less() -> None:
    """The same reading with ten times the scatter helps less."""
    right, (_, fine, _) = made_up()
    coarse = candidate(fine.log_draws, sd=0.9)
    told = chance_after(right, [fine, coarse], np.random.default_rng(2))
    assert told[0] > told[1] + 0.1


def test_where_nothing_can_change_nothing_is_gained() -> None:
    """One stick right in every draw: the chance is 1 and stays so."""
    _, candidates = made_up()
    right = np.vstack([np.ones(1000, dtype=bool), np.zeros(1000, dtype=bool)])
    told = chance_after(right, candidates, np.random.default_rng(2))
    assert set(told.values()) == {1.0}


@settings(max_examples=25, deadline=None)
@given(seed=st.integers(0, 1000), options=st.integers(1, 5), draws=st.integers(20, 120))
def test_the_chance_never_falls_and_never_passes_one(seed: int, options: int, draws: int) -> None:
    """Law: knowing more never makes the choice worse, whatever is read."""
    rng = np.random.default_rng(seed)
    right = right_choice(rng.standard_normal((options, draws)), 0.15)
    candidates = [candidate(rng.standard_normal(draws)) for _ in range(3)]
    now = chance_now(right)
    for chance in chance_after(right, candidates, rng, outcomes=30).values():
        assert now <= chance <= 1.0


def test_the_same_seed_gives_the_same_answer() -> None:
    right, candidates = made_up()
    one, other = (chance_after(right, candidates, np.random.default_rng(7)) for _ in range(2))
    assert one == other


def test_ties_count_as_right() -> None:
    """Within 0.15 bit of the best, a stick is right too; beyond it is not."""
    utility = np.array([[2.0, 2.0, 2.0], [1.86, 1.84, 2.5]])
    assert right_choice(utility, 0.15).tolist() == [[True, True, False], [True, False, True]]
    assert chance_now(right_choice(utility, 0.15)) == pytest.approx(2 / 3, rel=1e-12)


@pytest.mark.parametrize("spread", [0.02, 0.12, 0.3])
def test_three_repeats_are_worth_the_mean_of_three(spread: float) -> None:
    """Simulated: the mean of three readings strays by their scatter over the root of three, and so much a reading that is to be asked for
    is taken to stray; a scatter under 3 % is taken for 3 %."""
    rows = [
        {"direction_deg": 45 * k, "force_n": [0.4 * (1 + spread * s) for s in (0, 1, -1)], "reach_m": [0.008, 0.00801]}
        for k in range(8)
    ]
    site = Site.model_validate({"name": "here", "part": "fingertip", "reading": rows})
    known = ability(site, np.random.default_rng(5), 100)
    assert known is not None
    used = np.isclose(known.direction_rad, np.pi / 2, atol=1e-5)
    assert used.sum() == 1
    asked = _candidates(SimpleNamespace(known=known, site=site, used=used))  # type: ignore[arg-type]
    force, reach = (next(one for one in asked if one.what == what) for what in ("force", "reach"))
    strays = np.random.default_rng(3).normal(0.0, 1.0, (40_000, 3)).mean(axis=1).std()
    scatter = max(known.report.force_scatter_share.value, 0.03)
    assert force.reading_sd == pytest.approx(scatter * strays, rel=0.02)
    assert reach.reading_sd == pytest.approx(0.03 * strays, rel=0.02)
    assert force.direction_rad == reach.direction_rad == pytest.approx(math.pi / 2, abs=1e-5)
