"""The whole set-up in one picture: the seated player from above, and each stick and switch in its place, turned as it is.

Only numbers are written on it, each with room of its own; what they are stands in a list beside it. Straight ahead of the player is
up the page, 12 on the clock.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.setup_pictures import SetupPictures
from stickwright.model.fit import Fit
from stickwright.model.mounting import SiteMount
from stickwright.model.plan import Plan
from stickwright.model.room import Room, Surface
from stickwright.model.sharing import Placement
from stickwright.model.turns import rotated
from stickwright.report.body import part_named, side_named
from stickwright.report.ink import FONT
from stickwright.report.paper import width_mm
from stickwright.report.printed import base_turned
from stickwright.report.tell import named, names, tell

if TYPE_CHECKING:
    import drawsvg

__all__ = ["Item", "items_of", "setup_picture"]

Point = tuple[float, float]

_MARK_MM, _DIGIT_MM, _LEAST_MM = 3.3, 4.2, 2.6  # radius of a marker, its type (12 points), half a device at least
_EDGE_MM = 9.0  # round the picture, for the clock
_PALE, _GREY = "#e4e4e4", "#8c8c8c"
_SEAT = (-0.22, -0.04, 0.44, 0.46)
"""Left, back, width and depth of a usual seat where the room does not tell."""

_PLACES: dict[str, Point] = {
    "head": (0.09, 0.10), "cheek": (0.09, 0.20), "lip": (0.0, 0.24), "tongue": (0.0, 0.24), "chin": (0.0, 0.26),
    "shoulder": (0.24, 0.08), "trunk": (0.0, 0.22), "elbow": (0.31, 0.14), "forearm": (0.29, 0.28), "hand": (0.25, 0.42),
    "thumb": (0.18, 0.45), "fingertip": (0.26, 0.52), "thigh": (0.11, 0.32), "knee": (0.12, 0.50), "foot": (0.12, 0.72),
    "toe": (0.12, 0.80),
}  # fmt: skip
"""Each part on the player's right in metres, to the right and forward of the middle of the back, of somebody seated as usual."""


@dataclass(frozen=True)
class Item:
    """One stick, controller or group of like switches at one control site."""

    numbers: tuple[str, ...]
    """Of the control sites that work it, as on the page of controls."""
    device: Text
    kind: str
    at: Point
    """Right and forward, in metres."""
    measured: bool
    turn_rad: float = 0.0
    base_m: Point = (0.05, 0.05)
    pieces: int = 1
    arm: tuple[Point, ...] = ()
    """From its clamp."""
    how: tuple[Message, ...] = ()
    """What is to know about its place, each a sentence."""

    @property
    def what(self) -> Message:
        """The device, and how many of it."""
        return message(SetupPictures.device, device=self.device, pieces=self.pieces)


def items_of(plan: Plan, numbers: dict[str, str], sticks: Sequence[tuple[str, Fit, float]]) -> tuple[Item, ...]:
    """Everything that is set up, in the order of the numbers of the control sites.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    numbers : dict
        Number of each control site.
    sticks : sequence of (str, Fit, float)
        The sticks that are set up: site, set-up, and how its base is turned.
    """
    found = [_stick(plan, numbers, *one) for one in sticks]
    found += _others(plan, numbers, {(site, fit.stick) for site, fit, _ in sticks})
    return tuple(sorted(found, key=lambda one: int(one.numbers[0])))


def _stick(plan: Plan, numbers: dict[str, str], site: str, fit: Fit, turn_rad: float) -> Item:
    mount = _mount_of(plan, site, fit.stick)
    at, measured = _place(plan, site, mount)
    told = message(SetupPictures.turned, turn_rad=turn_rad) if base_turned(turn_rad) else None
    tall = message(SetupPictures.tall, height_m=fit.contact_height_m) if fit.kind == "lever" else None
    how = (_at((site,)), *_held(mount), *((told,) if told else ()), *((tall,) if tall else ()), *_unplaced(measured))
    length, width, _ = fit.base_m or (0.06, 0.06, 0.03)
    quarter = math.pi / 2 if fit.crosswise else 0.0
    return Item(
        numbers=(numbers[site],),
        device=fit.named,
        kind="stick",
        at=at,
        measured=measured,
        turn_rad=turn_rad + quarter,
        base_m=(length, width),
        pieces=1,
        arm=_arm(mount),
        how=how,
    )


def _others(plan: Plan, numbers: dict[str, str], known: set[tuple[str, str]]) -> list[Item]:
    """Switches and controllers: all that the player works besides the sticks. A controller is one, whoever works it."""
    placements = plan.sharing.placements if plan.sharing is not None else ()
    groups: dict[tuple[str, str], list[Placement]] = {}
    for one in placements:
        if one.how == "site" and one.site and one.device and (one.site, one.device) not in known:
            groups.setdefault(("" if one.kind == "controller" else one.site, one.device), []).append(one)
    return [_other(plan, numbers, here) for here in groups.values()]


def _other(plan: Plan, numbers: dict[str, str], here: Sequence[Placement]) -> Item:
    """One of them, with all that is done on it."""
    sites = tuple(dict.fromkeys(one.site for one in here if one.site))
    device, kind = here[0].device or "", here[0].kind
    mounts = [_mount_of(plan, site, device) for site in sites]
    mount = next((one for one in mounts if one is not None and one.pose is not None), mounts[0])
    at, measured = _place(plan, sites[0], mount)
    latching = names(one.action for one in here if one.toggle)
    how = (
        _at(sites), *_held(mount), *((message(SetupPictures.latching, actions=latching),) if latching else ()),
        *_unplaced(measured),
    )  # fmt: skip
    pieces = 1 if kind == "controller" else mount.pieces if mount is not None else len(here)
    turn_rad = mount.pose.turn_rad if mount is not None and mount.pose is not None else 0.0
    base = mount.base_m[:2] if mount is not None and mount.base_m is not None else (0.05, 0.05)
    marks = tuple(numbers[site] for site in sites)
    return Item(
        numbers=marks,
        device=Name(device),
        kind=kind,
        at=at,
        measured=measured,
        turn_rad=turn_rad,
        base_m=base,
        pieces=pieces,
        arm=_arm(mount),
        how=how,
    )


def _mount_of(plan: Plan, site: str, device: str) -> SiteMount | None:
    return next((one for one in plan.mounts if (one.site, one.device) == (site, device)), None)


def _place(plan: Plan, site: str, mount: SiteMount | None) -> tuple[Point, bool]:
    """Its place from above, and whether anybody measured that."""
    if mount is not None and mount.pose is not None:
        return mount.pose.base_m[:2], True
    part = next((one.part for one in plan.sites if one.name == site), "") or part_named(site)
    right, forward = _PLACES.get(part, (0.40, 0.30))
    side = side_named(site)
    middle = side == "middle" and part in ("head", "chin", "lip", "tongue", "trunk")
    return (0.0 if middle else -right if side == "left" else right, forward), False


def _at(sites: Sequence[str]) -> Message:
    return message(SetupPictures.at_sites, sites=names(sites))


def _held(mount: SiteMount | None) -> tuple[Message, ...]:
    if mount is None or mount.choice is None:
        return ()
    if mount.choice.arm is None and mount.choice.mount == mount.choice.on:
        return (message(SetupPictures.stands_on, on=Name(mount.choice.on)),)
    return (message(SetupPictures.held_by, mount=Name(mount.choice.mount), on=named(mount.choice.on)),)


def _arm(mount: SiteMount | None) -> tuple[Point, ...]:
    arm = mount.choice.arm if mount is not None and mount.choice is not None else None
    return tuple(point[:2] for point in arm.points_m) if arm is not None else ()


def _unplaced(measured: bool) -> tuple[Message, ...]:
    return () if measured else (message(SetupPictures.unplaced),)


def setup_picture(plan: Plan, items: Sequence[Item], size_mm: tuple[float, float] = (92.0, 92.0)) -> dict[str, Any]:
    """The picture with its list, for the template.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    items : sequence of Item
        What is set up.
    size_mm : tuple of float
        Paper width and height.

    Returns
    -------
    dict
        Drawing, caption, and for each number the device and what is to know about its place.
    """
    hub = _hub(plan)
    told = tuple(message(SetupPictures.item, numbers=names(one.numbers), what=one.what, how=one.how) for one in items)
    alt = tell(SetupPictures.alt, items=told)
    svg = _drawing(
        plan.room, items, plan.room.hub_at_m[:2] if hub and plan.room and plan.room.hub_at_m else None, size_mm, alt
    )
    rows: list[list[Any]] = [
        [list(one.numbers), say(one.what), " ".join(say(line) for line in one.how)] for one in items
    ]
    if hub:
        rows.append([["H"], tell(SetupPictures.hub, hub=Name(hub)), ""])
    return {
        "drawing": {"svg": svg, "alt": alt, "width_mm": width_mm(svg)},
        "caption": tell(SetupPictures.caption, measured=any(one.measured for one in items)),
        "rows": rows,
    }


def _hub(plan: Plan) -> str:
    """Name of the hub where the room tells its place."""
    if plan.room is None or plan.room.hub_at_m is None or plan.sharing is None or plan.sharing.wiring is None:
        return ""
    return next((wire.hub for wire in plan.sharing.wiring.wires if wire.socket), "")


@dataclass(frozen=True)
class _Paper:
    """Metres of the room, from above, as millimetres of paper."""

    drawing: drawsvg.Drawing
    origin: Point
    scale: float

    def at(self, point: Point) -> Point:
        return round(self.origin[0] + point[0] * self.scale, 2), round(self.origin[1] - point[1] * self.scale, 2)

    def area(self, points: Sequence[Point], fill: str, ink: str, width: float, dashed: bool = False) -> None:
        import drawsvg

        more = {"stroke_dasharray": "1.4 1.1"} if dashed else {}
        flat = [number for point in points for number in self.at(point)]
        self.drawing.append(
            drawsvg.Lines(*flat, close=True, fill=fill, stroke=ink, stroke_width=width, stroke_linejoin="round", **more)
        )

    def way(self, points: Sequence[Point], ink: str, width: float) -> None:
        import drawsvg

        flat = [number for point in points for number in self.at(point)]
        ends = {"stroke_linejoin": "round", "stroke_linecap": "round"}
        self.drawing.append(drawsvg.Lines(*flat, fill="none", stroke=ink, stroke_width=round(width, 2), **ends))

    def round(self, centre: Point, across_m: float, deep_m: float, fill: str, ink: str, width: float) -> None:
        import drawsvg

        half = round(across_m * self.scale, 2), round(deep_m * self.scale, 2)
        self.drawing.append(drawsvg.Ellipse(*self.at(centre), *half, fill=fill, stroke=ink, stroke_width=width))


def _drawing(
    room: Room | None, items: Sequence[Item], hub: Point | None, size_mm: tuple[float, float], alt: str
) -> str:
    import drawsvg

    width, height = size_mm
    drawing = drawsvg.Drawing(width, height, origin=(0, 0))
    drawing.set_render_size(f"{width}mm", f"{height}mm")
    drawing.append_title(alt)
    tops = _tops(room, items)
    low, high = _extent(room, items, hub, tops)
    scale = min((width - 2 * _EDGE_MM) / (high[0] - low[0]), (height - 2 * _EDGE_MM) / (high[1] - low[1]))
    origin = (width / 2 - (low[0] + high[0]) / 2 * scale, height / 2 + (low[1] + high[1]) / 2 * scale)
    paper = _Paper(drawing, origin, scale)
    _clock(drawing, size_mm, origin[0])
    _player(paper, room)
    for top in tops:
        paper.area(_corners(top), "none", _GREY, 0.5)
    for item in items:
        _held_from(paper, item)
    shapes = [spot for item in items for spot in _device(paper, item)]
    if hub is not None:
        shapes.append(_hub_box(paper, hub))
    _numbers(paper, items, shapes, size_mm, hub)
    return str(drawing.as_svg())


def _tops(room: Room | None, items: Sequence[Item]) -> list[Surface]:
    """Trays and tables on which something stands, or that somebody sits at: the floor is everywhere."""
    if room is None:
        return []
    return [one for one in room.surface if one.kind != "floor" and any(_within(item.at, one) for item in items)]


def _within(point: Point, top: Surface) -> bool:
    left, near = top.corner_m[:2]
    return left <= point[0] <= left + top.size_m[0] and near <= point[1] <= near + top.size_m[1]


def _corners(top: Surface) -> list[Point]:
    left, near = top.corner_m[:2]
    wide, deep = top.size_m
    return [(left, near), (left + wide, near), (left + wide, near + deep), (left, near + deep)]


def _extent(
    room: Room | None, items: Sequence[Item], hub: Point | None, tops: Sequence[Surface]
) -> tuple[Point, Point]:
    """What the picture must hold: the seat, the player, everything set up, and the trays that carry something."""
    half = _half(room)
    points: list[Point] = [(-half - 0.03, -0.09), (half + 0.03, 0.52)]
    points += [point for item in items for point in (item.at, *item.arm)]
    points += [corner for top in tops for corner in _corners(top)]
    points += [hub] if hub is not None else []
    lows, highs = [min(axis) for axis in zip(*points, strict=True)], [max(axis) for axis in zip(*points, strict=True)]
    return (lows[0], lows[1]), (highs[0], highs[1])


def _half(room: Room | None) -> float:
    """Half the distance between the armrests."""
    return room.armrests_apart_m / 2 if room is not None and room.armrests_apart_m else 0.26


def _clock(drawing: drawsvg.Drawing, size_mm: tuple[float, float], middle: float) -> None:
    """Hours at the edges: 12 is straight ahead of the player's middle line."""
    import drawsvg

    width, height = size_mm
    for hour, at in (
        (12, (middle, 4.6)),
        (3, (width - 3.0, height / 2)),
        (6, (middle, height - 1.0)),
        (9, (3.0, height / 2)),
    ):
        bold = {"font_weight": "bold"} if hour == 12 else {}
        size = 5.0 if hour == 12 else 3.6
        ink = "black" if hour == 12 else "#595959"
        drawing.append(drawsvg.Text(str(hour), size, *at, text_anchor="middle", font_family=FONT, fill=ink, **bold))
    x = middle + 5.5
    drawing.append(drawsvg.Line(x, 5.6, x, 1.8, stroke="black", stroke_width=0.7))
    drawing.append(drawsvg.Lines(x, 0.4, x - 1.2, 2.8, x + 1.2, 2.8, close=True, fill="black"))


def _player(paper: _Paper, room: Room | None) -> None:
    """Seat with armrests, then the player in pale grey: orientation, not measure."""
    half = _half(room)
    left, back, wide, deep = _SEAT
    wide = min(wide, 2 * half - 0.04)
    left = -wide / 2
    paper.area(
        [(left, back), (left + wide, back), (left + wide, back + deep), (left, back + deep)], "white", _GREY, 0.5
    )
    paper.area([(left, back - 0.05), (left + wide, back - 0.05), (left + wide, back), (left, back)], _GREY, _GREY, 0.3)
    front = room.armrest_front_m if room is not None and room.armrest_front_m else 0.36
    for way in (-1, 1):
        paper.way([(way * half, 0.06), (way * half, front)], _GREY, 2.2)
    for way in (-1, 1):
        paper.way([(way * 0.09, 0.10), (way * 0.11, 0.46)], _PALE, 0.13 * paper.scale)
        paper.way([(way * 0.11, 0.50), (way * 0.11, 0.66)], _PALE, 0.085 * paper.scale)
        paper.way([(way * 0.20, 0.06), (way * 0.25, 0.16), (way * 0.23, 0.36)], _PALE, 0.08 * paper.scale)
    paper.round((0.0, 0.06), 0.23, 0.10, _PALE, _PALE, 0.3)
    paper.round((0.0, 0.10), 0.085, 0.105, "white", _GREY, 0.6)
    paper.area([(-0.022, 0.20), (0.0, 0.232), (0.022, 0.20)], "white", _GREY, 0.6)


def _held_from(paper: _Paper, item: Item) -> None:
    """The arm that holds it, from its clamp."""
    import drawsvg

    if not item.arm:
        return
    paper.way([*item.arm, item.at], "black", 1.5)
    paper.way([*item.arm, item.at], "white", 0.7)
    x, y = paper.at(item.arm[0])
    paper.drawing.append(drawsvg.Rectangle(x - 1.4, y - 1.4, 2.8, 2.8, fill="black"))


Spot = tuple[float, float, float]
"""Middle and radius of what takes up room on paper."""


def _device(paper: _Paper, item: Item) -> list[Spot]:
    """A stick as its base with a mark at its front, switches as round faces, a controller as a long box."""
    import drawsvg

    length, width = (max(side / 2 * paper.scale, _LEAST_MM) / paper.scale for side in item.base_m)
    spots = []
    for place in range(item.pieces):
        aside = (place - (item.pieces - 1) / 2) * 2.1 * width
        centre = _moved(item.at, item.turn_rad, aside, 0.0)
        x, y = paper.at(centre)
        if item.kind == "switch":
            paper.drawing.append(
                drawsvg.Circle(x, y, round(width * paper.scale, 2), fill="white", stroke="black", stroke_width=0.7)
            )
            paper.drawing.append(
                drawsvg.Circle(
                    x, y, round(0.45 * width * paper.scale, 2), fill="none", stroke="black", stroke_width=0.35
                )
            )
        else:
            wide = width * (1.7 if item.kind == "controller" else 1.0)
            corners = [
                _moved(centre, item.turn_rad, *one)
                for one in ((-wide, -length), (wide, -length), (wide, length), (-wide, length))
            ]
            paper.area(corners, "white", "black", 0.7, dashed=not item.measured)
            tip = ((0.0, length), (0.45 * wide, 0.35 * length), (-0.45 * wide, 0.35 * length))
            front = [_moved(centre, item.turn_rad, *one) for one in tip]
            paper.area(front, "black", "black", 0.2)
            paper.drawing.append(drawsvg.Circle(x, y, 0.9, fill="black"))
        spots.append((x, y, max(length, width) * paper.scale * 1.2))
    return spots


def _moved(point: Point, turn_rad: float, right: float, forward: float) -> Point:
    x, y = rotated(right, forward, turn_rad)
    return point[0] + x, point[1] + y


def _hub_box(paper: _Paper, hub: Point) -> Spot:
    import drawsvg

    x, y = paper.at(hub)
    paper.drawing.append(
        drawsvg.Rectangle(x - 4.0, y - 2.4, 8.0, 4.8, rx=1, fill="white", stroke="black", stroke_width=0.7)
    )
    return x, y, 4.2


def _numbers(
    paper: _Paper, items: Sequence[Item], shapes: Sequence[Spot], size_mm: tuple[float, float], hub: Point | None
) -> None:
    """Each number in a circle beside its device, on nothing else, with a line to it."""
    import drawsvg

    width, height = size_mm
    middle = paper.origin[0]
    hours = (
        (middle, 3.0),
        (middle + 5.0, 3.0),
        (3.0, height / 2 - 1),
        (width - 3.0, height / 2 - 1),
        (middle, height - 2.0),
    )
    taken = [*shapes, *((x, y, 4.0) for x, y in hours)]
    for number, at in [(number, item.at) for item in items for number in item.numbers]:
        target = paper.at(at)
        x, y = _free(target, taken, size_mm)
        taken.append((x, y, _MARK_MM + 0.3))
        paper.drawing.append(drawsvg.Line(*target, x, y, stroke="black", stroke_width=0.4))
        paper.drawing.append(drawsvg.Circle(*target, 0.8, fill="black"))
        paper.drawing.append(drawsvg.Circle(x, y, _MARK_MM, fill="white", stroke="black", stroke_width=0.7))
        _bold(paper.drawing, number, (x, round(y + 1.5, 2)))
    if hub is not None:
        x, y = paper.at(hub)
        _bold(paper.drawing, "H", (x, round(y + 1.5, 2)))


def _bold(drawing: drawsvg.Drawing, text: str, at: Point) -> None:
    import drawsvg

    drawing.append(
        drawsvg.Text(text, _DIGIT_MM, *at, text_anchor="middle", font_family=FONT, font_weight="bold", fill="black")
    )


def _free(target: Point, taken: Sequence[Spot], size_mm: tuple[float, float]) -> Point:
    """The nearest place for a marker that touches nothing drawn before it."""
    width, height = size_mm
    for step in range(4, 60):
        for turn in range(16):
            way = math.pi / 8 * turn + math.pi / 4
            x, y = target[0] + 1.4 * step * math.cos(way), target[1] - 1.4 * step * math.sin(way)
            inside = _MARK_MM < x < width - _MARK_MM and _MARK_MM < y < height - _MARK_MM
            if inside and all(math.dist((x, y), one[:2]) > one[2] + _MARK_MM for one in taken):
                return round(x, 2), round(y, 2)
    return target
