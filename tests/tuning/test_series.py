"""The even grid that filters run on: rate and values do not hang on how the stamps were rounded."""

from __future__ import annotations

import numpy as np
import pytest

from stickwright.measure.report_rate import report_rate
from stickwright.tuning.sections import notch
from stickwright.tuning.series import even_grid


def test_rounded_stamps_are_the_same_grid():
    """60 Hz written to the millisecond (steps of 16 and 17 ms, median 17: 58.8 Hz): rate and samples are those of true 60 Hz."""
    true_s = np.arange(1200) / 60
    xy = np.column_stack([np.sin(2 * np.pi * 5 * true_s), np.cos(2 * np.pi * 5 * true_s)])
    even_xy, grid_s, rate_hz = even_grid(xy, np.round(true_s, 3))
    assert rate_hz == pytest.approx(60, rel=1e-4)
    assert len(even_xy) == len(grid_s) == 1200
    assert np.abs(even_xy - xy).max() < 2e-3


def test_a_gap_does_not_slow_the_rate():
    """10 s at 100 Hz, 5 s of nothing, 10 s: the rate is 100 Hz, and the gap lies on the grid."""
    times_s = np.concatenate([np.arange(1000) / 100, 15 + np.arange(1000) / 100])
    even_xy, grid_s, rate_hz = even_grid(np.zeros((2000, 2)), times_s)
    assert rate_hz == pytest.approx(100, rel=1e-6)
    assert len(even_xy) == len(grid_s) == 2500


def test_a_notch_takes_out_its_frequency_from_rounded_stamps():
    """A line of 8 Hz at 60 Hz, stamps to the millisecond: what the notch leaves of it is what it leaves with true stamps, to 1 %
    of its size. At the median step the notch sat at 8.16 Hz."""
    true_s = np.arange(1800) / 60
    xy = np.sin(2 * np.pi * 8 * true_s)[:, None] * [0.1, 0.05]
    left = notch(xy, np.round(true_s, 3), 8.0, 10.0)[900:]
    assert np.abs(left - notch(xy, true_s, 8.0, 10.0)[900:]).max() < 1e-3
    assert np.abs(left).max() < 2e-3


def test_how_often_it_was_looked_at_does_not_hang_on_rounding():
    """Looked at 240 times a second, stamps to the millisecond (median step 4 ms: 250): at least 240 reports a second."""
    looks_s = np.round(np.arange(2400) / 240, 3)
    rate = report_rate(looks_s, np.random.default_rng(1).normal(size=2400))
    assert rate.value == pytest.approx(240, rel=1e-3)
    assert rate.endless
