"""The parts that hold the devices, as lines of the parts list: arms, stands, plates, couplings, pieces of fastener, packing.

What the room has of its own (a tray, a table) is no part of the list.
"""

from __future__ import annotations

from collections.abc import Sequence

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_parts import MountParts
from stickwright.model.kit import Fastener, Kit, Mount
from stickwright.model.mounting import MountFit, SiteMount
from stickwright.model.sharing import PartLine

__all__ = ["STOCKED", "mount_parts", "needs_of"]

STOCKED = ("friction arm", "gooseneck", "floor stand", "floor plate")
"""Kinds of mounts that come from the kit and hold one device; tables and trays are the room's and hold several."""


def needs_of(fit: MountFit, pieces: int) -> dict[str, int]:
    """What of the kit one way of mounting takes: arm or stand, plate, coupling, a piece of fastener for each base.

    Parameters
    ----------
    fit : MountFit
    pieces : int
        Devices that stand there side by side.

    Returns
    -------
    dict
        Name of a mount or fastener, how many.
    """
    needs: dict[str, int] = {}
    if fit.kind in STOCKED:
        needs[fit.mount] = 1
    if fit.plate is not None:
        needs[fit.plate] = needs.get(fit.plate, 0) + 1
    if fit.coupling is not None:
        needs[fit.coupling] = needs.get(fit.coupling, 0) + 1
    if fit.anti_slip is not None and fit.anti_slip != fit.fastener:
        needs[fit.anti_slip] = 1
    if fit.fastener is not None:
        needs[fit.fastener] = needs.get(fit.fastener, 0) + pieces
    return needs


def mount_parts(mounts: Sequence[SiteMount], kit: Kit) -> tuple[PartLine, ...]:
    """Everything that the chosen mounts take, one line for each part: what, which kind, how many, in stock, to order, price.

    Parameters
    ----------
    mounts : sequence of SiteMount
        Those without a choice take nothing.
    kit : Kit
        As it is described, before anything is taken out of it.

    Returns
    -------
    tuple of PartLine
        In the order of the kit's mounts, then of its fasteners, then what is made to measure and is in no kit (to order, no
        price). `note` names the sites, and of a fastener the size of each piece. Equal input gives equal lines.

    Notes
    -----
    The parts are counted from what was chosen for each site, so they are never more than the kit has; what must be ordered
    is what no kit has.
    """
    chosen = [(mount, mount.choice) for mount in mounts if mount.choice is not None]
    lines: list[PartLine] = []
    stocked: list[Mount | Fastener] = [*kit.mount, *kit.fastener]
    for one in stocked:
        uses = [(mount, fit, needs_of(fit, mount.pieces).get(one.name, 0)) for mount, fit in chosen]
        uses = [use for use in uses if use[2] > 0]
        count = sum(number for *_, number in uses)
        if count and not any(line.name == one.name for line in lines):
            lines.append(_line(one, count, [(mount, fit) for mount, fit, _ in uses]))
    return (*lines, *_made_to_measure(chosen))


def _line(one: Mount | Fastener, count: int, uses: Sequence[tuple[SiteMount, MountFit]]) -> PartLine:
    buy = max(0, count - one.in_stock)
    price = 0.0 if buy == 0 else None if one.price is None else round(one.price * buy, 2)
    kind = "fastener" if isinstance(one, Fastener) else one.kind
    return PartLine(
        name=one.name, kind=kind, count=count, in_stock=one.in_stock, buy=buy, price=price, note=_note(one, uses)
    )


def _note(one: Mount | Fastener, uses: Sequence[tuple[SiteMount, MountFit]]) -> Message:
    if isinstance(one, Mount):
        return message(MountParts.for_sites, sites=tuple(dict.fromkeys(Name(mount.site) for mount, _ in uses)))
    return message(MountParts.cut, pieces=tuple(_pieces(one, mount, fit) for mount, fit in uses))


def _pieces(one: Fastener, mount: SiteMount, fit: MountFit) -> Message:
    """Pieces of a fastener for one place: how many, and how large to cut each."""
    site = Name(mount.site)
    if one.name != fit.fastener:
        return message(MountParts.whole, under=Name(fit.mount), site=site)
    long, wide = (None, None) if fit.patch_m is None else sorted(fit.patch_m, reverse=True)
    return message(MountParts.piece, count=mount.pieces, long_m=long, short_m=wide, site=site)


def _made_to_measure(chosen: Sequence[tuple[SiteMount, MountFit]]) -> list[PartLine]:
    """What nobody has in a kit."""
    return [
        PartLine(
            name=part,
            kind=part.text,  # type: ignore[arg-type]
            count=1,
            in_stock=0,
            buy=1,
            price=None,
            note=message(MountParts.made, site=Name(mount.site)),
        )
        for mount, fit in chosen
        for part in fit.under
    ]
