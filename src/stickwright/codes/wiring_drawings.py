"""What is written in the drawing of the wiring and in the table beside it."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.inputs import Role
from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["WiringDrawings"]


class WiringDrawings(Topic):
    """Each a label, except where it says sentence."""

    @abstractmethod
    def devices(self) -> str:
        """Heading of the side with the devices."""

    @abstractmethod
    def hubs(self) -> str:
        """Heading of the side with the hubs."""

    @abstractmethod
    def nothing(self) -> str:
        """Sentence: there is nothing to draw."""

    @abstractmethod
    def alt(self, *, cables: tuple[Message, ...]) -> str:
        """The drawing in one sentence, for those who do not see it."""

    @abstractmethod
    def alt_cable(
        self, *, tag: Name, device: Name, sites: tuple[Name, ...], through: tuple[Name, ...], socket: Name, hub: Name, missing: bool
    ) -> str:  # fmt: skip
        """Clause: one cable: its device, through which leads, into what; whether a lead is missing."""

    @abstractmethod
    def alt_paired(self, *, tag: Name, device: Name, sites: tuple[Name, ...], hub: Name) -> str:
        """Clause: a controller that is paired."""

    @abstractmethod
    def empty(self, *, sockets: tuple[Name, ...]) -> str:
        """Sockets that are empty."""

    @abstractmethod
    def keep_empty(self, *, socket: Name, why: Message) -> str:
        """A socket that must stay empty, and why (a clause)."""

    @abstractmethod
    def socket(self, *, socket: Name, takes: Message | None) -> str:
        """A socket, and what it takes."""

    @abstractmethod
    def way(self, *, way: int, feeds: Message | None) -> str:
        """One way of a splitter, and what it feeds."""

    @abstractmethod
    def feeds(self, *, role: Role) -> str:
        """What a socket feeds in the game."""

    @abstractmethod
    def any_button(self) -> str:
        """A socket feeds a button that the game may choose."""

    @abstractmethod
    def paired(self) -> str:
        """In the place of a socket: a controller that is paired."""

    @abstractmethod
    def no_cable(self) -> str:
        """In the place of a cable: a controller that is paired."""

    @abstractmethod
    def device_at(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        """A device, and where it is."""

    @abstractmethod
    def doing(self, *, sites: tuple[Name, ...], actions: tuple[Name, ...]) -> str:
        """Control sites, and what they do with a device."""

    @abstractmethod
    def acts_as(self, *, role: Role | None, actions: tuple[Name, ...]) -> str:
        """What a device is to the game, and for which actions."""

    @abstractmethod
    def through(self, *, through: tuple[Name, ...], missing: tuple[Message, ...]) -> str:
        """Leads between a device and its socket, and those that are missing."""

    @abstractmethod
    def to(self, *, hub: Name, socket: Text) -> str:
        """Hub and socket."""

    @abstractmethod
    def length(self, *, length_m: float | None, needed_m: float | None) -> str:
        """Length of a cable with its leads, and the one that it needs; None: not measured."""

    @abstractmethod
    def not_recorded(self) -> str:
        """A plug that nobody recorded."""
