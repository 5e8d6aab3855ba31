"""What is wrong with the place where records are kept, with a backup or a passphrase, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.records_file import RecordsFile

__all__ = ["Texts"]

_NOTHING_LOST = "Everything that was saved before is safe."


class Texts(RecordsFile):
    """Found and expected have no full stop; remedies are sentences."""

    w: English

    def address(self) -> str:
        return "address of the records"

    def no_address(self) -> str:
        return "text that is not an address"

    def an_address(self) -> str:
        return "postgresql://name@host/records"

    def correct_address(self) -> str:
        return "Correct it."

    def no_driver(self) -> str:
        return "no driver for PostgreSQL on this computer"

    def the_driver(self) -> str:
        return "the driver"

    def install_driver(self) -> str:
        return 'Install it: pip install "stickwright[team]".'

    def in_memory(self) -> str:
        return "the memory of this session"

    def database_on(self, *, database: Name, host: Name | None) -> str:
        return f"{self.w.name(database)} on {self.w.name(host) if host is not None else 'this computer'}"

    def busy(self) -> str:
        return "another window or program still writing to it"

    def free_moment(self) -> str:
        return "records that nobody else is writing to"

    def save_again(self) -> str:
        return f"Save again in a moment, and close stickwright if it is open a second time. {_NOTHING_LOST}"

    def damaged(self) -> str:
        return "a damaged part"

    def whole_records(self) -> str:
        return "records that pass their own check"

    def keep_and_restore(self) -> str:
        return "Keep this file as it is, and restore the last backup beside it."

    def disk_full(self) -> str:
        return "no space left on the disk"

    def room_to_save(self) -> str:
        return "space to save"

    def make_room(self) -> str:
        return f"Empty the bin or move large files away, then save again. {_NOTHING_LOST}"

    def read_only(self) -> str:
        return "a folder or file that cannot be written to"

    def own_folder(self) -> str:
        return "a folder of your own"

    def move_records(self) -> str:
        return (
            f"Move the records to a folder that you can write to, or ask for permission to write there. {_NOTHING_LOST}"
        )

    def disk_error(self) -> str:
        return "an error from the disk itself"

    def working_disk(self) -> str:
        return "a disk that responds"

    def check_disk(self) -> str:
        return f"Check that the disk or USB stick is still plugged in, then open the records again. {_NOTHING_LOST}"

    def no_answer(self) -> str:
        return "no response from the team's server"

    def working_server(self) -> str:
        return "a server that responds"

    def check_network(self) -> str:
        return f"Check the network, then try again. {_NOTHING_LOST}"

    def open_records(self) -> str:
        return "records that are open"

    def not_closed(self) -> str:
        return "records that are open or were not closed"

    def file_there(self) -> str:
        return "a file that already exists"

    def something_there(self) -> str:
        return "a file or folder that already exists"

    def new_name(self) -> str:
        return "a name that is not used yet"

    def open_or_rename(self) -> str:
        return "Open it, or choose another name."

    def rename_unchanged(self) -> str:
        return "Choose another name. Nothing was changed."

    def in_a_second(self) -> str:
        return "Try again in a second."

    def a_passphrase(self) -> str:
        return "a passphrase"

    def easy_passphrase(self) -> str:
        return "Three or four words in a row are easy to remember."

    def passphrase_for_backup(self) -> str:
        return "a passphrase for the backup"

    def encrypts_backup(self) -> str:
        return "Enter one. The backup is encrypted with it."

    def passphrase_of_records(self) -> str:
        return "the passphrase of these records"

    def enter_it(self) -> str:
        return "Enter it."

    def given_passphrase(self) -> str:
        return "a passphrase"

    def none_needed(self) -> str:
        return "none, as these records are not encrypted"

    def leave_empty(self) -> str:
        return "Leave it empty."

    def wrong_passphrase(self) -> str:
        return "one that does not open these records"

    def right_passphrase(self) -> str:
        return "the passphrase with which they were created"

    def retype_passphrase(self, *, file: Name) -> str:
        return (
            "Enter it again, and check capitals and keyboard language. If you are sure of it, the beginning of "
            f"{self.w.name(file)} is damaged: restore the last backup. Nothing was changed."
        )

    def differs(self, *, parts: tuple[Name, ...]) -> str:
        return f"a copy that differs from the records ({self.w.names(parts)})"

    def same_copy(self) -> str:
        return "a copy with the same contents"

    def another_disk(self) -> str:
        return "Try again on another disk or USB stick."

    def no_file(self) -> str:
        return "no file"

    def no_backup(self) -> str:
        return "a file that is not a stickwright backup, or whose beginning is damaged"

    def a_backup(self) -> str:
        return "a backup"

    def another_file(self) -> str:
        return "Choose another file. Nothing was restored."

    def close_first(self) -> str:
        return "Open them and make a backup, or close them first. Nothing was restored."

    def cannot_write(self, *, reason: Name | None) -> str:
        return (
            f"a place that cannot be written to ({self.w.name(reason) if reason is not None else 'the disk refused'})"
        )

    def room_on_disk(self) -> str:
        return "space on a disk"

    def damaged_backup(self, *, fault: Text | None) -> str:
        return f"a damaged backup{'' if fault is None else f' ({self.clause(fault)})'}"

    def readable_backup(self) -> str:
        return "a backup that can be read from end to end"

    def earlier_backup(self) -> str:
        return "Use an earlier backup. Nothing was restored."

    def other_contents(self) -> str:
        return "its contents have changed"

    def fault_of_version(self, *, number: int) -> str:
        return f"version {number} of a file"

    def fault_of_plan(self, *, number: int) -> str:
        return f"plan {number}"

    def fault_of_recording(self, *, number: int, first: int) -> str:
        return f"recording {number} from sample {self.w.whole(first)}"

    def records_there(self) -> str:
        return "records that already exist"

    def empty_server(self) -> str:
        return "a server without records"

    def ask_for_database(self) -> str:
        return "Ask for an empty database. Nothing was changed."

    def cannot_use(self, *, reason: Name) -> str:
        return f"a place that cannot be used ({self.w.name(reason)})"

    def another_folder(self) -> str:
        return "Choose another folder."

    def room_for_records(self) -> str:
        return "space for the records"

    def empty_bin(self) -> str:
        return "Empty the bin, then try again."

    def newer(self, *, schema: Name) -> str:
        return f"records of a newer stickwright (schema {self.w.name(schema)})"

    def older_schema(self, *, schema: Name) -> str:
        return f"schema {self.w.name(schema)} or older"

    def install_newer(self) -> str:
        return "Install the newer stickwright on this computer too. Nothing was changed."

    def other_program(self, *, tables: tuple[Name, ...]) -> str:
        return f"tables of another program ({self.w.names(tables)})"

    def empty_or_records(self) -> str:
        return "an empty database, or records"

    def another_database(self) -> str:
        return "Choose another database. Nothing was changed."

    def no_records(self) -> str:
        return "no records"

    def a_records_file(self) -> str:
        return "a file of records"

    def create_or_choose(self) -> str:
        return "Create new records, or choose the file."

    def not_ours(self) -> str:
        return "a file that stickwright did not create, or whose beginning is damaged"

    def another_or_restore(self) -> str:
        return "Choose another file. If these were your records, restore the last backup. Nothing was changed."

    def not_encrypted(self) -> str:
        return "records that are not encrypted"

    def encrypted(self) -> str:
        return "encrypted records"

    def create_encrypted(self) -> str:
        return "Create encrypted records, then import into them."

    def still_read(self) -> str:
        return "another window or program still reading"

    def not_shared(self) -> str:
        return "a file that nobody else has open"

    def changed_bytes(self) -> str:
        return "contents that differ from what was saved"

    def saved_bytes(self) -> str:
        return "the contents that were saved"

    def restore_backup(self) -> str:
        return "Restore the last backup beside these records."

    def restore_recording(self) -> str:
        return "Restore the last backup beside these records. The rest can still be read."

    def version_of(self, *, file: Name, number: int) -> str:
        return f"{self.w.name(file)}, version {number}"

    def plan_of(self, *, number: int) -> str:
        return f"plan {number}"

    def recording_of(self, *, number: int, first: int) -> str:
        return f"recording {number}, from sample {self.w.whole(first)}"
