"""The measuring task as a table: every state with every event."""

import math

import numpy as np
import pytest

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.task_states import TaskStates
from stickwright.measure.task import (
    EVENTS,
    PHASES,
    TABLE,
    Confirm,
    Finished,
    Ignored,
    KeepEvent,
    MarkEvent,
    Repeat,
    Replugged,
    Resume,
    SamplesEvent,
    Shorten,
    Start,
    StepEvent,
    Stop,
    TaskState,
    Tick,
    Unplugged,
    advance,
    begin,
)  # fmt: skip
from stickwright.measure.tasks import aim_task, follow_task, hold_task, press_task, push_task, rest_task, rim_task

PUSHES = push_task(5, directions=4, rounds=2)  # each 5 s of rest and 2 s of push, nine of them


def raw(times_s, x=0.0, y=0.0, confirm=0.0):
    """Samples as a device gives them."""
    times = np.atleast_1d(np.asarray(times_s, dtype=float))
    rows = np.full((len(times), 7), np.nan)
    rows[:, 0], rows[:, 1], rows[:, 2], rows[:, 5], rows[:, 6] = times, x, y, confirm, 0.0
    return SamplesEvent(rows)


def played(task, *events):
    """State and all effects after a list of events."""
    state, effects = begin(task), []
    for event in events:
        state, said = advance(state, event)
        effects += said
    return state, effects


def kept(effects):
    """The samples kept, one below the other."""
    rows = [each.rows for each in effects if isinstance(each, KeepEvent)]
    return np.concatenate(rows) if rows else np.empty((0, 11))


REACHED = {
    "ready": (),
    "resting": (Start(0.0), Tick(2.0)),
    "asking": (Start(0.0), Tick(5.5)),
    "paused": (Start(0.0), Tick(5.5), Unplugged(6.0)),
    "stopped": (Start(0.0), Tick(5.5), Stop(6.0)),
    "done": (Start(0.0), Tick(100.0)),
}

EXPECTED = """
ready    Start resting   SamplesEvent ready    Tick ready   Unplugged ready   Replugged ready
ready    Stop stopped    Resume -         Shorten ready   Repeat -       Confirm -
resting  Start -         SamplesEvent resting  Tick resting Unplugged paused  Replugged resting
resting  Stop stopped    Resume -         Shorten resting Repeat resting Confirm asking
asking   Start -         SamplesEvent asking   Tick asking  Unplugged paused  Replugged asking
asking   Stop stopped    Resume -         Shorten asking  Repeat resting Confirm resting
paused   Start -         SamplesEvent paused   Tick paused  Unplugged paused  Replugged resting
paused   Stop stopped    Resume -         Shorten paused  Repeat -       Confirm -
stopped  Start -         SamplesEvent stopped  Tick stopped Unplugged stopped Replugged stopped
stopped  Stop stopped    Resume resting   Shorten -       Repeat resting Confirm -
done     Start -         SamplesEvent done     Tick done    Unplugged done    Replugged done
done     Stop stopped    Resume -         Shorten -       Repeat resting Confirm -
"""


def cells():
    for line in EXPECTED.split("\n"):
        phase, *pairs = line.split() or [""]
        for name, to in zip(pairs[::2], pairs[1::2], strict=True):
            yield phase, next(each for each in EVENTS if each.__name__ == name), to


@pytest.mark.parametrize("phase, event, to", list(cells()), ids=lambda each: getattr(each, "__name__", each))
def test_every_state_with_every_event(phase, event, to):
    """Each cell leads where the table of the bench protocol says; what is not possible changes nothing and says why."""
    state, _ = played(PUSHES, *REACHED[phase])
    assert state.phase == phase
    at_s = state.now_s if math.isfinite(state.now_s) else 0.0
    after, effects = advance(state, raw([at_s]) if event is SamplesEvent else event(at_s))
    if to == "-":
        (said,) = [each for each in effects if isinstance(each, Ignored)]
        assert after.phase == phase
        assert said.event == event.__name__
        assert say(said.why).endswith(".")
    else:
        assert after.phase == to
        assert not [each for each in effects if isinstance(each, Ignored)]
    assert after.phase in TABLE[phase, event].to


@pytest.mark.parametrize("phase, event", TABLE, ids=lambda each: getattr(each, "__name__", each))
def test_a_rule_says_truly_whether_it_acts(phase, event):
    """A page offers what acts: in each cell that does, something changes or is said; where it says nothing happens, nothing does."""
    rule = TABLE[phase, event]
    state, _ = played(PUSHES, *REACHED[phase])
    if phase == "paused":
        assert not state.plugged
    at_s = state.now_s if math.isfinite(state.now_s) else 0.0
    after, effects = advance(state, raw([at_s]) if event is SamplesEvent else event(at_s))
    assert any(isinstance(each, Ignored) for each in effects) == (rule.kind == "refused")
    if rule.kind == "nothing":
        assert (after.phase, after.step, after.queue, after.plugged, effects) == (
            state.phase, state.step, state.queue, state.plugged, ()
        )  # fmt: skip
    if rule.kind == "acts" and event in (Start, Stop, Resume, Shorten, Repeat, Confirm):
        assert (after.phase, after.step, after.queue, effects) != (state.phase, state.step, state.queue, ())


def test_the_table_is_whole():
    """No cell is missing, and the cells written out above are all there are."""
    assert set(TABLE) == {(phase, event) for phase in PHASES for event in EVENTS}
    assert {(phase, event) for phase, event, _ in cells()} == set(TABLE)


def test_a_push_carries_its_cue():
    """A sample is kept with what was on the screen at its own time, even when it arrives after the step has ended."""
    state, _ = played(PUSHES, Start(10.0), Tick(30.0))
    _, effects = advance(state, raw([10.0, 14.999, 15.0, 16.999, 17.0, 23.0], x=0.3))
    rows = kept(effects)
    first, second = PUSHES.steps[0], PUSHES.steps[1]
    np.testing.assert_array_equal(rows[:, 6], [1, 1, 4, 4, 1, 4])
    np.testing.assert_array_equal(rows[[2, 5], 3:5], [[first.x, first.y], [second.x, second.y]])
    assert np.isnan(rows[[0, 1, 4], 3:5]).all()
    np.testing.assert_array_equal(rows[:, 1], 0.3)


def test_unplugging_marks_and_begins_the_step_anew():
    """Unplugged at 6 s: what comes until it is plugged in again is kept with nothing asked; then rest, then the same push."""
    state, effects = played(PUSHES, *REACHED["paused"], raw([6.5], 0.0), Replugged(9.0), Tick(14.0))
    assert kept(effects)[:, 6].tolist() == [0.0]
    assert [(each.what, each.at_s) for each in effects if isinstance(each, MarkEvent)] == [
        ("began", 0.0), ("paused", 6.0), ("resumed", 9.0)
    ]  # fmt: skip
    assert (state.phase, state.step, state.since_s, state.left_s) == ("asking", 0, 14.0, 2.0)


def test_a_stop_keeps_what_was_on_its_way():
    """A batch that arrives after the stop: samples from before it are kept, later ones are of no task."""
    state, effects = played(PUSHES, Start(0.0), Stop(3.0), raw([2.8, 2.9, 3.0, 3.1]))
    assert kept(effects)[:, 0].tolist() == [2.8, 2.9]
    assert state.kept == 2


def test_time_never_goes_back():
    """An event with an earlier time counts as now; one without a time is said and changes nothing."""
    state, _ = played(PUSHES, Start(50.0), Stop(20.0))
    assert (state.now_s, state.since_s) == (50.0, 50.0)
    after, (said,) = advance(state, Tick(math.nan))
    assert after is state
    assert said == Ignored("Tick", message(TaskStates.why, why="no-time"))


@pytest.mark.parametrize("rows", [np.zeros((2, 5)), np.zeros(7)])
def test_a_batch_of_another_shape_is_said(rows):
    """Rows with other columns are no samples: nothing changes, and what samples have is said."""
    state = begin(PUSHES)
    after, (said,) = advance(state, SamplesEvent(rows))
    assert after is state
    assert said.why == message(TaskStates.no_samples, columns=7)


def test_a_batch_with_too_few_places_shown_is_said():
    """Two samples and three places on the screen: nothing changes, and both counts are named."""
    state = begin(PUSHES)
    after, (said,) = advance(state, SamplesEvent(np.zeros((2, 7)), np.zeros((3, 2))))
    assert after is state
    assert said.why == message(TaskStates.places_unlike, samples=2, places=3)


def test_shorten_drops_rounds_then_the_rest_of_this_one():
    """First press of 'shorter': one round of four pushes; second: this push is the last."""
    once, _ = played(PUSHES, Start(0.0), Tick(5.5), Shorten(5.5))
    assert [PUSHES.steps[k].round for k in once.queue] == [1, 1, 1]
    twice, _ = advance(once, Shorten(5.6))
    assert (advance(twice, Tick(6.9))[0].phase, advance(twice, Tick(7.0))[0].phase) == ("asking", "done")


def test_shorten_lets_following_tell_something():
    """Following may be cut to 20 s, not to nothing; asked after 30 s it ends at once."""
    task = follow_task(1)
    early, _ = played(task, Start(0.0), Tick(10.0), Shorten(10.0), Tick(23.9))
    assert early.phase == "asking"
    assert advance(early, Tick(24.0))[0].phase == "done"
    late, _ = played(task, Start(0.0), Tick(34.0), Shorten(34.0))
    assert late.phase == "done"
    before, _ = played(task, Shorten(0.0), Start(0.0), Tick(24.0))
    assert before.phase == "done"


def test_shorten_before_the_begin_never_leaves_one_push():
    """A task of one round cannot lose its directions before it begins."""
    state, effects = played(push_task(5, directions=4, rounds=1), Shorten(0.0))
    assert isinstance(effects[0], Ignored)
    assert len(state.queue) == 4


def test_repeat_while_resting_asks_the_last_push_again():
    """'That one again' in the rest after a push means the push just made; the next one is not lost."""
    state, _ = played(PUSHES, Start(0.0), Tick(8.0), Repeat(8.0))
    assert (state.step, state.queue[:2]) == (0, (1, 2))
    again, _ = played(PUSHES, Start(0.0), Tick(6.0), Repeat(6.0))
    assert (again.phase, again.step, again.queue[0]) == ("resting", 0, 1)


def test_three_more_at_one_direction():
    """After the end the steps named are asked once more, with rest first, and all is kept."""
    state, effects = played(PUSHES, *REACHED["done"], Repeat(100.0, (2, 2, 2)), Tick(121.0))
    ended = [each.step for each in effects if isinstance(each, Finished)]
    assert ended == [*range(9), 2, 2, 2]
    assert state.phase == "done"
    _, (said,) = advance(state, Repeat(130.0, (9,)))
    assert said == Ignored("Repeat", message(TaskStates.steps_there_are, last=8))


def test_stopping_after_the_end_and_resuming_is_still_done():
    """Stop in 'done' stops, and going on from there has nothing left to ask."""
    state, _ = played(PUSHES, *REACHED["done"], Stop(101.0), Resume(102.0))
    assert (state.phase, state.completed) == ("done", True)


def test_stopping_before_the_start_and_resuming_begins():
    """A stop in 'ready' is undone by resuming: the task begins."""
    state, effects = played(PUSHES, Stop(0.0), Resume(1.0))
    assert state.phase == "resting"
    assert [each.what for each in effects if isinstance(each, MarkEvent)] == ["stopped", "began"]


def test_without_a_stick_nothing_starts():
    """Unplugged before the start: starting is not possible and the sentence says what to do."""
    state, effects = played(PUSHES, Unplugged(0.0), Start(1.0))
    assert (state.phase, effects[-1]) == ("ready", Ignored("Start", message(TaskStates.why, why="unplugged")))
    assert advance(advance(state, Replugged(2.0))[0], Start(3.0))[0].phase == "resting"


def test_resuming_without_a_stick_waits_for_it():
    """Stopped, unplugged, resumed: paused until the stick is back, then rest first."""
    state, _ = played(PUSHES, *REACHED["stopped"], Unplugged(7.0), Resume(8.0))
    assert state.phase == "paused"
    assert advance(state, Replugged(9.0))[0].phase == "resting"


# What ends a step before its time.


def test_staying_in_a_target_chooses_it():
    """Half a second inside chooses; leaving begins the count anew; the first sample of the next cue is the choosing one."""
    task = aim_task(0, bits=(2.0,))
    start, _ = played(task, Start(0.0), Tick(2.0))
    x, y = task.steps[0].x, task.steps[0].y
    times = np.arange(2.0, 4.0, 0.01)
    out = (times >= 2.3) & (times < 2.4)
    state, effects = advance(start, raw(times, np.where(out, 0.0, x), np.where(out, 0.0, y)))
    (choice,) = [each for each in effects if isinstance(each, Finished)]
    assert (choice.how, choice.at_s) == ("target", pytest.approx(2.9, abs=0.0101))
    rows = kept(effects)
    changed = np.flatnonzero(np.diff(rows[:, 3]))
    assert rows[changed[0] + 1, 0] == choice.at_s
    assert state.step == 1


def test_by_switch_only_the_switch_chooses():
    """Staying chooses nothing; the press does, at the sample that carries it; holding it down is one press."""
    task = aim_task(0, bits=(2.0,), by_switch=True)
    x, y = task.steps[0].x, task.steps[0].y
    times = np.arange(2.0, 5.0, 0.01)
    state, effects = played(task, Start(0.0), Tick(2.0), raw(times, x, y, confirm=(times > 3.995).astype(float)))
    assert [(each.how, round(each.at_s, 3)) for each in effects if isinstance(each, Finished)] == [("confirm", 4.0)]
    assert state.step == 1


def test_a_bouncing_switch_is_one_press():
    """A second confirm within 0.15 s neither ends the next step nor skips its rest."""
    state, effects = played(PUSHES, Start(0.0), Confirm(1.0), Confirm(1.1))
    assert state.phase == "asking"
    assert isinstance(effects[-1], Ignored)
    assert advance(state, Confirm(1.2))[0].phase == "resting"


def test_a_late_press_of_the_last_round_skips_no_rest():
    """In the press task the switch never ends a rest, and in any task a press just after a step does not; the key does."""
    presses = press_task()
    state, _ = played(presses, Start(0.0), Tick(10.0), raw([19.9, 20.1, 23.0, 25.0], confirm=[0, 1, 0, 1]))
    assert (state.phase, state.step, state.presses) == ("resting", 1, 0)
    assert advance(state, Confirm(26.0))[0].phase == "asking"
    pushing, effects = played(PUSHES, Start(0.0), Tick(7.0), Confirm(7.5))
    assert (pushing.phase, effects[-1]) == (
        "resting",
        Ignored("Confirm", message(TaskStates.why, why="only-just-resting")),
    )


def test_presses_are_counted():
    """In the press task the switch counts and the round goes on."""
    state, _ = played(
        press_task(), Start(0.0), Tick(10.0), raw([11, 11.3, 12, 12.3, 13, 13.3], confirm=[1, 0, 1, 0, 1, 0])
    )
    assert (state.phase, state.presses) == ("asking", 3)


def test_a_sample_from_before_the_step_ends_nothing():
    """A late batch from the last step, with the stick in the target and the switch down, does not touch the new step."""
    task = aim_task(0, bits=(2.0,))
    second = task.steps[1]
    state, _ = played(task, Start(0.0), Tick(8.0))
    assert (state.step, state.since_s) == (1, 8.0)
    late = raw(7.0 + 0.05 * np.arange(18), second.x, second.y, confirm=[0.0] * 9 + [1.0] * 9)
    after, _ = advance(state, late)
    assert after.step == 1
    assert math.isnan(after.watch.inside_since_s)


def test_the_velocity_cursor_chooses_with_its_own_place():
    """With the stick as speed, the cursor's place counts: full throw for 0.4 s at 1 a second moves it 0.4."""
    task = aim_task(0, bits=(2.0,), mapping="velocity")
    state, _ = played(task, Start(0.0), raw(np.arange(0.0, 0.4001, 0.01), 0.0, 1.0))
    assert state.cursor_xy == pytest.approx((0.0, 0.4), abs=1e-9)


def test_laps_end_around_the_edge():
    """Two laps to the right end the step; to and fro does not count, nor do laps the other way."""
    task = rim_task(lasts_s=60.0)
    times = np.arange(5.0, 30.0, 0.01)
    right = -2 * math.pi * (times - 5.0) / 5.0
    to_and_fro = 2 * math.pi * np.sin(times)

    def ends(angle):
        _, effects = played(task, Start(0.0), Tick(5.0), raw(times, 0.8 * np.cos(angle), 0.8 * np.sin(angle)))
        return [(each.how, each.at_s) for each in effects if isinstance(each, Finished)]

    ((how, at_s),) = ends(right)
    assert (how, at_s) == ("laps", pytest.approx(15.0 + 0.02 * 5.0, abs=0.0101))
    assert ends(-right) == []
    assert ends(to_and_fro) == []


def test_letting_go_ends_a_hold():
    """The hold ends half a second after the stick has gone below half its level; not before it had got there; never after 60 s."""
    task = hold_task(level=0.5)
    times = np.arange(5.0, 80.0, 0.01)
    _, effects = played(task, Start(0.0), raw(times, 0.0, np.where((times > 8.0) & (times < 20.0), 0.5, 0.1)))
    ((how, at_s),) = [(each.how, each.at_s) for each in effects if isinstance(each, Finished)]
    assert (how, at_s) == ("release", pytest.approx(20.5, abs=0.0201))  # two samples of 0.01 s
    _, effects = played(task, Start(0.0), raw(times, 0.0, 0.1))
    assert [(each.how, each.at_s) for each in effects if isinstance(each, Finished)] == [("time", 65.0)]


def test_a_tuned_stick_moves_the_cursor_and_raw_is_kept():
    """With tuning on, the place on the screen chooses; what is kept is what the device gave."""
    task = aim_task(0, bits=(2.0,))
    x, y = task.steps[0].x, task.steps[0].y
    times = np.arange(2.0, 2.6, 0.01)
    samples = SamplesEvent(raw(times, 0.01, 0.01).rows, np.tile([x, y], (len(times), 1)))
    _, effects = played(task, Start(0.0), Tick(2.0), samples)
    assert [each.how for each in effects if isinstance(each, Finished)] == ["target"]
    np.testing.assert_array_equal(kept(effects)[:, 1:3], 0.01)


def test_the_picture_is_asked_for_at_every_change():
    """Every rest and every step is announced once, at its own moment, however late the tick comes."""
    _, effects = played(rest_task(), Start(0.0), Tick(100.0))
    told = [(each.step, each.at_s) for each in effects if isinstance(each, StepEvent)]
    assert told == [(0, 0.0), (1, 3.5), (2, 6.5), (3, 10.0), (4, 13.0)]


def test_a_state_says_what_is_left():
    """Time left counts down in rest and step, and is endless otherwise."""
    assert begin(PUSHES).left_s == math.inf
    state, _ = played(PUSHES, Start(0.0), Tick(1.5))
    assert isinstance(state, TaskState)
    assert state.left_s == 3.5
