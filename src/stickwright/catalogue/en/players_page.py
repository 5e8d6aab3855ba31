"""The list of players; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.players_page import PlayersPage

__all__ = ["Texts"]


class Texts(PlayersPage):
    """The list of players."""

    w: English

    def title(self) -> str:
        return "Players"

    def find(self) -> str:
        return "Search by code"

    def unkept(self) -> str:
        return "Not saved (deleted when you close the app)"

    def unkept_visits(self, *, visits: int) -> str:
        return f"{self.w.whole(visits)} {self.w.plural(visits, one='visit', other='visits')}, not saved"

    def kept(self) -> str:
        return "Saved"

    def caption(self, *, total: int, search: Name, page: int, pages: int) -> str:
        told = f"{self.w.whole(total)} {self.w.plural(total, one='player', other='players')}, most recent first"
        matching = f", code contains '{self.w.name(search)}'" if search else ""
        return f"{told}{matching}{f', page {self.w.whole(page)} of {self.w.whole(pages)}' if pages > 1 else ''}"

    def code(self) -> str:
        return "Code"

    def last_visit(self) -> str:
        return "Last visit"

    def visits(self) -> str:
        return "Visits"

    def recordings(self) -> str:
        return "Recordings"

    def consent(self) -> str:
        return "Consent"

    def pages(self) -> str:
        return "Pages of the list"

    def not_found(self, *, search: Name) -> str:
        return f"No saved player has '{self.w.name(search)}' in the code."

    def nobody(self) -> str:
        return "No players yet. Add your first player to begin a visit."

    def add_title(self) -> str:
        return "Add a player"

    def code_hint(self) -> str:
        return "Letters and digits, for example K7. Never a name: keep the list of names on paper, elsewhere."

    def add(self) -> str:
        return "Add player"

    def or_import(self) -> str:
        return "Import a case folder"

    def taken(self, *, code: Name) -> str:
        return f"{self.w.name(code)} is already in use. Search for that player, or choose another code."
