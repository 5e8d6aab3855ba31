"""Where in a file something stands: the steps of a problem's place, from the file inwards."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["FilePlaces"]


class FilePlaces(Topic):
    """Each is one step of a place, between commas; file names and keys stand beside them as they were typed."""

    @abstractmethod
    def line(self, *, number: int) -> str:
        """Line of a text file, the first is 1."""

    @abstractmethod
    def row(self, *, number: int) -> str:
        """Row of a table as a spreadsheet counts it: the header is row 1."""

    @abstractmethod
    def byte(self, *, number: int) -> str:
        """Byte within a line or row, the first is 1."""

    @abstractmethod
    def value(self, *, number: int) -> str:
        """One of a list of values, by its place in the list."""

    @abstractmethod
    def table(self, *, key: Name, number: int) -> str:
        """One of several tables with the same key, by its place among them, where it has no name."""

    @abstractmethod
    def named(self, *, key: Name, name: Name) -> str:
        """A table by its key and the name that it was given: a site called chin."""

    @abstractmethod
    def towards(self, *, key: Name, angle: Name, unit: Literal["deg", "rad"]) -> str:
        """A reading by its direction, as the angle was typed."""

    @abstractmethod
    def at(self, *, where: tuple[Text, ...], told: Text) -> str:
        """Something noticed at a place of a file, in one or more sentences."""
