"""The van's kit and the hub Quay of the five worked cases, with plugs, cables and currents; all invented."""

from __future__ import annotations

from typing import Any

from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.hub import Hub
from stickwright.model.kit import Kit
from stickwright.model.player import Player
from stickwright.model.sharing import Placement

# name, start N, full N, travel mm, plug, current mA, cable m
_STICKS: tuple[tuple[str, float, float, float, str, float | None, float], ...] = (
    ("ash", 0.48, 1.05, 6.5, "USB or 4-conductor", 40, 1.2),
    ("birch", 0.24, 0.52, 6.5, "4-conductor", None, 1.2),
    ("cedar", 0.16, 0.35, 6.5, "4-conductor", None, 1.2),
    ("dew", 0.025, 0.11, 9, "USB", 70, 1.5),
    ("rowan", 3.5, 8.0, 22, "USB", 60, 1.5),
    ("hazel", 0.70, 1.40, 20, "USB", 90, 1.5),
)
_SWITCHES = (("pip", 0.10, 12), ("disc", 0.9, 45), ("dome", 1.8, 70), ("slab", 3.5, 130))


def kit(leads: list[dict[str, Any]] | None = None, **more: Any) -> Kit:
    """The kit in the van, with these leads."""
    data: dict[str, Any] = {
        "stick": [
            {"name": name, "start_force_n": start, "full_force_n": full, "travel_mm": travel, "plug": plug, "cable_m": cable,
             **({} if current is None else {"current_ma": current})}
            for name, start, full, travel, plug, current, cable in _STICKS
        ],
        "switch": [
            {"name": name, "force_n": force, "face_mm": [face], "plug": "2-conductor", "cable_m": 1.8, "in_stock": 2}
            for name, force, face in _SWITCHES
        ] + [{"name": "wink", "kind": "proximity", "senses_at_mm": 6, "face_mm": [25], "plug": "2-conductor", "cable_m": 1.8}],
        "controller": [{"name": "plain pad", "current_ma": 100, "cable_m": 2.0, "in_stock": 2}],
        "topper": [{"name": "dish", "form": "dish", "height_mm": 0}, {"name": "soft cup", "form": "cup", "height_mm": 6}],
        "extension": [{"name": "+8 mm", "length_mm": 8}],
        "lead": leads or [],
        **more,
    }  # fmt: skip
    return Kit.model_validate(data)


def quay(**more: Any) -> Hub:
    """Three USB sockets of 100 mA, 300 mA in all; a jack for each stick; seven for switches; one paired controller."""
    usb = [{"name": f"u{n}", "takes": "USB", "role": "assignable", "roles": ["left stick", "right stick"], "current_ma": 100}
           for n in (1, 2, 3)]  # fmt: skip
    sticks = [
        {"name": f"q{n}", "takes": "4-conductor", "role": role} for n, role in ((1, "left stick"), (2, "right stick"))
    ]
    switches = [{"name": f"k{n}", "takes": "2-conductor", "role": "assignable"} for n in range(1, 8)]
    return Hub.model_validate(
        {"name": "Quay", "socket": usb + sticks + switches, "current_ma": 300, "paired": 1, "plug": "USB", **more}
    )


def case(sites: dict[str, dict[str, Any]], this_kit: Kit | None = None, hubs: tuple[Hub, ...] | None = None) -> Case:
    """A case with these sites; nothing else about player and game matters to the wiring."""
    player = Player.model_validate(
        {"code": "x", "site": [{"name": name, "part": "hand", **data} for name, data in sites.items()]}
    )
    return Case("x", player, this_kit or kit(), Game(name="g"), hubs=(quay(),) if hubs is None else hubs)


def at(action: str, site: str, device: str, socket: str, kind: Any = "switch", **more: Any) -> Placement:
    """An action at a site, on a device in a socket of Quay."""
    return Placement(
        action, "site", site=site, device=device, kind=kind, connection="socket",
        **{"hub": "Quay", "socket": socket, **more},
    )  # fmt: skip
