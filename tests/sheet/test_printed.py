"""How a number is printed."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.model.estimate import Estimate
from stickwright.sheet.printed import in_unit, label_of, plain, shown, wrapped

ENDINGS = ("n", "mm", "deg", "s", "ms", "percent", "a_minute", "n_per_mm", "", "hz", "foreign")
numbers = st.one_of(st.floats(min_value=-1e9, max_value=1e9), st.just(math.nan), st.just(math.inf))


@given(
    value=numbers, low=numbers, high=numbers, ending=st.sampled_from(ENDINGS), why=st.sampled_from([None, "once only"])
)
def test_no_estimate_prints_as_not_a_number(
    value: float, low: float, high: float, ending: str, why: str | None
) -> None:
    """Whatever an estimate holds, the page shows figures or words, never nan, inf, None or plus-minus zero."""
    words = shown(Estimate(value, low, high, why=why), ending).casefold().split()
    assert not {"nan", "inf", "-inf", "none", "(nan", "(inf", "±"} & {word.strip("(),") for word in words}


def test_estimate_is_printed_with_its_interval() -> None:
    """0.26 N measured between 0.21 and 0.32 N stands as one text, the interval with the value's decimals."""
    assert shown(Estimate(0.26, 0.21, 0.32), "n") == "0.26 N (0.21 to 0.32)"
    assert shown(Estimate(0.0038, 0.0031, 0.0044), "mm") == "3.8 mm (3.1 to 4.4)"


def test_missing_interval_is_a_sentence() -> None:
    """Without an interval the reason is printed, never a spread of zero."""
    text = shown(Estimate.unbounded(0.26, "one reading only."), "n")
    assert text == "0.26 N (no interval: one reading only)"


def test_narrow_interval_gets_a_decimal_more() -> None:
    """An interval that would round to nothing is shown with as many decimals as tell its ends apart."""
    assert shown(Estimate(0.26, 0.259, 0.261), "n") == "0.260 N (0.259 to 0.261)"


def test_assumed_number_is_marked() -> None:
    """A limb stiffness nobody measured carries its mark."""
    assert shown(Estimate(30.0, 15.0, 60.0, assumed="usual"), "n_per_mm").endswith(", assumed")


@pytest.mark.parametrize(
    ("value", "said"), [(0.0, "under 0.01 /min"), (0.004, "under 0.01 /min"), (0.43, "0.43 /min"), (6e7, "always on")]
)
def test_false_input_is_printed_as_people_count(value: float, said: str) -> None:
    """Rare false input is 'under 0.01 a minute', a stick never at rest is 'always on'."""
    assert plain(value, "a_minute") == said


def test_units_are_those_of_the_one_table() -> None:
    """9.80665 mN is one gram-force (CGPM 1901), 1 degree is pi/180."""
    assert in_unit(9.80665e-3, "gf") == pytest.approx(1.0, rel=1e-12)
    assert in_unit(math.pi / 180, "deg") == pytest.approx(1.0, rel=1e-12)
    with pytest.raises(KeyError, match="no unit ending"):
        label_of("furlong")


def test_terminal_lines_are_short() -> None:
    """No line is longer than the terminal."""
    text = wrapped(["word " * 60], 80, "  ", "    ")
    assert max(map(len, text.splitlines())) <= 80
