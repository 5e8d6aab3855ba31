"""The columns of a recording: our own, or those that somebody names of a foreign file."""

from __future__ import annotations

import csv
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright import units
from stickwright.codes.expected import Expected
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.problems import Problems
from stickwright.codes.recording_faults import RecordingFaults
from stickwright.codes.remedies import Remedies
from stickwright.codes.table_faults import TableFaults
from stickwright.errors import BadInput, Problem, nearest
from stickwright.files.held import FilePlace
from stickwright.files.plain_text import refuse_encoding, shortened
from stickwright.files.tables import column_twice, header_row, number_problem, separator_problem

__all__ = [
    "ColumnChoice", "columns_absent", "empty_column", "header_of", "no_time_unit", "own_choice", "refuse_choice", "time_ending",
]  # fmt: skip

_LARGEST_BYTES = 4_000_000_000
_HEADER_BYTES = 65_536
_OWN_OPTIONAL = ("cue", "cue_x", "cue_y", "cue_width", "select", "stroke", "z")

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
    select : str, optional
        A button (0 while it is up) or an event: where it turns from 0 or nothing to something, a target was selected.
    stroke : str, optional
        Number of the stroke of a drawing; empty where the pen was up.
    z : str, optional
        Third axis of a sensor: tremor is told from all three together, along the line on which it is strongest.
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
    select: str | None = None
    stroke: str | None = None
    z: str | None = None

    def words(self) -> tuple[str, ...]:
        """The columns that are read as text."""
        return tuple(name for name in (self.cue, self.select) if name is not None)

    def named(self) -> tuple[str, ...]:
        """Every column that is to be read, in order."""
        every = (
            self.time, self.x, self.y, self.cue, self.cue_x, self.cue_y, self.cue_width, self.select, self.stroke,
            self.z,
        )  # fmt: skip
        return tuple(name for name in every if name is not None)


def header_of(path: FilePlace, shown: str) -> tuple[str, ...]:
    """Column names of a recording, read from its first bytes alone; refuses what is no CSV of ours to read."""
    with path.open("rb") as file:
        start = file.read(_HEADER_BYTES)
    size = path.stat().st_size
    if size > _LARGEST_BYTES:
        wanted = message(Expected.at_most_bytes, contents="recording", millions=_LARGEST_BYTES // 1_000_000)
        found = message(Found.size, millions=size // 1_000_000)
        raise BadInput(Problem((shown,), found, wanted, message(RecordingFaults.split)))
    line = start.split(b"\n", 1)[0]
    refuse_encoding(line, shown)
    text = line.decode("utf-8-sig").rstrip("\r")
    if "\0" in text or (len(start) == _HEADER_BYTES and b"\n" not in start):
        found, wanted = message(RecordingFaults.no_lines), message(RecordingFaults.csv)
        raise BadInput(Problem((shown,), found, wanted, message(Remedies.export_as_csv)))
    problem = separator_problem(text, shown)
    if problem is not None:
        raise BadInput(problem)
    where, wanted = header_row(shown), message(TableFaults.headers, names=Name("time_s,x,y"))
    try:
        cells = next(csv.reader([text]), [])
    except csv.Error as error:  # a bare carriage return, or a cell without end
        found = message(RecordingFaults.mixed_headers)
        raise BadInput(Problem(where, found, wanted, message(Remedies.export_csv))) from error
    header = tuple(cell.strip() for cell in cells)
    if not any(header):
        first = message(RecordingFaults.header_first)
        raise BadInput(Problem(where, message(RecordingFaults.empty_line), wanted, first))
    if all(number_problem(cell, (), "") is None for cell in header if cell):
        found = message(TableFaults.numbers_first, typed=Name(shortened(", ".join(header))))
        raise BadInput(Problem(where, found, wanted, message(TableFaults.put_headers)))
    return header


def own_choice(header: tuple[str, ...]) -> ColumnChoice:
    """Our own format with those of its optional columns that are there."""
    there = {name: name for name in _OWN_OPTIONAL if name in header}
    return ColumnChoice(
        full_scale=1.0,
        cue=there.get("cue"),
        cue_x=there.get("cue_x"),
        cue_y=there.get("cue_y"),
        cue_width=there.get("cue_width"),
        select=there.get("select"),
        stroke=there.get("stroke"),
        z=there.get("z"),
    )


def refuse_choice(choice: ColumnChoice, header: tuple[str, ...], shown: str, *, foreign: bool) -> None:
    """Refuse named columns that are not there, or there twice."""
    where = header_row(shown)
    problems = [column_twice(where, name) for name in choice.named() if header.count(name) > 1]
    absent = [name for name in choice.named() if name not in header]
    if absent:
        offers = tuple(offer for name in absent if foreign and (offer := nearest(name, header)))
        remedy = message(Problems.sentences, parts=offers or (message(RecordingFaults.say_columns),))
        problems.append(columns_absent(where, header, absent, remedy))
    if (choice.cue_x is None) != (choice.cue_y is None):
        found, both = message(RecordingFaults.one_cue), message(RecordingFaults.both_cues)
        problems.append(Problem(where, found, both, message(RecordingFaults.other_cue)))
    if foreign:
        problems += _choice_problems(choice, shown)
    if problems:
        raise BadInput(problems)


def columns_absent(where: tuple[Text, ...], header: Sequence[str], absent: Sequence[str], remedy: Message) -> Problem:
    """Columns that were named and are not there.

    Parameters
    ----------
    where : tuple of Message or str
    header : sequence of str
        Those that are there.
    absent : sequence of str
    remedy : Message
    """
    found = message(TableFaults.columns, names=Name(shortened(", ".join(header), 160)))
    return Problem(where, found, message(TableFaults.columns, names=Name(", ".join(absent))), remedy)


def empty_column(where: tuple[Text, ...]) -> Problem:
    """A column that was named and holds nothing."""
    number = message(Expected.number, unit=None)
    return Problem(where, message(Found.empty_cells), number, message(Remedies.right_column))


def no_time_unit(where: tuple[Text, ...], *, or_frames: bool) -> Problem:
    """A column of times of which nobody said the unit.

    Parameters
    ----------
    where : tuple of Message or str
    or_frames : bool
        Times may be counted in frames too.
    """
    remedy = message(TableFaults.say_time_unit, or_frames=or_frames)
    return Problem(where, message(TableFaults.no_time_unit), message(TableFaults.time_ending), remedy)


def _choice_problems(choice: ColumnChoice, shown: str) -> list[Problem]:
    """What is wrong with the choice itself, whatever the file holds."""
    problems = []
    if choice.time_unit == "frame" or choice.time is None:
        if choice.rate_hz is None or not 0 < choice.rate_hz < 1e6:
            none = choice.rate_hz is None or not math.isfinite(choice.rate_hz)
            found = (
                message(RecordingFaults.no_rate)
                if none
                else message(RecordingFaults.rate, rate_hz=choice.rate_hz or 0.0)
            )
            wanted = message(RecordingFaults.frames_a_second)
            problems.append(Problem((shown,), found, wanted, message(RecordingFaults.say_rate)))
    elif choice.time_unit is None and time_ending(choice.time) is None:
        problems.append(no_time_unit((shown, choice.time), or_frames=True))
    if choice.full_scale is not None and not 1e-9 < choice.full_scale < 1e12:
        found = message(RecordingFaults.full_scale, typed=Name(f"{choice.full_scale:g}"))
        wanted = message(Expected.above_zero)
        problems.append(Problem((shown,), found, wanted, message(RecordingFaults.say_full_scale)))
    if choice.full_scale is not None and choice.unit is not None:
        found, wanted = message(RecordingFaults.scale_and_unit), message(Expected.one_of_two)
        problems.append(Problem((shown,), found, wanted, message(RecordingFaults.leave_out_unit)))
    if not all(math.isfinite(value) for value in choice.centre):
        found, wanted = message(RecordingFaults.no_centre), message(RecordingFaults.centre)
        problems.append(Problem((shown,), found, wanted, message(RecordingFaults.say_centre)))
    return problems


def time_ending(name: str) -> str | None:
    """Unit in which a time column is written, by the ending of its name; None when it has none."""
    parts = units.split_key(name)
    quantity = units.quantity_of(name)
    return parts[1] if parts and quantity is not None and quantity.name == "time" else None
