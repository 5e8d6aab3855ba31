"""The picture of the seated player, in Arabic."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.ar import Arabic
from stickwright.codes.body_drawings import BodyDrawings
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(BodyDrawings):
    """Said as in English."""

    w: Arabic

    def label(self, *, label: Literal["right", "front", "left"]) -> str:
        return {"right": "يمين اللاعب", "front": "المنظر من الأمام", "left": "يسار اللاعب"}[label]

    def alt(self, *, marks: tuple[Text, ...]) -> str:
        told = "؛ ".join(self.clause(one) for one in marks)
        return f"اللاعب جالسًا من الأمام، مع رقم عند كل موضع تحكم. {told}."

    def mark(self, *, number: int, site: Name, works: Text) -> str:
        return f"{self.w.whole(number)} {self.w.name(site)}: {self.say(works)}"
