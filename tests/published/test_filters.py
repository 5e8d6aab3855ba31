"""Filters against their papers, their authors' package, and scipy's coefficients as printed.

Sources: G. Casiez, N. Roussel, D. Vogel, 1 Euro filter, CHI 2012, 2527-2530, with the authors' Python package
OneEuroFilter 0.2.1; scipy.signal (coefficients printed to nine digits).
"""

import math

import numpy as np
import pytest
from OneEuroFilter import OneEuroFilter
from scipy.signal import lfilter

from stickwright.tuning.filters import (
    butterworth,
    low_pass,
    low_pass_alpha,
    low_pass_lag_s,
    low_pass_left,
    notch,
    one_euro,
)

MOVE = np.array([0, 0.01, -0.01, 0.02, 0, 0.1, 0.3, 0.6, 0.8, 0.82, 0.79, 0.81])
REGULAR_S = 0.01 * np.arange(1, 13)
UNEVEN_S = np.array([0.010, 0.020, 0.032, 0.040, 0.055, 0.060, 0.070, 0.085, 0.090, 0.101, 0.110, 0.120])


def both_axes(line):
    return np.column_stack([line, -line])


@pytest.mark.parametrize(
    "times_s, cutoff_hz, beta, expected",
    [
        (REGULAR_S, 1.0, 0.5, [0.0, 0.000607587, -0.000021597, 0.001224018, 0.001148336, 0.008815438, 0.043879965,
                               0.149996128, 0.317194579, 0.466640850, 0.568778311, 0.647333068]),
        (UNEVEN_S, 1.5, 2.0, [0.0, 0.000922927, -0.000198654, 0.001412841, 0.001218800, 0.009432991, 0.091274708,
                              0.357783096, 0.510266697, 0.687709335, 0.741567743, 0.779160207]),
    ],
)  # fmt: skip
def test_one_euro_values(times_s, cutoff_hz, beta, expected):
    """Casiez 2012: outputs of the authors' package, nine digits, at even and at uneven steps, both axes alike."""
    out = one_euro(both_axes(MOVE), times_s, cutoff_hz, beta)
    assert out[:, 0] == pytest.approx(np.array(expected), abs=0.5e-9)
    assert out[:, 1] == pytest.approx(-np.array(expected), abs=0.5e-9)


def test_one_euro_is_not_the_port_with_raw_differences():
    """Many ports take the speed from the raw sample before; the paper takes the filtered one (0.647, not 0.463)."""
    out = one_euro(both_axes(MOVE), REGULAR_S, 1.0, 0.5)
    assert abs(out[-1, 0] - 0.463351005) > 0.1


@pytest.mark.parametrize("cutoff_hz, beta, derivative_hz", [(1.0, 0.0, 1.0), (0.3, 0.7, 2.5), (4.0, 8.0, 1.0)])
def test_one_euro_equals_the_authors_package(cutoff_hz, beta, derivative_hz):
    """The authors' package 0.2.1 on a shaky stream with uneven time stamps, to 1e-9. Its clock must not start at 0."""
    rng = np.random.default_rng(4)
    times_s = 0.5 + np.cumsum(rng.uniform(0.004, 0.03, 3000))
    xy = np.cumsum(rng.normal(0, 0.01, (3000, 2)), axis=0) + rng.normal(0, 0.02, (3000, 2))
    peers = [OneEuroFilter(freq=100, mincutoff=cutoff_hz, beta=beta, dcutoff=derivative_hz) for _ in range(2)]
    expected = [[peer(x, t) for peer, x in zip(peers, row, strict=True)] for row, t in zip(xy, times_s, strict=True)]
    assert one_euro(xy, times_s, cutoff_hz, beta, derivative_hz) == pytest.approx(np.array(expected), abs=1e-9)


@pytest.mark.parametrize(
    "cutoff_hz, rate_hz, alpha, half_power_hz",
    [(1.0, 100.0, 0.060898633, 1.000329), (5.0, 100.0, 0.269597309, 5.041640), (2.0, 60.0, 0.188961303, 2.007351)],
)
def test_low_pass_weight(cutoff_hz, rate_hz, alpha, half_power_hz):
    """Weight 1 - exp(-2 pi fc dt), and where it halves the power: cos(2 pi f dt) = 1 - alpha^2 / (2 (1 - alpha))."""
    assert low_pass_alpha(cutoff_hz, 1 / rate_hz) == pytest.approx(alpha, abs=0.5e-9)
    impulse = np.zeros((6000, 2))
    impulse[1] = 1.0
    response = low_pass(impulse, np.arange(6000) / rate_hz, cutoff_hz)[1:, 0]
    turns = np.exp(-2j * math.pi * half_power_hz / rate_hz * np.arange(len(response)))
    assert abs(response @ turns) ** 2 == pytest.approx(0.5, abs=2e-6)


@pytest.mark.parametrize("frequency_hz, left", [(3.4, 0.62), (5.6, 0.43), (8.0, 0.31)])
def test_slow_tremor_survives_a_low_pass_of_60_ms(frequency_hz, left):
    """A first-order low-pass 60 ms late leaves 62 % of 3.4 Hz, 43 % of 5.6 Hz and 31 % of 8 Hz."""
    assert low_pass_left(frequency_hz, 0.060) == pytest.approx(left, abs=0.005)


def test_low_pass_lag_in_samples():
    """Lag at slow movement is (1 - alpha) / alpha samples: a steady push outwards comes out that much later."""
    times_s = np.arange(2000) * 0.01
    ramp = low_pass(both_axes(0.05 * times_s), times_s, 5.0)[-1, 0]
    assert times_s[-1] - ramp / 0.05 == pytest.approx(low_pass_lag_s(5.0, 0.01), abs=1e-9)
    assert low_pass_lag_s(5.0, 0.01) == pytest.approx(0.01 * (1 - 0.269597309) / 0.269597309, abs=1e-9)


def impulse_response(run):
    impulse = np.zeros((400, 2))
    impulse[1] = 1.0
    return run(impulse, np.arange(400) * 0.01)[1:, 0]


def test_butterworth_coefficients():
    """scipy.signal.butter, order 2, 8 Hz at 100 Hz: coefficients as printed."""
    expected = lfilter([0.046131802, 0.092263604, 0.046131802], [1, -1.307285029, 0.491812237], np.eye(1, 399)[0])
    found = impulse_response(lambda xy, times_s: butterworth(xy, times_s, 8.0))
    assert found == pytest.approx(expected, abs=2e-8)


@pytest.mark.parametrize("frequency_hz, gain", [(2.0, 0.987778937), (5.0, 0.707106781), (10.0, 0.231177886)])
def test_butterworth_gain(frequency_hz, gain):
    """scipy.signal.butter, order 2, 5 Hz at 100 Hz: gain at three frequencies."""
    response = impulse_response(lambda xy, times_s: butterworth(xy, times_s, 5.0))
    turns = np.exp(-2j * math.pi * frequency_hz * 0.01 * np.arange(len(response)))
    assert abs(response @ turns) == pytest.approx(gain, abs=0.5e-8)


def test_notch_coefficients():
    """scipy.signal.iirnotch, 5 Hz, Q 2.5 at 100 Hz: coefficients as printed."""
    expected = lfilter([0.940809296, -1.789525623, 0.940809296], [1, -1.789525623, 0.881618592], np.eye(1, 399)[0])
    found = impulse_response(lambda xy, times_s: notch(xy, times_s, 5.0, 2.5))
    assert found == pytest.approx(expected, abs=5e-8)
