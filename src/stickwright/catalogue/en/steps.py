"""The words on the player's screen, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.steps import Steps
from stickwright.codes.ways import Way

__all__ = ["Texts"]


class Texts(Steps):
    """Large, few, one instruction a sentence."""

    w: English

    def hands_off(self) -> str:
        return "Hands off the stick."

    def resting(self) -> str:
        return "Rest on the stick. Do not push it."

    def touch(self) -> str:
        return "Move the stick a little. Let it go."

    def rim(self, *, clockwise: bool) -> str:
        return f"Go slowly round the edge, {'clockwise' if clockwise else 'anticlockwise'}."

    def push(self, *, way: Way) -> str:
        return f"Push {way}. Then let go."

    def hold(self, *, way: Way) -> str:
        return f"Hold {way}, in the ring."

    def hold_long(self, *, way: Way) -> str:
        return f"Hold {way}, in the ring. Let go when you like."

    def aim(self, *, by_switch: bool) -> str:
        return f"Move to the target. {'Press the switch.' if by_switch else 'Stay there.'}"

    def follow(self) -> str:
        return "Follow the ring."

    def follow_soon(self) -> str:
        return "Move to the ring. It will move soon."

    def press(self, *, to_beat: bool) -> str:
        return "Press with the beat." if to_beat else "Press as often as is comfortable."

    def play(self) -> str:
        return "Move as you like."

    def let_go(self) -> str:
        return "Let go. Rest."

    def over(self, *, phase: Literal["paused", "stopped", "done"]) -> str:
        words = {
            "paused": "The stick is unplugged. Please wait.",
            "stopped": "Stopped. Rest.",
            "done": "Finished. Thank you.",
        }
        return words[phase]

    def played_back(self) -> str:
        return "A recording is played back. There is nothing to do."
