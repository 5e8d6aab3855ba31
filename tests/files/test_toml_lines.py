"""Where in a TOML file a field stands."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from said import place
from stickwright.errors import BadInput
from stickwright.files.toml_lines import Lines, parse_toml, read_toml

HARD = '''# a comment with [brackets] and "quotes"
code = "K1" # [[site]]
spread.out.key = 1
many = """
[[site]]
two = 2"""
literal = 'C:\\not\\escaped' # ' " [
"quoted \\" key" = 4

[[site]]
name = "chin" ; '''.replace(" ; ", "\n") + '''
force_n = [ # one a line
  1.0, # "]"
  2.0, 3.0,

  4.0
]
inline = { a = 1, b = [1, { c = "x,]}" }], d = 3 }
  [[site.reading]]
  direction_deg = 0
  [[site.reading]]
  direction_deg = 90
  [site.spasm]
  peak_n = 3
[[site]]
name = "foot"
  [[ site . "reading" ]]
  direction_deg = 180
'''  # fmt: skip


@pytest.mark.parametrize(
    ("path", "shown"),
    [
        (("code",), 'code = "K1"'),
        (("spread", "out", "key"), "spread.out.key"),
        (("many",), 'many = """'),
        (("literal",), "literal ="),
        (('quoted " key',), "quoted"),
        (("site", 0), "[[site]]"),
        (("site", 0, "name"), 'name = "chin"'),
        (("site", 0, "force_n", 0), "1.0,"),
        (("site", 0, "force_n", 2), "2.0, 3.0,"),
        (("site", 0, "force_n", 3), "4.0"),
        (("site", 0, "inline", "b", 1, "c"), "inline ="),
        (("site", 0, "reading", 1, "direction_deg"), "direction_deg = 90"),
        (("site", 0, "spasm", "peak_n"), "peak_n = 3"),
        (("site", 1, "name"), 'name = "foot"'),
        (("site", 1, "reading", 0), '[[ site . "reading" ]]'),
        (("site", 1, "reading", 0, "direction_deg"), "direction_deg = 180"),
        (("site", 1, "reading", 0, "no_such_key"), '[[ site . "reading" ]]'),
    ],
)
def test_a_field_is_found_on_its_line(path, shown):
    """Comments, strings with brackets, dotted keys, lists over several lines, inline tables: the line holds."""
    parse_toml(HARD, "hard.toml")
    assert shown in HARD.splitlines()[Lines(HARD).line(path) - 1]


scalars = st.one_of(
    st.integers(-9, 9).map(str),
    st.floats(-5, 5).map(repr),
    st.text(max_size=6).map(lambda text: json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")),
    st.sampled_from(["true", "'#['", '"""\n]\n"""', "1979-05-27", "[ ]", "{}"]),
)
blanks = st.sampled_from(["", " ", "\n", " # x ]\n", "\n\n  "])


@st.composite
def documents(draw):
    """Tables of an array, each with keys that hold a list; every list item has its own blanks before it."""
    text, expected = "", {}
    for table in range(draw(st.integers(1, 3))):
        text += draw(st.sampled_from(["", "# [[t]]\n", "\n"])) + "[[t]]\n"
        for key in draw(st.lists(st.sampled_from(["a", "b_n", '"c d"', "e.f"]), unique=True, max_size=3)):
            text += f"{key} = ["
            names = [part.strip('"') for part in key.split(".")]
            for item in range(draw(st.integers(0, 3))):
                text += draw(blanks)
                expected["t", table, *names, item] = text.count("\n") + 1
                text += draw(scalars) + draw(blanks) + ","
            text += draw(blanks) + "]\n"
    return text, expected


@given(documents())
@settings(max_examples=150, deadline=None)
def test_every_list_item_is_found(document):
    """Law: whatever stands between list items, each is found on the line where it begins."""
    text, expected = document
    lines = parse_toml(text, "x.toml").lines
    assert {path: lines.line(path) for path in expected} == expected
    assert Lines(text.replace("\n", "\r\n")).line(()) == 1


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ('a = "x\nb = 1', "line 1", "the closing quote is missing"),
        ("a = 1\n\na = 2", "line 3", "this key is in the table already"),
        ("a = [1, 2\nb = 3", "line 2", "the list is not closed"),
        ("force_n = 0,44", "line 1", "Write 0.44, not 0,44."),
        ("force = 45 gf", "line 1", "Put the unit in the key"),
        ("part = chin", "line 1", "text in quotes"),
        ("[[site]\nx = 1", "line 1", "the heading has no closing ]]"),
        ("[a]\n[a]", "line 2", "this table was started above"),
        ("some words", "line 1", "the key has no ="),
        ("a =", "line 1", "Check for a missing value"),
        ('file = "readings\\right.csv"\nb = "a\\q"', "line 2", "Write / in file names."),
        ("x = " + "[" * 5000, "kit.toml", "brackets inside brackets"),
        ("x = " + "9" * 5000, "line 1", "a number"),
    ],
)
def test_syntax_is_told_in_plain_words(text, line, words):
    """What cannot be read as TOML is told with its line and what to do, without the parser's jargon."""
    with pytest.raises(BadInput) as refused:
        parse_toml(text, "kit.toml")
    (problem,) = refused.value.problems
    assert line in place(problem)
    assert words in str(problem)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "an empty file"),
        (b" \n\n", "an empty file"),
        (
            b'name = "caf\xe9"',
            "line 1, byte 12: found the byte E9, which is not UTF-8 ('é' if it was saved as Latin-1)",
        ),
        ('name = "x"'.encode("utf-16"), "text in UTF-16"),
    ],
)
def test_unreadable_files(tmp_path, data, words):
    """Empty files and other encodings are told with line and byte."""
    path = tmp_path / "kit.toml"
    path.write_bytes(data)
    with pytest.raises(BadInput) as refused:
        read_toml(path, "kit.toml", "kit")
    assert words in str(refused.value)


def test_a_byte_order_mark_is_tolerated(tmp_path):
    """Editors of some systems put a mark in front; it means nothing."""
    (tmp_path / "kit.toml").write_bytes(b'\xef\xbb\xbfname = "x"\r\n')
    assert read_toml(tmp_path / "kit.toml", "kit.toml", "kit").data == {"name": "x"}


def test_a_folder_and_a_missing_file(tmp_path):
    """A folder in place of a file, and no file, are told apart."""
    with pytest.raises(BadInput, match="found a folder, expected a file with the kit"):
        read_toml(tmp_path, "kit.toml", "kit")
    with pytest.raises(BadInput, match=r"kit\.toml: found no such file"):
        read_toml(tmp_path / "kit.toml", "kit.toml", "kit")
