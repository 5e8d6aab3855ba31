"""Prices that nobody stated are listed, and said first where they decide."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

import worked_cases
from said import said
from stickwright.allocation.prices import decided_by_prices, price_assumptions, unstated_prices
from stickwright.files.archetypes import archetype, usual_prices
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.player import Player
from stickwright.model.sharing import Placement
from stickwright.planning.plan import plan


def case(*actions: dict[str, Any], independence: float | None = None, helper: bool = True) -> Case:
    player = {
        "code": "X",
        "site": [{"name": "here", "part": "thumb"}],
        "helper": [{"name": "sister"}] if helper else [],
    }
    return Case(
        name="made up",
        player=Player.model_validate(player | ({} if independence is None else {"independence": independence})),
        kit=worked_cases.kit(),
        game=Game.model_validate({"name": "made up", "action": list(actions)}),
    )


LOOK = {"name": "look", "kind": "two-axis", "importance": 9, "option": "the camera follows"}


def test_a_missing_price_is_told_and_a_stated_one_is_not() -> None:
    """An option without a price is taken as 1 of 10, a helper as 5 where the player's independence is not known."""
    told = {(one.action, one.how): one.price for one in unstated_prices(case(LOOK))}
    assert told == {("look", "option"): 1.0, ("look", "helper"): 5.0}
    stated = case(LOOK | {"option_price": 1.0}, independence=5)
    assert unstated_prices(stated) == ()
    assert unstated_prices(case(LOOK | {"option_price": 1.0}, helper=False)) == ()


def test_prices_of_the_kind_of_game_are_nobodys_own() -> None:
    """A game started from a kind of game has its prices until somebody writes another."""
    game = archetype("racing")
    usual = usual_prices(game)
    (steer, accelerate), others = game.action[:2], game.action[2:]
    assert ("accelerate", "option") in usual
    own = game.model_copy(update={"action": (steer, accelerate.model_copy(update={"option_price": 9.5}), *others)})
    assert usual - usual_prices(own) == {("accelerate", "option")}
    assert usual_prices(game.model_copy(update={"archetype": ""})) == frozenset()
    told = unstated_prices(replace(case(), game=game, usual_prices=usual))
    assert ("accelerate", "option") in {(one.action, one.how) for one in told}
    (first, *_) = price_assumptions(told)
    assert (said(first.value)[-6:], said(first.replace_by)) == (" of 10", "the player's own answer, 0 to 10")


@pytest.mark.parametrize(
    ("changed", "first"),
    [
        ({}, True),
        ({"importance": 1}, False),  # not central beside another of 9
        ({"option_price": 1.0}, False),  # the player's own word
    ],
)
def test_a_price_that_decides_is_said_first(changed: dict[str, Any], first: bool) -> None:
    """1 of 10 leaves look to the game; the second best costs 2.5 more, so from 3.5 on the player would look."""
    made_up = case(LOOK | changed, {"name": "jump", "kind": "press", "importance": 9})
    placement = Placement("look", "option", second_cost=2.5)
    told = decided_by_prices(made_up, [placement], unstated_prices(made_up), {"look", "jump"})
    assert bool(told) is first
    if first:
        assert (
            "look is left to the game because of a cost to the player that nobody stated (1 of 10). Ask the player first: from "
            "3.5 on" in said(told)
        )
    far = replace(placement, second_cost=9.5)  # no price on the scale would change it
    assert decided_by_prices(made_up, [far], unstated_prices(made_up), {"look"}) == ""
    assert decided_by_prices(made_up, [placement], unstated_prices(made_up), set()) == ""


def test_the_plan_says_it_before_anything_else() -> None:
    """A whole plan: with no price for the camera, what decides it is said on the first page."""
    from stickwright.report.words import plan_words

    tove = worked_cases.whole_case("tove")
    actions = tuple(
        one.model_copy(update={"option_price": None, "importance": 9}) if one.name == "look" else one
        for one in tove.game.action
    )
    made = plan(replace(tove, game=tove.game.model_copy(update={"action": actions})), draws=60)
    assert made.sharing is not None
    assert said(made.sharing.ask_first).startswith(
        "look is left to the game because of a cost to the player that nobody"
    )
    assert any(said(one.what) == "Cost to the player of leaving look to the game" for one in made.sharing.assumptions)
    words = " ".join(plan_words(made).split())
    assert words.index("Look is left to the game because of a cost") < words.index(
        " ".join(said(made.sentence).split())[:40]
    )
