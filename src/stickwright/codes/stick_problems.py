"""What is wrong with readings and figures of sticks, and with what a case says of them: parts of a problem."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["ExpectedStick", "FoundStick", "StickProblems", "StickRemedy", "StickStep"]

StickStep = Literal[
    "bench_readings", "limb_stiffness",
]  # fmt: skip
"""What the problem is about."""
FoundStick = Literal[
    "no_position", "two_ways", "no_share", "all_zero", "weights_zero", "no_stick", "nothing",
]  # fmt: skip
"""What was found instead."""
ExpectedStick = Literal[
    "position", "turn", "number_each", "three", "above_0_n", "way", "two_angles", "length", "max_angle",
    "extension", "above_0_s", "one_force", "reached", "less_movement", "falls_less", "one_above_0", "action",
    "model", "joint", "contact_height", "topper", "one", "stick", "state_directions",
]  # fmt: skip
"""What would have been accepted."""
StickRemedy = Literal[
    "force_column", "angle_column", "height_column", "take_more", "zero_force", "measure_stop", "read_position",
    "output_share", "height_in_mm", "angle_in_deg", "travel_in_mm", "height_from_pivot", "direction_column",
    "in_millimetres", "in_degrees", "direction_apart", "no_hold", "gauge_step", "sticks_apart", "same_posture",
    "give_weights", "other_model", "neck_or_face", "contact_height", "stock", "state_direction",
]  # fmt: skip
"""What to do."""


class StickProblems(Topic):
    """Parts of problems: where, found, expected, remedy."""

    @abstractmethod
    def step(self, *, what: StickStep) -> str:
        """Where: what the problem is about."""

    @abstractmethod
    def reading(self, *, number: int) -> str:
        """Where: a reading by its place, the first is 1."""

    @abstractmethod
    def found(self, *, what: FoundStick) -> str:
        """Found, without figures."""

    @abstractmethod
    def expected(self, *, what: ExpectedStick) -> str:
        """Expected, without figures."""

    @abstractmethod
    def remedy(self, *, what: StickRemedy) -> str:
        """What to do: one or two whole sentences."""

    @abstractmethod
    def count(self, *, count: int, of: Literal["numbers", "entries", "readings", "with_force"]) -> str:
        """Found: so many numbers, entries, readings, or readings with a force."""

    @abstractmethod
    def one_each(self, *, readings: int) -> str:
        """Expected: one for each of so many readings."""

    @abstractmethod
    def below_height(self, *, height_m: float) -> str:
        """Expected: a travel less than the height of the contact point."""

    @abstractmethod
    def up_to(self, *, most_factor: float) -> str:
        """Expected: more than 0, up to a number in the field's own unit."""

    @abstractmethod
    def angle(self, *, angle_rad: float) -> str:
        """Found: an angle."""

    @abstractmethod
    def travel(self, *, travel_m: float) -> str:
        """Found: a travel."""

    @abstractmethod
    def at_most_stop(self, *, stop_rad: float) -> str:
        """Expected: an angle no larger than the end stop."""

    @abstractmethod
    def all_at(self, *, angle_rad: float) -> str:
        """Found: all readings at one angle."""

    @abstractmethod
    def or_more(self, *, unit: Literal["N m", "N m/rad"]) -> str:
        """Expected: a number of 0 or more in a unit."""

    @abstractmethod
    def within_stop(self, *, stop_rad: float) -> str:
        """Expected: an angle within the end stop."""

    @abstractmethod
    def movements(
        self, *, first_m: float, second_m: float, first_n_per_m: float, second_n_per_m: float, alike: bool
    ) -> str:
        """Found: movement on two sticks by their stiffness; whether that is too alike to tell apart."""

    @abstractmethod
    def shoulder_only(self, *, model: Name) -> str:
        """Expected: the shoulder, since that model has no other joint."""

    @abstractmethod
    def percentage(self, *, value_share: float) -> str:
        """What to do: divide a percentage by 100; what comes out."""

    @abstractmethod
    def share_of(self, *, of: Literal["time", "hold", "force"]) -> str:
        """Expected: a share of something, more than 0 and up to 1."""

    @abstractmethod
    def piece_of_kit(self, *, piece: Literal["topper", "extension"]) -> str:
        """Expected: a topper or shaft extension of the kit's file."""

    @abstractmethod
    def state_reading(self, *, direction_rad: float) -> str:
        """Found: a reading in a direction that was not read in the usual state."""
