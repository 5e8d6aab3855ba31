"""What one way of doing an action is worth: each cost under its own name, on the player's own scale."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_cases import action, case, fit, shared, site, switch

from said import said
from stickwright.allocation import utility
from stickwright.allocation.pressing import Pressed, press_fit
from stickwright.model.fit import Doubt
from stickwright.model.game import Action
from stickwright.model.kit import Switch
from stickwright.model.player import Site
from stickwright.model.sharing import Term

LIGHT = Switch(name="pip", force_n=0.2, travel_m=0.002, face_m=(0.04,))
HAND = Site.model_validate(site("right index"))


def points(terms: tuple[Term, ...]) -> float:
    return sum(term.points for term in terms)


def term(terms: tuple[Term, ...], what: str) -> float:
    return sum(one.points for one in terms if one.what == what)


def asked(kind: str = "press", **more: object) -> Action:
    return Action.model_validate({"name": "sprint", "kind": kind, "importance": 8, **more})


def stick_points(wanted: Action, **figures: float) -> float:
    return points(utility.stick_terms(fit("right index", "ash", **figures), wanted))  # type: ignore[arg-type]


class TestSticks:
    """An action on a stick."""

    def test_more_precision_is_worth_more_only_where_the_game_uses_it(self) -> None:
        """A game with four levels gains less from a finer stick than one that uses every level."""
        every, four = asked("two-axis"), asked("two-axis", levels=4)
        gain, small = (stick_points(one, bits=2.0) - stick_points(one, bits=1.0) for one in (every, four))
        assert gain > small > 0
        assert small == pytest.approx(gain * utility.fineness(four))

    @given(bits=st.floats(0, 12), finer=st.floats(0, 12), effort=st.floats(0, 1.5), harder=st.floats(0, 1.5))
    def test_finer_lighter_steadier_is_never_worth_less(
        self, bits: float, finer: float, effort: float, harder: float
    ) -> None:
        """Law: more bits, less effort, fewer false inputs: each alone never makes a stick worth less."""
        wanted = asked("two-axis")
        plain = stick_points(wanted, bits=bits, effort=effort, false_per_min=0.5)
        assert stick_points(wanted, bits=bits + finer, effort=effort, false_per_min=0.5) >= plain - 1e-9
        assert stick_points(wanted, bits=bits, effort=effort + harder, false_per_min=0.5) <= plain + 1e-9
        assert stick_points(wanted, bits=bits, effort=effort, false_per_min=0.1) >= plain - 1e-9

    def test_effort_counts_by_the_share_of_time(self) -> None:
        """A stick worked twice as long costs twice the effort."""
        rarely, often = asked("two-axis", duty_share=0.2), asked("two-axis", duty_share=0.4)
        one = fit("right index", "ash", effort=0.4)
        assert term(utility.stick_terms(one, often), "effort") == pytest.approx(
            2 * term(utility.stick_terms(one, rarely), "effort")
        )

    def test_false_input_costs_more_where_it_is_costly(self) -> None:
        """The same false inputs a minute weigh more where the game says that one does harm."""
        one = fit("right index", "ash", false_per_min=0.3)
        plain, costly = (
            term(utility.stick_terms(one, asked("two-axis", false_input_costly=c)), "unintended") for c in (False, True)
        )
        assert costly < plain < 0

    def test_a_broken_rule_has_its_price_and_its_sentence(self) -> None:
        """A stick that breaks a rule of practice costs points, and the broken rule is said."""
        terms = utility.stick_terms(
            fit("right index", "ash", fails=["Too heavy right: needs 0.5 N."]), asked("two-axis")
        )
        broken = [one for one in terms if one.what == "rule_broken"]
        assert [one.points for one in broken] == [-utility.RULE_POINTS]
        assert "Too heavy right" in said(broken[0].words)

    def test_what_is_not_known_is_not_taken_as_good(self) -> None:
        """Bits and effort that nobody knows count as none and as all."""
        unknown = stick_points(asked("two-axis"), bits=float("nan"), effort=float("nan"))
        assert unknown == pytest.approx(stick_points(asked("two-axis"), bits=0.0, effort=1.0))


def product(basis: str) -> float:
    """What the printed factors multiply to: the first number of each."""
    return math.prod(float(part.split()[0].rstrip(",")) for part in basis.split(" × "))


class TestBases:
    """Every cost carries the product that it comes from."""

    @pytest.mark.parametrize("levels", [None, 4])
    def test_a_sticks_costs_are_their_printed_products(self, levels: int | None) -> None:
        """Within the rounding of the factors printed; effort by hand: 2 points x 0.40 x 0.25."""
        wanted = asked("two-axis", levels=levels, duty_share=0.25)
        told = utility.stick_terms(fit("right index", "ash", bits=1.5, effort=0.4, false_per_min=0.3), wanted)
        costs = {one.what: one for one in told if one.what in ("precision", "effort", "unintended")}
        assert len(costs) == 3
        for one in costs.values():
            assert product(said(one.basis)) == pytest.approx(-one.points, rel=0.03), one.basis
        assert said(costs["effort"].basis) == "2 × 0.40 × 0.25"

    def test_a_switchs_costs_are_their_printed_products(self) -> None:
        """Pressed 6 times a minute, of 30 that count as all the time; held for a share of the time; and missed."""
        wide = Site.model_validate(site("right index", press={"landing_mm": 9}))
        for wanted in (asked(busy_presses_per_min=6), asked("hold", duty_share=0.7), asked(busy_presses_per_min=60)):
            told = utility.press_terms(press_fit(wide, Pressed.of_switch(LIGHT), wanted), wanted, toggle=False)
            costs = [one for one in told if one.what in ("effort", "misses")]
            assert len(costs) == 2
            for one in costs:
                assert product(said(one.basis)) == pytest.approx(-one.points, rel=0.03), one.basis


class TestPresses:
    """An action on a switch or a button."""

    def worth_of(self, wanted: Action, *, toggle: bool = False, at: Site = HAND) -> tuple[Term, ...]:
        return utility.press_terms(
            press_fit(at, Pressed.of_switch(LIGHT), wanted, toggle=toggle), wanted, toggle=toggle
        )

    def test_false_presses_of_figures_nobody_read_are_marked(self) -> None:
        """A rate that stands on a usual resting or involuntary force says so beside itself."""
        (told,) = [one for one in self.worth_of(asked()) if one.what == "unintended"]
        assert said(told.words).endswith("(in part assumed)")

    def test_each_thing_to_be_tried_costs(self) -> None:
        """Whether its size suits and whether it is strong enough: each costs as much, both twice that; none costs nothing."""
        wanted = asked()
        plain = press_fit(HAND, Pressed.of_switch(LIGHT), wanted)
        size, strength = (Doubt(rule, "", rule) for rule in ("size", "strength"))

        def cost(*doubts: Doubt) -> float:
            return term(utility.press_terms(replace(plain, doubts=doubts), wanted, toggle=False), "suits")

        assert cost() == 0
        assert cost(size) == cost(strength) < 0
        assert cost(size, strength) == pytest.approx(2 * cost(size))

    def test_the_toggle_costs_what_the_player_says(self) -> None:
        """A press to start and one to stop costs the player's own price; one point where none is said, and it is named."""
        own = asked("hold", toggle="once", toggle_price=2.5)
        assert term(self.worth_of(own, toggle=True), "toggle") == -2.5
        assert term(self.worth_of(own), "toggle") == 0
        assert term(self.worth_of(asked("hold", toggle="once"), toggle=True), "toggle") == -utility.TOGGLE_POINTS

    def test_a_trigger_on_a_switch_loses_what_lies_between(self) -> None:
        """All or nothing costs a share of the importance, but not where the game knows only on and off."""
        assert term(self.worth_of(asked("trigger")), "precision") < 0
        assert term(self.worth_of(asked("trigger", levels=2)), "precision") == 0
        assert term(self.worth_of(asked("press")), "precision") == 0

    def test_misses_cost_by_how_many_miss(self) -> None:
        """A part that lands widely misses a small switch: the share of presses that miss is lost."""
        wide = Site.model_validate(site("right index", press={"landing_mm": 9}))
        found = press_fit(wide, Pressed.of_switch(LIGHT), asked())
        assert 0.5 < found.hit_share < 0.99
        assert term(self.worth_of(asked(), at=wide), "misses") == pytest.approx(-8 * (1 - found.hit_share))

    def test_an_action_of_no_importance_is_worth_nothing(self) -> None:
        """Importance 0: doing it is worth nothing, and only costs."""
        assert points(self.worth_of(asked().model_copy(update={"importance": 0}))) <= 0


class TestLeft:
    """Actions left to the game, to somebody else, or out."""

    @pytest.mark.parametrize("how", ["option", "helper"])
    @pytest.mark.parametrize("price", [0.0, 3.5, 10.0])
    def test_left_to_somebody_it_is_done_less_the_price(self, how: str, price: float) -> None:
        """Left to the game or a helper it is done all the same: its importance less the player's price."""
        assert points(utility.left_terms(asked(), how, price=price, words="")) == 8 - price

    def test_left_out_it_is_not_done(self) -> None:
        """Left out nothing is gained, and the price of going without is lost."""
        assert points(utility.left_terms(asked(), "dropped", price=2.0, words="")) == -2.0


@pytest.mark.parametrize(
    ("price", "own", "goes"),
    [
        pytest.param(0.5, None, "helper", id="the player does not mind"),
        pytest.param(9.0, None, "site", id="the player wants to do it"),
        pytest.param(None, 10.0, "site", id="independence is worth most"),
        pytest.param(None, 0.0, "helper", id="independence is worth nothing"),
        pytest.param(None, None, "site", id="nothing said: five points"),
    ],
)
def test_a_helper_takes_over_what_the_player_prices_low(price: float | None, own: float | None, goes: str) -> None:
    """Who does it is decided by the player's own price for the action, or else by what independence is worth to them: a
    coarse press that misses one time in twelve costs less than a point here."""
    prices = {} if price is None else {"helper_price": price}
    own_words = {} if own is None else {"independence": own}
    this = case(
        [site("left foot", "foot", press={"landing_mm": 9})], [action("menu", importance=8, helper=True, **prices)],
        switches=[switch("pip")], helpers=[{"name": "sister"}], **own_words,
    )  # fmt: skip
    assert shared(this).placements[0].how == goes


@pytest.mark.parametrize(("price", "goes"), [(0.1, "option"), (5.0, "site"), (None, "site")])
def test_an_option_takes_over_what_the_player_prices_low(price: float | None, goes: str) -> None:
    """The game's own option is used where the player minds it less than pressing; one point stands in for no price."""
    prices = {} if price is None else {"option_price": price}
    this = case([site("right index")], [action("run", option="always run", **prices)], switches=[switch("pip")])
    assert shared(this).placements[0].how == goes


def test_the_sound_of_a_switch_costs_where_quiet_is_wanted() -> None:
    """Nothing where nobody minds; else silent before soft, soft before one that was not listened to, a click last."""

    def cost(sound: str | None, quiet: bool = True) -> float:
        made = Switch.model_validate({"name": "elm", "force_n": 0.5, "sound": sound})
        return -sum(one.points for one in utility.sound_terms(made, quiet=quiet))

    assert [cost(sound, quiet=False) for sound in ("silent", "soft", "click", None)] == [0, 0, 0, 0]
    assert 0 == cost("silent") < cost("soft") < cost(None) < cost("click")


def test_quiet_decides_between_switches_that_are_otherwise_alike() -> None:
    """The lighter one clicks: it is taken where nobody minds, and told; the silent one where quiet is wanted."""
    kit = [switch("elm", 0.2, sound="click"), switch("yew", 0.22, sound="silent")]
    for quiet, taken in ((False, "elm"), (True, "yew")):
        found = shared(case([site("left hand", "hand")], [action("jump")], switches=kit, quiet=quiet))
        assert [one.device for one in found.placements] == [taken]
        assert [one.level for one in found.findings if one.about == "sound"] == ([] if quiet else ["note"])
    alone = shared(case([site("left hand", "hand")], [action("jump")], switches=kit[:1], quiet=True))
    assert [one.level for one in alone.findings if one.about == "sound"] == ["query"]
    assert any(term.what == "sound" and term.points < 0 for term in alone.placements[0].terms)


def test_minutes_of_setting_up_have_no_idle_zero() -> None:
    """180 s are "3 min", 150 s "2.5 min", at a site as at a device."""
    site = Site.model_validate({"name": "chin", "part": "thumb", "setup_s": 180.0})
    assert [said(one.words) for one in utility.site_terms(site)] == ["chin: 3 min to set up"]
    assert said(utility.device_terms(150.0)[-1].words) == "2.5 min to set up"
