"""English, as practitioners in Britain write it."""

from __future__ import annotations

import math

from stickwright.catalogue.en.buttons import BUTTONS
from stickwright.catalogue.writer import GAP, Writer
from stickwright.codes.amounts import TypedUnit
from stickwright.codes.estimate import Estimate
from stickwright.codes.inputs import Role
from stickwright.codes.kinds import Kind
from stickwright.codes.sites import Part
from stickwright.codes.stand_ins import Form
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.model.rates import ALL_THE_TIME_PER_MIN, BY_THE_MINUTE, told_rate
from stickwright.units import figures

__all__ = ["English", "writer"]

_EIGHT = ("right", "forward-right", "forward", "forward-left", "left", "back-left", "back", "back-right")
_MEASURE = "measure 60 s at rest"
_FORMS = {"dish": "dish", "ball": "ball", "peg": "peg", "bar": "bar", "cup": "cup", "foam": "foam pad"}
_KINDS: dict[Kind, str] = {"extension": "shaft extension", "keep_out": "keep-out zone"}
_LONG_UNITS: dict[TypedUnit, str] = {
    "gf": "grams-force", "kgf": "kilograms-force", "lb": "pounds-force", "oz": "ounces-force", "mn": "millinewtons",
    "cn": "centinewtons", "n": "newtons", "mm": "millimetres", "cm": "centimetres", "inch": "inches", "m": "metres",
}  # fmt: skip


class English(Writer):
    """Numbers, plurals and lists of British English."""

    tag = "en-GB"
    unknown = "not known"
    up_to = "to"
    assumed = "assumed"

    def plural(self, count: float, *, one: str, other: str) -> str:
        """The form that goes with a count.

        Parameters
        ----------
        count : float
            As printed: 1.0 is "other".
        one, other : str
            "1 file", "2 files".
        """
        return one if self.form(count) == "one" else other

    def ordinal(self, number: int) -> str:
        """The place in a row: ``1st``, ``2nd``, ``3rd``, ``4th``, ``11th``."""
        ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
        return f"{number}{ending}"

    def direction(self, direction_rad: float) -> str:
        """A direction of the player: one of eight, or degrees from the right with the nearest of the eight.

        Parameters
        ----------
        direction_rad : float
            0 right, a quarter turn forward.
        """
        degrees = math.degrees(direction_rad) % 360
        nearest = round(degrees / 45) % 8
        if abs((degrees - 45 * nearest + 180) % 360 - 180) < 2:
            return _EIGHT[nearest]
        return f"{degrees:.0f}° (near {_EIGHT[nearest]})"

    def directions(self, directions_rad: tuple[float, ...]) -> str:
        """Several directions of the player."""
        return self.all_of(tuple(self.direction(one) for one in directions_rad))

    def sites(self, names: tuple[str, ...]) -> str:
        """Control sites by the names that a person gave them: ``the right index and the chin``."""
        return self.all_of(tuple(f"the {self.name(one)}" for one in names))

    def body_part(self, part: Part | None) -> str:
        """A control site by the part of the body; any of them where it is None."""
        return part or "control site"

    def topper_form(self, form: Form) -> str:
        """Form of a topper."""
        return _FORMS[form]

    def stick_action(self, action: str | None) -> str:
        """What a stick is used for; any action of a stick where none is named."""
        return self.name(action) if action else "any stick, all directions alike"

    def kind(self, kind: Kind) -> str:
        """What a file describes: ``keep-out zone``."""
        return _KINDS.get(kind, kind)

    def long_unit(self, unit: TypedUnit) -> str:
        """A unit in words: ``grams-force``.

        Parameters
        ----------
        unit : str
            The ending of its keys.
        """
        return _LONG_UNITS[unit]

    def turn(self, turn_rad: float) -> str:
        """A turn seen from above, in whole degrees.

        Parameters
        ----------
        turn_rad : float
            Anticlockwise.
        """
        return f"{abs(math.degrees(turn_rad)):.0f}° {'anticlockwise' if turn_rad > 0 else 'clockwise'}"

    def turn_estimate(self, turn: Estimate) -> str:
        """A turn seen from above with its interval, which may reach to the other side.

        Parameters
        ----------
        turn : Estimate
            Anticlockwise.
        """
        if turn.value is None:
            return self.unknown
        mark = f", {self.assumed}" if turn.assumed else ""
        if turn.interval is None:
            return f"{self.turn(turn.value)}{mark}"
        low, high = turn.interval
        if low < 0 < high:
            return f"{self.turn(turn.value)} ({self.turn(low)} to {self.turn(high)}){mark}"
        least, most = sorted((abs(math.degrees(low)), abs(math.degrees(high))))
        size, _, side = self.turn(turn.value).partition(" ")
        return f"{size} ({least:.0f} to {most:.0f}) {side}{mark}"

    def role(self, role: Role) -> str:
        """What a game listens to: one of two sticks, or a button by its position."""
        return role if role in STICK_ROLES else BUTTONS[BUTTON_ROLES.index(role)]

    def minutes(self, time_s: float) -> str:
        """A length of time in minutes, without an idle zero."""
        return f"{self._decimal(f'{float(figures(time_s / 60)):g}')}{GAP}min"

    def chance(self, share: float) -> str:
        """A chance in whole per cent, and never certain: it is counted over some hundred simulations.

        Parameters
        ----------
        share : float
        """
        return "over 99%" if share > 0.99 else "under 1%" if share < 0.01 else self.share(share)

    def rate(self, rate: Estimate, *, one: str, many: str, why: str = "") -> str:
        """How often something unwanted happens, with its upper end: by the minute, by the hour when it is rarer.

        Parameters
        ----------
        rate : Estimate
            Times a minute.
        one, many : str
            What happens.
        why : str
            Why the rate has no interval.
        """
        told = told_rate(rate)
        if told.kind == "always":
            return f"{one} all the time"
        if told.kind == "unknown":
            reason = f"{self.clause(why)}: " if why else ""
            return f"an unknown number of {many} ({reason}{_MEASURE})"
        if told.kind == "endless":
            least = (
                f"{self._often(told.value_per_min, one, many)}, or anything"
                if told.value_per_min is not None
                else "anything"
            )
            return f"an unknown number of {many} ({least} up to all the time: {_MEASURE})"
        if told.kind == "rare":
            return f"less than one {one} an hour"
        if told.value_per_min is None:
            return f"up to {self._often(told.high_per_min or 0.0, one, many)}"
        said = self._often(told.value_per_min, one, many)
        if told.high_per_min is None:
            return said
        unit = (
            ""
            if (told.value_per_min >= BY_THE_MINUTE) == (told.high_per_min >= BY_THE_MINUTE)
            else self._unit(told.high_per_min)
        )
        return f"{said} (up to {self._count(told.high_per_min)}{unit})"

    def _count(self, per_min: float) -> str:
        if per_min < BY_THE_MINUTE:
            return str(round(60 * per_min))
        return self._decimal(f"{float(figures(per_min)):g}" if per_min < ALL_THE_TIME_PER_MIN else figures(per_min))

    def _often(self, per_min: float, one: str, many: str) -> str:
        count = self._count(per_min)
        return f"{count} {one if count == '1' else many}{self._unit(per_min)}"

    def _unit(self, per_min: float) -> str:
        return " a minute" if per_min >= BY_THE_MINUTE else " an hour"


writer = English()
