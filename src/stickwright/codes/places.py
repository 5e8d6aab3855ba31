"""Where a control site rests, and how a base is turned: what stands in for a measurement, and what tape distances tell."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["Places"]


class Places(Topic):
    """Usual places: clauses for `usual`; findings: sentences."""

    @abstractmethod
    def usual(self, *, site: Name, spot: Message) -> str:
        """The place of a site was not measured; where it is taken to be, and what to measure."""

    @abstractmethod
    def armrest(self, *, middle: bool, partly: bool) -> str:
        """At the middle or the front end of the armrest; `partly`: some of it from published body sizes."""

    @abstractmethod
    def chin(self, *, forward_m: float, up_m: float) -> str:
        """In front of the back and above the seat, partly from published body sizes."""

    @abstractmethod
    def head(self, *, side: Literal["left", "right", "middle"], up_m: float) -> str:
        """At a side or the back of the head, so high above the seat, partly from published body sizes."""

    @abstractmethod
    def leg(self, *, knee: bool) -> str:
        """At the front of the knee, or under the foot, from published body sizes."""

    @abstractmethod
    def turn(
        self, *, site: Name, place_rad: float | None, recorded_rad: float, low_rad: float, high_rad: float, total_rad: float,
        found_on: Text | None,
    ) -> str:  # fmt: skip
        """How a base's turn comes about: the place's own (None: straight ahead) and the recordings'; both without sign low to high;
        `found_on`: a reservation about the recordings; what to enter once it stands right."""

    @abstractmethod
    def seat_level(
        self, *, site: Name, moves_with: Literal["seat", "base", "room"], landmarks: tuple[Name, ...]
    ) -> str:
        """A site moves with one thing, and the landmarks of its tape distances do not: were they taken with the seat level?"""

    @abstractmethod
    def tapes_disagree(self, *, landmarks: tuple[Name, ...], by_m: float) -> str:
        """The distances from these landmarks do not meet."""

    @abstractmethod
    def two_points(self, *, landmarks: tuple[Name, ...] | None, apart_m: float) -> str:
        """Two mirror answers: from three distances (None), or because these landmarks lie in one plane."""
