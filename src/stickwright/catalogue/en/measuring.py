"""The page 'Measure', in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.measuring import Measuring, SourceName
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_SOURCES: dict[SourceName, tuple[str, str]] = {
    "browser": ("This page", "Nothing to install; about 250 samples per second. Good for trying out."),
    "computer": ("This computer", "Full rate with exact times. Best for measuring."),
    "practice": (
        "A simulated player",
        "For training, without a stick: the player does what is asked. It never counts in a real player's plan.",
    ),
    "replay": ("A recording of this visit", "Plays back what was recorded before."),
}
_LONG_S = 90.0


class Texts(Measuring):
    """Labels and hints of the page, and what is said after a press."""

    w: English

    def source(self, *, source: SourceName) -> str:
        return _SOURCES[source][0]

    def source_hint(self, *, source: SourceName) -> str:
        return _SOURCES[source][1]

    def not_recorded(self) -> str:
        return "not recorded"

    def usual_state(self) -> str:
        return "as usual"

    def lasts(self, *, time_s: float) -> str:
        if time_s < _LONG_S:
            return self.w.amount(round(time_s, -1), "s")
        return self.w.amount(60.0 * round(time_s / 60.0), "min", digits=1)

    def seconds(self, *, time_s: float) -> str:
        return self.w.amount(round(time_s), "s", digits=1)

    def device(self, *, parts: tuple[Name, ...]) -> str:
        return ", ".join(self.w.name(one) for one in parts) or "stick not recorded"

    def recording_on(self, *, recording: Name, stick: Name | None) -> str:
        return f"{self.w.name(recording)}, {'stick not recorded' if stick is None else self.w.name(stick)}"

    def of_another_version(self) -> str:
        return "This version cannot show figures for this recording. Its samples are kept."

    def compare(self) -> str:
        return "Compare two recordings"

    def task_over(self) -> str:
        return "That task is over. What was recorded is below."

    def line(self, *, state: Literal["broken", "back", "closed"]) -> str:
        words = {
            "broken": "The connection to the app is lost. It is tried again. What was recorded is saved.",
            "back": "The connection to the app is back.",
            "closed": "This task is over. What was recorded is on the page 'Measure'.",
        }
        return words[state]

    def step(self, *, number: int, steps: int) -> str:
        return f"Step {self.w.whole(number)} of {self.w.whole(steps)}"

    def kept(self, *, samples: int, waiting: int) -> str:
        saved = f"{self.w.whole(samples)} {self.w.plural(samples, one='sample', other='samples')} saved"
        return f"{saved}, {self.w.whole(waiting)} waiting" if waiting else saved

    def ask_for(self, *, more: Text) -> str:
        return f"Ask for {self.say(more)}"

    def stick_button(self, *, device: Text, stick: Text, beside: bool) -> str:
        return f"{self.say(device)}: {self.say(stick)}{', recorded as second stick' if beside else ''}"

    def put_aside(self, *, recording: Name, aside: bool) -> str:
        return f"{self.w.name(recording)} is {'excluded' if aside else 'included again'}."
