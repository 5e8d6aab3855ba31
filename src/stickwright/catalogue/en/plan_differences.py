"""Two plans of one visit beside each other; in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text
from stickwright.codes.plan_differences import ComparedRow, PlanDifferences

__all__ = ["Texts"]


def _only(w: English, first: tuple[str, ...], second: tuple[str, ...]) -> str:
    told = (("first", first), ("second", second))
    return "; ".join(f"only in the {which} {w.names(names)}" for which, names in told if names)


_ROWS: dict[ComparedRow, str] = {
    "stick": "stick",
    "deflection": "predicted deflection in the weakest direction",
    "effort": "predicted effort",
    "control": "predicted control",
    "unintended": "predicted unintended activation",
    "mount": "mounted on",
}


class Texts(PlanDifferences):
    """Two plans of one visit beside each other."""

    w: English

    def not_in_plan(self) -> str:
        return "not in this plan"

    def done_by(self, *, how: Literal["option", "dropped", "chord", "helper"]) -> str:
        return {
            "option": "the game itself",
            "dropped": "left out",
            "chord": "by other actions together",
            "helper": "a helper",
        }[how]

    def site_on(self, *, site: Name, device: Text) -> str:
        return f"{self.w.name(site)} on {self.say(device)}"

    def row(self, *, site: Name, what: ComparedRow) -> str:
        return f"{self.w.name(site)}: {_ROWS[what]}"

    def bits(self, *, value: Estimate) -> str:
        ends = value.interval
        told = self.w.number(value.number)
        return (
            f"{told} ({self.w.number(ends[0])} to {self.w.number(ends[1])}) bits"
            if ends is not None
            else f"{told} bits"
        )

    def mounted(self, *, mount: Name, on: Name) -> str:
        return f"{self.w.name(mount)} on {self.w.name(on)}"

    def nothing_said(self) -> str:
        return "not planned"

    def nothing_holds(self) -> str:
        return "no suitable mount"

    def none_common(self) -> str:
        return "They have no action in common."

    def actions_changed(self, *, changed: int, of: int) -> str:
        told = f"{self.w.whole(changed)} of {self.w.whole(of)} {self.w.plural(of, one='action', other='actions')}"
        return (
            f"{told} {self.w.plural(changed, one='is', other='are')} done differently"
            if changed
            else "Every action is done the same way"
        )

    def whole(self, *, actions: Text) -> str:
        return f"{self.clause(actions)}."

    def same_score(self, *, actions: Text) -> str:
        return f"{self.clause(actions)}. Both score the same."

    def better(self, *, actions: Text, first: bool, gap_points: float) -> str:
        which = "first" if first else "second"
        return f"{self.clause(actions)}. The {which} plan scores {self.w.number(gap_points)} points more."

    def other_games(self, *, first: Name, second: Name) -> str:
        return (
            f"Made for different games ({self.w.name(first)}; {self.w.name(second)}): only actions that both have "
            "are compared, and scores are not."
        )

    def asked_otherwise(self, *, actions: tuple[Name, ...]) -> str:
        return f"The game has the same name but different needs for {self.w.names(actions)}: read the scores with care."

    def other_sticks(self, *, first: tuple[Name, ...], second: tuple[Name, ...]) -> str:
        return f"Different sticks to choose from: {_only(self.w, first, second)}."

    def other_parts(self, *, first: tuple[Text, ...], second: tuple[Text, ...]) -> str:
        said = (tuple(self.clause(one) for one in names) for names in (first, second))
        return f"Different parts: {_only(self.w, *said)}."
