"""Bringing the tables of an older stickwright up to date, with a copy of the file beside it first."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import sqlalchemy as sa

from stickwright.codes.message import Name, Text, message
from stickwright.codes.records_file import RecordsFile
from stickwright.errors import BadInput, Problem
from stickwright.store.engines import Secret, raw_connection
from stickwright.store.keys import APPLICATION_ID

__all__ = ["HEAD", "MIGRATED_BY", "alembic_config", "bring_up_to_date", "lay_down"]

HEAD = "0002"
"""The newest revision, here so that a file that is up to date is opened without loading Alembic; a test compares the two."""
MIGRATED_BY = "stickwright"
_MOMENT = 7_305_402  # two programs that start at once on one server migrate one after the other


def alembic_config(connection: sa.Connection) -> Any:
    """Alembic's settings for one connection; the scripts travel inside the package."""
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations").replace("%", "%%"))
    config.attributes["connection"] = connection
    return config


def lay_down(engine: sa.Engine) -> None:
    """All tables, in a place that has none."""
    with engine.connect().execution_options(purpose="write") as connection:
        if connection.dialect.name == "sqlite":
            connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
        _upgrade(connection)
        connection.commit()


def bring_up_to_date(
    engine: sa.Engine, place: Text, *, beside: Path | None = None, secret: Secret | None = None
) -> None:
    """Migrate where the tables are older than the program, and refuse where they are newer.

    Parameters
    ----------
    engine : Engine
    place : Message or str
        For people.
    beside : Path, optional
        The file, to copy first.
    secret : Secret, optional
        Its key.

    Raises
    ------
    BadInput
        Made by a newer stickwright, or by another program.
    """
    with engine.connect() as connection:
        found = _revision(connection)
        others = sa.inspect(connection).get_table_names() if found is None else []
    if found == HEAD:
        return
    if found is not None and found not in _known(engine):
        raise BadInput(
            Problem(
                (place,),
                message(RecordsFile.newer, schema=Name(found)),
                message(RecordsFile.older_schema, schema=Name(HEAD)),
                message(RecordsFile.install_newer),
            )
        )
    if others:
        found_tables = message(RecordsFile.other_program, tables=tuple(Name(one) for one in sorted(others)[:3]))
        expected, remedy = message(RecordsFile.empty_or_records), message(RecordsFile.another_database)
        raise BadInput(Problem((place,), found_tables, expected, remedy))
    if beside is not None and found is not None:
        _copied(beside, found, secret)
    with engine.connect().execution_options(purpose="write") as connection:
        if connection.dialect.name == "postgresql":
            connection.execute(sa.select(sa.func.pg_advisory_xact_lock(_MOMENT)))
        _upgrade(connection)
        connection.commit()


def _revision(connection: sa.Connection) -> str | None:
    if not sa.inspect(connection).has_table("alembic_version"):
        return None
    return connection.execute(sa.text("SELECT version_num FROM alembic_version")).scalar()


def _known(engine: sa.Engine) -> set[str]:
    from alembic.script import ScriptDirectory

    with engine.connect() as connection:
        return {script.revision for script in ScriptDirectory.from_config(alembic_config(connection)).walk_revisions()}


def _upgrade(connection: sa.Connection) -> None:
    from alembic import command

    command.upgrade(alembic_config(connection), "head")


def _copied(path: Path, revision: str, secret: Secret | None) -> None:
    """Made by SQLite itself, so that what still stands in the log comes along; the same passphrase opens it."""
    copy = path.with_name(f"{path.name}.schema-{revision}")
    if copy.exists():
        return  # of an attempt before: from an older moment, of the same schema
    part = copy.with_name(copy.name + ".part")
    part.unlink(missing_ok=True)
    source, target = raw_connection(path, secret), raw_connection(part, secret)
    try:
        source.backup(target)
    finally:
        target.close()
        source.close()
    part.rename(copy)
