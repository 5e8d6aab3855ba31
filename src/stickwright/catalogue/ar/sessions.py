"""How long to play, in Arabic."""

from __future__ import annotations

from stickwright.catalogue.ar import Arabic
from stickwright.codes.message import Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Said as in English."""

    w: Arabic

    def first_blocks(self, *, wished_s: float, blocks: int, block_s: float) -> str:
        return (
            f"للعب مدة {self.w.minutes(wished_s)}: ابدأ بفترات عددها {self.w.whole(blocks)}، كل منها "
            f"{self.w.minutes(block_s)}. استرح بينها من "
            f"{self.w.minutes(300)} إلى {self.w.minutes(600)}."
        )
