"""The figures of a sheet as tables and sentences, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.catalogue.en.reports import VERDICTS
from stickwright.codes.figure_tables import Benched, Column, FigureTables, RangeFrom, Status, Step
from stickwright.codes.message import Name, Text
from stickwright.codes.reports import Verdict

__all__ = ["Texts"]

_COLUMNS: dict[Column, str] = {
    "direction": "direction",
    "comfortable_force": "comfortable force",
    "movement_range": "movement range",
    "sufficient": "force readings sufficient?",
    "readings": "readings: force and range",
    "setup": "set-up",
    "actuation_force": "actuation force",
    "full_force": "force at full travel",
    "player_has": "player has",
    "meet": "predicted to meet at",
    "of_travel": "share of travel, predicted",
    "verdict": "verdict",
    "weakest": "predicted weakest direction",
    "effort": "predicted effort",
    "unintended": "predicted unintended activations at dead zone",
    "bits": "predicted bits",
    "best": "best or as good",
    "limit": "what limits it",
    "step": "step",
    "setting": "setting",
    "deflection": "deflection",
    "output": "output",
    "recording": "recording",
    "sideways": "most sideways",
    "fore_and_aft": "most fore and aft",
    "what": "what",
    "value": "value",
}
_STATUS: dict[Status, str] = {
    "enough": "yes",
    "nearly": "nearly",
    "not enough": "not enough",
    "not measured": "not measured",
}
_STEPS: dict[Step, str] = {
    "centre": "centre",
    "rotation": "rotation",
    "range": "sensitivity",
    "dead_zone": "dead zone",
    "curve": "response curve",
    "filter": "filter",
    "outer_limit": "outer dead zone",
}
_RANGE_FROM: dict[RangeFrom, str] = {
    "rim": "recorded along the edge: ",
    "push": "recorded in full pushes: ",
    "": "",
}
_BENCHED: dict[Benched, str] = {
    "actuation_force": "actuation force",
    "full_force": "force at full travel",
    "friction": "friction",
    "travel": "travel",
    "contact_height": "height of the contact point",
    "angle": "angle at the end stop",
    "full_output": "full output from",
    "dead_travel": "travel without output",
}


class Texts(FigureTables):
    """Captions, heads, cells and sentences."""

    w: English

    def column(self, *, column: Column) -> str:
        return _COLUMNS[column]

    def direction(self, *, direction_rad: float) -> str:
        return self.w.direction(direction_rad)

    def best_note(self, *, tie_bits: float) -> str:
        return (
            f"Best or as good: the chance that no other stick is better by more than {self.w.trimmed(tie_bits)} bit. Sticks "
            f"that count as equal each get it, so these add up to more than {self.w.share(1.0)}."
        )

    def rested(self) -> str:
        return "Forces are those of a rested player on the day of the visit."

    def other_day(self, *, direction_rad: float, low: Text, high: Text, own: bool) -> str:
        spread = "day-to-day spread from the player's own visits" if own else "day-to-day spread assumed"
        return (
            f"{self.rested()} On another day the force {self.w.direction(direction_rad)} may be {self.say(low)} to "
            f"{self.say(high)} ({self.w.share(0.95)} interval, {spread}); the ranking of the sticks allows for that."
        )

    def status(self, *, status: Status) -> str:
        return _STATUS[status]

    def counts(self, *, force: int, reach: int) -> str:
        return f"{force} and {reach}"

    def ability(self, *, site: Name) -> str:
        return f"Ability at the {self.w.name(site)}"

    def ability_alt(
        self, *, site: Name, directions: int, weakest_rad: float, force: Text, reach: Text, strongest_rad: float, strongest: Text
    ) -> str:  # fmt: skip
        return (
            f"Two polar charts of the {self.w.name(site)}: comfortable force and movement range in {directions} "
            f"{self.w.plural(directions, one='direction', other='directions')}, with readings and "
            f"{self.w.share(0.95)} intervals. The weakest direction is {self.w.direction(weakest_rad)} with "
            f"{self.say(force)} and {self.say(reach)}; the strongest is {self.w.direction(strongest_rad)} with "
            f"{self.clause(strongest)}."
        )

    def none_computed(self, *, site: Name) -> str:
        return f"No set-up was computed for the {self.w.name(site)}."

    def reach(self, *, site: Name) -> str:
        return f"Predicted share of travel reached, {self.w.name(site)}"

    def reach_alt(
        self, *, setup: Text, site: Name, weakest_rad: float, weakest: Text, mean_share: float, second: Text | None
    ) -> str:
        beside = f"; the dashed polygon is {self.clause(second)}" if second is not None else ""
        return (
            f"Polygon of the travel reached with {self.say(setup)} at the {self.w.name(site)}, inside a circle of full travel: "
            f"the weakest direction is {self.w.direction(weakest_rad)} with {self.say(weakest)}, the mean "
            f"{self.w.share(mean_share)}{beside}."
        )

    def meets(self, *, travel: Text, force: Text) -> str:
        return f"{self.say(travel)} at {self.say(force)}"

    def crossing(self, *, site: Name) -> str:
        return f"Where the forces of player and stick meet, {self.w.name(site)}"

    def crossing_alt(self, *, site: Name, directions_rad: tuple[float, ...], best: Text | None) -> str:
        more = f" {self.say(best)}" if best is not None else ""
        return (
            f"Force against travel at the {self.w.name(site)}, {self.w.directions(directions_rad)}: the force that the player "
            "has falls with travel, and the force that each stick needs rises. Where they cross is how far the stick "
            f"gets.{more}"
        )

    def best_crossing(self, *, direction_rad: float, setup: Text, reached: Text, travel: Text, force: Text) -> str:
        return (
            f"{self.w.capital(self.w.direction(direction_rad))} on {self.say(setup)} they meet at {self.say(reached)} of "
            f"{self.say(travel)}, with {self.clause(force)}."
        )

    def ranking(self, *, site: Name) -> str:
        return f"Sticks ranked, {self.w.name(site)}"

    def verdict(self, *, verdict: Verdict, confirm: bool) -> str:
        return f"{VERDICTS[verdict]}{', to confirm' if confirm else ''}"

    def weakest(self, *, direction_rad: float, share: Text) -> str:
        return f"{self.w.direction(direction_rad)} {self.say(share)}"

    def at_dead_zone(self, *, rate: Text, dead_zone_share: float) -> str:
        return f"{self.say(rate)} at {self.w.share(dead_zone_share)}"

    def chance(self, *, chance_share: float) -> str:
        return self.w.chance(chance_share)

    def ranking_alt(
        self, *, sticks: int, site: Name, first: Text, bits: Text, chance_share: float, second: Text | None
    ) -> str:
        after = f"; {self.clause(second)}" if second is not None else ""
        return (
            f"Bars of predicted precision in bits for {sticks} {self.w.plural(sticks, one='stick', other='sticks')} at the "
            f"{self.w.name(site)}, with intervals and the chance that each is the best or as good: first is "
            f"{self.say(first)} with {self.say(bits)} bits, {self.w.chance(chance_share)}{after}. Hatched bars do not fit."
        )

    def second(self, *, setup: Text, bits: Text) -> str:
        return f"second is {self.say(setup)} with {self.say(bits)} bits"

    def more_than_all(self) -> str:
        return "more than all"

    def tuning(self, *, stick: Name, site: Name) -> str:
        return f"Tuning of {self.w.name(stick)}, {self.w.name(site)}"

    def tuning_alt(self, *, stick: Name, site: Name) -> str:
        return f"Tuning of {self.w.name(stick)} at the {self.w.name(site)}, in the order in which it is applied."

    def step(self, *, step: Step) -> str:
        return _STEPS[step]

    def centre(self, *, centre: Text) -> str:
        return f"{self.clause(centre)}: subtracted"

    def no_rotation(self, *, base: Text) -> str:
        return f"none. {self.say(base)}".rstrip()

    def rotation(self, *, turned: Text, until_turned: bool, base: Text) -> str:
        until = " until the base is turned" if until_turned else ""
        return f"output turned {self.clause(turned)}{until}. {self.say(base)}".rstrip()

    def dead_zone(self, *, radius: Text, starts_share: float, game_share: float | None) -> str:
        above = f", just above the game's own {self.w.share(game_share)}" if game_share is not None else ""
        return f"{self.clause(radius)}; output starts at {self.w.share(starts_share)}{above}"

    def radius(self, *, radius: Text, why: Text | None) -> str:
        return f"{self.say(radius)} of full output{f': {self.clause(why)}' if why is not None else ''}"

    def sensitivity(self, *, recorded: RangeFrom, parts: tuple[Text, ...]) -> str:
        return _RANGE_FROM[recorded] + "; ".join(self.clause(one) for one in parts)

    def sensitivity_unknown(self) -> str:
        return "not set: reach is not known in every direction"

    def widened(self, *, direction_rad: float, reached: Text, gain_factor: float) -> str:
        return f"{self.w.direction(direction_rad)} reached {self.say(reached)}, times {self.w.fixed(gain_factor)}"

    def others(self, *, all_round: bool, least_share: float, most_share: float, gain_factor: float) -> str:
        least, most = self.w.share(least_share), self.w.share(most_share)
        spread = most if least == most else f"{least} to {most}"
        where = "all directions" if all_round else "others"
        return f"{where} reached {spread}, times {self.w.fixed(gain_factor)} at most"

    def curve(self, *, stick: Name) -> str:
        return f"Response curve, {self.w.name(stick)}"

    def curve_alt(self, *, stick: Name, dead_zone: Text, starts_share: float, told: Text) -> str:
        return (
            f"Response curve of {self.w.name(stick)}: output against deflection, from the dead zone of {self.say(dead_zone)} "
            f"outwards, starting at {self.w.share(starts_share)}. {self.say(told)}"
        )

    def stage(self, *, stage: Literal["before", "after"]) -> str:
        return stage

    def before_after(self, *, recording: Name) -> str:
        return f"Before and after tuning, {self.w.name(recording)}"

    def before_after_alt(self, *, recording: Name, stick: Name, target: bool) -> str:
        return (
            f"The player's own recording {self.w.name(recording)} on {self.w.name(stick)} before and after tuning"
            f"{', with the target' if target else ''}. Circles mark full output and the dead zone."
        )

    def rest(self) -> str:
        return "at rest"

    def reach_in(self, *, direction_rad: float) -> str:
        return f"deflection reached {self.w.direction(direction_rad)}"

    def recording(self, *, recording: Name) -> str:
        return f"Recording {self.w.name(recording)}"

    def recording_alt(self, *, recording: Name, time_s: float, weakest: Text | None) -> str:
        told = "it has no task that shows reach" if weakest is None else self.clause(weakest)
        return (
            f"Recording {self.w.name(recording)}, {self.w.amount(time_s, 's')}: where the stick rests and how far it gets; "
            f"{told}."
        )

    def weakest_reach(self, *, direction_rad: float, reached: Text) -> str:
        return f"the weakest direction is {self.w.direction(direction_rad)} with {self.say(reached)}"

    def bench(self, *, stick: Name) -> str:
        return f"Bench of {self.w.name(stick)}"

    def benched(self, *, figure: Benched) -> str:
        return _BENCHED[figure]

    def of_travel(self, *, share: Text) -> str:
        return f"{self.say(share)} of travel"

    def bench_alt(self, *, stick: Name, used: int, readings: int, start: Text, full: Text, returns: Text) -> str:
        return (
            f"Force against travel of {self.w.name(stick)}: {used} of {readings} "
            f"{self.w.plural(readings, one='reading', other='readings')} used, with fitted lines, from an actuation force of "
            f"{self.say(start)} to {self.say(full)} at full travel. {self.say(returns)}"
        )
