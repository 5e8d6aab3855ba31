"""The same task twice, before and after something was changed: what the difference is, and what it may not be taken for.

Rules of this file. A difference carries its interval. One block of each cannot tell the change from practice or tiredness,
and it says so. How late the movement is stands beside how far off it is: a filter that calms a trace by making it late is no
gain. What the player says counts more than any of it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stickwright.capture.lines import Line, Progress, said
from stickwright.capture.steps import Task
from stickwright.errors import BadInput, Problem
from stickwright.model.estimate import Estimate

__all__ = ["Comparison", "Difference", "comparison", "difference"]

PLAYERS_WORD = "Ask the player which they like better: their word counts more than these figures."


@dataclass(frozen=True)
class Difference:
    """One figure, before and after.

    Parameters
    ----------
    label : str
        What it is.
    before, after : Line
        Each with its interval.
    difference : Estimate
        After minus before.
    verdict : {"better", "worse", "changed", "no difference told", "not known"}
        'Changed' where neither way is better.
    words : str
        In one sentence.
    """

    label: str
    before: Line
    after: Line
    difference: Estimate
    verdict: str
    words: str


@dataclass(frozen=True)
class Comparison:
    """All that two runs of one task tell of each other.

    Parameters
    ----------
    differences : tuple of Difference
        By figure.
    sentence : str
        The whole, in two or three sentences, ending with the player's word.
    cautions : tuple of str
        What the difference may not be taken for.
    """

    differences: tuple[Difference, ...]
    sentence: str
    cautions: tuple[str, ...]


def difference(before: Estimate, after: Estimate) -> Estimate:
    """After minus before, with its interval from the two intervals.

    Parameters
    ----------
    before, after : Estimate
        Of separate samples, at the same level.

    Returns
    -------
    Estimate
        No interval where one of them has none.

    Notes
    -----
    Source: [zou-donner-2008], recovery of variances from the limits, which keeps lopsided intervals lopsided. Assumed: the two
    runs are independent of each other.

    Examples
    --------
    >>> difference(Estimate(5.0, 2.0, 8.0, n=9), Estimate(9.0, 5.0, 13.0, n=9))
    Estimate(value=4.0, low=-1.0, high=9.0, level=0.95, n=9, assumed=None, why=None, endless=False)
    """
    value = after.number - before.number
    n = min(before.n, after.n)
    if not (before.has_interval and after.has_interval):
        first, why = next(
            (name, each.why) for name, each in (("before", before), ("after", after)) if not each.has_interval
        )
        return Estimate.unbounded(value, f"{first}: {why or 'too little was recorded'}", n=n)
    down = math.hypot(after.number - after.lower, before.upper - before.number)
    up = math.hypot(after.upper - after.number, before.number - before.lower)
    return Estimate(value, value - down, value + up, before.level, n)


def comparison(
    task_before: Task,
    before: Progress,
    task_after: Task,
    after: Progress,
    *,
    order: Sequence[str] = ("before", "after"),
) -> Comparison:
    """Two runs of the same task, judged fairly.

    Parameters
    ----------
    task_before, task_after : Task
        As they were run: the same but for the seed.
    before, after : Progress
        From `progress`, of what the player saw: with a tuning on, of the tuned stick.
    order : sequence of str
        Blocks as they were run, each 'before' or 'after'; more than one of each in mixed order takes the caution about
        practice away.

    Returns
    -------
    Comparison
        Figures that only one of them has are left out.

    Raises
    ------
    BadInput
        Different tasks or settings: then a difference says nothing about what was changed.
    """
    _refuse_unlike(task_before, task_after)
    later = {line.label: line for line in after.lines}
    found = tuple(
        _judged(line, later[line.label]) for line in before.lines if line.label in later
    )  # fmt: skip
    cautions = []
    if not _mixed(order):
        cautions.append(
            "One block of each, one after the other: practice or tiredness may have made the difference. Run them again in "
            "the other order before deciding."
        )
    few = [
        name for name, each in (("before", before), ("after", after)) if each.verdict in ("nothing yet", "not enough")
    ]
    if few:
        cautions.append(
            f"Too little was recorded {' and '.join(few)}: a difference can be missed, or seen where none is."
        )
    sure = sum(each.verdict in ("better", "worse") for each in found)
    looked = sum(each.difference.has_interval for each in found)
    if looked > 3 and sure:
        cautions.append(f"{looked} figures were compared: one in twenty differs by chance alone.")
    deciding = [each for each in found if each.verdict in ("better", "worse")]
    told = " ".join(each.words for each in deciding) or "No difference can be told."
    return Comparison(found, f"{told} {PLAYERS_WORD}", tuple(cautions))


def _refuse_unlike(before: Task, after: Task) -> None:
    settings = [{k: v for k, v in task.asked.items() if k != "seed"} for task in (before, after)]
    unlike = sorted(k for k in {*settings[0], *settings[1]} if settings[0].get(k) != settings[1].get(k))
    if unlike:
        raise BadInput([
            Problem(
                f"comparison, {name.removesuffix('_s').replace('_', ' ')}", f"{settings[1].get(name, 'nothing')} after",
                f"the same as before, {settings[0].get(name, 'nothing')}", "Run the same task with the same settings twice.",
            )
            for name in unlike
        ])  # fmt: skip


def _mixed(order: Sequence[str]) -> bool:
    """Whether both come twice or more, and neither always first."""
    first = [k for k, each in enumerate(order) if each == "before"]
    second = [k for k, each in enumerate(order) if each == "after"]
    return len(first) >= 2 and len(second) >= 2 and not (max(first) < min(second) or max(second) < min(first))


def _judged(before: Line, after: Line) -> Difference:
    apart = difference(before.estimate, after.estimate)
    moved = f"{before.label} from {before.words} to {after.words}"
    if apart.value is None:
        return Difference(before.label, before, after, apart, "not known", f"Not known: {moved}.")
    if not apart.has_interval or apart.lower <= 0 <= apart.upper:
        words = f"No difference told: {moved}; difference {said(apart, before.unit)}."
        return Difference(before.label, before, after, apart, "no difference told", words)
    if not before.better:
        verdict = "changed"
    else:
        verdict = "better" if (apart.value > 0) == (before.better == "more") else "worse"
    words = f"{verdict.capitalize()}: {moved}; difference {said(apart, before.unit)}."
    return Difference(before.label, before, after, apart, verdict, words)
