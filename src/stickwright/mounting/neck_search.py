"""Where a gooseneck can be clamped: which ways it can leave its clamp, how gently it can be bent, what is in its way."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.arm_reasons import ArmReasons
from stickwright.codes.message import Message, Name, message
from stickwright.mounting.arm import MOST_STRAIGHT_SHARE, upright_frame
from stickwright.mounting.bodies import CLAMP_M, Bodies
from stickwright.mounting.carried import CarriedDevice
from stickwright.mounting.clearance import Boxes, clearances_m
from stickwright.mounting.neck import PIECES, Necks, bent_necks
from stickwright.mounting.ranking import HALF_ARM_M, ROOMY_M, ranked_cost_m

__all__ = ["ITSELF", "NeckFound", "neck_search"]

Array = NDArray[np.float64]
ROUND_THE_TUBE = 8
"""Ways in which a clamp can be turned about its tube, 45 degrees apart."""
SHARES = (0.5, 1.0, 0.0)
"""Of what is to spare, how much stays straight at its foot; the rest stays straight at its end."""
_SELF_M = 0.080
"""Along the neck, from where on two of its places are looked at for touching each other."""
ITSELF = message(ArmReasons.itself)
"""In the count of what stood in the way: the device, or the neck itself."""
TIGHT_M = 0.020
"""A bend at the least radius counts as so much lever."""


@dataclass(frozen=True)
class NeckFound:
    """What one tube or edge offers a neck.

    Parameters
    ----------
    free : array of bool, shape (n,)
        Clamp points from which it can be bent and stays clear.
    place : int
        The best of them; -1 when there is none.
    neck : Necks or None
        The one from there.
    cost_m : float
        As `ranked_cost_m`, with what the tightness of the bend counts.
    clearance_m : float
        Of the neck's surface from the nearest keep-out.
    nearest : str
    widest_m : float
        Largest least radius of any shape from anywhere here; NaN when none is long enough.
    blocked : Counter
        What stood in the way of how many.
    """

    free: NDArray[np.bool_]
    place: int
    neck: Necks | None
    cost_m: float
    clearance_m: float
    nearest: str
    widest_m: float
    blocked: Counter[Message]


def _leaving(along: Sequence[float] | None) -> Array:
    """Ways in which a neck can leave its clamp: square to a tube all round; straight up from an edge."""
    if along is None or not math.hypot(*along) > 0:
        return np.array([[0.0, 0.0, 1.0]])
    line = np.asarray(along, dtype=np.float64)[None]
    first, second = upright_frame(line / np.linalg.norm(line))
    angle = np.arange(ROUND_THE_TUBE)[:, None] * (2.0 * np.pi / ROUND_THE_TUBE)
    return np.asarray(np.cos(angle) * first + np.sin(angle) * second, dtype=np.float64)


def neck_search(
    at_m: Array, carried: CarriedDevice, length_m: float, least_m: float, boxes: Sequence[Boxes],
    *, along: Sequence[float] | None = None, bodies: Bodies | None = None,
) -> NeckFound:  # fmt: skip
    """Clamp points of one tube or edge from which a neck can be bent to the base, and the best.

    Parameters
    ----------
    at_m : array, shape (n, 3)
        Clamp points.
    carried : CarriedDevice
        The device, whose underside the neck meets square from below.
    length_m, least_m : float
        Of the neck: length, least radius.
    boxes : sequence of Boxes
        Keep-outs, as seen from what the clamp moves with.
    along : sequence of 3 floats, optional
        Of a tube, about which its clamp can be turned; None for an edge.
    bodies : Bodies, optional
        What else stands about.

    Returns
    -------
    NeckFound
    """
    end_m, end_way = carried.middle_m, carried.axes[:, 2]
    lever = np.linalg.norm(at_m - end_m, axis=1)
    inside = np.flatnonzero((lever > 1e-6) & (lever <= MOST_STRAIGHT_SHARE * length_m))
    free = np.zeros(len(at_m), dtype=bool)
    if not len(inside):
        return NeckFound(
            free=free,
            place=-1,
            neck=None,
            cost_m=math.inf,
            clearance_m=math.inf,
            nearest="",
            widest_m=math.nan,
            blocked=Counter(),
        )
    kinds = [(way, share) for share in SHARES for way in _leaving(along)]
    place = np.repeat(inside, len(kinds))
    way = np.tile(np.array([one for one, _ in kinds]), (len(inside), 1))
    share = np.tile(np.array([one for _, one in kinds]), len(inside))
    end, above = (np.broadcast_to(one, way.shape) for one in (end_m, end_way))
    necks = bent_necks(at_m[place], way, end, above, length_m, share)
    gentle = np.flatnonzero(necks.radius_m >= least_m * (1 - 1e-9))
    widest = float(necks.radius_m.max())
    if not len(gentle):
        return NeckFound(
            free=free,
            place=-1,
            neck=None,
            cost_m=math.inf,
            clearance_m=math.inf,
            nearest="",
            widest_m=widest,
            blocked=Counter(),
        )
    place, necks = place[gentle], necks.some(gentle)
    points = necks.at(np.linspace(0.0, length_m, PIECES + 1))
    clear, which, names = _neck_clearance(points, necks.radius_m, length_m, boxes)
    bowed = np.linalg.norm(points - end_m, axis=2).max(axis=1)  # the lever of a push at the place that is bent hardest
    out = _out_of_itself(points, length_m, carried)
    met, body_names = np.full(len(points), -1, dtype=np.intp), tuple[Message, ...]()
    if bodies is not None and len(good := np.flatnonzero((clear >= 0.0) & out)):
        met[good], body_names = bodies.met_by(points[good], skipped=math.ceil(CLAMP_M * PIECES / length_m))
    free_way = (clear >= 0.0) & out & (met < 0)
    cost = np.where(free_way, ranked_cost_m(bowed, length_m, clear) + TIGHT_M * least_m / necks.radius_m, np.inf)
    blocked = Counter(message(ArmReasons.keep_out, box=Name(names[box])) for box in which[clear < 0.0])
    blocked.update(body_names[body] for body in met[met >= 0])
    blocked[ITSELF] += int((~out & (clear >= 0.0)).sum())
    free[place[free_way]] = True
    best = int(np.argmin(cost))
    if not math.isfinite(cost[best]):
        return NeckFound(
            free=free,
            place=-1,
            neck=None,
            cost_m=math.inf,
            clearance_m=math.inf,
            nearest="",
            widest_m=widest,
            blocked=blocked,
        )
    chosen = necks.some(np.array([best]))
    exact, at, names = _neck_clearance(points[[best]], chosen.radius_m, length_m, boxes, math.inf)
    return NeckFound(
        free=free,
        place=int(place[best]),
        neck=chosen,
        cost_m=float(cost[best]),
        clearance_m=float(exact[0]),
        nearest=names[int(at[0])],
        widest_m=widest,
        blocked=blocked,
    )


def _neck_clearance(
    points: Array, radius_m: Array, length_m: float, boxes: Sequence[Boxes], enough_m: float = ROOMY_M
) -> tuple[Array, NDArray[np.intp], tuple[str, ...]]:
    """Of each neck's surface; what a bend bows out between two points is taken off."""
    start, end = points[:, :-1].reshape(-1, 3), points[:, 1:].reshape(-1, 3)
    bow = (length_m / PIECES) ** 2 / (8.0 * radius_m)
    found, names = clearances_m(start, end, boxes, enough_m + HALF_ARM_M + float(bow.max()))
    if not names:
        return np.full(len(points), np.inf), np.zeros(len(points), dtype=np.intp), ("",)
    each = found.reshape(len(points), PIECES, -1).min(axis=1) - HALF_ARM_M - bow[:, None]
    return each.min(axis=1), each.argmin(axis=1), names


def _out_of_itself(points: Array, length_m: float, carried: CarriedDevice) -> NDArray[np.bool_]:
    """Which necks cross neither what they carry nor themselves; the last of the way to the underside belongs to the device."""
    piece = length_m / PIECES
    met = math.ceil(1.5 * HALF_ARM_M / piece)
    clear = carried.clear_of(points[:, :-met])
    near = math.hypot(2.0 * HALF_ARM_M, piece / math.sqrt(2.0))  # two necks that touch have points so near each other
    apart = max(1, math.ceil(_SELF_M / piece))
    for step in range(apart, PIECES + 1):
        gap = np.linalg.norm(points[:, step:] - points[:, :-step], axis=2).min(axis=1)
        clear &= gap >= near
    return clear
