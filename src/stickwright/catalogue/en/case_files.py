"""The folder of a case, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.case_files import CaseFiles
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(CaseFiles):
    """Case folders."""

    w: English

    def begun(self) -> str:
        return "Control sites and readings come here as they are entered."

    def no_game(self) -> str:
        return "There is no game.toml: planned for a stick used equally in all directions."

    def no_hub(self) -> str:
        return "There is no hub.toml: controls are assigned, but no sockets are chosen and no cables are planned."

    def no_room(self) -> str:
        return "There is no room.toml: nothing is said about mounting."

    def no_bench(self, *, typed: Name) -> str:
        return (
            f"{self.w.name(typed)} is not in the case folder. The figures of the stick are used as they stand; without the readings "
            "they cannot be checked."
        )

    def usual_actions(self, *, file: Name, archetype: Name) -> str:
        kind = self.w.name(archetype)
        return (
            f"{self.w.name(file)} lists no actions: the usual ones for {kind} are used until you add your own (stickwright games {kind} "
            "shows them)."
        )

    def no_actions(self, *, file: Name, table: Text) -> str:
        return (
            f"{self.w.name(file)} lists no actions, so there is nothing to assign. Add {self.clause(table)} for each thing the "
            "player wants to do, or name one of the ten types of game that 'stickwright games' lists."
        )

    def not_read(self, *, file: Name, first: Name, last: Name) -> str:
        return f"{self.w.name(file)} is not read: games besides game.toml are called {self.w.name(first)} to {self.w.name(last)}."

    def no_first_game(self) -> str:
        return "a further game, and no game.toml"

    def first_game(self) -> str:
        return "game.toml for the first game"

    def date_of_plan(self) -> str:
        return "date of the plan"

    def file_of_name(self) -> str:
        return "a file with this name"

    def folder_to_make(self) -> str:
        return "the name of a new folder"

    def there(self, *, names: tuple[Name, ...]) -> str:
        return f"{self.w.names(names)} in it already"

    def recordings(self, *, made: int, listed: int) -> str:
        return f"{self.w.plural(made, one='1 recording', other=f'{made} recordings')} with {listed} listed"

    def one_each(self, *, table: Name) -> str:
        return f"as many recordings as [[{self.w.name(table)}]] entries"

    def twice(self, *, typed: Name) -> str:
        return f"{self.w.name(typed)} twice"

    def file_each(self) -> str:
        return "a file for each recording"

    def of_site(self, *, site: Name | None) -> str:
        return f"a recording of {'no site' if site is None else f'the site {self.w.name(site)}'}"

    def site_of_player(self, *, names: tuple[Name, ...]) -> str:
        return (
            f"a site of this player: {self.w.any_of(tuple(self.w.name(one) for one in names))}"
            if names
            else "a site of this player"
        )

    def nothing_at(self, *, place: Name) -> str:
        return f"nothing at {self.w.name(place)}"

    def table_there(self) -> str:
        return "a table that is there"

    def unchangeable(self, *, reason: Name) -> str:
        return self.w.name(reason)

    def changeable(self) -> str:
        return "a file that can be changed here"

    def file(self) -> str:
        return "file"

    def stick_there(self, *, name: Name) -> str:
        return f'a stick "{self.w.name(name)}" that is there already'

    def new_name(self) -> str:
        return "a name that is not in the kit"

    def new_stick(self) -> str:
        return "the new stick"

    def sticks_in_list(self) -> str:
        return "sticks in one list, stick = [...]"

    def table_each(self) -> str:
        return "one [[stick]] table for each stick"

    def rewrite(self) -> str:
        return "Write them that way."

    def readings_there(self, *, file: Name) -> str:
        return f"other readings in {self.w.name(file)} already"

    def free_name(self) -> str:
        return "a name that is free in the case"

    def not_here(self) -> str:
        return "no file of another case"

    def benched(self, *, note: Name | None) -> str:
        return (
            f"Benched{f' {self.w.name(note)}' if note is not None else ''}: forces at the contact point, pushing out."
        )
