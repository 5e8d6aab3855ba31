"""How long to play, in German."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.message import Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Spielzeiten."""

    w: German

    def first_blocks(self, *, wished_s: float, blocks: int, block_s: float) -> str:
        return (
            f"Für {self.w.minutes(wished_s)} Spiel: beginnen Sie mit {self.w.whole(blocks)} mal {self.w.minutes(block_s)}. "
            "Dazwischen sind "
            f"{self.w.whole(5)} bis {self.w.minutes(600)} Pause."
        )
