"""Records from 1 to 100,000 recordings: what keeping one more, listing a visit's, and reading one back take as they grow.

Beside it the same rows in a plain table of Python's own sqlite3, each sample a row, neither packed nor encrypted: the named peer.
"""

from __future__ import annotations

import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import sqlalchemy as sa

from capture_to_disk import stick_rows
from stickwright.measure.steps import RECORDED_COLUMNS
from stickwright.store.opening import Store, create_store
from stickwright.store.packing import digest_of, packed
from stickwright.store.players import add_player, add_visit, players
from stickwright.store.recordings import append_samples, begin_recording, finish_recording, recordings, samples_of
from stickwright.store.schema import chunk, recording, recording_act

SAMPLES = 200
PER_VISIT = 20


def filled(store: Store, visits: list[int], start: int, upto: int, rows: np.ndarray) -> None:
    """Recordings as they would stand after years, written in bulk."""
    body, digest, at = packed(rows), digest_of(rows), store.at()
    for low in range(start, upto, 10_000):
        with store.write("benchmark", "") as connection:
            numbers = range(low, min(upto, low + 10_000))
            same = {"at": at, "who": "ot", "site": "chin", "task": "rim", "source": "computer", "columns": list(RECORDED_COLUMNS),
                    "asked": {}}  # fmt: skip
            connection.execute(
                sa.insert(recording),
                [
                    same | {"id": one + 1, "visit_id": visits[one // PER_VISIT % len(visits)], "name": f"rim-{one}"}
                    for one in numbers
                ],
            )
            acts = [
                {"at": at, "who": "ot", "recording_id": one + 1, "what": what, "sample": SAMPLES}
                for one in numbers
                for what in ("began", "done")
            ]
            connection.execute(sa.insert(recording_act), acts)
            kept = [
                {"recording_id": one + 1, "first": 0, "samples": SAMPLES, "body": body, "digest": digest}
                for one in numbers
            ]
            connection.execute(sa.insert(chunk), kept)


def best(act: Callable[[], object], times: int = 7) -> float:
    """Milliseconds, the best of some."""
    took = []
    for _ in range(times):
        before = time.perf_counter()
        act()
        took.append(time.perf_counter() - before)
    return 1e3 * min(took)


def one_more(store: Store, visit: int, rows: np.ndarray) -> None:
    row = begin_recording(store, visit, site="chin", task="aim", columns=RECORDED_COLUMNS, source="computer", who="ot")
    append_samples(store, row.id, rows, first=0)
    finish_recording(store, row.id, "done", who="ot")


def main(most: int) -> None:
    rows = stick_rows(SAMPLES)
    with tempfile.TemporaryDirectory() as folder:
        store = create_store(Path(folder) / "records.db", passphrase="heron under the bridge")
        visits = [
            add_visit(store, player, "2026-03-14", who="ot").id
            for player in [add_player(store, f"K{number}", who="ot").id for number in range(50)]
            for _ in range(10)
        ]
        peer = sqlite3.connect(Path(folder) / "plain.db", isolation_level=None)
        peer.execute("PRAGMA journal_mode = WAL")
        peer.execute("PRAGMA synchronous = FULL")
        peer.execute(
            f"CREATE TABLE sample (recording, number, {', '.join(RECORDED_COLUMNS)}, PRIMARY KEY (recording, number))"
        )
        held = inside = 0
        fresh = iter(range(10**6, 2 * 10**6))
        print("recordings  keep one  list visit  list players  read one   MB    | plain sqlite3: keep one  read one")
        for count in (1, 100, 1_000, 10_000, most):
            with store.read() as connection:
                held = int(connection.execute(sa.select(sa.func.coalesce(sa.func.max(recording.c.id), 0))).scalar_one())
            filled(store, visits, held, max(held, count), rows)
            for number in range(inside, min(count, 3000)):  # a table of all samples of 100,000 would be 20 million rows
                put(peer, number, rows)
            inside = max(inside, min(count, 3000))
            size = Path(folder, "records.db").stat().st_size / 1e6
            print(
                f"{count:10,} {best(lambda: one_more(store, visits[-1], rows)):8.2f}  {best(lambda: recordings(store, visits[0])):9.2f}"
                f"  {best(lambda: players(store)):11.2f}  {best(lambda: samples_of(store, 1)):8.2f} {size:7.1f}"
                f"  | {best(lambda: put(peer, next(fresh), rows)):16.2f}"
                f" {best(lambda: peer.execute('SELECT * FROM sample WHERE recording = 0').fetchall()):14.2f}"
            )
        peer.close()
        store.close()


def put(peer: sqlite3.Connection, number: int, rows: np.ndarray) -> None:
    """One recording into the plain table, committed."""
    peer.execute("BEGIN")
    marks = ", ".join("?" * (len(RECORDED_COLUMNS) + 2))
    peer.executemany(
        f"INSERT INTO sample VALUES ({marks})", [(number, at, *row) for at, row in enumerate(rows.tolist())]
    )
    peer.execute("COMMIT")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100_000)
