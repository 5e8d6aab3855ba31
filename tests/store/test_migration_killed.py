"""Records of an earlier version, and a program that is killed while it brings them up to date: they open, with everything in them."""

import json
import lzma
import signal
import sqlite3
from pathlib import Path

import pytest

from killed_migration import opened
from stickwright.store import migrating
from stickwright.store.opening import faults_in, open_store
from told_records import told_by

DATA = Path(__file__).parents[1] / "data" / "records"
EARLIER = sorted(path.name.removesuffix(".db.xz") for path in DATA.glob("*.db.xz"))


def revision(place):
    with sqlite3.connect(place) as connection:
        (found,) = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    connection.close()
    return found


@pytest.mark.parametrize("date", EARLIER)
def test_killed_at_any_moment_of_the_migration_nothing_is_lost(tmp_path, date):
    """While the file is copied, after the first statements, half way, at the last, and before the transaction is whole: the
    file is as it was, and the next start finds and keeps all."""
    body = lzma.decompress((DATA / f"{date}.db.xz").read_bytes())
    place = tmp_path / "records.db"
    place.write_bytes(body)
    before = revision(place)
    through = opened(place, "never")
    statements = int(through.stdout)
    assert statements > 20
    told = json.loads((DATA / f"{date}.json").read_text(encoding="utf-8"))
    for when in ("copy", "copied", 1, 3, statements // 3, statements // 2, statements, "commit"):
        folder = tmp_path / f"killed-{when}"
        folder.mkdir()
        place = folder / "records.db"
        place.write_bytes(body)
        killed = opened(place, when)
        assert (killed.returncode, killed.stdout) == (-signal.SIGKILL, ""), (when, killed.stderr)
        assert revision(place) == before, when
        store = open_store(place)
        assert faults_in(store) == ()
        now = told_by(store)
        store.close()
        assert revision(place) == migrating.HEAD
        for code, player in told["players"].items():
            for one, other in zip(player["visits"], now["players"][code]["visits"], strict=True):
                assert one["files"] == other["files"], when
                assert [row["samples"] for row in one["recordings"]] == [row["samples"] for row in other["recordings"]]
                assert one["plans"] == other["plans"]
            assert player["loans"] == now["players"][code]["loans"]
        copy = place.with_name(f"records.db.schema-{before}")
        assert revision(copy) == before
