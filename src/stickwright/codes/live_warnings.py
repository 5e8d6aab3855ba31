"""What looks wrong with a stick while it can still be put right."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["LiveWarnings"]


class LiveWarnings(Topic):
    """Said to the practitioner during or before a task: what is seen, and what to do."""

    @abstractmethod
    def stands_still(self, *, time_s: float) -> str:
        """The stick has sent one value for so long though movement is asked."""

    @abstractmethod
    def other_stick(self) -> str:
        """Only the second stick moves; the first one is recorded as the player's."""

    @abstractmethod
    def both_sticks(self) -> str:
        """Both sticks move; perhaps only one of them is the player's."""

    @abstractmethod
    def no_wiggle(self) -> str:
        """No stick moved far enough to know which one is meant."""

    @abstractmethod
    def two_moved(self, *, most: Text, other: Text) -> str:
        """Two sticks moved while one was to be found out."""

    @abstractmethod
    def one_axis(self, *, stick: Text) -> str:
        """Only one axis moved: taken for a lever."""

    @abstractmethod
    def rate_reason(self, *, reason: Literal["nothing-recorded", "hardly-moved", "as-often-as-looked"]) -> str:
        """Why it is not known how often a stick reports, or only how often at least; and what to do."""

    @abstractmethod
    def rate_unknown(self, *, why: Text) -> str:
        """How often a stick reports is not known."""

    @abstractmethod
    def rate_at_least(self, *, rate_hz: float) -> str:
        """A stick reports so often or oftener."""

    @abstractmethod
    def rate(self, *, rate_hz: float, low_hz: float, high_hz: float, trusted_hz: float) -> str:
        """How often a stick reports, with its interval, and above which frequency tremor cannot be trusted."""
