"""An arm of links: which points it reaches, how its joints then stand, and how that is said."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from said import said
from stickwright.codes.joint_settings import JointSettings
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.mounting.arm import (
    JointAngles,
    forward,
    inverse,
    joint_angles,
    joints_in_words,
    reaches,
    too_short_m,
)

COORDINATE = st.floats(-1.0, 1.0)
POINT = st.tuples(COORDINATE, COORDINATE, COORDINATE)
LINK = st.floats(0.05, 0.4)
SWIVEL = st.floats(-3.1, 3.1)


@st.composite
def reached(draw: st.DrawFn) -> tuple[np.ndarray, np.ndarray, tuple[float, float], float]:
    """A clamp, an end that an arm reaches from there, its links and a swivel."""
    links = draw(LINK), draw(LINK)
    clamp = np.array(draw(POINT))
    way = np.array(draw(POINT))
    assume(np.linalg.norm(way) > 0.1)
    near, far = abs(links[0] - links[1]), 0.9 * sum(links)
    distance = near + draw(st.floats(0.02, 1.0)) * (far - near)
    assume(distance > 1e-3)
    return clamp, clamp + way / np.linalg.norm(way) * distance, links, draw(SWIVEL)


@given(case=reached())
def test_forward_undoes_inverse(case: tuple) -> None:
    """Law: joints read off an arm that ends at a point put the arm's end, and its elbow, back there to 1e-9."""
    clamp, end, links, swivel = case
    points = inverse(clamp, end, links, swivel)
    assert forward(clamp, links, joint_angles(points)) == pytest.approx(np.array(points), abs=1e-9)
    assert points[2] == pytest.approx(end, abs=1e-12)
    assert math.dist(points[0], points[1]) == pytest.approx(links[0], abs=1e-9)
    assert math.dist(points[1], points[2]) == pytest.approx(links[1], abs=1e-9)


@given(
    clamp=POINT, links=st.tuples(LINK, LINK), azimuth=SWIVEL, elevation=st.floats(-1.4, 1.4), roll=SWIVEL,
    bend=st.floats(0.05, 3.0),
)  # fmt: skip
def test_joints_are_read_as_they_were_set(
    clamp: tuple, links: tuple[float, float], azimuth: float, elevation: float, roll: float, bend: float
) -> None:
    """Law: joints read off an arm are the joints it was set to."""
    found = joint_angles(forward(clamp, links, JointAngles(azimuth, elevation, roll, bend)))
    assert (found.azimuth_rad, found.elevation_rad, found.roll_rad, found.bend_rad) == pytest.approx(
        (azimuth, elevation, roll, bend), abs=1e-6
    )


@given(case=reached(), by=POINT, turn=SWIVEL)
def test_moving_everything_together_changes_nothing(case: tuple, by: tuple, turn: float) -> None:
    """Law: room and player carried elsewhere and turned about the vertical, the arm goes with them."""
    clamp, end, links, swivel = case
    assume(math.hypot(*(end - clamp)[:2]) > 1e-3)
    carried = Rotation.from_euler("z", turn)
    points = np.array(inverse(carried.apply(clamp) + by, carried.apply(end) + by, links, swivel))
    assert points == pytest.approx(carried.apply(np.array(inverse(clamp, end, links, swivel))) + by, abs=1e-9)


@given(case=reached())
def test_a_mirrored_room_gives_the_mirrored_arm(case: tuple) -> None:
    """Law: left and right exchanged, the elbow swivelled the other way lies at the mirror image."""
    clamp, end, links, swivel = case
    assume(math.hypot(*(end - clamp)[:2]) > 1e-3)
    mirror = np.array([-1.0, 1.0, 1.0])
    assert np.array(inverse(clamp * mirror, end * mirror, links, -swivel)) == pytest.approx(
        np.array(inverse(clamp, end, links, swivel)) * mirror, abs=1e-9
    )


@given(links=st.tuples(LINK, LINK), factor=st.floats(1.0, 3.0), distance=st.floats(0.0, 2.0))
def test_a_longer_arm_loses_nothing_but_what_it_cannot_fold_to(
    links: tuple[float, float], factor: float, distance: float
) -> None:
    """Law: an arm with both links so many times as long reaches all that the shorter one did, save points nearer to the clamp
    than the difference of its own links."""
    longer = tuple(factor * link for link in links)
    if reaches(distance, links):
        assert reaches(distance, longer) == (distance >= abs(longer[0] - longer[1]))
        assert too_short_m(distance, longer) <= too_short_m(distance, links)


@given(link=LINK, longer=LINK, distance=st.floats(0.0, 1.0))
def test_equal_links_and_goosenecks_lose_nothing(link: float, longer: float, distance: float) -> None:
    """Law: with equal links, or one that bends anywhere, a longer arm never loses a point."""
    short, long = sorted((link, longer))
    assert bool(reaches(distance, (long, long))) >= bool(reaches(distance, (short, short)))
    assert bool(reaches(distance, (long,))) >= bool(reaches(distance, (short,)))


def test_limits_by_hand() -> None:
    """By hand: links of 220 and 140 mm reach from 80 mm to 324 mm; a gooseneck of 350 mm up to 315 mm."""
    distance = np.array([0.0795, 0.0805, 0.3235, 0.3245])
    assert reaches(distance, (0.22, 0.14)).tolist() == [False, True, True, False]
    assert reaches(np.array([0.01, 0.3145, 0.3155]), (0.35,)).tolist() == [True, True, False]


def test_too_short_by_hand() -> None:
    """By hand: 360 mm away, links of 220 and 140 mm: 400 mm are wanted, 40 mm too short."""
    assert too_short_m(0.360, (0.22, 0.14)) == pytest.approx(0.040, abs=1e-12)
    assert too_short_m(0.300, (0.22, 0.14)) == 0.0


@pytest.mark.parametrize(
    ("end", "links", "found", "remedy"),
    [
        ((0.4, 0.0, 0.0), (0.22, 0.14), "400 mm from clamp to end", "The arm is 84 mm too short from here"),
        ((0.05, 0.0, 0.0), (0.22, 0.14), "50 mm from clamp to end", "Move the clamp further away."),
        ((0.0, 0.0, 0.0), (0.2, 0.2), "0 mm from clamp to end", "Move the clamp further away."),
        ((0.2, 0.0, 0.0), (0.35,), "1 link", ""),
    ],
)
def test_what_cannot_be_reached_is_refused(end: tuple, links: tuple, found: str, remedy: str) -> None:
    """Too far (400/0.9 - 360 mm = 84 mm too short), too near, and an arm without an elbow: each in a sentence."""
    with pytest.raises(BadInput) as refused:
        inverse((0.0, 0.0, 0.0), end, links)
    (problem,) = refused.value.problems
    assert said(problem.found) == found
    assert said(problem.remedy).startswith(remedy)


def test_upright_arm() -> None:
    """By hand: links of 60 and 80 mm over 100 mm make a right angle, so the elbow lies 36 mm up and 48 mm out, in front."""
    _, elbow, _ = inverse((0.0, 0.0, 0.0), (0.0, 0.0, 0.1), (0.06, 0.08))
    assert elbow == pytest.approx((0.0, 0.048, 0.036), abs=1e-12)
    points = ((0.0, 0.0, 0.0), (0.0, 0.0, 0.1), (0.1, 0.0, 0.1))
    assert forward(points[0], (0.1, 0.1), joint_angles(points)) == pytest.approx(np.array(points), abs=1e-12)


def test_clock() -> None:
    """Twelve ahead, three right, six behind, nine left; half hours between: as a level link is told."""
    told = {
        90: "12 o'clock",
        0: "3 o'clock",
        -90: "6 o'clock",
        180: "9 o'clock",
        45: "half past 1",
        75: "half past 12",
        97: "12 o'clock",
    }
    for degrees, hour in told.items():
        level = message(JointSettings.lower_link, azimuth_rad=math.radians(degrees), elevation_rad=0.0)
        assert said(level) == f"points to {hour} seen from above, level"


def test_joints_in_words() -> None:
    """By hand: lower link forward and 30 degrees up, upper link to the left and level: the elbow is bent by arccos 0 = 90."""
    lower = 0.2 * np.array([0.0, math.cos(math.radians(30)), 0.5])
    points = ((0.0, 0.0, 0.0), tuple(lower), tuple(lower + np.array([-0.1, 0.0, 0.0])))
    words = [
        said(joint.words) for joint in joints_in_words(points, turn_rad=math.radians(30), tilt_rad=math.radians(-10))
    ]
    assert words == [
        "points to 12 o'clock seen from above, 30° up",
        "bent 90°, upper link points to 9 o'clock seen from above, level",
        "tilted 10° away from the player, its front to 11 o'clock",
    ]


def test_an_upright_link_has_no_clock() -> None:
    """A link that stands upright points nowhere on a clock."""
    points = ((0.0, 0.0, 0.0), (0.0, 0.0, 0.1), (0.1, 0.0, 0.0))
    assert said(joints_in_words(points)[0].words) == "points straight up"
