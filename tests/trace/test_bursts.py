"""Involuntary bursts: found where stillness was asked, not guessed in play."""

from __future__ import annotations

import numpy as np
import pytest
from made_recordings import about, slow_noise

from said import said
from stickwright.codes.message import message
from stickwright.codes.movements import Movements
from stickwright.model.recording import Recording
from stickwright.trace.bursts import burst_report
from stickwright.trace.recording import cleaned


def still(seed: int = 1, seconds: int = 60, sd: float = 0.01) -> tuple[np.ndarray, np.ndarray]:
    n = seconds * 100
    return np.arange(n) / 100, slow_noise(np.random.default_rng(seed), n, sd, 0.8)


def jerk(seconds: float, peak: float) -> np.ndarray:
    return peak * np.sin(np.linspace(0, np.pi, round(seconds * 100)))[:, None] * [0.8, 0.6]


def test_planted_bursts_are_found():
    """Five jerks of 0.3 s in a minute of stillness: all five, at their times, with peak and duration."""
    times_s, xy = still()
    at = [8.0, 19.0, 31.0, 42.0, 55.0]
    for second in at:
        start = round(second * 100)
        xy[start : start + 30] += jerk(0.3, 0.4)
    report, keep, findings = burst_report(cleaned(Recording("s", times_s, xy, task="still"))[0])
    assert report is not None
    assert report.count == 5
    assert report.times_s == pytest.approx(at, abs=0.06)
    assert report.per_min.low < 5 < report.per_min.high
    assert report.peak.value == pytest.approx(0.4, abs=0.05)
    assert report.duration_s.value == pytest.approx(0.3, abs=0.08)
    assert not keep[round(8.15 * 100)]
    assert keep.mean() > 0.95
    assert said(about(findings, "bursts")[0].text).startswith("There were 5 sudden movements in")


def test_plain_tremble_has_next_to_none():
    """Ten minutes of trembling without a jerk, in ten recordings: fewer than 0.2 a minute are called bursts."""
    counts = [burst_report(cleaned(Recording("s", *still(seed), task="still"))[0])[0] for seed in range(10)]
    assert sum(report.count for report in counts if report is not None) <= 2


def test_one_odd_sample_is_no_burst():
    """A single sample far away, 10 ms long, is no movement."""
    times_s, xy = still()
    xy[3000] += 0.5
    report, _, _ = burst_report(cleaned(Recording("s", times_s, xy, task="still"))[0])
    assert report is not None
    assert report.count == 0
    assert report.per_min.low == 0.0
    assert report.peak.why == message(Movements.no_burst)


def test_rest_in_a_few_levels_is_no_burst():
    """Half a minute of rest of which the output shows four levels: next to a level that nearly all samples share, the others are noise."""
    noise = np.random.default_rng(6).normal(0, 0.01, (3000, 2))
    xy = np.round((noise + np.array([0.03, -0.02])) * 64) / 64
    report, keep, _ = burst_report(cleaned(Recording("r", np.arange(3000) / 100, xy, task="rest"))[0])
    assert report is not None
    assert report.count == 0
    assert keep.all()


@pytest.mark.parametrize("seconds", [12, 17, 29, 60])
@pytest.mark.parametrize("drift_per_min", [0.05, 0.2, 0.5])
@pytest.mark.parametrize("bend_s", [1e6, 20.0])
def test_a_rest_that_drifts_is_no_burst(seconds: int, drift_per_min: float, bend_s: float):
    """A drift does not end half a window before the recording does: its ends are no movements. Straight, or slowing down."""
    times_s = np.arange(seconds * 100) / 100
    away = drift_per_min / 60 * bend_s * -np.expm1(-times_s / bend_s)
    for seed in range(3):
        noise = np.random.default_rng(seed).normal(0, 0.004, (len(times_s), 2))
        xy = noise + away[:, None] * [1.0, -0.3]
        report, keep, _ = burst_report(cleaned(Recording("r", times_s, xy, task="rest"))[0])
        assert report is not None
        assert report.count == 0
        assert keep.all()


def test_a_jerk_at_the_end_of_a_drift_is_told():
    """The line that goes on to the end is not steered by a movement there."""
    times_s = np.arange(2900) / 100
    xy = np.random.default_rng(2).normal(0, 0.004, (2900, 2)) + times_s[:, None] * [0.005, 0.0]
    xy[2840:2870] += jerk(0.3, 0.3)
    report, _, _ = burst_report(cleaned(Recording("r", times_s, xy, task="rest"))[0])
    assert report is not None
    assert report.times_s == pytest.approx([28.4], abs=0.06)


def test_getting_there_is_no_burst():
    """The way to a cued hold, even if it takes two seconds, is not counted as involuntary."""
    times_s, xy = still(seconds=20)
    xy[:, 0] += 0.6 * np.clip(times_s / 2.0, 0, 1)
    cue_xy = np.full((2000, 2), [0.6, 0.0])
    hold = Recording("h", times_s, xy, cue=np.full(2000, "hold"), cue_xy=cue_xy)
    report, _, _ = burst_report(cleaned(hold)[0])
    assert report is not None
    assert report.count == 0


def test_play_cannot_tell():
    """In free play a flick may be meant: no count, and a finding says so."""
    times_s, xy = still()
    report, keep, findings = burst_report(cleaned(Recording("p", times_s, xy, task="play"))[0])
    assert report is None
    assert keep.all()
    assert "flicks may be meant" in said(about(findings, "bursts_not_told")[0].text)


def test_burst_while_following():
    """A jerk while following a slow target is found, with the doubt said."""
    times_s, noise = still()
    target = 0.5 * np.column_stack((np.sin(times_s), np.cos(0.7 * times_s)))
    xy = target + noise
    xy[3000:3030] += jerk(0.3, 0.5)
    follow = Recording("f", times_s, xy, cue=np.full(len(xy), "follow"), cue_xy=target)
    report, _, findings = burst_report(cleaned(follow)[0])
    assert report is not None
    assert report.count == 1
    assert "player's own quick corrections" in said(about(findings, "bursts")[0].text)
