"""Cables: what fits into what, how long each must be, and which leads of the stock make it so.

A plug fits a socket of its own size with as many conductors, and no other: one with fewer bridges contacts, one with
more finds none for its rings. Lengths are the way along the tie points, the way along an arm, what tilting takes up, and a
service loop.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations_with_replacement, product
from typing import Literal

from stickwright.codes.cables import Cables, LeadKind
from stickwright.codes.message import Message, message
from stickwright.codes.plugs import Carried, Contact, PlugKind, Plugs
from stickwright.model.kit import Lead
from stickwright.model.player import Site
from stickwright.model.plugs import conductors_of, is_usb, plugs_of
from stickwright.model.sharing import HeldWay

__all__ = [
    "SERVICE_LOOP_M",
    "CableWay",
    "Leads",
    "MissingLead",
    "Run",
    "carried",
    "ends_of",
    "leads_for",
    "plugs_compatible",
    "splitter_for",
    "way_of",
]  # fmt: skip

SERVICE_LOOP_M = 0.150
"""Spare length at the hub end, so that a plug can be drawn without untying the cable (common practice)."""
_MOST_JOINED = 3  # every joint is one more that comes apart
_LONGER_THAN_M = 1e-9  # rounding is no shortage


@dataclass(frozen=True)
class Run:
    """One cable from a device to a socket, before its leads are chosen.

    Parameters
    ----------
    tag : str
        Printed at both ends.
    plug : str
        The device's, as typed; with "or" between those it can have.
    takes : str
        What it goes into, as typed: a socket of the hub, or one way of a splitter.
    own_m : float, optional
        The device's own cable, plug included.
    needed_m : float, optional
        Of its `CableWay`, with the service loop.
    splitter_m : float
        Cable that the splitter at the hub adds, default 0.
    """

    tag: str
    plug: str
    takes: str
    own_m: float | None
    needed_m: float | None
    splitter_m: float = 0.0


@dataclass(frozen=True)
class MissingLead:
    """A lead that is needed and not there.

    Parameters
    ----------
    kind : str
        'extension', 'adapter' or 'splitter'.
    socket : str
        What its end towards the device must take.
    plug : str
        Its end towards the hub.
    least_m : float
        Shortest that does; 0 when length does not matter.
    ways : int
        Of a splitter.
    """

    kind: LeadKind
    socket: PlugKind
    plug: PlugKind
    least_m: float = 0.0
    ways: int = 1

    @property
    def text(self) -> Message:
        """What to ask for in a shop, within a sentence."""
        return self._told(label=False)

    @property
    def label(self) -> Message:
        """The same as the name of a part."""
        return self._told(label=True)

    def _told(self, *, label: bool) -> Message:
        if self.kind == "adapter":
            return message(Cables.adapter, plug=self.socket, socket=self.plug, label=label)
        if self.kind == "splitter":
            return message(Cables.splitter, plug=self.plug, ways=self.ways, label=label)
        return message(Cables.extension, plug=self.plug, least_m=_rounded_up(self.least_m), label=label)

    def met_by(self, lead: Lead) -> bool:
        """Whether a lead of the kit would do, were it in stock."""
        ends = ends_of(lead)
        if (lead.kind == "splitter") != (self.kind == "splitter") or self.plug not in plugs_of(lead.plug):
            return False
        if self.kind == "splitter":
            return len(ends) >= self.ways
        return self.socket in plugs_of(ends[0]) and (lead.length_m or 0.0) >= self.least_m - _LONGER_THAN_M


@dataclass(frozen=True)
class Leads:
    """What lies between a device and its socket.

    Parameters
    ----------
    plug : str
        Of the device's plugs the one to use; empty when none is said.
    leads : tuple of Lead
        In order from the device, splitters left out.
    length_m : float, optional
        Own cable, leads and splitter together; None when the own cable was not measured.
    wanted : tuple of MissingLead
        What the stock does not have.
    reason : Message, optional
        Why the plug does not fit without an adapter, a clause; None when it does.
    """

    plug: PlugKind | Literal[""]
    leads: tuple[Lead, ...]
    length_m: float | None
    wanted: tuple[MissingLead, ...] = ()
    reason: Message | None = None


@dataclass(frozen=True)
class CableWay:
    """What a cable must be long enough for, part by part; the service loop comes on top.

    Parameters
    ----------
    tied_m : float, optional
        From where the device is held to the hub, by the tie points; None when nobody took it and nothing tells it.
    along_m : float
        Along what holds the device, default 0.
    tilt_m : float
        What tilting takes up, default 0.
    assumed : Message, optional
        What stands in for a way that was not taken; None when it was.
    slack_m : float
        Of `along_m`, what the joints of an arm need to move.
    """

    tied_m: float | None
    along_m: float = 0.0
    tilt_m: float = 0.0
    assumed: Message | None = None
    slack_m: float = 0.0

    @property
    def needed_m(self) -> float | None:
        """All of it, with the service loop; None when the way is not known."""
        if self.tied_m is None:
            return None
        return round(self.tied_m + self.along_m + self.tilt_m + SERVICE_LOOP_M, 9)


def way_of(sites: Sequence[Site], held: HeldWay | None = None) -> CableWay:
    """The way of the cable of one device; of several sites that share it, the longest that was taken.

    Parameters
    ----------
    sites : sequence of Site
        Whoever uses it; their `to_hub_m` is taken from where the device is held: the foot of its base, or the clamp of its arm.
    held : HeldWay, optional
        The way along what holds it, added to that; and the way to the hub along the axes of the room, which stands in for
        one that was not taken.

    Examples
    --------
    >>> chin = Site(name="chin", part="chin", to_hub_m=1.2, tilt_slack_m=0.6)
    >>> way_of([chin]).needed_m
    1.95
    >>> way_of([chin], HeldWay("chin", "rowan", 0.5, "long arm")).needed_m
    2.45
    """
    along, slack = (held.along_m, held.slack_m) if held is not None else (0.0, 0.0)
    taken = [site for site in sites if site.to_hub_m is not None]
    if taken:
        longest = max(taken, key=lambda site: (site.to_hub_m or 0.0) + site.tilt_slack_m)
        return CableWay(longest.to_hub_m, along, longest.tilt_slack_m, slack_m=slack)
    tilt = max((site.tilt_slack_m for site in sites), default=0.0)
    if held is None or held.to_hub_m is None:
        return CableWay(None, along, tilt, slack_m=slack)
    assumed = message(Cables.way_assumed, to_hub_m=held.to_hub_m)
    return CableWay(held.to_hub_m, along, tilt, assumed, slack)


def ends_of(lead: Lead) -> tuple[str, ...]:
    """What the end of a lead towards the device takes, one for each way.

    Parameters
    ----------
    lead : Lead
        A splitter that does not say its ways has two, the fewest that make one.
    """
    return lead.sockets or ((lead.plug,) * (2 if lead.kind == "splitter" else 1))


def plugs_compatible(plug: str, takes: str) -> tuple[bool, Message | None]:
    """Whether a plug may go into a socket, and why not.

    Parameters
    ----------
    plug, takes : str
        As typed; each may name several with "or".

    Returns
    -------
    tuple of bool and Message
        The reason, a clause, is None when it fits; otherwise it is that of the first plug and the first socket named.

    Examples
    --------
    >>> fits, why = plugs_compatible("2-conductor", "4-conductor")
    >>> fits, why.text, why.param("contacts")
    (False, 'bridges', ('ring 1', 'ring 2', 'sleeve'))
    >>> plugs_compatible("USB or 4-conductor", "4-conductor")
    (True, None)
    """
    pairs = list(product(plugs_of(plug), plugs_of(takes)))
    if not pairs:
        return False, message(Plugs.not_said) if not plug.strip() else message(Plugs.socket_not_said)
    if any(one == other for one, other in pairs):
        return True, None
    return False, _why_not(*pairs[0])


def _why_not(plug: PlugKind, takes: PlugKind) -> Message:
    if is_usb(plug) or is_usb(takes):
        return message(Plugs.other_kind, plug=plug, socket=takes)
    size, room = (float(one.partition(" ")[0]) for one in (plug, takes))
    if size != room:
        return message(Plugs.other_size, plug=plug, socket=takes, thick=size > room)
    has, wants = conductors_of(plug), conductors_of(takes)
    if len(has) < len(wants):
        return message(Plugs.bridges, plug=plug, socket=takes, contacts=wants[len(has) - 1 :])
    return message(Plugs.no_contact, plug=plug, socket=takes, contacts=has[len(wants) - 1 : -1])


def carried(plug: str, kind: str) -> tuple[Message, ...]:
    """What each contact of a plug carries.

    Parameters
    ----------
    plug : str
        As `stickwright.model.plugs.plugs_of` spells it; nothing is known of an empty one.
    kind : str
        'stick', 'switch' or 'controller'.

    Returns
    -------
    tuple of Message
        For a stick's round plug one for all contacts: two orders are in use, ground on ring 2 or on the sleeve
        (from memory), and only the manuals tell which.

    Notes
    -----
    The wires of USB: [usb-2], 6.4.2 (from memory).

    Examples
    --------
    >>> [(one.param("contacts"), one.param("carries")) for one in carried("3.5 mm 2-conductor", "switch")]
    [(('tip',), 'switch_contact'), (('sleeve',), 'common')]
    """
    if not plug:
        return ()
    contacts = conductors_of(plug)
    if is_usb(plug):
        lines: tuple[Carried, ...] = ("five_volts", "data", "data", "ground")
        return tuple(_carries((contact,), line) for contact, line in zip(contacts, lines, strict=True))
    if kind == "switch" and len(contacts) == 2:
        return _carries(contacts[:1], "switch_contact"), _carries(contacts[1:], "common")
    return (_carries(contacts, "axes" if kind == "stick" and len(contacts) == 4 else "unknown"),)


def _carries(contacts: tuple[Contact, ...], carries: Carried) -> Message:
    return message(Plugs.carries, contacts=contacts, carries=carries)


def splitter_for(takes: str, plugs: dict[int, str], leads: Sequence[Lead]) -> Lead | MissingLead:
    """A splitter for one socket, or what to look for when there is none.

    Parameters
    ----------
    takes : str
        What the socket of the hub takes.
    plugs : dict
        For each way used, from 1, the plug of the device.
    leads : sequence of Lead
        What is still in stock. One with its own power supply comes first, then the one with the fewest ways.
    """
    ways = max(plugs)
    fitting = [
        lead
        for lead in leads
        if lead.kind == "splitter"
        and len(ends_of(lead)) >= ways
        and plugs_compatible(lead.plug, takes)[0]
        and all(plugs_compatible(plug, ends_of(lead)[way - 1])[0] for way, plug in plugs.items() if plug)
    ]
    if fitting:
        return min(fitting, key=lambda lead: (lead.port_current_a is None, len(ends_of(lead))))
    kind = plugs_of(takes)[0]
    return MissingLead("splitter", kind, kind, ways=max(2, ways))


def leads_for(runs: Sequence[Run], leads: Sequence[Lead]) -> dict[str, Leads]:
    """Adapters and extension leads for each run, every unit of the stock used once.

    Parameters
    ----------
    runs : sequence of Run
        Tags differ.
    leads : sequence of Lead
        With their stock.

    Returns
    -------
    dict
        By tag. Adapters go in the order of the runs. Of the extension leads, the longest need takes the shortest that
        does; only then are leads joined, longest need first, for those that one lead could not serve.
    """
    stock = [lead.in_stock for lead in leads]
    out = {run.tag: _adapted(run, leads, stock) for run in runs}
    short = [run for run in runs if _shortage(run, out[run.tag]) > _LONGER_THAN_M]
    short.sort(key=lambda run: -_shortage(run, out[run.tag]))
    for sizes in ((1,), tuple(range(2, _MOST_JOINED + 1))):
        for run in [run for run in short if _shortage(run, out[run.tag]) > _LONGER_THAN_M]:
            found = _lengthened(run, out[run.tag], leads, stock, sizes)
            out[run.tag] = found or out[run.tag]
    for run in short:
        lack, at = _shortage(run, out[run.tag]), out[run.tag]
        if lack > _LONGER_THAN_M:
            kind = _hub_side(run, at)
            out[run.tag] = replace(at, wanted=(*at.wanted, MissingLead("extension", kind, kind, lack)))
    return out


def _adapted(run: Run, leads: Sequence[Lead], stock: list[int]) -> Leads:
    """The plug to use, with an adapter where none fits as it is."""
    plugs, takes = plugs_of(run.plug), plugs_of(run.takes)
    length = None if run.own_m is None else run.own_m + run.splitter_m
    if not plugs or not takes:
        return Leads(plugs[0] if plugs else "", (), length)
    for plug in plugs:
        if plug in takes:
            return Leads(plug, (), length)
    reason = plugs_compatible(run.plug, run.takes)[1]
    for plug in plugs:
        for place, lead in enumerate(leads):
            if (
                stock[place]
                and _converts(lead)
                and plug in plugs_of(ends_of(lead)[0])
                and {*plugs_of(lead.plug)} & {*takes}
            ):
                stock[place] -= 1
                return Leads(plug, (lead,), None if length is None else length + (lead.length_m or 0.0), reason=reason)
    return Leads(plugs[0], (), length, (MissingLead("adapter", plugs[0], takes[0]),), reason)


def _converts(lead: Lead) -> bool:
    return lead.kind != "splitter" and not {*plugs_of(lead.plug)} & {*plugs_of(ends_of(lead)[0])}


def _shortage(run: Run, at: Leads) -> float:
    return 0.0 if run.needed_m is None or at.length_m is None else run.needed_m - at.length_m


def _hub_side(run: Run, at: Leads) -> PlugKind:
    """The connector of what an adapter is followed by; the device's own where there is no adapter."""
    takes = plugs_of(run.takes)
    return at.plug if at.plug and (at.plug in takes or not takes) else takes[0]


def _lengthened(run: Run, at: Leads, leads: Sequence[Lead], stock: list[int], sizes: tuple[int, ...]) -> Leads | None:
    """With the fewest extension leads, and of those the shortest sum, that are long enough."""
    lack = _shortage(run, at)
    before, after = {at.plug}, {_hub_side(run, at)}
    there = [place for place, lead in enumerate(leads) if stock[place] and _lengthens(lead, before | after)]
    for size in sizes:
        sums = [
            (sum(leads[place].length_m or 0.0 for place in places), places)
            for places in combinations_with_replacement(there, size)
            if all(places.count(place) <= stock[place] for place in places)
        ]
        enough = [(total, places) for total, places in sums if total >= lack - _LONGER_THAN_M]
        if enough:
            total, places = min(enough)
            for place in places:
                stock[place] -= 1
            added = [leads[place] for place in places]
            near = tuple(lead for lead in added if {*plugs_of(lead.plug)} & before)
            far = tuple(lead for lead in added if not {*plugs_of(lead.plug)} & before)
            length = None if at.length_m is None else at.length_m + total
            return replace(at, leads=(*near, *at.leads, *far), length_m=length)
    return None


def _lengthens(lead: Lead, kinds: set[str]) -> bool:
    """Whether it is an extension lead of known length, with one of these connectors at both ends."""
    same = lead.kind == "extension" and not _converts(lead) and bool({*plugs_of(lead.plug)} & kinds)
    return same and bool(lead.length_m)


def _rounded_up(length_m: float) -> float:
    """To the next tenth of a metre: what can be asked for."""
    return math.ceil(round(length_m * 10, 6)) / 10
