"""A base that goes in only with its width pointing forward: when it may, what is said, and what is not turned twice.

All sticks, players and figures are invented.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from test_kit_as_it_is import DRAWS, LIGHT, SHELL, case, chosen
from test_kit_warnings import STICK, told

from said import said
from simulated import Sensor, SimulatedPlayer, SimulatedStick, Visit
from stickwright.codes.message import Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.mechanics.setups import setups_of
from stickwright.model.fit import Fit
from stickwright.model.kit import Kit, Stick
from stickwright.model.recording import Recording
from stickwright.mounting.held import held_of
from stickwright.planning.plan import plan
from stickwright.report.device_words import crosswise_step
from stickwright.report.drawings import setup_alt, setup_drawing
from stickwright.report.words import plan_words

LONG = {"name": "yew", **SHELL, **LIGHT, "base_mm": [90, 50, 30]}
DEEP, WIDE = (0.100, 0.060), (0.060, 0.100)


def at(room_m: tuple[float, float], stick: dict[str, object]) -> Fit:
    """The first set-up of a plan whose only place is so long and so wide."""
    given = case(stick)
    (site,) = given.player.site
    player = given.player.model_copy(update={"site": (site.model_copy(update={"room_m": room_m}),)})
    (planned,) = plan(replace(given, player=player), draws=DRAWS).sites
    return planned.fits[0]


class TestWhetherItMay:
    @pytest.mark.parametrize(
        "room_mm, said, expected",
        [
            ((90, 50), None, "lengthwise"), ((90, 50), True, "lengthwise"),
            ((50, 90), True, "crosswise"), ((50, 90), None, "crosswise"), ((50, 90), False, "too large"),
            ((89, 89), True, "too large"), ((49, 200), True, "too large"),
        ],
    )  # fmt: skip
    def test_by_hand(self, room_mm: tuple[int, int], said: bool | None, expected: str) -> None:
        """90 mm long and 50 mm wide: lengthwise where that goes, else crosswise unless somebody said that it cannot."""
        room = (room_mm[0] / 1000, room_mm[1] / 1000)
        assert Stick.model_validate({**LONG, "crosswise": said}).stands(room) == expected

    def test_one_that_cannot_is_too_large(self) -> None:
        """The sentence says that it would go in crosswise, so that nobody wonders."""
        fit = at(WIDE, {**LONG, "crosswise": False})
        assert (fit.verdict, fit.impossible, fit.crosswise) == ("does not fit", True, False)
        assert fit.fails[0].param("crosswise") is True

    def test_nobody_said_is_assumed_and_told(self) -> None:
        """An assumption alone vetoes nothing; it stands among the assumptions with what would settle it."""
        given = case(LONG)
        (site,) = given.player.site
        player = given.player.model_copy(update={"site": (site.model_copy(update={"room_m": WIDE}),)})
        made = plan(replace(given, player=player), draws=DRAWS)
        fit = chosen(made)
        assert (fit.crosswise, fit.crosswise_assumed, fit.verdict) == (True, True, "fits")
        assert message(StandIns.crosswise, stick=Name("yew")) in {one.what for one in made.assumptions}

    def test_where_it_goes_lengthwise_nothing_is_said(self) -> None:
        """Room enough as it usually stands: no quarter turn, no step."""
        fit = at(DEEP, {**LONG, "crosswise": True, "turns_output": "hub"})
        assert (fit.crosswise, fit.turns_output, crosswise_step(fit)) == (False, "", None)


class TestWhatIsSaid:
    @pytest.mark.parametrize(
        "how, ends",
        [
            ("itself", "anticlockwise in the stick's own settings."), ("hub", "anticlockwise in the hub's settings."),
            ("game", "anticlockwise in the game's settings."), ("slide the switch under it to R", ": slide the switch under it to R."),
            ("", "Look in the manual of the stick, the hub or the game for where."),
        ],
    )  # fmt: skip
    def test_the_step(self, how: str, ends: str) -> None:
        """Stood with its front to the left every push comes out a quarter clockwise (rotation of axes): anticlockwise mends it."""
        step = crosswise_step(at(WIDE, {**LONG, "crosswise": True, "turns_output": how}))
        assert step is not None
        told = said(step)
        assert told.startswith(
            "Stand the base crosswise, with its front to the left. Turn its output a quarter turn anti"
        )
        assert told.endswith(ends)

    def test_terminal_and_drawing(self) -> None:
        """The step stands on the terminal; the drawing shows the width pointing forward and says so."""
        given = case({**LONG, "crosswise": True, "turns_output": "game"})
        (site,) = given.player.site
        player = given.player.model_copy(update={"site": (site.model_copy(update={"room_m": WIDE}),)})
        made = plan(replace(given, player=player), draws=DRAWS)
        fit = chosen(made)
        assert "Stand the base crosswise" in plan_words(made)
        assert "standing crosswise with its front to the left" in setup_alt(fit)
        assert "base crosswise (▲ left)" in setup_drawing(fit)
        assert setup_drawing(fit) != setup_drawing(replace(fit, crosswise=False))

    def test_what_holds_it_sees_it_as_it_stands(self) -> None:
        """90 long and 50 wide, stood crosswise: 50 forward and 90 across, as high as before."""
        fit = at(WIDE, {**LONG, "crosswise": True})
        assert fit.base_m == pytest.approx((0.090, 0.050, 0.030))
        assert held_of(fit, Kit.model_validate({"stick": [LONG]})).base_m == pytest.approx((0.050, 0.090, 0.030))

    def test_its_own_slope_lies_sideways(self) -> None:
        """A top that slopes 10 degrees towards the player lengthwise does not slope towards the player crosswise."""
        kit = Kit.model_validate({"stick": [{**LONG, "base_tilt_deg": 10}]})
        assert np.degrees(setups_of(kit, room_m=DEEP).slopes_rad) == pytest.approx([10.0])
        assert np.degrees(setups_of(kit, room_m=WIDE).slopes_rad) == pytest.approx([0.0])


def pushed(stood_deg: float) -> Recording:
    """Pushes on a base that stands turned by so much, anticlockwise; its own axes go with it."""
    player = SimulatedPlayer(
        force_n=(0.8,) * 8, reach_m=(0.009,) * 8, sway_n=0.006, tremor_hz=5.0, tremor_n=0.003, limb_n_per_m=42.0
    )
    stick = SimulatedStick.of(0.10, 0.20, 0.004, 0.016, 0.004)
    visit = Visit(player, stick, Sensor(turn_rad=-math.radians(stood_deg), rate_hz=50.0), site="left thumb", name="yew")
    return visit.push(np.random.default_rng(5), repeats=2, aim_sd_rad=math.radians(2))


class TestTheQuarterTurnIsNotCountedTwice:
    @pytest.mark.parametrize("stood_deg", [90, -90])
    def test_recorded_before_the_output_was_turned(self, stood_deg: float) -> None:
        """Stood crosswise and recorded so, the quarter turn is the base's: no fault of the tuning, no turn left for it, and no
        advice to turn the base back."""
        given = case({**LONG, "crosswise": True, "turns_output": "hub"})
        (site,) = given.player.site
        player = given.player.model_copy(update={"site": (site.model_copy(update={"room_m": WIDE}),)})
        made = plan(replace(given, player=player, recordings=(pushed(stood_deg),)), draws=DRAWS)
        (planned,) = made.sites
        (tuning,) = planned.tunings
        assert tuning.faults == ()
        assert math.degrees(tuning.output_rotation_rad.value) == pytest.approx(0, abs=3)
        assert "crosswise" in [one.about for one in planned.findings]

    def test_lengthwise_it_is_still_a_fault(self) -> None:
        """The same recording where the base has room lengthwise: somebody put it on a quarter round."""
        given = case({**LONG, "crosswise": True, "turns_output": "hub"})
        made = plan(replace(given, recordings=(pushed(90),)), draws=DRAWS)
        assert made.sites[0].tunings[0].faults


@pytest.mark.parametrize(
    "lines, mark, words",
    [
        ('crosswise = false\nturns_output = "hub"\n', "!", 'turns_output = "hub" with crosswise = false'),
        ("crosswise = true\n", "?", "what then turns its output is not recorded"),
        ('crosswise = true\nturns_output = "hub"\n', "?", "without the size of its base"),
    ],
)  # fmt: skip
def test_what_is_refused_and_asked(lines: str, mark: str, words: str) -> None:
    """A contradiction is refused; half of it said is asked about, with the key that is missing."""
    assert any(one.startswith(mark) and words in one for one in told(STICK + lines))


def test_all_said_raises_no_warning() -> None:
    """Size, crosswise and what turns the output."""
    assert told(STICK + 'base_mm = [90, 50, 30]\ncrosswise = true\nturns_output = "slide it to R"\n') == []
