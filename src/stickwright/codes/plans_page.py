"""Pages about plans: making one, looking at it, its mounts and its sheet, and comparing two."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["PlansPage"]


class PlansPage(Topic):
    """Pages about plans: making one, looking at it, its mounts and its sheet, and comparing two."""

    @abstractmethod
    def title(self) -> str:
        """Heading."""

    @abstractmethod
    def lead(self) -> str:
        """Under the heading."""

    @abstractmethod
    def plans(self) -> str:
        """Heading and caption."""

    @abstractmethod
    def plan(self) -> str:
        """Column."""

    @abstractmethod
    def number(self, *, number: int) -> str:
        """A plan by its number."""

    @abstractmethod
    def made(self) -> str:
        """Column: when."""

    @abstractmethod
    def by(self) -> str:
        """Column: by whom."""

    @abstractmethod
    def wishes(self) -> str:
        """Column."""

    @abstractmethod
    def no_wishes(self) -> str:
        """Cell and choice: there were no wishes."""

    @abstractmethod
    def choice(self, *, number: int, wishes: Text) -> str:
        """Choice: a plan with its wishes."""

    @abstractmethod
    def compare_two(self) -> str:
        """Link and heading."""

    @abstractmethod
    def compare(self) -> str:
        """Button."""

    @abstractmethod
    def make(self) -> str:
        """Button."""

    @abstractmethod
    def make_another(self) -> str:
        """Button."""

    @abstractmethod
    def what_if(self) -> str:
        """Heading that opens the wishes."""

    @abstractmethod
    def without(self) -> str:
        """Label."""

    @abstractmethod
    def without_hint(self) -> str:
        """Under the label."""

    @abstractmethod
    def keep(self) -> str:
        """Label."""

    @abstractmethod
    def keep_hint(self) -> str:
        """Under the label; the words before and after the equals sign are examples."""

    @abstractmethod
    def only_stock(self) -> str:
        """Label."""

    @abstractmethod
    def budget(self) -> str:
        """Label."""

    @abstractmethod
    def most_devices(self) -> str:
        """Label."""

    @abstractmethod
    def keep_line(self, *, typed: Name) -> str:
        """Problem."""

    @abstractmethod
    def whole_number(self) -> str:
        """Problem."""

    @abstractmethod
    def not_negative(self) -> str:
        """Problem."""

    @abstractmethod
    def making(self) -> str:
        """Heading while a plan is being made."""

    @abstractmethod
    def percent(self, *, share: int) -> str:
        """How far it is."""

    @abstractmethod
    def updates(self) -> str:
        """Under the bar."""

    @abstractmethod
    def update_now(self) -> str:
        """Link."""

    @abstractmethod
    def made_line(self, *, at: str, who: Name, version: Name, wishes: Text) -> str:
        """When and by whom the plan was made, with which version and wishes."""

    @abstractmethod
    def made_by(self, *, at: str, who: Name, version: Name) -> str:
        """The same without wishes."""

    @abstractmethod
    def again_of(self, *, plan: int) -> str:
        """The plan was worked out again from the inputs of another; a link follows this."""

    @abstractmethod
    def other_version(self, *, now: Name) -> str:
        """The plan was made by another version."""

    @abstractmethod
    def try_it(self) -> str:
        """Button: to the page on which the stick is tried and measured."""

    @abstractmethod
    def change(self) -> str:
        """Button: to the wishes for another plan."""

    @abstractmethod
    def mount_cautions(self, *, count: int) -> str:
        """Link to the cautions that stand beside the mounts."""

    @abstractmethod
    def limit(self, *, limit_share: float) -> str:
        """Beside a bar: the share that must not be passed."""

    @abstractmethod
    def records(self) -> str:
        """Heading that opens how the plan was made, its data, and working it out again."""

    @abstractmethod
    def second_best(self) -> str:
        """Before the second choice."""

    @abstractmethod
    def nearest(self) -> str:
        """No stick fits: before what comes nearest."""

    @abstractmethod
    def helps_most(self) -> str:
        """No stick fits: before what would help."""

    @abstractmethod
    def who(self) -> str:
        """Heading."""

    @abstractmethod
    def why(self) -> str:
        """Heading."""

    @abstractmethod
    def assumed(self) -> str:
        """Heading and link."""

    @abstractmethod
    def devices_in_games(self) -> str:
        """Caption."""

    @abstractmethod
    def device(self) -> str:
        """Column."""

    @abstractmethod
    def in_picture(self) -> str:
        """Column: mark in the drawing."""

    @abstractmethod
    def game_to_game(self) -> str:
        """Heading."""

    @abstractmethod
    def settings_in_games(self) -> str:
        """Caption."""

    @abstractmethod
    def setup(self) -> str:
        """Heading."""

    @abstractmethod
    def worth(self) -> str:
        """Heading that opens the score."""

    @abstractmethod
    def worth_of(self, *, action: Text) -> str:
        """The same for a screen reader, after that heading."""

    @abstractmethod
    def wiring_title(self) -> str:
        """Heading."""

    @abstractmethod
    def missing(self) -> str:
        """Bold, before what is missing."""

    @abstractmethod
    def cables(self) -> str:
        """Caption."""

    @abstractmethod
    def plugs_between(self) -> str:
        """Heading."""

    @abstractmethod
    def plug_order(self) -> str:
        """Heading."""

    @abstractmethod
    def can_do(self) -> str:
        """Heading."""

    @abstractmethod
    def directions_table(self) -> str:
        """Caption."""

    @abstractmethod
    def crossing(self) -> str:
        """Heading."""

    @abstractmethod
    def ranked(self) -> str:
        """Heading."""

    @abstractmethod
    def rank(self) -> str:
        """Column."""

    @abstractmethod
    def set_up(self) -> str:
        """Column."""

    @abstractmethod
    def more_sticks(self, *, count: int) -> str:
        """Heading that opens the rest of the list."""

    @abstractmethod
    def tuning(self) -> str:
        """Heading."""

    @abstractmethod
    def other_site(self, *, name: Name, headline: Text) -> str:
        """Heading: another control site; `headline` may be ''."""

    @abstractmethod
    def nothing_planned(self) -> str:
        """In place of the figures."""

    @abstractmethod
    def nothing_assumed(self) -> str:
        """In place of the table."""

    @abstractmethod
    def as_json(self) -> str:
        """Link."""

    @abstractmethod
    def compare_other(self) -> str:
        """Link."""

    @abstractmethod
    def work_again(self) -> str:
        """Button."""

    @abstractmethod
    def work_again_hint(self) -> str:
        """Under the button."""

    @abstractmethod
    def unread_more(self) -> str:
        """The plan was kept by another version."""

    @abstractmethod
    def caution(self) -> str:
        """Before a caution, bold."""

    @abstractmethod
    def mounts(self) -> str:
        """Heading."""

    @abstractmethod
    def mounts_need_plan(self) -> str:
        """There is no plan yet."""

    @abstractmethod
    def mounts_need_room(self) -> str:
        """Seating and environment were not entered."""

    @abstractmethod
    def enter_room(self) -> str:
        """Button."""

    @abstractmethod
    def from_plan(self, *, plan: int) -> str:
        """Link to the plan that the page belongs to."""

    @abstractmethod
    def mounts_lead(self) -> str:
        """After the link."""

    @abstractmethod
    def scene(self) -> str:
        """Link."""

    @abstractmethod
    def drawings(self) -> str:
        """Link."""

    @abstractmethod
    def sheet(self) -> str:
        """Heading."""

    @abstractmethod
    def sheet_needs_plan(self) -> str:
        """There is no plan yet."""

    @abstractmethod
    def sheet_pages(self, *, count: int) -> str:
        """After the link to the plan."""

    @abstractmethod
    def download_sheet(self) -> str:
        """Button."""

    @abstractmethod
    def family_language(self) -> str:
        """In front of the languages that the family's pages of the sheet can be printed in."""

    @abstractmethod
    def sheet_test(self) -> str:
        """Under the button: how to test the sheet."""

    @abstractmethod
    def page_of(self, *, page: int, count: int) -> str:
        """What a picture of a page shows, for a screen reader."""

    @abstractmethod
    def need_two(self, *, count: int) -> str:
        """Fewer than two plans can be compared."""

    @abstractmethod
    def first(self) -> str:
        """Label."""

    @abstractmethod
    def second(self) -> str:
        """Label."""

    @abstractmethod
    def why_differ(self) -> str:
        """Heading."""

    @abstractmethod
    def who_does(self) -> str:
        """Caption."""

    @abstractmethod
    def sticks_and_mounts(self) -> str:
        """Caption."""

    @abstractmethod
    def item(self) -> str:
        """Column."""

    @abstractmethod
    def same(self) -> str:
        """Column."""

    @abstractmethod
    def differs(self, *, yes: bool) -> str:
        """Cell of that column."""

    @abstractmethod
    def player_decides(self) -> str:
        """Under the tables."""
