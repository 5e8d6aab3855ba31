"""What was typed and could not be used."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["Figure", "HoldLacks", "Unused"]

HoldLacks = Literal["time", "effort_and_force", "no_force", "comfortable_force"]
"""What keeps a hold from being used."""
Figure = Literal["start_force", "full_force", "travel", "contact_height"]
"""A figure of a controller's own stick."""


class Unused(Topic):
    """Nothing is ignored in silence: what lacks, and what to do."""

    @abstractmethod
    def controller_sticks(self, *, controller: Name, missing: tuple[Figure, ...]) -> str:
        """A controller's sticks are offered to no control site."""

    @abstractmethod
    def hold(self, *, site: Name, held_s: tuple[float, ...], lacks: HoldLacks) -> str:
        """A timed hold (none timed: empty) that is not used."""

    @abstractmethod
    def tried(self, *, site: Name, stick: Name) -> str:
        """A stick that was noted as tried, without how far the player got or the tremor."""

    @abstractmethod
    def slope(self, *, sites: tuple[Name, ...], slopes: int) -> str:
        """The slope of the movement was not taken, so only the most level base was tried of so many that can be built."""
