"""What a difference between two days must be to be more than the scatter of measuring."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

__all__ = ["reliable_change", "smallest_real_change", "standard_error_of_measuring"]


def standard_error_of_measuring(differences: Sequence[float]) -> float:
    """From the differences between two measurements of each of several things that did not change.

    Parameters
    ----------
    differences : sequence of float
        Second less first, two or more.

    Notes
    -----
    Standard deviation of the differences over root two [jacobson-truax-1991]. Learning between the two makes it too small: measure a
    practised player.

    Examples
    --------
    >>> round(standard_error_of_measuring([1, -2, 0, 3, -1, 2]), 6)
    1.322876
    """
    return float(np.std(differences, ddof=1)) / math.sqrt(2)


def smallest_real_change(error: float, *, z: float = 1.96) -> float:
    """Change beyond which two measurements differ by more than chance.

    Parameters
    ----------
    error : float
        Standard error of measuring.
    z : float, default 1.96
        For 95%, as it is usually rounded.

    Examples
    --------
    >>> round(smallest_real_change(4 * math.sqrt(1 - 0.9)), 6)
    3.506155
    """
    return z * math.sqrt(2) * error


def reliable_change(first: float, second: float, error: float) -> float:
    """Change in units of its own standard error: beyond 1.96 either way it is more than chance [jacobson-truax-1991].

    Parameters
    ----------
    first, second : float
        The two measurements.
    error : float
        Standard error of measuring, above zero.

    Examples
    --------
    >>> round(reliable_change(20, 27, 4 * math.sqrt(1 - 0.9)), 6)
    3.913119
    """
    return (second - first) / (math.sqrt(2) * error)
