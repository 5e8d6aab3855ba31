"""One public class for one name: whoever reads it anywhere knows which is meant."""

from __future__ import annotations

import ast
from collections import defaultdict
from pathlib import Path

SOURCE = Path(__file__).resolve().parents[1] / "src" / "stickwright"
TWICE = ("Texts",)
"""Of every topic in every language."""


def test_no_two_public_classes_have_one_name() -> None:
    """A topic and a noun of one name are two; kept plans read a topic by its name, so it is the noun that is called otherwise."""
    places: dict[str, list[str]] = defaultdict(list)
    for path in SOURCE.rglob("*.py"):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_") and node.name not in TWICE:
                places[node.name].append(path.relative_to(SOURCE).as_posix())
    assert {name: where for name, where in places.items() if len(where) > 1} == {}
