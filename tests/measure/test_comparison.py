"""The same task before and after a change."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.simulated_player import played_rows
from stickwright.catalogue import say
from stickwright.codes.comparisons import Comparisons
from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import LiveFigures
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.measure.comparison import comparison, difference
from stickwright.measure.lines import Line, Progress
from stickwright.measure.progress import progress
from stickwright.measure.tasks import follow_task

REACH_LEFT = message(LiveFigures.reach, way="left")
OFF_TARGET = message(LiveFigures.off_target)


def followed(seed, noise, *, lag_s=0.2):
    """A simulated player who follows with so much scatter, and the progress told."""
    rng = np.random.default_rng(seed)
    task = follow_task(seed)

    def at(_, resting, into_s):
        return task.path.at(0.0 if resting else max(0.0, into_s - lag_s))[0] + rng.normal(0, noise, 2)

    rows, _ = played_rows(task, at, rate_hz=50)
    return task, rows, progress(task, rows)


@given(
    st.tuples(st.floats(-5, 5), st.floats(0.01, 3), st.floats(0.01, 3)),
    st.tuples(st.floats(-5, 5), st.floats(0.01, 3), st.floats(0.01, 3)),
)
def test_a_difference_turned_round_is_its_negative(a, b):
    """Law: after minus before is minus before minus after, ends swapped; and it is never narrower than the wider of the two."""
    first, second = (Estimate(v, v - down, v + up, n=9) for v, down, up in (a, b))
    there, back = difference(first, second), difference(second, first)
    assert (there.value, there.low, there.high) == pytest.approx((-back.value, -back.high, -back.low), abs=1e-12)
    width = there.high - there.low
    assert width >= max(first.high - first.low, second.high - second.low) / math.sqrt(2) - 1e-12


def test_a_symmetric_difference_is_that_of_two_means():
    """Half-widths 3 and 4 give 5, as two independent means do (by hand)."""
    told = difference(Estimate(10.0, 7.0, 13.0, n=8), Estimate(12.0, 8.0, 16.0, n=5))
    assert (told.low, told.value, told.high, told.n) == (-3.0, 2.0, 7.0, 5)


def test_no_interval_gives_no_difference_and_says_whose():
    """Where one run has no interval the difference has none, and the sentence names the run and its reason."""
    told = difference(Estimate(0.5, 0.4, 0.6, n=4), Estimate.unbounded(0.7, "one hold", n=1))
    assert not told.has_interval
    assert told.why == message(Comparisons.no_interval, run="after", why="one hold")


def test_a_calmer_following_is_better_and_the_same_is_not():
    """Scatter of 12 % brought down to 3 % is told as better, with its difference; two runs alike tell nothing; the player's word comes
    last and one block of each is cautioned."""
    rough, calm, again = followed(1, 0.12), followed(2, 0.03), followed(3, 0.12)
    told = comparison(rough[0], rough[2], calm[0], calm[2])
    off = next(each for each in told.differences if each.label == OFF_TARGET)
    assert off.verdict == "better"
    assert off.difference.high < 0
    assert off.words in told.sentence.param("told")
    assert message(Comparisons.one_block) in told.cautions
    alike = comparison(rough[0], rough[2], again[0], again[2])
    assert next(each for each in alike.differences if each.label == OFF_TARGET).verdict == "no-difference"


def test_calm_but_late_is_told_as_late():
    """A trace made calm by 0.15 s more lateness: the delay is worse, beside whatever else is better."""
    plain, late = followed(4, 0.06), followed(5, 0.02, lag_s=0.35)
    told = comparison(plain[0], plain[2], late[0], late[2])
    by = next(each for each in told.differences if each.label == message(LiveFigures.lag))
    assert (by.verdict, by.difference.value) == ("worse", pytest.approx(0.15, abs=0.02))
    assert by.words in told.sentence.param("told")


def test_the_tuned_stick_is_what_is_judged():
    """With a tuning on, progress is told of the place on the screen: half the size there, though the raw rows are whole."""
    task, rows, raw = followed(6, 0.02)
    tuned = progress(task, rows, shown_xy=0.5 * rows[:, 1:3])
    size = [next(each for each in one.lines if each.label == message(LiveFigures.gain)) for one in (raw, tuned)]
    assert size[1].estimate.value == pytest.approx(size[0].estimate.value / 2, rel=1e-9)


def test_unlike_tasks_are_not_compared():
    """A calm pace against a brisk one says nothing about a tuning: refused, with the setting; another seed is the same task."""
    nothing = Progress("enough", "Enough.")
    with pytest.raises(BadInput, match="comparison, pace: found brisk after, expected the same as before, calm"):
        comparison(follow_task(1), nothing, follow_task(1, pace="brisk"), nothing)
    told = comparison(follow_task(1), nothing, follow_task(2), nothing)
    assert told.sentence == message(Comparisons.whole, told=())
    assert "Ask the player which they prefer" in say(told.sentence)


@pytest.mark.parametrize(
    "order, cautioned",
    [
        (("before", "after"), True),
        (("before", "before", "after", "after"), True),
        (("before", "after", "after", "before"), False),
    ],
)
def test_only_a_mixed_order_parts_practice_from_the_change(order, cautioned):
    """Practice grows with time: only blocks in mixed order can tell it from the change."""
    line = Line(REACH_LEFT, Estimate(0.5, 0.4, 0.6, n=3), 0.1, better="more")
    one = Progress("enough", "Enough.", (line,))
    told = comparison(follow_task(1), one, follow_task(2), one, order=order)
    assert (message(Comparisons.one_block) in told.cautions) is cautioned


def test_too_little_is_cautioned():
    """A run that was not enough is named."""
    line = Line(REACH_LEFT, Estimate(0.5, 0.1, 0.9, n=3), 0.1, better="more")
    few, good = Progress("not-enough", "Not enough.", (line,)), Progress("enough", "Enough.", (line,))
    told = comparison(follow_task(1), few, follow_task(1), good)
    assert message(Comparisons.too_little, runs="before") in told.cautions
