"""What the family looks at each month, and photographs on the first day, for each mount."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.joint_settings import JointName
from stickwright.codes.message import Name, Topic

__all__ = ["MountUpkeep"]


class MountUpkeep(Topic):
    """Checks: clauses after "every month, check that". Photographs: labels of pictures."""

    @abstractmethod
    def clamp(self) -> str:
        """The clamp holds."""

    @abstractmethod
    def joints(self) -> str:
        """The joints have not moved."""

    @abstractmethod
    def fastener(self, *, fastener: Name) -> str:
        """The fastener is clean and grips."""

    @abstractmethod
    def worn(self, *, fastener: Name, openings: int, once: Name | None, twice: Name | None) -> str:
        """After how many openings a fastener is half as strong; the day (YYYY-MM-DD) by which it is to be replaced when it is opened
        once or twice a day; None where the plan is not dated."""

    @abstractmethod
    def slides(self) -> str:
        """A base, tray or stand does not slide."""

    @abstractmethod
    def anti_slip(self, *, sheet: Name) -> str:
        """The anti-slip sheet is clean."""

    @abstractmethod
    def breakaway(self, *, coupling: Name) -> str:
        """The breakaway coupling lets go as it did."""

    @abstractmethod
    def distances(self) -> str:
        """The distances of the table are as they were."""

    @abstractmethod
    def from_above(self) -> str:
        """Photograph from above."""

    @abstractmethod
    def from_right(self) -> str:
        """Photograph from the player's right."""

    @abstractmethod
    def clamp_close(self) -> str:
        """Photograph of the clamp, with a tape in the picture."""

    @abstractmethod
    def joint_straight(self, *, number: int, joint: JointName) -> str:
        """Photograph of a joint, counted from the clamp."""

    @abstractmethod
    def halves(self) -> str:
        """Photograph of both halves of a fastener."""
