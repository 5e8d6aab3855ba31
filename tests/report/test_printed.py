"""How a number is printed."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.codes.estimate import Estimate
from stickwright.report.printed import centre_words, folded, in_unit, label_of, plain, shown, wrapped

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


@pytest.mark.parametrize(
    ("rate", "said"),
    [
        (Estimate(0.0, 0.0, 9.0), "up to 9.0 /min"),
        (Estimate(0.004, 0.0, 0.009), "under 0.01 /min"),
        (Estimate(0.5, 0.0, 9.0), "0.50 /min (up to 9.0)"),
        (Estimate(0.0, 0.0, 1e6), "not known (anything up to always on: measure 60 s at rest)"),
        (Estimate(0.5, 0.2, 1e6), "0.50 /min (0.20 to always on)"),
        (Estimate.unbounded(0.0, "one recording"), "under 0.01 /min (no interval: one recording)"),
    ],
)
def test_a_rare_event_is_never_printed_without_its_upper_end(rate: Estimate, said: str) -> None:
    """What could be nine a minute is not 'under 0.01'; what could be all the time is not known."""
    assert shown(rate, "a_minute") == said


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


def test_certain_number_has_no_interval() -> None:
    """Both ends of the interval are the value: the number alone; a narrow one of few per cent keeps a decimal."""
    assert shown(Estimate(1.0, 1.0, 1.0, n=500), "percent") == "100%"
    assert shown(Estimate(0.035, 0.031, 0.039), "percent") == "3.5% (3.1 to 3.9)"
    assert shown(Estimate(0.07, 0.05, 0.09), "percent") == "7% (5 to 9)"


def test_spread_of_models_is_no_interval() -> None:
    """A hold time carried along published curves: its ends are a spread between models, without a coverage."""
    hold = Estimate(38.0, 7.0, 270.0, level=math.nan, assumed="carried")
    assert shown(hold, "s") == "38 s (7 to 270, spread of models), assumed"


@pytest.mark.parametrize(
    ("x", "y", "said"),
    [
        (Estimate(0.035, 0.034, 0.036), Estimate(-0.022, -0.031, -0.013), "3.5% (3.4 to 3.6) right, 2.2% (1.3 to 3.1) back"),
        (Estimate(-0.012, -0.0121, -0.0119), Estimate(0.02, 0.0199, 0.0201), "1.2% left, 2.0% forward, each to within 0.1%"),
        (Estimate(0.01, -0.004, 0.024), Estimate.missing("y was not recorded"),
         "1.0% right (0.4 left to 2.4 right), forward or back not known (y was not recorded)"),
    ],
)  # fmt: skip
def test_centre_is_told_by_side(x: Estimate, y: Estimate, said: str) -> None:
    """No minus sign: left, right, forward, back, with the same digits, and a side of its own for each end when the
    interval holds zero."""
    assert centre_words(x, y, "percent") == said


def test_long_name_is_folded_before_it_is_cut() -> None:
    """All of a long label stands on two lines where it has room; only beyond that is it cut."""
    label = "3 small stick with the long lead + foam ball + extension +25 mm"
    assert " ".join(folded(label, 34).split("\n")) == label
    assert folded(label, 20).endswith("…")
    assert all(len(line) <= 20 for line in folded(label, 20).split("\n"))
