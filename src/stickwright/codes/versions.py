"""Why a version of a file was saved, as it is kept with it, and why two changes cannot both be saved."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Versions"]


class Versions(Topic):
    """Reasons are clauses; found and expected have no full stop; remedies are sentences."""

    @abstractmethod
    def undone(self) -> str:
        """The change before was undone."""

    @abstractmethod
    def begun(self) -> str:
        """The file was begun with the visit."""

    @abstractmethod
    def carried_over(self) -> str:
        """The file was copied from an earlier visit."""

    @abstractmethod
    def imported(self) -> str:
        """The file came with a case folder."""

    @abstractmethod
    def not_imported(self) -> str:
        """The file was not in the case folder that was imported, so it was deleted."""

    @abstractmethod
    def together(self, *, why: Text, who: Name) -> str:
        """Saved for a reason (may be empty), together with the change that somebody else had made."""

    @abstractmethod
    def two_changes(self, *, who: Name, at: Name) -> str:
        """Found: a change here and another, saved by somebody at that hour and minute."""

    @abstractmethod
    def two_values(self, *, mine: Name | None, theirs: Name | None, who: Name, at: Name) -> str:
        """Found: a value here and another (None: deleted), saved by somebody at that hour and minute."""

    @abstractmethod
    def one_change(self) -> str:
        """Expected: one change at a time."""

    @abstractmethod
    def look_at_both(self) -> str:
        """Remedy: look at both and save what is right; nothing is lost."""

    @abstractmethod
    def deleted_meanwhile(self, *, who: Name, at: Name) -> str:
        """Found: a change here, and the file deleted by somebody at that time."""

    @abstractmethod
    def one_of_two(self) -> str:
        """Expected: one of the two."""

    @abstractmethod
    def undo_delete(self) -> str:
        """Remedy: undo the deletion, then save again; nothing is lost."""

    @abstractmethod
    def version(self, *, number: int) -> str:
        """Found: a version of a file by its number."""

    @abstractmethod
    def version_up_to(self, *, number: int) -> str:
        """Expected: a version up to that number."""

    @abstractmethod
    def file_name(self) -> str:
        """Where: the name of a file."""

    @abstractmethod
    def a_file_name(self) -> str:
        """Expected: a name that a file may have."""

    @abstractmethod
    def no_file(self) -> str:
        """Found: there is no such file."""

    @abstractmethod
    def a_file(self) -> str:
        """Expected: a file that is there."""

    @abstractmethod
    def visit(self, *, number: int) -> str:
        """Found: a visit by its number in the records."""
