"""An arm passes through no tray, table, floor, tube or other part: checked plainly, point by point, apart from the search."""

from __future__ import annotations

import itertools
import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from said import said
from stickwright.model.kit import Mount
from stickwright.model.mounting import ArmPose, Pose
from stickwright.model.room import Room
from stickwright.mounting.bodies import bodies_of, segments_apart_m, unmeasured_boards
from stickwright.mounting.search import arm_reaches

HALF_ARM_M, CLAMP_M, BOARD_M = 0.010, 0.050, 0.020
LONG = Mount.model_validate(
    {"name": "long arm", "kind": "friction arm", "links_mm": [220, 200], "tube_mm": [16, 40], "edge_mm": [10, 30]}
)
NECK = Mount.model_validate(
    {
        "name": "neck",
        "kind": "gooseneck",
        "links_mm": [500],
        "tube_mm": [16, 40],
        "edge_mm": [10, 30],
        "least_bend_mm": 50,
    }
)
TUBES = (
    {"name": "armrest", "from_mm": [260, 50, 200], "to_mm": [260, 400, 200], "diameter_mm": 25},
    {"name": "post", "from_mm": [260, 400, 200], "to_mm": [260, 430, -250], "diameter_mm": 30},
    {
        "name": "cross bar",
        "from_mm": [-260, 300, -60],
        "to_mm": [260, 300, -60],
        "diameter_mm": 22,
        "moves_with": "base",
    },
)
TRAY = {"name": "tray", "kind": "tray", "corner_mm": [-200, 200, 250], "size_mm": [400, 300], "moves_with": "seat"}
DESK = {"name": "desk", "kind": "table", "corner_mm": [-600, 560, 230], "size_mm": [1200, 600]}
FLOOR = {"name": "floor", "kind": "floor", "corner_mm": [-900, -900, -300], "size_mm": [100, 100]}
EDGE = {
    "name": "edge of the tray",
    "from_mm": [-200, 500, 250],
    "to_mm": [200, 500, 250],
    "thickness_mm": 20,
    "moves_with": "seat",
}
OTHER = {"site": "thumb", "at_mm": [150, 380, 320]}
PIVOT = (0.0, 0.1, -0.1)


def room_of(**more: Any) -> Room:
    whole = {
        "tube": TUBES,
        "surface": [TRAY, DESK, FLOOR],
        "edge": [EDGE],
        "place": [OTHER],
        "tilt_pivot_mm": [1000 * at for at in PIVOT],
    }
    return Room.model_validate({**whole, **more})


def pose_at(base_m: tuple[float, float, float]) -> Pose:
    return Pose("hand", (base_m[0], base_m[1], base_m[2] + 0.05), base_m, 0.0, 0.0, math.inf, 0.45)


def walked(way: ArmPose, from_m: float = 0.0) -> Any:
    """Points along the middle line, a millimetre or less apart, from so far along it."""
    pieces = [
        a + np.linspace(0, 1, 2 + int(1000 * math.dist(a, b)))[:, None] * (np.array(b) - a)
        for a, b in itertools.pairwise(np.array(way.points_m))
    ]
    points = np.concatenate(pieces)
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=1))])
    return points[along >= from_m]


def tipped(points: Any, tilt_rad: float) -> Any:
    """The seat's points in the room, its back tilted down: a turn about the line from left to right through the pivot."""
    cos, sin = math.cos(tilt_rad), math.sin(tilt_rad)
    y, z = points[:, 1] - PIVOT[1], points[:, 2] - PIVOT[2]
    return np.stack([points[:, 0], PIVOT[1] + y * cos - z * sin, PIVOT[2] + y * sin + z * cos], axis=1)


def from_box(points: Any, low: Any, high: Any) -> float:
    return float(np.linalg.norm(points - np.clip(points, low, high), axis=1).min())


def from_rod(points: Any, start: Any, end: Any) -> float:
    way = np.asarray(end) - start
    share = np.clip((points - start) @ way / (way @ way), 0.0, 1.0)
    return float(np.linalg.norm(points - (start + share[:, None] * way), axis=1).min())


def least_room_m(way: ArmPose, room: Room) -> dict[str, float]:
    """What is left between the arm's surface and each body, at both ends of the tilt and between; own holder beyond the clamp."""
    seat_clamp = next(one for one in (*room.tube, *room.edge) if one.name == way.clamp).moves_with == "seat"
    middle = (room.tilt_from_rad + room.tilt_to_rad) / 2
    tilts = (room.tilt_from_rad, middle, room.tilt_to_rad)
    out: dict[str, float] = {}

    def seen(points: Any, moves_with: str) -> list[Any]:
        if seat_clamp == (moves_with == "seat"):
            return [points]
        return [tipped(points, tilt if seat_clamp else -tilt) for tilt in tilts]

    for one in room.tube:
        points = walked(way, CLAMP_M if one.name == way.clamp else 0.0)
        gaps = [from_rod(each, one.from_m, one.to_m) for each in seen(points, one.moves_with)]
        out[one.name] = min(gaps) - one.diameter_m / 2 - HALF_ARM_M
    for board in room.surface:
        points = walked(way, CLAMP_M if board.name in way.clamp else 0.0)
        x, y, z = board.corner_m
        low, high = (x, y, z - BOARD_M), (x + board.size_m[0], y + board.size_m[1], z)
        if board.kind == "floor":
            out[board.name] = min(each[:, 2].min() for each in seen(points, board.moves_with)) - z - HALF_ARM_M
        else:
            out[board.name] = min(from_box(each, low, high) for each in seen(points, board.moves_with)) - HALF_ARM_M
    for place in room.place:
        at = np.array(place.at_m)
        low, high = at - 0.02, at + np.array([0.02, 0.02, 0.04])
        out[place.site] = min(from_box(each, low, high) for each in seen(walked(way), place.moves_with)) - HALF_ARM_M
    return out


@settings(max_examples=60, deadline=None)
@given(
    at=st.tuples(st.integers(-350, 450), st.integers(50, 700), st.integers(-250, 450)),
    tilt=st.sampled_from([(0, 0), (0, 15), (10, 25)]),
    mount=st.sampled_from([LONG, NECK]),
)
def test_no_way_passes_through_what_stands_about(at: Any, tilt: Any, mount: Mount) -> None:
    """Law, by walking along every way that is offered, a millimetre at a time."""
    room = room_of(tilt_from_deg=tilt[0], tilt_to_deg=tilt[1])
    base = tuple(value / 1000 for value in at)
    (found,) = arm_reaches(pose_at(base), room, [mount], base_m=(0.05, 0.05, 0.02))
    slack = 1e-9 if mount is LONG else 0.001  # a neck is told in short straight pieces
    for way in found.poses:
        left = least_room_m(way, room)
        assert min(left.values()) > -slack, (way.clamp, left)


def test_the_way_through_a_tray_is_not_taken() -> None:
    """A device above the tray beside the armrest, under which the tube runs: the short way up goes through the board. Without the tray
    the arm is taken so; with it, another way is found, or none and the tray is named."""
    pose, tube = pose_at((0.20, 0.35, 0.40)), [TUBES[0]]
    free = room_of(
        surface=[], edge=[], place=[], tube=[{**tube[0], "from_mm": [200, 250, 150], "to_mm": [200, 450, 150]}]
    )
    tray = free.model_copy(update={"surface": room_of().surface[:1]})
    (through,) = arm_reaches(pose, free, [LONG])
    (round_it,) = arm_reaches(pose, tray, [LONG])
    assert least_room_m(through.poses[0], tray)["tray"] < 0
    assert all(least_room_m(way, tray)["tray"] > -1e-9 for way in round_it.poses)
    wide = tray.surface[0].model_copy(update={"corner_m": (-0.5, 0.0, 0.25), "size_m": (1.2, 0.8)})
    (none,) = arm_reaches(pose, tray.model_copy(update={"surface": (wide,)}), [LONG])
    assert none.poses == ()
    assert "surface tray is in the way" in said(none.reasons[0])


def test_a_link_does_not_lie_along_its_own_tube() -> None:
    """An arm of one link, whose tube of 25 mm points at the device: by hand, beyond the 50 mm of its clamp the link is clear only from
    22.5 mm past the tube's end at 300 mm on, so from 272.5 mm, the next of the 5 mm steps; its reach of 360 mm alone would let the
    clamp sit from 160 mm on."""
    straight = LONG.model_copy(update={"links_m": (0.4,)})
    tube = {**TUBES[0], "from_mm": [260, 0, 200], "to_mm": [260, 300, 200]}
    room = room_of(surface=[], edge=[], place=[], tube=[tube])
    (found,) = arm_reaches(pose_at((0.26, 0.52, 0.23)), room, [straight])
    assert all(least_room_m(way, room)["armrest"] > -1e-9 for way in found.poses)
    ((low, high),) = found.poses[0].ranges_m
    assert (low, high) == pytest.approx((0.275, 0.3), abs=1e-9)


def test_another_part_is_not_passed_through() -> None:
    """With a thumb resting in the middle of the way that is otherwise taken, another is taken."""
    pose, bare = pose_at((0.1, 0.35, 0.40)), room_of(surface=[], edge=[], place=[])
    (free,) = arm_reaches(pose, bare, [LONG])
    elbow = free.poses[0].points_m[1]
    thumb = room_of(surface=[], edge=[], place=[{"site": "thumb", "at_mm": [1000 * at for at in elbow]}])
    (found,) = arm_reaches(pose, thumb, [LONG])
    assert least_room_m(free.poses[0], thumb)["thumb"] < 0
    assert all(least_room_m(way, thumb)["thumb"] > -1e-9 for way in found.poses)


COORDINATE = st.integers(-5, 5).map(float)
POINT = st.tuples(COORDINATE, COORDINATE, COORDINATE)


@settings(max_examples=150, deadline=None)
@given(a=POINT, b=POINT, c=POINT, d=POINT)
def test_distance_of_segments(a: Any, b: Any, c: Any, d: Any) -> None:
    """Law, against points tried all along both: never more than the nearest pair of a fine grid, and hardly less; segments without length
    and alongside each other too."""
    (found,) = segments_apart_m(*(np.array([one]) for one in (a, b, c, d)))[0]
    share = np.linspace(0, 1, 201)[:, None]
    first, second = (start + share * (np.array(end) - start) for start, end in ((np.array(a), b), (np.array(c), d)))
    nearest = float(np.linalg.norm(first[:, None] - second[None], axis=2).min())
    assert nearest - 0.1 <= found <= nearest + 1e-9


@pytest.mark.parametrize("from_mm, to_mm", [([0, -10, 200], [1000, -10, 200]), ([0, 510, 200], [1000, 510, 200]),
                                            ([-10, 0, 200], [-10, 500, 200]), ([1010, 0, 200], [1010, 500, 200]),
                                            ([0, 0, 230], [1000, 0, 230]), ([0, 0, 170], [1000, 0, 170])])  # fmt: skip
def test_an_edge_up_to_ten_millimetres_off_is_its_boards(from_mm: list[int], to_mm: list[int]) -> None:
    """To each side, and above and below by its thickness more; a millimetre further off it is another thing."""
    board = {"name": "board", "kind": "table", "corner_mm": [0, 0, 200], "size_mm": [1000, 500], "moves_with": "room"}
    middle = np.array([500, 250, 200])

    def boards(*ends: Any) -> tuple[str, ...]:
        edge = {
            "name": "edge",
            "from_mm": list(ends[0]),
            "to_mm": list(ends[1]),
            "thickness_mm": 20,
            "moves_with": "room",
        }
        return unmeasured_boards(Room.model_validate({"surface": [board], "edge": [edge]}))

    assert boards(from_mm, to_mm) == ()
    (axis,) = [one for one in range(3) if from_mm[one] == to_mm[one] and from_mm[one] not in (0, 200)]
    further = np.sign(np.array(from_mm) - middle) * (np.arange(3) == axis)
    assert boards((from_mm + further).tolist(), (to_mm + further).tolist()) == ("board",)


def test_the_steps_between_tilts_are_told_as_they_are() -> None:
    """From 20 to 29 degrees in steps of one: what moves with the chair's base, as seen from the seat; nothing for the seat's own."""
    room = Room.model_validate({"tilt_from_deg": 20, "tilt_to_deg": 29, "tube": TUBES, "surface": [TRAY, DESK]})
    (armrest,) = [one for one in room.tube if one.name == "armrest"]
    groups = [group.bodies for group in bodies_of(room, "thumb", armrest).others]
    assert {len(one.tilts_rad) for one in groups} == {1, 10}
    for one in groups:
        apart = np.abs(np.diff(one.tilts_rad)).max() if len(one.tilts_rad) > 1 else 0.0
        assert one.step_rad == pytest.approx(apart, abs=1e-12)
