"""What was found where something else was expected; what was typed is shown as it stands, without a message."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["Found"]


class Found(Topic):
    """Noun phrases, without a full stop: they stand behind "found"."""

    @abstractmethod
    def no_file(self) -> str:
        """There is no file of that name."""

    @abstractmethod
    def no_folder(self) -> str:
        """There is no folder of that name."""

    @abstractmethod
    def folder(self) -> str:
        """A folder where a file was expected."""

    @abstractmethod
    def file(self) -> str:
        """A file where a folder was expected."""

    @abstractmethod
    def empty_file(self) -> str:
        """A file without anything in it."""

    @abstractmethod
    def closed(self, *, reason: Name | None) -> str:
        """A file that the system does not open, with the system's own reason; None: a name that no file can have."""

    @abstractmethod
    def unwritable(self, *, reason: Name | None) -> str:
        """A place where the system does not let a file or folder be made; None: a name that none can have, or no reason."""

    @abstractmethod
    def undeletable(self, *, reason: Name | None) -> str:
        """A file that the system does not let be deleted."""

    @abstractmethod
    def size(self, *, millions: int) -> str:
        """A file by its size in megabytes."""

    @abstractmethod
    def utf16(self) -> str:
        """A text in another encoding."""

    @abstractmethod
    def odd_byte(self, *, byte: Name, latin_1: Name | None) -> str:
        """A byte that is not UTF-8, in two hexadecimal digits; the letter that it is in Latin-1, where it is one."""

    @abstractmethod
    def empty_cell(self) -> str:
        """A cell of a table with nothing in it."""

    @abstractmethod
    def empty_cells(self) -> str:
        """A column with nothing in it."""

    @abstractmethod
    def no_rows(self) -> str:
        """A table with a header and nothing below it."""

    @abstractmethod
    def rows(self, *, count: int) -> str:
        """So many rows of a table."""

    @abstractmethod
    def cells(self, *, count: int) -> str:
        """So many cells in a row."""

    @abstractmethod
    def values(self, *, count: int) -> str:
        """So many values in a list."""

    @abstractmethod
    def characters(self, *, count: int) -> str:
        """So many characters."""

    @abstractmethod
    def more(self, *, count: int) -> str:
        """So many more problems of the same kind, which are not told one by one."""

    @abstractmethod
    def both(self, *, first: Name, second: Name) -> str:
        """Two things that exclude each other, as typed: keys with their values, or columns."""

    @abstractmethod
    def no_field(self, *, key: Name) -> str:
        """A field that is missing, by its key without the unit."""

    @abstractmethod
    def same_name(self, *, typed: Name, file: Name) -> str:
        """A name, in quotes, that another file has as well."""
