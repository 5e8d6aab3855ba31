"""From a case and its wishes to the question put to the solver."""

from __future__ import annotations

from typing import Any

import pytest
from small_cases import action, case, fit, hub, shared, site, stick, switch, ways_of

from said import said
from stickwright.allocation.questions import together_pairs, wrong_wishes
from stickwright.errors import BadInput
from stickwright.model.case import Case
from stickwright.model.game import Action
from stickwright.model.wishes import Keep, Wishes
from stickwright.planning.site_planning import with_controllers

FIRST, SECOND = "bottom button in right cluster", "right button in right cluster"


def pad(**more: Any) -> dict[str, Any]:
    return {
        "name": "pad", "contact_height_mm": 16, "start_force_n": 0.4, "full_force_n": 1, "travel_mm": 6,
        "press_force_n": 0.3, **more,
    }  # fmt: skip


def hands(**more: Any) -> Case:
    """Two hands, two light switches, a helper."""
    return case(
        [site("left index"), site("right index")], [action("jump", helper=True), action("fire")],
        switches=[switch("pip", in_stock=2)], helpers=[{"name": "sister"}], **more,
    )  # fmt: skip


class TestTogether:
    """What must be possible at the same moment."""

    def test_each_pair_once_however_often_it_is_said(self) -> None:
        """Run names jump and jump names run: one need. In the order of the game."""
        run = Action(name="run", kind="hold", together=("jump",))
        jump = Action(name="jump", kind="press", together=("run", "run"))
        assert together_pairs((run, jump)) == (("run", "jump", None),)

    def test_a_chord_asks_for_all_its_pairs(self) -> None:
        """Three actions of a chord are three pairs, wanted only if the chord is played."""
        parts = tuple(Action(name=name, kind="press") for name in "abc")
        chord = Action(name="all", kind="chord", of=("a", "b", "c"))
        assert set(together_pairs((*parts, chord))) == {("a", "b", "all"), ("a", "c", "all"), ("b", "c", "all")}

    def test_what_the_game_does_not_know_is_left(self) -> None:
        """A name that no action has asks for nothing here: the reader of the file refuses it."""
        assert together_pairs((Action(name="run", kind="hold", together=("fly", "run")),)) == ()

    @pytest.mark.parametrize(("says", "fire"), [("yes", "left foot"), ("slows", "left foot"), ("no", None)])
    def test_a_pair_that_cannot_act_together_is_never_used_together(self, says: str, fire: str | None) -> None:
        """Steering at the hand, firing at the foot: as the 20 s test said."""
        this = case(
            [site("right index", press=None), site("left foot", "foot")],
            [action("steer", "two-axis"), action("fire", together=["steer"], drop_price=0)], sticks=[stick("ash")],
            switches=[switch("pip")], together=[{"sites": ["right index", "left foot"], "says": says}],
        )  # fmt: skip
        placed = {one.action: one.site for one in shared(this, {"right index": [fit("right index", "ash")]}).placements}
        assert placed == {"steer": "right index", "fire": fire}

    def test_slowed_parts_cost_points(self) -> None:
        """A part that is slowed by the other is taken only for want of one that is not."""

        def where(**said: str) -> str | None:
            this = case(
                [site("right index", press=None), site("left foot", "foot"), site("knee", "knee", minds=1)],
                [action("steer", "two-axis"), action("fire", together=["steer"])], sticks=[stick("ash")],
                switches=[switch("pip", face_mm=[80])],
                together=[{"sites": ["right index", name.replace("_", " ")], "says": says} for name, says in said.items()],
            )  # fmt: skip
            return shared(this, {"right index": [fit("right index", "ash")]}).placements[1].site

        assert where(left_foot="yes", knee="yes") == "left foot"
        assert where(left_foot="slows", knee="yes") == "knee"
        assert where(left_foot="slows", knee="no") == "left foot"

    @pytest.mark.parametrize("on", ["switch", "button"])
    def test_a_part_slowed_below_the_rate_is_not_used(self, on: str) -> None:
        """Twenty presses a minute of the 24 that can be kept up: slowed by 30 % it is too slow, on a switch and on a
        controller's button alike."""
        thumb = site("left thumb", "thumb", press={"rate_per_s": [0.8]}, reaches=[FIRST])
        this = case(
            [site("right index", press=None), thumb],
            [action("steer", "two-axis"), action("fire", busy_presses_per_min=20, together=["steer"], drop_price=0)],
            sticks=[stick("ash")], switches=[switch("pip")] if on == "switch" else [],
            controllers=[pad()] if on == "button" else [],
            together=[{"sites": ["right index", "left thumb"], "alone_per_s": 1.0, "both_per_s": 0.7}],
        )  # fmt: skip
        found = shared(this, {"right index": [fit("right index", "ash")]})
        assert {one.action: one.how for one in found.placements} == {"steer": "site", "fire": "dropped"}

    @pytest.mark.parametrize(
        ("second", "trial"),
        [("left thumb", [{"sites": ["right index", "left thumb"], "says": "slows"}]), ("right thumb", [])],
    )
    def test_a_loss_that_nobody_counted_refuses_nothing(self, second: str, trial: list[dict[str, Any]]) -> None:
        """Said to slow without a count, or two parts of one hand that nobody tried: used, at a cost, and to be confirmed."""
        this = case(
            [site("right index", press=None), site(second, "thumb", press={"rate_per_s": [0.8]})],
            [action("steer", "two-axis"), action("fire", busy_presses_per_min=20, together=["steer"], drop_price=0)],
            sticks=[stick("ash")], switches=[switch("pip")], together=trial,
        )  # fmt: skip
        found = shared(this, {"right index": [fit("right index", "ash")]})
        assert {one.action: one.how for one in found.placements} == {"steer": "site", "fire": "site"}
        assert sum(term.points for term in found.shared if term.what == "slowed") < 0
        (told,) = [one for one in found.findings if one.about == "together"]
        assert told.level == "query"
        assert f"at the right index and the {second}. To confirm: try both at once for 20 s (as assumed: " in said(
            told.text
        )
        tried = case(
            [site("right index", press=None), site(second, "thumb", press={"rate_per_s": [0.8]})],
            [action("steer", "two-axis"), action("fire", busy_presses_per_min=20, together=["steer"], drop_price=0)],
            sticks=[stick("ash")], switches=[switch("pip")], together=[{"sites": ["right index", second], "says": "no"}],
        )  # fmt: skip
        assert shared(tried, {"right index": [fit("right index", "ash")]}).placements[1].how == "dropped"


class TestStock:
    """What is there, and what it costs to get more."""

    def test_only_what_is_in_stock(self) -> None:
        """With --only-kit nothing is bought, whatever its price."""
        bought = case([site("left index"), site("right index")], [action("jump"), action("fire", drop_price=0)],
                      switches=[switch("pip", price=5)])  # fmt: skip
        assert ways_of(shared(bought)) == {"jump": "left index on pip", "fire": "left index on pip"}
        assert ways_of(shared(bought, wishes=Wishes(only_kit=True)))["fire"] == "dropped"

    def test_a_controller_to_be_bought_costs_once(self) -> None:
        """One controller for 40: a budget of 40 is enough, for its stick and its button together."""
        this = case(
            [site("right thumb", "thumb", press=None), site("right index", reaches=[FIRST])],
            [action("steer", "two-axis"), action("jump")], controllers=[pad(in_stock=0, price=40)],
        )  # fmt: skip
        this = Case(this.name, this.player, with_controllers(this.kit), this.game)
        ranking = {"right thumb": [fit("right thumb", "pad")]}
        found = shared(this, ranking, wishes=Wishes(budget=40.0))
        assert found.clash is None
        assert ways_of(found) == {"steer": "right thumb on pad", "jump": "right index on pad"}
        short = shared(this, ranking, wishes=Wishes(budget=39.0))
        assert short.clash is not None
        assert "spend 40.00 instead of 39.00" in [said(one.sentence) for one in short.clash.ways_out]


class TestWishes:
    """What-if: as it is said, or refused."""

    def test_without_a_part_a_device_a_helper(self) -> None:
        """What is not to be used is not used; what cannot be done without it clashes."""
        found = shared(hands(), wishes=Wishes(without=("left index",)))
        assert ways_of(found) == {"jump": "right index on pip", "fire": "right index on pip"}
        for helper in ("helper", "sister"):
            clash = shared(hands(), wishes=Wishes(without=(helper,), keep=(Keep("jump", "helper"),))).clash
            assert clash is not None
            assert {said(one) for one in clash.wishes} == {
                "jump is to stay with a helper",
                f"{helper} is not to be used",
            }
        clash = shared(hands(), wishes=Wishes(without=("pip",))).clash
        assert clash is not None
        assert "pip is not to be used" in map(said, clash.wishes)

    @pytest.mark.parametrize(
        ("keep", "how"),
        [
            (Keep("jump", "right index"), "right index on pip"), (Keep("jump", "pip"), "left index on pip"),
            (Keep("jump", "helper"), "helper"), (Keep("jump", "sister"), "helper"),
        ],
    )  # fmt: skip
    def test_what_is_to_stay_stays(self, keep: Keep, how: str) -> None:
        """An action stays at a site, on a device, with the helper, by whichever word."""
        assert ways_of(shared(hands(), wishes=Wishes(keep=(keep,))))["jump"] == how

    def test_a_device_stays_at_a_site(self) -> None:
        """Site = device: something at that site is done on it."""
        found = shared(hands(), wishes=Wishes(keep=(Keep("right index", "pip"),)))
        assert any(one.site == "right index" and one.device == "pip" for one in found.placements)

    def test_sockets_can_be_left_free(self) -> None:
        """A socket that is not to be used stays empty, and so does a whole hub."""
        this = case(
            [site("left index")], [action("jump", drop_price=0)], switches=[switch("pip")], hubs=[hub(switches=2)]
        )
        assert shared(this).placements[0].socket == "b1"
        assert shared(this, wishes=Wishes(without=("b1",))).placements[0].socket == "b2"
        assert shared(this, wishes=Wishes(without=("Pier",))).placements[0].how == "dropped"

    @pytest.mark.parametrize(
        ("wishes", "told"),
        [
            (Wishes(without=("left indx",)), ('--without: found "left indx"', "Did you mean 'left index'?")),
            (Wishes(budget=-3.0), ("--budget: found -3, expected 0 or more",)),
            (Wishes(budget=float("nan")), ("--budget: found nan, expected 0 or more",)),
            (Wishes(most_parts=-1), ("--max-parts: found -1, expected 0 or more",)),
            (Wishes(keep=(Keep("jmp", "left index"),)), ('--keep: found "jmp=left index"', "Did you mean 'jump'?")),
            (
                Wishes(keep=(Keep("jump", "left indx"),)),
                ('--keep: found "jump=left indx"', "Did you mean 'left index'?"),
            ),
        ],
    )
    def test_a_wrong_wish_is_told_what_to_type(self, wishes: Wishes, told: tuple[str, ...]) -> None:
        """Each wrong name with the nearest right one."""
        with pytest.raises(BadInput) as refused:
            shared(hands(), wishes=wishes)
        assert len(refused.value.problems) == 1
        for part in told:
            assert part in str(refused.value)

    def test_all_wrong_wishes_at_once(self) -> None:
        """Nobody should have to try again for each."""
        wishes = Wishes(without=("a", "b"), budget=-1.0, most_parts=-1, keep=(Keep("c", "d"),))
        assert len(wrong_wishes(hands(), wishes)) == 5

    def test_everything_that_can_be_wished_is_understood(self) -> None:
        """Every site, device, lead, hub, socket and helper of the case can be done without."""
        this = hands(controllers=[pad()], leads=[{"name": "lead 1 m", "plug": "USB", "length_m": 1}], hubs=[hub()])
        names = ("left index", "pip", "pad", "spare stick", "lead 1 m", "Pier", "b1", "sister", "helper", "option")
        assert wrong_wishes(this, Wishes(without=names)) == []
        keeps = (Keep("jump", "pad"), Keep("jump", FIRST), Keep("jump", "option"), Keep("left index", "pip"))
        assert wrong_wishes(this, Wishes(keep=keeps)) == []
