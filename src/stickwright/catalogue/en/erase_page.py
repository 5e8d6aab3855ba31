"""The page that erases a player; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.erase_page import ErasePage
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(ErasePage):
    """The page that erases a player."""

    w: English

    def title(self, *, code: Name) -> str:
        return f"Erase {self.w.name(code)}"

    def lead(self) -> str:
        return "This will be permanently erased:"

    def nothing_kept(self) -> str:
        return "Nothing is kept."

    def lent(self, *, code: Name) -> str:
        return (
            f"Parts that touched face or mouth and were lent to {self.w.name(code)} must not be lent to anyone "
            "else. Take them out of the stock of the kit yourself: the record of who had them is erased too."
        )

    def no_undo(self) -> str:
        return "This cannot be undone."

    def download_first(self) -> str:
        return "Download everything first"

    def download_more(self) -> str:
        return "if somebody needs it."

    def type_code(self) -> str:
        return "To erase, type the code"

    def code_is(self, *, code: Name) -> str:
        return f"The code is {self.w.name(code)}."

    def erase(self) -> str:
        return "Erase"

    def cancel(self) -> str:
        return "Cancel"

    def other_code(self, *, code: Name) -> str:
        return f"Nothing was erased. To erase this player, type {self.w.name(code)}."

    def erased(self, *, code: Name, counts: tuple[Text, ...]) -> str:
        told = self.w.all_of(tuple(self.clause(one) for one in counts)) if counts else "there was no data"
        return f"{self.w.name(code)} is erased: {told}. Nothing is kept."
