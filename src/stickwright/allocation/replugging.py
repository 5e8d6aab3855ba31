"""Between two games of one player: devices stay in their sockets where they can, and what must be plugged in elsewhere is told."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from stickwright.allocation.sockets import socket_groups
from stickwright.allocation.wiring import wiring_of
from stickwright.codes.message import Message, Param, Text
from stickwright.model.case import Case
from stickwright.model.layouts import Refit, Replug
from stickwright.model.sharing import HeldWay, Placement, Sharing
from stickwright.model.wishes import Wishes

__all__ = ["Apart", "PluggedForAll", "plugged_for_all", "refits_of", "replugs_of", "sockets_kept"]

Plug = tuple[str, str]
"""Hub and socket."""
_Unit = tuple[str, str]
"""Site (none for a controller, which several may play) and device."""


def _plugged(placements: Iterable[Placement]) -> dict[Plug, _Unit]:
    return {
        (placement.hub or "", placement.socket or ""): (
            "" if placement.kind == "controller" else placement.site or "",
            placement.device or "",
        )
        for placement in placements
        if placement.connection == "socket"
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
            placements = tuple(_moved_to(placement, moved) for placement in sharing.placements)
            sharing = replace(sharing, placements=placements, wiring=wiring_of(placements, case))
        home = _plugged(sharing.placements) | home
        out.append(sharing)
    return tuple(out)


@dataclass(frozen=True)
class Apart:
    """A device of a further game that must not be plugged in beside those of the games before."""

    plug: Plug
    unit: tuple[str, str]
    why: Text


@dataclass(frozen=True, eq=False)
class PluggedForAll:
    """What stays plugged in for all games.

    Parameters
    ----------
    placements : tuple of Placement
        Of all games, as far as their devices are plugged in side by side.
    apart : tuple of tuple of Apart
        For each game what cannot be.
    """

    placements: tuple[Placement, ...]
    apart: tuple[tuple[Apart, ...], ...]


def plugged_for_all(sharings: Sequence[Sharing | None], case: Case, held: Sequence[HeldWay] = ()) -> PluggedForAll:
    """What can be plugged in at the same time for all games: the first game's devices, and of each further game those that
    have a socket to themselves and do not overload, shut out or double what is there.

    Parameters
    ----------
    sharings : sequence of Sharing or None
        Of each game, sockets kept alike (`sockets_kept`).
    case : Case
        Kit and hubs.
    held : sequence of HeldWay
        As for `wiring_of`.
    """
    placements: list[Placement] = []
    apart: list[tuple[Apart, ...]] = []
    for sharing in sharings:
        mine = sharing.placements if sharing is not None else ()
        if not placements:
            placements += mine
            apart.append(())
            continue
        there = _plugged(placements)
        loose = {(placement.kind, placement.site, placement.device) for placement in placements}
        known = {(placement.action, placement.hub, placement.socket, placement.site) for placement in placements}
        more = Counter(_plugged(mine).values()) - Counter(there.values())
        new: dict[tuple[Plug, _Unit], list[Placement]] = {}
        for one in mine:
            if (one.action, one.hub, one.socket, one.site) in known:
                continue
            if one.connection != "socket":
                placements += [one] if one.how != "site" or (one.kind, one.site, one.device) not in loose else []
                continue
            ((plug, unit),) = _plugged([one]).items()
            if there.get(plug) == unit:
                placements.append(one)
            elif plug not in there and ((plug, unit) in new or more[unit] > 0):
                more[unit] -= (plug, unit) not in new
                new.setdefault((plug, unit), []).append(one)
        kept, out = _side_by_side(placements, new, case, held)
        placements += kept
        apart.append(tuple(out))
    return PluggedForAll(tuple(placements), tuple(apart))


def _side_by_side(
    placements: Sequence[Placement],
    new: Mapping[tuple[Plug, _Unit], list[Placement]],
    case: Case,
    held: Sequence[HeldWay],
) -> tuple[list[Placement], list[Apart]]:
    """Devices of one more game, one after the other: those that bring no fault, and the others with theirs."""
    kept: list[Placement] = []
    apart = []
    for (plug, unit), group in new.items():
        before = _faults([*placements, *kept], case, held)
        brought = [text for text in _faults([*placements, *kept, *group], case, held) if text not in before]
        alone = _faults(group, case, held)
        brought = [text for text in brought if text not in alone]
        if brought:
            apart.append(Apart(plug, unit, brought[0]))
        else:
            kept += group
    return kept, apart


def _faults(placements: Sequence[Placement], case: Case, held: Sequence[HeldWay]) -> list[Text]:
    """What is wrong with these plugged in at once; without tags of cables, which others are given in the end."""
    return [
        _untagged(finding.text) for finding in wiring_of(placements, case, held).findings if finding.level == "fault"
    ]


def _untagged(value: Param) -> Param:
    """A message, and those nested in it, without the tags of cables."""
    if isinstance(value, tuple):
        return tuple(map(_untagged, value))
    if not isinstance(value, Message):
        return value
    return Message(value.code, tuple((name, None if name == "tag" else _untagged(one)) for name, one in value.params))


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


def replugs_of(first: Sharing, other: Sharing, apart: Sequence[Apart] = ()) -> tuple[Replug, ...]:
    """What has to be plugged in elsewhere than for the first game. What only one of the two uses stays plugged in where its
    socket is not needed and both can be plugged in at once.

    Parameters
    ----------
    first, other : Sharing
    apart : sequence of Apart
        What cannot be.
    """
    before, after = _plugged(first.placements), _plugged(other.placements)
    players = {
        (placement.hub or "", placement.socket or ""): placement.site or ""
        for placement in other.placements
        if placement.connection == "socket"
    }
    out = []
    for plug, unit in after.items():
        if before.get(plug) == unit:
            continue
        was = next(
            (socket for (_, socket), one in before.items() if one == unit and (plug[0], socket) not in after), None
        )
        there = before.get(plug)
        alone = next((one for one in apart if (one.plug, one.unit) == (plug, unit)), None)
        if alone is not None:
            idle = [(one[1], socket) for (hub, socket), one in before.items() if (hub, socket) not in after]
            out.append(
                Replug(
                    device=unit[1], at=unit[0] or players[plug], hub=plug[0], to_socket=plug[1], from_socket=was,
                    instead_of="", unplug_first=tuple(idle), why=alone.why,
                )
            )  # fmt: skip
        elif was is not None or there is not None:
            out.append(Replug(unit[1], unit[0] or players[plug], *plug, was, there[1] if there is not None else ""))
    return tuple(out)


def refits_of(first: Sharing, other: Sharing) -> tuple[Refit, ...]:
    """Sticks that are set up otherwise than for the first game."""

    def set_up(sharing: Sharing) -> dict[str, tuple[str, Text]]:
        sticks = (placement for placement in sharing.placements if placement.kind == "stick" and placement.site)
        return {stick.site or "": (stick.device or "", stick.named) for stick in sticks}

    before, after = set_up(first), set_up(other)
    return tuple(
        Refit(site, before[site][1], label, before[site][0] != device)
        for site, (device, label) in after.items()
        if site in before and before[site] != (device, label)
    )
