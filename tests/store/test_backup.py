"""A backup is one file, good only when it was read back; it restores where nothing is, whole or not at all."""

import shutil
import threading

import numpy as np
import pytest
import sqlalchemy as sa

from full_player import WORD, full
from stickwright.errors import BadInput
from stickwright.store import backup as backup_module
from stickwright.store.backup import back_up, counts_of, digests_of, restore
from stickwright.store.cases import import_case, tree_of
from stickwright.store.opening import create_store, kind_at, open_store
from stickwright.store.players import add_player, players
from stickwright.store.recordings import append_samples, begin_recording, recover, samples_of
from stickwright.store.schema import chunk
from stores import PASSPHRASE


def held(store):
    with store.read() as connection:
        return digests_of(connection), counts_of(connection)


def own(store):
    """Passphrase for a backup of records that have none of their own."""
    return PASSPHRASE if store.kind in ("memory", "postgresql") else None


def test_what_is_backed_up_comes_back(store, tmp_path):
    """From each kind of records to one file and back: the same rows in every table, and the counts are told."""
    row, rows, recording, _ = full(store)
    file, place = tmp_path / "stick" / "records.backup", tmp_path / "new" / "records.db"
    counts = back_up(store, file, own(store))
    assert [path.name for path in file.parent.iterdir()] == [file.name]
    before, words = held(store)
    assert counts == words
    assert (counts["players"], counts["recordings"], counts["samples"], counts["plans"]) == (1, 2, 1210, 1)
    passphrase = None if store.kind == "plain" else PASSPHRASE
    assert kind_at(file) == ("plain" if store.kind == "plain" else "encrypted")
    content = file.read_bytes()
    assert restore(file, place, passphrase=passphrase) == counts
    assert file.read_bytes() == content
    assert [path.name for path in place.parent.iterdir()] == [place.name]
    again = open_store(place, passphrase=passphrase)
    assert held(again)[0] == before
    assert samples_of(again, recording.id).tobytes() == rows.tobytes()
    assert tree_of(again, row.id) == tree_of(store, row.id)
    assert len(recover(again)) == 1
    again.close()


def test_a_backup_restores_into_a_server(server, tmp_path):
    """A laptop's backup into a team's empty server: the same rows, and new ones count on; a server in use is refused."""
    store = create_store(tmp_path / "records.db", passphrase=PASSPHRASE)
    full(store)
    counts = back_up(store, tmp_path / "b")
    address = server.laid_down()
    assert restore(tmp_path / "b", address, passphrase=PASSPHRASE) == counts
    team = open_store(address)
    assert held(team)[0] == held(store)[0]
    assert add_player(team, "K9", who="ot").id == 2
    team.close()
    with pytest.raises(
        BadInput, match=r"found records that already exist, expected a server without records.*Nothing was changed"
    ):
        restore(tmp_path / "b", address, passphrase=PASSPHRASE)
    store.close()


def test_another_passphrase_or_none(tmp_path):
    """A backup may have its own passphrase, or by explicit choice none; records without one need one or that choice."""
    store = create_store(tmp_path / "records.db", passphrase=PASSPHRASE)
    full(store)
    back_up(store, tmp_path / "own")
    back_up(store, tmp_path / "other", "otters at the weir")
    back_up(store, tmp_path / "open", unencrypted=True)
    before = held(store)[0]
    for name, passphrase in (("own", PASSPHRASE), ("other", "otters at the weir"), ("open", None)):
        again = open_store(tmp_path / name, passphrase=passphrase)
        assert held(again)[0] == before
        again.close()
    with pytest.raises(BadInput, match="passphrase: found one that does not open these records"):
        restore(tmp_path / "other", tmp_path / "x", passphrase=PASSPHRASE)
    assert not (tmp_path / "x").exists()
    store.close()


def test_a_server_is_not_backed_up_in_clear_by_accident(store, tmp_path):
    """Without a passphrase and without the explicit choice: asked for, nothing is made."""
    if store.kind in ("plain", "encrypted"):
        assert back_up(store, tmp_path / "b")["players"] == 0
        return
    with pytest.raises(BadInput, match="passphrase: found nothing entered, expected a passphrase for the backup"):
        back_up(store, tmp_path / "b")
    assert list(tmp_path.glob("b*")) == []


def test_nothing_is_written_over(tmp_path):
    """A file in the way of the backup or of the restored records stays as it is."""
    store = create_store(tmp_path / "records.db", passphrase=None)
    (tmp_path / "there").write_bytes(b"mine")
    with pytest.raises(BadInput, match="there: found a file that already exists"):
        back_up(store, tmp_path / "there")
    back_up(store, tmp_path / "b")
    with pytest.raises(
        BadInput, match=r"there: found a file or folder that already exists, expected a name that is not used yet"
    ):
        restore(tmp_path / "b", tmp_path / "there")
    assert (tmp_path / "there").read_bytes() == b"mine"
    store.close()


@pytest.mark.parametrize("kind", ["encrypted", "plain"])
@pytest.mark.parametrize("harm", ["middle", "short", "beginning", "empty", "other"])
def test_a_damaged_backup_is_refused(tmp_path, kind, harm):
    """Overwritten, cut off, empty or another file: one clear sentence, and nothing is restored."""
    passphrase = PASSPHRASE if kind == "encrypted" else None
    store = create_store(tmp_path / "records.db", passphrase=passphrase)
    full(store)
    file = tmp_path / "b"
    back_up(store, file)
    store.close()
    content = bytearray(file.read_bytes())
    if harm == "middle":
        at = len(content) // 4096 // 2 * 4096
        content[at : at + 4096] = bytes(4096)
    elif harm == "beginning":
        content[:40] = bytes(40)
    content = {"short": content[:-4096], "empty": b"", "other": b"PK\3\4" * 99}.get(harm, content)
    file.write_bytes(content)
    words = {
        "empty": "found no file",
        "other": "is not a stickwright backup",
        "beginning": "is not a stickwright backup",
    }.get(harm, "found a damaged backup")
    with pytest.raises(BadInput, match=words + r".*Nothing was restored\."):
        restore(file, tmp_path / "new", passphrase=passphrase)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["b", "records.db"]


def test_one_changed_number_in_a_plain_backup_is_found(tmp_path):
    """Samples that no longer match what was kept with them: refused, although the file hangs together."""
    store = create_store(tmp_path / "records.db", passphrase=None)
    full(store)
    back_up(store, tmp_path / "b")
    store.close()
    changed = open_store(tmp_path / "b")
    with changed.write("test", "") as connection:
        connection.execute(sa.update(chunk).values(digest="0" * 64))
    changed.close()
    with pytest.raises(BadInput, match=r"damaged backup \(recording 1 from sample 0\)"):
        restore(tmp_path / "b", tmp_path / "new")


def test_a_copy_that_differs_is_never_called_good(tmp_path, monkeypatch):
    """What was read back is not what was there: said, and the copy is not left behind."""
    store = create_store(tmp_path / "records.db", passphrase=None)
    full(store)
    told = iter([digests_of, lambda connection: digests_of(connection) | {"player": (1, "other")}])
    monkeypatch.setattr(backup_module, "digests_of", lambda connection: next(told)(connection))
    with pytest.raises(BadInput, match=r"found a copy that differs from the records \(player\)"):
        back_up(store, tmp_path / "b")
    assert list(tmp_path.glob("b*")) == []
    store.close()


def test_a_backup_while_a_recording_runs_is_of_one_moment(tmp_path):
    """Samples go on being kept during the backup; it holds those of one moment without a gap, and none is refused."""
    store = create_store(tmp_path / "records.db", passphrase=PASSPHRASE)
    visit = import_case(store, {"player.toml": b'code = "K7"\nvisit = "2026-03-14"\n'}, who="ot")
    row = begin_recording(
        store, visit.id, site="chin", task="play", columns=("time_s", "x", "y"), source="computer", who="ot"
    )
    over, kept = threading.Event(), [0]

    def recording():
        while not over.is_set():
            rows = np.column_stack([(kept[0] + np.arange(20)) * 1e-3, np.zeros((20, 2))])
            kept[0] = append_samples(store, row.id, rows, first=kept[0])

    thread = threading.Thread(target=recording)
    thread.start()
    try:
        while kept[0] < 400:
            pass
        for number in range(3):
            counts = back_up(store, tmp_path / f"b{number}")
            again = open_store(tmp_path / f"b{number}", passphrase=PASSPHRASE)
            samples = samples_of(again, row.id)
            again.close()
            assert len(samples) == counts["samples"] >= 400
            assert np.array_equal(samples[:, 0], np.arange(len(samples)) * 1e-3)
    finally:
        over.set()
        thread.join()
    assert len(samples_of(store, row.id)) == kept[0] > counts["samples"]
    store.close()


def test_a_backup_opens_as_records(tmp_path):
    """Copied elsewhere it is a file of records like any other."""
    store = create_store(tmp_path / "records.db", passphrase=PASSPHRASE)
    full(store)
    back_up(store, tmp_path / "b")
    store.close()
    shutil.move(tmp_path / "b", tmp_path / "elsewhere")
    again = open_store(tmp_path / "elsewhere", passphrase=PASSPHRASE)
    assert players(again).total == 1
    again.close()


def test_a_changed_letter_in_a_plain_backup_is_found(tmp_path):
    """Bits that flip on a stick: in a word that no digest of its own guards, in a list, and anywhere at all. Refused in words, or
    (where nothing stands) the same records come back; never others."""
    store = create_store(tmp_path / "records.db", passphrase=None)
    full(store)
    back_up(store, tmp_path / "b")
    before = held(store)[0]
    store.close()
    content = (tmp_path / "b").read_bytes()
    words = [content.index(word) for word in (f"{WORD}-explained".encode(), b'"measure"', f"{WORD}-device".encode())]
    sentences = []
    anywhere = np.random.default_rng(5).integers(100, len(content), 25)
    for at in [*words, *anywhere.tolist()]:
        harmed = bytearray(content)
        harmed[at] ^= 4
        (tmp_path / "harmed").write_bytes(harmed)
        (tmp_path / "new").unlink(missing_ok=True)
        try:
            restore(tmp_path / "harmed", tmp_path / "new")
        except BadInput as refused:
            sentences.append(str(refused))
            continue
        assert at not in words
        again = open_store(tmp_path / "new")
        assert held(again)[0] == before
        again.close()
    assert len(sentences) >= len(words)
    assert all("a damaged backup" in one or "newer stickwright" in one for one in sentences)


def test_a_backup_that_was_worked_in_can_be_restored(tmp_path):
    """A plain backup opened as records and added to holds more than it did, which is no damage; no seal is left in what comes back."""
    store = create_store(tmp_path / "records.db", passphrase=None)
    back_up(store, tmp_path / "b")
    store.close()
    worked_in = open_store(tmp_path / "b")
    add_player(worked_in, "K7", who="ot")
    worked_in.close()
    assert restore(tmp_path / "b", tmp_path / "new")["players"] == 1
    again = open_store(tmp_path / "new")
    with again.read() as connection:
        assert "backup_seal" not in sa.inspect(connection).get_table_names()
    again.close()


def test_open_records_are_no_backup(tmp_path):
    """What was written last stands in the log beside them: refused, not restored without it; nor is a backup written over them."""
    store = create_store(tmp_path / "records.db", passphrase=None)
    add_player(store, "K7", who="ot")
    with pytest.raises(BadInput, match=r"records that are open or were not closed, expected a backup"):
        restore(tmp_path / "records.db", tmp_path / "new")
    back_up(store, tmp_path / "b")
    for done in (
        lambda: back_up(store, tmp_path / "records.db", replace=True),
        lambda: restore(tmp_path / "b", tmp_path / "records.db", aside=True),
    ):
        with pytest.raises(BadInput, match=r"records\.db: found records that are open"):
            done()
    assert players(store).total == 1
    store.close()
    assert restore(tmp_path / "records.db", tmp_path / "new")["players"] == 1


def test_an_older_file_gives_way_when_told(tmp_path, clock):
    """Told so, a new backup takes the place of the older, and restored records that of others, which are put aside with the date."""
    store = create_store(tmp_path / "records.db", passphrase=PASSPHRASE)
    back_up(store, tmp_path / "b")
    add_player(store, "K7", who="ot")
    assert back_up(store, tmp_path / "b", replace=True)["players"] == 1
    store.close()
    other = create_store(tmp_path / "other.db", passphrase=None)
    add_player(other, "K8", who="ot")
    other.close()
    restore(tmp_path / "b", tmp_path / "other.db", passphrase=PASSPHRASE, clock=clock, aside=True)
    names = sorted(path.name for path in tmp_path.iterdir())
    assert (names[:2], len(names)) == (["b", "other.db"], 4)
    assert names[2].startswith("other.db.aside-2026-03-14-")
    for name, passphrase, code in (("other.db", PASSPHRASE, "K7"), (names[2], None, "K8")):
        again = open_store(tmp_path / name, passphrase=passphrase)
        assert [one.code for one in players(again).rows] == [code]
        again.close()
