"""Tables of the files of a case, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.file_tables import FileTable, FileTables

__all__ = ["Texts"]


class Texts(FileTables):
    """Headings."""

    w: English

    def one(self, *, table: FileTable) -> str:
        return f"{'an' if table == 'action' else 'a'} [[{table}]]"
