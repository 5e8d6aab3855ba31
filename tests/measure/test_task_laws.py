"""Laws of a running task, for any list of events."""

import math

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from stickwright.measure.task import (
    TABLE,
    Confirm,
    Ignored,
    KeepEvent,
    MarkEvent,
    Repeat,
    Replugged,
    Resume,
    SamplesEvent,
    Shorten,
    Start,
    Stop,
    Tick,
    Unplugged,
    advance,
    begin,
)  # fmt: skip
from stickwright.measure.tasks import TASKS, guided_task

TASKS_TRIED = {name: guided_task(name, seed=2) for name in TASKS}
RUNNING = ("asking", "resting", "paused")

steps_s = st.sampled_from([0.0, 0.01, 0.4, 3.0, 20.0, -1.0])
plain = st.sampled_from([Start, Tick, Unplugged, Replugged, Stop, Resume, Shorten, Repeat, Confirm])
happenings = st.lists(
    st.tuples(st.one_of(plain, st.integers(0, 12)), steps_s, st.floats(-1, 1), st.booleans()), max_size=30
)  # fmt: skip


def as_events(list_of):
    """Times that mostly grow, batches of evenly spaced samples."""
    now_s, count = 0.0, 0
    for what, step_s, place, flag in list_of:
        now_s = max(0.0, now_s + step_s)
        if not isinstance(what, int):
            yield what(now_s)
            continue
        rows = np.zeros((what, 7))
        rows[:, 0] = now_s + 0.05 * np.arange(1, what + 1) - (0.3 if flag else 0.0)
        rows[:, 1], rows[:, 2], rows[:, 5] = place, -place, float(flag)
        rows[:, 6] = count + np.arange(what)  # a number for every sample, to know it again
        count += what
        now_s += 0.05 * what
        yield SamplesEvent(rows)


@given(name=st.sampled_from(TASKS), list_of=happenings)
def test_no_sample_is_lost_and_none_is_kept_twice(name, list_of):
    """Law: a sample that comes while the task runs is kept once, unchanged, in its order; none is made up."""
    state, kept, owed = begin(TASKS_TRIED[name]), [], []
    given_rows = {}
    for event in as_events(list_of):
        before = state.phase
        began_s = state.log[-1].from_s
        state, effects = advance(state, event)
        kept += [row for each in effects if isinstance(each, KeepEvent) for row in each.rows]
        if isinstance(event, SamplesEvent):
            given_rows |= {row[6]: row for row in event.rows}
            if before in RUNNING:
                ends_s = min(
                    (e.at_s for e in effects if isinstance(e, MarkEvent) and e.what == "done"), default=math.inf
                )
                first = next((s.from_s for s in state.log if s.phase != "ready"), began_s)
                stopped = any(each.phase in ("stopped", "done") for each in state.log[:-1])
                # A sample from before a stop that was resumed is of the time that was not recorded.
                owed += [row[6] for row in event.rows if first <= row[0] < ends_s and not stopped]
    numbers = [row[10] for row in kept]
    assert len(set(numbers)) == len(numbers) == state.kept
    assert set(owed) <= set(numbers)
    for row in kept:
        np.testing.assert_array_equal(row[[0, 1, 2, 7, 8, 9, 10]], given_rows[row[10]])


@given(name=st.sampled_from(TASKS), list_of=happenings)
def test_stop_always_stops_and_nothing_is_stuck(name, list_of):
    """Law: from wherever a list of events leads, stopping stops, and there is a way on to the end."""
    state = begin(TASKS_TRIED[name])
    for event in as_events(list_of):
        before = state
        state, effects = advance(state, event)
        assert state.now_s >= before.now_s
        assert [each.from_s for each in state.log] == sorted(each.from_s for each in state.log)
        if any(isinstance(each, Ignored) for each in effects) and not isinstance(event, SamplesEvent):
            assert state.plugged == before.plugged
    at_s = max(state.now_s, 0.0)
    assert advance(state, Stop(at_s))[0].phase == "stopped"
    for event in (Replugged(at_s), Start(at_s), Resume(at_s), Tick(at_s + 1e6)):
        state, _ = advance(state, event)
    assert state.phase == "done"


@given(name=st.sampled_from(TASKS), list_of=happenings)
def test_only_what_the_table_allows_follows(name, list_of):
    """Law: after time has moved on, an event leads only where its row of the table says."""
    state = begin(TASKS_TRIED[name])
    for event in as_events(list_of):
        if not isinstance(event, SamplesEvent):
            state, _ = advance(state, Tick(event.at_s)) if math.isfinite(state.now_s) else (state, ())
        rule = TABLE[state.phase, type(event)]
        after, _ = advance(state, event)
        assert after.phase in rule.to
        state = after
