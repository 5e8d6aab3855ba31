"""Why a figure of a recording is not known, or has no interval: whole sentences that stand behind it in brackets."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["Intervals"]


class Intervals(Topic):
    """Shared by all figures that are taken from recordings."""

    @abstractmethod
    def never_changes(self, *, where: Literal["rest", "hold", "rests"]) -> str:
        """The value is the same throughout a rest, a hold, or all rests."""

    @abstractmethod
    def slow_sway(self, *, what: Literal["rest", "hold"]) -> str:
        """One rest or hold that sways too slowly."""

    @abstractmethod
    def few_readings(self, *, what: Literal["rest", "press"]) -> str:
        """Too few samples, or presses, that are independent of each other."""

    @abstractmethod
    def too_short(self) -> str:
        """The recording cannot be cut into parts that are compared."""

    @abstractmethod
    def parts_disagree(self) -> str:
        """Parts of the recording do not agree well enough."""

    @abstractmethod
    def no_movement(self) -> str:
        """No movement was found."""

    @abstractmethod
    def few_movements(self, *, movements: int, least: int) -> str:
        """Too few movements for an interval of their median; how many are needed."""

    @abstractmethod
    def nothing_moved(self) -> str:
        """Nothing moved at all."""

    @abstractmethod
    def no_block(self, *, block_s: float) -> str:
        """No stretch without a gap is as long as needed."""

    @abstractmethod
    def three_holds(self) -> str:
        """Holds at several pushes are needed."""
