"""Where a part usually rests when nobody measured it: from the posture's distances, else from published body sizes.

Always marked, with the one tape measurement that would settle it. Nothing is said for a bed or the floor, nor for parts whose
place depends on the support they are given.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from stickwright.codes.message import Message, Name, message
from stickwright.codes.places import Places
from stickwright.model.player import Site
from stickwright.model.room import Room

__all__ = ["MEDIANS_M", "UsualPlace", "side_of", "usual_place"]

Point = tuple[float, float, float]
Side = Literal["left", "right", "middle"]

MEDIANS_M: dict[str, tuple[float, float]] = {
    "hand_length": (0.193, 0.180),
    "hand_breadth": (0.088, 0.078),
    "palm_length": (0.116, 0.108),
    "forearm_hand_length": (0.480, 0.438),
    "sitting_height": (0.918, 0.857),
    "eye_height_sitting": (0.804, 0.748),
    "elbow_rest_height": (0.246, 0.233),
    "knee_height_sitting": (0.553, 0.510),
    "popliteal_height": (0.430, 0.387),
    "buttock_knee_length": (0.617, 0.589),
    "buttock_popliteal_length": (0.502, 0.483),
    "hip_breadth_sitting": (0.378, 0.397),
    "forearm_forearm_breadth": (0.579, 0.492),
    "foot_length": (0.271, 0.246),
}
"""Medians of men and of women in metre [gordon-2014]: fit young soldiers, so a stand-in and never a norm."""
HEAD_DEPTH_M = 0.19
"""Back of the head to the chin, level, from memory."""
HEAD_HALF_BREADTH_M = 0.075
"""Half the breadth of a head, from memory."""


@dataclass(frozen=True)
class UsualPlace:
    """Where a part usually rests, and what stands in for a measurement."""

    at_m: Point
    """In the body frame."""
    assumed: tuple[Message, ...]


def median_m(measure: str) -> float:
    """Halfway between the medians of men and women, in metre."""
    return sum(MEDIANS_M[measure]) / 2


def side_of(site: Site) -> Side | None:
    """Side of the body a site is on: as said, else by its name; None when neither tells.

    Examples
    --------
    >>> side_of(Site(name="left thumb", part="thumb")), side_of(Site(name="thumb", part="thumb")) is None
    ('left', True)
    """
    if site.side is not None:
        return site.side
    words = site.name.casefold().replace("-", " ").replace("_", " ").split()
    sides: list[Side] = ["left", "right"]
    said = [side for side in sides if side in words]
    return said[0] if len(said) == 1 else None


def usual_place(site: Site, room: Room) -> UsualPlace | None:
    """Where a part usually rests in this room's seat.

    Hand, fingertip and thumb: at the front end of the armrest; forearm: at its middle; chin and head: above the seat by the
    distances taken, or by published medians; knee, foot and toe: by published medians.

    Returns
    -------
    UsualPlace or None
        None for a bed or the floor, for parts that have no usual place, and for a limb whose side nobody said.

    Notes
    -----
    Source: medians of [gordon-2014], halfway between men and women; the chin as far below the eyes as the crown is above them
    (a rule for drawing faces, from memory).

    Examples
    --------
    >>> found = usual_place(Site(name="right hand", part="hand"),
    ...                     Room(armrest_front_mm=400, armrests_apart_mm=480, seat_to_armrest_mm=230))
    >>> found.at_m
    (0.24, 0.4, 0.23)
    """
    if room.posture in ("bed", "floor"):
        return None
    side = side_of(site)
    if site.part in ("chin", "head"):
        return _at_head(site, room, side)
    if side not in ("left", "right"):
        return None
    sign = 1.0 if side == "right" else -1.0
    if site.part in ("hand", "fingertip", "thumb", "forearm"):
        return _at_armrest(site, room, sign)
    if site.part in ("knee", "foot", "toe"):
        return _at_leg(site, sign)
    return None


def _known(value: float | None, stand_in: float) -> float:
    return stand_in if value is None else value


def _told(site: Site, spot: Message) -> tuple[Message, ...]:
    return (message(Places.usual, site=Name(site.name), spot=spot),)


def _at_armrest(site: Site, room: Room, sign: float) -> UsualPlace:
    """Forearm along the armrest, elbow in line with the back."""
    apart = _known(room.armrests_apart_m, median_m("forearm_forearm_breadth") - median_m("hand_breadth"))
    height = _known(room.seat_to_armrest_m, _known(room.seat_to_tray_m, median_m("elbow_rest_height")))
    reach = median_m("forearm_hand_length")
    wrist = reach - median_m("hand_length")
    ahead = {"fingertip": reach, "thumb": wrist + median_m("palm_length"), "hand": wrist + median_m("palm_length") / 2}
    if site.part == "forearm":
        forward = _known(room.armrest_front_m, wrist) / 2
    else:
        forward = _known(room.armrest_front_m, ahead.get(site.part, wrist))
    measured = (room.armrests_apart_m, room.armrest_front_m, room.seat_to_armrest_m)
    spot = message(Places.armrest, middle=site.part == "forearm", partly=None in measured)
    return UsualPlace((sign * apart / 2, forward, height), _told(site, spot))


def _at_head(site: Site, room: Room, side: Side | None) -> UsualPlace:
    face = median_m("sitting_height") - median_m("eye_height_sitting")
    eyes = _known(room.seat_to_eyes_m, _known(room.seat_to_chin_m, median_m("eye_height_sitting") - face) + face)
    if site.part == "chin":
        height = _known(room.seat_to_chin_m, eyes - face)
        at = (0.0, HEAD_DEPTH_M, height)
        spot = message(Places.chin, forward_m=HEAD_DEPTH_M, up_m=height)
    else:
        sign = {"right": 1.0, "left": -1.0}.get(side or "middle", 0.0)
        at = (sign * HEAD_HALF_BREADTH_M, HEAD_DEPTH_M / 2 if sign else 0.0, eyes)
        spot = message(Places.head, side=side or "middle", up_m=eyes)
    return UsualPlace(at, _told(site, spot))


def _at_leg(site: Site, sign: float) -> UsualPlace:
    aside = sign * median_m("hip_breadth_sitting") / 4
    lower = median_m("popliteal_height")
    if site.part == "knee":
        at = (aside, median_m("buttock_knee_length"), median_m("knee_height_sitting") - lower)
    else:
        length = median_m("foot_length") * (1.0 if site.part == "toe" else 0.5)
        at = (aside, median_m("buttock_popliteal_length") + length, -lower)
    return UsualPlace(at, _told(site, message(Places.leg, knee=site.part == "knee")))
