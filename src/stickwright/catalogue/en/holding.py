"""A controller made to be held, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.holding import Holding
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(Holding):
    """In one hand or in two, or resting on something."""

    w: English

    def hand(self, *, side: Literal["left", "right"] | None) -> str:
        return f"{side} hand" if side else "hand"

    def other_site(self, *, site: Name) -> str:
        return f"the {self.w.name(site)} works it, and not the hand that would hold it"

    def too_heavy(self, *, weight: Text, hand: Text, holds_kg: float) -> str:
        return f"too heavy to hold: {self.say(weight)}, and the {self.say(hand)} holds {self.w.amount(holds_kg, 'g')} comfortably"

    def too_long(self, *, weight: Text, hand: Text, holds_s: float, block_s: float) -> str:
        return (
            f"too heavy to hold for long: {self.say(weight)}, which the {self.say(hand)} holds for about "
            f"{self.w.amount(holds_s, 'min')}, and it is played for {self.w.amount(block_s, 'min')} at a time"
        )

    def weight(self, *, whole_kg: float, on_grip: tuple[Name, ...], each_kg: float | None) -> str:
        beside = f" with {self.w.names(on_grip)} on its grip" if on_grip else ""
        each = "" if each_kg is None else f", {self.w.amount(each_kg, 'g')} for each hand"
        return f"it weighs {self.w.amount(whole_kg, 'g')}{beside}{each}"

    def reasons(self, *, told: tuple[Text, ...]) -> str:
        return "; ".join(self.clause(one) for one in told)

    def mass_of(self, *, device: Name, on_grip: bool) -> str:
        return f"Mass of {self.w.name(device)}{' on the grip' if on_grip else ''}"

    def mass(self, *, mass_kg: float) -> str:
        return self.w.amount(mass_kg, "g")

    def not_counted(self) -> str:
        return "not counted"

    def not_weighed(self) -> str:
        return "not weighed"

    def weigh(self) -> str:
        return "weigh it on a kitchen scale, and enter its mass in the kit"

    def holds_of(self, *, hand: Text) -> str:
        return f"What the {self.say(hand)} holds comfortably"

    def holds_usual(self, *, mass_kg: float) -> str:
        return f"{self.w.amount(mass_kg, 'g')} through a block of play"

    def not_tried(self) -> str:
        return "not tried"

    def try_holding(self) -> str:
        return "try what the hand holds and how long, and enter both for a control site of that hand"
