"""What to set for a stick in a game, in German: what the family's pages say."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Texts"]


class Texts(Topic):
    """Im Spiel einstellen."""

    w: German

    def in_game(self, *, stick: Name, numbers: Text) -> str:
        return f"Stellen Sie im Spiel ein: {self.clause(numbers)}. Stick: {self.w.name(stick)}."

    def in_each_game(self, *, sticks: tuple[Name, ...], games: tuple[Name, ...], numbers: tuple[Text, ...]) -> str:
        told = "; ".join(f"{self.w.name(game)}: {self.clause(one)}" for game, one in zip(games, numbers, strict=False))
        return f"Stellen Sie in jedem Spiel ein ({self.w.names(sticks)}): {told}."

    def nothing_yet(self) -> str:
        return "Ändern Sie im Spiel noch keine Einstellung. Sie müssen noch gemessen werden."

    def change_nothing(self, *, why: Text) -> str:
        return f"noch nichts ändern: {self.clause(why)}"

    def numbers(self, *, dead_zone_share: float, sensitivity_share: float) -> str:
        return f"Totzone {self.w.share(dead_zone_share)}, Empfindlichkeit {self.w.share(sensitivity_share)}"

    def numbers_offered(self, *, dead_zone_share: float | None, sensitivity_share: float | None) -> str:
        zone = "keine Totzone wählbar" if dead_zone_share is None else f"Totzone {self.w.share(dead_zone_share)}"
        gain = (
            "keine Empfindlichkeit wählbar"
            if sensitivity_share is None
            else f"Empfindlichkeit {self.w.share(sensitivity_share)}"
        )
        return f"{zone}, {gain}"

    def gains(self, *, stick: Name, directions_rad: tuple[float, ...], gains_factor: tuple[float, ...]) -> str:
        told = tuple(
            f"{self.w.direction(way)} {self.w.factor_of(gain)}"
            for way, gain in zip(directions_rad, gains_factor, strict=False)
        )
        return (
            f"Stellen Sie die Empfindlichkeit im Hub oder im Spiel ein ({self.w.name(stick)}): {self.w.all_of(told)}. "
            "Angenommen aus den "
            "Messungen, nicht aufgezeichnet. Zur Bestätigung zeichnet die Fachkraft auf: Ruhe, Rand und Stöße."
        )

    def other_stick(self, *, tuned: Name, stick: Name) -> str:
        return f"Abgestimmt auf {self.w.name(tuned)}, nicht auf {self.w.name(stick)}. Neu aufzeichnen und abstimmen."

    def other_setup(self, *, without: tuple[Text, ...], having: tuple[Text, ...]) -> str:
        told = [f"ohne {self.w.all_of(tuple(self.clause(one) for one in without))}"] if without else []
        told += [f"mit {self.w.all_of(tuple(self.clause(one) for one in having))}"] if having else []
        return f"Abgestimmt {', '.join(told)}. Neu abstimmen." if told else "Neu abstimmen."

    def extension(self, *, extension: Name) -> str:
        return f"Verlängerung {self.w.name(extension)}"
