"""Where a mount stands, in words: its distances, its clamp, the drawing for those who do not see it."""

from __future__ import annotations

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_drawings import MountDrawings
from stickwright.codes.mount_poses import End, MountPoses
from stickwright.model.mounting import SiteMount
from stickwright.model.room import Edge, Room, Tube
from stickwright.report.mount_shapes import end_of

__all__ = [
    "LEAST_RANGE_M", "along_words", "clamp_place", "clamp_range_words", "dimension_rows", "distances", "line_named", "mount_alt",
]  # fmt: skip

LEAST_RANGE_M = 0.010
"""A shorter stretch of a tube is no choice of places for a clamp."""


def dimension_rows(mount: SiteMount) -> tuple[tuple[str, str, str], ...]:
    """The distances as a table: from what, to what, how far which way.

    Parameters
    ----------
    mount : SiteMount
        Its chosen mount's distances; none when nothing was chosen.
    """
    told = mount.choice.dimensions if mount.choice is not None else ()
    return tuple(
        (
            one.landmark,
            say(message(MountPoses.end, to=one.to)),
            say(message(MountPoses.far, distance_m=one.distance_m, along=one.along)),
        )
        for one in told
    )


def distances(mount: SiteMount) -> tuple[Message, ...]:
    """The same in sentences, one from each landmark to each point.

    Parameters
    ----------
    mount : SiteMount
        Its chosen mount's distances; none when nothing was chosen.
    """
    told: dict[tuple[str, End], list[Message]] = {}
    for one in mount.choice.dimensions if mount.choice is not None else ():
        far = message(MountPoses.far, distance_m=one.distance_m, along=one.along)
        told.setdefault((one.landmark, one.to), []).append(far)
    return tuple(
        message(MountPoses.distances, start=Name(start), to=to, far=tuple(far)) for (start, to), far in told.items()
    )


def clamp_place(mount: SiteMount, room: Room) -> Message | None:
    """Where on its tube or edge the clamp sits, a clause; None without a clamp.

    Parameters
    ----------
    mount : SiteMount
        With the arm that was chosen.
    room : Room
        With the tube or edge.
    """
    arm = mount.choice.arm if mount.choice is not None else None
    if arm is None:
        return None
    line = line_named(room, arm.clamp)
    end = end_of(line.from_m, line.to_m) if line is not None else None
    kind = "edge" if isinstance(line, Edge) else "tube"
    return message(MountPoses.along, line=kind, end=end, along_m=arm.along_m)  # type: ignore[arg-type]


def along_words(mount: SiteMount, room: Room) -> str:
    """The same in words; empty without a clamp.

    Parameters
    ----------
    mount : SiteMount
        With the arm that was chosen.
    room : Room
        With the tube or edge.
    """
    place = clamp_place(mount, room)
    return "" if place is None else say(place)


def clamp_range_words(mount: SiteMount, room: Room) -> str:
    """Where else on its tube or edge the clamp could sit, told from the same end; empty without a clamp or another place.

    Parameters
    ----------
    mount : SiteMount
        With the arm that was chosen.
    room : Room
        With the tube or edge.
    """
    arm = mount.choice.arm if mount.choice is not None else None
    line = line_named(room, arm.clamp) if arm is not None else None
    if arm is None or line is None:
        return ""
    wide = [(low, high) for low, high in arm.ranges_m if high - low >= LEAST_RANGE_M]
    if not wide:
        return say(message(MountPoses.only_place)) if arm.ranges_m else ""
    lows, highs = zip(*wide, strict=True)
    end = end_of(line.from_m, line.to_m)
    return say(message(MountPoses.places, from_m=lows, to_m=highs, end=end, line=Name(line.name)))


def line_named(room: Room, name: str) -> Tube | Edge | None:
    """The tube or edge of a name; None when the room has none.

    Parameters
    ----------
    room : Room
        As measured.
    name : str
        As its file names it.
    """
    lines: tuple[Tube | Edge, ...] = (*room.tube, *room.edge)
    return next((line for line in lines if line.name == name), None)


def mount_alt(mount: SiteMount, room: Room) -> str:
    """The drawing in words.

    Parameters
    ----------
    mount : SiteMount
        What is drawn.
    room : Room
        What it stands in.
    """
    choice = mount.choice
    told = message(
        MountDrawings.alt, device=Name(mount.device), site=Name(mount.site),
        mount=Name(choice.mount) if choice is not None else None,
        on=Name(choice.on) if choice is not None and choice.on not in ("", choice.mount) else None,
        along=clamp_place(mount, room), distances=distances(mount), free=tuple(Name(box.name) for box in room.keep_out),
    )  # fmt: skip
    return say(told)
