"""A point from tape distances to landmarks.

Three distances leave two points, mirror images in the plane of the three landmarks, and no check. A fourth picks one of them
and leaves a residual: what the distances still disagree by.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.message import Name, Text, message
from stickwright.codes.mount_problems import MountProblems
from stickwright.codes.places import Places
from stickwright.errors import BadInput, Problem
from stickwright.model.recorded import Finding

__all__ = ["MOST_RESIDUAL_M", "TapePoint", "TapedPoint", "taped_point"]

Array = NDArray[np.float64]
Where = Text | tuple[Text, ...]
Point = tuple[float, float, float]

MOST_RESIDUAL_M = 0.020
"""More than this between a distance and the point found: one of them is off."""
IN_LINE_SHARE = 0.05
"""Landmarks nearer to a line (or to a plane) than this share of their spread say nothing across it."""


@dataclass(frozen=True)
class TapePoint:
    """One tape distance: from where, and how far.

    Parameters
    ----------
    landmark : str
        Its name.
    at_m : tuple of 3 floats
        Where the landmark is.
    distance_m : float
        Along the tape.
    """

    landmark: str
    at_m: Point
    distance_m: float


@dataclass(frozen=True)
class TapedPoint:
    """What tape distances tell.

    Parameters
    ----------
    points_m : tuple of points
        One, or two mirror answers, the upper one first.
    residual_m : float
        Largest difference between a distance and the point found; NaN when three distances leave no check.
    findings : tuple of Finding
        What was noticed.
    """

    points_m: tuple[Point, ...]
    residual_m: float
    findings: tuple[Finding, ...] = ()


def taped_point(tapes: Sequence[TapePoint], where: Where = ()) -> TapedPoint:
    """The point that lies at given distances from landmarks.

    Least squares over all distances, from both sides of the plane of the landmarks.

    Parameters
    ----------
    tapes : sequence of TapePoint
        Three or more, from landmarks that are not in one line.
    where : str, default ""
        What is being placed, for the sentences: 'room.toml, place "chin"'.

    Returns
    -------
    TapedPoint
        Two points when three distances, or landmarks all in one plane, leave two mirror answers.

    Raises
    ------
    BadInput
        Fewer than three; landmarks in one line or given twice; distances that cannot meet, with by how much.

    Notes
    -----
    Source: intersection of spheres; least squares by Levenberg and Marquardt [scipy-2020].

    Examples
    --------
    >>> found = taped_point([TapePoint("bolt", (0, 0, 0), 0.3), TapePoint("front", (0.3, 0, 0), 0.3),
    ...                      TapePoint("back", (0, 0.3, 0), 0.3)])
    >>> print(np.round(found.points_m, 3).tolist())
    [[0.15, 0.15, 0.212], [0.15, 0.15, -0.212]]
    """
    _refuse_too_few(tapes, where)
    _refuse_apart(tapes, where)
    at = np.array([tape.at_m for tape in tapes], dtype=np.float64)
    distance = np.array([tape.distance_m for tape in tapes], dtype=np.float64)
    flat = _plane(at)[1]
    best = [np.array(point) for point in _meeting_points(_points(at), tuple(distance.tolist()))]
    off = [np.linalg.norm(at - point, axis=1) - distance for point in best]
    worst = [float(np.max(np.abs(gap))) for gap in off]
    if len(tapes) == 3 and min(worst) > MOST_RESIDUAL_M:
        raise BadInput(_do_not_meet(tapes, min(worst), where))
    same = float(np.linalg.norm(best[0] - best[1])) < 1e-6
    findings: list[Finding] = []
    if not same and (len(tapes) == 3 or flat):
        kept = sorted(best, key=lambda point: -point[2])
        findings.append(_two_answers(tapes, kept[1] - kept[0], len(tapes) == 3))
    else:
        kept = [best[int(np.argmin([float(gap @ gap) for gap in off]))]]
    residual = math.nan if len(tapes) == 3 and min(worst) < 1e-6 else min(worst)
    if residual > MOST_RESIDUAL_M:
        landmarks = tuple(Name(tape.landmark) for tape in tapes)
        findings.append(Finding("query", "tape", message(Places.tapes_disagree, landmarks=landmarks, by_m=residual)))
    return TapedPoint(_points(kept), residual, tuple(findings))


def _points(rows: Iterable[Array]) -> tuple[Point, ...]:
    return tuple((float(x), float(y), float(z)) for x, y, z in rows)


@lru_cache(maxsize=64)
def _meeting_points(at_m: tuple[Point, ...], distance_m: tuple[float, ...]) -> tuple[Point, ...]:
    """Where distances meet best, from either side of the plane of the landmarks.

    Kept, for one plan asks for the same few places a hundred times: as what stands in the way of each arm.
    """
    at, distance = np.array(at_m), np.array(distance_m)
    across, _ = _plane(at)
    return _points(_least_squares(at, distance, start) for start in _starts(at, distance, across))


def _refuse_too_few(tapes: Sequence[TapePoint], where: Where) -> None:
    """Landmarks that cannot fix a point: fewer than three different ones, or all in one line."""
    places = {tuple(round(value, 6) for value in tape.at_m) for tape in tapes}
    if len(places) < 3:
        found = message(MountProblems.tapes, count=len(places), repeated=len(places) < len(tapes))
        raise BadInput(Problem(where, found, message(MountProblems.three_tapes), message(MountProblems.one_more)))
    at = np.array([tape.at_m for tape in tapes], dtype=np.float64)
    spread = np.linalg.svd(at - at.mean(axis=0), compute_uv=False)
    if spread[1] < IN_LINE_SHARE * spread[0]:
        found = message(MountProblems.in_line, landmarks=_names(tapes))
        raise BadInput(Problem(where, found, message(MountProblems.not_in_line), message(MountProblems.to_one_side)))


def _names(tapes: Sequence[TapePoint]) -> tuple[Name, ...]:
    return tuple(Name(tape.landmark) for tape in tapes)


def _refuse_apart(tapes: Sequence[TapePoint], where: Where) -> None:
    """Two distances that cannot belong to one point, by more than a tape may be off."""
    problems = []
    for one, other in itertools.combinations(tapes, 2):
        between = math.dist(one.at_m, other.at_m)
        short = between - one.distance_m - other.distance_m
        long = abs(one.distance_m - other.distance_m) - between
        if max(short, long) <= MOST_RESIDUAL_M:
            continue
        found = message(
            MountProblems.two_tapes, first=Name(one.landmark), first_m=one.distance_m, second=Name(other.landmark),
            second_m=other.distance_m, apart_m=between,
        )  # fmt: skip
        remedy = (
            message(MountProblems.short_by, by_m=short)
            if short > MOST_RESIDUAL_M
            else message(MountProblems.long_by, by_m=long)
        )
        problems.append(Problem(where, found, message(MountProblems.meet), remedy))
    if problems:
        raise BadInput(problems)


def _do_not_meet(tapes: Sequence[TapePoint], worst_m: float, where: Where) -> Problem:
    distances = tuple(float(tape.distance_m) for tape in tapes)
    found = message(MountProblems.all_tapes, landmarks=_names(tapes), distances_m=distances)
    remedy = message(MountProblems.missed_by, by_m=worst_m)
    return Problem(where, found, message(MountProblems.meet_in_point), remedy)


def _two_answers(tapes: Sequence[TapePoint], apart: Array, three: bool) -> Finding:
    landmarks = None if three else tuple(Name(tape.landmark) for tape in tapes)
    text = message(Places.two_points, landmarks=landmarks, apart_m=float(np.linalg.norm(apart)))
    return Finding("query", "tape", text)


def _plane(at: Array) -> tuple[Array, bool]:
    """Direction across the plane nearest to the landmarks, and whether they all lie in it."""
    _, spread, axes = np.linalg.svd(at - at.mean(axis=0))
    return np.asarray(axes[2], dtype=np.float64), len(spread) < 3 or bool(spread[2] < IN_LINE_SHARE * spread[0])


def _starts(at: Array, distance: Array, across: Array) -> tuple[Array, Array]:
    """A first guess on each side of the plane of the landmarks: differences of squared distances are linear in the point."""
    middle = at.mean(axis=0)
    rows = 2.0 * (at - at[0])[1:]
    right = (np.sum(at**2, axis=1) - distance**2)[1:] - (float(at[0] @ at[0]) - distance[0] ** 2)
    level = rows - np.outer(rows @ across, across)
    foot = np.linalg.lstsq(level, right - rows @ across * float(middle @ across), rcond=1e-9)[0]
    foot = foot - across * float((foot - middle) @ across)
    height = math.sqrt(max(float(np.mean(distance**2 - np.sum((at - foot) ** 2, axis=1))), 0.0))
    return foot + height * across, foot - height * across


def _least_squares(at: Array, distance: Array, start: Array) -> Array:
    from scipy.optimize import least_squares

    def off(point: Array) -> Array:
        return np.asarray(np.linalg.norm(at - point, axis=1) - distance, dtype=np.float64)

    found = least_squares(off, start, method="trf", xtol=1e-14, ftol=1e-14, gtol=1e-14)
    return np.asarray(found.x, dtype=np.float64)
