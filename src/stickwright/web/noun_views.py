"""The files of a case as pages show them: which tables there are, which columns tell them apart, in what order."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from stickwright import units
from stickwright.catalogue import say
from stickwright.codes.form_labels import FormLabels
from stickwright.codes.message import Message, Name, message
from stickwright.codes.tables_page import FileKey, TablesPage
from stickwright.errors import BadInput, Problem
from stickwright.files.entry import shown
from stickwright.files.fields import fields_of
from stickwright.files.game_files import FURTHER_GAMES
from stickwright.files.held import HeldFile
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.model.game import Action, Game, SettingsBefore
from stickwright.model.hub import Hub, Hubs
from stickwright.model.kit import Controller, Extension, Fastener, Kit, Lead, Mount, Stick, Switch, Topper
from stickwright.model.measured import Measured
from stickwright.model.player import Helper, Player, Site, Together
from stickwright.model.room import Edge, KeepOut, Landmark, Place, Room, Surface, Tube
from stickwright.web.noun_forms import choice_words, inner_tables, label_of

__all__ = [
    "VIEWS",
    "FileView",
    "TableGroup",
    "TableRow",
    "groups_of",
    "in_cell",
    "named",
    "noun_at",
    "path_of",
    "path_text",
    "plain_tables",
]


class TableGroup(NamedTuple):
    """One kind of table in a file."""

    key: str
    model: type[Measured]
    columns: tuple[str, ...]

    @property
    def title(self) -> Message:
        """Heading of the list."""
        return message(FormLabels.table, table=self.key)

    @property
    def add(self) -> Message:
        """Button that opens an empty form."""
        return message(FormLabels.add, table=self.key)

    @property
    def about(self) -> str:
        """What belongs in the list; '' where its heading says it all."""
        return say(message(FormLabels.about, table=self.key))


class FileView(NamedTuple):
    """One file of a case as a page."""

    name: str
    key: FileKey
    model: type[Measured]
    groups: tuple[TableGroup, ...]

    @property
    def title(self) -> Message:
        """Heading of the page."""
        return message(TablesPage.title, file=self.key)

    @property
    def about(self) -> Message:
        """What belongs on the page."""
        return message(TablesPage.about, file=self.key)


class TableRow(NamedTuple):
    """One table in a list: its place, its name, its columns, how many tables it holds."""

    path: str
    name: str
    cells: tuple[str, ...]


VIEWS = {
    "sites": FileView(
        "player.toml", "sites", Player,
        (
            TableGroup("site", Site, ("part", "support", "action")),
            TableGroup("together", Together, ("says", "alone_per_s", "both_per_s")),
            TableGroup("helper", Helper, ("most_actions",)),
        ),
    ),
    "kit": FileView(
        "kit.toml", "kit", Kit,
        (
            TableGroup("stick", Stick, ("start_force_n", "full_force_n", "travel_m", "plug", "in_stock")),
            TableGroup("topper", Topper, ("form", "height_m", "in_stock")),
            TableGroup("extension", Extension, ("length_m", "in_stock")),
            TableGroup("switch", Switch, ("force_n", "face_m", "plug", "in_stock")),
            TableGroup("controller", Controller, ("plug", "in_stock")),
            TableGroup("lead", Lead, ("kind", "plug", "length_m", "in_stock")),
            TableGroup("mount", Mount, ("kind", "links_m", "holding_nm", "in_stock")),
            TableGroup("fastener", Fastener, ("kind", "shear_pa", "in_stock")),
        ),
    ),
    "game": FileView(
        "game.toml", "game", Game,
        (
            TableGroup("action", Action, ("kind", "importance", "presses_per_s", "together")),
            TableGroup("settings_before", SettingsBefore, ("dead_zone_share", "sensitivity_share", "words")),
        ),
    ),
    "hub": FileView("hub.toml", "hub", Hubs, (TableGroup("hub", Hub, ("plug", "current_a", "paired")),)),
    "room": FileView(
        "room.toml", "room", Room,
        (
            TableGroup("place", Place, ("at_m", "forward_rad", "moves_with")),
            TableGroup("tube", Tube, ("from_m", "to_m", "diameter_m", "moves_with")),
            TableGroup("edge", Edge, ("from_m", "to_m", "thickness_m", "moves_with")),
            TableGroup("surface", Surface, ("kind", "size_m", "material", "moves_with")),
            TableGroup("keep_out", KeepOut, ("kind", "low_m", "high_m", "moves_with")),
            TableGroup("landmark", Landmark, ("at_m", "moves_with")),
        ),
    ),
}  # fmt: skip
VIEWS |= {name.removesuffix(".toml"): VIEWS["game"]._replace(name=name) for name in FURTHER_GAMES}


def plain_tables(held: HeldFile, name: str) -> dict[str, Any]:
    """A file as plain tables.

    Parameters
    ----------
    held : bytes or TomlFile
        What it says; bytes where that is not known yet.
    name : str

    Raises
    ------
    BadInput
        It cannot be read as a TOML file; its own page, as text, puts that right.
    """
    if isinstance(held, TomlFile):
        return held.data
    assert isinstance(held, bytes)
    try:
        return tomllib.loads(held.decode("utf-8"))
    except (UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        unreadable = message(TablesPage.unreadable, why=Name(str(error)))
        raise BadInput(Problem(name, "", "", unreadable)) from None


def groups_of(
    view: Sequence[TableGroup], tables: Mapping[str, Any], path: FieldPath = ()
) -> tuple[tuple[TableGroup, tuple[Message, ...], tuple[TableRow, ...]], ...]:
    """Each kind of table with its column headings and its rows.

    Parameters
    ----------
    view : sequence of TableGroup
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
            TableRow(path_text((*path, group.key, place)), named(one, group, place), _cells(group, one))
            for place, one in enumerate(listed)
            if isinstance(one, Mapping)
        )
        out.append((group, tuple(label_of(group.model, name) for name in group.columns), rows))
    return tuple(out)


def named(table: Mapping[str, Any], group: TableGroup, place: int) -> str:
    """What a table is called in a list.

    Parameters
    ----------
    table : mapping
    group : TableGroup
    place : int
        From 0.
    """
    for key in ("name", "condition", "site", "landmark", "file", "stick"):
        if isinstance(table.get(key), str) and table[key]:
            return str(table[key])
    if isinstance(table.get("sites"), list):
        return say(message(FormLabels.pair, names=tuple(Name(str(site)) for site in table["sites"])))
    return say(message(FormLabels.numbered, table=group.key, number=place + 1))


def _cells(group: TableGroup, table: Mapping[str, Any]) -> tuple[str, ...]:
    cells = []
    for name in group.columns:
        key, text = shown(group.model, name, table)
        if not text and name == "in_stock":
            text = str(group.model.model_fields[name].default)
        shape = fields_of(group.model)[name]
        quantity = units.quantity_of(key) if text and shape.kind == "number" else None
        parts = units.split_key(key)
        unit = quantity.unit(parts[1]).label if quantity is not None and parts is not None else ""
        cells.append(in_cell(choice_words(shape, text), unit))
    return tuple(cells)


def in_cell(text: str, unit: str) -> str:
    """What a field holds, in one line, with its unit.

    Parameters
    ----------
    text : str
        As the form shows it.
    unit : str
        Label of the unit; '' for none.
    """
    told = ", ".join(text.split("\n"))
    return say(message(FormLabels.amount, value=Name(told), unit=Name(unit))) if unit else told


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
    """A place as an address names it."""
    return "/".join(str(step) for step in path)
