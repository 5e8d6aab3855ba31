"""The page 'Measure' and the page of a running task: fixed words and problems; in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.measure_page import MeasurePage
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]


class Texts(MeasurePage):
    """The page 'Measure' and the page of a running task: fixed words and problems."""

    w: English

    def title(self) -> str:
        return "Measure"

    def no_site(self) -> str:
        return "Add a control site first."

    def add_site(self) -> str:
        return "Add a control site"

    def lead(self) -> str:
        return (
            "You can stop, shorten or repeat every task at any time; what was recorded is kept. Limit testing to "
            "20 minutes."
        )

    def site(self) -> str:
        return "Control site"

    def stick(self) -> str:
        return "Stick"

    def topper(self) -> str:
        return "Topper"

    def extension(self) -> str:
        return "Shaft extension"

    def state(self) -> str:
        return "State of the player"

    def source(self) -> str:
        return "Read the stick with"

    def tuned(self) -> str:
        return "Offer the tuning of the latest plan"

    def tuned_hint(self) -> str:
        return (
            "The recording is not affected. The tuned position is shown beside it, with the delay that the tuning adds."
        )

    def how(self) -> str:
        return "Task options"

    def short(self) -> str:
        return "Short version, for a player who is nearly tired"

    def directions(self) -> str:
        return "Directions to push"

    def direction_count(self, *, count: Literal["8", "4"]) -> str:
        return {"8": "eight", "4": "four"}[count]

    def levels(self) -> str:
        return "Push: also hold at 30% and 60%"

    def mapping(self) -> str:
        return "Aiming and following: the stick controls"

    def mapping_of(self, *, mapping: Literal["position", "velocity"]) -> str:
        return {"position": "the position of the cursor", "velocity": "the speed of the cursor"}[mapping]

    def by_switch(self) -> str:
        return "Aiming: select with the confirm switch, not by staying"

    def hand(self) -> str:
        return "Rest"

    def hand_of(self, *, hand: Literal["off", "resting"]) -> str:
        return {"off": "hand off the stick", "resting": "hand resting on it, as in play"}[hand]

    def way(self) -> str:
        return "Hold towards"

    def way_of(self, *, way: Literal["90", "0", "180", "270"]) -> str:
        return {"90": "forward", "0": "right", "180": "left", "270": "back"}[way]

    def choose(self) -> str:
        return "Choose a task"

    def open_task(self) -> str:
        return ": open this task"

    def about(self, *, time: Text, short: Text) -> str:
        return f"about {self.say(time)}, short version {self.say(short)}"

    def recorded(self) -> str:
        return "Recordings of this visit"

    def samples(self, *, count: int) -> str:
        return f"{self.w.whole(count)} {self.w.plural(count, one='sample', other='samples')}"

    def simulated(self) -> str:
        return "simulated player"

    def simulated_more(self) -> str:
        return ": used only in the plan of an invented player"

    def excluded(self) -> str:
        return "excluded"

    def exclude(self) -> str:
        return "Exclude"

    def include(self) -> str:
        return "Include again"

    def compare(self) -> str:
        return "Compare two recordings of one task"

    def before(self) -> str:
        return "Before"

    def after(self) -> str:
        return "After"

    def compare_button(self) -> str:
        return "Compare"

    def back(self) -> str:
        return "Back to measuring"

    def figures(self) -> str:
        return "Figures with 95% intervals"

    def figure(self) -> str:
        return "Figure"

    def difference(self) -> str:
        return "Difference"

    def no_script(self) -> str:
        return (
            "Live measuring needs JavaScript, because this page reads and draws the stick. You can enter "
            "readings without it."
        )

    def stop(self) -> str:
        return "Stop"

    def stop_key(self) -> str:
        return "The Esc key also stops."

    def start(self) -> str:
        return "Start"

    def resume(self) -> str:
        return "Resume"

    def next_step(self) -> str:
        return "Next step"

    def repeat(self) -> str:
        return "Repeat this step"

    def shorten(self) -> str:
        return "Shorten"

    def show_tuned(self) -> str:
        return "Show the tuned stick (ochre dot)"

    def stick_title(self) -> str:
        return "Stick"

    def sticks(self) -> str:
        return "Connected sticks"

    def what_happened(self) -> str:
        return "Messages"

    def asked(self, *, site: Name, stick: Name, time: Text, watch: Text) -> str:
        on = f", {self.w.name(stick)}" if stick else ""
        return f"{self.w.name(site)}{on}. About {self.clause(time)}. {self.say(watch)}"

    def results(self) -> str:
        return "Results so far"

    def results_table(self) -> str:
        return "Figures so far"

    def figure_interval(self) -> str:
        return "Figure, 95% interval"

    def sufficient(self) -> str:
        return "Sufficient?"

    def unknown_site(self) -> str:
        return "Choose a control site of this visit. You can add one on the page 'Control sites'."

    def unknown_source(self) -> str:
        return "Choose this page, this computer, a simulated player or a recording."

    def unknown_state(self, *, site: Name) -> str:
        return f"Choose a state of {self.w.name(site)}. You can add one on the page of the control site."

    def no_tuning(self, *, site: Name, stick: Name) -> str:
        on = f" on {self.w.name(stick)}" if stick else ""
        return (
            f"There is no tuning for {self.w.name(site)}{on}. Record rest, edge and pushes on it, make the plan and come back; "
            "or measure without."
        )

    def bad_tuning(self, *, fault: Text) -> str:
        return f"The tuning has a fault: {self.clause(fault)}. Fix it and record again, or measure without."

    def nothing_to_replay(self, *, task: Text, have: tuple[Name, ...]) -> str:
        known = f" This visit has {self.w.names(have)}." if have else ""
        return (
            f"There is no recording of the task '{self.say(task)}' on this stick.{known} Choose another task or stick."
        )

    def not_comparable(self) -> str:
        return "Choose two recordings of the same task."

    def too_many_tasks(self, *, most: int) -> str:
        return f"{self.w.whole(most)} tasks are open. Close a window in which something is measured."

    def message_too_long(self) -> str:
        return "The page sent a message that is too long."
