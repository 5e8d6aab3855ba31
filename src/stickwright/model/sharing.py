"""Who does what, with what, into which socket: the whole controller, as it comes out.

Points are on the player's own scale of 0 to 10: what an action is worth to them, less what doing it this way costs.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from stickwright.codes.cables import Cables
from stickwright.codes.estimate import Estimate, none_unless_finite
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.inputs import role_named
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.part_kinds import PartKind, PartKinds
from stickwright.codes.plugs import PlugKind
from stickwright.codes.presses import Presses
from stickwright.codes.scores import TermKind
from stickwright.codes.wirings import Wirings
from stickwright.model.fit import Assumption, Caution, Doubt, Fit
from stickwright.model.hub import Hub
from stickwright.model.recorded import Finding

__all__ = [
    "Alternative", "Clash", "Elsewhere", "HeldWay", "Pair", "PartLine", "Placement", "PowerLine", "PressFit", "Relaxation",
    "Sharing", "SiteLoad", "Term", "Wire", "Wiring",
]  # fmt: skip

How = Literal["site", "option", "helper", "dropped", "chord"]


@dataclass(frozen=True)
class Term:
    """One part of what a placement is worth: plus gains, minus costs."""

    what: TermKind
    points: float
    """On the player's scale, signed."""
    words: Text
    """A clause."""
    basis: Text | None = None
    """The product that gives the points, with its figures."""


@dataclass(frozen=True)
class PressFit:
    """One switch (or controller button) under one part, for one action."""

    force_n: float
    """To operate it."""
    comfortable_n: Estimate
    effort_share: float | None
    """Operating force over comfortable force; None where one of them is not known, or no force is comfortable (`fails`)."""
    effort_limit_share: float
    hit_share: float
    """Share of presses that land on it, at the usual scatter where landing was not taken."""
    presses_per_min: float
    """In the busy minute."""
    sustained_per_min: float | None
    """What can be kept up; None when no rate was taken."""
    hold_s: float | None
    """Longest hold the game asks of it."""
    hold_limit_s: float | None
    """None when no hold was taken."""
    false_per_min: float
    cycle_s: float
    """One press and release, the usual one where neither rate nor release was taken."""
    move_s: float
    """From a second switch at the same part to this one."""
    wanted_face_m: float | None
    """Diameter that catches 95 of 100 presses; None when landing was not taken."""
    fails: tuple[Text, ...]
    """Rules broken, each a clause; none when it fits."""
    notes: tuple[Text, ...]
    assumed: tuple[Text, ...]
    doubts: tuple[Doubt, ...] = ()
    """Each rule that is broken only at figures nobody measured."""
    unintended_share: float = 0.0
    """Unintended presses over the limit, at most 4, as expected over the range of the assumed figures."""
    sure_cycle_s: float | None = None
    """One press and release as far as it was read, which alone may refuse; `cycle_s` when not said."""
    most_false_per_min: float | None = None
    """Upper end for unintended activations, as unsteady as the part may be; None when it was not worked out."""

    def __post_init__(self) -> None:
        """None for what is not finite."""
        none_unless_finite(self, "effort_share", "sustained_per_min", "hold_limit_s", "wanted_face_m")

    @property
    def effort(self) -> float:
        """The effort for arithmetic: infinite where there is none."""
        return math.inf if self.effort_share is None else self.effort_share

    @property
    def false_estimate(self) -> Estimate:
        """False presses a minute with their upper end."""
        if self.most_false_per_min is None:
            return Estimate.unbounded(self.false_per_min, message(EstimateNotes.not_all_counted))
        return Estimate(self.false_per_min, 0.0, max(self.false_per_min, self.most_false_per_min))


@dataclass(frozen=True)
class Elsewhere:
    """One other place (or way) for an action, and why it was not taken."""

    where: str
    """Site, or 'option', 'helper', 'dropped'."""
    cost: float | None
    """How much lower the whole layout would score; None when it cannot be."""
    sentence: Text


@dataclass(frozen=True)
class Placement:
    """How one action is done."""

    action: str
    how: How
    site: str | None = None
    device: str | None = None
    """Name in the kit."""
    kind: Literal["stick", "switch", "controller", ""] = ""
    label: str = ""
    """As somebody typed it: the game's option, or the helper; empty for all other ways."""
    together: tuple[str, ...] = ()
    """Of a chord: the actions that are pressed together."""
    control: str | None = None
    """Stick or button of a controller, in the words of the standard mapping."""
    role: str | None = None
    """What the game sees, in the same words; None when any will do."""
    toggle: bool = False
    """A press to start, a press to stop."""
    helper: str | None = None
    connection: Literal["socket", "paired", ""] = ""
    hub: str | None = None
    socket: str | None = None
    holding: Literal["one hand", "two hands", "resting", ""] = ""
    """Of a controller: in which it is held, or that it rests; empty where nobody said."""
    holding_why: Text = ""
    """Why it rests, though it is made to be held; a clause."""
    points: float = 0.0
    """What doing it this way is worth: the sum of its terms."""
    terms: tuple[Term, ...] = ()
    fit: Fit | None = None
    press: PressFit | None = None
    reason: Text = ""
    """Why here."""
    second: Text = ""
    """Second best, and what it would cost."""
    second_cost: float | None = None
    """Points less than here; None when there is no second."""
    words: str = ""
    """The player's own words about leaving it to somebody else, or going without."""
    introduce: Literal["day 1", "week 2", "later", ""] = ""

    @property
    def named(self) -> Text:
        """The device as it is set up: a stick with what is on it, a controller with its stick or button."""
        role = role_named(self.control)
        if self.kind == "controller" and role is not None:
            return message(Presses.button, controller=Name(self.device or ""), role=role)
        return self.fit.named if self.fit is not None else Name(self.device or "")


@dataclass(frozen=True)
class Alternative:
    """Another plan that differs in something that matters."""

    placements: tuple[Placement, ...]
    points: float
    """Of the whole plan."""
    loss: float
    """Points less than the best plan."""
    changed: tuple[str, ...]
    """Actions done otherwise."""
    sentence: Text


@dataclass(frozen=True)
class Relaxation:
    """One way out of a clash."""

    sentence: Text
    price: float
    """Cost on the player's scale; more is dearer."""
    gives_up: tuple[Text, ...]


@dataclass(frozen=True)
class Clash:
    """The smallest set of wishes that cannot all be met: without any one of them the rest could."""

    wishes: tuple[Text, ...]
    sentence: Text
    ways_out: tuple[Relaxation, ...]
    """Cheapest first."""


@dataclass(frozen=True)
class Pair:
    """Whether two sites can act at the same time."""

    sites: tuple[str, str]
    says: Literal["yes", "slows", "no"]
    slowed_share: float
    """Part of the press rate that is lost."""
    assumed: Text | None
    """Why, when nobody tried."""


@dataclass(frozen=True)
class SiteLoad:
    """What a part is asked to do."""

    site: str
    devices: tuple[str, ...]
    actions: tuple[str, ...]
    busy_share: float
    """Of the busy minute, in presses."""
    tires: int
    """1 tires first; 0 when nothing tells."""
    why: Text
    part: str = ""
    """Body part, in the words of `stickwright.model.player.PARTS`; by the site's name when not said."""
    side: Literal["left", "right", "middle", ""] = ""
    """Of the player; by the site's name when not said."""
    busy_basis: Text = ""
    """What `busy_share` adds up from: presses times the time of each."""


@dataclass(frozen=True)
class Wire:
    """One device to one socket, with all that lies between."""

    tag: str
    """Printed at both ends: A1, A2 ..."""
    device: str
    at: tuple[str, ...]
    """Where the device stands: its sites, or who helps."""
    plug: PlugKind | Literal[""]
    through: tuple[str, ...]
    """Extension leads, adapters, splitters, in order from the device."""
    hub: str
    socket: str
    takes: str
    role: str | None
    actions: tuple[str, ...]
    needed_m: float | None
    """Way by the tie points, slack for tilting and the service loop; None when the way was not taken."""
    length_m: float | None
    """Of the device's own cable and what lengthens it; None when not known."""
    current_a: float
    conductors: tuple[Message, ...]
    """What each contact carries."""
    missing: tuple[Message, ...] = ()
    """Leads that are needed and not there."""
    tied_m: float | None = None
    """Of `needed_m`, the way from where the device is held to the hub, by the tie points; None when it is not known."""
    along_m: float = 0.0
    """Of `needed_m`, the way along what holds the device, from the device to its foot or clamp, with slack for the joints."""
    tilt_m: float = 0.0
    """Of `needed_m`, what tilting takes up."""
    assumed: Message | None = None
    """What stands in for a way that nobody laid a tape along."""
    slack_m: float = 0.0
    """Of `along_m`, what the joints of an arm need to move."""
    paired: bool = False
    """Whether it stands for a paired controller, which has no cable: no plug and no socket."""

    @property
    def lacks(self) -> Message | None:
        """All that is missing, a clause; None where nothing is."""
        return message(Cables.all_of, leads=self.missing) if self.missing else None


@dataclass(frozen=True)
class HeldWay:
    """The way of the cable of one held device before it comes to where it is tied."""

    site: str
    device: str
    along_m: float
    """Along what holds it, from the device to its foot or clamp, with slack for the joints; 0 when it stands by itself."""
    by: str
    """What holds it: an arm, a stand, a tray."""
    to_hub_m: float | None = None
    """From there to the hub along the axes of the room; None when nobody told where the hub stands."""
    slack_m: float = 0.0
    """Of `along_m`, what the joints of an arm need to move."""


@dataclass(frozen=True)
class PartLine:
    """One line of the parts list."""

    name: Text
    kind: PartKind
    count: int
    in_stock: int
    buy: int
    """How many must be bought or borrowed."""
    price: float | None
    """Of all that must be bought; None when not known."""
    note: Text = ""

    @property
    def kind_named(self) -> Message:
        """What it is, as a label."""
        return message(PartKinds.named, kind=self.kind)


@dataclass(frozen=True)
class PowerLine:
    """Current drawn at a socket, a splitter or a whole hub."""

    where: Message
    """A clause."""
    current_a: float
    limit_a: float | None
    unit_loads: int
    """USB 2.0 unit loads of 100 mA."""

    @property
    def words(self) -> Message:
        """Current, limit and place, a clause."""
        return message(Wirings.power, where=self.where, current_a=self.current_a, limit_a=self.limit_a)


@dataclass(frozen=True)
class Wiring:
    """Cable by cable: what goes where."""

    wires: tuple[Wire, ...]
    parts: tuple[PartLine, ...]
    power: tuple[PowerLine, ...]
    steps: tuple[Message, ...]
    """In the order in which it is plugged in and tried."""
    findings: tuple[Finding, ...]
    hubs: tuple[Hub, ...] = ()
    """As described, for the drawing."""


@dataclass(frozen=True)
class Sharing:
    """The whole controller: each action with its place, proven best for the stated wishes or said not to be."""

    placements: tuple[Placement, ...]
    """In the order of the game's actions."""
    points: float
    """Of the whole plan: all placements, and what is counted once (`shared`)."""
    bound: float
    """No plan can have more."""
    proven: bool
    solved: Text
    """How far it is proven, in a sentence."""
    alternatives: tuple[Alternative, ...]
    clash: Clash | None
    """What could not all be had; the placements then hold for the cheapest way out."""
    pairs: tuple[Pair, ...]
    loads: tuple[SiteLoad, ...]
    elsewhere: tuple[tuple[str, tuple[Elsewhere, ...]], ...]
    """For each action, every other place and why not."""
    wiring: Wiring | None
    """With several games, of the plan's own sharing: all that can stay plugged in for all of them at once."""
    sentence: Text
    findings: tuple[Finding, ...]
    assumptions: tuple[Assumption, ...]
    cautions: tuple[Caution, ...]
    shared: tuple[Term, ...] = ()
    """What the plan costs besides its placements: sites in use, controllers, adapters, things to buy, sites that slow others."""
    ask_first: Text = ""
    """Actions central to the game that a price nobody stated leaves to others; said before all else."""
