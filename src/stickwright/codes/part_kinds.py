"""What a part of the parts list is."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["PartKind", "PartKinds"]

PartKind = Literal[
    "stick", "topper", "extension", "switch", "controller", "hub", "extension lead", "adapter", "splitter", "fastener", "tray",
    "lap tray", "table clamp", "tube clamp", "friction arm", "gooseneck", "plate", "floor plate", "floor stand", "strap",
    "breakaway coupling", "wedge", "packing", "support",
]  # fmt: skip


class PartKinds(Topic):
    """Each a label."""

    @abstractmethod
    def named(self, *, kind: PartKind) -> str:
        """What a part is; an extension is the shaft's, an extension lead a cable."""
