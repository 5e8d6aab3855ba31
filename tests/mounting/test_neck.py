"""A gooseneck: its curve, where it can be clamped, and whether it holds."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from said import said
from stickwright.errors import BadInput
from stickwright.model.kit import Mount
from stickwright.model.mounting import Pose
from stickwright.model.room import Room
from stickwright.mounting.neck import Necks, bent_necks, neck_points
from stickwright.mounting.neck_load import neck_checks, neck_sag
from stickwright.mounting.search import ArmReach, arm_reaches
from stickwright.mounting.statics import Pushes, arm_weights

UP = (0.0, 0.0, 1.0)
COORDINATE = st.floats(-1.0, 1.0)
WAY = st.tuples(COORDINATE, COORDINATE, COORDINATE)
TUBE = {"name": "armrest", "from_mm": [300, 0, 200], "to_mm": [300, 400, 200], "diameter_mm": 22}


def unit(way: tuple[float, ...]) -> np.ndarray:
    assume(np.linalg.norm(way) > 0.1)
    return np.array(way) / np.linalg.norm(way)


def one_neck(foot: Any, foot_way: Any, end: Any, end_way: Any, length: float, share: float = 0.5) -> Necks:
    rows = (np.array([one], dtype=np.float64) for one in (foot, foot_way, end, end_way))
    return bent_necks(*rows, length, np.array([share]))


def reach(base_m: tuple[float, float, float], room: Room | None = None, tilt_rad: float = 0.0, **more: Any) -> ArmReach:
    told = {"name": "neck", "kind": "gooseneck", "links_mm": 350, "tube_mm": [16, 40], "edge_mm": [8, 40], **more}
    pose = Pose("hand", base_m, base_m, 0.0, tilt_rad, 0.004, 0.45)
    return arm_reaches(pose, room or Room.model_validate({"tube": [TUBE]}), [Mount.model_validate(told)])[0]


def test_what_cannot_be_bent_is_not_gentle() -> None:
    """A neck that no bend was found for has a radius of 0, a straight one no end to its radius, any other that of its tighter bend."""
    none = np.zeros((3, 3))
    turn, long = np.array([[0.0, 0.0], [0.0, 0.0], [1.0, 0.5]]), np.array([[np.nan, np.nan], [0.1, 0.1], [0.2, 0.2]])
    assert Necks(none, none, none, none, none, none, turn, long).radius_m.tolist() == [0.0, math.inf, 0.2]


@given(foot=WAY, way=WAY, foot_way=WAY, end_way=WAY, share=st.sampled_from([0.0, 0.5, 1.0]), slack=st.floats(1.01, 4.0))
def test_it_ends_where_and_as_it_should(
    foot: Any, way: Any, foot_way: Any, end_way: Any, share: float, slack: float
) -> None:
    """Law: any neck that can be bent begins and ends at its points in its directions to 1e-9 m, has its own length, and nowhere
    breaks: a step along it goes no further than the step, and never bends more than its least radius."""
    begins, ends = unit(foot_way), unit(end_way)
    line = unit(way) * 0.2
    neck = one_neck(foot, begins, np.add(foot, line), ends, 0.2 * slack, share)
    assume(neck.radius_m[0] > 1e-3)
    length = 0.2 * slack
    assert neck.straight_m.sum() + neck.bend_m.sum() == pytest.approx(length, abs=1e-7)
    points = neck.at(np.linspace(0.0, length, 2001))[0]
    assert points[0] == pytest.approx(np.array(foot), abs=1e-9)
    assert points[-1] == pytest.approx(np.add(foot, line), abs=2e-7)
    steps = np.diff(points, axis=0) / (length / 2000)
    assert np.linalg.norm(steps, axis=1).max() <= 1 + 1e-6
    assert steps[0] @ begins == pytest.approx(1.0, abs=0.02)
    assert steps[-1] @ ends == pytest.approx(1.0, abs=0.02)
    turned = np.linalg.norm(np.diff(steps, axis=0), axis=1)
    assert turned.max() <= length / 2000 / neck.radius_m[0] * (1 + 1e-3) + 1e-6


@given(foot=WAY, way=WAY, foot_way=WAY, end_way=WAY, by=WAY, turn=st.floats(-3.0, 3.0))
def test_moved_and_turned_together_it_is_the_same_neck(
    foot: Any, way: Any, foot_way: Any, end_way: Any, by: Any, turn: float
) -> None:
    """Law: points and directions carried and turned together give the same neck, carried and turned."""
    cos, sin = math.cos(turn), math.sin(turn)
    about = np.array([[cos, -sin, 0.0], [sin, cos, 0.0], [0.0, 0.0, 1.0]])
    begins, ends, line = unit(foot_way), unit(end_way), unit(way) * 0.2
    first = one_neck(foot, begins, np.add(foot, line), ends, 0.3)
    assume(first.radius_m[0] > 2e-3)
    start = about @ np.array(foot) + by
    second = one_neck(start, about @ begins, start + about @ line, about @ ends, 0.3)
    assert second.radius_m == pytest.approx(first.radius_m, rel=1e-5)
    assert np.array(neck_points(second)) == pytest.approx(np.array(neck_points(first)) @ about.T + by, abs=1e-6)


def test_a_neck_shorter_than_the_way_is_refused() -> None:
    """A way of 200 mm and a neck of 190 mm: a sentence, no curve."""
    with pytest.raises(
        BadInput, match=r"gooseneck: found 190\smm, expected more than the 200\smm from its clamp to the base"
    ):
        one_neck((0, 0, 0), UP, (0, 0.2, 0), UP, 0.19)


def test_half_circle_by_hand() -> None:
    """By hand: straight up and straight down again 200 mm ahead is two quarter bends of 100 mm radius when the neck is pi x 100 mm
    long; with 100 mm more, 50 mm stay straight at each end."""
    down = (0.0, 0.0, -1.0)
    exact = one_neck((0, 0, 0), UP, (0, 0.2, 0), down, 0.1 * math.pi)
    assert exact.radius_m[0] == pytest.approx(0.1, abs=1e-6)
    longer = one_neck((0, 0, 0), UP, (0, 0.2, 0), down, 0.1 * math.pi + 0.1)
    assert longer.straight_m[0] == pytest.approx([0.05, 0.0, 0.05], abs=1e-6)
    assert longer.radius_m[0] == pytest.approx(0.1, abs=1e-6)


class TestWhereItCanBeClamped:
    def test_bent_too_tightly(self) -> None:
        """A neck of 350 mm to a base 60 mm above its tube must fold back on itself: said with both radii, assumed or told."""
        short = Room.model_validate({"tube": [{**TUBE, "from_mm": [300, 190, 200], "to_mm": [300, 210, 200]}]})
        near = reach((0.3, 0.2, 0.26), short, least_bend_mm=90)
        assert near.poses == ()
        assert near.too_short_m is None
        (reason,) = near.reasons
        assert said(reason).startswith("From tube armrest, neck would have to be bent to a radius of ")
        assert said(reason).endswith("tighter than its least radius (90 mm).")
        (assumed,) = reach((0.3, 0.2, 0.21), short).reasons
        assert said(assumed).endswith("(60 mm, assumed).")

    def test_too_short(self) -> None:
        """600 mm above the tube, a neck of 350 mm lacks 600/0.9 - 350 = 317 mm."""
        assert reach((0.3, 0.2, 0.8)).too_short_m == pytest.approx(0.6 / 0.9 - 0.35, abs=1e-9)

    @pytest.mark.parametrize("tilt_deg", [0.0, 30.0])
    def test_it_meets_the_base_square_from_below(self, tilt_deg: float) -> None:
        """The last stretch runs along the base's own up, (0, -sin, cos) of its tilt; the whole is 350 mm long; joints say how."""
        base = (0.25, 0.35, 0.42)
        best = reach(base, tilt_rad=math.radians(tilt_deg), least_bend_mm=30).poses[0]
        points = np.array(best.points_m)
        last = points[-1] - points[-2]
        tilt = math.radians(tilt_deg)
        assert last @ [0.0, -math.sin(tilt), math.cos(tilt)] / np.linalg.norm(last) > 0.98
        assert points[-1] == pytest.approx(base, abs=1e-6)
        assert 0.345 < np.linalg.norm(np.diff(points, axis=0), axis=1).sum() <= 0.35 + 1e-9
        assert "leaves the clamp" in said(best.joints[0].words)
        assert "radius" in said(best.joints[0].words) + said(best.joints[1].words)

    def test_from_an_edge_it_looks_up(self) -> None:
        """On a table's edge the clamp looks up; on a tube it can be turned, and reaches what it must leave level."""
        desk = {
            "name": "desk",
            "from_mm": [0, 500, 200],
            "to_mm": [600, 500, 200],
            "thickness_mm": 20,
            "moves_with": "seat",
        }
        best = reach((0.3, 0.35, 0.4), Room.model_validate({"edge": [desk]}), least_bend_mm=30).poses[0]
        start = np.subtract(best.points_m[1], best.points_m[0])
        assert start[2] / np.linalg.norm(start) > 0.97

    @settings(max_examples=15)
    @given(low=st.tuples(st.integers(150, 400), st.integers(0, 400), st.integers(220, 420)), size=st.integers(30, 90))
    def test_what_is_found_is_clear(self, low: tuple[int, int, int], size: int) -> None:
        """Law, by walking along the curve itself: 10 mm of thickness off, it is nowhere nearer to a keep-out than was said."""
        box = {"name": "box", "kind": "other", "low_mm": list(low), "high_mm": [one + size for one in low]}
        room = Room.model_validate({"tube": [TUBE], "keep_out": [box]})
        for best in reach((0.25, 0.3, 0.42), room, least_bend_mm=30).poses:
            walked = np.concatenate(
                [np.linspace(a, b, 40) for a, b in zip(best.points_m[:-1], best.points_m[1:], strict=True)]
            )
            corners = np.array([room.keep_out[0].low_m, room.keep_out[0].high_m])
            off = np.linalg.norm(walked - np.clip(walked, *corners), axis=1).min() - 0.010
            assert best.clearance_m >= 0.0
            assert off >= best.clearance_m - 1e-9

    def test_mirrored_room(self) -> None:
        """Law: left and right exchanged, the same neck from the same stretch."""
        first = reach((0.22, 0.33, 0.41), least_bend_mm=30)
        tube = {**TUBE, "from_mm": [-300, 0, 200], "to_mm": [-300, 400, 200]}
        second = reach((-0.22, 0.33, 0.41), Room.model_validate({"tube": [tube]}), least_bend_mm=30)
        assert second.ranges == first.ranges
        assert second.poses[0].straight_share == pytest.approx(first.poses[0].straight_share, abs=1e-9)


class TestWhetherItHolds:
    def test_foot_by_hand(self) -> None:
        """By hand: 300 mm level, no weight, a push of 2 N counted 1.5 times: 3 N x 0.3 m = 0.9 N m at the foot of a neck that holds
        1.8: twofold, just as wanted; nowhere else is there more."""
        points = np.linspace((0.0, 0.0, 0.0), (0.0, 0.3, 0.0), 25)
        weights = arm_weights(points, 0.0, points[-1], 0.0)
        (check,) = neck_checks(
            points, [1.8], Pushes(2.0), weights, contact_m=points[-1], tilts_rad=(0.0,), lets_go=False
        )
        assert (check.what, round(check.load, 9), round(check.factor, 9), check.holds) == (
            "neck_foot", 0.9, 2.0, True,
        )  # fmt: skip

    def test_bowed_out_it_bends_hardest_further_up(self) -> None:
        """A neck that goes down 200 mm before it comes up to a contact 50 mm over its foot bends hardest at the bottom."""
        neck = one_neck((0, 0, 0), (0, 0, -1), (0, 0.1, 0.05), UP, 0.6)
        points = neck_points(neck)
        weights = arm_weights(points, 0.0, points[-1], 0.0)
        checks = neck_checks(points, [2.0], Pushes(2.0), weights, contact_m=points[-1], tilts_rad=(0.0,), lets_go=False)
        assert [check.what for check in checks] == ["neck_foot", "neck_bow"]
        furthest = max(math.dist(point, points[-1]) for point in points)
        assert checks[1].load == pytest.approx(3.0 * furthest, abs=1e-9)

    def test_a_rating_nobody_gave_is_not_made_up(self) -> None:
        """Without a holding moment there is no factor, and a push of 20 N is not relied on."""
        points = np.linspace((0.0, 0.0, 0.0), (0.0, 0.3, 0.0), 25)
        weights = arm_weights(points, 0.3, points[-1], 0.1)
        (check,) = neck_checks(points, [], Pushes(20.0), weights, contact_m=points[-1], tilts_rad=(0.0,), lets_go=False)
        assert (check.limit, check.holds) == (None, False)

    def test_upright_it_does_not_sink(self) -> None:
        """Straight up, weight bends nothing; tilted back by 90 degrees it sinks as one held out level."""
        points = np.linspace((0.0, 0.0, 0.0), (0.0, 0.0, 0.3), 25)
        weights = arm_weights(points, 0.0, points[-1], 0.5)
        assert neck_sag(points, 120.0, weights).droop_m == pytest.approx(0.0, abs=1e-12)
        assert neck_sag(points, 120.0, weights, math.pi / 2).droop_m == pytest.approx(0.5 * 9.80665 / 120.0, rel=1e-9)
