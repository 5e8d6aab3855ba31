"""What a stick's bench readings tell, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.bench_notes import BenchNotes, Number
from stickwright.codes.message import Text

__all__ = ["Texts"]

_NAMES = {"preload": "preload", "friction": "friction", "stiffness": "stiffness"}
_CAUSES = {
    "preload": "does the spring not act near the centre (a slack centre)?",
    "friction": "letting back took more force than pushing outwards: were the two swapped?",
    "stiffness": "the force falls as the stick goes out: is the order of the angles right, or does the spring slip?",
}
_APART = "preload and friction cannot be told apart from those"


class Texts(BenchNotes):
    """Findings and reasons of the bench."""

    w: English

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
        way = "pushing out" if outward else "letting back"
        return (
            f"Reading {number} ({self.w.amount(force_n, 'n')} at {self.w.amount(angle_rad, 'deg')}, {way}) does not go with the "
            f"others: about {self.w.amount(expected_n, 'n')} was to be expected there ({self.w.amount(low_n, 'n')} to "
            f"{self.w.amount(high_n, 'n')}). It is left out; measure it again."
        )

    def coarse_gauge(self, *, step_n: float, least_n: float, steps: int) -> str:
        return (
            f"The gauge's step of {self.w.amount(step_n, 'n')} is coarse for a force of {self.w.amount(least_n, 'n')}: fewer than "
            f"{steps} steps. Use a finer gauge, or coins of known weight on a thread."
        )

    def way_not_written(self) -> str:
        return (
            "It is not recorded whether readings were taken pushing out or letting back: they are taken as pushing out."
        )

    def stop_not_recorded(self, *, largest_rad: float) -> str:
        return (
            f"The end stop was not recorded: the largest angle measured, {self.w.amount(largest_rad, 'deg')}, is taken for it. If "
            "the stick goes further, the force at full travel and the travel are larger than given."
        )

    def stays(self, *, angle_rad: float) -> str:
        return (
            f"No force was felt while letting back at {self.w.amount(angle_rad, 'deg')}: friction holds the stick there. Such "
            "readings only say that friction is at least as large as the spring, and are left out of the fit."
        )

    def several_heights(self, *, height_m: float) -> str:
        return f"Readings were taken at different heights: forces are stated at the lowest, {self.w.amount(height_m, 'mm')}."

    def output_for_angle(self) -> str:
        return (
            "The output stands for the angle: it is assumed to be in proportion to it, and full at the end stop. If the output is "
            "full early, forces near full travel come out wrong; measure the travel to be sure."
        )

    def drift(self) -> str:
        return (
            "The readings drift in the order they were taken, and the intervals are wider for it. Set the gauge to zero before "
            "each direction, and measure the first point again at the end."
        )

    def allowed_for(self, *, off_square_rad: float, low_share: float) -> str:
        return (
            f"The intervals allow for a gauge up to {self.w.amount(off_square_rad, 'deg')} off square, which reads up to "
            f"{self.w.share(low_share)} low, and for drift and a curved spring."
        )

    def curved_spring(self, *, stiffer: bool, misses_n: float) -> str:
        return (
            f"The spring is not straight: it gets {'stiffer' if stiffer else 'softer'} towards full travel, and the straight line "
            f"misses by up to {self.w.amount(misses_n, 'n')}. The forces at the centre and at full travel allow for it; between "
            "them the plan counts on the line."
        )

    def uneven_friction(self, *, centre_n: float, full_n: float) -> str:
        return (
            f"Friction is not the same at all angles: about {self.w.amount(centre_n, 'n')} at the centre and "
            f"{self.w.amount(full_n, 'n')} at full travel. The single figure is the mean; look for dirt or wear."
        )

    def negative(
        self, *, number: Number, moment_nm: float | None, stiffness_nm_per_rad: float | None, sure: bool
    ) -> str:
        found = (
            self.w.amount(stiffness_nm_per_rad, "mnm_per_rad") if moment_nm is None else self.w.amount(moment_nm, "mnm")
        )
        told = f"The readings give a {_NAMES[number]} of {found}"
        if sure:
            return f"{told}: {_CAUSES[number]} It is taken as 0."
        return f"{told}, no different from 0 within their scatter. It is taken as 0."

    def only_back(self) -> str:
        return (
            "All readings were taken while letting back: pushing outwards takes more, by twice the friction, which is not known. "
            "The preload given is preload less friction. Measure the force pushing outwards."
        )

    def only_out(self) -> str:
        return (
            "All readings were taken pushing outwards: preload and friction cannot be told apart, so the preload given is their "
            "sum, and whether the stick returns to centre is not known. Measure the force while letting back as well."
        )

    def why_only_back(self) -> str:
        return f"all readings were taken while letting back, and {_APART}; measure the force while pushing outwards as well"

    def why_only_out(self) -> str:
        return f"all readings were taken pushing outwards, and {_APART}; measure the force while letting back as well"

    def friction_as_none(self) -> str:
        return "friction taken as 0; its share is in the preload"

    def few_readings(self, *, readings: int, unknowns: int) -> str:
        count = self.w.plural(readings, one=f"{readings} reading", other=f"{readings} readings")
        return f"{count} for {unknowns} unknowns leave no scatter to judge by; take two more"

    def too_few(self) -> str:
        return "too few readings to judge the scatter by; take two more"

    def swapped(self) -> str:
        return "letting back took more force than pushing outwards: the two may be swapped"

    def no_stiffness(self) -> str:
        return "the stiffness is no different from 0 within the scatter"

    def stop_read_once(self) -> str:
        return "the end stop was measured once"

    def two_outputs(self) -> str:
        return "two readings of the output leave no scatter to judge by"

    def _small(self, share: float) -> str:
        return self.w.share(share) if share >= 0.01 or share == 0 else f"less than {self.w.share(0.01)}"

    def returns_unknown(self, *, why: Text) -> str:
        return f"returns to centre: not known ({self.clause(why)})"

    def returns_see_friction(self) -> str:
        return "returns to centre: not known (see friction)"

    def returns_not(self, *, stays_share: float, low_share: float | None, high_share: float | None) -> str:
        span = ""
        if low_share is not None and high_share is not None:
            span = f" ({self._small(low_share)} to {self._small(high_share)})"
        return f"returns to centre: no, it stops {self._small(stays_share)} of its travel short{span}"

    def returns_perhaps(self, *, most_share: float) -> str:
        return f"returns to centre: yes, as far as these readings tell; it may stop up to {self._small(most_share)} of its travel short"

    def returns(self) -> str:
        return "returns to centre: yes"

    def leaves_off_centre(self, *, returns: Text) -> str:
        told = self.clause(returns)
        return f"{told[:1].upper()}{told[1:]}. Set the dead zone above that, or clean the stick."

    def worn_spring(self, *, loss_share: float, sure: bool, before_n: float, now_n: float) -> str:
        scatter = "" if sure else " (within the scatter of the readings)"
        return (
            f"The force to leave the centre has fallen by {self.w.share(loss_share)}{scatter}, from {self.w.amount(before_n, 'n')} "
            f"to {self.w.amount(now_n, 'n')}: retire the stick, or tune again."
        )

    def directions_not_compared(self) -> str:
        return "Too few readings to compare directions: take three in each, at two angles or more."

    def unequal_directions(
        self, *, start_low_n: float, start_low_rad: float, start_high_n: float, start_high_rad: float, full_low_n: float,
        full_low_rad: float, full_high_n: float, full_high_rad: float,
    ) -> str:  # fmt: skip
        def span(low_n: float, low_rad: float, high_n: float, high_rad: float) -> str:
            low, high = self.w.amount(low_n, "n"), self.w.amount(high_n, "n")
            return f"{low} {self.w.direction(low_rad)} to {high} {self.w.direction(high_rad)}"

        return (
            "The spring is not the same in all directions: force to leave the centre "
            f"{span(start_low_n, start_low_rad, start_high_n, start_high_rad)}, force at full travel "
            f"{span(full_low_n, full_low_rad, full_high_n, full_high_rad)}. The kit list gets the middle, with an interval that "
            "spans the directions. Turn the stick so that its light side serves the player's weak side."
        )

    def output_unknown(self) -> str:
        return (
            "Output against travel cannot be told: there are fewer than two readings at which the output was between nothing and "
            "full. Measure it at a third and two thirds of the travel."
        )

    def full_early(self, *, at_share: float) -> str:
        return (
            f"The output is full at {self.w.share(at_share)} of travel, and the rest of the travel does nothing. Travel and range "
            "are counted to there."
        )

    def output_short(self, *, output_share: float) -> str:
        return (
            f"At full travel the output is only about {self.w.share(output_share)}: raise the sensitivity when tuning."
        )

    def dead_centre(self, *, dead_share: float) -> str:
        return f"Nothing comes out over the first {self.w.share(dead_share)} of travel."
