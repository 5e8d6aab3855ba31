"""Why a plan that was kept cannot be shown as it was, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.kept_plans import KeptPlans
from stickwright.codes.message import Message, Name

__all__ = ["Texts"]


class Texts(KeptPlans):
    """Each a whole sentence."""

    w: English

    def no_plan(self) -> str:
        return "This is not a plan that stickwright wrote."

    def other_format(self, *, kept: int, today: int) -> str:
        version = "an earlier" if kept < today else "a later"
        return f"This plan was kept by {version} version of stickwright, in format {kept}; this version shows format {today}."

    def other_parts(self, *, place: Name) -> str:
        return f"This plan was kept by another version of stickwright, which wrote something else at {place}."

    def programs(self, *, first: Name, second: Name) -> str:
        return f"The first was made with stickwright {first}, the second with stickwright {second}."

    def library(self, *, name: Name, first: Name, second: Name) -> str:
        return (
            f"The first was worked out with {name} {first or 'of an unknown version'}, the second with {name} {second}."
        )

    def seeds(self, *, first: int, second: int) -> str:
        return f"The first was worked out with seed {first}, the second with seed {second}."

    def draws(self, *, first: int, second: int) -> str:
        return f"The first was worked out with {self.w.whole(first)} draws, the second with {self.w.whole(second)}."

    def wishes(self) -> str:
        return "They were asked with different wishes."

    def inputs(self, *, names: tuple[Name, ...]) -> str:
        return f"They were not made from the same readings or files: {self.w.names(names)} differ."

    def beside(self) -> str:
        return "Kit that was lent out, readings of other visits or the date on the plan differ."

    def nothing(self) -> str:
        return "Both were made by the same program from the same readings, kit, wishes and seed."

    def made_again(self) -> str:
        return "The same plan, to the last digit, from the same readings, kit, requests and seed."

    def same_program(self) -> str:
        return "The program has not changed, but the result has:"

    def program_changed(self, *, parts: tuple[Message, ...]) -> str:
        return f"The program has changed ({'; '.join(map(self.clause, parts))})."

    def program_now(self, *, then: Name, now: Name) -> str:
        return f"made with stickwright {self.w.name(then)}, now {self.w.name(now)}"

    def library_now(self, *, name: Name, then: Name, now: Name) -> str:
        return f"{self.w.name(name)} {self.w.name(then)}, now {self.w.name(now)}"

    def inputs_refused(self, *, problem: Message) -> str:
        return f"It no longer accepts the inputs: {self.say(problem)}"

    def other_choices(self, *, sites: tuple[Message, ...]) -> str:
        return f"The choice is different at {'; '.join(map(self.clause, sites))}."

    def choice(self, *, site: Name, then: Name | None, now: Name | None) -> str:
        before, after = (self.w.name(one) if one is not None else "nothing" for one in (then, now))
        return f"{self.w.name(site)}: {before} before, {after} now"

    def other_figures(self, *, count: int, place: Name, then: Name, now: Name) -> str:
        differ = self.w.plural(count, one="entry differs", other="entries differ")
        return (
            f"The same sticks are chosen, but {self.w.whole(count)} {differ}, the first at {self.w.name(place)} "
            f"({self.w.name(then)} before, {self.w.name(now)} now)."
        )

    def same(self) -> str:
        return "They are the same, to the last digit."

    def other_tremor(self) -> str:
        return "an earlier version measured the size of tremor in another way; make the plan again to have this one"
