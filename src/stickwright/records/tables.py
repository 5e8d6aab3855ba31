"""Small CSV tables typed by hand: gauge and bench readings. Every bad cell is told with row and column.

Rows are counted as a spreadsheet counts them: the header is row 1.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable
from dataclasses import dataclass

from stickwright import units
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Text, message
from stickwright.errors import BadInput, Problem, nearest
from stickwright.records.held import Place
from stickwright.records.plain_text import read_text, shortened
from stickwright.records.toml_lines import Steps

__all__ = [
    "Cell",
    "Table",
    "known_header",
    "number_problem",
    "read_table",
    "separator_problem",
    "table_of",
    "told_briefly",
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
class Table:
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

    def where(self, row: int, column: str = "") -> Steps:
        """File, row as a spreadsheet counts it, and column; the whole row without one."""
        steps = (self.name, message(FilePlaces.row, number=row), column)
        return Steps(step for step in steps if step)

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
    label = f"a number in {quantity.unit(parts[1]).label}" if quantity and parts else "a number"
    if _DECIMAL_COMMA.fullmatch(text):
        return Problem(where, f'"{text}"', f"{label} with a decimal point", f"Write {text.replace(',', '.')}.")
    if _NUMBER.match(text) and text[-1].isalpha() and "e" not in text.lower()[:-1]:
        return Problem(where, f'"{shortened(text)}"', f"{label}, alone", "The unit stands in the header.")
    return Problem(where, f'"{shortened(text)}"', label, "Leave the cell empty when nothing was measured.")


def separator_problem(header: str, shown: str) -> Problem | None:
    """Semicolons or tabs between columns, which spreadsheets of some countries write."""
    for sign, name in ((";", "semicolons"), ("\t", "tabs")):
        if sign in header and "," not in header:
            return Problem(
                f"{shown}, row 1",
                f"columns separated by {name}: {shortened(header)}",
                "columns separated by commas, numbers with a decimal point",
                "Save it as 'CSV (comma separated)' in English number format, or replace first ',' by '.', "
                f"then {name} by commas.",
            )
    return None


def read_table(path: Place, shown: str, what: str, header: str, check: Callable[[str], Text]) -> Table:
    """A small CSV file with a known set of headers.

    Parameters
    ----------
    path, shown, what
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
    return table_of(read_text(path, shown, what), shown, what, header, check)


def table_of(text: str, shown: str, what: str, header: str, check: Callable[[str], Text]) -> Table:
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
        raise BadInput(
            Problem(shown, f"text that is no table ({error})", f"rows such as {header}", "Save it anew as CSV.")
        ) from error
    if not rows:
        raise BadInput(Problem(shown, "an empty file", f"a file with {what}", "Was it saved before it was copied?"))
    columns = rows[0][1]
    problems = _header_problems(columns, shown, header, check)
    filled = tuple((number, cells) for number, cells in rows[1:] if any(cells))
    if not problems and len(filled) > MOST_ROWS:
        problems.append(
            Problem(
                shown,
                f"{len(filled)} rows",
                f"{what}, at most {MOST_ROWS} rows",
                "This looks like a recording: name it under [[site.recording]].",
            )
        )
    if not problems and not filled:
        problems.append(Problem(shown, "a header and no row", f"{what}, one a row", "Add the readings below it."))
    if problems:
        raise BadInput(problems)
    _refuse_ragged(filled, columns, shown)
    return Table(shown, columns, filled)


def _header_problems(columns: tuple[str, ...], shown: str, header: str, check: Callable[[str], Text]) -> list[Problem]:
    where = f"{shown}, row 1"
    if columns and all(_NUMBER.fullmatch(cell) for cell in columns if cell) and any(columns):
        return [Problem(where, f"numbers: {shortened(', '.join(columns))}", f"headers such as {header}", "Add them.")]
    problems = []
    for place, column in enumerate(columns):
        reason = check(column)
        if reason:
            named = f'the column "{shortened(column, 30)}"' if column else "a column without a header"
            problems.append(Problem(where, named, f"headers such as {header}", reason))
        elif column in columns[:place]:
            problems.append(Problem(where, f'the column "{column}" twice', "each column once", "Delete or rename one."))
    return problems


def _refuse_ragged(rows: tuple[tuple[int, tuple[str, ...]], ...], columns: tuple[str, ...], shown: str) -> None:
    problems = []
    for number, cells in rows:
        if len(cells) != len(columns):
            comma = " A decimal comma makes one number into two cells." if len(cells) > len(columns) else ""
            problems.append(
                Problem(
                    f"{shown}, row {number}",
                    f"{len(cells)} cells",
                    f"{len(columns)} ({', '.join(columns)})",
                    f"Leave a cell empty, with its comma, when nothing was measured.{comma}",
                )
            )
    if problems:
        raise BadInput(told_briefly(problems, shown))


def told_briefly(problems: list[Problem], shown: str, most: int = 10) -> list[Problem]:
    """The first ten, then how many more: nobody reads a thousand sentences."""
    if len(problems) <= most:
        return problems
    more = Problem(shown, f"{len(problems) - most:,} more of the like", "none", "Put the first ones right first.")
    return [*problems[:most], more]


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
            return f"Write {', '.join(f'{stem}_{ending}' for ending in endings[:-1])} or {stem}_{endings[-1]}."
        return nearest(column, [*known, *words]) or "Delete the column, or correct its header."

    return check
