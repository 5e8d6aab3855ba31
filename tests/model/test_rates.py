"""Rates in words: what the interval allows is never left out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.catalogue.en import writer
from stickwright.codes.estimate import Estimate


@pytest.mark.parametrize(
    ("rate", "said"),
    [
        (Estimate(0.22, 0.05, 0.9), "0.22 false inputs a minute (up to 0.9)"),
        (Estimate(0.05, 0.0, 1.4), "3 false inputs an hour (up to 1.4 a minute)"),
        (Estimate(0.05, 0.02, 0.06), "3 false inputs an hour (up to 4)"),
        (Estimate(0.0, 0.0, 9.0), "up to 9 false inputs a minute"),
        (Estimate(0.0, 0.0, 1 / 60), "up to 1 false input an hour"),
        (Estimate(0.001, 0.0, 0.002), "less than one false input an hour"),
        (Estimate(2e5, 1e4, 1e6), "false input all the time"),
        (Estimate(0.3, 0.0, 1e6), "an unknown number of false inputs (0.3 false inputs a minute, or anything up to all the time: "
                                  "measure 60 s at rest)"),
        (Estimate.unbounded(0.0, "given as one figure"),
         "an unknown number of false inputs (given as one figure: measure 60 s at rest)"),
        (Estimate.missing("not recorded"), "an unknown number of false inputs (not recorded: measure 60 s at rest)"),
    ],
)  # fmt: skip
def test_a_rate_carries_its_upper_end(rate: Estimate, said: str) -> None:
    """Invented rates; by hand: 0.05 a minute is 3 an hour, 0.06 is 3.6, told as 4."""
    assert writer.rate(rate, one="false input", many="false inputs", why=rate.why or "") == said


@given(value=st.floats(0, 1e6), over=st.floats(0, 1e6))
def test_a_small_number_is_said_only_where_the_upper_end_is_small(value: float, over: float) -> None:
    """Law: 'less than one' is said only if the upper end is less than one an hour; never 'none', never 'nan'."""
    said = writer.rate(Estimate(value, 0.0, value + over), one="false press", many="false presses")
    assert ("less than one" in said) == (value + over < 0.5 / 60)
    for never in ("nan", "none", "no false", "presss"):
        assert never not in said
