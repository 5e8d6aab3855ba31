"""The sprung lever against worked values: equilibrium of moments, any handbook of statics."""

import math

import numpy as np
import pytest

from stickwright.mechanics.lever import Lever

approx = pytest.approx

STICK = Lever(
    preload_nm=0.008, stiffness_nm_per_rad=0.020, friction_nm=0.001, length_m=0.022, max_angle_rad=math.radians(25)
)


@pytest.mark.parametrize(
    "angle_deg, push_n, back_n, travel_mm, level_n",
    [
        (0, 0.409091, 0.318182, 0.0, 0.409091),
        (10, 0.567757, 0.476848, 3.820260, 0.576516),
        (20, 0.726424, 0.635514, 7.524443, 0.773044),
        (25, 0.805757, 0.714848, 9.297602, 0.889054),
    ],
)
def test_force_and_travel_of_a_sprung_lever(angle_deg, push_n, back_n, travel_mm, level_n):
    """Preload 8, friction 1 mN m, stiffness 20 mN m/rad, contact at 22 mm: push out, let back, travel and level
    push (values computed from the equilibrium of moments, apart from this program)."""
    angle = math.radians(angle_deg)
    assert STICK.push(angle) == approx(push_n, abs=5e-7)
    assert STICK.letting_back(angle) == approx(back_n, abs=5e-7)
    assert 1000 * STICK.travel(angle) == approx(travel_mm, abs=5e-7)
    assert STICK.level_push(angle) == approx(level_n, abs=5e-7)
    assert STICK.hold(angle) == approx((push_n + back_n) / 2, abs=1e-6)


def test_an_extension_of_18_mm():
    """Same stick, 20 degrees: 22/40 of the force, 40/22 of the travel."""
    angle = math.radians(20)
    assert STICK.push(angle, extension_m=0.018) == approx(0.399533, abs=5e-7)
    assert 1000 * STICK.travel(angle, extension_m=0.018) == approx(13.680806, abs=5e-7)
    assert STICK.push(angle, extension_m=0.018) / STICK.push(angle) == approx(0.55, abs=1e-12)


def test_work_to_the_stop():
    """tau0 th + kappa th^2/2 + tau_f th to a stop at 20 degrees: 4.360062 mJ, by the same hand calculation."""
    stick = Lever(0.008, 0.020, 0.001, 0.022, math.radians(20))
    angle = np.linspace(0.0, stick.max_angle_rad, 201)
    assert np.trapezoid(stick.push(angle) * stick.length_m, angle) == approx(4.360062e-3, abs=5e-10)


def test_residual_angle():
    """Friction 3 against preload 1 mN m at 20 mN m/rad: stays at 5.729578 degrees."""
    stick = Lever(0.001, 0.020, 0.003, 0.022, math.radians(20))
    assert math.degrees(stick.residual_angle_rad) == approx(5.729578, abs=5e-7)
    assert stick.letting_back(math.radians(5.72)) == 0.0
    assert stick.letting_back(math.radians(5.74)) > 0.0


def test_where_push_needed_meets_push_available():
    """A player of 0.9 N with 12 mm of reach, straight fall-off: meets the stick at 11.034924 degrees, 4.210961 mm,
    0.584178 N (computed by bisection apart from this program)."""
    angle = math.radians(11.034924)
    assert 1000 * STICK.travel(angle) == approx(4.210961, abs=1e-6)
    assert STICK.push(angle) == approx(0.584178, abs=1e-6)
    assert STICK.push(angle) == approx(0.9 * (1 - STICK.travel(angle) / 0.012), abs=1e-6)


def test_thumb_sticks_of_the_data_sheets_are_plausible_levers():
    """Component data sheets, from memory: operating torque 4 to 20 mN m, 18 to 25 degrees, cap 15 to 25 mm above the
    pivot, 0.3 to 1.5 N at the tip: torque and height give that force."""
    light = Lever(0.004, 0.005, 0.0005, 0.015, math.radians(18))
    heavy = Lever(0.015, 0.010, 0.001, 0.015, math.radians(25))
    assert 0.25 < light.push(0.0) < light.push(light.max_angle_rad) < 1.5
    assert 0.3 < heavy.push(0.0) < heavy.push(heavy.max_angle_rad) < 1.5


def test_arrays_and_numbers_agree():
    """One angle or many: the same force, and a plain number for one."""
    angles = np.radians([0.0, 10.0, 20.0])
    forces = STICK.push(angles)
    assert isinstance(STICK.push(0.1), float)
    assert forces.tolist() == [STICK.push(float(angle)) for angle in angles]
