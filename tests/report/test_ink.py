"""Words in drawings: as wide as reckoned, at most, and broken so that they fit."""

from __future__ import annotations

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.ft2font import FT2Font

from stickwright.report.ink import TYPE_MM, fitted, text_mm
from stickwright.report.paper import font_folder

WORDS = st.lists(st.text(string.ascii_letters + string.digits, min_size=1, max_size=30), min_size=1, max_size=8)


def measured_mm(text: str, bold: bool) -> float:
    font = FT2Font(f"{font_folder()}/DejaVuSans{'-Bold' if bold else ''}.ttf")
    font.set_size(100, 72)
    font.set_text(text, 0.0)
    return float(font.get_width_height()[0]) / 64 / 100 * TYPE_MM


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize(
    "text",
    ["right button in center cluster", "dome switch with a long name", "missing: extension", "keep empty: same", "A16",
     "left thumb beside the wedge: look, fire", "3.5 mm 2-conductor: 1 ring", "Device and function"],
)  # fmt: skip
def test_reckoned_width_is_a_little_more_than_the_real_one(text: str, bold: bool) -> None:
    """Against the type itself, as FreeType measures it: never less, and at most a seventh more."""
    real = measured_mm(text, bold)
    assert real <= text_mm(text, bold) <= real * 1.15


@given(WORDS, st.floats(12.0, 60.0), st.integers(1, 5))
def test_lines_fit_and_lose_nothing_unsaid(words: list[str], room_mm: float, most: int) -> None:
    """Law: no line is wider than its room, none is too many, and all letters are there or the last line ends in dots."""
    text = " ".join(words)
    lines = fitted(text, room_mm, most)
    assert 1 <= len(lines) <= most
    assert all(text_mm(line) <= room_mm for line in lines)
    if not lines[-1].endswith("…"):
        assert "".join(lines).replace("-", "").replace(" ", "") == text.replace(" ", "")


def test_number_keeps_its_unit() -> None:
    """A line is never broken between a number and its unit."""
    assert fitted("grey extension 1 m", 27.0) == ["grey extension", "1 m"]
