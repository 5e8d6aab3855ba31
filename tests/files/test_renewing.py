"""A case of an earlier version in the form of today: nothing is lost but keys that nothing uses."""

from __future__ import annotations

from pathlib import Path

import pytest

from stickwright.cli import main
from stickwright.errors import BadInput
from stickwright.files.folder import check_case, new_case, read_case
from stickwright.files.renewing import renewed_case


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """A starter whose sticks still have a word for their force, with a sheet made from it."""
    folder = tmp_path / "old"
    new_case(folder)
    kit = folder / "kit.toml"
    kit.write_text(kit.read_text("utf-8").replace('kind = "lever"', 'force_class = "word"\nkind = "lever"'), "utf-8")
    (folder / "sheet.pdf").write_bytes(b"%PDF")
    (folder / "readings" / "more").mkdir()
    (folder / "readings" / "more" / "film.bin").write_bytes(bytes(range(256)))
    return folder


def test_only_what_nothing_uses_is_left_out(old: Path, tmp_path: Path) -> None:
    """Comments and all else stand as they stood, files that are not text to the byte; the old folder is as it was."""
    before = {path: path.read_bytes() for path in old.rglob("*") if path.is_file()}
    written, left_out = renewed_case(tmp_path / "new", old)
    assert left_out == before[old / "kit.toml"].count(b"force_class") > 0
    for path in written:
        source = before[old / path.relative_to(tmp_path / "new")]
        assert path.read_bytes() == source.replace(b'force_class = "word"\n', b"")
    assert {path.relative_to(tmp_path / "new") for path in written} == {
        path.relative_to(old) for path in before if path.name != "sheet.pdf"
    }
    assert {path: path.read_bytes() for path in old.rglob("*") if path.is_file()} == before
    assert read_case(tmp_path / "new").kit == read_case(old).kit
    assert not [one for one in check_case(tmp_path / "new")[1] if one.about == "retired_key"]


def test_a_case_with_problems_is_not_written_anew(old: Path, tmp_path: Path) -> None:
    """They are told as when the case is checked; nothing is made."""
    (old / "game.toml").write_text("name = ", "utf-8")
    with pytest.raises(BadInput, match=r"game\.toml, line 1"):
        renewed_case(tmp_path / "new", old)
    assert not (tmp_path / "new").exists()


def test_on_the_command_line(old: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It says how many entries were left out; a kind of game cannot be asked for as well."""
    assert main(["new", str(tmp_path / "new"), "--from", str(old)]) == 0
    assert "left out: " in capsys.readouterr().out
    assert main(["new", str(tmp_path / "other"), "--from", str(old), "--game", "racing"]) == 2
    assert "--game: This cannot be combined with --from." in capsys.readouterr().err
