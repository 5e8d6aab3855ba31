"""Words on charts, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.charts import Chart, Charts, Label
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_LABELS: dict[Label, str] = {
    "estimate": "estimate",
    "not_measured": "not measured here",
    "reading": "reading",
    "comfortable_force": "comfortable force",
    "movement_range": "movement range",
    "pushing_out": "fitted, pushing out",
    "letting_back": "fitted, letting back",
    "travel_axis": "travel at the contact point, mm",
    "force_axis": "force, N",
    "player_has": "force the player has",
    "meet": "where they meet",
    "flex": "after the flex of the mount",
    "bits_axis": "predicted precision, bits (more is finer)\nbeside: chance of best or as good",
    "does_not_fit": "does not fit",
    "leaves_centre": "actuation force",
    "full_travel": "force at full travel",
    "stick_force_axis": "force at the contact point of the bare stick, N",
    "travel": "travel",
    "rest": "rest",
    "to_the_right": "to the right",
    "forward": "forward",
    "time_axis": "time, s (grey: at rest)",
    "output_axis": "share of full output",
    "target": "target",
    "own_output": "the player's output",
    "dead_zone": "dead zone",
    "this_curve": "this curve",
    "straight": "straight",
    "deflection_percent": "deflection, % of travel",
    "output_percent": "output, %",
    "burst": "sudden movement",
}
_INTERVAL_OF = {"figures": "interval", "pushing_out": "interval, pushing out", "player": "interval of that"}


class Texts(Charts):
    """Axes, legends, titles."""

    w: English

    def label(self, *, label: Label) -> str:
        return _LABELS[label]

    def interval(self, *, of: Literal["figures", "pushing_out", "player"]) -> str:
        return f"{self.w.share(0.95)} {_INTERVAL_OF[of]}"

    def polar_title(self, *, chart: Chart, unit: Text) -> str:
        return f"{_LABELS[chart]}, {self.say(unit)}"

    def least(self, *, direction_rad: float, figure: Text) -> str:
        return f"least: {self.w.direction(direction_rad)} {self.say(figure)}"

    def reach_title(self, *, least: Text) -> str:
        return f"travel reached (circle: full)\n{self.say(least)}"

    def direction(self, *, direction_rad: float) -> str:
        return self.w.direction(direction_rad)

    def ranked(self, *, rank: int, setup: Text) -> str:
        return f"{rank} {self.say(setup)}"

    def bar(self, *, chance_share: float, fits: bool) -> str:
        return self.w.chance(chance_share) if fits else f"{self.w.chance(chance_share)}, {_LABELS['does_not_fit']}"

    def bench_travel(self, *, full: Text) -> str:
        return f"{_LABELS['travel_axis']} (end stop at {self.say(full)})"

    def bench_force(self, *, height_m: float) -> str:
        return f"force at {self.w.millimetres(height_m)} above the pivot, N"

    def bench_reading(self, *, outward: bool, used: bool) -> str:
        return f"reading {'out' if outward else 'back'}{'' if used else ', left out'}"

    def one_stick_alt(self, *, stick: Name, start_n: float, full_n: float) -> str:
        return f"{self.w.name(stick)}: {self.w.amount(start_n, 'n')} to {self.w.amount(full_n, 'n')}."

    def kit_alt(self, *, sticks: int, lightest: Name, light_n: float, heaviest: Name, heavy_n: float) -> str:
        return (
            f"{sticks} {self.w.plural(sticks, one='stick', other='sticks')} from lightest to heaviest: "
            f"{self.w.name(lightest)} with {self.w.amount(light_n, 'n')} at full travel, to {self.w.name(heaviest)} "
            f"with {self.w.amount(heavy_n, 'n')}."
        )

    def reach(self, *, direction_rad: float) -> str:
        return f"reach, least {self.w.direction(direction_rad)}"
