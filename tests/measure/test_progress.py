"""What is told while the player is still there, against simulated players whose truth is known."""

import math

import numpy as np
import pytest

from measure.simulated_player import played_rows
from stickwright.catalogue import say
from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import LiveFigures
from stickwright.codes.message import message
from stickwright.measure.lines import Line, more_of
from stickwright.measure.presses import press_lines, press_rate, press_times
from stickwright.measure.progress import progress, recording_of_rows, verdict
from stickwright.measure.targets import distance_for
from stickwright.measure.tasks import (
    aim_task,
    follow_task,
    hold_task,
    play_task,
    press_task,
    push_task,
    rest_task,
    rim_task,
)  # fmt: skip

RATE_HZ = 100.0


def eased(share):
    """Minimum-jerk way from 0 to 1."""
    s = min(max(share, 0.0), 1.0)
    return s**3 * (10 - 15 * s + 6 * s**2)


def noise(rng, sd=0.004):
    return rng.normal(0.0, sd, 2)


def line(told, label, **params):
    (found,) = [each for each in told.lines if each.label == message(label, **params)]
    return found


def reach(way):
    return message(LiveFigures.reach, way=way)


def push_player(task, rng, far, scatter, mirrored=False):
    """Pushes that reach `far[key]`, each with its own scatter."""
    size = {k: 1 + scatter * rng.normal() for k in range(len(task.steps))}

    def at(step, resting, into_s):
        asked = task.steps[step]
        if resting:
            return noise(rng)
        place = far[asked.key] * size[step] * np.array([asked.x, asked.y]) * eased((into_s - 0.3) / 0.4)
        return place * ([-1.0, 1.0] if mirrored else [1.0, 1.0]) + noise(rng)

    return at


def test_a_rest_is_found_where_it_was_put():
    """A stick that rests at (0.02, -0.01) within 0.4 % noise: both centres are told within their intervals, and that is enough."""
    rng = np.random.default_rng(5)
    task = rest_task()

    def at(step, _, into_s):
        moved = 0.3 * math.sin(into_s) if task.steps[step].key == "touch" else 0.0
        return np.array([0.02 + moved, -0.01]) + noise(rng)

    rows, _ = played_rows(task, at, rate_hz=RATE_HZ)
    told = progress(task, rows)
    assert told.verdict == "enough"
    assert line(told, LiveFigures.centre, axis="sideways").estimate.value == pytest.approx(0.02, abs=0.002)
    assert line(told, LiveFigures.rest_noise).estimate.value == pytest.approx(0.004, rel=0.2)


def test_a_sure_player_is_enough_and_a_scattered_one_is_not():
    """Pushes that scatter by 3 % are enough after three each; by 35 % they are not, and the worst directions are named with counts
    and the steps that ask for them."""
    rng = np.random.default_rng(6)
    task = push_task(3, directions=4)
    far = {"right": 0.9, "forward": 0.8, "left": 0.7, "back": 0.4}
    sure = progress(task, played_rows(task, push_player(task, rng, far, 0.03), rate_hz=50)[0])
    assert sure.verdict == "enough"
    for key, value in far.items():
        found = line(sure, LiveFigures.reach, way=key).estimate
        assert found.value == pytest.approx(value, abs=0.05)
    unsure = progress(task, played_rows(task, push_player(task, rng, far, 0.35), rate_hz=50)[0])
    assert unsure.verdict == "not-enough"
    assert unsure.sentence.text == "not_enough"
    assert unsure.sentence.param("more") == tuple(each.text for each in unsure.more)
    first = unsure.more[0]
    assert (first.what, first.count) == ("push", 3)
    assert {task.steps[k].key for k in first.steps} == {first.way}


def test_one_round_asks_for_two_more_and_a_running_task_for_nothing():
    """One push each way has no interval: two more each; while steps are still to come, go on."""
    rng = np.random.default_rng(7)
    task = push_task(3, directions=4, rounds=3)
    far = dict.fromkeys(("right", "forward", "left", "back"), 0.7)
    rows, _ = played_rows(task, push_player(task, rng, far, 0.05), rate_hz=50)
    part = rows[rows[:, 0] < 28.0]
    told = progress(task, part)
    assert told.verdict == "not-enough"
    assert {each.count for each in told.more} == {2}
    running = progress(task, part, ahead=range(4, 13))
    assert running.more == ()
    assert running.sentence == message(LiveFigures.so_far, verdict="not-enough", steps=9)
    missing = progress(task, rows[rows[:, 0] < 14.0])
    untried = message(LiveFigures.reason, reason="not-tried")
    assert [each.estimate.why for each in missing.lines].count(untried) == 2


def test_a_mirrored_stick_is_said_at_once():
    """Right comes out as left after four pushes: the doubt names the axis while it can still be set."""
    rng = np.random.default_rng(8)
    task = push_task(3, directions=4, rounds=1)
    far = dict.fromkeys(("right", "forward", "left", "back"), 0.7)
    told = progress(task, played_rows(task, push_player(task, rng, far, 0.05, mirrored=True), rate_hz=50)[0])
    (doubt,) = [each for each in told.doubts if each.about == "mirrored"]
    assert "left and right are swapped" in say(doubt.text)


def test_the_edge_of_a_round_stick():
    """Laps at 0.7 of full output: every direction is told as 0.7, and four laps are enough."""
    rng = np.random.default_rng(9)
    task = rim_task()

    def at(step, resting, into_s):
        angle = math.copysign(2 * math.pi * into_s / 5, task.steps[step].laps)
        return noise(rng) if resting else 0.7 * np.array([math.cos(angle), math.sin(angle)]) + noise(rng)

    told = progress(task, played_rows(task, at, rate_hz=RATE_HZ)[0])
    assert told.verdict == "enough"
    reached = [each.estimate.value for each in told.lines if each.label.text == "reach"]
    assert len(reached) == 8
    assert reached == pytest.approx([0.7] * 8, abs=0.03)


def test_throughput_of_a_player_known_from_construction():
    """A player who always needs 0.8 s and scatters by a known sd along the way: effective width 4.133 sd over the distance asked
    gives the bits a second, by hand; the interval holds it, with the stick as place and as speed."""
    rng = np.random.default_rng(10)
    bits, width, sd = 2.3, 0.3, 0.02
    by_hand = math.log2(distance_for(bits, width) / (4.133 * sd) + 1) / 0.8
    task = aim_task(4, bits=(bits,), width=width, targets=13, dwell_s=0.5)
    ends = {k: np.array([s.x, s.y]) for k, s in enumerate(task.steps)}

    def at(step, resting, into_s):
        before = ends[step - 1] if step else np.zeros(2)
        if resting:
            return before
        way = (ends[step] - before) / np.hypot(*(ends[step] - before))
        mine = ends[step] + way * off[step]
        # Nothing for 0.8 s, then there at once: the time to the entry is 0.8 s by construction.
        return mine if into_s >= 0.8 - 1e-9 else before + np.array([0.02 * math.sin(40 * into_s)] * 2)

    off = dict(enumerate(rng.normal(0.0, 1.0, len(task.steps))))
    middle, spread = np.mean(list(off.values())[1:]), np.std(list(off.values())[1:], ddof=1)
    off = {k: sd * (each - middle) / spread for k, each in off.items()}
    told = progress(task, played_rows(task, at, rate_hz=RATE_HZ)[0])
    found = line(told, LiveFigures.throughput).estimate
    assert found.value == pytest.approx(by_hand, rel=0.03)  # entry is seen at the next of 100 samples a second
    assert found.low < by_hand < found.high
    assert line(told, LiveFigures.missed).estimate.value == 0.0


def test_a_cursor_driven_by_speed_is_judged_by_its_own_place():
    """With the stick as speed the recording told is that of the cursor: it ends in the targets though the stick never stands there,
    and readers of stick traces see free play, not aiming."""
    task = aim_task(4, bits=(1.6,), mapping="velocity", gain_per_s=2.0)
    place = np.zeros(2)

    def at(step, resting, _):
        nonlocal place
        if resting:
            return np.zeros(2)
        towards = np.array([task.steps[step].x, task.steps[step].y]) - place
        stick = np.clip(3 * towards, -0.8, 0.8)
        place = place + 2.0 * stick / RATE_HZ
        return stick

    rows, state = played_rows(task, at, rate_hz=RATE_HZ)
    assert state.completed
    assert set(rows[:, 6]) == {1.0, 8.0}
    recording = recording_of_rows(rows, task)
    asked = recording.cue == "aim"
    last = np.flatnonzero(asked & np.append((np.diff(recording.cue_xy, axis=0) != 0).any(axis=1), True))
    off = np.hypot(*(recording.xy - recording.cue_xy)[last].T)
    assert off.max() < recording.cue_width / 2
    assert progress(task, rows).lines[0].label == message(LiveFigures.throughput)


def test_following_tells_lag_and_size():
    """A player who follows 0.2 s late at nine tenths of the size: both are told, and a minute is enough."""
    rng = np.random.default_rng(11)
    task = follow_task(4)

    def at(_, resting, into_s):
        return 0.9 * task.path.at(0.0 if resting else max(0.0, into_s - 0.2))[0] + noise(rng, 0.02)

    told = progress(task, played_rows(task, at, rate_hz=RATE_HZ)[0])
    assert told.verdict == "enough"
    assert line(told, LiveFigures.lag).estimate.value == pytest.approx(0.2, abs=0.02)
    assert line(told, LiveFigures.gain).estimate.value == pytest.approx(0.9, abs=0.03)


def test_a_hold_tells_its_length_and_that_it_sinks():
    """Half throw held for 30 s and sinking by 1 % of it a second: level, time and slope are told."""
    rng = np.random.default_rng(12)
    task = hold_task()

    def at(_, resting, into_s):
        held = not resting and into_s < 30.0
        return np.array([0.0, 0.5 * eased(into_s / 0.5) * (1 - 0.005 * into_s) if held else 0.0]) + noise(rng)

    rows, _ = played_rows(task, at, rate_hz=RATE_HZ)
    told = progress(task, rows)
    assert rows[-1, 0] == pytest.approx(5.0 + 30.5, abs=0.05)
    assert line(told, LiveFigures.level_change).estimate.value == pytest.approx(
        -0.0054, abs=0.0006
    )  # of its mean level
    assert line(told, LiveFigures.level_change).estimate.high < 0


def test_presses_are_counted_with_their_interval():
    """Five presses in 2 s are 2 a second between the first and the last; a bounce within 0.03 s is no press."""
    times = np.arange(0, 3, 0.01)
    down = np.zeros(len(times))
    for start in (10, 60, 110, 150, 210):
        down[start : start + 20] = 1
    down[115:116] = 0
    presses, held = press_times(times, down)
    assert presses.tolist() == pytest.approx([0.1, 0.6, 1.1, 1.5, 2.1], abs=1e-9)
    assert held == pytest.approx([0.2] * 5, abs=1e-9)
    rate = press_rate(presses)
    # By hand: times between 0.5 0.5 0.4 0.6, mean 0.5, sd 0.081650, t(3) 3.182446, half-width 0.129923.
    assert (rate.low, rate.value, rate.high) == pytest.approx((1 / 0.629923, 2.0, 1 / 0.370077), rel=1e-5)


def test_the_press_task_from_free_to_beat():
    """Free presses every 0.4 s, then 0.1 s late to a beat of one second: 2.5 a second, 0.1 s behind."""
    task = press_task()

    def confirm(step, resting, into_s):
        if resting or into_s < 0.2:
            return 0.0
        if math.isfinite(task.steps[step].beat_s):
            return float(0.095 < into_s % 1.0 < 0.3)
        return float(into_s % 0.4 < 0.15)

    rows, state = played_rows(task, lambda *_: np.zeros(2), rate_hz=RATE_HZ, confirm=confirm)
    assert state.completed
    told = {each.label.text: each.estimate for each in press_lines(task, rows)}
    assert told["press_rate"].value == pytest.approx(2.5, rel=0.02)
    assert told["behind_beat"].value == pytest.approx(0.1, abs=0.02)


def test_a_stick_that_stands_still_is_said():
    """Two seconds of the same value while movement is asked: said, unless it stands at its stop."""
    task = play_task()
    rng = np.random.default_rng(13)
    asleep, _ = played_rows(
        task, lambda _, __, t: np.array([0.1, 0.1]) if t > 3 else noise(rng), rate_hz=50, longest_s=8
    )
    assert progress(task, asleep).doubts[0].about == "stands_still"
    at_stop, _ = played_rows(
        task, lambda _, __, t: np.array([0.0, 1.0]) if t > 3 else noise(rng), rate_hz=50, longest_s=8
    )
    assert "stands_still" not in [each.about for each in progress(task, at_stop).doubts]


def test_the_other_stick_is_said():
    """Only the second stick moves: choose the one the player holds. Both move: asked about. One alone and the other still: no doubt."""
    task = play_task()

    def doubts(first, second):
        def at(_, __, into_s):
            return first * np.array([math.sin(2 * into_s), math.cos(3.1 * into_s)])

        rows, _ = played_rows(task, at, rate_hz=50, longest_s=8, second=lambda t: (second * math.sin(3 * t), 0.0))
        return [each.about for each in progress(task, rows).doubts]

    assert doubts(0.0, 0.8) == ["other_stick"]
    assert doubts(0.7, 0.8) == ["both_sticks"]
    assert doubts(0.7, 0.0) == []


def test_exact_limits_are_said():
    """Laps that end at exactly 1.0 leave open how far the push would have gone."""
    task = rim_task()

    def at(step, resting, into_s):
        angle = math.copysign(2 * math.pi * into_s / 5, task.steps[step].laps)
        return np.zeros(2) if resting else np.clip(1.3 * np.array([math.cos(angle), math.sin(angle)]), -1, 1)

    assert "clipping" in [each.about for each in progress(task, played_rows(task, at, rate_hz=50)[0]).doubts]


@pytest.mark.parametrize(
    "task", [rest_task(), push_task(1), aim_task(), follow_task(1), hold_task(), press_task(), play_task()]
)
@pytest.mark.parametrize("rows", [np.empty((0, 11)), np.full((1, 11), np.nan), np.full((40, 11), np.nan)])
def test_nothing_yet_is_said_and_never_an_exception(task, rows):
    """No samples, or only empty ones: nothing yet, in a sentence."""
    told = progress(task, rows)
    assert told.verdict == "nothing-yet"
    assert say(told.sentence).endswith(".")
    assert told.lines == ()


def test_how_many_more_by_hand():
    """Three repeats at 18 % half-width where 9 % is wanted need twelve in all (n grows with the square): nine more, asked three at a
    time; at 14 % of five repeats wanted 10 % it is ten in all, of which three are asked for."""

    def asked(half, wanted, n, most):
        return more_of(Line(reach("left"), Estimate(0.6, 0.6 - half, 0.6 + half, n=n), wanted, most=most)).count

    assert asked(0.18, 0.09, 3, 99) == 9
    assert asked(0.18, 0.09, 3, 3) == 3
    assert asked(0.14, 0.10, 5, 99) == 5


def test_words_for_nearly():
    """Up to half as wide again as wanted is 'nearly', with one count and one direction."""
    nearly = Line(reach("left"), Estimate(0.6, 0.48, 0.72, n=3), 0.1, "push", "left", (2,))
    word, sentence, more = verdict([nearly])
    assert (word, more[0].steps) == ("nearly", (2, 2))
    assert sentence == message(
        LiveFigures.not_enough, nearly=True, more=(message(LiveFigures.more, count=2, what="push", way="left"),),
        label=reach("left"), value=message(LiveFigures.figure, value=nearly.estimate, unit="share"),
        wanted=message(LiveFigures.within_share, half_width_share=0.1),
    )  # fmt: skip
