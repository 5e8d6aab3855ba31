"""Goosenecks against textbooks and scipy."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from stickwright.mounting.neck import Necks, bent_necks
from stickwright.mounting.neck_load import neck_sag
from stickwright.mounting.statics import arm_weights

G = 9.80665


def random_neck(seed: int, length: float = 0.35) -> Necks:
    """A neck between a random foot and end that can be bent to 10 mm radius at least."""
    rng = np.random.default_rng(seed)
    while True:
        ways = rng.normal(size=(3, 1, 3))
        foot, end, line = (way / np.linalg.norm(way) for way in ways)
        start = rng.uniform(-0.3, 0.3, (1, 3))
        neck = bent_necks(start, foot, start + line * rng.uniform(0.15, 0.31), end, length, np.array([0.5]))
        if neck.radius_m[0] > 0.01:
            return neck


@pytest.mark.parametrize("seed", range(8))
def test_length_by_quadrature(seed: int) -> None:
    """scipy.integrate.quad [scipy-2020]: the speed along the drawn curve, from its points alone by central differences, adds up to
    350 mm between its stretches' ends."""
    neck = random_neck(seed)
    little = 1e-6

    def speed(along: float) -> float:
        before, after = neck.at(np.array([along - little, along + little]))[0]
        return float(np.linalg.norm(after - before)) / (2 * little)

    ends = np.cumsum([neck.straight_m[0, 0], neck.bend_m[0, 0], neck.straight_m[0, 1], neck.bend_m[0, 1]])
    total = quad(speed, 2 * little, 0.35 - 2 * little, points=sorted({*ends.tolist()}), limit=200)[0] + 4 * little
    assert total == pytest.approx(0.35, abs=2e-6)


@pytest.mark.parametrize("seed", range(8))
def test_steered_along_it_arrives(seed: int) -> None:
    """scipy.integrate.solve_ivp [scipy-2020] as a second route: who starts at the foot in its direction and is turned evenly about
    the axis of each bend, 1 over its radius for each metre, arrives at the end in the end's direction."""
    neck = random_neck(seed)
    state = np.concatenate([neck.foot_m[0], neck.foot_way[0]])
    ways = (neck.foot_way[0], neck.between_way[0], neck.end_way[0])
    for stretch in range(3):
        state[:3] += neck.straight_m[0, stretch] * state[3:]
        if stretch == 2:
            break
        length, angle = neck.bend_m[0, stretch], neck.bend_rad[0, stretch]
        axis = np.cross(ways[stretch], ways[stretch + 1])
        spin = axis / np.linalg.norm(axis) * angle / length
        state = solve_ivp(
            lambda _, at, spin=spin: [*at[3:], *np.cross(spin, at[3:])], (0.0, length), state, rtol=1e-10, atol=1e-12
        ).y[:, -1]
    assert state[:3] == pytest.approx(neck.end_m[0], abs=2e-7)
    assert state[3:] == pytest.approx(neck.end_way[0], abs=1e-7)


def test_straight_level_neck_is_a_cantilever() -> None:
    """[hibbeler-mechanics] (from memory): a level beam of stiffness k = 3 E I/L^3 at its end sinks by F/k and turns by 3 F/(2 k L) under
    F at its end, and under its own weight W by W L^3/(8 E I) = 3 W/(8 k), turning by W L^2/(6 E I) = W/(2 k L)."""
    points = np.linspace((0.0, 0.0, 0.0), (0.0, 0.4, 0.0), 25)
    end = neck_sag(points, 150.0, arm_weights(points, 0.0, points[-1], 0.2))
    assert end.moved_m[2] == pytest.approx(-0.2 * G / 150.0, rel=1e-9)
    assert end.droop_rad == pytest.approx(1.5 * 0.2 * G / 150.0 / 0.4, rel=1e-9)
    own = neck_sag(points, 150.0, arm_weights(points, 0.35, points[-1], 0.0))
    assert own.moved_m[2] == pytest.approx(-3 * 0.35 * G / (8 * 150.0), rel=2e-3)
    assert own.droop_rad == pytest.approx(0.35 * G / (2 * 150.0 * 0.4), rel=2e-3)


def test_quarter_circle_by_castigliano() -> None:
    """[hibbeler-mechanics], Castigliano for a quarter circle of radius R standing upright from its foot, F down at its end (from memory):
    the end sinks by pi F R^3/(4 E I), goes sideways by F R^3/(2 E I), and turns by F R^2/(E I)."""
    radius = 0.2
    angle = np.linspace(0.0, math.pi / 2, 801)
    points = np.stack([np.zeros_like(angle), radius * (1 - np.cos(angle)), radius * np.sin(angle)], axis=1)
    length = radius * math.pi / 2
    force, give = 0.3 * G, 150.0
    stiffness = give * length**3 / 3
    sag = neck_sag(points, give, arm_weights(points, 0.0, points[-1], 0.3))
    assert sag.moved_m[2] == pytest.approx(-math.pi * force * radius**3 / (4 * stiffness), rel=1e-4)
    assert sag.moved_m[1] == pytest.approx(force * radius**3 / (2 * stiffness), rel=1e-4)
    assert sag.droop_rad == pytest.approx(force * radius**2 / stiffness, rel=1e-4)
