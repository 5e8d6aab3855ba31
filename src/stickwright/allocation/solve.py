"""The integer model solved with HiGHS [highs]: proven best, or the best found with the bound that no plan can pass.

Most ways are far from any good plan, and the relaxation without whole numbers tells which: a column whose reduced cost
is larger than the gap between the relaxation and a plan in hand is in no better plan. So a small model of the promising
columns is solved first; when the gap it leaves is smaller than what every other column would lose, its answer is proven
for the whole model, otherwise the columns that could still matter are added and it is solved again.

One thread, a fixed seed and a limit on the number of branches instead of a clock: the same question gives the same
answer each time. Ties go to the ways named first in the files: each way is worth a little less than the one before,
all together less than the smallest difference in points.
"""

from __future__ import annotations

import math
import os
import sys
from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stickwright.allocation.integer_model import Group, IntegerModel, integer_model
from stickwright.allocation.problem import Question

__all__ = ["BRANCHES", "SMALLEST_POINTS", "Answer", "Solver"]

BRANCHES = 20_000
"""Branches looked at in one run before the best found is given with its bound."""
SMALLEST_POINTS = 1e-3
"""Points are counted in thousandths (`stickwright.allocation.problem.rounded`)."""
_PROMISING = 1.0
"""Reduced cost, in points, up to which a column is in the first small model."""
_TOLERANCE = 1e-6
_TIE_POINTS = 4e-4

Ints = NDArray[np.int32]
Array = NDArray[np.float64]


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
    branches : int
    """

    possible: bool | None
    points: float
    bound: float
    proven: bool
    values: NDArray[np.int64]
    branches: int

    def chosen(self, question: Question) -> dict[str, int]:
        """For each action, the way taken."""
        return {
            way.action: number for number, way in enumerate(question.ways) if len(self.values) and self.values[number]
        }


_NOTHING = np.zeros(0, dtype=np.int64)


@contextmanager
def _quiet() -> Iterator[None]:
    """The solver greets on the process's own standard output when it is first made; nobody asked for that."""
    try:
        kept = os.dup(1)
    except OSError:  # no standard output at all: nothing to keep quiet
        yield
        return
    sys.stdout.flush()
    try:
        with open(os.devnull, "wb") as nowhere:
            os.dup2(nowhere.fileno(), 1)
        yield
    finally:
        os.dup2(kept, 1)
        os.close(kept)


_greeted = False


def _highs(branches: int) -> Any:
    global _greeted
    import highspy

    if _greeted:
        highs = highspy.Highs()
    else:
        with _quiet():
            highs = highspy.Highs()
            highs.setOptionValue("threads", 1)
            highs.run()
        _greeted = True
    for option, value in (
        ("output_flag", False), ("threads", 1), ("random_seed", 0), ("mip_rel_gap", 0.0),
        ("mip_abs_gap", 1e-8), ("mip_max_nodes", branches),
    ):  # fmt: skip
        highs.setOptionValue(option, value)
    return highs


@dataclass(frozen=True, eq=False)
class _Matrix:
    """Rows in compressed form, and how to take some columns of them."""

    start: Ints
    column: Ints
    value: Array
    low: Array
    high: Array

    @classmethod
    def of(cls, model: IntegerModel) -> _Matrix:
        start = np.concatenate([[0], np.cumsum([len(row.columns) for row in model.rows])]).astype(np.int32)
        return cls(
            start,
            np.array([c for row in model.rows for c in row.columns], dtype=np.int32),
            np.array([v for row in model.rows for v in row.values], dtype=float),
            np.array([row.low for row in model.rows]),
            np.array([row.high for row in model.rows]),
        )

    def with_rows(self, rows: Sequence[tuple[Ints, Array, float, float]]) -> _Matrix:
        if not rows:
            return self
        sizes = np.cumsum([len(columns) for columns, *_ in rows])
        return _Matrix(
            np.concatenate([self.start, self.start[-1] + sizes]).astype(np.int32),
            np.concatenate([self.column, *(columns for columns, *_ in rows)]).astype(np.int32),
            np.concatenate([self.value, *(values for _, values, *_ in rows)]),
            np.append(self.low, [low for *_, low, _ in rows]),
            np.append(self.high, [high for *_, high in rows]),
        )

    def take(self, kept: NDArray[np.bool_]) -> _Matrix:
        """Only the kept columns, numbered anew; every row stays."""
        entries = kept[self.column]
        place = np.cumsum(kept).astype(np.int32) - 1
        count = np.add.reduceat(entries, self.start[:-1]) if len(entries) else np.zeros(len(self.low))
        count = np.where(np.diff(self.start) > 0, count, 0)
        start = np.concatenate([[0], np.cumsum(count)]).astype(np.int32)
        return replace(self, start=start, column=place[self.column[entries]], value=self.value[entries])


def _lp(points: Array, upper: Array, matrix: _Matrix, *, whole: bool) -> Any:
    import highspy

    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(points), len(matrix.low)
    lp.sense_ = highspy.ObjSense.kMaximize
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = points, np.zeros(len(points)), upper
    lp.row_lower_, lp.row_upper_ = matrix.low, matrix.high
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_, lp.a_matrix_.index_, lp.a_matrix_.value_ = matrix.start, matrix.column, matrix.value
    if whole:
        lp.integrality_ = [highspy.HighsVarType.kInteger] * len(points)
    return lp


class Solver:
    """One question, built once and asked as often as needed, each time with a few columns or rows changed.

    Parameters
    ----------
    question : Question
    branches : int, default 20,000
        Limit for each run.
    """

    def __init__(self, question: Question, *, branches: int = BRANCHES) -> None:
        self.question = question
        self.model: IntegerModel = integer_model(question)
        self.branches = branches
        self.runs = 0
        self._points = np.array(self.model.points, dtype=float)
        # too little to turn any difference in points, enough to settle a tie for what the files name first
        ways = len(question.ways)
        self._sought = self._points.copy()
        self._sought[:ways] -= _TIE_POINTS / max(1, len(question.actions)) * np.arange(ways) / max(1, ways)
        self._upper = np.array(self.model.upper, dtype=float)
        self._matrix = _Matrix.of(self.model)

    def best(
        self,
        *,
        forbid: Collection[int] = (),
        demand: Sequence[Sequence[int]] = (),
        freed: Mapping[Group, bool] | None = None,
    ) -> Answer:
        """The best plan.

        Parameters
        ----------
        forbid : collection of int
            Columns (ways first) that must stay 0.
        demand : sequence of sequence of int
            Of each of these at least one column must be 1.
        freed : mapping, optional
            Groups whose rows do not count.

        Returns
        -------
        Answer
        """
        allowed = np.ones(len(self._points), dtype=bool)
        allowed[sorted(forbid)] = False
        rows = [(np.array(one, dtype=np.int32), np.ones(len(one)), 1.0, math.inf) for one in demand]
        matrix = self._matrix
        if freed:
            loose = np.array([bool(freed.get(row.group)) for row in self.model.rows])
            matrix = replace(
                matrix, low=np.where(loose, -math.inf, matrix.low), high=np.where(loose, math.inf, matrix.high)
            )
        matrix = matrix.with_rows(rows)
        return self._searched(matrix, allowed)

    def _searched(self, matrix: _Matrix, allowed: NDArray[np.bool_]) -> Answer:
        import highspy

        relaxed = _highs(self.branches)
        relaxed.passModel(_lp(self._sought, np.where(allowed, self._upper, 0.0), matrix, whole=False))
        relaxed.run()
        if relaxed.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return Answer(False, math.nan, math.nan, True, _NOTHING, 0)
        top = float(relaxed.getInfo().objective_function_value)
        found = relaxed.getSolution()
        loss = np.maximum(-np.array(found.col_dual), 0.0)  # what taking one of a column at 0 costs at least
        loss[np.array(found.col_value) > _TOLERANCE] = 0.0
        limit = _PROMISING
        while True:
            near = allowed & (loss <= limit)
            answer = self._whole(matrix, near)
            if bool((near == allowed).all()):
                return answer
            if answer.possible is None or (answer.possible and not answer.proven):
                return replace(answer, bound=max(answer.bound, top - limit))
            if answer.possible:
                gap = top - float(self._sought @ answer.values) + _TOLERANCE
                if gap <= limit:
                    return answer
                limit = gap + SMALLEST_POINTS
            else:
                limit = 4 * limit if limit < 16 * _PROMISING else math.inf

    def _whole(self, matrix: _Matrix, near: NDArray[np.bool_]) -> Answer:
        """The model of some columns, solved in whole numbers."""
        import highspy

        highs = _highs(self.branches)
        highs.passModel(_lp(self._sought[near], self._upper[near], matrix.take(near), whole=True))
        highs.run()
        self.runs += 1
        status, info = highs.getModelStatus(), highs.getInfo()
        bound, branches = float(info.mip_dual_bound), max(0, int(info.mip_node_count))
        if status in (highspy.HighsModelStatus.kInfeasible, highspy.HighsModelStatus.kUnboundedOrInfeasible):
            return Answer(False, math.nan, math.nan, True, _NOTHING, branches)
        if info.primal_solution_status != int(highspy.SolutionStatus.kSolutionStatusFeasible):
            return Answer(None, math.nan, bound, False, _NOTHING, branches)
        values = np.zeros(len(self._points), dtype=np.int64)
        values[near] = np.rint(np.array(highs.getSolution().col_value)).astype(np.int64)
        reached = float(self._points @ values)
        proven = status == highspy.HighsModelStatus.kOptimal
        return Answer(True, reached, reached if proven else bound, proven, values, branches)
