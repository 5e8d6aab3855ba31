"""The page of one visit: its steps, how far each is, what to do next."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Counted", "Needed", "ReadToo", "StepKey", "VisitPage"]

StepKey = Literal["room", "sites", "readings", "measure", "kit", "game", "plan", "mounts", "sheet"]
ReadToo = Literal["rest", "hold", "press", "on_stick"]
Needed = Literal[
    "room", "places", "site", "sites_first", "recording", "kit", "stick", "game", "new_plan", "seating", "plan"
]
Counted = Literal["tube", "edge", "surface", "site", "recording", "stick", "switch", "controller", "mount", "action"]


class VisitPage(Topic):
    """The page of one visit: its steps, how far each is, what to do next."""

    @abstractmethod
    def title_of(self, *, number: int, code: Name) -> str:
        """Title of the window."""

    @abstractmethod
    def problems(self, *, count: int) -> str:
        """Heading above problems with what was entered."""

    @abstractmethod
    def so_far(self) -> str:
        """Heading of the table."""

    @abstractmethod
    def steps_so_far(self) -> str:
        """Caption of the table, for a screen reader."""

    @abstractmethod
    def step(self) -> str:
        """Column: the steps of a visit."""

    @abstractmethod
    def entered(self) -> str:
        """Column: what has been entered."""

    @abstractmethod
    def still_needed(self) -> str:
        """Column: what is still needed for this step."""

    @abstractmethod
    def as_files(self) -> str:
        """Heading above the link to download."""

    @abstractmethod
    def download(self) -> str:
        """Link: all files of this visit in one."""

    @abstractmethod
    def files_packed(self, *, files: int) -> str:
        """Beside the link."""

    @abstractmethod
    def title(self, *, step: StepKey) -> str:
        """Name of a step in menus and as heading."""

    @abstractmethod
    def doing(self, *, step: StepKey) -> str:
        """Button that leads to the page of a step."""

    @abstractmethod
    def nothing_yet(self) -> str:
        """Cell: nothing has been entered for this step."""

    @abstractmethod
    def counted(self, *, thing: Counted, count: int) -> str:
        """So many of a thing."""

    @abstractmethod
    def counted_at(self, *, thing: Counted, count: int, site: Name) -> str:
        """So many of a thing at a control site."""

    @abstractmethod
    def listed(self, *, parts: tuple[Text, ...]) -> str:
        """Several things in a cell."""

    @abstractmethod
    def many_listed(self, *, parts: tuple[Text, ...]) -> str:
        """Several longer things in a cell."""

    @abstractmethod
    def named(self, *, name: Name, what: Text) -> str:
        """What there is of something that has a name."""

    @abstractmethod
    def sites_entered(self, *, count: int, names: tuple[Name, ...]) -> str:
        """The control sites."""

    @abstractmethod
    def directions(self, *, read: int, of: int, repeats: int) -> str:
        """Directions that were read, with the fewest repeats of any of them."""

    @abstractmethod
    def read_too(self, *, what: ReadToo) -> str:
        """What else was read at a control site."""

    @abstractmethod
    def nothing_for(self, *, sites: tuple[Name, ...]) -> str:
        """Still needed: these control sites have no readings."""

    @abstractmethod
    def actions_of_games(self, *, count: int) -> str:
        """Still needed: so many games have no actions."""

    @abstractmethod
    def needed(self, *, what: Needed) -> str:
        """Still needed for a step."""

    @abstractmethod
    def plan_made(self, *, number: int) -> str:
        """Cell: the latest plan."""

    @abstractmethod
    def mounts_drawn(self) -> str:
        """Cell: the mounts are drawn."""

    @abstractmethod
    def ready(self) -> str:
        """Cell: the sheet can be printed."""
