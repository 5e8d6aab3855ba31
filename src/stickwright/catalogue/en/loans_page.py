"""Kit on loan, on the page of all loans and on a player's page; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.loans_page import Kind, LoansPage
from stickwright.codes.message import Name

__all__ = ["Texts"]

_KINDS: dict[Kind, str] = {
    "stick": "stick",
    "topper": "topper",
    "extension": "shaft extension",
    "switch": "switch",
    "controller": "controller",
    "lead": "cable or adapter",
    "mount": "mount",
    "fastener": "fastener",
}


class Texts(LoansPage):
    """Kit on loan, on the page of all loans and on a player's page."""

    w: English

    def title(self) -> str:
        return "Kit on loan"

    def overdue(self) -> str:
        return "Overdue"

    def overdue_cell(self) -> str:
        return "overdue"

    def late(self, *, item: Name, code: Name, due_on: str) -> str:
        return f"{self.w.name(item)}: lent to {self.w.name(code)}, due {self.w.date(due_on)}"

    def out(self) -> str:
        return "On loan now"

    def item(self) -> str:
        return "Item"

    def with_whom(self) -> str:
        return "Lent to"

    def since(self) -> str:
        return "Since"

    def due(self) -> str:
        return "Due"

    def return_(self) -> str:
        return "Return"

    def extend(self) -> str:
        return "Extend"

    def condition_of(self, *, item: Name) -> str:
        return f"Condition of {self.w.name(item)}"

    def condition(self) -> str:
        return "condition"

    def return_button(self) -> str:
        return "Return"

    def return_more(self, *, item: Name, code: Name) -> str:
        return f"{self.w.name(item)} from {self.w.name(code)}"

    def extend_button(self) -> str:
        return "Extend"

    def extend_more(self, *, item: Name, code: Name) -> str:
        return f"the loan of {self.w.name(item)} to {self.w.name(code)}"

    def new_due(self, *, item: Name) -> str:
        return f"New due date for {self.w.name(item)}"

    def none_out(self) -> str:
        return "Nothing is on loan."

    def returned(self, *, count: int) -> str:
        return f"{self.w.whole(count)} returned"

    def returned_caption(self) -> str:
        return "Returned kit, most recent first"

    def from_whom(self) -> str:
        return "From"

    def returned_on(self) -> str:
        return "Returned on"

    def cleaned(self) -> str:
        return "Cleaned"

    def cleaned_more(self, *, item: Name, code: Name) -> str:
        return f"{self.w.name(item)} from {self.w.name(code)}"

    def not_yet(self) -> str:
        return "not yet"

    def lend_title(self) -> str:
        return "Lend kit"

    def lend(self) -> str:
        return "Lend"

    def to(self) -> str:
        return "To"

    def due_back(self) -> str:
        return "Due date"

    def kit_wrong(self) -> str:
        return "Fix the problems in the kit on the shelf before you lend from it."

    def nothing_to_lend(self) -> str:
        return "Nothing on the shelf is in stock."

    def nobody(self) -> str:
        return "You can lend kit to a player whose records are kept."

    def shelf(self) -> str:
        return "Kit on the shelf"

    def lent(self, *, item: Name, code: Name, due_on: str) -> str:
        return f"{self.w.name(item)} lent to {self.w.name(code)}, due {self.w.date(due_on)}."

    def came_back(self, *, item: Name, code: Name) -> str:
        return f"{self.w.name(item)} returned by {self.w.name(code)}. Has it been cleaned?"

    def was_cleaned(self, *, item: Name) -> str:
        return f"{self.w.name(item)} cleaned."

    def extended(self, *, item: Name, code: Name, due_on: str) -> str:
        return f"Loan of {self.w.name(item)} to {self.w.name(code)} extended to {self.w.date(due_on)}."

    def not_kept(self) -> str:
        return "Record consent to keep this player's records first, or note the loan on paper."

    def item_of(self, *, item: Name, kind: Kind, for_one: bool) -> str:
        return f"{self.w.name(item)} ({_KINDS[kind]}{', for one player only' if for_one else ''})"
