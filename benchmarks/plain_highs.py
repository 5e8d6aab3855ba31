"""The same rows solved by HiGHS [highs]: the peer that the solver is held against."""

from __future__ import annotations

import highspy
import numpy as np

from stickwright.allocation.integer_model import IntegerModel

__all__ = ["highs_best"]


def highs_best(model: IntegerModel, *, limit_s: float = 60.0) -> float | None:
    """Points of the best plan; None when no plan meets all rows.

    Parameters
    ----------
    model : IntegerModel
    limit_s : float
        After so much time it gives up with an error.
    """
    columns = len(model.points)
    program = highspy.HighsLp()
    program.num_col_, program.num_row_ = columns, len(model.rows)
    program.col_cost_ = np.array(model.points)
    program.col_lower_, program.col_upper_ = np.zeros(columns), np.array(model.upper)
    program.integrality_ = [highspy.HighsVarType.kInteger] * columns
    program.sense_ = highspy.ObjSense.kMaximize
    program.row_lower_ = np.array([row.low for row in model.rows])
    program.row_upper_ = np.array([row.high for row in model.rows])
    program.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    program.a_matrix_.start_ = np.cumsum([0, *(len(row.columns) for row in model.rows)])
    program.a_matrix_.index_ = np.array([column for row in model.rows for column in row.columns])
    program.a_matrix_.value_ = np.array([value for row in model.rows for value in row.values])
    solver = highspy.Highs()
    for name, value in (
        ("output_flag", False), ("threads", 1), ("mip_rel_gap", 0.0), ("mip_abs_gap", 1e-6), ("random_seed", 0), ("time_limit", limit_s),
    ):  # fmt: skip
        solver.setOptionValue(name, value)
    solver.passModel(program)
    solver.run()
    status = solver.getModelStatus()
    if status == highspy.HighsModelStatus.kOptimal:
        return float(solver.getInfo().objective_function_value)
    if status in (highspy.HighsModelStatus.kInfeasible, highspy.HighsModelStatus.kUnboundedOrInfeasible):
        return None
    raise TimeoutError(f"HiGHS stopped with {status} after {limit_s:g} s")
