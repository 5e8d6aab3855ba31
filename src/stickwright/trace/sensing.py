"""What the output itself gives away: steps, a dead zone already applied, a limit, a stick asleep or unplugged.

Rules of this file: a check returns what it found together with the finding about it; nothing is cut
here, `recording.cleaned` does that.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, fields, replace
from typing import Any, Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.cleaning import Cleaning
from stickwright.codes.message import Message, Text, message
from stickwright.codes.outputs import Outputs
from stickwright.codes.ways import Way
from stickwright.model.recorded import Finding
from stickwright.model.recording import CUE_CODES
from stickwright.trace.stamps import GAP_S

__all__ = [
    "CUES", "FiniteSamples", "OutputSteps", "clipping", "cue_code", "dead_stretches", "output", "rest_cleaned", "runs", "steps",
]  # fmt: skip

CUES = tuple(word for word in CUE_CODES if word != "press")

FROZEN_S = 2.0
"""Identical samples for this long while the cue moves: the stick went to sleep; common practice."""

CLIPPED_SHARE = 0.05
"""Share of samples at an exact limit that makes the range beyond it unknown; common practice."""


@dataclass(frozen=True, eq=False)
class FiniteSamples:
    """Finite samples in order of time, before anything is concluded from them.

    Parameters
    ----------
    times_s : array, shape (n,)
        Strictly increasing.
    xy : array, shape (n, 2)
        Finite; zeros on an axis that was not recorded.
    cue : array of int8, shape (n,)
        Numbers of the cue words: `stickwright.model.recording.CUE_CODES`.
    cue_xy : array, shape (n, 2), or None
        Where the player was asked to be.
    recorded : (bool, bool)
        Whether x and y were recorded.
    scale : float
        Full output, or half the widest range in a foreign unit.
    unit : str
        'share', or a foreign unit.
    selected : array of bool, shape (n,), or None
        Where a target was being selected.
    stroke : array of int, shape (n,), or None
        Number of the stroke of a drawing, below 0 between strokes.
    z : array, shape (n,), or None
        Third axis of a sensor.
    """

    times_s: NDArray[np.float64]
    xy: NDArray[np.float64]
    cue: NDArray[np.int8]
    cue_xy: NDArray[np.float64] | None
    recorded: tuple[bool, bool]
    scale: float
    unit: str
    selected: NDArray[np.bool_] | None = None
    stroke: NDArray[np.int64] | None = None
    z: NDArray[np.float64] | None = None

    def kept(self, keep: NDArray[np.bool_]) -> FiniteSamples:
        """The samples of a mask."""
        own = {one.name: getattr(self, one.name) for one in fields(self)}
        columns: dict[str, Any] = {name: it[keep] for name, it in own.items() if isinstance(it, np.ndarray)}
        return replace(self, **columns)

    def span(self, start: int, stop: int) -> tuple[float, float]:
        """Time of the first and the last sample of a stretch."""
        return float(self.times_s[start]), float(self.times_s[stop - 1])

    def output(self, value: float) -> Message:
        """A size of the output for a sentence."""
        return output(value, foreign=self.unit != "share")


class OutputSteps(NamedTuple):
    """Grain of the output about its centre.

    Parameters
    ----------
    step : float
        Size of the output's steps, 0 when none shows.
    dead_zone : float
        Size of a dead zone already applied, 0 when none shows.
    """

    step: float
    dead_zone: float


def output(value: float, *, foreign: bool) -> Message:
    """A size of the output for a sentence.

    Parameters
    ----------
    value : float
        In the unit of the recording.
    foreign : bool
        The unit is no share of full output.

    Examples
    --------
    >>> output(0.25, foreign=False).params, output(640.0, foreign=True).params
    ((('output_share', 0.25),), (('output_factor', 640.0),))
    """
    number = float(value)
    if foreign:
        return message(Outputs.own_unit, output_factor=number)
    return message(Outputs.of_full, output_share=number)


def cue_code(word: str) -> int:
    """Number of a cue word, the same as in a kept recording.

    Parameters
    ----------
    word : str
        One of `CUES`.

    Examples
    --------
    >>> cue_code("rest")
    1
    """
    return CUE_CODES[word]


def runs(mask: NDArray[np.bool_]) -> NDArray[np.int64]:
    """Start and stop (exclusive) of each run of True.

    Parameters
    ----------
    mask : array of bool, shape (n,)
        Any mask.

    Returns
    -------
    array of int, shape (k, 2)
        Start and stop of each run.

    Examples
    --------
    >>> runs(np.array([False, True, True, False, True])).tolist()
    [[1, 3], [4, 5]]
    """
    if not mask.any():
        return np.empty((0, 2), dtype=np.int64)
    edges = np.concatenate(([0], np.flatnonzero(mask[1:] != mask[:-1]) + 1, [len(mask)]))
    first = 0 if mask[0] else 1
    return np.column_stack((edges[:-1][first::2], edges[1:][first::2])).astype(np.int64)


def dead_stretches(samples: FiniteSamples) -> tuple[list[tuple[int, int]], list[Finding]]:
    """Stretches that are no movement at all: pen not down yet, stick unplugged, value frozen.

    Parameters
    ----------
    samples : FiniteSamples
        Finite samples in order of time.

    Returns
    -------
    list of (start, stop)
        What to leave out.
    list of Finding
        Why, with times.

    Notes
    -----
    Frozen: identical for 2 s while the cue moves, common practice. Where a recording rests at exact zero
    between movements (a dead zone, cleaning software), zeros tell nothing and are kept.
    """
    cuts, found = _zero_stretches(samples)
    frozen, said = _frozen_stretches(samples)
    return cuts + frozen, found + said


def _zero_stretches(samples: FiniteSamples) -> tuple[list[tuple[int, int]], list[Finding]]:
    """Exact zeros on both axes that begin and end with a jump, where zero is never rested at otherwise."""
    xy, far = samples.xy, 0.2 * samples.scale
    n, moved = len(xy), np.flatnonzero((xy[:, 0] != 0) | (xy[:, 1] != 0))
    if not all(samples.recorded) or not len(moved):
        return [], []
    if _zeroed_below(xy[moved[0] :], samples.recorded, 0.03 * samples.scale):
        return [], []
    cuts = []
    for start, stop in runs((xy[:, 0] == 0) & (xy[:, 1] == 0)).tolist():
        into = math.inf if start == 0 else float(np.hypot(*xy[start - 1]))
        out_of = math.inf if stop == n else float(np.hypot(*xy[stop]))
        long = samples.times_s[stop - 1] - samples.times_s[start] >= GAP_S
        if into > far and out_of > far and (long or start == 0):
            cuts.append((start, stop))
        elif stop - start >= 3:
            return [], []
    if sum(stop - start for start, stop in cuts) > 0.5 * n:
        return [], []
    return cuts, [_zero_finding(samples, start, stop) for start, stop in cuts]


def _zero_finding(samples: FiniteSamples, start: int, stop: int) -> Finding:
    start_s, stop_s = samples.span(start, stop)
    if start == 0:
        text = message(Cleaning.before_start, samples=stop, start_s=start_s, stop_s=stop_s)
        return Finding("note", "before_the_start", text)
    jump = samples.output(np.hypot(*samples.xy[start - 1]))
    return Finding("fault", "unplugged", message(Cleaning.zeros, start_s=start_s, stop_s=stop_s, jump=jump))


def _frozen_stretches(samples: FiniteSamples) -> tuple[list[tuple[int, int]], list[Finding]]:
    """Identical samples for 2 s or more: cut while the cue moves, asked about elsewhere."""
    xy, times_s = samples.xy, samples.times_s
    same = np.zeros(len(xy), dtype=np.bool_)
    same[1:] = (xy[1:, 0] == xy[:-1, 0]) & (xy[1:, 1] == xy[:-1, 1])
    largest = np.maximum(xy.max(axis=0), -xy.min(axis=0))
    asked_quiet = {cue_code("rest"), cue_code("still")}
    cuts: list[tuple[int, int]] = []
    found: list[Finding] = []
    for start, stop in (runs(same) - [1, 0]).tolist():
        if times_s[stop - 1] - times_s[start] < FROZEN_S:
            continue
        value = xy[start]
        at_limit = bool(np.any((np.abs(value) >= 0.95 * largest) & (largest > 0)))
        away = float(np.hypot(*value)) > 0.1 * samples.scale and not at_limit
        cue_moves = _cue_moves(samples, start, stop)
        if away and (cue_moves or int(samples.cue[start]) not in asked_quiet):
            x, y = (samples.output(one) for one in value)
            start_s, stop_s = samples.span(start, stop)
            text = message(Cleaning.frozen, x=x, y=y, start_s=start_s, stop_s=stop_s, cue_moves=cue_moves)
            found.append(Finding("fault" if cue_moves else "query", "frozen", text))
            cuts += [(start, stop)] if cue_moves else []
    return cuts, found


def _cue_moves(samples: FiniteSamples, start: int, stop: int) -> bool:
    if samples.cue_xy is None:
        return False
    wanted = samples.cue_xy[start:stop]
    wanted = wanted[np.isfinite(wanted).all(axis=1)]
    return len(wanted) > 1 and float(np.ptp(wanted, axis=0).max()) > 0.1 * samples.scale


def steps(samples: FiniteSamples) -> tuple[OutputSteps, list[Finding]]:
    """Step size of the output, and a dead zone that was applied before recording.

    Parameters
    ----------
    samples : FiniteSamples
        Finite samples in order of time.

    Returns
    -------
    Steps
        Sizes in the unit of the recording, 0 where none shows.
    list of Finding
        Their sentences.
    """
    step = max((_step_size(samples.xy[:, axis]) for axis in (0, 1) if samples.recorded[axis]), default=0.0)
    found = []
    if step > 0.004 * samples.scale:
        many = round(2 * samples.scale / step)
        text = message(Cleaning.coarse_steps, step=samples.output(step), steps=many, of_travel=samples.unit == "share")
        found.append(Finding("note", "coarse_steps", text))
    dead_zone, said = _dead_zone(samples, step)
    return OutputSteps(step, dead_zone), found + said


def _step_size(values: NDArray[np.float64]) -> float:
    """Step of a quantised output, 0 when nine moved samples in ten do not lie on one grid."""
    sample = values[:: max(1, len(values) // 200_000)]
    moved = sample[sample != 0]
    levels = np.unique(sample)
    if len(levels) < 10:
        return 0.0
    gaps = np.diff(levels)
    span = float(levels[-1] - levels[0])
    for candidate in (float(gaps.min()), float(np.median(gaps))):
        if candidate < 1e-6 * span:
            continue
        step = span / round(span / candidate)
        off = np.abs((moved - levels[0]) / step % 1.0 - 0.5)
        if np.mean(off > 0.4) >= 0.9:
            return step
    return 0.0


def _smallest(values: NDArray[np.float64]) -> float:
    """Smallest magnitude that is not exactly zero; infinite when all are."""
    size = np.abs(values)
    return float(np.min(size, where=size > 0, initial=math.inf))


def _zeroed_below(xy: NDArray[np.float64], recorded: tuple[bool, bool], usual: float) -> float:
    """Smallest non-zero magnitude of any axis where exact zeros are common; 0 when it is not above `usual`."""
    axes = [xy[:, axis] for axis in (0, 1) if recorded[axis]]
    sizes = [_smallest(axis) for axis in axes if np.mean(axis == 0) > 0.01]
    size = min((size for size in sizes if math.isfinite(size)), default=0.0)
    return size if size > usual else 0.0


def _dead_zone(samples: FiniteSamples, step: float) -> tuple[float, list[Finding]]:
    """Exact zeros, then nothing until well above one step: per axis (square), or by distance (radial)."""
    if samples.unit != "share":
        return 0.0, []
    xy, usual = samples.xy, max(4 * step, 0.03 * samples.scale)
    size = _zeroed_below(xy, samples.recorded, usual)
    if size:
        kind: Literal["square", "radial"] = "square"
        near = sum(int(np.count_nonzero((np.abs(axis) > 0) & (np.abs(axis) < 2 * size))) for axis in xy.T)
    else:
        radius = np.hypot(xy[:, 0], xy[:, 1])
        size = _smallest(radius) if all(samples.recorded) and np.mean(radius == 0) > 0.01 else 0.0
        if not usual < size < math.inf:
            return 0.0, []
        kind = "radial"
        near = int(np.count_nonzero((radius > 0) & (radius < 2 * size)))
    text = message(
        Cleaning.dead_zone,
        size=samples.output(size),
        kind=kind,
        steps=round(size / step) if step else None,
        step=samples.output(step) if step else None,
        near=near if near < 20 else None,
    )
    return size, [Finding("fault", "dead_zone", text)]


def rest_cleaned(samples: FiniteSamples, grain: OutputSteps) -> tuple[bool, list[Finding]]:
    """Whether the rest was set to exactly zero before recording: no real stick rests like that.

    Parameters
    ----------
    samples : FiniteSamples
        Finite samples in order of time.
    grain : OutputSteps
        Step and dead zone found.

    Returns
    -------
    bool
        True: offset, noise and dead zone cannot be taken from this rest.
    list of Finding
        The sentence, unless the dead zone's own sentence already says it.
    """
    if grain.dead_zone or samples.unit != "share":
        return bool(grain.dead_zone), []
    scale = samples.scale
    radius = np.hypot(samples.xy[:, 0], samples.xy[:, 1])
    near, zero = int(np.count_nonzero(radius <= 0.1 * scale)), radius == 0
    longest = max((samples.times_s[b - 1] - samples.times_s[a] for a, b in runs(zero).tolist()), default=0.0)
    share = np.count_nonzero(zero) / max(near, 1)
    if share < 0.7 or longest < 2.0 or zero.all():
        return False, []
    largest = float(np.abs(samples.xy).max())
    wide = largest > 1.15 * scale
    sure = wide or 0 < grain.step < 0.004 * scale
    text = message(
        Cleaning.rest_cleaned,
        zero_share=float(share),
        longest_s=float(longest),
        widest_share=largest if wide else None,
        sure=sure,
    )
    return True, [Finding("fault" if sure else "query", "rest_cleaned", text)]


def clipping(samples: FiniteSamples) -> list[Finding]:
    """More than 5 % of the samples at one exact limit: nobody knows how far the push would have gone.

    Parameters
    ----------
    samples : FiniteSamples
        Finite samples in order of time; edge and push samples are judged alone when there are any.

    Returns
    -------
    list of Finding
        At most one, naming the directions.
    """
    asked = (samples.cue == cue_code("rim")) | (samples.cue == cue_code("push"))
    edge = bool(asked.any())
    limits: list[Text] = []
    ways: tuple[tuple[int, tuple[Way, Way]], ...] = ((0, ("right", "left")), (1, ("forward", "back")))
    for axis, names in ways:
        values = samples.xy[asked, axis] if edge else samples.xy[:, axis]
        for limit, name in ((float(values.max()), names[0]), (float(values.min()), names[1])):
            share = float(np.mean(values == limit))
            if share > CLIPPED_SHARE and abs(limit) > 0.5 * samples.scale:
                at = samples.output(limit)
                limits.append(message(Cleaning.limit, clipped_share=share, limit=at, way=name))
    if not limits:
        return []
    return [Finding("query", "clipping", message(Cleaning.clipping, edge=edge, limits=tuple(limits)))]
