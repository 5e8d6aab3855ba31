"""Values as they were typed, and what a validator would accept or lose without a word: a number in quotes, true for 1,
one number under two units.
"""

from __future__ import annotations

import datetime
from typing import Any

from stickwright import units
from stickwright.errors import Problem
from stickwright.model.measured import Measured, canonical_key, is_retired
from stickwright.records.fields import NONE, Shape, fields_of
from stickwright.records.plain_text import shortened
from stickwright.records.toml_lines import FieldPath, TomlFile

__all__ = ["as_typed", "cleaned"]

_LARGEST = 1e15
"""Nothing that is measured here comes near; beyond it, arithmetic would overflow."""


def as_typed(value: Any) -> str:
    """A value as it stands in the file."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return f'"{shortened(value, 40)}"'
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return shortened(f"[{', '.join(as_typed(item) for item in value[:12])}]") if value else "an empty list"
    if isinstance(value, int) and abs(value) > _LARGEST:
        return "a number of very many digits"
    return str(getattr(value, "text", value))


def cleaned(
    model: type[Measured], table: dict[str, Any], file: TomlFile, path: FieldPath, problems: dict[FieldPath, Problem]
) -> dict[str, Any]:
    """The same table in plain Python numbers; what pydantic would let pass is noted in `problems`.

    Parameters
    ----------
    model : type
        What the table is to be.
    table : dict
        As parsed.
    file : TomlFile
        Where it stands.
    path : tuple
        Its place.
    problems : dict
        Place -> problem; added to.
    """
    shapes = fields_of(model)
    seen: dict[str, str] = {}
    clean: dict[str, Any] = {}
    for key, value in table.items():
        if is_retired(key, model):
            continue
        name = canonical_key(key, model.model_fields)
        here = (*path, key)
        if name in seen:
            problems[here] = Problem(
                file.where(here),
                f"{key} = {as_typed(value)} beside {seen[name]} = {as_typed(table[seen[name]])}",
                "one of the two, they mean the same number",
                "Delete the one that does not belong to your gauge.",
            )
            continue
        seen[name] = key
        shape = shapes.get(name)
        clean[key] = value if shape is None else _clean_value(shape, value, file, here, problems)
    return clean


def _clean_value(shape: Shape, value: Any, file: TomlFile, path: FieldPath, problems: dict[FieldPath, Problem]) -> Any:
    if isinstance(value, list):
        return [_clean_value(shape, item, file, (*path, place), problems) for place, item in enumerate(value)]
    if shape.kind == "table":
        if shape.model is not None and isinstance(value, dict):
            return cleaned(shape.model, value, file, path, problems)
        return value
    if shape.kind in ("number", "whole number"):
        reason = _no_number(value, next((step for step in reversed(path) if isinstance(step, str)), ""))
        if reason:
            problems[path] = Problem(file.where(path), as_typed(value), reason[0], reason[1])
            return value
        return float(value) if isinstance(value, float) else value
    if shape.or_none and value == NONE:
        return None
    if shape.kind == "words" and isinstance(value, datetime.date) and not isinstance(value, datetime.datetime):
        return value.isoformat()  # TOML knows dates; a date typed without quotes means the same
    return value


def _no_number(value: Any, key: str) -> tuple[str, str] | None:
    """What was expected and what to do, when a value is not the number that it should be."""
    if isinstance(value, bool):
        return "a number", "true and false answer yes-or-no questions only."
    if isinstance(value, str):
        text = value.strip()
        if text.replace(",", ".", 1).lstrip("+-").replace(".", "", 1).isdigit():
            return "a number without quotes", f"Write {text.replace(',', '.')}."
        if text[:1].isdigit():
            if units.split_key(key) is None:
                return "a number alone", "Words go behind a #, or into note."
            return "a number alone", "The unit goes into the key, e.g. force_gf = 45."
        return "a number", "Leave the key out when it was not measured."
    if isinstance(value, float) and not abs(value) < float("inf"):
        return "a number", "Leave the key, or this one value, out when it was not measured."
    if isinstance(value, int | float) and abs(value) > _LARGEST:
        return "a number that can be measured", "Look for digits typed twice."
    return None
