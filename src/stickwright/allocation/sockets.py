"""Hubs as the solver sees them: groups of sockets that are alike, adapters, splitters, limits."""

from __future__ import annotations

from collections.abc import Sequence

from stickwright.allocation.problem import Connection, SocketGroup, Splitter
from stickwright.model.hub import Hub, Socket, roles_of
from stickwright.model.kit import Lead
from stickwright.model.plugs import is_usb, plugs_of

__all__ = ["adapters_of", "hub_limits", "socket_groups", "splitters_of"]

USB_UNIT_LOAD_A = 0.1
"""USB 2.0 unit load [usb-2]: what a bus-powered splitter takes for itself, and gives on each way."""


def socket_groups(hubs: Sequence[Hub], without: Sequence[str] = ()) -> tuple[SocketGroup, ...]:
    """Sockets in groups that are alike; one that shuts out another stands alone.

    Parameters
    ----------
    hubs : sequence of Hub
    without : sequence of str
        Sockets (or hubs) not to be used.

    Returns
    -------
    tuple of SocketGroup
        Sockets that feed nothing are left out.
    """
    groups: list[tuple[tuple[object, ...], list[Socket], Hub]] = []
    for hub in hubs:
        if hub.name in without or hub.in_stock == 0:
            continue
        shut = {name for socket in hub.socket for name in (socket.excludes and (socket.name, *socket.excludes))}
        for socket in hub.socket:
            plugs = plugs_of(socket.takes)
            roles = roles_of(socket, plugs[0]) if plugs else ()
            if not roles or socket.name in without:
                continue
            alone = socket.name if socket.name in shut else None
            key = (hub.name, plugs[0], roles, socket.current_a, alone)
            same = next((group for group in groups if group[0] == key), None)
            if same is None:
                groups.append((key, [socket], hub))
            else:
                same[1].append(socket)
    place = {(hub.name, socket.name): number for number, (_, sockets, hub) in enumerate(groups) for socket in sockets}
    out = []
    for _, sockets, hub in groups:
        first = sockets[0]
        plug = plugs_of(first.takes)[0]
        excluded = tuple(place[hub.name, name] for name in first.excludes if (hub.name, name) in place)
        names = tuple(socket.name for socket in sockets)
        out.append(SocketGroup(names, hub.name, plug, tuple(roles_of(first, plug)), first.current_a, excluded))
    return tuple(out)


def hub_limits(hubs: Sequence[Hub]) -> tuple[tuple[str, float | None, int | None], ...]:
    """Current and number of devices that each hub allows in all."""
    return tuple((hub.name, hub.current_a, hub.most_devices) for hub in hubs)


def adapters_of(leads: Sequence[Lead], without: Sequence[str] = ()) -> tuple[Connection, ...]:
    """Adapters of the kit: from the plug of a device to the plug of a socket.

    Parameters
    ----------
    leads : sequence of Lead
    without : sequence of str
        Leads not to be used.
    """
    out = []
    for lead in leads:
        if lead.kind == "adapter" and lead.name not in without:
            for takes in dict.fromkeys(plug for text in lead.sockets for plug in plugs_of(text)):
                out.append(Connection(lead.name, takes, plugs_of(lead.plug)[0], lead.current_a or 0.0))
    return tuple(out)


def splitters_of(leads: Sequence[Lead], without: Sequence[str] = ()) -> tuple[Splitter, ...]:
    """USB splitters of the kit; a split round plug gives one input twice, so it adds no socket.

    Parameters
    ----------
    leads : sequence of Lead
    without : sequence of str
        Leads not to be used.

    Notes
    -----
    A splitter without a supply takes one unit load for itself and gives one on each of at most four ways [usb-2].
    """
    out = []
    for lead in leads:
        plug = plugs_of(lead.plug)[0]
        if lead.kind != "splitter" or not is_usb(plug) or lead.name in without:
            continue
        powered = lead.port_current_a is not None
        ways = len(lead.sockets) if powered else min(4, len(lead.sockets))
        own = lead.current_a if lead.current_a is not None else USB_UNIT_LOAD_A
        each = lead.port_current_a if lead.port_current_a is not None else USB_UNIT_LOAD_A
        out.append(Splitter(lead.name, ways, plug, own, each, powered))
    return tuple(out)
