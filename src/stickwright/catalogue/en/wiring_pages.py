"""What is plugged into what, and the parts list, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text
from stickwright.codes.wiring_pages import Column, Heading, WiringPages

__all__ = ["Texts"]

_HEADINGS: dict[Heading, str] = {
    "hub": "Hub connections",
    "missing": "Missing:",
    "lengths": "Cable length needed:",
    "current": "Current:",
    "changes": "From game to game:",
    "steps": "Plug in and try in this order",
    "parts": "Parts",
    "contacts": "Contacts, for the practitioner",
    "wiring": "Wiring",
}
_COLUMNS: dict[Column, str] = {
    "tag": "tag",
    "from": "from",
    "plug": "plug",
    "through": "lead or adapter",
    "to": "to",
    "as": "game input",
    "length": "length",
}


class Texts(WiringPages):
    """Cables, currents and parts."""

    w: English

    def title(self, *, player: Name, wired: bool) -> str:
        return f"{'Wiring and parts' if wired else 'Parts'}: player {self.w.name(player)}"

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def column(self, *, column: Column) -> str:
        return _COLUMNS[column]

    def missing(self, *, tag: Name, missing: Text) -> str:
        return f"cable {self.w.name(tag)}: {self.clause(missing)}."

    def lacking(self, *, tag: Name, missing: Text) -> str:
        return f"{self.w.name(tag)}: {self.clause(missing)}"

    def together(self, *, parts: tuple[Text, ...]) -> str:
        return f"{'; '.join(self.clause(one) for one in parts)}."

    def price(self, *, total_price: float | None) -> str:
        return self.w.unknown if total_price is None else self.w.fixed(total_price)

    def part_note(self, *, note: Text) -> str:
        return f"{self.w.capital(self.clause(note))}."

    def pieces(self, *, count: int, part: Text) -> str:
        return f"{count} × {self.say(part)}"

    def all_in_stock(self) -> str:
        return "Everything is in stock."

    def to_order(self, *, parts: tuple[Text, ...], total_price: float | None, unpriced: bool) -> str:
        names = self.w.all_of(tuple(self.say(one) for one in parts))
        if not unpriced:
            return f"To order: {names}; {self.w.fixed(total_price or 0.0)} in all, in the currency of the kit's prices."
        partly = f"; {self.w.fixed(total_price)} for those with a price" if total_price is not None else ""
        return f"To order: {names}{partly}. The total is not known, because a price is missing."

    def still_missing(self, *, missing: tuple[Text, ...]) -> str:
        return f"Still missing: {'; '.join(self.clause(one) for one in missing)}."

    def noted(self, *, part: Text, note: Text) -> str:
        return f"{self.say(part)}: {self.say(note)}"

    def wire(
        self,
        *,
        tag: Name,
        device: Text,
        through: tuple[Name, ...],
        socket: Text,
        role: Role | None,
        missing: Text | None,
    ) -> str:
        way = " -> ".join((self.say(device), *(self.w.name(one) for one in through), self.say(socket)))
        acts = f", acts as the {self.w.role(role)}" if role is not None else ""
        lacks = f"; MISSING: {self.clause(missing)}" if missing is not None else ""
        return f"{self.w.name(tag)}: {way}{acts}{lacks}"

    def paired(self, *, tag: Name, device: Text, hub: Name | None) -> str:
        return f"{self.w.name(tag)}: {self.say(device)}, paired{f' with {self.w.name(hub)}' if hub else ''}, no cable"

    def contacts(self, *, tags: tuple[Name, ...], contacts: tuple[Text, ...]) -> str:
        return f"{', '.join(self.w.name(one) for one in tags)}: {'; '.join(self.say(one) for one in contacts)}"
