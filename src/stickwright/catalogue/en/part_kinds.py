"""What a part of the parts list is, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.part_kinds import PartKind, PartKinds

__all__ = ["Texts"]

_NAMES: dict[str, str] = {
    "extension": "shaft extension", "friction arm": "mounting arm", "plate": "mounting plate", "tray": "tray",
    "breakaway coupling": "breakaway",
}  # fmt: skip


class Texts(PartKinds):
    """Each a label."""

    w: English

    def named(self, *, kind: PartKind) -> str:
        return _NAMES.get(kind, kind)
