"""Ten minutes of a stick at 1 kHz, through to the disk of encrypted records, without a lost sample.

``python benchmarks/capture_to_disk.py [seconds]``: first the whole ten minutes as fast as they go, in batches of 50 ms and as
single samples, beside the same rows written as CSV with a flush to the disk after each batch; then some seconds in real time, paced,
with the share of one core that it takes.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from pathlib import Path

import numpy as np

from stickwright.measure.steps import RECORDED_COLUMNS
from stickwright.store.opening import Store, create_store
from stickwright.store.players import add_player, add_visit
from stickwright.store.recordings import append_samples, begin_recording, finish_recording, samples_of

RATE_HZ = 1000
SECONDS = 600
BATCH = 50


def stick_rows(samples: int) -> np.ndarray:
    """A made-up stick with 16 bits an axis and a clock that jitters as a real one does."""
    rng = np.random.default_rng(1)
    rows = np.full((samples, len(RECORDED_COLUMNS)), np.nan)
    rows[:, 0] = np.round(np.cumsum(rng.normal(1 / RATE_HZ, 2e-5, samples)), 9)
    turn = rows[:, 0] * 2.1
    noise = rng.normal(0, 0.004, (samples, 2))
    rows[:, 1:3] = np.round((np.column_stack([0.7 * np.cos(turn), 0.6 * np.sin(turn)]) + noise) * 32767) / 32767
    rows[:, [6, 9, 10]] = [2.0, 0.0, 0.0]
    return rows


def begun(store: Store) -> int:
    visit = add_visit(store, add_player(store, f"K{os.urandom(3).hex()}x", who="ot").id, "2026-03-14", who="ot")
    return begin_recording(
        store, visit.id, site="chin", task="rim", columns=RECORDED_COLUMNS, source="computer", who="ot"
    ).id


def kept(store: Store, rows: np.ndarray, batch: int, paced: bool = False) -> tuple[int, np.ndarray, float]:
    """Recording, milliseconds of each batch, CPU seconds."""
    recording, took = begun(store), []
    cpu, started = time.process_time(), time.perf_counter()
    for at in range(0, len(rows), batch):
        if paced:
            time.sleep(max(0.0, started + (at + batch) / RATE_HZ - time.perf_counter()))
        before = time.perf_counter()
        append_samples(store, recording, rows[at : at + batch], first=at)
        took.append(1e3 * (time.perf_counter() - before))
    finish_recording(store, recording, "done", who="ot")
    return recording, np.array(took), time.process_time() - cpu


def as_csv(rows: np.ndarray, place: Path, batch: int) -> np.ndarray:
    """The named peer: Python's csv module, each batch flushed to the disk."""
    import csv

    took = []
    with place.open("w", newline="") as file:
        writer = csv.writer(file)
        for at in range(0, len(rows), batch):
            before = time.perf_counter()
            writer.writerows(rows[at : at + batch].tolist())
            file.flush()
            os.fsync(file.fileno())
            took.append(1e3 * (time.perf_counter() - before))
    return np.array(took)


def told(what: str, took: np.ndarray) -> None:
    p50, p99 = np.percentile(took, [50, 99])
    print(
        f"{what:42s} {took.sum() / 1e3:7.1f} s, a batch p50 {p50:.2f} ms, p99 {p99:.2f} ms, longest {took.max():.1f} ms"
    )


def main(paced_s: int) -> None:
    rows = stick_rows(RATE_HZ * SECONDS)
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "records.db"
        store = create_store(place, passphrase="heron under the bridge")
        recording, took, cpu = kept(store, rows, BATCH)
        told(f"{len(rows):,} samples, batches of {BATCH}", took)
        lost = len(rows) - len(samples_of(store, recording))
        same = samples_of(store, recording).tobytes() == rows.tobytes()
        print(
            f"  lost {lost}, bit for bit the same: {same}; CPU {cpu:.1f} s = {100 * cpu / SECONDS:.1f} % of one core over ten minutes"
        )
        csv_place = Path(folder) / "rows.csv"
        peer = as_csv(rows, csv_place, BATCH)
        told("  the same as CSV, flushed each batch", peer)
        size = place.stat().st_size
        print(
            f"  records {size / 1e6:.1f} MB, CSV {csv_place.stat().st_size / 1e6:.1f} MB, numbers {rows.nbytes / 1e6:.1f} MB"
        )
        print(
            f"  time against CSV: {took.sum() / peer.sum():.2f}, size against CSV: {size / csv_place.stat().st_size:.2f}"
        )
        single = rows[: RATE_HZ * 20]
        _, took, cpu = kept(store, single, 1)
        told(f"{len(single):,} samples one by one", took)
        print(f"  CPU {100 * cpu / 20:.0f} % of one core at 1 kHz")
        recording, took, cpu = kept(store, rows[: RATE_HZ * paced_s], BATCH, paced=True)
        told(f"in real time for {paced_s} s, batches of {BATCH}", took)
        lost = RATE_HZ * paced_s - len(samples_of(store, recording))
        print(f"  lost {lost}; CPU {100 * cpu / paced_s:.1f} % of one core")
        store.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 30)
