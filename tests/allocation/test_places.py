"""Every way to do every action, and for what cannot be, why not."""

from __future__ import annotations

from typing import Any

import pytest
from small_cases import action, case, fit, hub, offers_of, shared, site, stick, switch, ways_of

from said import said
from stickwright.allocation.places import PossibleWays, place_of, places, roles_wanted
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.game import Game
from stickwright.model.player import Site

PAD = {
    "name": "pad", "contact_height_mm": 16, "start_force_n": 0.4, "full_force_n": 1.0, "travel_mm": 6, "press_force_n": 0.3,
}  # fmt: skip
FIRST = "bottom button in right cluster"


def found(this: Case, ranking: dict[str, list[Fit]] | None = None, **named: Any) -> PossibleWays:
    return places(this, offers_of(this, ranking or {}), **named)


def why_not(this: PossibleWays, name: str, at: str) -> str:
    return "; ".join(said(one.why) for one in this.refused if one.action == name and one.site == at)


def devices(this: PossibleWays, name: str) -> list[tuple[str | None, str | None, str | None, bool]]:
    return [(way.site, way.device, way.control, way.paired) for way in this.ways if way.action == name]


class TestRoles:
    """What a socket must feed."""

    def test_sticks_without_an_input_are_taken_in_order_and_said(self) -> None:
        """The first stick action is taken to be the left stick, the second the right one, and that is marked."""
        game = Game.model_validate({"name": "g", "action": [action("walk", "two-axis"), action("look", "two-axis")]})
        roles, assumed = roles_wanted(game)
        assert roles == {"walk": "left stick", "look": "right stick"}
        assert [said(one.value) for one in assumed] == ["left stick", "right stick"]
        assert "walk" in said(assumed[0].what)

    def test_a_stick_that_is_named_is_not_given_twice(self) -> None:
        """Look has the left stick by the file, so walking gets the right one."""
        game = Game.model_validate(
            {"name": "g", "action": [action("walk", "two-axis"), action("look", "two-axis", input="left stick")]}
        )
        roles, assumed = roles_wanted(game)
        assert roles == {"walk": "right stick", "look": "left stick"}
        assert len(assumed) == 1

    def test_a_third_stick_action_may_be_any_stick(self) -> None:
        """There are two sticks: a third action without an input takes what is left, if anything."""
        game = Game.model_validate({"name": "g", "action": [action(name, "one-axis") for name in "abc"]})
        assert roles_wanted(game)[0]["c"] is None

    @pytest.mark.parametrize(("remaps", "role"), [(True, None), (False, FIRST)])
    def test_buttons_matter_only_where_the_game_cannot_move_them(self, remaps: bool, role: str | None) -> None:
        """Where any button can stand for any action the socket does not matter."""
        game = Game.model_validate({"name": "g", "remaps": remaps, "action": [action("jump", input=FIRST)]})
        assert roles_wanted(game)[0]["jump"] == role


class TestSticks:
    """Sticks at a site."""

    THIS = case([site("right index")], [action("steer", "two-axis")], sticks=[stick("ash"), stick("elm"), stick("oak")])

    def points_of(self, *fits: Fit) -> dict[str | None, float]:
        return {way.device: way.points for way in found(self.THIS, {"right index": list(fits)}).ways}

    def test_the_ranking_of_the_site_is_kept(self) -> None:
        """What ranks first at the site is worth most there, even where this scale would turn it round."""
        points = self.points_of(fit("right index", "ash", bits=1.0), fit("right index", "elm", bits=3.0))
        assert points["ash"] > points["elm"]
        this = shared(
            self.THIS, {"right index": [fit("right index", "ash", bits=1.0), fit("right index", "elm", bits=3.0)]}
        )
        assert this.placements[0].device == "ash"

    def test_a_device_of_its_own_is_one_more_part(self) -> None:
        """A stick stands in the plan as one more part to set up; the stick of a controller does not, as the controller counts once."""
        own = found(self.THIS, {"right index": [fit("right index", "ash")]}).ways
        assert ["part" in [term.what for term in way.terms] for way in own if way.device == "ash"] == [True]
        this = case([site("right index")], [action("steer", "two-axis")], controllers=[PAD])
        held = found(this, {"right index": [fit("right index", "pad")]}).ways
        told = [[term.what for term in way.terms] for way in held if way.device == "pad"]
        assert told
        assert not any("part" in what for what in told)

    def test_a_stick_that_breaks_a_rule_gives_way_to_one_that_keeps_them(self) -> None:
        """Finer, but too heavy: it is taken only where no stick keeps the rules, and the rule is said."""
        fine = fit("right index", "ash", bits=3.0, fails=["Too heavy right: needs 0.5 N."])
        both = shared(self.THIS, {"right index": [fit("right index", "elm", bits=1.5), fine]})
        assert both.placements[0].device == "elm"
        alone = shared(self.THIS, {"right index": [fine]}).placements[0]
        assert alone.device == "ash"
        assert "Too heavy right: needs 0.5 N" in said(alone.reason)

    def test_a_site_kept_for_one_action_says_so(self) -> None:
        """The site's own action, from the player file, is the reason why another stick action is not offered there."""
        this = case([site("chin", "chin", action="look")], [action("steer", "two-axis"), action("look", "two-axis")])
        assert why_not(found(this), "steer", "chin") == "the chin is reserved for look"

    def test_no_force_read_is_said(self) -> None:
        """Without a stick reading no stick is offered, and that is the reason."""
        assert why_not(found(self.THIS), "steer", "right index") == "no stick force was measured at the right index"


class TestPresses:
    """Switches and buttons at a site."""

    def test_each_switch_that_fits_is_a_way(self) -> None:
        """A light switch fits, a heavy one is refused with its figure."""
        this = case([site("right index")], [action("jump")], switches=[switch("pip"), switch("slab", force_n=3.5)])
        places_found = found(this)
        assert devices(places_found, "jump") == [("right index", "pip", None, False)]
        assert "needs 3.5 N" in why_not(places_found, "jump", "right index")

    def test_out_of_stock_is_not_taken_for_out_of_reach(self) -> None:
        """A switch that would do but is not there, nor to be had, is refused for that, not for the player."""
        this = case([site("right index")], [action("jump")], switches=[switch("pip", in_stock=0)])
        assert (
            why_not(found(this), "jump", "right index")
            == "it would do, but none is in stock, and the kit has no price for it"
        )
        priced = case([site("right index")], [action("jump")], switches=[switch("pip", in_stock=0, price=30)])
        assert devices(found(priced), "jump") == [("right index", "pip", None, False)]

    @pytest.mark.parametrize(
        ("sites", "switches", "why"),
        [
            ([site("right index")], [], "the kit has no switch"),
            ([site("right index", press=None)], [switch("pip")], "no press was tried at the right index"),
        ],
    )
    def test_nothing_to_press_with(self, sites: list[Any], switches: list[Any], why: str) -> None:
        """No switch in the kit, and no press tried, are two things."""
        assert why_not(found(case(sites, [action("jump")], switches=switches)), "jump", "right index") == why

    def test_a_toggle_is_a_second_way_to_hold(self) -> None:
        """A hold too long for the player can be pressed on and off where the game allows it; else the hold is the reason."""

        def wanted(**more: Any) -> Case:
            return case(
                [site("right index", press={"hold_s": [4]})],
                [action("sprint", "hold", longest_hold_s=5, **more)],
                switches=[switch("pip")],
            )

        assert found(wanted()).ways == ()
        assert "needs holds of 5.0 s" in why_not(found(wanted()), "sprint", "right index")
        assert [way.toggle for way in found(wanted(toggle="once")).ways] == [True]

    def test_a_hold_that_no_toggle_saves_says_both(self) -> None:
        """Too long to hold and too often to toggle: both are said, and the toggle is not offered as the remedy."""
        this = case(
            [site("left foot", "foot", press={"hold_s": [4], "rate_per_s": [0.6]})],
            [action("sprint", "hold", longest_hold_s=5, busy_presses_per_min=10, toggle="once")], switches=[switch("pip")],
        )  # fmt: skip
        told = why_not(found(this), "sprint", "left foot")
        assert "needs holds of 5.0 s" in told
        assert "with press on, press off: the busiest minute has 20 presses" in told
        assert "would do" not in told

    def test_buttons_within_reach_only(self) -> None:
        """A controller's button is a way only for the part that reaches it, and only if the game's role allows."""
        this = case(
            [site("right thumb", "thumb", reaches=[FIRST]), site("left thumb", "thumb")],
            [action("jump", input=FIRST), action("menu", input="right button in right cluster")],
            controllers=[PAD], game={"remaps": False},
        )  # fmt: skip
        assert devices(found(this), "jump") == [("right thumb", "pad", FIRST, False)]
        assert devices(found(this), "menu") == []

    @pytest.mark.parametrize(
        ("more", "wanted"),
        [
            ({"usb_stick": "left stick", "pairs": False}, [("left stick", False)]),
            ({"usb_stick": None, "pairs": False}, []),
            ({"usb_stick": "right stick", "pairs": False}, []),
            ({"usb_stick": "left stick"}, [("left stick", False), ("left stick", True)]),
            ({"usb_stick": None}, [("left stick", True)]),
        ],
    )
    def test_the_stick_of_a_controller_behind_a_hub(self, more: Any, wanted: list[tuple[str, bool]]) -> None:
        """Plugged in it gives the stick that its USB gives, and none where that was not said; paired it gives its own."""
        this = case(
            [site("right index")], [action("steer", "two-axis", input="left stick")],
            controllers=[{**PAD, "sticks": ["left stick"], **more}], hubs=[hub()],
        )  # fmt: skip
        ways = devices(found(this, {"right index": [fit("right index", "pad")]}), "steer")
        assert [(control, paired) for _, device, control, paired in ways if device == "pad"] == wanted

    def test_plugged_or_paired_with_a_hub(self) -> None:
        """With a hub a controller is plugged in or paired, each as it can be."""

        def ways(**more: Any) -> list[bool]:
            this = case(
                [site("right thumb", "thumb", reaches=[FIRST])],
                [action("jump")],
                controllers=[{**PAD, **more}],
                hubs=[hub()],
            )
            return [paired for *_, paired in devices(found(this), "jump")]

        assert ways() == [False, True]
        assert ways(usb_buttons=False) == [True]
        assert ways(pairs=False) == [False]
        assert ways(pairs=False, usb_buttons=False) == []


class TestLeftToOthers:
    """Options, helpers, chords, and going without."""

    def ways(self, **more: Any) -> list[tuple[str, str, float]]:
        this = case(
            [site("right index", press=None)], [action("jump", importance=6, **more)],
            helpers=[{"name": "sister"}, {"name": "carer"}], independence=4,
        )  # fmt: skip
        return [(way.how, way.label, way.points) for way in found(this).ways]

    def test_nobody_unless_somebody_is_named(self) -> None:
        """Without option, helper or price of going without an action is left to nobody."""
        assert self.ways() == []

    def test_every_helper_at_the_players_price(self) -> None:
        """Each helper is a way; the action's own price counts, or else what independence is worth."""
        assert self.ways(helper=True) == [("helper", "sister", 2.0), ("helper", "carer", 2.0)]
        assert self.ways(helper=True, helper_price=0.5)[0] == ("helper", "sister", 5.5)

    def test_option_and_going_without(self) -> None:
        """The game's option at its price; going without at its own, and not done."""
        assert self.ways(option="auto", option_price=2) == [("option", "auto", 4.0)]
        assert self.ways(drop_price=0) == [("dropped", "", 0.0)]


class TestWhere:
    """Which parts come into question."""

    def test_a_part_the_team_refuses_is_left_out_with_its_reason(self) -> None:
        """The treating team's no is a reason of its own."""
        this = case([site("chin", "chin", cleared="no")], [action("jump")], switches=[switch("pip")])
        refused = found(this, usable=[])
        assert refused.ways == ()
        assert why_not(refused, "jump", "chin") == "left out, because the treating team has not agreed"

    def test_both_hands_hold_one_controller(self) -> None:
        """Fingers of either hand share the place where a controller is held; a foot has its own."""
        where = [
            place_of(Site.model_validate(site(name, part)))
            for name, part in (
                ("left thumb", "thumb"),
                ("right index", "fingertip"),
                ("left foot", "foot"),
                ("chin", "chin"),
            )
        ]
        assert where[0] == where[1] == "hands"
        assert len(set(where)) == 3

    def test_ties_go_to_what_the_files_name_first(self) -> None:
        """Two parts and two switches that are as good: the first action gets the first part, and the first switch."""
        parts = [site("left index"), site("right index")]
        this = case(parts, [action("jump"), action("fire", together=["jump"])], switches=[switch("pip"), switch("pop")])
        assert ways_of(shared(this)) == {"jump": "left index on pip", "fire": "right index on pop"}
        turned = case(
            parts[::-1], [action("jump"), action("fire", together=["jump"])], switches=[switch("pop"), switch("pip")]
        )
        assert ways_of(shared(turned)) == {"jump": "right index on pop", "fire": "left index on pip"}
