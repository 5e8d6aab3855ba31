"""Directions and counts against printed values."""

from __future__ import annotations

import numpy as np
import pytest

from stickwright.trace.bursts import counts_per_min
from stickwright.trace.reach import circular_half_width, circular_mean


def test_zar_eight_directions():
    """Zar, Biostatistical Analysis, eight directions (data and printed figures from memory): mean 99 deg, r .82522,
    z 5.448, .001 < p < .002."""
    found = circular_mean(np.radians([45, 55, 81, 96, 110, 117, 132, 154]))
    assert float(np.degrees(found.mean_rad)) == pytest.approx(99, abs=0.5)
    assert found.resultant_length == pytest.approx(0.82522, abs=5e-6)
    assert found.rayleigh_z == pytest.approx(5.448, abs=0.0005)
    assert 0.001 < found.rayleigh_p < 0.002
    assert float(np.degrees(found.sd_rad)) == pytest.approx(
        35.514880, abs=5e-7
    )  # sqrt(-2 ln R), worked by hand from the definition, no outside source


def test_rayleigh_of_five_directions():
    """The documentation of the pingouin package prints z 1.236 and p .304844 for these five directions."""
    found = circular_mean([0.785, 1.570, 3.141, 0.839, 5.934])
    assert found.rayleigh_z == pytest.approx(1.236, abs=0.0005)
    assert found.rayleigh_p == pytest.approx(0.304844, abs=5e-7)
    assert float(np.degrees(found.mean_rad)) == pytest.approx(58.038473, abs=5e-7)


def test_mean_across_zero():
    """350, 355, 2, 10 and 15 deg lie about 2.4 deg; their arithmetic mean, 146.4, points the wrong way."""
    found = circular_mean(np.radians([350, 355, 2, 10, 15]))
    assert float(np.degrees(found.mean_rad)) == pytest.approx(2.398693, abs=5e-7)


def test_sd_of_ten_directions():
    """Ten directions of the test set of the CircularStats package, there checked against scipy.stats.circstd."""
    directions = [1.80044838, 2.02938314, 1.03534016, 4.84225057, 1.54256458, 5.19290675]
    directions += [2.18474784, 4.77054777, 1.51736933, 0.72727580]
    found = circular_mean(directions)
    assert found.mean_rad == pytest.approx(1.35173983, abs=5e-9)
    assert found.sd_rad == pytest.approx(1.46571716843, abs=5e-9)


def test_interval_of_a_mean_direction():
    """The pycircstat package prints, for these five directions, mean 1.7998 and a 95 % interval 0.89931 to 2.7003, and
    an 80 % half-width of 0.50149 (Upton's formula, Zar's equation 26.24)."""
    directions = [0.88333, 2.22854, 3.06369, 1.49836, 1.51748]
    mean, half = circular_mean(directions).mean_rad, circular_half_width(directions)
    assert mean == pytest.approx(1.7998, abs=5e-5)
    assert mean - half == pytest.approx(0.89931, abs=1e-5)  # the directions themselves are rounded to 5e-6
    assert mean + half == pytest.approx(2.7003, abs=5e-5)
    assert circular_half_width(directions, level=0.8) == pytest.approx(0.50149, abs=5e-6)


@pytest.mark.parametrize(
    "pair, half", [((1.14892, 2.22854), 0.72910), ((2.87128, 3.06369), 0.10911), ((1.07677, 1.49836), 0.24385)]
)
def test_interval_of_directions_that_agree(pair: tuple[float, float], half: float):
    """The same package's 80 % half-widths of pairs, above and below a resultant length of 0.9 (equation 26.25)."""
    assert circular_half_width(pair, level=0.8) == pytest.approx(half, abs=5e-6)


@pytest.mark.parametrize(
    "count, low, high", [(0, 0.0, 3.69), (1, 0.03, 5.57), (5, 1.62, 11.67), (10, 4.80, 18.39), (20, 12.22, 30.89)]
)
def test_garwood_intervals(count: int, low: float, high: float):
    """Exact 95 % Poisson limits as tabulated after Garwood 1936, Biometrika 28:437 (table values from memory)."""
    rate = counts_per_min(count, 1.0)
    assert rate.low == pytest.approx(low, abs=0.005)
    assert rate.high == pytest.approx(high, abs=0.005)
