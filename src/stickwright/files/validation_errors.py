"""Why a table cannot be read, in the trade's words, in the unit that was typed, with the line.

Validation itself is done by the nouns (pydantic); its errors are translated here. What pydantic
would quietly accept (a number in quotes, true for 1) is looked for first.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, TypeVar, get_args

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from stickwright import units
from stickwright.codes.expected import Expected
from stickwright.codes.file_keys import FileKeys, Kind
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.problems import Problems
from stickwright.codes.remedies import Instrument, Remedies
from stickwright.errors import Problem, nearest
from stickwright.files.fields import NONE, FieldShape, fields_of, typed_key, typed_keys, typed_names
from stickwright.files.plain_text import shortened
from stickwright.files.toml_lines import FieldPath, PlaceInFile, TomlFile
from stickwright.files.typed_values import as_typed, cleaned
from stickwright.model.measured import Measured, canonical_key

__all__ = ["validated"]

Noun = TypeVar("Noun", bound=Measured)
_GAUGES = ("mn", "gf", "kgf", "lb", "oz", "n", "mm", "cm", "inch", "ms", "s", "min", "deg", "per_min", "per_s")
"""Units to ask about when a number does not fit its own, the likeliest first."""
_ALL_SHOWN = 16
"""Words offered in full; of a longer list only the ends when one of them was hardly missed."""
_INSTRUMENTS: dict[str, Instrument] = {
    "force": "gauge",
    "length": "tape",
    "angle": "angle",
    "time": "clock",
    "rate": "count",
}


def validated(model: type[Noun], file: TomlFile) -> tuple[Noun | None, list[Problem]]:
    """The noun that a file describes, or all that is wrong with it.

    Parameters
    ----------
    model : type
        Player, Kit, Game, Hubs or Room.
    file : TomlFile
        The file as parsed.

    Returns
    -------
    noun : model or None
        None when there is any problem.
    problems : list of Problem
        In the order of the file.
    """
    problems: dict[FieldPath, Problem] = {}
    clean = cleaned(model, file.data, file, (), problems)
    noun = None
    try:
        noun = model.model_validate(clean)
    except ValidationError as error:
        details = [(_spot(model, file, detail), detail) for detail in error.errors(include_url=False)]
        own = [(spot, detail) for spot, detail in details if not _follows_from_another(spot, detail)]
        for spot, detail in own or ([] if problems else details):  # never refuse without saying why
            if not any(spot.path[: len(path)] == path for path in problems):
                problems[spot.path] = _problem(spot, detail)
    in_order = sorted(problems, key=lambda path: (file.lines.line(path), str(path)))
    return (None if problems else noun), [problems[path] for path in in_order]


def _follows_from_another(spot: _Spot, detail: ErrorDetails) -> bool:
    """A list that seems short because its items were refused, a missing key that stands there misspelt in its unit."""
    kind = detail["type"]
    if kind in ("too_short", "too_long") and isinstance(spot.value, list) and spot.shape is not None:
        shape = spot.shape
        low = shape.shortest if shape.count is None else shape.count
        high = shape.longest if shape.count is None else shape.count
        return (low or 0) <= len(spot.value) <= (high if high is not None else len(spot.value))
    if (
        kind == "missing"
        and isinstance(detail["loc"][-1], str)
        and _has_units(spot.model, spot.name)
        and isinstance(spot.table, dict)
    ):
        return any(_stem(key) == _stem(spot.name) for key in spot.table)
    return False


# ---- after validation: pydantic's errors, told again


@dataclass(frozen=True)
class _Spot:
    """The place that an error is about: table, declared field, key and value as typed."""

    file: TomlFile
    path: FieldPath
    table_path: FieldPath
    model: type[Measured]
    parents: tuple[tuple[type[Measured], str], ...]
    """Enclosing nouns and the key under which each holds the next."""
    name: str
    key: str
    shape: FieldShape | None
    value: Any
    table: Any


def _spot(model: type[Measured], file: TomlFile, detail: ErrorDetails) -> _Spot:
    """Walk from the top of the file to the place that an error is about."""
    here: Any = file.data
    path: FieldPath = ()
    table_path: FieldPath = ()
    parents: list[tuple[type[Measured], str]] = []
    name = key = ""
    shape: FieldShape | None = None
    table: Any = here
    for step in detail["loc"]:
        if isinstance(step, int):
            if isinstance(here, list) and step < len(here):
                path, here = (*path, step), here[step]
            continue
        if shape is not None and shape.model is None:
            continue  # which of several lists of words was tried: no step in the file
        if shape is not None and shape.model is not None:
            parents.append((model, key))
            model, table_path = shape.model, path
        name = step
        shape = fields_of(model).get(name)
        key = typed_key(here, model, name) or name
        table = here
        here = here.get(key) if isinstance(here, dict) else None
        path = (*path, key)
    return _Spot(
        file=file,
        path=path,
        table_path=table_path,
        model=model,
        parents=tuple(parents),
        name=name,
        key=key,
        shape=shape,
        value=here,
        table=table,
    )


def _problem(spot: _Spot, detail: ErrorDetails) -> Problem:
    kind = detail["type"]
    if kind == "missing":
        # a place in a list, not a key: the list is too short
        return (
            _missing(spot)
            if isinstance(detail["loc"][-1], str)
            else _wrong_length(spot, spot.file.where(spot.path), "[]")
        )
    if kind == "extra_forbidden":
        return _unknown_key(spot)
    where, found = spot.file.where(spot.path), as_typed(spot.value)
    if kind in ("implausible", "greater_than_equal", "less_than_equal") and spot.shape is not None:
        return _out_of_range(spot, where, found)
    if kind == "literal_error" and spot.shape is not None:
        return _no_choice(spot.shape, spot.value, where, found)
    if kind in ("string_too_short", "string_too_long", "too_short", "too_long") and spot.shape is not None:
        return _wrong_length(spot, where, found)
    if spot.shape is not None and spot.shape.kind == "table" and isinstance(spot.value, list | dict):
        found = _heading(spot, double=isinstance(spot.value, list))
    expected, remedy = _wanted(spot)
    return Problem(where, found, expected, remedy)


def _missing(spot: _Spot) -> Problem:
    keys = tuple(Name(key) for key in typed_keys(spot.model, spot.name))
    shape, meaning = spot.shape, _meaning_of(spot)
    if shape is not None and shape.kind == "table":
        expected = message(FileKeys.table, heading=Name(f"[[{spot.name}]]"), meaning=meaning)
    elif shape is not None and shape.kind in ("words", "choice"):
        choices = tuple(Name(one) for one in shape.choices)
        expected = message(FileKeys.words, key=Name(spot.name), choices=choices, meaning=meaning)
    else:
        expected = message(FileKeys.either, keys=keys, meaning=meaning)
    found = message(Found.no_field, key=Name(spot.name if len(keys) == 1 else _stem(spot.name)))
    remedy = message(Remedies.add_in_unit) if len(keys) > 1 else message(Remedies.add, names=())
    return Problem(spot.file.where(spot.table_path), found, expected, remedy)


def _meaning_of(spot: _Spot) -> Text | None:
    """What the noun says of a field, to stand in brackets."""
    described = spot.model.model_fields[spot.name].description
    return f"{described[:1].lower()}{described[1:]}" if described else None


def _unknown_key(spot: _Spot) -> Problem:
    where, key = spot.file.where(spot.path), Name(spot.key)
    parts = units.split_key(key)
    stems = {_stem(name): name for name in spot.model.model_fields if _has_units(spot.model, name)}
    if parts and parts[0] in stems:
        keys = tuple(Name(one) for one in typed_keys(spot.model, stems[parts[0]]))
        found = message(FileKeys.other_kind, key=key, kind=_kind(key))
        expected = message(FileKeys.of_kind, kind=_kind(stems[parts[0]]), keys=keys)
        return Problem(where, found, expected, message(Remedies.change_unit))
    if key in stems:
        keys = tuple(Name(one) for one in typed_keys(spot.model, stems[key]))
        expected = message(FileKeys.either, keys=keys, meaning=None)
        return Problem(where, message(FileKeys.no_unit, key=key), expected, message(Remedies.add_unit))
    owner = _owner(spot)
    if owner is not None:
        found = message(FileKeys.inside, key=key, table=Name(spot.parents[-1][1]))
        table = owner or None
        expected = message(FileKeys.belongs, key=key, table=table)
        return Problem(where, found, expected, message(FileKeys.move_up, table=table))
    holder = Name(spot.parents[-1][1]) if spot.parents else None
    known = message(FileKeys.known, table=holder)
    return Problem(where, message(FileKeys.unknown, key=key), known, _nearest(spot.model, key))


def _kind(key: str) -> Kind | None:
    quantity = units.quantity_of(key)
    return next((kind for kind in get_args(Kind) if quantity is not None and kind == quantity.name), None)


def _owner(spot: _Spot) -> Name | None:
    """The enclosing table that does know the key, '' for the top of the file: a line typed below a sub-table belongs to that
    sub-table."""
    for place in range(len(spot.parents) - 1, -1, -1):
        model, _ = spot.parents[place]
        if canonical_key(spot.key, model.model_fields) in model.model_fields:
            return Name(spot.parents[place - 1][1] if place else "")
    return None


def _nearest(model: type[Measured], key: str) -> Message:
    """The nearest key; the shown units only when none is near."""
    offer = nearest(key, typed_names(model))
    if offer is not None:
        return offer
    shown = []
    for name in model.model_fields:
        quantity = units.quantity_of(name) if _has_units(model, name) else None
        shown.append(Name(f"{_stem(name)}_{quantity.shown}" if quantity else name))
    return message(Problems.known, names=tuple(shown))


def _out_of_range(spot: _Spot, where: PlaceInFile, found: str) -> Problem:
    shape = spot.shape
    assert shape is not None  # checked by the caller; told to the type checker
    low, high = shape.low, shape.high
    parts = units.split_key(spot.key) if _has_units(spot.model, spot.name) else None
    value = spot.value
    minus = isinstance(value, int | float) and value < 0 and low is not None and low >= 0
    if minus and parts and parts[1] != "s":
        left = _stem(spot.name) in ("force", "reach", "again_force", "at_reach")
        remedy = message(Remedies.left_not_minus, keyed=True) if left else message(Remedies.no_minus)
        return Problem(where, found, _range(low, high, parts[1], unsigned=True), remedy)
    if parts is not None:
        return Problem(where, found, _range(low, high, parts[1]), _other_unit(value, spot, low, high))
    if spot.name.endswith("_share"):
        expected = message(Expected.share, low_share=low or 0.0, high_share=high or 0.0)
        per_cent = isinstance(value, int | float) and 1 < value <= 100
        other: Text = message(Remedies.share) if per_cent else ""
    else:
        expected, other = _range(low, high, None), ""
    return Problem(where, found, expected, message(Remedies.no_minus) if minus else other)


def _range(low: float | None, high: float | None, ending: str | None, *, unsigned: bool = False) -> Message:
    unit = units.unit_named(ending) if ending is not None else None
    factor = unit.factor if unit is not None else 1.0
    return message(
        Expected.range,
        low_in_unit=(low or 0.0) / factor,
        high_in_unit=(high or 0.0) / factor,
        unit=Name(unit.label) if unit is not None else None,
        unsigned=unsigned,
    )


def _other_unit(value: Any, spot: _Spot, low: float | None, high: float | None) -> Text:
    """The question, when the number would fit another unit."""
    stem = _stem(spot.name)
    quantity = units.quantity_of(spot.key)
    if not isinstance(value, int | float) or quantity is None:
        return ""
    known = {unit.ending: unit for unit in quantity.units}
    fits = [
        known[ending]
        for ending in _GAUGES
        if ending in known and (low or 0.0) < units.to_si(float(value), ending) < (high or 0.0)
    ][:2]
    if not fits:
        return message(Remedies.decimal_point)
    return message(
        Remedies.rename_key,
        read_off=_INSTRUMENTS.get(quantity.name, "other"),
        units=tuple(Name(unit.label) for unit in fits),
        keys=tuple(Name(f"{stem}_{unit.ending}") for unit in fits),
        in_list=spot.shape is not None and spot.shape.or_single,
    )


def _no_choice(shape: FieldShape, value: Any, where: PlaceInFile, found: str) -> Problem:
    words = (*shape.choices, *((NONE,) if shape.or_none else ()))
    offer = nearest(str(value), words)
    shown = words if len(words) <= _ALL_SHOWN or offer is None else words[:3]
    expected = message(Expected.one_of, names=tuple(map(Name, shown)), more=len(words) - len(shown))
    return Problem(where, found, expected, offer or "")


def _wrong_length(spot: _Spot, where: PlaceInFile, found: str) -> Problem:
    shape = spot.shape
    assert shape is not None  # checked by the caller; told to the type checker
    if shape.count is not None:
        counted = message(Found.values, count=len(spot.value)) if isinstance(spot.value, list) else found
        return Problem(where, counted, message(Expected.values, count=shape.count), _meaning(spot))
    if shape.kind == "table":
        return Problem(where, found, message(FileKeys.at_least_one, heading=Name(f"[[{spot.name}]]")))
    if shape.longest is not None and isinstance(spot.value, str) and len(spot.value) > shape.longest:
        return Problem(where, found, message(Expected.at_most, characters=shape.longest), message(Remedies.short_code))
    return Problem(where, found, message(Expected.a_word), message(Remedies.called_on_sheet))


def _meaning(spot: _Spot) -> Text:
    described = spot.model.model_fields[spot.name].description if spot.name in spot.model.model_fields else None
    if spot.shape is not None and spot.shape.count == 3 and (spot.shape.low or 0) < 0:  # a point, not three sizes
        return message(FileKeys.point, described=described)
    return described or ""


def _heading(spot: _Spot, *, double: bool) -> str:
    """The heading of a table as it is typed."""
    heading = ".".join([*(key for _, key in spot.parents), spot.key])
    return f"[[{heading}]]" if double else f"[{heading}]"


def _wanted(spot: _Spot) -> tuple[Message, Text]:
    """What a field of this shape takes, for anything of the wrong type."""
    shape = spot.shape
    if shape is None:
        return message(FileKeys.known, table=None), ""
    if shape.kind == "table":
        expected = message(FileKeys.table, heading=Name(_heading(spot, double=shape.many)), meaning=None)
        if shape.many:
            return expected, message(FileKeys.several)
        return expected, message(FileKeys.only_one) if isinstance(spot.value, list) else ""
    if shape.kind == "words" or shape.kind == "choice":
        return message(Expected.text, in_list=shape.many), message(Remedies.write, typed=_quoted(spot, shape))
    if shape.kind == "yes-no":
        return message(Expected.true_or_false), ""
    if shape.kind == "whole":
        return message(Expected.whole_number), ""
    if shape.count is not None:
        return message(Expected.number_list, count=shape.count), _meaning(spot)
    return message(Expected.number_or_list) if shape.or_single else message(Expected.number, unit=None), _meaning(spot)


def _quoted(spot: _Spot, shape: FieldShape) -> Name:
    """The same value as words: ``note = "7"``."""
    alone = not isinstance(spot.value, list | dict)
    inner = shortened(str(getattr(spot.value, "text", spot.value)), 30) if alone else "..."
    if spot.path[-1] != spot.key:
        return Name(f'"{inner}"')
    return Name(f'{spot.key} = ["{inner}"]' if shape.many else f'{spot.key} = "{inner}"')


def _stem(name: str) -> str:
    parts = units.split_key(name)
    return parts[0] if parts else name


def _has_units(model: type[Measured], name: str) -> bool:
    return len(typed_keys(model, name)) > 1 or (name in model.model_fields and units.split_key(name) is not None)
