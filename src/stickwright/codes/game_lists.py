"""What a game asks for, as a table in the terminal: one line a game, or one line an action."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Column", "GameLists", "Kind"]

Column = Literal[
    "game", "sticks", "actions", "needed_together", "reaction", "action", "kind", "importance", "time", "hold", "per_minute", "together",
    "option",
]  # fmt: skip
Kind = Literal["two-axis", "one-axis", "press", "hold", "repeat", "trigger", "chord"]
"""Of an action, as the game's file says it."""


class GameLists(Topic):
    """Cells and heads are short: columns are narrow."""

    @abstractmethod
    def column(self, *, column: Column) -> str:
        """Heads of columns. Of games: name, its sticks, number of actions, what is needed together, shortest reaction. Of
        actions: name, kind, importance, share of the time, longest hold, presses per minute, reaction, what is needed
        at the same time, what the game can do itself and whether a press can be latching."""

    @abstractmethod
    def kind(self, *, kind: Kind) -> str:
        """Kind of an action."""

    @abstractmethod
    def title(self, *, game: Name, actions: int, sticks: Text) -> str:
        """Above the table of a game's actions."""

    @abstractmethod
    def sticks(self, *, actions: tuple[Name, ...], duty_share: tuple[float, ...]) -> str:
        """Actions done by sticks, each with its share of the time."""

    @abstractmethod
    def no_sticks(self) -> str:
        """In its place: the game uses no stick."""

    @abstractmethod
    def none_together(self) -> str:
        """Table cell: nothing is needed together."""

    @abstractmethod
    def no_action(self) -> str:
        """In place of the table: the game names no action."""

    @abstractmethod
    def legend(self) -> str:
        """How the table of a game's actions is read."""

    @abstractmethod
    def share(self, *, duty_share: float) -> str:
        """Table cell: share of the time in use."""

    @abstractmethod
    def time(self, *, time_s: float) -> str:
        """Table cell: longest hold."""

    @abstractmethod
    def reaction(self, *, time_s: float) -> str:
        """Table cell: time allowed for a reaction."""

    @abstractmethod
    def presses(self, *, usual_per_min: float | None, busy_per_min: float | None) -> str:
        """Table cell: presses a minute, and in the busiest minute; None: not known."""

    @abstractmethod
    def made_of(self, *, actions: tuple[Name, ...]) -> str:
        """Table cell: the actions that a chord is made of."""

    @abstractmethod
    def option(self, *, words: Name, latching: bool, cost_points: float | None) -> str:
        """Table cell: what the game can do by itself, or how one press stands for a hold (`latching`), and the cost to the
        player."""

    @abstractmethod
    def cost(self, *, how: Literal["option", "helper", "dropped"], cost_points: float | None) -> str:
        """Cost to the player of leaving an action to the game, to a helper, or out; None: not recorded."""

    @abstractmethod
    def costs_of(self, *, action: Name, costs: tuple[Text, ...]) -> str:
        """Such costs of one action."""

    @abstractmethod
    def costs(self, *, told: tuple[Text, ...]) -> str:
        """Such costs of all actions, to ask the player about."""
