"""Which filter brings the player's own following closest to its target, within a stated lag.

Judged as the player would meet it: the output of the filter at this moment against the target at this
moment, so a filter that makes the game late pays for it. Numbers of each kind of filter are chosen on
some pieces of the recording and judged on another, in turn; the simpler kind is kept unless a better
one beats it by more than a standard error.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtrit

from stickwright.codes.estimate import Estimate
from stickwright.codes.filters import FilterKind, Filters
from stickwright.codes.message import Message, message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.model.response import FilterChoice, FilterTried
from stickwright.tuning.asked import AskedStretch
from stickwright.tuning.filters import NO_FILTER, Filter, filtered, low_pass_cutoff_hz, low_pass_left
from stickwright.tuning.series import even_grid

__all__ = ["choose_filter", "filter_of", "lag_by_correlation_s"]

Array = NDArray[np.float64]
Rows = NDArray[np.intp]
PIECES = 5
LONGEST_LAG_S = 0.5
SLOW_HZ = 2.0  # Voluntary movement is below, tremor above.
SHORTEST_S = 10.0  # Less following than this and five pieces hold hardly a movement each. (Judgement.)
_KINDS: tuple[FilterKind, ...] = ("none", "low-pass", "butterworth", "1-euro", "notch")  # In order of simplicity.


def lag_by_correlation_s(xy: Array, later_xy: Array, step_s: float) -> float:
    """By how much one movement trails another, where their cross-correlation is highest.

    Parameters
    ----------
    xy, later_xy : array, shape (n, 2)
        The movement and the same, later; evenly spaced.
    step_s : float
        Spacing, seconds.

    Returns
    -------
    float
        Seconds, 0 to 0.5; between samples by a parabola through three points. 0 for a movement that never
        moves.

    Notes
    -----
    Source: time delay by cross-correlation [knapp-carter-1976]. Both axes count together.

    Examples
    --------
    >>> wave = np.sin(np.arange(400) * 0.05)
    >>> movement = np.column_stack([wave, wave])
    >>> round(lag_by_correlation_s(movement[10:], movement[:-10], 0.01), 3)
    0.1
    """
    steps = min(len(xy) // 2, round(LONGEST_LAG_S / step_s) + 1)
    if steps < 1:
        return 0.0
    # One step ahead as well, so that a peak at no lag has a neighbour on either side.
    line = np.array([_correlation(xy[1:], later_xy[:-1]), *(_correlation(xy[: len(xy) - lag], later_xy[lag:])
                                                              for lag in range(steps + 1))])  # fmt: skip
    top = int(np.argmax(line[1:-1])) + 1
    before, here, after = line[top - 1 : top + 2]
    bend = before - 2.0 * here + after
    part = 0.5 * (before - after) / bend if bend < 0.0 else 0.0
    return max(0.0, top - 1 + min(max(float(part), -0.5), 0.5)) * step_s


def _correlation(xy: Array, other_xy: Array) -> float:
    """Correlation coefficient of two movements, both axes pooled, each about its mean; 0 without movement."""
    one, other = xy - xy.mean(axis=0), other_xy - other_xy.mean(axis=0)
    power = float((one**2).sum()) * float((other**2).sum())
    return float((one * other).sum()) / math.sqrt(power) if power > 1e-36 else 0.0


def candidates(lag_budget_s: float, tremor_hz: float | None, rate_hz: float) -> list[Filter]:
    """Filters to try: cut-offs spread over the lag budget, a grid of the 1-euro filter, a notch if asked."""
    found = [NO_FILTER]
    if lag_budget_s > 0.0:
        lags = [share * lag_budget_s for share in (0.25, 0.5, 0.75, 0.95)]
        found += [Filter("low-pass", low_pass_cutoff_hz(lag_s)) for lag_s in lags]
        found += [Filter("butterworth", math.sqrt(2.0) * low_pass_cutoff_hz(lag_s)) for lag_s in lags]
        found += [Filter("1-euro", cutoff, beta) for cutoff in (0.5, 1.0, 2.0, 4.0) for beta in (0.5, 2.0, 8.0)]
        if tremor_hz is not None and tremor_hz < 0.45 * rate_hz:
            found += [Filter("notch", tremor_hz, quality=quality) for quality in (1.0, 2.5)]
    return [one for one in found if one.kind != "butterworth" or one.cutoff_hz < 0.45 * rate_hz]


@dataclass(frozen=True, eq=False)
class _Judged:
    """Every candidate on every piece."""

    filters: tuple[Filter, ...]
    error: Array
    """Rms distance from the target, shape (candidates, pieces)."""
    lag_s: Array
    """Shape (candidates, pieces)."""


def _pieces(stretches: Sequence[AskedStretch]) -> list[list[slice]]:
    """Contiguous pieces of each stretch, about five in all, at least one of each."""
    seconds = np.array([stretch.times_s[-1] - stretch.times_s[0] for stretch in stretches])
    counts = [max(1, round(PIECES * share)) for share in seconds / seconds.sum()]
    parts = []
    for stretch, count in zip(stretches, counts, strict=True):
        cuts = np.linspace(0, len(stretch.times_s), count + 1).astype(int).tolist()
        parts.append([slice(first, last) for first, last in pairwise(cuts)])
    return parts


def _judged(stretches: Sequence[AskedStretch], filters: Sequence[Filter]) -> _Judged:
    pieces = _pieces(stretches)
    columns = sum(len(one) for one in pieces)
    error = np.empty((len(filters), columns))
    lag = np.zeros((len(filters), columns))
    for row, by in enumerate(filters):
        column = 0
        for stretch, parts in zip(stretches, pieces, strict=True):
            assert stretch.target_xy is not None
            through = filtered(stretch.xy, stretch.times_s, by)
            off = ((through - stretch.target_xy) ** 2).sum(axis=1)
            lags = np.zeros(len(parts)) if by.kind == "none" else _lags_s(stretch, through, parts)
            for part, late_s in zip(parts, lags, strict=True):
                error[row, column] = math.sqrt(float(off[part].mean()))
                lag[row, column] = late_s
                column += 1
    return _Judged(tuple(filters), error, lag)


def _lags_s(stretch: AskedStretch, through: Array, parts: Sequence[slice]) -> Array:
    """How late the slow part of the output is in each piece.

    Voluntary movement is slow. Tremor is delayed by less than slow movement is, and a large one would make a
    filter look quicker than the player finds it, so both sides are smoothed alike, without delay, first.
    """
    from scipy.signal import butter, sosfiltfilt

    even, grid_s, rate_hz = even_grid(np.column_stack([stretch.xy, through]), stretch.times_s)
    if rate_hz > 2.5 * SLOW_HZ:
        even = sosfiltfilt(butter(2, SLOW_HZ, fs=rate_hz, output="sos"), even, axis=0)
    found = []
    for part in parts:
        first, last = np.searchsorted(grid_s, stretch.times_s[[part.start, part.stop - 1]])
        found.append(lag_by_correlation_s(even[first:last, :2], even[first:last, 2:], 1.0 / rate_hz))
    return np.array(found)


def _mean_estimate(values: Array) -> Estimate:
    if len(values) < 2:
        return Estimate.unbounded(float(values.mean()), message(Filters.why_one_piece), n=len(values))
    half = float(stdtrit(len(values) - 1, 0.975)) * float(values.std(ddof=1)) / math.sqrt(len(values))
    mean = float(values.mean())
    return Estimate(mean, max(0.0, mean - half), mean + half, n=len(values))


def _best_row(judged: _Judged, rows: Rows, pieces: Rows, lag_budget_s: float) -> int:
    """Row with the smallest error on some pieces among those within the budget; the quickest when none is."""
    lag = judged.lag_s[np.ix_(rows, pieces)].mean(axis=1)
    within = lag <= lag_budget_s
    if not within.any():
        return int(rows[int(np.argmin(lag))])
    error = (judged.error[np.ix_(rows, pieces)] ** 2).mean(axis=1)
    return int(rows[int(np.argmin(np.where(within, error, np.inf)))])


def _tried(judged: _Judged, kind: str, lag_budget_s: float) -> tuple[FilterTried, Filter, Array] | None:
    """One kind of filter: its final numbers, and its errors on pieces not used to choose them."""
    rows = np.array([row for row, by in enumerate(judged.filters) if by.kind == kind], dtype=np.intp)
    if len(rows) == 0:
        return None
    every = np.arange(judged.error.shape[1])
    held_out = np.array(
        [judged.error[_best_row(judged, rows, every[every != piece], lag_budget_s), piece] for piece in every]
    )
    final = _best_row(judged, rows, every, lag_budget_s)
    lag = _mean_estimate(judged.lag_s[final])
    by = judged.filters[final]
    tried = FilterTried(by.kind, by.settings, lag, _mean_estimate(held_out), lag.number <= lag_budget_s)
    return tried, by, held_out


def _simplest_good(entries: Sequence[tuple[FilterTried, Filter, Array]]) -> int:
    """The first entry (simplest first) that the best one does not beat by more than a standard error."""
    within = [row for row, (tried, _, _) in enumerate(entries) if tried.within_budget]
    best = min(within, key=lambda row: float(entries[row][2].mean()))
    for row in within:
        worse = entries[row][2] - entries[best][2]
        if row == best or float(worse.mean()) <= float(worse.std(ddof=1)) / math.sqrt(len(worse)):
            return row
    return best


def choose_filter(
    stretches: Sequence[AskedStretch], lag_budget_s: float = 0.06, tremor_hz: float | None = None
) -> FilterChoice:
    """The filter to keep, judged on following that was not used to choose it.

    Parameters
    ----------
    stretches : sequence of AskedStretch
        Following a moving target, output and target in the same share of full output.
    lag_budget_s : float, default 0.06
        By how much the filter may make slow movement late, seconds, 0 or more.
    tremor_hz : float or None
        Frequency of a tremor that stands out, hertz; offers a notch there.

    Returns
    -------
    FilterChoice
        The kind kept, each kind tried (simplest first) with lag and held-out error, and why.

    Raises
    ------
    BadInput
        Less than 10 s of following with a target, or a negative budget.

    Notes
    -----
    Source: cross-validation in contiguous pieces and the rule of one standard error [hastie-2009], with the
    standard error of the difference piece by piece. Assumed: the player would follow a late output as the
    recording was made, without adapting to it.

    Examples
    --------
    >>> times_s = np.arange(2000) * 0.01
    >>> target = np.column_stack([np.sin(times_s), np.cos(times_s)]) * 0.7
    >>> choose_filter([AskedStretch(times_s, target, target)]).chosen.kind
    'none'
    """
    if not (math.isfinite(lag_budget_s) and lag_budget_s >= 0.0):
        raise BadInput(
            Problem(
                "lag_budget_s",
                f"{lag_budget_s:g}",
                message(Signals.expected, what="seconds_or_0"),
                message(Signals.remedy, what="in_seconds"),
            )
        )
    followed = [stretch for stretch in stretches if stretch.target_xy is not None and len(stretch.times_s) >= 50]
    seconds = sum(float(one.times_s[-1] - one.times_s[0]) for one in followed)
    if seconds < SHORTEST_S:
        raise BadInput(
            Problem(
                "following",
                message(Signals.followed, time_s=seconds),
                message(Signals.time_least, least_s=SHORTEST_S),
                message(Signals.remedy, what="record_following"),
            )
        )
    rate_hz = min(even_grid(one.xy, one.times_s)[2] for one in followed)
    judged = _judged(followed, candidates(lag_budget_s, tremor_hz, rate_hz))
    entries = [entry for kind in _KINDS if (entry := _tried(judged, kind, lag_budget_s)) is not None]
    kept = _simplest_good(entries)
    tried = tuple(entry[0] for entry in entries)
    return FilterChoice(tried[kept], tried, lag_budget_s, _sentence(tried, kept, lag_budget_s, tremor_hz))


def filter_of(choice: FilterChoice | None) -> Filter:
    """The filter that a choice stands for, ready to run.

    Parameters
    ----------
    choice : FilterChoice or None
        None: no filter.

    Returns
    -------
    Filter
        With the numbers of the kind kept.

    Examples
    --------
    >>> filter_of(None).kind
    'none'
    """
    if choice is None:
        return NO_FILTER
    numbers = dict(choice.chosen.settings)
    kind = choice.chosen.kind
    if kind == "none":
        return NO_FILTER
    if kind == "1-euro":
        return Filter("1-euro", numbers["min_cutoff_hz"], numbers["beta"])
    if kind == "notch":
        return Filter("notch", numbers["frequency_hz"], quality=numbers["quality"])
    return Filter("butterworth" if kind == "butterworth" else "low-pass", numbers["cutoff_hz"])


def _with_numbers(tried: FilterTried) -> Message:
    numbers = dict(tried.settings)
    if "min_cutoff_hz" in numbers:
        return message(Filters.at, kind=tried.kind, frequency_hz=numbers["min_cutoff_hz"], beta_factor=numbers["beta"])
    frequency = numbers.get("cutoff_hz", numbers.get("frequency_hz"))
    if frequency is None:
        return message(Filters.kind, kind=tried.kind)
    return message(Filters.at, kind=tried.kind, frequency_hz=frequency, beta_factor=None)


def _sentence(tried: Sequence[FilterTried], kept: int, lag_budget_s: float, tremor_hz: float | None) -> Message:
    alone, one = tried[0].error.number, tried[kept]
    tremor = _tremor_left(one, lag_budget_s, tremor_hz)
    if kept > 0:
        return message(
            Filters.kept,
            kept=_with_numbers(one),
            lag_s=one.lag_s.number,
            error_share=one.error.number,
            alone_share=alone,
            tremor=tremor,
        )
    others = [other for other in tried[1:] if other.within_budget]
    best = min(others, key=lambda other: other.error.number) if others else None
    return message(
        Filters.none,
        alone_share=alone,
        best=_with_numbers(best) if best is not None else None,
        best_share=best.error.number if best is not None else None,
        best_lag_s=best.lag_s.number if best is not None else None,
        lag_budget_s=lag_budget_s,
        tremor=tremor,
    )


def _tremor_left(kept: FilterTried, lag_budget_s: float, tremor_hz: float | None) -> Message | None:
    """What a low-pass with all the lag allowed would leave of a tremor."""
    if tremor_hz is None or lag_budget_s <= 0.0:
        return None
    left = low_pass_left(tremor_hz, lag_budget_s)
    slow: Literal["before", "instead"] = "before" if kept.kind == "notch" else "instead"
    return message(
        Filters.tremor_left,
        lag_s=lag_budget_s,
        left_share=left,
        tremor_hz=tremor_hz,
        try_first=slow if left >= 0.5 else "no",
    )
