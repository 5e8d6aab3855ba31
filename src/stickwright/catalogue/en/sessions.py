"""How long to play, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.sessions import Sessions

__all__ = ["Texts"]

_UNREAD = "No reading was taken with the player tired: repeat the first direction after a block of play."


class Texts(Sessions):
    """Blocks of play."""

    w: English

    def _blocks(self, blocks: int, block_s: float) -> str:
        return f"{blocks} blocks of {self._whole(block_s)}, with 5 to 10 min of rest between them"

    def _whole(self, time_s: float) -> str:
        return self.w.minutes(60.0 * round(time_s / 60))

    def first_blocks(self, *, wished_s: float, blocks: int, block_s: float) -> str:
        return f"To play for {self._whole(wished_s)}, start with {self._blocks(blocks, block_s)}."

    def wish(self, *, wished_s: float, tiring: Text | None, later: Text) -> str:
        told = [f"The player wants to play for {self._whole(wished_s)} at a time."]
        return " ".join([*told, *([self.say(tiring)] if tiring else []), self.say(later)])

    def tiring(self, *, site: Name, time_s: float, effort_share: float) -> str:
        return (
            f"The first blocks are short because the {self.w.name(site)} pushes for {self._whole(time_s)} of that time, at "
            f"{self.w.share(effort_share)} of its comfortable force."
        )

    def read_tired(self, *, site: Name, longest_s: float, blocks: int, block_s: float) -> str:
        most = f"By the tired reading, the {self.w.name(site)} should play for no more than about {self._whole(longest_s)} at a time"
        return f"{most}: {self._blocks(blocks, block_s)}." if blocks else f"{most}."

    def longest_blocks(self, *, blocks: int, block_s: float) -> str:
        return f"When that goes well, play no more than {self._blocks(blocks, block_s)}. {_UNREAD}"

    def lengthen(self) -> str:
        return f"When that goes well, lengthen the blocks step by step. {_UNREAD}"

    def growth(self, *, due: str | None) -> str:
        when = f"by {self.w.date(due)} at the latest" if due else "at least once a year"
        return (
            "Children grow: force, movement range and the chair change within a year. Measure again and check every mount "
            f"{when}, and whenever the chair or its seat is changed."
        )
