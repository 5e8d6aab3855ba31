"""The whole response: its order, its laws, and the one-pass kernel against plain Python."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from said import place
from stickwright.errors import BadInput
from stickwright.tuning.filters import Filter, one_euro
from stickwright.tuning.shaping import Response, gain_towards, placed, respond, shaped, shaped_one_euro

from . import plain

levels = st.floats(-1.5, 1.5).map(lambda level: round(level, 6))  # no stick tells less than a millionth
outputs = arrays(np.float64, st.tuples(st.integers(1, 40), st.just(2)), elements=levels)
zones = st.floats(0.0, 0.8)
ratios = st.one_of(st.just(0.0), st.floats(0.01, 50.0))
gains = st.lists(st.floats(0.5, 3.0), min_size=3, max_size=8)


def evenly(count):
    return tuple(2 * math.pi * i / count for i in range(count))


def turned(xy, angle_rad):
    cos, sin = math.cos(angle_rad), math.sin(angle_rad)
    return xy @ np.array([[cos, sin], [-sin, cos]])


def test_one_pass_with_nothing_set_is_the_filter_alone():
    """No dead zone, no curve; and no output beyond the rim, which a stick pushed into a corner would give."""
    times_s = np.arange(200) * 0.01
    xy = np.column_stack([np.minimum(1.0, 2 * times_s), np.minimum(1.0, times_s)])
    by_itself = one_euro(xy, times_s, 2.0, 1.0)
    length = np.hypot(*by_itself.T)
    assert length.max() > 1.2
    assert length[length > 0].min() < 0.01
    expected = by_itself / np.maximum(1.0, length)[:, None]
    assert shaped_one_euro(xy, times_s, 2.0, 1.0) == pytest.approx(expected, abs=1e-12)


@given(xy=outputs)
def test_nothing_set_changes_nothing(xy):
    """Law: a response with nothing set returns what came in, to the last bit, corners and all."""
    assert np.array_equal(respond(xy, np.arange(len(xy)) * 0.01, Response()), xy)


@given(xy=outputs, dead_zone=zones, jump=zones, ratio=ratios)
def test_dead_zone_and_curve_equal_the_plain_form(xy, dead_zone, jump, ratio):
    """The fast dead zone and curve are the formula, line by line."""
    expected = np.array(plain.shaped(xy.tolist(), dead_zone, jump, ratio))
    assert shaped(xy, dead_zone, jump, ratio) == pytest.approx(expected, abs=1e-9)


@given(
    seed=st.integers(0, 2**32 - 1), dead_zone=zones, jump=zones, ratio=ratios, cutoff_hz=st.floats(0.2, 10),
    beta=st.floats(0, 10), limit=st.floats(0.3, 1.5), holes=st.booleans(),
)  # fmt: skip
def test_one_pass_equals_the_steps_in_plain_python(seed, dead_zone, jump, ratio, cutoff_hz, beta, limit, holes):
    """Dead zone, curve, 1-euro filter and limit in one pass: the same as one after the other, to 1e-9."""
    rng = np.random.default_rng(seed)
    xy = np.cumsum(rng.normal(0, 0.1, (80, 2)), axis=0)
    if holes:
        xy[rng.random(80) < 0.1] = np.nan
    times_s = np.cumsum(rng.uniform(0.002, 0.04, 80))
    steps = plain.one_euro(plain.shaped(xy.tolist(), dead_zone, jump, ratio), times_s, cutoff_hz, beta, 1.0)
    expected = np.array(plain.limited(steps, limit))
    found = shaped_one_euro(
        xy, times_s, cutoff_hz, beta, dead_zone=dead_zone, inner_jump=jump, curve_ratio=ratio, outer_limit=limit
    )
    assert found == pytest.approx(expected, abs=1e-9, nan_ok=True)


def test_one_pass_over_a_long_stream():
    """Fifty thousand samples, dead zone crossed many times and the rim passed: still equal to 1e-9."""
    rng = np.random.default_rng(3)
    xy = 0.6 * np.column_stack([np.sin(np.arange(50000) / 70), np.cos(np.arange(50000) / 90)])
    xy += rng.normal(0, 0.03, xy.shape)
    times_s = np.arange(50000) * 0.01
    steps = plain.one_euro(plain.shaped(xy.tolist(), 0.1, 0.1, 5.0), times_s, 1.0, 0.5, 1.0)
    found = shaped_one_euro(xy, times_s, 1.0, 0.5, dead_zone=0.1, inner_jump=0.1, curve_ratio=5.0, outer_limit=0.5)
    assert found == pytest.approx(np.array(plain.limited(steps, 0.5)), abs=1e-9)


@given(dead_zone=zones, ratio=ratios, gain=gains, turn=st.floats(-3, 3), at=st.floats(0, 1.4), towards=st.floats(-4, 4))
def test_response_is_continuous(dead_zone, ratio, gain, turn, at, towards):
    """Law: without a jump, a tiny movement of the stick is a tiny movement of the output, everywhere."""
    settings = Response((0.05, -0.02), turn, evenly(len(gain)), tuple(gain), dead_zone, 0.0, ratio, outer_limit=1.0)
    here = at * np.array([math.cos(towards), math.sin(towards)])
    near = here + np.array([[0.0, 0.0], [1e-7, 0.0], [0.0, 1e-7], [-1e-7, 1e-7]])
    out = np.concatenate([respond(row[None, :], [0.0], settings) for row in near])
    # Steepest: gain 3, its change with direction, the stretch beyond the dead zone, the curve's first slope.
    slope = 60.0 / (1 - dead_zone) * max(1.0, ratio / math.log1p(ratio) if ratio else 1.0)
    assert np.abs(out - out[0]).max() <= 2e-7 * slope


@given(dead_zone=zones, jump=zones, ratio=ratios)
def test_more_deflection_is_never_less_output(dead_zone, jump, ratio):
    """Law: the curve rises all the way, to 1 at full deflection."""
    out = shaped(np.column_stack([np.linspace(0, 1.2, 400), np.zeros(400)]), dead_zone, jump, ratio)[:, 0]
    assert (np.diff(out) >= -1e-12).all()
    assert shaped([(1.0, 0.0)], dead_zone, jump, ratio)[0, 0] == pytest.approx(1.0, abs=1e-9)


@given(xy=outputs, dead_zone=zones, ratio=ratios, angle_rad=st.floats(-4, 4))
def test_dead_zone_and_curve_know_no_direction(xy, dead_zone, ratio, angle_rad):
    """Law: turned movement comes out turned."""
    expected = turned(shaped(xy, dead_zone, 0.0, ratio), angle_rad)
    # A sample within rounding of the edge may fall on either side of it; without a jump that changes nothing.
    assert shaped(turned(xy, angle_rad), dead_zone, 0.0, ratio) == pytest.approx(expected, abs=1e-9)


@given(xy=outputs, limit=st.floats(0.2, 1.0))
def test_output_stays_inside_the_limit(xy, limit):
    """Law: nothing comes out beyond the outer limit, and its direction is kept."""
    out = respond(xy, np.arange(len(xy)) * 0.01, Response(outer_limit=limit))
    assert np.hypot(*out.T).max() <= limit * (1 + 1e-12)
    assert xy[:, 0] * out[:, 1] == pytest.approx(xy[:, 1] * out[:, 0], abs=1e-12)


@given(gain=gains, towards=arrays(np.float64, 20, elements=st.floats(-7, 7)))
def test_gain_is_periodic_and_between_its_neighbours(gain, towards):
    """Law: a full turn later the gain is the same, and it never leaves the range of what was measured."""
    known = evenly(len(gain))
    found = gain_towards(towards, known, gain)
    assert gain_towards(towards + 2 * math.pi, known, gain) == pytest.approx(found, abs=1e-9)
    assert min(gain) - 1e-9 <= found.min()
    assert found.max() <= max(gain) + 1e-9
    assert gain_towards(known, known, gain) == pytest.approx(np.array(gain), abs=1e-9)


def test_order_centre_then_rotation_then_range():
    """By hand: rest (0.1, 0), base a quarter turn off, reach 0.4 forward: the forward push fills the output."""
    quarter = math.pi / 2
    settings = Response((0.1, 0.0), quarter, evenly(4), (1.0, 2.5, 1.0, 1.0))
    assert placed([(0.5, 0.0)], settings) == pytest.approx(np.array([[0.0, 1.0]]), abs=1e-12)


def test_inner_jump_leaps_over_the_games_own_dead_zone():
    """Just outside our dead zone the output is beyond 22 %; inside it is nothing."""
    settings = Response(dead_zone=0.04, inner_jump=0.22, outer_limit=1.0)
    out = respond([(0.04, 0.0), (0.0401, 0.0), (1.0, 0.0)], [0.0, 0.01, 0.02], settings)[:, 0]
    assert out[0] == 0.0
    assert out[1:] == pytest.approx([0.22, 1.0], abs=1e-3)


@pytest.mark.parametrize("kind", ["low-pass", "butterworth", "notch"])
def test_other_filters_come_after_the_curve_and_before_the_limit(kind):
    """The order is the same whichever filter is set."""
    from stickwright.tuning.filters import filtered

    rng = np.random.default_rng(8)
    xy, times_s = rng.uniform(-1, 1, (200, 2)), np.arange(200) * 0.01
    by = Filter(kind, 6.0)
    settings = Response(dead_zone=0.1, curve_ratio=3.0, filter=by, outer_limit=0.4)
    expected = plain.limited(filtered(plain.shaped(xy.tolist(), 0.1, 0.0, 3.0), times_s, by).tolist(), 0.4)
    assert respond(xy, times_s, settings) == pytest.approx(np.array(expected), abs=1e-9)


def test_empty_cells_pass_as_empty():
    """A dropped sample stays empty through every step."""
    gain = Response((0.1, 0.0), 0.3, evenly(4), (1.0, 2.0, 1.0, 1.0), 0.05, 0.0, 2.0, Filter("1-euro", 1.0, 1.0), 1.0)
    out = respond([(0.5, 0.0), (math.nan, 0.2), (0.5, 0.1)], [0.0, 0.01, 0.02], gain)
    assert np.isnan(out).all(axis=1).tolist() == [False, True, False]


def test_settings_out_of_range_are_refused_all_at_once():
    """Per cent typed for shares: every field is named."""
    with pytest.raises(BadInput) as refusal:
        Response(dead_zone=8, inner_jump=22, curve_ratio=-1, outer_limit=0)
    assert [place(problem) for problem in refusal.value.problems] == [
        "dead_zone", "inner_jump", "curve_ratio", "outer_limit",
    ]  # fmt: skip


def test_gain_needs_its_directions():
    """Three gains for two directions cannot be placed; the same direction twice has no one gain."""
    with pytest.raises(BadInput, match="found 3 for 2 directions"):
        Response(direction_rad=(0.0, 1.0), gain=(1.0, 1.0, 1.0))
    with pytest.raises(BadInput, match="each direction once"):
        gain_towards([0.0], [0.0, 2 * math.pi], [1.0, 2.0])
