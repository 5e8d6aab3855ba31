"""The columns of a recording: our own, or those that somebody names of a foreign file."""

from __future__ import annotations

import csv
import math
from dataclasses import dataclass
from typing import Literal

from stickwright import units
from stickwright.codes.message import Text, message
from stickwright.codes.problems import Problems
from stickwright.errors import BadInput, Problem, nearest
from stickwright.records.held import Place
from stickwright.records.plain_text import refuse_encoding, shortened
from stickwright.records.tables import number_problem, separator_problem

__all__ = ["ColumnChoice", "header_of", "own_choice", "refuse_choice", "time_ending"]

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


def header_of(path: Place, shown: str) -> tuple[str, ...]:
    """Column names of a recording, read from its first bytes alone; refuses what is no CSV of ours to read."""
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
    try:
        cells = next(csv.reader([text]), [])
    except csv.Error as error:  # a bare carriage return, or a cell without end
        raise BadInput(
            Problem(f"{shown}, row 1", "headers that cannot be told apart", "the headers time_s,x,y",
                    "Export it as CSV anew, with the line ends of today.")
        ) from error  # fmt: skip
    header = tuple(cell.strip() for cell in cells)
    if not any(header):
        raise BadInput(Problem(f"{shown}, row 1", "an empty line", "the headers time_s,x,y", "Put the header first."))
    if all(number_problem(cell, (), "") is None for cell in header if cell):
        raise BadInput(
            Problem(f"{shown}, row 1", f"numbers: {shortened(', '.join(header))}", "the headers time_s,x,y",
                    "Put a line with the headers above the numbers.")
        )  # fmt: skip
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
    where = f"{shown}, row 1"
    problems = []
    for name in choice.named():
        if header.count(name) > 1:
            problems.append(Problem(where, f'the column "{name}" twice', "each column once", "Rename one of them."))
    absent = [name for name in choice.named() if name not in header]
    if absent:
        offers = tuple(offer for name in absent if foreign and (offer := nearest(name, header)))
        remedy: Text = (
            message(Problems.sentences, parts=offers)
            if offers
            else (
                "Name them with --time, --x, --y, or rename the headers; of a table of movements or presses name its columns "
                "with --start, --target, --selected-at, or with --presses."
            )
        )
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
    elif choice.time_unit is None and time_ending(choice.time) is None:
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
    if not all(math.isfinite(value) for value in choice.centre):
        problems.append(Problem(shown, "a centre that is no number", "x and y at rest", "e.g. --centre 128 128."))
    return problems


def time_ending(name: str) -> str | None:
    """Unit in which a time column is written, by the ending of its name; None when it has none."""
    parts = units.split_key(name)
    quantity = units.quantity_of(name)
    return parts[1] if parts and quantity is not None and quantity.name == "time" else None
