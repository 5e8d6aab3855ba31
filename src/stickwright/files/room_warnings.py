"""What is contradictory or half said of a room: names, places, tapes, shapes that cannot be, and the one distance that is most
missed. What is missing is asked about; the room is planned with all the same.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any, Literal

from stickwright.codes.file_tables import FileTables
from stickwright.codes.kinds import Kind
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.room_warnings import Axis, RoomWarnings
from stickwright.codes.warnings import Warnings
from stickwright.errors import BadInput, Problem
from stickwright.files.fields import typed_key
from stickwright.files.room_sizes import sides_of, size_warnings
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_points import TypedPoint, apart_m, typed_point, typed_points, typed_row
from stickwright.files.typed_tables import (
    Noticed,
    assigned,
    doubled_names,
    name_of,
    number,
    query,
    shown_name,
    tables,
    told_at,
    unknown,
)
from stickwright.files.typed_values import as_typed
from stickwright.model.player import Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Landmark, Place, Room, Surface, Tape

__all__ = ["room_warnings"]

_SAME_POINT_M = 0.001
_NOTICED_M = 0.010
"""A site's point is known to about so much; nearer to a surface nothing is asked."""
_SLAB_M = 0.050
"""No table or tray is thicker: deeper than this a part is under it, not in it."""
_TAPE_M = 0.020
"""Point and tape that differ by more: one of them is off."""
_LONGEST_M = 3.0
"""Of a tape and of a coordinate in a room file."""
_HEAVY_KG = {"chair_kg": 220.0, "player_kg": 200.0}
"""Heavier is asked about, never refused."""
_SLOPE_RAD = math.radians(5)
_UNDER_TABLES = ("knee", "thigh", "foot", "toe")
_NEAR_FACE = ("chin", "lip", "cheek", "tongue", "head")
_LONG: tuple[Literal["tube", "edge"], ...] = ("tube", "edge")
_AXES: tuple[Axis, ...] = ("x", "y", "z")
_Table = tuple[FieldPath, dict[str, Any]]


def room_warnings(room: TomlFile, player: TomlFile | None) -> list[Noticed]:
    """What is doubtful in a room file.

    Parameters
    ----------
    room : TomlFile
        The file as parsed.
    player : TomlFile or None
        The player's, for the names of the sites; None when it cannot be read.
    """
    noticed: list[Noticed] = []
    named: tuple[Kind, ...] = ("tube", "edge", "surface", "keep_out", "landmark")
    for key in named:
        noticed += doubled_names(room, tables(room.data, key), key)
    noticed += _place_warnings(room, player)
    noticed += _shape_warnings(room)
    noticed += _tilt_warnings(room)
    noticed += _chair_warnings(room)
    noticed += _sites_and_surfaces(room, player)
    noticed += size_warnings(room, sides_of(player))
    noticed += _most_missed(room, player)
    return noticed


def _sites(player: TomlFile | None) -> dict[str, dict[str, Any]]:
    found = tables(player.data, "site") if player is not None else ()
    return {name: site for _, site in found if (name := name_of(site))}


# ---- places and tapes


def _place_warnings(room: TomlFile, player: TomlFile | None) -> Iterator[Noticed]:
    known = tuple(_sites(player)) if player is not None else None
    landmarks = {name: spot for spot in tables(room.data, "landmark") if (name := name_of(spot[1]))}
    first: dict[str, FieldPath] = {}
    for path, place in tables(room.data, "place"):
        site = place.get("site")
        yield from unknown(room, (*path, "site"), site, known, "site", "player.toml")
        if isinstance(site, str) and site in first:
            found = message(RoomWarnings.second_place, site=shown_name(site), line=room.lines.line(first[site]))
            expected, remedy = message(RoomWarnings.one_place), message(RoomWarnings.delete_or_join)
            yield Problem(room.where((*path, "site")), found, expected, remedy)
        elif isinstance(site, str):
            first[site] = path
        yield from _tape_warnings(room, path, place, landmarks)
        yield from _slope_warnings(room, path, place, _sites(player).get(str(site)))


def _tape_warnings(
    room: TomlFile, path: FieldPath, place: dict[str, Any], landmarks: dict[str, _Table]
) -> Iterator[Noticed]:
    tapes = list(tables(place, "tape", path))
    point = typed_point(path, place, Place, "at_m")
    where, site = room.where(path), as_typed(place.get("site"))
    if typed_key(place, Place, "at_m") is None:
        if not tapes:
            yield query("place", where, message(RoomWarnings.empty_place))
        elif len(different := {as_typed(tape.get("landmark")) for _, tape in tapes}) < 3:
            yield query("place", where, message(RoomWarnings.few_landmarks, count=len(different), site=site))
        else:
            yield from _meeting(where, tapes, landmarks)
    seen: dict[str, FieldPath] = {}
    for spot, tape in tapes:
        name = tape.get("landmark")
        yield from unknown(room, (*spot, "landmark"), name, tuple(landmarks), "landmark", room.name)
        if not isinstance(name, str):
            continue
        if name in seen:
            line = room.lines.line(seen[name])
            told = message(RoomWarnings.landmark_again, landmark=shown_name(name), site=site, line=line)
            yield query("tape", room.where((*spot, "landmark")), told)
        seen.setdefault(name, spot)
        if point and name in landmarks:
            yield from _tape_against_point(room, spot, tape, point, landmarks[name])


def _meeting(where: Text | tuple[Text, ...], tapes: list[_Table], landmarks: dict[str, _Table]) -> Iterator[Noticed]:
    """Tape distances that meet nowhere, or in two places, or only about; nothing while any of them cannot be read."""
    from stickwright.mounting.tape import TapePoint, taped_point  # scipy is slow to load, and most rooms have no tape

    known: list[TapePoint] = []
    for _, tape in tapes:
        name, distance = tape.get("landmark"), number(tape, Tape, "distance_m")
        there = typed_point(*landmarks[name], Landmark, "at_m") if isinstance(name, str) and name in landmarks else None
        if there is None or distance is None:
            return
        if not 0 <= distance[1] <= _LONGEST_M or max(map(abs, there.at_m)) > _LONGEST_M:
            return  # refused where it was typed
        known.append(TapePoint(str(name), there.at_m, distance[1]))
    try:
        found = taped_point(known)
    except BadInput as error:
        yield from error.inside(where).problems
        return
    for finding in found.findings:
        yield Finding(finding.level, finding.about, told_at(where, finding.text))


def _tape_against_point(
    room: TomlFile, path: FieldPath, tape: dict[str, Any], point: TypedPoint, landmark: _Table
) -> Iterator[Finding]:
    there = typed_point(*landmark, Landmark, "at_m")
    distance = number(tape, Tape, "distance_m")
    if there is None or distance is None:
        return
    reckoned = apart_m(point, there)
    if abs(reckoned - distance[1]) > _TAPE_M:
        told = message(
            RoomWarnings.tape_against_point,
            typed=as_typed(tape[distance[0]]),
            landmark=as_typed(landmark[1].get("name")),
            apart_m=reckoned,
        )
        yield query("tape", room.where((*path, distance[0])), told)


def _slope_warnings(
    room: TomlFile, path: FieldPath, place: dict[str, Any], site: dict[str, Any] | None
) -> Iterator[Finding]:
    slope = number(place, Place, "slope_rad")
    movement = number(site, Site, "movement_tilt_rad") if site else None
    if slope and movement and abs(slope[1] - movement[1]) > _SLOPE_RAD:
        told = message(RoomWarnings.slopes_differ, slope_rad=slope[1], movement_rad=movement[1], key=Name(movement[0]))
        yield query("slope", room.where((*path, slope[0])), told)


# ---- shapes


def _shape_warnings(room: TomlFile) -> Iterator[Noticed]:
    for kind, (path, table), points in typed_points(room):
        long = next((one for one in _LONG if one == kind), None)
        if long is not None and len(points) == 2 and apart_m(*points) < _SAME_POINT_M:
            end = points[1].key
            yield Problem(
                room.where((*path, end)),
                message(RoomWarnings.end_at_beginning, typed=as_typed(table[end]), kind=long),
                message(RoomWarnings.the_other_end, kind=long),
                message(RoomWarnings.measure_both_ends),
            )
        if kind == "keep_out" and len(points) == 2:
            yield from _box_warnings(room, path, table, points)
    for path, surface in tables(room.data, "surface"):
        size = typed_row(surface, Surface, "size_m", 2)
        if size and min(size[1]) == 0:
            expected, remedy = message(RoomWarnings.width_and_depth), message(RoomWarnings.width_first)
            yield Problem(room.where((*path, size[0])), as_typed(surface[size[0]]), expected, remedy)


def _box_warnings(room: TomlFile, path: FieldPath, table: dict[str, Any], ends: list[TypedPoint]) -> Iterator[Problem]:
    low, high = ends
    turned = tuple(_AXES[axis] for axis in range(3) if low.at_m[axis] > high.at_m[axis])
    if turned:
        corner = assigned(high.key, table[high.key])
        yield Problem(
            room.where((*path, low.key)),
            message(RoomWarnings.box_turned, typed=as_typed(table[low.key]), high=corner, axes=turned),
            message(RoomWarnings.smallest_of_box),
            message(RoomWarnings.swap_axes, axes=turned),
        )
    elif any(low.at_m[axis] == high.at_m[axis] for axis in range(3)):
        found = message(RoomWarnings.flat_box, typed=as_typed(table[high.key]))
        expected, remedy = message(RoomWarnings.more_than, key=Name(low.key)), message(RoomWarnings.give_room)
        yield Problem(room.where((*path, high.key)), found, expected, remedy)


def _tilt_warnings(room: TomlFile) -> Iterator[Noticed]:
    least, most = (number(room.data, Room, name) for name in ("tilt_from_rad", "tilt_to_rad"))
    if least and least[1] > (most[1] if most else 0.0):
        found = message(
            RoomWarnings.tilt_turned,
            least=assigned(least[0], room.data[least[0]]),
            most=assigned(most[0], room.data[most[0]]) if most else None,
        )
        expected, remedy = message(RoomWarnings.least_tilt_first), message(RoomWarnings.swap_or_give_both)
        yield Problem(room.where((least[0],)), found, expected, remedy)
    elif ((least and least[1] != 0) or (most and most[1] != 0)) and typed_key(room.data, Room, "tilt_pivot_m") is None:
        key = (most or least or ("tilt_to_deg", 0.0))[0]
        yield query("tilt", room.where((key,)), message(RoomWarnings.no_pivot))


def _chair_warnings(room: TomlFile) -> Iterator[Noticed]:
    """Wheels the wrong way round, and weights in another unit."""
    rear, front = (number(room.data, Room, name) for name in ("rear_wheel_m", "front_wheel_m"))
    if rear and front and rear[1] >= front[1]:
        found = message(
            Warnings.beside, one=assigned(rear[0], room.data[rear[0]]), other=assigned(front[0], room.data[front[0]])
        )
        expected, remedy = message(RoomWarnings.front_wheels_forward), message(Warnings.swap)
        yield Problem(room.where((rear[0],)), found, expected, remedy)
    track, width = (number(room.data, Room, name) for name in ("track_m", "width_m"))
    if track and width and track[1] > width[1] + _NOTICED_M:
        yield query("chair", room.where((track[0],)), message(RoomWarnings.wider_than_chair, key=Name(width[0])))
    for name, most in _HEAVY_KG.items():
        heavy = number(room.data, Room, name)
        if heavy and heavy[1] > most:
            told = message(RoomWarnings.heavy, typed=as_typed(room.data[heavy[0]]), most_kg=most)
            yield query("chair", room.where((heavy[0],)), told)


# ---- sites and surfaces


def _sites_and_surfaces(room: TomlFile, player: TomlFile | None) -> Iterator[Noticed]:
    sites = _sites(player)
    for path, place in tables(room.data, "place"):
        point = typed_point(path, place, Place, "at_m")
        if point is None:
            continue
        part = sites.get(str(place.get("site")), {}).get("part")
        for spot, surface in tables(room.data, "surface"):
            yield from _under(room, point, as_typed(place.get("site")), part, (spot, surface))


def _under(room: TomlFile, point: TypedPoint, site: str, part: Any, surface: _Table) -> Iterator[Noticed]:
    path, table = surface
    corner, size = typed_point(path, table, Surface, "corner_m"), typed_row(table, Surface, "size_m", 2)
    if corner is None or size is None:
        return
    right, forward, deep = (corner.at_m[axis] - point.at_m[axis] for axis in range(3))
    over = -size[1][0] <= right <= 0 and -size[1][1] <= forward <= 0
    if not over or deep <= _NOTICED_M:
        return
    where, name = room.where((*point.path, point.key)), as_typed(table.get("name"))
    if table.get("kind") == "floor":
        found = message(RoomWarnings.below_floor, site=site, below_m=deep, floor=name)
        yield Problem(where, found, message(RoomWarnings.above_floor), message(RoomWarnings.heights_from_seat))
    elif deep <= _SLAB_M:
        yield query("inside", where, message(RoomWarnings.in_surface, site=site, surface=name, below_m=deep))
    elif part not in _UNDER_TABLES:
        yield query("inside", where, message(RoomWarnings.under_surface, site=site, surface=name, below_m=deep))


# ---- what is most missed


def _most_missed(room: TomlFile, player: TomlFile | None) -> Iterator[Finding]:
    """One question only: the distance without which the least can be said."""
    missed = _missed(room, player)
    if missed is not None:
        yield query("missing_distance", room.name, missed)


def _missed(room: TomlFile, player: TomlFile | None) -> Message | None:
    placed = [place.get("site") for _, place in tables(room.data, "place")]
    sites = _sites(player)
    waiting = [name for name in sorted(sites, key=lambda name: _rank(sites[name])) if name not in placed]
    main = min(sites, key=lambda name: _rank(sites[name]), default=None)
    if main is not None and main in waiting:
        return message(RoomWarnings.main_place_missing, table=message(FileTables.one, table="place"), site=Name(main))
    if not any(name_of(thing) for key in ("tube", "edge", "surface") for _, thing in tables(room.data, key)):
        return message(RoomWarnings.nothing_to_hold)
    faces = [name for name, site in sites.items() if site.get("part") in _NEAR_FACE]
    if faces and not any(box.get("kind") == "face" for _, box in tables(room.data, "keep_out")):
        return message(RoomWarnings.face_not_kept_free, site=Name(faces[0]))
    if waiting:
        return message(RoomWarnings.place_missing, table=message(FileTables.one, table="place"), site=Name(waiting[0]))
    return None


def _rank(site: dict[str, Any]) -> int:
    """The site of the main stick first, then those with readings for a stick, then those that press."""
    if site.get("action"):
        return 0
    measured = ("reading", "gauge_readings", "on_stick")
    return 1 if any(site.get(key) for key in measured) else 2
