"""The page 'Measure' and the page of a running task: fixed words and problems."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["MeasurePage"]


class MeasurePage(Topic):
    """The page 'Measure' and the page of a running task: fixed words and problems."""

    @abstractmethod
    def title(self) -> str:
        """Heading."""

    @abstractmethod
    def no_site(self) -> str:
        """There is no control site yet."""

    @abstractmethod
    def add_site(self) -> str:
        """Button."""

    @abstractmethod
    def lead(self) -> str:
        """After the sentence about stopping."""

    @abstractmethod
    def site(self) -> str:
        """Label."""

    @abstractmethod
    def stick(self) -> str:
        """Label."""

    @abstractmethod
    def topper(self) -> str:
        """Label."""

    @abstractmethod
    def extension(self) -> str:
        """Label."""

    @abstractmethod
    def state(self) -> str:
        """Label."""

    @abstractmethod
    def source(self) -> str:
        """Label: how the stick is read."""

    @abstractmethod
    def tuned(self) -> str:
        """Label: the tuning of the latest plan can be switched on."""

    @abstractmethod
    def tuned_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def how(self) -> str:
        """Heading that opens options."""

    @abstractmethod
    def short(self) -> str:
        """Label."""

    @abstractmethod
    def directions(self) -> str:
        """Label."""

    @abstractmethod
    def direction_count(self, *, count: Literal["8", "4"]) -> str:
        """Choice."""

    @abstractmethod
    def levels(self) -> str:
        """Label."""

    @abstractmethod
    def mapping(self) -> str:
        """Label: what the stick does to the cursor."""

    @abstractmethod
    def mapping_of(self, *, mapping: Literal["position", "velocity"]) -> str:
        """Choice."""

    @abstractmethod
    def by_switch(self) -> str:
        """Label."""

    @abstractmethod
    def hand(self) -> str:
        """Label."""

    @abstractmethod
    def hand_of(self, *, hand: Literal["off", "resting"]) -> str:
        """Choice."""

    @abstractmethod
    def way(self) -> str:
        """Label: direction of the task 'Hold'."""

    @abstractmethod
    def way_of(self, *, way: Literal["90", "0", "180", "270"]) -> str:
        """Choice."""

    @abstractmethod
    def choose(self) -> str:
        """Heading."""

    @abstractmethod
    def open_task(self) -> str:
        """After the name of the task on its button, for a screen reader."""

    @abstractmethod
    def about(self, *, time: Text, short: Text) -> str:
        """How long a task takes, and its short version."""

    @abstractmethod
    def recorded(self) -> str:
        """Heading."""

    @abstractmethod
    def samples(self, *, count: int) -> str:
        """How many samples a recording has."""

    @abstractmethod
    def simulated(self) -> str:
        """Beside a recording; bold."""

    @abstractmethod
    def simulated_more(self) -> str:
        """After that."""

    @abstractmethod
    def excluded(self) -> str:
        """Beside a recording; bold."""

    @abstractmethod
    def exclude(self) -> str:
        """Button."""

    @abstractmethod
    def include(self) -> str:
        """Button."""

    @abstractmethod
    def compare(self) -> str:
        """Heading."""

    @abstractmethod
    def before(self) -> str:
        """Label."""

    @abstractmethod
    def after(self) -> str:
        """Label."""

    @abstractmethod
    def compare_button(self) -> str:
        """Button."""

    @abstractmethod
    def back(self) -> str:
        """Link."""

    @abstractmethod
    def figures(self) -> str:
        """Caption."""

    @abstractmethod
    def figure(self) -> str:
        """Column."""

    @abstractmethod
    def difference(self) -> str:
        """Column."""

    @abstractmethod
    def no_script(self) -> str:
        """The page needs scripts."""

    @abstractmethod
    def stop(self) -> str:
        """Button: end the task at once."""

    @abstractmethod
    def stop_key(self) -> str:
        """Under the button."""

    @abstractmethod
    def start(self) -> str:
        """Button."""

    @abstractmethod
    def resume(self) -> str:
        """Button: go on after a stop."""

    @abstractmethod
    def next_step(self) -> str:
        """Button."""

    @abstractmethod
    def repeat(self) -> str:
        """Button."""

    @abstractmethod
    def shorten(self) -> str:
        """Button: fewer steps from now on."""

    @abstractmethod
    def show_tuned(self) -> str:
        """Label of a tick."""

    @abstractmethod
    def stick_title(self) -> str:
        """Heading."""

    @abstractmethod
    def sticks(self) -> str:
        """Label for a screen reader."""

    @abstractmethod
    def what_happened(self) -> str:
        """Label for a screen reader: the list of what was said."""

    @abstractmethod
    def asked(self, *, site: Name, stick: Name, time: Text, watch: Text) -> str:
        """What is measured, how long it takes, what to watch for; `stick` may be ''."""

    @abstractmethod
    def results(self) -> str:
        """Heading."""

    @abstractmethod
    def results_table(self) -> str:
        """Caption."""

    @abstractmethod
    def figure_interval(self) -> str:
        """Column."""

    @abstractmethod
    def sufficient(self) -> str:
        """Column."""

    @abstractmethod
    def unknown_site(self) -> str:
        """Problem."""

    @abstractmethod
    def unknown_source(self) -> str:
        """Problem."""

    @abstractmethod
    def unknown_state(self, *, site: Name) -> str:
        """Problem."""

    @abstractmethod
    def no_tuning(self, *, site: Name, stick: Name) -> str:
        """Problem: the latest plan has no tuning for this; `stick` may be ''."""

    @abstractmethod
    def bad_tuning(self, *, fault: Text) -> str:
        """Problem: the tuning has a fault."""

    @abstractmethod
    def nothing_to_replay(self, *, task: Text, have: tuple[Name, ...]) -> str:
        """Problem: no recording of this task to play back."""

    @abstractmethod
    def not_comparable(self) -> str:
        """Problem."""

    @abstractmethod
    def too_many_tasks(self, *, most: int) -> str:
        """Problem."""

    @abstractmethod
    def message_too_long(self) -> str:
        """Problem with what a page sent."""
