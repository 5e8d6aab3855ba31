"""Hits and false presses against published figures."""

import math

import numpy as np
import pytest

from stickwright.allocation.press_ability import comfortable_force
from stickwright.allocation.pressing import crossings_per_min, hit_share


@pytest.mark.parametrize(("sds", "caught"), [(1.1774, 0.50), (2.1460, 0.90), (2.4477, 0.95), (3.0349, 0.99)])
def test_hits_on_a_round_face(sds, caught):
    """Circular error of a Gaussian in two axes: 50, 90, 95 and 99 % lie within 1.1774, 2.1460, 2.4477 and 3.0349 sd
    (tables of circular error probable; from memory)."""
    assert hit_share((2 * sds * 0.01,), 0.01) == pytest.approx(caught, abs=5e-5)


@pytest.mark.parametrize(("sds", "within"), [(1.0, 0.6827), (1.9600, 0.9500), (2.5758, 0.9900)])
def test_hits_on_a_strip_long_enough(sds, within):
    """A strip so long that nobody misses its ends: the normal table, 68.27, 95 and 99 % within 1, 1.96 and 2.5758 sd."""
    assert hit_share((2 * sds * 0.01, 1.0), 0.01) == pytest.approx(within, abs=5e-5)


def test_false_presses_of_low_pass_noise():
    """Rice 1945, Bell System Tech. J. 24, section 3.3 (from memory): ideal low-pass noise of band fb passes zero upwards
    0.577 fb times a second, and a level U exp(-U^2/(2 s^2)) times as often. Against noise made here and counted: 2 Hz
    wide, nine hours of it, about a resting force, three levels."""
    rng = np.random.default_rng(19450124)
    rate_hz, samples, band_hz, rest_n, sd_n = 64.0, 2**21, 2.0, 0.05, 0.02
    frequency = np.fft.rfftfreq(samples, 1 / rate_hz)
    spectrum = (rng.standard_normal(len(frequency)) + 1j * rng.standard_normal(len(frequency))) * (frequency < band_hz)
    force = np.fft.irfft(spectrum, samples)
    force = rest_n + sd_n * (force - force.mean()) / force.std()
    minutes = samples / rate_hz / 60
    for level in (rest_n + 1.2 * sd_n, rest_n + 2.0 * sd_n, rest_n + 2.5 * sd_n):
        counted = np.count_nonzero((force[:-1] < level) & (force[1:] >= level)) / minutes
        told = crossings_per_min(level, rest_n, sd_n, band_hz / math.sqrt(3))
        assert told == pytest.approx(counted, rel=0.06)


def test_interval_of_a_comfortable_force():
    """Student's t with 2 degrees of freedom is 4.303 at 95 %: three repeats, worked by hand on a log scale (t as printed in tables)."""
    logs = [math.log(0.20), math.log(0.22), math.log(0.25)]
    middle = sum(logs) / 3
    sd = math.sqrt(sum((one - middle) ** 2 for one in logs) / 2)
    force = comfortable_force((0.20, 0.22, 0.25))
    assert force.value == pytest.approx((0.20 * 0.22 * 0.25) ** (1 / 3), rel=1e-12)
    assert math.log(force.high / force.value) == pytest.approx(4.303 * sd / math.sqrt(3), rel=2e-4)
    assert math.log(force.value / force.low) == pytest.approx(4.303 * sd / math.sqrt(3), rel=2e-4)
    assert force.n == 3
