"""Pages with lists of tables (control sites, kit, game, hub, seating), and the form of one table."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["FileKey", "TablesPage"]

FileKey = Literal["sites", "kit", "game", "hub", "room"]


class TablesPage(Topic):
    """Pages with lists of tables (control sites, kit, game, hub, seating), and the form of one table."""

    @abstractmethod
    def title(self, *, file: FileKey) -> str:
        """Heading of the page."""

    @abstractmethod
    def about(self, *, file: FileKey) -> str:
        """Under the heading."""

    @abstractmethod
    def game_of(self, *, name: Name) -> str:
        """Heading of the page of one game, where there are several."""

    @abstractmethod
    def game_number(self, *, number: int) -> str:
        """A game without a name."""

    @abstractmethod
    def shelf(self) -> str:
        """Notice: the visit uses the common kit."""

    @abstractmethod
    def change_shelf(self) -> str:
        """Link."""

    @abstractmethod
    def loans(self) -> str:
        """Link."""

    @abstractmethod
    def loans_more(self) -> str:
        """After the link."""

    @abstractmethod
    def own_kit(self) -> str:
        """Button."""

    @abstractmethod
    def own_kit_done(self) -> str:
        """Message."""

    @abstractmethod
    def games(self) -> str:
        """Heading and caption."""

    @abstractmethod
    def games_more(self) -> str:
        """Under the heading."""

    @abstractmethod
    def game(self) -> str:
        """Column."""

    @abstractmethod
    def hours(self) -> str:
        """Column."""

    @abstractmethod
    def hours_a_week(self, *, hours: Name) -> str:
        """Cell."""

    @abstractmethod
    def actions(self) -> str:
        """Column: how many."""

    @abstractmethod
    def usual_title(self) -> str:
        """Heading."""

    @abstractmethod
    def kind(self) -> str:
        """Label."""

    @abstractmethod
    def usual_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def kind_none(self) -> str:
        """Choice."""

    @abstractmethod
    def add_usual(self) -> str:
        """Button."""

    @abstractmethod
    def usual_added(self, *, kind: Text) -> str:
        """Message."""

    @abstractmethod
    def general(self) -> str:
        """Heading of the fields that belong to no list."""

    @abstractmethod
    def edit(self) -> str:
        """Button."""

    @abstractmethod
    def edit_general(self) -> str:
        """The same for a screen reader, after 'Edit'."""

    @abstractmethod
    def delete_game(self) -> str:
        """Button."""

    @abstractmethod
    def add_game_title(self) -> str:
        """Heading of the form."""

    @abstractmethod
    def game_name(self) -> str:
        """Label."""

    @abstractmethod
    def game_name_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def add_game(self) -> str:
        """Button."""

    @abstractmethod
    def game_added(self, *, name: Name) -> str:
        """Message."""

    @abstractmethod
    def game_deleted(self, *, name: Name) -> str:
        """Message."""

    @abstractmethod
    def most_games(self, *, most: int) -> str:
        """Problem."""

    @abstractmethod
    def no_game_name(self, *, most: int) -> str:
        """Problem."""

    @abstractmethod
    def game_name_taken(self, *, name: Name) -> str:
        """Problem."""

    @abstractmethod
    def files(self) -> str:
        """Link."""

    @abstractmethod
    def files_more(self) -> str:
        """After the link."""

    @abstractmethod
    def kit_figure(self) -> str:
        """Under the drawing of all sticks."""

    @abstractmethod
    def save_and_add(self) -> str:
        """Button: save, and go on to the lists inside this table."""

    @abstractmethod
    def more(self) -> str:
        """Heading that opens the fields that are asked less often."""

    @abstractmethod
    def bench(self) -> str:
        """Heading of the drawing of bench readings."""

    @abstractmethod
    def bench_no_height(self) -> str:
        """In place of the drawing."""

    @abstractmethod
    def bench_refused(self, *, why: Text) -> str:
        """In place of the drawing."""

    @abstractmethod
    def readings(self) -> str:
        """Link."""

    @abstractmethod
    def recordings(self) -> str:
        """Link."""

    @abstractmethod
    def saved(self, *, what: Text) -> str:
        """Message."""

    @abstractmethod
    def deleted(self, *, what: Text) -> str:
        """Message."""

    @abstractmethod
    def inside(self, *, outer: Text, inner: Text) -> str:
        """A table inside of another."""

    @abstractmethod
    def unreadable(self, *, why: Text) -> str:
        """Problem: a file cannot be read."""

    @abstractmethod
    def no_kit(self) -> str:
        """Problem: there is no kit."""

    @abstractmethod
    def entry(self, *, table: str) -> str:
        """An entry of one kind, with the page on which it is made: where a sentence names a table of a file."""

    @abstractmethod
    def problems(self) -> str:
        """Heading above problems that stop a plan."""

    @abstractmethod
    def queries(self) -> str:
        """Heading above what should be looked at."""

    @abstractmethod
    def notes(self, *, count: int) -> str:
        """Heading that opens further notes."""
