"""The room: how the player sits, what a mount can hold on to, what must stay free. Distances as taken with a tape.

Body frame: the origin is the seat reference point (where the middle of the back meets the seat), x to the player's right, y
forward, z up, with the seat level. What moves with the seat tilts with it; what moves with the base or the room does not.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from stickwright.model.measured import Measured, Plausible

__all__ = ["Edge", "KeepOut", "Landmark", "MovesWith", "Place", "Room", "Surface", "Tape", "Tube"]

Coordinate = Annotated[float, Plausible(-3.0, 3.0)]
Point = tuple[Coordinate, Coordinate, Coordinate]
Length = Annotated[float, Plausible(0.0, 3.0)]
Angle = Annotated[float, Plausible(-6.2832, 6.2832)]
MovesWith = Literal["seat", "base", "room"]
Material = Literal["wood", "steel", "smooth plastic", "rough plastic", "cloth", "carpet", "vinyl", "tiles", "skin"]


class Tube(Measured):
    """A straight free length of tube that a clamp could hold."""

    name: str = Field(min_length=1)
    from_m: Point
    """One end of the free length, from which distances along it are told."""
    to_m: Point
    diameter_m: Annotated[float, Plausible(0.001, 0.3)]
    moves_with: MovesWith = "seat"
    seating_part: bool | None = None
    """Whether it is the headrest, or a part of the seat that moves by itself (leg rest, footplate, recline): the seating clinic must
    agree before anything is mounted there."""
    not_for_clamps: str = ""
    """Why nothing may be clamped here: a quick release, a part the maker forbids, a headrest, a crash-tested fixing."""


class Edge(Measured):
    """An edge of a table or tray that a clamp could grip."""

    name: str = Field(min_length=1)
    from_m: Point
    to_m: Point
    thickness_m: Annotated[float, Plausible(0.001, 0.3)]
    depth_m: Length | None = None
    """How far in a clamp can reach before something is in its way."""
    moves_with: MovesWith = "room"
    seating_part: bool | None = None
    """As of a tube."""


class Surface(Measured):
    """A level surface that a base could stand on: table, chair tray, lap tray, floor."""

    name: str = Field(min_length=1)
    kind: Literal["table", "tray", "lap tray", "floor", "bed table"] = "table"
    corner_m: Point
    """Near left corner of its top, as the player sees it."""
    size_m: tuple[Length, Length]
    """Width to the right, depth forward."""
    material: Material | None = None
    mass_kg: Annotated[float, Plausible(0.0, 200.0)] | None = None
    fastened: bool = False
    """Whether it is itself bolted or clamped."""
    rated_kg: Annotated[float, Plausible(0.0, 500.0)] | None = None
    friction: Annotated[float, Field(ge=0, le=2)] | None = None
    """Between it and what it lies on."""
    base_friction: Annotated[float, Field(ge=0, le=2)] | None = None
    """Between it and the base of a device that stands on it."""
    moves_with: MovesWith = "room"


class KeepOut(Measured):
    """A box that nothing may enter."""

    name: str = Field(min_length=1)
    kind: Literal[
        "face", "neck", "chest", "chair control", "transfer side", "door", "tubing", "screen", "helper", "other"
    ]
    low_m: Point
    high_m: Point
    moves_with: MovesWith = "seat"


class Landmark(Measured):
    """A point that a family can find again: front of an armrest, a bolt, the edge of a table."""

    name: str = Field(min_length=1)
    at_m: Point
    moves_with: MovesWith = "seat"


class Tape(Measured):
    """One tape distance from a landmark."""

    landmark: str = Field(min_length=1)
    distance_m: Length


class Place(Measured):
    """Where a site's contact point is while the part rests, and how it moves."""

    site: str = Field(min_length=1)
    at_m: Point | None = None
    tape: tuple[Tape, ...] = ()
    """Distances to landmarks when the point itself was not measured: three give two answers, a fourth picks one."""
    forward_rad: Angle = 0.0
    """Where the part's own forward points, anticlockwise from straight ahead, seen from above."""
    slope_rad: Annotated[float, Plausible(-1.6, 1.6)] | None = None
    """Slope of the plane it moves in, towards the player; the player's file has it too."""
    moves_with: MovesWith = "seat"


class Room(Measured):
    """Posture, distances, what there is to hold on to, what must stay free."""

    posture: Literal["wheelchair", "chair", "armchair", "bed", "floor"] | None = None
    tilt_from_rad: Annotated[float, Plausible(-0.2, 1.6)] = 0.0
    """Tilt of the whole seat used in play: least."""
    tilt_to_rad: Annotated[float, Plausible(-0.2, 1.6)] = 0.0
    """Most."""
    tilt_pivot_m: Point | None = None
    seat_to_floor_m: Length | None = None
    seat_to_armrest_m: Length | None = None
    """Seat surface up to the armrest's top."""
    armrest_front_m: Length | None = None
    """Seat reference point forward to the armrest's front end."""
    armrests_apart_m: Length | None = None
    """Between the middles of the armrests."""
    seat_to_tray_m: Length | None = None
    seat_to_chin_m: Length | None = None
    seat_to_eyes_m: Length | None = None
    seat_to_elbow_m: Length | None = None
    """Seat surface up to the elbow, upper arm hanging; table and tray are compared with it."""
    trunk_to_tray_m: Length | None = None
    """Front of the trunk to the tray's edge."""
    table_height_m: Length | None = None
    """Above the floor."""
    width_m: Length | None = None
    """Of the chair over all, arms out."""
    narrowest_door_m: Length | None = None
    floor: Material | None = None
    tube: tuple[Tube, ...] = ()
    edge: tuple[Edge, ...] = ()
    surface: tuple[Surface, ...] = ()
    keep_out: tuple[KeepOut, ...] = ()
    landmark: tuple[Landmark, ...] = ()
    place: tuple[Place, ...] = ()
    hub_at_m: Point | None = None
    """Where the hub lies: stands in for the way of a cable that nobody laid a tape along."""
    chair_kg: Annotated[float, Plausible(2.0, 400.0)] | None = None
    player_kg: Annotated[float, Plausible(5.0, 400.0)] | None = None
    track_m: Annotated[float, Plausible(0.2, 1.5)] | None = None
    """Between the outer edges of the tyres that stand furthest apart."""
    rear_wheel_m: Coordinate | None = None
    """Seat reference point forward to where the rear wheels touch the floor; behind it with a minus."""
    front_wheel_m: Coordinate | None = None
    """The same of the front wheels."""
    tips_sideways_rad: Annotated[float, Plausible(0.01, 1.2)] | None = None
    """Slope at which chair and player tip sideways, as the seating clinic measured it; the smaller of both sides."""
    tips_back_rad: Annotated[float, Plausible(0.01, 1.2)] | None = None
    tips_forward_rad: Annotated[float, Plausible(0.01, 1.2)] | None = None
