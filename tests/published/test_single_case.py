"""Trials of one player against published examples and printed tables; "computed apart" is apart from this program."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from stickwright.evidence.between_players import between_players, small_sample_factor
from stickwright.evidence.change import reliable_change, smallest_real_change, standard_error_of_measuring
from stickwright.evidence.course import level_at_last
from stickwright.evidence.designs import Alternating, Pairs, Phases
from stickwright.evidence.effects import learning_curve, with_practice
from stickwright.evidence.goals import goal_score
from stickwright.evidence.overlap import baseline_corrected, nap, overlap
from stickwright.evidence.randomisation import randomisation_test
from stickwright.evidence.sequential import always_valid_half_width, boundaries, chance_of_crossing, spending_boundaries

EXAMPLES = Path(__file__).parents[1] / "data" / "single-case" / "published-examples.csv"


def example(name: str) -> tuple[list[float], list[float]]:
    with EXAMPLES.open(encoding="utf-8", newline="") as text:
        rows = [row for row in csv.DictReader(text) if row["set"] == name]
    a, b = ([float(row["outcome"]) for row in rows if row["condition"] == which] for which in "AB")
    return a, b


def test_nonoverlap_as_published():
    """Parker, Vannest & Davis 2011, nine nonoverlap techniques: NAP 38.5/42, Tau 35/42."""
    found = overlap(*example("Parker2011b"))
    assert found is not None
    assert found.nap.value == pytest.approx(38.5 / 42)
    assert found.tau == pytest.approx(35 / 42)


def test_less_is_better():
    """Data printed in the documentation of SingleCaseES; 0.9375 computed apart from this program."""
    assert nap([12, 14, 9, 10], [10, 6, 4, 5, 3, 4], less_is_better=True).value == pytest.approx(0.9375)


@pytest.mark.parametrize(
    "a, b, tau, tau_u",
    [
        ([3, 3, 4, 5], [4, 5, 6, 7, 7], 16 / 20, 11 / 20),  # published with the data
        ([1, 2, 3, 4, 5], [6, 7, 8, 9, 10], 1.0, 0.6),  # computed apart
        ([2, 3, 5, 3], [4, 5, 5, 7, 6], 0.8, 0.65),  # computed apart
    ],
)
def test_tau_u(a, b, tau, tau_u):
    """Parker, Vannest, Davis & Sauber 2011: S of A with B less S of A, over the A-B pairs."""
    found = overlap(a, b)
    assert found is not None
    assert (found.tau, found.tau_u) == (pytest.approx(tau), pytest.approx(tau_u))


def test_a_trend_that_goes_on_is_no_effect():
    """Tarlow 2017: 1 to 5, then 6 to 10, corrected for the trend of A: nothing left."""
    a, b = baseline_corrected([1, 2, 3, 4, 5], [6, 7, 8, 9, 10])
    assert np.abs(np.concatenate([a, b])).max() == pytest.approx(0, abs=1e-12)


Y = [4, 7, 5, 8, 3, 6, 9, 5]
DRAWN = [letter == "B" for letter in "ABABABBA"]


@pytest.mark.parametrize(
    "design, two_sided, orders, p",
    [
        (Alternating(4, 4), False, 70, 1 / 70),
        (Alternating(4, 4), True, 70, 2 / 70),
        (Alternating(4, 4, 2), False, 34, 1 / 34),
    ],
)
def test_randomisation_of_single_trials(design, two_sided, orders, p):
    """By the definition of Edgington & Onghena 2007; counted apart from this program."""
    found = randomisation_test(Y, DRAWN, design, two_sided=two_sided)
    assert (found.difference.value, found.orders, found.p) == (3.25, orders, pytest.approx(p))


def test_randomisation_of_pairs():
    """Likewise: five pairs, 32 orders."""
    drawn = [letter == "B" for letter in "ABBAABBAAB"]
    values = [4, 7, 8, 5, 3, 6, 9, 5, 4, 8]
    found = randomisation_test(values, drawn, Pairs(5), two_sided=False)
    assert (found.difference.value, found.orders, found.p) == (pytest.approx(3.4), 32, 1 / 32)
    assert randomisation_test(values, drawn, Pairs(5)).p == 2 / 32


def test_randomisation_of_a_start():
    """Bulte & Onghena 2008: B from the 4th to the 11th of 14 occasions; counted apart from this program."""
    values = [3, 2, 4, 3, 3, 4, 3, 7, 6, 8, 7, 8, 7, 8]
    found = randomisation_test(values, [trial >= 7 for trial in range(14)], Phases(14, 2, 3), two_sided=False)
    assert found.orders == 9  # from the 4th to the 12th occasion, as three trials are the fewest of B too
    assert found.difference.value == pytest.approx(4.142857, abs=1e-6)
    assert found.p == pytest.approx(1 / 9)


@pytest.mark.parametrize(
    "looks, kind, first",
    [
        (2, "constant", 2.178272), (3, "constant", 2.289478), (4, "constant", 2.361298), (5, "constant", 2.413176),
        (2, "falling", 2.7965), (3, "falling", 3.4711), (4, "falling", 4.0486), (5, "falling", 4.5617),
    ],
)  # fmt: skip
def test_limits_of_early_stopping(looks, kind, first):
    """Pocock 1977, O'Brien & Fleming 1979: computed apart, and alike to the tables of Jennison & Turnbull 2000 (from memory: 2.178 2.289
    2.361 2.413; 1.977 2.004 2.024 2.040 at the last look)."""
    assert boundaries(looks, kind)[0] == pytest.approx(first, abs=5e-5)
    last = {2: 1.977, 3: 2.004, 4: 2.024, 5: 2.040}[looks]
    assert kind == "constant" or boundaries(looks, kind)[-1] == pytest.approx(last, abs=5e-4)


@pytest.mark.parametrize("looks, alpha", [(2, 0.083118), (3, 0.107256), (4, 0.126169), (5, 0.141689), (10, 0.193357)])
def test_what_looking_every_time_costs(looks, alpha):
    """True chance of a false alarm when 1.96 counts at each look (Armitage and others 1969; computed apart)."""
    share = tuple(look / looks for look in range(1, looks + 1))
    assert chance_of_crossing((1.959964,) * looks, share)[-1] == pytest.approx(alpha, abs=5e-6)


def test_spending():
    """Lan & DeMets 1983, each side its half: computed apart."""
    assert spending_boundaries([0.25, 0.5, 0.75, 1.0]).tolist() == pytest.approx(
        [4.3326, 2.9631, 2.3590, 2.0141], abs=5e-5
    )


@pytest.mark.parametrize(
    "n, rho, half", [(10, 10, 1.156254), (100, 10, 0.303781), (500, 50, 0.135855), (50, 50, 0.517092)]
)
def test_intervals_that_hold_whenever_one_stops(n, rho, half):
    """Howard and others 2021, normal mixture: computed apart."""
    assert always_valid_half_width(n, 1.0, rho=rho) == pytest.approx(half, abs=5e-7)


@pytest.mark.parametrize(
    "reached, weights, alike, score",
    [
        ([1], None, 0.3, 60.0), ([1, 0], None, 0.3, 56.2017), ([1, 1, 1], None, 0.3, 63.6931), ([-1] * 4, None, 0.3, 35.4905),
        ([2] * 6, None, 0.3, 80.9839), ([1, 0, -1, 2], [3, 2, 1, 4], 0.3, 64.002801), ([1, -1, 0], [3, 2, 1], 0.3, 52.203263),
        ([1, -1, 0], [3, 2, 1], 0.0, 52.672612), ([2, 1, -1, 0, 1], [12, 6, 4, 9, 2], 0.5, 60.698250),
        ([-2, 1, 1], [9, 4, 1], 0.3, 38.482489),
    ],
)  # fmt: skip
def test_goal_attainment(reached, weights, alike, score):
    """Kiresuk & Sherman 1968, formula seen; scores computed apart."""
    assert goal_score(reached, weights, alike=alike) == pytest.approx(score, abs=5e-5)


def test_practice_curve():
    """Eight trials: exponent of the log-log line -0.309676 (computed apart); the curve with an end has 0.383824 and ends at 1.386."""
    y = [10.2, 8.1, 7.2, 6.5, 6.2, 5.8, 5.6, 5.3]
    found = learning_curve(y)
    assert found is not None
    assert (found.kind, found.to_come) == ("power", pytest.approx(1.386018, abs=2e-4))
    same = with_practice(y, [False, True] * 4)
    assert same is not None
    assert same.exponent.value == pytest.approx(-0.309676, abs=0.02)


def test_local_level():
    """Six figures, computed apart by the filter and by generalised least squares; Durbin and Koopman's model."""
    found = level_at_last([5.0, 5.4, 4.9, 5.6, 6.1, 5.8], 0.16, 0.04)
    assert (found.level, found.variance) == (pytest.approx(5.686930847), pytest.approx(0.062897695))
    assert found.log_likelihood == pytest.approx(-3.677600, abs=1e-6)
    level, variance = found.ahead(3, 0.16, 0.04)
    assert (level, variance) == (pytest.approx(5.686931, abs=1e-6), pytest.approx(0.342897695))


def test_smallest_real_change():
    """Jacobson & Truax 1991 (from memory): SD 4, reliability 0.9; computed apart."""
    error = 4 * (1 - 0.9) ** 0.5
    assert smallest_real_change(error) == pytest.approx(3.506155, abs=1e-6)
    assert reliable_change(20, 27, error) == pytest.approx(3.913119, abs=1e-6)
    assert standard_error_of_measuring([1, -2, 0, 3, -1, 2]) == pytest.approx(1.322876, abs=1e-6)


def test_several_players():
    """Hedges and others 2012: the factor for their 164.49 degrees; and a small balanced study computed apart (analysis of variance
    and restricted likelihood agree there)."""
    assert small_sample_factor(164.492271) * -2.524601 == pytest.approx(-2.513073, abs=2e-6)
    cases = [([3, 4, 3, 5], [7, 8, 7, 9]), ([5, 6, 6, 5], [9, 9, 10, 8]), ([2, 3, 2, 3], [5, 7, 6, 6])]
    found = between_players(cases)
    assert found is not None
    assert found.difference == pytest.approx(3.666667, abs=1e-6)
    assert (found.within_sd**2, found.between_sd**2) == (
        pytest.approx(0.591667, abs=1e-6),
        pytest.approx(2.176042, abs=1e-6),
    )
    assert (found.size.value, found.degrees) == (pytest.approx(1.605155, abs=1e-6), pytest.approx(3.010318, abs=1e-6))
