"""Where in a file something stands, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(FilePlaces):
    """Steps of a place."""

    w: English

    def line(self, *, number: int) -> str:
        return f"line {number}"

    def row(self, *, number: int) -> str:
        return f"row {number}"

    def byte(self, *, number: int) -> str:
        return f"byte {number}"

    def value(self, *, number: int) -> str:
        return f"{self.w.ordinal(number)} value"

    def table(self, *, key: Name, number: int) -> str:
        return f"{self.w.ordinal(number)} {self.w.name(key)}"

    def named(self, *, key: Name, name: Name) -> str:
        return f'{self.w.name(key)} "{self.w.name(name)}"'

    def towards(self, *, key: Name, angle: Name, unit: Literal["deg", "rad"]) -> str:
        return f"{self.w.name(key)} at {self.w.name(angle)}{'°' if unit == 'deg' else ' rad'}"

    def at(self, *, where: tuple[Text, ...], told: Text) -> str:
        return f"{', '.join(self.say(step) for step in where)}: {self.say(told)}"
