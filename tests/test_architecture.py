"""The page on how the program is built names what is there, and its picture is that of the contracts."""

from __future__ import annotations

import re
from importlib import import_module
from pathlib import Path

import make_architecture
import pytest

ROOT = Path(__file__).resolve().parents[1]
PAGE = (ROOT / "docs" / "architecture.md").read_text(encoding="utf-8")
SOURCE = ROOT / "src" / "stickwright"


def test_the_picture_is_up_to_date() -> None:
    """`make docs` draws it again."""
    assert (ROOT / "docs" / "architecture.svg").read_text(encoding="utf-8") == make_architecture.drawn()


def test_the_picture_shows_every_room() -> None:
    """Each with its line, in the layer of the contracts."""
    rooms = {path.stem for path in SOURCE.iterdir() if path.suffix == ".py" or (path / "__init__.py").exists()}
    shown = {room for row in make_architecture.layers() for room in row}
    assert shown == rooms - {"__init__", "__main__"}


@pytest.mark.parametrize("name", sorted(set(re.findall(r"`((?:[a-z_]+\.)+[a-zA-Z_]+)`", PAGE))))
def test_what_it_names_is_there(name: str) -> None:
    """A room's module, or something in it."""
    if name.endswith((".toml", ".py")):
        return
    room, module, *within = name.split(".")
    found = import_module(f"stickwright.{room}.{module}")
    for part in within:
        found = getattr(found, part)


@pytest.mark.parametrize("path", sorted(set(re.findall(r"`([a-z_]+/[a-z_/]+\.(?:py|js))`", PAGE))))
def test_files_it_names_are_there(path: str) -> None:
    """Below src/stickwright."""
    assert (SOURCE / path).exists()
