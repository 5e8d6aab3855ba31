"""Controls at a glance, in German."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.de import German
from stickwright.codes.glance import Glance, Heading, Press, When
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_PRESSES: dict[Press, str] = {"plain": "", "held": ": halten", "latching": ": drücken für an, drücken für aus"}
_WHEN: dict[When, str] = {"day 1": "Tag 1", "week 2": "Ab Woche 2", "later": "Später"}
_HEADINGS: dict[Heading, str] = {
    "clash": "Einige Wünsche gehen nicht zusammen.",
    "order": "In dieser Reihenfolge einführen",
    "safety": "Sicherheit",
    "changes": "Von Spiel zu Spiel",
    "settings": "Einstellungen in jedem Spiel",
    "action": "Aktion",
    "control": "Steuerung",
    "device": "Gerät",
    "who_does_what": "Alle Steuerungen auf einen Blick",
}


class Texts(Glance):
    """Wer was womit tut."""

    w: German

    def title(self, *, player: Name) -> str:
        return f"Alle Steuerungen auf einen Blick: Spieler/in {self.w.name(player)}"

    def lead(self, *, games: tuple[Name, ...]) -> str:
        return f"Zum Spielen: {self.w.names(games)}."

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def at_site(self, *, site: Name | None, device: Text, press: Press) -> str:
        told = f"{self.say(device)}{_PRESSES[press]}"
        return f"{self.w.name(site)}, {told}" if site else told

    def pressed(self, *, device: Text, press: Press) -> str:
        return f"{self.say(device)}{_PRESSES[press]}"

    def held(self) -> str:
        return "halten"

    def latching(self) -> str:
        return "drücken für an, drücken für aus"

    def together(self, *, actions: tuple[Name, ...]) -> str:
        return f"zusammen gedrückt: {self.w.names(actions)}"

    def by_game(self, *, option: Name | None, words: Name | None) -> str:
        named = f": {self.w.typed(option)}" if option else ""
        quoted = f" („{self.w.typed(words)}“)" if words else ""
        return f"das Spiel tut es{named}{quoted}"

    def by_helper(self, *, helper: Name | None, words: Name | None) -> str:
        quoted = f"; die Person: „{self.w.typed(words)}“" if words else ""
        return f"{self.w.name(helper) if helper else 'jemand, der hilft'}, am zweiten Controller{quoted}"

    def left_out(self, *, words: Name | None) -> str:
        return f"weggelassen: „{self.w.typed(words)}“" if words else "weggelassen"

    def second_controller(self, *, words: Name | None) -> str:
        return f"zweiter Controller; die Person: „{self.w.typed(words)}“" if words else "zweiter Controller"

    def option(self, *, option: Name | None, words: Name | None) -> str:
        parts = [self.w.typed(option)] if option else []
        parts += [f"die Person: „{self.w.typed(words)}“"] if words else []
        return "; ".join(parts) or "von selbst"

    def own_words(self, *, words: Name) -> str:
        return f"die Person: „{self.w.typed(words)}“"

    def place(self, *, how: Literal["option", "helper", "dropped", "chord"]) -> str:
        return {"option": "das Spiel", "helper": "jemand hilft", "dropped": "weggelassen", "chord": "zusammen"}[how]

    def introduced(self, *, when: When, actions: tuple[Name, ...]) -> str:
        return f"{_WHEN[when]}: {self.w.names(actions)}."

    def given_up(self, *, parts: tuple[Text, ...]) -> str:
        return f"Aufgegeben, damit der Rest geht: {self.w.all_of(tuple(self.clause(one) for one in parts))}."

    def not_all(self, *, requests: tuple[Text, ...]) -> str:
        return f"Das geht nicht alles zusammen: {'; '.join(self.clause(one) for one in requests)}."

    def agree(self, *, helpers: tuple[Name, ...]) -> str:
        who = f" Mit: {self.w.names(helpers)}." if helpers else ""
        return (
            "Zwei Controller sind ein Spieler. Beide können zugleich drücken. Machen Sie aus, wer Pause machen darf. Machen Sie ein "
            f"Wort für Stopp aus.{who}"
        )

    def devices(self, *, devices: tuple[Text, ...]) -> str:
        return "; ".join(self.say(one) for one in devices)
