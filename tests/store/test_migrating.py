"""Every schema that was ever released can be brought up to date, and the migrations make what the tables say."""

import sqlite3
from pathlib import Path

import pytest
import sqlalchemy as sa
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory

from stickwright.errors import BadInput
from stickwright.store import migrating, opening
from stickwright.store.consents import consent_of
from stickwright.store.documents import documents
from stickwright.store.opening import kind_at, open_store
from stickwright.store.players import player_named, readings_through_time, visits
from stickwright.store.schema import METADATA
from stores import PASSPHRASE

RELEASED = sorted((Path(__file__).parents[1] / "data" / "schemas").glob("*.sql"))


def test_migrations_make_exactly_the_tables(store):
    """What the migrations make and what the program reads are the same: columns, types, keys and indexes, on each engine."""
    with store.engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True, "target_metadata": METADATA})
        assert compare_metadata(context, METADATA) == []


def test_the_newest_revision_is_the_one_named(store):
    """The name that spares us loading Alembic at each start is that of the newest script, and all are in one line."""
    with store.engine.connect() as connection:
        scripts = ScriptDirectory.from_config(migrating.alembic_config(connection))
    assert scripts.get_heads() == [migrating.HEAD]
    assert [path.stem for path in RELEASED] == sorted(one.revision for one in scripts.walk_revisions())


@pytest.mark.parametrize("released", RELEASED, ids=lambda path: path.stem)
def test_records_of_every_release_open(tmp_path, released):
    """A file as that release left it opens with all it held."""
    place = tmp_path / "records.db"
    with sqlite3.connect(place) as old:
        old.executescript(released.read_text("utf-8"))
    old.close()
    assert kind_at(place) == "plain"
    store = open_store(place)
    row = player_named(store, "K7")
    (visit,) = visits(store, row.id)
    assert (visit.on_date, visit.sites) == ("2026-03-14", ("chin",))
    assert documents(store, visit.id)["player.toml"].number == 2
    (reading,) = readings_through_time(store, row.id)
    assert reading.typed == "force_gf = 34, 36.0"
    assert reading.repeats == pytest.approx((34 * 9.80665e-3, 36 * 9.80665e-3), rel=1e-12)
    assert consent_of(store, row.id, store.clock.now().date()).scope == ("measure", "keep")
    store.close()
    assert (place.with_name(f"records.db.schema-{released.stem}").exists()) is (released.stem != migrating.HEAD)


@pytest.fixture
def newer_program(tmp_path, monkeypatch):
    """The program as it will be after one more migration, which adds a column."""
    source = Path(migrating.__file__).parent / "migrations"
    scripts = tmp_path / "migrations"
    (scripts / "versions").mkdir(parents=True)
    for path in (*source.glob("*.*"), *source.glob("versions/*.py")):
        (scripts / path.relative_to(source)).write_bytes(path.read_bytes())
    (scripts / "versions" / "next.py").write_text(
        "import sqlalchemy as sa\nfrom alembic import op\n"
        f"revision = '9000'\ndown_revision = {migrating.HEAD!r}\n"
        "def upgrade():\n"
        "    with op.batch_alter_table('plan') as plan:\n"
        "        plan.add_column(sa.Column('seen', sa.Text, nullable=False, server_default='no'))\n"
        "    if FAILS:\n        raise ZeroDivisionError\n".replace("FAILS", "False")
    )
    config_of = migrating.alembic_config

    def with_more(connection):
        config = config_of(connection)
        config.set_main_option("script_location", str(scripts))
        return config

    monkeypatch.setattr(migrating, "alembic_config", with_more)
    monkeypatch.setattr(migrating, "HEAD", "9000")
    return scripts / "versions" / "next.py"


def test_an_older_schema_is_copied_and_brought_up_to_date(tmp_path, empty_files, newer_program):
    """The copy beside it opens with the same passphrase and is as it was; a migration that fails changes nothing."""
    place = tmp_path / "records.db"
    place.write_bytes((empty_files / "encrypted").read_bytes())
    works = newer_program.read_text()
    newer_program.write_text(works.replace("if False", "if True"))
    with pytest.raises(ZeroDivisionError):
        open_store(place, passphrase=PASSPHRASE)
    newer_program.write_text(works)
    store = open_store(place, passphrase=PASSPHRASE)
    with store.read() as connection:
        assert "seen" in [column["name"] for column in sa.inspect(connection).get_columns("plan")]
    assert opening.faults_in(store) == ()
    store.close()
    copy = tmp_path / f"records.db.schema-{RELEASED[-1].stem}"
    assert kind_at(copy) == "encrypted"


def test_an_older_program_refuses_a_newer_schema_on_a_server(server):
    """Two laptops of a team with different versions: the older says so."""
    url = server.laid_down()
    store = open_store(url)
    with store.write("test", "") as connection:
        connection.execute(sa.text("UPDATE alembic_version SET version_num = '9999'"))
    store.close()
    with pytest.raises(BadInput, match=r"newer stickwright \(schema 9999\)"):
        open_store(url)
