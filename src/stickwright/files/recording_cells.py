"""The cells of a recording, to numbers: straight by polars, and as text only to find the bad ones.

Rows are counted as a spreadsheet counts them: the header is row 1.
"""

from __future__ import annotations

import csv
from collections.abc import Sequence
from pathlib import Path
from typing import get_args

import polars as pl

from stickwright.codes.expected import Expected
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.recording_faults import RecordingFaults
from stickwright.codes.remedies import Remedies
from stickwright.codes.table_faults import TableFaults
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.files.held import FilePlace
from stickwright.files.plain_text import odd_byte, shortened
from stickwright.files.recording_columns import ColumnChoice
from stickwright.files.tables import how_many_more, number_problem
from stickwright.model.player import Task

__all__ = ["CUES", "MOST_TOLD", "frame_of", "no_rows"]

CUES = ("", *get_args(Task))
MOST_TOLD = 10
_POLARS_REFUSALS = (pl.exceptions.PolarsError, pl.exceptions.PanicException)
"""A panic is how polars stops on some malformed rows; it is the file's fault, and told as such."""
_LARGEST = 1e15
"""Nothing that is recorded comes near; beyond it, arithmetic would overflow."""


def frame_of(path: FilePlace, shown: str, header: tuple[str, ...], choice: ColumnChoice) -> pl.DataFrame:
    """The chosen columns as numbers; BadInput with every bad cell counted when they are none."""
    words = choice.words()
    numeric = [name for name in choice.named() if name not in words]
    needed = [choice.time] if choice.time is not None else []
    quote = '"' if _has_quotes(path) else None
    if quote:  # rare in recordings, and polars can stop hard on quotes that are not closed
        _refuse_lines(path, shown, header)
    try:
        frame = _read(path, header, choice, dict.fromkeys(numeric, pl.Float64), quote)
        frame = _without_empty_end(frame)
        if not _is_bad(frame, numeric, needed, choice.cue):
            return frame
        del frame
        text = _read(path, header, choice, {}, quote)
    except _POLARS_REFUSALS:
        text = _as_text(path, shown, header, choice, quote)
    text = _without_empty_end(text)
    numbers = _numbers(text, numeric, needed, choice.cue, shown)
    return numbers if choice.select is None else numbers.with_columns(text[choice.select])


def _read(
    path: FilePlace,
    header: tuple[str, ...],
    choice: ColumnChoice,
    types: dict[str, type[pl.DataType]],
    quote: str | None,
) -> pl.DataFrame:
    """By position, so that headers need not be unique; the chosen ones are (checked before)."""
    names = {name: f"column_{header.index(name) + 1}" for name in dict.fromkeys(choice.named())}
    kinds = {f"column_{place + 1}": types.get(name, pl.String) for place, name in enumerate(header)}
    frame = pl.read_csv(
        path if isinstance(path, Path) else path.read_bytes(),
        has_header=False,
        skip_lines=1,
        quote_char=quote,
        schema=kinds,
        columns=list(names.values()),
        raise_if_empty=False,
        low_memory=True,
    )
    return frame.rename({numbered: name for name, numbered in names.items()})


def _has_quotes(path: FilePlace) -> bool:
    with path.open("rb") as file:
        return any(b'"' in part for part in iter(lambda: file.read(1 << 20), b""))


def _as_text(
    path: FilePlace, shown: str, header: tuple[str, ...], choice: ColumnChoice, quote: str | None
) -> pl.DataFrame:
    """The second reading, as text; what still fails is told by line."""
    try:
        return _read(path, header, choice, {}, quote)
    except _POLARS_REFUSALS as error:
        _refuse_lines(path, shown, header)
        found, wanted = message(RecordingFaults.mixed_rows), message(RecordingFaults.sample_a_row)
        raise BadInput(Problem((shown,), found, wanted, message(Remedies.export_csv))) from error


def _refuse_lines(path: FilePlace, shown: str, header: tuple[str, ...]) -> None:
    """Rows with too many cells, and bytes that are not UTF-8, found line by line."""
    problems: list[Problem] = []
    more = filled = 0
    with path.open("rb") as file:
        for number, line in enumerate(file, 1):
            filled += bool(line.strip())
            where, closed = (shown, message(FilePlaces.row, number=number)), True
            try:
                cells = next(csv.reader([line.decode("utf-8-sig").rstrip("\r\n")]), [])
            except UnicodeDecodeError as error:
                problem = odd_byte(where, line[error.start], error.start + 1)
            except csv.Error:
                problem = _odd_row(where, message(RecordingFaults.mixed_cells), header, message(Remedies.export_csv))
            else:
                closed = line.count(b'"') % 2 == 0
                if closed and len(cells) <= len(header):
                    continue
                comma = message(Remedies.cell_comma)
                problem = (
                    _odd_row(where, message(Found.cells, count=len(cells)), header, comma)
                    if closed
                    else Problem(
                        where,
                        message(RecordingFaults.open_quote),
                        message(RecordingFaults.no_quotes),
                        message(RecordingFaults.delete_quote),
                    )
                )
            if not closed or len(problems) < MOST_TOLD:
                problems.append(problem)
            else:
                more += 1
            if not closed:  # what follows it cannot be told
                break
    if problems:
        raise BadInput([*problems, *how_many_more(more, shown)])
    if filled <= 1:
        raise no_rows(shown)


def _odd_row(where: tuple[Text, ...], found: Message, header: tuple[str, ...], remedy: Message) -> Problem:
    wanted = message(TableFaults.cells, count=len(header), header=Name(shortened(", ".join(header))))
    return Problem(where, found, wanted, remedy)


def no_rows(shown: str) -> BadInput:
    """The refusal of a recording that has a header only."""
    wanted, remedy = message(RecordingFaults.sample_a_row), message(RecordingFaults.stopped)
    return BadInput(Problem((shown,), message(Found.no_rows), wanted, remedy))


def _without_empty_end(frame: pl.DataFrame) -> pl.DataFrame:
    """Blank lines at the end of a file are no samples."""
    height = frame.height
    while height and all(value is None for value in frame.row(height - 1)):
        height -= 1
    return frame.head(height)


def _is_bad(frame: pl.DataFrame, numeric: Sequence[str], needed: Sequence[str], cue: str | None) -> bool:
    unlike = any(not bool((frame[name].abs() < _LARGEST).all()) for name in numeric)
    empty = any(frame[name].null_count() for name in needed)
    unknown = cue is not None and not bool(frame[cue].fill_null("").is_in(CUES).all())
    return unlike or bool(empty) or unknown


def _numbers(
    text: pl.DataFrame, numeric: Sequence[str], needed: Sequence[str], cue: str | None, shown: str
) -> pl.DataFrame:
    """Text cells to numbers, blanks round them allowed; BadInput with the first ten bad cells."""
    bad: list[tuple[int, str, str]] = []
    count = 0
    columns: list[pl.Series] = []
    for name in dict.fromkeys([*numeric, *([cue] if cue else [])]):
        cells = text[name].str.strip_chars()
        empty = cells.is_null() | (cells == "").fill_null(True)
        if name == cue:
            cells = cells.fill_null("")
            wrong = ~cells.is_in(CUES)
            columns.append(cells)
        else:
            numbers = cells.cast(pl.Float64, strict=False)
            wrong = ~empty & ~(numbers.abs() < _LARGEST).fill_null(False)
            if name in needed:
                wrong = wrong | empty
            columns.append(numbers.alias(name))
        rows = wrong.arg_true()
        count += len(rows)
        bad += [(int(row) + 2, name, cells[int(row)] or "") for row in rows.head(MOST_TOLD)]
    if not bad:
        return pl.DataFrame(columns)
    told = [_bad_cell(shown, row, name, cell, is_cue=name == cue) for row, name, cell in sorted(bad)[:MOST_TOLD]]
    raise BadInput([*told, *how_many_more(count - len(told), shown)])


def _bad_cell(shown: str, row: int, name: str, cell: str, *, is_cue: bool) -> Problem:
    where = (shown, message(FilePlaces.row, number=row), name)
    if is_cue:
        wanted = message(Expected.one_of_or_empty, names=tuple(map(Name, CUES[1:])))
        return Problem(where, f'"{shortened(cell)}"', wanted, did_you_mean(cell, CUES[1:]))
    if not cell:
        wanted = message(RecordingFaults.this_time)
        return Problem(where, message(Found.empty_cell), wanted, message(Remedies.delete_row))
    remedy = message(Remedies.leave_cell_empty, comma=False)
    return number_problem(cell, where, name) or Problem(
        where, f'"{shortened(cell)}"', message(Expected.number, unit=None), remedy
    )
