"""The page that explains the file of everything that is held about a player."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["ExportReadme", "Exported"]

Exported = Literal[
    "player", "consents", "loans", "trail", "visits", "case", "versions", "recordings", "columns", "plans"
]
"""Tables and folders in it; `columns` are those of a recording."""


class ExportReadme(Topic):
    """A heading, what it is, a line for each part, what else to know."""

    @abstractmethod
    def heading(self) -> str:
        """First line of the page."""

    @abstractmethod
    def whole(self, *, code: Name, at: Name) -> str:
        """About whom it is, and as of when (UTC)."""

    @abstractmethod
    def part(self, *, part: Exported) -> str:
        """What is in a table or a folder, behind its name."""

    @abstractmethod
    def unread(self, *, file: Name) -> str:
        """What could not be read is named in a file; that this file is not encrypted."""

    @abstractmethod
    def tables(self) -> str:
        """How the tables are written, and how directions are counted."""
