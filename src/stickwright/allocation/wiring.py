"""Cable by cable: the netlist with what is to be looked at, the parts list, and the order of plugging in and trying.

What needs the practitioner's eye before anything is plugged in is a finding: a plug that would bridge contacts, two
sockets that feed the same stick, too much current, a way or a cable that nobody measured.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence

from stickwright.allocation.cables import Leads, MissingLead
from stickwright.allocation.netlist import (
    Netlist,
    WiredDevice,
    empty_sockets,
    is_paired,
    netlist_of,
    place_of,
    socket_of_wire,
    units_of,
)
from stickwright.allocation.power import UNIT_LOAD_A, bare_socket, goes_by_usb, power_faults, power_lines
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.part_kinds import PartKind
from stickwright.codes.wirings import Wirings
from stickwright.model.case import Case
from stickwright.model.hub import STICK_ROLES, Hub, roles_of
from stickwright.model.kit import Controller, Extension, Lead, Stick, Switch, Topper
from stickwright.model.plugs import conductors_of, is_usb, plugs_of
from stickwright.model.recorded import Finding
from stickwright.model.sharing import HeldWay, PartLine, Placement, Wire, Wiring

__all__ = ["wiring_of"]

_LEADS: dict[str, PartKind] = {"extension": "extension lead", "adapter": "adapter", "splitter": "splitter"}
Part = Stick | Switch | Controller | Lead | Topper | Extension | Hub


def wiring_of(placements: Sequence[Placement], case: Case, held: Sequence[HeldWay] = ()) -> Wiring:
    """What is plugged into what, with leads, currents, parts, order of plugging in, and what to look at.

    Parameters
    ----------
    placements : sequence of Placement
        Those done at a site name a device of the kit and, where hubs are described, how it is connected; "u1/2" means
        way 2 of a splitter in u1. Actions left to a helper need one paired controller for each helper.
    case : Case
        Kit, hubs and the sites' ways to the hub.
    held : sequence of HeldWay
        The way along what holds each device, once that is chosen: added to the way to the hub, so that the leads do for all of it.

    Returns
    -------
    Wiring
        Wires in the order of hubs and sockets, tagged A1, A2, ... at the first hub, B1, B2, ... at the next.

    Raises
    ------
    BadInput
        A device, hub or socket that is not described.
    """
    units, findings = units_of(placements, case)
    net = netlist_of(units, case, held)
    splitters = net.splitters_in_place
    power = power_lines(net.wires, case.hubs, splitters)
    return Wiring(
        wires=net.wires,
        parts=(*_parts(units, net, case), *_second_controllers(placements, units, case)),
        power=power,
        steps=_steps(net.wires, case.hubs),
        findings=(
            *findings,
            *power_faults(power, net.wires, splitters),
            *_plug_findings(net, case),
            *_longer_than_thought(net, netlist_of(units, case), held),
            *_socket_findings(net, case.hubs),
            *_unknowns(net, case),
            *_unconnected(units, case),
        ),
        hubs=case.hubs,
    )


def _unconnected(units: Sequence[WiredDevice], case: Case) -> Iterator[Finding]:
    """Devices that nothing says how to plug in."""
    loose = [unit for unit in units if unit.hub is None]
    if loose and not case.hubs:
        yield Finding("note", "hub", message(Wirings.no_hub))
    elif loose:
        devices = tuple(dict.fromkeys(_device_at(unit.device.name, unit.sites) for unit in loose))
        yield Finding("query", "hub", message(Wirings.no_socket, devices=devices))


def _device_at(device: str, sites: Iterable[str]) -> Message:
    return message(Wirings.device_at, device=Name(device), sites=_names(sites))


# --- what to look at --------------------------------------------------------------------------------------------------


def _plug_findings(net: Netlist, case: Case) -> Iterator[Finding]:
    """What does not fit, what is missing, and contacts that only the manuals tell."""
    for unit, wire in zip(net.units, net.wires, strict=True):
        if is_paired(wire):
            continue
        at = net.leads[wire.tag]
        cable = message(
            Wirings.cable, tag=Name(wire.tag), device=Name(wire.device), place=place_of(wire, case.hubs)
        )  # fmt: skip
        if not wire.plug:
            yield Finding("query", "plug", message(Wirings.plug_unknown, cable=cable))
        elif at.reason and not at.leads and at.wanted:
            text = message(Wirings.needs_adapter, cable=cable, why=at.reason, lead=at.wanted[0].text)
            yield Finding("fault", "plug", text)
        elif at.reason and _other_contacts(wire):
            yield Finding("query", "plug", message(Wirings.check_adapter, cable=cable, why=at.reason))
        adapters = {one.text for one in at.wanted if one.kind == "adapter"} if at.reason else set()
        lacking = tuple(one for one in wire.missing if one not in adapters)
        if lacking:
            text = message(Wirings.missing, cable=cable, leads=lacking, unmeasured=_unmeasured(wire, case))
            yield Finding("query", "missing", text)
        if unit.kind == "stick" and wire.plug and not is_usb(wire.plug) and len(conductors_of(wire.plug)) == 4:
            yield Finding("query", "conductors", message(Wirings.two_orders, cable=cable))


def _longer_than_thought(net: Netlist, bare: Netlist, held: Sequence[HeldWay]) -> Iterator[Finding]:
    """Where it is the way along an arm that makes a lead missing."""
    for unit, wire in zip(net.units, net.wires, strict=True):
        without = bare.leads.get(wire.tag)
        if not wire.along_m or without is None or not _lacks_length(net.leads[wire.tag]) or _lacks_length(without):
            continue
        by = next((Name(one.by) for one in held if one.device == wire.device and one.site in unit.sites), None)
        text = message(
            Wirings.mount_takes, tag=Name(wire.tag), device=Name(wire.device), sites=_names(wire.at), along_m=wire.along_m,
            mount=by,
        )  # fmt: skip
        yield Finding("query", "missing", text)


def _lacks_length(at: Leads) -> bool:
    return any(one.kind == "extension" for one in at.wanted)


def _other_contacts(wire: Wire) -> bool:
    """Whether the adapter does more than change the size."""
    takes = plugs_of(wire.takes)
    return all(
        is_usb(wire.plug) or is_usb(one) or len(conductors_of(one)) != len(conductors_of(wire.plug)) for one in takes
    )


def _unmeasured(wire: Wire, case: Case) -> tuple[Name, ...]:
    """Leads that might do, had somebody measured them."""
    return tuple(
        Name(lead.name)
        for lead in case.kit.lead
        if lead.kind == "extension" and lead.length_m is None and lead.in_stock and wire.plug in plugs_of(lead.plug)
    )


def _socket_findings(net: Netlist, hubs: Sequence[Hub]) -> Iterator[Finding]:
    """Two plugs for one socket, sockets that cannot be used together, roles that meet, more than a hub takes."""
    for hub in hubs:
        known, name = [socket.name for socket in hub.socket], Name(hub.name)
        here = [wire for wire in net.wires if wire.hub == hub.name and not is_paired(wire)]
        for socket, count in Counter(wire.socket for wire in here).items():
            if count > 1:
                text = message(Wirings.several_plugs, count=count, socket=Name(socket), hub=name)
                yield Finding("fault", "socket", text)
        used = {bare_socket(wire.socket, known)[0] for wire in here}
        whole = {wire.socket for wire in here if bare_socket(wire.socket, known)[1] is None}
        for socket in sorted(used & whole):
            if any(bare_socket(wire.socket, known) == (socket, way) for wire in here for way in range(1, 9)):
                yield Finding("fault", "socket", message(Wirings.both_ways, socket=Name(socket), hub=name))
        for one in hub.socket:
            for other in one.excludes:
                if one.name in used and other in used:
                    text = message(Wirings.excluded, socket=Name(one.name), other=Name(other), hub=name)
                    yield Finding("fault", "excluded", text)
        paired = sum(wire.hub == hub.name and is_paired(wire) for wire in net.wires)
        if paired > hub.paired:
            text = message(Wirings.too_many_paired, count=paired, hub=name, most=hub.paired)
            yield Finding("fault", "pairing", text)
        if hub.most_devices is not None and len(here) > hub.most_devices:
            text = message(Wirings.too_many_devices, count=len(here), hub=name, most=hub.most_devices)
            yield Finding("fault", "socket", text)
    yield from _role_findings(net, hubs)


def _role_findings(net: Netlist, hubs: Sequence[Hub]) -> Iterator[Finding]:
    """A device in a socket that feeds something else, and the player's devices that the game cannot tell apart."""
    feeding: dict[str, list[Wire]] = defaultdict(list)
    for unit, wire in zip(net.units, net.wires, strict=True):
        if unit.helper:
            continue
        asked = [placement.role for placement in unit.placements if placement.role]
        buttons = [role for role in asked if unit.kind == "controller" and role not in STICK_ROLES]
        for role in dict.fromkeys(role for role in (wire.role, *buttons) if role):
            feeding[role].append(wire)
        if socket := socket_of_wire(wire, hubs):
            can = roles_of(socket, _hub_plug(wire))
            for role in dict.fromkeys(role for role in asked if can and role not in can and role not in buttons):
                yield Finding("fault", "role", _wrong_role(wire, hubs, can, role))
    for role, wires in feeding.items():
        if len(wires) < 2:
            continue
        places = tuple(_tagged(wire, hubs) for wire in wires)
        if role in STICK_ROLES:
            yield Finding("fault", "same_role", message(Wirings.same_stick, places=places, role=role))
        else:
            yield Finding("query", "same_role", message(Wirings.same_button, places=places, role=role))  # type: ignore[arg-type]


def _tagged(wire: Wire, hubs: Sequence[Hub]) -> Message:
    return message(Wirings.tagged, place=place_of(wire, hubs), tag=Name(wire.tag))


def _wrong_role(wire: Wire, hubs: Sequence[Hub], can: Sequence[str], role: str) -> Message:
    """Roles by their names where they are few."""
    few = len(can) < 4
    return message(
        Wirings.wrong_role,
        place=_tagged(wire, hubs),
        feeds=tuple(can) if few else (),  # type: ignore[arg-type]
        kind="named" if few else "others" if {*can} & {*STICK_ROLES} else "buttons",
        device=Name(wire.device),
        role=role,  # type: ignore[arg-type]
    )


def _hub_plug(wire: Wire) -> str:
    """The plug at the hub: the device's own, or that of the adapter."""
    takes = plugs_of(wire.takes)
    return wire.plug if wire.plug in takes else takes[0]


def _unknowns(net: Netlist, case: Case) -> Iterator[Finding]:
    """What nobody measured or looked up, all of a kind in one sentence."""
    cabled = [(unit, wire) for unit, wire in zip(net.units, net.wires, strict=True) if not is_paired(wire)]
    if ways := _names(site for _, wire in cabled if wire.needed_m is None for site in wire.at):
        yield Finding("note", "way", message(Wirings.way_unknown, sites=ways))
    if reckoned := _names(site for _, wire in cabled if wire.assumed for site in wire.at):
        yield Finding("query", "way", message(Wirings.way_assumed, sites=reckoned))
    if cables := _names(unit.device.name for unit, _ in cabled if unit.device.cable_m is None):
        yield Finding("note", "cable", message(Wirings.cable_unknown, devices=cables))
    unread = [
        (unit.device.name, goes_by_usb(wire.plug, wire.takes)) for unit, wire in cabled if unit.device.current_a is None
    ]
    if usb := _names(name for name, by_usb in unread if by_usb):
        yield Finding("note", "current", message(Wirings.current_assumed, devices=usb, current_a=UNIT_LOAD_A))
    sticks = {unit.device.name for unit, _ in cabled if unit.kind == "stick"}
    if quiet := _names(name for name, by_usb in unread if not by_usb and name in sticks):
        yield Finding("note", "current", message(Wirings.current_left_out, devices=quiet))
    sockets = [(wire, socket_of_wire(wire, case.hubs)) for _, wire in cabled]
    silent = [place_of(wire, case.hubs) for wire, socket in sockets if socket is not None and socket.role is None]
    if silent:
        yield Finding("query", "role", message(Wirings.feeds_unknown, places=tuple(dict.fromkeys(silent))))


def _names(names: Iterable[str]) -> tuple[Name, ...]:
    return tuple(map(Name, dict.fromkeys(names)))


# --- parts ------------------------------------------------------------------------------------------------------------


def _parts(units: Sequence[WiredDevice], net: Netlist, case: Case) -> tuple[PartLine, ...]:
    """What the set-up is made of, in the order in which it is laid out; last what the kit does not have."""
    kit = case.kit
    toppers = {topper.name: topper for topper in kit.topper}
    extensions = {extension.name: extension for extension in kit.extension}
    count: Counter[tuple[str, str]] = Counter()
    parts: dict[tuple[str, str], Part] = {}

    def add(part: Part | None) -> None:
        if part is not None:
            key = (type(part).__name__, part.name)
            parts.setdefault(key, part)
            count[key] += 1

    for unit in units:
        add(unit.device)
        fit = next((placement.fit for placement in unit.placements if placement.fit is not None), None)
        if fit is not None:
            add(toppers.get(fit.topper or ""))
            add(extensions.get(fit.extension or ""))
    for leads in net.leads.values():
        for lead in leads.leads:
            add(lead)
    for splitter in net.splitters_in_place.values():
        add(splitter)
    for hub in case.hubs:
        if any(wire.hub == hub.name for wire in net.wires):
            add(hub)
    order = ("Stick", "Topper", "Extension", "Switch", "Controller", "Lead", "Hub")
    notes, unknown = _wanted(net, kit.lead, count)
    for name, (more, _) in notes.items():
        part = next(one for one in kit.lead if one.name == name)
        parts.setdefault(("Lead", name), part)
        count["Lead", name] += more
    lines = [
        _part_line(parts[key], count[key], _note(notes.get(key[1], (0, ()))[1]) if key[0] == "Lead" else "")
        for key in sorted(parts, key=lambda key: order.index(key[0]))
    ]
    return (*lines, *unknown)


def _second_controllers(
    placements: Sequence[Placement], units: Sequence[WiredDevice], case: Case
) -> tuple[PartLine, ...]:
    """The controllers that helpers need and that no unit stands for: none of the kit pairs, or no hub is described."""
    helpers = {placement.helper or "helper" for placement in placements if placement.how == "helper"}
    served = {name for unit in units if unit.helper for name in unit.sites}
    lacking = sorted(helpers - served)
    if not lacking:
        return ()
    used = Counter(unit.device.name for unit in units)
    there = [one for one in case.kit.controller if one.pairs and one.in_stock >= used[one.name] + len(lacking)]
    if there:
        return (_part_line(there[0], len(lacking), message(Wirings.second_for, helpers=_names(lacking))),)
    name, note = message(Wirings.second_controller), message(Wirings.same_player, helpers=_names(lacking))
    return (
        PartLine(name=name, kind="controller", count=len(lacking), in_stock=0, buy=len(lacking), price=None, note=note),
    )


def _note(notes: Sequence[Message]) -> Text:
    return message(Wirings.notes, notes=tuple(notes)) if len(notes) > 1 else next(iter(notes), "")


def _part_line(part: Part, count: int, note: Text = "") -> PartLine:
    kind: PartKind = _LEADS[part.kind] if isinstance(part, Lead) else type(part).__name__.lower()  # type: ignore[assignment]
    buy = max(0, count - part.in_stock)
    each = getattr(part, "price", None)
    price = 0.0 if buy == 0 else None if each is None else round(each * buy, 2)
    return PartLine(name=part.name, kind=kind, count=count, in_stock=part.in_stock, buy=buy, price=price, note=note)


def _wanted(
    net: Netlist, leads: Sequence[Lead], count: Counter[tuple[str, str]]
) -> tuple[dict[str, tuple[int, tuple[Message, ...]]], list[PartLine]]:
    """What is missing: how many more of a lead that the kit knows and would do, or in words what to look for."""
    places: dict[MissingLead, list[Text]] = defaultdict(list)
    for tag, at in net.leads.items():
        for one in at.wanted:
            places[one].append(Name(tag))
    for (hub, socket), splitter in net.splitters.items():
        if isinstance(splitter, MissingLead):
            places[splitter].append(message(Wirings.socket, socket=Name(socket), hub=Name(hub)))
    known: dict[str, tuple[int, tuple[Message, ...]]] = {}
    unknown: dict[Message, tuple[PartKind, list[Text]]] = {}
    for wanted, there in places.items():
        spare = [lead for lead in leads if wanted.met_by(lead) and lead.in_stock <= count["Lead", lead.name]]
        spare.sort(key=lambda lead: (lead.price is None, lead.price or 0.0, lead.length_m or 0.0))
        if spare:
            more, notes = known.get(spare[0].name, (0, ()))
            told = message(Wirings.more_for, count=len(there), places=tuple(there))
            known[spare[0].name] = (more + len(there), (*notes, told))
        else:
            unknown.setdefault(wanted.label, (_LEADS[wanted.kind], []))[1].extend(there)
    return known, [
        PartLine(
            name=label,
            kind=kind,
            count=len(there),
            in_stock=0,
            buy=len(there),
            price=None,
            note=message(Wirings.not_in_kit, places=tuple(there)),
        )
        for label, (kind, there) in unknown.items()
    ]


# --- plugging in, and trying ------------------------------------------------------------------------------------------


def _steps(wires: Sequence[Wire], hubs: Sequence[Hub]) -> tuple[Message, ...]:
    """In the order in which it is done."""
    if not wires:
        return ()
    cabled = [wire for wire in wires if not is_paired(wire)]
    used = [hub.name for hub in hubs if any(wire.hub == hub.name for wire in wires)]
    steps = [message(Wirings.hands_off), *(_plug_step(wire, used) for wire in cabled)]
    steps += [
        message(Wirings.leave_empty, place=_socket(socket, hub, used), why=why)
        for (hub, socket), why in empty_sockets(wires, hubs).items()
        if hub in used
    ]
    assignable = any(socket.role == "assignable" for hub in hubs if hub.name in used for socket in hub.socket)
    fed = tuple(role for role in STICK_ROLES if any(wire.role == role for wire in wires))
    if assignable and fed:
        steps.append(message(Wirings.no_other, roles=fed))
    steps.append(message(Wirings.hub_last, hubs=_names(used)))
    steps += [
        message(Wirings.pair, tag=Name(wire.tag), device=Name(wire.device), sites=_names(wire.at), hub=Name(wire.hub))
        for wire in wires
        if is_paired(wire)
    ]
    steps.append(message(Wirings.try_each, actions=_names(action for wire in wires for action in wire.actions)))
    if sticks := [wire for wire in wires if wire.role in STICK_ROLES]:
        steps.append(message(Wirings.try_directions, tags=_names(wire.tag for wire in sticks)))
    if usb := _names(wire.tag for wire in cabled if goes_by_usb(wire.plug, wire.takes)):
        steps.append(message(Wirings.plug_again, tags=usb))
    return tuple(steps)


def _socket(socket: str, hub: str, hubs: Sequence[str]) -> Message:
    return message(Wirings.socket, socket=Name(socket), hub=Name(hub) if len(hubs) > 1 else None)


def _plug_step(wire: Wire, hubs: Sequence[str]) -> Message:
    return message(
        Wirings.plug_in, tag=Name(wire.tag), device=Name(wire.device), sites=_names(wire.at),
        through=tuple(map(Name, wire.through)), place=_socket(wire.socket, wire.hub, hubs), missing=wire.missing,
    )  # fmt: skip
