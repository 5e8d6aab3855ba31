"""Why each action is done as it is, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.inputs import Role
from stickwright.codes.layout_pages import Heading, LayoutPages, Left
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_HEADINGS: dict[Heading, str] = {
    "reasons": "For the practitioner: reasons",
    "requests": "Requests that clash:",
    "ways_out": "Resolve by one of, cheapest first",
    "loads": "What each control site does",
    "together": "Simultaneous use",
    "alternatives": "Next best layouts",
    "elsewhere": "Other places",
    "order": "Order of introduction",
    "press": "Press:",
    "second": "Second best:",
    "socket": "Socket:",
    "site": "control site",
    "actions": "actions",
    "busy": "busiest minute",
    "tires": "fatigue order",
    "why": "why",
    "action": "action",
    "by": "by",
    "with": "with",
    "plugged": "socket",
}


class Texts(LayoutPages):
    """The control layout for the practitioner."""

    w: English

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def no_hub(self) -> str:
        return "No hub is described, so no sockets and cables are planned."

    def clash(self, *, told: Text, given_up: Text | None) -> str:
        given = f" {self.say(given_up)}" if given_up is not None else ""
        return f"SOME REQUESTS CANNOT BE MET. {self.say(told)}{given}"

    def requests(self, *, requests: tuple[Text, ...]) -> str:
        return f"{'; '.join(self.clause(one) for one in requests)}."

    def way_out(self, *, told: Text, cost_points: float, taken: bool) -> str:
        taking = "; this layout takes it" if taken else ""
        return f"{self.w.capital(self.clause(told))} (cost {self.w.score(cost_points)}){taking}."

    def action(self, *, place: Text, socket: Text | None, role: Role | None) -> str:
        plugged = f"; {self.clause(socket)}" if socket is not None else ""
        return f"{self.clause(place)}{plugged}{self._acts(role)}."

    def _acts(self, role: Role | None) -> str:
        return f", acts as the {self.w.role(role)}" if role is not None else ""

    def plugged(self, *, socket: Text, role: Role | None) -> str:
        return f"{self.clause(socket)}{self._acts(role)}."

    def total(self, *, sum: Text) -> str:
        return f"Score: {self.clause(sum)}."

    def rounded(self) -> str:
        return "Rounded so that it adds up."

    def sum(self, *, total_points: float, terms: tuple[Text, ...]) -> str:
        total = self.w.score(total_points)
        return f"{total} = {' '.join(self.say(one) for one in terms)}" if terms else total

    def term(self, *, term_points: float, first: bool, what: Text, why: Text | None) -> str:
        sign = ("" if first else "+ ") if term_points >= 0 else ("\N{MINUS SIGN}" if first else "\N{MINUS SIGN} ")
        reason = f" ({self.clause(why)})" if why is not None else ""
        return f"{sign}{self.w.score(abs(term_points))} {self.say(what)}{reason}"

    def once(self, *, what: Text) -> str:
        return f"({self.clause(what)})"

    def basis(self, *, why: Text, basis: Text) -> str:
        return f"{self.clause(why)}: {self.clause(basis)}"

    def pair(
        self,
        *,
        sites: tuple[Name, ...],
        says: Literal["yes", "slows", "no"],
        slowed_share: float | None,
        assumed: Text | None,
    ) -> str:
        slowed = f" by {self.w.share(slowed_share)}" if slowed_share is not None else ""
        told = {"yes": "yes", "slows": f"slowed{slowed}", "no": "no"}[says]
        mark = f" ({self.w.assumed}: {self.clause(assumed)})" if assumed is not None else ""
        return f"{self.w.names(sites)}: {told}{mark}"

    def pairs(self, *, pairs: tuple[Text, ...]) -> str:
        return f"{'; '.join(self.clause(one) for one in pairs)}."

    def load(
        self,
        *,
        site: Name,
        actions: tuple[Name, ...],
        busy_share: float | None,
        basis: Text | None,
        tires: int | None,
        why: Text | None,
    ) -> str:
        busy = (
            f", busy for {self.w.share(busy_share)} of the busiest minute{self.because(basis)}"
            if busy_share is not None
            else ""
        )
        rank = f"; fatigue order: {self.w.ordinal(tires)}" if tires is not None else ""
        return f"{self.w.name(site)}: {self.w.names(actions)}{busy}{rank}{self.because(why)}"

    def tires(self, *, rank: int) -> str:
        return self.w.ordinal(rank)

    def busy(self, *, busy_share: float) -> str:
        return self.w.share(busy_share)

    def busy_basis(self, *, busy_share: float, basis: Text) -> str:
        return f"{self.w.share(busy_share)} busy: {self.clause(basis)}."

    def load_why(self, *, why: Text) -> str:
        return f"{self.w.capital(self.clause(why))}."

    def press(self, *, parts: tuple[Text, ...]) -> str:
        return f"{'; '.join(self.clause(one) for one in parts)}."

    def press_force(
        self, *, force_n: float, comfortable: Estimate, effort_share: float | None, limit_share: float
    ) -> str:
        effort = self.w.unknown if effort_share is None else self.w.share(effort_share)
        return (
            f"activation force {self.w.amount(force_n, 'n')}, comfortable force {self.w.estimate(comfortable, 'n')}"
            f"{self.because(comfortable.why)}: effort {effort}, limit {self.w.share(limit_share)}"
        )

    def press_hits(self, *, hit_share: float, assumed: bool) -> str:
        return f"{self.w.chance(hit_share)} of presses land{f', {self.w.assumed}' if assumed else ''}"

    def press_rate(self, *, count_per_min: float, sustained_per_min: float | None) -> str:
        kept = f" of {self.w.whole(sustained_per_min)} that can be kept up" if sustained_per_min is not None else ""
        presses = self.w.plural(round(count_per_min), one="press", other="presses")
        return f"{self.w.whole(count_per_min)} {presses} in the busiest minute{kept}"

    def press_hold(self, *, hold_s: float, limit_s: float | None) -> str:
        limit = f"limit {self.w.amount(limit_s, 's')}" if limit_s is not None else "no hold was measured"
        return f"held for up to {self.w.amount(hold_s, 's')}, {limit}"

    def press_face(self, *, face_m: float) -> str:
        return f"a switch {self.w.amount(face_m, 'mm')} across would catch {self.w.share(0.95)} of presses"

    def press_assumed(self, *, told: tuple[Text, ...]) -> str:
        return f"{self.w.assumed}: {'; '.join(self.clause(one) for one in told)}"

    def assumed_above(self) -> str:
        return f"in part {self.w.assumed}, as above"

    def elsewhere(self, *, where: Text, told: Text) -> str:
        return f"{self.say(where)}: {self.w.capital(self.clause(told))}."

    def not_possible(self, *, where: Text, why: Text) -> str:
        return f"{self.say(where)}: not possible: {self.clause(why)}."

    def way(self, *, how: Left) -> str:
        return {"option": "an option of the game", "helper": "a helper", "dropped": "leaving it out"}[how]

    def done(self, *, action: Name, place: Text) -> str:
        return f"{self.w.name(action)}: {self.clause(place)}"

    def no_action(self, *, actions: tuple[Name, ...]) -> str:
        if not actions:
            return "an action of the game, which names none"
        return f"an action of the game: {self.w.any_of(tuple(self.w.name(one) for one in actions))}"

    def asked_action(self) -> str:
        return "action"

    def asked_place(self, *, action: Name) -> str:
        return f"place for {self.w.name(action)}"

    def places(self, *, places: tuple[Name, ...]) -> str:
        return f"one of: {self.w.any_of(tuple(self.w.name(one) for one in places))}"

    def as_in_file(self, *, kind: Literal["game", "player"]) -> str:
        return f"Write it as the {kind} file does."
