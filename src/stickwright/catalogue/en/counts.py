"""How many of what the records hold, a backup holds, or erasing takes away, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.counts import Counted, Counts
from stickwright.codes.message import Name

__all__ = ["Texts"]

_NOUNS: dict[Counted, tuple[str, str]] = {
    "player": ("player", "player"),
    "players": ("player", "players"),
    "visits": ("visit", "visits"),
    "files": ("file", "files"),
    "versions": ("version of files", "versions of files"),
    "readings": ("reading in the index", "readings in the index"),
    "recordings": ("recording", "recordings"),
    "samples": ("sample", "samples"),
    "unpacked_samples": ("block of samples not yet packed", "blocks of samples not yet packed"),
    "plans": ("plan", "plans"),
    "consents": ("consent", "consents"),
    "loan_entries": ("loan entry", "loan entries"),
    "trail_entries": ("entry in the audit trail", "entries in the audit trail"),
}


class Texts(Counts):
    """Labels are nouns in the plural; a count with its noun."""

    w: English

    def label(self, *, what: Counted) -> str:
        return _NOUNS[what][1]

    def counted(self, *, what: Counted, count: int) -> str:
        one, other = _NOUNS[what]
        return f"{self.w.whole(count)} {self.w.plural(count, one=one, other=other)}"

    def server_backups(self) -> str:
        return "The server's own backups and logs are not erased. Ask its administrator."

    def earlier_backups(self) -> str:
        return "Backups made earlier still hold these data. Erase or replace them too."

    def copies_beside(self, *, names: tuple[Name, ...]) -> str:
        return (
            f"These files are next to the records: {self.w.names(names)}. If they are earlier copies, erase them too."
        )

    def close_and_erase(self) -> str:
        return (
            "The data are erased from the records. Close the other program, then erase or compact again, so that they are also "
            "removed from the file on the disk."
        )

    def kit_gone(self, *, plan: int, visit: int) -> str:
        return f"Plan {plan} of visit {visit} was not saved: the kit that it used no longer exists."
