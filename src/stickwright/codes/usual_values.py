"""Forces and movement ranges that are unusual for a control site: questions about unit and decimal point, never a judgement."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.amounts import TypedUnit
from stickwright.codes.message import Message, Name, Text, Topic
from stickwright.codes.sites import Part

__all__ = ["Sort", "UsualValues"]

Sort = Literal["force", "length"]


class UsualValues(Topic):
    """What was typed, what is usual, and what the player or the gauge would have to be for it to be right."""

    @abstractmethod
    def values(self, *, count: int, typed: Message) -> str:
        """What was found: so many values, from the lowest to the highest. No full stop."""

    @abstractmethod
    def limit(self, *, part: Part, limit: Message, usual: Message) -> str:
        """What would have been accepted: up to `limit`; what is usual. No full stop."""

    @abstractmethod
    def usual(self, *, part: Part, sort: Sort, usual: Message) -> str:
        """What is usual of such a control site. No full stop."""

    @abstractmethod
    def gauge_shows(self, *, sort: Sort, unit: TypedUnit, key: Name, typed: Name, converted: Message) -> str:
        """If gauge or tape shows another unit, the key to use; one value as typed, and what it would be then."""

    @abstractmethod
    def decimal_point(self) -> str:
        """Look at the decimal point."""

    @abstractmethod
    def look_like(self, *, count: int, unit: TypedUnit, key: Name, typed: Name, converted: Message) -> str:
        """All values would be usual in another unit: the key to use; one value as typed, and what it would be then."""

    @abstractmethod
    def other_unit(self, *, found: Text, usual: Text, remedy: Text) -> str:
        """A question: what was found, what is usual, and the other unit; the parts are messages of this topic."""

    @abstractmethod
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
        """Some values are below or above what is usual; where the first of them stands; the unit (None: there is none) in which they
        would be usual, and what the lowest would be then."""
