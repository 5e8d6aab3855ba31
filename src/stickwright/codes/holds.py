"""How long a push can be held, and what that rests on."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["Holds", "Joint"]

Joint = Literal["general", "hand", "elbow", "shoulder", "knee", "ankle", "trunk"]
"""Joint whose published endurance curve is taken; "general" is the curve over all joints."""


class Holds(Topic):
    """Reasons beside a time: clauses without a capital letter or full stop, unless the note says a sentence."""

    @abstractmethod
    def published(self, *, joint: Joint) -> str:
        """The time comes from the published curve of healthy adults [frey-law-avin-2010]."""

    @abstractmethod
    def own(self) -> str:
        """The time is the player's own hold."""

    @abstractmethod
    def own_carried(self, *, joint: Joint) -> str:
        """The time is the player's own hold, carried to this effort along the published curve."""

    @abstractmethod
    def over_an_hour(self) -> str:
        """The time is not counted beyond an hour."""

    @abstractmethod
    def no_curve(self) -> str:
        """No value: no curve exists for neck and face; measure one hold at the force that the game needs."""

    @abstractmethod
    def one_hold(self) -> str:
        """No interval: one hold was measured."""

    @abstractmethod
    def same_holds(self) -> str:
        """No interval: all holds were of one length."""

    @abstractmethod
    def by_curve(self, *, joint: Joint, models: int, note: Text | None) -> str:
        """Assumed: the published curve, with the spread between so many published models; `note`: how to read it."""

    @abstractmethod
    def below_tenth(self) -> str:
        """A sentence: below 10% of maximal force the curves were not measured."""

    @abstractmethod
    def below_quarter(self) -> str:
        """A sentence: below 25% of maximal force the published models differ up to fourfold."""

    @abstractmethod
    def harder_than_measured(self, *, measured_share: float, effort_share: float) -> str:
        """No value: the hold was measured at a lower effort than this one, and no curve exists for neck and face."""

    @abstractmethod
    def at_least(self, *, measured_share: float) -> str:
        """Assumed: at least as long as the hold measured at a higher effort."""

    @abstractmethod
    def carried(self, *, measured_share: float, effort_share: float, joint: Joint) -> str:
        """Assumed: the player's own hold at one effort, carried to another along the published curve."""

    @abstractmethod
    def few_simulations(self) -> str:
        """No interval: too few simulations."""
