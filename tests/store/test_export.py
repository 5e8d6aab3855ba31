"""All that is held about one player: given out whole, and erased for good."""

import csv
import io
import json
import sqlite3
import zipfile
import zlib
from pathlib import Path

import numpy as np
import pytest
import sqlalchemy as sa

from full_player import CODE, COLUMNS, PLAYER, WORD, entry_of_earlier_version, full
from said import said
from stickwright.codes.message import message
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput
from stickwright.store.audit_log import trail
from stickwright.store.cases import tree_of
from stickwright.store.export import compact, copies_beside, elsewhere, erase_player, export_player, what_would_go
from stickwright.store.opening import create_store, open_store
from stickwright.store.plans import plan_result
from stickwright.store.players import add_player, players
from stickwright.store.schema import METADATA, act, chunk, version
from stores import PASSPHRASE

DEMO = Path(__file__).parents[2] / "examples" / "demo"


def table_counts(store):
    with store.read() as connection:
        count = {table.name: sa.select(sa.func.count()).select_from(table) for table in METADATA.sorted_tables}
        return {name: connection.execute(wanted).scalar_one() for name, wanted in count.items()}


def test_everything_is_given_out(store, tmp_path):
    """One file: the visit as a folder, all versions, all samples, consents, loans, plans and trail, with a page of words."""
    row, rows, recording, made = full(store)
    file = export_player(store, row.player_id, tmp_path / "all.zip")
    with zipfile.ZipFile(file) as archive:
        assert archive.testzip() is None
        held = {name: archive.read(name) for name in archive.namelist()}
    assert f"code {CODE}".encode() in held["README.txt"]
    folder = "visits/1-2026-03-14"
    case = {
        name.removeprefix(f"{folder}/case/"): body for name, body in held.items() if name.startswith(f"{folder}/case/")
    }
    assert case == tree_of(store, row.id)
    assert held[f"{folder}/versions/notes.txt/1"] == WORD.encode()
    assert held[f"{folder}/versions/notes.txt/2"] == b"other"
    assert f"{WORD}-why" in held[f"{folder}/versions.csv"].decode()
    lines = list(csv.reader(io.StringIO(held[f"{folder}/recordings/{recording.name}.csv"].decode())))
    assert lines[0] == list(COLUMNS)
    read = np.array([[float(cell) if cell else np.nan for cell in line] for line in lines[1:]])
    assert read.tobytes() == rows.tobytes()
    assert json.loads(held[f"{folder}/plans/plan-1.json"]) == plan_result(store, made.id)
    for name, word in (("consents", "explained"), ("loans", "note")):
        assert f"{WORD}-{word}" in held[f"{name}.csv"].decode()
    assert "Plan made: visit 1, plan 1" in held["trail.csv"].decode()
    with pytest.raises(BadInput, match="a file that already exists"):
        export_player(store, row.player_id, file)


def test_a_dry_run_counts_what_then_goes(store):
    """What would go is what goes; the other player stays whole; of the erased one there is no row in any table, and the trail
    says only that somebody was erased."""
    full(store, "K8")
    before = table_counts(store)
    row, *_ = full(store)
    would = what_would_go(store, row.player_id)
    assert would == {
        "player": 1, "visits": 1, "files": 4, "versions": 6, "readings": 4, "recordings": 2,
        "samples": 1200, "unpacked_samples": 1, "plans": 1, "consents": 1, "loan_entries": 2,
        "trail_entries": would["trail_entries"],
    }  # fmt: skip
    assert erase_player(store, row.player_id, who="ot") == would
    assert table_counts(store) == before | {"act": before["act"] + 1}
    assert [one.code for one in players(store).rows] == ["K8"]
    with store.read() as connection:
        last = connection.execute(sa.select(act).order_by(act.c.id.desc()).limit(1)).mappings().one()
        said = [
            str(value)
            for table in METADATA.sorted_tables
            for line in connection.execute(sa.select(table))
            for value in line
        ]
    assert (last["who"], last["what"], last["player_id"], last["detail"]) == ("ot", "Trail.player_erased", None, "")
    assert not any(CODE in one for one in said)
    with pytest.raises(BadInput, match="expected a player in the records"):
        erase_player(store, row.player_id, who="ot")


def raw_bytes(place):
    return {path.name: path.read_bytes() for path in place.parent.glob(place.name + "*")}


def traces(place):
    """Files in which a word of the player stands, in clear or in a packed body."""
    packed = [zlib.compress(body, 6)[2:40] for body in (PLAYER, WORD.encode() * 50)]
    words = [WORD.encode(), CODE.encode(), CODE.casefold().encode(), *packed]
    return {name for name, body in raw_bytes(place).items() if any(word in body for word in words)}


def test_erased_words_are_not_in_the_file_or_its_log(tmp_path):
    """On unencrypted records, where it can be looked at: before, the words stand in the raw bytes; after, in no file at all."""
    place = tmp_path / "records.db"
    store = create_store(place, passphrase=None)
    full(store, "K8")
    row, *_ = full(store)
    assert traces(place)
    erase_player(store, row.player_id, who="ot")
    left = traces_of(place, CODE)
    assert left == set()
    erase_player(store, players(store).rows[0].id, who="ot")
    assert traces(place) == set()
    store.close()
    with sqlite3.connect(place) as plain:
        assert plain.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    plain.close()
    assert traces(place) == set()


def traces_of(place, code):
    return {
        name for name, body in raw_bytes(place).items() if code.encode() in body or code.casefold().encode() in body
    }


def test_somebody_still_reading_is_said(tmp_path):
    """Another window holds the old state: the rows are gone, the file is told to be not clean yet, and is when done again."""
    place = tmp_path / "records.db"
    store = create_store(place, passphrase=None)
    row, *_ = full(store)
    other = open_store(place)
    with other.read() as reading:
        reading.execute(sa.select(act)).fetchone()
        with pytest.raises(
            BadInput, match=r"another window or program still reading.*erased from the records. Close the other"
        ):
            erase_player(store, row.player_id, who="ot")
    other.close()
    assert players(store).total == 0
    compact(store)
    assert traces(place) == set()
    store.close()


def test_copies_made_before_are_named(tmp_path):
    """Copies that lie beside the records are not reached by erasing, and can be named."""
    place = tmp_path / "records.db"
    store = create_store(place, passphrase=PASSPHRASE)
    assert copies_beside(store) == ()
    (tmp_path / "records.db.schema-0000").write_bytes(b"x")
    assert copies_beside(store) == ("records.db.schema-0000",)
    store.close()


def test_the_trail_of_others_is_left_alone(store):
    """A player called "1" is erased: another player's entry "visit 1, plan 1" stays; one about nobody that names it goes."""
    one, other = (add_player(store, code, who="ot").id for code in ("1", "K8"))
    entry_of_earlier_version(store, "plan made", "visit 1, plan 1", other)
    entry_of_earlier_version(store, "something", "about 1, and so on")
    erase_player(store, one, who="ot")
    said = [(entry.what, entry.detail) for entry in trail(store).rows]
    assert said == [
        (message(Trail.player_erased), ""), ("plan made", "visit 1, plan 1"), (message(Trail.player_added), ""),
    ]  # fmt: skip


def test_one_damaged_file_does_not_keep_the_rest_back(store, tmp_path):
    """Bytes that are no longer those saved are named in the file; everything else is given out."""
    row, _, recording, _ = full(store)
    with store.write("test", "") as connection:
        connection.execute(sa.update(version).where(version.c.why == f"{WORD}-why").values(digest="0" * 64))
        connection.execute(sa.update(chunk).where(chunk.c.recording_id == recording.id).values(digest="0" * 64))
    with zipfile.ZipFile(export_player(store, row.player_id, tmp_path / "all.zip")) as archive:
        told = archive.read("could-not-be-read.txt").decode()
        names = archive.namelist()
    assert "notes.txt, version 1: found contents that differ from what was saved" in told
    assert f"recording {recording.id}, from sample 0: found contents that differ from what was saved" in told
    assert "visits/1-2026-03-14/plans/plan-1.json" in names
    assert f"visits/1-2026-03-14/versions/notes/{WORD}.txt/1" in names


def test_where_words_may_still_stand_is_said(store):
    """Backups lie elsewhere; a server's backups and logs are its administrator's matter; of memory nothing is left."""
    told = " ".join(said(one) for one in elsewhere(store))
    wanted = {"memory": "", "postgresql": "Ask its administrator"}.get(store.kind, "Backups made earlier")
    assert (wanted in told, bool(told)) == (True, bool(wanted))
