"""The tuning of a stick, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.tunings import Setting, Tunings

__all__ = ["Texts"]

_SETTINGS: dict[Setting, str] = {
    "rotation": "rotation",
    "range": "range",
    "curve": "response curve",
    "dead_zone": "dead zone",
}


class Texts(Tunings):
    """What each step does, and what the recordings cannot tell."""

    w: English

    def centre_left(self, *, why: Text) -> str:
        return f"Centre: not changed ({self.clause(why)})."

    def centre(self, *, right_share: float, forward_share: float) -> str:
        side = "right" if right_share >= 0 else "left"
        end = "forward" if forward_share >= 0 else "back"
        return (
            f"Centre: at rest, the stick gives {self.w.tenth_share(abs(right_share))} {side} and "
            f"{self.w.tenth_share(abs(forward_share))} {end}. That is subtracted."
        )

    def range_left(self) -> str:
        return "Range: not changed, because reach is not known in every direction."

    def range(
        self, *, least_share: float, least_rad: float, most_share: float, most_rad: float,
        least_factor: float, most_factor: float, limit_factor: float | None,
    ) -> str:  # fmt: skip
        limit = f" The limit is {limit_factor:g}." if limit_factor is not None else ""
        return (
            f"Range: the player reaches {self.w.share(least_share)} of full output {self.w.direction(least_rad)} and "
            f"{self.w.share(most_share)} {self.w.direction(most_rad)}. A sensitivity of {least_factor:.1f} to {most_factor:.1f}, "
            f"by direction, lets the player's own range fill the output.{limit}"
        )

    def dead_zone(self, *, size: Text, own_share: float | None, jump_share: float | None) -> str:
        own = ""
        if own_share is None:
            own = " Find out the game's own dead zone: two dead zones add up."
        elif jump_share is not None:
            own = (
                f" The game has a dead zone of {self.w.share(own_share)} of its own. The output starts at "
                f"{self.w.share(jump_share)}, just above it, and ours stays as small as rest allows, so that the two do not add "
                "up."
            )
        return f"Dead zone: {self.say(size)}{own}"

    def zone_assumed(self, *, radius_share: float, why: Text) -> str:
        return f"{self.w.share(radius_share)} of the player's range, {self.clause(why)}."

    def zone_none(self, *, why: Text) -> str:
        return f"none is set ({self.clause(why)})."

    def zone_measured(self, *, radius_share: float, samples: int) -> str:
        return (
            f"{self.w.tenth_share(radius_share)} of the player's range. 95% of rest stays inside it, at 95% confidence "
            f"({samples} independent samples)."
        )

    def curve_straight(self, *, why: Text) -> str:
        return f"straight ({self.clause(why)})"

    def curve_bent(
        self, *, centre_share: float, growth_share: float, task: Literal["hold", "aim"], steep_factor: float
    ) -> str:
        recorded = {"hold": "recorded in holds", "aim": "recorded in aimed movements"}[task]
        return (
            f"scatter is {self.w.tenth_share(centre_share)} near the centre and {self.w.tenth_share(growth_share)} more at full "
            f"deflection ({recorded}), so the curve starts {steep_factor:.1f} times as steep as a straight line and then flattens. "
            "That gives the same precision along the whole range"
        )

    def curve(self, *, curve: Text) -> str:
        return f"Curve: {self.clause(curve)}."

    def no_filter(self) -> str:
        return "Filter: none chosen, because no following of a moving target was recorded."

    def outer_limit(self) -> str:
        return "Outer limit: the output stays inside the circle of full output."

    def game_not_yet(self) -> str:
        return (
            "In the game: change nothing yet. There is a fault in these recordings (see what limits them). Correct it and record "
            "again."
        )

    def game_unknown(self, *, dead_zone_share: float, sensitivity_share: float, lost: Text) -> str:
        return (
            "In the game: it is not known which settings it offers. If it offers only a dead zone and a sensitivity, set "
            f"{self._two(dead_zone_share, sensitivity_share)}. {self.say(lost)}"
        )

    def game_beyond(self, *, settings: tuple[Setting, ...], flat: bool) -> str:
        level = f" Set the sensitivity to {self.w.share(1.0)}." if flat else ""
        return f"In the game: set {self.w.all_of(tuple(_SETTINGS[one] for one in settings))} from the figures above.{level}"

    def game(self, *, dead_zone_share: float | None, sensitivity_share: float | None, lost: Text) -> str:
        return f"In the game: set {self._two(dead_zone_share, sensitivity_share)}. {self.say(lost)}"

    def lost(
        self, *, off_centre: bool, rotated_rad: float | None, least_factor: float | None, most_factor: float | None,
        uneven: bool, unfiltered: bool, rms_share: float,
    ) -> str:  # fmt: skip
        parts = ["the stick's rest stays off centre"] if off_centre else []
        if rotated_rad is not None:
            parts.append(f"the output stays rotated by {self.w.turn(rotated_rad)}, seen from above")
        if least_factor is not None and most_factor is not None:
            parts.append(
                f"sensitivity is the same in all directions, where {least_factor:.1f} to {most_factor:.1f} is needed by direction"
            )
        parts += ["precision differs along the range"] if uneven else []
        parts += ["nothing is filtered"] if unfiltered else []
        told = "; ".join(parts) or "little is lost"
        return f"With these two settings alone: {told}. {self._off(rms_share)}"

    def nothing_lost(self, *, rms_share: float) -> str:
        return f"These two settings do all that is needed, except for rounding. {self._off(rms_share)}"

    def foreign_unit(self, *, recording: Name, unit: Name) -> str:
        return (
            f"{self.w.name(recording)} is in {self.w.name(unit)}, not in share of full output, and was not used for tuning. Give its "
            "scale, or record on the stick itself."
        )

    def other_stick(
        self, *, recording: Name, its_site: Name | None, its_stick: Name | None, site: Name, stick: Name
    ) -> str:
        here = f"{self.w.name(stick)} at the {self.w.name(site)}"
        parts = [f"at the {self.w.name(its_site)}"] if its_site is not None else []
        parts += [f"on {self.w.name(its_stick)}"] if its_stick is not None else []
        made = " and ".join(parts) or "elsewhere"
        return f"{self.w.name(recording)} was made {made}, and was not used to tune {here}. Record on {here}."

    def clock(self, *, recording: Name, left_out: int, samples: int) -> str:
        return (
            f"{self.w.name(recording)}: {left_out} of {samples} samples had no time, or a time that was not later than the one "
            f"before. {self.w.plural(left_out, one='It was', other='They were')} left out."
        )

    def one_axis(self, *, recording: Name, missing: Literal["x", "y", "both"]) -> str:
        axes = {"x": "no x", "y": "no y", "both": "neither x nor y"}[missing]
        return f"{self.w.name(recording)} holds {axes} and was not used for tuning, which needs both axes of the stick. Record both."

    def in_recording(self, *, recording: Name, told: Text) -> str:
        return f"{self.w.name(recording)}: {self.say(told)}"

    def rest_by_stillness(self) -> str:
        return (
            "These recordings have no rest that was asked for. Moments in which the stick lay still near the centre were used "
            "instead. To confirm: record 20 s of rest, with hands as in play."
        )

    def no_rest(self) -> str:
        return (
            "Centre and dead zone are not changed: no rest was recorded. Record 20 s of rest, with hands as in play but not "
            "trying."
        )

    def wide_dead_zone(self, *, radius_share: float) -> str:
        return (
            f"The dead zone would take {self.w.share(radius_share)} of the player's range, so something else is wrong. Support the "
            "limb, check whether the stick was touched at switch-on, or use a firmer stick."
        )

    def short_rest(self, *, why: Text, largest_share: float, longer_factor: float) -> str:
        return (
            f"No dead zone can be set: {self.clause(why)}. It would be {self.w.tenth_share(largest_share)} or more. Record a rest at "
            f"least {longer_factor:.1f} times as long."
        )

    def frozen_rest(self) -> str:
        return (
            "The stick gave exactly the same at every sample of rest. Either something already cleans its rest before this program "
            "sees it, or the recording is frozen. Its true noise at rest cannot be seen. Look for a dead zone in the driver or the "
            "hub."
        )

    def straight_curve(self) -> str:
        return (
            "There is no clear increase in scatter with deflection, so the curve stays straight. To confirm: record more holds near "
            "the centre and near full deflection."
        )

    def few_levels(self, *, why: Text) -> str:
        return (
            f"The curve stays straight: {self.clause(why)}. Record holds (or aims) at a quarter, half, three quarters and the whole "
            "of the player's range."
        )

    def curve_limited(self) -> str:
        return (
            "Scatter near the centre is so small beside that at full deflection that the curve would start more than three times as "
            "steep as a straight line. It is limited to three times, because noise at rest increases as well."
        )

    def no_range(self, *, directions: int) -> str:
        known = f"reach is known in only {directions} {self.w.plural(directions, one='direction', other='directions')}"
        return (
            f"The range is not changed: {known if directions else 'no reach was recorded'}. Record one slow turn round the edge, or "
            "pushes with their cues right, forward, left and back."
        )

    def gain_limit(self, *, directions_rad: tuple[float, ...], reach_share: tuple[float, ...]) -> str:
        short = self.w.all_of(
            tuple(
                f"{self.w.direction(towards)} ({self.w.share(reached)})"
                for towards, reached in zip(directions_rad, reach_share, strict=False)
            )
        )
        return (
            f"Reach is below a third of full output {short}. That would need a sensitivity of more than three, and noise increases "
            "with it, so it is limited to three. A lighter stick, a shorter travel or a shaft extension helps more."
        )

    def why_no_rest(self) -> str:
        return "no rest was recorded"

    def why_unsettled(self) -> str:
        return "the stick did not settle in any rest"

    def why_short_rest(self, *, samples: int, needed: int, coverage_share: float, confidence_share: float) -> str:
        return (
            f"the rest is worth {samples} independent {self.w.plural(samples, one='sample', other='samples')}, and {needed} are "
            f"needed for {self.w.share(coverage_share)} of rest at {self.w.share(confidence_share)} confidence"
        )

    def why_involuntary(self, *, radius_share: float, rest_share: float | None, rest_why: Text | None) -> str:
        needs = f"the stick at rest needs {self.w.tenth_share(rest_share)}" if rest_share is not None else ""
        if rest_why is not None:
            unknown = f"what rest needs is not known, because {self.clause(rest_why)}"
            needs = f"{needs}; {unknown}" if needs else unknown
        because = f" ({needs})" if needs else ""
        return f"set so that a radius of {self.w.share(radius_share)} keeps out involuntary movement in play{because}"

    def why_few_levels(self, *, levels: int) -> str:
        at = f"at {levels} {self.w.plural(levels, one='deflection', other='deflections')}"
        return f"scatter was recorded {at}, and three that lie well apart are needed"

    def why_no_increase(self) -> str:
        return "no clear increase in scatter with deflection"

    def why_one_each(self) -> str:
        return "one reading in each direction"

    def assumed_centred(self) -> str:
        return "stick centred"

    def assumed_no_zone(self) -> str:
        return "no dead zone"

    def assumed_involuntary(self) -> str:
        return "worked out from the involuntary force, not recorded"

    def assumed_even(self) -> str:
        return "scatter the same at every deflection"

    def not_recorded(self, *, stick: Name) -> str:
        return f"nothing was recorded on {self.w.name(stick)}"

    def not_usable(self, *, stick: Name) -> str:
        return f"the recordings on {self.w.name(stick)} cannot be used yet"

    def _off(self, rms_share: float) -> str:
        return f"The output differs from the full response by {self.w.share(rms_share)} of full output (rms, typical size)."

    def _two(self, dead_zone_share: float | None, sensitivity_share: float | None) -> str:
        parts = [f"dead zone {self.w.share(dead_zone_share)}"] if dead_zone_share is not None else []
        parts += [f"sensitivity {self.w.share(sensitivity_share)}"] if sensitivity_share is not None else []
        return " and ".join(parts)
