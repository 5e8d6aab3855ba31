"""What is usual for an unaffected adult, from published figures; sources are in `stickwright.trace.usual`."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["Usual"]


class Usual(Topic):
    """Beside a figure of the player; not norms for a patient."""

    @abstractmethod
    def throughput(self, *, thumbstick_bits: float, joystick_bits: float, mouse_bits: tuple[float, ...]) -> str:
        """Throughput in bits a second with the hand on three devices; from and to for the mouse."""

    @abstractmethod
    def tapping(self, *, low_hz: float, high_hz: float, time_s: float) -> str:
        """Taps a second with the index finger, over so long."""

    @abstractmethod
    def tremor(
        self, *, low_hz: float, high_hz: float, mostly_hz: float, of: Literal["acceleration", "stick", "other"]
    ) -> str:
        """Peak of the tremor of a hand held out; for an acceleration its size too, for a stick that none is published."""
