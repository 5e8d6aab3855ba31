"""The files of a visit as text, and their versions."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["FilesPage", "Why"]

Why = Literal[
    "typed-as-text",
    "usual-actions",
    "own-kit",
    "game-added",
    "game-deleted",
    "readings",
    "readings-copied",
    "shelf",
    "shelf-deleted",
]


class FilesPage(Topic):
    """The files of a visit as text, and their versions."""

    @abstractmethod
    def title(self) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def lead(self) -> str:
        """Under the heading."""

    @abstractmethod
    def file(self) -> str:
        """Column."""

    @abstractmethod
    def version(self) -> str:
        """Column: number of the version."""

    @abstractmethod
    def saved(self) -> str:
        """Column: when it was saved."""

    @abstractmethod
    def by(self) -> str:
        """Column: by whom."""

    @abstractmethod
    def back(self) -> str:
        """Link."""

    @abstractmethod
    def not_text(self) -> str:
        """In place of the text of a file."""

    @abstractmethod
    def download(self) -> str:
        """Link."""

    @abstractmethod
    def text(self) -> str:
        """Label of the field with the text."""

    @abstractmethod
    def versions(self) -> str:
        """Heading."""

    @abstractmethod
    def version_line(self, *, at: str, who: Name, why: Text) -> str:
        """One version: when, by whom, why (may be '')."""

    @abstractmethod
    def reason(self, *, why: Why) -> str:
        """Why a version was saved."""

    @abstractmethod
    def changes(self) -> str:
        """Heading that opens the changes of a version."""

    @abstractmethod
    def in_version(self, *, number: int) -> str:
        """The same, for a screen reader: after 'Changes'."""

    @abstractmethod
    def removed(self) -> str:
        """The file was deleted in this version."""

    @abstractmethod
    def not_shown(self) -> str:
        """The change cannot be shown as text."""

    @abstractmethod
    def more_lines(self, *, lines: int) -> str:
        """After the first changed lines."""

    @abstractmethod
    def too_long(self, *, most: int) -> str:
        """Problem: the text is too long for the page."""

    @abstractmethod
    def file_saved(self, *, name: Name) -> str:
        """Message."""
