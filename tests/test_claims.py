"""What the figures of a result claim, over random cases: finite or with a reason, inside their intervals, in order, and one
quantity with one interval wherever it stands.

Two thousand random sites go through ability and verdict, every one with the kit of its group of ten; whole plans, with presses
beside, on fewer.
"""

from __future__ import annotations

import dataclasses
import functools
import math
import re
from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np
import pytest

from lasting import not_finite
from said import said
from stickwright.codes.estimate import Estimate
from stickwright.files.results import plan_json
from stickwright.mechanics.site_inputs import Rules
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.plan import Capability
from stickwright.model.player import Player
from stickwright.planning.plan import plan
from stickwright.planning.site_planning import judged_for, known_site, offered
from stickwright.report.words import plan_words

PARTS = ("fingertip", "thumb", "hand", "forearm", "chin", "foot", "toe", "lip", "head", "knee")
DRAWS = 24


def estimates(result: Any, path: str = "") -> Iterator[tuple[str, Estimate]]:
    """Every estimate anywhere in a result, with where it stands."""
    if isinstance(result, Estimate):
        yield path, result
    elif dataclasses.is_dataclass(result) and not isinstance(result, type):
        for field in dataclasses.fields(result):
            yield from estimates(getattr(result, field.name), f"{path}.{field.name}")
    elif isinstance(result, (tuple, list)):
        for place, one in enumerate(result):
            yield from estimates(one, f"{path}[{place}]")


def wrong(path: str, one: Estimate) -> str:
    """What an estimate breaks, or nothing."""
    if one.interval is None or one.value is None:
        half = one.low is not None or one.high is not None
        return f"{path}: half an interval" if half else "" if one.why else f"{path}: something missing, and no reason"
    slack = 1e-9 * max(abs(one.low), abs(one.high), 1e-12)
    return "" if one.low - slack <= one.value <= one.high + slack else f"{path}: {one.low} {one.value} {one.high}"


def _about(rng: np.random.Generator, middle: float, repeats: int) -> list[float]:
    return np.maximum(middle * np.exp(0.1 * rng.standard_normal(repeats)), 0.01).tolist()


def random_kit(rng: np.random.Generator, strength: float) -> Kit:
    """Three sticks about as strong as the player: invented."""
    sticks = [
        {
            "name": f"stick {k}", "contact_height_mm": rng.uniform(8, 60), "start_force_n": full * rng.uniform(0.05, 0.9),
            "full_force_n": full, "travel_mm": rng.uniform(1.5, 7.5), "base_mm": (50, 50, 30),
        }
        for k, full in enumerate(np.minimum(strength * 10 ** rng.uniform(-1.2, 0.8, 3), 90.0))
    ]  # fmt: skip
    switches = [
        {"name": f"switch {k}", "force_n": 10 ** rng.uniform(-1.3, 0.8), "travel_mm": rng.uniform(0.5, 6), "face_mm": rng.uniform(8, 90)}
        for k in range(2)
    ]  # fmt: skip
    return Kit.model_validate({"stick": sticks, "switch": switches})


def random_press(rng: np.random.Generator, strength: float) -> dict[str, Any]:
    """What was read of pressing, most of it missing in some case."""
    maybe = lambda share, value: value if rng.random() < share else None  # noqa: E731
    press = {
        "force_n": maybe(0.6, _about(rng, 0.5 * strength, int(rng.integers(1, 4)))),
        "rate_per_s": maybe(0.5, [rng.uniform(0.2, 3.0)]), "release_s": maybe(0.3, [rng.uniform(0.1, 1.5)]),
        "hold_s": maybe(0.3, [rng.uniform(1.0, 20.0)]), "landing_mm": maybe(0.3, rng.uniform(1.0, 40.0)),
        "rest_force_n": maybe(0.4, (0.2 * strength * rng.random(int(rng.integers(1, 4)))).tolist()),
        "involuntary_force_n": maybe(0.4, strength * rng.uniform(0.002, 0.1)),
        "fires_with_spasm_share": maybe(0.2, rng.random()), "travel_mm": maybe(0.3, [rng.uniform(1.0, 30.0)]),
    }  # fmt: skip
    return {key: value for key, value in press.items() if value is not None}


def random_case(rng: np.random.Generator, kit: Kit | None = None, strength: float | None = None) -> Case:
    """A player, sticks, switches and a game, drawn so that most things are missing in some case: invented."""
    maybe = lambda share, value: value if rng.random() < share else None  # noqa: E731
    strength = strength or 10 ** rng.uniform(-0.8, 1.3)
    reach = rng.uniform(0.002, 0.09)
    ways = sorted(rng.choice(8, size=rng.integers(1, 9), replace=False) * 45)
    repeats = int(rng.integers(1, 4))
    taped = rng.random() < 0.7
    readings = [
        {
            "direction_deg": int(phi),
            "force_n": _about(rng, strength * rng.uniform(0.3, 1.0), repeats),
            **({"reach_m": [reach * rng.uniform(0.3, 1.0)]} if taped else {}),
        }
        for phi in ways
    ]
    site = {
        "name": "here", "part": str(rng.choice(PARTS)), "cleared": "yes", "reading": readings,
        "rest": maybe(0.5, [{"force_n": (0.2 * strength * rng.random(int(rng.integers(1, 4)))).tolist()}]),
        "involuntary_force_n": maybe(0.5, strength * rng.uniform(0.005, 0.2)),
        "crossing_hz": maybe(0.5, rng.uniform(0.5, 6.0)),
        "limb_stiffness_n_per_m": maybe(0.3, rng.uniform(5.0, 400.0)),
        "force_noise_share": maybe(0.3, rng.uniform(0.01, 0.2)),
        "comfortable_of_maximal_share": maybe(0.3, rng.uniform(0.2, 1.0)),
        "spasm": maybe(0.2, {"rate_per_s": rng.uniform(0.001, 0.1), "peak_n": [strength]}),
        "hold": maybe(0.4, [{"effort_share": rng.uniform(0.2, 0.9), "duration_s": [rng.uniform(2.0, 60.0)]}]),
        "again_force_n": maybe(0.3, [strength * 0.5]),
        "movement_tilt_deg": maybe(0.2, rng.uniform(-60, 60)),
        "press": random_press(rng, strength),
    }  # fmt: skip
    needs = [{"direction_deg": 90 * k, "weight": float(rng.choice([0.0, 0.1, 1.0]))} for k in range(4)]
    needs[int(rng.integers(4))]["weight"] = 1.0
    action = {"name": "move", "kind": "two-axis", "duty_share": float(rng.choice([0.0, 0.2, 0.6, 1.0]))}
    if rng.random() < 0.5:
        action["direction"] = needs
    presses = [
        {"name": "jump", "kind": "press", **({"busy_presses_per_s": rng.uniform(0.05, 1.0)} if rng.random() < 0.5 else {})},
        {"name": "hold", "kind": "hold", "longest_hold_s": rng.uniform(0.5, 10.0), "toggle": "a press to start"},
    ]  # fmt: skip
    game = {"name": "random", "action": [action | {"usual_level_share": float(rng.choice([0.5, 1.0]))}, *presses]}
    player = {"code": "R1", "site": [{key: value for key, value in site.items() if value is not None}]}
    return Case("random", Player.model_validate(player), kit or random_kit(rng, strength), Game.model_validate(game))


@functools.lru_cache(maxsize=1)
def shared_kit(group: int) -> tuple[Kit, float]:
    """The kit of ten cases, and the strength that it was drawn for."""
    rng = np.random.default_rng([5, group])
    strength = 10 ** rng.uniform(-0.8, 1.3)
    return random_kit(rng, strength), strength


def site_fits(seed: int) -> tuple[Capability, tuple[Fit, ...]] | None:
    """What one random site is told to be able to do, and the best set-up of each stick there."""
    rng = np.random.default_rng([7, seed])
    kit, strength = shared_kit(seed // 10)
    case = random_case(rng, kit, strength * 10 ** rng.uniform(-0.5, 0.5))
    known = known_site(case, case.player.site[0], rng, DRAWS, [])
    if known is None:
        return None
    return known.ability.report, offered(known, judged_for(case, known, "move", Rules()))


def named_figures_agree(fit: Fit) -> list[str]:
    """The headline's figures are those of the directions they name."""
    there = {one.direction_rad: one for one in fit.directions}
    out = []
    if fit.weakest_share != there[fit.weakest_rad].reach_share:
        out.append("the weakest reach is not that of its direction")
    if fit.effort_share not in [one.effort_share for one in fit.directions]:
        out.append("the effort is that of no direction")
    least = min(one.reach_share.value for one in fit.directions)
    if not math.isclose(fit.weakest_of_all.reach_share.value, least, abs_tol=1e-8):
        out.append("the weakest of all is not the weakest")
    return out


def broken_on_site(seed: int) -> tuple[int, list[str]]:
    """How many estimates one random site has, and which of them break a law."""
    told = site_fits(seed)
    if told is None:
        return 0, []
    report, fits = told
    every = list(estimates((report, fits)))
    broken = [f"seed {seed}{found}" for path, one in every for found in [wrong(path, one)] if found]
    broken += [f"seed {seed}, {said(fit.named)}: {found}" for fit in fits for found in named_figures_agree(fit)]
    return len(every), broken


def hold_on_sites(seeds: Sequence[int]) -> int:
    """Check these random sites; how many estimates were seen."""
    told = [broken_on_site(seed) for seed in seeds]
    assert [one for _, broken in told for one in broken] == []
    return sum(seen for seen, _ in told)


def test_every_estimate_of_random_sites_holds() -> None:
    """Laws, on 200 random sites, each with a kit of its own: finite or None of it with a reason, inside its interval, the interval
    in order, and what the headline names is the figure of the direction it names. The other 1,800 of 2,000 are a sweep."""
    assert hold_on_sites(range(0, 2000, 10)) > 200 * 50


@pytest.mark.sweep
def test_every_estimate_of_two_thousand_random_sites_holds() -> None:
    """The same on the other 1,800."""
    assert hold_on_sites([seed for seed in range(2000) if seed % 10]) > 1800 * 50


def hold_on_plans(seeds: range) -> None:
    broken = list[str]()
    for seed in seeds:
        case = random_case(np.random.default_rng([11, seed]))
        told = plan(case, draws=DRAWS)
        broken += [f"seed {seed}{found}" for path, one in estimates(told) for found in [wrong(path, one)] if found]
        broken += [f"seed {seed}{path} is {value}" for path, value in not_finite(told)]
        presses = [one.press for one in told.sharing.placements if one.press is not None] if told.sharing else []
        broken += [
            f"seed {seed}: {one}" for press in presses for one in [wrong("false presses", press.false_estimate)] if one
        ]
        placed = [one.fit for one in told.sharing.placements if one.fit is not None] if told.sharing else []
        for fit in placed:
            for other in (one for site in told.sites for one in site.fits if one.named == fit.named):
                same = (fit.weakest_share, fit.effort_share, fit.bits, fit.false_per_min, fit.hold_s) == (
                    other.weakest_share, other.effort_share, other.bits, other.false_per_min, other.hold_s
                )  # fmt: skip
                broken += [] if same else [f"seed {seed}: {said(fit.named)} has two figures for one thing"]
        text = plan_words(told)
        if re.search(r"\bnan\b|\binf\b|\bNone\b", text):
            broken.append(f"seed {seed}: not-a-number in the text")
        if re.search(r"\bNaN\b|\bInfinity\b", plan_json(told)):
            broken.append(f"seed {seed}: not-a-number in JSON")
    assert broken == []


def test_every_estimate_of_random_plans_holds() -> None:
    """Whole plans of 25 random cases: the same laws, one figure for one thing on the site's page and in the sharing, and no
    'nan' in text or JSON."""
    hold_on_plans(range(25))


@pytest.mark.sweep
def test_every_estimate_of_many_random_plans_holds() -> None:
    """The same on the other 275 of 300."""
    hold_on_plans(range(25, 300))


def test_a_point_outside_its_draws_is_found() -> None:
    """The check itself: a value below its interval, an interval turned round, not-a-number without a reason."""
    for one in (
        Estimate(0.1, 0.2, 0.3),
        Estimate(0.2, 0.3, 0.1),
        Estimate(None, 0.1, 0.3),
        Estimate(0.2, None, 0.3),
        Estimate(math.nan, None, None),
    ):
        assert wrong("here", one)
    for one in (
        Estimate(0.2, 0.1, 0.3),
        Estimate.unbounded(0.2, "read once"),
        Estimate.missing("not read"),
    ):
        assert not wrong("here", one)
