"""Controls at a glance, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.glance import Glance, Heading, Press, When
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_PRESSES: dict[Press, str] = {"plain": "", "held": ": hold", "latching": ": press on, press off"}
_WHEN: dict[When, str] = {"day 1": "Day 1", "week 2": "From week 2", "later": "Later"}
_HEADINGS: dict[Heading, str] = {
    "clash": "Some requests cannot be met.",
    "order": "Introduce in this order",
    "safety": "Safety",
    "changes": "From game to game",
    "settings": "Settings in each game",
    "action": "action",
    "control": "control",
    "device": "device",
    "who_does_what": "Controls at a glance",
}


class Texts(Glance):
    """Who does what with what."""

    w: English

    def title(self, *, player: Name) -> str:
        return f"Controls at a glance: player {self.w.name(player)}"

    def lead(self, *, games: tuple[Name, ...]) -> str:
        return f"To play: {self.w.names(games)}."

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def at_site(self, *, site: Name | None, device: Text, press: Press) -> str:
        told = f"{self.say(device)}{_PRESSES[press]}"
        return f"{self.w.name(site)} on {told}" if site else told

    def pressed(self, *, device: Text, press: Press) -> str:
        return f"{self.say(device)}{_PRESSES[press]}"

    def held(self) -> str:
        return "hold"

    def latching(self) -> str:
        return "press on, press off"

    def together(self, *, actions: tuple[Name, ...]) -> str:
        return f"pressed together: {self.w.names(actions)}"

    def by_game(self, *, option: Name | None, words: Name | None) -> str:
        named = f": {self.w.typed(option)}" if option else ""
        quoted = f" (“{self.w.typed(words)}”)" if words else ""
        return f"the game does it{named}{quoted}"

    def by_helper(self, *, helper: Name | None, words: Name | None) -> str:
        quoted = f"; the player: “{self.w.typed(words)}”" if words else ""
        return f"{self.w.name(helper) if helper else 'a helper'}, on the second controller{quoted}"

    def left_out(self, *, words: Name | None) -> str:
        return f"left out: “{self.w.typed(words)}”" if words else "left out"

    def second_controller(self, *, words: Name | None) -> str:
        return f"second controller; the player: “{self.w.typed(words)}”" if words else "second controller"

    def option(self, *, option: Name | None, words: Name | None) -> str:
        parts = [self.w.typed(option)] if option else []
        parts += [f"the player: “{self.w.typed(words)}”"] if words else []
        return "; ".join(parts) or "by itself"

    def own_words(self, *, words: Name) -> str:
        return f"the player: “{self.w.typed(words)}”"

    def place(self, *, how: Literal["option", "helper", "dropped", "chord"]) -> str:
        return {"option": "the game", "helper": "a helper", "dropped": "left out", "chord": "together"}[how]

    def introduced(self, *, when: When, actions: tuple[Name, ...]) -> str:
        return f"{_WHEN[when]}: {self.w.names(actions)}."

    def given_up(self, *, parts: tuple[Text, ...]) -> str:
        return f"Given up so that the rest works: {self.w.all_of(tuple(self.clause(one) for one in parts))}."

    def not_all(self, *, requests: tuple[Text, ...]) -> str:
        return f"These cannot all be met: {'; '.join(self.clause(one) for one in requests)}."

    def agree(self, *, helpers: tuple[Name, ...]) -> str:
        who = self.w.names(helpers) if helpers else "the helper"
        return (
            "Two controllers act as one player. Both can press at once. "
            f"Agree with {who} who may pause. Agree on a word for stop."
        )

    def devices(self, *, devices: tuple[Text, ...]) -> str:
        return "; ".join(self.say(one) for one in devices)
