"""The lines of each task, through `stickwright.trace`. What is wanted of each figure is judgement, named here in one place."""

from __future__ import annotations

import math

import numpy as np

from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import LiveFigures
from stickwright.codes.message import message
from stickwright.errors import BadInput
from stickwright.measure.lines import Line
from stickwright.measure.steps import Task
from stickwright.trace.aimed import pointing_report
from stickwright.trace.bias import bias_report
from stickwright.trace.bursts import burst_report
from stickwright.trace.holds import hold_reports
from stickwright.trace.reach import direction_word, reach_report
from stickwright.trace.recording import Cleaned
from stickwright.trace.rest import rest_report
from stickwright.trace.tracking import tracking_report

__all__ = [
    "WANTED", "aim_lines", "follow_lines", "hold_lines", "play_lines", "push_lines", "rest_lines", "rim_lines"
]  # fmt: skip

WANTED = {
    "centre": 0.02, "reach": 0.10, "turn_rad": math.radians(10), "level": 0.05, "throughput": 0.15, "following": 0.15,
    "lag_s": 0.05,
}  # fmt: skip
"""Half-widths that are good enough to choose by: shares of full output, except throughput and following, which are shares of
the figure itself. (Judgement: finer figures seldom change which stick is chosen.)"""

LEAST_REST_S = 6.0
"""Rest to watch before the centre is known: two rests of the task, so that whether it returns to one place is seen. (Common
practice, no source; false input wants 60 s.)"""


def rest_lines(task: Task, clean: Cleaned) -> tuple[Line, ...]:
    """Where the stick rests, and how much it trembles there.

    Parameters
    ----------
    task : Task
        That was run.
    clean : Cleaned
        Usable samples.
    """
    report, _ = rest_report(clean)
    if report is None:
        return ()
    steps = tuple(k for k, step in enumerate(task.steps) if step.key == "touch")[:1] + _first_step(task, "rest")
    named = (
        (message(LiveFigures.centre, axis="sideways"), report.offset_x),
        (message(LiveFigures.centre, axis="forward"), report.offset_y),
    )
    centre = tuple(
        Line(label, each, WANTED["centre"], "rest", steps=steps)
        for (label, each), known in zip(named, clean.recorded, strict=True)
        if known
    )  # fmt: skip
    asked_s = float(np.count_nonzero(clean.asked("rest"))) * clean.step_s
    watched = Line(
        message(LiveFigures.rest_time),
        Estimate.unbounded(asked_s, message(LiveFigures.reason, reason="counted"), n=1),
        ask="rest",
        steps=steps,
        unit="s",
        most=1,
        at_least=LEAST_REST_S,
    )
    return (watched, *centre, Line(message(LiveFigures.rest_noise), report.noise_rms, better="less"))


def _first_step(task: Task, word: str, key: str = "") -> tuple[int, ...]:
    return tuple(k for k, step in enumerate(task.steps) if step.word == word and key in ("", step.key))[:1]


def _centre_and_keep(clean: Cleaned) -> tuple[tuple[float, float], np.ndarray[tuple[int], np.dtype[np.bool_]]]:
    _, keep, _ = burst_report(clean)
    report, _ = rest_report(clean, keep=keep) if clean.asked("rest").any() else (None, [])
    offsets = (0.0, 0.0) if report is None else (report.offset_x.number, report.offset_y.number)
    x, y = (value if math.isfinite(value) else 0.0 for value in offsets)
    return (x, y), keep


def rim_lines(task: Task, clean: Cleaned) -> tuple[Line, ...]:
    """Reach in each direction, from laps along the edge.

    Parameters
    ----------
    task : Task
        That was run.
    clean : Cleaned
        Usable samples.
    """
    if not clean.asked("rim").any():
        return ()
    centre, keep = _centre_and_keep(clean)
    report, _ = reach_report(clean, centre=centre, keep=keep)
    if report is None:
        return ()
    # One step is two laps: two steps are the most that is asked for.
    lines = [
        Line(
            message(LiveFigures.reach, way=direction_word(at)), each, WANTED["reach"], "edge",
            steps=_first_step(task, "rim"), better="more", most=2,
        )
        for at, each in zip(report.direction_rad, report.reach, strict=True)
    ]  # fmt: skip
    return (*lines, Line(message(LiveFigures.area), report.area_share, better="more"))


def push_lines(task: Task, clean: Cleaned) -> tuple[Line, ...]:
    """Reach in each direction, how far the stick is turned, and how steadily parts of it are held.

    Parameters
    ----------
    task : Task
        That was run.
    clean : Cleaned
        Usable samples.
    """
    lines: list[Line] = []
    centre, keep = _centre_and_keep(clean)
    if clean.asked("push").any():
        report, _ = reach_report(clean, centre=centre, keep=keep)
        reached = (
            {} if report is None else dict(zip(map(direction_word, report.direction_rad), report.reach, strict=True))
        )
        untried = Estimate.missing(message(LiveFigures.reason, reason="not-tried"))
        ways = {step.key: direction_word(math.atan2(step.y, step.x)) for step in task.steps if step.word == "push"}
        lines += [
            Line(
                message(LiveFigures.reach, way=way), reached.get(way, untried), WANTED["reach"], "push", way,
                _first_step(task, "push", key), better="more",
            )
            for key, way in ways.items()
        ]  # fmt: skip
        bias, _ = bias_report(clean, centre=centre, keep=keep)
        if bias is not None:
            lines.append(Line(message(LiveFigures.turned), bias.error_rotation_rad, unit="rad"))
    holds, _ = hold_reports(clean, keep=keep)
    for held in holds:
        way, level = direction_word(held.direction_rad), round(held.level.number, 2)
        lines.append(Line(message(LiveFigures.hold_scatter, way=way, level_share=level), held.sd, better="less"))
    return tuple(lines)


def hold_lines(task: Task, clean: Cleaned) -> tuple[Line, ...]:
    """How long, how steadily, and whether it sinks.

    Parameters
    ----------
    task : Task
        That was run.
    clean : Cleaned
        Usable samples.
    """
    _, keep, _ = burst_report(clean)
    holds, _ = hold_reports(clean, keep=keep)
    if not holds:
        return ()
    held = max(holds, key=lambda each: each.duration_s)
    long = Estimate.unbounded(held.duration_s, message(LiveFigures.reason, reason="one-hold"), n=len(holds))
    steps = _first_step(task, "hold")
    return (
        Line(message(LiveFigures.level_held), held.level, WANTED["level"], "hold", steps=steps, least=1, most=1),
        Line(message(LiveFigures.level_change), held.slope_per_s, unit="share/s"),
        Line(message(LiveFigures.held_for), long, unit="s", better="more"),
    )


def aim_lines(task: Task, clean: Cleaned, cue_width: float | None) -> tuple[Line, ...]:
    """Bits a second, and targets missed, over all circles together.

    Parameters
    ----------
    task : Task
        That was run.
    clean : Cleaned
        Usable samples.
    cue_width : float or None
        Of the targets.

    Notes
    -----
    Between circles there is a rest; it belongs to no movement, because nothing is asked then.
    """
    if clean.cue_xy is None or cue_width is None or not clean.asked("aim").any():
        return ()
    asked = np.where(clean.asked("aim")[:, None], clean.cue_xy, math.nan)
    try:
        report = pointing_report(clean.times_s, clean.xy, asked, cue_width, selected=clean.selected)
    except BadInput:
        return ()  # no target has stayed long enough yet
    bits = report.throughput_bit_per_s
    # A share of the figure itself; of one that is not known yet something is wanted all the same.
    wanted = WANTED["throughput"] * (abs(bits.value) if bits.value is not None else 1.0)
    first = [k for k, step in enumerate(task.steps) if step.round == 1]
    per_circle = max(1, len(first) - 1)
    circles = Estimate(bits.value, bits.low, bits.high, bits.level, max(1, round(bits.n / per_circle)), why=bits.why)
    rate = message(LiveFigures.throughput)
    return (
        # One circle more is what can be asked for: a target alone tells nothing of the scatter.
        Line(rate, circles, wanted, "circle", steps=tuple(first), least=1, unit="bit/s", better="more", most=2),
        Line(message(LiveFigures.missed), report.error_rate, better="less"),
    )


def follow_lines(task: Task, clean: Cleaned) -> tuple[Line, ...]:
    """How far off, how late and how large the following is.

    Parameters
    ----------
    task : Task
        That was run.
    clean : Cleaned
        Usable samples.
    """
    if clean.cue_xy is None or not clean.asked("follow").any():
        return ()
    asked = clean.asked("follow")
    where = np.where(asked[:, None], clean.cue_xy, math.nan)
    try:
        report = tracking_report(clean.times_s[asked], clean.xy[asked], where[asked])
    except BadInput:
        return ()  # less than three seconds so far
    step, off = _first_step(task, "follow"), report.rms_error
    wanted = WANTED["following"] * abs(off.number)
    return (
        Line(
            label=message(LiveFigures.off_target),
            estimate=off,
            wanted=wanted,
            ask="following",
            way=None,
            steps=step,
            least=4,
            better="less",
            most=1,
        ),
        Line(
            label=message(LiveFigures.lag),
            estimate=report.lag_s,
            wanted=WANTED["lag_s"],
            ask="following",
            way=None,
            steps=step,
            least=4,
            unit="s",
            better="less",
            most=1,
        ),
        Line(message(LiveFigures.off_without_lag), report.error_without_lag, better="less"),
        Line(message(LiveFigures.gain), report.gain),
    )


def play_lines(clean: Cleaned) -> tuple[Line, ...]:
    """How much of the time the stick was away from its centre, and at full throw.

    Parameters
    ----------
    clean : Cleaned
        Usable samples.

    Notes
    -----
    Counted, not estimated: there is nothing to draw more of. Where it went in detail is in the report after the task.
    """
    asked = clean.asked("play")
    if not asked.any():
        return ()
    radius = np.hypot(*clean.xy[asked].T) / clean.scale
    why = message(LiveFigures.counted_play, time_s=round(np.count_nonzero(asked) * clean.step_s))
    return tuple(
        Line(label, Estimate.unbounded(float(np.mean(radius >= least)), why, n=int(radius.size)))
        for label, least in ((message(LiveFigures.away), 0.2), (message(LiveFigures.full), 0.95))
    )
