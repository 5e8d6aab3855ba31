"""How a device is set, held and switched to the right mode, in German: what the family's pages say."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.device_steps import TurnedBy
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Texts"]

_TURNED_BY: dict[TurnedBy, str] = {
    "itself": "in den Einstellungen des Sticks",
    "hub": "in den Einstellungen des Hubs",
    "game": "in den Einstellungen des Spiels",
}
_CROSSWISE = (
    "Stellen Sie das Gehäuse quer, mit der Vorderseite nach links. Drehen Sie seine Ausgabe eine Vierteldrehung gegen den "
    "Uhrzeigersinn"
)


class Texts(Topic):
    """Schritte des Aufbaus."""

    w: German

    def set_to(self, *, device: Name, setting: Name, how: Name | None) -> str:
        return (
            f"Stellen Sie {self.w.name(device)} auf „{self.w.name(setting)}“{f': {self.w.typed(how)}' if how else ''}."
        )

    def crosswise(self, *, turned_by: TurnedBy | None) -> str:
        if turned_by is None:
            return f"{_CROSSWISE}. Sehen Sie in der Anleitung nach, wo."
        return f"{_CROSSWISE}: {_TURNED_BY[turned_by]}."

    def crosswise_told(self, *, told: Name) -> str:
        return f"{_CROSSWISE}: {self.w.typed(told)}."

    def hold_in_one_hand(self, *, device: Name, sites: tuple[Name, ...]) -> str:
        return f"Halten Sie {self.w.name(device)} in einer Hand: {self.w.names(sites)}."

    def hold_in_two_hands(self, *, device: Name) -> str:
        return f"Halten Sie {self.w.name(device)} in beiden Händen."

    def rest_it(self, *, device: Name, why: Text | None) -> str:
        reason = f": {self.clause(why)}" if why is not None else ""
        return f"Legen Sie {self.w.name(device)} auf eine Halterung oder ein Tablett, nicht in die Hand{reason}."

    def fix_to_grip(self, *, stick: Name, controller: Name) -> str:
        return (
            f"Befestigen Sie {self.w.name(stick)} am Griff von {self.w.name(controller)}. Dieselbe Hand bedient beide."
        )

    def check_mode(self, *, device: Name, mode: Name, sign: Name | None) -> str:
        seen = f": {self.w.typed(sign)}" if sign else ""
        return f"Prüfen Sie: {self.w.name(device)} ist im Modus „{self.w.name(mode)}“{seen}."

    def other_mode(self, *, device: Name) -> str:
        return f"Ist {self.w.name(device)} in einem anderen Modus?"

    def mode_back(self, *, mode: Name, back: Name | None) -> str:
        if not back:
            return f"Nötig ist „{self.w.name(mode)}“. Die Anleitung sagt, wie."
        return f"{self.w.typed(back)}. Nötig ist „{self.w.name(mode)}“."
