"""Samples waiting to be taken: bounded, and what finds no room is counted and told."""

from __future__ import annotations

import threading
from collections.abc import Iterable

import numpy as np

from stickwright.codes.live_notes import LiveNotes
from stickwright.codes.message import message
from stickwright.measure.devices import DeviceSamples, Event, Gap

__all__ = ["Inbox", "Row"]

Row = tuple[float, ...]
"""time_s, mask of the buttons, each axis: as a row of a batch, in seconds."""


class Inbox:
    """Between the thread that reads sticks and whoever takes their samples.

    Parameters
    ----------
    most : int, default 600_000
        Rows kept: ten minutes of one stick at 1 kHz.

    Examples
    --------
    >>> inbox = Inbox(most=1)
    >>> inbox.put_rows([("a", (0.0, 0.0, 0.5))])
    >>> inbox.put_rows([("a", (0.001, 0.0, 0.6))])
    >>> samples, gap = inbox.take()
    >>> samples.axes.tolist(), gap.kind, gap.samples
    ([[0.5]], 'overflow', 1)
    """

    def __init__(self, most: int = 600_000) -> None:
        self._most = most
        self._lock = threading.Lock()
        self._events: list[Event] = []
        self._rows: dict[str, list[Row]] = {}
        self._numbers: dict[str, int] = {}  # rows of each device so far, kept or not
        self._waiting = 0
        self._turned_away: dict[str, int] = {}
        self._turned_away_s = 0.0

    def put_rows(self, rows: Iterable[tuple[str, Row]]) -> None:
        """Rows of one round, one for each device that is here."""
        with self._lock:
            for device_id, row in rows:
                if self._waiting >= self._most or self._turned_away:
                    # Once one was turned away, all are until somebody takes: one gap, not a hundred small ones.
                    self._turned_away[device_id] = self._turned_away.get(device_id, 0) + 1
                    self._turned_away_s = row[0]
                else:
                    self._rows.setdefault(device_id, []).append(row)
                    self._waiting += 1

    def put(self, event: Event) -> None:
        """Anything else, after the rows that came before it."""
        with self._lock:
            self._seal()
            self._events.append(event)

    def take(self) -> tuple[Event, ...]:
        """All that waits, in order; does not wait for more."""
        with self._lock:
            self._seal()
            events, self._events, self._waiting = self._events, [], 0
        return tuple(events)

    def _seal(self) -> None:
        for device_id, rows in self._rows.items():
            table = np.array(rows, dtype=np.float64)
            first = self._numbers.get(device_id, 0)
            self._numbers[device_id] = first + len(rows)
            self._events.append(
                DeviceSamples(device_id, first, table[:, 0], table[:, 2:], table[:, 1].astype(np.int64))
            )
        self._rows = {}
        for device_id, count in self._turned_away.items():
            self._numbers[device_id] = self._numbers.get(device_id, 0) + count
            words = message(LiveNotes.overflow, samples=count, device=None)
            self._events.append(Gap("overflow", words, self._turned_away_s, device_id, count))
        self._turned_away = {}
