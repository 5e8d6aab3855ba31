"""What trials and visits can and cannot show, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.evidence import Evidence

__all__ = ["Texts"]


class Texts(Evidence):
    """Why there is no figure or no interval, and what is wrong with a design or with goals."""

    w: English

    def _many(self, count: int, one: str, other: str) -> str:
        return f"{self.w.number(count)} {self.w.plural(count, one=one, other=other)}"

    def design(self) -> str:
        return "Design of the trial"

    def alternating_of(self, *, a: int, b: int, alike: int | None) -> str:
        row = "" if alike is None else f", at most {alike} of one in a row"
        return f"{self._many(a, 'trial', 'trials')} of A and {b} of B{row}"

    def an_order_at_all(self) -> str:
        return "an order that keeps to this"

    def allow_more_alike(self) -> str:
        return "Allow more of one set-up in a row, or plan more even numbers."

    def pairs_of(self, *, count: int) -> str:
        return self._many(count, "pair", "pairs")

    def at_least_pairs(self, *, count: int) -> str:
        return f"at least {self._many(count, 'trial', 'trials')}"

    def phases_of(self, *, phases: int, trials: int) -> str:
        return f"{self._many(phases, 'trial', 'trials')} in {self._many(trials, 'trial', 'trials')}"

    def phases_need(self, *, phases: int, trials: int) -> str:
        return f"two phases or more, and at least {self._many(trials, 'trial', 'trials')} for {phases}"

    def starts_of(self, *, count: int) -> str:
        return f"starts for {self._many(count, 'trial', 'trials')}"

    def starts_need(self) -> str:
        return "two players or more, each with a start of their own, after the first trial"

    def few_trials(self, *, least: int) -> str:
        return f"fewer than {self._many(least, 'trial', 'trials')} of one set-up"

    def no_trials(self) -> str:
        return "no trial of one set-up"

    def no_variation(self) -> str:
        return "the measure was the same each time"

    def ratio_above_0(self) -> str:
        return "a ratio needs a measure above 0"

    def too_few_orders(self, *, smallest_share: float) -> str:
        return f"too few orders were possible: even the clearest result comes by chance in {self.w.share(smallest_share)} of such trials"

    def neighbours_alike(self, *, correlation_factor: float) -> str:
        return (
            f"Neighbouring trials are alike (correlation {self.w.number(correlation_factor)}), so the true interval is wider. "
            "Rest longer between trials."
        )

    def too_few_players(self) -> str:
        return "too few players"

    def few_visits(self, *, least: int) -> str:
        return f"fewer than {self._many(least, 'trial', 'trials')}"

    def at_the_limit(self) -> str:
        return "it is at the limit now"

    def not_towards(self) -> str:
        return "the trend does not lead there"

    def goals(self) -> str:
        return "Goals"

    def goals_weights(self, *, goals: int, weights: int) -> str:
        return f"{self._many(goals, 'trial', 'trials')} and {self._many(weights, 'trial', 'trials')}"

    def a_weight_each(self) -> str:
        return "at least one goal, and a weight for each"

    def levels(self) -> str:
        return "-2, -1, 0, 1 or 2"

    def weight_above_0(self) -> str:
        return "a weight above 0"
