"""The page 'Settings'; in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.settings_page import SettingsPage

__all__ = ["Texts"]

_RECORDS = {
    "encrypted": "one file on this computer, encrypted",
    "plain": "one file on this computer, not encrypted (practice)",
    "postgresql": "the team's server",
    "memory": "memory only",
    "closed": "closed",
}


class Texts(SettingsPage):
    """The page 'Settings'."""

    w: English

    def title(self) -> str:
        return "Settings"

    def look(self) -> str:
        return "Display"

    def light(self) -> str:
        return "Theme"

    def light_choice(self, *, light: Literal["auto", "light", "dark", "contrast"]) -> str:
        return {"auto": "As this computer is set", "light": "Light", "dark": "Dark", "contrast": "High contrast"}[light]

    def size(self) -> str:
        return "Text size"

    def size_choice(self, *, size: Literal["usual", "larger"]) -> str:
        return {"usual": "Standard", "larger": "Larger"}[size]

    def work(self) -> str:
        return "Work"

    def who(self) -> str:
        return "Your initials"

    def who_hint(self) -> str:
        return "Initials or a role; recorded with every change."

    def force(self) -> str:
        return "Unit of the force gauge"

    def idle(self, *, team: bool) -> str:
        return "Log out when not used for" if team else "Lock when not used for"

    def idle_choice(self, *, minutes: int) -> str:
        return f"{self.w.whole(minutes)} minutes"

    def save(self) -> str:
        return "Save settings"

    def saved(self) -> str:
        return "Settings saved."

    def records(self) -> str:
        return "Records"

    def stored_in(self) -> str:
        return "Stored in"

    def kind(self) -> str:
        return "Format"

    def kind_of(self, *, kind: Literal["encrypted", "plain", "postgresql", "memory", "closed"]) -> str:
        return _RECORDS[kind]

    def change(self) -> str:
        return "Change passphrase"

    def current(self) -> str:
        return "Current passphrase"

    def new(self) -> str:
        return "New passphrase"

    def confirm(self) -> str:
        return "Confirm new passphrase"

    def no_recovery_more(self) -> str:
        return "Write the new one down, and destroy the old note."

    def changed(self) -> str:
        return "Passphrase changed. Earlier backups still open with the earlier passphrase."

    def too_long(self, *, most: int) -> str:
        return f"Use at most {self.w.whole(most)} characters: initials or a role."

    def choose(self) -> str:
        return "Choose one of the options."
