"""An estimate is a number with its interval: what is missing is None, so that it equals itself and JSON can hold it."""

import copy
import math

import pytest

from stickwright.codes.estimate import Estimate, Interval


def test_what_is_not_a_number_is_missing():
    """NaN, as arithmetic leaves it, becomes None; the estimate equals its copy."""
    found = Estimate(math.nan, math.nan, math.nan, math.nan, why="nobody read it")
    assert (found.value, found.low, found.high, found.level) == (None, None, None, None)
    assert found == copy.deepcopy(found) == Estimate(None, None, None, None, why="nobody read it")
    assert found.interval is None
    assert all(math.isnan(one) for one in (found.number, found.lower, found.upper))


def test_no_upper_end_is_said_by_a_field():
    """An infinite upper end is none, said by `endless`; arithmetic has it back. An end found later takes it away."""
    found = Estimate(2.0, 1.0, math.inf)
    assert (found.high, found.endless, found.upper, found.interval) == (None, True, math.inf, None)
    assert not Estimate(2.0, 1.0, 3.0, endless=True).endless


@pytest.mark.parametrize("value", [0.0, -1.5, 2.0])
def test_a_known_figure_stays(value):
    """What is finite is what was given."""
    found = Estimate(value, value - 1, value + 1)
    assert (found.number, found.interval) == (value, Interval(value - 1, value + 1))
