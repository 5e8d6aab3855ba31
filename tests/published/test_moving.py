"""Movement time against the table it was first found in."""

import math

import numpy as np
import pytest

from stickwright.allocation.moving import (
    CATCHES_95_SDS,
    USUAL_INTERCEPT_S,
    USUAL_SLOPE_S_PER_BIT,
    difficulty_bits,
    line_of,
    movement_time_s,
)

AMPLITUDES_INCH = (2, 4, 8, 16)
FITTS_MS = {
    2.0: (180, 203, 279, 388),
    1.0: (212, 260, 357, 481),
    0.5: (281, 372, 469, 595),
    0.25: (392, 484, 580, 731),
}
"""Fitts 1954, J. Exp. Psychol. 47:381-391, table 1, tapping with a 1 oz stylus [fitts-1954]: target width in inch, mean
movement time in ms for each amplitude. From memory; the first test shows that the memory is right."""


def cells() -> list[tuple[float, float, float]]:
    """Amplitude, width (inch) and movement time (s) of the 16 cells."""
    return [
        (amplitude, width, ms / 1000)
        for width, row in FITTS_MS.items()
        for amplitude, ms in zip(AMPLITUDES_INCH, row, strict=True)
    ]


def test_the_table_gives_the_regression_quoted_of_it():
    """MacKenzie 1992, HCI 7:91-139 (from memory): over Fitts' 16 cells MT = 12.8 + 94.7 ID ms with ID = log2(2A/W), and
    r = .983. A cell remembered wrongly would change them."""
    bits = [math.log2(2 * amplitude / width) for amplitude, width, _ in cells()]
    ms = [1000 * time for *_, time in cells()]
    slope, intercept = np.polyfit(bits, ms, 1)
    assert intercept == pytest.approx(12.8, abs=0.05)
    assert slope == pytest.approx(94.7, abs=0.05)
    assert np.corrcoef(bits, ms)[0, 1] == pytest.approx(0.983, abs=0.0005)


def test_the_usual_line_is_the_refit_by_the_shannon_form():
    """The default line is the least-squares line over the same 16 cells by the Shannon form, to the digits it is
    written with (tenth of a millisecond), by numpy's polynomial fit."""
    bits = [math.log2(amplitude / width + 1) for amplitude, width, _ in cells()]
    slope, intercept = np.polyfit(bits, [time for *_, time in cells()], 1)
    assert pytest.approx(intercept, abs=5e-5) == USUAL_INTERCEPT_S
    assert pytest.approx(slope, abs=5e-5) == USUAL_SLOPE_S_PER_BIT
    assert line_of(None)[:2] == (USUAL_INTERCEPT_S, USUAL_SLOPE_S_PER_BIT)


def test_it_predicts_fitts_cells_as_well_as_published():
    """MacKenzie 1989, J. Motor Behavior 21:323-330 (from memory): the Shannon form correlates with Fitts' tapping by
    .99, better than his own form's .983."""
    told = [
        movement_time_s(amplitude, width, intercept_s=USUAL_INTERCEPT_S, slope_s_per_bit=USUAL_SLOPE_S_PER_BIT)
        for amplitude, width, _ in cells()
    ]
    measured = [time for *_, time in cells()]
    assert np.corrcoef(told, measured)[0, 1] == pytest.approx(0.99, abs=0.005)
    assert max(abs(np.subtract(told, measured))) < 0.050


@pytest.mark.parametrize(("distance", "width", "bits"), [(512, 64, 3.169925), (300, 20, 4.000000), (100, 30, 2.115477)])
def test_difficulty(distance, width, bits):
    """Shannon form (MacKenzie 1992; ISO 9241-411 annex B): log2(A/W + 1), worked out apart from this program."""
    assert difficulty_bits(distance, width) == pytest.approx(bits, abs=5e-7)


def test_the_diameter_that_catches_95_of_100():
    """Rayleigh's distribution: 95 % lies within 2.45 sd (sqrt(-2 ln 0.05) = 2.4477), a diameter of 4.9 sd."""
    assert pytest.approx(2 * math.sqrt(-2 * math.log(0.05)), abs=0.05) == CATCHES_95_SDS
