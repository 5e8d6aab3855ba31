"""Forces and movement ranges that are unusual, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.amounts import TypedUnit
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.sites import Part
from stickwright.codes.usual_values import Sort, UsualValues

__all__ = ["Texts"]

_WORDS = {"force": "comfortable force", "length": "movement range"}
_DEVICE = {"force": "the gauge", "length": "the tape"}


class Texts(UsualValues):
    """Questions about unit and decimal point."""

    w: English

    def values(self, *, count: int, typed: Message) -> str:
        return self.clause(typed) if count == 1 else f"{self.w.whole(count)} values: {self.clause(typed)}"

    def limit(self, *, part: Part, limit: Message, usual: Message) -> str:
        return f"0 to {self.clause(limit)} for a {self.w.body_part(part)} (usually {self.clause(usual)})"

    def usual(self, *, part: Part, sort: Sort, usual: Message) -> str:
        return f"{self.clause(usual)}, the usual {_WORDS[sort]} of a {self.w.body_part(part)}"

    def gauge_shows(self, *, sort: Sort, unit: TypedUnit, key: Name, typed: Name, converted: Message) -> str:
        return f"If {_DEVICE[sort]} shows {self._as(unit, typed, converted)}, name the list {self.w.name(key)}."

    def decimal_point(self) -> str:
        return "Check the decimal point."

    def look_like(self, *, count: int, unit: TypedUnit, key: Name, typed: Name, converted: Message) -> str:
        this, look, lists = ("This", "looks", "list") if count == 1 else ("These", "look", "lists")
        return (
            f"{this} {look} like {self._as(unit, typed, converted)}: if so, name the {lists} {self.w.name(key)}. Nothing was "
            "converted."
        )

    def other_unit(self, *, found: Text, usual: Text, remedy: Text) -> str:
        return f"found {self.clause(found)}, expected {self.clause(usual)}. {self.say(remedy)}"

    def unusual(
        self,
        *,
        count: int,
        sort: Sort,
        typed: Message,
        side: Literal["below", "above"],
        part: Part,
        usual: Message,
        first_at: tuple[Text, ...],
        unit: TypedUnit | None,
        as_unit: Message | None,
    ) -> str:
        values = self.w.plural(count, one="1 value", other=f"{self.w.whole(count)} values")
        lie = self.w.plural(count, one="is", other="are")
        place = ", ".join(self.clause(step) for step in first_at)
        converted = f" (as {self.w.long_unit(unit)}: {self.clause(as_unit)})" if unit and as_unit is not None else ""
        return (
            f"{values} of {_WORDS[sort]} ({self.clause(typed)}) {lie} {side} the usual range for a {self.w.body_part(part)} "
            f"({self.clause(usual)}), first at {place}. If right for this player, leave unchanged. If not, check the unit{converted} "
            "and the decimal point."
        )

    def _as(self, unit: TypedUnit, typed: Name, converted: Message) -> str:
        return f"{self.w.long_unit(unit)} ({self.w.name(typed)} would be {self.clause(converted)})"
