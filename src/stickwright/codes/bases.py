"""Whether the base of a stick stands turned, mirrored or a quarter round, and what to do with it."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Bases", "Stood", "WrongAxes"]

Stood = Literal["clockwise", "half", "anticlockwise"]
"""How a base stood: a quarter turn clockwise, half a turn round, a quarter turn anticlockwise; seen from above."""
WrongAxes = Literal["y_sign", "swapped", "x_sign", "swapped_both_signs"]
"""What mirrors the output: forward and back, x and y, left and right, or x and y with both signs."""


class Bases(Topic):
    """What to do with the base first is one sentence on the page of the tuning; the findings stand beside it."""

    @abstractmethod
    def turn(self, *, turn_rad: float) -> str:
        """Turn the base so far before anything is set (anticlockwise from above): the same sense as the player's error."""

    @abstractmethod
    def turn_until(self, *, turn_rad: float, output_rad: float) -> str:
        """As `turn`, and how far the output is rotated until that is done."""

    @abstractmethod
    def stays(self, *, off_rad: float) -> str:
        """The base is right: how far pushes come out from their cue on average (0 or more)."""

    @abstractmethod
    def stays_short_of_reach(self) -> str:
        """The base is right: the error is missing reach in some directions."""

    @abstractmethod
    def unknown_without_pushes(self) -> str:
        """Nothing is known about the base: no push with a cued direction."""

    @abstractmethod
    def unknown_against_cues(self) -> str:
        """Nothing is known about the base: pushes do not follow their cues."""

    @abstractmethod
    def mirror_first(self) -> str:
        """Do not turn the base: a mirrored axis is to be corrected first."""

    @abstractmethod
    def quarter_first(self, *, stood: Stood) -> str:
        """The base stood a quarter or half turn round: turn it back, or correct the axes, before anything else."""

    @abstractmethod
    def no_pushes(self) -> str:
        """Finding: no push with a cued direction, so the rotation is not changed; what to record."""

    @abstractmethod
    def against_cues(self, *, resultant_share: float) -> str:
        """Finding: pushes do not follow their cues (resultant length of their errors, 0 to 1)."""

    @abstractmethod
    def some_directions(self, *, directions_rad: tuple[float, ...], of: int) -> str:
        """Finding: only these of the cued directions come out turned, which is missing reach there."""

    @abstractmethod
    def besides_turn(self, *, directions_rad: tuple[float, ...], of: int) -> str:
        """Finding: these of the cued directions came out otherwise than the rest: reach is missing there besides the turn."""

    @abstractmethod
    def mirrored(self, *, axes: WrongAxes) -> str:
        """Finding: the output is mirrored; which axis is wrong."""

    @abstractmethod
    def quarter(self, *, error_rad: float, stood: Stood) -> str:
        """Finding: every push comes out so far from its cue (anticlockwise), since the base stood a quarter or half turn round."""

    @abstractmethod
    def why_no_pushes(self) -> str:
        """Clause, why no rotation is set: no push with a cued direction."""

    @abstractmethod
    def why_against_cues(self) -> str:
        """Clause, why no rotation is set: pushes do not follow their cues."""

    @abstractmethod
    def why_some_directions(self) -> str:
        """Clause, why no rotation is set: the error is in some directions only."""

    @abstractmethod
    def why_mirrored(self) -> str:
        """Clause, why no rotation is set: the output is mirrored."""

    @abstractmethod
    def why_one_push(self) -> str:
        """Clause, why a rotation has no interval."""

    @abstractmethod
    def assumed_straight(self) -> str:
        """Clause, what is assumed of the base where nothing is known."""

    @abstractmethod
    def found_on(self, *, setup: Text, stick: Name) -> str:
        """Clause, what is assumed: the turn was found on another set-up, not on this stick."""
