"""What trials and visits can and cannot show."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Topic

__all__ = ["Evidence"]


class Evidence(Topic):
    """Why there is no figure or no interval, and what is wrong with a design or with goals."""

    @abstractmethod
    def design(self) -> str:
        """Where a problem is: the design of a trial."""

    @abstractmethod
    def alternating_of(self, *, a: int, b: int, alike: int | None) -> str:
        """What was found: single trials of A and B in any order, with at most `alike` of one in a row."""

    @abstractmethod
    def an_order_at_all(self) -> str:
        """What was expected: at least one order that keeps the rule."""

    @abstractmethod
    def allow_more_alike(self) -> str:
        """What to do: allow more of one set-up in a row, or plan more even numbers."""

    @abstractmethod
    def pairs_of(self, *, count: int) -> str:
        """What was found: a number of pairs."""

    @abstractmethod
    def at_least_pairs(self, *, count: int) -> str:
        """What was expected: at least so many pairs."""

    @abstractmethod
    def phases_of(self, *, phases: int, trials: int) -> str:
        """What was found: so many phases within so many trials."""

    @abstractmethod
    def phases_need(self, *, phases: int, trials: int) -> str:
        """What was expected: room for the fewest trials of each phase."""

    @abstractmethod
    def starts_of(self, *, count: int) -> str:
        """What was found: starts of B for so many players."""

    @abstractmethod
    def starts_need(self) -> str:
        """What was expected: two players or more, each with a start of its own within the trials."""

    @abstractmethod
    def few_trials(self, *, least: int) -> str:
        """Why there is no interval: one set-up has fewer trials than that."""

    @abstractmethod
    def no_trials(self) -> str:
        """Why there is no figure: one set-up has no trial."""

    @abstractmethod
    def no_variation(self) -> str:
        """Why there is no interval: the measure came out the same each time."""

    @abstractmethod
    def ratio_above_0(self) -> str:
        """Why there is no ratio: the measure is not above zero."""

    @abstractmethod
    def too_few_orders(self, *, smallest_share: float) -> str:
        """Why there is no interval: the smallest p that the design can show lies above the limit."""

    @abstractmethod
    def neighbours_alike(self, *, correlation_factor: float) -> str:
        """A limit: errors of neighbouring trials are alike, so that the interval is too narrow."""

    @abstractmethod
    def too_few_players(self) -> str:
        """Why there is no interval: too few players."""

    @abstractmethod
    def few_visits(self, *, least: int) -> str:
        """Why there is no interval: fewer visits than that."""

    @abstractmethod
    def at_the_limit(self) -> str:
        """Why there is no interval: the figure is at the limit now."""

    @abstractmethod
    def not_towards(self) -> str:
        """Why there is no date: the trend does not lead to the limit."""

    @abstractmethod
    def goals(self) -> str:
        """Where a problem is: the goals."""

    @abstractmethod
    def goals_weights(self, *, goals: int, weights: int) -> str:
        """What was found: so many goals and so many weights."""

    @abstractmethod
    def a_weight_each(self) -> str:
        """What was expected: at least one goal, and one weight for each."""

    @abstractmethod
    def levels(self) -> str:
        """What was expected of a goal's level."""

    @abstractmethod
    def weight_above_0(self) -> str:
        """What was expected of a weight."""
