"""What a task tells while the player is still there: a few lines, and whether that is enough.

Words, not traffic lights: 'enough', 'nearly', 'not enough', with what to ask for more of. All through `stickwright.trace`,
without the filters' compiled parts, so that the first answer is as quick as the next.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.capture.tasks import Task, trace_words
from stickwright.model.estimate import Estimate
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording

__all__ = ["Line", "More", "Progress", "progress", "recording_of_rows"]

Array = NDArray[np.float64]
Verdict = Literal["nothing yet", "not enough", "nearly", "enough"]


@dataclass(frozen=True)
class Line:
    """One figure with its interval.

    Parameters
    ----------
    label : str
        What it is: 'reach forward-left'.
    words : str
        The figure and its interval in words.
    estimate : Estimate
    """

    label: str
    words: str
    estimate: Estimate


@dataclass(frozen=True)
class More:
    """What to ask for once more.

    Parameters
    ----------
    words : str
        'three more at back-left'.
    count : int
    steps : tuple of int
        Steps of the task to hand to `task.Repeat`; empty for the whole task.
    """

    words: str
    count: int
    steps: tuple[int, ...] = ()


@dataclass(frozen=True)
class Progress:
    """What is known so far.

    Parameters
    ----------
    verdict : {"nothing yet", "not enough", "nearly", "enough"}
    sentence : str
        The verdict with its reason and what to do.
    lines : tuple of Line
    more : tuple of More
    doubts : tuple of Finding
        What looks wrong and can be put right now.
    """

    verdict: Verdict
    sentence: str
    lines: tuple[Line, ...] = ()
    more: tuple[More, ...] = ()
    doubts: tuple[Finding, ...] = ()


def recording_of_rows(rows: Array, task: Task, *, name: str = "live") -> Recording:
    """Kept samples of one task as a recording for `stickwright.trace`.

    Parameters
    ----------
    rows : array, shape (n, 11)
        Columns `RECORDED_COLUMNS`.
    task : Task
    name : str, default 'live'
    """
    widths = rows[:, 5][np.isfinite(rows[:, 5])]
    return Recording(
        name, rows[:, 0], rows[:, 1:3], trace_words(rows[:, 6]), rows[:, 3:5], float(widths[0]) if widths.size else None,
        task.name if task.name != "press" else "",
    )  # fmt: skip


def progress(task: Task, rows: Array) -> Progress:
    """Lines, verdict and doubts from the samples so far.

    Parameters
    ----------
    task : Task
    rows : array, shape (n, 11)
        Columns `RECORDED_COLUMNS`.
    """
    if len(rows) < 2 or not math.isfinite(float(rows[-1, 0])):
        return Progress("nothing yet", f"{task.title}: nothing has been recorded yet.")
    return Progress("nothing yet", f"{float(rows[-1, 0] - rows[0, 0]):.0f} s recorded.")
