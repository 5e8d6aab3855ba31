"""Why a table cannot be read, in the trade's words, in the unit that was typed, with the line.

Validation itself is done by the nouns (pydantic); its errors are translated here. What pydantic
would quietly accept (a number in quotes, true for 1) is looked for first.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from stickwright import units
from stickwright.codes.message import Text
from stickwright.errors import Problem, nearest
from stickwright.model.measured import Measured, canonical_key
from stickwright.records.fields import NONE, Shape, fields_of, typed_key, typed_keys, typed_names
from stickwright.records.plain_text import number_text, shortened
from stickwright.records.toml_lines import FieldPath, Steps, TomlFile
from stickwright.records.typed_values import as_typed, cleaned

__all__ = ["validated"]

Noun = TypeVar("Noun", bound=Measured)
_GAUGES = ("mn", "gf", "kgf", "lb", "oz", "n", "mm", "cm", "inch", "ms", "s", "min", "deg", "per_min", "per_s")
"""Units to ask about when a number does not fit its own, the likeliest first."""
_NOT_MINUS = "Left is a direction, not a minus: give direction_deg = 180 and the number without its sign."
_ALL_SHOWN = 16
"""Words offered in full; of a longer list only the ends when one of them was hardly missed."""
_INSTRUMENTS = {
    "force": "the gauge",
    "length": "the tape",
    "angle": "the angle app",
    "time": "the clock",
    "rate": "your count",
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
    shape: Shape | None
    value: Any
    table: Any


def _spot(model: type[Measured], file: TomlFile, detail: ErrorDetails) -> _Spot:
    """Walk from the top of the file to the place that an error is about."""
    here: Any = file.data
    path: FieldPath = ()
    table_path: FieldPath = ()
    parents: list[tuple[type[Measured], str]] = []
    name = key = ""
    shape: Shape | None = None
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
    return _Spot(file, path, table_path, model, tuple(parents), name, key, shape, here, table)


def _problem(spot: _Spot, detail: ErrorDetails) -> Problem:
    kind = detail["type"]
    if kind == "missing":
        # a place in a list, not a key: the list is too short
        return (
            _missing(spot)
            if isinstance(detail["loc"][-1], str)
            else _wrong_length(spot, spot.file.where(spot.path), "")
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
    expected, remedy = _wanted(spot)
    return Problem(where, found, expected, remedy)


def _missing(spot: _Spot) -> Problem:
    keys = typed_keys(spot.model, spot.name)
    shape = spot.shape
    if shape is not None and shape.kind == "table":
        keys = (f"[[{spot.name}]]",)
    elif shape is not None and shape.kind in ("words", "choice"):
        choices = f", one of {', '.join(shape.choices)}" if shape.choices else ""
        keys = (f'{spot.name} = "..."{choices}',)
    described = spot.model.model_fields[spot.name].description
    meaning = f" ({described.rstrip('.')[:1].lower()}{described.rstrip('.')[1:]})" if described else ""
    return Problem(
        spot.file.where(spot.table_path),
        f"no {spot.name if len(keys) == 1 else _stem(spot.name)}",
        f"{_either(keys)}{meaning}",
        "Add it in the unit that you measured in." if len(keys) > 1 else "Add it.",
    )


def _unknown_key(spot: _Spot) -> Problem:
    where, key = spot.file.where(spot.path), spot.key
    parts = units.split_key(key)
    stems = {_stem(name): name for name in spot.model.model_fields if _has_units(spot.model, name)}
    if parts and parts[0] in stems:
        quantity = units.quantity_of(key)
        kind = quantity.name if quantity else "number"
        keys = typed_keys(spot.model, stems[parts[0]])
        wanted = units.quantity_of(stems[parts[0]])
        return Problem(
            where,
            f"{key}, which ends in a unit of {kind}",
            f"a unit of {wanted.name if wanted else 'another kind'}: {_either(keys)}",
            "Change the ending to the unit that you measured in.",
        )
    if key in stems:
        return Problem(where, f"{key} without a unit", _either(typed_keys(spot.model, stems[key])), "Add the unit.")
    owner = _owner(spot)
    if owner:
        inner = spot.parents[-1][1]
        return Problem(
            where,
            f"{key} inside [[{inner}]]",
            f"{key} in {owner}",
            f"Move the line up, above the first table that {owner} holds.",
        )
    return Problem(where, f"the unknown key {key}", f"a key that {_holder(spot)} knows", _nearest(spot.model, key))


def _owner(spot: _Spot) -> str:
    """The enclosing table that does know the key: a line typed below a sub-table belongs to that sub-table."""
    for place in range(len(spot.parents) - 1, -1, -1):
        model, _ = spot.parents[place]
        if canonical_key(spot.key, model.model_fields) in model.model_fields:
            return f"[[{spot.parents[place - 1][1]}]]" if place else "the top of the file"
    return ""


def _holder(spot: _Spot) -> str:
    return f"[[{spot.parents[-1][1]}]]" if spot.parents else "this file"


def _nearest(model: type[Measured], key: str) -> Text:
    """The nearest key; the shown units only when none is near."""
    offer = nearest(key, typed_names(model))
    if offer is not None:
        return offer
    shown = []
    for name in model.model_fields:
        quantity = units.quantity_of(name) if _has_units(model, name) else None
        shown.append(f"{_stem(name)}_{quantity.shown}" if quantity else name)
    return f"Known: {', '.join(shown)}."


def _out_of_range(spot: _Spot, where: Steps, found: str) -> Problem:
    shape = spot.shape
    assert shape is not None  # checked by the caller; told to the type checker
    low, high = shape.low, shape.high
    parts = units.split_key(spot.key) if _has_units(spot.model, spot.name) else None
    value = spot.value
    if isinstance(value, int | float) and value < 0 and low is not None and low >= 0 and parts and parts[1] != "s":
        remedy = _NOT_MINUS if _stem(spot.name) in ("force", "reach", "again_force", "at_reach") else "Drop the minus."
        return Problem(where, found, f"{_range(low, high, parts[1])}, without a sign", remedy)
    if parts is None:
        what = "" if not spot.name.endswith("_share") else " (a share: 1 is all, 0.5 is half)"
        remedy = "50 % is 0.5." if what and isinstance(value, int | float) and 1 < value <= 100 else ""
        if isinstance(value, int | float) and value < 0 and low is not None and low >= 0:
            remedy = "Drop the minus."
        return Problem(where, found, f"{number_text(low or 0)} to {number_text(high or 0)}{what}", remedy)
    return Problem(where, found, _range(low, high, parts[1]), _other_unit(value, spot, low, high))


def _range(low: float | None, high: float | None, ending: str) -> str:
    factor = units.to_si(1.0, ending)
    quantity = units.quantity_of(f"x_{ending}")
    label = quantity.unit(ending).label if quantity else ending
    gap = "" if ending == "deg" else " "
    return f"{number_text((low or 0.0) / factor)} to {number_text((high or 0.0) / factor)}{gap}{label}"


def _other_unit(value: Any, spot: _Spot, low: float | None, high: float | None) -> str:
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
        return "Look for a slipped decimal point."
    device = _INSTRUMENTS.get(quantity.name, "the instrument")
    thing = "list" if spot.shape is not None and spot.shape.or_single else "key"
    asked = [f"{unit.label} name the {thing} {stem}_{unit.ending}" for unit in fits]
    return f"If {device} shows {', if '.join(asked)}."


def _no_choice(shape: Shape, value: Any, where: Steps, found: str) -> Problem:
    words = (*shape.choices, *((NONE,) if shape.or_none else ()))
    offer = nearest(str(value), words)
    shown = words if len(words) <= _ALL_SHOWN or offer is None else (*words[:3], "...", words[-1])
    expected = f"one of {', '.join(shown)}"
    return Problem(where, found, expected, offer or "")


def _wrong_length(spot: _Spot, where: Steps, found: str) -> Problem:
    shape = spot.shape
    assert shape is not None  # checked by the caller; told to the type checker
    if shape.count is not None:
        number = len(spot.value) if isinstance(spot.value, list) else 0
        counted = f"{number} value{'' if number == 1 else 's'}" if isinstance(spot.value, list) else found
        return Problem(where, counted, f"{shape.count} values", _meaning(spot))
    if shape.kind == "table":
        return Problem(where, found, f"at least one [[{spot.name}]]", "")
    if shape.longest is not None and isinstance(spot.value, str) and len(spot.value) > shape.longest:
        return Problem(where, found, f"at most {shape.longest} characters", "Use a short code, never a name.")
    return Problem(where, "nothing between the quotes", "a word or two", "It is how this one is called on the sheet.")


def _meaning(spot: _Spot) -> str:
    described = spot.model.model_fields[spot.name].description if spot.name in spot.model.model_fields else None
    if spot.shape is not None and spot.shape.count == 3 and (spot.shape.low or 0) < 0:  # a point, not three sizes
        return f"Right, forward and up, in this order.{f' {described}' if described else ''}"
    return described or ""


def _wanted(spot: _Spot) -> tuple[str, str]:
    """What a field of this shape takes, for anything of the wrong type."""
    shape = spot.shape
    if shape is None:
        return "a key that this table knows", ""
    if shape.kind == "table":
        heading = ".".join([*(key for _, key in spot.parents), spot.key])
        if shape.many:
            return f"a table [[{heading}]]", "Double brackets, once for each."
        return f"a table [{heading}]", "Single brackets: there is only one." if isinstance(spot.value, list) else ""
    if shape.kind == "words" or shape.kind == "choice":
        word = f"words in quotes{', in a list' if shape.many else ''}"
        inner = (
            shortened(str(getattr(spot.value, "text", spot.value)), 30)
            if not isinstance(spot.value, list | dict)
            else "..."
        )
        example = f'["{inner}"]' if shape.many and spot.path[-1] == spot.key else f'"{inner}"'
        return word, f"Write {spot.key} = {example}." if spot.path[-1] == spot.key else f"Write {example}."
    if shape.kind == "yes or no":
        return "true or false", ""
    if shape.kind == "whole number":
        return "a whole number", ""
    if shape.count is not None:
        return f"a list of {shape.count} numbers", _meaning(spot)
    return ("a number or a list of numbers" if shape.or_single else "a number"), _meaning(spot)


def _stem(name: str) -> str:
    parts = units.split_key(name)
    return parts[0] if parts else name


def _has_units(model: type[Measured], name: str) -> bool:
    return len(typed_keys(model, name)) > 1 or (name in model.model_fields and units.split_key(name) is not None)


def _either(keys: tuple[str, ...]) -> str:
    return keys[0] if len(keys) == 1 else f"{', '.join(keys[:-1])} or {keys[-1]}"
