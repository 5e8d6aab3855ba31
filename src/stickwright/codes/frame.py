"""What stands around every page: menu, where one is, what is kept, messages."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Frame", "MenuEntry"]

MenuEntry = Literal[
    "demo", "demo_kit", "own_players", "start", "trail", "accounts", "backup", "players", "kit", "settings"
]


class Frame(Topic):
    """What stands around every page: menu, where one is, what is kept, messages."""

    @abstractmethod
    def skip(self) -> str:
        """Link for people who use the keyboard: past the menu."""

    @abstractmethod
    def main_menu(self) -> str:
        """Label of the main menu for a screen reader."""

    @abstractmethod
    def menu(self, *, entry: MenuEntry) -> str:
        """Entry of the main menu."""

    @abstractmethod
    def log_out(self, *, who: Name) -> str:
        """Button: end the session of this person."""

    @abstractmethod
    def lock(self) -> str:
        """Button: close the records until the passphrase is entered again."""

    @abstractmethod
    def you_are_here(self) -> str:
        """Label of the path to this page for a screen reader."""

    @abstractmethod
    def visit(self, *, number: int, on_date: str) -> str:
        """A visit in the path to this page; `on_date` may be ''."""

    @abstractmethod
    def what_is_kept(self) -> str:
        """Label of the notice about what is saved, for a screen reader."""

    @abstractmethod
    def not_kept(self) -> str:
        """Notice on every page of a player without consent to keep records; first sentence, bold."""

    @abstractmethod
    def not_kept_more(self) -> str:
        """Notice on every page of a player without consent to keep records; second sentence."""

    @abstractmethod
    def keep(self) -> str:
        """Link: record a consent, so that the data are kept."""

    @abstractmethod
    def read_only(self) -> str:
        """Notice: there is no valid consent; first sentence, bold."""

    @abstractmethod
    def read_only_more(self) -> str:
        """Notice: there is no valid consent; second sentence."""

    @abstractmethod
    def ask_again(self) -> str:
        """Link to the page of consent."""

    @abstractmethod
    def work_unkept(self) -> str:
        """Button: work with a copy that is deleted when the app is closed."""

    @abstractmethod
    def demo(self) -> str:
        """Notice on every page of the demo; first sentence, bold."""

    @abstractmethod
    def demo_more(self) -> str:
        """Notice on every page of the demo; second sentence."""

    @abstractmethod
    def what_records(self) -> str:
        """Label of the notice about practice records, for a screen reader."""

    @abstractmethod
    def practice(self) -> str:
        """Notice on every page: these records have no passphrase."""

    @abstractmethod
    def steps(self) -> str:
        """Label of the list of steps for a screen reader."""

    @abstractmethod
    def next_step(self, *, step: Text) -> str:
        """Button to the next step of the visit."""

    @abstractmethod
    def changes_by(self) -> str:
        """At the foot of every page, before the initials of who works here."""

    @abstractmethod
    def stays(self, *, team: bool) -> str:
        """At the foot of every page: where the data are."""

    @abstractmethod
    def not_a_device(self) -> str:
        """At the foot of every page."""

    @abstractmethod
    def undone(self, *, what: Text) -> str:
        """A change was taken back; `what` is the message that told of it."""
