"""The page that erases a player."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["ErasePage"]


class ErasePage(Topic):
    """The page that erases a player."""

    @abstractmethod
    def title(self, *, code: Name) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def lead(self) -> str:
        """Above the list of what will be erased."""

    @abstractmethod
    def nothing_kept(self) -> str:
        """Nothing of it is kept; bold."""

    @abstractmethod
    def lent(self, *, code: Name) -> str:
        """Caution about parts that are for one player only."""

    @abstractmethod
    def no_undo(self) -> str:
        """There is no Undo; before the link to download first."""

    @abstractmethod
    def download_first(self) -> str:
        """Link."""

    @abstractmethod
    def download_more(self) -> str:
        """After the link."""

    @abstractmethod
    def type_code(self) -> str:
        """Label."""

    @abstractmethod
    def code_is(self, *, code: Name) -> str:
        """Under the label."""

    @abstractmethod
    def erase(self) -> str:
        """Button."""

    @abstractmethod
    def cancel(self) -> str:
        """Button: nothing is erased."""

    @abstractmethod
    def other_code(self, *, code: Name) -> str:
        """Problem: another code was typed."""

    @abstractmethod
    def erased(self, *, code: Name, counts: tuple[Text, ...]) -> str:
        """Message after erasing."""
