"""What nobody measured refuses no set-up: laws over random sites, and the stand-ins one by one."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import worked_cases
from plain_fits import plain_fit
from said import said
from stickwright.mechanics.ability import ability
from stickwright.mechanics.fit import evaluate
from stickwright.mechanics.setups import SetupArrays, setups_of
from stickwright.mechanics.site_inputs import Rules, SiteInputs
from stickwright.mechanics.unread import MEASURE, RESTS_ON, Figure, Unread, doubted_utility
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.parts import COMFORT, USUAL
from stickwright.model.player import PARTS, Player, Site
from stickwright.planning.plan import plan

EVERY = setups_of(worked_cases.kit())
LEVERS: SetupArrays = EVERY.take(np.flatnonzero(~EVERY.touch))
ASSUMED: tuple[Figure, ...] = (
    "involuntary force", "resting force", "frequency", "movement range", "fall-off", "level",
)  # fmt: skip


def random_inputs(seed: int, figures: frozenset[Figure]) -> SiteInputs:
    """A player's single figures, some of them assumed: steadiness and rest as of any part, whatever the force."""
    rng = np.random.default_rng(seed)
    force = np.exp(rng.normal(0.3, 1.2) + 0.2 * rng.standard_normal((1, 8)))
    reach = 0.012 * np.exp(rng.normal(0.0, 0.6) + 0.2 * rng.standard_normal((1, 8)))
    usual = USUAL[PARTS[int(rng.integers(len(PARTS)))]]
    weight = np.full(8, 1 / 8)
    return SiteInputs(
        force_n=force, reach_m=reach, weight=weight, needed=weight > 0, plane=np.ones((len(LEVERS.slopes_rad), 8)),
        level_share=1.0, rest_n=np.full(1, usual.rest_n), involuntary_n=np.full(1, usual.steady_n),
        crossing_hz=np.full(1, 1.5), limb_n_per_m=np.full(1, 80.0), noise_share=0.05, fall_off=1.0, spasm_per_min=0.0,
        spasm_peak_n=(), false_limit_per_min=1.0, unread=Unread(figures),
    )  # fmt: skip


def figures_drawn(draw: Any) -> frozenset[Figure]:
    return frozenset(draw(st.lists(st.sampled_from(ASSUMED), unique=True)))


@given(st.data(), st.integers(0, 10_000))
@settings(max_examples=25, deadline=None)
def test_a_set_up_is_refused_only_if_it_fails_whatever_the_assumed_figures_are(data: Any, seed: int) -> None:
    """Against a plain loop over the formulas: where any plausible value of the assumed figures keeps every rule, the set-up is
    not refused; and one that keeps them at the assumed figures is never doubted."""
    where = random_inputs(seed, figures_drawn(data.draw) - {"fall-off"})  # the plain loop knows the straight one only
    rules, unread = Rules(), where.unread.figures
    found = evaluate(LEVERS, where, rules)
    grid = product(
        (0.0, 0.5, 1.0) if "involuntary force" in unread else (1.0,), (0.0, 1.0) if "resting force" in unread else (1.0,),
        (0.2, 1.0) if "frequency" in unread else (1.0,), (1.0, 2.0, 4.0) if "movement range" in unread else (1.0,),
        (0.5, 1.0) if "level" in unread else (1.0,),
    )  # fmt: skip
    sites = [
        replace(
            where, involuntary_n=np.maximum(where.involuntary_n * a, 1e-9), rest_n=where.rest_n * b,
            crossing_hz=where.crossing_hz * c, reach_m=where.reach_m * d, level_share=where.level_share * e,
        )
        for a, b, c, d, e in grid
    ]  # fmt: skip
    for place in np.random.default_rng(seed).choice(len(LEVERS), 6, replace=False):
        zone = float(found.dead_zone[place])
        kept = [plain_fit(int(place), zone, LEVERS, one, rules).utility[0] >= 0 for one in sites]
        if any(kept):
            assert found.shortfall[place] <= 0
        if plain_fit(int(place), zone, LEVERS, where, rules).utility[0] >= 0:
            assert found.assumed_shortfall[place] <= 0


@given(st.data(), st.integers(0, 10_000), st.floats(1.0, 10.0))
@settings(max_examples=40, deadline=None)
def test_more_force_never_refuses(data: Any, seed: int, more: float) -> None:
    """Law: with nothing else changed, a stronger player is refused nothing that a weaker one may use."""
    where = random_inputs(seed, figures_drawn(data.draw))
    weaker = evaluate(LEVERS, where)
    stronger = evaluate(LEVERS, replace(where, force_n=where.force_n * more))
    assert not np.any((weaker.shortfall <= 0) & (stronger.shortfall > 1e-9))


@given(st.data(), st.integers(0, 10_000), st.floats(1.0, 10.0))
@settings(max_examples=40, deadline=None)
def test_more_reach_never_refuses_where_the_level_is_assumed(data: Any, seed: int, more: float) -> None:
    """Law: more reach asks more force only as far as the game wants the stick pushed further out, which must have been read
    to refuse; every other rule is kept the better."""
    figures = figures_drawn(data.draw) | {"level"}
    where = replace(random_inputs(seed, figures), level_share=1e-6)
    shorter, longer = evaluate(LEVERS, where), evaluate(LEVERS, replace(where, reach_m=where.reach_m * more))
    assert not np.any((shorter.shortfall <= 0) & (longer.shortfall > 1e-9))


@pytest.mark.parametrize("part", PARTS)
def test_no_usual_figure_grows_with_ability(part: str) -> None:
    """A strong, steady part shakes and weighs no more than a weak one; so says the page, with the reading that replaces it."""
    told = []
    for factor in (1.0, 20.0):
        force = COMFORT[part].force_low_n * factor
        reading = [{"direction_deg": phi, "force_n": force, "reach_mm": 10} for phi in (0, 90, 180, 270)]
        site = Site.model_validate({"name": "here", "part": part, "reading": reading})
        found = ability(site, np.random.default_rng(1), 50)
        assert found is not None
        assert found.unread.figures >= {"involuntary force", "resting force", "frequency", "fall-off"}
        told.append(
            (
                found.report.involuntary_force_n, found.report.rest_force_n, found.involuntary_n.tolist(),
                found.rest_force_n.tolist(),
            )
        )  # fmt: skip
        measures = {one.what.text: one.replace_by for one in found.assumptions}
        assert measures["involuntary_force"] == MEASURE["involuntary force"]
        assert measures["resting_force"] == MEASURE["resting force"]
    assert told[0] == told[1]
    assert told[0][0].low < told[0][0].value < told[0][0].high


def test_a_doubted_set_up_goes_before_a_refused_one_and_pays() -> None:
    """By hand: (2.5 - 0.5) / (1 + 1) = 1 bit; never below 0, where every refused one lies."""
    assert float(doubted_utility(2.5, 1.0)) == pytest.approx(1.0, abs=1e-12)
    assert float(doubted_utility(0.1, 5.0)) == 0.0


# ---- the stand-ins one by one: unread it is doubted, read at the very same figure it is refused

NOTHING_MISSING: dict[str, Any] = {
    "name": "finger", "part": "fingertip", "rest": [{"force_n": [0.0, 0.0]}], "involuntary_force_n": 0.001, "crossing_hz": 1.5,
    "limb_stiffness_n_per_mm": 0.1, "force_noise_share": 0.05, "comfortable_of_maximal_share": 0.5, "can_lift": False,
    "reading": [{"direction_deg": phi, "force_n": [2.0, 2.1, 1.9], "reach_mm": [15, 15.5, 14.5]} for phi in range(0, 360, 45)],
    "along": [{"direction_deg": phi, "at_reach_mm": 7.5, "force_n": 1.0} for phi in (0, 90)],
}  # fmt: skip
STEER: dict[str, Any] = {"name": "steer", "kind": "two-axis", "duty_share": 0.5, "usual_level_share": 1.0}


def stick(start_n: float, full_n: float, travel_mm: float = 6, **more: Any) -> dict[str, Any]:
    """A small stick, benched."""
    return {
        "name": "one", "contact_height_mm": 18, "start_force_n": start_n, "full_force_n": full_n, "travel_mm": travel_mm,
        "friction_force_n": 0.0, **more,
    }  # fmt: skip


def fit(the_stick: dict[str, Any], site: dict[str, Any], steer: dict[str, Any] = STEER) -> Fit:
    """How the one stick of the kit does for one player."""
    case = Case(
        name="made up",
        player=Player.model_validate({"code": "X", "site": [site]}),
        kit=Kit.model_validate({"stick": [the_stick]}),
        game=Game.model_validate({"name": "made up", "action": [steer]}),
    )
    return plan(case, draws=60).sites[0].fits[0]


def without(*keys: str, **changed: Any) -> dict[str, Any]:
    return {key: value for key, value in (NOTHING_MISSING | changed).items() if key not in keys}


def no_reach(readings: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [{key: value for key, value in one.items() if key != "reach_mm"} for one in readings]


STRONG = NOTHING_MISSING["reading"]
FOUR = [one for one in STRONG if one["direction_deg"] % 90 == 0]
BACK_LEFT_ONLY = STEER | {
    "direction": [
        {"direction_deg": 225, "weight": 1},
        *({"direction_deg": phi, "weight": 0} for phi in (0, 45, 90, 135, 180, 270, 315)),
    ]
}
# what is assumed: rule, stick, site without it, the same with it read at the figure that stood in, game of either
STAND_INS: dict[Figure, tuple[str, dict[str, Any], tuple[dict[str, Any], ...], tuple[dict[str, Any], ...]]] = {
    "involuntary force": (
        "unintended", stick(0.006, 0.012), (without("involuntary_force_n"),), (without(involuntary_force_n=0.01),),
    ),
    "resting force": (
        "unintended", stick(0.008, 0.016), (without("rest"),), (without(rest=[{"force_n": [0.02, 0.02]}]),),
    ),
    "frequency": (
        "unintended", stick(0.12, 0.20), (without("crossing_hz", involuntary_force_n=0.044),),
        (without(involuntary_force_n=0.044),),
    ),
    "movement range": (
        "reach", stick(0.4, 0.8, 60, contact_height_mm=120), (without(reading=no_reach(STRONG)),),
        (without(reading=[one | {"reach_mm": 8.66} for one in STRONG]),),
    ),
    "directions": (
        "effort", stick(0.5, 1.1), (without(reading=FOUR), BACK_LEFT_ONLY), (without(), BACK_LEFT_ONLY),
    ),
    "fall-off": (
        "reach", stick(0.3, 0.6, 36, contact_height_mm=90), (without("along", reading=[one | {"reach_mm": 14} for one in STRONG]),),
        (without(reading=[one | {"reach_mm": 14} for one in STRONG], along=[{"direction_deg": 0, "at_reach_mm": 7, "force_n": 1.0}]),),
    ),
    "level": (
        "effort", stick(0.5, 1.5), (without(), {k: v for k, v in STEER.items() if k != "usual_level_share"}), (without(), STEER),
    ),
    "duty": (
        "effort", stick(0.5, 1.2), (without(), {k: v for k, v in STEER.items() if k != "duty_share"}), (without(), STEER),
    ),
    "comfortable": (
        "effort", stick(0.5, 1.2), (without("comfortable_of_maximal_share"), STEER | {"duty_share": 0.3}),
        (without(), STEER | {"duty_share": 0.3}),
    ),
    "spasms": (
        "unintended", stick(0.5, 0.9), (without(spasm={"peak_n": 4.0, "rate_per_min": 3}),),
        (without(spasm={"peak_n": [1.0, 1.5, 2.0, 3.0, 4.0], "rate_per_min": 3}),),
    ),
    "lifting": (
        "touch", stick(0.02, 0.02, 10, kind="touch"), (without("can_lift"),), (without(can_lift=False),),
    ),
}  # fmt: skip


@pytest.mark.parametrize("figure", STAND_INS)
def test_a_stand_in_alone_refuses_nothing_and_says_what_to_measure(figure: Figure) -> None:
    """The set-up stays in, marked, with the reading that would settle it beside it; the same figure once read refuses it."""
    rule, the_stick, assumed, read = STAND_INS[figure]
    doubted, refused = fit(the_stick, *assumed), fit(the_stick, *read)
    assert doubted.verdict != "does not fit"
    assert doubted.fails == ()
    (doubt,) = (one for one in doubted.doubts if one.rule == rule)
    assert {one.rule for one in doubted.doubts} <= {rule, "strength"}
    assert MEASURE[figure] in doubt.confirm.parts()
    assert doubted.verdict != "does not fit"
    assert said(doubt.sentence).startswith("to confirm: ")
    assert doubted.limit == doubted.doubts[0].sentence
    assert refused.verdict == "does not fit"
    assert refused.doubts == ()


def test_every_figure_that_may_be_assumed_is_in_the_table() -> None:
    """A stand-in that is added to the program must come with the case that shows that it refuses nothing."""
    rests_on = {figure for figures in RESTS_ON.values() for figure in figures}
    of_a_press = {
        "weight",
        "press steadiness",
        "press force",
        "landing",
        "count",
        "clear",
        "button",
    }  # allocation/test_pressing.py
    assert rests_on - of_a_press - {"size", "bench"} == set(STAND_INS)


def test_the_site_says_what_is_to_be_confirmed() -> None:
    """In the site's own sentence, on the first stick, and nothing is called near a limit instead."""
    _, the_stick, (assumed,), _ = STAND_INS["resting force"]
    case = Case(
        name="made up",
        player=Player.model_validate({"code": "X", "site": [assumed]}),
        kit=Kit.model_validate({"stick": [the_stick]}),
        game=Game.model_validate({"name": "made up", "action": [STEER]}),
    )
    site = plan(case, draws=60).sites[0]
    assert site.choice is not None
    assert f"To confirm: measure {said(MEASURE['resting force'])}" in said(site.sentence)


# ---- sizes: a plain mismatch is the reason; near the edge is to be tried


@pytest.mark.parametrize(
    ("part", "topper_mm", "height_mm", "rule", "verdict"),
    [
        ("foot", None, 16, "size", "does not fit"),  # a fingertip stick under a foot
        ("foot", None, 30, "size", "fits, to confirm"),
        ("foot", None, 40, None, "fits"),
        ("fingertip", 60, 16, "size", "does not fit"),  # a topper of 60 mm on a fingertip
        ("fingertip", 40, 16, "size", "fits, to confirm"),
        ("fingertip", 20, 16, None, "fits"),
    ],
)
def test_size_must_suit_the_part(
    part: str, topper_mm: float | None, height_mm: float, rule: str | None, verdict: str
) -> None:
    """By the sizes of practice: 35 mm or more of stick for a foot, 6 to 35 mm of topper for a fingertip; six tenths of it, or the
    other way round, is no matter of trying."""
    the_stick = stick(0.3, 0.7, 6, contact_height_mm=height_mm)
    site = NOTHING_MISSING | {"part": part, "toppers": ["cap"] if topper_mm else []}
    topper = {"name": "cap", "form": "ball", "height_mm": 0, "width_mm": topper_mm}
    made = plan(
        Case(
            name="made up",
            player=Player.model_validate({"code": "X", "site": [site]}),
            kit=Kit.model_validate({"stick": [the_stick], "topper": [topper] if topper_mm else []}),
            game=Game.model_validate({"name": "made up", "action": [STEER]}),
        ),
        draws=40,
    )  # fmt: skip
    found = made.sites[0].fits[0]
    confirm = ", to confirm" if found.doubts and found.verdict != "does not fit" else ""
    assert f"{found.verdict}{confirm}" == verdict
    told = [said(one) for one in (*found.fails, *(one.text for one in found.doubts))]
    assert len(told) == (rule is not None)
    if rule is not None:
        assert f"for the {part}" in told[0]
        assert "common practice" in told[0]


def test_a_stick_much_weaker_than_the_part_is_to_be_tried() -> None:
    """0.7 N at the stop under a foot that pushes 30 N: 2 %, under a twentieth; it refuses nothing."""
    strong = [one | {"force_n": 30.0} for one in STRONG]
    found = fit(stick(0.3, 0.7, 6, contact_height_mm=40), without(part="foot", reading=strong))
    assert (found.verdict, [one.rule for one in found.doubts]) == ("fits", ["strength"])


def test_the_usual_topper_wins_ties_and_not_the_bare_shaft() -> None:
    """Rune's finger: a dish of no height does not change the bits, and is what a finger usually has; named toppers are kept to."""
    rune = worked_cases.case("rune")
    assert plan(rune, draws=40).sites[0].fits[0].topper_form == "dish"
