"""Moving between two switches: laws, and what stands in."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.allocation.moving import USUAL_INTERCEPT_S, USUAL_SLOPE_S_PER_BIT, line_of, movement_time_s, spacing_m
from stickwright.errors import BadInput
from stickwright.model.player import Press

LENGTH = st.floats(0.001, 0.5)
LINE = st.tuples(st.floats(-1.0, 1.0), st.floats(0.0, 2.0))


@given(distance=LENGTH, further=LENGTH, width=LENGTH, line=LINE)
def test_further_takes_no_less_time(distance, further, width, line):
    """Law: at the same switch, a longer way never takes less time."""
    named = {"intercept_s": line[0], "slope_s_per_bit": line[1]}
    near, far = (movement_time_s(way, width, **named) for way in (distance, distance + further))
    assert far >= near >= 0


@given(distance=LENGTH, width=LENGTH, wider=LENGTH, line=LINE)
def test_a_wider_switch_takes_no_more_time(distance, width, wider, line):
    """Law: over the same way, a wider switch never takes more time."""
    named = {"intercept_s": line[0], "slope_s_per_bit": line[1]}
    narrow, wide = (movement_time_s(distance, face, **named) for face in (width, width + wider))
    assert wide <= narrow


def test_a_line_below_zero_is_no_time():
    """A fitted intercept may be below 0, a time may not."""
    assert movement_time_s(0.02, 0.02, intercept_s=-0.4, slope_s_per_bit=0.1) == 0.0


def test_the_players_own_line_wins():
    """A measured line is used as it is; a missing half, or all of it, is marked."""
    own = line_of(Press(move_intercept_s=0.3, move_slope_s_per_bit=0.5))
    assert own == (0.3, 0.5, None)
    half = line_of(Press(move_slope_s_per_bit=0.5))
    assert half[:2] == (USUAL_INTERCEPT_S, 0.5)
    assert "before a move was not measured" in said(half.assumed)
    for press in (None, Press(), Press(move_intercept_s=0.3)):
        line = line_of(press)
        assert line[:2] == (USUAL_INTERCEPT_S, USUAL_SLOPE_S_PER_BIT)
        assert "healthy adults' hands" in said(line.assumed)
        assert "not for predicting" in said(line.assumed)


def test_spacing_by_hand():
    """Two 45 mm faces with 28 mm of scatter: 4.9 x 28 = 137 mm apart; with 5 mm of scatter they touch at 45 mm; a 12 and
    a 70 mm face without a reading stand 70 mm apart."""
    assert spacing_m(0.045, 0.045, 0.028) == pytest.approx(0.137, abs=5e-4)
    assert spacing_m(0.045, 0.045, 0.005) == 0.045
    assert spacing_m(0.012, 0.070, None) == 0.070


@given(a=LENGTH, b=LENGTH, scatter=st.floats(0.0, 0.1), more=st.floats(0.0, 0.1))
def test_more_scatter_never_brings_switches_nearer(a, b, scatter, more):
    """Law: the order of two switches does not matter, and more scatter never brings them nearer."""
    assert spacing_m(a, b, scatter) == spacing_m(b, a, scatter)
    assert spacing_m(a, b, scatter + more) >= spacing_m(a, b, scatter)


def test_a_width_that_cannot_be():
    """Every impossible length is told at once."""
    with pytest.raises(BadInput) as told:
        spacing_m(-0.01, 0.02, float("nan"))
    assert [problem.found for problem in told.value.problems] == ["-0.01", "nan"]
    assert "a length of 0 or more" in str(told.value)
