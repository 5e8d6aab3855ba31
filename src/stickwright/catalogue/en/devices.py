"""Sticks, controllers and switches as they are plugged in, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.catalogue.en.buttons import BUTTONS
from stickwright.codes.devices import ButtonPlace, Devices
from stickwright.codes.message import Text

__all__ = ["Texts"]


class Texts(Devices):
    """Their axes and buttons, and what happens to them."""

    w: English

    def nameless(self) -> str:
        return "stick without a name"

    def axis(self, *, stick: Literal["left", "right"], axis: Literal["horizontal", "vertical"]) -> str:
        return f"{stick} stick {axis}"

    def numbered_axis(self, *, number: int) -> str:
        return f"axis {self.w.whole(number)}"

    def button(self, *, place: ButtonPlace) -> str:
        return BUTTONS[place]

    def numbered_button(self, *, number: int) -> str:
        return f"button {self.w.whole(number)}"

    def stick(self, *, side: Literal["left", "right"]) -> str:
        return f"{side} stick"

    def axes_of(self, *, device: Text, axes: tuple[Text, ...]) -> str:
        return f"'{self.say(device)}' ({self.w.all_of(tuple(self.say(one) for one in axes))})"

    def plug_in(self) -> str:
        return "No stick is plugged in. Plug it in now. It will be found automatically."

    def wake(self) -> str:
        return "Plug the stick in. Then press one of its buttons or move it: a browser cannot see a stick before that."

    def move_round(self) -> str:
        return "Move the stick that you want to measure widely, once round."

    def found(self, *, switch: bool) -> str:
        said = "The stick is found. Start when the player is ready."
        return said if switch else f"{said} To use a confirm switch, press it now."

    def confirm_switch(self, *, button: Text, device: Text) -> str:
        return f"Confirm switch: {self.say(button)} of {self.clause(device)}."

    def plugged_in(self, *, device: Text, main: bool) -> str:
        return f"'{self.say(device)}' is plugged in{'' if main else ' as well'}."

    def unplugged(self, *, which: Literal["main", "other", "before"]) -> str:
        words = {
            "main": "The stick was unplugged, so the task is paused. Plug it in again to carry on.",
            "other": "Another stick or switch was unplugged.",
            "before": "A stick was unplugged.",
        }
        return words[which]
