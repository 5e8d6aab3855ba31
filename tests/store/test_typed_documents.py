"""What records hold of a case is typed: each part is a document of its own beside the file that somebody brought."""

import json
import zlib

import pytest
import sqlalchemy as sa

from stickwright.errors import BadInput
from stickwright.files.typed_document import SCHEMA
from stickwright.store.cases import case_of, import_case
from stickwright.store.documents import documents, history, remove_document, save_document, undo_document
from stickwright.store.players import readings_through_time, visit
from stickwright.store.schema import METADATA, version

PLAYER = b"""# never a name
code = "K7"
visit = "2026-03-14"
[[site]]
name = "chin"
part = "chin"
[[site.reading]]
direction_deg = 90
force_gf = [34, 36.0]
"""
KIT = b'[[stick]]\nname = "ash"\n'


def kept(store, name):
    """The documents of all versions of a part, the oldest first, as they lie in the table."""
    with store.read() as connection:
        rows = connection.execute(sa.select(version.c.typed).order_by(version.c.id)).scalars()
        found = [None if row is None else json.loads(zlib.decompress(row)) for row in rows]
    return [one for one in found if one is None or one["noun"] == name]


def test_a_part_is_a_document_with_a_schema_in_every_version(store):
    """Numbers as typed with the unit in the key; undone is a version too; a file that is no part has none."""
    row = import_case(store, {"player.toml": PLAYER}, who="ot")
    save_document(store, row.id, "player.toml", PLAYER.replace(b"36.0", b"38"), who="ot")
    undo_document(store, row.id, "player.toml", who="ot")
    save_document(store, row.id, "notes.toml", b"a = 1", who="ot")
    begun, *found = kept(store, "player")
    assert begun["typed"] == {"code": "K7", "visit": "2026-03-14"}
    readings = [None if one is None else one["typed"]["site"][0]["reading"][0]["force_gf"] for one in found]
    assert readings == [[34, 36.0], [34, 38], [34, 36.0], None]
    assert {one["schema"] for one in found if one} == {SCHEMA}
    assert documents(store, row.id)["player.toml"].body == PLAYER


def test_a_half_filled_visit_is_kept_and_says_what_it_lacks(store):
    """A stick of which only the name was entered, a file that is half typed: saved, read as far as it goes, and told."""
    row = import_case(store, {"player.toml": PLAYER, "kit.toml": KIT}, who="ot")
    assert kept(store, "kit")[-1]["typed"] == {"stick": [{"name": "ash"}]}
    with pytest.raises(BadInput, match=r'kit\.toml, line 1, stick "ash": found no full_force'):
        case_of(store, row.id)
    save_document(store, row.id, "player.toml", PLAYER + b"[[site", who="ot")
    assert kept(store, "player")[-1] is None
    assert (visit(store, row.id).on_date, visit(store, row.id).sites) == ("2026-03-14", ("chin",))
    assert [one.typed is None for one in history(store, row.id, "player.toml")] == [False, False, True]


def test_the_program_reads_the_document(store):
    """What the document says counts, not what stands in the file beside it."""
    row = import_case(store, {"player.toml": PLAYER, "kit.toml": KIT}, who="ot")
    with store.write("test", "") as connection:
        for number, typed in connection.execute(sa.select(version.c.id, version.c.typed)).all():
            other = zlib.compress(zlib.decompress(typed).replace(b'"chin"', b'"left hand"'))
            connection.execute(sa.update(version).where(version.c.id == number).values(typed=other))
    save_document(store, row.id, "game.toml", b'name = "kites"', who="ot")
    assert [one.site for one in readings_through_time(store, row.player_id)] == ["left hand"]
    assert documents(store, row.id)["player.toml"].body == PLAYER


def test_what_a_newer_program_saved_is_refused_and_nothing_is_changed(store):
    """Reading the visit, saving, undoing and deleting its file: one sentence, and every row as it was."""
    row = import_case(store, {"player.toml": PLAYER, "kit.toml": KIT}, who="ot")
    later = zlib.compress(b'{"schema": %d, "noun": "player", "typed": {"label": "K7"}}' % (SCHEMA + 1))
    number = documents(store, row.id)["player.toml"].version_id
    with store.write("test", "") as connection:
        connection.execute(sa.update(version).where(version.c.id == number).values(typed=later))

    def rows():
        with store.read() as connection:
            return {
                table.name: connection.execute(sa.select(table).order_by(*table.primary_key.columns)).all()
                for table in METADATA.sorted_tables
            }

    before = rows()
    for refused in (
        lambda: case_of(store, row.id),
        lambda: save_document(store, row.id, "player.toml", PLAYER + b"# more", who="ot"),
        lambda: save_document(store, row.id, "kit.toml", KIT + b"# more", who="ot"),
        lambda: undo_document(store, row.id, "player.toml", who="ot"),
        lambda: remove_document(store, row.id, "player.toml", who="ot"),
        lambda: import_case(store, {"player.toml": PLAYER + b"# more"}, who="ot"),
    ):
        with pytest.raises(BadInput, match=r"player\.toml: found records of a newer stickwright") as told:
            refused()
        assert len(told.value.problems) == 1
        assert rows() == before
    assert documents(store, row.id)["player.toml"].body == PLAYER
