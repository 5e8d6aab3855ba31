"""Where the stick goes and what holds it: from above and from the side, to scale, with the distances to rebuild it by.

Black on white, nothing told by colour: grey is the player and the seat, schematic; hatched is what must stay free;
double lines are links, dashes the cable. Distances start at things that a family can find again.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from stickwright.catalogue import say
from stickwright.codes.joint_settings import JointName, JointSettings
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.codes.mount_poses import End, MountPoses
from stickwright.model.mounting import SiteMount
from stickwright.model.room import Edge, Room, Tube
from stickwright.report.ink import LINE_MM, Ink, text_mm
from stickwright.report.mount_margin import FOOT_MM, ROW_MM, foot, outside_lines
from stickwright.report.mount_paper import Frame, area, arrow, dot, dot_on, head, rounded, shifted, stroke
from stickwright.report.mount_shapes import (
    DrawnBody,
    end_of,
    forward_of,
    mount_shapes,
    plain_words,
    room_shapes,
    tilted_shapes,
)
from stickwright.report.mount_views import (
    DimensionLine,
    Spot,
    View,
    bounds,
    clipped_polygon,
    dimension_lines,
    flat,
    hatch,
    hull,
)

if TYPE_CHECKING:
    import drawsvg

__all__ = [
    "along_words",
    "clamp_place",
    "clamp_range_words",
    "dimension_rows",
    "distances",
    "mount_alt",
    "mount_drawing",
    "worth_naming",
]

_ONE_TO = (1.0, 2.0, 2.5, 4.0, 5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0)
_GREY = "#8c8c8c"
_HEAD_MM, _GAP_MM = 5.2, 5.0
_LEAST_FRAME_MM = 62.0  # a view narrower than that has no room for its names
_PAD_M = 0.045
_BESIDE_M = 0.10
_NEAR_M = 0.12
_LEAST_RANGE_M = 0.010


def dimension_rows(mount: SiteMount) -> tuple[tuple[str, str, str], ...]:
    """The distances as a table: from what, to what, how far which way.

    Parameters
    ----------
    mount : SiteMount
        Its chosen mount's distances; none when nothing was chosen.
    """
    told = mount.choice.dimensions if mount.choice is not None else ()
    return tuple(
        (
            one.landmark,
            say(message(MountPoses.end, to=one.to)),
            say(message(MountPoses.far, distance_m=one.distance_m, along=one.along)),
        )
        for one in told
    )


def distances(mount: SiteMount) -> tuple[Message, ...]:
    """The same in sentences, one from each landmark to each point.

    Parameters
    ----------
    mount : SiteMount
        Its chosen mount's distances; none when nothing was chosen.
    """
    told: dict[tuple[str, End], list[Message]] = {}
    for one in mount.choice.dimensions if mount.choice is not None else ():
        far = message(MountPoses.far, distance_m=one.distance_m, along=one.along)
        told.setdefault((one.landmark, one.to), []).append(far)
    return tuple(
        message(MountPoses.distances, start=Name(start), to=to, far=tuple(far)) for (start, to), far in told.items()
    )


def clamp_place(mount: SiteMount, room: Room) -> Message | None:
    """Where on its tube or edge the clamp sits, a clause; None without a clamp.

    Parameters
    ----------
    mount : SiteMount
        With the arm that was chosen.
    room : Room
        With the tube or edge.
    """
    arm = mount.choice.arm if mount.choice is not None else None
    if arm is None:
        return None
    line = _line_named(room, arm.clamp)
    end = end_of(line.from_m, line.to_m) if line is not None else None
    kind = "edge" if isinstance(line, Edge) else "tube"
    return message(MountPoses.along, line=kind, end=end, along_m=arm.along_m)  # type: ignore[arg-type]


def along_words(mount: SiteMount, room: Room) -> str:
    """The same in words; empty without a clamp.

    Parameters
    ----------
    mount : SiteMount
        With the arm that was chosen.
    room : Room
        With the tube or edge.
    """
    place = clamp_place(mount, room)
    return "" if place is None else say(place)


def clamp_range_words(mount: SiteMount, room: Room) -> str:
    """Where else on its tube or edge the clamp could sit, told from the same end; empty without a clamp or another place.

    Parameters
    ----------
    mount : SiteMount
        With the arm that was chosen.
    room : Room
        With the tube or edge.
    """
    arm = mount.choice.arm if mount.choice is not None else None
    line = _line_named(room, arm.clamp) if arm is not None else None
    if arm is None or line is None:
        return ""
    wide = [(low, high) for low, high in arm.ranges_m if high - low >= _LEAST_RANGE_M]
    if not wide:
        return say(message(MountPoses.only_place)) if arm.ranges_m else ""
    lows, highs = zip(*wide, strict=True)
    end = end_of(line.from_m, line.to_m)
    return say(message(MountPoses.places, from_m=lows, to_m=highs, end=end, line=Name(line.name)))


def _line_named(room: Room, name: str) -> Tube | Edge | None:
    lines: tuple[Tube | Edge, ...] = (*room.tube, *room.edge)
    return next((line for line in lines if line.name == name), None)


def mount_alt(mount: SiteMount, room: Room) -> str:
    """The drawing in words.

    Parameters
    ----------
    mount : SiteMount
        What is drawn.
    room : Room
        What it stands in.
    """
    choice = mount.choice
    told = message(
        MountDrawings.alt, device=Name(mount.device), site=Name(mount.site),
        mount=Name(choice.mount) if choice is not None else None,
        on=Name(choice.on) if choice is not None and choice.on not in ("", choice.mount) else None,
        along=clamp_place(mount, room), distances=distances(mount), free=tuple(Name(box.name) for box in room.keep_out),
    )  # fmt: skip
    return say(told)


def mount_drawing(
    mount: SiteMount, room: Room, base_m: tuple[float, float, float] | None = None,
    size_mm: tuple[float, float] = (184.0, 100.0),
) -> str:  # fmt: skip
    """The mount in its room, from above and from the player's right, to one scale.

    Parameters
    ----------
    mount : SiteMount
        Where the stick goes and what holds it; without a choice only its place.
    room : Room
        What there is about it.
    base_m : tuple of float, optional
        Length, width, height of the stick's base; dashed when not measured.
    size_mm : tuple of float
        Paper width and height.

    Returns
    -------
    str
        SVG in millimetre, its writing of 8.8 points; printed at its own size it is to the scale written on it.
    """
    import drawsvg

    width, height = size_mm
    drawing = drawsvg.Drawing(width, height, origin=(0, 0))
    drawing.set_render_size(f"{width}mm", f"{height}mm")
    drawing.append_title(mount_alt(mount, room))
    contact = mount.pose.contact_m if mount.pose is not None else None
    around, held = room_shapes(room, mount.site, contact), mount_shapes(mount, room, base_m)
    frames, one_to = _frames(mount, room, held, size_mm)
    for frame in frames:
        clip = drawsvg.ClipPath()
        clip.append(drawsvg.Rectangle(*rounded(*frame.corner, *frame.size)))
        frame.group = drawsvg.Group(clip_path=clip)
        drawing.append(frame.group)
        _room(frame, around, room, mount)
        _mount(frame, held, mount, room)
        outside_lines(drawing, frame, dimension_lines(mount, room, frame.view))
        _names(drawing, frame, (*around, *held), mount, room, frames)
        Ink(drawing).box(*frame.corner, *frame.size, fill="none", line_mm=0.25)
        Ink(drawing).words(say(message(MountDrawings.view, view=frame.view)), (frame.corner[0], 3.6), bold=True)
    foot(drawing, size_mm, one_to, next((one.tilt_rad for one in tilted_shapes(room)), None))
    return str(drawing.as_svg())


# --- what fits where ------------------------------------------------------------------------------------------------------


def _frames(
    mount: SiteMount, room: Room, held: Sequence[DrawnBody], size_mm: Spot
) -> tuple[tuple[Frame, Frame], float]:
    """The two views beside each other at the largest usual scale at which both show what matters, and that scale."""
    above, right = dimension_lines(mount, room, "above"), dimension_lines(mount, room, "right")
    left_mm = ROW_MM * sum(line.upright for line in above)
    right_mm = ROW_MM * len(right)
    below_mm = ROW_MM * sum(not line.upright for line in above)
    wide = size_mm[0] - left_mm - right_mm - _GAP_MM - 0.4
    high = size_mm[1] - _HEAD_MM - FOOT_MM - below_mm
    low_above, high_above = _window(held, "above", above, mount, room)
    low_right, high_right = _window(held, "right", right, mount, room)
    across, along = high_above[0] - low_above[0], max(high_above[1] - low_above[1], high_right[0] - low_right[0])
    tall = max(along, high_right[1] - low_right[1])
    one_to = next(
        (one for one in _ONE_TO if 1000 / one * (across + along) <= wide and 1000 / one * tall <= high), _ONE_TO[-1]
    )
    share = min(max(across / (across + along) * wide, _LEAST_FRAME_MM), wide - _LEAST_FRAME_MM)
    top = _HEAD_MM
    first = Frame("above", (left_mm + 0.2, top), (share, high), _middle(low_above, high_above), 1000 / one_to, None)
    corner = (left_mm + share + _GAP_MM, top)
    second = Frame("right", corner, (wide - share, high), _middle(low_right, high_right), 1000 / one_to, None)
    return (first, second), one_to


def _middle(low: Spot, high: Spot) -> Spot:
    return (low[0] + high[0]) / 2, (low[1] + high[1]) / 2


def _window(
    held: Sequence[DrawnBody], view: View, lines: Sequence[DimensionLine], mount: SiteMount, room: Room
) -> tuple[Spot, Spot]:
    """What must be seen: mount and stick, ends of the distances, and where the player sits."""
    low, high = bounds([*held, DrawnBody("BODY", "", "dot", ((0.0, 0.10, 0.05),))], view)
    spots = [low, high, *(spot for line in lines for spot in (line.start, line.end))]
    arm = mount.choice.arm if mount.choice is not None else None
    tube = _line_named(room, arm.clamp) if arm is not None else None
    if tube is not None:
        spots.append(flat(tube.from_m, view))
    columns, rows = zip(*spots, strict=True)
    return (min(columns) - _PAD_M, min(rows) - _PAD_M), (max(columns) + _PAD_M, max(rows) + _PAD_M)


# --- inside the frames ------------------------------------------------------------------------------------------------------


def _room(frame: Frame, around: Sequence[DrawnBody], room: Room, mount: SiteMount) -> None:
    depth = 2 if frame.view == "above" else 0  # what is nearer to the eye is drawn later
    limbs = sorted((one for one in around if one.layer == "BODY"), key=lambda one: max(p[depth] for p in one.points))
    for one in around:
        if one.layer == "SEAT":
            area(frame, _outline(frame, one), colour=_GREY, width=0.3)
    for one in limbs:
        start, end = (frame.on(point) for point in one.points)
        thick = one.thick_m * frame.scale
        for colour, wide in ((_GREY, thick + 0.5), ("white", thick)):
            stroke(frame, [start, end], colour=colour, width=wide, cap="round", note=False)
    for one in tilted_shapes(room) if frame.view == "right" else ():
        if one.layer == "SEAT" or _beside(frame, one, mount):
            area(
                frame,
                _outline(frame, one),
                colour=_GREY if one.layer == "SEAT" else "black",
                width=0.3,
                dash="2 1.4",
                weight=0.5,
            )
    for one in around:
        if one.layer == "SURFACES" and one.role != "floor":
            area(frame, _outline(frame, one), width=0.45)
        elif one.layer in ("TUBES", "EDGES"):
            _bar(frame, one)
    for start, end in _bands(frame, mount, room):
        stroke(frame, [start, end], width=1.1, weight=1.0)
    for one in around:
        if one.layer == "KEEP_OUT" and _beside(frame, one, mount):
            _hatched(frame, one)
    used = {one.landmark for one in (mount.choice.dimensions if mount.choice else ())}
    for mark in room.landmark:
        if mark.name in used:
            x, y = frame.on(mark.at_m)
            stroke(frame, [(x - 1.6, y), (x + 1.6, y)], width=0.4)
            stroke(frame, [(x, y - 1.6), (x, y + 1.6)], width=0.4)


def _beside(frame: Frame, one: DrawnBody, mount: SiteMount) -> bool:
    """From the side only what lies beside the mount is shown: what is across the chair would hide all."""
    if frame.view == "above" or mount.pose is None:
        return True
    arm = mount.choice.arm if mount.choice is not None else None
    across = [point[0] for point in (mount.pose.base_m, *(arm.points_m if arm is not None else ()))]
    low, high = one.points[0][0], one.points[-1][0]
    return low - _BESIDE_M <= max(across) and min(across) <= high + _BESIDE_M


def _outline(frame: Frame, one: DrawnBody) -> list[Spot]:
    return hull(frame.on(point) for point in one.points)


def _bar(frame: Frame, one: DrawnBody) -> None:
    start, end = (frame.on(point) for point in one.points)
    thick = max(1.1, one.thick_m * frame.scale)
    if math.dist(start, end) < 0.3:
        dot(frame, start, thick / 2, fill="white", width=0.35)
        return
    for colour, wide in (("black", thick), ("white", thick - 0.7)):
        stroke(frame, [start, end], colour=colour, width=wide, weight=0.6)


def _hatched(frame: Frame, one: DrawnBody) -> None:
    outline = _outline(frame, one)
    for line in hatch(clipped_polygon(outline, frame.low, frame.high) if len(outline) > 2 else [], 3.4):
        stroke(frame, line, width=0.18, weight=0.12)
    area(frame, outline, width=0.35, dash="3 1")


def _mount(frame: Frame, held: Sequence[DrawnBody], mount: SiteMount, room: Room) -> None:
    for one in held:
        if one.layer == "CABLE" and _length_mm(frame, one) > 3.0:  # a little beside the arm that it follows
            stroke(frame, [shifted(frame.on(point), 1.5, 1.5) for point in one.points], width=0.45, dash="1.6 1.2")
    for one in held:
        if one.layer == "MOUNT" and one.form in ("bar", "path"):
            for colour, wide in (("black", 2.5), ("white", 1.5)):
                stroke(
                    frame, [frame.on(point) for point in one.points], colour=colour, width=wide, cap="round", weight=4.0
                )
    for one in held:
        if one.layer == "STICK" and one.form == "solid":
            area(frame, _outline(frame, one), fill="white", width=0.6, dash="" if one.sure else "1.6 1.2", weight=4.0)
    for one in held:
        if one.layer == "MOUNT" and one.form == "solid":
            area(frame, _outline(frame, one), width=0.3, dash="0.8 0.8")
        elif one.layer == "STICK" and one.form == "bar":
            stroke(frame, [frame.on(point) for point in one.points], width=1.0, weight=4.0)
    for one in (one for one in held if one.form == "dot"):
        x, y = frame.on(one.points[0])
        if one.role == "clamp":
            area(frame, [(x - 1.7, y - 1.7), (x + 1.7, y - 1.7), (x + 1.7, y + 1.7), (x - 1.7, y + 1.7)], fill="black")
        else:
            dot(frame, (x, y), 0.9 if one.layer == "MOUNT" else 1.1, fill="black" if one.layer == "MOUNT" else "white")
    _along(frame, mount, room)
    if mount.pose is not None and frame.view == "above":
        _forward(frame, mount, held)


def _length_mm(frame: Frame, one: DrawnBody) -> float:
    spots = [frame.on(point) for point in one.points]
    return sum(math.dist(*pair) for pair in itertools.pairwise(spots))


def _forward(frame: Frame, mount: SiteMount, held: Sequence[DrawnBody]) -> None:
    """The player's forward, as the base is turned: from the base's middle well past its edge."""
    start, tip = _arrow_ends(frame, mount, held)
    arrow(frame, start, tip, width=0.9)


def _arrow_ends(frame: Frame, mount: SiteMount, held: Sequence[DrawnBody]) -> tuple[Spot, Spot]:
    assert mount.pose is not None
    _, forward, _ = forward_of(mount.pose)
    x, y = frame.on(mount.pose.base_m)
    half = max(
        math.dist(frame.on(point), (x, y))
        for one in held
        if one.layer == "STICK" and one.form == "solid"
        for point in one.points
    )
    far = max(14.0, 0.9 * half + 8.0) / (math.hypot(forward[0], forward[1]) or 1.0)
    return (x, y), (x + forward[0] * far, y - forward[1] * far)


def _along(frame: Frame, mount: SiteMount, room: Room) -> None:
    """The distance along the tube from its end to the clamp, beside the tube on the side away from the arm."""
    ends = _along_ends(frame, mount, room)
    if ends is None:
        return
    start, end, aside = ends
    a, b = shifted(start, *aside), shifted(end, *aside)
    stroke(frame, [start, shifted(a, aside[0] * 0.2, aside[1] * 0.2)], width=0.15)
    stroke(frame, [end, shifted(b, aside[0] * 0.2, aside[1] * 0.2)], width=0.15)
    stroke(frame, [a, b], width=0.25)
    head(frame.group, a, b)
    head(frame.group, b, a)


def _bands(frame: Frame, mount: SiteMount, room: Room) -> list[tuple[Spot, Spot]]:
    """Where the clamp may sit, along the middle of its tube or edge; none that would hardly show in this view."""
    arm = mount.choice.arm if mount.choice is not None else None
    line = _line_named(room, arm.clamp) if arm is not None else None
    length = math.dist(line.from_m, line.to_m) if line is not None else 0.0
    if arm is None or line is None or length == 0.0:
        return []
    start, end = frame.on(line.from_m), frame.on(line.to_m)

    def at(along_m: float) -> Spot:
        share = along_m / length
        return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])

    bands = [(at(low), at(high)) for low, high in arm.ranges_m if high - low >= _LEAST_RANGE_M]
    return [band for band in bands if math.dist(*band) > 2.0]


def _along_ends(frame: Frame, mount: SiteMount, room: Room) -> tuple[Spot, Spot, Spot] | None:
    """First end of the tube, clamp, and the way aside; None where this view would not show the distance."""
    arm = mount.choice.arm if mount.choice is not None else None
    line = _line_named(room, arm.clamp) if arm is not None else None
    if arm is None or line is None or not arm.points_m:
        return None
    start, end = frame.on(line.from_m), frame.on(arm.points_m[0])
    far = math.dist(start, end)
    if far < 4.0:
        return None
    aside = (-(end[1] - start[1]) / far * 4.0, (end[0] - start[0]) / far * 4.0)
    away = frame.on(arm.points_m[1]) if len(arm.points_m) > 1 else start
    if (away[0] - end[0]) * aside[0] + (away[1] - end[1]) * aside[1] > 0:
        aside = (-aside[0], -aside[1])
    return start, end, aside


# --- names --------------------------------------------------------------------------------------------------------------------


def _names(
    drawing: drawsvg.Drawing,
    frame: Frame,
    shapes: Sequence[DrawnBody],
    mount: SiteMount,
    room: Room,
    frames: Sequence[Frame],
) -> None:
    """Names in order of weight; one that finds no place is in the table."""
    for text, anchors, bold in _told(frame, shapes, mount, room, frames):
        placed = frame.labels.place(text, anchors, 34.0 if len(text) > 24 else 27.0, bold)
        if placed is None:
            continue
        lines, (left, top), anchor = placed
        wide, high = max(text_mm(line, bold) for line in lines), len(lines) * LINE_MM
        near = (min(max(anchor[0], left), left + wide), min(max(anchor[1], top), top + high))
        ink = Ink(drawing)
        if math.dist(near, anchor) > 2.6:
            ink.line(near, anchor, width=0.2)
            dot_on(drawing, anchor, 0.45)
            frame.labels.draw_over(near, anchor, weight=1.5)
        ink.box(left, top, wide, high, line_mm=0.0, fill="white")
        for row, line in enumerate(lines):
            ink.words(line, (left + 0.3, top + LINE_MM * (row + 0.78)), bold=bold)


def _told(
    frame: Frame, shapes: Sequence[DrawnBody], mount: SiteMount, room: Room, frames: Sequence[Frame]
) -> Iterable[tuple[str, list[Spot], bool]]:
    """What is named in a view, where, and whether in bold: what is set first, then what is kept free, then the rest."""
    if frame.view == "above" and mount.pose is not None:
        yield say(message(MountDrawings.forward)), [_arrow_ends(frame, mount, shapes)[1]], True
    yield mount.device, _anchors(frame, [one for one in shapes if one.layer == "STICK" and one.form == "solid"]), True
    best = max(frames, key=lambda one: math.dist(*ends[:2]) if (ends := _along_ends(one, mount, room)) else 0.0)
    dots = [one for one in shapes if one.layer == "MOUNT" and one.form == "dot"]
    joints = mount.choice.arm.joints if mount.choice is not None and mount.choice.arm is not None else ()
    for number, one in enumerate(dots):
        if one.role == "clamp":
            place = clamp_place(mount, room) if frame is best else None
            yield plain_words(message(MountDrawings.clamp, along=place)), _anchors(frame, [one]), True
        elif number > 1 or len(dots) < 3:
            yield joint_label(number, joints[number - 1].name), _anchors(frame, [one]), False
    if frame is best:
        seen = [line[len(line) // 2] for band in _bands(frame, mount, room) if (line := frame.seen(band))]
        if seen:
            yield say(message(MountDrawings.clamp_range)), seen[:1], False
    for layer in ("KEEP_OUT", "LANDMARKS", "TUBES", "SURFACES", "EDGES", "CABLE"):
        used = {one.landmark for one in (mount.choice.dimensions if mount.choice else ())}
        for one in (one for one in shapes if one.layer == layer and (layer != "LANDMARKS" or one.name in used)):
            if layer == "KEEP_OUT" and not _beside(frame, one, mount):
                continue
            if layer == "CABLE" and _length_mm(frame, one) <= 3.0:
                continue
            if layer in ("TUBES", "EDGES", "SURFACES") and not worth_naming(one, mount):
                continue
            if anchors := _anchors(frame, [one]):
                yield _name_of(one), anchors, False
    if frame.view == "right" and (leaning := tilted_shapes(room)):
        for one in leaning:
            if one.layer == "KEEP_OUT" and _beside(frame, one, mount) and (anchors := _edge_anchors(frame, one)):
                yield say(message(MountDrawings.tilted, name=Name(one.typed), tilt_rad=one.tilt_rad)), anchors, False
        seats = [spot for one in leaning if one.layer == "SEAT" for spot in _edge_anchors(frame, one)]
        if seats:
            yield say(message(MountDrawings.seat_tilted, tilt_rad=leaning[0].tilt_rad)), seats, False


def _edge_anchors(frame: Frame, one: DrawnBody) -> list[Spot]:
    """Points of an outline that lie in the frame: its own corners, not where the frame cuts it."""
    return [
        spot
        for spot in _outline(frame, one)
        if frame.low[0] < spot[0] < frame.high[0] and frame.low[1] < spot[1] < frame.high[1]
    ]


def worth_naming(one: DrawnBody, mount: SiteMount) -> bool:
    """What holds the stick, what may not be clamped, and what is near enough to be taken for it.

    Parameters
    ----------
    one : DrawnBody
        A tube, edge or surface.
    mount : SiteMount
        What is shown.
    """
    if mount.choice is not None and one.name == mount.choice.on:
        return True
    if one.barred:
        return True
    if mount.pose is None or one.role == "floor":
        return False
    arm = mount.choice.arm if mount.choice is not None else None
    spots = (mount.pose.base_m, *(arm.points_m if arm is not None else ()))
    sides = tuple(zip(*one.points, strict=True))
    return any(
        all(min(side) - _NEAR_M <= at <= max(side) + _NEAR_M for side, at in zip(sides, spot, strict=True))
        for spot in spots
    )


def joint_label(number: int, name: JointName) -> str:
    """A joint as the drawing and the list beside it call it, counted from the clamp.

    Examples
    --------
    >>> joint_label(2, "lower_link")
    '2 lower link'
    """
    return say(message(JointSettings.numbered, joint=name, number=number))


def _name_of(one: DrawnBody) -> str:
    if not one.note or one.layer not in ("TUBES", "EDGES"):
        return one.name
    return say(message(MountDrawings.with_note, name=one.name, note=one.note))


def _anchors(frame: Frame, shapes: Iterable[DrawnBody]) -> list[Spot]:
    """Points that a name may point to, of what is in the frame; none of what hardly shows."""
    spots: list[Spot] = []
    for one in shapes:
        if one.form == "dot":
            spots += frame.seen([frame.on(one.points[0])] * 2)[:1]
        elif one.form == "solid":
            outline = frame.seen(_outline(frame, one))
            if len(outline) > 2:
                columns, rows = zip(*outline, strict=True)
                if max(columns) - min(columns) > 2.5 or max(rows) - min(rows) > 2.5:
                    middle = (sum(columns) / len(outline), sum(rows) / len(outline))
                    spots += [middle] if one.layer == "KEEP_OUT" else outline
        else:
            for start, end in zip(one.points, one.points[1:], strict=False):
                line = frame.seen([frame.on(start), frame.on(end)])
                spots += line[:: max(1, len(line) // 4)]
    return spots
