"""Where the base of a device goes and how it is turned: by distances that a family can measure again."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.arm_reasons import Line
from stickwright.codes.message import Message, Name, Topic
from stickwright.codes.mount_rules import DeviceKind

__all__ = ["Along", "End", "LineEnd", "MountPoses"]

End = Literal["base", "clamp"]
"""What a distance leads to: the middle of the underside of the base, or the clamp."""
Along = Literal["right", "left", "forward", "back", "up", "down"]
LineEnd = Literal["right", "left", "front", "back", "upper", "lower"]
"""An end of a tube or edge, by the way it lies."""


class MountPoses(Topic):
    """Each a sentence, except where it says label or clause."""

    @abstractmethod
    def base(self, *, device: Name, right_m: float, forward_m: float, up_m: float, off_m: float, known: bool) -> str:
        """Middle of the underside of the base from the seat reference point (left, back, down: below 0); how near it is to be put;
        `known`: whether it is known how far off it may be."""

    @abstractmethod
    def turned(
        self, *, turn_rad: float, tilt_rad: float, off_rad: float, lost: Message | None, why: Message | None
    ) -> str:
        """How the base is turned (anticlockwise from above) and tilted (far edge higher: above 0), how near; what is lost where it is
        off, and how the turn comes about, both in sentences."""

    @abstractmethod
    def lost(self, *, kind: DeviceKind, off_m: float, turned_rad: float, fine: bool) -> str:
        """What is lost where a device is so far off, or so far turned: a tenth of the movement range or of each push, the press;
        `fine`: finer than a tape, so that it is settled with the player."""

    @abstractmethod
    def clock(self) -> str:
        """How directions on a clock face are meant."""

    @abstractmethod
    def distances(self, *, start: Name, to: End, far: tuple[Message, ...]) -> str:
        """From one landmark to one point of the mount: how far each way."""

    @abstractmethod
    def far(self, *, distance_m: float, along: Along) -> str:
        """Label: how far which way; what is no half millimetre off is in line."""

    @abstractmethod
    def end(self, *, to: End) -> str:
        """Label: what a distance leads to."""

    @abstractmethod
    def along(self, *, line: Line, end: LineEnd | None, along_m: float) -> str:
        """Clause: where on its tube or edge a clamp sits, from which end (None: its first)."""

    @abstractmethod
    def clamp(self, *, along: Message) -> str:
        """The same as a sentence."""

    @abstractmethod
    def only_place(self) -> str:
        """The clamp fits in no other place of its tube or edge."""

    @abstractmethod
    def places(self, *, from_m: tuple[float, ...], to_m: tuple[float, ...], end: LineEnd, line: Name) -> str:
        """The stretches of a tube or edge on which the clamp could sit, from which end."""
