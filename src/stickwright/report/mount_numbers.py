"""The parts of a mount's drawing by number: what each is and how it is set, the same number in all views."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stickwright.codes.joint_settings import JointSettings
from stickwright.codes.message import Text, message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.model.mounting import SiteMount
from stickwright.model.room import Room
from stickwright.report.mount_distances import clamp_place, clamp_range_words
from stickwright.report.mount_shapes import DrawnBody, plain_words

__all__ = ["BAND", "FRONT", "Part", "parts_of", "worth_naming"]

BAND, FRONT = "band", "front"
"""Parts that are marks of the drawing: where the clamp may sit, and the arrow from the front of the base."""
_NEAR_M = 0.12


@dataclass(frozen=True)
class Part:
    """One row of the list of parts.

    Parameters
    ----------
    number : int
        In its balloon.
    name : str
        What it is.
    setting : str
        How it is set, or what there is to say; may be empty.
    bodies : tuple of DrawnBody
        What of the drawing it is.
    mark : str
        `BAND` or `FRONT` for a mark of the drawing.
    """

    number: int
    name: str
    setting: str
    bodies: tuple[DrawnBody, ...]
    mark: str = ""


def parts_of(mount: SiteMount, room: Room, around: Sequence[DrawnBody], held: Sequence[DrawnBody]) -> tuple[Part, ...]:
    """The list of parts: joints first, by the numbers that the words call them; then what is clamped and set; then the room.

    Parameters
    ----------
    mount : SiteMount
        What is drawn.
    room : Room
        What it stands in.
    around, held : sequence of DrawnBody
        Bodies of the room, and of the mount.
    """
    told = [
        *_joints(mount, held),
        *_links(mount, held),
        *_clamp(mount, room, held),
        *_device(mount, held),
        *_room(mount, around),
    ]
    return tuple(Part(number, *row) for number, row in enumerate(told, start=1))


Row = tuple[str, str, tuple[DrawnBody, ...], str]


def _row(name: Text, setting: Text, bodies: Iterable[DrawnBody], mark: str = "") -> Row:
    return plain_words(name), plain_words(setting), tuple(bodies), mark


def _joints(mount: SiteMount, held: Sequence[DrawnBody]) -> Iterable[Row]:
    """Each joint; at the lower link's the link itself, at the plate's the plate and its neck."""
    dots = [one for one in held if one.layer == "MOUNT" and one.form == "dot" and one.role != "clamp"]
    links = _linked(held)
    joints = mount.choice.arm.joints if mount.choice is not None and mount.choice.arm is not None else ()
    for joint, dot in zip(joints, dots, strict=True):
        bodies, setting = [dot], joint.words
        if joint.name == "lower_link" and links:
            bodies = [links[0]]
            setting = message(MountDrawings.long_and_set, length_m=_length(links[0]), setting=joint.words)
        elif joint.name == "plate":
            bodies += [one for one in held if one.role == "plate"]
        yield _row(message(JointSettings.named, joint=joint.name), setting, bodies)


def _linked(held: Sequence[DrawnBody]) -> list[DrawnBody]:
    """Links of an arm from the clamp on, without the neck of its plate."""
    return [one for one in held if one.layer == "MOUNT" and one.form == "bar" and one.role != "plate"]


def _links(mount: SiteMount, held: Sequence[DrawnBody]) -> Iterable[Row]:
    """Links that no joint stands for; a gooseneck."""
    joints = mount.choice.arm.joints if mount.choice is not None and mount.choice.arm is not None else ()
    first = any(joint.name == "lower_link" for joint in joints)
    for number, one in enumerate(_linked(held), start=1):
        if number > 1 or not first:
            length = message(MountDrawings.long, length_m=_length(one))
            yield _row(message(MountDrawings.link, number=number, of=len(_linked(held))), length, [one])
    for one in held:
        if one.layer == "MOUNT" and one.form == "path":
            yield _row(message(MountDrawings.neck), message(MountDrawings.neck_length, length_m=_length(one)), [one])


def _length(one: DrawnBody) -> float:
    return sum(math.dist(*pair) for pair in zip(one.points, one.points[1:], strict=False))


def _clamp(mount: SiteMount, room: Room, held: Sequence[DrawnBody]) -> Iterable[Row]:
    for one in held:
        if one.role == "clamp":
            yield _row(one.name, clamp_place(mount, room) or "", [one])
            if clamp_range_words(mount, room):
                yield _row(message(MountDrawings.clamp_range), message(MountDrawings.band), [], BAND)


def _device(mount: SiteMount, held: Sequence[DrawnBody]) -> Iterable[Row]:
    sticks = [one for one in held if one.layer == "STICK"]
    notes = [one.note for one in sticks if one.note]
    if sticks:
        yield _row(mount.device, notes[0] if notes else message(MountDrawings.kind, kind="stick"), sticks)
        yield _row(message(MountDrawings.forward), message(MountDrawings.front), [], FRONT)
    for one in held:
        if one.layer == "MOUNT" and one.form == "solid" and one.role != "plate":
            yield _row(one.name, "", [one])
    for one in held:
        if one.layer == "CABLE":
            yield _row(one.name, one.note, [one])


def _room(mount: SiteMount, around: Sequence[DrawnBody]) -> Iterable[Row]:
    used = {one.landmark for one in (mount.choice.dimensions if mount.choice else ())}
    on = _holders(mount)
    for one in sorted(around, key=lambda one: one.typed not in on):
        if one.layer in ("TUBES", "EDGES", "SURFACES") and worth_naming(one, mount):
            yield _row(one.name, one.note, [one])
    for one in around:
        if one.layer == "LANDMARKS" and one.name in used:
            yield _row(one.name, message(MountDrawings.measure_from), [one])
    for one in around:
        if one.layer == "KEEP_OUT":
            at = message(MountDrawings.at_tilt, tilt_rad=one.tilt_rad) if one.tilt_rad else ""
            yield _row(one.name, at, [one])
    for one in around:
        if one.layer == "SEAT":
            at = message(MountDrawings.at_tilt, tilt_rad=one.tilt_rad) if one.tilt_rad else ""
            yield _row(one.name, at or message(MountDrawings.sign), [one])


def _holders(mount: SiteMount) -> tuple[str, ...]:
    """Names of what the mount is clamped to or stands on."""
    choice = mount.choice
    if choice is None:
        return ()
    return (choice.on, choice.arm.clamp if choice.arm is not None else choice.on)


def worth_naming(one: DrawnBody, mount: SiteMount) -> bool:
    """What holds the stick, what may not be clamped, and what is near enough to be taken for it.

    Parameters
    ----------
    one : DrawnBody
        A tube, edge or surface.
    mount : SiteMount
        What is shown.
    """
    if mount.choice is not None and one.name == mount.choice.on:
        return True
    if one.barred:
        return True
    if mount.pose is None or one.role == "floor":
        return False
    arm = mount.choice.arm if mount.choice is not None else None
    spots = (mount.pose.base_m, *(arm.points_m if arm is not None else ()))
    sides = tuple(zip(*one.points, strict=True))
    return any(
        all(min(side) - _NEAR_M <= at <= max(side) + _NEAR_M for side, at in zip(sides, spot, strict=True))
        for spot in spots
    )
