"""The picture of the seated player with a numbered marker at each control site in use."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["BodyDrawings"]


class BodyDrawings(Topic):
    """Labels over the picture, and the picture in a sentence."""

    @abstractmethod
    def label(self, *, label: Literal["right", "front", "left"]) -> str:
        """Over the picture: the player's right (on the left of the paper), that it is seen from the front, the player's left."""

    @abstractmethod
    def alt(self, *, marks: tuple[Text, ...]) -> str:
        """The picture in a sentence, then each `mark`."""

    @abstractmethod
    def mark(self, *, number: int, site: Name, works: Text) -> str:
        """Clause: a marker's number, its control site, and what that works."""
