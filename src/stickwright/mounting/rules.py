"""The hard rules of safety for mounts, and the cautions that go with those that pass.

Rules of this file: what breaks a hard rule is refused, however well it would hold. What only the clinic, the team or the maker can
say is asked for, never guessed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from stickwright.model.kit import Mount
from stickwright.model.parts import NEEDS_CLEARANCE
from stickwright.model.plan import Caution, Doubt
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Edge, KeepOut, MovesWith, Room, Surface, Tube
from stickwright.mounting.frames import pivot_of, relative_shift_m
from stickwright.mounting.statics import ReleaseWindow
from stickwright.mounting.taking_off import EMERGENCY_S, slow_words
from stickwright.units import STANDARD_GRAVITY, figures, spoken

__all__ = [
    "BY_FACE", "BY_THE_FACE", "DOOR_SPARE_M", "MOST_SHIFT_M", "PINCH_M", "broken_rules", "cautions_for_mount", "overhang_nm",
    "parts_company_m",
    "shifts_m", "tilt_doubts", "width_finding",
]  # fmt: skip

Point = tuple[float, float, float]

BY_THE_FACE = frozenset({"chin", "lip", "cheek", "tongue", "head"})
"""Sites whose mount ends at the face: it must let go."""
BY_FACE = "by the face nothing is left to an assumed figure, as a wrong guess there hurts somebody"
DOOR_SPARE_M = 0.05
"""What must be left of the narrowest door [fitting-practice]."""
MOST_SHIFT_M = 0.01
"""How far stick and site may part company when the seat tilts, when the pose gives no tolerance of its own [fitting-practice]."""
PIVOT_OFF_M = 0.35
"""From the seat reference point to the tilt pivot at most, where nobody measured it: common practice, no source."""
MEASURE_PIVOT = (
    "measure the tilt pivot: tilt the chair, and how far forward and how far below the seat the point lies that stays"
)
PINCH_M = (0.008, 0.025)
"""Gaps that take a finger [fitting-practice]."""
_NEVER_INTO = {
    "face": "the space in front of the face",
    "neck": "the space about the neck",
    "chest": "the space before the chest",
    "chair control": "the way of the chair's own control",
    "tubing": "the way of the tubing",
}
_SEATING_PARTS = (
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


def tilt_doubts(
    site: Site, on: Tube | Edge | Surface, room: Room, *, contact_m: Point, site_moves_with: MovesWith, tolerance_m: float
) -> tuple[Doubt, ...]:  # fmt: skip
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
    tuple of Doubt
        None where the pivot was measured, or where it does not matter.
    """
    least, most = shifts_m(contact_m, site_moves_with, on.moves_with, room)
    if not least < most or not least <= tolerance_m < most:
        return ()
    told = parts_company_m(contact_m, site_moves_with, on.moves_with, room)
    text = (
        f"with the tilt pivot at the seat reference point the tilt moves {site.name} and {on.name} {spoken(told, 'mm')} apart; "
        f"{spoken(tolerance_m, 'mm')} would do"
    )
    return (Doubt("tilt", MEASURE_PIVOT, text),)


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
    thing: str = "stick",
) -> tuple[str, ...]:
    """Each hard safety rule that a way of mounting breaks, in a sentence.

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

    Returns
    -------
    tuple of str
        Empty when none is broken.

    Notes
    -----
    Source: common practice [fitting-practice]; the room's own words for what nothing may be clamped to.

    Examples
    --------
    >>> chin = Site.model_validate({"name": "chin", "part": "chin", "cleared": "yes"})
    >>> tube = Tube(name="back tube", from_m=(0.2, 0.0, 0.3), to_m=(0.2, 0.0, 0.6), diameter_m=0.025)
    >>> arm = Mount(name="long arm", kind="friction arm")
    >>> broken_rules(chin, arm, tube, Room(), contact_m=(0.0, 0.1, 0.6))
    ('chin: a mount at the face must let go; fit a breakaway coupling or set a joint to slip.',)
    """
    return (
        *_clearance_rules(site),
        *_hold_rules(on, seating_agrees),
        *_space_rules(entered),
        *_face_rules(site, breakaway, release),
        *_tilt_rules(site, mount, on, room, contact_m, site_moves_with, tolerance_m, thing),
    )


def _clearance_rules(site: Site) -> tuple[str, ...]:
    if site.cleared != "no":
        return ()
    return (f"{site.name}: the treating team has said no to this site.",)


def _hold_rules(on: Tube | Edge | Surface, seating_agrees: bool) -> tuple[str, ...]:
    """Barred tubes first: no word of anybody lifts a maker's ban."""
    if isinstance(on, Tube) and on.not_for_clamps:
        return (f"{on.name}: nothing may be clamped here ({on.not_for_clamps}).",)
    name = on.name.casefold()
    if not seating_agrees and any(part in name for part in _SEATING_PARTS):
        return (
            f"{on.name}: a headrest or a moving part of the seat takes a mount only with the seating clinic's word.",
        )
    return ()


def _space_rules(entered: Sequence[KeepOut]) -> tuple[str, ...]:
    """Only spaces of the body and of the chair; a door or a helper's place is a matter of getting about, not of safety."""
    return tuple(
        dict.fromkeys(
            f"{box.name}: the mount enters {_NEVER_INTO[box.kind]}." for box in entered if box.kind in _NEVER_INTO
        )
    )


def _face_rules(site: Site, breakaway: bool, release: ReleaseWindow | None) -> tuple[str, ...]:
    if site.part not in BY_THE_FACE:
        return ()
    if not breakaway:
        return (f"{site.name}: a mount at the face must let go; fit a breakaway coupling or set a joint to slip.",)
    if release is not None and release.empty:
        return (f"{site.name}: {release.words}",)
    return ()


def _tilt_rules(
    site: Site,
    mount: Mount | None,
    on: Tube | Edge | Surface,
    room: Room,
    contact_m: Point,
    site_moves_with: MovesWith,
    tolerance_m: float,
    thing: str,
) -> tuple[str, ...]:
    least, most = shifts_m(contact_m, site_moves_with, on.moves_with, room)
    by_face = site.part in BY_THE_FACE
    if (most if by_face else least) <= tolerance_m:
        return ()
    shift = parts_company_m(contact_m, site_moves_with, on.moves_with, room)
    if by_face and least <= tolerance_m:
        return (
            f"{site.name}: over the tilts used in play it may move {spoken(most, 'mm')} against the {thing}, as the tilt pivot is only "
            f"assumed; {spoken(tolerance_m, 'mm')} would do; {BY_FACE}. To lift this, {MEASURE_PIVOT}.",
        )
    how = f"tilting from {spoken(room.tilt_from_rad, 'deg')} to {spoken(room.tilt_to_rad, 'deg')} moves {site.name} by"
    if mount is not None and mount.kind == "floor stand":
        return (f"A floor stand for a chair that tilts: {how} {spoken(shift, 'mm')} away from the {thing}.",)
    who = "the seat and the mount does not" if site_moves_with == "seat" else "nothing that tilts and the mount does"
    return (
        f"{site.name} moves with {who}: {how} {spoken(shift, 'mm')} against the {thing}; {spoken(tolerance_m, 'mm')} would do.",
    )


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
    >>> print(width_finding(0.74, room).text)
    With the mount 740 mm wide; the narrowest door of 750 mm wants at most 700 mm. Swing it aside or take it off for the door.
    """
    if room.narrowest_door_m is None:
        return None
    most = room.narrowest_door_m - DOOR_SPARE_M
    if width_m <= most + 1e-9:
        return None
    door = f"the narrowest door of {spoken(room.narrowest_door_m, 'mm')} wants at most {spoken(most, 'mm')}"
    return Finding(
        "query",
        "width",
        f"With the mount {spoken(width_m, 'mm')} wide; {door}. Swing it aside or take it off for the door.",
    )


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
    stability: str = "",
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
    stability : str, default ''
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
    out: list[tuple[str, str]] = []
    if site.part in NEEDS_CLEARANCE:
        out += _face_cautions(release)
    if "skin" in player.alerts:
        text = "Skin: no edge, knob or tube against it; look after 10, then 30 minutes, where the part rests and where it might slip to."
        out.append(("force", text))
    if arm or any(PINCH_M[0] <= gap <= PINCH_M[1] for gap in gaps_m):
        out.append(("mount", _pinch_words(gaps_m)))
    out.append(("cable", _cable_words(site, player)))
    if _on_chair(on, room) and out_m > 0 and mass_kg > 0:
        out.append(("stability", _stability_words(out_m, mass_kg, stability)))
    out.append(("transfer", _transfer_words(mount, take_off_s, take_off_assumed)))
    if "startle" in player.alerts or site.spasm is not None:
        out.append(
            (
                "mount",
                "Pad edges and knobs within reach of a spasm; nothing heavy at head height; tighten and try before each session.",
            )
        )
    out.append(
        (
            "mount",
            "Follow the maker's papers and the local rules for what is fixed to a chair; check clamps and fasteners every month.",
        )
    )
    return tuple(Caution(about, site.name, text) for about, text in out)


def _face_cautions(release: ReleaseWindow | None) -> list[tuple[str, str]]:
    near = (
        "Near the face: soft parts, nothing rigid towards eye or throat; the mount moves with the head support; the player can get clear "
        "alone or somebody stays; never while travelling."
    )
    words = "Try at each set-up that it lets go." if release is None else release.words
    return [("mount", near), ("release", f"Release: {words} The treating team agrees the limit.")]


def _pinch_words(gaps_m: Sequence[float]) -> str:
    low, high = (spoken(gap, "mm") for gap in PINCH_M)
    bad = [gap for gap in gaps_m if PINCH_M[0] <= gap <= PINCH_M[1]]
    found = f" Found: {', '.join(spoken(gap, 'mm') for gap in sorted(bad))}: cover it." if bad else ""
    return (
        f"Fingers: no gap of {low} to {high} at joints, clamps or the stick's slot; cover what opens and closes.{found}"
    )


def _cable_words(site: Site, player: Player) -> str:
    text = "Cables along the mount and tied, no loops, none across a walkway"
    if site.part in BY_THE_FACE or "airway" in player.alerts:
        text += "; none across neck, chest or tubing, and a lead near the head that pulls apart"
    slack = f", with {spoken(site.tilt_slack_m, 'mm')} to spare for tilting" if site.tilt_slack_m > 0 else ""
    return f"{text}{slack}."


def _on_chair(on: Tube | Edge | Surface, room: Room) -> bool:
    return on.moves_with in ("seat", "base") and room.posture in ("wheelchair", None)


def _stability_words(out_m: float, mass_kg: float, known: str) -> str:
    ask = "ask the seating clinic before it moves or stands on a slope, and remove it for transport."
    if known:
        return f"Stability of the chair: {known} Whatever this says, {ask}"
    added = spoken(overhang_nm(out_m, mass_kg), "nm")
    said = f"{figures(mass_kg)} kg at {spoken(out_m, 'mm')} outside the frame add {added}"
    return f"Stability of the chair: {said}; {ask}"


def _transfer_words(mount: Mount | None, take_off_s: float | None, assumed: bool) -> str:
    swings = mount is not None and mount.swings_away
    how = "swings aside and comes back to its mark" if swings else "comes off"
    if take_off_s is not None:
        how += (
            f" in about {spoken(take_off_s, 's')} (assumed; time it)" if assumed else f" in {spoken(take_off_s, 's')}"
        )
    slow = slow_words(take_off_s)
    return (
        f"Transfers and emergencies: it {how}; show everybody who helps how, aim for under {spoken(EMERGENCY_S, 's')} with one hand, "
        f"and keep the transfer side free.{f' {slow}' if slow else ''}"
    )
