"""Arms of two links against textbooks and general-purpose libraries."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.optimize import least_squares, minimize
from scipy.spatial.transform import Rotation

from stickwright.mounting.arm import JointAngles, forward, inverse, joint_angles
from stickwright.mounting.clearance import segment_box_m
from stickwright.mounting.tape import TapePoint, taped_point

LINKS = (0.22, 0.20)


def test_cosine_rule_by_hand() -> None:
    """Cosine rule, any school book, by hand: links 50 and 70 over 80 mm bend at the elbow by 180 degrees less
    arccos((50^2 + 70^2 - 80^2)/(2 x 50 x 70)) = 180 - 81.79 = 98.21 degrees; the lower link stands 60 degrees over the line."""
    points = inverse((0.0, 0.0, 0.0), (0.08, 0.0, 0.0), (0.05, 0.07))
    found = joint_angles(points)
    assert math.degrees(found.bend_rad) == pytest.approx(98.21, abs=0.005)
    assert math.degrees(found.elevation_rad) == pytest.approx(60.0, abs=0.005)


@pytest.mark.parametrize("seed", range(5))
def test_planar_closed_form(seed: int) -> None:
    """[craig-2005], planar arm of two links, closed form (from memory): cos theta2 = (x^2 + y^2 - l1^2 - l2^2)/(2 l1 l2),
    theta1 = atan2(y, x) - atan2(l2 sin theta2, l1 + l2 cos theta2), in the upright plane through clamp and end."""
    rng = np.random.default_rng(seed)
    way, up = rng.uniform(0.05, 0.25), rng.uniform(-0.2, 0.25)
    bearing = rng.uniform(-math.pi, math.pi)
    l1, l2 = LINKS
    theta2 = -math.acos((way**2 + up**2 - l1**2 - l2**2) / (2 * l1 * l2))  # elbow up
    theta1 = math.atan2(up, way) - math.atan2(l2 * math.sin(theta2), l1 + l2 * math.cos(theta2))
    end = (way * math.cos(bearing), way * math.sin(bearing), up)
    points = inverse((0.0, 0.0, 0.0), end, LINKS)
    level = l1 * math.cos(theta1)
    told = (level * math.cos(bearing), level * math.sin(bearing), l1 * math.sin(theta1))
    assert points[1] == pytest.approx(told, abs=1e-9)
    assert joint_angles(points).bend_rad == pytest.approx(-theta2, abs=1e-9)


@pytest.mark.parametrize("seed", range(5))
def test_chain_of_rotations(seed: int) -> None:
    """scipy.spatial.transform.Rotation [scipy-2020] as a second route: azimuth about the vertical, elevation about the level
    axis to the left turned upwards, roll about the link, bend about the hinge."""
    rng = np.random.default_rng(seed)
    azimuth, elevation, roll, bend = [*rng.uniform(-1.4, 1.4, 3), rng.uniform(0.1, 3.0)]
    ball = Rotation.from_euler("z", azimuth) * Rotation.from_euler("y", -elevation) * Rotation.from_euler("x", roll)
    elbow = ball.apply([LINKS[0], 0.0, 0.0])
    end = elbow + (ball * Rotation.from_euler("z", bend)).apply([LINKS[1], 0.0, 0.0])
    found = forward((0.0, 0.0, 0.0), LINKS, JointAngles(azimuth, elevation, roll, bend))
    assert found == pytest.approx(np.array([[0, 0, 0], elbow, end]), abs=1e-12)


@pytest.mark.parametrize("seed", range(5))
def test_numerical_inverse(seed: int) -> None:
    """scipy.optimize.least_squares [scipy-2020] as a second route: an elbow at the two links' lengths and in the upright plane
    above the line, found without any closed form, lies where ours does."""
    rng = np.random.default_rng(seed)
    clamp = rng.uniform(-0.5, 0.5, 3)
    way = rng.normal(size=3)
    end = clamp + rng.uniform(0.1, 0.37) * way / np.linalg.norm(way)
    upright = np.cross(end - clamp, [0.0, 0.0, 1.0])
    upright /= np.linalg.norm(upright)

    def off(elbow: np.ndarray) -> list[float]:
        return [
            float(np.linalg.norm(elbow - clamp)) - LINKS[0], float(np.linalg.norm(elbow - end)) - LINKS[1],
            float((elbow - clamp) @ upright),
        ]  # fmt: skip

    start = 0.5 * (clamp + end) + [0.0, 0.0, 0.3]
    numerical = least_squares(off, start, xtol=1e-15, ftol=1e-15, gtol=1e-15).x
    assert inverse(clamp, end, LINKS)[1] == pytest.approx(numerical, abs=1e-8)


@pytest.mark.parametrize("seed", range(4))
def test_segment_to_box_by_a_bounded_minimiser(seed: int) -> None:
    """scipy.optimize.minimize [scipy-2020], bounded in the segment's share and in the box, as a second route to the distance
    between a segment and a box."""
    rng = np.random.default_rng(seed)
    start, end = rng.uniform(-1.0, 2.0, (2, 3))
    low = rng.uniform(-0.5, 0.5, 3)
    high = low + rng.uniform(0.1, 0.6, 3)

    def squared(unknown: np.ndarray) -> float:
        gap = start + unknown[0] * (end - start) - unknown[1:]
        return float(gap @ gap)

    bounds = [(0.0, 1.0), *zip(low, high, strict=True)]
    told = minimize(
        squared, [0.5, *(0.5 * (low + high))], bounds=bounds, method="L-BFGS-B", options={"ftol": 1e-16, "gtol": 1e-12}
    )
    found = segment_box_m(start[None], end[None], low[None], high[None])[0, 0]
    assert found == pytest.approx(math.sqrt(told.fun), abs=1e-5)


def test_three_spheres_closed_form() -> None:
    """Three spheres, closed form as in any survey text (from memory): centres (0,0,0), (d,0,0), (i,j,0):
    x = (r1^2 - r2^2 + d^2)/2d, y = (r1^2 - r3^2 + i^2 + j^2)/2j - i x/j, z = root of r1^2 - x^2 - y^2."""
    d, i, j = 0.5, 0.2, 0.4
    r1, r2, r3 = 0.45, 0.40, 0.35
    x = (r1**2 - r2**2 + d**2) / (2 * d)
    y = (r1**2 - r3**2 + i**2 + j**2) / (2 * j) - i * x / j
    z = math.sqrt(r1**2 - x**2 - y**2)
    found = taped_point([TapePoint("a", (0, 0, 0), r1), TapePoint("b", (d, 0, 0), r2), TapePoint("c", (i, j, 0), r3)])
    assert np.array(found.points_m) == pytest.approx(np.array([[x, y, z], [x, y, -z]]), abs=1e-8)
