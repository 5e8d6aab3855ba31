"""Paper of a mount's drawing: the kinds of line, words and numbers, and a window through which a view is seen.

Line kinds after ISO 128-2, two widths 2 to 1: wide continuous for the mount, narrow dashed for what is hidden, narrow long-dash dot
for axes, narrow long-dash double-dot for neighbours and for what must stay free, zigzags where something goes on.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from stickwright.report.ink import FONT, TYPE_MM, text_mm
from stickwright.report.mount_solids import Eye

if TYPE_CHECKING:
    import drawsvg

__all__ = ["NUMBER_MM", "Kind", "PaperFrame", "Pen", "number_mm", "rounded"]

Spot = tuple[float, float]
Kind = Literal[
    "seen", "hidden", "axis", "phantom", "band", "cable", "hatch", "dimension", "extension", "leader", "break", "sign", "thin",
    "front", "ring",
]  # fmt: skip
NUMBER_MM = 3.5
_GREY = "#8c8c8c"
_WIDE, _NARROW = 0.5, 0.25
_DOT, _DOTS = "6 1.2 0.8 1.2", "6 1.2 0.8 1.2 0.8 1.2"
_LINES: dict[Kind, tuple[float, str]] = {
    "seen": (_WIDE, ""), "hidden": (_NARROW, "2 1"), "axis": (_NARROW, _DOT), "phantom": (_NARROW, _DOTS),
    "band": (_WIDE, _DOT), "cable": (0.35, "0.5 1.1"), "hatch": (0.18, ""), "dimension": (_NARROW, ""),
    "extension": (_NARROW, ""), "leader": (_NARROW, ""), "break": (_NARROW, ""), "sign": (_NARROW, ""),
    "thin": (_NARROW, ""), "front": (_NARROW, ""), "ring": (_NARROW, ""),
}  # fmt: skip


def rounded(*numbers: float) -> tuple[float, ...]:
    """Hundredths of a millimetre: what a printer can do, and the same text on every machine."""
    return tuple(round(number, 2) + 0.0 for number in numbers)


def number_mm(text: str) -> float:
    """How wide a number is printed."""
    return text_mm(text) * NUMBER_MM / TYPE_MM


class Pen:
    """Draws on a drawing in millimetre; each thing carries its kind as a class.

    Parameters
    ----------
    drawing : drawsvg.Drawing
        To be drawn on.
    """

    def __init__(self, drawing: drawsvg.Drawing) -> None:
        self._drawing = drawing

    def line(self, spots: Sequence[Spot], kind: Kind, *, close: bool = False, width: float | None = None) -> None:
        """A line through points."""
        import drawsvg

        wide, dash = _LINES[kind]
        more: dict[str, Any] = {"stroke_dasharray": dash} if dash else {}
        self._drawing.append(
            drawsvg.Lines(
                *rounded(*(number for spot in spots for number in spot)), close=close, fill="none",
                stroke=_GREY if kind == "sign" else "black", stroke_width=wide if width is None else width,
                stroke_linejoin="round", class_=kind, **more,
            )
        )  # fmt: skip

    def circle(self, at: Spot, radius: float, kind: Kind, fill: str = "none") -> None:
        """A circle."""
        import drawsvg

        self._drawing.append(
            drawsvg.Circle(*rounded(*at, radius), fill=fill, stroke="black", stroke_width=_LINES[kind][0], class_=kind)
        )

    def dot(self, at: Spot, radius: float = 0.45) -> None:
        """The end of a leader on a face."""
        import drawsvg

        self._drawing.append(drawsvg.Circle(*rounded(*at, radius), fill="black", class_="dot"))

    def head(self, start: Spot, tip: Spot, size: float = 2.5) -> None:
        """A filled arrow head at `tip`."""
        import drawsvg

        far = math.dist(start, tip) or 1.0
        x, y = (tip[0] - start[0]) / far, (tip[1] - start[1]) / far
        foot, wing = (tip[0] - x * size, tip[1] - y * size), size * 0.17
        spots = (*tip, foot[0] - y * wing, foot[1] + x * wing, foot[0] + y * wing, foot[1] - x * wing)
        self._drawing.append(drawsvg.Lines(*rounded(*spots), close=True, fill="black", class_="head"))

    def words(
        self, text: str, at: Spot, *, bold: bool = False, anchor: str = "start", size: float = TYPE_MM, turn_deg: float = 0.0,
        kind: str = "words",
    ) -> None:  # fmt: skip
        """Words on their base line."""
        import drawsvg

        more: dict[str, Any] = {"font_weight": "bold"} if bold else {}
        x, y = rounded(*at)
        if turn_deg:
            more["transform"] = f"rotate({round(turn_deg, 2) + 0.0:g} {x:g} {y:g})"
        self._drawing.append(
            drawsvg.Text(text, size, x, y, text_anchor=anchor, font_family=FONT, fill="black", class_=kind, **more)
        )

    def balloon(self, number: int, at: Spot, radius: float) -> None:
        """A number in its circle."""
        self.circle(at, radius, "leader", fill="white")
        self.words(f"{number}", (at[0], at[1] + NUMBER_MM * 0.36), anchor="middle", size=NUMBER_MM, kind="number")


@dataclass(frozen=True)
class PaperFrame:
    """A window on the room, on paper.

    Parameters
    ----------
    eye : Eye
        From where it is looked at.
    corner : tuple of float
        Left top of the window on paper; millimetre.
    low, high : tuple of float
        Left bottom and right top of the window in the view; metre.
    one_to : int
        Scale.
    """

    eye: Eye
    corner: Spot
    low: Spot
    high: Spot
    one_to: int

    @property
    def scale(self) -> float:
        """Millimetre of paper for a metre."""
        return 1000.0 / self.one_to

    @property
    def size(self) -> Spot:
        """Width and height on paper."""
        return (self.high[0] - self.low[0]) * self.scale, (self.high[1] - self.low[1]) * self.scale

    @property
    def far(self) -> Spot:
        """Right bottom of the window on paper."""
        return self.corner[0] + self.size[0], self.corner[1] + self.size[1]

    def at(self, spot: Sequence[float]) -> Spot:
        """A spot of the view on paper."""
        return (
            self.corner[0] + (float(spot[0]) - self.low[0]) * self.scale,
            self.corner[1] + (self.high[1] - float(spot[1])) * self.scale,
        )

    def on(self, point: tuple[float, float, float]) -> Spot:
        """A point of the room on paper."""
        return self.at(self.eye.flat([point])[0])

    def holds(self, spot: Spot, inset: float = 0.0) -> bool:
        """Whether a spot on paper lies in the window, so far from its sides."""
        (left, top), (right, bottom) = self.corner, self.far
        return left + inset <= spot[0] <= right - inset and top + inset <= spot[1] <= bottom - inset

    def cut(self, spots: Sequence[Spot]) -> list[list[Spot]]:
        """What of a line on paper lies in the window."""
        out: list[list[Spot]] = []
        for start, end in itertools.pairwise(spots):
            kept = self._kept(start, end)
            if kept is None:
                continue
            if out and out[-1][-1] == kept[0]:
                out[-1].append(kept[1])
            else:
                out.append(list(kept))
        return out

    def _kept(self, start: Spot, end: Spot) -> tuple[Spot, Spot] | None:
        first, last = 0.0, 1.0
        for axis in (0, 1):
            way = end[axis] - start[axis]
            for limit, sign in ((self.corner[axis], 1.0), (self.far[axis], -1.0)):
                gap, step = sign * (start[axis] - limit), sign * way
                if abs(step) < 1e-12:
                    if gap < -1e-9:
                        return None
                elif step > 0:
                    first = max(first, -gap / step)
                else:
                    last = min(last, -gap / step)
        if first >= last:
            return None

        def at(share: float) -> Spot:
            return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])

        return start if first == 0.0 else at(first), end if last == 1.0 else at(last)

    def breaks(self, outline: Sequence[Spot]) -> Iterable[tuple[int, float, float]]:
        """Where the window cuts off an outline on paper: which side (0 left, 1 right, 2 top, 3 bottom), from where to where."""
        for side in range(4):
            axis = side // 2
            limit = (self.corner, self.far)[side % 2][axis]
            across = []
            for a, b in zip(outline, [*outline[1:], outline[0]], strict=True):
                if (a[axis] - limit) * (b[axis] - limit) < 0:
                    share = (limit - a[axis]) / (b[axis] - a[axis])
                    across.append(a[1 - axis] + share * (b[1 - axis] - a[1 - axis]))
            if len(across) == 2:
                low, high = sorted(across)
                low, high = max(low, self.corner[1 - axis]), min(high, self.far[1 - axis])
                if high > low:
                    yield side, low, high
