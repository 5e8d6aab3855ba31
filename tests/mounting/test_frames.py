"""What tilts with the seat, and how far it leaves what does not."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from stickwright.codes.message import message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.room import Room
from stickwright.mounting.frames import pivot_of, relative_shift_m, tilt_steps_rad, tilted, tilts_with_seat, turned

COORDINATE = st.floats(-2.0, 2.0)
POINT = st.tuples(COORDINATE, COORDINATE, COORDINATE)
ANGLE = st.floats(-1.5, 1.5)


def test_a_floor_stand_is_wrong_by_390_mm() -> None:
    """Worked by hand, 2 x 900 mm x sin 12.5 degrees: a chin 900 mm from the pivot is 390 mm off after 25 degrees of tilt."""
    assert relative_shift_m((0.1, 0.54, 0.72), (0.0, 0.0, 0.0), math.radians(25)) == pytest.approx(0.390, abs=0.0005)


def test_tilting_back_lifts_what_is_in_front_and_sends_back_what_is_above() -> None:
    """A quarter turn back about the pivot: a foot 400 mm in front ends 400 mm above it, a head 600 mm above ends 600 mm behind."""
    pivot = (0.0, 0.1, -0.1)
    found = tilted(np.array([[0.2, 0.5, -0.1], [0.2, 0.1, 0.5]]), math.pi / 2, pivot)
    assert found == pytest.approx(np.array([[0.2, 0.1, 0.3], [0.2, -0.5, -0.1]]), abs=1e-12)


@given(point=POINT, pivot=POINT, tilt=ANGLE)
def test_tilt_is_a_rotation_about_the_players_right(
    point: tuple[float, ...], pivot: tuple[float, ...], tilt: float
) -> None:
    """The same as a general rotation library's turn about the x axis."""
    told = Rotation.from_rotvec([tilt, 0, 0]).apply(np.subtract(point, pivot)) + pivot
    assert tilted(point, tilt, pivot) == pytest.approx(told, abs=1e-12)


@given(point=POINT, pivot=POINT, low=ANGLE, high=ANGLE)
def test_shift_is_the_distance_between_the_two_ends(
    point: tuple[float, ...], pivot: tuple[float, ...], low: float, high: float
) -> None:
    """Law: the shift is the distance between where the point is at the least and at the most tilt."""
    apart = np.linalg.norm(tilted(point, high, pivot) - tilted(point, low, pivot))
    assert relative_shift_m(point, pivot, high - low) == pytest.approx(apart, abs=1e-9)


@given(turn=st.floats(-3.1, 3.1), tilt=ANGLE)
def test_a_base_is_tilted_and_then_turned(turn: float, tilt: float) -> None:
    """The same as a general rotation library's two turns, the tilt about the base's own right first."""
    assert turned(turn, tilt) == pytest.approx(Rotation.from_euler("xz", [tilt, turn]).as_matrix(), abs=1e-12)


def test_a_base_tilted_towards_the_player_leans_its_top_back() -> None:
    """Tilted by 30 degrees towards the player: the lever's axis leans back by sin 30 degrees."""
    assert turned(0.0, math.radians(30))[:, 2] == pytest.approx([0.0, -0.5, math.sqrt(3) / 2], abs=1e-12)


def test_an_unmeasured_pivot_is_marked() -> None:
    """A chair that tilts about an unmeasured pivot gets the seat reference point, with what to measure; a fixed one nothing."""
    assert pivot_of(Room()) == ((0.0, 0.0, 0.0), None)
    assert pivot_of(Room(tilt_to_deg=20, tilt_pivot_mm=[0, 200, -100])) == ((0.0, 0.2, -0.1), None)
    at, assumed = pivot_of(Room(tilt_to_deg=20))
    assert at == (0.0, 0.0, 0.0)
    assert assumed == message(MountAssumed.pivot)


def test_tilts_are_looked_at_from_end_to_end() -> None:
    """Both ends are among the tilts, at most a step apart; a chair that stays has one."""
    steps = tilt_steps_rad(Room(tilt_from_deg=10, tilt_to_deg=25), math.radians(4))
    assert (steps[0], steps[-1]) == pytest.approx((math.radians(10), math.radians(25)), abs=1e-12)
    assert np.diff(steps).max() <= math.radians(4) + 1e-12
    assert tilt_steps_rad(Room(tilt_from_deg=5, tilt_to_deg=5)) == pytest.approx([math.radians(5)], abs=1e-12)


def test_only_the_seat_tilts() -> None:
    """The undercarriage and the room stay."""
    assert [tilts_with_seat(one) for one in ("seat", "base", "room")] == [True, False, False]
