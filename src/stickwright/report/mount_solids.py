"""Bodies as solids with edges: which stretches of an edge are seen from somewhere, and which lie behind something.

Each solid is convex, or a chain of convex pieces. Hidden stretches are found by a line from each point of an edge to the eye against
the planes of every other piece: no order of depth has to be guessed, however long a link leans.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import ConvexHull

from stickwright.report.mount_shapes import DrawnBody, Point

__all__ = ["ABOVE", "OVERVIEW", "RIGHT", "EdgeRun", "Eye", "Piece", "front_of", "hides", "pieces_of", "runs"]

Array = NDArray[np.float64]
_ROUND = 24  # sides of what is round
_SHARP_COS = math.cos(math.radians(28.0))  # flatter edges between two faces are not drawn
_TOUCH_M, _LEAST_M = 0.0004, 0.0005
_CLAMP_M = 0.036


@dataclass(frozen=True)
class Eye:
    """From where it is seen: to the right on paper, up on paper, and towards the eye, as unit vectors of the room.

    Parameters
    ----------
    right, up, to : tuple of float
        At right angles to each other.
    """

    right: Point
    up: Point
    to: Point

    def flat(self, points: Array | Sequence[Point]) -> Array:
        """Points as they are seen, metre on paper at 1:1."""
        told = np.atleast_2d(np.asarray(points, dtype=np.float64))
        return np.stack([told @ np.asarray(self.right), told @ np.asarray(self.up)], axis=1)


ABOVE = Eye((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
RIGHT = Eye((0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
_THIRD, _HALF, _SIXTH = math.sqrt(1 / 3), math.sqrt(1 / 2), math.sqrt(1 / 6)
OVERVIEW = Eye((-_HALF, _HALF, 0.0), (-_SIXTH, -_SIXTH, 2 * _SIXTH), (_THIRD, _THIRD, _THIRD))
"""Isometric, from the front right and above."""


@dataclass(frozen=True)
class Piece:
    """A convex solid.

    Parameters
    ----------
    body : DrawnBody
        What it is, or is a piece of.
    corners : array, shape (n, 3)
        Metre.
    planes : array, shape (m, 4)
        Outward unit normals and offsets: inside, all are below 0.
    ends : array, shape (k, 2)
        Corners at both ends of each edge.
    normals : array, shape (k, 2, 3)
        Of the two faces that meet there.
    """

    body: DrawnBody
    corners: Array
    planes: Array
    ends: NDArray[np.intp]
    normals: Array


@dataclass(frozen=True)
class EdgeRun:
    """A stretch of a body's edge in a view.

    Parameters
    ----------
    body : DrawnBody
        Whose.
    kind : {"seen", "hidden"}
        Whether something is before it.
    spots : array, shape (n, 2)
        As the view shows it; metre.
    """

    body: DrawnBody
    kind: Literal["seen", "hidden"]
    spots: Array


# --- bodies to pieces -------------------------------------------------------------------------------------------------------


def pieces_of(bodies: Iterable[DrawnBody]) -> tuple[Piece, ...]:
    """The solids of some bodies; lines and marks have none.

    Parameters
    ----------
    bodies : iterable of DrawnBody
        As `mount_shapes` and `room_shapes` give them.
    """
    return tuple(piece for body in bodies for piece in _of_body(body))


@lru_cache(maxsize=512)
def _of_body(body: DrawnBody) -> tuple[Piece, ...]:
    return tuple(_pieces(body))


def _pieces(body: DrawnBody) -> Iterator[Piece]:
    if body.form == "solid":
        yield _convex(body, np.asarray(body.points, dtype=np.float64))
    elif body.layer == "BODY":  # round at both ends
        yield _convex(body, np.concatenate([_ball(np.asarray(at), body.thick_m / 2) for at in body.points]))
    elif body.form in ("bar", "path") and body.thick_m > 0:
        yield from _chain(body)
    elif body.form == "dot" and body.thick_m > 0:
        at, axis = np.asarray(body.points[0]), np.asarray(body.axis)
        far = float(np.linalg.norm(axis))
        if far > 0:
            step = axis / far * _CLAMP_M / 2
            rings = [_ring(at + side * step, axis / far, body.thick_m / 2) for side in (-1, 1)]
            yield _convex(body, np.concatenate(rings))
        else:
            yield _convex(body, _ball(at, body.thick_m / 2))


def _chain(body: DrawnBody) -> Iterator[Piece]:
    """Round pieces end to end, their ends cut at half the angle where they meet."""
    points = [np.asarray(body.points[0], dtype=np.float64)]
    for point in body.points[1:]:
        if math.dist(point, points[-1]) > _LEAST_M:
            points.append(np.asarray(point, dtype=np.float64))
    if len(points) < 2:
        return
    ways = [(b - a) / np.linalg.norm(b - a) for a, b in itertools.pairwise(points)]
    across = [ways[0], *((a + b) for a, b in itertools.pairwise(ways)), ways[-1]]
    normals = [way / (float(np.linalg.norm(way)) or 1.0) for way in across]
    rings = [_ring(at, normal, body.thick_m / 2) for at, normal in zip(points, normals, strict=True)]
    last = len(rings) - 1
    for number, (start, end) in enumerate(itertools.pairwise(rings)):
        goes_on = ([0] if number > 0 else []) + ([1] if number + 1 < last else [])
        yield _convex(body, np.concatenate([start, end]), frozenset(goes_on))


def _ring(at: Array, axis: Array, radius: float) -> Array:
    """A circle about an axis; the same start for nearly the same axis, so that pieces of a chain meet."""
    least = np.eye(3)[int(np.argmin(np.abs(axis)))]
    one = np.cross(axis, least)
    one = one / np.linalg.norm(one)
    other = np.cross(axis, one)
    turns = np.arange(_ROUND) * 2 * math.pi / _ROUND
    return np.asarray(at + radius * (np.cos(turns)[:, None] * one + np.sin(turns)[:, None] * other))


def _ball(at: Array, radius: float) -> Array:
    heights = np.linspace(-math.pi / 2, math.pi / 2, 13)
    rings = [_ring(at + radius * math.sin(up) * np.eye(3)[2], np.eye(3)[2], radius * math.cos(up)) for up in heights[1:-1]]  # fmt: skip
    poles = at + radius * np.array([[0.0, 0.0, -1.0], [0.0, 0.0, 1.0]])
    return np.concatenate([*rings, poles])


def _convex(body: DrawnBody, corners: Array, smooth: frozenset[int] = frozenset()) -> Piece:
    """The hull of some corners with its edges; those of a ring in `smooth` (0: the first, 1: the last) go on in the next piece."""
    told = ConvexHull(corners)
    faces = np.arange(len(told.simplices))
    ends, normals = [], []
    for place, keep in enumerate(((1, 2), (0, 2), (0, 1))):  # an edge lies across from its face's third corner
        other = told.neighbors[:, place]
        pairs = told.simplices[:, keep]
        both = np.stack([told.equations[faces, :3], told.equations[other, :3]], axis=1)
        flat = np.einsum("ij,ij->i", both[:, 0], both[:, 1]) > 1.0 - 1e-9
        going_on = np.zeros(len(faces), dtype=bool)
        for ring in smooth:
            going_on |= (pairs // _ROUND == ring).all(axis=1)
        wanted = (faces < other) & ~flat & ~going_on
        ends.append(pairs[wanted])
        normals.append(both[wanted])
    planes = np.unique(np.round(told.equations, 9), axis=0)
    return Piece(body, corners, planes, np.concatenate(ends).astype(np.intp), np.concatenate(normals))


# --- what is seen -----------------------------------------------------------------------------------------------------------


def hides(piece: Piece, points: Array, eye: Eye) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """Which points lie behind a solid, or in it; and which of them in it.

    Parameters
    ----------
    piece : Piece
        What may be before them.
    points : array, shape (n, 3)
        Metre.
    eye : Eye
        From where it is looked at.

    Returns
    -------
    tuple of array
        Behind or in it; in it.
    """
    steep = piece.planes[:, :3] @ np.asarray(eye.to)
    height = points @ piece.planes[:, :3].T + piece.planes[:, 3]
    rising, falling = steep > 1e-9, steep < -1e-9
    far = np.min(-height[:, rising] / steep[rising], axis=1, initial=np.inf)
    near = np.max(-height[:, falling] / steep[falling], axis=1, initial=-np.inf)
    beside = (height[:, ~(rising | falling)] < -_TOUCH_M).all(axis=1)
    behind = beside & (far > _LEAST_M) & (far - near > _LEAST_M)
    return behind, behind & (near < -_LEAST_M)


def front_of(piece: Piece, spots: Array, eye: Eye) -> Array:
    """The points of a solid's front that are seen at some spots of a view; NaN beside it.

    Parameters
    ----------
    piece : Piece
        The solid.
    spots : array, shape (n, 2)
        As the view shows them; metre.
    eye : Eye
        From where it is looked at.
    """
    start = spots[:, :1] * np.asarray(eye.right) + spots[:, 1:] * np.asarray(eye.up)
    steep = piece.planes[:, :3] @ np.asarray(eye.to)
    height = start @ piece.planes[:, :3].T + piece.planes[:, 3]
    rising, falling = steep > 1e-9, steep < -1e-9
    far = np.min(-height[:, rising] / steep[rising], axis=1, initial=np.inf)
    near = np.max(-height[:, falling] / steep[falling], axis=1, initial=-np.inf)
    beside = (height[:, ~(rising | falling)] < 0).all(axis=1) & (far > near)
    return np.where(beside[:, None], start + far[:, None] * np.asarray(eye.to), np.nan)


def runs(pieces: Sequence[Piece], eye: Eye, step_m: float, before: Sequence[Piece] | None = None) -> list[EdgeRun]:
    """All edges that a view draws, cut where they pass behind something.

    Parameters
    ----------
    pieces : sequence of Piece
        What is drawn.
    eye : Eye
        From where it is looked at.
    step_m : float
        How exactly a cut is found.
    before : sequence of Piece, optional
        What may hide them; without it, they hide each other.
    """
    told: dict[tuple[DrawnBody, Literal["seen", "hidden"]], list[Array]] = {}
    hiding = list(pieces if before is None else before)
    boxes = [_box(other, eye) for other in hiding]
    for piece in pieces:
        lines = _edges(piece, eye)
        if len(lines) == 0:
            continue
        low, high = _box(piece, eye)
        near = [
            other
            for other, (least, most) in zip(hiding, boxes, strict=True)
            if other is not piece and (least <= high).all() and (low <= most).all()
        ]
        points, starts = _stepped(lines, eye, step_m)
        states = _states(piece, points, near, eye)
        for first, last in itertools.pairwise(starts):
            # a point more than stretches between points on each edge
            edge, told_states = points[first:last], states[first : last - 1]
            cuts = [0, *(np.flatnonzero(np.diff(told_states)) + 1), len(told_states)]
            for start, end in itertools.pairwise(cuts):
                if told_states[start] < 2:
                    kind: Literal["seen", "hidden"] = "seen" if told_states[start] == 0 else "hidden"
                    spots = eye.flat(edge[[start, end]])
                    if math.dist(*spots) > 1e-6:
                        told.setdefault((piece.body, kind), []).append(spots)
    return [EdgeRun(body, kind, line) for (body, kind), lines in told.items() for line in _joined(lines)]


def _box(piece: Piece, eye: Eye) -> tuple[Array, Array]:
    spots = eye.flat(piece.corners)
    return spots.min(axis=0), spots.max(axis=0)


def _edges(piece: Piece, eye: Eye) -> Array:
    """Edges towards the eye, both ends of each: where the front ends, and sharp ones on the front."""
    fronts = piece.normals @ np.asarray(eye.to) > 1e-9
    sharp = np.einsum("ij,ij->i", piece.normals[:, 0], piece.normals[:, 1]) < _SHARP_COS
    drawn = (fronts[:, 0] != fronts[:, 1]) | (fronts[:, 0] & sharp)
    return np.asarray(piece.corners[piece.ends[drawn]])


def _stepped(lines: Array, eye: Eye, step_m: float) -> tuple[Array, list[int]]:
    """Points along edges, one edge after the other, and where each edge starts."""
    out, starts = [], [0]
    for line in lines:
        count = max(1, math.ceil(math.dist(*eye.flat(line)) / step_m))
        out.append(line[0] + np.linspace(0.0, 1.0, count + 1)[:, None] * (line[1] - line[0]))
        starts.append(starts[-1] + count + 1)
    return np.concatenate(out), starts


def _states(piece: Piece, points: Array, near: Sequence[Piece], eye: Eye) -> NDArray[np.intp]:
    """Between points: 0 seen, 1 hidden, 2 not drawn, since it lies in something."""
    middles = (points[1:] + points[:-1]) / 2
    states = np.zeros(len(middles), dtype=np.intp)
    for other in near:
        behind, inside = hides(other, middles, eye)
        if other.body == piece.body:
            inside = behind
        states = np.where(inside, 2, np.where(behind & (states == 0), 1, states))
    return states


def _joined(lines: Sequence[Array]) -> list[Array]:
    """Stretches that meet, end to end."""
    left: dict[int, Array] = dict(enumerate(lines))
    ends: dict[tuple[int, int], list[int]] = {}

    def key(spot: Array) -> tuple[int, int]:
        return round(float(spot[0]) * 1e6), round(float(spot[1]) * 1e6)

    for number, line in left.items():
        for spot in (line[0], line[-1]):
            ends.setdefault(key(spot), []).append(number)
    out = []
    while left:
        number, line = next(iter(left.items()))
        del left[number]
        spots = [line[0], line[-1]]
        for turned in (False, True):
            if turned:
                spots.reverse()
            while (after := next((one for one in ends[key(spots[-1])] if one in left), None)) is not None:
                more = left.pop(after)
                spots.append(more[-1] if key(more[0]) == key(spots[-1]) else more[0])
        out.append(np.asarray(spots))
    return out
