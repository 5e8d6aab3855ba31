"""What was found, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.found import Found
from stickwright.codes.message import Name

__all__ = ["Texts"]


class Texts(Found):
    """Noun phrases."""

    w: English

    def no_file(self) -> str:
        return "no such file"

    def no_folder(self) -> str:
        return "no such folder"

    def folder(self) -> str:
        return "a folder"

    def file(self) -> str:
        return "a file"

    def empty_file(self) -> str:
        return "an empty file"

    def closed(self, *, reason: Name | None) -> str:
        return f"a file that cannot be opened ({self._why(reason)})"

    def unwritable(self, *, reason: Name | None) -> str:
        return f"a place that cannot be written to ({self._why(reason)})"

    def undeletable(self, *, reason: Name | None) -> str:
        return f"a file that cannot be deleted ({self._why(reason)})"

    def size(self, *, millions: int) -> str:
        return f"a file of {self.w.whole(millions)} MB"

    def utf16(self) -> str:
        return "text in UTF-16"

    def odd_byte(self, *, byte: Name, latin_1: Name | None) -> str:
        guess = f" ('{self.w.name(latin_1)}' if it was saved as Latin-1)" if latin_1 is not None else ""
        return f"the byte {self.w.name(byte)}, which is not UTF-8{guess}"

    def empty_cell(self) -> str:
        return "an empty cell"

    def empty_cells(self) -> str:
        return "only empty cells"

    def no_rows(self) -> str:
        return "a header and no rows"

    def rows(self, *, count: int) -> str:
        return self.w.plural(count, one="1 row", other=f"{self.w.whole(count)} rows")

    def cells(self, *, count: int) -> str:
        return self.w.plural(count, one="1 cell", other=f"{self.w.whole(count)} cells")

    def values(self, *, count: int) -> str:
        return self.w.plural(count, one="1 value", other=f"{count} values")

    def characters(self, *, count: int) -> str:
        return self.w.plural(count, one="1 character", other=f"{self.w.whole(count)} characters")

    def more(self, *, count: int) -> str:
        return f"{self.w.whole(count)} more problems like these"

    def both(self, *, first: Name, second: Name) -> str:
        return f"{self.w.name(first)} and {self.w.name(second)}"

    def no_field(self, *, key: Name) -> str:
        return f"no {self.w.name(key)}"

    def same_name(self, *, typed: Name, file: Name) -> str:
        return f"{self.w.name(typed)}, as in {self.w.name(file)}"

    def _why(self, reason: Name | None) -> str:
        return "not a usable name" if reason is None else self.w.name(reason)
