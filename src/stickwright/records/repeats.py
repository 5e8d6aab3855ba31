"""Repeats as they were typed: gathered with their places, and what is odd about them whatever they measure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from stickwright import units
from stickwright.model.recorded import Finding
from stickwright.records.bands import TypedList
from stickwright.records.toml_lines import FieldPath, Steps, TomlFile
from stickwright.records.typed_values import as_typed

__all__ = ["list_doubts", "typed_lists"]

_SPREAD = 8.0
"""Repeats of one direction that differ by more were hardly read in the same unit; scatter is about 15 %."""
_FINE = 10.0
"""A gauge is fine enough for scatter to show when a reading is this many of its steps."""


def typed_lists(
    file: TomlFile, path: FieldPath, table: dict[str, Any], stems: tuple[str, ...], direction: str
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
    direction : str
        For sentences: '90°', 'the press'.
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


def list_doubts(
    where: Steps,
    lists: Iterable[TypedList],
    gauge_step_n: float | None,
    instead: str = "Scatter will be taken from the other directions.",
) -> Iterator[Finding]:
    """Repeats that are all alike, or too far apart to be of one unit.

    Parameters
    ----------
    where : Steps
        The site.
    lists : iterable of TypedList
        Repeats.
    gauge_step_n : float or None
        Step of the gauge, N: forces of a few steps are alike for no bad reason.
    instead : str
        What is done about repeats that are all alike.
    """
    same = []
    for typed in lists:
        positive = [value for value in typed.values if value > 0]
        fine = gauge_step_n is None or typed.sort != "force" or min(typed.si) >= _FINE * gauge_step_n
        if typed.sort == "force" and len(typed.values) >= 3 and len(set(typed.values)) == 1 and positive and fine:
            same.append(typed)
        elif len(positive) > 1 and max(positive) > _SPREAD * min(positive):
            low, high = (typed.texts[typed.values.index(pick(positive))] for pick in (min, max))
            yield Finding(
                "query",
                "repeats_apart",
                f"{typed.places[0]}: the repeats at {typed.direction} run from {low} to {high}. A slipped decimal "
                "point, a decimal comma (0,44 in a list is two numbers), or one in another unit?",
            )
    if same:
        directions = ", ".join(dict.fromkeys(typed.direction for typed in same))
        yield Finding(
            "query",
            "identical_repeats",
            f"{where}: all repeats are identical at {directions}, first at {same[0].places[0]}. Copied or rounded? "
            f"{instead}".rstrip(),
        )
