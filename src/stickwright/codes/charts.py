"""Words on charts: axes, legends, titles."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Chart", "Charts", "Label"]

Label = Literal[
    "estimate", "not_measured", "reading", "comfortable_force", "movement_range", "pushing_out", "letting_back",
    "travel_axis", "force_axis", "player_has", "meet", "flex", "bits_axis", "does_not_fit",
    "leaves_centre", "full_travel", "stick_force_axis", "travel", "rest", "to_the_right", "forward",
    "time_axis", "output_axis", "target", "own_output", "dead_zone", "this_curve", "straight",
    "deflection_percent", "output_percent", "burst",
]  # fmt: skip
Chart = Literal["comfortable_force", "movement_range"]


class Charts(Topic):
    """Short labels without a full stop."""

    @abstractmethod
    def label(self, *, label: Label) -> str:
        """Axes, with their unit, and entries of legends. `not_measured`: estimated from the other directions; `pushing_out`,
        `letting_back`: lines fitted to readings; `meet`: where the player's force and the stick's are equal; `flex`: the force
        that is left when the mount flexes; `bits_axis`: two lines, the second about the chances beside the bars;
        `leaves_centre`, `full_travel`: marks of the two forces of a stick; `burst`: a sudden movement; `straight`: a curve
        that changes nothing."""

    @abstractmethod
    def interval(self, *, of: Literal["figures", "pushing_out", "player"]) -> str:
        """Entry of a legend, a 95% interval: of all figures, of a line fitted to pushes outwards, of the player's force."""

    @abstractmethod
    def polar_title(self, *, chart: Chart, unit: Text) -> str:
        """Title of a polar chart, with its unit."""

    @abstractmethod
    def least(self, *, direction_rad: float, figure: Text) -> str:
        """Under a chart: the direction with the least."""

    @abstractmethod
    def reach_title(self, *, least: Text) -> str:
        """Over the polygon of travel reached: the circle is full travel; on a second line the least."""

    @abstractmethod
    def direction(self, *, direction_rad: float) -> str:
        """Round a chart, or over one: a direction."""

    @abstractmethod
    def ranked(self, *, rank: int, setup: Text) -> str:
        """A set-up with its rank."""

    @abstractmethod
    def bar(self, *, chance_share: float, fits: bool) -> str:
        """Beside a bar: the chance that it is the best or as good, and that it does not fit."""

    @abstractmethod
    def bench_travel(self, *, full: Text) -> str:
        """Axis: travel at the contact point in mm, and where the end stop is."""

    @abstractmethod
    def bench_force(self, *, height_m: float) -> str:
        """Axis: force in N at a height above the pivot."""

    @abstractmethod
    def bench_reading(self, *, outward: bool, used: bool) -> str:
        """Entry of a legend: readings pushing out, or letting back; those that were not used."""

    @abstractmethod
    def one_stick_alt(self, *, stick: Name, start_n: float, full_n: float) -> str:
        """A chart of one stick, in a sentence: actuation force to force at full travel."""

    @abstractmethod
    def kit_alt(self, *, sticks: int, lightest: Name, light_n: float, heaviest: Name, heavy_n: float) -> str:
        """A chart of sticks, in a sentence: lightest and heaviest with their force at full travel."""

    @abstractmethod
    def reach(self, *, direction_rad: float) -> str:
        """Entry of a legend: how far the stick got, and where least."""
