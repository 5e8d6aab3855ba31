"""What stands around every page: menu, where one is, what is kept, messages; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.frame import Frame, MenuEntry
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_MENU: dict[MenuEntry, str] = {
    "demo": "Demo",
    "demo_kit": "Demo kit",
    "own_players": "My players",
    "start": "Start",
    "trail": "Activity log",
    "accounts": "Accounts",
    "backup": "Backup",
    "players": "Players",
    "kit": "Kit",
    "settings": "Settings",
}


class Texts(Frame):
    """What stands around every page: menu, where one is, what is kept, messages."""

    w: English

    def skip(self) -> str:
        return "Skip to content"

    def main_menu(self) -> str:
        return "Main"

    def menu(self, *, entry: MenuEntry) -> str:
        return _MENU[entry]

    def log_out(self, *, who: Name) -> str:
        return f"Log out {self.w.name(who)}"

    def lock(self) -> str:
        return "Lock"

    def you_are_here(self) -> str:
        return "You are here"

    def visit(self, *, number: int, on_date: str) -> str:
        return f"Visit {self.w.whole(number)}{', ' + self.w.date(on_date) if on_date else ''}"

    def what_is_kept(self) -> str:
        return "What is saved"

    def not_kept(self) -> str:
        return "Not saved."

    def not_kept_more(self) -> str:
        return "This player's data are deleted when you close the app. Print what you need."

    def keep(self) -> str:
        return "Record consent to keep them"

    def read_only(self) -> str:
        return "Read-only."

    def read_only_more(self) -> str:
        return "There is no valid consent to keep anything more."

    def ask_again(self) -> str:
        return "Record consent"

    def work_unkept(self) -> str:
        return "Work without saving"

    def demo(self) -> str:
        return "This is an invented player."

    def demo_more(self) -> str:
        return "Change anything you like; nothing is saved."

    def what_records(self) -> str:
        return "Kind of records"

    def practice(self) -> str:
        return "Practice records, not encrypted. Do not enter a real player."

    def steps(self) -> str:
        return "Steps of this visit"

    def next_step(self, *, step: Text) -> str:
        return f"Next: {self.say(step)}"

    def changes_by(self) -> str:
        return "Changes are recorded as made by"

    def stays(self, *, team: bool) -> str:
        return "All data stay on the team's server." if team else "All data stay on this computer."

    def not_a_device(self) -> str:
        return "Not a medical device. Local policy, the wheelchair service and the treating team take precedence."

    def undone(self, *, what: Text) -> str:
        return f"Undone: {self.say(what)}"
