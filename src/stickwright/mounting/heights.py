"""Table and tray against the elbow and the trunk: what lifts the shoulders, hangs the arm, or presses."""

from __future__ import annotations

from stickwright.model.ages import age_group
from stickwright.model.player import Player
from stickwright.model.recorded import Finding
from stickwright.model.room import Room
from stickwright.mounting.usual_places import median_m
from stickwright.units import spoken

__all__ = ["height_findings"]

_ARM = ("fingertip", "thumb", "hand", "forearm", "elbow", "shoulder")
_FINGER_M = 0.025
"""Between trunk and tray, so that a finger goes in and comes out and the tray does not press: common practice, no source."""


def height_findings(room: Room | None, player: Player) -> list[Finding]:
    """What is to be checked of a table's and a tray's place, for a player who sits and uses an arm.

    Parameters
    ----------
    room : Room or None
    player : Player

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
        text = "The table's height cannot be compared with the elbow: measure from the seat down to the floor (seat_to_floor_mm)."
        return [*out, Finding("query", "table height", text)]
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
    tilts = " or the seat tilts" if room.tilt_to_rad > room.tilt_from_rad else ""
    return [
        Finding(
            "query", "trunk and tray",
            f"The tray's edge is {spoken(gap, 'mm')} from the front of the trunk: it presses when the player leans forward{tilts}, and a "
            f"finger can be caught. Leave {spoken(_FINGER_M, 'mm')} at least, and check in every position used in play.",
        )
    ]  # fmt: skip


def _elbow(room: Room, player: Player) -> tuple[float | None, str]:
    """Height of the elbow above the seat, and what it is taken from; none for a child of whom nothing was measured."""
    if room.seat_to_elbow_m is not None:
        return room.seat_to_elbow_m, ""
    measure = "to confirm: measure from the seat up to the elbow, seat_to_elbow_mm"
    if room.seat_to_armrest_m is not None:
        return room.seat_to_armrest_m, f" (assumed at the armrest's top; {measure})"
    if age_group(player.age_band) == "child":
        return None, ""
    return median_m("elbow rest height"), f" (assumed at the published median of adults; {measure})"


def _compared(what: str, above_m: float, basis: str) -> list[Finding]:
    hand = median_m("hand breadth")
    if abs(above_m) <= hand:
        return []
    where = f"{spoken(abs(above_m), 'mm')} {'above' if above_m > 0 else 'below'} the elbow{basis}"
    if above_m > 0:
        told = (
            f"it lifts the shoulders, and the arms tire. Lower the {what}, raise the seat, or mount the devices lower."
        )
    else:
        told = (
            f"the player has to lean down, or the arm hangs. Raise the {what}, lower the seat, or support the forearm."
        )
    return [Finding("query", f"{what} height", f"The {what} is {where}: {told}")]
