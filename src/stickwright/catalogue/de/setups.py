"""A set-up by its parts, in German."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.message import Name, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Stick und was darauf sitzt."""

    w: German

    def named(self, *, stick: Name, topper: Name | None, extension: Name | None, raised_rad: float) -> str:
        parts = [self.w.name(one) for one in (stick, topper) if one]
        parts += [f"Verlängerung {self.w.name(extension)}"] if extension else []
        parts += [f"Gehäuse um {self.w.amount(raised_rad, 'deg')} angehoben"] if abs(raised_rad) > 1e-9 else []
        return " + ".join(parts)
