"""A mount for a workshop's drawing program: view from above and side view as DXF, in millimetre, at its own size.

Written with ezdxf [ezdxf], an optional part: nothing else of the program needs it.
"""

from __future__ import annotations

import io
import itertools
import math
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from stickwright.catalogue import say
from stickwright.codes.message import Name, message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.codes.mount_poses import MountPoses
from stickwright.codes.mount_problems import MountProblems
from stickwright.errors import BadInput, Problem
from stickwright.model.mounting import SiteMount
from stickwright.model.plan import Plan
from stickwright.model.room import Edge, Room, Tube
from stickwright.report.mount_distances import clamp_place
from stickwright.report.mount_shapes import DrawnBody, base_of, mount_shapes, plain_words, room_shapes
from stickwright.report.mount_views import Spot, Way, bounds, dimension_lines, flat, hull
from stickwright.report.printed import in_unit

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts import Modelspace

__all__ = ["LAYERS", "all_dxf", "mount_dxf"]

LAYERS = (
    "BODY", "SEAT", "TUBES", "EDGES", "SURFACES", "KEEP_OUT", "LANDMARKS", "MOUNT", "STICK", "CABLE", "DIMENSIONS", "WORDS",
)  # fmt: skip
"""Each thing lies on the layer of what it is, so that it can be shown and hidden."""
_TEXT_MM, _APART_MM, _ROW_MM = 8.0, 220.0, 30.0
_UPRIGHT_MM = 0.5
_DASHED = ("KEEP_OUT", "CABLE")
_NAMED = ("TUBES", "EDGES", "SURFACES", "KEEP_OUT", "LANDMARKS", "MOUNT", "STICK")


def all_dxf(plan: Plan) -> dict[str, str]:
    """The file of every mount of a plan, by a name that can be a file name.

    Parameters
    ----------
    plan : Plan
        A finished plan.

    Returns
    -------
    dict
        Name without ending, DXF text.

    Raises
    ------
    BadInput
        Nothing is mounted in the plan, or the part of the program that writes DXF is not installed.
    """
    told = [(number, one) for number, one in enumerate(plan.mounts, start=1) if one.pose is not None]
    if plan.room is None or not told:
        raise BadInput(
            Problem(
                "--dxf",
                message(MountProblems.nothing_placed),
                message(MountProblems.room_and_fit),
                message(MountProblems.describe_room),
            )
        )
    room = plan.room
    return {f"mount-{number}-{_slug(one.site)}": mount_dxf(one, room, base_of(plan, one)) for number, one in told}


def _slug(name: str) -> str:
    return (
        "-".join("".join(letter if letter.isalnum() else " " for letter in name.casefold()).split())[:40] or "unnamed"
    )


def mount_dxf(mount: SiteMount, room: Room, base_m: tuple[float, float, float] | None = None) -> str:
    """One mount as DXF: the view from above, and to its right the view from the player's right.

    Parameters
    ----------
    mount : SiteMount
        Where the stick goes and what holds it.
    room : Room
        What there is about it.
    base_m : tuple of float, optional
        Length, width, height of the stick's base.

    Returns
    -------
    str
        DXF R2010 text, the same for equal input; 1 unit is 1 mm, and the distances are true dimensions.

    Raises
    ------
    BadInput
        The part of the program that writes DXF is not installed.
    """
    _wanted()
    with _fixed():
        drawing = _empty()
        space = drawing.modelspace()
        contact = mount.pose.contact_m if mount.pose is not None else None
        shapes = (*room_shapes(room, mount.site, contact), *mount_shapes(mount, room, base_m))
        left = 0.0
        views: tuple[Way, ...] = ("above", "right")
        for view in views:
            low, high = bounds(shapes, view)
            offset = (left - in_unit(low[0], "mm"), 0.0)
            for shape in shapes:
                _draw(space, shape, view, offset)
            lowest = _dimensions(space, mount, room, view, offset)
            foot = min(in_unit(low[1], "mm"), lowest) - 3 * _TEXT_MM
            shown = message(MountDrawings.view_of, device=Name(mount.device), site=Name(mount.site), view=view)
            _words(space, say(shown), (left, foot), "WORDS")
            place = clamp_place(mount, room)
            if place is not None and view == "above":
                clamped = plain_words(message(MountPoses.clamp, along=place))
                _words(space, clamped, (left, foot - 2 * _TEXT_MM), "WORDS")
            left += in_unit(high[0] - low[0], "mm") + _APART_MM
        out = io.StringIO()
        drawing.write(out)
    return out.getvalue()


def _wanted() -> None:
    try:
        import ezdxf  # noqa: F401
    except ImportError as missing:
        raise BadInput(
            Problem(
                "--dxf",
                message(MountProblems.no_writer, package=Name("ezdxf")),
                message(MountProblems.writer),
                message(MountProblems.install, command=Name('pip install "stickwright[cad]"')),
            )
        ) from missing


def _empty() -> Drawing:
    import ezdxf

    drawing = ezdxf.new("R2010", setup=True, units=4)  # 4: millimetre
    for name in LAYERS:
        drawing.layers.add(name, color=7, linetype="DASHED" if name in _DASHED else "Continuous")
    style = drawing.dimstyles.duplicate_entry("EZDXF", "STICKWRIGHT")
    for key, value in {
        "dimtxt": _TEXT_MM, "dimasz": _TEXT_MM * 0.7, "dimexe": 4.0, "dimexo": 3.0, "dimgap": 3.0, "dimscale": 1.0,
        "dimlfac": 1.0, "dimdec": 0, "dimtad": 1, "dimblk": "", "dimtsz": 0.0, "dimrnd": 0.0,
    }.items():  # fmt: skip
        style.dxf.set(key, value)
    return drawing


@contextmanager
def _fixed() -> Iterator[None]:
    """Neither the time of writing nor the machine's own numbers go into the file."""
    import ezdxf

    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before


def _mm(spot: Spot, offset: Spot) -> Spot:
    """To the thousandth of a millimetre, so that equal rooms give equal files."""
    return round(in_unit(spot[0], "mm") + offset[0], 3), round(in_unit(spot[1], "mm") + offset[1], 3)


def _draw(space: Modelspace, shape: DrawnBody, view: Way, offset: Spot) -> None:
    on: dict[str, Any] = {"layer": shape.layer}
    spots = [_mm(flat(point, view), offset) for point in shape.points]
    if shape.form == "solid":
        outline = hull(spots)
        space.add_lwpolyline(outline, close=True, dxfattribs=on)
        if shape.layer == "KEEP_OUT" and len(outline) > 2:
            pattern = space.add_hatch(color=7, dxfattribs=on)
            pattern.set_pattern_fill("ANSI31", scale=5.0)
            pattern.paths.add_polyline_path(outline, is_closed=True)
    elif shape.form == "bar":
        _bar(space, spots[0], spots[1], in_unit(shape.thick_m, "mm") / 2, on)
    elif shape.form == "path":
        space.add_lwpolyline(spots, dxfattribs=on)
    else:
        space.add_point(spots[0], dxfattribs=on)
        space.add_circle(spots[0], 4.0, dxfattribs=on)
    if (
        shape.layer in _NAMED
        and shape.name
        and shape.role != "contact"
        and (shape.layer, shape.form) != ("MOUNT", "solid")
    ):
        columns, rows = [spot[0] for spot in spots], [spot[1] for spot in spots]
        noted = shape.note and shape.layer in ("TUBES", "EDGES")
        name = say(message(MountDrawings.with_note, name=shape.name, note=shape.note)) if noted else shape.name
        at = (
            (columns[0] + 6.0, rows[0] - 10.0)
            if shape.form == "dot"
            else ((min(columns) + max(columns)) / 2, max(rows) + 4.0)
        )
        _words(space, name, at, shape.layer)


def _bar(space: Modelspace, start: Spot, end: Spot, half: float, on: dict[str, Any]) -> None:
    """A round bar seen from its side: two lines with round ends; seen along itself a circle."""
    far = math.dist(start, end)
    if far < 0.5:
        space.add_circle(start, half, dxfattribs=on)
        return
    x, y = -(end[1] - start[1]) / far * half, (end[0] - start[0]) / far * half
    corners = [
        (start[0] - x, start[1] - y, 0.0), (end[0] - x, end[1] - y, 1.0),
        (end[0] + x, end[1] + y, 0.0), (start[0] + x, start[1] + y, 1.0),
    ]  # fmt: skip
    space.add_lwpolyline(
        [tuple(round(number, 3) for number in corner) for corner in corners], format="xyb", close=True, dxfattribs=on
    )


def _words(space: Modelspace, text: str, at: Spot, layer: str) -> None:
    space.add_text(text, height=_TEXT_MM, dxfattribs={"layer": layer}).set_placement((round(at[0], 3), round(at[1], 3)))


def _dimensions(space: Modelspace, mount: SiteMount, room: Room, view: Way, offset: Spot) -> float:
    """True dimensions in rows below and columns beside; the lowest height that they take."""
    lines = dimension_lines(mount, room, view)
    _along(space, mount, room, view, offset)
    spots = [_mm(spot, offset) for line in lines for spot in (line.start, line.end)]
    if not spots:
        return math.inf
    left, right = min(spot[0] for spot in spots), max(spot[0] for spot in spots)
    low = min(spot[1] for spot in spots)
    beside, below = itertools.count(1), itertools.count(1)
    lowest = low
    for line in sorted(lines, key=lambda one: (one.distance_m, one.to)):
        first, last = _in_order(_mm(line.start, offset), _mm(line.end, offset), upright=line.upright)
        if line.upright:
            step = _ROW_MM * next(beside)
            base = (left - step if view == "above" else right + step, first[1])
        else:
            lowest = low - _ROW_MM * next(below)
            base = (first[0], lowest)
        space.add_linear_dim(
            base=base, p1=first, p2=last, angle=90 if line.upright else 0, dimstyle="STICKWRIGHT",
            text=say(message(MountDrawings.measured, to=line.to)), dxfattribs={"layer": "DIMENSIONS"},
        ).render()  # fmt: skip
    return lowest


def _in_order(one: Spot, other: Spot, *, upright: bool) -> tuple[Spot, Spot]:
    """The ends of a dimension from left to right, of an upright one from below: the other way round its arrows point outwards and
    its figure stands on the wrong side of the line, or on its head."""
    first, last = sorted(
        (one, other), key=(lambda spot: (spot[1], spot[0])) if upright else (lambda spot: (spot[0], spot[1]))
    )
    return first, last


def _along(space: Modelspace, mount: SiteMount, room: Room, view: Way, offset: Spot) -> None:
    """The distance along the tube to the clamp, in the view that shows its true length."""
    arm = mount.choice.arm if mount.choice is not None else None
    lines: tuple[Tube | Edge, ...] = (*room.tube, *room.edge)
    line = next((one for one in lines if arm is not None and one.name == arm.clamp), None)
    if arm is None or line is None or not arm.points_m:
        return
    first, last = _mm(flat(line.from_m, view), offset), _mm(flat(arm.points_m[0], view), offset)
    if abs(math.dist(first, last) - in_unit(arm.along_m, "mm")) > 0.5:
        return
    start, end = _in_order(first, last, upright=abs(first[0] - last[0]) < _UPRIGHT_MM)
    space.add_aligned_dim(
        p1=start, p2=end, distance=_ROW_MM, dimstyle="STICKWRIGHT", text=say(message(MountDrawings.measured, to="along")),
        dxfattribs={"layer": "DIMENSIONS"},
    ).render()  # fmt: skip
