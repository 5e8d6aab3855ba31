"""A mount that gives: what the stick and the player then feel."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from said import said
from stickwright.errors import BadInput
from stickwright.mounting.compliance import (
    cantilever,
    droop_m,
    droop_rad,
    force_with_give,
    give_findings,
    in_series_n_per_m,
    lost_share,
    ringing_hz,
)

approx = pytest.approx
stiff = st.floats(50.0, 1e6)


@given(
    force=st.floats(0.2, 40.0),
    reach=st.floats(0.004, 0.12),
    give=stiff,
    start_share=st.floats(0.01, 0.9),
    spring=st.floats(5.0, 5000.0),
)
def test_two_ways_to_the_meeting_point(force, reach, give, start_share, spring):
    """Law: the stick (start force c, stiffness k) that meets F(1 - (x + need/give)/d) on the mount that gives stops at the
    same x as on a rigid one under F'(1 - x/d). Both are found by bisection, neither from the closed form."""
    start = start_share * float(force_with_give(force, reach, give))

    def on_the_mount(x):
        need = start + spring * x
        return need - force * (1 - (x + need / give) / reach)

    def rigid(x):
        return start + spring * x - float(force_with_give(force, reach, give)) * (1 - x / reach)

    assert brentq(on_the_mount, 0.0, reach, xtol=1e-15) == approx(brentq(rigid, 0.0, reach, xtol=1e-15), abs=1e-9)


def test_a_stick_too_heavy_behind_the_mount():
    """2 N over 20 mm on 0.5 N/mm leaves 2/(1 + 2/10) = 1.667 N: a start force of 1.6 N can be left, 1.7 N cannot, though the
    player has 2 N on the bench."""
    assert float(force_with_give(2.0, 0.02, 500.0)) == approx(1.0 / 0.6, rel=1e-12)
    for start, leaves in ((1.6, True), (1.7, False)):
        assert (start < 2.0 * (1 - (start / 500.0) / 0.02)) is leaves


@given(force=st.floats(0.001, 100.0), reach=st.floats(0.001, 0.2), give=stiff, stiffer=st.floats(1.0, 100.0))
def test_a_stiffer_mount_never_takes_more(force, reach, give, stiffer):
    """Law: never more than the player's own force, and more the stiffer the mount."""
    felt = float(force_with_give(force, reach, give))
    assert 0.0 <= felt <= force * (1 + 1e-12)
    assert felt <= float(force_with_give(force, reach, give * stiffer)) * (1 + 1e-12)


def test_nothing_gives_nothing_changes():
    """A rigid mount leaves the readings as they are; no force or no reach stays none."""
    assert force_with_give([0.0, 3.0], 0.02, math.inf).tolist() == [0.0, 3.0]
    assert force_with_give([0.0, 3.0, 0.0], [0.02, 0.0, 0.0], 500.0).tolist() == [0.0, 0.0, 0.0]
    assert np.isnan(force_with_give([np.nan], [0.02], 500.0)).all()
    assert in_series_n_per_m() == math.inf
    assert in_series_n_per_m(math.inf, 900.0) == approx(900.0)
    assert give_findings(3.9, math.inf, 0.024, math.inf) == ()


def test_lost_throw_by_hand():
    """3.9 N on 0.5 N/mm: 7.8 of 24 mm, 32.5 %; the finding says so."""
    assert lost_share(3.9, 500.0, 0.024) * 24 == approx(7.8, abs=0.05)
    lost, swings = give_findings(3.9, 500.0, 0.024, ringing_hz(500.0, 0.8))
    assert "flexes 7.8 mm of 24 mm: 32% of the travel is lost" in said(lost.text)
    assert (lost.level, lost.about, swings.about) == ("query", "give", "swinging")


def test_light_sticks_on_stiff_arms_need_no_word():
    """0.52 N over 6.5 mm on 0.9 N/mm: 0.58 mm, 8.9 %, and 80 g swing at 17 Hz: nothing to say."""
    assert lost_share(0.52, 900.0, 0.0065) == approx(0.089, abs=0.0005)
    assert ringing_hz(900.0, 0.08) == approx(16.9, abs=0.05)
    assert give_findings(0.52, 900.0, 0.0065, ringing_hz(900.0, 0.08)) == ()


def test_swinging_where_six_hertz_lies():
    """k = m (2 pi 6)^2: 0.5 kg on 711 N/m is at 6 Hz; a little softer is told, a little stiffer is not. Mass not known: no
    frequency, and no finding made up."""
    limit = 0.5 * (2 * math.pi * 6.0) ** 2
    assert limit == approx(711, abs=0.5)
    assert [finding.about for finding in give_findings(0.1, limit * 0.999, 0.02, ringing_hz(limit * 0.999, 0.5))] == [
        "swinging"
    ]
    assert give_findings(0.1, limit * 1.001, 0.02, ringing_hz(limit * 1.001, 0.5)) == ()
    assert math.isnan(ringing_hz(900.0, None))
    assert math.isnan(ringing_hz(900.0, 0.0))
    assert give_findings(0.1, 900.0, 0.02, ringing_hz(900.0, None)) == ()


@given(force=st.floats(0.1, 100.0), length=st.floats(0.05, 1.0))
def test_droop_and_slope_agree_with_the_tube(force, length):
    """Law: a tube's own stiffness, used as a measured one, gives the tube's own droop and slope."""
    tube = cantilever(force, length, 0.019, 0.016, 69e9)
    sunk = droop_m(force / 9.80665, tube.stiffness_n_per_m)
    assert sunk == approx(tube.droop_m, rel=1e-12)
    assert droop_rad(sunk, length) == approx(tube.droop_rad, rel=1e-12)


def test_impossible_figures_are_told():
    """No stiffness, no travel, no length, no wall: one sentence each."""
    with pytest.raises(BadInput, match=r"flex: found 0\sN/m, expected a stiffness above 0\sN/m\. Hang a kilogram"):
        lost_share(1.0, 0.0, 0.02)
    with pytest.raises(BadInput, match="flex: found no number"):
        force_with_give(1.0, 0.02, math.nan)
    with pytest.raises(BadInput, match=r"travel: found 0\smm, expected more than 0\smm"):
        lost_share(1.0, 500.0, 0.0)
    with pytest.raises(BadInput, match=r"arm: found 0\smm, expected more than 0\smm"):
        droop_rad(0.001, 0.0)
    with pytest.raises(
        BadInput, match=r"tube: found 16\smm outside, 19\smm inside, 400\smm long, expected a tube with a wall"
    ):
        cantilever(1.0, 0.4, 0.016, 0.019, 69e9)
