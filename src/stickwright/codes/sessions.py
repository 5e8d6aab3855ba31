"""How long to play, and when to look again."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Sessions"]


class Sessions(Topic):
    """Blocks of play, from what is wished and what was read; growth of a child."""

    @abstractmethod
    def first_blocks(self, *, wished_s: float, blocks: int, block_s: float) -> str:
        """In what blocks to play at first, where the player wants to play longer than one block."""

    @abstractmethod
    def wish(self, *, wished_s: float, tiring: Text | None, later: Text) -> str:
        """How long the player wants to play; why the first blocks are short (`tiring`); how it may go on (`later`)."""

    @abstractmethod
    def tiring(self, *, site: Name, time_s: float, effort_share: float) -> str:
        """A site whose effort is above what is acceptable: for how long it pushes, at which share of its comfortable force."""

    @abstractmethod
    def read_tired(self, *, site: Name, longest_s: float, blocks: int, block_s: float) -> str:
        """The longest block that a tired site allows; into how many of what length that parts the wished play (0: no matter)."""

    @abstractmethod
    def longest_blocks(self, *, blocks: int, block_s: float) -> str:
        """Blocks of the longest usual length, once the first go well; nothing was read tired yet."""

    @abstractmethod
    def lengthen(self) -> str:
        """Blocks may grow step by step, once the first go well; nothing was read tired yet."""

    @abstractmethod
    def growth(self, *, due: str | None) -> str:
        """Children grow: by when (a date, YYYY-MM-DD) to measure again."""
