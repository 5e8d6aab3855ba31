"""The picture of the seated player, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.body_drawings import BodyDrawings
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_LABELS = {"right": "the player's right", "front": "seen from the front", "left": "the player's left"}


class Texts(BodyDrawings):
    """Labels and sentences."""

    w: English

    def label(self, *, label: Literal["right", "front", "left"]) -> str:
        return _LABELS[label]

    def alt(self, *, marks: tuple[Text, ...]) -> str:
        told = "; ".join(self.clause(one) for one in marks)
        return f"The player seated, seen from the front, with a numbered marker at each control site in use. {told}."

    def mark(self, *, number: int, site: Name, works: Text) -> str:
        return f"{number} {self.w.name(site)}: {self.say(works)}"
