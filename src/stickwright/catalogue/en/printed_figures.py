"""What stands around a printed figure, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Text
from stickwright.codes.printed_figures import PrintedFigures, Side

__all__ = ["Texts"]


class Texts(PrintedFigures):
    """Clauses."""

    w: English

    def not_known(self) -> str:
        return self.w.unknown

    def always_on(self) -> str:
        return "always on"

    def without_end(self) -> str:
        return "no limit"

    def under(self, *, most: Text) -> str:
        return f"under {self.say(most)}"

    def or_more(self, *, least: Text) -> str:
        return f"{self.say(least)} or more"

    def no_interval(self, *, why: Text | None) -> str:
        return f"no interval: {self.clause(why)}" if why is not None else "no interval known"

    def interval(self, *, low: Text, high: Text, of_models: bool) -> str:
        return f"{self.say(low)} {self.w.up_to} {self.say(high)}{', spread of models' if of_models else ''}"

    def anything(self) -> str:
        return "anything up to always on: measure 60 s at rest"

    def to_always_on(self, *, least: Text) -> str:
        return f"{self.say(least)} to always on"

    def up_to(self, *, most: Text) -> str:
        return f"up to {self.say(most)}"

    def on_side(self, *, told: Text, side: Side) -> str:
        return f"{self.say(told)} {side}"

    def either_side(self, *, plus: Side, minus: Side, told: Text) -> str:
        return f"{plus} or {minus} {self.say(told)}"

    def within(self, *, sides: tuple[Text, ...], within_share: float) -> str:
        return f"{', '.join(self.say(one) for one in sides)}, each to within {self.w.tenth_share(within_share)}"

    def turned(self, *, turn_rad: float) -> str:
        return self.w.turn(turn_rad)

    def listed(self, *, parts: tuple[Text, ...]) -> str:
        return self.w.all_of(tuple(self.say(one) for one in parts))
