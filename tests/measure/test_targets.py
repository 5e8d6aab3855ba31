"""Where targets stand and how they move."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.signal import periodogram

from said import place
from stickwright.errors import BadInput
from stickwright.measure.targets import (
    Cursor,
    TargetReach,
    cursor_path,
    distance_for,
    reach_towards,
    ring_of_targets,
    sum_of_sines,
    width_for,
)  # fmt: skip
from stickwright.trace.pointing import index_of_difficulty


@given(half=st.integers(1, 15), distance=st.floats(0.05, 2.0))
def test_every_target_once_and_all_ways_alike(half, distance):
    """Law: with an odd number every target is visited once before the first comes again, and all movements are equally long."""
    count = 2 * half + 1
    places = np.array(ring_of_targets(count, distance))
    assert len(places) == count + 1
    assert len({(round(x, 9), round(y, 9)) for x, y in places}) == count
    np.testing.assert_allclose(places[-1], places[0], rtol=0, atol=1e-12)
    np.testing.assert_allclose(np.hypot(*np.diff(places, axis=0).T), distance, rtol=1e-9)
    assert np.ptp(np.hypot(*places.T)) < 1e-9


@pytest.mark.parametrize("count, found", [(8, "found 8"), (1, "found 1"), (0, "found 0")])
def test_an_even_number_is_refused(count, found):
    """An even number would go to and fro between two targets: refused, with the number that works."""
    with pytest.raises(BadInput, match=f"{found}, expected an odd number, 3 or more. Use 9."):
        ring_of_targets(count, 1.0)


@given(bits=st.floats(0.5, 6.0), width=st.floats(0.01, 1.0))
def test_distances_give_the_wanted_bits(bits, width):
    """Law: the index of difficulty of the distance worked out is the one that was wanted, and width and distance are inverse."""
    assert index_of_difficulty(distance_for(bits, width), width) == pytest.approx(bits, rel=1e-9)
    assert width_for(bits, distance_for(bits, width)) == pytest.approx(width, rel=1e-9)


@pytest.mark.parametrize("pace, turns", [("calm", ([3, 7, 13], [5, 11, 17])), ("brisk", ([5, 13, 29], [7, 17, 31]))])
def test_the_path_holds_three_sines_an_axis(pace, turns):
    """scipy's periodogram of one minute finds exactly three lines on each axis, at the frequencies meant, and no other."""
    times_s = np.arange(0, 60, 0.02)
    places = sum_of_sines(11, pace=pace).at(times_s)
    for axis in (0, 1):
        frequency_hz, power = periodogram(places[:, axis], fs=50.0)
        lines = np.flatnonzero(power > 1e-9 * power.max())
        np.testing.assert_allclose(frequency_hz[lines] * 60, turns[axis], rtol=1e-9)


def test_no_sine_is_a_multiple_of_another():
    """Nothing in the path repeats at the rhythm of something else, on either axis, so that it cannot be learnt by heart."""
    for pace in ("calm", "brisk"):
        every = sorted(f for row in sum_of_sines(1, pace=pace).frequency_hz for f in row)
        ratios = [b / a for k, a in enumerate(every) for b in every[k + 1 :]]
        assert min(abs(ratio - round(ratio)) for ratio in ratios) > 0.02


def test_the_path_is_calm():
    """The calm path never goes faster than a whole field's half-width a second (1 a second)."""
    times_s = np.arange(0, 60, 0.01)
    for seed in range(20):
        speed = np.hypot(*np.gradient(sum_of_sines(seed).at(times_s), 0.01, axis=0).T)
        assert speed.max() < 1.0


@given(seed=st.integers(0, 10_000), shares=st.lists(st.floats(0.2, 1.0), min_size=8, max_size=8))
def test_the_path_stays_within_reach(seed, shares):
    """Law: with the player's own reach known the target never leaves it, in any direction."""
    reach = TargetReach(tuple(np.radians(np.arange(0, 360, 45)).tolist()), tuple(shares))
    places = sum_of_sines(seed, reach=reach).at(np.arange(0, 60, 0.037))
    limit = reach_towards(reach, np.arctan2(places[:, 1], places[:, 0]))
    assert (np.hypot(*places.T) <= 0.8 * limit + 1e-3).all()


def test_the_same_seed_gives_the_same_path_and_another_one_another():
    """Phases come from the seed alone."""
    assert sum_of_sines(3) == sum_of_sines(3)
    assert sum_of_sines(3) != sum_of_sines(4)


def test_a_path_that_cannot_be_made_is_refused_with_all_its_faults():
    """A pace that is not known and a size beyond the stick are named together."""
    with pytest.raises(BadInput) as refused:
        sum_of_sines(1, pace="wild", largest=1.5, lasts_s=0.0)
    assert [place(each) for each in refused.value.problems] == ["pace", "duration", "size"]


def test_reach_goes_round_the_circle():
    """Between the last direction and the first the reach is drawn on, by hand: half way between 0.6 at 315 and 1.0 at 0 is 0.8."""
    reach = TargetReach((0.0, math.radians(315)), (1.0, 0.6))
    assert reach_towards(reach, math.radians(337.5)) == pytest.approx(0.8, abs=1e-12)
    np.testing.assert_array_equal(reach_towards(None, [0.0, 1.0]), [1.0, 1.0])


@given(st.lists(st.tuples(st.floats(-1, 1), st.floats(-1, 1), st.floats(0, 0.2)), max_size=20))
def test_the_velocity_cursor_sums_up_and_stays_in_the_field(moves):
    """Law: steps in one place come to the same as one long step, and the cursor never leaves the field."""
    cursor = Cursor(mapping="velocity", gain_per_s=2.0)
    for x, y, dt_s in moves:
        whole = cursor.moved((x, y), dt_s)
        halves = cursor.moved((x, y), dt_s / 2).moved((x, y), dt_s / 2)
        assert (whole.x, whole.y) == pytest.approx((halves.x, halves.y), abs=1e-12)
        cursor = whole
        assert max(abs(cursor.x), abs(cursor.y)) <= 1.0


def test_a_gap_or_an_empty_cell_moves_no_cursor():
    """After ten seconds without samples the cursor has gone no farther than a quarter of a second takes it."""
    cursor = Cursor(mapping="velocity")
    assert cursor.moved((1.0, 0.0), 10.0).x == 0.25
    assert cursor.moved((math.nan, 1.0), 0.1) is cursor
    assert cursor_path([], np.empty((0, 2)), cursor).shape == (0, 2)
