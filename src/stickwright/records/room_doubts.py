"""What is contradictory or half said of a room: names, places, tapes, shapes that cannot be, and the one distance that is most
missed. What is missing is asked about; the room is planned with all the same.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from stickwright import units
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem
from stickwright.model.player import Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Landmark, Place, Room, Surface, Tape
from stickwright.records.fields import typed_key
from stickwright.records.room_sizes import sides_of, size_doubts
from stickwright.records.toml_lines import FieldPath, Steps, TomlFile
from stickwright.records.typed_points import TypedPoint, apart_m, typed_point, typed_points, typed_row
from stickwright.records.typed_tables import Noticed, doubled_names, name_of, number, query, tables, unknown
from stickwright.records.typed_values import as_typed

__all__ = ["room_doubts"]

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
_AXES = ("x", "y", "z")
_Table = tuple[FieldPath, dict[str, Any]]


def room_doubts(room: TomlFile, player: TomlFile | None) -> list[Noticed]:
    """What is doubtful in a room file.

    Parameters
    ----------
    room : TomlFile
        The file as parsed.
    player : TomlFile or None
        The player's, for the names of the sites; None when it cannot be read.
    """
    noticed: list[Noticed] = []
    for key in ("tube", "edge", "surface", "keep_out", "landmark"):
        noticed += doubled_names(room, tables(room.data, key), key.replace("_", "-"))
    noticed += _place_doubts(room, player)
    noticed += _shape_doubts(room)
    noticed += _tilt_doubts(room)
    noticed += _chair_doubts(room)
    noticed += _sites_and_surfaces(room, player)
    noticed += size_doubts(room, sides_of(player))
    noticed += _most_missed(room, player)
    return noticed


def _sites(player: TomlFile | None) -> dict[str, dict[str, Any]]:
    found = tables(player.data, "site") if player is not None else ()
    return {name: site for _, site in found if (name := name_of(site))}


# ---- places and tapes


def _place_doubts(room: TomlFile, player: TomlFile | None) -> Iterator[Noticed]:
    known = tuple(_sites(player)) if player is not None else None
    landmarks = {name: spot for spot in tables(room.data, "landmark") if (name := name_of(spot[1]))}
    first: dict[str, FieldPath] = {}
    for path, place in tables(room.data, "place"):
        site = place.get("site")
        yield from unknown(room, (*path, "site"), site, known, "a site", "player.toml")
        if isinstance(site, str) and site in first:
            yield Problem(
                room.where((*path, "site")),
                f"a second place of {as_typed(site)} (the first: line {room.lines.line(first[site])})",
                "one place for each site",
                "Delete one, or give all tape distances of this site in one place.",
            )
        elif isinstance(site, str):
            first[site] = path
        yield from _tape_doubts(room, path, place, landmarks)
        yield from _slope_doubts(room, path, place, _sites(player).get(str(site)))


def _tape_doubts(
    room: TomlFile, path: FieldPath, place: dict[str, Any], landmarks: dict[str, _Table]
) -> Iterator[Noticed]:
    tapes = list(tables(place, "tape", path))
    point = typed_point(path, place, Place, "at_m")
    where, site = room.where(path), as_typed(place.get("site"))
    if typed_key(place, Place, "at_m") is None:
        if not tapes:
            yield query(
                "place",
                f"{where}: neither a point nor tape distances, so it tells nothing. Measure right, forward and up from the "
                f"middle of where the back meets the seat: at_mm = [...], or four tape distances to landmarks.",
            )
        elif len(different := {as_typed(tape.get("landmark")) for _, tape in tapes}) < 3:
            yield query(
                "place",
                f"{where}: tape to {len(different)} landmark{'' if len(different) == 1 else 's'}, which cannot place {site}. "
                "Three landmarks leave two answers, a fourth picks one.",
            )
        else:
            yield from _meeting(where, tapes, landmarks)
    seen: dict[str, FieldPath] = {}
    for spot, tape in tapes:
        name = tape.get("landmark")
        yield from unknown(room, (*spot, "landmark"), name, tuple(landmarks), "a landmark", room.name)
        if not isinstance(name, str):
            continue
        if name in seen:
            yield query(
                "tape",
                f"{room.where((*spot, 'landmark'))}: {as_typed(name)} a second time for {site} (the first: line "
                f"{room.lines.line(seen[name])}). Was another landmark meant?",
            )
        seen.setdefault(name, spot)
        if point and name in landmarks:
            yield from _tape_against_point(room, spot, tape, point, landmarks[name])


def _meeting(where: Steps, tapes: list[_Table], landmarks: dict[str, _Table]) -> Iterator[Noticed]:
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
        found = taped_point(known, where)
    except BadInput as error:
        yield from error.problems
        return
    for finding in found.findings:
        yield Finding(finding.level, finding.about, message(FilePlaces.at, where=tuple(where), told=finding.text))


def _tape_against_point(
    room: TomlFile, path: FieldPath, tape: dict[str, Any], point: TypedPoint, landmark: _Table
) -> Iterator[Finding]:
    there = typed_point(*landmark, Landmark, "at_m")
    distance = number(tape, Tape, "distance_m")
    if there is None or distance is None:
        return
    reckoned = apart_m(point, there)
    if abs(reckoned - distance[1]) > _TAPE_M:
        yield query(
            "tape",
            f"{room.where((*path, distance[0]))}: {as_typed(tape[distance[0]])} to {as_typed(landmark[1].get('name'))}, but "
            f"the two points given are {units.spoken(reckoned, 'mm')} apart. One of these is off; the point is used.",
        )


def _slope_doubts(
    room: TomlFile, path: FieldPath, place: dict[str, Any], site: dict[str, Any] | None
) -> Iterator[Finding]:
    slope = number(place, Place, "slope_rad")
    movement = number(site, Site, "movement_tilt_rad") if site else None
    if slope and movement and abs(slope[1] - movement[1]) > _SLOPE_RAD:
        yield query(
            "slope",
            f"{room.where((*path, slope[0]))}: {units.spoken(slope[1], 'deg')}, but player.toml says "
            f"{units.spoken(movement[1], 'deg')} ({movement[0]}). Which holds?",
        )


# ---- shapes


def _shape_doubts(room: TomlFile) -> Iterator[Noticed]:
    for kind, (path, table), points in typed_points(room):
        if kind in ("tube", "edge") and len(points) == 2 and apart_m(*points) < _SAME_POINT_M:
            yield Problem(
                room.where((*path, points[1].key)),
                f"{as_typed(table[points[1].key])}, where the {kind} begins too",
                f"the other end of the {kind}",
                "Measure both ends of the free length.",
            )
        if kind == "keep_out" and len(points) == 2:
            yield from _box_doubts(room, path, table, points)
    for path, surface in tables(room.data, "surface"):
        size = typed_row(surface, Surface, "size_m", 2)
        if size and min(size[1]) == 0:
            yield Problem(
                room.where((*path, size[0])), as_typed(surface[size[0]]), "a width and a depth above zero",
                "Width to the right first, then depth forward.",
            )  # fmt: skip


def _box_doubts(room: TomlFile, path: FieldPath, table: dict[str, Any], ends: list[TypedPoint]) -> Iterator[Problem]:
    low, high = ends
    turned = [axis for axis in range(3) if low.at_m[axis] > high.at_m[axis]]
    if turned:
        axes = " and ".join(_AXES[axis] for axis in turned)
        yield Problem(
            room.where((*path, low.key)),
            f"{as_typed(table[low.key])} beyond {high.key} = {as_typed(table[high.key])} in {axes}",
            "the smallest x, y and z of the box, and in high the largest",
            f"Swap the two values of {axes}.",
        )
    elif any(low.at_m[axis] == high.at_m[axis] for axis in range(3)):
        yield Problem(
            room.where((*path, high.key)), f"{as_typed(table[high.key])}, a box without thickness",
            f"more than {low.key} in x, y and z", "Give the box the room that must stay free.",
        )  # fmt: skip


def _tilt_doubts(room: TomlFile) -> Iterator[Noticed]:
    least, most = (number(room.data, Room, name) for name in ("tilt_from_rad", "tilt_to_rad"))
    if least and least[1] > (most[1] if most else 0.0):
        shown = f"{most[0]} = {as_typed(room.data[most[0]])}" if most else "no tilt_to, which counts as level"
        yield Problem(
            room.where((least[0],)),
            f"{least[0]} = {as_typed(room.data[least[0]])} with {shown}",
            "the least tilt used in play first, the most in tilt_to",
            "Swap the two, or give both.",
        )
    elif ((least and least[1] != 0) or (most and most[1] != 0)) and typed_key(room.data, Room, "tilt_pivot_m") is None:
        key = (most or least or ("tilt_to_deg", 0.0))[0]
        yield query(
            "tilt",
            f"{room.where((key,))}: the seat tilts, but tilt_pivot_mm is not given, so nobody can tell how far a place moves "
            "away from what stays behind. Measure right, forward and up to the axle under the seat.",
        )


def _chair_doubts(room: TomlFile) -> Iterator[Noticed]:
    """Wheels the wrong way round, and weights in another unit."""
    rear, front = (number(room.data, Room, name) for name in ("rear_wheel_m", "front_wheel_m"))
    if rear and front and rear[1] >= front[1]:
        yield Problem(
            room.where((rear[0],)), f"{rear[0]} = {as_typed(room.data[rear[0]])} with {front[0]} = {as_typed(room.data[front[0]])}",
            "the front wheels further forward than the rear ones", "Swap the two.",
        )  # fmt: skip
    track, width = (number(room.data, Room, name) for name in ("track_m", "width_m"))
    if track and width and track[1] > width[1] + _NOTICED_M:
        yield query(
            "chair",
            f"{room.where((track[0],))}: the wheels stand further apart than the chair is wide ({width[0]}). Swapped, or one of "
            "them in another unit?",
        )
    for name, most in _HEAVY_KG.items():
        heavy = number(room.data, Room, name)
        if heavy and heavy[1] > most:
            yield query(
                "chair",
                f"{room.where((heavy[0],))}: {as_typed(room.data[heavy[0]])} is more than {units.figures(most)} kg. Pounds typed "
                "as kilograms? If it was weighed so, leave it.",
            )


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
    where, name, below = room.where((*point.path, point.key)), as_typed(table.get("name")), units.spoken(deep, "mm")
    if table.get("kind") == "floor":
        yield Problem(
            where, f"{site} {below} below the floor {name}", "a point above the floor",
            "Heights are up from the seat: what lies below the seat has a minus. Look at the corner of the floor too.",
        )  # fmt: skip
    elif deep <= _SLAB_M:
        yield query(
            "inside", f"{where}: {site} would be inside {name}, {below} below its top. Is one of the heights off?"
        )
    elif part not in _UNDER_TABLES:
        yield query("inside", f"{where}: {site} would be under {name}, {below} below its top. Is it, in play?")


# ---- what is most missed


def _most_missed(room: TomlFile, player: TomlFile | None) -> Iterator[Finding]:
    """One question only: the distance without which the least can be said."""
    missed = _missed(room, player)
    if missed:
        yield query("missing_distance", f"{room.name}: {missed}")


def _missed(room: TomlFile, player: TomlFile | None) -> str:
    placed = [place.get("site") for _, place in tables(room.data, "place")]
    sites = _sites(player)
    waiting = [name for name in sorted(sites, key=lambda name: _rank(sites[name])) if name not in placed]
    main = min(sites, key=lambda name: _rank(sites[name]), default=None)
    measure = "right, forward and up from the middle of where the back meets the seat to where the part rests"
    if main is not None and main in waiting:
        return (
            f'of all distances the place of "{main}" would settle most, and it is not given. Measure {measure}: [[place]] '
            "with site and at_mm."
        )
    if not any(name_of(thing) for key in ("tube", "edge", "surface") for _, thing in tables(room.data, key)):
        return (
            "nothing is given that a mount could hold on to or stand on. Measure the nearest tube: both ends of its free "
            "length, and its diameter ([[tube]]); or the nearest tray or table ([[surface]])."
        )
    faces = [name for name, site in sites.items() if site.get("part") in _NEAR_FACE]
    if faces and not any(box.get("kind") == "face" for _, box in tables(room.data, "keep_out")):
        return (
            f'"{faces[0]}" is near the face, but no [[keep_out]] of kind "face" says what must stay free. Measure from below '
            "the chin to above the brows, and both cheeks."
        )
    if waiting:
        return f'the place of "{waiting[0]}" is not given. Measure {measure}: [[place]] with site and at_mm.'
    return ""


def _rank(site: dict[str, Any]) -> int:
    """The site of the main stick first, then those with readings for a stick, then those that press."""
    if site.get("action"):
        return 0
    measured = ("reading", "gauge_readings", "on_stick")
    return 1 if any(site.get(key) for key in measured) else 2
