"""Laws of trials: what the lot can give, chances of false alarms, intervals that hold, and what cannot be concluded."""

from __future__ import annotations

import itertools
import math
from collections import Counter

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.codes.evidence import Evidence
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.evidence.between_players import between_players, small_sample_factor
from stickwright.evidence.course import crossing_days, trend_over_days
from stickwright.evidence.designs import Alternating, Design, Pairs, Phases, Starts, smallest_p
from stickwright.evidence.effects import learning_curve, mean_difference, ratio_of_means, with_practice
from stickwright.evidence.goals import goal_score
from stickwright.evidence.kit_coverage import BOUND, best_kit, greedy_kit
from stickwright.evidence.overlap import nap, overlap
from stickwright.evidence.power import chance_to_show, false_alarm_share
from stickwright.evidence.randomisation import randomisation_test

DESIGNS: list[Design] = [
    Alternating(3, 4), Alternating(4, 4, 2), Alternating(4, 3, 1), Pairs(4), Phases(10, 2, 3), Phases(14, 4, 2), Starts(8, (2, 4, 5)),
]  # fmt: skip


@pytest.mark.parametrize("design", DESIGNS, ids=repr)
def test_every_order_once_and_by_the_rules(design: Design) -> None:
    """As many as counted, none twice, and what is drawn is among them."""
    orders = list(design.orders())
    assert len(orders) == design.count() == len(set(orders))
    assert all(len(one) == design.trials for one in orders)
    drawn = {tuple(row) for row in design.drawn(np.random.default_rng(1), 200).tolist()}
    assert drawn <= set(orders)


@pytest.mark.parametrize("design", DESIGNS, ids=repr)
def test_every_order_is_as_likely(design: Design) -> None:
    """Chi-squared of 100 draws an order, at one in a thousand."""
    from scipy.stats import chi2

    drawn = Counter(tuple(row) for row in design.drawn(np.random.default_rng(2), 100 * design.count()).tolist())
    apart = sum((drawn[one] - 100) ** 2 / 100 for one in design.orders())
    assert apart <= (chi2.ppf(0.999, design.count() - 1) if design.count() > 1 else 0)


def test_most_alike_in_a_row() -> None:
    """Never more than asked, and the limit is reached."""
    runs = [max(len(list(group)) for _, group in itertools.groupby(one)) for one in Alternating(5, 5, 2).orders()]
    assert max(runs) == 2


@pytest.mark.parametrize(
    "made",
    [
        lambda: Alternating(5, 1, 2), lambda: Alternating(0, 3), lambda: Pairs(0), lambda: Phases(5, 2, 3), lambda: Phases(9, 1),
        lambda: Starts(6, (2,)), lambda: Starts(6, (0, 3)), lambda: Starts(6, (3, 3)),
    ],
)  # fmt: skip
def test_designs_that_cannot_be(made) -> None:
    """Each says what is wrong."""
    with pytest.raises(BadInput) as refused:
        made()
    assert "Design of the trial" in str(refused.value)


def test_three_of_each_can_never_show_it() -> None:
    """Said beforehand: 3 and 3 reach 0.10, 4 and 4 reach 0.029 (common practice to say so; counted)."""
    assert smallest_p(Alternating(3, 3)) == pytest.approx(0.1)
    assert smallest_p(Alternating(4, 4)) == pytest.approx(2 / 70)
    assert smallest_p(Phases(14, 2, 3)) == pytest.approx(1 / 9)
    found = randomisation_test([1, 9, 2, 8, 1, 9], [False, True] * 3, Alternating(3, 3))
    assert not found.difference.has_interval
    assert found.difference.why == message(Evidence.too_few_orders, smallest_share=0.1)


@given(st.lists(st.integers(-50, 50), min_size=8, max_size=8), st.integers(0, 69), st.integers(-20, 20))
def test_a_shift_moves_the_interval_by_as_much(values: list[int], order: int, shift: int) -> None:
    """And never the p of no difference where both are shifted alike."""
    design = Alternating(4, 4)
    drawn = np.array(list(design.orders())[order])
    plain = randomisation_test(values, drawn, design)
    assert 1 / 70 <= plain.p <= 1
    assert randomisation_test(np.array(values) + shift, drawn, design).p == plain.p
    moved = randomisation_test(np.array(values) + shift * drawn, drawn, design)
    if plain.difference.interval is not None and moved.difference.interval is not None:
        assert moved.difference.lower == pytest.approx(plain.difference.lower + shift, abs=1e-5)
        assert moved.difference.upper == pytest.approx(plain.difference.upper + shift, abs=1e-5)
        assert plain.difference.lower <= plain.difference.number <= plain.difference.upper


def test_missed_trials_count_in_no_order() -> None:
    """A missed trial leaves the others' difference as it is; nothing is put in its place."""
    values = [4, 7, np.nan, 8, 3, 6, 9, 5]
    found = randomisation_test(values, [False, True, False, True, False, True, True, False], Alternating(4, 4))
    assert found.difference.value == pytest.approx(np.mean([7, 8, 6, 9]) - np.mean([4, 3, 5]))
    assert found.difference.n == 7


def test_a_sample_of_orders_agrees_with_all(monkeypatch: pytest.MonkeyPatch) -> None:
    """Within the error of the sample; the drawn order counts too, so p is never 0."""
    rng = np.random.default_rng(3)
    design = Alternating(7, 7)
    drawn = design.drawn(rng)[0]
    values = rng.normal(0, 1, 14) + 1.2 * drawn
    exact = randomisation_test(values, drawn, design)
    monkeypatch.setattr("stickwright.evidence.randomisation.MOST_EXACT", 100)
    monkeypatch.setattr("stickwright.evidence.randomisation.DRAWS", 4000)
    sampled = randomisation_test(values, drawn, design)
    assert (exact.exact, sampled.exact) == (True, False)
    assert sampled.p == pytest.approx(exact.p, abs=4 * math.sqrt(exact.p / 4000))
    assert sampled.p >= 1 / 4001


@pytest.mark.parametrize("neighbours", [0.0, 0.5])
@pytest.mark.parametrize("design", [Alternating(5, 5), Alternating(6, 6, 2), Pairs(7)], ids=repr)
def test_false_alarms_stay_below_five_in_a_hundred(design: Design, neighbours: float) -> None:
    """Order drawn by lot: whatever the errors are, also where neighbours are alike; 2,000 studies each."""
    found = false_alarm_share(design, neighbours=neighbours)
    assert found.number <= 0.05 + 3 * math.sqrt(0.05 * 0.95 / 2000)


def test_the_interval_holds_the_truth() -> None:
    """95% of 400 studies with a true difference of 1.5, at least, within the error of so many."""
    rng, design, inside = np.random.default_rng(4), Alternating(5, 5), 0
    for _ in range(400):
        drawn = design.drawn(rng)[0]
        found = randomisation_test(rng.normal(0, 1, 10) + 1.5 * drawn, drawn, design).difference
        inside += found.lower <= 1.5 <= found.upper
    assert inside / 400 >= 0.95 - 3 * math.sqrt(0.95 * 0.05 / 400)


def test_power_against_the_closed_form() -> None:
    """Ten and ten trials with normal errors: near the power of the t test (noncentral t)."""
    from scipy.stats import nct, t

    n, difference = 10, 1.3
    limit = float(t.ppf(0.975, 2 * n - 2))
    expected = 1 - float(nct.cdf(limit, 2 * n - 2, difference * math.sqrt(n / 2)))
    found = chance_to_show(Alternating(n, n), difference, 1.0, studies=1500)
    assert found.number == pytest.approx(expected, abs=0.04)


@pytest.mark.parametrize("neighbours", [-0.5, 0.0, 0.6])
def test_power_of_pairs_whose_neighbours_are_alike(neighbours: float) -> None:
    """Ten pairs: near the power of the paired t test, whose differences have a variance of 2 (1 - r)."""
    from scipy.stats import nct, t

    n, difference = 10, 0.9
    towards = difference * math.sqrt(n / (2 * (1 - neighbours)))
    expected = 1 - float(nct.cdf(float(t.ppf(0.975, n - 1)), n - 1, towards))
    found = chance_to_show(Pairs(n), difference, 1.0, neighbours=neighbours, studies=1500)
    assert found.number == pytest.approx(expected, abs=0.04)


@pytest.mark.parametrize("practice", [-2.0, 0.0, 2.0, 4.0])
@pytest.mark.parametrize("design", [Alternating(5, 4), Phases(14, 3, 3)], ids=repr)
def test_power_beside_practice(design: Design, practice: float) -> None:
    """Trials without any spread: the share of orders in which the test shows a difference that practice lies over, counted one by one."""
    course = np.log(np.arange(1, design.trials + 1)) / math.log(design.trials)
    orders = [np.array(one) for one in design.orders()]
    p = [randomisation_test(1.0 * order + practice * course, order, design).p for order in orders]
    found = chance_to_show(design, 1.0, 1e-9, practice=practice, studies=1500)
    assert found.number == pytest.approx(np.mean(np.array(p) <= 0.05), abs=0.04)


def test_several_players_interval_by_simulation() -> None:
    """At each end of the interval, one in forty studies is as far off as this one: noncentral t by its definition, drawn by lot."""
    cases = [([3, 4, 3, 5], [7, 8, 7, 9]), ([5, 6, 6, 5], [9, 9, 10, 8]), ([2, 3, 2, 3], [5, 7, 6, 6])]
    found = between_players(cases)
    assert found is not None
    variance, across = found.within_sd**2 + found.between_sd**2, 24 / 4
    theta, factor = found.within_sd / math.sqrt(across * variance), small_sample_factor(found.degrees)
    seen = found.difference / math.sqrt(variance) / theta
    rng, many = np.random.default_rng(10), 200_000
    normal, spread = rng.normal(0, 1, many), np.sqrt(rng.chisquare(found.degrees, many) / found.degrees)
    off = [(normal + end / factor / theta) / spread for end in (found.size.lower, found.size.upper)]
    assert np.mean(off[0] >= seen) == pytest.approx(0.025, abs=0.0015)
    assert np.mean(off[1] <= seen) == pytest.approx(0.025, abs=0.0015)


def test_practice_is_not_the_set_up() -> None:
    """B always later on a course that falls by practice alone: the plain ratio claims a gain, the one with practice taken out does not."""
    rng = np.random.default_rng(5)
    number = np.arange(1, 21)
    b = np.repeat([False, True, False, True], 5)
    inside, claimed = 0, 0
    for _ in range(300):
        y = 10 * number**-0.3 * np.exp(rng.normal(0, 0.05, 20))
        found = with_practice(y, b)
        assert found is not None
        inside += found.ratio.lower <= 1 <= found.ratio.upper
        claimed += found.plain_ratio < 0.85
    assert claimed > 290
    assert inside / 300 >= 0.95 - 3 * math.sqrt(0.95 * 0.05 / 300)


def test_errors_alike_are_said() -> None:
    """Slow drift in the errors: the correlation is told as a limit."""
    number = np.arange(24)
    found = with_practice(10 + np.sin(number / 4), number % 2 == 0)
    assert found is not None
    assert [one.code for one in found.notes] == ["Evidence.neighbours_alike"]


@pytest.mark.parametrize("sd", [0.3, 1.0])
def test_nonoverlap_interval_holds_the_truth(sd: float) -> None:
    """Normal trials, six and seven of them: the true share lies inside in at least 92 of 100 (1,000 studies)."""
    from scipy.stats import norm

    rng, truth, inside = np.random.default_rng(6), float(norm.cdf(0.5 / (sd * math.sqrt(2)))), 0
    for _ in range(1000):
        found = nap(rng.normal(0, sd, 6), rng.normal(0.5, sd, 7))
        inside += found.lower <= truth <= found.upper
    assert inside / 1000 >= 0.92


@given(st.lists(st.integers(0, 9), min_size=3, max_size=8), st.lists(st.integers(0, 9), min_size=3, max_size=8))
def test_nonoverlap_laws(a: list[int], b: list[int]) -> None:
    """Changed about it is the rest of 1; an interval holds it; tau is twice it less 1."""
    found, turned = nap(a, b), nap(b, a)
    assert found.number + turned.number == pytest.approx(1)
    assert 0 <= found.lower <= found.number <= found.upper <= 1
    both = overlap(a, b)
    assert both is not None
    assert both.tau == pytest.approx(2 * found.number - 1)


def test_what_cannot_be_said() -> None:
    """One trial, none, no variation, figures not above zero: a reason, never a figure that looks sure."""
    assert mean_difference([], [1.0]).why == message(Evidence.no_trials)
    assert mean_difference([1.0], [2.0, 3.0]).why == message(Evidence.few_trials, least=2)
    assert mean_difference([1.0, 1.0], [2.0, 2.0]).why == message(Evidence.no_variation)
    assert ratio_of_means([0.0, -1.0], [2.0, 3.0]).why == message(Evidence.ratio_above_0)
    assert nap([1, 2], [3, 4, 5]).why == message(Evidence.few_trials, least=3)
    assert overlap([], [1]) is None
    assert with_practice([1.0, 2, 3, 4, 5], [True] * 5) is None
    assert learning_curve([1.0, 2.0]) is None


def test_a_ratio_holds_the_truth() -> None:
    """Log-normal trials, B 20% less: inside in at least 92 of 100 (600 studies)."""
    rng, inside = np.random.default_rng(7), 0
    for _ in range(600):
        found = ratio_of_means(10 * np.exp(rng.normal(0, 0.15, 6)), 8 * np.exp(rng.normal(0, 0.15, 6)))
        inside += found.lower <= 0.8 <= found.upper
    assert inside / 600 >= 0.92


def test_a_ratio_of_few_trials_by_hand() -> None:
    """Three trials about 10 and four about 6: squared spreads over counts and means are 1/75 and 1/54; half of each is taken off."""
    from scipy.stats import t

    found = ratio_of_means([8, 10, 12], [4, 6, 8, 6])
    log = math.log(0.6) + 1 / 108 - 1 / 150
    spread = 1 / 75 + 1 / 54
    half = t.ppf(0.975, spread**2 / ((1 / 75) ** 2 / 2 + (1 / 54) ** 2 / 3)) * math.sqrt(spread)
    expected = [math.exp(log + off) for off in (0.0, -half, half)]
    assert [found.number, found.lower, found.upper] == pytest.approx(expected)


def test_few_trials_of_uneven_spread_give_no_other_ratio_on_average() -> None:
    """Three trials with half their mean as spread against three steady ones, and the other way: the log is right on average."""
    rng = np.random.default_rng(9)
    for wide_first in (True, False):
        logs = []
        for _ in range(3000):
            wide, steady = rng.gamma(4, 2.5, 3), rng.normal(10, 0.1, 3)
            found = ratio_of_means(*((wide, steady) if wide_first else (steady, wide)))
            logs.append(math.log(found.number))
        assert np.mean(logs) == pytest.approx(0, abs=3.5 * np.std(logs) / math.sqrt(len(logs)))


def test_still_improving() -> None:
    """A steady measure is not said to improve beyond chance; a course that falls is."""
    rng = np.random.default_rng(8)
    number = np.arange(1, 31)
    wrong = 0
    for _ in range(200):
        steady = learning_curve(10 * np.exp(rng.normal(0, 0.05, 30)))
        assert steady is not None
        wrong += steady.still_improving is True
    assert wrong / 200 <= 0.05 + 3 * math.sqrt(0.05 * 0.95 / 200)
    falling = learning_curve(10 * number**-0.5 * np.exp(rng.normal(0, 0.02, 30)))
    assert falling is not None
    assert falling.still_improving is True


def test_trend_and_the_day_it_passes_a_limit() -> None:
    """Force that falls by 20% a year, five visits: the ratio, and the day on which 1.2 N is reached."""
    days = [0, 100, 200, 300, 400]
    values = [2.0 * 0.8 ** (day / 365.25) for day in days]
    found = trend_over_days(days, values)
    assert found is not None
    assert found.per_year.value == pytest.approx(0.8)
    expected = 365.25 * math.log(1.2 / found.now) / math.log(0.8)
    assert crossing_days(found, 1.2).value == pytest.approx(expected)
    assert crossing_days(found, 3.0).why == message(Evidence.not_towards)


def test_a_trend_that_may_be_none_has_no_last_day() -> None:
    """The interval of the day is open upwards, and its lower end is the earliest."""
    found = trend_over_days([0, 90, 180, 270], [2.0, 2.1, 1.8, 1.9])
    assert found is not None
    when = crossing_days(found, 1.0)
    assert when.low is not None
    assert when.endless
    assert when.low == pytest.approx(365.25 * math.log(1.0 / found.now) / math.log(found.per_year.lower))
    assert when.low < when.number


@pytest.mark.parametrize("limit", [1.3, 3.0], ids=["falls", "grows"])
def test_the_earliest_and_the_latest_day_by_hand(limit: float) -> None:
    """The line through what is now, with the steepest and the flattest year of the interval."""
    days, values = [0, 60, 140, 200, 280, 350], [2.0, 1.93, 1.85, 1.7, 1.72, 1.6]
    found = trend_over_days(days, values if limit < 2 else [3.6 / value for value in values])
    assert found is not None
    when = crossing_days(found, limit)
    by_hand = [
        365.25 * math.log(limit / found.now) / math.log(year)
        for year in (found.per_year.lower, found.per_year.number, found.per_year.upper)
    ]
    assert [when.lower, when.number, when.upper] == pytest.approx(sorted(by_hand))
    assert when.lower < when.number < when.upper


def test_visits_on_one_day_are_one() -> None:
    """Two on a day count once, by their geometric mean; a clock set back does no harm."""
    twice = trend_over_days([0, 0, 90, 180], [1.0, 4.0, 2.0, 2.0])
    once = trend_over_days([180, 0, 90], [2.0, 2.0, 2.0])
    assert twice is not None
    assert once is not None
    assert twice.visits == once.visits == 3
    assert twice.now == pytest.approx(once.now)


def test_goals_that_cannot_be() -> None:
    """Each is one sentence that says what was expected."""
    for reached, weights in (([], None), ([3], None), ([0], [0.0]), ([0, 1], [1.0])):
        with pytest.raises(BadInput):
            goal_score(reached, weights)


@given(st.lists(st.sampled_from([-2, -1, 0, 1, 2]), min_size=1, max_size=6), st.floats(0.1, 50))
def test_scaling_all_weights_changes_nothing(reached: list[int], factor: float) -> None:
    """Only the ratios of weights count."""
    weights = [1.0 + place for place in range(len(reached))]
    assert goal_score(reached, [factor * one for one in weights]) == pytest.approx(goal_score(reached, weights))


@given(st.lists(st.frozensets(st.integers(0, 7), max_size=5), min_size=1, max_size=6), st.integers(0, 8), st.data())
def test_the_best_kit_is_the_best(serves: list[frozenset[int]], budget: int, data: st.DataObject) -> None:
    """Against every set there is; the quick choice is within its bound at equal costs."""
    costs = data.draw(st.lists(st.integers(1, 3), min_size=len(serves), max_size=len(serves)))
    sets = [one for size in range(len(serves) + 1) for one in itertools.combinations(range(len(serves)), size)]
    most = max(
        len(frozenset().union(*(serves[i] for i in one))) for one in sets if sum(costs[i] for i in one) <= budget
    )
    found = best_kit(serves, costs, budget)
    assert (found.served, found.most) == (most, most)
    assert found.cost <= budget
    alike = [1] * len(serves)
    assert greedy_kit(serves, alike, budget).served >= BOUND * best_kit(serves, alike, budget).served - 1e-9


def test_what_is_owned_costs_nothing() -> None:
    """And stays in the set."""
    found = best_kit([frozenset({1, 2}), frozenset({3})], [5, 2], 2, frozenset({0}))
    assert (found.chosen, found.served, found.cost) == ((0, 1), 3, 2)


def test_what_is_owned_stays_where_another_serves_the_same() -> None:
    """It is there whether it serves anybody or not; what would have to be bought and serves nobody further is left out."""
    found = best_kit([frozenset({1}), frozenset({1, 2}), frozenset({2})], [5, 1, 1], 2, frozenset({0}))
    assert (found.chosen, found.served, found.cost) == ((0, 1), 2, 1)
