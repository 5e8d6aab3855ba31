"""What was done in the records: entries of the audit trail, kept as codes."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Trail"]


class Trail(Topic):
    """Each a clause without a full stop; who did it and when stand beside it."""

    @abstractmethod
    def account_opened(self, *, name: Name, role: Name) -> str:
        """An account was opened or given a new password or role."""

    @abstractmethod
    def account_closed(self, *, name: Name) -> str:
        """An account was closed."""

    @abstractmethod
    def sign_in_refused(self, *, name: Name | None, digest: Name | None) -> str:
        """A sign-in was refused; for a name that is no account (None) a digest of what was typed."""

    @abstractmethod
    def signed_in(self, *, name: Name) -> str:
        """Somebody signed in."""

    @abstractmethod
    def player_added(self) -> str:
        """A player was added."""

    @abstractmethod
    def visit_begun(self, *, date: Name) -> str:
        """A visit was begun; its date as YYYY-MM-DD."""

    @abstractmethod
    def plan_made(self, *, visit: int, plan: int) -> str:
        """A plan was made at a visit; their numbers."""

    @abstractmethod
    def case_imported(self, *, files: int) -> str:
        """A case folder of so many files was imported."""

    @abstractmethod
    def passphrase_changed(self) -> str:
        """The passphrase of the records was changed."""

    @abstractmethod
    def setting_changed(self, *, name: Name) -> str:
        """A setting of the program was changed, by its key."""

    @abstractmethod
    def consent_recorded(self) -> str:
        """A consent was recorded."""

    @abstractmethod
    def consent_withdrawn(self) -> str:
        """A consent was withdrawn."""

    @abstractmethod
    def player_erased(self) -> str:
        """A player was erased; nothing says who."""

    @abstractmethod
    def carried_over(self, *, visits: int) -> str:
        """A player was copied from the memory of a session into the records, with so many visits."""

    @abstractmethod
    def kept_after_all(self) -> str:
        """A player who was only in memory is now kept."""

    @abstractmethod
    def clock_stood_before(self, *, what: Text, last: Name) -> str:
        """Any of these, or an entry in words of an earlier version, written while the clock was before the time of the entry before."""
