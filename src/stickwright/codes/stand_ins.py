"""Figures that stand in where nobody measured: of what, which figure, why, and what reading would replace it."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.sites import Part

__all__ = ["Form", "Quantity", "StandIns"]

Quantity = Literal["force", "reach"]
"""Comfortable force, or movement range."""
Form = Literal["dish", "ball", "peg", "bar", "cup", "foam"]
"""Form of a topper."""


class StandIns(Topic):
    """Cells of a table: labels with a capital letter, which name the control sites; values, reasons and readings without one."""

    # ---- of what

    @abstractmethod
    def zero_force(self, *, directions_rad: tuple[float, ...], sites: tuple[Name, ...]) -> str:
        """Label: the force in directions where a force of 0 was read."""

    @abstractmethod
    def scatter(self, *, what: Quantity, sites: tuple[Name, ...]) -> str:
        """Label: how one reading differs from the next."""

    @abstractmethod
    def bracketed(self, *, directions_rad: tuple[float, ...], sites: tuple[Name, ...]) -> str:
        """Label: force and movement range worked out from sticks that were tried."""

    @abstractmethod
    def movement_range(self, *, sites: tuple[Name, ...]) -> str:
        """Label: movement range, not read at all."""

    @abstractmethod
    def unread_directions(self, *, what: Quantity, directions_rad: tuple[float, ...], sites: tuple[Name, ...]) -> str:
        """Label: force or movement range in directions that were not read."""

    @abstractmethod
    def comfortable_share(self, *, sites: tuple[Name, ...]) -> str:
        """Label: comfortable force as a share of the largest."""

    @abstractmethod
    def spasm_force(self, *, sites: tuple[Name, ...]) -> str:
        """Label: force of spasms."""

    @abstractmethod
    def limb_stiffness(self, *, sites: tuple[Name, ...]) -> str:
        """Label: the limb's own stiffness."""

    @abstractmethod
    def push_noise(self, *, sites: tuple[Name, ...]) -> str:
        """Label: unsteadiness of a push, which grows with the force used."""

    @abstractmethod
    def fall_off(self, *, sites: tuple[Name, ...]) -> str:
        """Label: how force falls off along the movement range."""

    @abstractmethod
    def resting_force(self, *, sites: tuple[Name, ...]) -> str:
        """Label: resting force."""

    @abstractmethod
    def resting_scatter(self, *, sites: tuple[Name, ...]) -> str:
        """Label: how one reading of the resting force differs from the next."""

    @abstractmethod
    def involuntary_force(self, *, sites: tuple[Name, ...]) -> str:
        """Label: involuntary force."""

    @abstractmethod
    def crossing_frequency(self, *, sites: tuple[Name, ...]) -> str:
        """Label: zero-crossing frequency of involuntary movement."""

    @abstractmethod
    def state_directions(self, *, state: Name, sites: tuple[Name, ...]) -> str:
        """Label: directions not read again in a state of the player."""

    @abstractmethod
    def another_day(self, *, sites: tuple[Name, ...]) -> str:
        """Label: force on another day."""

    @abstractmethod
    def game_use(self, *, sites: tuple[Name, ...]) -> str:
        """Label: what the game needs at a site, where it names no action for a stick."""

    @abstractmethod
    def action_use(self, *, action: Name, sites: tuple[Name, ...]) -> str:
        """Label: how an action uses its stick."""

    @abstractmethod
    def limits(self) -> str:
        """Label: limits of common practice."""

    @abstractmethod
    def friction(self, *, stick: Name) -> str:
        """Label: friction of a stick."""

    @abstractmethod
    def stick_forces(self, *, stick: Name) -> str:
        """Label: forces of a stick."""

    @abstractmethod
    def crosswise(self, *, stick: Name) -> str:
        """Label: a stick that stands crosswise."""

    @abstractmethod
    def toppers(self, *, sites: tuple[Name, ...]) -> str:
        """Label: toppers that were tried."""

    @abstractmethod
    def several(self, *, labels: tuple[Text, ...]) -> str:
        """Label: several of the labels above, which have the same value for the same reason."""

    @abstractmethod
    def press_force(self, *, sites: tuple[Name, ...]) -> str:
        """Label: comfortable force of a press."""

    @abstractmethod
    def press_time(self, *, sites: tuple[Name, ...]) -> str:
        """Label: time of one press and release."""

    @abstractmethod
    def press_landing(self, *, sites: tuple[Name, ...]) -> str:
        """Label: where presses land."""

    @abstractmethod
    def resting_on_switch(self, *, sites: tuple[Name, ...]) -> str:
        """Label: resting force on a switch."""

    @abstractmethod
    def involuntary_on_switch(self, *, sites: tuple[Name, ...]) -> str:
        """Label: involuntary force on a switch."""

    @abstractmethod
    def switch_moves(self, *, sites: tuple[Name, ...]) -> str:
        """Label: time to move from one switch to another."""

    @abstractmethod
    def action_stick(self, *, action: Name) -> str:
        """Label: which of the two sticks the game listens to for an action."""

    # ---- which figure

    @abstractmethod
    def force(self, *, force_n: float) -> str:
        """Value: a force."""

    @abstractmethod
    def frequency(self, *, frequency_hz: float) -> str:
        """Value: a frequency."""

    @abstractmethod
    def time(self, *, time_s: float) -> str:
        """Value: a time."""

    @abstractmethod
    def usual_length(self, *, length_m: float, within_factor: float) -> str:
        """Value: a typical size (rms), within a factor either way."""

    @abstractmethod
    def time_per_bit(self, *, intercept_s: float, slope_s: float) -> str:
        """Value: a time, and so much more for each bit of difficulty (Fitts)."""

    @abstractmethod
    def role(self, *, role: Role) -> str:
        """Value: a stick of the game."""

    @abstractmethod
    def by_site(self, *, values: tuple[Text, ...], sites: tuple[Name, ...]) -> str:
        """Value: each with its site, in the same order."""

    @abstractmethod
    def half_step(self) -> str:
        """Value: half the gauge's step."""

    @abstractmethod
    def half_smallest(self) -> str:
        """Value: half the smallest force that was read."""

    @abstractmethod
    def share(self, *, value_share: float) -> str:
        """Value: a share."""

    @abstractmethod
    def from_tried(self) -> str:
        """Value: worked out from how far the player got on the tried sticks."""

    @abstractmethod
    def range_about(self, *, low_m: float, high_m: float) -> str:
        """Value: anywhere in the usual range."""

    @abstractmethod
    def from_neighbours(self) -> str:
        """Value: read off the neighbouring directions."""

    @abstractmethod
    def spasms_evenly(self, *, most_n: float) -> str:
        """Value: any force up to the strongest noted, evenly."""

    @abstractmethod
    def usual_stiffness(self, *, stiffness_n_per_m: float, within_factor: float) -> str:
        """Value: a stiffness, within a factor either way."""

    @abstractmethod
    def noise_share(self, *, value_share: float) -> str:
        """Value: a share of the force used."""

    @abstractmethod
    def straight(self) -> str:
        """Value: straight, from full force at the centre to none at the end of the movement range."""

    @abstractmethod
    def usual_force(self, *, force_n: float, within_factor: float, rms: bool) -> str:
        """Value: a force (`rms`: a typical size), within a factor either way."""

    @abstractmethod
    def usual_frequency(self, *, frequency_hz: float, within_factor: float) -> str:
        """Value: a frequency, within a factor either way."""

    @abstractmethod
    def carried_over(self, *, force_share: float, reach_share: float) -> str:
        """Value: force and movement range as shares of the site's own readings."""

    @abstractmethod
    def day_spread(self, *, spread_share: float) -> str:
        """Value: so much more or less, a standard deviation."""

    @abstractmethod
    def even_use(self, *, duty_share: float) -> str:
        """Value: all directions alike, at full travel, so much of the time."""

    @abstractmethod
    def use(self, *, duty_share: float | None, level_share: float | None, left_right: bool) -> str:
        """Value: time in use, deflection, left and right only; those that are assumed."""

    @abstractmethod
    def practice(self, *, weakest_share: float, widened_share: float, widened_m: float, effort_share: float) -> str:
        """Value: least travel in the weakest direction (or with its sensitivity raised), most effort."""

    @abstractmethod
    def share_of_full_force(self, *, value_share: float) -> str:
        """Value: a share of a stick's force at full travel."""

    @abstractmethod
    def as_listed(self, *, spread_share: float) -> str:
        """Value: as listed, give or take."""

    @abstractmethod
    def can_stand_so(self) -> str:
        """Value: it can stand crosswise, with its output turned to match."""

    @abstractmethod
    def forms(self, *, forms: tuple[Form, ...]) -> str:
        """Value: forms of topper."""

    # ---- why

    @abstractmethod
    def weakest_push(self) -> str:
        """Reason: no press was measured; the weakest push of the same control site stands in."""

    @abstractmethod
    def usual_press(self, *, part: Part, low_n: float, high_n: float) -> str:
        """Reason: no press was measured; the range that is usual for the control site."""

    @abstractmethod
    def presses_not_counted(self, *, down_s: float | None) -> str:
        """Reason: presses were not counted; where the release was timed, the time that goes with it for pressing down."""

    @abstractmethod
    def usual_landing(self, *, part: Part) -> str:
        """Reason: landing was not measured; usual for the control site."""

    @abstractmethod
    def all_on_switch(self) -> str:
        """Reason: the resting force found there, all of it taken to be on the switch."""

    @abstractmethod
    def input_not_set(self) -> str:
        """Reason: the game's file names no input for the action."""

    @abstractmethod
    def zero_was_read(self) -> str:
        """Reason: a force of 0 was read."""

    @abstractmethod
    def repeats_alike(self) -> str:
        """Reason: all repeats are the same."""

    @abstractmethod
    def read_once(self) -> str:
        """Reason: no direction was read twice."""

    @abstractmethod
    def gauge_not_fine(self, *, scatter_share: float) -> str:
        """Reason: no gauge fine enough was used; how force is taken to fall off, how one push differs from the next (a share of
        travel)."""

    @abstractmethod
    def usual_range_of(self, *, part: Part) -> str:
        """Reason: the movement range was not measured; this is the usual one."""

    @abstractmethod
    def wider_there(self) -> str:
        """Reason: not measured there; the interval is wider."""

    @abstractmethod
    def largest_not_measured(self) -> str:
        """Reason: the largest force was not measured, and hold time and limit rest on it."""

    @abstractmethod
    def strongest_only(self) -> str:
        """Reason: only the strongest spasm was noted."""

    @abstractmethod
    def usual_stiffness_rule(self) -> str:
        """Reason: 0.7 of comfortable force over movement range is usual."""

    @abstractmethod
    def noise_grows(self) -> str:
        """Reason: motor noise grows with force; the share was not measured."""

    @abstractmethod
    def near_the_ends(self) -> str:
        """Reason: the readings along the movement range lie too near its ends."""

    @abstractmethod
    def centre_only(self) -> str:
        """Reason: force was read at the centre only."""

    @abstractmethod
    def usual_supported(self, *, part: Part) -> str:
        """Reason: resting force was not measured; usual for a supported control site."""

    @abstractmethod
    def rest_read_once(self) -> str:
        """Reason: the resting force was read once."""

    @abstractmethod
    def usual_steady(self, *, part: Part) -> str:
        """Reason: involuntary force neither typed nor recorded; usual for a steady control site, however strong."""

    @abstractmethod
    def not_recorded(self) -> str:
        """Reason: not recorded; common practice."""

    @abstractmethod
    def as_others_changed(self) -> str:
        """Reason: taken to change like the directions that were read again."""

    @abstractmethod
    def few_visits(self, *, visits: int) -> str:
        """Reason: read at fewer than so many visits; published figures stand in."""

    @abstractmethod
    def no_action_named(self) -> str:
        """Reason: the game's file names no action for a stick."""

    @abstractmethod
    def game_does_not_say(self) -> str:
        """Reason: the game's file does not say."""

    @abstractmethod
    def common_practice(self) -> str:
        """Reason: common practice, no source."""

    @abstractmethod
    def outward_only(self) -> str:
        """Reason: only pushing outwards was read on the bench."""

    @abstractmethod
    def listed_without_interval(self) -> str:
        """Reason: listed without an interval."""

    @abstractmethod
    def too_long_for_space(self, *, site: Name) -> str:
        """Reason: lengthwise it does not fit the free space, and whether it can stand crosswise is not recorded."""

    @abstractmethod
    def usual_forms_of(self, *, part: Part) -> str:
        """Reason: forms that are usual for the control site."""

    # ---- what would replace it

    @abstractmethod
    def ten_moves(self) -> str:
        """Reading: ten timed moves between two switches, at two distances."""

    @abstractmethod
    def game_controls(self) -> str:
        """Reading: the game's own page of controls; the key of its file is input."""

    @abstractmethod
    def finer_gauge(self) -> str:
        """Reading: a finer gauge, or weight 0 for a direction in which there is no push."""

    @abstractmethod
    def three_each(self) -> str:
        """Reading: three readings in each direction."""

    @abstractmethod
    def more_reach(self) -> str:
        """Reading: two or three readings of movement range in the weakest directions."""

    @abstractmethod
    def gauge_and_tape(self) -> str:
        """Reading: gauge and tape in that direction."""

    @abstractmethod
    def range_by_tape(self) -> str:
        """Reading: movement range in the main directions."""

    @abstractmethod
    def read_there(self, *, what: Quantity) -> str:
        """Reading: force or movement range in those directions."""

    @abstractmethod
    def team_figure(self) -> str:
        """Reading: the treating team's figure; a full push only if a clinician agrees."""

    @abstractmethod
    def two_sticks(self) -> str:
        """Reading: tremor or holding still on two sticks of different stiffness."""

    @abstractmethod
    def half_and_full(self) -> str:
        """Reading: holding half and full travel on a tried stick."""

    @abstractmethod
    def two_more_rests(self) -> str:
        """Reading: two more readings of the resting limb."""

    @abstractmethod
    def one_each_in_state(self, *, state: Name) -> str:
        """Reading: one in each main direction in that state."""

    @abstractmethod
    def more_visits(self, *, visits: int) -> str:
        """Reading: the same at so many visits."""

    @abstractmethod
    def name_actions(self) -> str:
        """Reading: the actions the player wants, in the game's file."""

    @abstractmethod
    def watch_play(self) -> str:
        """Reading: watching five minutes of play."""

    @abstractmethod
    def own_trial(self) -> str:
        """Reading: the player's own trial."""

    @abstractmethod
    def bench_both_ways(self) -> str:
        """Reading: the bench, pushing out and letting back."""

    @abstractmethod
    def bench(self) -> str:
        """Reading: the bench."""

    @abstractmethod
    def manual(self) -> str:
        """Reading: the stick's manual, and where to note it in the kit's file."""

    @abstractmethod
    def name_toppers(self) -> str:
        """Reading: the toppers that suit, in the player's file."""
