"""Power: what is drawn at each socket, through each splitter and from each hub, against what they give.

The unit load of USB 2.0 is 100 mA. A device is low-power, drawing one at most, or high-power, drawing up to five; a
splitter without its own supply is a bus-powered hub: one unit load for itself, one for each of at most four ways, five
in all [usb-2].
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from stickwright.allocation.cables import ends_of
from stickwright.codes.message import Message, Name, message
from stickwright.codes.wirings import Wirings
from stickwright.errors import BadInput, Problem
from stickwright.model.hub import Hub, Socket
from stickwright.model.kit import Lead
from stickwright.model.plugs import is_usb, plugs_of
from stickwright.model.recorded import Finding
from stickwright.model.sharing import PowerLine, Wire

__all__ = [
    "BUS_POWERED_WAYS", "HIGH_POWER_LOADS", "UNIT_LOAD_A", "bare_socket", "goes_by_usb", "power_faults", "power_lines",
    "unit_loads",
]  # fmt: skip

UNIT_LOAD_A = 0.100
HIGH_POWER_LOADS = 5
BUS_POWERED_WAYS = 4
_ROUNDING_A = 1e-9


def unit_loads(current_a: float) -> int:
    """USB 2.0 unit loads that a connected device counts for.

    Parameters
    ----------
    current_a : float
        What it draws at most, 0 or more.

    Returns
    -------
    int
        At least 1: every device starts as a low-power one, and one that feeds itself may still draw one unit load
        [usb-2]. More than `HIGH_POWER_LOADS` is outside the standard.

    Raises
    ------
    BadInput
        A negative current, or not a number.

    Examples
    --------
    >>> unit_loads(0.0), unit_loads(0.07), unit_loads(0.1), unit_loads(0.101)
    (1, 1, 1, 2)
    """
    if not current_a >= 0 or math.isinf(current_a):
        found = message(Wirings.current, current_a=current_a if math.isfinite(current_a) else None)
        expected, remedy = message(Wirings.some_current), message(Wirings.read_current)
        raise BadInput(Problem("current_a", found, expected, remedy))
    return max(1, math.ceil(round(current_a / UNIT_LOAD_A, 6)))


def bare_socket(socket: str, known: Sequence[str]) -> tuple[str, int | None]:
    """The socket of the hub, and the way of the splitter in it: "u1/2" is way 2 of a splitter in u1.

    Parameters
    ----------
    socket : str
        As a placement names it.
    known : sequence of str
        Sockets of the hub; one that is itself called "u1/2" is meant as such.

    Examples
    --------
    >>> bare_socket("u1/2", ["u1", "u2"]), bare_socket("u1", ["u1"])
    (('u1', 2), ('u1', None))
    """
    stem, slash, way = socket.rpartition("/")
    if socket in known or not slash or not way.isdecimal() or int(way) < 1:
        return socket, None
    return stem, int(way)


def goes_by_usb(plug: str, takes: str) -> bool:
    """Whether a device counts as a USB device for the hub: by its own plug, or by an adapter into a USB socket.

    Parameters
    ----------
    plug : str
        The one used.
    takes : str
        What the socket of the hub takes.
    """
    sockets = plugs_of(takes)
    return is_usb(plug) if not sockets or plug in sockets else any(is_usb(one) for one in sockets)


def power_lines(
    wires: Sequence[Wire], hubs: Sequence[Hub], splitters: Mapping[tuple[str, str], Lead]
) -> tuple[PowerLine, ...]:
    """Current at each socket in use, at each way and splitter, and in each hub as a whole.

    Parameters
    ----------
    wires : sequence of Wire
        Their `current_a` is what is added up.
    hubs : sequence of Hub
        In this order, and their sockets as they are listed.
    splitters : mapping
        By hub and socket.

    Returns
    -------
    tuple of PowerLine
        Round sockets at which nothing is drawn are left out; a hub without limit and without load as well.
    """
    out: list[PowerLine] = []
    several = len(hubs) > 1
    for hub in hubs:
        known = [socket.name for socket in hub.socket]
        total_a, loads = 0.0, 0
        for socket in hub.socket:
            here = [
                wire for wire in wires if wire.hub == hub.name and bare_socket(wire.socket, known)[0] == socket.name
            ]
            if not here:
                continue
            splitter = splitters.get((hub.name, socket.name))
            lines, drawn_a, units = _at_socket(socket, Name(hub.name) if several else None, here, splitter)
            out += lines
            total_a, loads = total_a + drawn_a, loads + units
        if total_a > 0 or (loads and hub.current_a is not None):
            out.append(_line(message(Wirings.at_hub, hub=Name(hub.name)), total_a, hub.current_a, loads))
    return tuple(out)


def power_faults(
    lines: Sequence[PowerLine], wires: Sequence[Wire], splitters: Mapping[tuple[str, str], Lead]
) -> tuple[Finding, ...]:
    """A fault for each limit that is passed.

    Parameters
    ----------
    lines : sequence of PowerLine
        As `power_lines` gives them.
    wires : sequence of Wire
    splitters : mapping
        By hub and socket.
    """
    texts = [
        message(Wirings.over, power=line.words)
        for line in lines
        if line.limit_a is not None and line.current_a > line.limit_a + _ROUNDING_A
    ]
    most_a = HIGH_POWER_LOADS * UNIT_LOAD_A
    texts += [
        message(
            Wirings.draws_too_much,
            tag=Name(wire.tag),
            device=Name(wire.device),
            current_a=wire.current_a,
            most_a=most_a,
        )
        for wire in wires
        if goes_by_usb(wire.plug, wire.takes) and unit_loads(wire.current_a) > HIGH_POWER_LOADS
    ]
    texts += [
        message(Wirings.splitter_ways, splitter=Name(lead.name), ways=len(ends_of(lead)), most=BUS_POWERED_WAYS)
        for lead in splitters.values()
        if is_usb(plugs_of(lead.plug)[0]) and lead.port_current_a is None and len(ends_of(lead)) > BUS_POWERED_WAYS
    ]
    return tuple(Finding("fault", "power", text) for text in texts)


def _at_socket(
    socket: Socket, hub: Name | None, here: Sequence[Wire], splitter: Lead | None
) -> tuple[list[PowerLine], float, int]:
    """Lines for a socket with what hangs on it; what it gives in all, and unit loads."""
    name = Name(socket.name)
    where = message(Wirings.at_socket, socket=name, hub=hub, way=None)
    devices_a = sum(wire.current_a for wire in here)
    if splitter is None or not is_usb(plugs_of(splitter.plug)[0]):
        drawn_a = devices_a + ((splitter.current_a or 0.0) if splitter else 0.0)
        loads = sum(unit_loads(wire.current_a) for wire in here if goes_by_usb(wire.plug, wire.takes))
        if not drawn_a and not loads:
            return [], 0.0, 0
        return [_line(where, drawn_a, socket.current_a, loads)], drawn_a, loads
    own_a = UNIT_LOAD_A if splitter.current_a is None else splitter.current_a
    powered = splitter.port_current_a is not None
    each_a = splitter.port_current_a if splitter.port_current_a is not None else UNIT_LOAD_A
    lines = list(_way_lines(name, hub, here, each_a))
    if powered:
        return [*lines, _line(where, own_a, socket.current_a, unit_loads(own_a))], own_a, unit_loads(own_a)
    drawn_a = own_a + devices_a
    loads = unit_loads(own_a) + sum(unit_loads(wire.current_a) for wire in here)
    inside = message(Wirings.at_splitter, splitter=Name(splitter.name), socket=name, hub=hub, own_a=own_a)
    lines.append(_line(inside, drawn_a, HIGH_POWER_LOADS * UNIT_LOAD_A, loads))
    return [*lines, _line(where, drawn_a, socket.current_a, loads)], drawn_a, loads


def _way_lines(socket: Name, hub: Name | None, here: Sequence[Wire], each_a: float) -> Iterator[PowerLine]:
    for wire in sorted(here, key=lambda wire: wire.socket):
        way = Name(wire.socket.rpartition("/")[2])
        where = message(Wirings.at_socket, socket=socket, hub=hub, way=way)
        yield _line(where, wire.current_a, each_a, unit_loads(wire.current_a))


def _line(where: Message, current_a: float, limit_a: float | None, loads: int) -> PowerLine:
    return PowerLine(where, round(current_a, 9), limit_a, loads)
