"""Where a device is plugged in."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Sockets"]


class Sockets(Topic):
    """Inside a sentence, and in tables."""

    @abstractmethod
    def of_splitter(self, *, socket: Name, way: Name) -> str:
        """A socket of a splitter, by its number, in a socket of the hub."""

    @abstractmethod
    def of_hub(self, *, socket: Text, hub: Name | None, tag: Name | None) -> str:
        """A socket, its hub, and the tag of its cable."""

    @abstractmethod
    def paired(self) -> str:
        """A second controller that is paired instead of plugged in."""
