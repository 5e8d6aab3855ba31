"""What holds a device in its place: every surface it could stand on and every arm that reaches, checked, refused or ranked.

Those that hold come first: on measured figures before those that are to be confirmed, then least throw lost, fewest parts, quickest
to take off. What fails says why and what would make it pass. What breaks a hard safety rule is refused, whatever else it
does well.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_checks import CheckName
from stickwright.errors import BadInput
from stickwright.model.fit import Caution
from stickwright.model.kit import Kit
from stickwright.model.mounting import MountFit, Pose, SiteMount
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Room
from stickwright.mounting.asked import MountRequest, holder_of
from stickwright.mounting.chair_stability import chair_stability, stability_findings
from stickwright.mounting.compliance import give_findings
from stickwright.mounting.held import HeldDevice
from stickwright.mounting.mount_parts import STOCKED
from stickwright.mounting.on_arm import cannot, hung, on_arm
from stickwright.mounting.on_stand import on_stand
from stickwright.mounting.on_surface import on_surface
from stickwright.mounting.pose import placed, pose_of
from stickwright.mounting.rules import cautions_for_mount, width_finding
from stickwright.mounting.search import ArmReach
from stickwright.mounting.search_again import arms_that_reach
from stickwright.mounting.statics import Pushes, name_of
from stickwright.mounting.taking_off import with_take_off

__all__ = ["site_mount", "without_place"]

ARMS = ("friction arm", "gooseneck")


def without_place(site: Site, held: HeldDevice) -> SiteMount:
    """What can be said of a site whose place nobody measured."""
    text = message(MountAnswers.no_place, device=Name(held.device), pieces=held.pieces, site=Name(site.name))
    return SiteMount(
        site=site.name,
        device=held.device,
        pose=None,
        choice=None,
        fits=(),
        sentence=text,
        cautions=(),
        findings=(Finding("query", "place", text),),
        kind=held.kind,
        pieces=held.pieces,
        base_m=held.base_m,
    )


def site_mount(
    site: Site,
    held: HeldDevice,
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
    held : HeldDevice
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
        why = " ".join(str(problem) for problem in refused.problems)
        text = message(MountAnswers.no_point, site=Name(site.name), why=why)
        return SiteMount(
            site=site.name,
            device=held.device,
            pose=None,
            choice=None,
            fits=(),
            sentence=text,
            cautions=(),
            findings=(Finding("query", "place", text),),
            kind=held.kind,
            pieces=held.pieces,
            base_m=held.base_m,
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
    asked = MountRequest(
        site=site, held=held, pose=pose, room=room, kit=kit, pushes=pushes, moves_with=where.moves_with
    )
    ordered = tuple(sorted((with_take_off(fit, kit) for fit in _all_ways(asked)), key=_rank))
    choice = next((fit for fit in ordered if fit.verdict == "holds"), None)
    cautions: tuple[Caution, ...] = ()
    findings = where.findings
    if choice is not None:
        on = holder_of(room, choice.on)
        used = next((one for one in kit.mount if one.name == choice.mount), None)
        if on is not None:
            whole_kg = held.whole_kg + (used.mass_kg or 0.0 if used else 0.0)
            window = None if choice.arm is None or used is None else hung(asked, used, choice.arm).window()
            hangs = chair_stability(room, on.moves_with, pose.base_m, whole_kg if choice.arm is not None else 0.0)
            cautions = cautions_for_mount(
                site, player, room, mount=used, on=on, mass_kg=whole_kg, release=window, take_off_s=choice.take_off_s,
                take_off_assumed=used is None or used.take_off_s is None, out_m=hangs.out_m, stability=hangs.words,
            )  # fmt: skip
            findings += stability_findings(site.name, hangs)
        findings += _too_wide(room, pose, choice)
        if choice.give_n_per_m is not None:
            findings += _give_findings(held, choice)
    return SiteMount(
        site=site.name,
        device=held.device,
        pose=pose,
        choice=choice,
        fits=ordered,
        sentence=_sentence(site, held, choice, ordered),
        cautions=cautions,
        findings=findings,
        kind=held.kind,
        pieces=held.pieces,
        base_m=held.base_m,
    )


def _all_ways(asked: MountRequest) -> list[MountFit]:
    """On every surface, arm and stand."""
    fits: list[MountFit] = []
    for surface in asked.room.surface:
        fits += on_surface(asked, surface)
    arms = [mount for mount in asked.kit.mount if mount.kind in ARMS and mount.in_stock]
    for mount, found in zip(arms, arms_that_reach(asked, arms), strict=True):
        fits += [on_arm(asked, mount, way) for way in found.poses[:2]]
        if not found.poses:
            fits.append(cannot(mount, _nearest_reason(found)))
    for mount in asked.kit.mount:
        if mount.kind == "floor stand" and mount.in_stock:
            fits += on_stand(asked, mount)
    return fits


def _give_findings(held: HeldDevice, choice: MountFit) -> tuple[Finding, ...]:
    """What is worth saying of what gives: of a stick its throw and swing, of a switch whether it still fires."""
    if held.kind == "stick" or (held.travel_m > 0 and held.kind == "controller"):
        return give_findings(held.full_force_n, choice.stiffness_n_per_m, held.travel_m, choice.ringing_hz)
    given = held.full_force_n / choice.stiffness_n_per_m
    needs = held.travel_m + given
    if held.presses_in_m is None or needs <= held.presses_in_m:
        return ()
    text = message(
        MountAnswers.may_not_fire, device=Name(held.device), mount=Name(choice.mount), travel_m=held.travel_m, flex_m=given,
        presses_in_m=held.presses_in_m,
    )  # fmt: skip
    return (Finding("query", "give", text),)


def _too_wide(room: Room, pose: Pose, choice: MountFit) -> tuple[Finding, ...]:
    """Whether the chair still goes through the door with an arm out."""
    holder = holder_of(room, choice.on)
    if choice.arm is None or room.width_m is None or holder is None or holder.moves_with == "room":
        return ()
    sides = [point[0] for point in (*choice.arm.points_m, pose.base_m)]
    whole = max(room.width_m / 2, max(sides)) + max(room.width_m / 2, -min(sides))
    found = width_finding(whole, room)
    return () if found is None else (found,)


def _nearest_reason(found: ArmReach) -> Message:
    """Why an arm does not reach: by how much it is too short, where that is all; else the first reason."""
    short = [reason for reason in found.reasons if _is_too_short(reason)]
    return (short or found.reasons or (message(MountAnswers.nothing_to_clamp),))[0]


def _is_too_short(reason: Message) -> bool:
    """Also where it is so by the face, at an assumed figure."""
    return "ArmReasons.too_short" in (reason.code, *(one.code for _, one in reason.params if isinstance(one, Message)))


def _rank(fit: MountFit) -> tuple[object, ...]:
    order = {"holds": 0, "does_not_hold": 1, "refused": 2}[fit.verdict]
    margin = -fit.spare if order else 0.0
    return (
        order,
        margin,
        len(fit.fails) if order else 0,
        len(fit.doubts),
        0.0 if fit.lost_share is None else round(fit.lost_share, 3),
        len(fit.parts) + len(fit.under),
        math.inf if fit.take_off_s is None else fit.take_off_s,
        -min(fit.spare, 10.0),
        fit.mount,
    )


def _sentence(site: Site, held: HeldDevice, choice: MountFit | None, fits: Sequence[MountFit]) -> Message:
    device, name = Name(held.device), Name(site.name)
    if choice is not None:
        share = choice.lost_share or 0.0
        return message(
            MountAnswers.held, device=device, pieces=held.pieces, site=name, how=_how(choice), under=choice.under,
            lost_share=share if share >= 0.005 else None, confirm=_to_confirm(choice),
        )  # fmt: skip
    if not fits:
        return message(MountAnswers.nothing_near, device=device, pieces=held.pieces, site=name)
    first = fits[0]
    why = next(iter((*first.refused, *first.fails)), None)
    return message(
        MountAnswers.not_held,
        device=device, pieces=held.pieces, site=name, nearest=Name(first.mount), why=why, change=first.change,
    )  # fmt: skip


def _how(choice: MountFit) -> Message:
    own = choice.arm is not None or choice.kind in STOCKED
    return message(
        MountAnswers.how, mount=Name(choice.mount) if own else None, on=Name(choice.on), clamped=choice.arm is not None,
        fastener=Name(choice.fastener) if choice.fastener else None,
    )  # fmt: skip


def _to_confirm(choice: MountFit) -> tuple[Message, ...]:
    """What to measure before it is trusted, each once, with what rests on it."""
    rules: dict[Message, dict[CheckName, None]] = {}
    for one in choice.doubts:
        for measure in one.confirm:
            rules.setdefault(measure, {})[name_of(one.rule)[0]] = None
    return tuple(message(MountAnswers.confirm, measure=measure, rules=tuple(some)) for measure, some in rules.items())
