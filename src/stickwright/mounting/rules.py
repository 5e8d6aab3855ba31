"""The hard rules of safety for mounts, and the cautions that go with those that pass.

Rules of this file: what breaks a hard rule is refused, however well it would hold. What only the clinic, the team or the maker can
say is asked for, never guessed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_cautions import MountCautions
from stickwright.codes.mount_rules import DeviceKind, MountRules
from stickwright.codes.to_measure import ToMeasure
from stickwright.model.fit import Caution
from stickwright.model.kit import Mount
from stickwright.model.mounting import MountDoubt
from stickwright.model.parts import NEEDS_CLEARANCE
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Edge, KeepOut, MovesWith, Room, Surface, Tube
from stickwright.mounting.frames import pivot_of, relative_shift_m
from stickwright.mounting.statics import ReleaseWindow
from stickwright.mounting.taking_off import EMERGENCY_S, too_slow
from stickwright.units import STANDARD_GRAVITY

__all__ = [
    "BY_THE_FACE", "DOOR_SPARE_M", "MOST_SHIFT_M", "PINCH_M", "broken_rules", "cautions_for_mount", "overhang_nm",
    "parts_company_m",
    "shifts_m", "tilt_warnings", "width_finding",
]  # fmt: skip

Point = tuple[float, float, float]

BY_THE_FACE = frozenset({"chin", "lip", "cheek", "tongue", "head"})
"""Sites whose mount ends at the face: it must let go."""
DOOR_SPARE_M = 0.05
"""What must be left of the narrowest door [fitting-practice]."""
MOST_SHIFT_M = 0.01
"""How far stick and site may part company when the seat tilts, when the pose gives no tolerance of its own [fitting-practice]."""
PIVOT_OFF_M = 0.35
"""From the seat reference point to the tilt pivot at most, where nobody measured it: common practice, no source."""
PINCH_M = (0.008, 0.025)
"""Gaps that take a finger [fitting-practice]."""
_SOUNDS_LIKE_SEATING = (
    "headrest",
    "head rest",
    "head support",
    "legrest",
    "leg rest",
    "footrest",
    "foot rest",
    "footplate",
    "recline",
)
"""In names of tubes and edges of which the room does not say whether they are such parts: a guard, never a permission."""


def parts_company_m(
    contact_m: Sequence[float], site_moves_with: MovesWith, mount_moves_with: MovesWith, room: Room
) -> float:
    """How far stick and site move apart over the tilt range used in play.

    Parameters
    ----------
    contact_m : sequence of 3 floats
        Contact point, with the seat level.
    site_moves_with, mount_moves_with : {"seat", "base", "room"}
    room : Room

    Returns
    -------
    float
        In metre; 0 when both tilt, neither does, or the chair stays as it is.

    Examples
    --------
    A chin 900 mm above the pivot, a chair that tilts by 40 degrees, a stand on the floor:

    >>> room = Room(tilt_from_rad=0.0873, tilt_to_rad=0.7854, tilt_pivot_m=(0.0, 0.0, 0.0))
    >>> round(1000 * parts_company_m((0.0, 0.0, 0.9), "seat", "room", room))
    616
    """
    if (site_moves_with == "seat") is (mount_moves_with == "seat"):
        return 0.0
    pivot, _ = pivot_of(room)
    return relative_shift_m(contact_m, pivot, room.tilt_to_rad - room.tilt_from_rad)


def shifts_m(
    contact_m: Sequence[float], site_moves_with: MovesWith, mount_moves_with: MovesWith, room: Room
) -> tuple[float, float]:
    """Least and most of how far stick and site move apart, wherever the tilt pivot is that nobody measured.

    Parameters
    ----------
    contact_m : sequence of 3 floats
        Contact point, with the seat level.
    site_moves_with, mount_moves_with : {"seat", "base", "room"}
    room : Room

    Examples
    --------
    >>> room = Room(tilt_from_rad=0.0, tilt_to_rad=0.2)
    >>> print([round(1000 * shift) for shift in shifts_m((0.0, 0.4, 0.3), "seat", "room", room)])
    [30, 170]
    """
    told = parts_company_m(contact_m, site_moves_with, mount_moves_with, room)
    pivot, assumed = pivot_of(room)
    radius = math.hypot(contact_m[1] - pivot[1], contact_m[2] - pivot[2])
    if assumed is None or told == 0.0 or radius == 0.0:
        return told, told
    turned = 2 * abs(math.sin((room.tilt_to_rad - room.tilt_from_rad) / 2))
    return turned * max(0.0, radius - PIVOT_OFF_M), turned * (radius + PIVOT_OFF_M)


def tilt_warnings(
    site: Site, on: Tube | Edge | Surface, room: Room, *, contact_m: Point, site_moves_with: MovesWith, tolerance_m: float
) -> tuple[MountDoubt, ...]:  # fmt: skip
    """That the tilt pivot is to be measured before it is known whether stick and site stay together.

    Parameters
    ----------
    site : Site
    on : Tube, Edge or Surface
        What holds it.
    room : Room
    contact_m : tuple of 3 floats
    site_moves_with : {"seat", "base", "room"}
    tolerance_m : float
        How far they may part company.

    Returns
    -------
    tuple of MountDoubt
        None where the pivot was measured, or where it does not matter.
    """
    least, most = shifts_m(contact_m, site_moves_with, on.moves_with, room)
    if not least < most or not least <= tolerance_m < most:
        return ()
    told = parts_company_m(contact_m, site_moves_with, on.moves_with, room)
    text = message(
        MountRules.tilt_assumed,
        site=Name(site.name), holder=Name(on.name), shift_m=told, tolerance_m=tolerance_m,
    )  # fmt: skip
    return (MountDoubt("tilt", (message(ToMeasure.tilt_pivot),), text),)


def broken_rules(
    site: Site,
    mount: Mount | None,
    on: Tube | Edge | Surface,
    room: Room,
    *,
    contact_m: Point,
    site_moves_with: MovesWith = "seat",
    tolerance_m: float = MOST_SHIFT_M,
    entered: Sequence[KeepOut] = (),
    breakaway: bool = False,
    release: ReleaseWindow | None = None,
    seating_agrees: bool = False,
    thing: DeviceKind = "stick",
    unmeasured: str | None = None,
) -> tuple[Message, ...]:
    """Each hard safety rule that a way of mounting breaks.

    Parameters
    ----------
    site : Site
        Who is played with.
    mount : Mount or None
        None for a base that stands by itself.
    on : Tube, Edge or Surface
        What holds it.
    room : Room
    contact_m : tuple of 3 floats
        Contact point, with the seat level.
    site_moves_with : {"seat", "base", "room"}, default 'seat'
        Whether the part tilts with the seat.
    tolerance_m : float
        How far stick and site may part company.
    entered : sequence of KeepOut
        Boxes that mount or stick enter anywhere in the tilt range.
    breakaway : bool, default False
        Whether it lets go under too hard a push: a coupling, or a joint set to slip.
    release : ReleaseWindow, optional
        Between what limits it lets go.
    seating_agrees : bool, default False
        The seating clinic's word for clamping to a headrest or a moving seat part.
    thing : str, default 'stick'
        What is held.
    unmeasured : str, optional
        A coupling that is there, but nobody measured at what force it lets go: by the face it is no breakaway.

    Returns
    -------
    tuple of Message
        Empty when none is broken.

    Notes
    -----
    Source: common practice [fitting-practice]; the room's own words for what nothing may be clamped to.

    Examples
    --------
    >>> chin = Site.model_validate({"name": "chin", "part": "chin", "cleared": "yes"})
    >>> tube = Tube(name="back tube", from_m=(0.2, 0.0, 0.3), to_m=(0.2, 0.0, 0.6), diameter_m=0.025)
    >>> arm = Mount(name="long arm", kind="friction arm")
    >>> [rule.text for rule in broken_rules(chin, arm, tube, Room(), contact_m=(0.0, 0.1, 0.6))]
    ['must_release']
    """
    return (
        *_clearance_rules(site),
        *_hold_rules(on, seating_agrees),
        *_space_rules(entered),
        *_face_rules(site, breakaway, release, unmeasured),
        *_tilt_rules(
            site,
            mount,
            on,
            room,
            contact_m=contact_m,
            site_moves_with=site_moves_with,
            tolerance_m=tolerance_m,
            thing=thing,
        ),
    )


def _clearance_rules(site: Site) -> tuple[Message, ...]:
    if site.cleared != "no":
        return ()
    return (message(MountRules.not_cleared, site=Name(site.name)),)


def _hold_rules(on: Tube | Edge | Surface, seating_agrees: bool) -> tuple[Message, ...]:
    """Barred tubes first: no word of anybody lifts a maker's ban."""
    if isinstance(on, Tube) and on.not_for_clamps:
        return (message(MountRules.barred, holder=Name(on.name), why=Name(on.not_for_clamps)),)
    if not seating_agrees and _part_of_seating(on):
        return (message(MountRules.seating_part, holder=Name(on.name)),)
    return ()


def _part_of_seating(on: Tube | Edge | Surface) -> bool:
    """As the room says; where it does not, what sounds like such a part is taken for one."""
    if not isinstance(on, Surface) and on.seating_part is not None:
        return on.seating_part
    name = on.name.casefold()
    return any(part in name for part in _SOUNDS_LIKE_SEATING)


def _space_rules(entered: Sequence[KeepOut]) -> tuple[Message, ...]:
    """Only spaces of the body and of the chair; a door or a helper's place is a matter of getting about, not of safety."""
    out = []
    for box in entered:
        match box.kind:
            case "face" | "neck" | "chest" | "chair control" | "tubing" as space:
                out.append(message(MountRules.enters, box=Name(box.name), space=space))
    return tuple(dict.fromkeys(out))


def _face_rules(
    site: Site, breakaway: bool, release: ReleaseWindow | None, unmeasured: str | None
) -> tuple[Message, ...]:
    if site.part not in BY_THE_FACE:
        return ()
    name = Name(site.name)
    if not breakaway and unmeasured is not None:
        coupling = Name(unmeasured)
        measure = message(ToMeasure.release, coupling=coupling)
        return (message(MountRules.release_unmeasured, site=name, coupling=coupling, measure=measure),)
    if not breakaway:
        return (message(MountRules.must_release, site=name),)
    if release is not None and release.empty:
        return (message(MountRules.release_fails, site=name, why=release.words),)
    return ()


def _tilt_rules(
    site: Site,
    mount: Mount | None,
    on: Tube | Edge | Surface,
    room: Room,
    *,
    contact_m: Point,
    site_moves_with: MovesWith,
    tolerance_m: float,
    thing: DeviceKind,
) -> tuple[Message, ...]:
    least, most = shifts_m(contact_m, site_moves_with, on.moves_with, room)
    by_face = site.part in BY_THE_FACE
    if (most if by_face else least) <= tolerance_m:
        return ()
    shift = parts_company_m(contact_m, site_moves_with, on.moves_with, room)
    name, low, high = Name(site.name), room.tilt_from_rad, room.tilt_to_rad
    if by_face and least <= tolerance_m:
        pivot = message(ToMeasure.tilt_pivot)
        return (
            message(MountRules.tilt_unsure, site=name, device=thing, most_m=most, tolerance_m=tolerance_m, measure=pivot),
        )  # fmt: skip
    if mount is not None and mount.kind == "floor stand":
        return (message(MountRules.tilt_stand, site=name, device=thing, from_rad=low, to_rad=high, shift_m=shift),)
    return (
        message(
            MountRules.tilt_apart, site=name, device=thing, with_seat=site_moves_with == "seat", from_rad=low, to_rad=high,
            shift_m=shift, tolerance_m=tolerance_m if math.isfinite(tolerance_m) else None,
        ),
    )  # fmt: skip


def width_finding(width_m: float, room: Room) -> Finding | None:
    """A query when chair and mount leave too little of the narrowest door; never a refusal.

    Parameters
    ----------
    width_m : float
        Over all, with the mount as it stands in play.
    room : Room

    Returns
    -------
    Finding or None
        None when it fits, or no door was measured.

    Examples
    --------
    >>> room = Room(width_m=0.68, narrowest_door_m=0.75)
    >>> width_finding(0.70, room) is None
    True
    >>> width_finding(0.74, room).about
    'width'
    """
    if room.narrowest_door_m is None:
        return None
    most = room.narrowest_door_m - DOOR_SPARE_M
    if width_m <= most + 1e-9:
        return None
    text = message(MountRules.too_wide, width_m=width_m, door_m=room.narrowest_door_m, most_m=most)
    return Finding("query", "width", text)


def overhang_nm(out_m: float, mass_kg: float) -> float:
    """Moment that a mount adds to a chair: m g x.

    Parameters
    ----------
    out_m : float
        Level distance of its mass beyond the wheels.
    mass_kg : float

    Returns
    -------
    float
        In N m; 0 when it hangs inside the wheels.

    Examples
    --------
    >>> round(overhang_nm(0.25, 1.2), 1)
    2.9
    """
    return max(0.0, out_m) * mass_kg * STANDARD_GRAVITY


def cautions_for_mount(
    site: Site,
    player: Player,
    room: Room,
    *,
    mount: Mount | None,
    on: Tube | Edge | Surface,
    out_m: float = 0.0,
    mass_kg: float = 0.0,
    release: ReleaseWindow | None = None,
    gaps_m: Sequence[float] = (),
    take_off_s: float | None = None,
    take_off_assumed: bool = False,
    stability: Message | None = None,
) -> tuple[Caution, ...]:
    """The usual cautions for one mount, each with its number; they defer to team, seating clinic and local rules.

    Parameters
    ----------
    site : Site
    player : Player
    room : Room
    mount : Mount or None
        None for a base that stands by itself.
    on : Tube, Edge or Surface
        What holds it.
    out_m : float, default 0.0
        How far, on the level, its mass hangs from the chair's wheels or frame.
    mass_kg : float, default 0.0
        Of mount and device.
    release : ReleaseWindow, optional
        When it lets go.
    gaps_m : sequence of float
        Gaps that open and close at its joints, where known.
    take_off_s : float, optional
        Time to take it off or swing it aside.
    take_off_assumed : bool, default False
        Whether nobody timed it.
    stability : Message, optional
        What is known of the chair's stability with it, in place of the plain moment.

    Returns
    -------
    tuple of Caution
        About 'mount', 'release', 'force', 'cable', 'stability' or 'transfer'.

    Notes
    -----
    Source: common practice [fitting-practice].

    Examples
    --------
    >>> hand = Site.model_validate({"name": "fist", "part": "hand"})
    >>> player = Player.model_validate({"code": "P1", "site": [{"name": "fist", "part": "hand"}]})
    >>> tray = Surface(name="tray", kind="tray", corner_m=(0, 0, 0), size_m=(0.5, 0.4), moves_with="seat")
    >>> [caution.about for caution in cautions_for_mount(hand, player, Room(), mount=None, on=tray)]
    ['cable', 'transfer', 'mount']
    """
    arm = mount is not None and mount.kind in ("friction arm", "gooseneck", "tube clamp")
    out: list[tuple[str, Message]] = []
    if site.part in NEEDS_CLEARANCE:
        setting = None if release is None else release.words
        out += [
            ("mount", message(MountCautions.face)),
            ("release", message(MountCautions.release, setting=setting)),
        ]
    if "skin" in player.alerts:
        out.append(("force", message(MountCautions.skin)))
    found = tuple(sorted(gap for gap in gaps_m if PINCH_M[0] <= gap <= PINCH_M[1]))
    if arm or found:
        out.append(("mount", message(MountCautions.pinch, low_m=PINCH_M[0], high_m=PINCH_M[1], found_m=found)))
    out.append(("cable", _cable(site, player)))
    if _on_chair(on, room) and out_m > 0 and mass_kg > 0:
        out.append(("stability", _stability(out_m, mass_kg, stability)))
    swings = mount is not None and mount.swings_away
    out.append(("transfer", _transfer(swings, take_off_s, take_off_assumed)))
    if "startle" in player.alerts or site.spasm is not None:
        out.append(("mount", message(MountCautions.startle)))
    out.append(("mount", message(MountCautions.upkeep)))
    return tuple(Caution(about, site.name, text) for about, text in out)


def _cable(site: Site, player: Player) -> Message:
    head = site.part in BY_THE_FACE or "airway" in player.alerts
    return message(MountCautions.cable, head=head, slack_m=site.tilt_slack_m if site.tilt_slack_m > 0 else None)


def _on_chair(on: Tube | Edge | Surface, room: Room) -> bool:
    return on.moves_with in ("seat", "base") and room.posture in ("wheelchair", None)


def _stability(out_m: float, mass_kg: float, known: Message | None) -> Message:
    if known is not None:
        return message(MountCautions.stability_known, known=known)
    return message(MountCautions.stability, mass_kg=mass_kg, out_m=out_m, added_nm=overhang_nm(out_m, mass_kg))


def _transfer(swings: bool, take_off_s: float | None, assumed: bool) -> Message:
    return message(
        MountCautions.transfer,
        swings=swings, time_s=take_off_s, assumed=assumed and take_off_s is not None, aim_s=EMERGENCY_S, slow=too_slow(take_off_s),
    )  # fmt: skip
