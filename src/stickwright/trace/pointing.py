"""Aimed movements: throughput by effective values, and the seven measures of a path.

Two kinds of input: click points (`throughput`, `throughput_report`) and a recording in which the cue jumps
from target to target (`pointing_report`). Lengths may be in any unit, the same throughout.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.errors import BadInput, Problem
from stickwright.model.effective_width import EFFECTIVE_WIDTHS
from stickwright.model.estimate import Estimate
from stickwright.model.recorded import PointingReport
from stickwright.trace.intervals import median_estimate
from stickwright.trace.path import PathAccuracy, path_accuracy
from stickwright.trace.stamps import GAP_S, checked_columns, checked_times

__all__ = ["PathAccuracy", "index_of_difficulty", "path_accuracy", "pointing_report", "throughput", "throughput_report"]

SETTLED_S = 0.2
"""So long without leaving the target counts as having chosen it."""

LEAST_CUE_S = 0.3
"""A cue that never stays this long is followed, not aimed at."""

LEAST_IN_SEQUENCE = 5
SAME_DISTANCE = 1.25  # movements belong to one sequence while the next longer one is less than this factor longer
FAR_SDS, TIME_SDS = 8.0, 4.0  # robust standard deviations beyond which a press or a time is not of this task
DRAWS = 2000


def index_of_difficulty(distance: float, width: float) -> float:
    """Index of difficulty, Shannon form: log2(distance/width + 1).

    Parameters
    ----------
    distance : float
        From start to the target's centre, 0 or more, any unit.
    width : float
        Of the target along the way, above 0, in the same unit.

    Returns
    -------
    float
        Bit.

    Raises
    ------
    BadInput
        A negative distance, or a width of 0 or less.

    Notes
    -----
    Source: [mackenzie-1992], [iso-9241-411]. Fitts' own form, log2(2 distance/width), gives other numbers.

    Examples
    --------
    >>> index_of_difficulty(300.0, 20.0)
    4.0
    """
    if not (math.isfinite(distance) and distance >= 0):
        raise BadInput(Problem("distance", str(distance), "a length of 0 or more"))
    if not (math.isfinite(width) and width > 0):
        raise BadInput(Problem("width", str(width), "a length above 0"))
    return math.log2(distance / width + 1)


def throughput(
    starts: ArrayLike, targets: ArrayLike, selections: ArrayLike, times_s: ArrayLike, serial: bool = False
) -> float:
    """Effective throughput of one sequence of aimed movements.

    Signed error along the way, dx; effective width 4.133 sd(dx) (n - 1); effective distance mean(a + dx);
    throughput is the effective index of difficulty over the mean time, once for the sequence.

    Parameters
    ----------
    starts : array, shape (n, 2)
        Where each movement began.
    targets : array, shape (n, 2)
        Centre of each target.
    selections : array, shape (n, 2)
        Where the target was selected.
    times_s : array, shape (n,)
        Duration of each movement, seconds.
    serial : bool, default False
        `starts` are the previous targets' centres instead of where the movement really began: then the previous
        movement's dx is added to each distance from the second on.

    Returns
    -------
    float
        Bit a second.

    Raises
    ------
    BadInput
        Fewer than two movements, shapes that do not fit, empty cells, a start on its target, times of 0 or less,
        selections without any scatter, or selections on the whole behind their starts.

    Notes
    -----
    Source: [soukoreff-2004], [iso-9241-411].

    Examples
    --------
    >>> starts, targets = [[0, 0], [100, 0], [0, 0], [100, 0]], [[100, 0], [0, 0], [100, 0], [0, 0]]
    >>> selections = [[104, 1], [3, -2], [97, 3], [-5, 0]]
    >>> round(throughput(starts, targets, selections, [0.8, 0.7, 0.9, 0.8]), 2)
    3.4
    """
    arrays = [np.asarray(each, dtype=np.float64) for each in (starts, targets, selections)]
    durations = np.asarray(times_s, dtype=np.float64)
    problems = [
        Problem(name, f"shape {each.shape}", f"shape ({durations.size}, 2), one row for each time")
        for name, each in zip(("starts", "targets", "selections"), arrays, strict=True)
        if each.shape != (durations.size, 2)
    ]
    if durations.ndim != 1 or durations.size < 2:
        problems.append(Problem("times_s", f"{durations.size} movements", "at least two: their scatter is needed"))
    elif not (np.isfinite(durations).all() and durations.min() > 0):
        problems.append(Problem("times_s", f"{durations.min():g} s", "durations above 0"))
    if problems:
        raise BadInput(problems)
    if not all(np.isfinite(each).all() for each in arrays):
        raise BadInput(Problem("starts, targets, selections", "an empty cell", "numbers", "Leave out that movement."))
    distance, error, _ = _along(*arrays)
    if distance.min() <= 0:
        row = int(np.argmin(distance)) + 1
        raise BadInput(Problem(f"row {row}", "a start on its target", "a movement", "Leave out that movement."))
    before = np.concatenate([[0.0], error[:-1]]) if serial else np.zeros(error.size)
    bits = float(_throughput(distance + before, error, durations))
    if not math.isfinite(bits):
        scatter = "no scatter at all" if float(np.ptp(error)) == 0 else "selections behind their starts"
        raise BadInput(Problem("selections", scatter, "selections that scatter about their targets"))
    return bits


def _along(
    starts: NDArray[np.float64], targets: NDArray[np.float64], selections: NDArray[np.float64]
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Distance, signed error along the way (plus is overshoot), and distance of the selection from the target."""
    distance = np.hypot(*(targets - starts).T)
    missed = np.hypot(*(selections - targets).T)
    travelled = np.hypot(*(selections - starts).T)
    error = np.full(distance.size, np.nan)
    moved = distance > 0
    error[moved] = (travelled[moved] ** 2 - missed[moved] ** 2 - distance[moved] ** 2) / (2 * distance[moved])
    return distance, error, missed


def _throughput(
    distance: NDArray[np.float64], error: NDArray[np.float64], durations_s: NDArray[np.float64]
) -> NDArray[np.float64]:
    """Effective throughput over the last axis; NaN where it has none."""
    width = EFFECTIVE_WIDTHS * error.std(axis=-1, ddof=1)
    effective = (distance + error).mean(axis=-1)
    usable = (width > 1e-12 * np.abs(effective)) & (effective > 0)
    ratio = np.divide(effective, width, out=np.full(np.shape(width), np.nan), where=usable)
    return np.asarray(np.log2(ratio + 1) / durations_s.mean(axis=-1))


@dataclass(frozen=True, eq=False)
class _Movements:
    """Movements that are used, as arrays of the same length."""

    distance: NDArray[np.float64]
    error: NDArray[np.float64]
    durations_s: NDArray[np.float64]
    group: NDArray[np.intp]


def throughput_report(
    starts: ArrayLike,
    targets: ArrayLike,
    selections: ArrayLike,
    times_s: ArrayLike,
    widths: ArrayLike | None = None,
    serial: bool = False,
    *,
    rng: np.random.Generator | None = None,
) -> PointingReport:
    """Throughput and error rate from click points, without the rows that are not of the task.

    Left out, each with its row number and the reason: empty cells; times of 0 or less; a start on its target; a
    selection nearer to the start than to the target; a selection farther from the target than 8 robust standard
    deviations of all misses (a double click, a press during a break), unless it is within the target's width; a
    time more than 4 robust standard deviations of log time from the others.

    Parameters
    ----------
    starts, targets, selections : array, shape (n, 2)
        As for `throughput`.
    times_s : array, shape (n,)
        Duration of each movement.
    widths : float, or array of shape (n,), or None
        Diameter of each target; None when not known (no error rate then).
    serial : bool, default False
        As for `throughput`; the previous row's error is used where that row was kept.
    rng : numpy Generator or None
        For the interval; None for a generator seeded with 0.

    Returns
    -------
    PointingReport
        Throughput is worked out once per sequence (movements of like distance and equal width, at least five)
        and averaged over sequences; when no sequence is that long, once over all. Its interval is from 2000
        redrawings of the movements within their sequences. Error rate with Wilson's interval.

    Raises
    ------
    BadInput
        Shapes that do not fit.

    Notes
    -----
    Source: [soukoreff-2004], [iso-9241-411], [wilson-1927], [efron-tibshirani-1993]; redrawn errors are widened by sqrt(n/(n-1)),
    so that their scatter is not too small, and the quantiles by the t distribution [hesterberg-2015].

    Examples
    --------
    >>> import numpy as np
    >>> rng = np.random.default_rng(2)
    >>> starts, targets = np.zeros((20, 2)), np.tile([100.0, 0.0], (20, 1))
    >>> selections = targets + rng.normal(0, 3, (20, 2))
    >>> selections[7] = [2.0, 1.0]
    >>> report = throughput_report(starts, targets, selections, np.full(20, 0.8), widths=14.0)
    >>> report.movements, report.left_out
    (19, ('row 8: selected nearer to the start than to the target',))
    """
    durations = np.asarray(times_s, dtype=np.float64)
    if durations.ndim != 1:
        raise BadInput(Problem("times_s", f"shape {durations.shape}", "one column"))
    n = durations.size
    s, t, q = (
        checked_columns(name, each, n)
        for name, each in (("starts", starts), ("targets", targets), ("selections", selections))
    )
    width = np.full(n, np.nan) if widths is None else np.broadcast_to(np.asarray(widths, dtype=np.float64), (n,))
    distance, error, missed = _along(s, t, q)
    reasons = _implausible(distance, missed, np.hypot(*(q - s).T), durations, width)
    kept = np.array([reason is None for reason in reasons], dtype=bool)
    before = np.zeros(n)
    if serial:
        before[1:] = np.where(kept[:-1], np.nan_to_num(error[:-1]), 0.0)
    used = _Movements((distance + before)[kept], error[kept], durations[kept], _sequences(distance[kept], width[kept]))
    hits = missed[kept] <= width[kept] / 2 if widths is not None else None
    left_out = tuple(f"row {k + 1}: {reason}" for k, reason in enumerate(reasons) if reason is not None)
    return PointingReport(
        int(kept.sum()), _throughput_estimate(used, rng), _error_rate(hits, "The widths of the targets are not known."),
        (), left_out,
    )  # fmt: skip


def _implausible(
    distance: NDArray[np.float64],
    missed: NDArray[np.float64],
    travelled: NDArray[np.float64],
    durations_s: NDArray[np.float64],
    width: NDArray[np.float64],
) -> list[str | None]:
    """For each row why it is left out, or None."""
    reasons: list[str | None] = [None] * distance.size

    def leave_out(rows: NDArray[np.bool_], reason: str) -> None:
        for k in np.flatnonzero(rows):
            reasons[k] = reasons[k] or reason

    leave_out(~(np.isfinite(distance) & np.isfinite(missed) & np.isfinite(durations_s)), "an empty cell")
    leave_out(durations_s <= 0, "no time passed")
    leave_out(distance == 0, "the start lies on the target")
    leave_out(missed > travelled, "selected nearer to the start than to the target")
    kept = np.array([reason is None for reason in reasons], dtype=bool)
    if int(kept.sum()) < LEAST_IN_SEQUENCE:
        return reasons
    middle, spread = _robust(missed[kept])
    within = missed <= np.nan_to_num(width)
    far = ~within & (missed > middle + FAR_SDS * max(spread, 0.005 * float(np.median(distance[kept]))))
    leave_out(far, "selected far from the target, unlike the other movements")
    middle, spread = _robust(np.log(durations_s[kept]))
    with np.errstate(divide="ignore", invalid="ignore"):
        odd = np.abs(np.log(durations_s) - middle) > TIME_SDS * max(spread, 0.05)
    leave_out(odd, "the time is far from that of the other movements")
    return reasons


def _robust(values: NDArray[np.float64]) -> tuple[float, float]:
    middle = float(np.median(values))
    return middle, 1.4826 * float(np.median(np.abs(values - middle)))


def _sequences(distance: NDArray[np.float64], width: NDArray[np.float64]) -> NDArray[np.intp]:
    """Number of the sequence of each movement: equal width, and like distance."""
    group = np.zeros(distance.size, dtype=np.intp)
    next_free = 0
    for each in np.unique(np.nan_to_num(width, nan=-1.0)):
        rows = np.flatnonzero(np.nan_to_num(width, nan=-1.0) == each)
        order = rows[np.argsort(distance[rows])]
        longer = distance[order][1:] > SAME_DISTANCE * distance[order][:-1]
        group[order] = next_free + np.concatenate([[0], np.cumsum(longer)])
        next_free = int(group.max()) + 1
    return group


def _throughput_estimate(used: _Movements, rng: np.random.Generator | None) -> Estimate:
    """Mean over sequences of the effective throughput, with the interval from redrawn movements."""
    from scipy.stats import norm, t

    n = used.error.size
    if n < 3:
        return Estimate.unbounded(math.nan, f"{n} movements are too few for throughput: record at least 10.", n=n)
    members = [np.flatnonzero(used.group == each) for each in np.unique(used.group)]
    members = [rows for rows in members if rows.size >= LEAST_IN_SEQUENCE] or [np.arange(n)]
    value = float(np.mean([_throughput(used.distance[r], used.error[r], used.durations_s[r]) for r in members]))
    if not math.isfinite(value):
        return Estimate.unbounded(math.nan, "The selections do not scatter about their targets.", n=n)
    generator = np.random.default_rng(0) if rng is None else rng
    drawn = np.zeros(DRAWS)
    for rows in members:
        pick = rows[generator.integers(0, rows.size, (DRAWS, rows.size))]
        middle = float(used.error[rows].mean())
        wider = middle + (used.error[pick] - middle) * math.sqrt(rows.size / (rows.size - 1))
        drawn += _throughput(used.distance[pick], wider, used.durations_s[pick]) / len(members)
    # Few movements: as far into the tails as the t distribution is wider than the normal, about the value itself.
    count = int(sum(rows.size for rows in members))
    free = count - len(members)
    tail = float(norm.cdf(t.ppf(0.025, free) * math.sqrt(count / free)))
    low, high = np.nanquantile(drawn, [tail, 1 - tail]) + value - np.nanmean(drawn)
    return Estimate(value, float(low), float(high), n=count)


def _error_rate(hits: NDArray[np.bool_] | None, unknown: str) -> Estimate:
    from scipy.stats import binomtest

    if hits is None or hits.size == 0:
        return Estimate.unbounded(math.nan, unknown if hits is None else "There was no movement to count.", n=0)
    misses = int((~hits).sum())
    ends = binomtest(misses, hits.size).proportion_ci(confidence_level=0.95, method="wilson")
    return Estimate(misses / hits.size, float(ends.low), float(ends.high), n=hits.size)


def pointing_report(
    times_s: ArrayLike,
    xy: ArrayLike,
    cue_xy: ArrayLike,
    cue_width: float,
    *,
    hysteresis: float | None = None,
    rng: np.random.Generator | None = None,
) -> PointingReport:
    """Aimed movements in a recording whose cue jumps from target to target.

    A movement begins where the player is when the cue jumps and ends when they have stayed in the target for
    0.2 s: its path and its time run from the jump to the entry into that stay, its selection is the mean place during
    those 0.2 s. Who never stays is taken at the last sample before the next jump, with all the time
    there was. The time to notice the jump is part of it. A selection outside the target is an error.

    Parameters
    ----------
    times_s : array, shape (n,)
        Seconds.
    xy : array, shape (n, 2)
        Where the player was; NaN where a cell was empty.
    cue_xy : array, shape (n, 2)
        Centre of the target asked for; NaN where nothing was asked.
    cue_width : float
        Diameter of the targets, in the unit of `xy`.
    hysteresis : float or None
        For `path_accuracy`; None for one twentieth of the target's width.
    rng : numpy Generator or None
        For the interval of the throughput; None for a generator seeded with 0.

    Returns
    -------
    PointingReport
        Throughput and error rate as in `throughput_report`; path measures are the medians over the movements,
        with the hysteresis named. `left_out` names the movement by its number and time.

    Raises
    ------
    BadInput
        Shapes that do not fit, a width of 0 or less, no cue, or a cue that moves all the time.

    Notes
    -----
    Source: [soukoreff-2004], [mackenzie-2001]. The starts are where the player really was, so no serial term is added.

    Examples
    --------
    >>> import numpy as np
    >>> rng = np.random.default_rng(3)
    >>> t = np.arange(3000) / 100
    >>> cue = np.where(np.arange(3000) // 150 % 2 == 0, -0.5, 0.5)
    >>> place = np.convolve(cue, np.full(40, 1 / 40))[:3000] + np.repeat(rng.normal(0, 0.02, 20), 150)
    >>> report = pointing_report(t, np.column_stack([place, 0 * t]), np.column_stack([cue, 0 * t]), 0.2)
    >>> report.movements, report.error_rate.value
    (19, 0.0)
    """
    times = checked_times(times_s)
    places = checked_columns("xy", xy, times.size)
    cues = checked_columns("cue_xy", cue_xy, times.size)
    if not (math.isfinite(cue_width) and cue_width > 0):
        raise BadInput(Problem("cue_width", str(cue_width), "a width above 0"))
    jitter = cue_width / 20 if hysteresis is None else hysteresis
    found: list[tuple[NDArray[np.float64], ...]] = []
    durations, measures, left_out = [], [], []
    for number, (a, b) in enumerate(_asked(times, cues), start=1):
        movement: tuple[int, NDArray[np.float64], float] | str = "asked before the recording began"
        if a > 0:
            movement = _movement(times[a:b], places[a:b], cues[a], cue_width)
        if isinstance(movement, str):
            left_out.append(f"movement {number} at {times[a]:.1f} s: {movement}")
            continue
        last, selection, duration_s = movement
        found.append((places[a], cues[a], selection))
        durations.append(duration_s)
        measures.append(path_accuracy(places[a : a + last + 1], places[a], cues[a], cue_width, jitter))
    return _pointing(found, np.array(durations), measures, cue_width, jitter, left_out, rng)


def _pointing(
    found: list[tuple[NDArray[np.float64], ...]],
    durations_s: NDArray[np.float64],
    measures: list[PathAccuracy],
    cue_width: float,
    jitter: float,
    left_out: list[str],
    rng: np.random.Generator | None,
) -> PointingReport:
    starts, targets, selections = (np.array([each[k] for each in found]).reshape(-1, 2) for k in range(3))
    distance, error, missed = _along(starts, targets, selections)
    used = _Movements(distance, error, durations_s, _sequences(distance, np.full(distance.size, cue_width)))
    assumed = f"jitter up to {jitter:.3g} to either side does not count" if jitter > 0 else None
    medians = tuple(
        (name, median_estimate([getattr(each, name) for each in measures], assumed=assumed))
        for name in PathAccuracy._fields
    )
    hits = missed <= cue_width / 2
    return PointingReport(len(found), _throughput_estimate(used, rng), _error_rate(hits, ""), medians, tuple(left_out))


def _asked(times_s: NDArray[np.float64], cues: NDArray[np.float64]) -> Iterator[tuple[int, int]]:
    """First sample and end of each stretch with one target."""
    known: NDArray[np.bool_] = np.asarray(np.isfinite(cues).all(axis=1))
    if not known.any():
        raise BadInput(Problem("cue_xy", "no target", "where the player was asked to go", "Use the guided task."))
    moved = np.ones(times_s.size, dtype=np.bool_)
    moved[1:] = (known[1:] != known[:-1]) | (known[1:] & (cues[1:] != cues[:-1]).any(axis=1))
    starts = np.flatnonzero(moved)
    ends = np.append(starts[1:], times_s.size)
    asked = known[starts]
    stay_s = times_s[np.minimum(ends, times_s.size - 1)] - times_s[starts]
    if float(np.median(stay_s[asked])) < LEAST_CUE_S:
        raise BadInput(
            Problem(
                "cue_xy", f"a target that stays for {float(np.median(stay_s[asked])):.2g} s",
                f"targets that stay for {LEAST_CUE_S:g} s or more",
                "For a target that moves all the time use tracking.",
            )
        )  # fmt: skip
    yield from zip(starts[asked].tolist(), ends[asked].tolist(), strict=True)


def _movement(
    times_s: NDArray[np.float64], places: NDArray[np.float64], target: NDArray[np.float64], width: float
) -> tuple[int, NDArray[np.float64], float] | str:
    """Last sample, selection and duration of a movement; or why it is left out."""
    if times_s.size < 3:
        return "too few samples"
    if not np.isfinite(places).all() or float(np.diff(times_s).max()) > GAP_S:
        return "a break in the recording"
    distance = np.hypot(*(target - places[0]))
    if distance <= width / 2:
        return "began inside the target"
    inside: NDArray[np.bool_] = np.asarray(np.hypot(*(places - target).T) <= width / 2)
    last, selection, duration_s = _selection(times_s, places, inside)
    if float(np.hypot(*(places - places[0]).T).max()) < min(width / 2, distance / 10):
        return "no movement"
    if np.hypot(*(selection - target)) > np.hypot(*(selection - places[0])):
        return "ended nearer to its start than to the target"
    return last, selection, duration_s


def _selection(
    times_s: NDArray[np.float64], places: NDArray[np.float64], inside: NDArray[np.bool_]
) -> tuple[int, NDArray[np.float64], float]:
    edges = np.flatnonzero(np.diff(np.concatenate([[False], inside, [False]]).astype(np.int8)))
    for entry, out in edges.reshape(-1, 2):
        stay = int(np.searchsorted(times_s, times_s[entry] + SETTLED_S - 1e-9))
        if stay < out:
            return int(entry), places[entry : stay + 1].mean(axis=0), float(times_s[entry] - times_s[0])
    return times_s.size - 1, places[-1], float(times_s[-1] - times_s[0])
