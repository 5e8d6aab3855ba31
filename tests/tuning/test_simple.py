"""The two numbers for a game that offers no more."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import least_squares

from said import said
from stickwright.codes.message import message
from stickwright.codes.tunings import Tunings
from stickwright.tuning.filters import Filter
from stickwright.tuning.shaping import Response
from stickwright.tuning.simple import game_output, simple_settings

FOUR = (0.0, math.pi / 2, math.pi, 3 * math.pi / 2)


@settings(max_examples=15)
@given(zone=st.integers(0, 40))
def test_a_plain_dead_zone_is_given_back(zone):
    """Law: a response that is only a dead zone is met exactly."""
    found = simple_settings(Response(dead_zone=zone / 100))
    assert (found.dead_zone_percent, found.sensitivity_percent) == pytest.approx((zone, 100.0))
    assert found.rms_difference == pytest.approx(0.0, abs=1e-9)
    assert found.lost == message(Tunings.nothing_lost, rms_share=found.rms_difference)


def test_half_the_reach_all_round_is_twice_the_sensitivity():
    """By hand: gain 2 everywhere and nothing else."""
    found = simple_settings(Response(direction_rad=FOUR, gain=(2.0,) * 4), (0.5,) * 4)
    assert (found.dead_zone_percent, found.sensitivity_percent) == (0.0, 200.0)
    assert found.rms_difference == pytest.approx(0.0, abs=1e-9)


def test_least_squares_against_scipy():
    """A bent curve over a dead zone: scipy's solver finds no pair that is better by more than 0.1 %."""
    wanted = Response(dead_zone=0.07, curve_ratio=4.0)
    found = simple_settings(wanted)
    x = np.linspace(0, 1, 101)
    u = np.clip((x - 0.07) / 0.93, 0, None)
    line = np.log1p(4 * u) / np.log1p(4)

    def off(pair):
        return np.clip(pair[1] * (x - pair[0]) / (1 - pair[0]), 0, 1) - line

    starts = ([0.08, 1.5], [0.1, 1.2], [0.2, 2.0])
    fits = [least_squares(off, start, bounds=([0.07, 0.1], [0.9, 4.0])) for start in starts]
    best = min(fits, key=lambda fit: fit.cost)
    assert found.rms_difference == pytest.approx(math.sqrt(2 * best.cost / 101), abs=0.001)
    assert found.rms_difference == pytest.approx(
        math.sqrt(np.mean(off((found.dead_zone_percent / 100, found.sensitivity_percent / 100)) ** 2)), abs=1e-12
    )


@pytest.mark.parametrize("ratio", [0.0, 20.0, 400.0, 5000.0])
def test_no_more_sensitivity_than_four_times(ratio):
    """Three times gain and a curve that starts steeply ask for more than four times; four is the most that is set."""
    found = simple_settings(Response(direction_rad=FOUR, gain=(3.0,) * 4, curve_ratio=ratio), (1 / 3,) * 4)
    assert found.sensitivity_percent == (300.0 if ratio == 0.0 else 400.0)


def test_only_a_sensitivity_leaves_the_dead_zone_at_nothing():
    """Where one of the two is missing, the other is chosen alone."""
    wanted = Response(dead_zone=0.1, curve_ratio=4.0)
    assert simple_settings(wanted, offers=("sensitivity",)).dead_zone_percent == 0.0
    assert simple_settings(wanted, offers=("dead zone",)).sensitivity_percent == 100.0


def test_dead_zone_never_smaller_than_rest_needs():
    """A bent curve would be met best with no dead zone, but rest at 3 % off centre with 4 % noise needs 7 %."""
    assert simple_settings(Response(centre_xy=(0.03, 0.0), dead_zone=0.04, curve_ratio=5.0)).dead_zone_percent == 7.0


def test_what_is_lost_is_said_in_one_sentence():
    """Offset, rotation, unequal reach, curve and filter cannot be had with two numbers."""
    rich = Response((0.05, 0.0), 0.3, FOUR, (1.0, 2.4, 1.0, 1.5), 0.05, 0.0, 3.0, Filter("low-pass", 3.0), 1.0)
    lost = said(simple_settings(rich, (1.0, 0.42, 1.0, 0.67)).lost)
    for part in ("off centre", "rotated by 17° clockwise", "where 1.0 to 2.4", "precision", "filtered", "(rms"):
        assert part in lost


def test_sensitivity_of_150_reaches_full_output_at_two_thirds():
    """The meaning of the number as printed."""
    assert game_output(np.array([2 / 3 - 0.01, 2 / 3]), 0.0, 1.5) == pytest.approx([0.985, 1.0], abs=1e-9)


def test_what_the_two_numbers_come_from_is_kept():
    """By hand: rest 3.5 % right and 2.2 % back lies hypot 4.13 % off; a radius of 6 % of a range stretched at least 1.2 times
    is 5 % of full output; reach from 50 to 82 %."""
    found = simple_settings(
        Response(centre_xy=(0.035, -0.022), dead_zone=0.06, direction_rad=FOUR, gain=(1.2, 2.0, 1.2, 2.0)),
        (0.82, 0.5, 0.82, 0.5),
    )
    assert found.rest_offset_share == pytest.approx(0.0413, abs=5e-5)
    assert found.radius_share == pytest.approx(0.05)
    assert found.reach_share == pytest.approx((0.5, 0.82))
    assert found.dead_zone_percent >= 10
