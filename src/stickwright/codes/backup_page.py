"""The page 'Backup': to one file and back."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["BackupPage"]


class BackupPage(Topic):
    """The page 'Backup': to one file and back."""

    @abstractmethod
    def title(self) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def lead(self) -> str:
        """Under the heading."""

    @abstractmethod
    def make_title(self) -> str:
        """Heading."""

    @abstractmethod
    def file(self) -> str:
        """Label: where the backup is written."""

    @abstractmethod
    def file_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def passphrase_hint(self) -> str:
        """Above the button."""

    @abstractmethod
    def make(self) -> str:
        """Button."""

    @abstractmethod
    def restore_title(self) -> str:
        """Heading."""

    @abstractmethod
    def restore_lead(self) -> str:
        """Under the heading."""

    @abstractmethod
    def from_file(self) -> str:
        """Label."""

    @abstractmethod
    def place(self) -> str:
        """Label: the new file with the restored records."""

    @abstractmethod
    def passphrase(self) -> str:
        """Label."""

    @abstractmethod
    def restore(self) -> str:
        """Button."""

    @abstractmethod
    def complete(self) -> str:
        """Heading of the report."""

    @abstractmethod
    def complete_more(self, *, file: Name) -> str:
        """First sentence of the report."""

    @abstractmethod
    def restored(self) -> str:
        """Heading of the report."""

    @abstractmethod
    def restored_more(self, *, place: Name) -> str:
        """First sentence of the report, with the command that opens them."""

    @abstractmethod
    def choose_file(self) -> str:
        """Problem: no backup file is named."""

    @abstractmethod
    def choose_place(self) -> str:
        """Problem: no place is named."""

    @abstractmethod
    def full_path(self, *, typed: Name, example: Name) -> str:
        """Problem: a name without its folders."""
