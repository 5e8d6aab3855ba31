"""What is wrong with a measuring task or a stick that is read, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.capture_problems import (
    CaptureProblems,
    CaptureRemedy,
    CaptureStep,
    ExpectedCapture,
    FoundCapture,
)
from stickwright.codes.message import Name

__all__ = ["Texts"]

_STEP: dict[CaptureStep, str] = {
    "sticks": "sticks of this computer",
    "page": "message from the page",
}
_FOUND: dict[FoundCapture, str] = {
    "no_samples": "no samples",
    "second_reader": "a second reader",
    "older_window": "an older window",
}
_EXPECTED: dict[ExpectedCapture, str] = {
    "odd": "an odd number, 3 or more",
    "length_above_0": "a length above 0",
    "time_above_0": "a time above 0",
    "share": "a share of full output above 0, at most 1",
    "hand": "'off' or 'resting'",
    "directions": "4 or 8",
    "shares": "shares above 0, at most 1",
    "mapping": "'position' or 'velocity'",
    "above_0": "a number above 0",
    "recording": "a recording to play",
    "full_output": "shares of full output",
    "speed": "a number above 0 (1 is as recorded)",
    "sdl": "the SDL library, which comes with the program",
    "one_reader": "one at a time",
    "sdl_start": "SDL to start",
    "rate": "1 to 4000 samples a second",
    "this_window": "the window that measures now",
}
_REMEDY: dict[CaptureRemedy, str] = {
    "nine": "Use 9.",
    "levels": "Use 0.3, 0.6 and 1.",
    "same_twice": "Run the same task with the same settings twice.",
    "wiggle": "Wiggle the stick to choose it.",
    "other_recording": "Choose another recording.",
    "reinstall": "Reinstall the program, or read the stick in the browser.",
    "stop_other": "Stop the other one first.",
    "browser": "Read the stick in the browser.",
    "close_window": "Close this window, or reload it to measure here.",
}


def _setting(w: English, setting: Name | None) -> str:
    return "nothing" if setting is None else w.name(setting)


class Texts(CaptureProblems):
    """Parts of problems: where, found, expected, remedy."""

    w: English

    def step(self, *, what: CaptureStep) -> str:
        return _STEP[what]

    def task(self, *, task: Name) -> str:
        return f"task {self.w.name(task)}"

    def found(self, *, what: FoundCapture) -> str:
        return _FOUND[what]

    def expected(self, *, what: ExpectedCapture) -> str:
        return _EXPECTED[what]

    def remedy(self, *, what: CaptureRemedy) -> str:
        return _REMEDY[what]

    def one_of(self, *, names: tuple[Name, ...]) -> str:
        return f"one of {self.w.any_of(tuple(self.w.name(one) for one in names))}" if names else "no setting"

    def axis(self, *, number: int) -> str:
        return f"axis {self.w.whole(number)}"

    def axes(self, *, axes: int) -> str:
        return f"one of the {self.w.whole(axes)} axes of this device"

    def own_unit(self, *, unit: Name) -> str:
        return f"values in {self.w.name(unit)}"

    def after(self, *, setting: Name | None) -> str:
        return f"{_setting(self.w, setting)} after"

    def as_before(self, *, setting: Name | None) -> str:
        return f"the same as before, {_setting(self.w, setting)}"
