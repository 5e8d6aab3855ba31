"""Beside the two views of a mount: the list of parts, a clock of directions, the device square on, and where all of it is."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.mount_drawings import MountDrawings, Picture
from stickwright.report.ink import LINE_MM, fitted
from stickwright.report.mount_balloons import BALLOON_MM
from stickwright.report.mount_margin import measured
from stickwright.report.mount_numbers import Part
from stickwright.report.mount_paper import PaperFrame, Pen
from stickwright.report.mount_shapes import DrawnBody, forward_of
from stickwright.report.mount_solids import OVERVIEW, RIGHT, Eye, pieces_of, runs
from stickwright.report.mount_view import Scenery
from stickwright.report.mount_views import DimensionLine

__all__ = ["CLOCK_MM", "SMALL_MM", "clock", "device", "device_frame", "list_height", "overview", "parts_list", "place"]

Spot = tuple[float, float]
CLOCK_MM = 42.0
SMALL_MM = 44.0
_NEAR_RAD = math.radians(40.0)
_SHORT_MM = 8.0
_STEEP = math.cos(math.radians(80.0))
_NUMBER_MM, _LEAD_MM = 6.0, 1.1
_SCALES = (1, 2, 5, 10)


# --- the list of parts --------------------------------------------------------------------------------------------------------


def _rows(parts: Sequence[Part], widths: tuple[float, float]) -> list[tuple[int, list[str], list[str]]]:
    """Lines of each row; with one width, the setting follows the name."""
    out = []
    for part in parts:
        if widths[1]:
            out.append(
                (part.number, fitted(part.name, widths[0]), fitted(part.setting, widths[1]) if part.setting else [])
            )
        else:
            told = say(message(MountDrawings.part, name=part.name, setting=part.setting)) if part.setting else part.name
            out.append((part.number, fitted(told, widths[0]), []))
    return out


def list_height(parts: Sequence[Part], widths: tuple[float, float]) -> float:
    """How high the list of parts is with columns of these widths.

    Parameters
    ----------
    parts : sequence of Part
        Its rows.
    widths : tuple of float
        Of the names, and of the settings; 0: they stand in one column.
    """
    return 6.0 + sum(LINE_MM * max(len(one), len(other)) + _LEAD_MM for _, one, other in _rows(parts, widths))


def parts_list(pen: Pen, corner: Spot, parts: Sequence[Part], widths: tuple[float, float]) -> None:
    """The list of parts: number, part, setting.

    Parameters
    ----------
    pen : Pen
        To draw with.
    corner : tuple of float
        Left top.
    parts : sequence of Part
        Its rows.
    widths : tuple of float
        As for `list_height`.
    """
    left, top = corner
    right = left + _NUMBER_MM + sum(widths) + (2.0 if widths[1] else 0.0)
    pen.words(say(message(MountDrawings.list_head, column="part")), (left, top + 3.4), bold=True)
    if widths[1]:
        beside = (left + _NUMBER_MM + widths[0] + 2.0, top + 3.4)
        pen.words(say(message(MountDrawings.list_head, column="setting")), beside, bold=True)
    y = top + 4.8
    pen.line([(left, y), (right, y)], "thin", width=0.4)
    for number, names, settings in _rows(parts, widths):
        pen.words(f"{number}", (left + _NUMBER_MM - 2.0, y + LINE_MM * 0.85), anchor="end", kind="row")
        for row, line in enumerate(names):
            pen.words(line, (left + _NUMBER_MM, y + LINE_MM * (row + 0.85)))
        for row, line in enumerate(settings):
            pen.words(line, (left + _NUMBER_MM + widths[0] + 2.0, y + LINE_MM * (row + 0.85)))
        y += LINE_MM * max(len(names), len(settings)) + _LEAD_MM
        pen.line([(left, y), (right, y)], "thin", width=0.15)


# --- the clock ----------------------------------------------------------------------------------------------------------------


def _hands(parts: Sequence[Part]) -> list[tuple[int, float]]:
    """Links by number, with the direction they point from the clamp on, clockwise from straight ahead; none that stand upright."""
    out = []
    for part in parts:
        for body in part.bodies:
            if body.layer == "MOUNT" and body.form == "bar" and not part.mark:
                (ax, ay, az), (bx, by, bz) = body.points
                level = math.hypot(bx - ax, by - ay)
                if level > _STEEP * math.hypot(level, bz - az):
                    out.append((part.number, math.atan2(bx - ax, by - ay)))
    return out


def clock(pen: Pen, corner: Spot, width_mm: float, parts: Sequence[Part], *, small: bool = False) -> bool:
    """Which way the links point from above, on a clock with 12 straight ahead; whether there was any.

    Parameters
    ----------
    pen : Pen
        To draw with.
    corner : tuple of float
        Left top.
    width_mm : float
        Room for it.
    parts : sequence of Part
        The list of parts.
    small : bool, default False
        Whether it has to do with less room.
    """
    hands = _hands(parts)
    if not hands:
        return False
    left, top = corner
    titles = fitted(say(message(MountDrawings.clock)), width_mm, 2, bold=True)
    lines = [*titles, *fitted(say(message(MountDrawings.noon)), width_mm, 2)]
    for row, line in enumerate(lines):
        pen.words(line, (left, top + 3.4 + LINE_MM * row), bold=row < len(titles))
    dial, reach, stub = (9.5, 6.4, 2.6) if small else (12.5, 9.0, 3.6)
    at = (left + width_mm / 2, top + LINE_MM * len(lines) + 4.2 + dial)
    pen.circle(at, dial, "thin")
    for hour in range(12):
        turn = hour * math.pi / 6
        inner = dial - (2.2 if hour % 3 == 0 else 1.2)
        pen.line([_polar(at, turn, inner), _polar(at, turn, dial)], "thin")
    for hour, x, y in ((12, 0.0, -dial - 1.2), (3, dial + 2.2, 1.2), (6, 0.0, dial + 4.0), (9, -dial - 2.2, 1.2)):
        pen.words(f"{hour}", (at[0] + x, at[1] + y), anchor="middle")
    lengths: dict[int, float] = {}
    for place, (_, turn) in enumerate(hands):
        near = [lengths[one] for one in lengths if abs(math.remainder(hands[one][1] - turn, math.tau)) < _NEAR_RAD]
        lengths[place] = next((far for far in (reach, stub) if far not in near), reach)
    for place, (_, turn) in enumerate(hands):
        pen.line([at, _polar(at, turn, lengths[place])], "seen")
    for place, (number, turn) in enumerate(hands):
        pen.balloon(number, _polar(at, turn, lengths[place]), BALLOON_MM)
    return True


def _polar(at: Spot, turn: float, far: float) -> Spot:
    return at[0] + math.sin(turn) * far, at[1] - math.cos(turn) * far


# --- the device ---------------------------------------------------------------------------------------------------------------


def _device_bodies(scene: Scenery) -> list[DrawnBody]:
    return [
        one for one in scene.held
        if one.layer == "STICK" or (one.layer == "MOUNT" and one.form == "solid")
    ]  # fmt: skip


def device_frame(scene: Scenery, width_mm: float, height_mm: float) -> tuple[PaperFrame, list[DimensionLine]] | None:
    """The device square on from its own right, at the largest scale for some room: its window, and its heights.

    Parameters
    ----------
    scene : Scenery
        What is drawn.
    width_mm, height_mm : float
        Room for it.
    """
    pose = scene.mount.pose
    if pose is None:
        return None
    right, forward, up = forward_of(pose)
    eye = Eye(forward, up, right)
    bodies = _device_bodies(scene)
    spots = eye.flat(np.concatenate([piece.corners for piece in pieces_of(bodies)]))
    (left, bottom), (far, top) = spots.min(axis=0), spots.max(axis=0)
    under, contact = eye.flat([pose.base_m])[0], eye.flat([pose.contact_m])[0]
    base = next((one for one in bodies if one.layer == "STICK" and one.form == "solid"), None)
    lines = []
    if base is not None and base.sure:
        head = eye.flat(list(base.points)).max(axis=0)
        lines.append(
            DimensionLine((left, float(under[1])), (left, float(head[1])), True, float(head[1] - under[1]), "base")
        )
    if contact[1] - under[1] > 0.002:
        start = (left, float(under[1]))
        lines.append(
            DimensionLine(start, (float(contact[0]), float(contact[1])), True, float(contact[1] - under[1]), "base")
        )
    if len(lines) == 2 and abs(lines[0].distance_m - lines[1].distance_m) < 0.001:
        lines.pop()
    beside = 12.0 + 8.0 * (len(lines) - 1)
    for one_to in _SCALES:
        if (far - left) * 1000 / one_to <= width_mm - beside - 1.0 and (top - bottom) * 1000 / one_to <= height_mm:
            low, high = (float(left), float(bottom)), (float(far), float(top))
            return PaperFrame(eye, (beside, 0.0), low, high, one_to), lines
    return None


def device(pen: Pen, corner: Spot, width_mm: float, scene: Scenery, height_mm: float) -> float:
    """Draws it; the height that it took, 0 where it found no room."""
    told = device_frame(scene, width_mm, height_mm)
    if told is None:
        return 0.0
    small, lines = told
    frame = PaperFrame(small.eye, (corner[0] + small.corner[0], corner[1] + 8.0), small.low, small.high, small.one_to)
    title = say(message(MountDrawings.view, view="device", one_to=frame.one_to))
    rows = fitted(title, width_mm, 3, bold=True)
    short = any(line.distance_m * frame.scale < _SHORT_MM for line in lines)
    head = LINE_MM * len(rows) + (11.0 if short else 3.0)
    frame = PaperFrame(frame.eye, (frame.corner[0], corner[1] + head), frame.low, frame.high, frame.one_to)
    for row, line in enumerate(rows):
        pen.words(line, (corner[0], corner[1] + 3.4 + LINE_MM * row), bold=True)
    pieces = pieces_of(_device_bodies(scene))
    for kind in ("hidden", "seen"):
        for run in runs(pieces, frame.eye, 0.25 / frame.scale):
            if run.kind == kind:
                pen.line([frame.at(spot) for spot in run.spots], run.kind)
    measured(pen, frame, lines, (frame.corner[0], frame.far[1]))
    return frame.far[1] + 4.0 - corner[1]


# --- where all of it is -------------------------------------------------------------------------------------------------------


def place(
    pen: Pen,
    corner: Spot,
    size: Spot,
    scene: Scenery,
    around: Sequence[DrawnBody],
    window: tuple[Spot, Spot],
) -> float:
    """The player and the seat as a sign from the right, the mount on it, and a thin box about what the view from the right shows."""
    return _whole(pen, corner, size, scene, around, eye=RIGHT, window=window)


def overview(pen: Pen, corner: Spot, size: Spot, scene: Scenery, around: Sequence[DrawnBody]) -> float:
    """The same from the front right and above."""
    return _whole(pen, corner, size, scene, around, eye=OVERVIEW, window=None)


def _whole(
    pen: Pen,
    corner: Spot,
    size: Spot,
    scene: Scenery,
    around: Sequence[DrawnBody],
    *,
    eye: Eye,
    window: tuple[Spot, Spot] | None,
) -> float:
    signs = [one for one in around if one.layer in ("BODY", "SEAT")]
    others = [
        one
        for one in (*scene.holders, *scene.others)
        if one.layer in ("TUBES", "EDGES", "SURFACES") and one.role != "floor"
    ]
    bodies = [*signs, *others, *scene.held]
    pieces = pieces_of(bodies)
    spots = eye.flat(np.concatenate([piece.corners for piece in pieces]))
    (left, bottom), (far, top) = spots.min(axis=0), spots.max(axis=0)
    view: Picture = "place" if window is not None else "overview"
    titles = fitted(say(message(MountDrawings.view, view=view, one_to=20)), size[0], 3, bold=True)
    head = LINE_MM * len(titles) + 2.0
    wide, high = float(far - left) * 1000, float(top - bottom) * 1000
    one_to = next((one for one in (10, 20, 50) if wide / one <= size[0] and high / one <= size[1] - head), None)
    if one_to is None:
        return 0.0
    beside = (size[0] - float(far - left) * 1000 / one_to) / 2
    frame = PaperFrame(
        eye, (corner[0] + beside, corner[1] + head), (float(left), float(bottom)), (float(far), float(top)), one_to
    )
    for row, line in enumerate(
        fitted(say(message(MountDrawings.view, view=view, one_to=one_to)), size[0], 3, bold=True)
    ):
        pen.words(line, (corner[0], corner[1] + 3.4 + LINE_MM * row), bold=True)
    mount = [piece for piece in pieces if piece.body in scene.held]
    rest = [piece for piece in pieces if piece.body not in scene.held]
    step_m = 0.3 / frame.scale
    for run in runs(rest, eye, step_m, pieces):
        if run.kind == "seen":
            sign = run.body.layer == "BODY"
            pen.line([frame.at(spot) for spot in run.spots], "sign" if sign else "thin")
    for run in runs(mount, eye, step_m, mount):
        if run.kind == "seen":
            pen.line([frame.at(spot) for spot in run.spots], "seen", width=0.35)
    if window is not None:
        (x0, y0), (x1, y1) = (frame.at(spot) for spot in window)
        (least_x, least_y), (most_x, most_y) = (one - 2.0 for one in frame.corner), (one + 2.0 for one in frame.far)
        x0, x1, y1, y0 = max(x0, least_x), min(x1, most_x), max(y1, least_y), min(y0, most_y)
        pen.line([(x0, y0), (x1, y0), (x1, y1), (x0, y1)], "phantom", close=True)
    return frame.far[1] + 3.0 - corner[1]
