"""The page of a mount as a technical drawing: two views to scale with numbered parts and distances, and what helps to read them.

Black on white; only the sign of the player is grey. Words stand in the list of parts, in the drawing only numbers: none lies on what
is drawn. Line kinds: `stickwright.report.mount_paper`; hidden edges: `stickwright.report.mount_solids`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.model.mounting import SiteMount
from stickwright.model.room import Room
from stickwright.report.mount_distances import mount_alt
from stickwright.report.mount_insets import (
    CLOCK_MM,
    SMALL_MM,
    clock,
    device,
    device_frame,
    list_height,
    overview,
    parts_list,
    place,
)
from stickwright.report.mount_margin import FOOT_MM, foot, margin_mm
from stickwright.report.mount_numbers import Part, parts_of, worth_naming
from stickwright.report.mount_paper import PaperFrame, Pen
from stickwright.report.mount_shapes import DrawnBody, mount_shapes, room_shapes, tilted_shapes
from stickwright.report.mount_solids import ABOVE, RIGHT, Eye, pieces_of
from stickwright.report.mount_view import Scenery, View, balloons, drawn_view, front_end, line_ends, renumbered
from stickwright.report.mount_views import DimensionLine, Way, dimension_lines

__all__ = ["PAGE_MM", "mount_drawing"]

Spot = tuple[float, float]
PAGE_MM = (184.0, 248.0)
_EYES: dict[Way, Eye] = {"above": ABOVE, "right": RIGHT}
_SCALES = (1, 2, 5, 10, 20, 50)
_COLUMNS_MM, _GAP_MM = (50.0, 54.0, 58.0, 62.0, 66.0), 3.0
_TITLE_MM, _RING_MM, _PAD_MM = 5.5, 14.0, 3.5
_BESIDE_M, _REACH_M, _MORE_M, _PLACE_MM = 0.10, 0.10, 0.12, 42.0
_DEVICE_MM, _CLOCK_MM, _SLOT_MM, _LEAST_MM = 38.0, 29.0, 7.6, 40.0
_WIDE_MM = (62.0, PAGE_MM[0] - 70.0)
"""Columns of the list of parts below the views."""


def mount_drawing(
    mount: SiteMount, room: Room, base_m: tuple[float, float, float] | None = None, size_mm: tuple[float, float] = PAGE_MM,
) -> str:  # fmt: skip
    """The page of a mount: from above and from the player's right to one scale, the list of parts, and insets.

    Parameters
    ----------
    mount : SiteMount
        Where the stick goes and what holds it; without a choice only its place.
    room : Room
        What there is about it.
    base_m : tuple of float, optional
        Length, width, height of the stick's base.
    size_mm : tuple of float
        Paper width and height.

    Returns
    -------
    str
        SVG in millimetre, its writing of 8.8 points; printed at its own size it is to the scales written on it.
    """
    import drawsvg

    width, height = size_mm
    drawing = drawsvg.Drawing(width, height, origin=(0, 0))
    drawing.set_render_size(f"{width}mm", f"{height}mm")
    drawing.append_title(mount_alt(mount, room))
    pen = Pen(drawing)
    contact = mount.pose.contact_m if mount.pose is not None else None
    around, held = room_shapes(room, mount.site, contact), mount_shapes(mount, room, base_m)
    leaning = tuple(one for one in tilted_shapes(room))
    scene, parts = _scenery(mount, room, around, leaning, held)
    plan = _laid_out(scene, parts, size_mm)
    views = [_view(pen, plan, scene, parts, way) for way in ("above", "right")]
    parts = renumbered(parts, views)
    for view in views:
        balloons(pen, view)
    _insets(pen, plan, scene, parts, around, size_mm)
    foot(pen, height - FOOT_MM + 2.0, width, plan.one_to, leaning[0].tilt_rad if leaning else None)
    return str(drawing.as_svg())


def _scenery(
    mount: SiteMount, room: Room, around: Sequence[DrawnBody], leaning: Sequence[DrawnBody], held: tuple[DrawnBody, ...]
) -> tuple[Scenery, tuple[Part, ...]]:  # fmt: skip
    choice = mount.choice
    names = () if choice is None else (choice.on, choice.arm.clamp if choice.arm is not None else choice.on)
    used = {one.landmark for one in (choice.dimensions if choice else ())}
    solid = [one for one in around if one.layer in ("TUBES", "EDGES", "SURFACES")]
    holders = tuple(one for one in solid if one.typed in names and one.role != "floor")
    others = [one for one in solid if one not in holders and one.role != "floor" and worth_naming(one, mount)]
    others += [one for one in (*around, *leaning) if one.layer == "KEEP_OUT"]
    others += [one for one in around if one.role == "back"]
    others += [one for one in around if one.layer == "LANDMARKS" and one.typed in used]
    scene = Scenery(mount, room, held, holders, tuple(others))
    return scene, parts_of(mount, room, [*holders, *others], held)


# --- what fits where ----------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Layout:
    one_to: int
    frames: dict[Way, PaperFrame]
    lines: dict[Way, list[DimensionLine]]
    list_below: bool
    column_mm: float
    along: Way


def _laid_out(scene: Scenery, parts: Sequence[Part], size_mm: Spot) -> _Layout:
    """The largest scale at which both views fit one above the other, with the list of parts beside them, or else below."""
    lines: dict[Way, list[DimensionLine]] = {
        way: dimension_lines(scene.mount, scene.room, way) for way in ("above", "right")
    }
    beside = size_mm[1] - FOOT_MM
    for one_to in _SCALES:
        tight = {way: _window(scene, way, lines[way], one_to) for way in _EYES}
        numbers = len(_in_sight(scene, parts, tight))
        windows = {way: _roomy(window, one_to, numbers) for way, window in tight.items()}
        last = one_to == _SCALES[-1]
        columns = [one for one in _COLUMNS_MM if _fits(windows, lines, one_to, size_mm[0] - one - _GAP_MM, beside)]
        if not columns and not last:
            continue
        told = []
        for column in columns or _COLUMNS_MM[:1]:
            wide = size_mm[0] - column - _GAP_MM
            wider = _wider(scene, windows, lines, one_to, wide, beside)
            shown = _in_sight(scene, parts, wider)
            short = max(0.0, list_height(shown, _narrow(column)) + _others_height(scene, column) - beside)
            told.append((round(short, 3), column, wider))
        short, column, wider = min(told, key=lambda one: one[:2])
        wide = size_mm[0] - column - _GAP_MM
        if short <= _others_height(scene, column):
            frames = _frames(wider, lines, one_to, wide, beside)
            return _Layout(one_to, frames, lines, False, column, _best_way(scene))
        high = beside - list_height(shown, _WIDE_MM) - 4.0
        if last or _fits(windows, lines, one_to, wide, high):
            wider = _wider(scene, windows, lines, one_to, wide, high)
            frames = _frames(wider, lines, one_to, wide, high)
            return _Layout(one_to, frames, lines, True, column, _best_way(scene))
    raise AssertionError("the smallest scale is always taken")


def _narrow(column_mm: float) -> tuple[float, float]:
    """Columns of the list of parts beside the views."""
    return column_mm - 6.0, 0.0


def _others_height(scene: Scenery, column_mm: float) -> float:
    """Room that the insets below the list want at least."""
    told = device_frame(scene, column_mm, _DEVICE_MM)
    return 5.0 + SMALL_MM + 3.0 + (told[0].size[1] + 12.0 if told is not None else 0.0)


def _in_sight(scene: Scenery, parts: Sequence[Part], windows: dict[Way, Window]) -> list[Part]:
    """The parts that will have a number: of neighbours only those that a window shows."""
    return [
        part
        for part in parts
        if part.mark
        or any(one in scene.held or one in scene.holders or _seen_in(scene, one, windows) for one in part.bodies)
    ]


def _seen_in(scene: Scenery, body: DrawnBody, windows: dict[Way, Window]) -> bool:
    for way, (low, high) in windows.items():
        least, most = _box(_spots([body], _EYES[way]))
        if _shows(scene, body, way) and all(a < d and c < b for a, b, c, d in zip(low, high, least, most, strict=True)):
            return True
    return False


def _shows(scene: Scenery, body: DrawnBody, way: Way) -> bool:
    """Whether a view draws a neighbour: the seat tilted is drawn from the right alone."""
    return not body.tilt_rad if way == "above" else _beside(scene, body)


def _best_way(scene: Scenery) -> Way:
    """The view that shows most of the length along the tube."""
    ends = line_ends(scene)
    if ends is None:
        return "above"
    across, along, up = (b - a for a, b in zip(*ends, strict=True))
    return "above" if across**2 + along**2 >= along**2 + up**2 else "right"


Window = tuple[Spot, Spot]


def _around_view(lines: Sequence[DimensionLine]) -> tuple[float, float, float, float]:
    """Margins of a view: left, top, right, bottom."""
    upright = sum(line.upright for line in lines)
    return margin_mm(upright), _TITLE_MM + _RING_MM, _RING_MM, margin_mm(len(lines) - upright)


def _paper(window: Window, lines: Sequence[DimensionLine], one_to: int) -> Spot:
    (left, bottom), (right, top) = window
    margins = _around_view(lines)
    return (
        (right - left) * 1000 / one_to + margins[0] + margins[2],
        (top - bottom) * 1000 / one_to + margins[1] + margins[3],
    )


def _fits(
    windows: dict[Way, Window], lines: dict[Way, list[DimensionLine]], one_to: int, wide: float, high: float
) -> bool:
    sizes = [_paper(window, lines[way], one_to) for way, window in windows.items()]
    return max(size[0] for size in sizes) <= wide and sum(size[1] for size in sizes) <= high


def _spots(bodies: Iterable[DrawnBody], eye: Eye) -> list[Spot]:
    bodies = list(bodies)
    points = [piece.corners for piece in pieces_of(bodies)] + [np.asarray(body.points) for body in bodies]
    return [(float(x), float(y)) for x, y in eye.flat(np.concatenate(points))] if points else []


def _box(spots: Sequence[Spot]) -> Window:
    columns, rows = zip(*spots, strict=True)
    return (min(columns), min(rows)), (max(columns), max(rows))


def _window(scene: Scenery, way: Way, lines: Sequence[DimensionLine], one_to: int) -> Window:
    """What must be seen: the mount, the device, the ends of all distances, the tube from its end to the clamp with room beside it."""
    eye, pad = _EYES[way], _PAD_MM * one_to / 1000
    spots = _spots(scene.held, eye) + [spot for line in lines for spot in (line.start, line.end)]
    spots += _spots((one for one in scene.others if one.layer == "LANDMARKS"), eye)
    if scene.mount.pose is not None and way == "above":
        spots.append(front_end(scene, one_to))
    (left, bottom), (right, top) = _box(spots)
    out = (left - pad, bottom - pad), (right + pad, top + pad)
    ends = line_ends(scene)
    if ends is not None:
        first, last = (np.asarray(spot) for spot in eye.flat(ends))
        far = float(np.hypot(*(last - first)))
        room = 14.0 * one_to / 1000 if way == _best_way(scene) and far > 0.02 else pad
        aside = np.array([last[1] - first[1], first[0] - last[0]]) / far * room if far > 0.001 else np.zeros(2)
        told = (
            [first, first + aside, last + aside] if _away(scene, eye, aside) else [first, first - aside, last - aside]
        )
        low, high = _box([(float(x), float(y)) for x, y in told])
        out = _both(out, ((low[0] - pad, low[1] - pad), (high[0] + pad, high[1] + pad)))
    return out


def _roomy(window: Window, one_to: int, numbers: int) -> Window:
    """The window with room for balloons at two of its sides."""
    (left, bottom), (right, top) = window
    wide, high = (right - left) * 1000 / one_to, (top - bottom) * 1000 / one_to
    more = max(_LEAST_MM - wide, (_SLOT_MM * (numbers - 2) - max(high, _LEAST_MM)) - wide, 0.0) * one_to / 2000
    taller = max(0.0, _LEAST_MM - high) * one_to / 2000
    return (left - more, bottom - taller), (right + more, top + taller)


def _away(scene: Scenery, eye: Eye, aside: np.ndarray) -> bool:
    """Whether a way aside from the tube leads away from the device."""
    ends = line_ends(scene)
    if ends is None or scene.mount.pose is None:
        return True
    to = eye.flat([scene.mount.pose.base_m])[0] - eye.flat([ends[1]])[0]
    return float(to @ aside) <= 0


def _both(one: Window, other: Window) -> Window:
    return (
        (min(one[0][0], other[0][0]), min(one[0][1], other[0][1])),
        (max(one[1][0], other[1][0]), max(one[1][1], other[1][1])),
    )


def _wider(
    scene: Scenery, windows: dict[Way, Window], lines: dict[Way, list[DimensionLine]], one_to: int, wide: float, high: float
) -> dict[Way, Window]:  # fmt: skip
    """The windows with more of what holds the mount and of what must stay free about it, as far as the scale allows."""
    order = [*scene.holders, *(one for one in scene.others if one.layer in ("KEEP_OUT", "TUBES", "EDGES", "SURFACES"))]
    out = dict(windows)
    for share in (1.0, 0.5, 0.25):
        for body in order:
            for way, eye in _EYES.items():
                if way == "right" and not _beside(scene, body):
                    continue
                low, high_spot = _box(_spots([body], eye))
                (left, bottom), (right, top) = windows[way]
                reach = _MORE_M * 3 * share if body in scene.holders else _REACH_M * share
                if (
                    low[0] > right + reach
                    or high_spot[0] < left - reach
                    or low[1] > top + reach
                    or high_spot[1] < bottom - reach
                ):
                    continue
                pad = _PAD_MM * one_to / 1000
                more = (
                    (max(low[0] - pad, left - reach), max(low[1] - pad, bottom - reach)),
                    (min(high_spot[0] + pad, right + reach), min(high_spot[1] + pad, top + reach)),
                )
                told = out | {way: _both(out[way], more)}
                if _fits(told, lines, one_to, wide, high):
                    out = told
    return out


def _beside(scene: Scenery, body: DrawnBody) -> bool:
    """From the side only what lies beside the mount is shown: what is across the chair would hide all."""
    mount = scene.mount
    if mount.pose is None or body in scene.holders or body.layer == "LANDMARKS":
        return True
    arm = mount.choice.arm if mount.choice is not None else None
    across = [point[0] for point in (mount.pose.base_m, *(arm.points_m if arm is not None else ()))]
    sides = [point[0] for point in body.points]
    return min(sides) - _BESIDE_M <= max(across) and min(across) <= max(sides) + _BESIDE_M


def _frames(
    windows: dict[Way, Window], lines: dict[Way, list[DimensionLine]], one_to: int, wide: float, high: float
) -> dict[Way, PaperFrame]:  # fmt: skip
    """The view from above at the top, the view from the right below it; what room is left lies about them."""
    sizes = {way: _paper(windows[way], lines[way], one_to) for way in _EYES}
    spare = max(0.0, high - sum(size[1] for size in sizes.values()))
    top, out = 0.0, {}
    for way in _EYES:
        margins = _around_view(lines[way])
        left = margins[0] + max(0.0, wide - sizes[way][0]) / 2
        out[way] = PaperFrame(_EYES[way], (left, top + margins[1]), *windows[way], one_to)
        top += sizes[way][1] + spare / 2
    return out


# --- what is drawn ------------------------------------------------------------------------------------------------------------


def _view(pen: Pen, plan: _Layout, scene: Scenery, parts: Sequence[Part], way: Way) -> View:
    frame = plan.frames[way]
    seen = [one for one in scene.others if _shows(scene, one, way)]
    title = say(message(MountDrawings.view, view=way, one_to=plan.one_to))
    pen.words(title, (0.0, frame.corner[1] - _RING_MM - 1.5), bold=True, kind="title")
    shown = Scenery(scene.mount, scene.room, scene.held, scene.holders, tuple(seen))
    return drawn_view(pen, frame, shown, parts, plan.lines[way], along=plan.along == way)


def _insets(
    pen: Pen, plan: _Layout, scene: Scenery, parts: Sequence[Part], around: Sequence[DrawnBody], size_mm: Spot
) -> None:  # fmt: skip
    """In the column at the right, from above, each where it still fits: list, clock, device, place, overview."""
    column = plan.column_mm
    left, bottom, top = size_mm[0] - column, size_mm[1] - FOOT_MM, 0.0
    if plan.list_below:
        bottom -= list_height(parts, _WIDE_MM) + 2.0
        parts_list(pen, (0.0, bottom + 2.0), parts, _WIDE_MM)
    else:
        parts_list(pen, (left, 0.0), parts, _narrow(column))
        top = list_height(parts, _narrow(column)) + 5.0
    window = (plan.frames["right"].low, plan.frames["right"].high)
    drawn = device_frame(scene, column, _DEVICE_MM)
    high = drawn[0].size[1] + 12.0 if drawn is not None else 0.0
    if bottom - top >= CLOCK_MM + high + _PLACE_MM:
        if clock(pen, (left, top), column, parts):
            top += CLOCK_MM
        top += device(pen, (left, top), column, scene, _DEVICE_MM) + 3.0
        top += place(pen, (left, top), (column, bottom - top), scene, around, window) + 3.0
        if bottom - top > _PLACE_MM:
            overview(pen, (left, top), (column, bottom - top), scene, around)
        return
    if bottom - top >= SMALL_MM:  # the clock and the place share a row
        told = clock(pen, (left, top), _CLOCK_MM, parts, small=True)
        beside = _CLOCK_MM if told else 0.0
        place(pen, (left + beside, top), (column - beside, SMALL_MM), scene, around, window)
        top += SMALL_MM + 3.0
    device(pen, (left, top), column, scene, min(_DEVICE_MM, bottom - top - 8.0))
