"""A button of a controller, in German."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Controller und Taste."""

    w: German

    def button(self, *, controller: Name, role: Role) -> str:
        return f"{self.w.name(controller)}, {self.w.role(role)}"
