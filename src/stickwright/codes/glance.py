"""Controls at a glance: who does what with what, for the family, and the same in the terminal."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Glance", "Heading", "Press", "When"]

Press = Literal["plain", "held", "latching"]
"""How something is pressed: once, held down, or once to switch on and once to switch off."""
When = Literal["day 1", "week 2", "later"]
Heading = Literal["clash", "order", "safety", "changes", "settings", "action", "control", "device", "who_does_what"]


class Glance(Topic):
    """Grade 6 or lower, second person, one instruction a sentence. An action's way is a clause behind the action's name."""

    @abstractmethod
    def title(self, *, player: Name) -> str:
        """Heading of the page."""

    @abstractmethod
    def lead(self, *, games: tuple[Name, ...]) -> str:
        """Which games this is for."""

    @abstractmethod
    def heading(self, *, part: Heading) -> str:
        """A heading or the head of a column: that requests clash (a sentence), order of introduction, safety, what changes
        between games, settings in each game, action, control, device; the page's title without the player."""

    @abstractmethod
    def at_site(self, *, site: Name | None, device: Text, press: Press) -> str:
        """A control site (None: it is named beside) works a device, and how it is pressed."""

    @abstractmethod
    def pressed(self, *, device: Text, press: Press) -> str:
        """A device and how it is pressed, in a narrow column."""

    @abstractmethod
    def held(self) -> str:
        """How it is pressed, in brackets: held."""

    @abstractmethod
    def latching(self) -> str:
        """How it is pressed, in brackets: once to switch on, once to switch off."""

    @abstractmethod
    def together(self, *, actions: tuple[Name, ...]) -> str:
        """A chord: these actions are pressed together."""

    @abstractmethod
    def by_game(self, *, option: Name | None, words: Name | None) -> str:
        """The game does it by an option; the player's own words about that."""

    @abstractmethod
    def by_helper(self, *, helper: Name | None, words: Name | None) -> str:
        """A helper does it on the second controller; the player's own words about that."""

    @abstractmethod
    def left_out(self, *, words: Name | None) -> str:
        """It is left out; the player's own words about that."""

    @abstractmethod
    def second_controller(self, *, words: Name | None) -> str:
        """Where a helper does it, in a narrow column."""

    @abstractmethod
    def option(self, *, option: Name | None, words: Name | None) -> str:
        """An option of the game and the player's own words, in a narrow column."""

    @abstractmethod
    def own_words(self, *, words: Name) -> str:
        """The player's own words about going without, in a narrow column."""

    @abstractmethod
    def place(self, *, how: Literal["option", "helper", "dropped", "chord"]) -> str:
        """Who does it, in one or two words."""

    @abstractmethod
    def introduced(self, *, when: When, actions: tuple[Name, ...]) -> str:
        """Which actions the player meets when."""

    @abstractmethod
    def given_up(self, *, parts: tuple[Text, ...]) -> str:
        """What was given up so that the rest can be had."""

    @abstractmethod
    def not_all(self, *, requests: tuple[Text, ...]) -> str:
        """Which requests cannot all be met."""

    @abstractmethod
    def agree(self, *, helpers: tuple[Name, ...]) -> str:
        """What to agree on with those who play with the second controller (none: a helper without a name)."""

    @abstractmethod
    def devices(self, *, devices: tuple[Text, ...]) -> str:
        """The devices at one control site, in the picture of the body."""
