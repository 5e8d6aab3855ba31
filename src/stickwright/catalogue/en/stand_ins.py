"""Figures that stand in where nobody measured, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text
from stickwright.codes.sites import Part
from stickwright.codes.stand_ins import Form, Quantity, StandIns

__all__ = ["Texts"]

_WHAT = {"force": "force", "reach": "movement range"}


class Texts(StandIns):
    """Cells of a table."""

    w: English

    def press_force(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Comfortable force of a press", sites)

    def press_time(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Time of one press and release", sites)

    def press_landing(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Landing of presses", sites)

    def resting_on_switch(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Resting force on a switch", sites)

    def involuntary_on_switch(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Involuntary force on a switch", sites)

    def switch_moves(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Time to move between switches", sites)

    def action_stick(self, *, action: Name) -> str:
        return f"Stick that the game listens to for {self.w.name(action)}"

    def force(self, *, force_n: float) -> str:
        return self.w.amount(force_n, "n")

    def frequency(self, *, frequency_hz: float) -> str:
        return self.w.amount(frequency_hz, "hz")

    def time(self, *, time_s: float) -> str:
        return self.w.amount(time_s, "s")

    def usual_length(self, *, length_m: float, within_factor: float) -> str:
        return f"{self.w.amount(length_m, 'mm')} rms (typical size), {self._within(within_factor)}"

    def time_per_bit(self, *, intercept_s: float, slope_s: float) -> str:
        return f"{self.w.amount(intercept_s, 's')}, and {self.w.amount(slope_s, 's')} for each bit of difficulty"

    def role(self, *, role: Role) -> str:
        return self.w.role(role)

    def weakest_push(self) -> str:
        return "no press was measured; the weakest push of the same control site stands in"

    def usual_press(self, *, part: Part, low_n: float, high_n: float) -> str:
        return (
            f"no press was measured; a {self.w.body_part(part)} usually presses with {self.w.amount(low_n, 'n')} to "
            f"{self.w.amount(high_n, 'n')}"
        )

    def presses_not_counted(self, *, down_s: float | None) -> str:
        release = (
            f"; taken from the release, and {self.w.amount(down_s, 's')} to press down" if down_s is not None else ""
        )
        return f"presses in ten seconds were not counted{release}"

    def usual_landing(self, *, part: Part) -> str:
        return f"landing was not measured; usual for a {self.w.body_part(part)} (common practice, no source)"

    def all_on_switch(self) -> str:
        return "the resting force measured there, all of it taken to be on the switch"

    def input_not_set(self) -> str:
        return "the game's file (game.toml) names no input for it"

    def ten_moves(self) -> str:
        return "ten timed moves back and forth between two switches, at two distances"

    def game_controls(self) -> str:
        return "the game's own controls page (input in game.toml)"

    def _at(self, label: str, sites: tuple[Name, ...]) -> str:
        return f"{label} at {self.w.sites(sites)}"

    def zero_force(self, *, directions_rad: tuple[float, ...], sites: tuple[Name, ...]) -> str:
        return self._at(f"Force {self.w.directions(directions_rad)}", sites)

    def scatter(self, *, what: Quantity, sites: tuple[Name, ...]) -> str:
        return self._at(f"Scatter of a {_WHAT[what]} reading", sites)

    def bracketed(self, *, directions_rad: tuple[float, ...], sites: tuple[Name, ...]) -> str:
        return self._at(f"Force and movement range {self.w.directions(directions_rad)}", sites)

    def movement_range(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Movement range", sites)

    def unread_directions(self, *, what: Quantity, directions_rad: tuple[float, ...], sites: tuple[Name, ...]) -> str:
        return self._at(f"{_WHAT[what].capitalize()} {self.w.directions(directions_rad)}", sites)

    def comfortable_share(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Comfortable force as a share of the largest force", sites)

    def spasm_force(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Force of spasms", sites)

    def limb_stiffness(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("The limb's own stiffness", sites)

    def push_noise(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Unsteadiness of a push", sites)

    def fall_off(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("How force falls off along the movement range", sites)

    def resting_force(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Resting force", sites)

    def resting_scatter(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Scatter of a resting force reading", sites)

    def involuntary_force(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Involuntary force", sites)

    def crossing_frequency(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Zero-crossing frequency of involuntary movement", sites)

    def state_directions(self, *, state: Name, sites: tuple[Name, ...]) -> str:
        return f"{self._at('Directions not measured again', sites)}, {self.w.name(state)}"

    def another_day(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Force on another day", sites)

    def game_use(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("What the game needs", sites)

    def action_use(self, *, action: Name, sites: tuple[Name, ...]) -> str:
        return self._at(f"Use of {self.w.name(action)}", sites)

    def limits(self) -> str:
        return "Limits of practice"

    def friction(self, *, stick: Name) -> str:
        return f"Friction of {self.w.name(stick)}"

    def stick_forces(self, *, stick: Name) -> str:
        return f"Forces of {self.w.name(stick)}"

    def crosswise(self, *, stick: Name) -> str:
        return f"{self.w.name(stick)} standing crosswise"

    def toppers(self, *, sites: tuple[Name, ...]) -> str:
        return self._at("Toppers tried", sites)

    def several(self, *, labels: tuple[Text, ...]) -> str:
        return self.w.all_of(tuple(self.say(one) for one in labels))

    def by_site(self, *, values: tuple[Text, ...], sites: tuple[Name, ...]) -> str:
        return "; ".join(f"{self.w.name(site)}: {self.say(value)}" for value, site in zip(values, sites, strict=False))

    def half_step(self) -> str:
        return "half the gauge's step"

    def half_smallest(self) -> str:
        return "half the smallest force read"

    def share(self, *, value_share: float) -> str:
        return self.w.share(value_share)

    def from_tried(self) -> str:
        return "worked out from how far the player got on the sticks that were tried"

    def range_about(self, *, low_m: float, high_m: float) -> str:
        return f"anywhere from about {self.w.amount(low_m, 'mm')} to {self.w.amount(high_m, 'mm')}"

    def from_neighbours(self) -> str:
        return "estimated from the neighbouring directions"

    def spasms_evenly(self, *, most_n: float) -> str:
        return f"anything from 0 to {self.w.amount(most_n, 'n')}, all equally likely"

    def _within(self, within_factor: float) -> str:
        return f"up to {self.w.trimmed(within_factor)} times more or less"

    def usual_stiffness(self, *, stiffness_n_per_m: float, within_factor: float) -> str:
        return f"{self.w.amount(stiffness_n_per_m, 'n_per_mm')}, {self._within(within_factor)}"

    def noise_share(self, *, value_share: float) -> str:
        return f"{self.w.share(value_share)} of the force used"

    def straight(self) -> str:
        return "straight, from full force at the centre to none at the end of the movement range"

    def usual_force(self, *, force_n: float, within_factor: float, rms: bool) -> str:
        size = " rms (typical size)" if rms else ""
        return f"{self.w.amount(force_n, 'n')}{size}, {self._within(within_factor)}"

    def usual_frequency(self, *, frequency_hz: float, within_factor: float) -> str:
        return f"{self.w.amount(frequency_hz, 'hz')}, {self._within(within_factor)}"

    def carried_over(self, *, force_share: float, reach_share: float) -> str:
        return (
            f"force {self.w.share(force_share)} and movement range {self.w.share(reach_share)} of the readings first taken at "
            "the site"
        )

    def day_spread(self, *, spread_share: float) -> str:
        return f"{self.w.share(spread_share)} more or less (standard deviation)"

    def even_use(self, *, duty_share: float) -> str:
        return f"all directions alike, pushed to full travel, in use {self.w.share(duty_share)} of the time"

    def use(self, *, duty_share: float | None, level_share: float | None, left_right: bool) -> str:
        told = [f"in use {self.w.share(duty_share)} of the time"] if duty_share is not None else []
        told += [f"pushed to {self.w.share(level_share)} of full travel"] if level_share is not None else []
        told += ["left and right only"] if left_right else []
        return ", ".join(told) or "as the game's file says"

    def practice(self, *, weakest_share: float, widened_share: float, widened_m: float, effort_share: float) -> str:
        return (
            f"at least {self.w.share(weakest_share)} of travel in the weakest direction (or {self.w.share(widened_share)} and "
            f"{self.w.amount(widened_m, 'mm')} with the sensitivity raised there); effort up to {self.w.share(effort_share)} of "
            "comfortable force, and more where the game uses the stick seldom (Potvin 2012)"
        )

    def share_of_full_force(self, *, value_share: float) -> str:
        return f"{self.w.share(value_share)} of its force at full travel"

    def as_listed(self, *, spread_share: float) -> str:
        return f"as listed, give or take {self.w.share(spread_share)}"

    def can_stand_so(self) -> str:
        return "it can stand that way, with its output turned to match"

    def forms(self, *, forms: tuple[Form, ...]) -> str:
        return ", ".join(self.w.topper_form(one) for one in forms)

    def zero_was_read(self) -> str:
        return "a force of 0 was read"

    def repeats_alike(self) -> str:
        return "all repeats are the same"

    def read_once(self) -> str:
        return "no direction was measured twice"

    def gauge_not_fine(self, *, scatter_share: float) -> str:
        return (
            "no gauge fine enough was used there; force is taken to fall off straight, and one push to differ from the next by "
            f"{self.w.share(scatter_share)} of travel"
        )

    def usual_range_of(self, *, part: Part) -> str:
        return f"movement range was not measured; this is the usual range for the {self.w.body_part(part)}"

    def wider_there(self) -> str:
        return "not measured there; the interval is wider"

    def largest_not_measured(self) -> str:
        return "not measured; the hold time and the limit for long use are worked out with it"

    def strongest_only(self) -> str:
        return "only the strongest was noted"

    def usual_stiffness_rule(self) -> str:
        return "not measured; 0.7 of comfortable force over movement range is a usual figure"

    def noise_grows(self) -> str:
        return "unsteadiness grows with force; the share was not measured"

    def near_the_ends(self) -> str:
        return "the readings along the movement range lie too near its ends to tell"

    def centre_only(self) -> str:
        return "force was measured at the centre only"

    def usual_supported(self, *, part: Part) -> str:
        return (
            f"the limb's weight on the control was not measured; usual when the {self.w.body_part(part)} is supported (common "
            "practice, no source)"
        )

    def rest_read_once(self) -> str:
        return "it was measured once"

    def usual_steady(self, *, part: Part) -> str:
        return (
            f"neither typed nor recorded; usual when the {self.w.body_part(part)} is steady, however strong it is (common "
            "practice, no source)"
        )

    def not_recorded(self) -> str:
        return "not recorded; common practice, no source"

    def as_others_changed(self) -> str:
        return "taken to change like the directions that were measured again"

    def few_visits(self, *, visits: int) -> str:
        return f"measured at fewer than {visits} visits; published figures of strength measured twice stand in"

    def no_action_named(self) -> str:
        return "game.toml names no action for a stick"

    def game_does_not_say(self) -> str:
        return "game.toml does not say"

    def common_practice(self) -> str:
        return "common practice, no source"

    def outward_only(self) -> str:
        return "only pushing outwards was measured on the bench"

    def listed_without_interval(self) -> str:
        return "listed without an interval"

    def too_long_for_space(self, *, site: Name) -> str:
        return (
            f"lengthwise it does not fit the free space at the {self.w.name(site)}, and whether it can stand crosswise is not "
            "recorded"
        )

    def usual_forms_of(self, *, part: Part) -> str:
        return f"forms usual for the {self.w.body_part(part)}"

    def finer_gauge(self) -> str:
        return "a finer gauge, or the weight 0 in game.toml where there is no push"

    def three_each(self) -> str:
        return "three readings in each direction"

    def more_reach(self) -> str:
        return "two or three readings of movement range in the weakest directions"

    def gauge_and_tape(self) -> str:
        return "a gauge reading and a tape reading in that direction"

    def range_by_tape(self) -> str:
        return "tape or dots on paper in the main directions, two minutes"

    def read_there(self, *, what: Quantity) -> str:
        return "three force readings there" if what == "force" else "tape or dots on paper there, two minutes"

    def team_figure(self) -> str:
        return "the treating team's figure; a push with full force only if an authorised clinician agrees"

    def two_sticks(self) -> str:
        return "tremor, or holding still, on two sticks of different stiffness"

    def half_and_full(self) -> str:
        return "holding half and full travel on a stick that was tried"

    def two_more_rests(self) -> str:
        return "two more readings of the resting limb, 10 s each"

    def one_each_in_state(self, *, state: Name) -> str:
        return f"one reading in each main direction, {self.w.name(state)}"

    def more_visits(self, *, visits: int) -> str:
        return f"the same readings at {visits} visits or more"

    def name_actions(self) -> str:
        return "the actions the player wants, in game.toml"

    def watch_play(self) -> str:
        return "watching five minutes of play"

    def own_trial(self) -> str:
        return "the player's own trial"

    def bench_both_ways(self) -> str:
        return "a bench reading, pushing out and letting back"

    def bench(self) -> str:
        return "a bench reading: eight readings, ten minutes"

    def manual(self) -> str:
        return "its manual; note crosswise and turns_output in kit.toml"

    def name_toppers(self) -> str:
        return "toppers in player.toml, where others suit"
