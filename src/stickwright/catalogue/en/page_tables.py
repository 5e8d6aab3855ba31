"""Tables of the files of a case as pages show them, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.file_tables import FileTable
from stickwright.codes.page_tables import PageTables

__all__ = ["Texts"]

_ON: dict[FileTable, str] = {
    "site.reading": "a reading on the page 'Readings'",
    "site.on_stick": "how far on a stick, on the page 'Readings'",
    "site.recording": "a recording on the page 'Measure'",
    "action": "an action on the page 'Game'",
    "place": "a place on the page 'Room'",
    "hub.socket": "a socket on the page 'Hub'",
}


class Texts(PageTables):
    """Things and their pages."""

    w: English

    def one(self, *, table: FileTable) -> str:
        return _ON[table]

    def no_kit(self) -> str:
        return "There is no kit yet. Add the sticks to choose from on the page 'Kit'."
