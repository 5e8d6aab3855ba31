"""How joints are set, in English."""

from __future__ import annotations

import math

from stickwright.catalogue.en import English
from stickwright.codes.joint_settings import JointName, JointSettings
from stickwright.codes.message import Message

__all__ = ["Texts", "numbered"]

_NAMES: dict[JointName, str] = {
    "lower_link": "lower link", "elbow": "elbow", "plate": "plate", "foot": "foot", "middle": "middle"
}  # fmt: skip
_STEEP_DEG = 80


def numbered(w: English, joint: JointName, number: int) -> str:
    """A joint with its number, counted from the clamp."""
    return f"{w.whole(number)} {_NAMES[joint]}"


class Texts(JointSettings):
    """Directions on a clock face seen from above, 12 straight ahead of the player."""

    w: English

    def named(self, *, joint: JointName) -> str:
        return _NAMES[joint]

    def set(self, *, joint: JointName, number: int, setting: Message) -> str:
        return f"{numbered(self.w, joint, number)}: {self.clause(setting)}."

    def lower_link(self, *, azimuth_rad: float, elevation_rad: float) -> str:
        return f"points {self._pointing(azimuth_rad, elevation_rad)}"

    def elbow(self, *, bend_rad: float, azimuth_rad: float, elevation_rad: float) -> str:
        return f"bent {self._degrees(bend_rad)}, upper link points {self._pointing(azimuth_rad, elevation_rad)}"

    def plate(self, *, azimuth_rad: float, tilt_rad: float) -> str:
        degrees = round(math.degrees(tilt_rad))
        way = "towards" if degrees > 0 else "away from"
        slope = f"tilted {self._degrees(abs(tilt_rad))} {way} the player" if degrees else "level"
        return f"{slope}, its front to {self._clock(azimuth_rad)}"

    def foot(
        self,
        *,
        azimuth_rad: float,
        elevation_rad: float,
        straight_m: float | None,
        bend_rad: float | None,
        radius_m: float | None,
    ) -> str:
        return (
            f"leaves the clamp {self._pointing(azimuth_rad, elevation_rad)}, {self._straight(straight_m)}then "
            f"{self._bends(bend_rad, radius_m)}"
        )

    def middle(
        self, *, azimuth_rad: float, elevation_rad: float, straight_m: float | None, bend_rad: float | None,
        radius_m: float | None, after_m: float | None, right_m: float, forward_m: float, up_m: float,
    ) -> str:  # fmt: skip
        after = f", then straight for {self.w.amount(after_m, 'mm')}" if after_m is not None else ""
        ways = ((right_m, "right", "left"), (forward_m, "forward", "back"), (up_m, "up", "down"))
        far = [
            f"{self.w.amount(abs(off), 'mm')} {plus if off > 0 else minus}"
            for off, plus, minus in ways
            if abs(off) >= 0.0005
        ]
        where = f"; it is {', '.join(far)} of the clamp" if far else ""
        return (
            f"runs {self._pointing(azimuth_rad, elevation_rad)}, {self._straight(straight_m)}then "
            f"{self._bends(bend_rad, radius_m)}{after}{where}"
        )

    def _straight(self, straight_m: float | None) -> str:
        return f"straight for {self.w.amount(straight_m, 'mm')}, " if straight_m is not None else ""

    def _bends(self, bend_rad: float | None, radius_m: float | None) -> str:
        if bend_rad is None or radius_m is None:
            return "does not bend"
        return f"bends {self.w.amount(bend_rad, 'deg')} in a curve of {self.w.amount(radius_m, 'mm')} radius"

    def _degrees(self, angle_rad: float) -> str:
        return f"{self.w.whole(round(math.degrees(angle_rad)))}°"

    def _pointing(self, azimuth_rad: float, elevation_rad: float) -> str:
        degrees = round(math.degrees(elevation_rad))
        if abs(degrees) >= _STEEP_DEG:
            return "straight up" if degrees > 0 else "straight down"
        slope = f"{self._degrees(abs(elevation_rad))} {'up' if degrees > 0 else 'down'}" if degrees else "level"
        return f"to {self._clock(azimuth_rad)} seen from above, {slope}"

    @staticmethod
    def _clock(azimuth_rad: float) -> str:
        """To the half hour, 12 straight ahead."""
        halves = round((90.0 - math.degrees(azimuth_rad)) / 15.0) % 24
        hour = (halves // 2) or 12
        return f"half past {hour}" if halves % 2 else f"{hour} o'clock"
