"""Kit on loan, on the page of all loans and on a player's page."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["Kind", "LoansPage"]

Kind = Literal["stick", "topper", "extension", "switch", "controller", "lead", "mount", "fastener"]


class LoansPage(Topic):
    """Kit on loan, on the page of all loans and on a player's page."""

    @abstractmethod
    def title(self) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def overdue(self) -> str:
        """Heading, and beside a date."""

    @abstractmethod
    def overdue_cell(self) -> str:
        """Beside a date in a table."""

    @abstractmethod
    def late(self, *, item: Name, code: Name, due_on: str) -> str:
        """One overdue loan."""

    @abstractmethod
    def out(self) -> str:
        """Caption: what is on loan."""

    @abstractmethod
    def item(self) -> str:
        """Column and label."""

    @abstractmethod
    def with_whom(self) -> str:
        """Column: the player who has it."""

    @abstractmethod
    def since(self) -> str:
        """Column."""

    @abstractmethod
    def due(self) -> str:
        """Column."""

    @abstractmethod
    def return_(self) -> str:
        """Column."""

    @abstractmethod
    def extend(self) -> str:
        """Column, and label before the date."""

    @abstractmethod
    def condition_of(self, *, item: Name) -> str:
        """Label for a screen reader."""

    @abstractmethod
    def condition(self) -> str:
        """In the empty field."""

    @abstractmethod
    def return_button(self) -> str:
        """Button: it has come back."""

    @abstractmethod
    def return_more(self, *, item: Name, code: Name) -> str:
        """The same for a screen reader, after 'Return'."""

    @abstractmethod
    def extend_button(self) -> str:
        """Button: it may stay longer."""

    @abstractmethod
    def extend_more(self, *, item: Name, code: Name) -> str:
        """The same for a screen reader, after 'Extend'."""

    @abstractmethod
    def new_due(self, *, item: Name) -> str:
        """Label for a screen reader: the new date."""

    @abstractmethod
    def none_out(self) -> str:
        """There is nothing on loan."""

    @abstractmethod
    def returned(self, *, count: int) -> str:
        """Heading that opens the list."""

    @abstractmethod
    def returned_caption(self) -> str:
        """Caption."""

    @abstractmethod
    def from_whom(self) -> str:
        """Column."""

    @abstractmethod
    def returned_on(self) -> str:
        """Column."""

    @abstractmethod
    def cleaned(self) -> str:
        """Column and button: it has been cleaned."""

    @abstractmethod
    def cleaned_more(self, *, item: Name, code: Name) -> str:
        """The same for a screen reader, after 'Cleaned'."""

    @abstractmethod
    def not_yet(self) -> str:
        """Cell: not cleaned yet."""

    @abstractmethod
    def lend_title(self) -> str:
        """Heading."""

    @abstractmethod
    def lend(self) -> str:
        """Label before the list of items, and button."""

    @abstractmethod
    def to(self) -> str:
        """Label."""

    @abstractmethod
    def due_back(self) -> str:
        """Label."""

    @abstractmethod
    def kit_wrong(self) -> str:
        """In place of the form."""

    @abstractmethod
    def nothing_to_lend(self) -> str:
        """In place of the form."""

    @abstractmethod
    def nobody(self) -> str:
        """In place of the form."""

    @abstractmethod
    def shelf(self) -> str:
        """Link."""

    @abstractmethod
    def lent(self, *, item: Name, code: Name, due_on: str) -> str:
        """Message."""

    @abstractmethod
    def came_back(self, *, item: Name, code: Name) -> str:
        """Message."""

    @abstractmethod
    def was_cleaned(self, *, item: Name) -> str:
        """Message."""

    @abstractmethod
    def extended(self, *, item: Name, code: Name, due_on: str) -> str:
        """Message."""

    @abstractmethod
    def not_kept(self) -> str:
        """Problem: the player's records are not kept."""

    @abstractmethod
    def item_of(self, *, item: Name, kind: Kind, for_one: bool) -> str:
        """Choice: an item with its kind; `for_one`: it may only be lent to one player, ever."""
