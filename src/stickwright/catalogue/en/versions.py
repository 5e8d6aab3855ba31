"""Why a version of a file was saved, as it is kept with it, and why two changes cannot both be saved, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.versions import Versions

__all__ = ["Texts"]


class Texts(Versions):
    """Reasons are clauses; found and expected have no full stop; remedies are sentences."""

    w: English

    def undone(self) -> str:
        return "undone"

    def begun(self) -> str:
        return "started with the visit"

    def carried_over(self) -> str:
        return "copied from an earlier visit"

    def imported(self) -> str:
        return "imported from a case folder"

    def not_imported(self) -> str:
        return "not in the imported case folder"

    def together(self, *, why: Text, who: Name) -> str:
        change = f"together with the change by {self.w.name(who)}"
        return f"{self.clause(why)}; {change}" if self.say(why) else change

    def two_changes(self, *, who: Name, at: Name) -> str:
        return f"a change here, and another saved by {self.w.name(who)} at {self.w.name(at)} UTC"

    def two_values(self, *, mine: Name | None, theirs: Name | None, who: Name, at: Name) -> str:
        return (
            f"{self._value(mine)} here, and {self._value(theirs)} saved by {self.w.name(who)} at {self.w.name(at)} UTC"
        )

    def one_change(self) -> str:
        return "one change at a time"

    def look_at_both(self) -> str:
        return "Nothing is lost. Reload the page, compare the two, and save what is right."

    def deleted_meanwhile(self, *, who: Name, at: Name) -> str:
        return f"a change here, and the file deleted by {self.w.name(who)} at {self.w.name(at)}"

    def one_of_two(self) -> str:
        return "one of the two"

    def undo_delete(self) -> str:
        return "Undo the deletion, then save again. Nothing is lost."

    def version(self, *, number: int) -> str:
        return f"version {number}"

    def version_up_to(self, *, number: int) -> str:
        return f"a version up to {number}"

    def file_name(self) -> str:
        return "file name"

    def a_file_name(self) -> str:
        return "a name such as player.toml or readings/chin.csv"

    def no_file(self) -> str:
        return "no such file"

    def a_file(self) -> str:
        return "a file in the visit"

    def visit(self, *, number: int) -> str:
        return f"visit {number}"

    def _value(self, typed: Name | None) -> str:
        return "deleted" if typed is None else f"'{self.w.name(typed)}'"
