"""The technical pages, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.technical_pages import Figure, TechnicalPages

__all__ = ["Texts"]

_FIGURES: dict[Figure, str] = {
    "demand": "game asks",
    "size": "size",
    "force": "force",
    "effort": "predicted effort",
    "hold": "predicted hold",
    "unintended": "predicted unintended activation",
    "rest": "predicted at rest",
    "extension": "shaft extension",
    "resting_force": "resting force",
    "involuntary_force": "involuntary force",
    "crossing": "its zero-crossing frequency",
    "stiffness": "limb stiffness",
    "push_scatter": "scatter of a steady push",
    "reading_scatter": "scatter of a force reading",
    "force_lost": "force lost, first to last reading",
}


class Texts(TechnicalPages):
    """Labels, cells and sentences."""

    w: English

    def chosen(self, *, fits: bool) -> str:
        return "Chosen set-up" if fits else "Nearest set-up (does not fit)"

    def labelled(self, *, label: Text, setup: Text) -> str:
        return f"{self.say(label)}: {self.say(setup)}"

    def headline(self, *, setup: Text, site: Name, verdict: Text) -> str:
        return f"{self.say(setup)} at the {self.w.name(site)}: {self.clause(verdict)}."

    def none_computed(self) -> str:
        return "No set-up was computed."

    def second(self, *, setup: Text, verdict: Text, limit: Text) -> str:
        return f"{self.say(setup)} ({self.clause(verdict)}). {self.say(limit)}"

    def figure(self, *, figure: Figure) -> str:
        return _FIGURES[figure]

    def size(
        self, *, contact: Text | None, travel: Text, base_m: tuple[float, ...], crosswise: bool, mass: Text | None,
        plug: Name | None, current: Text | None,
    ) -> str:  # fmt: skip
        parts = [f"contact point {self.say(contact)} above the pivot"] if contact is not None else []
        parts.append(f"travel {self.say(travel)} each way")
        if base_m:
            parts.append(f"base {self.w.sides(base_m, 'mm')}")
            parts += ["turned crosswise"] if crosswise else []
        parts += [self.clause(mass)] if mass is not None else []
        power = [f"plug {self.w.name(plug)}"] if plug else []
        power += [f"current {self.clause(current)}"] if current is not None else []
        return "; ".join(one for one in (", ".join(parts), ", ".join(power)) if one)

    def force(self, *, start: Text, full: Text) -> str:
        return f"actuation force {self.say(start)}, at full travel {self.say(full)}"

    def effort(self, *, effort: Text, all_of_it: bool, limit_share: float) -> str:
        what = "comfortable force" if all_of_it else "of comfortable force in use"
        return f"{self.say(effort)} {what}; fatigue is judged against {self.w.share(limit_share)} for this share of time in use"

    def hold(self, *, hold: Text, model: Text) -> str:
        return f"{self.say(hold)}: {self.say(model)}"

    def unintended(self, *, rate: Text, dead_zone_share: float) -> str:
        return f"{self.say(rate)} with a dead zone of {self.w.share(dead_zone_share)}"

    def at_rest(self, *, deflected_share: float, stays_share: float) -> str:
        held = "does not move it"
        if deflected_share > 0:
            held = f"holds it {self.w.share(deflected_share)} off centre"
        let_go = f"stays up to {self.w.share(stays_share)} off centre" if stays_share > 0 else "returns to centre"
        return f"the limb's resting force {held}; when released, it {let_go}"

    def demand(
        self, *, action: Name | None, duty_share: float, level_share: float, hold: Text | None, limit_per_min: float
    ) -> str:
        longest = f", longest hold {self.say(hold)}" if hold is not None else ""
        return (
            f"{self.w.stick_action(action)}, {self.w.share(duty_share)} of the time at {self.w.share(level_share)} "
            f"deflection{longest}; unintended activation at most {self.w.limit(limit_per_min)} a minute"
        )

    def asks(self, *, demand: Text, weakest_rad: float) -> str:
        return f"The game asks {self.clause(demand)}. The weakest direction is {self.w.direction(weakest_rad)}."

    def predicted_reach(self, *, rank: int) -> str:
        return f"predicted travel on {rank}"

    def resting_force(self, *, direction_rad: float | None) -> str:
        way = f" {self.w.direction(direction_rad)}" if direction_rad is not None else ""
        return f"{_FIGURES['resting_force']}{way}"

    def crossing_caption(self) -> str:
        return "Where the lines meet is how far that stick gets, at most to its end stop. Numbers are ranks."

    def ranking_caption(self) -> str:
        return f"Predicted precision in bits with {self.w.share(0.95)} interval; hatched: does not fit."

    def tried(self, *, setups: int) -> str:
        return (
            f"{setups} {self.w.plural(setups, one='set-up', other='set-ups')} of stick, topper, extension and slope computed; "
            "the best of each stick is shown."
        )

    def fit_line(
        self,
        *,
        setup: Text,
        verdict: Text,
        weakest_rad: float,
        weakest: Text,
        bits: Text,
        rate: Text,
        helps: Text | None,
    ) -> str:
        change = f"; {self.clause(helps)}" if helps is not None else ""
        return (
            f"{self.say(setup)}: {self.say(verdict)}; predicted {self.w.direction(weakest_rad)} {self.say(weakest)}, "
            f"{self.say(bits)} bits, unintended activation {self.say(rate)}{change}"
        )

    def extensions(self, *, parts: tuple[Text, ...]) -> str:
        return f"Best lever length for reach alone: {'; '.join(self.clause(one) for one in parts)}."

    def extension(self, *, direction_rad: float, length_m: float, longer: bool) -> str:
        return f"{self.w.direction(direction_rad)} {self.w.amount(length_m, 'mm')} {'longer' if longer else 'shorter'}"

    def enough(self, *, enough: bool) -> str:
        return "Enough is measured for this choice" if enough else "Next reading worth taking"

    def reading(self, *, what: Text, direction_rad: float | None, site: Name, chance_share: float) -> str:
        way = f" {self.w.direction(direction_rad)}" if direction_rad is not None else ""
        return f"{self.say(what)}{way}, {self.w.name(site)}: {self.w.chance(chance_share)}"

    def no_tuning(self) -> str:
        return (
            "No recording was made on this set-up, so there is nothing to tune from: record rest, circles along the edge and "
            "following."
        )

    def numbers_of(self, *, game: Name) -> str:
        return f"What to type is in the table Settings in each game; the figures here are for {self.w.name(game)}."

    def no_recording(self) -> str:
        return "No recording was made at this site, so rest, reach and tremor on the stick are not known from one."

    def recording(self, *, recording: Name, task: Name, time_s: float, rate_hz: float, stick: Name | None) -> str:
        on = f" on {self.w.name(stick)}" if stick else ""
        return (
            f"{self.w.name(recording)}: {self.w.name(task)}, {self.w.amount(time_s, 's')} at "
            f"{self.w.amount(rate_hz, 'hz')}{on}"
        )

    def facts(self, *, facts: tuple[Text, ...]) -> str:
        return "; ".join(self.clause(one) for one in facts)

    def least_reach(self, *, direction_rad: float, area: Text) -> str:
        return f"least reach {self.w.direction(direction_rad)}, area {self.say(area)}"

    def tremor(self, *, told: Text, size: Text | None, axis: Text | None) -> str:
        rms = f", rms {self.clause(size)}" if size is not None else ""
        line = f", strongest along {self.clause(axis)} of the three axes that were read" if axis is not None else ""
        return f"{self.clause(told)}{rms}{line}"

    def late(self, *, lag: Text) -> str:
        return f"follows {self.say(lag)} late"

    def throughput(self, *, throughput: Text) -> str:
        return f"aims at {self.say(throughput)} bit/s"

    def unused(self) -> str:
        return "a stick fits here, but this plan uses none"

    def site_headline(self, *, setup: Text, verdict: Text) -> str:
        return f"{self.say(setup)}, {self.say(verdict)}"

    def made(
        self,
        *,
        made_on: Name | None,
        version: Name,
        case: Name,
        visit: Name | None,
        simulations: int,
        seed: int,
        mark: Text,
    ) -> str:
        day = self.w.date(made_on) if made_on else "on a day not recorded"
        of = f" Visit {self.w.name(visit)}." if visit else ""
        return (
            f"Made {day} by stickwright {self.w.name(version)} from case {self.w.name(case)}.{of} {simulations} "
            f"{self.w.plural(simulations, one='simulation', other='simulations')}, seed {seed}. Intervals are at "
            f"{self.w.share(0.95)} confidence. A figure that nobody measured is marked {self.clause(mark)}. The figures are "
            "about set-ups. Not a medical device: local rules, the seating clinic and the treating team come first."
        )
