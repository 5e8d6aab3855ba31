"""One switch under one part whose readings are missing, and laws of every press."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from one_press import DOME, FEATHER, LEAF, PIP, SLAB, WINK, action, fit, told
from scipy import stats

from said import said
from stickwright.allocation.pressing import (
    USUAL_BUTTON_FORCE_N,
    Pressed,
    crossings_per_min,
    hit_share,
    press_fit,
)
from stickwright.allocation.utility import press_terms
from stickwright.mechanics.fit import ALWAYS
from stickwright.mechanics.unread import MEASURE
from stickwright.model.game import Action
from stickwright.model.kit import Controller, Switch
from stickwright.model.player import PARTS, Press, Site

BARE = Press(force_n=(4.0,), rest_force_n=(0.0,), involuntary_force_n=0.001, landing_m=0.001, travel_m=(0.02,))
READ = {"crossing_hz": 1.0}
# what is assumed: rule, switch, action, press without it, the same with it read at the figure that stood in
UNREAD: dict[str, tuple[str, Switch, Action, Press, Press]] = {
    "weight": (
        "press unintended", Switch(name="broad leaf", force_n=0.35, face_m=(0.07,)), action(), BARE.model_copy(update={"rest_force_n": ()}),
        BARE.model_copy(update={"rest_force_n": (1.0,)}),
    ),
    "press steadiness": (
        "press unintended", FEATHER, action(), BARE.model_copy(update={"involuntary_force_n": None, "rest_force_n": (0.05,)}),
        BARE.model_copy(update={"involuntary_force_n": 0.1 / 3, "rest_force_n": (0.05,)}),
    ),
    "press force": (
        "press force", Switch(name="stiff", force_n=8.0, face_m=(0.1,)), action(), BARE.model_copy(update={"force_n": ()}),
        BARE.model_copy(update={"force_n": (math.sqrt(80.0),)}),
    ),
    "landing": (
        "landing", Switch(name="small", force_n=1.0, face_m=(0.036,)), action(), BARE.model_copy(update={"landing_m": None}),
        BARE.model_copy(update={"landing_m": 0.010}),
    ),
}  # fmt: skip


class TestUnread:
    """What nobody read refuses nothing: the same figure once read does."""

    @pytest.mark.parametrize("figure", UNREAD)
    def test_a_stand_in_alone_refuses_nothing(self, figure):
        """It stays in, with the reading that would settle it; the usual figures are those of a hand."""
        rule, switch, wanted, assumed, read = UNREAD[figure]
        doubted, refused = (fit(press, switch, wanted, part="hand", site=READ) for press in (assumed, read))
        assert doubted.fails == ()
        assert [one.rule for one in doubted.doubts] == [rule]
        assert said(MEASURE[figure]) in said(doubted.doubts[0].confirm)
        assert refused.fails
        assert refused.doubts == ()

    def test_a_button_that_nobody_benched_refuses_nothing(self):
        """1.5 N stands in for it; benched at 1.5 N it is too heavy for a thumb of 2 N."""
        thumb = Site(
            name="left thumb", part="thumb", press=BARE.model_copy(update={"force_n": (2.0,)}), crossing_hz=1.0
        )
        role = "top left front button"
        found = [
            press_fit(
                thumb, Pressed.of_button(Controller(name="pad", press_force_n=force), role), action(busy_per_min=20.0)
            )
            for force in (None, USUAL_BUTTON_FORCE_N)
        ]
        assert (found[0].fails, [one.rule for one in found[0].doubts]) == ((), ["press force"])
        assert "on the gauge" in said(found[0].doubts[0].confirm)
        assert "75% of the comfortable 2.0 N" in " ".join(told(found[1].fails))

    def test_a_press_that_nobody_counted_refuses_nothing(self):
        """60 % of the comfortable force is too much for a frequent press and fine for a rare one; nobody counted."""
        press = BARE.model_copy(update={"force_n": (3.0,)})
        found = fit(press, DOME, action(busy_per_min=None), part="hand", site=READ)
        assert (found.fails, [one.rule for one in found.doubts]) == ((), ["press force"])
        assert "busiest minute" in said(found.doubts[0].confirm)

    @given(part=st.sampled_from(PARTS), force=st.floats(0.05, 20.0), more=st.floats(1.0, 20.0), rest=st.booleans())
    def test_more_force_never_refuses(self, part, force, more, rest):
        """Law: with nothing else changed, a stronger part is refused no switch that a weaker one may press, and pays no more but for
        a switch so slight that it is to be tried."""
        known = {"rest_force_n": (0.02,)} if rest else {}
        weak, strong = (Press(force_n=(one,), **known) for one in (force, force * more))
        for switch in (PIP, LEAF, DOME, SLAB):
            weaker, stronger = (fit(press, switch, action(), part=part) for press in (weak, strong))
            assert weaker.fails or not stronger.fails
            terms = [press_terms(one, action(), toggle=False) for one in (weaker, stronger)]
            points = [sum(term.points for term in each if term.what != "suits") for each in terms]
            assert weaker.fails or points[1] >= points[0] - 1e-9

    def test_a_usual_cycle_does_not_fill_the_minute(self):
        """Nobody counted the presses of ten seconds: 60 presses of the usual second would fill the minute, which costs points and
        takes no seconds from what may refuse."""
        found = fit(BARE, DOME, action(busy_per_min=60.0), part="hand", site=READ)
        assert (found.fails, found.cycle_s, found.sure_cycle_s) == ((), 1.0, 0.0)
        (busy,) = (term for term in press_terms(found, action(), toggle=False) if term.what == "busy")
        assert busy.points == pytest.approx(-1.0, abs=1e-9)


FORCE = st.floats(0.01, 20.0)
FACE = st.floats(0.005, 0.2)
SCATTER = st.floats(0.0, 0.1)


class TestLaws:
    """What must hold for every figure."""

    @given(force=FORCE, more=FORCE, comfortable=FORCE)
    def test_a_heavier_switch_never_leaves_more_margin(self, force, more, comfortable):
        """Law: the heavier the switch, the larger the share of the comfortable force."""
        light, heavy = (
            fit(Press(force_n=(comfortable,)), Switch(name="s", force_n=one), action()) for one in (force, force + more)
        )
        assert heavy.effort_share >= light.effort_share
        assert heavy.effort_share == pytest.approx((force + more) / comfortable, rel=1e-12)

    @given(face=st.one_of(st.tuples(FACE), st.tuples(FACE, FACE)), larger=st.floats(1.0, 5.0), scatter=SCATTER)
    def test_a_larger_face_never_catches_fewer(self, face, larger, scatter):
        """Law: a larger face, round or strip, never catches fewer presses."""
        assert 0 <= hit_share(face, scatter) <= hit_share(tuple(side * larger for side in face), scatter) <= 1

    @given(face=st.one_of(st.tuples(FACE), st.tuples(FACE, FACE)), scatter=SCATTER, more=SCATTER)
    def test_more_scatter_never_hits_more(self, face, scatter, more):
        """Law: more scatter never catches more presses."""
        assert hit_share(face, scatter + more) <= hit_share(face, scatter)

    @given(rest=st.floats(0.0, 5.0), above=FORCE, shaken=st.floats(0.0, 5.0), more=st.floats(0.0, 5.0))
    def test_more_involuntary_force_never_lowers_false_presses(self, rest, above, shaken, more):
        """Law: above the resting force, more involuntary force never presses less often."""
        steady, unsteady = (crossings_per_min(rest + above, rest, sd, 1.5) for sd in (shaken, shaken + more))
        assert 0 <= steady <= unsteady <= ALWAYS

    @given(rest=st.floats(0.0, 5.0), force=FORCE, more=FORCE, shaken=st.floats(0.0, 5.0))
    def test_a_heavier_switch_never_goes_off_more(self, rest, force, more, shaken):
        """Law: a heavier switch never goes off by itself more often."""
        assert crossings_per_min(force + more, rest, shaken, 1.5) <= crossings_per_min(force, rest, shaken, 1.5)

    @given(face=FACE, scatter=st.floats(0.001, 0.1))
    def test_hits_by_rayleighs_distribution(self, face, scatter):
        """A round face: Rayleigh's distribution, by scipy."""
        assert hit_share((face,), scatter) == pytest.approx(
            stats.rayleigh.cdf(face / 2, scale=scatter), rel=1e-9, abs=1e-12
        )

    def test_hits_by_simulation(self):
        """Presses drawn and counted, 400 000: round, square and strip, within four standard errors."""
        rng = np.random.default_rng(5)
        x, y = 0.02 * rng.standard_normal((2, 400_000))
        for face, on in (
            ((0.05,), np.hypot(x, y) < 0.025),
            ((0.05, 0.05), (abs(x) < 0.025) & (abs(y) < 0.025)),
            ((0.02, 0.06), (abs(x) < 0.01) & (abs(y) < 0.03)),
        ):
            assert hit_share(face, 0.02) == pytest.approx(on.mean(), abs=4 * 0.5 / math.sqrt(400_000))

    @given(
        kind=st.sampled_from(["press", "hold", "repeat", "trigger", "one-axis", "two-axis", "chord"]),
        force=st.none() | FORCE, rate=st.none() | st.floats(0.0, 10.0), landing=st.none() | SCATTER,
        slowed=st.floats(0.0, 1.0), toggle=st.booleans(), proximity=st.booleans(),
    )  # fmt: skip
    def test_any_reading_may_be_missing(self, kind, force, rate, landing, slowed, toggle, proximity):
        """Whatever is missing, every figure comes out or is NaN, every sentence is one, and nothing is said twice."""
        press = Press.model_validate(
            {
                "landing_m": landing,
                **({} if force is None else {"force_n": force}),
                **({} if rate is None else {"rate_per_s": rate}),
            }
        )
        switch = WINK if proximity else DOME
        found = fit(press, switch, action(kind=kind, busy_per_min=None), toggle=toggle, slowed_share=slowed)
        assert found.cycle_s > 0
        assert found.move_s > 0
        assert found.false_per_min >= 0
        for each in map(told, (found.fails, found.notes, found.assumed)):
            assert len(set(each)) == len(each)
            assert all(one.strip() and "nan" not in one.split() and "e-" not in one.split()[0] for one in each)
