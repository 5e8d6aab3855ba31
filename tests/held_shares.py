"""Sharings-out, several games, and single presses, drawn from seeds: what the held figures of `allocation` are taken of, all invented."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Any

import numpy as np
from random_cases import random_case, random_ranking, random_wishes
from small_cases import action, case, fit, hub, offers_of, site, stick, switch

from stickwright.allocation.allocate import allocate
from stickwright.allocation.games import GameAsked, extra_points, share_games
from stickwright.allocation.in_hand import held_assumptions, held_for_s, held_kg, holds_of
from stickwright.allocation.places import place_of
from stickwright.allocation.pressed import Pressed
from stickwright.allocation.pressing import press_fit
from stickwright.allocation.replugging import plugged_for_all, refits_of, replugs_of, sockets_kept
from stickwright.allocation.stands import union_of
from stickwright.errors import BadInput
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.game import Action, Game
from stickwright.model.kit import Switch
from stickwright.model.player import PARTS, Site
from stickwright.model.wishes import Wishes

Ranking = dict[str, list[Fit]]


def _shared(seed: int, *, wishing: bool = False) -> Any:
    this = random_case(seed, most_actions=7, left=0.6)
    wishes = random_wishes(seed, this) if wishing else Wishes()
    usable = [part.name for part in this.player.site if part.cleared != "no"]
    try:
        return allocate(this, offers_of(this, random_ranking(seed, this)), wishes=wishes, usable=usable)
    except BadInput as refused:
        return refused.problems


def _shared_as_wished(seed: int) -> Any:
    return _shared(seed, wishing=True)


def _games(this: Case, games: Sequence[Game], ranking: dict[str, Ranking], weights: Sequence[int]) -> Any:
    """The common set, and what must be plugged over and set up anew between the games."""
    asked = []
    for one, weight in zip(games, weights, strict=True):
        mine = replace(this, game=one, further_games=tuple(other for other in games if other is not one))
        usable = [part.name for part in this.player.site if part.cleared != "no"]
        asked.append(GameAsked(mine, offers_of(mine, ranking[one.name]), weight, usable=usable))
    found = share_games(asked)
    cases = [one.case for one in asked]
    kept = sockets_kept(found.sharings, cases, Wishes())
    all_in = plugged_for_all(kept, this)
    stands = {" ".join(stand): number for stand, number in sorted(found.stands.items())}
    played = [one for one in kept if one is not None]
    between = [(replugs_of(first, other), refits_of(first, other)) for first, other in pairwise(played)]
    return {
        "found": (found.outcome, found.bound, found.proven, stands, found.sharings, found.alone),
        "kept": kept, "all in": all_in, "between": between,
        "extra": extra_points(this, found.sharings, found.stands),
        "extra twice": extra_points(this, found.sharings, union_of([found.stands, dict.fromkeys(found.stands, 2)])),
    }  # fmt: skip


def _random_games(seed: int) -> Any:
    this = random_case(seed, most_actions=5, left=0.8)
    others = [random_case(seed + more, most_actions=5, left=0.8).game for more in (1000, 2000)]
    names = ("walk", "quiz", "race")[: 2 + seed % 2]
    games = [one.model_copy(update={"name": name}) for name, one in zip(names, [this.game, *others], strict=False)]
    ranking = {name: random_ranking(seed + 500 * place, this) for place, name in enumerate(names)}
    return _games(this, games, ranking, [3, 1, 2][: len(names)])


def _crossing_games(seed: int) -> Any:
    """Sticks and switches of which there is one or two, some of them to be bought, that suit one game or the other, on one hub."""
    rng = np.random.default_rng([seed, 61])
    sites = [
        site("thumb", "thumb", press={"most_switches": 2}),
        site("knee", "knee"),
        site("toe", "foot"),
        site("chin", "chin", cleared="yes"),
    ]
    priced: dict[str, Any] = {"price": 30} if seed % 2 else {}
    sticks = [stick("ash", **priced), stick("elm", in_stock=1 + seed % 2)]
    switches = [
        switch("pip", 0.2, in_stock=2),
        switch("pop", float(rng.uniform(0.1, 0.9)), **priced),
        switch("slab", 1.5),
    ]
    this = case(
        sites, [action("-")], sticks=sticks, switches=switches, hubs=[hub(switches=5)], independence=int(rng.integers(0, 5))
    )  # fmt: skip
    games, ranking = [], {}
    for place, name in enumerate(("walk", "quiz", "race")):
        kinds = [
            str(kind) for kind in rng.permutation(["two-axis", "press", "press", "hold", "one-axis"])[: 3 + place % 2]
        ]
        acts = [
            action(f"{name} {n}", kind, int(rng.integers(2, 10)), drop_price=int(rng.integers(3)))
            for n, kind in enumerate(kinds)
        ]
        games.append(Game.model_validate({"name": name, "action": acts, "remaps": place != 1}))
        ranking[name] = {
            at: sorted(
                (fit(at, one, bits=float(rng.uniform(0, 4))) for one in ("ash", "elm")), key=lambda f: -f.bits.number
            )
            for at in ("thumb", "toe", "chin")
        }
    return _games(this, games, ranking, [int(rng.integers(1, 4)), 1, 2])


def _press(seed: int) -> Any:
    """Eight presses of one part on switches of every kind, with figures left out by lot."""
    rng = np.random.default_rng([seed, 67])

    def some(share: float, **values: Any) -> dict[str, Any]:
        return {name: value for name, value in values.items() if rng.random() < share}

    out = []
    for number in range(8):
        force_n = 10 ** rng.uniform(-0.4, 1.2)
        press = {"force_n": (force_n * rng.uniform(0.8, 1.2, int(rng.integers(1, 4)))).tolist()} | some(
            0.75, rate_per_s=[float(rng.uniform(0.5, 4))], hold_s=[float(rng.uniform(0.5, 30))], landing_mm=float(rng.uniform(1, 20)),
            release_s=[float(rng.uniform(0.05, 0.9))], reaction_s=[float(rng.uniform(0.2, 1.2))], travel_mm=float(rng.uniform(1, 20)),
        ) | some(
            0.4, rest_force_n=[float(rng.uniform(0, 0.5))], involuntary_force_n=float(rng.uniform(0, 0.6)),
            fires_with_spasm_share=float(rng.uniform(0, 1)), move_intercept_s=float(rng.uniform(0, 0.5)),
            move_slope_s_per_bit=float(rng.uniform(0.05, 0.4)),
        )  # fmt: skip
        spasm = {
            "rate_per_s": float(rng.uniform(0.0005, 0.05)),
            "peak_n": rng.uniform(0.1, 4, int(rng.integers(1, 5))).tolist(),
        }
        crossing = {
            "crossing_hz": float(rng.uniform(0.5, 5)),
            "comfortable_of_maximal_share": float(rng.uniform(0.2, 0.9)),
        }
        part = {"name": "here", "part": str(rng.choice(PARTS)), "press": press, "cleared": "yes"}
        here = Site.model_validate(part | some(0.5, spasm=spasm, **crossing))
        kind = str(rng.choice(["press", "press", "hold", "repeat", "trigger"]))
        wanted = Action.model_validate({"name": "jump", "kind": kind} | some(
            0.6, busy_presses_per_s=float(rng.uniform(0.01, 1.5)), longest_hold_s=float(rng.uniform(0.2, 20)),
            duty_share=float(rng.uniform(0, 1)),
            reaction_ms=float(rng.uniform(200, 1500)), levels=int(rng.integers(2, 16)),
        ))  # fmt: skip
        near = {"kind": "proximity", "senses_at_m": 0.006}
        pushed: dict[str, Any] = {"force_n": 10 ** rng.uniform(-1.3, 0.8)} | some(
            0.6, travel_m=float(rng.uniform(0.001, 0.012))
        )
        device = Switch.model_validate(
            {"name": "pip"}
            | (near if number % 4 == 3 else pushed)
            | some(0.7, face_m=(float(rng.uniform(0.008, 0.13)),))
        )
        out.append(press_fit(
            here, Pressed.of_switch(device), wanted, toggle=bool(rng.random() < 0.3),
            slowed_share=float(rng.choice([0, 0, 0.08, 0.3, 0.6])),
            wait_s=float(rng.choice([0, 0, 0.3])), player_spasms_per_s=float(rng.uniform(0, 0.02)) if rng.random() < 0.4 else None,
        ))  # fmt: skip
    return out


def _in_hand() -> Any:
    """Controllers kept in the hand, with figures there and not there, at and beyond what the hand holds."""
    pads: list[dict[str, Any]] = [
        {"name": "light", "mass_kg": 0.15}, {"name": "heavy", "mass_kg": 0.6}, {"name": "unknown"},
        {"name": "both", "mass_kg": 0.3, "price": 20},
    ]  # fmt: skip
    sites = [
        site("left thumb", "thumb", side="left", holds_kg=0.4, holds_s=900), site("right thumb", "thumb", side="right", holds_kg=0.2),
        site("right index", "fingertip", side="right"), site("knee", "knee"),
    ]  # fmt: skip
    grip = stick("ash", mass_kg=0.1)
    this = case(sites, [action("jump")], controllers=pads, sticks=[grip])
    player, kit = this.player, this.kit
    holds = [
        holds_of(player, one, pad, on_grip)
        for one in player.site
        for pad in kit.controller
        for on_grip in ((), kit.stick)
    ]
    return {
        "holds": holds, "assumed": held_assumptions(player, kit.controller, kit.stick),
        "kg": [held_kg(pad, on_grip) for pad in kit.controller for on_grip in ((), kit.stick)],
        "s": [held_for_s(load_kg, 0.4, 600.0) for load_kg in (0.05, 0.1, 0.2, 0.3, 0.4, 0.5)],
        "places": [place_of(one) for one in player.site],
    }  # fmt: skip


def results() -> dict[str, Callable[[], Any]]:
    """Everything of this module that is held, by name: a dozen seeds together, so that what is alike in them is held as one figure."""

    def several(one: Callable[[int], Any], seeds: range) -> Callable[[], Any]:
        return lambda: [one(seed) for seed in seeds]

    return {
        **{f"shared from {first}": several(_shared, range(first, 36, 3)) for first in range(3)},
        **{f"shared as wished from {first}": several(_shared_as_wished, range(first, 36, 3)) for first in range(3)},
        "random games": several(_random_games, range(8)),
        **{f"crossing games from {first}": several(_crossing_games, range(first, 8, 2)) for first in range(2)},
        **{f"presses from {first}": several(_press, range(first, 24, 4)) for first in range(4)},
        "in the hand": _in_hand,
    }  # fmt: skip
