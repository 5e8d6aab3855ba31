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
from stickwright.codes.amounts import TYPED_UNITS, Amounts, TypedUnit
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.sites import Part
from stickwright.codes.usual_values import Sort, UsualValues
from stickwright.errors import Problem
from stickwright.files.typed_tables import Noticed, query, steps_of
from stickwright.model.recorded import Finding

__all__ = ["BANDS", "TypedList", "likelier_unit", "unlikely"]

_ASKED: dict[Sort, tuple[TypedUnit, ...]] = {
    "force": ("gf", "n", "kgf", "lb", "oz", "mn"),
    "length": ("mm", "cm", "inch", "m"),
}
"""Units to ask about; centinewton is left out because its figures look like grams-force."""
_REFUSED_BEYOND = 10.0
"""Times the top of the range."""
_WELL_ABOVE = 2.0
_WELL_BELOW: dict[Sort, float] = {"force": 8.0, "length": 3.0}
"""Factors beyond the range from which another unit is suspected. Weak players and small hands are the usual ones here, so a
force may lie far below what is usual and be right (common practice, no source)."""

_ROWS: dict[Part, tuple[float, float, float, float]] = {  # N, N, mm, mm
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


def _bands() -> dict[tuple[Part, Sort], tuple[float, float]]:
    bands: dict[tuple[Part, Sort], tuple[float, float]] = {}
    for part, (weakest_n, strongest_n, shortest_mm, longest_mm) in _ROWS.items():
        bands[part, "force"] = (weakest_n, strongest_n)
        bands[part, "length"] = (units.to_si(shortest_mm, "mm"), units.to_si(longest_mm, "mm"))
    return bands


BANDS: dict[tuple[Part, Sort], tuple[float, float]] = _bands()
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
    places : tuple
        File, line or row and field of each value.
    direction : Message
        'at 90°', 'of the press'.
    """

    key: str
    values: tuple[float, ...]
    texts: tuple[str, ...]
    places: tuple[Text | tuple[Text, ...], ...]
    direction: Message

    @property
    def si(self) -> tuple[float, ...]:
        ending = units.ending_of(self.key)
        return tuple(units.to_si(value, ending) for value in self.values)

    @property
    def sort(self) -> Sort | None:
        quantity = units.quantity_of(self.key)
        return quantity.name if quantity is not None and quantity.name in ("force", "length") else None  # type: ignore[return-value]


def likelier_unit(values: Sequence[float], ending: str, band: tuple[float, float], sort: Sort) -> TypedUnit | None:
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


def _fitting_unit(values: Sequence[float], ending: str, band: tuple[float, float], sort: Sort) -> TypedUnit | None:
    """Ending of the other unit in which all values would be usual, the nearest to the middle of the range."""
    low, high = band
    middle = math.sqrt(low * high)
    best: tuple[float, TypedUnit] | None = None
    for other in _ASKED[sort]:
        read = [units.to_si(value, other) for value in values]
        if other == ending or not all(low <= value <= high for value in read):
            continue
        distance = abs(math.log(statistics.median(read) / middle))
        if best is None or distance < best[0]:
            best = (distance, other)
    return best[1] if best else None


def unlikely(part: str, where: Text | tuple[Text, ...], lists: Iterable[TypedList]) -> list[Noticed]:
    """What is refused and what is asked about the forces and travels of one site.

    Parameters
    ----------
    part : str
        Body part.
    where : Message or str, or tuple of such
        The site, for questions: ``player.toml, line 4, site "chin"``.
    lists : iterable of TypedList
        Everything typed of force and length there.

    Returns
    -------
    list of Problem or Finding
        A Problem beyond ten times the usual; a query when all values would be usual in another
        unit, or when some lie outside the usual range.
    """
    noticed: list[Noticed] = []
    grouped: dict[str, list[TypedList]] = {}
    for typed in lists:
        if typed.sort is not None:
            grouped.setdefault(typed.key.rpartition("again_")[2].rpartition("at_")[2], []).append(typed)
    known = next((one for one in _ROWS if one == part), None)
    for group in grouped.values():
        sort = group[0].sort
        if sort and known:
            noticed += _about_group(where, group, _Usual(known, sort, group[0].key, BANDS[known, sort]))
    return noticed


@dataclass(frozen=True)
class _Value:
    typed: float
    text: str
    place: Text | tuple[Text, ...]
    si: float


def _amount(value_si: float, unit: TypedUnit, sort: Sort) -> Message:
    if sort == "force":
        return message(Amounts.force, force_n=value_si, unit=unit)
    return message(Amounts.length, length_m=value_si, unit=unit)


@dataclass(frozen=True)
class _Usual:
    """What is usual of a part, in the unit of a key."""

    part: Part
    sort: Sort
    key: str
    band: tuple[float, float]

    @property
    def unit(self) -> TypedUnit:
        ending = units.ending_of(self.key)
        return next(unit for unit in TYPED_UNITS if unit == ending)

    @property
    def range(self) -> Message:
        low, high = self.band
        if self.sort == "force":
            return message(Amounts.forces, low_n=low, high_n=high, unit=self.unit)
        return message(Amounts.lengths, low_m=low, high_m=high, unit=self.unit)

    def words(self) -> Message:
        return message(UsualValues.usual, part=self.part, sort=self.sort, usual=self.range)

    def key_in(self, unit: TypedUnit) -> Name:
        return Name(f"{self.key.removesuffix(f'_{self.unit}')}_{unit}")

    def converted(self, value: _Value, unit: TypedUnit) -> Message:
        """What a value would be if it had been typed in another unit, in the unit that people read."""
        shown: TypedUnit = "n" if self.sort == "force" else "mm"
        return _amount(units.to_si(value.typed, unit), shown, self.sort)

    def typed(self, values: list[_Value]) -> Message:
        smallest, largest = (Name(pick(values, key=lambda value: value.typed).text) for pick in (min, max))
        return message(Amounts.typed, lowest=smallest, highest=largest, unit=self.unit)

    def found(self, values: list[_Value]) -> Message:
        return message(UsualValues.values, count=len(values), typed=self.typed(values))


def _about_group(where: Text | tuple[Text, ...], group: list[TypedList], usual: _Usual) -> list[Noticed]:
    values = [
        _Value(*row)
        for typed in group
        for row in zip(typed.values, typed.texts, typed.places, typed.si, strict=True)
        if math.isfinite(row[0]) and row[0] > 0
    ]
    low, high = usual.band
    refused = [value for value in values if value.si > _REFUSED_BEYOND * high]
    other = likelier_unit([value.typed for value in values], usual.unit, usual.band, usual.sort)
    if refused and not (other and len(refused) > 1):
        return [_too_much(value, usual) for value in refused]
    if other:
        return [_other_unit(values, where, other, usual, refused)]
    below, above = [value for value in values if value.si < low], [value for value in values if value.si > high]
    noticed: list[Noticed] = []
    if below:
        noticed.append(_unusual(below, where, "below", usual))
    if above:
        noticed.append(_unusual(above, where, "above", usual))
    return noticed


def _too_much(value: _Value, usual: _Usual) -> Problem:
    other = likelier_unit([value.typed], usual.unit, usual.band, usual.sort)
    if other:
        remedy = message(
            UsualValues.gauge_shows,
            sort=usual.sort,
            unit=other,
            key=usual.key_in(other),
            typed=Name(value.text),
            converted=usual.converted(value, other),
        )
    else:
        remedy = message(UsualValues.decimal_point)
    limit = _amount(_REFUSED_BEYOND * usual.band[1], usual.unit, usual.sort)
    expected = message(UsualValues.limit, part=usual.part, limit=limit, usual=usual.range)
    return Problem(value.place, usual.typed([value]), expected, remedy)


def _other_unit(
    values: list[_Value], where: Text | tuple[Text, ...], other: TypedUnit, usual: _Usual, refused: list[_Value]
) -> Noticed:
    smallest = min(values, key=lambda value: value.typed)
    remedy = message(
        UsualValues.look_like,
        count=len(values),
        unit=other,
        key=usual.key_in(other),
        typed=Name(smallest.text),
        converted=usual.converted(smallest, other),
    )
    if refused:
        return Problem(refused[0].place, usual.found(values), usual.words(), remedy)
    told = message(UsualValues.other_unit, found=usual.found(values), usual=usual.words(), remedy=remedy)
    return query("unit", (*steps_of(where), usual.key), told)


def _unusual(
    some: list[_Value], where: Text | tuple[Text, ...], side: Literal["below", "above"], usual: _Usual
) -> Finding:
    other = _fitting_unit([value.typed for value in some], usual.unit, usual.band, usual.sort)
    smallest = min(some, key=lambda value: value.typed)
    told = message(
        UsualValues.unusual,
        count=len(some),
        sort=usual.sort,
        typed=usual.typed(some),
        side=side,
        part=usual.part,
        usual=usual.range,
        first_at=steps_of(some[0].place),
        unit=other,
        as_unit=usual.converted(smallest, other) if other else None,
    )
    return query("unusual", where, told)
