"""One view of a mount on paper: its window on the room, strokes cut off at its frame, and where names may stand."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from stickwright.report.mount_labels import Labels
from stickwright.report.mount_views import Spot, View, clipped_polygon, flat

if TYPE_CHECKING:
    import drawsvg

__all__ = ["Frame", "area", "arrow", "dot", "dot_on", "head", "rounded", "shifted", "stroke"]


@dataclass
class Frame:
    """One view on paper: its window on the room, what is drawn in it, and where names may stand."""

    view: View
    corner: Spot
    size: Spot
    middle: Spot
    """Of the window, metre."""
    scale: float
    """Millimetre of paper for a metre."""
    group: Any
    labels: Labels = field(init=False)

    def __post_init__(self) -> None:
        self.labels = Labels(*self.corner, *self.size)

    def at(self, spot: Spot) -> Spot:
        x = self.corner[0] + self.size[0] / 2 + (spot[0] - self.middle[0]) * self.scale
        return x, self.corner[1] + self.size[1] / 2 - (spot[1] - self.middle[1]) * self.scale

    def on(self, point: tuple[float, float, float]) -> Spot:
        return self.at(flat(point, self.view))

    @property
    def low(self) -> Spot:
        return self.corner

    @property
    def high(self) -> Spot:
        return self.corner[0] + self.size[0], self.corner[1] + self.size[1]

    def seen(self, spots: Sequence[Spot]) -> list[Spot]:
        """The stretch of a line, or the part of an outline, that lies in the frame."""
        if len(spots) > 2:
            return clipped_polygon(spots, self.low, self.high)
        (ax, ay), (bx, by) = spots
        steps = ((ax + (bx - ax) * n / 40, ay + (by - ay) * n / 40) for n in range(41))
        (left, top), (right, bottom) = self.low, self.high
        return [(x, y) for x, y in steps if left <= x <= right and top <= y <= bottom]


def stroke(
    frame: Frame, spots: Sequence[Spot], *, colour: str = "black", width: float = 0.3, dash: str = "", cap: str = "butt",
    note: bool = True, weight: float = 1.0,
) -> None:  # fmt: skip
    """A line through points, cut off at the frame; names keep off it when it is black."""
    import drawsvg

    more = {"stroke_dasharray": dash} if dash else {}
    flat_spots = rounded(*(number for spot in spots for number in spot))
    frame.group.append(
        drawsvg.Lines(*flat_spots, fill="none", stroke=colour, stroke_width=round(width, 2), stroke_linecap=cap, **more)
    )
    if note and colour == "black":
        frame.labels.draw_over(*spots, weight=weight)


def area(
    frame: Frame, spots: Sequence[Spot], *, fill: str = "none", colour: str = "black", width: float = 0.3, dash: str = "",
    weight: float = 1.0,
) -> None:  # fmt: skip
    """An outline, cut off at the frame; names keep off its lines."""
    import drawsvg

    if len(spots) < 2:
        return
    more = {"stroke_dasharray": dash} if dash else {}
    flat_spots = rounded(*(number for spot in spots for number in spot))
    frame.group.append(drawsvg.Lines(*flat_spots, close=True, fill=fill, stroke=colour, stroke_width=width, **more))
    frame.labels.draw_over(*spots, spots[0], weight=weight if colour == "black" else 0.3)


def dot(frame: Frame, at: Spot, radius: float, fill: str, width: float = 0.4) -> None:
    """A filled circle, cut off at the frame."""
    import drawsvg

    frame.group.append(drawsvg.Circle(*rounded(*at, radius), fill=fill, stroke="black", stroke_width=width))
    frame.labels.draw_over((at[0] - radius, at[1]), (at[0] + radius, at[1]), weight=3.0)


def dot_on(drawing: drawsvg.Drawing, at: Spot, radius: float) -> None:
    """The end of the line that leads from a name to its thing."""
    import drawsvg

    drawing.append(drawsvg.Circle(*rounded(*at, radius), fill="black"))


def arrow(frame: Frame, start: Spot, tip: Spot, *, width: float) -> None:
    """A line with a head, cut off at the frame."""
    far = math.dist(start, tip) or 1.0
    foot = tuple(b - (b - a) / far * 2.4 for a, b in zip(start, tip, strict=True))
    stroke(frame, [start, (foot[0], foot[1])], width=width, weight=4.0)
    head(frame.group, start, tip, 3.0)


def head(onto: Any, start: Spot, tip: Spot, size: float = 1.8) -> None:
    """A filled arrow head at `tip`."""
    import drawsvg

    far = math.dist(start, tip) or 1.0
    x, y = (tip[0] - start[0]) / far, (tip[1] - start[1]) / far
    foot, wing = (tip[0] - x * size, tip[1] - y * size), size * 0.4
    spots = (*tip, foot[0] - y * wing, foot[1] + x * wing, foot[0] + y * wing, foot[1] - x * wing)
    onto.append(drawsvg.Lines(*rounded(*spots), close=True, fill="black"))


def shifted(spot: Spot, x: float, y: float) -> Spot:
    """A point so far to the right and down the paper."""
    return spot[0] + x, spot[1] + y


def rounded(*numbers: float) -> tuple[float, ...]:
    """Hundredths of a millimetre: what a printer can do, and the same text on every machine."""
    return tuple(round(number, 2) for number in numbers)
