"""A noun written as TOML: in the units that people use where that loses nothing, in SI where it would.

What equals its default is left out. A number read back gives the same bits.
"""

from __future__ import annotations

import json
import math
from collections.abc import Iterator
from typing import Any

from stickwright import units
from stickwright.files.fields import NONE, shape_of
from stickwright.model.measured import Measured

__all__ = ["file_text", "table_text"]


def file_text(noun: Measured) -> str:
    """A whole file: the noun's own fields at the top, its tables below."""
    return "\n".join(_lines(noun, "")).lstrip("\n") + "\n"


def table_text(noun: Measured, heading: str, *, exact: bool = True) -> list[str]:
    """Lines of one table under its heading, ``[[stick]]``.

    Parameters
    ----------
    noun : Measured
        What to write.
    heading : str
        With its brackets.
    exact : bool, default True
        Whether every bit must come back. If not, twelve digits in the units that people use.
    """
    return [heading, *_lines(noun, heading.strip("[]"), exact=exact)]


def _lines(noun: Measured, path: str, *, exact: bool = True) -> Iterator[str]:
    tables: list[tuple[str, Measured, bool]] = []
    for name, field in type(noun).model_fields.items():
        value = getattr(noun, name)
        shape = shape_of(field)
        if value is None and shape.or_none:
            yield f"{name} = {_value(NONE)}"
            continue
        if value is None or (not field.is_required() and value == field.default):
            continue
        if shape.kind == "table" and value != ():
            tables += [(name, item, True) for item in value] if shape.many else [(name, value, False)]
        elif shape.kind == "number":
            key, shown = _in_people_units(name, value, exact=exact)
            yield f"{key} = {_value(shown)}"
        else:
            yield f"{name} = {_value(value)}"
    for name, item, many in tables:
        full = f"{path}.{name}" if path else name
        yield ""
        yield f"[[{full}]]" if many else f"[{full}]"
        yield from _lines(item, full, exact=exact)


def _in_people_units(name: str, value: Any, *, exact: bool) -> tuple[str, Any]:
    """Key and number in the unit that people read, if it comes back to the same bits; else as declared."""
    quantity = units.quantity_of(name)
    parts = units.split_key(name)
    if quantity is None or parts is None:
        return name, value
    numbers = list(value) if isinstance(value, tuple) else [value]
    if exact:
        shown = [_typed(number, quantity.shown) for number in numbers]
    else:
        shown = [float(f"{number / units.to_si(1.0, quantity.shown):.12g}") for number in numbers]
    if any(number is None for number in shown):
        return name, value
    return f"{parts[0]}_{quantity.shown}", shown if isinstance(value, tuple) else shown[0]


def _typed(value_si: float, ending: str) -> float | None:
    """The number that, typed with this unit, gives `value_si` again; the shortest of its neighbours."""
    near = value_si / units.to_si(1.0, ending)
    for candidate in (float(f"{near:.12g}"), near, math.nextafter(near, math.inf), math.nextafter(near, -math.inf)):
        if units.to_si(candidate, ending) == value_si:
            return candidate
    return None


def _value(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return repr(int(value)) if value.is_integer() and abs(value) < 1e15 and str(value)[0] != "-" else repr(value)
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    if isinstance(value, tuple | list):
        return f"[{', '.join(_value(item) for item in value)}]"
    return str(value)
