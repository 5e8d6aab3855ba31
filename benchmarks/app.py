"""The app as a person meets it: the first page, the two longest lists, and a live measurement, each against a bare peer.

The first page: from typing ``stickwright open`` until it is there, beside a starlette application with one page on the same server.
The lists: asked of the app in this process with all that a page goes through, beside plain SQL of the same rows. The live
measurement: messages of a browser page through to the encrypted records, beside the same rows as CSV.
"""

from __future__ import annotations

import csv
import os
import statistics
import subprocess
import sys
import tempfile
import time
import warnings
from collections.abc import Callable
from pathlib import Path
from urllib.request import HTTPCookieProcessor, build_opener

import numpy as np
import sqlalchemy as sa

from records import MANY, ONE, PAGE, filled, milliseconds, plainly
from stickwright.measure.batches import Batch, encode
from stickwright.measure.tasks import guided_task
from stickwright.store.opening import Store, create_store
from stickwright.store.players import add_player, add_visit
from stickwright.store.recordings import samples_of
from stickwright.store.schema import reading
from stickwright.web.app import make_app
from stickwright.web.live import Live, LiveAsked, RecordSink
from stickwright.web.request_context import RequestContext

STARTS = 5
ADDRESS = "http://127.0.0.1:8123"
RATE_HZ, PER_BATCH, BATCHES = 250, 8, 3000
BARE = """
import socket, uvicorn
from starlette.applications import Starlette
from starlette.responses import PlainTextResponse
from starlette.routing import Route
held = socket.create_server(("127.0.0.1", 0))
print(f"open at http://127.0.0.1:{held.getsockname()[1]}/", flush=True)
app = Starlette(routes=[Route("/", lambda request: PlainTextResponse("here"))])
uvicorn.Server(uvicorn.Config(app, log_level="critical")).run(sockets=[held])
"""


def first_page(*command: str | Path) -> float:
    """Seconds from the start of a process to its first page; it prints its address first."""
    begun = time.perf_counter()
    with subprocess.Popen([str(part) for part in command], stdout=subprocess.PIPE, text=True) as running:
        try:
            assert running.stdout is not None
            address = running.stdout.readline().split()[-1]
            with build_opener(HTTPCookieProcessor()).open(address, timeout=60) as answer:
                answer.read()
            return time.perf_counter() - begun
        finally:
            running.kill()


def first_click(rests_s: float) -> float:
    """Seconds until a page that planning has to be loaded for answers, somebody having read the first page for so long."""
    with tempfile.TemporaryDirectory() as folder:
        command = (sys.executable, "-m", "stickwright", "open", "--no-browser", "--place", f"{folder}/records.db")
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as running:
            try:
                assert running.stdout is not None
                address = running.stdout.readline().split()[-1]
                browser = build_opener(HTTPCookieProcessor())
                browser.open(address, timeout=60).close()
                time.sleep(rests_s)
                begun = time.perf_counter()
                browser.open(f"{address.partition('?')[0]}visits/1/plan", timeout=60).close()
                return time.perf_counter() - begun
            finally:
                running.kill()


def read_often(store: Store) -> None:
    """Force in four directions at each of the first player's visits, so that the player's page has figures to draw."""
    turned = [(visit, direction) for visit in range(1, MANY + 1) for direction in range(4)]
    rows = [
        {
            "visit_id": visit, "version_id": visit, "site": "chin", "kind": "force", "typed": "",
            "direction_rad": direction * np.pi / 2, "repeats": [1.0 + visit / MANY, 1.2, 1.1],
        }
        for visit, direction in turned
    ]  # fmt: skip
    with store.write("bench", "readings") as connection:
        connection.execute(sa.insert(reading), rows)


def starts() -> None:
    ours, bare = [], []
    with tempfile.TemporaryDirectory() as folder:
        for number in range(STARTS):  # in turn, so that a busy machine slows both alike
            ours.append(
                first_page(
                    sys.executable, "-m", "stickwright", "open", "--no-browser", "--place",
                    Path(folder, str(number), "records.db"), "--port", "0",
                )
            )  # fmt: skip
            bare.append(first_page(sys.executable, "-c", BARE))
    mine, peer = statistics.median(ours), statistics.median(bare)
    print(f"start to first page: {mine:.2f} s, bare starlette and uvicorn {peer:.2f} s, ratio {mine / peer:.1f}")
    print(f"first click: at once {first_click(0):.2f} s, after 6 s of reading the first page {first_click(6):.3f} s")


def pages() -> None:
    with warnings.catch_warnings():  # the client wants a newer name of the same library
        warnings.filterwarnings("ignore", message="Using `httpx` with `starlette.testclient`")
        from starlette.testclient import TestClient
    with tempfile.TemporaryDirectory() as folder:
        store = create_store(Path(folder, "records.db"), passphrase="heron under the bridge")
        filled(store)
        read_often(store)
        desk = RequestContext(Path(folder, "records.db"), store=store)
        with TestClient(make_app(desk), base_url=ADDRESS) as client:
            client.get(f"/?start={desk.token}")
            for name, path, sql, least in (
                ("players page, 500 players and 20,000 recordings", "/players", PAGE, 50),
                ("player page, 200 visits with 800 readings", "/players/P1", ONE, MANY),
            ):
                answer = client.get(path)
                assert answer.status_code == 200
                assert answer.text.count("<tr>") > least, f"{path}: fewer rows than there are"
                mine = milliseconds(lambda path=path: client.get(path))
                peer = milliseconds(lambda sql=sql: plainly(store, sql))
                print(f"{name}: {mine:.0f} ms (wanted < 100), plain SQL {peer:.1f} ms, ratio {mine / peer:.1f}")
        desk.close()


def messages() -> list[bytes]:
    """What a browser page would send: a stick that appears, wiggles, then plays, 250 samples a second in messages of 8."""
    said = {"slot": 0, "page": 1, "axes": 4, "buttons": 17}
    found = Batch("appeared", sequence=0, sent_ms=0.0, wall_ms=1.7e12, text="a stick", standard=True, **said)
    out = [encode(found)]
    rng = np.random.default_rng(1)
    for number in range(BATCHES):
        first = number * PER_BATCH
        times_ms = (first + 1 + np.arange(PER_BATCH)) * 1000.0 / RATE_HZ
        turn = times_ms * 0.006
        xy = np.column_stack([0.9 * np.cos(turn), 0.9 * np.sin(turn)]) + rng.normal(0, 0.004, (PER_BATCH, 2))
        rows = np.column_stack([times_ms, np.zeros(PER_BATCH), xy, np.zeros((PER_BATCH, 2))])
        sent = float(times_ms[-1])
        out.append(
            encode(Batch("samples", sequence=number + 1, sent_ms=sent, wall_ms=1.7e12 + sent, first=first, rows=rows, **said))
        )  # fmt: skip
    return out


def spread(name: str, spent: list[float]) -> float:
    p50, p99 = np.percentile(np.array(spent) * 1e3, [50, 99])
    print(f"{name}: a batch p50 {p50:.2f} ms, p99 {p99:.2f} ms, longest {1e3 * max(spent):.1f} ms")
    return float(p99)


def timed(job: Callable[[], object], spent: list[float]) -> None:
    begun = time.perf_counter()
    job()
    spent.append(time.perf_counter() - begun)


def live() -> None:
    with tempfile.TemporaryDirectory() as folder:
        store = create_store(Path(folder, "records.db"), passphrase="heron under the bridge")
        visit = add_visit(store, add_player(store, "K7", who="bench").id, "2026-03-14", who="bench")
        asked = LiveAsked("chin", guided_task("play", seed=1, lasts_s=1e4))
        sink = RecordSink(store, visit.id, asked, "bench")
        running = Live(asked, sink)
        sent, spent = messages(), []
        per_batch_s, wiggled = PER_BATCH / RATE_HZ, 100
        for number, message in enumerate(sent):
            at_s = number * per_batch_s
            if number < wiggled:
                running.receive(message, at_s)
                running.turn(at_s)
                if number == wiggled - 1:
                    running.say({"do": "start"}, at_s)
                continue

            def one(message: bytes = message, at_s: float = at_s) -> None:
                running.receive(message, at_s)
                running.turn(at_s)

            timed(one, spent)
        assert sink.recording_id is not None, "nothing was recorded: the stick was not found"
        running.close()
        rows = samples_of(store, sink.recording_id)
        print(f"{len(rows):,} of {len(spent) * PER_BATCH:,} samples are in the records")
        written: list[float] = []
        with Path(folder, "peer.csv").open("w", newline="") as file:
            writer = csv.writer(file)
            for first in range(0, len(rows), PER_BATCH):

                def peer(first: int = first) -> None:
                    writer.writerows(rows[first : first + PER_BATCH].tolist())
                    file.flush()

                timed(peer, written)
            os.fsync(file.fileno())
        store.close()
        mine = spread(f"{PER_BATCH} live samples received and kept encrypted (p99 wanted < 2)", spent)
        other = spread("the same rows appended to CSV", written)
        print(f"ratio at p50 {np.median(spent) / np.median(written):.0f}, at p99 {mine / other:.0f}")


def main() -> None:
    starts()
    pages()
    live()


if __name__ == "__main__":
    main()
