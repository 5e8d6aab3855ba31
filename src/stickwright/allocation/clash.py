"""Where not everything can be had: the smallest set of wishes that clash, in words, and the cheapest ways out.

The solver's own proof names wishes and facts that cannot all hold; those that the clash does not need are taken out one by
one, so that without any one of the rest a plan is possible or the clash is another. Ways out are searched cheapest first:
whenever what has been given up is not enough, the next clash says what else could be.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import count

from stickwright.allocation.integer_model import Group
from stickwright.allocation.places import Refused
from stickwright.allocation.problem import Question
from stickwright.allocation.solve import Solver
from stickwright.model.sharing import Clash, Relaxation
from stickwright.units import figures

__all__ = ["WayOut", "clash_of", "least_limits", "smallest_clash", "ways_out"]

_MOST_LOOKED_AT = 60
"""Sets of wishes given up that are looked at, cheapest first."""
_PRICES = {
    "stock": 3.0, "sockets": 4.0, "power": 4.0, "paired": 3.0, "budget": 2.0, "parts": 2.0, "keep": 2.0, "without": 2.0,
    "helper": 3.0, "presses": 5.0,
}  # fmt: skip
"""What giving up a wish or changing a fact costs, on the player's scale: weights of common practice, no source."""


@dataclass(frozen=True)
class WayOut:
    """What is given up, and its price.

    Parameters
    ----------
    freed : frozenset of tuple
    price : float
    """

    freed: frozenset[Group]
    price: float


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


def ways_out(solver: Solver, first: Sequence[Group], *, most: int = 3) -> tuple[WayOut, ...]:
    """The cheapest sets of wishes to give up so that the rest can be had, cheapest first.

    Parameters
    ----------
    solver : Solver
    first : sequence of Group
        From `smallest_clash`.
    most : int, default 3
        How many are wanted.
    """
    found: list[WayOut] = []
    seen: set[frozenset[Group]] = set()
    order = count()
    queue: list[tuple[float, int, frozenset[Group]]] = [(0.0, next(order), frozenset())]
    looked = 0
    while queue and len(found) < most and looked < _MOST_LOOKED_AT:
        price, _, freed = heapq.heappop(queue)
        looked += 1
        if any(freed > one.freed for one in found):  # gives up more than is needed
            continue
        core = tuple(first) if not freed else solver.clashing(freed=freed)
        if not core:
            found.append(WayOut(freed, price))
            continue
        for group in core:
            cost = _price(group, solver.question)
            further = freed | {group}
            if cost is not None and further not in seen:
                seen.add(further)
                heapq.heappush(queue, (price + cost, next(order), further))
    return tuple(found)


def least_limits(question: Question, freed: Collection[Group]) -> dict[str, float]:
    """How far a limit on devices or on money must be raised, where raising it is part of a way out.

    Parameters
    ----------
    question : Question
    freed : collection of tuple
        From `ways_out`.

    Returns
    -------
    dict
        'parts' and 'budget', those that are freed, each the smallest with which a plan is possible; money to the
        hundredth.
    """
    out: dict[str, float] = {}
    now = question
    if ("parts",) in freed and question.most_parts is not None:
        rest = [group for group in freed if group != ("parts",)]
        most = question.most_parts + 1
        while most < len(question.actions) + 1 and not Solver(replace(now, most_parts=most)).possible(freed=rest):
            most += 1
        out["parts"] = most
        now = replace(now, most_parts=most)
    if ("budget",) in freed and question.budget is not None:
        rest = [group for group in freed if group not in (("budget",), ("parts",))]
        low = question.budget
        high = low + sum(gear.price or 0.0 for gear in question.gear) * len(question.actions)
        while high - low > 0.005:
            middle = round((low + high) / 2, 2)
            if middle in (low, high):
                break
            if Solver(replace(now, budget=middle)).possible(freed=rest):
                high = middle
            else:
                low = middle
        out["budget"] = high
    return out


def clash_of(question: Question, core: Sequence[Group], out: Sequence[WayOut], refused: Sequence[Refused]) -> Clash:
    """A clash in words.

    Parameters
    ----------
    question : Question
    core : sequence of Group
        From `smallest_clash`.
    out : sequence of WayOut
        From `ways_out`.
    refused : sequence of Refused
        Why parts cannot do actions.
    """
    wishes = tuple(_words(group, question, refused) for group in core)
    relaxations = []
    for one in out:
        least = least_limits(question, one.freed)
        given = tuple(_given_up(group, question, least) for group in sorted(one.freed))
        relaxations.append(Relaxation(_and(given), one.price, given))
    return Clash(wishes, _sentence(core, wishes, relaxations, question, refused), tuple(relaxations))


def _and(parts: Sequence[str]) -> str:
    *most, last = parts
    return f"{', '.join(most)} and {last}" if most else last


def _sites(action: str, question: Question) -> list[str]:
    return list(
        dict.fromkeys(way.site for way in question.ways if way.action == action and way.how == "site" and way.site)
    )


def _sentence(
    core: Sequence[Group],
    wishes: Sequence[str],
    out: Sequence[Relaxation],
    question: Question,
    refused: Sequence[Refused],
) -> str:
    free = f"; free one of: {'; '.join(one.sentence for one in out)}." if out else "."
    done = [group[1] for group in core if group[0] == "do"]
    both = [group for group in core if group[0] == "together"]
    if len(core) == 1 and done:
        return f"{_nobody(done[0], question, refused)}{free}"
    if len(both) == 1 and set(done) == set(both[0][1:3]) and not any(g[0] in ("keep", "without") for g in core):
        first, second = done
        here, there = _sites(first, question), _sites(second, question)
        if here == there and len(here) == 1:
            return f"{first} and {second} must be possible at the same moment, but both need the {here[0]}{free}"
        return (
            f"{first} and {second} must be possible at the same moment, but {first} can only be done at "
            f"{_or(here)} and {second} only at {_or(there)}, and these cannot act together{free}"
        )
    sites = {name for action in done for name in _sites(action, question)}
    if len(done) > 1 and len(sites) == 1 and not both and {group[0] for group in core} <= {"do", "site"}:
        return f"{_and(done)} all need the {next(iter(sites))}, which does not take so many{free}"
    return f"These cannot all be had: {'; '.join(wishes)}. Without any one of them the rest could{free}"


def _or(names: Sequence[str]) -> str:
    *most, last = names or ["nothing"]
    return f"{', '.join(most)} or {last}" if most else last


def _nobody(action: str, question: Question, refused: Sequence[Refused]) -> str:
    if _sites(action, question):
        return f"{action} cannot be done"
    nearest: dict[str, Refused] = {}
    for one in refused:
        if one.action == action and (one.site not in nearest or one.shortfalls < nearest[one.site].shortfalls):
            nearest[one.site] = one
    closest = sorted(nearest.values(), key=lambda one: one.shortfalls)[:2]
    why = "; ".join(f"{one.site}{f' on {one.device}' if one.device else ''}: {one.why}" for one in closest)
    return f"Nobody can do {action} with this kit{f' ({why})' if why else ''}"


def _words(group: Group, question: Question, refused: Sequence[Refused]) -> str:
    kind, rest = group[0], group[1:]
    if kind == "do":
        sites = _sites(rest[0], question)
        if not sites:
            return _nobody(rest[0], question, refused)
        return (
            f"{rest[0]} must be done, and only at {_or(sites)} can it" if len(sites) <= 2 else f"{rest[0]} must be done"
        )
    if kind == "stock":
        stock = next(gear.in_stock for gear in question.gear if gear.name == rest[0])
        return f"there is {'only one' if stock == 1 else 'no' if stock == 0 else f'no more than {stock} of'} {rest[0]}"
    texts: dict[str, Callable[[], str]] = {
        "together": lambda: f"{rest[0]} and {rest[1]} must be possible at the same moment",
        "chord": lambda: f"{rest[0]} is pressed by {rest[1]}",
        "site": lambda: (
            f"{rest[0]} takes one stick, or a few switches, never both"
            if ":" not in rest[0]
            else f"{rest[0]} does one action"
        ),
        "presses": lambda: f"{rest[0]} can press for no more than 60 % of the busy minute",
        "sockets": lambda: _socket_words(rest, question),
        "power": lambda: f"{rest[0]} supplies only so much current",
        "paired": lambda: f"the hubs take {question.paired or 'no'} paired controller{'s' * (question.paired > 1)}",
        "budget": lambda: f"no more than {figures(question.budget or 0.0)} may be spent",
        "parts": lambda: (
            f"no more than {question.most_parts} device{'' if question.most_parts == 1 else 's'} may stand around"
        ),
        "keep": lambda: f"{rest[0]} is to stay with {rest[1]}",
        "without": lambda: f"{rest[0]} is not to be used",
        "helper": lambda: f"{rest[0]} takes over only so many actions",
        "slowed": lambda: "one part slows another",
    }
    return texts[kind]()


def _socket_words(rest: Sequence[str], question: Question) -> str:
    group = next((one for one in question.sockets if one.name == rest[0]), None)
    if len(rest) == 2 and group is not None:
        return f"{group.name} and {rest[1]} shut each other out"
    if group is not None:
        return f"{group.hub} has {len(group.sockets)} such socket{'s' * (len(group.sockets) > 1)} ({' '.join(group.sockets)})"
    if any(rest[0] == hub for hub, *_ in question.hub_limits):
        return f"{rest[0]} takes only so many devices"
    return f"{rest[0]} needs a socket that takes {_or(rest[1:]) if rest[1:] else 'its plug (none is said)'}"


def _given_up(group: Group, question: Question, least: Mapping[str, float]) -> str:
    kind, rest = group[0], group[1:]
    texts: dict[str, Callable[[], str]] = {
        "do": lambda: f"leave {rest[0]} out, or find a game option or a helper for it",
        "together": lambda: f"do {rest[0]} and {rest[1]} one after the other",
        "stock": lambda: f"get one {rest[0]} more",
        "sockets": lambda: _more_sockets(rest, question),
        "power": lambda: f"give {rest[0]} a powered splitter, or use a second hub",
        "paired": lambda: "use a hub that takes one more paired controller",
        "budget": lambda: f"spend {least['budget']:.2f} instead of {question.budget or 0.0:.2f}",
        "parts": lambda: f"let {least['parts']:.0f} devices stand around instead of {question.most_parts}",
        "keep": lambda: f"let {rest[0]} go elsewhere than {rest[1]}",
        "without": lambda: f"use {rest[0]} after all",
        "helper": lambda: f"let {rest[0]} do more",
        "presses": lambda: f"slow the game down, so that {rest[0]} presses less often",
    }
    return texts[kind]()


def _more_sockets(rest: Sequence[str], question: Question) -> str:
    group = next((one for one in question.sockets if one.name == rest[0]), None)
    if group is not None and len(rest) == 1:
        return f"add a hub or a splitter with one more socket like {group.name}"
    if any(rest[0] == hub for hub, *_ in question.hub_limits):
        return f"add a second hub beside {rest[0]}"
    return f"add a hub with a socket for {rest[0]} that takes {_or(rest[1:]) if rest[1:] else 'its plug'}"
