"""What comes out: the plan. Sheet, JSON and pages are made from this alone."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.setups import Setups
from stickwright.codes.to_confirm import ToConfirm
from stickwright.model.estimate import Estimate
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.response import Tuning
from stickwright.model.wishes import Wishes

if TYPE_CHECKING:
    from stickwright.model.layouts import GamesTogether, Layout
    from stickwright.model.mounting import SiteMount
    from stickwright.model.room import Room
    from stickwright.model.sharing import PartLine, Sharing

__all__ = [
    "Assumption", "Capability", "Caution", "Demand", "DeviceNote", "DirectionCapability", "DirectionFit", "Doubt", "Fit",
    "NextReading", "Plan", "SitePlan", "StateFit", "ToOrder", "direction_words",
]  # fmt: skip

_EIGHT = ("right", "forward-right", "forward", "forward-left", "left", "back-left", "back", "back-right")


def direction_words(direction_rad: float) -> str:
    """A direction in words, with degrees when it is not one of eight.

    Parameters
    ----------
    direction_rad : float
        0 right, a quarter turn forward.

    Examples
    --------
    >>> direction_words(math.pi / 2), direction_words(math.radians(100))
    ('forward', '100° (near forward)')
    """
    degrees = math.degrees(direction_rad) % 360
    nearest = round(degrees / 45) % 8
    if abs((degrees - 45 * nearest + 180) % 360 - 180) < 2:
        return _EIGHT[nearest]
    return f"{degrees:.0f}° (near {_EIGHT[nearest]})"


@dataclass(frozen=True)
class Assumption:
    """A number nobody measured, marked up to the printed page."""

    what: Text
    value: Text
    why: Text
    replace_by: Text
    """Which reading would replace it."""


@dataclass(frozen=True)
class Doubt:
    """A rule that is broken at figures nobody measured: it refuses nothing, and is to be confirmed."""

    rule: str
    """Which rule: 'reach', 'effort', 'unintended', 'touch', 'size', 'strength', 'force', 'landing', 'travel', 'busy'."""
    confirm: Text
    """What to measure or try."""
    text: Text
    """What the assumed figures say."""

    @property
    def sentence(self) -> Message:
        """Both, as a clause."""
        return message(ToConfirm.doubt, confirm=self.confirm, assumed=self.text)


@dataclass(frozen=True)
class Caution:
    """A usual caution, beside the number it belongs to."""

    about: str
    """Key of the number: 'effort', 'hold', 'force', 'site', 'false input', 'session', 'dead zone'."""
    site: str | None
    text: Text


@dataclass(frozen=True)
class DirectionCapability:
    """What the player can do in one direction."""

    direction_rad: float
    force_n: Estimate
    """Comfortable force fresh, on the day of the visit."""
    reach_m: Estimate
    force_other_day_n: Estimate
    """The same on a day that was not measured: what the plan counts on."""
    measured_force_n: tuple[float, ...]
    measured_reach_m: tuple[float, ...]
    status: Literal["enough", "nearly", "not enough", "not measured"]


@dataclass(frozen=True)
class Capability:
    """Ability at one site, all directions; intervals at 95 %."""

    directions: tuple[DirectionCapability, ...]
    force_scatter_share: Estimate
    """Scatter of one reading, pooled over directions."""
    reach_scatter_share: Estimate
    tiring_share: Estimate | None
    """Loss of force from first to last reading of the first direction; plus is a loss."""
    weakest_rad: float
    rest_force_n: Estimate
    rest_direction_rad: float | None
    involuntary_force_n: Estimate
    crossing_hz: Estimate
    limb_stiffness_n_per_m: Estimate
    force_noise_share: Estimate
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class Demand:
    """What the game asks of the stick at this site."""

    action: str
    direction_weights: tuple[float, ...]
    """One for each direction of the capability, adding up to 1."""
    duty_share: float
    usual_level_share: float
    longest_hold_s: float | None
    false_input_limit_per_min: float


@dataclass(frozen=True)
class DirectionFit:
    """One set-up in one direction."""

    direction_rad: float
    reach_share: Estimate
    reach_travel_m: Estimate
    force_used_n: float
    """Push at the point reached."""
    needed_force_n: float
    """Push at the stop."""
    start_force_n: float
    available_force_n: float
    """The player's comfortable force at the centre."""
    effort_share: Estimate
    """Force at the game's usual level over comfortable force."""
    bits: Estimate
    """What can be told apart in this direction."""
    firm_force_n: float | None = None
    """The same force on something firm, where `available_force_n` is felt through a mount that flexes."""
    gain: float | None = None
    """To be set in this direction where the set-up fits with its range widened: worked out from the readings."""


@dataclass(frozen=True)
class Fit:
    """One set-up at one site: stick, topper, extension, tilt."""

    site: str
    stick: str
    topper: str | None
    extension: str | None
    tilt_rad: float
    contact_height_m: float
    lever_ratio: float
    start_force_n: float
    full_force_n: float
    travel_m: float
    stiffness_n_per_m: float
    returns_share: float
    """Share of the throw at which it stays by itself (0: comes home)."""
    directions: tuple[DirectionFit, ...]
    weakest_rad: float
    """The weakest of the directions that the game needs: its reach decides whether the set-up fits."""
    weakest_share: Estimate
    """Reach in that direction."""
    mean_share: float
    bits: Estimate
    """Weighted over directions, dead zone taken off."""
    effort_share: Estimate
    """At the game's usual level, in the direction of those it needs that asks the most."""
    duty_effort_limit: float
    """What tiring is counted against: acceptable share of comfortable force at the game's duty (Potvin 2012), and at least
    15 % of the largest force (Rohmert 1973)."""
    hold_s: Estimate
    hold_model: Text | None
    """Where the expected hold comes from; None where nothing tells it."""
    dead_zone_share: float
    """Of the throw: the smallest that keeps false input within the limit, or the largest allowed."""
    false_per_min: Estimate
    rest_deflection_share: float
    probability_best: float
    """Chance that this stick is the right one here: share of the draws in which it keeps every limit and is best or ties with
    the best."""
    verdict: Literal["fits", "fits with its range widened", "does not fit"]
    fails: tuple[Text, ...]
    """Each broken rule."""
    limit: Text
    """What limits it."""
    help: Text | None
    """The one change that would make it fit, with its figures; None when none does or none is needed."""
    kind: Literal["lever", "touch"] = "lever"
    base_m: tuple[float, float, float] | None = None
    """Length, width, height of the base."""
    mass_kg: float | None = None
    plug: str = ""
    current_a: float | None = None
    topper_form: str = ""
    single_player: bool = False
    """A part that touches face or mouth, kept for one player."""
    built_tilt_rad: float = 0.0
    """What is built under the base; `tilt_rad` counts the stick's own slope too."""
    impossible: bool = False
    """Whether no tuning could make it work here: the place is too small, a finger cannot lift, it does not come home."""
    doubts: tuple[Doubt, ...] = ()
    """Each rule that is broken only at figures nobody measured."""
    lever_note: Text | None = None
    """What a longer lever would do in the weakest direction, by the closed form."""
    setting: str = ""
    """How the stick is set, where it can be set in several ways."""
    how_to_set: str = ""
    crosswise: bool = False
    """Whether the base stands crosswise: its front to the player's left, its output turned a quarter turn anticlockwise."""
    crosswise_assumed: bool = False
    """Whether nobody has said that it can."""
    turns_output: str = ""
    """What turns the output then: "itself", "hub", "game", or words; empty when nobody has said."""
    fixed_to: str = ""
    """The controller to whose grip it is fixed."""
    worst_in: str = ""
    """The state of the player that these figures are of, where several were read: the one it does worst in."""

    @property
    def full_name(self) -> str:
        """The stick, with its setting in brackets where it can be set in several ways."""
        return f"{self.stick} ({self.setting})" if self.setting else self.stick

    @property
    def stands_m(self) -> tuple[float, float, float] | None:
        """The base as it stands: forward, across, height."""
        if self.base_m is None or not self.crosswise:
            return self.base_m
        return self.base_m[1], self.base_m[0], self.base_m[2]

    @property
    def weakest_of_all(self) -> DirectionFit:
        """The direction that reaches least, whether the game needs it or not."""
        return min(self.directions, key=lambda one: (round(one.reach_share.number, 9), one.available_force_n))

    @property
    def verdict_words(self) -> str:
        """The verdict, and that it is to be confirmed where it hangs on figures nobody measured."""
        return f"{self.verdict}, to confirm" if self.doubts and self.verdict != "does not fit" else self.verdict

    @property
    def named(self) -> Message:
        """The set-up as a message: stick, then what is on it."""
        return message(
            Setups.named,
            stick=Name(self.full_name),
            topper=Name(self.topper) if self.topper else None,
            extension=Name(self.extension) if self.extension else None,
            raised_rad=self.built_tilt_rad,
        )

    @property
    def label(self) -> str:
        """The set-up in words: stick, then what is on it."""
        parts = [self.full_name]
        if self.topper:
            parts.append(self.topper)
        if self.extension:
            parts.append(f"extension {self.extension}")
        if abs(self.built_tilt_rad) > 1e-9:
            parts.append(f"base raised {math.degrees(self.built_tilt_rad):.0f}°")
        return " + ".join(parts)


@dataclass(frozen=True)
class ToOrder:
    """A stick to be made to measure for a site, where what the kit has does worse."""

    offer: str
    """What can be ordered, by its name in the kit."""
    fit: Fit
    """The stick to ask for, judged like one of the kit's: its forces, travel and height are what to order."""
    chance_fits: float
    """Share of the draws in which it keeps every rule."""
    better_bits: float | None
    """Mean bits above the best stick of the kit; None when none of those fits."""
    weeks: float | None
    """From the order until it is there."""
    price: float | None
    """In the currency of the kit's prices."""


@dataclass(frozen=True)
class StateFit:
    """The chosen set-up in one state of the player."""

    condition: str
    """In words; empty for the site's own readings where nobody named their state."""
    kind: str
    plays: bool
    """Whether the player will play in it: only then it decides."""
    force_change_share: float
    """Mean comfortable force against that of the site's own readings: plus is more."""
    fit: Fit
    after_s: float | None = None
    """Of tiredness: after how much play it was read."""


@dataclass(frozen=True)
class DeviceNote:
    """How a device that the plan uses has to be set, and which mode it must be in."""

    device: str
    set_as: str
    set_how: str
    mode: str
    mode_sign: str
    mode_back: str


@dataclass(frozen=True)
class NextReading:
    """The reading most worth the player's effort, or that it is enough."""

    enough: bool
    site: str | None
    direction_rad: float | None
    what: Literal["force", "reach", "rest force", "hold", "recording", ""]
    chance_now: float
    """Chance that the chosen stick is the right one."""
    chance_then: float
    """The same, expected after the reading."""
    sentence: Text
    ranked: tuple[tuple[str, float | None, str, float], ...] = ()
    """Site, direction (rad; None where it has none), what, expected chance: best first."""


@dataclass(frozen=True)
class SitePlan:
    """One site: ability, what fits, why, and how to tune what was tried."""

    name: str
    part: str
    support: str
    capability: Capability
    demand: Demand
    choice: Fit | None
    fits: tuple[Fit, ...]
    """The best set-up of each stick, best first: those that fit, then by how near they come."""
    alternatives: tuple[Fit, ...]
    """Other set-ups of the chosen stick (topper, extension, tilt)."""
    tried: int
    """How many set-ups were computed."""
    sentence: Text
    """The answer, second best beside it."""
    best_extension: tuple[tuple[float, float, float], ...]
    """Direction (rad), best lever ratio by closed form, best extra length in metre (minus: shorten)."""
    recordings: tuple[TraceReport, ...]
    tunings: tuple[Tuning, ...]
    findings: tuple[Finding, ...]
    to_order: ToOrder | None = None
    base_turn_rad: Estimate | None = None
    """How far the chosen stick's base is to be turned from where it stood when it was recorded, anticlockwise seen from above;
    `assumed` says where it was found on another stick. None when it stays, or nothing tells."""
    states: tuple[StateFit, ...] = ()
    """The first stick in every state that was read; none where there is one state only."""


@dataclass(frozen=True)
class Plan:
    """The whole answer to a case."""

    version: str
    case: str
    made_on: str
    player: str
    game: str
    visit: str
    sites: tuple[SitePlan, ...]
    """Best first."""
    sentence: Text
    next_reading: NextReading
    cautions: tuple[Caution, ...]
    assumptions: tuple[Assumption, ...]
    findings: tuple[Finding, ...]
    seed: int
    draws: int
    sharing: Sharing | None = None
    """Who does what with what; None when the game names no action."""
    mounts: tuple[SiteMount, ...] = ()
    """What holds each device; none when the room is not described."""
    room: Room | None = None
    device_notes: tuple[DeviceNote, ...] = ()
    """One for each device in use that is set in one of several ways, or has modes."""
    mount_parts: tuple[PartLine, ...] = ()
    """Parts of the parts list that hold the devices: arms, clamps, couplings, plates, pieces of fastener, packing."""
    wishes: Wishes = field(default_factory=Wishes)
    """What was asked besides the case: a plan with any of these is a what-if."""

    layouts: tuple[Layout, ...] = ()
    """One for each game where there are several, the first game's own `sharing` first."""
    together: GamesTogether | None = None
    """How one set of devices serves them all; None for one game."""

    @property
    def parts(self) -> tuple[PartLine, ...]:
        """The whole parts list: what is worked and plugged in, then what holds it."""
        if self.together is not None:
            return (*self.together.parts, *self.mount_parts)
        wiring = self.sharing.wiring if self.sharing is not None else None
        return (*(wiring.parts if wiring is not None else ()), *self.mount_parts)
