"""All that is held about one player: given out as one file, and erased for good.

Erasing takes every row about the player, overwrites what they stood on (`secure_delete`), writes the file anew without the gaps
(``VACUUM``) and empties the log. What would go is counted by the same statements that make it go. The trail keeps that somebody
was erased, when and by whom, and nothing about who it was. Backups and copies made before lie elsewhere and are not reached.
"""

from __future__ import annotations

import csv
import io
import json
import re
import zipfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import numpy as np
import polars as pl
import sqlalchemy as sa

from stickwright.catalogue import say
from stickwright.codes.counts import Counted, Counts
from stickwright.codes.entries import Entries
from stickwright.codes.export_readme import Exported, ExportReadme
from stickwright.codes.message import Message, Name, message
from stickwright.codes.records_file import RecordsFile
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput, Problem
from stickwright.store import files
from stickwright.store.cases import name_of_file, tree_of
from stickwright.store.documents import history
from stickwright.store.engines import WAIT_S, raw_connection
from stickwright.store.faults import busy
from stickwright.store.opening import Store
from stickwright.store.plans import plan_result, plans
from stickwright.store.players import VisitRow, visits
from stickwright.store.recordings import recordings, samples_of
from stickwright.store.schema import (
    METADATA,
    act,
    chunk,
    consent,
    document,
    loan_act,
    plan,
    plan_input,
    player,
    reading,
    recording,
    recording_act,
    recording_summary,
    tail,
    version,
    visit,
    visit_fact,
)
from stickwright.store.texts import entry_read

__all__ = ["compact", "copies_beside", "elsewhere", "erase_player", "export_player", "packed_player", "what_would_go"]

_UNREAD = "could-not-be-read.txt"
_PARTS: tuple[tuple[str, Exported], ...] = (
    ("player.csv", "player"),
    ("consents.csv", "consents"),
    ("loans.csv", "loans"),
    ("trail.csv", "trail"),
    ("visits/", "visits"),
    ("  case/", "case"),
    ("  versions/", "versions"),
    ("  recordings/", "recordings"),
    ("", "columns"),
    ("  plans/", "plans"),
)
"""Of the file, as they lie in one another."""


def export_player(store: Store, player_id: int, file: Path) -> Path:
    """Everything that is held about a player as one ZIP file, with a page that explains it.

    Parameters
    ----------
    store : Store
    player_id : int
    file : Path
        To make; nothing is written over.

    Returns
    -------
    Path

    Raises
    ------
    BadInput
        No such player, a file there already, or a place that cannot be written.
    """
    file = Path(file)
    body = packed_player(store, player_id)
    with files.made_whole(file) as part:
        part.write_bytes(body)
    return file


def packed_player(store: Store, player_id: int) -> bytes:
    """The same as the bytes of a ZIP file, for handing out: nothing is written to the disk.

    Raises
    ------
    BadInput
        No such player.
    """
    code = _code(store, player_id)
    body = io.BytesIO()
    with zipfile.ZipFile(body, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("README.txt", _readme(code, store.at()))
        for name, table, owner in _TABLES:
            archive.writestr(f"{name}.csv", _rows_csv(store, table, owner == player_id))
        unread = [words for row in visits(store, player_id) for words in _put_visit(store, archive, row)]
        if unread:
            archive.writestr(_UNREAD, "\n".join(unread) + "\n")
    return body.getvalue()


def _readme(code: str, at: str) -> str:
    parts = "\n".join(f"{name:<18}{say(message(ExportReadme.part, part=part))}" for name, part in _PARTS)
    foot = (message(ExportReadme.unread, file=Name(_UNREAD)), message(ExportReadme.tables))
    blocks = [
        say(message(ExportReadme.heading)),
        say(message(ExportReadme.whole, code=Name(code), at=Name(at))),
        parts,
        "\n".join(say(one) for one in foot),
    ]
    return "\n\n".join(blocks) + "\n"


_TABLES = (
    ("player", player, player.c.id),
    ("consents", consent, consent.c.player_id),
    ("loans", loan_act, loan_act.c.player_id),
    ("trail", act, act.c.player_id),
)


def _put_visit(store: Store, archive: zipfile.ZipFile, row: VisitRow) -> list[str]:
    """All of a visit that can be read; what cannot, in sentences: one damaged file does not keep the rest from its owner."""
    folder = f"visits/{row.number}{'-' if row.on_date else ''}{row.on_date}"
    unread: list[str] = []
    with _told_to(unread):
        for name, body in tree_of(store, row.id).items():
            archive.writestr(f"{folder}/case/{name_of_file(name)}", body)
    with store.read() as connection:
        names = connection.execute(
            sa.select(document.c.name).where(document.c.visit_id == row.id).order_by(document.c.name)
        )
        every = list(names.scalars())
    lines = []
    for name in every:
        with _told_to(unread):
            for one in history(store, row.id, name):
                place = f"versions/{name}/{one.number}"
                said = (
                    name,
                    one.number,
                    one.at,
                    one.who,
                    say(one.why),
                    "yes" if one.removed else "",
                    one.digest,
                    place,
                )
                lines.append(said)
                archive.writestr(f"{folder}/{place}", one.body)
    header = ("file", "version", "at", "who", "why", "taken_away", "sha256", "kept_as")
    archive.writestr(f"{folder}/versions.csv", _csv(header, lines))
    held = recordings(store, row.id)
    for made in held:
        with _told_to(unread):
            samples = _samples_csv(samples_of(store, made.id), made.columns)
            archive.writestr(f"{folder}/recordings/{made.name}.csv", samples)
    columns = ("id", "name", "site", "task", "stick", "topper", "extension", "source", "device", "at", "who", "samples", "seconds",
               "state", "aside", "asked")  # fmt: skip
    lines = [tuple(_cell(getattr(made, column)) for column in columns) for made in held]
    archive.writestr(f"{folder}/recordings.csv", _csv(columns, lines))
    mine = recording_act.c.recording_id.in_(sa.select(recording.c.id).where(recording.c.visit_id == row.id))
    archive.writestr(f"{folder}/recordings-course.csv", _rows_csv(store, recording_act, mine))
    for plan_row in plans(store, row.id):
        asked = {"at": plan_row.at, "who": plan_row.who, "program": plan_row.program, "asked": dict(plan_row.asked)}
        archive.writestr(f"{folder}/plans/plan-{plan_row.number}-asked.json", _json(asked))
        with _told_to(unread):
            archive.writestr(f"{folder}/plans/plan-{plan_row.number}.json", _json(plan_result(store, plan_row.id)))
    return list(dict.fromkeys(unread))


@contextmanager
def _told_to(unread: list[str]) -> Iterator[None]:
    try:
        yield
    except BadInput as damaged:
        unread += [str(problem) for problem in damaged.problems]


def _json(data: Mapping[str, Any]) -> str:
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


def _cell(value: Any) -> Any:
    return json.dumps(value, ensure_ascii=False) if isinstance(value, dict | list | tuple) else value


def _csv(header: Sequence[str], lines: Iterable[Sequence[Any]]) -> str:
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(header)
    writer.writerows(lines)
    return text.getvalue()


def _rows_csv(store: Store, table: sa.Table, matches: sa.ColumnElement[bool]) -> str:
    columns = [column.name for column in table.c if column.name != "player_id"]
    with store.read() as connection:
        rows = connection.execute(sa.select(*(table.c[name] for name in columns)).where(matches).order_by(table.c.id))
        cells = [{name: _cell(value) for name, value in row.items()} for row in rows.mappings()]
    if table is act:
        for row in cells:
            what, row["detail"] = entry_read(row["what"], row["detail"])
            row["what"] = say(what)
    return _csv(columns, [[row[name] for name in columns] for row in cells])


def _samples_csv(samples: np.ndarray[Any, np.dtype[np.float64]], columns: Sequence[str]) -> bytes:
    frame = pl.DataFrame({name: samples[:, at] for at, name in enumerate(columns)})
    content = io.BytesIO()
    frame.with_columns(pl.col(pl.Float64).fill_nan(None)).write_csv(content)
    return content.getvalue()


def _code(store: Store, player_id: int) -> str:
    with store.read() as connection:
        code = connection.execute(sa.select(player.c.code).where(player.c.id == player_id)).scalar()
    if code is None:
        raise BadInput(
            Problem("player", str(player_id), message(Entries.kept_player), message(Entries.back_to_players))
        )
    return str(code)


def what_would_go(store: Store, player_id: int) -> dict[Counted, int]:
    """What erasing a player would erase, in numbers; nothing is changed.

    Raises
    ------
    BadInput
        There is no such player.
    """
    code = _code(store, player_id)
    with store.read() as connection:
        return _gone(connection, player_id, code, really=False)


def erase_player(store: Store, player_id: int, *, who: str) -> dict[Counted, int]:
    """Erase everything about a player. Nothing is kept.

    Parameters
    ----------
    store : Store
    player_id : int
    who : str
        Stands in the trail beside the bare fact that a player was erased.

    Returns
    -------
    dict of int
        What went, as `what_would_go` gives it.

    Raises
    ------
    BadInput
        No such player; or the rows are gone, but another window still reads and the file could not be written anew.
    """
    code = _code(store, player_id)
    with store.write(who, message(Trail.player_erased)) as connection:
        went = _gone(connection, player_id, code, really=True)
    compact(store)
    return went


def _gone(connection: sa.Connection, player_id: int, code: str, *, really: bool) -> dict[Counted, int]:
    """Count, and if really so erase: the same rows either way, those that point to others first."""
    of_player = sa.select(visit.c.id).where(visit.c.player_id == player_id)
    recorded = sa.select(recording.c.id).where(recording.c.visit_id.in_(of_player))
    files_of = sa.select(document.c.id).where(document.c.visit_id.in_(of_player))
    planned = sa.select(plan.c.id).where(plan.c.visit_id.in_(of_player))
    samples = [sa.select(sa.func.coalesce(sa.func.sum(chunk.c.samples), 0)).where(chunk.c.recording_id.in_(recorded))]
    went: dict[Counted, int] = {"samples": int(connection.execute(samples[0]).scalar_one())}
    loose = sa.select(act.c.id, act.c.detail).where(
        act.c.player_id.is_(None), act.c.detail.icontains(code, autoescape=True)
    )
    named = [key for key, detail in connection.execute(loose) if _names(detail, code)]
    steps: tuple[tuple[Counted | None, sa.Table, sa.ColumnElement[bool]], ...] = (
        ("unpacked_samples", tail, tail.c.recording_id.in_(recorded)),
        (None, chunk, chunk.c.recording_id.in_(recorded)),
        (None, recording_act, recording_act.c.recording_id.in_(recorded)),
        (None, recording_summary, recording_summary.c.recording_id.in_(recorded)),
        (None, plan_input, plan_input.c.plan_id.in_(planned)),
        ("plans", plan, plan.c.visit_id.in_(of_player)),
        ("recordings", recording, recording.c.visit_id.in_(of_player)),
        ("readings", reading, reading.c.visit_id.in_(of_player)),
        (None, visit_fact, visit_fact.c.visit_id.in_(of_player)),
        ("versions", version, version.c.document_id.in_(files_of)),
        ("files", document, document.c.visit_id.in_(of_player)),
        ("loan_entries", loan_act, loan_act.c.player_id == player_id),
        ("consents", consent, consent.c.player_id == player_id),
        ("trail_entries", act, sa.or_(act.c.player_id == player_id, act.c.id.in_(named))),
        ("visits", visit, visit.c.player_id == player_id),
        ("player", player, player.c.id == player_id),
    )
    for what, table, matches in steps:
        if what is not None:
            many = sa.select(sa.func.count()).select_from(table).where(matches)
            went[what] = int(connection.execute(many).scalar_one())
        if really:
            connection.execute(sa.delete(table).where(matches))
    order: tuple[Counted, ...] = (
        "player", "visits", "files", "versions", "readings", "recordings", "samples", "unpacked_samples", "plans", "consents",
        "loan_entries", "trail_entries",
    )  # fmt: skip
    return {what: went[what] for what in order if went[what]}


def _names(detail: str, code: str) -> bool:
    """Whether an entry that is about nobody in particular names the player."""
    try:
        figures = json.loads(detail or "{}")
    except ValueError:
        figures = detail  # in words of an earlier version
    values = figures.values() if isinstance(figures, dict) else (detail,)
    named = re.compile(rf"(?<![\w.-]){re.escape(code)}(?![\w-])", re.IGNORECASE)
    return any(named.search(str(value)) for value in values)


def compact(store: Store) -> None:
    """Write the file anew without what was erased, and empty its log.

    Raises
    ------
    BadInput
        Another window or program still reads: to be done again when it is closed. Nothing is lost by waiting.
    """
    if store.kind == "memory":
        return
    if store.path is None:
        with store._plainly(), store.engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
            connection.execute(
                sa.text(f"SET lock_timeout = {round(WAIT_S * 1000)}")
            )  # a reader elsewhere: told, not waited for
            for table in METADATA.sorted_tables:  # of a table that is another's, the server lets it be
                connection.execute(sa.text(f"VACUUM FULL {table.name}"))
        return
    if not store._turn.acquire(timeout=WAIT_S):
        raise busy(store.place)
    try:
        still_read = _compacted(store)
    finally:
        store._turn.release()
    if still_read:
        raise BadInput(
            Problem(
                (store.place,),
                message(RecordsFile.still_read),
                message(RecordsFile.not_shared),
                message(Counts.close_and_erase),
            )
        )


def _compacted(store: Store) -> bool:
    """Whether the log could not be emptied because somebody still reads."""
    from sqlcipher3 import dbapi2

    store.engine.dispose()  # our own idle connections hold nothing then
    raw = raw_connection(store.path, store._secret)
    try:
        raw.execute("PRAGMA secure_delete = ON")
        raw.execute("VACUUM")
        blocked = raw.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()[0]
    except dbapi2.OperationalError as error:
        if "locked" in str(error):
            return True
        raise
    finally:
        raw.close()
    return bool(blocked)


def copies_beside(store: Store) -> tuple[str, ...]:
    """Copies of the records that lie beside them, made before a migration: erasing does not reach them."""
    if store.path is None:
        return ()
    own = {store.path.name + ending for ending in ("", "-wal", "-shm")}
    return tuple(sorted(path.name for path in store.path.parent.glob(store.path.name + "*") if path.name not in own))


def elsewhere(store: Store) -> tuple[Message, ...]:
    """Where words of an erased player may still stand, out of reach of erasing; a sentence each."""
    if store.kind == "memory":
        return ()
    if store.kind == "postgresql":
        return (message(Counts.server_backups),)
    told = [message(Counts.earlier_backups)]
    if names := copies_beside(store):
        told.append(message(Counts.copies_beside, names=tuple(Name(one) for one in names)))
    return tuple(told)
