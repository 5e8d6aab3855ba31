"""The page of one visit: its steps, how far each is, what to do next; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.visit_page import Counted, Needed, ReadToo, StepKey, VisitPage

__all__ = ["Texts"]

_TITLES: dict[StepKey, str] = {
    "room": "Seating and environment",
    "sites": "Control sites",
    "readings": "Readings",
    "measure": "Measure",
    "kit": "Kit",
    "game": "Game",
    "plan": "Plan",
    "mounts": "Mounts",
    "sheet": "Sheet",
}
_DOING: dict[StepKey, str] = {
    "room": "Enter seating and environment",
    "sites": "Add control sites",
    "readings": "Enter readings",
    "measure": "Measure with a stick",
    "kit": "Choose the kit",
    "game": "Enter the actions of the game",
    "plan": "Make the plan",
    "mounts": "View the mounts",
    "sheet": "Print the sheet",
}
_COUNTED: dict[Counted, tuple[str, str]] = {
    "tube": ("tube", "tubes"),
    "edge": ("edge", "edges"),
    "surface": ("surface", "surfaces"),
    "site": ("site", "sites"),
    "recording": ("recording", "recordings"),
    "stick": ("stick", "sticks"),
    "switch": ("switch", "switches"),
    "controller": ("controller", "controllers"),
    "mount": ("mount", "mounts"),
    "action": ("action", "actions"),
}
_READ = {"rest": "resting force", "hold": "hold", "press": "presses", "on_stick": "on a stick"}
_NEEDED = {
    "room": "only for mounts",
    "places": "where each control site is",
    "site": "one control site is enough to begin",
    "sites_first": "add control sites first",
    "recording": "optional: a recording shows tremor and lets the stick be tuned",
    "kit": "the sticks that you can lend",
    "stick": "a stick",
    "game": "the actions; without them, even use of the stick in all directions is assumed",
    "new_plan": "a new plan: something has changed since",
    "seating": "seating, and where each control site is",
    "plan": "comes with the plan",
}


class Texts(VisitPage):
    """The page of one visit: its steps, how far each is, what to do next."""

    w: English

    def title_of(self, *, number: int, code: Name) -> str:
        return f"Visit {self.w.whole(number)} of {self.w.name(code)}"

    def problems(self, *, count: int) -> str:
        return (
            f"{self.w.whole(count)} {self.w.plural(count, one='problem', other='problems')} to fix in what was entered"
        )

    def so_far(self) -> str:
        return "Progress"

    def steps_so_far(self) -> str:
        return "What has been entered, step by step"

    def step(self) -> str:
        return "Step"

    def entered(self) -> str:
        return "Entered"

    def still_needed(self) -> str:
        return "Still needed"

    def as_files(self) -> str:
        return "Files"

    def download(self) -> str:
        return "Download this visit as a case folder"

    def files_packed(self, *, files: int) -> str:
        return f"{self.w.whole(files)} {self.w.plural(files, one='file', other='files')}, zipped"

    def title(self, *, step: StepKey) -> str:
        return _TITLES[step]

    def doing(self, *, step: StepKey) -> str:
        return _DOING[step]

    def nothing_yet(self) -> str:
        return "nothing yet"

    def counted(self, *, thing: Counted, count: int) -> str:
        one, many = _COUNTED[thing]
        return f"{self.w.whole(count)} {self.w.plural(count, one=one, other=many)}"

    def counted_at(self, *, thing: Counted, count: int, site: Name) -> str:
        return f"{self.counted(thing=thing, count=count)} at {self.w.name(site)}"

    def listed(self, *, parts: tuple[Text, ...]) -> str:
        return ", ".join(self.say(one) for one in parts)

    def many_listed(self, *, parts: tuple[Text, ...]) -> str:
        return "; ".join(self.say(one) for one in parts)

    def named(self, *, name: Name, what: Text) -> str:
        return f"{self.w.name(name)}: {self.say(what)}"

    def sites_entered(self, *, count: int, names: tuple[Name, ...]) -> str:
        return f"{self.counted(thing='site', count=count)}: {', '.join(self.w.name(one) for one in names)}"

    def directions(self, *, read: int, of: int, repeats: int) -> str:
        often = {1: "once each", 2: "twice each"}.get(repeats, f"{self.w.whole(repeats)} times each")
        return f"{self.w.whole(read)} of {self.w.whole(of)} directions, {often}"

    def read_too(self, *, what: ReadToo) -> str:
        return _READ[what]

    def nothing_for(self, *, sites: tuple[Name, ...]) -> str:
        return f"readings of {self.w.names(sites)}"

    def actions_of_games(self, *, count: int) -> str:
        return f"actions of {self.w.whole(count)} {self.w.plural(count, one='game', other='games')}"

    def needed(self, *, what: Needed) -> str:
        return _NEEDED[what]

    def plan_made(self, *, number: int) -> str:
        return f"plan {self.w.whole(number)}"

    def mounts_drawn(self) -> str:
        return "drawn with the plan"

    def ready(self) -> str:
        return "ready to print"
