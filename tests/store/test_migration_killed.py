"""Records of an earlier version, and a program that is killed while it brings them up to date: they open, with everything in them."""

import json
import lzma
import os
import signal
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest

from stickwright.store import migrating
from stickwright.store.opening import faults_in, open_store
from told_records import told_by

DATA = Path(__file__).parents[1] / "data" / "records"
EARLIER = sorted(path.name.removesuffix(".db.xz") for path in DATA.glob("*.db.xz"))
OPENED = """
import os, signal, sys
import sqlalchemy as sa
from stickwright.store import migrating
from stickwright.store.opening import open_store

place, when = sys.argv[1], sys.argv[2]
done = {"statements": 0, "runs": False, "ran": False}

def die():
    os.kill(os.getpid(), signal.SIGKILL)

def counted(*given):
    if done["runs"]:
        done["statements"] += 1
        if when == str(done["statements"]):
            die()

def before_commit(connection):
    if done["ran"] and when == "commit":
        die()

copied, upgraded = migrating._copied, migrating._upgrade

def while_copying(path, revision, secret):
    if when == "copy":
        path.with_name(f"{path.name}.schema-{revision}.part").write_bytes(path.read_bytes()[:5000])
        die()
    copied(path, revision, secret)
    if when == "copied":
        die()

def upgrading(connection):
    done["runs"] = True
    upgraded(connection)
    done.update(runs=False, ran=True)

migrating._copied, migrating._upgrade = while_copying, upgrading
sa.event.listen(sa.Engine, "after_cursor_execute", counted)
sa.event.listen(sa.Engine, "commit", before_commit)
open_store(place).close()
if when == "never":
    print(done["statements"])
else:
    print("still alive")
"""


def opened(place, when):
    return subprocess.run(
        [sys.executable, "-c", OPENED, str(place), str(when)],
        capture_output=True, text=True, timeout=120, check=False, env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
    )  # fmt: skip


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
