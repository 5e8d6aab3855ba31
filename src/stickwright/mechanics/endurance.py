"""How long this player can hold: their own measured hold first, a published curve only without one.

The curves stand in `effort_curves`; they are offered here as well, under the name of the matter.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from stickwright.codes.estimate import Estimate
from stickwright.codes.holds import Holds, Joint
from stickwright.codes.message import message
from stickwright.codes.stick_problems import StickProblems
from stickwright.errors import BadInput, Problem
from stickwright.mechanics.effort_curves import (
    ENDURANCE_MODELS,
    JOINT_OF_PART,
    JOINTS,
    EnduranceSpread,
    acceptable_duty,
    acceptable_effort,
    domain_note,
    endurance_s,
    endurance_spread,
    rest_allowance,
)

__all__ = [
    "ENDURANCE_MODELS", "JOINTS", "JOINT_OF_PART", "EnduranceSpread", "acceptable_duty",
    "acceptable_effort", "domain_note", "endurance_s", "endurance_spread", "hold_estimate", "rest_allowance",
]  # fmt: skip

_SAME_EFFORT = 0.02  # efforts nearer than this, as a ratio, are the same hold


def hold_estimate(
    effort_share: float, joint: Joint | None, measured: tuple[float, float | Sequence[float]] | None = None
) -> Estimate:
    """How long a push can be held, and what that rests on.

    Parameters
    ----------
    effort_share : float
        Share of the maximal force, more than 0 and up to 1.
    joint : str or None
        Joint whose curve stands for the part (see `JOINT_OF_PART`), None when there is no curve.
    measured : (float, float or sequence of float), optional
        The player's own hold: effort as the same kind of share, and duration, s, with its repeats.

    Returns
    -------
    Estimate
        Time, s. The player's own time at the measured effort; at another effort that time times the
        ratio of the curve at the two, marked assumed, with the spread of that ratio between
        published models; without a measured hold the curve, marked assumed, with the spread between
        models. ``level`` is NaN where the interval is such a spread: it has no coverage. NaN value
        where nothing can be said, and `why` says why.

    Raises
    ------
    BadInput
        Effort of 0 or less or above 1 (a percentage); a duration of 0 or less; unknown joint.

    Notes
    -----
    Curve: [frey-law-avin-2010]. Interval of repeated holds: Student's t on the logarithm. Where no
    curve exists the measured time counts at that effort and, as the least to expect, below it.

    Examples
    --------
    >>> own = hold_estimate(0.25, "hand", measured=(0.25, 25.0))
    >>> own.value, own.assumed is None
    (25.0, True)
    >>> round(hold_estimate(0.5, "hand", measured=(0.25, 25.0)).value, 1)
    8.2
    >>> hold_estimate(0.5, None).why.text
    'no_curve'
    """
    endurance_s(effort_share)  # refuses a percentage in the same words
    own = None if measured is None else _own_hold(measured[1])
    if measured is None or own is None:
        return _by_curve(effort_share, joint)
    measured_effort = float(measured[0])
    endurance_s(measured_effort)
    if abs(math.log(effort_share / measured_effort)) < _SAME_EFFORT:
        return own
    if joint is None:
        return _without_curve(effort_share, measured_effort, own)
    return _scaled(effort_share, measured_effort, own, joint)


def _own_hold(durations_s: float | Sequence[float]) -> Estimate | None:
    times = np.atleast_1d(np.asarray(durations_s, dtype=np.float64))
    if times.size == 0:
        return None
    if not (np.isfinite(times) & (times > 0)).all():
        first = float(times[~(np.isfinite(times) & (times > 0))][0])
        raise BadInput(
            Problem(
                ("hold", "duration_s"),
                f"{first:.4g} s",
                message(StickProblems.expected, what="above_0_s"),
                message(StickProblems.remedy, what="no_hold"),
            )
        )
    n, first = len(times), float(times[0])
    if n == 1:
        return Estimate.unbounded(first, message(Holds.one_hold), n=1)
    if float(np.ptp(times)) == 0:
        return Estimate.unbounded(first, message(Holds.same_holds), n=n)
    logs = np.log(times)
    value = float(np.exp(logs.mean()))
    from scipy.special import stdtrit

    half = float(stdtrit(n - 1, 0.975)) * float(logs.std(ddof=1)) / math.sqrt(n)
    return Estimate(value, value * math.exp(-half), value * math.exp(half), 0.95, n)


def _by_curve(effort_share: float, joint: Joint | None) -> Estimate:
    if joint is None:
        return Estimate.missing(message(Holds.no_curve), n=0)
    spread = endurance_spread(effort_share, joint)
    assumed = message(Holds.by_curve, joint=joint, models=len(spread.models), note=domain_note(effort_share))
    value = endurance_s(effort_share, joint=joint)
    return Estimate(value, float(spread.low_s), float(spread.high_s), math.nan, 0, assumed)


def _without_curve(effort_share: float, measured_effort: float, own: Estimate) -> Estimate:
    if effort_share > measured_effort:
        why = message(Holds.harder_than_measured, measured_share=measured_effort, effort_share=effort_share)
        return Estimate.missing(why, n=own.n)
    assumed = message(Holds.at_least, measured_share=measured_effort)
    return Estimate(value=own.value, low=own.low, high=own.high, level=own.level, n=own.n, assumed=assumed, why=own.why)


def _scaled(effort_share: float, measured_effort: float, own: Estimate, joint: Joint) -> Estimate:
    """The measured time carried to another effort along the curve."""

    def ratio(model: str) -> float:
        there, here = (endurance_s(effort, model, joint) for effort in (effort_share, measured_effort))
        return there / here if here > 0 and math.isfinite(there) and math.isfinite(here) else math.nan

    factor = ratio("frey-law-avin")
    ratios = [found for model in endurance_spread(effort_share, joint).models if not math.isnan(found := ratio(model))]
    assumed = message(Holds.carried, measured_share=measured_effort, effort_share=effort_share, joint=joint)
    low, high = (own.lower, own.upper) if own.has_interval else (own.number, own.number)
    return Estimate(own.number * factor, low * min(ratios), high * max(ratios), math.nan, own.n, assumed)
