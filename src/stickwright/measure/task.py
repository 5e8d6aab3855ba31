"""Running a guided task: events go in, what to show and what to keep comes out. No device, no clock, no waiting.

Rules of this file. The only time is the time in the events, seconds on the recording's own clock; it never goes back. What
is possible is one table (`TABLE`), a row for every state and event; an event that is not possible changes nothing and is
said. A sample taken while the task runs is kept, whatever happens, with what was shown at its time. Stopping is possible
at every moment. Unplugging pauses; plugging in again begins the same step anew, after a rest.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, Text, message
from stickwright.codes.task_states import Outcome as Does
from stickwright.codes.task_states import TaskStates, Why
from stickwright.measure.events import (
    EVENTS,
    PHASES,
    Confirm,
    Effect,
    Event,
    Finished,
    Ignored,
    KeepEvent,
    MarkEvent,
    Phase,
    Repeat,
    Replugged,
    Resume,
    SamplesEvent,
    Shorten,
    Start,
    StepEvent,
    Stop,
    Tick,
    Unplugged,
)  # fmt: skip
from stickwright.measure.step_end import Watch, ended, watched
from stickwright.measure.targets import Cursor
from stickwright.measure.tasks import RAW_COLUMNS, RECORDED_COLUMNS, Task, TaskStep, cues_at

__all__ = [
    "EVENTS",
    "PHASES",
    "TABLE",
    "Confirm",
    "Effect",
    "Event",
    "Finished",
    "Ignored",
    "KeepEvent",
    "MarkEvent",
    "Phase",
    "Repeat",
    "Replugged",
    "Resume",
    "Rule",
    "SamplesEvent",
    "ScreenState",
    "Shorten",
    "Start",
    "StepEvent",
    "Stop",
    "TaskState",
    "Tick",
    "Unplugged",
    "advance",
    "begin",
]  # fmt: skip

Array = NDArray[np.float64]

RESUME_REST_S = 5.0
"""Rest before a step that is begun anew; common practice between pushes."""

LEAST_REST_S = 1.0
"""A press so soon after a step belongs to the step, not to the wish to go on."""

BOUNCE_S = 0.15
"""A second confirm so soon is the same press, from a bouncing switch or from two ways to the program."""

TIME, X, Y, CONFIRM = (RAW_COLUMNS.index(name) for name in ("time_s", "x", "y", "confirm"))


@dataclass(frozen=True)
class ScreenState:
    """What was on the screen from a time on."""

    from_s: float
    phase: Phase
    step: int


@dataclass(frozen=True)
class TaskState:
    """Where a task stands.

    Parameters
    ----------
    task : Task
    phase : Phase
    now_s : float
        Latest time seen.
    since_s : float
        When the phase began.
    step : int
        Place in `task.steps` of what is asked or comes after the rest.
    queue : tuple of int
        Steps after that.
    rest_s : float
        Length of the rest that is on.
    limit_s : float
        Longest time of the step that is on.
    plugged : bool
    completed : bool
        Every step was done once.
    short : bool
        Nothing comes after this step, and it may end as soon as it tells something.
    kept : int
        Samples kept so far.
    presses : int
        Presses of the confirm switch during this step.
    before : int
        The step that came before this one; -1 for none.
    confirmed_s : float
        When a confirm was last taken.
    confirm_down : bool
        The switch is held down.
    watch : Watch
        What has been seen of the step that is asked.
    log : tuple of ScreenState
        What was on the screen, from when.
    """

    task: Task
    phase: Phase = "ready"
    now_s: float = -math.inf
    since_s: float = -math.inf
    step: int = 0
    queue: tuple[int, ...] = ()
    rest_s: float = 0.0
    limit_s: float = math.inf
    plugged: bool = True
    completed: bool = False
    short: bool = False
    kept: int = 0
    presses: int = 0
    before: int = -1
    confirmed_s: float = -math.inf
    confirm_down: bool = False
    watch: Watch = field(default_factory=lambda: Watch(Cursor()))
    log: tuple[ScreenState, ...] = (ScreenState(-math.inf, "ready", 0),)

    @property
    def asked(self) -> TaskStep:
        """The step that is asked, or that comes after the rest."""
        return self.task.steps[self.step]

    @property
    def into_s(self) -> float:
        """Seconds since the phase began."""
        return self.now_s - self.since_s if math.isfinite(self.since_s) else 0.0

    @property
    def left_s(self) -> float:
        """Seconds until the phase ends by itself; infinite where it does not."""
        ends = {"resting": self.rest_s, "asking": self.limit_s}.get(self.phase, math.inf)
        return max(0.0, ends - self.into_s)

    @property
    def cursor_xy(self) -> tuple[float, float]:
        """Where the player's cursor is."""
        return self.watch.cursor.x, self.watch.cursor.y


Outcome = tuple[TaskState, tuple[Effect, ...]]


def begin(task: Task) -> TaskState:
    """A task, ready to start."""
    return TaskState(task, queue=tuple(range(1, len(task.steps))), watch=Watch(task.cursor))


def advance(state: TaskState, event: Event) -> Outcome:
    """The state after an event, and what is to be shown, kept and noted.

    Returns
    -------
    (State, tuple of Effect)
        In order. Never an exception: what is not possible comes back as `Ignored`.

    Examples
    --------
    >>> from stickwright.measure.tasks import play_task
    >>> state, effects = advance(begin(play_task(lasts_s=2.0)), Start(0.0))
    >>> state.phase, [type(each).__name__ for each in effects]
    ('asking', ['MarkEvent', 'StepEvent'])
    >>> state, effects = advance(state, SamplesEvent(np.array([[0.5, 0.1, 0.2, np.nan, np.nan, 0, 0]])))
    >>> effects[0].rows[0, :2].tolist(), advance(state, Tick(2.0))[0].phase
    ([0.5, 0.1], 'done')
    """
    wrong = _malformed(event)
    if wrong:
        return state, (Ignored(type(event).__name__, wrong),)
    rows = event.rows if isinstance(event, SamplesEvent) else None
    if rows is not None:
        return TABLE[state.phase, SamplesEvent].run(state, event)
    at_s = max(state.now_s, event.at_s)  # type: ignore[union-attr]
    state, effects = _until(replace(state, now_s=at_s), at_s)
    state, more = TABLE[state.phase, type(event)].run(state, event)
    return state, (*effects, *more)


def _malformed(event: Event) -> Message | None:
    if isinstance(event, SamplesEvent):
        rows = event.rows
        if rows.ndim != 2 or rows.shape[1] != len(RAW_COLUMNS):
            return message(TaskStates.no_samples, columns=len(RAW_COLUMNS))
        if event.shown_xy is not None and event.shown_xy.shape != (len(rows), 2):
            return message(TaskStates.places_unlike, samples=len(rows), places=len(event.shown_xy))
        return None
    return None if math.isfinite(event.at_s) else _why("no-time")


def _why(why: Why) -> Message:
    return message(TaskStates.why, why=why)


# What an event does. Each takes the state with its time already moved on, and returns the state after.


def _start(state: TaskState, _: Event) -> Outcome:
    if not state.plugged:
        return state, (Ignored("Start", _why("unplugged")),)
    state, effects = _rest_or_ask(state, state.step)
    return state, (MarkEvent("began", state.now_s), *effects)


def _nothing(state: TaskState, _: Event) -> Outcome:
    return state, ()


def _samples(state: TaskState, event: Event) -> Outcome:
    assert isinstance(event, SamplesEvent)
    rows = event.rows
    places = rows[:, [X, Y]] if event.shown_xy is None else event.shown_xy
    effects: list[Effect] = []
    for row, (x, y) in zip(rows[:, [TIME, CONFIRM]].tolist(), places.tolist(), strict=True):
        time_s = row[0]
        if not math.isfinite(time_s):
            continue
        if time_s >= _ends_s(state):
            state, said = _until(replace(state, now_s=max(state.now_s, time_s)), time_s)
            effects += said
        state, said = _seen(state, time_s, (x, y), pressed=row[1] > 0.5)
        effects += said
    kept = _labelled(state, rows)
    if len(kept):
        effects.insert(0, KeepEvent(kept))
    return replace(state, kept=state.kept + len(kept)), tuple(effects)


def _unplugged(state: TaskState, _: Event) -> Outcome:
    if state.phase in ("ready", "stopped", "done", "paused"):
        return replace(state, plugged=False), ()
    return _paused(replace(state, plugged=False))


def _paused(state: TaskState) -> Outcome:
    state = _show(state, "paused", state.step)
    return state, (MarkEvent("paused", state.now_s, message(TaskStates.mark, about="unplugged")),)


def _replugged(state: TaskState, _: Event) -> Outcome:
    state = replace(state, plugged=True)
    if state.phase != "paused":
        return state, ()
    return _anew(state, message(TaskStates.mark, about="plugged-in-again"))


def _anew(state: TaskState, detail: Text = "") -> Outcome:
    """The same step from its beginning, rest first."""
    state, effects = _rest_or_ask(state, state.step, least_rest_s=RESUME_REST_S)
    return state, (MarkEvent("resumed", state.now_s, detail), *effects)


def _stop(state: TaskState, _: Event) -> Outcome:
    return _show(state, "stopped", state.step), (MarkEvent("stopped", state.now_s, state.asked.key),)


def _resume(state: TaskState, _: Event) -> Outcome:
    before = state.log[-2].phase
    if before == "ready":
        return _start(state, Start(state.now_s))
    if before == "done":
        return _show(state, "done", state.step), (MarkEvent("done", state.now_s),)
    return _anew(state) if state.plugged else _paused(state)


def _shorten(state: TaskState, event: Event) -> Outcome:
    later = tuple(k for k in state.queue if state.task.steps[k].round > state.asked.round)
    if later:
        left = tuple(k for k in state.queue if k not in later)
        return replace(state, queue=left), (
            MarkEvent("shortened", state.now_s, message(TaskStates.mark, about="one-round")),
        )
    if state.phase == "ready" and state.queue:
        return state, (Ignored(type(event).__name__, _why("one-round")),)
    state = replace(state, queue=(), short=True, limit_s=min(state.limit_s, state.asked.least_s))
    state, effects = _until(state, state.now_s)
    return state, (MarkEvent("shortened", state.now_s, message(TaskStates.mark, about="this-step")), *effects)


def _repeat(state: TaskState, event: Event) -> Outcome:
    assert isinstance(event, Repeat)
    many = len(state.task.steps)
    if not all(0 <= k < many for k in event.steps):
        return state, (Ignored("Repeat", message(TaskStates.steps_there_are, last=many - 1)),)
    mark = MarkEvent(
        "repeated", state.now_s, ", ".join(state.task.steps[k].key for k in event.steps) or state.asked.key
    )
    if state.phase in ("stopped", "done"):
        steps = event.steps or tuple(range(many))
        state, effects = _rest_or_ask(
            replace(state, queue=steps[1:], short=False), steps[0], least_rest_s=RESUME_REST_S
        )
        return state, (mark, *effects)
    if event.steps:
        return replace(state, queue=(*state.queue, *event.steps), short=False), (mark,)
    step = state.step
    if state.phase == "resting" and state.before >= 0:
        state, step = replace(state, queue=(state.step, *state.queue), before=-1), state.before
    state, effects = _rest_or_ask(state, step, least_rest_s=RESUME_REST_S)
    return state, (mark, *effects)


def _confirm(state: TaskState, _: Event) -> Outcome:
    if state.now_s - state.confirmed_s < BOUNCE_S:
        return state, (Ignored("Confirm", _why("same-press")),)
    state = replace(state, confirmed_s=state.now_s)
    if state.phase == "resting":
        if state.into_s < LEAST_REST_S:
            return state, (Ignored("Confirm", _why("only-just-resting")),)
        return _ask(state)
    if not state.asked.ends_by_confirm:
        return replace(state, presses=state.presses + 1), ()
    return _next(state, "confirm", state.now_s)


def _not_possible(why: Why) -> Callable[[TaskState, Event], Outcome]:
    def run(state: TaskState, event: Event) -> Outcome:
        return state, (Ignored(type(event).__name__, _why(why)),)

    return run


@dataclass(frozen=True)
class Rule:
    """One cell of the table.

    Parameters
    ----------
    to : tuple of Phase
        States that can follow.
    does : Message
        What happens.
    run : callable
        (state, event) -> (state, effects).
    kind : {"acts", "nothing", "refused"}
        Whether the event does something here; nothing, and rightly so; nothing, because it is not possible.
    """

    to: tuple[Phase, ...]
    does: Message
    run: Callable[[TaskState, Event], Outcome]
    kind: Literal["acts", "nothing", "refused"] = "acts"


def _yes(does: Does, run: Callable[[TaskState, Event], Outcome], *to: Phase) -> Rule:
    return Rule(to, message(TaskStates.does, outcome=does), run)


def _same(phase: Phase, run: Callable[[TaskState, Event], Outcome] = _nothing) -> Rule:
    return Rule((phase,), message(TaskStates.does, outcome="nothing"), run, "nothing")


def _no(phase: Phase, why: Why) -> Rule:
    return Rule((phase,), message(TaskStates.refused, why=_why(why)), _not_possible(why), "refused")


_GOES_ON: tuple[Phase, ...] = ("asking", "resting", "done")

TABLE: dict[tuple[Phase, type[Event]], Rule] = {
    ("ready", Start): _yes("begins", _start, "asking", "resting", "ready"),
    ("ready", SamplesEvent): _yes("not-kept", _samples, "ready"),
    ("ready", Tick): _same("ready"),
    ("ready", Unplugged): _yes("cannot-start", _unplugged, "ready"),
    ("ready", Replugged): _yes("noted", _replugged, "ready"),
    ("ready", Stop): _yes("stops", _stop, "stopped"),
    ("ready", Resume): _no("ready", "not-started"),
    ("ready", Shorten): _yes("drops-rounds", _shorten, "ready"),
    ("ready", Repeat): _no("ready", "nothing-to-repeat"),
    ("ready", Confirm): _no("ready", "not-started"),
    ("paused", Start): _no("paused", "running-without-a-stick"),
    ("paused", SamplesEvent): _yes("kept-without-a-cue", _samples, "paused"),
    ("paused", Tick): _same("paused"),
    ("paused", Unplugged): _same("paused", _unplugged),
    ("paused", Replugged): _yes("begins-the-step-anew", _replugged, "asking", "resting"),
    ("paused", Stop): _yes("stops-and-keeps", _stop, "stopped"),
    ("paused", Resume): _no("paused", "waits-for-the-stick"),
    ("paused", Shorten): _yes("drops-rounds-and-steps", _shorten, "paused"),
    ("paused", Repeat): _no("paused", "step-begins-anew"),
    ("paused", Confirm): _no("paused", "waits-for-the-stick"),
    ("stopped", Start): _no("stopped", "stopped"),
    ("stopped", SamplesEvent): _yes("kept-from-before-the-stop", _samples, "stopped"),
    ("stopped", Tick): _same("stopped"),
    ("stopped", Unplugged): _yes("noted", _unplugged, "stopped"),
    ("stopped", Replugged): _yes("noted", _replugged, "stopped"),
    ("stopped", Stop): _same("stopped"),
    ("stopped", Resume): _yes("begins-the-step-anew", _resume, "asking", "resting", "paused", "done", "stopped"),
    ("stopped", Shorten): _no("stopped", "stopped-nothing-to-shorten"),
    ("stopped", Repeat): _yes("repeats-steps", _repeat, "asking", "resting"),
    ("stopped", Confirm): _no("stopped", "stopped"),
    ("done", Start): _no("done", "finished"),
    ("done", SamplesEvent): _yes("kept-from-before-the-end", _samples, "done"),
    ("done", Tick): _same("done"),
    ("done", Unplugged): _yes("noted", _unplugged, "done"),
    ("done", Replugged): _yes("noted", _replugged, "done"),
    ("done", Stop): _yes("stops-and-keeps", _stop, "stopped"),
    ("done", Resume): _no("done", "finished"),
    ("done", Shorten): _no("done", "finished-nothing-to-shorten"),
    ("done", Repeat): _yes("repeats-steps", _repeat, "asking", "resting"),
    ("done", Confirm): _no("done", "finished"),
}
for _phase in ("asking", "resting"):
    TABLE |= {
        (_phase, Start): _no(_phase, "running"),
        (_phase, SamplesEvent): _yes("kept-with-its-cue", _samples, *_GOES_ON),
        (_phase, Tick): _yes("moves-on-in-time", _nothing, *_GOES_ON),
        (_phase, Unplugged): _yes("pauses", _unplugged, "paused"),
        (_phase, Replugged): _yes("noted", _replugged, _phase),
        (_phase, Stop): _yes("stops-and-keeps", _stop, "stopped"),
        (_phase, Resume): _no(_phase, "running"),
        (_phase, Shorten): _yes("drops-rounds-and-the-rest", _shorten, *_GOES_ON),
        (_phase, Repeat): _yes("repeats-this-step", _repeat, "asking", "resting"),
        (_phase, Confirm): _yes("ends-the-step", _confirm, *_GOES_ON),
    }


# Moving on.


def _show(state: TaskState, phase: Phase, step: int, at_s: float | None = None) -> TaskState:
    """The state in a new phase from now (or from `at_s`) on."""
    since_s = state.now_s if at_s is None else at_s
    if not math.isfinite(since_s):
        since_s = 0.0
    return replace(state, phase=phase, step=step, since_s=since_s, log=(*state.log, ScreenState(since_s, phase, step)))


def _rest_or_ask(state: TaskState, step: int, *, at_s: float | None = None, least_rest_s: float = 0.0) -> Outcome:
    rest_s = max(state.task.steps[step].rest_s, least_rest_s)
    state = replace(_show(state, "resting", step, at_s), rest_s=rest_s, limit_s=math.inf)
    if rest_s <= 0:
        state = replace(state, log=state.log[:-1])
        return _ask(state, at_s)
    return state, (StepEvent(step, True, state.since_s),)


def _ask(state: TaskState, at_s: float | None = None) -> Outcome:
    state = _show(state, "asking", state.step, at_s)
    watch = Watch(state.watch.cursor, before_s=state.watch.before_s)
    limit_s = state.asked.least_s if state.short and state.asked.least_s > 0 else state.asked.lasts_s
    state = replace(state, limit_s=limit_s, watch=watch, presses=0)
    return state, (StepEvent(state.step, False, state.since_s),)


def _next(state: TaskState, how: str, at_s: float) -> Outcome:
    ended: tuple[Effect, ...] = (Finished(state.step, how, at_s),)
    if not state.queue:
        state = replace(_show(state, "done", state.step, at_s), completed=True)
        return state, (*ended, MarkEvent("done", at_s))
    step, *queue = state.queue
    state = replace(state, queue=tuple(queue), before=state.step)
    state, effects = _rest_or_ask(state, step, at_s=at_s)
    return state, (*ended, *effects)


def _ends_s(state: TaskState) -> float:
    """When the rest or the step that is on ends by time alone."""
    if state.phase == "resting":
        return state.since_s + state.rest_s
    return state.since_s + state.limit_s if state.phase == "asking" else math.inf


def _until(state: TaskState, to_s: float) -> Outcome:
    """Everything that time alone ends up to then, each at its own moment."""
    effects: list[Effect] = []
    while to_s >= (ends_s := _ends_s(state)):
        if state.phase == "resting":
            state, said = _ask(state, ends_s)
        else:
            state, said = _next(state, "time" if state.limit_s >= state.asked.lasts_s else "shortened", ends_s)
        effects += said
    return state, tuple(effects)


def _seen(state: TaskState, time_s: float, xy: tuple[float, float], *, pressed: bool) -> Outcome:
    """What one sample ends: a target stayed in, laps made, a hold let go, the switch pressed."""
    watch = state.watch
    dt_s = time_s - watch.before_s if math.isfinite(watch.before_s) else 0.0
    watch = replace(watch, cursor=watch.cursor.moved(xy, dt_s), before_s=time_s)
    newly = pressed and not state.confirm_down
    asking = state.phase == "asking" and time_s >= state.since_s
    if asking:
        watch = watched(watch, state.asked, time_s, xy)
    state = replace(state, now_s=max(state.now_s, time_s), watch=watch, confirm_down=pressed)
    if time_s < state.since_s:
        return state, ()
    if asking:
        how = ended(watch, state.asked, time_s, state.task.dwell_s)
        if how:
            return _next(state, how, time_s)
    # Somebody who plays with the switch before a press task does not ask to go on.
    playing = state.phase == "resting" and state.asked.counts_presses
    if newly and state.phase in ("asking", "resting") and not playing:
        return _confirm(state, Confirm(time_s))
    return state, ()


def _labelled(state: TaskState, rows: Array) -> Array:
    """The samples taken while the task ran, with what was on the screen at their time."""
    from_s = np.array([each.from_s for each in state.log])
    times = np.where(np.isfinite(rows[:, TIME]), rows[:, TIME], state.now_s)
    place = np.searchsorted(from_s, times, side="right") - 1
    out = np.full((len(rows), len(RECORDED_COLUMNS)), math.nan)
    out[:, :3], out[:, 7:] = rows[:, :3], rows[:, 3:]
    out[:, 6] = 0.0
    keep = np.zeros(len(rows), dtype=np.bool_)
    for k in np.unique(place).tolist():
        shown, mine = state.log[k], place == k
        keep[mine] = shown.phase in ("asking", "resting", "paused")
        if shown.phase in ("asking", "resting"):
            out[mine, 3:7] = cues_at(state.task, shown.step, shown.phase == "resting", times[mine] - shown.from_s)
    return out[keep]
