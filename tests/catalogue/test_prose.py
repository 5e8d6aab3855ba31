"""No new prose in the code: what people read goes into the catalogue."""

from __future__ import annotations

import ast

from prose import now, prose, recorded


def test_no_file_says_more_than_before():
    """Put new words into `stickwright.catalogue`; when a file has fewer, record it: ``python tests/catalogue/prose.py --write``."""
    there, before = now(), recorded()
    more = {name: (before.get(name, 0), count) for name, count in there.items() if count > before.get(name, 0)}
    assert not more, f"more prose than recorded (before, now): {more}"
    fewer = {name: (count, there.get(name, 0)) for name, count in before.items() if count > there.get(name, 0)}
    assert not fewer, f"less prose than recorded: run python tests/catalogue/prose.py --write; {fewer}"


def test_what_counts_as_prose():
    """Two words in a row; not a docstring, a key, a unit or a statement to a database; an f-string once."""
    code = '''"""A docstring of words."""
LABEL = "move the base"
KEY = "resting_force"
UNIT = "N m"
SQL = "SELECT one FROM two"
def f(x):
    """Words about it."""
    return f"the base {x} moves away by {x}"
'''
    assert prose(ast.parse(code)) == 2
