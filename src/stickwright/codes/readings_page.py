"""The page 'Readings': force and movement range of one control site, direction by direction."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["AlsoTaken", "Enough", "PetalState", "ReadingsPage"]

PetalState = Literal["both", "force", "range", "nothing"]
AlsoTaken = Literal["rest", "hold", "press", "spasm", "along", "on_stick"]
Enough = Literal["enough", "nearly", "not enough", "not measured"]


class ReadingsPage(Topic):
    """The page 'Readings': force and movement range of one control site, direction by direction."""

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
    def sites(self) -> str:
        """Label of the tabs, for a screen reader."""

    @abstractmethod
    def site_number(self, *, number: int) -> str:
        """A control site without a name."""

    @abstractmethod
    def how(self) -> str:
        """First paragraph: how to take the readings."""

    @abstractmethod
    def spaces(self) -> str:
        """Caption of the table."""

    @abstractmethod
    def direction(self) -> str:
        """Column."""

    @abstractmethod
    def force(self) -> str:
        """Column."""

    @abstractmethod
    def range_(self) -> str:
        """Column: how far the control site moves."""

    @abstractmethod
    def force_of(self, *, direction: Text) -> str:
        """Label for a screen reader."""

    @abstractmethod
    def range_of(self, *, direction: Text) -> str:
        """Label for a screen reader."""

    @abstractmethod
    def degrees(self) -> str:
        """Label for a screen reader: an empty field for a direction."""

    @abstractmethod
    def again(self) -> str:
        """Row: the first direction, measured once more at the end."""

    @abstractmethod
    def again_label(self) -> str:
        """Label for a screen reader."""

    @abstractmethod
    def no_direction(self) -> str:
        """A row whose direction was not entered."""

    @abstractmethod
    def save(self) -> str:
        """Button."""

    @abstractmethod
    def diagram(self) -> str:
        """Label for a screen reader: the diagram of directions."""

    @abstractmethod
    def directions(self) -> str:
        """Label for a screen reader: the part with the diagram."""

    @abstractmethod
    def diagram_hint(self) -> str:
        """Under the diagram."""

    @abstractmethod
    def petal(self, *, direction: Text, state: PetalState) -> str:
        """Label for a screen reader: a direction in the diagram with what has been entered."""

    @abstractmethod
    def forward(self) -> str:
        """At the top of the diagram."""

    @abstractmethod
    def from_file(self, *, file: Name) -> str:
        """Heading that opens readings from a file."""

    @abstractmethod
    def in_file(self, *, file: Name) -> str:
        """Caption of the table."""

    @abstractmethod
    def copy(self) -> str:
        """Button: the readings of the file become readings of the form."""

    @abstractmethod
    def copied(self, *, file: Name) -> str:
        """Message."""

    @abstractmethod
    def also_title(self) -> str:
        """Heading: other readings that can be taken."""

    @abstractmethod
    def also(self, *, what: AlsoTaken) -> str:
        """Link to other readings."""

    @abstractmethod
    def entered(self) -> str:
        """Beside such a link: there is one."""

    @abstractmethod
    def entered_count(self, *, count: int) -> str:
        """Beside such a link: how many there are."""

    @abstractmethod
    def results(self) -> str:
        """Heading."""

    @abstractmethod
    def results_table(self) -> str:
        """Caption."""

    @abstractmethod
    def sufficient(self) -> str:
        """Column: whether there are enough force readings."""

    @abstractmethod
    def enough(self, *, state: Enough) -> str:
        """Cell of that column."""

    @abstractmethod
    def counts(self) -> str:
        """Column: how many readings there are."""

    @abstractmethod
    def taken(self, *, force: int, reach: int) -> str:
        """Cell: how many readings of force and of movement range."""

    @abstractmethod
    def towards(self, *, direction_rad: float) -> str:
        """A direction of the player in words."""

    @abstractmethod
    def weakest(self, *, direction_rad: float) -> str:
        """The weakest direction."""

    @abstractmethod
    def more_at(self, *, directions_rad: tuple[float, ...]) -> str:
        """Directions where more readings would help most."""

    @abstractmethod
    def known_within(self, *, share_share: float) -> str:
        """All forces that were read are known well enough."""

    @abstractmethod
    def unread(self, *, directions_rad: tuple[float, ...]) -> str:
        """Directions without a force reading."""

    @abstractmethod
    def no_range(self) -> str:
        """Movement range was not measured at all."""

    @abstractmethod
    def unread_range(self, *, directions_rad: tuple[float, ...]) -> str:
        """Directions without a reading of movement range."""

    @abstractmethod
    def saved(self, *, site: Name) -> str:
        """Message."""

    @abstractmethod
    def direction_missing(self) -> str:
        """Problem: force or range without a direction."""

    @abstractmethod
    def not_utf8(self) -> str:
        """Problem: a file in another encoding."""
