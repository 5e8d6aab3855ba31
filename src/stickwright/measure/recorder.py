"""From samples to what is kept: the running task gives them their cue, the sink their place on disk.

Rules of this file: what the stick gave is kept, never the tuned output; a row is let go of only when the sink
has said that it holds it; what the sink could not take is sent again, in order, under the same numbers.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.devices import Devices
from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import Text, message
from stickwright.errors import BadInput
from stickwright.measure.devices import Appeared, Event, Gap, Gone, StickAxes
from stickwright.measure.events import (
    Confirm,
    Effect,
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
)
from stickwright.measure.events import Event as TaskEvent
from stickwright.measure.live_tuning import LiveTuning
from stickwright.measure.merging import ConfirmSwitch, Merged, Merger
from stickwright.measure.steps import RAW_COLUMNS, Task
from stickwright.measure.task import TaskState, advance, begin

__all__ = ["STOPS_AFTER_S", "Keeper", "Recorder", "Sink", "Took"]

Array = NDArray[np.float64]
Said = Stop | Resume | Shorten | Repeat | Confirm

STOPS_AFTER_S = 5.0
"""A sleep or silence this long stops the task: nobody knows whether the player is still there. (Judgement.)"""


class Sink(Protocol):
    """Where rows are kept: the store's `append_samples`, with its recording."""

    def append(self, rows: Array, first: int) -> int:
        """Keep rows.

        Parameters
        ----------
        rows : array, shape (n, 11)
            Columns `stickwright.measure.steps.RECORDED_COLUMNS`.
        first : int
            Number of the first one, from 0.

        Returns
        -------
        int
            How many rows it holds now, safely.

        Raises
        ------
        BadInput
            It cannot now (disk full, locked); the same rows will be sent again.
        """
        ...


class Keeper:
    """Rows numbered and held until the sink has them."""

    def __init__(self, sink: Sink) -> None:
        self._sink = sink
        self._rows: list[Array] = []
        self.acknowledged = 0
        """Rows that the sink holds."""
        self.taken = 0
        """Rows so far."""

    @property
    def waiting(self) -> int:
        """Rows that the sink does not hold yet."""
        return self.taken - self.acknowledged

    def keep(self, rows: Array) -> None:
        """Take rows; `send` hands them on.

        Parameters
        ----------
        rows : array, shape (n, 11)
        """
        if len(rows):
            self._rows.append(rows)
            self.taken += len(rows)

    def send(self) -> tuple[Text, ...]:
        """Hand on all that the sink does not hold.

        Returns
        -------
        tuple of Message or str
            What stood in the way, and how many samples wait; empty when nothing did.
        """
        if not self.waiting:
            return ()
        waiting = np.concatenate(self._rows)
        try:
            held = self._sink.append(waiting, self.acknowledged)
        except BadInput as error:
            self._rows = [waiting]
            wait = message(LiveNotes.waiting, samples=self.waiting)
            return (*(str(problem) for problem in error.problems), wait)
        if not self.acknowledged <= held <= self.taken:
            self._rows = [waiting]
            raise RuntimeError(
                f"the sink says it holds {held} rows, of {self.taken}, {self.acknowledged} of them before"
            )
        left = waiting[held - self.acknowledged :]
        self._rows = [left] if len(left) else []
        self.acknowledged = held
        return ()


@dataclass(frozen=True, eq=False)
class Took:
    """What came of some samples, or of something said.

    Parameters
    ----------
    rows : array, shape (n, 7)
        Samples as they came, columns `RAW_COLUMNS`, time from the start.
    tuned_xy : array, shape (n, 2), or None
        The same through the tuning, for showing; None without one.
    effects : tuple of Effect
        What the task says; `Mark('gap', ...)` for what is missing.
    words : tuple of Message or str
        What the practitioner is to be told.
    """

    rows: Array
    tuned_xy: Array | None
    effects: tuple[Effect, ...]
    words: tuple[Text, ...]


class Recorder:
    """One guided task on one stick.

    Parameters
    ----------
    task : Task
    sink : Sink
        Where the samples are kept.
    stick : StickAxes
        The stick that is measured.
    second : StickAxes or None
        Another stick beside it.
    confirm : ConfirmSwitch or None
        A button as confirm switch.
    live : LiveTuning or None
        Tuning shown beside.
    """

    def __init__(
        self, task: Task, sink: Sink, stick: StickAxes, second: StickAxes | None = None,
        confirm: ConfirmSwitch | None = None, live: LiveTuning | None = None,
    ) -> None:  # fmt: skip
        self.state: TaskState = begin(task)
        self.live = live
        self._keeper = Keeper(sink)
        self._merger = Merger(stick, second, confirm)
        self._stick = stick
        self._began_s: float | None = None

    @property
    def acknowledged(self) -> int:
        """Samples that are kept safely."""
        return self._keeper.acknowledged

    @property
    def waiting(self) -> int:
        """Samples that are not kept yet."""
        return self._keeper.waiting

    def start(self, at_s: float) -> Took:
        """Begin the task; the recording's time counts from here.

        Parameters
        ----------
        at_s : float
            Seconds on the computer's monotonic clock, as the samples' stamps.
        """
        if self.state.phase == "ready":
            # What was looked at before had another time.
            self.state = replace(begin(self.state.task), plugged=self.state.plugged)
            self._began_s = at_s
        return self._took([], [], [], self._tell([Start(self._own_s(at_s))]))

    def take(self, events: Iterable[Event]) -> Took:
        """Samples and whatever else a source gave, in order.

        Parameters
        ----------
        events : iterable of Event
            As `Source.take` gives them.
        """
        return self._through(self._merger.take(events))

    def say(self, what: type[Said], at_s: float, steps: Sequence[int] = ()) -> Took:
        """Stop, resume, shorten, repeat, confirm.

        Parameters
        ----------
        what : type
            One of the task's events.
        at_s : float
            Seconds on the computer's monotonic clock.
        steps : sequence of int
            For a repeat: which steps.
        """
        own_s = self._own_s(at_s)
        event = Repeat(own_s, tuple(steps)) if what is Repeat else what(own_s)
        return self._took([], [], [], self._tell([event]))

    def tick(self, at_s: float) -> Took:
        """Time went on without samples; also sends again what was not kept.

        Parameters
        ----------
        at_s : float
            Seconds on the computer's monotonic clock.
        """
        return self._took([], [], [], self._tell([Tick(self._own_s(at_s))]))

    def finish(self) -> Took:
        """Let through what still waits for a second stick, and send all that is not kept."""
        return self._through(self._merger.finish())

    def _zero_s(self, at_s: float) -> float:
        """When the recording's time began; now, if it has not."""
        if self._began_s is None:
            self._began_s = at_s
        return self._began_s

    def _own_s(self, at_s: float) -> float:
        return at_s - self._zero_s(at_s)

    def _through(self, merged: Sequence[Merged]) -> Took:
        rows: list[Array] = []
        tuned: list[Array] = []
        words: list[Text] = []
        effects: list[Effect] = []
        for one in merged:
            if len(one.rows):
                own = one.rows.copy()
                own[:, 0] -= self._zero_s(float(own[0, 0]))
                rows.append(own)
                if self.live is not None:
                    tuned.append(self.live.add(own[:, 0], own[:, 1:3]))
                effects += self._tell([SamplesEvent(own)])
            elif one.event is not None:
                said, more = self._noted(one.event)
                words += said
                effects += more
        return self._took(rows, tuned, words, effects)

    def _noted(self, event: Appeared | Gone | Gap) -> tuple[list[Text], list[Effect]]:
        at_s = self._own_s(event.at_s)
        if isinstance(event, Gap):
            effects: list[Effect] = [MarkEvent("gap", at_s, event.words)]
            if event.kind in ("sleep", "late") and event.seconds >= STOPS_AFTER_S:
                # The task stops where the gap began, not where it ended: its time did not run for the player.
                effects += self._tell([Stop(max(self.state.now_s, 0.0))])
            return [event.words], effects
        if isinstance(event, Gone):
            if event.device_id == self._stick.device_id:
                return [message(Devices.unplugged, which="main")], self._tell([Unplugged(at_s)])
            return [message(Devices.unplugged, which="other")], []
        if event.device.id == self._stick.device_id:
            if self.live is not None:
                self.live.begin_anew()
            return [message(Devices.plugged_in, device=event.device.called, main=True)], self._tell([Replugged(at_s)])
        return [message(Devices.plugged_in, device=event.device.called, main=False)], []

    def _tell(self, events: Sequence[TaskEvent]) -> list[Effect]:
        effects: list[Effect] = []
        for event in events:
            self.state, said = advance(self.state, event)
            effects += said
        for effect in effects:
            if isinstance(effect, KeepEvent):
                self._keeper.keep(effect.rows)
        return effects

    def _took(
        self, rows: Sequence[Array], tuned: Sequence[Array], words: Sequence[Text], effects: Sequence[Effect]
    ) -> Took:  # fmt: skip
        kept = self._keeper.send()
        raw = np.concatenate(rows) if rows else np.empty((0, len(RAW_COLUMNS)))
        shown = None
        if self.live is not None:
            shown = np.concatenate(tuned) if tuned else np.empty((0, 2))
        return Took(raw, shown, tuple(effects), (*words, *kept))
