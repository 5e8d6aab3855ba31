"""The sampler of mutants: its interval is the published one, and the rooms it names are there."""

from __future__ import annotations

import ast

import make_mutants
import pytest
from scipy.stats import binomtest


@pytest.mark.parametrize("noticed, of", [(9, 10), (0, 7), (7, 7), (108, 120), (1, 1)])
def test_interval_is_wilsons(noticed: int, of: int) -> None:
    """scipy's score interval of a share."""
    wanted = binomtest(noticed, of).proportion_ci(0.95, method="wilson")
    assert make_mutants.wilson(noticed, of) == pytest.approx((wanted.low, wanted.high), abs=1e-6)


@pytest.mark.parametrize("room", make_mutants.ROOMS)
def test_modules_and_tests_of_a_room_are_there(room: str) -> None:
    """A file renamed must not fall out of the sample, or out of its tests, in silence."""
    modules, tests = make_mutants.ROOMS[room]
    for pattern in modules:
        assert list((make_mutants.ROOT / "src" / "stickwright").glob(pattern)), pattern
    for path in tests:
        assert (make_mutants.ROOT / "tests" / path).exists(), path


def test_a_changed_text_is_not_a_changed_sum() -> None:
    """Two functions that differ in their names and texts alone are one; another number makes another."""
    one, text, number = (
        ast.parse(f"def {name}(x):\n    return x + {n}, '{words}'").body[0]
        for name, n, words in (("a", 1, "far"), ("b", 1, "near"), ("c", 2, "far"))
    )
    assert make_mutants.without_text(one) == make_mutants.without_text(text) != make_mutants.without_text(number)
