"""Which devices of the whole plan must be held, where, and against what pushes.

One device at a place is held once, however many actions it does; a two-handed controller is held once, wherever the parts are that
play it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.case import Case
from stickwright.model.kit import Stick
from stickwright.model.mounting import SiteMount
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Room
from stickwright.model.sharing import Placement, PressFit, Sharing
from stickwright.mounting.held import HeldDevice, held_controller, held_of, held_switch, pushes_of
from stickwright.mounting.pose import place_of
from stickwright.mounting.statics import Pushes
from stickwright.mounting.together import WantedMount, mounts_together
from stickwright.planning.from_recordings import base_turn
from stickwright.planning.site_planning import KnownSite

__all__ = ["held_together", "wanted_of", "with_slopes"]


def with_slopes(player: Player, room: Room | None) -> Player:
    """The player with the slopes that the room's file tells, where the player's own file has none."""
    if room is None:
        return player
    sites = []
    for site in player.site:
        place = place_of(site, room)
        told = place.slope_rad if place is not None and site.movement_tilt_rad is None else None
        sites.append(site if told is None else site.model_copy(update={"movement_tilt_rad": told}))
    return player.model_copy(update={"site": tuple(sites)})


def held_together(case: Case, known: Sequence[KnownSite], sharing: Sharing) -> tuple[SiteMount, ...]:
    """What holds every device of a plan; nothing when the room is not described.

    Parameters
    ----------
    case : Case
    known : sequence of KnownSite
        Sites at which sticks were judged.
    sharing : Sharing
    """
    if case.room is None:
        return ()
    return mounts_together(wanted_of(case, known, sharing), case.room, case.kit, case.player)


def wanted_of(case: Case, known: Sequence[KnownSite], sharing: Sharing) -> tuple[WantedMount, ...]:
    """Every device that must be held: one for each at a place, a two-handed controller once."""
    groups: dict[tuple[str, ...], list[Placement]] = {}
    for one in sharing.placements:
        if one.how == "site" and one.site is not None and one.device is not None and one.kind and not _in_hand(one):
            where = (one.connection, one.hub or "", one.socket or "") if one.kind == "controller" else (one.site,)
            groups.setdefault((one.kind, one.device, *where), []).append(one)
    importance = {action.name: float(action.importance) for action in case.game.action}
    at = {one.site.name: one for one in known}
    sites = {site.name: site for site in case.player.site}
    out = []
    for group in groups.values():
        main = max(group, key=lambda one: (one.fit is not None, importance.get(one.action, 0.0)))
        site = sites[str(main.site)]
        grip = [one for one in sharing.placements if one.fit is not None and one.fit.fixed_to == main.device]
        held, pushes = _held(case, site, main, group), _pushes([*group, *grip], sites, at)
        directions = at[site.name].ability.report.directions if main.fit is not None and site.name in at else ()
        out.append(
            WantedMount(
                site=site, held=replace(held, assumed=(*held.assumed, *_press_assumed(group, sites, held))), pushes=pushes,
                importance=max(importance.get(one.action, 0.0) for one in group),
                direction_rad=tuple(one.direction_rad for one in directions), reach_m=tuple(one.reach_m.number for one in directions),
                findings=(*_crosswise(main), *_on_its_grip(grip), *_shared_by(main, group, list(groups.values()))),
                recorded_turn=_recorded_turn(main, at.get(site.name)),
            )
        )  # fmt: skip
    return tuple(out)


def _in_hand(one: Placement) -> bool:
    """Whether a hand holds it, or it is fixed to the grip of what stands elsewhere: nothing of its own holds it."""
    return one.holding in ("one hand", "two hands") or (one.fit is not None and bool(one.fit.fixed_to))


def _recorded_turn(main: Placement, one: KnownSite | None) -> Estimate | None:
    return base_turn(one.site, one.recordings, main.fit.full_name) if main.fit is not None and one is not None else None


def _on_its_grip(grip: Sequence[Placement]) -> tuple[Finding, ...]:
    """That a stick is fixed to its grip, and where the pushes on that count."""
    return tuple(
        Finding(
            "note", "grip",
            message(MountAnswers.on_grip, device=Name(str(one.device)), controller=Name(str(one.fit.fixed_to))),
        )
        for one in grip
        if one.fit is not None
    )  # fmt: skip


def _crosswise(main: Placement) -> tuple[Finding, ...]:
    """That the base stands crosswise: where its own front is, and that every turn comes on top of that."""
    if main.fit is None or not main.fit.crosswise:
        return ()
    return (Finding("note", "crosswise", message(MountAnswers.crosswise, device=Name(str(main.device)))),)


def _held(case: Case, site: Site, main: Placement, group: Sequence[Placement]) -> HeldDevice:
    if main.kind == "controller":
        bare = held_of(main.fit, case.kit) if main.fit is not None else held_controller(str(main.device), case.kit)
        return _with_its_grip(bare, case.kit.on_grip(str(main.device)))
    if main.fit is not None:
        return held_of(main.fit, case.kit)
    switch = next(one for one in case.kit.switch if one.name == main.device)
    travels = site.press.travel_m if site.press is not None else ()
    return held_switch(switch, len(group), max(travels) if travels else None)


def _with_its_grip(held: HeldDevice, sticks: Sequence[Stick]) -> HeldDevice:
    """A controller with the sticks that are fixed to its grip: what holds it carries them too."""
    weighed = sum(one.mass_kg or 0.0 for one in sticks)
    unweighed = [message(MountAssumed.grip_weight, device=Name(one.name)) for one in sticks if one.mass_kg is None]
    mass_kg = None if held.mass_kg is None else held.mass_kg + weighed
    return replace(held, mass_kg=mass_kg, assumed=(*held.assumed, *unweighed))


def _pushes(group: Sequence[Placement], sites: dict[str, Site], at: dict[str, KnownSite]) -> Pushes:
    """The hardest of what all parts do to it: sideways on a stick, or a press, counted along the face."""
    each = []
    for one in group:
        site = sites[str(one.site)]
        if one.fit is not None:
            forces = [
                direction.force_n.number
                for state in at[site.name].states  # it holds the player at their strongest
                for direction in state.ability.report.directions
            ]
        else:
            forces = [_press_n(site, one.press)]
        each.append(pushes_of(site, forces))
    return Pushes(max(one.working_n for one in each), max(one.involuntary_n for one in each))


def _press_n(site: Site, press: PressFit | None) -> float:
    """The hardest press read at a site; else what stands in for the comfortable one; 0 for what acts without touch."""
    if press is not None and press.force_n == 0:
        return 0.0
    if site.press is not None and site.press.force_n:
        return max(site.press.force_n)
    comfortable = press.comfortable_n.number if press is not None else math.nan
    if math.isfinite(comfortable):
        return comfortable
    return press.force_n if press is not None and math.isfinite(press.force_n) else 0.0


def _press_assumed(group: Sequence[Placement], sites: dict[str, Site], held: HeldDevice) -> tuple[Message, ...]:
    pressed = [one for one in group if one.fit is None and not (one.press is not None and one.press.force_n == 0)]
    if not pressed:
        return ()
    out = [message(MountAssumed.press_along, device=Name(held.device))]
    for name in dict.fromkeys(str(one.site) for one in pressed):
        read = sites[name].press
        if read is None or not read.force_n:
            force = _press_n(sites[name], next(one.press for one in pressed if one.site == name))
            out.append(message(MountAssumed.press_force, site=Name(name), force_n=force))
    return tuple(out)


def _shared_by(
    main: Placement, group: Sequence[Placement], groups: Sequence[Sequence[Placement]]
) -> tuple[Finding, ...]:
    """That other parts play the same device, or another device stands at the same place."""
    out = []
    others = [name for name in dict.fromkeys(str(one.site) for one in group) if name != main.site]
    if others:
        text = message(
            MountAnswers.reached_from, device=Name(str(main.device)), site=Name(str(main.site)),
            others=tuple(Name(name) for name in others),
        )  # fmt: skip
        out.append(Finding("note", "place", text))
    beside = [str(one[0].device) for one in groups if one is not group and any(each.site == main.site for each in one)]
    beside = [name for name in dict.fromkeys(beside) if name != main.device]
    if beside:
        devices = tuple(Name(name) for name in beside)
        text = message(MountAnswers.side_by_side, site=Name(str(main.site)), devices=devices)
        out.append(Finding("note", "place", text))
    return tuple(out)
