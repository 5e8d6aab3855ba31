"""One effective width, wherever bits are counted."""

from __future__ import annotations

import math
from pathlib import Path

import stickwright
from stickwright.model.effective_width import EFFECTIVE_WIDTHS


def test_effective_width_of_a_normal_distribution() -> None:
    """Entropy of the normal distribution: a uniform one of sqrt(2 pi e) standard deviations is as uncertain
    (Shannon 1948); ISO 9241-411 prints 4.133, and exact is 4.1327."""
    assert math.isclose(EFFECTIVE_WIDTHS, math.sqrt(2 * math.pi * math.e), abs_tol=0.0005)


def test_effective_width_stands_in_one_place() -> None:
    """The figure is written once as a number; every other module takes it from there."""
    package = Path(stickwright.__file__).parent
    lines = [
        (path.name, line)
        for path in package.rglob("*.py")
        for line in path.read_text(encoding="utf-8").splitlines()
        if "4.133" in line and "effective width 4.133 sd" not in line
    ]
    assert lines == [("effective_width.py", "EFFECTIVE_WIDTHS = 4.133")]
