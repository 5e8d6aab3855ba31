"""The invented player goes where the running task asks, and nowhere when nothing is asked."""

from __future__ import annotations

import itertools
import math

import pytest

from stickwright.measure.events import Start, Tick
from stickwright.measure.task import TaskState, advance, begin
from stickwright.measure.tasks import guided_task
from stickwright.web.practice import asked_xy, practice_feed


def asking(name: str, **settings: object) -> TaskState:
    """The task at the first thing that it asks."""
    state, _ = advance(begin(guided_task(name, seed=3, **settings)), Start(0.0))
    at_s = 0.0
    while state.phase != "asking":
        at_s += 0.1
        state, _ = advance(state, Tick(at_s))
    return state


def test_nothing_is_done_before_anything_is_asked() -> None:
    assert asked_xy(None) is None
    assert asked_xy(begin(guided_task("push", seed=3))) is None


def test_a_push_goes_where_the_step_asks() -> None:
    state = asking("push")
    assert asked_xy(state) == (state.asked.x, state.asked.y)


def test_round_the_edge_is_on_the_edge_and_the_way_that_is_asked() -> None:
    """Plus laps are anticlockwise: a quarter of a lap after straight ahead is left."""
    state = asking("rim")
    way = math.copysign(1.0, state.asked.laps)
    later, _ = advance(state, Tick(state.now_s + 1.25))
    x, y = asked_xy(later) or (math.nan, math.nan)
    assert math.hypot(x, y) == pytest.approx(1.0, abs=1e-12)
    assert x == pytest.approx(-way * math.sin(2 * math.pi * later.into_s / 5.0), abs=1e-9)


def test_where_the_stick_sets_the_speed_it_points_at_the_target() -> None:
    """From wherever the cursor is, never beyond full output."""
    state = asking("aim", mapping="velocity")
    x, y = asked_xy(state) or (math.nan, math.nan)
    away = (state.asked.x - state.cursor_xy[0], state.asked.y - state.cursor_xy[1])
    assert x * away[1] == pytest.approx(y * away[0], abs=1e-9)
    assert x * away[0] + y * away[1] > 0


def test_the_switch_is_pressed_in_press_tasks_alone() -> None:
    """About one and a half presses a second while presses are asked."""
    state = asking("press")
    feed = practice_feed(lambda: state)
    downs = [feed(at / 100).buttons for at in range(1000)]  # type: ignore[union-attr]
    presses = sum(1 for before, now in itertools.pairwise(downs) if now and not before)
    assert 12 <= presses <= 15
    other = practice_feed(lambda: asking("push"))
    assert not any(other(at / 10).buttons for at in range(20))  # type: ignore[union-attr]
