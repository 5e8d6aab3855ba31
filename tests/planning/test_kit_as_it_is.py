"""Kit as it is in practice: one stick set in several ways, devices with modes, sticks made to measure.

All sticks, players and figures are invented.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest

import worked_cases
from said import said
from stickwright.errors import BadInput
from stickwright.mechanics.setups import at_contact, bench_log_sd, setups_of
from stickwright.mechanics.to_order import kit_to_order
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit, MadeToOrder, Stick
from stickwright.model.plan import Plan
from stickwright.model.player import Player
from stickwright.planning.plan import plan
from stickwright.planning.summary import kit_notes

DRAWS = 40
FIRM = {"start_force_n": 2.0, "full_force_n": 4.0}
LIGHT = {"start_force_n": 0.1, "full_force_n": 0.2}
SHELL = {"contact_height_mm": 16, "travel_mm": 4, "base_mm": [54, 50, 30], "plug": "USB"}
TWO_WAYS = {
    "name": "willow", **SHELL, **FIRM, "set_as": "magnet in", "set_how": "push the magnet in until it clicks",
    "setting": [{"name": "magnet out", "how": "pull the magnet out", **LIGHT}],
}  # fmt: skip


def case(*sticks: dict[str, Any], sites: list[dict[str, Any]] | None = None, **kit: Any) -> Case:
    """A steady thumb of 0.8 N and 8 mm all round, playing a game of one stick; other sites where given."""
    four = [
        {"direction_deg": deg, "force_n": [0.8, 0.82, 0.78], "reach_mm": [8, 8.2, 7.8]} for deg in (0, 90, 180, 270)
    ]
    thumb = {
        "name": "left thumb", "part": "thumb", "reading": four, "rest": [{"force_n": [0.01, 0.012, 0.011]}],
        "involuntary_force_n": 0.01, "crossing_hz": 1.5,
    }  # fmt: skip
    return Case(
        name="invented",
        player=Player.model_validate({"code": "Q1", "site": sites or [thumb]}),
        kit=Kit.model_validate({"stick": list(sticks), **kit}),
        game=Game.model_validate(
            {"name": "a road", "action": [{"name": "steer", "kind": "two-axis", "importance": 5}]}
        ),
    )


def chosen(made: Plan) -> Any:
    (site,) = made.sites
    return site.choice


class TestOneStickSetInSeveralWays:
    def test_each_setting_is_the_stick_it_would_be_alone(self) -> None:
        """Law: a stick with two settings offers the set-ups of two sticks with those figures, no more and no fewer."""
        toppers = {"topper": [{"name": "low dish", "form": "dish", "height_mm": 0, "mass_g": 2}]}
        both = setups_of(Kit.model_validate({"stick": [TWO_WAYS], **toppers}))
        alone = setups_of(
            Kit.model_validate({"stick": [{"name": "a", **SHELL, **FIRM}, {"name": "b", **SHELL, **LIGHT}], **toppers})
        )

        def figures(setups: Any) -> list[tuple[float, float, float]]:
            return sorted(zip(setups.start_force_n, setups.full_force_n, setups.travel_m, strict=True))

        assert np.allclose(figures(both), figures(alone), rtol=1e-12)
        assert set(both.stick.tolist()) == {0}
        assert sorted(set(both.setting.tolist())) == [-1, 0]

    def test_the_plan_chooses_the_setting_and_says_how_to_set_it(self) -> None:
        """Too firm as listed, light enough with the magnet out: that is what is chosen, named and explained."""
        made = plan(case(TWO_WAYS), draws=DRAWS)
        fit = chosen(made)
        assert (fit.stick, fit.setting, fit.how_to_set) == ("willow", "magnet out", "pull the magnet out")
        assert said(fit.named).startswith("willow (magnet out)")
        assert fit.full_force_n == pytest.approx(0.2)
        assert [(note.device, note.set_as, note.set_how) for note in made.device_notes] == [
            ("willow", "magnet out", "pull the magnet out")
        ]

    def test_alone_it_is_chosen_like_the_stick_it_becomes(self) -> None:
        """Independent route: the same figures as a stick of its own give the same share, effort and bits."""
        with_settings, alone = chosen(plan(case(TWO_WAYS), draws=DRAWS)), chosen(
            plan(case({"name": "willow", **SHELL, **LIGHT}), draws=DRAWS)
        )  # fmt: skip
        for name in ("weakest_share", "effort_share", "bits"):
            assert getattr(with_settings, name).value == pytest.approx(getattr(alone, name).value)

    def test_two_settings_are_one_piece(self) -> None:
        """One in stock: it cannot be set one way at one thumb and another way at the other."""
        thumb = case(TWO_WAYS).player.site[0].model_dump(exclude_defaults=True)
        sites = [thumb, {**thumb, "name": "right thumb"}]
        two = replace(
            case(TWO_WAYS, sites=sites),
            game=Game.model_validate(
                {"name": "a road", "action": [{"name": "steer", "kind": "two-axis", "importance": 9},
                                              {"name": "look", "kind": "two-axis", "importance": 5, "drop_price": 1}]}
            ),
        )  # fmt: skip
        sharing = plan(two, draws=DRAWS).sharing
        assert sharing is not None
        assert [one.device for one in sharing.placements if one.how == "site"] == ["willow"]

    def test_it_may_be_named_with_its_setting(self) -> None:
        """Where a stick was tried: by its own name as listed, by the setting in brackets as it was set."""
        kit = Kit.model_validate({"stick": [TWO_WAYS]})
        assert at_contact(kit, "willow", None, None) == at_contact(kit, "willow (magnet in)", None, None)
        assert at_contact(kit, "willow (magnet out)", None, None).full_force_n == pytest.approx(0.2)
        assert kit.full_name("willow") == "willow (magnet in)"
        with pytest.raises(BadInput, match=r"willow \(magnet out\)"):
            at_contact(kit, "willow (magnet oot)", None, None)

    def test_the_least_known_setting_widens_the_chances(self) -> None:
        """By hand: an end a factor e above the figure is 1/1.96 in the logarithm, and so wide the stick counts as a whole."""
        stick = Stick.model_validate(
            {"name": "willow", **SHELL, "start_force_n": 1.0, "full_force_n": 2.0,
             "start_force_interval_n": [1.0, 1.0], "full_force_interval_n": [2.0, 2.0],
             "setting": [{"name": "out", "start_force_n": 0.1, "full_force_n": 0.2,
                          "full_force_interval_n": [0.2, 0.5436563656918091]}]}
        )  # fmt: skip
        assert bench_log_sd(stick) == pytest.approx((0.0, 1 / 1.96))
        assert bench_log_sd(stick.model_copy(update={"setting": ()})) == (0.0, 0.0)


class TestDevicesWithModes:
    def test_only_what_is_used_is_told(self) -> None:
        """The mode of the chosen stick, how to see it and how to get back; nothing of a stick that stays in the van."""
        modes = {"mode": "gamepad", "mode_sign": "one light is on", "mode_back": "hold both buttons for 3 s"}
        made = plan(
            case({"name": "elm", **SHELL, **LIGHT, **modes}, {"name": "oak", **SHELL, **FIRM, **modes}), draws=DRAWS
        )
        assert chosen(made).stick == "elm"
        assert [(one.device, one.mode, one.mode_sign, one.mode_back) for one in made.device_notes] == [
            ("elm", "gamepad", "one light is on", "hold both buttons for 3 s")
        ]

    def test_nothing_is_told_where_there_is_one_way_only(self) -> None:
        """A plain stick needs no note."""
        assert plan(case({"name": "elm", **SHELL, **LIGHT}), draws=DRAWS).device_notes == ()


OFFER = {
    "name": "bench-made small stick", "start_force_n": [0.02, 0.5], "full_force_n": [0.05, 2.0], "travel_mm": [2, 9],
    "contact_height_mm": [12, 25], "weeks": 6, "price": 140,
}  # fmt: skip


class TestMadeToOrder:
    def test_offered_where_nothing_of_the_kit_fits(self) -> None:
        """A stick of 4 N under a thumb of 0.8 N: what is ordered stays within what can be had, and the player can push it."""
        made = plan(case({"name": "oak", **SHELL, **FIRM}, made_to_order=[OFFER]), draws=DRAWS)
        (site,) = made.sites
        assert site.choice is None
        order = site.to_order
        assert order is not None
        assert (order.offer, order.weeks, order.price, order.better_bits) == ("bench-made small stick", 6, 140, None)
        assert order.fit.verdict != "does not fit"
        assert 0.02 <= order.fit.start_force_n < order.fit.full_force_n <= min(2.0, 0.8)
        assert 0.002 <= order.fit.travel_m <= 0.009
        assert 0.0 < order.chance_fits <= 1.0

    def test_not_offered_where_the_kit_is_as_good(self) -> None:
        """Only the kit's own stick can be had: ordering it again gains nothing."""
        own = {"name": "elm", **SHELL, **LIGHT}
        same = {**OFFER, "start_force_n": [0.1, 0.1], "full_force_n": [0.2, 0.2], "travel_mm": [4, 4],
                "contact_height_mm": [16, 16]}  # fmt: skip
        (site,) = plan(case(own, made_to_order=[same]), draws=DRAWS).sites
        assert site.choice is not None
        assert site.to_order is None

    def test_what_can_be_asked_for_is_within_the_offer(self) -> None:
        """Every stick tried lies inside the ends, with a spring that rises and an angle that can be built."""
        kit = kit_to_order(Kit.model_validate({"stick": [TWO_WAYS]}), MadeToOrder.model_validate(OFFER))
        assert kit is not None
        for stick in kit.stick:
            assert 0.02 <= stick.start_force_n < stick.full_force_n <= 2.0
            assert 0.002 <= stick.travel_m <= 0.009
            assert stick.contact_height_m is not None
            assert stick.travel_m < stick.contact_height_m
        impossible = MadeToOrder.model_validate({**OFFER, "travel_mm": [60, 70]})
        assert kit_to_order(kit, impossible) is None


def test_the_worked_cases_have_neither() -> None:
    """The cases without settings, modes or orders stay as they were: no note, no order."""
    made = plan(
        Case(name="rune", player=Player.model_validate(worked_cases.PLAYERS["rune"]), kit=worked_cases.kit(toppers=False),
             game=Game.model_validate(worked_cases.GAMES["rune"])),
        draws=DRAWS,
    )  # fmt: skip
    assert made.device_notes == ()
    assert all(site.to_order is None for site in made.sites)


def test_what_the_kit_notes_of_a_thing_reaches_the_plan_where_it_is_used() -> None:
    """In its own words, of what is used and of nothing else."""
    kit = Kit.model_validate(
        {
            "stick": [{"name": "ash", "contact_height_mm": 16, "start_force_n": 0.2, "full_force_n": 0.5, "travel_mm": 6,
                       "note": "sticks when cold."}],
            "switch": [{"name": "elm", "note": "rattles"}, {"name": "yew"}],
        }
    )  # fmt: skip
    assert [said(one.text) for one in kit_notes(kit, {"ash", "yew", None})] == [
        "Note in the kit on ash: sticks when cold."
    ]
