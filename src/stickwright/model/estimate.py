"""An estimate never travels without its interval."""

from __future__ import annotations

import math
from dataclasses import dataclass

__all__ = ["Estimate"]


@dataclass(frozen=True)
class Estimate:
    """A number with its interval.

    Parameters
    ----------
    value : float
        Best single figure, SI or dimensionless.
    low, high : float
        Ends of the interval; NaN when none could be given, and then `why` says why.
    level : float
        Coverage of the interval, 0.95 unless said.
    n : int
        Number of readings (or draws) behind it; 0 for an assumption.
    assumed : str or None
        What was assumed, in words, when the value was not measured.
    why : str or None
        Why there is no interval.
    """

    value: float
    low: float
    high: float
    level: float = 0.95
    n: int = 0
    assumed: str | None = None
    why: str | None = None

    @classmethod
    def unbounded(cls, value: float, why: str, *, n: int = 1, assumed: str | None = None) -> Estimate:
        """A value for which no interval can be given, with the reason."""
        return cls(value, math.nan, math.nan, n=n, assumed=assumed, why=why)

    @property
    def has_interval(self) -> bool:
        return math.isfinite(self.low) and math.isfinite(self.high)
