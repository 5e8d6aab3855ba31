"""What a body part usually does: ranges for a typing check, not norms.

Comfortable force and comfortable travel by body part, as fitters know them from practice (from
memory, no published source; see docs/case-folder.md). A number outside its range is asked about;
only ten times the top of it is refused. Zero is always allowed: it says "cannot".
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright import units
from stickwright.errors import Problem
from stickwright.model.recorded import Finding
from stickwright.records.plain_text import number_text
from stickwright.records.toml_lines import Steps

__all__ = ["BANDS", "TypedList", "likelier_unit", "unlikely"]

Sort = Literal["force", "length"]
_WORDS = {"force": "comfortable force", "length": "comfortable travel"}
_ASKED = {"force": ("gf", "n", "kgf", "lb", "oz", "mn"), "length": ("mm", "cm", "inch", "m")}
"""Units to ask about; centinewton is left out because its figures look like grams-force."""
_DEVICE = {"force": "the gauge", "length": "the tape"}
_REFUSED_BEYOND = 10.0
"""Times the top of the range."""
_WELL_ABOVE = 2.0
_WELL_BELOW: dict[Sort, float] = {"force": 8.0, "length": 3.0}
"""Factors beyond the range from which another unit is suspected. Weak players and small hands are the usual ones here, so a
force may lie far below what is usual and be right (common practice, no source)."""

_ROWS: dict[str, tuple[float, float, float, float]] = {  # N, N, mm, mm
    "fingertip": (0.1, 5, 3, 25),
    "thumb": (0.2, 8, 4, 20),
    "hand": (2, 40, 30, 150),
    "forearm": (3, 40, 20, 120),
    "elbow": (3, 40, 20, 120),
    "chin": (0.5, 6, 5, 20),
    "lip": (0.05, 1, 2, 8),
    "cheek": (0.05, 1, 2, 8),
    "head": (2, 20, 10, 50),
    "knee": (5, 60, 20, 100),
    "thigh": (5, 60, 20, 100),
    "foot": (1, 30, 10, 60),
    "toe": (1, 30, 10, 60),
}


def _bands() -> dict[tuple[str, Sort], tuple[float, float]]:
    bands: dict[tuple[str, Sort], tuple[float, float]] = {}
    for part, (weakest_n, strongest_n, shortest_mm, longest_mm) in _ROWS.items():
        bands[part, "force"] = (weakest_n, strongest_n)
        bands[part, "length"] = (units.to_si(shortest_mm, "mm"), units.to_si(longest_mm, "mm"))
    return bands


BANDS: dict[tuple[str, Sort], tuple[float, float]] = _bands()
"""(part, 'force' or 'length') -> lowest and highest usual value, N or m. Parts without an entry are not checked."""


@dataclass(frozen=True)
class TypedList:
    """Repeats as they were typed, wherever they stand.

    Parameters
    ----------
    key : str
        Key or column with its unit: 'force_gf'.
    values : tuple of float
        As typed, not converted.
    texts : tuple of str
        The same, as written.
    places : tuple of Steps
        File, line or row and field of each value.
    direction : str
        In words or degrees, for sentences.
    """

    key: str
    values: tuple[float, ...]
    texts: tuple[str, ...]
    places: tuple[Steps, ...]
    direction: str

    @property
    def si(self) -> tuple[float, ...]:
        ending = units.ending_of(self.key)
        return tuple(units.to_si(value, ending) for value in self.values)

    @property
    def sort(self) -> Sort | None:
        quantity = units.quantity_of(self.key)
        return quantity.name if quantity is not None and quantity.name in ("force", "length") else None  # type: ignore[return-value]


def likelier_unit(values: Sequence[float], ending: str, band: tuple[float, float], sort: Sort) -> str | None:
    """Ending of the unit in which all values would be usual, when all are far from it as typed.

    Parameters
    ----------
    values : sequence of float
        As typed, above zero.
    ending : str
        Unit they were typed in.
    band : tuple of float
        Usual range, SI.
    sort : {"force", "length"}
        Kind of number.

    Examples
    --------
    >>> likelier_unit([45.0, 52.0], "n", (0.1, 5.0), "force"), likelier_unit([0.4, 0.3], "mm", (0.003, 0.025), "length")
    ('gf', 'inch')
    >>> likelier_unit([0.45, 0.52], "n", (0.1, 5.0), "force") is None
    True

    A weak hand is a weak hand, and not one that was read in kilograms-force:

    >>> likelier_unit([0.4, 0.6], "n", (2.0, 40.0), "force") is None
    True
    """
    low, high = band
    typed = [units.to_si(value, ending) for value in values]
    far = _WELL_BELOW[sort]
    if not typed or not (
        all(value > _WELL_ABOVE * high for value in typed) or all(far * value < low for value in typed)
    ):
        return None
    return _fitting_unit(values, ending, band, sort)


def _fitting_unit(values: Sequence[float], ending: str, band: tuple[float, float], sort: Sort) -> str | None:
    """Ending of the other unit in which all values would be usual, the nearest to the middle of the range."""
    low, high = band
    middle = math.sqrt(low * high)
    best: tuple[float, str] | None = None
    for other in _ASKED[sort]:
        read = [units.to_si(value, other) for value in values]
        if other == ending or not all(low <= value <= high for value in read):
            continue
        distance = abs(math.log(statistics.median(read) / middle))
        if best is None or distance < best[0]:
            best = (distance, other)
    return best[1] if best else None


def unlikely(part: str, where: Steps, lists: Iterable[TypedList]) -> list[Problem | Finding]:
    """What is refused and what is asked about the forces and travels of one site.

    Parameters
    ----------
    part : str
        Body part.
    where : Steps
        The site, for questions: ``player.toml, line 4, site "chin"``.
    lists : iterable of TypedList
        Everything typed of force and length there.

    Returns
    -------
    list of Problem or Finding
        A Problem beyond ten times the usual; a query when all values would be usual in another
        unit, or when some lie outside the usual range.
    """
    noticed: list[Problem | Finding] = []
    grouped: dict[str, list[TypedList]] = {}
    for typed in lists:
        if typed.sort is not None:
            grouped.setdefault(typed.key.rpartition("again_")[2].rpartition("at_")[2], []).append(typed)
    for group in grouped.values():
        sort = group[0].sort
        band = BANDS.get((part, sort)) if sort else None
        if sort and band:
            noticed += _about_group(part, where, group, band, sort)
    return noticed


@dataclass(frozen=True)
class _Value:
    typed: float
    text: str
    place: Steps
    si: float


def _about_group(
    part: str, where: Steps, group: list[TypedList], band: tuple[float, float], sort: Sort
) -> list[Problem | Finding]:
    key = group[0].key
    ending = units.ending_of(key)
    values = [
        _Value(*row)
        for typed in group
        for row in zip(typed.values, typed.texts, typed.places, typed.si, strict=True)
        if math.isfinite(row[0]) and row[0] > 0
    ]
    low, high = band
    refused = [value for value in values if value.si > _REFUSED_BEYOND * high]
    other = likelier_unit([value.typed for value in values], ending, band, sort)
    if refused and not (other and len(refused) > 1):
        return [_too_much(value, part, key, band, sort) for value in refused]
    if other:
        return [_other_unit(values, where, key, other, refused=refused, part=part, band=band, sort=sort)]
    noticed: list[Problem | Finding] = []
    for side, some in (
        ("below", [value for value in values if value.si < low]),
        ("above", [value for value in values if value.si > high]),
    ):
        if some:
            noticed.append(_unusual(some, where, side, part, ending, band, sort))
    return noticed


def _shown_range(band: tuple[float, float], ending: str, sort: Sort) -> str:
    factor = units.to_si(1.0, ending)
    return f"{number_text(band[0] / factor)} to {number_text(band[1] / factor)} {_label(ending, sort)}"


def _label(ending: str, sort: Sort) -> str:
    return units.QUANTITIES[sort].unit(ending).label


def _in(value: _Value, other: str, sort: Sort) -> str:
    quantity = units.QUANTITIES[sort]
    return f"{value.text} -> {units.spoken(units.to_si(value.typed, other), quantity.shown)}"


def _too_much(value: _Value, part: str, key: str, band: tuple[float, float], sort: Sort) -> Problem:
    ending = units.ending_of(key)
    other = likelier_unit([value.typed], ending, band, sort)
    stem = key.removesuffix(f"_{ending}")
    remedy = (
        f"If {_DEVICE[sort]} shows {_long_name(other, sort)} name the list {stem}_{other} ({_in(value, other, sort)})."
        if other
        else "Look for a slipped decimal point."
    )
    limit = number_text(_REFUSED_BEYOND * band[1] / units.to_si(1.0, ending))
    return Problem(
        value.place,
        f"{value.text} {_label(ending, sort)}",
        f"0 to {limit} {_label(ending, sort)} for a {part} (usual {_shown_range(band, ending, sort)})",
        remedy,
    )


def _long_name(ending: str, sort: Sort) -> str:
    names = {
        "gf": "grams-force", "kgf": "kilograms-force", "lb": "pounds-force", "oz": "ounces-force", "mn": "millinewton",
        "n": "newton", "mm": "millimetres", "cm": "centimetres", "inch": "inches", "m": "metres",
    }  # fmt: skip
    return names.get(ending, _label(ending, sort))


def _other_unit(
    values: list[_Value],
    where: Steps,
    key: str,
    other: str,
    *,
    refused: list[_Value],
    part: str,
    band: tuple[float, float],
    sort: Sort,
) -> Problem | Finding:
    ending = units.ending_of(key)
    stem = key.removesuffix(f"_{ending}")
    smallest, largest = (pick(values, key=lambda value: value.typed) for pick in (min, max))
    remedy = (
        f"These look like {_long_name(other, sort)} ({_in(smallest, other, sort)}): if so, name the "
        f"{'lists' if len(values) > 1 else 'list'} {stem}_{other}. Nothing was converted."
    )
    found = (
        f"{len(values)} values from {smallest.text} to {largest.text} {_label(ending, sort)}"
        if len(values) > 1
        else f"{smallest.text} {_label(ending, sort)}"
    )
    usual = f"{_shown_range(band, ending, sort)}, the usual {_WORDS[sort]} of a {part}"
    if refused:
        return Problem(refused[0].place, found, usual, remedy)
    return Finding("query", "unit", str(Problem(f"{where}, {key}", found, usual, remedy)))


def _unusual(
    some: list[_Value], where: Steps, side: str, part: str, ending: str, band: tuple[float, float], sort: Sort
) -> Finding:
    smallest, largest = (pick(some, key=lambda value: value.typed) for pick in (min, max))
    span = smallest.text if smallest.text == largest.text else f"{smallest.text} to {largest.text}"
    count = "one value" if len(some) == 1 else f"{len(some)} values"
    other = _fitting_unit([value.typed for value in some], ending, band, sort)
    as_other = f" (as {_long_name(other, sort)}: {_in(smallest, other, sort)})" if other else ""
    return Finding(
        "query",
        "unusual",
        f"{where}: {count} of {_WORDS[sort]} ({span} {_label(ending, sort)}) {'lies' if len(some) == 1 else 'lie'} "
        f"{side} what is usual for a {part} ({_shown_range(band, ending, sort)}), first at {some[0].place}. "
        f"Right for this player? Then leave it. If not, check the unit{as_other} and the decimal point.",
    )
