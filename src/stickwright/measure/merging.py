"""One stick, perhaps a second, perhaps a switch, made into rows of a recording.

Rules of this file: the main stick's samples are the rows, none left out and none added; the second stick and
the switch are as they were at a row's time (their latest sample at or before it); a row waits a little for a
second stick whose samples come in other messages.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.measure.devices import Appeared, DeviceSamples, Event, Gap, Gone, StickAxes, stick_xy
from stickwright.measure.steps import RAW_COLUMNS

__all__ = ["WAIT_S", "ConfirmSwitch", "Merged", "Merger"]

Array = NDArray[np.float64]

WAIT_S = 0.25
"""How long a row waits for the second stick."""

_REMEMBERED_S = 2.0


@dataclass(frozen=True)
class ConfirmSwitch:
    """A button as confirm switch.

    Parameters
    ----------
    device_id : str
    button : int
        Place in `Device.buttons`.
    """

    device_id: str
    button: int


@dataclass(frozen=True, eq=False)
class Merged:
    """Rows, or what happened between them.

    Parameters
    ----------
    rows : array, shape (n, 7)
        Columns as `stickwright.measure.steps.RAW_COLUMNS`; time on the computer's monotonic clock.
    event : Appeared, Gone, Gap or None
        What came after these rows; of the main stick, the second, or any.
    """

    rows: Array
    event: Appeared | Gone | Gap | None = None


class Merger:
    """Events of any source in, rows out.

    Parameters
    ----------
    stick : StickAxes
        The main stick.
    second : StickAxes or None
        A stick beside it, on the same device or another.
    confirm : ConfirmSwitch or None
        The confirm switch, on any device.
    """

    def __init__(self, stick: StickAxes, second: StickAxes | None = None, confirm: ConfirmSwitch | None = None) -> None:
        self.stick, self.second, self.confirm = stick, second, confirm
        self._pending: deque[Merged] = deque()
        beside = {one.device_id for one in (second, confirm) if one is not None} - {stick.device_id}
        self._beside: dict[str, list[DeviceSamples]] = {device_id: [] for device_id in beside}
        self._here: set[str] = set(beside)

    def take(self, events: Iterable[Event]) -> tuple[Merged, ...]:
        """What is complete now, in order."""
        for event in events:
            if isinstance(event, DeviceSamples):
                if event.device_id == self.stick.device_id and len(event.times_s):
                    self._pending.append(Merged(self._main_rows(event)))
                elif event.device_id in self._beside and len(event.times_s):
                    self._beside[event.device_id].append(event)
                continue
            self._note(event)
        return self._complete()

    def finish(self) -> tuple[Merged, ...]:
        """All that waits, with what is known of the second stick."""
        return self._complete(wait=False)

    def _note(self, event: Appeared | Gone | Gap) -> None:
        device_id = event.device.id if isinstance(event, Appeared) else event.device_id
        if isinstance(event, Gone) and device_id in self._beside:
            # From then on the second stick is nowhere, not where it was last.
            nowhere = np.full((1, self._width(device_id)), np.nan)
            self._beside[device_id].append(
                DeviceSamples(device_id, 0, np.array([event.at_s]), nowhere, np.zeros(1, np.int64))
            )
            self._here.discard(device_id)
        elif isinstance(event, Appeared) and device_id in self._beside:
            self._here.add(device_id)
        self._pending.append(Merged(np.empty((0, len(RAW_COLUMNS))), event))

    def _width(self, device_id: str) -> int:
        places = [0]
        if self.second is not None and self.second.device_id == device_id:
            places += [place for place in (self.second.horizontal, self.second.vertical) if place is not None]
        known = self._beside[device_id]
        return known[-1].axes.shape[1] if known else max(places) + 1

    def _main_rows(self, samples: DeviceSamples) -> Array:
        rows = np.full((len(samples.times_s), len(RAW_COLUMNS)), np.nan)
        rows[:, 0], rows[:, 1:3] = samples.times_s, stick_xy(samples, self.stick)
        if self.second is not None and self.second.device_id == samples.device_id:
            rows[:, 3:5] = stick_xy(samples, self.second)
        rows[:, 5] = 0.0
        if self.confirm is not None and self.confirm.device_id == samples.device_id:
            rows[:, 5] = samples.buttons >> self.confirm.button & 1
        rows[:, 6] = samples.buttons
        return rows

    def _complete(self, *, wait: bool = True) -> tuple[Merged, ...]:
        done: list[Merged] = []
        while self._pending:
            first = self._pending[0]
            if len(first.rows) and wait and self._waits(float(first.rows[-1, 0])):
                break
            self._pending.popleft()
            if len(first.rows):
                for device_id in self._beside:
                    self._fill(first.rows, device_id)
            done.append(first)
        for known in self._beside.values():  # while the main stick is away, the other one must not pile up
            while len(known) > 1 and known[1].times_s[0] < known[-1].times_s[-1] - _REMEMBERED_S and not self._pending:
                known.pop(0)
        return tuple(done)

    def _waits(self, at_s: float) -> bool:
        """Whether a device beside has still to tell how it was then."""
        newest = max((float(one.rows[-1, 0]) for one in self._pending if len(one.rows)), default=at_s)
        if newest - at_s > WAIT_S:
            return False
        return any(
            not self._beside[device_id] or self._beside[device_id][-1].times_s[-1] < at_s for device_id in self._here
        )

    def _fill(self, rows: Array, device_id: str) -> None:
        known = self._beside[device_id]
        if not known:
            return
        times_s = np.concatenate([one.times_s for one in known])
        place = np.searchsorted(times_s, rows[:, 0], "right") - 1
        there = place >= 0
        if self.second is not None and self.second.device_id == device_id:
            xy = np.concatenate([stick_xy(one, self.second) for one in known])
            rows[there, 3:5] = xy[place[there]]
        if self.confirm is not None and self.confirm.device_id == device_id:
            down = np.concatenate([one.buttons for one in known]) >> self.confirm.button & 1
            rows[there, 5] = down[place[there]]
        while len(known) > 1 and known[1].times_s[0] <= rows[-1, 0]:
            known.pop(0)
