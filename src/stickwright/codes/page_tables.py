"""Tables of the files of a case as somebody finds them who fills in pages and never sees a file."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.file_tables import FileTable
from stickwright.codes.message import Topic

__all__ = ["PageTables"]


class PageTables(Topic):
    """`one` is a noun phrase; the others are sentences."""

    @abstractmethod
    def one(self, *, table: FileTable) -> str:
        """One thing and the page that it is entered on."""

    @abstractmethod
    def no_kit(self) -> str:
        """There is no kit yet: what to enter, and where."""
