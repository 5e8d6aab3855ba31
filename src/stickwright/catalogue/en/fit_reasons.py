"""Why a set-up does not fit and what limits it, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.fit_reasons import FitReasons, Others
from stickwright.codes.message import Name, Text
from stickwright.codes.sites import Part
from stickwright.codes.stand_ins import Form

__all__ = ["Texts"]


class Texts(FitReasons):
    """Clauses after the name of a set-up."""

    w: English

    def _others(self, others: Others, others_rad: tuple[float, ...]) -> str:
        every = {"every": "in every other direction", "every_needed": "in every other direction needed"}
        return every.get(others) or self.w.directions(others_rad)

    def _has(self, available_n: float, firm_n: float | None) -> str:
        force = self.w.amount(available_n, "n")
        return (
            force
            if firm_n is None
            else f"{force} through the flex of its mount ({self.w.amount(firm_n, 'n')} without it)"
        )

    def _zone(self, dead_zone_share: float, edge_n: float) -> str:
        return f"a dead zone of {self.w.fine_share(dead_zone_share)} ({self.w.amount(edge_n, 'n')})"

    def cannot_lift(self, *, part: Part | None, tried: bool) -> str:
        site = self.w.body_part(part)
        lifts = f"the {site} cannot lift off it" if tried else f"nobody has tried whether the {site} can lift off it"
        return f"touch surface: {lifts}, and resting there counts as input"

    def base_too_large(self, *, base_m: tuple[float, float], room_m: tuple[float, float], crosswise: bool) -> str:
        turned = "; it would fit crosswise, but cannot be used that way" if crosswise else ""
        return (
            f"too large: its base is {self.w.sides(base_m, 'mm')}, the free space {self.w.sides(room_m, 'mm')}{turned}"
        )

    def stays_off_centre(self, *, stays_share: float) -> str:
        return f"does not return to centre: left alone, it stays at {self.w.fine_share(stays_share)} of its travel"

    def too_stiff_to_move(
        self, *, direction_rad: float, start_n: float, available_n: float, firm_n: float | None
    ) -> str:
        return (
            f"too stiff {self.w.direction(direction_rad)}: it takes {self.w.amount(start_n, 'n')} to leave the centre, and the "
            f"player has {self._has(available_n, firm_n)}"
        )

    def too_stiff(
        self, *, direction_rad: float, full_n: float, start_n: float, available_n: float, firm_n: float | None, reach_m: float,
        reached_share: float,
    ) -> str:  # fmt: skip
        return (
            f"too stiff {self.w.direction(direction_rad)}: it takes {self.w.amount(start_n, 'n')} to leave the centre and "
            f"{self.w.amount(full_n, 'n')} at full travel; the player has {self._has(available_n, firm_n)} at the centre and "
            f"none at {self.w.amount(reach_m, 'mm')}, so reaches {self.w.fine_share(reached_share)} of its travel"
        )

    def travel_too_long(self, *, direction_rad: float, travel_m: float, reached_m: float, reached_share: float) -> str:
        return (
            f"travel too long {self.w.direction(direction_rad)}: full travel is {self.w.amount(travel_m, 'mm')}, and the player "
            f"gets to {self.w.amount(reached_m, 'mm')} ({self.w.fine_share(reached_share)}); movement range is the limit, not "
            "force"
        )

    def short_in_others(self, *, reason: Text, others: Others, others_rad: tuple[float, ...]) -> str:
        return f"{self.say(reason)}; it also falls short {self._others(others, others_rad)}"

    def widened(self, *, reason: Text, gain_factor: float) -> str:
        return f"{self.say(reason)}; set the sensitivity in that direction to {self.w.number(gain_factor)}"

    def too_tiring(
        self, *, direction_rad: float, others: Others, others_rad: tuple[float, ...], effort_share: float, limit_share: float,
        duty_share: float,
    ) -> str:  # fmt: skip
        more = f" (and {self._others(others, others_rad)})" if others != "none" else ""
        limit = self.w.fine_share(limit_share)
        effort = self.w.fine_share(effort_share)
        needs = effort if effort != limit else f"just over {limit}"
        return (
            f"too tiring {self.w.direction(direction_rad)}{more}: at the game's usual deflection it needs {needs} of comfortable "
            f"force (limit {limit}), and the game uses the stick {self.w.fine_share(duty_share)} of the time"
        )

    def resting_force_holds(
        self,
        *,
        rest_n: float,
        lies_m: float | None,
        lies_share: float | None,
        remain_per_min: float | None,
        limit_per_min: float,
    ) -> str:
        where = "at full travel"
        if lies_m is not None and lies_share is not None:
            where = f"{self.w.amount(lies_m, 'mm')} off centre ({self.w.fine_share(lies_share)} of its travel)"
        text = f"too light: the resting force ({self.w.amount(rest_n, 'n')}) holds it {where}"
        if remain_per_min is None:
            return text
        remain = self._often(remain_per_min)
        return f"{text}, and {remain} would remain (limit {self.w.trimmed(limit_per_min)})"

    def _often(self, often_per_min: float) -> str:
        return f"{self.w.number(often_per_min)} unintended activations a minute"

    def always_on(self, *, involuntary_n: float, dead_zone_share: float, edge_n: float) -> str:
        return (
            f"too light: involuntary movement ({self.w.amount(involuntary_n, 'n')} rms) is about as strong as the stick even with "
            f"{self._zone(dead_zone_share, edge_n)}, so it would always be on"
        )

    def spasms_pass(self, *, dead_zone_share: float, edge_n: float, often_per_min: float, limit_per_min: float) -> str:
        return (
            f"spasms get past {self._zone(dead_zone_share, edge_n)} {self.w.number(often_per_min)} times a minute (limit "
            f"{self.w.trimmed(limit_per_min)})"
        )

    def movement_passes(
        self, *, involuntary_n: float, dead_zone_share: float, edge_n: float, often_per_min: float, limit_per_min: float
    ) -> str:
        return (
            f"too light: involuntary movement ({self.w.amount(involuntary_n, 'n')} rms) gets past "
            f"{self._zone(dead_zone_share, edge_n)} {self.w.number(often_per_min)} times a minute (limit "
            f"{self.w.trimmed(limit_per_min)})"
        )

    def too_low(self, *, part: Part, height_m: float, usual_m: float) -> str:
        return (
            f"too small for the {self.w.body_part(part)}: its contact point stands {self.w.amount(height_m, 'mm')} above the "
            f"pivot, and {self.w.amount(usual_m, 'mm')} or more is usual (common practice)"
        )

    def topper_size(
        self, *, part: Part, topper: Name, width_m: float, usual_of: Form | None, low_m: float, high_m: float
    ) -> str:
        wrong = "small" if width_m < low_m else "large"
        taken = f" (assumed, usual for a {self.w.topper_form(usual_of)}: measure it)" if usual_of else ""
        return (
            f"too {wrong} for the {self.w.body_part(part)}: {self.w.name(topper)} is {self.w.amount(width_m, 'mm')} wide{taken}, and "
            f"{self.w.amount(low_m, 'mm')} to {self.w.amount(high_m, 'mm')} is usual (common practice)"
        )

    def too_delicate(self, *, part: Part, comfortable_n: float, full_n: float) -> str:
        return (
            f"too delicate for a {self.w.body_part(part)} that pushes with {self.w.amount(comfortable_n, 'n')}: "
            f"{self.w.amount(full_n, 'n')} takes it to full travel, and it may break"
        )

    def limiting_direction(self, *, direction_rad: float, reached_share: float) -> str:
        return f"the limiting direction is {self.w.direction(direction_rad)}, at {self.w.fine_share(reached_share)} of travel"

    def unsure_steadiness(self, *, most_per_min: float | None, dead_zone_share: float, limit_per_min: float) -> str:
        most = (
            "there could be unintended activation all the time"
            if most_per_min is None
            else f"there could be up to {self._often(most_per_min)}"
        )
        return (
            f"steadiness is not certain: {most} with a dead zone of {self.w.fine_share(dead_zone_share)} (limit "
            f"{self.w.trimmed(limit_per_min)}); measure 60 s at rest"
        )

    def steadiness(self, *, often_per_min: float, dead_zone_share: float) -> str:
        return f"steadiness: {self._often(often_per_min)} with a dead zone of {self.w.fine_share(dead_zone_share)}"

    def effort(self, *, direction_rad: float, effort_share: float) -> str:
        return (
            f"effort: pushing {self.w.direction(direction_rad)} needs {self.w.fine_share(effort_share)} of comfortable force at "
            "the game's usual deflection"
        )

    def nothing_near(self) -> str:
        return "nothing is near a limit"

    def support_helps(self, *, rest_n: float, more: bool) -> str:
        weight = "more of the limb's weight" if more else "the limb's weight"
        return f"a support that takes {weight} (resting force {self.w.amount(rest_n, 'n')} now) would make it fit"

    def filter_helps(self) -> str:
        return "a filter in the software that fades out spasms would make it fit"

    def steadying_helps(self) -> str:
        return "a support at the nearer joint that halves the involuntary movement would make it fit"

    def version_helps(self, *, softer: bool, start_n: float, full_n: float) -> str:
        return (
            f"a {'softer' if softer else 'stiffer'} version of this stick would fit: about {self.w.amount(start_n, 'n')} to leave "
            f"the centre and {self.w.amount(full_n, 'n')} at full travel"
        )

    def fewer_directions_help(self, *, directions_rad: tuple[float, ...]) -> str:
        return f"it would fit if the game did not need {self.w.directions(directions_rad)}"

    def longer_is_worse(self, *, direction_rad: float, best_factor: float) -> str:
        return (
            f"a longer lever would reduce the travel reached {self.w.direction(direction_rad)}, because movement range is the "
            f"limit, not force (best lever ratio {self.w.fixed(best_factor)})"
        )

    def longer_is_same(self, *, direction_rad: float, best_factor: float) -> str:
        return (
            f"a longer lever would hardly change the travel reached {self.w.direction(direction_rad)} (best lever ratio "
            f"{self.w.fixed(best_factor)})"
        )

    def longer_is_better(
        self,
        *,
        direction_rad: float,
        further: bool,
        extra_m: float,
        from_share: float,
        to_share: float,
        best_factor: float,
    ) -> str:
        more = "further " if further else ""
        only = "only " if to_share < 0.3 else ""
        return (
            f"the best {more}shaft extension {self.w.direction(direction_rad)} is {self.w.amount(extra_m, 'mm')}: it changes the "
            f"travel reached from {self.w.fine_share(from_share)} to {only}{self.w.fine_share(to_share)} (small-angle formula), "
            f"with {self.w.number(best_factor)} times the travel"
        )
