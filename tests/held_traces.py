"""What `trace` works out of the short recordings, and of tables and series beside them: the held figures of the room."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import numpy as np

from held_recordings import RATE_HZ, RECORDINGS, made, without
from simulated import unit
from stickwright.errors import BadInput
from stickwright.model.recording import Taps, Trials
from stickwright.trace.aimed import pointing_report
from stickwright.trace.let_go import while_held
from stickwright.trace.path import path_accuracy
from stickwright.trace.pointing import index_of_difficulty, throughput
from stickwright.trace.report import trace_report
from stickwright.trace.rest_samples import independent, rest_samples, rests_of
from stickwright.trace.return_to_centre import step_of_levels
from stickwright.trace.smoothness import log_dimensionless_jerk, smoothness_report, spectral_arc_length
from stickwright.trace.tables import taps_report, trials_report
from stickwright.trace.tracking import lag_s
from stickwright.trace.tremor import crossing_frequency, dominant_tremor, tremor_report
from stickwright.trace.unsteady import growing_noise, unsteadiness
from stickwright.trace.usual import usual_tremor


def _told(name: str) -> Any:
    try:
        return trace_report(made(name))
    except BadInput as refused:
        return refused.problems


def _trials(rng: np.random.Generator, *, many: int = 24, serial: bool = False, wrong: bool = False) -> Any:
    targets = np.array([120 * unit(2.2 * number) * (1 + number % 3) for number in range(many)])
    starts = np.concatenate([[[0.0, 0.0]], targets[:-1]]) if serial else rng.normal(0, 4, (many, 2))
    selections = targets + rng.normal(0, 6, (many, 2))
    times_s = 0.6 * np.exp(rng.normal(0, 0.2, many))
    width = np.where(np.arange(many) % 2 == 0, 24.0, 14.0)
    if wrong:
        selections[3], times_s[5], times_s[6], selections[8], starts[9] = starts[3], 0.0, 9.0, np.nan, targets[9]
        selections[11] = targets[11] + [90, 0]
    hit = (np.hypot(*(selections - targets).T) <= width / 2).astype(float)
    return trials_report(
        Trials("t", starts, targets, selections, times_s, width, hit if serial else None, np.arange(many) + 2)
    )


def _taps(
    rng: np.random.Generator, *, many: int = 25, memory: float = 0.0, slowing: float = 0.0, wrong: bool = False
) -> Any:
    scatter = rng.normal(0, 0.03, many)
    for place in range(1, many):
        scatter[place] += memory * scatter[place - 1]
    between = 0.25 + slowing * np.arange(many) + scatter
    if wrong:
        between[4], between[9] = 0.01, 2.0
    down_s = np.cumsum(np.maximum(between, 0.005))
    return taps_report(Taps("t", down_s, down_s + 0.05 + 0.002 * np.arange(many) if memory else None))


def _taps_in_waves() -> Any:
    down_s = np.cumsum(0.3 + 0.1 * np.sin(np.arange(12) / 4))
    return taps_report(Taps("t", down_s, down_s + 0.1))


def _trials_in_milliseconds(rng: np.random.Generator) -> Any:
    targets = np.tile([90.0, 0.0], (9, 1))
    selections, times_ms = targets + rng.normal(0, 4, (9, 2)), rng.uniform(500, 900, 9)
    return trials_report(Trials("t", np.zeros((9, 2)), targets, selections, times_ms, None, None, np.arange(9) + 2))


def _path(rng: np.random.Generator, hysteresis: float) -> Any:
    """A path that wavers about its line, backs up, and enters its target twice; some of it exactly on the line."""
    along = np.concatenate(
        [np.linspace(0, 60, 13), np.linspace(55, 40, 4), np.linspace(45, 118, 15), np.linspace(112, 99, 5)]
    )
    across = np.round(8 * np.sin(along / 9) + rng.normal(0, 1, len(along)))
    across[5:8], along[8:10] = 0.0, along[8]
    turned = np.column_stack([along, across]) @ np.array([unit(0.6), [-math.sin(0.6), math.cos(0.6)]])
    start = np.array([3.0, 4.0])
    return path_accuracy(turned + start, start, start + 100 * unit(0.6), 20.0, hysteresis)


def _plain(rng: np.random.Generator) -> Any:
    """Figures of single functions, that no report of a recording shows."""
    shaken = made("still, tremor at 5 Hz")
    quick = made("aiming")
    late = made("following far behind")
    speed = np.hypot(*np.gradient(quick.xy[:110], axis=0).T) * RATE_HZ
    starts, targets = np.zeros((12, 2)), np.tile([[1.0, 0.0], [0.0, 1.0]], (6, 1))
    found = rests_of(*(lambda one: (one.times_s, one.xy, one.cue))(made("late releases")))
    push_n = np.array([0.2, 0.5, 1.0, 1.5, 2.0])
    return {
        "dominant": dominant_tremor(shaken.xy, RATE_HZ),
        "dominant in parts": dominant_tremor(shaken.xy[:, :1], RATE_HZ, segment=128),
        "crossing": crossing_frequency(shaken.xy, RATE_HZ),
        "crossing above": crossing_frequency(shaken.xy, RATE_HZ, low_hz=2.0),
        "tremor of three": tremor_report(shaken.times_s, np.column_stack([shaken.xy, quick.xy[: len(shaken.xy), 0]]), step=0.01),
        "lag": lag_s(late.times_s, late.xy, late.cue_xy),
        "arc": spectral_arc_length(speed, RATE_HZ),
        "arc up to 5 Hz": spectral_arc_length(speed, RATE_HZ, 5.0, 0.1),
        "jerk": log_dimensionless_jerk(speed, RATE_HZ),
        "smooth": smoothness_report(quick.times_s, quick.xy, least_extent=0.3),
        "pointing": pointing_report(quick.times_s, quick.xy, quick.cue_xy, 0.3, hysteresis=0.02),
        "difficulty": index_of_difficulty(3.0, 0.7),
        "throughput": throughput(starts, targets, targets + rng.normal(0, 0.05, (12, 2)), rng.uniform(0.5, 0.9, 12)),
        "throughput in a row": throughput(starts, targets, targets + rng.normal(0, 0.05, (12, 2)), rng.uniform(0.5, 0.9, 12), serial=True),
        "rests": (found.samples, found.asked, found.unsettled, independent(found.samples)),
        "rests found": rest_samples(*(lambda one: (one.times_s, one.xy))(made("releases nobody asked for"))),
        "rests of": rests_of(*(lambda one: (one.times_s, one.xy))(without(made("releases nobody asked for"), 4.0, 4.5))).samples,
        "levels": (step_of_levels(np.round(shaken.xy[:, 0], 2)), step_of_levels(shaken.xy[:, 0])),
        "unsteadiness": unsteadiness(shaken.times_s, shaken.xy),
        "unsteadiness of a short one": unsteadiness(shaken.times_s[:250], shaken.xy[:250]),
        "growing": growing_noise(push_n, np.hypot(0.03, 0.04 * push_n) * (1 + 0.1 * np.cos(push_n))),
        "growing from nothing": growing_noise(push_n, 0.05 * push_n - 0.004),
        "growing of alike": growing_noise([1.0, 1.1, 1.2], [0.1, 0.1, 0.1]),
        "usual": (usual_tremor("share"), usual_tremor("px")),
        "held": while_held(made("following, let go"))[0].xy,
        "held all along": while_held(made("following"))[1],
    }  # fmt: skip


TABLES: dict[str, Callable[[np.random.Generator], Any]] = {
    "trials": _trials,
    "trials in a row": lambda rng: _trials(rng, serial=True),
    "trials gone wrong": lambda rng: _trials(rng, wrong=True),
    "trials in a row gone wrong": lambda rng: _trials(rng, wrong=True, serial=True, many=40),
    "three trials": lambda rng: _trials(rng, many=3),
    "taps": _taps,
    "taps with a memory": lambda rng: _taps(rng, memory=0.6),
    "taps that slow down": lambda rng: _taps(rng, slowing=0.004, many=40),
    "taps with misses": lambda rng: _taps(rng, wrong=True, memory=0.2),
    "taps all alike": lambda _: taps_report(Taps("t", np.arange(12) * 0.25)),
    "taps in waves": lambda _: _taps_in_waves(),
    "trials in milliseconds": _trials_in_milliseconds,
    "five taps": lambda rng: _taps(rng, many=5),
    "path": lambda rng: _path(rng, 0.0),
    "path with jitter": lambda rng: _path(rng, 2.0),
    "single functions": _plain,
}
"""Tables, and functions that are called by themselves."""


def results() -> dict[str, Callable[[], Any]]:
    """Everything of this module that is held, by name."""
    told = {f"short: {name}": lambda name=name: _told(name) for name in RECORDINGS}
    tables = {
        f"table: {name}": lambda name=name: TABLES[name](np.random.default_rng([19, *name.encode()])) for name in TABLES
    }
    return {**told, **tables}
