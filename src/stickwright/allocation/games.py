"""One set of devices for several games: each game's own integer model, side by side, tied by what stands at each site.

A game keeps its exact model; columns of their own say which stick, how many switches of a model and which controller
stand at a place, and no game uses what does not stand there. What is sought is the sum of the games' points, each
weighted by its hours. No common set can be worth more than the games each by itself, and none more than the solver's bound.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field

from stickwright.allocation import utility
from stickwright.allocation.allocate import allocate, asked_of, best_of
from stickwright.allocation.integer_model import ConstraintRow, Group, IntegerModel, integer_model
from stickwright.allocation.problem import Gear, Question
from stickwright.allocation.solve import DETERMINISTIC_LIMIT, SMALLEST_POINTS, Solver, later_ways, run, written
from stickwright.allocation.stands import Stand, stands_of, union_of
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.kit import Controller, Stick, Switch
from stickwright.model.player import Player
from stickwright.model.sharing import Sharing
from stickwright.model.wishes import Wishes

__all__ = ["GameAsked", "GamesShared", "share_games"]

_SCALE = round(1 / SMALLEST_POINTS)
_OPTIMAL, _FEASIBLE, _INFEASIBLE = 4, 2, 3


@dataclass(frozen=True, eq=False)
class GameAsked:
    """One game of a player, as `allocate` is asked about it.

    Parameters
    ----------
    case : Case
        With this game as its `game`.
    offers : mapping
        For a site and a stick action, the set-ups of the sticks there, best first.
    weight : int
        What its points count for among the games.
    wishes : Wishes
    usable : sequence of str, optional
    tiring_share : mapping
    why : str, optional
    """

    case: Case
    offers: Mapping[tuple[str, str], Sequence[Fit]]
    weight: int = 1
    wishes: Wishes = field(default_factory=Wishes)
    usable: Sequence[str] | None = None
    tiring_share: Mapping[str, float] = field(default_factory=dict)
    why: str | None = None

    def shared(self, only: Counter[Stand] | None = None) -> Sharing | None:
        """The best layout of this game, on its own or with devices that stand there for all."""
        return allocate(
            self.case, self.offers, wishes=self.wishes, usable=self.usable, tiring_share=self.tiring_share, why=self.why,
            only=only,
        )  # fmt: skip


@dataclass(frozen=True, eq=False)
class GamesShared:
    """A layout for each game.

    Parameters
    ----------
    alone, sharings : tuple of Sharing or None
        For each game in the order asked: the best by itself, and the one with the common devices. None for a game without actions.
    stands : Counter
        The common devices; where there is no common set, all that the layouts use.
    outcome : str
        'common'; 'none' when no one set lets every game be played, 'limit' when none was found within the limit: then
        each game has its layout alone.
    bound : float
        No common set can be worth more, weighted.
    proven : bool
        Whether the set found is worth as much.
    """

    alone: tuple[Sharing | None, ...]
    sharings: tuple[Sharing | None, ...]
    stands: Counter[Stand]
    outcome: str
    bound: float
    proven: bool


def weighted(points: Sequence[float], weights: Sequence[int]) -> float:
    """Mean of points by weight.

    Parameters
    ----------
    points : sequence of float
    weights : sequence of int

    Examples
    --------
    >>> weighted([10.0, 4.0], [2, 1])
    8.0
    """
    return sum(p * w for p, w in zip(points, weights, strict=True)) / sum(weights)


def share_games(games: Sequence[GameAsked], *, limit: float = 2 * DETERMINISTIC_LIMIT) -> GamesShared:
    """Share the actions of several games out with one set of devices.

    Parameters
    ----------
    games : sequence of GameAsked
        Of one player and one kit. Their order does not change what is chosen.
    limit : float
        Deterministic time of the search for the common set.
    """
    alone = tuple(game.shared() for game in games)
    playable = [n for n, one in enumerate(alone) if one is not None and math.isfinite(one.points)]
    own = {n: stands_of(one.placements, games[n].case.player) for n in playable if (one := alone[n]) is not None}
    everything = union_of(own.values())
    weights = [games[n].weight for n in playable]
    bound = weighted([alone[n].bound for n in playable], weights) if playable else math.nan  # type: ignore[union-attr]
    if any(stands == everything for stands in own.values()) or len(playable) < 2:
        proven = all(one is None or one.proven for one in alone)
        return GamesShared(alone, alone, everything, "common", bound, proven)
    parts = [_part(games[n]) for n in sorted(playable, key=lambda n: games[n].case.game.name)]
    found = _common(parts, games[0].case.player, limit)
    if found.stands is None:
        return GamesShared(alone, alone, everything, found.outcome, bound, proven=False)
    sharings = tuple(game.shared(found.stands) if n in own else alone[n] for n, game in enumerate(games))
    bound = min(bound, found.bound)
    points = weighted([one.points for n in playable if (one := sharings[n]) is not None], weights)
    used = union_of(stands_of(one.placements, games[0].case.player) for one in sharings if one is not None)
    points -= extra_points(games[0].case, sharings, used)
    return GamesShared(alone, sharings, used, "common", bound, points >= bound - SMALLEST_POINTS / 2)


@dataclass(frozen=True, eq=False)
class _Part:
    """One game as it goes into the common model: all its ways, and what had to be given up in it even alone."""

    question: Question
    freed: Collection[Group]
    weight: int


def _part(game: GameAsked) -> _Part:
    found, _, whole = asked_of(game.case, game.offers, game.wishes, game.usable)
    solver, _, freed, _ = best_of(Solver(whole), found)
    return _Part(solver.question, freed, game.weight)


@dataclass(frozen=True, eq=False)
class _Found:
    outcome: str
    stands: Counter[Stand] | None = None
    bound: float = math.nan


def _common(parts: Sequence[_Part], player: Player, limit: float) -> _Found:
    """The devices of the best common set, and what none can exceed."""
    model, values, later = IntegerModel(), list[int](), list[int]()
    firsts, columns = [], _Linked()
    for part in parts:
        first = len(model.points)
        firsts.append(first)
        one = integer_model(part.question)
        model.points += one.points
        model.upper += one.upper
        model.names += one.names
        model.rows += [_moved(row, first, part.freed) for row in one.rows]
        values += [part.weight * round(points * _SCALE) for points in one.points]
        behind = later_ways(part.question)
        later += [*behind, *[0] * (len(one.points) - len(behind))]
        columns.take(part.question, one, first)
    new = _tie(model, parts, columns)
    total = sum(part.weight for part in parts)
    ties = 1 + sum(len(part.question.actions) * len(part.question.ways) for part in parts)
    step = ties * (2 + len(new.devices))
    values += [0] * (len(model.points) - len(values))
    later += [0] * (len(model.points) - len(later))
    for column in new.devices:
        later[column] = ties  # of sets that are worth the same, the one with the fewest devices
    for column in new.extra:
        values[column] = -total * round(parts[0].question.buy_points * _SCALE)
    proto = written(model)
    proto.objective.vars.extend(range(len(values)))
    proto.objective.coeffs.extend([behind - step * points for points, behind in zip(values, later, strict=True)])
    proto.objective.scaling_factor = -1.0
    response = run(proto, limit)
    status = int(response.status)
    if status not in (_OPTIMAL, _FEASIBLE):
        return _Found("none" if status == _INFEASIBLE else "limit")
    bound = math.floor(response.best_objective_bound / step + 1) / (_SCALE * total)
    solution = list(response.solution)
    if status == _OPTIMAL:
        bound = sum(w * int(v) for w, v in zip(values, solution, strict=True)) / (_SCALE * total)
    each = [
        stands_of([way for n, way in enumerate(part.question.ways) if solution[first + n]], player)
        for part, first in zip(parts, firsts, strict=True)
    ]
    return _Found("common", union_of(each), bound)


def _moved(row: ConstraintRow, first: int, freed: Collection[Group]) -> ConstraintRow:
    """A row of one game among the columns of all; one that was given up does not count."""
    low, high = row.low, row.high
    if row.group in freed:
        low, high = -math.inf, high if row.group[0] == "do" else math.inf
    return ConstraintRow(row.group, tuple(first + column for column in row.columns), row.values, low, high)


class _Linked:
    """The columns of each game that say what it uses where."""

    def __init__(self) -> None:
        self.uses: dict[Stand, list[list[int]]] = {}
        """For each game that can use it, the columns that count how many it does."""
        self.kinds: dict[tuple[str, str], list[int]] = {}
        self.bought: dict[str, list[int]] = {}
        self.by_game: list[tuple[dict[str, list[int]], dict[str, int]]] = []
        """For each game and device, the columns that count how many it uses, and the one of those that it buys."""

    def take(self, question: Question, model: IntegerModel, first: int) -> None:
        """The columns of one more game."""
        mine: dict[Stand, list[int]] = {}
        for number, way in enumerate(question.ways):
            if way.kind in ("stick", "switch"):
                mine.setdefault((way.site or "", way.kind, way.device or ""), []).append(first + number)
        for number, name in enumerate(model.names):
            if name[0] == "unit":
                mine.setdefault((str(name[2]), "controller", str(name[1])), []).append(first + number)
            elif name[0] == "used":
                self.kinds.setdefault((str(name[1]), str(name[2])), []).append(first + number)
            elif name[0] == "bought":
                self.bought.setdefault(str(name[1]), []).append(first + number)
        devices: dict[str, list[int]] = {}
        for (_, _, device), columns in mine.items():
            devices.setdefault(device, []).extend(columns)
        buys = {str(name[1]): first + n for n, name in enumerate(model.names) if name[0] == "bought"}
        self.by_game.append((devices, buys))
        for stand, columns in mine.items():
            self.uses.setdefault(stand, []).append(columns)


@dataclass(frozen=True)
class _New:
    devices: list[int]
    extra: list[int]
    """How many of a device must be bought that no game would buy by itself: the games use it at different places."""


def _tie(model: IntegerModel, parts: Sequence[_Part], linked: _Linked) -> _New:
    """What stands where, for all games: at most one stick, one kind of device, so many switches at a site, and no more than
    there are."""
    questions = [part.question for part in parts]
    most = {site.name: site.most_switches for question in questions for site in question.sites}
    at: dict[tuple[str, str], list[tuple[int, float]]] = {}
    of: dict[str, list[tuple[int, float]]] = {}
    devices = []
    for stand, games in linked.uses.items():
        place, kind, device = stand
        column = model.column(("stands", *stand), 0.0, float(most[place]) if kind == "switch" else 1.0)
        devices.append(column)
        for used in games:
            model.row(("site", place), [*((n, 1.0) for n in used), (column, -1.0)], high=0.0)
        at.setdefault((place, kind), []).append((column, 1.0))
        of.setdefault(device, []).append((column, 1.0))
    for (place, kind), columns in at.items():
        model.row(("site", place), columns, high=float(most[place]) if kind == "switch" else 1.0)
    _one_kind(model, linked)
    extra = _in_stock(model, questions, linked, of)
    parts_limits = [question.most_parts for question in questions if question.most_parts is not None]
    if parts_limits:
        model.row(("parts",), [(column, 1.0) for column in devices], high=float(max(parts_limits)))
    return _New(devices, extra)


def _one_kind(model: IntegerModel, linked: _Linked) -> None:
    """A site works sticks, switches or a controller, the same in all games: what stands there is not taken away between them."""
    kinds: dict[str, list[tuple[int, float]]] = {}
    for (site, kind), used in linked.kinds.items():
        column = model.column(("works", site, kind))
        for one in used:
            model.row(("site", site), [(one, 1.0), (column, -1.0)], high=0.0)
        kinds.setdefault(site, []).append((column, 1.0))
    for site, columns in kinds.items():
        model.row(("site", site), columns, high=1.0)


def _in_stock(
    model: IntegerModel, questions: Sequence[Question], linked: _Linked, of: Mapping[str, list[tuple[int, float]]]
) -> list[int]:
    """No more of a device than there are and may be bought, at all places and in all games together."""
    gear: dict[str, Gear] = {}
    for question in questions:
        for one in question.gear:
            if one.name not in gear or one.in_stock > gear[one.name].in_stock:
                gear[one.name] = one
    spent: list[tuple[int, float]] = []
    out = []
    for name, one in gear.items():
        devices, bought = of.get(name, []), linked.bought.get(name, [])
        if one.price is None:
            model.row(("stock", name), devices, high=float(one.in_stock))
            continue
        if not devices and not bought:
            continue
        paid = model.column(("paid", name), 0.0, float(sum(model.upper[n] for n, _ in devices) + len(bought) * 9))
        spent.append((paid, one.price))
        model.row(("stock", name), [*devices, (paid, -1.0)], high=float(one.in_stock))
        for column in bought:
            model.row(("stock", name), [(column, 1.0), (paid, -1.0)], high=0.0)
        if devices:
            more = model.column(("extra", name), 0.0, model.upper[paid])
            out.append(more)
            terms = [*devices, *((column, -1.0) for column in bought), (more, -1.0)]
            model.row(("stock", name), terms, high=float(one.in_stock))
            _no_more_than_needed(model, linked, one)
    budgets = [question.budget for question in questions if question.budget is not None]
    if budgets:
        model.row(("budget",), spent, high=max(budgets) + 1e-9)
    return out


def _no_more_than_needed(model: IntegerModel, linked: _Linked, gear: Gear) -> None:
    """A game buys what it lacks itself and nothing for another, which would be cheaper by its hours."""
    for mine, buys in linked.by_game:
        bought = buys.get(gear.name)
        if bought is None:
            continue
        uses = [(column, -1.0) for column in mine.get(gear.name, ())]
        lacks = model.column(("lacks", gear.name))
        model.row(("stock", gear.name), [(bought, 1.0), (lacks, -model.upper[bought])], high=0.0)
        model.row(("stock", gear.name), [(bought, 1.0), *uses, (lacks, float(gear.in_stock))], high=0.0)


def extra_points(case: Case, sharings: Sequence[Sharing | None], stands: Mapping[Stand, int]) -> float:
    """What it costs that something is bought which no game would buy by itself: they use it at different places. What a game
    lacks itself is in its own points.

    Parameters
    ----------
    case : Case
        With the kit and the player.
    sharings : sequence of Sharing or None
        The layout of each.
    stands : mapping
        All devices that they use.
    """
    kit, player = case.kit, case.player
    devices: list[Stick | Switch | Controller] = [*kit.stick, *kit.switch, *kit.controller]
    stock = Counter({one.name: one.in_stock for one in devices})

    def bought(there: Mapping[Stand, int]) -> Counter[str]:
        counts: Counter[str] = Counter()
        for (_, _, device), number in there.items():
            counts[device] += number
        return counts - stock

    own: Counter[str] = Counter()
    for one in sharings:
        own.update(bought(stands_of(one.placements, player)) if one is not None else {})
    return utility.BUY_POINTS * sum((bought(stands) - own).values())
