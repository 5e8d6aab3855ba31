"""What can happen to a running task, and why something cannot happen now."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["Outcome", "TaskStates"]

Outcome = Literal[
    "begins", "not-kept", "nothing", "cannot-start", "noted", "stops", "stops-and-keeps", "drops-rounds",
    "drops-rounds-and-steps", "drops-rounds-and-the-rest", "kept-without-a-cue", "kept-with-its-cue", "kept-from-before-the-stop",
    "kept-from-before-the-end", "begins-the-step-anew", "repeats-steps", "repeats-this-step", "moves-on-in-time", "pauses",
    "ends-the-step",
]  # fmt: skip
"""What an event does; the sentence for each is `TaskStates.does`."""

Why = Literal[
    "unplugged", "waits-for-the-stick", "step-begins-anew", "only-just-resting", "same-press", "one-round", "not-started",
    "nothing-to-repeat", "running", "running-without-a-stick", "stopped", "stopped-nothing-to-shorten", "finished",
    "finished-nothing-to-shorten", "no-time",
]  # fmt: skip
"""Why an event changes nothing."""


class TaskStates(Topic):
    """For the practitioner: in the handbook's tables, and on the page when something that was pressed cannot be done now."""

    @abstractmethod
    def does(self, *, outcome: Outcome) -> str:
        """A cell of the table of states and events: what the event does, without a full stop."""

    @abstractmethod
    def refused(self, *, why: Text) -> str:
        """A cell of the table: the event is not possible, and why."""

    @abstractmethod
    def why(self, *, why: Why) -> str:
        """Why nothing changed, and what to press instead."""

    @abstractmethod
    def steps_there_are(self, *, last: int) -> str:
        """Steps were asked for again that the task does not have: it has 0 to `last`."""

    @abstractmethod
    def no_samples(self, *, columns: int) -> str:
        """A batch of samples did not have the number of columns that samples have."""

    @abstractmethod
    def places_unlike(self, *, samples: int, places: int) -> str:
        """A batch had as many samples as this, but another number of places on the screen."""

    @abstractmethod
    def mark(self, *, about: Literal["unplugged", "plugged-in-again", "one-round", "this-step"]) -> str:
        """Kept with a recording, beside 'paused', 'resumed' or 'shortened': by what, or to what."""
