"""Points as they were typed in a room file, in metre, with the key that gave them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from stickwright import units
from stickwright.files.fields import typed_key
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import tables
from stickwright.model.measured import Measured
from stickwright.model.room import Edge, KeepOut, Landmark, Place, Room, Surface, Tube

__all__ = ["POINTS", "TypedPoint", "apart_m", "typed_point", "typed_points", "typed_row"]

POINTS: dict[str, tuple[type[Measured], tuple[str, ...]]] = {
    "tube": (Tube, ("from_m", "to_m")),
    "edge": (Edge, ("from_m", "to_m")),
    "surface": (Surface, ("corner_m",)),
    "keep_out": (KeepOut, ("low_m", "high_m")),
    "landmark": (Landmark, ("at_m",)),
    "place": (Place, ("at_m",)),
}
"""Each kind of thing in a room, and where its points stand."""


@dataclass(frozen=True)
class TypedPoint:
    """One point of one thing.

    Parameters
    ----------
    path : tuple
        Place of the thing.
    key : str
        As typed: 'from_mm'.
    at_m : tuple of 3 floats
        In metre.
    """

    path: FieldPath
    key: str
    at_m: tuple[float, float, float]


def typed_row(
    table: dict[str, Any], model: type[Measured], name: str, count: int
) -> tuple[str, tuple[float, ...]] | None:
    """Typed key and SI values of a row of plain finite numbers of the length that the noun wants."""
    key = typed_key(table, model, name)
    row = table.get(key) if key is not None else None
    if key is None or not isinstance(row, list) or len(row) != count:
        return None
    if not all(isinstance(item, int | float) and not isinstance(item, bool) and abs(item) < 1e15 for item in row):
        return None  # told where it was typed, in its own words
    ending = units.ending_of(key)
    return key, tuple(units.to_si(float(item), ending) for item in row)


def typed_point(path: FieldPath, table: dict[str, Any], model: type[Measured], name: str) -> TypedPoint | None:
    """One point of a table, when it is three plain numbers."""
    row = typed_row(table, model, name, 3)
    return TypedPoint(path, row[0], (row[1][0], row[1][1], row[1][2])) if row else None


def typed_points(room: TomlFile) -> Iterator[tuple[str, tuple[FieldPath, dict[str, Any]], list[TypedPoint]]]:
    """Kind, thing and points of everything that has a place in a room file.

    Parameters
    ----------
    room : TomlFile
        As parsed.
    """
    for kind, (model, names) in POINTS.items():
        for path, table in tables(room.data, kind):
            found = [typed_point(path, table, model, name) for name in names]
            yield kind, (path, table), [point for point in found if point is not None]
    hub = typed_point((), room.data, Room, "hub_at_m")
    if hub is not None:
        yield "hub", ((), room.data), [hub]


def apart_m(one: TypedPoint, other: TypedPoint) -> float:
    """Distance of two points."""
    return math.dist(one.at_m, other.at_m)
