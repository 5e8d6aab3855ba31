"""Changing one table of a file that somebody else wrote."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
import tomlkit
from hypothesis import given
from hypothesis import strategies as st

from said import place
from stickwright.errors import BadInput
from stickwright.files.editing import Numeral, at_path, with_fields, without_table

DEMO = Path(__file__).parents[2] / "examples" / "demo"


def lines_that_went(before: str, after: str) -> list[str]:
    """Lines of the first text that the second no longer has, each counted."""
    left = after.splitlines()
    gone = []
    for line in before.splitlines():
        if line in left:
            left.remove(line)
        else:
            gone.append(line)
    return gone


def test_one_key_changes_and_every_other_line_stays():
    """A correction touches the line that it corrects, comments and order stay."""
    before = (DEMO / "player.toml").read_text()
    after = with_fields(before, ("site", 0, "rest", 1), {"support": "cushion"})
    assert lines_that_went(before, after) == ['  support = "wedge under the hand"']
    assert at_path(after, ("site", 0, "rest", 1, "support")) == "cushion"


def test_a_key_below_inner_tables_still_belongs_to_its_own_table():
    """A new key of a site stands before the site's readings, not after them, where it would be a reading's."""
    after = with_fields((DEMO / "player.toml").read_text(), ("site", 0), {"minds": Numeral("4")})
    assert at_path(after, ("site", 0, "minds")) == 4


def test_a_number_stays_as_it_was_typed():
    """0.40 says more than 0.4: a gauge that shows hundredths."""
    after = with_fields("", ("site", 0, "reading", 0), {"force_n": [Numeral("0.40"), Numeral("0.5")]})
    assert "force_n = [0.40, 0.5]" in after


def test_the_last_table_of_a_list_goes_with_its_list():
    """A list of tables that holds none is no list."""
    text = 'code = "K1"\n\n[[helper]]\nname = "sister"\n'
    assert tomllib.loads(without_table(text, ("helper", 0))) == {"code": "K1"}


@pytest.mark.parametrize("path", [("site", 3), ("code", 0), ("site", 0, "name", 2)])
def test_a_place_that_is_not_there_is_refused(path):
    """A page that was open too long must not write somewhere else."""
    text = 'code = "K1"\n[[site]]\nname = "chin"\n'
    with pytest.raises(BadInput) as refused:
        with_fields(text, path, {"x": 1}, name="player.toml")
    assert place(refused.value.problems[0]) == "player.toml"
    with pytest.raises(BadInput):
        without_table(text, path, name="player.toml")


def test_a_broken_file_is_told_with_its_line():
    """What cannot be read is not edited over."""
    with pytest.raises(BadInput) as refused:
        with_fields('code = "K1\n', (), {"visit": "2026-01-01"}, name="player.toml")
    assert place(refused.value.problems[0]) == "player.toml, line 1"


@pytest.mark.parametrize("form", ["plain", "inline"])
def test_tables_in_one_line_are_edited_too(form):
    """A hand-written file may hold its readings as inline tables."""
    text = {
        "plain": "[[site]]\n[[site.reading]]\ndirection_deg = 0\nforce_gf = [3]\n",
        "inline": "[[site]]\nreading = [{direction_deg = 0, force_gf = [3]}]\n",
    }[form]
    after = with_fields(text, ("site", 0, "reading", 1), {"direction_deg": Numeral("90")})
    assert at_path(after, ("site", 0, "reading")) == [{"direction_deg": 0, "force_gf": [3]}, {"direction_deg": 90}]
    assert at_path(without_table(after, ("site", 0, "reading", 0)), ("site", 0, "reading")) == [{"direction_deg": 90}]


WORDS = st.sampled_from(["name", "note", "force_gf", "is #1", 'with "quotes"'])
VALUES = st.one_of(st.integers(-9, 9), st.booleans(), st.text(max_size=6), st.lists(st.integers(0, 99), max_size=3))
TABLES = st.dictionaries(WORDS, VALUES, max_size=3)
FILES = st.fixed_dictionaries(
    {"code": st.just("K1"), "site": st.lists(st.tuples(TABLES, st.lists(TABLES, max_size=2)), min_size=1, max_size=3)}
)


@given(file=FILES, fields=st.dictionaries(WORDS, st.none() | VALUES, max_size=3), data=st.data())
def test_an_edit_is_that_edit_and_nothing_else(file, fields, data):
    """Law: for any file and any table, the tables afterwards are those of a plain change of the same keys."""
    plain = {"code": "K1", "site": [site | ({"reading": list(inner)} if inner else {}) for site, inner in file["site"]]}
    text = tomlkit.dumps(plain)
    at = data.draw(st.integers(0, len(plain["site"])))
    after = tomllib.loads(with_fields(text, ("site", at), fields))
    expected = tomllib.loads(text)
    if at == len(plain["site"]):
        expected["site"].append({})
    site = expected["site"][at]
    for key, value in fields.items():
        site.pop(key, None) if value is None else site.update({key: value})
    assert after == expected
