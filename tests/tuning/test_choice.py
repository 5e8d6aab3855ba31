"""The choice of a filter: lag as met, held-out error, budget, and the sentence about slow tremor."""

import math

import numpy as np
import pytest

from said import said
from stickwright.errors import BadInput
from stickwright.tuning.asked import AskedStretch
from stickwright.tuning.choice import candidates, choose_filter, filter_of, lag_by_correlation_s
from stickwright.tuning.filters import NO_FILTER, low_pass, low_pass_lag_s, one_euro

TIMES_S = np.arange(6000) * 0.01
SLOW = 0.6 * np.column_stack([np.sin(0.9 * TIMES_S), np.cos(0.7 * TIMES_S + 0.4)])
WANDER = 0.6 * np.column_stack([np.sin(1.7 * TIMES_S + 2 * np.sin(0.3 * TIMES_S)), np.sin(1.3 * TIMES_S)])


def follow(tremor_hz, size, seed=1):
    """A player who follows half a tenth of a second late, with a tremor that wanders a little in phase."""
    rng = np.random.default_rng(seed)
    phase = 2 * np.pi * tremor_hz * TIMES_S + np.cumsum(rng.normal(0, 0.02, len(TIMES_S)))
    shake = size * np.column_stack([np.sin(phase), np.cos(phase)])
    late = np.concatenate([np.repeat(SLOW[:1], 5, axis=0), SLOW[:-5]])
    return AskedStretch(TIMES_S, late + shake + rng.normal(0, 0.01, late.shape), SLOW)


@pytest.mark.parametrize("late", [0, 3, 11])
def test_lag_by_correlation_finds_a_delay(late):
    """A movement against itself, some samples later."""
    found = lag_by_correlation_s(WANDER[20 : 2000 - late + 20], WANDER[20 - late : 2000 - 2 * late + 20], 0.01)
    assert found == pytest.approx(0.01 * late, abs=2e-4)


def test_lag_of_a_low_pass_on_slow_movement():
    """On slow movement the measured lag is the filter's own: (1 - alpha) / alpha samples."""
    through = low_pass(WANDER, TIMES_S, 4.0)
    assert lag_by_correlation_s(WANDER, through, 0.01) == pytest.approx(low_pass_lag_s(4.0, 0.01), abs=2e-3)


def test_a_stick_that_never_moves_has_no_lag():
    """Nothing to compare."""
    assert lag_by_correlation_s(np.zeros((100, 2)), np.zeros((100, 2)), 0.01) == 0.0


def test_steady_hand_gets_no_filter():
    """A little noise, no tremor: every filter only makes the game later."""
    choice = choose_filter([follow(5.0, 0.0)], 0.06)
    assert choice.chosen.kind == "none"
    assert choice.chosen.lag_s.value == 0.0
    assert choice.sentence.text == "none"


def test_strong_tremor_gets_a_filter_that_helps():
    """A tremor of 20 % at 6 Hz: what is kept is within the lag and closer to the target on held-out pieces."""
    choice = choose_filter([follow(6.0, 0.2)], 0.06, tremor_hz=6.0)
    alone = choice.tried[0]
    assert choice.chosen.kind != "none"
    assert choice.chosen.lag_s.value <= 0.06
    assert choice.chosen.error.value < 0.7 * alone.error.value
    assert [one.kind for one in choice.tried][-1] == "notch"
    assert choice.sentence.text == "kept"
    assert choice.sentence.param("error_share") == choice.chosen.error.value
    assert choice.sentence.param("alone_share") == alone.error.value


def test_error_is_the_plain_distance_with_the_lag_in_it():
    """By hand: rms distance of the unfiltered movement from the target in five equal pieces, averaged."""
    stretch = follow(5.0, 0.1)
    off = ((stretch.xy - stretch.target_xy) ** 2).sum(axis=1)
    expected = np.mean([math.sqrt(piece.mean()) for piece in np.split(off, 5)])
    assert choose_filter([stretch], 0.06).tried[0].error.value == pytest.approx(expected, rel=1e-12)


def test_held_out_error_is_never_the_choosing_error():
    """By brute force for the low-pass: cut-off chosen on four pieces, error taken on the fifth, in turn.

    The tremor comes in the last piece only, so the four others choose a quicker filter than all five would.
    """
    calm, shaky = follow(6.0, 0.0, seed=3), follow(6.0, 0.45, seed=3)
    stretch = AskedStretch(TIMES_S, np.where(TIMES_S[:, None] < 48.0, calm.xy, shaky.xy), SLOW)
    cutoffs = [1 / (2 * math.pi * share * 0.06) for share in (0.25, 0.5, 0.75, 0.95)]
    rows = []
    for cutoff_hz in cutoffs:
        off = ((low_pass(stretch.xy, TIMES_S, cutoff_hz) - stretch.target_xy) ** 2).sum(axis=1)
        rows.append([piece.mean() for piece in np.split(off, 5)])
    errors = np.array(rows)
    chosen = [int(np.argmin(np.delete(errors, piece, axis=1).mean(axis=1))) for piece in range(5)]
    held_out = [math.sqrt(errors[row, piece]) for piece, row in enumerate(chosen)]
    assert chosen[4] != int(np.argmin(errors.mean(axis=1)))  # or the case could not tell the two apart
    tried = {one.kind: one for one in choose_filter([stretch], 0.06).tried}
    assert tried["low-pass"].error.value == pytest.approx(np.mean(held_out), rel=1e-9)


def test_a_gain_in_one_piece_of_five_is_not_beyond_a_standard_error():
    """By hand: a gain of d in one piece and none in the others has the mean d / 5 and the standard error d / 5; what the lag costs
    in the others takes it below. The simpler is kept, though the other comes closer on average."""
    calm, shaky = follow(12.0, 0.0, seed=3), follow(12.0, 0.6, seed=3)
    choice = choose_filter([AskedStretch(TIMES_S, np.where(TIMES_S[:, None] < 48.0, calm.xy, shaky.xy), SLOW)], 0.06)
    alone, *others = choice.tried
    assert min(one.error.value for one in others if one.within_budget) < alone.error.value
    assert choice.chosen.kind == "none"


def test_lag_stated_is_the_lag_on_the_players_own_movement():
    """At 100 samples a second: the low-pass kept is as late as its cut-off says, the second-order one as its own."""
    tried = {one.kind: one for one in choose_filter([follow(6.0, 0.2)], 0.06).tried}
    first, second = tried["low-pass"], tried["butterworth"]
    assert "order" not in dict(first.settings)
    assert dict(second.settings)["order"] == 2
    cutoff_hz = dict(first.settings)["cutoff_hz"]
    assert first.lag_s.value == pytest.approx(low_pass_lag_s(cutoff_hz, 0.01), abs=0.004)
    expected_s = math.sqrt(2) / (2 * math.pi * dict(second.settings)["cutoff_hz"])
    assert second.lag_s.value == pytest.approx(expected_s, abs=0.006)
    assert first.lag_s.low <= first.lag_s.value <= first.lag_s.high


def test_what_is_tried_spreads_over_the_lag_that_may_be_spent():
    """A quarter, a half, three quarters and nearly all of the budget, each by both kinds of low-pass; no budget, nothing tried."""
    tried = candidates(0.08, None, 100.0)
    lags_s = [low_pass_lag_s(one.cutoff_hz, 0.0) for one in tried if one.kind == "low-pass"]
    assert lags_s == pytest.approx([0.02, 0.04, 0.06, 0.076], rel=0.01)
    second = [one.cutoff_hz / math.sqrt(2.0) for one in tried if one.kind == "butterworth"]
    assert second == pytest.approx([one.cutoff_hz for one in tried if one.kind == "low-pass"])
    assert candidates(0.0, 5.0, 100.0) == [NO_FILTER]


def test_slow_tremor_is_named_as_beyond_filters():
    """3.4 Hz at 60 ms: 62 % is left, and the sentence offers what does help."""
    sentence = said(choose_filter([follow(3.4, 0.0)], 0.06, tremor_hz=3.4).sentence)
    assert "With 60 ms of lag, a low-pass still leaves 62% of a tremor at 3.4 Hz" in sentence
    assert "cannot be filtered out without making the game late" in sentence
    assert "support, friction, mass or a firmer stick" in sentence


def test_no_lag_allowed_is_no_filter():
    """A budget of 0 leaves one candidate."""
    choice = choose_filter([follow(6.0, 0.2)], 0.0, tremor_hz=6.0)
    assert [one.kind for one in choice.tried] == ["none"]


def test_choice_can_be_run_again():
    """The filter of a choice is the one whose numbers are printed."""
    choice = choose_filter([follow(6.0, 0.2)], 0.06)
    by = filter_of(choice)
    assert by.settings == choice.chosen.settings
    assert filter_of(None) == NO_FILTER


def test_several_recordings_are_judged_together():
    """Two short recordings count as well as one long one; nothing is filtered across their seam."""
    whole = follow(6.0, 0.15)
    halves = [
        AskedStretch(whole.times_s[part], whole.xy[part], whole.target_xy[part])
        for part in (slice(0, 3000), slice(3000, None))
    ]
    once, twice = choose_filter([whole], 0.06), choose_filter(halves, 0.06)
    assert twice.chosen.kind == once.chosen.kind
    assert twice.chosen.error.value == pytest.approx(once.chosen.error.value, rel=0.05)


def test_one_euro_numbers_mean_what_is_printed():
    """The printed settings are those of the 1-euro filter as published."""
    tried = {one.kind: dict(one.settings) for one in choose_filter([follow(6.0, 0.2)], 0.06).tried}
    numbers = tried["1-euro"]
    out = one_euro(SLOW, TIMES_S, numbers["min_cutoff_hz"], numbers["beta"], numbers["derivative_cutoff_hz"])
    assert out.shape == SLOW.shape


@pytest.mark.parametrize("seconds", [0, 5])
def test_too_little_following_is_refused(seconds):
    """Less than ten seconds: the sentence asks for a minute."""
    n = 100 * seconds
    short = [AskedStretch(TIMES_S[:n], SLOW[:n], SLOW[:n])] if n else []
    with pytest.raises(BadInput, match="Record one minute of following a moving target"):
        choose_filter(short, 0.06)


def test_milliseconds_for_seconds_are_refused_when_negative():
    """A lag is a length of time."""
    with pytest.raises(BadInput, match=r"60 ms is 0.06"):
        choose_filter([follow(5.0, 0.1)], -0.06)
