"""What was assumed for an estimate of a player's ability, and why one has no interval."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Topic
from stickwright.codes.sites import Part

__all__ = ["EstimateNotes"]


class EstimateNotes(Topic):
    """Clauses beside a figure."""

    @abstractmethod
    def one_figure(self) -> str:
        """No interval: typed as one figure."""

    @abstractmethod
    def not_measured(self) -> str:
        """No interval: not measured."""

    @abstractmethod
    def usual_stiffness(self) -> str:
        """Assumed: the limb's stiffness as 0.7 of comfortable force over movement range."""

    @abstractmethod
    def shaken(self) -> str:
        """Assumed: from how much the tried sticks moved, and the stiffness of stick and limb."""

    @abstractmethod
    def tremor_on_two(self, *, repeated: bool, scatter_share: float) -> str:
        """Assumed: limb stiffness from tremor on two sticks; the scatter that was assumed where neither was repeated."""

    @abstractmethod
    def usual_supported(self, *, part: Part) -> str:
        """Assumed: usual for a supported control site."""

    @abstractmethod
    def usual_steady(self, *, part: Part) -> str:
        """Assumed: usual for a steady control site."""

    @abstractmethod
    def usual_figure(self) -> str:
        """Assumed: a usual figure."""

    @abstractmethod
    def all_zero(self) -> str:
        """No interval: every reading was 0."""

    @abstractmethod
    def scatter_once(self, *, value_share: float) -> str:
        """Assumed: scatter of a figure that was read once."""

    @abstractmethod
    def usual_range(self, *, part: Part) -> str:
        """Assumed: the usual movement range of the control site."""

    @abstractmethod
    def zero_read(self) -> str:
        """Assumed: a small force where a force of 0 was read."""

    @abstractmethod
    def nothing_repeated(self) -> str:
        """No interval: no direction was read twice."""

    @abstractmethod
    def usual_scatter(self) -> str:
        """Assumed: the usual scatter of a reading."""

    @abstractmethod
    def neighbours(self) -> str:
        """Assumed: estimated from the neighbouring directions."""

    @abstractmethod
    def zero_among(self) -> str:
        """No interval: a force of 0 was read among them."""

    @abstractmethod
    def read_once(self) -> str:
        """No interval: a press was read once."""

    @abstractmethod
    def repeats_alike(self) -> str:
        """No interval: all repeats are the same."""

    @abstractmethod
    def no_press(self) -> str:
        """No interval: no press was measured."""

    @abstractmethod
    def not_all_counted(self) -> str:
        """No interval: not everything that may press a switch unintentionally was counted."""

    @abstractmethod
    def bracketed(self) -> str:
        """Assumed: worked out from sticks of known force, without a gauge."""
