"""Page one of the sheet, in German."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.de import German
from stickwright.codes.family import Cause, Family, Heading
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_CAUSES: dict[Cause, str] = {
    "unplugged": "Ist es eingesteckt?",
    "socket": "Steckt es in der richtigen Buchse?",
    "standby": "Ist etwas im Standby?",
    "touched": "Hat jemand den Stick beim Einschalten berührt?",
    "moved": "Ist das Gehäuse verrutscht?",
}
_REMEDIES: dict[Cause, str] = {
    "unplugged": "Stecken Sie den Stecker an beiden Enden ganz ein.",
    "socket": "Vergleichen Sie jedes Kabel mit den Schritten auf Seite 1.",
    "standby": "Wecken Sie Konsole oder Computer. Warten Sie dann.",
    "touched": "Ziehen Sie den Stecker. Hände weg vom Stick. Stecken Sie ihn wieder ein.",
    "moved": "Stellen Sie es zurück wie im Bild.",
}
_HEADINGS: dict[Heading, str] = {
    "steps": "Aufbau in dieser Reihenfolge",
    "trouble": "Wenn es nicht geht",
    "found": "Was gefunden wurde",
    "nearest": "Was am nächsten kommt",
    "help": "Was am meisten helfen würde",
    "next": "Was als Nächstes zu tun ist",
    "stop": "Sicherheit: wann Sie aufhören",
    "safety": "Sicherheit",
    "socket": "Buchse:",
    "contact": "Kontakt:",
    "date": "Datum:",
}


class Texts(Family):
    """Für alle, die heute Abend aufbauen."""

    w: German

    def title(self, *, player: Name) -> str:
        return f"Aufbau für Spieler/in {self.w.name(player)}"

    def lead(self, *, games: tuple[Name, ...], sticks: int, coarse: Name | None) -> str:
        told = [f"Zum Spielen: {self.w.names(games)}."] if games else []
        told += ["Dieser Aufbau hat keinen Stick."] if not sticks else []
        if coarse:
            told += [
                f"Noch passt kein Stick gut. Am nächsten kommt: {self.w.name(coarse)}. Er bricht aber eine Regel der Praxis. Er kann "
                "grob oder ermüdend sein. Probieren Sie ihn zuerst mit der Fachkraft."
            ]
        return " ".join(told)

    def none_fits_title(self, *, player: Name) -> str:
        return f"Noch passt kein Stick: Spieler/in {self.w.name(player)}"

    def no_plan_title(self, *, player: Name) -> str:
        return f"Noch kein Plan: Spieler/in {self.w.name(player)}"

    def not_instructions(self, *, measured: bool) -> str:
        told = "was gefunden wurde und was helfen würde" if measured else "was noch zu messen ist"
        return f"Bauen Sie nach dieser Seite nichts auf. Sie sagt, {told}."

    def seat(self, *, support: Name | None) -> str:
        held = f" Stütze: {self.w.typed(support)}." if support else ""
        return f"Setzen Sie die Person so hin, wie sie spielt.{held}"

    def place_switches(self, *, controllers: bool) -> str:
        what = "jeden Schalter und jeden Controller" if controllers else "jeden Schalter"
        return f"Stellen Sie {what} dorthin, wo das Bild die Nummer zeigt."

    def set_arms(self) -> str:
        return "Stellen Sie jeden Arm so ein, wie es seine eigene Seite zeigt."

    def hands_off(self) -> str:
        return "Hände weg von den Sticks, während Sie einstecken."

    def plug_in_stick(self, *, stick: Name) -> str:
        return f"Stecken Sie ein: {self.w.name(stick)}."

    def plug_in_others(self) -> str:
        return "Stecken Sie jeden Schalter ein."

    def plug_cables(self, *, hubs: tuple[Name, ...]) -> str:
        return f"Stecken Sie jedes Kabel in seine Buchse. Hub: {self.w.names(hubs)}. Kabel:"

    def cable(self, *, tag: Name, device: Name, socket: Text, hub: Name | None) -> str:
        on = f", {self.w.name(hub)}" if hub else ""
        return f"{self.w.name(tag)} ({self.w.name(device)}): {self.say(socket)}{on}"

    def switch_on(self, *, device: Name) -> str:
        return f"Schalten Sie ein: {self.w.name(device)}."

    def start_game(self) -> str:
        return "Starten Sie das Spiel."

    def try_sticks(self, *, sticks: int) -> str:
        which = self.w.plural(sticks, one="den Stick", other="jeden Stick")
        return f"Probieren Sie {which} nach vorn, rechts, hinten und links."

    def fit_parts(self, *, stick: Name, extension: Name | None, topper: Name | None) -> str:
        parts = [f"die Verlängerung {self.w.name(extension)}"] if extension else []
        parts += [f"den Aufsatz {self.w.name(topper)}"] if topper else []
        if not parts:
            return f"Nehmen Sie den Stick {self.w.name(stick)}."
        return f"Setzen Sie {self.w.all_of(tuple(parts))} auf den Stick {self.w.name(stick)}."

    def raise_edge(self, *, edge: Literal["far", "near"], angle_rad: float) -> str:
        which = {"far": "von der Person entfernte", "near": "der Person nahe"}[edge]
        return f"Heben Sie die {which} Kante des Gehäuses um {self.w.amount(angle_rad, 'deg')}."

    def place_stick(self, *, site: Name, number: Name | None, touch: bool) -> str:
        where = f"dorthin, wo das Bild die {self.w.name(number)} zeigt" if number else "wie im Bild"
        how = "berührt die Mitte der Fläche" if touch else "liegt oben auf und drückt den Stick nicht um"
        return f"Stellen Sie ihn {where}. Prüfen Sie: {self.w.name(site)} {how}."

    def turn_base(self, *, turn_rad: float) -> str:
        return f"Drehen Sie sein Gehäuse von geradeaus um {self.w.turn(turn_rad)}, von oben gesehen."

    def try_switches(self) -> str:
        return "Drücken Sie jeden Schalter einmal."

    def plug(self, *, plug: Name | None) -> str:
        return f"Stecker: {self.w.name(plug)}." if plug else "Stecker: siehe Kabel."

    def socket(self, *, socket: Text, hub: Name, tag: Name) -> str:
        return f"{self.say(socket)}, {self.w.name(hub)} (Kabel {self.w.name(tag)})."

    def plug_into(self, *, plug: Text, socket: Text) -> str:
        return f"{self.say(plug)} Buchse: {self.say(socket)}"

    def stick_box(self, *, number: Name, stick: Name, site: Name) -> str:
        return f"Einstellungen für {self.w.name(number)}: {self.w.name(stick)} ({self.w.name(site)})"

    def no_settings(self) -> str:
        return "Lassen Sie die Einstellungen im Spiel, wie sie sind."

    def cause(self, *, cause: Cause) -> str:
        return _CAUSES[cause]

    def remedy(self, *, cause: Cause, turned: bool, wired: bool) -> str:
        if cause == "moved" and turned:
            return "Stellen Sie es zurück wie im Bild. Drehen Sie es, wie sein Schritt sagt."
        if cause == "socket" and not wired:
            return "Vergleichen Sie es mit den Zeichen an den Kabeln."
        return _REMEDIES[cause]

    def none_fits(self, *, setups: int, site: Name) -> str:
        tried = self.w.plural(setups, one="Ein Aufbau wurde", other=f"{self.w.whole(setups)} Aufbauten wurden")
        return f"{tried} geprüft. Noch passt keiner. Stelle: {self.w.name(site)}."

    def comes_nearest(self, *, setup: Text, why: Text) -> str:
        return f"{self.clause(setup)}. {self.say(why)}"

    def other_site(self, *, site: Name, told: Text) -> str:
        return f"{self.w.name(site)}: {self.say(told)}"

    def nothing_tried(self) -> str:
        return "Es konnte kein Aufbau geprüft werden."

    def nothing_helps(self) -> str:
        return "Keine einzelne Änderung an Stick, Aufsatz, Verlängerung oder Neigung hilft."

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def undated(self) -> str:
        return "ohne Datum"
