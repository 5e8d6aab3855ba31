"""The family's pages in English are read at grade 6 or below: plain words, an instruction a sentence."""

from __future__ import annotations

import pytest

from reading_level import grade, hold_grade, syllables
from stickwright.planning.plan import plan
from worked_cases import PLAYERS, whole_case


def test_the_formula_on_a_sentence_counted_by_hand() -> None:
    """Ten words, 13 syllables, two sentences: 0.39 x 5 + 11.8 x 1.3 - 15.59 = 1.7."""
    words = "Plug the cable into its socket. Then start the game."
    assert sum(syllables(word) for word in words.split()) == 13
    assert grade([words]) == pytest.approx(0.39 * 5 + 11.8 * 1.3 - 15.59)


@pytest.mark.parametrize("name", PLAYERS)
def test_family_pages_of_the_worked_cases(name: str) -> None:
    """All five."""
    hold_grade(plan(whole_case(name), draws=40))
