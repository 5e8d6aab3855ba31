"""Filters of a tuned stick: their names, which one is kept, and why."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, Topic

__all__ = ["FilterFrequency", "FilterKind", "FilterNumber", "Filters"]

FilterFrequency = Literal["cutoff", "min_cutoff", "derivative_cutoff", "frequency"]
FilterNumber = Literal["beta", "order", "quality"]
FilterKind = Literal["none", "low-pass", "butterworth", "1-euro", "notch"]


class Filters(Topic):
    """Judged on the player's own following of a moving target."""

    @abstractmethod
    def kind(self, *, kind: FilterKind) -> str:
        """Name of a kind of filter, as a label and in the middle of a sentence."""

    @abstractmethod
    def at(self, *, kind: FilterKind, frequency_hz: float, beta_factor: float | None) -> str:
        """A filter with its numbers: cut-off, smallest cut-off or centre; `beta_factor` of the 1-euro filter alone."""

    @abstractmethod
    def setting(self, *, setting: FilterFrequency, frequency_hz: float) -> str:
        """A frequency that is set in a filter, in a list in brackets behind its name."""

    @abstractmethod
    def plain_setting(self, *, setting: FilterNumber, value_factor: float) -> str:
        """A bare number that is set in a filter, in a list in brackets behind its name."""

    @abstractmethod
    def row(
        self, *, kind: FilterKind, settings: tuple[Text, ...], lag_s: Estimate, lag_budget_s: float, reason: Text
    ) -> str:
        """Cell of the table of the tuning: the filter kept with its settings, its lag (with its interval) of the lag allowed, the
        reason (`none` or `kept`)."""

    @abstractmethod
    def none(
        self, *, alone_share: float, best: Text | None, best_share: float | None, best_lag_s: float | None,
        lag_budget_s: float, tremor: Text | None,
    ) -> str:  # fmt: skip
        """No filter is kept: how near the movement comes to its target by itself (rms, share of full output), and what the best
        filter within the lag allowed would come to (None where there is none); what a low-pass leaves of the tremor."""

    @abstractmethod
    def kept(self, *, kept: Text, lag_s: float, error_share: float, alone_share: float, tremor: Text | None) -> str:
        """The filter that is kept: how late it is, how near the output comes to the target with it and without."""

    @abstractmethod
    def tremor_left(
        self, *, lag_s: float, left_share: float, tremor_hz: float, try_first: Literal["no", "instead", "before"]
    ) -> str:
        """What a low-pass with that lag leaves of a tremor; whether support, friction, mass or a firmer stick are to be tried
        instead of a filter or before it."""

    @abstractmethod
    def why_one_piece(self) -> str:
        """Clause, why a figure of a filter has no interval."""

    @abstractmethod
    def too_little_following(self, *, followed_s: float, least_s: float) -> str:
        """Finding: too little following of a moving target was recorded to choose a filter; what to record."""
