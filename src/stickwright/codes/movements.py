"""What a recording tells of pushes, laps, holds and sudden movements."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, Topic
from stickwright.codes.ways import Way

__all__ = ["Movements", "Tried"]

Tried = Literal["lap", "play"]
"""Laps along the edge, or stretches of play."""


class Movements(Topic):
    """Findings, and sentences why a figure is not known or has no interval."""

    @abstractmethod
    def centre_unknown(self) -> str:
        """No reach: the unit has no known centre."""

    @abstractmethod
    def nothing_asked(self) -> str:
        """No reach: no movement was asked for."""

    @abstractmethod
    def hardly_moved(self) -> str:
        """No reach: the stick hardly moved."""

    @abstractmethod
    def one_push_each(self) -> str:
        """Why: one push in each direction."""

    @abstractmethod
    def at_limit(self) -> str:
        """Why: all end at the same limit."""

    @abstractmethod
    def no_full_output(self) -> str:
        """Why: the unit has no known full output."""

    @abstractmethod
    def one_axis_only(self) -> str:
        """Why: only one axis."""

    @abstractmethod
    def not_all_tried(self) -> str:
        """Why there is no area: some direction was not tried."""

    @abstractmethod
    def few_reached(self, *, tried: Tried) -> str:
        """Why: fewer than three laps, or stretches of play, reached some direction."""

    @abstractmethod
    def not_tried(self) -> str:
        """Why: nobody tried this direction."""

    @abstractmethod
    def few_came(self, *, count: int, tried: Tried) -> str:
        """Why: so few laps, or stretches of play, came this way."""

    @abstractmethod
    def reach_in_play(self, *, least: Text, way: Way) -> str:
        """Reach is from play: what was used; the least, and toward where."""

    @abstractmethod
    def no_movement_toward(self, *, ways: tuple[Way, ...]) -> str:
        """Nobody moved toward these directions."""

    @abstractmethod
    def direction_unknown(self, *, why: Literal["centre", "one-axis", "one-line"]) -> str:
        """A turned stick cannot be seen, and why."""

    @abstractmethod
    def one_push_way(self) -> str:
        """Why: one push in each direction."""

    @abstractmethod
    def pushes_alike(self) -> str:
        """Why: all pushes are the same."""

    @abstractmethod
    def mirror_undone(self) -> str:
        """Clause, what is assumed of an angle: the forward axis was mirrored back."""

    @abstractmethod
    def few_directions(self) -> str:
        """Why an angle has no interval."""

    @abstractmethod
    def directions_agree(self) -> str:
        """Why an angle has no interval: all directions agree exactly."""

    @abstractmethod
    def directions_disagree(self) -> str:
        """Why an angle has no interval: they disagree too much."""

    @abstractmethod
    def none_along(self) -> str:
        """Why: nothing moved along the direction asked for."""

    @abstractmethod
    def few_pushes(self) -> str:
        """Why: fewer than three pushes."""

    @abstractmethod
    def direction_unclear(self, *, resultant_share: float) -> str:
        """Pushes hardly follow their cues (resultant length of the errors, 0 to 1)."""

    @abstractmethod
    def some_askew(self, *, ways: tuple[Text, ...]) -> str:
        """Only some directions come out askew (`askew`)."""

    @abstractmethod
    def askew(self, *, way: Way, error_rad: float) -> str:
        """In a list: a direction, and by how much it comes out turned (anticlockwise)."""

    @abstractmethod
    def turned(self, *, turn_rad: float, low_rad: float | None, high_rad: float | None) -> str:
        """All pushes come out turned so far (anticlockwise), with the ends of its interval where it has one: turn the base by as
        much."""

    @abstractmethod
    def mirrored_and_turned(self, *, mirror: Text, left_rad: float) -> str:
        """The output is mirrored, and besides that an angle is left (0 or more)."""

    @abstractmethod
    def turned_far(self, *, turn_rad: float) -> str:
        """All pushes come out turned by more than a base does, and by no quarter turn."""

    @abstractmethod
    def tiring_hold(
        self,
        *,
        direction_rad: float,
        level: Text,
        loss_per_s: float,
        low_per_s: float,
        high_per_s: float,
        lost_share: float,
        held_s: float,
    ) -> str:
        """A hold sinks: by what share of its level a second, with its interval, and in all."""

    @abstractmethod
    def short_holds(self, *, holds: int, least_s: float) -> str:
        """Holds too short for a figure."""

    @abstractmethod
    def nothing_held(self) -> str:
        """Why: the level is 0."""

    @abstractmethod
    def bursts_may_be_meant(self) -> str:
        """Sudden movements cannot be told from meant ones: nothing quiet was asked for."""

    @abstractmethod
    def too_short_for_bursts(self) -> str:
        """Less than a second of rest, stillness or holding."""

    @abstractmethod
    def bursts(self, *, count: int, watched_s: float, rate: Estimate, peak: Text, following: bool) -> str:
        """Sudden movements: how many in what time, how many a minute with an interval, the largest; whether corrections of
        following may be among them."""

    @abstractmethod
    def no_burst(self) -> str:
        """Why: none was seen."""

    @abstractmethod
    def largest_seen(self, *, count: int) -> str:
        """Why the largest has no interval: the largest of so many."""
