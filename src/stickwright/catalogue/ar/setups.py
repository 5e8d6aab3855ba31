"""A set-up by its parts, in Arabic."""

from __future__ import annotations

from stickwright.catalogue.ar import Arabic
from stickwright.codes.message import Name, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Said as in English."""

    w: Arabic

    def named(self, *, stick: Name, topper: Name | None, extension: Name | None, raised_rad: float) -> str:
        parts = [self.w.name(one) for one in (stick, topper) if one]
        parts += [f"الوصلة {self.w.name(extension)}"] if extension else []
        parts += [f"القاعدة مرفوعة {self.w.amount(raised_rad, 'deg')}"] if abs(raised_rad) > 1e-9 else []
        return " + ".join(parts)
