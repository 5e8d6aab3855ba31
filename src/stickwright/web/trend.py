"""Force through time: a drawing for each site, one small panel for each direction, and the same numbers as a table.

All panels of a site share their axes, so that heights can be compared. A point is the middle of the repeats of one visit, the bar
through it goes from the weakest to the strongest repeat. Nothing is drawn between visits but a thin line: what happened there
nobody measured.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from html import escape
from statistics import median

from stickwright.catalogue import book, say
from stickwright.codes.commands import Commands
from stickwright.codes.message import Name, message
from stickwright.codes.trends import Trends
from stickwright.model.plan import direction_words
from stickwright.units import QUANTITIES, figures, to_si

__all__ = ["Point", "SiteTrend", "site_trends"]

PANEL_W, PANEL_H, LEFT, TOP, BOTTOM, COLUMNS = 210, 150, 46, 30, 34, 4
ARROWS = ("→", "↗", "↑", "↖", "←", "↙", "↓", "↘")


@dataclass(frozen=True)
class Point:
    """Repeats of one direction at one visit, in newton."""

    on_date: str
    site: str
    direction_rad: float
    repeats_n: tuple[float, ...]


@dataclass(frozen=True)
class SiteTrend:
    """One site: its drawing (SVG), one sentence for who does not see it, and its table."""

    site: str
    svg: str
    sentence: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def site_trends(points: Iterable[Point], unit: str = "n") -> tuple[SiteTrend, ...]:
    """A figure and a table for each site with readings on two dates or more, sites by name.

    Parameters
    ----------
    points : iterable of Point
    unit : str
        Ending of the force unit to show.
    """
    by_site: dict[str, list[Point]] = {}
    for point in points:
        if point.repeats_n and point.on_date:
            by_site.setdefault(point.site, []).append(point)
    trends = []
    for site, found in sorted(by_site.items()):
        dates = sorted({point.on_date for point in found})
        if len(dates) > 1:
            trends.append(_site_trend(site, found, dates, unit))
    return tuple(trends)


def _site_trend(site: str, found: Sequence[Point], dates: Sequence[str], unit: str) -> SiteTrend:
    directions: dict[float, list[Point]] = {}
    for point in sorted(found, key=lambda point: point.on_date):
        directions.setdefault(round(math.degrees(point.direction_rad) % 360, 1) % 360, []).append(point)
    label = QUANTITIES["force"].unit(unit).label
    factor = to_si(1.0, unit)
    rows = []
    for degrees, series in sorted(directions.items()):
        held = {point.on_date: point for point in series}
        cells = tuple(_cell(held.get(day), factor) for day in dates)
        rows.append((direction_words(math.radians(degrees)), *cells))
    more, less = _way(directions)
    sentence = say(
        message(
            Trends.sentence, site=Name(site), unit=Name(label), directions=len(directions), visits=len(dates),
            more=more, less=less,
        )
    )  # fmt: skip
    svg = _drawing(sorted(directions.items()), dates, factor, label, sentence)
    return SiteTrend(
        site,
        svg,
        sentence,
        (say(message(Commands.direction)), *(book().writer.date(day) for day in dates)),
        tuple(rows),
    )


def _cell(point: Point | None, factor: float) -> str:
    if point is None:
        return say(message(Trends.not_taken))
    low, middle, high = (value / factor for value in _spread(point))
    if len(point.repeats_n) == 1:
        return figures(middle)
    return say(message(Trends.spread, middle=Name(figures(middle)), low=Name(figures(low)), high=Name(figures(high))))


def _spread(point: Point) -> tuple[float, float, float]:
    return min(point.repeats_n), median(point.repeats_n), max(point.repeats_n)


def _way(directions: dict[float, list[Point]]) -> tuple[int, int]:
    """How many directions read more at the last visit than at the first, and how many less, by more than their repeats differ."""
    more = sum(_spread(series[-1])[0] > _spread(series[0])[2] for series in directions.values())
    less = sum(_spread(series[-1])[2] < _spread(series[0])[0] for series in directions.values())
    return more, less


def _drawing(
    directions: Sequence[tuple[float, list[Point]]],
    dates: Sequence[str],
    factor: float,
    label: str,
    sentence: str,
) -> str:
    top = _round_up(max(_spread(point)[2] for _, series in directions for point in series) / factor)
    columns = min(COLUMNS, len(directions))
    width, height = columns * PANEL_W + 10, math.ceil(len(directions) / columns) * PANEL_H
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="trend" viewBox="0 0 {width} {height}" role="img" '
        f'aria-label="{escape(sentence)}">'
    ]
    for number, (degrees, series) in enumerate(directions):
        x0, y0 = number % columns * PANEL_W, number // columns * PANEL_H
        parts.append(f'<g transform="translate({x0} {y0})">{_panel(degrees, series, dates, top, factor, label)}</g>')
    return "".join(parts) + "</svg>"


def _panel(degrees: float, series: Sequence[Point], dates: Sequence[str], top: float, factor: float, label: str) -> str:
    """One direction; its axis goes from the first to the last of all dates, whatever was taken on them."""
    wide, high = PANEL_W - LEFT - 16, PANEL_H - TOP - BOTTOM
    first, last = (date.fromisoformat(day).toordinal() for day in (dates[0], dates[-1]))

    def x(point: Point) -> float:
        at = date.fromisoformat(point.on_date).toordinal()
        return LEFT + 8 + (wide - 16) * (at - first) / (last - first)

    def y(value_n: float) -> float:
        return TOP + high * (1 - value_n / factor / top)

    nearest = round(degrees / 45)
    arrow = f"{ARROWS[nearest % 8]} " if abs(degrees - 45 * nearest) < 0.5 else ""
    parts = [
        f'<text x="{LEFT}" y="18" class="title">{arrow}{direction_words(math.radians(degrees))}</text>',
        f'<path class="axis" d="M{LEFT} {TOP}V{TOP + high}H{LEFT + wide}"/>',
        f'<text x="{LEFT - 6}" y="{TOP + 5}" class="end">{figures(top)}</text>',
        f'<text x="{LEFT - 6}" y="{TOP + high + 4}" class="end">0</text>',
        f'<text x="{LEFT - 6}" y="{TOP + high / 2 + 4}" class="end">{escape(label)}</text>',
        f'<text x="{LEFT}" y="{TOP + high + 18}">{dates[0][:7]}</text>',
        f'<text x="{LEFT + wide}" y="{TOP + high + 18}" class="end">{dates[-1][:7]}</text>',
    ]
    if len(series) > 1:
        parts.append('<path class="line" d="M' + "L".join(f"{x(p):.1f} {y(_spread(p)[1]):.1f}" for p in series) + '"/>')
    for point in series:
        low, middle, most = _spread(point)
        parts.append(f'<path class="bar" d="M{x(point):.1f} {y(low):.1f}V{y(most):.1f}"/>')
        parts.append(f'<circle cx="{x(point):.1f}" cy="{y(middle):.1f}" r="4"/>')
    return "".join(parts)


def _round_up(value: float) -> float:
    """The next of 1, 2, 5 times a power of ten: a scale that reads easily."""
    tens = 10.0 ** math.floor(math.log10(value)) if value > 0 else 1.0
    return next(step * tens for step in (1, 2, 5, 10) if step * tens >= value * (1 - 1e-9))
