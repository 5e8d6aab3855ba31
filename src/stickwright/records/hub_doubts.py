"""What is contradictory or half said of a hub: names, plugs, roles, sockets that shut each other out."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.model.plugs import plugs_of
from stickwright.model.recorded import Finding
from stickwright.records.toml_lines import FieldPath, TomlFile
from stickwright.records.typed_tables import Noticed, doubled_names, name_of, plug_doubts, query, tables, texts
from stickwright.records.typed_values import as_typed

__all__ = ["hub_doubts"]


def hub_doubts(hubs: TomlFile) -> list[Noticed]:
    """What is doubtful in a file of hubs.

    Parameters
    ----------
    hubs : TomlFile
        The file as parsed.
    """
    noticed: list[Noticed] = [*doubled_names(hubs, tables(hubs.data, "hub"), "hub")]
    for path, hub in tables(hubs.data, "hub"):
        sockets = list(tables(hub, "socket", path))
        noticed += doubled_names(hubs, sockets, "socket")
        noticed += plug_doubts(hubs, (*path, "plug"), hub.get("plug"))
        if not sockets:
            noticed.append(
                query(
                    "socket",
                    f"{hubs.where(path)}: no socket, so nothing can be plugged in. Add one [[hub.socket]] for each, with "
                    'name, takes = "USB" and role.',
                )
            )
        names = [name for _, socket in sockets if (name := name_of(socket))]
        for spot, socket in sockets:
            noticed += plug_doubts(hubs, (*spot, "takes"), socket.get("takes"))
            noticed += _role_doubts(hubs, spot, socket)
            noticed += _exclusion_doubts(hubs, spot, socket, names)
    if not hubs.data.get("hub"):
        noticed.append(
            Finding("note", "hub", f"{hubs.name} describes no hub: no sockets are chosen and nothing is wired.")
        )
    return noticed


def _role_doubts(hubs: TomlFile, path: FieldPath, socket: dict[str, Any]) -> Iterator[Noticed]:
    role = socket.get("role")
    if "role" not in socket:
        yield Problem(
            hubs.where(path),
            "no role",
            'role = "assignable", or what the socket feeds: "left stick", "bottom button in right cluster", ...',
            "A socket without a role feeds nothing. Look into the hub's settings, or try it and see what the game does.",
        )
        return
    if role == "assignable":
        for place, named in texts(socket, "roles"):
            yield from _cannot_carry(hubs, (*path, "roles", place), socket, named)
        return
    if isinstance(role, str):
        yield from _cannot_carry(hubs, (*path, "role"), socket, role)
        if socket.get("roles"):
            yield query(
                "role",
                f'{hubs.where((*path, "roles"))}: counts only for role = "assignable"; this socket feeds the {role}. '
                "Which holds?",
            )


def _cannot_carry(hubs: TomlFile, path: FieldPath, socket: dict[str, Any], role: str) -> Iterator[Finding]:
    """A role that hardly fits the jack: two conductors are one switch, four are a stick."""
    try:
        plugs = plugs_of(socket["takes"]) if isinstance(socket.get("takes"), str) else ()
    except BadInput:  # told at the plug itself
        return
    if role in STICK_ROLES and plugs and all(plug.endswith("2-conductor") for plug in plugs):
        yield query(
            "role",
            f"{hubs.where(path)}: {as_typed(role)} on a 2-conductor jack, which carries one switch and no stick. "
            "Look at the socket: takes or role.",
        )
    if role in BUTTON_ROLES and plugs and all(plug.endswith("4-conductor") for plug in plugs):
        yield query(
            "role",
            f"{hubs.where(path)}: {as_typed(role)} on a 4-conductor jack, which carries a stick. "
            "Look at the socket: takes or role.",
        )


def _exclusion_doubts(hubs: TomlFile, path: FieldPath, socket: dict[str, Any], names: list[str]) -> Iterator[Problem]:
    for place, other in texts(socket, "excludes"):
        where = hubs.where((*path, "excludes", place))
        if other == name_of(socket):
            yield Problem(where, f"{as_typed(other)}, the socket itself", "another socket", "Take it out of the list.")
        elif other not in names:
            yield Problem(where, as_typed(other), "the name of a socket of the same hub", did_you_mean(other, names))
