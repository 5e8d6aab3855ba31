"""What is contradictory or half said of a hub: names, plugs, roles, sockets that cannot be used together."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright.codes.file_tables import FileTables
from stickwright.codes.hub_warnings import HubWarnings
from stickwright.codes.message import message
from stickwright.codes.warnings import Warnings
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import (
    Noticed,
    doubled_names,
    name_of,
    plug_warnings,
    query,
    shown_name,
    tables,
    texts,
    told_at,
)
from stickwright.files.typed_values import as_typed
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.model.plugs import plugs_of
from stickwright.model.recorded import Finding

__all__ = ["hub_warnings"]


def hub_warnings(hubs: TomlFile) -> list[Noticed]:
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
        noticed += plug_warnings(hubs, (*path, "plug"), hub.get("plug"))
        if not sockets:
            noticed.append(
                query(
                    "socket",
                    hubs.where(path),
                    message(HubWarnings.no_socket, table=message(FileTables.one, table="hub.socket")),
                )
            )
        names = [name for _, socket in sockets if (name := name_of(socket))]
        for spot, socket in sockets:
            noticed += plug_warnings(hubs, (*spot, "takes"), socket.get("takes"))
            noticed += _role_warnings(hubs, spot, socket)
            noticed += _exclusion_warnings(hubs, spot, socket, names)
    if not hubs.data.get("hub"):
        noticed.append(Finding("note", "hub", told_at(hubs.name, message(HubWarnings.no_hub))))
    return noticed


def _role_warnings(hubs: TomlFile, path: FieldPath, socket: dict[str, Any]) -> Iterator[Noticed]:
    role = socket.get("role")
    if "role" not in socket:
        found, expected = message(HubWarnings.no_role), message(HubWarnings.a_role)
        yield Problem(hubs.where(path), found, expected, message(HubWarnings.look_up_role))
        return
    if role == "assignable":
        for place, named in texts(socket, "roles"):
            yield from _cannot_carry(hubs, (*path, "roles", place), socket, named)
        return
    if isinstance(role, str):
        yield from _cannot_carry(hubs, (*path, "role"), socket, role)
        if socket.get("roles"):
            yield query("role", hubs.where((*path, "roles")), message(HubWarnings.roles_unused, role=shown_name(role)))


def _cannot_carry(hubs: TomlFile, path: FieldPath, socket: dict[str, Any], role: str) -> Iterator[Finding]:
    """A role that hardly fits the jack: two conductors are one switch, four are a stick."""
    try:
        plugs = plugs_of(socket["takes"]) if isinstance(socket.get("takes"), str) else ()
    except BadInput:  # told at the plug itself
        return
    if role in STICK_ROLES and plugs and all(plug.endswith("2-conductor") for plug in plugs):
        yield query("role", hubs.where(path), message(HubWarnings.stick_on_mono_jack, typed=as_typed(role)))
    if role in BUTTON_ROLES and plugs and all(plug.endswith("4-conductor") for plug in plugs):
        yield query("role", hubs.where(path), message(HubWarnings.button_on_stick_jack, typed=as_typed(role)))


def _exclusion_warnings(hubs: TomlFile, path: FieldPath, socket: dict[str, Any], names: list[str]) -> Iterator[Problem]:
    for place, other in texts(socket, "excludes"):
        where = hubs.where((*path, "excludes", place))
        if other == name_of(socket):
            found = message(HubWarnings.excludes_itself, socket=shown_name(other))
            yield Problem(where, found, message(HubWarnings.another_socket), message(Warnings.take_out))
        elif other not in names:
            expected = message(HubWarnings.socket_of_this_hub)
            yield Problem(where, as_typed(other), expected, did_you_mean(other, names))
