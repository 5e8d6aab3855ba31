"""What is said of anything that was entered or opened: found, expected and what to do."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["Entries"]


class Entries(Topic):
    """Found and expected have no full stop; remedies are sentences."""

    @abstractmethod
    def nothing(self) -> str:
        """Found: nothing was entered."""

    @abstractmethod
    def typed(self, *, typed: Name) -> str:
        """Found: what was entered, in quotation marks."""

    @abstractmethod
    def letters(self, *, count: int) -> str:
        """Found: a text of so many letters."""

    @abstractmethod
    def number(self, *, number: int) -> str:
        """Found: a number of something that is kept."""

    @abstractmethod
    def a_date(self) -> str:
        """Expected: a date as year, month and day."""

    @abstractmethod
    def date_from(self, *, date: Name) -> str:
        """Expected: that date, as YYYY-MM-DD, or a later one."""

    @abstractmethod
    def type_date(self) -> str:
        """Remedy: enter year, month and day."""

    @abstractmethod
    def correct_date(self) -> str:
        """Remedy: correct the date."""

    @abstractmethod
    def reload(self) -> str:
        """Remedy: load the page again."""

    @abstractmethod
    def back_to_player(self) -> str:
        """Remedy: go back to the page of the player."""

    @abstractmethod
    def back_to_players(self) -> str:
        """Remedy: go back to the list of players."""

    @abstractmethod
    def another_name(self) -> str:
        """Remedy: choose another name."""

    @abstractmethod
    def kept_player(self) -> str:
        """Expected: a player who is in the records."""

    @abstractmethod
    def kept_visit(self) -> str:
        """Expected: a visit that is in the records."""

    @abstractmethod
    def megabytes(self, *, count: int) -> str:
        """Found: the size of a file."""

    @abstractmethod
    def small_file(self) -> str:
        """Expected: a file of 64 MB or less."""

    @abstractmethod
    def leave_out_videos(self) -> str:
        """Remedy: leave videos and pictures out."""
