"""Keys of a file that are missing, unknown, in the wrong table, or hold something of another kind."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["FileKeys", "Kind"]

Kind = Literal[
    "force", "length", "angle", "time", "mass", "rate", "frequency", "linear_stiffness", "moment", "angular_stiffness",
    "pressure", "current",
]  # fmt: skip
"""Kinds of quantities that keys have units of."""


class FileKeys(Topic):
    """Noun phrases for what was found and expected; keys and tables by their names in the file."""

    @abstractmethod
    def either(self, *, keys: tuple[Name, ...], meaning: Text | None) -> str:
        """Any of these keys, which mean the same in several units; what they mean."""

    @abstractmethod
    def words(self, *, key: Name, choices: tuple[Name, ...], meaning: Text | None) -> str:
        """A key that holds words; those that may be chosen, none where any may be typed."""

    @abstractmethod
    def table(self, *, heading: Name, meaning: Text | None) -> str:
        """A table by its heading with brackets."""

    @abstractmethod
    def at_least_one(self, *, heading: Name) -> str:
        """A list of tables must not be empty."""

    @abstractmethod
    def several(self) -> str:
        """Sentence: a table that may stand several times has double brackets."""

    @abstractmethod
    def only_one(self) -> str:
        """Sentence: a table that stands once has single brackets."""

    @abstractmethod
    def other_kind(self, *, key: Name, kind: Kind | None) -> str:
        """A key whose unit is one of another kind of quantity; None: of no known one."""

    @abstractmethod
    def of_kind(self, *, kind: Kind | None, keys: tuple[Name, ...]) -> str:
        """The units that its key may end in."""

    @abstractmethod
    def no_unit(self, *, key: Name) -> str:
        """A key without its unit."""

    @abstractmethod
    def inside(self, *, key: Name, table: Name) -> str:
        """A key that stands in the table of something else."""

    @abstractmethod
    def belongs(self, *, key: Name, table: Name | None) -> str:
        """The table in which the key would be known; None: the top of the file, above all tables."""

    @abstractmethod
    def move_up(self, *, table: Name | None) -> str:
        """Sentence: where the line is to be moved."""

    @abstractmethod
    def unknown(self, *, key: Name) -> str:
        """A key that is not known."""

    @abstractmethod
    def known(self, *, table: Name | None) -> str:
        """A key that this table knows; None: the file itself."""

    @abstractmethod
    def field(self, *, typed: Name) -> str:
        """A field that a form does not have."""

    @abstractmethod
    def known_field(self) -> str:
        """One of the fields that a form has."""

    @abstractmethod
    def point(self, *, described: Text | None) -> str:
        """Sentence: in which order the three numbers of a point are given; what the point is."""

    @abstractmethod
    def true_is_no_number(self) -> str:
        """Sentence: true or false stands where a number should."""
