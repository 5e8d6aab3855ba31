"""Force on another day: from the player's own visits when there are three or more, else the usual figure; said either way."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from said import said
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.codes.stand_ins import StandIns
from stickwright.mechanics.ability import ability
from stickwright.mechanics.order_effect import DAY_SD, USUAL_DAYS, days_of, on_another_day
from stickwright.model.case import ForceRead
from stickwright.model.player import Site
from stickwright.report.tables import day_note

EIGHT = np.arange(8) * math.pi / 4
SITE = Site.model_validate(
    {"name": "chin", "part": "chin",
     "reading": [{"direction_deg": 45 * k, "force_n": [0.5, 0.52, 0.48], "reach_mm": [9]} for k in range(8)]}
)  # fmt: skip


def visits(days: list[float], *, repeats: int = 1, scatter: float = 0.0, seed: int = 0) -> list[ForceRead]:
    """Eight directions at a visit for each factor on the force."""
    rng = np.random.default_rng(seed)
    return [
        ForceRead(
            f"2026-03-{number + 1:02d}", "chin", float(phi),
            tuple((0.5 * (1 + 0.3 * math.cos(phi)) * day * np.exp(scatter * rng.standard_normal(repeats))).tolist()),
        )
        for number, day in enumerate(days)
        for phi in EIGHT
    ]  # fmt: skip


def test_three_visits_by_hand():
    """Days 10 % (of the logarithm) below, at and above the middle: sd 0.1, of the difference of two days 0.1414, two degrees
    of freedom, and by Student's table 4.303 sd either way at 95 %."""
    days = days_of(visits([math.exp(-0.1), 1.0, math.exp(0.1)]))
    assert days.sd == pytest.approx(0.14142, rel=1e-4)
    assert (days.degrees, days.visits) == (2, 3)
    today = Estimate(0.5, 0.5, 0.5)
    other = on_another_day(today, days)
    assert other.high == pytest.approx(0.5 * math.exp(0.60854), rel=1e-3)
    assert other.low == pytest.approx(0.5 * math.exp(-0.60854), rel=1e-3)
    told = days.estimate()  # chi-square with two degrees of freedom: 7.378 and 0.0506
    assert (told.low, told.high) == pytest.approx((0.2 / math.sqrt(7.378), 0.2 / math.sqrt(0.05064)), rel=1e-3)


@pytest.mark.parametrize(
    "read",
    [
        [],
        visits([1.0]),
        visits([0.8, 1.2]),
        [ForceRead(f"2026-03-0{k}", "chin", k * 1.0, (0.5,)) for k in range(1, 5)],  # no direction twice
        [ForceRead("", "chin", 0.0, (0.5 + 0.1 * k,)) for k in range(5)],  # visits without a date
    ],
)
def test_fewer_than_three_visits_that_compare_take_the_usual_figure(read):
    """None, one, two, or visits that share no direction: the usual spread."""
    assert days_of(read) is USUAL_DAYS


def test_visits_that_read_other_directions_do_not_mix_them():
    """A visit at which only the strong side was read is compared on that side alone."""
    strong = [
        one for one in visits([1.0, 1.1, 1.0]) if one.on_date != "2026-03-02" or math.cos(one.direction_rad) > 0.5
    ]
    assert days_of(strong).sd == pytest.approx(math.sqrt(2) * np.std([0, math.log(1.1), 0], ddof=1))


def test_readings_alike_to_the_digit_are_no_proof_that_days_are():
    """Three visits with the same mean, whose repeats scatter by 10 %: no less than that scatter leaves open,
    root 2 times 0.1 / sqrt(2 x 8)."""
    forces = (0.5 * math.exp(-0.0707), 0.5 * math.exp(0.0707))
    read = [ForceRead(f"2026-03-0{day}", "chin", float(phi), forces) for day in (1, 2, 3) for phi in EIGHT]
    assert days_of(read).sd == pytest.approx(0.1 / math.sqrt(8), rel=1e-3)


@pytest.mark.parametrize("number", [3, 4, 6])
def test_the_interval_for_another_day_holds_the_next_visit(number):
    """Simulated: players whose days differ by 8 to 30 %, read at several visits; the force of one more day lies within the
    interval about the last in 95 of 100, but for chance."""
    rng = np.random.default_rng(number)
    held = []
    for seed in range(400):
        sd = rng.uniform(0.08, 0.30)
        logs = sd * rng.standard_normal(number + 1)
        days = days_of(visits(np.exp(logs[:-1]).tolist(), repeats=3, scatter=0.12, seed=seed))
        held.append(abs(logs[-1] - logs[-2]) <= days.half_width(0.95))
    assert abs(np.mean(held) - 0.95) < 3 * math.sqrt(0.95 * 0.05 / 400) + 0.01


def test_draws_of_other_days_have_the_same_ends():
    """The draws that the ranking uses: one in forty beyond each end of Student's interval."""
    days = days_of(visits([0.9, 1.0, 1.15, 0.95]))
    drawn = days.logs(stats.norm.ppf((np.arange(4000) + 0.5) / 4000))
    assert np.mean(drawn > days.half_width(0.95)) == pytest.approx(0.025, abs=0.001)
    assert np.mean(drawn < -days.half_width(0.95)) == pytest.approx(0.025, abs=0.001)


def test_which_it_was_is_said():
    """With three visits a note with the spread and its interval, and no assumption; without, the assumption and what replaces it."""
    own = ability(SITE, np.random.default_rng(1), 50, days=days_of(visits([0.9, 1.0, 1.15])))
    usual = ability(SITE, np.random.default_rng(1), 50)
    assert own is not None
    assert usual is not None
    (note,) = [one.text for one in own.report.findings if one.about == "own_days"]
    assert "by the player's own 3 visits" in said(note)
    assert "in place of the usual 17%" in said(note)
    assert not [one for one in own.assumptions if one.what.text == "another_day"]
    assert "spread from the player's own visits" in day_note(own.report)
    (assumed,) = [one for one in usual.assumptions if one.what.text == "another_day"]
    assert assumed.replace_by == message(StandIns.more_visits, visits=3)
    assert "day-to-day spread assumed" in day_note(usual.report)
    width = [
        math.log(one.report.directions[0].force_other_day_n.high / one.report.directions[0].force_n.high)
        for one in (own, usual)
    ]
    assert width[0] > width[1] > 0
    assert days_of(visits([0.98, 1.0, 1.02, 1.0, 0.98, 1.02])).half_width(0.95) < 1.96 * DAY_SD
