"""Aimed movements from the points where they began and ended: throughput by effective values, and errors.

Recordings in which the cue jumps from target to target are cut into such movements by `stickwright.trace.aimed`.
Lengths may be in any unit, the same throughout.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.aiming import Aiming, Without
from stickwright.codes.estimate import Estimate
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import Text, message
from stickwright.codes.signals import Signals
from stickwright.errors import BadInput, Problem
from stickwright.model.effective_width import EFFECTIVE_WIDTHS
from stickwright.model.recorded import PointingReport
from stickwright.trace.intervals import median_estimate
from stickwright.trace.stamps import checked_columns

__all__ = [
    "AimedMovements", "along", "error_rate", "index_of_difficulty", "sequences", "throughput", "throughput_estimate",
    "throughput_report",
]  # fmt: skip

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
        raise BadInput(Problem("distance", str(distance), message(Signals.expected, what="length_or_0")))
    if not (math.isfinite(width) and width > 0):
        raise BadInput(Problem("width", str(width), message(Signals.expected, what="length_above_0")))
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
        Problem(
            name,
            message(Signals.shape, shape=each.shape),
            message(Signals.shape_for_times, shape=(durations.size, 2), or_more=False),
        )
        for name, each in zip(("starts", "targets", "selections"), arrays, strict=True)
        if each.shape != (durations.size, 2)
    ]
    if durations.ndim != 1 or durations.size < 2:
        problems.append(
            Problem(
                "times_s",
                message(Signals.count, count=durations.size, of="movements"),
                message(Signals.expected, what="two_or_more"),
            )
        )
    elif not (np.isfinite(durations).all() and durations.min() > 0):
        problems.append(
            Problem("times_s", f"{durations.min():g} s", message(Signals.expected, what="durations_above_0"))
        )
    if problems:
        raise BadInput(problems)
    if not all(np.isfinite(each).all() for each in arrays):
        raise BadInput(
            Problem(
                message(Signals.step, what="movements"),
                message(Signals.found, what="empty_cell"),
                message(Signals.expected, what="numbers"),
                message(Signals.remedy, what="leave_out_movement"),
            )
        )
    distance, error, _ = along(*arrays)
    if distance.min() <= 0:
        row = int(np.argmin(distance)) + 1
        raise BadInput(
            Problem(
                message(FilePlaces.row, number=row),
                message(Signals.found, what="start_on_target"),
                message(Signals.expected, what="a_movement"),
                message(Signals.remedy, what="leave_out_movement"),
            )
        )
    before = np.concatenate([[0.0], error[:-1]]) if serial else np.zeros(error.size)
    bits = float(_throughput(distance + before, error, durations))
    if not math.isfinite(bits):
        scatter = (
            message(Signals.found, what="no_scatter")
            if float(np.ptp(error)) == 0
            else message(Signals.found, what="behind_starts")
        )
        raise BadInput(Problem("selections", scatter, message(Signals.expected, what="scattered_selections")))
    return bits


def along(
    starts: NDArray[np.float64], targets: NDArray[np.float64], selections: NDArray[np.float64]
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Distance, signed error along the way (plus is overshoot), and distance of the selection from the target.

    Parameters
    ----------
    starts, targets, selections : array, shape (n, 2)
        As for `throughput`.

    Returns
    -------
    distance, error, missed : array, shape (n,)
        In the unit of the places; the error is NaN where the start lies on the target.

    Notes
    -----
    Source: law of cosines, as in [soukoreff-2004].

    Examples
    --------
    >>> [each.round(9).tolist() for each in along(np.zeros((1, 2)), np.array([[100.0, 0]]), np.array([[104.0, 3]]))]
    [[100.0], [4.0], [5.0]]
    """
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
class AimedMovements:
    """Movements that are used, as arrays of the same length.

    Parameters
    ----------
    distance, error : array, shape (n,)
        Way to the target and signed error along it.
    durations_s : array, shape (n,)
        Duration of each movement.
    group : array of int, shape (n,)
        Number of the sequence that it belongs to.
    """

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
    serial: ArrayLike = False,
    *,
    hits: ArrayLike | None = None,
    rows: ArrayLike | None = None,
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
    serial : bool, or array of bool, shape (n,), default False
        As for `throughput`, for all rows or for each; the previous row's error is used where that row was kept.
    hits : array, shape (n,), or None
        1 where the target was hit, 0 where not, NaN where that is not known; better than the distance and a diameter
        where targets are not circles.
    rows : array of int, shape (n,), or None
        What each row is called where it is left out; None for counting from 1.
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
    (19, (Message(code='Aiming.rows_out', params=(('rows', (8,)), ('why', 'selected-nearer-start'))),))
    """
    durations = np.asarray(times_s, dtype=np.float64)
    if durations.ndim != 1:
        raise BadInput(
            Problem(
                "times_s", message(Signals.shape, shape=durations.shape), message(Signals.expected, what="one_column")
            )
        )
    n = durations.size
    s, t, q = (
        checked_columns(name, each, n)
        for name, each in (("starts", starts), ("targets", targets), ("selections", selections))
    )
    width = np.full(n, np.nan) if widths is None else np.broadcast_to(np.asarray(widths, dtype=np.float64), (n,))
    distance, error, missed = along(s, t, q)
    reasons = _implausible(distance, missed, np.hypot(*(q - s).T), durations, width)
    kept = np.array([reason is None for reason in reasons], dtype=bool)
    follows = np.broadcast_to(np.asarray(serial, dtype=np.bool_), (n,))
    before = np.zeros(n)
    before[1:] = np.where(kept[:-1] & follows[1:], np.nan_to_num(error[:-1]), 0.0)
    used = AimedMovements(
        (distance + before)[kept], error[kept], durations[kept], sequences(distance[kept], width[kept])
    )
    known = missed[kept] <= width[kept] / 2 if widths is not None else None
    if hits is not None:
        told = np.asarray(hits, dtype=np.float64)[kept]
        known = told[np.isfinite(told)] == 1
    names = np.arange(1, n + 1) if rows is None else np.asarray(rows)
    left_out = tuple(
        message(
            Aiming.rows_out,
            rows=tuple(int(name) for name, why in zip(names, reasons, strict=True) if why == reason),
            why=reason,
        )
        for reason in dict.fromkeys(reasons)
        if reason is not None
    )
    return PointingReport(
        int(kept.sum()), throughput_estimate(used, rng), error_rate(known, message(Aiming.widths_unknown)),
        (), left_out, ended_by="table", serial=bool(follows.any()), movement_time_s=median_estimate(durations[kept]),
    )  # fmt: skip


def _implausible(
    distance: NDArray[np.float64],
    missed: NDArray[np.float64],
    travelled: NDArray[np.float64],
    durations_s: NDArray[np.float64],
    width: NDArray[np.float64],
) -> list[Without | None]:
    """For each row why it is left out, or None."""
    reasons: list[Without | None] = [None] * distance.size

    def leave_out(rows: NDArray[np.bool_], reason: Without) -> None:
        for k in np.flatnonzero(rows):
            reasons[k] = reasons[k] or reason

    leave_out(~(np.isfinite(distance) & np.isfinite(missed) & np.isfinite(durations_s)), "empty-cell")
    leave_out(durations_s <= 0, "no-time")
    leave_out(distance == 0, "start-on-target")
    leave_out(missed > travelled, "selected-nearer-start")
    kept = np.array([reason is None for reason in reasons], dtype=bool)
    if int(kept.sum()) < LEAST_IN_SEQUENCE:
        return reasons
    middle, spread = _robust(missed[kept])
    within = missed <= np.nan_to_num(width)
    far = ~within & (missed > middle + FAR_SDS * max(spread, 0.005 * float(np.median(distance[kept]))))
    leave_out(far, "far-from-target")
    middle, spread = _robust(np.log(durations_s[kept]))
    with np.errstate(divide="ignore", invalid="ignore"):
        odd = np.abs(np.log(durations_s) - middle) > TIME_SDS * max(spread, 0.05)
    leave_out(odd, "time-apart")
    return reasons


def _robust(values: NDArray[np.float64]) -> tuple[float, float]:
    middle = float(np.median(values))
    return middle, 1.4826 * float(np.median(np.abs(values - middle)))


def sequences(distance: NDArray[np.float64], width: NDArray[np.float64]) -> NDArray[np.intp]:
    """Number of the sequence of each movement: equal width, and like distance.

    Parameters
    ----------
    distance, width : array, shape (n,)
        In one unit; a width that is not known is NaN.

    Examples
    --------
    >>> sequences(np.array([100.0, 300.0, 110.0]), np.full(3, 20.0)).tolist()
    [0, 1, 0]
    """
    group = np.zeros(distance.size, dtype=np.intp)
    next_free = 0
    for each in np.unique(np.nan_to_num(width, nan=-1.0)):
        rows = np.flatnonzero(np.nan_to_num(width, nan=-1.0) == each)
        order = rows[np.argsort(distance[rows])]
        longer = distance[order][1:] > SAME_DISTANCE * distance[order][:-1]
        group[order] = next_free + np.concatenate([[0], np.cumsum(longer)])
        next_free = int(group.max()) + 1
    return group


def throughput_estimate(used: AimedMovements, rng: np.random.Generator | None) -> Estimate:
    """Mean over sequences of the effective throughput, with the interval from redrawn movements.

    Parameters
    ----------
    used : AimedMovements
        Those that count.
    rng : numpy Generator or None
        For the interval; None for a generator seeded with 0.

    Returns
    -------
    Estimate
        Bit a second; see `throughput_report`.
    """
    from scipy.stats import norm, t

    n = used.error.size
    if n < 3:
        return Estimate.missing(message(Aiming.few_for_throughput, movements=n, least=10), n=n)
    members = [np.flatnonzero(used.group == each) for each in np.unique(used.group)]
    members = [rows for rows in members if rows.size >= LEAST_IN_SEQUENCE] or [np.arange(n)]
    value = float(np.mean([_throughput(used.distance[r], used.error[r], used.durations_s[r]) for r in members]))
    if not math.isfinite(value):
        return Estimate.missing(message(Aiming.no_scatter), n=n)
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


def error_rate(hits: NDArray[np.bool_] | None, unknown: Text) -> Estimate:
    """Share of the targets missed, with Wilson's interval.

    Parameters
    ----------
    hits : array of bool, shape (n,), or None
        Which targets were hit.
    unknown : Message or str
        Why that is not known, where it is None.

    Notes
    -----
    Source: [wilson-1927].

    Examples
    --------
    >>> error_rate(np.array([True, True, True, False]), "").value
    0.25
    """
    from scipy.stats import binomtest

    if hits is None or hits.size == 0:
        return Estimate.missing(unknown if hits is None else message(Aiming.none_to_count), n=0)
    misses = int((~hits).sum())
    ends = binomtest(misses, hits.size).proportion_ci(confidence_level=0.95, method="wilson")
    return Estimate(misses / hits.size, float(ends.low), float(ends.high), n=hits.size)
