"""Accounts of a team, logging in, and the log of what was done."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["TeamPage"]


class TeamPage(Topic):
    """Accounts of a team, logging in, and the log of what was done."""

    @abstractmethod
    def accounts(self) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def caption(self) -> str:
        """Caption of the table."""

    @abstractmethod
    def role(self) -> str:
        """Column and label."""

    @abstractmethod
    def role_of(self, *, role: Literal["practitioner", "reader"]) -> str:
        """A role."""

    @abstractmethod
    def role_hint(self, *, role: Literal["practitioner", "reader"]) -> str:
        """What the role may do."""

    @abstractmethod
    def close(self) -> str:
        """Column and button: end the access of this account."""

    @abstractmethod
    def close_more(self, *, name: Name) -> str:
        """The same for a screen reader, after 'Close'."""

    @abstractmethod
    def you(self) -> str:
        """Cell: this is your own account."""

    @abstractmethod
    def add_title(self) -> str:
        """Heading."""

    @abstractmethod
    def name_hint(self) -> str:
        """Under the label 'Name'."""

    @abstractmethod
    def password(self) -> str:
        """Label."""

    @abstractmethod
    def confirm(self) -> str:
        """Label."""

    @abstractmethod
    def add(self) -> str:
        """Button."""

    @abstractmethod
    def first(self) -> str:
        """Heading and title of the window: there is no account yet."""

    @abstractmethod
    def log_in(self) -> str:
        """Heading, title of the window and button."""

    @abstractmethod
    def first_lead(self) -> str:
        """Under the heading."""

    @abstractmethod
    def token(self) -> str:
        """Label: the one-time code that the server printed."""

    @abstractmethod
    def token_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def make_first(self) -> str:
        """Button."""

    @abstractmethod
    def wrong_token(self) -> str:
        """Problem."""

    @abstractmethod
    def choose_role(self) -> str:
        """Problem."""

    @abstractmethod
    def added(self, *, name: Name, role: Literal["practitioner", "reader"]) -> str:
        """Message."""

    @abstractmethod
    def own_account(self) -> str:
        """Problem: one's own account cannot be closed."""

    @abstractmethod
    def closed(self, *, name: Name) -> str:
        """Message."""

    @abstractmethod
    def trail(self) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def trail_caption(self) -> str:
        """Caption of the table."""

    @abstractmethod
    def when(self) -> str:
        """Column."""

    @abstractmethod
    def who(self) -> str:
        """Column."""

    @abstractmethod
    def what(self) -> str:
        """Column: what was done."""

    @abstractmethod
    def player(self) -> str:
        """Column."""

    @abstractmethod
    def details(self) -> str:
        """Column."""

    @abstractmethod
    def pages(self) -> str:
        """Label for a screen reader."""

    @abstractmethod
    def later(self) -> str:
        """Button: newer entries."""

    @abstractmethod
    def earlier(self) -> str:
        """Button: older entries."""

    @abstractmethod
    def at(self, *, at: str) -> str:
        """When something was done, in universal time."""
