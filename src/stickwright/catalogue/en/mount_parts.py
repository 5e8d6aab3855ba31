"""Notes of the parts list about mounts, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name
from stickwright.codes.mount_parts import MountParts

__all__ = ["Texts"]


class Texts(MountParts):
    """Each a note, without a full stop."""

    w: English

    def for_sites(self, *, sites: tuple[Name, ...]) -> str:
        return f"for {self.w.names(sites)}"

    def cut(self, *, pieces: tuple[Message, ...]) -> str:
        told = "; ".join(self.say(one) for one in pieces)
        return f"{told}; counted in pieces: check that each piece in stock is large enough"

    def piece(self, *, count: int, long_m: float | None, short_m: float | None, site: Name) -> str:
        some = f"{self.w.whole(count)} {self.w.plural(count, one='piece', other='pieces')}"
        size = f" of {self.w.sizes((long_m, short_m))}" if long_m is not None and short_m is not None else ""
        return f"{some}{size} for {self.w.name(site)}"

    def whole(self, *, under: Name, site: Name) -> str:
        return f"1 piece under the whole of {self.w.name(under)} for {self.w.name(site)}"

    def made(self, *, site: Name) -> str:
        return f"for {self.w.name(site)}; made to measure, not in the kit"
