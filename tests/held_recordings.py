"""Short seeded recordings in which rare things happen: what the held figures of `trace` are taken of (`held_traces`).

Every player in them is invented. Each takes a tenth of a second or so to judge; what is rare in it is in its name.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from simulated import hump_noise, minimum_jerk, unit
from stickwright.model.recording import Recording

Array = NDArray[np.float64]
Made = Callable[[np.random.Generator], Recording]
RATE_HZ = 100.0


def clock(seconds: float, rate_hz: float = RATE_HZ) -> Array:
    """Even stamps."""
    return np.arange(round(seconds * rate_hz)) / rate_hz


def noise(rng: np.random.Generator, times_s: Array, size: float = 0.004) -> Array:
    """White noise on both axes."""
    return rng.normal(0, size, (len(times_s), 2))


def wave(times_s: Array, hz: float, size: float, angle_rad: float = 0.5) -> Array:
    """A rhythm to and fro along one line."""
    return size * np.sin(2 * np.pi * hz * times_s)[:, None] * unit(angle_rad)


def in_steps(recording: Recording, step: float) -> Recording:
    """The output rounded to a step."""
    return replace(recording, xy=np.round(recording.xy / step) * step)


def without(recording: Recording, start_s: float, stop_s: float) -> Recording:
    """A stretch of time left out."""
    keep = (recording.times_s < start_s) | (recording.times_s >= stop_s)
    names = ("cue", "cue_xy", "selected", "stroke", "z")
    kept = {name: column[keep] for name in names if (column := getattr(recording, name)) is not None}
    return replace(recording, times_s=recording.times_s[keep], xy=recording.xy[keep], **kept)


def times(recording: Recording, factor: float | Array) -> Recording:
    """The output so much larger."""
    return replace(recording, xy=recording.xy * factor)


def moved(recording: Recording, way: Array) -> Recording:
    """The output with a movement added to it."""
    return replace(recording, xy=recording.xy + way)


def clipped(recording: Recording, at: float) -> Recording:
    """The output cut at a limit."""
    return replace(recording, xy=np.clip(recording.xy, -at, at))


def joined(first: Recording, then: Recording) -> Recording:
    """One after the other, of recordings without cues."""
    last_s = float(first.times_s[-1]) + 1 / RATE_HZ
    times_s = np.concatenate([first.times_s, last_s + then.times_s])
    return replace(first, times_s=times_s, xy=np.concatenate([first.xy, then.xy]))


def with_word(recording: Recording, word: str, other: str) -> Recording:
    """Another word in the cue column."""
    cue = recording.cue
    return recording if cue is None else replace(recording, cue=np.where(cue == word, other, cue))


def standing(recording: Recording, start_s: float, stop_s: float, at: tuple[float, float] | None = None) -> Recording:
    """The same value from one time to another: the first of them, or the one given."""
    rows = (recording.times_s >= start_s) & (recording.times_s < stop_s)
    xy = recording.xy.copy()
    xy[rows] = xy[rows][0] if at is None else at
    return replace(recording, xy=xy)


def rest(
    rng: np.random.Generator, seconds: float = 8.0, *, size: float = 0.004, at: tuple[float, float] = (0.03, -0.02)
) -> Recording:
    """Nothing but rest."""
    times_s = clock(seconds)
    return Recording("rest", times_s, np.asarray(at) + noise(rng, times_s, size), task="rest")


def releases(
    rng: np.random.Generator, places: list[tuple[float, float]], *, rest_s: float = 1.6, push_s: float = 0.9,
    late_s: float = 0.0, cued: bool = True, size: float = 0.004,
) -> Recording:  # fmt: skip
    """Rests with pushes between them; after each push the stick comes home to the next place, as late as said."""
    piece_s = rest_s + push_s
    times_s = clock(len(places) * piece_s)
    number = np.minimum((times_s / piece_s).astype(int), len(places) - 1)
    within = times_s - number * piece_s
    xy = np.asarray(places)[number] + noise(rng, times_s, size)
    out = minimum_jerk((within - rest_s) / 0.3) * (1 - minimum_jerk((within - rest_s - push_s + 0.25) / 0.25))
    late = np.where((number > 0) & (within < late_s), 1 - within / max(late_s, 1e-9), 0.0)
    directions = np.array([unit(1.1 * place) for place in range(len(places))])
    xy = xy + 0.7 * out[:, None] * directions[number] + 0.5 * late[:, None] * directions[np.maximum(number - 1, 0)]
    cue = np.where(within < rest_s, "rest", "push") if cued else None
    return Recording("releases", times_s, xy, cue=cue, task="rest" if cued else "play")


def pushes(
    rng: np.random.Generator, directions_deg: tuple[float, ...], *, repeats: int = 2, reach: float = 0.8,
    turned_rad: float = 0.0, mirror: tuple[float, float] = (1.0, 1.0), scatter_rad: float = 0.05, across: float = 0.0,
    word: str = "push", size: float = 0.004, push_s: float = 1.1, rest_s: float = 0.6,
) -> Recording:  # fmt: skip
    """Pushes in the directions asked, each as often as said, with rests between them."""
    order = [math.radians(direction) for direction in directions_deg for _ in range(repeats)]
    piece_s = push_s + rest_s
    times_s = clock(len(order) * piece_s + rest_s)
    xy, cue = noise(rng, times_s, size), np.full(len(times_s), "rest", dtype="<U6")
    cue_xy = np.full((len(times_s), 2), np.nan)
    for number, direction in enumerate(order):
        since = times_s - rest_s - number * piece_s
        rows = (since >= 0) & (since < push_s)
        cue[rows], cue_xy[rows] = word, unit(direction)
        there = minimum_jerk((since - 0.2) / 0.25) * (1 - minimum_jerk((since - 0.8) / 0.25))
        way = unit(direction + turned_rad + rng.normal(0, scatter_rad))
        size_now = reach * (1 + 0.1 * math.cos(direction)) * (1 + rng.normal(0, 0.03))
        xy += np.where(since > 0, there, 0.0)[:, None] * size_now * way
        xy += np.where(since > 0, there * np.sin(9 * since), 0.0)[:, None] * across * np.array([-way[1], way[0]])
    xy = np.clip(xy * mirror, -1, 1)
    return Recording("pushes", times_s, xy, cue=cue, cue_xy=cue_xy, task="push")


def pushed_one_way_askew(rng: np.random.Generator) -> Recording:
    """Only the pushes to the right go elsewhere."""
    right = pushes(rng, (0,), turned_rad=0.4)
    other = pushes(rng, (90, 135, 180, 270))
    return Recording(
        "askew", np.concatenate([right.times_s, right.times_s[-1] + 0.01 + other.times_s]), np.concatenate([right.xy, other.xy]),
        cue=np.concatenate([right.cue, other.cue]), cue_xy=np.concatenate([right.cue_xy, other.cue_xy]), task="push",
    )  # fmt: skip


def hold(
    rng: np.random.Generator, levels: tuple[float, ...], *, seconds: float = 3.0, sinking: float = 0.0,
    sway: float = 0.0, tremor_hz: float = 0.0, slow_s: float = 0.4, cued: bool = True,
) -> Recording:  # fmt: skip
    """Positions kept, each some seconds."""
    piece_s = seconds + 1.0
    times_s = clock(len(levels) * piece_s + 1.0)
    xy, cue = noise(rng, times_s), np.full(len(times_s), "rest", dtype="<U6")
    cue_xy = np.full((len(times_s), 2), np.nan)
    for number, level in enumerate(levels):
        since = times_s - 1.0 - number * piece_s
        rows = (since >= 0) & (since < seconds)
        direction = 0.7 * number
        cue[rows], cue_xy[rows] = "hold", level * unit(direction)
        kept = minimum_jerk(since[rows] / slow_s) * level * (1 - sinking * since[rows])
        shake = sway * hump_noise(int(rows.sum()), RATE_HZ, 0.8, 0.3, rng) + wave(times_s[rows], tremor_hz, 0.02)
        xy[rows] += kept[:, None] * unit(direction) + shake
    return Recording("hold", times_s, xy, cue=cue, cue_xy=cue_xy if cued else None, task="hold")


def still(
    rng: np.random.Generator, *rhythms: tuple[float, float], seconds: float = 12.0, sway: float = 0.01,
    rate_hz: float = RATE_HZ, jitter_s: float = 0.0, wander_hz: float = 0.0, task: str = "still", size: float = 0.002,
) -> Recording:  # fmt: skip
    """A place kept with rhythms in it: (Hz, size) each."""
    times_s = clock(seconds, rate_hz)
    if jitter_s:
        times_s = np.sort(times_s + rng.uniform(-jitter_s, jitter_s, len(times_s)))
    xy = np.array([0.1, 0.2]) + noise(rng, times_s, size) + sway * hump_noise(len(times_s), rate_hz, 0.8, 0.4, rng)
    for hz, rhythm in rhythms:
        if wander_hz:
            xy = xy + rhythm * hump_noise(len(times_s), rate_hz, hz, wander_hz, rng)
        else:
            xy = xy + wave(times_s, hz, rhythm, 0.4 + hz)
    return Recording("still", times_s, xy, task=task)


def aim(
    rng: np.random.Generator, *, targets: int = 12, each_s: float = 1.1, scatter: float = 0.04, selecting: bool = False,
    missed: int = 0, one_line: bool = False, width: float = 0.2, wavering: float = 0.0,
) -> Recording:  # fmt: skip
    """Targets that jump; some missed, some selected by a press."""
    times_s = clock(targets * each_s)
    way, cue_xy, here = np.zeros((len(times_s), 2)), np.zeros((len(times_s), 2)), np.zeros(2)
    pressed = np.zeros(len(times_s), dtype=bool)
    for number in range(targets):
        angle = math.pi * number + (0.0 if one_line else 0.6 * (number // 2))
        target, start = 0.5 * unit(angle), number * each_s
        rows = np.flatnonzero((times_s >= start) & (times_s < start + each_s))
        off = 0.25 * unit(angle + 2) if number < missed else rng.normal(0, scatter, 2)
        end, late = target + off, 0.2 + 0.05 * (number % 3)
        since = times_s[rows] - start - late
        bent = wavering * np.sin(6 * math.pi * np.clip(since / 0.45, 0, 1))[:, None] * unit(angle + math.pi / 2)
        way[rows] = here + minimum_jerk(since / 0.45)[:, None] * (end - here) + bent
        cue_xy[rows], here = target, end
        if selecting and number % 5 != 3:
            pressed[rows[since > 0.55 + 0.02 * (number % 4)][:4]] = True
    xy = way + noise(rng, times_s)
    return Recording(
        "aim", times_s, xy, cue_xy=cue_xy, cue_width=width, task="aim", selected=pressed if selecting else None
    )


def follow(
    rng: np.random.Generator, *, late_s: float = 0.3, gain: float = 0.9, seconds: float = 14.0, one_axis: bool = False,
    repeats: bool = False, waits_s: float = 0.0, tremor: tuple[float, float] = (0.0, 0.0),
) -> Recording:  # fmt: skip
    """A target followed so late and so far."""
    times_s = clock(seconds)

    def target(at: Array) -> Array:
        if repeats:
            return 0.5 * np.column_stack([np.sin(2 * np.pi * 0.8 * at), np.cos(2 * np.pi * 0.8 * at)])
        x = 0.3 * np.sin(0.9 * at) + 0.2 * np.sin(2.3 * at + 1)
        y = 0.3 * np.sin(1.3 * at + 2) + 0.2 * np.sin(1.9 * at)
        return np.column_stack([x, 0 * y if one_axis else y])

    xy = gain * target(times_s - late_s) + 0.01 * hump_noise(len(times_s), RATE_HZ, 0.7, 0.3, rng) + noise(rng, times_s)
    xy = xy + wave(times_s, *tremor)
    xy[times_s < waits_s] = 0.01 * rng.normal(0, 0.2, (int((times_s < waits_s).sum()), 2))
    return Recording("follow", times_s, xy, cue_xy=target(times_s), task="follow")


def laps(
    rng: np.random.Generator, *, turns: float = 3.0, lap_s: float = 2.5, sense: int = 1, reach: float = 0.9,
    back: bool = False,
) -> Recording:  # fmt: skip
    """Laps along the edge in one sense, or there and back."""
    times_s = clock(turns * lap_s)
    turned = sense * 2 * np.pi * times_s / lap_s
    if back:
        turned = np.where(times_s < times_s[-1] / 2, turned, turned[-1] - turned)
    radius = reach * (1 + 0.1 * np.cos(turned)) * minimum_jerk(times_s / 0.4) * (1 + rng.normal(0, 0.003, len(times_s)))
    xy = np.clip(radius[:, None] * np.column_stack([np.cos(turned), np.sin(turned)]), -1, 1)
    return Recording("laps", times_s, xy, task="rim")


def play(
    rng: np.random.Generator, *, seconds: float = 15.0, flicks: float = 0.0, past: float = 0.0, hz: float = 0.5,
    size: float = 0.4,
) -> Recording:  # fmt: skip
    """Wandering and rests by turns, with flicks and springing past the centre."""
    times_s = clock(seconds)
    away = np.clip(1.6 * np.sin(2 * np.pi * times_s / 5), 0, 1)
    xy = size * away[:, None] * hump_noise(len(times_s), RATE_HZ, hz, 0.2, rng) + noise(rng, times_s, 0.003)
    if flicks:
        for number, start in enumerate(np.arange(0.8, seconds - 0.5, 1.1)):
            since = times_s - start
            out = np.where((since > 0) & (since < 0.12), np.sin(np.pi * np.clip(since / 0.12, 0, 1)), 0.0)
            back = np.where((since >= 0.12) & (since < 0.2), np.sin(np.pi * np.clip((since - 0.12) / 0.08, 0, 1)), 0.0)
            held = np.where((since > 0.04) & (since < 0.07), 1.0, out)
            xy += (flicks * held - past * (1 + 0.1 * number) * back)[:, None] * unit(2.1 * number)
    return Recording("play", times_s, np.clip(xy, -1, 1), task="play")


def bursting(recording: Recording, every_s: float = 2.7, lasts_s: float = 0.2, size: float = 0.5) -> Recording:
    """Involuntary jerks."""
    xy = recording.xy.copy()
    for number, start in enumerate(np.arange(1.3, float(recording.times_s[-1]) - lasts_s, every_s)):
        rows = (recording.times_s >= start) & (recording.times_s < start + lasts_s * (1 + number % 2))
        xy[rows] += size * unit(2.0 * number)
    return replace(recording, xy=np.clip(xy, -1, 1))


def on_limits(word: str) -> Recording:
    """A staircase in twentieths of full output, each step a number of tenths of a second: many limits are met exactly."""
    outs = [
        0.0,
        0.05,
        0.0,
        0.1,
        0.0,
        0.2,
        0.0,
        0.25,
        0.0,
        0.35,
        0.0,
        0.5,
        0.0,
        0.8,
        0.0,
        0.95,
        0.0,
        1.0,
        0.0,
        -0.5,
        0.0,
        0.5,
    ]
    lasts = [
        1.5,
        0.4,
        0.4,
        0.4,
        0.5,
        0.1,
        0.4,
        0.2,
        1.5,
        0.2,
        0.4,
        0.1,
        0.4,
        0.2,
        0.4,
        2.0,
        2.0,
        0.2,
        0.5,
        0.2,
        0.1,
        1.0,
    ]
    rows = [round(100 * lasts_s) for lasts_s in lasts]
    x = np.repeat(outs, rows)
    y = np.repeat([0.0 if number % 4 else 0.05 for number in range(len(outs))], rows)
    times_s = np.arange(len(x)) / 100
    cue = np.repeat(["rest" if out == 0 else word for out in outs], rows) if word not in ("play", "rest") else None
    cue_xy = None if cue is None else np.where((cue == word)[:, None], np.column_stack([np.sign(x), 0 * x]), np.nan)
    return Recording("limits", times_s, np.column_stack([x, y]), cue=cue, cue_xy=cue_xy, task=word)


def zeroed(recording: Recording, below: float, *, radial: bool = False) -> Recording:
    """A dead zone applied before the recording."""
    xy = recording.xy
    small = (np.hypot(*xy.T) < below)[:, None] if radial else np.abs(xy) < below
    return replace(recording, xy=np.where(small, 0.0, xy))


def with_third(recording: Recording, rng: np.random.Generator) -> Recording:
    """A third axis with a rhythm of its own, some of its cells empty."""
    z = 0.05 * np.sin(2 * np.pi * 6.3 * recording.times_s) + rng.normal(0, 0.004, len(recording.times_s))
    return replace(recording, z=z)


def one_axis(recording: Recording, axis: int = 0) -> Recording:
    """The other axis was not recorded."""
    xy = recording.xy.copy()
    xy[:, 1 - axis] = np.nan
    return replace(recording, xy=xy)


def foreign(recording: Recording, factor: float = 640.0) -> Recording:
    """In pixels."""
    cue_xy = None if recording.cue_xy is None else recording.cue_xy * factor
    width = None if recording.cue_width is None else recording.cue_width * factor
    return replace(recording, xy=recording.xy * factor + 100, cue_xy=cue_xy, cue_width=width, unit="px")


def holey(recording: Recording, rng: np.random.Generator, share: float) -> Recording:
    """Empty cells here and there."""
    xy = recording.xy.copy()
    xy[rng.random(len(xy)) < share] = np.nan
    return replace(recording, xy=xy)


def strokes(rng: np.random.Generator) -> Recording:
    """Drawing with the pen up in between."""
    recording = laps(rng, turns=4, lap_s=2.0)
    number = (recording.times_s / 1.3).astype(np.int64)
    up = recording.times_s % 1.3 < 0.2
    return replace(recording, stroke=np.where(up, -1, number), task="play")


def let_go_while(recording: Recording, *starts_s: float, lasts_s: float = 1.2) -> Recording:
    """The hand comes off and the stick springs home."""
    xy = recording.xy.copy()
    for start in starts_s:
        since = recording.times_s - start
        kept = 1 - minimum_jerk(since / 0.08) * (1 - minimum_jerk((since - lasts_s) / 0.3))
        xy *= np.where(since > 0, kept, 1.0)[:, None]
    return replace(recording, xy=xy)


def mixed(rng: np.random.Generator) -> Recording:
    """Tasks of every kind one after the other, drawn by lot, with what goes wrong drawn as well."""
    kinds: list[Made] = [
        lambda rng: releases(rng, [(0.02, 0.01)] * 3, late_s=float(rng.uniform(0, 0.8))),
        lambda rng: pushes(rng, tuple(rng.choice(np.arange(0, 360, 45), 3, replace=False)), turned_rad=float(rng.normal(0, 0.5))),
        lambda rng: hold(rng, tuple(rng.uniform(0.2, 0.8, 2)), sinking=float(rng.choice([0, 0.04])), sway=0.02),
        lambda rng: laps(rng, sense=int(rng.choice([-1, 1])), turns=float(rng.uniform(1.5, 3.2))),
        lambda rng: play(rng, seconds=7.0, flicks=float(rng.choice([0, 0.9])), past=0.15),
        lambda rng: still(rng, (float(rng.uniform(2, 12)), 0.03), seconds=6.0),
    ]  # fmt: skip
    parts = [kinds[int(kind)](rng) for kind in rng.choice(len(kinds), 3, replace=False)]
    starts = np.cumsum([0.0, *(len(part.times_s) / RATE_HZ for part in parts)])
    empty = np.array([np.nan, np.nan])
    recording = Recording(
        "mixed",
        np.concatenate([start + part.times_s for start, part in zip(starts, parts, strict=False)]),
        np.concatenate([part.xy for part in parts]) + rng.normal(0, 0.03, 2),
        cue=np.concatenate([np.full(len(p.times_s), p.task) if p.cue is None else p.cue for p in parts]),
        cue_xy=np.concatenate([np.tile(empty, (len(p.times_s), 1)) if p.cue_xy is None else p.cue_xy for p in parts]),
    )
    wrong: list[Callable[[Recording], Recording]] = [
        lambda one: in_steps(one, 1 / 32),
        lambda one: without(one, 3.0, 3.6),
        lambda one: bursting(one, every_s=4.1),
        lambda one: holey(one, rng, 0.02),
        lambda one: replace(one, times_s=np.round(one.times_s + rng.uniform(0, 0.004, len(one.times_s)), 3)),
        lambda one: zeroed(one, 0.06, radial=bool(rng.integers(2))),
        lambda one: clipped(times(one, 1.4), 0.9),
        lambda one: replace(one, xy=one.xy[:, ::-1]),
    ]
    for which in rng.choice(len(wrong), int(rng.integers(0, 3)), replace=False):
        recording = wrong[int(which)](recording)
    return recording


RECORDINGS: dict[str, Made] = {
    "rest of one level": lambda rng: standing(rest(rng), 0, 9),
    "rest at nothing": lambda rng: standing(rest(rng), 0, 9, (0.0, 0.0)),
    "rest in coarse steps": lambda rng: in_steps(rest(rng, size=0.01), 1 / 64),
    "rest in few levels": lambda rng: in_steps(rest(rng, size=0.004), 1 / 100),
    "rest that wanders": lambda rng: moved(rest(rng, 30.0), clock(30.0)[:, None] * [0.004, -0.002]),
    "rest on one axis": lambda rng: one_axis(rest(rng, 12.0)),
    "rest on the other axis in steps": lambda rng: one_axis(in_steps(rest(rng, 12.0), 1 / 128), 1),
    "rest in pixels": lambda rng: foreign(rest(rng)),
    "rest far out": lambda rng: rest(rng, at=(0.3, -0.2)),
    "two releases": lambda rng: releases(rng, [(0.01, 0.0), (-0.02, 0.01)]),
    "four releases in steps": lambda rng: in_steps(releases(rng, [(0.01, 0), (0.012, 0), (0.03, 0), (0.01, 0.02)]), 1 / 40),
    "five releases on one level": lambda rng: in_steps(releases(rng, [(0.0, 0.0)] * 5, size=0.001), 1 / 20),
    "eight releases": lambda rng: releases(rng, [tuple(place) for place in rng.normal(0, 0.02, (8, 2))], rest_s=1.0),
    "thirteen releases that wander": lambda rng: releases(rng, [(0.01 * n, -0.006 * n) for n in range(13)]),
    "leaned on at start": lambda rng: releases(rng, [(0.3, 0.1), (0.01, 0), (0.02, 0.01), (0.0, 0.02)]),
    "leaned on throughout": lambda rng: releases(rng, [(0.15, 0.1), (0.16, 0.1), (0.15, 0.11)]),
    "one of five held": lambda rng: releases(rng, [(0.0, 0.0), (0.02, 0), (0.4, 0.1), (0.01, 0.01), (0.0, 0.0)]),
    "late releases": lambda rng: releases(rng, [(0.0, 0.0)] * 5, late_s=0.9),
    "releases never over": lambda rng: releases(rng, [(0.0, 0.0)] * 4, rest_s=0.7, late_s=0.7),
    "short rests": lambda rng: releases(rng, [(0.01, 0.0)] * 6, rest_s=0.6),
    "asked to rest, and pushing": lambda rng: replace(releases(rng, [(0.01, 0)] * 5, rest_s=0.8), cue=None, task="rest"),
    "releases nobody asked for": lambda rng: releases(rng, [(0.02, 0.01)] * 6, cued=False),
    "small pushes held": lambda rng: releases(rng, [(0, 0), (0.02, 0), (0, 0.01), (0.17, 0.15), (0, 0), (0.01, 0.01), (0, 0)], cued=False),
    "releases on one axis": lambda rng: one_axis(releases(rng, [(0.02, 0.01)] * 4)),
    "releases with a tremor": lambda rng: releases(rng, [(0.0, 0.0)] * 4, size=0.03),
    "pushes turned": lambda rng: pushes(rng, (0, 90, 180, 270), turned_rad=0.3),
    "pushes turned a quarter": lambda rng: pushes(rng, (0, 90, 180, 270), turned_rad=math.pi / 2),
    "pushes turned far": lambda rng: pushes(rng, (0, 90, 180, 270), turned_rad=1.1),
    "pushes half a turn": lambda rng: pushes(rng, (0, 90, 180, 270), turned_rad=3.1, scatter_rad=0.1),
    "pushes mirrored": lambda rng: pushes(rng, (0, 45, 90, 180, 270), mirror=(-1, 1)),
    "pushes mirrored and turned": lambda rng: pushes(rng, (0, 45, 90, 200, 300), mirror=(1, -1), turned_rad=0.3),
    "pushes anywhere": lambda rng: pushes(rng, (0, 60, 120, 180, 240, 300), scatter_rad=1.5),
    "pushes rather scattered": lambda rng: pushes(rng, (0, 60, 120, 180, 240, 300), scatter_rad=0.5, repeats=1),
    "pushes round about": lambda rng: pushes(rng, (0, 90, 180, 270), scatter_rad=3.0, repeats=1),
    "pushes round about in three directions": lambda rng: pushes(rng, (0, 120, 240), scatter_rad=2.5, repeats=1),
    "pushes on one line": lambda rng: pushes(rng, (0, 180)),
    "pushes in two directions": lambda rng: pushes(rng, (0, 90), turned_rad=0.2),
    "two pushes": lambda rng: pushes(rng, (0, 90), repeats=1, turned_rad=0.2),
    "one push each": lambda rng: pushes(rng, (0, 72, 144, 216, 288), repeats=1, across=0.3),
    "pushes across": lambda rng: pushes(rng, (0, 90, 200), across=0.4),
    "weak pushes": lambda rng: pushes(rng, (0, 90, 180, 270), reach=0.13),
    "pushes one way askew": pushed_one_way_askew,
    "pushes at the limit": lambda rng: pushes(rng, (0, 90, 180, 270), reach=1.5, scatter_rad=0.0),
    "pushes clipped": lambda rng: clipped(pushes(rng, (0, 90, 180, 270)), 0.6),
    "pushes in pixels": lambda rng: foreign(pushes(rng, (0, 90, 180, 270))),
    "pushes on one axis": lambda rng: one_axis(pushes(rng, (0, 180))),
    "pushes let go": lambda rng: let_go_while(pushes(rng, (0, 90, 180, 270), push_s=2.6), 1.2, 7.6),
    "pushes with jerks": lambda rng: bursting(pushes(rng, (0, 90, 180, 270))),
    "pushes as holds": lambda rng: pushes(rng, (0, 90, 225), word="hold", push_s=2.5),
    "holds": lambda rng: hold(rng, (0.3, 0.5, 0.7)),
    "holds that sink": lambda rng: hold(rng, (0.4, 0.6), sinking=0.06, seconds=4.0),
    "holds that sway": lambda rng: hold(rng, (0.4, 0.6), sway=0.03, seconds=3.5),
    "holds reached slowly": lambda rng: hold(rng, (0.4, 0.6), slow_s=2.0, seconds=4.5),
    "short holds": lambda rng: hold(rng, (0.4, 0.5, 0.6), seconds=1.4),
    "holds without a target": lambda rng: hold(rng, (0.5, 0.3), cued=False, tremor_hz=5.0),
    "holds in steps": lambda rng: in_steps(hold(rng, (0.5, 0.3), sinking=0.03), 1 / 16),
    "holds let go": lambda rng: let_go_while(hold(rng, (0.5, 0.6), seconds=5.0), 3.5, 9.0),
    "holds unmoved": lambda rng: standing(standing(hold(rng, (0.5, 0.6)), 1.4, 4.0, (0.5, 0.0)), 0.0, 1.0, (0.01, 0.0)),
    "still, quiet": lambda rng: still(rng),
    "still, tremor at 2.2 Hz": lambda rng: still(rng, (2.2, 0.03), sway=0.003),
    "still, tremor at the lower end": lambda rng: still(rng, (1.98, 0.03), (2.06, 0.03), sway=0.0),
    "still, tremor that wanders at the lower end": lambda rng: still(rng, (2.1, 0.03), sway=0.0, wander_hz=0.15),
    "still, tremor at the upper end": lambda rng: still(rng, (15.1, 0.02), wander_hz=0.2, sway=0.003),
    "still, tremor at the end of 30 Hz": lambda rng: still(rng, (12.1, 0.03), rate_hz=30.0, wander_hz=0.15, sway=0.003),
    "still, two rhythms by turns": lambda rng: joined(still(rng, (2.3, 0.03), sway=0.0), still(rng, (3.4, 0.03), sway=0.0)),
    "still, tremor at 5 Hz": lambda rng: still(rng, (5.0, 0.03)),
    "still, tremor at 12 Hz": lambda rng: still(rng, (12.0, 0.02)),
    "still, tremor at 14.8 Hz": lambda rng: still(rng, (14.8, 0.03)),
    "still, faster than a hand": lambda rng: still(rng, (17.5, 0.03)),
    "still, at the edge of 30 Hz": lambda rng: still(rng, (11.8, 0.03), rate_hz=30.0, seconds=20.0),
    "still, two peaks": lambda rng: still(rng, (4.0, 0.03), (8.7, 0.02)),
    "still, harmonics": lambda rng: still(rng, (3.1, 0.04), (6.2, 0.02), (9.3, 0.01)),
    "still, a tremor that wanders": lambda rng: still(rng, (5.5, 0.03), wander_hz=0.9, seconds=20.0),
    "still, a broad hump": lambda rng: still(rng, (6.5, 0.04), wander_hz=1.6, sway=0.0, seconds=20.0),
    "still, uneven stamps": lambda rng: still(rng, (5.0, 0.03), jitter_s=0.004),
    "still, very uneven stamps": lambda rng: still(rng, (5.0, 0.03), jitter_s=0.02),
    "still, 15 samples a second": lambda rng: still(rng, (3.0, 0.03), rate_hz=15.0, seconds=20.0),
    "still, 4 samples a second": lambda rng: still(rng, (1.0, 0.03), rate_hz=4.0, seconds=20.0),
    "still, one sample a second": lambda rng: still(rng, rate_hz=1.0, seconds=20.0),
    "still, 3 seconds": lambda rng: still(rng, (5.0, 0.03), seconds=3.0),
    "still, with a third axis": lambda rng: with_third(still(rng, (5.0, 0.02)), rng),
    "still, tremor below a step": lambda rng: in_steps(still(rng, (5.0, 0.004), sway=0.03), 1 / 32),
    "still, one axis": lambda rng: one_axis(still(rng, (5.0, 0.03))),
    "still, violent in the middle": lambda rng: times(still(rng, (5.0, 0.02)), 1 + 8.0 * (np.abs(clock(12.0) - 6) < 2)[:, None]),
    "still with jerks": lambda rng: bursting(still(rng, seconds=10.0)),
    "still, in pixels": lambda rng: foreign(still(rng, (5.0, 0.03))),
    "aiming": lambda rng: aim(rng),
    "aiming by press": lambda rng: aim(rng, selecting=True, missed=3),
    "aiming, misses": lambda rng: aim(rng, missed=4, scatter=0.07),
    "aiming, wavering": lambda rng: aim(rng, wavering=0.08, width=0.3),
    "aiming on one line": lambda rng: aim(rng, one_line=True, targets=8),
    "aiming at few targets": lambda rng: aim(rng, targets=4),
    "aiming without widths": lambda rng: replace(aim(rng, targets=6), cue_width=None),
    "aiming without places": lambda rng: replace(aim(rng, targets=6), cue_xy=None),
    "aiming with a gap": lambda rng: without(aim(rng), 4.0, 5.0),
    "aiming in pixels": lambda rng: foreign(aim(rng)),
    "following": lambda rng: follow(rng),
    "following ahead": lambda rng: follow(rng, late_s=-0.2, gain=1.1),
    "following far behind": lambda rng: follow(rng, late_s=0.95, gain=0.5),
    "following one axis": lambda rng: follow(rng, one_axis=True),
    "following in circles": lambda rng: follow(rng, repeats=True),
    "following after waiting": lambda rng: follow(rng, waits_s=2.5),
    "following, let go": lambda rng: let_go_while(follow(rng, seconds=18.0), 4.0, 11.0),
    "following, frozen": lambda rng: standing(follow(rng), 5.0, 8.0),
    "following with a tremor": lambda rng: follow(rng, tremor=(5.2, 0.05)),
    "following without a target": lambda rng: replace(follow(rng, seconds=8.0), cue_xy=None),
    "following with jerks": lambda rng: bursting(follow(rng)),
    "laps": lambda rng: laps(rng),
    "laps the other way": lambda rng: laps(rng, sense=-1, turns=4.0),
    "laps there and back": lambda rng: laps(rng, back=True, turns=4.0),
    "one lap and a half": lambda rng: laps(rng, turns=1.5, lap_s=4.0),
    "half a lap": lambda rng: laps(rng, turns=0.5, lap_s=8.0),
    "laps nearly three": lambda rng: laps(rng, turns=2.95),
    "laps on one axis": lambda rng: one_axis(laps(rng)),
    "laps at the limit": lambda rng: laps(rng, reach=1.6),
    "laps in pixels": lambda rng: foreign(laps(rng)),
    "play": lambda rng: play(rng),
    "play, flicks and springing back": lambda rng: play(rng, flicks=0.95, past=0.25),
    "play, small": lambda rng: play(rng, size=0.06),
    "play to and fro": lambda rng: moved(play(rng, size=0.0), wave(clock(15.0), 1.0, 0.5) + wave(clock(15.0), 5.3, 0.05)),
    "play at 2.6 Hz": lambda rng: moved(play(rng, size=0.0), wave(clock(15.0), 2.6, 0.5) + wave(clock(15.0), 7.0, 0.1)),
    "play with multiples": lambda rng: moved(play(rng, size=0.0), 0.4 * np.sign(wave(clock(15.0), 1.3, 1.0))),
    "play too large": lambda rng: times(play(rng), 3.0),
    "play unplugged": lambda rng: standing(play(rng, size=0.8, hz=0.2), 6.0, 7.0, (0.0, 0.0)),
    "play cut while away": lambda rng: without(replace(laps(rng, turns=5), task="play"), 3.0, 4.2),
    "play not yet begun": lambda rng: standing(replace(laps(rng, turns=5), task="play"), 0.0, 0.8, (0.0, 0.0)),
    "play frozen": lambda rng: standing(play(rng, size=0.8, hz=0.2), 6.0, 8.5, (0.4, 0.3)),
    "play with a square dead zone": lambda rng: zeroed(play(rng), 0.08),
    "play with a round dead zone": lambda rng: zeroed(play(rng), 0.1, radial=True),
    "play with a dead zone in steps": lambda rng: zeroed(in_steps(play(rng), 1 / 64), 0.1),
    "play cleaned at rest": lambda rng: standing(zeroed(play(rng, size=1.0), 0.005, radial=True), 0.0, 3.0, (0.0, 0.0)),
    "play in pixels": lambda rng: foreign(play(rng)),
    "play with holes": lambda rng: holey(play(rng), rng, 0.08),
    "play with stamps twice": lambda rng: replace(play(rng), times_s=np.repeat(clock(15.0)[::2], 2)),
    "play with stamps of 10 ms": lambda rng: replace(play(rng), times_s=np.round(1.3 * clock(15.0) / 2, 2)),
    "play of nothing known": lambda rng: replace(play(rng, seconds=6.0), task="jumping"),
    "play of words unknown": lambda rng: with_word(releases(rng, [(0, 0)] * 3), "rest", "rests"),
    "drawing": strokes,
    "limits met, rest": lambda _: on_limits("rest"),
    "limits met, push": lambda _: on_limits("push"),
    "limits met, hold": lambda _: on_limits("hold"),
    "limits met, play": lambda _: on_limits("play"),
    "limits met, rim": lambda _: on_limits("rim"),
    **{f"mixed {number}": mixed for number in range(12)},
}  # fmt: skip
"""How each is made, from its own generator."""


def made(name: str) -> Recording:
    """One of them."""
    return RECORDINGS[name](np.random.default_rng([17, *name.encode()]))
