"""Stretches of a recording by what was asked, and recordings that cannot be used."""

import numpy as np

from stickwright.codes.message import Name, message
from stickwright.codes.tunings import Tunings
from stickwright.model.recording import Recording
from stickwright.tuning.asked import asked_for, usable

TIMES_S = np.arange(10) * 0.01
XY = np.column_stack([np.arange(10) * 0.1, np.zeros(10)])


def lengths(recording, *tasks):
    return [len(stretch.times_s) for stretch in asked_for(recording, *tasks)]


def test_stretches_end_where_the_cue_changes():
    """Push, rest, push: two pushes."""
    cue = np.array(["push"] * 3 + ["rest"] * 3 + ["push"] * 4)
    assert lengths(Recording("demo", TIMES_S, XY, cue), "push") == [3, 4]
    assert lengths(Recording("demo", TIMES_S, XY, cue), "push", "rest") == [3, 3, 4]


def test_stretches_end_where_the_place_changes():
    """Right, then forward, under one cue: two pushes, each with its place."""
    target = np.array([[1.0, 0.0]] * 6 + [[0.0, 1.0]] * 4)
    stretches = asked_for(Recording("demo", TIMES_S, XY, cue_xy=target, task="push"), "push")
    assert [tuple(one.target_xy[0]) for one in stretches] == [(1.0, 0.0), (0.0, 1.0)]


def test_a_moving_target_is_one_stretch():
    """Following is not cut at every sample."""
    assert lengths(Recording("demo", TIMES_S, XY, cue_xy=XY, task="follow"), "follow") == [10]


def test_nothing_is_carried_across_a_gap():
    """Unplugged for half a second: two stretches."""
    times_s = np.concatenate([TIMES_S[:5], TIMES_S[5:] + 0.5])
    assert lengths(Recording("demo", times_s, XY, task="rest"), "rest") == [5, 5]


def test_empty_cells_are_left_out_without_a_cut():
    """One dropped sample does not end a push."""
    xy = XY.copy()
    xy[4, 1] = np.nan
    assert lengths(Recording("demo", TIMES_S, xy, np.full(10, "push")), "push") == [9]


def test_an_empty_cue_column_means_the_task():
    """A column of blanks asks for nothing; the recording's own task counts."""
    assert lengths(Recording("demo", TIMES_S, XY, np.full(10, ""), task="rim"), "rim") == [10]
    assert lengths(Recording("demo", TIMES_S, XY, task="rim"), "push") == []


def test_places_that_were_not_asked_for_are_none():
    """A push without its direction has no target."""
    target = np.full((10, 2), np.nan)
    (stretch,) = asked_for(Recording("demo", TIMES_S, XY, cue_xy=target, task="push"), "push")
    assert stretch.target_xy is None


def test_other_sticks_sites_and_units_are_left_out_with_a_reason():
    """Only what was made here on this stick, in share of full output, can tune it."""
    recordings = [
        Recording("ours", TIMES_S, XY, site="chin", stick="birch"),
        Recording("unnamed", TIMES_S, XY),
        Recording("thumb", TIMES_S, XY, site="thumb", stick="birch"),
        Recording("tablet", TIMES_S, XY, unit="px"),
    ]
    kept, findings = usable(recordings, "chin", "birch")
    assert [one.name for one in kept] == ["ours", "unnamed"]
    assert [one.about for one in findings] == ["other_stick", "foreign_unit"]
    assert findings[0].text == message(
        Tunings.other_stick,
        recording=Name("thumb"),
        its_site=Name("thumb"),
        its_stick=None,
        site=Name("chin"),
        stick=Name("birch"),
    )
    assert findings[1].text == message(Tunings.foreign_unit, recording=Name("tablet"), unit=Name("px"))


def test_rows_without_time_that_moves_on_are_left_out_and_counted():
    """A clock that stands, jumps back or is missing: those rows go, and it is said how many."""
    times_s = np.array([0.0, 0.01, 0.01, 0.02, 0.005, np.nan, 0.03, 0.04, 0.05, 0.06])
    (kept,), (finding,) = usable([Recording("demo", times_s, XY, np.full(10, "push"), XY)], "chin", "birch")
    assert kept.times_s.tolist() == [0.0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06]
    assert len(kept.cue) == len(kept.cue_xy) == len(kept.xy) == 7
    assert finding.text == message(Tunings.clock, recording=Name("demo"), left_out=3, samples=10)
