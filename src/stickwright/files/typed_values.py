"""Values as they were typed, and what a validator would accept or lose without a word: a number in quotes, true for 1,
one number under two units.
"""

from __future__ import annotations

import datetime
from typing import Any

from stickwright import units
from stickwright.codes.expected import Expected
from stickwright.codes.file_keys import FileKeys
from stickwright.codes.message import Message, Name, message
from stickwright.codes.remedies import Remedies
from stickwright.codes.warnings import Warnings
from stickwright.errors import Problem
from stickwright.files.fields import NONE, FieldShape, fields_of
from stickwright.files.plain_text import shortened
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.model.measured import Measured, canonical_key, is_retired

__all__ = ["as_typed", "cleaned"]

_LARGEST = 1e15
"""Nothing that is measured here comes near; beyond it, arithmetic would overflow."""


def as_typed(value: Any) -> str:
    """A value as it stands in the file, in one line."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return f'"{shortened(value, 40)}"'
    if isinstance(value, dict):
        return "{...}" if value else "{}"
    if isinstance(value, list):
        return shortened(f"[{', '.join(as_typed(item) for item in value[:12])}]")
    if isinstance(value, int) and abs(value) > _LARGEST:
        # beyond some thousand digits, Python refuses to write a number out
        return f"{value // 10 ** max(0, (value.bit_length() * 3) // 10 - 12)}..."
    return str(getattr(value, "text", value))


def _assigned(key: str, value: Any) -> Message:
    return message(Warnings.assigned, key=Name(key), value=as_typed(value))


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
                message(Warnings.beside, one=_assigned(key, value), other=_assigned(seen[name], table[seen[name]])),
                message(Expected.one_of_two),
                message(Remedies.delete_other_unit),
            )
            continue
        seen[name] = key
        shape = shapes.get(name)
        clean[key] = value if shape is None else _clean_value(shape, value, file, here, problems)
    return clean


def _clean_value(
    shape: FieldShape, value: Any, file: TomlFile, path: FieldPath, problems: dict[FieldPath, Problem]
) -> Any:
    if isinstance(value, list):
        return [_clean_value(shape, item, file, (*path, place), problems) for place, item in enumerate(value)]
    if shape.kind == "table":
        if shape.model is not None and isinstance(value, dict):
            return cleaned(shape.model, value, file, path, problems)
        return value
    if shape.kind in ("number", "whole"):
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


def _no_number(value: Any, key: str) -> tuple[Message, Message] | None:
    """What was expected and what to do, when a value is not the number that it should be."""
    number = message(Expected.number, unit=None)
    if isinstance(value, bool):
        return number, message(FileKeys.true_is_no_number)
    if isinstance(value, str):
        text = value.strip()
        if text.replace(",", ".", 1).lstrip("+-").replace(".", "", 1).isdigit():
            return message(Expected.number_unquoted), message(Remedies.write, typed=Name(text.replace(",", ".")))
        if text[:1].isdigit():
            alone = message(Expected.number_alone, unit=None)
            return alone, message(Remedies.words_in_note if units.split_key(key) is None else Remedies.unit_in_key)
        return number, message(Remedies.leave_out_key, or_value=False)
    if isinstance(value, float) and not abs(value) < float("inf"):
        return number, message(Remedies.leave_out_key, or_value=True)
    if isinstance(value, int | float) and abs(value) > _LARGEST:
        return message(Expected.number_measurable), message(Remedies.digits)
    return None
