"""What a game asks for, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.game_lists import Column, GameLists, Kind
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_COLUMNS: dict[Column, str] = {
    "game": "game",
    "sticks": "sticks",
    "actions": "actions",
    "needed_together": "needed together",
    "reaction": "reaction",
    "action": "action",
    "kind": "kind",
    "importance": "importance",
    "time": "time",
    "hold": "hold",
    "per_minute": "per min",
    "together": "together",
    "option": "option, latching",
}
_KINDS: dict[Kind, str] = {
    "two-axis": "two axes",
    "one-axis": "one axis",
    "press": "press",
    "hold": "hold",
    "repeat": "repeat",
    "trigger": "trigger",
    "chord": "chord",
}
_LEFT = {"option": "to the game", "helper": "to a helper", "dropped": "going without"}


class Texts(GameLists):
    """One line a game, or one line an action."""

    w: English

    def column(self, *, column: Column) -> str:
        return _COLUMNS[column]

    def kind(self, *, kind: Kind) -> str:
        return _KINDS[kind]

    def title(self, *, game: Name, actions: int, sticks: Text) -> str:
        return f"{self.w.name(game)}: {actions} {self.w.plural(actions, one='action', other='actions')}; sticks: {self.say(sticks)}"

    def sticks(self, *, actions: tuple[Name, ...], duty_share: tuple[float, ...]) -> str:
        return ", ".join(
            f"{self.w.name(one)} {self.w.share(duty)}" for one, duty in zip(actions, duty_share, strict=False)
        )

    def no_sticks(self) -> str:
        return "none"

    def none_together(self) -> str:
        return "nothing"

    def no_action(self) -> str:
        return "No action is named."

    def legend(self) -> str:
        return (
            "importance: 0 to 10. time: share of the time in use. hold: the longest. per min: presses a minute on average (in the busiest "
            "minute). reaction: time allowed from need to done. together: needed at the same time. option: what the game can do by "
            "itself; latching: how one press can stand for a hold; the cost to the player in brackets, 0 to 10. '-': not recorded."
        )

    def share(self, *, duty_share: float) -> str:
        return self.w.share(duty_share)

    def time(self, *, time_s: float) -> str:
        return self.w.amount(time_s, "s")

    def reaction(self, *, time_s: float) -> str:
        return self.w.amount(time_s, "ms")

    def presses(self, *, usual_per_min: float | None, busy_per_min: float | None) -> str:
        usual, busy = ("?" if one is None else self.w.trimmed(one, 3) for one in (usual_per_min, busy_per_min))
        return f"{usual} ({busy})"

    def made_of(self, *, actions: tuple[Name, ...]) -> str:
        return f"made of {self.w.names(actions)}"

    def option(self, *, words: Name, latching: bool, cost_points: float | None) -> str:
        mark = "latching: " if latching else ""
        return f"{mark}{self.w.typed(words)}{'' if cost_points is None else f' ({self.w.trimmed(cost_points)})'}"

    def cost(self, *, how: Literal["option", "helper", "dropped"], cost_points: float | None) -> str:
        return f"{_LEFT[how]} {'not recorded' if cost_points is None else self.w.trimmed(cost_points)}"

    def costs_of(self, *, action: Name, costs: tuple[Text, ...]) -> str:
        return f"{self.w.name(action)}: {', '.join(self.say(one) for one in costs)}"

    def costs(self, *, told: tuple[Text, ...]) -> str:
        return (
            "Cost to the player of leaving an action to others, 0 to 10. Ask about these, because they decide what is left out: "
            f"{'; '.join(self.clause(one) for one in told)}."
        )
