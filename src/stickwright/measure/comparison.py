"""The same task twice, before and after something was changed: what the difference is, and what it may not be taken for.

Rules of this file. A difference carries its interval. One block of each cannot tell the change from practice or tiredness,
and it says so. How late the movement is stands beside how far off it is: a filter that calms a trace by making it late is no
gain. What the player says counts more than any of it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright.codes.capture_problems import CaptureProblems
from stickwright.codes.comparisons import Comparisons, Judgement
from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import LiveFigures
from stickwright.codes.message import Message, Name, message
from stickwright.errors import BadInput, Problem
from stickwright.measure.lines import Line, Progress
from stickwright.measure.steps import Task

__all__ = ["Comparison", "Difference", "comparison", "difference"]


@dataclass(frozen=True)
class Difference:
    """One figure, before and after.

    Parameters
    ----------
    label : Message
        What it is.
    before, after : Line
        Each with its interval.
    difference : Estimate
        After minus before.
    verdict : {"better", "worse", "changed", "no-difference", "not-known"}
        'Changed' where neither way is better.
    words : Message
        In one sentence.
    """

    label: Message
    before: Line
    after: Line
    difference: Estimate
    verdict: Judgement
    words: Message


@dataclass(frozen=True)
class Comparison:
    """All that two runs of one task tell of each other.

    Parameters
    ----------
    differences : tuple of Difference
        By figure.
    sentence : Message
        The whole, in two or three sentences, ending with the player's word.
    cautions : tuple of Message
        What the difference may not be taken for.
    """

    differences: tuple[Difference, ...]
    sentence: Message
    cautions: tuple[Message, ...]


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
        run: Literal["before", "after"] = "after" if before.has_interval else "before"
        why = (after if before.has_interval else before).why or message(LiveFigures.reason, reason="too-little")
        return Estimate.unbounded(value, message(Comparisons.no_interval, run=run, why=why), n=n)
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
        cautions.append(message(Comparisons.one_block))
    few = [each.verdict in ("nothing-yet", "not-enough") for each in (before, after)]
    if any(few):
        runs: Literal["before", "after", "both"] = "both" if all(few) else "before" if few[0] else "after"
        cautions.append(message(Comparisons.too_little, runs=runs))
    sure = sum(each.verdict in ("better", "worse") for each in found)
    looked = sum(each.difference.has_interval for each in found)
    if looked > 3 and sure:
        cautions.append(message(Comparisons.by_chance, figures=looked))
    deciding = tuple(each.words for each in found if each.verdict in ("better", "worse"))
    return Comparison(found, message(Comparisons.whole, told=deciding), tuple(cautions))


def _refuse_unlike(before: Task, after: Task) -> None:
    settings = [{k: v for k, v in task.asked.items() if k != "seed"} for task in (before, after)]
    unlike = sorted(k for k in {*settings[0], *settings[1]} if settings[0].get(k) != settings[1].get(k))
    if unlike:
        raise BadInput(
            [
                Problem(
                    ("comparison", name.removesuffix("_s").replace("_", " ")),
                    message(CaptureProblems.after, setting=_typed(settings[1].get(name))),
                    message(CaptureProblems.as_before, setting=_typed(settings[0].get(name))),
                    message(CaptureProblems.remedy, what="same_twice"),
                )
                for name in unlike
            ]
        )


def _mixed(order: Sequence[str]) -> bool:
    """Whether both come twice or more, and neither always first."""
    first = [k for k, each in enumerate(order) if each == "before"]
    second = [k for k, each in enumerate(order) if each == "after"]
    return len(first) >= 2 and len(second) >= 2 and not (max(first) < min(second) or max(second) < min(first))


def _judged(before: Line, after: Line) -> Difference:
    apart = difference(before.estimate, after.estimate)
    judgement: Judgement
    if apart.value is None:
        judgement = "not-known"
    elif not apart.has_interval or apart.lower <= 0 <= apart.upper:
        judgement = "no-difference"
    elif not before.better:
        judgement = "changed"
    else:
        judgement = "better" if (apart.value > 0) == (before.better == "more") else "worse"
    said = None if judgement == "not-known" else message(LiveFigures.figure, value=apart, unit=before.unit)
    words = message(
        Comparisons.judged, judgement=judgement, label=before.label, before=before.words, after=after.words, difference=said
    )  # fmt: skip
    return Difference(before.label, before, after, apart, judgement, words)


def _typed(setting: object) -> Name | None:
    return None if setting is None else Name(str(setting))
