"""Force over time at one control site."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["Trends"]


class Trends(Topic):
    """Force over time at one control site."""

    @abstractmethod
    def sentence(self, *, site: Name, unit: Name, directions: int, visits: int, more: int, less: int) -> str:
        """What the drawing shows, also for who does not see it."""

    @abstractmethod
    def not_taken(self) -> str:
        """Cell: no reading in this direction at this visit."""

    @abstractmethod
    def spread(self, *, middle: Name, low: Name, high: Name) -> str:
        """Cell: median of several repeats, with weakest and strongest."""
