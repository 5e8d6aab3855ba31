"""What arms and necks are ranked by: the lever, the clearance, and what adjustment is left."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

__all__ = ["HALF_ARM_M", "ROOMY_M", "ranked_cost_m"]

Array = NDArray[np.float64]
HALF_ARM_M = 0.010
"""Half the thickness of an arm with its joints, assumed."""
ROOMY_M = 0.050
"""More clearance than this is worth nothing more."""


def ranked_cost_m(lever_m: float | Array, length_m: float, clearance_m: float | Array) -> Array:
    """What arms are ranked by, least first: the lever, and what speaks against it as if it were lever.

    Added: twice what is missing of 50 mm clearance, and half the length of the arm for the share by which it is straighter
    than 0.8. So the shortest lever wins, unless a little more of it buys clearance or leaves adjustment.

    Parameters
    ----------
    lever_m : float or array
        From clamp to end.
    length_m : float
        Of the arm.
    clearance_m : float or array
        To the nearest keep-out.

    Returns
    -------
    array

    Examples
    --------
    >>> round(float(ranked_cost_m(0.20, 0.26, 0.04)), 3)
    0.22
    """
    lever = np.asarray(lever_m, dtype=np.float64)
    cramped = 2.0 * np.maximum(ROOMY_M - np.asarray(clearance_m, dtype=np.float64), 0.0)
    straight = 0.5 * length_m * np.maximum(lever / length_m - 0.8, 0.0)
    return np.asarray(lever + cramped + straight, dtype=np.float64)
