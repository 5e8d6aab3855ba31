"""How often something unwanted happens, in words that never say less than the interval allows."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from stickwright.model.estimate import Estimate
from stickwright.units import figures

__all__ = ["ALL_THE_TIME_PER_MIN", "BY_THE_MINUTE", "ToldRate", "rate_words", "told_rate"]

ALL_THE_TIME_PER_MIN = 1e5
"""Above that nobody counts: it is on by itself."""
BY_THE_MINUTE = 0.1
"""From here a rate is told by the minute, below by the hour."""
RARE_PER_MIN = 0.5 / 60
"""Below one in two hours a figure is no figure: the upper end alone is told."""
_MEASURE = "measure 60 s at rest"


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
    return ToldRate("rate", value, None if _told(value, "", "") == _told(high, "", "") else high)


def rate_words(rate: Estimate, what: str, many: str | None = None) -> str:
    """A rate with its upper end: by the minute, by the hour when it is rarer, and never as if it could not happen.

    Parameters
    ----------
    rate : Estimate
        Times a minute.
    what : str
        What happens, in the singular: false input.
    many : str, optional
        The plural, where it is not made with an s.

    Returns
    -------
    str
        The best single figure with the upper end; the upper end alone where the figure is under one an hour; that it is
        not known where it could be all the time, or where so small a figure has no interval.

    Examples
    --------
    >>> rate_words(Estimate(0.22, 0.05, 0.9), "false input")
    '0.22 false inputs a minute (up to 0.9)'
    >>> rate_words(Estimate(0.0, 0.0, 9.0), "false input"), rate_words(Estimate(0.001, 0.0, 0.005), "false input")
    ('up to 9 false inputs a minute', 'less than one false input an hour')
    >>> rate_words(Estimate(0.002, 0.0, 1e6), "false input")
    'an unknown number of false inputs (anything up to all the time: measure 60 s at rest)'
    """
    many = many or f"{what}s"
    value, high = rate.number, rate.upper
    if value >= ALL_THE_TIME_PER_MIN:
        return f"{what} all the time"
    rare = not value >= 0.5 / 60
    if not rate.has_interval:
        why = f" ({str(rate.why).rstrip('.')}: {_MEASURE})" if rate.why else f" ({_MEASURE})"
        return f"an unknown number of {many}{why}" if rare or math.isnan(value) else _told(value, what, many)
    if high >= ALL_THE_TIME_PER_MIN:
        least = "anything" if rare else f"{_told(value, what, many)}, or anything"
        return f"an unknown number of {many} ({least} up to all the time: {_MEASURE})"
    if rare:
        return f"less than one {what} an hour" if high < 0.5 / 60 else f"up to {_told(high, what, many)}"
    said, most = _told(value, what, many), _told(high, what, many)
    if said == most:
        return said
    unit = most.rpartition(" ")[2]
    return f"{said} (up to {_number(high)}{'' if said.endswith(unit) else f' {most.split()[-2]} {unit}'})"


def _number(per_min: float) -> str:
    return _short(per_min) if per_min >= BY_THE_MINUTE else str(round(60 * per_min))


def _short(value: float) -> str:
    text = figures(value)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _told(per_min: float, what: str, many: str) -> str:
    number = _number(per_min)
    return f"{number} {what if number == '1' else many} {'a minute' if per_min >= BY_THE_MINUTE else 'an hour'}"
