"""What is wrong with the place where records are kept, with a backup or a passphrase."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["RecordsFile"]


class RecordsFile(Topic):
    """Found and expected have no full stop; remedies are sentences."""

    @abstractmethod
    def address(self) -> str:
        """Where: the address of the records."""

    @abstractmethod
    def no_address(self) -> str:
        """Found: a text that is no address of a server."""

    @abstractmethod
    def an_address(self) -> str:
        """Expected: the form of an address."""

    @abstractmethod
    def correct_address(self) -> str:
        """Remedy: correct the address."""

    @abstractmethod
    def no_driver(self) -> str:
        """Found: the library for PostgreSQL is not installed."""

    @abstractmethod
    def the_driver(self) -> str:
        """Expected: that library."""

    @abstractmethod
    def install_driver(self) -> str:
        """Remedy: how to install it."""

    @abstractmethod
    def in_memory(self) -> str:
        """Where: records that are kept in memory until the program is closed."""

    @abstractmethod
    def database_on(self, *, database: Name, host: Name | None) -> str:
        """Where: a database on a server; None: on this computer."""

    @abstractmethod
    def busy(self) -> str:
        """Found: another window or program is writing."""

    @abstractmethod
    def free_moment(self) -> str:
        """Expected: nobody else is writing."""

    @abstractmethod
    def save_again(self) -> str:
        """Remedy: try again in a moment; what was saved before is safe."""

    @abstractmethod
    def damaged(self) -> str:
        """Found: a page of the file fails its own check."""

    @abstractmethod
    def whole_records(self) -> str:
        """Expected: records that pass their own check."""

    @abstractmethod
    def keep_and_restore(self) -> str:
        """Remedy: keep the file, restore the last backup beside it."""

    @abstractmethod
    def disk_full(self) -> str:
        """Found: no room on the disk."""

    @abstractmethod
    def room_to_save(self) -> str:
        """Expected: room on the disk."""

    @abstractmethod
    def make_room(self) -> str:
        """Remedy: make room; what was saved before is safe."""

    @abstractmethod
    def read_only(self) -> str:
        """Found: the folder or file may not be written."""

    @abstractmethod
    def own_folder(self) -> str:
        """Expected: a folder of one's own."""

    @abstractmethod
    def move_records(self) -> str:
        """Remedy: move the records or ask for the right; what was saved before is safe."""

    @abstractmethod
    def disk_error(self) -> str:
        """Found: the disk itself fails."""

    @abstractmethod
    def working_disk(self) -> str:
        """Expected: a disk that works."""

    @abstractmethod
    def check_disk(self) -> str:
        """Remedy: check the disk; what was saved before is safe."""

    @abstractmethod
    def no_answer(self) -> str:
        """Found: the team's server does not answer."""

    @abstractmethod
    def working_server(self) -> str:
        """Expected: a server that answers."""

    @abstractmethod
    def check_network(self) -> str:
        """Remedy: check the network; what was saved before is safe."""

    @abstractmethod
    def open_records(self) -> str:
        """Found: records that are open in a program."""

    @abstractmethod
    def not_closed(self) -> str:
        """Found: records that are open, or were not closed."""

    @abstractmethod
    def file_there(self) -> str:
        """Found: a file of that name exists."""

    @abstractmethod
    def something_there(self) -> str:
        """Found: a file or folder of that name exists."""

    @abstractmethod
    def new_name(self) -> str:
        """Expected: a name that nothing has yet."""

    @abstractmethod
    def open_or_rename(self) -> str:
        """Remedy: open what is there, or choose another name."""

    @abstractmethod
    def rename_unchanged(self) -> str:
        """Remedy: choose another name; nothing was changed."""

    @abstractmethod
    def in_a_second(self) -> str:
        """Remedy: try again in a second."""

    @abstractmethod
    def a_passphrase(self) -> str:
        """Expected: a passphrase."""

    @abstractmethod
    def easy_passphrase(self) -> str:
        """Remedy: what makes a passphrase that is easy to remember."""

    @abstractmethod
    def passphrase_for_backup(self) -> str:
        """Expected: a passphrase for the backup."""

    @abstractmethod
    def encrypts_backup(self) -> str:
        """Remedy: enter one, the backup is encrypted with it."""

    @abstractmethod
    def passphrase_of_records(self) -> str:
        """Expected: the passphrase of these records."""

    @abstractmethod
    def enter_it(self) -> str:
        """Remedy: enter it."""

    @abstractmethod
    def given_passphrase(self) -> str:
        """Found: a passphrase was entered."""

    @abstractmethod
    def none_needed(self) -> str:
        """Expected: none, the records are not encrypted."""

    @abstractmethod
    def leave_empty(self) -> str:
        """Remedy: leave the field empty."""

    @abstractmethod
    def wrong_passphrase(self) -> str:
        """Found: a passphrase that does not open the records."""

    @abstractmethod
    def right_passphrase(self) -> str:
        """Expected: the one that they were created with."""

    @abstractmethod
    def retype_passphrase(self, *, file: Name) -> str:
        """Remedy: enter it again; what if it is right: the beginning of that file is damaged."""

    @abstractmethod
    def differs(self, *, parts: tuple[Name, ...]) -> str:
        """Found: a copy that differs from the records, in these tables or pages."""

    @abstractmethod
    def same_copy(self) -> str:
        """Expected: a copy with the same contents."""

    @abstractmethod
    def another_disk(self) -> str:
        """Remedy: try another disk."""

    @abstractmethod
    def no_file(self) -> str:
        """Found: there is no such file."""

    @abstractmethod
    def no_backup(self) -> str:
        """Found: a file that is no backup, or whose beginning is damaged."""

    @abstractmethod
    def a_backup(self) -> str:
        """Expected: a backup."""

    @abstractmethod
    def another_file(self) -> str:
        """Remedy: choose another file; nothing was restored."""

    @abstractmethod
    def close_first(self) -> str:
        """Remedy: make a backup of open records, or close them; nothing was restored."""

    @abstractmethod
    def cannot_write(self, *, reason: Name | None) -> str:
        """Found: a place that cannot be written, and why (None: not known), in the words of the operating system."""

    @abstractmethod
    def room_on_disk(self) -> str:
        """Expected: room on a disk."""

    @abstractmethod
    def damaged_backup(self, *, fault: Text | None) -> str:
        """Found: a damaged backup, and what of it (None: not known)."""

    @abstractmethod
    def readable_backup(self) -> str:
        """Expected: a backup that can be read from end to end."""

    @abstractmethod
    def earlier_backup(self) -> str:
        """Remedy: use an earlier backup; nothing was restored."""

    @abstractmethod
    def other_contents(self) -> str:
        """A fault of a backup: it no longer holds what it did."""

    @abstractmethod
    def fault_of_version(self, *, number: int) -> str:
        """A fault of a backup: a version of a file."""

    @abstractmethod
    def fault_of_plan(self, *, number: int) -> str:
        """A fault of a backup: a plan."""

    @abstractmethod
    def fault_of_recording(self, *, number: int, first: int) -> str:
        """A fault of a backup: a recording, from that sample on."""

    @abstractmethod
    def records_there(self) -> str:
        """Found: the server has records already."""

    @abstractmethod
    def empty_server(self) -> str:
        """Expected: a server without records."""

    @abstractmethod
    def ask_for_database(self) -> str:
        """Remedy: ask for an empty database; nothing was changed."""

    @abstractmethod
    def cannot_use(self, *, reason: Name) -> str:
        """Found: a place that cannot be used, and why, in the words of the operating system."""

    @abstractmethod
    def another_folder(self) -> str:
        """Remedy: choose another folder."""

    @abstractmethod
    def room_for_records(self) -> str:
        """Expected: room for the records."""

    @abstractmethod
    def empty_bin(self) -> str:
        """Remedy: empty the bin and try again."""

    @abstractmethod
    def newer(self, *, schema: Name) -> str:
        """Found: records of a newer version of the program, by the name of their schema."""

    @abstractmethod
    def older_schema(self, *, schema: Name) -> str:
        """Expected: that schema or an older one."""

    @abstractmethod
    def install_newer(self) -> str:
        """Remedy: install the newer version; nothing was changed."""

    @abstractmethod
    def other_program(self, *, tables: tuple[Name, ...]) -> str:
        """Found: tables of another program."""

    @abstractmethod
    def empty_or_records(self) -> str:
        """Expected: an empty database, or records."""

    @abstractmethod
    def another_database(self) -> str:
        """Remedy: choose another database; nothing was changed."""

    @abstractmethod
    def no_records(self) -> str:
        """Found: there are no records."""

    @abstractmethod
    def a_records_file(self) -> str:
        """Expected: a file of records."""

    @abstractmethod
    def create_or_choose(self) -> str:
        """Remedy: create new records, or choose the file."""

    @abstractmethod
    def not_ours(self) -> str:
        """Found: a file of another program, or one whose beginning is damaged."""

    @abstractmethod
    def another_or_restore(self) -> str:
        """Remedy: choose another file, or restore the last backup; nothing was changed."""

    @abstractmethod
    def not_encrypted(self) -> str:
        """Found: records that are not encrypted."""

    @abstractmethod
    def encrypted(self) -> str:
        """Expected: encrypted records."""

    @abstractmethod
    def create_encrypted(self) -> str:
        """Remedy: create encrypted records, then import."""

    @abstractmethod
    def still_read(self) -> str:
        """Found: another window or program is reading."""

    @abstractmethod
    def not_shared(self) -> str:
        """Expected: a file that nobody else has open."""

    @abstractmethod
    def changed_bytes(self) -> str:
        """Found: other contents than were saved."""

    @abstractmethod
    def saved_bytes(self) -> str:
        """Expected: what was saved."""

    @abstractmethod
    def restore_backup(self) -> str:
        """Remedy: restore the last backup beside these records."""

    @abstractmethod
    def restore_recording(self) -> str:
        """Remedy: restore the last backup beside these records; the rest can still be read."""

    @abstractmethod
    def version_of(self, *, file: Name, number: int) -> str:
        """Where: a version of a file."""

    @abstractmethod
    def plan_of(self, *, number: int) -> str:
        """Where: a plan."""

    @abstractmethod
    def recording_of(self, *, number: int, first: int) -> str:
        """Where: a recording, from that sample on."""
