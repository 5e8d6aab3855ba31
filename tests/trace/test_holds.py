"""A kept deflection: level, steadiness, tiring."""

from __future__ import annotations

import math

import numpy as np
import pytest
from made_recordings import about, slow_noise

from said import said
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import message
from stickwright.model.recording import Recording
from stickwright.trace.holds import hold_reports
from stickwright.trace.recording import cleaned


def hold(seed: int = 1, *, slope: float = 0.0, seconds: int = 20, forgets: float = 0.9, sd: float = 0.01) -> Recording:
    """A hold at 0.5 forward-right that changes by `slope` of its level a second."""
    n = seconds * 100
    times_s = np.arange(n) / 100
    toward = np.array([math.cos(math.pi / 4), math.sin(math.pi / 4)])
    xy = 0.5 * (1 + slope * times_s)[:, None] * toward + slow_noise(np.random.default_rng(seed), n, sd, forgets)
    cue_xy = np.full((n, 2), 0.5 * toward)
    return Recording("hold.csv", times_s, xy, cue=np.full(n, "hold"), cue_xy=cue_xy)


def test_level_steadiness_and_direction():
    """A steady hold at 0.5 with a tremble of 0.01: each within its interval, no tiring said."""
    (report,), findings = hold_reports(cleaned(hold())[0])
    assert report.direction_rad == pytest.approx(math.pi / 4, abs=1e-12)
    assert report.level.low < 0.5 < report.level.high
    assert report.sd.low < 0.01 < report.sd.high
    assert report.slope_per_s.low < 0 < report.slope_per_s.high
    assert report.duration_s == pytest.approx(19.0, abs=0.05)
    assert findings == []


def test_tiring_hold():
    """A hold that sinks by 1 % of its level a second for 20 s: found, and its loss over the hold said."""
    (report,), findings = hold_reports(cleaned(hold(slope=-0.01))[0])
    expected = -0.01 / (1 - 0.01 * 10.5)  # of the mean level, which lies at 10.5 s
    assert report.slope_per_s.low < expected < report.slope_per_s.high < 0
    text = said(about(findings, "tiring_hold")[0].text)
    assert "The hold forward-right at" in text
    assert "over 19 s" in text


@pytest.mark.parametrize("forgets", [0.0, 0.95, 0.99])
def test_slow_sway_is_not_tiring(forgets: float):
    """Of 60 level holds, whether the sway forgets at once or only after a second, at most 6 are called sinking."""
    called = 0
    for seed in range(60):
        (report,), _ = hold_reports(cleaned(hold(seed, forgets=forgets))[0])
        called += report.slope_per_s.high < 0
    assert called <= 6


def test_short_holds_are_said():
    """A hold of 2 s tells nothing about tiring: left out, and said."""
    reports, findings = hold_reports(cleaned(hold(seconds=2))[0])
    assert reports == ()
    assert said(about(findings, "short_hold")[0].text).startswith("1 hold lasts less than 3 s")


@pytest.mark.parametrize("sway", [0.0, 0.05])
def test_a_hold_that_tells_nothing_of_its_scatter_says_why(sway: float):
    """No change at all, or one slow sway of 5 s in a hold of 6 s: the level, but no interval, and the reason is the right one."""
    recording = hold(seconds=6)
    along = 0.5 + sway * np.sin(2 * np.pi * recording.times_s / 5)
    xy = np.column_stack([along, 0 * along])
    cue_xy = np.tile([0.5, 0.0], (len(along), 1))
    (report,), _ = hold_reports(cleaned(Recording("h", recording.times_s, xy, cue=recording.cue, cue_xy=cue_xy))[0])
    assert report.level.value == pytest.approx(0.5, abs=0.01)
    slow, never = message(Intervals.slow_sway, what="hold"), message(Intervals.never_changes, where="hold")
    why = slow if sway else never
    assert {one.why for one in (report.level, report.sd, report.slope_per_s)} == {why}


def test_bursts_are_left_out():
    """A jerk that is masked does not move the level."""
    recording = hold()
    xy = recording.xy.copy()
    xy[1000:1100] += 0.4
    keep = np.ones(2000, dtype=np.bool_)
    keep[1000:1100] = False
    clean = cleaned(Recording("h", recording.times_s, xy, cue=recording.cue, cue_xy=recording.cue_xy))[0]
    (masked,), _ = hold_reports(clean, keep=keep)
    (whole,), _ = hold_reports(clean)
    assert masked.level.value == pytest.approx(0.5, abs=0.005)
    assert whole.level.value > 0.515


@pytest.mark.parametrize("reaching_s", [2.0, 4.0])
def test_a_slow_reach_is_no_change_of_the_hold(reaching_s: float):
    """Somebody who takes seconds to get there and then holds level, in 20 holds: the level is what is held, and at most 4 are
    told to change (of holds that sway slowly one in ten is, as above: more than 4 of 20 once in 25 tries); with the way
    there counted in, nearly all would rise."""
    changing = 0
    for seed in range(20):
        recording = hold(seed)
        way = np.clip(recording.times_s / reaching_s, 0, 1)[:, None]
        slow = Recording("h", recording.times_s, recording.xy * way, cue=recording.cue, cue_xy=recording.cue_xy)
        (report,), _ = hold_reports(cleaned(slow)[0])
        assert report.level.value == pytest.approx(0.5, abs=0.01)
        assert report.slope_per_s.value == pytest.approx(0, abs=0.004)
        changing += not report.slope_per_s.low <= 0 <= report.slope_per_s.high
    assert changing <= 4


def test_reaching_slowly_does_not_hide_tiring():
    """4 s to get there, then 1 % of the level lost a second: told as tiring, at that pace."""
    recording = hold(slope=-0.01)
    way = np.clip(recording.times_s / 4, 0, 1)[:, None]
    slow = Recording("h", recording.times_s, recording.xy * way, cue=recording.cue, cue_xy=recording.cue_xy)
    (report,), findings = hold_reports(cleaned(slow)[0])
    assert report.slope_per_s.value == pytest.approx(-0.01 / (1 - 0.01 * 12), rel=0.2)
    assert about(findings, "tiring_hold")
