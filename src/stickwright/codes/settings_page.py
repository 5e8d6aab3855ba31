"""The page 'Settings'."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Topic

__all__ = ["SettingsPage"]


class SettingsPage(Topic):
    """The page 'Settings'."""

    @abstractmethod
    def title(self) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def look(self) -> str:
        """Heading."""

    @abstractmethod
    def light(self) -> str:
        """Label: light or dark."""

    @abstractmethod
    def light_choice(self, *, light: Literal["auto", "light", "dark", "contrast"]) -> str:
        """Choice."""

    @abstractmethod
    def size(self) -> str:
        """Label."""

    @abstractmethod
    def size_choice(self, *, size: Literal["usual", "larger"]) -> str:
        """Choice."""

    @abstractmethod
    def work(self) -> str:
        """Heading."""

    @abstractmethod
    def who(self) -> str:
        """Label: who works here."""

    @abstractmethod
    def who_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def force(self) -> str:
        """Label."""

    @abstractmethod
    def idle(self, *, team: bool) -> str:
        """Label: how long the app may be left alone."""

    @abstractmethod
    def idle_choice(self, *, minutes: int) -> str:
        """Choice."""

    @abstractmethod
    def save(self) -> str:
        """Button."""

    @abstractmethod
    def saved(self) -> str:
        """Message."""

    @abstractmethod
    def records(self) -> str:
        """Heading."""

    @abstractmethod
    def stored_in(self) -> str:
        """Before the path of the file."""

    @abstractmethod
    def kind(self) -> str:
        """Before the kind of records."""

    @abstractmethod
    def kind_of(self, *, kind: Literal["encrypted", "plain", "postgresql", "memory", "closed"]) -> str:
        """Kind of records."""

    @abstractmethod
    def change(self) -> str:
        """Heading and button."""

    @abstractmethod
    def current(self) -> str:
        """Label."""

    @abstractmethod
    def new(self) -> str:
        """Label."""

    @abstractmethod
    def confirm(self) -> str:
        """Label."""

    @abstractmethod
    def no_recovery_more(self) -> str:
        """Caution, after 'It cannot be recovered'."""

    @abstractmethod
    def changed(self) -> str:
        """Message."""

    @abstractmethod
    def too_long(self, *, most: int) -> str:
        """Problem with the initials."""

    @abstractmethod
    def choose(self) -> str:
        """Problem: a value that is not one of the choices."""
