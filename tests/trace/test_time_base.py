"""One time base: rounding, a clock's unit and jitter within the rounding are no movement."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.signal import butter, lombscargle, sosfiltfilt

from stickwright.model.recorded import TraceReport
from stickwright.model.recording import Recording
from stickwright.trace.report import trace_report
from stickwright.trace.stamps import Stretch, even, on_grid, rounding_s, stretches
from stickwright.trace.tremor import tremor_report

Array = np.ndarray


def to_and_fro(rate_hz: float) -> tuple[Array, Array, Array]:
    """Invented: 20 s of rest, 20 s of keeping still with a tremor of 5.6 Hz, then 40 s of aimed to and fro."""
    rng = np.random.default_rng(21)
    n = int(80 * rate_hz)
    t = np.arange(n) / rate_hz
    s = np.clip((t % 1.6) / 0.8, 0, 1)
    there = 10 * s**3 - 15 * s**4 + 6 * s**5
    aimed = 0.6 * np.where((t // 1.6) % 2 == 0, there, 1 - there)
    cue = np.where(t < 20, "rest", np.where(t < 40, "still", "aim"))
    x = np.where(cue == "aim", aimed, 0.0)
    shake = np.where(cue == "still", 0.03 * np.sin(2 * np.pi * 5.6 * t), 0.0)
    xy = np.column_stack([x + shake, 0.4 * x + 0.6 * shake]) + rng.normal(0, 0.002, (n, 2))
    return t, xy, cue


def figures_of(report: TraceReport) -> dict[str, float]:
    assert report.rest is not None
    assert report.tremor is not None
    assert report.smoothness is not None
    assert report.bursts is not None
    return {
        "rate": report.rate_hz,
        "rest noise": report.rest.noise_rms.value,
        "centre": report.rest.offset_x.value,
        "tremor frequency": report.tremor.frequency_hz.value,
        "size in the band": report.tremor.band_rms.value,
        "size of the peak": report.tremor.peak_rms.value,
        "excess": report.tremor.excess_rms.value,
        "zero-crossing frequency": report.tremor.crossing_hz.value,
        "movements": report.smoothness.movements,
        "spectral arc length": report.smoothness.spectral_arc_length.value,
        "log jerk": report.smoothness.log_dimensionless_jerk.value,
        "sudden movements": report.bursts.count,
    }


STAMPS = {
    "0.1 ms": lambda t: np.round(t, 4),
    "1 ms": lambda t: np.round(t, 3),
    "1 ms, cut off": lambda t: np.floor(t * 1000 + 1e-6) / 1000,
    "counted in ms": lambda t: np.round(t * 1000) * 0.001,
    "minutes, five decimals": lambda t: np.round(t / 60, 5) * 60,
    "minutes, four decimals": lambda t: np.round(t / 60, 4) * 60,
    "single precision": lambda t: t.astype(np.float32).astype(np.float64),
    "a clock of 10 ms": lambda t: np.round(t, 2),
}


@pytest.mark.parametrize("stamps", STAMPS)
@pytest.mark.parametrize("rate_hz", [60.0, 144.0])
def test_rounding_and_unit_change_no_figure(stamps, rate_hz):
    """The same samples with stamps rounded or written in another unit: counts are the same, and every other figure is
    the same to a thousandth or to 0.00002 of full output (one sample more or less of a rest)."""
    t, xy, cue = to_and_fro(rate_hz)
    told = figures_of(trace_report(Recording("r.csv", t, xy, cue=cue)))
    again = figures_of(trace_report(Recording("r.csv", STAMPS[stamps](t), xy, cue=cue)))
    assert told["movements"] > 20
    assert (again["movements"], again["sudden movements"]) == (told["movements"], told["sudden movements"])
    assert again == pytest.approx(told, rel=1e-3, abs=2e-5)


def test_jitter_within_the_rounding_changes_no_figure():
    """125 samples a second, every stamp up to 0.45 ms early or late and then rounded to 1 ms: as without jitter."""
    t, xy, cue = to_and_fro(125.0)
    stamps = np.round(t + np.random.default_rng(5).uniform(-0.00045, 0.00045, t.size), 3)
    told = figures_of(trace_report(Recording("r.csv", t, xy, cue=cue)))
    assert figures_of(trace_report(Recording("r.csv", stamps, xy, cue=cue))) == pytest.approx(told, rel=1e-3, abs=2e-5)


@pytest.mark.parametrize("true_hz", [3.5, 8.0, 11.5])
@pytest.mark.parametrize("rate_hz", [60.0, 100.0])
def test_jitter_beyond_the_rounding_keeps_frequency_and_size(true_hz, rate_hz):
    """Stamps that truly come up to a sixth of a step early or late, and are told to 0.1 ms: frequency within 0.01 Hz and
    size within 2 % of what was built in, where straight lines between the samples would take up to 12 % off."""
    rng = np.random.default_rng(9)
    t = np.arange(int(30 * rate_hz)) / rate_hz
    t = np.round(t + rng.uniform(-1, 1, t.size) / (6 * rate_hz), 4)
    xy = 0.02 * np.sin(2 * np.pi * true_hz * t)[:, None] * [1.0, 0.5] + rng.normal(0, 0.0005, (t.size, 2))
    report = tremor_report(t, xy, still=True)
    assert report.frequency_hz.value == pytest.approx(true_hz, abs=0.01)
    assert report.band_rms.value == pytest.approx(0.02 / math.sqrt(2) * math.hypot(1.0, 0.5), rel=0.02)


def test_band_limited_against_straight_lines():
    """By hand: straight lines at all places between even samples keep sqrt((2 + cos w)/3) of a sine's rms, w its angle in
    a step. At a seventh of the rate that is 0.935; what `even` gives keeps 0.995 or more."""
    t = np.arange(3000) / 100
    at = t + np.random.default_rng(3).uniform(-0.002, 0.002, t.size)
    wave = np.sin(2 * np.pi * (100 / 7) * at)[:, None]
    found = even(Stretch(at, wave), 100.0)[50:-50, 0]
    true = np.sin(2 * np.pi * (100 / 7) * (at[0] + np.arange(3000)[50 : 50 + found.size] / 100))
    assert float(np.sqrt(np.mean((found - true) ** 2) / np.mean(true**2))) < 0.01
    assert float(found.std() / true.std()) > 0.995


def test_zero_crossing_frequency_of_uneven_stamps():
    """Half of the samples lost at random: sway of 0.5 Hz and a tremor of 5 Hz give the zero-crossing frequency that
    their sizes give by hand, sqrt((0.25 a^2 + 25 b^2)/(a^2 + b^2))."""
    rng = np.random.default_rng(4)
    t = np.sort(rng.permutation(6000)[:3000]) / 100
    xy = np.column_stack([0.05 * np.sin(2 * np.pi * 0.5 * t), 0.02 * np.sin(2 * np.pi * 5 * t)])
    by_hand = math.sqrt((0.25 * 0.05**2 + 25 * 0.02**2) / (0.05**2 + 0.02**2))
    assert tremor_report(t, xy, still=True).crossing_hz.value == pytest.approx(by_hand, rel=0.06)
    even_t = np.arange(6000) / 100
    xy = np.column_stack([0.05 * np.sin(2 * np.pi * 0.5 * even_t), 0.02 * np.sin(2 * np.pi * 5 * even_t)])
    assert tremor_report(even_t, xy, still=True).crossing_hz.value == pytest.approx(by_hand, rel=0.02)


def test_sizes_of_uneven_stamps_by_lomb_and_scargle():
    """Half of the samples lost at random: the size told agrees with the amplitude that scipy's lombscargle fits."""
    rng = np.random.default_rng(12)
    t = np.sort(rng.permutation(4000)[:2000]) / 100
    x = 0.03 * np.sin(2 * np.pi * 6.3 * t + 1) + rng.normal(0, 0.001, t.size)
    amplitude = abs(lombscargle(t, x, np.array([2 * np.pi * 6.3]), normalize="amplitude").item())
    assert tremor_report(t, x[:, None]).peak_rms.value == pytest.approx(amplitude / math.sqrt(2), rel=0.03)


def test_size_in_the_band_as_scipy_filters_it():
    """Even noise with a burst at its end: rms from 3 to 12 Hz as a steep Butterworth band-pass of scipy leaves it."""
    rng = np.random.default_rng(8)
    xy = np.cumsum(rng.normal(0, 0.01, (4000, 3)), axis=0)
    xy[3900:] += 0.5 * rng.normal(0, 1, (100, 3))
    kept = sosfiltfilt(butter(8, (3, 12), "bandpass", fs=100, output="sos"), xy, axis=0)
    by_scipy = math.sqrt(float((kept**2).sum(axis=1).mean()))
    assert tremor_report(np.arange(4000) / 100, xy).band_rms.value == pytest.approx(by_scipy, rel=0.05)


def test_missing_samples_and_gaps_keep_the_grid():
    """Stamps of 60 Hz rounded to 1 ms, ten samples lost one by one and 2 s lost at once: between gaps every stamp is
    within 0.05 ms of its true time, or all are off by the same."""
    true = np.arange(1800) / 60
    kept = np.ones(1800, dtype=bool)
    kept[[100, 230, 231, 400, 600, 777, 1300, 1500, 1650, 1700]] = False
    kept[900:1020] = False
    found = on_grid(np.round(true, 3)[kept])
    for part in (slice(0, 893), slice(893, None)):
        off = (found - true[kept])[part]
        assert float(np.ptp(off)) < 5e-5


def test_true_jitter_is_left_alone():
    """Stamps told to a microsecond that wander by a millisecond are what they are; so are whole steps with one missing."""
    rng = np.random.default_rng(2)
    wandering = np.round(np.arange(500) / 100 + rng.uniform(-0.001, 0.001, 500), 6)
    assert np.array_equal(on_grid(wandering), wandering)
    holed = np.delete(np.arange(500) / 100, [250])
    assert np.array_equal(on_grid(holed), holed)


@given(
    rate_hz=st.floats(20, 400),
    rounding=st.sampled_from([1e-3, 1e-4, 1e-5]),
    start=st.floats(0, 1000),
    n=st.integers(60, 400),
)
def test_law_rounded_even_stamps_come_back(rate_hz, rounding, start, n):
    """Law: even stamps that were rounded come back to an even grid, each within the rounding of where it was, unless
    the rounding is about a whole step."""
    true = start + np.arange(n) / rate_hz
    stamps = np.round(true / rounding) * rounding
    found = on_grid(stamps)
    assert float(np.abs(found - true).max()) <= 1.1 * rounding
    assert rounding_s(stamps) == 0 or rounding_s(stamps) >= 0.999 * rounding
    parts = stretches(stamps, np.zeros((n, 1)))
    assert sum(part.times_s.size for part in parts) == n
    steps = np.diff(found)
    assert float(np.ptp(steps)) <= max(2.1e-3 / rate_hz, 1e-9) or rounding_s(stamps) == 0 or n < 100


def test_law_a_later_beginning_changes_nothing():
    """Uneven samples, and two columns: read at an even rate alike, whether the clock began at 0 or at 1000 s."""
    rng = np.random.default_rng(4)
    t = np.cumsum(rng.uniform(0.004, 0.02, 300))
    values = np.column_stack([np.sin(3 * t), np.cos(2 * t)])
    assert even(Stretch(t + 1000 - t[0], values), 90.0) == pytest.approx(
        even(Stretch(t - t[0], values), 90.0), abs=1e-6
    )


def test_two_samples_are_a_stretch():
    """One alone is none; where a value is missing, it does not count."""
    t, values = np.array([0.0, 0.01]), np.zeros((2, 1))
    assert [part.times_s.size for part in stretches(t, values)] == [2]
    assert stretches(t, np.array([[0.0], [math.nan]])) == []
