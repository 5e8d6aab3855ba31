"""Lists of players and visits as the pages ask for them, against a plain SQL query of the same rows, in the same run.

500 players with 20,000 recordings, and one player with 200 visits, in an encrypted file. Prints the milliseconds of each, and the
ratio to SQL written by hand and run on the bare connection of the same database. Then what derived rows of a file cost.
"""

from __future__ import annotations

import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import sqlalchemy as sa

from stickwright.store.documents import save_document
from stickwright.store.facts import facts_of
from stickwright.store.opening import Store, create_store, open_store
from stickwright.store.players import add_player, add_visit, players, visits
from stickwright.store.schema import document, player, recording, version, visit, visit_fact

PLAYERS, VISITS, RECORDINGS, MANY = 500, 2_000, 20_000, 200
PASSPHRASE = "heron under the bridge"
PAGE = """
SELECT p.id, p.code, coalesce(s.many, 0), coalesce(s.last, ''),
       (SELECT count(*) FROM recording r JOIN visit v ON v.id = r.visit_id WHERE v.player_id = p.id),
       (SELECT c.until FROM consent c WHERE c.player_id = p.id ORDER BY c.id DESC LIMIT 1)
FROM player p LEFT JOIN (SELECT v.player_id, max(f.on_date) AS last, count(*) AS many FROM visit v
     LEFT JOIN visit_fact f ON f.visit_id = v.id GROUP BY v.player_id) s ON s.player_id = p.id
ORDER BY 4 DESC, p.code_key LIMIT 50
"""
ONE = """
SELECT v.id, v.player_id, v.number, f.on_date, f.game, f.sites, f.problems,
       (SELECT count(*) FROM recording r WHERE r.visit_id = v.id), (SELECT count(*) FROM plan q WHERE q.visit_id = v.id)
FROM visit v LEFT JOIN visit_fact f ON f.visit_id = v.id WHERE v.player_id = 1 ORDER BY f.on_date DESC
"""
SITE = """
[[site]]
name = "site {number}"
part = "chin"
[[site.reading]]
direction_deg = 90
force_n = [1.26, 1.63, 1.23]
reach_mm = [8.4, 7.9, 8.2]
"""


def filled(store: Store) -> None:
    """Players, visits and recordings; the first player has 200 visits."""
    at = store.at()
    with store.write("bench", "filled") as connection:
        said = {"at": at, "who": "bench"}
        connection.execute(
            sa.insert(player), [{**said, "code": f"P{n}", "code_key": f"p{n}"} for n in range(1, PLAYERS + 1)]
        )
        owners = [1] * MANY + [n % (PLAYERS - 1) + 2 for n in range(VISITS - MANY)]
        numbers: dict[int, int] = {}
        rows = []
        for owner in owners:
            numbers[owner] = numbers.get(owner, 0) + 1
            rows.append({**said, "player_id": owner, "number": numbers[owner]})
        connection.execute(sa.insert(visit), rows)
        facts = [
            {
                "visit_id": n,
                "on_date": f"20{20 + n % 7}-0{n % 9 + 1}-1{n % 9}",
                "sites": ["chin", "left thumb"],
                "game": "kites",
            }
            for n in range(1, VISITS + 1)
        ]
        connection.execute(sa.insert(visit_fact), facts)
        recorded = {"site": "chin", "task": "aim", "source": "browser", "columns": ["time_s", "x", "y"], "asked": {}}
        connection.execute(
            sa.insert(recording),
            [{**said, **recorded, "visit_id": n % VISITS + 1, "name": f"aim {n}"} for n in range(RECORDINGS)],
        )
        held = [{"id": n, "visit_id": n, "name": "player.toml"} for n in range(1, VISITS + 1)]
        connection.execute(sa.insert(document), held)
        kept = {**said, "number": 1, "body": b"x" * 2000, "digest": "0" * 64}
        connection.execute(sa.insert(version), [{**kept, "document_id": n} for n in range(1, VISITS + 1)])


def milliseconds(job: Callable[[], Any], times: int = 31) -> float:
    """Median of several, after one that fills the caches."""
    job()
    spent = []
    for _ in range(times):
        begun = time.perf_counter()
        job()
        spent.append(time.perf_counter() - begun)
    return 1000 * statistics.median(spent)


def plainly(store: Store, sql: str) -> list[Any]:
    """The peer: the same rows by hand."""
    with store.engine.connect() as connection:
        raw: Any = connection.connection.dbapi_connection
        return list(raw.execute(sql).fetchall())


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "records.db"
        store = create_store(place, passphrase=PASSPHRASE)
        filled(store)
        for name, ours, sql in (
            (f"page of {PLAYERS} players, {RECORDINGS} recordings", lambda: players(store).rows, PAGE),
            (f"player with {MANY} visits", lambda: visits(store, 1), ONE),
        ):
            assert len(ours()) == len(plainly(store, sql))
            mine, peer = milliseconds(ours), milliseconds(lambda sql=sql: plainly(store, sql))
            print(f"{name}: {mine:.1f} ms, plain SQL {peer:.1f} ms, ratio {mine / peer:.2f}")
        store.close()
        opened = milliseconds(lambda: open_store(place, passphrase=PASSPHRASE).close(), times=5)
        print(f"open {place.stat().st_size / 2**20:.1f} MB, key and whole check included: {opened:.0f} ms")
        store = open_store(place, passphrase=PASSPHRASE)
        row = add_visit(store, add_player(store, "K7", who="bench").id, "2026-03-14", who="bench")
        text = 'code = "K7"\nvisit = "2026-03-14"\n' + "".join(SITE.format(number=n) for n in range(20))
        bodies = iter(f"{text}# {n}\n".encode() for n in range(100))
        print(
            f"facts of a player.toml of {len(text)} bytes: {milliseconds(lambda: facts_of({'player.toml': text.encode()})):.1f} ms"
        )
        print(
            f"saved to disk: {milliseconds(lambda: save_document(store, row.id, 'player.toml', next(bodies), who='b')):.1f} ms"
        )
        store.close()


if __name__ == "__main__":
    main()
