"""Two plans beside each other: what differs, and which is worth more, on the demo case with and without its second switch."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kept import planned
from said import said
from stickwright.files.folder import read_case
from stickwright.model.plan import Plan
from stickwright.model.wishes import Wishes
from stickwright.web.demo import demo_case
from stickwright.web.plan_differences import differences


@pytest.fixture(scope="module")
def plans() -> tuple[Plan, Plan]:
    case = read_case(demo_case())
    return planned(case, draws=50), planned(case, draws=50, wishes=Wishes(without=("small light switch",)))


def test_a_plan_beside_itself_differs_in_nothing(plans: tuple[Plan, Plan]) -> None:
    """Every row is the same, and neither is worth more."""
    found = differences(plans[0], plans[0])
    assert not any(row.differs for row in (*found.actions, *found.figures))
    assert said(found.sentence) == "Every action is done the same way. Both score the same."


def test_what_differs_is_told_from_either_side(plans: tuple[Plan, Plan]) -> None:
    """Rows are those of the plans' own placements; the better one is named by its place, whichever way they are laid."""
    one, other = plans
    assert one.sharing is not None
    assert other.sharing is not None
    there, back = differences(one, other), differences(other, one)
    done = {each.action: (each.how, each.site, each.device) for each in one.sharing.placements}
    changed = {
        each.action for each in other.sharing.placements if done[each.action] != (each.how, each.site, each.device)
    }
    assert {row.what for row in there.actions if row.differs} == changed != set()
    assert [(row.first, row.second) for row in there.actions] == [(row.second, row.first) for row in back.actions]
    assert one.sharing.points > other.sharing.points
    assert "The first plan scores" in said(there.sentence)
    assert "The second plan scores" in said(back.sentence)


def test_a_plan_that_shares_nothing_out_has_only_its_sticks(plans: tuple[Plan, Plan]) -> None:
    """A game without actions gives a plan without a sharing-out: nothing is made up about it."""
    alone = replace(plans[0], sharing=None, mounts=())
    found = differences(alone, alone)
    assert found.actions == ()
    assert any(said(row.what).endswith(": stick") for row in found.figures)


def test_plans_for_different_games_are_compared_only_in_what_both_have(plans: tuple[Plan, Plan]) -> None:
    """The other game lacks an action: it is not compared, no score is, and the sentence says why."""
    one = plans[0]
    assert one.sharing is not None
    kept = one.sharing.placements[1:]
    other = replace(one, game="another game", sharing=replace(one.sharing, placements=kept, points=1.0))
    found = differences(one, other)
    assert [row.what for row in found.actions] == [each.action for each in kept]
    assert said(found.sentence).startswith("Made for different games (")
    assert "plan scores" not in said(found.sentence)
    assert "score the same" not in said(found.sentence)


def test_a_changed_game_of_the_same_name_is_noticed(plans: tuple[Plan, Plan]) -> None:
    """Another duty of one action, or an action that only one of them has: named, and nothing of a game that is the same."""
    one = plans[0]
    busier = replace(one.sites[0], demand=replace(one.sites[0].demand, duty_share=0.99))
    told = said(differences(one, replace(one, sites=(busier, *one.sites[1:]))).sentence)
    assert f"different needs for {one.sites[0].demand.action}:" in told
    assert one.sharing is not None
    fewer = replace(one, sharing=replace(one.sharing, placements=one.sharing.placements[1:]))
    assert f"different needs for {one.sharing.placements[0].action}:" in said(differences(one, fewer).sentence)
    assert "different needs" not in said(differences(*plans).sentence)


def test_parts_that_only_one_plan_uses_are_named(plans: tuple[Plan, Plan]) -> None:
    """The second does without the switch: it is used in the first alone, from either side."""
    there, back = said(differences(*plans).sentence), said(differences(plans[1], plans[0]).sentence)
    assert "small light switch" in there.split("Different parts: only in the first ")[1].split(".")[0].split(";")[0]
    assert "small light switch" in back.split("only in the second ")[1].split(".")[0]


def test_plans_from_different_sticks_say_so(plans: tuple[Plan, Plan]) -> None:
    """A stick that only one of the plans had to choose from is named, on its side."""
    one = plans[0]
    gone = one.sites[0].fits[-1].stick
    fewer = tuple(replace(each, fits=tuple(fit for fit in each.fits if fit.stick != gone)) for each in one.sites)
    told = said(differences(one, replace(one, sites=fewer)).sentence)
    assert f"Different sticks to choose from: only in the first {gone}." in told
