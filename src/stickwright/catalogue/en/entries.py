"""What is said of anything that was entered or opened: found, expected and what to do, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.entries import Entries
from stickwright.codes.message import Name

__all__ = ["Texts"]


class Texts(Entries):
    """Found and expected have no full stop; remedies are sentences."""

    w: English

    def nothing(self) -> str:
        return "nothing entered"

    def typed(self, *, typed: Name) -> str:
        return f'"{self.w.name(typed)}"'

    def letters(self, *, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='letter', other='letters')}"

    def number(self, *, number: int) -> str:
        return f"number {number}"

    def a_date(self) -> str:
        return "a date such as 2026-03-14"

    def date_from(self, *, date: Name) -> str:
        return f"{self.w.date(date)} or later"

    def type_date(self) -> str:
        return "Enter year, month and day."

    def correct_date(self) -> str:
        return "Correct the date."

    def reload(self) -> str:
        return "Reload the page."

    def back_to_player(self) -> str:
        return "Go back to the player."

    def back_to_players(self) -> str:
        return "Go back to the list of players."

    def another_name(self) -> str:
        return "Choose another name."

    def kept_player(self) -> str:
        return "a player in the records"

    def kept_visit(self) -> str:
        return "a visit in the records"

    def megabytes(self, *, count: int) -> str:
        return f"{self.w.whole(count)} MB"

    def small_file(self) -> str:
        return "a file of 64 MB or less"

    def leave_out_videos(self) -> str:
        return "Leave videos and pictures out."
