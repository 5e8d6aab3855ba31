"""How often something unwanted happens, in words that never say less than the interval allows."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.units import figures

__all__ = ["ALL_THE_TIME_PER_MIN", "BY_THE_MINUTE", "ToldRate", "told_rate"]

ALL_THE_TIME_PER_MIN = 1e5
"""Above that nobody counts: it is on by itself."""
BY_THE_MINUTE = 0.1
"""From here a rate is told by the minute, below by the hour."""
RARE_PER_MIN = 0.5 / 60
"""Below one in two hours a figure is no figure: the upper end alone is told."""


@dataclass(frozen=True)
class ToldRate:
    """What of a rate may be told: never less than the interval allows.

    Parameters
    ----------
    kind : {"rate", "rare", "endless", "unknown", "always"}
        A rate; less than one an hour even at the upper end; no upper end; no interval to so small a figure; on by itself.
    value_per_min, high_per_min : float or None
        The figure and its upper end, each where it is to be told.
    """

    kind: Literal["rate", "rare", "endless", "unknown", "always"]
    value_per_min: float | None = None
    high_per_min: float | None = None


def told_rate(rate: Estimate) -> ToldRate:
    """What of a rate may be told.

    Parameters
    ----------
    rate : Estimate
        Times a minute.

    Examples
    --------
    >>> told_rate(Estimate(0.0, 0.0, 9.0)).high_per_min, told_rate(Estimate(0.001, 0.0, 0.005)).kind
    (9.0, 'rare')
    """
    value, high = rate.number, rate.upper
    if value >= ALL_THE_TIME_PER_MIN:
        return ToldRate("always")
    rare = not value >= RARE_PER_MIN
    if not rate.has_interval:
        return ToldRate("unknown") if rare or math.isnan(value) else ToldRate("rate", value)
    if high >= ALL_THE_TIME_PER_MIN:
        return ToldRate("endless", None if rare else value)
    if rare:
        return ToldRate("rare") if high < RARE_PER_MIN else ToldRate("rate", None, high)
    return ToldRate("rate", value, None if _told(value) == _told(high) else high)


def _number(per_min: float) -> str:
    return _short(per_min) if per_min >= BY_THE_MINUTE else str(round(60 * per_min))


def _short(value: float) -> str:
    text = figures(value)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _told(per_min: float) -> tuple[str, bool]:
    """A rate as it is printed: its number, and whether that is by the minute."""
    return _number(per_min), per_min >= BY_THE_MINUTE
