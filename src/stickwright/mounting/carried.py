"""What an arm carries, as a body that its links may not enter: the device, the room of the part that works it, the ball and plate.

Rules of this file: a link ends at the ball under the plate and nowhere else touches what it carries; above the device the part
works, and no link runs there; an elbow does not fold so far that the two links lie in each other.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from stickwright.model.kit import Mount
from stickwright.mounting.clearance import Boxes, clearances_m
from stickwright.mounting.ranking import HALF_ARM_M

__all__ = ["HEAD_M", "LEAST_OPEN_RAD", "PART_M", "UNMEASURED_BASE_M", "CarriedDevice", "folded_m", "head_of"]

Array = NDArray[np.float64]
UNMEASURED_BASE_M = (0.05, 0.05)
"""Of a base that nobody measured: small, so that what holds it would hold a larger one."""
HEAD_M = 0.030
"""From the middle of the last ball of an arm to the underside of what it carries, where nobody measured it: the neck of the ball and
the plate. Common practice, no source."""
PART_M = 0.040
"""Above the contact point, that the part takes which works the device: common practice, no source."""
ASIDE_M = 0.020
"""To each side of the contact point, likewise."""
LEAST_OPEN_RAD = math.radians(30.0)
"""Between the two links of an elbow that is folded as far as it goes: common practice, no source."""
_ROUNDING_M = 1e-9


def head_of(mount: Mount) -> float:
    """From the middle of the last ball to the underside of what a mount carries; a gooseneck has no ball."""
    if mount.kind == "gooseneck":
        return 0.0
    return HEAD_M if mount.head_m is None else mount.head_m


def folded_m(links_m: Sequence[float]) -> float:
    """Least distance from clamp to end of an arm whose elbow is folded as far as it goes; none for one link.

    Parameters
    ----------
    links_m : sequence of 1 or 2 floats
        From the clamp.

    Notes
    -----
    Source: cosine rule in the triangle of the two links, 30 degrees between them.

    Examples
    --------
    >>> round(folded_m((0.10, 0.10)), 4)
    0.0518
    """
    if len(links_m) != 2:
        return 0.0
    lower, upper = links_m
    return math.sqrt(lower**2 + upper**2 - 2.0 * lower * upper * math.cos(LEAST_OPEN_RAD))


@dataclass(frozen=True)
class CarriedDevice:
    """The device in its place, and the ball and plate under it.

    Parameters
    ----------
    middle_m : array, shape (3,)
        Of the underside of the base.
    axes : array, shape (3, 3)
        Columns: where the base's right, forward and up point.
    contact_m : array, shape (3,)
        Where the part works it.
    base_m : sequence of 3 floats or None
        Length (forward), width and height; None: a small one stands in.
    head_m : float
        From the last ball to the underside.
    """

    middle_m: Array
    axes: Array
    contact_m: Array
    base_m: Sequence[float] | None
    head_m: float
    boxes: Boxes = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        long, wide, high = self.base_m if self.base_m is not None else (*UNMEASURED_BASE_M, 0.0)
        at = self._inside(np.asarray(self.contact_m))
        low = np.array([min(-wide / 2, at[0] - ASIDE_M), min(-long / 2, at[1] - ASIDE_M), 0.0])
        top = np.array([max(wide / 2, at[0] + ASIDE_M), max(long / 2, at[1] + ASIDE_M), max(high, at[2] + PART_M)])
        ball = np.array([HALF_ARM_M, HALF_ARM_M, 0.0])
        lows, highs = np.array([low, [*-ball[:2], -self.head_m]]), np.array([top, ball])
        object.__setattr__(self, "boxes", Boxes(("device", "ball"), lows, highs, np.zeros(1), (0.0, 0.0, 0.0), 0.0))

    def _inside(self, points: Array) -> Array:
        """Points as the base sees them: to its right, forward, up."""
        return np.asarray((points - self.middle_m) @ self.axes, dtype=np.float64)

    @property
    def ball_m(self) -> Array:
        """Where the arm ends: the middle of its last ball."""
        return np.asarray(self.middle_m - self.head_m * self.axes[:, 2], dtype=np.float64)

    def clear_of(self, points_m: Array, half_m: float = HALF_ARM_M) -> NDArray[np.bool_]:
        """Which arms stay out of what they carry.

        Parameters
        ----------
        points_m : array, shape (n, k, 3)
            Each from its clamp to its end.
        half_m : float, default 0.01
            Half the thickness.

        Returns
        -------
        array of bool, shape (n,)
            The last piece may touch the ball, and nothing else.
        """
        count, joints = points_m.shape[:2]
        seen = self._inside(points_m)
        start, end = seen[:, :-1].reshape(-1, 3), seen[:, 1:].reshape(-1, 3)
        found = clearances_m(start, end, (self.boxes,), half_m)[0].reshape(count, joints - 1, 2)
        found[:, -1, 1] = half_m
        return np.asarray((found >= half_m - _ROUNDING_M).all(axis=(1, 2)))
