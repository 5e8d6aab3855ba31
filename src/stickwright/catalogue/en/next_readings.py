"""The next reading, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name
from stickwright.codes.next_readings import NextReadings, Reading

__all__ = ["Texts"]

_WHAT = {"force": "comfortable force", "reach": "movement range", "rest force": "resting force"}


class Texts(NextReadings):
    """The next reading, or that enough is measured."""

    w: English

    def _for(self, action: Name | None) -> str:
        return f" for {self.w.name(action)}, the least certain of all," if action else ""

    def no_site(self) -> str:
        return "There is no control site left to measure: choose another one with the treating team."

    def first_force(self, *, site: Name) -> str:
        return (
            f"Measure the comfortable force at the {self.w.name(site)} forward, right, left and back, three times each."
        )

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
        if what == "recording":
            asked = f"record 20 s of holding still on a stick of the kit at the {self.w.name(site)}"
        else:
            where = f" {self.w.direction(direction_rad)}" if direction_rad is not None else ""
            asked = f"measure the {_WHAT[what]}{where} at the {self.w.name(site)} three times"
        return (
            f"Most worth the player's effort: {asked}. It would raise the chance that {self.say(claim)} from "
            f"{self.w.chance(now_share)} to about {self.w.chance(then_share)}."
        )

    def none_fits(self) -> str:
        return "no stick in this kit fits"

    def keeps_limits(self, *, stick: Name, site: Name) -> str:
        return f"{self.w.name(stick)} at the {self.w.name(site)} keeps every limit"

    def right_one(self, *, stick: Name, site: Name, sticks: int, sites: int) -> str:
        compared = self.w.plural(sticks, one="one stick", other=f"{sticks} sticks")
        at = self.w.plural(sites, one="", other=f" at {sites} sites")
        return f"{self.w.name(stick)} at the {self.w.name(site)} is the right one of {compared}{at}"

    def enough_none_fits(self, *, action: Name | None, could_share: float) -> str:
        return (
            f"More readings{self._for(action)} would not make a stick in this kit fit (the chance that one does is "
            f"{self.w.chance(could_share)}). Change the support, the kit or what the game needs instead."
        )

    def enough(self, *, action: Name | None, claim: Message, chance_share: float) -> str:
        return (
            f"More readings{self._for(action)} would not change the choice. The chance that {self.say(claim)} is "
            f"{self.w.chance(chance_share)}, given what was measured and what is assumed."
        )

    def no_single(
        self, *, action: Name | None, claim: Message, chance_share: float, gain_share: float, sticks: int
    ) -> str:
        tried = self.w.plural(sticks, one="the stick", other="the first two sticks")
        return (
            f"No single reading{self._for(action)} raises the chance of {self.w.chance(chance_share)} that {self.say(claim)} by "
            f"more than {self.w.share(gain_share)}. Let the player try {tried} instead."
        )
