"""What would have been accepted in a field, a cell or a file."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["Contents", "Expected"]

Contents = Literal[
    "player", "kit", "game", "further-game", "hub", "room", "recording", "gauge", "bench", "movements", "presses",
]  # fmt: skip
"""What a file of a case holds."""


class Expected(Topic):
    """Noun phrases, without a full stop: they stand behind "expected". `unit` is the symbol of a unit."""

    @abstractmethod
    def number(self, *, unit: Name | None) -> str:
        """Any number, in this unit."""

    @abstractmethod
    def number_alone(self, *, unit: Name | None) -> str:
        """A number without its unit or other words behind it."""

    @abstractmethod
    def number_with_point(self, *, unit: Name | None) -> str:
        """A number with a point where a comma was typed."""

    @abstractmethod
    def number_unquoted(self) -> str:
        """A number that was typed in quotes."""

    @abstractmethod
    def number_or_list(self) -> str:
        """One number, or several repeats in a list."""

    @abstractmethod
    def number_measurable(self) -> str:
        """A number of a size that can be measured."""

    @abstractmethod
    def clear_comma(self) -> str:
        """A comma whose meaning is clear: between numbers, or before decimals."""

    @abstractmethod
    def whole_number(self) -> str:
        """A number without decimals."""

    @abstractmethod
    def numbers(self, *, count: int, spaced: bool) -> str:
        """So many numbers; `spaced`: typed in one field of a form, with spaces between them."""

    @abstractmethod
    def number_list(self, *, count: int) -> str:
        """So many numbers in a list of a file."""

    @abstractmethod
    def range(self, *, low_in_unit: float, high_in_unit: float, unit: Name | None, unsigned: bool) -> str:
        """From lowest to highest; `unsigned`: what was typed had a minus."""

    @abstractmethod
    def share(self, *, low_share: float, high_share: float) -> str:
        """A share as a decimal number, from lowest to highest: 1 is all."""

    @abstractmethod
    def above_zero(self) -> str:
        """More than nothing."""

    @abstractmethod
    def one_of(self, *, names: tuple[Name, ...], more: int) -> str:
        """One of some words as they are typed; `more`: so many others are not listed."""

    @abstractmethod
    def one_of_or_empty(self, *, names: tuple[Name, ...]) -> str:
        """One of some words, or an empty cell."""

    @abstractmethod
    def one_of_two(self) -> str:
        """Only one of the two things that were found together."""

    @abstractmethod
    def text(self, *, in_list: bool) -> str:
        """Words, which a file holds in quotes; several in a list."""

    @abstractmethod
    def a_word(self) -> str:
        """Something typed where nothing was."""

    @abstractmethod
    def true_or_false(self) -> str:
        """Yes or no in a file."""

    @abstractmethod
    def yes_or_no(self) -> str:
        """Yes or no in a form."""

    @abstractmethod
    def date(self) -> str:
        """A date as files hold it."""

    @abstractmethod
    def at_most(self, *, characters: int) -> str:
        """A limit on the length of a text."""

    @abstractmethod
    def values(self, *, count: int) -> str:
        """A list of so many values."""

    @abstractmethod
    def file_with(self, *, contents: Contents) -> str:
        """A file that holds this."""

    @abstractmethod
    def at_most_rows(self, *, contents: Contents, rows: int) -> str:
        """A limit on the rows of a table."""

    @abstractmethod
    def at_most_bytes(self, *, contents: Contents, millions: int) -> str:
        """A limit on the size of a file, in megabytes."""

    @abstractmethod
    def one_a_row(self, *, contents: Contents) -> str:
        """At least one row of a table, below its header."""

    @abstractmethod
    def utf8(self) -> str:
        """A text in the encoding that is read."""

    @abstractmethod
    def case_folder(self) -> str:
        """A folder that holds a case."""

    @abstractmethod
    def file_inside(self) -> str:
        """A file in the case folder, by its name from there."""

    @abstractmethod
    def new_folder(self) -> str:
        """A place for a new case."""

    @abstractmethod
    def writable(self) -> str:
        """A place where a file can be written."""

    @abstractmethod
    def none(self) -> str:
        """There should be nothing of the kind."""

    @abstractmethod
    def own_name(self) -> str:
        """A name that nothing else of the kind has."""
