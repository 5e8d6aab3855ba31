"""The whole tuning from recordings: each step from its own recording, laws, and gaps that are said."""

import math
from dataclasses import replace

import numpy as np
import pytest

from said import said
from stickwright.codes.message import Name, message
from stickwright.codes.tunings import Tunings
from stickwright.errors import BadInput
from stickwright.model.recording import Recording
from stickwright.tuning.pipeline import respond, response_of, seat_of, tune

OFFSET = np.array([0.04, -0.02])
REACH = {0: 0.8, 1: 0.7, 2: 0.45, 3: 0.6, 4: 0.8, 5: 0.7, 6: 0.6, 7: 0.7}  # eighths of a turn


def turned(xy, angle_rad):
    cos, sin = math.cos(angle_rad), math.sin(angle_rad)
    return np.asarray(xy) @ np.array([[cos, sin], [-sin, cos]])


def rest(rng, seconds=30):
    n = 50 * seconds
    return Recording("rest", np.arange(n) * 0.02, rng.normal(0, 0.008, (n, 2)) + OFFSET, task="rest")


def pushes(rng, error_rad=0.0, mirror=1.0):
    xy, cue, target = [], [], []
    for _ in range(3):
        for eighth, reach in REACH.items():
            direction = np.array([math.cos(eighth * math.pi / 4), math.sin(eighth * math.pi / 4)])
            way = np.concatenate([np.linspace(0, 1, 25), np.ones(50), np.linspace(1, 0, 25)])
            out = turned(reach * (1 + rng.normal(0, 0.03)) * way[:, None] * direction, error_rad + rng.normal(0, 0.03))
            xy.append(out * [1.0, mirror] + rng.normal(0, 0.008, (100, 2)) + OFFSET)
            cue += ["push"] * 100 + [""] * 20
            xy.append(np.tile(OFFSET, (20, 1)))
            target += [direction] * 100 + [[np.nan, np.nan]] * 20
    n = len(cue)
    return Recording("pushes", np.arange(n) * 0.02, np.concatenate(xy), np.array(cue), np.array(target, dtype=float))


def holds(rng):
    recordings = []
    for level in (0.2, 0.4, 0.6, 0.78):
        shake = level + rng.normal(0, 0.01 + 0.05 * level, (400, 1))
        xy = np.column_stack([shake, rng.normal(0, 0.01, 400)]) + OFFSET
        target = np.tile([level, 0.0], (400, 1))
        recordings.append(Recording(f"hold {level}", np.arange(400) * 0.02, xy, cue_xy=target, task="hold"))
    return recordings


def follow(rng, tremor=0.0):
    times_s = np.arange(3000) * 0.02
    target = 0.4 * np.column_stack([np.sin(0.9 * times_s), np.cos(0.7 * times_s)])
    late = np.concatenate([np.repeat(target[:1], 5, axis=0), target[:-5]])
    phase = 2 * np.pi * 5.0 * times_s
    shake = tremor * np.column_stack([np.sin(phase), np.cos(phase)])
    xy = late + shake + rng.normal(0, 0.01, target.shape) + OFFSET
    return Recording("follow", times_s, xy, cue_xy=target, task="follow")


def everything():
    rng = np.random.default_rng(1)
    return [rest(rng), pushes(rng, math.radians(15)), *holds(rng), follow(rng)]


def tuned(recordings, **how):
    return tune(recordings, site="chin", stick="birch", **how)


def abouts(tuning):
    return {finding.about for finding in tuning.findings}


def test_every_step_finds_what_was_put_in():
    """Offset 4 % right and 2 % back, base 15 degrees off, weak forward: each comes back with its interval."""
    tuning = tuned(everything(), own_dead_zone_share=0.2, offers=("dead zone", "sensitivity"))
    assert tuning.offset_x.low <= 0.04 <= tuning.offset_x.high
    assert tuning.offset_y.low <= -0.02 <= tuning.offset_y.high
    assert math.degrees(tuning.output_rotation_rad.value) == pytest.approx(-15, abs=2)
    assert "First turn the base of the stick 15° anticlockwise" in said(tuning.turn_base)
    reach = {round(math.degrees(d)) % 360: one for d, one in zip(tuning.direction_rad, tuning.range_share, strict=True)}
    assert reach[90].value == pytest.approx(0.45, rel=0.06)
    assert reach[0].value == pytest.approx(0.8, rel=0.06)
    assert max(tuning.gain) == pytest.approx(1 / reach[90].value, rel=1e-9)
    assert 0.02 < tuning.dead_zone.value < 0.06
    assert tuning.inner_jump == pytest.approx(0.22)
    assert tuning.curve_out[10] > 0.55
    assert tuning.filter.chosen.kind == "none"
    assert len(tuning.sentences) == 8
    for word, sentence in zip(
        ("Centre", "First turn", "Range", "Dead zone", "Curve", "No filter", "Outer limit", "In the game"),
        tuning.sentences, strict=True,
    ):  # fmt: skip
        assert said(sentence).startswith(word)
    assert tuning.sentences[2].param("least_share") == reach[90].value
    assert tuning.sentences[2].param("least_rad") == pytest.approx(math.pi / 2, abs=0.1)
    zone = tuning.sentences[3]
    assert (zone.param("own_share"), zone.param("jump_share")) == (0.2, tuning.inner_jump)
    assert tuning.sentences[7].text == "game"
    assert tuning.sentences[7].param("dead_zone_share") == tuning.simple.dead_zone_percent / 100


def test_how_a_stick_stood_is_found_without_the_rest_of_the_tuning():
    """The base 15 degrees off, the centre 20 % right and 10 % back, which turns what is not counted from there: both are found, and
    the turn is the one that the whole tuning finds."""
    rng = np.random.default_rng(7)
    off = np.array([0.16, -0.08])  # beside what every recording has
    made = [replace(one, xy=one.xy + off) for one in (rest(rng), pushes(rng, math.radians(15)))]
    seat = seat_of(made, site="chin", stick="birch")
    assert math.degrees(seat.turn_base_rad.value) == pytest.approx(15, abs=2)
    assert seat.output_rotation_rad == tuned(made).output_rotation_rad


def test_dead_zone_covers_fresh_rest_and_pushes_fill_the_output():
    """The response at work on new recordings of the same player: rest is silent, every push arrives."""
    settings = response_of(tuned(everything()))
    rng = np.random.default_rng(99)
    quiet = rest(rng, seconds=60)
    silent = (respond(quiet.xy, quiet.times_s, settings) == 0.0).all(axis=1)
    assert silent.mean() > 0.93
    push = pushes(rng, math.radians(15))
    out = respond(push.xy, push.times_s, settings)
    for eighth in range(8):
        towards = np.array([math.cos(eighth * math.pi / 4), math.sin(eighth * math.pi / 4)])
        held = np.flatnonzero(np.abs(push.cue_xy - towards).max(axis=1) < 1e-9)[30:70]
        assert (out[held] @ towards).mean() > 0.88
    assert np.hypot(*out.T).max() <= 1.0 + 1e-12


def test_response_of_gives_the_shown_trace():
    """The settings read back from the result reproduce the after-trace to rounding."""
    tuning = tuned(everything())
    assert tuning.shown_recording == "follow"
    again = respond(tuning.before_xy, tuning.shown_times_s, response_of(tuning))
    assert again == pytest.approx(tuning.after_xy, abs=1e-9)
    assert tuning.shown_times_s[-1] - tuning.shown_times_s[0] <= 60.0
    assert tuning.shown_target_xy.shape == tuning.before_xy.shape


def test_turning_the_recordings_changes_only_the_rotation():
    """Law: the same movement on a base turned by 10 degrees more: same range, dead zone and curve."""
    once = tuned(everything())
    more = []
    for one in everything():
        xy = turned(one.xy - OFFSET, math.radians(10)) + OFFSET
        more.append(Recording(one.name, one.times_s, xy, one.cue, one.cue_xy, task=one.task))
    again = tuned(more)
    assert math.degrees(once.output_rotation_rad.value - again.output_rotation_rad.value) == pytest.approx(10, abs=0.2)
    assert again.gain == pytest.approx(once.gain, rel=0.01)
    assert again.dead_zone.value == pytest.approx(once.dead_zone.value, rel=0.03)
    assert again.curve_out == pytest.approx(once.curve_out, abs=0.02)


def test_turning_recording_and_cues_together_keeps_every_length():
    """Law: a player sitting at a right angle: range, dead zone and rotation as before, directions moved."""
    once = tuned(everything()[:2])
    moved = [
        Recording(one.name, one.times_s, turned(one.xy, math.pi / 2), one.cue,
                  None if one.cue_xy is None else turned(one.cue_xy, math.pi / 2).round(12), task=one.task)
        for one in everything()[:2]
    ]  # fmt: skip
    again = tuned(moved)
    assert again.output_rotation_rad.value == pytest.approx(once.output_rotation_rad.value, abs=1e-6)
    assert sorted(again.gain) == pytest.approx(sorted(once.gain), rel=1e-6)
    assert again.dead_zone.value == pytest.approx(once.dead_zone.value, rel=1e-6)


def test_smaller_output_is_met_by_larger_gain():
    """Law: a stick that puts out 0.8 of this gives 1/0.8 of the gain and the same dead zone in the player's range."""
    once = tuned(everything()[:2])
    smaller = [
        Recording(one.name, one.times_s, 0.8 * one.xy, one.cue, one.cue_xy, task=one.task) for one in everything()[:2]
    ]
    again = tuned(smaller)
    assert np.array(again.gain) * 0.8 == pytest.approx(np.array(once.gain), rel=1e-6)
    assert again.dead_zone.value == pytest.approx(once.dead_zone.value, rel=1e-6)
    assert again.offset_x.value == pytest.approx(0.8 * once.offset_x.value, rel=1e-9)


def test_nothing_recorded_leaves_the_stick_as_it_is():
    """No recording: neutral settings, a reason beside each number, and which recording would give it."""
    tuning = tuned([])
    assert abouts(tuning) == {"rest", "rotation", "range", "straight_curve", "filter"}
    assert (tuning.offset_x.value, tuning.output_rotation_rad.value, tuning.dead_zone.value, tuning.gain) == (
        0,
        0,
        0,
        (),
    )
    assert tuning.dead_zone.why == tuning.offset_x.why == message(Tunings.why_no_rest)
    assert (tuning.filter, tuning.shown_recording, len(tuning.before_xy)) == (None, "", 0)
    texts = " ".join(said(finding.text) for finding in tuning.findings)
    for recording in (
        "20 s of rest",
        "pushes with their cues",
        "turn round the edge",
        "holds",
        "one minute of following",
    ):
        assert recording in texts


@pytest.mark.parametrize("only", ["rest", "pushes", "follow"])
def test_each_recording_alone_gives_its_own_steps(only):
    """With one recording the steps it tells are set, the others are left alone."""
    kept = [one for one in everything() if one.name == only]
    tuning = tuned(kept)
    assert (tuning.dead_zone.n > 0) == (only == "rest") or "rest_by_stillness" in abouts(tuning)
    assert bool(tuning.gain) == (only == "pushes")
    assert (tuning.filter is not None) == (only == "follow")
    assert tuning.shown_recording == only


def test_mirrored_stick_is_a_fault_not_a_rotation():
    """Forward and back swapped: no rotation, and the axis is named."""
    tuning = tuned([pushes(np.random.default_rng(1), mirror=-1.0)])
    assert tuning.output_rotation_rad.value == 0.0
    assert "mirror" in abouts(tuning)
    assert "forward and back are swapped" in " ".join(said(finding.text) for finding in tuning.findings)


def test_tremor_while_following_is_found_and_dealt_with():
    """A 5 Hz tremor of 8 %: a notch is tried, and the sentence says what a low-pass would leave."""
    rng = np.random.default_rng(3)
    tuning = tuned([rest(rng), follow(rng, tremor=0.08)])
    assert "notch" in [one.kind for one in tuning.filter.tried]
    assert "% of a tremor at 5.0 Hz" in said(tuning.filter.sentence)
    assert tuning.filter.chosen.lag_s.value <= 0.06


def test_corrections_in_the_rhythm_of_the_target_are_no_tremor():
    """Following that overshoots at three times the target's 0.7 Hz: no notch is offered for 2.1 Hz."""
    rng = np.random.default_rng(4)
    times_s = np.arange(3000) * 0.02
    turn = 2 * np.pi * 0.7 * times_s
    target = 0.4 * np.column_stack([np.sin(turn), np.cos(turn)])
    xy = target + 0.06 * np.column_stack([np.sin(3 * turn), np.cos(3 * turn)]) + rng.normal(0, 0.01, target.shape)
    tuning = tuned([Recording("follow", times_s, xy, cue_xy=target, task="follow")])
    assert "notch" not in [one.kind for one in tuning.filter.tried]


def test_rest_found_by_stillness_is_queried():
    """No rest was asked for: moments of stillness serve, and it says so."""
    rng = np.random.default_rng(2)
    one = rest(rng)
    tuning = tuned([Recording("play", one.times_s, one.xy, task="play")])
    assert "rest_by_stillness" in abouts(tuning)
    assert tuning.offset_x.value == pytest.approx(0.04, abs=0.005)


def test_wide_dead_zone_points_elsewhere():
    """Rest that swings over half the range: support and spring come before software."""
    n = 3000
    xy = np.random.default_rng(1).normal(0, 0.2, (n, 2))
    tuning = tuned([Recording("rest", np.arange(n) * 0.02, xy, task="rest")])
    assert "wide_dead_zone" in abouts(tuning)
    assert "firmer stick" in " ".join(said(finding.text) for finding in tuning.findings)


def test_centre_interval_widens_when_the_stick_comes_home_elsewhere():
    """Four rests, each at a different place: the centre is less sure than within any one rest."""
    rng = np.random.default_rng(6)
    places = [0.00, 0.05, -0.04, 0.03]
    xy = np.concatenate([rng.normal((place, 0.0), 0.004, (500, 2)) for place in places])
    cue = np.concatenate([np.array(["rest"] * 490 + ["push"] * 10) for _ in places])
    tuning = tuned([Recording("rests", np.arange(2000) * 0.02, xy, cue)])
    assert tuning.offset_x.high - tuning.offset_x.low > 0.04
    assert tuning.offset_y.high - tuning.offset_y.low < 0.005


def test_offers_beyond_two_numbers_use_the_whole_response():
    """A game with a curve setting gets the curve, not the makeshift."""
    beyond = message(Tunings.game_beyond, settings=("curve", "dead_zone"), flat=False)
    assert tuned([], offers=("dead zone", "curve")).sentences[-1] == beyond
    assert tuned([]).sentences[-1].text == "game_unknown"


def test_percent_for_the_games_dead_zone_is_refused():
    """20 typed for 0.20."""
    with pytest.raises(BadInput, match=r"Write 20% as 0.20"):
        tuned([], own_dead_zone_share=20)


def test_involuntary_movement_in_play_sets_the_least_dead_zone():
    """A stick that rests quietly still needs the dead zone that keeps tremor and sway out while it is held."""
    recordings = everything()
    quiet = tune(recordings, site="thumb", stick="hazel")
    held = tune(recordings, site="thumb", stick="hazel", least_dead_zone_share=0.15)
    assert held.dead_zone.value == pytest.approx(0.15 * np.mean(held.gain), rel=1e-12)
    assert quiet.dead_zone.value < held.dead_zone.value
    assert held.dead_zone.why == message(
        Tunings.why_involuntary,
        radius_share=held.dead_zone.value,
        rest_share=quiet.dead_zone.value,
        rest_why=None,
    )
    assert any("involuntary movement in play" in said(sentence) for sentence in held.sentences)
    assert held.simple.dead_zone_percent > quiet.simple.dead_zone_percent


def test_a_lever_with_one_axis_is_not_tuned_from():
    """A recording without y is left out and named; the centre then comes from the others."""
    rng = np.random.default_rng(8)
    whole, lever = rest(rng), rest(rng)
    lever.xy[:, 1] = np.nan
    tuning = tune([Recording("lever", lever.times_s, lever.xy, task="rest"), whole], site="chin", stick="birch")
    assert tuning.recordings == ("rest",)
    assert tuning.findings[0].about == "one_axis"
    assert tuning.findings[0].text == message(Tunings.one_axis, recording=Name("lever"), missing="y")
    assert tuning.offset_x.low < 0.04 < tuning.offset_x.high


def test_the_way_back_makes_no_dead_zone():
    """Six rests of 1.2 s that begin while the stick is still over: centre and dead zone are the stick's own."""
    rng = np.random.default_rng(10)
    n, held = 60, np.tile([0.9, 0.0], (50, 1))
    rows, cue = [], []
    for _ in range(12):
        back = 0.9 * np.exp(-np.maximum(np.arange(n) * 0.02 - 0.3, 0.0) / 0.04)
        rows += [held, np.column_stack([back, 0 * back]) + rng.normal(0, 0.008, (n, 2))]
        cue += ["push"] * 50 + ["rest"] * n
    xy = np.concatenate(rows)
    tuning = tuned([Recording("rests", np.arange(len(xy)) * 0.02, xy, np.array(cue))])
    assert abs(tuning.offset_x.value) < 0.005
    assert tuning.dead_zone.value < 0.04
    assert tuning.faults == ()


@pytest.mark.parametrize(
    ("made", "about"),
    [
        # 1 s: too short a rest; swings over half the range; never back from the edge; leaned on at first; set to zero
        (lambda rng: rng.normal(0, 0.008, (50, 2)), "short_rest"),
        (lambda rng: rng.normal(0, 0.2, (3000, 2)), "wide_dead_zone"),
        (lambda _: np.column_stack([np.linspace(0.9, 0.1, 60), np.zeros(60)]), "unsettled_rest"),
        (lambda _: np.zeros((1000, 2)), "nothing_moves"),
    ],
)
def test_settings_from_a_faulty_rest_carry_the_fault(made, about):
    """A rest that cannot set anything marks the tuning, and no sentence tells what to type."""
    xy = made(np.random.default_rng(4))
    tuning = tuned([Recording("rest", np.arange(len(xy)) * 0.02, xy, task="rest")])
    assert about in [fault.about for fault in tuning.faults]
    assert tuning.sentences[-1] == message(Tunings.game_not_yet)
    assert "%" not in said(tuning.sentences[-1])


def test_a_stick_leaned_on_when_it_was_plugged_in_is_a_fault_of_its_tuning():
    """First rest at 0.3, the next two at the centre: the centre between them is nobody's."""
    rng = np.random.default_rng(5)
    xy = rng.normal(0, 0.005, (900, 2)) + np.outer(np.repeat([0.3, 0.0, 0.0], 300), [1.0, 0.0])
    cue = np.concatenate([["rest"] * 290 + ["push"] * 10] * 3)
    tuning = tuned([Recording("rests", np.arange(900) * 0.02, xy, cue)])
    assert "leaned_on" in [fault.about for fault in tuning.faults]


def test_a_recording_left_out_is_no_fault_of_the_others():
    """One axis, another stick, another unit: that recording is named and left out, the settings of the rest stand."""
    rng = np.random.default_rng(6)
    whole = rest(rng)
    other = Recording("other", whole.times_s, whole.xy, task="rest", stick="birch")
    tuning = tune([whole, other], site="thumb", stick="hazel")
    assert "other_stick" in abouts(tuning)
    assert tuning.faults == ()


def test_one_release_is_said():
    """One rest tells nothing of the way home; three do."""
    rng = np.random.default_rng(9)
    once = tune([rest(rng)], site="chin", stick="birch")
    assert "one_release" in [finding.about for finding in once.findings]
    thrice = tune([rest(rng, 5) for _ in range(3)], site="chin", stick="birch")
    assert "one_release" not in [finding.about for finding in thrice.findings]
