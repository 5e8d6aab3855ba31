"""Settings of this machine: kept in a file, whole or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest

from said import place
from stickwright.errors import BadInput
from stickwright.web.preferences import Preferences, keep_preferences, preferences_at


def test_what_is_set_is_set_at_the_next_start(tmp_path: Path) -> None:
    file = tmp_path / "new" / "settings.toml"
    wanted = Preferences().changed(light="dark", size="larger", who='AM "OT"', force="gf", idle_minutes="40")
    keep_preferences(file, wanted)
    assert preferences_at(file) == wanted == Preferences("dark", "larger", 'AM "OT"', "gf", 40)


@pytest.mark.parametrize("text", ["", "not toml at all [", 'light = "purple"\n', 'strange = 1\nlight = "dark"\n'])
def test_a_file_edited_by_hand_is_no_reason_not_to_start(tmp_path: Path, text: str) -> None:
    file = tmp_path / "settings.toml"
    file.write_text(text, encoding="utf-8")
    assert preferences_at(file).light in ("auto", "dark")


def test_what_cannot_be_set_is_said() -> None:
    with pytest.raises(BadInput) as refused:
        Preferences().changed(light="purple", idle_minutes="0", who="x" * 41)
    assert [place(problem) for problem in refused.value.problems] == [
        "Theme",
        "Lock when not used for",
        "Your initials",
    ]
    assert str(refused.value).count("Choose one of the options.") == 2
