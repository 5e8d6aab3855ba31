"""The usual cautions, in German."""

from __future__ import annotations

from stickwright.catalogue.de import German
from stickwright.codes.cautions import Cautions, Cleared
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_AGREED: dict[Cleared, str] = {
    "yes": "",
    "no": " Das Team hat nicht zugestimmt.",
    "ask": " Das Team wurde noch nicht gefragt.",
    "unrecorded": " Eine Antwort des Teams ist nicht festgehalten.",
}


class Texts(Cautions):
    """Was zu beachten ist."""

    w: German

    def session(self, *, blocks: Text) -> str:
        return (
            "Hören Sie auf bei Schmerz, neuer Taubheit, veränderter Hautfarbe, Atemnot oder Kummer. "
            f"{self.say(blocks)} Muskelkater soll am nächsten Morgen weg sein. Wenn nicht, halbieren Sie die Zeit."
        )

    def usual_blocks(self) -> str:
        return "Beginnen Sie mit 10 bis 15 Minuten. Machen Sie alle 30 bis 45 Minuten 5 bis 10 Minuten Pause."

    def child_adult(self) -> str:
        return "Ein Kind: bei jedem Besuch ist eine zweite erwachsene Person dabei. Beachten Sie die örtlichen Regeln zum Kinderschutz."

    def child_small_parts(self) -> str:
        return "Ein Kind: halten Sie Knopfzellen, lose Aufsätze und Schrauben von Händen und Mund fern."

    def neck(self) -> str:
        return (
            "Nacken: stimmen Sie jede Steuerung mit Kinn, Lippe oder Kopf mit dem Behandlungsteam ab. Hören Sie auf, wenn der Nacken "
            "schmerzt."
        )

    def airway(self) -> str:
        return (
            "Atemweg: halten Sie jedes Kabel und jede Halterung von Schläuchen frei. Versperren Sie nie das Beatmungsgerät. Nutzen "
            "Sie nie seine Stromversorgung mit."
        )

    def skin(self) -> str:
        return (
            "Haut: verteilen Sie den Druck auf eine große Fläche (2 N auf 1 cm² sind 20 kPa). Prüfen Sie die Haut nach 10 Minuten, "
            "dann nach 30. Rötung soll in 20 bis 30 Minuten vergehen. Wenn nicht, hören Sie auf und sagen Sie es dem Behandlungsteam."
        )

    def dysreflexia(self) -> str:
        return (
            "Autonome Dysreflexie: achten Sie auf pochenden Kopfschmerz, Röte oder Schwitzen oberhalb der Verletzung. Achten Sie auf "
            "blasse Haut darunter, verstopfte Nase oder langsamen Puls. Hören Sie dann sofort auf. Folgen Sie dem eigenen Notfallplan "
            "der Person. Suchen Sie die Ursache: Blase, Darm, Haut, ein enger Gurt, unsere Halterung. Rufen Sie Hilfe."
        )

    def seizures(self) -> str:
        return (
            "Anfälle: fragen Sie nach dem Plan der Person. Spielen Sie in einem hellen Raum, mit Abstand zum Bildschirm. Machen Sie "
            "Pausen. Halten Sie harte Kanten und Gurte fern."
        )

    def pain(self) -> str:
        return "Schmerz: nur angenehme Anstrengung. Fragen Sie vorher, in der Mitte und am Ende nach Schmerz."

    def startle(self) -> str:
        return (
            "Starke unwillkürliche Bewegung: nutzen Sie Polster. Keine scharfen Klemmschrauben. Nichts Schweres in Kopfhöhe. Alles "
            "muss entweder dem stärksten Stoß standhalten oder sich gezielt lösen."
        )

    def magnets(self) -> str:
        return (
            "Magnete in manchen Sticks und Kupplungen: halten Sie sie fern von Implantaten, Shuntventilen und Hörimplantaten. Fragen "
            "Sie das Behandlungsteam, wie weit."
        )

    def arthritis(self) -> str:
        return "Gelenke: nicht mit voller Kraft drücken. Nutzen Sie schwergängige Sticks nicht als Übung."

    def powered_chair(self) -> str:
        return (
            "Elektrorollstuhl: befestigen Sie nichts auf, durch oder gegen Fahrsteuerung, Bremsen oder Hauptschalter. Sperren Sie den "
            "Antrieb beim Spielen. Fragen Sie den Rollstuhldienst nach Standsicherheit und Breite."
        )

    def heart(self) -> str:
        return "Herz oder Blutdruck: beim Messen nicht mit voller Kraft drücken. Nicht die Luft anhalten."

    def forbidden_grip(self, *, site: Name, note: Name) -> str:
        return f"Nicht hier: {self.w.name(site)}. {self.w.typed(note)}."

    def force_ceiling(self, *, site: Name, force_n: float, why: Name | None) -> str:
        reason = f" ({self.w.typed(why)})" if why else ""
        return f"{self.w.name(site)}: nicht mehr als {self.w.amount(force_n, 'n')}{reason}. Nichts darf mehr Kraft brauchen."

    def face(self, *, cleared: Cleared) -> str:
        return (
            "Kinn, Lippe, Wange, Zunge und Kopf: nur wenn das Behandlungsteam zugestimmt hat. Nur weiche Teile. Nichts "
            "Hartes zeigt auf "
            "Auge oder Hals. Prüfen Sie die Sollbruchstelle bei jedem Aufbau. Die Person kommt allein frei, oder jemand "
            "bleibt bei ihr. "
            f"Nie während der Fahrt benutzen.{_AGREED[cleared]}"
        )

    def no_curve(self) -> str:
        return (
            "Für Nacken und Gesicht gibt es keine veröffentlichte Ausdauerkurve. Nur das eigene gemessene Halten zählt."
        )

    def mouth(self) -> str:
        return (
            "Im oder am Mund: nutzen Sie ein Teil, das nur dieser Person gehört und sich reinigen lässt. Nichts Kleines "
            "darf sich lösen. "
            "Fragen Sie nach Zähnen und Schlucken."
        )

    def effort(self) -> str:
        return (
            "Anstrengung: auf dem üblichen Niveau über ein Drittel der angenehmen Kraft. Achten Sie auf Ermüdung. Bieten "
            "Sie Pausen an. "
            "Messen Sie nach dem Spiel noch einmal."
        )

    def large_dead_zone(self) -> str:
        return (
            "Große Totzone: prüfen Sie, ob kleine gewollte Bewegungen noch zählen. Prüfen Sie, ob das Spiel keine eigene Totzone "
            "hinzufügt."
        )

    def one_player(self) -> str:
        return "Dieser Aufsatz berührt Gesicht oder Mund. Er ist nur für eine Person. Reinigen Sie ihn, wie seine Fläche es erlaubt."

    def progressive(self) -> str:
        return (
            "Wechselnde Fähigkeit: leihen Sie lieber, statt zu kaufen. Messen Sie neu, bevor es nötig ist. Nutzen Sie schwergängige "
            "Sticks nicht als Übung."
        )
