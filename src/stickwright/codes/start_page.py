"""The first page: create records, unlock them, or look round without."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["StartPage"]


class StartPage(Topic):
    """The first page: create records, unlock them, or look round without."""

    @abstractmethod
    def title(self, *, kind: Literal["none", "encrypted", "other"]) -> str:
        """Title of the window."""

    @abstractmethod
    def locked_itself(self) -> str:
        """The app locked itself; nothing was lost."""

    @abstractmethod
    def unlock_title(self) -> str:
        """Heading: enter the passphrase."""

    @abstractmethod
    def passphrase(self) -> str:
        """Label."""

    @abstractmethod
    def wait(self, *, seconds: int) -> str:
        """After several wrong tries, the next one has to wait."""

    @abstractmethod
    def unlock(self) -> str:
        """Button."""

    @abstractmethod
    def unlock_more(self, *, place: Name) -> str:
        """Under the form."""

    @abstractmethod
    def create_title(self) -> str:
        """Heading on the very first start."""

    @abstractmethod
    def create_lead(self) -> str:
        """First paragraph on the very first start."""

    @abstractmethod
    def new_passphrase(self) -> str:
        """Label."""

    @abstractmethod
    def passphrase_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def confirm(self) -> str:
        """Label: the passphrase a second time."""

    @abstractmethod
    def no_recovery(self) -> str:
        """Caution beside a new passphrase; first sentence, bold."""

    @abstractmethod
    def no_recovery_more(self) -> str:
        """Caution beside a new passphrase; second sentence."""

    @abstractmethod
    def create(self) -> str:
        """Button."""

    @abstractmethod
    def stored_in(self, *, place: Name) -> str:
        """Where the file will be."""

    @abstractmethod
    def other_title(self) -> str:
        """Heading: the file that was named is not one of this app."""

    @abstractmethod
    def other_lead(self, *, place: Name) -> str:
        """The file was not changed."""

    @abstractmethod
    def other_before(self) -> str:
        """How to name another file; before the command."""

    @abstractmethod
    def other_after(self) -> str:
        """After the command."""

    @abstractmethod
    def without_title(self) -> str:
        """Heading: two ways to work without records."""

    @abstractmethod
    def demo_title(self) -> str:
        """Heading of a card."""

    @abstractmethod
    def demo_more(self) -> str:
        """On the card."""

    @abstractmethod
    def demo(self) -> str:
        """Button on the card."""

    @abstractmethod
    def practice_title(self) -> str:
        """Heading of a card."""

    @abstractmethod
    def practice_more(self) -> str:
        """On the card."""

    @abstractmethod
    def practice(self) -> str:
        """Button on the card."""

    @abstractmethod
    def created(self, *, strength: Text) -> str:
        """Message after the records were created; `strength` says how good the passphrase is."""

    @abstractmethod
    def other_kind(self, *, place: Name) -> str:
        """Problem: the file of the practice records is of another kind."""

    @abstractmethod
    def cut_short(self, *, recording: Name) -> str:
        """A recording was interrupted at an earlier time."""

    @abstractmethod
    def unlocked(self) -> str:
        """Heading: the app locked itself before the last entry arrived."""

    @abstractmethod
    def unlocked_more(self) -> str:
        """First paragraph."""

    @abstractmethod
    def send_now(self) -> str:
        """Button: save that entry now."""

    @abstractmethod
    def leave(self) -> str:
        """Link: do without it."""
