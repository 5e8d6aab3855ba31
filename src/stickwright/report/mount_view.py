"""One view of a mount as a technical drawing: edges seen and hidden, neighbours, what stays free, balloons and distances."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.model.mounting import SiteMount
from stickwright.model.room import Room
from stickwright.report.mount_balloons import BALLOON_MM, Leader, crosses, leaders, slots
from stickwright.report.mount_distances import LEAST_RANGE_M, line_named
from stickwright.report.mount_margin import measured, measured_along
from stickwright.report.mount_numbers import BAND, FRONT, Part
from stickwright.report.mount_paper import Kind, PaperFrame, Pen
from stickwright.report.mount_shapes import DrawnBody, forward_of
from stickwright.report.mount_solids import ABOVE, Piece, front_of, hides, pieces_of, runs
from stickwright.report.mount_views import DimensionLine, clipped_polygon, hatch, hull

__all__ = ["Scenery", "View", "balloons", "drawn_view", "front_end", "line_ends", "renumbered"]

Spot = tuple[float, float]
_STEP_MM, _HATCH_MM = 0.25, 4.5
_ALONG_MM = (9.0, 12.0, 15.0, 18.0, 22.0)
_ARROW_MM = 8.0


@dataclass
class Scenery:
    """What a drawing is made from.

    Parameters
    ----------
    mount : SiteMount
        What is drawn.
    room : Room
        What it stands in.
    held : tuple of DrawnBody
        The mount, the cable and the device.
    holders : tuple of DrawnBody
        What it is clamped to or stands on.
    others : tuple of DrawnBody
        Neighbours: other tubes, the seat, what must stay free.
    """

    mount: SiteMount
    room: Room
    held: tuple[DrawnBody, ...]
    holders: tuple[DrawnBody, ...]
    others: tuple[DrawnBody, ...]
    solid: tuple[Piece, ...] = field(init=False)

    def __post_init__(self) -> None:
        self.solid = pieces_of((*self.held, *self.holders))


@dataclass
class View:
    """A view as it was drawn, for what is placed about it."""

    frame: PaperFrame
    segments: list[tuple[Spot, Spot]] = field(default_factory=list)
    numbers: dict[int, list[Spot]] = field(default_factory=dict)
    outlines: dict[int, list[list[Spot]]] = field(default_factory=dict)
    extensions: list[tuple[Spot, Spot]] = field(default_factory=list)
    leaders: list[Leader] = field(default_factory=list)

    def clear(self, box: Sequence[Spot]) -> bool:
        """Whether no line that was drawn meets an outline on paper."""
        sides = list(zip(box, [*box[1:], box[0]], strict=True))
        return not any(crosses(*side, *line) for side in sides for line in self.segments) and not any(
            _holds(box, line[0]) for line in self.segments
        )


def _holds(box: Sequence[Spot], at: Spot) -> bool:
    sides = [
        (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])
        for a, b in zip(box, [*box[1:], box[0]], strict=True)
    ]
    return all(side > 0 for side in sides) or all(side < 0 for side in sides)


def drawn_view(
    pen: Pen, frame: PaperFrame, scene: Scenery, parts: Sequence[Part], lines: Sequence[DimensionLine], *, along: bool
) -> View:
    """Draws a view with its distances; the anchors that its balloons may have are in the answer.

    Parameters
    ----------
    pen : Pen
        To draw with.
    frame : PaperFrame
        The window.
    scene : Scenery
        What is drawn.
    parts : sequence of Part
        What may get a number.
    lines : sequence of DimensionLine
        Distances outside of it.
    along : bool
        Whether the distance along the tube is drawn in this view.
    """
    view = View(frame)
    _free(pen, view, scene)
    _neighbours(pen, view, scene)
    _edges(pen, view, scene)
    _marks(pen, view, scene)
    if along:
        _along(pen, view, scene)
    drawn = measured(pen, frame, lines, (frame.corner[0], frame.far[1]))
    view.extensions = [line for one in drawn for line in one.lines]
    view.segments += view.extensions
    for part in parts:
        anchors = _anchors(view, scene, part)
        if anchors:
            view.numbers[part.number] = anchors
            view.outlines[part.number] = [_outline(frame, body) for body in part.bodies if _covers(scene, body)]
    return view


def balloons(pen: Pen, view: View) -> None:
    """Balloons above and at the right of a view, with their leaders."""
    places = slots(view.frame.corner, view.frame.far, len(view.numbers))
    view.leaders = leaders(view.numbers, places, view.outlines, view.extensions)
    for one in view.leaders:
        pen.line([one.slot, one.anchor], "leader")
        pen.dot(one.anchor)
    for one in view.leaders:
        pen.balloon(one.number, one.slot, BALLOON_MM)


# --- lines ------------------------------------------------------------------------------------------------------------------


def _outline(frame: PaperFrame, body: DrawnBody) -> list[Spot]:
    corners = [corner for piece in pieces_of([body]) for corner in piece.corners] or [
        np.asarray(one) for one in body.points
    ]
    return hull((round(x, 4), round(y, 4)) for x, y in (frame.at(spot) for spot in frame.eye.flat(np.asarray(corners))))


def _draw(pen: Pen, view: View, spots: Sequence[Spot], kind: Kind) -> None:
    for line in view.frame.cut(spots):
        pen.line(line, kind)
        view.segments += list(itertools.pairwise(line))


def _edges(pen: Pen, view: View, scene: Scenery) -> None:
    frame = view.frame
    step_m = _STEP_MM / frame.scale
    all_runs = runs(scene.solid, frame.eye, step_m)
    for kind in ("hidden", "seen"):
        for run in all_runs:
            if run.kind == kind:
                guess = run.body.layer == "STICK" and run.body.form == "solid" and not run.body.sure
                told: Kind = "phantom" if guess and kind == "seen" else run.kind
                _draw(pen, view, [frame.at(spot) for spot in run.spots], told)
    for body in scene.holders:
        _broken(pen, view, _outline(frame, body))


def _broken(pen: Pen, view: View, outline: list[Spot]) -> None:
    """A zigzag where the window cuts something off."""
    if len(outline) < 3:
        return
    for side, low, high in view.frame.breaks(outline):
        axis = side // 2
        limit = (view.frame.corner, view.frame.far)[side % 2][axis]
        middle = (low + high) / 2
        tooth = min(1.2, (high - low) / 4)
        teeth = ((-tooth, 0.0), (-tooth / 2, 1.6), (tooth / 2, -1.6), (tooth, 0.0))
        spots = [(low - 2, 0.0), *((middle + along, off) for along, off in teeth), (high + 2, 0.0)]
        line = [(limit + off, at) if axis == 0 else (at, limit + off) for at, off in spots]
        pen.line(line, "break")
        view.segments += list(itertools.pairwise(line))


def _covered(view: View, scene: Scenery, spots: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which spots of a view lie on the mount or what holds it."""
    out = np.zeros(len(spots), dtype=bool)
    eye = view.frame.eye
    points = spots[:, :1] * np.asarray(eye.right) + spots[:, 1:] * np.asarray(eye.up) - 1e3 * np.asarray(eye.to)
    for piece in scene.solid:
        out |= hides(piece, points, eye)[0]
    return out


def _around(pen: Pen, view: View, scene: Scenery, lines: Iterable[Sequence[Spot]], kind: Kind) -> None:
    """Lines on paper, left out where they lie behind the mount or what holds it."""
    frame = view.frame
    for line in lines:
        for whole in frame.cut(line):
            points = [whole[0]]
            for start, end in itertools.pairwise(whole):
                count = max(1, math.ceil(math.dist(start, end) / (2 * _STEP_MM)))
                points += [_between(start, end, n / count) for n in range(1, count + 1)]
            flat = np.asarray([_unpaper(frame, point) for point in points])
            covered = _covered(view, scene, (flat[1:] + flat[:-1]) / 2)
            cuts = [0, *(np.flatnonzero(np.diff(covered.astype(int))) + 1), len(covered)]
            for first, last in itertools.pairwise(cuts):
                if not covered[first]:
                    spots = [
                        points[first],
                        *(one for one in whole[1:-1] if one in points[first + 1 : last]),
                        points[last],
                    ]
                    pen.line(spots, kind)
                    view.segments += list(itertools.pairwise(spots))


def _unpaper(frame: PaperFrame, spot: Spot) -> Spot:
    return (
        frame.low[0] + (spot[0] - frame.corner[0]) / frame.scale,
        frame.high[1] - (spot[1] - frame.corner[1]) / frame.scale,
    )


def _free(pen: Pen, view: View, scene: Scenery) -> None:
    """What must stay free: hatched where the seat is level."""
    frame = view.frame
    for body in scene.others:
        if body.layer != "KEEP_OUT":
            continue
        outline = _outline(frame, body)
        inside = clipped_polygon(outline, frame.corner, frame.far) if len(outline) > 2 else []
        if not body.tilt_rad:
            _around(pen, view, scene, hatch(inside, _HATCH_MM), "hatch")
        _around(pen, view, scene, [[*outline, outline[0]]], "phantom")
        _broken(pen, view, outline)


def _neighbours(pen: Pen, view: View, scene: Scenery) -> None:
    for body in scene.others:
        if body.layer in ("SEAT", "TUBES", "EDGES", "SURFACES"):
            outline = _outline(view.frame, body)
            _around(pen, view, scene, [[*outline, outline[0]]], "phantom")
            _broken(pen, view, outline)


# --- marks ------------------------------------------------------------------------------------------------------------------


def _marks(pen: Pen, view: View, scene: Scenery) -> None:
    frame, mount = view.frame, scene.mount
    for body in scene.others:
        if body.layer == "LANDMARKS":
            at = frame.on(body.points[0])
            pen.circle(at, 1.1, "thin")
            for x, y in ((2.2, 0.0), (0.0, 2.2)):
                _draw(pen, view, [(at[0] - x, at[1] - y), (at[0] + x, at[1] + y)], "thin")
    for start, end in _bands(frame, scene):
        _draw(pen, view, [start, end], "band")
    for spots in _cables(frame, scene):
        _draw(pen, view, spots, "cable")
    for body in scene.holders:
        if body.form == "bar":
            start, end = (frame.on(point) for point in body.points)
            far = math.dist(start, end)
            if far > 4.0 and not (_bands(frame, scene) and _clamped(scene, body)):
                x, y = (end[0] - start[0]) / far * 3, (end[1] - start[1]) / far * 3
                _draw(pen, view, [(start[0] - x, start[1] - y), (end[0] + x, end[1] + y)], "axis")
    if mount.pose is not None:
        _cross(pen, view, frame.on(mount.pose.base_m), _half(frame, scene) + 3.0)
    arm = mount.choice.arm if mount.choice is not None else None
    if arm is not None and arm.points_m:
        _cross(pen, view, frame.on(arm.points_m[0]), 6.0)
    front = _front(frame, scene)
    if front is not None:
        pen.line(front, "front")
        pen.head(*front, size=3.0)
        view.segments.append(front)


def _clamped(scene: Scenery, body: DrawnBody) -> bool:
    arm = scene.mount.choice.arm if scene.mount.choice is not None else None
    return arm is not None and body.typed == arm.clamp


def _cross(pen: Pen, view: View, at: Spot, half: float) -> None:
    for x, y in ((half, 0.0), (0.0, half)):
        _draw(pen, view, [(at[0] - x, at[1] - y), (at[0] + x, at[1] + y)], "axis")


def _half(frame: PaperFrame, scene: Scenery) -> float:
    """From the middle of the base to its farthest corner, on paper."""
    assert scene.mount.pose is not None
    at = frame.on(scene.mount.pose.base_m)
    base = [point for body in scene.held if body.layer == "STICK" and body.form == "solid" for point in body.points]
    return max((math.dist(frame.on(point), at) for point in base), default=4.0)


def front_end(scene: Scenery, one_to: int) -> Spot:
    """Where the arrow ends, in the view from above, that goes from the middle of the base past its front: the player's forward.

    Parameters
    ----------
    scene : Scenery
        With a pose.
    one_to : int
        Scale, for so far past the front on paper.
    """
    assert scene.mount.pose is not None
    _, forward, _ = forward_of(scene.mount.pose)
    way = np.asarray(forward[:2]) / (math.hypot(forward[0], forward[1]) or 1.0)
    at = np.asarray(scene.mount.pose.base_m[:2])
    base = [point[:2] for body in scene.held if body.layer == "STICK" and body.form == "solid" for point in body.points]
    past = max((float((np.asarray(point) - at) @ way) for point in base), default=0.0)
    end = at + way * (past + _ARROW_MM * one_to / 1000)
    return float(end[0]), float(end[1])


def _front(frame: PaperFrame, scene: Scenery) -> tuple[Spot, Spot] | None:
    """That arrow on paper, in the view from above."""
    pose = scene.mount.pose
    if pose is None or frame.eye is not ABOVE:
        return None
    return frame.on(pose.base_m), frame.at(front_end(scene, frame.one_to))


def _cables(frame: PaperFrame, scene: Scenery) -> Iterator[list[Spot]]:
    """Beside the arm that it follows; none that hardly shows."""
    for body in scene.held:
        if body.layer == "CABLE":
            spots = [frame.on(point) for point in body.points]
            kept = [spots[0]]
            for spot in spots[1:]:
                if math.dist(spot, kept[-1]) > 0.5:
                    kept.append(spot)
            if sum(math.dist(a, b) for a, b in itertools.pairwise(kept)) > 4.0:
                off = 0.5 * 0.018 * frame.scale + 1.3
                yield _beside(kept, off)


def _beside(spots: Sequence[Spot], off: float) -> list[Spot]:
    """A line parallel to another, at its left on paper."""
    out = []
    for number, (x, y) in enumerate(spots):
        before, after = spots[max(0, number - 1)], spots[min(len(spots) - 1, number + 1)]
        far = math.dist(before, after) or 1.0
        out.append((x - (after[1] - before[1]) / far * off, y + (after[0] - before[0]) / far * off))
    return out


def line_ends(scene: Scenery) -> tuple[tuple[float, float, float], tuple[float, float, float]] | None:
    """The end of the tube or edge from which the clamp's place is told, and the clamp."""
    arm = scene.mount.choice.arm if scene.mount.choice is not None else None
    line = line_named(scene.room, arm.clamp) if arm is not None else None
    return (line.from_m, arm.points_m[0]) if arm is not None and line is not None and arm.points_m else None


def _bands(frame: PaperFrame, scene: Scenery) -> list[tuple[Spot, Spot]]:
    """Where the clamp may sit, along the middle of its tube or edge; none that would hardly show."""
    arm = scene.mount.choice.arm if scene.mount.choice is not None else None
    line = line_named(scene.room, arm.clamp) if arm is not None else None
    length = math.dist(line.from_m, line.to_m) if line is not None else 0.0
    if arm is None or line is None or length == 0.0:
        return []
    start, end = frame.on(line.from_m), frame.on(line.to_m)

    def at(along_m: float) -> Spot:
        share = along_m / length
        return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])

    told = [(at(low), at(high)) for low, high in arm.ranges_m if high - low >= LEAST_RANGE_M]
    return [band for band in told if math.dist(*band) > 2.0]


def _along(pen: Pen, view: View, scene: Scenery) -> None:
    """The distance along the tube from its end to the clamp, beside it where it meets nothing; else the table has it."""
    ends, arm = line_ends(scene), scene.mount.choice.arm if scene.mount.choice is not None else None
    if ends is None or arm is None:
        return
    start, end = (view.frame.on(point) for point in ends)
    far = math.dist(start, end)
    if far < 4.0:
        return
    across = ((end[1] - start[1]) / far, -(end[0] - start[0]) / far)
    tries = [(side, off) for off in _ALONG_MM for side in (1.0, -1.0)]
    for side, off in tries:
        aside = (across[0] * side * off, across[1] * side * off)
        told = measured_along(None, start, end, aside, arm.along_m)
        line = told.lines[-1]
        inside = all(view.frame.holds(spot) for spot in (*line, *told.box))
        if inside and view.clear(told.box) and not any(crosses(*line, *one) for one in view.segments):
            drawn = measured_along(pen, start, end, aside, arm.along_m)
            view.segments += [*drawn.lines, line]
            return


# --- numbers ----------------------------------------------------------------------------------------------------------------


def _covers(scene: Scenery, body: DrawnBody) -> bool:
    """Whether it is a face that a leader to something else should not run over."""
    return body in scene.held or body in scene.holders


def _anchors(view: View, scene: Scenery, part: Part) -> list[Spot]:
    frame = view.frame
    if part.mark == BAND:
        return [spot for line in _bands(frame, scene) if frame.holds(spot := _between(*line, 0.5))]
    if part.mark == FRONT:
        front = _front(frame, scene)
        return [_between(*front, 0.85)] if front is not None else []
    out: list[Spot] = []
    for body in part.bodies:
        if body.layer == "CABLE":
            lines = list(_cables(frame, scene))
            out += [_between(a, b, 0.5) for line in lines for a, b in itertools.pairwise(line)]
        elif body.layer == "LANDMARKS":
            out.append(frame.on(body.points[0]))
        elif _covers(scene, body):
            out += _faces(view, scene, body)
        elif body in scene.others:
            out += _rims(view, scene, body)
    if not out:
        out = [spot for body in part.bodies if _covers(scene, body) for spot in _corners(frame, body)]
    return [spot for spot in out if frame.holds(spot, 0.3)]


def _between(a: Spot, b: Spot, share: float) -> Spot:
    return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])


def _corners(frame: PaperFrame, body: DrawnBody) -> list[Spot]:
    outline = _outline(frame, body)
    return outline[:: max(1, len(outline) // 6)]


def _faces(view: View, scene: Scenery, body: DrawnBody) -> list[Spot]:
    """Spots of a body's face that nothing is before."""
    frame, out = view.frame, list[Spot]()
    for piece in (one for one in scene.solid if one.body == body):
        outline = np.asarray(hull((float(x), float(y)) for x, y in frame.eye.flat(piece.corners)))
        middle = outline.mean(axis=0)
        spots = np.concatenate([middle[None, :], *(middle + share * (outline - middle) for share in (0.45, 0.8))])
        points = front_of(piece, spots, frame.eye)
        fine = ~np.isnan(points[:, 0])
        for other in scene.solid:
            if other.body != body:
                behind, _ = hides(other, np.nan_to_num(points), frame.eye)
                fine &= ~behind
        told = [frame.at(spot) for spot in spots[fine]]
        told = [spot for spot in told if frame.holds(spot, 0.5)]
        out += told[:1] + told[1 :: max(1, len(told) // 6)]
    return out[:: max(1, len(out) // 10)]


def _rims(view: View, scene: Scenery, body: DrawnBody) -> list[Spot]:
    """Spots along the outline of a neighbour that lie in the window and behind nothing."""
    frame, outline = view.frame, _outline(view.frame, body)
    spots = [
        _between(a, b, share)
        for a, b in zip(outline, [*outline[1:], outline[0]], strict=True)
        for share in (0.15, 0.5, 0.85)
    ]
    spots = [spot for spot in spots if frame.holds(spot, 0.5)]
    if not spots:
        inside = clipped_polygon(outline, frame.corner, frame.far) if len(outline) > 2 else []
        if len(inside) > 2 and body.layer == "KEEP_OUT":
            spots = [(sum(x for x, _ in inside) / len(inside), sum(y for _, y in inside) / len(inside))]
    if not spots:
        return []
    covered = _covered(view, scene, np.asarray([_unpaper(frame, spot) for spot in spots]))
    free = [spot for spot, hidden in zip(spots, covered, strict=True) if not hidden]
    return free[:: max(1, len(free) // 8)]


def renumbered(parts: Sequence[Part], views: Sequence[View]) -> tuple[Part, ...]:
    """The parts that some view shows, numbered without gaps; the views' numbers follow."""
    shown = [part for part in parts if any(part.number in view.numbers for view in views)]
    new = {part.number: number for number, part in enumerate(shown, start=1)}
    for view in views:
        view.numbers = {new[number]: spots for number, spots in view.numbers.items()}
        view.outlines = {new[number]: told for number, told in view.outlines.items()}
    return tuple(replace(part, number=new[part.number]) for part in shown)
