"""Wiring by hand with the van's kit and the hub Quay of the five worked cases."""

from __future__ import annotations

from typing import Any

import worked_cases
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.hub import Hub
from stickwright.model.kit import Kit
from stickwright.model.player import Player
from stickwright.model.sharing import Placement
from worked_cases import quay

__all__ = ["at", "case", "kit", "quay"]


def kit(leads: list[dict[str, Any]] | None = None, **more: Any) -> Kit:
    """The kit in the van, with these leads."""
    return worked_cases.van_kit(lead=leads or [], **more)


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
