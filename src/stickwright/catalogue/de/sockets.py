"""A socket of a splitter, in German."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.message import Name, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Wo etwas eingesteckt wird."""

    w: German

    def of_splitter(self, *, socket: Name, way: Name) -> str:
        return f"Buchse {self.w.name(way)} am Verteiler in {self.w.name(socket)}"
