"""Table and tray against the elbow and the trunk: what lifts the shoulders, hangs the arm, or presses."""

from __future__ import annotations

from stickwright.codes.matters import Matter
from stickwright.codes.message import message
from stickwright.codes.seating import ElbowFrom, Furniture, Seating
from stickwright.model.ages import age_group
from stickwright.model.player import Player
from stickwright.model.recorded import Finding
from stickwright.model.room import Room
from stickwright.mounting.usual_places import median_m

__all__ = ["height_findings"]

_ARM = ("fingertip", "thumb", "hand", "forearm", "elbow", "shoulder")
_OFF: dict[Furniture, Matter] = {"table": "table_height", "tray": "tray_height"}
_FINGER_M = 0.025
"""Between trunk and tray, so that a finger goes in and comes out and the tray does not press: common practice, no source."""


def height_findings(room: Room | None, player: Player) -> list[Finding]:
    """What is to be checked of a table's and a tray's place, for a player who sits and uses an arm.

    Notes
    -----
    A hand's breadth [gordon-2014] above or below the elbow is taken as too much: common practice, no source. Where the elbow was not
    measured, the armrest stands for it, then the published elbow rest height of adults.
    """
    if room is None or room.posture in ("bed", "floor"):
        return []
    out = _trunk(room)
    if not any(site.part in _ARM for site in player.site):
        return out
    if room.table_height_m is not None and room.seat_to_floor_m is None:
        return [*out, Finding("query", "table_height", message(Seating.height_unknown))]
    elbow, basis = _elbow(room, player)
    if elbow is None:
        return out
    if room.table_height_m is not None and room.seat_to_floor_m is not None:
        out += _compared("table", room.table_height_m - room.seat_to_floor_m - elbow, basis)
    if room.seat_to_tray_m is not None:
        out += _compared("tray", room.seat_to_tray_m - elbow, basis)
    return out


def _trunk(room: Room) -> list[Finding]:
    gap = room.trunk_to_tray_m
    if gap is None or gap >= _FINGER_M:
        return []
    tilts = room.tilt_to_rad > room.tilt_from_rad
    return [Finding("query", "trunk_and_tray", message(Seating.tray_close, gap_m=gap, least_m=_FINGER_M, tilts=tilts))]


def _elbow(room: Room, player: Player) -> tuple[float | None, ElbowFrom]:
    """Height of the elbow above the seat, and what it is taken from; none for a child of whom nothing was measured."""
    if room.seat_to_elbow_m is not None:
        return room.seat_to_elbow_m, "measured"
    if room.seat_to_armrest_m is not None:
        return room.seat_to_armrest_m, "armrest"
    if age_group(player.age_band) == "child":
        return None, "measured"
    return median_m("elbow_rest_height"), "median"


def _compared(what: Furniture, above_m: float, basis: ElbowFrom) -> list[Finding]:
    hand = median_m("hand_breadth")
    if abs(above_m) <= hand:
        return []
    text = message(Seating.height, what=what, off_m=abs(above_m), above=above_m > 0, elbow=basis)
    return [Finding("query", _OFF[what], text)]
