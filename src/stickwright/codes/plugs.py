"""Plugs and their contacts: names, what a contact carries, and why a plug does not go into a socket."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["Carried", "Contact", "PlugKind", "Plugs"]

PlugKind = Literal[
    "USB-A", "USB-C", "2.5 mm 2-conductor", "2.5 mm 3-conductor", "2.5 mm 4-conductor", "3.5 mm 2-conductor",
    "3.5 mm 3-conductor", "3.5 mm 4-conductor", "6.3 mm 2-conductor", "6.3 mm 3-conductor", "6.3 mm 4-conductor",
]  # fmt: skip
"""As `stickwright.model.plugs.plugs_of` spells it."""
Contact = Literal["tip", "ring", "ring 1", "ring 2", "sleeve", "supply", "data -", "data +", "ground"]
Carried = Literal["five_volts", "data", "ground", "switch_contact", "common", "axes", "unknown"]
"""What a contact carries; the order of a stick's two axes, supply and ground, or anything else, only the manuals tell."""


class Plugs(Topic):
    """Each a label or a clause."""

    @abstractmethod
    def named(self, *, plug: PlugKind) -> str:
        """A plug or socket, in the words of the trade."""

    @abstractmethod
    def takes(self, *, plugs: tuple[PlugKind, ...]) -> str:
        """At a socket in a drawing, in few letters: what it takes, one of several plugs."""

    @abstractmethod
    def drawn(self, *, plug: PlugKind, rings: int) -> str:
        """Below a drawing: a plug, and by how many rings its picture is known (0: a USB plug)."""

    @abstractmethod
    def carries(self, *, contacts: tuple[Contact, ...], carries: Carried) -> str:
        """What one or more contacts carry."""

    @abstractmethod
    def not_said(self) -> str:
        """Clause: the plug of a device is not recorded."""

    @abstractmethod
    def socket_not_said(self) -> str:
        """Clause: what a socket takes is not recorded."""

    @abstractmethod
    def other_kind(self, *, plug: PlugKind, socket: PlugKind) -> str:
        """Clause: plug and socket are of different kinds."""

    @abstractmethod
    def other_size(self, *, plug: PlugKind, socket: PlugKind, thick: bool) -> str:
        """Clause: a round plug is too thick for a socket, or too thin."""

    @abstractmethod
    def bridges(self, *, plug: PlugKind, socket: PlugKind, contacts: tuple[Contact, ...]) -> str:
        """Clause: the sleeve of a plug joins several contacts of a socket."""

    @abstractmethod
    def no_contact(self, *, plug: PlugKind, socket: PlugKind, contacts: tuple[Contact, ...]) -> str:
        """Clause: a socket has no contact for some of a plug's."""

    @abstractmethod
    def kinds(self) -> str:
        """Expected in a file: which plugs there are, as they are typed."""

    @abstractmethod
    def look(self) -> str:
        """Remedy: look at the plug; an example as it is typed."""
