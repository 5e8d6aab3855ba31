"""docs/coverage.md says how often the intervals hold the truth; a small part of it is simulated here again."""

from __future__ import annotations

import math
import re
from pathlib import Path

import pytest

from coverage_runs import Run, runs

PAGE = Path(__file__).resolve().parent.parent / "docs" / "coverage.md"
AGAIN = 40


def told() -> dict[tuple[str, str], tuple[float, bool]]:
    """Share and mark of each line of the page's table."""
    found = re.findall(
        r"^\| (.+?) \| (.+?) \| ([\d.]+)% \| (yes)? ?\|$", PAGE.read_text(encoding="utf-8"), re.MULTILINE
    )
    return {(name, figure): (float(share) / 100, bool(mark)) for name, figure, share, mark in found}


def number_told() -> int:
    """How many of each kind the page says were simulated."""
    found = re.search(r"simulated \(([\d,]+) of each kind\)", PAGE.read_text(encoding="utf-8"))
    assert found is not None
    return int(found[1].replace(",", ""))


def test_every_interval_holds_in_90_of_100() -> None:
    """Each line but for chance (two binomial standard errors): 90 % at least, also where the model is wrong."""
    room = 2 * math.sqrt(0.9 * 0.1 / number_told())
    below = {line for line, (share, _) in told().items() if share < 0.90 - room}
    assert below == set()


def test_where_the_model_holds_intervals_are_not_too_wide_either() -> None:
    """Nothing wrong but scatter: 93 to 97 %, but for chance. Actuation force and friction, whose scatter is taken to be
    larger than it was drawn, and intervals that allow for drift where there is none, may hold more often, not less."""
    room = 2.5 * math.sqrt(0.95 * 0.05 / number_told())
    marked = {line: share for line, (share, mark) in told().items() if mark}
    assert marked
    assert {line: share for line, share in marked.items() if share < 0.93 - room} == {}
    wide = {line: share for line, share in marked.items() if share > 0.97 + room}
    assert {figure for _, figure in wide} <= {"actuation force", "friction"}


@pytest.mark.parametrize("run", runs(), ids=lambda run: run.name)
def test_a_smaller_run_agrees_with_the_page(run: Run) -> None:
    """So many of each kind again: within three and a half standard errors of the page, directions of one player taken as
    one reading each (they share a day, so that their number says nothing)."""
    page = told()
    for figure, share in run.shares(AGAIN).items():
        said, _ = page[run.name, figure]
        expected = min(max(said, 0.02), 0.98)
        assert abs(share - said) <= 3.5 * math.sqrt(expected * (1 - expected) * (1 / AGAIN + 1 / number_told())), figure
    assert {name for name, _ in page} == {one.name for one in runs()}
