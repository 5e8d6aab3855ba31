"""What the player sees at a moment of a guided task. Large, calm, nothing flashes; with reduced motion only what is asked moves."""

from __future__ import annotations

import math

from stickwright.codes.message import Message, message
from stickwright.codes.steps import Steps
from stickwright.codes.tasks import Tasks
from stickwright.measure.shapes import Arrow, Circle, Dot, Path, Picture, Ring, Shape, Text
from stickwright.measure.task import Phase, TaskState
from stickwright.measure.tasks import STOP, Task, TaskStep

__all__ = ["picture", "picture_of"]

EDGE = Ring(0.0, 0.0, 1.0, "edge")


def picture_of(state: TaskState, *, reduced_motion: bool = False) -> Picture:
    """The picture of a state at its latest time.

    Parameters
    ----------
    state : TaskState
    reduced_motion : bool, default False
        Nothing moves but what the player moves and what has to be followed.
    """
    return picture(
        state.task, state.step, state.phase, state.into_s, left_s=state.left_s, player_xy=state.cursor_xy,
        reduced_motion=reduced_motion,
    )  # fmt: skip


def picture(
    task: Task,
    step: int,
    phase: Phase,
    into_s: float,
    *,
    left_s: float = math.inf,
    player_xy: tuple[float, float] | None = None,
    reduced_motion: bool = False,
) -> Picture:
    """The picture of a step at a time.

    Parameters
    ----------
    task : Task
    step : int
        Place in `task.steps`.
    phase : Phase
    into_s : float
        Seconds since the phase began.
    left_s : float, default infinite
        Seconds until it ends by itself.
    player_xy : (float, float) or None
        Where the player's cursor is.
    reduced_motion : bool, default False
        Nothing moves but what the player moves and what has to be followed.

    Returns
    -------
    Picture
        With the words on stopping always among the shapes.
    """
    asked = task.steps[step]
    if phase == "asking":
        shapes, words = _asking(task, step, into_s, reduced_motion)
    elif phase == "resting":
        shapes, words = _resting(task, asked, left_s, reduced_motion)
    else:
        words = task.title if phase == "ready" else message(Steps.over, phase=phase)
        shapes = (EDGE,)
    mine: tuple[Shape, ...] = ()
    if player_xy is not None and phase in ("ready", "asking", "resting") and all(map(math.isfinite, player_xy)):
        mine = (Dot(*player_xy, "player"),)
    stop = Text(0.0, -1.14, STOP, "small")
    return Picture((*shapes, *mine, Text(0.0, 1.14, words), stop), message(Tasks.with_stop, words=words))


def _resting(task: Task, asked: TaskStep, left_s: float, reduced_motion: bool) -> tuple[tuple[Shape, ...], Message]:
    shapes: list[Shape] = [EDGE]
    if asked.word == "follow" and task.path is not None:
        x, y = task.path.at(0.0)[0].tolist()
        shapes.append(Ring(x, y, 0.12, "next"))
    elif math.isfinite(asked.x) and math.hypot(asked.x, asked.y) > 0:
        shapes.append(_mark(asked, "next"))
    if math.isfinite(left_s) and not reduced_motion:
        shapes.append(Text(0.0, 0.0, str(math.ceil(left_s)), "small", "quiet"))
    return tuple(shapes), asked.rest_words


def _mark(asked: TaskStep, role: str) -> Shape:
    if asked.word == "push":
        return Arrow(0.0, 0.0, 0.85 * asked.x, 0.85 * asked.y, "next" if role == "next" else "asked")
    width = asked.width if math.isfinite(asked.width) else 0.24
    return Ring(asked.x, asked.y, width / 2, "next" if role == "next" else "asked")


def _asking(task: Task, step: int, into_s: float, reduced_motion: bool) -> tuple[tuple[Shape, ...], Message]:
    asked = task.steps[step]
    if asked.word == "follow" and task.path is not None:
        x, y = task.path.at(into_s)[0].tolist()
        return (EDGE, Ring(x, y, 0.12)), asked.words
    if asked.word == "aim":
        others = {(s.x, s.y) for s in task.steps if s.round == asked.round} - {(asked.x, asked.y)}
        quiet = tuple(Ring(x, y, asked.width / 2, "quiet") for x, y in sorted(others))
        return (EDGE, *quiet, Circle(asked.x, asked.y, asked.width / 2)), asked.words
    if asked.word == "rim":
        return (EDGE, _around(asked.laps)), asked.words
    if asked.word == "press":
        return (_beat(asked, into_s, reduced_motion)), asked.words
    if asked.word in ("push", "hold"):
        return (EDGE, Path(((0.0, 0.0), (asked.x, asked.y))), _mark(asked, "asked")), asked.words
    return (EDGE,), asked.words


def _around(laps: float) -> Path:
    turn = math.copysign(1.0, laps)
    angles = [math.pi / 2 + turn * math.radians(k) for k in range(15, 300, 15)]
    return Path(tuple((0.85 * math.cos(a), 0.85 * math.sin(a)) for a in angles), "asked", arrow=True)


def _beat(asked: TaskStep, into_s: float, reduced_motion: bool) -> tuple[Shape, ...]:
    """A ring that closes on the disc with the beat; with reduced motion the count."""
    disc = Circle(0.0, 0.0, 0.35)
    if not math.isfinite(asked.beat_s):
        return (disc,)
    beats = into_s / asked.beat_s
    if reduced_motion:
        return (disc, Text(0.0, 0.0, str(int(beats) % 4 + 1)))
    return (disc, Ring(0.0, 0.0, 0.35 + 0.5 * (1 - beats % 1), "next"))
