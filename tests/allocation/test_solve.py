"""The solver against a reckoner that tries every plan, on small questions with every feature switched on and off."""

from __future__ import annotations

import math
import os
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from plain_sharing import best_by_trying_all, every_plan, points, refusal
from small_questions import FEATURES, small_question, small_questions

from stickwright.allocation.integer_model import Group
from stickwright.allocation.problem import Gear, PlayingSite, Question, TogetherNeed, Way
from stickwright.allocation.solve import Solver

many = settings(max_examples=300, suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow])
fewer = settings(max_examples=120, suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow])
WISHES = ("do", "together", "keep", "without", "budget", "parts")


@many
@given(small_questions)
def test_the_best_plan_is_the_best_of_all(question: Question) -> None:
    """No plan that can be is worth more than the one proven best; where none can be, it says so."""
    found, tried = Solver(question).best(), best_by_trying_all(question)
    assert found.proven
    if tried is None:
        assert found.possible is False
        assert math.isnan(found.points)
        assert found.chosen(question) == {}
    else:
        assert found.possible is True
        assert found.points == found.bound == tried[0]


@many
@given(small_questions)
def test_the_plan_found_can_be(question: Question) -> None:
    """The plan breaks no rule, judged without the solver, and is worth what it says."""
    found = Solver(question).best()
    assume(found.possible)
    chosen = found.chosen(question)
    assert list(chosen) == sorted(chosen, key=lambda action: chosen[action])
    assert refusal(question, chosen) is None
    assert points(question, chosen) == found.points


@fewer
@given(small_questions)
def test_second_best(question: Question) -> None:
    """The best plan without one of the ways taken, for each in turn, gives the best plan that differs."""
    solver = Solver(question)
    found = solver.best()
    assume(found.possible)
    chosen = found.chosen(question)
    others = [worth for worth, choice in every_plan(question) if choice != chosen]
    seconds = [solver.best(forbid=[number], hint=found) for number in chosen.values()]
    assert max((answer.points for answer in seconds if answer.possible), default=None) == (
        max(others) / 1000 if others else None
    )
    for number, answer in zip(chosen.values(), seconds, strict=True):
        without = [worth for worth, choice in every_plan(question) if number not in choice.values()]
        assert answer.possible is bool(without)
        assert not without or answer.points == max(without) / 1000


@fewer
@given(small_questions, st.data())
def test_one_of_some_ways_is_demanded(question: Question, data: st.DataObject) -> None:
    """Of what is demanded one at least is taken: the best plan of those that do."""
    some = data.draw(st.lists(st.integers(0, len(question.ways) - 1), max_size=3, unique=True))
    plans = [worth for worth, choice in every_plan(question) if set(some) & set(choice.values())]
    answer = Solver(question).best(demand=[some])
    assert answer.possible is bool(plans)
    assert not plans or answer.points == max(plans) / 1000


@fewer
@given(small_questions, st.data())
def test_an_action_given_up_is_done_once_or_not_at_all(question: Question, data: st.DataObject) -> None:
    """An action that need not be done is left out where that is worth more, and never done twice."""
    undone = data.draw(st.sets(st.sampled_from(question.actions), min_size=1))
    plans = every_plan(question, undone)
    answer = Solver(question).best(freed=[("do", action) for action in undone])
    assert answer.possible is bool(plans)
    if plans:
        assert answer.points == max(worth for worth, _ in plans) / 1000
        assert sum(answer.values[: len(question.ways)]) == len(answer.chosen(question))


@fewer
@given(small_questions)
def test_possible_says_what_trying_all_says(question: Question) -> None:
    """Whether any plan can be is told without looking for the best."""
    solver = Solver(question)
    assert solver.possible() is bool(every_plan(question))
    assert (solver.clashing() == ()) is bool(every_plan(question))


def without_wishes(question: Question, gone: Sequence[Group]) -> tuple[Question, set[str]]:
    """The question with wishes taken out of it, and the actions that need no longer be done."""
    left = replace(
        question,
        together=tuple(need for need in question.together if ("together", need.first, need.second) not in gone),
        keep=tuple(one for one in question.keep if ("keep", one[0], one[1]) not in gone),
        without=tuple(one for one in question.without if ("without", one[0]) not in gone),
        budget=None if ("budget",) in gone else question.budget,
        most_parts=None if ("parts",) in gone else question.most_parts,
    )
    return left, {group[1] for group in gone if group[0] == "do"}


@fewer
@given(small_questions.filter(lambda question: best_by_trying_all(question) is None))
def test_the_clash_is_the_smallest(question: Question) -> None:
    """What is left of the wishes that the proof names cannot be had; without any one of them the rest can."""
    solver = Solver(question)
    wishes = [group for group in solver.groups if group[0] in WISHES]
    named = solver.clashing()
    assert named
    assert solver.possible(freed=[group for group in solver.groups if group not in named]) is False
    clash = [group for group in named if group in wishes]
    for group in tuple(clash):
        if solver.possible(freed=[one for one in wishes if one not in clash or one == group]) is False:
            clash.remove(group)
    plain, undone = without_wishes(question, [one for one in wishes if one not in clash])
    assert every_plan(plain, undone) == []
    for group in clash:
        plain, undone = without_wishes(question, [one for one in wishes if one not in clash or one == group])
        assert every_plan(plain, undone) != [], group


ASKED_AGAIN = """
import numpy as np
from small_questions import FEATURES, small_question
from stickwright.allocation.solve import Solver
for seed in range(40):
    answer = Solver(small_question(seed, frozenset(FEATURES[seed % 3::2]) | {"ties", "hub"})).best()
    print(seed, answer.possible, answer.values.tolist(), answer.effort)
"""


def test_a_tie_falls_the_same_way_each_time(capsys: pytest.CaptureFixture[str]) -> None:
    """The same question gives the same plan, column by column, asked twice and asked by a program started anew."""
    here = Path(__file__).parent
    told = []
    for hashing in ("1", "2"):
        environment = {**os.environ, "PYTHONHASHSEED": hashing, "PYTHONPATH": str(here)}
        run = subprocess.run(
            [sys.executable, "-c", ASKED_AGAIN], env=environment, capture_output=True, text=True, check=True
        )
        told.append(run.stdout)
    exec(ASKED_AGAIN, {})
    assert capsys.readouterr().out == told[0] == told[1]
    assert told[0].count("True") > 10


@fewer
@given(small_questions)
def test_asked_in_another_order_of_calls(question: Question) -> None:
    """What was asked before does not change an answer."""
    solver = Solver(question)
    first = solver.best()
    solver.clashing()
    if first.possible:
        solver.best(forbid=list(first.chosen(question).values())[:1], demand=[[0]], freed=[("do", question.actions[0])])
    again = solver.best()
    np.testing.assert_array_equal(again.values, first.values)
    assert again.points == pytest.approx(first.points, rel=0, abs=0, nan_ok=True)
    assert again.effort == pytest.approx(first.effort, rel=1e-6, abs=1e-6)  # summed in no fixed order


def test_ties_go_to_the_way_named_first() -> None:
    """Two ways worth the same: the one that stands first in the files is taken, whichever action it is of."""
    ways = tuple(Way(action, "option", 5.0, label=str(n)) for action in ("run", "jump") for n in range(3))
    for order in (ways, ways[::-1]):
        question = Question(("run", "jump"), (5.0, 5.0), order)
        assert Solver(question).best().chosen(question) == {order[0].action: 0, order[3].action: 3}


def test_a_thousandth_counts_more_than_the_order() -> None:
    """A plan worth a thousandth of a point more is better however late its ways are named."""
    ways = tuple(
        Way(f"action {a}", "option", 5.0 + 0.001 * (a == 11 and n == 39)) for a in range(12) for n in range(40)
    )
    question = Question(tuple(f"action {a}" for a in range(12)), (5.0,) * 12, ways)
    answer = Solver(question).best()
    assert answer.points == 60.001
    assert answer.chosen(question)["action 11"] == 479


def hard_question() -> Question:
    """Twelve actions whose devices, sites and money are short: no quick proof."""
    rng = np.random.default_rng(5)
    actions = tuple(f"action {n}" for n in range(12))
    gear = tuple(Gear(f"switch {n}", (), 0.0, 1, float(rng.integers(3, 30))) for n in range(14))
    sites = tuple(PlayingSite(f"site {n}", 0.3, 2, f"site {n}") for n in range(7))
    ways = tuple(
        Way(action, "site", float(rng.integers(4, 8)), site.name, one.name, "switch", busy_s=float(rng.integers(5, 14)), near_s=17.0)
        for action in actions for site in sites for one in gear
    )  # fmt: skip
    together = tuple(
        TogetherNeed(a, b, None, frozenset((f"site {n}", f"site {n + 1}") for n in range(6)))
        for a in actions[:5] for b in actions[5:9]
    )  # fmt: skip
    return Question(actions, (5.0,) * 12, ways, gear, sites, together, most_parts=13, budget=0.0)


def test_cut_short_it_says_how_far_it_came() -> None:
    """Without time for a proof nothing is called proven, and the bound is passed by no plan."""
    question = hard_question()
    whole = Solver(question).best()
    assert whole.proven
    unproven = 0
    for limit in (1e-9, 1e-3, 1e-2, 0.03, 0.1, 0.13, 0.15, 0.17):
        short = Solver(question, limit=limit).best()
        assert short.effort <= max(0.2, 3 * limit)
        unproven += bool(short.possible) and not short.proven
        if short.possible is None:
            assert math.isnan(short.points)
            assert not short.proven
        else:
            assert short.points <= whole.points + 1e-9
            assert short.proven is (short.points == short.bound) or short.bound > short.points
        assert short.possible is not False
        assert short.bound >= whole.points
    assert unproven, "none of these limits stops the search between a first plan and the best"
    assert Solver(question, limit=1e-9).best().possible is None
    assert Solver(question, limit=1e-9).possible() is None


def dearest(question: Question, freed: Sequence[str] = ()) -> float:
    """Every action in the way that is worth most, or given up where it may be and is worth less than nothing."""
    most = [max(way.points for way in question.ways if way.action == action) for action in question.actions]
    return sum(max(best, 0.0) if a in freed else best for a, best in zip(question.actions, most, strict=True))


def test_the_bound_is_tight_from_both_sides() -> None:
    """Without a plan the bound is every action in its dearest way, by adding up: no more and no less, an action given up counting
    nothing where all its ways cost. With a plan cut short it lies between the best plan of all and that sum."""
    question = hard_question()
    costly = tuple(
        replace(way, points=way.points - 9) if way.action in ("action 0", "action 3") else way for way in question.ways
    )
    for asked in (question, replace(question, ways=costly)):
        for freed in ((), ("action 0",), ("action 0", "action 3", "action 7")):
            none = Solver(asked, limit=1e-9).best(freed=[("do", action) for action in freed])
            assert none.possible is None
            assert none.bound == pytest.approx(dearest(asked, freed), abs=1e-9)
    assert dearest(replace(question, ways=costly), ("action 0",)) > dearest(replace(question, ways=costly))
    best = Solver(question).best().points
    for limit in (1e-3, 1e-2, 0.03, 0.1, 0.13, 0.15):
        assert best <= Solver(question, limit=limit).best().bound <= dearest(question) + 1e-9


@given(seed=st.integers(0, 50), steps=st.integers(0, 40), more=st.integers(0, 1 << 30))
def test_no_plan_passes_the_bound_and_the_bound_is_the_least_such(seed: int, steps: int, more: int) -> None:
    """Brute force: cut short, the solver names a bound on its own sum, points in whole steps less something for ties below one step. The
    bound told is the most points that any such sum within it can have."""
    solver = Solver(small_question(seed, frozenset(FEATURES)))
    inner = steps * solver._step + more % solver._step
    response = SimpleNamespace(
        status=2, deterministic_time=0.0, best_objective_bound=float(inner), solution=[0] * len(solver._points)
    )
    told = solver._answer(response)
    within = [
        points
        for points in range(steps + 3)
        if any(points * solver._step - tie <= inner for tie in (0, solver._step - 1))
    ]
    assert told.bound == max(within) / 1000


def test_every_feature_is_met() -> None:
    """The questions tried reach every kind of way, plans with splitters, adapters and things bought, and clashes."""
    kinds, columns, clashes = set(), set(), 0
    for seed in range(200):
        question = small_question(seed, frozenset(FEATURES) - {("ties", "keep", "budget", "parts", "hub")[seed % 5]})
        solver = Solver(question)
        answer = solver.best()
        clashes += answer.possible is False
        kinds |= {(question.ways[n].how, question.ways[n].kind) for n in answer.chosen(question).values()}
        columns |= {name[0] for name, value in zip(solver.model.names, answer.values, strict=False) if value}
    assert {
        ("site", "stick"),
        ("site", "switch"),
        ("site", "controller"),
        ("option", ""),
        ("helper", ""),
        ("dropped", ""),
        ("chord", ""),
    } <= kinds
    assert {"way", "used", "single", "unit", "plugged", "split", "bought", "slowed", "aid"} <= columns
    assert 20 < clashes < 180
