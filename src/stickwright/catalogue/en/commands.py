"""Buttons and small words that stand on many pages; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.commands import Commands
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(Commands):
    """Buttons and small words that stand on many pages."""

    w: English

    def save(self) -> str:
        return "Save"

    def delete(self) -> str:
        return "Delete"

    def undo(self) -> str:
        return "Undo"

    def back(self) -> str:
        return "Back"

    def show_all(self) -> str:
        return "Show all"

    def search(self) -> str:
        return "Search"

    def previous_page(self) -> str:
        return "Previous page"

    def next_page(self) -> str:
        return "Next page"

    def as_table(self) -> str:
        return "Show as a table"

    def optional(self) -> str:
        return "optional"

    def required(self) -> str:
        return "required"

    def choose(self) -> str:
        return "Choose"

    def none(self) -> str:
        return "none"

    def not_recorded(self) -> str:
        return "not recorded"

    def none_yet(self) -> str:
        return "No entries yet."

    def nothing_yet(self) -> str:
        return "Nothing yet."

    def none_yet_cell(self) -> str:
        return "none yet"

    def name(self) -> str:
        return "Name"

    def note(self) -> str:
        return "Note"

    def direction(self) -> str:
        return "Direction"

    def unit_of(self, *, label: Text) -> str:
        return f"Unit for {self.say(label)}"

    def problem_mark(self) -> str:
        return "Problem:"

    def problems(self, *, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='problem', other='problems')} to fix"

    def nothing_lost(self) -> str:
        return "Your entries are still in the form."

    def is_in_future(self, *, day: str) -> str:
        return (
            f"{self.w.date(day)} is in the future. Enter today's date or an earlier one, and check the date of "
            "this computer."
        )

    def not_a_date(self, *, typed: Name) -> str:
        return f"'{self.w.name(typed)}' is not a date. Enter day, month and year."

    def date_missing(self) -> str:
        return "Enter a date."
