"""A controller held in one hand, in two, or resting; a stick on its grip.

All devices, players and figures are invented.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from small_cases import action, case, fit, hub, shared, site, stick, switch

from said import said
from stickwright.allocation.in_hand import USUAL_HOLDS_KG, held_for_s, holds_of
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.kit import Controller, Stick
from stickwright.model.player import Player, Site
from stickwright.model.sharing import Placement, Sharing

FACE, TRIGGER = "bottom button in right cluster", "bottom left front button"


def hand(name: str, **more: Any) -> dict[str, Any]:
    """A hand's part that reaches two buttons of a controller."""
    return site(name, "thumb", reaches=[FACE, TRIGGER], **more)


def pad(**more: Any) -> dict[str, Any]:
    return {"name": "pad", "press_force_n": 0.3, "plug": "USB", **more}


def ways(
    held: str, mass_g: float | None, *, at: str = "left thumb", session_min: float | None = 30, **holds: Any
) -> Any:
    """Ways to have a controller for the left thumb; `holds` by side."""
    sites = [{"name": f"{side} thumb", "part": "thumb", **said} for side, said in holds.items()]
    told = {} if session_min is None else {"session_min": session_min}
    player = Player.model_validate({"code": "Q1", "site": sites or [{"name": at, "part": "thumb"}], **told})
    mass = {} if mass_g is None else {"mass_g": mass_g}
    one = next(one for one in player.site if one.name == at)
    return holds_of(player, one, Controller.model_validate({"name": "pad", "held": held, **mass}))


class TestWhatAHandHolds:
    @pytest.mark.parametrize(
        ("held", "mass_g", "left_g", "right_g", "first"),
        [
            ("one hand", 200, 200, None, "one hand"), ("one hand", 201, 200, None, "resting"),
            ("two hands", 400, 200, 200, "two hands"), ("two hands", 401, 200, 200, "resting"),
            ("two hands", 300, 500, 100, "resting"), ("two hands", 300, 500, 150, "two hands"),
            ("resting", 50, 500, 500, "resting"),
        ],
    )  # fmt: skip
    def test_by_hand(self, held: str, mass_g: float, left_g: float, right_g: float | None, first: str) -> None:
        """A hand carries all of it, or each of two carries half; the weaker hand decides."""
        right = {} if right_g is None else {"right": {"holds_g": right_g, "holds_s": 3600}}
        found = ways(held, mass_g, left={"holds_g": left_g, "holds_s": 3600}, **right)
        assert found[0].how == first
        assert found[-1].how == "resting"
        if held != "resting" and first == "resting":
            assert "too heavy to hold" in said(found[0].why)

    def test_a_lighter_load_is_held_longer(self) -> None:
        """By hand from the published curve for hand and grip, time = 33.55 x effort^-1.61: half the load, 2^1.61 times as long."""
        assert held_for_s(0.1, 0.2, 300.0) == pytest.approx(300.0 * 2**1.61, rel=1e-3)
        assert held_for_s(0.2, 0.2, 300.0) == pytest.approx(300.0)

    @pytest.mark.parametrize(("session_min", "first"), [(15, "one hand"), (16, "resting"), (600, "resting")])
    def test_how_long_decides_too(self, session_min: float, first: str) -> None:
        """200 g for five minutes: 100 g for 5 x 2^1.61 = 15.3 minutes, and play lasts half an hour at most between pauses."""
        found = ways("one hand", 100, session_min=session_min, left={"holds_g": 200, "holds_s": 300})
        assert found[0].how == first

    @pytest.mark.parametrize("mass_g", [None, 900])
    def test_what_nobody_tried_costs_and_refuses_nothing(self, mass_g: float | None) -> None:
        """Unknown hand, or unknown mass and a weak hand: still offered held, at a cost; measured, it costs nothing."""
        untried = ways("one hand", mass_g)
        assert [one.how for one in untried] == ["one hand", "resting"]
        assert sum(term.points for term in untried[0].terms) < 0
        unweighed = ways("one hand", None, left={"holds_g": 1, "holds_s": 5})
        assert unweighed[0].how == "one hand"
        tried = ways("one hand", 1000 * USUAL_HOLDS_KG, left={"holds_g": 1000 * USUAL_HOLDS_KG, "holds_s": 3600})
        assert tried[0].terms == ()

    @pytest.mark.parametrize(("stick_g", "first"), [(50, "one hand"), (51, "resting"), (None, "one hand")])
    def test_a_stick_on_its_grip_is_held_too(self, stick_g: float | None, first: str) -> None:
        """150 g of controller and 50 g of stick in a hand that holds 200 g; a gram more rests. What nobody weighed costs."""
        told = {"holds_g": 200, "holds_s": 3600}
        player = Player.model_validate(
            {"code": "Q1", "session_min": 30, "site": [{"name": "left thumb", "part": "thumb", **told}]}
        )
        pad = Controller.model_validate({"name": "pad", "held": "one hand", "mass_g": 150})
        mass = {} if stick_g is None else {"mass_g": stick_g}
        spur = Stick.model_validate({"name": "spur", "start_force_n": 0.2, "full_force_n": 0.5, "travel_mm": 4, **mass})
        found = holds_of(player, player.site[0], pad, (spur,))
        assert found[0].how == first
        if first == "resting":
            assert "it weighs 201 g with spur on its grip" in said(found[0].why)
        assert bool(found[0].terms) == (stick_g != 50)

    def test_a_session_nobody_told_refuses_nothing(self) -> None:
        """How long it is played at a time is then the usual, and that is an assumption."""
        found = ways("one hand", 200, session_min=None, left={"holds_g": 200, "holds_s": 60})
        assert found[0].how == "one hand"
        assert found[0].terms

    def test_a_part_that_is_no_hand(self) -> None:
        """The chin may work it where it rests."""
        player = Player.model_validate({"code": "Q1", "site": [{"name": "chin", "part": "chin"}]})
        found = holds_of(player, Site(name="chin", part="chin"), Controller(name="pad", held="two hands"))
        assert [one.how for one in found] == ["resting"]

    def test_nobody_said_how(self) -> None:
        """As every kit file so far: no word on holding, and nothing changes."""
        player = Player.model_validate({"code": "Q1", "site": [{"name": "left thumb", "part": "thumb"}]})
        (only,) = holds_of(player, player.site[0], Controller(name="pad"))
        assert (only.how, only.place, only.limbs, only.terms) == ("", "", (), ())


def done(this: Sharing) -> dict[str, Placement]:
    return {one.action: one for one in this.placements}


HOLDS = {"holds_g": 400, "holds_s": 3600}


class TestInAPlan:
    def two_thumbs(self, held: str, mass_g: float, **more: Any) -> Case:
        """Two thumbs with buttons under the left one only, and a switch for either."""
        return case(
            [hand("left thumb", **HOLDS), site("right thumb", "thumb", **HOLDS)],
            [action("jump", input=FACE), action("menu", input="right button in right cluster")],
            switches=[switch("disc")], controllers=[pad(held=held, mass_g=mass_g, **more)],
            hubs=[hub(paired=1)], game={"remaps": False}, session_min=30,
        )  # fmt: skip

    def test_one_hand_leaves_the_other_free(self) -> None:
        """Held in the left hand, the right thumb presses the switch."""
        plan = done(shared(self.two_thumbs("one hand", 200)))
        assert (plan["jump"].device, plan["jump"].holding) == ("pad", "one hand")
        assert (plan["menu"].device, plan["menu"].site) == ("disc", "right thumb")

    def test_two_hands_are_both_taken(self) -> None:
        """Held in both hands no thumb presses a switch: it rests, since both actions are wanted."""
        plan = done(shared(self.two_thumbs("two hands", 200)))
        assert (plan["jump"].device, plan["jump"].holding) == ("pad", "resting")
        assert plan["menu"].device == "disc"

    def test_too_heavy_rests_with_the_reason(self) -> None:
        """900 g in a hand that holds 400: the action is done all the same, from a controller that rests."""
        plan = done(shared(self.two_thumbs("one hand", 900)))
        assert plan["jump"].holding == "resting"
        assert "900 g" in said(plan["jump"].holding_why)
        assert "400 g" in said(plan["jump"].holding_why)

    @pytest.mark.parametrize(
        ("mass", "holding", "assumed"),
        [
            ({"mass_g": 100}, "one hand", {"What the left hand holds comfortably"}),
            ({}, "resting", {"What the left hand holds comfortably", "Mass of pad"}),
        ],
    )
    def test_what_stands_in_is_told(self, mass: dict[str, int], holding: str, assumed: set[str]) -> None:
        """A light one is held by a hand that nobody tried; one that nobody weighed is usually heavier, and better rests."""
        made = shared(
            case([hand("left thumb")], [action("jump", input=FACE)], controllers=[pad(held="one hand", **mass)],
                 hubs=[hub(paired=1)], game={"remaps": False})
        )  # fmt: skip
        assert done(made)["jump"].holding == holding
        assert {said(one.what) for one in made.assumptions if "Holding." in getattr(one.what, "code", "")} == assumed

    def test_tried_and_weighed_nothing_stands_in(self) -> None:
        """Both figures are the player's own: no assumption about either."""
        tried = shared(self.two_thumbs("one hand", 200))
        assert not [one.what for one in tried.assumptions if "Holding." in getattr(one.what, "code", "")]


class TestAStickOnAGrip:
    def grip(self, *, left_reaches: bool = True, right_reaches: bool = False) -> Case:
        left = hand("left index") if left_reaches else site("left index")
        right = hand("right thumb") if right_reaches else site("right thumb", "thumb")
        return case(
            [site("left thumb", "thumb"), left, right],
            [action("steer", "two-axis"), action("jump", input=FACE, drop_price=0)],
            sticks=[stick("spur", fixed_to="pad")], controllers=[pad(held="one hand", mass_g=100)],
            hubs=[hub(paired=1)], game={"remaps": False},
        )  # fmt: skip

    def offers(self, at: str) -> dict[str, list[Any]]:
        return {at: [_fixed("spur", at)]}

    def test_the_same_hand_works_both(self) -> None:
        """Thumb on the stick and index on the button of one hand: done."""
        plan = done(shared(self.grip(), self.offers("left thumb")))
        assert (plan["steer"].device, plan["steer"].site) == ("spur", "left thumb")
        assert (plan["jump"].device, plan["jump"].site) == ("pad", "left index")

    def test_without_the_controller_it_is_nothing(self) -> None:
        """Nobody works the controller: its grip is not there, and steering cannot be had on the stick."""
        made = shared(self.grip(left_reaches=False), self.offers("left thumb"))
        assert all(one.device != "spur" for one in made.placements)

    def test_the_other_hand_does_not_work_that_controller(self) -> None:
        """Only the right thumb reaches its buttons, the stick is under the left one: not both."""
        made = shared(self.grip(left_reaches=False, right_reaches=True), self.offers("left thumb"))
        assert all(one.device != "spur" for one in made.placements)


def _fixed(name: str, at: str) -> Fit:
    return replace(fit(at, name), fixed_to="pad")
