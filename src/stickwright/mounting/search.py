"""Where a clamp could sit so that an arm holds a device in its place, and why there is no such point when there is none.

Every clamp point (5 mm apart along every tube and edge), every arm, the elbow all round. What does not tilt with the site is
no candidate when the tilt would carry the site away from it. A point is free when the arm and the base stay out of every
keep-out over the whole range of tilts, and the links out of what they carry and of trays, tables, the floor and tubes.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.arm_reasons import ArmReasons, Line
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.kit import Mount
from stickwright.model.mounting import ArmPose, Pose
from stickwright.model.room import Edge, MovesWith, Room, Tube
from stickwright.mounting.arm import (
    MOST_STRAIGHT_SHARE,
    elbows,
    joints_in_words,
    plate_joint,
    too_short_m,
    with_straight_joints,
)
from stickwright.mounting.bodies import BOARD_M, Bodies, bodies_of, unmeasured_boards
from stickwright.mounting.carried import HEAD_M, CarriedDevice, folded_m, head_of
from stickwright.mounting.clamping import clear_of_ends, too_little_room
from stickwright.mounting.clearance import Boxes, boxes_seen_from, clearances_m
from stickwright.mounting.frames import pivot_of, tilted, tilts_with_seat, turned
from stickwright.mounting.neck import Necks, least_bend_m, neck_joints, neck_points
from stickwright.mounting.neck_search import ITSELF, NeckFound, neck_search
from stickwright.mounting.ranking import HALF_ARM_M, ROOMY_M, ranked_cost_m
from stickwright.mounting.rules import shifts_m

__all__ = ["HALF_ARM_M", "HANGS_ON", "ArmReach", "ClampRange", "arm_reaches", "groupings", "ranked_cost_m"]

Array = NDArray[np.float64]
Point = tuple[float, float, float]

HANGS_ON = frozenset({"ArmReasons.runs_through", "ArmReasons.too_short", "ArmReasons.too_tight"})
"""Reasons that may go away with another figure of the arm than the assumed one."""
CLAMP_STEP_M = 0.005
SWIVELS = 24
"""Places of the elbow round the line from clamp to end, 15 degrees apart: both ways it can bend are among them."""
BASE_LINES = 5
BATCH = 8
FIRST_SWIVELS = (1, 6)
"""Most clamp points are free at the first swivel or by the sixth; the rest are tried together."""


@dataclass(frozen=True)
class ClampRange:
    """A stretch of a tube or edge on which the clamp could sit.

    Parameters
    ----------
    clamp : str
        Tube or edge.
    from_m, to_m : float
        Along it from its first end.
    """

    clamp: str
    from_m: float
    to_m: float


@dataclass(frozen=True)
class ArmReach:
    """What one mount can do for one pose.

    Parameters
    ----------
    mount : str
        Its name.
    poses : tuple of ArmPose
        The best way from each tube and edge, best first; none when nothing reaches.
    ranges : tuple of ClampRange
        Where the clamp could go.
    reasons : tuple of Message
        Why the other tubes and edges, or all of them, will not do.
    too_short_m : float or None
        How much longer the arm would have to be, from the best place that its clamp fits; None when it is long enough
        from somewhere or fits nowhere.
    assumed : tuple of Message
        What was not measured.
    """

    mount: str
    poses: tuple[ArmPose, ...]
    ranges: tuple[ClampRange, ...]
    reasons: tuple[Message, ...]
    too_short_m: float | None
    assumed: tuple[Message, ...] = ()


@dataclass
class _Places:
    """Clamp points of one mount and one grouping of its links, as the search goes on."""

    links: tuple[float, ...]
    at_m: Array
    carried: CarriedDevice
    bodies: Bodies
    distance_m: Array
    cost_m: Array = field(init=False)

    def __post_init__(self) -> None:
        self.cost_m = ranked_cost_m(self.distance_m, sum(self.links), np.inf)


@dataclass(frozen=True)
class _Found:
    """The best arm from one tube or edge."""

    cost_m: float
    place: int
    swivel: int
    links: tuple[float, ...]


def groupings(mount: Mount) -> tuple[tuple[float, ...], ...]:
    """The arm as one or two links: with more links, those beside each other are kept straight.

    Returns
    -------
    tuple of tuples of 1 or 2 floats
        Lengths in metre; none when the mount is no arm.

    Examples
    --------
    >>> groupings(Mount(name="three", kind="friction arm", links_mm=[100, 200, 300]))[0]
    (0.1, 0.5)
    """
    links = mount.links_m
    if not links:
        return ()
    if len(links) == 1 or mount.kind == "gooseneck":
        return ((float(sum(links)),),)
    return tuple((float(sum(links[:cut])), float(sum(links[cut:]))) for cut in range(1, len(links)))


def arm_reaches(
    pose: Pose,
    room: Room,
    mounts: Sequence[Mount],
    *,
    moves_with: MovesWith = "seat",
    base_m: Sequence[float] | None = None,
) -> tuple[ArmReach, ...]:
    """Ways to hold a device in its place with each of some arms, or why there is none.

    Parameters
    ----------
    pose : Pose
        Where the base must be.
    room : Room
    mounts : sequence of Mount
        Those without links reach nowhere.
    moves_with : {"seat", "base", "room"}
        What the site moves with.
    base_m : sequence of 3 floats or None
        Length (forward), width and height of the base; None: only its middle is kept out of the keep-outs.

    Returns
    -------
    tuple of ArmReach
        One for each mount, in the order given. Points and joints of an arm that tilts with the seat are told with the seat
        level; those of one that does not, with the seat in the middle of its range of tilts.

    Notes
    -----
    No link passes through a tray, table, floor or tube, nor through where a part rests at another site; of what its clamp sits
    on, the first 50 mm belong to the clamp.

    Assumed: an arm is 20 mm thick, its last ball 30 mm below the base where the kit does not tell, the part that works the
    device 40 mm high; a gooseneck runs in two even bends, and its clamp can be turned about a tube but looks up from
    an edge.

    Examples
    --------
    >>> room = Room(tube=[{"name": "armrest", "from_mm": [300, 100, 200], "to_mm": [300, 400, 200], "diameter_mm": 22}])
    >>> arm = Mount(name="short arm", kind="friction arm", links_mm=[140, 120], tube_mm=[16, 40])
    >>> pose = Pose("hand", (0.25, 0.45, 0.35), (0.25, 0.45, 0.30), 0.0, 0.0, 0.004, 0.45)
    >>> found, = arm_reaches(pose, room, [arm])
    >>> found.poses[0].clamp, round(found.poses[0].along_m, 3), round(found.ranges[0].to_m, 3)
    ('armrest', 0.3, 0.3)
    """
    site = _Site(pose, room, moves_with, tuple(base_m) if base_m else None)
    return tuple(_one_mount(mount, site) for mount in mounts)


class _Site:
    """A pose in its room, as seen from what tilts and from what does not."""

    def __init__(self, pose: Pose, room: Room, moves_with: MovesWith, base_m: tuple[float, ...] | None) -> None:
        self.pose, self.room, self.base_m, self.moves_with = pose, room, base_m, moves_with
        self.seat = tilts_with_seat(moves_with)
        self.pivot, self.pivot_assumed = pivot_of(room)
        self.things: tuple[Tube | Edge, ...] = (*room.tube, *room.edge)
        self.lines = [_points_along(thing) for thing in self.things]
        self.boxes = {seen: boxes_seen_from(room, seen) for seen in (True, False)}
        self.ends = {seen: self.seen_from(seen, np.asarray(pose.base_m)) for seen in (True, False)}
        self.base_clear = {seen: self._base_clearance(seen) for seen in (True, False)}

    def carried(self, seat: bool, head_m: float) -> CarriedDevice:
        """The device as a body, as one sees it who tilts or does not."""
        axes = turned(self.pose.turn_rad, self.pose.tilt_rad)
        middle = self.ends[seat]
        seen = np.stack([self.seen_from(seat, np.asarray(self.pose.base_m) + way) - middle for way in axes.T], axis=1)
        return CarriedDevice(middle, seen, self.seen_from(seat, np.asarray(self.pose.contact_m)), self.base_m, head_m)

    def seen_from(self, seat: bool, points: Array) -> Array:
        """Points of the site as one sees them who tilts or does not; in the middle of the tilts when the two differ."""
        if seat is self.seat:
            return points
        middle = 0.5 * (self.room.tilt_from_rad + self.room.tilt_to_rad)
        return tilted(points, middle if self.seat else -middle, self.pivot)

    def shift_m(self) -> float:
        """Between what does not tilt alike: as the pivot is measured, or as it suits best where it is assumed."""
        return shifts_m(self.pose.contact_m, "seat", "room", self.room)[0]

    def _base_clearance(self, seat: bool) -> tuple[float, str]:
        """Of the base from the nearest keep-out: lines along its underside and top, or its middle alone."""
        frame = turned(self.pose.turn_rad, self.pose.tilt_rad)
        middle = np.asarray(self.pose.base_m)
        if self.base_m is None:
            start = end = middle[None]
        else:
            length, width, height = self.base_m
            across = np.linspace(-width / 2, width / 2, BASE_LINES)
            corners = [(x, y, z) for z in (0.0, height) for x in across for y in (-length / 2, length / 2)]
            lines = (middle + np.array(corners) @ frame.T).reshape(-1, 2, 3)
            start, end = lines[:, 0], lines[:, 1]
        return _nearest(self.seen_from(seat, start), self.seen_from(seat, end), self.boxes[seat])


def _points_along(thing: Tube | Edge) -> tuple[Array, Array]:
    """Distances along a tube or edge, and the points there."""
    start, end = np.asarray(thing.from_m), np.asarray(thing.to_m)
    length = float(np.linalg.norm(end - start))
    along = np.append(np.arange(0.0, length - 1e-9, CLAMP_STEP_M), length)
    share = along / length if length > 0.0 else np.zeros_like(along)
    return along, start + share[:, None] * (end - start)


def _nearest(start: Array, end: Array, boxes: Sequence[Boxes]) -> tuple[float, str]:
    """Least clearance of any segment and the keep-out it is from; infinity when there is none."""
    found, names = clearances_m(start, end, boxes)
    if not names:
        return float("inf"), ""
    least = found.min(axis=0)
    box = int(np.argmin(least))
    return float(least[box]), names[box]


def _one_mount(mount: Mount, site: _Site) -> ArmReach:
    links = groupings(mount)
    if not links:
        return ArmReach(mount.name, (), (), (message(ArmReasons.no_links, mount=Name(mount.name)),), None)
    if mount.tube_m is None and mount.edge_m is None:
        return ArmReach(mount.name, (), (), (message(ArmReasons.no_clamp, mount=Name(mount.name)),), None)
    reasons: list[Message] = []
    found: list[tuple[float, ArmPose]] = []
    ranges: list[ClampRange] = []
    short: list[float] = []
    enough = False
    for thing, (along, points) in zip(site.things, site.lines, strict=True):
        barred = _barred(mount, thing, site)
        if barred is not None:
            reasons.append(barred)
            continue
        on = clear_of_ends(mount, along)
        along, points = along[on], points[on]
        seen = tilts_with_seat(thing.moves_with)
        carried = site.carried(seen, head_of(mount))
        distance = np.linalg.norm(points - carried.ball_m, axis=1)
        bodies = bodies_of(site.room, site.pose.site, thing)
        options = [_Places(link, points, carried, bodies, distance) for link in links]
        if mount.kind == "gooseneck":
            neck = _neck_from(mount, thing, points, site, options[0])
            if neck.neck is not None and site.base_clear[seen][0] > 0.0:
                found.append((neck.cost_m, _neck_pose(thing, float(along[neck.place]), neck, neck.neck, site)))
                ranges.extend(_ranges(thing.name, along, neck.free))
                enough = True
                continue
            tight = _too_tight(mount, thing, neck)
            if tight is not None and site.base_clear[seen][0] > 0.0:
                reasons.append(tight)
                enough = True
                continue
            free, best, blocked = neck.free, None, neck.blocked
        else:
            free, best, blocked = _search(options, site.boxes[seen])
        if best is not None and site.base_clear[seen][0] > 0.0:
            found.append((best.cost_m, _arm_pose(mount, thing, along, points, best, site)))
            ranges.extend(_ranges(thing.name, along, free))
            enough = True
            continue
        reason, missing = _why_not(mount, thing, options, site.base_clear[seen], blocked)
        reasons.append(reason)
        if missing is None:
            enough = True
        else:
            short.append(missing)
    poses = tuple(one for _, one in sorted(found, key=lambda pair: pair[0]))
    poses = tuple(
        replace(
            pose,
            ranges_m=tuple((some.from_m, some.to_m) for some in ranges if some.clamp == pose.clamp),
            assumed=_assumed(mount, site, (pose,)),
        )
        for pose in poses
    )
    if not site.things:
        reasons.append(message(ArmReasons.nothing))
    return ArmReach(
        mount.name,
        poses,
        tuple(ranges),
        tuple(reasons),
        None if enough or not short else min(short),
        _assumed(mount, site, poses),
    )


def _assumed(mount: Mount, site: _Site, poses: Sequence[ArmPose]) -> tuple[Message, ...]:
    name = Name(mount.name)
    ball = mount.kind != "gooseneck" and mount.head_m is None and bool(poses)
    thick = message(MountAssumed.thickness, mount=name, thick_m=2 * HALF_ARM_M, head_m=HEAD_M if ball else None)
    out = [thick] if poses or site.room.keep_out else []
    if mount.kind == "gooseneck" and poses:
        bend = least_bend_m(mount)[1]
        out.append(message(MountAssumed.neck_shape, mount=name))
        out += [bend] if bend else []
    if site.base_m is None and site.room.keep_out:
        out.append(message(MountAssumed.base_size, site=Name(site.pose.site)))
    if poses:
        boards = unmeasured_boards(site.room)
        out += [message(MountAssumed.board, surface=Name(one), thick_m=BOARD_M) for one in boards]
    used = {pose.clamp for pose in poses}
    apart = tuple(
        Name(thing.name)
        for thing in site.things
        if thing.name in used and (thing.moves_with == "room") is not (site.moves_with == "room")
    )
    if apart and site.room.posture in (None, "wheelchair", "chair"):
        within = site.pose.may_be_off_m if np.isfinite(site.pose.may_be_off_m) else None
        out.append(message(MountAssumed.chair_place, holders=apart, mount=name, within_m=within))
    return (*out, *((site.pivot_assumed,) if site.pivot_assumed else ()))


def _line_of(thing: Tube | Edge) -> Line:
    return "tube" if isinstance(thing, Tube) else "edge"


def _barred(mount: Mount, thing: Tube | Edge, site: _Site) -> Message | None:
    """Why nothing of this mount can be clamped here, whatever its length; None when it can."""
    line, holder, name = _line_of(thing), Name(thing.name), Name(mount.name)
    if isinstance(thing, Tube) and thing.not_for_clamps:
        return message(ArmReasons.barred, line=line, holder=holder, why=Name(thing.not_for_clamps))
    size, held = (thing.diameter_m, mount.tube_m) if isinstance(thing, Tube) else (thing.thickness_m, mount.edge_m)
    if held is None:
        return message(ArmReasons.wrong_line, line=line, holder=holder, mount=name)
    low, high = sorted(held)
    if not low - 1e-9 <= size <= high + 1e-9:
        return message(ArmReasons.wrong_size, line=line, holder=holder, mount=name, size_m=size, low_m=low, high_m=high)
    if (no_room := too_little_room(mount, thing)) is not None:
        return no_room
    if tilts_with_seat(thing.moves_with) is not site.seat:
        shift, allowed = site.shift_m(), site.pose.may_be_off_m
        if shift > 0.0 and not shift <= allowed:
            return message(
                ArmReasons.moves_apart, line=line, holder=holder, site=Name(site.pose.site), shift_m=shift,
                allowed_m=allowed if np.isfinite(allowed) else None,
            )  # fmt: skip
    return None


def _within(option: _Places) -> NDArray[np.bool_]:
    inside: NDArray[np.bool_] = (option.distance_m >= max(folded_m(option.links), 1e-6)) & (
        option.distance_m <= MOST_STRAIGHT_SHARE * sum(option.links)
    )
    return inside


def _swivels(links: Sequence[float]) -> Array:
    return np.arange(SWIVELS if len(links) == 2 else 1, dtype=np.float64) * (2.0 * np.pi / SWIVELS)


def _arm_points(option: _Places, places: NDArray[np.intp], swivel_rad: Array) -> Array:
    """Clamp, elbow and end (clamp and end for one link) of some arms; shape (n, 2 or 3, 3)."""
    start = option.at_m[places]
    end = np.broadcast_to(option.carried.ball_m, start.shape)
    if len(option.links) == 1:
        return np.stack([start, end], axis=1)
    return np.stack([start, elbows(start, end, option.links, swivel_rad), end], axis=1)


def _clearance(
    points: Array, boxes: Sequence[Boxes], enough_m: float
) -> tuple[Array, NDArray[np.intp], tuple[str, ...]]:
    """Of each arm's surface from the nearest keep-out, which that is, and the names of all."""
    count, joints = points.shape[:2]
    start, end = points[:, :-1].reshape(-1, 3), points[:, 1:].reshape(-1, 3)
    found, names = clearances_m(start, end, boxes, enough_m + HALF_ARM_M)
    if not names:
        return np.full(count, np.inf), np.zeros(count, dtype=np.intp), ("",)
    each = found.reshape(count, joints - 1, -1).min(axis=1) - HALF_ARM_M
    return each.min(axis=1), each.argmin(axis=1), names


def _search(
    options: Sequence[_Places], boxes: Sequence[Boxes]
) -> tuple[NDArray[np.bool_], _Found | None, Counter[Message]]:
    """Which clamp points are free, the best arm, and which keep-outs stood in the way of how many."""
    free = np.zeros(len(options[0].at_m), dtype=bool)
    best: _Found | None = None
    blocked: Counter[Message] = Counter()
    for option in options:
        inside = _within(option)
        free |= _free(option, inside & ~free, boxes, blocked)
        best = _better(option, np.flatnonzero(inside & free), boxes, best)
    return free, best, blocked


def _free(
    option: _Places, open_: NDArray[np.bool_], boxes: Sequence[Boxes], blocked: Counter[Message]
) -> NDArray[np.bool_]:
    """Clamp points from which some swivel stays clear; a few swivels at a time, each only where none before it did."""
    free = np.zeros(len(open_), dtype=bool)
    swivels = _swivels(option.links)
    for some in np.split(swivels, FIRST_SWIVELS):
        places = np.flatnonzero(open_ & ~free)
        if not len(places) or not len(some):
            break
        each, turn = np.repeat(places, len(some)), np.tile(some, len(places))
        arms = _arm_points(option, each, turn)
        clear, which, names = _clearance(arms, boxes, 0.0)
        out = option.carried.clear_of(arms)
        good = np.flatnonzero((clear >= 0.0) & out)
        met, bodies = option.bodies.met_by(arms[good])
        free[each[good[met < 0]]] = True
        blocked.update(message(ArmReasons.keep_out, box=Name(names[box])) for box in which[clear < 0.0])
        blocked.update(bodies[body] for body in met[met >= 0])
        blocked[ITSELF] += int((~out & (clear >= 0.0)).sum())
    return free


def _better(option: _Places, places: NDArray[np.intp], boxes: Sequence[Boxes], best: _Found | None) -> _Found | None:
    """The cheapest arm: points in the order of what they cost at least, until none left can be cheaper."""
    swivels = _swivels(option.links)
    order = places[np.argsort(option.cost_m[places], kind="stable")]
    for some in _batches(order):
        if best is not None and option.cost_m[some[0]] >= best.cost_m:
            break
        each = np.repeat(some, len(swivels))
        arms = _arm_points(option, each, np.tile(swivels, len(some)))
        clear, _, _ = _clearance(arms, boxes, ROOMY_M)
        cost = ranked_cost_m(option.distance_m[each], sum(option.links), clear)
        cost[(clear < 0.0) | ~option.carried.clear_of(arms)] = np.inf
        good = np.flatnonzero(np.isfinite(cost))
        cost[good[option.bodies.met_by(arms[good])[0] >= 0]] = np.inf
        least = int(np.lexsort((-arms[:, 1, 2], _sticks_out_m(arms), np.round(cost, 9)))[0])
        if np.isfinite(cost[least]) and (best is None or cost[least] < best.cost_m):
            best = _Found(float(cost[least]), int(each[least]), least % len(swivels), option.links)
    return best


def _sticks_out_m(arms: Array) -> Array:
    """How far an elbow lies to the side beyond both ends of its arm: of arms that cost the same the narrowest is taken, for doors and
    for whoever passes."""
    aside = arms[:, :, 0]
    ends = aside[:, [0, -1]]
    out = np.maximum(aside.max(axis=1) - ends.max(axis=1), ends.min(axis=1) - aside.min(axis=1))
    return np.asarray(np.round(out, 6), dtype=np.float64)


def _batches(order: NDArray[np.intp]) -> Iterator[NDArray[np.intp]]:
    for first in range(0, len(order), BATCH):
        yield order[first : first + BATCH]


def _ranges(name: str, along: Array, free: NDArray[np.bool_]) -> list[ClampRange]:
    """Runs of clamp points beside each other that are free."""
    padded = np.concatenate([[False], free, [False]])
    turns = np.flatnonzero(np.diff(padded.astype(int)))
    return [
        ClampRange(name, float(along[a]), float(along[b - 1])) for a, b in zip(turns[::2], turns[1::2], strict=True)
    ]


def _arm_pose(mount: Mount, thing: Tube | Edge, along: Array, points: Array, best: _Found, site: _Site) -> ArmPose:
    """The best arm in full: exact clearance, joints in words."""
    seen = tilts_with_seat(thing.moves_with)
    carried = site.carried(seen, head_of(mount))
    place = np.array([best.place])
    option = _Places(best.links, points, carried, Bodies(), np.linalg.norm(points - carried.ball_m, axis=1))
    arm = _arm_points(option, place, _swivels(best.links)[[best.swivel]])[0]
    clear, name = _nearest(arm[:-1], arm[1:], site.boxes[seen])
    clear = clear - HALF_ARM_M
    base_clear, base_name = site.base_clear[seen]
    if base_clear < clear:
        clear, name = base_clear, base_name
    pose = site.pose
    joints = (
        joints_in_words(arm, pose.turn_rad, pose.tilt_rad)
        if len(arm) == 3
        else (plate_joint(pose.turn_rad, pose.tilt_rad),)
    )
    return ArmPose(
        clamp=thing.name,
        along_m=float(along[best.place]),
        points_m=with_straight_joints(arm, mount, best.links),
        joints=joints,
        clearance_m=clear,
        nearest=name,
        straight_share=float(option.distance_m[best.place]) / sum(best.links),
    )


def _neck_from(mount: Mount, thing: Tube | Edge, points: Array, site: _Site, places: _Places) -> NeckFound:
    """What one tube or edge offers a gooseneck."""
    seen = tilts_with_seat(thing.moves_with)
    along = tuple(np.subtract(thing.to_m, thing.from_m).tolist()) if isinstance(thing, Tube) else None
    return neck_search(
        points, places.carried, float(sum(mount.links_m)), least_bend_m(mount)[0], site.boxes[seen],
        along=along, bodies=places.bodies,
    )  # fmt: skip


def _too_tight(mount: Mount, thing: Tube | Edge, found: NeckFound) -> Message | None:
    """That it reaches but would have to be bent too tightly; None when that is not why."""
    least, assumed = least_bend_m(mount)
    if not found.widest_m < least * (1 - 1e-9):
        return None
    return message(
        ArmReasons.too_tight, line=_line_of(thing), holder=Name(thing.name), mount=Name(mount.name), least_m=least,
        radius_m=found.widest_m if found.widest_m > 0 else None, assumed=assumed is not None,
    )  # fmt: skip


def _neck_pose(thing: Tube | Edge, along_m: float, found: NeckFound, neck: Necks, site: _Site) -> ArmPose:
    """The best neck in full."""
    clear, name = min((found.clearance_m, found.nearest), site.base_clear[tilts_with_seat(thing.moves_with)])
    points = neck_points(neck)
    length = float(neck.straight_m.sum() + neck.bend_m.sum())
    joints = neck_joints(neck, plate_joint(site.pose.turn_rad, site.pose.tilt_rad))
    straight = float(np.linalg.norm(np.subtract(points[-1], points[0]))) / length
    return ArmPose(
        clamp=thing.name,
        along_m=along_m,
        points_m=points,
        joints=joints,
        clearance_m=clear,
        nearest=name,
        straight_share=straight,
    )


def _why_not(
    mount: Mount,
    thing: Tube | Edge,
    options: Sequence[_Places],
    base_clear: tuple[float, str],
    blocked: Counter[Message],
) -> tuple[Message, float | None]:
    """Why nothing goes from here, and how much too short the arm is when it is."""
    line, holder, name = _line_of(thing), Name(thing.name), Name(mount.name)
    if base_clear[0] <= 0.0:
        return message(ArmReasons.base_in, box=Name(base_clear[1])), None
    if blocked.total():
        body = min(blocked, key=lambda one: (-blocked[one], one == ITSELF, one.code, one.params))
        if body == ITSELF:
            return message(ArmReasons.runs_through, line=line, holder=holder, mount=name), None
        return message(ArmReasons.blocked, line=line, holder=holder, mount=name, by=body), None
    nearest = float(options[0].distance_m.min())
    short = min(too_short_m(nearest, option.links) for option in options)
    if short > 0.0:
        return message(ArmReasons.too_short, line=line, holder=holder, mount=name, missing_m=short), short
    furthest = float(options[0].distance_m.max())
    near = min(max(0.0, folded_m(option.links) - furthest) for option in options)
    if near == 0.0:
        return message(ArmReasons.no_point, line=line, holder=holder, mount=name), None
    return message(ArmReasons.too_near, line=line, holder=holder, mount=name, near_m=near), None
