"""Backup to one file, and back again. Neither is called good before it was read back and compared.

A backup is itself a file of records: it can be opened with the same passphrase, on any machine, with nothing beside it. From a
file of records it is a copy page by page of one moment, while others go on reading and writing. From a team's server or from
memory, or under another passphrase, the same rows are written into a new file. A backup restores into a file or into a server.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import zlib
from pathlib import Path
from typing import Any

import sqlalchemy as sa

from stickwright.errors import BadInput, Problem
from stickwright.store import files
from stickwright.store.engines import Secret, raw_connection, sqlite_engine
from stickwright.store.faults import damaged, told
from stickwright.store.keys import derived_key, new_salt
from stickwright.store.migrating import lay_down
from stickwright.store.opening import SYSTEM_CLOCK, Clock, Store, faults_in, kind_at, open_store
from stickwright.store.packing import digest_of, unpacked
from stickwright.store.schema import METADATA, chunk, document, plan, player, recording, tail, version, visit

__all__ = ["back_up", "counts_of", "digests_of", "restore"]

_BATCH = 500


def back_up(store: Store, file: Path, passphrase: str | None = None, *, unencrypted: bool = False) -> dict[str, int]:
    """A copy of all records as they stand at this moment, read back and compared row by row.

    Parameters
    ----------
    store : Store
    file : Path
        To make; nothing is written over.
    passphrase : str, optional
        Of the copy; that of the records when not said.
    unencrypted : bool
        The explicit choice of a copy that anybody can read.

    Returns
    -------
    dict of int
        What the copy holds, in words.

    Raises
    ------
    BadInput
        A file there already, no room, no passphrase for records that have none of their own, or a copy that does not hold what
        it should.
    """
    file = Path(file)
    if kind_at(file) != "none" or file.exists():
        raise BadInput(Problem(str(file), "a file there already", "a place without one", "Choose another name."))
    if passphrase is not None and not passphrase.strip():
        raise BadInput(
            Problem("passphrase", "nothing typed", "a passphrase", "Three or four words in a row are easy to remember.")
        )
    if store.kind in ("postgresql", "memory") and passphrase is None and not unencrypted:
        raise BadInput(
            Problem(
                "passphrase",
                "nothing typed",
                "a passphrase for the backup",
                "Type one; the backup is encrypted with it.",
            )
        )
    by_page = store.path is not None and passphrase is None and (store.kind == "plain" or not unencrypted)
    secret = store._secret if by_page else _new_secret(passphrase)
    with files.made_whole(file) as part:
        with store.read() as connection:
            connection.execute(
                sa.select(player.c.id).limit(1)
            ).all()  # SQLite fixes the moment when a table is first read
            if by_page:
                _pages(connection, part, secret)
            else:
                _rows_to(connection, part, secret)
            wanted = digests_of(connection)
        return _read_back(part, secret, wanted, str(file))


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
        rows = source.execute(sa.select(table).order_by(*table.primary_key)).mappings()
        while batch := rows.fetchmany(_BATCH):
            target.execute(sa.insert(table), [dict(row) for row in batch])


def _read_back(part: Path, secret: Secret | None, wanted: dict[str, tuple[int, str]], shown: str) -> dict[str, int]:
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
        what = f"a copy that differs from the records ({', '.join(unlike) or found[0]})"
        raise BadInput(Problem(shown, what, "a copy that holds the same", "Try again on another disk or stick."))
    return counts


def counts_of(connection: sa.Connection) -> dict[str, int]:
    """What records hold, in words and numbers.

    Parameters
    ----------
    connection : Connection
    """
    tables = (("players", player), ("visits", visit), ("files", document), ("versions of files", version),
              ("recordings", recording), ("plans", plan))  # fmt: skip
    counts = {
        words: int(connection.execute(sa.select(sa.func.count()).select_from(table)).scalar_one())
        for words, table in tables
    }
    packed = int(connection.execute(sa.select(sa.func.coalesce(sa.func.sum(chunk.c.samples), 0))).scalar_one())
    return counts | {"samples": packed + _loose(connection)}


def _loose(connection: sa.Connection) -> int:
    wanted = sa.select(recording.c.columns, sa.func.length(tail.c.body)).join(recording)
    return sum(length // (8 * len(columns)) for columns, length in connection.execute(wanted))


def digests_of(connection: sa.Connection) -> dict[str, tuple[int, str]]:
    """Of each table the number of rows and a SHA-256 of all they say, the same in a file and on a server.

    Parameters
    ----------
    connection : Connection
    """
    out = {}
    for table in METADATA.sorted_tables:
        whole, many = hashlib.sha256(), 0
        rows = connection.execute(sa.select(table).order_by(*table.primary_key))
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
    file: Path, place: Path | str, *, passphrase: str | None = None, clock: Clock = SYSTEM_CLOCK
) -> dict[str, int]:
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

    Returns
    -------
    dict of int
        What came back, in words.

    Raises
    ------
    BadInput
        No backup there, a wrong passphrase, a damaged backup, something there already. Nothing is then restored.
    """
    file = Path(file)
    kind = kind_at(file)
    if kind in ("none", "not ours"):
        found = (
            "no file" if kind == "none" else "something that is no backup of stickwright, or whose beginning is damaged"
        )
        raise BadInput(Problem(str(file), found, "a backup", "Choose another file. Nothing was restored."))
    if isinstance(place, str) and place.startswith(("postgresql://", "postgresql+psycopg://")):
        return _into_server(file, place, passphrase, clock)
    place = Path(place)
    if place.exists() or kind_at(place) != "none":
        raise BadInput(
            Problem(
                str(place),
                "something there already",
                "a place where nothing is",
                "Choose another name. Nothing was changed.",
            )
        )
    with files.made_whole(place) as part:
        return _taken_from(file, part, passphrase, clock)


def _taken_from(file: Path, part: Path, passphrase: str | None, clock: Clock) -> dict[str, int]:
    """A copy of the backup, gone through from end to end; it leaves nothing beside it."""
    try:
        shutil.copyfile(file, part)
    except OSError as error:
        reason = (error.strerror or "the disk refused").lower()
        raise BadInput(
            Problem(str(part), f"a place that cannot be written ({reason})", "room on a disk", "")
        ) from error
    try:
        store = open_store(part, passphrase=passphrase, clock=clock)
        try:
            faults = faults_in(store)
            with store.read() as connection:
                wrong = faults[:1] or tuple(_wrong(connection))[:1]
                counts = {} if wrong else counts_of(connection)
        finally:
            store.close()
    except BadInput as refused:
        if any(problem.where == "passphrase" or "newer stickwright" in problem.found for problem in refused.problems):
            raise
        raise _damaged(file) from refused
    finally:
        for copy in part.parent.glob(part.name + ".schema-*"):  # of bringing an older backup up to date
            copy.unlink()
    if wrong:
        raise _damaged(file, wrong[0])
    return counts


def _damaged(file: Path, what: str = "") -> BadInput:
    words = f"a damaged backup ({what})" if what else "a damaged backup"
    return BadInput(
        Problem(str(file), words, "one that reads from end to end", "Use an earlier backup. Nothing was restored.")
    )


def _wrong(connection: sa.Connection) -> list[str]:
    """Whatever does not match the digest that was kept with it."""
    out = []
    for row in connection.execute(sa.select(version.c.id, version.c.body, version.c.digest)):
        if _inflated(row.body) != row.digest:
            out.append(f"version {row.id} of a file")
    for row in connection.execute(sa.select(plan.c.id, plan.c.result, plan.c.digest)):
        if _inflated(row.result) != row.digest:
            out.append(f"plan {row.id}")
    for row in connection.execute(sa.select(chunk)):
        try:
            good = digest_of(unpacked(row.body)) == row.digest
        except ValueError:
            good = False
        if not good:
            out.append(f"recording {row.recording_id} from sample {row.first:,}")
    return out


def _inflated(body: bytes) -> str:
    try:
        return hashlib.sha256(zlib.decompress(body)).hexdigest()
    except zlib.error:
        return ""


def _into_server(file: Path, url: str, passphrase: str | None, clock: Clock) -> dict[str, int]:
    import tempfile

    with tempfile.TemporaryDirectory(prefix="stickwright-") as folder:  # the backup itself is never opened for writing
        part = Path(folder) / "records"
        _taken_from(file, part, passphrase, clock)
        source, target = open_store(part, passphrase=passphrase, clock=clock), open_store(url, clock=clock)
        try:
            with source.read() as reading, target.write("", "") as writing:
                if any(many for many, _ in digests_of(writing).values()):
                    raise BadInput(
                        Problem(target.place, "records there already", "a server without records",
                                "Ask for an empty database. Nothing was changed.")
                    )  # fmt: skip
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
