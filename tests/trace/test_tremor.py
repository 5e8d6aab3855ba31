"""Tremor: found when there, not when not, and never beyond what the sampling can tell."""

import math
from pathlib import Path

import numpy as np
import pytest
from scipy.signal import lombscargle, welch

from said import said
from stickwright.errors import BadInput
from stickwright.trace.tremor import crossing_frequency, dominant_tremor, tremor_report

DATA = Path(__file__).parents[1] / "data" / "tremor"
RATE_HZ = 100.0


def real(name: str) -> tuple[np.ndarray, np.ndarray]:
    rows = np.loadtxt(DATA / f"{name}.csv", delimiter=",", skiprows=1)
    return rows[:, 0], rows[:, 1:]


def noise(exponent: float, seconds: float, rng: np.random.Generator) -> np.ndarray:
    """Two columns with power falling as 1/f^exponent, cut out of a longer run so that the ends do not meet."""
    n = int(seconds * RATE_HZ)
    frequency_hz = np.fft.rfftfreq(4 * n, 1 / RATE_HZ)
    frequency_hz[0] = frequency_hz[1]
    white = np.fft.rfft(rng.standard_normal((4 * n, 2)), axis=0)
    return np.fft.irfft(white * frequency_hz[:, None] ** (-exponent / 2), axis=0)[n : 2 * n]


def aimed_movements(seconds: float, rng: np.random.Generator) -> np.ndarray:
    """Minimum-jerk movements from place to place over the whole output, with a little sensor noise."""
    n = int(seconds * RATE_HZ)
    pieces, here, done = [], np.zeros(2), 0
    while done < n:
        there = rng.uniform(-1, 1, 2)
        s = np.linspace(0, 1, int(rng.uniform(0.4, 1.2) * RATE_HZ))[:, None]
        pieces += [here + (there - here) * (10 * s**3 - 15 * s**4 + 6 * s**5)]
        pieces += [np.repeat(there[None], int(rng.uniform(0.2, 0.6) * RATE_HZ), axis=0)]
        here, done = there, done + pieces[-1].shape[0] + pieces[-2].shape[0]
    return np.vstack(pieces)[:n] + rng.normal(0, 0.002, (n, 2))


@pytest.mark.parametrize("exponent", [0.0, 1.0])
def test_false_alarms_are_about_as_stated(exponent):
    """White noise and pure 1/f movement hold no tremor: of 150 recordings of 20 s, about 5 in 100 may look like one.
    15 or more of 150 would come by chance in 1 of 100 at a true 5 %."""
    rng = np.random.default_rng(2)
    times_s = np.arange(2000) / RATE_HZ
    alarms = sum(tremor_report(times_s, noise(exponent, 20, rng)).stands_out for _ in range(150))
    assert alarms <= 14


def test_aimed_movements_are_no_tremor():
    """Quick voluntary movements have a spectrum with corners: at most 2 false alarms in 30 recordings."""
    rng = np.random.default_rng(3)
    times_s = np.arange(2000) / RATE_HZ
    assert sum(tremor_report(times_s, aimed_movements(20, rng)).stands_out for _ in range(30)) <= 2


def test_modest_tremor_is_found_in_aimed_movements():
    """A steady rhythm of 4 to 6 Hz, 1 % of full output, under movements over the whole output: found in nearly all
    of 20 recordings, its frequency within the interval in most, its size within a fifth."""
    rng = np.random.default_rng(4)
    t = np.arange(2000) / RATE_HZ
    found, covered = 0, 0
    for _ in range(20):
        true_hz = rng.uniform(4, 6)
        shake = 0.01 * math.sqrt(2) * np.sin(2 * np.pi * true_hz * t + rng.uniform(0, 6))
        report = tremor_report(t, aimed_movements(20, rng) + shake[:, None] * [0.8, 0.6])
        if report.stands_out:
            found += 1
            covered += report.frequency_hz.low <= true_hz <= report.frequency_hz.high
            assert report.excess_rms.value == pytest.approx(0.01, rel=0.2)
    assert found >= 19
    assert covered >= 17


def test_uneven_stamps_give_the_same_frequency():
    """Half of the samples lost at random: the rhythm is found at the same frequency from the stamps as they are."""
    rng = np.random.default_rng(6)
    t = np.sort(rng.permutation(3000)[:1500]) / RATE_HZ
    xy = rng.normal(0, 0.01, (1500, 2)) + 0.02 * np.sin(2 * np.pi * 5.4 * t)[:, None] + 0.3 * np.sin(2 * t)[:, None]
    report = tremor_report(t, xy)
    assert report.stands_out
    assert report.frequency_hz.value == pytest.approx(5.4, abs=0.05)
    assert report.peak_rms.value == pytest.approx(math.hypot(0.02, 0.01 * math.sqrt(2 * 2 / 25)), rel=0.06)
    assert "uneven" in said(report.sentence)


def test_fast_uneven_stamps():
    """A thousand samples a second at random moments: averaged down first, frequency and size as built in."""
    rng = np.random.default_rng(14)
    t = np.cumsum(rng.exponential(0.001, 20_000))
    xy = rng.normal(0, 0.02, (t.size, 2)) + 0.02 * np.sin(2 * np.pi * 5.4 * t)[:, None] + 0.3 * np.sin(2 * t)[:, None]
    report = tremor_report(t, xy)
    assert report.frequency_hz.value == pytest.approx(5.4, abs=0.05)
    assert report.excess_rms.value == pytest.approx(0.02, rel=0.1)


def test_slow_movement_on_uneven_stamps_is_no_tremor():
    """Large slow movement at random stamps, a thousand or fifty a second: at most 2 of 8 recordings of each look like
    a tremor."""
    rng = np.random.default_rng(15)
    for fast in (True, False):
        alarms = 0
        for _ in range(8):
            t = np.cumsum(rng.exponential(0.001, 12_000)) if fast else np.sort(rng.permutation(2000)[:1000]) / RATE_HZ
            slow = np.column_stack([np.sin(2 * t) + 0.5 * np.sin(4.4 * t), np.cos(3.1 * t)])
            alarms += tremor_report(t, slow + rng.normal(0, 0.01, slow.shape)).stands_out
        assert alarms <= 2


def test_small_jitter_changes_little():
    """A clock that jitters by a tenth of a step moves the frequency by less than a hundredth of a hertz."""
    rng = np.random.default_rng(7)
    t = np.arange(2000) / RATE_HZ
    jittered = t + rng.uniform(-0.001, 0.001, 2000)
    still = rng.normal(0, 0.01, (2000, 2))

    def told(stamps: np.ndarray) -> float:
        xy = still + 0.02 * np.sin(2 * np.pi * 5.4 * stamps)[:, None]
        return tremor_report(stamps, xy).frequency_hz.value

    assert told(jittered) == pytest.approx(told(t), abs=0.01)


def test_a_gap_is_not_bridged():
    """Unplugged for 5 s in the middle, empty cells here and there: the rhythm on both sides is still found."""
    rng = np.random.default_rng(8)
    t = np.arange(3000) / RATE_HZ
    xy = rng.normal(0, 0.01, (3000, 2)) + 0.02 * np.sin(2 * np.pi * 6.2 * t)[:, None]
    xy[700, 0] = np.nan
    live = (t < 12) | (t > 17)
    report = tremor_report(t[live], xy[live])
    assert report.frequency_hz.value == pytest.approx(6.2, abs=0.05)


def test_a_burst_is_no_rhythm():
    """One violent jerk does not feign a rhythm, nor does it hide the one that is there."""
    rng = np.random.default_rng(9)
    t = np.arange(2000) / RATE_HZ
    xy = rng.normal(0, 0.01, (2000, 2))
    jerk = np.exp(-(((t - 9.3) / 0.05) ** 2))[:, None]
    assert not tremor_report(t, xy + jerk).stands_out
    report = tremor_report(t, xy + jerk + 0.02 * np.sin(2 * np.pi * 5.0 * t)[:, None])
    assert report.frequency_hz.value == pytest.approx(5.0, abs=0.05)


def test_multiples_of_a_voluntary_pace_are_no_tremor():
    """To and fro about once a second, quick there and slow back: the peaks at 2, 3, 4 Hz are the shape of the movement.
    At most 1 of 12 such recordings may pass for tremor; a true one of 5.8 Hz on top is found in all."""
    rng = np.random.default_rng(10)
    t = np.arange(3000) / RATE_HZ
    alarms = 0
    for _ in range(12):
        turns = np.cumsum(np.concatenate([[0], rng.normal(1, 0.03, 60) * np.tile([0.35, 0.6], 30)]))
        phase = np.interp(t, turns, np.arange(61))
        x = 0.3 * np.cos(np.pi * phase)
        xy = np.column_stack([x, 0.2 * x]) + rng.normal(0, 0.002, (3000, 2))
        alarms += tremor_report(t, xy).stands_out
        shaking = tremor_report(t, xy + 0.01 * np.sin(2 * np.pi * 5.8 * t)[:, None])
        assert shaking.frequency_hz.value == pytest.approx(5.8, abs=0.1)
    assert alarms <= 1


def test_sampling_sets_the_limit():
    """A stick read 60 times a second tells nothing above 24 Hz; read 10 times, no tremor can be looked for."""
    rng = np.random.default_rng(12)
    assert "between 2 and 24 Hz" in said(tremor_report(np.arange(1200) / 60, rng.normal(0, 1, (1200, 2))).sentence)
    report = tremor_report(np.arange(300) / 10, rng.normal(0, 1, (300, 2)))
    assert not report.stands_out
    assert "too slow" in said(report.sentence)
    assert report.frequency_hz.value is None
    assert report.frequency_hz.why == report.sentence


def test_no_peak_is_an_answer():
    """Without a peak the frequency is not a number, with the reason; size and pace of the movement remain."""
    rng = np.random.default_rng(1)
    report = tremor_report(np.arange(3000) / RATE_HZ, rng.normal(0, 1, (3000, 2)), still=True)
    assert not report.stands_out
    assert said(report.sentence).startswith("No tremor peak stands out between 2 and 25 Hz")
    assert report.frequency_hz.value is None
    assert report.band_hz == (3.0, 12.0)
    assert report.band_rms.value == pytest.approx(math.sqrt(2 * 9 / 50), rel=0.05)
    assert report.crossing_hz.value == pytest.approx(25 / math.sqrt(3), rel=0.03)
    assert report.crossing_hz.low < report.crossing_hz.value < report.crossing_hz.high


def test_keeping_still_counts_the_sway():
    """Sway of about 1.2 Hz while keeping still is involuntary and counted; where movement was meant, no zero-crossing
    frequency is told, since none of it would be of what was not meant."""
    rng = np.random.default_rng(13)
    t = np.arange(3000) / RATE_HZ
    sway = np.column_stack([np.sin(2 * np.pi * 1.2 * t), np.cos(2 * np.pi * 1.2 * t)]) + rng.normal(0, 0.005, (3000, 2))
    assert tremor_report(t, sway, still=True).crossing_hz.value == pytest.approx(1.2, abs=0.05)
    meant = tremor_report(t, sway).crossing_hz
    assert meant.value is None
    assert meant.why is not None
    assert "keeping still" in said(meant.why)
    assert crossing_frequency(sway, RATE_HZ) == pytest.approx(1.2, abs=0.05)
    assert crossing_frequency(sway, RATE_HZ, low_hz=2.0) > 2.0


def test_nothing_moves():
    """A stick cleaned to exact zero holds no tremor, and says so rather than fail."""
    report = tremor_report(np.arange(2000) / RATE_HZ, np.zeros((2000, 2)))
    assert not report.stands_out
    assert "Nothing moved" in said(report.sentence)


def test_resting_leg_by_two_other_routes():
    """Real resting leg (accelerometer, about 100 Hz): scipy's Welch spectrum and a Lomb-Scargle spectrum averaged over
    5 s pieces from the stamps as they are both have their largest peak within the interval told."""
    times_s, acceleration = real("rest-right-leg")
    report = tremor_report(times_s, acceleration, still=True)
    assert report.stands_out
    band_hz = np.arange(2.0, 25.0, 0.05)
    total = np.zeros(band_hz.size)
    for start in np.arange(0, 15, 2.5):
        piece = (times_s >= start) & (times_s < start + 5)
        weights = np.sin(np.pi * (times_s[piece] - start) / 5) ** 2
        for column in acceleration[piece].T:
            total += lombscargle(times_s[piece], column - column.mean(), 2 * np.pi * band_hz, weights=weights)
    frequency_hz, power = welch(acceleration, 1 / np.median(np.diff(times_s)), nperseg=500, axis=0)
    used = (frequency_hz >= 2) & (frequency_hz <= 25)
    by_welch = frequency_hz[used][np.argmax(power.sum(axis=1)[used])]
    assert report.frequency_hz.low - 0.1 <= by_welch <= report.frequency_hz.high + 0.1
    assert report.frequency_hz.low - 0.1 <= band_hz[np.argmax(total)] <= report.frequency_hz.high + 0.1
    assert report.frequency_hz.high - report.frequency_hz.low < 1.0


def test_held_out_arm():
    """Real arm held out: a rhythm of 7 to 8 Hz, the same from half of the samples with their own stamps."""
    times_s, acceleration = real("postural-right-hand")
    report = tremor_report(times_s, acceleration)
    half = np.sort(np.random.default_rng(0).permutation(times_s.size)[: times_s.size // 2])
    again = tremor_report(times_s[half], acceleration[half])
    assert report.stands_out
    assert 7.0 <= report.frequency_hz.value <= 8.0
    assert again.stands_out
    assert report.frequency_hz.low <= again.frequency_hz.value <= report.frequency_hz.high


@pytest.mark.parametrize(
    ("times_s", "xy", "words"),
    [
        ([0.0, 0.02, 0.01], np.zeros((3, 2)), "time stamps that rise"),
        ([0.0, math.nan], np.zeros((2, 2)), "a number of seconds"),
        ([0.0, 0.01], np.zeros((3, 2)), "one row for each time"),
    ],
)
def test_bad_stamps_are_refused(times_s, xy, words):
    """A clock that runs backwards or rows that do not match are said in one sentence."""
    with pytest.raises(BadInput, match=words):
        tremor_report(times_s, xy)


def test_even_samples_must_be_whole_and_long_enough():
    """The plain arithmetic takes no gaps and no second of samples."""
    with pytest.raises(BadInput, match="an empty cell"):
        dominant_tremor(np.full((2000, 2), math.nan), RATE_HZ)
    with pytest.raises(BadInput, match=r"at least 2\ss"):
        dominant_tremor(np.ones((100, 2)), RATE_HZ)
    with pytest.raises(BadInput, match="the same value throughout"):
        dominant_tremor(np.ones((2000, 2)), RATE_HZ)
    with pytest.raises(BadInput, match="above 0"):
        crossing_frequency(np.ones((2000, 2)), 0.0)
