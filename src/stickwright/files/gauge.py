"""Gauge readings of one site: a CSV with one reading a row, in the order taken."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stickwright import units
from stickwright.codes.expected import Expected
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, message
from stickwright.codes.remedies import Remedies
from stickwright.codes.table_faults import TableFaults
from stickwright.codes.warnings import Warnings
from stickwright.errors import BadInput, Problem
from stickwright.files.held import FilePlace
from stickwright.files.plain_text import read_text
from stickwright.files.plausible_ranges import TypedList
from stickwright.files.tables import Cell, TypedTable, header_row, known_header, table_of, told_briefly, two_columns
from stickwright.model.player import DirectionReading

__all__ = ["GaugeReadings", "gauge_of", "gauge_text", "read_gauge"]

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


def read_gauge(path: FilePlace, shown: str | None = None) -> GaugeReadings:
    """Read gauge readings of one site.

    Columns: a direction (``direction_deg`` or ``direction_rad``) and ``force_...``, ``reach_...`` or
    both, each in any unit of its kind. A cell may stay empty when nothing was measured.

    Parameters
    ----------
    path : FilePlace
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
    return gauge_of(read_text(path, shown, "gauge"), shown)


def gauge_of(text: str, shown: str) -> GaugeReadings:
    """The same from a text; see `read_gauge`."""
    check = known_header({"direction": "angle", "force": "force", "reach": "length"}, ())
    table = table_of(text, shown, "gauge", HEADER, check)
    direction, force, reach = (_column(table, stem) for stem in ("direction", "force", "reach"))
    problems = []
    if direction is None:
        problems.append(_missing(shown, message(Found.no_field, key=Name("direction")), "direction_deg"))
    if force is None and reach is None:
        problems.append(_missing(shown, message(TableFaults.neither), "force_n", "reach_mm"))
    if direction is None or problems:
        raise BadInput(problems)
    rows = _rows(table, direction, force, reach, problems)
    if problems:
        raise BadInput(told_briefly(problems, shown))
    return _grouped(rows, table)


def _missing(shown: str, found: Message, *columns: str) -> Problem:
    wanted = message(TableFaults.headers_such_as, example=Name(HEADER))
    return Problem(header_row(shown), found, wanted, message(Remedies.add, names=tuple(map(Name, columns))))


def _column(table: TypedTable, stem: str) -> str | None:
    found = [column for column in table.columns if (units.split_key(column) or ("",))[0] == stem]
    if len(found) > 1:
        raise BadInput(two_columns(table.name, found[0], found[1], stem))
    return found[0] if found else None


def _rows(
    table: TypedTable, direction: str, force: str | None, reach: str | None, problems: list[Problem]
) -> list[_Row]:
    rows = []
    for number, cells in table.rows:
        before = len(problems)
        where = table.number(number, cells, direction, problems)
        values = [table.number(number, cells, column, problems) if column else None for column in (force, reach)]
        if len(problems) > before:
            continue
        if where is None or abs(units.to_si(where.value, units.ending_of(direction))) > _FULL_TURN + 1e-4:
            found = message(Found.empty_cell) if where is None else where.text
            turn = message(
                Expected.range,
                low_in_unit=0.0,
                high_in_unit=360.0,
                unit=Name(units.unit_named("deg").label),
                unsigned=False,
            )
            problems.append(Problem(table.where(number, direction), found, turn, message(TableFaults.directions)))
        elif values == [None, None]:
            found, wanted = message(TableFaults.nothing_measured), message(TableFaults.force_or_reach)
            problems.append(Problem(table.where(number), found, wanted, message(Remedies.fill_or_delete_row)))
        else:
            problems += [problem for cell in values if cell for problem in _refused(cell, table)]
            rows.append(_Row(where, values[0], values[1]))
    return rows


def _refused(cell: Cell, table: TypedTable) -> list[Problem]:
    stem, ending = units.split_key(cell.column) or (cell.column, "n")
    quantity = units.quantity_of(cell.column)
    unit = Name(quantity.unit(ending).label) if quantity else None
    where = table.where(cell.row, cell.column)
    largest = _LARGEST[stem] / units.to_si(1.0, ending)
    if 0 <= cell.value <= largest:
        return []
    minus = cell.value < 0
    wanted = message(Expected.range, low_in_unit=0.0, high_in_unit=largest, unit=unit, unsigned=minus)
    remedy = message(Remedies.left_not_minus, keyed=False) if minus else message(Remedies.check_unit)
    return [Problem(where, cell.text, wanted, remedy)]


def _grouped(rows: list[_Row], table: TypedTable) -> GaugeReadings:
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


def _typed(cells: Sequence[Cell], table: TypedTable, direction: str) -> TypedList:
    return TypedList(
        cells[0].column,
        tuple(cell.value for cell in cells),
        tuple(cell.text for cell in cells),
        tuple(table.where(cell.row, cell.column) for cell in cells),
        message(
            Warnings.at_degrees
            if cells and table.columns and "direction_deg" in table.columns
            else Warnings.at_radians,
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
