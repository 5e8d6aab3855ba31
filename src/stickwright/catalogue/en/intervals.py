"""Why a figure has no interval, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.intervals import Intervals

__all__ = ["Texts"]


class Texts(Intervals):
    """Shared by all figures that are taken from recordings."""

    w: English

    def never_changes(self, *, where: Literal["rest", "hold", "rests"]) -> str:
        return {
            "rest": "The value never changes at rest, and its step is not known.",
            "hold": "The value never changes.",
            "rests": "The value never changes in these rests, and its step is not known.",
        }[where]

    def slow_sway(self, *, what: Literal["rest", "hold"]) -> str:
        return f"The {what} sways too slowly for an interval. {'Rest' if what == 'rest' else 'Hold'} for longer."

    def few_readings(self, *, what: Literal["rest", "press"]) -> str:
        return {
            "rest": "There are too few independent readings for an interval. Rest for longer.",
            "press": "There are too few independent presses for an interval. Press for longer.",
        }[what]

    def too_short(self) -> str:
        return "The recording is too short to cut into parts and compare them."

    def parts_disagree(self) -> str:
        return "Parts of the recording do not agree well enough for an interval."

    def no_movement(self) -> str:
        return "There was no movement to take it from."

    def few_movements(self, *, movements: int, least: int) -> str:
        return (
            f"{self.w.whole(movements)} {self.w.plural(movements, one='movement is', other='movements are')} too few for an "
            f"interval. At least {self.w.whole(least)} are needed."
        )

    def nothing_moved(self) -> str:
        return "Nothing moved."

    def no_block(self, *, block_s: float) -> str:
        return f"No {self.w.amount(block_s, 's')} without a gap."

    def three_holds(self) -> str:
        return "Three holds are needed, with pushes at least half as strong again as each other."
