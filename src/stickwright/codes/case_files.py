"""The folder of a case: what is missing in it, what stands in for it, and what cannot be written there."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["CaseFiles"]


class CaseFiles(Topic):
    """Sentences for notes and remedies, noun phrases for what was found and expected; files by their names."""

    @abstractmethod
    def begun(self) -> str:
        """Comment in a player's file in which nothing has been entered yet."""

    @abstractmethod
    def no_game(self) -> str:
        """Note: no game was given."""

    @abstractmethod
    def no_hub(self) -> str:
        """Note: no hub was given."""

    @abstractmethod
    def no_room(self) -> str:
        """Note: no seating and environment was given."""

    @abstractmethod
    def no_bench(self, *, typed: Name) -> str:
        """Query: the bench readings of a stick are named, in quotes, but not there."""

    @abstractmethod
    def usual_actions(self, *, file: Name, archetype: Name) -> str:
        """Note: a game without actions has those usual for its type."""

    @abstractmethod
    def no_actions(self, *, file: Name, table: Text) -> str:
        """Query: a game has neither actions nor a type that has usual ones; the table that an action is."""

    @abstractmethod
    def not_read(self, *, file: Name, first: Name, last: Name) -> str:
        """Query: a file looks like a further game and is called otherwise than those are."""

    @abstractmethod
    def no_first_game(self) -> str:
        """A further game is there and the first is not."""

    @abstractmethod
    def first_game(self) -> str:
        """The file of the first game."""

    @abstractmethod
    def date_of_plan(self) -> str:
        """Where: the date on which a plan is made."""

    @abstractmethod
    def file_of_name(self) -> str:
        """Found: a file where a folder is to be made."""

    @abstractmethod
    def folder_to_make(self) -> str:
        """Expected: a name for a folder."""

    @abstractmethod
    def there(self, *, names: tuple[Name, ...]) -> str:
        """Found: files that are in a folder already."""

    @abstractmethod
    def recordings(self, *, made: int, listed: int) -> str:
        """Found: recordings of a site, and how many its file lists."""

    @abstractmethod
    def one_each(self, *, table: Name) -> str:
        """Expected: as many recordings as tables for them."""

    @abstractmethod
    def twice(self, *, typed: Name) -> str:
        """Found: a name, in quotes, that stands there twice."""

    @abstractmethod
    def file_each(self) -> str:
        """Expected: files of their own."""

    @abstractmethod
    def of_site(self, *, site: Name | None) -> str:
        """Found: a recording of a site that the player does not have."""

    @abstractmethod
    def site_of_player(self, *, names: tuple[Name, ...]) -> str:
        """Expected: one of the sites of the player."""

    @abstractmethod
    def nothing_at(self, *, place: Name) -> str:
        """Found: a place in a file at which nothing stands, by its keys and numbers."""

    @abstractmethod
    def table_there(self) -> str:
        """Expected: a place at which a table stands."""

    @abstractmethod
    def unchangeable(self, *, reason: Name) -> str:
        """Found: why a form cannot change a file, in the words of what reads it."""

    @abstractmethod
    def changeable(self) -> str:
        """Expected: a file that a form can change."""

    @abstractmethod
    def file(self) -> str:
        """Where: a file that has no name."""

    @abstractmethod
    def stick_there(self, *, name: Name) -> str:
        """Found: a stick that the kit has already."""

    @abstractmethod
    def new_name(self) -> str:
        """Expected: a name that the kit does not have."""

    @abstractmethod
    def new_stick(self) -> str:
        """Where: a stick that is to be added."""

    @abstractmethod
    def sticks_in_list(self) -> str:
        """Found: how sticks are written in a kit."""

    @abstractmethod
    def table_each(self) -> str:
        """Expected: how they are to be written."""

    @abstractmethod
    def rewrite(self) -> str:
        """Sentence: about them."""

    @abstractmethod
    def readings_there(self, *, file: Name) -> str:
        """Found: other readings have that name in the case."""

    @abstractmethod
    def free_name(self) -> str:
        """Expected: a name that nothing has."""

    @abstractmethod
    def not_here(self) -> str:
        """Expected: a file of another case is to be deleted."""

    @abstractmethod
    def benched(self, *, note: Name | None) -> str:
        """Comment in a kit above the figures of a stick that was measured on the bench; what was noted of when and by whom."""
