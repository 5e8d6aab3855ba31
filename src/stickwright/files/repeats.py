"""Repeats as they were typed: gathered with their places, and what is odd about them whatever they measure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from stickwright import units
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.warnings import Warnings
from stickwright.files.plausible_ranges import TypedList
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_tables import query, steps_of
from stickwright.files.typed_values import as_typed
from stickwright.model.recorded import Finding

__all__ = ["list_warnings", "typed_lists"]

_SPREAD = 8.0
"""Repeats of one direction that differ by more were hardly read in the same unit; scatter is about 15 %."""
_FINE = 10.0
"""A gauge is fine enough for scatter to show when a reading is this many of its steps."""


def typed_lists(
    file: TomlFile, path: FieldPath, table: dict[str, Any], stems: tuple[str, ...], direction: Message
) -> Iterator[TypedList]:
    """The numbers of a table whose keys have one of these stems.

    Parameters
    ----------
    file : TomlFile
        Where they were typed.
    path : tuple
        Place of the table.
    table : dict
        As typed.
    stems : tuple of str
        Keys without their unit: 'force', 'reach'.
    direction : Message
        'at 90°', 'of the press'.
    """
    for key, value in table.items():
        parts = units.split_key(key)
        if parts is None or parts[0] not in stems:
            continue
        items = value if isinstance(value, list) else [value]
        numbers = [
            (place, float(item))
            for place, item in enumerate(items)
            if isinstance(item, int | float) and not isinstance(item, bool) and abs(item) < 1e15
        ]
        if numbers:
            yield TypedList(
                key,
                tuple(number for _, number in numbers),
                tuple(as_typed(items[place]) for place, _ in numbers),
                tuple(
                    file.where((*path, key, place) if isinstance(value, list) else (*path, key)) for place, _ in numbers
                ),
                direction,
            )


def list_warnings(
    where: Text | tuple[Text, ...], lists: Iterable[TypedList], gauge_step_n: float | None, *, press: bool = False
) -> Iterator[Finding]:
    """Repeats that are all alike, or too far apart to be of one unit.

    Parameters
    ----------
    where : Message or str, or tuple of such
        The site.
    lists : iterable of TypedList
        Repeats.
    gauge_step_n : float or None
        Step of the gauge, N: forces of a few steps are alike for no bad reason.
    press : bool, default False
        Whether they are of a press, which has no other directions.
    """
    same = []
    for typed in lists:
        positive = [value for value in typed.values if value > 0]
        fine = gauge_step_n is None or typed.sort != "force" or min(typed.si) >= _FINE * gauge_step_n
        if typed.sort == "force" and len(typed.values) >= 3 and len(set(typed.values)) == 1 and positive and fine:
            same.append(typed)
        elif len(positive) > 1 and max(positive) > _SPREAD * min(positive):
            low, high = (Name(typed.texts[typed.values.index(pick(positive))]) for pick in (min, max))
            told = message(Warnings.repeats_apart, at=typed.direction, lowest=low, highest=high)
            yield query("repeats_apart", typed.places[0], told)
    if same:
        directions = tuple(dict.fromkeys(typed.direction for typed in same))
        first_at = steps_of(same[0].places[0])
        told = message(Warnings.identical_repeats, at=directions, first_at=first_at, press=press)
        yield query("identical_repeats", where, told)
