"""The hub: sockets as data, with what they take, what they feed, and what shuts out what.

Roles are the words of the W3C Gamepad standard mapping [w3c-gamepad]. No real hub is described anywhere in
the project; any can be.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from stickwright.codes.inputs import Role, StickRole
from stickwright.model.measured import Measured, Plausible
from stickwright.model.plugs import is_usb

__all__ = ["BUTTON_ROLES", "ROLES", "STICK_ROLES", "Hub", "Hubs", "Role", "Socket", "roles_of"]

Ampere = Annotated[float, Plausible(0.0, 5.0)]
STICK_ROLES: tuple[StickRole, ...] = StickRole.__args__  # type: ignore[attr-defined]
ROLES: tuple[Role, ...] = Role.__args__  # type: ignore[attr-defined]
BUTTON_ROLES: tuple[Role, ...] = ROLES[2:]
"""Buttons 0 to 16 in the order of the standard mapping [w3c-gamepad]."""


class Socket(Measured):
    """One socket of a hub."""

    name: str = Field(min_length=1)
    """As printed on the hub, or as you label it."""
    takes: str = Field(min_length=1)
    """The plug that fits: USB, 4-conductor, 2-conductor."""
    role: Role | Literal["assignable"] | None = None
    """What it feeds, or assignable; a socket without either is told."""
    roles: tuple[Role, ...] = ()
    """What an assignable socket can feed; anything of its kind when empty."""
    current_a: Ampere | None = None
    """What it can supply."""
    excludes: tuple[str, ...] = ()
    """Sockets that must stay empty while this one is used."""


class Hub(Measured):
    """A box that takes sticks and switches and acts as one controller."""

    name: str = Field(min_length=1)
    socket: tuple[Socket, ...] = ()
    current_a: Ampere | None = None
    """What all its sockets together can supply."""
    most_devices: Annotated[int, Field(ge=1, le=64)] | None = None
    paired: Annotated[int, Field(ge=0, le=4)] = 0
    """Second controllers that can be paired so that both act as one player."""
    plug: str = ""
    """Its own plug, towards the console or computer."""
    cable_m: Annotated[float, Plausible(0.0, 20.0)] | None = None
    in_stock: Annotated[int, Field(ge=0, le=1000)] = 1
    price: Annotated[float, Field(ge=0, le=100000)] | None = None
    note: str = ""


class Hubs(Measured):
    """All hubs of a case; several act together as one player."""

    hub: tuple[Hub, ...] = ()


def roles_of(socket: Socket, plug: str) -> tuple[Role, ...]:
    """What a socket can feed.

    Parameters
    ----------
    socket : Socket
    plug : str
        What it takes, as `stickwright.model.plugs.plugs_of` spells it.

    Returns
    -------
    tuple of str
        One role when it is fixed. When assignable: those it names, otherwise sticks and buttons for USB, buttons for
        a two-conductor jack, sticks for the others; empty when no role is said.
    """
    if socket.role is None:
        return ()
    if socket.role != "assignable":
        return (socket.role,)
    if socket.roles:
        return socket.roles
    if is_usb(plug):
        return ROLES
    return BUTTON_ROLES if plug.endswith("2-conductor") else STICK_ROLES
