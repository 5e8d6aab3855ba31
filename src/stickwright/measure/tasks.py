"""The eight guided tasks as data: what is asked, in which order, for how long, in which words.

A task is made from a few settings and a seed, and the same settings make the same task again (`guided_task`), so that the
settings kept with a recording tell all that was shown. Order, rests and repeats follow common practice: directions
shuffled, five seconds of rest between pushes, the first direction once more at the end to see whether it tires.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import numpy as np

from stickwright.codes.capture_problems import CaptureProblems
from stickwright.codes.message import Message, Name, message
from stickwright.codes.steps import Steps
from stickwright.codes.tasks import TaskName, Tasks
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.measure.steps import (
    CUE_WORDS,
    RAW_COLUMNS,
    RECORDED_COLUMNS,
    STOP,
    Practitioner,
    Task,
    TaskStep,
    cue_code,
    cues_at,
    trace_words,
)
from stickwright.measure.targets import (
    Cursor,
    Mapping,
    TargetReach,
    distance_for,
    reach_towards,
    ring_of_targets,
    sum_of_sines,
)
from stickwright.trace.reach import direction_word

__all__ = [
    "CUE_WORDS",
    "RAW_COLUMNS",
    "RECORDED_COLUMNS",
    "STOP",
    "TASKS",
    "Practitioner",
    "Task",
    "TaskStep",
    "aim_task",
    "cue_code",
    "cues_at",
    "follow_task",
    "guided_task",
    "hold_task",
    "play_task",
    "press_task",
    "push_task",
    "rest_task",
    "rim_task",
    "trace_words",
]  # fmt: skip

TASKS: tuple[TaskName, ...] = ("rest", "rim", "push", "aim", "follow", "hold", "press", "play")


def rest_task(seed: int = 0, *, hand: str = "off", rests: int = 3, lasts_s: float = 3.0) -> Task:
    """Rest: where the stick lies, how it comes home, how much it trembles.

    Parameters
    ----------
    seed : int, default 0
        Not used: rests are all alike.
    hand : {"off", "resting"}
        Hand off the stick, or resting on it as in play.
    rests : int, default 3
    lasts_s : float, default 3
    """
    if hand not in ("off", "resting"):
        raise BadInput(Problem("hand", f"'{hand}'", message(CaptureProblems.expected, what="hand")))
    _refuse_counts(rests=rests, lasts_s=lasts_s)
    words = message(Steps.hands_off) if hand == "off" else message(Steps.resting)
    steps: list[TaskStep] = []
    for number in range(1, rests + 1):
        if number > 1:
            steps.append(
                TaskStep("", 3.0, message(Steps.touch), round=number, key="touch", least_s=1.0)
            )  # fmt: skip
        steps.append(TaskStep("rest", lasts_s + 0.5, words, round=number, key=f"rest {number}", least_s=lasts_s))
    return Task(
        "rest", message(Tasks.title, task="rest"), _told(message(Tasks.rest, rests=rests)),
        Practitioner(message(Tasks.purpose, task="rest"), message(Tasks.watch, task="rest")),
        tuple(steps), {"task": "rest", "seed": seed, "hand": hand, "rests": rests, "lasts_s": lasts_s},
    )  # fmt: skip


def rim_task(seed: int = 0, *, laps: int = 2, lasts_s: float = 30.0) -> Task:
    """Around the edge, both ways round.

    Parameters
    ----------
    seed : int, default 0
        Not used.
    laps : int, default 2
        Each way.
    lasts_s : float, default 30
        Longest time for each way.
    """
    _refuse_counts(laps=laps, lasts_s=lasts_s)
    steps = tuple(
        TaskStep(
            "rim", lasts_s, message(Steps.rim, clockwise=sign < 0), rest_s=5.0, ends="laps", laps=sign * laps, round=number,
            key=key, least_s=0.0,
        )
        for number, (key, sign) in enumerate((("clockwise", -1), ("anticlockwise", 1)), start=1)
    )  # fmt: skip
    return Task(
        "rim", message(Tasks.title, task="rim"), _told(message(Tasks.rim, laps=laps)),
        Practitioner(message(Tasks.purpose, task="rim"), message(Tasks.watch, task="rim")),
        steps, {"task": "rim", "seed": seed, "laps": laps, "lasts_s": lasts_s},
    )  # fmt: skip


def push_task(
    seed: int,
    *,
    directions: int = 8,
    levels: Sequence[float] = (1.0,),
    rounds: int = 3,
    only_deg: Sequence[float] = (),
    reach: TargetReach | None = None,
) -> Task:
    """Push, and hold at cued levels, in directions in shuffled order; the first one once more at the end.

    Parameters
    ----------
    seed : int
        For the order.
    directions : {8, 4}
    levels : sequence of float, default (1,)
        1 asks for a push as far as is comfortable; a smaller share asks to hold at that share.
    rounds : int, default 3
        Every direction and level once a round.
    only_deg : sequence of float
        Only these directions, degrees: for a few more where the interval is wide.
    reach : TargetReach or None
        The player's own reach: levels below 1 are shares of it.
    """
    problems = []
    if directions not in (4, 8):
        problems.append(Problem("directions", str(directions), message(CaptureProblems.expected, what="directions")))
    if not levels or not all(0 < level <= 1 for level in levels):
        problems.append(
            Problem(
                "levels",
                str(list(levels)),
                message(CaptureProblems.expected, what="shares"),
                message(CaptureProblems.remedy, what="levels"),
            )
        )
    if problems:
        raise BadInput(problems)
    _refuse_counts(rounds=rounds)
    rng = np.random.default_rng(seed)
    asked_deg = list(only_deg) or [360.0 * k / directions for k in range(directions)]
    kinds = [(degrees, level) for degrees in asked_deg for level in levels]
    order = [(kinds[k], number) for number in range(1, rounds + 1) for k in rng.permutation(len(kinds)).tolist()]
    if len(asked_deg) > 1:
        order.append((order[0][0], rounds))
    steps = tuple(_push_step(degrees, level, number, reach) for (degrees, level), number in order)
    return Task(
        "push", message(Tasks.title, task="push"), _told(message(Tasks.push)),
        Practitioner(message(Tasks.purpose, task="push"), message(Tasks.watch, task="push")),
        steps,
        {
            "task": "push", "seed": seed, "directions": directions, "levels": list(levels), "rounds": rounds,
            "only_deg": list(only_deg), **_reach_asked(reach),
        },
    )  # fmt: skip


def _push_step(degrees: float, level: float, number: int, reach: TargetReach | None) -> TaskStep:
    angle = math.radians(degrees)
    way = direction_word(angle)
    if level >= 1.0:
        word, lasts_s, words, far = "push", 2.0, message(Steps.push, way=way), 1.0
    else:
        word, lasts_s, words = "hold", 5.0, message(Steps.hold, way=way)
        far = level * float(reach_towards(reach, angle))
    x, y = (round(far * math.cos(angle), 12), round(far * math.sin(angle), 12))
    return TaskStep(word, lasts_s, words, x, y, rest_s=5.0, round=number, key=way, least_s=lasts_s)


def aim_task(
    seed: int = 0,
    *,
    targets: int = 9,
    bits: Sequence[float] = (1.6, 2.3),
    width: float = 0.3,
    mapping: Mapping = "position",
    gain_per_s: float = 1.0,
    dwell_s: float = 0.5,
    by_switch: bool = False,
    limit_s: float = 6.0,
    reach: TargetReach | None = None,
) -> Task:
    """Reach the targets: round a circle, each across from the one before.

    Parameters
    ----------
    seed : int, default 0
        For the order of the circles.
    targets : int, default 9
        On each circle; odd.
    bits : sequence of float
        Wanted index of difficulty of each circle.
    width : float, default 0.3
        Of every target: distances follow from the bits.
    mapping : {"position", "velocity"}
        The stick's place is the cursor's place, or its speed.
    gain_per_s : float, default 1
        With 'velocity': field half-widths a second at full output.
    dwell_s : float, default 0.5
        Staying so long chooses a target.
    by_switch : bool, default False
        Only the confirm switch chooses.
    limit_s : float, default 6
        A target not reached in this time is passed over.
    reach : TargetReach or None
        The player's own reach: where a circle would go beyond, circle and targets shrink together.
    """
    if mapping not in ("position", "velocity"):
        raise BadInput(Problem("mapping", f"'{mapping}'", message(CaptureProblems.expected, what="mapping")))
    _refuse_counts(width=width, gain_per_s=gain_per_s, dwell_s=dwell_s, limit_s=limit_s, bits=min(bits, default=0.0))
    order = np.random.default_rng(seed).permutation(len(bits)).tolist()
    size = _fitting(max(bits), width, targets, reach if mapping == "position" else None)
    steps: list[TaskStep] = []
    for number, k in enumerate(order, start=1):
        for place, (x, y) in enumerate(ring_of_targets(targets, distance_for(bits[k], size * width))):
            steps.append(
                TaskStep(
                    "aim", limit_s, message(Steps.aim, by_switch=by_switch), x, y, size * width,
                    rest_s=8.0 if place == 0 and number > 1 else 2.0 if place == 0 else 0.0,
                    ends="target", round=number, key=f"circle {number}, target {place + 1}",
                )
            )  # fmt: skip
    return Task(
        name="aim", title=message(Tasks.title, task="aim"), for_player=_told(message(Tasks.aim, by_switch=by_switch)),
        for_practitioner=Practitioner(message(Tasks.purpose, task="aim"), message(Tasks.watch, task="aim")),
        steps=tuple(steps),
        asked={
            "task": "aim", "seed": seed, "targets": targets, "bits": list(bits), "width": width, "mapping": mapping,
            "gain_per_s": gain_per_s, "dwell_s": dwell_s, "by_switch": by_switch, "limit_s": limit_s, **_reach_asked(reach),
        },
        cursor=Cursor(mapping=mapping, gain_per_s=gain_per_s), dwell_s=math.inf if by_switch else dwell_s,
    )  # fmt: skip


def _fitting(bits: float, width: float, targets: int, reach: TargetReach | None) -> float:
    """By how much circle and targets shrink so that the widest circle lies within reach, and within the field."""
    places = np.array(ring_of_targets(targets, distance_for(bits, width)))
    far = np.hypot(*places.T)
    room = 0.9 * reach_towards(reach, np.arctan2(places[:, 1], places[:, 0]))
    return float(min(1.0, np.min(room / far)))


def follow_task(
    seed: int, *, lasts_s: float = 60.0, pace: str = "calm", largest: float = 0.8, reach: TargetReach | None = None
) -> Task:
    """Follow the moving target.

    Parameters
    ----------
    seed : int
        For the path.
    lasts_s : float, default 60
    pace : {"calm", "brisk"}
    largest : float, default 0.8
        Farthest place, share of full output or of the player's reach.
    reach : TargetReach or None
        The player's own reach.
    """
    path = sum_of_sines(seed, lasts_s=lasts_s, pace=pace, largest=largest, reach=reach)
    step = TaskStep(
        "follow", lasts_s, message(Steps.follow), rest_s=4.0, rest_word="",
        rest_words=message(Steps.follow_soon), least_s=min(20.0, lasts_s), key="follow",
    )  # fmt: skip
    return Task(
        "follow", message(Tasks.title, task="follow"), _told(message(Tasks.follow)),
        Practitioner(message(Tasks.purpose, task="follow"), message(Tasks.watch, task="follow")),
        (step,),
        {
            "task": "follow", "seed": seed, "lasts_s": lasts_s, "pace": pace, "largest": largest, **_reach_asked(reach)
        },
        path=path,
    )  # fmt: skip


def hold_task(
    seed: int = 0,
    *,
    direction_deg: float = 90.0,
    level: float = 0.5,
    cap_s: float = 60.0,
    reach: TargetReach | None = None,
) -> Task:
    """Hold as long as is comfortable.

    Parameters
    ----------
    seed : int, default 0
        Not used.
    direction_deg : float, default 90
    level : float, default 0.5
        Share of full output, or of the player's reach.
    cap_s : float, default 60
        It ends here at the latest.
    reach : TargetReach or None
        The player's own reach.
    """
    _refuse_counts(level=level, cap_s=cap_s)
    angle = math.radians(direction_deg)
    far = min(1.0, level) * float(reach_towards(reach, angle))
    step = TaskStep(
        "hold", cap_s, message(Steps.hold_long, way=direction_word(angle)),
        far * math.cos(angle), far * math.sin(angle), rest_s=5.0, ends="release", key="hold", least_s=min(5.0, cap_s),
    )  # fmt: skip
    return Task(
        "hold", message(Tasks.title, task="hold"), _told(message(Tasks.hold)),
        Practitioner(message(Tasks.purpose, task="hold"), message(Tasks.watch_hold, cap_s=cap_s)),
        (step,),
        {
            "task": "hold", "seed": seed, "direction_deg": direction_deg, "level": level, "cap_s": cap_s, **_reach_asked(reach)
        },
    )  # fmt: skip


def press_task(seed: int = 0, *, lasts_s: float = 10.0, rounds: int = 2, beat_s: float = 1.0) -> Task:
    """Press rhythm: as many as are comfortable, then to a beat.

    Parameters
    ----------
    seed : int, default 0
        Not used.
    lasts_s : float, default 10
        Of each free round.
    rounds : int, default 2
        Free rounds.
    beat_s : float, default 1
        From beat to beat, sixteen beats.
    """
    _refuse_counts(lasts_s=lasts_s, rounds=rounds, beat_s=beat_s)
    free = [
        TaskStep(
            "press", lasts_s, message(Steps.press, to_beat=False), rest_s=10.0, round=number, counts_presses=True,
            key=f"free {number}", least_s=lasts_s,
        )
        for number in range(1, rounds + 1)
    ]  # fmt: skip
    beat = TaskStep(
        "press", 16 * beat_s, message(Steps.press, to_beat=True), rest_s=10.0, round=rounds + 1, counts_presses=True,
        key="beat", least_s=8 * beat_s, beat_s=beat_s,
    )  # fmt: skip
    return Task(
        "press", message(Tasks.title, task="press"), _told(message(Tasks.press)),
        Practitioner(message(Tasks.purpose, task="press"), message(Tasks.watch, task="press")),
        (*free, beat), {"task": "press", "seed": seed, "lasts_s": lasts_s, "rounds": rounds, "beat_s": beat_s},
    )  # fmt: skip


def play_task(seed: int = 0, *, lasts_s: float = 60.0) -> Task:
    """Free play, on the screen or in the game.

    Parameters
    ----------
    seed : int, default 0
        Not used.
    lasts_s : float, default 60
    """
    _refuse_counts(lasts_s=lasts_s)
    return Task(
        "play", message(Tasks.title, task="play"), _told(message(Tasks.play)),
        Practitioner(message(Tasks.purpose, task="play"), message(Tasks.watch, task="play")),
        (TaskStep("play", lasts_s, message(Steps.play), key="play", least_s=min(10.0, lasts_s)),),
        {"task": "play", "seed": seed, "lasts_s": lasts_s},
    )  # fmt: skip


def _told(words: Message) -> Message:
    """To the player, with the words on stopping."""
    return message(Tasks.with_stop, words=words)


_MAKERS: dict[str, Callable[..., Task]] = {
    "rest": rest_task, "rim": rim_task, "push": push_task, "aim": aim_task, "follow": follow_task, "hold": hold_task,
    "press": press_task, "play": play_task,
}  # fmt: skip


def guided_task(task: str, *, seed: int, **settings: object) -> Task:
    """A task by its name and settings, as kept with a recording.

    Parameters
    ----------
    task : str
        One of `TASKS`.
    seed : int
        For orders and paths.
    **settings : object
        As for the task's own maker; `reach` as a `TargetReach` or as the pairs that `Task.asked` keeps.

    Raises
    ------
    BadInput
        A task or a setting that is not known, or a value outside what is possible.

    Examples
    --------
    >>> task = guided_task("push", seed=4, directions=4)
    >>> guided_task(**task.asked) == task, len(task.steps)
    (True, 13)
    """
    if task not in _MAKERS:
        raise BadInput(
            Problem(
                "task",
                f"'{task}'",
                message(CaptureProblems.one_of, names=tuple(Name(one) for one in TASKS)),
                did_you_mean(task, TASKS),
            )
        )
    maker = _MAKERS[task]
    known = maker.__kwdefaults__ or {}
    unknown = [name for name in settings if name not in known]
    if unknown:
        raise BadInput(
            [
                Problem(
                    message(CaptureProblems.task, task=Name(task)),
                    f"'{name}'",
                    message(CaptureProblems.one_of, names=tuple(Name(one) for one in known)),
                )
                for name in unknown
            ]
        )
    given = settings.get("reach")
    if isinstance(given, (list, tuple)):
        settings["reach"] = TargetReach(*(tuple(float(each) for each in column) for column in zip(*given, strict=True)))
    return maker(seed, **settings)


def _reach_asked(reach: TargetReach | None) -> dict[str, object]:
    if reach is None:
        return {}
    return {"reach": [list(pair) for pair in zip(reach.direction_rad, reach.share, strict=True)]}


def _refuse_counts(**named: float) -> None:
    problems = [
        Problem(
            name.removesuffix("_s").replace("_", " "), f"{value:g}", message(CaptureProblems.expected, what="above_0")
        )
        for name, value in named.items()
        if not (math.isfinite(value) and value > 0)
    ]
    if problems:
        raise BadInput(problems)
