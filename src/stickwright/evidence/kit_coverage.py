"""Which kit serves how many players: the best set for a budget, proven, with the quick choice beside it."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

__all__ = ["Served", "best_kit", "greedy_kit"]

BOUND = 1 - 1 / math.e
"""The quick choice serves at least that share of the best, at equal costs [nemhauser-1978]."""


@dataclass(frozen=True)
class Served:
    """A set of kit.

    Parameters
    ----------
    chosen : tuple of int
        Places of the items, rising.
    served : int
        Players with at least one of them.
    cost : int
        In the smallest unit of the currency.
    most : int
        No set within the budget serves more; equals `served` where that is proven.
    """

    chosen: tuple[int, ...]
    served: int
    cost: int
    most: int


def greedy_kit(
    serves: Sequence[frozenset[int]], costs: Sequence[int], budget: int, owned: frozenset[int] = frozenset()
) -> Served:
    """Item by item, the one that serves the most further players for its cost.

    Parameters
    ----------
    serves : sequence of frozenset of int
        For each item the players it would serve.
    costs : sequence of int
        Above zero.
    budget : int
        Beyond what is owned.
    owned : frozenset of int, optional
        Items that are there already and cost nothing.

    Examples
    --------
    >>> greedy_kit([frozenset({0, 1, 2}), frozenset({0, 1}), frozenset({2, 3})], [1, 1, 1], 2).served
    4
    """
    chosen, covered, left = set(owned), set().union(*(serves[one] for one in owned)), budget
    while True:
        offers = [
            one for one in range(len(serves)) if one not in chosen and costs[one] <= left and serves[one] - covered
        ]
        if not offers:
            break
        best = max(offers, key=lambda one: (len(serves[one] - covered) / costs[one], -one))
        chosen.add(best)
        covered |= serves[best]
        left -= costs[best]
    players = len(frozenset().union(*serves)) if serves else 0
    return Served(tuple(sorted(chosen)), len(covered), budget - left, players)


def best_kit(
    serves: Sequence[frozenset[int]],
    costs: Sequence[int],
    budget: int,
    owned: frozenset[int] = frozenset(),
    *,
    seconds: float = 30.0,
) -> Served:
    """The set that serves the most players, by an exact solver.

    Parameters
    ----------
    serves, costs, budget, owned
        As in `greedy_kit`.
    seconds : float, default 30
        Most time of the solver, on its clock of work done: the same question has the same answer.

    Notes
    -----
    Maximum coverage [church-revelle-1974] by CP-SAT [cp-sat]; players whom the same items serve are one with their number as weight.

    Examples
    --------
    >>> best_kit([frozenset({0, 1, 2, 3}), frozenset({0, 1, 4}), frozenset({2, 3, 5})], [1, 1, 1], 2)
    Served(chosen=(1, 2), served=6, cost=2, most=6)
    """
    from ortools.sat.python import cp_model

    alike: Counter[frozenset[int]] = Counter()
    by_player: dict[int, list[int]] = {}
    for item, players in enumerate(serves):
        for player in players:
            by_player.setdefault(player, []).append(item)
    alike.update(frozenset(items) for items in by_player.values())
    model = cp_model.CpModel()
    take = [model.new_bool_var(f"take {item}") for item in range(len(serves))]
    for item in owned:
        model.add(take[item] == 1)
    model.add(sum(take[item] * costs[item] for item in range(len(serves)) if item not in owned) <= budget)
    reached = []
    for number, (items, weight) in enumerate(alike.items()):
        one = model.new_bool_var(f"reach {number}")
        model.add(sum(take[item] for item in sorted(items)) >= one)
        reached.append(weight * one)
    model.maximize(sum(reached))
    quick = greedy_kit(serves, costs, budget, owned)
    for item, variable in enumerate(take):
        model.add_hint(variable, item in quick.chosen)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_deterministic_time = seconds
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return quick
    chosen = tuple(item for item in range(len(serves)) if solver.value(take[item]))
    useful = _without_idle(chosen, serves, owned)
    served = len(frozenset().union(*(serves[item] for item in useful))) if useful else 0
    cost = sum(costs[item] for item in useful if item not in owned)
    return Served(useful, served, cost, round(solver.best_objective_bound))


def _without_idle(chosen: tuple[int, ...], serves: Sequence[frozenset[int]], owned: frozenset[int]) -> tuple[int, ...]:
    """Without what serves nobody that the rest does not serve."""
    kept = list(chosen)
    for item in sorted(chosen, key=lambda one: len(serves[one])):
        rest = frozenset().union(*(serves[one] for one in kept if one != item)) if len(kept) > 1 else frozenset()
        if item not in owned and serves[item] <= rest:
            kept.remove(item)
    return tuple(kept)
