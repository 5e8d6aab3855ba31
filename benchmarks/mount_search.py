"""Search for clamp points against a straightforward Python loop over the same formulas, in the same run.

12 tubes and edges of an invented room x 6 arms x 24 places of the elbow, 6 keep-outs of which some are passed by as the seat
tilts; every tube and edge is a body that no link passes through. The loop is timed on one arm in so many and scaled. Prints both
times, their ratio, and the largest difference of the best cost and of the ends of the ranges.
"""

from __future__ import annotations

import itertools
import math
import time

import numpy as np

from stickwright.model.kit import Mount
from stickwright.model.mounting import Pose
from stickwright.model.room import Room
from stickwright.mounting.bodies import CLAMP_M
from stickwright.mounting.carried import ASIDE_M, HEAD_M, LEAST_OPEN_RAD, PART_M, UNMEASURED_BASE_M
from stickwright.mounting.search import CLAMP_STEP_M, HALF_ARM_M, SWIVELS, arm_reaches, ranked_cost_m

THINGS, LENGTH_MM = 12, 600
REACHED, NOT_REACHED = 6, 4
"""Pairs of arm and tube or edge that the loop does too."""
STEP_RAD = math.radians(1.0)


def the_room(rng: np.random.Generator) -> Room:
    """Tubes round a seat that tilts by 10 degrees; keep-outs of the seat and of the room."""
    tubes, edges = [], []
    for number in range(THINGS):
        start = rng.uniform([-450, -100, -100], [450, 500, 500])
        way = rng.normal(size=3)
        end = start + LENGTH_MM * way / np.linalg.norm(way)
        line = {"name": f"line {number}", "from_mm": start.tolist(), "to_mm": end.tolist(), "moves_with": "seat"}
        if number % 3:
            tubes.append({**line, "diameter_mm": 25.0})
        else:
            edges.append({**line, "thickness_mm": 20.0})
    boxes = []
    for number in range(6):
        low = rng.uniform([-500, -200, 0], [400, 500, 600])
        high = low + rng.uniform(60, 200, 3)
        boxes.append(
            {"name": f"box {number}", "kind": "other", "low_mm": low.tolist(), "high_mm": high.tolist(),
             "moves_with": "seat" if number % 3 else "room"}
        )  # fmt: skip
    return Room.model_validate(
        {
            "tilt_from_deg": 10,
            "tilt_to_deg": 20,
            "tilt_pivot_mm": [0, 200, -100],
            "tube": tubes,
            "edge": edges,
            "keep_out": boxes,
        }
    )


def the_mounts() -> list[Mount]:
    lengths = [[140, 120], [220, 200], [300, 250], [180, 260], [200, 150, 150], [350]]
    return [
        Mount.model_validate(
            {
                "name": f"arm {number}",
                "kind": "friction arm",
                "links_mm": links,
                "tube_mm": [16, 40],
                "edge_mm": [5, 40],
            }
        )
        for number, links in enumerate(lengths)
    ]


def plain_distance(start, end, low, high) -> float:  # type: ignore[no-untyped-def]
    """Segment to box by narrowing thirds: the squared distance along a segment is convex."""

    def off(share: float) -> float:
        total = 0.0
        for axis in range(3):
            value = start[axis] + share * (end[axis] - start[axis])
            gap = max(low[axis] - value, 0.0, value - high[axis])
            total += gap * gap
        return total

    left, right = 0.0, 1.0
    for _ in range(60):
        third = (right - left) / 3
        if off(left + third) <= off(right - third):
            right -= third
        else:
            left += third
    return math.sqrt(off(0.5 * (left + right)))


def plain_tilted(point, turn, pivot):  # type: ignore[no-untyped-def]
    cos, sin = math.cos(turn), math.sin(turn)
    y, z = point[1] - pivot[1], point[2] - pivot[2]
    return (point[0], pivot[1] + y * cos - z * sin, pivot[2] + y * sin + z * cos)


def plain_elbow(clamp, end, lower, upper, swivel):  # type: ignore[no-untyped-def]
    way = [e - c for c, e in zip(clamp, end, strict=True)]
    distance = math.sqrt(sum(value * value for value in way))
    along = [value / distance for value in way]
    level = math.hypot(along[0], along[1])
    up = [-along[2] * along[0] / level, -along[2] * along[1] / level, level]
    side = [
        along[1] * up[2] - along[2] * up[1], along[2] * up[0] - along[0] * up[2], along[0] * up[1] - along[1] * up[0]
    ]  # fmt: skip
    at_clamp = math.acos((lower**2 + distance**2 - upper**2) / (2 * lower * distance))
    foot, radius = lower * math.cos(at_clamp), lower * math.sin(at_clamp)
    return tuple(
        c + foot * a + radius * (math.cos(swivel) * u + math.sin(swivel) * s)
        for c, a, u, s in zip(clamp, along, up, side, strict=True)
    )


def plain_clearance(points, room: Room) -> float:  # type: ignore[no-untyped-def]
    """Of an arm of the seat from every keep-out, at every degree of tilt for those that stay behind."""
    least = math.inf
    turns = [
        room.tilt_from_rad + k * STEP_RAD for k in range(round((room.tilt_to_rad - room.tilt_from_rad) / STEP_RAD) + 1)
    ]
    for box in room.keep_out:
        for start, end in itertools.pairwise(points):
            if box.moves_with == "seat":
                least = min(least, plain_distance(start, end, box.low_m, box.high_m))
                continue
            pivot = room.tilt_pivot_m
            radius = max(math.hypot(p[1] - pivot[1], p[2] - pivot[2]) for p in (start, end))  # type: ignore[index]
            for turn in turns:
                one, other = plain_tilted(start, turn, pivot), plain_tilted(end, turn, pivot)
                least = min(least, max(plain_distance(one, other, box.low_m, box.high_m) - STEP_RAD * radius / 2, 0.0))
    return least - HALF_ARM_M


def plain_clear_of_itself(points, base, contact) -> bool:  # type: ignore[no-untyped-def]
    """Whether no link comes nearer than half its thickness to a level device, the part that works it, or (but the last) the ball."""
    long, wide = UNMEASURED_BASE_M
    up = contact[2] - base[2]
    low = (base[0] - max(wide / 2, ASIDE_M), base[1] - max(long / 2, ASIDE_M), base[2])
    high = (base[0] + max(wide / 2, ASIDE_M), base[1] + max(long / 2, ASIDE_M), base[2] + up + PART_M)
    ball_low = (base[0] - HALF_ARM_M, base[1] - HALF_ARM_M, base[2] - HEAD_M)
    ball_high = (base[0] + HALF_ARM_M, base[1] + HALF_ARM_M, base[2])
    pieces = list(itertools.pairwise(points))
    return all(plain_distance(a, b, low, high) >= HALF_ARM_M - 1e-9 for a, b in pieces) and all(
        plain_distance(a, b, ball_low, ball_high) >= HALF_ARM_M - 1e-9 for a, b in pieces[:-1]
    )


def plain_off_rod(point, start, end) -> float:  # type: ignore[no-untyped-def]
    """Of a point from the middle line of a tube or edge."""
    way = [b - a for a, b in zip(start, end, strict=True)]
    share = sum((p - a) * w for p, a, w in zip(point, start, way, strict=True)) / sum(w * w for w in way)
    share = min(max(share, 0.0), 1.0)
    return math.dist(point, [a + share * w for a, w in zip(start, way, strict=True)])


def plain_apart(one, other, start, end) -> float:  # type: ignore[no-untyped-def]
    """Link to tube by narrowing thirds: the distance to a line is convex along the link."""
    left, right = 0.0, 1.0

    def off(share: float) -> float:
        return plain_off_rod([a + share * (b - a) for a, b in zip(one, other, strict=True)], start, end)

    for _ in range(60):
        third = (right - left) / 3
        if off(left + third) <= off(right - third):
            right -= third
        else:
            left += third
    return off(0.5 * (left + right))


def plain_clear_of_rods(points, thing, room: Room) -> bool:  # type: ignore[no-untyped-def]
    """Whether no link comes nearer than half its thickness to a tube or edge; to its own beyond the clamp. All move with the seat."""
    for rod in (*room.tube, *room.edge):
        radius = (rod.diameter_m if hasattr(rod, "diameter_m") else rod.thickness_m) / 2
        pieces = list(itertools.pairwise(points))
        if rod.name == thing.name:
            share = min(1.0, CLAMP_M / math.dist(*pieces[0]))
            pieces[0] = (tuple(a + share * (b - a) for a, b in zip(*pieces[0], strict=True)), pieces[0][1])
        if any(plain_apart(a, b, rod.from_m, rod.to_m) - radius < HALF_ARM_M - 1e-9 for a, b in pieces):
            return False
    return True


def least_m(lower: float, upper: float) -> float:
    """From clamp to ball with the elbow folded as far as it goes, by the cosine rule."""
    return math.sqrt(lower**2 + upper**2 - 2 * lower * upper * math.cos(LEAST_OPEN_RAD))


def clamp_points(thing):  # type: ignore[no-untyped-def]
    """Distances along a tube or edge, every 5 mm and at its end."""
    length = math.dist(thing.from_m, thing.to_m)
    return [k * CLAMP_STEP_M for k in range(math.ceil((length - 1e-9) / CLAMP_STEP_M))] + [length]


def arms_within(mount: Mount, thing, end) -> int:  # type: ignore[no-untyped-def]
    """How many arms the loop would have to look at."""
    length, count = math.dist(thing.from_m, thing.to_m), 0
    for along in clamp_points(thing):
        clamp = [a + along / length * (b - a) for a, b in zip(thing.from_m, thing.to_m, strict=True)]
        distance = math.dist(clamp, end)
        for cut in range(1, len(mount.links_m)) if len(mount.links_m) > 1 else [0]:
            lower, upper = sum(mount.links_m[:cut]), sum(mount.links_m[cut:])
            if max(least_m(lower, upper) if cut else 0.0, 1e-6) <= distance <= 0.9 * (lower + upper):
                count += SWIVELS if cut else 1
    return count


def plain_search(mount: Mount, thing, pose: Pose, room: Room):  # type: ignore[no-untyped-def]
    """Least cost and the free stretches of one tube, by trying everything."""
    base, contact = pose.base_m, pose.contact_m
    end = (base[0], base[1], base[2] - HEAD_M)
    length = math.dist(thing.from_m, thing.to_m)
    alongs = clamp_points(thing)
    cuts = range(1, len(mount.links_m)) if len(mount.links_m) > 1 else [0]
    best, free, tried = math.inf, [], 0
    for along in alongs:
        clamp = [a + along / length * (b - a) for a, b in zip(thing.from_m, thing.to_m, strict=True)]
        distance = math.dist(clamp, end)
        somewhere = False
        for cut in cuts:
            lower, upper = sum(mount.links_m[:cut]), sum(mount.links_m[cut:])
            if not max(least_m(lower, upper) if cut else 0.0, 1e-6) <= distance <= 0.9 * (lower + upper):
                continue
            for k in range(SWIVELS if cut else 1):
                tried += 1
                elbow = [plain_elbow(clamp, end, lower, upper, 2 * math.pi * k / SWIVELS)] if cut else []
                points = [tuple(clamp), *elbow, end]
                clear = plain_clearance(points, room)
                if (
                    clear >= 0.0
                    and plain_clear_of_itself(points, base, contact)
                    and plain_clear_of_rods(points, thing, room)
                ):
                    somewhere = True
                    best = min(best, float(ranked_cost_m(distance, lower + upper, clear)))
        free.append(somewhere)
    edges = []
    for k, one in enumerate(free):
        if one and (k == 0 or not free[k - 1]):
            edges.append(alongs[k])
        if one and (k + 1 == len(free) or not free[k + 1]):
            edges.append(alongs[k])
    return best, edges, tried


def main() -> None:
    rng = np.random.default_rng(5)
    room, mounts = the_room(rng), the_mounts()
    at = (0.22, 0.42, 0.22)
    pose = Pose("hand", (at[0], at[1], at[2] + 0.05), at, 0.0, 0.0, 0.004, math.acos(0.9))
    begun = time.perf_counter()
    found = arm_reaches(pose, room, mounts)
    fast = time.perf_counter() - begun
    things = [*room.tube, *room.edge]
    everything = [(mount, reach, thing) for mount, reach in zip(mounts, found, strict=True) for thing in things]
    held = [thing.name in {one.clamp for one in reach.poses} for _, reach, thing in everything]
    picks = [
        rng.choice(np.flatnonzero(np.array(held) == want), count, replace=False)
        for want, count in ((True, REACHED), (False, NOT_REACHED))
    ]
    sample = [everything[int(k)] for k in np.concatenate(picks)]
    worst, cramped, tried, begun = 0.0, 0, 0, time.perf_counter()
    for mount, reach, thing in sample:
        best, edges, arms = plain_search(mount, thing, pose, room)
        tried += arms
        ours = [one for one in reach.poses if one.clamp == thing.name]
        ends = [value for one in reach.ranges if one.clamp == thing.name for value in (one.from_m, one.to_m)]
        assert len(ends) == len(edges), (mount.name, thing.name, ends, edges)
        assert bool(ours) == math.isfinite(best), (mount.name, thing.name, best)
        if ours:
            length = sum(mount.links_m)
            cost = float(ranked_cost_m(ours[0].straight_share * length, length, ours[0].clearance_m))
            worst = max(worst, abs(cost - best), *(abs(a - b) for a, b in zip(ends, edges, strict=True)))
            cramped += ours[0].clearance_m < 0.05
    spent = time.perf_counter() - begun
    every = sum(arms_within(mount, thing, (at[0], at[1], at[2] - HEAD_M)) for mount in mounts for thing in things)
    plain = spent * every / tried
    points = sum(math.ceil(math.dist(t.from_m, t.to_m) / CLAMP_STEP_M) + 1 for t in things)
    print(
        f"{len(things)} tubes and edges ({points} clamp points) x {len(mounts)} arms x {SWIVELS} swivels, {len(room.keep_out)} keep-outs"
    )
    print(f"reached from {sum(len(one.poses) for one in found)} of {len(everything)} pairs of arm and tube or edge")
    print(f"one call: {fast:.2f} s by the clock (wanted: below 1)")
    print(f"plain loop: {plain:.0f} s (scaled from {tried} of {every} arms: {len(sample)} of {len(everything)} pairs)")
    print(f"of {REACHED} best arms compared, {cramped} are ranked down for too little clearance")
    print(f"ratio {plain / fast:.0f}; largest difference of cost and of range ends {worst:.1e} (wanted: below 1e-9)")


if __name__ == "__main__":
    main()
