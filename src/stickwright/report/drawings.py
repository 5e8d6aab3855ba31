"""What the set-up looks like: side view and view from above, to scale, with the sizes written on them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.setup_drawings import Label, SetupDrawings
from stickwright.model.fit import Fit
from stickwright.model.turns import rotated
from stickwright.report.ink import FONT
from stickwright.report.printed import base_turned, folded, in_unit, plain
from stickwright.report.tell import tell

if TYPE_CHECKING:
    import drawsvg

__all__ = ["setup_alt", "setup_drawing"]

Point = tuple[float, float]

_SCALES = (1.0, 1 / 1.5, 0.5, 0.4, 1 / 3, 0.25, 0.2, 0.1)
_TYPE_MM = 3.9  # 11 points: legible where the page is read standing
_SMALL_MM = 3.2  # 9 points
_THICK_MM, _THIN_MM = 0.6, 0.25
_NO_BASE_M = (0.060, 0.060, 0.030)  # drawn dashed when nobody measured the base
_LETTER_MM, _LINE_MM = 2.3, 5.0  # width of a letter and height of a line of that type, on average
_LEVEL_RAD = 1e-9  # less than that is level
_LEAN_ROOM_MM = 27.0  # beside the side view, for the dimension lines


_Before = Literal["crosswise", "side_view", "nothing"]


def _label(label: Label) -> str:
    return tell(SetupDrawings.label, label=label)


@dataclass(frozen=True)
class _Pose:
    """Where a point of the stick lies on paper: along the base, above the base, tilted, scaled."""

    near_corner: Point
    tilt_rad: float
    scale: float

    def at(self, along_mm: float, above_mm: float) -> Point:
        """Paper point of one that lies so far forward of the base's near edge and so far above its underside."""
        x, y = rotated(along_mm, above_mm, self.tilt_rad)
        return self.near_corner[0] + x * self.scale, self.near_corner[1] - y * self.scale


def setup_alt(fit: Fit, turn_rad: float = 0.0, *, side_only: bool = False) -> str:
    """The drawing in one sentence.

    Parameters
    ----------
    fit : Fit
        The set-up drawn.
    turn_rad : float, default 0.0
        Of the base, as for `setup_drawing`.
    side_only : bool, default False
        Without the view from above.
    """
    turned = base_turned(turn_rad) or None
    base = _base_words(fit)
    if fit.kind == "touch":
        return tell(SetupDrawings.touch_alt, device=fit.named, base=base, turned=turned, side_only=side_only)
    return tell(
        SetupDrawings.stick_alt,
        device=fit.named,
        base=base,
        tilt_rad=fit.tilt_rad if abs(fit.tilt_rad) > _LEVEL_RAD else 0.0,
        contact_height_m=fit.contact_height_m,
        travel_m=fit.travel_m,
        turned=turned,
        side_only=side_only,
    )


def _base_words(fit: Fit) -> Message | None:
    if fit.base_m is None:
        return None
    length_m, width_m, height_m = fit.base_m
    return message(SetupDrawings.base, length_m=length_m, width_m=width_m, height_m=height_m, crosswise=fit.crosswise)


def setup_drawing(
    fit: Fit, size_mm: tuple[float, float] = (184.0, 78.0), *, turn_rad: float = 0.0, side_only: bool = False
) -> str:
    """Side view and view from above of one set-up, to scale.

    The pivot is drawn at the top of the base, since its depth inside is not part of a bench reading; toppers
    are drawn by form, not by size. Both are said on the drawing.

    Parameters
    ----------
    fit : Fit
        Stick, topper, extension and tilt.
    size_mm : tuple of float
        Paper width and height.
    turn_rad : float, default 0.0
        How far the base is turned from straight ahead, anticlockwise seen from above: drawn so in the view from above; the side
        view shows the base before that.
    side_only : bool, default False
        Without the view from above, for a narrow place.

    Returns
    -------
    str
        SVG in millimetre; printed at its own size it is to the scale written on it.
    """
    import drawsvg

    width, height = size_mm
    drawing = drawsvg.Drawing(width, height, origin=(0, 0))
    drawing.set_render_size(f"{width}mm", f"{height}mm")
    drawing.append_title(setup_alt(fit, turn_rad, side_only=side_only))
    turned = base_turned(turn_rad)
    before: _Before = "crosswise" if fit.crosswise else "side_view" if side_only else "nothing"
    then = message(SetupDrawings.base_turned, turned=turned, before=before) if turned else None
    notes = _notes(fit, int(width / _LETTER_MM), then)
    foot = 8.0 + _LINE_MM * (notes.count("\n") + 1)
    side_room = (
        width * (1.0 if side_only else 0.56) - _LEAN_ROOM_MM - (6.0 if side_only else 0.0),
        height - 14.0 - foot,
    )
    above_room = (width * 0.44 - 46.0, height - 21.5 - foot)
    scale = _scale(fit, side_room, None if side_only else above_room, turn_rad)
    title = _label("side_view_before_turning" if turned else "side_view")
    _side_view(drawing, fit, scale, (6.0, height - 3.0 - foot), side_room, title)
    if not side_only:
        _above_view(drawing, fit, scale, (width * 0.79, 18.0 + above_room[1] / 2), turn_rad)
    for row, words in enumerate(reversed(notes.split("\n"))):
        _words(drawing, words, (width / 2, height - 6.0 - _LINE_MM * row), anchor="middle")
    said = tell(SetupDrawings.scale, shrink_factor=1 / scale, side_only=side_only)
    _words(drawing, said, (width / 2, height - 1.2), size=_SMALL_MM, anchor="middle")
    return str(drawing.as_svg())


def _base_mm(fit: Fit) -> tuple[float, float, float]:
    length, width, height = fit.stands_m or _NO_BASE_M
    return in_unit(length, "mm"), in_unit(width, "mm"), in_unit(height, "mm")


def _lever_mm(fit: Fit) -> float:
    return 0.0 if fit.kind == "touch" else in_unit(fit.contact_height_m, "mm")


def _spread_mm(length: float, width: float, turn_rad: float) -> Point:
    """How wide and how deep a turned base is on paper, before scaling."""
    cos, sin = abs(math.cos(turn_rad)), abs(math.sin(turn_rad))
    return width * cos + length * sin, width * sin + length * cos


def _scale(fit: Fit, side_room: Point, above_room: Point | None, turn_rad: float = 0.0) -> float:
    """The largest usual scale at which the views drawn have room."""
    length, width, height = _base_mm(fit)
    lever = _lever_mm(fit)
    cos, sin = math.cos(abs(fit.tilt_rad)), math.sin(abs(fit.tilt_rad))
    wide = max(length * cos + (height + lever) * sin, 2 * in_unit(fit.travel_m, "mm"))
    tall = (height + lever) * cos + length * sin
    across, deep = _spread_mm(length, width, turn_rad)
    for scale in _SCALES:
        fits_side = wide * scale <= side_room[0] and tall * scale <= side_room[1]
        fits_above = above_room is None or (across * scale <= above_room[0] and deep * scale <= above_room[1])
        if fits_side and fits_above:
            return scale
    return _SCALES[-1] / 2


def _top_mm(fit: Fit) -> Point:
    """Height of the base's top at the near and at the far edge: unequal on a base with a slope of its own."""
    length, _, height = _base_mm(fit)
    own_rad = fit.tilt_rad - fit.built_tilt_rad
    low = height - min(0.85 * height, length * math.tan(abs(own_rad)))
    return (low, height) if own_rad > 0 else (height, low)


def _side_view(drawing: drawsvg.Drawing, fit: Fit, scale: float, floor: Point, room: Point, title: str) -> None:
    """Seen from the player's right: the player on the left, forward to the right."""
    length, _, height = _base_mm(fit)
    near, far = _top_mm(fit)
    built = fit.built_tilt_rad
    lean = (height + _lever_mm(fit)) * math.sin(max(0.0, fit.tilt_rad)) * scale
    raised = length * math.sin(max(0.0, -built)) * scale
    spare = max(0.0, room[0] - length * scale - lean)
    pose = _Pose((floor[0] + 20.0 + lean + 0.15 * spare, floor[1] - raised), built, scale)
    _line(drawing, (floor[0], floor[1]), (floor[0] + room[0] + 24.0, floor[1]), _THICK_MM)
    if abs(built) > _LEVEL_RAD:
        foot = (pose.at(length, 0)[0], floor[1]) if built > 0 else (pose.at(0, 0)[0], floor[1])
        _area(drawing, [pose.at(0, 0), pose.at(length, 0), foot], fill="#d9d9d9", width=_THIN_MM)
    outline = [pose.at(0, 0), pose.at(length, 0), pose.at(length, far), pose.at(0, near)]
    _area(drawing, outline, fill="white", width=_THICK_MM, dashed=fit.base_m is None)
    pivot = pose.at(length / 2, (near + far) / 2)
    _lever(drawing, fit, _Pose(pivot, fit.tilt_rad, scale), length)
    if fit.base_m is not None and far > near:
        _dimension(drawing, pose.at(length, 0), pose.at(length, far), 3.5, plain(fit.base_m[2], "mm"))
    elif fit.base_m is not None:
        _dimension(drawing, pose.at(0, 0), pose.at(0, near), -3.5, plain(fit.base_m[2], "mm"))
    else:
        _words(drawing, _label("not_measured"), (outline[3][0] + 2.0, outline[3][1] + 6.0))
    _words(drawing, _label("player_side"), (floor[0], floor[1] + 4.6))
    _words(drawing, _label("forward"), (floor[0] + room[0] + 12.0, floor[1] + 4.6), anchor="end")
    end = floor[0] + room[0] + 24.0
    _arrow(drawing, (end - 11.0, floor[1] + 3.4), (end, floor[1] + 3.4), _THICK_MM)
    _words(drawing, title, (floor[0], 4.4), bold=True)


def _lever(drawing: drawsvg.Drawing, fit: Fit, pose: _Pose, base_mm: float) -> None:
    """Shaft, what is added on it, topper, travel and contact height, measured from the pivot; or a flat pad."""
    lever, travel = _lever_mm(fit), in_unit(fit.travel_m, "mm")
    pivot, contact = pose.at(0, 0), pose.at(0, lever)
    if fit.kind == "touch":
        _line(drawing, pose.at(-travel, 0), pose.at(travel, 0), 1.4)
        _words(drawing, _label("touch"), (pose.at(-travel, 0)[0], pivot[1] - 3.0))
        return
    angle = math.asin(min(1.0, travel / lever)) if lever else 0.0
    for lean in (-angle, angle):
        ghost = pose.at(lever * math.sin(lean), lever * math.cos(lean))
        _line(drawing, pivot, ghost, _THIN_MM, dashed=True)
    bare = min(lever, lever / fit.lever_ratio) if fit.lever_ratio > 0 else lever
    _line(drawing, pivot, pose.at(0, bare), 1.6)
    if lever > bare + 0.05:
        _line(drawing, pose.at(0, bare), contact, 2.6)
    _topper(drawing, fit, pose, (0, lever))
    drawing.append(_circle(pivot, 0.9, "black"))
    _dimension(drawing, pivot, contact, -(base_mm / 2 * pose.scale + 3.5), plain(fit.contact_height_m, "mm"))


def _notes(fit: Fit, letters: int, turned: Message | None) -> str:
    """What is written below the stick, in as many lines as it takes; `turned` says how its base is turned, or nothing."""
    notes: list[Text] = [message(SetupDrawings.travel, travel_m=fit.travel_m)] if fit.kind == "lever" else []
    if fit.topper or fit.topper_form:
        notes.append(str(fit.topper or fit.topper_form))
    if fit.extension:
        notes.append(message(SetupDrawings.extension, extension=Name(fit.extension)))
    if abs(fit.built_tilt_rad) > _LEVEL_RAD:
        edge: Literal["far", "near"] = "far" if fit.built_tilt_rad > 0 else "near"
        notes.append(message(SetupDrawings.edge_raised, edge=edge, tilt_rad=abs(fit.built_tilt_rad)))
    elif abs(fit.tilt_rad) > _LEVEL_RAD:
        notes.append(message(SetupDrawings.top_slopes, tilt_rad=abs(fit.tilt_rad)))
    if fit.crosswise:
        notes.append(message(SetupDrawings.crosswise))
    if turned is not None:
        notes.append(turned)
    return folded(tell(SetupDrawings.notes, notes=tuple(notes)), letters)


def _topper(drawing: drawsvg.Drawing, fit: Fit, pose: _Pose, at_mm: Point) -> None:
    """A sign for the topper's form; a small cap when the stick is bare."""
    along, above = at_mm
    contact = pose.at(along, above)
    one = 1.0 / pose.scale
    if fit.topper_form in ("ball", "foam"):
        radius = 4.0 if fit.topper_form == "ball" else 5.0
        drawing.append(_circle(pose.at(along, above - radius * one), radius, "white", _THICK_MM))
        return
    half = {"bar": 9.0, "peg": 1.2, "dish": 5.5, "cup": 5.5}.get(fit.topper_form, 3.5)
    deep = {"bar": 2.0, "peg": 6.0, "cup": 4.0}.get(fit.topper_form, 1.6)
    outline = [(-half, 0.0), (-half * 0.8, -deep), (half * 0.8, -deep), (half, 0.0)]
    if fit.topper_form in ("dish", "cup"):
        outline += [(half * 0.5, -deep * 0.5), (-half * 0.5, -deep * 0.5)]
    _area(drawing, [pose.at(along + x * one, above + y * one) for x, y in outline], fill="white", width=_THICK_MM)
    drawing.append(_circle(contact, 0.5, "black"))


def _above_view(drawing: drawsvg.Drawing, fit: Fit, scale: float, centre: Point, turn_rad: float) -> None:
    """Seen from above, as the player sees it: the player's forward is up the page, the base turned as it is to stand."""
    length, width, _ = _base_mm(fit)
    x, y = centre
    across, deep = _spread_mm(length, width, turn_rad)
    half_w, half_l = across * scale / 2, deep * scale / 2

    def at(right_mm: float, forward_mm: float) -> Point:
        """Paper point of one of the base's own, from the lever."""
        right, forward = rotated(right_mm, forward_mm, turn_rad)
        return x + scale * right, y - scale * forward

    corners = [
        at(side * width / 2, end * length / 2) for side, end in ((-1.0, 1.0), (1.0, 1.0), (1.0, -1.0), (-1.0, -1.0))
    ]
    _area(drawing, corners, fill="white", width=_THICK_MM, dashed=fit.base_m is None)
    if fit.crosswise:
        _head(drawing, centre, at(-width / 2, 0.0), 3.2)
    elif base_turned(turn_rad):
        _head(drawing, centre, at(0.0, length / 2), 3.2)
    radius = max(0.8, in_unit(fit.travel_m, "mm") * scale)
    drawing.append(_circle(centre, radius, "none", _THIN_MM, dashed=True))
    drawing.append(_circle(centre, min(1.6, radius), "black"))
    _arrow(drawing, (x, y - half_l - 1.5), (x, y - half_l - 7.2), 1.2)
    _words(drawing, _label("forward_arrow"), (x, y - half_l - 8.6), anchor="middle", bold=True)
    _words(drawing, _label("right"), (x + half_w + 3.0, y + 1.3))
    _words(drawing, _label("left"), (x - half_w - 3.0, y + 1.3), anchor="end")
    _words(drawing, _label("back"), (x, y + half_l + 5.0), anchor="middle")
    title = tell(SetupDrawings.above_with_base, sides_m=fit.base_m[:2]) if fit.base_m else _label("above")
    _words(drawing, title, (x, 4.4), anchor="middle", bold=True)


def _line(drawing: drawsvg.Drawing, start: Point, end: Point, width: float, dashed: bool = False) -> None:
    import drawsvg

    more = {"stroke_dasharray": "1.2 1"} if dashed else {}
    drawing.append(drawsvg.Line(*_rounded(*start, *end), stroke="black", stroke_width=width, **more))


def _area(drawing: drawsvg.Drawing, points: list[Point], fill: str, width: float, dashed: bool = False) -> None:
    import drawsvg

    more = {"stroke_dasharray": "1.6 1.2"} if dashed else {}
    flat = _rounded(*(number for point in points for number in point))
    drawing.append(drawsvg.Lines(*flat, close=True, fill=fill, stroke="black", stroke_width=width, **more))


def _circle(at: Point, radius: float, fill: str, width: float = 0.0, dashed: bool = False) -> drawsvg.Circle:
    import drawsvg

    more = {"stroke_dasharray": "1 0.8"} if dashed else {}
    if width:
        more["stroke"] = "black"
    return drawsvg.Circle(*_rounded(*at, radius), fill=fill, stroke_width=width, **more)


def _arrow(drawing: drawsvg.Drawing, start: Point, end: Point, width: float) -> None:
    _line(drawing, start, end, width)
    _head(drawing, start, end, 2.2 + width)


def _head(drawing: drawsvg.Drawing, start: Point, end: Point, size: float) -> None:
    """A filled arrow head at `end`."""
    length = math.dist(start, end) or 1.0
    x, y = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    foot = (end[0] - x * size, end[1] - y * size)
    wing = size * 0.4
    points = [end, (foot[0] - y * wing, foot[1] + x * wing), (foot[0] + y * wing, foot[1] - x * wing)]
    _area(drawing, points, fill="black", width=0.1)


def _dimension(drawing: drawsvg.Drawing, start: Point, end: Point, offset: float, text: str) -> None:
    """A dimension line beside the stretch from `start` to `end`, to its left when `offset` is minus."""
    length = math.dist(start, end)
    if length < 0.5:
        return
    x, y = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    shift = (-y * offset, x * offset)
    a, b = (start[0] + shift[0], start[1] + shift[1]), (end[0] + shift[0], end[1] + shift[1])
    for near, far in ((start, a), (end, b)):
        _line(drawing, near, (far[0] + 0.2 * shift[0] / abs(offset), far[1] + 0.2 * shift[1] / abs(offset)), 0.15)
    _line(drawing, a, b, _THIN_MM)
    if length > 5.0:
        _head(drawing, a, b, 1.8)
        _head(drawing, b, a, 1.8)
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    aside, anchor = (-1.2, "end") if offset < 0 else (1.2, "start")
    _words(drawing, text, (middle[0] + aside, middle[1] + 1.3), anchor=anchor)


def _words(
    drawing: drawsvg.Drawing, text: str, at: Point, anchor: str = "start", bold: bool = False, size: float = _TYPE_MM
) -> None:
    import drawsvg

    weight = {"font_weight": "bold"} if bold else {}
    x, y = _rounded(*at)
    drawing.append(drawsvg.Text(text, size, x, y, text_anchor=anchor, font_family=FONT, fill="black", **weight))


def _rounded(*numbers: float) -> tuple[float, ...]:
    """Hundredths of a millimetre: what a printer can do, and the same text on every machine."""
    return tuple(round(number, 2) for number in numbers)
