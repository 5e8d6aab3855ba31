"""Where not everything can be had: the smallest set of wishes that clash, in words, and ways out that really are."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from random_cases import random_case, random_ranking, random_wishes
from small_cases import action, broken_rules, case, fit, hub, offers_of, shared, site, stick, switch

from said import said
from stickwright.allocation.concurrency import pairs_of
from stickwright.allocation.infeasible_core import raised, smallest_clash, ways_out
from stickwright.allocation.integer_model import Group
from stickwright.allocation.places import places
from stickwright.allocation.questions import question_of
from stickwright.allocation.solve import Solver
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.sharing import Clash
from stickwright.model.wishes import Keep, Wishes

FIRST = "bottom button in right cluster"
INNER_WORDS = re.compile(r"\b(group|row|column|pairs?|way|core|None|infeasible|question|solver)\b|[(]'")
"""What the program calls things inside, and people do not."""


NO_WISHES = Wishes()


@dataclass(frozen=True)
class Clashing:
    """A small case by hand: what clashes, what is said, what is given up for the cheapest way out."""

    case: Case
    wishes: tuple[str, ...]
    sentence: tuple[str, ...]
    out: str
    mended: Callable[[Case, Wishes], tuple[Case, Wishes]]
    """The cheapest way out, taken in the files or wishes themselves."""
    ranking: Mapping[str, Sequence[Fit]] | None = None
    wished: Wishes = NO_WISHES


HAND = [site("right index")]
HANDS = [site("left index"), site("right index")]
PIPS = [switch("pip", in_stock=4)]
STEER = {"right index": [fit("right index", "ash")]}


def _actions(this: Case, change: Callable[[Any], dict[str, Any]]) -> Case:
    changed = tuple(one.model_copy(update=change(one)) for one in this.game.action)
    return replace(this, game=this.game.model_copy(update={"action": changed}))


def _apart(this: Case, wished: Wishes) -> tuple[Case, Wishes]:
    return _actions(this, lambda _one: {"together": ()}), wished


def _without(name: str) -> Callable[[Case, Wishes], tuple[Case, Wishes]]:
    return lambda this, wished: (_actions(this, lambda one: {"drop_price": 0.0} if one.name == name else {}), wished)


def _stocked(name: str, more: int) -> Callable[[Case, Wishes], tuple[Case, Wishes]]:
    def mended(this: Case, wished: Wishes) -> tuple[Case, Wishes]:
        kit = this.kit.model_copy(
            update={
                "switch": tuple(
                    one.model_copy(update={"in_stock": one.in_stock + more * (one.name == name)})
                    for one in this.kit.switch
                )
            }
        )
        return replace(this, kit=kit), wished

    return mended


def _wishing(**other: Any) -> Callable[[Case, Wishes], tuple[Case, Wishes]]:
    return lambda this, wished: (this, replace(wished, **other))


def _plugged(**other: Any) -> Callable[[Case, Wishes], tuple[Case, Wishes]]:
    more = case(HAND, [], hubs=[{**hub("second hub"), **other}]).hubs
    return lambda this, wished: (replace(this, hubs=(*this.hubs, *more)), wished)


def _helping(number: int) -> Callable[[Case, Wishes], tuple[Case, Wishes]]:
    def mended(this: Case, wished: Wishes) -> tuple[Case, Wishes]:
        helper = tuple(one.model_copy(update={"most_actions": number}) for one in this.player.helper)
        return replace(this, player=this.player.model_copy(update={"helper": helper})), wished

    return mended


CLASHES = {
    "one site for two at the same moment": Clashing(
        case(HAND, [action("sprint", "hold", longest_hold_s=2), action("fire", together=["sprint"])], switches=PIPS),
        ("sprint and fire must be possible at the same time", "sprint is wanted, and only right index can do it",
         "fire is wanted, and only right index can do it"),
        ("Sprint and fire must be possible at the same time, but both need the right index. Resolve by one of: do sprint and "
         "fire one after the other; leave out sprint",),
        "do sprint and fire one after the other", _apart,
    ),
    "a stick and a press at one site": Clashing(
        case(HAND, [action("steer", "two-axis", importance=8), action("sprint", together=["steer"])], switches=PIPS, sticks=[stick("ash")]),
        ("steer and sprint must be possible at the same time", "steer is wanted, and only right index can do it",
         "sprint is wanted, and only right index can do it"),
        ("both need the right index. Resolve by one of: leave out sprint (or find an option of the game or a helper for it); "
         "leave out steer",),
        "leave out sprint (or find an option of the game or a helper for it)", _without("sprint"), STEER,
    ),
    "two parts of one limb": Clashing(
        case([site("right index"), site("right thumb", "thumb")],
             [action("steer", "two-axis"), action("sprint", together=["steer"])], switches=PIPS, sticks=[stick("ash")],
             together=[{"sites": ["right index", "right thumb"], "says": "no"}]),
        ("steer and sprint must be possible at the same time", "steer is wanted, and only right index can do it",
         "sprint is wanted, and only right index or right thumb can do it"),
        ("but only right index can do steer, only right index or right thumb can do sprint, and these cannot be used together",),
        "do steer and sprint one after the other", _apart, STEER,
    ),
    "not enough sockets": Clashing(
        case(HANDS, [action("jump"), action("fire"), action("menu")], switches=PIPS, hubs=[hub(switches=2)]),
        ("jump is wanted, and only left index or right index can do it", "fire is wanted, and only left index or right index can do it",
         "menu is wanted, and only left index or right index can do it", "only 2 sockets take a switch with a 3.5 mm 2-conductor plug"),
        ("These cannot all be met: jump, fire and menu are wanted, and only left index or right index can do them; only 2 "
         "sockets take a switch",),
        "add a hub with one more socket for a switch (3.5 mm 2-conductor plug)", _plugged(),
    ),
    "no socket for the plug": Clashing(
        case(HAND, [action("steer", "two-axis")], sticks=[stick("ash", plug="USB")], hubs=[hub()]),
        ("steer is wanted, and only right index can do it", "no socket takes a stick as left stick with a USB-A plug"),
        ("no socket takes a stick as left stick with a USB-A plug. Without any one of them, the others can. Resolve by one of: add a hub",),
        "add a hub with one more socket for a stick as left stick (USB-A plug)",
        _plugged(socket=[{"name": "u1", "takes": "USB", "role": "assignable"}]), STEER,
    ),
    "a socket that gives too little current": Clashing(
        case(HAND, [action("steer", "two-axis")], sticks=[stick("ash", plug="USB", current_ma=90)],
             hubs=[{"name": "Pier", "socket": [{"name": "u1", "takes": "USB", "role": "assignable", "current_ma": 50}]}]),
        ("steer is wanted, and only right index can do it", "no socket supplies the 90 mA that a stick as left stick needs"),
        ("no socket supplies the 90 mA",),
        "add a hub with one more socket for a stick as left stick (USB-A plug)",
        _plugged(socket=[{"name": "u2", "takes": "USB", "role": "assignable", "current_ma": 500}]), STEER,
    ),
    "stock": Clashing(
        case(HANDS, [action("jump"), action("fire"), action("menu")], switches=[switch("pip")]),
        ("jump is wanted, and only left index or right index can do it", "fire is wanted, and only left index or right index can do it",
         "of pip, only one is in stock"),
        ("of pip, only one is in stock. Without any one of them, the others can. Resolve by one of: get 2 more of pip; leave out",),
        "get 2 more of pip", _stocked("pip", 2),
    ),
    "money": Clashing(
        case(HANDS, [action("jump"), action("fire"), action("menu")], switches=[switch("pip", price=30)]),
        ("no more than 20 may be spent", "jump is wanted, and only left index or right index can do it",
         "menu is wanted, and only left index or right index can do it", "of pip, only one is in stock"),
        ("no more than 20 may be spent",), "spend 60.00 instead of 20.00", _wishing(budget=60.0), wished=Wishes(budget=20.0),
    ),
    "how much may stand around": Clashing(
        case(HANDS, [action("jump"), action("fire"), action("menu")], switches=PIPS),
        ("no more than 1 device may be used", "jump is wanted, and only left index or right index can do it",
         "fire is wanted, and only left index or right index can do it"),
        ("no more than 1 device may be used",), "allow 3 devices instead of 1", _wishing(most_parts=3),
        wished=Wishes(most_parts=1),
    ),
    "kept where it may not be": Clashing(
        case(HANDS, [action("jump")], switches=PIPS),
        ("jump is to stay with left index", "left index is not to be used"),
        ("These cannot all be met: jump is to stay with left index; left index is not to be used",),
        "let jump go elsewhere than left index", _wishing(keep=()),
        wished=Wishes(keep=(Keep("jump", "left index"),), without=("left index",)),
    ),
    "kept where it cannot be": Clashing(
        case([site("left index"), site("chin", "chin", press=None)], [action("jump")], switches=PIPS),
        ("jump is to stay with chin, which is not possible (no press was tried at the chin)",),
        ("Jump is to stay with chin, which is not possible (no press was tried at the chin). To resolve: let jump go elsewhere",),
        "let jump go elsewhere than chin", _wishing(keep=()), wished=Wishes(keep=(Keep("jump", "chin"),)),
    ),
    "kept with nobody": Clashing(
        case(HANDS, [action("jump")], switches=PIPS), 
        ("jump is to stay with the game itself, which is not possible (no option of the game is entered for it)",),
        ("no option of the game is entered for it",), "let jump go elsewhere than the game itself", _wishing(keep=()),
        wished=Wishes(keep=(Keep("jump", "option"),)),
    ),
    "nothing left to press": Clashing(
        case(HANDS, [action("jump")], switches=PIPS),
        ("pip is not to be used", "jump is wanted, and only left index or right index can do it"),
        ("pip is not to be used",), "use pip after all", _wishing(without=()), wished=Wishes(without=("pip",)),
    ),
    "more presses than a minute holds": Clashing(
        case(HAND, [action("jump", busy_presses_per_min=40), action("fire", busy_presses_per_min=40)], switches=PIPS),
        ("jump is wanted, and only right index can do it", "fire is wanted, and only right index can do it",
         "the right index may press for no more than 60% of the busiest minute"),
        ("the right index may press for no more than 60% of the busiest minute",), 
        "slow the game down, so that the right index presses less often",
        lambda this, wished: (_actions(this, lambda _one: {"busy_presses_per_s": 20 / 60}), wished),
    ),
    "a helper who does only so much": Clashing(
        case([site("right index", press=None)], [action("map", helper=True), action("menu", helper=True)],
             helpers=[{"name": "sister", "most_actions": 1}]),
        ("map is wanted, and only sister can do it", "menu is wanted, and only sister can do it", "sister can take over only 1 action"),
        ("map and menu are wanted, and only sister can do them; sister can take over only 1 action",),
        "let sister take over 2 actions", _helping(2),
    ),
    "a hub without a second controller": Clashing(
        case([site("right index", press=None)], [action("menu", helper=True)], helpers=[{"name": "sister"}], hubs=[hub()]),
        ("menu is wanted, and only sister can do it", "the hub takes no second controller"),
        ("the hub takes no second controller",), "use a hub that takes 1 second controller", _plugged(paired=1),
    ),
    "a chord for one finger": Clashing(
        case(HAND, [action("left lane"), action("right lane"),
                    action("both lanes", "chord", of=["left lane", "right lane"])], switches=PIPS),
        ("left lane and right lane must be possible at the same time", "left lane is wanted, and only right index can do it",
         "right lane is wanted, and only right index can do it", "both lanes is wanted, by pressing left lane and right lane together"),
        ("both lanes is wanted, by pressing left lane and right lane together",), "do left lane and right lane one after the other",
        lambda this, wished: (_actions(this, lambda one: {"option": "single lanes"} if one.kind == "chord" else {}), wished),
    ),
}  # fmt: skip


@pytest.fixture(params=CLASHES, ids=list(CLASHES))
def made(request: pytest.FixtureRequest) -> Clashing:
    return CLASHES[request.param]


def clash_in(one: Clashing) -> Clash:
    clash = shared(one.case, one.ranking, wishes=one.wished).clash
    assert clash is not None
    return clash


def test_what_clashes_is_said(made: Clashing) -> None:
    """The members, one clause each, and the sentence with the ways out, in the trade's words."""
    clash = clash_in(made)
    assert {said(one) for one in clash.wishes} == set(made.wishes)
    sentence = said(clash.sentence)
    for part in made.sentence:
        assert part in sentence
    for text in map(said, (clash.sentence, *clash.wishes, *(one.sentence for one in clash.ways_out))):
        assert not INNER_WORDS.search(text), text
        assert "  " not in text
        assert ".." not in text


def test_ways_out_are_cheapest_first(made: Clashing) -> None:
    """The first way out costs least, and is the one by hand."""
    clash = clash_in(made)
    assert said(clash.ways_out[0].sentence) == made.out
    prices = [one.price for one in clash.ways_out]
    assert prices == sorted(prices)
    assert 1 <= len(prices) <= 3


def test_the_way_out_taken_in_the_files_makes_it_possible(made: Clashing) -> None:
    """Whoever does what the cheapest way out says, no more, has a plan without a clash that keeps every rule."""
    this, wished = made.mended(made.case, made.wished)
    found = shared(this, made.ranking, wishes=wished)
    assert found.clash is None
    assert broken_rules(this, found, wished) == []


def test_the_plan_is_given_all_the_same(made: Clashing) -> None:
    """For the cheapest way out: every action has its line, and it says that not everything was had."""
    found = shared(made.case, made.ranking, wishes=made.wished)
    assert [one.action for one in found.placements] == [one.name for one in made.case.game.action]
    assert any(one.how in ("site", "helper") for one in found.placements)
    assert "Some requests cannot be met" in said(found.sentence)
    assert said(found.solved).startswith("Once the cheapest way out is taken, no other layout scores higher (proven")


def solver_of(this: Case, ranking: Mapping[str, Sequence[Fit]] | None, wished: Wishes) -> Solver:
    found = places(this, offers_of(this, ranking or {}))
    return Solver(question_of(this, found, pairs_of(this.player), wished))


def is_smallest(solver: Solver, core: Sequence[Group], freed: frozenset[Group] = frozenset()) -> bool:
    """Together they cannot be had, and without any one of them, and all else left aside, the rest can."""
    outside = {group for group in solver.groups if group not in core} | freed
    return solver.possible(freed=outside) is False and all(solver.possible(freed=outside | {one}) for one in core)


def test_the_clash_is_the_smallest(made: Clashing) -> None:
    """Without any one member the rest could be had: each is named for a reason."""
    solver = solver_of(made.case, made.ranking, made.wished)
    assert is_smallest(solver, smallest_clash(solver))


@given(st.integers(0, 10**6))
@settings(max_examples=25)
def test_the_clash_is_the_smallest_and_its_ways_out_are_some(seed: int) -> None:
    """Law, over invented cases: the clash is smallest, each way out makes a plan possible and none gives up more than it
    must, and limits are raised no further than they must be."""
    this = random_case(seed, most_actions=5)
    solver = solver_of(this, random_ranking(seed, this), random_wishes(seed, this))
    core = smallest_clash(solver)
    if not core:
        assert solver.possible()
        return
    assert is_smallest(solver, core)
    out = ways_out(solver, core)
    assert out
    for one in out:
        assert solver.possible(freed=one.freed)
        assert not any(solver.possible(freed=one.freed - {group}) for group in one.freed)
        question, freed, limits = raised(solver.question, one.freed)
        assert Solver(question).possible(freed=freed)
        assert all(limit > 0 for limit in limits.values())


class TestNobodyCan:
    """An action that no part can do."""

    THIS = case([site("right index", press={"force_n": [0.1]}), site("chin", "chin", press=None)], [action("jump"), action("fire")],
                switches=[switch("pip")])  # fmt: skip

    def test_it_is_named_with_the_nearest_reason(self) -> None:
        """Who comes nearest, on what, and what is missing."""
        clash = shared(self.THIS).clash
        assert clash is not None
        assert said(clash.sentence).startswith(
            "Nobody can do jump with this kit (right index on pip: needs 0.20 N, more than all"
        )
        assert "no press was tried at the chin" in said(clash.sentence)
        assert "Also, nobody can do fire" in said(clash.sentence)
        assert (
            said(clash.ways_out[0].sentence)
            == "leave out jump and fire (or find options of the game or helpers for them)"
        )

    def test_the_finding_names_file_and_action_and_what_to_do(self) -> None:
        """Each such action, by its place in game.toml, with what could be done about it."""
        faults = [said(one.text) for one in shared(self.THIS).findings if one.level == "fault"]
        assert [text.split(":")[0] for text in faults] == ["Action 1 of the game, jump", "Action 2 of the game, fire"]
        assert all(
            "needs 0.20 N" in text and "Add an option, a helper or the cost to the player" in text for text in faults
        )

    def test_every_action_keeps_its_line(self) -> None:
        """Left out, with the reason: why can be asked of it."""
        placements = shared(self.THIS).placements
        assert [one.how for one in placements] == ["dropped", "dropped"]
        assert all("nobody can do it with this kit: right index on pip" in said(one.reason) for one in placements)


class TestSeveral:
    """Several clashes at once."""

    THIS = case(
        [site("right index")], [action("jump"), action("fire", together=["jump"]), action("steer", "two-axis"), action("menu")],
        switches=[switch("pip")],
    )  # fmt: skip

    def test_all_are_told_and_the_ways_out_settle_all(self) -> None:
        """Nobody can steer; one pip is not enough; jump and fire need one finger. Each is said, smallest first."""
        clash = shared(self.THIS).clash
        assert clash is not None
        assert said(clash.sentence).startswith("Nobody can do steer with this kit")
        assert said(clash.sentence).count("Also, ") == 2
        assert "Resolve by one of: " in said(clash.sentence)
        for one in clash.ways_out:
            assert any("steer" in said(text) for text in one.gives_up)

    def test_two_dozen_at_once_end_in_a_plan(self) -> None:
        """Twelve pairs for one finger, too many to search them all: a way out is found all the same."""
        actions = [action(f"hold {n}", "hold", helper=True) for n in range(12)]
        actions += [action(f"press {n}", together=[f"hold {n}"]) for n in range(12)]
        this = case(
            [site("right index", press={"most_switches": 6})],
            actions,
            switches=[switch("pip", in_stock=1)],
            helpers=[{"name": "sister", "most_actions": 1}],
        )
        found = shared(this)
        assert found.clash is not None
        assert found.clash.ways_out
        assert len(found.placements) == 24
        assert any(one.how == "site" for one in found.placements)
