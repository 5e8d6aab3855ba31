"""Where a base must be so that the contact point lies where the part rests."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import place, said
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.errors import BadInput
from stickwright.model.player import PARTS, Site
from stickwright.model.room import Room
from stickwright.mounting.pose import TOLERANCE_RAD, Placed, placed, pose_of, tolerance_m, whole_turn_rad
from stickwright.mounting.usual_places import side_of, usual_place
from stickwright.tuning.rotation_calibration import bearing

EIGHT = np.arange(8) * math.pi / 4
CHIN = Site(name="chin", part="chin")
LENGTH = st.floats(0.003, 0.12)


def at_chin(forward_rad: float = 0.0) -> Placed:
    return Placed((0.0, 0.2, 0.6), forward_rad, None, "seat")


class TestPose:
    def test_level(self) -> None:
        """By hand: an upright stick stands below the contact point by base and lever, 35 + 24 mm."""
        pose = pose_of(CHIN, at_chin(), base_height_m=0.035, contact_height_m=0.024)
        assert pose.base_m == pytest.approx((0.0, 0.2, 0.541), abs=1e-12)
        assert (pose.contact_m, pose.turn_rad, pose.tilt_rad, pose.assumed) == ((0.0, 0.2, 0.6), 0.0, 0.0, ())

    def test_tilted_towards_the_player(self) -> None:
        """By hand: 100 mm tilted by 30 degrees leans back by 50 mm, so the base lies 50 mm further forward, 87 mm lower."""
        pose = pose_of(CHIN, at_chin(), base_height_m=0.06, contact_height_m=0.04, tilt_rad=math.radians(30))
        assert pose.base_m == pytest.approx((0.0, 0.25, 0.6 - 0.0866), abs=5e-5)

    def test_turned(self) -> None:
        """By hand: turned a quarter to the left, its towards-the-player is to the right: the base lies 50 mm to the left."""
        pose = pose_of(CHIN, at_chin(math.pi / 2), base_height_m=0.1, contact_height_m=0.0, tilt_rad=math.radians(30))
        assert pose.base_m == pytest.approx((-0.05, 0.2, 0.6 - 0.0866), abs=5e-5)

    def test_a_slope_of_its_own_leans_the_lever_alone(self) -> None:
        """By hand: a level base of 60 mm whose lever of 40 mm slopes by 90 degrees has its contact 40 mm behind, 60 mm above."""
        pose = pose_of(CHIN, at_chin(), base_height_m=0.06, contact_height_m=0.04, own_slope_rad=math.pi / 2)
        assert pose.base_m == pytest.approx((0.0, 0.24, 0.54), abs=1e-12)

    def test_an_unknown_base_height_is_marked(self) -> None:
        """A base nobody measured counts as flat, and the pose says so."""
        pose = pose_of(CHIN, at_chin(), base_height_m=None, contact_height_m=0.024)
        assert pose.base_m == pytest.approx((0.0, 0.2, 0.576), abs=1e-12)
        assert pose.assumed[0] == message(MountAssumed.base_height, site="chin")

    @given(turn=st.floats(-3.0, 3.0), tilt=st.floats(-1.0, 1.0), height=LENGTH)
    def test_mirrored(self, turn: float, tilt: float, height: float) -> None:
        """Law: mirrored left to right, the pose is mirrored."""
        right = pose_of(CHIN, at_chin(turn), base_height_m=height, contact_height_m=0.03, tilt_rad=tilt)
        left = pose_of(CHIN, at_chin(-turn), base_height_m=height, contact_height_m=0.03, tilt_rad=tilt)
        assert np.multiply(left.base_m, (-1, 1, 1)) == pytest.approx(right.base_m, abs=1e-12)


class TestTolerance:
    def test_a_tenth_of_a_push(self) -> None:
        """Turned by 25.84 degrees a push counts 0.9: arccos 0.9 by a table of cosines."""
        assert math.degrees(TOLERANCE_RAD) == pytest.approx(25.84, abs=0.005)

    def test_four_equal_reaches(self) -> None:
        """By hand: reaches of 10 mm four ways span a square on its corner; moved square to a side by x, a corner's way shortens
        by x times the root of 2: 0.71 mm."""
        assert tolerance_m(np.arange(4) * math.pi / 2, [0.010] * 4) == pytest.approx(0.00070711, abs=5e-9)

    def test_eight_equal_reaches(self) -> None:
        """By hand: eight ways, side and corner 22.5 degrees apart: a tenth times cos 22.5 degrees."""
        assert tolerance_m(EIGHT, [0.010] * 8) == pytest.approx(0.001 * math.cos(math.radians(22.5)), abs=5e-9)

    def test_a_light_hand_needs_half_a_millimetre(self) -> None:
        """A weakest reach of 5 mm, its neighbours 7 and 6: about a tenth of the weakest, 0.5 mm, and never more."""
        reach = np.array([9, 7, 5, 6, 10, 9, 8, 9]) / 1000
        assert 0.00040 < tolerance_m(EIGHT, reach) <= 0.0005

    @given(reach=st.lists(LENGTH, min_size=8, max_size=8), angle=st.floats(0.0, 6.28))
    def test_no_displacement_so_small_costs_a_tenth(self, reach: list[float], angle: float) -> None:
        """Law, by walking: displaced by 0.999 of the tolerance any way, no direction keeps less than 0.9 of its reach."""
        given_reach = np.array(reach)
        at = 0.999 * tolerance_m(EIGHT, given_reach) * np.array([math.cos(angle), math.sin(angle)])
        corners = given_reach[:, None] * np.stack([np.cos(EIGHT), np.sin(EIGHT)], axis=1)
        for k in range(8):
            point = at + 0.8995 * corners[k]
            bearing = math.atan2(point[1], point[0]) % (2 * math.pi)
            one = int(bearing // (math.pi / 4)) % 8
            a, b = corners[one], corners[(one + 1) % 8]
            inside = (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])
            assert inside >= -1e-9

    @given(reach=st.lists(LENGTH, min_size=4, max_size=8), turn=st.floats(0.0, 6.2), factor=st.floats(0.2, 5.0))
    def test_scales_and_turns(self, reach: list[float], turn: float, factor: float) -> None:
        """Law: reaches so many times as long allow so many times the displacement; turning them all changes little (the
        displacements tried are 2 degrees apart)."""
        angles = np.arange(len(reach)) * 2 * math.pi / len(reach)
        one = tolerance_m(angles, reach)
        assert tolerance_m(angles, np.multiply(reach, factor)) == pytest.approx(one * factor, rel=1e-6)
        assert tolerance_m(angles + turn, reach) == pytest.approx(one, rel=2e-3)

    def test_few_directions(self) -> None:
        """One or two directions: a tenth of the shorter; none: not known."""
        assert tolerance_m([0.0, math.pi], [0.030, 0.020]) == pytest.approx(0.002, abs=1e-12)
        assert tolerance_m([0.0, 0.5, 1.0], [0.030, 0.020, 0.04]) == pytest.approx(0.002, abs=1e-12)
        assert math.isnan(tolerance_m([], []))


class TestPlaced:
    ROOM = Room.model_validate(
        {
            "seat_to_armrest_mm": 230, "armrest_front_mm": 400, "armrests_apart_mm": 480,
            "landmark": [
                {"name": "bolt", "at_mm": [250, 0, 200]}, {"name": "front", "at_mm": [250, 400, 200]},
                {"name": "left bolt", "at_mm": [-250, 100, 200]}, {"name": "table", "at_mm": [0, 600, 150], "moves_with": "room"},
            ],
        }
    )  # fmt: skip

    def with_place(self, **place: object) -> Room:
        return Room.model_validate({**self.ROOM.model_dump(), "place": [{"site": "right hand", **place}]})

    HAND = Site(name="right hand", part="hand", movement_tilt_deg=12)

    def test_measured(self) -> None:
        """A measured point stands as it is, with its own turn; the slope comes from the player's file when the room has none."""
        found = placed(self.HAND, self.with_place(at_mm=[260, 380, 250], forward_deg=20, moves_with="room"))
        assert found is not None
        assert found.at_m == pytest.approx((0.26, 0.38, 0.25), abs=1e-12)
        assert found.forward_rad == pytest.approx(math.radians(20), abs=1e-12)
        assert found.slope_rad == pytest.approx(math.radians(12), abs=1e-12)
        assert (found.moves_with, found.assumed, found.findings) == ("room", (), ())

    def test_three_tapes_take_the_likelier_side(self) -> None:
        """Three distances: of the two answers the one nearer to where a hand rests is taken, marked, and asked about."""
        at = (0.2, 0.35, 0.26)
        tape = [{"landmark": name, "distance_m": math.dist(at, mark)} for name, mark in self.marks()[:3]]
        found = placed(self.HAND, self.with_place(tape=tape))
        assert found is not None
        assert found.at_m == pytest.approx(at, abs=1e-6)
        assert found.assumed == (message(MountAssumed.tape, site="right hand", by="usual"),)
        assert len(found.findings) == 1

    def marks(self) -> list[tuple[str, tuple[float, float, float]]]:
        return [(mark.name, mark.at_m) for mark in self.ROOM.landmark]

    def test_a_fourth_tape_from_the_table(self) -> None:
        """A fourth distance settles it; taken from a table while the chair tilts, it is asked whether the seat was level."""
        at = (0.2, 0.35, 0.26)
        tape = [{"landmark": name, "distance_m": math.dist(at, mark)} for name, mark in self.marks()]
        room = self.with_place(tape=tape).model_copy(update={"tilt_to_rad": 0.3})
        found = placed(self.HAND, room)
        assert found is not None
        assert found.at_m == pytest.approx(at, abs=1e-6)
        assert found.assumed == ()
        assert [finding.text.text for finding in found.findings] == ["seat_level"]

    def test_an_unknown_landmark(self) -> None:
        """A landmark the room does not name is refused with the nearest name."""
        tape = [{"landmark": name, "distance_mm": 300} for name in ("bolt", "frunt", "left bolt")]
        with pytest.raises(BadInput) as refused:
            placed(self.HAND, self.with_place(tape=tape))
        (problem,) = refused.value.problems
        assert (place(problem), said(problem.found)) == ("room.toml, place 'right hand'", "landmark 'frunt'")
        assert said(problem.remedy) == "Did you mean 'front'?"

    def test_nothing_said(self) -> None:
        """No place: the front end of the armrest, 240 mm to the right, 400 mm forward, 230 mm up, marked with what to measure."""
        found = placed(self.HAND, self.ROOM)
        assert found is not None
        assert found.at_m == pytest.approx((0.24, 0.4, 0.23), abs=1e-12)
        assert "the place of the right hand was not measured: taken at the front end of the armrest. Measure" in said(
            found.assumed[0]
        )


class TestUsualPlace:
    def test_published_medians_by_hand(self) -> None:
        """[gordon-2014], halfway between men and women, by hand: hand at 459 - 186.5 + 56 mm forward, 239.5 mm up,
        (535.5 - 83)/2 mm aside."""
        found = usual_place(Site(name="left hand", part="hand"), Room())
        assert found is not None
        assert found.at_m == pytest.approx((-0.22625, 0.3285, 0.2395), abs=1e-9)
        assert "published body sizes" in said(found.assumed[0])

    def test_chin_below_eyes_as_crown_above(self) -> None:
        """By hand: seated 887.5, eyes 776 mm: the face is 111.5 mm, so the chin is 664.5 mm up; measured eyes carry it along."""
        found = usual_place(CHIN, Room())
        assert found is not None
        assert found.at_m[2] == pytest.approx(0.6645, abs=1e-9)
        measured = usual_place(CHIN, Room(seat_to_chin_mm=600))
        assert measured is not None
        assert measured.at_m[2] == pytest.approx(0.600, abs=1e-9)

    def test_foot_and_knee(self) -> None:
        """By hand: the sole 408.5 mm below the seat; the knee's front 603 mm forward and 123 mm above the seat."""
        toe = usual_place(Site(name="right toe", part="toe"), Room())
        knee = usual_place(Site(name="right knee", part="knee"), Room())
        assert toe is not None
        assert knee is not None
        assert toe.at_m[1:] == pytest.approx((0.4925 + 0.2585, -0.4085), abs=1e-9)
        assert knee.at_m[1:] == pytest.approx((0.603, 0.123), abs=1e-9)

    def test_nothing_sensible(self) -> None:
        """No word in a bed, for a limb of unknown side, or for parts that lie as they are supported."""
        hand = Site(name="right hand", part="hand")
        assert usual_place(hand, Room(posture="bed")) is None
        assert usual_place(Site(name="fist", part="hand"), Room()) is None
        for part in ("elbow", "shoulder", "lip", "cheek", "tongue", "thigh", "trunk"):
            assert usual_place(Site(name=f"right {part}", part=part), Room()) is None

    @pytest.mark.parametrize("part", PARTS)
    def test_left_mirrors_right(self, part: str) -> None:
        """Law: what is said of a right part is said of the left one, mirrored."""
        found = [
            usual_place(Site.model_validate({"name": "it", "part": part, "side": side}), Room())
            for side in ("left", "right")
        ]
        if found[0] is None:
            assert found[1] is None
            return
        assert found[1] is not None
        assert np.multiply(found[0].at_m, (-1, 1, 1)) == pytest.approx(found[1].at_m, abs=1e-12)

    def test_side_by_word_and_by_name(self) -> None:
        """The side said wins over the name; 'left-right' tells no side."""
        assert side_of(Site(name="left thumb", part="thumb", side="right")) == "right"
        assert side_of(Site(name="left-right switch", part="thumb")) is None


@given(points=st.floats(-60, 60), stood=st.floats(-60, 60))
def test_where_the_stick_stood_does_not_matter_when_it_is_told(points: float, stood: float) -> None:
    """The player's own forward points somewhere; the stick stood turned otherwise when the pushes were recorded, and the place
    says how. A push asked for at c comes out at c + points - stood on the stick's own axes; place and recording together turn
    the base to where the player points, whatever it stood at."""
    off = points - stood
    if abs(off) < 8 or abs(abs(off) - 90) < 25:
        return  # not worth a turn, or a quarter turn: another advice
    cued = np.radians(np.arange(0, 360, 45))
    scatter = np.radians([0.5, -0.5, 0.3, -0.3, 0.2, -0.2, 0.1, -0.1])
    turn = bearing(cued + math.radians(off) + scatter, cued).turn_base_rad
    assert turn is not None
    assert math.degrees(whole_turn_rad(math.radians(stood), turn)) == pytest.approx(points, abs=0.01)


def test_both_parts_of_a_turn_are_told() -> None:
    """10 degrees of the place and 13 of the recordings, the same way round: 23, with what is taken for granted; the other way
    round: 3 clockwise. Of a place that points straight ahead, the recordings' part alone."""
    site = Site(name="chin", part="chin")

    def turned(forward: float, found: float) -> tuple[float, str]:
        recorded = Estimate(*(math.radians(found + by) for by in (0, -3, 3)))
        pose = pose_of(
            site, at_chin(math.radians(forward)), base_height_m=0.03, contact_height_m=0.02, recorded_turn=recorded
        )
        assert pose.turn_words is not None
        return round(math.degrees(pose.turn_rad), 6), said(pose.turn_words)

    assert turned(10, 13) == (
        23,
        "This turn is made up of 10° anticlockwise, the way that the chin points, and 13° anticlockwise (10 to 16°) because the "
        "recorded pushes came out turned. The stick at the chin is assumed to have stood at those 10° when they were recorded; if it "
        "stood straight ahead, 13° anticlockwise is all. Once it stands right, enter forward_deg = 23 for the place and replace these "
        "recordings with new ones.",
    )
    turn, words = turned(10, -13)
    assert turn == -3
    assert "and 13° clockwise (10 to 16°)" in words
    turn, words = turned(-10, 4)
    assert turn == -6
    assert "stood at those 10° when they were recorded" in words
    turn, words = turned(0, 13)
    assert turn == 13
    assert "assumed to have stood straight ahead when they were recorded. Once" in words
    assert pose_of(site, at_chin(0.2), base_height_m=0.03, contact_height_m=0.02).turn_words is None


def test_a_turned_base_moves_with_its_tilt() -> None:
    """Raised by 30 degrees towards a player who points a quarter turn to the left: the base lies to the right of the contact
    point by h sin 30 = 25 mm, whether the place or the recordings tell the turn."""
    site, quarter = Site(name="chin", part="chin"), math.pi / 2
    tilted = {"base_height_m": 0.03, "contact_height_m": 0.02, "tilt_rad": math.radians(30)}
    told = pose_of(site, at_chin(quarter), **tilted)
    recorded = pose_of(site, at_chin(), recorded_turn=Estimate(quarter, quarter - 0.1, quarter + 0.1), **tilted)
    assert recorded.base_m == pytest.approx(told.base_m)
    assert abs(recorded.base_m[0] - recorded.contact_m[0]) == pytest.approx(0.025)
