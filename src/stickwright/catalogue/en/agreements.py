"""What the readings predict against what was recorded, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.agreements import Agreements, RecordedTask
from stickwright.codes.message import Message, Name, Text

__all__ = ["Texts"]

_TASKS = {"push": "full pushes", "rim": "the rim task"}


class Texts(Agreements):
    """Findings about gauge and stick."""

    w: English

    def compared(
        self,
        *,
        direction_rad: float,
        predicted_share: float,
        recorded_share: float,
        task: RecordedTask,
        recording: Name,
    ) -> str:
        return (
            f"{self.w.direction(direction_rad)} {self.w.share(predicted_share)} predicted from the readings, "
            f"{self.w.share(recorded_share)} recorded in {_TASKS[task]}, {self.w.name(recording)}"
        )

    def not_compared(self, *, setup: Text) -> str:
        return (
            f"Readings and recording on {self.say(setup)} could not be compared: the recording shows no travel reached in any "
            "direction."
        )

    def mirrored(self, *, setup: Text, worst: Message) -> str:
        return (
            f"What was recorded on {self.say(setup)} is the mirror image of what the readings predict ({self.clause(worst)}): were "
            "left and right swapped at the gauge, or is an axis of the stick reversed?"
        )

    def apart(self, *, setup: Text, worst: Message, less_recorded: bool) -> str:
        cause = (
            "the gauge was pushed harder than in play, or the stick is stiffer than on the bench"
            if less_recorded
            else "the gauge slipped or was read too low, or the stick is lighter than on the bench"
        )
        return f"Readings and recording disagree on {self.say(setup)}: {self.clause(worst)} ({cause}). Measure that direction once more."

    def agree(
        self, *, setup: Text, difference_share: float, worst: Message, weakest: Message | None, left_out: int
    ) -> str:
        also = f" Weakest as predicted: {self.clause(weakest)}." if weakest else ""
        directions = self.w.plural(left_out, one="1 direction", other=f"{left_out} directions")
        without = f"; {directions} without a recorded travel not compared" if left_out else ""
        return (
            f"Readings and recording agree on {self.say(setup)}: the largest difference is {self.w.share(difference_share)} of "
            f"travel, {self.clause(worst)}{without}.{also}"
        )
