"""A program that is killed while it brings records up to date: at the copy, after any statement, before the transaction is whole."""

import os
import subprocess
import sys

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
    """Records opened by a program of its own; `when` is never, copy, copied, a number of statements, or commit."""
    return subprocess.run(
        [sys.executable, "-c", OPENED, str(place), str(when)],
        capture_output=True, text=True, timeout=120, check=False, env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
    )  # fmt: skip
