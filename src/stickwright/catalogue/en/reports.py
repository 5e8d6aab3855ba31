"""What a practitioner reads of a plan in the terminal, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text
from stickwright.codes.reports import Heading, Reports, Verdict
from stickwright.codes.sites import Part

__all__ = ["VERDICTS", "Texts"]

_HEADINGS: dict[Heading, str] = {
    "devices": "Settings and modes of devices",
    "next": "Next reading",
    "cautions": "Cautions",
    "assumed": "Assumed, not measured",
    "findings": "Findings",
    "ability": "Ability: comfortable force and movement range",
    "recordings": "Recordings",
}
VERDICTS: dict[Verdict, str] = {
    "fits": "fits",
    "fits with its range widened": "fits with the sensitivity raised",
    "does not fit": "does not fit",
}


class Texts(Reports):
    """A plan in the terminal."""

    w: English

    def head(self, *, player: Name, made_on: Name | None, version: Name) -> str:
        made = f", made {self.w.date(made_on)}" if made_on else ""
        return f"Player {self.w.name(player)}{made}, stickwright {self.w.name(version)}"

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def caution(self, *, text: Text) -> str:
        return f"CAUTION: {self.say(text)}"

    def assumption(self, *, what: Text, value: Text, why: Text, confirm: Text) -> str:
        return f"{self.say(what)}: {self.clause(value)} ({self.clause(why)}). To confirm: {self.clause(confirm)}."

    def simulations(self, *, count: int, seed: int) -> str:
        return (
            f"{count} {self.w.plural(count, one='simulation', other='simulations')}, seed {seed}; intervals at "
            f"{self.w.share(0.95)} confidence."
        )

    def site(self, *, site: Name, part: Part | None, action: Name | None) -> str:
        body = f" ({self.w.body_part(part)})" if part is not None else ""
        return f"{self.w.name(site)}{body}, for {self.w.stick_action(action)}"

    def ranked_heading(self, *, setups: int) -> str:
        return f"Sticks ranked ({setups} {self.w.plural(setups, one='set-up', other='set-ups')} computed)"

    def none_computed(self) -> str:
        return "No set-up was computed."

    def ranked(self, *, rank: int, setup: Text, verdict: Verdict, confirm: bool) -> str:
        mark = ", to confirm" if confirm else ""
        return f"{rank}. {self.clause(setup)}: {VERDICTS[verdict]}{mark}"

    def ranked_low(self, *, rank: int, setup: Text, limit: Text) -> str:
        return f"{rank}. {self.clause(setup)}: {self.clause(limit)}"

    def figures(
        self,
        *,
        direction_rad: float,
        weakest: Estimate,
        effort: Text,
        unintended: Text,
        dead_zone_share: float,
        bits: Estimate,
        best_share: float,
    ) -> str:
        return (
            f"predicted: {self.w.share_estimate(weakest)}{self.because(weakest.why)} of travel {self.w.direction(direction_rad)}, effort "
            f"{self.clause(effort)}, {self.clause(unintended)} at dead zone {self.w.share(dead_zone_share)}, "
            f"{self.w.bare_estimate(bits)}{self.because(bits.why)} bits, best or as good: {self.w.chance(best_share)}"
        )

    def ability(self, *, direction: Text, force: Text, reach: Text, readings: Text) -> str:
        return f"{self.say(direction)}: {self.say(force)}, {self.say(reach)}; force readings: {self.clause(readings)}"

    def resting(self, *, rest: Estimate, involuntary: Estimate) -> str:
        return (
            f"resting force {self.w.estimate(rest, 'n')}{self.because(rest.why)}; involuntary force "
            f"{self.w.estimate(involuntary, 'n')}{self.because(involuntary.why)}"
        )

    def stiffness(self, *, stiffness: Estimate) -> str:
        return f"limb stiffness {self.w.estimate(stiffness, 'n_per_mm')}{self.because(stiffness.why)}"

    def lost(self, *, lost: Estimate) -> str:
        return f"force lost, first to last reading: {self.w.share_estimate(lost)}{self.because(lost.why)}"

    def told_of(self, *, recordings: tuple[Name, ...], finding: Text) -> str:
        return f"{', '.join(self.w.name(one) for one in recordings)}. {self.say(finding)}"

    def quiet(self, *, recordings: tuple[Name, ...]) -> str:
        return f"{', '.join(self.w.name(one) for one in recordings)}: nothing to check."

    def setting(self, *, step: Text, told: Text) -> str:
        return f"{self.say(step)}: {self.say(told)}"
