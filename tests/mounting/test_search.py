"""Where a clamp could sit, and why nowhere."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import lsq_linear
from scipy.spatial.transform import Rotation

from said import said
from stickwright.codes.arm_reasons import ArmReasons
from stickwright.codes.message import message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.kit import Mount
from stickwright.model.mounting import Pose
from stickwright.model.room import Room
from stickwright.mounting.frames import tilted
from stickwright.mounting.search import CLAMP_STEP_M, ArmReach, _Site, arm_reaches, groupings, ranked_cost_m

SHORT = Mount.model_validate(
    {"name": "short arm", "kind": "friction arm", "links_mm": [140, 120], "tube_mm": [16, 40], "edge_mm": [10, 30]}
)
LONG = Mount.model_validate({"name": "long arm", "kind": "friction arm", "links_mm": [220, 200], "tube_mm": [16, 40]})
ARMREST: dict[str, Any] = {"name": "armrest", "from_mm": [300, 0, 200], "to_mm": [300, 400, 200], "diameter_mm": 22}


BALL_M = 0.030
"""The last ball of an arm below the base, where the kit does not tell."""


def over(ball_m: tuple[float, float, float]) -> Pose:
    """A level base whose arm ends at a point."""
    return pose_at((ball_m[0], ball_m[1], ball_m[2] + BALL_M))


def pose_at(base_m: tuple[float, float, float], tolerance_m: float = 0.004) -> Pose:
    return Pose("hand", (base_m[0], base_m[1], base_m[2] + 0.05), base_m, 0.0, 0.0, tolerance_m, math.acos(0.9))


def room_of(*tubes: dict[str, Any], **more: Any) -> Room:
    return Room.model_validate({"tube": list(tubes), **more})


def one(pose: Pose, room: Room, mount: Mount = SHORT, **more: Any) -> ArmReach:
    (found,) = arm_reaches(pose, room, [mount], **more)
    return found


class TestReaching:
    def test_the_nearest_point_of_a_tube_has_the_shortest_lever(self) -> None:
        """By hand: the ball 100 mm above the middle of a tube, the best clamp point is right below, with a lever of 100 mm."""
        found = one(over((0.3, 0.2, 0.3)), room_of(ARMREST))
        best = found.poses[0]
        assert (best.clamp, best.along_m) == ("armrest", pytest.approx(0.2, abs=1e-9))
        assert best.points_m[0] == pytest.approx((0.3, 0.2, 0.2), abs=1e-9)
        assert best.points_m[-1] == pytest.approx((0.3, 0.2, 0.3), abs=1e-12)
        assert best.straight_share == pytest.approx(100 / 260, abs=1e-9)
        assert (best.clearance_m, best.nearest) == (math.inf, "")
        assert [joint.name for joint in best.joints] == ["lower_link", "elbow", "plate"]
        assert found.reasons == ()
        assert found.too_short_m is None

    def test_where_the_clamp_could_go(self) -> None:
        """By hand: the ball 100 mm above, a reach of 234 mm (0.9 x 260) leaves 211.6 mm either way: all 400 mm of this tube; of a tube
        of 1 m the points from 290 to 710 mm."""
        (stretch,) = one(over((0.3, 0.2, 0.3)), room_of(ARMREST)).ranges
        assert (stretch.from_m, stretch.to_m) == pytest.approx((0.0, 0.4), abs=1e-9)
        (stretch,) = one(over((0.3, 0.5, 0.3)), room_of({**ARMREST, "to_mm": [300, 1000, 200]})).ranges
        assert (stretch.clamp, stretch.from_m, stretch.to_m) == (
            "armrest",
            pytest.approx(0.29, abs=1e-9),
            pytest.approx(0.71, abs=1e-9),
        )

    def test_links_keep_their_lengths(self) -> None:
        """Clamp, elbow and end are 140 and 120 mm apart."""
        clamp, elbow, end = one(over((0.35, 0.3, 0.3)), room_of(ARMREST)).poses[0].points_m
        assert (math.dist(clamp, elbow), math.dist(elbow, end)) == pytest.approx((0.14, 0.12), abs=1e-9)

    def test_edges_too(self) -> None:
        """A table's edge of 22 mm holds the short arm; a long arm whose clamp holds tubes only says so."""
        room = Room.model_validate(
            {"edge": [{"name": "desk", "from_mm": [-300, 300, 250], "to_mm": [300, 300, 250], "thickness_mm": 22}]}
        )
        pose = pose_at((0.1, 0.35, 0.35))
        assert [best.clamp for best in one(pose, room).poses] == ["desk"]
        found = one(pose, room, LONG)
        assert found.poses == ()
        assert [said(one) for one in found.reasons] == ["The clamp of long arm holds no edges, so not edge desk."]

    def test_best_first_one_of_each_tube(self) -> None:
        """Of two tubes the one with the shorter lever comes first."""
        far = {**ARMREST, "name": "far tube", "from_mm": [380, 0, 200], "to_mm": [380, 400, 200]}
        assert [best.clamp for best in one(pose_at((0.3, 0.2, 0.3)), room_of(far, ARMREST)).poses] == [
            "armrest",
            "far tube",
        ]

    def test_a_gooseneck_is_bent(self) -> None:
        """A gooseneck reaches up to 0.9 of its length; it is set by its foot, its middle and its plate."""
        neck = Mount.model_validate({"name": "neck", "kind": "gooseneck", "links_mm": [350], "tube_mm": [16, 40]})
        best = one(
            pose_at((0.3, 0.2, 0.514)), room_of({**ARMREST, "to_mm": [300, 5, 200], "from_mm": [300, 200, 200]}), neck
        ).poses[0]
        assert (len(best.points_m), [joint.name for joint in best.joints]) == (25, ["foot", "middle", "plate"])
        assert one(pose_at((0.3, 0.2, 0.516)), room_of(ARMREST), neck).too_short_m == pytest.approx(
            0.316 / 0.9 - 0.35, abs=1e-9
        )

    def test_more_links_two_of_them_kept_straight(self) -> None:
        """Three links: every joint is told, each as far from the next as its link."""
        three = Mount.model_validate(
            {"name": "three", "kind": "friction arm", "links_mm": [100, 150, 80], "tube_mm": [16, 40]}
        )
        assert groupings(three) == (pytest.approx((0.1, 0.23)), pytest.approx((0.25, 0.08)))
        points = one(pose_at((0.3, 0.2, 0.4)), room_of(ARMREST), three).poses[0].points_m
        assert [math.dist(a, b) for a, b in itertools.pairwise(points)] == pytest.approx([0.1, 0.15, 0.08], abs=1e-9)


class TestReasons:
    def test_too_short_by_so_much(self) -> None:
        """By hand: 264.6 mm away, 294 mm would be wanted with a tenth to spare: the arm is 34 mm too short."""
        found = one(over((0.3, 0.4, 0.4646)), room_of(ARMREST))
        assert found.poses == ()
        assert found.too_short_m == pytest.approx(0.034, abs=1e-9)
        assert [said(one) for one in found.reasons] == [
            "short arm is 34 mm too short from the nearest point of tube armrest, with a tenth of its length left for adjustment."
        ]

    def test_too_thick(self) -> None:
        """A tube of 48 mm in a clamp of 16 to 40 mm."""
        found = one(pose_at((0.3, 0.2, 0.3)), room_of({**ARMREST, "diameter_mm": 48}))
        assert [said(one) for one in found.reasons] == [
            "Tube armrest is 48 mm; the clamp of short arm holds 16 mm to 40 mm."
        ]
        assert (found.poses, found.ranges, found.too_short_m) == ((), (), None)

    def test_barred(self) -> None:
        """Nothing is clamped over a quick release, however well it would reach."""
        found = one(pose_at((0.3, 0.2, 0.3)), room_of({**ARMREST, "not_for_clamps": "quick release"}))
        assert [said(one) for one in found.reasons] == ["Tube armrest is not for clamps: quick release."]
        assert found.poses == ()

    def test_cannot_fold(self) -> None:
        """By hand: links of 200 and 80 mm, 30 degrees left between them, end 137 mm from the clamp (cosine rule); the far end of a
        20 mm tube is 54 mm from the ball."""
        arm = Mount.model_validate(
            {"name": "odd arm", "kind": "friction arm", "links_mm": [200, 80], "tube_mm": [16, 40]}
        )
        found = one(over((0.3, 0.0, 0.25)), room_of({**ARMREST, "to_mm": [300, 20, 200]}), arm)
        assert [said(one) for one in found.reasons] == ["odd arm cannot fold so far: tube armrest is 83 mm too near."]
        assert found.too_short_m is None

    def test_keep_out_in_the_way(self) -> None:
        """A slab between tube and place, wider than the arm can go round: it is named."""
        slab = {"name": "lap", "kind": "other", "low_mm": [-500, -500, 240], "high_mm": [900, 900, 260]}
        found = one(pose_at((0.3, 0.2, 0.3)), room_of(ARMREST, keep_out=[slab]))
        assert found.poses == ()
        assert [said(one) for one in found.reasons] == [
            "From tube armrest, short arm is long enough, but keep-out lap is in the way."
        ]
        assert found.too_short_m is None

    def test_base_in_a_keep_out(self) -> None:
        """A base whose corner stands in the chair's control is refused whatever holds it; its middle alone would not tell."""
        control = {"name": "joystick", "kind": "chair control", "low_mm": [360, 150, 280], "high_mm": [420, 250, 340]}
        room = room_of(ARMREST, keep_out=[control])
        assert one(pose_at((0.3, 0.2, 0.3)), room).poses != ()
        found = one(pose_at((0.3, 0.2, 0.3)), room, base_m=(0.1, 0.14, 0.04))
        assert [said(one) for one in found.reasons] == [
            "The base itself would stand in joystick, which must stay free, whatever holds it."
        ]

    def test_a_mount_that_is_no_arm(self) -> None:
        """A tray has no links; an arm whose clamp nobody measured cannot be searched for; a room without tubes has none."""
        pose = pose_at((0.3, 0.2, 0.3))
        tray = Mount(name="tray", kind="tray")
        loose = Mount.model_validate({"name": "loose", "kind": "friction arm", "links_mm": [140, 120]})
        assert one(pose, room_of(ARMREST), tray).reasons == (message(ArmReasons.no_links, mount="tray"),)
        assert one(pose, room_of(ARMREST), loose).reasons == (message(ArmReasons.no_clamp, mount="loose"),)
        assert one(pose, Room()).reasons == (message(ArmReasons.nothing),)


STAND: dict[str, Any] = {**ARMREST, "name": "floor stand", "moves_with": "room"}


class TestTilt:
    def test_what_does_not_tilt_with_the_site_is_refused(self) -> None:
        """By hand: a chin 900 mm from the pivot and 40 degrees of tilt: 616 mm (2 x 900 x sin 20), 4 mm allowed."""
        room = room_of(STAND, tilt_from_deg=5, tilt_to_deg=45, tilt_pivot_mm=[0, 0, -300])
        found = one(pose_at((0.3, 0.0, 0.55)), room, LONG)
        assert found.poses == ()
        assert [said(one) for one in found.reasons] == [
            "Tube floor stand does not move with the hand: over the tilts used in play they move 616 mm apart; 4.0 mm is acceptable."
        ]

    def test_within_the_tolerance_it_may(self) -> None:
        """By hand: 130 mm from the pivot, 2 degrees of tilt: 4.5 mm, less than 5 mm; the arm ends in the middle of the two."""
        room = room_of(STAND, tilt_from_deg=10, tilt_to_deg=12, tilt_pivot_mm=[0, 0.2 * 1000, 250])
        pose = replace(over((0.3, 0.2, 0.3)), tolerance_m=0.005)
        end = one(pose, room).poses[0].points_m[-1]
        assert end == pytest.approx(tilted((0.3, 0.2, 0.3), math.radians(11), (0.0, 0.2, 0.25)), abs=1e-12)

    def test_an_unknown_tolerance_allows_nothing(self) -> None:
        """Where nobody knows how far off it may be, what moves apart at all is refused."""
        room = room_of(STAND, tilt_from_deg=10, tilt_to_deg=12, tilt_pivot_mm=[0, 200, 250])
        (reason,) = one(pose_at((0.3, 0.2, 0.3), math.nan), room).reasons
        assert said(reason).endswith("3.5 mm apart; how much is acceptable is not known.")

    def test_a_chair_that_stays_tilted_is_one_thing_with_the_room(self) -> None:
        """A seat at one tilt all the time: a stand will do, and the arm ends where the tilted seat has the place."""
        room = room_of(STAND, tilt_from_deg=10, tilt_to_deg=10, tilt_pivot_mm=[0, 200, 250])
        end = one(over((0.3, 0.2, 0.3)), room).poses[0].points_m[-1]
        assert end == pytest.approx(tilted((0.3, 0.2, 0.3), math.radians(10), (0.0, 0.2, 0.25)), abs=1e-12)

    def test_a_table_that_the_arm_swings_into(self) -> None:
        """Clear with the seat upright, in the way of the table once tilted: the table is what stands in the way."""
        table = {
            "name": "shelf",
            "kind": "other",
            "low_mm": [-900, -900, 420],
            "high_mm": [900, 900, 440],
            "moves_with": "room",
        }
        place = pose_at((0.3, 0.6, 0.28))
        tube = {**ARMREST, "from_mm": [300, 500, 200], "to_mm": [300, 700, 200]}
        upright = room_of(tube, keep_out=[table], tilt_pivot_mm=[0, 0, 0])
        assert one(place, upright).poses[0].nearest == "shelf"
        tilting = room_of(tube, keep_out=[table], tilt_pivot_mm=[0, 0, 0], tilt_from_deg=0, tilt_to_deg=25)
        assert "shelf" in said(one(place, tilting).reasons[0])

    def test_a_chair_can_roll_away_from_a_table(self) -> None:
        """What is clamped to the room is right only where the chair stands: marked; on the chair itself, or in bed, not."""
        pose = pose_at((0.3, 0.2, 0.3))
        usual = (message(MountAssumed.thickness, mount="short arm", thick_m=0.02, head_m=0.03),)
        *first, told = one(pose, room_of(STAND)).assumed
        assert tuple(first) == usual
        assert told == message(MountAssumed.chair_place, holders=("floor stand",), mount="short arm", within_m=0.004)
        assert one(pose, room_of({**STAND, "moves_with": "base"})).assumed == usual
        assert one(pose, room_of(STAND, posture="bed")).assumed == usual
        assert one(pose, room_of(STAND), moves_with="room").assumed == usual

    def test_a_pivot_nobody_measured_is_marked(self) -> None:
        """The assumption travels with the answer."""
        found = one(pose_at((0.3, 0.2, 0.3)), room_of(ARMREST, tilt_from_deg=0, tilt_to_deg=10))
        assert found.assumed[-1] == message(MountAssumed.pivot)


BOX = st.tuples(st.integers(-300, 500), st.integers(-100, 500), st.integers(150, 500), st.integers(40, 150))


def boxed(boxes: list[tuple[int, int, int, int]], sign: int = 1, by: tuple[int, int, int] = (0, 0, 0)) -> Room:
    """The armrest and some keep-outs, mirrored or carried elsewhere."""

    def at(x: int, y: int, z: int) -> list[float]:
        # off whole millimetres, so that no clearance is exactly at its limit, where a rounding decides
        return [sign * (x + 0.1371) + by[0], y + 0.2113 + by[1], z + 0.1739 + by[2]]

    outs = []
    for number, (x, y, z, size) in enumerate(boxes):
        corners = np.array([at(x, y, z), at(x + size, y + size, z + size)])
        outs.append(
            {
                "name": f"{number}",
                "kind": "other",
                "low_mm": corners.min(0).tolist(),
                "high_mm": corners.max(0).tolist(),
            }
        )
    return room_of({**ARMREST, "from_mm": at(300, 0, 200), "to_mm": at(300, 400, 200)}, keep_out=outs)


def summary(found: ArmReach) -> tuple[Any, ...]:
    """What does not depend on which of two equally good elbows was taken."""
    poses = [(best.clamp, best.straight_share, min(best.clearance_m, 0.05)) for best in found.poses]
    return poses, [(one.from_m, one.to_m) for one in found.ranges], len(found.reasons)


def same(found: tuple[Any, ...], told: tuple[Any, ...]) -> None:
    assert [pose[0] for pose in found[0]] == [pose[0] for pose in told[0]]
    assert [pose[1:] for pose in found[0]] == [pytest.approx(pose[1:], abs=1e-9) for pose in told[0]]
    # a clamp point right at the limit of clearance may fall on either side of it: one step
    assert np.array(found[1]) == pytest.approx(np.array(told[1]), abs=CLAMP_STEP_M + 1e-9)
    assert found[2] == told[2]


class TestLaws:
    @settings(max_examples=40)
    @given(boxes=st.lists(BOX, max_size=4))
    def test_mirrored_room(self, boxes: list) -> None:
        """Law: left and right exchanged, the same arm from the same stretch with the same clearance."""
        found = one(pose_at((0.25, 0.3, 0.35)), boxed(boxes))
        same(summary(one(pose_at((-0.25, 0.3, 0.35)), boxed(boxes, -1))), summary(found))

    @settings(max_examples=40)
    @given(boxes=st.lists(BOX, max_size=4), by=st.tuples(*[st.integers(-200, 200)] * 3))
    def test_moved_together(self, boxes: list, by: tuple[int, int, int]) -> None:
        """Law: seat, tubes and keep-outs carried elsewhere together, nothing changes."""
        found = one(pose_at((0.25, 0.3, 0.35)), boxed(boxes))
        moved = tuple(a + b / 1000 for a, b in zip((0.25, 0.3, 0.35), by, strict=True))
        same(summary(one(pose_at(moved), boxed(boxes, 1, by))), summary(found))

    @settings(max_examples=40)
    @given(boxes=st.lists(BOX, min_size=1, max_size=4))
    def test_more_keep_outs_never_help(self, boxes: list) -> None:
        """Law: with one keep-out less, every clamp point that was free still is, and the best arm costs no more."""
        more, less = (one(pose_at((0.25, 0.3, 0.35)), boxed(some)) for some in (boxes, boxes[:-1]))
        for stretch in more.ranges:
            assert any(wide.from_m <= stretch.from_m and stretch.to_m <= wide.to_m for wide in less.ranges)
        if more.poses:
            costs = [
                float(ranked_cost_m(0.26 * best.straight_share, 0.26, best.clearance_m))
                for best in (less.poses[0], more.poses[0])
            ]
            assert costs[0] <= costs[1] + 1e-9

    @settings(max_examples=40)
    @given(boxes=st.lists(BOX, max_size=4))
    def test_what_is_found_is_clear(self, boxes: list) -> None:
        """Law, by walking along the links: 10 mm of thickness off, no point of the arm is nearer to a keep-out than was said."""
        room = boxed(boxes)
        for best in one(pose_at((0.25, 0.3, 0.35)), room).poses:
            joints = np.array(best.points_m)
            walked = np.concatenate(
                [a + np.linspace(0, 1, 400)[:, None] * (b - a) for a, b in itertools.pairwise(joints)]
            )
            least = min(
                (
                    np.linalg.norm(walked - np.clip(walked, box.low_m, box.high_m), axis=1).min()
                    for box in room.keep_out
                ),
                default=math.inf,
            )
            assert best.clearance_m >= 0.0
            assert least - 0.010 >= best.clearance_m - 1e-9


def gap_of_solids_m(corner: Any, sides: Any, low: Any, high: Any) -> float:
    """Least distance between a block (a corner and its three sides, any way turned) and an upright box: the nearest pair of points
    of two solids, by scipy's bounded least squares."""
    both = np.hstack([np.asarray(sides).T, -np.eye(3)])
    found = lsq_linear(both, -np.asarray(corner), bounds=([0, 0, 0, *low], [1, 1, 1, *high]), tol=1e-14)
    return float(math.sqrt(2 * found.cost))


class TestBase:
    """How far the device's own base is from what must stay free."""

    @settings(max_examples=150, deadline=None)
    @given(
        size=st.tuples(st.integers(30, 200), st.integers(30, 120), st.integers(10, 60)),
        turn=st.integers(-180, 180),
        tilt=st.integers(-40, 40),
        at=st.tuples(st.integers(-300, 300), st.integers(-300, 300), st.integers(-300, 300)),
        box=st.integers(5, 120),
    )
    def test_its_clearance_is_that_of_the_solid(self, size: Any, turn: int, tilt: int, at: Any, box: int) -> None:
        """Independent route: the gap of two solids. Lines along underside and top never come nearer than the solid, and miss it by no
        more than half the way between two lines and half the height. Turned about the upright (anticlockwise seen from above), then
        sloped towards the player, as the pose says."""
        long, wide, high = (value / 1000 for value in size)
        base = np.array([0.3, 0.2, 0.3])
        pose = replace(pose_at(tuple(base)), turn_rad=math.radians(turn), tilt_rad=math.radians(tilt))
        low = [value / 1000 + middle for value, middle in zip(at, base, strict=True)]
        top = [value + box / 1000 for value in low]
        out = {"name": "box", "kind": "other", "low_mm": [1e3 * v for v in low], "high_mm": [1e3 * v for v in top]}
        told, name = _Site(pose, room_of(ARMREST, keep_out=[out]), "seat", (long, wide, high)).base_clear[True]
        axes = Rotation.from_euler("ZX", [math.radians(turn), math.radians(tilt)]).as_matrix()
        corner = base + axes @ np.array([-wide / 2, -long / 2, 0.0])
        sides = [axes[:, 0] * wide, axes[:, 1] * long, axes[:, 2] * high]
        true = gap_of_solids_m(corner, sides, low, top)
        assert name == "box"
        assert told >= true - 1e-6
        assert told <= true + math.hypot(wide / 8, high / 2) + 1e-6

    @pytest.mark.parametrize("far_mm", [1, 30, 70])
    @pytest.mark.parametrize("way", [(1, 1), (1, -1), (-1, 1), (-1, -1)])
    @pytest.mark.parametrize("level", [0, 40])
    def test_each_of_its_corners_counts(self, far_mm: int, way: tuple[int, int], level: int) -> None:
        """By hand: a base of 140 x 100 x 40 mm at (300, 200, 300): a keep-out beyond one of its eight corners, so far off along each of
        the two level axes, is nearest to that corner: by Pythagoras the root of 2 times as far."""
        near = [300 + way[0] * (50 + far_mm), 200 + way[1] * (70 + far_mm)]
        far = [value + sign * 20 for value, sign in zip(near, way, strict=True)]
        low, high = ([pick(pair) for pair in zip(near, far, strict=True)] for pick in (min, max))
        box = {"name": "box", "kind": "other", "low_mm": [*low, 295 + level], "high_mm": [*high, 305 + level]}
        site = _Site(pose_at((0.3, 0.2, 0.3)), room_of(ARMREST, keep_out=[box]), "seat", (0.14, 0.10, 0.04))
        assert site.base_clear[True][0] == pytest.approx(math.sqrt(2) * far_mm / 1000, abs=1e-9)


def test_ranking_by_hand() -> None:
    """By hand: a lever of 200 mm with 40 mm clearance costs 220 mm; one of 240 mm on an arm of 260 mm is straighter than 0.8 by
    0.1231 and costs 240 + 16 mm."""
    assert ranked_cost_m(0.200, 0.26, 0.040) == pytest.approx(0.220, abs=1e-12)
    assert ranked_cost_m(0.240, 0.26, math.inf) == pytest.approx(0.256, abs=1e-12)


def test_each_way_tells_where_else_and_what_was_assumed() -> None:
    """A way from a tube carries the stretches of that tube alone, its own place among them, and what was assumed of it."""
    far = {**ARMREST, "name": "far tube", "from_mm": [380, 0, 200], "to_mm": [380, 400, 200]}
    box = {"name": "box", "kind": "other", "low_mm": [-500, 0, 0], "high_mm": [-400, 100, 100]}
    found = one(pose_at((0.3, 0.2, 0.3)), room_of(far, ARMREST, keep_out=[box]))
    for best in found.poses:
        told = tuple((some.from_m, some.to_m) for some in found.ranges if some.clamp == best.clamp)
        assert best.ranges_m == told
        assert any(low <= best.along_m <= high for low, high in told)
        assert best.assumed[0] == message(MountAssumed.thickness, mount="short arm", thick_m=0.02, head_m=0.03)


# --- what an arm carries --------------------------------------------------------------------------------------------------------


def walked(points_m: Any, base_m: tuple[float, float, float], turn_rad: float = 0.0) -> Any:
    """Points along the links, as a base turned about the upright sees them."""
    joints = np.array(points_m)
    points = np.concatenate([a + np.linspace(0, 1, 300)[:, None] * (b - a) for a, b in itertools.pairwise(joints)])
    cos, sin = math.cos(turn_rad), math.sin(turn_rad)
    return (points - base_m) @ np.array([[cos, -sin, 0.0], [sin, cos, 0.0], [0.0, 0.0, 1.0]])


def depth_m(points: Any, low: Any, high: Any) -> float:
    """Least distance of points from a box, minus what half an arm is thick: below 0 they are in each other."""
    return float(np.linalg.norm(points - np.clip(points, low, high), axis=1).min()) - 0.010


class TestWhatItCarries:
    @settings(max_examples=60, deadline=None)
    @given(
        at=st.tuples(st.integers(-200, 200), st.integers(0, 500), st.integers(-150, 450)),
        size=st.tuples(st.integers(30, 150), st.integers(30, 150), st.integers(10, 60)),
        turn=st.integers(-170, 170),
    )
    def test_no_link_enters_the_device_or_crosses_its_face(self, at: Any, size: Any, turn: int) -> None:
        """Law, by walking along the links: wherever the device stands and however it is turned, no point of the arm's middle line is
        nearer than 10 mm to the device, nor to the 40 mm above its contact point where the part works; it ends 30 mm below."""
        base = tuple(value / 1000 for value in at)
        long, wide, high = (value / 1000 for value in size)
        pose = replace(pose_at(base), turn_rad=math.radians(turn))
        for best in one(pose, room_of(ARMREST), LONG, base_m=(long, wide, high)).poses:
            top = max(high, 0.05 + 0.040)
            seen = walked(best.points_m, base, math.radians(turn))
            assert depth_m(seen, [-wide / 2, -long / 2, 0.0], [wide / 2, long / 2, top]) > -1e-9
            assert best.points_m[-1] == pytest.approx((base[0], base[1], base[2] - 0.030), abs=1e-9)

    def test_the_way_over_the_face_is_refused(self) -> None:
        """A tube 250 mm above a switch, a wide keep-out beside and below it all round: only the way down across its face is left.
        Without the device's own body an arm was offered there; now the reason is told."""
        tube = {**ARMREST, "from_mm": [300, 0, 600], "to_mm": [300, 30, 600]}
        walls = [
            {"name": name, "kind": "other", "low_mm": low, "high_mm": high}
            for name, low, high in (
                ("below", [-500, -500, 100], [900, 900, 330]),
                ("left", [-500, -500, 100], [240, 900, 460]),
                ("right", [360, -500, 100], [900, 900, 460]),
                ("front", [-500, 80, 100], [900, 900, 460]),
                ("behind", [-500, -500, 100], [900, -50, 460]),
            )
        ]
        found = one(pose_at((0.3, 0.015, 0.40)), room_of(tube, keep_out=walls), base_m=(0.05, 0.05, 0.02))
        assert found.poses == ()
        assert found.reasons[0].text == "runs_through"

    def test_links_do_not_lie_in_each_other(self) -> None:
        """Between two links of 140 and 120 mm at least 30 degrees stay open, 70 mm from clamp to ball by the cosine rule."""
        short_tube = {**ARMREST, "from_mm": [300, 200, 200], "to_mm": [300, 205, 200]}
        assert one(over((0.3, 0.2, 0.272)), room_of(short_tube)).poses
        near = one(over((0.3, 0.2, 0.265)), room_of(short_tube))
        assert near.poses == ()
        assert near.reasons[0].text == "too_near"

    def test_a_neck_goes_round_its_device(self) -> None:
        """Law, by walking along the neck: from a tube beside and above the device it bends round to the underside; short of the last
        15 mm no point is nearer than 10 mm to the device."""
        neck = Mount.model_validate(
            {"name": "neck", "kind": "gooseneck", "links_mm": [600], "tube_mm": [16, 40], "least_bend_mm": 40}
        )
        tube = {**ARMREST, "from_mm": [300, 100, 420], "to_mm": [300, 300, 420]}
        (best,) = one(pose_at((0.2, 0.2, 0.3)), room_of(tube), neck, base_m=(0.10, 0.10, 0.04)).poses
        seen = walked(best.points_m, (0.2, 0.2, 0.3))
        seen = seen[np.linalg.norm(seen, axis=1) > 0.026]
        assert depth_m(seen, [-0.05, -0.05, 0.0], [0.05, 0.05, 0.09]) > -0.001

    def test_a_measured_ball_counts(self) -> None:
        """A kit that gives 45 mm from ball to base: the arm ends 45 mm below it."""
        measured = SHORT.model_copy(update={"head_m": 0.045})
        assert one(pose_at((0.3, 0.2, 0.345)), room_of(ARMREST), measured).poses[0].points_m[-1] == pytest.approx(
            (0.3, 0.2, 0.3), abs=1e-12
        )
