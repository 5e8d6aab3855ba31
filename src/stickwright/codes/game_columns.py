"""Several games of one player in a table: a row for each device, a column for each game, and what changes between them."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["GameColumns"]


class GameColumns(Topic):
    """Cells of a table, and lines under it that are sentences."""

    @abstractmethod
    def title(self, *, games: int, common: bool) -> str:
        """Heading in the terminal: one set of devices for so many games, or each with its own."""

    @abstractmethod
    def device(self, *, site: Name, device: Text, socket: Text | None) -> str:
        """Head of a row: a control site and the device that it works, and where that is plugged in."""

    @abstractmethod
    def left_to(self, *, how: Literal["chord", "option", "helper", "dropped"]) -> str:
        """Head of a row: actions pressed together, done by the game, by a helper, or left out."""

    @abstractmethod
    def action(self, *, action: Name, how: Text | None) -> str:
        """An action in a cell, and how it is pressed or by which option it is done."""

    @abstractmethod
    def actions(self, *, actions: tuple[Text, ...]) -> str:
        """Several of these in one cell."""

    @abstractmethod
    def change(self, *, first: Name, then: Name, steps: tuple[Text, ...]) -> str:
        """What is plugged in or set up otherwise from one game to another: sentences; none: only the profile changes."""

    @abstractmethod
    def score(
        self,
        *,
        game: Name,
        each_week_s: float | None,
        score_points: float,
        alone_points: float | None,
        lost_points: float | None,
        because: tuple[Text, ...],
    ) -> str:
        """The score of a game with the common devices and with its own (None: as high), how much lower that is, and
        because of what; hours a week where they are known."""

    @abstractmethod
    def for_game(self, *, game: Name) -> str:
        """In front of a finding about one game."""

    @abstractmethod
    def tag_for(self, *, tag: Name | None, game: Name) -> str:
        """A cable that is plugged in otherwise for a game: its tag, or that it is a new one."""
