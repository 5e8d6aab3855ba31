"""What a stick's bench readings tell, and what to look at in them."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["BenchNotes", "Number"]

Number = Literal["preload", "friction", "stiffness"]
"""Of the sprung lever."""


class BenchNotes(Topic):
    """Findings are whole sentences; reasons and assumptions beside a figure are clauses."""

    @abstractmethod
    def out_of_line(
        self,
        *,
        number: int,
        force_n: float,
        angle_rad: float,
        outward: bool,
        expected_n: float,
        low_n: float,
        high_n: float,
    ) -> str:
        """A reading that the others contradict, and what was to be expected; it is left out."""

    @abstractmethod
    def coarse_gauge(self, *, step_n: float, least_n: float, steps: int) -> str:
        """The gauge's step is coarse for the least force: fewer than so many steps."""

    @abstractmethod
    def way_not_written(self) -> str:
        """Whether readings were taken pushing out or letting back was not written."""

    @abstractmethod
    def stop_not_recorded(self, *, largest_rad: float) -> str:
        """The end stop was not recorded: the largest angle is taken for it."""

    @abstractmethod
    def stays(self, *, angle_rad: float) -> str:
        """No force was felt while letting back: friction holds the stick there."""

    @abstractmethod
    def several_heights(self, *, height_m: float) -> str:
        """Readings at different heights: forces are stated at the lowest."""

    @abstractmethod
    def output_for_angle(self) -> str:
        """The output stands for the angle."""

    @abstractmethod
    def drift(self) -> str:
        """The readings drift in the order they were taken."""

    @abstractmethod
    def allowed_for(self, *, off_square_rad: float, low_share: float) -> str:
        """What the intervals allow for: a gauge so far off square, which reads low by a share; drift; a curved spring."""

    @abstractmethod
    def curved_spring(self, *, stiffer: bool, misses_n: float) -> str:
        """The spring gets stiffer or softer towards full travel; by how much the straight line misses."""

    @abstractmethod
    def uneven_friction(self, *, centre_n: float, full_n: float) -> str:
        """Friction at the centre and at full travel differ."""

    @abstractmethod
    def negative(
        self, *, number: Number, moment_nm: float | None, stiffness_nm_per_rad: float | None, sure: bool
    ) -> str:
        """The readings give a negative number, taken as 0: beyond doubt (`sure`: ask for the likely cause), or within scatter."""

    @abstractmethod
    def only_back(self) -> str:
        """All readings were taken while letting back."""

    @abstractmethod
    def only_out(self) -> str:
        """All readings were taken pushing outwards."""

    @abstractmethod
    def why_only_back(self) -> str:
        """No value: preload and friction cannot be told apart; read pushing outwards as well."""

    @abstractmethod
    def why_only_out(self) -> str:
        """No value: preload and friction cannot be told apart; read letting back as well."""

    @abstractmethod
    def friction_as_none(self) -> str:
        """Assumed: friction taken as 0, its share is in the preload."""

    @abstractmethod
    def few_readings(self, *, readings: int, unknowns: int) -> str:
        """No interval: so many readings for so many unknowns."""

    @abstractmethod
    def too_few(self) -> str:
        """No interval: too few readings to judge the scatter by."""

    @abstractmethod
    def swapped(self) -> str:
        """No value: letting back took more force than pushing outwards."""

    @abstractmethod
    def no_stiffness(self) -> str:
        """No interval: the stiffness is no different from 0."""

    @abstractmethod
    def stop_read_once(self) -> str:
        """No interval: the end stop was read once."""

    @abstractmethod
    def two_outputs(self) -> str:
        """No interval: two readings of the output leave no scatter."""

    @abstractmethod
    def returns_unknown(self, *, why: Text) -> str:
        """Whether it returns to centre is not known, and why."""

    @abstractmethod
    def returns_see_friction(self) -> str:
        """Whether it returns to centre is not known, for the reason that stands beside the friction."""

    @abstractmethod
    def returns_not(self, *, stays_share: float, low_share: float | None, high_share: float | None) -> str:
        """It does not return to centre: what share of its travel it leaves, with the interval where there is one."""

    @abstractmethod
    def returns_perhaps(self, *, most_share: float) -> str:
        """It returns to centre as far as these readings tell; what it may leave at most."""

    @abstractmethod
    def returns(self) -> str:
        """It returns to centre."""

    @abstractmethod
    def leaves_off_centre(self, *, returns: Text) -> str:
        """A finding: `returns` says what it leaves; set the dead zone above that, or clean the stick."""

    @abstractmethod
    def worn_spring(self, *, loss_share: float, sure: bool, before_n: float, now_n: float) -> str:
        """The force to leave the centre has fallen since the last bench (not `sure`: within scatter): retire it or tune again."""

    @abstractmethod
    def directions_not_compared(self) -> str:
        """Too few readings to compare directions."""

    @abstractmethod
    def unequal_directions(
        self, *, start_low_n: float, start_low_rad: float, start_high_n: float, start_high_rad: float, full_low_n: float,
        full_low_rad: float, full_high_n: float, full_high_rad: float,
    ) -> str:  # fmt: skip
        """The spring differs between directions: least and most force to leave the centre, and at full travel, with directions."""

    @abstractmethod
    def output_unknown(self) -> str:
        """Output against travel cannot be told."""

    @abstractmethod
    def full_early(self, *, at_share: float) -> str:
        """The output is full before full travel: at which share of it."""

    @abstractmethod
    def output_short(self, *, output_share: float) -> str:
        """The output at full travel is below full."""

    @abstractmethod
    def dead_centre(self, *, dead_share: float) -> str:
        """Nothing comes out over the first share of travel."""
