"""Between two games of one player: devices stay in their sockets where they can, and what must be plugged in elsewhere is told."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from stickwright.allocation.sockets import socket_groups
from stickwright.allocation.wiring import wiring_of
from stickwright.model.case import Case
from stickwright.model.layouts import Refit, Replug
from stickwright.model.sharing import Placement, Sharing
from stickwright.model.wishes import Wishes

__all__ = ["refits_of", "replugs_of", "sockets_kept"]

Plug = tuple[str, str]
"""Hub and socket."""
_Unit = tuple[str, str]
"""Site (none for a controller, which several may play) and device."""


def _plugged(placements: Iterable[Placement]) -> dict[Plug, _Unit]:
    return {
        (one.hub or "", one.socket or ""): ("" if one.kind == "controller" else one.site or "", one.device or "")
        for one in placements
        if one.connection == "socket"
    }


def sockets_kept(
    sharings: Sequence[Sharing | None], cases: Sequence[Case], wishes: Wishes
) -> tuple[Sharing | None, ...]:
    """Each further game with its devices in the sockets that they have for the games before, as far as sockets that are alike allow.

    Parameters
    ----------
    sharings : sequence of Sharing or None
    cases : sequence of Case
        One for each game.
    wishes : Wishes
    """
    groups = [
        (group.hub, group.sockets) for group in socket_groups(cases[0].hubs, wishes.without) if not group.excludes
    ]
    home: dict[Plug, _Unit] = {}
    out: list[Sharing | None] = []
    for sharing, case in zip(sharings, cases, strict=True):
        if sharing is None:
            out.append(sharing)
            continue
        moved = _moves(_plugged(sharing.placements), home, groups)
        if any(old != new for old, new in moved.items()):
            placements = tuple(_moved_to(one, moved) for one in sharing.placements)
            sharing = replace(sharing, placements=placements, wiring=wiring_of(placements, case))
        home = _plugged(sharing.placements) | home
        out.append(sharing)
    return tuple(out)


def _moved_to(one: Placement, moved: Mapping[Plug, Plug]) -> Placement:
    if one.connection != "socket":
        return one
    hub, socket = moved.get((one.hub or "", one.socket or ""), (one.hub, one.socket))
    return replace(one, hub=hub, socket=socket)


def _moves(
    mine: Mapping[Plug, _Unit], home: Mapping[Plug, _Unit], groups: Sequence[tuple[str, Sequence[str]]]
) -> dict[Plug, Plug]:
    """For each socket in use the one to use instead, among those that are alike."""
    out: dict[Plug, Plug] = {}
    split = {
        (hub, socket.rsplit("/", 1)[0]) for hub, socket in mine if "/" in socket
    }  # ways of a splitter stay where they are
    for hub, sockets in groups:
        there = [(hub, socket) for socket in sockets if (hub, socket) not in split]
        waiting = [plug for plug in mine if plug in there]
        free = list(there)
        for plug in list(waiting):
            kept = next((one for one in free if home.get(one) == mine[plug]), None)
            if kept is not None:
                out[plug] = kept
                free.remove(kept)
                waiting.remove(plug)
        for plug in waiting:  # a socket that no game before uses, so that nothing need be unplugged
            out[plug] = min(free, key=lambda one: (one in home, one != plug, there.index(one)))
            free.remove(out[plug])
    return out


def replugs_of(first: Sharing, other: Sharing) -> tuple[Replug, ...]:
    """What has to be plugged in elsewhere than for the first game. What only one of the two uses stays plugged in where its
    socket is not needed.

    Parameters
    ----------
    first, other : Sharing
    """
    before, after = _plugged(first.placements), _plugged(other.placements)
    players = {
        (one.hub or "", one.socket or ""): one.site or "" for one in other.placements if one.connection == "socket"
    }
    out = []
    for plug, unit in after.items():
        if before.get(plug) == unit:
            continue
        was = next(
            (socket for (_, socket), one in before.items() if one == unit and (plug[0], socket) not in after), None
        )
        there = before.get(plug)
        if was is not None or there is not None:
            out.append(Replug(unit[1], unit[0] or players[plug], *plug, was, there[1] if there is not None else ""))
    return tuple(out)


def refits_of(first: Sharing, other: Sharing) -> tuple[Refit, ...]:
    """Sticks that are set up otherwise than for the first game.

    Parameters
    ----------
    first, other : Sharing
    """

    def set_up(sharing: Sharing) -> dict[str, tuple[str, str]]:
        sticks = (one for one in sharing.placements if one.kind == "stick" and one.site)
        return {one.site or "": (one.device or "", one.label) for one in sticks}

    before, after = set_up(first), set_up(other)
    return tuple(
        Refit(site, before[site][1], label, before[site][0] != device)
        for site, (device, label) in after.items()
        if site in before and before[site] != (device, label)
    )
