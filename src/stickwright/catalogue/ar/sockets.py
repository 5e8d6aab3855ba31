"""A socket of a splitter, in Arabic."""

from __future__ import annotations

from stickwright.catalogue.ar import Arabic
from stickwright.codes.message import Name, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Said as in English."""

    w: Arabic

    def of_splitter(self, *, socket: Name, way: Name) -> str:
        return f"المقبس {self.w.name(way)} في المشعِّب الموصول بـ {self.w.name(socket)}"
