"""Connections: how a file, memory or a server is spoken to. The reasons for each setting stand in `opening`."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import sqlalchemy as sa
from sqlalchemy.pool import QueuePool, StaticPool

from stickwright.codes.message import Message, Name, message
from stickwright.codes.records_file import RecordsFile
from stickwright.errors import BadInput, Problem
from stickwright.store.keys import as_pragma

__all__ = ["WAIT_S", "Secret", "memory_engine", "raw_connection", "server_engine", "sqlite_engine"]

WAIT_S = 5.0
"""How long a writer waits for another."""


@dataclass
class Secret:
    """The key of an open file, kept for its further connections."""

    key: bytes
    salt: bytes

    @property
    def pragma(self) -> str:
        """In the words of SQLCipher."""
        return as_pragma(self.key, self.salt)

    def __repr__(self) -> str:
        return "Secret()"


def raw_connection(path: Path | None, secret: Secret | None) -> Any:
    """A connection of SQLCipher's own Python binding, set up; without a path: memory."""
    from sqlcipher3 import dbapi2

    # transactions are begun by us, see `sqlite_engine`
    connection = dbapi2.connect(
        str(path) if path else ":memory:", isolation_level=None, check_same_thread=False, timeout=WAIT_S
    )
    try:
        # SQLCipher prints to stderr when a key does not fit; that case is told in our own words
        connection.execute("PRAGMA cipher_log_level = NONE")
        if secret is not None:
            connection.execute(f"PRAGMA key = {secret.pragma}")
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA temp_store = MEMORY")  # nothing in clear in a temporary file
    except BaseException:
        connection.close()
        raise
    return connection


def sqlite_engine(path: Path, secret: Secret | None) -> sa.Engine:
    """For a file.

    Parameters
    ----------
    path : Path
    secret : Secret, optional
        None: not encrypted.
    """

    def connected() -> Any:
        connection = raw_connection(path, secret)
        try:
            for setting in ("journal_mode = WAL", "synchronous = FULL", "secure_delete = ON"):
                connection.execute(f"PRAGMA {setting}")
        except BaseException:
            connection.close()
            raise
        return connection

    return _begun_by_us(_engine(connected, QueuePool, pool_size=5, max_overflow=20))


def memory_engine() -> sa.Engine:
    """For memory: one connection, which all threads share in turn."""
    return _begun_by_us(_engine(lambda: raw_connection(None, None), StaticPool))


def server_engine(url: str) -> tuple[sa.Engine, Message]:
    """For PostgreSQL, and the server in words without its password.

    Raises
    ------
    BadInput
        Not an address, or the driver is not installed.
    """
    try:
        address = sa.make_url(url).set(drivername="postgresql+psycopg")
        engine = sa.create_engine(address, pool_pre_ping=True)
    except (sa.exc.ArgumentError, ValueError) as error:
        raise BadInput(
            Problem(
                message(RecordsFile.address),
                message(RecordsFile.no_address),
                message(RecordsFile.an_address),
                message(RecordsFile.correct_address),
            )
        ) from error
    except ModuleNotFoundError as error:
        raise BadInput(
            Problem(
                message(RecordsFile.address),
                message(RecordsFile.no_driver),
                message(RecordsFile.the_driver),
                message(RecordsFile.install_driver),
            )
        ) from error
    database, host = Name(address.database or "records"), Name(address.host) if address.host else None
    return engine, message(RecordsFile.database_on, database=database, host=host)


def _engine(connected: Any, pool: Any, **more: Any) -> sa.Engine:
    from sqlcipher3 import dbapi2

    return sa.create_engine("sqlite://", module=dbapi2, creator=connected, poolclass=pool, **more)


def _begun_by_us(engine: sa.Engine) -> sa.Engine:
    """A writer takes its turn when it begins: taking it at the first change lets two read the same and both write."""

    @sa.event.listens_for(engine, "begin")
    def begin(connection: sa.Connection) -> None:
        purpose = connection.get_execution_options().get("purpose", "read")
        if purpose != "read":  # samples: see `opening`, on synchronous
            connection.exec_driver_sql(f"PRAGMA synchronous = {'NORMAL' if purpose == 'samples' else 'FULL'}")
        connection.exec_driver_sql("BEGIN" if purpose == "read" else "BEGIN IMMEDIATE")

    return engine
