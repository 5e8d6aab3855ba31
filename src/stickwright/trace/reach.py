"""How far the output gets in each direction, and the statistics of directions.

Reach is counted from the rest centre. Pushes and laps along the edge tell what is possible; free play
only tells what was used.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, message
from stickwright.codes.movements import Movements, Tried
from stickwright.codes.signals import Signals
from stickwright.codes.ways import WAYS, Way
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import Finding, ReachReport
from stickwright.trace.recording import Cleaned

__all__ = ["CircularMean", "circular_half_width", "circular_mean", "covered_share", "direction_word", "reach_report"]

SECTORS = 8

PLAY_QUANTILE = 0.9
"""Reach in play is passed in one stretch of play out of ten: pushes are seldom full there."""

REACHED_S = 0.05
"""A push has reached what it keeps for so long: one odd sample is no reach."""

DRAWS = 300

_AT_LIMIT = message(Movements.at_limit)


class CircularMean(NamedTuple):
    """Statistics of a set of directions.

    Parameters
    ----------
    mean_rad : float
        Mean direction, -pi to pi.
    resultant_length : float
        1 when all agree, 0 when they cancel.
    sd_rad : float
        Circular standard deviation, sqrt(-2 ln R).
    rayleigh_z : float
        n R squared.
    rayleigh_p : float
        Chance of at least this agreement from directions without any preference.
    """

    mean_rad: float
    resultant_length: float
    sd_rad: float
    rayleigh_z: float
    rayleigh_p: float


def circular_mean(angles_rad: ArrayLike) -> CircularMean:
    """Mean direction, agreement, spread and Rayleigh test.

    Parameters
    ----------
    angles_rad : array, shape (n,)
        Directions.

    Returns
    -------
    CircularMean
        Fields by name.

    Raises
    ------
    BadInput
        No direction, or one that is not a number.

    Notes
    -----
    Spread after [mardia-1972]; Rayleigh p = exp(sqrt(1 + 4n + 4(n^2 - (nR)^2)) - (1 + 2n)) [zar-2010]. The usual short
    series for p goes negative for few directions that agree well.

    Examples
    --------
    >>> found = circular_mean(np.radians([350, 355, 2, 10, 15]))
    >>> round(float(np.degrees(found.mean_rad)), 3)
    2.399
    """
    angles = np.asarray(angles_rad, dtype=np.float64).ravel()
    if not angles.size or not np.isfinite(angles).all():
        found = (
            message(Signals.found, what="no_direction")
            if not angles.size
            else message(Signals.found, what="not_a_direction")
        )
        raise BadInput(
            Problem(
                "directions",
                found,
                message(Signals.expected, what="one_angle"),
                message(Signals.remedy, what="leave_out_cells"),
            )
        )
    n = angles.size
    cosine, sine = float(np.cos(angles).mean()), float(np.sin(angles).mean())
    length = min(1.0, math.hypot(cosine, sine))
    spread = math.sqrt(max(0.0, -2 * math.log(length))) if length > 0 else math.inf
    p = math.exp(math.sqrt(1 + 4 * n + 4 * (n**2 - (n * length) ** 2)) - (1 + 2 * n))
    return CircularMean(math.atan2(sine, cosine), length, spread, n * length**2, min(1.0, p))


def circular_half_width(angles_rad: ArrayLike, level: float = 0.95) -> float:
    """Half the width of the interval of a mean direction.

    Parameters
    ----------
    angles_rad : array, shape (n,)
        Independent directions.
    level : float, default 0.95
        Coverage.

    Returns
    -------
    float
        Radians; NaN when the directions agree too little for any interval.

    Notes
    -----
    Source: [upton-1986], as equations 26.24 and 26.25 of [zar-2010]: one form below a resultant length of 0.9, one
    above. Assumed: directions spread as a von Mises distribution.

    Examples
    --------
    >>> round(circular_half_width([0.88333, 2.22854, 3.06369, 1.49836, 1.51748]), 4)
    0.9005
    """
    from scipy.stats import chi2

    found = circular_mean(angles_rad)
    n = int(np.asarray(angles_rad).size)
    quantile = float(chi2.ppf(level, 1))
    total = n * found.resultant_length
    if found.resultant_length >= 0.9:
        squared = n**2 - (n**2 - total**2) * math.exp(quantile / n)
    elif found.resultant_length > math.sqrt(quantile / (2 * n)):
        squared = 2 * n * (2 * total**2 - n * quantile) / (4 * n - quantile)
    else:
        return math.nan
    return math.acos(min(1.0, math.sqrt(squared) / total)) if squared >= 0 else math.nan


def direction_word(direction_rad: float) -> Way:
    """A direction in words, to the nearest eighth.

    Parameters
    ----------
    direction_rad : float
        0 right, pi/2 forward.

    Examples
    --------
    >>> direction_word(-np.pi / 2)
    'back'
    """
    return WAYS[round(direction_rad / (math.pi / 4)) % SECTORS]


def covered_share(direction_rad: NDArray[np.float64], reach: NDArray[np.float64]) -> NDArray[np.float64]:
    """Area of the reach polygon over that of full reach in the same directions.

    Parameters
    ----------
    direction_rad : array, shape (d,)
        Rising, round the whole circle.
    reach : array, shape (..., d)
        Share of full output per direction.

    Returns
    -------
    array, shape (...)
        1 when every direction gets full output.

    Notes
    -----
    Shoelace formula in polar form: half the sum of r_i r_(i+1) sin of the angle between.

    Examples
    --------
    >>> quarters = np.radians([0, 90, 180, 270])
    >>> float(covered_share(quarters, np.array([1.0, 0.5, 1.0, 0.5])))
    0.5
    """
    between = np.sin(np.diff(direction_rad, append=direction_rad[0] + 2 * math.pi))
    return np.asarray((reach * np.roll(reach, -1, axis=-1) * between).sum(axis=-1) / between.sum())


def reach_report(
    clean: Cleaned,
    *,
    centre: tuple[float, float] | None = (0.0, 0.0),
    keep: NDArray[np.bool_] | None = None,
    rng: np.random.Generator | None = None,
) -> tuple[ReachReport | None, list[Finding]]:
    """Reach per direction and covered area.

    Parameters
    ----------
    clean : Cleaned
        Usable samples.
    centre : (float, float) or None, default (0, 0)
        Rest centre, from which reach is counted; None where it is not known.
    keep : array of bool, shape (n,), or None
        False where involuntary bursts are left out.
    rng : numpy.random.Generator or None
        For the block bootstrap; None takes a fixed seed.

    Returns
    -------
    ReachReport or None
        None when no movement was asked or seen, with a finding why.
    list of Finding
        On what the reach stands, and directions that were not tried.

    Notes
    -----
    Pushes: the best 50 ms of each; scatter pooled over directions, t interval. Laps along the edge: the farthest three
    samples on end per sector and lap, mean over laps. Play: the same per sector and stretch of time, the value that one
    stretch in ten passes. Laps and stretches are drawn anew as blocks ([efron-tibshirani-1993]); with few of them the
    interval is widened by t.
    """
    if centre is None:
        return None, [Finding("note", "no_reach", message(Movements.centre_unknown))]
    pushes = _pushes(clean, centre, keep)
    if len({direction for direction, _ in pushes}) >= 2:
        return _from_pushes(clean, pushes)
    edge = clean.asked("rim")
    moving = edge if edge.any() else clean.asked("play", "aim", "follow", "push", "")
    if keep is not None:
        moving &= keep
    if not moving.any():
        return None, [Finding("note", "no_reach", message(Movements.nothing_asked))]
    return _from_sectors(clean, moving, bool(edge.any()), centre, np.random.default_rng(0) if rng is None else rng)


def _pushes(
    clean: Cleaned, centre: tuple[float, float], keep: NDArray[np.bool_] | None
) -> list[tuple[float, float]]:  # fmt: skip
    """Cued direction, to the nearest degree, and reach of each push."""
    found: list[tuple[float, float]] = []
    if clean.cue_xy is None:
        return found
    best = max(3, round(REACHED_S / clean.step_s))
    for start, stop in clean.asked_pieces("push"):
        toward = clean.cue_xy[start]
        if not np.isfinite(toward).all() or not toward.any() or stop - start < 2 * best:
            continue
        part = clean.xy[start:stop] if keep is None else clean.xy[start:stop][keep[start:stop]]
        if len(part) < best:
            continue
        radius = np.hypot(*(part - centre).T)
        degrees = round(math.degrees(math.atan2(toward[1], toward[0]))) % 360
        found.append((math.radians(degrees), float(np.partition(radius, -best)[-best:].mean())))
    return found


def _from_pushes(clean: Cleaned, pushes: list[tuple[float, float]]) -> tuple[ReachReport, list[Finding]]:
    from scipy.stats import t

    directions = np.array(sorted({direction for direction, _ in pushes}))
    repeats = [np.array([r for d, r in pushes if d == direction]) for direction in directions]
    means = np.array([r.mean() for r in repeats])
    counts = np.array([len(r) for r in repeats])
    degrees = int(counts.sum()) - len(directions)
    pooled = sum(float(((r - r.mean()) ** 2).sum()) for r in repeats) / max(degrees, 1)
    why = None
    if degrees < 1:
        why = message(Movements.one_push_each)
    elif pooled == 0:
        why = _AT_LIMIT
    half = float(t.ppf(0.975, max(degrees, 1))) * np.sqrt(pooled / counts + clean.step**2 / 12)
    reach = [
        Estimate.unbounded(float(m), why, n=int(n))
        if why
        else Estimate(float(m), max(0.0, float(m - h)), float(m + h), n=int(n))
        for m, h, n in zip(means, half, counts, strict=True)
    ]
    between = np.sin(np.diff(directions, append=directions[0] + 2 * math.pi))
    lean = (np.roll(means, -1) * between + np.roll(means, 1) * np.roll(between, 1)) / (between.sum() or math.nan)
    area = _area(clean, directions, means, why, float(np.sqrt((lean**2 * half**2).sum())), int(counts.sum()))
    weakest = float(directions[int(np.argmin(means))])
    return ReachReport(tuple(directions.tolist()), tuple(reach), area, weakest), []


def _area(
    clean: Cleaned,
    directions: NDArray[np.float64],
    reach: NDArray[np.float64],
    why: Message | None,
    half: float,
    n: int,
) -> Estimate:
    if clean.unit_is_foreign:
        return Estimate.missing(message(Movements.no_full_output), n=0)
    if not all(clean.recorded):
        return Estimate.missing(message(Movements.one_axis_only), n=0)
    widest = float(np.diff(directions, append=directions[0] + 2 * math.pi).max()) if len(directions) > 2 else math.pi
    if widest >= math.pi - 1e-9 or not np.isfinite(reach).all():
        return Estimate.missing(message(Movements.not_all_tried), n=0)
    share = float(covered_share(directions, reach))
    if why is not None:
        return Estimate.unbounded(share, why, n=n)
    return Estimate(share, max(0.0, share - half), share + half, n=n)


def _from_sectors(
    clean: Cleaned, moving: NDArray[np.bool_], edge: bool, centre: tuple[float, float], rng: np.random.Generator
) -> tuple[ReachReport | None, list[Finding]]:
    from scipy.stats import t

    directions: NDArray[np.float64] = np.arange(SECTORS, dtype=np.float64) * (2 * math.pi / SECTORS)
    if not all(clean.recorded):
        directions = np.array([0.0, math.pi]) + (0.0 if clean.recorded[0] else math.pi / 2)
    farthest = _farthest(clean, moving, edge, centre, directions)
    if not len(farthest) or not np.isfinite(farthest).any():
        return None, [Finding("note", "no_reach", message(Movements.hardly_moved))]
    tried = np.asarray(np.isfinite(farthest).any(axis=0))
    counts = np.isfinite(farthest).sum(axis=0)
    value = np.full(len(directions), math.nan)
    value[tried] = _middle(farthest[:, tried], edge)
    blocks = len(farthest)
    drawn = farthest[rng.integers(0, blocks, (DRAWS, blocks))]
    drawn = np.where(np.isfinite(drawn).any(axis=1, keepdims=True), drawn, value)
    draws = np.full((DRAWS, len(directions)), math.nan)
    draws[:, tried] = _middle(drawn[:, :, tried], edge)
    seen = np.maximum(counts, 2)
    widened = np.asarray(t.ppf(0.975, seen - 1) * np.sqrt(seen / (seen - 1)))
    half = np.asarray(draws.std(axis=0) * widened + clean.step / math.sqrt(12))
    kind: Tried = "lap" if edge else "play"
    reach = tuple(
        _sector_estimate(float(v), float(h), int(n), kind) for v, h, n in zip(value, half, counts, strict=True)
    )  # fmt: skip
    few = message(Movements.few_reached, tried=kind) if counts.min() < 3 else None
    area_half = 0.0
    if tried.all() and len(directions) > 2:
        area_half = float(covered_share(directions, draws).std() * widened.max())
    area = _area(clean, directions, value, few or (None if area_half > 0 else _AT_LIMIT), area_half, blocks)
    weakest = float(directions[int(np.nanargmin(value))])
    return ReachReport(tuple(directions.tolist()), reach, area, weakest), _sector_findings(
        clean, directions, tried, value, edge
    )  # fmt: skip


def _middle(farthest: NDArray[np.float64], edge: bool) -> NDArray[np.float64]:
    """Over laps the mean, over stretches of play a high quantile."""
    axis = farthest.ndim - 2
    if edge:
        return np.asarray(np.nanmean(farthest, axis=axis))
    return _quantile_of_known(farthest, PLAY_QUANTILE, axis)


def _quantile_of_known(values: NDArray[np.float64], share: float, axis: int) -> NDArray[np.float64]:
    """As numpy's `nanquantile`, which goes through thousands of draws one by one: NaN is sorted to the end."""
    ordered = np.sort(values, axis=axis)
    last = np.maximum(np.count_nonzero(~np.isnan(values), axis=axis, keepdims=True) - 1, 0)
    place = share * last
    below = np.floor(place).astype(np.intp)
    low, high = (np.take_along_axis(ordered, np.minimum(at, last), axis) for at in (below, below + 1))
    return np.asarray((low + (place - below) * (high - low)).squeeze(axis))


def _sector_estimate(value: float, half: float, n: int, kind: Tried) -> Estimate:
    if n == 0:
        return Estimate.missing(message(Movements.not_tried), n=0)
    if n < 3:
        return Estimate.unbounded(value, message(Movements.few_came, count=n, tried=kind), n=n)
    if half == 0:
        return Estimate.unbounded(value, _AT_LIMIT, n=n)
    return Estimate(value, max(0.0, value - half), value + half, n=n)


def _farthest(
    clean: Cleaned,
    moving: NDArray[np.bool_],
    edge: bool,
    centre: tuple[float, float],
    directions: NDArray[np.float64],
) -> NDArray[np.float64]:
    """Farthest three samples on end per block and sector; NaN where a sector was not left toward the edge."""
    rows: list[NDArray[np.float64]] = []
    total_s = sum(float(clean.times_s[b - 1] - clean.times_s[a]) for a, b in clean.pieces(moving))
    block_s = max(10.0, total_s / 400) if not edge else max(2.0, total_s / 400)
    for start, stop in clean.pieces(moving):
        for first, last in _blocks(clean, start, stop, edge, centre, block_s):
            xy = clean.xy[first:last] - centre
            if len(xy) < 3:
                continue
            radius = np.hypot(xy[:, 0], xy[:, 1])
            kept = np.minimum(np.minimum(radius[:-2], radius[1:-1]), radius[2:])
            angle = np.arctan2(xy[1:-1, 1], xy[1:-1, 0])
            turn = 2 * math.pi / len(directions)
            sector = np.rint((angle - directions[0]) / turn).astype(np.int64) % len(directions)
            row = np.zeros(len(directions))
            np.maximum.at(row, sector, kept)
            rows.append(np.where(row > 0.1 * clean.scale, row, math.nan))
    return np.array(rows) if rows else np.empty((0, len(directions)))


def _blocks(
    clean: Cleaned, start: int, stop: int, edge: bool, centre: tuple[float, float], block_s: float
) -> list[tuple[int, int]]:
    """Laps along the edge, where there are some; otherwise stretches of time."""
    times_s = clean.times_s[start:stop]
    laps = _lap_starts(clean.xy[start:stop] - centre) if edge and all(clean.recorded) else []
    if len(laps) < 2:
        span_s = float(times_s[-1] - times_s[0])
        count = max(1, int(span_s / block_s))
        inner = np.searchsorted(times_s, times_s[0] + np.arange(1, count) * span_s / count).tolist()
        laps = [0, *inner, stop - start]
    return [(start + a, start + b) for a, b in pairwise(laps) if b > a]


def _lap_starts(xy: NDArray[np.float64]) -> list[int]:
    """Sample numbers at which a lap starts or ends; empty below two laps. Near the centre the angle says nothing."""
    radius = np.hypot(xy[:, 0], xy[:, 1])
    far = np.flatnonzero(radius > 0.2 * radius.max())
    if len(far) < 3:
        return []
    turned = np.unwrap(np.arctan2(xy[far, 1], xy[far, 0])) / (2 * math.pi)
    laps = np.abs(turned - turned[0])
    whole = math.floor(float(laps[-1]) + 0.1)
    if whole < 2:
        return []
    starts = [int(far[np.argmax(laps >= lap)]) for lap in range(whole)]
    return [*starts, int(far[np.argmax(laps >= whole)]) if laps[-1] >= whole else len(xy)]


def _sector_findings(
    clean: Cleaned, directions: NDArray[np.float64], tried: NDArray[np.bool_], value: NDArray[np.float64], edge: bool
) -> list[Finding]:
    found = []
    if not edge:
        weakest = int(np.nanargmin(value))
        text = message(
            Movements.reach_in_play,
            least=clean.output(value[weakest]),
            way=direction_word(float(directions[weakest])),
        )
        found.append(Finding("note", "reach_in_play", text))
    if not tried.all():
        missing = tuple(direction_word(float(d)) for d in directions[~tried])
        found.append(Finding("query", "not_tried", message(Movements.no_movement_toward, ways=missing)))
    return found
