"""The question put to the solver: every way to do every action, and what no plan may break.

It is stated in the words of the trade and knows nothing of a solver: `stickwright.allocation.integer_model` turns it into
rows and columns. Points are on the player's own scale (importance 0 to 10), rounded to a thousandth, so that two
plans either differ by that much or are worth the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from stickwright.allocation.pressed import BUDGET_SHARE
from stickwright.codes.message import Text
from stickwright.model.sharing import How, Term

__all__ = [
    "BUSY_LIMIT_SHARE",
    "Connection",
    "Gear",
    "PlayingSite",
    "Question",
    "SocketGroup",
    "Splitter",
    "TogetherNeed",
    "Way",
    "rounded",
]  # fmt: skip

BUSY_LIMIT_SHARE = BUDGET_SHARE
"""Share of the busy minute that presses may fill at one part (`stickwright.allocation.pressed`)."""


def rounded(points: float) -> float:
    """Points to the thousandth, the smallest difference that counts.

    Parameters
    ----------
    points : float

    Examples
    --------
    >>> rounded(7.12345), rounded(-0.0001)
    (7.123, 0.0)
    """
    return round(points, 3) + 0.0


@dataclass(frozen=True)
class Way:
    """One way to do one action.

    Parameters
    ----------
    action : str
    how : str
        'site', 'option', 'helper', 'dropped' or 'chord' (its members do it).
    points : float
        What this way is worth, all costs of its own taken off.
    site, device, kind, control : str, optional
        Where and with what; the control of a controller.
    toggle : bool
        A press to start and a press to stop: the part is free between.
    busy_s : float
        Seconds of the busy minute that its presses take.
    near_s : float
        The same when a second switch stands near and the part has to move.
    alone : bool
        It allows no second switch near.
    terms : tuple of Term
        What the points are made of.
    label : str
        As somebody typed it: the game's option, or the helper.
    together : tuple of str
        Of a chord: the actions that are pressed together.
    detail : object
        What the caller wants back with the answer.
    """

    action: str
    how: How
    points: float
    site: str | None = None
    device: str | None = None
    kind: Literal["stick", "switch", "controller", ""] = ""
    control: str | None = None
    paired: bool = False
    """By a paired controller; otherwise a controller is plugged into a socket."""
    role: str | None = None
    """What a socket must feed; None when any button will do."""
    toggle: bool = False
    busy_s: float = 0.0
    near_s: float = 0.0
    alone: bool = False
    holding: Literal["one hand", "two hands", "resting", ""] = ""
    """Of a controller: in which it is held, or that it rests."""
    holding_why: Text = ""
    """Why it rests, though it is made to be held."""
    held_in: str = ""
    """Which hand holds it; empty where it stands at the place of the site."""
    holding_limbs: tuple[str, ...] = ()
    """Limbs that do nothing else while they hold it."""
    fixed_to: str = ""
    """The controller to whose grip a stick is fixed: the same hand then works both, and no other hand that controller."""
    terms: tuple[Term, ...] = ()
    label: str = ""
    together: tuple[str, ...] = ()
    detail: object = None


@dataclass(frozen=True)
class Gear:
    """Something of the kit: how many there are, and what one more would cost.

    Parameters
    ----------
    name : str
    plugs : tuple of str
        Any one of them is used.
    current_a : float
    in_stock : int
    price : float or None
        Of one that is not in stock; None when none can be had.
    """

    name: str
    plugs: tuple[str, ...] = ()
    current_a: float = 0.0
    in_stock: int = 1
    price: float | None = None


@dataclass(frozen=True)
class PlayingSite:
    """A part that plays.

    Parameters
    ----------
    name : str
    cost : float
        Points that using it costs: set-up each day, minding.
    most_switches : int
    place : str
        Where a controller would be held or fixed for it: both hands hold one in common.
    terms : tuple of Term
        What the cost is made of.
    """

    name: str
    cost: float = 0.0
    most_switches: int = 2
    place: str = ""
    terms: tuple[Term, ...] = ()
    limb: str = ""
    """Of the body, as `stickwright.allocation.concurrency.limb_of` names it."""


@dataclass(frozen=True)
class TogetherNeed:
    """Two actions that must be possible at the same time.

    Parameters
    ----------
    first, second : str
    chord : str, optional
        Only if this chord is wanted.
    never : frozenset of (str, str)
        Sites (of the first, of the second) that cannot act together; a site never can with itself.
    slowed : tuple of (str, str, float)
        Sites that can, at a price in points.
    """

    first: str
    second: str
    chord: str | None = None
    never: frozenset[tuple[str, str]] = frozenset()
    slowed: tuple[tuple[str, str, float], ...] = ()


@dataclass(frozen=True)
class SocketGroup:
    """Sockets that are alike in everything; or one that shuts out others.

    Parameters
    ----------
    sockets : tuple of str
        Names on the hub.
    hub : str
    plug : str
        What they take.
    roles : tuple of str
        What each can feed.
    limit_a : float or None
        Each can supply.
    """

    sockets: tuple[str, ...]
    hub: str
    plug: str
    roles: tuple[str, ...]
    limit_a: float | None = None
    excludes: tuple[int, ...] = ()
    """Places (in `Question.sockets`) of groups of one that must stay empty when this one is used."""

    @property
    def name(self) -> str:
        return f"{self.hub} {' '.join(self.sockets)}"


@dataclass(frozen=True)
class Connection:
    """An adapter from one plug to another.

    Parameters
    ----------
    name : str
    takes, plug : str
        Towards the device, towards the hub.
    current_a : float
        What it draws itself.
    """

    name: str
    takes: str
    plug: str
    current_a: float = 0.0


@dataclass(frozen=True)
class Splitter:
    """Several USB sockets from one.

    Parameters
    ----------
    name : str
    ways : int
    plug : str
        Of the socket it goes into, and of its own sockets.
    current_a : float
        What it draws itself, from the socket.
    way_limit_a : float
        What each way can supply.
    powered : bool
        A supply of its own feeds its ways; without one they too draw from the socket.
    """

    name: str
    ways: int
    plug: str
    current_a: float
    way_limit_a: float
    powered: bool


@dataclass(frozen=True)
class Question:
    """The whole question.

    Parameters
    ----------
    actions : tuple of str
    importance : tuple of float
        One for each action.
    ways : tuple of Way
    gear : tuple of Gear
        Sticks, switches, controllers, adapters and splitters by name.
    sites : tuple of PlayingSite
    together : tuple of TogetherNeed
    chords : tuple of (str, tuple of str)
        Chord and its members.
    sockets : tuple of SocketGroup
        Empty when no hub is described: then nothing is plugged in.
    wired : bool
        Whether hubs are described.
    hub_limits : tuple of (str, float or None, int or None)
        Hub, current and number of devices in all.
    paired : int
        Second controllers that all hubs together accept.
    adapters : tuple of Connection
    splitters : tuple of Splitter
    part_points, buy_points : float
        What each controller, adapter and splitter costs in points (of a stick or switch its way says it), and each thing bought.
    budget : float or None
    most_parts : int or None
    at_most : tuple of (str, int, tuple of int)
        Who can take over how many actions, and the ways that leave one to them.
    keep : tuple of (str, str, tuple of int)
        What is to stay, in words, and the ways that would do it.
    without : tuple of (str, tuple of int)
        What is not to be used, and the ways that use it.
    standing : tuple of (str, int, tuple of int)
        Site, how many switches of one model stand there for all games, and the ways on them; empty for one game alone.
    """

    actions: tuple[str, ...]
    importance: tuple[float, ...]
    ways: tuple[Way, ...]
    gear: tuple[Gear, ...] = ()
    sites: tuple[PlayingSite, ...] = ()
    together: tuple[TogetherNeed, ...] = ()
    chords: tuple[tuple[str, tuple[str, ...]], ...] = ()
    sockets: tuple[SocketGroup, ...] = ()
    wired: bool = False
    hub_limits: tuple[tuple[str, float | None, int | None], ...] = ()
    paired: int = 0
    adapters: tuple[Connection, ...] = ()
    splitters: tuple[Splitter, ...] = ()
    part_points: float = 0.2
    buy_points: float = 0.5
    budget: float | None = None
    most_parts: int | None = None
    at_most: tuple[tuple[str, int, tuple[int, ...]], ...] = ()
    keep: tuple[tuple[str, str, tuple[int, ...]], ...] = ()
    without: tuple[tuple[str, tuple[int, ...]], ...] = ()
    standing: tuple[tuple[str, int, tuple[int, ...]], ...] = ()

    def stands(self, way: Way) -> str:
        """Where the controller of a way is held or stands: the parts of one place have it in common."""
        return way.held_in or next(site.place for site in self.sites if site.name == way.site)
