"""Smoothness: which movements are found, and that smoother is nearer to 0."""

import math

import numpy as np
import pytest

from said import said
from stickwright.codes.aiming import Aiming
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.trace.smoothness import log_dimensionless_jerk, smoothness_report, spectral_arc_length

RATE_HZ = 100.0


def to_and_fro(n: int, *, moving_s: float = 0.8, resting_s: float = 0.7) -> tuple[np.ndarray, np.ndarray]:
    """Minimum-jerk movements of one unit length, resting before and after each."""
    t = np.arange(int((n * (moving_s + resting_s) + resting_s) * RATE_HZ)) / RATE_HZ
    count = np.minimum((t - resting_s).clip(0) // (moving_s + resting_s), n - 1)
    s = ((t - resting_s - count * (moving_s + resting_s)) / moving_s).clip(0, 1)
    share = 10 * s**3 - 15 * s**4 + 6 * s**5
    x = np.where(count % 2 == 0, share, 1 - share)
    return t, np.column_stack([0.8 * x, 0.6 * x])


def test_movements_are_found_and_smooth():
    """Ten minimum-jerk movements: ten are found, and their arc length is that of the movement itself (-1.40 in the
    published form), though found from positions."""
    report = smoothness_report(*to_and_fro(10))
    assert report.movements == 10
    assert report.spectral_arc_length.value == pytest.approx(-1.40, abs=0.03)
    assert report.log_dimensionless_jerk.value == pytest.approx(-5.3, abs=0.4)
    assert report.spectral_arc_length.n == 10


def test_tremor_makes_movements_less_smooth():
    """A shake of 6 Hz, 1 % of the movement, takes both measures further from 0."""
    t, xy = to_and_fro(12)
    moving = np.abs(np.gradient(xy[:, 0])) > 1e-9
    shaken = xy + (0.01 * np.sin(2 * np.pi * 6 * t) * moving)[:, None]
    plain, rough = smoothness_report(t, xy), smoothness_report(t, shaken)
    assert rough.spectral_arc_length.value < plain.spectral_arc_length.value - 0.1
    assert rough.log_dimensionless_jerk.value < plain.log_dimensionless_jerk.value - 0.5


def test_size_and_unit_do_not_matter():
    """Law: both measures are free of the unit of length."""
    t, xy = to_and_fro(8)
    one, other = smoothness_report(t, xy), smoothness_report(t, 730.0 * xy)
    assert other.spectral_arc_length.value == pytest.approx(one.spectral_arc_length.value, rel=1e-9)
    assert other.log_dimensionless_jerk.value == pytest.approx(one.log_dimensionless_jerk.value, rel=1e-9)


def test_a_movement_cut_by_a_gap_is_left_out():
    """Unplugged in the middle of a movement: that movement has no end, and does not count."""
    t, xy = to_and_fro(10)
    whole = (t < 3.9) | (t > 4.4)
    assert smoothness_report(t[whole], xy[whole]).movements == 9


def test_uneven_stamps_change_little():
    """Stamps that jitter by a tenth of a step: the same movements, arc length within 0.02."""
    rng = np.random.default_rng(1)
    t, xy = to_and_fro(10)
    jittered = t + rng.uniform(-0.001, 0.001, t.size)
    moved = np.column_stack([np.interp(jittered, t, column) for column in xy.T])
    report = smoothness_report(jittered, moved)
    assert report.movements == 10
    assert report.spectral_arc_length.value == pytest.approx(
        smoothness_report(t, xy).spectral_arc_length.value, abs=0.02
    )


def test_no_movement_is_an_answer():
    """A stick at rest, or too few samples: no figure, and a sentence why."""
    for n in (1, 1000):
        report = smoothness_report(np.arange(n) / RATE_HZ, np.zeros((n, 2)))
        assert report.movements == 0
        assert report.spectral_arc_length.value is None
        assert "no movement" in said(report.spectral_arc_length.why)


def test_few_movements_have_no_interval():
    """Four movements: their middle, and a sentence instead of an interval."""
    report = smoothness_report(*to_and_fro(4))
    assert report.movements == 4
    assert not report.spectral_arc_length.has_interval
    assert "At least 6" in said(report.spectral_arc_length.why)


@pytest.mark.parametrize(
    ("speed", "words"),
    [
        ([1.0, 2.0], "at least three samples"),
        ([0.0, math.nan, 1.0, 0.0], "an empty cell or a negative value"),
        ([0.0, -1.0, 1.0, 0.0], "an empty cell or a negative value"),
        ([0.0, 0.0, 0.0, 0.0], "no movement"),
    ],
)
def test_bad_speed_is_refused(speed, words):
    """Both measures refuse in the same words."""
    for measure in (spectral_arc_length, log_dimensionless_jerk):
        with pytest.raises(BadInput, match=words):
            measure(speed, RATE_HZ)


def test_bad_settings_are_refused():
    """A rate or a cut-off of 0."""
    with pytest.raises(BadInput, match="rate_hz"):
        spectral_arc_length([0.0, 1.0, 0.0], 0.0)
    with pytest.raises(BadInput, match="cut-off above 0 Hz"):
        spectral_arc_length([0.0, 1.0, 0.0], 100.0, cutoff_hz=0.0)
    with pytest.raises(BadInput, match="a straight line"):
        log_dimensionless_jerk([1.0, 1.0, 1.0], 100.0)


def test_whole_strokes_of_a_drawing():
    """Two strokes of a slow circle that never stops: the strokes are the movements, and nothing else is; without their
    numbers a drawing is not cut into pieces."""
    t = np.arange(2400) / RATE_HZ
    angle = 2 * np.pi * 0.2 * t + 0.3 * np.sin(2 * np.pi * 0.4 * t)
    xy = 40 * np.column_stack([np.cos(angle), np.sin(angle)])
    stroke = np.where(t < 12, 0, 1)
    stroke[1190:1210] = -1
    report = smoothness_report(t, xy, stroke=stroke)
    assert (report.movements, report.strokes) == (2, True)
    whole = smoothness_report(t, xy)
    assert whole.movements == 0
    assert "hardly ever stops" in said(whole.spectral_arc_length.why)


def test_a_shaken_stroke_is_less_smooth():
    """The same circle with a shake of 4 Hz and 5 % of its radius is farther from 0 in both measures."""
    t = np.arange(1000) / RATE_HZ
    circle = 40 * np.column_stack([np.cos(2 * np.pi * 0.2 * t), np.sin(2 * np.pi * 0.2 * t)])
    shaken = circle * (1 + 0.05 * np.sin(2 * np.pi * 4 * t))[:, None]
    stroke = np.zeros(1000, dtype=int)
    plain, rough = smoothness_report(t, circle, stroke=stroke), smoothness_report(t, shaken, stroke=stroke)
    assert rough.spectral_arc_length.value < plain.spectral_arc_length.value
    assert rough.log_dimensionless_jerk.value < plain.log_dimensionless_jerk.value - 1


def test_a_stroke_with_a_gap_is_left_out():
    """Half a second without samples within the second of two strokes: one remains."""
    t = np.arange(1200) / RATE_HZ
    xy = np.column_stack([np.cos(t), np.sin(t)])
    kept = (t < 8.0) | (t > 8.5)
    stroke = (t > 6.0).astype(int)
    assert smoothness_report(t[kept], xy[kept], stroke=stroke[kept]).movements == 1


def test_too_few_samples_a_second_give_none():
    """Ten a second: no figure, and what to do."""
    t, xy = to_and_fro(10)
    report = smoothness_report(t[::10], xy[::10])
    assert report.movements == 0
    assert report.log_dimensionless_jerk.why == message(Aiming.few_samples, rate_hz=10.0, least_hz=20.0)


def test_noise_is_no_movement():
    """A stick that nobody moves: neither its noise nor what stays within the least extent is a movement."""
    rng = np.random.default_rng(3)
    t = np.arange(3000) / RATE_HZ
    assert smoothness_report(t, rng.normal(0, 0.004, (3000, 2))).movements == 0
    still, xy = to_and_fro(10)
    assert smoothness_report(still, 0.02 * xy, least_extent=0.05).movements == 0
    assert smoothness_report(still, xy, least_extent=0.05).movements == 10
