"""The parts that hold the devices, for the parts list: everything that was chosen, counted by hand; nothing of the room's own."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

from said import said
from stickwright.codes.message import Name, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.model.kit import Kit
from stickwright.model.mounting import MountFit, SiteMount
from stickwright.mounting.mount_parts import mount_parts

MOUNTS = [
    {"name": "arm", "kind": "friction arm", "links_mm": [200, 200], "in_stock": 2},
    {"name": "spare", "kind": "friction arm", "links_mm": [300, 300], "in_stock": 1},
    {"name": "poppy", "kind": "breakaway coupling", "in_stock": 1},
]
TAPE = {"name": "tape", "kind": "hook-and-loop", "in_stock": 9}
STICK = {"name": "stick", "contact_height_mm": 50, "start_force_n": 0.5, "full_force_n": 2, "travel_mm": 10}


NOWHERE = message(MountAnswers.nothing_near, device=Name("disc"), pieces=1, site=Name("knee"))


def kit() -> Kit:
    return Kit.model_validate({"stick": [STICK], "mount": MOUNTS, "fastener": [TAPE]})


def chosen(site: str, mount: str, kind: str, *parts: str, pieces: int = 1, fastener: str | None = "tape") -> SiteMount:
    patch = (0.038, 0.05) if fastener else None
    fit = MountFit(
        mount, kind, "tube", fastener, patch, None, (), math.inf, math.inf, 0.0, 0.0, 0.0, math.nan, parts, None, "holds",
        (), (), None, (), None,
    )  # fmt: skip
    return SiteMount(site, "disc", None, fit, (fit,), NOWHERE, (), (), "switch", pieces)


def replace_choice(mount: SiteMount, **told: Any) -> SiteMount:
    assert mount.choice is not None
    return replace(mount, choice=replace(mount.choice, **told))


def test_every_part_that_was_chosen_is_listed() -> None:
    """Two arms, a coupling and four pieces of tape at three sites, and packing; the tray is the room's; an arm not used is not told."""
    packing = message(MountAnswers.packing, height_m=0.021, under_wedge=False)
    mounts = (
        replace_choice(chosen("chin", "arm", "friction arm", "stick", "arm", "tape", "poppy"), coupling="poppy"),
        chosen("left thumb", "arm", "friction arm", "2 × disc", "arm", "tape", pieces=2),
        replace_choice(chosen("right hand", "tray", "tray", "disc", "tape"), under=(packing,)),
        SiteMount("knee", "disc", None, None, (), NOWHERE, (), ()),
    )
    lines = [
        (one.name, one.kind, one.count, one.in_stock, one.buy, one.price, said(one.note))
        for one in mount_parts(mounts, kit())
    ]
    tape = "1 piece of 50 × 38 mm for chin; 2 pieces of 50 × 38 mm for left thumb; 1 piece of 50 × 38 mm for right hand"
    tape += "; counted in pieces: check that each piece in stock is large enough"
    assert lines == [
        ("arm", "friction arm", 2, 2, 0, 0.0, "for chin and left thumb"),
        ("poppy", "breakaway coupling", 1, 1, 0, 0.0, "for chin"),
        ("tape", "fastener", 4, 9, 0, 0.0, tape),
        (packing, "packing", 1, 0, 1, None, "for right hand; made to measure, not in the kit"),
    ]


def test_what_the_kit_has_not_is_ordered_at_its_price() -> None:
    """Three arms of two in stock: one to order, at the price of one; without a price none is made up."""
    mounts = tuple(chosen(site, "arm", "friction arm", "disc", "arm", fastener=None) for site in ("a", "b", "c"))
    priced = kit().model_copy(update={"mount": (kit().mount[0].model_copy(update={"price": 52.5}), *kit().mount[1:])})
    assert [(one.count, one.buy, one.price) for one in mount_parts(mounts, priced)] == [(3, 1, 52.5)]
    assert [(one.count, one.buy, one.price) for one in mount_parts(mounts, kit())] == [(3, 1, None)]


def test_nothing_mounted_takes_nothing() -> None:
    """Without a choice at any site the list is empty."""
    assert mount_parts((SiteMount("knee", "disc", None, None, (), NOWHERE, (), ()),), kit()) == ()
