"""The base of a stick, in English."""

from __future__ import annotations

import math

from stickwright.catalogue.en import English
from stickwright.codes.bases import Bases, Stood, WrongAxes
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_HOW: dict[Stood, str] = {
    "clockwise": "a quarter turn clockwise",
    "half": "half a turn round",
    "anticlockwise": "a quarter turn anticlockwise",
}
_BACK: dict[Stood, str] = {
    "clockwise": "a quarter turn anticlockwise",
    "half": "half a turn",
    "anticlockwise": "a quarter turn clockwise",
}
_FACED: dict[Stood, str] = {
    "clockwise": "to the player's right",
    "half": "towards the player",
    "anticlockwise": "to the player's left",
}


class Texts(Bases):
    """What to do with the base, and why."""

    w: English

    def turn(self, *, turn_rad: float) -> str:
        return (
            f"First turn the base of the stick {self.w.turn(turn_rad)}, seen from above, the same way as the player's error. "
            "Then record the pushes again."
        )

    def turn_until(self, *, turn_rad: float, output_rad: float) -> str:
        return f"{self.turn(turn_rad=turn_rad)} Until then, the output is rotated {self.w.turn(output_rad)}."

    def stays(self, *, off_rad: float) -> str:
        return (
            f"Leave the base as it is: on average, pushes come out within {math.degrees(off_rad):.0f}° of the direction "
            "asked for."
        )

    def stays_short_of_reach(self) -> str:
        return "Leave the base as it is: reach is missing in some directions, and rotation does not help with that."

    def unknown_without_pushes(self) -> str:
        return "It is not known how the base stands: no push with a cued direction was recorded."

    def unknown_against_cues(self) -> str:
        return "It is not known how the base stands: the pushes do not follow their cues."

    def mirror_first(self) -> str:
        return "Do not turn the base. The output is mirrored: correct the axis first."

    def quarter_first(self, *, stood: Stood) -> str:
        return f"The base stood {_HOW[stood]}. First turn it {_BACK[stood]}, or correct the axes. Then record again."

    def no_pushes(self) -> str:
        return (
            "The rotation is not changed: no push with a cued direction was recorded. Record pushes with their cues, at "
            "least right, forward, left and back."
        )

    def against_cues(self, *, resultant_share: float) -> str:
        return (
            "The pushes do not follow their cues (resultant length "
            f"{self.w.number(resultant_share)}, where 1 means that all are off by the same angle), so no rotation was set. "
            "Check that the cues belong to this recording."
        )

    def some_directions(self, *, directions_rad: tuple[float, ...], of: int) -> str:
        come = self.w.plural(len(directions_rad), one="comes", other="come")
        return (
            f"Only {len(directions_rad)} of {of} cued directions {come} out turned ({self._all(directions_rad)}). That is "
            "missing reach, not a turned stick, so no rotation was set. Set the sensitivity by direction instead."
        )

    def besides_turn(self, *, directions_rad: tuple[float, ...], of: int) -> str:
        return (
            f"Of {of} cued directions, {self._all(directions_rad)} came out differently from the rest: the stick is turned, and "
            "reach is missing there as well. The rotation is taken from the other directions."
        )

    def mirrored(self, *, axes: WrongAxes) -> str:
        wrong = {
            "y_sign": "forward and back are swapped, because the sign of the y axis is wrong",
            "swapped": "x and y are swapped",
            "x_sign": "left and right are swapped, because the sign of the x axis is wrong",
            "swapped_both_signs": "x and y are swapped and both signs are wrong",
        }[axes]
        return (
            f"The output is mirrored: {wrong}. Turning the base cannot correct that. Correct the axis in the driver, the hub or "
            "the game, then record again."
        )

    def quarter(self, *, error_rad: float, stood: Stood) -> str:
        return (
            f"Every push comes out {self.w.turn(error_rad)} of its cue. Either the base stood {_HOW[stood]}, with its own "
            f"forward pointing {_FACED[stood]}, or the axes are swapped in the driver. Before you tune anything else, turn the "
            f"base {_BACK[stood]}, or correct the axes, and record again."
        )

    def why_no_pushes(self) -> str:
        return "no push with a cued direction"

    def why_against_cues(self) -> str:
        return "the pushes do not follow their cues"

    def why_some_directions(self) -> str:
        return "the error is in some directions only"

    def why_mirrored(self) -> str:
        return "the output is mirrored"

    def why_one_push(self) -> str:
        return "one push only"

    def assumed_straight(self) -> str:
        return "stick mounted straight"

    def found_on(self, *, setup: Text, stick: Name) -> str:
        return f"found on {self.say(setup)}, not on {self.w.name(stick)}"

    def _all(self, directions_rad: tuple[float, ...]) -> str:
        return self.w.all_of(tuple(self.w.direction(one) for one in directions_rad))
