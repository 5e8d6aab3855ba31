"""Joints of an arm: worst moments, factors, and when it should let go."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from said import said
from stickwright.codes.message import message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.errors import BadInput
from stickwright.mounting.statics import (
    Pushes,
    arm_weights,
    joint_checks,
    joint_moment_nm,
    release_check,
    release_window,
    weight_moment_nm,
)
from stickwright.units import STANDARD_GRAVITY

approx = pytest.approx

MARIT = [((0.17, 0.0, 0.0), 1.8 / 0.17 / STANDARD_GRAVITY)]
"""A weight whose moment about the clamp is 1.8 N m."""
CHIN_M = (0.34, 0.0, 0.0)

places = st.tuples(*[st.floats(-0.6, 0.6)] * 3)
masses = st.lists(st.tuples(places, st.floats(0.001, 3.0)), min_size=1, max_size=4)
forces = st.floats(0.001, 100.0)


@settings(max_examples=25)
@given(joint=places, end=places, push=forces, weights=masses, tilt=st.floats(0.0, 0.8), seed=st.integers(0, 999))
def test_no_push_direction_is_worse_than_the_worst(joint, end, push, weights, tilt, seed):
    """Against 20 000 directions tried one by one: none gives a larger moment, and the worst of them is near it."""
    rng = np.random.default_rng(seed)
    direction = rng.normal(size=(20_000, 3))
    direction /= np.linalg.norm(direction, axis=1, keepdims=True)
    down = np.array([0.0, -math.sin(tilt), -math.cos(tilt)]) * STANDARD_GRAVITY
    weight = sum(np.cross(np.subtract(point, joint), mass * down) for point, mass in weights)
    arm = np.subtract(end, joint)
    tried = np.linalg.norm(weight + np.cross(arm, push * direction), axis=1).max()
    worst = joint_moment_nm(joint, end, push, weights, tilt)
    assert tried <= worst + 1e-9
    assert worst <= tried + 0.02 * np.linalg.norm(arm) * push + 1e-9


def test_a_push_in_the_line_of_the_weights_moment_adds_squarely():
    """r along x, a weight 0.2 m beside it along y: moments 2 N m about x (along r) and 3 x 0.5 across: hypot(2, 1.5)."""
    weight = [((0.0, 0.2, 0.0), 10.0 / STANDARD_GRAVITY)]
    assert joint_moment_nm((0, 0, 0), (0.5, 0, 0), 3.0, weight) == approx(math.hypot(2.0, 1.5), rel=1e-12)


@given(joint=places, end=places, push=forces, weights=masses, shift=places)
def test_moving_everything_together_changes_nothing(joint, end, push, weights, shift):
    """A moment does not depend on where the origin of the room is."""

    def moved(point):
        return tuple(np.add(point, shift))

    there = joint_moment_nm(moved(joint), moved(end), push, [(moved(point), mass) for point, mass in weights])
    assert there == approx(joint_moment_nm(joint, end, push, weights), abs=1e-9)


@given(end=places, push=forces, more=forces, weights=masses)
def test_a_heavier_push_never_raises_a_factor(end, push, more, weights):
    """Whatever the arm: push harder, and every joint's factor falls or stays."""
    light = joint_checks([(0, 0, 0)], [5.0], Pushes(push), weights, contact_m=end)
    heavy = joint_checks([(0, 0, 0)], [5.0], Pushes(push + more), weights, contact_m=end)
    assert all(b.times <= a.times * (1 + 1e-9) for a, b in zip(light, heavy, strict=True))


def test_a_tilted_seat_turns_the_weight():
    """An arm straight up from its clamp carries no moment; tilted back by 90 degrees all of it, about the player's
    right-to-left axis: what was up is now back, and its weight turns it further back."""
    upright = [((0.0, 0.0, 0.3), 2.0)]
    assert np.linalg.norm(weight_moment_nm((0, 0, 0), upright)) == approx(0.0, abs=1e-12)
    tipped = weight_moment_nm((0, 0, 0), upright, math.pi / 2)
    assert tipped == approx([0.3 * 2.0 * STANDARD_GRAVITY, 0.0, 0.0], abs=1e-9)
    checks = joint_checks([(0, 0, 0)], [10.0], Pushes(0.0), upright, tilts_rad=(0.0, math.pi / 2))
    assert checks[0].load == approx(0.6 * STANDARD_GRAVITY, rel=1e-9)


class TestChinOnTheLongArm:
    """Weight 1.8 N m, strongest push 2.4 N at 340 mm, arm holds 7 N m, cough 25 N (worked by hand)."""

    def test_the_push_in_play_is_held(self):
        """1.8 + 1.5 x 2.4 x 0.34 = 3.0 N m against 7: factor 2.3."""
        (working, _) = joint_checks([(0, 0, 0)], [7.0], Pushes(2.4, 25.0), MARIT, contact_m=CHIN_M)
        assert working.load == approx(3.0, abs=0.05)
        assert working.factor == approx(2.3, abs=0.05)
        assert working.holds
        assert said(working.words).startswith(
            "Joint 1: 3.0 N m from a push of 3.6 N and the weight; it holds 7.0 N m: safety factor 2.3, 2.0 required"
        )

    def test_the_cough_is_not_unless_it_lets_go(self):
        """1.8 + 25 x 0.34 = 10.3 N m exceeds 7; with a release on purpose that is as it should be."""
        (_, cough) = joint_checks([(0, 0, 0)], [7.0], Pushes(2.4, 25.0), MARIT, contact_m=CHIN_M)
        assert (cough.push, cough.wanted, cough.holds) == ("involuntary", 1.3, False)
        assert cough.load == approx(10.3, abs=0.05)
        assert "safety factor 0.68, but 1.3 is required" in said(cough.words)
        (_, cough) = joint_checks([(0, 0, 0)], [7.0], Pushes(2.4, 25.0), MARIT, contact_m=CHIN_M, lets_go=True)
        assert cough.holds
        assert cough.factor == approx(0.68, abs=0.005)
        assert "lets go on purpose" in said(cough.words)

    def test_the_release_window(self):
        """1.5 x (1.8 + 0.8) = 3.9 to 1.8 + 12 x 0.34 = 5.9 N m for a clinic's limit of 12 N."""
        window = release_window(1.8, 2.4, 0.34, 12.0)
        assert window.low_nm == approx(3.9, abs=0.05)
        assert window.high_nm == approx(5.9, abs=0.05)
        assert not window.empty
        assert said(window.words).startswith(
            "Set the release between 3.9 N m and 5.9 N m (the clinic's limit is 12 N)."
        )

    def test_a_push_against_the_weight_takes_more(self):
        """Lifting 1.8 N m as well: (3.92 + 1.8) / 0.34 = 16.8 N at the lowest setting, above the 12 N agreed; the words say so."""
        window = release_window(1.8, 2.4, 0.34, 12.0)
        along, against = window.force_n(window.low_nm)
        assert (along, against) == approx((6.25, 16.84), abs=0.005)
        assert window.any_way_high_nm == approx(12 * 0.34 - 1.8, abs=1e-12)
        assert "A push against the weight needs 17 N even at the lowest setting." in said(window.words)

    def test_a_low_limit_leaves_no_window(self):
        """6 N at 340 mm makes 2.04 + 1.8 = 3.84 N m, less than the 3.92 it must carry."""
        window = release_window(1.8, 2.4, 0.34, 6.0)
        assert window.empty
        assert "No release setting is possible" in said(window.words)
        assert not release_check(window).holds
        assert not release_window(1.8, 2.4, 0.34, 6.5).empty

    def test_what_the_coupling_can_be_set_to(self):
        """A coupling that lets go at 5 to 20 N at the contact: 1.7 to 6.8 N m here, so the window stays; one of 20 N up,
        or one of 10 N at most, does not do."""
        window = release_window(1.8, 2.4, 0.34, 12.0)
        ours = release_check(window, (5.0, 20.0))
        assert ours.holds
        assert (ours.load, ours.limit) == approx((3.924, 5.88), abs=0.0005)
        assert "lets go at 20 N at the lowest setting, more than the 17 N" in said(
            release_check(window, (20.0, 40.0)).words
        )
        assert not release_check(window, (20.0, 40.0)).holds
        assert "lets go at 10 N at most, but must carry 12 N" in said(release_check(window, (5.0, 10.0)).words)

    def test_without_the_clinics_word(self):
        """The lower end stands; the upper one has to be asked for, and the check says that it was not."""
        window = release_window(1.8, 2.4, 0.34, None)
        assert window.low_nm == approx(3.924, abs=0.0005)
        assert "Ask the clinic" in said(window.words)
        assert release_check(window).assumed == message(MountAssumed.release_limit)


def test_each_joint_carries_what_lies_beyond_it():
    """Level arm of two links of 0.2 m, 1 kg in all, stick of 0.5 kg at the end: about the elbow 0.5 kg at 0.1 m and 0.5 kg at
    0.2 m; about the clamp 0.5 at 0.1, 0.5 at 0.3, 0.5 at 0.4 m."""
    points = [(0, 0, 0), (0.2, 0, 0), (0.4, 0, 0)]
    weights = arm_weights(points, 1.0, points[-1], 0.5)
    assert [mass for _, mass in weights] == approx([0.5, 0.5, 0.5])
    clamp, elbow, plate = (c.load for c in joint_checks(points, [9.0], Pushes(0.0), weights))
    assert clamp == approx(STANDARD_GRAVITY * 0.5 * (0.1 + 0.3 + 0.4), rel=1e-9)
    assert elbow == approx(STANDARD_GRAVITY * 0.5 * (0.1 + 0.2), rel=1e-9)
    assert plate == approx(0.0, abs=1e-12)


def test_a_missing_figure_is_said():
    """No holding figure: light pushes pass, heavier ones do not; two figures for three joints: the weakest stands in, marked."""
    points = [(0, 0, 0), (0.2, 0, 0), (0.4, 0, 0)]
    light = joint_checks(points, (), Pushes(1.0), ())
    assert all(check.holds and check.factor is None for check in light)
    heavy = joint_checks(points, (), Pushes(4.0), ())
    assert not any(check.holds for check in heavy)
    assert "not known: read the mount's manual" in said(heavy[0].words)
    two = joint_checks(points, (7.0, 4.0), Pushes(1.0), ())
    assert [check.limit for check in two] == [7.0, 4.0, 4.0]
    assert two[0].assumed is None
    assert two[2].assumed == message(MountAssumed.weakest_joint, held_nm=4.0)


def test_too_many_figures_and_no_reach_are_told():
    """Four holding figures for two joints, or a contact on the joint itself, are mistakes of the reader's."""
    with pytest.raises(BadInput, match="mount, holding_nm: found 4 figures, expected one, or one for each of 2 joints"):
        joint_checks([(0, 0, 0), (0.1, 0, 0)], [1, 2, 3, 4], Pushes(1.0), ())
    with pytest.raises(BadInput, match=r"release: found 0\smm from joint to contact point, expected more than 0\smm"):
        release_window(1.0, 1.0, 0.0, None)
