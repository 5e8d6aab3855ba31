"""No prose in the code: what people read stands in the catalogue."""

from __future__ import annotations

import ast

import pytest
from prose import keys, now, prose, recorded


def test_no_sentence_stands_outside_the_catalogue() -> None:
    """Put new words into `stickwright.catalogue`. What is no text for people stands in prose.json with its number and reason;
    when a file has fewer: ``python tests/catalogue/prose.py --write``."""
    allowed = {name: count for name, (count, _) in recorded().items()}
    assert now() == allowed


def test_every_exception_says_why() -> None:
    """A reason of some words for each file that has any."""
    assert all(len(why.split()) > 2 for _, why in recorded().values())


@pytest.mark.parametrize(
    ("code", "texts"),
    [
        ('"""A docstring of words."""', 0),
        ('LABEL = "move the base"', 1),
        ('KEY = "resting_force"', 0),
        ('UNIT = "N m"', 0),
        ('SQL = "SELECT one FROM two"', 0),
        ('x = f"the base {a} moves away by {b}"', 1),
        ('x = f"{a} is too {b} for it"', 1),
        ('def f():\n    """Words about it."""\n    return "select one of them"', 1),
        ('axes.legend(loc="upper left", title="upper left")', 1),
        ('raise RuntimeError("the sink holds too few")', 0),
        ('raise BadInput("the sink holds too few")', 1),
        ('x = f"<td class=\\"wide\\">{a}</td>"', 0),
        ('x = "less than < the other"', 1),
    ],
)
def test_what_counts_as_prose(code: str, texts: int) -> None:
    """Two words in a row; not a docstring, a key, a unit, a statement to a database, markup, a setting of another library or a
    defect of the program; an f-string is one text."""
    assert len(prose(ast.parse(code))) == texts


def test_fixed_words_are_keys() -> None:
    """Words of a `Literal` are keys wherever they stand; the same words joined to others are prose."""
    tree = ast.parse('Kind = Literal["floor stand"]\nx = "floor stand"\ny = "a floor stand"')
    assert [text for _, text in prose(tree, keys(tree))] == ["a floor stand"]


def test_defects_of_the_model_are_read() -> None:
    """What a check of a noun says is told to whoever wrote the file, so it counts."""
    assert len(prose(ast.parse('raise ValueError("two of a kind")'), defects=False)) == 1
