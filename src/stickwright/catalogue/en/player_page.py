"""The page of one player: visits, plans, force over time, consent, loans, and everything that is held; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.player_page import PlayerPage

__all__ = ["Texts"]


class Texts(PlayerPage):
    """The page of one player: visits, plans, force over time, consent, loans, and everything that is held."""

    w: English

    def no_visit(self) -> str:
        return "No visits yet."

    def visits_so_far(self, *, visits: int, last_on: str) -> str:
        told = f"{self.w.whole(visits)} {self.w.plural(visits, one='visit', other='visits')}"
        return f"{told}, the last on {self.w.date(last_on)}." if last_on else f"{told}."

    def first_visit(self) -> str:
        return "Begin the first visit"

    def to_players(self) -> str:
        return "Back to the players"

    def ask_again(self) -> str:
        return "Record consent"

    def today(self) -> str:
        return "Resume today's visit"

    def open_visit(self, *, number: int) -> str:
        return f"Open visit {self.w.whole(number)}"

    def visits(self) -> str:
        return "Visits"

    def visits_caption(self, *, visits: int) -> str:
        return f"{self.w.whole(visits)} {self.w.plural(visits, one='visit', other='visits')}, most recent first"

    def visit(self) -> str:
        return "Visit"

    def sites(self) -> str:
        return "Control sites"

    def game(self) -> str:
        return "Game"

    def recordings(self) -> str:
        return "Recordings"

    def plans(self) -> str:
        return "Plans"

    def problems(self) -> str:
        return "Problems to fix"

    def visit_on(self, *, number: int, on_date: str) -> str:
        return f"{self.w.whole(number)}, {self.w.date(on_date) if on_date else 'no date'}"

    def new_date(self) -> str:
        return "Date of the new visit"

    def like(self) -> str:
        return "Copy control sites, game, hub and room from"

    def like_visit(self, *, number: int, on_date: str) -> str:
        return f"visit {self.w.whole(number)}, {self.w.date(on_date) if on_date else 'no date'}"

    def like_nothing(self) -> str:
        return "nothing: start empty"

    def begin(self) -> str:
        return "Add visit"

    def begun(self, *, number: int) -> str:
        return f"Visit {self.w.whole(number)} added."

    def plan_of(self, *, visit: int, plan: int) -> str:
        return f"Visit {self.w.whole(visit)}, plan {self.w.whole(plan)}"

    def made(self, *, on_date: str, who: Name) -> str:
        return f"made {self.w.date(on_date)}{' by ' + self.w.name(who) if who else ''}"

    def force(self) -> str:
        return "Force over time"

    def force_more(self, *, unit: Name) -> str:
        return (
            f"Comfortable force in {self.w.name(unit)}: the median of the repeats, with a bar from the weakest to "
            "the strongest. It guides the set-up and is not a score of a person."
        )

    def force_at(self, *, site: Name, unit: Name) -> str:
        return f"Comfortable force at the {self.w.name(site)}, in {self.w.name(unit)}"

    def consent(self) -> str:
        return "Consent"

    def view_consent(self) -> str:
        return "View consent"

    def record_consent(self) -> str:
        return "Record consent"

    def loans(self) -> str:
        return "Kit on loan"

    def held(self) -> str:
        return "All data held"

    def download(self, *, code: Name) -> str:
        return f"Download everything about {self.w.name(code)}"

    def download_more(self) -> str:
        return "one file, to hand over"

    def import_case(self) -> str:
        return "Import a case folder"

    def erase(self, *, code: Name) -> str:
        return f"Erase {self.w.name(code)}"

    def erase_more(self) -> str:
        return "shows first what will be erased"
