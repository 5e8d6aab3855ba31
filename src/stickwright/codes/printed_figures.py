"""What stands around a printed figure: why it has no interval, its upper end, its side."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["PrintedFigures", "Side"]

Side = Literal["right", "left", "forward", "back", "anticlockwise", "clockwise"]


class PrintedFigures(Topic):
    """Clauses in a cell or within a sentence. Figures are told already, with their digits and units."""

    @abstractmethod
    def not_known(self) -> str:
        """In place of a figure."""

    @abstractmethod
    def always_on(self) -> str:
        """In place of a rate a minute: the input never stops."""

    @abstractmethod
    def without_end(self) -> str:
        """In place of a figure that has no upper end."""

    @abstractmethod
    def under(self, *, most: Text) -> str:
        """In place of a rate a minute that is smaller than that."""

    @abstractmethod
    def or_more(self, *, least: Text) -> str:
        """In brackets behind a figure: its lower end, where it has no upper one."""

    @abstractmethod
    def no_interval(self, *, why: Text | None) -> str:
        """In brackets behind a figure: it has no interval, and why where that is known."""

    @abstractmethod
    def interval(self, *, low: Text, high: Text, of_models: bool) -> str:
        """In brackets behind a figure: the ends of its interval; `of_models`: how far published models differ."""

    @abstractmethod
    def anything(self) -> str:
        """In brackets behind a rate that is not known: it may be nothing or all the time; what to measure."""

    @abstractmethod
    def to_always_on(self, *, least: Text) -> str:
        """In brackets behind a rate: from that to all the time."""

    @abstractmethod
    def up_to(self, *, most: Text) -> str:
        """Upper end of a rate, in its place or in brackets behind it."""

    @abstractmethod
    def on_side(self, *, told: Text, side: Side) -> str:
        """A figure with the side to which it is, or the way in which it turns."""

    @abstractmethod
    def either_side(self, *, plus: Side, minus: Side, told: Text) -> str:
        """A figure that is not known, with the two sides to which it may be."""

    @abstractmethod
    def within(self, *, sides: tuple[Text, ...], within_share: float) -> str:
        """Two figures with their sides, each known to that share of full output."""

    @abstractmethod
    def turned(self, *, turn_rad: float) -> str:
        """How far something is turned (anticlockwise), seen from above."""

    @abstractmethod
    def listed(self, *, parts: tuple[Text, ...]) -> str:
        """Names or figures in a row."""
