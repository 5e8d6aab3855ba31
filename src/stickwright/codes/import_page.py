"""The page 'Import': a case folder becomes a visit."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["ImportPage"]


class ImportPage(Topic):
    """The page 'Import': a case folder becomes a visit."""

    @abstractmethod
    def title(self) -> str:
        """Heading and title of the window."""

    @abstractmethod
    def lead(self) -> str:
        """First sentences."""

    @abstractmethod
    def third_axis_before(self) -> str:
        """About recordings with a third axis; before the name of the column."""

    @abstractmethod
    def third_axis_after(self) -> str:
        """The same, after the name of the column."""

    @abstractmethod
    def into(self) -> str:
        """Label: whether what is imported is saved."""

    @abstractmethod
    def into_kept(self) -> str:
        """Choice."""

    @abstractmethod
    def into_kept_hint(self) -> str:
        """Under the choice."""

    @abstractmethod
    def into_unkept(self) -> str:
        """Choice."""

    @abstractmethod
    def into_unkept_hint(self) -> str:
        """Under the choice."""

    @abstractmethod
    def into_demo(self) -> str:
        """Choice: beside the invented player."""

    @abstractmethod
    def file(self) -> str:
        """Label."""

    @abstractmethod
    def file_hint(self, *, most_mb: int) -> str:
        """Under the label."""

    @abstractmethod
    def folder(self) -> str:
        """Label."""

    @abstractmethod
    def take(self) -> str:
        """Button."""

    @abstractmethod
    def done(self) -> str:
        """Message."""

    @abstractmethod
    def no_file(self) -> str:
        """Problem: neither file nor folder."""

    @abstractmethod
    def no_folder(self, *, folder: Name) -> str:
        """Problem."""

    @abstractmethod
    def no_player(self, *, folder: Name) -> str:
        """Problem: the folder holds no case."""

    @abstractmethod
    def folder_too_large(self, *, folder: Name, most_files: int, most_mb: int) -> str:
        """Problem."""

    @abstractmethod
    def too_many(self, *, files: int, most: int) -> str:
        """Problem with a ZIP file."""

    @abstractmethod
    def too_large(self, *, most_mb: int) -> str:
        """Problem with a ZIP file."""

    @abstractmethod
    def damaged(self) -> str:
        """Problem with a ZIP file."""

    @abstractmethod
    def bad_name(self, *, name: Name) -> str:
        """Problem with a ZIP file: a name leads out of its folder."""

    @abstractmethod
    def twice(self, *, name: Name) -> str:
        """Problem with a ZIP file."""

    @abstractmethod
    def no_player_in_zip(self) -> str:
        """Problem with a ZIP file: it holds no case."""
