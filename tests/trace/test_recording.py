"""What is usable of a recording, and what is said about the rest of it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from made_recordings import about, thumbstick

from said import said
from stickwright.errors import BadInput
from stickwright.model.recording import Recording
from stickwright.trace.recording import cleaned
from stickwright.trace.sensing import runs


def moving(n: int = 500, rate_hz: float = 100.0, radius: float = 0.15) -> Recording:
    times_s = np.arange(n) / rate_hz
    xy = radius * np.column_stack((np.sin(2 * times_s), np.cos(3.1 * times_s)))
    return Recording("walk.csv", times_s, xy + 0.001)


def refusal(recording: Recording) -> str:
    with pytest.raises(BadInput) as refused:
        cleaned(recording)
    return str(refused.value)


def test_no_samples_and_one_sample_are_refused():
    """An empty recording and one of a single sample are refused in one sentence with the file's name."""
    nothing = Recording("empty.csv", np.empty(0), np.empty((0, 2)))
    assert refusal(nothing).startswith("empty.csv: found no samples, expected a recording of some seconds.")
    one = Recording("one.csv", np.zeros(1), np.zeros((1, 2)))
    assert "one.csv: found one sample" in refusal(one)


def test_time_that_goes_back_is_refused_with_its_row():
    """Non-monotonic time is refused and the first row that goes back is named, counted from 1."""
    recording = moving()
    times_s = recording.times_s.copy()
    times_s[41] = 0.1
    sentence = refusal(replace(recording, times_s=times_s))
    assert "row 42, time: found 0.1 s after 0.4 s, expected times that never go back" in sentence.replace(
        "\N{NO-BREAK SPACE}", " "
    )


def test_all_problems_are_told_at_once():
    """A missing time and a short column are told together, not one after the other."""
    recording = moving()
    times_s = recording.times_s.copy()
    times_s[[7, 8, 9]] = np.nan
    with pytest.raises(BadInput) as refused:
        cleaned(replace(recording, times_s=times_s, cue=np.array(["rest"])))
    assert len(refused.value.problems) == 2
    assert "rows 8-10, time: found no number, expected seconds" in str(refused.value)
    assert "cue: found shape (1,), expected shape (500,)" in str(refused.value)


def test_no_value_on_either_axis_is_refused():
    """A recording of empty cells only is refused; it is not a stick at rest."""
    assert "no value on either axis" in refusal(replace(moving(), xy=np.full((500, 2), np.nan)))


def test_empty_cells_are_left_out_and_named():
    """NaN and infinite cells are left out with their rows said, never filled in."""
    recording = moving()
    xy = recording.xy.copy()
    xy[[3, 4, 99], 0] = [np.nan, np.inf, np.nan]
    clean, findings = cleaned(replace(recording, xy=xy))
    assert len(clean.times_s) == 497
    assert "3 of 500 samples hold no number (rows 4-5, 100)" in said(about(findings, "empty_cells")[0].text)


def test_one_axis_alone():
    """Where y was never recorded, x is still used, and the loss is a fault that is said."""
    xy = moving().xy.copy()
    xy[:, 1] = np.nan
    clean, findings = cleaned(replace(moving(), xy=xy))
    assert clean.recorded == (True, False)
    assert len(clean.times_s) == 500
    assert about(findings, "one_axis")[0].level == "fault"


def test_same_time_twice_keeps_the_first():
    """Of samples with one time stamp the first is kept and the others are named."""
    recording = moving()
    times_s = recording.times_s.copy()
    times_s[10] = times_s[9]
    clean, findings = cleaned(replace(recording, times_s=times_s))
    assert clean.xy[9] == pytest.approx(recording.xy[9], abs=0)
    assert len(clean.times_s) == 499
    assert "1 sample has the same time as the one before (row 11)" in said(about(findings, "same_time_twice")[0].text)


def test_gap_is_said_and_not_bridged():
    """A pause over 250 ms cuts the recording; nothing is put into it."""
    recording = moving()
    times_s = recording.times_s.copy()
    times_s[200:] += 0.4
    clean, findings = cleaned(replace(recording, times_s=times_s))
    assert clean.segments == ((0, 200), (200, 500))
    assert "1 gap of more than 250 ms" in said(about(findings, "gap")[0].text)
    assert "lasts 0.41 s, at 1.99 s" in said(about(findings, "gap")[0].text)
    assert not about(findings, "unplugged")


def test_unplugged_by_gap_and_jump():
    """A gap while the stick is deflected, and another place after it, reads as unplugged."""
    recording = moving(radius=0.8)
    times_s, xy = recording.times_s.copy(), recording.xy.copy()
    times_s[200:] += 3.0
    xy[:200] = [0.6, 0.1]
    xy[200:] = [-0.3, 0.0]
    xy += np.random.default_rng(1).normal(0, 0.001, xy.shape)
    _, findings = cleaned(replace(recording, times_s=times_s, xy=xy))
    assert said(about(findings, "unplugged")[0].text).startswith("At 1.99 s, samples are missing for 3.01 s")


def test_unplugged_by_zeros():
    """Exact zeros on both axes between two jumps read as unplugged and are cut out like a gap."""
    recording = moving(radius=0.8)
    xy = recording.xy + 0.3
    xy[200:300] = 0.0
    clean, findings = cleaned(replace(recording, xy=xy))
    assert len(clean.times_s) == 400
    assert clean.segments == ((0, 200), (200, 400))
    assert "exactly 0 from 2 to 2.99 s" in said(about(findings, "unplugged")[0].text)


def test_zeros_are_cut_out_from_a_quarter_of_a_second_on():
    """From the first zero to the last, by the clock: 0.24 s are none, 0.26 s are one; the last sample that is not 0 does not count."""
    recording = moving(radius=0.8)
    for zeros, cut in ((25, 0), (27, 27)):
        xy = recording.xy + 0.3
        xy[200 : 200 + zeros] = 0.0
        assert 500 - len(cleaned(replace(recording, xy=xy))[0].times_s) == cut


def test_zeros_of_a_dead_zone_are_not_unplugged():
    """A stick that rests at exact zero after each release through a dead zone is not called unplugged."""
    _, findings = cleaned(thumbstick("pushes-left-stick-person-A.csv"))
    assert not about(findings, "unplugged")
    assert "no value between 0 and 29%" in said(about(findings, "dead_zone")[0].text)


def test_first_zeros_before_the_start():
    """Zeros on both axes before the pen is down are left out and said."""
    recording = replace(moving(), unit="px", xy=moving().xy * 1000 + 700.0)
    xy = recording.xy.copy()
    xy[:9] = 0.0
    clean, findings = cleaned(replace(recording, xy=xy))
    assert len(clean.times_s) == 491
    assert said(about(findings, "before_the_start")[0].text).startswith("The first 9 samples")


def test_frozen_while_the_cue_moves():
    """A value that stands still for 2 s while the target moves is cut out: the stick went to sleep."""
    recording = moving(radius=0.6)
    xy = recording.xy.copy()
    xy[100:340] = [0.31, -0.12]
    target = moving(radius=0.6).xy
    clean, findings = cleaned(replace(recording, xy=xy, cue=np.full(500, "follow"), cue_xy=target))
    assert len(clean.times_s) == 260
    assert "stands still at (31%, -12%) from 1 to 3.39 s while the cue moves" in said(about(findings, "frozen")[0].text)
    kept, asked = cleaned(replace(recording, xy=xy))
    assert len(kept.times_s) == 500
    assert about(asked, "frozen")[0].level == "query"


def test_uneven_and_slow_time():
    """The limit for tremor is 0.4 over the time step: 16 Hz for steps of up to 25 ms, 8 Hz at 20 samples a second."""
    rng = np.random.default_rng(3)
    steps = rng.choice([0.008, 0.025], size=500, p=[0.9, 0.1])
    _, findings = cleaned(replace(moving(), times_s=np.cumsum(steps)))
    assert "median 8 ms, one in a hundred over 25 ms. Tremor above 16 Hz" in said(
        about(findings, "uneven_time")[0].text
    )
    _, findings = cleaned(moving(rate_hz=20.0))
    assert "Tremor above 8.0 Hz cannot be trusted" in said(about(findings, "slow_sampling")[0].text)
    _, findings = cleaned(moving())
    assert not about(findings, "uneven_time")
    assert not about(findings, "slow_sampling")


def test_milliseconds_taken_for_seconds():
    """One sample every 16.7 'seconds' asks whether the times count milliseconds."""
    _, findings = cleaned(replace(moving(), times_s=np.arange(500) * 16.7))
    assert "If the times are in milliseconds" in said(about(findings, "slow_sampling")[0].text)


def test_counts_taken_for_shares():
    """Values up to 127 are no shares of full output: the unit is asked for."""
    _, findings = cleaned(replace(moving(), xy=np.rint(moving().xy * 800)))
    assert "Values reach 121" in said(about(findings, "unit")[0].text)


def test_counts_below_nothing_are_counts_too():
    """Pushed left and back alone, to -127: the same question; and in a named unit the scale is half the widest range."""
    left = replace(moving(), xy=-np.abs(np.rint(moving().xy * 841)))
    clean, findings = cleaned(left)
    assert "Values reach 127" in said(about(findings, "unit")[0].text)
    assert clean.scale == 127
    named, findings = cleaned(replace(left, unit="count"))
    assert named.scale == 63.5
    assert not about(findings, "unit")


def test_a_clock_too_coarse_for_the_samples_is_said():
    """250 samples a second under stamps in steps of 10 ms: of each five stamps of 20 ms three repeat one before; all are
    taken as every 4 ms."""
    times_s = np.floor(np.arange(500) * 0.4 + 1e-9) / 100
    clean, findings = cleaned(replace(moving(), times_s=times_s))
    text = said(about(findings, "coarse_clock")[0].text)
    assert text.startswith("300 samples have the same time as the one before")
    assert "steps of 10 ms. All fit an even interval of 4 ms" in text
    assert np.diff(clean.times_s) == pytest.approx(np.full(499, 0.004), abs=1e-4)


def test_unknown_words_get_the_nearest_known_one():
    """A cue or task that is not known is said, with the nearest known word."""
    cue = np.full(500, "follow")
    cue[7] = "folow"
    _, findings = cleaned(replace(moving(), cue=cue))
    assert "The cue 'folow' (row 8)" in said(about(findings, "cue")[0].text)
    assert "Did you mean 'follow'?" in said(about(findings, "cue")[0].text)
    _, findings = cleaned(replace(moving(), task="hols"))
    assert "Did you mean 'hold'?" in said(about(findings, "task")[0].text)


def test_nothing_moves():
    """A value that never changes is no rest: not touched, or not plugged in."""
    clean, findings = cleaned(replace(moving(), xy=np.zeros((500, 2))))
    assert about(findings, "nothing_moves")[0].level == "fault"
    assert clean.rest_cleaned


def test_clipped_edge():
    """Over 5 % of the edge samples at an exact limit: the range beyond is unknown."""
    turn = np.linspace(0, 6 * np.pi, 600)
    xy = np.clip(1.2 * np.column_stack((np.cos(turn), np.sin(turn))), -1, 1)
    _, findings = cleaned(Recording("edge.csv", np.arange(600) / 100, xy, task="rim"))
    text = said(about(findings, "clipping")[0].text)
    assert all(f"({side})" in text for side in ("right", "left", "forward", "back"))
    inside = Recording("edge.csv", np.arange(600) / 100, xy * 0.5 / 1.2 + 0.001 * np.sin(turn * 7)[:, None], task="rim")
    assert not about(cleaned(inside)[1], "clipping")


def test_pieces_are_cut_at_gaps_and_targets():
    """A hold toward another target is another hold."""
    cue_xy = np.full((500, 2), [0.5, 0.0])
    cue_xy[250:] = [0.0, 0.5]
    clean, _ = cleaned(replace(moving(), cue=np.full(500, "hold"), cue_xy=cue_xy))
    assert clean.asked_pieces("hold") == [(0, 250), (250, 500)]
    assert clean.asked_pieces("push") == []


@given(mask=st.lists(st.booleans(), max_size=40))
def test_runs_cover_the_mask(mask: list[bool]):
    """Law: the runs of a mask, put back together, are the mask, and no two of them touch."""
    array = np.array(mask, dtype=np.bool_)
    found = runs(array)
    rebuilt = np.zeros(len(array), dtype=np.bool_)
    for start, stop in found.tolist():
        rebuilt[start:stop] = True
    assert rebuilt.tolist() == mask
    assert all(a[1] < b[0] for a, b in zip(found[:-1].tolist(), found[1:].tolist(), strict=True))


@given(
    steps=st.lists(st.sampled_from([0.0, 0.01, 0.01, 0.01, 0.5]), min_size=5, max_size=60),
    holes=st.sets(st.integers(0, 59), max_size=10),
)
def test_nothing_is_invented(steps: list[float], holes: set[int]):
    """Law: every kept sample is one of the recorded ones, in order, and segments join without overlap."""
    times_s = np.cumsum(steps)
    xy = np.column_stack((np.sin(np.arange(len(steps))), np.cos(np.arange(len(steps)))))
    xy[[hole for hole in holes if hole < len(steps)], 1] = np.nan
    try:
        clean, _ = cleaned(Recording("law.csv", times_s, xy))
    except BadInput:
        assert min(len(set(times_s)), np.isfinite(xy).all(axis=1).sum()) < len(steps)  # only when little was left
        return
    seen = [axis for axis in (0, 1) if clean.recorded[axis]]  # an axis of empty cells alone holds zeros, and is said
    given_at = {tuple(row): float(t) for t, row in zip(times_s, xy[:, seen].tolist(), strict=True)}
    for t, row in zip(clean.times_s, clean.xy[:, seen].tolist(), strict=True):
        # A clock that counts in steps of 0.01 s moves a stamp by at most so much.
        assert abs(float(t) - given_at[tuple(row)]) <= 0.0101
    assert np.all(np.diff(clean.times_s) > 0)
    assert [a for a, _ in clean.segments[1:]] == [b for _, b in clean.segments[:-1]]
    assert (clean.segments[0][0], clean.segments[-1][1]) == (0, len(clean.times_s))
