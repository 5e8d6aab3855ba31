"""How close the technical pages are set: type sizes, and what gives way first when a visit was long."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import accumulate
from typing import Any

from stickwright.codes.sheets import Left

__all__ = ["SETTINGS", "Setting"]


@dataclass(frozen=True)
class Setting:
    """One way to set the technical pages.

    Parameters
    ----------
    body_pt, small_pt : float
        Type of running text, and of tables, notes and cautions.
    whole : int
        Sticks ranked with all their numbers; those that fit always are.
    long_limits : int
        How many of them are told everything that limits them; the others their first reason.
    below : {"reasons", "names"}
        What is said of the sticks ranked below those.
    readings, ranking_chart, curve_chart, alternatives, facts, notes, ranks : bool
        Means of the readings behind the smoothed figures; bars of the ranking; curve and what each step
        does; other set-ups of the chosen stick; the numbers of every
        recording; notes on recordings; the readings next in worth.
    close : bool
        Whether lines, table rows and margins draw together; the type stays.
    left_out : tuple of str
        What of this is not printed.
    """

    body_pt: float
    small_pt: float
    whole: int
    long_limits: int
    below: str
    readings: bool
    ranking_chart: bool
    curve_chart: bool
    alternatives: bool
    facts: bool
    notes: bool
    ranks: bool
    close: bool
    left_out: tuple[Left, ...]


_CHARTS: tuple[Left, ...] = ("readings", "ranking_chart", "curve_chart", "alternatives")
_TALK: tuple[Left, ...] = (*_CHARTS, "short_limits", "recording_notes")
_FAR: tuple[Left, ...] = (*_CHARTS, "far_reasons", "facts")

_ROOMY = Setting(
    body_pt=11, small_pt=9.5, whole=10, long_limits=99, below="reasons", readings=True, ranking_chart=True, curve_chart=True,
    alternatives=True, facts=True, notes=True, ranks=True, close=False, left_out=(),
)  # fmt: skip
_STEPS: tuple[dict[str, Any], ...] = (
    {"whole": 8, "ranking_chart": False, "left_out": ("ranking_chart",)},
    {
        "small_pt": 9, "whole": 7, "long_limits": 4, "readings": False, "curve_chart": False, "alternatives": False,
        "left_out": _CHARTS,
    },
    {"body_pt": 10.5, "whole": 6, "long_limits": 3, "notes": False, "left_out": _TALK},
    {"whole": 5, "long_limits": 2, "below": "names", "facts": False, "left_out": _FAR},
    {"whole": 4, "long_limits": 1, "ranks": False},
    {"whole": 3, "close": True},
    {"body_pt": 10, "small_pt": 8.5, "whole": 4},
    {"body_pt": 9.5, "small_pt": 8, "whole": 3},
    {"body_pt": 9, "small_pt": 7.5, "long_limits": 0},
)  # fmt: skip
SETTINGS: tuple[Setting, ...] = tuple(accumulate(_STEPS, lambda before, step: replace(before, **step), initial=_ROOMY))
"""From roomy to closest. No caution, query, fault or assumption ever gives way; the last three only for a case of very
many words, since they are small to read."""
