"""Recordings made live. When `append_samples` returns, the samples outlive a crash of the program.

New samples stand in `tail` as they came, a row for each batch. Every `PACK_SAMPLES` they are packed into a `chunk`, in the same
transaction that keeps the last of them, so that a sample is always in exactly one place. A program that dies leaves a tail
behind; `recover` packs it and says which recordings were cut short.

What happened to a recording (began, paused, stopped, set aside, ...) is a list of acts; nothing in the recording itself changes.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal, get_args

import numpy as np
import sqlalchemy as sa
from numpy.typing import NDArray

from stickwright.codes.entries import Entries
from stickwright.codes.message import Text, message
from stickwright.codes.player_records import PlayerRecords
from stickwright.codes.records_file import RecordsFile
from stickwright.codes.versions import Versions
from stickwright.errors import BadInput, Problem
from stickwright.store.opening import Store, new_id
from stickwright.store.packing import digest_of, packed, unpacked
from stickwright.store.schema import chunk, document, recording, recording_act, tail, visit

__all__ = [
    "ENDS", "RecordingRow", "append_samples", "begin_recording", "finish_recording", "note_recording", "recording_named",
    "recordings", "recover", "samples_of", "set_aside", "take_back",
]  # fmt: skip

Array = NDArray[np.float64]

PACK_SAMPLES = 8192
"""Eight seconds at full rate: packing takes some ten milliseconds, and so delays one batch in two hundred."""
MOST_IN_CHUNK = 4096
End = Literal["done", "stopped", "cut short"]
Aside = Literal["set aside", "taken back"]
"""Acts are kept in the records as they stand here."""
ENDS: tuple[End, ...] = get_args(End)
_COURSE: tuple[Literal["began", "paused", "resumed", "went on"] | End, ...] = (
    "began", "paused", "resumed", "went on", *ENDS,
)  # fmt: skip
_ASIDE: tuple[Aside, ...] = get_args(Aside)
_LONGEST_NAME = 60
CONDITION = "condition"
"""Among what was asked: the state of the site, which is no setting of the task."""
SIMULATED = "practice"
"""Source of what the simulated player did."""
REPLAYED = "replay"
"""Source of a recording played back."""


@dataclass(frozen=True)
class RecordingRow:
    """A recording in a list.

    Parameters
    ----------
    id, visit_id : int
    name : str
        Of its own within the visit; its file in a case folder is ``recordings/<name>.csv``.
    site, task : str
    stick, topper, extension : str
        On what it was made, empty when not said.
    source, device : str
        How the stick was read: ``browser``, ``computer``, ``practice`` (the simulated player) or ``replay``, and which it was.
    columns : tuple of str
    asked : mapping
        Settings of the task.
    at, who : str
        When it began, and by whom.
    samples : int
    seconds : float
        Time of the last sample; 0 without any.
    state : str
        ``running``, ``paused``, ``done``, ``stopped`` or ``cut short``.
    aside : bool
        Left out of everything that is worked out, and kept.
    """

    id: int
    visit_id: int
    name: str
    site: str
    task: str
    stick: str
    topper: str
    extension: str
    source: str
    device: str
    columns: tuple[str, ...]
    asked: Mapping[str, Any]
    at: str
    who: str
    samples: int
    seconds: float
    state: str
    aside: bool

    @property
    def condition(self) -> str:
        """State of the site in which it was made; '' for the usual one."""
        return str(self.asked.get(CONDITION, ""))

    @property
    def task_asked(self) -> Mapping[str, Any]:
        """Settings of the task alone."""
        return {key: value for key, value in self.asked.items() if key != CONDITION}

    @property
    def simulated(self) -> bool:
        """Whether the simulated player made it, for training; told by its source, so that older ones are known too."""
        return self.source == SIMULATED

    @property
    def replayed(self) -> bool:
        """Whether another recording was played back; told by its source too."""
        return self.source == REPLAYED


def begin_recording(
    store: Store, visit_id: int, *, site: str, task: str, columns: Sequence[str], source: str, device: str = "",
    stick: str = "", topper: str = "", extension: str = "", asked: Mapping[str, Any] | None = None, who: str,
) -> RecordingRow:  # fmt: skip
    """Begin a recording of a visit, without samples yet.

    Parameters
    ----------
    store : Store
    visit_id : int
    site, task : str
    columns : sequence of str
        ``time_s``, ``x``, ``y`` and what else each sample has; see `stickwright.measure.steps.RECORDED_COLUMNS`.
    source : str
        ``browser``, ``computer`` or ``replay``.
    device, stick, topper, extension : str
    asked : mapping, optional
        Settings of the task, so that it can be shown again as it was.
    who : str

    Raises
    ------
    BadInput
        No such visit.
    """
    columns = tuple(columns)
    if columns[:3] != ("time_s", "x", "y") or len(set(columns)) != len(columns):
        raise ValueError(f"columns of a recording begin with time_s, x, y, each once: {columns}")
    with store.write(who, "") as connection:
        if connection.execute(sa.select(visit.c.id).where(visit.c.id == visit_id)).first() is None:
            raise BadInput(_no_visit(visit_id))
        values = {
            "at": store.at(), "who": who, "visit_id": visit_id, "name": _free_name(connection, visit_id, task, site),
            "site": site, "task": task, "stick": stick, "topper": topper, "extension": extension, "source": source,
            "device": device[:200], "columns": list(columns), "asked": dict(asked or {}),
        }  # fmt: skip
        recording_id = new_id(connection, sa.insert(recording).values(values))
        _note(store, connection, recording_id, "began", who, 0)
        return _rows(connection, recording.c.id == recording_id)[0]


def _free_name(connection: sa.Connection, visit_id: int, task: str, site: str) -> str:
    slug = re.sub(r"[^\w]+", "-", f"{task} {site}".casefold()).strip("-")[:_LONGEST_NAME] or "recording"
    taken = set(connection.execute(sa.select(recording.c.name).where(recording.c.visit_id == visit_id)).scalars())
    files = set(connection.execute(sa.select(document.c.name).where(document.c.visit_id == visit_id)).scalars())
    number = 1
    while f"{slug}-{number}" in taken or f"recordings/{slug}-{number}.csv" in files:
        number += 1
    return f"{slug}-{number}"


_HELD = sa.select(
    recording.c.columns,
    sa.select(chunk.c.first + chunk.c.samples).where(chunk.c.recording_id == recording.c.id)
    .order_by(chunk.c.first.desc()).limit(1).scalar_subquery().label("in_chunks"),
    sa.select(tail.c.sample).where(tail.c.recording_id == recording.c.id)
    .order_by(tail.c.sample.desc()).limit(1).scalar_subquery().label("last_in_tail"),
    sa.select(sa.func.length(tail.c.body)).where(tail.c.recording_id == recording.c.id)
    .order_by(tail.c.sample.desc()).limit(1).scalar_subquery().label("last_bytes"),
    sa.select(recording_act.c.what)
    .where(recording_act.c.recording_id == recording.c.id, recording_act.c.what.in_(_COURSE))
    .order_by(recording_act.c.id.desc()).limit(1).scalar_subquery().label("state"),
).where(recording.c.id == sa.bindparam("recording_id"))  # fmt: skip


@dataclass(frozen=True)
class _Held:
    columns: int
    packed: int
    samples: int
    state: str


def _no_visit(visit_id: int) -> Problem:
    found = message(Versions.visit, number=visit_id)
    return Problem("recording", found, message(Entries.kept_visit), message(Entries.back_to_player))


def _held(connection: sa.Connection, recording_id: int) -> _Held:
    row = connection.execute(_HELD, {"recording_id": recording_id}).first()
    if row is None:
        raise BadInput(
            Problem(
                "recording",
                message(Entries.number, number=recording_id),
                message(PlayerRecords.a_recording),
                message(PlayerRecords.new_recording),
            )
        )
    columns = len(row.columns)
    in_chunks = row.in_chunks or 0
    samples = in_chunks if row.last_in_tail is None else row.last_in_tail + row.last_bytes // (8 * columns)
    return _Held(columns, in_chunks, samples, row.state)


def append_samples(store: Store, recording_id: int, rows: Array, *, first: int) -> int:
    """Keep samples. When this returns they outlive a crash; a power cut may cost those since the last pause or finish.

    Samples that are held already are passed over, so that a batch may be sent again when its answer was lost.

    Parameters
    ----------
    store : Store
    recording_id : int
    rows : array, shape (n, k)
        In the recording's columns.
    first : int
        Number of the first of them, counted from 0 at the beginning of the recording.

    Returns
    -------
    int
        How many samples are held.

    Raises
    ------
    BadInput
        Samples in between are missing, the recording is over or is not there, or the disk refused.
    """
    rows = np.ascontiguousarray(rows, dtype="<f8")
    with store.write("", "", samples=True) as connection:
        held = _held(connection, recording_id)
        if rows.ndim != 2 or rows.shape[1] != held.columns:
            raise ValueError(f"samples of shape {rows.shape} for a recording of {held.columns} columns")
        if first < 0 or first > held.samples:
            raise BadInput(
                Problem(
                    "samples",
                    message(PlayerRecords.sample_number, number=first),
                    message(PlayerRecords.next_sample, number=held.samples),
                    message(PlayerRecords.send_again),
                )
            )
        new = rows[held.samples - first :]
        if not len(new):
            return held.samples
        if held.state in ENDS:
            if held.state != "cut short":
                raise BadInput(
                    Problem(
                        "samples",
                        message(PlayerRecords.more_samples, count=len(new)),
                        message(PlayerRecords.running_recording),
                        message(PlayerRecords.new_recording),
                    )
                )
            _note(store, connection, recording_id, "went on", "stickwright", held.samples)
        place = {"recording_id": recording_id, "sample": held.samples, "body": new.tobytes()}
        connection.execute(sa.insert(tail), place)
        samples = held.samples + len(new)
        if samples - held.packed >= PACK_SAMPLES:
            _pack(connection, recording_id, held.columns)
        return samples


def _pack(connection: sa.Connection, recording_id: int, columns: int) -> None:
    """The tail into chunks, all of it."""
    mine = tail.c.recording_id == recording_id
    rows = connection.execute(sa.select(tail.c.sample, tail.c.body).where(mine).order_by(tail.c.sample)).all()
    if not rows:
        return
    samples = np.frombuffer(b"".join(row.body for row in rows), dtype="<f8").reshape(-1, columns)
    for start in range(0, len(samples), MOST_IN_CHUNK):
        part = samples[start : start + MOST_IN_CHUNK]
        connection.execute(
            sa.insert(chunk).values(
                recording_id=recording_id, first=rows[0].sample + start, samples=len(part), body=packed(part),
                digest=digest_of(part),
            )
        )  # fmt: skip
    connection.execute(sa.delete(tail).where(mine))


def finish_recording(
    store: Store, recording_id: int, what: Literal["done", "stopped"] | str, *, who: str
) -> RecordingRow:
    """The recording is over; what is left of it is packed. Finishing once more changes nothing.

    Parameters
    ----------
    store : Store
    recording_id : int
    what : str
        ``done`` or ``stopped``.
    who : str
    """
    if what not in ENDS:
        raise ValueError(f"a recording ends {' or '.join(ENDS)}, not {what!r}")
    with store.write(who, "") as connection:
        held = _held(connection, recording_id)
        _pack(connection, recording_id, held.columns)
        if held.state not in ("done", "stopped"):
            _note(store, connection, recording_id, what, who, held.samples)
        return _rows(connection, recording.c.id == recording_id)[0]


def note_recording(store: Store, recording_id: int, what: str, *, who: str, detail: str = "") -> None:
    """What happened at this sample: ``paused``, ``resumed``, ``gap``, ``unplugged``."""
    if what in (*ENDS, *_ASIDE, "began"):
        raise ValueError(f"{what!r} has a function of its own")
    with store.write(who, "") as connection:
        samples = _held(connection, recording_id).samples
        _note(store, connection, recording_id, what, who, samples, detail=detail)


def set_aside(store: Store, recording_id: int, *, who: str) -> RecordingRow:
    """Leave a recording out of everything that is worked out; it stays kept, and `take_back` undoes it."""
    return _turned(store, recording_id, "set aside", who)


def take_back(store: Store, recording_id: int, *, who: str) -> RecordingRow:
    """Count a recording again that was set aside."""
    return _turned(store, recording_id, "taken back", who)


def _turned(store: Store, recording_id: int, what: Aside, who: str) -> RecordingRow:
    with store.write(who, "") as connection:
        held = _held(connection, recording_id)
        if _rows(connection, recording.c.id == recording_id)[0].aside != (what == "set aside"):
            _note(store, connection, recording_id, what, who, held.samples)
        return _rows(connection, recording.c.id == recording_id)[0]


def _note(
    store: Store, connection: sa.Connection, recording_id: int, what: str, who: str, sample: int, *, detail: str = ""
) -> None:
    values = {"at": store.at(), "who": who, "recording_id": recording_id, "what": what, "sample": sample}
    connection.execute(sa.insert(recording_act).values(**values, detail=detail))


def recordings(store: Store, visit_id: int) -> tuple[RecordingRow, ...]:
    """The recordings of a visit, in the order made; those set aside too."""
    with store.read() as connection:
        return _rows(connection, recording.c.visit_id == visit_id)


def recording_named(store: Store, recording_id: int) -> RecordingRow:
    """One recording; BadInput when there is none."""
    with store.read() as connection:
        _held(connection, recording_id)
        return _rows(connection, recording.c.id == recording_id)[0]


def _rows(connection: sa.Connection, matches: sa.ColumnElement[bool]) -> tuple[RecordingRow, ...]:
    found = connection.execute(sa.select(recording).where(matches).order_by(recording.c.id)).mappings().all()
    acts: dict[int, list[str]] = {}
    joined = sa.select(recording_act.c.recording_id, recording_act.c.what).join(recording)
    for key, what in connection.execute(joined.where(matches).order_by(recording_act.c.id)):
        acts.setdefault(key, []).append(what)
    rows = []
    for one in found:
        held = _held(connection, one["id"])
        said = acts[one["id"]]
        course = [what for what in said if what in _COURSE][-1]
        aside = [what for what in said if what in _ASIDE][-1:] == ["set aside"]
        names = (
            "id",
            "visit_id",
            "name",
            "site",
            "task",
            "stick",
            "topper",
            "extension",
            "source",
            "device",
            "asked",
            "at",
            "who",
        )
        rows.append(
            RecordingRow(
                **{name: one[name] for name in names}, columns=tuple(one["columns"]), samples=held.samples,
                seconds=_last_time(connection, one["id"], held),
                state=course if course in ("paused", *ENDS) else "running", aside=aside,
            )
        )  # fmt: skip
    return tuple(rows)


def _last_time(connection: sa.Connection, recording_id: int, held: _Held) -> float:
    if not held.samples:
        return 0.0
    if held.samples > held.packed:
        wanted = sa.select(tail.c.body).where(tail.c.recording_id == recording_id).order_by(tail.c.sample.desc())
        body = connection.execute(wanted.limit(1)).scalar_one()
        return float(np.frombuffer(body, dtype="<f8")[-held.columns])
    wanted = sa.select(chunk.c.body).where(chunk.c.recording_id == recording_id).order_by(chunk.c.first.desc())
    try:
        return float(unpacked(connection.execute(wanted.limit(1)).scalar_one())[-1, 0])
    except ValueError:  # told in full when its samples are asked for; the list stays readable
        return float("nan")


def samples_of(store: Store, recording_id: int, *, upto: int | None = None) -> Array:
    """All samples of a recording, bit for bit as they came.

    Parameters
    ----------
    store : Store
    recording_id : int
    upto : int, optional
        Only the first so many.

    Returns
    -------
    array, shape (n, k)

    Raises
    ------
    BadInput
        No such recording, or kept bytes that are no longer those that were kept.
    """
    with store.read() as connection:
        return _samples(connection, store.place, recording_id, upto)


def _samples(connection: sa.Connection, place: Text, recording_id: int, upto: int | None) -> Array:
    held = _held(connection, recording_id)
    most = held.samples if upto is None else upto
    chunks = sa.select(chunk).where(chunk.c.recording_id == recording_id, chunk.c.first < most).order_by(chunk.c.first)
    parts: list[Array] = []
    at = 0
    for row in connection.execute(chunks):
        try:
            part = unpacked(row.body)
        except ValueError:
            part = np.empty((0, held.columns))
        if row.first != at or len(part) != row.samples or digest_of(part) != row.digest:
            raise BadInput(
                Problem(
                    (place, message(RecordsFile.recording_of, number=recording_id, first=row.first)),
                    message(RecordsFile.changed_bytes),
                    message(RecordsFile.saved_bytes),
                    message(RecordsFile.restore_recording),
                )
            )
        at += len(part)
        parts.append(part)
    tails = sa.select(tail.c.body).where(tail.c.recording_id == recording_id).order_by(tail.c.sample)
    loose = b"".join(connection.execute(tails).scalars()) if at < most else b""
    parts.append(np.frombuffer(loose, dtype="<f8").reshape(-1, held.columns))
    return np.concatenate(parts)[:most].astype(np.float64, copy=False)


def recover(store: Store, *, who: str = "stickwright") -> tuple[RecordingRow, ...]:
    """At the start of the program: recordings that nobody ended, packed and marked as cut short.

    One that is still being made elsewhere, on a team's server, goes on with its next samples.

    Returns
    -------
    tuple of RecordingRow
        Those that were cut short now.
    """
    last = (
        sa.select(sa.func.max(recording_act.c.id)).where(recording_act.c.what.in_(_COURSE))
        .group_by(recording_act.c.recording_id)
    )  # fmt: skip
    open_ones = sa.select(recording_act.c.recording_id).where(
        recording_act.c.id.in_(last), recording_act.c.what.not_in(ENDS)
    )
    with store.read() as connection:
        if connection.execute(open_ones.limit(1)).first() is None:
            return ()
    with store.write(who, "") as connection:
        found = list(connection.execute(open_ones.order_by(recording_act.c.recording_id)).scalars())
        for recording_id in found:
            held = _held(connection, recording_id)
            _pack(connection, recording_id, held.columns)
            _note(store, connection, recording_id, "cut short", who, held.samples)
        return _rows(connection, recording.c.id.in_(found)) if found else ()
