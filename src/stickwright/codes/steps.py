"""The words on the player's screen while a task runs: large, few, one instruction a sentence."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic
from stickwright.codes.ways import Way

__all__ = ["Steps"]


class Steps(Topic):
    """What is asked of the player at this moment; twelve words at most."""

    @abstractmethod
    def hands_off(self) -> str:
        """Leave the stick alone."""

    @abstractmethod
    def resting(self) -> str:
        """The limb rests on the stick without moving it."""

    @abstractmethod
    def touch(self) -> str:
        """Between two rests: move the stick a little, so that it has to return."""

    @abstractmethod
    def rim(self, *, clockwise: bool) -> str:
        """Slowly round the edge, seen from above."""

    @abstractmethod
    def push(self, *, way: Way) -> str:
        """One push as far as is comfortable."""

    @abstractmethod
    def hold(self, *, way: Way) -> str:
        """Hold for some seconds where the ring is."""

    @abstractmethod
    def hold_long(self, *, way: Way) -> str:
        """Hold where the ring is until it is no longer comfortable."""

    @abstractmethod
    def aim(self, *, by_switch: bool) -> str:
        """Move to the target; stay in it, or press the switch there."""

    @abstractmethod
    def follow(self) -> str:
        """Follow the ring that moves."""

    @abstractmethod
    def follow_soon(self) -> str:
        """Before the ring moves: go to it."""

    @abstractmethod
    def press(self, *, to_beat: bool) -> str:
        """Press the switch freely, or with the beat that is shown."""

    @abstractmethod
    def play(self) -> str:
        """Move freely."""

    @abstractmethod
    def let_go(self) -> str:
        """Rest between two steps."""

    @abstractmethod
    def over(self, *, phase: Literal["paused", "stopped", "done"]) -> str:
        """The stick is unplugged and the task waits; somebody stopped it; it is finished."""

    @abstractmethod
    def played_back(self) -> str:
        """A recording is played back: nothing is asked."""
