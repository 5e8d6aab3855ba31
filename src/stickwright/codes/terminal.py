"""What the command line says while it works and when it has finished; help texts are in ``commands.txt``."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Doing", "FileKind", "Terminal"]

Doing = Literal["reading_case", "drawing_sheet", "drawing_figures", "reading_recording", "analysing"]
FileKind = Literal["sheet", "scene", "data", "drawings", "drawing", "bench"]


class Terminal(Topic):
    """What the command line says while it works and when it has finished; help texts are in ``commands.txt``."""

    @abstractmethod
    def problems(self, *, count: int) -> str:
        """Above a list of problems."""

    @abstractmethod
    def stopped(self) -> str:
        """Ctrl-C was pressed."""

    @abstractmethod
    def file_fault(self, *, file: Name, fault: Name) -> str:
        """The computer refuses a file; `fault` in its own words."""

    @abstractmethod
    def some_file(self) -> str:
        """In place of a file whose name is not known."""

    @abstractmethod
    def our_fault(self, *, report: Name) -> str:
        """A fault of the program."""

    @abstractmethod
    def doing(self, *, what: Doing) -> str:
        """Beside a progress bar; at most 28 letters are seen."""

    @abstractmethod
    def file(self, *, kind: FileKind, path: Name) -> str:
        """Where something was written."""

    @abstractmethod
    def no_problems(self, *, case: Name, queries: int) -> str:
        """A case has no problems; `queries`: how many things should be looked at."""

    @abstractmethod
    def games_next(self) -> str:
        """After the list of game types."""

    @abstractmethod
    def games_source(self) -> str:
        """Under the actions of game types."""

    @abstractmethod
    def wrote(self, *, path: Name) -> str:
        """A file was written."""

    @abstractmethod
    def fill_in(self, *, case: Name) -> str:
        """After the files of a new case."""

    @abstractmethod
    def renewed(self, *, old: Name, case: Name, left_out: int) -> str:
        """An older case was rewritten; so many entries are no longer used."""

    @abstractmethod
    def what_if(self, *, wishes: Text) -> str:
        """Above an answer for wishes that are not those of the case."""

    @abstractmethod
    def added_to_kit(self, *, stick: Name, kit: Name) -> str:
        """Message."""

    @abstractmethod
    def readings_copied(self, *, path: Name) -> str:
        """Message."""

    @abstractmethod
    def opened(self, *, address: Name) -> str:
        """The app is running."""

    @abstractmethod
    def start_code(self, *, code: Name) -> str:
        """The one-time code for the first account of a team."""

    @abstractmethod
    def until(self) -> str:
        """Under the address."""

    @abstractmethod
    def closed(self) -> str:
        """The app was stopped."""

    @abstractmethod
    def port(self, *, typed: Name) -> str:
        """Problem."""

    @abstractmethod
    def port_taken(self, *, port: Name, fault: Name) -> str:
        """Problem; `fault` in the computer's own words."""

    @abstractmethod
    def in_use(self) -> str:
        """Problem: the records are open in another start of the app."""

    @abstractmethod
    def unwritable(self, *, fault: Name) -> str:
        """Problem with a folder; `fault` in the computer's own words."""

    @abstractmethod
    def server_place(self) -> str:
        """Problem: an address of a server without --team."""

    @abstractmethod
    def is_folder(self) -> str:
        """Problem: a folder in place of a file."""

    @abstractmethod
    def not_records(self) -> str:
        """Problem: a file of another program."""

    @abstractmethod
    def encrypted(self) -> str:
        """Problem: real records with --practice."""

    @abstractmethod
    def team_place(self, *, nothing: bool) -> str:
        """Problem: the address of the server is missing or is no PostgreSQL address."""

    @abstractmethod
    def one_of_two(self, *, other: Name) -> str:
        """Problem: two options exclude each other."""

    @abstractmethod
    def own_sheet(self) -> str:
        """Problem: a what-if would overwrite the sheet of the case."""

    @abstractmethod
    def keep(self, *, typed: Name) -> str:
        """Problem with a wish."""

    @abstractmethod
    def height_range(self, *, typed: Name) -> str:
        """Problem with the height of the contact point."""

    @abstractmethod
    def no_height(self) -> str:
        """Problem: the height of the contact point is not given."""

    @abstractmethod
    def only(self, *, typed: Name) -> str:
        """Problem."""

    @abstractmethod
    def no_down(self) -> str:
        """Problem: an event column without the cell that means a press."""

    @abstractmethod
    def columns_missing(self, *, names: tuple[Name, ...]) -> str:
        """Problem: a table of movements needs three pairs of columns."""

    @abstractmethod
    def columns(self) -> str:
        """Where such a problem is."""

    @abstractmethod
    def no_path(self) -> str:
        """Problem: a table has nothing to draw."""
