"""What is usual for an unaffected adult, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.usual import Usual

__all__ = ["Texts"]


class Texts(Usual):
    """Beside a figure of the player; not norms for a patient."""

    w: English

    def throughput(self, *, thumbstick_bits: float, joystick_bits: float, mouse_bits: tuple[float, ...]) -> str:
        return (
            f"usual for an unaffected adult, hand on the device: thumbstick about {self.w.number(thumbstick_bits)}, joystick "
            f"about {self.w.number(joystick_bits)}, mouse {self.w.number(mouse_bits[0])} to {self.w.number(mouse_bits[-1])} "
            "bits a second"
        )

    def tapping(self, *, low_hz: float, high_hz: float, time_s: float) -> str:
        return (
            f"usual for an unaffected adult: {self.w.trimmed(low_hz)} to {self.w.trimmed(high_hz)} taps a second with the "
            f"index finger, for {self.w.amount(time_s, 's')}"
        )

    def tremor(
        self, *, low_hz: float, high_hz: float, mostly_hz: float, of: Literal["acceleration", "stick", "other"]
    ) -> str:
        size = {
            "acceleration": ", with 0.01 to 0.24 m/s² rms at the peak, mostly about 0.07",
            "stick": "; its size on a stick has not been published",
            "other": "",
        }[of]
        return (
            f"usual for an unaffected adult, hand held out: a peak between {self.w.trimmed(low_hz)} and "
            f"{self.w.trimmed(high_hz)} Hz, mostly about {self.w.trimmed(mostly_hz)} Hz{size}"
        )
