"""Small CSV tables typed by hand: gauge and bench readings. Every bad cell is told with row and column.

Rows are counted as a spreadsheet counts them: the header is row 1.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from stickwright import units
from stickwright.codes.expected import Contents, Expected
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.found import Found
from stickwright.codes.message import Name, Text, message
from stickwright.codes.problems import Problems
from stickwright.codes.remedies import Remedies
from stickwright.codes.table_faults import TableFaults
from stickwright.errors import BadInput, Problem, nearest
from stickwright.files.held import FilePlace
from stickwright.files.plain_text import as_recording, empty_file, read_text, shortened
from stickwright.files.toml_lines import PlaceInFile

__all__ = [
    "Cell",
    "TypedTable",
    "column_twice",
    "header_row",
    "how_many_more",
    "known_header",
    "number_problem",
    "read_table",
    "separator_problem",
    "table_of",
    "told_briefly",
    "two_columns",
]

MOST_ROWS = 10_000
_NUMBER = re.compile(r"[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,3})?")
_DECIMAL_COMMA = re.compile(r"[-+]?\d+,\d+")


@dataclass(frozen=True)
class Cell:
    """One number as typed, and where."""

    value: float
    text: str
    row: int
    column: str


@dataclass(frozen=True)
class TypedTable:
    """A small table of numbers and words.

    Parameters
    ----------
    name : str
        As the file is called in sentences.
    columns : tuple of str
        Headers as typed.
    rows : tuple
        Row number in a spreadsheet, and the cells' texts, blank rows left out.
    """

    name: str
    columns: tuple[str, ...]
    rows: tuple[tuple[int, tuple[str, ...]], ...]

    def where(self, row: int, column: str = "") -> PlaceInFile:
        """File, row as a spreadsheet counts it, and column; the whole row without one."""
        steps = (self.name, message(FilePlaces.row, number=row), column)
        return tuple(step for step in steps if step)

    def number(self, row: int, cells: tuple[str, ...], column: str, problems: list[Problem]) -> Cell | None:
        """The number in a column, None when the cell is empty; what is no number goes to `problems`."""
        text = cells[self.columns.index(column)]
        if not text:
            return None
        problem = number_problem(text, self.where(row, column), column)
        if problem is not None:
            problems.append(problem)
            return None
        return Cell(float(text), text, row, column)


def number_problem(text: str, where: tuple[Text, ...], column: str) -> Problem | None:
    """Why a cell's text is no number, or None when it is one."""
    if _NUMBER.fullmatch(text) and abs(float(text)) < 1e15:
        return None
    quantity = units.quantity_of(column)
    parts = units.split_key(column)
    unit = Name(quantity.unit(parts[1]).label) if quantity and parts else None
    if _DECIMAL_COMMA.fullmatch(text):
        remedy = message(Remedies.write, typed=Name(text.replace(",", ".")))
        return Problem(where, f'"{text}"', message(Expected.number_with_point, unit=unit), remedy)
    if _NUMBER.match(text) and text[-1].isalpha() and "e" not in text.lower()[:-1]:
        alone = message(Expected.number_alone, unit=unit)
        return Problem(where, f'"{shortened(text)}"', alone, message(Remedies.unit_in_header))
    remedy = message(Remedies.leave_cell_empty, comma=False)
    return Problem(where, f'"{shortened(text)}"', message(Expected.number, unit=unit), remedy)


def separator_problem(header: str, shown: str) -> Problem | None:
    """Semicolons or tabs between columns, which spreadsheets of some countries write."""
    separators: tuple[tuple[str, Literal["semicolons", "tabs"]], ...] = ((";", "semicolons"), ("\t", "tabs"))
    for sign, by in separators:
        if sign in header and "," not in header:
            return Problem(
                header_row(shown),
                message(TableFaults.separated, by=by, header=Name(shortened(header))),
                message(TableFaults.commas),
                message(TableFaults.save_with_commas, by=by),
            )
    return None


def header_row(shown: str) -> tuple[Text, ...]:
    """Where the headers of a table stand."""
    return shown, message(FilePlaces.row, number=1)


def read_table(
    path: FilePlace, shown: str, contents: Contents, header: str, check: Callable[[str], Text]
) -> TypedTable:
    """A small CSV file with a known set of headers.

    Parameters
    ----------
    path, shown, contents
        The file, its name in sentences, what it should hold.
    header : str
        An example of a right first line, shown when it is wrong.
    check : callable
        Gives '' for a header that is known, else what is wrong with it.

    Raises
    ------
    BadInput
        Not readable as text, wrong separator, wrong headers, rows of another length, too many rows.
    """
    return table_of(read_text(path, shown, contents), shown, contents, header, check)


def table_of(text: str, shown: str, contents: Contents, header: str, check: Callable[[str], Text]) -> TypedTable:
    """The same from a text; see `read_table`."""
    first = text.splitlines()[0] if text.splitlines() else ""
    problem = separator_problem(first, shown)
    if problem is not None:
        raise BadInput(problem)
    try:
        rows = [
            (number, tuple(cell.strip() for cell in cells))
            for number, cells in enumerate(csv.reader(io.StringIO(text, newline="")), 1)
        ]
    except csv.Error as error:
        found, wanted = (
            message(TableFaults.no_table, reason=Name(str(error))),
            message(TableFaults.rows_such_as, example=Name(header)),
        )
        raise BadInput(Problem((shown,), found, wanted, message(Remedies.export_csv))) from error
    if not rows:
        raise BadInput(empty_file(shown, contents))
    columns = rows[0][1]
    problems = _header_problems(columns, shown, header, check)
    filled = tuple((number, cells) for number, cells in rows[1:] if any(cells))
    if not problems and len(filled) > MOST_ROWS:
        wanted = message(Expected.at_most_rows, contents=contents, rows=MOST_ROWS)
        found = message(Found.rows, count=len(filled))
        problems.append(Problem((shown,), found, wanted, as_recording()))
    if not problems and not filled:
        wanted = message(Expected.one_a_row, contents=contents)
        problems.append(Problem((shown,), message(Found.no_rows), wanted, message(TableFaults.add_below)))
    if problems:
        raise BadInput(problems)
    _refuse_ragged(filled, columns, shown)
    return TypedTable(shown, columns, filled)


def _header_problems(columns: tuple[str, ...], shown: str, header: str, check: Callable[[str], Text]) -> list[Problem]:
    where, wanted = header_row(shown), message(TableFaults.headers_such_as, example=Name(header))
    if columns and all(_NUMBER.fullmatch(cell) for cell in columns if cell) and any(columns):
        found = message(TableFaults.numbers_first, typed=Name(shortened(", ".join(columns))))
        return [Problem(where, found, wanted, message(TableFaults.put_headers))]
    problems = []
    for place, column in enumerate(columns):
        reason = check(column)
        if reason:
            named = message(TableFaults.column, name=Name(shortened(column, 30)))
            problems.append(Problem(where, named if column else message(TableFaults.no_header), wanted, reason))
        elif column in columns[:place]:
            problems.append(column_twice(where, column))
    return problems


def column_twice(where: tuple[Text, ...], column: str) -> Problem:
    """Two columns with one header."""
    found = message(TableFaults.column_twice, name=Name(column))
    return Problem(where, found, message(TableFaults.each_once), message(TableFaults.rename_or_delete))


def two_columns(shown: str, first: str, second: str, stem: str) -> Problem:
    """Two columns of one kind, in two units."""
    found = message(Found.both, first=Name(first), second=Name(second))
    wanted = message(TableFaults.one_column, stem=Name(stem))
    return Problem(header_row(shown), found, wanted, message(Remedies.delete_unmeasured))


def _refuse_ragged(rows: tuple[tuple[int, tuple[str, ...]], ...], columns: tuple[str, ...], shown: str) -> None:
    wanted = message(TableFaults.cells, count=len(columns), header=Name(", ".join(columns)))
    leave = message(Remedies.leave_cell_empty, comma=True)
    comma = message(Problems.sentences, parts=(leave, message(Remedies.cell_comma)))
    problems = [
        Problem(
            (shown, message(FilePlaces.row, number=number)),
            message(Found.cells, count=len(cells)),
            wanted,
            comma if len(cells) > len(columns) else leave,
        )
        for number, cells in rows
        if len(cells) != len(columns)
    ]
    if problems:
        raise BadInput(told_briefly(problems, shown))


def told_briefly(problems: list[Problem], shown: str, most: int = 10) -> list[Problem]:
    """The first ten, then how many more: nobody reads a thousand sentences."""
    return [*problems[:most], *how_many_more(len(problems) - most, shown)]


def how_many_more(count: int, shown: str) -> list[Problem]:
    """One problem that stands for all those not told one by one; none when there are no more."""
    if count <= 0:
        return []
    found = message(Found.more, count=count)
    return [Problem((shown,), found, message(Expected.none), message(Remedies.first_ones))]


def known_header(stems: dict[str, str], words: tuple[str, ...]) -> Callable[[str], Text]:
    """A header check: a stem with any unit ending of its quantity, or one of some plain words.

    Parameters
    ----------
    stems : dict of str
        Stem -> quantity name: 'force' -> 'force'.
    words : tuple of str
        Headers without a unit.
    """
    known = [f"{stem}_{unit.ending}" for stem, name in stems.items() for unit in units.QUANTITIES[name].units]

    def check(column: str) -> Text:
        if column in words or column in known:
            return ""
        parts = units.split_key(column)
        stem = parts[0] if parts else column
        if stem in stems:
            endings = [unit.ending for unit in units.QUANTITIES[stems[stem]].units]
            return message(TableFaults.write_header, names=tuple(Name(f"{stem}_{ending}") for ending in endings))
        return nearest(column, [*known, *words]) or message(TableFaults.delete_column)

    return check
