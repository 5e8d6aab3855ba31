"""An invented player on a made-up stick, who follows whatever the running task asks: for learning the job without a stick."""

from __future__ import annotations

import math
from collections.abc import Callable

from stickwright.measure.simulated_player import PretendPlayer
from stickwright.measure.steps import cues_at
from stickwright.measure.task import TaskState
from stickwright.measure.virtual import Feed
from stickwright.measure.virtual import VirtualStickState as StickState

__all__ = ["asked_xy", "practice_feed"]

LAP_S = 5.0
PRESSES_PER_S = 1.4
PRESSED_S = 0.2


def practice_feed(state_now: Callable[[], TaskState | None], seed: int = 7) -> Feed:
    """Where the made-up stick is, and whether its first button is down.

    Parameters
    ----------
    state_now : callable
        The running task; None before it has begun. Asked on the reading thread.
    seed : int
        Of tremor and noise.
    """
    player = PretendPlayer(lambda: asked_xy(state_now()), seed=seed)

    def feed(now_s: float) -> StickState:
        at = player(now_s)
        state = state_now()
        pressing = state is not None and state.phase == "asking" and state.asked.counts_presses
        down = pressing and (now_s * PRESSES_PER_S) % 1.0 < PRESSED_S * PRESSES_PER_S
        return StickState(at.axes, 1 if down else 0)

    return feed


def asked_xy(state: TaskState | None) -> tuple[float, float] | None:
    """Where a willing player would put the stick now; None when nothing is asked of it."""
    if state is None or state.phase != "asking":
        return None
    step = state.asked
    if step.word == "rim":
        way = math.copysign(1.0, step.laps) if math.isfinite(step.laps) else 1.0
        angle = math.pi / 2 + way * 2 * math.pi * state.into_s / LAP_S
        return math.cos(angle), math.sin(angle)
    if step.word == "play":
        return 0.7 * math.sin(0.9 * state.into_s), 0.6 * math.sin(1.3 * state.into_s + 1.0)
    x, y = (float(one) for one in cues_at(state.task, state.step, False, state.into_s)[0, :2])
    if not (math.isfinite(x) and math.isfinite(y)):
        return None
    if state.task.cursor.mapping != "velocity":
        return x, y
    away = (
        x - state.cursor_xy[0],
        y - state.cursor_xy[1],
    )  # the stick sets the speed: towards the target, slower when near
    far = math.hypot(*away)
    return (away[0] * min(1.0, 2.0 / far), away[1] * min(1.0, 2.0 / far)) if far > 1e-6 else (0.0, 0.0)
