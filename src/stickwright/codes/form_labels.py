"""Every field that can be entered on a page, its choices, and the tables that fields stand in."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["Also", "FormLabels"]

Also = Literal["directions", "point", "sides", "share", "repeats", "lines"]


class FormLabels(Topic):
    """Every field that can be entered on a page, its choices, and the tables that fields stand in."""

    @abstractmethod
    def label(self, *, noun: str, field: str) -> str:
        """Label of a field; `noun` is the kind of table it stands in."""

    @abstractmethod
    def hint(self, *, noun: str, field: str, also: tuple[Also, ...]) -> str:
        """Under the label; `also`: what else is to be said of how it is entered. May be empty."""

    @abstractmethod
    def choice(self, *, word: str) -> str:
        """One of the words that a field takes, as it is chosen."""

    @abstractmethod
    def table(self, *, table: str) -> str:
        """Heading of a list of tables of one kind."""

    @abstractmethod
    def about(self, *, table: str) -> str:
        """Under the heading: what belongs in this list. May be empty."""

    @abstractmethod
    def add(self, *, table: str) -> str:
        """Button above an empty form."""

    @abstractmethod
    def new(self, *, table: str) -> str:
        """Heading of an empty form."""

    @abstractmethod
    def numbered(self, *, table: str, number: int) -> str:
        """A table without a name of its own, by its place in the list."""

    @abstractmethod
    def pair(self, *, names: tuple[Name, ...]) -> str:
        """A table about several control sites, by their names."""

    @abstractmethod
    def amount(self, *, value: Name, unit: Name) -> str:
        """A number as typed with its unit, in a cell."""
