"""What is written in the drawing of the wiring, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.inputs import Role
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.wiring_drawings import WiringDrawings

__all__ = ["Texts"]


class Texts(WiringDrawings):
    """Each a label, except where the topic says sentence."""

    w: English

    def devices(self) -> str:
        return "Device and function"

    def hubs(self) -> str:
        return "Hub connections"

    def nothing(self) -> str:
        return "Nothing is plugged in."

    def alt(self, *, cables: tuple[Message, ...]) -> str:
        return f"Wiring, one line for each cable: {'; '.join(self.clause(one) for one in cables)}."

    def alt_cable(
        self, *, tag: Name, device: Name, sites: tuple[Name, ...], through: tuple[Name, ...], socket: Name, hub: Name, missing: bool
    ) -> str:  # fmt: skip
        leads = f"through {self.w.names(through)} " if through else ""
        lacks = " (a lead is missing)" if missing else ""
        return (
            f"{self.w.name(tag)}, {self.device_at(device=device, sites=sites)}, {leads}into {self.w.name(socket)} of "
            f"{self.w.name(hub)}{lacks}"
        )

    def alt_paired(self, *, tag: Name, device: Name, sites: tuple[Name, ...], hub: Name) -> str:
        return f"{self.w.name(tag)}, {self.device_at(device=device, sites=sites)}, paired with {self.w.name(hub)} without a cable"

    def empty(self, *, sockets: tuple[Name, ...]) -> str:
        return f"{', '.join(self.w.name(one) for one in sockets)}: empty"

    def keep_empty(self, *, socket: Name, why: Message) -> str:
        return f"{self.w.name(socket)}: keep empty: {self.clause(why)}"

    def socket(self, *, socket: Name, takes: Message | None) -> str:
        return f"{self.w.name(socket)}: {self.say(takes)}" if takes is not None else self.w.name(socket)

    def way(self, *, way: int, feeds: Message | None) -> str:
        return f"way {self.w.whole(way)}{f': {self.say(feeds)}' if feeds is not None else ''}"

    def feeds(self, *, role: Role) -> str:
        return self.w.role(role)

    def any_button(self) -> str:
        return "any button"

    def paired(self) -> str:
        return "paired"

    def no_cable(self) -> str:
        return "paired, no cable"

    def device_at(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        return f"{self.w.name(device)} at {self.w.names(sites)}" if sites else self.w.name(device)

    def doing(self, *, sites: tuple[Name, ...], actions: tuple[Name, ...]) -> str:
        done = ", ".join(self.w.name(one) for one in actions)
        return f"{self.w.names(sites)}: {done}" if done else self.w.names(sites)

    def acts_as(self, *, role: Role | None, actions: tuple[Name, ...]) -> str:
        done = ", ".join(self.w.name(one) for one in actions)
        return ": ".join(part for part in (self.w.role(role) if role is not None else "", done) if part)

    def through(self, *, through: tuple[Name, ...], missing: tuple[Message, ...]) -> str:
        lacks = [f"MISSING: {self.clause(one)}" for one in missing]
        return ", ".join([*(self.w.name(one) for one in through), *lacks])

    def to(self, *, hub: Name, socket: Text) -> str:
        return f"{self.w.name(hub)}, {self.say(socket)}"

    def length(self, *, length_m: float | None, needed_m: float | None) -> str:
        has = "not measured" if length_m is None else self.w.centimetres(length_m)
        return f"{has}; {'way not measured' if needed_m is None else f'{self.w.centimetres(needed_m)} needed'}"

    def not_recorded(self) -> str:
        return "not recorded"
