"""Cable by cable: the netlist with what is to be looked at, the parts list, and the order of plugging in and trying.

What needs the practitioner's eye before anything is plugged in is a finding: a plug that would bridge contacts, two
sockets that feed the same stick, too much current, a way or a cable that nobody measured.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence

from stickwright.allocation.cables import Leads, Wanted
from stickwright.allocation.netlist import (
    Netlist,
    Unit,
    empty_sockets,
    is_paired,
    netlist_of,
    place_words,
    socket_of_wire,
    units_of,
)
from stickwright.allocation.power import bare_socket, goes_by_usb, power_faults, power_lines
from stickwright.model.case import Case
from stickwright.model.hub import STICK_ROLES, Hub, roles_of
from stickwright.model.kit import Controller, Extension, Lead, Stick, Switch, Topper
from stickwright.model.plugs import conductors_of, is_usb, plugs_of
from stickwright.model.recorded import Finding
from stickwright.model.sharing import HeldWay, PartLine, Placement, Wire, Wiring
from stickwright.units import spoken

__all__ = ["wiring_of"]

_LEADS = {"extension": "extension lead", "adapter": "adapter", "splitter": "splitter"}
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


def _unconnected(units: Sequence[Unit], case: Case) -> Iterator[Finding]:
    """Devices that nothing says how to plug in."""
    loose = _names(f"{unit.device.name} ({unit.at})" for unit in units if unit.hub is None)
    if loose and not case.hubs:
        yield Finding("note", "hub", "No hub is described: sockets, leads and currents are not worked out.")
    elif loose:
        yield Finding("query", "hub", f"No socket was chosen for {loose}.")


# --- what to look at --------------------------------------------------------------------------------------------------


def _plug_findings(net: Netlist, case: Case) -> Iterator[Finding]:
    """What does not fit, what is missing, and contacts that only the papers tell."""
    for unit, wire in zip(net.units, net.wires, strict=True):
        if is_paired(wire):
            continue
        name, at = f"{wire.tag} ({wire.device} to {place_words(wire, case.hubs)})", net.leads[wire.tag]
        if not wire.plug:
            yield Finding("query", "plug", f"{name}: its plug is not said. Look at it before it goes in.")
        elif at.reason and not at.leads and at.wanted:
            yield Finding("fault", "plug", f"{name}: {at.reason}. Do not plug it in without {at.wanted[0].words}.")
        elif at.reason and _other_contacts(wire):
            text = f"{name}: {at.reason}. See in the adapter's papers that it joins the right contacts."
            yield Finding("query", "plug", text)
        lacking = [words for words in wire.missing.split("; ") if words and not (at.reason and "adapter" in words)]
        if lacking:
            yield Finding("query", "missing", f"{name}: missing {' and '.join(lacking)}.{_unmeasured(wire, case)}")
        if unit.kind == "stick" and wire.plug and not is_usb(wire.plug) and len(conductors_of(wire.plug)) == 4:
            text = (
                f"{name}: four-conductor plugs come in two orders, ground on ring 2 or on the sleeve. Compare the papers "
                "of hub and stick before plugging in."
            )
            yield Finding("query", "conductors", text)


def _longer_than_thought(net: Netlist, bare: Netlist, held: Sequence[HeldWay]) -> Iterator[Finding]:
    """Where it is the way along an arm that makes a lead missing."""
    for unit, wire in zip(net.units, net.wires, strict=True):
        without = bare.leads.get(wire.tag)
        if not wire.along_m or without is None or not _lacks_length(net.leads[wire.tag]) or _lacks_length(without):
            continue
        by = next((one.by for one in held if one.device == wire.device and one.site in unit.sites), "what holds it")
        text = (
            f"{wire.tag} ({wire.device} at {wire.at}): the {spoken(wire.along_m, 'm')} along {by} make the lead missing; for the "
            "rest of the way the kit has enough."
        )
        yield Finding("query", "missing", text)


def _lacks_length(at: Leads) -> bool:
    return any(one.kind == "extension" for one in at.wanted)


def _other_contacts(wire: Wire) -> bool:
    """Whether the adapter does more than change the size."""
    takes = plugs_of(wire.takes)
    return all(
        is_usb(wire.plug) or is_usb(one) or len(conductors_of(one)) != len(conductors_of(wire.plug)) for one in takes
    )


def _unmeasured(wire: Wire, case: Case) -> str:
    """Leads that might do, had somebody measured them."""
    found = [
        lead.name
        for lead in case.kit.lead
        if lead.kind == "extension" and lead.length_m is None and lead.in_stock and wire.plug in plugs_of(lead.plug)
    ]
    return f" In stock without a length: {', '.join(found)}; measure it." if found else ""


def _socket_findings(net: Netlist, hubs: Sequence[Hub]) -> Iterator[Finding]:
    """Two plugs for one socket, sockets that shut each other out, roles that meet, more than a hub takes."""
    for hub in hubs:
        known = [socket.name for socket in hub.socket]
        here = [wire for wire in net.wires if wire.hub == hub.name and not is_paired(wire)]
        for socket, count in Counter(wire.socket for wire in here).items():
            if count > 1:
                yield Finding("fault", "socket", f"{count} plugs for {socket} of {hub.name}: it takes one.")
        used = {bare_socket(wire.socket, known)[0] for wire in here}
        whole = {wire.socket for wire in here if bare_socket(wire.socket, known)[1] is None}
        for name in sorted(used & whole):
            if any(bare_socket(wire.socket, known) == (name, way) for wire in here for way in range(1, 9)):
                yield Finding("fault", "socket", f"{name} of {hub.name} is used both directly and through a splitter.")
        for one in hub.socket:
            for other in one.excludes:
                if one.name in used and other in used:
                    text = f"{other} of {hub.name} must stay empty while {one.name} is used; both are used."
                    yield Finding("fault", "excluded", text)
        paired = sum(wire.hub == hub.name and is_paired(wire) for wire in net.wires)
        if paired > hub.paired:
            text = f"{paired} controllers are paired with {hub.name}, which takes {hub.paired}."
            yield Finding("fault", "pairing", text)
        if hub.most_devices is not None and len(here) > hub.most_devices:
            text = f"{len(here)} devices are plugged into {hub.name}, which takes {hub.most_devices}."
            yield Finding("fault", "socket", text)
    yield from _role_findings(net, hubs)


def _role_findings(net: Netlist, hubs: Sequence[Hub]) -> Iterator[Finding]:
    """A device in a socket that feeds something else, and the player's devices that the game cannot tell apart."""
    feeding: dict[str, list[Wire]] = defaultdict(list)
    for unit, wire in zip(net.units, net.wires, strict=True):
        if unit.helper:
            continue
        asked = [one.role for one in unit.placements if one.role]
        buttons = [role for role in asked if unit.kind == "controller" and role not in STICK_ROLES]
        for role in dict.fromkeys(role for role in (wire.role, *buttons) if role):
            feeding[role].append(wire)
        if socket := socket_of_wire(wire, hubs):
            can = roles_of(socket, _hub_plug(wire))
            for role in dict.fromkeys(role for role in asked if can and role not in can and role not in buttons):
                text = f"{place_words(wire, hubs)} ({wire.tag}) feeds {_kinds(can)}, and {wire.device} is to be {role}."
                yield Finding("fault", "role", text)
    for role, wires in feeding.items():
        if len(wires) < 2:
            continue
        both = " and ".join(f"{place_words(wire, hubs)} ({wire.tag})" for wire in wires)
        if role in STICK_ROLES:
            text = f"{both} feed the same {role}: one silently wins. Use one, or give one of them another role."
            yield Finding("fault", "same_role", text)
        else:
            yield Finding("query", "same_role", f"{both} feed the same {role}: the game cannot tell them apart.")


def _kinds(roles: Sequence[str]) -> str:
    """Roles in few words."""
    return _names(roles) if len(roles) < 4 else "buttons only" if not {*roles} & {*STICK_ROLES} else "other controls"


def _hub_plug(wire: Wire) -> str:
    """The plug at the hub: the device's own, or that of the adapter."""
    takes = plugs_of(wire.takes)
    return wire.plug if wire.plug in takes else takes[0]


def _unknowns(net: Netlist, case: Case) -> Iterator[Finding]:
    """What nobody measured or looked up, all of a kind in one sentence."""
    cabled = [(unit, wire) for unit, wire in zip(net.units, net.wires, strict=True) if not is_paired(wire)]
    if ways := _names(wire.at for _, wire in cabled if wire.needed_m is None):
        text = (
            f"The way of the cable to the hub was not taken for {ways}: lay a tape along the points where it will be "
            "tied, from the foot of the base or the clamp of the arm, and write it as to_hub_mm for the site. No extension "
            "lead is chosen until then."
        )
        yield Finding("note", "way", text)
    if reckoned := _names(wire.at for _, wire in cabled if wire.assumed):
        text = (
            f"The way of the cable for {reckoned} is reckoned from where the hub lies: right, forward and up added up. Lay a "
            "tape along the points where it will be tied before a lead is bought (to_hub_mm)."
        )
        yield Finding("query", "way", text)
    if cables := _names(unit.device.name for unit, _ in cabled if unit.device.cable_m is None):
        text = f"The cable was not measured of {cables}: write its length, plug included, as cable_mm in the kit."
        yield Finding("note", "cable", text)
    unread = [
        (unit.device.name, goes_by_usb(wire.plug, wire.takes)) for unit, wire in cabled if unit.device.current_a is None
    ]
    if usb := _names(name for name, by_usb in unread if by_usb):
        text = f"The current is not known of {usb}: 100 mA is assumed, the most a low-power USB device draws."
        yield Finding("note", "current", text)
    sticks = {unit.device.name for unit, _ in cabled if unit.kind == "stick"}
    if quiet := _names(name for name, by_usb in unread if not by_usb and name in sticks):
        yield Finding("note", "current", f"The current is not known of {quiet}, and not counted: see its papers.")
    sockets = [(wire, socket_of_wire(wire, case.hubs)) for _, wire in cabled]
    silent = [place_words(wire, case.hubs) for wire, socket in sockets if socket is not None and socket.role is None]
    if silent:
        yield Finding("query", "role", f"It is not said what {_names(silent)} feeds: press, and see what arrives.")


def _names(names: Iterable[str]) -> str:
    *most, last = [*dict.fromkeys(names)] or [""]
    return f"{', '.join(most)} and {last}" if most else last


# --- parts ------------------------------------------------------------------------------------------------------------


def _parts(units: Sequence[Unit], net: Netlist, case: Case) -> tuple[PartLine, ...]:
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
        fit = next((one.fit for one in unit.placements if one.fit is not None), None)
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
        _part_line(parts[key], count[key], notes.get(key[1], (0, ""))[1] if key[0] == "Lead" else "")
        for key in sorted(parts, key=lambda key: order.index(key[0]))
    ]
    return (*lines, *unknown)


def _second_controllers(placements: Sequence[Placement], units: Sequence[Unit], case: Case) -> tuple[PartLine, ...]:
    """The controllers that helpers need and that no unit stands for: none of the kit pairs, or no hub is described."""
    helpers = {one.helper or "helper" for one in placements if one.how == "helper"}
    served = {name for unit in units if unit.helper for name in unit.sites}
    lacking = sorted(helpers - served)
    if not lacking:
        return ()
    used = Counter(unit.device.name for unit in units)
    there = [one for one in case.kit.controller if one.pairs and one.in_stock >= used[one.name] + len(lacking)]
    if there:
        return (_part_line(there[0], len(lacking), f"second controller for {_names(lacking)}"),)
    note = f"for {_names(lacking)}; one that acts as the same player"
    return (PartLine("second controller", "controller", len(lacking), 0, len(lacking), None, note),)


def _part_line(part: Part, count: int, note: str = "") -> PartLine:
    kind = _LEADS[part.kind] if isinstance(part, Lead) else type(part).__name__.lower()
    buy = max(0, count - part.in_stock)
    each = getattr(part, "price", None)
    price = 0.0 if buy == 0 else None if each is None else round(each * buy, 2)
    return PartLine(part.name, kind, count, part.in_stock, buy, price, note)


def _wanted(
    net: Netlist, leads: Sequence[Lead], count: Counter[tuple[str, str]]
) -> tuple[dict[str, tuple[int, str]], list[PartLine]]:
    """What is missing: how many more of a lead that the kit knows and would do, or in words what to look for."""
    places: dict[Wanted, list[str]] = defaultdict(list)
    for tag, at in net.leads.items():
        for one in at.wanted:
            places[one].append(tag)
    for (hub, socket), splitter in net.splitters.items():
        if isinstance(splitter, Wanted):
            places[splitter].append(f"{socket} of {hub}")
    known: dict[str, tuple[int, str]] = {}
    unknown: dict[str, tuple[str, list[str]]] = {}
    for wanted, tags in places.items():
        spare = [lead for lead in leads if wanted.met_by(lead) and lead.in_stock <= count["Lead", lead.name]]
        spare.sort(key=lambda lead: (lead.price is None, lead.price or 0.0, lead.length_m or 0.0))
        if spare:
            more, note = known.get(spare[0].name, (0, ""))
            said = f"{len(tags)} more for {_names(tags)}"
            known[spare[0].name] = (more + len(tags), f"{note}; {said}" if note else said)
        else:
            unknown.setdefault(wanted.words, (_LEADS[wanted.kind], []))[1].extend(tags)
    return known, [
        PartLine(
            words.removeprefix("an ").removeprefix("a "), kind, len(tags), 0, len(tags), None,
            f"for {_names(tags)}; not in the kit",
        )
        for words, (kind, tags) in unknown.items()
    ]  # fmt: skip


# --- plugging in, and trying ------------------------------------------------------------------------------------------


def _steps(wires: Sequence[Wire], hubs: Sequence[Hub]) -> tuple[str, ...]:
    """In the order in which it is done."""
    if not wires:
        return ()
    cabled = [wire for wire in wires if not is_paired(wire)]
    used = [hub.name for hub in hubs if any(wire.hub == hub.name for wire in wires)]
    steps = [
        "Nothing touches a stick until all is plugged in and on: one that is leaned on at start-up sets that position as centre."
    ]
    steps += [_plug_step(wire, used) for wire in cabled]
    steps += [
        f"Leave {socket}{f' of {hub}' if len(used) > 1 else ''} empty: {why}."
        for (hub, socket), why in empty_sockets(wires, hubs).items()
        if hub in used
    ]
    assignable = any(socket.role == "assignable" for hub in hubs if hub.name in used for socket in hub.socket)
    fed = [role for role in STICK_ROLES if any(wire.role == role for wire in wires)]
    if assignable and fed:
        steps.append(f"Set no other socket to {' or '.join(fed)}: only one of them will work, without warning.")
    them = "it" if len(used) == 1 else "them"
    steps.append(f"Plug {_names(used)} in last, unless the papers say otherwise; then switch {them} on.")
    steps += [
        f"{wire.tag}: pair {wire.device} ({wire.at}) with {wire.hub}; no cable." for wire in wires if is_paired(wire)
    ]
    actions = _names(action for wire in wires for action in wire.actions)
    steps.append(f"One-minute test: do every action once by its own name ({actions}); the screen says what arrived.")
    if sticks := [wire for wire in wires if wire.role in STICK_ROLES]:
        tags = _names(wire.tag for wire in sticks)
        steps.append(
            f'{tags}: the player says "forward" and pushes forward, then back, left and right; the game must go the way '
            "the player said."
        )
    usb = [wire.tag for wire in cabled if goes_by_usb(wire.plug, wire.takes)]
    if len(usb) == 1:
        steps.append(f"Unplug {usb[0]} and plug it in again: does it still do the same?")
    elif usb:
        steps.append(f"Unplug {_names(usb)} one at a time and plug each in again: does each still do the same?")
    return tuple(steps)


def _plug_step(wire: Wire, hubs: Sequence[str]) -> str:
    through = f" through {_names(wire.through)}" if wire.through else ""
    place = f"{wire.socket} of {wire.hub}" if len(hubs) > 1 else wire.socket
    lacking = f". Missing: {wire.missing}" if wire.missing else ""
    return f"{wire.tag}: {wire.device} ({wire.at}){through} into {place}{lacking}."
