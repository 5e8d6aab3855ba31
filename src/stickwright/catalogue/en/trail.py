"""What was done in the records: entries of the audit trail, kept as codes, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.trail import Trail

__all__ = ["Texts"]


class Texts(Trail):
    """Each a clause without a full stop; who did it and when stand beside it."""

    w: English

    def account_opened(self, *, name: Name, role: Name) -> str:
        return f"Account opened: {self.w.name(name)} ({self.w.name(role)})"

    def account_closed(self, *, name: Name) -> str:
        return f"Account closed: {self.w.name(name)}"

    def sign_in_refused(self, *, name: Name | None, digest: Name | None) -> str:
        return f"Sign-in refused: {self._account(name, digest)}"

    def signed_in(self, *, name: Name) -> str:
        return f"Signed in: {self.w.name(name)}"

    def player_added(self) -> str:
        return "Player added"

    def visit_begun(self, *, date: Name) -> str:
        return f"Visit started: {self.w.date(date)}"

    def plan_made(self, *, visit: int, plan: int) -> str:
        return f"Plan made: visit {visit}, plan {plan}"

    def case_imported(self, *, files: int) -> str:
        return f"Case folder imported: {self.w.whole(files)} {self.w.plural(files, one='file', other='files')}"

    def passphrase_changed(self) -> str:
        return "Passphrase changed"

    def setting_changed(self, *, name: Name) -> str:
        return f"Setting changed: {self.w.name(name)}"

    def consent_recorded(self) -> str:
        return "Consent recorded"

    def consent_withdrawn(self) -> str:
        return "Consent withdrawn"

    def player_erased(self) -> str:
        return "Player erased"

    def carried_over(self, *, visits: int) -> str:
        return f"Copied into the records: {self.w.whole(visits)} {self.w.plural(visits, one='visit', other='visits')}"

    def kept_after_all(self) -> str:
        return "Saved after consent"

    def clock_stood_before(self, *, what: Text, last: Name) -> str:
        return f"{self.clause(what)} (the clock was before the previous entry, {self.w.name(last)})"

    def _account(self, name: Name | None, digest: Name | None) -> str:
        return self.w.name(name) if name is not None else f"no account ({self.w.name(digest or Name(''))})"
