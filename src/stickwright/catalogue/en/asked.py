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

    def typed(self, *, typed: Name) -> str:
        return f'"{self.w.name(typed)}"'

    def action(self) -> str:
        return "an action of game.toml"

    def no_actions(self) -> str:
        return "game.toml names none. Add an [[action]] for each thing that the player wants to do."

    def state(self, *, state: Name) -> str:
        return f'the state "{self.w.name(state)}"'

    def state_of(self, *, site: Name) -> str:
        return f"a state of {self.w.name(site)}"

    def add_state(self) -> str:
        return "Add the state to the control site, or delete it from the recording."

    def simulations(self, *, least: int, most: int, usual: int) -> str:
        return f"{self.w.whole(least)} to {self.w.whole(most)}, {self.w.whole(usual)} for a sheet"

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
