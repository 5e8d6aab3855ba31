"""Keys of earlier versions of the program in a file that somebody kept: read over, and told."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stickwright.codes.message import message
from stickwright.codes.warnings import Warnings
from stickwright.files.fields import fields_of
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import told_at
from stickwright.model.measured import Measured, canonical_key, is_retired
from stickwright.model.recorded import Finding

__all__ = ["retired_key_notes", "retired_paths"]


def retired_key_notes(model: type[Measured], file: TomlFile) -> list[Finding]:
    """One note for each key of the file that the program no longer uses.

    Parameters
    ----------
    model : type
        What the file is to be.
    file : TomlFile
        The file as parsed.
    """
    places: dict[str, list[FieldPath]] = {}
    for path in retired_paths(model, file.data):
        places.setdefault(str(path[-1]), []).append(path)
    return [
        Finding(
            "note",
            "retired_key",
            told_at(file.where(paths[0]), message(Warnings.retired_key, more=len(paths) - 1)),
        )
        for paths in places.values()
    ]


def retired_paths(model: type[Measured], table: dict[str, Any], path: FieldPath = ()) -> Iterator[FieldPath]:
    """Where a file holds keys that the program no longer uses.

    Parameters
    ----------
    model : type
        What the table is to be.
    table : dict
        As parsed.
    path : tuple
        Of the table.
    """
    shapes = fields_of(model)
    for key, value in table.items():
        here = (*path, key)
        if is_retired(key, model):
            yield here
            continue
        shape = shapes.get(canonical_key(key, model.model_fields))
        if shape is None or shape.model is None:
            continue
        for place, item in enumerate(value if isinstance(value, list) else [value]):
            if isinstance(item, dict):
                yield from retired_paths(shape.model, item, (*here, place) if isinstance(value, list) else here)
