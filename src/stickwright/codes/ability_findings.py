"""What to look at in the readings of a player's ability."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.stand_ins import Quantity

__all__ = ["AbilityFindings"]


class AbilityFindings(Topic):
    """Whole sentences."""

    @abstractmethod
    def identical_repeats(self, *, what: Quantity, directions_rad: tuple[float, ...]) -> str:
        """All repeats are the same in some directions: copied or rounded? The scatter comes from the others."""

    @abstractmethod
    def all_identical(self, *, what: Quantity, scatter_share: float) -> str:
        """All repeats are the same in every direction: copied, or a coarse gauge? A scatter is assumed."""

    @abstractmethod
    def unlike_neighbours(self, *, what: Quantity, direction_rad: float, off_factor: float) -> str:
        """A direction is so many times (below 1: a fraction of) what the others lead one to expect: read it once more."""

    @abstractmethod
    def odd_repeat(self, *, number: int, what: Quantity, direction_rad: float, off_factor: float) -> str:
        """One repeat is so many times the middle of its direction; it is kept."""

    @abstractmethod
    def coarse_gauge(self, *, step_n: float, directions_rad: tuple[float, ...], stick: Name | None) -> str:
        """The gauge's step is too coarse for the force in these directions; `stick`: the lightest stick, as a gauge."""

    @abstractmethod
    def end_of_gauge(self, *, directions_rad: tuple[float, ...], limit_n: float) -> str:
        """The force is at the end of the gauge's scale, and taken as that much."""

    @abstractmethod
    def zero_force(self, *, directions_rad: tuple[float, ...], instead: Text) -> str:
        """A force of 0 was read; what stands in."""

    @abstractmethod
    def gauge_zero(self, *, no_load_n: float) -> str:
        """What the gauge reads without load is over a tenth of the weakest force."""

    @abstractmethod
    def tires(self, *, lost_share: float, least_share: float, most_share: float) -> str:
        """Force lost from the first to the last reading of a direction, with its 95% interval (minus: force gained)."""

    @abstractmethod
    def spasms_without_force(self) -> str:
        """Spasms were noted without their force."""

    @abstractmethod
    def no_direction(self, *, stick: Name) -> str:
        """How far the player got on a stick was noted without the direction."""

    @abstractmethod
    def limb_stiffness_refused(self, *, site: Name, problem: Text) -> str:
        """Why the tremor on two sticks does not tell the limb's stiffness."""

    @abstractmethod
    def own_days(
        self, *, site: Name, visits: int, spread_share: float, low_share: float, high_share: float, usual_share: float
    ) -> str:
        """How much the player's own days differ (standard deviation, 95% interval), in place of the usual figure."""
