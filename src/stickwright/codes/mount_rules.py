"""Hard safety rules that a way of mounting breaks, and what assumed figures leave open."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Topic

__all__ = ["DeviceKind", "MountRules", "Space"]

DeviceKind = Literal["stick", "switch", "controller"]
Space = Literal["face", "neck", "chest", "chair control", "tubing"]
"""Spaces of the body and the chair that nothing may enter."""


class MountRules(Topic):
    """Each a sentence, except where it says clause."""

    @abstractmethod
    def not_cleared(self, *, site: Name) -> str:
        """The treating team has refused this control site."""

    @abstractmethod
    def barred(self, *, holder: Name, why: Name) -> str:
        """A tube that nothing may be clamped to; why, in the words of the room's file."""

    @abstractmethod
    def seating_part(self, *, holder: Name) -> str:
        """A headrest or a moving part of the seat: only with the seating clinic's agreement."""

    @abstractmethod
    def enters(self, *, box: Name, space: Space) -> str:
        """The mount enters a space that must stay free."""

    @abstractmethod
    def must_release(self, *, site: Name) -> str:
        """At the face, a mount must let go."""

    @abstractmethod
    def release_unmeasured(self, *, site: Name, coupling: Name, measure: Message) -> str:
        """At the face, a coupling whose release force nobody measured does not count; what to measure."""

    @abstractmethod
    def release_fails(self, *, site: Name, why: Message) -> str:
        """At the face, no release setting is possible; why."""

    @abstractmethod
    def tilt_unsure(
        self, *, site: Name, device: DeviceKind, most_m: float, tolerance_m: float, measure: Message
    ) -> str:
        """At the face, over the tilts used in play site and device may part, as the tilt pivot is only assumed; what to measure."""

    @abstractmethod
    def tilt_stand(self, *, site: Name, device: DeviceKind, from_rad: float, to_rad: float, shift_m: float) -> str:
        """A floor stand for a chair that tilts."""

    @abstractmethod
    def tilt_apart(
        self, *, site: Name, device: DeviceKind, with_seat: bool, from_rad: float, to_rad: float, shift_m: float,
        tolerance_m: float | None,
    ) -> str:  # fmt: skip
        """Site and mount do not tilt alike; `with_seat`: it is the site that moves with the seat."""

    @abstractmethod
    def tilt_assumed(self, *, site: Name, holder: Name, shift_m: float, tolerance_m: float) -> str:
        """Clause: how far site and holder part, the tilt pivot taken at the seat reference point."""

    @abstractmethod
    def too_wide(self, *, width_m: float, door_m: float, most_m: float) -> str:
        """Chair and mount leave too little of the narrowest door."""

    @abstractmethod
    def to_confirm(self, *, measures: tuple[Message, ...], told: Message) -> str:
        """What to measure, and what the assumed figures say."""

    @abstractmethod
    def may_be(self, *, why: Message) -> str:
        """Clause: it passes at the assumed figures, but may come to this."""

    @abstractmethod
    def at_face(self, *, why: Message, measures: tuple[Message, ...]) -> str:
        """At the face nothing rests on an assumed figure; why it fails, and what to measure."""
