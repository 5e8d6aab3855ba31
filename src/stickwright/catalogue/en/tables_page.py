"""Pages with lists of tables (control sites, kit, game, hub, seating), and the form of one table; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.tables_page import FileKey, TablesPage

__all__ = ["Texts"]

_TITLES: dict[FileKey, str] = {
    "sites": "Control sites",
    "kit": "Kit",
    "game": "Game",
    "hub": "Hub",
    "room": "Seating and environment",
}
_ABOUT: dict[FileKey, str] = {
    "sites": "Parts of the body that could work a stick or switch, and what is known of them. Two or three are enough to begin with.",
    "kit": "The devices to choose from.",
    "game": "What the player wants to do in the game, in the player's own words.",
    "hub": "The box that sticks and switches are plugged into, with each of its sockets.",
    "room": "How the player sits, what a mount can be fixed to, and what must stay clear. Measure from the seat reference point: "
    "the middle of the line where backrest and seat meet.",
}
_ENTRIES = {
    "site": "a control site (page 'Control sites')",
    "site.reading": "a reading (page 'Readings')",
    "site.on_stick": "the deflection reached on a stick (page 'Readings')",
    "site.rest": "a resting force (page 'Readings')",
    "site.press": "presses (page 'Readings')",
    "site.recording": "a recording (page 'Measure')",
    "stick": "a stick (page 'Kit')",
    "controller": "a controller (page 'Kit')",
    "action": "an action (page 'Game')",
    "place": "the position of a control site (page 'Seating and environment')",
    "tube": "a tube (page 'Seating and environment')",
    "surface": "a surface (page 'Seating and environment')",
    "keep_out": "an area to keep clear (page 'Seating and environment')",
    "hub": "a hub (page 'Hub')",
    "hub.socket": "a socket (page 'Hub')",
}


class Texts(TablesPage):
    """Pages with lists of tables (control sites, kit, game, hub, seating), and the form of one table."""

    w: English

    def title(self, *, file: FileKey) -> str:
        return _TITLES[file]

    def about(self, *, file: FileKey) -> str:
        return _ABOUT[file]

    def game_of(self, *, name: Name) -> str:
        return f"Game: {self.w.name(name)}"

    def game_number(self, *, number: int) -> str:
        return f"game {self.w.whole(number)}"

    def shelf(self) -> str:
        return "This is the kit on your shelf. Items on loan to others are not counted."

    def change_shelf(self) -> str:
        return "Edit the shelf"

    def loans(self) -> str:
        return "Kit on loan"

    def loans_more(self) -> str:
        return "who has what, what is overdue, lend and return."

    def own_kit(self) -> str:
        return "Use a separate kit for this visit"

    def own_kit_done(self) -> str:
        return "This visit now has its own kit."

    def games(self) -> str:
        return "Games of this visit"

    def games_more(self) -> str:
        return (
            "One set of devices and mounts serves all games. Each game counts by the hours that the player "
            "wishes to play it."
        )

    def game(self) -> str:
        return "Game"

    def hours(self) -> str:
        return "Hours wished"

    def hours_a_week(self, *, hours: Name) -> str:
        return f"{self.w.name(hours)} h a week"

    def actions(self) -> str:
        return "Actions"

    def usual_title(self) -> str:
        return "Start from a game type"

    def kind(self) -> str:
        return "Game type"

    def usual_hint(self) -> str:
        return "Adds its usual actions; edit or delete what differs."

    def kind_none(self) -> str:
        return "other: add the actions yourself"

    def add_usual(self) -> str:
        return "Add these actions"

    def usual_added(self, *, kind: Text) -> str:
        return f"Usual actions for {self.say(kind)} added. Edit what differs."

    def general(self) -> str:
        return "General"

    def edit(self) -> str:
        return "Edit"

    def edit_general(self) -> str:
        return "the general details"

    def delete_game(self) -> str:
        return "Delete this game"

    def add_game_title(self) -> str:
        return "Add another game"

    def game_name(self) -> str:
        return "Name of the game"

    def game_name_hint(self) -> str:
        return "The player's own word for it, not its title."

    def add_game(self) -> str:
        return "Add game"

    def game_added(self, *, name: Name) -> str:
        return f"{self.w.name(name)} added."

    def game_deleted(self, *, name: Name) -> str:
        return f"{self.w.name(name)} deleted."

    def most_games(self, *, most: int) -> str:
        return f"There can be at most {self.w.whole(most)} games. Delete one that is no longer played."

    def no_game_name(self, *, most: int) -> str:
        return f"Enter the player's word for the game, up to {self.w.whole(most)} characters."

    def game_name_taken(self, *, name: Name) -> str:
        return f"'{self.w.name(name)}' is the name of another game. Choose a different one."

    def files(self) -> str:
        return "Files as text"

    def files_more(self) -> str:
        return "with every earlier version."

    def kit_figure(self) -> str:
        return "Each stick from its actuation force to its force at full travel. The table of sticks has the numbers."

    def save_and_add(self) -> str:
        return "Save and add details"

    def more(self) -> str:
        return "More details"

    def bench(self) -> str:
        return "Bench readings"

    def bench_no_height(self) -> str:
        return "Enter the height of the contact point to see the bench readings."

    def bench_refused(self, *, why: Text) -> str:
        return f"The bench readings cannot be drawn. {self.say(why)}"

    def readings(self) -> str:
        return "Readings of this control site"

    def recordings(self) -> str:
        return "Recordings"

    def saved(self, *, what: Text) -> str:
        return f"{self.say(what)} saved."

    def deleted(self, *, what: Text) -> str:
        return f"{self.say(what)} deleted."

    def inside(self, *, outer: Text, inner: Text) -> str:
        return f"{self.say(outer)}: {self.say(inner)}"

    def unreadable(self, *, why: Text) -> str:
        return f"The text of this file cannot be read ({self.clause(why)}). Correct it under 'Files as text'."

    def no_kit(self) -> str:
        return "There is no kit yet. Add the sticks to choose from on the page 'Kit'."

    def entry(self, *, table: str) -> str:
        return _ENTRIES.get(table, table)

    def problems(self) -> str:
        return "Fix before making a plan"

    def queries(self) -> str:
        return "Please check"

    def notes(self, *, count: int) -> str:
        return f"{self.w.whole(count)} more {self.w.plural(count, one='note', other='notes')}"
