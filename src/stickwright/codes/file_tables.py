"""Tables of the files of a case, where a sentence asks for one: pages say there which page it is on instead."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["FileTable", "FileTables"]

FileTable = Literal["site.reading", "site.on_stick", "site.recording", "action", "place", "hub.socket"]
"""By its heading in the file."""


class FileTables(Topic):
    """A noun phrase."""

    @abstractmethod
    def one(self, *, table: FileTable) -> str:
        """One table of a file, by its heading in brackets."""
