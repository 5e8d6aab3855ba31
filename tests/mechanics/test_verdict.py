"""From figures to an order: bits first, then liked, simpler, smaller; and what is reported of each set-up."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from one_site import Fitting, fitting, stick
from stickwright.codes.holds import Holds
from stickwright.codes.message import message
from stickwright.mechanics.fit import evaluate
from stickwright.mechanics.site_inputs import Rules
from stickwright.mechanics.verdict import fits_of, ranked, rules_at_duty
from stickwright.model.fit import Fit
from stickwright.model.player import Site


def with_utility(made: Fitting, *utility: float) -> Fitting:
    """The same, with these bits in place of its own."""
    return replace(made, found=replace(made.found, utility=np.array(utility)))


def order(made: Fitting, *liked: str) -> list[str]:
    found = ranked(made.setups, made.found, liked, made.rules)
    return [made.setups.kit.stick[made.setups.stick[place]].name for place in found.best]


def two(**more: Any) -> Fitting:
    """A small and a large stick; their bits are set by each test."""
    return fitting([stick("small"), stick("large", base_mm=(150, 110, 70))], **more)


def reported(made: Fitting, **site: Any) -> Fit:
    """The first set-up as the plan tells it."""
    where = Site.model_validate({"name": "here", "part": "fingertip"} | site)
    fits = fits_of([0], made.here, where, [None])
    return fits[0]


class TestOrder:
    def test_more_bits_come_first(self) -> None:
        """A fifth of a bit decides, whatever is small."""
        assert order(with_utility(two(), 2.0, 2.2)) == ["large", "small"]

    def test_within_a_tie_the_smaller_comes_first(self) -> None:
        """0.14 bit does not decide; the smaller base does."""
        assert order(with_utility(two(), 2.0, 2.14)) == ["small", "large"]

    def test_a_liked_stick_is_not_overruled_by_a_tenth_of_a_bit(self) -> None:
        """The player's word counts within a tie, and not beyond it."""
        assert order(with_utility(two(), 2.1, 2.0), "large") == ["large", "small"]
        assert order(with_utility(two(), 2.2, 2.0), "large") == ["small", "large"]

    def test_fewer_parts_come_first_within_a_tie(self) -> None:
        """A bare stick before the same with a topper that gains a tenth of a bit."""
        made = fitting([stick("bare")], topper=[{"name": "dish", "form": "dish", "height_mm": 1}])
        found = ranked(made.setups, replace(made.found, utility=np.array([2.0, 2.1])), (), made.rules)
        assert found.best == (0,)
        assert found.others == (1,)

    def test_liked_comes_before_fewer_parts_and_fewer_parts_before_smaller(self) -> None:
        """Three in a tie: liked with a topper, bare and large, small with a topper."""
        made = fitting(
            [stick("large", base_mm=(150, 110, 70)), stick("small")],
            topper=[{"name": "dish", "form": "dish", "height_mm": 1}],
        )
        parts = made.setups.parts
        assert parts.tolist() == [0, 1, 0, 1]
        only = np.array([2.0, -3.0, -3.0, 2.0])  # large bare, small with a dish
        shown = replace(made, found=replace(made.found, utility=only))
        assert order(shown) == ["large", "small"]
        assert order(shown, "small") == ["small", "large"]

    def test_what_breaks_a_rule_comes_after_what_fits(self) -> None:
        """The lightest with the most bits is always on; the one that fits comes first, with fewer."""
        made = fitting(
            [
                stick("feather", start_force_n=0.02, full_force_n=0.05),
                stick("half", start_force_n=0.3, full_force_n=0.6),
            ],
            involuntary=0.06,
        )
        assert made.found.shortfall[0] > 0
        assert order(made, "feather") == ["half", "feather"]

    def test_neither_the_lightest_nor_the_heaviest_wins_blindly(self) -> None:
        """Five versions of one stick, from a tenth to ten times its force: one in the middle is right for this hand."""
        factors = (0.1, 0.3, 1.0, 3.0, 10.0)
        made = fitting(
            [stick(f"x{f:g}", start_force_n=0.24 * f, full_force_n=0.52 * f) for f in factors],
            force=1.4, reach_mm=20, involuntary=0.05,
        )  # fmt: skip
        assert order(made)[0] == "x1"
        fitting_ones = [name for name, short in zip(factors, made.found.shortfall, strict=True) if short <= 0]
        assert fitting_ones == [1.0]

    def test_when_nothing_fits_the_nearest_comes_first(self) -> None:
        """Too heavy by a little before too heavy by a lot."""
        made = fitting(
            [stick("heavy", start_force_n=2, full_force_n=4), stick("heavyish", start_force_n=0.4, full_force_n=0.9)],
            force=0.8,
        )
        assert np.all(made.found.shortfall > 0)
        assert order(made) == ["heavyish", "heavy"]


class TestDuty:
    @pytest.mark.parametrize(
        "duty,limit",
        [(0.0, 1.0), (1 / 28800, 1.0), (0.05, 1.0), (0.1, 0.849), (0.2, 0.641), (0.3, 0.502), (0.31, 0.5), (0.9, 0.5), (1.0, 0.5)],
    )  # fmt: skip
    def test_what_is_seldom_used_may_take_more(self, duty: float, limit: float) -> None:
        """Potvin (2012), 1 - (duty - 1/28800)^0.24 of the largest force, by hand: 0.4246 at a tenth of the time, 0.3204 at
        a fifth, 0.2510 at three tenths; twice that of a comfortable force that is half of the largest. Never more than all
        of it, and never less than the half that practitioners sign for use without a break."""
        assert rules_at_duty(Rules(), duty, 0.5).effort_share == pytest.approx(limit, abs=0.0006)

    @pytest.mark.parametrize(("duty", "limit"), [(0.0, 1.0), (0.2, 0.641), (0.5, 0.307), (0.6, 0.3), (1.0, 0.3)])
    def test_tiring_is_counted_against_something_at_any_duty(self, duty: float, limit: float) -> None:
        """By hand: 1 - 0.5^0.24 = 0.1533 of the largest force at half of the time, twice that of the comfortable; from there on
        the 15 % that need no rest (Rohmert 1973) are more, and at a duty of 1, where the curve leaves nothing, all there is."""
        assert reported(fitting([stick()], force=2.0, reach_mm=60, duty=duty)).duty_effort_limit == pytest.approx(
            limit, abs=0.0006
        )

    def test_the_limit_in_the_sentence_is_the_one_that_was_broken(self) -> None:
        """58 % of the comfortable force: fits where the game uses the stick a fifth of the time, and not at nine tenths."""
        seldom, often = (
            fitting([stick()], force=0.9, reach_mm=60, duty=duty, rules=rules_at_duty(Rules(), duty, 0.5))
            for duty in (0.2, 0.9)
        )
        assert seldom.fails() == ""
        assert "needs 58% of comfortable force (limit 50%)" in often.fails()


class TestReport:
    def test_verdict_follows_the_rules_broken(self) -> None:
        """Fits, fits with its range widened, does not fit: and the last with its reasons."""
        fits = reported(fitting([stick()], force=2.0, reach_mm=15))
        assert (fits.verdict, fits.fails) == ("fits", ())
        widened = reported(fitting([stick(full_force_n=0.4)], force=3.0, reach_mm=3.9))
        assert (widened.verdict, widened.fails) == ("fits with its range widened", ())
        assert 1 / 3 < widened.weakest_share.value < 0.6
        assert [one.gain for one in widened.directions] == pytest.approx(
            [1 / one.reach_share.value for one in widened.directions]
        )
        fails = reported(fitting([stick()], force=0.2))
        assert fails.verdict == "does not fit"
        assert len(fails.fails) == 1  # too heavy to start is told once

    def test_figures_by_hand(self) -> None:
        """2 N and 60 mm: the stop is reached at 0.52 N, a quarter of the force; 43 N/m at the contact."""
        fit = reported(fitting([stick()], force=2.0, reach_mm=60))
        assert fit.effort_share.value == pytest.approx(0.26, rel=1e-9)
        assert fit.stiffness_n_per_m == pytest.approx(0.28 / math.asin(6.5 / 16) / 0.016, rel=1e-9)
        assert fit.weakest_share.value == pytest.approx(1.0, abs=1e-12)
        for one in fit.directions:
            assert one.force_used_n == pytest.approx(0.52, rel=1e-9)
            assert one.reach_travel_m.value == pytest.approx(0.0065, rel=1e-9)
            assert one.available_force_n == 2.0

    def test_one_draw_gives_no_interval_and_says_why(self) -> None:
        """An interval from no draws would be made up."""
        fit = reported(fitting([stick()]))
        assert not fit.bits.has_interval
        assert fit.bits.why == message(Holds.few_simulations)

    def test_intervals_and_chances_come_from_the_draws(self) -> None:
        """Force uncertain by 30 %: the interval of the effort is that of 1/force, and the chance that
        the one stick is right is the chance that it keeps every limit."""
        made = fitting([stick()], force=2.0, reach_mm=60)
        draws = 4001
        force = 2.0 * np.exp(0.3 * np.random.default_rng(3).standard_normal((draws, 1))) * np.ones((1, 8))
        force[0] = 2.0
        many = {
            name: np.repeat(getattr(made.inputs, name), draws, axis=0)
            for name in ("reach_m", "rest_n", "involuntary_n", "crossing_hz", "limb_n_per_m")
        }
        inputs = replace(made.inputs, force_n=force, **many)
        fit = reported(replace(made, inputs=inputs, found=evaluate(made.setups, inputs, made.rules)))
        assert fit.effort_share.low == pytest.approx(0.26 * math.exp(-1.96 * 0.3), rel=0.05)
        assert fit.effort_share.high == pytest.approx(0.26 * math.exp(1.96 * 0.3), rel=0.05)
        keeps = 0.9854  # effort of at most half: the standard normal below ln(0.5/0.26)/0.3 = 2.18, from tables
        assert fit.probability_best == pytest.approx(keeps, abs=0.006)

    def test_rest_deflection_by_hand(self) -> None:
        """0.38 N resting on 0.24 to 0.52 N: half the throw by force, (0.38 - 0.24)/(ks T)."""
        fit = reported(fitting([stick()], rest=0.38))
        ks = 0.28 / math.asin(6.5 / 16) / 0.016
        assert fit.rest_deflection_share == pytest.approx(0.14 / ks / 0.0065, rel=1e-9)


class TestHold:
    QUARTER = {"force": 2.0, "reach_mm": 60}  # noqa: RUF012

    def test_without_a_hold_a_curve_is_named_and_marked(self) -> None:
        """Frey Law and Avin, healthy adults: assumed."""
        fit = reported(fitting([stick()], **self.QUARTER))
        assert fit.hold_model == message(Holds.published, joint="hand")
        assert fit.hold_s.assumed is not None
        assert fit.hold_s.assumed.text == "by_curve"

    def test_the_players_own_hold_at_this_effort_is_taken_as_it_is(self) -> None:
        """26 % of the comfortable force held 31 s: 31 s, nothing assumed."""
        fit = reported(fitting([stick()], **self.QUARTER), hold=[{"duration_s": 31, "effort_share": 0.26}])
        assert fit.hold_s.value == 31
        assert fit.hold_s.assumed is None
        assert fit.hold_model == message(Holds.own)

    def test_a_hold_carried_along_a_curve_does_not_look_measured(self) -> None:
        """Half the force held 25 s, needed is a quarter: longer, along a curve that is named."""
        fit = reported(fitting([stick()], **self.QUARTER), hold=[{"duration_s": 25, "effort_share": 0.5}])
        assert fit.hold_s.value > 25
        assert fit.hold_model == message(Holds.own_carried, joint="hand")

    def test_of_several_holds_the_nearest_effort_counts(self) -> None:
        """Held at 26 % and at 80 %: the first is the one to use, in whatever order they stand."""
        holds = [{"duration_s": 31, "effort_share": 0.26}, {"duration_s": 5, "effort_share": 0.8}]
        for some in (holds, holds[::-1]):
            assert reported(fitting([stick()], **self.QUARTER), hold=some).hold_s.value == 31

    def test_a_hold_given_as_a_force_is_set_against_its_own_direction(self) -> None:
        """0.52 N held left, where the player has 2 N: an effort of 26 %, although right has ten times as much."""
        reading = [{"direction_deg": 0, "force_n": [20.0]}, {"direction_deg": 180, "force_n": [2.0]}]
        hold = [{"duration_s": 31, "force_n": 0.52, "direction_deg": 180}]
        fit = reported(fitting([stick()], **self.QUARTER), reading=reading, hold=hold)
        assert fit.hold_s.value == 31

    def test_no_curve_for_the_neck(self) -> None:
        """Chin: only the own hold; at a higher effort than it was held, no number."""
        none = reported(fitting([stick()], **self.QUARTER), part="chin")
        assert none.hold_model is None
        assert none.hold_s.value is None
        assert none.hold_s.why == message(Holds.no_curve)
        less = reported(fitting([stick()], **self.QUARTER), part="chin", hold=[{"duration_s": 40, "effort_share": 0.2}])
        assert less.hold_s.value is None
        more = reported(fitting([stick()], **self.QUARTER), part="chin", hold=[{"duration_s": 40, "effort_share": 0.5}])
        assert more.hold_s.value == 40
        assert more.hold_s.assumed.text == "at_least"


@pytest.mark.parametrize("room_m, crosswise", [((0.10, 0.06), False), ((0.06, 0.10), True), (None, False)])
def test_a_fit_says_how_its_base_stands(room_m: tuple[float, float] | None, crosswise: bool) -> None:
    """A base of 90 by 50 mm stands crosswise only in a place too short for its length."""
    made = fitting([stick("oak", base_mm=(90, 50, 30))])
    made = replace(made, situation=replace(made.situation, room_m=room_m))
    assert reported(made).crosswise is crosswise
