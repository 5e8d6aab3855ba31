"""What is wrong with a measuring task that is asked for, a recording that is played, or a stick that is read: parts of a problem."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["CaptureProblems", "CaptureRemedy", "CaptureStep", "ExpectedCapture", "FoundCapture"]

CaptureStep = Literal[
    "sticks", "page",
]  # fmt: skip
"""What the problem is about."""
FoundCapture = Literal[
    "no_samples", "second_reader", "older_window",
]  # fmt: skip
"""What was found instead."""
ExpectedCapture = Literal[
    "odd", "length_above_0", "time_above_0", "share", "hand", "directions", "shares", "mapping", "above_0",
    "recording", "full_output", "speed", "sdl", "one_reader", "sdl_start", "rate", "this_window",
]  # fmt: skip
"""What would have been accepted."""
CaptureRemedy = Literal[
    "nine", "levels", "same_twice", "wiggle", "other_recording", "reinstall", "stop_other", "browser",
    "close_window",
]  # fmt: skip
"""What to do."""


class CaptureProblems(Topic):
    """Parts of problems: where, found, expected, remedy."""

    @abstractmethod
    def step(self, *, what: CaptureStep) -> str:
        """Where: what the problem is about."""

    @abstractmethod
    def task(self, *, task: Name) -> str:
        """Where: a measuring task by its key."""

    @abstractmethod
    def found(self, *, what: FoundCapture) -> str:
        """Found, without figures."""

    @abstractmethod
    def expected(self, *, what: ExpectedCapture) -> str:
        """Expected, without figures."""

    @abstractmethod
    def remedy(self, *, what: CaptureRemedy) -> str:
        """What to do: one whole sentence."""

    @abstractmethod
    def one_of(self, *, names: tuple[Name, ...]) -> str:
        """Expected: one of these keys; none where there is no setting."""

    @abstractmethod
    def axis(self, *, number: int) -> str:
        """Found: an axis by its number, the first is 1."""

    @abstractmethod
    def axes(self, *, axes: int) -> str:
        """Expected: one of so many axes."""

    @abstractmethod
    def own_unit(self, *, unit: Name) -> str:
        """Found: values in a unit of their own."""

    @abstractmethod
    def after(self, *, setting: Name | None) -> str:
        """Found: a setting of the second run; None where it has none."""

    @abstractmethod
    def as_before(self, *, setting: Name | None) -> str:
        """Expected: the setting of the first run; None where it has none."""
