"""The page about the case folder shows what the reader accepts."""

from __future__ import annotations

import re
import textwrap
from pathlib import Path

import pytest

from stickwright.files.folder import check_case
from stickwright.files.plausible_ranges import BANDS

PAGE = (Path(__file__).parents[2] / "docs" / "case-folder.md").read_text(encoding="utf-8")

RECORDING = '[[site.recording]]\nfile = "recordings/a.csv"\ntask = "rest"\n'


def blocks():
    """Indented examples, in order."""
    return [textwrap.dedent(block) for block in re.findall(r"(?m)(?:^    .*\n(?:\n(?=    ))?)+", PAGE)]


def test_the_examples_are_a_case(tmp_path):
    """Typed into files as they stand on the page, the examples pass the check."""
    player, kit, game, hub, room, gauge, bench, recording = blocks()
    (tmp_path / "readings").mkdir()
    (tmp_path / "recordings").mkdir()
    (tmp_path / "player.toml").write_text(player.replace("[[together]]", f"{RECORDING}[[together]]"), encoding="utf-8")
    (tmp_path / "kit.toml").write_text(kit, encoding="utf-8")
    (tmp_path / "game.toml").write_text(game, encoding="utf-8")
    (tmp_path / "hub.toml").write_text(hub, encoding="utf-8")
    (tmp_path / "room.toml").write_text(room, encoding="utf-8")
    (tmp_path / "readings" / "right-index.csv").write_text(gauge, encoding="utf-8")
    (tmp_path / "recordings" / "a.csv").write_text(recording, encoding="utf-8")
    assert check_case(tmp_path, "2026-03-02") == ((), ())
    assert bench.startswith("force_n,travel_mm,way\n")


@pytest.mark.parametrize("part", sorted({part for part, _ in BANDS}))
def test_the_ranges_are_those_in_use(part):
    """The table of usual ranges on the page is the table that the check uses."""
    (row,) = [line for line in PAGE.splitlines() if re.match(rf"\| ([a-z]+, )?{part}(, [a-z]+)? \|", line)]
    force, travel = (tuple(float(end) for end in cell.split(" to ")) for cell in row.strip("| ").split(" | ")[1:])
    assert BANDS[part, "force"] == force
    assert BANDS[part, "length"] == pytest.approx([end / 1000 for end in travel], rel=1e-12)
