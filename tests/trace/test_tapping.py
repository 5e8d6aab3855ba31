"""Presses one after the other: rate, evenness, slowing, and what is no press."""

import math

import numpy as np
import pytest
from scipy.stats import linregress, t

from said import said
from stickwright.codes.intervals import Intervals
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.trace.tapping import tap_report


def presses(n: int, rng: np.random.Generator, *, every_s: float = 0.2, sd_s: float = 0.02) -> np.ndarray:
    return np.concatenate([[0.0], np.cumsum(rng.normal(every_s, sd_s, n - 1))])


def test_rate_and_variation_by_hand():
    """Five times from press to press, worked by hand: 0.2, 0.3, 0.2, 0.3, 0.25 s: mean 0.25, 4 a second; sd 0.05, 20 %."""
    report = tap_report([0.0, 0.2, 0.5, 0.7, 1.0, 1.25])
    assert report.presses == 6
    assert report.rate_hz.value == pytest.approx(4.0, rel=1e-12)
    assert report.variation.value == pytest.approx(0.2, rel=1e-12)


def test_rate_interval_covers():
    """Of 200 series of 50 presses at 5 a second, the 95 % interval holds it in 180 or more."""
    rng = np.random.default_rng(4)
    held = 0
    for _ in range(200):
        rate = tap_report(presses(50, rng)).rate_hz
        held += rate.low <= 5.0 <= rate.high
    assert held >= 180


def test_slowing_is_found():
    """Each press takes 1 % longer than the one before: the slope's interval is above 0; an even series' holds 0."""
    rng = np.random.default_rng(5)
    slower = np.concatenate([[0.0], np.cumsum(0.2 * 1.01 ** np.arange(60) + rng.normal(0, 0.005, 60))])
    assert tap_report(slower).slowing_per_s.low > 0
    even = tap_report(presses(61, rng)).slowing_per_s
    assert even.low < 0 < even.high


def test_pauses_and_bounces_are_left_out_and_named():
    """A pause of 2 s is no slow press, a second closing after 10 ms no press; the rate stays 5 a second."""
    down = np.arange(41) * 0.2
    down[20:] += 1.8
    report = tap_report(np.sort(np.append(down, 1.01)))
    assert report.presses == 41
    assert report.rate_hz.value == pytest.approx(5.0, rel=1e-9)
    assert [said(one) for one in report.left_out] == [
        "press at 1.01 s: within 0.03 s of the press before, a bouncing switch",
        "pause of 2.0 s after 3.8 s",
    ]


def test_how_long_a_press_lasts():
    """Ends 0.08 s after beginnings; one not known does not count."""
    down = presses(20, np.random.default_rng(6))
    up = down + 0.08
    up[3] = math.nan
    held = tap_report(down, up).held_s
    assert held is not None
    assert (held.value, held.n) == (pytest.approx(0.08, abs=1e-12), 19)
    assert tap_report(down).held_s is None


@pytest.mark.parametrize(
    ("down", "up", "words"),
    [
        ([0.0, 0.2, 0.4], None, "presses: found 3, expected at least 5"),
        ([0.0, 0.2, 0.4, 0.3, 0.8], None, r"press 4 at 0.3\ss after 0.4\ss"),
        ([0.0, 0.2, math.nan, 0.6, 0.8], None, "an empty cell"),
        ([0.0, 0.2, 0.4, 0.6, 0.8], [0.1, 0.1, 0.5, 0.7, 0.9], r"press 2 from 0.2\ss to 0.1\ss"),
        ([0.0, 0.2, 0.4, 0.6, 0.8], [0.1], "1 end of 5 presses"),
    ],
)
def test_what_is_refused(down, up, words):
    """Each mistake in its sentence."""
    with pytest.raises(BadInput, match=words):
        tap_report(down, up)


def test_slowing_as_scipy_tells_it():
    """Presses whose times fall to either side of a line by turns are worth all of themselves: slope and interval of the time between
    presses over time are those of an ordinary straight line, here by scipy, as a share of the mean."""
    between = 0.2 + 0.002 * np.arange(24) + 0.01 * np.tile([1.0, -1.0], 12)
    down = np.concatenate([[0.0], np.cumsum(between)])
    line = linregress(down[1:], between)
    told = tap_report(down).slowing_per_s
    half = t.ppf(0.975, 22) * line.stderr
    ends = (line.slope, line.slope - half, line.slope + half)
    assert (told.value, told.low, told.high) == pytest.approx([end / between.mean() for end in ends], rel=1e-6)


def test_presses_that_sway_slowly_tell_no_slowing():
    """One slow sway through all presses: no interval, the reason, and how many there were."""
    between = 0.2 + 0.05 * np.sin(2 * np.pi * np.arange(20) / 20)
    told = tap_report(np.concatenate([[0.0], np.cumsum(between)])).slowing_per_s
    assert (told.why, told.n) == (message(Intervals.few_readings, what="press"), 20)
