"""Every field of every noun is read by something beyond the files and forms that ask for it: nothing is asked for and never used."""

from __future__ import annotations

import ast
import importlib
import pkgutil
from collections.abc import Iterator
from pathlib import Path

import stickwright
import stickwright.model
from stickwright.model.measured import Measured

ASKING = ("model", "records", "store")
"""Folders that declare, read and keep nouns without using them."""
FORMS = ("noun_forms.py", "noun_views.py")
UNUSED = {
    "friction_force_interval_n": "kept beside the friction that a bench gave; the choice counts on the friction itself",
}
"""Fields that nothing else reads, each with its reason."""


def nouns(parent: type[Measured] = Measured) -> Iterator[type[Measured]]:
    for each in pkgutil.iter_modules(stickwright.model.__path__):
        importlib.import_module(f"stickwright.model.{each.name}")
    for child in parent.__subclasses__():
        yield child
        yield from nouns(child)


def names_read(text: str) -> set[str]:
    """Names of attributes that a piece of program reads, by a dot or by getattr; one that it only sets does not count."""
    found = set()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Load):
            found.add(node.attr)
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "getattr":
            found.update(one.value for one in node.args[1:2] if isinstance(one, ast.Constant))
    return {str(name) for name in found}


def names_used() -> set[str]:
    root = Path(stickwright.__file__).parent
    files = [
        path for path in root.rglob("*.py") if path.relative_to(root).parts[0] not in ASKING and path.name not in FORMS
    ]
    return set().union(*(names_read(path.read_text(encoding="utf-8")) for path in files))


def test_every_field_is_used() -> None:
    """By the name of the attribute: a field that shares its name with one that is read passes unseen. Exceptions are not stale."""
    used = names_used()
    fields = {
        (noun.__name__, field)
        for noun in nouns()
        if noun.__module__.startswith("stickwright.model.")
        for field in noun.model_fields
    }
    assert len(fields) > 200
    unread = {(noun, field) for noun, field in fields if field not in used}
    assert {field for _, field in unread} == set(UNUSED), sorted(unread)


def test_a_name_that_is_only_set_or_typed_is_not_read() -> None:
    """What the walk counts: a dot that reads, and getattr with the name in words."""
    text = 'site.minds\nroom.width_m = 1\ngetattr(kit, "stick")\nGame(name="rounds")\n"duty_share"'
    assert names_read(text) == {"minds", "stick"}
