"""Gauge readings of one site: a CSV with one reading a row, in the order taken."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stickwright import units
from stickwright.codes.doubts import Doubts
from stickwright.codes.message import Name, message
from stickwright.errors import BadInput, Problem
from stickwright.model.player import DirectionReading
from stickwright.records.bands import TypedList
from stickwright.records.held import Place
from stickwright.records.plain_text import read_text
from stickwright.records.tables import Cell, Table, known_header, table_of, told_briefly

__all__ = ["GaugeReadings", "gauge_of", "gauge_text", "read_gauge"]

_WHAT = "gauge readings"
HEADER = "direction_deg,force_n,reach_mm"
_FULL_TURN = 2 * math.pi
_LARGEST = {"force": 500.0, "reach": 1.0}  # N and m, as in the player's own readings


@dataclass(frozen=True)
class GaugeReadings:
    """What a gauge file holds.

    Parameters
    ----------
    reading : tuple of DirectionReading
        One for each direction, in the order in which they were first taken; rows of one direction are its repeats.
    again_force_n : tuple of float
        The first direction, when it was taken again at the end, after others: shows tiring, not pooled.
    lists : tuple of TypedList
        The same as typed, for questions about units.
    """

    reading: tuple[DirectionReading, ...]
    again_force_n: tuple[float, ...]
    lists: tuple[TypedList, ...]


@dataclass(frozen=True)
class _Row:
    direction: Cell
    force: Cell | None
    reach: Cell | None


def read_gauge(path: Place, shown: str | None = None) -> GaugeReadings:
    """Read gauge readings of one site.

    Columns: a direction (``direction_deg`` or ``direction_rad``) and ``force_...``, ``reach_...`` or
    both, each in any unit of its kind. A cell may stay empty when nothing was measured.

    Parameters
    ----------
    path : Place
        CSV file.
    shown : str, optional
        Its name in sentences; the file's own name otherwise.

    Returns
    -------
    GaugeReadings
        Readings in SI. When the last rows are of the first direction again, after others, their
        forces become `again_force_n`; their reaches stay repeats of that direction.

    Raises
    ------
    BadInput
        Not readable, wrong headers, bad cells (row as in a spreadsheet), more than 10,000 rows.
    """
    shown = shown or path.name
    return gauge_of(read_text(path, shown, _WHAT), shown)


def gauge_of(text: str, shown: str) -> GaugeReadings:
    """The same from a text; see `read_gauge`."""
    check = known_header({"direction": "angle", "force": "force", "reach": "length"}, ())
    table = table_of(text, shown, _WHAT, HEADER, check)
    direction, force, reach = (_column(table, stem) for stem in ("direction", "force", "reach"))
    problems = []
    if direction is None:
        problems.append(Problem(f"{shown}, row 1", "no direction", f"headers such as {HEADER}", "Add direction_deg."))
    if force is None and reach is None:
        problems.append(
            Problem(
                f"{shown}, row 1", "neither force nor reach", f"headers such as {HEADER}", "Add force_n or reach_mm."
            )
        )
    if direction is None or problems:
        raise BadInput(problems)
    rows = _rows(table, direction, force, reach, problems)
    if problems:
        raise BadInput(told_briefly(problems, shown))
    return _grouped(rows, table)


def _column(table: Table, stem: str) -> str | None:
    found = [column for column in table.columns if (units.split_key(column) or ("",))[0] == stem]
    if len(found) > 1:
        raise BadInput(
            Problem(f"{table.name}, row 1", " and ".join(found), f"one {stem} column", "Delete the one not measured.")
        )
    return found[0] if found else None


def _rows(table: Table, direction: str, force: str | None, reach: str | None, problems: list[Problem]) -> list[_Row]:
    rows = []
    for number, cells in table.rows:
        before = len(problems)
        where = table.number(number, cells, direction, problems)
        values = [table.number(number, cells, column, problems) if column else None for column in (force, reach)]
        if len(problems) > before:
            continue
        if where is None or abs(units.to_si(where.value, units.ending_of(direction))) > _FULL_TURN + 1e-4:
            found = "an empty cell" if where is None else where.text
            problems.append(
                Problem(table.where(number, direction), found, "0 to 360 degrees", "0 is right, 90 forward, 180 left.")
            )
        elif values == [None, None]:
            problems.append(
                Problem(f"{table.name}, row {number}", "a direction and nothing measured", "a force or a reach",
                        "Delete the row, or fill it in.")
            )  # fmt: skip
        else:
            problems += [problem for cell in values if cell for problem in _refused(cell, table)]
            rows.append(_Row(where, values[0], values[1]))
    return rows


def _refused(cell: Cell, table: Table) -> list[Problem]:
    stem, ending = units.split_key(cell.column) or (cell.column, "n")
    quantity = units.quantity_of(cell.column)
    label = quantity.unit(ending).label if quantity else ""
    where = table.where(cell.row, cell.column)
    largest = _LARGEST[stem] / units.to_si(1.0, ending)
    if cell.value < 0:
        remedy = "Left is a direction, not a minus: write 180 as its direction."
        return [Problem(where, cell.text, f"0 {label} or more, without a sign", remedy)]
    if cell.value > largest:
        return [Problem(where, cell.text, f"0 to {largest:.0f} {label}", "Check the unit in the header.")]
    return []


def _grouped(rows: list[_Row], table: Table) -> GaugeReadings:
    def turn(row: _Row) -> float:
        angle = round(units.to_si(row.direction.value, units.ending_of(row.direction.column)) % _FULL_TURN, 6)
        return 0.0 if angle >= round(_FULL_TURN, 6) else angle

    tail = len(rows)
    while tail > 0 and turn(rows[tail - 1]) == turn(rows[0]):
        tail -= 1
    has_others = tail > 0
    first_force = any(row.force for row in rows[:tail] if turn(row) == turn(rows[0]))
    again = [row.force for row in rows[tail:] if row.force] if has_others and first_force else []
    apart = {id(cell) for cell in again}
    groups: dict[float, list[_Row]] = {}
    for row in rows:
        groups.setdefault(turn(row), []).append(row)
    reading, lists = [], []
    for group in groups.values():
        direction = group[0].direction
        forces = [row.force for row in group if row.force and id(row.force) not in apart]
        reaches = [row.reach for row in group if row.reach]
        reading.append(
            DirectionReading(
                direction_rad=units.to_si(direction.value, units.ending_of(direction.column)),
                force_n=_si(forces),
                reach_m=_si(reaches),
            )
        )
        lists += [_typed(cells, table, direction.text) for cells in (forces, reaches) if cells]
    if again:
        lists.append(_typed(again, table, rows[0].direction.text))
    return GaugeReadings(tuple(reading), _si(again), tuple(lists))


def _si(cells: Sequence[Cell]) -> tuple[float, ...]:
    return tuple(units.to_si(cell.value, units.ending_of(cell.column)) for cell in cells)


def _typed(cells: Sequence[Cell], table: Table, direction: str) -> TypedList:
    return TypedList(
        cells[0].column,
        tuple(cell.value for cell in cells),
        tuple(cell.text for cell in cells),
        tuple(table.where(cell.row, cell.column) for cell in cells),
        message(
            Doubts.at_degrees if cells and table.columns and "direction_deg" in table.columns else Doubts.at_radians,
            typed=Name(direction),
        ),
    )


def gauge_text(reading: Sequence[DirectionReading], again_force_n: Sequence[float]) -> str:
    """Readings as a CSV text in SI, which `read_gauge` reads back to the same numbers."""
    lines = ["direction_rad,force_n,reach_m"]
    for one in reading:
        for place in range(max(len(one.force_n), len(one.reach_m))):
            cells = [repr(one.direction_rad)]
            cells += [repr(row[place]) if place < len(row) else "" for row in (one.force_n, one.reach_m)]
            lines.append(",".join(cells))
    lines += [f"{reading[0].direction_rad!r},{force!r}," for force in again_force_n]
    return "\n".join(lines) + "\n"
