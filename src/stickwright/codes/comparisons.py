"""Two recordings of one task, before and after a change."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["Comparisons", "Judgement"]

Judgement = Literal["better", "worse", "changed", "no-difference", "not-known"]


class Comparisons(Topic):
    """What the difference is, and what it may not be taken for."""

    @abstractmethod
    def judged(self, *, judgement: Judgement, label: Text, before: Text, after: Text, difference: Text | None) -> str:
        """One figure before and after, each with its interval; the difference where it is known."""

    @abstractmethod
    def whole(self, *, told: tuple[Text, ...]) -> str:
        """What is better or worse, in whole sentences (none: no difference can be told); last, that the player's word counts more."""

    @abstractmethod
    def one_block(self) -> str:
        """Caution: one block of each in one order; practice or fatigue may be the difference."""

    @abstractmethod
    def too_little(self, *, runs: Literal["before", "after", "both"]) -> str:
        """Caution: too little was recorded in one of them, or in both."""

    @abstractmethod
    def by_chance(self, *, figures: int) -> str:
        """Caution: so many figures were compared that one may differ by chance."""

    @abstractmethod
    def no_interval(self, *, run: Literal["before", "after"], why: Text) -> str:
        """Why a difference has no interval: one of the two figures has none (in brackets behind the figure)."""
