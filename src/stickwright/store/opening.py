"""Where records are kept, and the two ways in: reading, and writing one thing at a time.

Three places with the same tables and the same answers: one file on this machine, encrypted with a passphrase (see `keys`) or,
for practice data, explicitly not; a team's PostgreSQL; and memory, for a player who has not agreed to anything being kept.

How a file is held, and why:

- Write-ahead log: a page can be read while samples are being written, and a crash leaves a log that is replayed or dropped whole.
- ``synchronous=FULL``: in this mode each commit waits for the disk. `NORMAL` would be quicker, and after a power cut would lose
  commits that the person was told were saved; a laptop in a living room does lose power. The samples of a running recording
  alone are `NORMAL`: nobody is told that they are saved before the recording ends, and waiting for the disk thirty times a second
  is what would make a measurement late. They outlive a crash of the program or a kill at once, a power cut from the next pause on.
- ``secure_delete``: what is erased is overwritten with zeros, since erasing has to mean it.
- One writer: a lock among the threads of this process, ``BEGIN IMMEDIATE`` among processes (PostgreSQL: an advisory lock), so
  that what was read inside a write cannot have changed before it is committed. Who waits longer than `WAIT_S` is told so.
- While a file is open here, it is never opened and closed by other means: on POSIX that drops the locks of the whole process
  [sqlite-howto-corrupt] (2.2), and a second program could then delete the log under our feet. Its first bytes are remembered.

Versions are ordered by their ids, never by the clock: a laptop's clock may go backwards. Where it did, the trail says so.
"""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Literal, Protocol

import sqlalchemy as sa

from stickwright.codes.entries import Entries
from stickwright.codes.message import Name, Text, message
from stickwright.codes.records_file import RecordsFile
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput, Problem
from stickwright.store import files
from stickwright.store.engines import WAIT_S, Secret, memory_engine, server_engine, sqlite_engine
from stickwright.store.faults import busy, damaged, told
from stickwright.store.keys import Kind, derived_key, kind_of, new_salt
from stickwright.store.migrating import MIGRATED_BY, bring_up_to_date, lay_down
from stickwright.store.schema import act
from stickwright.store.texts import entry_kept

__all__ = [
    "SYSTEM_CLOCK",
    "Clock",
    "Store",
    "change_passphrase",
    "create_store",
    "default_place",
    "faults_in",
    "kind_at",
    "memory_store",
    "new_id",
    "note_act",
    "open_store",
    "stamp",
]

CHECKED_WHOLE_BYTES = 64 * 2**20
"""Files up to this size are checked page by page at each start; larger ones when backed up. (Judgement: keeps a start under a second.)"""
_TURN = 7_305_401  # any number, the same for all who write to one server


class Clock(Protocol):
    """What tells the time, so that a test may set it."""

    def now(self) -> datetime:
        """The time now, with a time zone."""


class _SystemClock:
    def now(self) -> datetime:
        return datetime.now(UTC)


SYSTEM_CLOCK: Clock = _SystemClock()


def stamp(moment: datetime) -> str:
    """A moment as it stands in the tables: UTC, to the millisecond.

    Parameters
    ----------
    moment : datetime
        With its time zone.

    Examples
    --------
    >>> stamp(datetime(2026, 3, 14, 10, 5, tzinfo=UTC))
    '2026-03-14T10:05:00.000Z'
    """
    return moment.astimezone(UTC).isoformat(timespec="milliseconds").removesuffix("+00:00") + "Z"


@dataclass
class Store:
    """Records that are open.

    Parameters
    ----------
    engine : Engine
        Of SQLAlchemy. For reading and writing use `read` and `write`.
    place : Message or str
        Where they are, for people.
    kind : str
        ``encrypted``, ``plain``, ``postgresql`` or ``memory``.
    clock : Clock
    path : Path, optional
        The file, when there is one.
    """

    engine: sa.Engine
    place: Text
    kind: Literal["encrypted", "plain", "postgresql", "memory"]
    clock: Clock
    path: Path | None = None
    _secret: Secret | None = field(default=None, init=False, repr=False)
    _held: files.OpenFile | None = field(default=None, init=False, repr=False)
    _turn: threading.Lock = field(default_factory=threading.Lock, init=False, repr=False)
    _mine: threading.local = field(default_factory=threading.local, init=False, repr=False)

    def at(self) -> str:
        """The time now, as it stands in the tables."""
        return stamp(self.clock.now())

    @contextmanager
    def read(self) -> Iterator[sa.Connection]:
        """Look at the records as they stand at one moment.

        Inside a `write` of the same thread this is the same connection, and sees what was just written.

        Raises
        ------
        BadInput
            The file is damaged, the disk or the server does not answer.
        """
        mine: sa.Connection | None = getattr(self._mine, "connection", None)
        if mine is not None:
            yield mine
            return
        if self.kind == "memory" and not self._turn.acquire(timeout=WAIT_S):  # there is but one connection
            raise busy(self.place)
        try:
            with self._plainly(), self._connected("read") as connection:
                yield connection
        finally:
            if self.kind == "memory":
                self._turn.release()

    @contextmanager
    def write(
        self, who: str, what: Text, player_id: int | None = None, *, samples: bool = False
    ) -> Iterator[sa.Connection]:
        """Write one thing: all of it is kept, or, when anything goes wrong, nothing.

        Returning means that it is on the disk. Inside another `write` of the same thread it becomes part of that one, and
        is kept when the outer one is.

        Parameters
        ----------
        who : str
            Who does it.
        what : Message or str
            What is done, for the trail: a message of `Trail`. Empty when the rows themselves say who and when (the samples of a recording).
        player_id : int, optional
            The player whom it is about.
        samples : bool
            Samples of a running recording: does not wait for the disk.

        Raises
        ------
        BadInput
            Somebody else is writing, no room on the disk, the folder may not be written, a damaged file.
        """
        outer: sa.Connection | None = getattr(self._mine, "connection", None)
        if outer is not None:
            with outer.begin_nested():
                if what:
                    note_act(self, outer, who, what, player_id)
                yield outer
            return
        if not self._turn.acquire(timeout=WAIT_S):
            raise busy(self.place)
        try:
            with self._plainly(), self._connected("samples" if samples else "write") as connection:
                self._mine.connection = connection
                try:
                    if what:
                        note_act(self, connection, who, what, player_id)
                    yield connection
                finally:
                    self._mine.connection = None
                connection.commit()
        finally:
            self._turn.release()

    def close(self) -> None:
        """Let go of the file or server. What was kept only in memory is gone."""
        self.engine.dispose()
        if self._held is not None:
            self._held.let_go()
            self._held = None

    @contextmanager
    def _connected(self, purpose: str) -> Iterator[sa.Connection]:
        with self.engine.connect() as connection:
            if self.kind != "postgresql":
                connection = connection.execution_options(purpose=purpose)  # see `engines`
            elif purpose == "read":
                connection = connection.execution_options(isolation_level="REPEATABLE READ", postgresql_readonly=True)
            else:
                connection.execute(sa.text(f"SET LOCAL lock_timeout = {round(WAIT_S * 1000)}"))
                connection.execute(sa.select(sa.func.pg_advisory_xact_lock(_TURN)))
            connection.execute(sa.select(1))  # the transaction begins here, not at the first question
            yield connection

    @contextmanager
    def _plainly(self) -> Iterator[None]:
        try:
            yield
        except sa.exc.DBAPIError as error:
            sentence = told(error, self.place)
            if sentence is None:
                raise
            raise sentence from error


def note_act(store: Store, connection: sa.Connection, who: str, what: Text, player_id: int | None = None) -> None:
    """Write into the trail who did what; says so when the clock stands before the entry before.

    Parameters
    ----------
    store : Store
    connection : Connection
        Of a `Store.write`.
    who : str
    what : Message or str
        A message of `Trail`.
    player_id : int, optional
        The player whom it is about.
    """
    at = store.at()
    last = connection.execute(sa.select(act.c.at).order_by(act.c.id.desc()).limit(1)).scalar()
    code, figures = entry_kept(what, last if last is not None and at < last else "")
    connection.execute(sa.insert(act).values(at=at, who=who, what=code, player_id=player_id, detail=figures))


def new_id(connection: sa.Connection, statement: sa.Insert) -> int:
    """Insert one row; its id.

    Parameters
    ----------
    connection : Connection
        Of a `Store.write`.
    statement : Insert
    """
    key = connection.execute(statement).inserted_primary_key
    assert key is not None
    return int(key[0])


def default_place() -> Path:
    """The file in the user's own data folder, by the rules of each system.

    Returns
    -------
    Path
        Linux: ``$XDG_DATA_HOME`` or ``~/.local/share`` [xdg-basedir]; macOS: ``~/Library/Application Support``;
        Windows: ``%LOCALAPPDATA%``.
    """
    if sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    elif sys.platform == "darwin":
        base = Path.home() / "Library" / "Application Support"
    else:
        asked = Path(os.environ.get("XDG_DATA_HOME", ""))
        base = asked if asked.is_absolute() else Path.home() / ".local" / "share"  # relative ones are to be ignored
    return base / "stickwright" / "records.db"


def kind_at(place: Path) -> Kind:
    """What stands at a place, without opening it.

    Returns
    -------
    str
        ``none``, ``encrypted``, ``plain`` or ``not ours``.

    Raises
    ------
    BadInput
        The file may not be read.
    """
    place = Path(place)
    if place.is_dir():
        return "not ours"
    return kind_of(files.head(place))


def create_store(place: Path, *, passphrase: str | None, clock: Clock = SYSTEM_CLOCK) -> Store:
    """Begin records where there are none.

    The file appears under its name only when it is whole.

    Parameters
    ----------
    place : Path
        File to make; its folder is made for this user alone.
    passphrase : str or None
        None is the explicit choice not to encrypt: for practice data.
    clock : Clock

    Raises
    ------
    BadInput
        There is a file already, a blank passphrase, or the place cannot be written.
    """
    place = Path(place)
    if passphrase is not None and not passphrase.strip():
        raise BadInput(_no_passphrase())
    if kind_at(place) != "none":
        raise BadInput(
            Problem(
                (str(place),),
                message(RecordsFile.file_there),
                message(RecordsFile.new_name),
                message(RecordsFile.open_or_rename),
            )
        )
    salt = new_salt()
    secret = Secret(derived_key(passphrase, salt), salt) if passphrase is not None else None
    with files.made_whole(place) as part:
        engine = sqlite_engine(part, secret)
        try:
            lay_down(engine)
        except sa.exc.DBAPIError as error:
            raise told(error, str(place)) or error from error
        finally:
            engine.dispose()
    return _opened(place, secret, clock)


def _no_passphrase() -> Problem:
    found, expected = message(Entries.nothing), message(RecordsFile.a_passphrase)
    return Problem("passphrase", found, expected, message(RecordsFile.easy_passphrase))


def open_store(place: Path | str, *, passphrase: str | None = None, clock: Clock = SYSTEM_CLOCK) -> Store:
    """Open records; an older schema is first copied beside itself and then brought up to date.

    Parameters
    ----------
    place : Path or str
        The file, or the address of a team's server: ``postgresql://name@host/records``.
    passphrase : str, optional
        For an encrypted file.
    clock : Clock

    Raises
    ------
    BadInput
        No such file, not ours, wrong or missing passphrase, damaged, made by a newer stickwright, not to be written, or no answer.
    """
    if isinstance(place, str) and place.startswith(("postgresql://", "postgresql+psycopg://")):
        return _server(place, clock)
    place = Path(place)
    kind = kind_at(place)
    if kind == "none":
        found, expected = message(RecordsFile.no_records), message(RecordsFile.a_records_file)
        raise BadInput(Problem((str(place),), found, expected, message(RecordsFile.create_or_choose)))
    if kind == "not ours":
        found, expected = message(RecordsFile.not_ours), message(RecordsFile.a_records_file)
        raise BadInput(Problem((str(place),), found, expected, message(RecordsFile.another_or_restore)))
    if kind == "encrypted" and passphrase is None:
        found, expected = message(Entries.nothing), message(RecordsFile.passphrase_of_records)
        raise BadInput(Problem("passphrase", found, expected, message(RecordsFile.enter_it)))
    if kind == "plain" and passphrase is not None:
        found, expected = message(RecordsFile.given_passphrase), message(RecordsFile.none_needed)
        raise BadInput(Problem("passphrase", found, expected, message(RecordsFile.leave_empty)))
    salt = files.head(place)
    secret = Secret(derived_key(passphrase, salt), salt[:16]) if passphrase is not None else None
    return _opened(place, secret, clock)


def memory_store(clock: Clock = SYSTEM_CLOCK) -> Store:
    """Records of which nothing is kept on disk; gone when closed."""
    engine = memory_engine()
    lay_down(engine)
    return Store(engine, message(RecordsFile.in_memory), "memory", clock)


def change_passphrase(store: Store, *, new: str) -> None:
    """Encrypt the records anew; copies and backups made before keep the old passphrase.

    Parameters
    ----------
    store : Store
        Encrypted.
    new : str

    Raises
    ------
    BadInput
        Not an encrypted file, a blank passphrase, somebody else has it open, or no room on the disk.
    """
    secret = store._secret
    if secret is None:
        raise BadInput(
            Problem(
                (store.place,),
                message(RecordsFile.not_encrypted),
                message(RecordsFile.encrypted),
                message(RecordsFile.create_encrypted),
            )
        )
    if not new.strip():
        raise BadInput(_no_passphrase())
    key = derived_key(new, secret.salt)
    if not store._turn.acquire(timeout=WAIT_S):
        raise busy(store.place)
    try:
        with store._plainly(), store.engine.connect() as connection:
            raw: Any = connection.connection.dbapi_connection
            answer = raw.execute(f"PRAGMA rekey = {Secret(key, secret.salt).pragma}").fetchall()
            if answer != [("ok",)]:
                raise busy(store.place)
        secret.key = key
        store.engine.dispose()  # the other connections still have the old key
    finally:
        store._turn.release()
    with store.write("stickwright", message(Trail.passphrase_changed)):
        pass


def faults_in(store: Store) -> tuple[str, ...]:
    """What the file's own check of every page finds; nothing for a server, whose keeper checks it.

    Returns
    -------
    tuple of str
        At most a hundred.
    """
    if store.kind == "postgresql":
        return ()
    found: list[str] = []
    with store.read() as connection:
        if store.kind == "encrypted":  # every page against its own seal
            found += [str(row[0]) for row in connection.exec_driver_sql("PRAGMA cipher_integrity_check").fetchmany(100)]
        if not found:  # how the pages hang together
            found += [
                row[0] for row in connection.exec_driver_sql("PRAGMA quick_check(100)").fetchall() if row[0] != "ok"
            ]
    return tuple(found)


def _opened(place: Path, secret: Secret | None, clock: Clock) -> Store:
    held = files.OpenFile(place)
    engine = sqlite_engine(place, secret)
    store = Store(engine, str(place), "plain" if secret is None else "encrypted", clock, place)
    store._secret, store._held = secret, held
    try:
        try:
            with engine.connect() as connection:
                connection.exec_driver_sql("SELECT count(*) FROM sqlite_master").scalar()
        except sa.exc.DBAPIError as error:
            if secret is not None and "file is not a database" in str(error.orig):
                found, expected = message(RecordsFile.wrong_passphrase), message(RecordsFile.right_passphrase)
                remedy = message(RecordsFile.retype_passphrase, file=Name(place.name))
                raise BadInput(Problem("passphrase", found, expected, remedy)) from error
            raise told(error, str(place)) or error from error
        if place.stat().st_size <= CHECKED_WHOLE_BYTES and faults_in(store):
            raise damaged(str(place))
        with store._plainly():
            bring_up_to_date(engine, str(place), beside=place, secret=secret)
            with store.write(MIGRATED_BY, ""):  # a folder that may not be written is told now, not at the first save
                pass
    except BaseException:
        store.close()
        raise
    return store


def _server(url: str, clock: Clock) -> Store:
    engine, words = server_engine(url)
    store = Store(engine, words, "postgresql", clock)
    try:
        with store._plainly():
            bring_up_to_date(engine, words)
    except BaseException:
        store.close()
        raise
    return store
