"""The page 'Backup': to one file and back; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.backup_page import BackupPage
from stickwright.codes.message import Name

__all__ = ["Texts"]


class Texts(BackupPage):
    """The page 'Backup': to one file and back."""

    w: English

    def title(self) -> str:
        return "Backup"

    def lead(self) -> str:
        return "One file with everything. Keep it away from this computer."

    def make_title(self) -> str:
        return "Back up"

    def file(self) -> str:
        return "Save the backup as"

    def file_hint(self) -> str:
        return "A file on this computer or on a memory stick. Leave empty to download it."

    def passphrase_hint(self) -> str:
        return "It opens with your current passphrase. It is read back and counted before it is reported as complete."

    def make(self) -> str:
        return "Back up"

    def restore_title(self) -> str:
        return "Restore"

    def restore_lead(self) -> str:
        return "The backup is restored to a new file; these records are not changed. Then start the app with that file."

    def from_file(self) -> str:
        return "Backup file"

    def place(self) -> str:
        return "Restore to"

    def passphrase(self) -> str:
        return "Passphrase of the backup"

    def restore(self) -> str:
        return "Restore"

    def complete(self) -> str:
        return "Backup complete"

    def complete_more(self, *, file: Name) -> str:
        return f"{self.w.name(file)} was read back and holds everything in these records."

    def restored(self) -> str:
        return "Records restored"

    def restored_more(self, *, place: Name) -> str:
        return f"They were read and counted. To open them: stickwright open --place {self.w.name(place)}"

    def choose_file(self) -> str:
        return "Enter the backup file with its full path."

    def choose_place(self) -> str:
        return "Enter the new file with its full path."

    def full_path(self, *, typed: Name, example: Name) -> str:
        return f"Enter '{self.w.name(typed)}' with its full path, for example {self.w.name(example)}."
