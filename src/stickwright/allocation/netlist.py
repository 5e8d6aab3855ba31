"""The netlist: every device to its socket, with what lies between and what is missing.

One wire is one device, however many actions it does. A device that is paired is a wire without a cable.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright.allocation.cables import (
    CableWay,
    Leads,
    MissingLead,
    Run,
    carried,
    ends_of,
    leads_for,
    splitter_for,
    way_of,
)
from stickwright.allocation.power import UNIT_LOAD_A, bare_socket, goes_by_usb
from stickwright.codes.asked import Asked
from stickwright.codes.message import Message, Name, message
from stickwright.codes.wirings import Wirings
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.case import Case
from stickwright.model.hub import STICK_ROLES, Hub, Socket
from stickwright.model.kit import Controller, Kit, Lead, Stick, Switch
from stickwright.model.recorded import Finding
from stickwright.model.sharing import HeldWay, Placement, Wire

__all__ = [
    "Netlist",
    "WiredDevice",
    "empty_sockets",
    "is_paired",
    "netlist_of",
    "place_of",
    "socket_of_wire",
    "units_of",
]

_HANDS = frozenset({"fingertip", "thumb", "hand"})  # parts that hold one two-handed controller between them
Device = Stick | Switch | Controller
Splitters = dict[tuple[str, str], Lead | MissingLead]


@dataclass(frozen=True)
class WiredDevice:
    """One physical device, with what it does."""

    device: Device
    sites: tuple[str, ...]
    """Sites that use it, or who helps."""
    hub: str | None
    """None where no hub is described."""
    socket: str | None
    paired: bool
    placements: tuple[Placement, ...]
    helper: bool = False

    @property
    def kind(self) -> str:
        return type(self.device).__name__.lower()

    @property
    def actions(self) -> tuple[str, ...]:
        return tuple(placement.action for placement in self.placements)


@dataclass(frozen=True)
class Netlist:
    """Devices that are connected, each with its wire and its leads, and the splitters between."""

    units: tuple[WiredDevice, ...]
    """In the order of the wires."""
    wires: tuple[Wire, ...]
    leads: dict[str, Leads]
    """By tag; none for what is paired."""
    splitters: Splitters
    """By hub and socket."""

    @property
    def splitters_in_place(self) -> dict[tuple[str, str], Lead]:
        return {at: lead for at, lead in self.splitters.items() if isinstance(lead, Lead)}


def units_of(placements: Sequence[Placement], case: Case) -> tuple[tuple[WiredDevice, ...], tuple[Finding, ...]]:
    """Physical devices in the order of hubs and sockets, one controller for each helper among them.

    Returns
    -------
    tuple
        Devices; what a helper lacks.

    Raises
    ------
    BadInput
        A device, hub or socket that is not described.
    """
    units = [*_site_units(placements, case)]
    for_helpers, findings = _helper_units(placements, units, case)
    return tuple(_in_socket_order([*units, *for_helpers], case.hubs)), tuple(findings)


def netlist_of(units: Sequence[WiredDevice], case: Case, held: Sequence[HeldWay] = ()) -> Netlist:
    """A wire for each device that is connected to a hub.

    Parameters
    ----------
    units : sequence of WiredDevice
        As `units_of` gives them.
    case : Case
    held : sequence of HeldWay
        The way along what holds each device, as far as that was chosen.
    """
    wired = tuple(unit for unit in units if unit.hub is not None)
    splitters = _splitters_for(wired, case)
    wires, leads = _wires_for(wired, _tags_of(wired, case.hubs), splitters, case, held)
    return Netlist(wired, wires, leads, splitters)


def is_paired(wire: Wire) -> bool:
    """Whether a wire stands for a paired controller, which has no cable."""
    return wire.paired


def socket_of_wire(wire: Wire, hubs: Sequence[Hub]) -> Socket | None:
    """The socket of the hub that a wire ends in; None for what is paired.

    Raises
    ------
    BadInput
        A hub or socket that is not described.
    """
    return None if is_paired(wire) else _socket_of(wire.hub, wire.socket, hubs)[1]


def empty_sockets(wires: Sequence[Wire], hubs: Sequence[Hub]) -> dict[tuple[str, str], Message]:
    """Sockets that must stay empty, and why.

    Returns
    -------
    dict
        By hub and socket, a clause: the same stick as u1, or not together with u1.
    """
    out: dict[tuple[str, str], Message] = {}
    for hub in hubs:
        known = [socket.name for socket in hub.socket]
        used = {
            bare_socket(wire.socket, known)[0]: wire for wire in wires if wire.hub == hub.name and not is_paired(wire)
        }
        sticks = {wire.role: place_of(wire, hubs, hub.name) for wire in wires if wire.role in STICK_ROLES}
        by_name = {socket.name: socket for socket in hub.socket}
        for socket in hub.socket:
            if socket.name in used:
                continue
            shut = [name for name in used if name in socket.excludes or socket.name in by_name[name].excludes]
            if socket.role in sticks:
                out[hub.name, socket.name] = message(Wirings.same_stick_as, place=sticks[socket.role])
            elif shut:
                out[hub.name, socket.name] = message(Wirings.not_with, socket=Name(shut[0]))
    return out


def place_of(wire: Wire, hubs: Sequence[Hub], beside: str | None = None) -> Message:
    """A socket by its name, with its hub where there are several; a paired controller by its own.

    Parameters
    ----------
    wire : Wire
    hubs : sequence of Hub
    beside : str, optional
        Hub that need not be named, since the words stand beside it.
    """
    if is_paired(wire):
        return message(Wirings.paired, device=Name(wire.device))
    alone = len(hubs) == 1 or wire.hub == beside
    return message(Wirings.socket, socket=Name(wire.socket), hub=None if alone else Name(wire.hub))


# --- devices ----------------------------------------------------------------------------------------------------------


def _device(name: str | None, kind: str, kit: Kit) -> Device:
    rooms: dict[str, Sequence[Device]] = {"stick": kit.stick, "switch": kit.switch, "controller": kit.controller}
    pool: list[Device] = [*rooms[kind]] if kind in rooms else [*kit.stick, *kit.switch, *kit.controller]
    for device in pool:
        if device.name == name:
            return device
    known = did_you_mean(name or "", [device.name for device in pool])
    expected = message(Asked.device, kind=kind if kind in rooms else "device")  # type: ignore[arg-type]
    raise BadInput(Problem("device", f'"{name}"', expected, known))


def _socket_of(hub: str | None, socket: str | None, hubs: Sequence[Hub]) -> tuple[Hub, Socket]:
    for one in hubs:
        if one.name == hub:
            known = [item.name for item in one.socket]
            bare = bare_socket(socket or "", known)[0]
            for item in one.socket:
                if item.name == bare:
                    return one, item
            found = message(Asked.socket, name=Name(socket or ""))
            raise BadInput(Problem(f"hub {hub}", found, message(Asked.of_hub), did_you_mean(bare, known)))
    known = [one.name for one in hubs]
    raise BadInput(Problem("hub", f'"{hub}"', message(Asked.hub), did_you_mean(hub or "", known)))


def _site_units(placements: Sequence[Placement], case: Case) -> Iterator[WiredDevice]:
    """Physical devices: what shares a socket, or a controller that the same hands hold, is one."""
    hands = {site.name for site in case.player.site if site.part in _HANDS}
    groups: dict[tuple[str | None, ...], list[Placement]] = {}
    for place, placement in enumerate(placements):
        if placement.how != "site" or not placement.device:
            continue
        place_there = placement.site
        if placement.kind == "controller" and (placement.connection == "socket" or placement.site in hands):
            place_there = None  # parts that reach the same controller share it
        alone = str(place) if placement.kind == "switch" and not placement.connection else None
        key = (place_there, placement.device, placement.connection, placement.hub, placement.socket, alone)
        groups.setdefault(key, []).append(placement)
    for group in groups.values():
        first = group[0]
        device = _device(first.device, first.kind, case.kit)
        hub: str | None = None
        if first.connection == "socket":
            hub = _socket_of(first.hub, first.socket, case.hubs)[0].name
        elif first.connection == "paired":
            hub = first.hub or next((one.name for one in case.hubs if one.paired), None)
        at = tuple(dict.fromkeys(placement.site or "" for placement in group))
        yield WiredDevice(device, at, hub, first.socket, first.connection == "paired", tuple(group))


def _helper_units(
    placements: Sequence[Placement], units: Sequence[WiredDevice], case: Case
) -> tuple[list[WiredDevice], list[Finding]]:
    """One paired controller for each helper, as far as hubs and kit have them."""
    groups: dict[str, list[Placement]] = {}
    for placement in placements:
        if placement.how == "helper":
            groups.setdefault(placement.helper or "helper", []).append(placement)
    taken = Counter(unit.hub for unit in units if unit.paired)
    used = Counter(unit.device.name for unit in units)
    out, findings = [], []
    for helper, group in groups.items():
        hub = next((one.name for one in case.hubs if one.paired > taken[one.name]), None)
        pairing = [one for one in case.kit.controller if one.pairs]
        free = [one for one in pairing if one.in_stock > used[one.name]] or pairing
        if hub is None or not free:
            if case.hubs:
                why: Literal["no_controller", "no_place"] = "no_place" if free else "no_controller"
                text = message(Wirings.no_second_controller, helper=Name(helper), why=why)
                findings.append(Finding("query", "pairing", text))
            continue
        out.append(WiredDevice(free[0], (helper,), hub, None, True, tuple(group), helper=True))
        taken[hub] += 1
        used[free[0].name] += 1
    return out, findings


def _in_socket_order(units: Iterable[WiredDevice], hubs: Sequence[Hub]) -> list[WiredDevice]:
    places = {hub.name: place for place, hub in enumerate(hubs)}
    sockets = {hub.name: [socket.name for socket in hub.socket] for hub in hubs}

    def order(unit: WiredDevice) -> tuple[int, bool, int, int]:
        if unit.hub is None:
            return (len(places), False, 0, 0)
        if unit.paired:
            return (places.get(unit.hub, len(places)), True, int(unit.helper), 0)
        name, way = bare_socket(unit.socket or "", sockets[unit.hub])
        return (places[unit.hub], False, sockets[unit.hub].index(name), way or 0)

    return sorted(units, key=order)


def _tags_of(units: Sequence[WiredDevice], hubs: Sequence[Hub]) -> list[str]:
    used = [hub.name for hub in hubs if any(unit.hub == hub.name for unit in units)]
    count: Counter[str] = Counter()
    out = []
    for unit in units:
        letter = chr(ord("A") + used.index(unit.hub or ""))
        count[letter] += 1
        out.append(f"{letter}{count[letter]}")
    return out


# --- wires ------------------------------------------------------------------------------------------------------------


def _splitters_for(units: Sequence[WiredDevice], case: Case) -> Splitters:
    """For each socket with ways: a splitter of the stock, or what is wanted."""
    ways: dict[tuple[str, str], dict[int, str]] = {}
    takes: dict[tuple[str, str], str] = {}
    for unit in units:
        if unit.paired:
            continue
        hub, socket = _socket_of(unit.hub, unit.socket, case.hubs)
        way = bare_socket(unit.socket or "", [one.name for one in hub.socket])[1]
        if way is not None:
            ways.setdefault((hub.name, socket.name), {})[way] = unit.device.plug
            takes[hub.name, socket.name] = socket.takes
    used: Counter[str] = Counter()
    out: Splitters = {}
    for at, plugs in ways.items():
        left = [lead for lead in case.kit.lead if lead.in_stock > used[lead.name]]
        found = out[at] = splitter_for(takes[at], plugs, left)
        if isinstance(found, Lead):
            used[found.name] += 1
    return out


def _wires_for(
    units: Sequence[WiredDevice], tags: Sequence[str], splitters: Splitters, case: Case, held: Sequence[HeldWay]
) -> tuple[tuple[Wire, ...], dict[str, Leads]]:
    sites = {site.name: site for site in case.player.site}
    along = {(one.site, one.device): one for one in held}
    runs, ways = [], {}
    for unit, tag in zip(units, tags, strict=True):
        if not unit.paired:
            takes, splitter = _takes(unit, splitters, case.hubs)
            length = splitter.length_m or 0.0 if isinstance(splitter, Lead) else 0.0
            found = [along[site, unit.device.name] for site in unit.sites if (site, unit.device.name) in along]
            way = ways[tag] = way_of([sites[site] for site in unit.sites if site in sites], found[0] if found else None)
            runs.append(Run(tag, unit.device.plug, takes, unit.device.cable_m, way.needed_m, length))
    leads = leads_for(runs, case.kit.lead)
    by_tag = {run.tag: run for run in runs}
    return tuple(
        _paired_wire(unit, tag)
        if unit.paired
        else _wire(unit, by_tag[tag], ways[tag], leads[tag], splitters, case.hubs)
        for unit, tag in zip(units, tags, strict=True)
    ), leads


def _takes(unit: WiredDevice, splitters: Splitters, hubs: Sequence[Hub]) -> tuple[str, Lead | MissingLead | None]:
    """What the device is plugged into: the socket itself, or the way of its splitter."""
    hub, socket = _socket_of(unit.hub, unit.socket, hubs)
    way = bare_socket(unit.socket or "", [one.name for one in hub.socket])[1]
    splitter = splitters.get((hub.name, socket.name)) if way is not None else None
    if isinstance(splitter, Lead) and way is not None:
        return ends_of(splitter)[way - 1], splitter
    return socket.takes, splitter


def _wire(unit: WiredDevice, run: Run, way: CableWay, at: Leads, splitters: Splitters, hubs: Sequence[Hub]) -> Wire:
    _, socket = _socket_of(unit.hub, unit.socket, hubs)
    splitter = _takes(unit, splitters, hubs)[1]
    through = [lead.name for lead in at.leads]
    missing = [wanted.text for wanted in at.wanted]
    if isinstance(splitter, Lead):
        through.append(splitter.name)
    elif splitter is not None:
        missing.append(splitter.text)
    return Wire(
        tag=run.tag,
        device=unit.device.name,
        at=unit.sites,
        plug=at.plug,
        through=tuple(through),
        hub=unit.hub or "",
        socket=unit.socket or "",
        takes=socket.takes,
        role=_role(unit, socket),
        actions=unit.actions,
        needed_m=run.needed_m,
        length_m=None if at.length_m is None else round(at.length_m, 9),
        current_a=_current_a(unit.device, at, socket),
        conductors=carried(at.plug, unit.kind),
        missing=tuple(missing),
        tied_m=way.tied_m,
        along_m=way.along_m,
        tilt_m=way.tilt_m,
        assumed=way.assumed,
        slack_m=way.slack_m,
    )


def _paired_wire(unit: WiredDevice, tag: str) -> Wire:
    return Wire(
        tag=tag,
        device=unit.device.name,
        at=unit.sites,
        plug="",
        through=(),
        hub=unit.hub or "",
        socket="",
        takes="",
        role=None if unit.helper else _role(unit, None),
        actions=unit.actions,
        needed_m=None,
        length_m=None,
        current_a=0.0,
        conductors=(),
        paired=True,
    )


def _role(unit: WiredDevice, socket: Socket | None) -> str | None:
    """What the socket feeds; when that is free, what the actions are listened to as: a stick before a button."""
    if socket is not None and socket.role is not None and socket.role != "assignable":
        return socket.role
    roles = [placement.role for placement in unit.placements if placement.role]
    sticks = [role for role in roles if role in STICK_ROLES]
    return next(iter(sticks or roles), None)


def _current_a(device: Device, at: Leads, socket: Socket) -> float:
    """As its papers say, adapters included; without papers one unit load where USB asks for it, else nothing."""
    own_a = device.current_a
    if own_a is None:
        own_a = UNIT_LOAD_A if goes_by_usb(at.plug, socket.takes) else 0.0
    return round(own_a + sum(lead.current_a or 0.0 for lead in at.leads), 9)
