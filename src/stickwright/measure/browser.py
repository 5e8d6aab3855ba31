"""Sticks read by the browser: messages in order, nothing twice, what is missing said, its clock tied to ours.

Rules of this file: a message that was taken is acknowledged, and only then may the page forget it; time
within the samples never falls, whatever the clocks of the page do; what is in doubt becomes a `Gap`.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.capture_problems import CaptureProblems
from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import Message, message
from stickwright.errors import BadInput, Problem
from stickwright.measure.batches import Batch, decode
from stickwright.measure.devices import (
    Appeared,
    Device,
    DeviceSamples,
    Event,
    Gap,
    Gone,
    Roster,
    axes_of,
    buttons_of,
)

__all__ = ["LATE_S", "MOST_HELD", "SLEPT_S", "BrowserSource", "PageClock", "Receiver", "Reply", "Taken"]

Array = NDArray[np.float64]

MOST_HELD = 64
"""Messages kept while one before them is missing; the page sends about 30 a second."""
SLEPT_S = 1.0
"""Jump of the clock of the day against the page's own clock that is told. (Judgement.)"""
LATE_S = 5.0
"""Silence of the page that is told; it says 'alive' every second. (Judgement.)"""


class Taken(NamedTuple):
    """What a message let through.

    Parameters
    ----------
    batches : tuple of Batch
        In order, each once: none, this one, or this one and those that waited for it.
    gaps : tuple of Gap
        Messages that will not come any more.
    """

    batches: tuple[Batch, ...]
    gaps: tuple[Gap, ...]


class Receiver:
    """Messages of one page in the order in which they were sent.

    Examples
    --------
    >>> receiver = Receiver()
    >>> late, early = (Batch("alive", 0, number, 1000.0, 1000.0) for number in (1, 0))
    >>> len(receiver.take(late, 0.0).batches), receiver.acknowledged
    (0, 0)
    >>> len(receiver.take(early, 0.0).batches), receiver.acknowledged
    (2, 2)
    """

    def __init__(self) -> None:
        self._next = 0
        self._held: dict[int, Batch] = {}

    @property
    def acknowledged(self) -> int:
        """Number of the message expected next: the page may forget all before it, and sends again from it."""
        return self._next

    def take(self, batch: Batch, arrived_s: float) -> Taken:
        """What comes through with this message.

        Parameters
        ----------
        batch : Batch
        arrived_s : float
            Seconds on the computer's monotonic clock.

        Returns
        -------
        Taken
            Nothing for a message that was taken before.
        """
        if batch.sequence < self._next or batch.sequence in self._held:
            return Taken((), ())
        self._held[batch.sequence] = batch
        given_up = batch.sequence if batch.lost_before else 0
        if len(self._held) > MOST_HELD:
            given_up = max(given_up, min(self._held))
        through: list[Batch] = []
        missing = 0
        while self._held and (self._next in self._held or self._next < given_up):
            number = min(self._held)
            missing += number - self._next
            through.append(self._held.pop(number))
            self._next = number + 1
        return Taken(tuple(through), _lost(missing, arrived_s))


def _lost(messages: int, at_s: float) -> tuple[Gap, ...]:
    if not messages:
        return ()
    return (Gap("lost", message(LiveNotes.messages_lost, messages=messages), at_s),)


@dataclass
class PageClock:
    """The page's clock (`performance.now`) tied to the computer's monotonic clock.

    The tie is the first message's: its way through the loopback is left in (well under a millisecond there),
    and kept, so that intervals between samples are the page's own.

    Parameters
    ----------
    last_s : float, default -inf
        Time of the last sample of the page before; times go on from there.
    """

    last_s: float = -np.inf
    """Time of the last sample so far, also of the page before."""
    _offset_s: float | None = field(init=False, default=None)
    _sent_ms: float = field(init=False, default=0.0)
    """Of the message before; so the next."""
    _wall_ms: float = field(init=False, default=0.0)
    """Of the message before."""

    def tie(self, batch: Batch, arrived_s: float) -> tuple[Gap, ...]:
        """What a message's clocks tell against the message before.

        Parameters
        ----------
        batch : Batch
        arrived_s : float
            Seconds on the computer's monotonic clock.

        Returns
        -------
        tuple of Gap
            Sleep, silence, a clock set back.
        """
        if self._offset_s is None:
            self._offset_s = arrived_s - batch.sent_ms / 1000.0
            gaps: list[Gap] = []
        else:
            gaps = list(self._jumps(batch, arrived_s))
        self._sent_ms, self._wall_ms = batch.sent_ms, batch.wall_ms
        return tuple(gaps)

    def _jumps(self, batch: Batch, arrived_s: float) -> list[Gap]:
        assert self._offset_s is not None
        ran_s = (batch.sent_ms - self._sent_ms) / 1000.0
        day_s = (batch.wall_ms - self._wall_ms) / 1000.0
        if ran_s < 0.0:
            self._offset_s -= ran_s
            words = message(LiveNotes.page_clock_back, back_s=-ran_s)
            return [Gap("clock-back", words, arrived_s, seconds=-ran_s)]
        if day_s - ran_s > SLEPT_S:
            self._offset_s += day_s - ran_s
            words = message(LiveNotes.slept, time_s=day_s - ran_s)
            return [Gap("sleep", words, arrived_s, seconds=day_s - ran_s)]
        found = []
        if day_s - ran_s < -SLEPT_S:
            words = message(LiveNotes.clock_back, back_s=ran_s - day_s)
            found.append(Gap("clock-back", words, arrived_s, seconds=ran_s - day_s))
        if ran_s > LATE_S:
            words = message(LiveNotes.page_silent, time_s=ran_s)
            found.append(Gap("late", words, arrived_s, seconds=ran_s))
        return found

    def times_s(self, times_ms: Array) -> tuple[Array, float]:
        """Stamps on the computer's clock, never falling, and by how much they would have fallen.

        Parameters
        ----------
        times_ms : array, shape (n,)
            The page's stamps.

        Returns
        -------
        (array, float)
        """
        assert self._offset_s is not None, "tie a message first"
        raw = times_ms / 1000.0 + self._offset_s
        kept = np.maximum.accumulate(np.concatenate([[self.last_s], raw]))[1:]
        self.last_s = float(kept[-1]) if len(kept) else self.last_s
        return kept, float(np.max(kept - raw, initial=0.0))


class Reply(NamedTuple):
    """What the page is to be told.

    Parameters
    ----------
    acknowledged : int
        It may forget all messages before this one.
    words : tuple of Message
        What was noticed, for the practitioner.
    """

    acknowledged: int
    words: tuple[Message, ...]


@dataclass
class _Slot:
    device: Device
    base: int  # samples of the device before it appeared this time
    taken: int = 0
    here: bool = True  # False while the page is away


@dataclass
class BrowserSource:
    """The sticks of one browser page: bytes in, events out. For one thread.

    Parameters
    ----------
    most_waiting : int, default 600_000
        Samples kept until somebody takes them; what comes beyond is counted and told, not kept.
    """

    most_waiting: int = 600_000
    _page: int | None = field(init=False, default=None)
    _old_pages: set[int] = field(init=False, default_factory=set)
    _receiver: Receiver = field(init=False, default_factory=Receiver)
    _clock: PageClock = field(init=False, default_factory=PageClock)
    _roster: Roster = field(init=False, default_factory=lambda: Roster("browser"))
    _slots: dict[int, _Slot] = field(init=False, default_factory=dict)
    _counts: dict[str, int] = field(init=False, default_factory=dict)
    _events: list[Event] = field(init=False, default_factory=list)
    _waiting: int = field(init=False, default=0)

    def receive(self, message: bytes, arrived_s: float) -> Reply:
        """Take one message of the page.

        Parameters
        ----------
        message : bytes
            As it arrived.
        arrived_s : float
            Seconds on the computer's monotonic clock (`time.perf_counter`).

        Returns
        -------
        Reply

        Raises
        ------
        BadInput
            Bytes that are no message, or a message of a page that another one has taken over from.
        """
        batch = decode(message)
        self._turn_to(batch.page, arrived_s)
        already = len(self._events)
        through, gaps = self._receiver.take(batch, arrived_s)
        self._events += gaps
        for one in through:
            self._events += self._clock.tie(one, arrived_s)
            self._let_in(one, arrived_s)
        words = tuple(event.words for event in self._events[already:] if isinstance(event, Gap))
        return Reply(self._receiver.acknowledged, words)

    def devices(self) -> tuple[Device, ...]:
        """What the page sees plugged in."""
        return self._roster.here()

    def take(self) -> tuple[Event, ...]:
        """Events since the last call, in order."""
        events, self._events, self._waiting = self._events, [], 0
        return tuple(events)

    def lost_page(self, at_s: float) -> None:
        """The line to the page broke: its devices are gone until it goes on sending.

        Parameters
        ----------
        at_s : float
            Seconds on the computer's monotonic clock.
        """
        for slot in self._slots.values():
            self._away(slot, at_s)

    def close(self) -> None:
        """Forget what waits."""
        self._events, self._waiting = [], 0

    def _turn_to(self, page: int, at_s: float) -> None:
        if page == self._page:
            return
        if page in self._old_pages:
            raise BadInput(
                Problem(
                    message(CaptureProblems.step, what="page"),
                    message(CaptureProblems.found, what="older_window"),
                    message(CaptureProblems.expected, what="this_window"),
                    message(CaptureProblems.remedy, what="close_window"),
                )
            )
        for place in tuple(self._slots):
            self._leave(place, at_s)
        if self._page is not None:
            self._old_pages.add(self._page)
        self._page, self._receiver, self._clock = page, Receiver(), PageClock(self._clock.last_s)

    def _let_in(self, batch: Batch, at_s: float) -> None:
        if batch.kind == "appeared":
            self._leave(batch.slot, at_s)
            axes = axes_of(batch.axes, standard=batch.standard)
            buttons = buttons_of(batch.buttons, standard=batch.standard)
            device, again = self._roster.appear(batch.text or "nameless", batch.text, axes, buttons)
            self._slots[batch.slot] = _Slot(device, self._counts.get(device.id, 0))
            self._events.append(Appeared(device, at_s, again))
        elif batch.kind == "gone":
            self._leave(batch.slot, at_s)
        elif batch.kind == "samples":
            self._sample(batch, at_s)

    def _leave(self, place: int, at_s: float) -> None:
        slot = self._slots.pop(place, None)
        if slot is not None:
            self._counts[slot.device.id] = slot.base + slot.taken
            self._away(slot, at_s)

    def _away(self, slot: _Slot, at_s: float) -> None:
        if slot.here:
            slot.here = False
            self._roster.leave(slot.device.id)
            self._events.append(Gone(slot.device.id, at_s))

    def _back(self, slot: _Slot, at_s: float) -> None:
        if not slot.here:
            slot.here = True
            self._roster.back(slot.device.id)
            self._events.append(Appeared(slot.device, at_s, again=True))

    def _sample(self, batch: Batch, at_s: float) -> None:
        slot = self._slots.get(batch.slot)
        if slot is None or (batch.axes, batch.buttons) != (len(slot.device.axes), len(slot.device.buttons)):
            words = message(LiveNotes.samples_without_a_stick, samples=len(batch.rows))
            self._events.append(Gap("lost", words, at_s, samples=len(batch.rows)))
            return
        self._back(slot, at_s)
        rows, missing = batch.rows[max(0, slot.taken - batch.first) :], batch.first - slot.taken
        if missing > 0:
            words = message(LiveNotes.samples_lost, samples=missing, device=slot.device.called)
            self._events.append(Gap("lost", words, at_s, slot.device.id, missing))
            slot.taken = batch.first
        if not len(rows):
            return
        times_s, back_s = self._clock.times_s(rows[:, 0])
        if back_s > 1e-6:
            words = message(LiveNotes.stamps_back, device=slot.device.called, back_s=back_s)
            self._events.append(Gap("clock-back", words, at_s, slot.device.id, seconds=back_s))
        first, slot.taken = slot.base + slot.taken, slot.taken + len(rows)
        if self._waiting + len(rows) > self.most_waiting:
            self._overflow(slot.device, len(rows), at_s)
            return
        self._waiting += len(rows)
        self._events.append(DeviceSamples(slot.device.id, first, times_s, rows[:, 2:], rows[:, 1].astype(np.int64)))

    def _overflow(self, device: Device, count: int, at_s: float) -> None:
        words = message(LiveNotes.overflow, samples=count, device=device.called)
        self._events.append(Gap("overflow", words, at_s, device.id, count))
