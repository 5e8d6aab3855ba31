"""Ability from readings: intervals that tell the truth, and doubts that are voiced."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from said import said
from stickwright.codes.ability_findings import AbilityFindings
from stickwright.codes.message import Name, message
from stickwright.mechanics.capability import (
    ASSUMED_SCATTER,
    Readings,
    coarse_gauge_finding,
    expected_from_others,
    grid_directions,
    pooled_scatter,
    round_the_circle,
    tiring,
)

TRUTHS = {
    "finger": (0.34, 0.31, 0.26, 0.28, 0.38, 0.36, 0.42, 0.38),
    "chin": (1.9, 1.9, 2.4, 1.8, 1.7, 1.1, 0.9, 1.2),
    "fist": (22.0, 18.0, 14.0, 16.0, 20.0, 24.0, 26.0, 25.0),
}
PRIOR = {"prior_log_mean": 0.0, "prior_log_sd": 3.0}


def read(truth: tuple[float, ...], rng: np.random.Generator, scatter: float = 0.12, n: int = 3) -> Readings:
    return Readings.of([(k * math.pi / 4, f * np.exp(scatter * rng.standard_normal(n))) for k, f in enumerate(truth)])


@pytest.mark.parametrize("name", TRUTHS)
def test_intervals_cover_the_truth(name: str) -> None:
    """Simulated players: the 95 % interval of a direction covers the true force in 92 to 98 % of 500 draws."""
    rng = np.random.default_rng(11)
    truth = TRUTHS[name]
    hits = np.zeros(8)
    for _ in range(500):
        readings = read(truth, rng)
        scatter, df, _ = pooled_scatter(readings)
        known = round_the_circle(readings, grid_directions(readings.direction_rad), scatter, df, **PRIOR)
        hits += [e.low <= f <= e.high for e, f in zip(known.estimates(dict.fromkeys(range(8), 3)), truth, strict=True)]
    assert 0.92 <= hits.mean() / 500 <= 0.98
    assert np.all(hits / 500 > 0.90)


def test_pooling_halves_the_interval() -> None:
    """Eight directions of three: the pooled interval is about half of each direction's own t interval.

    Source: pooled variance and Student's t, scipy as the independent route."""
    rng = np.random.default_rng(3)
    own, pooled = [], []
    for _ in range(200):
        readings = read(TRUTHS["finger"], rng)
        scatter, df, _ = pooled_scatter(readings)
        known = round_the_circle(readings, grid_directions(readings.direction_rad), scatter, df, **PRIOR)
        pooled += [math.log(e.high / e.low) / 2 for e in known.estimates(dict.fromkeys(range(8), 3))]
        for values in readings.repeats:
            own.append(stats.t.ppf(0.975, 2) * np.log(values).std(ddof=1) / math.sqrt(3))
    assert 0.4 < np.mean(pooled) / np.mean(own) < 0.6


def test_draws_have_the_spread_of_the_intervals() -> None:
    """The draws that the fits use and the intervals that people read are the same knowledge."""
    readings = read(TRUTHS["chin"], np.random.default_rng(5))
    scatter, df, _ = pooled_scatter(readings)
    known = round_the_circle(readings, grid_directions(readings.direction_rad), scatter, df, **PRIOR)
    drawn = known.draws(np.random.default_rng(6), 20000)
    for k, estimate in enumerate(known.estimates(dict.fromkeys(range(8), 3))):
        low, high = np.quantile(drawn[:, k], (0.025, 0.975))
        assert low == pytest.approx(estimate.low, rel=0.02)
        assert high == pytest.approx(estimate.high, rel=0.02)


def test_four_directions_say_how_little_is_known_between_them() -> None:
    """Four directions serve; the ones between carry a wider interval and the words 'not measured'."""
    truth = TRUTHS["finger"]
    readings = Readings.of([(k * math.pi / 4, [truth[k] * s for s in (0.9, 1, 1.1)]) for k in (0, 2, 4, 6)])
    scatter, df, _ = pooled_scatter(readings)
    grid = grid_directions(readings.direction_rad)
    assert len(grid) == 8
    estimates = round_the_circle(readings, grid, scatter, df, **PRIOR).estimates({0: 3, 2: 3, 4: 3, 6: 3})
    for k in (1, 3, 5, 7):
        assert estimates[k].low < truth[k] < estimates[k].high
        assert estimates[k].high / estimates[k].low > 1.5 * estimates[0].high / estimates[0].low
        assert estimates[k].assumed
    assert estimates[0].assumed is None


@pytest.mark.parametrize("turn_deg", [10, 33, 90, 201])
def test_turning_player_and_readings_together_changes_nothing(turn_deg: float) -> None:
    """Law: the circle has no favoured direction."""
    readings = read(TRUTHS["chin"], np.random.default_rng(8))
    turn = math.radians(turn_deg)
    turned = Readings.of([(p + turn, v) for p, v in zip(readings.direction_rad, readings.repeats, strict=True)])
    grid = readings.direction_rad
    plain = round_the_circle(readings, grid, 0.12, 16, **PRIOR)
    moved = round_the_circle(turned, np.mod(grid + turn, 2 * math.pi), 0.12, 16, **PRIOR)
    assert np.allclose(np.sort(plain.log_mean), np.sort(moved.log_mean), rtol=0, atol=1e-6)
    assert np.allclose(np.sort(plain.sd), np.sort(moved.sd), rtol=0, atol=1e-6)


@pytest.mark.parametrize("factor", [3.0, 1 / 3])
def test_a_direction_off_the_curve_is_queried_by_name(factor: float) -> None:
    """Back-left at three times its neighbours, or at a third of them: asked about, not thrown away."""
    truth = list(TRUTHS["finger"])
    truth[5] *= factor
    readings = read(tuple(truth), np.random.default_rng(2), scatter=0.08)
    scatter, df, _ = pooled_scatter(readings)
    findings = expected_from_others(readings, scatter, df, **PRIOR, what="force")
    assert any(f.level == "query" and "back-left" in said(f.text) for f in findings)


def test_ordinary_readings_are_seldom_queried() -> None:
    """At 12 % scatter no more than one site in ten raises a doubt."""
    rng = np.random.default_rng(4)
    asked = 0
    for _ in range(300):
        readings = read(TRUTHS["chin"], rng)
        scatter, df, _ = pooled_scatter(readings)
        asked += bool(expected_from_others(readings, scatter, df, **PRIOR, what="force"))
    assert asked / 300 < 0.10


def test_identical_repeats_are_queried_and_not_pooled() -> None:
    """Copied readings must not make the scatter look small."""
    readings = Readings.of([(0.0, [1.0, 1.0, 1.0]), (1.5, [0.9, 1.0, 1.1]), (3.0, [0.8, 1.0, 1.25])])
    scatter, df, findings = pooled_scatter(readings)
    logs = [np.log([0.9, 1.0, 1.1]), np.log([0.8, 1.0, 1.25])]
    assert df == 4
    assert scatter == pytest.approx(math.sqrt(np.mean([log.var(ddof=1) for log in logs])), rel=1e-12)
    assert "identical_repeats" in {f.about for f in findings}


def test_single_readings_take_the_usual_scatter_and_say_so() -> None:
    """One reading a direction: no scatter of its own."""
    scatter, df, findings = pooled_scatter(Readings.of([(0.0, [1.0]), (1.5, [1.2])]))
    assert (scatter, df, findings) == (ASSUMED_SCATTER, 0, ())


def test_coarse_gauge_is_named() -> None:
    """Practice: under ten steps of the gauge its rounding hides the force (common practice, no source)."""
    readings = Readings.of([(math.pi / 2, [0.3, 0.3, 0.4]), (math.pi, [2.0])], step=0.1)
    (finding,) = coarse_gauge_finding(readings, 0.1, finest_stick="dew")
    assert finding.level == "fault"
    assert finding.text == message(
        AbilityFindings.coarse_gauge, step_n=0.1, directions_rad=(pytest.approx(math.pi / 2),), stick=Name("dew")
    )
    assert readings.extra_sd[0] > readings.extra_sd[1]


def test_tiring_has_an_interval() -> None:
    """Eighteen per cent less on the repeated direction, pooled scatter 12 % on 16 degrees of freedom.

    Independent route: Student's t from scipy on the log ratio."""
    lost = tiring([1.0, 1.0, 1.0], [0.82, 0.82, 0.82], 0.12, 16)
    assert lost is not None
    half = stats.t.ppf(0.975, 16) * 0.12 * math.sqrt(2 / 3)
    assert lost.value == pytest.approx(0.18, abs=1e-12)
    assert lost.low == pytest.approx(1 - 0.82 * math.exp(half), rel=1e-12)
    assert lost.high == pytest.approx(1 - 0.82 * math.exp(-half), rel=1e-12)
    assert tiring([1.0], [], 0.12, 16) is None


def test_two_directions_read_twice_leave_the_others_wide_but_not_boundless() -> None:
    """One degree of freedom must not make an unread direction anything from nothing to a kilometre.

    What nobody read is as unsure as the part's directions differ (a factor of ten either way at most), and
    repeats of the others do not lessen it."""
    few = Readings.of([(0.0, [6.0, 7.0]), (math.pi, [8.0])])
    scatter, df, _ = pooled_scatter(few)
    assert df == 1
    for estimate in round_the_circle(few, grid_directions(few.direction_rad), scatter, df, **PRIOR).estimates(
        {0: 2, 4: 1}
    ):
        assert 1.1 < estimate.high / estimate.low < 100


@pytest.mark.parametrize("true_scatter", [0.08, 0.15, 0.25])
@pytest.mark.parametrize("repeats", [2, 3])
def test_few_readings_keep_their_promise(true_scatter: float, repeats: int) -> None:
    """Four directions, two or three repeats: the 95 % interval covers in nine draws of ten or more, whatever the scatter."""
    rng = np.random.default_rng(23)
    truth = np.array([1.0, 0.7, 1.2, 0.9])
    hits = np.zeros(4)
    for _ in range(400):
        readings = Readings.of(
            [(k * math.pi / 2, f * np.exp(true_scatter * rng.standard_normal(repeats))) for k, f in enumerate(truth)]
        )
        scatter, df, _ = pooled_scatter(readings)
        known = round_the_circle(readings, readings.direction_rad, scatter, df, **PRIOR)
        hits += [e.low <= f <= e.high for e, f in zip(known.estimates(dict.fromkeys(range(4), 3)), truth, strict=True)]
    assert np.all(hits / 400 > 0.90)


@pytest.mark.parametrize(
    "typed_deg, meant_deg",
    [(-45, 315), (-90, 270), (-135, 225), (315, 315), (360, 0), (405, 45), (-360, 0), (180, 180)],
)
def test_a_direction_is_the_same_however_many_turns_it_is_typed_with(typed_deg: float, meant_deg: float) -> None:
    """Law: minus 45 degrees is 315 and not 135; readings of one direction are pooled whatever it was typed as."""
    other_deg = (meant_deg + 90) % 360
    pairs = [(math.radians(typed_deg), [1.0]), (math.radians(meant_deg), [2.0]), (math.radians(other_deg), [5.0])]
    readings = Readings.of(pairs)
    kept = {
        round(math.degrees(phi), 3) % 360: sorted(values)
        for phi, values in zip(readings.direction_rad, readings.repeats, strict=True)
    }
    assert kept == {meant_deg: [1.0, 2.0], other_deg: [5.0]}


@pytest.mark.parametrize("lost", [0.3, 0.0, -0.2])
def test_tiring_is_a_loss_with_a_plus(lost: float) -> None:
    """Law: who reads less at the end has lost, with a plus; who reads more has gained, with a minus; the ends of the interval lie
    on either side, the low one below."""
    told = tiring([2.0, 2.2], [2.0 * (1 - lost), 2.2 * (1 - lost)], 0.05, 10)
    assert told is not None
    assert told.value == pytest.approx(lost, abs=1e-12)
    assert told.low < told.value < told.high
