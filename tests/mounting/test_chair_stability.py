"""What a mount that hangs outside the wheels takes from the chair's stability."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.codes.message import message
from stickwright.codes.seating import Seating
from stickwright.model.room import Room
from stickwright.mounting.chair_stability import (
    ChairStability,
    chair_stability,
    outside_wheels,
    stability_findings,
    tips_with_mount_rad,
)

CHAIR = {
    "posture": "wheelchair", "chair_kg": 40, "player_kg": 60, "track_mm": 560, "rear_wheel_mm": -40, "front_wheel_mm": 420,
    "seat_to_floor_mm": 500, "tips_sideways_deg": 15.642, "tips_back_deg": 10, "tips_forward_deg": 20,
}  # fmt: skip


def chair(**more):
    kept = {key: value for key, value in {**CHAIR, **more}.items() if value is not None}
    return Room.model_validate(kept)


def test_by_hand():
    """Independent of the formula's code, by moments about the line: 100 kg, 280 mm inside, 1.0 m up (atan 0.28 = 15.642 deg);
    2 kg hung 120 mm outside, 700 mm up: (28 - 0.24)/(100 + 1.4) = 0.27377, its atan 15.311 deg."""
    found = tips_with_mount_rad(100.0, 0.28, 1.0, 2.0, 0.12, 0.7)
    assert math.degrees(found) == pytest.approx(15.311, abs=0.01)
    told = chair_stability(chair(), "seat", (0.40, 0.2, 0.2), 2.0)
    assert told.side == "right"
    assert "add 2.4 N m" in said(told.words)
    assert "falls from 15.6\N{DEGREE SIGN} to 15.3\N{DEGREE SIGN}" in said(told.words)
    assert told.question is None


def test_moments_on_level_ground():
    """By hand: 2 kg x 9.80665 x 0.12 m = 2.354 N m against 100 kg x 9.80665 x 0.28 m = 274.6 N m."""
    check = chair_stability(chair(), "base", (-0.40, 0.2, 0.2), 2.0).check
    assert check.load == pytest.approx(2.354, abs=0.0005)
    assert check.limit == pytest.approx(274.6, abs=0.05)
    assert check.factor == pytest.approx(116.67, abs=0.01)
    assert check.holds


def test_forwards_from_both_slopes():
    """By hand: wheels 460 mm apart, 10 and 20 degrees: the centre is 0.46/(tan 10 + tan 20) = 0.8515 m up and 0.8515 tan 20 =
    0.3099 m behind the front wheels; 100 kg x 9.80665 x 0.3099 = 303.9 N m."""
    told = chair_stability(chair(), "seat", (0.0, 0.72, -0.3), 3.0)
    assert told.side == "forward"
    assert told.out_m == pytest.approx(0.30, abs=1e-9)
    assert told.check.limit == pytest.approx(303.9, abs=0.1)


@given(
    kg=st.floats(20, 250), to_line=st.floats(0.05, 0.5), height=st.floats(0.3, 1.5), added=st.floats(0.1, 10),
    out=st.floats(0.001, 1.0), up=st.floats(0.1, 1.5),
)  # fmt: skip
def test_at_that_slope_the_moments_are_even(kg, to_line, height, added, out, up):
    """Law: at the slope found, the moments of both weights about the line cancel."""
    turned = tips_with_mount_rad(kg, to_line, height, added, out, up)
    moment = kg * (to_line * math.cos(turned) - height * math.sin(turned))
    moment -= added * (out * math.cos(turned) + up * math.sin(turned))
    assert moment == pytest.approx(0.0, abs=1e-9 * kg)


@pytest.mark.parametrize(
    ("missing", "asked"),
    [
        ({"track_mm": None, "rear_wheel_mm": None, "front_wheel_mm": None}, "track_mm"),
        ({"player_kg": None}, "chair_kg, player_kg"),
        ({"tips_sideways_deg": None}, "tips_sideways_deg"),
        ({"seat_to_floor_mm": None}, "seat_to_floor_mm"),
    ],
)
def test_the_one_measurement_that_would_settle_it(missing, asked):
    """What is not known is asked for, one thing at a time, and no slope is made up."""
    told = chair_stability(chair(**missing), "seat", (0.40, 0.2, 0.2), 2.0)
    assert asked in said(told.question)
    assert told.words is None or told.words.param("after_rad") is None


def test_nothing_is_said_of_what_does_not_hang_on_a_wheelchair():
    """Inside the wheels, on a table, on a bed, or weighing nothing: no words, no question."""
    assert outside_wheels(chair(), (0.1, 0.2, 0.3)) is None
    quiet = [
        chair_stability(chair(), "seat", (0.1, 0.2, 0.3), 2.0),
        chair_stability(chair(), "room", (0.4, 0.2, 0.3), 2.0),
        chair_stability(chair(posture="bed"), "seat", (0.4, 0.2, 0.3), 2.0),
        chair_stability(chair(), "seat", (0.4, 0.2, 0.3), 0.0),
    ]
    assert [(one.words, one.question) for one in quiet] == [(None, None)] * 4


def test_a_chair_that_tips_where_it_stands_is_a_fault():
    """By hand: a 3 kg push chair with a player of 12 kg on a track of 300 mm keeps 15 x 9.80665 x 0.15 = 22.1 N m; 8 kg hung
    350 mm outside are 27.5 N m."""
    light = chair(chair_kg=3, player_kg=12, track_mm=300, tips_sideways_deg=None)
    known = chair_stability(light, "base", (0.5, 0.2, 0.2), 8.0)
    assert (known.check.load, known.check.limit) == (pytest.approx(27.46, abs=0.005), pytest.approx(22.06, abs=0.005))
    fault, query = stability_findings("hand", known)
    assert (fault.level, query.level) == ("fault", "query")
    assert "tips on level ground" in said(fault.text)


def test_what_is_known_and_what_is_asked_are_told_as_two_sentences():
    """One blank between them; a question alone begins right after the site."""
    weigh, floor = message(Seating.weigh), message(Seating.seat_height)
    (both,) = stability_findings("chin", ChairStability(words=weigh, question=floor))
    assert said(both.text) == f"chin: {said(weigh)} {said(floor)}"
    (asked,) = stability_findings("chin", ChairStability(question=floor))
    assert said(asked.text) == f"chin: {said(floor)}"
