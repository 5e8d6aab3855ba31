"""Whether a band of ages may be a child's: written as people write it."""

from __future__ import annotations

import pytest

from stickwright.model.ages import age_group


@pytest.mark.parametrize(
    "band,group",
    [
        ("child", "child"), ("Teenager", "child"), ("school age", "child"), ("under 12", "child"), ("6-11", "child"),
        ("6 to 11", "child"), ("8", "child"), ("16-25", "child"), ("under 25", "child"), ("18 months", "child"),
        ("adult", "adult"), ("older adult", "adult"), ("young adult", "adult"), ("18+", "adult"), ("over 65", "adult"),
        ("40s", "adult"), ("30 to 39", "adult"), ("born 2014", "not understood"), ("medium", "not understood"),
        ("an adult with the habits of a child", "not understood"), ("  ", None),
    ],
)  # fmt: skip
def test_bands(band: str, group: str | None) -> None:
    """A band that reaches below 18 counts as a child's; what names no age is not guessed at."""
    assert age_group(band) == group
