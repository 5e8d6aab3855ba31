"""What is wrong with the files of a visit, told by the pages."""

from __future__ import annotations

from pathlib import Path

import pytest

from stickwright.catalogue import say
from stickwright.errors import Problem
from stickwright.files.folder import check_case
from stickwright.web.issues import problem_on_pages


def of_kit(folder: Path) -> Problem:
    """What is wrong with the kit."""
    (folder / "player.toml").write_text('code = "P1"\n', encoding="utf-8")
    (problem,) = (one for one in check_case(folder, "2026-11-30")[0] if one.where[0] == "kit.toml")
    return problem


def test_a_kit_that_is_not_there_is_asked_for(tmp_path: Path) -> None:
    """No file: where to add the sticks."""
    assert say(problem_on_pages(of_kit(tmp_path))).startswith("There is no kit yet.")


@pytest.mark.parametrize(("text", "told"), [("", "Kit: found an empty file"), ("x=", "Kit: found 'x='")])
def test_a_kit_with_a_fault_is_not_called_missing(tmp_path: Path, text: str, told: str) -> None:
    """An empty file, or a line that cannot be read: what is wrong with it."""
    (tmp_path / "kit.toml").write_text(text, encoding="utf-8")
    assert say(problem_on_pages(of_kit(tmp_path))).startswith(told)
