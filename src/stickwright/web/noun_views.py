"""The files of a case as pages show them: which tables there are, which columns tell them apart, in what order."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from stickwright import units
from stickwright.errors import BadInput, Problem
from stickwright.model.game import Action, Game, SettingsBefore
from stickwright.model.hub import Hub, Hubs
from stickwright.model.kit import Controller, Extension, Fastener, Kit, Lead, Mount, Stick, Switch, Topper
from stickwright.model.measured import Measured
from stickwright.model.player import Helper, Player, Site, Together
from stickwright.model.room import Edge, KeepOut, Landmark, Place, Room, Surface, Tube
from stickwright.records.entry import shown
from stickwright.records.fields import fields_of
from stickwright.records.game_files import FURTHER_GAMES
from stickwright.records.toml_lines import FieldPath
from stickwright.web.noun_forms import inner_tables, label_of

__all__ = ["VIEWS", "FileView", "Group", "Row", "groups_of", "named", "noun_at", "path_of", "path_text", "plain_tables"]


class Group(NamedTuple):
    """One kind of table in a file."""

    key: str
    title: str
    one: str
    model: type[Measured]
    columns: tuple[str, ...]
    says: str


class FileView(NamedTuple):
    """One file of a case as a page."""

    name: str
    title: str
    about: str
    model: type[Measured]
    groups: tuple[Group, ...]


class Row(NamedTuple):
    """One table in a list: its place, its name, its columns, how many tables it holds."""

    path: str
    name: str
    cells: tuple[str, ...]


VIEWS = {
    "sites": FileView(
        "player.toml", "Sites",
        "Which parts of the body could play, and what is known of them. Two or three are enough to begin with.", Player,
        (
            Group("site", "Sites", "site", Site, ("part", "support", "action"),
                  "A part that can move comfortably and come back by itself: two or three candidates."),
            Group("together", "At the same moment", "pair of sites", Together, ("says", "alone_per_s", "both_per_s"),
                  "The first keeps a hold while the second presses for 20 s; or just your word."),
            Group("helper", "Helpers", "helper", Helper, ("most_actions",),
                  "Somebody who can take actions over: sister, carer; never a name."),
        ),
    ),
    "kit": FileView(
        "kit.toml", "Kit", "What there is to choose from.", Kit,
        (
            Group("stick", "Sticks", "stick", Stick, ("start_force_n", "full_force_n", "travel_m", "plug", "in_stock"),
                  "Forces at the contact point of the bare stick, from the bench."),
            Group("topper", "Toppers", "topper", Topper, ("form", "height_m", "in_stock"), "What the player touches."),
            Group("extension", "Extensions", "extension", Extension, ("length_m", "in_stock"),
                  "They divide the force and multiply the throw."),
            Group("switch", "Switches", "switch", Switch, ("force_n", "face_m", "plug", "in_stock"), ""),
            Group("controller", "Two-handed controllers", "controller", Controller, ("plug", "in_stock"),
                  "Used whole: paired, or through a hub."),
            Group("lead", "Leads", "lead", Lead, ("kind", "plug", "length_m", "in_stock"), "Extensions, adapters, splitters."),
            Group("mount", "Mounts", "mount", Mount, ("kind", "links_m", "holding_nm", "in_stock"), ""),
            Group("fastener", "Fasteners", "fastener", Fastener, ("kind", "shear_pa", "in_stock"), ""),
        ),
    ),
    "game": FileView(
        "game.toml", "Game", "What the player wants to do in the game, in the player's own words.", Game,
        (Group("action", "Actions", "action", Action, ("kind", "importance", "presses_per_s", "together"),
               "One for each thing the player wants to do; importance is what it is worth to them, 0 to 10."),
         Group("settings_before", "Settings before anything was changed", "record of settings", SettingsBefore,
               ("dead_zone_share", "sensitivity_share", "words"),
               "Read them in the menu of the game and write them down before you change them: they are what to undo to.")),
    ),
    "hub": FileView(
        "hub.toml", "Hub", "What devices are plugged into, socket by socket.", Hubs,
        (Group("hub", "Hubs", "hub", Hub, ("plug", "current_a", "paired"), ""),),
    ),
    "room": FileView(
        "room.toml", "Room",
        "How the player sits, what a mount can hold on to, what must stay free. Distances by tape, from the seat reference "
        "point: where the middle of the back meets the seat.", Room,
        (
            Group("place", "Places of the sites", "place", Place, ("at_m", "forward_rad", "moves_with"),
                  "Where the contact point is while the part rests."),
            Group("tube", "Tubes", "tube", Tube, ("from_m", "to_m", "diameter_m", "moves_with"), "Straight free lengths."),
            Group("edge", "Edges", "edge", Edge, ("from_m", "to_m", "thickness_m", "moves_with"), "Of tables and trays."),
            Group("surface", "Surfaces", "surface", Surface, ("kind", "size_m", "material", "moves_with"),
                  "Tables, trays, the floor."),
            Group("keep_out", "What must stay free", "zone", KeepOut, ("kind", "low_m", "high_m", "moves_with"),
                  "Face, chest, the chair's own control, the transfer side."),
            Group("landmark", "Landmarks", "landmark", Landmark, ("at_m", "moves_with"),
                  "Points that a family can find again."),
        ),
    ),
}  # fmt: skip
VIEWS |= {name.removesuffix(".toml"): VIEWS["game"]._replace(name=name) for name in FURTHER_GAMES}


def plain_tables(body: bytes, name: str) -> dict[str, Any]:
    """A file as plain tables.

    Parameters
    ----------
    body : bytes
    name : str

    Raises
    ------
    BadInput
        It cannot be read as a TOML file; its own page, as text, puts that right.
    """
    try:
        return tomllib.loads(body.decode("utf-8"))
    except (UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise BadInput(
            Problem(
                name, f"text that cannot be read ({error})", "tables and keys", "Put it right in 'The files as text'."
            )
        ) from None


def groups_of(
    view: Sequence[Group], tables: Mapping[str, Any], path: FieldPath = ()
) -> tuple[tuple[Group, tuple[str, ...], tuple[Row, ...]], ...]:
    """Each kind of table with its column headings and its rows.

    Parameters
    ----------
    view : sequence of Group
    tables : mapping
        Of the file, or of the table around.
    path : tuple
        Of the table around.
    """
    out = []
    for group in view:
        listed = tables.get(group.key, [])
        listed = listed if isinstance(listed, list) else [listed]
        rows = tuple(
            Row(path_text((*path, group.key, place)), named(one, group, place), _cells(group, one))
            for place, one in enumerate(listed)
            if isinstance(one, Mapping)
        )
        out.append((group, tuple(label_of(name) for name in group.columns), rows))
    return tuple(out)


def named(table: Mapping[str, Any], group: Group, place: int) -> str:
    """What a table is called in a list.

    Parameters
    ----------
    table : mapping
    group : Group
    place : int
        From 0.
    """
    for key in ("name", "condition", "site", "landmark", "file", "stick"):
        if isinstance(table.get(key), str) and table[key]:
            return str(table[key])
    if isinstance(table.get("sites"), list):
        return " and ".join(str(site) for site in table["sites"])
    return f"{group.one} {place + 1}"


def _cells(group: Group, table: Mapping[str, Any]) -> tuple[str, ...]:
    cells = []
    for name in group.columns:
        key, text = shown(group.model, name, table)
        if not text and name == "in_stock":
            text = str(group.model.model_fields[name].default)
        quantity = units.quantity_of(key) if text and fields_of(group.model)[name].kind == "number" else None
        parts = units.split_key(key)
        unit = f" {quantity.unit(parts[1]).label}" if quantity is not None and parts is not None else ""
        cells.append(", ".join(text.split("\n")) + unit.replace(" °", "°"))
    return tuple(cells)


def noun_at(model: type[Measured], path: FieldPath) -> type[Measured]:
    """The noun that stands at a place in a file.

    Parameters
    ----------
    model : type
        Of the file.
    path : tuple

    Raises
    ------
    KeyError
        No table can stand there.
    """
    for step in path:
        if isinstance(step, int):
            continue
        model = {key: inner for key, inner, _ in inner_tables(model)}[step]
    return model


def path_of(text: str, model: type[Measured], tables: Mapping[str, Any]) -> FieldPath:
    """The place that an address names.

    Parameters
    ----------
    text : str
        ``site/0/rest/new``; counted from 0, ``new`` is one past the last.
    model : type
        Of the file.
    tables : mapping
        Of the file.

    Raises
    ------
    KeyError
        There is no such place.
    """
    path: list[str | int] = []
    here: Any = tables
    steps = [step for step in text.split("/") if step]
    while steps:
        key = steps.pop(0)
        found = {name: (inner, many) for name, inner, many in inner_tables(model)}
        if key not in found:
            raise KeyError(text)
        model, many = found[key]
        inside = here.get(key) if isinstance(here, Mapping) else None
        path.append(key)
        if not many:
            here = inside if isinstance(inside, Mapping) else {}
            continue
        listed = inside if isinstance(inside, list) else []
        place = steps.pop(0) if steps else ""
        number = len(listed) if place == "new" else int(place) if place.isascii() and place.isdigit() else -1
        if not 0 <= number <= len(listed) or (number == len(listed) and (place != "new" or steps)):
            raise KeyError(text)
        path.append(number)
        here = listed[number] if number < len(listed) else {}
    return tuple(path)


def path_text(path: FieldPath) -> str:
    """A place as an address names it.

    Parameters
    ----------
    path : tuple
    """
    return "/".join(str(step) for step in path)
