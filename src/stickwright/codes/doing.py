"""What the program is working on, beside a bar or a percentage."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Topic

__all__ = ["Doing"]


class Doing(Topic):
    """A few words each, at most 28 letters; a control site that is being worked out is told by its name."""

    @abstractmethod
    def beginning(self) -> str:
        """A plan is begun: nothing is known of it yet."""

    @abstractmethod
    def sharing(self) -> str:
        """Actions are given their controls."""

    @abstractmethod
    def next_reading(self) -> str:
        """The reading most worth the player's effort is looked for."""

    @abstractmethod
    def done(self) -> str:
        """The plan is ready."""
