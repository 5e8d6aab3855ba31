"""The seated player from the front, with a numbered marker where each used part is and a line to its label.

The player's own right is on the left of the picture, as for somebody who faces them; the drawing says so.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from stickwright.catalogue import say
from stickwright.codes.body_drawings import BodyDrawings
from stickwright.codes.message import Message, Name, Text, message
from stickwright.report.ink import FONT
from stickwright.report.printed import folded
from stickwright.report.tell import tell

if TYPE_CHECKING:
    import drawsvg

__all__ = ["BodyMark", "body_alt", "body_drawing", "body_told", "part_named", "side_named"]

Point = tuple[float, float]

_TYPE_MM, _LETTER_MM, _BOLD_MM, _LINE_MM = 3.9, 2.35, 2.25, 4.7  # 11 points; letters on average
_GAP_MM = 1.2  # between labels
_MARK_MM = 2.9  # radius of a marker
_TALL = 124.0  # units of the figure from crown to sole, brought to the paper's height
_HALF = 36.0  # half its width with the chair
_HEAD_MM = 7.0  # line of words above the picture
_ROOM_FOR_VIEW_MM = 130.0  # below that width, how it is seen has to be said beside the picture
_GREY = "#8c8c8c"

_POINTS: dict[str, Point] = {
    "head": (10.0, 10.0), "cheek": (6.2, 16.0), "lip": (0.0, 19.6), "tongue": (0.0, 20.6), "chin": (0.0, 25.6),
    "shoulder": (17.5, 36.0), "trunk": (0.0, 52.0), "elbow": (26.5, 59.0), "forearm": (26.0, 67.5),
    "hand": (25.0, 77.0), "thumb": (19.6, 79.6), "fingertip": (25.6, 86.6), "thigh": (9.5, 80.0), "knee": (10.5, 88.5),
    "foot": (11.0, 116.0), "toe": (13.0, 120.6),
}  # fmt: skip
"""Each part on the player's left, in units from the middle line and from the crown."""

_NAMES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("fingertip", ("finger", "index", "fingertip", "knuckle")), ("thumb", ("thumb",)),
    ("chin", ("chin", "jaw")), ("lip", ("lip", "lips")),
    ("tongue", ("tongue", "mouth", "mouthpiece")), ("cheek", ("cheek",)), ("forearm", ("forearm", "wrist", "limb", "stump")),
    ("elbow", ("elbow",)), ("shoulder", ("shoulder", "arm")), ("toe", ("toe", "toes")), ("foot", ("foot", "heel", "ankle")),
    ("knee", ("knee",)), ("thigh", ("thigh", "leg")), ("hand", ("hand", "fist", "palm")),
    ("head", ("head", "headrest", "temple", "brow", "eyebrow", "forehead")), ("trunk", ("trunk", "chest", "belly", "back")),
)  # fmt: skip
"""Words by which a site's name tells its part, the narrower part first."""


@dataclass(frozen=True)
class BodyMark:
    """One used part.

    Parameters
    ----------
    number : int
        As in the table beside the picture.
    site : str
        Its name.
    part : str
        Body part; empty when not known.
    side : str
        Of the player: left, right, middle.
    works : Text
        What it works.
    """

    number: int
    site: str
    part: str
    side: str
    works: Text


@dataclass(frozen=True)
class _Label:
    mark: BodyMark
    name: tuple[str, ...]
    """Rows in bold."""
    device: tuple[str, ...]
    at: Point | None
    """Where the part is on paper."""

    @property
    def tall_mm(self) -> float:
        return (len(self.name) + len(self.device)) * _LINE_MM


def part_named(site: str) -> str:
    """The body part that a site's name tells; empty when it tells none.

    Examples
    --------
    >>> part_named("right index finger"), part_named("left fist"), part_named("breath")
    ('fingertip', 'hand', '')
    """
    words = set(re.findall(r"[a-z]+", site.casefold()))
    return next((part for part, names in _NAMES if words & set(names)), "")


def side_named(site: str) -> str:
    """The side that a site's name tells; the middle when it tells none.

    Examples
    --------
    >>> side_named("right index finger"), side_named("chin")
    ('right', 'middle')
    """
    words = re.findall(r"[a-z]+", site.casefold())
    return next((word for word in words if word in ("left", "right")), "middle")


def body_alt(marks: Sequence[BodyMark]) -> str:
    """The picture in one sentence.

    Parameters
    ----------
    marks : sequence of BodyMark
        Parts in use.
    """
    return say(body_told(marks))


def body_told(marks: Sequence[BodyMark]) -> Message:
    """`body_alt` as a message.

    Parameters
    ----------
    marks : sequence of BodyMark
        Parts in use.
    """
    told = tuple(
        message(BodyDrawings.mark, number=mark.number, site=Name(mark.site), works=mark.works) for mark in marks
    )
    return message(BodyDrawings.alt, marks=told)


def body_drawing(marks: Sequence[BodyMark], size_mm: tuple[float, float] = (184.0, 84.0)) -> str:
    """The seated player with numbered markers.

    Parameters
    ----------
    marks : sequence of BodyMark
        Parts in use; one whose part is not known is named beside the picture, without a line.
    size_mm : tuple of float
        Paper width and height.

    Returns
    -------
    str
        SVG in millimetre, black, white and grey, its writing of 11 points.
    """
    import drawsvg

    width, height = size_mm
    drawing = drawsvg.Drawing(width, height, origin=(0, 0))
    drawing.set_render_size(f"{width}mm", f"{height}mm")
    drawing.append_title(body_alt(marks))
    scale = (height - _HEAD_MM - 1.0) / _TALL
    _figure(drawing, _Paper(drawing, (width / 2, _HEAD_MM), scale))
    _words(drawing, tell(BodyDrawings.label, label="right"), (0.0, 4.2), bold=True)
    if width >= _ROOM_FOR_VIEW_MM:
        _words(drawing, tell(BodyDrawings.label, label="front"), (width / 2, 4.2), anchor="middle")
    _words(drawing, tell(BodyDrawings.label, label="left"), (width, 4.2), anchor="end", bold=True)
    column_mm = width / 2 - _HALF * scale - 4.0
    labels = [_label(mark, int(column_mm / _LETTER_MM), (width / 2, _HEAD_MM), scale) for mark in marks]
    taken: list[Point] = []
    for way, column in zip((-1, 1), _columns(labels, width / 2), strict=True):
        _draw_column(drawing, column, way, taken, size_mm)
    return str(drawing.as_svg())


@dataclass(frozen=True)
class _Paper:
    """The figure's units brought to paper, and strokes that make a limb with an outline."""

    drawing: drawsvg.Drawing
    crown: Point
    scale: float

    def at(self, x: float, y: float) -> Point:
        return round(self.crown[0] + x * self.scale, 2), round(self.crown[1] + y * self.scale, 2)

    def limb(self, points: Sequence[Point], wide: float) -> None:
        """A stroke with round ends: black, and white inside it."""
        import drawsvg

        for width, ink in ((wide * self.scale + 0.5, "black"), (wide * self.scale - 0.5, "white")):
            path = drawsvg.Path(
                stroke=ink, stroke_width=round(width, 2), fill="none", stroke_linecap="round", stroke_linejoin="round"
            )
            path.M(*self.at(*points[0]))
            for point in points[1:]:
                path.L(*self.at(*point))
            self.drawing.append(path)

    def oval(self, centre: Point, across: float, tall: float, fill: str = "white") -> None:
        import drawsvg

        half = (round(across * self.scale, 2), round(tall * self.scale, 2))
        self.drawing.append(drawsvg.Ellipse(*self.at(*centre), *half, fill=fill, stroke="black", stroke_width=0.5))

    def thin(self, points: Sequence[Point], ink: str = "black", width: float = 0.35) -> None:
        import drawsvg

        flat = [number for point in points for number in self.at(*point)]
        self.drawing.append(drawsvg.Lines(*flat, fill="none", stroke=ink, stroke_width=width, stroke_linejoin="round"))


def _figure(drawing: drawsvg.Drawing, paper: _Paper) -> None:
    """Chair in grey, then legs, trunk, arms and head: each covers what is behind it."""
    import drawsvg

    def board(left: float, top: float, wide: float, tall: float) -> None:
        size = (round(wide * paper.scale, 2), round(tall * paper.scale, 2))
        drawing.append(
            drawsvg.Rectangle(*paper.at(left, top), *size, rx=1.6, fill="white", stroke=_GREY, stroke_width=0.45)
        )

    board(-22, 27, 44, 58)
    for way in (-1, 1):
        paper.thin([(way * 29, 84), (way * 29, 122)], _GREY, 0.45)
        paper.thin([(way * 18.5, 94), (way * 18.5, 122)], _GREY, 0.45)
        board(min(way * 20.5, way * 31), 80, 10.5, 5)
    board(-22, 86, 44, 8)
    for way in (-1, 1):
        paper.limb([(way * 10.5, 116.5), (way * 13, 119.5)], 7.5)
        paper.limb([(way * 10.5, 88.5), (way * 10.5, 112)], 9.5)
        paper.limb([(way * 8, 74), (way * 10.5, 88.5)], 12.5)
    paper.limb([(-10, 40), (10, 40), (8.5, 70), (-8.5, 70), (-10, 40)], 11.0)
    paper.limb([(0, 42), (0, 66)], 16.0)
    _cover(paper, [(-10, 40), (10, 40), (8.5, 70), (-8.5, 70)], 10.0)
    for way in (-1, 1):
        paper.limb([(way * 18, 38), (way * 26, 58.5)], 9.0)
        paper.limb([(way * 26.5, 59), (way * 25.2, 73)], 8.0)
        for across in (21.8, 24.0, 26.4, 28.4):
            paper.limb([(way * across, 78), (way * (across * 0.9 + 2.4), 85)], 2.4)
        paper.limb([(way * 23, 75.5), (way * 19.8, 79)], 2.8)
        paper.oval((way * 25, 76.5), 4.8, 4.6)
    paper.limb([(0, 24), (0, 33)], 7.0)
    paper.oval((0, 14), 10.0, 12.5)
    for way in (-1, 1):
        paper.oval((way * 3.8, 11.5), 0.7, 0.7, "black")
    paper.thin([(0, 12.5), (-1.0, 16), (0.4, 16)])
    paper.thin([(-3, 19.4), (-1, 20.2), (1, 20.2), (3, 19.4)], width=0.45)


def _cover(paper: _Paper, points: Sequence[Point], wide: float) -> None:
    """The trunk's white middle."""
    import drawsvg

    flat = [number for point in points for number in paper.at(*point)]
    ink = round(wide * paper.scale - 0.5, 2)
    paper.drawing.append(
        drawsvg.Lines(*flat, close=True, fill="white", stroke="white", stroke_width=ink, stroke_linejoin="round")
    )


def _label(mark: BodyMark, letters: int, crown: Point, scale: float) -> _Label:
    """What is written at the end of a marker's line, and where the part is on paper."""
    name = tuple(folded(f"{mark.number}  {mark.site}", letters - 2, 3).split("\n"))
    device = tuple(folded(say(mark.works), letters, 3).split("\n")) if mark.works else ()
    if mark.part not in _POINTS:
        return _Label(mark, name, device, None)
    x, y = _POINTS[mark.part]
    way = {"left": 1, "right": -1}.get(mark.side, 0)
    if not way and mark.part in ("head", "trunk"):
        x, y = 0.0, 4.0 if mark.part == "head" else y
    x *= way or 1
    return _Label(mark, name, device, (crown[0] + x * scale, crown[1] + y * scale))


def _columns(labels: Iterable[_Label], middle: float) -> tuple[list[_Label], list[_Label]]:
    """Labels left and right of the picture; those of the middle line where there is more room."""
    columns: tuple[list[_Label], list[_Label]] = ([], [])
    free = []
    for label in labels:
        if label.at is None or abs(label.at[0] - middle) < 0.01:
            free.append(label)
        else:
            columns[int(label.at[0] > middle)].append(label)
    for label in free:
        min(columns, key=lambda column: sum(one.tall_mm for one in column)).append(label)
    for column in columns:
        column.sort(key=lambda one: one.at[1] if one.at is not None else 1e9)
    return columns


def _draw_column(
    drawing: drawsvg.Drawing, column: Sequence[_Label], way: int, taken: list[Point], size_mm: tuple[float, float]
) -> None:
    """Labels of one side, each with its line to the marker at the part."""
    import drawsvg

    width, height = size_mm
    column = _shortened(column, height - _HEAD_MM)
    for label, top in zip(column, _tops(column, height), strict=True):
        edge = 0.0 if way < 0 else width
        anchor = "start" if way < 0 else "end"
        for row, words in enumerate((*label.name, *label.device)):
            at = (edge, top + _LINE_MM * (row + 0.78))
            _words(drawing, words, at, anchor=anchor, bold=row < len(label.name))
        if label.at is None:
            continue
        start = (edge - way * (len(label.name[0]) * _BOLD_MM + 1.5), top + _LINE_MM * 0.5)
        centre = _free(label.at, way, taken)
        taken.append(centre)
        for a, b in ((start, centre), (centre, label.at)):
            drawing.append(drawsvg.Line(*_rounded(*a, *b), stroke="black", stroke_width=0.3))
        drawing.append(drawsvg.Circle(*_rounded(*label.at), 0.7, fill="black"))
        drawing.append(drawsvg.Circle(*_rounded(*centre), _MARK_MM, fill="white", stroke="black", stroke_width=0.6))
        number = (centre[0], centre[1] + 1.4)
        _words(drawing, str(label.mark.number), number, anchor="middle", bold=True)


def _shortened(column: Sequence[_Label], room_mm: float) -> Sequence[_Label]:
    """Where the column is full: the part's name alone, then on one line; what it works stands in the table."""
    for rows in (None, 2, 1):
        cut = column if rows is None else [replace(one, name=_ends(one.name, rows), device=()) for one in column]
        if sum(label.tall_mm + _GAP_MM for label in cut) <= room_mm:
            return cut
    return cut


def _ends(rows: tuple[str, ...], most: int) -> tuple[str, ...]:
    """A name's first and last rows: what tells it from its neighbours is often at its end."""
    if len(rows) <= most:
        return rows
    return (f"{rows[0]} …",) if most == 1 else (*rows[: most - 1], f"… {rows[-1]}")


def _tops(column: Sequence[_Label], height: float) -> list[float]:
    """Upper edge of each label: beside its part where there is room, otherwise below the one before it."""
    tops: list[float] = []
    floor = _HEAD_MM
    for label in column:
        wanted = label.at[1] - _LINE_MM / 2 if label.at is not None else floor
        tops.append(max(floor, wanted))
        floor = tops[-1] + label.tall_mm + _GAP_MM
    ceiling = height
    for place in range(len(column) - 1, -1, -1):
        tops[place] = min(tops[place], ceiling - column[place].tall_mm)
        ceiling = tops[place] - _GAP_MM
    return tops


def _free(at: Point, way: int, taken: Sequence[Point]) -> Point:
    """Where a marker has room: at its part, or as near to it as can be, towards its label first."""
    x, y = at
    for half_mm in range(60):
        for across, down in ((way, 0), (way, 1), (0, 1), (way, -1), (0, -1)):
            spot = (x + across * half_mm / 2, y + down * half_mm / 2)
            if all(math.dist(spot, other) >= 2 * _MARK_MM + 0.4 for other in taken):
                return spot
    return at


def _words(drawing: drawsvg.Drawing, text: str, at: Point, anchor: str = "start", bold: bool = False) -> None:
    import drawsvg

    weight = {"font_weight": "bold"} if bold else {}
    drawing.append(
        drawsvg.Text(text, _TYPE_MM, *_rounded(*at), text_anchor=anchor, font_family=FONT, fill="black", **weight)
    )


def _rounded(*numbers: float) -> tuple[float, ...]:
    return tuple(round(number, 2) for number in numbers)
