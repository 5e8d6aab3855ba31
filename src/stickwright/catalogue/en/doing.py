"""What the program is working on, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.doing import Doing

__all__ = ["Texts"]


class Texts(Doing):
    """A few words each."""

    w: English

    def beginning(self) -> str:
        return "beginning"

    def sharing(self) -> str:
        return "control layout"

    def next_reading(self) -> str:
        return "next reading"

    def done(self) -> str:
        return "done"
