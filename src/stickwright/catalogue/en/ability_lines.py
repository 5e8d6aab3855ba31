"""The ability of a site in a run of text, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.ability_lines import AbilityLines
from stickwright.codes.message import Text

__all__ = ["Texts"]


class Texts(AbilityLines):
    """Sentences."""

    w: English

    def _run(self, directions: tuple[Text, ...]) -> str:
        return "; ".join(self.clause(one) for one in directions)

    def smoothed(self) -> str:
        return "Smoothed round the circle; the readings themselves are the points drawn, and stand in the plan's JSON file."

    def readings(self, *, directions: tuple[Text, ...]) -> str:
        return (
            "Smoothed round the circle; sticks are judged by these figures. Means of the readings themselves: "
            f"{self._run(directions)}."
        )

    def direction(self, *, direction_rad: float, figures: tuple[Text, ...]) -> str:
        return f"{self.w.direction(direction_rad)} {', '.join(self.say(one) for one in figures)}"

    def ability(self, *, directions: tuple[Text, ...]) -> str:
        return f"Comfortable force and movement range, smoothed round the circle: {self._run(directions)}."
