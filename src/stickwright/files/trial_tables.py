"""Tables of aimed movements and of presses as CSV: our own headers, or the columns that somebody names.

Own headers of movements: ``start_x,start_y,target_x,target_y,select_x,select_y,duration_s`` and if wanted ``width``,
``hit``; in place of the duration ``start_s,select_s``. Own headers of presses: ``down_s`` and if wanted ``up_s``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stickwright import units
from stickwright.codes.message import Message, Name, message
from stickwright.codes.problems import Problems
from stickwright.codes.remedies import Remedies
from stickwright.codes.table_faults import TableFaults
from stickwright.errors import BadInput, Problem, nearest
from stickwright.files.held import FilePlace
from stickwright.files.plain_text import refuse_unreadable, shortened
from stickwright.files.recording_columns import (
    TimeUnit,
    columns_absent,
    empty_column,
    header_of,
    no_time_unit,
    time_ending,
)
from stickwright.files.tables import TypedTable, header_row, read_table, told_briefly
from stickwright.model.recording import Taps, Trials

__all__ = ["TapColumns", "TrialColumns", "kind_of_table", "read_taps", "read_trials"]

Array = NDArray[np.float64]
Pair = tuple[str, str | None]
_EXAMPLE = "start_x,start_y,target_x,target_y,select_x,select_y,width,duration_s"
_LENGTHS = {"px", "m", "cm", "mm", "inch", "deg", "pct", "count"}


@dataclass(frozen=True)
class TrialColumns:
    """Which columns of a table of movements hold what.

    Parameters
    ----------
    start, target, select : (str, str or None)
        Columns across and up the screen; None for targets along one line.
    width : str or None
        Diameter of the target.
    width_times : float or None
        What one unit of the width is in the unit of the places.
    duration : str or None
        Duration of the movement; None when `begin` and `end` are given.
    begin, end : str or None
        When the movement began and when the target was selected.
    time_unit : {"s", "ms", "min", "frame"} or None
        When the names do not end in it.
    hit : str or None
        1 where the target was hit, 0 where it was missed.
    only : tuple of (str, str)
        Column and cell that the rows must have.
    """

    start: Pair = ("start_x", "start_y")
    target: Pair = ("target_x", "target_y")
    select: Pair = ("select_x", "select_y")
    width: str | None = None
    width_times: float | None = None
    duration: str | None = None
    begin: str | None = None
    end: str | None = None
    time_unit: TimeUnit | None = None
    hit: str | None = None
    only: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class TapColumns:
    """Which columns of a table of presses hold what.

    Parameters
    ----------
    down : str
        When each press began (of every event, where `event` is given).
    up : str or None
        When it ended.
    event : str or None
        What happened in each row.
    down_cell : str
        The cell of `event` that stands for a press.
    time_unit : {"s", "ms", "min", "frame"} or None
        When the name does not end in it.
    only : tuple of (str, str)
        Column and cell that the rows must have.
    """

    down: str = "down_s"
    up: str | None = None
    event: str | None = None
    down_cell: str = "1"
    time_unit: TimeUnit | None = None
    only: tuple[tuple[str, str], ...] = ()


def kind_of_table(path: FilePlace) -> str:
    """'trials' or 'taps' for a table with our own headers, '' for anything else.

    Parameters
    ----------
    path : FilePlace
        CSV file.
    """
    refuse_unreadable(path, path.name, "recording")
    header = header_of(path, path.name)
    if {"start_x", "target_x", "select_x"} <= set(header):
        return "trials"
    return "taps" if "down_s" in header and "x" not in header else ""


def own_trials(header: tuple[str, ...]) -> TrialColumns:
    """Our own headers, with those of the columns that may be missing that are there.

    Parameters
    ----------
    header : tuple of str
        As typed.
    """
    start, target, select = (
        (f"{what}_x", f"{what}_y" if f"{what}_y" in header else None) for what in ("start", "target", "select")
    )
    there = {name: name for name in ("duration_s", "start_s", "select_s", "width", "hit") if name in header}
    return TrialColumns(
        start, target, select, width=there.get("width"), duration=there.get("duration_s"), begin=there.get("start_s"),
        end=there.get("select_s"), hit=there.get("hit"),
    )  # fmt: skip


def read_trials(
    path: FilePlace, columns: TrialColumns | None = None, *, only: tuple[tuple[str, str], ...] = ()
) -> Trials:  # fmt: skip
    """Read a table of aimed movements.

    Parameters
    ----------
    path : FilePlace
        CSV file.
    columns : TrialColumns, optional
        Columns of a foreign file; our own headers when not given.
    only : tuple of (str, str)
        With our own headers: column and cell that the rows must have.

    Returns
    -------
    Trials
        Empty cells are NaN and counted in the notes.

    Raises
    ------
    BadInput
        Not readable, columns that are not there, cells that are no numbers, no column of times or no unit for it, a
        width in another unit of length.
    """
    shown = path.name
    table = read_table(path, shown, "movements", _EXAMPLE, _any_header)
    choice = columns or replace(own_trials(table.columns), only=only)
    _refuse_trials(choice, table)
    table = _only(table, choice.only)
    problems: list[Problem] = []
    places = [_pair(table, pair, problems) for pair in (choice.start, choice.target, choice.select)]
    width = None if choice.width is None else _numbers(table, choice.width, problems) * (choice.width_times or 1.0)
    hit = None if choice.hit is None else _hits(table, choice.hit, problems)
    times_s = _durations(table, choice, problems)
    if problems:
        raise BadInput(told_briefly(problems, shown))
    empty = int(np.count_nonzero(~np.isfinite(np.column_stack([*places, times_s])).all(axis=1)))
    notes = (message(TableFaults.gaps, count=empty, total=len(times_s)),) if empty else ()
    rows = np.array([row for row, _ in table.rows], dtype=np.int64)
    return Trials(
        name=shown,
        start_xy=places[0],
        target_xy=places[1],
        selection_xy=places[2],
        times_s=times_s,
        width=width,
        hit=hit,
        row=rows,
        notes=notes,
    )


def read_taps(
    path: FilePlace, columns: TapColumns | None = None, *, only: tuple[tuple[str, str], ...] = ()
) -> Taps:  # fmt: skip
    """Read a table of presses.

    Parameters
    ----------
    path : FilePlace
        CSV file.
    columns : TapColumns, optional
        Columns of a foreign file; our own headers when not given.
    only : tuple of (str, str)
        With our own headers: column and cell that the rows must have.

    Returns
    -------
    Taps
        Rows without a time of press are left out and counted in the notes.

    Raises
    ------
    BadInput
        As `read_trials`; no row with the event of a press.
    """
    shown = path.name
    table = read_table(path, shown, "presses", "down_s,up_s", _any_header)
    choice = columns or TapColumns(up="up_s" if "up_s" in table.columns else None, only=only)
    _refuse_absent(table, [choice.down, choice.up, choice.event], choice.only)
    factor = _time_factor(table, choice.down, choice.time_unit)
    table = _only(table, choice.only)
    problems: list[Problem] = []
    down = _numbers(table, choice.down, problems) * factor
    up = (
        None
        if choice.up is None
        else _numbers(table, choice.up, problems) * _time_factor(table, choice.up, choice.time_unit)
    )
    if problems:
        raise BadInput(told_briefly(problems, shown))
    if choice.event is not None:
        down, up = _by_event(table, choice, down)
    known = np.isfinite(down)
    lost = int(np.count_nonzero(~known))
    notes = (message(TableFaults.no_press_times, count=lost, total=len(down)),) if lost else ()
    return Taps(shown, down[known], None if up is None else up[known], notes)


def _any_header(_: str) -> str:
    return ""


def _by_event(table: TypedTable, choice: TapColumns, at_s: Array) -> tuple[Array, Array | None]:
    """Presses, and the next other event after each as its end, where there is one before the next press."""
    place = table.columns.index(choice.event or "")
    cells = [row[place] for _, row in table.rows]
    down = np.array([_same(cell, choice.down_cell) for cell in cells], dtype=np.bool_)
    if not down.any():
        found = _no_row(choice.down_cell, cells)
        where = (table.name, choice.event or "")
        raise BadInput(Problem(where, found, message(TableFaults.press_cell), message(TableFaults.say_down)))
    up = np.full(len(at_s), np.nan)
    after = np.concatenate([~down[1:], [False]])
    up[:-1][after[:-1]] = at_s[1:][after[:-1]]
    return at_s[down], up[down] if np.isfinite(up[down]).any() else None


def _no_row(wanted: str, cells: list[str]) -> Message:
    seen = ", ".join(list(dict.fromkeys(cells))[:6])
    return message(TableFaults.no_row_with, typed=Name(wanted), seen=Name(shortened(seen)))


def _same(cell: str, wanted: str) -> bool:
    """Whether two cells mean the same: as text, or as numbers."""
    try:
        return cell.casefold() == wanted.casefold() or float(cell) == float(wanted)
    except ValueError:
        return False


def _refuse_trials(choice: TrialColumns, table: TypedTable) -> None:
    named = [
        *choice.start,
        *choice.target,
        *choice.select,
        choice.width,
        choice.duration,
        choice.begin,
        choice.end,
        choice.hit,
    ]
    _refuse_absent(table, named, choice.only)
    problems = []
    if choice.duration is None and (choice.begin is None or choice.end is None):
        found, wanted = message(TableFaults.no_duration), message(TableFaults.duration)
        problems.append(Problem(header_row(table.name), found, wanted, message(TableFaults.say_duration)))
    lengths = {name: ending for name in (choice.target[0], choice.width) if name and (ending := _length_of(name))}
    if choice.width is not None and choice.width_times is None and len(set(lengths.values())) > 1:
        at, wide = Name(lengths[choice.target[0]]), Name(lengths[choice.width])
        found, wanted = message(TableFaults.two_lengths, width=wide, places=at), message(TableFaults.one_length)
        remedy = message(TableFaults.say_width_times, width=wide, places=at)
        problems.append(Problem((table.name, choice.width), found, wanted, remedy))
    if problems:
        raise BadInput(problems)


def _length_of(name: str) -> str:
    ending = name.rsplit("_", 1)[-1].lower()
    return ending if ending in _LENGTHS else ""


def _refuse_absent(table: TypedTable, named: list[str | None], only: tuple[tuple[str, str], ...]) -> None:
    wanted = list(dict.fromkeys([*(name for name in named if name is not None), *(name for name, _ in only)]))
    absent = [name for name in wanted if name not in table.columns]
    if absent:
        offers = tuple(offer for name in absent if (offer := nearest(name, table.columns)))
        remedy = message(Problems.sentences, parts=offers or (message(TableFaults.name_columns),))
        raise BadInput(columns_absent(header_row(table.name), table.columns, absent, remedy))


def _only(table: TypedTable, only: tuple[tuple[str, str], ...]) -> TypedTable:
    rows = table.rows
    for name, wanted in only:
        place = table.columns.index(name)
        seen = [cells[place] for _, cells in rows]
        rows = tuple((row, cells) for row, cells in rows if _same(cells[place], wanted))
        if not rows:
            found, expected = _no_row(wanted, seen), message(TableFaults.rows_to_read)
            raise BadInput(Problem((table.name, name), found, expected, message(TableFaults.say_only)))
    return TypedTable(table.name, table.columns, rows)


def _numbers(table: TypedTable, name: str, problems: list[Problem]) -> Array:
    """A column, empty cells NaN; one that is empty throughout is refused."""
    cells = [table.number(row, cells, name, problems) for row, cells in table.rows]
    if not problems and all(cell is None for cell in cells):
        problems.append(empty_column((table.name, name)))
    return np.array([np.nan if cell is None else cell.value for cell in cells], dtype=np.float64)


def _pair(table: TypedTable, names: Pair, problems: list[Problem]) -> Array:
    across = _numbers(table, names[0], problems)
    up = np.zeros_like(across) if names[1] is None else _numbers(table, names[1], problems)
    return np.column_stack([across, up])


def _hits(table: TypedTable, name: str, problems: list[Problem]) -> Array:
    values = _numbers(table, name, problems)
    odd = np.flatnonzero(np.isfinite(values) & ~np.isin(values, (0.0, 1.0)))
    if odd.size:
        row = table.rows[int(odd[0])][0]
        found, wanted = f"{values[odd[0]]:g}", message(TableFaults.hit_or_miss)
        problems.append(Problem(table.where(row, name), found, wanted, message(Remedies.right_column)))
    return values


def _durations(table: TypedTable, choice: TrialColumns, problems: list[Problem]) -> Array:
    if choice.duration is not None:
        return _numbers(table, choice.duration, problems) * _time_factor(table, choice.duration, choice.time_unit)
    begin, end = choice.begin or "", choice.end or ""
    began, ended = (
        _numbers(table, name, problems) * _time_factor(table, name, choice.time_unit) for name in (begin, end)
    )
    return ended - began


def _time_factor(table: TypedTable, name: str, time_unit: TimeUnit | None) -> float:
    ending = time_unit or time_ending(name)
    if ending is None or ending == "frame":
        raise BadInput(no_time_unit((table.name, name), or_frames=False))
    return units.to_si(1.0, ending)
