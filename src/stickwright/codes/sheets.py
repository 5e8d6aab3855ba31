"""The printed sheet around its pages: header, footer, what is left out, and the marks in front of findings and cautions."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Heading", "Keyword", "Left", "Level", "Sheets"]

Level = Literal["fault", "query", "note"]
Left = Literal[
    "readings",
    "ranking_chart",
    "curve_chart",
    "alternatives",
    "short_limits",
    "recording_notes",
    "far_reasons",
    "facts",
]
"""What may be left out for length."""
Keyword = Literal["analogue stick", "set-up sheet"]
Heading = Literal[
    "unplanned", "ability", "crossing", "ranked", "ranked_below", "also", "tuning", "also_tuned", "recordings", "nothing_to_check",
    "another_site", "what", "value", "why", "confirm", "to_confirm",
]  # fmt: skip


class Sheets(Topic):
    """Short labels and sentences."""

    @abstractmethod
    def player(self, *, player: Name) -> str:
        """In the footer of each page: whose sheet it is."""

    @abstractmethod
    def made_by(self, *, version: Name, made_on: Name | None) -> str:
        """In the footer: version of the program, and the day on which the plan was made (YYYY-MM-DD)."""

    @abstractmethod
    def page(self, *, page: Name, pages: Name) -> str:
        """In the footer: number of the page, and of how many."""

    @abstractmethod
    def left_out(self, *, parts: tuple[Text, ...]) -> str:
        """What was left out of the printed sheet for length, and where it is."""

    @abstractmethod
    def part(self, *, part: Left) -> str:
        """Something that is left out for length, in that list."""

    @abstractmethod
    def caution(self) -> str:
        """Mark in front of a caution."""

    @abstractmethod
    def level(self, *, level: Level) -> str:
        """Mark in front of a finding: it limits what can be said, is to be checked, or is noted."""

    @abstractmethod
    def finding(self, *, level: Level, text: Text) -> str:
        """A finding with its mark, in the terminal."""

    @abstractmethod
    def what_if(self, *, wishes: tuple[Text, ...]) -> str:
        """At the head of each page of a plan that was asked for otherwise than the case is."""

    @abstractmethod
    def what_if_only(self, *, wishes: tuple[Text, ...]) -> str:
        """The same in the terminal, with the reminder that this is not the plan of the case."""

    @abstractmethod
    def wishes(self, *, wishes: tuple[Text, ...]) -> str:
        """What was wished, in a list of plans."""

    @abstractmethod
    def without(self, *, names: tuple[Name, ...]) -> str:
        """Wish: these devices or control sites are not used. A clause."""

    @abstractmethod
    def keeping(self, *, kept: tuple[Text, ...]) -> str:
        """Wish: these stay where they are. A clause."""

    @abstractmethod
    def kept(self, *, what: Name, where: Name) -> str:
        """Something that stays at a place."""

    @abstractmethod
    def only_stock(self) -> str:
        """Wish: only what is in stock. A clause."""

    @abstractmethod
    def budget(self, *, budget_price: float) -> str:
        """Wish: spend no more than that. A clause."""

    @abstractmethod
    def most_devices(self, *, count: int) -> str:
        """Wish: at most so many devices. A clause."""

    @abstractmethod
    def keyword(self, *, word: Keyword) -> str:
        """Keyword in the properties of the printed file."""

    @abstractmethod
    def practitioner(self, *, site: Name) -> str:
        """Heading of the practitioner's pages about a control site."""

    @abstractmethod
    def heading(self, *, part: Heading) -> str:
        """Headings of the practitioner's pages: nothing could be planned, what the player can do, where the player's force
        meets that of the sticks, sticks ranked, tuning, what recordings tell. Labels in front of names: sticks ranked
        below that do not fit, other set-ups, other tunings, another site, what would confirm an assumption. Behind
        names of recordings: nothing to check. Heads of columns of assumptions: what, value, why, what would confirm it."""
