"""How much a kept position wanders, and how that grows with the push."""

from __future__ import annotations

import numpy as np
import pytest

from said import said
from stickwright.trace.unsteady import growing_noise, unsteadiness


def shake(rng: np.random.Generator, seconds: float, sd: float) -> tuple[np.ndarray, np.ndarray]:
    """1 to 6 Hz noise of a known rms on each axis, 100 Hz."""
    n = int(100 * seconds)
    f = np.fft.rfftfreq(n, 0.01)
    band = (f > 1) & (f < 6)
    xy = np.empty((n, 2))
    for axis in range(2):
        z = np.zeros(len(f), complex)
        z[band] = rng.standard_normal(band.sum()) + 1j * rng.standard_normal(band.sum())
        x = np.fft.irfft(z, n)
        xy[:, axis] = sd * x / np.sqrt(np.mean(x**2))
    return np.arange(n) * 0.01, xy


def test_rms_is_covered() -> None:
    """Twenty seconds of known wander: the 95 % interval holds the true rms in 90 to 99 % of 200 draws."""
    rng = np.random.default_rng(4)
    inside = 0
    for _ in range(200):
        times, long = shake(rng, 60, 0.02)
        part = slice(1000, 3000)
        told = unsteadiness(times[part], long[part])
        inside += told.low <= 0.02 <= told.high
    assert 0.90 <= inside / 200 <= 0.99


def test_slow_drift_is_not_unsteadiness() -> None:
    """A posture that sinks by a fifth of the throw in a minute leaves the rms nearly as it was."""
    times, xy = shake(np.random.default_rng(1), 60, 0.02)
    sinking = xy + np.column_stack([0.2 * times / 60, np.zeros(len(times))])
    assert unsteadiness(times, sinking).value == pytest.approx(unsteadiness(times, xy).value, rel=0.03)


def test_gaps_are_not_bridged_and_short_pieces_say_so() -> None:
    times, xy = shake(np.random.default_rng(2), 4, 0.02)
    told = unsteadiness(times, xy)
    assert told.value is None
    assert "without a gap" in said(told.why or "")


def test_noise_that_grows_with_force_is_split() -> None:
    """Known: 8 mN always there and 6 % of the push; ten holds of 5 s of independent scatter.

    Independent route: the generating figures themselves."""
    rng = np.random.default_rng(3)
    push = np.tile([0.05, 0.1, 0.15, 0.2, 0.25], 6)
    sd = np.hypot(0.008, 0.06 * push) * np.exp(0.08 * rng.standard_normal(len(push)))
    always, share = growing_noise(push, sd)
    assert always.low <= 0.008 <= always.high
    assert share.low <= 0.06 <= share.high
    assert share.high - share.low < 0.05


def test_alike_pushes_cannot_be_split() -> None:
    always, share = growing_noise([0.1, 0.1, 0.11], [0.01, 0.01, 0.01])
    assert always.value is None
    assert share.value is None
    assert "half as strong again" in said(share.why or "")
