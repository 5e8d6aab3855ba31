"""How far links stay from boxes, at one tilt and over all of them."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from stickwright.model.room import Room
from stickwright.mounting.clearance import boxes_seen_from, clearances_m, segment_box_m
from stickwright.mounting.frames import tilted

COORDINATE = st.floats(-1.0, 1.0)
POINT = st.tuples(COORDINATE, COORDINATE, COORDINATE)
UNIT = (np.zeros((1, 3)), np.ones((1, 3)))


@pytest.mark.parametrize(
    ("start", "end", "distance_m"),
    [
        ((-1, 0.5, 0.5), (2, 0.5, 0.5), 0.0),
        ((-1, 0.5, 1.25), (2, 0.5, 1.25), 0.25),
        ((0.5, 0.5, 4.0), (0.5, 0.5, 3.0), 2.0),
        ((4.0, 5.0, 0.5), (4.0, 5.0, 0.5), 5.0),
        ((2.0, 0.0, 2.0), (2.0, 3.0, 2.0), math.sqrt(2)),
        ((1.0, 3.0, 0.5), (3.0, 1.0, 0.5), math.sqrt(2)),
    ],
)
def test_by_hand(start: tuple, end: tuple, distance_m: float) -> None:
    """By hand, a box of 1 m: through it, over a face, ending above it, a point at a corner (3-4-5), beside an edge, across one."""
    found = segment_box_m(np.array([start], dtype=float), np.array([end], dtype=float), *UNIT)
    assert found[0, 0] == pytest.approx(distance_m, abs=1e-12)


@given(start=POINT, end=POINT, low=POINT, size=st.tuples(*[st.floats(0.0, 0.8)] * 3))
def test_the_same_as_walking_along(start: tuple, end: tuple, low: tuple, size: tuple) -> None:
    """Law: walking along the segment finds nothing nearer, and comes within half a step of what was said."""
    one, other, corner = np.array(start), np.array(end), np.array(low)
    far = corner + size
    found = segment_box_m(one[None], other[None], corner[None], far[None])[0, 0]
    walked = one + np.linspace(0, 1, 2001)[:, None] * (other - one)
    least = np.linalg.norm(walked - np.clip(walked, corner, far), axis=1).min()
    assert found <= least + 1e-9
    assert found >= least - np.linalg.norm(other - one) / 4000 - 1e-9


ROOM = Room.model_validate(
    {
        "tilt_from_deg": 5, "tilt_to_deg": 25, "tilt_pivot_mm": [0, 200, -100],
        "keep_out": [
            {"name": "face", "kind": "face", "low_mm": [-100, 50, 500], "high_mm": [100, 250, 800]},
            {"name": "screen", "kind": "screen", "low_mm": [-300, 700, 200], "high_mm": [300, 750, 700], "moves_with": "room"},
        ],
    }
)  # fmt: skip


@given(
    start=st.tuples(COORDINATE, st.floats(0.3, 0.9), st.floats(0.0, 0.8)),
    end=st.tuples(COORDINATE, st.floats(0.3, 0.9), st.floats(0.0, 0.8)),
)
def test_nothing_comes_nearer_between_two_tilts(start: tuple, end: tuple) -> None:
    """Law: at any tilt in play, a rod of the seat is never nearer to a screen of the room than was said, and what was said
    is at most half a degree's way less."""
    one, other = np.array([start]), np.array([end])
    found, names = clearances_m(one, other, boxes_seen_from(ROOM, True))
    place = names.index("screen")
    box = ROOM.keep_out[1]
    least = min(
        segment_box_m(
            tilted(one, tilt, ROOM.tilt_pivot_m), tilted(other, tilt, ROOM.tilt_pivot_m), np.array([box.low_m]), np.array([box.high_m])
        )[0, 0]
        for tilt in np.radians(np.linspace(5, 25, 173))
    )  # fmt: skip
    assert found[0, place] <= least + 1e-9
    radius = max(math.hypot(p[1] - 0.2, p[2] + 0.1) for p in (start, end))
    assert found[0, place] >= least - math.radians(1.0) * radius - 1e-9


def test_what_moves_alike_is_seen_once() -> None:
    """From the seat the face holds still and the screen passes; from the room it is the other way round."""
    seen = {group.names: len(group.tilts_rad) for group in boxes_seen_from(ROOM, True)}
    assert seen == {("face",): 1, ("screen",): 21}
    seen = {group.names: len(group.tilts_rad) for group in boxes_seen_from(ROOM, False)}
    assert seen == {("screen",): 1, ("face",): 21}
    assert [group.names for group in boxes_seen_from(Room(), True)] == []


@example(points=[((0.0, 0.0, 0.0), (2.2e-313, 0.0, 0.0))], enough=0.1)
@given(points=st.lists(st.tuples(POINT, POINT), min_size=1, max_size=6), enough=st.floats(0.0, 0.5))
def test_capping_changes_nothing_below_the_cap(points: list, enough: float) -> None:
    """Law: with a cap, distances are the exact ones up to it."""
    start, end = (np.array([pair[k] for pair in points]) for k in (0, 1))
    boxes = boxes_seen_from(ROOM, True)
    exact, _ = clearances_m(start, end, boxes)
    capped, _ = clearances_m(start, end, boxes, enough)
    assert capped == pytest.approx(np.minimum(exact, enough), abs=1e-8)
