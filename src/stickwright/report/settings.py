"""How close the technical pages are set: type sizes, and what gives way first when a visit was long."""

from __future__ import annotations

from dataclasses import dataclass

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

SETTINGS: tuple[Setting, ...] = (
    Setting(11, 9.5, 10, 99, "reasons", True, True, True, True, True, True, True, False, ()),
    Setting(11, 9.5, 8, 99, "reasons", True, False, True, True, True, True, True, False, ("ranking_chart",)),
    Setting(11, 9, 7, 4, "reasons", False, False, False, False, True, True, True, False, _CHARTS),
    Setting(10.5, 9, 6, 3, "reasons", False, False, False, False, True, False, True, False, _TALK),
    Setting(10.5, 9, 5, 2, "names", False, False, False, False, False, False, True, False, _FAR),
    Setting(10.5, 9, 4, 1, "names", False, False, False, False, False, False, False, False, _FAR),
    Setting(10.5, 9, 3, 1, "names", False, False, False, False, False, False, False, True, _FAR),
    Setting(10, 8.5, 4, 1, "names", False, False, False, False, False, False, False, True, _FAR),
    Setting(9.5, 8, 3, 1, "names", False, False, False, False, False, False, False, True, _FAR),
    Setting(9, 7.5, 3, 0, "names", False, False, False, False, False, False, False, True, _FAR),
)
"""From roomy to closest. No caution, query, fault or assumption ever gives way; the last three only for a case of very
many words, since they are small to read."""
