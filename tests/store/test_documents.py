"""Files in versions: two windows, undo, history."""

import threading
import tomllib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from said import place, said
from stickwright.errors import BadInput
from stickwright.store.documents import (
    Conflict,
    documents,
    history,
    remove_document,
    save_document,
    undo_document,
)
from stickwright.store.merging import MergeConflict, merged
from stickwright.store.opening import open_store
from stickwright.store.players import add_player, add_visit
from stores import PASSPHRASE

BASE = b"""code = "K7"        # a code
goals = ["steer"]

[[site]]
name = "chin"
part = "chin"
setup_min = 3
minds = 1

[[site]]
name = "left thumb"
part = "thumb"
"""


@pytest.fixture
def visit_id(store):
    return add_visit(store, add_player(store, "K7", who="ot").id, "2026-03-14", who="ot").id


def text_of(store, visit_id, name="player.toml"):
    return documents(store, visit_id)[name].body.decode()


def test_every_version_is_kept_byte_for_byte(store, visit_id):
    """Any bytes come back as they were; saving the same again makes no version; the shelf is apart from the visit."""
    bodies = [b"", bytes(range(256)), "Grüße\r\n".encode("utf-16")]
    for body in (*bodies, bodies[-1]):
        save_document(store, visit_id, "a b/ü.bin", body, who="ot", why="trial")
    assert [one.body for one in history(store, visit_id, "a b/ü.bin")] == bodies
    assert [one.number for one in history(store, visit_id, "a b/ü.bin")] == [1, 2, 3]
    save_document(store, None, "kit.toml", b"x = 1", who="ot")
    assert (list(documents(store, None)), "kit.toml" in documents(store, visit_id)) == (["kit.toml"], False)


def test_undo_and_undo_of_undo(store, visit_id):
    """Undo is a further version with what stood before; once more, and the last is back. Nothing is taken away."""
    for body in (b"one", b"two"):
        save_document(store, visit_id, "a.txt", body, who="ot")
    assert undo_document(store, visit_id, "a.txt", who="ot").body == b"one"
    assert undo_document(store, visit_id, "a.txt", who="ot").body == b"two"
    remove_document(store, visit_id, "a.txt", who="ot")
    assert "a.txt" not in documents(store, visit_id)
    assert undo_document(store, visit_id, "a.txt", who="ot").body == b"two"
    assert [one.body for one in history(store, visit_id, "a.txt")] == [b"one", b"two", b"one", b"two", b"two", b"two"]
    save_document(store, visit_id, "new.txt", b"x", who="ot")
    undo_document(store, visit_id, "new.txt", who="ot")
    assert "new.txt" not in documents(store, visit_id)
    for act in (remove_document, undo_document):
        with pytest.raises(BadInput, match="never was: found no such file"):
            act(store, visit_id, "never was", who="ot")


@pytest.mark.parametrize("name", ["", "/etc/x", "../x", "a//b", "a/./b", "a\\b", "c:/x", "a\nb", "x" * 201])
def test_names_that_lead_out_of_a_folder_are_refused(store, visit_id, name):
    """A file of a visit has to be a file of a folder when it is exported."""
    with pytest.raises(BadInput, match="file name"):
        save_document(store, visit_id, name, b"", who="ot")


def test_changes_to_different_things_are_both_kept(store, visit_id):
    """One window changes a site, the other the goals: both stand afterwards, with comments and order as typed."""
    first = save_document(store, visit_id, "player.toml", BASE, who="ot", based_on=1)
    save_document(
        store, visit_id, "player.toml", BASE.replace(b"minds = 1", b"minds = 4"), who="ann", based_on=first.number
    )
    mine = BASE.replace(b'["steer"]', b'["steer", "rest"]  # by Sunday') + b'action = "menu"\n'
    saved = save_document(store, visit_id, "player.toml", mine, who="ben", based_on=first.number)
    wanted = mine.replace(b"minds = 1", b"minds = 4")
    assert saved.body == wanted
    assert said(saved.why) == "together with the change by ann"


def test_adjacent_lines_are_both_kept(store, visit_id):
    """Two keys of one table that stand next to each other, changed by one window each, and one taken away."""
    first = save_document(store, visit_id, "player.toml", BASE, who="ot", based_on=1)
    for old, new in ((b"setup_min = 3", b"setup_min = 5"), (b"minds = 1\n", b"")):
        saved = save_document(store, visit_id, "player.toml", BASE.replace(old, new), who="ot", based_on=first.number)
    assert saved.body == BASE.replace(b"setup_min = 3\nminds = 1\n", b"setup_min = 5\n")


@pytest.mark.parametrize(
    "theirs, mine, told",
    [
        ((b"minds = 1", b"minds = 4"), (b"minds = 1", b"minds = 7"), r"site chin minds: found '7' here, and '4' saved by ann"),
        ((b"minds = 1\n", b""), (b"minds = 1", b"minds = 7"), r"found '7' here, and deleted saved by ann"),
        ((BASE[BASE.index(b'[[site]]\nname = "left') :], b""), (b'"thumb"', b'"hand"'), r"site 'left thumb' part: found 'hand'"),
        ((b"minds = 1", b"minds = "), (b"setup_min = 3", b"setup_min = 4"), r"player\.toml: found a change here, and another saved by ann"),
    ],
)  # fmt: skip
def test_changes_to_the_same_thing_are_for_a_person_to_choose(store, visit_id, theirs, mine, told):
    """Both values are told, what the other saved stands, and what was typed here comes along with the refusal."""
    first = save_document(store, visit_id, "player.toml", BASE, who="ot", based_on=1)
    save_document(store, visit_id, "player.toml", BASE.replace(*theirs), who="ann", based_on=first.number)
    with pytest.raises(Conflict, match=told) as refused:
        save_document(store, visit_id, "player.toml", BASE.replace(*mine), who="ben", based_on=first.number)
    assert documents(store, visit_id)["player.toml"].body == BASE.replace(*theirs)
    assert (refused.value.theirs.who, refused.value.mine) == ("ann", BASE.replace(*mine))


def test_a_file_taken_away_meanwhile(store, visit_id):
    """The other window took the file away: not brought back silently."""
    save_document(store, visit_id, "game.toml", b'name = "kites"\n', who="ot", based_on=0)
    remove_document(store, visit_id, "game.toml", who="ann")
    with pytest.raises(Conflict, match="the file deleted by ann"):
        save_document(store, visit_id, "game.toml", b'name = "boats"\n', who="ben", based_on=1)
    assert save_document(store, visit_id, "game.toml", b'name = "boats"\n', who="ben", based_on=0).number == 3
    with pytest.raises(BadInput, match="found version 9, expected a version up to 3"):
        save_document(store, visit_id, "game.toml", b"", who="ben", based_on=9)


def test_two_windows_on_one_player(tmp_path, empty_files):
    """Two windows save fifteen times each at the same moment, each a key of its own: no change is lost, no number twice."""
    place = tmp_path / "records.db"
    place.write_bytes((empty_files / "encrypted").read_bytes())
    stores = [open_store(place, passphrase=PASSPHRASE) for _ in range(2)]
    visit_id = add_visit(stores[0], add_player(stores[0], "K7", who="ot").id, "2026-03-14", who="ot").id
    save_document(stores[0], visit_id, "game.toml", b"one = 0\n\ntwo = 0\n", who="ot", based_on=0)
    failed = []

    def type_away(store, key):
        try:
            for value in range(1, 16):
                now = documents(store, visit_id)["game.toml"]
                body = b"".join(
                    b"%s = %d\n" % (key, value) if line.startswith(key) else line for line in now.body.splitlines(True)
                )
                save_document(store, visit_id, "game.toml", body, who=key.decode(), based_on=now.number)
        except BaseException as error:
            failed.append(error)

    windows = [threading.Thread(target=type_away, args=pair) for pair in zip(stores, (b"one", b"two"), strict=True)]
    for window in windows:
        window.start()
    for window in windows:
        window.join()
    assert failed == []
    past = history(stores[1], visit_id, "game.toml")
    assert past[-1].body == b"one = 15\n\ntwo = 15\n"
    assert [one.number for one in past] == list(range(1, len(past) + 1))
    assert {one.who for one in past} == {"ot", "one", "two"}
    for store in stores:
        store.close()


# Two changes against a plain model of what may be kept: a file as sites with numbers, each window's change one dictionary.

_numbers = st.dictionaries(st.sampled_from(["minds", "setup_min", "rate"]), st.integers(1, 3), max_size=3)
_sites = st.dictionaries(st.sampled_from(["chin", "left thumb", "lip"]), _numbers, max_size=3)


def written(sites):
    rows = []
    for name, numbers in sorted(sites.items()):
        rows += ["[[site]]", f'name = "{name}"', *(f"{key} = {value}" for key, value in sorted(numbers.items())), ""]
    return "\n".join(rows).encode()


def kept_together(base, theirs, mine):
    """Each site and number from the one who changed it; None where both changed one, or one took a site that the other changed."""
    out = {}
    for name in {*base, *theirs, *mine}:
        before, there, here = (sites.get(name) for sites in (base, theirs, mine))
        if there == before or here == there:
            found = here
        elif here == before:
            found = there
        elif there is None or here is None:
            left = here if there is None else there
            if not left.items() <= before.items():
                return None
            found = None  # one took the site away, the other only some of its numbers
        else:
            found = {}
            for key in {*(before or {}), *there, *here}:
                was, one, other = ((numbers or {}).get(key) for numbers in (before, there, here))
                if one != was and other != was and one != other:
                    return None
                value = other if one == was else one
                if value is not None:
                    found[key] = value
        if found is not None:
            out[name] = found
    return out


@settings(max_examples=400)
@given(base=_sites, theirs=_sites, mine=_sites)
def test_any_two_changes_are_kept_or_refused(base, theirs, mine):
    """Brute force over a plain model: what can be kept is kept, value for value; what cannot is refused and nothing else is."""
    wanted = kept_together(base, theirs, mine)
    found = merged(written(base), written(theirs), written(mine), "player.toml", "ann", "2026-03-14T10:20:00")
    if wanted is None:
        assert isinstance(found, MergeConflict)
        assert all(place(one).startswith("player.toml, site ") for one in found.problems)  # each tells what is at odds
    elif not isinstance(found, MergeConflict):
        told = {site.pop("name"): site for site in tomllib.loads(found.decode()).get("site", [])}
        assert told == wanted
    else:  # the lines lie so that only a person can put them together: said of the whole file, never of a value
        assert [place(one) for one in found.problems] == ["player.toml"]


@pytest.mark.parametrize(
    "theirs, mine", [("rate = 3\n", "[rate]\nfast = 1\n"), ("[rate]\nfast = 1\n", "rate = 3\n"), ("[rate.a]\nb = 1\n", "[rate]\na = 2\n")]
)  # fmt: skip
def test_a_table_in_one_and_a_value_in_the_other_is_told(theirs, mine):
    """One window makes a number of it, the other a table: named, as only a person can choose."""
    found = merged(b"", theirs.encode(), mine.encode(), "game.toml", "ann", "2026-03-14T10:20:00")
    assert isinstance(found, MergeConflict)
    assert all(place(one).startswith("game.toml, rate") for one in found.problems)


@pytest.mark.parametrize(
    "line, other, together",
    [
        ('x = { a = 3, b = "no # 1" } # note', 'x = { a = 1, b = "no # 2" } # note', 'x = { a = 3, b = "no # 2" } # note'),
        ('x = { a = 3, b = "no # 1" } # note', 'x = { a = 1, b = "no # 2" } # other', None),
    ],
)  # fmt: skip
def test_a_mark_within_a_value_is_no_comment(line, other, together):
    """Two values of one line: kept together, also where a text holds the mark of a comment; a comment that would be lost is asked."""
    base = b'x = { a = 1, b = "no # 1" } # note'
    found = merged(base, line.encode(), other.encode(), "game.toml", "ann", "2026-03-14T10:20:00")
    if together is None:
        assert isinstance(found, MergeConflict)
    else:
        assert found == together.encode()
