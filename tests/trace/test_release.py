"""Rest begins when the stick has come back, not when it was asked for."""

from __future__ import annotations

import numpy as np
import pytest
from made_recordings import about, slow_noise
from numpy.typing import NDArray

from said import said
from stickwright.codes.message import message
from stickwright.codes.resting import Resting
from stickwright.model.recording import Recording
from stickwright.trace.recording import cleaned
from stickwright.trace.release import settled, unsettled_finding
from stickwright.trace.rest import rest_report
from stickwright.trace.rest_samples import rests_of

HZ = 100


def released(
    late_s: float, lasts_s: float, rng: np.random.Generator, *, sd: float = 0.004, slow_s: float = 0.15, ring: float = 0.0
) -> NDArray[np.float64]:  # fmt: skip
    """A rest that begins late: held at 0.9, then back to (0.01, 0) within about `slow_s`, ringing if wanted."""
    t = np.arange(round(lasts_s * HZ)) / HZ
    after = np.maximum(t - late_s, 0.0)
    back = np.exp(-after / (slow_s / 3)) * np.cos(2 * np.pi * 8 * ring * after)
    way = np.where(t < late_s, 1.0, back)
    return np.column_stack([0.01 + 0.9 * way, 0 * way]) + slow_noise(rng, len(t), sd)


def session(rests: list[NDArray[np.float64]]) -> Recording:
    """Each rest after a push of one second at 0.9."""
    rows, cues = [], []
    for rest in rests:
        rows += [np.tile([0.9, 0.0], (HZ, 1)), rest]
        cues += ["push"] * HZ + ["rest"] * len(rest)
    xy = np.concatenate(rows)
    return Recording("made.csv", np.arange(len(xy)) / HZ, xy, cue=np.array(cues))


@pytest.mark.parametrize("lasts_s", [1.1, 1.4, 1.6, 3.0, 8.0])
@pytest.mark.parametrize("late_s", [0.2, 0.3, 0.4])
def test_the_way_back_is_not_rest(late_s: float, lasts_s: float):
    """Released after 0.2 to 0.4 s: whatever the length of the rest, the noise is the stick's (sd 0.004, in the interval)
    and the centre too; one sample of the way back, at up to 0.9, would double the noise."""
    rng = np.random.default_rng(round(10 * lasts_s + late_s))
    recording = session([released(late_s, lasts_s, rng) for _ in range(6)])
    report, findings = rest_report(cleaned(recording)[0])
    assert report is not None
    assert len(report.rests) == 6
    assert report.noise_rms.value < 0.006
    assert abs(report.offset_x.value - 0.01) < 0.004
    assert not about(findings, "unsettled_rest")


def test_a_rest_that_rings_settles_when_it_has_stopped():
    """Swinging about its centre at 8 Hz for half a second: near at every crossing, but not slow."""
    rng = np.random.default_rng(3)
    xy = released(0.3, 3.0, rng, slow_s=0.5, ring=1.0)
    ((first, _),) = settled(np.arange(300) / HZ, xy, [(0, 300)])
    assert np.abs(xy[first:, 0] - 0.01).max() < 0.05


def test_passing_the_centre_slowly_is_no_rest():
    """Creeping through the centre at 0.17 a second, near it for 0.23 s, and back from the other side at 2.9 s: near is not
    enough, it must also have stopped."""
    t = np.arange(800) / HZ
    x = np.interp(t, [0.0, 2.4, 2.9, 8.0], [0.3, -0.108, 0.0, 0.0])
    xy = np.column_stack([x, 0 * x]) + np.random.default_rng(11).normal(0, 0.001, (800, 2))
    ((first, _),) = settled(t, xy, [(0, 800)])
    assert first >= 270


def test_rests_that_never_settle_count_for_nothing():
    """0.8 s of rest of which 0.7 s pass before the stick is back: no rest is taken from it, and that is said."""
    rng = np.random.default_rng(4)
    report, findings = rest_report(cleaned(session([released(0.6, 0.8, rng) for _ in range(6)]))[0])
    assert report is None
    (note,) = findings
    assert (note.level, note.about) == ("fault", "unsettled_rest")
    assert note.text == message(Resting.unsettled, unsettled=6, asked=6)


def test_some_unsettled_rests_are_left_out_of_the_others():
    """Two of five rests end before the stick is back: three remain, and two are told."""
    rng = np.random.default_rng(5)
    rests = [released(late_s, 1.2, rng) for late_s in (0.3, 1.1, 0.3, 0.9, 0.3)]
    report, findings = rest_report(cleaned(session(rests))[0])
    assert report is not None
    assert len(report.rests) == 3
    assert said(about(findings, "unsettled_rest")[0].text).startswith("2 of 5 rests never settled")
    assert report.noise_rms.value < 0.006


def test_one_rest_still_held_among_others_is_left_out():
    """The player did not let go in the third of four rests: held still at 0.9, it is no rest."""
    rng = np.random.default_rng(6)
    rests = [released(late_s, 3.0, rng) for late_s in (0.3, 0.3, 9.0, 0.3)]
    report, findings = rest_report(cleaned(session(rests))[0])
    assert report is not None
    assert len(report.rests) == 3
    assert said(about(findings, "unsettled_rest")[0].text).startswith("1 of 4 rests never settled")


def test_the_next_push_that_comes_early_is_cut_off():
    """The last 0.2 s of a rest of 3 s belong to the next push."""
    rng = np.random.default_rng(7)
    rest = released(0.3, 3.0, rng)
    rest[-20:, 0] += np.linspace(0, 0.9, 20)
    ((_, last),) = settled(np.arange(300) / HZ, rest, [(0, 300)])
    assert 280 <= last <= 288


@pytest.mark.parametrize("hz", [3.0, 5.0])
def test_a_tremulous_hand_still_rests(hz: float):
    """Tremor of 0.1 to either side through rests of 5 s is this player's rest: all of it counts, after the release."""
    rng = np.random.default_rng(8)
    rests = [released(0.4, 5.0, rng) for _ in range(3)]
    for rest in rests:
        rest[:, 1] += 0.1 * np.sin(2 * np.pi * hz * np.arange(len(rest)) / HZ)
    report, findings = rest_report(cleaned(session(rests))[0])
    assert report is not None
    assert len(report.rests) == 3
    assert all(b - a > 4.0 for a, b, _, _ in report.rests)
    # rms per axis: 0.1/sqrt(2) on one of two axes
    assert report.noise_rms.value == pytest.approx(0.1 / 2, rel=0.1)
    assert not about(findings, "unsettled_rest")


def test_slow_drift_is_not_cut():
    """A minute of rest that drifts by 0.1: all but the first half second is kept, the drift with it."""
    rng = np.random.default_rng(9)
    xy = slow_noise(rng, 6000, 0.004) + np.outer(np.arange(6000) / 6000, [0.1, 0.0])
    ((first, last),) = settled(np.arange(6000) / HZ, xy, [(0, 6000)])
    assert first <= 60
    assert last == 6000


def test_samples_for_the_dead_zone_leave_out_the_same():
    """The dead zone's samples come from the same settled parts; nothing lies beyond the stick's own noise."""
    rng = np.random.default_rng(10)
    recording = session([released(0.35, 1.2, rng) for _ in range(6)])
    found = rests_of(recording.times_s, recording.xy, recording.cue)
    assert (found.asked, found.unsettled) == (6, 0)
    assert max(np.hypot(*(rest - [0.01, 0]).T).max() for rest in found.samples) < 0.05


def test_too_few_samples_are_no_rest():
    """Two samples, or a stretch of a fifth of a second, cannot settle."""
    assert settled(np.arange(40) / HZ, np.zeros((40, 2)), [(0, 2), (5, 25)]) == [None, None]
    assert said(unsettled_finding(1, 1)[0].text).startswith("The only rest never settled")
