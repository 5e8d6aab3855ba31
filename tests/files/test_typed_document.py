"""What a file says goes into a document and comes out again: every value, every digit, every line."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stickwright.errors import BadInput
from stickwright.files import typed_document
from stickwright.files.folder import case_and_queries, check_case
from stickwright.files.toml_lines import TypedFloat, parse_toml
from stickwright.files.typed_document import SCHEMA, UPGRADES, check_schema, document_json, noun_of, read_document

DEMO = Path(__file__).parents[2] / "examples" / "demo"
ODD = """
whole = 9007199254740993
hexadecimal = 0x1F
digits = 0.40
small = 1e-7
plus = +1.50
grouped = 1_000.5
infinite = -inf
missing = nan
day = 2026-03-14
time = 07:32:00.5
both = 2026-03-14T07:32:00Z
local = 2026-03-14 07:32:00
words = "a \\u0007 \\"quoted\\" \\\\ \U0001f600 line\\nbreak"
empty = ""
"" = "no key"
"$" = "one"
"$date" = "2026-03-14"
nested = [[1, 2.0], [], [{ "$number" = "inf" }, {}]]
yes = true
[a.b]
"c.d" = { "$date" = "x" }
[[list]]
[[list]]
x = 1
"""


def shown(value):
    """A tree with types and digits: nan is itself, 1 is not true, 0.40 is not 0.4."""
    if isinstance(value, dict):
        return {key: shown(one) for key, one in value.items()}
    if isinstance(value, list):
        return [shown(one) for one in value]
    return type(value).__name__, value.text if isinstance(value, TypedFloat) else str(value)


def there_and_back(text, name="player.toml"):
    body = text.encode()
    return read_document(document_json(name, body), name, body)


def test_every_kind_of_value_comes_back():
    """Digits as typed, dates, times, odd numbers, and keys that look like our own marks."""
    read = there_and_back(ODD)
    other = parse_toml(ODD, "player.toml")
    assert shown(read.data) == shown(other.data)
    assert read.where(("a", "b", "c.d")) == other.where(("a", "b", "c.d"))


KEYS = st.text(st.characters(exclude_categories=["Cs"]), max_size=4) | st.sampled_from(["$", "$$", "$date", "$number"])
VALUES = st.recursive(
    st.booleans()
    | st.integers(-(10**30), 10**30)
    | st.floats()
    | st.text(st.characters(exclude_categories=["Cs"]), max_size=6)
    | st.dates()
    | st.datetimes()
    | st.times(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(KEYS, inner, max_size=3),
    max_leaves=12,
)


@given(tree=st.dictionaries(KEYS, VALUES, min_size=1, max_size=4))
@settings(deadline=None)
def test_any_tree_comes_back(tree):
    """Law: whatever a file can say, its document says."""
    import tomlkit

    text = tomlkit.dumps(tree)
    try:
        other = parse_toml(text, "player.toml")
    except BadInput:  # what the writer of these texts cannot write
        return
    assert shown(there_and_back(text).data) == shown(other.data)


def test_a_case_of_documents_is_the_case_of_its_files():
    """The demo, read from documents: the same nouns; with a mistake in it, the same sentences with the same lines."""
    files = {path.relative_to(DEMO).as_posix(): path.read_bytes() for path in sorted(DEMO.rglob("*")) if path.is_file()}

    def held(files):
        return {name: there_and_back(body.decode(), name) if noun_of(name) else body for name, body in files.items()}

    case, noticed = case_and_queries(held(files), "2026-03-14")
    other, told = case_and_queries(files, "2026-03-14")
    assert (case.player, case.kit, case.game, case.further_games, case.hubs, case.room) == (
        other.player, other.kit, other.game, other.further_games, other.hubs, other.room,
    )  # fmt: skip
    assert noticed == told
    wrong = files | {"player.toml": files["player.toml"].replace(b"force_gf", b"forse_gf", 2) + b"\nsites = 3\n"}
    assert check_case(held(wrong)) == check_case(wrong)
    assert check_case(wrong)[0]


@pytest.mark.parametrize(
    "name, body",
    [
        ("notes.toml", b"a = 1"),
        ("readings/chin.csv", b"direction_deg"),
        ("player.toml", b""),
        ("player.toml", b"# only a comment"),
        ("player.toml", b"code = "),
        ("player.toml", b'code = "\xff"'),
        ("kit.toml", b"a = " + b"[" * 150 + b"]" * 150),
    ],
)
def test_what_says_nothing_readable_has_no_document(name, body):
    """It stays the text that it is, and its own page tells why."""
    assert document_json(name, body) is None


def of_schema(number, name, body):
    return document_json(name, body).replace(b'"schema": %d' % SCHEMA, b'"schema": %d' % number)


def test_a_document_of_a_later_schema_is_refused():
    """Rather than read as something else, in one sentence."""
    later = of_schema(SCHEMA + 1, "player.toml", b"a = 1")
    for refused in (lambda: read_document(later, "player.toml", b"a = 1"), lambda: check_schema(later, "player.toml")):
        with pytest.raises(
            BadInput, match=rf"player\.toml: found records of a newer stickwright \(schema {SCHEMA + 1}\)"
        ) as told:
            refused()
        assert len(told.value.problems) == 1


def test_there_is_a_step_from_every_earlier_schema():
    """No document that was ever written is left behind."""
    assert sorted(UPGRADES) == list(range(1, SCHEMA))


def test_a_document_of_an_earlier_schema_is_brought_up_step_by_step(monkeypatch):
    """Two invented steps, one for each noun it is about, in their order; what they do not touch keeps its digits and its line."""

    def renamed(noun, tree):
        return {"label" if key == "code" and noun == "player" else key: value for key, value in tree.items()}

    def shouted(_noun, tree):
        return tree | {"label": tree["label"].upper()} if "label" in tree else tree

    body = b'# a note\ncode = "k7"\nshare = 0.40'
    first, second = of_schema(SCHEMA, "player.toml", body), of_schema(SCHEMA + 1, "player.toml", b'label = "k8"')
    hub = of_schema(SCHEMA, "hub.toml", b'code = "k9"')
    monkeypatch.setattr(typed_document, "SCHEMA", SCHEMA + 2)
    monkeypatch.setattr(typed_document, "UPGRADES", UPGRADES | {SCHEMA: renamed, SCHEMA + 1: shouted})
    read = read_document(first, "player.toml", body)
    assert shown(read.data) == {"label": ("str", "K7"), "share": ("TypedFloat", "0.40")}
    assert read.lines.line(("share",)) == 3
    assert read_document(second, "player.toml", b'label = "k8"').data == {"label": "K8"}
    assert read_document(hub, "hub.toml", b'code = "k9"').data == {"code": "k9"}
    check_schema(first, "player.toml")
