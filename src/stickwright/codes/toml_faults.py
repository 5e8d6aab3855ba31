"""Why a file cannot be read as TOML."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["Fault", "TomlFaults"]

Fault = Literal[
    "key-twice", "table-twice", "closed-table", "used-otherwise", "quote", "list-open", "table-open", "heading-open",
    "list-heading-open", "equals", "statement", "key-sign", "backslash", "sign", "rest",
]  # fmt: skip


class TomlFaults(Topic):
    """`found` and `expected` are noun phrases, `remedy` is a sentence."""

    @abstractmethod
    def found(self, *, typed: Name | None, fault: Fault) -> str:
        """A line as typed (None: the end of the file) and what is wrong with it."""

    @abstractmethod
    def end(self) -> str:
        """The file ends where something should follow."""

    @abstractmethod
    def line(self) -> str:
        """What a line may be."""

    @abstractmethod
    def value(self) -> str:
        """What may stand behind a key."""

    @abstractmethod
    def remedy(self, *, fault: Fault) -> str:
        """What to do about it."""

    @abstractmethod
    def check_value(self) -> str:
        """What to look for where a value cannot be read."""

    @abstractmethod
    def decimal_comma(self) -> str:
        """A decimal comma was typed: what is expected."""

    @abstractmethod
    def write_point(self) -> str:
        """A decimal comma was typed: what to do."""

    @abstractmethod
    def quote_words(self) -> str:
        """Words without quotes: what to do; yes and no have words of their own."""

    @abstractmethod
    def deep(self) -> str:
        """Lists inside lists, far too many: what was found."""

    @abstractmethod
    def lists(self) -> str:
        """Lists inside lists, far too many: what is expected."""

    @abstractmethod
    def stray_brackets(self) -> str:
        """Lists inside lists, far too many: what to do."""
