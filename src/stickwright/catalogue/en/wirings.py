"""Cable by cable, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.inputs import Role, StickRole
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.wirings import Wirings

__all__ = ["Texts"]


class Texts(Wirings):
    """Findings and steps are sentences; places and reasons clauses."""

    w: English

    def socket(self, *, socket: Name, hub: Name | None) -> str:
        return f"{self.w.name(socket)} of {self.w.name(hub)}" if hub is not None else self.w.name(socket)

    def paired(self, *, device: Name) -> str:
        return f"the paired {self.w.name(device)}"

    def tagged(self, *, place: Message, tag: Name | None) -> str:
        return f"{self.clause(place)} ({self.w.name(tag)})" if tag is not None else self.clause(place)

    def cable(self, *, tag: Name | None, device: Name, place: Message) -> str:
        way = f"{self.w.name(device)} to {self.clause(place)}"
        return f"{self.w.name(tag)} ({way})" if tag is not None else way

    def device_at(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        return f"{self.w.name(device)} ({self.w.names(sites)})"

    def no_hub(self) -> str:
        return "No hub is described, so sockets, leads and currents are not worked out."

    def no_socket(self, *, devices: tuple[Message, ...]) -> str:
        return f"No socket was chosen for {self._all(devices)}."

    def plug_unknown(self, *, cable: Message) -> str:
        return f"{self.clause(cable)}: its plug is not recorded. Look at it before you plug it in."

    def needs_adapter(self, *, cable: Message, why: Message, lead: Message) -> str:
        return f"{self.clause(cable)}: {self.clause(why)}. Do not plug it in without {self.clause(lead)}."

    def check_adapter(self, *, cable: Message, why: Message) -> str:
        return (
            f"{self.clause(cable)}: {self.clause(why)}. Check in the adapter's manual that it joins the right contacts."
        )

    def missing(self, *, cable: Message, leads: tuple[Message, ...], unmeasured: tuple[Name, ...]) -> str:
        there = f" In stock without a length: {self.w.names(unmeasured)}; measure it." if unmeasured else ""
        return f"{self.clause(cable)}: missing {self._all(leads)}.{there}"

    def two_orders(self, *, cable: Message) -> str:
        return (
            f"{self.clause(cable)}: four-pole plugs (TRRS) come in two orders, with ground on ring 2 or on the sleeve. Check both "
            "manuals, of hub and stick, before you plug it in."
        )

    def mount_takes(
        self, *, tag: Name | None, device: Name, sites: tuple[Name, ...], along_m: float, mount: Name | None
    ) -> str:
        named = f"{self.w.name(device)} at {self.w.names(sites)}"
        cable = f"{self.w.name(tag)} ({named})" if tag is not None else named
        what = self.w.name(mount) if mount is not None else "the mount"
        return (
            f"{cable}: the {self.w.centimetres(along_m)} along {what} make the lead missing; for the rest of the way the kit has "
            "enough."
        )

    def several_plugs(self, *, count: int, socket: Name, hub: Name) -> str:
        return f"{self.w.whole(count)} plugs for {self.socket(socket=socket, hub=hub)}: it takes one."

    def both_ways(self, *, socket: Name, hub: Name) -> str:
        return f"{self.socket(socket=socket, hub=hub)} is used both directly and through a splitter."

    def excluded(self, *, socket: Name, other: Name, hub: Name) -> str:
        return (
            f"{self.socket(socket=other, hub=hub)} must stay empty while {self.w.name(socket)} is used; both are used."
        )

    def too_many_paired(self, *, count: int, hub: Name, most: int) -> str:
        what = self.w.plural(count, one="controller is", other="controllers are")
        return f"{self.w.whole(count)} {what} paired with {self.w.name(hub)}, which takes {self.w.whole(most)}."

    def too_many_devices(self, *, count: int, hub: Name, most: int) -> str:
        what = self.w.plural(count, one="device is", other="devices are")
        return f"{self.w.whole(count)} {what} plugged into {self.w.name(hub)}, which takes {self.w.whole(most)}."

    def wrong_role(
        self, *, place: Message, feeds: tuple[Role, ...], kind: Literal["named", "buttons", "others"], device: Name, role: Role
    ) -> str:  # fmt: skip
        named = self.w.all_of(tuple(self.w.role(one) for one in feeds))
        what = {"named": f"the {named}", "buttons": "buttons only", "others": "other controls"}[kind]
        return f"{self.clause(place)} feeds {what}, but {self.w.name(device)} is to be the {self.w.role(role)}."

    def same_stick(self, *, places: tuple[Message, ...], role: StickRole) -> str:
        return (
            f"{self._all(places)} feed the same {self.w.role(role)}: only one of them will work, without warning. Use one, or give "
            "one of them another role."
        )

    def same_button(self, *, places: tuple[Message, ...], role: Role) -> str:
        return f"{self._all(places)} feed the same {self.w.role(role)}: the game cannot tell them apart."

    def way_unknown(self, *, sites: tuple[Name, ...]) -> str:
        return (
            f"The cable length needed to the hub was not measured for {self.w.names(sites)}: lay a tape along the points where the "
            "cable will be tied, from the foot of the base or the clamp of the arm, and enter it for the control site (to_hub_mm). No "
            "extension lead is chosen until then."
        )

    def way_assumed(self, *, sites: tuple[Name, ...]) -> str:
        return (
            f"The cable length needed for {self.w.names(sites)} is worked out from where the hub is: right, forward and up added "
            "up. Lay a tape along the points where the cable will be tied before you buy a lead, and enter it (to_hub_mm)."
        )

    def cable_unknown(self, *, devices: tuple[Name, ...]) -> str:
        what = self.w.plural(len(devices), one="The cable", other="The cables")
        was = self.w.plural(len(devices), one="was", other="were")
        return f"{what} of {self.w.names(devices)} {was} not measured: enter the length with its plug in the kit (cable_mm)."

    def current_assumed(self, *, devices: tuple[Name, ...], current_a: float) -> str:
        return (
            f"The current of {self.w.names(devices)} is not known: {self.w.amount(current_a, 'ma')} is assumed, the most that a "
            "low-power USB device draws."
        )

    def current_left_out(self, *, devices: tuple[Name, ...]) -> str:
        return f"The current of {self.w.names(devices)} is not known and not counted: see the manual."

    def feeds_unknown(self, *, places: tuple[Message, ...]) -> str:
        return f"What {self._all(places)} feeds is not recorded: press, and see what arrives."

    def no_second_controller(self, *, helper: Name, why: Literal["no_controller", "no_place"]) -> str:
        reason = {
            "no_controller": "no controller of the kit can be paired",
            "no_place": "no hub has room for another paired controller",
        }[why]
        return f"{self.w.name(helper)} needs a second controller that acts as the same player, but {reason}."

    def over(self, *, power: Message) -> str:
        return f"Too much current: {self.clause(power)}. Use another socket, or a splitter with its own power supply."

    def draws_too_much(self, *, tag: Name | None, device: Name, current_a: float, most_a: float) -> str:
        cable = f"{self.w.name(tag)}: " if tag is not None else ""
        return (
            f"{cable}{self.w.name(device)} draws {self._ma(current_a)}, more than the {self._ma(most_a)} of any USB 2.0 device: "
            "see its manual."
        )

    def splitter_ways(self, *, splitter: Name, ways: int, most: int) -> str:
        return (
            f"Splitter {self.w.name(splitter)} has no power supply of its own and {self.w.whole(ways)} ways: no more than "
            f"{self.w.whole(most)} can be fed from one socket."
        )

    def power(self, *, where: Message, current_a: float, limit_a: float | None) -> str:
        if limit_a is None:
            return f"{self._ma(current_a)} {self.clause(where)}, limit not known"
        return f"{self._ma(current_a)} of {self._ma(limit_a)} {self.clause(where)}"

    def at_socket(self, *, socket: Name, hub: Name | None, way: Name | None) -> str:
        return f"at {self.socket(socket=socket, hub=hub)}{f', way {self.w.name(way)}' if way is not None else ''}"

    def at_splitter(self, *, splitter: Name, socket: Name, hub: Name | None, own_a: float) -> str:
        place = self.socket(socket=socket, hub=hub)
        return f"at splitter {self.w.name(splitter)} in {place}, {self._ma(own_a)} of it for itself"

    def at_hub(self, *, hub: Name) -> str:
        return f"in all at {self.w.name(hub)}"

    def some_current(self) -> str:
        return f"{self.w.amount(0.0, 'a')} or more"

    def current(self, *, current_a: float | None) -> str:
        return "no number" if current_a is None else self.w.trimmed_amount(current_a, "a")

    def read_current(self) -> str:
        return "Look in the device's manual."

    def same_stick_as(self, *, place: Message) -> str:
        return f"same stick as {self.clause(place)}"

    def not_with(self, *, socket: Name) -> str:
        return f"not together with {self.w.name(socket)}"

    def hands_off(self) -> str:
        return (
            "Hands off the sticks until everything is plugged in and on: a stick that is touched at switch-on sets that position as "
            "centre."
        )

    def plug_in(
        self, *, tag: Name, device: Name, sites: tuple[Name, ...], through: tuple[Name, ...], place: Message,
        missing: tuple[Message, ...],
    ) -> str:  # fmt: skip
        leads = f" through {self.w.names(through)}" if through else ""
        lacks = f" Missing: {self._all(missing)}." if missing else ""
        return (
            f"{self.w.name(tag)}: {self.device_at(device=device, sites=sites)}{leads} into {self.clause(place)}.{lacks}"
        )

    def leave_empty(self, *, place: Message, why: Message) -> str:
        return f"Leave {self.clause(place)} empty: {self.clause(why)}."

    def no_other(self, *, roles: tuple[StickRole, ...]) -> str:
        sticks = self.w.any_of(tuple(self.w.role(one) for one in roles))
        return f"Set no other socket to {sticks}: only one of them will work, without warning."

    def hub_last(self, *, hubs: tuple[Name, ...]) -> str:
        its = self.w.plural(len(hubs), one="its manual says", other="their manuals say")
        them = self.w.plural(len(hubs), one="it", other="them")
        return f"Plug {self.w.names(hubs)} in last, unless {its} otherwise; then switch {them} on."

    def pair(self, *, tag: Name, device: Name, sites: tuple[Name, ...], hub: Name) -> str:
        return (
            f"{self.w.name(tag)}: pair {self.device_at(device=device, sites=sites)} with {self.w.name(hub)}; no cable."
        )

    def try_each(self, *, actions: tuple[Name, ...]) -> str:
        return f"One-minute test: try each action once ({self.w.names(actions)}); the screen shows what arrived."

    def try_directions(self, *, tags: tuple[Name, ...]) -> str:
        return (
            f'{self.w.names(tags)}: the player says "forward" and pushes forward, then back, left and right; the game must go the '
            "way the player said."
        )

    def plug_again(self, *, tags: tuple[Name, ...]) -> str:
        if len(tags) == 1:
            return f"Unplug {self.w.names(tags)} and plug it in again: does it still do the same?"
        return f"Unplug {self.w.names(tags)} one at a time and plug each in again: does each still do the same?"

    def second_controller(self) -> str:
        return "second controller"

    def second_for(self, *, helpers: tuple[Name, ...]) -> str:
        return f"second controller for {self.w.names(helpers)}"

    def same_player(self, *, helpers: tuple[Name, ...]) -> str:
        return f"for {self.w.names(helpers)}; one that acts as the same player"

    def more_for(self, *, count: int, places: tuple[Text, ...]) -> str:
        return f"{self.w.whole(count)} more for {self._all(places)}"

    def not_in_kit(self, *, places: tuple[Text, ...]) -> str:
        return f"for {self._all(places)}; not in the kit"

    def notes(self, *, notes: tuple[Message, ...]) -> str:
        return "; ".join(self.clause(one) for one in notes)

    def _all(self, texts: tuple[Text, ...]) -> str:
        return self.w.all_of(tuple(dict.fromkeys(self.clause(one) for one in texts)))

    def _ma(self, current_a: float) -> str:
        """To a tenth of a milliampere: a limit that is passed shows that it is."""
        return self.w.trimmed_amount(current_a, "ma", 4)
