"""What holds all the devices of a plan at once: no arm, coupling or piece of fastener is counted on at two sites.

The site that matters most chooses first; the next take the best of what is left, and say what they would have had.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.model.kit import Kit
from stickwright.model.mounting import MountFit, SiteMount
from stickwright.model.player import Player, Site
from stickwright.model.recorded import Finding
from stickwright.model.room import Room, Surface
from stickwright.mounting.asked import holder_of
from stickwright.mounting.choose import site_mount
from stickwright.mounting.held import HeldDevice
from stickwright.mounting.mount_parts import needs_of
from stickwright.mounting.on_housing import both_pushes, flats_of, with_flats
from stickwright.mounting.statics import Pushes

__all__ = ["WantedMount", "mounts_together"]


@dataclass(frozen=True, eq=False)
class WantedMount:
    """One device that must be held.

    Parameters
    ----------
    site : Site
    held : HeldDevice
    pushes : Pushes
    importance : float
        Of the most important action that it does, 0 to 10.
    direction_rad, reach_m : tuple of float, shape (k,)
        The player's comfortable reach; empty for what is pressed.
    findings : tuple of Finding
        What else is to be said of it.
    recorded_turn : Estimate or None
        How far recordings say that its base is to be turned.
    """

    site: Site
    held: HeldDevice
    pushes: Pushes
    importance: float
    direction_rad: tuple[float, ...] = ()
    reach_m: tuple[float, ...] = ()
    findings: tuple[Finding, ...] = ()
    recorded_turn: Estimate | None = None


def mounts_together(wanted: Sequence[WantedMount], room: Room, kit: Kit, player: Player) -> tuple[SiteMount, ...]:
    """Where each device goes and what holds it, with nothing of the kit used oftener than it is there.

    Parameters
    ----------
    wanted : sequence of WantedMount
    room : Room
    kit : Kit
        What is in stock counts.
    player : Player

    Returns
    -------
    tuple of SiteMount
        The site that matters most first; of equals, the first told.
    """
    stock = _stock(kit)
    chosen: list[tuple[WantedMount, SiteMount]] = []
    for one in sorted(wanted, key=lambda one: -one.importance):
        used = _used([mount for _, mount in chosen])
        whole = _mount(one, room, kit, player)
        best = whole
        if whole.choice is not None and _lacking(needs_of(whole.choice, one.held.pieces), used, stock):
            best = _mount(one, room, _left(kit, used), player)
            best = _says_what_it_missed(one, whole, whole.choice, best, chosen, stock)
        chosen.append((one, replace(best, findings=(*one.findings, *best.findings))))
    chosen = _on_flats(chosen, room, kit, player)
    mounts = [mount for _, mount in chosen]
    return tuple(_marked(mount, [other for other in mounts if other is not mount], stock) for mount in mounts)


def _on_flats(
    chosen: Sequence[tuple[WantedMount, SiteMount]], room: Room, kit: Kit, player: Player
) -> list[tuple[WantedMount, SiteMount]]:
    """Switches that stand best, or only, on the flat of a device, where what holds that device holds both."""
    out = list(chosen)
    for place, (switch, before) in enumerate(chosen):
        if switch.held.kind != "switch":
            continue
        others = [mount for number, (_, mount) in enumerate(out) if number != place]
        flats = flats_of(others, room, kit)
        if not flats:
            continue
        left = _left(kit, _used(others))
        found = _mount(switch, with_flats(room, tuple(flats.values())), left, player)
        site = next(
            (name for name, flat in flats.items() if found.choice is not None and found.choice.on == flat.name), None
        )
        if site is None:
            continue
        number = next(n for n, (_, mount) in enumerate(out) if mount.site == site and mount.kind != "switch")
        carrier, mount = out[number]
        rest = _left(kit, _used([one for n, (_, one) in enumerate(out) if n not in (number, place)] + [found]))
        again = _carrying(carrier, mount, switch, flats[site], room, kit=rest, player=player)
        if again is None:
            text = message(
                MountAnswers.flat_not_both,
                device=Name(mount.device), switch=Name(switch.held.device), pieces=switch.held.pieces,
            )  # fmt: skip
            out[place] = (switch, replace(before, findings=(*before.findings, Finding("note", "flat", text))))
            continue
        out[number] = (carrier, again)
        out[place] = (switch, replace(found, findings=(*switch.findings, *found.findings)))
    return out


def _carrying(
    carrier: WantedMount, mount: SiteMount, switch: WantedMount, flat: Surface, room: Room, *, kit: Kit, player: Player
) -> SiteMount | None:
    """What holds a device, checked once more with the switch on it and with both pushes; None where it does not hold both."""
    assert mount.pose is not None
    assert mount.choice is not None
    left, near, height = flat.corner_m
    corners = [(left + dx, near + dy, height) for dx in (0.0, flat.size_m[0]) for dy in (0.0, flat.size_m[1])]
    press_height_m = max(math.dist(corner, mount.pose.base_m) for corner in corners)
    pushes = both_pushes(
        carrier.pushes, switch.pushes, math.dist(mount.pose.contact_m, mount.pose.base_m), press_height_m
    )
    mass_kg = None if carrier.held.mass_kg is None else carrier.held.mass_kg + switch.held.whole_kg
    top, pieces = Name(switch.held.device), switch.held.pieces
    unweighed = message(MountAssumed.on_top_weight, device=top, pieces=pieces)
    assumed = () if switch.held.mass_kg is not None else (unweighed,)
    both = replace(
        carrier, pushes=pushes,
        held=replace(carrier.held, mass_kg=mass_kg, assumed=(*carrier.held.assumed, *assumed)),
    )  # fmt: skip
    again = _mount(both, room, kit, player)
    if again.choice is None:
        return None
    on = holder_of(room, again.choice.on)
    if (on.moves_with if on is not None else "room") != flat.moves_with:
        return None
    text = message(MountAnswers.flat_both, device=Name(mount.device), switch=top, pieces=pieces, flat=Name(flat.name))
    return replace(again, findings=(*carrier.findings, *again.findings, Finding("note", "flat", text)))


def _mount(one: WantedMount, room: Room, kit: Kit, player: Player) -> SiteMount:
    return site_mount(
        one.site,
        one.held,
        room,
        kit,
        one.pushes,
        player=player,
        direction_rad=one.direction_rad,
        reach_m=one.reach_m,
        recorded_turn=one.recorded_turn,
    )


def _stock(kit: Kit) -> Counter[str]:
    count: Counter[str] = Counter()
    for mount in kit.mount:
        count[mount.name] += mount.in_stock
    for fastener in kit.fastener:
        count[fastener.name] += fastener.in_stock
    return count


def _used(mounts: Iterable[SiteMount]) -> Counter[str]:
    total: Counter[str] = Counter()
    for mount in mounts:
        if mount.choice is not None:
            total.update(needs_of(mount.choice, mount.pieces))
    return total


def _lacking(needs: Mapping[str, int], used: Mapping[str, int], stock: Mapping[str, int]) -> list[str]:
    return [name for name, count in needs.items() if used.get(name, 0) + count > stock.get(name, 0)]


def _left(kit: Kit, used: Mapping[str, int]) -> Kit:
    """The kit without what is in use."""
    spent = dict(used)

    def remaining(name: str, count: int) -> int:
        gone = min(count, spent.get(name, 0))
        spent[name] = spent.get(name, 0) - gone
        return count - gone

    return kit.model_copy(
        update={
            "mount": tuple(one.model_copy(update={"in_stock": remaining(one.name, one.in_stock)}) for one in kit.mount),
            "fastener": tuple(
                one.model_copy(update={"in_stock": remaining(one.name, one.in_stock)}) for one in kit.fastener
            ),
        }
    )


def _holders_of(names: Iterable[str], mounts: Iterable[SiteMount]) -> list[str]:
    """Sites that have any of these."""
    wanted = set(names)
    return [
        mount.site
        for mount in mounts
        if mount.choice is not None and wanted & set(needs_of(mount.choice, mount.pieces))
    ]


def _says_what_it_missed(
    one: WantedMount,
    whole: SiteMount,
    missed: MountFit,
    best: SiteMount,
    chosen: Sequence[tuple[WantedMount, SiteMount]],
    stock: Mapping[str, int],
) -> SiteMount:
    """The next best, with what it would have been; ways that are taken stay in the list, marked."""
    mounts = [mount for _, mount in chosen]
    lacking = _lacking(needs_of(missed, whole.pieces), _used(mounts), stock)
    sites = list(dict.fromkeys(_holders_of(lacking, mounts)))
    text = message(
        MountAnswers.had_first, site=Name(whole.site), device=Name(whole.device), way=_way(missed),
        lacking=tuple(Name(name) for name in lacking), stock=tuple(stock.get(name, 0) for name in lacking),
        sites=tuple(Name(site) for site in sites), other_way=best.choice is not None,
        more=any(other.importance > one.importance for other, mount in chosen if mount.site in sites),
    )  # fmt: skip
    again = {_key(fit) for fit in best.fits}
    gone = [
        replace(fit, taken_by=tuple(sites)) for fit in whole.fits if fit.verdict == "holds" and _key(fit) not in again
    ]
    holding = [fit for fit in best.fits if fit.verdict == "holds"]
    rest = [fit for fit in best.fits if fit.verdict != "holds"]
    return replace(
        best,
        fits=(*holding, *gone, *rest),
        findings=(*best.findings, Finding("note" if best.choice is not None else "query", "stock", text)),
    )


def _way(fit: MountFit) -> Message:
    return message(
        MountAnswers.way, mount=Name(fit.mount), on=Name(fit.on) if fit.on not in ("", fit.mount) else None,
        fastener=Name(fit.fastener) if fit.fastener else None,
    )  # fmt: skip


def _key(fit: MountFit) -> tuple[str, str, str | None, float]:
    return fit.mount, fit.on, fit.fastener, fit.arm.along_m if fit.arm is not None else -1.0


def _marked(mount: SiteMount, others: Sequence[SiteMount], stock: Mapping[str, int]) -> SiteMount:
    """With every other way that would hold, but needs what another site has, marked so."""
    used = _used(others)
    fits = []
    for fit in mount.fits:
        lacking = (
            _lacking(needs_of(fit, mount.pieces), used, stock)
            if fit is not mount.choice and fit.verdict == "holds" and not fit.taken_by
            else []
        )
        sites = dict.fromkeys(_holders_of(lacking, others))
        fits.append(replace(fit, taken_by=tuple(sites)) if lacking else fit)
    return replace(mount, fits=tuple(fits))
