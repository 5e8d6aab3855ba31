"""What is wrong with a case folder that is imported or exported."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["CaseFolders"]


class CaseFolders(Topic):
    """Found and expected have no full stop; remedies are sentences."""

    @abstractmethod
    def the_folder(self) -> str:
        """Where: a case folder that was chosen in the browser."""

    @abstractmethod
    def no_code(self) -> str:
        """Found: the player file has no code."""

    @abstractmethod
    def a_code(self) -> str:
        """Expected: a code for the player."""

    @abstractmethod
    def write_code(self) -> str:
        """Remedy: write a code at the top of the file, never a name."""

    @abstractmethod
    def a_file(self) -> str:
        """Found or expected: a file."""

    @abstractmethod
    def no_folder(self) -> str:
        """Found: there is no such folder."""

    @abstractmethod
    def a_case_folder(self) -> str:
        """Expected: a case folder."""

    @abstractmethod
    def choose_folder(self) -> str:
        """Remedy: choose the folder with player.toml."""

    @abstractmethod
    def choose_folder_unchanged(self) -> str:
        """Remedy: choose the folder with player.toml; nothing was imported."""

    @abstractmethod
    def a_link(self) -> str:
        """Found: a link to another place."""

    @abstractmethod
    def copy_file(self) -> str:
        """Remedy: copy the file itself."""

    @abstractmethod
    def no_ordinary_file(self) -> str:
        """Found: something that is no ordinary file."""

    @abstractmethod
    def take_out(self) -> str:
        """Remedy: take it out of the folder."""

    @abstractmethod
    def no_player_file(self) -> str:
        """Found: no player.toml."""

    @abstractmethod
    def files(self, *, count: int) -> str:
        """Found: so many files."""

    @abstractmethod
    def at_most(self, *, count: int) -> str:
        """Expected: at most so many."""

    @abstractmethod
    def right_folder(self) -> str:
        """Remedy: is it the right folder?"""

    @abstractmethod
    def long_name(self) -> str:
        """Found: a very long name."""

    @abstractmethod
    def letters_at_most(self, *, count: int) -> str:
        """Expected: at most so many letters."""

    @abstractmethod
    def shorter_name(self) -> str:
        """Remedy: a shorter name."""

    @abstractmethod
    def outside(self) -> str:
        """Found: a place outside the folder."""

    @abstractmethod
    def inside(self) -> str:
        """Expected: a file inside the folder."""

    @abstractmethod
    def leave_out(self) -> str:
        """Remedy: leave it out."""

    @abstractmethod
    def cannot_open(self, *, reason: Name | None) -> str:
        """Found: a file that cannot be opened, and why (None: not known), in the words of the operating system."""

    @abstractmethod
    def check_rights(self) -> str:
        """Remedy: check the permissions of the file."""

    @abstractmethod
    def leave_out_videos(self) -> str:
        """Remedy: leave videos and pictures out of the folder."""

    @abstractmethod
    def something_there(self) -> str:
        """Found: the folder is not empty, or a file has its name."""

    @abstractmethod
    def empty_folder(self) -> str:
        """Expected: a new or an empty folder."""

    @abstractmethod
    def rename_unwritten(self) -> str:
        """Remedy: choose another name; nothing was written."""
