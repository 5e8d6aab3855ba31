"""The guided measuring tasks: what they are called, what they are for, what the player hears beforehand."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["TaskName", "Tasks"]

TaskName = Literal["rest", "rim", "push", "aim", "follow", "hold", "press", "play"]


class Tasks(Topic):
    """Read on the page before a task and aloud to the player; short, one instruction a sentence."""

    @abstractmethod
    def stop(self) -> str:
        """To the player, always on the screen: when to stop."""

    @abstractmethod
    def with_stop(self, *, words: Text) -> str:
        """What the player hears or a screen reader says, and when to stop."""

    @abstractmethod
    def title(self, *, task: TaskName) -> str:
        """Heading and button: rest, round the edge (`rim`), pushes, targets on circles (`aim`), moving target, long hold, switch, play."""

    @abstractmethod
    def purpose(self, *, task: TaskName) -> str:
        """To the practitioner: what the task tells, and for what."""

    @abstractmethod
    def watch(self, *, task: Literal["rest", "rim", "push", "aim", "follow", "press", "play"]) -> str:
        """To the practitioner: what to look at meanwhile."""

    @abstractmethod
    def watch_hold(self, *, cap_s: float) -> str:
        """The same for the long hold, which ends by itself after `cap_s`."""

    @abstractmethod
    def rest(self, *, rests: int) -> str:
        """To the player: the stick is left alone `rests` times, some seconds each."""

    @abstractmethod
    def rim(self, *, laps: int) -> str:
        """To the player: slowly round the edge of the stick's travel, `laps` times in each direction."""

    @abstractmethod
    def push(self) -> str:
        """To the player: push as the arrow shows, then let go."""

    @abstractmethod
    def aim(self, *, by_switch: bool) -> str:
        """To the player: move to the marked circle; stay in it, or press the switch there."""

    @abstractmethod
    def follow(self) -> str:
        """To the player: stay with the moving ring."""

    @abstractmethod
    def hold(self) -> str:
        """To the player: hold in the ring as long as is comfortable."""

    @abstractmethod
    def press(self) -> str:
        """To the player: press the switch as often as is comfortable, then with a beat."""

    @abstractmethod
    def play(self) -> str:
        """To the player: move freely."""
