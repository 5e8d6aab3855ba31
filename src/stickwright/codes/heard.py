"""What a case's recordings add to its plan, and which of them are left out."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Heard"]


class Heard(Topic):
    """Findings about a site's recordings, and what is taken from them."""

    @abstractmethod
    def simulated(self, *, player: Name, recordings: tuple[Name, ...]) -> str:
        """Finding: recordings of the simulated player are left out of a real player's plan; what to do."""

    @abstractmethod
    def replayed(self, *, recordings: tuple[Name, ...]) -> str:
        """Finding: recordings that are others played back are left out, since what they show counts already."""

    @abstractmethod
    def crosswise(self, *, recording: Name, stick: Name, anticlockwise: bool) -> str:
        """Finding: every push came out a quarter turn round, since the stick stood crosswise with its output not yet turned."""

    @abstractmethod
    def involuntary(self, *, recording: Name, force_n: float, crossing_hz: float | None, limb_assumed: bool) -> str:
        """Finding: the involuntary force (rms for each axis) was taken from a recording; how often it crosses zero; whether the
        stiffness of the limb was assumed."""

    @abstractmethod
    def from_recording(self, *, recording: Name) -> str:
        """Clause, what is assumed of a force: it comes from a recording and the stiffness of stick and limb."""

    @abstractmethod
    def in_state(self, *, state: Name, told: Text) -> str:
        """What holds in one state of a site: the state's name before it."""
