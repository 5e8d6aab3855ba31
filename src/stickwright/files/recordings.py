"""Recordings as CSV: our own format and, when the columns are named, anybody else's.

Own format: ``time_s,x,y`` and if wanted ``cue``, ``cue_x,cue_y``, ``cue_width``, ``select``, ``stroke``, ``z``.

A recording that was made live never was a file: `checked_recording` looks at it as it is, with the eyes with which its file
would be read.
"""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import numpy as np
import polars as pl
from numpy.typing import NDArray

from stickwright import units
from stickwright.codes.expected import Expected
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.recording_faults import RecordingFaults
from stickwright.errors import BadInput, Problem
from stickwright.files.held import FilePlace
from stickwright.files.plain_text import number_text, refuse_unreadable, shortened
from stickwright.files.recording_cells import CUES, MOST_TOLD, frame_of, no_rows
from stickwright.files.recording_columns import (
    ColumnChoice,
    empty_column,
    header_of,
    own_choice,
    refuse_choice,
    time_ending,
)
from stickwright.files.tables import how_many_more
from stickwright.files.writing import write_whole
from stickwright.model.recording import Recording

__all__ = ["CUES", "ColumnChoice", "checked_recording", "read_recording", "recording_csv", "write_recording"]

_MANY_BACK = 0.05
"""Share of rows with an earlier time from which on a column holds no times of samples."""

_NOT_SELECTED = ("", "false", "no", "none", "up", "released", "release")
"""Words of a column of selections for a button that is not down; so is 0."""

_LARGEST_SHARE = 2.0
"""A stick may overshoot its nominal full output; twice that is another unit."""


def read_recording(
    path: FilePlace,
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
    path : FilePlace
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
        x right, y forward; shares of full output, or the foreign unit. Empty cells are NaN and noted; an axis that
        was not recorded is NaN throughout.

    Raises
    ------
    BadInput
        Not readable; columns that are not there; cells that are no numbers (the first ten by row and
        column, then how many more); time that runs backwards or stands still throughout; counts without a full scale.
    """
    shown = shown or path.name
    refuse_unreadable(path, shown, "recording")
    header = header_of(path, shown)
    choice = columns or own_choice(header)
    refuse_choice(choice, header, shown, foreign=columns is not None)
    frame = frame_of(path, shown, header, choice)
    if frame.height == 0:
        raise no_rows(shown)
    notes: list[Text] = []
    times_s = _times(frame, choice, shown, notes)
    if columns is None and choice.y is not None and frame[choice.y].null_count() == frame.height:
        choice = replace(choice, y=None)  # as one axis is written in our own format
    if columns is None and choice.z is not None and frame[choice.z].null_count() == frame.height:
        choice = replace(choice, z=None)
    xy = _pair(frame, choice.x, choice.y, choice, shown)
    _refuse_scale(xy, choice, shown, foreign=columns is not None)
    z = None if choice.z is None else _column(frame, choice.z) / (choice.full_scale or 1.0)
    if z is not None and choice.full_scale is not None and bool(np.isfinite(z).any()):
        _refuse_range(z, (str(choice.z),), shown, foreign=columns is not None)
    _note_gaps(xy, notes, one_axis=choice.y is None)
    cue_xy = _pair(frame, choice.cue_x, choice.cue_y, choice, shown) if choice.cue_x and choice.cue_y else None
    left_out = [name for name in header if name not in ("y", "z", *choice.named())]
    if left_out and columns is None:
        notes.append(message(RecordingFaults.not_read, columns=tuple(map(Name, left_out))))
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
        selected=_selected(frame, choice, shown, foreign=columns is not None),
        stroke=_strokes(frame, choice),
        z=z,
    )


def checked_recording(recording: Recording, *, shown: str) -> Recording:
    """A recording that was made live, refused and noted as its file would be.

    Parameters
    ----------
    recording : Recording
        In shares of full output, samples as they came.
    shown : str
        Its name in sentences.

    Returns
    -------
    Recording
        The same with the notes of a reading; equal to what `read_recording` reads from its `recording_csv`.

    Raises
    ------
    BadInput
        No samples; a stick that sent nothing; time that runs backwards or stands still throughout; values too large to be shares
        of full output; a button that was never let go.
    """
    if not len(recording.times_s):
        raise no_rows(shown)
    notes: list[Text] = [*recording.notes]
    _refuse_times(recording.times_s, recording.times_s, (shown, "time_s"), notes)
    if np.isnan(recording.xy[:, 0]).all():
        raise BadInput(empty_column((shown, "x")))
    one_axis = bool(np.isnan(recording.xy[:, 1]).all())
    _refuse_range(recording.xy, ("x",) if one_axis else ("x", "y"), shown, foreign=False)
    _note_gaps(recording.xy, notes, one_axis=one_axis)
    if recording.selected is not None:
        _refuse_constant(recording.selected, (shown, "select"))
    return replace(recording, notes=tuple(notes))


def _times(frame: pl.DataFrame, choice: ColumnChoice, shown: str, notes: list[Text]) -> NDArray[np.float64]:
    rate = choice.rate_hz or 1.0
    if choice.time is None:
        return np.arange(frame.height, dtype=np.float64) / rate
    times = _column(frame, choice.time)
    ending = choice.time_unit or time_ending(choice.time) or "s"
    if ending == "frame":
        times /= rate
    elif ending != "s":
        times *= units.to_si(1.0, ending)
    _refuse_times(times, frame[choice.time].to_numpy(), (shown, choice.time), notes)
    return times


def _refuse_times(
    times_s: NDArray[np.float64], typed: NDArray[np.float64], where: tuple[str, str], notes: list[Text]
) -> None:
    """Time that runs backwards or stands still throughout; equal stamps are noted.

    Parameters
    ----------
    times_s : array
    typed : array
        The same in the unit of the file.
    where : (str, str)
        File and column.
    notes : list of Message
        What is noted is added.
    """
    shown, column = where
    step = np.diff(times_s)
    back = np.flatnonzero(step < 0)
    if back.size >= 3 and back.size > _MANY_BACK * step.size:
        found = message(RecordingFaults.earlier, count=int(back.size), total=int(times_s.size))
        wanted, remedy = message(RecordingFaults.sample_times), message(RecordingFaults.say_movements)
        raise BadInput(Problem(where, found, wanted, remedy))
    if back.size:
        told = [
            Problem(
                (shown, message(FilePlaces.row, number=int(place) + 3), column),
                message(
                    RecordingFaults.after,
                    later=Name(f"{typed[int(place) + 1]:.10g}"),
                    earlier=Name(f"{typed[int(place)]:.10g}"),
                ),
                message(RecordingFaults.forward),
                message(RecordingFaults.one_recording),
            )
            for place in back[:MOST_TOLD]
        ]
        raise BadInput([*told, *how_many_more(back.size - len(told), shown)])
    same = int(np.count_nonzero(step == 0))
    if same and same == step.size:
        found, wanted = message(RecordingFaults.same_time, count=int(times_s.size)), message(RecordingFaults.forward)
        raise BadInput(Problem(where, found, wanted, message(RecordingFaults.say_no_time)))
    if same:
        notes.append(message(RecordingFaults.same_stamps, count=same))


def _column(frame: pl.DataFrame, name: str) -> NDArray[np.float64]:
    """A writable copy, empty cells NaN."""
    return np.array(frame[name].to_numpy(), dtype=np.float64)


def _pair(frame: pl.DataFrame, x: str | None, y: str | None, choice: ColumnChoice, shown: str) -> NDArray[np.float64]:
    """Two columns, centred, scaled, x right and y forward; NaN where there is no column."""
    pair = np.full((frame.height, 2), np.nan)
    scale = choice.full_scale or 1.0
    for axis, (name, flip) in enumerate(((x, choice.flip_x), (y, choice.flip_y))):
        if name is None:
            continue
        if frame[name].null_count() == frame.height and name in (choice.x, choice.y):
            raise BadInput(empty_column((shown, name)))
        pair[:, axis] = frame[name].to_numpy()
        if choice.centre[axis] != 0.0:
            pair[:, axis] -= choice.centre[axis]
        factor = -scale if flip else scale
        if factor != 1.0:
            pair[:, axis] /= factor
    return pair


def _refuse_scale(xy: NDArray[np.float64], choice: ColumnChoice, shown: str, *, foreign: bool) -> None:
    """Shares that cannot be shares; counts of which nobody said what is full."""
    names = (choice.x,) if choice.y is None else (choice.x, choice.y)
    if choice.full_scale is not None:
        _refuse_range(xy, names, shown, foreign=foreign)
    elif choice.unit is None:
        wanted, remedy = message(RecordingFaults.full_output), message(RecordingFaults.say_scale_or_unit)
        raise BadInput(Problem((shown, *names), _between(xy), wanted, remedy))


def _between(values: NDArray[np.float64]) -> Message:
    low, high = float(np.nanmin(values)), float(np.nanmax(values))
    return message(RecordingFaults.between, low_in_unit=low, high_in_unit=high)


def _refuse_range(values: NDArray[np.float64], names: tuple[str, ...], shown: str, *, foreign: bool) -> None:
    """Values too large to be shares of full output."""
    if float(np.nanmax(np.abs(values))) > _LARGEST_SHARE:
        remedy = message(RecordingFaults.check_scale if foreign else RecordingFaults.if_counts)
        raise BadInput(Problem((shown, *names), _between(values), message(RecordingFaults.shares), remedy))


def _note_gaps(xy: NDArray[np.float64], notes: list[Text], *, one_axis: bool) -> None:
    recorded = xy[:, :1] if one_axis else xy
    gaps = int(np.count_nonzero(np.isnan(recorded).any(axis=1)))
    if gaps:
        notes.append(message(RecordingFaults.gaps, count=gaps, total=len(xy)))
    if one_axis:
        notes.append(message(RecordingFaults.one_axis))


def _cues(frame: pl.DataFrame, choice: ColumnChoice) -> NDArray[np.str_] | None:
    if choice.cue is None:
        return None
    codes = frame[choice.cue].fill_null("").cast(pl.Enum(CUES)).to_physical().to_numpy()
    words: NDArray[np.str_] = np.array(CUES)[codes]
    return words


def _selected(
    frame: pl.DataFrame, choice: ColumnChoice, shown: str, *, foreign: bool
) -> NDArray[np.bool_] | None:  # fmt: skip
    """Where a button is down, or a row bears an event."""
    if choice.select is None:
        return None
    cells = frame[choice.select].fill_null("").str.strip_chars().str.to_lowercase()
    known = cells.cast(pl.Float64, strict=False)
    down: NDArray[np.bool_] = (~cells.is_in(_NOT_SELECTED) & ~(known == 0).fill_null(False)).to_numpy()
    if not foreign and not down.any():
        return None
    _refuse_constant(down, (shown, choice.select))
    return down


def _refuse_constant(down: NDArray[np.bool_], where: tuple[str, str]) -> None:
    """A button that was never pressed, or never let go."""
    if not down.any() or down.all():
        always, wanted = message(RecordingFaults.always, down=bool(down.all())), message(RecordingFaults.button)
        raise BadInput(Problem(where, always, wanted, message(RecordingFaults.leave_out_select)))


def _strokes(frame: pl.DataFrame, choice: ColumnChoice) -> NDArray[np.int64] | None:
    if choice.stroke is None:
        return None
    numbers = frame[choice.stroke].to_numpy()
    codes = np.full(len(numbers), -1, dtype=np.int64)
    known = np.isfinite(numbers)
    codes[known] = np.unique(numbers[known], return_inverse=True)[1]
    return codes


def _width(frame: pl.DataFrame, choice: ColumnChoice, shown: str) -> float | None:
    if choice.cue_width is None:
        return None
    widths = frame[choice.cue_width].drop_nulls().unique().sort()
    if widths.len() == 0:
        return None
    where = (shown, choice.cue_width)
    if widths.len() > 1:
        shown_widths = shortened(", ".join(number_text(width) for width in widths.head(6)))
        found, wanted = message(RecordingFaults.widths, typed=Name(shown_widths)), message(RecordingFaults.one_width)
        raise BadInput(Problem(where, found, wanted, message(RecordingFaults.recording_each)))
    width = float(widths[0]) / (choice.full_scale or 1.0)
    if width <= 0:
        typed, remedy = number_text(float(widths[0])), message(RecordingFaults.leave_out_unknown)
        raise BadInput(Problem(where, typed, message(Expected.above_zero), remedy))
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
    write_whole(path, recording_csv(recording))


def recording_csv(recording: Recording) -> bytes:
    """The bytes of a recording in our own format; see `write_recording`.

    Parameters
    ----------
    recording : Recording
        In shares of full output.

    Raises
    ------
    BadInput
        A recording in a foreign unit: our own format holds shares of full output only.
    """
    if recording.unit != "share":
        found, wanted = message(RecordingFaults.foreign, unit=Name(recording.unit)), message(RecordingFaults.shares)
        raise BadInput(Problem((recording.name,), found, wanted, message(RecordingFaults.read_with_scale)))
    data: dict[str, pl.Series] = {
        "time_s": pl.Series(recording.times_s),
        "x": pl.Series(recording.xy[:, 0]),
        "y": pl.Series(recording.xy[:, 1]),
    }
    if recording.cue is not None:
        data["cue"] = pl.Series(recording.cue.tolist(), dtype=pl.String)
    if recording.cue_xy is not None:
        data["cue_x"], data["cue_y"] = pl.Series(recording.cue_xy[:, 0]), pl.Series(recording.cue_xy[:, 1])
    if recording.selected is not None:
        data["select"] = pl.Series(recording.selected).cast(pl.Int8)
    if recording.z is not None:
        data["z"] = pl.Series(recording.z)
    if recording.stroke is not None:
        data["stroke"] = pl.Series([None if each < 0 else each for each in recording.stroke.tolist()], dtype=pl.Int64)
    if recording.cue_width is not None:
        data["cue_width"] = pl.Series([recording.cue_width] * len(recording.times_s), dtype=pl.Float64)
    frame = pl.DataFrame(data).with_columns(pl.col(pl.Float64).fill_nan(None))
    content = io.BytesIO()
    frame.write_csv(content, quote_style="never")
    return content.getvalue()
