"""Ways left out before solving: never one that a best plan needs, with one way or one device forbidden or none."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from plain_sharing import every_plan
from small_questions import alike_devices, small_questions

from stickwright.allocation.dominance import needed_ways, pruned
from stickwright.allocation.problem import Gear, PlayingSite, Question, Way

seeds = st.integers(0, 10**9)


def no_best_plan_is_lost(question: Question) -> None:
    """The best plan, and the best without any one way, device or site, is worth the same with the ways kept."""
    plans = [(worth, set(choice.values())) for worth, choice in every_plan(question)]
    kept = set(needed_ways(question))
    few = [(worth, ways) for worth, ways in plans if ways <= kept]
    banned: list[set[int]] = [set(), *({number} for number in kept)]
    for name in {one for way in question.ways for one in (way.device, way.site) if one is not None}:
        banned.append({number for number, way in enumerate(question.ways) if name in (way.device, way.site)})
    for ban in banned:
        all_left = [worth for worth, ways in plans if not ways & ban]
        few_left = [worth for worth, ways in few if not ways & ban]
        assert max(few_left, default=None) == max(all_left, default=None), ban


@settings(max_examples=300)
@given(seeds.map(alike_devices))
def test_where_devices_are_alike_the_best_plan_stays(question: Question) -> None:
    """Of many devices of one sort only those are left out that nobody needs, second best included."""
    no_best_plan_is_lost(question)


@settings(max_examples=300)
@given(small_questions)
def test_with_every_feature_the_best_plan_stays(question: Question) -> None:
    """The same where everything else is asked too."""
    no_best_plan_is_lost(question)


@settings(max_examples=100)
@given(seeds.map(alike_devices))
def test_what_is_kept_or_barred_is_named_by_its_new_place(question: Question) -> None:
    """The smaller question has the same plans but for the ways left out, wishes included."""
    few, kept = pruned(question), needed_ways(question)
    assert few.ways == tuple(question.ways[number] for number in kept)
    plans = [(worth, set(choice.values())) for worth, choice in every_plan(question)]
    same = [(worth, ways) for worth, ways in plans if ways <= set(kept)]
    assert same == [(worth, {kept[number] for number in choice.values()}) for worth, choice in every_plan(few)]


def test_something_is_left_out() -> None:
    """In the questions tried ways are really left out, in many of them."""
    left_out = [len(question.ways) - len(needed_ways(question)) for question in map(alike_devices, range(200))]
    assert sum(count > 0 for count in left_out) > 30


def alike(*, points: tuple[float, ...] = (6.0, 6.0, 5.0), stock: tuple[int, ...] = (1, 1, 1)) -> Question:
    """One action, one site, one switch after another."""
    gear = tuple(Gear(f"switch {n}", ("3.5 mm 2-conductor",), 0.0, stock[n]) for n in range(len(points)))
    ways = tuple(Way("jump", "site", worth, "foot", gear[n].name, "switch") for n, worth in enumerate(points))
    return Question(("jump",), (7.0,), ways, gear, (PlayingSite("foot"),))


def test_two_better_ones_are_enough() -> None:
    """Where two better switches are free, a third is not needed: one of them stays for the second best."""
    assert needed_ways(alike()) == (0, 1)


def test_two_set_ups_of_one_device_are_one_device() -> None:
    """A better switch in two set-ups counts once: without it the third is needed."""
    question = alike()
    ways = (question.ways[0], replace(question.ways[1], device="switch 0", label="with a dish"), question.ways[2])
    assert needed_ways(replace(question, ways=ways)) == (0, 1, 2)


def test_one_better_one_is_not_enough() -> None:
    """One better switch does not do: without it the other is the best."""
    assert needed_ways(alike(points=(6.0, 5.0))) == (0, 1)
    assert needed_ways(alike(stock=(2, 0, 1))) == (0, 1, 2)


@pytest.mark.parametrize(
    "better",
    [{"alone": True}, {"busy_s": 1.0}, {"near_s": 1.0}, {"toggle": True}, {"site": "knee"}, {"role": "left stick pressed button"}],
    ids=lambda better: next(iter(better)),
)  # fmt: skip
def test_a_way_that_asks_for_more_replaces_nothing(better: dict[str, object]) -> None:
    """A better way that needs more of the part, or is something else, does not stand in."""
    question = alike()
    ways = tuple(replace(way, **better) if n < 2 else way for n, way in enumerate(question.ways))  # type: ignore[arg-type]
    sites = (*question.sites, PlayingSite("knee"))
    assert needed_ways(replace(question, ways=ways, sites=sites)) == (0, 1, 2)


@pytest.mark.parametrize("better", [{"plugs": ("USB-A",)}, {"current_a": 0.01}], ids=["plug", "current"])
def test_a_device_that_asks_for_more_replaces_nothing(better: dict[str, object]) -> None:
    """A device with another plug, or that draws more, does not stand in."""
    question = alike()
    gear = tuple(replace(one, **better) if n < 2 else one for n, one in enumerate(question.gear))  # type: ignore[arg-type]
    assert needed_ways(replace(question, gear=gear)) == (0, 1, 2)


def test_what_is_kept_or_barred_stays() -> None:
    """A way named in a wish is never left out; a better device that is barred stands in for nothing."""
    question = alike()
    assert needed_ways(replace(question, keep=(("jump", "switch 2", (2,)),))) == (0, 1, 2)
    assert needed_ways(replace(question, without=(("switch 2", (2,)),))) == (0, 1, 2)
    assert needed_ways(replace(question, without=(("switch 0", (0,)),))) == (0, 1, 2)


def test_rivals_need_devices_too() -> None:
    """As many better devices as other actions could take, and two more."""
    gear = tuple(Gear(f"switch {n}", ("3.5 mm 2-conductor",)) for n in range(4))
    ways = tuple(
        Way(action, "site", 6.0 - n / 10, site, gear[n].name, "switch")
        for action, site in (("jump", "foot"), ("run", "knee"))
        for n in range(4)
    )
    question = Question(("jump", "run"), (7.0, 7.0), ways, gear, (PlayingSite("foot"), PlayingSite("knee")))
    assert needed_ways(question) == (0, 1, 2, 4, 5, 6)
