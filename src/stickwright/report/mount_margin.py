"""Distances about a view of a mount, outside what is drawn: extension lines, arrows, numbers; and the bar to check the scale by."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from stickwright.catalogue import book
from stickwright.codes.message import message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.report.ink import LINE_MM, fitted
from stickwright.report.mount_paper import NUMBER_MM, PaperFrame, Pen, number_mm
from stickwright.report.mount_shapes import plain_words
from stickwright.report.mount_views import DimensionLine
from stickwright.report.printed import in_unit

__all__ = [
    "FIRST_MM",
    "FOOT_MM",
    "ROW_MM",
    "DrawnDistance",
    "foot",
    "margin_mm",
    "measured",
    "measured_along",
    "text_box",
]

Spot = tuple[float, float]
ROW_MM, FIRST_MM, FOOT_MM = 8.0, 10.0, 14.0
_SHORT_MM, _OFF_MM, _OVER_MM = 8.0, 1.5, 1.5


@dataclass(frozen=True)
class DrawnDistance:
    """A distance drawn: its extension lines on paper, and the box of its number."""

    lines: tuple[tuple[Spot, Spot], ...]
    box: tuple[Spot, ...]


def margin_mm(rows: int) -> float:
    """Room that so many rows of dimensions take."""
    return FIRST_MM + ROW_MM * (rows - 1) + 3.0 if rows else 4.0


def _number(distance_m: float) -> str:
    return book().writer.whole(in_unit(distance_m, "mm"))


def measured(pen: Pen, frame: PaperFrame, lines: Sequence[DimensionLine], edge: Spot) -> list[DrawnDistance]:
    """Distances up the paper in columns left of a view, others in rows below it, the shortest nearest.

    Parameters
    ----------
    pen : Pen
        To draw with.
    frame : PaperFrame
        The view.
    lines : sequence of DimensionLine
        What is to be drawn.
    edge : tuple of float
        Left side and bottom of what is drawn; millimetre.
    """
    ordered = sorted(lines, key=lambda line: (line.distance_m, line.to))
    out = []
    for upright in (True, False):
        for place, line in enumerate(one for one in ordered if one.upright is upright):
            off = FIRST_MM + ROW_MM * place
            row = edge[0] - off if upright else edge[1] + off
            out.append(_measured(pen, frame, line, row))
    return out


def _measured(pen: Pen, frame: PaperFrame, line: DimensionLine, row_mm: float) -> DrawnDistance:
    spots = [frame.at(line.start), frame.at(line.end)]
    ends: list[Spot] = [(row_mm, y) if line.upright else (x, row_mm) for x, y in spots]
    outward = (-1.0, 0.0) if line.upright else (0.0, 1.0)
    drawn = []
    for spot, end in zip(spots, ends, strict=True):
        start = (spot[0] + outward[0] * _OFF_MM, spot[1] + outward[1] * _OFF_MM)
        past = (end[0] + outward[0] * _OVER_MM, end[1] + outward[1] * _OVER_MM)
        pen.line([start, past], "extension")
        drawn.append((start, past))
    return DrawnDistance(tuple(drawn), _arrows(pen, ends[0], ends[1], _number(line.distance_m), upright=line.upright))


def _arrows(pen: Pen, one: Spot, other: Spot, text: str, *, upright: bool) -> tuple[Spot, ...]:
    """The line with its arrows and its number: above it, or left of an upright one; past an arrow where it is short."""
    first, last = sorted((one, other), key=lambda spot: -spot[1] if upright else spot[0])
    far, wide = math.dist(first, last), number_mm(text)
    along = ((last[0] - first[0]) / far, (last[1] - first[1]) / far)
    turn = math.degrees(math.atan2(along[1], along[0]))
    if far >= max(_SHORT_MM, wide + 1.0):
        pen.line([first, last], "dimension")
        pen.head(first, last)
        pen.head(last, first)
        middle = far / 2
    else:
        out = 4.5
        before = (first[0] - along[0] * out, first[1] - along[1] * out)
        after = (last[0] + along[0] * (out + wide + 1.0), last[1] + along[1] * (out + wide + 1.0))
        pen.line([first, last], "dimension")
        pen.line([before, first], "thin")
        pen.line([after, last], "thin")
        pen.head(before, first)
        pen.head(after, last)
        middle = far + out - 1.0 + wide / 2 + 0.5
    off = 0.8
    at = (first[0] + along[0] * middle + along[1] * off, first[1] + along[1] * middle - along[0] * off)
    pen.words(text, at, anchor="middle", size=NUMBER_MM, turn_deg=turn, kind="number")
    return text_box(at, text, along)


def text_box(at: Spot, text: str, along: Spot) -> tuple[Spot, ...]:
    """Corners of a number centred on its base line."""
    half, high = number_mm(text) / 2, NUMBER_MM * 0.75
    up = (along[1], -along[0])
    return tuple(
        (at[0] + along[0] * side * half + up[0] * rise, at[1] + along[1] * side * half + up[1] * rise)
        for side, rise in ((-1, 0.0), (1, 0.0), (1, high), (-1, high))
    )


def measured_along(pen: Pen | None, start: Spot, end: Spot, aside: Spot, distance_m: float) -> DrawnDistance:
    """A distance along something that leans, parallel to it; without a pen, where it would be.

    Parameters
    ----------
    pen : Pen or None
        To draw with.
    start, end : tuple of float
        What is measured, on paper.
    aside : tuple of float
        How far the line lies beside it.
    distance_m : float
        What is written.
    """
    far = math.hypot(*aside)
    way = (aside[0] / far, aside[1] / far)
    ends = [(spot[0] + aside[0], spot[1] + aside[1]) for spot in (start, end)]
    lines = []
    for spot, tip in zip((start, end), ends, strict=True):
        lines.append(
            (
                (spot[0] + way[0] * _OFF_MM, spot[1] + way[1] * _OFF_MM),
                (tip[0] + way[0] * _OVER_MM, tip[1] + way[1] * _OVER_MM),
            )
        )
    upright = abs(ends[0][0] - ends[1][0]) < 0.5 * abs(ends[0][1] - ends[1][1])
    if pen is None:
        first, last = sorted(ends, key=lambda spot: -spot[1] if upright else spot[0])
        length = math.dist(first, last) or 1.0
        along = ((last[0] - first[0]) / length, (last[1] - first[1]) / length)
        middle = ((first[0] + last[0]) / 2 + along[1] * 0.8, (first[1] + last[1]) / 2 - along[0] * 0.8)
        return DrawnDistance((*lines, (first, last)), text_box(middle, _number(distance_m), along))
    for one in lines:
        pen.line(one, "extension")
    return DrawnDistance(tuple(lines), _arrows(pen, ends[0], ends[1], _number(distance_m), upright=upright))


def foot(pen: Pen, top: float, width_mm: float, one_to: int, tilt_rad: float | None = None) -> None:
    """A bar to check the scale by, and what holds for the whole page.

    Parameters
    ----------
    pen : Pen
        To draw with.
    top : float
        Where it starts.
    width_mm : float
        Of the paper.
    one_to : int
        Scale of the two views.
    tilt_rad : float, optional
        To which tilt the seat is drawn too.
    """
    step_m = next(step for step in (0.01, 0.02, 0.05, 0.10, 0.20, 0.50) if step * 1000 / one_to >= 9.5)
    step_mm, writer = step_m * 1000 / one_to, book().writer
    for number in range(2):
        left = 1.0 + number * step_mm
        corners = [(left, top), (left + step_mm, top), (left + step_mm, top + 1.8), (left, top + 1.8)]
        pen.line(corners, "thin", close=True)
        if number == 0:
            pen.line([(left, top + 0.9), (left + step_mm, top + 0.9)], "thin", width=1.8)
    for number in range(3):
        whole = writer.whole(in_unit(step_m * number, "mm"))
        pen.words(whole, (1.0 + number * step_mm, top + 5.6), anchor="middle" if number else "start")
    left = 1.0 + 2 * step_mm + 12.0
    told = message(MountDrawings.foot, one_to=writer.trimmed(float(one_to)), tilt_rad=tilt_rad)
    for row, line in enumerate(fitted(plain_words(told), width_mm - left - 0.5, 4)):
        pen.words(line, (left, top + 2.0 + LINE_MM * row))
