"""Buttons and small words that stand on many pages."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Commands"]


class Commands(Topic):
    """Buttons and small words that stand on many pages."""

    @abstractmethod
    def save(self) -> str:
        """Button: save what was typed."""

    @abstractmethod
    def delete(self) -> str:
        """Button: delete this entry; the next page offers Undo."""

    @abstractmethod
    def undo(self) -> str:
        """Button beside a message: take the change back."""

    @abstractmethod
    def back(self) -> str:
        """Link to the page above."""

    @abstractmethod
    def show_all(self) -> str:
        """Button: end the search."""

    @abstractmethod
    def search(self) -> str:
        """Button beside the field to search in."""

    @abstractmethod
    def previous_page(self) -> str:
        """Button: the page before in a list."""

    @abstractmethod
    def next_page(self) -> str:
        """Button: the page after in a list."""

    @abstractmethod
    def as_table(self) -> str:
        """Heading that opens a table with the same figures as a drawing."""

    @abstractmethod
    def optional(self) -> str:
        """Beside the label of a field that may stay empty."""

    @abstractmethod
    def required(self) -> str:
        """Beside the label of a field that must be filled in."""

    @abstractmethod
    def choose(self) -> str:
        """First choice of a list: nothing is chosen yet."""

    @abstractmethod
    def none(self) -> str:
        """Choice, or a cell of a table: there is none, and that is known."""

    @abstractmethod
    def not_recorded(self) -> str:
        """Choice, or a cell of a table: nobody has entered it."""

    @abstractmethod
    def none_yet(self) -> str:
        """In place of a list that has no entries yet."""

    @abstractmethod
    def nothing_yet(self) -> str:
        """In place of a list or figure: nothing has been entered yet."""

    @abstractmethod
    def none_yet_cell(self) -> str:
        """A cell of a table: none has been entered yet."""

    @abstractmethod
    def name(self) -> str:
        """Column and label: name."""

    @abstractmethod
    def note(self) -> str:
        """Column and label: a note that somebody typed."""

    @abstractmethod
    def direction(self) -> str:
        """Column: direction of the player."""

    @abstractmethod
    def unit_of(self, *, label: Text) -> str:
        """Label for a screen reader: the list of units beside a field."""

    @abstractmethod
    def problem_mark(self) -> str:
        """Before the title of the window: the page tells of a problem."""

    @abstractmethod
    def problems(self, *, count: int) -> str:
        """Heading above the problems of a form."""

    @abstractmethod
    def nothing_lost(self) -> str:
        """Under the problems of a form."""

    @abstractmethod
    def is_in_future(self, *, day: str) -> str:
        """Problem with a date that must not be later than today."""

    @abstractmethod
    def not_a_date(self, *, typed: Name) -> str:
        """Problem: this is no date."""

    @abstractmethod
    def date_missing(self) -> str:
        """Problem: a date is required."""
