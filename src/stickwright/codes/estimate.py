"""An estimate never travels without its interval."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

from stickwright.codes.message import Text

__all__ = ["Estimate", "Interval", "none_unless_finite"]


class Interval(NamedTuple):
    """Both ends."""

    low: float
    """Lower end."""
    high: float
    """Upper end."""


def none_unless_finite(result: object, *names: str) -> None:
    """Make those of a new result's fields None that hold NaN or infinity, as arithmetic leaves them.

    Parameters
    ----------
    result : object
        A frozen dataclass that is being made.
    *names : str
        Fields that may be None.
    """
    for name in names:
        number = getattr(result, name)
        if number is not None and not math.isfinite(number):
            object.__setattr__(result, name, None)


@dataclass(frozen=True)
class Estimate:
    """A number with its interval.

    What is missing is None, never a NaN or an infinity, so that an estimate equals itself and JSON can hold it: those two, as
    arithmetic leaves them, become None here.

    Parameters
    ----------
    value : float or None
        Best single figure, SI or dimensionless; None when there is none, and then `why` says why.
    low, high : float or None
        Ends of the interval; None when none could be given, and then `why` says why.
    level : float or None
        Coverage of the interval, 0.95 unless said; None where the ends are those of a spread that has no coverage.
    n : int
        Number of readings (or draws) behind it; 0 for an assumption.
    assumed : Message, str or None
        What was assumed, when the value was not measured.
    why : Message, str or None
        Why there is no value or no interval.
    endless : bool
        Whether the quantity may be as large as can be: then `high` is None though `low` may be known.

    Examples
    --------
    >>> Estimate(2.0, 1.0, math.inf)
    Estimate(value=2.0, low=1.0, high=None, level=0.95, n=0, assumed=None, why=None, endless=True)
    """

    value: float | None
    low: float | None
    high: float | None
    level: float | None = 0.95
    n: int = 0
    assumed: Text | None = None
    why: Text | None = None
    endless: bool = False

    def __post_init__(self) -> None:
        """None for what is not finite."""
        without_end = self.high == math.inf and self.low is not None and math.isfinite(self.low)
        object.__setattr__(self, "endless", without_end or (self.endless and self.high is None))
        none_unless_finite(self, "value", "low", "high", "level")

    @classmethod
    def unbounded(cls, value: float, why: Text, *, n: int = 1, assumed: Text | None = None) -> Estimate:
        """A value for which no interval can be given, with the reason."""
        return cls(value, None, None, n=n, assumed=assumed, why=why)

    @classmethod
    def missing(cls, why: Text, *, n: int = 0, assumed: Text | None = None) -> Estimate:
        """No value, with the reason."""
        return cls(None, None, None, n=n, assumed=assumed, why=why)

    @property
    def has_interval(self) -> bool:
        """Whether both ends are known."""
        return self.low is not None and self.high is not None

    @property
    def interval(self) -> Interval | None:
        """Both ends, or None."""
        return None if self.low is None or self.high is None else Interval(self.low, self.high)

    @property
    def number(self) -> float:
        """The value for arithmetic: NaN where there is none."""
        return math.nan if self.value is None else self.value

    @property
    def lower(self) -> float:
        """The lower end for arithmetic: NaN where there is none."""
        return math.nan if self.low is None else self.low

    @property
    def upper(self) -> float:
        """The upper end for arithmetic: NaN where there is none, infinite where there is no end."""
        if self.high is None:
            return math.inf if self.endless else math.nan
        return self.high
