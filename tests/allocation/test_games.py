"""Several games with one set of devices: laws on random cases, and every set of devices tried on tiny ones.

All cases are invented.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import combinations_with_replacement, product

import numpy as np
import pytest
from plain_sharing import best_by_trying_all
from random_cases import random_case, random_ranking
from small_cases import action, broken_rules, case, fit, hub, offers_of, site, stick, switch

from stickwright.allocation.allocate import asked_of
from stickwright.allocation.games import GameAsked, share_games, weighted
from stickwright.allocation.places import place_of
from stickwright.model.game import Game
from stickwright.model.wishes import Wishes

NONE = Wishes()


def game(name, *actions, **more):
    return Game.model_validate({"name": name, "action": list(actions), **more})


def asked(this, games, ranking, weights=None):
    """The question of each game, of one player with one kit."""
    out = []
    for one, weight in zip(games, weights or [1] * len(games), strict=True):
        mine = replace(this, game=one, further_games=tuple(other for other in games if other is not one))
        usable = [part.name for part in this.player.site if part.cleared != "no"]
        out.append(GameAsked(mine, offers_of(mine, ranking[one.name]), weight, usable=usable))
    return out


def stands(found, this):
    """Devices by place, counted in plain loops: the most that any one layout has there."""
    part = {one.name: one for one in this.player.site}
    out = Counter()
    for sharing in found.sharings:
        mine = Counter()
        for one in sharing.placements if sharing is not None else ():
            if one.how == "site" and one.kind == "controller":
                mine[place_of(part[one.site]), one.kind, one.device] = 1
            elif one.how == "site":
                mine[one.site, one.kind, one.device] += 1
        out |= mine
    return out


def broken_in_common(found, this):
    """What one set of devices breaks, whatever each game keeps."""
    there, out = stands(found, this), []
    for place in {place for place, _, _ in there}:
        here = {(kind, device): n for (at, kind, device), n in there.items() if at == place}
        if sum(n for (kind, _), n in here.items() if kind == "stick") > 1:
            out.append(f"{place}: two sticks")
        if len({kind for kind, _ in here} - {"controller"}) > 1:
            out.append(f"{place}: two kinds")
        part = next((one for one in this.player.site if one.name == place), None)
        most = 2 if part is None or part.press is None else part.press.most_switches
        if sum(n for (kind, _), n in here.items() if kind == "switch") > most:
            out.append(f"{place}: more than {most} switches")
    for one in (*this.kit.stick, *this.kit.switch, *this.kit.controller):
        number = sum(n for (_, _, device), n in there.items() if device == one.name)
        if one.price is None and number > one.in_stock:
            out.append(f"{one.name}: {number} of {one.in_stock}")
    return out


def mean(found, games):
    return weighted([one.points for one in found.sharings], [one.weight for one in games])


# ---- tiny cases: every set of devices


def tiny(seed):
    """Three sites, two sticks, two switches; two games of two or three actions, with sticks that suit one or the other."""
    rng = np.random.default_rng([seed, 31])
    sites = [site("thumb", "thumb"), site("knee", "knee", press={"most_switches": 1}), site("toe", "foot")]
    sticks = [stick("ash"), stick("elm", in_stock=int(rng.integers(1, 3)))]
    switches = [switch("pip", 0.2), switch("pop", float(rng.uniform(0.1, 0.9)), in_stock=int(rng.integers(1, 3)))]
    this = case(sites, [action("-")], sticks=sticks, switches=switches, hubs=[hub()] if seed % 3 == 0 else [])
    games, ranking = [], {}
    for name in ("walk", "quiz"):
        kinds = ["two-axis", *(["press", "press"] if rng.random() < 0.5 else ["two-axis", "press"])][
            : rng.integers(2, 4)
        ]
        acts = [action(f"{name} {n}", kind, int(rng.integers(3, 10)), drop_price=0) for n, kind in enumerate(kinds)]
        games.append(game(name, *acts))
        ranking[name] = {
            at: sorted(
                (fit(at, one, bits=float(rng.uniform(0, 4))) for one in ("ash", "elm")), key=lambda f: -f.bits.value
            )
            for at in ("thumb", "toe")
        }
    return this, asked(this, games, ranking, [int(rng.integers(1, 4)), 1])


def every_set(this):
    """Each set of devices that the sites have room for and the stock allows."""
    at_each = []
    for part in this.player.site:
        names = [one.name for one in this.kit.switch]
        most = part.press.most_switches
        piles = [pile for n in range(1, most + 1) for pile in combinations_with_replacement(names, n)]
        at_each.append([
            Counter(),
            *(Counter({(part.name, "stick", one.name): 1}) for one in this.kit.stick),
            *(Counter((part.name, "switch", name) for name in pile) for pile in piles),
        ])  # fmt: skip
    stock = {one.name: one.in_stock for one in (*this.kit.stick, *this.kit.switch)}
    for parts in product(*at_each):
        there = sum(parts, Counter())
        if all(sum(n for (_, _, d), n in there.items() if d == name) <= most for name, most in stock.items()):
            yield there


def best_with(question, there):
    """The best layout of one game on a set of devices, every choice tried."""
    allowed = [
        n for n, way in enumerate(question.ways) if way.how != "site" or there[way.site, way.kind, way.device] > 0
    ]
    place = {old: new for new, old in enumerate(allowed)}
    left = {
        (at, kind, device): tuple(
            place[n] for n in allowed if (question.ways[n].site, question.ways[n].kind, question.ways[n].device)
            == (at, kind, device)
        )
        for (at, kind, device) in there
        if kind == "switch"
    }  # fmt: skip
    small = replace(question, ways=tuple(question.ways[n] for n in allowed), at_most=tuple(
        (f"{at} {device}", there[at, kind, device], numbers) for (at, kind, device), numbers in left.items()
    ))  # fmt: skip
    return best_by_trying_all(small)


@pytest.mark.parametrize("seed", range(12))
def test_no_set_of_devices_is_better(seed):
    """Every set of devices that is possible at all is tried, each game on it in plain loops: none is worth more."""
    this, games = tiny(seed)
    found = share_games(games)
    questions = [asked_of(one.case, one.offers, NONE, None)[2] for one in games]
    weights = [one.weight for one in games]
    best = max(weighted(points, weights) for there in every_set(this) if (points := _all_best(questions, there)))
    assert found.outcome == "common"
    assert mean(found, games) == pytest.approx(best, abs=1e-6)
    assert mean(found, games) <= found.bound + 1e-6
    assert found.proven


def _all_best(questions, there):
    out = []
    for question in questions:
        best = best_with(question, there)
        if best is None:
            return None
        out.append(best if isinstance(best, float | int) else best[0])
    return out


# ---- laws


def done(sharing):
    """Who does what, without the figures of a press, of which some are not numbers."""
    return [(one.action, one.how, one.site, one.label, one.socket, one.points) for one in sharing.placements]


@pytest.mark.parametrize("seed", range(40))
def test_a_common_set_keeps_every_rule(seed):
    """Never more than one stick and one kind at a site, never more than there is; each layout keeps the rules of its own game;
    what all games are worth together is at most what they are worth alone; the order in which they are asked does not matter."""
    this = random_case(seed, most_actions=5, left=0.8)
    more = random_case(seed + 1000, most_actions=5, left=0.8).game
    games = [this.game.model_copy(update={"name": "walk"}), more.model_copy(update={"name": "quiz"})]
    ranking = {"walk": random_ranking(seed, this), "quiz": random_ranking(seed + 500, this)}
    questions = asked(this, games, ranking, [3, 1])
    found = share_games(questions)
    for one, sharing, alone in zip(questions, found.sharings, found.alone, strict=True):
        if found.outcome == "common" and np.isfinite(sharing.points):
            assert broken_rules(one.case, sharing) == []
            assert alone.clash is not None or sharing.points <= alone.points + 1e-6
    if found.outcome == "common":
        assert broken_in_common(found, this) == []
    back = share_games(questions[::-1])
    assert (back.outcome, back.stands) == (found.outcome, found.stands)
    assert [one.points for one in back.sharings[::-1]] == pytest.approx(
        [one.points for one in found.sharings], nan_ok=True
    )


def test_the_same_game_twice_costs_nothing():
    """Each has the layout that it has alone."""
    this, (first, _) = tiny(4)
    again = first.case.game.model_copy(update={"name": "again"})
    second = replace(first, case=replace(first.case, game=again))
    found = share_games([first, second])
    assert done(found.sharings[0]) == done(found.sharings[1]) == done(found.alone[0])
    assert found.bound == found.alone[0].points
    assert broken_in_common(found, this) == []


def test_hours_decide_between_two_sticks():
    """One site, two sticks, each right for one game: the game with more hours has its own, and the other pays."""
    this = case([site("thumb", "thumb")], [action("-")], sticks=[stick("ash"), stick("elm")])
    games = [game("walk", action("go", "two-axis", 8)), game("race", action("steer", "two-axis", 8))]
    ranking = {
        "walk": {"thumb": [fit("thumb", "ash", bits=3), fit("thumb", "elm", bits=1)]},
        "race": {"thumb": [fit("thumb", "elm", bits=3), fit("thumb", "ash", bits=1)]},
    }
    for weights, stick_chosen in (((1, 2), "elm"), ((2, 1), "ash")):
        found = share_games(asked(this, games, ranking, weights))
        assert set(found.stands) == {("thumb", "stick", stick_chosen)}
        # 8 points of importance, 0.4 of them for precision, of which two of three bits are missing: 2.13 lost
        costs = [a.points - s.points for a, s in zip(found.alone, found.sharings, strict=True)]
        assert max(costs) == pytest.approx(0.4 * 8 * 2 / 3, abs=0.011)
        assert min(costs) == 0


def test_games_that_need_different_kinds_at_the_only_site_have_no_common_set():
    """A stick for one and a switch for the other at one site: each has its layout alone, and that is said."""
    this = case([site("chin", "chin", cleared="yes")], [action("-")], sticks=[stick("ash")], switches=[switch("pip")])
    games = [game("walk", action("go", "two-axis")), game("quiz", action("answer"))]
    ranking = {"walk": {"chin": [fit("chin", "ash")]}, "quiz": {}}
    found = share_games(asked(this, games, ranking))
    assert found.outcome == "none"
    assert found.sharings == found.alone


def test_a_device_bought_only_for_the_second_game_is_paid_for():
    """One in stock, and the two games can use it at different sites only: the second one costs what buying costs."""
    sites, bought = [site("thumb", "thumb"), site("toe", "foot")], 1.5  # points of a thing that is not there tonight
    this = case(sites, [action("-")], sticks=[stick("ash", price=30)])
    games = [game("walk", action("go", "two-axis", 8)), game("race", action("steer", "two-axis", 8))]
    ranking = {"walk": {"thumb": [fit("thumb", "ash")]}, "race": {"toe": [fit("toe", "ash")]}}
    found = share_games(asked(this, games, ranking))
    assert found.stands == Counter({("thumb", "stick", "ash"): 1, ("toe", "stick", "ash"): 1})
    assert found.bound == pytest.approx(weighted([one.points for one in found.alone], [1, 1]) - bought)
    assert found.proven
