"""The printed sheet around its pages, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.sheets import Heading, Keyword, Left, Level, Sheets

__all__ = ["Texts"]

_LEFT: dict[Left, str] = {
    "readings": "the means of the readings",
    "ranking_chart": "the ranking chart",
    "curve_chart": "the curve chart",
    "alternatives": "other set-ups of the chosen stick",
    "short_limits": "all but the first reason of most sticks",
    "recording_notes": "what a recording cannot tell",
    "far_reasons": "the reasons of sticks far from fitting",
    "facts": "the numbers of the recordings",
}
_HEADINGS: dict[Heading, str] = {
    "unplanned": "For the practitioner: nothing could be planned yet",
    "ability": "What the player can do here",
    "crossing": "The player's force and the force of the sticks",
    "ranked": "Sticks ranked",
    "ranked_below": "Ranked below, none of them fitting:",
    "also": "Also:",
    "tuning": "Tuning",
    "also_tuned": "Also tuned:",
    "recordings": "Recording results",
    "nothing_to_check": "nothing to check.",
    "another_site": "Another control site:",
    "what": "what",
    "value": "value",
    "why": "why",
    "confirm": "to confirm",
    "to_confirm": "To confirm:",
}


class Texts(Sheets):
    """Header, footer, marks."""

    w: English

    def player(self, *, player: Name) -> str:
        return f"Player {self.w.name(player)}"

    def made_by(self, *, version: Name, made_on: Name | None) -> str:
        return f"stickwright {self.w.name(version)}{f', {self.w.date(made_on)}' if made_on else ''}"

    def page(self, *, page: Name, pages: Name) -> str:
        return f"page {self.w.name(page)} of {self.w.name(pages)}"

    def left_out(self, *, parts: tuple[Text, ...]) -> str:
        told = self.w.all_of(tuple(self.say(one) for one in parts))
        return f"Left out here for length: {told}; see the SVG and JSON files of this plan."

    def part(self, *, part: Left) -> str:
        return _LEFT[part]

    def caution(self) -> str:
        return "Caution."

    def level(self, *, level: Level) -> str:
        return {"fault": "Limits what can be said", "query": "Please check", "note": "Noted"}[level]

    def finding(self, *, level: Level, text: Text) -> str:
        return f"{self.level(level=level)}: {self.say(text)}"

    def what_if(self, *, wishes: tuple[Text, ...]) -> str:
        return f"WHAT IF: {'; '.join(self.say(one) for one in wishes)}"

    def what_if_only(self, *, wishes: tuple[Text, ...]) -> str:
        return f"WHAT IF: {'; '.join(self.clause(one) for one in wishes)}. This is not the plan of the case as it is."

    def wishes(self, *, wishes: tuple[Text, ...]) -> str:
        return "; ".join(self.say(one) for one in wishes)

    def without(self, *, names: tuple[Name, ...]) -> str:
        return f"without {self.w.names(names)}"

    def keeping(self, *, kept: tuple[Text, ...]) -> str:
        return f"keeping {self.w.all_of(tuple(self.say(one) for one in kept))}"

    def kept(self, *, what: Name, where: Name) -> str:
        return f"{self.w.name(what)} at {self.w.name(where)}"

    def only_stock(self) -> str:
        return "only what is in stock"

    def budget(self, *, budget_price: float) -> str:
        return f"for at most {self.w.trimmed(budget_price)}"

    def most_devices(self, *, count: int) -> str:
        return f"with at most {count} {self.w.plural(count, one='device', other='devices')}"

    def keyword(self, *, word: Keyword) -> str:
        return word

    def practitioner(self, *, site: Name) -> str:
        return f"For the practitioner: {self.w.name(site)}"

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]
