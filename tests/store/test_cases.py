"""A visit is a case folder: taken in and written out again it is the same, byte for byte."""

import os
from dataclasses import fields
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from random_cases import random_case

from noun_strategies import cases
from stickwright.errors import BadInput
from stickwright.files.folder import case_and_queries, check_case, read_case, write_case
from stickwright.measure.steps import RECORDED_COLUMNS
from stickwright.model.recording import CUE_CODES
from stickwright.store.cases import case_files, case_of, export_case, file_of_name, import_case, name_of_file, tree_of
from stickwright.store.documents import documents, history, save_document, undo_document
from stickwright.store.opening import memory_store
from stickwright.store.players import players, visits
from stickwright.store.recordings import append_samples, begin_recording, finish_recording, set_aside

DEMO = Path(__file__).parents[2] / "examples" / "demo"
PLAYER = b"""code = "K7"
visit = "2026-03-14"   # a Saturday
[[site]]
name = "chin"
part = "chin"
"""


def held(folder):
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in Path(folder).rglob("*") if path.is_file()
    }


def nouns(case):
    return case.player, case.kit, case.game, case.hubs, case.room


def test_the_demo_comes_out_as_it_went_in(store, tmp_path):
    """Taken in from a folder and written out to another: the same files, the same bytes, the same case."""
    row = import_case(store, DEMO, who="ot")
    written = export_case(store, row.id, tmp_path / "out")
    assert held(tmp_path / "out") == held(DEMO) == tree_of(store, row.id)
    assert len(written) == len(held(DEMO))
    case, noticed = case_of(store, row.id, made_on="2026-03-14")
    other, told = case_and_queries(DEMO, "2026-03-14")
    assert (nouns(case), noticed) == (nouns(other), told)
    assert case.name == f"{case.player.code} {case.player.visit}"
    for one, two in zip(case.recordings, other.recordings, strict=True):
        assert np.array_equal(one.xy, two.xy, equal_nan=True)
    assert (row.problems, row.on_date, row.number) == (0, other.player.visit, 1)


@given(case=cases(), number=st.integers(0, 10**6))
@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_case_comes_out_as_it_went_in(tmp_path_factory, case, number):
    """Law: a written case, taken in and written out, reads back as the same nouns, from the same bytes."""
    folder = tmp_path_factory.mktemp("case")
    player = case.player.model_copy(update={"code": f"K{number}", "visit": "2026-03-14"})
    write_case(type(case)(case.name, player, case.kit, case.game, (), "", case.hubs, case.room), folder)
    store = memory_store()
    row = import_case(store, folder, who="ot")
    export_case(store, row.id, folder / "out")
    assert held(folder / "out") == {name: body for name, body in held(folder).items() if not name.startswith("out/")}
    assert nouns(read_case(folder / "out")) == nouns(read_case(folder))
    store.close()


@pytest.mark.parametrize("seed", range(12))
def test_odd_names_inside_a_case_come_out_as_they_went_in(tmp_path, seed):
    """Quotes, slashes and long names of sites and actions change no byte."""
    case = random_case(seed)
    player = case.player.model_copy(update={"code": f"K{seed}"})
    write_case(type(case)(case.name, player, case.kit, case.game, (), "", case.hubs, case.room), tmp_path)
    store = memory_store()
    row = import_case(store, tmp_path, who="ot")
    assert tree_of(store, row.id) == held(tmp_path)
    assert check_case(tree_of(store, row.id)) == check_case(tmp_path)
    store.close()


ODD = {
    "player.toml": PLAYER[:-8] + b"\xff\xfe [[[",
    "kit.toml": b"",
    "notes/photo of the chair.jpg": bytes(range(256)),
    os.fsdecode(b"lettre \xe9.txt"): b"not UTF-8 in its name",
    "a\\b:c.txt": b"backslash",
    "C:/x.txt": b"colon",
    "~/tilde": b"tilde",
    "~/%41": b"per cent",
    "tab\tin name": b"\x00",
    ".hidden": b"\r\n",
}


def test_what_cannot_be_read_is_kept_and_told(store, tmp_path):
    """A broken player.toml, stray files and names that are no text: all bytes are kept, the problems counted and told."""
    folder = tmp_path / "in"
    for name, body in ODD.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(body)
    row = import_case(store, folder, who="ot")
    assert tree_of(store, row.id) == ODD
    export_case(store, row.id, tmp_path / "out")
    assert held(tmp_path / "out") == ODD
    assert (row.on_date, players(store).rows[0].code) == ("2026-03-14", "K7")
    assert row.problems >= 1
    problems, _ = check_case(tree_of(store, row.id))
    assert problems == check_case(folder)[0]
    with pytest.raises(BadInput, match=r"player.toml, line \d+, byte \d+: found the byte FF, which is not UTF-8"):
        case_of(store, row.id)


@given(st.binary(min_size=1, max_size=60).filter(lambda name: b"\0" not in name))
@settings(max_examples=300)
def test_any_file_name_comes_back(name):
    """Law: whatever a file is called, its document's name is text, and leads back to it."""
    file = os.fsdecode(name)
    kept = name_of_file(file)
    assert file_of_name(kept) == file
    assert kept.encode().decode() == kept


@pytest.mark.parametrize(
    "files, words",
    [
        ({}, "the case folder: found no player.toml, expected a case folder"),
        ({"player.toml": b"visit = 3"}, r"player.toml: found no code, expected a code for the player\. Write code = "),
        ({"player.toml": b'code = "Anna Berg"'}, "which looks like a name"),
        ({"player.toml": PLAYER, "x" * 201: b""}, "a very long name, expected up to 200 letters"),
        ({"player.toml": PLAYER, "../x": b""}, "found a place outside the folder"),
        (
            {"player.toml": PLAYER, "film.avi": bytes(2**26 + 1)},
            "film.avi: found 64 MB, expected a file of 64 MB or less",
        ),
    ],
)
def test_what_is_no_case_is_refused_whole(files, words):
    """In words, and nothing of it is taken in."""
    store = memory_store()
    with pytest.raises(BadInput, match=words):
        import_case(store, files, who="ot")
    assert players(store).total == 0
    store.close()


def test_a_folder_that_is_none(tmp_path):
    """No such folder, a file, a link that leads elsewhere."""
    store = memory_store()
    with pytest.raises(BadInput, match="found no such folder, expected a case folder"):
        import_case(store, tmp_path / "none", who="ot")
    (tmp_path / "player.toml").write_bytes(PLAYER)
    with pytest.raises(BadInput, match="found a file, expected a case folder"):
        import_case(store, tmp_path / "player.toml", who="ot")
    (tmp_path / "secret").symlink_to("/etc/hostname")
    with pytest.raises(BadInput, match="secret: found a link to another place, expected a file"):
        import_case(store, tmp_path, who="ot")
    store.close()


def test_the_same_date_is_the_same_visit(store):
    """Taken in once more: no second visit; a changed file is a further version, a missing one is taken away, both undone."""
    files = {"player.toml": PLAYER, "game.toml": b'name = "kites"\n', "notes.txt": b"1"}
    row = import_case(store, files, who="ot")
    assert import_case(store, files, who="ot") == row
    assert [one.number for one in history(store, row.id, "notes.txt")] == [1]
    again = import_case(store, {"player.toml": PLAYER, "notes.txt": b"2"}, who="ot")
    assert (again.id, len(visits(store, row.player_id))) == (row.id, 1)
    assert tree_of(store, row.id) == {"player.toml": PLAYER, "notes.txt": b"2"}
    for name in ("game.toml", "notes.txt"):
        undo_document(store, row.id, name, who="ot")
    assert tree_of(store, row.id) == files
    other = import_case(store, {"player.toml": PLAYER.replace(b"03-14", b"05-02")}, who="ot")
    assert (other.id != row.id, other.number) == (True, 2)


def test_without_a_date_it_is_a_visit_all_the_same(store):
    """A folder without a date of its visit is taken in as a visit without one."""
    row = import_case(store, {"player.toml": b'code = "K7"\n'}, who="ot")
    assert (row.on_date, tree_of(store, row.id)) == ("", {"player.toml": b'code = "K7"\n'})


def recorded(store, visit_id, site="chin", samples=50):
    rows = np.column_stack([np.arange(samples) * 0.01, np.linspace(0, 1 / 3, samples), np.full(samples, -0.1)])
    row = begin_recording(
        store, visit_id, site=site, task="rim", columns=("time_s", "x", "y"), source="browser", stick="ash", who="ot"
    )
    append_samples(store, row.id, rows, first=0)
    return finish_recording(store, row.id, "done", who="ot"), rows


def test_live_recordings_are_part_of_the_folder(store, tmp_path):
    """Written as CSV with every digit, listed for their site with what they were made on; set aside, they are left out. Taken
    in again with the folder they are not doubled."""
    files = {"player.toml": PLAYER, "kit.toml": (DEMO / "kit.toml").read_bytes()}
    row = import_case(store, files, who="ot")
    one, rows = recorded(store, row.id)
    other, _ = recorded(store, row.id, site="no such site")
    tree = tree_of(store, row.id)
    assert sorted(tree) == ["kit.toml", "player.toml", "recordings/rim-chin-1.csv", f"recordings/{other.name}.csv"]
    assert b"# a Saturday" in tree["player.toml"]
    assert b'stick = "ash"' in tree["player.toml"]
    case_stick = dict(tree, **{"player.toml": tree["player.toml"].replace(b'stick = "ash"\n', b"")})
    found = read_case(case_stick).recordings
    assert [(read.site, read.task) for read in found] == [("chin", "rim")]
    assert np.array_equal(np.column_stack([found[0].times_s, found[0].xy]), rows)
    export_case(store, row.id, tmp_path / "out")
    assert import_case(store, tmp_path / "out", who="ot").id == row.id
    assert sorted(documents(store, row.id)) == ["kit.toml", "player.toml"]
    assert tree_of(store, row.id) == tree
    set_aside(store, one.id, who="ot")
    set_aside(store, other.id, who="ot")
    assert tree_of(store, row.id) == files
    assert documents(store, row.id)["player.toml"].body == PLAYER


def guided(store, visit_id, *, seed, task="aim", y=True, **kept):
    """A recording with all its columns: cues, one width of targets, a switch, samples without a stick."""
    rng = np.random.default_rng(seed)
    samples = 400
    rows = np.full((samples, len(RECORDED_COLUMNS)), np.nan)
    rows[:, 0] = np.cumsum(rng.uniform(0.0009, 0.0011, samples)).round(7)
    rows[:, 1:3] = rng.normal(0, 0.3, (samples, 2)).clip(-1, 1)
    rows[40:50, 1:3] = np.nan
    rows[:, 2] = rows[:, 2] if y else np.nan
    rows[:, 6] = rng.choice(list(CUE_CODES.values()), samples)
    rows[100:300, 3:5] = rng.normal(0, 0.5, (200, 2))
    rows[100:300, 5] = 1 / 3
    rows[:, RECORDED_COLUMNS.index("confirm")] = rng.integers(0, 2, samples)
    row = begin_recording(
        store, visit_id, site="chin", task=task, columns=RECORDED_COLUMNS, source="browser", who="ot", **kept
    )
    append_samples(store, row.id, rows, first=0)
    return finish_recording(store, row.id, "done", who="ot")


def as_read(recording):
    """All fields of a recording, arrays as their bytes."""
    return {
        each.name: (value.dtype.kind, value.shape, value.tobytes() if value.dtype.kind != "U" else value.tolist())
        if isinstance(value := getattr(recording, each.name), np.ndarray)
        else value
        for each in fields(recording)
    }


def test_live_recordings_are_read_without_being_written(store):
    """The samples go into the case as they are: field by field and bit by bit what their CSV would have been read as, and what
    that would have been refused for is refused."""
    files = {"player.toml": PLAYER, "kit.toml": (DEMO / "kit.toml").read_bytes()}
    row = import_case(store, files, who="ot")
    stick = read_case(DEMO).kit.stick[0].name
    guided(store, row.id, seed=1, stick=stick)
    guided(store, row.id, seed=2, task="play", y=False)
    recorded(store, row.id, site="no such site")
    case, noticed = case_of(store, row.id)
    other, told = case_and_queries(tree_of(store, row.id), "", case.name)
    assert [as_read(one) for one in case.recordings] == [as_read(one) for one in other.recordings]
    assert [(one.stick, one.site) for one in case.recordings] == [(stick, "chin"), (None, "chin")]
    assert nouns(case) == nouns(other)
    assert [one.about for one in noticed] == [one.about for one in told]
    assert len(case.player.site[0].recording) == 2
    backwards = np.column_stack([np.array([0.0, 0.2, 0.1]), np.zeros(3), np.zeros(3)])
    bad = begin_recording(
        store, row.id, site="chin", task="rim", columns=("time_s", "x", "y"), source="browser", who="ot"
    )
    append_samples(store, bad.id, backwards, first=0)
    refusals = []
    for files in (case_files(store, row.id), tree_of(store, row.id)):
        with pytest.raises(BadInput, match=r"rim-chin-1\.csv, row 4, time_s") as refused:
            read_case(files)
        refusals.append(refused.value.problems)
    assert refusals[0] == refusals[1]


def test_the_shelf_lends_its_kit(store):
    """A visit without a kit of its own has the shelf's, with its bench readings; one with its own has nothing of the shelf."""
    row = import_case(store, {"player.toml": PLAYER}, who="ot")
    save_document(store, None, "kit.toml", b"# shelf\n", who="ot")
    save_document(store, None, "bench/ash.csv", b"force_n\n", who="ot")
    assert tree_of(store, row.id) == {"player.toml": PLAYER, "kit.toml": b"# shelf\n", "bench/ash.csv": b"force_n\n"}
    save_document(store, row.id, "kit.toml", b"# own\n", who="ot")
    assert tree_of(store, row.id) == {"player.toml": PLAYER, "kit.toml": b"# own\n"}


def test_nothing_is_written_over(store, tmp_path):
    """A folder with anything in it is refused and stays as it is."""
    row = import_case(store, {"player.toml": PLAYER}, who="ot")
    folder = tmp_path / "there"
    folder.mkdir()
    (folder / "mine.txt").write_text("mine")
    with pytest.raises(BadInput, match="found a file, or a folder that is not empty, expected a new or empty folder"):
        export_case(store, row.id, folder)
    assert held(folder) == {"mine.txt": b"mine"}
