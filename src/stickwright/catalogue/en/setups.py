"""A set-up at a site, in English."""

from __future__ import annotations

import math
from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text
from stickwright.codes.setups import Setups

__all__ = ["Texts"]


class Texts(Setups):
    """The answer for one site, and what to look at before it is trusted."""

    w: English

    def _sentence(self, text: Text) -> str:
        said = self.say(text).strip().rstrip(".")
        return f"{said[:1].upper()}{said[1:]}."

    def named(self, *, stick: Name, topper: Name | None, extension: Name | None, raised_rad: float) -> str:
        parts = [self.w.name(stick)]
        if topper:
            parts.append(self.w.name(topper))
        if extension:
            parts.append(f"extension {self.w.name(extension)}")
        if abs(raised_rad) > 1e-9:
            parts.append(f"base raised {math.degrees(raised_rad):.0f}°")
        return " + ".join(parts)

    def performance(
        self, *, weakest_share: float, weakest_rad: float, least_share: float | None, least_rad: float | None, least_used: bool,
        effort_share: float, unintended: Estimate, dead_zone_share: float,
    ) -> str:  # fmt: skip
        needed = " needed" if least_share is not None else ""
        reaches = (
            "reaches full travel in every direction needed"
            if weakest_share >= 0.999
            else f"reaches {self.w.share(weakest_share)} of its travel in the weakest direction{needed} "
            f"({self.w.direction(weakest_rad)})"
        )
        if least_share is not None and least_rad is not None:
            uses = "hardly uses" if least_used else "does not use"
            reaches += f", and {self.w.share(least_share)} {self.w.direction(least_rad)}, which the game {uses}"
        rate = self.w.rate(
            unintended, one="unintended activation", many="unintended activations", why=self.say(unintended.why or "")
        )
        zone = f" with a dead zone of {self.w.share(dead_zone_share)}" if dead_zone_share else ""
        return f"{reaches}, needs {self.w.share(effort_share)} of comfortable force, and gives {rate}{zone} (predicted)"

    def unintended(self, *, rate: Estimate) -> str:
        return self.w.rate(
            rate, one="unintended activation", many="unintended activations", why=self.say(rate.why or "")
        )

    def chosen(
        self, *, setup: Text, site: Name, performance: Text, to_confirm: tuple[Text, ...], limit: Text | None, second: Text | None,
        liked: tuple[Text, ...],
    ) -> str:  # fmt: skip
        beside = self.beside_headline(
            performance=performance, to_confirm=to_confirm, limit=limit, second=second, liked=liked
        )
        return f"{self.say(setup)} at the {self.w.name(site)}: {beside[:1].lower()}{beside[1:]}"

    def beside_headline(
        self,
        *,
        performance: Text,
        to_confirm: tuple[Text, ...],
        limit: Text | None,
        second: Text | None,
        liked: tuple[Text, ...],
    ) -> str:
        out = [self._sentence(performance)]
        out += [self._sentence(one) for one in to_confirm]
        out += [f"What limits it: {self.clause(limit)}."] if limit else []
        out += [self.say(second)] if second else []
        return " ".join([*out, *(self.say(one) for one in liked)])

    def none_fits(self, *, site: Name, nearest: Text, fails: tuple[Text, ...], helps: Text | None) -> str:
        why = "; ".join(self.clause(one) for one in fails)
        change = f" {self.would_help(change=helps)}" if helps else ""
        return f"No stick in the kit fits the {self.w.name(site)}. The nearest is {self.say(nearest)}: {why}.{change}"

    def would_help(self, *, change: Text) -> str:
        return f"What would help: {self.clause(change)}."

    def no_second(self, *, nearest: Text, limit: Text) -> str:
        return f"No other stick fits. The nearest is {self.say(nearest)}: {self.clause(limit)}."

    def second(self, *, setup: Text, performance: Text, more_bits: float, tie: bool) -> str:
        beside = f"{abs(more_bits):.1f} bit {'more' if more_bits > 0 else 'less'} precision"
        if abs(more_bits) < 0.05:
            beside = "the same precision"
        elif tie:
            beside += ", which counts as equal"
        return f"Second choice: {self.say(setup)}, which {self.clause(performance)} ({beside})."

    def liked(self, *, stick: Name, setup: Text, fits: bool, limit: Text | None) -> str:
        why = f" ({self.clause(limit)})" if limit else ""
        how = "fits too" if fits else "does not fit"
        return f"The player likes {self.w.name(stick)}: {self.say(setup)} {how}{why}. The player's wish counts."

    def whole_controller(self, *, site: Name, setup: Text, first: Name | None) -> str:
        own = f"{self.w.name(first)} ranks first here by itself" if first else "no stick fits here by itself"
        return f"{self.w.name(site)}: {self.say(setup)} is used although {own}, because the whole control layout is better with it."

    def for_whole(self, *, site: Name, setup: Text, own: Text) -> str:
        return f"{self.w.name(site)}: {self.say(setup)}, chosen for the whole control layout. {self.say(own)}"

    def clearance(self, *, site: Name, asked: bool) -> str:
        word = "has been asked and has not answered yet" if asked else "has not agreed on record"
        return f"{self.w.name(site)}: the treating team {word}. Ask before anything touches the face or head."

    def coarse(self, *, setup: Text, precision_bits: float) -> str:
        return (
            f"{self.say(setup)}: {precision_bits:.1f} bit of precision in a direction, so direction and speed will be coarse. For "
            "aiming, rely on play with one button, options of the game or a helper."
        )

    def support(self, *, support: Name | None, before_n: float, after_n: float) -> str:
        what = self.w.name(support) if support else "the support"
        return (
            f"{what[:1].upper()}{what[1:]} reduces the resting force from {self.w.amount(before_n, 'n')} to "
            f"{self.w.amount(after_n, 'n')}, and the plan relies on it. Without it, plan again."
        )

    def long_hold(self, *, setup: Text, longest_s: float, hold_s: float, model: Text) -> str:
        return (
            f"{self.say(setup)}: the longest hold in the game is {longest_s:.0f} s, and at this effort about {hold_s:.0f} s can "
            f"be expected ({self.say(model)}). Set the game to press on, press off, or plan a rest."
        )

    def duty(self, *, setup: Text, effort_share: float, duty_share: float, limit_share: float) -> str:
        return (
            f"{self.say(setup)}: {self.w.share(effort_share)} of comfortable force for {self.w.share(duty_share)} of the time is "
            f"above the {self.w.share(limit_share)} that healthy adults can keep up through a working day (Potvin 2012; where "
            "that is less than 15% of the largest force, the 15% of Rohmert 1973). That limit is strict for play: watch for "
            "fatigue."
        )

    def tired(
        self,
        *,
        stick: Name,
        lost_share: float,
        weakest_share: float,
        effort_share: float,
        fits: Literal["yes", "no", "unsaid"],
    ) -> str:
        effort = "more than the whole" if effort_share > 1 else self.w.share(effort_share)
        verdict = {"yes": " It would still fit.", "no": " It would no longer fit.", "unsaid": ""}[fits]
        return (
            f"When tired ({self.w.share(lost_share)} less force), the player is predicted to reach {self.w.share(weakest_share)} of "
            f"the travel of {self.w.name(stick)} in the weakest direction needed, at {effort} of the force that is then "
            f"comfortable.{verdict}"
        )

    def kit_note(self, *, device: Name, note: Name) -> str:
        return f"Note in the kit on {self.w.name(device)}: {self.w.typed(note)}."

    def goals(self, *, goals: tuple[Name, ...]) -> str:
        told = "; ".join(self.w.typed(one) for one in goals)
        return f"Goals, in the player's own words: {told}. Judge the set-up by them."

    def refused_by_team(self, *, site: Name) -> str:
        return f"{self.w.name(site)}: left out, because the treating team has not agreed to it."

    def nothing_planned(self) -> str:
        return "No site could be planned: measure the force in four directions at one site, or try two sticks there."

    def flexing_mount(self, *, site: Name, after: Name, before: Name) -> str:
        return (
            f"{self.w.name(site)}: the mount flexes under load, and on it {self.w.name(after)} does better than "
            f"{self.w.name(before)}, which would be the choice on something firm."
        )

    def unsettled(self, *, sites: tuple[Name, ...], rounds: int, safe: bool) -> str:
        kept = "assumes a mount that flexes no less than the real one" if safe else "keeps the last pair that was tried"
        return (
            f"No stable pair of stick and mount was found at {self.w.names(sites)}: in each of {rounds} rounds the mount of the "
            f"chosen stick flexed so much that another stick did better. The plan {kept}. Try it on its mount before you fix "
            "anything for good."
        )

    def turn_carried_over(self, *, site: Name, turn_rad: float, source: Text) -> str:
        return (
            f"{self.w.name(site)}: the base is turned {self.w.turn(turn_rad)} (seen from above), as {self.clause(source)}. To "
            "confirm: record pushes on the chosen stick."
        )

    def nothing_read(self, *, site: Name) -> str:
        return (
            f"{self.w.name(site)}: no force was measured and no stick was tried in a named direction, so no stick can be chosen. "
            "Measure the force in four directions, or try two sticks and note how far the player gets, and in which direction."
        )
