"""What a score is made of, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text
from stickwright.codes.scores import Scores, TermKind

__all__ = ["Texts"]

_KINDS: dict[TermKind, str] = {
    "importance": "importance",
    "precision": "precision",
    "effort": "effort",
    "misses": "misses",
    "unintended": "unintended activations",
    "busy": "assumed press rate",
    "suits": "size or strength to be tried",
    "toggle": "press on, press off",
    "sound": "sound",
    "part": "one more device",
    "setup": "setting up",
    "helper": "done by a helper",
    "option": "done by the game",
    "dropped": "left out",
    "rule_broken": "rule of practice broken",
    "ranked": "ranked lower at its site",
    "cost": "to order",
    "slowed": "one site slows another",
    "mind": "disliked by the player",
    "clearance": "agreement still needed",
    "held": "holding the controller",
}
_LEFT = {"option": "to the game", "helper": "to somebody else", "dropped": "out"}


class Texts(Scores):
    """The terms of a score."""

    w: English

    def kind(self, *, what: TermKind) -> str:
        return _KINDS[what]

    def importance(self, *, importance_points: float) -> str:
        return f"importance to the player {self.w.trimmed(importance_points)} of 10"

    def precision(self, *, precision_bits: float) -> str:
        return f"{self.w.number(precision_bits)} bits of precision in one direction"

    def precision_basis(
        self, *, weight_share: float, importance_points: float, levels: int | None, fineness_share: float, short_share: float,
        good_bits: float,
    ) -> str:  # fmt: skip
        uses = ""
        if levels is not None:
            steps = self.w.plural(levels, one="level", other="levels")
            uses = f" × {self.w.fixed(fineness_share)} for {levels} {steps}"
        return (
            f"{self.w.trimmed(weight_share)} × {self.w.trimmed(importance_points)}{uses} × {self.w.fixed(short_share)} short of "
            f"{self.w.trimmed(good_bits)} bits"
        )

    def stick_effort(self, *, effort_share: float, duty_share: float) -> str:
        return f"{self.w.share(effort_share)} of comfortable force, {self.w.share(duty_share)} of the time"

    def stick_effort_basis(self, *, weight_points: float, effort_share: float, duty_share: float) -> str:
        return f"{self.w.trimmed(weight_points)} × {self.w.fixed(effort_share)} × {self.w.fixed(duty_share)}"

    def press_effort(self, *, effort_share: float | None) -> str:
        if effort_share is None:
            return "no force needed"
        return f"{self.w.share(effort_share)} of comfortable force for a press"

    def press_effort_basis(
        self,
        *,
        weight_points: float,
        effort_share: float,
        use_share: float,
        count_per_min: float | None,
        whole_per_min: float,
    ) -> str:
        told = (
            " of the time"
            if count_per_min is None
            else f", {self.w.number(count_per_min)} of {self.w.trimmed(whole_per_min)} presses a minute"
        )
        return f"{self.w.trimmed(weight_points)} × {self.w.fixed(effort_share)} × {self.w.fixed(use_share)}{told}"

    def unintended(self, *, rate: Estimate, assumed: bool) -> str:
        told = self.w.rate(rate, one="unintended activation", many="unintended activations")
        return f"{told} (in part assumed)" if assumed else told

    def always(self, *, assumed: bool) -> str:
        return f"unintended activations nearly all the time{' (in part assumed)' if assumed else ''}"

    def unintended_basis(self, *, weight_points: float, over_factor: float, limit_per_min: float) -> str:
        return (
            f"{self.w.trimmed(weight_points)} × {self.w.fixed(over_factor)} of the limit of {self.w.trimmed(limit_per_min)} "
            "a minute"
        )

    def clear_untried(self) -> str:
        return "nobody has tried whether the control site can rest clear of it"

    def misses(self, *, missed_share: float, assumed: bool) -> str:
        return f"{self.w.share(missed_share)} of presses miss{' (assumed)' if assumed else ''}"

    def misses_basis(self, *, importance_points: float, missed_share: float) -> str:
        return f"{self.w.trimmed(importance_points)} × {self.w.fixed(missed_share, 3)}"

    def busy(self, *, time_s: float) -> str:
        return f"presses take {self.w.whole(time_s)} s of the busiest minute (assumed)"

    def all_or_nothing(self) -> str:
        return "a switch is only on or off"

    def to_try(self, *, doubt: Text) -> str:
        return f"to be tried: {self.clause(doubt)}"

    def toggle(self) -> str:
        return "press on, press off"

    def own_words(self, *, words: Name) -> str:
        return self.w.typed(words)

    def helper_does_it(self, *, helper: Name) -> str:
        return f"{self.w.name(helper)} does it"

    def goes_without(self) -> str:
        return "the player goes without"

    def device_more(self, *, device: Name | None) -> str:
        return f"{self.w.name(device)}: one more device" if device else "one more device"

    def setup(self, *, site: Name | None, time_s: float) -> str:
        told = f"{self.w.minutes(time_s)} to set up"
        return f"{self.w.name(site)}: {told}" if site else told

    def sound(self, *, switch: Name, sound: Literal["soft", "click", "unrecorded"]) -> str:
        heard = {
            "soft": "can be heard softly",
            "click": "clicks",
            "unrecorded": "may be heard: its sound is not recorded (assumed)",
        }
        return f"{self.w.name(switch)} {heard[sound]}, and quiet is wanted"

    def minds(self, *, site: Name, dislike_points: float) -> str:
        return f"{self.w.name(site)}: how much the player minds using it, {self.w.trimmed(dislike_points)} of 10"

    def clearance(self, *, site: Name) -> str:
        return f"{self.w.name(site)}: the treating team has still to agree"

    def in_use(self, *, site: Name) -> str:
        return f"{self.w.name(site)}: in use"

    def ranked(self, *, stick: Name) -> str:
        return f"ranked behind {self.w.name(stick)} at this site"

    def splitters(self, *, count: int, splitter: Name) -> str:
        return f"{count} × {self.w.name(splitter)} (splitter)"

    def adapters(self, *, count: int, adapter: Name) -> str:
        return f"{count} × {self.w.name(adapter)} (adapter)"

    def ordered(self, *, count: int, device: Name) -> str:
        return f"{count} × {self.w.name(device)} to order"

    def slowed(self, *, first: Name, first_site: Name, second: Name, second_site: Name) -> str:
        return (
            f"{self.w.name(first)} at the {self.w.name(first_site)} and {self.w.name(second)} at the "
            f"{self.w.name(second_site)} slow each other"
        )

    def rests_anyway(self) -> str:
        return "it rests on something, and has to be put there"

    def hold_untried(self, *, hands: tuple[Text, ...], heavy: bool) -> str:
        who = self.w.all_of(tuple(self.say(one) for one in hands))
        heavier = ", and it is heavier than hands usually hold" if heavy else ""
        return f"nobody has tried how long the {who} can hold it{heavier} (assumed)"

    def unstated_usual(self) -> str:
        return "nobody stated it: common practice, no source"

    def unstated_archetype(self, *, archetype: Name) -> str:
        return f"it stands for {self.w.name(archetype)} games in general, and nobody changed it"

    def cost_of(self, *, action: Name, how: Literal["option", "helper", "dropped", "toggle"]) -> str:
        if how == "toggle":
            return f"Cost to the player of press on, press off for {self.w.name(action)}"
        return f"Cost to the player of leaving {self.w.name(action)} {_LEFT[how]}"

    def cost_value(self, *, cost_points: float, most_points: float) -> str:
        return f"{self.w.trimmed(cost_points)} of {self.w.trimmed(most_points)}"

    def cost_confirm(self) -> str:
        return "the player's own answer, 0 to 10"

    def decided_by_cost(
        self,
        *,
        action: Name,
        how: Literal["option", "helper", "dropped"],
        cost_points: float,
        most_points: float,
        turns_points: float,
    ) -> str:
        return (
            f"{self.w.name(action)} is left {_LEFT[how]} because of a cost to the player that nobody stated "
            f"({self.w.trimmed(cost_points)} of {self.w.trimmed(most_points)}). Ask the player first: from "
            f"{self.w.trimmed(turns_points)} on, the control layout would be another"
        )

    def decided_by_costs(self, *, told: tuple[Text, ...]) -> str:
        return ". ".join(self.clause(one) for one in told)
