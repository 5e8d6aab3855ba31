"""The way of a cable along what holds the device, and on to the hub."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sample_mounts import finger_mount, fist_mount

from stickwright.model.room import Room, Surface
from stickwright.mounting.cable_way import along_axes_m, held_ways

points = st.tuples(*[st.floats(-2.0, 2.0)] * 3)


@given(start=points, end=points)
def test_along_the_axes_is_never_shorter_than_straight(start, end):
    """Law: nothing is shorter than the straight line, and along three axes it is at most root 3 as long."""
    straight = math.dist(start, end)
    assert straight - 1e-9 <= along_axes_m(start, end) <= math.sqrt(3) * straight + 1e-9


def test_from_the_clamp_of_an_arm():
    """The clamp is where the cable is tied first: from there to the hub right, forward and up."""
    mount = finger_mount()
    x, y, z = mount.choice.arm.points_m[0]
    way = held_ways([mount], Room(hub_at_m=(x + 0.2, y - 0.3, z - 0.4)))[0]
    assert way.along_m == mount.choice.cable_m
    assert way.to_hub_m == pytest.approx(0.9, abs=1e-9)


def test_without_the_place_of_the_hub_nothing_is_reckoned():
    """No hub in the room, no way made up; a base on a tray adds nothing of its own."""
    mount = fist_mount()
    (way,) = held_ways([mount], Room())
    assert (way.along_m, way.to_hub_m) == (0.0, None)


def test_down_a_floor_stand():
    """A stand with the base 300 mm above the floor: 0.3 m along it, and on from its foot."""
    mount = fist_mount()
    floor = Surface(name="floor", kind="floor", corner_m=(-1.0, -1.0, mount.pose.base_m[2] - 0.3), size_m=(2.0, 2.0))
    choice = replace(mount.choice, kind="floor stand", on="floor", mount="stand")
    x, y, z = mount.pose.base_m
    (way,) = held_ways([replace(mount, choice=choice)], Room(surface=(floor,), hub_at_m=(x + 0.5, y, z - 0.3)))
    assert way.along_m == pytest.approx(0.3, abs=1e-9)
    assert way.to_hub_m == pytest.approx(0.5, abs=1e-9)


def test_what_nothing_holds_has_no_way():
    """Without a mount that holds there is no foot to measure from."""
    assert held_ways([replace(finger_mount(), choice=None)], Room()) == ()
