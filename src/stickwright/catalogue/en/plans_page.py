"""Pages about plans: making one, looking at it, its mounts and its sheet, and comparing two; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.plans_page import PlansPage

__all__ = ["Texts"]


class Texts(PlansPage):
    """Pages about plans: making one, looking at it, its mounts and its sheet, and comparing two."""

    w: English

    def title(self) -> str:
        return "Plan"

    def lead(self) -> str:
        return (
            "The plan is worked out from everything entered and measured: which stick at which control site, who "
            "does what, wiring, mounting, tuning, and the reasons."
        )

    def plans(self) -> str:
        return "Plans of this visit"

    def plan(self) -> str:
        return "Plan"

    def number(self, *, number: int) -> str:
        return f"Plan {self.w.whole(number)}"

    def made(self) -> str:
        return "Made"

    def by(self) -> str:
        return "By"

    def wishes(self) -> str:
        return "Wishes"

    def no_wishes(self) -> str:
        return "none"

    def choice(self, *, number: int, wishes: Text) -> str:
        return f"plan {self.w.whole(number)}: wishes {self.say(wishes)}"

    def compare_two(self) -> str:
        return "Compare two plans"

    def compare(self) -> str:
        return "Compare"

    def make(self) -> str:
        return "Make the plan"

    def make_another(self) -> str:
        return "Make another plan"

    def what_if(self) -> str:
        return "What if: wishes for this plan"

    def without(self) -> str:
        return "Do without"

    def without_hint(self) -> str:
        return "Sticks, switches, control sites, sockets or helpers: one on each line."

    def keep(self) -> str:
        return "Keep unchanged"

    def keep_hint(self) -> str:
        return "What = where, one on each line. For example: look = chin, or chin = larch."

    def only_stock(self) -> str:
        return "Only what is in stock"

    def budget(self) -> str:
        return "Maximum cost"

    def most_devices(self) -> str:
        return "Maximum number of devices"

    def keep_line(self, *, typed: Name) -> str:
        return f"'{self.w.name(typed)}' needs an equals sign between what and where. For example: look = chin."

    def whole_number(self) -> str:
        return "Enter a whole number."

    def not_negative(self) -> str:
        return "Enter a number, 0 or more."

    def making(self) -> str:
        return "Making the plan"

    def percent(self, *, share: int) -> str:
        return f"{self.w.whole(share)}%"

    def updates(self) -> str:
        return "This page updates automatically."

    def update_now(self) -> str:
        return "Update now"

    def made_line(self, *, at: str, who: Name, version: Name, wishes: Text) -> str:
        return (
            f"Made {self.w.moment(at)} by {self.w.name(who)} with stickwright {self.w.name(version)}. Wishes: "
            f"{self.clause(wishes)}."
        )

    def made_by(self, *, at: str, who: Name, version: Name) -> str:
        return f"Made {self.w.moment(at)} by {self.w.name(who)} with stickwright {self.w.name(version)}."

    def again_of(self, *, plan: int) -> str:
        return f"Worked out again from the inputs of plan {self.w.whole(plan)}."

    def other_version(self, *, now: Name) -> str:
        return (
            f"This is stickwright {self.w.name(now)}; the plan was made by another version. It is shown as it was "
            "kept. Nothing was calculated again."
        )

    def try_it(self) -> str:
        return "Try it"

    def change(self) -> str:
        return "Change something"

    def mount_cautions(self, *, count: int) -> str:
        return f"{count} {self.w.plural(count, one='caution', other='cautions')} for the mounts"

    def limit(self, *, limit_share: float) -> str:
        return f"limit {self.w.share(limit_share)}"

    def records(self) -> str:
        return "About this plan"

    def second_best(self) -> str:
        return "Second choice:"

    def nearest(self) -> str:
        return "Closest:"

    def helps_most(self) -> str:
        return "What would help most:"

    def who(self) -> str:
        return "Controls at a glance"

    def why(self) -> str:
        return "Reasons"

    def assumed(self) -> str:
        return "Assumed, not measured"

    def devices_in_games(self) -> str:
        return "Each device in each game"

    def device(self) -> str:
        return "Device"

    def in_picture(self) -> str:
        return "In the drawing"

    def game_to_game(self) -> str:
        return "Changes between games"

    def settings_in_games(self) -> str:
        return "Settings in each game"

    def setup(self) -> str:
        return "Set it up"

    def worth(self) -> str:
        return "Score and second choice"

    def worth_of(self, *, action: Text) -> str:
        return f"for {self.say(action)}"

    def wiring_title(self) -> str:
        return "Wiring and parts"

    def missing(self) -> str:
        return "Missing:"

    def cables(self) -> str:
        return "Cables"

    def plugs_between(self) -> str:
        return "Changes of plugs between games"

    def plug_order(self) -> str:
        return "Plug in and test in this order"

    def can_do(self) -> str:
        return "What the player can do"

    def directions_table(self) -> str:
        return "By direction"

    def crossing(self) -> str:
        return "The player's force and the sticks"

    def ranked(self) -> str:
        return "Sticks in order of rank"

    def rank(self) -> str:
        return "Rank"

    def set_up(self) -> str:
        return "Set-up"

    def more_sticks(self, *, count: int) -> str:
        return f"{self.w.whole(count)} more {self.w.plural(count, one='stick', other='sticks')}, none suitable"

    def tuning(self) -> str:
        return "Tuning"

    def other_site(self, *, name: Name, headline: Text) -> str:
        told = self.say(headline)
        return f"Other control site: {self.w.name(name)}{': ' + told if told else ''}"

    def nothing_planned(self) -> str:
        return "Nothing could be planned yet."

    def nothing_assumed(self) -> str:
        return "Everything was measured."

    def as_json(self) -> str:
        return "Download as JSON"

    def compare_other(self) -> str:
        return "Compare with another plan"

    def work_again(self) -> str:
        return "Work it out again"

    def work_again_hint(self) -> str:
        return (
            "Makes a new plan from the same readings, kit, wishes and seed, and shows the differences. This plan "
            "is kept."
        )

    def unread_more(self) -> str:
        return (
            "The plan can be downloaded as it was kept. For sheet and drawings, make a new plan from the same inputs."
        )

    def caution(self) -> str:
        return "Caution."

    def mounts(self) -> str:
        return "Mounts"

    def mounts_need_plan(self) -> str:
        return "Mounts come from the plan."

    def mounts_need_room(self) -> str:
        return "Enter seating and environment to plan the mounts."

    def enter_room(self) -> str:
        return "Enter seating and environment"

    def from_plan(self, *, plan: int) -> str:
        return f"From plan {self.w.whole(plan)}"

    def mounts_lead(self) -> str:
        return "Dimensions start from fixed points, so that a family can find them again."

    def scene(self) -> str:
        return "View the room in 3-D (new window)"

    def drawings(self) -> str:
        return "Workshop drawings (DXF)"

    def sheet(self) -> str:
        return "Sheet"

    def sheet_needs_plan(self) -> str:
        return "The sheet is made from a plan."

    def sheet_pages(self, *, count: int) -> str:
        return (
            f"{self.w.whole(count)} {self.w.plural(count, one='page', other='pages')}; the first is for whoever "
            "sets up tonight."
        )

    def download_sheet(self) -> str:
        return "Download the PDF to print"

    def family_language(self) -> str:
        return "Language of the family's pages:"

    def sheet_test(self) -> str:
        return (
            "To test the sheet, ask somebody else to set up from it without your help. It passes if they need "
            "less than ten minutes and are within 5 mm and 5° (closer where the page on the mount says so)."
        )

    def page_of(self, *, page: int, count: int) -> str:
        return (
            f"Page {self.w.whole(page)} of {self.w.whole(count)} of the sheet. The page of the plan has the same "
            "as text."
        )

    def need_two(self, *, count: int) -> str:
        return "There is only one plan yet." if count else "There is no plan yet."

    def first(self) -> str:
        return "First"

    def second(self) -> str:
        return "Second"

    def why_differ(self) -> str:
        return "Why they may differ"

    def who_does(self) -> str:
        return "Control layout"

    def sticks_and_mounts(self) -> str:
        return "Sticks and mounts"

    def item(self) -> str:
        return "Item"

    def same(self) -> str:
        return "Same?"

    def differs(self, *, yes: bool) -> str:
        return "differs" if yes else "same"

    def player_decides(self) -> str:
        return "If the figures and the player disagree, the player decides."
