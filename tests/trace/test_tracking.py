"""Following a target: lag, gain and error, simulated with known values and on real following."""

import math
from pathlib import Path

import numpy as np
import pytest

from said import said
from stickwright.errors import BadInput
from stickwright.trace.tracking import lag_s, tracking_report

DATA = Path(__file__).parents[1] / "data" / "tracking"


def target(t: np.ndarray) -> np.ndarray:
    """A path that does not repeat within a minute."""
    x = np.sin(0.9 * t) + 0.7 * np.sin(2.31 * t + 1) + 0.4 * np.sin(4.07 * t + 2)
    y = np.cos(1.13 * t) + 0.7 * np.sin(2.77 * t) + 0.4 * np.cos(3.61 * t + 1)
    return 0.3 * np.column_stack([x, y])


def real(name: str) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    rows = np.loadtxt(DATA / f"{name}.csv", delimiter=",", skiprows=1)
    return rows[:, 0], rows[:, 3:5], rows[:, 1:3]


@pytest.mark.parametrize("lag", [-0.12, 0.0, 0.0834, 0.31, 0.74])
def test_known_lag_and_gain(lag):
    """A player who does 0.85 of the target's movement, 0.05 to the right and `lag` late, sampled 60 times a second:
    lag to a fifth of a sample, gain to 1 %, the rest of the error as built in."""
    rng = np.random.default_rng(1)
    t = np.arange(3600) / 60
    xy = 0.85 * target(t - lag) + [0.05, 0.0] + rng.normal(0, 0.01, (3600, 2))
    report = tracking_report(t, xy, target(t))
    assert report.lag_s.value == pytest.approx(lag, abs=1 / 300)
    assert report.gain.value == pytest.approx(0.85, rel=0.01)
    left = 0.15 * target(t - lag) - [0.05, 0.0]
    built_in = math.sqrt(float((left**2).sum(axis=1).mean()) + 2 * 0.01**2)
    assert report.error_without_lag.value == pytest.approx(built_in, rel=0.02)
    direct = math.sqrt(float(((xy - target(t)) ** 2).sum(axis=1).mean()))
    assert report.rms_error.value == pytest.approx(direct, rel=1e-9)
    assert report.rms_error.low < direct < report.rms_error.high


def test_interval_of_the_lag_covers():
    """Slow wandering of the player about the target, 40 recordings of 30 s with a lag of 0.2 s: the 95 % interval
    holds it in 34 or more."""
    rng = np.random.default_rng(2)
    t = np.arange(1800) / 60
    held = 0
    for _ in range(40):
        wander = np.cumsum(rng.normal(0, 0.01, (1800, 2)), axis=0)
        wander -= np.column_stack([np.convolve(column, np.full(121, 1 / 121), "same") for column in wander.T])
        told = tracking_report(t, target(t - 0.2) + wander, target(t)).lag_s
        held += told.low <= 0.2 <= told.high
    assert held >= 34


def test_uneven_stamps_and_gaps():
    """Stamps at random, empty cells, 4 s unplugged: the lag stays within 10 ms."""
    rng = np.random.default_rng(3)
    t = np.cumsum(rng.exponential(1 / 80, 4000))
    t = t[(t < 20) | (t > 24)]
    xy = target(t - 0.15) + rng.normal(0, 0.02, (t.size, 2))
    xy[rng.integers(0, t.size, 40)] = math.nan
    assert lag_s(t, xy, target(t)) == pytest.approx(0.15, abs=0.01)
    report = tracking_report(t, xy, target(t))
    assert report.gain.value == pytest.approx(1.0, abs=0.01)
    assert report.error_without_lag.value == pytest.approx(0.02 * math.sqrt(2), rel=0.1)


def test_a_target_that_repeats_is_not_matched_a_turn_later():
    """Round and round once in 0.7 s: 0.1 s behind is told, not 0.8 s, though both fit."""
    t = np.arange(2000) / 100
    place = lambda when: np.column_stack([np.cos(2 * np.pi * when / 0.7), np.sin(2 * np.pi * when / 0.7)])  # noqa: E731
    assert lag_s(t, place(t - 0.1), place(t)) == pytest.approx(0.1, abs=0.005)


def test_waiting_before_the_start_is_not_following():
    """A stick left alone for 2 s before the player begins does not count as error."""
    t = np.arange(2000) / 100
    xy = target(t - 0.1)
    xy[:200] = [0.9, 0.9]
    late = tracking_report(t, xy, target(t))
    whole = tracking_report(t[200:], xy[200:], target(t)[200:])
    assert late.rms_error.value == pytest.approx(whole.rms_error.value, rel=1e-12)


def test_real_following():
    """A person with a pen after a target that cannot be foreseen: 0 to 0.3 s behind; at the higher difficulty later
    and with more error, whether the lag is taken out or not."""
    easy, hard = (tracking_report(*real(f"random-difficulty-{level}")) for level in (50, 80))
    for report in (easy, hard):
        assert 0 < report.lag_s.low < report.lag_s.high < 0.3
        assert report.gain.value == pytest.approx(1.0, abs=0.15)
        assert report.error_without_lag.value < report.rms_error.value
    assert hard.lag_s.value > easy.lag_s.value
    assert hard.rms_error.value > easy.rms_error.value
    assert hard.error_without_lag.value > easy.error_without_lag.value


def test_real_following_round_an_ellipse():
    """A target that can be foreseen is followed with hardly any lag: less than 50 ms either way."""
    report = tracking_report(*real("ellipse-0.67-hz"))
    assert abs(report.lag_s.value) < 0.05


def test_lag_by_another_route():
    """The lag of the real recording by brute force, shifting the cue by 1 ms at a time: within 2 ms."""
    t, xy, cue = real("random-difficulty-50")
    t, xy, cue = t[30:], xy[30:], cue[30:]
    inner = (t > t[0] + 1) & (t < t[-1] - 0.5)
    shifts = np.arange(-0.3, 0.6, 0.001)

    def alike(shift: float) -> float:
        then = np.column_stack([np.interp(t - shift, t, column) for column in cue.T])[inner]
        made = xy[inner] - xy[inner].mean(axis=0)
        then = then - then.mean(axis=0)
        return float((made * then).sum() / np.sqrt((then**2).sum()))

    brute = shifts[np.argmax([alike(shift) for shift in shifts])]
    assert lag_s(t, xy, cue) == pytest.approx(brute, abs=0.002)


def test_short_recordings_have_no_interval_but_a_value():
    """Four seconds: a value, and a sentence instead of an interval."""
    t = np.arange(400) / 100
    report = tracking_report(t, target(t - 0.2), target(t))
    assert report.lag_s.value == pytest.approx(0.2, abs=0.02)
    assert not report.lag_s.has_interval
    assert "too short" in said(report.lag_s.why)


def test_what_cannot_be_followed_is_refused():
    """No target, a target that stands still, a player who never moves, no three seconds in a row."""
    t = np.arange(1000) / 100
    moving = target(t)
    with pytest.raises(BadInput, match="no target"):
        lag_s(t, moving, np.full((1000, 2), math.nan))
    with pytest.raises(BadInput, match="stands still"):
        lag_s(t, moving, np.ones((1000, 2)))
    with pytest.raises(BadInput, match="the same place throughout"):
        tracking_report(t, np.ones((1000, 2)), moving)
    with pytest.raises(BadInput, match=r"3\ss of following"):
        tracking_report(t[:200], moving[:200], moving[:200])
    with pytest.raises(BadInput, match="one row for each time"):
        tracking_report(t, moving[:-1], moving)
