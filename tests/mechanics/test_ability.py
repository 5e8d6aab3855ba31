"""A site's ability from whatever was read, and every figure that stands in for what was not."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from scipy import stats

from said import place, said
from stickwright.codes.ability_findings import AbilityFindings
from stickwright.codes.estimate import Estimate
from stickwright.codes.estimate_notes import EstimateNotes
from stickwright.codes.message import Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.errors import BadInput
from stickwright.mechanics.ability import Ability, ability
from stickwright.mechanics.default_values import Steadiness
from stickwright.mechanics.force_from_trials import TriedStick
from stickwright.model.player import Site

FORCE = (0.34, 0.31, 0.26, 0.28, 0.38, 0.36, 0.42, 0.38)
REACH = (0.009, 0.007, 0.005, 0.006, 0.010, 0.009, 0.008, 0.009)
CEDAR = TriedStick(0.16, 0.35, 0.0065, 0.016)
ASH = TriedStick(0.48, 1.05, 0.0065, 0.016)


def readings(
    places: tuple[int, ...] = tuple(range(8)), *, reach: bool = True, repeats: int = 3
) -> list[dict[str, Any]]:
    """Repeats about each true figure, a tenth up and down."""
    spread = (1.0, 0.9, 1.1)[:repeats]
    return [
        {"direction_deg": 45 * k, "force_n": [FORCE[k] * s for s in spread]}
        | ({"reach_m": [REACH[k] * s for s in spread]} if reach else {})
        for k in places
    ]


def known(tried: dict[int, TriedStick] | None = None, draws: int = 400, seed: int = 5, **site: Any) -> Ability:
    """Ability at a fingertip site with these readings."""
    heard = site.pop("recorded", None)
    data = {"name": "here", "part": "fingertip", "reading": readings()} | site
    found = ability(
        Site.model_validate(data),
        np.random.default_rng(seed),
        draws,
        tried=tried,
        recorded=None if heard is None else lambda _limb: heard,
        lightest_stick="dew",
    )
    assert found is not None
    return found


def assumed(found: Ability) -> dict[str, str]:
    return {said(one.what).removesuffix(" at the here"): said(one.value) for one in found.assumptions}


def abouts(found: Ability) -> set[str]:
    return {finding.about for finding in found.report.findings}


MEASURED: dict[str, Any] = {
    "rest": [{"force_n": [0.010, 0.011, 0.012]}], "involuntary_force_n": 0.01, "crossing_hz": 1.5,
    "limb_stiffness_n_per_m": 40.0, "force_noise_share": 0.05, "comfortable_of_maximal_share": 0.5,
    "along": [{"direction_deg": 90, "at_reach_m": 0.0025, "force_n": [0.14]}],
}  # fmt: skip


@pytest.mark.parametrize("weak", [0, 3, 6])
def test_the_weakest_direction_is_that_of_the_least_force(weak: int) -> None:
    """One of eight at a third of the force of the others: it is named, wherever it lies."""
    reading = [
        {
            "direction_deg": 45 * k,
            "force_n": [0.1, 0.11, 0.09] if k == weak else [0.3, 0.33, 0.27],
            "reach_m": [0.008] * 3,
        }
        for k in range(8)
    ]
    assert known(reading=reading).report.weakest_rad == pytest.approx(math.radians(45 * weak))


def test_nothing_read_is_no_ability() -> None:
    """Neither a force nor a stick: no ability, and reach alone does not make one."""
    rng = np.random.default_rng(0)
    reach_only = [{"direction_deg": 0, "reach_m": [0.01]}]
    for reading in ([], reach_only):
        site = Site.model_validate({"name": "here", "part": "hand", "reading": reading})
        assert ability(site, rng, 10) is None


def test_all_measured_leaves_nothing_assumed() -> None:
    """Eight directions three times, rest, tremor, limb, noise, fall-off and maximal force: no assumption is left, but
    that of the force on another day."""
    found = known(**MEASURED)
    assert [one.what for one in found.assumptions] == [message(StandIns.another_day, sites=(Name("here"),))]
    assert all(one.force_n.assumed is None and one.reach_m.assumed is None for one in found.report.directions)


def test_the_draws_are_of_another_day_and_the_day_can_be_taken_off() -> None:
    """Over 4,000 draws the log force spreads by the day's 17 % more than that of the visit, in quadrature, and alike in all
    directions; a further reading at the visit is weighed against the force of the visit alone."""
    found = known(draws=4000)
    other, visit = np.log(found.force_n[1:]), np.log(found.force_n[1:] / found.day_factor[1:, None])
    assert np.log(found.day_factor[1:]).std() == pytest.approx(0.17, abs=0.01)
    assert other.std(axis=0) == pytest.approx(np.hypot(visit.std(axis=0), 0.17), rel=0.05)
    half = [math.log(one.force_n.high / one.force_n.low) / 3.92 for one in found.report.directions]
    assert visit.std(axis=0) == pytest.approx(np.array(half), rel=0.10)


def test_draw_nought_is_the_best_single_figure() -> None:
    """The first draw is what people read; all draws are positive and finite."""
    found = known(draws=50)
    for k, one in enumerate(found.report.directions):
        assert found.force_n[0, k] == pytest.approx(one.force_n.value, rel=1e-9)
        assert found.reach_m[0, k] == pytest.approx(one.reach_m.value, rel=1e-9)
    for drawn in (found.force_n, found.reach_m, found.involuntary_n, found.crossing_hz, found.limb_stiffness_n_per_m):
        assert np.all(np.isfinite(drawn))
        assert np.all(drawn > 0)
    assert np.all(found.rest_force_n >= 0)


def test_the_same_readings_give_the_same_draws() -> None:
    """Seeded: the same twice, in whatever order the directions stand in the file."""
    one, same, other = known(), known(), known(reading=readings()[::-1])
    assert np.array_equal(one.force_n, same.force_n)
    assert np.array_equal(one.force_n, other.force_n)
    assert one.report.directions == other.report.directions


def test_four_directions_are_enough_and_the_others_are_said_to_be_read_off() -> None:
    """Four directions: eight judged; the four between wider, 'not measured', and named among the assumptions."""
    found = known(reading=readings((0, 2, 4, 6)))
    status = {round(math.degrees(one.direction_rad)): one for one in found.report.directions}
    assert set(status) == set(range(0, 360, 45))
    for degrees, one in status.items():
        if degrees % 90:
            assert one.status == "not measured"
            assert one.measured_force_n == ()
            assert one.force_n.assumed == message(EstimateNotes.neighbours)
            assert one.force_n.high / one.force_n.low > status[0].force_n.high / status[0].force_n.low
        else:
            assert one.status != "not measured"
            assert len(one.measured_force_n) == 3
    names = "forward-right, forward-left, back-left and back-right"
    assert f"Force {names}" in assumed(found)
    assert f"Movement range {names}" in assumed(found)


def test_single_readings_take_a_usual_scatter() -> None:
    """One reading a direction: 15 % of scatter is assumed, said twice, and the estimate of it has no interval."""
    found = known(reading=readings(repeats=1))
    assert assumed(found)["Scatter of a force reading"] == "15%"
    assert assumed(found)["Scatter of a movement range reading"] == "15%"
    scatter = found.report.force_scatter_share
    assert scatter.value == 0.15
    assert not scatter.has_interval
    assert scatter.why == message(EstimateNotes.nothing_repeated)
    assert scatter.assumed


def test_three_repeats_tell_their_own_scatter() -> None:
    """Repeats 1, 0.9, 1.1 in every direction: the scatter is the sd of their logarithms, by hand, with an interval."""
    scatter = known().report.force_scatter_share
    assert scatter.value == pytest.approx(np.log([1.0, 0.9, 1.1]).std(ddof=1), rel=1e-9)
    assert scatter.low < scatter.value < scatter.high


def test_no_reach_at_all_takes_the_parts_band() -> None:
    """Nobody measured reach: the band of a fingertip, 3 to 25 mm, assumed and wide."""
    found = known(reading=readings(reach=False))
    assert assumed(found)["Movement range"] == "anywhere from about 3.0 mm to 25 mm"
    for one in found.report.directions:
        assert one.reach_m.assumed == message(EstimateNotes.usual_range, part="fingertip")
        assert one.reach_m.low < 0.004
        assert one.reach_m.high > 0.018


def test_no_rest_reading_takes_the_parts_usual_and_its_warning_is_drawn() -> None:
    """A resting force nobody read is the usual one of the part, marked, within a third and three times."""
    found = known()
    assert assumed(found)["Resting force"] == "0.020 N, up to 3 times more or less"
    rest = found.report.rest_force_n
    assert (rest.value, rest.low, rest.high) == pytest.approx((0.02, 0.02 / 3, 0.06), rel=1e-9)
    assert rest.assumed
    assert found.rest_force_n[0] == 0.02
    low, high = np.quantile(found.rest_force_n[1:], (0.025, 0.975))
    assert (low, high) == pytest.approx((rest.low, rest.high), rel=0.25)


def test_the_last_support_counts() -> None:
    """The last rest entry is how the player will play; a rest of nought is nought, not unknown."""
    rest = [{"force_n": [0.06, 0.06]}, {"force_n": [0.015, 0.016], "direction_deg": 270, "support": "wedge"}]
    found = known(rest=rest)
    assert found.report.rest_force_n.value == pytest.approx(0.0155, rel=1e-9)
    assert found.rest_direction_rad == pytest.approx(1.5 * math.pi, rel=1e-9)
    assert "Resting force" not in assumed(found)
    still = known(rest=[{"force_n": [0.0, 0.0]}])
    assert np.all(still.rest_force_n == 0)
    assert "Resting force" not in assumed(still)


def test_one_rest_reading_has_an_assumed_scatter() -> None:
    """Read once: an interval all the same, and the scatter behind it marked."""
    found = known(rest=[{"force_n": 0.02}])
    assert assumed(found)["Scatter of a resting force reading"] == "15%"
    assert found.report.rest_force_n.low < 0.02 < found.report.rest_force_n.high
    assert found.report.rest_force_n.assumed == message(EstimateNotes.scatter_once, value_share=0.15)


@pytest.mark.parametrize("n", [1, 2, 3])
def test_rest_intervals_hold_the_truth(n: int) -> None:
    """Of 300 players whose resting force scatters by 15 % from reading to reading, 92 or more in 100 lie in the interval:
    two or three readings that happen to agree do not make it too narrow."""
    rng = np.random.default_rng(n)
    kept = []
    for _ in range(300):
        values = 0.02 * np.exp(0.15 * rng.standard_normal(n))
        site = Site.model_validate(
            {"name": "x", "part": "hand", "reading": readings((0,), repeats=1), "rest": [{"force_n": values.tolist()}]}
        )
        found = ability(site, rng, 2)
        assert found is not None
        kept.append(found.report.rest_force_n.low <= 0.02 <= found.report.rest_force_n.high)
    assert np.mean(kept) >= 0.92


def test_what_was_neither_typed_nor_recorded_stands_in_and_is_marked() -> None:
    """Tremor, its frequency, the limb, unsteadiness, fall-off and maximal force: marked twice each."""
    found = known()
    for what in (
        "Involuntary force", "Zero-crossing frequency of involuntary movement", "The limb's own stiffness", "Unsteadiness of a push",
        "How force falls off along the movement range", "Comfortable force as a share of the largest force",
    ):  # fmt: skip
        assert what in assumed(found)
    report = found.report
    for estimate in (
        report.involuntary_force_n, report.crossing_hz, report.limb_stiffness_n_per_m, report.force_noise_share,
    ):  # fmt: skip
        assert estimate.assumed
    assert all(one.replace_by for one in found.assumptions)


def test_a_recording_replaces_the_stand_in_and_a_typed_figure_wins() -> None:
    """0.012 N recorded; 0.02 N typed."""
    heard = Steadiness(Estimate(0.012, 0.010, 0.015), Estimate(2.2, 2.0, 2.4))
    found = known(recorded=heard)
    assert found.report.involuntary_force_n.value == 0.012
    assert found.report.crossing_hz.value == 2.2
    assert "Involuntary force" not in assumed(found)
    typed = known(recorded=heard, involuntary_force_n=0.02)
    assert typed.report.involuntary_force_n.value == 0.02
    assert typed.report.involuntary_force_n.why == message(EstimateNotes.one_figure)


def test_a_recording_without_a_positive_interval_is_used_with_a_wide_one() -> None:
    """An interval that reaches down to nothing must not end in a crash."""
    found = known(recorded=Steadiness(Estimate(0.012, 0.0, 0.03), Estimate(2.2, 2.0, 2.4)))
    assert np.log(found.involuntary_n[1:]).std() == pytest.approx(0.2, rel=0.15)


def test_a_force_of_nought_is_taken_as_half_a_step_and_asked_about() -> None:
    """Forward read 0 N on a gauge of 0.01 N steps: half a step, and what to do when there is no push at all."""
    reading = readings()
    reading[2]["force_n"] = [0.0, 0.0, 0.0]
    found = known(reading=reading, gauge_step_n=0.01)
    (finding,) = (one for one in found.report.findings if one.about == "zero_force")
    assert finding.level == "query"
    half_step = message(StandIns.half_step)
    forward_rad = (pytest.approx(math.pi / 2),)
    assert finding.text == message(AbilityFindings.zero_force, directions_rad=forward_rad, instead=half_step)
    forward = found.report.directions[2]
    assert forward.measured_force_n == (0.0, 0.0, 0.0)
    assert forward.force_n.value < 0.15
    assert forward.force_n.assumed == message(EstimateNotes.zero_read)
    assert assumed(found)["Force forward"] == "half the gauge's step"
    without = known(reading=reading)
    assert any("half the smallest force read" in said(one.text) for one in without.report.findings)


def test_only_noughts_without_a_step_are_refused() -> None:
    """Nothing but zeros tells no force at all: no figure is made up, and the remedy is named."""
    with pytest.raises(BadInput, match="0 in every reading") as refused:
        known(reading=[{"direction_deg": 0, "force_n": [0.0, 0.0]}])
    (problem,) = refused.value.problems
    assert place(problem) == 'player.toml, site "here", force'
    assert "gauge_step_n" in said(problem.remedy)
    assert known(reading=[{"direction_deg": 0, "force_n": [0.0, 0.0]}], gauge_step_n=0.01).force_n[0, 0] < 0.02


def test_the_end_of_the_gauge_is_at_least() -> None:
    """Left and back-left at 0.4 N, where the scale ends: said by name."""
    reading = readings(repeats=2)
    for k in (4, 5):
        reading[k]["force_n"] = [0.4, 0.4]
    reading[6]["force_n"] = [0.38, 0.39]
    found = known(reading=reading, gauge_limit_n=0.4)
    (finding,) = (one for one in found.report.findings if one.about == "end_of_the_gauge")
    assert finding.level == "fault"
    assert "The force read left and back-left is at the end" in said(finding.text)
    assert "at least 0.40 N" in said(finding.text)
    assert "end_of_the_gauge" not in abouts(known(gauge_limit_n=5.0))


def test_a_coarse_gauge_is_named_and_a_stick_offered() -> None:
    """0.1 N steps on forces of 0.3 N: too coarse; the lightest stick would do as a gauge."""
    found = known(gauge_step_n=0.1)
    (finding,) = (one for one in found.report.findings if one.about == "coarse_gauge")
    assert (finding.text.param("step_n"), finding.text.param("stick")) == (0.1, "dew")
    assert "coarse_gauge" not in abouts(known(gauge_step_n=0.01))


def test_a_gauge_that_is_not_at_nought_is_asked_about_and_nothing_subtracted() -> None:
    """0.05 N without load is over a tenth of 0.26 N; 0.01 N is not."""
    off = known(gauge_no_load_n=0.05)
    assert "gauge_zero" in abouts(off)
    assert off.report.directions[2].force_n.value == known().report.directions[2].force_n.value
    assert "gauge_zero" not in abouts(known(gauge_no_load_n=0.01))


def test_readings_along_the_reach_replace_the_straight_fall_off() -> None:
    """Forward, 0.26 N and 5 mm: three quarters of the force left at half the reach is a fall-off of power 2."""
    bent = known(along=[{"direction_deg": 90, "at_reach_m": 0.0025, "force_n": [0.195]}])
    assert bent.fall_off == pytest.approx(2.0, abs=0.25)
    assert "How force falls off along the movement range" not in assumed(bent)
    straight = known()
    assert straight.fall_off == 1.0
    useless = known(along=[{"direction_deg": 90, "at_reach_m": 0.005, "force_n": [0.01]}])
    assert useless.fall_off == 1.0
    (why,) = (one.why for one in useless.assumptions if one.what.text == "fall_off")
    assert why == message(StandIns.near_the_ends)


def on_stick(*shares: float, degrees: float | None = 90, **more: Any) -> dict[str, Any]:
    where = {} if degrees is None else {"direction_deg": degrees}
    return {"stick": "cedar", "reached_share": list(shares), **where, **more}


def test_sticks_alone_tell_ability() -> None:
    """No gauge in the bag: two sticks tried forward and right give an ability, marked as bracketed."""
    tries = [on_stick(0.9), on_stick(0.3), on_stick(1.0, degrees=0), on_stick(0.4, degrees=0)]
    found = known({0: CEDAR, 1: ASH, 2: CEDAR, 3: ASH}, reading=[], on_stick=tries)
    forward = found.report.directions[2]
    assert forward.status != "not measured"
    assert forward.force_n.assumed == message(EstimateNotes.bracketed)
    assert forward.force_n.n == 2
    assert "Force and movement range right and forward" in assumed(found)
    assert found.report.directions[4].status == "not measured"
    other = forward.force_other_day_n
    inside = (found.force_n[1:, 2] > 0.9 * other.low) & (found.force_n[1:, 2] < 1.1 * other.high)
    assert inside.mean() > 0.93


def test_a_stick_replaces_a_gauge_that_is_too_coarse_there_and_only_there() -> None:
    """0.05 N steps: forward (0.26 N) is read off the stick; with 0.005 N steps the gauge stays nearer to the truth."""
    coarse = known({0: CEDAR}, gauge_step_n=0.05, on_stick=[on_stick(0.2)])
    fine = known({0: CEDAR}, gauge_step_n=0.005, on_stick=[on_stick(0.2)])
    assert coarse.report.directions[2].force_n.assumed == message(EstimateNotes.bracketed)
    assert coarse.report.directions[0].force_n.assumed is None
    assert fine.report.directions[2].force_n.assumed is None


def test_a_stick_tried_without_a_direction_is_said_not_to_count() -> None:
    """Which way was not written down: not silently dropped."""
    found = known({0: CEDAR}, on_stick=[on_stick(0.4, degrees=None)])
    (finding,) = (one for one in found.report.findings if one.about == "no_direction")
    assert finding.text == message(AbilityFindings.no_direction, stick=Name("cedar"))


def test_two_tremors_tell_the_limb() -> None:
    """0.30 mm on 88 N/m and 0.60 mm on 29 N/m: (0.30 * 87.7 - 0.60 * 29.2)/(0.60 - 0.30) = 29.2 N/m, by hand."""
    tries = [
        {"stick": "ash", "tremor_m": [3.0e-4, 3.05e-4, 2.95e-4]},
        {"stick": "cedar", "tremor_m": [6.0e-4, 6.1e-4, 5.9e-4]},
    ]
    found = known({0: ASH, 1: CEDAR}, on_stick=tries)
    stiff, soft = (0.57 / 0.0065, 0.19 / 0.0065)
    by_hand = (3.0e-4 * stiff - 6.0e-4 * soft) / (6.0e-4 - 3.0e-4)
    assert found.report.limb_stiffness_n_per_m.value == pytest.approx(by_hand, rel=0.01)
    assert "The limb's own stiffness" not in assumed(found)


def test_the_limb_is_drawn_as_wide_as_its_interval() -> None:
    """Draws and interval are the same knowledge: of 95 % of normal draws the logarithms lie within 1.96 sd either way, so the
    sd is the width of the logarithms over 3.92 (scipy's normal quantile)."""
    tries = [
        {"stick": "ash", "tremor_m": [3.0e-4, 3.3e-4, 2.7e-4]},
        {"stick": "cedar", "tremor_m": [6.0e-4, 6.5e-4, 5.5e-4]},
    ]
    found = known({0: ASH, 1: CEDAR}, draws=60_000, on_stick=tries)
    told = found.report.limb_stiffness_n_per_m
    logs = np.log(found.limb_stiffness_n_per_m[1:])
    wide = 2 * stats.norm.ppf(0.975)
    off = 4 / math.sqrt(2 * len(logs))  # four standard errors of an sd of so many draws
    assert off < 0.012  # less than the difference between 3.92 and a rounded 4
    assert float(logs.std()) == pytest.approx(math.log(told.high / told.low) / wide, rel=off)


def test_two_tremors_that_are_alike_are_refused_and_the_stand_in_stays() -> None:
    """0.30 and 0.31 mm: a fault that names the site, and the usual figure, marked."""
    tries = [{"stick": "ash", "tremor_m": [3.0e-4, 3.3e-4]}, {"stick": "cedar", "tremor_m": [3.1e-4, 2.9e-4]}]
    found = known({0: ASH, 1: CEDAR}, on_stick=tries)
    (finding,) = (one for one in found.report.findings if one.about == "limb_stiffness")
    assert finding.level == "fault"
    assert said(finding.text).startswith("At the here: limb stiffness from tremor: found 0.30 mm and 0.31 mm")
    assert "cannot be told apart" in said(finding.text)
    assert "The limb's own stiffness" in assumed(found)


def test_tiring_is_told_with_its_interval() -> None:
    """Right at 0.34 N, read again at 0.24 N: the player tires; at 0.34 N again nothing is said."""
    worn = known(again_force_n=[0.24, 0.23, 0.25])
    (finding,) = (one for one in worn.report.findings if one.about == "tiring")
    assert "the player tires" in said(finding.text)
    assert worn.report.tiring_share is not None
    assert worn.report.tiring_share.value == pytest.approx(0.29, abs=0.02)
    assert "tiring" not in abouts(known(again_force_n=[0.34, 0.33]))


def test_spasms_noted_without_force_are_said_not_to_count() -> None:
    """A rate without a peak cannot be weighed, and one peak is the highest seen."""
    assert "spasms" in abouts(known(spasm={"peak_n": [], "rate_per_min": 3}))
    one = known(spasm={"peak_n": 20, "rate_per_min": 3})
    assert assumed(one)["Force of spasms"] == "anything from 0 to 20 N, all equally likely"
    assert one.spasm_rate_per_s == pytest.approx(0.05, rel=1e-9)
    assert "Force of spasms" not in assumed(known(spasm={"peak_n": [5, 9, 20], "rate_per_min": 3}))


def test_shake_on_tried_sticks_tells_the_involuntary_force() -> None:
    """The same 10 mN on sticks of 22 and 43 N/m with a limb of 30 N/m: 0.19 and 0.14 mm, by springs side by side.

    Nobody typed or recorded the involuntary force; what was noted on the sticks stands in before any usual figure."""
    site = Site.model_validate(
        {
            "name": "index", "part": "fingertip", "limb_stiffness_n_per_m": 30.0,
            "reading": [{"direction_rad": 0.0, "force_n": [0.5, 0.52, 0.48], "reach_m": [0.009]}],
            "on_stick": [
                {"stick": "light", "tremor_m": [0.010 / 52] * 2},
                {"stick": "half", "tremor_m": [0.010 / 73] * 2},
            ],
        }
    )  # fmt: skip
    tried = {
        0: TriedStick(0.07, 0.07 + 22 * 0.0045, 0.0045, 0.018),
        1: TriedStick(0.22, 0.22 + 43 * 0.0065, 0.0065, 0.016),
    }
    known = ability(site, np.random.default_rng(1), 50, tried=tried)
    assert known is not None
    told = known.report.involuntary_force_n
    assert told.value == pytest.approx(0.010, rel=1e-6)
    assert told.low < 0.010 < told.high
    assert told.assumed == message(EstimateNotes.shaken)
    assert not any(a.what.text == "involuntary_force" for a in known.assumptions)
