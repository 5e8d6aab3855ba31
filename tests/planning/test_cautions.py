"""Cautions: those of this player, beside the number they belong to, none twice."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import lru_cache
from typing import get_args

import pytest

import worked_cases
from stickwright.catalogue import say
from stickwright.codes.cautions import Cautions
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, message
from stickwright.model.fit import Caution, Fit
from stickwright.model.player import Alert, Player
from stickwright.planning.cautions import cautions_of
from stickwright.planning.plan import plan

USUAL = message(Cautions.usual_blocks)


@lru_cache
def fit() -> Fit:
    """Any set-up, made quiet: little effort, small dead zone, no cup."""
    some = plan(worked_cases.case("tove", toppers=False), draws=50).sites[0].fits[0]
    return replace(some, effort_share=Estimate(0.2, 0.1, 0.3), dead_zone_share=0.1, single_player=False, verdict="fits")


def player(part: str = "fingertip", site: dict[str, object] | None = None, **more: object) -> Player:
    """Someone with one site and no alerts."""
    return Player.model_validate({"code": "X1", "site": [{"name": "here", "part": part, **(site or {})}], **more})


def told(who: Player, proposed: Fit | None = None) -> tuple[Caution, ...]:
    return cautions_of(who, [(who.site[0], proposed)], USUAL)


def codes(cautions: Iterable[Caution]) -> list[str]:
    """Names of what is said."""
    return [one.text.text for one in cautions if isinstance(one.text, Message)]


def test_without_alerts_only_the_general_one_is_given() -> None:
    """Twenty cautions that are not this person's are not read: one remains, on stopping and pausing."""
    (only,) = told(player(), fit())
    assert only.about == "session"
    assert only.site is None
    assert only.text == message(Cautions.session, blocks=message(Cautions.usual_blocks))
    assert "Stop for pain" in say(only.text)


@pytest.mark.parametrize(
    "alert,about,text",
    [
        ("neck", "site", Cautions.neck),
        ("airway", "site", Cautions.airway),
        ("skin", "force", Cautions.skin),
        ("spinal-t6", "session", Cautions.dysreflexia),
        ("seizures", "session", Cautions.seizures),
        ("pain", "effort", Cautions.pain),
        ("startle", "force", Cautions.startle),
        ("magnets", "kit", Cautions.magnets),
        ("arthritis", "effort", Cautions.arthritis),
        ("drives-chair", "site", Cautions.powered_chair),
        ("heart", "effort", Cautions.heart),
    ],
)
def test_each_alert_brings_its_own(alert: str, about: str, text: Callable[..., str]) -> None:
    """One caution more for one alert, at the number it belongs to."""
    quiet = told(player(), fit())
    (added,) = set(told(player(alerts=[alert]), fit())) - set(quiet)
    assert (added.about, added.text) == (about, message(text))


def test_every_alert_has_a_caution() -> None:
    """No alert can be ticked without effect."""
    for alert in get_args(Alert):
        assert len(told(player(alerts=[alert]), fit())) == 2


@pytest.mark.parametrize("part", ["chin", "lip", "cheek", "tongue", "head"])
@pytest.mark.parametrize("cleared", [None, "ask", "no", "yes"])
def test_face_and_head_need_the_teams_word(part: str, cleared: str | None) -> None:
    """Chin, lip, cheek, tongue, head: what the team said, and that no endurance curve exists."""
    cautions = told(player(part, {"cleared": cleared} if cleared else {}), fit())
    (site,) = (caution for caution in cautions if caution.about == "site")
    assert site.site == "here"
    assert part in say(site.text).lower()
    assert site.text == message(Cautions.face, cleared=cleared or "unrecorded")
    assert any(one.about == "hold" and one.text == message(Cautions.no_curve) for one in cautions)


def test_effort_over_a_third_is_watched() -> None:
    """36 % of the comfortable force brings the caution, 34 % does not."""
    for effort, there in ((0.36, True), (0.34, False)):
        tiring = replace(fit(), effort_share=Estimate(effort, 0.1, 0.6))
        assert ("effort" in codes(told(player(), tiring))) is there


def test_a_large_dead_zone_is_checked_when_the_set_up_is_proposed() -> None:
    """A fifth of the throw: small wanted movements may not count. Not said of a set-up that nobody will build."""
    large = replace(fit(), dead_zone_share=0.2)
    assert any(caution.about == "dead zone" for caution in told(player(), large))
    assert not any(caution.about == "dead zone" for caution in told(player(), replace(large, verdict="does not fit")))


def test_a_cup_at_the_mouth_is_one_players_own() -> None:
    assert "one_player" in codes(told(player(), replace(fit(), single_player=True)))


def test_parts_in_the_mouth_are_cleanable_and_stay_in_one_piece() -> None:
    """Lip and tongue: cleaned, nothing loose, teeth and swallowing asked about; not said of a chin."""
    for part, there in (("lip", True), ("tongue", True), ("chin", False)):
        assert ("mouth" in codes(told(player(part), fit()))) is there


def test_a_progressive_course_borrows() -> None:
    assert "progressive" in codes(told(player(course="progressive"), fit()))
    assert "progressive" not in codes(told(player(course="stable"), fit()))


def test_spasms_bring_the_caution_of_strong_movement_once() -> None:
    """With the alert or without it, once."""
    spasm = {"spasm": {"peak_n": 20, "rate_per_min": 3}}
    for more in ({}, {"alerts": ["startle"]}):
        assert codes(told(player("hand", spasm, **more), fit())).count("startle") == 1


def test_none_is_given_twice_over_two_sites() -> None:
    """Two sites of one player: what concerns the player is said once."""
    data = {"code": "X1", "alerts": ["skin", "pain"], "site": [{"name": n, "part": "hand"} for n in ("left", "right")]}
    who = Player.model_validate(data)
    cautions = cautions_of(who, [(site, fit()) for site in who.site], USUAL)
    assert len(cautions) == len(set(cautions)) == 3


def test_no_set_up_no_caution_about_one() -> None:
    """Where nothing was chosen, nothing is said about its effort."""
    assert len(told(player(course="progressive"), None)) == 1


def test_a_child_has_a_second_adult_present_and_no_small_parts() -> None:
    """Of anybody under 18, as the band says; of an adult neither."""
    before = told(player(age_band="adult"), fit())
    more = [one for one in told(player(age_band="under 12"), fit()) if one not in before]
    assert codes(more) == ["child_adult", "child_small_parts"]
