"""Natural frequency and droop of an arm with its own mass: textbook values, and eigenvalues by scipy of beams and chains."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.linalg import eigh

from stickwright.mounting.compliance import droop_m, ringing_hz, tip_shares

G = 9.80665


def test_textbook_shares() -> None:
    """[thomson-vibration]: of a rod on a hinge a third counts at its end, of a uniform cantilever 33/140; [hibbeler-mechanics]: its
    own weight sinks a cantilever's end by w L^4/8EI, three eighths of what it would sink with all its mass there. A chain of very
    many short links with joints that give alike bends like the cantilever."""
    assert tip_shares([0.37]).swings == pytest.approx(1 / 3, rel=1e-12)
    assert tip_shares([0.3], bends=True) == pytest.approx((33 / 140, 3 / 8), rel=1e-12)
    chain = tip_shares([0.001] * 400)
    assert chain.swings == pytest.approx(33 / 140, rel=3e-3)
    assert chain.sinks == pytest.approx(3 / 8, rel=5e-3)


def beam_hz(stiffness: float, arm_kg: float, device_kg: float, length_m: float = 0.5, pieces: int = 40) -> float:
    """First natural frequency of a uniform cantilever with a mass on its end, by Euler and Bernoulli's finite elements."""
    ei, h, mu = stiffness * length_m**3 / 3, length_m / pieces, arm_kg / length_m
    k = ei / h**3 * np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h**2, -6 * h, 2 * h**2],
                              [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h**2, -6 * h, 4 * h**2]])  # fmt: skip
    m = mu * h / 420 * np.array([[156, 22 * h, 54, -13 * h], [22 * h, 4 * h**2, 13 * h, -3 * h**2],
                                 [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h**2, -22 * h, 4 * h**2]])  # fmt: skip
    size = 2 * (pieces + 1)
    stiff, mass = np.zeros((size, size)), np.zeros((size, size))
    for piece in range(pieces):
        part = slice(2 * piece, 2 * piece + 4)
        stiff[part, part] += k
        mass[part, part] += m
    mass[size - 2, size - 2] += device_kg
    return math.sqrt(eigh(stiff[2:, 2:], mass[2:, 2:], eigvals_only=True)[0]) / (2 * math.pi)


@pytest.mark.parametrize(("device_kg", "within"), [(0.0, 0.016), (0.08, 0.012), (0.5, 0.003), (3.0, 0.001)])
def test_a_neck_against_a_finite_element_beam(device_kg: float, within: float) -> None:
    """scipy, 40 beam elements: a neck of 0.38 kg on 120 N/m. Rayleigh's figure lies above the true one, without a load by 1.5 percent
    ([thomson-vibration]: 3.516 sqrt(EI/(m L^3))), under a load by less."""
    ours = ringing_hz(120.0, device_kg + tip_shares([0.3], bends=True).swings * 0.38)
    true = beam_hz(120.0, 0.38, device_kg)
    assert 1.0 - 1e-9 <= ours / true <= 1.0 + within
    if device_kg == 0.0:
        assert true == pytest.approx(1.875104**2 / math.sqrt(3) * math.sqrt(120.0 / 0.38) / (2 * math.pi), rel=1e-5)


def chain_hz(links_m: list[float], stiffness: float, arm_kg: float, device_kg: float) -> float:
    """First natural frequency of stiff rods one after the other, each on a joint that gives alike: two degrees of freedom, the turn of
    each joint; kinetic energy of rods from their middle and their moment of inertia m L^2/12."""
    root = np.concatenate([[0.0], np.cumsum(links_m)[:-1]])
    left = sum(links_m) - root
    spring = stiffness * float(np.sum(left**2))  # so that the end gives as measured
    mass = device_kg * np.outer(left, left)
    for start, link in zip(root, links_m, strict=True):
        kg = arm_kg * link / sum(links_m)
        moved = np.maximum(start + link / 2 - root, 0.0) * (root <= start)
        turned = (root <= start).astype(float)
        mass += kg * np.outer(moved, moved) + kg * link**2 / 12 * np.outer(turned, turned)
    return math.sqrt(eigh(spring * np.eye(len(links_m)), mass, eigvals_only=True)[0]) / (2 * math.pi)


@pytest.mark.parametrize("links_m", [[0.27, 0.24], [0.17, 0.15], [0.1, 0.15, 0.08], [0.4]])
@pytest.mark.parametrize("device_kg", [0.045, 0.08, 0.4])
def test_an_arm_against_a_chain_of_rods(links_m: list[float], device_kg: float) -> None:
    """scipy, exact for stiff links on joints: an arm of 1.05 kg on 800 N/m swings within 2 percent of what Rayleigh says, never faster."""
    ours = ringing_hz(800.0, device_kg + tip_shares(links_m).swings * 1.05)
    assert 1.0 - 1e-9 <= ours / chain_hz(links_m, 800.0, 1.05, device_kg) <= 1.02


def test_a_chin_arm_by_hand() -> None:
    """Worked by hand: links of 270 and 240 mm, joints at 0 and 0.27 m of 0.51: squares 0.2601 and 0.0576 together 0.3177. Own weight: cubes
    0.132651 and 0.013824 over 2 x 0.51 x 0.3177 = 0.452 of 1.05 kg, with the stick of 80 g 0.555 kg on 800 N/m: 6.8 mm. All of its
    mass left out it would be 1.0 mm, and 16 Hz where it is 7.3."""
    share = tip_shares([0.27, 0.24])
    assert share.sinks == pytest.approx((0.51**3 + 0.24**3) / (2 * 0.51 * 0.3177), rel=1e-9)
    assert 1000 * droop_m(0.08 + share.sinks * 1.05, 800.0) == pytest.approx(1000 * 0.5546 * G / 800, abs=0.01)
    assert ringing_hz(800.0, 0.08) == pytest.approx(15.9, abs=0.05)
    assert ringing_hz(800.0, 0.08 + share.swings * 1.05) == pytest.approx(
        chain_hz([0.27, 0.24], 800.0, 1.05, 0.08), rel=0.02
    )
