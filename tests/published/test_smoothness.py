"""Smoothness against the authors' published example and the minimum-jerk movement."""

import math

import numpy as np
import pytest

from stickwright.trace.smoothness import log_dimensionless_jerk, spectral_arc_length


def minimum_jerk_speed(rate_hz: float, duration_s: float) -> np.ndarray:
    s = np.arange(int(rate_hz * duration_s) + 1) / (rate_hz * duration_s)
    return 30 * s**2 * (1 - s) ** 2 / duration_s


def test_published_example():
    """Balasubramanian et al. 2015, example of the authors' code: v = exp(-5 t^2), t from -1 to 0.99 in steps of 0.01:
    spectral arc length -1.41403, log dimensionless jerk -5.81636 (dimensionless jerk -335.74684)."""
    speed = np.exp(-5 * np.arange(-1, 1, 0.01) ** 2)
    assert spectral_arc_length(speed, 100.0) == pytest.approx(-1.41403, abs=5e-6)
    assert log_dimensionless_jerk(speed, 100.0) == pytest.approx(-5.81636, abs=5e-6)
    assert -math.exp(-log_dimensionless_jerk(speed, 100.0)) == pytest.approx(-335.74684, abs=5e-6)


@pytest.mark.parametrize(
    ("rate_hz", "duration_s", "arc", "jerk", "log_jerk"),
    [
        (100.0, 1.0, -1.405829, -200.664277, -5.301633),
        (1000.0, 1.0, -1.402426, -204.389992, -5.320030),
        (100.0, 2.0, -1.405829, -202.741914, -5.311934),
    ],
)
def test_minimum_jerk_movement(rate_hz, duration_s, arc, jerk, log_jerk):
    """The authors' definitions (Balasubramanian et al. 2015) on 30 s^2 (1-s)^2 / T, both end samples kept, worked
    out apart from this program."""
    speed = minimum_jerk_speed(rate_hz, duration_s)
    assert spectral_arc_length(speed, rate_hz) == pytest.approx(arc, abs=5e-7)
    assert log_dimensionless_jerk(speed, rate_hz) == pytest.approx(log_jerk, abs=5e-7)
    assert -math.exp(-log_dimensionless_jerk(speed, rate_hz)) == pytest.approx(jerk, abs=5e-7)


def test_minimum_jerk_in_the_limit():
    """Continuous minimum jerk: 720 D^2/T^5 over (1.875 D/T)^2/T^3 is 204.8 exactly, its logarithm 5.322034: the
    discrete form comes within 0.1 % of it at 10 kHz."""
    assert log_dimensionless_jerk(minimum_jerk_speed(10_000.0, 1.0), 10_000.0) == pytest.approx(
        -math.log(204.8), abs=1e-3
    )
