"""The list of players."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["PlayersPage"]


class PlayersPage(Topic):
    """The list of players."""

    @abstractmethod
    def title(self) -> str:
        """Heading."""

    @abstractmethod
    def find(self) -> str:
        """Label of the search field."""

    @abstractmethod
    def unkept(self) -> str:
        """Heading: players whose data are deleted when the app is closed."""

    @abstractmethod
    def unkept_visits(self, *, visits: int) -> str:
        """Beside a player who is not kept."""

    @abstractmethod
    def kept(self) -> str:
        """Heading: players whose data are kept."""

    @abstractmethod
    def caption(self, *, total: int, search: Name, page: int, pages: int) -> str:
        """Caption of the list; `search` may be ''."""

    @abstractmethod
    def code(self) -> str:
        """Column and label: the code that stands for a player."""

    @abstractmethod
    def last_visit(self) -> str:
        """Column."""

    @abstractmethod
    def visits(self) -> str:
        """Column: how many."""

    @abstractmethod
    def recordings(self) -> str:
        """Column: how many."""

    @abstractmethod
    def consent(self) -> str:
        """Column."""

    @abstractmethod
    def pages(self) -> str:
        """Label of the buttons that turn the pages of the list, for a screen reader."""

    @abstractmethod
    def not_found(self, *, search: Name) -> str:
        """Nobody matches the search."""

    @abstractmethod
    def nobody(self) -> str:
        """There is no player yet."""

    @abstractmethod
    def add_title(self) -> str:
        """Heading of the form."""

    @abstractmethod
    def code_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def add(self) -> str:
        """Button."""

    @abstractmethod
    def or_import(self) -> str:
        """Link to another way of adding a player."""

    @abstractmethod
    def taken(self, *, code: Name) -> str:
        """Problem: another player has this code."""
