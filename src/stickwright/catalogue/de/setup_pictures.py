"""The whole set-up from above, in German."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.message import Name, Text
from stickwright.codes.setup_pictures import SetupPictures

__all__ = ["Texts"]


class Texts(SetupPictures):
    """Was die Nummern im Bild sind."""

    w: German

    def caption(self, *, measured: bool) -> str:
        scale = (
            "Die Plätze sind maßstäblich." if measured else "Kein Platz wurde gemessen: das Bild zeigt den Körperteil."
        )
        return f"Von oben gesehen. 12 ist geradeaus vor der Person. Die schwarze Spitze ist die Vorderseite eines Sticks. {scale}"

    def alt(self, *, items: tuple[Text, ...]) -> str:
        told = "; ".join(self.clause(one) for one in items)
        return f"Die sitzende Person von oben, mit einer Nummer an jedem Stick und Schalter. {told}."

    def item(self, *, numbers: tuple[Name, ...], what: Text, how: tuple[Text, ...]) -> str:
        told = " ".join(self.say(one) for one in how)
        return f"{self.w.names(numbers)} {self.clause(what)}{f': {told}' if told else ''}"

    def device(self, *, device: Text, pieces: int) -> str:
        return self.w.pieces(pieces, self.clause(device))

    def at_sites(self, *, sites: tuple[Name, ...]) -> str:
        return f"Für: {self.w.names(sites)}."

    def held_by(self, *, mount: Name, on: Name | None) -> str:
        return f"Halterung: {self.w.name(mount)}{f', an: {self.w.name(on)}' if on else ''}."

    def stands_on(self, *, on: Name) -> str:
        return f"Steht auf: {self.w.name(on)}."

    def turned(self, *, turn_rad: float) -> str:
        return f"Gehäuse um {self.w.turn(turn_rad)} gedreht."

    def tall(self, *, height_m: float) -> str:
        return f"Oben etwa {self.w.amount(height_m, 'mm')} über dem Gehäuse."

    def unplaced(self) -> str:
        return "Sein Platz wurde nicht gemessen."

    def latching(self, *, actions: tuple[Name, ...]) -> str:
        return f"{self.w.names(actions)}: drücken für an, drücken für aus."

    def hub(self, *, hub: Name) -> str:
        return f"Hub: {self.w.name(hub)}"
