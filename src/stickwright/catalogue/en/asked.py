"""What is asked of a plan, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.asked import Asked
from stickwright.codes.message import Name

__all__ = ["Texts"]


class Texts(Asked):
    """What was found, what is expected; remedies are sentences."""

    w: English

    def device(self, *, kind: Literal["stick", "switch", "controller", "device"]) -> str:
        return f"a {kind} of the kit"

    def socket(self, *, name: Name) -> str:
        return f'socket "{self.w.name(name)}"'

    def of_hub(self) -> str:
        return "one of its sockets"

    def hub(self) -> str:
        return "a hub of the case"

    def excludable(self) -> str:
        return "the name of anything in the kit, a control site, hub, socket or helper, or the word helper or option"

    def none_or_more(self) -> str:
        return f"{self.w.whole(0)} or more"

    def budget(self) -> str:
        return "It is the most that may be spent on what is missing."

    def devices(self) -> str:
        return "It is the maximum number of devices."

    def pair(self) -> str:
        return "ACTION=PLACE or SITE=DEVICE, both of this case"

    def place(self) -> str:
        return "a control site, a device, option, helper or dropped after the ="

    def face_size(self) -> str:
        return "two switches side by side"

    def length(self) -> str:
        return f"a length of {self.w.whole(0)} or more"
