"""Filled records of a team's server, of an earlier schema: brought up to date, or broken off in the middle, nothing is lost."""

import lzma
import signal
import sqlite3
import zlib
from pathlib import Path

import pytest
import sqlalchemy as sa
from alembic import command

from killed_migration import opened
from stickwright.store import migrating
from stickwright.store.engines import server_engine
from stickwright.store.opening import faults_in, open_store
from stickwright.store.schema import METADATA, version
from told_records import told_by

DATA = Path(__file__).parents[1] / "data" / "records"
EARLIER = sorted(path.name.removesuffix(".db.xz") for path in DATA.glob("*.db.xz"))


def columns_in(connection):
    """Tables and columns of the present schema that a place has, with the types of the program."""
    there = sa.inspect(connection)
    return {
        table: [column for column in table.c if column.name in {one["name"] for one in there.get_columns(table.name)}]
        for table in METADATA.sorted_tables
        if there.has_table(table.name)
    }


def rows_in(connection, columns):
    """Every field of those columns."""
    return {
        table.name: [
            tuple(row) for row in connection.execute(sa.select(*fields).order_by(*table.primary_key.columns)).all()
        ]
        for table, fields in columns.items()
    }


def typed_in(store):
    """What each version of each file says, by its number; at least some have been read into documents."""
    with store.read() as connection:
        held = {row.id: row.typed and zlib.decompress(row.typed) for row in connection.execute(sa.select(version))}
    assert any(held.values())
    return held


@pytest.fixture(params=EARLIER)
def filled(request, tmp_path, server):
    """Address of a server's records of the schema of that day, with all that a file of that day holds; and what the file told."""
    place = tmp_path / "records.db"
    place.write_bytes(lzma.decompress((DATA / f"{request.param}.db.xz").read_bytes()))
    with sqlite3.connect(place) as held:
        ((schema,),) = held.execute("SELECT version_num FROM alembic_version").fetchall()
    held.close()
    url = server.empty()
    source, target = sa.create_engine(f"sqlite:///{place}"), server_engine(url)[0]
    with source.connect() as held, target.begin() as kept:
        command.upgrade(migrating.alembic_config(kept), schema)
        for table, fields in columns_in(held).items():
            rows = [dict(row) for row in held.execute(sa.select(*fields)).mappings()]
            kept.execute(sa.delete(table))  # what the migrations themselves put there
            if rows:
                kept.execute(sa.insert(table), rows)
    source.dispose()
    target.dispose()
    told = open_store(place)
    yield url, schema, told_by(told), typed_in(told)
    told.close()


def test_records_of_a_server_are_brought_up_to_date_with_every_field(filled):
    """Each field of each table as it was, the new ones filled; all that the file tells, the server tells."""
    url, _, told, typed = filled
    engine = server_engine(url)[0]
    with engine.connect() as connection:
        columns = columns_in(connection)
        before = rows_in(connection, columns)
    assert sum(map(len, before.values())) > 100
    store = open_store(url)
    with store.read() as connection:
        assert rows_in(connection, columns) == before
        assert connection.execute(sa.text("SELECT version_num FROM alembic_version")).scalar() == migrating.HEAD
    assert faults_in(store) == ()
    assert told_by(store) == told
    assert typed_in(store) == typed
    store.close()
    engine.dispose()


def test_broken_off_at_any_moment_a_server_keeps_what_it_had(filled):
    """After the first statements, half way, at the last and before the transaction is whole: each field as it was, no column
    or table more; the next start brings all up to date."""
    url, schema, told, typed = filled
    engine = server_engine(url)[0]
    with engine.connect() as connection:
        columns = columns_in(connection)
        before = rows_in(connection, columns)
    statements = _statements_of_a_migration(url, engine)
    assert statements > 20
    for when in (1, 3, statements // 3, statements // 2, statements, "commit"):
        killed = opened(url, when)
        assert (killed.returncode, killed.stdout) == (-signal.SIGKILL, ""), (when, killed.stderr)
        with engine.connect() as connection:
            assert connection.execute(sa.text("SELECT version_num FROM alembic_version")).scalar() == schema, when
            assert columns_in(connection) == columns, when
            assert rows_in(connection, columns) == before, when
    store = open_store(url)
    assert told_by(store) == told
    assert typed_in(store) == typed
    store.close()
    engine.dispose()


def _statements_of_a_migration(url, engine):
    """How many statements it takes, counted on a copy of the database."""
    engine.dispose()
    around, _, name = url.rpartition("/")
    copy = f"{name}counted"
    maintenance = server_engine(f"{around}/postgres")[0]
    with maintenance.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
        connection.execute(sa.text(f"CREATE DATABASE {copy} TEMPLATE {name}"))
    maintenance.dispose()
    return int(opened(f"{around}/{copy}", "never").stdout)
