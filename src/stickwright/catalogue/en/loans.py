"""What is wrong with a loan of kit, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.loans import Loans
from stickwright.codes.message import Message, Name

__all__ = ["Texts"]


class Texts(Loans):
    """Found and expected have no full stop; remedies are sentences."""

    w: English

    def lent_on(self) -> str:
        return "lent on"

    def due(self) -> str:
        return "due"

    def back(self) -> str:
        return "returned on"

    def cleaned(self) -> str:
        return "cleaned on"

    def type_due(self) -> str:
        return "Enter the date when it should be returned."

    def still_with(self, *, code: Name) -> str:
        return f"still with {self.w.name(code)}"

    def returned_item(self) -> str:
        return "an item that has been returned"

    def return_first(self) -> str:
        return "Record its return first."

    def back_since(self, *, date: Name) -> str:
        return f"returned on {self.w.date(date)}"

    def lent_item(self) -> str:
        return "an item that is on loan"

    def lend_again(self) -> str:
        return "Lend it again."

    def since_lent(self, *, date: Name) -> str:
        return f"{self.w.date(date)}, when it was lent, or later"

    def of_the_kit(self) -> str:
        return "an item of the kit"

    def none_left(self, *, owned: int, out: tuple[Message, ...]) -> str:
        lent = f"; on loan: {self.w.all_of(tuple(self.clause(one) for one in out))}" if out else ""
        return f"none left of {self.w.whole(owned)}{lent}"

    def with_player(self, *, code: Name, due: Name) -> str:
        return f"{self.w.name(code)} (due {self.w.date(due)})"

    def none_for_another(self, *, codes: tuple[Name, ...]) -> str:
        had = f" (used by {self.w.names(codes)})" if codes else ""
        return f"none left for another player{had}"

    def a_new_one(self) -> str:
        return "a new one, as it touches the face or mouth and stays with one player"

    def buy_one(self) -> str:
        return "Buy one, and increase in_stock."

    def one_in_stock(self) -> str:
        return "one in stock"

    def ask_back(self) -> str:
        return "Ask for one back, or buy one."

    def a_loan(self) -> str:
        return "a loan in the records"
