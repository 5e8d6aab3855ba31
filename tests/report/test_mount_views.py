"""Views, outlines, hatching, and where a distance starts and ends."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.strategies import floats, lists, tuples
from sample_mounts import FINGER, finger_mount, fist_mount, mounted_plan, room
from scipy.spatial import ConvexHull

from stickwright.model.mounting import Dimension, Pose
from stickwright.report.mount_balloons import crosses, leaders, slots
from stickwright.report.mount_shapes import (
    DrawnBody,
    base_of,
    dimension_ends,
    end_of,
    forward_of,
    mount_shapes,
    room_shapes,
    tilted_shapes,
)
from stickwright.report.mount_solids import ABOVE, hides, pieces_of, runs
from stickwright.report.mount_views import clipped_polygon, dimension_lines, hatch, hull

spots = lists(tuples(st.integers(-20, 20), st.integers(-20, 20)), min_size=3, max_size=14)


def area(outline: list[tuple[float, float]]) -> float:
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(outline, [*outline[1:], outline[0]], strict=True))) / 2


@given(spots)
def test_outline_is_that_of_another_program(points: list[tuple[float, float]]) -> None:
    """The outline of a body covers the same area as scipy's convex hull (Qhull) of its corners."""
    outline = hull(points)
    flat_body = np.linalg.matrix_rank(np.asarray(points, float) - np.asarray(points[0], float)) < 2
    if flat_body:
        assert len(outline) < 3 or area(outline) == pytest.approx(0.0, abs=1e-9)
    else:
        assert area(outline) == pytest.approx(ConvexHull(np.asarray(points, float)).volume, rel=1e-9)


@given(floats(-3, 3), floats(-3, 3), floats(0.5, 4), floats(0.5, 4))
def test_a_box_is_cut_off_at_the_window(left: float, low: float, wide: float, high: float) -> None:
    """What of a box lies in the window has the area of the two spans that overlap."""
    box = [(left, low), (left + wide, low), (left + wide, low + high), (left, low + high)]
    inside = clipped_polygon(box, (-1.0, -1.0), (1.0, 1.0))
    across = max(0.0, min(left + wide, 1.0) - max(left, -1.0))
    up = max(0.0, min(low + high, 1.0) - max(low, -1.0))
    assert (area(inside) if len(inside) > 2 else 0.0) == pytest.approx(across * up, abs=1e-9)


def test_hatching_fills_the_outline() -> None:
    """Law: the lengths of parallel lines times their distance apart add up to the area that they fill."""
    outline = [(0.3, 0.0), (4.1, 1.0), (3.0, 5.2), (0.0, 3.0)]
    apart = 0.01
    total = sum(math.dist(*line) for line in hatch(outline, apart)) * apart / math.sqrt(2)
    assert total == pytest.approx(area(outline), rel=0.01)


@given(floats(-3.1, 3.1), floats(-1.2, 1.2))
def test_a_turned_base_stays_square(turn_rad: float, tilt_rad: float) -> None:
    """Right, forward and up stay at right angles and of length 1; turned anticlockwise, forward goes left; sloping to
    the player, the far edge is higher."""
    pose = replace(
        finger_mount().pose or Pose(FINGER, (0, 0, 0), (0, 0, 0), 0, 0, 0, 0), turn_rad=turn_rad, tilt_rad=tilt_rad
    )
    axes = np.array(forward_of(pose))
    assert axes @ axes.T == pytest.approx(np.eye(3), abs=1e-12)
    assert np.linalg.det(axes) == pytest.approx(1.0, abs=1e-12)
    assert np.sign(axes[1][2]) == np.sign(tilt_rad) or abs(tilt_rad) < 1e-9
    assert axes[1][0] * math.sin(turn_rad) <= 1e-12


def test_distances_start_at_their_landmark() -> None:
    """205 mm back of the front end of the armrest (0.42 m forward) is 0.215 m forward: where the clamp is."""
    back, left, _, up = (dimension_ends(finger_mount(), room(), one) for one in finger_mount().choice.dimensions)  # type: ignore[union-attr]
    assert back is not None
    assert left is not None
    assert up is not None
    assert back[0] == (0.27, 0.42, 0.22)
    assert back[1] == pytest.approx((0.27, 0.215, 0.18), abs=1e-12)
    assert left[1][0] == pytest.approx(0.215, abs=1e-12)
    assert up[1][2] == pytest.approx(0.232, abs=1e-12)


def test_each_view_shows_what_it_can() -> None:
    """Heights are measured in the side view, the rest from above."""
    assert [(line.to, line.upright) for line in dimension_lines(finger_mount(), room(), "above")] == [
        ("clamp", True), ("base", False), ("base", True),
    ]  # fmt: skip
    assert [line.distance_m for line in dimension_lines(finger_mount(), room(), "right")] == [0.012]


def test_a_distance_starts_at_a_landmark() -> None:
    """By the whole name that the room's file gives it; nothing is drawn from a thing that is not there."""
    where = room()
    ends = {
        name: dimension_ends(finger_mount(), where, Dimension(name, "clamp", "up", 0.1))
        for name in ("near left corner of the tray", "tray", "moon")
    }
    assert ends["near left corner of the tray"][0] == (-0.30, 0.18, 0.24)  # type: ignore[index]
    assert ends["tray"] is None
    assert ends["moon"] is None
    assert end_of((0, 0, 0.5), (0, 0.1, 0)) == "upper"
    assert end_of((0.27, 0.05, 0.18), (0.27, 0.40, 0.18)) == "back"


def test_base_is_that_of_the_stick_that_stands_there() -> None:
    """Sizes of the base come from the stick as chosen; what nobody measured is drawn as not sure."""
    plan = mounted_plan()
    assert base_of(plan, plan.mounts[1]) == (0.150, 0.110, 0.060)
    assert base_of(plan, plan.mounts[2]) is None
    (stick,) = (one for one in mount_shapes(plan.mounts[2], room()) if one.layer == "STICK" and one.form == "solid")
    assert not stick.sure
    (stick,) = (
        one
        for one in mount_shapes(fist_mount(), room(), (0.15, 0.11, 0.06))
        if one.form == "solid" and one.layer == "STICK"
    )
    spans = [max(p[axis] for p in stick.points) - min(p[axis] for p in stick.points) for axis in range(3)]
    assert spans == pytest.approx([0.11, 0.15, 0.06], abs=1e-12)


@pytest.mark.parametrize("posture", ["wheelchair", "bed", "floor", None])
def test_the_sign_of_the_player_follows_the_posture(posture: str | None) -> None:
    """Legs are straight in bed and on the floor; the head is above the chin that was taken."""
    body = [one for one in room_shapes(room().model_copy(update={"posture": posture})) if one.layer == "BODY"]
    lowest = min(point[2] for one in body for point in one.points)
    assert (lowest > 0) == (posture in ("bed", "floor"))
    assert max(point[2] for one in body for point in one.points) > 0.58


@given(lists(tuples(floats(0, 60), floats(0, 40)), min_size=1, max_size=14, unique=True))
def test_balloons_never_cover_each_other_and_no_leaders_cross(anchors: list[tuple[float, float]]) -> None:
    """Any parts in a view of 60 by 40 mm: each number has its own place outside, balloons lie apart, no two leaders cross."""
    told = leaders(
        {number: [spot] for number, spot in enumerate(anchors)}, slots((0.0, 0.0), (60.0, 40.0), len(anchors)), {}
    )
    assert [one.number for one in told] == list(range(len(anchors)))
    for one in told:
        assert one.slot[0] >= 60.0 + 9.0 or one.slot[1] <= -9.0
    for place, a in enumerate(told):
        for b in told[place + 1 :]:
            assert math.dist(a.slot, b.slot) > 6.0
            assert not crosses(a.slot, a.anchor, b.slot, b.anchor)


@given(floats(-0.2, 0.2), floats(-0.2, 0.2), floats(0.02, 0.3))
def test_what_lies_behind_a_box_is_hidden(x: float, y: float, below: float) -> None:
    """A point below a box of 100 by 100 by 20 mm is hidden from above where, and only where, the box is over it; above it never."""
    box = DrawnBody(
        "STICK", "", "solid", tuple((a, b, c) for a in (-0.05, 0.05) for b in (-0.05, 0.05) for c in (0.0, 0.02))
    )
    (piece,) = pieces_of([box])
    if min(abs(abs(x) - 0.05), abs(abs(y) - 0.05)) > 0.001:
        behind, inside = hides(piece, np.array([[x, y, -below], [x, y, 0.03], [0.0, 0.0, 0.01]]), ABOVE)
        assert behind[0] == (abs(x) < 0.05 and abs(y) < 0.05)
        assert not behind[1]
        assert list(inside) == [False, False, True]


def test_a_long_leaning_bar_is_hidden_only_where_it_is_behind() -> None:
    """A bar that rises from below a plate on its left to above it on its right: seen from above it is hidden over exactly the stretch
    that is both under the plate and lower than it, 40 mm of the plate's left half; the mean height of neither tells that."""
    plate = DrawnBody(
        "MOUNT", "", "solid", tuple((a, b, c) for a in (-0.04, 0.04) for b in (-0.1, 0.1) for c in (-0.001, 0.001))
    )
    bar = DrawnBody("MOUNT", "bar", "bar", ((-0.1, 0.0, -0.1), (0.1, 0.0, 0.1)), 0.01)
    hidden = [run for run in runs(pieces_of([plate, bar]), ABOVE, 0.0002) if run.kind == "hidden" and run.body == bar]
    spans = [run.spots[:, 0] for run in hidden]
    assert min(float(span.min()) for span in spans) == pytest.approx(-0.04, abs=0.0005)
    assert max(float(span.max()) for span in spans) == pytest.approx(
        0.0, abs=0.0075
    )  # its lower side enters the plate half a width later


def test_seat_and_what_moves_with_it_at_the_other_tilt() -> None:
    """Tilted back by 25 degrees about a pivot 100 mm in front and 100 mm below, every corner turns about it by the rotation written out
    here; any box keeps its size, what moves with the room stays out, and a seat used level only adds nothing."""
    leaning = tilted_shapes(room())
    assert {one.name for one in leaning} == {
        "seat", "back of the seat", "keep free: chair control", "keep free: face",
    }  # fmt: skip
    assert {one.tilt_rad for one in leaning} == {math.radians(25)}
    for one in leaning:
        level = next(flat for flat in room_shapes(room()) if flat.name == one.name)
        assert math.dist(one.points[0], one.points[-1]) == pytest.approx(math.dist(level.points[0], level.points[-1]))
        for before, after in zip(level.points, one.points, strict=True):
            y, z = before[1] - 0.1, before[2] + 0.1
            cos, sin = math.cos(math.radians(25)), math.sin(math.radians(25))
            assert after == pytest.approx((before[0], 0.1 + y * cos - z * sin, -0.1 + y * sin + z * cos))
    assert tilted_shapes(room().model_copy(update={"tilt_from_rad": 0.0, "tilt_to_rad": 0.0})) == ()
