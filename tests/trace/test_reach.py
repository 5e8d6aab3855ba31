"""How far, in which direction, and how surely."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from made_recordings import about, pushes, slow_noise

from said import said
from stickwright.codes.message import message
from stickwright.codes.movements import Movements
from stickwright.errors import BadInput
from stickwright.model.recording import Recording
from stickwright.trace.reach import circular_half_width, circular_mean, covered_share, direction_word, reach_report
from stickwright.trace.recording import cleaned


def laps(count: float = 5.0, across: float = 0.9, along: float = 0.6, seed: int = 3, sd: float = 0.01) -> Recording:
    """Laps along an ellipse, 4 s each, 100 Hz, from the centre outwards."""
    n = round(400 * count)
    turn = np.linspace(0, 2 * np.pi * count, n)
    xy = np.column_stack((across * np.cos(turn), along * np.sin(turn)))
    out = np.linspace(0, 1, 50)[:, None] * xy[0]
    xy = np.concatenate((out, xy)) + slow_noise(np.random.default_rng(seed), n + 50, sd)
    return Recording("edge.csv", np.arange(n + 50) / 100, xy, task="rim")


def test_reach_of_an_ellipse():
    """Laps along an ellipse of 0.9 by 0.6: reach 0.9 sideways, 0.6 forward, and the weakest direction is forward or
    back. The farthest of each lap lies above the middle by about twice the tremble."""
    report, _ = reach_report(cleaned(laps())[0], rng=np.random.default_rng(1))
    assert report is not None
    assert report.direction_rad == pytest.approx(np.radians(np.arange(8) * 45))
    sideways, forward = report.reach[0], report.reach[2]
    assert sideways.value == pytest.approx(0.9, abs=0.03)
    assert sideways.high - sideways.low < 0.06
    assert sideways.n == 5
    assert 0.6 < forward.value < 0.72  # the sector spans 45 deg, and its farthest point lies toward the long side
    assert direction_word(report.weakest_rad) in ("forward", "back")


def test_area_of_a_circle_is_the_square_of_its_radius():
    """Laps along a circle of 0.7 cover 0.49 of the full circle, by geometry."""
    report, _ = reach_report(cleaned(laps(across=0.7, along=0.7, sd=0.001))[0])
    assert report is not None
    assert report.area_share.value == pytest.approx(0.49, abs=0.01)
    assert report.area_share.low < report.area_share.value < report.area_share.high


def test_same_seed_same_interval():
    """The same recording and seed give the same interval to the last digit."""
    clean = cleaned(laps())[0]
    first, _ = reach_report(clean, rng=np.random.default_rng(7))
    again, _ = reach_report(clean, rng=np.random.default_rng(7))
    assert first == again


def test_one_lap_gives_no_interval():
    """One lap has no repeat to compare with: a value, and a sentence instead of an interval."""
    report, _ = reach_report(cleaned(laps(count=1.0))[0])
    assert report is not None
    assert not report.reach[0].has_interval
    assert report.reach[0].why is not None
    assert "came this way" in said(report.reach[0].why)


def test_reach_of_cued_pushes():
    """Pushes to 0.8 in eight directions, three times each: every interval is near 0.8 and counts its three pushes."""
    report, _ = reach_report(cleaned(pushes(np.random.default_rng(2)))[0])
    assert report is not None
    assert len(report.reach) == 8
    assert [estimate.n for estimate in report.reach] == [3] * 8
    assert sum(estimate.low < 0.81 < estimate.high for estimate in report.reach) >= 6  # 0.8 and a little noise on top
    assert report.area_share.value == pytest.approx(0.64, abs=0.06)


def test_pushes_once_each_have_no_interval():
    """One push per direction: the sentence asks for two more."""
    report, _ = reach_report(cleaned(pushes(np.random.default_rng(2), repeats=1))[0])
    assert report is not None
    assert report.reach[0].why == message(Movements.one_push_each)


def test_pooled_interval_covers_the_mean_reach():
    """Over 60 recordings of eight directions, at least 90 of 100 intervals hold the mean that was drawn from."""
    inside, total = 0, 0
    for seed in range(60):
        clean = cleaned(pushes(np.random.default_rng(seed), noise=0.0))[0]
        report, _ = reach_report(clean)
        assert report is not None
        top = 0.8 * float(np.sort(np.sin(np.linspace(0, np.pi, 150)) ** 0.3)[-5:].mean())
        inside += sum(estimate.low <= top <= estimate.high for estimate in report.reach)
        total += len(report.reach)
    assert inside / total > 0.9


def test_play_is_what_was_used():
    """Reach from play says that it is what was used, and names directions never pushed."""
    n = 6000
    rng = np.random.default_rng(4)
    strokes = np.abs(slow_noise(rng, n, 0.3, 0.99)[:, :1]) * [1.0, 0.02]
    report, findings = reach_report(cleaned(Recording("play.csv", np.arange(n) / 100, strokes))[0])
    assert report is not None
    assert "what was used, not what is possible" in said(about(findings, "reach_in_play")[0].text)
    assert "left" in said(about(findings, "not_tried")[0].text)
    assert report.area_share.value is None


def test_one_axis_has_two_directions():
    """With x alone there is reach to the right and left, and no area."""
    recording = laps()
    xy = recording.xy.copy()
    xy[:, 1] = np.nan
    report, _ = reach_report(cleaned(Recording("x.csv", recording.times_s, xy, task="rim"))[0])
    assert report is not None
    assert report.direction_rad == pytest.approx((0.0, math.pi))
    assert report.area_share.why == message(Movements.one_axis_only)


def test_unknown_centre_and_nothing_asked():
    """Without a known centre, or with rest alone, reach is None and the finding says what to record."""
    clean = cleaned(laps())[0]
    assert reach_report(clean, centre=None)[0] is None
    still = cleaned(Recording("r", np.arange(500) / 100, slow_noise(np.random.default_rng(1), 500, 0.01), task="rest"))
    report, findings = reach_report(still[0])
    assert report is None
    assert "Record two laps along the edge" in said(about(findings, "no_reach")[0].text)


def test_no_direction_is_refused():
    """The mean of no direction, or of one that is no number, is refused."""
    with pytest.raises(BadInput, match="found no direction, expected one angle or more"):
        circular_mean([])
    with pytest.raises(BadInput, match="found a direction that is not a number"):
        circular_mean([0.1, math.nan])


def test_opposite_directions_have_no_interval():
    """Two opposite directions have no mean that could be bounded."""
    assert math.isnan(circular_half_width([0.0, math.pi, 0.1, math.pi + 0.1]))


@given(st.lists(st.floats(-3.1, 3.1), min_size=1, max_size=20), st.floats(-3.0, 3.0))
def test_turning_all_turns_the_mean(angles: list[float], turn: float):
    """Law: turning every direction turns the mean and changes neither agreement nor its p."""
    plain, turned = circular_mean(angles), circular_mean(np.array(angles) + turn)
    assert turned.resultant_length == pytest.approx(plain.resultant_length, abs=1e-9)
    assert turned.rayleigh_p == pytest.approx(plain.rayleigh_p, abs=1e-6)
    if plain.resultant_length > 1e-3:
        assert math.cos(turned.mean_rad - plain.mean_rad - turn) == pytest.approx(1.0, abs=1e-6)


@given(reach=st.lists(st.floats(0.0, 1.0), min_size=8, max_size=8), factor=st.floats(0.1, 3.0))
def test_area_grows_with_the_square(reach: list[float], factor: float):
    """Law: reach times k covers k squared the area, and full reach covers 1."""
    directions = np.arange(8) * np.pi / 4
    area = float(covered_share(directions, np.array(reach)))
    assert float(covered_share(directions, factor * np.array(reach))) == pytest.approx(factor**2 * area, abs=1e-9)
    assert float(covered_share(directions, np.ones(8))) == pytest.approx(1.0, abs=1e-12)


@pytest.mark.parametrize("started_s", [50_000.0, -300.0])
def test_when_the_clock_began_does_not_matter(started_s: float):
    """Law: of free movement, pushes and laps, the same figures whatever the first stamp is."""
    rng = np.random.default_rng(8)
    times_s = np.arange(12_000) / 100
    play = Recording("play.csv", times_s, np.clip(slow_noise(rng, len(times_s), 0.5, 0.995), -1, 1), task="play")
    for recording in (play, laps(), pushes(rng)):
        clean = cleaned(recording)[0]
        later = cleaned(replace(recording, times_s=recording.times_s + started_s))[0]
        plain, _ = reach_report(clean, rng=np.random.default_rng(1))
        shifted, _ = reach_report(later, rng=np.random.default_rng(1))
        assert plain is not None
        assert shifted is not None
        for one, other in zip(plain.reach, shifted.reach, strict=True):
            assert (other.value, other.n) == (pytest.approx(one.value, nan_ok=True), one.n)
