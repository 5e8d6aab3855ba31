"""The curve from measured scatter: equal precision, limits, and what is said when levels are too few."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import place
from stickwright.codes.message import message
from stickwright.codes.tunings import Tunings
from stickwright.errors import BadInput
from stickwright.tuning.curve import (
    RATIO_LIMIT,
    curve_table,
    equal_precision,
    equal_precision_input,
    fit_scatter,
    inner_jump,
)

scatters = st.floats(0.001, 0.2)
LEVELS = np.array([0.2, 0.4, 0.6, 0.8, 1.0])


@given(a=scatters, b=st.one_of(st.just(0.0), st.floats(1e-4, 0.5)))
def test_output_scatter_is_the_same_at_every_level(a, b):
    """Law, by differences: slope times scatter does not change along the range."""
    x = np.linspace(0.001, 0.999, 50)
    slope = (equal_precision(x + 1e-6, a, b) - equal_precision(x - 1e-6, a, b)) / 2e-6
    assert slope * (a + b * x) == pytest.approx(np.full(50, slope[0] * (a + b * x[0])), rel=1e-5)


@given(a=scatters, b=st.floats(0.0, 0.5), y=st.floats(0.0, 1.0))
def test_curve_and_its_inverse(a, b, y):
    """Law: there and back."""
    assert equal_precision(equal_precision_input(y, a, b), a, b) == pytest.approx(y, abs=1e-9)


@given(a=scatters, b=st.floats(0.0, 0.5))
def test_curve_rises_from_0_to_1(a, b):
    """Law: monotone, with fixed ends, and never below the straight line."""
    curve_in, curve_out = curve_table(b / a)
    assert (curve_in[0], curve_out[0], curve_in[-1]) == (0.0, 0.0, 1.0)
    assert curve_out[-1] == pytest.approx(1.0, abs=1e-12)
    assert (np.diff(curve_out) > 0).all()
    assert (np.array(curve_out) >= np.array(curve_in) - 1e-12).all()


def test_fit_finds_the_line_it_was_made_from():
    """By simulation: 200 sets of holds with scatter 2 % + 10 %: unbiased, and intervals hold the truth."""
    rng = np.random.default_rng(5)
    truth = 0.02 + 0.10 * LEVELS
    fits = [fit_scatter(LEVELS, truth * np.sqrt(rng.chisquare(40, 5) / 40), np.full(5, 40.0), rng) for _ in range(200)]
    assert np.mean([fit.b.value for fit in fits]) == pytest.approx(0.10, abs=0.006)
    assert np.mean([fit.a.value for fit in fits]) == pytest.approx(0.02, abs=0.003)
    assert np.mean([fit.b.low <= 0.10 <= fit.b.high for fit in fits]) > 0.95 - 3 * math.sqrt(0.0475 / 200)


@given(factor=st.floats(0.2, 3.0))
def test_twice_the_scatter_is_the_same_curve(factor):
    """Law: only the growth in proportion matters."""
    sds = np.array([0.035, 0.062, 0.079, 0.105, 0.117])
    once, again = (fit_scatter(LEVELS, times * sds, np.full(5, 60.0)) for times in (1.0, factor))
    assert again.ratio == pytest.approx(once.ratio, rel=1e-6)
    assert again.a.value == pytest.approx(factor * once.a.value, rel=1e-6)


def test_same_readings_same_page():
    """The intervals are drawn with a fixed seed when none is given."""
    sds = [0.035, 0.062, 0.079, 0.105, 0.117]
    assert fit_scatter(LEVELS, sds, [60] * 5) == fit_scatter(LEVELS, sds, [60] * 5)


def test_scatter_that_does_not_grow_gives_a_straight_line():
    """The same or falling scatter: no curve, and the sentence says which holds would tell."""
    fit = fit_scatter(LEVELS, [0.05, 0.048, 0.051, 0.047, 0.046], [30] * 5)
    assert fit.ratio == 0.0
    assert fit.b.low == 0.0
    assert fit.findings[0].text == message(Tunings.straight_curve)


def test_steep_start_is_limited():
    """Nearly no scatter at the centre: the curve starts three times as steep as a straight line, no steeper."""
    fit = fit_scatter(LEVELS, 0.1 * LEVELS + 0.0001, [200] * 5)
    assert fit.ratio == RATIO_LIMIT
    assert RATIO_LIMIT / math.log1p(RATIO_LIMIT) == pytest.approx(3.0, abs=0.005)
    assert fit.findings[0].about == "curve_limited"


@pytest.mark.parametrize("levels", [[], [0.5], [0.3, 0.9], [0.5, 0.5, 0.51, 0.49]])
def test_too_few_levels_leave_it_straight(levels):
    """One or two levels cannot show growth: the finding asks for holds at four."""
    fit = fit_scatter(levels, [0.05] * len(levels), [20] * len(levels))
    assert fit.ratio == 0.0
    assert not fit.b.has_interval
    why = message(Tunings.why_few_levels, levels=len(set(np.round(levels, 1))))
    assert fit.b.why == why
    assert fit.findings[0].text == message(Tunings.few_levels, why=why)


def test_one_level_tells_its_scatter():
    """By hand: 0.03 of 10 and 0.05 of 30 readings' freedom at one level are the root of (10 x 0.0009 + 30 x 0.0025) / 40."""
    fit = fit_scatter([0.5, 0.5], [0.03, 0.05], [11, 31])
    assert fit.a.value == pytest.approx(math.sqrt((10 * 0.0009 + 30 * 0.0025) / 40), rel=0.02)


def test_lists_of_different_length_are_refused():
    """A level without its scatter."""
    with pytest.raises(BadInput, match="2 levels, 1 standard deviations, 2 degrees"):
        fit_scatter([0.2, 0.4], [0.05], [10, 10])


def test_unusable_numbers_are_refused():
    """No scatter at all, falling scatter, a level in per cent: all named."""
    with pytest.raises(BadInput) as refusal:
        equal_precision([50.0], a=0.0, b=-0.1)
    assert [place(problem) for problem in refusal.value.problems] == ["a", "b", "level"]


def test_inner_jump():
    """Just above the game's own dead zone; nothing where there is none or it is not known; per cent refused."""
    assert inner_jump(0.15) == pytest.approx(0.17, abs=1e-12)
    assert (inner_jump(0.0), inner_jump(None)) == (0.0, 0.0)
    with pytest.raises(BadInput, match=r"Write 20% as 0.20"):
        inner_jump(20)
