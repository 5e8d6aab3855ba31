"""The player: what was found at each control site.

Everything but a code, a part and one reading may be missing: missing is a state, not an error.
Plausible ranges catch typing errors; they are wide on purpose and are not norms.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from stickwright.codes.sites import Part
from stickwright.model.hub import Role
from stickwright.model.measured import ONE_OR_MORE, Measured, Plausible

__all__ = [
    "PARTS", "AlongReading", "DirectionReading", "Helper", "Hold", "Player", "Press", "RestForce", "Site",
    "SiteRecording", "Spasm", "StickReach", "Together",
]  # fmt: skip

Force = Annotated[tuple[Annotated[float, Plausible(0.0, 500.0)], ...], ONE_OR_MORE]
Distance = Annotated[tuple[Annotated[float, Plausible(0.0, 1.0)], ...], ONE_OR_MORE]
Seconds = Annotated[tuple[Annotated[float, Plausible(0.0, 3600.0)], ...], ONE_OR_MORE]
Shares = Annotated[tuple[Annotated[float, Plausible(0.0, 1.0)], ...], ONE_OR_MORE]
Rates = Annotated[tuple[Annotated[float, Plausible(0.0, 20.0)], ...], ONE_OR_MORE]
PARTS: tuple[str, ...] = Part.__args__  # type: ignore[attr-defined]
Task = Literal["rest", "still", "rim", "push", "hold", "aim", "follow", "play"]
Alert = Literal[
    "neck", "airway", "skin", "spinal-t6", "seizures", "pain", "startle", "magnets", "arthritis", "drives-chair",
    "heart",
]  # fmt: skip
Direction = Annotated[float, Plausible(-6.2832, 6.2832)]


class DirectionReading(Measured):
    """One direction: comfortable force at the centre and comfortable free reach, each from repeats."""

    direction_rad: Direction
    """0 right, 90 deg forward, 180 left, 270 back, as the player sees the stick."""
    force_n: Force = ()
    """Force that can be repeated ten times without strain."""
    reach_m: Distance = ()
    """Travel without load."""


class AlongReading(Measured):
    """Force at some way along the reach: replaces the assumed straight fall-off."""

    direction_rad: Direction
    at_reach_m: Annotated[float, Plausible(0.0, 1.0)]
    force_n: Force


class RestForce(Measured):
    """Force of the limb on the control while the player does not try."""

    force_n: Force
    direction_rad: Direction | None = None
    support: str = ""
    """What held the limb: 'wedge under the hand'. The last entry is how the player will play."""


class Spasm(Measured):
    """Sudden involuntary pushes."""

    peak_n: Force
    rate_per_s: Annotated[float, Plausible(0.0, 5.0)]
    duration_s: Seconds = ()


class Hold(Measured):
    """How long a hold was kept, and at what share of the comfortable force (or at what force)."""

    duration_s: Seconds
    effort_share: Annotated[float, Plausible(0.01, 2.0)] | None = None
    force_n: Annotated[float, Plausible(0.0, 500.0)] | None = None
    direction_rad: Direction | None = None


class StickReach(Measured):
    """How far the player got on a benched stick: the stick is the gauge."""

    stick: str
    direction_rad: Direction | None = None
    reached_share: Shares = ()
    """Share of full output reached, 1 = full output or the stop."""
    tremor_m: Distance = ()
    """Rms movement of the contact point, per axis, holding still on this stick."""
    topper: str | None = None
    extension: str | None = None


class SiteRecording(Measured):
    """A recording made at this site, and on what."""

    file: str
    task: Task
    stick: str | None = None
    topper: str | None = None
    extension: str | None = None
    simulated: bool = False
    """Made by the simulated player, for training."""
    replayed: bool = False
    """Another recording, played back: not counted a second time."""
    condition: str = ""
    """State of the site in which it was made, in the words of one of `under`; the usual one when not said."""


class Press(Measured):
    """What the player can press at a site, and how surely."""

    force_n: Force = ()
    """Force of a press that can be repeated ten times without strain."""
    rate_per_s: Rates = ()
    """As many presses as comfortable in ten seconds."""
    hold_s: Seconds = ()
    """How long a press is kept down comfortably."""
    release_s: Seconds = ()
    """From the cue to letting go."""
    reaction_s: Seconds = ()
    """From the cue to pressing."""
    travel_m: Distance = ()
    """How far the part can push in."""
    landing_m: Annotated[float, Plausible(0.0, 0.5)] | None = None
    """Where a press lands: rms about the middle, per axis."""
    fires_with_spasm_share: Annotated[float, Plausible(0.0, 1.0)] | None = None
    """Share of the spasms in which a switch here goes off."""
    rest_force_n: Force = ()
    """Force on the switch while not trying; the site's own resting force when not said."""
    involuntary_force_n: Annotated[float, Plausible(0.0, 200.0)] | None = None
    """Rms in the direction of the press; the site's own when not said."""
    most_switches: Annotated[int, Field(ge=1, le=6)] = 2
    """Switches that can stand near each other here."""
    move_intercept_s: Annotated[float, Plausible(-1.0, 5.0)] | None = None
    """The player's own line for moving between two switches: time = intercept + slope times difficulty."""
    move_slope_s_per_bit: Annotated[float, Field(ge=0, le=10)] | None = None


class Together(Measured):
    """Whether two sites can act at the same time: a word, or the press rates of a 20 s test."""

    sites: tuple[str, str]
    says: Literal["yes", "slows", "no"] | None = None
    alone_per_s: Annotated[float, Plausible(0.0, 20.0)] | None = None
    """Press rate at the second site by itself."""
    both_per_s: Annotated[float, Plausible(0.0, 20.0)] | None = None
    """Press rate at the second site while the first keeps a hold."""


class Helper(Measured):
    """Somebody who can take actions over, at a controller of their own."""

    name: str = Field(min_length=1)
    """Who: sister, carer; never a name."""
    most_actions: Annotated[int, Field(ge=0, le=40)] | None = None


class SiteUnder(Measured):
    """What was read of a site in another state: without support, tired, before the medicine. What is not read again
    stays as at the site itself."""

    condition: str = Field(min_length=1)
    """The state in words: "tired, after 40 min"."""
    kind: Literal["support", "tiredness", "medicine", "food", "time of day", "heat", "relapse", "other"] = "other"
    plays: bool = True
    """Whether the player will play in this state."""
    after_s: Annotated[float, Plausible(0.0, 86400.0)] | None = None
    """Of tiredness: after how much play it was read."""
    reading: tuple[DirectionReading, ...] = ()
    rest: tuple[RestForce, ...] = ()
    involuntary_force_n: Annotated[float, Plausible(0.0, 200.0)] | None = None
    crossing_hz: Annotated[float, Plausible(0.05, 30.0)] | None = None
    spasm: Spasm | None = None
    hold: tuple[Hold, ...] = ()
    press: Press | None = None
    note: str = ""


class Site(Measured):
    """A control site: the body part, its readings and what else is known of it."""

    name: str = Field(min_length=1)
    part: Part
    support: str = ""
    action: str | None = None
    """Name of the game action this site is to do; the first stick action when not said."""
    gauge_readings: str | None = None
    """CSV file with one reading a row, in the order taken."""
    reading: tuple[DirectionReading, ...] = ()
    again_force_n: Force = ()
    """The first direction, repeated last: shows tiring."""
    along: tuple[AlongReading, ...] = ()
    rest: tuple[RestForce, ...] = ()
    involuntary_force_n: Annotated[float, Plausible(0.0, 200.0)] | None = None
    """Rms per axis of tremor, sway and jerk, spasms left out."""
    crossing_hz: Annotated[float, Plausible(0.05, 30.0)] | None = None
    """Zero-crossing frequency of the involuntary force (upward crossings a second)."""
    spasm: Spasm | None = None
    hold: tuple[Hold, ...] = ()
    press_rate_per_s: Rates = ()
    release_s: Seconds = ()
    limb_stiffness_n_per_m: Annotated[float, Plausible(0.0, 20000.0)] | None = None
    force_noise_share: Annotated[float, Plausible(0.0, 1.0)] | None = None
    """Scatter of a steady force as a share of it."""
    comfortable_of_maximal_share: Annotated[float, Plausible(0.05, 1.0)] | None = None
    gauge_step_n: Annotated[float, Plausible(0.0, 50.0)] | None = None
    gauge_limit_n: Annotated[float, Plausible(0.0, 1000.0)] | None = None
    """End of the gauge's scale: readings there mean 'at least'."""
    gauge_no_load_n: Annotated[float, Plausible(-50.0, 50.0)] | None = None
    on_stick: tuple[StickReach, ...] = ()
    recording: tuple[SiteRecording, ...] = ()
    toppers: tuple[str, ...] = ()
    """Toppers (names or forms) that suit this site; all when empty."""
    liked: tuple[str, ...] = ()
    """Sticks the player said they like."""
    can_lift: bool | None = None
    """Whether the finger can lift off a touch surface by itself."""
    room_m: tuple[Annotated[float, Plausible(0.0, 2.0)], Annotated[float, Plausible(0.0, 2.0)]] | None = None
    """Free place for the base: length and width."""
    movement_tilt_rad: Annotated[float, Plausible(-1.6, 1.6)] | None = None
    """Slope of the plane the limb moves in, towards the player; tilts are compared only when it is given."""
    cleared: Literal["yes", "ask", "no"] | None = None
    """Treating team's word for this site; needed for chin, lip, cheek, tongue and head."""
    release_limit_n: Annotated[float, Plausible(0.5, 200.0)] | None = None
    """Force at which a coupling here must let go at the latest, as agreed with the treating team; for sites at the head."""
    side: Literal["left", "right", "middle"] | None = None
    """Side of the body; by the site's name when not said."""
    press: Press | None = None
    reaches: tuple[Role, ...] = ()
    """Buttons of a two-handed controller that this part reaches while it is held or fixed."""
    holds_kg: Annotated[float, Plausible(0.0, 20.0)] | None = None
    """Mass that the hand of this site can hold comfortably, as in play."""
    holds_s: Annotated[float, Plausible(0.0, 14400.0)] | None = None
    """How long that stays comfortable."""
    minds: Annotated[int, Field(ge=0, le=10)] = 0
    """How much the player minds using this part, by their own word; 0 not at all."""
    setup_s: Annotated[float, Plausible(0.0, 14400.0)] = 0.0
    """Time a carer needs here each day."""
    to_hub_m: Annotated[float, Plausible(0.05, 20.0)] | None = None
    """Length of the way a cable takes to the hub, along the points where it is tied, from where the device is held: the foot of
    its base, or the clamp of its arm. The way along the arm is added."""
    tilt_slack_m: Annotated[float, Plausible(0.0, 3.0)] = 0.0
    """Cable that tilting, reclining or swinging away takes up."""
    condition: str = ""
    """The state in which the readings above were taken, in words: "fresh, wedge under the hand"."""
    plays_so: bool = True
    """Whether the player will play in that state."""
    under: tuple[SiteUnder, ...] = ()
    """Readings in other states."""
    force_ceiling_n: Annotated[float, Plausible(0.0, 500.0)] | None = None
    """A force that must not be passed here, though the player could."""
    force_ceiling_why: str = ""
    """What happens above it: "the hand closes"."""
    forbidden_toppers: tuple[str, ...] = ()
    """Toppers (names or forms) that must not be used here."""
    forbidden_grip: str = ""
    """A grip that must not be used here, and why, as the family is to read it."""
    note: str = ""
    """Anything else about this site that whoever sets it up should know."""


class Player(Measured):
    """Who plays, under a code; never a name."""

    code: str = Field(min_length=1, max_length=24)
    age_band: str = ""
    """A word or ages in years: "child", "6-11", "adult". For a child there are further cautions and a review each year."""
    visit: str = ""
    """Date of the visit, YYYY-MM-DD."""
    session_s: Annotated[float, Plausible(60.0, 36000.0)] | None = None
    """How long the player wants to play in one go."""
    course: Literal["stable", "fluctuating", "progressive", "recovering"] | None = None
    alerts: tuple[Alert, ...] = ()
    goals: tuple[str, ...] = ()
    example: bool = False
    """Nobody: an invented player, for training. Only then do recordings of the simulated player count."""
    site: tuple[Site, ...] = Field(min_length=1)
    together: tuple[Together, ...] = ()
    helper: tuple[Helper, ...] = ()
    independence: Annotated[float, Field(ge=0, le=10)] | None = None
    """What it costs the player to leave an action to somebody else, 0 to 10, by their own word."""
    quiet: bool = False
    """Whether switches should be quiet: somebody sleeps nearby, or a microphone is open."""
    most_new_controls: Annotated[int, Field(ge=1, le=20)] = 4
    """New controls on the first day."""
    note: str = ""
    """Anything else that whoever sets it up should know."""
