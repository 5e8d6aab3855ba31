"""Samples of live recordings: each one kept, bit for bit, whatever happens."""

import hashlib
import os
import random
import signal
import subprocess
import sys
from pathlib import Path

import numpy as np
import polars as pl
import pytest
import sqlalchemy as sa
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays

from said import said
from stickwright.codes.message import message
from stickwright.codes.recording_faults import RecordingFaults
from stickwright.errors import BadInput
from stickwright.measure.steps import RECORDED_COLUMNS, cue_code
from stickwright.store.opening import create_store, faults_in, memory_store, open_store
from stickwright.store.packing import packed, unpacked
from stickwright.store.players import add_player, add_visit
from stickwright.store.recording_model import recording_of
from stickwright.store.recordings import (
    PACK_SAMPLES,
    append_samples,
    begin_recording,
    finish_recording,
    note_recording,
    recordings,
    recover,
    samples_of,
    set_aside,
    take_back,
)
from stickwright.store.schema import act, chunk, tail
from stores import PASSPHRASE

DATA = Path(__file__).parents[1] / "data"
ODD = [0.0, -0.0, np.nan, np.inf, -np.inf, 5e-324, 1.7e308, 0.1, 1 / 3]


def bits(rows):
    """NaN, minus zero and all: the bits of the numbers."""
    return np.ascontiguousarray(rows, dtype="<f8").tobytes()


def begun(store, code="K7", **more):
    visit_id = add_visit(store, add_player(store, code, who="ot").id, "2026-03-14", who="ot").id
    asked = {"site": "chin", "task": "push", "columns": RECORDED_COLUMNS, "source": "browser", "who": "ot"} | more
    return begin_recording(store, visit_id, **asked)


def thumbstick():
    """Thirty seconds of a real thumbstick (source and licence beside the file), in the columns of a live recording."""
    frame = pl.read_csv(DATA / "thumbstick" / "play-2-person-D-0-to-30-s.csv")
    rows = np.full((frame.height, len(RECORDED_COLUMNS)), np.nan)
    rows[:, :3] = frame.select("time_s", "stick_x", "stick_y").to_numpy()
    rows[:, [6, 9, 10]] = [cue_code("play"), 0.0, 0.0]
    return rows


@given(
    arrays.arrays(
        np.float64,
        st.tuples(st.integers(0, 40), st.integers(1, 12)),
        elements=st.one_of(st.sampled_from(ODD), st.floats(width=64)),
    )
)
@settings(max_examples=200)
def test_packing_loses_no_bit(rows):
    """Law: whatever numbers come, not-a-number and minus zero among them, the same bits come back."""
    assert bits(unpacked(packed(rows))) == bits(rows)


def test_a_real_recording_packs_well():
    """A real thumbstick at 60 samples a second: at least thirty times smaller than its numbers."""
    rows = thumbstick()
    small = sum(len(packed(rows[at : at + PACK_SAMPLES])) for at in range(0, len(rows), PACK_SAMPLES))
    assert rows.nbytes > 30 * small


@pytest.mark.parametrize("body", [b"", b"\x01", packed(np.zeros((3, 2)))[:-1], b"\x02" + packed(np.zeros((3, 2)))[1:]])
def test_other_bytes_are_no_samples(body):
    """What was not packed here is not read as numbers."""
    with pytest.raises(ValueError, match="not packed samples"):
        unpacked(body)


def test_samples_come_back_bit_for_bit(store):
    """Batches of all sizes, odd numbers among them: what was acknowledged is what is read, running and finished."""
    row = begun(store)
    rng = np.random.default_rng(4)
    rows = np.cumsum(rng.normal(size=(2 * PACK_SAMPLES + 300, len(RECORDED_COLUMNS))), axis=0)
    rows[::7, 3] = np.nan
    rows[5, 1:10] = ODD
    held = 0
    for size in (1, 1, 57, 998, 0, PACK_SAMPLES, 3000, len(rows)):
        held = append_samples(store, row.id, rows[held : held + size], first=held)
        assert bits(samples_of(store, row.id)) == bits(rows[:held])
    assert held == len(rows)
    done = finish_recording(store, row.id, "done", who="ot")
    assert (done.samples, done.state, done.seconds) == (len(rows), "done", rows[-1, 0])
    assert bits(samples_of(store, row.id)) == bits(rows)
    assert bits(samples_of(store, row.id, upto=4321)) == bits(rows[:4321])
    with store.read() as connection:
        assert connection.execute(sa.select(sa.func.count()).select_from(tail)).scalar() == 0
        assert connection.execute(sa.select(sa.func.count()).where(act.c.what.contains("sample"))).scalar() == 0


def test_a_batch_sent_twice_is_kept_once(store):
    """The answer was lost and the batch comes again, alone or with more behind it: nothing doubles."""
    row = begun(store)
    rows = np.arange(30.0 * 11).reshape(30, 11)
    assert append_samples(store, row.id, rows[:10], first=0) == 10
    assert append_samples(store, row.id, rows[:10], first=0) == 10
    assert append_samples(store, row.id, rows[5:30], first=5) == 30
    finish_recording(store, row.id, "stopped", who="ot")
    assert append_samples(store, row.id, rows[20:], first=20) == 30
    assert bits(samples_of(store, row.id)) == bits(rows)


def test_a_gap_is_refused_with_the_number_that_is_wanted(store):
    """Samples in between are missing: said, with the next number, and nothing is kept of it."""
    row = begun(store)
    append_samples(store, row.id, np.zeros((10, 11)), first=0)
    with pytest.raises(
        BadInput, match=r"samples: found sample number 12, expected number 10, the next one\. Send the samples"
    ):
        append_samples(store, row.id, np.zeros((3, 11)), first=12)
    assert recordings(store, row.visit_id)[0].samples == 10


def test_what_is_over_takes_no_more(store):
    """New samples after the end are refused in words; a recording that is not there likewise."""
    row = begun(store)
    append_samples(store, row.id, np.zeros((10, 11)), first=0)
    finish_recording(store, row.id, "done", who="ot")
    assert finish_recording(store, row.id, "stopped", who="ot").state == "done"
    with pytest.raises(
        BadInput, match="found 2 more for a recording that has ended, expected a recording that is running"
    ):
        append_samples(store, row.id, np.zeros((2, 11)), first=10)
    with pytest.raises(BadInput, match="recording: found number 99, expected a recording in the records"):
        append_samples(store, 99, np.zeros((2, 11)), first=0)


def test_other_columns_are_a_fault_of_ours(store):
    """Rows that do not have the recording's columns never reach the disk."""
    row = begun(store)
    with pytest.raises(ValueError, match="for a recording of 11 columns"):
        append_samples(store, row.id, np.zeros((2, 3)), first=0)
    with pytest.raises(ValueError, match="begin with time_s, x, y"):
        begin_recording(store, row.visit_id, site="chin", task="rim", columns=["x"], source="browser", who="ot")


def test_set_aside_and_taken_back(store):
    """Left out and counted again, with its samples untouched; pausing is told in the list."""
    row = begun(store)
    append_samples(store, row.id, np.ones((4, 11)), first=0)
    note_recording(store, row.id, "paused", who="ot", detail="unplugged")
    assert recordings(store, row.visit_id)[0].state == "paused"
    note_recording(store, row.id, "resumed", who="ot")
    assert recordings(store, row.visit_id)[0].state == "running"
    assert set_aside(store, row.id, who="ot").aside
    assert set_aside(store, row.id, who="ot").aside
    assert not take_back(store, row.id, who="ot").aside
    assert len(samples_of(store, row.id)) == 4


def test_names_are_told_apart(store):
    """Two recordings of one task at one site have two names, and names of files."""
    row = begun(store, site="Right index «deep»")
    again = begin_recording(
        store,
        row.visit_id,
        site="Right index «deep»",
        task="push",
        columns=["time_s", "x", "y"],
        source="replay",
        who="ot",
    )
    assert (row.name, again.name) == ("push-right-index-deep-1", "push-right-index-deep-2")


def test_a_recording_as_the_rest_reads_it():
    """Words for cue numbers, targets where asked, the second stick by itself, a press as nothing asked of the stick."""
    store = memory_store()
    row = begun(store, stick="ash", topper="ball")
    rows = np.full((4, 11), np.nan)
    rows[:, :3] = [[0, 0, 0], [0.1, 0.5, 0.25], [0.2, 1, 0.5], [0.3, 0, 0]]
    rows[:, 6] = [cue_code(word) for word in ("rest", "aim", "aim", "press")]
    rows[1:3, 3:6] = [[0.5, 0.5, 0.1], [0.6, 0.5, 0.1]]
    rows[:, 7:9] = 0.75
    append_samples(store, row.id, rows, first=0)
    found = recording_of(store, row.id)
    assert found.cue.tolist() == ["rest", "aim", "aim", ""]
    assert (found.cue_width, found.site, found.stick, found.topper, found.task) == (0.1, "chin", "ash", "ball", "push")
    assert np.array_equal(found.cue_xy, rows[:, 3:5], equal_nan=True)
    assert np.array_equal(found.xy, rows[:, 1:3])
    assert recording_of(store, row.id, stick="second").xy.tolist() == [[0.75, 0.75]] * 4
    rows[2, 5] = 0.2
    other = begin_recording(
        store, row.visit_id, site="chin", task="aim", columns=RECORDED_COLUMNS, source="browser", who="ot"
    )
    append_samples(store, other.id, rows, first=0)
    assert recording_of(store, other.id).cue_width is None
    assert message(RecordingFaults.target_widths) in recording_of(store, other.id).notes
    strange = begin_recording(
        store, row.visit_id, site="chin", task="rim", columns=RECORDED_COLUMNS, source="browser", who="ot"
    )
    rows[3, 6] = 77.0
    append_samples(store, strange.id, rows, first=0)
    assert any(
        said(note).startswith("cue 77 (1 sample) is not known") for note in recording_of(store, strange.id).notes
    )
    store.close()


def test_a_changed_chunk_is_told(store):
    """One number of a kept chunk differs from what was kept: refused with the place, not read as if it were measured."""
    row = begun(store)
    rows = thumbstick()
    append_samples(store, row.id, rows, first=0)
    finish_recording(store, row.id, "done", who="ot")
    other = rows.copy()
    other[7, 1] += 1e-9
    for body in (packed(other), b"\x01broken"):
        with store.write("test", "") as connection:
            connection.execute(sa.update(chunk).values(body=body))
        with pytest.raises(
            BadInput, match=r"from sample 0: found contents that differ from what was saved.*Restore the last backup"
        ):
            samples_of(store, row.id)
    assert recordings(store, row.visit_id)[0].samples == len(rows)


def test_recordings_cut_short_are_found_once(store):
    """At the next start those that nobody ended are packed and named; the ended ones are left, and the second time there are none."""
    one, two = begun(store), begun(store, "K8")
    append_samples(store, one.id, np.ones((12, 11)), first=0)
    append_samples(store, two.id, np.ones((5, 11)), first=0)
    finish_recording(store, two.id, "done", who="ot")
    found = recover(store)
    assert [(row.id, row.samples, row.state) for row in found] == [(one.id, 12, "cut short")]
    assert recover(store) == ()
    assert any(note.code == "RecordingFaults.cut_short" for note in recording_of(store, one.id).notes)
    with store.read() as connection:
        assert connection.execute(sa.select(sa.func.count()).select_from(tail)).scalar() == 0
    assert append_samples(store, one.id, np.zeros((3, 11)), first=12) == 15  # it was running elsewhere, and goes on
    assert recordings(store, one.visit_id)[0].state == "running"


CHILD = """
import hashlib, sys
from pathlib import Path
import numpy as np
from stickwright.store.opening import open_store
from stickwright.store.recordings import append_samples
store = open_store(Path(sys.argv[1]), passphrase=sys.argv[2])
recording_id, first, size = map(int, sys.argv[3:6])
rng = np.random.default_rng(first)
while True:
    rows = np.column_stack([(first + np.arange(size)) * 1e-3, rng.normal(size=(size, 10))])
    first = append_samples(store, recording_id, rows, first=first)
    print(first, hashlib.sha256(rows.tobytes()).hexdigest(), flush=True)
"""
KILLS = int(os.environ.get("STICKWRIGHT_KILLS", "25"))


@pytest.mark.slow
def test_killed_at_any_moment_no_acknowledged_sample_is_lost(tmp_path):
    """A recording at full rate, killed without warning again and again, at random moments, into single samples and batches: the
    database is sound, every acknowledged batch is there bit for bit, at most the one in flight is more, and the start says
    that the recording was cut short."""
    place = tmp_path / "records.db"
    store = create_store(place, passphrase=PASSPHRASE)
    row = begun(store)
    store.close()
    rng = random.Random(11)
    first, known = 0, []
    for _ in range(KILLS):
        size = rng.choice([1, 1, 7, 50, 400])
        command = [sys.executable, "-c", CHILD, str(place), PASSPHRASE, str(row.id), str(first), str(size)]
        child = subprocess.Popen(command, stdout=subprocess.PIPE)
        said = [child.stdout.readline() for _ in range(rng.randrange(1, 60))]
        if rng.random() < 0.5:
            os.kill(child.pid, signal.SIGKILL)
        else:  # not at the moment of an answer
            try:
                child.wait(rng.random() * 0.01)
            except subprocess.TimeoutExpired:
                os.kill(child.pid, signal.SIGKILL)
        said += child.stdout.read().splitlines()
        child.stdout.close()
        assert child.wait() == -signal.SIGKILL
        answers = [line.split() for line in said if len(line.split()) == 2 and len(line.split()[1]) == 64]
        acknowledged = int(answers[-1][0])
        known += [(int(end) - size, int(end), digest.decode()) for end, digest in answers]
        store = open_store(place, passphrase=PASSPHRASE)
        assert faults_in(store) == ()
        assert [one.id for one in recover(store)] == [row.id]
        samples = samples_of(store, row.id)
        store.close()
        assert acknowledged <= len(samples) <= acknowledged + size
        first = len(samples)
    for start, end, digest in known:
        assert hashlib.sha256(samples[start:end].tobytes()).hexdigest() == digest
    assert np.array_equal(samples[:, 0], np.arange(first) * 1e-3)
