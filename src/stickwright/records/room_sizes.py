"""Lengths in a room that look like another unit, another person's body, or the other side: asked about, never refused.

Bodies differ, and disabled players' bodies differ more than tables of soldiers say; the published sizes only catch a slip in
typing [gordon-2014].
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from statistics import median
from typing import Any

from stickwright import units
from stickwright.model.recorded import Finding
from stickwright.model.room import Room
from stickwright.mounting.usual_places import MEDIANS_M
from stickwright.records.toml_lines import FieldPath, TomlFile
from stickwright.records.typed_points import TypedPoint, typed_points
from stickwright.records.typed_tables import name_of, number, query, tables
from stickwright.records.typed_values import as_typed

__all__ = ["BODY", "sides_of", "size_doubts"]

_FAR_M = 2.0
"""Further from the seat nothing is in reach of a mount or a player."""
_LIKE = 2.0
"""A thing is about as far from the seat as its neighbours are within this factor."""
_UNLIKE = 6.0
"""Beyond this factor another unit is thought of: centimetres for millimetres are 10, inches 25."""
_UNITS = ("inch", "cm", "mm", "m")
_OVER_M = 0.050
"""A left hand may rest so far right of the middle, or the other way round, before the side is asked about."""
_SHORTEST, _LONGEST = 0.5, 1.5

BODY: dict[str, tuple[str, ...]] = {
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


def size_doubts(room: TomlFile, sides: dict[str, str]) -> Iterator[Finding]:
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
        shown = "; ".join(str(room.where((*point.path, point.key))) for point in far)
        yield query(
            "far_away",
            f"{shown}: more than 2 m from the seat reference point, so out of reach. A slipped decimal point, or measured "
            "from elsewhere? The origin is where the middle of the back meets the seat.",
        )


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
            shown, typed = (_label(each) for each in (fits, ending))
            near = scale < usual
            yield query(
                "unit",
                f"{room.where((*point.path, point.key))}: {'nothing of it is further than' if near else 'it is'} "
                f"{units.spoken(scale, 'mm')} from the seat, of the other things in the room half are "
                f"{'beyond' if near else 'within'} {units.spoken(usual, 'mm')}. {shown.capitalize()} typed as {typed}? "
                f"Then name the key {stem}_{fits}, and so for its other lengths. Nothing was converted.",
            )


def _fitting_unit(length_m: float, ending: str, usual_m: float) -> str | None:
    """The unit in which the same digits would be about as long as usual."""
    digits = length_m / units.to_si(1.0, ending)
    off = {unit: abs(math.log(units.to_si(digits, unit) / usual_m)) for unit in _UNITS if unit != ending}
    best = min(off, key=lambda unit: off[unit])
    return best if off[best] <= math.log(_LIKE) else None


def _label(ending: str) -> str:
    return {"inch": "inches", "cm": "centimetres", "mm": "millimetres", "m": "metres"}[ending]


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
        unit = f" {_label(fits).capitalize()} typed as {_label(ending)}?" if fits else " A slip in typing?"
        sizes = " plus ".join(measure.replace("_sitting", ", sitting").replace("_", " ") for measure in measures)
        yield query(
            "body_size",
            f"{room.where((typed[0],))}: {as_typed(room.data[typed[0]])} is outside {units.spoken(low, 'mm')} to "
            f"{units.spoken(high, 'mm')}, half to one and a half times the published {sizes} "
            f"({units.spoken(men, 'mm')} men, {units.spoken(women, 'mm')} women).{unit} Bodies and chairs differ: if it was "
            "measured so, leave it.",
        )


def _chin_above_eyes(room: TomlFile) -> Iterator[Finding]:
    chin, eyes = (number(room.data, Room, name) for name in ("seat_to_chin_m", "seat_to_eyes_m"))
    if chin and eyes and chin[1] >= eyes[1]:
        yield query("body_size", f"{room.where((chin[0],))}: the chin is not below the eyes ({eyes[0]}). Swapped?")


def _side_in(name: str | None) -> str | None:
    words = (name or "").casefold().replace("-", " ").replace(",", " ").split()
    told = {side for side in ("left", "right") if side in words}
    return told.pop() if len(told) == 1 else None


def _swapped_sides(room: TomlFile, sides: dict[str, str]) -> Iterator[Finding]:
    """One question for all: whoever measures from the front has left and right the wrong way round everywhere."""
    wrong: list[str] = []
    told = 0
    for kind, (path, table), points in typed_points(room):
        if not points or kind in ("keep_out", "surface"):
            continue
        site = table.get("site")
        side = sides.get(site) if kind == "place" and isinstance(site, str) else _side_in(name_of(table))
        if side not in ("left", "right"):
            continue
        told += 1
        across = [point.at_m[0] if side == "left" else -point.at_m[0] for point in points]
        if all(x > _OVER_M for x in across):
            wrong.append(f"{room.where((*path, points[0].key))} ({side}, but x = {_typed_x(table, points[0])})")
    if wrong:
        everywhere = len(wrong) == told > 1
        yield query(
            "side",
            f"{'; '.join(wrong)}: on the other side than the name says. x grows to the player's right"
            f"{': measured while facing the player, all of it?' if everywhere else '. A minus lost, or two swapped?'}",
        )


def _typed_x(table: dict[str, Any], point: TypedPoint) -> str:
    return as_typed(table[point.key][0])


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
