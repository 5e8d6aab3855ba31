"""How the joints of an arm or gooseneck are set: clauses in the order from the clamp to the plate, without a full stop."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Topic

__all__ = ["JointName", "JointSettings"]

JointName = Literal["lower_link", "elbow", "plate", "foot", "middle"]


class JointSettings(Topic):
    """Azimuth: anticlockwise from the player's right, seen from above; elevation: above level."""

    @abstractmethod
    def named(self, *, joint: JointName) -> str:
        """A joint as a label."""

    @abstractmethod
    def set(self, *, joint: JointName, number: int, setting: Message) -> str:
        """How one joint is set, in a sentence with its label; the setting is one of the clauses below."""

    @abstractmethod
    def lower_link(self, *, azimuth_rad: float, elevation_rad: float) -> str:
        """Which way the first link points."""

    @abstractmethod
    def elbow(self, *, bend_rad: float, azimuth_rad: float, elevation_rad: float) -> str:
        """By how much the elbow is bent (0: straight), and which way the next link points."""

    @abstractmethod
    def plate(self, *, azimuth_rad: float, tilt_rad: float) -> str:
        """How the plate lies: towards the player when `tilt_rad` is above 0; which way its front points."""

    @abstractmethod
    def foot(
        self,
        *,
        azimuth_rad: float,
        elevation_rad: float,
        straight_m: float | None,
        bend_rad: float | None,
        radius_m: float | None,
    ) -> str:
        """Which way a gooseneck leaves its clamp; how far straight; by what angle and in what curve it then bends (None: not)."""

    @abstractmethod
    def middle(
        self, *, azimuth_rad: float, elevation_rad: float, straight_m: float | None, bend_rad: float | None,
        radius_m: float | None, after_m: float | None, right_m: float, forward_m: float, up_m: float,
    ) -> str:  # fmt: skip
        """The same of its middle; how far straight after the bend; where its middle lies from the clamp (left, back, down: below 0)."""
