"""Sharing out as plain assignment, against published examples and two other solvers.

Sources: the example of `scipy.optimize.linear_sum_assignment` in SciPy's reference (seen) [scipy-2020]. OR-Tools, guide, "Solving an
Assignment Problem", five workers and four tasks (table seen on its page; total and assignment seen in a program's test
that quotes the page) [cp-sat]. H. W. Kuhn, The Hungarian method for the assignment problem, 1955: the method behind both
(from memory) [kuhn-1955]. HiGHS as a second solver of the same rows [highs].
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.optimize import linear_sum_assignment

from plain_highs import highs_best
from sharing_instances import nasty, real_like
from stickwright.allocation.integer_model import integer_model
from stickwright.allocation.problem import Gear, PlayingSite, Question, Way
from stickwright.allocation.solve import Solver

SMALL = {"actions": 8, "sites": 5, "devices": 16, "sockets": 10}


def assignment(worth: NDArray[np.float64]) -> Question:
    """Each column an action, each row a site that works one switch."""
    sites, actions = worth.shape
    names = tuple(f"action {n}" for n in range(actions))
    ways = tuple(
        Way(names[a], "site", float(worth[s, a]), f"site {s}", f"switch {s}", "switch")
        for a in range(actions)
        for s in range(sites)
    )
    return Question(
        names, (10.0,) * actions, ways, tuple(Gear(f"switch {n}") for n in range(sites)),
        tuple(PlayingSite(f"site {n}", 0.0, 1) for n in range(sites)),
    )  # fmt: skip


def taken(question: Question) -> list[int]:
    """For each action the site that does it."""
    chosen = Solver(question).best().chosen(question)
    return [int(str(question.ways[chosen[action]].site).removeprefix("site ")) for action in question.actions]


def test_the_example_of_scipy() -> None:
    """SciPy's reference: costs [[4, 1, 3], [2, 0, 5], [3, 2, 2]]; row 0 takes column 1, row 1 column 0, row 2 column 2: 5."""
    cost = np.array([[4.0, 1.0, 3.0], [2.0, 0.0, 5.0], [3.0, 2.0, 2.0]])
    question = assignment(-cost)
    assert Solver(question).best().points == -5.0
    assert taken(question) == [1, 0, 2]


def test_the_example_of_or_tools() -> None:
    """OR-Tools' guide: total 265 = 70 + 55 + 95 + 45; worker 0 does task 3, 1 task 2, 2 task 1, 3 task 0, and 4 rests."""
    cost = np.array([[90, 80, 75, 70], [35, 85, 55, 65], [125, 95, 90, 95], [45, 110, 95, 115], [50, 100, 90, 100]])
    question = assignment(-cost.astype(float))
    answer = Solver(question).best()
    assert answer.points == -265.0
    assert answer.proven
    assert taken(question) == [3, 2, 1, 0]


@settings(max_examples=60)
@given(st.integers(1, 8), st.integers(0, 4), st.booleans(), st.integers(0, 10**9))
def test_as_the_hungarian_method(actions: int, spare: int, ties: bool, seed: int) -> None:
    """One switch to a site and nothing else asked: the total that linear_sum_assignment finds, ties or none."""
    rng = np.random.default_rng(seed)
    worth = (
        rng.integers(0, 4, (actions + spare, actions))
        if ties
        else np.round(rng.uniform(0, 10, (actions + spare, actions)), 3)
    )
    answer = Solver(assignment(worth.astype(float))).best()
    rows, columns = linear_sum_assignment(worth, maximize=True)
    assert answer.points == pytest.approx(float(worth[rows, columns].sum()), rel=0, abs=1e-9)


def test_fewer_sites_than_actions() -> None:
    """More actions than sites to do them: none of them can be spared, so no plan."""
    assert Solver(assignment(np.ones((3, 4)))).best().possible is False


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("kind", [real_like, nasty], ids=["real-like", "nasty"])
def test_as_highs(kind: object, seed: int) -> None:
    """HiGHS, from the same rows by quite another method, finds the same points, and no plan where there is none."""
    question = kind(seed, **SMALL)  # type: ignore[operator]
    answer, other = Solver(question).best(), highs_best(integer_model(question))
    assert answer.proven
    assert answer.possible is (other is not None)
    assert other is None or answer.points == pytest.approx(other, rel=0, abs=0.0005)


def test_some_cannot_be_had() -> None:
    """Among the small nasty questions are some without a plan, so that this too is compared."""
    found = [Solver(nasty(seed, **SMALL)).possible() for seed in range(20)]
    assert 2 <= found.count(False) <= 10
