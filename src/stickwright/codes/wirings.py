"""Cable by cable: what must be looked at before anything is plugged in, the order of plugging in, currents, notes of the parts."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.inputs import Role, StickRole
from stickwright.codes.message import Message, Name, Text, Topic

__all__ = ["Wirings"]


class Wirings(Topic):
    """Findings and steps are sentences; places and reasons clauses. A tag is printed at both ends of a cable; None: it is told
    without."""

    # ---- places

    @abstractmethod
    def socket(self, *, socket: Name, hub: Name | None) -> str:
        """A socket, with its hub where there are several."""

    @abstractmethod
    def paired(self, *, device: Name) -> str:
        """A controller that is paired."""

    @abstractmethod
    def tagged(self, *, place: Message, tag: Name | None) -> str:
        """A place with the tag of its cable."""

    @abstractmethod
    def cable(self, *, tag: Name | None, device: Name, place: Message) -> str:
        """A cable: its tag, its device and its socket."""

    @abstractmethod
    def device_at(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        """A device and its control sites, or who uses it."""

    # ---- findings

    @abstractmethod
    def no_hub(self) -> str:
        """No hub is described."""

    @abstractmethod
    def no_socket(self, *, devices: tuple[Message, ...]) -> str:
        """Nothing says where these are plugged in."""

    @abstractmethod
    def plug_unknown(self, *, cable: Message) -> str:
        """Nobody recorded the plug."""

    @abstractmethod
    def needs_adapter(self, *, cable: Message, why: Message, lead: Message) -> str:
        """The plug must not go in as it is; what is needed."""

    @abstractmethod
    def check_adapter(self, *, cable: Message, why: Message) -> str:
        """An adapter changes more than the size."""

    @abstractmethod
    def missing(self, *, cable: Message, leads: tuple[Message, ...], unmeasured: tuple[Name, ...]) -> str:
        """Leads that are missing; leads in stock that might do, whose length was not measured."""

    @abstractmethod
    def two_orders(self, *, cable: Message) -> str:
        """Four-pole plugs come in two orders."""

    @abstractmethod
    def mount_takes(
        self, *, tag: Name | None, device: Name, sites: tuple[Name, ...], along_m: float, mount: Name | None
    ) -> str:
        """The way along a mount makes a lead missing."""

    @abstractmethod
    def several_plugs(self, *, count: int, socket: Name, hub: Name) -> str:
        """More than one plug for a socket."""

    @abstractmethod
    def both_ways(self, *, socket: Name, hub: Name) -> str:
        """A socket is used directly and through a splitter."""

    @abstractmethod
    def excluded(self, *, socket: Name, other: Name, hub: Name) -> str:
        """The other socket must stay empty while this one is used, and both are used."""

    @abstractmethod
    def too_many_paired(self, *, count: int, hub: Name, most: int) -> str:
        """More paired controllers than a hub takes."""

    @abstractmethod
    def too_many_devices(self, *, count: int, hub: Name, most: int) -> str:
        """More devices than a hub takes."""

    @abstractmethod
    def wrong_role(
        self, *, place: Message, feeds: tuple[Role, ...], kind: Literal["named", "buttons", "others"], device: Name, role: Role
    ) -> str:  # fmt: skip
        """A socket feeds something else than its device is to be; `kind`: name what it feeds, or say that these are buttons only, or
        other controls."""

    @abstractmethod
    def same_stick(self, *, places: tuple[Message, ...], role: StickRole) -> str:
        """Several sockets feed one stick."""

    @abstractmethod
    def same_button(self, *, places: tuple[Message, ...], role: Role) -> str:
        """Several sockets feed one button."""

    @abstractmethod
    def way_unknown(self, *, sites: tuple[Name, ...]) -> str:
        """The way of the cables was not measured; the key of the player's file is to_hub_mm."""

    @abstractmethod
    def way_assumed(self, *, sites: tuple[Name, ...]) -> str:
        """The way of the cables is worked out from where the hub is."""

    @abstractmethod
    def cable_unknown(self, *, devices: tuple[Name, ...]) -> str:
        """The length of these devices' own cables was not measured; the key of the kit's file is cable_mm."""

    @abstractmethod
    def current_assumed(self, *, devices: tuple[Name, ...], current_a: float) -> str:
        """The current of these USB devices is not known; what is assumed."""

    @abstractmethod
    def current_left_out(self, *, devices: tuple[Name, ...]) -> str:
        """The current of these devices is not known, and not counted."""

    @abstractmethod
    def feeds_unknown(self, *, places: tuple[Message, ...]) -> str:
        """Nobody recorded what these sockets feed."""

    @abstractmethod
    def no_second_controller(self, *, helper: Name, why: Literal["no_controller", "no_place"]) -> str:
        """A helper needs a second controller: no controller of the kit can be paired, or no hub takes another."""

    @abstractmethod
    def over(self, *, power: Message) -> str:
        """A limit of current is passed."""

    @abstractmethod
    def draws_too_much(self, *, tag: Name | None, device: Name, current_a: float, most_a: float) -> str:
        """A device draws more than USB allows."""

    @abstractmethod
    def splitter_ways(self, *, splitter: Name, ways: int, most: int) -> str:
        """A splitter without its own supply has too many ways."""

    # ---- currents

    @abstractmethod
    def power(self, *, where: Message, current_a: float, limit_a: float | None) -> str:
        """Current against its limit (None: not known), and where."""

    @abstractmethod
    def at_socket(self, *, socket: Name, hub: Name | None, way: Name | None) -> str:
        """Where current is drawn: at a socket, or at one way of a splitter in it."""

    @abstractmethod
    def at_splitter(self, *, splitter: Name, socket: Name, hub: Name | None, own_a: float) -> str:
        """Through a splitter in a socket; what it takes for itself."""

    @abstractmethod
    def at_hub(self, *, hub: Name) -> str:
        """From a hub as a whole."""

    @abstractmethod
    def some_current(self) -> str:
        """Expected: a current of nothing or more."""

    @abstractmethod
    def current(self, *, current_a: float | None) -> str:
        """Found: a current; None: no number."""

    @abstractmethod
    def read_current(self) -> str:
        """Remedy: where a current stands."""

    # ---- sockets that stay empty

    @abstractmethod
    def same_stick_as(self, *, place: Message) -> str:
        """Clause: it would feed the same stick as another place."""

    @abstractmethod
    def not_with(self, *, socket: Name) -> str:
        """Clause: it cannot be used together with another socket."""

    # ---- steps

    @abstractmethod
    def hands_off(self) -> str:
        """Nobody touches a stick until everything is on."""

    @abstractmethod
    def plug_in(
        self, *, tag: Name, device: Name, sites: tuple[Name, ...], through: tuple[Name, ...], place: Message,
        missing: tuple[Message, ...],
    ) -> str:  # fmt: skip
        """One device, through which leads into which socket; what is missing."""

    @abstractmethod
    def leave_empty(self, *, place: Message, why: Message) -> str:
        """A socket that stays empty, and why."""

    @abstractmethod
    def no_other(self, *, roles: tuple[StickRole, ...]) -> str:
        """No other socket may be set to these sticks."""

    @abstractmethod
    def hub_last(self, *, hubs: tuple[Name, ...]) -> str:
        """The hub is plugged in last."""

    @abstractmethod
    def pair(self, *, tag: Name, device: Name, sites: tuple[Name, ...], hub: Name) -> str:
        """A controller is paired."""

    @abstractmethod
    def try_each(self, *, actions: tuple[Name, ...]) -> str:
        """The test of one minute."""

    @abstractmethod
    def try_directions(self, *, tags: tuple[Name, ...]) -> str:
        """Directions are tried."""

    @abstractmethod
    def plug_again(self, *, tags: tuple[Name, ...]) -> str:
        """USB plugs are pulled and plugged in again."""

    # ---- parts

    @abstractmethod
    def second_controller(self) -> str:
        """Label: a second controller that the kit does not have."""

    @abstractmethod
    def second_for(self, *, helpers: tuple[Name, ...]) -> str:
        """Note: a controller is the second one, for whom."""

    @abstractmethod
    def same_player(self, *, helpers: tuple[Name, ...]) -> str:
        """Note: for whom a second controller is, and what it must be able to do."""

    @abstractmethod
    def more_for(self, *, count: int, places: tuple[Text, ...]) -> str:
        """Note: so many more are needed for these cables or sockets."""

    @abstractmethod
    def not_in_kit(self, *, places: tuple[Text, ...]) -> str:
        """Note: for which cables or sockets, and that the kit has none."""

    @abstractmethod
    def notes(self, *, notes: tuple[Message, ...]) -> str:
        """Several notes on one part."""
