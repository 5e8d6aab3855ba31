"""The integer model solved with OR-Tools' CP-SAT [cp-sat]: proven best, or the best found with the bound that no plan passes.

Points count in thousandths and the solver reckons in whole numbers, so that a proof is a proof and a tie is a tie. One worker,
a fixed seed and a limit in the solver's own deterministic time instead of a clock: the same question gives the same answer
each time. Ties go to the ways named first in the files: each way of an action is worth a little less than the one before, all
together less than the smallest difference in points.

The model is written in the solver's exchange format through its light module: the usual Python layer above it loads a data-frame
library that a second of every start would go to.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stickwright.allocation.integer_model import ConstraintRow, Group, IntegerModel, integer_model
from stickwright.allocation.problem import Question

__all__ = ["DETERMINISTIC_LIMIT", "SMALLEST_POINTS", "Answer", "Solver", "later_ways", "run", "written"]

DETERMINISTIC_LIMIT = 20.0
"""Of one run, in the solver's deterministic time (about a second each on a small laptop)."""
SMALLEST_POINTS = 1e-3
"""Points, seconds, ampere and prices are counted in thousandths (`stickwright.allocation.problem.rounded`)."""
_SCALE = round(1 / SMALLEST_POINTS)
_FAR = 1 << 45
"""Beyond any sum of a row: no limit."""
_OPTIMAL, _FEASIBLE, _INFEASIBLE = 4, 2, 3


@dataclass(frozen=True, eq=False)
class Answer:
    """What the solver found.

    Parameters
    ----------
    possible : bool or None
        False when no plan meets every wish; None when neither was found nor excluded within the limit.
    points : float
        Of the plan found; NaN without one.
    bound : float
        No plan can have more.
    proven : bool
    values : array of int, shape (columns,)
        Empty without a plan.
    effort : float
        Deterministic time spent.
    """

    possible: bool | None
    points: float
    bound: float
    proven: bool
    values: NDArray[np.int64]
    effort: float

    def chosen(self, question: Question) -> dict[str, int]:
        """For each action, the way taken.

        Parameters
        ----------
        question : Question
            The one that was asked.
        """
        return {
            way.action: number for number, way in enumerate(question.ways) if len(self.values) and self.values[number]
        }


class Solver:
    """One question, built once and asked as often as needed, each time with a few columns or rows changed.

    Parameters
    ----------
    question : Question
    limit : float
        Deterministic time of one run.
    """

    def __init__(self, question: Question, *, limit: float = DETERMINISTIC_LIMIT) -> None:
        self.question = question
        self.model: IntegerModel = integer_model(question)
        self.limit = limit
        self.runs = 0
        self._points = [round(points * _SCALE) for points in self.model.points]
        ways = len(question.ways)
        self._step = 1 << max(1, (max(1, len(question.actions)) * max(1, ways)).bit_length())
        behind = [*later_ways(question), *[0] * (len(self._points) - ways)]
        self._worth = [points * self._step - later for points, later in zip(self._points, behind, strict=True)]
        self._rows_of: dict[Group, list[int]] = {}
        for number, row in enumerate(self.model.rows):
            self._rows_of.setdefault(row.group, []).append(number)
        self.groups: tuple[Group, ...] = tuple(self._rows_of)

    def best(
        self,
        *,
        forbid: Collection[int] = (),
        demand: Sequence[Sequence[int]] = (),
        freed: Collection[Group] = (),
        hint: Answer | None = None,
    ) -> Answer:
        """The best plan.

        Parameters
        ----------
        forbid : collection of int
            Columns (ways first) that must stay 0.
        demand : sequence of sequence of int
            Of each of these at least one column must be 1.
        freed : collection of tuple
            Groups whose rows do not count.
        hint : Answer, optional
            A plan to start from.
        """
        proto = self._proto(forbid, demand, freed)
        proto.objective.vars.extend(range(len(self._worth)))
        proto.objective.coeffs.extend([-worth for worth in self._worth])  # the format minimises
        proto.objective.scaling_factor = -1.0
        if hint is not None and len(hint.values):
            proto.solution_hint.vars.extend(range(len(hint.values)))
            proto.solution_hint.values.extend([int(value) for value in hint.values])
        return self._answer(self._solved(proto), freed)

    def possible(self, *, freed: Collection[Group] = ()) -> bool | None:
        """Whether any plan meets all wishes, some of them freed; None when the limit came first.

        Parameters
        ----------
        freed : collection of tuple
            Groups whose rows do not count.
        """
        return self._answer(self._solved(self._proto((), (), freed))).possible

    def clashing(self, *, freed: Collection[Group] = ()) -> tuple[Group, ...]:
        """Groups that cannot all hold, as the solver's own proof names them; not yet the smallest such set.

        Parameters
        ----------
        freed : collection of tuple
            Groups whose rows do not count.

        Returns
        -------
        tuple of Group
            Empty when a plan is possible.
        """
        proto = self._proto((), (), freed)
        first = len(self._points)
        place = {group: first + number for number, group in enumerate(self.groups)}
        for _ in self.groups:
            proto.variables.add().domain.extend([0, 1])
        for group, numbers in self._rows_of.items():
            for number in numbers:
                proto.constraints[number].enforcement_literal.append(place[group])
        proto.assumptions.extend(list(place.values()))
        response = self._solved(proto)
        if int(response.status) != _INFEASIBLE:
            return ()
        named = set(response.sufficient_assumptions_for_infeasibility)
        found = tuple(group for group, literal in place.items() if literal in named)
        return found or tuple(group for group in self.groups if group not in freed)

    def _proto(self, forbid: Collection[int], demand: Sequence[Sequence[int]], freed: Collection[Group]) -> Any:
        proto = _copy(self._written)
        for number in forbid:
            domain = proto.variables[number].domain
            domain[0] = domain[1] = 0
        for group in freed:
            for number in self._rows_of.get(group, ()):
                domain = proto.constraints[number].linear.domain
                domain[0] = -_FAR
                if group[0] != "do":  # an action freed is not done, or once; never twice
                    domain[1] = _FAR
        for columns in demand:
            _add_row(proto, columns, [1] * len(columns), 1, _FAR)
        return proto

    @cached_property
    def _written(self) -> Any:
        """Columns and rows in the solver's exchange format, written once."""
        return written(self.model)

    def _solved(self, proto: Any) -> Any:
        self.runs += 1
        return run(proto, self.limit)

    def _obvious_bound(self, freed: Collection[Group]) -> float:
        """Every action in its dearest way: all else only costs."""
        most = {action: 0 if ("do", action) in freed else -_FAR for action in self.question.actions}
        for way, points in zip(self.question.ways, self._points, strict=False):
            most[way.action] = max(most[way.action], points)
        return sum(most.values()) / _SCALE

    def _answer(self, response: Any, freed: Collection[Group] = ()) -> Answer:
        status = int(response.status)
        effort = round(float(response.deterministic_time), 9)  # summed in no fixed order: the last digits vary
        nothing = np.zeros(0, dtype=np.int64)
        if status == _INFEASIBLE:
            return Answer(False, math.nan, math.nan, True, nothing, effort)
        if status not in (_OPTIMAL, _FEASIBLE):  # cut short before there was a plan the solver may name no bound
            return Answer(None, math.nan, self._obvious_bound(freed), False, nothing, effort)
        # what goes to ties is less than a step
        bound = math.ceil(round(response.best_objective_bound) / self._step) / _SCALE
        values = np.array(list(response.solution), dtype=np.int64)[: len(self._points)]
        points = sum(worth * int(value) for worth, value in zip(self._points, values, strict=True) if value) / _SCALE
        proven = status == _OPTIMAL or points >= bound  # cut short among plans that are worth the same
        return Answer(True, points, points if proven else bound, proven, values, effort)


def written(model: IntegerModel) -> Any:
    """Columns and rows in the solver's exchange format, without what they are worth."""
    from ortools.sat.python import cp_model_helper as cp_sat

    proto = cp_sat.CpModelProto()
    for upper in model.upper:
        proto.variables.add().domain.extend([0, round(upper)])
    for row in model.rows:
        _add_row(proto, row.columns, *_whole_row(row))
    return proto


def run(proto: Any, limit: float) -> Any:
    """The solver's response.

    Parameters
    ----------
    proto : CpModelProto
    limit : float
        Deterministic time.
    """
    from ortools.sat.python import cp_model_helper as cp_sat

    parameters = cp_sat.SatParameters()
    parameters.num_workers = 1
    parameters.random_seed = 0
    parameters.max_deterministic_time = limit
    # measured on nasty questions (benchmarks/allocation.py): trying out each way once before the search shortens the
    # longest proofs, cuts and the search for symmetries cost more than they save
    parameters.linearization_level = 2
    parameters.cp_model_probing_level = 2
    parameters.max_presolve_iterations = 1
    parameters.cut_level = 0
    parameters.symmetry_level = 0
    solve: Any = cp_sat.SolveWrapper()
    solve.set_parameters(parameters)
    return solve.solve(proto)


def later_ways(question: Question) -> list[int]:
    """What each way is worth less than the first of its action, so that ties go to what the files name first: more for
    the actions named first, so that two of them do not change places for nothing. All together it stays below the number of
    actions times the number of ways.
    """
    weight = {action: len(question.actions) - number for number, action in enumerate(question.actions)}
    before: dict[str, int] = {}
    out = []
    for way in question.ways:
        out.append(before.get(way.action, 0) * weight[way.action])
        before[way.action] = before.get(way.action, 0) + 1
    return out


def _copy(proto: Any) -> Any:
    new = type(proto)()
    new.copy_from(proto)
    return new


def _add_row(proto: Any, columns: Sequence[int], values: Sequence[int], low: int, high: int) -> None:
    linear = proto.constraints.add().linear
    linear.vars.extend(columns)
    linear.coeffs.extend(values)
    linear.domain.extend([low, high])


def _whole_row(row: ConstraintRow) -> tuple[list[int], int, int]:
    """A row in whole numbers: as it is when it counts, in thousandths when it measures."""
    measured = any(value % 1 for value in (*row.values, row.low, row.high) if math.isfinite(value))
    scale = _SCALE if measured else 1
    low = -_FAR if row.low == -math.inf else math.ceil(row.low * scale - 1e-6)
    high = _FAR if row.high == math.inf else math.floor(row.high * scale + 1e-6)
    return [round(value * scale) for value in row.values], low, high
