"""Why so: every choice with its reason and what comes second, at a cost that an independent plan confirms."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from random_cases import random_case, random_ranking
from small_cases import action, case, fit, hub, offers_of, shared, site, stick, switch

from said import said
from stickwright.allocation.concurrency import pairs_of
from stickwright.allocation.explain import place_words, trade_words
from stickwright.allocation.places import places
from stickwright.allocation.problem import Way
from stickwright.allocation.questions import question_of
from stickwright.allocation.solve import Solver
from stickwright.errors import BadInput
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.sharing import Placement, Sharing, Term
from stickwright.model.wishes import Keep, Wishes

THIS = case(
    [site("left index"), site("right index", press=None), site("left foot", "foot", minds=3)],
    [
        action("steer", "two-axis", importance=9), action("sprint", "hold", longest_hold_s=3, together=["steer"]),
        action("menu", importance=2, helper=True, helper_price=0.5), action("jump", option="auto", option_price=4),
    ],
    sticks=[stick("ash"), stick("elm")], switches=[switch("pip", in_stock=2), switch("leaf")],
    helpers=[{"name": "sister"}], hubs=[hub(paired=1)],
)  # fmt: skip
RANKING = {"right index": [fit("right index", "ash", bits=2.5), fit("right index", "elm", bits=1.5)]}


def seeded(seed: int) -> tuple[Case, dict[str, list[Fit]]]:
    this = random_case(seed, most_actions=5, left=0.8)
    return this, random_ranking(seed, this)


def usable(this: Case) -> list[str]:
    return [one.name for one in this.player.site if one.cleared != "no"]


def same_choice(way: Way, one: Placement) -> bool:
    helper = way.label if way.how == "helper" else None
    return (way.action, way.how, way.site, way.device, way.toggle, helper) == (
        one.action, one.how, one.site, one.device, one.toggle, one.helper,
    )  # fmt: skip


def best_without(this: Case, ranking: dict[str, list[Fit]], one: Placement) -> float | None:
    """Points of the best plan in which an action is done otherwise: the whole question anew, nothing pruned or shut."""
    found = places(this, offers_of(this, ranking), usable=usable(this))
    others = replace(found, ways=tuple(way for way in found.ways if not same_choice(way, one)))
    answer = Solver(question_of(this, others, pairs_of(this.player), Wishes())).best()
    return answer.points if answer.possible else None


def holds_for_every_choice(this: Case, ranking: dict[str, list[Fit]], found: Sharing) -> None:
    for one in found.placements:
        other = best_without(this, ranking, one)
        if other is None:
            assert one.second_cost is None
            assert one.second.text == "no_other"
        else:
            assert one.second_cost == pytest.approx(found.points - other, abs=1e-6)


class TestSecondBest:
    """What comes second for each choice."""

    def test_by_hand(self) -> None:
        """Every second cost is what the plan loses when that choice is not to be had."""
        found = shared(THIS, RANKING)
        assert found.clash is None
        holds_for_every_choice(THIS, RANKING, found)

    @given(st.integers(0, 10**6))
    @settings(max_examples=25)
    def test_over_invented_cases(self, seed: int) -> None:
        """Law: the cost of the second best is the loss of a plan reckoned anew without the choice."""
        this, ranking = seeded(seed)
        found = shared(this, ranking, usable=usable(this))
        if found.clash is None:
            holds_for_every_choice(this, ranking, found)

    def test_what_else_moves_is_told(self) -> None:
        """One part for two: what takes the place of the other is named."""
        this = case(
            [site("left index"), site("right index")],
            [action("jump"), action("fire", together=["jump"])],
            switches=[switch("pip", in_stock=2)],
        )
        jump = shared(this).placements[0]
        assert said(jump.second).startswith(
            "right index on pip; then fire goes to left index on pip: scores almost the same"
        )
        assert jump.second_cost == 0.0

    def test_no_other_way_says_what_comes_nearest(self) -> None:
        """The foot cannot press so often: that is why there is no other way."""
        this = case(
            [site("left index"), site("left foot", "foot", press={"rate_per_s": [0.1]})],
            [action("jump", busy_presses_per_min=20)],
            switches=[switch("pip")],
        )
        jump = shared(this).placements[0]
        assert jump.second_cost is None
        assert said(jump.second).startswith(
            "There is no other way. The nearest fails: left foot on pip: the busiest minute has 20"
        )
        assert "the only control site able to do this" in said(jump.reason)

    def test_what_is_excluded_is_never_what_comes_nearest(self) -> None:
        """Done without, a device or a part is no way at all: neither is quoted, whatever it failed by."""
        this = case(
            [site("left index"), site("left foot", "foot", press={"rate_per_s": [0.1]})],
            [action("jump", busy_presses_per_min=20)],
            switches=[switch("pip"), switch("slab")],
        )
        for gone in ("left foot", "slab"):
            jump = shared(this, wishes=Wishes(without=(gone,))).placements[0]
            assert gone not in said(jump.second)


class TestReasons:
    """Why here."""

    def test_every_placement_has_its_reason_and_a_second(self) -> None:
        """Nothing is placed without a word why."""
        for one in shared(THIS, RANKING).placements:
            assert one.reason, one.action
            assert one.second, one.action

    def test_the_points_are_the_sum_of_their_terms(self) -> None:
        """Each cost is told under its own name and adds up."""
        for one in shared(THIS, RANKING).placements:
            assert one.points == pytest.approx(sum(term.points for term in one.terms), abs=1e-3)

    def test_left_to_a_helper_because_no_part_can(self) -> None:
        """The reason names the part that comes nearest, and what is missing."""
        this = case([site("chin", "chin", press=None)], [action("menu", helper=True)], helpers=[{"name": "sister"}])
        menu = shared(this).placements[0]
        assert menu.how == "helper"
        assert said(menu.reason).startswith("no control site of the player can do it: chin: ")


class TestAlternatives:
    """Other plans that differ in something that matters."""

    def test_fewest_points_lost_first_and_none_is_the_plan_itself(self) -> None:
        """The first is the second best; each names the actions that change."""
        found = shared(THIS, RANKING)
        losses = [one.loss for one in found.alternatives]
        assert losses
        assert losses == sorted(losses)
        assert all(loss >= 0 for loss in losses)
        for one in found.alternatives:
            assert one.changed
            assert one.points == pytest.approx(found.points - one.loss, abs=1e-6)
            for name in one.changed[:3]:
                assert f"{name}: " in said(one.sentence)

    def test_the_first_loses_as_little_as_any_choice_undone(self) -> None:
        """No single choice can be undone at less than the first other plan costs."""
        found = shared(THIS, RANKING)
        costs = [one.second_cost for one in found.placements if one.second_cost is not None]
        assert found.alternatives[0].loss == pytest.approx(min(costs), abs=1e-6)

    @pytest.mark.parametrize("most", [0, 1, 2])
    def test_no_more_than_are_wanted(self, most: int) -> None:
        """As many as asked for."""
        assert len(shared(THIS, RANKING, wishes=Wishes(alternatives=most)).alternatives) == most


class TestElsewhere:
    """Why not there: every other place priced, or the reason."""

    @pytest.mark.parametrize("name", ["steer", "sprint", "menu", "jump"])
    def test_the_cost_is_the_loss_when_it_is_kept_there(self, name: str) -> None:
        """What a place costs is what the plan loses when --keep pins the action there."""
        found = shared(THIS, RANKING, why=name)
        told = dict(found.elsewhere)[name]
        here = next(one for one in found.placements if one.action == name)
        names = {one.name for one in THIS.player.site} - {here.site}
        assert names <= {one.where for one in told}
        assert any(one.cost is not None for one in told) or name == "steer"
        for one in told:
            kept = shared(THIS, RANKING, wishes=Wishes(keep=(Keep(name, one.where),)))
            if one.cost is None:
                assert kept.clash is not None
                assert one.sentence
            else:
                assert kept.clash is None
                assert one.cost == pytest.approx(found.points - kept.points, abs=1e-6)

    @given(st.integers(0, 10**6))
    @settings(max_examples=25)
    def test_over_invented_cases(self, seed: int) -> None:
        """Law: the price of a place is the loss of a plan that keeps the action there; where it has none, no plan does."""
        this, ranking = seeded(seed)
        name = this.game.action[seed % len(this.game.action)].name
        found = shared(this, ranking, usable=usable(this), why=name)
        if found.clash is not None:
            return
        others = {
            one.name
            for part in (this.player.helper, this.kit.stick, this.kit.switch, this.kit.controller)
            for one in part
        }
        others |= {name} | ({"option", "helper", "dropped"} & {one.name for one in this.player.site})
        for one in dict(found.elsewhere)[name]:
            if one.where in others:  # a part named like something else: keep means either
                continue
            kept = shared(this, ranking, usable=usable(this), wishes=Wishes(keep=(Keep(name, one.where),)))
            if one.cost is None:
                assert kept.clash is not None
            else:
                assert one.cost == pytest.approx(found.points - kept.points, abs=1e-6)

    def test_cheapest_first_then_what_cannot_be(self) -> None:
        """Those that could be, by cost; then the others."""
        told = dict(shared(THIS, RANKING, why="menu").elsewhere)["menu"]
        costs = [one.cost for one in told if one.cost is not None]
        assert costs == sorted(costs)
        assert [one.cost is None for one in told] == sorted(one.cost is None for one in told)

    def test_possible_alone_but_not_with_the_rest(self) -> None:
        """The only hand with a stick could press, but then nobody would steer: that is said."""
        this = case([site("right index"), site("left index")], [action("steer", "two-axis"), action("jump")],
                    sticks=[stick("ash")], switches=[switch("pip")])  # fmt: skip
        told = dict(shared(this, {"right index": [fit("right index", "ash")]}, why="jump").elsewhere)["jump"]
        assert [(one.where, one.cost) for one in told] == [("right index", None)]
        assert said(told[0].sentence) == "possible by itself, but then steer could not be done"

    def test_only_the_action_asked_about_is_priced(self) -> None:
        """The others say what cannot be, and ask nobody else."""
        found = dict(shared(THIS, RANKING, why="menu").elsewhere)
        assert all(one.cost is None for name in ("steer", "sprint", "jump") for one in found[name])


def test_a_place_in_words() -> None:
    """Who or what does it."""
    assert (
        said(place_words(Placement("jump", "site", site="chin", device="pip", toggle=True)))
        == "chin on pip, press on, press off"
    )
    assert said(place_words(Placement("jump", "helper", helper="sister"))) == "sister"
    assert said(place_words(Placement("jump", "option", label="auto"))) == "the game itself (auto)"
    assert said(place_words(Placement("jump", "dropped"))) == "left out"


def test_a_trade_names_what_is_lost_before_what_is_gained() -> None:
    """Less precise, but less effort; who does it comes before all else."""

    def placed(precision: float, effort: float, how: str = "site") -> list[Placement]:
        terms = (Term("precision", precision, ""), Term("effort", effort, ""))
        return [Placement("steer", how, site="chin" if how == "site" else None, terms=terms if how == "site" else ())]  # type: ignore[arg-type]

    assert said(trade_words(placed(-2, -0.1), placed(-1, -1), {}, {})) == "less precise, but less effort"
    assert said(trade_words(placed(-1, -1), placed(-1, -1), {}, {})) == "as good by these figures"
    assert said(trade_words(placed(0, 0, "helper"), placed(-1, -1), {}, {})).startswith("more done by somebody else")


def test_as_many_left_to_others_is_told_by_what_the_player_minds() -> None:
    """Menu for digging: the helper still does one action, but one that costs the player 3 points more, or less."""

    def plan(menu: str, dig: str) -> tuple[Placement, ...]:
        prices = {"menu": -1.0, "dig": -4.0}
        return tuple(
            Placement(action, how, terms=(Term("helper", prices[action], ""),) if how == "helper" else ())  # type: ignore[arg-type]
            for action, how in (("menu", menu), ("dig", dig))
        )

    mild, hard = plan("helper", "site"), plan("site", "helper")
    assert said(trade_words(hard, mild, {}, {})) == "others do what the player would rather do"
    assert said(trade_words(mild, hard, {}, {})) == "others do what the player minds less"


def test_names_that_are_not_there_are_refused() -> None:
    """A wish for a place nobody has is no plan."""
    with pytest.raises(BadInput, match="Did you mean 'left foot'"):
        shared(THIS, RANKING, wishes=Wishes(keep=(Keep("menu", "left fot"),)))
