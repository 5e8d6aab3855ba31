"""Where a stick goes, what holds it there, and whether it will stay: as it comes out. Lengths in the body frame of the room."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from stickwright.codes.estimate import none_unless_finite
from stickwright.codes.joint_settings import JointName
from stickwright.codes.message import Message, Text, message
from stickwright.codes.mount_rules import MountRules
from stickwright.model.fit import Caution
from stickwright.model.recorded import Finding

__all__ = ["ArmPose", "Check", "Dimension", "Joint", "MountDoubt", "MountFit", "Pose", "SiteMount"]

Point = tuple[float, float, float]


@dataclass(frozen=True)
class MountDoubt:
    """A rule that a way of mounting breaks, or that nobody can tell, at figures which nobody measured: to be confirmed."""

    rule: str
    """Which: as `Check.what`, or 'give', 'level', 'edge', 'reach', 'tilt'."""
    confirm: tuple[Message, ...]
    """What to measure."""
    text: Message
    """What the assumed figures say."""

    @property
    def told(self) -> Message:
        """Both, in a sentence."""
        return message(MountRules.to_confirm, measures=self.confirm, told=self.text)


@dataclass(frozen=True)
class Pose:
    """Where the base of a stick must be, and how it must be turned."""

    site: str
    contact_m: Point
    """The contact point while the part rests."""
    base_m: Point
    """Middle of the underside of the base."""
    turn_rad: float
    """Of the base, anticlockwise seen from above, so that the player's own forward is the stick's."""
    tilt_rad: float
    """Of the base towards the player."""
    tolerance_m: float | None
    """How far off it may be before a tenth of the reach is lost; None when no reach was read."""
    tolerance_rad: float
    """How far turned before a tenth of a push goes elsewhere."""
    assumed: tuple[Message, ...] = ()
    """What was not measured, and what stands in for it."""
    turn_words: Message | None = None
    """How the turn comes about, when recordings have their part in it; None when it is the place's alone."""

    def __post_init__(self) -> None:
        """None for what is not finite."""
        none_unless_finite(self, "tolerance_m")

    @property
    def may_be_off_m(self) -> float:
        """The tolerance for arithmetic: NaN where it is not known."""
        return math.nan if self.tolerance_m is None else self.tolerance_m


@dataclass(frozen=True)
class Joint:
    """One joint of an arm, as it is set."""

    name: JointName
    angle_rad: float
    words: Message
    """How to set it."""


@dataclass(frozen=True)
class ArmPose:
    """An arm that reaches: where its clamp sits and how its joints stand."""

    clamp: str
    """Tube or edge."""
    along_m: float
    """From the first end of the tube or edge."""
    points_m: tuple[Point, ...]
    """Clamp, elbow(s), end."""
    joints: tuple[Joint, ...]
    clearance_m: float
    """To the nearest keep-out, over the whole tilt range."""
    nearest: str
    straight_share: float
    """Distance over its length: 1 is a straight arm, with no adjustment left."""
    ranges_m: tuple[tuple[float, float], ...] = ()
    """Stretches of the same tube or edge on which the clamp could sit too, from its first end."""
    assumed: tuple[Message, ...] = ()
    """What was not measured of it."""
    doubts: tuple[MountDoubt, ...] = ()
    """What must be confirmed before it is known to reach."""


@dataclass(frozen=True)
class Check:
    """One thing that must hold: load against limit."""

    what: str
    """'joint_1' (counted from the clamp), 'neck_foot', 'neck_bow', 'clamp', 'sliding', 'tipping', 'fastener_shear', 'fastener_peel',
    'fastener_tension', 'rating', 'release', 'tray', 'stability'."""
    push: Literal["working", "involuntary", "weight", ""]
    load: float | None
    """In `unit`; None when it is not known, and `words` says why."""
    limit: float | None
    """In `unit`; None when it is not known or there is none, and `words` says which."""
    unit: str
    """Ending as in units.py: 'nm', 'n', 'kpa', 'kg', 'mm'."""
    factor: float | None
    """Limit over load; None when it is not known, and where nothing loads it (`unloaded`)."""
    wanted: float
    """The least factor."""
    holds: bool
    words: Message | None
    """The same in words; None where the figures say it all."""
    assumed: Message | None = None
    confirm: tuple[Message, ...] = ()
    """What to measure before this can be trusted, where assumed figures decide it; empty where they do not."""
    unloaded: bool = False
    """Whether nothing loads it."""
    limitless: bool = False
    """Whether no load is too much for it."""

    def __post_init__(self) -> None:
        """None for what is not finite: infinity is said by a field."""
        object.__setattr__(self, "unloaded", self.unloaded or self.factor == math.inf)
        object.__setattr__(self, "limitless", self.limitless or self.limit == math.inf)
        none_unless_finite(self, "load", "limit", "factor")

    @property
    def most(self) -> float:
        """The limit for arithmetic: NaN when it is not known, infinite where there is none."""
        if self.limit is None:
            return math.inf if self.limitless else math.nan
        return self.limit

    @property
    def loads(self) -> float:
        """The load for arithmetic: NaN when it is not known."""
        return math.nan if self.load is None else self.load

    @property
    def times(self) -> float:
        """The factor for arithmetic: NaN when it is not known, infinite where nothing loads it."""
        if self.factor is None:
            return math.inf if self.unloaded else math.nan
        return self.factor


@dataclass(frozen=True)
class Dimension:
    """A distance that a family can measure again: from a thing that does not move, to a point of the mount."""

    landmark: str
    to: Literal["base", "clamp"]
    """Middle of the underside of the base, or the clamp."""
    along: Literal["right", "left", "forward", "back", "up", "down"]
    distance_m: float


@dataclass(frozen=True)
class MountFit:
    """One way to hold one stick (or switch) in its place."""

    mount: str
    kind: str
    on: str
    """Tube, edge or surface."""
    fastener: str | None
    patch_m: tuple[float, float] | None
    """Of the fastener, length and width."""
    arm: ArmPose | None
    checks: tuple[Check, ...]
    margin: float | None
    """Smallest of all factors over their wanted ones: 1 or more holds. None when nothing loads it."""
    give_n_per_m: float | None
    """Stiffness of all that holds it; None when nothing gives, or nobody measured how far it does (`assumed`)."""
    lost_share: float | None
    """Of the throw, taken by the mount's give at full push; None when the throw is not known."""
    droop_m: float
    droop_rad: float
    ringing_hz: float | None
    """At which it swings when the stick is let go; None when nothing gives, or it is not known how far or how heavy it is."""
    parts: tuple[Text, ...]
    """What it takes: the device, then from the kit, by their names."""
    take_off_s: float | None
    verdict: Literal["holds", "does_not_hold", "refused"]
    fails: tuple[Message, ...]
    """Each check that fails, in a sentence."""
    refused: tuple[Message, ...]
    """Each hard safety rule that it breaks."""
    change: Message | None
    """The smallest change that would make it hold; None when it does or none would."""
    dimensions: tuple[Dimension, ...]
    cable_m: float | None
    """Length of the way of the cable along it, from the stick to its foot or clamp."""
    assumed: tuple[Message, ...] = ()
    taken_by: tuple[str, ...] = ()
    """Sites that have what this would need, where the kit has no other."""
    cable_slack_m: float = 0.0
    """Of `cable_m`, what the joints need to move."""
    lever_m: tuple[float, float] | None = None
    """At which a push tips the base or pulls at its fastener: from the contact point to the underside, and from there to what it
    stands on."""
    anti_slip: str | None = None
    """Name of the anti-slip sheet that is used, under the base or under its board."""
    coupling: str | None = None
    """Name of the breakaway coupling that is used."""
    release_nm: tuple[float, float | None] | None = None
    """Between what moments at the clamp that coupling is set to let go: what it must carry, and the most that it may or
    can; None where nothing says how much that is."""
    release_n: tuple[float, float | None] | None = None
    """The same at the contact point, for a push along with the weight."""
    plate: str | None = None
    """Name of the plate that carries several devices on one arm."""
    openings: int | None = None
    """After how many openings its fastener is half as strong."""
    release_agreed: bool = False
    """Whether the upper end is a force that the clinic agreed to, and not just the most that the coupling can be set to."""
    under: tuple[Message, ...] = ()
    """What goes under the base or the site and is made to measure: packing, a wedge, a support."""
    doubts: tuple[MountDoubt, ...] = ()
    """Rules that it breaks, or that nobody can tell, at figures which nobody measured: to confirm."""

    def __post_init__(self) -> None:
        """None for what is not finite."""
        none_unless_finite(self, "margin", "give_n_per_m", "lost_share", "ringing_hz")

    @property
    def stiffness_n_per_m(self) -> float:
        """For arithmetic: infinite when nothing gives as far as is known."""
        return math.inf if self.give_n_per_m is None else self.give_n_per_m

    @property
    def spare(self) -> float:
        """The margin for arithmetic: infinite when nothing loads it."""
        return math.inf if self.margin is None else self.margin


@dataclass(frozen=True)
class SiteMount:
    """One site: where its device goes, what holds it, what else would, and what does not."""

    site: str
    device: str
    pose: Pose | None
    choice: MountFit | None
    fits: tuple[MountFit, ...]
    """Best first: those that hold, those that do not, those refused."""
    sentence: Message
    cautions: tuple[Caution, ...]
    findings: tuple[Finding, ...]
    kind: Literal["stick", "switch", "controller"] = "stick"
    """What the device is."""
    pieces: int = 1
    """How many of it stand there side by side."""
    base_m: Point | None = None
    """Length, width and height of one base, measured or what stands in for it; None when nothing does."""
