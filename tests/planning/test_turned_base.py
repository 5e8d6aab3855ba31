"""One stick on a base that stands turned, from the recording to the sentence, the sign and the drawing."""

from __future__ import annotations

import math

import numpy as np
import pytest

from said import said
from simulated import Sensor, SimulatedPlayer, SimulatedStick, Visit
from stickwright.model.player import Site
from stickwright.model.recording import Recording
from stickwright.planning.from_recordings import base_turn
from stickwright.trace.bias import bias_report
from stickwright.trace.recording import cleaned
from stickwright.tuning.pipeline import tune

SITE = Site(name="thumb", part="thumb")
PLAYER = SimulatedPlayer(
    force_n=(0.52,) * 8, reach_m=(0.009,) * 8, sway_n=0.006, tremor_hz=5.0, tremor_n=0.003, limb_n_per_m=42.0
)
STICK = SimulatedStick.of(0.060, 0.165, 0.005, 0.018, 0.004)


def pushed(stood_deg: float, stick: str = "yew") -> Recording:
    """Eight pushes, twice each, on a base that stands turned by so much, anticlockwise seen from above. Its own axes go with it, so
    that a push toward a room direction comes out turned the other way (rotation of axes)."""
    visit = Visit(PLAYER, STICK, Sensor(turn_rad=-math.radians(stood_deg), rate_hz=50.0), site="thumb", name=stick)
    return visit.push(np.random.default_rng(5), repeats=2, aim_sd_rad=math.radians(2))


@pytest.mark.parametrize(
    "stood_deg, how, cure",
    [
        (90, "a quarter turn anticlockwise", "a quarter turn clockwise"),
        (-90, "a quarter turn clockwise", "a quarter turn anticlockwise"),
        (180, "half a turn round", "half a turn"),
    ],
)
def test_a_base_that_stood_a_quarter_round_is_told_as_it_stood(stood_deg: float, how: str, cure: str) -> None:
    """Put on a quarter turn anticlockwise, every push comes out a quarter clockwise: the recording's report and the tuning tell
    the base's own sense and turn it back, the error and the correction have opposite signs, and no base is turned by software."""
    recording = pushed(stood_deg)
    report, (advice,) = bias_report(cleaned(recording)[0])
    tuning = tune([recording], site="thumb", stick="yew")
    assert report is not None
    for text in (said(advice.text), said(tuning.turn_base), said(tuning.faults[0].text)):
        assert f"the base stood {how}" in text[0].lower() + text[1:]
        assert cure in text
    off = math.remainder(math.degrees(report.error_rotation_rad.value) + stood_deg, 360)
    assert off == pytest.approx(0, abs=3)
    back = math.remainder(math.degrees(tuning.output_rotation_rad.value) - stood_deg, 360)
    assert back == pytest.approx(0, abs=3)
    assert tuning.base == "mend_first"
    assert base_turn(SITE, [recording], "yew") is None


@pytest.mark.parametrize("stood_deg", [15, -20])
def test_a_base_a_little_askew_is_turned_back_by_what_it_was_off(stood_deg: float) -> None:
    """Where it stood plus the turn found is straight ahead, and the sentence says the sense of that turn."""
    recording = pushed(stood_deg)
    turn = base_turn(SITE, [recording], "yew")
    assert turn is not None
    assert stood_deg + math.degrees(turn.value) == pytest.approx(0, abs=2)
    sense = "clockwise" if stood_deg > 0 else "anticlockwise"
    tuning = tune([recording], site="thumb", stick="yew")
    assert f"First turn the base of the stick {abs(math.degrees(turn.value)):.0f}° {sense}" in said(tuning.turn_base)
    assert any(f"° {sense}, then record again" in said(one.text) for one in bias_report(cleaned(recording)[0])[1])


def test_a_turn_found_on_one_stick_goes_with_the_player_to_another() -> None:
    """Fifteen degrees found on yew are the turn of elm's base too, marked as found there; a recording of elm itself wins, also
    when it says that elm stands straight."""
    on_yew, on_elm = pushed(-15), pushed(0, "elm")
    carried = base_turn(SITE, [on_yew], "elm")
    assert carried is not None
    assert math.degrees(carried.value) == pytest.approx(15, abs=2)
    assert said(carried.assumed) == "found on yew, not on elm"
    assert base_turn(SITE, [on_yew, on_elm], "elm") is None
    own = base_turn(SITE, [on_yew, on_elm], "yew")
    assert own is not None
    assert own.assumed is None
