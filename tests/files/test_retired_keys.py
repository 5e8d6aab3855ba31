"""Files that somebody kept from an earlier version: their old keys are read over and told, once each."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

import pytest

from said import said
from stickwright.files.folder import check_case, read_case
from stickwright.files.retired_keys import retired_key_notes
from stickwright.files.starting import new_case
from stickwright.files.toml_lines import parse_toml
from stickwright.model.kit import Kit, Stick
from stickwright.model.measured import Measured, is_retired


class Chair(Measured):
    """An invented noun with a retired length."""

    retired: ClassVar[tuple[str, ...]] = ("arm_m",)
    name: str


def test_any_unit_of_a_retired_key_is_read_over() -> None:
    """A retired length may stand in any unit of length."""
    assert is_retired("arm_mm", Chair)
    assert not is_retired("arm_gf", Chair)
    assert Chair.model_validate({"name": "low", "arm_inch": 4}) == Chair(name="low")


def test_a_key_that_never_was_is_still_refused() -> None:
    """What was never a key is a slip of the pen and stays a refusal."""
    with pytest.raises(ValueError, match="legs"):
        Chair.model_validate({"name": "low", "legs": 4})


def test_a_case_with_old_keys_is_read_and_told_once(tmp_path: Path) -> None:
    """A kit that still has two classes of force in words: read, planned with its newtons, one note with both places."""
    folder = tmp_path / "old"
    new_case(folder)
    kit = folder / "kit.toml"
    kit.write_text(
        kit.read_text(encoding="utf-8").replace('kind = "lever"', 'force_class = "old word"\nkind = "lever"')
        + '\n[[stick]]\nname = "elder"\nforce_class = "another"\nstart_force_n = 0.1\nfull_force_n = 0.3\ntravel_mm = 5\n',
        encoding="utf-8",
    )
    case = read_case(folder)
    _, findings = check_case(folder)
    assert "elder" in {stick.name for stick in case.kit.stick}
    told = [finding for finding in findings if finding.about == "retired_key"]
    assert len(told) == 1
    assert told[0].level == "note"
    assert "force_class: this key is no longer used and is ignored (also at 1 more place)." in said(told[0].text)


def test_nothing_is_told_of_a_file_without_old_keys() -> None:
    """No note where there is nothing to note."""
    file = parse_toml('[[stick]]\nname = "elder"\nstart_force_n = 0.1\nfull_force_n = 0.3\ntravel_mm = 5\n', "kit.toml")
    assert retired_key_notes(Kit, file) == []
    assert "force_class" not in Stick.model_fields
