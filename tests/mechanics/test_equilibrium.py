"""Where push needed meets push available."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis.strategies import floats

from stickwright.mechanics.equilibrium import best_lever_ratio, crossing_angle, lever_moments, linear_share

FORCE = floats(0.05, 30.0)
REACH = floats(0.003, 0.12)


@given(force=FORCE, reach=REACH, start=floats(0.01, 5.0), rise=floats(0.01, 5.0), more=floats(1.0, 3.0))
def test_more_force_never_lowers_reach(force: float, reach: float, start: float, rise: float, more: float) -> None:
    """Law: a stronger player never reaches less far."""
    moment, stiffness, stop = lever_moments(start, start + rise, 0.010, 0.030)
    weak, strong = (crossing_angle(f, reach, moment, stiffness, 0.030, stop) for f in (force, force * more))
    assert strong >= weak - 1e-12


@given(force=FORCE, reach=REACH, start=floats(0.01, 5.0), rise=floats(0.01, 5.0), scale=floats(0.01, 100.0))
def test_scaling_units_changes_nothing(force: float, reach: float, start: float, rise: float, scale: float) -> None:
    """Law: the share reached does not depend on the unit of force or of length."""
    moment, stiffness, stop = lever_moments(start, start + rise, 0.010, 0.030)
    plain = crossing_angle(force, reach, moment, stiffness, 0.030, stop)
    m2, k2, s2 = lever_moments(start * scale, (start + rise) * scale, 0.010 * scale, 0.030 * scale)
    assert crossing_angle(force * scale, reach * scale, m2, k2, 0.030 * scale, s2) == pytest.approx(
        plain, rel=1e-9, abs=1e-12
    )


@given(force=FORCE, reach=REACH, start=floats(0.01, 5.0), rise=floats(0.01, 5.0), power=floats(0.5, 3.0))
def test_push_needed_equals_push_available_at_the_crossing(
    force: float, reach: float, start: float, rise: float, power: float
) -> None:
    """Short of the stop and beyond the start, the two pushes are equal."""
    moment, stiffness, stop = lever_moments(start, start + rise, 0.010, 0.030)
    theta = float(crossing_angle(force, reach, moment, stiffness, 0.030, stop, fall_off=power))
    if 1e-6 < theta < stop:
        needed = (moment + stiffness * theta) / 0.030
        available = force * (1 - (0.030 * math.sin(theta) / reach) ** power)
        assert needed == pytest.approx(available, rel=1e-6)


@given(force=floats(0.3, 5.0), reach=REACH, start=floats(0.05, 0.25), rise=floats(0.05, 3.0))
def test_best_lever_ratio_is_no_worse_than_any_on_a_grid(force: float, reach: float, start: float, rise: float) -> None:
    """The closed form against brute force: no other lever ratio brings the stick further."""
    travel = 0.008
    best = float(best_lever_ratio(force, reach, start, start + rise, travel))

    def share(ratio: float) -> float:
        # unclipped r(L), so that ties at the stop do not hide a wrong optimum
        return (force * ratio - start) / (force * travel / reach * ratio**2 + rise)

    grid = np.geomspace(best / 4, best * 4, 401)
    assert share(best) >= max(share(float(ratio)) for ratio in grid) - 1e-12


def test_small_stick_crossing_agrees_with_the_small_angle_form() -> None:
    """At 5 degrees of throw the exact crossing and the small-angle form agree to a thousandth."""
    height = 0.06
    travel = height * math.sin(math.radians(5))
    moment, stiffness, stop = lever_moments(0.3, 0.9, travel, height)
    exact = crossing_angle(0.7, 0.012, moment, stiffness, height, stop) / stop
    assert exact == pytest.approx(linear_share(0.7, 0.012, 0.3, 0.9, travel), abs=1e-3)


def test_force_that_falls_off_later_reaches_farther() -> None:
    """Law: the later force falls off with reach, the farther the lever is pushed; evenly, with no jump at any exponent between."""
    exponents = np.linspace(1.0, 2.5, 31)
    angles = [
        float(crossing_angle(0.9, 0.012, 0.009, 0.020, 0.022, math.radians(40), fall_off=float(one)))
        for one in exponents
    ]
    steps = np.diff(angles)
    assert (steps > 0).all()
    assert steps.max() < 2 * steps.min() + math.radians(0.2)
