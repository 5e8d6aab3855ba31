"""Tables as they were typed, before they are nouns: what the modules that look for doubts share.

A doubt is told at the line and in the unit that was typed, beside everything else that is wrong, so it is looked
for in the file and not in the noun.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from stickwright import units
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.kinds import Kind
from stickwright.codes.matters import Matter
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.remedies import Remedies
from stickwright.codes.warnings import Named, Warnings
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.files.fields import typed_key
from stickwright.files.plain_text import shortened
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_values import as_typed
from stickwright.model.measured import Measured
from stickwright.model.plugs import plugs_of
from stickwright.model.recorded import Finding

__all__ = [
    "Noticed",
    "assigned",
    "doubled_names",
    "name_of",
    "names_in",
    "number",
    "placed",
    "plug_warnings",
    "query",
    "shown_name",
    "steps_of",
    "stick_called",
    "stick_names",
    "tables",
    "taken_names",
    "texts",
    "told_at",
    "unknown",
]  # fmt: skip

Noticed = Problem | Finding
_TAKEN = ("option", "helper", "dropped")


def tables(data: Any, key: str, path: FieldPath = ()) -> Iterator[tuple[FieldPath, dict[str, Any]]]:
    """The tables of an array, as far as they are tables."""
    items = data.get(key) if isinstance(data, dict) else None
    for place, item in enumerate(items if isinstance(items, list) else []):
        if isinstance(item, dict):
            yield (*path, key, place), item


def number(table: dict[str, Any], model: type[Measured], name: str) -> tuple[str, float] | None:
    """Typed key and SI value of a plain finite number."""
    key = typed_key(table, model, name)
    value = table.get(key) if key is not None else None
    if key is None or isinstance(value, bool) or not isinstance(value, int | float) or not abs(value) < 1e15:
        return None
    parts = units.split_key(key)
    numeric = parts is not None and units.quantity_of(name) is not None
    return key, units.to_si(float(value), parts[1]) if numeric and parts else float(value)


def name_of(table: dict[str, Any]) -> str | None:
    """Name of a table, when it is words."""
    name = table.get("name")
    return name if isinstance(name, str) and name.strip() else None


def texts(table: dict[str, Any], key: str) -> list[tuple[int, str]]:
    """The words of a list with their places; nothing for what is no list or no words."""
    items = table.get(key)
    return [
        (place, item) for place, item in enumerate(items if isinstance(items, list) else []) if isinstance(item, str)
    ]


def names_in(file: TomlFile | None, key: str) -> tuple[str, ...] | None:
    """Names of the tables of an array: all sticks of a kit."""
    if file is None:
        return None
    return tuple(table["name"] for _, table in tables(file.data, key) if isinstance(table.get("name"), str))


def stick_called(stick: Mapping[str, Any]) -> tuple[str, ...]:
    """What one stick's table may be called: by its name, and with each of its settings in brackets.

    Parameters
    ----------
    stick : mapping
        As typed.
    """
    name = stick.get("name")
    if not isinstance(name, str):
        return ()
    words = [stick.get("set_as"), *(one.get("name") for _, one in tables(stick, "setting"))]
    return (name, *(f"{name} ({word})" for word in words if isinstance(word, str) and word))


def stick_names(kit: TomlFile | None) -> tuple[str, ...] | None:
    """What the sticks of a kit may be called; None when there is no kit."""
    return None if kit is None else tuple(name for _, one in tables(kit.data, "stick") for name in stick_called(one))


def shown_name(name: str) -> Name:
    """A name as it stands in the file, shortened to what a sentence can hold."""
    return Name(shortened(name, 40))


def assigned(key: str, value: Any) -> Message:
    """A key with its value as typed: ``force_gf = 45``."""
    return message(Warnings.assigned, key=Name(key), value=as_typed(value))


def doubled_names(file: TomlFile, found: Iterable[tuple[FieldPath, dict[str, Any]]], kind: Kind) -> Iterator[Problem]:
    """Tables with the name of an earlier one, letter case aside.

    Parameters
    ----------
    file : TomlFile
        Where they stand.
    found : iterable of (path, table)
        The tables.
    kind : str
        What each is: 'stick'.
    """
    first: dict[str, FieldPath] = {}
    for path, table in found:
        name = name_of(table)
        if name is None:
            continue
        folded = name.strip().casefold()
        if folded in first:
            line = file.lines.line(first[folded])
            yield Problem(
                file.where((*path, "name")),
                message(Warnings.second_called, kind=kind, name=shown_name(name), line=line),
                message(Warnings.another_name, kind=kind),
                message(Warnings.rename_or_delete),
            )
        first.setdefault(folded, path)


def taken_names(file: TomlFile, found: Iterable[tuple[FieldPath, dict[str, Any]]], kind: Kind) -> Iterator[Problem]:
    """Tables that are called by a word which means something else in a wish for a plan."""
    for path, table in found:
        name = name_of(table)
        if name is not None and name.strip().casefold() in _TAKEN:
            yield Problem(
                file.where((*path, "name")),
                message(Warnings.reserved, kind=kind, name=shown_name(name)),
                message(Warnings.not_reserved, words=tuple(Name(one) for one in _TAKEN)),
                message(Remedies.choose_name),
            )


def unknown(
    file: TomlFile, path: FieldPath, value: Any, known: Sequence[str] | None, what: Named, home: str
) -> Iterator[Problem]:
    """A name that points nowhere.

    Parameters
    ----------
    file : TomlFile
        Where it was typed.
    path : tuple
        Its place.
    value : object
        As typed.
    known : sequence of str or None
        Names that there are; None when they cannot be told.
    what, home : str
        'stick', 'kit.toml'.
    """
    if known is None or not isinstance(value, str) or value in known:
        return
    expected = message(Warnings.name_of, what=what, file=Name(home))
    yield Problem(file.where(path), as_typed(value), expected, did_you_mean(value, known))


def plug_warnings(file: TomlFile, path: FieldPath, value: Any) -> Iterator[Problem]:
    """A plug that cannot be told from what was typed."""
    if not isinstance(value, str):
        return
    try:
        plugs_of(value)
    except BadInput as error:
        for problem in error.problems:
            yield Problem(file.where(path), problem.found, problem.expected, problem.remedy)


def placed(file: TomlFile, some: Iterable[tuple[FieldPath, dict[str, Any]]]) -> tuple[Message, ...]:
    """Tables by name and line, for a sentence about several of them: ``"move" (line 4)``, ``"jump" (line 12)``."""
    return tuple(
        message(
            Warnings.at_line, name=shown_name(name) if (name := name_of(table)) else None, line=file.lines.line(path)
        )
        for path, table in some
    )


def steps_of(where: Text | tuple[Text, ...]) -> tuple[Text, ...]:
    """A place in steps from the outside inwards."""
    return tuple(where) if isinstance(where, tuple) else (where,)


def told_at(where: Text | tuple[Text, ...], told: Text) -> Text:
    """What was noticed, with its place in a file where it has one.

    Parameters
    ----------
    where : Message or str, or tuple of such
        As `TomlFile.where` gives it.
    told : Message or str
    """
    steps = steps_of(where)
    return message(FilePlaces.at, where=steps, told=told) if steps else told


def query(about: Matter, where: Text | tuple[Text, ...], told: Text) -> Finding:
    """A question to the practitioner.

    Parameters
    ----------
    about : str
        Key of the matter.
    where : Message or str, or tuple of such
        As `TomlFile.where` gives it.
    told : Message or str
    """
    return Finding("query", about, told_at(where, told))
