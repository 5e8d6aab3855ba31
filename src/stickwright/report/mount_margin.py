"""What stands about the views of a mount: distances with their arrows, and the scale."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from stickwright.catalogue import book
from stickwright.codes.message import message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.report.ink import FONT, LINE_MM, TYPE_MM, Ink, fitted, text_mm
from stickwright.report.mount_paper import Frame, head, rounded
from stickwright.report.mount_shapes import plain_words
from stickwright.report.mount_views import DimensionLine, Spot
from stickwright.report.printed import in_unit

if TYPE_CHECKING:
    import drawsvg

__all__ = ["FOOT_MM", "ROW_MM", "foot", "outside_lines"]

ROW_MM, FOOT_MM = 6.6, 10.5


def outside_lines(drawing: drawsvg.Drawing, frame: Frame, lines: Sequence[DimensionLine]) -> None:
    """Dimension lines in rows below a view and in columns beside it, the shortest nearest."""
    (left, _), (right, bottom) = frame.low, frame.high
    ordered = sorted(lines, key=lambda line: (line.distance_m, line.to))
    upright = [line for line in ordered if line.upright]
    written = []
    for place, line in enumerate(upright):
        x = left - ROW_MM * (place + 1) + 3.9 if frame.view == "above" else right + ROW_MM * (place + 1) - 1.4
        written.append(_dimension(drawing, frame, line, x))
    for place, line in enumerate(line for line in ordered if not line.upright):
        written.append(_dimension(drawing, frame, line, bottom + ROW_MM * (place + 1) - 1.6))
    for text, upright_one, at in written:  # after all lines, so that none runs through words
        _write(drawing, text, upright_one, at)


def _dimension(drawing: drawsvg.Drawing, frame: Frame, line: DimensionLine, row_mm: float) -> tuple[str, bool, Spot]:
    """One distance: thin lines from its two points out of the frame, arrows between them; what is to be written where."""
    ink, axis = Ink(drawing), 1 if line.upright else 0
    spots = [frame.at(line.start), frame.at(line.end)]
    ends: list[Spot] = [(row_mm, y) if line.upright else (x, row_mm) for x, y in spots]
    for spot, end in zip(spots, ends, strict=True):
        over = 1.0 if end[1 - axis] > spot[1 - axis] else -1.0
        ink.line(spot, (end[0] + over, end[1]) if line.upright else (end[0], end[1] + over), width=0.15)
        frame.labels.draw_over(spot, end, weight=0.5)
    text = plain_words(message(MountDrawings.distance, to=line.to, distance_m=line.distance_m))
    long = abs(ends[1][axis] - ends[0][axis])
    first, last = sorted(ends, key=lambda end: end[axis])
    wide = text_mm(text)
    if long > 4.5:
        ink.line(first, last, width=0.25)
        head(drawing, first, last)
        head(drawing, last, first)
    else:  # too short for heads inside: they point at it from outside
        out = 4.0
        for near, way in ((first, -out), (last, out)):
            far = (near[0], near[1] + way) if line.upright else (near[0] + way, near[1])
            ink.line(far, near, width=0.25)
            head(drawing, far, near)
    middle = (first[axis] + last[axis]) / 2 if long > 4.5 else first[axis] - 4.5 - wide / 2
    low, high = (frame.low[axis] + wide / 2, frame.high[axis] - wide / 2)
    middle = min(max(middle, low), high) if low < high else middle
    return text, line.upright, (row_mm - 0.9, middle) if line.upright else (middle, row_mm - 0.9)


def _write(drawing: drawsvg.Drawing, text: str, upright: bool, at: Spot) -> None:
    """What a distance is, on white, beside its line."""
    ink, (x, y), wide = Ink(drawing), at, text_mm(text)
    if upright:
        ink.box(x - 2.6, y - wide / 2, 3.2, wide, line_mm=0.0)
        _turned_words(drawing, text, at)
    else:
        ink.box(x - wide / 2, y - 2.6, wide, 3.2, line_mm=0.0)
        ink.words(text, at, anchor="middle")


def _turned_words(drawing: drawsvg.Drawing, text: str, at: Spot) -> None:
    """Words that run up the page, to be read from its right."""
    import drawsvg

    x, y = rounded(*at)
    drawing.append(
        drawsvg.Text(
            text, TYPE_MM, x, y, text_anchor="middle", font_family=FONT, fill="black",
            transform=f"rotate(-90 {x:g} {y:g})",
        )
    )  # fmt: skip


def foot(drawing: drawsvg.Drawing, size_mm: Spot, one_to: float, tilt_rad: float | None = None) -> None:
    """A bar to check the scale by, the scale in words, and what is only a sign."""
    ink = Ink(drawing)
    step_m = next(step for step in (0.02, 0.05, 0.10, 0.20, 0.50) if step * 1000 / one_to >= 9.0)
    step_mm, y = step_m * 1000 / one_to, size_mm[1] - 6.0
    for number in range(3):
        ink.box(1.0 + number * step_mm, y - 1.6, step_mm, 1.6, fill="white" if number % 2 else "black", line_mm=0.2)
    for number in range(4):
        at, writer = 1.0 + number * step_mm, book().writer
        whole = writer.millimetres(step_m * number) if number == 3 else writer.whole(in_unit(step_m * number, "mm"))
        ink.words(plain_words(whole), (at, y + 3.4), anchor="start" if number in (0, 3) else "middle")
    left = 1.0 + 3 * step_mm + 17.0
    told = message(MountDrawings.foot, one_to=book().writer.trimmed(one_to), tilt_rad=tilt_rad)
    for row, line in enumerate(fitted(plain_words(told), size_mm[0] - left - 0.5, 2)):
        ink.words(line, (left, y + LINE_MM * row), bold=False)
