"""What is plugged into what, and the parts list: for the family and the practitioner, on the sheet and in the terminal."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Column", "Heading", "WiringPages"]

Heading = Literal["hub", "missing", "lengths", "current", "changes", "steps", "parts", "contacts", "wiring"]
Column = Literal["tag", "from", "plug", "through", "to", "as", "length"]


class WiringPages(Topic):
    """Headings, table cells and sentences."""

    @abstractmethod
    def title(self, *, player: Name, wired: bool) -> str:
        """Heading of the page: wiring and parts, or parts alone."""

    @abstractmethod
    def heading(self, *, part: Heading) -> str:
        """Headings and labels of the page."""

    @abstractmethod
    def column(self, *, column: Column) -> str:
        """Head of a column: cables (tag, from, plug, leads between, to, input in the game, length)."""

    @abstractmethod
    def missing(self, *, tag: Name, missing: Text) -> str:
        """What a cable lacks."""

    @abstractmethod
    def lacking(self, *, tag: Name, missing: Text) -> str:
        """The same as a clause."""

    @abstractmethod
    def together(self, *, parts: tuple[Text, ...]) -> str:
        """Several currents, or lengths of cables, in one paragraph."""

    @abstractmethod
    def price(self, *, total_price: float | None) -> str:
        """Price in the parts list; None: not known."""

    @abstractmethod
    def part_note(self, *, note: Text) -> str:
        """Note beside a part."""

    @abstractmethod
    def pieces(self, *, count: int, part: Text) -> str:
        """How many of a part."""

    @abstractmethod
    def all_in_stock(self) -> str:
        """Nothing has to be ordered."""

    @abstractmethod
    def to_order(self, *, parts: tuple[Text, ...], total_price: float | None, unpriced: bool) -> str:
        """What has to be ordered, and the price; `unpriced`: of those that have one (None: none has)."""

    @abstractmethod
    def still_missing(self, *, missing: tuple[Text, ...]) -> str:
        """What the cables still lack."""

    @abstractmethod
    def noted(self, *, part: Text, note: Text) -> str:
        """A note on a part in the terminal."""

    @abstractmethod
    def wire(
        self,
        *,
        tag: Name,
        device: Text,
        through: tuple[Name, ...],
        socket: Text,
        role: Role | None,
        missing: Text | None,
    ) -> str:
        """A cable in a line of the terminal: from a device through leads and adapters to a socket, what it acts as in the
        game, what is missing."""

    @abstractmethod
    def paired(self, *, tag: Name, device: Text, hub: Name | None) -> str:
        """A controller that is paired with a hub instead of plugged in."""

    @abstractmethod
    def contacts(self, *, tags: tuple[Name, ...], contacts: tuple[Text, ...]) -> str:
        """What each contact of the plugs of these cables carries."""
