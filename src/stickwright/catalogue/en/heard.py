"""What a case's recordings add to its plan, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.heard import Heard
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(Heard):
    """Findings about a site's recordings."""

    w: English

    def simulated(self, *, player: Name, recordings: tuple[Name, ...]) -> str:
        return (
            f"Left out, because the simulated player made them and not {self.w.name(player)}: {self.w.names(recordings)}. This plan "
            "does not count them. Record with the player, or mark the player as an example if the player is invented too."
        )

    def replayed(self, *, recordings: tuple[Name, ...]) -> str:
        return (
            f"Left out, because they are other recordings played back: {self.w.names(recordings)}. What they show counts once, in "
            "the recording that was played. To count more, record with the player again."
        )

    def crosswise(self, *, recording: Name, stick: Name, anticlockwise: bool) -> str:
        return (
            f"{self.w.name(recording)}: every push came out a quarter turn {'anticlockwise' if anticlockwise else 'clockwise'}, "
            f"because {self.w.name(stick)} stood crosswise and its output was not rotated yet. The plan counts the recording as it "
            "comes once the output is rotated. Any rotation in the tuning is in addition to that."
        )

    def involuntary(self, *, recording: Name, force_n: float, crossing_hz: float | None, limb_assumed: bool) -> str:
        often = f", zero-crossing frequency {self.w.amount(crossing_hz, 'hz')}" if crossing_hz is not None else ""
        limb = " The stiffness of the limb was assumed, not measured." if limb_assumed else ""
        return (
            f"Involuntary force taken from {self.w.name(recording)}: {self.w.amount(force_n, 'n')} rms (typical size) for each axis"
            f"{often}.{limb}"
        )

    def from_recording(self, *, recording: Name) -> str:
        return f"from {self.w.name(recording)} and the stiffness of stick and limb"

    def in_state(self, *, state: Name, told: Text) -> str:
        return f"{self.w.name(state)}: {self.say(told)}"
