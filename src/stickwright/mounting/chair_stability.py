"""What a mount that hangs outside the wheels takes from the chair's stability: statics only, beside the number, never a promise.

A chair tips when the line of its weight passes the contact of the wheels. The seating clinic measures the angle at which that
happens on a tilting table [iso-7176-1]; from that angle and the weights follows how much less it is with the mount.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.mount_checks import MountChecks, Side
from stickwright.codes.seating import Seating
from stickwright.model.mounting import Check
from stickwright.model.recorded import Finding
from stickwright.model.room import MovesWith, Room
from stickwright.mounting.rules import overhang_nm
from stickwright.units import STANDARD_GRAVITY

__all__ = ["ChairStability", "chair_stability", "outside_wheels", "stability_findings", "tips_with_mount_rad"]

Point = tuple[float, float, float]


@dataclass(frozen=True)
class ChairStability:
    """What is known of a chair's stability with one mount.

    Parameters
    ----------
    side : {"right", "left", "forward", "back"} or None
        Over which line of wheels it would tip; None when nothing hangs outside them, or the wheels were not measured.
    out_m : float
        How far outside that line the mount and its device hang.
    check : Check or None
        The moment that the mount adds against the one that keeps the chair standing on level ground.
    words : Message or None
        With the numbers; None when nothing can be said.
    question : Message or None
        The one measurement that would settle more; None when there is none.
    """

    side: Side | None = None
    out_m: float = 0.0
    check: Check | None = None
    words: Message | None = None
    question: Message | None = None


def outside_wheels(room: Room, point_m: Point) -> tuple[Side, float] | None:
    """Over which line of wheels a point hangs furthest out, and how far; None when it is inside all that were measured.

    Parameters
    ----------
    room : Room
        With the track, and how far forward the wheels touch the floor.
    point_m : tuple of 3 floats
        With the seat level; the wheels are as far to the right as to the left of the seat reference point.

    Examples
    --------
    >>> side, out = outside_wheels(Room(track_m=0.56), (0.40, 0.3, 0.2))
    >>> side, round(out, 3)
    ('right', 0.12)
    """
    x, y, _ = point_m
    out: list[tuple[float, Side]] = []
    if room.track_m is not None:
        out += [(x - room.track_m / 2, "right"), (-x - room.track_m / 2, "left")]
    if room.front_wheel_m is not None:
        out.append((y - room.front_wheel_m, "forward"))
    if room.rear_wheel_m is not None:
        out.append((room.rear_wheel_m - y, "back"))
    furthest, side = max(out, default=(0.0, "right"))
    return (side, furthest) if furthest > 1e-9 else None


def tips_with_mount_rad(
    kg: float, to_line_m: float, height_m: float, added_kg: float, out_m: float, added_height_m: float
) -> float:
    """Slope at which chair, player and mount together tip over a line of wheels.

    Parameters
    ----------
    kg, to_line_m, height_m : float
        Of chair and player: mass, level distance of its centre inside the line, height above the floor.
    added_kg, out_m, added_height_m : float
        Of mount and device: mass, how far outside the line, height above the floor.

    Returns
    -------
    float
        At which the common centre stands over the line; 0 or less when it tips on level ground.

    Notes
    -----
    Source: the line of weight through the wheel contact [iso-7176-1]; common centre of mass [hibbeler-statics].

    Examples
    --------
    100 kg with the centre 280 mm inside and 1 m up; 2 kg hung 120 mm outside, 700 mm up:

    >>> round(math.degrees(tips_with_mount_rad(100, 0.28, 1.0, 2, 0.12, 0.7)), 2)
    15.31
    """
    inside = (kg * to_line_m - added_kg * out_m) / (kg + added_kg)
    height = (kg * height_m + added_kg * added_height_m) / (kg + added_kg)
    return math.atan2(inside, height)


def chair_stability(room: Room, moves_with: MovesWith, point_m: Point, mass_kg: float) -> ChairStability:
    """What a mount on a chair takes from its stability, or the one measurement that would tell.

    Parameters
    ----------
    room : Room
    moves_with : {"seat", "base", "room"}
        Of what the mount is clamped to.
    point_m : tuple of 3 floats
        Where the device is; mount and device count as if all of it were there, which is more than they do.
    mass_kg : float
        Of both.

    Returns
    -------
    ChairStability
        Empty for what does not hang on a wheelchair, or nobody weighed.
    """
    if moves_with == "room" or room.posture != "wheelchair" or not mass_kg > 0:
        return ChairStability()
    if room.track_m is None and room.front_wheel_m is None and room.rear_wheel_m is None:
        return ChairStability(question=message(Seating.where_wheels, mass_kg=mass_kg))
    found = outside_wheels(room, point_m)
    if found is None:
        return ChairStability()
    side, out = found
    added = overhang_nm(out, mass_kg)
    said = message(
        Seating.hangs_out,
        side=side, mass_kg=mass_kg, out_m=out, added_nm=added, keeps_nm=None, before_rad=None, after_rad=None,
    )  # fmt: skip
    kg = None if room.chair_kg is None or room.player_kg is None else room.chair_kg + room.player_kg
    if kg is None:
        return ChairStability(side, out, None, said, message(Seating.weigh))
    centre = _centre(room, side)
    if centre is None:
        lacks = message(Seating.ask_slope, sideways=side in ("left", "right"))
        return ChairStability(side, out, _check(side, kg, room, added), said, lacks)
    to_line, height = centre
    if room.seat_to_floor_m is None:
        return ChairStability(
            side, out, _check(side, kg, room, added, to_line), said, message(Seating.seat_height)
        )  # fmt: skip
    before = math.atan2(to_line, height)
    after = tips_with_mount_rad(kg, to_line, height, mass_kg, out, point_m[2] + room.seat_to_floor_m)
    words = message(
        Seating.hangs_out, side=side, mass_kg=mass_kg, out_m=out, added_nm=added,
        keeps_nm=kg * STANDARD_GRAVITY * to_line, before_rad=before, after_rad=after,
    )  # fmt: skip
    return ChairStability(side, out, _check(side, kg, room, added, to_line), words)


def stability_findings(site: str, known: ChairStability) -> tuple[Finding, ...]:
    """What is to be asked about the chair's stability, and that it would tip where it stands.

    Parameters
    ----------
    site : str
        Whose device hangs on the chair.
    known : ChairStability

    Examples
    --------
    >>> [one.level for one in stability_findings("chin", ChairStability(question=message(Seating.weigh)))]
    ['query']
    """
    out = []
    name = Name(site)
    if known.check is not None and known.check.words is not None and not known.check.holds:
        out.append(Finding("fault", "stability", message(Seating.tips, site=name, check=known.check.words)))
    if known.question is not None:
        text = message(Seating.ask, site=name, known=known.words, question=known.question)
        out.append(Finding("query", "stability", text))
    return tuple(out)


def _centre(room: Room, side: Side) -> tuple[float, float] | None:
    """How far inside the line of wheels and how high the centre of chair and player is, from the measured slopes."""
    if side in ("left", "right"):
        if room.track_m is None or room.tips_sideways_rad is None:
            return None
        return room.track_m / 2, room.track_m / 2 / math.tan(room.tips_sideways_rad)
    if room.rear_wheel_m is None or room.front_wheel_m is None or room.front_wheel_m <= room.rear_wheel_m:
        return None
    if room.tips_back_rad is None or room.tips_forward_rad is None:
        return None
    back, forward = math.tan(room.tips_back_rad), math.tan(room.tips_forward_rad)
    height = (room.front_wheel_m - room.rear_wheel_m) / (back + forward)
    return height * (forward if side == "forward" else back), height


def _check(side: Side, kg: float, room: Room, added_nm: float, to_line_m: float | None = None) -> Check | None:
    """Moments about the line of wheels on level ground; sideways the centre is taken in the middle of the track."""
    assumed = None
    if to_line_m is None:
        if side not in ("left", "right") or room.track_m is None:
            return None
        to_line_m, assumed = (
            room.track_m / 2,
            message(MountAssumed.chair_centre),
        )
    keeps = kg * STANDARD_GRAVITY * to_line_m
    words = message(MountChecks.stability, side=side, added_nm=added_nm, keeps_nm=keeps)
    return Check(
        what="stability",
        push="weight",
        load=added_nm,
        limit=keeps,
        unit="nm",
        factor=keeps / added_nm,
        wanted=1.0,
        holds=keeps >= added_nm,
        words=words,
        assumed=assumed,
    )
