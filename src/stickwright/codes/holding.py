"""A controller made to be held: in one hand or in two, or resting on something, and why."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Holding"]


class Holding(Topic):
    """Clauses without full stop."""

    @abstractmethod
    def hand(self, *, side: Literal["left", "right"] | None) -> str:
        """A hand, behind the article; None where its side is not recorded."""

    @abstractmethod
    def other_site(self, *, site: Name) -> str:
        """Why it rests: a site works it that is not the hand that would hold it."""

    @abstractmethod
    def too_heavy(self, *, weight: Text, hand: Text, holds_kg: float) -> str:
        """Why it rests: more than the hand holds comfortably."""

    @abstractmethod
    def too_long(self, *, weight: Text, hand: Text, holds_s: float, block_s: float) -> str:
        """Why it rests: the hand does not hold it as long as it is played at a time."""

    @abstractmethod
    def weight(self, *, whole_kg: float, on_grip: tuple[Name, ...], each_kg: float | None) -> str:
        """What it weighs, with which sticks on its grip, and how much of that each hand holds."""

    @abstractmethod
    def reasons(self, *, told: tuple[Text, ...]) -> str:
        """Several reasons."""

    @abstractmethod
    def mass_of(self, *, device: Name, on_grip: bool) -> str:
        """Name of an assumed figure: the mass of a controller, or of a stick on its grip."""

    @abstractmethod
    def mass(self, *, mass_kg: float) -> str:
        """The usual mass."""

    @abstractmethod
    def not_counted(self) -> str:
        """Its mass is not counted."""

    @abstractmethod
    def not_weighed(self) -> str:
        """Why it is assumed: nobody weighed it."""

    @abstractmethod
    def weigh(self) -> str:
        """What replaces it: weigh it, and enter its mass in the kit."""

    @abstractmethod
    def holds_of(self, *, hand: Text) -> str:
        """Name of an assumed figure: what a hand holds comfortably."""

    @abstractmethod
    def holds_usual(self, *, mass_kg: float) -> str:
        """So much through a block of play."""

    @abstractmethod
    def not_tried(self) -> str:
        """Why it is assumed: nobody tried."""

    @abstractmethod
    def try_holding(self) -> str:
        """What replaces it: the mass that the hand holds and how long, entered for a site of that hand."""
