"""Rotation, mirror, quarter turns, and reach that looks like rotation."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.codes.bases import Bases
from stickwright.codes.message import message
from stickwright.tuning.asked import AskedStretch
from stickwright.tuning.rotation_calibration import bearing, push_direction

EIGHT = np.tile(np.arange(8) * math.pi / 4, 3)
WOBBLE = np.radians([3, -4, 1, 2, -2, 0, 4, -4, -1, 2, -3, 3, 1, -2, 0, 1, 2, -3, 4, -1, -2, 1, 0, -1])


@given(error_deg=st.floats(-60, 60))
def test_rotation_is_minus_the_error(error_deg):
    """Law: a base turned by an angle is put right by turning the output back by the same angle."""
    found = bearing(EIGHT + math.radians(error_deg) + WOBBLE, EIGHT)
    assert math.degrees(found.output_rotation_rad.value) == pytest.approx(-error_deg, abs=0.5)
    assert found.output_rotation_rad.low < found.output_rotation_rad.value < found.output_rotation_rad.high


@given(turn=st.floats(-7, 7))
def test_turning_recording_and_cues_together_changes_nothing(turn):
    """Law: only produced against cued counts, not where the player sits. (Cues in steps of 15 degrees.)"""
    turn = round(turn / math.radians(15)) * math.radians(15)
    here = bearing(EIGHT + 0.3 + WOBBLE, EIGHT)
    there = bearing(EIGHT + 0.3 + WOBBLE + turn, EIGHT + turn)
    assert there.output_rotation_rad.value == pytest.approx(here.output_rotation_rad.value, abs=1e-9)
    assert there.output_rotation_rad.low == pytest.approx(here.output_rotation_rad.low, abs=1e-9)
    assert there.turn_base.text == here.turn_base.text
    assert there.turn_base_rad.value == pytest.approx(here.turn_base_rad.value, abs=1e-9)


def test_base_is_turned_the_same_way_as_the_error():
    """Pushes that come out 20 degrees anticlockwise: turn the base anticlockwise, the output clockwise."""
    found = bearing(EIGHT + math.radians(20) + WOBBLE, EIGHT)
    assert found.turn_base.text == "turn"
    assert found.turn_base.param("turn_rad") == pytest.approx(math.radians(20), abs=0.01)
    assert found.base == "turn"
    other = bearing(EIGHT - math.radians(20) + WOBBLE, EIGHT)
    assert other.turn_base.param("turn_rad") == pytest.approx(math.radians(-20), abs=0.01)


def test_a_straight_stick_is_left_alone():
    """Within the interval of nothing: the base stays."""
    assert bearing(EIGHT + WOBBLE, EIGHT).turn_base.text == "stays"


@pytest.mark.parametrize(
    "error_deg, stood, words",
    [
        (88, "clockwise", "The base stood a quarter turn clockwise. First turn it a quarter turn anticlockwise"),
        (-93, "anticlockwise", "The base stood a quarter turn anticlockwise. First turn it a quarter turn clockwise"),
        (178, "half", "The base stood half a turn round. First turn it half a turn"),
    ],
)
def test_quarter_and_half_turns_are_mounting(error_deg, stood, words):
    """Near 90 or 180 degrees the stick is mounted wrongly, and that comes first; the base stood against the sense in which
    the output comes out, and is turned in that sense."""
    found = bearing(EIGHT + math.radians(error_deg) + WOBBLE, EIGHT)
    assert found.turn_base == message(Bases.quarter_first, stood=stood)
    assert said(found.turn_base).startswith(words)
    assert (found.findings[0].level, found.findings[0].about) == ("fault", "quarter_turn")
    assert math.degrees(found.output_rotation_rad.value) == pytest.approx(-error_deg, abs=1)


@pytest.mark.parametrize(
    "mirror, axes",
    [
        (lambda c: math.pi - c, "x_sign"),
        (lambda c: -c, "y_sign"),
        (lambda c: math.pi / 2 - c, "swapped"),
        (lambda c: -math.pi / 2 - c, "swapped_both_signs"),
    ],
)
def test_mirrored_axes_are_named(mirror, axes):
    """Determinant below 0: no turning puts it right, and the sentence names the axis."""
    found = bearing(mirror(EIGHT) + WOBBLE, EIGHT)
    assert found.mirrored
    assert found.output_rotation_rad.value == 0.0
    assert found.findings[0].text == message(Bases.mirrored, axes=axes)
    assert found.turn_base == message(Bases.mirror_first)


def test_error_in_some_directions_only_is_reach():
    """Forward and both forward corners sag to the right, the rest is straight: reach, not rotation."""
    sag = np.where(np.isin(np.arange(24) % 8, (1, 2, 3)), math.radians(-25), 0.0)
    found = bearing(EIGHT + sag + WOBBLE, EIGHT)
    assert found.output_rotation_rad.value == 0.0
    assert found.findings[0].about == "reach_not_rotation"
    assert "Only 3 of 8 cued directions come out turned (forward-right, forward and forward-left)" in (
        said(found.findings[0].text)
    )


def test_a_turned_stick_with_one_direction_short_of_reach():
    """The base is askew by 15 degrees, and forward sags by another 40: the turn comes from the other seven, and forward
    is named."""
    sag = np.where(np.arange(24) % 8 == 2, math.radians(-40), 0.0)
    found = bearing(EIGHT + math.radians(15) + sag + WOBBLE, EIGHT)
    assert math.degrees(found.output_rotation_rad.value) == pytest.approx(-15, abs=1)
    assert found.output_rotation_rad.high - found.output_rotation_rad.low < math.radians(5)
    assert found.findings[-1].about == "reach_besides_rotation"
    assert "Of 8 cued directions, forward came out differently from the rest" in said(found.findings[-1].text)


def test_most_directions_off_and_the_rest_straight_is_reach():
    """Four of eight neighbours come out askew, the other four straight: no rigid turn does that."""
    sag = np.where(np.arange(24) % 8 < 4, math.radians(20), 0.0)
    found = bearing(EIGHT + sag + WOBBLE, EIGHT)
    assert not found.output_rotation_rad.has_interval
    assert "Only 4 of 8" in said(found.findings[0].text)


def test_one_push_in_each_direction_needs_a_clear_difference():
    """Single pushes, by hand: seven errors of 1 or -1 degree have an sd of 1.07; an eighth of 30 degrees is 26 standard
    errors off (6 degrees of freedom, 28 ways to part the circle), one of 4 degrees 3.4: told, and not told."""
    cued = np.arange(8) * math.pi / 4
    small = np.radians([1.0, -1.0, 1.0, -1.0, 1.0, -1.0, 1.0, 4.0])
    large = np.radians([1.0, -1.0, 1.0, -1.0, 1.0, -1.0, 1.0, 30.0])
    assert bearing(cued + small, cued).output_rotation_rad.has_interval
    told = said(bearing(cued + large, cued).findings[0].text)
    assert "Only 1 of 8 cued directions comes out turned (back-right)" in told


def test_directions_that_do_not_follow_are_queried():
    """Pushes all over the place: no rotation, look at the cues."""
    found = bearing(np.random.default_rng(2).uniform(-math.pi, math.pi, 3), [0.0, 0.1, 0.2])
    assert (found.output_rotation_rad.value, found.findings[0].level) == (0.0, "query")


def test_one_push_gives_no_interval():
    """One push has a direction but no spread."""
    found = bearing([0.4], [0.1])
    assert found.output_rotation_rad.value == pytest.approx(-0.3, abs=1e-12)
    assert found.output_rotation_rad.why == message(Bases.why_one_push)


def test_no_pushes_says_what_to_record():
    """Nothing to go by: the finding asks for pushes with cues."""
    found = bearing([], [])
    assert found.output_rotation_rad.why == message(Bases.why_no_pushes)
    assert found.findings[0].text == message(Bases.no_pushes)


def test_push_direction_ignores_the_way_out():
    """A push that starts crooked and ends forward-left counts by its outer half."""
    xy = np.array([[0.05, 0.0], [0.1, 0.1], [0.0, 0.6], [-0.6, 0.6], [-0.6, 0.6]])
    produced, cued = push_direction(AskedStretch(np.arange(5.0), xy, np.tile([-1.0, 1.0], (5, 1))))
    assert math.degrees(cued) == pytest.approx(135)
    assert math.degrees(produced) == pytest.approx(math.degrees(math.atan2(1.8, -1.2)))


def test_push_without_movement_or_cue_does_not_count():
    """A stick that hardly moved, or moved without being asked where to, has no error."""
    still = np.full((5, 2), 0.001)
    assert push_direction(AskedStretch(np.arange(5.0), still, np.tile([1.0, 0.0], (5, 1)))) is None
    assert push_direction(AskedStretch(np.arange(5.0), still + 0.5)) is None


def test_the_base_turns_against_the_output() -> None:
    """Pushes that come out 20 degrees anticlockwise: output 20 clockwise, base 20 anticlockwise, with the same interval. No turn
    of the base for a mirror, a quarter turn, or what is not worth turning."""
    cued = np.radians([0, 90, 180, 270])
    found = bearing(cued + np.radians([19, 21, 20, 20]), cued)
    assert found.turn_base_rad is not None
    assert math.degrees(found.turn_base_rad.value) == pytest.approx(20, abs=0.01)
    assert found.turn_base_rad.low == pytest.approx(-found.output_rotation_rad.high)
    assert found.turn_base_rad.high == pytest.approx(-found.output_rotation_rad.low)
    for produced in (cued + math.pi / 2, -cued, cued + np.radians([1, -1, 1, -1])):
        assert bearing(produced, cued).turn_base_rad is None


def test_pushes_along_one_line_show_no_mirror() -> None:
    """Asked for right and left alone, give or take 10 degrees: whether the other axis is swapped is not to be seen, however widely
    the pushes scatter. Asked for forward and back too, it is."""
    line = np.tile(np.radians([0, 10, 180, 190]), 3)
    scattered = np.tile(np.radians([25, -25, 205, 155]), 3)
    assert not bearing(scattered, line).mirrored
    ring = np.tile(np.radians([90, 270]), 3)
    assert bearing(np.concatenate([scattered, -ring]), np.concatenate([line, ring])).mirrored


@pytest.mark.parametrize("mean_deg, turned", [(4.0, True), (3.2, False)])
def test_the_rest_is_turned_when_chance_gives_that_in_less_than_one_of_a_hundred(mean_deg: float, turned: bool) -> None:
    """By hand: forward and both its corners sag by 30 degrees; the errors of the other five have the sd 3.1 degrees, so that their
    mean has 3.1 / sqrt(5) = 1.39. A mean of 4 degrees is 2.88 of that, outside the 2.58 of 99 in 100: turned as well. One of 3.2
    is 2.31 of it: straight, and the error is one of reach."""
    errors = np.zeros(8)
    errors[[1, 2, 3]] = -30.0
    errors[[4, 5, 6, 7, 0]] = mean_deg + 3.1 * np.array([1, -1, 0, -1, 1])
    cued = np.repeat(np.arange(8) * math.pi / 4, 3)
    found = bearing(cued + np.radians(np.repeat(errors, 3)), cued)
    assert [one.about for one in found.findings] == ["reach_besides_rotation" if turned else "reach_not_rotation"]
    assert math.degrees(found.output_rotation_rad.value) == pytest.approx(-mean_deg if turned else 0.0, abs=0.05)
