"""What a task tells while the player is still there: a few lines, and whether that is enough.

Words, not traffic lights: 'enough', 'nearly', 'not enough', with what to ask for more of and why. Every figure comes through
`stickwright.trace`, none of whose parts needs compiling; the first answer of a session waits for libraries to load unless
`warm_up` was called before.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.live_figures import LiveFigures
from stickwright.codes.message import Message, message
from stickwright.errors import BadInput
from stickwright.measure.lines import Line, More, Progress, more_of, no_lines
from stickwright.measure.live_metrics import (
    aim_lines,
    follow_lines,
    hold_lines,
    play_lines,
    push_lines,
    rest_lines,
    rim_lines,
)
from stickwright.measure.live_warnings import live_warnings
from stickwright.measure.presses import press_lines
from stickwright.measure.steps import RECORDED_COLUMNS, Task, cue_code, trace_words
from stickwright.measure.targets import cursor_path
from stickwright.model.recording import Recording
from stickwright.trace.recording import Cleaned, cleaned

__all__ = ["Line", "More", "Progress", "progress", "recording_of_rows", "verdict", "warm_up"]

Array = NDArray[np.float64]
NEARLY = 1.5
"""Intervals up to so much wider than wanted are 'nearly'. (Judgement.)"""

MOST_NAMED = 3
"""So many things to ask for at once: a player has twenty good minutes. (Common practice.)"""

Told = Literal["not-enough", "nearly", "enough"]

_LINES: dict[str, Callable[[Task, Cleaned], tuple[Line, ...]]] = {
    "rest": rest_lines, "rim": rim_lines, "push": push_lines, "follow": follow_lines, "hold": hold_lines,
}  # fmt: skip


_CONFIRM = RECORDED_COLUMNS.index("confirm")


def recording_of_rows(rows: Array, task: Task, *, name: str = "live") -> Recording:
    """Kept samples of one task as a recording for `stickwright.trace`.

    Parameters
    ----------
    rows : array, shape (n, 11)
        Columns `RECORDED_COLUMNS`.
    task : Task
        That was run.
    name : str, default 'live'
        For sentences.

    Returns
    -------
    Recording
        Where the stick was the cursor's speed, `xy` is the cursor while a target was asked: then it is the cursor that was
        aimed, and its cue is 'aim' or 'follow' again.

    Examples
    --------
    >>> from stickwright.measure.steps import cue_code
    >>> from stickwright.measure.tasks import play_task
    >>> rows = np.full((3, 11), np.nan)
    >>> rows[:, 0], rows[:, 1:3], rows[:, 6] = [0.0, 0.1, 0.2], 0.5, cue_code("play")
    >>> recording_of_rows(rows, play_task()).cue.tolist()
    ['play', 'play', 'play']
    """
    widths = rows[:, 5][np.isfinite(rows[:, 5])]
    xy, cue = rows[:, 1:3], trace_words(rows[:, 6])
    aimed = np.isfinite(rows[:, 3]) & (rows[:, 6] == cue_code("play"))
    if task.cursor.mapping == "velocity" and aimed.any():
        xy = cursor_path(rows[:, 0], rows[:, 1:3], task.cursor)
        cue = np.where(aimed, task.name, cue)
    word = task.name if task.name != "press" else ""
    width = float(widths[0]) if widths.size else None
    pressed = rows[:, _CONFIRM] > 0
    return Recording(
        name=name,
        times_s=rows[:, 0],
        xy=xy,
        cue=cue,
        cue_xy=rows[:, 3:5],
        cue_width=width,
        task=word,
        selected=pressed if pressed.any() else None,
    )


def progress(task: Task, rows: Array, *, ahead: Sequence[int] = (), shown_xy: Array | None = None) -> Progress:
    """Lines, verdict and doubts from the samples so far.

    Parameters
    ----------
    task : Task
        That runs, or ran.
    rows : array, shape (n, 11)
        Columns `RECORDED_COLUMNS`, all that was kept of it.
    ahead : sequence of int
        Steps still to come (`State.queue`): while there are some, nothing more is asked for.
    shown_xy : array, shape (n, 2), or None
        Where a tuning put the stick on the screen, one place for each row: then the figures are of that.

    Returns
    -------
    Progress
        Never an exception for what was recorded: what cannot be told is said.

    Notes
    -----
    'Enough' when every interval is at most as wide as wanted, 'nearly' up to half as much again. More of the same brings the
    half-width w' down to w with n (w'/w)^2 in all, as t s/sqrt(n) says; at most three are asked for at once.
    """
    if rows.ndim != 2 or rows.shape[1] != len(RECORDED_COLUMNS) or len(rows) < 2:
        return no_lines(message(LiveFigures.nothing_recorded, task=task.title))
    doubts = live_warnings(task, rows, None)
    told = rows
    if shown_xy is not None:
        told = rows.copy()
        told[:, 1:3] = shown_xy
    try:
        if task.name == "press":
            lines = press_lines(task, rows)
        else:
            recording = recording_of_rows(told, task)
            clean, noticed = cleaned(recording)
            if shown_xy is not None:  # a tuning has a dead zone and limits of its own
                noticed = tuple(each for each in noticed if each.about not in ("dead_zone", "rest_cleaned", "clipping"))
            lines = _lines(task, clean, recording.cue_width)
            doubts = live_warnings(task, rows, (clean, noticed))
    except BadInput as problem:
        return no_lines(" ".join(str(each) for each in problem.problems), doubts)
    if not lines:
        return no_lines(message(LiveFigures.nothing_told, task=task.title), doubts)
    word, sentence, more = verdict(lines)
    if ahead:
        so_far = message(LiveFigures.so_far, verdict=word, steps=len(ahead))
        return Progress(word, so_far, lines, (), doubts)
    return Progress(word, sentence, lines, more, doubts)


def _lines(task: Task, clean: Cleaned, cue_width: float | None) -> tuple[Line, ...]:
    if task.name == "aim":
        return aim_lines(task, clean, cue_width)
    if task.name == "play":
        return play_lines(clean)
    return _LINES[task.name](task, clean)


def verdict(lines: Sequence[Line]) -> tuple[Told, Message, tuple[More, ...]]:
    """Whether lines are known well enough, in a sentence, and what to ask for.

    Parameters
    ----------
    lines : sequence of Line
        Those without a wanted width decide nothing.

    Examples
    --------
    >>> from stickwright.codes.estimate import Estimate
    >>> reach = message(LiveFigures.reach, way="left")
    >>> word, sentence, more = verdict([Line(reach, Estimate(0.6, 0.4, 0.8, n=3), 0.1, "push", "left", (4,))])
    >>> word, sentence.text, more
    ('not-enough', 'not_enough', (More(what='push', count=3, way='left', steps=(4, 4, 4)),))
    """
    asked = [line for line in lines if line.decides]
    if not asked:
        return "enough", message(LiveFigures.seen), ()
    open_lines = sorted((line for line in asked if not line.enough), key=lambda line: -line.excess)
    if not open_lines:
        widest = max(asked, key=lambda line: line.excess)
        known = message(LiveFigures.enough, label=widest.label, value=widest.words, wanted=widest.wanted_words)
        return "enough", known, ()
    more = tuple(dict.fromkeys(more_of(line) for line in open_lines[:MOST_NAMED]))
    first = open_lines[0]
    nearly = first.excess <= NEARLY
    sentence = message(
        LiveFigures.not_enough, nearly=nearly, more=tuple(each.text for each in more), label=first.label,
        value=first.words, wanted=first.wanted_words,
    )  # fmt: skip
    return "nearly" if nearly else "not-enough", sentence, more


def warm_up() -> None:
    """Load what the first answer needs (scipy's distributions and filters), so that no player waits for it."""
    import scipy.signal
    import scipy.stats

    assert scipy.stats.t.ppf(0.975, 5) > 0
    assert scipy.signal.correlate([1.0], [1.0]) is not None
