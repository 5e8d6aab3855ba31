"""Offset, noise, drift and the way home."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest
from made_recordings import about, slow_noise, thumbstick

from said import said
from stickwright.codes.message import message
from stickwright.codes.resting import Resting
from stickwright.model.recording import Recording
from stickwright.trace.recording import cleaned
from stickwright.trace.rest import effective_count, rest_report, rest_stretches
from stickwright.trace.rest_samples import rest_samples


def rests(
    seed: int = 5, centres: tuple[tuple[float, float], ...] = ((0.0, 0.0),), seconds: float = 10.0, sd: float = 0.004
) -> Recording:
    """Cued rests at these centres, 2 s of pushing between, 100 Hz."""
    rng = np.random.default_rng(seed)
    n = round(seconds * 100)
    rows, cues = [], []
    for centre in centres:
        rows += [slow_noise(rng, n, sd) + centre, 0.8 * np.sin(np.linspace(0, np.pi, 200))[:, None] * [1.0, 0.2]]
        cues += ["rest"] * n + [""] * 200
    xy = np.concatenate(rows)
    return Recording("rest.csv", np.arange(len(xy)) / 100, xy, cue=np.array(cues))


def test_effective_count_of_first_order_noise():
    """For first-order noise the mean of n readings is worth n (1 - r)/(1 + r) independent ones (Bayley & Hammersley
    1946, from memory); r 0.9 and n 4000 make 210. The smaller of two counts lies a little below on average."""
    rng = np.random.default_rng(8)
    counts = [effective_count(slow_noise(rng, 4000, 1.0, 0.9)[:, 0]) for _ in range(30)]
    assert 120 < float(np.mean(counts)) < 230
    assert max(counts) < 300


def test_slow_sway_under_fast_noise_counts_little():
    """Fast noise over a sway of 20 s hides the sway from neighbours; blocks of means see it."""
    rng = np.random.default_rng(9)
    times_s = np.arange(4000) / 100
    values = rng.normal(0, 1.0, 4000) + np.sin(2 * np.pi * times_s / 20)
    assert effective_count(values) < 100


@pytest.mark.parametrize("forgets", [0.0, 0.9, 0.98])
def test_offset_interval_covers_the_truth(forgets: float):
    """95 % intervals of the offset from one rest of 10 s hold the true centre in at least 88 of 100 recordings, whether
    samples are independent or remember each other for half a second."""
    rng = np.random.default_rng(11)
    inside = 0
    for _ in range(100):
        xy = 0.02 + slow_noise(rng, 1000, 0.005, forgets)
        report, _ = rest_report(cleaned(Recording("r", np.arange(1000) / 100, xy, task="rest"))[0])
        assert report is not None
        inside += report.offset_x.low <= 0.02 <= report.offset_x.high
    assert inside >= 88


def test_noise_is_the_scatter_within_rests():
    """Noise is counted about each rest's own centre: rests 0.1 apart do not add to it."""
    report, _ = rest_report(cleaned(rests(centres=((0.0, 0.0), (0.1, 0.0), (0.0, 0.1)), sd=0.004))[0])
    assert report is not None
    assert report.noise_rms.low < 0.004 < report.noise_rms.high
    assert report.noise_rms.value == pytest.approx(0.004, rel=0.2)


def test_comes_home_to_different_places():
    """Four rests with centres of sd 0.02: said, and the offset's interval is as wide as they scatter."""
    centres = ((0.02, 0.01), (-0.02, 0.0), (0.01, -0.02), (-0.01, 0.015))
    report, findings = rest_report(cleaned(rests(centres=centres))[0])
    assert report is not None
    spread = float(np.sqrt(np.var(centres, axis=0, ddof=1).mean()))
    assert report.return_scatter is not None
    assert report.return_scatter.value == pytest.approx(spread, rel=0.15)
    assert report.offset_x.high - report.offset_x.low > 0.03
    assert "different place after each release" in said(about(findings, "return_scatter")[0].text)


def test_same_place_each_time_is_not_called_scatter():
    """Six short rests at one place, whose centres scatter by their noise alone: said in at most 3 of 40 recordings."""
    called = 0
    for seed in range(40):
        report, findings = rest_report(cleaned(rests(seed, ((0.01, 0.0),) * 6, seconds=3.0, sd=0.02))[0])
        assert report is not None
        assert report.return_scatter is not None
        assert report.return_scatter.value > 0.002
        called += bool(about(findings, "return_scatter"))
    assert called <= 3


def test_return_scatter_interval_covers_the_truth():
    """Over 60 sticks that come home with an sd of 0.03 per axis, at least 53 intervals hold it."""
    inside = 0
    for seed in range(60):
        centres = tuple(map(tuple, np.random.default_rng(100 + seed).normal(0, 0.03, (6, 2))))
        report, _ = rest_report(cleaned(rests(seed, centres, seconds=2.0))[0])
        assert report is not None
        assert report.return_scatter is not None
        inside += report.return_scatter.low <= 0.03 <= report.return_scatter.high
    assert inside >= 53


def marked(name: str, *spans_s: tuple[float, float]) -> Recording:
    """A real thumbstick's raw x with rest marked in spans read off the file by eye, the other axis at 0 throughout them."""
    recording, processed = thumbstick(name, raw=True), thumbstick(name)
    rest = np.any([(recording.times_s >= a) & (recording.times_s <= b) for a, b in spans_s], axis=0)
    assert not processed.xy[rest, 1].any()
    return replace(recording, cue=np.where(rest, "rest", "play"))


def test_real_stick_comes_home_to_different_places():
    """Real thumbstick: rests at 1.4, 6.1, 1.7, 0, 1.1, 0 and 0.2 counts of 80 (read off the file by eye), sd 0.027."""
    spans_s = ((0, 3.18), (3.3, 4.08), (4.1, 5.28), (6.7, 10.58), (10.7, 11.18), (13.9, 16.38), (24.9, 26.58))
    report, findings = rest_report(cleaned(marked("play-2-person-D-0-to-30-s.csv", *spans_s))[0])
    assert report is not None
    assert len(report.rests) >= 5
    assert report.return_scatter is not None
    assert report.return_scatter.low > 0.01
    assert about(findings, "return_scatter")
    assert report.offset_y.why == message(Resting.not_recorded, axis="y")


def test_cleaned_rest_gives_no_noise():
    """A rest that other software set to zero has no noise and no offset interval, and says so."""
    report, _ = rest_report(cleaned(marked("play-3-person-A-63-to-93-s.csv", (76.4, 82.78), (83.3, 92.98)))[0])
    assert report is not None
    assert not report.noise_rms.has_interval
    assert report.noise_rms.value is None
    assert report.noise_rms.why is not None
    assert "exactly zero throughout" in said(report.noise_rms.why)
    assert not report.offset_x.has_interval


def test_straight_pushes_are_no_rest_where_one_axis_was_recorded():
    """Real thumbstick at 66.7 and 67.7 s: x at -0.04 and 0.07, and the stick pushed forward to 0.99 (its other column). From
    x alone that is a rest like any other, so none is told, with what to do."""
    recording = thumbstick("play-3-person-A-63-to-93-s.csv", raw=True)
    both = thumbstick("play-3-person-A-63-to-93-s.csv")
    pushed = (both.times_s >= 67.7) & (both.times_s <= 68.3)
    assert np.abs(recording.xy[pushed, 0]).max() < 0.1
    assert both.xy[pushed, 1].min() > 0.9
    report, findings = rest_report(cleaned(recording)[0])
    assert report is None
    (note,) = about(findings, "no_rest")
    assert "a push straight forward or back looks the same" in said(note.text)
    sideways = replace(recording, xy=recording.xy[:, ::-1])
    assert "a push straight sideways" in said(about(rest_report(cleaned(sideways)[0])[1], "no_rest")[0].text)


def test_drift_is_found_and_bounded():
    """A centre that moves by 0.03 a minute is found, the truth inside its interval; a steady one is not called so."""
    steady = rests(seconds=60.0)
    moving = replace(steady, xy=steady.xy + np.outer(steady.times_s / 60, [0.018, 0.024]))
    report, findings = rest_report(cleaned(moving)[0])
    assert report is not None
    assert report.drift_per_min.low < 0.03 < report.drift_per_min.high
    assert report.drift_per_min.low > 0.02
    assert about(findings, "drift")
    report, findings = rest_report(cleaned(steady)[0])
    assert report is not None
    assert report.drift_per_min.low == 0.0
    assert not about(findings, "drift")


def test_leaned_on_at_start_up():
    """First rest at 0.3, later ones at 0 after plugging in again: leaned on at start-up."""
    _, findings = rest_report(cleaned(rests(centres=((0.3, 0.0), (0.0, 0.0), (0.01, 0.0))))[0])
    text = said(about(findings, "leaned_on")[0].text)
    assert text.startswith("The first rest is at (30%, ")
    assert "hands off" in text
    _, findings = rest_report(cleaned(rests(centres=((0.0, 0.0), (0.01, 0.0))))[0])
    assert not about(findings, "leaned_on")


def test_rest_without_a_cue_is_found_by_stillness():
    """Without a cue the same rests are found, to within a block, and pushing is not taken for rest."""
    recording = rests(centres=((0.0, 0.0), (0.01, 0.0), (0.0, 0.02)), seconds=5.0)
    found = rest_stretches(recording.times_s, recording.xy)
    starts = [a for a, _ in found]
    assert len(found) == 3
    assert starts == pytest.approx([0, 700, 1400], abs=20)


def test_held_near_the_centre_is_not_a_rest():
    """Without a cue, a small push held still among releases is left out of the rest and said."""
    recording = rests(centres=((0.0, 0.0), (0.0, 0.0), (0.18, 0.0), (0.0, 0.0), (0.0, 0.0)), seconds=3.0)
    report, findings = rest_report(cleaned(replace(recording, cue=None, task="play"))[0])
    assert report is not None
    assert len(report.rests) == 4
    assert said(about(findings, "held_near_centre")[0].text).startswith("1 of 5 quiet stretches")
    assert abs(report.offset_x.value) < 0.005


def test_rest_samples_hardly_correlate():
    """Thinned rest samples count as independent: neighbours correlate by less than 0.3 where all of them did by 0.9."""
    recording = rests(seconds=60.0)
    thinned = rest_samples(recording.times_s, recording.xy, recording.cue)
    neighbours = np.corrcoef(thinned[:-1, 0], thinned[1:, 0])[0, 1]
    assert abs(neighbours) < 0.3
    assert 100 < len(thinned) < 700
    assert rest_samples(recording.times_s[:3], recording.xy[:3]).shape == (0, 2)


def test_no_rest_is_said():
    """A recording that never pauses has no rest report, and a finding says what to record."""
    times_s = np.arange(1000) / 100
    report, findings = rest_report(cleaned(Recording("p", times_s, np.column_stack([np.sin(9 * times_s)] * 2)))[0])
    assert report is None
    assert "Record 10 s with the hand off" in said(about(findings, "no_rest")[0].text)


def test_noise_within_between_and_pooled_are_three_figures():
    """Built in: noise of 0.004 within each rest and centres that scatter by 0.02 from rest to rest, 30 rests; by hand the
    pooled figure is sqrt(0.004^2 + 0.02^2) = 0.0204."""
    rng = np.random.default_rng(23)
    rows, cues = [], []
    for _ in range(30):
        rows += [rng.normal(0, 0.02, 2) + rng.normal(0, 0.004, (200, 2)), np.full((50, 2), 0.6)]
        cues += ["rest"] * 200 + ["push"] * 50
    xy = np.concatenate(rows)
    recording = Recording("r.csv", np.arange(len(xy)) / 100, xy, cue=np.array(cues))
    report, _ = rest_report(cleaned(recording)[0])
    assert report is not None
    assert report.return_scatter is not None
    assert report.pooled_rms is not None
    assert report.noise_rms.value == pytest.approx(0.004, rel=0.05)
    assert report.return_scatter.value == pytest.approx(0.02, rel=0.25)
    by_hand = np.hypot(report.noise_rms.value, report.return_scatter.value)
    assert report.pooled_rms.value == pytest.approx(by_hand, rel=0.01)
    assert report.pooled_rms.low < 0.0204 < report.pooled_rms.high


@pytest.mark.parametrize(("stray", "words"), [(0, "exactly zero throughout"), (60, "% of the rest is exactly zero")])
def test_exactly_zero_throughout_only_where_it_is(stray, words):
    """A rest set to zero by software, and one in which some samples stand a step away: only the first is zero throughout."""
    xy = np.zeros((2000, 2))
    xy[1500:, 0] = np.linspace(0, 1, 500) ** 2
    xy[200 : 200 + 10 * stray : 10] = 0.0125
    cue = np.where(np.arange(2000) < 1400, "rest", "push")
    usable = replace(cleaned(Recording("r.csv", np.arange(2000) / 100, xy, cue=cue))[0], rest_cleaned=True)
    report, _ = rest_report(usable)
    assert report is not None
    assert report.noise_rms.why is not None
    assert words in said(report.noise_rms.why)


@pytest.mark.parametrize("times, unit", [(1.0, "share"), (500.0, "count")])
def test_leaned_on_is_the_same_in_every_unit(times: float, unit: str):
    """Law: a first rest at 0.3 of full is leaned on whether it is written as a share or in counts; where all rests lie off, where that
    is stands in the sentence, right before forward; a first rest at 0.03 is neither."""

    def told(*centres: tuple[float, float]) -> str:
        made = rests(centres=centres)
        xy = np.where(
            (made.cue == "")[:, None] & (made.times_s > 13)[:, None], -made.xy, made.xy
        )  # pushed to both sides
        _, findings = rest_report(cleaned(replace(made, xy=times * xy, unit=unit))[0])
        return "".join(said(one.text) for one in about(findings, "leaned_on"))

    first = told((0.3, 0.0), (0.0, 0.0), (0.01, 0.0))
    assert re.search(r"From 12\.\d s on, the stick rests somewhere else", first)
    always = re.search(
        r"rests at \(([-\d.]+)%?, ([-\d.]+)%?\), far from 0", told((0.25, -0.15), (0.25, -0.15), (0.25, -0.15))
    )
    assert always is not None
    full = 100 if unit == "share" else times  # a share is said in per cent
    assert [float(number) for number in always.groups()] == pytest.approx([0.25 * full, -0.15 * full], rel=0.02)
    assert told((0.03, 0.0), (0.0, 0.0), (0.01, 0.0)) == ""


def test_zero_of_pixels_is_no_centre():
    """A stick in pixels rests where the middle of its picture is: nothing leans on it, and no offset is asked for."""
    noise = np.random.default_rng(3).normal(0, 2, (3000, 2))
    recording = Recording("r", np.arange(3000) / 100, noise + np.array([960.0, 540.0]), task="rest", unit="px")
    report, findings = rest_report(cleaned(recording)[0])
    assert report is not None
    assert report.offset_x.value == pytest.approx(960, abs=1)
    assert not {"leaned_on", "offset"} & {one.about for one in findings}


@pytest.mark.parametrize("unit", ["share", "px"])
def test_a_first_rest_elsewhere_is_told_in_any_unit(unit: str):
    """Touched at switch-on: the first rest is held against the later ones."""
    times, at_zero = {"share": (1.0, 0.0), "px": (500.0, 700.0)}[unit]
    noise = np.random.default_rng(3).normal(0, 0.004, (4000, 2))
    xy = noise + np.where(np.arange(4000) < 1000, 0.4, 0.0)[:, None]
    cue = np.where(np.arange(4000) % 1000 < 900, "rest", "")
    _, findings = rest_report(
        cleaned(Recording("r", np.arange(4000) / 100, at_zero + times * xy, cue=cue, unit=unit))[0]
    )
    assert [one.level for one in findings if one.about == "leaned_on"] == ["fault"]
