"""Five worked cases: the decision written down for each is among the first three, with the reasons given there.

The cases are invented, plausible to a practitioner; no practitioner has checked them. Their figures come from the same
formulas as the plan's, and some inputs were set after a first run: this is a check that the plan keeps to the cases, not
one against anything outside the project.
Where the plan and a case part ways is written down in docs/worked-cases.md.
"""

from __future__ import annotations

import math
from functools import lru_cache

import pytest

import worked_cases
from said import said
from stickwright.catalogue import say
from stickwright.codes.holds import Holds
from stickwright.codes.message import message
from stickwright.model.fit import Fit
from stickwright.model.plan import Plan
from stickwright.planning.plan import plan

DECIDED = {"tove": "dew", "idris": "rowan", "marit": "birch", "joss": "hazel", "rune": "cedar"}


@lru_cache
def planned(name: str, toppers: bool = True) -> Plan:
    return plan(worked_cases.case(name, toppers=toppers), draws=200)


def fit(name: str, stick: str, toppers: bool = True) -> Fit:
    return next(f for f in planned(name, toppers).sites[0].fits if f.stick == stick)


def reasons(name: str, stick: str, toppers: bool = False) -> str:
    return "; ".join(said(one) for one in fit(name, stick, toppers).fails)


@pytest.mark.parametrize("toppers", [False, True])
@pytest.mark.parametrize("name", DECIDED)
def test_the_decision_is_among_the_first_three(name: str, toppers: bool) -> None:
    """The stick the case decides for is proposed first, second or third."""
    first = [f.stick for f in planned(name, toppers).sites[0].fits[:3]]
    assert DECIDED[name] in first


@pytest.mark.parametrize("name", ["tove", "marit", "rune"])
def test_sticks_alone_give_the_decision_itself(name: str) -> None:
    """With the bare sticks that the case's table compares, its decision comes first."""
    assert planned(name, False).sites[0].choice is not None
    assert planned(name, False).sites[0].fits[0].stick == DECIDED[name]


class TestTove:
    """Low force, small range: muscular dystrophy, right index."""

    @pytest.mark.parametrize("stick", ["ash", "birch"])
    def test_standard_and_half_force_are_too_stiff_forward(self, stick: str) -> None:
        assert "too stiff" in reasons("tove", stick)
        weakest = min(fit("tove", stick, False).directions, key=lambda d: (d.reach_share.value, d.available_force_n))
        assert weakest.available_force_n == pytest.approx(0.26, abs=0.01)

    def test_dew_needs_the_wedge(self) -> None:
        """Without support the resting hand keeps dew deflected: (0.060 - 0.025)/0.0094 = 3.7 mm, 41 % of the throw."""
        player = worked_cases.PLAYERS["tove"]
        site = {**player["site"][0], "rest": player["site"][0]["rest"][:1]}
        from stickwright.model.player import Player

        case = worked_cases.case("tove", toppers=False)
        bare = plan(
            type(case)(case.name, Player.model_validate({**player, "site": [site]}), case.kit, case.game), draws=100
        )
        dew = next(f for f in bare.sites[0].fits if f.stick == "dew")
        assert dew.verdict == "does not fit"
        assert "the resting force (0.060 N) holds it 3.7 mm off centre (41% of its travel)" in said(dew.fails[0])
        assert "a support that takes the limb's weight" in said(dew.help)
        assert bare.sites[0].choice is None

    def test_the_wedge_is_counted_on_and_said(self) -> None:
        texts = [say(f.text).replace("\N{NO-BREAK SPACE}", " ") for f in planned("tove").sites[0].findings]
        assert any("Wedge under the hand reduces the resting force from 0.060 N to 0.015 N" in text for text in texts)

    def test_an_extension_on_dew_lowers_reach(self) -> None:
        """Reach, not force, limits: the closed form asks for a shorter lever."""
        assert fit("tove", "dew").lever_note.text == "longer_is_worse"
        longer = [f for f in planned("tove").sites[0].alternatives if f.extension]
        assert longer
        assert all(f.weakest_share.value < fit("tove", "dew").weakest_share.value for f in longer)

    def test_forward_is_the_weakest_and_its_range_is_widened(self) -> None:
        site = planned("tove", False).sites[0]
        assert site.choice is not None
        assert site.choice.weakest_rad == pytest.approx(1.5708, abs=1e-3)
        assert site.choice.verdict == "fits with its range widened"
        assert said(site.choice.limit).endswith("set the sensitivity in that direction to 2.4")
        assert 0.15 <= site.choice.dead_zone_share <= 0.30

    def test_cedars_best_extension_still_gives_only_a_quarter(self) -> None:
        """Closed form forward (by hand, from 0.26 N and 2.6 mm): lever ratio 1.585, e* = 9.4 mm, r = 0.24
        against 0.19; the readings carried back to the first repeat give a little more force, so a little room is left."""
        told = fit("tove", "cedar", False).lever_note
        assert told is not None
        assert told.param("extra_m") == pytest.approx(9.4e-3, rel=0.05)
        assert told.param("from_share") == pytest.approx(0.19, abs=0.005)
        assert told.param("to_share") == pytest.approx(0.24, abs=0.015)

    def test_touch_surface_is_refused_as_the_finger_cannot_lift(self) -> None:
        assert "the fingertip cannot lift off" in reasons("tove", "slate")


class TestIdris:
    """Large involuntary movement: right fist. No set-up keeps within one false input a minute, and the plan says so."""

    def test_nothing_fits_and_rowan_comes_nearest(self) -> None:
        site = planned("idris").sites[0]
        assert site.choice is None
        assert site.fits[0].stick == "rowan"
        assert "No stick in the kit fits" in say(site.sentence)

    def test_force_does_not_decide(self) -> None:
        """All sticks can be reached."""
        levers = [f for f in planned("idris", False).sites[0].fits if f.kind == "lever"]
        assert len(levers) == 9
        assert all(f.weakest_share.value > 0.99 for f in levers)

    @pytest.mark.parametrize("stick", ["hazel", "oak", "ash"])
    def test_light_ones_are_always_on(self, stick: str) -> None:
        assert "always be on" in reasons("idris", stick)

    def test_an_extension_makes_false_input_more_frequent(self) -> None:
        """Case: 1.6 to 2.4 times as frequent with +25 mm at dead zones of 10 and 30 %, for 0.03 bit.

        At the plan's 40 % the same formula by hand gives 15.9 crossings a minute and 3.03 times as many, and with some
        four spasms a minute beside both, about 2.6 times."""
        plain = fit("idris", "rowan", False)
        from dataclasses import replace

        kit = worked_cases.kit()
        kit = kit.model_copy(update={"topper": (), "extension": kit.extension[2:]})
        lengthened = plan(replace(worked_cases.case("idris"), kit=kit), draws=100).sites[0]
        longer = next(f for f in lengthened.alternatives if f.extension == "+25 mm")
        assert 1.6 <= longer.false_per_min.value / plain.false_per_min.value <= 2.7
        assert longer.bits.value - plain.bits.value < 0.1

    def test_the_firm_spring_tires_forward(self) -> None:
        """Forward effort 0.57: larch if it tires him."""
        assert "57%" in reasons("idris", "rowan")
        assert "forward" in reasons("idris", "rowan")


class TestMarit:
    """Chin, spinal cord injury: racing."""

    @pytest.mark.parametrize("stick", ["dew", "cedar"])
    def test_the_lightest_turn_sway_into_steering(self, stick: str) -> None:
        assert "too light: involuntary movement" in reasons("marit", stick)

    def test_ash_tires(self) -> None:
        """Over half the comfortable force, nine tenths of the time."""
        assert "too tiring" in reasons("marit", "ash")
        assert "90% of the time" in reasons("marit", "ash")
        sideways = [
            d.effort_share.value for d in fit("marit", "ash", False).directions if abs(d.direction_rad % 3.1416) < 0.01
        ]
        assert all(0.5 < effort < 0.6 for effort in sideways)

    def test_birch_has_a_small_dead_zone(self) -> None:
        assert 0.05 <= fit("marit", "birch", False).dead_zone_share < 0.151

    def test_neck_has_no_endurance_curve_and_the_page_says_so(self) -> None:
        assert any("No published endurance curve" in say(c.text) for c in planned("marit").cautions)
        assert any("dysreflexia" in say(c.text) for c in planned("marit").cautions)
        assert fit("marit", "birch", False).hold_model == message(Holds.own)


class TestJoss:
    """Right forearm end: strong, with resting weight."""

    def test_oak_lies_over_under_the_resting_arm(self) -> None:
        """Rest 0.35 N above its start force 0.20 N."""
        assert "the resting force (0.35 N) holds it 13 mm off centre" in reasons("joss", "oak")

    def test_small_sticks_waste_the_range(self) -> None:
        """Ash reaches its stop with a tenth of the effort and has a bit less of precision than hazel."""
        assert fit("joss", "hazel", False).bits.value - fit("joss", "ash", False).bits.value > 0.8

    def test_larch_is_quiet_but_dearer_in_effort(self) -> None:
        larch, hazel = fit("joss", "larch", False), fit("joss", "hazel", False)
        assert larch.false_per_min.value < 0.01
        assert larch.effort_share.value > 2 * hazel.effort_share.value


class TestRune:
    """Motor neurone disease, month 4: right index."""

    def test_birch_works_today_for_a_game_that_seldom_asks(self) -> None:
        """Effort 0.58, in use 20 % of the time, where Potvin's curve allows 0.64; the case calls it a trap for later."""
        assert reasons("rune", "birch") == ""
        assert fit("rune", "birch", False).effort_share.value == pytest.approx(0.58, abs=0.01)

    def test_dew_is_too_twitchy_today(self) -> None:
        assert "too light" in reasons("rune", "dew")
        assert fit("rune", "dew", False).dead_zone_share == pytest.approx(0.4)

    def test_cedar_needs_no_extension_for_reach_but_one_lowers_effort(self) -> None:
        """Forward, closed form 0.9: below 1. With +8 mm effort falls from 0.44 to 0.27."""
        cedar = fit("rune", "cedar", False)
        ratio = next(
            r for phi, r, _ in planned("rune", False).sites[0].best_extension if phi == pytest.approx(math.pi / 2)
        )
        assert ratio == pytest.approx(0.9, abs=0.03)
        site = planned("rune").sites[0]
        longer = next(f for f in (*site.fits[:1], *site.alternatives) if f.extension)
        assert longer.effort_share.value < 0.7 * cedar.effort_share.value

    def test_progressive_course_brings_its_caution(self) -> None:
        assert any("borrow rather than buy" in say(c.text) for c in planned("rune").cautions)
