"""Backup to one file, and back again. Neither is called good before it was read back and compared.

A backup is itself a file of records: it can be opened with the same passphrase, on any machine, with nothing beside it. From a
file of records it is a copy page by page of one moment, while others go on reading and writing. From a team's server or from
memory, or under another passphrase, the same rows are written into a new file. A backup restores into a file or into a server.
"""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import zlib
from pathlib import Path
from typing import Any

import sqlalchemy as sa

from stickwright.codes.counts import Counted
from stickwright.codes.entries import Entries
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.records_file import RecordsFile
from stickwright.errors import BadInput, Problem
from stickwright.store import files
from stickwright.store.engines import Secret, raw_connection, sqlite_engine
from stickwright.store.faults import damaged, told
from stickwright.store.keys import derived_key, new_salt
from stickwright.store.migrating import HEAD, lay_down
from stickwright.store.opening import SYSTEM_CLOCK, Clock, Store, faults_in, kind_at, open_store
from stickwright.store.packing import digest_of, unpacked
from stickwright.store.schema import METADATA, chunk, document, plan, player, recording, tail, version, visit

__all__ = ["back_up", "counts_of", "digests_of", "restore"]

_BATCH = 500


def back_up(
    store: Store, file: Path, passphrase: str | None = None, *, unencrypted: bool = False, replace: bool = False
) -> dict[Counted, int]:
    """A copy of all records as they stand at this moment, read back and compared row by row.

    Parameters
    ----------
    store : Store
    file : Path
        To make; nothing is written over unless `replace` says so.
    passphrase : str, optional
        Of the copy; that of the records when not said.
    unencrypted : bool
        The explicit choice of a copy that anybody can read.
    replace : bool
        An older backup of that name gives way, once the new one was read back.

    Returns
    -------
    dict of int
        What the copy holds.

    Raises
    ------
    BadInput
        A file there already, no room, no passphrase for records that have none of their own, or a copy that does not hold what
        it should.
    """
    file = Path(file)
    if file.exists() and (not replace or file.is_dir() or _is_open(file)):
        found = message(RecordsFile.open_records) if _is_open(file) else message(RecordsFile.file_there)
        raise BadInput(Problem((str(file),), found, message(RecordsFile.new_name), message(Entries.another_name)))
    if passphrase is not None and not passphrase.strip():
        raise BadInput(
            Problem(
                "passphrase",
                message(Entries.nothing),
                message(RecordsFile.a_passphrase),
                message(RecordsFile.easy_passphrase),
            )
        )
    if store.kind in ("postgresql", "memory") and passphrase is None and not unencrypted:
        raise BadInput(
            Problem(
                "passphrase",
                message(Entries.nothing),
                message(RecordsFile.passphrase_for_backup),
                message(RecordsFile.encrypts_backup),
            )
        )
    by_page = store.path is not None and passphrase is None and (store.kind == "plain" or not unencrypted)
    secret = store._secret if by_page else _new_secret(passphrase)
    made = file.with_name(file.name + ".whole") if replace else file
    with files.made_whole(made) as part:
        with store.read() as connection:
            connection.execute(
                sa.select(player.c.id).limit(1)
            ).all()  # SQLite fixes the moment when a table is first read
            if by_page:
                _pages(connection, part, secret)
            else:
                _rows_to(connection, part, secret)
            wanted = digests_of(connection)
        if secret is None:
            _sealed(part, wanted)
        counts = _read_back(part, secret, wanted, str(file))
        _without_log(part, secret)
        _settled(part)
    if replace:
        made.replace(file)
    _settled(file.parent)
    return counts


def _is_open(file: Path) -> bool:
    """Whether a log lies beside it: what was written last then stands there, and is not in the file itself."""
    return file.with_name(file.name + "-wal").exists()


def _settled(path: Path) -> None:
    """On the disk, also when a stick is pulled out in the next moment. Windows lets no folder be opened, and needs it not."""
    if os.name == "nt" and path.is_dir():
        return
    handle = os.open(path, os.O_RDONLY if path.is_dir() else os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


_SEAL = "backup_seal"


def _sealed(part: Path, wanted: dict[str, tuple[int, str]]) -> None:
    """Put into an unencrypted backup what it should hold. Of an encrypted one each page has a seal already.

    It counts as long as nobody has worked in the backup, which leaves it with a write-ahead log in its header (byte 18).
    """
    raw = raw_connection(part, None)
    try:
        raw.execute(f"DROP TABLE IF EXISTS {_SEAL}")
        raw.execute(f"CREATE TABLE {_SEAL} (revision TEXT NOT NULL, held TEXT NOT NULL)")
        raw.execute(f"INSERT INTO {_SEAL} VALUES (?, ?)", (HEAD, _seal(wanted)))
    finally:
        raw.close()


def _without_log(part: Path, secret: Secret | None) -> None:
    """One file that can be read from where nothing can be written."""
    raw = raw_connection(part, secret)
    try:
        raw.execute("PRAGMA journal_mode = DELETE")
    finally:
        raw.close()


def _seal(held: dict[str, tuple[int, str]]) -> str:
    return json.dumps(held, sort_keys=True)


def _seal_broken(store: Store, connection: sa.Connection, first: bytes) -> bool:
    """Whether an untouched unencrypted backup holds other things than it did."""
    if store.kind != "plain" or first[18:19] != b"\x01" or not sa.inspect(connection).has_table(_SEAL):
        return False
    revision, held = connection.exec_driver_sql(f"SELECT revision, held FROM {_SEAL}").one()
    return bool(revision == HEAD and held != _seal(digests_of(connection)))


def _new_secret(passphrase: str | None) -> Secret | None:
    if passphrase is None:
        return None
    salt = new_salt()
    return Secret(derived_key(passphrase, salt), salt)


def _pages(connection: sa.Connection, part: Path, secret: Secret | None) -> None:
    """Of the moment at which the reading began, whatever is written meanwhile."""
    target = raw_connection(part, secret)
    try:
        source: Any = connection.connection.dbapi_connection
        source.backup(target)
    except target.Error as error:
        raise told(error, str(part)) or error from error
    finally:
        target.close()


def _rows_to(connection: sa.Connection, part: Path, secret: Secret | None) -> None:
    engine = sqlite_engine(part, secret)
    try:
        lay_down(engine)
        with engine.connect().execution_options(purpose="write") as target:
            _copied(connection, target)
            target.commit()
    except sa.exc.DBAPIError as error:
        raise told(error, str(part)) or error from error
    finally:
        engine.dispose()


def _copied(source: sa.Connection, target: sa.Connection) -> None:
    for table in METADATA.sorted_tables:
        wanted = (
            sa.select(table).order_by(*table.primary_key).execution_options(yield_per=_BATCH)
        )  # never all in memory
        rows = source.execute(wanted).mappings()
        while batch := rows.fetchmany(_BATCH):
            target.execute(sa.insert(table), [dict(row) for row in batch])


def _read_back(part: Path, secret: Secret | None, wanted: dict[str, tuple[int, str]], shown: str) -> dict[Counted, int]:
    engine = sqlite_engine(part, secret)
    try:
        with engine.connect() as connection:
            checks = ["quick_check(1)"] if secret is None else ["cipher_integrity_check", "quick_check(1)"]
            found = [
                row[0] for check in checks for row in connection.exec_driver_sql(f"PRAGMA {check}") if row[0] != "ok"
            ]
            held = digests_of(connection)
            counts = counts_of(connection)
    except sa.exc.DBAPIError as error:
        raise told(error, shown) or error from error
    finally:
        engine.dispose()
    unlike = [name for name, one in wanted.items() if held.get(name) != one]
    if found or unlike:
        what = message(RecordsFile.differs, parts=tuple(Name(str(one)) for one in (unlike or found[:1])))
        raise BadInput(Problem((shown,), what, message(RecordsFile.same_copy), message(RecordsFile.another_disk)))
    return counts


def counts_of(connection: sa.Connection) -> dict[Counted, int]:
    """What records hold, in numbers."""
    tables: tuple[tuple[Counted, sa.Table], ...] = (
        ("players", player), ("visits", visit), ("files", document), ("versions", version),
        ("recordings", recording), ("plans", plan),
    )  # fmt: skip
    counts: dict[Counted, int] = {
        what: int(connection.execute(sa.select(sa.func.count()).select_from(table)).scalar_one())
        for what, table in tables
    }
    packed = int(connection.execute(sa.select(sa.func.coalesce(sa.func.sum(chunk.c.samples), 0))).scalar_one())
    return counts | {"samples": packed + _loose(connection)}


def _loose(connection: sa.Connection) -> int:
    wanted = sa.select(recording.c.columns, sa.func.length(tail.c.body)).join(recording)
    return sum(length // (8 * len(columns)) for columns, length in connection.execute(wanted))


def digests_of(connection: sa.Connection) -> dict[str, tuple[int, str]]:
    """Of each table the number of rows and a SHA-256 of all they say, the same in a file and on a server."""
    out = {}
    for table in METADATA.sorted_tables:
        whole, many = hashlib.sha256(), 0
        wanted = sa.select(table).order_by(*table.primary_key).execution_options(yield_per=_BATCH)
        rows = connection.execute(wanted)
        while batch := rows.fetchmany(_BATCH):
            many += len(batch)
            for row in batch:
                for value in row:
                    said = bytes(value) if isinstance(value, bytes | memoryview) else _said(value)
                    whole.update(len(said).to_bytes(8, "big") + said)
        out[table.name] = (many, whole.hexdigest())
    return out


def _said(value: Any) -> bytes:
    plain = int(value) if isinstance(value, bool) else value
    return json.dumps(plain, sort_keys=True, ensure_ascii=False).encode()


def restore(
    file: Path, place: Path | str, *, passphrase: str | None = None, clock: Clock = SYSTEM_CLOCK, aside: bool = False
) -> dict[Counted, int]:
    """Records from a backup, at a place where there are none.

    Parameters
    ----------
    file : Path
        The backup; it is only read.
    place : Path or str
        File to make, or the address of a team's server whose records are empty.
    passphrase : str, optional
        Of the backup; it opens the restored file too.
    clock : Clock
    aside : bool
        Records at `place` that nobody has open are put aside, under their name with the date and time.

    Returns
    -------
    dict of int
        What came back.

    Raises
    ------
    BadInput
        No backup there, a wrong passphrase, a damaged backup, something there already. Nothing is then restored.
    """
    file = Path(file)
    kind = kind_at(file)
    if kind in ("none", "not ours"):
        found = message(RecordsFile.no_file) if kind == "none" else message(RecordsFile.no_backup)
        remedy = message(RecordsFile.another_file)
        raise BadInput(Problem((str(file),), found, message(RecordsFile.a_backup), remedy))
    if _is_open(file):
        found, remedy = message(RecordsFile.not_closed), message(RecordsFile.close_first)
        raise BadInput(Problem((str(file),), found, message(RecordsFile.a_backup), remedy))
    if isinstance(place, str) and place.startswith(("postgresql://", "postgresql+psycopg://")):
        return _into_server(file, place, passphrase, clock)
    place = Path(place)
    if _is_open(place) or (place.exists() and (not aside or not place.is_file() or place.samefile(file))):
        found = message(RecordsFile.not_closed) if _is_open(place) else message(RecordsFile.something_there)
        expected, remedy = message(RecordsFile.new_name), message(RecordsFile.rename_unchanged)
        raise BadInput(Problem((str(place),), found, expected, remedy))
    with files.made_whole(place) as part:
        counts = _taken_from(file, part, passphrase, clock)
        _settled(part)
        if place.exists():
            _put_aside(place, clock)
    _settled(place.parent)
    return counts


def _put_aside(place: Path, clock: Clock) -> None:
    older = place.with_name(f"{place.name}.aside-{clock.now():%Y-%m-%d-%H%M%S}")
    if older.exists():
        found, expected = message(RecordsFile.file_there), message(RecordsFile.new_name)
        raise BadInput(Problem((str(older),), found, expected, message(RecordsFile.in_a_second)))
    place.rename(older)


def _taken_from(file: Path, part: Path, passphrase: str | None, clock: Clock) -> dict[Counted, int]:
    """A copy of the backup, gone through from end to end; it leaves nothing beside it."""
    try:
        shutil.copyfile(file, part)
    except OSError as error:
        reason = Name(error.strerror.lower()) if error.strerror else None
        found, expected = message(RecordsFile.cannot_write, reason=reason), message(RecordsFile.room_on_disk)
        raise BadInput(Problem((str(part),), found, expected)) from error
    try:
        first = files.head(part)
        store = open_store(part, passphrase=passphrase, clock=clock)
        try:
            wrong: tuple[Text, ...] = faults_in(store)[:1]
            with store.read() as connection:
                wrong = wrong or tuple(_wrong(connection))[:1]
                if not wrong and _seal_broken(store, connection, first):
                    wrong = (message(RecordsFile.other_contents),)
                counts = {} if wrong else counts_of(connection)
            with store.write("", "") as connection:
                connection.execute(sa.text(f"DROP TABLE IF EXISTS {_SEAL}"))
        finally:
            store.close()
    except BadInput as refused:
        if any(problem.field == "passphrase" or _is_newer(problem) for problem in refused.problems):
            raise
        raise _damaged(file) from refused
    except (ValueError, sa.exc.DBAPIError) as error:  # text that is no text or list any more
        raise _damaged(file) from error
    finally:
        for copy in part.parent.glob(part.name + ".schema-*"):  # of bringing an older backup up to date
            copy.unlink()
    if wrong:
        raise _damaged(file, wrong[0])
    return counts


def _is_newer(problem: Problem) -> bool:
    """Whether records were refused because a newer version of the program made them."""
    return isinstance(problem.found, Message) and problem.found.code == "RecordsFile.newer"


def _damaged(file: Path, fault: Text | None = None) -> BadInput:
    found, expected = message(RecordsFile.damaged_backup, fault=fault), message(RecordsFile.readable_backup)
    return BadInput(Problem((str(file),), found, expected, message(RecordsFile.earlier_backup)))


def _wrong(connection: sa.Connection) -> list[Message]:
    """Whatever does not match the digest that was kept with it."""
    out = []
    for row in connection.execute(sa.select(version.c.id, version.c.body, version.c.digest)):
        if _inflated(row.body) != row.digest:
            out.append(message(RecordsFile.fault_of_version, number=row.id))
    documents = sa.select(version.c.id, version.c.typed).where(version.c.typed.is_not(None))
    for number, typed in connection.execute(documents):
        if not _inflated(typed):
            out.append(message(RecordsFile.fault_of_version, number=number))
    for row in connection.execute(sa.select(plan.c.id, plan.c.result, plan.c.digest)):
        if _inflated(row.result) != row.digest:
            out.append(message(RecordsFile.fault_of_plan, number=row.id))
    for row in connection.execute(sa.select(chunk)):
        try:
            good = digest_of(unpacked(row.body)) == row.digest
        except ValueError:
            good = False
        if not good:
            out.append(message(RecordsFile.fault_of_recording, number=row.recording_id, first=row.first))
    return out


def _inflated(body: bytes) -> str:
    try:
        return hashlib.sha256(zlib.decompress(body)).hexdigest()
    except zlib.error:
        return ""


def _into_server(file: Path, url: str, passphrase: str | None, clock: Clock) -> dict[Counted, int]:
    import tempfile

    with tempfile.TemporaryDirectory(prefix="stickwright-") as folder:  # the backup itself is never opened for writing
        part = Path(folder) / "records"
        _taken_from(file, part, passphrase, clock)
        source, target = open_store(part, passphrase=passphrase, clock=clock), open_store(url, clock=clock)
        try:
            with source.read() as reading, target.write("", "") as writing:
                if any(many for many, _ in digests_of(writing).values()):
                    found, expected = message(RecordsFile.records_there), message(RecordsFile.empty_server)
                    remedy = message(RecordsFile.ask_for_database)
                    raise BadInput(Problem((target.place,), found, expected, remedy))
                _copied(reading, writing)
                for table in METADATA.sorted_tables:
                    if "id" in table.c:  # the next row counts on from the last
                        top = sa.func.coalesce(sa.func.max(table.c.id), 1)
                        name = sa.func.pg_get_serial_sequence(table.name, "id")
                        writing.execute(sa.select(sa.func.setval(name, top, sa.func.count() > 0)).select_from(table))
                if digests_of(writing) != digests_of(reading):
                    raise damaged(target.place)
                return counts_of(writing)
        finally:
            source.close()
            target.close()
