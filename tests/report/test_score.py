"""The score as printed is a sum that adds up, digit by digit: over random sharings, and by hand where rounding would break it."""

from __future__ import annotations

import re
import sys
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sample_sharing import SHARED

from stickwright.catalogue import say
from stickwright.model.points import tenths
from stickwright.model.sharing import Placement, Sharing, Term
from stickwright.report.score import adding_up, score_of, score_words, terms_words

sys.path.insert(0, str(Path(__file__).parents[1] / "allocation"))
from random_cases import random_case, random_ranking
from small_cases import shared

NUMBER = r"(\d+(?:\.\d)?)"


def printed_sum(text: str) -> tuple[Decimal, Decimal]:
    """What stands before the equals sign, and the sum of what stands behind it; brackets hold reasons."""
    bare = re.sub(r"\([^()]*(?:\([^()]*\)[^()]*)*\)", "", text)
    total, parts = re.split(r" = ", bare, maxsplit=1)
    signed = re.findall(rf"(?:^|(?<= ))([−+]?) ?{NUMBER} [^\d−+ ]", parts)
    return number(total), sum((Decimal(value) * (-1 if sign == "−" else 1) for sign, value in signed), Decimal(0))


def number(text: str) -> Decimal:
    return Decimal(text.replace("Score: ", "").replace("−", "-").split(" ")[0])


def holds(found: Sharing) -> None:
    """Every sum as printed, and every figure within a tenth of what it is."""
    score = score_of(found)
    assert score.tenths == tenths(found.points)
    assert sum(part.tenths for part in (*score.actions, *score.once)) == score.tenths
    for one, part in zip(found.placements, score.actions, strict=True):
        assert abs(part.tenths / 10 - one.points) < 0.1
        assert not part.terms or sum(figure for _, figure in part.terms) == part.tenths
        for term, figure in part.terms:
            assert abs(figure / 10 - term.points) < 0.101  # its part was rounded to a thousandth
        if part.terms and " = " in say(terms_words(part)):
            total, parts = printed_sum(say(terms_words(part)))
            assert total == parts, part
    for term, part in zip(found.shared, score.once, strict=True):
        assert abs(part.tenths / 10 - term.points) < 0.1


@given(st.integers(0, 10**6))
@settings(max_examples=60)
def test_every_printed_sum_adds_up_over_random_sharings(seed: int) -> None:
    """Law: what is printed before an equals sign is the sum of what is printed behind it, whatever was shared out."""
    this = random_case(seed, most_actions=8, left=0.8)
    found = shared(
        this, random_ranking(seed, this), usable=[site.name for site in this.player.site if site.cleared != "no"]
    )
    if found.placements and found.proven and found.points == found.points:
        holds(found)


@pytest.mark.parametrize("name", SHARED)
def test_sheets_for_looking_at_add_up(name: str) -> None:
    """The invented sheets of these tests too."""
    found = SHARED[name]().sharing
    assert found is not None
    total = sum(one.points for one in found.placements) + sum(term.points for term in found.shared)
    assert total == pytest.approx(found.points)
    holds(found)


@given(st.lists(st.floats(-50, 50), max_size=30), st.booleans())
def test_rounding_never_moves_a_number_by_more_than_one(values: list[float], up: bool) -> None:
    """Law: the whole numbers add up to the total, each next to its value, and whole ones stay as they are."""
    values = [round(value, 2) for value in values]
    total = (
        -int(-sum(round(100 * value) for value in values) // 100) if up else sum(round(100 * v) for v in values) // 100
    )
    found = adding_up(values, total)
    assert sum(found) == total
    assert all(abs(one - value) < 1 for one, value in zip(found, values, strict=True))


def test_three_thirds() -> None:
    """By hand: three parts of 2.35 are 7.05; printed 7 (half to even), so two stay and one goes down, never 2.4 each."""
    told = tuple(Placement(name, "site", points=2.35, terms=(Term("importance", 2.35, ""),)) for name in "abc")
    found = Sharing(
        told, points=7.05, bound=7.05, proven=True, solved="", alternatives=(), clash=None, pairs=(), loads=(),
        elsewhere=(), wiring=None, sentence="", findings=(), assumptions=(), cautions=(),
    )  # fmt: skip
    assert say(score_words(score_of(found))) == "7 = 2.4 a + 2.3 b + 2.3 c"
