"""Several games of one player in a table, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.game_columns import GameColumns
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(GameColumns):
    """A row for each device, a column for each game."""

    w: English

    def title(self, *, games: int, common: bool) -> str:
        if common:
            return f"One set of devices for {games} {self.w.plural(games, one='game', other='games')}"
        return f"{games} {self.w.plural(games, one='game', other='games')}, each with its own devices"

    def device(self, *, site: Name, device: Text, socket: Text | None) -> str:
        plugged = f", {self.say(socket)}" if socket is not None else ""
        return f"{self.w.name(site)}: {self.say(device)}{plugged}"

    def left_to(self, *, how: Literal["chord", "option", "helper", "dropped"]) -> str:
        return {"chord": "pressed together", "option": "the game itself", "helper": "a helper", "dropped": "left out"}[
            how
        ]

    def action(self, *, action: Name, how: Text | None) -> str:
        return f"{self.w.name(action)} ({self.clause(how)})" if how is not None else self.w.name(action)

    def actions(self, *, actions: tuple[Text, ...]) -> str:
        return "; ".join(self.say(one) for one in actions)

    def change(self, *, first: Name, then: Name, steps: tuple[Text, ...]) -> str:
        told = " ".join(self.say(one) for one in steps) or "leave everything plugged in. Choose its profile on the hub."
        return f"From {self.w.name(first)} to {self.w.name(then)}: {told}"

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
        hours = "" if each_week_s is None else f", {self.w.trimmed(each_week_s / 3600)} hours a week"
        start = f"{self.w.name(game)}{hours}: score {self.w.score(score_points)}"
        if alone_points is None or not lost_points:
            return f"{start}, as high as with devices of its own."
        why = f", because of {'; '.join(self.clause(one) for one in because)}" if because else ""
        return (
            f"{start}; with devices of its own {self.w.score(alone_points)}. With the common devices this game scores "
            f"{self.w.score(lost_points)} lower{why}."
        )

    def for_game(self, *, game: Name) -> str:
        return f"For {self.w.name(game)}"

    def tag_for(self, *, tag: Name | None, game: Name) -> str:
        return f"{self.w.name(tag) if tag else 'new'}, for {self.w.name(game)}"
