"""How many of what the records hold, a backup holds, or erasing takes away."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["Counted", "Counts"]

Counted = Literal[
    "player", "players", "visits", "files", "versions", "readings", "recordings", "samples", "unpacked_samples", "plans", "consents",
    "loan_entries", "trail_entries",
]  # fmt: skip
"""What is counted."""


class Counts(Topic):
    """Labels are nouns in the plural; a count with its noun."""

    @abstractmethod
    def label(self, *, what: Counted) -> str:
        """The noun, in the plural, beside a number."""

    @abstractmethod
    def counted(self, *, what: Counted, count: int) -> str:
        """A number with its noun."""

    @abstractmethod
    def server_backups(self) -> str:
        """Backups and logs of a server are not erased."""

    @abstractmethod
    def earlier_backups(self) -> str:
        """Backups made earlier still hold what was erased."""

    @abstractmethod
    def copies_beside(self, *, names: tuple[Name, ...]) -> str:
        """Files beside the records that may be copies of them."""

    @abstractmethod
    def close_and_erase(self) -> str:
        """Remedy: the data are erased from the records, but not yet from the file on the disk: close the other program, erase again."""

    @abstractmethod
    def kit_gone(self, *, plan: int, visit: int) -> str:
        """A plan was not copied: the kit that it used is gone."""
