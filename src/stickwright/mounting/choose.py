"""What holds a device in its place: every surface it could stand on and every arm that reaches, checked, refused or ranked.

Those that hold come first: least throw lost, fewest parts, quickest to take off. What does not hold says why and what would
make it hold. What breaks a hard safety rule is refused, whatever else it does well.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from stickwright.errors import BadInput
from stickwright.model.estimate import Estimate
from stickwright.model.kit import Fastener, Kit, Mount
from stickwright.model.mounting import ArmPose, Check, Dimension, MountFit, Pose, SiteMount
from stickwright.model.plan import Caution
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Edge, KeepOut, MovesWith, Room, Surface, Tube
from stickwright.mounting.carried import UNMEASURED_BASE_M, head_of
from stickwright.mounting.chair_stability import chair_stability, stability_findings
from stickwright.mounting.change import Reach, Stand, smallest_change, stand_change
from stickwright.mounting.clearance import boxes_seen_from, clearances_m
from stickwright.mounting.footing import Foot, foot_checks, with_fastener
from stickwright.mounting.frames import tilts_with_seat, turned
from stickwright.mounting.friction import assumed_friction
from stickwright.mounting.give import TipShares, droop_m, droop_rad, give_findings, ringing_hz, tip_shares
from stickwright.mounting.held import Held
from stickwright.mounting.mount_parts import STOCKED
from stickwright.mounting.neck_load import neck_checks, neck_sag
from stickwright.mounting.pose import placed, pose_of
from stickwright.mounting.rules import BY_THE_FACE, broken_rules, cautions_for_mount, width_finding
from stickwright.mounting.search import ArmReach, arm_reaches
from stickwright.mounting.standing import clamp_checks, stand_checks, surface_checks
from stickwright.mounting.statics import (
    Pushes,
    ReleaseWindow,
    arm_weights,
    joint_checks,
    release_check,
    release_window,
    weight_moment_nm,
)
from stickwright.mounting.taking_off import with_take_off
from stickwright.units import spoken

__all__ = ["site_mount", "without_place"]

Array = NDArray[np.float64]
LEVEL_M = 0.012
"""How far a base may be off the height of a surface before something must go under it, or it is too high."""
MOST_PACKED_M = 0.120
"""Packing under a base beyond which it is no longer steady: common practice, no source."""
MOST_RAISED_M = 0.040
"""By which a pad may raise a part that lies on something: common practice, no source."""
RAISED_PARTS = frozenset({"fingertip", "thumb", "hand", "forearm", "elbow", "foot", "toe"})
ARMS = ("friction arm", "gooseneck")
ANTI_SLIP = "anti-slip sheet"
_TAPE_M = 0.002
LOOP_M = 0.15
"""Of cable that the joints of an arm need to move: common practice, no source."""
TILTS = 5
"""Tilts of the seat that are looked at, from least to most."""


def without_place(site: Site, held: Held) -> SiteMount:
    """What can be said of a site whose place nobody measured.

    Parameters
    ----------
    site : Site
    held : Held
    """
    text = f"Where {site.name} rests was not measured ([[place]] in room.toml), so nothing is said of what could hold {held.named}."
    return SiteMount(
        site.name,
        held.device,
        None,
        None,
        (),
        text,
        (),
        (Finding("query", "place", text),),
        held.kind,
        held.pieces,
        held.base_m,
    )


def site_mount(
    site: Site,
    held: Held,
    room: Room,
    kit: Kit,
    pushes: Pushes,
    *,
    player: Player,
    direction_rad: Sequence[float],
    reach_m: Sequence[float],
    recorded_turn: Estimate | None = None,
) -> SiteMount:
    """Where one device goes and what holds it.

    Parameters
    ----------
    site : Site
    held : Held
    room : Room
    kit : Kit
    pushes : Pushes
    player : Player
        For the cautions.
    direction_rad, reach_m : sequence of float, shape (k,)
        The player's comfortable reach.
    recorded_turn : Estimate, optional
        How far recordings say that the base is to be turned.
    """
    try:
        where = placed(site, room)
    except BadInput as refused:  # tape that does not lead to a point is a state, like a place not measured
        text = " ".join(str(problem) for problem in refused.problems)
        return SiteMount(
            site.name,
            held.device,
            None,
            None,
            (),
            text,
            (),
            (Finding("query", "place", text),),
            held.kind,
            held.pieces,
            held.base_m,
        )
    if where is None:
        return without_place(site, held)
    pose = pose_of(
        site, where, base_height_m=held.pivot_m, contact_height_m=held.contact_height_m,
        tilt_rad=held.tilt_rad, own_slope_rad=held.own_slope_rad, direction_rad=direction_rad, reach_m=reach_m,
        recorded_turn=recorded_turn,
    )  # fmt: skip
    if held.tolerance_m is not None:
        pose = replace(pose, tolerance_m=held.tolerance_m)
    fits: list[MountFit] = []
    for surface in room.surface:
        fits += _on_surface(site, held, pose, room, kit, pushes, surface, where.moves_with)
    arms = [mount for mount in kit.mount if mount.kind in ARMS and mount.in_stock]
    for mount, found in zip(
        arms, arm_reaches(pose, room, arms, moves_with=where.moves_with, base_m=held.outline_m), strict=True
    ):
        fits += [_on_arm(site, held, pose, room, kit, pushes, mount, way, where.moves_with) for way in found.poses[:2]]
        if not found.poses:
            fits.append(_cannot(mount, _nearest_reason(found)))
    for mount in kit.mount:
        if mount.kind == "floor stand" and mount.in_stock:
            fits += _on_stand(site, held, pose, room, kit, pushes, mount, where.moves_with)
    ordered = tuple(sorted((with_take_off(fit, kit) for fit in fits), key=_rank))
    choice = next((fit for fit in ordered if fit.verdict == "holds"), None)
    cautions: tuple[Caution, ...] = ()
    findings = where.findings
    if choice is not None:
        on = _holder(room, choice.on)
        used = next((one for one in kit.mount if one.name == choice.mount), None)
        if on is not None:
            whole_kg = held.whole_kg + (used.mass_kg or 0.0 if used else 0.0)
            window = _window(site, pose, room, choice.arm, used, held, pushes)
            hangs = chair_stability(room, on.moves_with, pose.base_m, whole_kg if choice.arm is not None else 0.0)
            cautions = cautions_for_mount(
                site, player, room, mount=used, on=on, mass_kg=whole_kg, release=window, take_off_s=choice.take_off_s,
                take_off_assumed=used is None or used.take_off_s is None, out_m=hangs.out_m, stability=hangs.words,
            )  # fmt: skip
            findings += stability_findings(site.name, hangs)
        findings += _too_wide(room, pose, choice)
        if math.isfinite(choice.give_n_per_m):
            findings += _give_findings(held, choice)
    return SiteMount(
        site.name,
        held.device,
        pose,
        choice,
        ordered,
        _sentence(site, held, choice, ordered),
        cautions,
        findings,
        held.kind,
        held.pieces,
        held.base_m,
    )


def _give_findings(held: Held, choice: MountFit) -> tuple[Finding, ...]:
    """What is worth saying of what gives: of a stick its throw and swing, of a switch whether it still fires."""
    if held.kind == "stick" or (held.travel_m > 0 and held.kind == "controller"):
        return give_findings(held.full_force_n, choice.give_n_per_m, held.travel_m, choice.ringing_hz)
    given = held.full_force_n / choice.give_n_per_m
    needs = held.travel_m + given
    if held.presses_in_m is None or needs <= held.presses_in_m:
        return ()
    text = (
        f"{held.device} on {choice.mount} may not fire: its travel of {spoken(held.travel_m, 'mm')} and the {spoken(given, 'mm')} that the "
        f"mount gives are more than the {spoken(held.presses_in_m, 'mm')} that the part pushes in. Shorten the arm or brace it."
    )
    return (Finding("query", "give", text),)


def _too_wide(room: Room, pose: Pose, choice: MountFit) -> tuple[Finding, ...]:
    """Whether the chair still goes through the door with an arm out."""
    holder = _holder(room, choice.on)
    if choice.arm is None or room.width_m is None or holder is None or holder.moves_with == "room":
        return ()
    sides = [point[0] for point in (*choice.arm.points_m, pose.base_m)]
    whole = max(room.width_m / 2, max(sides)) + max(room.width_m / 2, -min(sides))
    found = width_finding(whole, room)
    return () if found is None else (found,)


def _nearest_reason(found: ArmReach) -> str:
    """Why an arm does not reach: by how much it is too short, where that is all; else the first reason."""
    short = [reason for reason in found.reasons if "too short" in reason]
    return (short or found.reasons or ("there is nothing to clamp it to",))[0]


def _holder(room: Room, name: str) -> Tube | Edge | Surface | None:
    things: list[Tube | Edge | Surface] = [*room.tube, *room.edge, *room.surface]
    return next((one for one in things if one.name == name), None)


def _coupling(kit: Kit, site: Site) -> Mount | None:
    """What lets go on purpose: at the face nothing is mounted without."""
    if site.part not in BY_THE_FACE:
        return None
    return next((one for one in kit.mount if one.kind == "breakaway coupling" and one.in_stock), None)


def _window(
    site: Site, pose: Pose, room: Room, way: ArmPose | None, mount: Mount | None, held: Held, pushes: Pushes
) -> ReleaseWindow | None:
    """Between what limits an arm at the face lets go, at its clamp."""
    if way is None or mount is None or site.part not in BY_THE_FACE:
        return None
    weights = arm_weights(way.points_m, mount.mass_kg or 0.0, pose.base_m, held.whole_kg)
    clamp, tilts = way.points_m[0], _tilts(room, way.clamp)
    weight_nm = max(float(np.linalg.norm(weight_moment_nm(clamp, weights, tilt))) for tilt in tilts)
    reach = math.dist(clamp, pose.contact_m)
    if reach <= 0:
        return None
    return release_window(weight_nm, pushes.working_n, reach, site.release_limit_n)


def _entered(room: Room, held: Held, pose: Pose, moves_with: MovesWith) -> tuple[KeepOut, ...]:
    """Boxes that the base stands in anywhere in the tilt range; of a base that nobody measured, its middle."""
    if not room.keep_out:
        return ()
    length, width, height = held.outline_m or (0.0, 0.0, 0.0)
    feet = np.array([(x, y, 0.0) for x in (-width / 2, 0.0, width / 2) for y in (-length / 2, 0.0, length / 2)])
    frame = turned(pose.turn_rad, pose.tilt_rad)
    low, high = (np.asarray(pose.base_m) + (feet + np.array([0.0, 0.0, up])) @ frame.T for up in (0.0, height))
    found, names = clearances_m(low, high, boxes_seen_from(room, tilts_with_seat(moves_with)))
    inside = {name for name, near in zip(names, found.min(axis=0), strict=True) if near <= 0}
    return tuple(box for box in room.keep_out if box.name in inside)


def _rank(fit: MountFit) -> tuple[object, ...]:
    order = {"holds": 0, "does not hold": 1, "refused": 2}[fit.verdict]
    margin = -fit.margin if order else 0.0
    return (
        order,
        margin,
        len(fit.fails) if order else 0,
        0.0 if math.isnan(fit.lost_share) else round(fit.lost_share, 3),
        len(fit.parts),
        math.inf if fit.take_off_s is None else fit.take_off_s,
        -min(fit.margin, 10.0),
        fit.mount,
    )


def _margin(checks: Sequence[Check]) -> float:
    known = [check for check in checks if check.wanted > 0 and not math.isnan(check.factor)]
    # what lets go on purpose holds though its factor is below the wanted one
    judged = [check for check in known if not (check.holds and check.factor < check.wanted * (1 - 1e-9))]
    unknown = any(math.isnan(check.factor) and not check.holds for check in checks)
    return 0.0 if unknown else min((check.factor / check.wanted for check in judged), default=math.inf)


def _reach_of(held: Held) -> float:
    """Contact point above the underside of the base."""
    return held.contact_height_m + (held.pivot_m or 0.0)


def _on_surface(
    site: Site, held: Held, pose: Pose, room: Room, kit: Kit, pushes: Pushes, surface: Surface, moves_with: MovesWith
) -> list[MountFit]:
    """Standing on a table, tray or floor, free or fixed by each fastener of the kit."""
    x, y, z = pose.base_m
    left, near, top = surface.corner_m
    width, depth = surface.size_m
    long, wide = (held.base_m[0], held.base_m[1]) if held.base_m else (0.0, 0.0)
    half = held.pieces * max(long, wide) / 2
    if not (left - half <= x <= left + width + half and near - half <= y <= near + depth + half):
        return []
    gap = z - top
    if gap > 4 * MOST_PACKED_M or gap < -4 * MOST_PACKED_M:  # another storey of the room
        return []
    fails: list[str] = []
    parts = [held.named]
    if gap > MOST_PACKED_M:
        fails.append(f"{surface.name} is {spoken(gap, 'mm')} below the underside of the base: too far to pack up")
    elif gap > LEVEL_M:
        parts.append(f"packing {spoken(gap, 'mm')} high, screwed or bonded under the base")
    elif gap < -LEVEL_M and -gap <= MOST_RAISED_M and site.part in RAISED_PARTS:
        parts.append(f"support under the part, {spoken(-gap, 'mm')} higher than now")
    elif gap < -LEVEL_M:
        fails.append(f"{surface.name} is {spoken(-gap, 'mm')} too high: the base would stand in it")
    over = [side for side, off in (("left", left - (x - half)), ("right", x + half - left - width),
                                   ("near side", near - (y - half)), ("far side", y + half - near - depth)) if off > 0.005]  # fmt: skip
    if over:
        fails.append(f"the base would hang over the {' and '.join(over)} of {surface.name}")
    refused = broken_rules(
        site, None, surface, room, contact_m=pose.contact_m, site_moves_with=moves_with, tolerance_m=pose.tolerance_m, thing=held.kind,
        entered=_entered(room, held, pose, moves_with),
    )  # fmt: skip
    friction, assumed = assumed_friction(surface.material, "smooth plastic")
    slope = max(abs(room.tilt_from_rad), abs(room.tilt_to_rad)) if surface.moves_with == "seat" else 0.0
    foot = Foot(
        (long, wide) if held.base_m else UNMEASURED_BASE_M,
        _reach_of(held) + max(0.0, gap),
        held.mass_kg or 0.0,
        friction=friction,
        assumed=assumed,
        tilt_rad=slope,
        pressed=held.kind == "switch",
    )
    under = surface_checks(surface, pushes, _reach_of(held), held.whole_kg)
    stuck = [one for one in kit.fastener if one.in_stock and (surface.kind != "floor" or one.kind == ANTI_SLIP)]
    out = []
    for plate, fastener, sheet in _surface_ways(surface, kit):
        height = _reach_of(held) + max(0.0, gap)
        own, stand = foot_checks(with_fastener(foot, fastener), pushes), None
        if plate is not None:
            stand = Stand(plate, height, held.whole_kg, surface.material, held.kind == "switch")
            if sheet is not None and (stand.holds(pushes) or stand.on(sheet) == stand):
                continue  # it stays without
            stand = stand if sheet is None else stand.on(sheet)
            under = stand_checks(
                stand.mount, pushes, height, held.whole_kg, floor=surface.material, pressed=held.kind == "switch"
            )
        checks = (*own, *under)
        bad = [check.words.rstrip(".") for check in checks if not check.holds]
        change = ""
        if bad and not fails:
            change = _surface_change(own, under, foot=with_fastener(foot, fastener), pushes=pushes, kit=kit, stuck=stuck, stand=stand,
                                     tray=surface.name)  # fmt: skip
        slip = sheet if sheet is not None else fastener if fastener is not None and fastener.kind == ANTI_SLIP else None
        out.append(
            MountFit(
                mount=plate.name if plate else surface.name, kind=plate.kind if plate else surface.kind, on=surface.name,
                fastener=fastener.name if fastener else None,
                patch_m=_patch(foot, fastener, pushes), arm=None, checks=checks, margin=_margin(checks),
                give_n_per_m=math.inf, lost_share=0.0, droop_m=0.0, droop_rad=0.0, ringing_hz=math.nan,
                parts=(*parts, *(one.name for one in (plate, fastener, sheet) if one)), take_off_s=None,
                verdict="refused" if refused else "does not hold" if fails or bad else "holds",
                fails=(*fails, *bad), refused=refused, change=change,
                dimensions=_dimensions(room, pose, surface.moves_with), cable_m=None,
                assumed=(*((assumed,) if fastener is None and assumed else ()), *_unlevel(surface, gap), *_unmeasured(held)),
                openings=fastener.openings if fastener else None, anti_slip=slip.name if slip else None,
                lever_m=(_reach_of(held), max(0.0, gap)),
            )
        )  # fmt: skip
    return out


def _unlevel(surface: Surface, gap_m: float) -> tuple[str, ...]:
    """That a base is left a little higher or lower than the part was measured."""
    if not _TAPE_M <= abs(gap_m) <= LEVEL_M:
        return ()
    way = "below" if gap_m > 0 else "above"
    return (
        f"{surface.name} lies {spoken(abs(gap_m), 'mm')} {way} where the underside of the base is to be: up to {spoken(LEVEL_M, 'mm')} is "
        "let be, and the part comes to rest so much lower or higher",
    )


def _surface_ways(surface: Surface, kit: Kit) -> list[tuple[Mount | None, Fastener | None, Fastener | None]]:
    """Board, fastener of the device, anti-slip sheet under the board. Nothing is stuck to a floor: a board lies on it, by itself or on
    a sheet, and the device is fixed to the board."""
    stuck = [one for one in kit.fastener if one.in_stock and (surface.kind != "floor" or one.kind == ANTI_SLIP)]
    ways: list[tuple[Mount | None, Fastener | None, Fastener | None]] = [(None, one, None) for one in (None, *stuck)]
    if surface.kind == "floor":
        boards = [one for one in kit.mount if one.kind == "floor plate" and one.in_stock]
        sheets = [one for one in stuck if one.friction is not None]
        strongest = next(iter(_stronger_first(kit)), None)
        ways += [(board, strongest, sheet) for board in boards for sheet in (None, *sheets)]
    return ways


def _surface_change(
    own: Sequence[Check], under: Sequence[Check], *, foot: Foot, pushes: Pushes, kit: Kit, stuck: Sequence[Fastener],
    stand: Stand | None, tray: str,
) -> str:  # fmt: skip
    """The smallest change for the base, and for the board under it where that is what slides or tips."""
    if stand is None:
        return smallest_change((*own, *under), foot=foot, pushes=pushes, fasteners=stuck, tray=tray)
    told = []
    if not all(check.holds for check in own):
        told.append(
            smallest_change(own, foot=foot, pushes=pushes, fasteners=[one for one in kit.fastener if one.in_stock])
        )
    if not all(check.holds for check in under):
        told.append(stand_change(stand, pushes, kit.fastener))
    return " ".join(told) if all(told) else ""


def _patch(foot: Foot, fastener: Fastener | None, pushes: Pushes) -> tuple[float, float] | None:
    return foot.patch if fastener is not None and pushes.working_n > 0 else None


def _on_stand(
    site: Site, held: Held, pose: Pose, room: Room, kit: Kit, pushes: Pushes, mount: Mount, moves_with: MovesWith
) -> list[MountFit]:
    """On a floor stand, over each floor that lies below."""
    out = []
    give = mount.give_n_per_m if mount.give_n_per_m is not None else math.inf
    unknown = (
        () if mount.give_n_per_m is not None else (f"how far {mount.name} gives was not measured: pull at its end",)
    )
    for floor in room.surface:
        height = pose.contact_m[2] - floor.corner_m[2]
        if floor.kind != "floor" or height <= 0:
            continue
        checks = stand_checks(mount, pushes, height, held.whole_kg, floor=floor.material)
        refused = broken_rules(
            site, mount, floor, room, contact_m=pose.contact_m, site_moves_with=moves_with, tolerance_m=pose.tolerance_m, thing=held.kind,
            entered=_entered(room, held, pose, moves_with),
        )  # fmt: skip
        bad = tuple(check.words.rstrip(".") for check in checks if not check.holds)
        out.append(
            MountFit(
                mount=mount.name, kind=mount.kind, on=floor.name, fastener=None, patch_m=None, arm=None, checks=checks,
                margin=_margin(checks), give_n_per_m=give,
                lost_share=held.lost_share(give), droop_m=0.0, droop_rad=0.0,
                ringing_hz=math.nan, parts=(held.named, mount.name), take_off_s=None,
                verdict="refused" if refused else "does not hold" if bad else "holds", fails=bad, refused=refused,
                change=stand_change(Stand(mount, height, held.whole_kg, floor.material), pushes, kit.fastener) if bad else "",
                dimensions=_dimensions(room, pose, floor.moves_with), cable_m=None, assumed=(*unknown, *_unmeasured(held)),
            )
        )  # fmt: skip
    return out


def _on_arm(
    site: Site,
    held: Held,
    pose: Pose,
    room: Room,
    kit: Kit,
    pushes: Pushes,
    mount: Mount,
    way: ArmPose,
    moves_with: MovesWith,
) -> MountFit:
    """On an arm or gooseneck clamped to a tube or an edge."""
    device_kg = held.whole_kg
    plate = _stronger_first(kit)
    weights = arm_weights(way.points_m, mount.mass_kg or 0.0, pose.base_m, device_kg)
    tilts = _tilts(room, way.clamp)
    coupling = _coupling(kit, site)
    lets_go = coupling is not None
    window = _window(site, pose, room, way, mount, held, pushes)
    of_joints = neck_checks if mount.kind == "gooseneck" else joint_checks
    checks = list(
        of_joints(
            way.points_m, mount.holding_nm, pushes, weights, contact_m=pose.contact_m, tilts_rad=tilts, lets_go=lets_go
        )
    )
    along = _along(room, way.clamp)
    if along is not None:
        slips = mount.holding_nm[0] if mount.holding_nm else None
        checks += clamp_checks(
            way.points_m[0], along, pose.contact_m, pushes, weights, slips, tilts_rad=tilts, lets_go=lets_go
        )
    parts = [held.named, mount.name]
    fastener, foot = plate[0] if plate else None, None
    if fastener is not None:
        long, wide = (held.base_m[0], held.base_m[1]) if held.base_m else UNMEASURED_BASE_M
        foot = Foot((long, wide), _reach_of(held), held.mass_kg or 0.0, fastener=fastener)
        checks += foot_checks(foot, pushes)
        parts.append(fastener.name)
    released: Check | None = None
    if window is not None and coupling is not None:
        released = release_check(window, coupling.release_n)
        checks.append(released)
        parts.append(coupling.name)
    on = _holder(room, way.clamp)
    refused = () if on is None else broken_rules(
        site, mount, on, room, contact_m=pose.contact_m, site_moves_with=moves_with, tolerance_m=pose.tolerance_m, thing=held.kind,
        breakaway=lets_go, release=window,
    )  # fmt: skip
    bad = [check.words.rstrip(".") for check in checks if not check.holds]
    give = mount.give_n_per_m if mount.give_n_per_m is not None else math.inf
    lost = held.lost_share(give)
    if lost >= 1:
        bad.append(_gives_too_much(held, mount, lost * held.travel_m))
    shares = tip_shares(mount.links_m, bends=mount.kind == "gooseneck")
    sunk = droop_m(device_kg + shares.sinks * (mount.mass_kg or 0.0), give) if math.isfinite(give) else 0.0
    leans = droop_rad(sunk, sum(mount.links_m) or 1e-9) if sunk else 0.0
    if mount.kind == "gooseneck" and math.isfinite(give):
        sag = max((neck_sag(way.points_m, give, weights, tilt) for tilt in tilts), key=lambda one: one.droop_m)
        sunk, leans = sag.droop_m, sag.droop_rad
    return MountFit(
        mount=mount.name, kind=mount.kind, on=way.clamp, fastener=fastener.name if fastener else None,
        patch_m=(held.base_m[0], held.base_m[1]) if held.base_m and fastener else None, arm=way, checks=tuple(checks),
        margin=_margin(checks), give_n_per_m=give, lost_share=lost,
        droop_m=sunk, droop_rad=leans,
        ringing_hz=ringing_hz(give, _swinging_kg(held, mount, shares)) if math.isfinite(give) else math.nan, parts=tuple(parts),
        take_off_s=None,
        verdict="refused" if refused else "does not hold" if bad else "holds", fails=tuple(bad), refused=refused,
        change=smallest_change(
            checks, foot=foot, pushes=pushes, arm=Reach(math.dist(way.points_m[0], pose.contact_m)),
            fasteners=[one for one in kit.fastener if one.in_stock],
        ) if bad else "", dimensions=_dimensions(room, pose, "seat" if on is None else on.moves_with, way),
        cable_m=_length(way.points_m) + head_of(mount) + LOOP_M, cable_slack_m=LOOP_M,
        assumed=(*_arm_assumed(mount, held, fastener), *_unmeasured(held), *way.assumed),
        lever_m=(_reach_of(held), 0.0), openings=fastener.openings if fastener else None,
        coupling=coupling.name if coupling is not None and released is not None else None,
        release_nm=(released.load, released.limit) if released is not None else None,
        release_n=_released_n(released, window),
        release_agreed=window is not None and window.limit_n is not None,
    )  # fmt: skip


def _released_n(released: Check | None, window: ReleaseWindow | None) -> tuple[float, float] | None:
    """The ends of a release at the contact point: of what it must carry in play the push alone, and the push that frees it at most."""
    if released is None or window is None:
        return None
    return window.force_n(released.load)[0], window.force_n(released.limit)[0]


def _swinging_kg(held: Held, mount: Mount, shares: TipShares) -> float | None:
    """The device and what counts of the arm's own mass; None when one of them was not weighed."""
    if not held.whole_kg or mount.mass_kg is None:
        return None
    return held.whole_kg + shares.swings * mount.mass_kg


def _gives_too_much(held: Held, mount: Mount, given_m: float) -> str:
    if held.kind == "switch":
        return (
            f"{held.device} may not fire: the {spoken(held.full_force_n, 'n')} that it takes move {mount.name} by "
            f"{spoken(given_m, 'mm')}, more than its whole travel of {spoken(held.travel_m, 'mm')}"
        )
    return f"at full push {mount.name} gives {spoken(given_m, 'mm')}, more than the stick's whole throw"


def _unmeasured(held: Held) -> tuple[str, ...]:
    """What stands in for figures of the device that nobody took."""
    size = " by ".join(spoken(side, "mm") for side in UNMEASURED_BASE_M)
    base = () if held.base_m else (f"the base of {held.device} was not measured: taken as {size}",)
    weight = () if held.mass_kg is not None else (f"{held.device} was not weighed: its weight is left out",)
    return (*base, *weight, *held.assumed)


def _arm_assumed(mount: Mount, held: Held, fastener: Fastener | None) -> tuple[str, ...]:
    out = []
    if mount.give_n_per_m is None:
        out.append(f"how far {mount.name} gives was not measured: hang a kilogram on its end")
    if mount.mass_kg is None:
        out.append(f"{mount.name} was not weighed: its weight is left out, and its natural frequency is not known")
    if fastener is None:
        out.append(f"nothing in the kit fixes {held.device} to {mount.name}: taken as screwed to it")
    if held.kind == "switch":
        out.append(f"which way the face of {held.device} looks was not told: turn it square to the press")
    if held.pieces > 1:
        out.append(f"the {held.pieces} are on one plate, and their middle is where the part rests")
    return tuple(out)


def _stronger_first(kit: Kit) -> list[Fastener]:
    known = [one for one in kit.fastener if one.in_stock and one.tension_pa is not None]
    return sorted(known, key=lambda one: -(one.tension_pa or 0.0))


def _tilts(room: Room, clamp: str) -> tuple[float, ...]:
    """Tilts at which what is clamped there is looked at."""
    on = _holder(room, clamp)
    if on is None or not tilts_with_seat(on.moves_with):
        return (0.0,)
    return tuple(float(tilt) for tilt in np.linspace(room.tilt_from_rad, room.tilt_to_rad, TILTS))


def _along(room: Room, clamp: str) -> tuple[float, float, float] | None:
    """Direction of the tube that a clamp could turn on; an edge holds it by two jaws, and where both ends of a tube were
    told as one point the first joint, which is checked about every axis, stands for it."""
    tube = next((one for one in room.tube if one.name == clamp), None)
    if tube is None:
        return None
    x, y, z = (end - start for start, end in zip(tube.from_m, tube.to_m, strict=True))
    return (x, y, z) if math.hypot(x, y, z) > 0 else None


def _length(points: Sequence[tuple[float, float, float]]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(points))


def _cannot(mount: Mount, why: str) -> MountFit:
    """An arm that does not reach from anywhere."""
    return MountFit(
        mount=mount.name, kind=mount.kind, on="", fastener=None, patch_m=None, arm=None, checks=(), margin=0.0,
        give_n_per_m=math.inf, lost_share=0.0, droop_m=0.0, droop_rad=0.0, ringing_hz=math.nan, parts=(mount.name,),
        take_off_s=None, verdict="does not hold", fails=(why.rstrip("."),), refused=(), change="", dimensions=(), cable_m=None,
    )  # fmt: skip


def _dimensions(room: Room, pose: Pose, moves_with: str, way: ArmPose | None = None) -> tuple[Dimension, ...]:
    """From the nearest landmark that moves with the holder: sideways, forward and up to the middle of the base."""
    near = [mark for mark in room.landmark if mark.moves_with == moves_with] or list(room.landmark)
    if not near:
        return ()
    out: list[Dimension] = []
    for to, point in (("middle of the base", pose.base_m), *((("clamp", way.points_m[0]),) if way else ())):
        mark = min(near, key=lambda one: math.dist(one.at_m, point))
        for axis, (plus, minus) in enumerate((("right", "left"), ("forward", "back"), ("up", "down"))):
            off = point[axis] - mark.at_m[axis]
            out.append(Dimension(mark.name, to, plus if off >= 0 else minus, abs(off)))  # type: ignore[arg-type]
    return tuple(out)


def _sentence(site: Site, held: Held, choice: MountFit | None, fits: Sequence[MountFit]) -> str:
    if choice is not None:
        how = f", fixed with {choice.fastener}" if choice.fastener else ""
        taken = "travel" if held.kind == "switch" else "throw"
        lost = f"; its give takes {100 * choice.lost_share:.0f} % of the {taken}" if choice.lost_share >= 0.005 else ""
        what = f"{choice.mount}, clamped to the {choice.on}" if choice.arm is not None else f"the {choice.on}"
        if choice.arm is None and choice.kind in STOCKED:
            what = f"{choice.mount} on the {choice.on}"
        needs = "".join(f"; with {part}" for part in choice.parts if part.startswith(("packing", "support")))
        return f"{held.named} for {site.name}: on {what}{how}{needs}{lost}."
    if not fits:
        return f"Nothing in the kit or the room comes near where {held.named} must stand for {site.name}."
    first = fits[0]
    why = (first.refused or first.fails or ("it does not hold",))[0]
    change = f" {first.change}" if first.change else ""
    return f"Nothing here holds {held.named} for {site.name}. Nearest comes {first.mount}: {why.rstrip('.')}.{change}"
