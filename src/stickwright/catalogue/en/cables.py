"""Leads that a cable lacks, and what its length is made of, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.catalogue.en.plugs import Texts as PlugWords
from stickwright.codes.cables import Cables, LeadKind
from stickwright.codes.message import Message, Name
from stickwright.codes.plugs import PlugKind

__all__ = ["Texts"]

_KINDS: dict[LeadKind, str] = {"extension": "extension lead", "adapter": "adapter", "splitter": "splitter"}


class Texts(Cables):
    """Each a label or a clause."""

    w: English

    def extension(self, *, plug: PlugKind, least_m: float, label: bool) -> str:
        a = "" if label else "an "
        return f"{a}extension lead, {self._plug(plug)}, {self.w.trimmed_amount(least_m, 'm')} or longer"

    def adapter(self, *, plug: PlugKind, socket: PlugKind, label: bool) -> str:
        a = "" if label else "an "
        return f"{a}adapter from a {self._plug(plug)} plug to a {self._plug(socket)} socket"

    def splitter(self, *, plug: PlugKind, ways: int, label: bool) -> str:
        a = "" if label else "a "
        return (
            f"{a}splitter, {self._plug(plug)}, with {self.w.whole(ways)} {self.w.plural(ways, one='way', other='ways')}"
        )

    def lacks(self, *, kind: LeadKind, least_m: float | None) -> str:
        length = f" of {self.w.trimmed_amount(least_m, 'm')}" if least_m is not None else ""
        return f"missing: {_KINDS[kind]}{length}"

    def way_assumed(self, *, to_hub_m: float) -> str:
        return (
            f"the distances right, forward and up to the hub added up, {self.w.amount(to_hub_m, 'm')}, because the way was not "
            "measured with a tape"
        )

    def parts(
        self, *, tags: tuple[Name, ...], tied_m: float, assumed: bool, mount_m: float | None, joints_m: float | None,
        tilt_m: float | None, loop_m: float | None, needed_m: float,
    ) -> str:  # fmt: skip
        tied = f"{self._length(tied_m)} tied{f' ({self.w.assumed})' if assumed else ''}"
        added = (
            (mount_m, "along the mount"),
            (joints_m, "for its joints to move"),
            (tilt_m, "for the tilt"),
            (loop_m, "loop"),
        )
        parts = [tied, *(f"{self._length(length)} {what}" for length, what in added if length is not None)]
        return f"{', '.join(self.w.name(tag) for tag in tags)}: {' + '.join(parts)} = {self._length(needed_m)}"

    def all_of(self, *, leads: tuple[Message, ...]) -> str:
        return self.w.all_of(tuple(self.clause(one) for one in leads))

    def _plug(self, plug: PlugKind) -> str:
        return PlugWords(self.w, self.say).named(plug=plug)

    def _length(self, length_m: float) -> str:
        return self.w.centimetres(length_m)
