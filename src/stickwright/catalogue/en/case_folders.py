"""What is wrong with a case folder that is imported or exported, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.case_folders import CaseFolders
from stickwright.codes.message import Name

__all__ = ["Texts"]


class Texts(CaseFolders):
    """Found and expected have no full stop; remedies are sentences."""

    w: English

    def the_folder(self) -> str:
        return "the case folder"

    def no_code(self) -> str:
        return "no code"

    def a_code(self) -> str:
        return "a code for the player"

    def write_code(self) -> str:
        return 'Write code = "K7" at the top; never a name.'

    def a_file(self) -> str:
        return "a file"

    def no_folder(self) -> str:
        return "no such folder"

    def a_case_folder(self) -> str:
        return "a case folder"

    def choose_folder(self) -> str:
        return "Choose the folder that contains player.toml."

    def choose_folder_unchanged(self) -> str:
        return "Choose the folder that contains player.toml. Nothing was imported."

    def a_link(self) -> str:
        return "a link to another place"

    def copy_file(self) -> str:
        return "Copy the file itself here."

    def no_ordinary_file(self) -> str:
        return "something that is not an ordinary file"

    def take_out(self) -> str:
        return "Remove it from the folder."

    def no_player_file(self) -> str:
        return "no player.toml"

    def files(self, *, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='file', other='files')}"

    def at_most(self, *, count: int) -> str:
        return f"up to {self.w.whole(count)}"

    def right_folder(self) -> str:
        return "Is it the right folder?"

    def long_name(self) -> str:
        return "a very long name"

    def letters_at_most(self, *, count: int) -> str:
        return f"up to {self.w.whole(count)} letters"

    def shorter_name(self) -> str:
        return "Give it a shorter name."

    def outside(self) -> str:
        return "a place outside the folder"

    def inside(self) -> str:
        return "a file inside the folder"

    def leave_out(self) -> str:
        return "Exclude it."

    def cannot_open(self, *, reason: Name | None) -> str:
        return f"a file that cannot be opened ({self.w.name(reason) if reason is not None else 'the disk refused'})"

    def check_rights(self) -> str:
        return "Check its permissions."

    def leave_out_videos(self) -> str:
        return "Leave videos and pictures out of the folder."

    def something_there(self) -> str:
        return "a file, or a folder that is not empty"

    def empty_folder(self) -> str:
        return "a new or empty folder"

    def rename_unwritten(self) -> str:
        return "Choose another name. Nothing was written."
