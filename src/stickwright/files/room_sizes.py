"""Lengths in a room that look like another unit, another person's body, or the other side: asked about, never refused.

Bodies differ, and disabled players' bodies differ more than tables of soldiers say; the published sizes only catch a slip in
typing [gordon-2014].
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from statistics import median
from typing import Any, Literal

from stickwright import units
from stickwright.codes.amounts import TypedUnit
from stickwright.codes.message import Message, Name, message
from stickwright.codes.room_warnings import BodySize, RoomWarnings
from stickwright.codes.warnings import Warnings
from stickwright.files.toml_lines import FieldPath, TomlFile
from stickwright.files.typed_points import TypedPoint, typed_points
from stickwright.files.typed_tables import name_of, number, query, steps_of, tables
from stickwright.files.typed_values import as_typed
from stickwright.model.recorded import Finding
from stickwright.model.room import Room
from stickwright.mounting.usual_places import MEDIANS_M

__all__ = ["BODY", "sides_of", "size_warnings"]

_FAR_M = 2.0
"""Further from the seat nothing is in reach of a mount or a player."""
_LIKE = 2.0
"""A thing is about as far from the seat as its neighbours are within this factor."""
_UNLIKE = 6.0
"""Beyond this factor another unit is thought of: centimetres for millimetres are 10, inches 25."""
_UNITS: tuple[TypedUnit, ...] = ("inch", "cm", "mm", "m")
_OVER_M = 0.050
"""A left hand may rest so far right of the middle, or the other way round, before the side is asked about."""
_SIDES: tuple[Literal["left", "right"], ...] = ("left", "right")
_SHORTEST, _LONGEST = 0.5, 1.5

BODY: dict[str, tuple[BodySize, ...]] = {
    "seat_to_floor_m": ("popliteal_height",),
    "seat_to_armrest_m": ("elbow_rest_height",),
    "seat_to_elbow_m": ("elbow_rest_height",),
    "seat_to_tray_m": ("elbow_rest_height",),
    "armrest_front_m": ("buttock_popliteal_length",),
    "armrests_apart_m": ("forearm_forearm_breadth",),
    "seat_to_chin_m": ("eye_height_sitting",),
    "seat_to_eyes_m": ("eye_height_sitting",),
    "table_height_m": ("popliteal_height", "elbow_rest_height"),
    "width_m": ("forearm_forearm_breadth",),
}
"""Distances of the posture, and the published body size (or their sum) that each is near."""


def size_warnings(room: TomlFile, sides: dict[str, str]) -> Iterator[Finding]:
    """What is doubtful about lengths.

    Parameters
    ----------
    room : TomlFile
        As parsed.
    sides : dict
        Side of the body by the name of the site.
    """
    yield from _too_far(room)
    yield from _other_units(room)
    yield from _other_bodies(room)
    yield from _chin_above_eyes(room)
    yield from _swapped_sides(room, sides)


def _too_far(room: TomlFile) -> Iterator[Finding]:
    far = [
        point
        for kind, (_, table), points in typed_points(room)
        if kind not in ("keep_out", "hub") and table.get("kind") != "floor"  # these may well go on
        for point in points
        if _FAR_M < max(map(abs, point.at_m)) <= 3.0  # beyond 3 m it is refused, with the question about its unit
    ]
    if far:
        points = tuple(message(Warnings.place, where=steps_of(room.where((*point.path, point.key)))) for point in far)
        yield query("far_away", (), message(RoomWarnings.far_away, points=points))


def _other_units(room: TomlFile) -> Iterator[Finding]:
    """Things whose distances are all a tenth or a twenty-fifth of their neighbours': read off the other side of the tape."""
    scales: list[tuple[TypedPoint, float]] = []
    for kind, _, points in typed_points(room):
        if points and kind != "landmark":  # a bolt may well be beside the seat
            scales.append((points[0], max(abs(value) for point in points for value in point.at_m)))
    for at, (point, scale) in enumerate(scales):
        others = [other for place, (_, other) in enumerate(scales) if place != at and other > 0]
        if scale == 0 or len(others) < 2:
            continue
        usual = median(others)
        ending = units.ending_of(point.key)
        if 1 / _UNLIKE < scale / usual < _UNLIKE:
            continue
        fits = _fitting_unit(scale, ending, usual)
        if fits:
            stem = point.key.rsplit("_", 1)[0]
            told = message(
                RoomWarnings.nearer_or_further,
                scale_m=scale,
                usual_m=usual,
                near=scale < usual,
                unit=fits,
                typed_unit=_unit_of(point.key),
                key=Name(f"{stem}_{fits}"),
            )
            yield query("unit", room.where((*point.path, point.key)), told)


def _fitting_unit(length_m: float, ending: str, usual_m: float) -> TypedUnit | None:
    """The unit in which the same digits would be about as long as usual."""
    digits = length_m / units.to_si(1.0, ending)
    off = {unit: abs(math.log(units.to_si(digits, unit) / usual_m)) for unit in _UNITS if unit != ending}
    best = min(off, key=lambda unit: off[unit])
    return best if off[best] <= math.log(_LIKE) else None


def _unit_of(key: str) -> TypedUnit:
    ending = units.ending_of(key)
    return next(unit for unit in _UNITS if unit == ending)


def _other_bodies(room: TomlFile) -> Iterator[Finding]:
    lying = room.data.get("posture") in ("bed", "floor")
    for name, measures in BODY.items():
        typed = number(room.data, Room, name)
        if typed is None or typed[1] < 0 or (lying and name in ("seat_to_floor_m", "table_height_m")):
            continue
        men, women = (sum(MEDIANS_M[measure][sex] for measure in measures) for sex in (0, 1))
        low, high = _SHORTEST * min(men, women), _LONGEST * max(men, women)
        if low <= typed[1] <= high:
            continue
        ending = units.ending_of(typed[0])
        fits = _fitting_unit(typed[1], ending, (men + women) / 2) if typed[1] > 0 else None
        told = message(
            RoomWarnings.unusual_size,
            typed=as_typed(room.data[typed[0]]),
            low_m=low,
            high_m=high,
            sizes=measures,
            men_m=men,
            women_m=women,
            unit=fits,
            typed_unit=_unit_of(typed[0]),
        )
        yield query("body_size", room.where((typed[0],)), told)


def _chin_above_eyes(room: TomlFile) -> Iterator[Finding]:
    chin, eyes = (number(room.data, Room, name) for name in ("seat_to_chin_m", "seat_to_eyes_m"))
    if chin and eyes and chin[1] >= eyes[1]:
        told = message(RoomWarnings.chin_above_eyes, key=Name(eyes[0]))
        yield query("body_size", room.where((chin[0],)), told)


def _side_in(name: str | None) -> str | None:
    words = (name or "").casefold().replace("-", " ").replace(",", " ").split()
    told = {side for side in ("left", "right") if side in words}
    return told.pop() if len(told) == 1 else None


def _swapped_sides(room: TomlFile, sides: dict[str, str]) -> Iterator[Finding]:
    """One question for all: whoever measures from the front has left and right the wrong way round everywhere."""
    wrong: list[Message] = []
    told = 0
    for kind, (path, table), points in typed_points(room):
        if not points or kind in ("keep_out", "surface"):
            continue
        site = table.get("site")
        named = sides.get(site) if kind == "place" and isinstance(site, str) else _side_in(name_of(table))
        side = next((one for one in _SIDES if one == named), None)
        if side is None:
            continue
        told += 1
        across = [point.at_m[0] if side == "left" else -point.at_m[0] for point in points]
        if all(x > _OVER_M for x in across):
            where = steps_of(room.where((*path, points[0].key)))
            x = as_typed(table[points[0].key][0])
            wrong.append(message(RoomWarnings.point_on_side, where=where, side=side, typed=x))
    if wrong:
        everywhere = len(wrong) == told > 1
        yield query("side", (), message(RoomWarnings.wrong_sides, points=tuple(wrong), everywhere=everywhere))


def sides_of(player: TomlFile | None) -> dict[str, str]:
    """Side of the body of each site: as said, else by its name; nothing for the others.

    Parameters
    ----------
    player : TomlFile or None
        As parsed.
    """
    found: dict[str, str] = {}
    sites: list[tuple[FieldPath, dict[str, Any]]] = list(tables(player.data, "site")) if player is not None else []
    for _, site in sites:
        name, said = name_of(site), site.get("side")
        side = said if isinstance(said, str) else _side_in(name)
        if name and side:
            found[name] = side
    return found
