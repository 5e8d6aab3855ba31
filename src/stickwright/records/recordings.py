"""Recordings as CSV: our own format and, when the columns are named, anybody else's.

Own format: ``time_s,x,y`` and if wanted ``cue``, ``cue_x,cue_y``, ``cue_width``. Files are read by
polars straight into numbers; only when that fails are they read again as text to find the bad cells.
Rows are counted as a spreadsheet counts them: the header is row 1.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, get_args

import numpy as np
import polars as pl
from numpy.typing import NDArray

from stickwright import units
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.player import Task
from stickwright.model.recording import Recording
from stickwright.records.plain_text import number_text, refuse_encoding, refuse_unreadable, shortened
from stickwright.records.tables import number_problem, separator_problem
from stickwright.records.writing import write_whole

__all__ = ["CUES", "OWN_COLUMNS", "ColumnChoice", "read_recording", "write_recording"]

CUES = ("", *get_args(Task))
_WHAT = "a recording"
_TOLD = 10
_LARGEST_BYTES = 4_000_000_000
_HEADER_BYTES = 65_536
_LARGEST = 1e15
"""Nothing that is recorded comes near; beyond it, arithmetic would overflow."""
_LARGEST_SHARE = 2.0
"""A stick may overshoot its nominal full output; twice that is another unit."""

TimeUnit = Literal["s", "ms", "min", "frame"]


@dataclass(frozen=True)
class ColumnChoice:
    """Which columns of a foreign file hold what, and in which unit and sign.

    Parameters
    ----------
    time : str or None
        Time column; None when there is none and the rows come at `rate_hz`.
    x, y : str
        Stick columns; `y` None for a lever with one axis.
    time_unit : {"s", "ms", "min", "frame"}, optional
        Unit of the time column when its name has no ending ``_s``, ``_ms`` or ``_min``.
    rate_hz : float, optional
        Frames or rows a second.
    full_scale : float, optional
        The value that is full output, counted from the centre: 127, 80, 1.
    unit : str, optional
        Name of the unit when there is no full output: 'px'. Exactly one of the two is given.
    centre : tuple of float
        x and y at rest, in the file's unit: (128, 128).
    flip_x, flip_y : bool
        The file's x grows to the left, its y grows backwards or down.
    cue, cue_x, cue_y, cue_width : str, optional
        Columns with what was asked; in the same unit and sign as x and y.
    """

    time: str | None = "time_s"
    x: str = "x"
    y: str | None = "y"
    time_unit: TimeUnit | None = None
    rate_hz: float | None = None
    full_scale: float | None = None
    unit: str | None = None
    centre: tuple[float, float] = (0.0, 0.0)
    flip_x: bool = False
    flip_y: bool = False
    cue: str | None = None
    cue_x: str | None = None
    cue_y: str | None = None
    cue_width: str | None = None

    def named(self) -> tuple[str, ...]:
        """Every column that is to be read, in order."""
        every = (self.time, self.x, self.y, self.cue, self.cue_x, self.cue_y, self.cue_width)
        return tuple(name for name in every if name is not None)


OWN_COLUMNS = ColumnChoice(full_scale=1.0)


def read_recording(
    path: Path,
    *,
    columns: ColumnChoice | None = None,
    task: str = "play",
    site: str | None = None,
    stick: str | None = None,
    topper: str | None = None,
    extension: str | None = None,
    shown: str | None = None,
) -> Recording:
    """Read a recording.

    Parameters
    ----------
    path : Path
        CSV file.
    columns : ColumnChoice, optional
        Columns of a foreign file; our own format when not given.
    task : str
        What was done throughout, when there is no cue column.
    site, stick, topper, extension : str, optional
        On what it was made.
    shown : str, optional
        Name of the file in sentences.

    Returns
    -------
    Recording
        x right, y forward; shares of full output, or the foreign unit. Empty cells are NaN and noted.

    Raises
    ------
    BadInput
        Not readable; columns that are not there; cells that are no numbers (the first ten by row and
        column, then how many more); time that runs backwards; counts without a full scale.
    """
    path = Path(path)
    shown = shown or path.name
    refuse_unreadable(path, shown, _WHAT)
    header = _header(path, shown)
    choice = columns or _own_choice(header)
    _refuse_choice(choice, header, shown, foreign=columns is not None)
    frame = _frame(path, shown, header, choice)
    if frame.height == 0:
        raise _no_rows(shown)
    notes: list[str] = []
    times_s = _times(frame, choice, shown, notes)
    xy = _pair(frame, choice.x, choice.y, choice, shown)
    _refuse_scale(xy, choice, shown, foreign=columns is not None)
    _note_gaps(xy, choice, notes)
    cue_xy = _pair(frame, choice.cue_x, choice.cue_y, choice, shown) if choice.cue_x and choice.cue_y else None
    left_out = [name for name in header if name not in choice.named()]
    if left_out and columns is None:
        notes.append(f"columns not read: {', '.join(left_out)}")
    return Recording(
        path.name,
        times_s,
        xy,
        cue=_cues(frame, choice),
        cue_xy=cue_xy,
        cue_width=_width(frame, choice, shown),
        task=task,
        site=site,
        stick=stick,
        topper=topper,
        extension=extension,
        unit="share" if choice.full_scale is not None else str(choice.unit),
        notes=tuple(notes),
    )


# ---- header and choice of columns


def _header(path: Path, shown: str) -> tuple[str, ...]:
    with path.open("rb") as file:
        start = file.read(_HEADER_BYTES)
    if path.stat().st_size > _LARGEST_BYTES:
        raise BadInput(
            Problem(shown, "a file of more than 4 GB", "at most 4 GB", "Cut it into parts of some hours each.")
        )
    line = start.split(b"\n", 1)[0]
    refuse_encoding(line, shown)
    text = line.decode("utf-8-sig").rstrip("\r")
    if "\0" in text or (len(start) == _HEADER_BYTES and b"\n" not in start):
        raise BadInput(
            Problem(shown, "no lines of text", "a CSV file with a header", "Export the recording as CSV first.")
        )
    problem = separator_problem(text, shown)
    if problem is not None:
        raise BadInput(problem)
    cells = next(csv.reader([text]), [])
    header = tuple(cell.strip() for cell in cells)
    if not any(header):
        raise BadInput(Problem(f"{shown}, row 1", "an empty line", "the headers time_s,x,y", "Put the header first."))
    if all(number_problem(cell, "", "") is None for cell in header if cell):
        raise BadInput(
            Problem(f"{shown}, row 1", f"numbers: {shortened(', '.join(header))}", "the headers time_s,x,y",
                    "Put a line with the headers above the numbers.")
        )  # fmt: skip
    return header


def _own_choice(header: tuple[str, ...]) -> ColumnChoice:
    """Our own format with those of its optional columns that are there."""
    there = {name: name for name in ("cue", "cue_x", "cue_y", "cue_width") if name in header}
    return ColumnChoice(
        full_scale=1.0,
        cue=there.get("cue"),
        cue_x=there.get("cue_x"),
        cue_y=there.get("cue_y"),
        cue_width=there.get("cue_width"),
    )


def _refuse_choice(choice: ColumnChoice, header: tuple[str, ...], shown: str, *, foreign: bool) -> None:
    where = f"{shown}, row 1"
    problems = []
    for name in choice.named():
        if header.count(name) > 1:
            problems.append(Problem(where, f'the column "{name}" twice', "each column once", "Rename one of them."))
    absent = [name for name in choice.named() if name not in header]
    if absent:
        offers = " ".join(
            offer for name in absent if foreign and (offer := did_you_mean(name, header)).startswith("Did")
        )
        remedy = offers or "Name them with --time, --x, --y, or rename the headers."
        problems.append(
            Problem(
                where, f"the columns {shortened(', '.join(header), 160)}", f"the columns {', '.join(absent)}", remedy
            )
        )
    if (choice.cue_x is None) != (choice.cue_y is None):
        problems.append(
            Problem(where, "only one of cue_x and cue_y", "both or none", "Name the other one, or leave both out.")
        )
    if foreign:
        problems += _choice_problems(choice, shown)
    if problems:
        raise BadInput(problems)


def _choice_problems(choice: ColumnChoice, shown: str) -> list[Problem]:
    """What is wrong with the choice itself, whatever the file holds."""
    problems = []
    if choice.time_unit == "frame" or choice.time is None:
        if choice.rate_hz is None or not 0 < choice.rate_hz < 1e6:
            found = "frames and no rate" if choice.rate_hz is None else f"a rate of {choice.rate_hz}"
            problems.append(Problem(shown, found, "how many frames there are a second", "Add --rate, e.g. --rate 60."))
    elif choice.time_unit is None and _time_ending(choice.time) is None:
        problems.append(
            Problem(f"{shown}, {choice.time}", "a time column without a unit", "a name that ends in _s, _ms or _min",
                    "Say --time-unit s, ms, min, or frame with --rate.")
        )  # fmt: skip
    if choice.full_scale is not None and not 1e-9 < choice.full_scale < 1e12:
        problems.append(
            Problem(
                shown,
                f"a full scale of {choice.full_scale:g}",
                "a number above 0",
                "For example 127, 32767 or 1; use flip for the sign.",
            )
        )
    if choice.full_scale is not None and choice.unit is not None:
        problems.append(
            Problem(
                shown, "both a full scale and a unit", "one of the two", "Leave out --unit when full output is known."
            )
        )
    if not all(np.isfinite(choice.centre)):
        problems.append(Problem(shown, "a centre that is no number", "x and y at rest", "e.g. --centre 128 128."))
    return problems


def _time_ending(name: str) -> str | None:
    parts = units.split_key(name)
    quantity = units.quantity_of(name)
    return parts[1] if parts and quantity is not None and quantity.name == "time" else None


# ---- cells to numbers


def _frame(path: Path, shown: str, header: tuple[str, ...], choice: ColumnChoice) -> pl.DataFrame:
    """The chosen columns as numbers; BadInput with every bad cell counted when they are none."""
    words = {choice.cue} if choice.cue else set()
    numeric = [name for name in choice.named() if name not in words]
    needed = [choice.time] if choice.time is not None else []
    try:
        frame = _read(path, header, choice, dict.fromkeys(numeric, pl.Float64))
        frame = _without_empty_end(frame)
        if not _is_bad(frame, numeric, needed, choice.cue):
            return frame
        del frame
        text = _read(path, header, choice, {})
    except pl.exceptions.PolarsError as error:
        text = _as_text(path, shown, header, choice, error)
    return _numbers(_without_empty_end(text), numeric, needed, choice.cue, shown)


def _read(
    path: Path, header: tuple[str, ...], choice: ColumnChoice, types: dict[str, type[pl.DataType]]
) -> pl.DataFrame:
    """By position, so that headers need not be unique; the chosen ones are (checked before)."""
    names = {name: f"column_{header.index(name) + 1}" for name in dict.fromkeys(choice.named())}
    kinds = {f"column_{place + 1}": types.get(name, pl.String) for place, name in enumerate(header)}
    frame = pl.read_csv(
        path,
        has_header=False,
        skip_lines=1,
        schema=kinds,
        columns=list(names.values()),
        raise_if_empty=False,
        low_memory=True,
    )
    return frame.rename({numbered: name for name, numbered in names.items()})


def _as_text(
    path: Path, shown: str, header: tuple[str, ...], choice: ColumnChoice, error: pl.exceptions.PolarsError
) -> pl.DataFrame:
    """The second reading, as text; what still fails is told by line."""
    try:
        return _read(path, header, choice, {})
    except pl.exceptions.PolarsError as second:
        _refuse_lines(path, shown, header)
        raise BadInput(
            Problem(shown, "rows that cannot be told apart", "one sample a row", "Export it as CSV anew.")
        ) from (second or error)


def _refuse_lines(path: Path, shown: str, header: tuple[str, ...]) -> None:
    """Rows with too many cells, and bytes that are not UTF-8, found line by line."""
    problems: list[Problem] = []
    more = filled = 0
    with path.open("rb") as file:
        for number, line in enumerate(file, 1):
            filled += bool(line.strip())
            try:
                cells = next(csv.reader([line.decode("utf-8-sig").rstrip("\r\n")]), [])
            except UnicodeDecodeError as error:
                byte = line[error.start]
                problem = Problem(
                    f"{shown}, row {number}, byte {error.start + 1}",
                    f"the byte {byte:02X}, which is not UTF-8 ('{chr(byte)}' if it was saved as Latin-1)",
                    "text in UTF-8",
                    "Save the file again and choose 'CSV UTF-8'.",
                )
            except csv.Error:
                problem = Problem(
                    f"{shown}, row {number}", "cells that cannot be told apart", f"{len(header)} cells",
                    "Export it as CSV anew, with the line ends of today.",
                )  # fmt: skip
            else:
                if line.count(b'"') % 2:
                    problem = Problem(
                        f"{shown}, row {number}", "a quote that is not closed", "numbers without quotes", "Delete it."
                    )
                    problems.append(problem)
                    break
                if len(cells) <= len(header):
                    continue
                problem = Problem(
                    f"{shown}, row {number}",
                    f"{len(cells)} cells",
                    f"{len(header)} ({shortened(', '.join(header))})",
                    "A decimal comma makes one number into two cells: use a point.",
                )
            if len(problems) < _TOLD:
                problems.append(problem)
            else:
                more += 1
    if problems:
        raise BadInput([*problems, *_more(more, shown)])
    if filled <= 1:
        raise _no_rows(shown)


def _no_rows(shown: str) -> BadInput:
    return BadInput(Problem(shown, "a header and no row", "one sample a row", "Was the recording stopped at once?"))


def _more(count: int, shown: str) -> list[Problem]:
    return [Problem(shown, f"{count:,} more of the like", "none", "Put the first ones right first.")] if count else []


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
        bad += [(int(row) + 2, name, cells[int(row)] or "") for row in rows.head(_TOLD)]
    if not bad:
        return pl.DataFrame(columns)
    told = [_bad_cell(shown, row, name, cell, is_cue=name == cue) for row, name, cell in sorted(bad)[:_TOLD]]
    raise BadInput([*told, *_more(count - len(told), shown)])


def _bad_cell(shown: str, row: int, name: str, cell: str, *, is_cue: bool) -> Problem:
    where = f"{shown}, row {row}, {name}"
    if is_cue:
        return Problem(
            where, f'"{shortened(cell)}"', f"one of {', '.join(CUES[1:])}, or nothing", did_you_mean(cell, CUES[1:])
        )
    if not cell:
        return Problem(where, "an empty cell", "the time of this sample", "Delete the row.")
    return number_problem(cell, where, name) or Problem(
        where, f'"{shortened(cell)}"', "a number", "Leave the cell empty when there was no sample."
    )


# ---- numbers to a recording


def _times(frame: pl.DataFrame, choice: ColumnChoice, shown: str, notes: list[str]) -> NDArray[np.float64]:
    rate = choice.rate_hz or 1.0
    if choice.time is None:
        return np.arange(frame.height, dtype=np.float64) / rate
    times = _column(frame, choice.time)
    ending = choice.time_unit or _time_ending(choice.time) or "s"
    if ending == "frame":
        times /= rate
    elif ending != "s":
        times *= units.to_si(1.0, ending)
    step = np.diff(times)
    back = np.flatnonzero(step < 0)
    if back.size:
        column = frame[choice.time]
        told = [
            Problem(
                f"{shown}, row {int(place) + 3}, {choice.time}",
                f"{column[int(place) + 1]:.10g} after {column[int(place)]:.10g}",
                "time that runs forward",
                "Sort the rows, or keep one recording in each file.",
            )
            for place in back[:_TOLD]
        ]
        raise BadInput([*told, *_more(back.size - len(told), shown)])
    same = int(np.count_nonzero(step == 0))
    if same:
        notes.append(f"{same:,} samples bear the same time as the one before")
    return times


def _column(frame: pl.DataFrame, name: str) -> NDArray[np.float64]:
    """A writable copy, empty cells NaN."""
    return np.array(frame[name].to_numpy(), dtype=np.float64)


def _pair(frame: pl.DataFrame, x: str | None, y: str | None, choice: ColumnChoice, shown: str) -> NDArray[np.float64]:
    """Two columns, centred, scaled, x right and y forward."""
    pair = np.zeros((frame.height, 2))
    scale = choice.full_scale or 1.0
    for axis, (name, flip) in enumerate(((x, choice.flip_x), (y, choice.flip_y))):
        if name is None:
            continue
        if frame[name].null_count() == frame.height and name in (choice.x, choice.y):
            raise BadInput(Problem(f"{shown}, {name}", "only empty cells", "numbers", "Is it the right column?"))
        pair[:, axis] = frame[name].to_numpy()
        if choice.centre[axis] != 0.0:
            pair[:, axis] -= choice.centre[axis]
        factor = -scale if flip else scale
        if factor != 1.0:
            pair[:, axis] /= factor
    return pair


def _refuse_scale(xy: NDArray[np.float64], choice: ColumnChoice, shown: str, *, foreign: bool) -> None:
    """Shares that cannot be shares; counts of which nobody said what is full."""
    low, high = float(np.nanmin(xy)), float(np.nanmax(xy))
    runs = f"values from {number_text(low)} to {number_text(high)}"
    name = choice.x if choice.y is None else f"{choice.x} and {choice.y}"
    if choice.full_scale is None:
        if choice.unit is None:
            raise BadInput(
                Problem(f"{shown}, {name}", runs, "how much is full output",
                        "Say --full-scale (1 if these are shares already), or name the unit with --unit, e.g. px.")
            )  # fmt: skip
        return
    if max(-low, high) > _LARGEST_SHARE:
        remedy = (
            "Check --full-scale and --centre."
            if foreign
            else ("If these are counts, read them with --full-scale, and --centre when rest is not 0.")
        )
        raise BadInput(Problem(f"{shown}, {name}", runs, "shares of full output, -1 to 1", remedy))


def _note_gaps(xy: NDArray[np.float64], choice: ColumnChoice, notes: list[str]) -> None:
    gaps = int(np.count_nonzero(np.isnan(xy).any(axis=1)))
    if gaps:
        notes.append(f"{gaps:,} of {len(xy):,} samples have an empty cell")
    if choice.y is None:
        notes.append("one axis only: y was not recorded and stands at 0")


def _cues(frame: pl.DataFrame, choice: ColumnChoice) -> NDArray[np.str_] | None:
    if choice.cue is None:
        return None
    codes = frame[choice.cue].fill_null("").cast(pl.Enum(CUES)).to_physical().to_numpy()
    words: NDArray[np.str_] = np.array(CUES)[codes]
    return words


def _width(frame: pl.DataFrame, choice: ColumnChoice, shown: str) -> float | None:
    if choice.cue_width is None:
        return None
    widths = frame[choice.cue_width].drop_nulls().unique().sort()
    if widths.len() == 0:
        return None
    where = f"{shown}, {choice.cue_width}"
    if widths.len() > 1:
        shown_widths = shortened(", ".join(number_text(width) for width in widths.head(6)))
        raise BadInput(
            Problem(where, f"several widths: {shown_widths}", "one target width", "Make one recording of each width.")
        )
    width = float(widths[0]) / (choice.full_scale or 1.0)
    if width <= 0:
        raise BadInput(Problem(where, number_text(float(widths[0])), "a width above 0", "Leave it out if not known."))
    return width


def write_recording(recording: Recording, path: Path) -> None:
    """Write a recording in our own format, so that it reads back to the same numbers.

    Parameters
    ----------
    recording : Recording
        In shares of full output.
    path : Path
        File to write, whole.

    Raises
    ------
    BadInput
        A recording in a foreign unit: our own format holds shares of full output only.
    """
    if recording.unit != "share":
        raise BadInput(
            Problem(recording.name, f"a recording in {recording.unit}", "shares of full output",
                    "Read it with a full scale before it goes into a case folder.")
        )  # fmt: skip
    data: dict[str, pl.Series] = {
        "time_s": pl.Series(recording.times_s),
        "x": pl.Series(recording.xy[:, 0]),
        "y": pl.Series(recording.xy[:, 1]),
    }
    if recording.cue is not None:
        data["cue"] = pl.Series(recording.cue.tolist(), dtype=pl.String)
    if recording.cue_xy is not None:
        data["cue_x"], data["cue_y"] = pl.Series(recording.cue_xy[:, 0]), pl.Series(recording.cue_xy[:, 1])
    if recording.cue_width is not None:
        data["cue_width"] = pl.Series([recording.cue_width] * len(recording.times_s), dtype=pl.Float64)
    frame = pl.DataFrame(data).with_columns(pl.col(pl.Float64).fill_nan(None))
    content = io.BytesIO()
    frame.write_csv(content, quote_style="never")
    write_whole(path, content.getvalue())
