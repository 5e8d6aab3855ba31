"""What ends a step before its time: a target stayed in, laps made, a hold let go."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from stickwright.measure.steps import TaskStep
from stickwright.measure.targets import Cursor

__all__ = ["Watch", "ended", "watched"]

RELEASED = 0.5
"""Below this share of the asked level a hold has been let go; it must have been reached before."""

RELEASED_S = 0.5

LAP_FROM = 0.2
"""Nearer to the middle the angle says nothing."""

LAP_OVER = 0.02
"""Share of a lap beyond the last, so that readers of laps find it whole."""


@dataclass(frozen=True)
class Watch:
    """What ends the step that is asked: filled from the samples."""

    cursor: Cursor
    before_s: float = math.nan
    inside_since_s: float = math.nan
    angle_rad: float = math.nan
    turned_rad: float = 0.0
    reached: bool = False
    low_since_s: float = math.nan


def watched(watch: Watch, step: TaskStep, time_s: float, xy: tuple[float, float]) -> Watch:
    """What has been seen of a step after one more sample.

    Parameters
    ----------
    watch : Watch
        Before it; the cursor is already where this sample took it.
    step : TaskStep
        What is asked.
    time_s : float
        Of the sample.
    xy : (float, float)
        The stick.
    """
    x, y = xy
    if step.ends == "target":
        inside = math.hypot(watch.cursor.x - step.x, watch.cursor.y - step.y) <= step.width / 2
        since = watch.inside_since_s if inside and math.isfinite(watch.inside_since_s) else time_s
        return replace(watch, inside_since_s=since if inside else math.nan)
    if step.ends == "laps" and math.hypot(x, y) > LAP_FROM:
        angle = math.atan2(y, x)
        turned = math.remainder(angle - watch.angle_rad, 2 * math.pi) if math.isfinite(watch.angle_rad) else 0.0
        return replace(watch, angle_rad=angle, turned_rad=watch.turned_rad + turned)
    if step.ends == "release":
        level = math.hypot(step.x, step.y)
        along = (x * step.x + y * step.y) / level
        low = watch.reached and along < RELEASED * level
        since = watch.low_since_s if math.isfinite(watch.low_since_s) else time_s
        return replace(watch, reached=watch.reached or along >= 0.8 * level, low_since_s=since if low else math.nan)
    return watch


def ended(watch: Watch, step: TaskStep, time_s: float, dwell_s: float) -> str:
    """How a step has ended: 'target', 'laps', 'release', or '' where it has not.

    Parameters
    ----------
    watch : Watch
    step : TaskStep
    time_s : float
        Of the latest sample.
    dwell_s : float
        Staying so long in a target chooses it.
    """
    if step.ends == "target" and time_s - watch.inside_since_s >= dwell_s - 1e-9:
        return "target"
    wanted_rad = 2 * math.pi * (abs(step.laps) + LAP_OVER)
    if step.ends == "laps" and watch.turned_rad * math.copysign(1.0, step.laps) >= wanted_rad:
        return "laps"
    if step.ends == "release" and time_s - watch.low_since_s >= RELEASED_S:
        return "release"
    return ""
