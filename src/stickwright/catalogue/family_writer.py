"""What the languages of the family's pages share besides `Writer`: directions, turns, controls, lists of control sites."""

from __future__ import annotations

import math
from typing import ClassVar

from stickwright.catalogue.writer import GAP, Writer
from stickwright.codes.inputs import Role
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.units import figures

__all__ = ["FamilyWriter"]


class FamilyWriter(Writer):
    """A language gives its words; names that a person typed are never inflected."""

    eight: ClassVar[tuple[str, ...]]
    """Directions of the player anticlockwise from the right: right, forward-right ..."""
    turns: ClassVar[tuple[str, str]]
    """Anticlockwise, clockwise: behind a number of degrees."""
    sticks: ClassVar[tuple[str, str]]
    """The left and the right stick of a controller."""
    buttons: ClassVar[tuple[str, ...]]
    """As `stickwright.catalogue.en.buttons.BUTTONS`."""

    def sites(self, typed: tuple[str, ...]) -> str:
        """Control sites by the names that a person gave them."""
        return self.names(typed)

    def direction(self, direction_rad: float) -> str:
        """A direction of the player, one of eight.

        Parameters
        ----------
        direction_rad : float
            0 right, a quarter turn forward.
        """
        return self.eight[round(math.degrees(direction_rad) % 360 / 45) % 8]

    def turn(self, turn_rad: float) -> str:
        """A turn seen from above, in whole degrees.

        Parameters
        ----------
        turn_rad : float
            Anticlockwise.
        """
        return (
            f"{self._with_unit(self._decimal(f'{abs(math.degrees(turn_rad)):.0f}'), '°')} {self.turns[turn_rad <= 0]}"
        )

    def role(self, role: Role) -> str:
        """What a game listens to: one of two sticks, or a button by its position."""
        if role in STICK_ROLES:
            return self.sticks[STICK_ROLES.index(role)]
        return self.buttons[BUTTON_ROLES.index(role)]

    def minutes(self, time_s: float) -> str:
        """A length of time in whole minutes."""
        return self._quantity(f"{self._decimal(f'{time_s / 60:.0f}')}{GAP}min")

    def factor_of(self, value: float) -> str:
        """A factor with two significant figures.

        Parameters
        ----------
        value : float
        """
        return self._quantity(self._decimal(figures(value)))
