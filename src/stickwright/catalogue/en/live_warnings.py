"""What looks wrong with a stick while it can still be put right, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.live_warnings import LiveWarnings
from stickwright.codes.message import Text

__all__ = ["Texts"]


class Texts(LiveWarnings):
    """What is seen, and what to do."""

    w: English

    def stands_still(self, *, time_s: float) -> str:
        return (
            f"The stick has sent the same value for {self.w.amount(time_s, 's')} although movement is asked. Is it in standby, "
            "or has the player not begun? Wiggle it. If nothing changes, unplug it and plug it in again."
        )

    def other_stick(self) -> str:
        return "Only the second stick moves, but the first one is recorded. Choose the stick that the player holds."

    def both_sticks(self) -> str:
        return (
            "Both sticks move. If both are the player's, carry on. If somebody else touches one of them, or it is knocked, "
            "put it aside."
        )

    def no_wiggle(self) -> str:
        return "No stick moved far enough to be found. Check that it is plugged in. Then move it widely, once round."

    def two_moved(self, *, most: Text, other: Text) -> str:
        return (
            f"Two sticks moved: most of all {self.clause(most)}, but also {self.clause(other)}. "
            "Wiggle only the one that you want to measure."
        )

    def one_axis(self, *, stick: Text) -> str:
        return (
            f"Only one axis of {self.say(stick)} moved, so it counts as a lever. If it is a stick, move it once round."
        )

    def rate_reason(self, *, reason: Literal["nothing-recorded", "hardly-moved", "as-often-as-looked"]) -> str:
        reasons = {
            "nothing-recorded": "nothing was recorded",
            "hardly-moved": "the stick hardly moved; wiggle it for 3 s and look again",
            "as-often-as-looked": "it reports at least as often as it was read",
        }
        return reasons[reason]

    def rate_unknown(self, *, why: Text) -> str:
        return f"How often the stick reports is not known: {self.clause(why)}."

    def rate_at_least(self, *, rate_hz: float) -> str:
        return f"The stick reports at least {self.w.whole(rate_hz)} times per second."

    def rate(self, *, rate_hz: float, low_hz: float, high_hz: float, trusted_hz: float) -> str:
        return (
            f"The stick reports {self.w.whole(rate_hz)} times per second ({self.w.whole(low_hz)} to {self.w.whole(high_hz)}). "
            f"Do not trust tremor above {self.w.whole(trusted_hz)} Hz."
        )
