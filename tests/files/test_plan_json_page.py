"""The page about the plan's JSON names the keys of several games that are there, no others."""

from __future__ import annotations

import dataclasses
import re
from pathlib import Path

import pytest

from stickwright.model.layouts import GameSettings, GamesTogether, Layout, Refit, Replug

PAGE = (Path(__file__).parents[2] / "docs" / "plan-json.md").read_text(encoding="utf-8")
PARTS = {
    "layouts: one entry": Layout, "layouts, replugs": Replug, "layouts, refits": Refit, "layouts, settings": GameSettings,
    "together:": GamesTogether,
}  # fmt: skip


@pytest.mark.parametrize(("heading", "noun"), PARTS.items(), ids=[noun.__name__ for noun in PARTS.values()])
def test_each_key_is_told(heading, noun):
    """In the order in which it is written."""
    (part,) = [one for one in PAGE.split("\n## ") if one.startswith(heading)]
    assert re.findall(r"(?m)^\| `(\w+)` \|", part) == [field.name for field in dataclasses.fields(noun)]
