"""What the readings predict on a stick against what was recorded on it."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["Agreements", "RecordedTask"]

RecordedTask = Literal["push", "rim"]
"""Full pushes one by one, or along the rim."""


class Agreements(Topic):
    """Findings about gauge and stick; `setup` is what was recorded on."""

    @abstractmethod
    def compared(
        self,
        *,
        direction_rad: float,
        predicted_share: float,
        recorded_share: float,
        task: RecordedTask,
        recording: Name,
    ) -> str:
        """As part of a sentence: travel predicted and recorded in one direction, and in which recording."""

    @abstractmethod
    def not_compared(self, *, setup: Text) -> str:
        """Nothing could be compared: the recording tells no travel in any direction."""

    @abstractmethod
    def mirrored(self, *, setup: Text, worst: Message) -> str:
        """What was recorded is the mirror image of what the readings predict."""

    @abstractmethod
    def apart(self, *, setup: Text, worst: Message, less_recorded: bool) -> str:
        """Readings and recording disagree; whether less was recorded than predicted."""

    @abstractmethod
    def agree(
        self, *, setup: Text, difference_share: float, worst: Message, weakest: Message | None, left_out: int
    ) -> str:
        """Readings and recording agree: the largest difference, the weakest direction where that is another one, and how many
        directions had nothing recorded."""
