"""A raw recording turned into a clean time base, and what was wrong with it.

Rules of this file: nothing is interpolated; what is left out is said, with its rows or its
times; what a person must put right is refused in one sentence; the rest becomes a finding.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.cleaning import Axis, Cleaning
from stickwright.codes.message import Message, Name, message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.recorded import Finding
from stickwright.model.recording import Recording
from stickwright.trace.return_to_centre import step_of_levels
from stickwright.trace.sensing import (
    CUES,
    FiniteSamples,
    clipping,
    cue_code,
    dead_stretches,
    output,
    rest_cleaned,
    runs,
    steps,
)  # fmt: skip
from stickwright.trace.stamps import GAP_S, on_grid, rounding_s

__all__ = ["Cleaned", "cleaned"]

_TRUSTED_TREMOR = 0.4
"""Tremor above this share of the sampling rate is not trusted (the Nyquist limit is 0.5); common practice."""


@dataclass(frozen=True, eq=False)
class Cleaned:
    """Samples that can be used, in order of time.

    Parameters
    ----------
    times_s : array, shape (n,)
        Strictly increasing.
    xy : array, shape (n, 2)
        Finite. An axis that was not recorded holds zeros, and `recorded` says so.
    cue : array of int8, shape (n,)
        Numbers of the cue words: `stickwright.model.recording.CUE_CODES`.
    cue_xy : array, shape (n, 2), or None
        Where the player was asked to be; NaN where nothing was asked.
    segments : tuple of (start, stop)
        Stretches without a gap, as sample numbers.
    step_s, p99_step_s : float
        Time from sample to sample inside the segments: mean, and 99th percentile.
    recorded : (bool, bool)
        Whether x and y were recorded.
    scale : float
        1 for shares of full output, otherwise half the widest range seen.
    step : float
        Size of the output's steps, 0 when none shows.
    dead_zone : float
        Size of a dead zone already applied, 0 when none shows.
    rest_cleaned : bool
        The rest was set to exactly zero by other software: its noise and offset cannot be judged.
    unit_is_foreign : bool
        Not a share of full output: reach and centre cannot be judged against it.
    selected : array of bool, shape (n,), or None
        Where a target was being selected.
    stroke : array of int, shape (n,), or None
        Number of the stroke of a drawing, below 0 between strokes.
    z : array, shape (n,), or None
        Third axis of a sensor; NaN where a cell was empty.
    """

    times_s: NDArray[np.float64]
    xy: NDArray[np.float64]
    cue: NDArray[np.int8]
    cue_xy: NDArray[np.float64] | None
    segments: tuple[tuple[int, int], ...]
    step_s: float
    p99_step_s: float
    recorded: tuple[bool, bool] = (True, True)
    scale: float = 1.0
    step: float = 0.0
    dead_zone: float = 0.0
    rest_cleaned: bool = False
    unit_is_foreign: bool = False
    selected: NDArray[np.bool_] | None = None
    stroke: NDArray[np.int64] | None = None
    z: NDArray[np.float64] | None = None

    def output(self, value: float) -> Message:
        """A size of the output for a sentence."""
        return output(value, foreign=self.unit_is_foreign)

    def with_step_of_levels(self) -> Cleaned:
        """Itself; where no step showed and only a few levels were seen, with the step of these."""
        if self.step:
            return self
        return replace(self, step=step_of_levels(*(self.xy[:, axis] for axis in (0, 1) if self.recorded[axis])))

    def asked(self, *words: str) -> NDArray[np.bool_]:
        """Which samples carry one of these cue words."""
        return np.isin(self.cue, [cue_code(word) for word in words])

    def pieces(self, mask: NDArray[np.bool_]) -> list[tuple[int, int]]:
        """Runs of a mask, cut at the gaps."""
        return [
            (start + first, start + last)
            for start, stop in self.segments
            for first, last in runs(mask[start:stop]).tolist()
        ]

    def asked_pieces(self, word: str) -> list[tuple[int, int]]:
        """Stretches with one cue word and one target, cut at the gaps."""
        pieces = self.pieces(self.asked(word))
        if self.cue_xy is None:
            return pieces
        cut = []
        for start, stop in pieces:
            wanted = self.cue_xy[start:stop]
            other = np.zeros(stop - start, dtype=np.bool_)
            both_empty = np.isnan(wanted[1:]) & np.isnan(wanted[:-1])
            other[1:] = ((wanted[1:] != wanted[:-1]) & ~both_empty).any(axis=1)
            edges = [0, *np.flatnonzero(other).tolist(), stop - start]
            cut += [(start + a, start + b) for a, b in pairwise(edges)]
        return cut


def cleaned(recording: Recording) -> tuple[Cleaned, tuple[Finding, ...]]:
    """The usable samples of a recording, and everything noticed about the rest of it.

    Parameters
    ----------
    recording : Recording
        As read, nothing removed.

    Returns
    -------
    Cleaned
        Finite samples in order of time, cut at gaps.
    tuple of Finding
        Each with its figures and what to do.

    Raises
    ------
    BadInput
        No samples or only one; arrays of different length; a time that is missing or goes back;
        no value on either axis.

    Notes
    -----
    Stamps that fit an even grid within their own rounding are put on it: see `stickwright.trace.stamps.on_grid`.
    Gaps over 250 ms, a frozen value over 2 s while the cue moves, over 5 % of samples at an exact
    limit, tremor above 0.4 of the sampling rate not trusted: common practice. Of samples with the
    same time the first is kept. A gap is never bridged.

    Examples
    --------
    >>> times_s = np.arange(0, 2, 0.01)
    >>> times_s[100:] += 0.5
    >>> xy = 0.1 * np.column_stack((np.sin(times_s), np.cos(times_s)))
    >>> usable, findings = cleaned(Recording("demo.csv", times_s, xy))
    >>> usable.segments
    ((0, 100), (100, 200))
    >>> [finding.about for finding in findings]
    ['gap']
    """
    _refuse_unusable(recording)
    samples, found = _samples(recording)
    cuts, said = dead_stretches(samples)
    found += said
    if cuts:
        keep = np.ones(len(samples.times_s), dtype=np.bool_)
        for start, stop in cuts:
            keep[start:stop] = False
        samples = samples.kept(keep)
    base, said = _time_base(samples)
    found += said
    grain, said = steps(samples)
    found += said
    is_cleaned, said = rest_cleaned(samples, grain)
    found += said + clipping(samples)
    nothing_moves = bool(np.ptp(samples.xy, axis=0).max() == 0.0)
    if nothing_moves:
        found.append(Finding("fault", "nothing_moves", message(Cleaning.nothing_moves)))
    result = Cleaned(
        times_s=samples.times_s,
        xy=samples.xy,
        cue=samples.cue,
        cue_xy=samples.cue_xy,
        segments=base.segments,
        step_s=base.step_s,
        p99_step_s=base.p99_step_s,
        recorded=samples.recorded,
        scale=samples.scale,
        step=grain.step,
        dead_zone=grain.dead_zone,
        rest_cleaned=is_cleaned or nothing_moves,
        unit_is_foreign=samples.unit != "share",
        selected=samples.selected,
        stroke=samples.stroke,
        z=samples.z,
    )
    return result, tuple(found)


def _rows(indices: NDArray[np.int64], shown: int = 5) -> Message:
    """Rows counted from 1, runs joined: 'rows 3-5, 9 and 12 more'."""
    breaks = np.flatnonzero(np.diff(indices) > 1) + 1
    groups = np.split(indices + 1, breaks)
    more = len(indices) - sum(len(group) for group in groups[:shown])
    return message(
        Cleaning.rows,
        runs=tuple((int(group[0]), int(group[-1])) for group in groups[:shown]),
        more=more,
    )


def _refuse_unusable(recording: Recording) -> None:
    """What only the person can put right, all of it at once."""
    name, n = recording.name, len(recording.times_s)
    problems: list[Problem] = []
    if n < 2:
        found = message(Signals.found, what="no_samples") if n == 0 else message(Signals.found, what="one_sample")
        raise BadInput(
            Problem(
                name,
                found,
                message(Signals.expected, what="some_seconds"),
                message(Signals.remedy, what="record_or_choose"),
            )
        )
    for what, array, shape in (
        ("xy", recording.xy, (n, 2)),
        ("cue", recording.cue, (n,)),
        ("selected", recording.selected, (n,)),
        ("stroke", recording.stroke, (n,)),
        ("z", recording.z, (n,)),
        ("cue_xy", recording.cue_xy, (n, 2)),
    ):
        if array is not None and array.shape != shape:
            problems.append(
                Problem(
                    (name, what),
                    message(Signals.shape, shape=array.shape),
                    message(Signals.shape_for_times, shape=shape, or_more=False),
                )
            )
    missing = np.flatnonzero(~np.isfinite(recording.times_s))
    if len(missing):
        problems.append(
            Problem(
                (name, _rows(missing), "time"),
                message(Signals.found, what="no_number"),
                message(Signals.expected, what="seconds"),
                message(Signals.remedy, what="rows_without_time"),
            )
        )
    back = np.flatnonzero(np.diff(recording.times_s) < 0) + 1
    if len(back):
        at = int(back[0])
        before, now = recording.times_s[at - 1], recording.times_s[at]
        problems.append(
            Problem(
                (name, _rows(back), "time"),
                message(Signals.backwards, now_s=float(now), before_s=float(before)),
                message(Signals.expected, what="times_onwards"),
                message(Signals.remedy, what="split_file"),
            )
        )
    if problems:
        raise BadInput(problems)


def _recorded_axes(recording: Recording, found: list[Finding]) -> tuple[bool, bool]:
    has_x, has_y = (bool(np.isfinite(recording.xy[:, axis]).any()) for axis in (0, 1))
    if not has_x and not has_y:
        raise BadInput(
            Problem(
                recording.name,
                message(Signals.found, what="no_value"),
                message(Signals.expected, what="x_or_y"),
                message(Signals.remedy, what="columns"),
            )
        )
    if not (has_x and has_y):
        there: Axis = "x" if has_x else "y"
        found.append(Finding("fault", "one_axis", message(Cleaning.one_axis, recorded=there)))
    return has_x, has_y


def _finite_rows(
    recording: Recording, recorded: tuple[bool, bool], found: list[Finding]
) -> NDArray[np.bool_]:  # fmt: skip
    finite = np.ones(len(recording.times_s), dtype=np.bool_)
    for axis in (0, 1):
        if recorded[axis]:
            finite &= np.isfinite(recording.xy[:, axis])
    lost = np.flatnonzero(~finite)
    if len(lost):
        many = len(lost) > 0.05 * len(finite)
        text = message(Cleaning.empty_cells, lost=len(lost), samples=len(finite), rows=_rows(lost))
        found.append(Finding("fault" if many else "query", "empty_cells", text))
    return finite


def _one_clock(times_s: NDArray[np.float64], found: list[Finding]) -> NDArray[np.float64]:
    """Stamps freed of their rounding where they fit an even grid; said where it made stamps repeat."""
    evened = on_grid(times_s)
    again = int(np.count_nonzero(np.diff(times_s) == 0))
    if again and not np.any(np.diff(evened) == 0):
        text = message(
            Cleaning.coarse_clock,
            repeated=again,
            clock_step_s=rounding_s(times_s),
            interval_s=float(np.median(np.diff(evened))),
        )
        found.append(Finding("note", "coarse_clock", text))
    return evened


def _first_of_each_time(times_s: NDArray[np.float64], found: list[Finding]) -> NDArray[np.bool_]:
    first = np.ones(len(times_s), dtype=np.bool_)
    first[1:] = times_s[1:] != times_s[:-1]
    again = np.flatnonzero(~first)
    if len(again):
        text = message(Cleaning.same_time, repeated=len(again), rows=_rows(again))
        found.append(Finding("query" if len(again) < 0.2 * len(times_s) else "fault", "same_time_twice", text))
    return first


def _cue_codes(recording: Recording, found: list[Finding]) -> NDArray[np.int8]:
    """Cue words as small numbers; without a cue column the task stands for every sample."""
    n = len(recording.times_s)
    if recording.cue is None:
        if recording.task not in CUES:
            known = did_you_mean(recording.task, CUES[1:])
            text = message(Cleaning.unknown_task, task=Name(recording.task), known=known)
            found.append(Finding("query", "task", text))
        word = recording.task if recording.task in CUES else "play"
        return np.full(n, cue_code(word), dtype=np.int8)
    codes = np.full(n, -1, dtype=np.int8)
    for word in CUES:
        codes[recording.cue == word] = cue_code(word)
    unknown = np.flatnonzero(codes < 0)
    if len(unknown):
        word = str(recording.cue[unknown[0]])
        known = did_you_mean(word, CUES[1:])
        text = message(Cleaning.unknown_cue, cue=Name(word), rows=_rows(unknown), known=known)
        found.append(Finding("query", "cue", text))
        codes[unknown] = 0
    return codes


def _samples(recording: Recording) -> tuple[FiniteSamples, list[Finding]]:
    """Rows that hold a number, each time once, cue words as small numbers."""
    found: list[Finding] = []
    recorded = _recorded_axes(recording, found)
    times_s = _one_clock(np.asarray(recording.times_s, dtype=np.float64), found)
    keep = _finite_rows(recording, recorded, found) & _first_of_each_time(times_s, found)
    if np.count_nonzero(keep) < 2:
        usable = int(np.count_nonzero(keep))
        raise BadInput(
            Problem(
                recording.name,
                message(Signals.count, count=usable, of="usable"),
                message(Signals.expected, what="two"),
                message(Signals.remedy, what="record_again"),
            )
        )
    xy = np.asarray(recording.xy, dtype=np.float64)
    if not all(recorded):
        xy = np.where(np.array(recorded), xy, 0.0)
    cue_xy = None if recording.cue_xy is None else np.asarray(recording.cue_xy, dtype=np.float64)
    cue = _cue_codes(recording, found)
    samples = FiniteSamples(
        times_s=times_s,
        xy=xy,
        cue=cue,
        cue_xy=cue_xy,
        recorded=recorded,
        scale=1.0,
        unit=recording.unit,
        selected=recording.selected,
        stroke=recording.stroke,
        z=recording.z,
    )
    if not keep.all():
        samples = samples.kept(keep)
    return replace(samples, scale=_scale(samples, found)), found


def _scale(samples: FiniteSamples, found: list[Finding]) -> float:
    """Full output; in a foreign unit half the widest range seen."""
    high, low = samples.xy.max(axis=0), samples.xy.min(axis=0)
    largest = float(max(high.max(), -low.min()))
    if samples.unit != "share":
        return float((high - low).max()) / 2 or 1.0
    if largest <= 2.0:
        return 1.0
    found.append(Finding("query", "unit", message(Cleaning.too_large, largest_factor=largest)))
    return largest


class _TimeBase(NamedTuple):
    step_s: float
    p99_step_s: float
    segments: tuple[tuple[int, int], ...]


def _time_base(samples: FiniteSamples) -> tuple[_TimeBase, list[Finding]]:
    """Mean and 99th percentile of the time step inside the segments between gaps, and these."""
    times_s = samples.times_s
    if len(times_s) < 2:
        raise BadInput(
            Problem(
                message(Signals.step, what="recording"),
                message(Signals.found, what="no_usable_stretch"),
                message(Signals.expected, what="two_moving"),
                message(Signals.remedy, what="record_again"),
            )
        )
    time_steps = np.diff(times_s)
    median_s = float(np.median(time_steps))
    limit_s = max(GAP_S, 3 * median_s)
    gaps = np.flatnonzero(time_steps > limit_s)
    inside = time_steps[time_steps <= limit_s] if len(gaps) else time_steps
    p99_s = float(np.percentile(inside, 99))
    mean_s = float(inside.mean()) if len(inside) else median_s
    found: list[Finding] = []
    if median_s >= 1.0:
        text = message(Cleaning.milliseconds, interval_s=median_s)
        found.append(Finding("query", "slow_sampling", text))
    elif p99_s > 1.5 * median_s:
        text = message(Cleaning.uneven_time, interval_s=median_s, longest_s=p99_s, trusted_hz=_TRUSTED_TREMOR / p99_s)
        found.append(Finding("query", "uneven_time", text))
    elif _TRUSTED_TREMOR / mean_s < 20.0:
        text = message(
            Cleaning.slow_sampling,
            rate_hz=1 / mean_s,
            interval_s=mean_s,
            longest_s=p99_s,
            trusted_hz=_TRUSTED_TREMOR / mean_s,
        )
        found.append(Finding("query", "slow_sampling", text))
    if len(gaps):
        found += _gap_findings(samples, time_steps, gaps, limit_s)
    edges = [0, *(gaps + 1).tolist(), len(times_s)]
    return _TimeBase(mean_s, p99_s, tuple(pairwise(edges))), found


def _gap_findings(
    samples: FiniteSamples, time_steps: NDArray[np.float64], gaps: NDArray[np.int64], limit_s: float
) -> list[Finding]:
    times_s, xy, far = samples.times_s, samples.xy, 0.2 * samples.scale
    share = float(time_steps[gaps].sum() / (times_s[-1] - times_s[0]))
    longest = gaps[int(np.argmax(time_steps[gaps]))]
    text = message(
        Cleaning.gaps,
        gaps=len(gaps),
        limit_s=limit_s,
        missing_share=share,
        longest_s=float(time_steps[longest]),
        at_s=float(times_s[longest]),
    )
    found = [Finding("fault" if share > 0.2 else "query", "gap", text)]
    away = np.hypot(*xy[gaps].T) > far
    elsewhere = np.hypot(*(xy[gaps + 1] - xy[gaps]).T) > far
    lost = gaps[away & elsewhere]
    if len(lost):
        text = message(
            Cleaning.lost_while_away,
            at_s=float(times_s[lost[0]]),
            more=len(lost) - 1,
            missing_s=float(time_steps[lost[0]]),
        )
        found.append(Finding("fault", "unplugged", text))
    return found
