"""Filters on live streams: equal to their plain form, honest at uneven steps, gaps and starts."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from said import place
from stickwright.errors import BadInput
from stickwright.tuning.filters import (
    NO_FILTER,
    Filter,
    butterworth,
    filtered,
    low_pass,
    low_pass_cutoff_hz,
    low_pass_lag_s,
    notch,
    one_euro,
)

from . import plain

TIMES_S = np.arange(600) * 0.01
SHAKY = np.column_stack([np.sin(TIMES_S), np.cos(TIMES_S)]) + np.random.default_rng(1).normal(0, 0.05, (600, 2))
KINDS = [
    NO_FILTER,
    Filter("low-pass", 3.0),
    Filter("butterworth", 5.0),
    Filter("1-euro", 1.0, 2.0),
    Filter("notch", 6.0),
]


@st.composite
def streams(draw):
    """Movement with uneven time stamps and some empty cells."""
    n = draw(st.integers(1, 60))
    rng = np.random.default_rng(draw(st.integers(0, 2**32 - 1)))
    xy = np.cumsum(rng.normal(0, 0.05, (n, 2)), axis=0)
    xy[rng.random(n) < draw(st.sampled_from([0.0, 0.2]))] = np.nan
    return xy, np.cumsum(rng.uniform(0.002, 0.05, n)) - 0.5


@given(stream=streams(), cutoff_hz=st.floats(0.1, 20), beta=st.floats(0, 20), derivative_hz=st.floats(0.2, 5))
def test_one_euro_equals_the_paper_line_by_line(stream, cutoff_hz, beta, derivative_hz):
    """The fast filter is the paper's, whatever the time stamps and wherever cells are empty."""
    xy, times_s = stream
    expected = np.array(plain.one_euro(xy, times_s, cutoff_hz, beta, derivative_hz))
    assert one_euro(xy, times_s, cutoff_hz, beta, derivative_hz) == pytest.approx(expected, abs=1e-9, nan_ok=True)


@given(stream=streams(), cutoff_hz=st.floats(0.1, 20))
def test_low_pass_equals_its_plain_form(stream, cutoff_hz):
    """The fast low-pass is the exact answer to held samples, line by line."""
    xy, times_s = stream
    expected = np.array(plain.low_pass(xy, times_s, cutoff_hz))
    assert low_pass(xy, times_s, cutoff_hz) == pytest.approx(expected, abs=1e-12, nan_ok=True)


def test_low_pass_keeps_its_cut_off_at_uneven_steps():
    """A step input decays as exp(-2 pi fc t) at whatever times it is looked at."""
    times_s = np.concatenate([[0.0], np.sort(np.random.default_rng(2).uniform(0.0, 0.5, 50))])
    step = np.ones((51, 2))
    step[0] = 0.0
    expected = 1 - np.exp(-2 * math.pi * 1.5 * times_s)
    assert low_pass(step, times_s, 1.5)[:, 0] == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize("by", KINDS, ids=lambda by: by.kind)
def test_a_held_stick_stays_where_it_is(by):
    """No filter moves a stick that does not move, from the first sample on."""
    held = np.tile([0.3, -0.6], (200, 1))
    assert filtered(held, TIMES_S[:200], by) == pytest.approx(held, abs=1e-12)


@pytest.mark.parametrize("by", KINDS, ids=lambda by: by.kind)
def test_the_future_changes_nothing(by):
    """What comes out depends on the past alone: a later jolt leaves earlier output as it was."""
    jolted = SHAKY.copy()
    jolted[400:] += 1.0
    assert filtered(jolted, TIMES_S, by)[:399] == pytest.approx(filtered(SHAKY, TIMES_S, by)[:399], abs=1e-12)


@pytest.mark.parametrize("by", KINDS, ids=lambda by: by.kind)
def test_empty_cells_stay_empty_and_the_rest_goes_on(by):
    """A dropped sample is not invented, and does not spoil what follows."""
    holed = SHAKY.copy()
    holed[200:203, 1] = np.nan
    out = filtered(holed, TIMES_S, by)
    assert np.flatnonzero(np.isnan(out).any(axis=1)).tolist() == [200, 201, 202]
    whole = filtered(SHAKY, TIMES_S, by)
    assert out[500:] == pytest.approx(whole[500:], abs=1e-3)


@pytest.mark.parametrize("by", KINDS, ids=lambda by: by.kind)
def test_twice_the_movement_is_twice_the_output(by):
    """Law for the linear filters; the 1-euro filter obeys it with beta in proportion."""
    scaled = Filter(by.kind, by.cutoff_hz, by.beta / 2, by.quality)
    assert filtered(2 * SHAKY, TIMES_S, scaled) == pytest.approx(2 * filtered(SHAKY, TIMES_S, by), abs=1e-9)


@settings(max_examples=20)
@given(frequency_hz=st.floats(2.0, 12.0))
def test_notch_takes_its_frequency_out(frequency_hz):
    """A steady tremor at the notch is gone after two seconds; slow movement passes."""
    times_s = np.arange(600) * 0.01
    shake = np.column_stack([np.sin(2 * np.pi * frequency_hz * times_s)] * 2)
    assert np.abs(notch(shake, times_s, frequency_hz)[400:]).max() < 0.01


@pytest.mark.parametrize("order", [1, 8])
def test_butterworth_of_the_least_and_the_highest_order(order):
    """Half of the power passes at the cut-off, whatever the order."""
    times_s = np.arange(3000) * 0.01
    wave = np.column_stack([np.sin(2 * np.pi * 5.0 * times_s)] * 2)
    passed = butterworth(wave, times_s, 5.0, order=order)[1000:, 0]
    assert float(np.mean(passed**2)) == pytest.approx(0.25, rel=0.03)


@pytest.mark.parametrize("order", [0, 9])
def test_butterworth_of_no_such_order_is_refused(order):
    with pytest.raises(BadInput, match="order"):
        butterworth(np.zeros((10, 2)), np.arange(10) * 0.01, 5.0, order=order)


def test_butterworth_at_uneven_steps():
    """Uneven stamps are read on an even grid: nearly the same as the even recording of the same movement."""
    rng = np.random.default_rng(6)
    uneven_s = np.sort(np.concatenate([[0.0], TIMES_S[1:-1] + rng.uniform(-0.002, 0.002, 598), [5.99]]))

    def move(times_s):
        return np.column_stack([np.sin(3 * times_s), np.cos(2 * times_s)])

    even = butterworth(move(TIMES_S), TIMES_S, 5.0)
    uneven = butterworth(move(uneven_s), uneven_s, 5.0)
    assert uneven[100:, 0] == pytest.approx(np.interp(uneven_s, TIMES_S, even[:, 0])[100:], abs=0.002)


def test_lag_and_cut_off_are_each_others_inverse():
    """60 ms is 2.65 Hz and back."""
    assert low_pass_lag_s(low_pass_cutoff_hz(0.06)) == pytest.approx(0.06, abs=1e-12)


def test_clock_that_runs_backwards_is_refused():
    """The place and both times are named."""
    with pytest.raises(BadInput) as refusal:
        low_pass(np.zeros((3, 2)), [0.0, 0.2, 0.1], 5.0)
    assert "time stamps, sample 3: found 0.1 s after 0.2 s" in str(refusal.value).replace("\N{NO-BREAK SPACE}", " ")
    assert "Split the recording there" in str(refusal.value)


def test_every_wrong_number_is_named_at_once():
    """Two cut-offs of 0 are two sentences."""
    with pytest.raises(BadInput) as refusal:
        one_euro(np.zeros((3, 2)), [0.0, 0.1, 0.2], 0.0, 1.0, derivative_cutoff_hz=-1.0)
    assert [place(problem) for problem in refusal.value.problems] == ["min_cutoff_hz", "derivative_cutoff_hz"]


@pytest.mark.parametrize("run", [lambda *a: one_euro(*a, 1.0, -0.1)], ids=["beta"])
def test_negative_beta_is_refused(run):
    """Less smoothing at rest than in movement is not this filter."""
    with pytest.raises(BadInput, match=r"beta: found -0.1, expected 0 or more"):
        run(np.zeros((3, 2)), [0.0, 0.1, 0.2])


def test_cut_off_above_half_the_rate_is_refused():
    """At 10 samples a second nothing can be said about 8 Hz."""
    with pytest.raises(BadInput, match=r"below 5\sHz, half the rate of this recording"):
        butterworth(np.zeros((30, 2)), np.arange(30) * 0.1, 8.0)


def test_frozen_clock_is_refused():
    """Time stamps that never move on give no rate."""
    with pytest.raises(BadInput, match="time stamps that move on"):
        butterworth(np.zeros((30, 2)), np.zeros(30), 8.0)


def test_a_day_between_samples_is_refused():
    """One long gap would need a grid of millions of steps; the sentence asks to split there."""
    times_s = np.concatenate([np.arange(20) * 0.01, 86400 + np.arange(20) * 0.01])
    with pytest.raises(BadInput, match="Split the recording at its long gap"):
        notch(np.zeros((40, 2)), times_s, 5.0)
