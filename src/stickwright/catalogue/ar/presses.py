"""A button of a controller, in Arabic."""

from __future__ import annotations

from stickwright.catalogue.ar import Arabic
from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Said as in English."""

    w: Arabic

    def button(self, *, controller: Name, role: Role) -> str:
        return f"{self.w.name(controller)}، {self.w.role(role)}"
