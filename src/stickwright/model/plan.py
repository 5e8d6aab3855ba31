"""What comes out: the plan. Sheet, JSON and pages are made from this alone."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text
from stickwright.model.fit import Assumption, Caution, Fit
from stickwright.model.layouts import GamesTogether, Layout
from stickwright.model.mounting import SiteMount
from stickwright.model.recorded import Finding, TraceReport
from stickwright.model.response import Tuning
from stickwright.model.room import Room
from stickwright.model.sharing import PartLine, Sharing
from stickwright.model.wishes import Wishes

__all__ = [
    "Capability", "Demand", "DeviceNote", "DirectionCapability", "NextReading", "Plan", "SitePlan", "StateFit", "ToOrder",
    "direction_words",
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
