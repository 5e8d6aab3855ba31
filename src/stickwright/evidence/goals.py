"""The player's own goals: levels worded before, one figure after."""

from __future__ import annotations

import math
from collections.abc import Sequence

from stickwright.codes.evidence import Evidence
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem

__all__ = ["EXPECTED", "LEVELS", "goal_score"]

LEVELS = (-2, -1, 0, 1, 2)
"""Much less than expected, less, as expected, more, much more."""
EXPECTED = 50.0
"""The score when every goal comes out as expected."""
ALIKE = 0.3
"""How alike goals of one person come out, as correlation [kiresuk-sherman-1968]."""


def goal_score(reached: Sequence[int], weights: Sequence[float] | None = None, *, alike: float = ALIKE) -> float:
    """Goal attainment as a T score: 50 where all came out as expected, 10 for one standard deviation.

    Parameters
    ----------
    reached : sequence of int
        Level of each goal, -2 to 2.
    weights : sequence of float, optional
        What each counts to the player, above zero; alike when left out. Only their ratios matter.
    alike : float, default 0.3
        Correlation between goals.

    Raises
    ------
    BadInput
        No goal, a level that is none, or a weight that is not above zero.

    Notes
    -----
    [kiresuk-sherman-1968]. A start is usually at -1 or -2 and not at 0: show the change as well as the score.

    Examples
    --------
    >>> round(goal_score([1, 0, -1, 2], [3, 2, 1, 4]), 6), goal_score([0, 0])
    (64.002801, 50.0)
    """
    count = [1.0] * len(reached) if weights is None else list(weights)
    if not reached or len(count) != len(reached):
        raise BadInput([Problem(message(Evidence.goals), message(Evidence.goals_weights, goals=len(reached), weights=len(count)),
                                message(Evidence.a_weight_each))])  # fmt: skip
    for level in reached:
        if level not in LEVELS:
            raise BadInput([Problem(message(Evidence.goals), str(level), message(Evidence.levels))])
    for weight in count:
        if not (math.isfinite(weight) and weight > 0):
            raise BadInput([Problem(message(Evidence.goals), f"{weight:g}", message(Evidence.weight_above_0))])
    total = sum(weight * level for weight, level in zip(count, reached, strict=True))
    spread = (1 - alike) * sum(weight**2 for weight in count) + alike * sum(count) ** 2
    return EXPECTED + 10 * total / math.sqrt(spread)
