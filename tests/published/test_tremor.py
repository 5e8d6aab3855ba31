"""Dominant frequency against values worked out apart from this program."""

import math

import numpy as np
import pytest
from scipy.signal import welch

from stickwright.trace.tremor import crossing_frequency, dominant_tremor


def tracked_with_tremor() -> np.ndarray:
    t = np.arange(2000) / 100
    slow = 0.3 * np.sin(2 * np.pi * 0.25 * t)
    shake = 2 * np.pi * 4.6 * t
    return np.column_stack([slow + 0.04 * np.sin(shake), 0.02 * np.sin(shake + 1)])


@pytest.mark.parametrize(("segment", "frequency_hz"), [(512, 4.598546), (1024, 4.600798)])
def test_dominant_frequency(segment, frequency_hz):
    """Welch 1967, summed spectra of x and y with a parabola through the log of three bins, on 20 s at 100 Hz with a
    rhythm of 4.6 Hz: worked out with scipy."""
    assert dominant_tremor(tracked_with_tremor(), 100.0, segment=segment).frequency_hz == pytest.approx(
        frequency_hz, abs=5e-7
    )


def test_size_of_the_tremor():
    """By hand: amplitudes 0.04 and 0.02 make a vector rms of sqrt((0.04^2 + 0.02^2)/2) = 0.0316228, and all of the
    movement in the band."""
    found = dominant_tremor(tracked_with_tremor(), 100.0)
    assert found.frequency_hz == pytest.approx(4.6, abs=0.005)
    assert found.rms == pytest.approx(0.0316228, rel=1e-3)
    assert found.share == pytest.approx(1.0, abs=1e-3)


def test_crossing_frequency_of_band_noise():
    """Rice 1945: noise that is flat from 1 to 3 Hz passes its mean upwards sqrt((3^3 - 1^3)/(3 (3 - 1))) = 2.0817 times
    a second; counted sample by sample as well."""
    rng = np.random.default_rng(11)
    n, rate_hz = 60_000, 100.0
    frequency_hz = np.fft.rfftfreq(n, 1 / rate_hz)
    inside = (frequency_hz >= 1) & (frequency_hz <= 3)
    transform = inside[:, None] * (rng.standard_normal((inside.size, 2, 2)) @ np.array([1, 1j]))
    noise = np.fft.irfft(transform, n, axis=0)
    counted = float(((noise[:-1] < 0) & (noise[1:] >= 0)).sum()) / 2 / (n / rate_hz)
    found = crossing_frequency(noise, rate_hz)
    assert found == pytest.approx(math.sqrt(26 / 6), rel=0.02)
    assert found == pytest.approx(counted, rel=0.02)


def test_same_spectrum_as_scipy():
    """scipy.signal.welch is the other route to the summed spectrum: same peak bin on real-like noise."""
    rng = np.random.default_rng(5)
    xy = np.cumsum(rng.normal(0, 1, (3000, 2)), axis=0) + 8 * np.sin(2 * np.pi * 5.3 * np.arange(3000) / 100)[:, None]
    frequency_hz, power = welch(xy, 100.0, nperseg=512, axis=0)
    total = power.sum(axis=1)
    near = np.abs(frequency_hz - dominant_tremor(xy, 100.0).frequency_hz) <= 1.0
    band = (frequency_hz >= 2) & (frequency_hz <= 25)
    assert abs(frequency_hz[near][np.argmax(total[near])] - dominant_tremor(xy, 100.0).frequency_hz) < 100 / 512
    assert dominant_tremor(xy, 100.0).share == pytest.approx(total[near].sum() / total[band].sum(), rel=0.03)
