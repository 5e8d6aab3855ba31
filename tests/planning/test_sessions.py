"""Play that is wished against blocks of play, and the review of a child: common practice, minutes worked by hand."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import pytest

import worked_cases
from said import said
from stickwright.codes.cautions import Cautions
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import message
from stickwright.model.game import Game
from stickwright.model.plan import SitePlan, StateFit
from stickwright.model.player import Player
from stickwright.planning.plan import plan
from stickwright.planning.sessions import growth_findings, play_blocks, session_findings, wished_session_s


@lru_cache
def site(effort: float = 0.1, limit: float = 0.3) -> SitePlan:
    """Any planned site, its effort and the limit for its share of the time as given."""
    some = plan(worked_cases.case("tove", toppers=False), draws=50).sites[0]
    choice = replace(some.fits[0], effort_share=Estimate(effort, effort, effort), duty_effort_limit=limit)
    return replace(some, name="left thumb", choice=choice, states=(), demand=replace(some.demand, duty_share=0.5))


def tired(loss: float, after_min: float) -> SitePlan:
    fit = site().choice
    assert fit is not None
    state = StateFit("tired", "tiredness", True, -loss, fit, 60 * after_min)
    return replace(site(), states=(state,))


def player(minutes: float | None = None, **more: object) -> Player:
    wished = {} if minutes is None else {"session_s": 60 * minutes}
    return Player.model_validate({"code": "X1", "site": [{"name": "here", "part": "thumb"}], **wished, **more})


def told(minutes: float, *sites: SitePlan) -> str:
    asked = player(minutes), [Game(name="rounds")], sites
    (finding,) = session_findings(*asked)
    return f"{said(play_blocks(*asked))} {said(finding.text)}"


def test_nothing_is_told_of_a_session_no_longer_than_a_first_block() -> None:
    """A quarter of an hour, or no wish at all, needs no blocks."""
    assert play_blocks(player(15), [Game(name="rounds")], [site()]) == message(Cautions.usual_blocks)
    assert play_blocks(player(), [Game(name="rounds")], [site()]) == message(Cautions.usual_blocks)
    assert session_findings(player(15), [Game(name="rounds")], [site()]) == []


def test_the_longest_wish_counts() -> None:
    """The player's and each game's."""
    games = [Game(name="rounds", session_s=3600.0), Game(name="quests")]
    assert wished_session_s(player(20), games) == 3600.0
    assert wished_session_s(player(90), games) == 5400.0


@pytest.mark.parametrize("minutes,count,each", [(30, 2, 15), (35, 3, 12), (60, 4, 15)])
def test_play_starts_in_blocks_of_a_quarter_of_an_hour(minutes: float, count: int, each: int) -> None:
    """35 min over 15 is three blocks, of 12 min each."""
    assert f"start with {count} blocks of {each} min, with 5 to 10 min of rest" in told(minutes, site())


def test_an_effort_above_what_its_share_of_the_time_allows_shortens_the_first_block() -> None:
    """30 min at half of the time is 15 min of pushing: three blocks of 10 min, and the reason."""
    text = told(30, site(effort=0.4))
    assert "start with 3 blocks of 10 min" in text
    assert "the left thumb pushes for 15 min of that time, at 40% of its comfortable force" in text


def test_a_long_session_is_parted_for_good() -> None:
    """Two hours are three blocks of 40 min at the longest, 45 being the end of the usual range."""
    assert "no more than 3 blocks of 40 min, with 5 to 10 min of rest between them" in told(120, site())


def test_a_site_that_was_read_tired_ends_the_block_sooner() -> None:
    """19 % lost in 40 min is 10 % in 20 min (0.9 squared is 0.81): an hour is three blocks, for good."""
    text = told(60, tired(0.19, 40))
    assert "the left thumb should play for no more than about 20 min at a time: 3 blocks of 20 min" in text
    assert "No reading was taken with the player tired" in told(60, site())


def test_a_first_block_is_no_longer_than_the_tired_readings_allow() -> None:
    """10 % lost in 6 min: blocks of 6 min from the first day, not of 15."""
    assert "start with 5 blocks of 6 min" in told(30, tired(0.1, 6))


def test_a_child_is_seen_again_within_the_year() -> None:
    """A year after the visit; on the last of February where the visit was on a leap day."""
    (one,) = growth_findings(player(age_band="6-11", visit="2026-03-14"))
    assert "by 14 Mar 2027 at the latest" in said(one.text)
    assert "by 28 Feb 2025" in said(growth_findings(player(age_band="teenager", visit="2024-02-29"))[0].text)
    assert "at least once a year" in said(growth_findings(player(age_band="child"))[0].text)
    assert growth_findings(player(age_band="adult", visit="2026-03-14")) == []


def test_a_plan_tells_both() -> None:
    """They reach the plan, and with it the page and the terminal."""
    this = worked_cases.case("tove", toppers=False)
    asked = this.player.model_copy(update={"age_band": "child", "session_s": 3600.0})
    made = plan(replace(this, player=asked), draws=20)
    assert any(one.about == "growth" for one in made.findings)
    assert any("To play for 60 min, start with" in said(one.text) for one in made.cautions)
    assert any("second adult" in said(one.text) for one in made.cautions)
