"""Which peaks stand out, where they lie, and what size is told: all against what was built in."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.signal import butter, sosfilt, sosfiltfilt

from said import said
from stickwright.trace.peaks import Peak, middle_of
from stickwright.trace.spectrum import from_below
from stickwright.trace.tremor import tremor_report

RATE_HZ = 100.0


def band_noise(rng: np.random.Generator, seconds: float, low_hz: float, high_hz: float, rms: float) -> np.ndarray:
    """Two columns of noise that is flat between two frequencies, with this rms of both together."""
    n = int(seconds * RATE_HZ)
    frequency_hz = np.fft.rfftfreq(n, 1 / RATE_HZ)
    inside = (frequency_hz >= low_hz) & (frequency_hz <= high_hz)
    drawn = inside[:, None] * (rng.standard_normal((inside.size, 2)) + 1j * rng.standard_normal((inside.size, 2)))
    noise = np.fft.irfft(drawn, n, axis=0)
    return noise * rms / math.sqrt(float((noise**2).sum(axis=1).mean()))


def test_the_middle_of_a_broad_peak_is_that_of_its_band_with_both_ends():
    """By hand: power 1, 2, 3, 2, 1 at 4, 4.5, 5, 5.5 and 6 Hz has its mean at 5 Hz, whatever lies outside the band."""
    frequency_hz = np.arange(0.0, 20.5, 0.5)
    power = np.full(frequency_hz.size, 7.0)
    power[8:13] = [1, 2, 3, 2, 1]
    found, beyond = middle_of(frequency_hz, power, Peak(10, 4.0, 6.0, True), 10.0, 14.0)
    assert (found, beyond) == (pytest.approx(5.0, abs=1e-12), False)


def test_power_from_below_on_a_flat_spectrum():
    """By hand, 30 degrees of freedom a bin and bins of 0.1 Hz: 28 bins, from 4 to 1.2 Hz below, have the middle 1; one standard error of
    it is sqrt(2 / 30 x 2.4 / 28) = 0.0756, and a middle of 30 degrees of freedom is (1 - 2 / 270)^3 = 0.978 of the mean."""
    flat = np.ones(200)
    expected = from_below(np.arange(200) / 10, flat, 30.0)
    assert expected[60:] == pytest.approx(np.full(140, 1.0756 / 0.978), rel=1e-3)
    assert expected[0] == 0.0


def test_a_slope_from_few_bins_is_not_taken_at_its_word():
    """By hand, bins of 0.5 Hz, 30 degrees of freedom, power falling as 1 over the square: at the 12th bin those from the 4th to the 8th
    count. Middles 1/16 and 1/25 (0.05125 on average) about bin 4.5, 1/49 about bin 7; the logarithm of their ratio, -0.9208, less one
    standard error, sqrt(2 / 30 x 2.4 (1/2 + 1/3)) = 0.3651, over ln(7 / 4.5) is a slope of -1.2577. From the middle of all, 1/36 about
    bin 6, with its error of 0.1789: 1/36 x 1.1789 x 2^-1.2577 over 0.97794."""
    power = 1 / np.maximum(np.arange(40.0), 1.0) ** 2
    expected = from_below(np.arange(40) / 2, power, 30.0)
    assert expected[12] == pytest.approx(0.01400, rel=1e-3)


def test_a_broad_peak_is_a_peak():
    """Movement spread evenly from 4 to 9 Hz, four fifths of all power, in 12 recordings of 30 s: all are told as a broad
    rhythm, with middle, size and share as built in."""
    rng = np.random.default_rng(3)
    for _ in range(12):
        t = np.arange(3000) / RATE_HZ
        xy = band_noise(rng, 30, 4.0, 9.0, 0.02) + band_noise(rng, 30, 0.0, 50.0, 0.01 * math.sqrt(50 / 23))
        report = tremor_report(t, xy, still=True)
        assert report.stands_out
        assert report.peak_hz is not None
        assert report.broad
        assert report.peak_hz == pytest.approx((4.0, 9.0), abs=0.6)
        assert report.band_rms.value == pytest.approx(math.hypot(0.02, 0.01 * math.sqrt(9 / 23)), rel=0.06)
        assert report.frequency_hz.value == pytest.approx(6.5, abs=0.4)
        assert report.share.value == pytest.approx(0.8 + 0.2 * 5 / 23, abs=0.06)
        assert report.excess_rms.value == pytest.approx(0.02, rel=0.12)


def test_slow_falling_and_low_passed_noise_have_no_broad_peak():
    """Random walks, and noise through scipy's low-pass of 6 Hz, have no hump: at most 2 of 30 recordings stand out."""
    rng = np.random.default_rng(5)
    t = np.arange(3000) / RATE_HZ
    alarms = 0
    for _ in range(15):
        alarms += tremor_report(t, np.cumsum(rng.normal(0, 1, (3000, 2)), axis=0)).stands_out
        passed = sosfiltfilt(butter(2, 6, fs=RATE_HZ, output="sos"), rng.normal(0, 1, (3000, 2)), axis=0)
        alarms += tremor_report(t, passed + rng.normal(0, 0.05, (3000, 2))).stands_out
    assert alarms <= 2


def low_passed(rng: np.random.Generator, edge_hz: float, kind: str) -> np.ndarray:
    """30 s of white noise behind a device's low-pass, scipy's or a brick wall, in two columns."""
    white = rng.normal(0, 1, (3000, 2))
    if kind == "brick wall":
        return band_noise(rng, 30, 0.0, edge_hz, 1.0) + 0.03 * white
    passed = np.asarray(sosfilt(butter(4, edge_hz, fs=RATE_HZ, output="sos"), white, axis=0))
    return passed + rng.normal(0, 0.001, (3000, 2))


@pytest.mark.parametrize("kind", ["brick wall", "Butterworth"])
def test_the_edge_of_a_low_pass_is_no_rhythm(kind):
    """Noise behind low-passes of 3, 6 and 8 Hz has no rhythm: at most 5 of 60 recordings of 30 s stand out (5 % of 60 is 3, and
    chance gives more than 5 once in 12 tries). A tremor of a quarter of the noise's power, just below its edge, is found
    in all but one of 12."""
    rng = np.random.default_rng(23)
    t = np.arange(3000) / RATE_HZ
    alarms = missed = 0
    for edge_hz in (3.0, 6.0, 8.0):
        for k in range(20):
            noise = low_passed(rng, edge_hz, kind)
            alarms += tremor_report(t, noise, still=True).stands_out
            if k < 4:
                size = math.sqrt(0.25 * float((noise**2).sum(axis=1).mean()) * 2)
                tremor = size * np.sin(2 * np.pi * (edge_hz - 0.4) * t)[:, None] * [0.6, 0.8]
                found = tremor_report(t, noise + tremor, still=True)
                missed += not (found.stands_out and abs(found.frequency_hz.value - edge_hz + 0.4) < 0.2)
    assert alarms <= 5
    assert missed <= 1


@pytest.mark.parametrize("true_hz", [15.5, 19.7, 24.9])
def test_what_is_faster_than_a_hand_is_no_tremor(true_hz):
    """A steady line above 15 Hz, as a motor or uneven reports make it, is said and not called a rhythm; one of 6 Hz beside it,
    weaker, still is."""
    rng = np.random.default_rng(29)
    t = np.arange(3000) / RATE_HZ
    line = 0.03 * np.sin(2 * np.pi * true_hz * t)[:, None] * [0.8, 0.6] + rng.normal(0, 0.004, (3000, 2))
    report = tremor_report(t, line, still=True)
    assert not report.stands_out
    assert f"{true_hz:.1f} Hz is not a tremor of the hand" in said(report.sentence)
    both = tremor_report(t, line + 0.01 * np.sin(2 * np.pi * 6 * t)[:, None] * [0.8, 0.6], still=True)
    assert both.stands_out
    assert both.frequency_hz.value == pytest.approx(6, abs=0.05)


def test_rounding_to_steps_is_no_rhythm():
    """A slow straight movement through steps of 0.0125 at 7.3 steps a second: without the step its saw-tooth stands out at 7.3 Hz;
    with the step told it is not called a rhythm. A tremor of three steps at the same place is."""
    rng = np.random.default_rng(31)
    t = np.arange(3000) / RATE_HZ
    slow = (0.0125 * 7.3 * t)[:, None] * [1.0, 0.0] + rng.normal(0, 0.0005, (3000, 2))
    rounded = np.round(slow / 0.0125) * 0.0125
    assert tremor_report(t, rounded).frequency_hz.value == pytest.approx(7.3, abs=0.05)
    told = tremor_report(t, rounded, step=0.0125)
    assert not told.stands_out
    assert "no larger than the rounding" in said(told.sentence)
    shaking = slow + 0.0375 * np.sin(2 * np.pi * 7.3 * t)[:, None] * [0.6, 0.8]
    assert tremor_report(t, np.round(shaking / 0.0125) * 0.0125, step=0.0125).stands_out


@pytest.mark.parametrize("true_hz", [2.0, 2.1, 14.9, 15.0])
def test_no_interval_collapses_at_an_end_of_the_band(true_hz):
    """A rhythm that wanders about an end of the band: its interval holds it, or the reason says that it may lie beyond."""
    rng = np.random.default_rng(7)
    t = np.arange(6000) / RATE_HZ
    phase = (
        2 * np.pi * np.cumsum(true_hz + 0.25 * np.convolve(rng.normal(0, 1, 6000), np.ones(200) / 14, "same")) / RATE_HZ
    )
    xy = 0.05 * np.column_stack([np.cos(phase), np.sin(phase)]) + rng.normal(0, 0.004, (6000, 2))
    report = tremor_report(t, xy, still=True)
    if not report.stands_out:
        return
    found = report.frequency_hz
    if found.has_interval:
        assert found.high - found.low > 0.02
        assert found.low - 0.3 <= true_hz <= found.high + 0.3
    else:
        assert found.why is not None
        assert found.why.text in ("at_edge", "parts_differ")


def strokes(pace_hz: float, seconds: float, rng: np.random.Generator) -> np.ndarray:
    """To and fro, quick there and slow back, at a pace that wavers by 2 %."""
    t = np.arange(int(seconds * RATE_HZ)) / RATE_HZ
    many = int(seconds * pace_hz) + 10
    turns = np.cumsum(np.concatenate([[0], rng.normal(1, 0.02, 2 * many) * np.tile([0.35, 0.65], many) / pace_hz]))
    x = 0.3 * np.cos(np.pi * np.interp(t, turns, np.arange(2 * many + 1)))
    return np.column_stack([x, 0.2 * x]) + rng.normal(0, 0.002, (t.size, 2))


@pytest.mark.parametrize("pace_hz", [1.2, 1.8, 2.6, 3.6])
def test_harmonics_of_a_pace_are_named(pace_hz):
    """Strokes at up to 3.6 a second: every peak told as a harmonic is a multiple of the pace, none is told as a tremor, and a
    tremor of 6.4 Hz on top, no multiple, is told as such."""
    rng = np.random.default_rng(11)
    xy = strokes(pace_hz, 40, rng)
    t = np.arange(len(xy)) / RATE_HZ
    report = tremor_report(t, xy)
    assert report.pace_hz == pytest.approx(pace_hz, rel=0.03)
    assert report.multiples
    for times, at_hz in report.multiples:
        assert at_hz == pytest.approx(times * pace_hz, rel=0.04)
    assert "harmonic" in said(report.sentence)
    assert not report.stands_out or report.frequency_hz.value == pytest.approx(pace_hz, rel=0.04)
    shaking = tremor_report(t, xy + 0.02 * np.sin(2 * np.pi * 6.4 * t)[:, None] * [0.5, 1.0])
    told = shaking.other_hz if shaking.other_hz is not None else shaking.frequency_hz.value
    assert told == pytest.approx(6.4, abs=0.1)


def test_keeping_still_has_no_pace():
    """A tremor of 3.5 Hz with its own double while keeping still is a tremor, not the pace of a task."""
    t = np.arange(3000) / RATE_HZ
    xy = 0.03 * np.sin(2 * np.pi * 3.5 * t)[:, None] + 0.01 * np.sin(2 * np.pi * 7 * t)[:, None] * [1.0, 0.5]
    report = tremor_report(t, xy + np.random.default_rng(1).normal(0, 0.005, (3000, 2)), still=True)
    assert report.pace_hz is None
    assert report.multiples == ()
    assert report.frequency_hz.value == pytest.approx(3.5, abs=0.05)


def test_three_axes_and_the_line_of_the_tremor():
    """A tremor along (0.36, 0.48, 0.8) in noise alike on all axes: with three columns its size and line are as built in; the same
    turned in space gives the same frequency and size."""
    rng = np.random.default_rng(15)
    t = np.arange(3000) / RATE_HZ
    line = np.array([0.36, 0.48, 0.8])
    xyz = 0.02 * math.sqrt(2) * np.sin(2 * np.pi * 6.2 * t)[:, None] * line + rng.normal(0, 0.004, (3000, 3))
    report = tremor_report(t, xyz, still=True)
    assert report.axis == pytest.approx(line, abs=0.02)
    assert report.axis_share is not None
    assert report.axis_share > 0.95
    assert report.peak_rms.value == pytest.approx(math.hypot(0.02, 0.004 * math.sqrt(3 * 2 / 50)), rel=0.02)
    turned = tremor_report(t, xyz @ np.linalg.qr(rng.normal(size=(3, 3)))[0], still=True)
    assert turned.frequency_hz.value == pytest.approx(report.frequency_hz.value, abs=1e-6)
    assert turned.band_rms.value == pytest.approx(report.band_rms.value, rel=1e-9)


def test_violent_stretches_are_counted_and_said():
    """10 s of 40 s at five times the size: the rms is that of all 40 s, by hand 0.01 sqrt((30 + 10 x 25)/40), not that of the calm
    three quarters; and how long and how large is said."""
    rng = np.random.default_rng(17)
    t = np.arange(4000) / RATE_HZ
    calm = band_noise(rng, 40, 3.0, 12.0, 0.01)
    factor = np.where((t >= 20) & (t < 30), 5.0, 1.0)
    report = tremor_report(t, calm * factor[:, None] + rng.normal(0, 1e-4, (4000, 2)), still=True)
    assert report.band_rms.value == pytest.approx(0.01 * math.sqrt(280 / 40), rel=0.05)
    assert report.set_aside_s == pytest.approx(10, abs=3)
    assert report.set_aside_times == pytest.approx(5, rel=0.25)
    assert "violent" in said(report.sentence)
    assert "counts in every size" in said(report.sentence)
