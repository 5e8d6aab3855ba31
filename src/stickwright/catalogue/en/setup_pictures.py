"""The whole set-up from above, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.setup_pictures import SetupPictures

__all__ = ["Texts"]


class Texts(SetupPictures):
    """What the numbers of the picture are."""

    w: English

    def caption(self, *, measured: bool) -> str:
        scale = "Places are to scale." if measured else "No place was measured: the picture shows the part of the body."
        return f"Seen from above. 12 is straight ahead of the player. The black tip is the front of a stick's base. {scale}"

    def alt(self, *, items: tuple[Text, ...]) -> str:
        told = "; ".join(self.clause(one) for one in items)
        return f"The seated player from above, with a number at each stick and switch. {told}."

    def item(self, *, numbers: tuple[Name, ...], what: Text, how: tuple[Text, ...]) -> str:
        return ": ".join(
            part
            for part in (f"{self.w.names(numbers)} {self.clause(what)}", " ".join(self.say(one) for one in how))
            if part
        )

    def device(self, *, device: Text, pieces: int) -> str:
        return self.w.pieces(pieces, self.clause(device))

    def at_sites(self, *, sites: tuple[Name, ...]) -> str:
        return f"For {self.w.sites(sites)}."

    def held_by(self, *, mount: Name, on: Name | None) -> str:
        return f"Mount: {self.w.name(mount)}{f', on the {self.w.name(on)}' if on else ''}."

    def stands_on(self, *, on: Name) -> str:
        return f"Stands on the {self.w.name(on)}."

    def turned(self, *, turn_rad: float) -> str:
        return f"Base turned {self.w.turn(turn_rad)}."

    def tall(self, *, height_m: float) -> str:
        return f"Its top is about {self.w.amount(height_m, 'mm')} above its base."

    def unplaced(self) -> str:
        return "Its place was not measured."

    def latching(self, *, actions: tuple[Name, ...]) -> str:
        return f"{self.w.capital(self.w.names(actions))}: press on, press off."

    def hub(self, *, hub: Name) -> str:
        return f"Hub: {self.w.name(hub)}"
