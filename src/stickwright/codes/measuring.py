"""The page 'Measure': where a stick is read, what was recorded."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Measuring", "SourceName"]

SourceName = Literal["browser", "computer", "practice", "replay"]


class Measuring(Topic):
    """Labels and hints of the page, and what is said after a press."""

    @abstractmethod
    def source(self, *, source: SourceName) -> str:
        """Label: this page reads the stick; the program does; a simulated player; a recording of the visit is played back."""

    @abstractmethod
    def source_hint(self, *, source: SourceName) -> str:
        """What speaks for it, under the label."""

    @abstractmethod
    def not_recorded(self) -> str:
        """Choice: stick, topper or extension is not stated."""

    @abstractmethod
    def usual_state(self) -> str:
        """Choice: the site is in its usual state."""

    @abstractmethod
    def lasts(self, *, time_s: float) -> str:
        """How long a task takes, roughly: seconds, or minutes from a minute and a half on."""

    @abstractmethod
    def seconds(self, *, time_s: float) -> str:
        """How long a recording is."""

    @abstractmethod
    def device(self, *, parts: tuple[Name, ...]) -> str:
        """What a recording was made on: stick, topper, extension; none where nobody stated it."""

    @abstractmethod
    def recording_on(self, *, recording: Name, stick: Name | None) -> str:
        """Choice: a recording and its stick."""

    @abstractmethod
    def of_another_version(self) -> str:
        """A recording whose task this version does not know: its samples are kept, no figures are shown."""

    @abstractmethod
    def compare(self) -> str:
        """Heading: two recordings of one task."""

    @abstractmethod
    def task_over(self) -> str:
        """The page of a task that has ended was opened."""

    @abstractmethod
    def line(self, *, state: Literal["broken", "back", "closed"]) -> str:
        """The connection between page and program is lost and tried again; is back; the task of the page is over."""

    @abstractmethod
    def step(self, *, number: int, steps: int) -> str:
        """Where the task is."""

    @abstractmethod
    def kept(self, *, samples: int, waiting: int) -> str:
        """How many samples are saved, and how many are not yet (0: none)."""

    @abstractmethod
    def ask_for(self, *, more: Text) -> str:
        """Button: so many more are asked of the player."""

    @abstractmethod
    def stick_button(self, *, device: Text, stick: Text, beside: bool) -> str:
        """Button: measure this stick of a device; `beside`: record it as the second one."""

    @abstractmethod
    def put_aside(self, *, recording: Name, aside: bool) -> str:
        """A recording was excluded from everything, or included again."""
