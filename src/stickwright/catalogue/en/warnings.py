"""What is doubtful in any file, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.kinds import Kind
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.warnings import Named, Warnings

__all__ = ["Texts"]

_NAMED: dict[Named, str] = {
    "action": "an action",
    "extension": "a shaft extension",
    "landmark": "a landmark",
    "site": "a site",
    "stick": "a stick",
    "topper": "a topper",
    "topper_or_form": "a topper, or a form of topper,",
}


class Texts(Warnings):
    """Names, repeats, keys."""

    w: English

    def place(self, *, where: tuple[Text, ...]) -> str:
        return ", ".join(said for step in where if (said := self.clause(step)))

    def second_called(self, *, kind: Kind, name: Name, line: int) -> str:
        return f'a second {self.w.kind(kind)} called "{self.w.name(name)}" (the first: line {self.w.whole(line)})'

    def another_name(self, *, kind: Kind) -> str:
        return f"a different name for each {self.w.kind(kind)}"

    def rename_or_delete(self) -> str:
        return "Choose another name, or delete one of the two."

    def reserved(self, *, kind: Kind, name: Name) -> str:
        return f'a {self.w.kind(kind)} called "{self.w.name(name)}"'

    def not_reserved(self, *, words: tuple[Name, ...]) -> str:
        return (
            f"a name other than {self.w.any_of(tuple(self.w.name(one) for one in words))}: in a request these words say what "
            "happens to an action"
        )

    def name_of(self, *, what: Named, file: Name) -> str:
        return f"the name of {_NAMED[what]} in {self.w.name(file)}"

    def condition_of_state(self) -> str:
        return "the condition of one of the states of this site"

    def delete_one(self) -> str:
        return "Delete one of the two."

    def swap(self) -> str:
        return "Swap the two."

    def take_out(self) -> str:
        return "Take it out of the list."

    def assigned(self, *, key: Name, value: Text) -> str:
        return f"{self.w.name(key)} = {self.clause(value)}"

    def beside(self, *, one: Text, other: Text) -> str:
        return f"{self.clause(one)} with {self.clause(other)}"

    def at_line(self, *, name: Name | None, line: int) -> str:
        called = f'"{self.w.name(name)}"' if name is not None else "one without a name"
        return f"{called} (line {self.w.whole(line)})"

    def retired_key(self, *, more: int) -> str:
        places = self.w.plural(more, one="place", other="places")
        others = f" (also at {self.w.whole(more)} more {places})" if more else ""
        return f"this key is no longer used and is ignored{others}. You can delete it."

    def repeats_apart(self, *, at: Text, lowest: Name, highest: Name) -> str:
        return (
            f"the repeats {self.clause(at)} run from {self.w.name(lowest)} to {self.w.name(highest)}. Check for a slipped decimal "
            "point, a decimal comma (0,44 in a list is two numbers) or a value in another unit."
        )

    def identical_repeats(self, *, at: tuple[Message, ...], first_at: tuple[Text, ...], press: bool) -> str:
        directions = self.w.all_of(tuple(self.clause(one) for one in at))
        place = self.place(where=first_at)
        instead = "If they were copied, measure again." if press else "Scatter will be taken from the other directions."
        return f"all repeats {directions} are identical, first in {place}. Were they copied or rounded? {instead}"

    def at_degrees(self, *, typed: Name) -> str:
        return f"at {self.w.name(typed)}°"

    def at_radians(self, *, typed: Name) -> str:
        return f"at {self.w.name(typed)} rad"

    def at_first(self) -> str:
        return "at the first direction"

    def at_press(self) -> str:
        return "of the press"
