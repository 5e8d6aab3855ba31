"""Which reading is most worth the player's effort."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Topic

__all__ = ["NextReadings", "Reading"]

Reading = Literal["force", "reach", "rest force", "recording"]


class NextReadings(Topic):
    """The next reading, or that enough is measured."""

    @abstractmethod
    def no_site(self) -> str:
        """No site is left to measure."""

    @abstractmethod
    def first_force(self, *, site: Name) -> str:
        """Nothing was measured yet: the comfortable force first."""

    @abstractmethod
    def take(
        self,
        *,
        what: Reading,
        direction_rad: float | None,
        site: Name,
        claim: Message,
        now_share: float,
        then_share: float,
    ) -> str:
        """Take this reading three times (a recording: 20 s of holding still); what it would do to the chance of the claim."""

    @abstractmethod
    def none_fits(self) -> str:
        """A claim, as part of a sentence after "that": no stick of this kit fits."""

    @abstractmethod
    def keeps_limits(self, *, stick: Name, site: Name) -> str:
        """A claim, as part of a sentence after "that": a stick keeps every limit; it was compared with no other."""

    @abstractmethod
    def right_one(self, *, stick: Name, site: Name, sticks: int, sites: int) -> str:
        """A claim, as part of a sentence after "that": a stick is the right one of so many compared, at so many sites."""

    @abstractmethod
    def enough_none_fits(self, *, action: Name | None, could_share: float) -> str:
        """More readings would not make a stick fit (the chance that one does); `action`: of the least sure of several."""

    @abstractmethod
    def enough(self, *, action: Name | None, claim: Message, chance_share: float) -> str:
        """More readings would not change the choice; the chance of the claim."""

    @abstractmethod
    def no_single(
        self, *, action: Name | None, claim: Message, chance_share: float, gain_share: float, sticks: int
    ) -> str:
        """No single reading raises the chance of the claim by more than `gain_share`: let the player try."""
