"""What to look at in the readings of a player's ability, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.ability_findings import AbilityFindings
from stickwright.codes.message import Name, Text
from stickwright.codes.stand_ins import Quantity

__all__ = ["Texts"]

_WHAT = {"force": "force", "reach": "movement range"}


class Texts(AbilityFindings):
    """Whole sentences."""

    w: English

    def identical_repeats(self, *, what: Quantity, directions_rad: tuple[float, ...]) -> str:
        return (
            f"All {_WHAT[what]} readings {self.w.directions(directions_rad)} are the same: were they copied or rounded? The "
            "scatter is taken from the other directions."
        )

    def all_identical(self, *, what: Quantity, scatter_share: float) -> str:
        return (
            f"All {_WHAT[what]} readings of a direction are the same, in every direction: were they copied, or is the gauge "
            f"coarse? A scatter of {self.w.share(scatter_share)} is assumed."
        )

    def unlike_neighbours(self, *, what: Quantity, direction_rad: float, off_factor: float) -> str:
        return (
            f"The {_WHAT[what]} {self.w.direction(direction_rad)} is {self.w.number(off_factor)} times what the other directions "
            "suggest: did the gauge slip, or is it really so? Measure it once more."
        )

    def odd_repeat(self, *, number: int, what: Quantity, direction_rad: float, off_factor: float) -> str:
        return (
            f"Reading {number} of the {_WHAT[what]} {self.w.direction(direction_rad)} is {self.w.number(off_factor, 3)} times the "
            "middle of its repeats: did the gauge slip? It is kept; delete it if you saw it slip."
        )

    def coarse_gauge(self, *, step_n: float, directions_rad: tuple[float, ...], stick: Name | None) -> str:
        instead = f", or note how far the player gets on {self.w.name(stick)}" if stick else ""
        return (
            f"The gauge reads in steps of {self.w.amount(step_n, 'n')}, too coarse for the force "
            f"{self.w.directions(directions_rad)} (under ten steps). Use a finer gauge or coins on a thread{instead}."
        )

    def end_of_gauge(self, *, directions_rad: tuple[float, ...], limit_n: float) -> str:
        return (
            f"The force read {self.w.directions(directions_rad)} is at the end of the gauge's scale: at least "
            f"{self.w.amount(limit_n, 'n')}, and taken as that much. A gauge with a longer scale would tell."
        )

    def zero_force(self, *, directions_rad: tuple[float, ...], instead: Text) -> str:
        return (
            f"A force of 0 was read {self.w.directions(directions_rad)}: it is taken as {self.clause(instead)}. If the "
            "player cannot push that way, give that direction the weight 0 in game.toml."
        )

    def gauge_zero(self, *, no_load_n: float) -> str:
        return (
            f"The gauge read {self.w.amount(no_load_n, 'n')} without load, over a tenth of the weakest force: set it to zero and "
            "measure again. Nothing was subtracted."
        )

    def tires(self, *, lost_share: float, least_share: float, most_share: float) -> str:
        tires = "tires" if least_share > 0 else "may tire"
        return (
            f"The first direction, measured again at the end, had lost {self.w.share(lost_share)} of its force (95%: "
            f"{self.w.share(least_share)} to {self.w.share(most_share)}): the player {tires}. The plan counts on the fresh force; "
            "see the figure for a tired player beside it, and offer a rest."
        )

    def spasms_without_force(self) -> str:
        return "Spasms were noted without their force, so they are not counted: note a few peaks."

    def no_direction(self, *, stick: Name) -> str:
        return f"How far the player got on {self.w.name(stick)} was noted without the direction, so it is not counted."

    def limb_stiffness_refused(self, *, site: Name, problem: Text) -> str:
        return f"At the {self.w.name(site)}: {self.say(problem)}"

    def own_days(
        self, *, site: Name, visits: int, spread_share: float, low_share: float, high_share: float, usual_share: float
    ) -> str:
        return (
            f"Force on another day at the {self.w.name(site)}: by the player's own {visits} visits, {self.w.share(spread_share)} "
            f"more or less (standard deviation; 95%: {self.w.share(low_share)} to {self.w.share(high_share)}), in place of the usual "
            f"{self.w.share(usual_share)}. The interval for another day allows for how few visits these are."
        )
