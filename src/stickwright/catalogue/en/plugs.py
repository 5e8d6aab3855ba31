"""Plugs and their contacts, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.plugs import Carried, Contact, PlugKind, Plugs

__all__ = ["Texts"]

_POLES = {"2": "mono jack (TS)", "3": "stereo jack (TRS)", "4": "four-pole jack (TRRS)"}
_BRIEF = {"2": "TS", "3": "TRS", "4": "TRRS"}
_CARRIED: dict[Carried, str] = {
    "five_volts": "5 V", "data": "data", "ground": "ground", "switch_contact": "switch contact", "common": "common",
    "axes": "axis 1, axis 2, supply, ground: order as in the manuals of hub and stick",
    "unknown": "as in the manuals of hub and device",
}  # fmt: skip


class Texts(Plugs):
    """Each a label or a clause."""

    w: English

    def named(self, *, plug: PlugKind) -> str:
        size, mm, poles = plug.partition(" mm ")
        return f"{size} mm {_POLES[poles[0]]}" if mm else plug

    def takes(self, *, plugs: tuple[PlugKind, ...]) -> str:
        return self.w.any_of(tuple(self._brief(one) for one in plugs))

    def drawn(self, *, plug: PlugKind, rings: int) -> str:
        told = f": {self.w.whole(rings)} {self.w.plural(rings, one='ring', other='rings')}" if rings else ""
        return f"{self.named(plug=plug)}{told}"

    def carries(self, *, contacts: tuple[Contact, ...], carries: Carried) -> str:
        return f"{', '.join(contacts)}: {_CARRIED[carries]}"

    def not_said(self) -> str:
        return "its plug is not recorded"

    def socket_not_said(self) -> str:
        return "what the socket takes is not recorded"

    def other_kind(self, *, plug: PlugKind, socket: PlugKind) -> str:
        return f"{self._pair(plug, socket)} are of different kinds"

    def other_size(self, *, plug: PlugKind, socket: PlugKind, thick: bool) -> str:
        gap = "is too thick" if thick else "makes no sure contact"
        return f"{self._pair(plug, socket)} differ in size: the plug {gap}"

    def bridges(self, *, plug: PlugKind, socket: PlugKind, contacts: tuple[Contact, ...]) -> str:
        return f"{self._pair(plug, socket)} do not match: the sleeve of the plug bridges {self.w.all_of(contacts)}"

    def no_contact(self, *, plug: PlugKind, socket: PlugKind, contacts: tuple[Contact, ...]) -> str:
        return f"{self._pair(plug, socket)} do not match: the socket has no contact for {self.w.all_of(contacts)}"

    def kinds(self) -> str:
        return '"USB-A", "USB-C", "2-conductor", "3-conductor" or "4-conductor" (3.5 mm, unless 2.5 mm or 6.3 mm is written before it)'

    def look(self) -> str:
        return 'Look at the plug, and write for example: plug = "2-conductor".'

    @staticmethod
    def _brief(plug: PlugKind) -> str:
        size, mm, poles = plug.partition(" mm ")
        return f"{size} mm {_BRIEF[poles[0]]}" if mm else plug

    def _pair(self, plug: PlugKind, socket: PlugKind) -> str:
        return f"{self.named(plug=plug)} plug and {self.named(plug=socket)} socket"
