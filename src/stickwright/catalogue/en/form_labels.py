"""Every field that can be entered on a page, its choices, and the tables that fields stand in; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.catalogue.en.field_words import CHOICES, FIELDS, TABLES
from stickwright.catalogue.writer import GAP
from stickwright.codes.form_labels import Also, FormLabels
from stickwright.codes.message import Name
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES

__all__ = ["Texts"]

_ALSO: dict[Also, str] = {
    "directions": "Degrees: 0 right, 90 forward, 180 left, 270 back",
    "point": "Right, forward, up from the seat reference point: three numbers",
    "sides": "Length, width, height",
    "share": "1 means 100%, 0.5 means 50%",
    "repeats": "Separate repeats with spaces",
    "lines": "One on each line",
}


def _one(table: str) -> str:
    return TABLES.get(table, (table, table))[1]


def _words(noun: str, field: str) -> tuple[str, str]:
    return FIELDS.get(f"{noun}.{field}") or FIELDS.get(field) or (field, field)


class Texts(FormLabels):
    """Every field that can be entered on a page, its choices, and the tables that fields stand in."""

    w: English

    def label(self, *, noun: str, field: str) -> str:
        return _words(noun, field)[0]

    def hint(self, *, noun: str, field: str, also: tuple[Also, ...]) -> str:
        parts = (_words(noun, field)[1], *(_ALSO[one] for one in also))
        return "".join(f"{part}. " for part in parts if part).rstrip()

    def choice(self, *, word: str) -> str:
        if word in (*STICK_ROLES, *BUTTON_ROLES):
            return self.w.role(word)
        return CHOICES.get(word, word)

    def table(self, *, table: str) -> str:
        return TABLES.get(table, (table,))[0]

    def about(self, *, table: str) -> str:
        return TABLES.get(table, (table, table, table))[2]

    def add(self, *, table: str) -> str:
        return f"Add {_one(table)}"

    def new(self, *, table: str) -> str:
        return f"New {_one(table)}"

    def numbered(self, *, table: str, number: int) -> str:
        return f"{_one(table)} {self.w.whole(number)}"

    def pair(self, *, names: tuple[Name, ...]) -> str:
        return self.w.names(names)

    def amount(self, *, value: Name, unit: Name) -> str:
        gap = "" if unit == "°" else GAP
        return f"{self.w.name(value)}{gap}{self.w.name(unit)}"
