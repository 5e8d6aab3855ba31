"""What a guided task is made of: steps, words, and the cue that each sample carries."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.message import Message, message
from stickwright.codes.steps import Steps
from stickwright.codes.tasks import TaskName, Tasks
from stickwright.measure.targets import Cursor, SumOfSines
from stickwright.model.recording import CUE_CODES
from stickwright.trace.sensing import CUES, cue_code

__all__ = [
    "CUE_WORDS",
    "RAW_COLUMNS",
    "RECORDED_COLUMNS",
    "STOP",
    "Practitioner",
    "Task",
    "TaskStep",
    "cue_code",
    "cues_at",
    "trace_words",
    "unknown_cues",
]  # fmt: skip

Array = NDArray[np.float64]

CUE_WORDS = tuple(CUE_CODES)
"""Words that a step can have."""

RAW_COLUMNS = ("time_s", "x", "y", "second_x", "second_y", "confirm", "buttons")
"""One sample as it comes from a device."""

RECORDED_COLUMNS = (
    "time_s", "x", "y", "cue_x", "cue_y", "cue_width", "cue", "second_x", "second_y", "confirm", "buttons"
)  # fmt: skip
"""One sample as it is kept: with what was asked."""

STOP = message(Tasks.stop)
"""Said to the player at every moment."""

LET_GO = message(Steps.let_go)

_WORDS = np.array(CUES).dtype

Ends = Literal["time", "target", "laps", "release"]


@dataclass(frozen=True)
class TaskStep:
    """One thing asked.

    Parameters
    ----------
    word : str
        One of `CUE_WORDS`.
    lasts_s : float
        Longest time; for `ends` 'time' the time.
    words : Message
        Large, for the player, while it is asked.
    x, y : float
        Where the player is asked to be; NaN where no place is asked.
    width : float
        Of an aimed target; NaN otherwise.
    rest_s : float
        Rest before it.
    rest_word : str
        Cue word of that rest: 'rest', or '' where the player is on the way to a start.
    rest_words : Message
        For the player meanwhile.
    ends : {"time", "target", "laps", "release"}
        What ends it before its time: nothing; staying in the target; so many laps; letting go.
    round : int
        Repeats of the whole set count from 1: shortening drops rounds.
    least_s : float
        Shortening lets it run this long.
    counts_presses : bool
        Presses belong to the task: the confirm switch does not end the step.
    key : str
        Name within the task: 'forward', 'clockwise'.
    laps : float
        For `ends` 'laps': plus is anticlockwise.
    beat_s : float
        Time from beat to beat; NaN without a beat.
    """

    word: str
    lasts_s: float
    words: Message
    x: float = math.nan
    y: float = math.nan
    width: float = math.nan
    rest_s: float = 0.0
    rest_word: str = "rest"
    rest_words: Message = LET_GO
    ends: Ends = "time"
    round: int = 1
    least_s: float = 0.0
    counts_presses: bool = False
    key: str = ""
    laps: float = math.nan
    beat_s: float = math.nan

    @property
    def ends_by_confirm(self) -> bool:
        """Whether a switch or key ends it."""
        return not self.counts_presses


@dataclass(frozen=True)
class Practitioner:
    """Words for the practitioner.

    Parameters
    ----------
    purpose : Message
        What it is for.
    watch : Message
        What to look at meanwhile.
    """

    purpose: Message
    watch: Message


@dataclass(frozen=True)
class Task:
    """A guided task, ready to run.

    Parameters
    ----------
    name : TaskName
        One of `TASKS`.
    title : Message
    for_player : Message
        What will happen; ends with the words on stopping.
    for_practitioner : Practitioner
    steps : tuple of TaskStep
    asked : dict
        Settings that make it again with `guided_task`.
    cursor : Cursor
        Where the cursor starts, and how the stick moves it.
    dwell_s : float
        Staying so long in a target chooses it; infinite where only the switch chooses.
    path : SumOfSines or None
        For following.
    """

    name: TaskName
    title: Message
    for_player: Message
    for_practitioner: Practitioner
    steps: tuple[TaskStep, ...]
    asked: dict[str, object] = field(default_factory=dict)
    cursor: Cursor = field(default_factory=Cursor)
    dwell_s: float = 0.5
    path: SumOfSines | None = None

    @property
    def longest_s(self) -> float:
        """Time when every step takes its longest."""
        return sum(step.rest_s + step.lasts_s for step in self.steps)

    @property
    def expected_s(self) -> float:
        """Time as it usually goes: an aimed movement takes a third of its limit, laps half of theirs."""
        usual = {"time": 1.0, "target": 1 / 3, "laps": 0.5, "release": 0.5}
        return sum(step.rest_s + usual[step.ends] * step.lasts_s for step in self.steps)


def trace_words(codes: ArrayLike) -> NDArray[np.str_]:
    """Cue words of a recording as stick traces are read: what is no task of the stick is nothing asked.

    Parameters
    ----------
    codes : array, shape (n,)
        Column `cue` of a recording.

    Returns
    -------
    array of str, shape (n,)

    Examples
    --------
    >>> trace_words([1.0, 9.0, 4.0]).tolist()
    ['rest', '', 'push']
    """
    numbers, words = _cue_numbers(codes), np.full(np.shape(codes), "", dtype=_WORDS)
    for word in CUES:
        words[numbers == CUE_CODES[word]] = word
    return words


def unknown_cues(codes: ArrayLike) -> dict[int, int]:
    """Numbers of a recording's cues that are no known cue word's, and how many samples have each.

    Parameters
    ----------
    codes : array, shape (n,)
        Column `cue` of a recording.

    Examples
    --------
    >>> unknown_cues([1.0, 4.0, 9.0]), unknown_cues([1.0, 42.0, 42.0])
    ({}, {42: 2})
    """
    numbers = _cue_numbers(codes)
    found, counts = np.unique(numbers[~np.isin(numbers, list(CUE_CODES.values()))], return_counts=True)
    return dict(zip(found.tolist(), counts.tolist(), strict=True))


def _cue_numbers(codes: ArrayLike) -> NDArray[np.int64]:
    """Whole numbers; where none is kept, that of nothing asked."""
    numbers = np.asarray(codes, dtype=np.float64)
    return np.where(np.isfinite(numbers), numbers, 0).astype(np.int64)


def cues_at(task: Task, step: int, resting: bool, into_s: ArrayLike) -> Array:
    """Cue columns at times into a step, or into the rest before it.

    Parameters
    ----------
    task : Task
    step : int
        Place in `task.steps`.
    resting : bool
        The rest before it.
    into_s : array, shape (n,)
        Seconds since it began.

    Returns
    -------
    array, shape (n, 4)
        cue_x, cue_y, cue_width, cue.
    """
    times = np.atleast_1d(np.asarray(into_s, dtype=np.float64))
    asked = task.steps[step]
    rows = np.full((times.size, 4), math.nan)
    rows[:, 3] = cue_code(asked.rest_word if resting else asked.word)
    if resting:
        return rows
    rows[:, 2] = asked.width
    rows[:, :2] = task.path.at(times) if asked.word == "follow" and task.path is not None else (asked.x, asked.y)
    # Where the stick drives the cursor's speed, its place is not where the player was asked to be.
    if task.cursor.mapping == "velocity" and asked.word in ("aim", "follow"):
        rows[:, 3] = cue_code("play")
    return rows
