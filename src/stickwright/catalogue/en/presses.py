"""A switch or a controller's button at one control site, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text
from stickwright.codes.presses import Often, Presses, Spasms
from stickwright.codes.sites import Part

__all__ = ["Texts"]

_OFTEN: dict[Often, str] = {
    "repeated": "for a repeated press",
    "held": "for a held press",
    "frequent": "for a frequent press",
    "uncounted": "for a press that nobody counted",
    "rare": "for a rare press",
}


class Texts(Presses):
    """Clauses about the switch or button."""

    w: English

    def _above(self, share: float | None, limit_share: float) -> str:
        said, limit = self.w.share(share), self.w.share(limit_share)
        return "more than all" if share is None or share > 1 else said if said != limit else f"just over {limit}"

    def _presses(self, count_per_min: float) -> str:
        many = self.w.trimmed(count_per_min)
        return f"the busiest minute has {many} {'press' if many == '1' else 'presses'}"

    def button(self, *, controller: Name, role: Role) -> str:
        return f"{self.w.name(controller)}, {self.w.role(role)}"

    def needs_stick(self, *, action: Name, axes: Literal[1, 2]) -> str:
        if axes == 2:
            return f"{self.w.name(action)} needs a stick: it has two axes, and a press has no direction"
        return (
            f"{self.w.name(action)} needs a stick: it goes both ways along one axis, and a press has no direction (two switches, one "
            "for each way, are not planned)"
        )

    def chord(self, *, action: Name) -> str:
        return f"{self.w.name(action)} is a chord: it is pressed through the actions that it is made of"

    def all_or_nothing(self, *, action: Name, levels: int | None) -> str:
        uses = (
            "the game may use levels in between"
            if levels is None
            else f"the game uses {levels} {self.w.plural(levels, one='level', other='levels')}"
        )
        return f"a switch gives {self.w.name(action)} only on or off, and {uses}"

    def not_benched(self, *, pressed: Text) -> str:
        return f"nobody has measured the activation force of {self.say(pressed)}, so the force it needs is not known"

    def too_heavy(
        self,
        *,
        force_n: float,
        effort_share: float | None,
        comfortable_n: float,
        assumed: bool,
        limit_share: float,
        often: Often,
    ) -> str:
        usual = " (assumed)" if assumed else ""
        return (
            f"needs {self.w.amount(force_n, 'n')}, {self._above(effort_share, limit_share)} of the comfortable "
            f"{self.w.amount(comfortable_n, 'n')}{usual}; the limit is {self.w.share(limit_share)} {_OFTEN[often]}"
        )

    def resting_presses(
        self,
        *,
        force_n: float,
        rest_n: float,
        rest_assumed: bool,
        involuntary_n: float,
        involuntary_assumed: bool,
        wanted_n: float,
    ) -> str:
        marks = [" (assumed)" if assumed else "" for assumed in (rest_assumed, involuntary_assumed)]
        return (
            f"needs only {self.w.amount(force_n, 'n')}, and the resting force there is {self.w.amount(rest_n, 'n')}{marks[0]}, with "
            f"{self.w.amount(involuntary_n, 'n')} rms of involuntary force{marks[1]}: {self.w.amount(wanted_n, 'n')} or more would "
            "prevent unintended activations"
        )

    def travel_short(self, *, travel_m: float, able_m: float) -> str:
        return (
            f"travel to activation is {self.w.amount(travel_m, 'mm')}, and the control site can push in "
            f"{self.w.amount(able_m, 'mm')}"
        )

    def travel_untried(self, *, travel_m: float) -> str:
        return f"nobody has tried whether the control site can push in {self.w.amount(travel_m, 'mm')}"

    def senses_unknown(self) -> str:
        return (
            "the distance at which it senses is not known, so it is not known whether the control site can rest clear of it: "
            "measure it"
        )

    def clear_unknown(self, *, senses_m: float) -> str:
        return f"it senses at {self.w.amount(senses_m, 'mm')}, and how far the control site moves is not known"

    def not_clear(self, *, senses_m: float, able_m: float) -> str:
        return (
            f"it senses at {self.w.amount(senses_m, 'mm')} and the control site moves {self.w.amount(able_m, 'mm')}, so the site "
            "cannot rest clear of it"
        )

    def too_small(self, *, part: Part, size_m: float, least_m: float) -> str:
        return (
            f"too small for this kind of control site ({part}): {self.w.amount(size_m, 'mm')} across, and "
            f"{self.w.amount(least_m, 'mm')} or more is usual (common practice)"
        )

    def too_slight(self, *, part: Part, comfortable_n: float, force_n: float) -> str:
        return (
            f"too light a switch for this control site ({part}), which presses with {self.w.amount(comfortable_n, 'n')}: it "
            f"needs {self.w.amount(force_n, 'n')}, and may break"
        )

    def size_assumed(self, *, pressed: Text, hit_share: float) -> str:
        return f"size of {self.say(pressed)}: {self.w.share(hit_share)} of presses land on it (not measured)"

    def lands(
        self,
        *,
        hit_share: float,
        face_m: tuple[float, ...],
        landing_m: float,
        assumed: bool,
        wanted_m: float,
        least_share: float | None,
    ) -> str:
        face = " × ".join(self.w.number(1000 * side) for side in face_m)
        usual = " (assumed)" if assumed else ""
        said, least = self.w.share(hit_share), self.w.share(least_share)
        if least_share is not None and said == least:
            said = f"just under {least}"
        more = f"{least} is the minimum" if least_share is not None else f"{self.w.share(1 - hit_share)} miss"
        return (
            f"{said} of presses land on {face} mm, with {self.w.amount(landing_m, 'mm')} of scatter{usual}; "
            f"{self.w.amount(wanted_m, 'mm')} across would catch 95 of 100; {more}"
        )

    def uncounted_rate(self, *, count_per_min: float) -> str:
        return f"{self._presses(count_per_min)}; how many can be kept up was not counted"

    def release_fills(self, *, count_per_min: float, release_s: float, busy_s: float, most_share: float) -> str:
        return (
            f"{self._presses(count_per_min)}, and letting go takes {self.w.amount(release_s, 's')}: that alone is "
            f"{self.w.whole(busy_s)} of 60 s, more than {self.w.share(most_share)}"
        )

    def too_many(
        self,
        *,
        count_per_min: float,
        sustained_per_min: float,
        slowed_share: float,
        fastest_per_s: float,
        release_s: float | None,
    ) -> str:
        fewer = self.w.trimmed(sustained_per_min)
        fewer = f"just under {fewer}" if fewer == self.w.trimmed(count_per_min) else fewer
        slowed = f", slowed by {self.w.share(slowed_share)} by the other control site" if slowed_share > 0 else ""
        less = "" if release_s is None else f", less because letting go takes {self.w.amount(release_s, 's')}"
        return (
            f"{self._presses(count_per_min)}, and {fewer} can be kept up{slowed}: half of {self.w.trimmed(fastest_per_s)} a second, "
            f"counted over ten seconds{less}"
        )

    def slow_release(self, *, release_s: float) -> str:
        return f"letting go took up to {self.w.amount(release_s, 's')}, so now and then it stays pressed into the next press"

    def hold_unsaid(self, *, action: Name) -> str:
        return f"how long {self.w.name(action)} must be held is not entered for the game"

    def hold_untaken(self, *, held_s: float) -> str:
        return f"needs holds of {self.w.amount(held_s, 's')}; how long a press can be held was not measured"

    def hold_too_long(
        self, *, held_s: float, held_share: float, limit_share: float, able_s: float, toggle: bool
    ) -> str:
        other = "; press on, press off would do" if toggle else ""
        return (
            f"needs holds of {self.w.amount(held_s, 's')}, {self._above(held_share, limit_share)} of the {self.w.amount(able_s, 's')} that "
            f"it can be held; the limit is {self.w.share(limit_share)}{other}"
        )

    def reaction_untaken(self, *, action: Name, given_s: float) -> str:
        return (
            f"the game allows {self.w.amount(given_s, 's')} for {self.w.name(action)}; how soon a press comes after its cue was not "
            "measured"
        )

    def too_late(self, *, action: Name, given_s: float, reaction_s: float, wait_s: float) -> str:
        waits = f" and must wait {self.w.amount(wait_s, 's')}" if wait_s > 0 else ""
        return (
            f"the game allows {self.w.amount(given_s, 's')} for {self.w.name(action)}, and the press comes after "
            f"{self.w.amount(reaction_s, 's')}{waits}"
        )

    def always_on(self, *, force_n: float) -> str:
        return f"would be on by itself: involuntary force keeps exceeding its {self.w.amount(force_n, 'n')}"

    def goes_off(self, *, rate_per_min: float, cause: Text, limit_per_min: float, costly: bool) -> str:
        many = self.w.trimmed(rate_per_min)
        what = "unintended activation" if many == "1" else "unintended activations"
        harm = ", because one does harm in this game" if costly else ""
        return f"{many} {what} a minute predicted, {self.say(cause)}; the limit is {self.w.trimmed(limit_per_min)} a minute{harm}"

    def by_involuntary(self) -> str:
        return "from involuntary force"

    def by_spasms(self, *, fires_share: float, spasms_per_min: float, how: Spasms) -> str:
        known = ", judged by their force" if how == "by_force" else ""
        return f"with {self.w.share(fires_share)} of {self.w.trimmed(spasms_per_min)} spasms a minute{known}"

    def spasms_uncounted(self, *, fires_share: float) -> str:
        return f"it activates in {self.w.share(fires_share)} of spasms, and nobody counted the spasms"

    def spasms_untried(self, *, spasms_per_min: float) -> str:
        return f"spasms come {self.w.trimmed(spasms_per_min)} times a minute; nobody has tried whether it activates with them"

    def spasms_no_force(self) -> str:
        return "spasms were recorded without their force, so those that would press it are not counted"

    def spasms_assumed(self, *, site: Name, fires_share: float) -> str:
        return f"spasms at the {self.w.name(site)}: it activates in {self.w.share(fires_share)} of them (judged by their force, not tried)"

    def assumption(self, *, what: Text, value: Text, why: Text) -> str:
        return f"{self.clause(what)}: {self.clause(value)} ({self.clause(why)})"

    def _count(self, action: Name, count_per_min: float) -> str:
        many = self.w.trimmed(count_per_min)
        return f"busiest minute of {self.w.name(action)}: {many} {'press' if many == '1' else 'presses'}"

    def count_average(self, *, action: Name, count_per_min: float) -> str:
        return f"{self._count(action, count_per_min)} (its average: not counted)"

    def count_usual(self, *, action: Name, count_per_min: float) -> str:
        return f"{self._count(action, count_per_min)} (nobody counted)"

    def button_force(self, *, controller: Name, force_n: float) -> str:
        return f"force of the buttons of {self.w.name(controller)}: {self.w.amount(force_n, 'n')} (not measured)"

    def moving_assumed(self, *, site: Name, why: Text) -> str:
        return f"moving between switches at the {self.w.name(site)}: {self.clause(why)}"

    def spacing_assumed(self, *, site: Name) -> str:
        return f"distance between switches at the {self.w.name(site)}: their own width (size not known)"

    def intercept_usual(self) -> str:
        return "the time before a move was not measured; that of healthy adults' hands is used"

    def line_usual(self) -> str:
        return (
            "moving between two switches was not timed; times of healthy adults' hands are used, which are good for ranking places but "
            "not for predicting this player"
        )

    def in_state(self, *, state: Name, why: Text) -> str:
        return f"{self.w.name(state)}: {self.clause(why)}"
