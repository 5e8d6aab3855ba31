"""Filters of a tuned stick, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.filters import FilterFrequency, FilterKind, FilterNumber, Filters
from stickwright.codes.message import Text

__all__ = ["Texts"]

_KINDS: dict[FilterKind, str] = {
    "none": "no filter",
    "low-pass": "first-order low-pass",
    "butterworth": "second-order Butterworth low-pass",
    "1-euro": "1-euro filter",
    "notch": "notch at the tremor's frequency",
}


class Texts(Filters):
    """Which filter, and why."""

    w: English

    def kind(self, *, kind: FilterKind) -> str:
        return _KINDS[kind]

    def at(self, *, kind: FilterKind, frequency_hz: float, beta_factor: float | None) -> str:
        beta = "" if beta_factor is None else f" with beta {self.w.number(beta_factor)}"
        name = "notch" if kind == "notch" else _KINDS[kind]
        return f"{name} at {self.w.amount(frequency_hz, 'hz')}{beta}"

    def setting(self, *, setting: FilterFrequency, frequency_hz: float) -> str:
        name = {
            "cutoff": "cut-off",
            "min_cutoff": "minimum cut-off",
            "derivative_cutoff": "cut-off of the speed",
            "frequency": "frequency",
        }[setting]
        return f"{name} {self.w.amount(frequency_hz, 'hz')}"

    def plain_setting(self, *, setting: FilterNumber, value_factor: float) -> str:
        return f"{setting} {self.w.number(value_factor)}"

    def row(
        self, *, kind: FilterKind, settings: tuple[Text, ...], lag_s: Estimate, lag_budget_s: float, reason: Text
    ) -> str:
        if kind == "none":
            return self.say(reason)
        numbers = f" ({', '.join(self.say(one) for one in settings)})" if settings else ""
        lag = self.w.estimate(lag_s, "ms")
        name = f"{_KINDS[kind][:1].upper()}{_KINDS[kind][1:]}"
        return f"{name}{numbers}, lag {lag} of {self.w.amount(lag_budget_s, 'ms')} allowed. {self.say(reason)}"

    def none(
        self, *, alone_share: float, best: Text | None, best_share: float | None, best_lag_s: float | None,
        lag_budget_s: float, tremor: Text | None,
    ) -> str:  # fmt: skip
        other = ""
        if best is not None and best_share is not None and best_lag_s is not None:
            other = (
                f" The best filter within {self.w.amount(lag_budget_s, 'ms')} of lag ({self.say(best)}) follows within "
                f"{self.w.tenth_share(best_share)} and is {self.w.amount(best_lag_s, 'ms')} late."
            )
        return (
            f"No filter: without one, the movement follows its target within {self.w.tenth_share(alone_share)} of full "
            f"output.{other}{self._also(tremor)}"
        )

    def kept(self, *, kept: Text, lag_s: float, error_share: float, alone_share: float, tremor: Text | None) -> str:
        return (
            f"Chosen: {self.say(kept)}, {self.w.amount(lag_s, 'ms')} late. On parts of the recording that were not used to choose "
            f"it, the output follows its target within {self.w.tenth_share(error_share)} of full output, and within "
            f"{self.w.tenth_share(alone_share)} without a filter.{self._also(tremor)}"
        )

    def tremor_left(
        self, *, lag_s: float, left_share: float, tremor_hz: float, try_first: Literal["no", "instead", "before"]
    ) -> str:
        advice = {
            "no": "",
            "instead": " Slow tremor cannot be filtered out without making the game late. Use support, friction, mass or a "
            "firmer stick.",
            "before": " Before you filter such a slow tremor, try support, friction, mass or a firmer stick.",
        }[try_first]
        return (
            f"With {self.w.amount(lag_s, 'ms')} of lag, a low-pass still leaves {self.w.share(left_share)} of a tremor at "
            f"{self.w.amount(tremor_hz, 'hz')}.{advice}"
        )

    def why_one_piece(self) -> str:
        return "one piece of recording only"

    def too_little_following(self, *, followed_s: float, least_s: float) -> str:
        return (
            f"No filter was chosen: {followed_s:.0f} s of following a moving target were recorded, and at least {least_s:.0f} s are "
            "needed. Record one minute of following, target and output together."
        )

    def _also(self, tremor: Text | None) -> str:
        return "" if tremor is None else f" {self.say(tremor)}"
