"""What can happen to a running task, and what comes of it: events go in, effects come out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Message, Text

__all__ = [
    "EVENTS",
    "PHASES",
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
    "SamplesEvent",
    "Shorten",
    "Start",
    "StepEvent",
    "Stop",
    "Tick",
    "Unplugged",
]  # fmt: skip

Array = NDArray[np.float64]

Phase = Literal["ready", "asking", "resting", "paused", "stopped", "done"]
PHASES: tuple[Phase, ...] = ("ready", "asking", "resting", "paused", "stopped", "done")


@dataclass(frozen=True)
class Start:
    """Begin."""

    at_s: float


@dataclass(frozen=True, eq=False)
class SamplesEvent:
    """Samples as they came, in order of time.

    Parameters
    ----------
    rows : array, shape (n, 7)
        Columns `steps.RAW_COLUMNS`: what is kept, as the device gave it.
    shown_xy : array, shape (n, 2), or None
        Where a tuning put the stick on the screen: this moves the cursor and ends steps, and is not kept.
    """

    rows: Array
    shown_xy: Array | None = None


@dataclass(frozen=True)
class Tick:
    """Time goes on."""

    at_s: float


@dataclass(frozen=True)
class Unplugged:
    """The stick is gone."""

    at_s: float


@dataclass(frozen=True)
class Replugged:
    """The stick is back."""

    at_s: float


@dataclass(frozen=True)
class Stop:
    """End at once."""

    at_s: float


@dataclass(frozen=True)
class Resume:
    """Go on after a stop."""

    at_s: float


@dataclass(frozen=True)
class Shorten:
    """Leave out further rounds; once more: what is left of this one."""

    at_s: float


@dataclass(frozen=True)
class Repeat:
    """The step again; with `steps` these of the task once more at the end."""

    at_s: float
    steps: tuple[int, ...] = ()


@dataclass(frozen=True)
class Confirm:
    """A switch or key: ends the step, or the rest before it. Presses in the samples' `confirm` column count by themselves."""

    at_s: float


Event = Start | SamplesEvent | Tick | Unplugged | Replugged | Stop | Resume | Shorten | Repeat | Confirm
EVENTS: tuple[type[Event], ...] = (
    Start, SamplesEvent, Tick, Unplugged, Replugged, Stop, Resume, Shorten, Repeat, Confirm
)  # fmt: skip


@dataclass(frozen=True, eq=False)
class KeepEvent:
    """Samples to be kept.

    Parameters
    ----------
    rows : array, shape (n, 11)
        Columns `steps.RECORDED_COLUMNS`; seconds and shares of full output.
    """

    rows: Array


@dataclass(frozen=True)
class MarkEvent:
    """Something to note beside the recording: 'began', 'paused', 'resumed', 'stopped', 'done', 'shortened', 'repeated', 'gap'.

    Parameters
    ----------
    what : str
    at_s : float
    detail : Message or str
        What about it; steps by their keys.
    """

    what: str
    at_s: float
    detail: Text = ""


@dataclass(frozen=True)
class StepEvent:
    """A new step, or the rest before it, is to be shown."""

    step: int
    resting: bool
    at_s: float


@dataclass(frozen=True)
class Finished:
    """A step is over: by 'time', 'target', 'laps', 'release', 'confirm' or 'shortened'."""

    step: int
    how: str
    at_s: float


@dataclass(frozen=True)
class Ignored:
    """An event that is not possible now, and why."""

    event: str
    why: Message


Effect = KeepEvent | MarkEvent | StepEvent | Finished | Ignored
