"""Keys of a file, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.file_keys import FileKeys, Kind
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


def _of(kind: Kind | None) -> str:
    return kind.replace("_", " ") if kind is not None else "another kind"


class Texts(FileKeys):
    """Noun phrases, and some sentences."""

    w: English

    def either(self, *, keys: tuple[Name, ...], meaning: Text | None) -> str:
        return f"{self._any(keys)}{self._meaning(meaning)}"

    def words(self, *, key: Name, choices: tuple[Name, ...], meaning: Text | None) -> str:
        some = f", one of {self._any(choices)}" if choices else ""
        return f'{self.w.name(key)} = "..."{some}{self._meaning(meaning)}'

    def table(self, *, heading: Name, meaning: Text | None) -> str:
        return f"a table {self.w.name(heading)}{self._meaning(meaning)}"

    def at_least_one(self, *, heading: Name) -> str:
        return f"at least one {self.w.name(heading)}"

    def several(self) -> str:
        return "Use double brackets, once for each."

    def only_one(self) -> str:
        return "Use single brackets: there is only one."

    def other_kind(self, *, key: Name, kind: Kind | None) -> str:
        return f"{self.w.name(key)}, which ends in a unit of {_of(kind)}"

    def of_kind(self, *, kind: Kind | None, keys: tuple[Name, ...]) -> str:
        return f"a unit of {_of(kind)}: {self._any(keys)}"

    def no_unit(self, *, key: Name) -> str:
        return f"{self.w.name(key)} without a unit"

    def inside(self, *, key: Name, table: Name) -> str:
        return f"{self.w.name(key)} inside {self._heading(table)}"

    def belongs(self, *, key: Name, table: Name | None) -> str:
        return f"{self.w.name(key)} {'at the top of the file' if table is None else f'in {self._heading(table)}'}"

    def move_up(self, *, table: Name | None) -> str:
        place = "the first table of the file" if table is None else f"the first table inside {self._heading(table)}"
        return f"Move the line up, above {place}."

    def unknown(self, *, key: Name) -> str:
        return f"the unknown key {self.w.name(key)}"

    def known(self, *, table: Name | None) -> str:
        return f"a known key of {'this file' if table is None else self._heading(table)}"

    def field(self, *, typed: Name) -> str:
        return f'a field "{self.w.name(typed)}"'

    def known_field(self) -> str:
        return "a known field"

    def point(self, *, described: Text | None) -> str:
        order = "Right, forward and up, in this order."
        return order if described is None else f"{order} {self.say(described)}"

    def true_is_no_number(self) -> str:
        return "true and false answer yes-or-no questions only."

    def _any(self, keys: tuple[Name, ...]) -> str:
        return self.w.any_of(tuple(self.w.name(one) for one in keys))

    def _heading(self, table: Name) -> str:
        return f"[[{self.w.name(table)}]]"

    def _meaning(self, meaning: Text | None) -> str:
        if meaning is None:
            return ""
        return f" ({self.clause(meaning)})"
