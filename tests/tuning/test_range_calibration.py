"""Reach per direction and the gain that fills the output."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.codes.message import message
from stickwright.codes.tunings import Tunings
from stickwright.tuning.asked import AskedStretch
from stickwright.tuning.range_calibration import player_span, push_reaches, rim_reaches

FOUR = [0.0, math.pi / 2, math.pi, 3 * math.pi / 2]


def repeats(reaches, scatter=(0.95, 1.0, 1.05)):
    return [(direction, reach * times) for direction, reach in zip(FOUR, reaches, strict=True) for times in scatter]


def laps(shape, count=3):
    turn = np.linspace(0, 2 * math.pi * count, 400 * count)
    return AskedStretch(turn, (shape(turn) * [np.cos(turn), np.sin(turn)]).T)


@given(factor=st.floats(0.5, 1.2))
def test_half_the_reach_is_twice_the_gain(factor):
    """Law: scaling every reach scales reach and its interval, and the gain the other way."""
    once, again = (
        player_span(repeats([0.6, 0.4, 0.7, 0.5])),
        player_span(repeats(np.array([0.6, 0.4, 0.7, 0.5]) * factor)),
    )
    assert np.array(again.gain) == pytest.approx(np.minimum(3.0, np.array(once.gain) / factor), rel=1e-9)
    assert again.reach[0].low == pytest.approx(factor * once.reach[0].low, rel=1e-9)


def test_intervals_pool_the_scatter_of_all_directions():
    """By hand: logarithms of 0.95, 1, 1.05 in each of four directions, 8 degrees of freedom, t = 2.306."""
    reach = player_span(repeats([0.6, 0.4, 0.7, 0.5])).reach[1]
    spread = np.std(np.log([0.95, 1.0, 1.05]), ddof=1)
    half = math.exp(2.306004 * spread / math.sqrt(3))
    assert (reach.low, reach.high) == pytest.approx((reach.value / half, reach.value * half), rel=1e-6)


def test_gain_is_held_at_three_and_says_where():
    """Forward reaches a quarter: four times gain would be needed, three is set, another stick is the answer."""
    span = player_span(repeats([0.6, 0.25, 0.7, 0.5]))
    assert span.gain[1] == 3.0
    told = said(span.findings[0].text)
    assert "forward (25%)" in told
    assert "lighter stick" in told


@pytest.mark.parametrize("directions", [[], [0.0], [0.0, math.pi], [0.0, 0.5, 1.0, 1.5]])
def test_reach_known_on_one_side_only_leaves_the_range_alone(directions):
    """No guess about directions that nobody pushed in."""
    span = player_span([(direction, 0.5) for direction in directions])
    assert span.gain == ()
    assert span.findings[0].text.text == "no_range"


def test_three_directions_all_round_are_enough():
    """A third of a turn apart none of the circle is further than 60 degrees from a reading: half the reach, twice the gain."""
    span = player_span([(math.radians(towards), 0.5) for towards in (0, 120, 240)])
    assert span.gain == pytest.approx((2.0,) * 3)


def test_one_reading_each_has_no_interval():
    """A gain can be set from one reading in each direction, and the missing interval is a sentence."""
    span = player_span([(direction, 0.5) for direction in FOUR])
    assert span.gain == pytest.approx((2.0,) * 4)
    assert span.reach[0].why == message(Tunings.why_one_each)


def test_rim_gives_twelve_directions():
    """Three laps of an oval: reach in twelve directions, close to the oval itself."""

    def oval(turn):
        return 0.4 / np.hypot(np.cos(turn) * 0.5, np.sin(turn))  # 0.8 right and left, 0.4 forward and back

    span = player_span(rim_reaches([laps(oval)]))
    assert len(span.gain) == 12
    reach = dict(zip([round(math.degrees(d)) for d in span.direction_rad], span.reach, strict=True))
    assert reach[0].value == pytest.approx(0.8, abs=0.02)
    assert reach[90].value == pytest.approx(0.42, abs=0.02)
    assert reach[0].n >= 3


def test_crossing_the_middle_is_no_reach():
    """On the way from rim to rim a pass near the centre does not count as the reach there."""
    turn = np.linspace(0, 2 * math.pi, 400)
    lap = 0.6 * np.column_stack([np.cos(turn), np.sin(turn)])
    across = np.column_stack([np.linspace(0.6, 0.05, 30), np.full(30, 0.04)])
    with_crossing = rim_reaches([AskedStretch(np.arange(430.0), np.concatenate([lap, across]))])
    assert min(reach for _, reach in with_crossing) > 0.5


def test_reach_of_a_push_is_along_its_cue():
    """Forward push that drifts right: only the way forward counts; without a cue it does not count at all."""
    xy = np.tile([0.3, 0.5], (10, 1))
    asked = AskedStretch(np.arange(10.0), xy, np.tile([0.0, 1.0], (10, 1)))
    assert push_reaches([asked, AskedStretch(np.arange(10.0), xy)]) == [(math.pi / 2, 0.5)]
