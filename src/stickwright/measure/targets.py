"""Where targets stand, how they move, and how a stick moves a cursor.

All places are shares of full output, x right and y forward, the middle at 0.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.capture_problems import CaptureProblems
from stickwright.codes.message import Name, message
from stickwright.errors import BadInput, Problem

__all__ = [
    "Cursor",
    "Mapping",
    "SumOfSines",
    "TargetReach",
    "cursor_path",
    "distance_for",
    "reach_towards",
    "ring_of_targets",
    "sum_of_sines",
    "width_for",
]  # fmt: skip

Array = NDArray[np.float64]
Mapping = Literal["position", "velocity"]
Place = tuple[float, float]

PRIMES = {"calm": ((3, 7, 13), (5, 11, 17)), "brisk": ((5, 13, 29), (7, 17, 31))}
"""Whole turns of each sine in the time of the task, sideways and forward: different primes, so that none is a multiple of
another and no two axes ever move alike."""

ROOM = 0.9
"""Share of the player's own reach that a target keeps to, so that its far side can be reached too."""


@dataclass(frozen=True)
class TargetReach:
    """How far the player gets, by direction.

    Parameters
    ----------
    direction_rad : tuple of float
        Rising, 0 right, pi/2 forward.
    share : tuple of float
        Of full output, one for each direction.
    """

    direction_rad: tuple[float, ...]
    share: tuple[float, ...]


def reach_towards(reach: TargetReach | None, direction_rad: ArrayLike) -> Array:
    """Reach in any direction, straight between those measured; full output where nothing is known.

    Parameters
    ----------
    reach : TargetReach or None
    direction_rad : array

    Returns
    -------
    array
        Share of full output, at most 1.

    Examples
    --------
    >>> reach_towards(TargetReach((0.0, math.pi), (0.4, 0.8)), [0.0, math.pi / 2]).round(2).tolist()
    [0.4, 0.6]
    """
    asked = np.asarray(direction_rad, dtype=np.float64)
    if reach is None or not reach.direction_rad:
        return np.ones(asked.shape)
    return np.clip(np.interp(asked, reach.direction_rad, reach.share, period=2 * math.pi), 0.0, 1.0)


def distance_for(bits: float, width: float) -> float:
    """Distance between targets of a width for a wanted index of difficulty.

    Parameters
    ----------
    bits : float
        Index of difficulty, above 0.
    width : float
        Of the target.

    Returns
    -------
    float
        Same unit as `width`.

    Notes
    -----
    Shannon form, distance = width (2^bits - 1) [iso-9241-411].

    Examples
    --------
    >>> distance_for(4.0, 20.0)
    300.0
    """
    return width * (math.exp2(bits) - 1.0)


def width_for(bits: float, distance: float) -> float:
    """Width of a target at a distance for a wanted index of difficulty.

    Parameters
    ----------
    bits : float
        Index of difficulty, above 0.
    distance : float
        From target to target.

    Returns
    -------
    float
        Same unit as `distance`.

    Notes
    -----
    Shannon form [iso-9241-411].

    Examples
    --------
    >>> width_for(4.0, 300.0)
    20.0
    """
    return distance / (math.exp2(bits) - 1.0)


def ring_of_targets(count: int, distance: float, *, first_rad: float = math.pi / 2) -> tuple[Place, ...]:
    """Targets round a circle, in the order in which they are asked: each across from the one before.

    Parameters
    ----------
    count : int
        Odd, 3 or more.
    distance : float
        From each target to the next one asked, centre to centre.
    first_rad : float, default pi/2
        Where the first target stands.

    Returns
    -------
    tuple of (x, y)
        `count` + 1 places: the last is the first again, so that every target is aimed at from across.

    Raises
    ------
    BadInput
        An even count, fewer than three, or a distance of 0 or less.

    Notes
    -----
    Source: [iso-9241-411], multi-directional tapping. With an odd count a step of (count + 1)/2 places visits every target
    once and all movements are equally long: the circle's diameter times cos(pi/(2 count)).

    Examples
    --------
    >>> places = ring_of_targets(5, 1.0)
    >>> [round(math.dist(a, b), 6) for a, b in zip(places, places[1:])]
    [1.0, 1.0, 1.0, 1.0, 1.0]
    """
    problems = []
    if count < 3 or count % 2 == 0:
        problems.append(
            Problem(
                "targets",
                str(count),
                message(CaptureProblems.expected, what="odd"),
                message(CaptureProblems.remedy, what="nine"),
            )
        )
    if not (math.isfinite(distance) and distance > 0):
        problems.append(Problem("distance", f"{distance:g}", message(CaptureProblems.expected, what="length_above_0")))
    if problems:
        raise BadInput(problems)
    radius = distance / 2 / math.cos(math.pi / (2 * count))
    step = (count + 1) // 2
    angles = [first_rad - 2 * math.pi * (k * step % count) / count for k in range(count + 1)]
    return tuple((radius * math.cos(angle), radius * math.sin(angle)) for angle in angles)


@dataclass(frozen=True)
class SumOfSines:
    """A path made of sines on each axis, the same for the same numbers.

    Parameters
    ----------
    frequency_hz, amplitude, phase_rad : tuple of tuple of float
        Two rows, sideways and forward.
    """

    frequency_hz: tuple[tuple[float, ...], tuple[float, ...]]
    amplitude: tuple[tuple[float, ...], tuple[float, ...]]
    phase_rad: tuple[tuple[float, ...], tuple[float, ...]]

    def at(self, times_s: ArrayLike) -> Array:
        """Places at these times, shape (n, 2)."""
        times = np.atleast_1d(np.asarray(times_s, dtype=np.float64))
        rows = zip(self.frequency_hz, self.amplitude, self.phase_rad, strict=True)
        columns = [
            np.sin(2 * math.pi * np.outer(times, frequency) + np.asarray(phase)) @ np.asarray(amplitude)
            for frequency, amplitude, phase in rows
        ]
        return np.column_stack(columns)


def sum_of_sines(
    seed: int, *, lasts_s: float = 60.0, pace: str = "calm", largest: float = 0.8, reach: TargetReach | None = None
) -> SumOfSines:
    """A calm path to follow that cannot be learnt by heart.

    Parameters
    ----------
    seed : int
        For the phases.
    lasts_s : float, default 60
        Each sine makes a whole number of turns in this time.
    pace : {"calm", "brisk"}
        Slow sines, or quicker ones.
    largest : float, default 0.8
        Farthest place from the middle, share of full output (of the player's reach where that is known).
    reach : TargetReach or None
        The player's own reach: the path keeps within it in every direction.

    Returns
    -------
    SumOfSines
        Three sines on each axis, the slower the larger.

    Raises
    ------
    BadInput
        A pace that is not known, a time of 0 or less, or a size outside 0 to 1.

    Examples
    --------
    >>> path = sum_of_sines(3)
    >>> bool(np.hypot(*path.at(np.arange(0, 60, 0.02)).T).max() <= 0.8)
    True
    """
    problems = []
    if pace not in PRIMES:
        problems.append(
            Problem("pace", f"'{pace}'", message(CaptureProblems.one_of, names=tuple(Name(each) for each in PRIMES)))
        )
    if not (math.isfinite(lasts_s) and lasts_s > 0):
        problems.append(Problem("duration", f"{lasts_s:g} s", message(CaptureProblems.expected, what="time_above_0")))
    if not 0 < largest <= 1:
        problems.append(Problem("size", f"{largest:g}", message(CaptureProblems.expected, what="share")))
    if problems:
        raise BadInput(problems)
    rng = np.random.default_rng(seed)
    turns = PRIMES[pace]
    phases = tuple(tuple(rng.uniform(0, 2 * math.pi, len(row)).tolist()) for row in turns)
    frequency = tuple(tuple(each / lasts_s for each in row) for row in turns)
    plain = SumOfSines(frequency, tuple(tuple(row[0] / each for each in row) for row in turns), phases)  # type: ignore[arg-type]
    places = plain.at(np.linspace(0.0, lasts_s, 40_001))
    limit = largest * reach_towards(reach, np.arctan2(places[:, 1], places[:, 0]))
    size = float(np.min(limit / np.maximum(np.hypot(*places.T), 1e-9))) * (1 - 1e-3)  # between the places it bulges
    amplitude = tuple(tuple(size * each for each in row) for row in plain.amplitude)
    return SumOfSines(plain.frequency_hz, amplitude, plain.phase_rad)  # type: ignore[arg-type]


@dataclass(frozen=True)
class Cursor:
    """Where the cursor is, and how the stick moves it.

    Parameters
    ----------
    x, y : float
        Place.
    mapping : {"position", "velocity"}
        The stick's place is the cursor's place; or the stick's place is the cursor's speed.
    gain_per_s : float, default 1.0
        With velocity: field half-widths a second at full output.
    """

    x: float = 0.0
    y: float = 0.0
    mapping: Mapping = "position"
    gain_per_s: float = 1.0

    def moved(self, xy: Sequence[float], dt_s: float) -> Cursor:
        """The cursor after the stick has been at `xy` for `dt_s`; it stays in the field."""
        x, y = (float(each) if math.isfinite(each) else math.nan for each in xy)
        if math.isnan(x) or math.isnan(y):
            return self
        if self.mapping == "position":
            return Cursor(x, y, self.mapping, self.gain_per_s)
        step = self.gain_per_s * max(0.0, min(dt_s, LONGEST_STEP_S))
        return Cursor(_within(self.x + step * x), _within(self.y + step * y), self.mapping, self.gain_per_s)


LONGEST_STEP_S = 0.25
"""A pause in the samples moves no cursor: longer than this is a gap."""


def _within(value: float) -> float:
    return max(-1.0, min(1.0, value))


def cursor_path(times_s: ArrayLike, xy: ArrayLike, start: Cursor) -> Array:
    """Cursor at each sample.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    xy : array, shape (n, 2)
        Stick.
    start : Cursor
        Where it stands at the first sample.

    Returns
    -------
    array, shape (n, 2)

    Examples
    --------
    >>> cursor_path([0.0, 0.1, 0.2], [[1, 0], [1, 0], [1, 0]], Cursor(mapping="velocity")).round(2).tolist()
    [[0.0, 0.0], [0.1, 0.0], [0.2, 0.0]]
    """
    times, places = np.asarray(times_s, dtype=np.float64), np.asarray(xy, dtype=np.float64)
    path = np.empty((times.size, 2))
    cursor, before = start, times[0] if times.size else 0.0
    for k in range(times.size):
        cursor = cursor.moved(places[k], float(times[k] - before))
        before = times[k]
        path[k] = cursor.x, cursor.y
    return path
