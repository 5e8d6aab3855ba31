"""Where not everything can be had: the smallest set of wishes that clash, in words, and the cheapest ways out.

The solver's own proof names wishes and facts that cannot all hold; those that the clash does not need are taken out one by
one, so that without any one of the rest a plan is possible or the clash is another. Ways out are searched cheapest first:
whenever what has been given up is not enough, the next clash says what else could be.
"""

from __future__ import annotations

import heapq
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import count

from stickwright.allocation.integer_model import Group
from stickwright.allocation.places import Refused
from stickwright.allocation.problem import Question
from stickwright.allocation.relaxations import given_up, sentence_of, way_out_sentence, wish_words
from stickwright.allocation.solve import Answer, Solver
from stickwright.model.sharing import Clash, Relaxation

__all__ = ["FreedWishes", "clash_of", "further_clashes", "raised", "smallest_clash", "ways_out"]

_MOST_LOOKED_AT = 60
"""Sets of wishes given up that are looked at, cheapest first."""
_MOST_CLASHES = 4
"""Clashes told beside the first; what is left is among the ways out all the same."""
_RAISED = ("parts", "stock", "helper", "paired", "budget")
"""Limits that a way out raises no further than it must; the others it does without."""
_PRICES = {
    "stock": 3.0, "sockets": 4.0, "power": 4.0, "paired": 3.0, "budget": 2.0, "parts": 2.0, "keep": 2.0, "without": 2.0,
    "helper": 3.0, "presses": 5.0,
}  # fmt: skip
"""What giving up a wish or changing a fact costs, on the player's scale: weights of common practice, no source."""


@dataclass(frozen=True)
class FreedWishes:
    """What is given up, and its price.

    Parameters
    ----------
    freed : frozenset of tuple
    price : float
    amounts : mapping
        What each limit that is given up has to be: devices, money, stock, actions, second controllers; of sockets, how
        many more.
    """

    freed: frozenset[Group]
    price: float
    amounts: Mapping[Group, float] = field(default_factory=dict)


def smallest_clash(solver: Solver, *, freed: Collection[Group] = ()) -> tuple[Group, ...]:
    """Wishes and facts that cannot all hold, and of which none can be spared.

    Parameters
    ----------
    solver : Solver
    freed : collection of tuple
        What has been given up already.

    Returns
    -------
    tuple of Group
        Empty when a plan is possible.
    """
    named = solver.clashing(freed=freed)
    if not named:
        return ()
    # what people cannot change is tried last, so that it stays only where it must
    tries = (
        sorted(named, key=lambda group: (_order(group), solver.groups.index(group))),
        sorted(named, key=lambda group: (-_order(group), solver.groups.index(group))),
    )
    return min((_shrunk(solver, order, freed) for order in tries), key=len)


def _order(group: Group) -> int:
    return {"do": 3, "together": 4, "keep": 4, "without": 4, "budget": 4, "parts": 4}.get(group[0], 1)


def _shrunk(solver: Solver, named: Sequence[Group], freed: Collection[Group]) -> tuple[Group, ...]:
    core = list(named)
    outside = {group for group in solver.groups if group not in core} | set(freed)
    for group in named:
        if solver.possible(freed=outside | {group}) is False:
            core.remove(group)
            outside.add(group)
    return tuple(sorted(core, key=lambda group: (-_order(group), solver.groups.index(group))))


def _price(group: Group, question: Question) -> float | None:
    """What giving up a group costs; None for what nobody can change."""
    importance = dict(zip(question.actions, question.importance, strict=True))
    if group[0] == "do":
        return importance[group[1]] + 1.0
    if group[0] == "together":
        return min(importance[name] for name in group[1:3]) / 2 + 1.0
    return _PRICES.get(group[0])


def ways_out(solver: Solver, first: Sequence[Group], *, most: int = 3) -> tuple[FreedWishes, ...]:
    """The cheapest sets of wishes to give up so that the rest can be had, cheapest first.

    Parameters
    ----------
    solver : Solver
    first : sequence of Group
        From `smallest_clash`.
    most : int, default 3
        How many are wanted.
    """
    question = solver.question
    possible = {way.action for way in question.ways}
    # what nobody can do is part of every way out
    given = frozenset(group for group in solver.groups if group[0] == "do" and group[1] not in possible)
    found: list[FreedWishes] = []
    seen: set[frozenset[Group]] = set()
    order = count()
    queue = [(sum(_price(group, question) or 0.0 for group in given), next(order), given)]
    looked = 0
    while queue and len(found) < most and looked < _MOST_LOOKED_AT:
        price, _, freed = heapq.heappop(queue)
        looked += 1
        if any(freed > one.freed for one in found):  # gives up more than is needed
            continue
        core = tuple(first) if not freed else solver.clashing(freed=freed)
        if not core:
            found.append(_way_out(solver, freed, price))
            continue
        for group in core:
            cost = _price(group, question)
            further = freed | {group}
            if cost is not None and further not in seen:
                seen.add(further)
                heapq.heappush(queue, (price + cost, next(order), further))
    return tuple(found) or _any_way_out(solver, given)


def _any_way_out(solver: Solver, freed: frozenset[Group]) -> tuple[FreedWishes, ...]:
    """One way out for a case with so many clashes that the cheapest is not found in time: clash by clash, then without
    what was not needed."""
    while core := solver.clashing(freed=freed):
        costs = [(cost, group) for group in core if (cost := _price(group, solver.question)) is not None]
        if not costs:
            return ()
        freed |= {min(costs)[1]}
    for group in sorted(freed, key=lambda one: -(_price(one, solver.question) or 0.0)):
        if solver.possible(freed=freed - {group}):
            freed -= {group}
    return (_way_out(solver, freed, sum(_price(group, solver.question) or 0.0 for group in freed)),)


def _way_out(solver: Solver, freed: frozenset[Group], price: float) -> FreedWishes:
    question, loose, amounts = raised(solver.question, freed)
    sockets = [group for group in loose if group[0] == "sockets"]
    if sockets:
        answer = (solver if question is solver.question else Solver(question)).best(freed=loose)
        amounts |= {group: over for group in sockets if (over := _beyond(solver, answer, group)) > 0}
    return FreedWishes(freed, price, amounts)


def _beyond(solver: Solver, answer: Answer, group: Group) -> float:
    """How far a plan goes beyond a limit."""
    if not len(answer.values):
        return 0.0
    return max(
        sum(value * int(answer.values[column]) for column, value in zip(row.columns, row.values, strict=True))
        - row.high
        for row in solver.model.rows
        if row.group == group
    )


def raised(question: Question, freed: Collection[Group]) -> tuple[Question, frozenset[Group], dict[Group, float]]:
    """The question with limits raised no further than a way out needs.

    Parameters
    ----------
    question : Question
    freed : collection of tuple
        From `ways_out`.

    Returns
    -------
    question : Question
    freed : frozenset of tuple
        What is still given up: what cannot be raised.
    limits : dict
        The new limit of each that was: devices, stock, actions of a helper, second controllers, money to the hundredth.
    """
    left = set(freed)
    limits: dict[Group, float] = {}
    for group in sorted(freed, key=lambda one: (_RAISED.index(one[0]) if one[0] in _RAISED else -1, one)):
        if group[0] not in _RAISED:
            continue
        left.remove(group)
        low = _limit(question, group)
        limit = _least_money(question, left, low) if group[0] == "budget" else _least(question, group, left, int(low))
        limits[group] = limit
        question = _with_limit(question, group, limit)
    return question, frozenset(left), limits


def _limit(question: Question, group: Group) -> float:
    if group[0] == "stock":
        return next(gear.in_stock for gear in question.gear if gear.name == group[1])
    if group[0] == "helper":
        return next(most for name, most, _ in question.at_most if name == group[1])
    limits = {"parts": question.most_parts, "paired": question.paired, "budget": question.budget}
    return limits[group[0]] or 0.0


def _with_limit(question: Question, group: Group, limit: float) -> Question:
    if group[0] == "budget":
        return replace(question, budget=limit)
    whole = round(limit)
    if group[0] == "stock":
        gear = tuple(replace(one, in_stock=whole) if one.name == group[1] else one for one in question.gear)
        return replace(question, gear=gear)
    if group[0] == "helper":
        at_most = tuple((name, whole if name == group[1] else most, ways) for name, most, ways in question.at_most)
        return replace(question, at_most=at_most)
    return replace(question, most_parts=whole) if group[0] == "parts" else replace(question, paired=whole)


def _least(question: Question, group: Group, freed: Collection[Group], low: int) -> float:
    enough = low + 2 * len(question.actions)  # each action needs one device, one adapter and less than one splitter
    return next(
        (most for most in range(low + 1, enough) if Solver(_with_limit(question, group, most)).possible(freed=freed)),
        enough,
    )


def _least_money(question: Question, freed: Collection[Group], low: float) -> float:
    high = low + sum(gear.price or 0.0 for gear in question.gear) * 2 * len(question.actions)
    while high - low > 0.005:
        middle = round((low + high) / 2, 2)
        if middle in (low, high):
            break
        if Solver(replace(question, budget=middle)).possible(freed=freed):
            high = middle
        else:
            low = middle
    return high


def further_clashes(solver: Solver, first: Sequence[Group], cheapest: FreedWishes) -> tuple[tuple[Group, ...], ...]:
    """Clashes beside the first that the cheapest way out settles too, each the smallest.

    Parameters
    ----------
    solver : Solver
    first : sequence of Group
        From `smallest_clash`.
    cheapest : FreedWishes
    """
    freed = cheapest.freed & set(first)
    out: list[tuple[Group, ...]] = []
    while freed < cheapest.freed and len(out) < _MOST_CLASHES:
        core = smallest_clash(solver, freed=freed)
        settled = cheapest.freed & set(core)
        if not settled:
            break
        out.append(core)
        freed |= settled
    return tuple(out)


def clash_of(
    question: Question,
    core: Sequence[Group],
    out: Sequence[FreedWishes],
    refused: Sequence[Refused],
    further: Sequence[Sequence[Group]] = (),
) -> Clash:
    """A clash in words.

    Parameters
    ----------
    question : Question
    core : sequence of Group
        From `smallest_clash`.
    out : sequence of FreedWishes
        From `ways_out`.
    refused : sequence of Refused
        Why parts cannot do actions.
    further : sequence of sequence of Group
        From `further_clashes`.
    """
    wishes = tuple(wish_words(group, question, refused) for group in core)
    relaxations = tuple(
        Relaxation(
            way_out_sentence(_in_order(one.freed, question), question, one.amounts), one.price,
            tuple(given_up(group, question, one.amounts) for group in _in_order(one.freed, question)),
        )
        for one in out
    )  # fmt: skip
    told = sentence_of(core, further, [one.sentence for one in relaxations], question, refused)
    return Clash(wishes, told, relaxations)


def _in_order(groups: Collection[Group], question: Question) -> list[Group]:
    """Actions as the game names them, then the rest."""
    place = {action: number for number, action in enumerate(question.actions)}
    return sorted(groups, key=lambda group: (group[0] != "do", place.get(group[1], 0) if group[1:] else 0, group))
