"""What the command line says while it works and when it has finished; help texts are in ``commands.txt``; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.terminal import Doing, FileKind, Terminal

__all__ = ["Texts"]

_DOING: dict[Doing, str] = {
    "reading_case": "reading the case",
    "drawing_sheet": "drawing the sheet",
    "drawing_figures": "drawing figures",
    "reading_recording": "reading the recording",
    "analysing": "analysing the recording",
}
_KINDS: dict[FileKind, str] = {
    "sheet": "Sheet",
    "scene": "Mounts in 3-D",
    "data": "All data",
    "drawings": "Drawings",
    "drawing": "Drawing",
    "bench": "Force against travel",
}


class Texts(Terminal):
    """What the command line says while it works and when it has finished; help texts are in ``commands.txt``."""

    w: English

    def problems(self, *, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='problem', other='problems')} to fix:"

    def stopped(self) -> str:
        return "Stopped. Nothing was written."

    def file_fault(self, *, file: Name, fault: Name) -> str:
        return (
            f"{self.w.name(file)}: {self.w.name(fault)}. Choose another file or make this one accessible, then "
            "try again."
        )

    def some_file(self) -> str:
        return "a file"

    def our_fault(self, *, report: Name) -> str:
        return (
            "This is a fault in the program, not your mistake. Nothing was lost; your files have not been "
            f"changed. The report is in {self.w.name(report)}"
        )

    def doing(self, *, what: Doing) -> str:
        return _DOING[what]

    def file(self, *, kind: FileKind, path: Name) -> str:
        return f"{_KINDS[kind]}: {self.w.name(path)}"

    def no_problems(self, *, case: Name, queries: int) -> str:
        look = f", {self.w.whole(queries)} to check" if queries else ""
        return f"{self.w.name(case)}: no problems{look}. Next: stickwright plan {self.w.name(case)}"

    def games_next(self) -> str:
        return "Actions of one type: stickwright games racing. To start from it: stickwright new CASE --game racing"

    def games_source(self) -> str:
        return "Usual figures from general knowledge, without a source: correct them with what you observe."

    def wrote(self, *, path: Name) -> str:
        return f"wrote {self.w.name(path)}"

    def fill_in(self, *, case: Name) -> str:
        return (
            "Fill in player.toml, kit.toml, game.toml, hub.toml and room.toml, then: stickwright check "
            f"{self.w.name(case)}"
        )

    def renewed(self, *, old: Name, case: Name, left_out: int) -> str:
        return (
            f"Copied {self.w.name(old)}. Entries no longer used and left out: {self.w.whole(left_out)}. Next: "
            f"stickwright check {self.w.name(case)}"
        )

    def what_if(self, *, wishes: Text) -> str:
        return f"WHAT IF: {self.say(wishes)}"

    def added_to_kit(self, *, stick: Name, kit: Name) -> str:
        return f"{self.w.name(stick)} was added to {self.w.name(kit)}"

    def readings_copied(self, *, path: Name) -> str:
        return f"The readings were copied to {self.w.name(path)}"

    def opened(self, *, address: Name) -> str:
        return f"stickwright is open at {self.w.name(address)}"

    def start_code(self, *, code: Name) -> str:
        return f"Start code for the first account: {self.w.name(code)}"

    def until(self) -> str:
        return "The address works on this computer only, until you stop the app here with Ctrl-C."

    def closed(self) -> str:
        return "Closed. Everything that was saved is kept."

    def port(self, *, typed: Name) -> str:
        return f"{self.w.name(typed)} is out of range. Give a port from 0 to 65535."

    def port_taken(self, *, port: Name, fault: Name) -> str:
        return (
            f"Port {self.w.name(port)} cannot be used ({self.w.name(fault)}). Leave out --port: the app then "
            "takes one that is free."
        )

    def in_use(self) -> str:
        return (
            "These records are open already. Continue in that window, or stop that app first (Ctrl-C where it "
            "was started)."
        )

    def unwritable(self, *, fault: Name) -> str:
        return (
            f"Nothing can be written in this folder ({self.w.name(fault)}). Name a file elsewhere with --place, "
            "or have the permissions of the folder changed."
        )

    def server_place(self) -> str:
        return "This is the address of a server. Add --team for records on a server."

    def is_folder(self) -> str:
        return "This is a folder. Name a file in it, for example records.db."

    def not_records(self) -> str:
        return "This is not a records file of stickwright. It has not been changed. Name another file."

    def encrypted(self) -> str:
        return "These records are encrypted. Leave out --practice to open them, or name another file."

    def team_place(self, *, nothing: bool) -> str:
        told = (
            "Give the address of the team's server"
            if nothing
            else "This is not the address of a PostgreSQL server. Give one"
        )
        return f"{told} such as postgresql+psycopg://USER@HOST/NAME."

    def one_of_two(self, *, other: Name) -> str:
        return f"This cannot be combined with {self.w.name(other)}."

    def own_sheet(self) -> str:
        return (
            "This is the sheet of the case itself. Give the what-if another name, or leave out --pdf: it is then "
            "written to sheet-what-if.pdf."
        )

    def keep(self, *, typed: Name) -> str:
        return f"{self.w.name(typed)} needs an equals sign between what and where. For example: --keep 'look=chin'."

    def height_range(self, *, typed: Name) -> str:
        return f"{self.w.name(typed)} is out of range. Give 2 to 500 mm, from the pivot to the contact point."

    def no_height(self) -> str:
        return (
            "The height of the contact point above the pivot is missing. Add a column height_mm, or for example "
            "--height-mm 16."
        )

    def only(self, *, typed: Name) -> str:
        return f"{self.w.name(typed)} needs a column and a cell, as in --only person=4."

    def no_down(self) -> str:
        return "Name the cell that stands for a press, as in --down 0."

    def columns_missing(self, *, names: tuple[Name, ...]) -> str:
        return (
            f"Add {self.w.names(names)}. A table of movements needs start, target and selection; if the start was "
            "not recorded, name the target before as the start."
        )

    def columns(self) -> str:
        return "columns"

    def no_path(self) -> str:
        return "A table has no path to draw. Leave out --svg."
