"""Notes of the parts list about what holds the devices."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Message, Name, Topic

__all__ = ["MountParts"]


class MountParts(Topic):
    """Each a note, without a full stop."""

    @abstractmethod
    def for_sites(self, *, sites: tuple[Name, ...]) -> str:
        """For which control sites a part is."""

    @abstractmethod
    def cut(self, *, pieces: tuple[Message, ...]) -> str:
        """The pieces of a fastener, and that pieces in stock must be large enough."""

    @abstractmethod
    def piece(self, *, count: int, long_m: float | None, short_m: float | None, site: Name) -> str:
        """So many pieces of a fastener for a site, how large (None: not known)."""

    @abstractmethod
    def whole(self, *, under: Name, site: Name) -> str:
        """One piece under the whole of a board, for a site."""

    @abstractmethod
    def made(self, *, site: Name) -> str:
        """Made to measure, for a site."""
