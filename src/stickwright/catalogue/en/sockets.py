"""Where a device is plugged in, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.sockets import Sockets

__all__ = ["Texts"]


class Texts(Sockets):
    """Where a device is plugged in."""

    w: English

    def of_splitter(self, *, socket: Name, way: Name) -> str:
        return f"socket {self.w.name(way)} of the splitter in {self.w.name(socket)}"

    def of_hub(self, *, socket: Text, hub: Name | None, tag: Name | None) -> str:
        on = f" on {self.w.name(hub)}" if hub else ""
        return f"{self.say(socket)}{on}{f' ({self.w.name(tag)})' if tag else ''}"

    def paired(self) -> str:
        return "paired"
