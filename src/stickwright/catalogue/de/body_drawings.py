"""The picture of the seated player, in German."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.de import German
from stickwright.codes.body_drawings import BodyDrawings
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(BodyDrawings):
    """Beschriftung und Satz."""

    w: German

    def label(self, *, label: Literal["right", "front", "left"]) -> str:
        return {"right": "rechts der Person", "front": "von vorn gesehen", "left": "links der Person"}[label]

    def alt(self, *, marks: tuple[Text, ...]) -> str:
        told = "; ".join(self.clause(one) for one in marks)
        return f"Die sitzende Person von vorn, mit einer Nummer an jeder Stelle, die steuert. {told}."

    def mark(self, *, number: int, site: Name, works: Text) -> str:
        return f"{self.w.whole(number)} {self.w.name(site)}: {self.say(works)}"
