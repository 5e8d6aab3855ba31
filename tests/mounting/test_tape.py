"""A point from tape distances."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from said import place, said
from stickwright.errors import BadInput
from stickwright.mounting.tape import TapePoint, taped_point

BOLT, FRONT, BACK, HIGH = (0.25, 0.0, 0.2), (0.25, 0.4, 0.2), (-0.25, 0.1, 0.2), (0.0, -0.1, 0.7)
NAMES = dict(zip(("bolt", "front", "left bolt", "head rest"), (BOLT, FRONT, BACK, HIGH), strict=True))
COORDINATE = st.floats(-0.6, 0.6)


def tapes(point: tuple[float, float, float], *names: str, off_m: float = 0.0) -> list[TapePoint]:
    """Exact distances to some landmarks, the last one off by so much."""
    found = [TapePoint(name, NAMES[name], math.dist(NAMES[name], point)) for name in names]
    last = found[-1]
    return [*found[:-1], TapePoint(last.landmark, last.at_m, last.distance_m + off_m)]


def test_three_distances_by_hand() -> None:
    """By hand: 3-4-5 triangles about landmarks on two axes put the point 400 mm above or below (0.3, 0, 0)."""
    told = [
        TapePoint("a", (0.0, 0.0, 0.0), 0.5), TapePoint("b", (0.6, 0.0, 0.0), 0.5), TapePoint("c", (0.3, 0.3, 0.0), 0.5)
    ]  # fmt: skip
    found = taped_point(told)
    assert found.points_m == (pytest.approx((0.3, 0.0, 0.4), abs=1e-7), pytest.approx((0.3, 0.0, -0.4), abs=1e-7))
    assert math.isnan(found.residual_m)
    assert [finding.level for finding in found.findings] == ["query"]
    assert "two answers, 800 mm apart" in said(found.findings[0].text)
    assert "one more landmark" in said(found.findings[0].text)


@given(point=st.tuples(COORDINATE, COORDINATE, COORDINATE))
def test_a_fourth_distance_picks_the_point(point: tuple[float, float, float]) -> None:
    """Law: four exact distances give the point back, with nothing left over and nothing to ask."""
    assume(min(math.dist(point, at) for at in NAMES.values()) > 0.05)
    found = taped_point(tapes(point, *NAMES))
    assert found.points_m == (pytest.approx(point, abs=1e-5),)
    assert found.residual_m == pytest.approx(0.0, abs=1e-6)
    assert found.findings == ()


@given(point=st.tuples(COORDINATE, COORDINATE, st.floats(0.3, 0.8)))
def test_the_true_point_is_one_of_two(point: tuple[float, float, float]) -> None:
    """Law: of the two answers of three exact distances one is the point, the other its mirror image in the plane."""
    found = taped_point(tapes(point, "bolt", "front", "left bolt"))
    assert found.points_m[0] == pytest.approx(point, abs=1e-5)
    assert found.points_m[1] == pytest.approx((point[0], point[1], 0.4 - point[2]), abs=1e-5)


def test_a_distance_that_is_off_is_asked_about() -> None:
    """A fourth distance 120 mm too long: one of these is off, and by more than 20 mm."""
    found = taped_point(tapes((0.1, 0.3, 0.4), *NAMES, off_m=0.120))
    assert found.residual_m > 0.020
    assert [finding.level for finding in found.findings] == ["query"]
    told = found.findings[0].text
    assert (told.text, "head rest" in told.param("landmarks")) == ("tapes_disagree", True)


def test_a_tape_that_is_a_little_off_is_not_asked_about() -> None:
    """8 mm is what a tape does: no question, and a residual of less than that."""
    found = taped_point(tapes((0.1, 0.3, 0.4), *NAMES, off_m=0.008))
    assert 0.0 < found.residual_m < 0.008
    assert found.findings == ()


def test_a_fourth_landmark_in_the_plane_picks_nothing() -> None:
    """A fourth landmark level with the other three leaves both answers, and says why."""
    told = [*tapes((0.1, 0.3, 0.4), "bolt", "front", "left bolt")]
    told.append(TapePoint("left front", (-0.25, 0.4, 0.2), math.dist((-0.25, 0.4, 0.2), (0.1, 0.3, 0.4))))
    found = taped_point(told)
    assert len(found.points_m) == 2
    assert "lie in one plane" in said(found.findings[0].text)
    assert found.residual_m == pytest.approx(0.0, abs=1e-6)


def test_distances_that_miss_each_other() -> None:
    """400 mm apart, 150 and 170 mm of tape: they miss by 80 mm, and the sentence says so."""
    told = [TapePoint("bolt", BOLT, 0.150), TapePoint("front", FRONT, 0.170), TapePoint("left bolt", BACK, 0.5)]
    with pytest.raises(BadInput) as refused:
        taped_point(told, "room.toml, place 'chin'")
    problem = refused.value.problems[0]
    assert place(problem) == "room.toml, place 'chin'"
    assert said(problem.found) == "150 mm from 'bolt' and 170 mm from 'front', which are 400 mm apart"
    assert said(problem.remedy).startswith("They miss each other by 80 mm")


def test_a_distance_that_is_too_long_for_another() -> None:
    """Landmarks 400 mm apart cannot be 100 and 600 mm away: 100 mm too long."""
    told = [TapePoint("bolt", BOLT, 0.100), TapePoint("front", FRONT, 0.600), TapePoint("left bolt", BACK, 0.5)]
    with pytest.raises(BadInput) as refused:
        taped_point(told)
    assert "100 mm too long for the other" in said(refused.value.problems[0].remedy)


def test_three_that_meet_two_by_two_but_not_all() -> None:
    """Equal triangle of 600 mm: the middle is 346 mm from each corner, so 301 mm of tape from each misses it by 45 mm."""
    corners = [(0.0, 0.0, 0.0), (0.6, 0.0, 0.0), (0.3, 0.3 * math.sqrt(3), 0.0)]
    told = [TapePoint(name, at, 0.301) for name, at in zip("abc", corners, strict=True)]
    with pytest.raises(BadInput) as refused:
        taped_point(told)
    (problem,) = refused.value.problems
    assert said(problem.expected) == "three distances that meet in a point"
    assert "miss the nearest point by 45 mm" in said(problem.remedy)


@pytest.mark.parametrize(
    ("landmarks", "found"),
    [
        ([BOLT, FRONT], "2 tape distances"),
        ([BOLT, FRONT, BOLT], "2 different landmarks"),
        ([BOLT, FRONT, (0.25, 0.8, 0.2)], "in one line"),
    ],
)
def test_landmarks_that_cannot_fix_a_point(landmarks: list[tuple[float, float, float]], found: str) -> None:
    """Two landmarks, one given twice, three in a line: refused, with the landmark that is missing."""
    told = [TapePoint(f"mark {k}", at, math.dist(at, (0.2, 0.2, 0.4))) for k, at in enumerate(landmarks)]
    with pytest.raises(BadInput) as refused:
        taped_point(told)
    (problem,) = refused.value.problems
    assert found in said(problem.found)
    assert "not in one line" in said(problem.expected)
    assert "landmark" in said(problem.remedy)


def test_more_distances_average_out() -> None:
    """Law: least squares lies between; six landmarks with 5 mm errors either way leave less than 5 mm in the point's mean."""
    rng = np.random.default_rng(3)
    point = np.array([0.1, 0.3, 0.4])
    marks = rng.uniform(-0.6, 0.6, (6, 3))
    off = []
    for _ in range(20):
        wrong = rng.choice([-0.005, 0.005], 6)
        told = [
            TapePoint(f"{k}", tuple(map(float, at)), float(np.linalg.norm(at - point) + wrong[k]))
            for k, at in enumerate(marks)
        ]
        off.append(np.subtract(taped_point(told).points_m[0], point))
    assert np.abs(np.mean(off, axis=0)).max() < 0.005


@pytest.mark.parametrize("moved", [(-3.0, 2.0, -1.0), (0.0, 0.0, -2.5), (4.0, 0.5, 0.0)])
@pytest.mark.parametrize("names", [("bolt", "front", "left bolt"), tuple(NAMES)])
def test_law_another_origin_moves_the_answer_along(moved: tuple[float, float, float], names: tuple[str, ...]) -> None:
    """Landmarks told from a wall metres away: the same answers, so much further on."""
    here = tapes((0.1, 0.3, 0.4), *names)
    there = [TapePoint(one.landmark, tuple((np.array(one.at_m) + moved).tolist()), one.distance_m) for one in here]
    back = [np.array(point) - moved for point in taped_point(there).points_m]
    assert len(back) == len(taped_point(here).points_m)
    for one, other in zip(back, taped_point(here).points_m, strict=True):
        assert one == pytest.approx(other, abs=1e-5)
