"""What is doubtful of a player: what was not measured, what contradicts itself, what looks like another unit."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["PlayerWarnings"]


class PlayerWarnings(Topic):
    """Questions are sentences, told behind their place in the file; found and expected have no full stop."""

    @abstractmethod
    def age_band(self, *, typed: Text) -> str:
        """The age band tells neither a child nor an adult; what to write, and that no date of birth is wanted."""

    @abstractmethod
    def visit_in_future(self, *, visit: Name, today: Name) -> str:
        """The visit is after today; both dates as YYYY-MM-DD."""

    @abstractmethod
    def first_again(self, *, key: Name, file: Text) -> str:
        """Found: the repeated first direction under a key, and at the end of a file of readings as well."""

    @abstractmethod
    def first_once(self) -> str:
        """Expected: the repeated first direction in one place."""

    @abstractmethod
    def nothing_measured(self, *, reading: Text, on_stick: Text) -> str:
        """Nothing was measured of a control site; the two tables to begin with."""

    @abstractmethod
    def empty_reading(self) -> str:
        """A reading has neither force nor movement range."""

    @abstractmethod
    def direction_again(self, *, typed: Name, unit: Literal["deg", "rad"], line: int | None, file: Text | None) -> str:
        """Found: a direction a second time; the first is at that line, or in that file of readings."""

    @abstractmethod
    def direction_once(self) -> str:
        """Expected: each direction once."""

    @abstractmethod
    def one_list(self) -> str:
        """Remedy: all repeats of a direction in one list."""

    @abstractmethod
    def holds_what(self) -> str:
        """It is said how long the hand holds something, but not what; the key of its mass is holds_g."""

    @abstractmethod
    def no_controller(self) -> str:
        """Buttons within reach are given, but there is no controller in the kit."""

    @abstractmethod
    def site_twice(self, *, site: Name) -> str:
        """Found: a pair of one and the same site."""

    @abstractmethod
    def two_sites(self) -> str:
        """Expected: two sites."""

    @abstractmethod
    def which_first(self) -> str:
        """Remedy: the site that keeps holding comes first, the one that presses second."""

    @abstractmethod
    def pair_again(self, *, one: Name, other: Name, line: int) -> str:
        """Found: a pair of sites a second time; the first is at that line."""

    @abstractmethod
    def pair_once(self) -> str:
        """Expected: each pair once in this order."""

    @abstractmethod
    def word_beside_rates(self, *, word: Text) -> str:
        """Found: an answer in a word beside counted press rates."""

    @abstractmethod
    def word_or_rates(self) -> str:
        """Expected: either the word or both rates."""

    @abstractmethod
    def delete_word(self) -> str:
        """Remedy: delete the word where the rates were counted."""

    @abstractmethod
    def empty_pair(self) -> str:
        """A pair has neither an answer in a word nor press rates; what to try, and the keys."""

    @abstractmethod
    def one_rate(self, *, given: Name, missing: Name) -> str:
        """Of two press rates one is missing; their keys."""

    @abstractmethod
    def no_press_alone(self) -> str:
        """The second site made no press even alone."""

    @abstractmethod
    def more_while_holding(self, *, both: Text, alone: Text) -> str:
        """More presses while the other site holds than alone; each key with its value."""

    @abstractmethod
    def empty_press(self) -> str:
        """Nothing was measured of a press; what to measure, and the keys."""

    @abstractmethod
    def slow_rate(self, *, typed: Name) -> str:
        """So few presses a minute are hardly as many as comfortable: a second?"""

    @abstractmethod
    def too_quick(self, *, typed: Name, unit: Literal["ms", "s"], key: Name) -> str:
        """Faster than any person: seconds? The key to use then."""
