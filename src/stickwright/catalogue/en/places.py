"""Where a control site rests, and how a base is turned, in English."""

from __future__ import annotations

import math
from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.places import Places

__all__ = ["Texts"]

_MOVES = {"seat": "the seat", "base": "the base of the chair", "room": "the room"}


class Texts(Places):
    """Usual places, turns, tape distances."""

    w: English

    def usual(self, *, site: Name, spot: Message) -> str:
        return f"the place of the {self.w.name(site)} was not measured: taken {self.say(spot)}"

    def armrest(self, *, middle: bool, partly: bool) -> str:
        source = ", partly from published body sizes" if partly else ""
        return (
            f"at the {'middle' if middle else 'front end'} of the armrest{source}. Measure forward, sideways and up from where the "
            "back meets the seat to the site at rest"
        )

    def chin(self, *, forward_m: float, up_m: float) -> str:
        return f"{self.w.amount(forward_m, 'mm')} in front of the back and {self.w.amount(up_m, 'mm')} above the seat{self._head()}"

    def head(self, *, side: Literal["left", "right", "middle"], up_m: float) -> str:
        spot = "at the back of the head" if side == "middle" else f"at the {side} of the head"
        return f"{spot}, {self.w.amount(up_m, 'mm')} above the seat{self._head()}"

    def leg(self, *, knee: bool) -> str:
        spot = "at the front of the bent knee" if knee else "under the foot, lower leg upright"
        return f"{spot}, from published body sizes. Measure forward and down from the front edge of the seat to the site at rest"

    def turn(
        self, *, site: Name, place_rad: float | None, recorded_rad: float, low_rad: float, high_rad: float, total_rad: float,
        found_on: Text | None,
    ) -> str:  # fmt: skip
        other = f" ({self._told(found_on)}: record pushes on it to be sure)" if found_on is not None else ""
        ends = f"{self._degrees(low_rad)} to {self._degrees(high_rad)}°"
        found = f"{self._turned(recorded_rad)} ({ends}) because the recorded pushes came out turned{other}"
        stick = f"The stick at the {self.w.name(site)}"
        if place_rad is None:
            told = f"{found}. {stick} is assumed to have stood straight ahead when they were recorded"
        else:
            told = (
                f"{self._turned(place_rad)}, the way that the {self.w.name(site)} points, and {found}. {stick} is assumed to have "
                f"stood at those {self._degrees(abs(place_rad))}° when they were recorded; if it stood straight ahead, "
                f"{self._turned(recorded_rad)} is all"
            )
        return (
            f"This turn is made up of {told}. Once it stands right, enter forward_deg = {self._degrees(total_rad)} for the place and "
            "replace these recordings with new ones."
        )

    def seat_level(
        self, *, site: Name, moves_with: Literal["seat", "base", "room"], landmarks: tuple[Name, ...]
    ) -> str:
        do = self.w.plural(len(landmarks), one="does", other="do")
        return (
            f"The {self.w.name(site)} moves with {_MOVES[moves_with]}, but {self.w.names(landmarks)} {do} not: were the distances "
            "taken with the seat level?"
        )

    def tapes_disagree(self, *, landmarks: tuple[Name, ...], by_m: float) -> str:
        return (
            f"The distances from {self.w.names(landmarks)} disagree by up to {self.w.amount(by_m, 'mm')}: one of these is wrong. "
            "Measure them again with the site at rest, the longest first."
        )

    def two_points(self, *, landmarks: tuple[Name, ...] | None, apart_m: float) -> str:
        why = (
            "Three distances leave two answers"
            if landmarks is None
            else f"{self.w.names(landmarks)} lie in one plane and leave two answers"
        )
        return (
            f"{why}, {self.w.amount(apart_m, 'mm')} apart, and no check. A distance from one more landmark, away from the plane of "
            "the others, settles it."
        )

    @staticmethod
    def _head() -> str:
        return (
            ", partly from published body sizes. Measure up from the seat, and forward from the line of the back, to where the site "
            "rests"
        )

    def _told(self, found_on: Text) -> str:
        return self.clause(found_on)

    @staticmethod
    def _degrees(angle_rad: float) -> str:
        return f"{math.degrees(angle_rad):.0f}"

    def _turned(self, turn_rad: float) -> str:
        return f"{self._degrees(abs(turn_rad))}° {'anticlockwise' if turn_rad > 0 else 'clockwise'}"
